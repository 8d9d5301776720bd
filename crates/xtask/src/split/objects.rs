//! The pieces of data of a module, and which of them a number in it can lead to.
//!
//! The linker leaves in the module where each piece lies, and of every place that takes hold of one which piece it means and
//! how far from its beginning. What optimises the module afterwards loses the places, but neither pieces nor numbers: so
//! both are noted first, in a section of our own.

use super::module::Module;
use std::borrow::Cow;
use std::collections::BTreeSet;
use wasm_encoder::{CustomSection, RawSection};
use wasmparser::{KnownCustom, Linking, Operator, Parser, Payload, RelocationType, SymbolInfo};

/// Name of our own section.
const SECTION: &str = "loomwright.objects";

/// Pieces of data, and the numbers that lead to them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Objects {
    /// Address of the beginning and of the end of each, in order, none over another.
    pub(crate) pieces: Vec<(u32, u32)>,
    /// Numbers that lead to a piece without lying in it: before its beginning, or from its end on. With the piece.
    outside: BTreeSet<(u32, u32)>,
}

impl Objects {
    /// The pieces that the linker told of; nothing where it was not asked to.
    pub(crate) fn of_linker(module: &[u8]) -> Result<Option<Self>, String> {
        let told = |error: wasmparser::BinaryReaderError| error.to_string();
        let segments: Vec<u32> = Module::read(module)?.data.iter().map(|it| it.0).collect();
        // Of each symbol, where it begins and ends.
        let mut symbols: Vec<Option<(u32, u32)>> = Vec::new();
        let mut numbers: Vec<(usize, i64)> = Vec::new();
        for payload in Parser::new(0).parse_all(module) {
            let Payload::CustomSection(section) = payload.map_err(told)? else {
                continue;
            };
            match section.as_known() {
                KnownCustom::Linking(linking) => {
                    for part in linking.subsections() {
                        let Linking::SymbolTable(table) = part.map_err(told)? else {
                            continue;
                        };
                        for symbol in table {
                            symbols.push(match symbol.map_err(told)? {
                                SymbolInfo::Data { symbol: Some(it), .. } => {
                                    // What begins with noughts alone has no segment.
                                    segments.get(it.index as usize).map(|from| {
                                        let begin = from.saturating_add(it.offset);
                                        (begin, begin.saturating_add(it.size))
                                    })
                                }
                                _ => None,
                            });
                        }
                    }
                }
                KnownCustom::Reloc(places) => {
                    for it in places.entries() {
                        let it = it.map_err(told)?;
                        use RelocationType as Type;
                        match it.ty {
                            Type::MemoryAddrLeb | Type::MemoryAddrSleb | Type::MemoryAddrI32 => {
                                numbers.push((it.index as usize, it.addend));
                            }
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
                            | Type::SectionOffsetI32 => {}
                            other => {
                                return Err(format!(
                                    "the linker takes hold of data by {other:?}, which is not known here"
                                ));
                            }
                        }
                    }
                }
                _ => {}
            }
        }
        if symbols.is_empty() {
            return Ok(None);
        }
        let mut this = Self::default();
        let mut all: Vec<(u32, u32)> = symbols
            .iter()
            .flatten()
            .copied()
            .filter(|it| it.0 < it.1)
            .collect();
        all.sort_unstable();
        for (begin, end) in all {
            match this.pieces.last_mut() {
                // One that lies over another is of a piece with it.
                Some(last) if begin < last.1 => last.1 = last.1.max(end),
                _ => this.pieces.push((begin, end)),
            }
        }
        for (symbol, addend) in numbers {
            let Some(Some((begin, end))) = symbols.get(symbol) else {
                continue;
            };
            let Some(piece) = this.piece_at(*begin).filter(|_| begin < end) else {
                continue;
            };
            #[expect(clippy::cast_possible_truncation, reason = "as the linker counts")]
            let number = begin.wrapping_add_signed(addend as i32);
            if this.piece_at(number) != Some(piece) {
                this.outside.insert((number, piece as u32));
            }
        }
        Ok(Some(this))
    }

    /// The piece that an address lies in.
    pub(crate) fn piece_at(&self, address: u32) -> Option<usize> {
        let at = self.pieces.partition_point(|piece| piece.1 <= address);
        self.pieces
            .get(at)
            .is_some_and(|piece| piece.0 <= address)
            .then_some(at)
    }

    /// Whether all from one address to another is of one piece.
    pub(crate) fn holds(&self, (from, to): (u32, u32)) -> bool {
        self.piece_at(from)
            .and_then(|piece| self.pieces.get(piece))
            .is_some_and(|piece| to <= piece.1)
    }

