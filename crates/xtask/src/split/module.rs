//! A WebAssembly module taken apart, as far as it takes to make several of it.

use super::objects::Objects;
use std::collections::BTreeMap;
use wasm_encoder::RawSection;
use wasm_encoder::reencode::{Reencode, RoundtripReencoder};
use wasmparser::{
    DataKind, ElementItems, ElementKind, Export, FuncType, FunctionBody, GlobalType, Import, KnownCustom,
    MemoryType, Name, Operator, Parser, Payload, TableType, TypeRef,
};

/// What stands in a module. Functions are counted as in the module: those that come from outside first.
pub(crate) struct Module<'a> {
    pub(crate) types: Vec<FuncType>,
    pub(crate) imports: Vec<Import<'a>>,
    /// How many functions come from outside.
    pub(crate) outer: usize,
    /// Type of every function.
    pub(crate) of_type: Vec<u32>,
    pub(crate) tables: Vec<TableType>,
    pub(crate) memories: Vec<MemoryType>,
    pub(crate) globals: Vec<(GlobalType, wasm_encoder::ConstExpr)>,
    pub(crate) exports: Vec<Export<'a>>,
    pub(crate) start: Option<u32>,
    /// Table, first place, functions from there on.
    pub(crate) elements: Vec<(u32, u32, Vec<u32>)>,
    pub(crate) bodies: Vec<FunctionBody<'a>>,
    /// Address and bytes.
    pub(crate) data: Vec<(u32, &'a [u8])>,
    /// Names of functions, where the module has them.
    pub(crate) names: BTreeMap<u32, &'a str>,
    /// Pieces of its data, where that was noted.
    pub(crate) objects: Option<Objects>,
    /// The data as they lie in the memory, from the first address on.
    memory: (u32, Vec<u8>),
}

/// Says which of what a module can hold is not expected of this one.
fn unexpected(what: &str) -> String {
    format!("the module holds {what}, which its splitting does not know")
}

impl<'a> Module<'a> {
    /// Takes a module apart.
    ///
    /// # Errors
    /// What it holds that no program of ours did so far.
    pub(crate) fn read(bytes: &'a [u8]) -> Result<Self, String> {
        let mut it = Self {
            types: Vec::new(),
            imports: Vec::new(),
            outer: 0,
            of_type: Vec::new(),
            tables: Vec::new(),
            memories: Vec::new(),
            globals: Vec::new(),
            exports: Vec::new(),
            start: None,
            elements: Vec::new(),
            bodies: Vec::new(),
            data: Vec::new(),
            names: BTreeMap::new(),
            objects: None,
            memory: (0, Vec::new()),
        };
        for payload in Parser::new(0).parse_all(bytes) {
            let payload = payload.map_err(|error| error.to_string())?;
            it.take(payload).map_err(|error| match error {
                Error::Damaged(error) => error.to_string(),
                Error::Unexpected(what) => unexpected(what),
            })?;
        }
        it.lay_data();
        Ok(it)
    }

    fn lay_data(&mut self) {
        let begin = self.data.iter().map(|it| it.0).min().unwrap_or(0);
        let end = self
            .data
            .iter()
            .map(|(at, bytes)| *at as usize + bytes.len())
            .max();
        let mut memory = vec![0; end.unwrap_or(0).saturating_sub(begin as usize)];
        for (at, bytes) in &self.data {
            let from = (at - begin) as usize;
            memory[from..from + bytes.len()].copy_from_slice(bytes);
        }
        self.memory = (begin, memory);
    }

    /// What stands in the memory at an address, as a number of four bytes.
    pub(crate) fn word(&self, address: u32) -> Option<u32> {
        let from = address.checked_sub(self.memory.0)? as usize;
        let bytes = self.memory.1.get(from..from.checked_add(4)?)?;
        Some(u32::from_le_bytes(bytes.try_into().ok()?))
    }

    /// The address that a byte of the module's file has in the memory, where it has one.
    pub(crate) fn address_of(&self, file: &[u8], at: usize) -> Option<u32> {
        let of_file = file.as_ptr().addr();
        self.data.iter().find_map(|(address, bytes)| {
            let within = at.checked_sub(bytes.as_ptr().addr().checked_sub(of_file)?)?;
            (within < bytes.len()).then(|| address + within as u32)
        })
    }

