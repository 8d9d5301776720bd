//! What the linker tells of a module that it wrote: its symbols, and every place where it put a number that leads to one.
//!
//! The WebAssembly tool conventions (linking, `reloc.*` sections) say how it stands there. It is right only in that file: what
//! works on the module afterwards moves what the places count from.

use super::module::{Module, without};
use wasmparser::{
    BinaryReaderError, KnownCustom, Linking, Parser, Payload, RelocationEntry, RelocationType, SymbolInfo,
};

/// What a symbol of the linker means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Symbol {
    /// The function of this number.
    Function(u32),
    /// Data, from their first address to behind their last.
    Data(u32, u32),
    /// Neither, or data that have no bytes or stand nowhere, since they begin with noughts alone.
    Other,
}

/// Where a number stands that the linker put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stands {
    /// At this byte of the file, in the body of a function.
    InCode(usize),
    /// At this byte of the file, in data.
    InData(usize),
    /// In notes for those who look for errors.
    Elsewhere,
}

/// A number that the linker put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Place {
    pub(crate) stands: Stands,
    pub(crate) to: Symbol,
    /// For an address: by how much it differs from the first one of the data that it leads to.
    pub(crate) addend: Option<i64>,
}

/// What the linker tells of a module.
pub(crate) struct Linked {
    pub(crate) symbols: Vec<Symbol>,
    pub(crate) places: Vec<Place>,
}

impl Linked {
    /// Reads it; nothing where the linker was not asked to tell.
    ///
    /// # Errors
    /// When the file is damaged, or tells of places of a kind that is not known here.
    pub(crate) fn read(file: &[u8]) -> Result<Option<Self>, String> {
        let told = |error: BinaryReaderError| error.to_string();
        let segments: Vec<u32> = Module::read(file)?.data.iter().map(|it| it.0).collect();
        let (mut code, mut data) = (0, 0);
        let mut symbols = Vec::new();
        let mut places = Vec::new();
        for payload in Parser::new(0).parse_all(file) {
            let section = match payload.map_err(told)? {
                Payload::CodeSectionStart { range, .. } => {
                    code = range.start;
                    continue;
                }
                Payload::DataSection(section) => {
                    data = section.range().start;
                    continue;
                }
                Payload::CustomSection(section) => section,
                _ => continue,
            };
            match section.as_known() {
                KnownCustom::Linking(linking) => {
                    for part in linking.subsections() {
                        let Linking::SymbolTable(table) = part.map_err(told)? else {
                            continue;
                        };
                        for symbol in table {
                            symbols.push(meant(&symbol.map_err(told)?, &segments));
                        }
                    }
                }
                // The symbols stand before the places that lead to them.
                KnownCustom::Reloc(section_places) => {
                    let name = section.name();
                    let stands = |offset: usize| match name {
                        "reloc.CODE" => Stands::InCode(code.saturating_add(offset)),
                        "reloc.DATA" => Stands::InData(data.saturating_add(offset)),
                        _ => Stands::Elsewhere,
                    };
                    for it in section_places.entries() {
                        let it = it.map_err(told)?;
                        places.push(Place {
                            stands: stands(it.offset as usize),
                            to: led_to(&it, &symbols),
                            addend: addend(&it)?,
                        });
                    }
                }
                _ => {}
            }
        }
        Ok((!symbols.is_empty()).then_some(Self { symbols, places }))
    }
}

/// A module without what its linker told.
///
/// # Errors
/// When it is damaged.
pub(crate) fn unlinked(module: &[u8]) -> Result<wasm_encoder::Module, String> {
    without(module, &|section| {
        section == "linking" || section.starts_with("reloc.")
    })
}

fn meant(symbol: &SymbolInfo<'_>, segments: &[u32]) -> Symbol {
    match symbol {
        SymbolInfo::Func { index, .. } => Symbol::Function(*index),
        SymbolInfo::Data { symbol: Some(it), .. } if it.size > 0 => {
            segments.get(it.index as usize).map_or(Symbol::Other, |segment| {
                let begin = segment.saturating_add(it.offset);
                Symbol::Data(begin, begin.saturating_add(it.size))
            })
        }
        _ => Symbol::Other,
    }
}