    /// The pieces that a number can lead to.
    fn led_to(&self, number: u32) -> impl Iterator<Item = usize> {
        let outside = self.outside.range((number, 0)..=(number, u32::MAX));
        self.piece_at(number)
            .into_iter()
            .chain(outside.map(|it| it.1 as usize))
    }

    /// Which pieces functions lead to, by themselves or by way of other pieces.
    pub(crate) fn reached<'a>(
        &self,
        module: &Module<'_>,
        functions: impl Iterator<Item = &'a wasmparser::FunctionBody<'a>>,
    ) -> Result<Vec<bool>, String> {
        let mut reached = vec![false; self.pieces.len()];
        let mut look = Vec::new();
        let mut reach = |number: u32, look: &mut Vec<usize>| {
            for piece in self.led_to(number) {
                if !std::mem::replace(&mut reached[piece], true) {
                    look.push(piece);
                }
            }
        };
        for body in functions {
            let operators = body.get_operators_reader().map_err(|error| error.to_string())?;
            for operator in operators {
                for number in numbers(&operator.map_err(|error| error.to_string())?) {
                    reach(number, &mut look);
                }
            }
        }
        while let Some(piece) = look.pop() {
            let (begin, end) = self.pieces[piece];
            for word in (begin.next_multiple_of(4)..end.saturating_sub(3)).step_by(4) {
                if let Some(number) = module.word(word) {
                    reach(number, &mut look);
                }
            }
        }
        Ok(reached)
    }

    fn written(&self) -> Vec<u8> {
        let counts = [self.pieces.len() as u32, self.outside.len() as u32];
        let pairs = self.pieces.iter().chain(&self.outside);
        let numbers = counts.into_iter().chain(pairs.flat_map(|it| [it.0, it.1]));
        numbers.flat_map(u32::to_le_bytes).collect()
    }

    /// The pieces as our own section notes them.
    pub(crate) fn read(section: &[u8]) -> Option<Self> {
        let mut numbers = section
            .chunks_exact(4)
            .map(|it| u32::from_le_bytes([it[0], it[1], it[2], it[3]]));
        let (pieces, outside) = (numbers.next()?, numbers.next()?);
        let mut pair = || Some((numbers.next()?, numbers.next()?));
        let pieces = (0..pieces).map(|_| pair()).collect::<Option<_>>()?;
        let outside = (0..outside).map(|_| pair()).collect::<Option<_>>()?;
        Some(Self { pieces, outside })
    }

    /// Whether a section is the one that notes them.
    pub(crate) fn is_section(name: &str) -> bool {
        name == SECTION
    }
}

/// A module with what its linker told of the data in a section of our own, in place of the linker's.
///
/// # Errors
/// When it is damaged.
pub(crate) fn noted(module: &[u8]) -> Result<Vec<u8>, String> {
    let Some(objects) = Objects::of_linker(module)? else {
        return Ok(module.to_vec());
    };
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(module) {
        let payload = payload.map_err(|error| error.to_string())?;
        if let Payload::CustomSection(section) = &payload
            && (section.name() == "linking" || section.name().starts_with("reloc."))
        {
            continue;
        }
        if let Some((id, range)) = payload.as_section() {
            out.section(&RawSection {
                id,
                data: &module[range],
            });
        }
    }
    out.section(&CustomSection {
        name: SECTION.into(),
        data: Cow::Owned(objects.written()),
    });
    Ok(out.finish())
}