    fn take(&mut self, payload: Payload<'a>) -> Result<(), Error> {
        match payload {
            Payload::TypeSection(section) => {
                for it in section.into_iter_err_on_gc_types() {
                    self.types.push(it?);
                }
            }
            Payload::ImportSection(section) => {
                for it in section.into_imports() {
                    let it = it?;
                    let TypeRef::Func(of_type) = it.ty else {
                        return Err(Error::Unexpected("an import that is no function"));
                    };
                    self.of_type.push(of_type);
                    self.imports.push(it);
                }
                self.outer = self.imports.len();
            }
            Payload::FunctionSection(section) => {
                for it in section {
                    self.of_type.push(it?);
                }
            }
            Payload::TableSection(section) => {
                for it in section {
                    self.tables.push(it?.ty);
                }
            }
            Payload::MemorySection(section) => {
                for it in section {
                    self.memories.push(it?);
                }
            }
            Payload::GlobalSection(section) => {
                for it in section {
                    let it = it?;
                    let init = RoundtripReencoder
                        .const_expr(it.init_expr)
                        .map_err(|_| Error::Unexpected("a global that does not begin with a number"))?;
                    self.globals.push((it.ty, init));
                }
            }
            Payload::ExportSection(section) => {
                for it in section {
                    self.exports.push(it?);
                }
            }
            Payload::StartSection { func, .. } => self.start = Some(func),
            Payload::ElementSection(section) => {
                for it in section {
                    let it = it?;
                    let ElementKind::Active {
                        table_index,
                        offset_expr,
                    } = it.kind
                    else {
                        // Functions that are only declared to be referred to stand in no table.
                        return Err(Error::Unexpected("a table's part that is not filled at once"));
                    };
                    let ElementItems::Functions(functions) = it.items else {
                        return Err(Error::Unexpected("a table that is filled by expressions"));
                    };
                    let functions: Result<Vec<u32>, _> = functions.into_iter().collect();
                    self.elements
                        .push((table_index.unwrap_or(0), place(&offset_expr)?, functions?));
                }
            }
            Payload::CodeSectionEntry(body) => self.bodies.push(body),
            Payload::DataSection(section) => {
                for it in section {
                    let it = it?;
                    let DataKind::Active {
                        memory_index: 0,
                        offset_expr,
                    } = it.kind
                    else {
                        return Err(Error::Unexpected("data that is not there from the start"));
                    };
                    self.data.push((place(&offset_expr)?, it.data));
                }
            }
            Payload::CustomSection(section) => {
                if Objects::is_section(section.name()) {
                    self.objects = Objects::read(section.data());
                }
                if let KnownCustom::Name(names) = section.as_known() {
                    for part in names {
                        if let Name::Function(functions) = part? {
                            for it in functions {
                                let it = it?;
                                self.names.insert(it.index, it.name);
                            }
                        }
                    }
                }
            }
            Payload::Version { .. }
            | Payload::DataCountSection { .. }
            | Payload::CodeSectionStart { .. }
            | Payload::End(_) => {}
            _ => return Err(Error::Unexpected("a section of a kind")),
        }
        Ok(())
    }
}

/// A module without those sections beside the program whose name is dropped.
///
/// # Errors
/// When it is damaged.
pub(crate) fn without(module: &[u8], drops: &dyn Fn(&str) -> bool) -> Result<wasm_encoder::Module, String> {
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(module) {
        let payload = payload.map_err(|error| error.to_string())?;
        if let Payload::CustomSection(section) = &payload
            && drops(section.name())
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
    Ok(out)
}

/// Why a module could not be taken apart.
enum Error {
    Damaged(wasmparser::BinaryReaderError),
    Unexpected(&'static str),
}

impl From<wasmparser::BinaryReaderError> for Error {
    fn from(error: wasmparser::BinaryReaderError) -> Self {
        Self::Damaged(error)
    }
}

/// The number that a place is told by.
fn place(told: &wasmparser::ConstExpr<'_>) -> Result<u32, Error> {
    match told.get_operators_reader().read()? {
        Operator::I32Const { value } => Ok(value.cast_unsigned()),
        _ => Err(Error::Unexpected(
            "a place that is told by something else than a number",
        )),
    }
}
