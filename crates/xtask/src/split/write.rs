//! Writes the parts.

use super::data::{self, Run};
use super::module::Module;
use super::places::Places;
use super::{PAGE, PARTS, Standing, load, name};
use std::collections::{BTreeMap, BTreeSet};
use wasm_encoder::reencode::{Error as ReencodeError, Reencode, RoundtripReencoder};
use wasm_encoder::{
    CodeSection, ConstExpr, ElementSection, Elements, EntityType, ExportKind, ExportSection, Function,
    FunctionSection, GlobalSection, ImportSection, Instruction, MemorySection, NameMap, NameSection,
    TableSection, TypeSection,
};
use wasmparser::{ExternalKind, FunctionBody, Operator};

/// A short name for the nth thing that goes across.
fn short(mut n: usize) -> String {
    const LETTERS: &[u8] = b"0123456789abcdefghijklmnopqrstuvwxyz";
    let mut name = String::from("~");
    loop {
        name.push(char::from(LETTERS[n % LETTERS.len()]));
        n /= LETTERS.len();
        if n == 0 {
            return name;
        }
    }
}

fn told<E: std::fmt::Display>(error: E) -> String {
    error.to_string()
}

/// Writes functions of one part, with their numbers there.
struct Rewrite<'a> {
    /// Number of each function of the whole module that this part has.
    number: &'a BTreeMap<u32, u32>,
    places: &'a Places,
    of_type: &'a [u32],
}

impl Reencode for Rewrite<'_> {
    type Error = String;

    fn function_index(&mut self, function: u32) -> Result<u32, ReencodeError<String>> {
        self.number
            .get(&function)
            .copied()
            .ok_or_else(|| ReencodeError::UserError(format!("function {function} is in no part")))
    }
}

impl Rewrite<'_> {
    fn body(&mut self, code: &mut CodeSection, body: &FunctionBody<'_>) -> Result<(), String> {
        let mut function = self.new_function_with_parsed_locals(body).map_err(told)?;
        for operator in body.get_operators_reader().map_err(told)? {
            match operator.map_err(told)? {
                Operator::Call { function_index } if !self.number.contains_key(&function_index) => {
                    self.call_place(&mut function, function_index)?;
                }
                operator => {
                    function.instruction(&self.instruction(operator).map_err(told)?);
                }
            }
        }
        code.function(&function);
        Ok(())
    }

    /// Calls a function through its place.
    fn call_place(&self, function: &mut Function, called: u32) -> Result<(), String> {
        let place = self.places.of.get(&called);
        let place = place.ok_or_else(|| format!("function {called} has no place"))?;
        function.instruction(&Instruction::I32Const(place.cast_signed()));
        function.instruction(&Instruction::CallIndirect {
            type_index: self.of_type[called as usize],
            table_index: self.places.table,
        });
        Ok(())
    }
}

/// What all parts are written from.
pub(crate) struct Writer<'a> {
    module: &'a Module<'a>,
    standing: &'a Standing,
    places: &'a Places,
    /// Functions of each part that later ones call, in order.
    given: [Vec<u32>; PARTS],
    /// What the page calls what it gives.
    called: &'a BTreeMap<String, String>,
    types: TypeSection,
    /// The type of what takes nothing and gives nothing.
    plain: u32,
}

impl<'a> Writer<'a> {
    pub(crate) fn of(
        module: &'a Module<'a>,
        standing: &'a Standing,
        places: &'a Places,
        called: &'a BTreeMap<String, String>,
    ) -> Result<Self, String> {
        let mut given: [BTreeSet<u32>; PARTS] = Default::default();
        for part in 0..PARTS {
            for function in standing.called(part) {
                let from = standing.part[function as usize];
                if from < part {
                    given[from].insert(function);
                }
            }
        }
        let (types, plain) = types(module)?;
        Ok(Self {
            module,
            standing,
            places,
            given: given.map(|it| it.into_iter().collect()),
            called,
            types,
            plain,
        })
    }

    /// What the parts share besides functions, in order.
    fn shared(&self) -> Vec<(ExportKind, u32)> {
        let count = |list: usize| 0..list as u32;
        let module = self.module;
        let mut all: Vec<(ExportKind, u32)> = Vec::new();
        all.extend(count(module.memories.len()).map(|it| (ExportKind::Memory, it)));
        all.extend(count(module.tables.len()).map(|it| (ExportKind::Table, it)));
        all.extend(count(module.globals.len()).map(|it| (ExportKind::Global, it)));
        all
    }