/// The numbers in an instruction that may be addresses: one that is given, or what a place in the memory is counted from. The
/// optimiser writes two that stand side by side, an address and a length, as one of twice the size.
pub(crate) fn numbers(operator: &Operator<'_>) -> Vec<u32> {
    use Operator as Op;
    let counted_from = match operator {
        Op::I32Const { value } => return vec![value.cast_unsigned()],
        Op::I64Const { value } => {
            let [low, high] = [*value, value >> 32];
            #[expect(clippy::cast_possible_truncation, reason = "one half each")]
            return vec![low as u32, high as u32];
        }
        Op::I32Load { memarg }
        | Op::I64Load { memarg }
        | Op::F32Load { memarg }
        | Op::F64Load { memarg }
        | Op::I32Load8S { memarg }
        | Op::I32Load8U { memarg }
        | Op::I32Load16S { memarg }
        | Op::I32Load16U { memarg }
        | Op::I64Load8S { memarg }
        | Op::I64Load8U { memarg }
        | Op::I64Load16S { memarg }
        | Op::I64Load16U { memarg }
        | Op::I64Load32S { memarg }
        | Op::I64Load32U { memarg }
        | Op::I32Store { memarg }
        | Op::I64Store { memarg }
        | Op::F32Store { memarg }
        | Op::F64Store { memarg }
        | Op::I32Store8 { memarg }
        | Op::I32Store16 { memarg }
        | Op::I64Store8 { memarg }
        | Op::I64Store16 { memarg }
        | Op::I64Store32 { memarg } => memarg.offset,
        _ => return Vec::new(),
    };
    u32::try_from(counted_from).into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        CodeSection, ConstExpr, DataSection, Encode, Function, FunctionSection, Instruction, LinkingSection,
        MemArg, MemorySection, MemoryType, SymbolTable, TypeSection,
    };

    /// Where the data begin.
    const BEGIN: u32 = 1024;
    /// How the linker writes a place in data, and one in code that is counted from: WebAssembly tool conventions, linking,
    /// relocation sections.
    const ADDRESS_IN_DATA: u8 = 5;
    const ADDRESS_IN_CODE: u8 = 3;

    /// Four pieces of eight bytes: the first leads to the second, a function to the first and, from 16 bytes before it, to
    /// the fourth. Nothing leads to the third.
    fn linked() -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut functions = FunctionSection::new();
        functions.function(0);
        let mut memories = MemorySection::new();
        memories.memory(MemoryType {
            minimum: 1,
            maximum: None,
            memory64: false,
            shared: false,
            page_size_log2: None,
        });
        let mut code = CodeSection::new();
        let mut function = Function::new([]);
        let before_fourth = MemArg {
            offset: u64::from(BEGIN + 24 - 16),
            align: 2,
            memory_index: 0,
        };
        for instruction in [
            Instruction::I32Const(BEGIN.cast_signed()),
            Instruction::I32Load(before_fourth),
            Instruction::Drop,
            Instruction::End,
        ] {
            function.instruction(&instruction);
        }
        code.function(&function);
        let mut bytes = [0; 32];
        bytes[4..8].copy_from_slice(&(BEGIN + 8).to_le_bytes());
        let mut data = DataSection::new();
        data.active(0, &ConstExpr::i32_const(BEGIN.cast_signed()), bytes);
        let mut symbols = SymbolTable::new();
        for (n, name) in ["one", "two", "three", "four"].into_iter().enumerate() {
            symbols.data(
                0,
                name,
                Some(wasm_encoder::DataSymbolDefinition {
                    index: 0,
                    offset: 8 * n as u32,
                    size: 8,
                }),
            );
        }
        let mut linking = LinkingSection::new();
        linking.symbol_table(&symbols);
        // Section, count, then kind, place, symbol, addend of each.
        let places = |kind: u8, symbol: u8, addend: i32| {
            let mut bytes = vec![3, 1, kind, 0, symbol];
            addend.encode(&mut bytes);
            bytes
        };
        let mut out = wasm_encoder::Module::new();
        out.section(&types)
            .section(&functions)
            .section(&memories)
            .section(&code)
            .section(&data)
            .section(&linking);
        for (name, bytes) in [
            ("reloc.CODE", places(ADDRESS_IN_CODE, 0, 0)),
            ("reloc.CODE", places(ADDRESS_IN_CODE, 3, -16)),
            ("reloc.DATA", places(ADDRESS_IN_DATA, 1, 0)),
        ] {
            out.section(&CustomSection {
                name: name.into(),
                data: bytes.into(),
            });
        }
        out.finish()
    }

    #[test]
    fn what_is_led_to_is_found_by_way_of_other_pieces_and_from_outside_of_it() {
        let noted = noted(&linked()).expect("a module");
        let module = Module::read(&noted).expect("a module");
        let objects = module.objects.as_ref().expect("it was noted");
        assert_eq!(
            objects.pieces,
            [0, 8, 16, 24].map(|at| (BEGIN + at, BEGIN + at + 8))
        );
        let reached = objects.reached(&module, module.bodies.iter()).expect("a body");
        // The number that leads to the fourth lies in the second.
        assert_eq!(reached, [true, true, false, true]);
        assert_eq!(objects.reached(&module, std::iter::empty()), Ok(vec![false; 4]));
    }

    #[test]
    fn a_module_whose_linker_told_nothing_stays_as_it_is() {
        let bare = super::super::without_names(&linked()).expect("a module");
        assert_eq!(noted(&bare), Ok(bare.clone()));
        assert_eq!(Module::read(&bare).expect("a module").objects, None);
    }
}