fn led_to(place: &RelocationEntry, symbols: &[Symbol]) -> Symbol {
    match place.ty {
        // Types are counted by themselves.
        RelocationType::TypeIndexLeb => Symbol::Other,
        _ => symbols
            .get(place.index as usize)
            .copied()
            .unwrap_or(Symbol::Other),
    }
}

fn addend(place: &RelocationEntry) -> Result<Option<i64>, String> {
    use RelocationType as Type;
    match place.ty {
        Type::MemoryAddrLeb | Type::MemoryAddrSleb | Type::MemoryAddrI32 => Ok(Some(place.addend)),
        Type::FunctionIndexLeb
        | Type::FunctionIndexI32
        | Type::TableIndexSleb
        | Type::TableIndexI32
        | Type::TableNumberLeb
        | Type::TypeIndexLeb
        | Type::GlobalIndexLeb
        | Type::GlobalIndexI32
        | Type::EventIndexLeb
        | Type::FunctionOffsetI32
        | Type::SectionOffsetI32 => Ok(None),
        other => Err(format!(
            "the linker takes hold of data by {other:?}, which is not known here"
        )),
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use wasm_encoder::{
        CodeSection, ConstExpr, CustomSection, DataSection, DataSymbolDefinition, Encode, Function,
        FunctionSection, Instruction, LinkingSection, MemorySection, MemoryType, NameMap, NameSection,
        SymbolTable, TypeSection,
    };

    /// Where the data of [`linked`] begin.
    pub(crate) const BEGIN: u32 = 1024;

    /// How the tool conventions number the kinds of places.
    mod kind {
        pub(super) const CALL: u8 = 0;
        pub(super) const ADDRESS_COUNTED_FROM: u8 = 3;
        pub(super) const ADDRESS_GIVEN: u8 = 4;
        pub(super) const ADDRESS_IN_DATA: u8 = 5;
        pub(super) const TYPE: u8 = 6;
    }

    /// Bytes of a number that the linker puts, which it writes at full length.
    const NUMBER: usize = 5;

    fn full_length(number: u32) -> [u8; NUMBER] {
        std::array::from_fn(|at| {
            #[expect(clippy::cast_possible_truncation, reason = "seven bits each")]
            let bits = (number >> (7 * at)) as u8 & 0x7f;
            if at + 1 < NUMBER { bits | 0x80 } else { bits }
        })
    }

    /// Four pieces of eight bytes, of which the first leads to the second, and two functions: `run` takes the address of the
    /// first, counts from 16 bytes before the fourth and calls `end`. Nothing leads to the third.
    pub(crate) fn linked() -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut functions = FunctionSection::new();
        functions.function(0).function(0);
        let mut memories = MemorySection::new();
        memories.memory(MemoryType {
            minimum: 1,
            maximum: None,
            memory64: false,
            shared: false,
            page_size_log2: None,
        });
        let before_fourth = BEGIN + 24 - 16;
        // No locals; then `i32.const`, `i32.load` with its alignment, `drop`, `call`, `end`.
        let run = [
            &[0x00, 0x41][..],
            &full_length(BEGIN),
            &[0x28, 0x02],
            &full_length(before_fourth),
            &[0x1a, 0x10],
            &full_length(1),
            &[0x0b],
        ]
        .concat();
        let mut code = CodeSection::new();
        code.raw(&run);
        let mut end = Function::new([]);
        end.instruction(&Instruction::End);
        code.function(&end);
        let mut bytes = [0; 32];
        bytes[4..8].copy_from_slice(&(BEGIN + 8).to_le_bytes());
        let mut data = DataSection::new();
        data.active(0, &ConstExpr::i32_const(BEGIN.cast_signed()), bytes);
        let mut symbols = SymbolTable::new();
        for (n, name) in ["one", "two", "three", "four"].into_iter().enumerate() {
            let definition = DataSymbolDefinition {
                index: 0,
                offset: 8 * n as u32,
                size: 8,
            };
            symbols.data(0, name, Some(definition));
        }
        for (n, name) in ["run", "end"].into_iter().enumerate() {
            symbols.function(0, n as u32, Some(name));
        }
        let mut linking = LinkingSection::new();
        linking.symbol_table(&symbols);
        let mut names = NameMap::new();
        names.append(0, "run");
        names.append(1, "end");
        let mut name = NameSection::new();
        name.functions(&names);
        let mut out = wasm_encoder::Module::new();
        out.section(&types)
            .section(&functions)
            .section(&memories)
            .section(&code)
            .section(&data)
            .section(&linking);
        // Places in the code are counted from behind its length: there stand how many bodies there are, and how long this is.
        let body = 2;
        let number = NUMBER as u32;
        let of_code: [(u8, u32, u32, Option<i32>); 4] = [
            (kind::ADDRESS_GIVEN, body + 2, 0, Some(0)),
            (kind::ADDRESS_COUNTED_FROM, body + 4 + number, 3, Some(-16)),
            (kind::CALL, body + 6 + 2 * number, 5, None),
            (kind::TYPE, body + 6 + 2 * number, 0, None),
        ];
        // Before the bytes: how many pieces the section has, that this is put at once, where, `end`, and how long it is.
        let bytes_begin = 1 + 1 + 1 + 2 + 1 + 1;
        let of_data = [(kind::ADDRESS_IN_DATA, bytes_begin + 4, 1, Some(0))];
        // By their number in the module, counted from the first.
        for (name, section, places) in [("reloc.CODE", 3_u32, &of_code[..]), ("reloc.DATA", 4, &of_data)] {
            let mut bytes = Vec::new();
            section.encode(&mut bytes);
            (places.len() as u32).encode(&mut bytes);
            for &(kind, offset, symbol, addend) in places {
                bytes.push(kind);
                offset.encode(&mut bytes);
                symbol.encode(&mut bytes);
                if let Some(addend) = addend {
                    addend.encode(&mut bytes);
                }
            }
            out.section(&CustomSection {
                name: name.into(),
                data: bytes.into(),
            });
        }
        out.section(&name);
        out.finish()
    }

    #[test]
    fn places_are_found_where_their_numbers_stand() {
        let file = linked();
        wasmparser::validate(&file).expect("a module by the rules of WebAssembly");
        let linked = Linked::read(&file).expect("a module").expect("its linker told");
        let places = &linked.places;
        let stand: Vec<&[u8]> = places
            .iter()
            .map(|it| match it.stands {
                Stands::InCode(at) => &file[at..at + NUMBER],
                Stands::InData(at) => &file[at..at + 4],
                Stands::Elsewhere => panic!("{it:?} is in the code or the data"),
            })
            .collect();
        assert_eq!(stand[0], full_length(BEGIN));
        assert_eq!(stand[1], full_length(BEGIN + 8));
        assert_eq!(stand[2], full_length(1));
        assert_eq!(stand[4], (BEGIN + 8).to_le_bytes());
        let to: Vec<_> = places.iter().map(|it| (it.to, it.addend)).collect();
        let data = |at: u32| Symbol::Data(BEGIN + at, BEGIN + at + 8);
        assert_eq!(
            to,
            [
                (data(0), Some(0)),
                (data(24), Some(-16)),
                (Symbol::Function(1), None),
                (Symbol::Other, None),
                (data(8), Some(0)),
            ]
        );
    }

    #[test]
    fn a_kind_of_place_that_is_not_known_is_refused() {
        let mut file = linked();
        let at = file
            .windows(10)
            .rposition(|it| it == b"reloc.CODE")
            .expect("it is there");
        // Behind the name stand the section and how many places it has; then the kind of the first.
        assert_eq!(file[at + 12], kind::ADDRESS_GIVEN);
        // `R_WASM_MEMORY_ADDR_LOCREL_I32` of the tool conventions.
        file[at + 12] = 23;
        let error = Linked::read(&file).err().expect("it is refused");
        assert!(error.contains("not known here"), "{error}");
    }
}