    /// The name by which a part gives a function to later ones.
    fn name_given(&self, from: usize, function: u32) -> Option<String> {
        let at = self.given[from].binary_search(&function).ok()?;
        let before = if from == 0 { self.shared().len() } else { 0 };
        Some(short(before + at))
    }

    /// Takes from earlier parts what this one needs of them; gives the functions, in the order of their numbers.
    fn imports(&self, part: usize) -> Result<(ImportSection, Vec<u32>), String> {
        let module = self.module;
        let mut imports = ImportSection::new();
        let mut functions = Vec::new();
        if part == 0 {
            for (it, of_type) in module.imports.iter().zip(&module.of_type) {
                let called = self.called.get(it.name).map_or(it.name, String::as_str);
                imports.import(it.module, called, EntityType::Function(*of_type));
            }
            functions.extend(0..module.outer as u32);
        } else {
            let mut again = RoundtripReencoder;
            for (n, (kind, index)) in self.shared().into_iter().enumerate() {
                let at = index as usize;
                let what = match kind {
                    ExportKind::Memory => {
                        EntityType::Memory(again.memory_type(module.memories[at]).map_err(told)?)
                    }
                    ExportKind::Table => EntityType::Table(self.table(at)?),
                    _ => EntityType::Global(again.global_type(module.globals[at].0).map_err(told)?),
                };
                imports.import(&name(0), &short(n), what);
            }
            for function in self.standing.called(part) {
                let from = self.standing.part[function as usize];
                if from < part
                    && let Some(given) = self.name_given(from, function)
                {
                    let of_type = module.of_type[function as usize];
                    imports.import(&name(from), &given, EntityType::Function(of_type));
                    functions.push(function);
                }
            }
        }
        for later in part + 1..PARTS {
            imports.import(PAGE, &load(later), EntityType::Function(self.plain));
        }
        Ok((imports, functions))
    }

    /// A table with the places that are new.
    fn table(&self, at: usize) -> Result<wasm_encoder::TableType, String> {
        let mut it = RoundtripReencoder
            .table_type(self.module.tables[at])
            .map_err(told)?;
        if at as u32 == self.places.table {
            it.minimum = u64::from(self.places.end);
            it.maximum = it.maximum.map(|most| most.max(it.minimum));
        }
        Ok(it)
    }

    /// A stand-in: has the part fetched, and calls again.
    fn stand_in(&self, rewrite: &Rewrite<'_>, function: u32, load: u32) -> Result<Function, String> {
        let of_type = self.module.of_type[function as usize] as usize;
        let mut stand_in = Function::new([]);
        stand_in.instruction(&Instruction::Call(load));
        for value in 0..self.module.types[of_type].params().len() as u32 {
            stand_in.instruction(&Instruction::LocalGet(value));
        }
        rewrite.call_place(&mut stand_in, function)?;
        stand_in.instruction(&Instruction::End);
        Ok(stand_in)
    }

    /// Writes one part with its data.
    pub(crate) fn part(&self, part: usize, data: &[Run]) -> Result<Vec<u8>, String> {
        let module = self.module;
        let (imports, outer) = self.imports(part)?;
        let loads = outer.len() as u32;
        let own = in_order(module, self.standing.own[part].iter().copied());
        let mut number: BTreeMap<u32, u32> = outer.into_iter().zip(0..).collect();
        let first = loads + (PARTS - 1 - part) as u32;
        number.extend(own.iter().copied().zip(first..));
        let stand_ins: BTreeMap<u32, u32> = self.places.stand_ins[part]
            .iter()
            .copied()
            .zip(first + own.len() as u32..)
            .collect();
        let (mut functions, mut code) = (FunctionSection::new(), CodeSection::new());
        let mut rewrite = Rewrite {
            number: &number,
            places: self.places,
            of_type: &module.of_type,
        };
        for &it in &own {
            functions.function(module.of_type[it as usize]);
            rewrite.body(&mut code, &module.bodies[it as usize - module.outer])?;
        }
        for &it in stand_ins.keys() {
            functions.function(module.of_type[it as usize]);
            let load = loads + (self.standing.part[it as usize] - part - 1) as u32;
            code.function(&self.stand_in(&rewrite, it, load)?);
        }
        let mut exports = ExportSection::new();
        if part == 0 {
            self.own_exports(&mut exports, &number)?;
        }
        for &it in &self.given[part] {
            let given = self.name_given(part, it).unwrap_or_default();
            exports.export(&given, ExportKind::Func, number[&it]);
        }
        let holds = |function: u32| {
            let is_own = self.standing.part[function as usize] == part;
            let own = number.get(&function).filter(|_| is_own);
            own.or_else(|| stand_ins.get(&function)).copied()
        };
        let mut elements = ElementSection::new();
        fill(&mut elements, self.places.table, &self.places.runs(holds));
        let mut out = wasm_encoder::Module::new();
        out.section(&self.types).section(&imports).section(&functions);
        if part == 0 {
            for (table, from, functions) in module.elements.iter().filter(|it| it.0 != self.places.table) {
                let functions: Vec<u32> = functions.iter().filter_map(|it| holds(*it)).collect();
                fill(&mut elements, *table, &[(*from, functions)]);
            }
            self.room(&mut out)?;
        }
        out.section(&exports);
        if let Some(start) = module.start.filter(|_| part == 0) {
            out.section(&wasm_encoder::StartSection {
                function_index: number[&start],
            });
        }
        let mut names = NameMap::new();
        let all = own
            .iter()
            .map(|it| (*it, ""))
            .chain(stand_ins.keys().map(|it| (*it, "for ")));
        for ((function, what), number) in all.zip(first..) {
            let name = module.names.get(&function).copied().unwrap_or_default();
            names.append(number, &format!("{what}{name}"));
        }
        let mut named = NameSection::new();
        named.functions(&names);
        out.section(&elements)
            .section(&code)
            .section(&data::section(data))
            .section(&named);
        Ok(out.finish())
    }

    /// What the whole module gave to the outside, and what the parts share.
    fn own_exports(&self, exports: &mut ExportSection, number: &BTreeMap<u32, u32>) -> Result<(), String> {
        for it in &self.module.exports {
            let index = if it.kind == ExternalKind::Func {
                number[&it.index]
            } else {
                it.index
            };
            let kind = RoundtripReencoder.export_kind(it.kind).map_err(told)?;
            exports.export(it.name, kind, index);
        }
        for (n, (kind, index)) in self.shared().into_iter().enumerate() {
            exports.export(&short(n), kind, index);
        }
        Ok(())
    }

    /// Tables, memories and globals, which the first part has for all.
    fn room(&self, out: &mut wasm_encoder::Module) -> Result<(), String> {
        let mut tables = TableSection::new();
        for at in 0..self.module.tables.len() {
            tables.table(self.table(at)?);
        }
        let mut memories = MemorySection::new();
        for it in &self.module.memories {
            memories.memory(RoundtripReencoder.memory_type(*it).map_err(told)?);
        }
        let mut globals = GlobalSection::new();
        for (it, init) in &self.module.globals {
            globals.global(RoundtripReencoder.global_type(*it).map_err(told)?, init);
        }
        out.section(&tables).section(&memories).section(&globals);
        Ok(())
    }
}

fn types(module: &Module<'_>) -> Result<(TypeSection, u32), String> {
    let mut section = TypeSection::new();
    let mut again = wasm_encoder::reencode::RoundtripReencoder;
    for it in &module.types {
        let it = again.func_type(it.clone()).map_err(|error| error.to_string())?;
        section.ty().func_type(&it);
    }
    // Nothing in, nothing out.
    let plain = module
        .types
        .iter()
        .position(|it| it.params().is_empty() && it.results().is_empty());
    let plain = plain.unwrap_or_else(|| {
        section.ty().function([], []);
        module.types.len()
    });
    Ok((section, plain as u32))
}

/// Up to so many bytes, a function is put beside those that are alike in its bytes rather than in its name.
const SHORT: usize = 150;

/// The functions in an order in which those that are alike are near one another, which packs better: 5 per cent of the gzipped
/// page.
fn in_order(module: &Module<'_>, functions: impl Iterator<Item = u32>) -> Vec<u32> {
    let mut all: Vec<u32> = functions.collect();
    all.sort_by_cached_key(|it| {
        let body = module.bodies[*it as usize - module.outer].as_bytes();
        let name = module.names.get(it).copied().unwrap_or_default();
        if body.len() < SHORT {
            (true, body, *it)
        } else {
            (false, name.as_bytes(), *it)
        }
    });
    all
}

pub(super) fn fill(section: &mut ElementSection, table: u32, runs: &[(u32, Vec<u32>)]) {
    for (from, functions) in runs {
        section.active(
            (table != 0).then_some(table),
            &ConstExpr::i32_const(from.cast_signed()),
            Elements::Functions(functions.into()),
        );
    }
}
