//! Splits the page's module in two: what the first picture and work on a board need, and the rest, which follows.
//!
//! Both work on one memory and one table of functions. The first half calls a function of the other through its place in
//! the table. Until the rest is there, a *stand-in* is in that place: it asks the page for the rest, which puts its own
//! functions into their places, and calls again. So the program never meets a function that is missing, whatever is
//! asked of it first; which function is in which half decides only when bytes are fetched.
//!
//! Texts between marks move as well: their bytes are nought until the rest is there. They are read through one function, which
//! moves with them; the crate `words` tells of it.

mod files;
mod glue;
mod module;
mod plan;
#[cfg(test)]
mod tests;

pub(crate) use files::{halve, without_names};

use module::Module;
use std::collections::{BTreeMap, BTreeSet};
use wasm_encoder::reencode::{Error as ReencodeError, Reencode};
use wasm_encoder::{
    CodeSection, ConstExpr, DataSection, ElementSection, Elements, EntityType, ExportKind, ExportSection,
    Function, FunctionSection, GlobalSection, ImportSection, Instruction, MemorySection, TableSection,
    TypeSection,
};
use wasmparser::{ExternalKind, FunctionBody, Operator, RefType};

/// Name of the module that [`LOAD`] comes from, as the first half knows it.
pub(crate) const PAGE: &str = "page";
/// What fetches the rest and puts it in its place.
pub(crate) const LOAD: &str = "load";
/// Name of the first half, as the rest knows it.
pub(crate) const FIRST: &str = "first";

/// Up to so many bytes, a function that both halves call stands in both: to call across costs more.
const SMALL: usize = 48;

/// What goes into the rest.
pub(crate) struct Plan<'a> {
    /// Whether a function of this name and size does.
    pub(crate) moves: &'a dyn Fn(&str, usize) -> bool,
    /// Whether this is the name of the function that all texts that move are read through.
    pub(crate) reads_texts: &'a dyn Fn(&str) -> bool,
    /// What a text that moves begins and ends with.
    pub(crate) marks: [&'a str; 2],
}

/// The two modules.
pub(crate) struct Halves {
    /// What the page begins with.
    pub(crate) first: Vec<u8>,
    /// What it fetches afterwards.
    pub(crate) rest: Vec<u8>,
}

/// Splits a module whose functions have names.
///
/// # Errors
/// What is not as it was in the modules that were split so far.
pub(crate) fn split(bytes: &[u8], plan: &Plan<'_>) -> Result<Halves, String> {
    let module = Module::read(bytes)?;
    if module.names.is_empty() {
        return Err("the module has no names of functions to split it by".to_owned());
    }
    let calls = calls(&module)?;
    let moved = moved(&module, &calls, plan.moves);
    let places = Places::of(&module, &calls, &moved)?;
    let own = in_rest(&module, &calls, &moved);
    // As long as what reads the texts stays, they do.
    let is_reader = |(function, name): (&u32, &&str)| moved[*function as usize] && (plan.reads_texts)(name);
    let (kept_data, moved_data) = if module.names.iter().any(is_reader) {
        cut(&module, plan.marks.map(str::as_bytes))
    } else {
        (module.data.clone(), Vec::new())
    };
    let wanted = wanted(&calls, &own);
    Ok(Halves {
        first: first(&module, &moved, &places, &wanted, &kept_data)?,
        rest: rest(&module, &own, &places, &wanted, &moved_data)?,
    })
}

/// Which functions each function calls by name, each once.
fn calls(module: &Module<'_>) -> Result<Vec<BTreeSet<u32>>, String> {
    let mut all = vec![BTreeSet::new(); module.outer];
    for body in &module.bodies {
        let mut own = BTreeSet::new();
        let operators = body.get_operators_reader().map_err(|error| error.to_string())?;
        for operator in operators {
            match operator.map_err(|error| error.to_string())? {
                Operator::Call { function_index } => {
                    own.insert(function_index);
                }
                Operator::RefFunc { .. } | Operator::ReturnCall { .. } => {
                    return Err(
                        "the module takes hold of functions in ways that its splitting does not know"
                            .to_owned(),
                    );
                }
                _ => {}
            }
        }
        all.push(own);
    }
    Ok(all)
}

/// Which functions move: those that the plan names, and those that nothing else calls. What the outside knows stays.
fn moved(module: &Module<'_>, calls: &[BTreeSet<u32>], moves: &dyn Fn(&str, usize) -> bool) -> Vec<bool> {
    let outside: BTreeSet<u32> = module
        .exports
        .iter()
        .filter(|export| export.kind == ExternalKind::Func)
        .map(|export| export.index)
        .chain(module.start)
        .chain(0..module.outer as u32)
        .collect();
    let in_table: BTreeSet<u32> = module
        .elements
        .iter()
        .flat_map(|it| it.2.iter().copied())
        .collect();
    let mut moved: Vec<bool> = (0..module.of_type.len() as u32)
        .map(|function| {
            let size = || module.bodies[function as usize - module.outer].range().len();
            !outside.contains(&function)
                && module
                    .names
                    .get(&function)
                    .is_some_and(|name| moves(name, size()))
        })
        .collect();
    let mut callers = vec![Vec::new(); moved.len()];
    for (caller, called) in calls.iter().enumerate() {
        for &function in called {
            callers[function as usize].push(caller);
        }
    }
    loop {
        let more: Vec<usize> = (module.outer..moved.len())
            .filter(|&function| {
                let id = function as u32;
                !moved[function]
                    && !outside.contains(&id)
                    && !in_table.contains(&id)
                    && !callers[function].is_empty()
                    && callers[function]
                        .iter()
                        .all(|&caller| moved[caller] || caller == function)
            })
            .collect();
        if more.is_empty() {
            return moved;
        }
        for function in more {
            moved[function] = true;
        }
    }
}

/// What stands in the rest: all that moves, and the small functions that it calls.
fn in_rest(module: &Module<'_>, calls: &[BTreeSet<u32>], moved: &[bool]) -> BTreeSet<u32> {
    let mut own: BTreeSet<u32> = (0..moved.len() as u32).filter(|&it| moved[it as usize]).collect();
    let mut look: Vec<u32> = own.iter().copied().collect();
    while let Some(function) = look.pop() {
        for &called in &calls[function as usize] {
            let small = (called as usize)
                .checked_sub(module.outer)
                .is_some_and(|at| module.bodies[at].range().len() <= SMALL);
            if small && own.insert(called) {
                look.push(called);
            }
        }
    }
    own
}

/// Where the functions that move stand in the table of functions.
struct Places {
    table: u32,
    /// Every place that is filled at the start, with its function.
    filled: BTreeMap<u32, u32>,
    /// Of each function that moves and has one: its place, the first where it has several.
    of: BTreeMap<u32, u32>,
    /// How many places the table has with those that are new.
    end: u32,
}

impl Places {
    fn of(module: &Module<'_>, calls: &[BTreeSet<u32>], moved: &[bool]) -> Result<Self, String> {
        let (table, its) = module
            .tables
            .iter()
            .enumerate()
            .find(|(_, table)| table.element_type == RefType::FUNCREF)
            .ok_or("the module has no table of functions")?;
        let table = table as u32;
        let mut filled = BTreeMap::new();
        for (_, from, functions) in module.elements.iter().filter(|it| it.0 == table) {
            filled.extend((*from..).zip(functions.iter().copied()));
        }
        let mut of = BTreeMap::new();
        for (&place, &function) in &filled {
            if moved[function as usize] {
                of.entry(function).or_insert(place);
            }
        }
        let mut end = u32::try_from(its.initial).map_err(|error| error.to_string())?;
        for (_, called) in calls.iter().enumerate().filter(|(caller, _)| !moved[*caller]) {
            for &function in called.iter().filter(|it| moved[**it as usize]) {
                of.entry(function).or_insert_with(|| {
                    filled.insert(end, function);
                    end += 1;
                    end - 1
                });
            }
        }
        Ok(Self {
            table,
            filled,
            of,
            end,
        })
    }

    /// The functions that places hold, in runs without gaps: the first place of each, and what it holds.
    fn runs(&self, holds: impl Fn(u32) -> Option<u32>) -> Vec<(u32, Vec<u32>)> {
        let mut runs: Vec<(u32, Vec<u32>)> = Vec::new();
        for (&place, &function) in &self.filled {
            let Some(function) = holds(function) else { continue };
            match runs.last_mut() {
                Some((from, run)) if *from + run.len() as u32 == place => run.push(function),
                _ => runs.push((place, vec![function])),
            }
        }
        runs
    }
}

/// Functions of the first half that the rest calls.
fn wanted(calls: &[BTreeSet<u32>], own: &BTreeSet<u32>) -> Vec<u32> {
    let wanted: BTreeSet<u32> = own
        .iter()
        .flat_map(|it| calls[*it as usize].iter().copied())
        .filter(|called| !own.contains(called))
        .collect();
    wanted.into_iter().collect()
}

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

/// What goes across, in one order: memory, tables, globals, functions.
fn across(module: &Module<'_>, wanted: &[u32]) -> Vec<(ExportKind, u32)> {
    let count = |list: usize| 0..list as u32;
    let mut all: Vec<(ExportKind, u32)> = Vec::new();
    all.extend(count(module.memories.len()).map(|it| (ExportKind::Memory, it)));
    all.extend(count(module.tables.len()).map(|it| (ExportKind::Table, it)));
    all.extend(count(module.globals.len()).map(|it| (ExportKind::Global, it)));
    all.extend(wanted.iter().map(|it| (ExportKind::Func, *it)));
    all
}

/// Writes functions of one half, with their numbers there.
struct Rewrite<'a> {
    /// Number of each function of the whole module that this half has.
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
            .ok_or_else(|| ReencodeError::UserError(format!("function {function} is in neither half")))
    }
}

impl Rewrite<'_> {
    fn body(&mut self, code: &mut CodeSection, body: &FunctionBody<'_>) -> Result<(), String> {
        let told = |error: ReencodeError<String>| error.to_string();
        let mut function = self.new_function_with_parsed_locals(body).map_err(told)?;
        let operators = body.get_operators_reader().map_err(|error| error.to_string())?;
        for operator in operators {
            match operator.map_err(|error| error.to_string())? {
                Operator::Call { function_index } if !self.number.contains_key(&function_index) => {
                    let place = self.places.of.get(&function_index);
                    let place = place.ok_or_else(|| format!("function {function_index} has no place"))?;
                    self.call_place(&mut function, *place, self.of_type[function_index as usize]);
                }
                operator => {
                    function.instruction(&self.instruction(operator).map_err(told)?);
                }
            }
        }
        code.function(&function);
        Ok(())
    }

    fn call_place(&self, function: &mut Function, place: u32, of_type: u32) {
        function.instruction(&Instruction::I32Const(place.cast_signed()));
        function.instruction(&Instruction::CallIndirect {
            type_index: of_type,
            table_index: self.places.table,
        });
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

fn first(
    module: &Module<'_>,
    moved: &[bool],
    places: &Places,
    wanted: &[u32],
    data: &[(u32, &[u8])],
) -> Result<Vec<u8>, String> {
    let mut again = wasm_encoder::reencode::RoundtripReencoder;
    let (types, plain) = types(module)?;
    let mut imports = ImportSection::new();
    for (it, of_type) in module.imports.iter().zip(&module.of_type) {
        imports.import(it.module, it.name, EntityType::Function(*of_type));
    }
    imports.import(PAGE, LOAD, EntityType::Function(plain));
    let load = module.outer as u32;

    let kept = in_order(
        module,
        (module.outer..moved.len())
            .filter(|it| !moved[*it])
            .map(|it| it as u32),
    );
    let mut number: BTreeMap<u32, u32> = (0..load).map(|it| (it, it)).collect();
    number.extend(kept.iter().copied().zip(load + 1..));
    let stand_ins: BTreeMap<u32, u32> = places
        .of
        .keys()
        .copied()
        .zip(load + 1 + kept.len() as u32..)
        .collect();

    let (mut functions, mut code) = (FunctionSection::new(), CodeSection::new());
    let mut rewrite = Rewrite {
        number: &number,
        places,
        of_type: &module.of_type,
    };
    for &it in &kept {
        functions.function(module.of_type[it as usize]);
        rewrite.body(&mut code, &module.bodies[it as usize - module.outer])?;
    }
    for (&function, &place) in &places.of {
        let of_type = module.of_type[function as usize];
        functions.function(of_type);
        let mut stand_in = Function::new([]);
        stand_in.instruction(&Instruction::Call(load));
        for value in 0..module.types[of_type as usize].params().len() as u32 {
            stand_in.instruction(&Instruction::LocalGet(value));
        }
        rewrite.call_place(&mut stand_in, place, of_type);
        stand_in.instruction(&Instruction::End);
        code.function(&stand_in);
    }

    let mut tables = TableSection::new();
    for (index, it) in module.tables.iter().enumerate() {
        let mut it = again.table_type(*it).map_err(|error| error.to_string())?;
        if index as u32 == places.table {
            let more = u64::from(places.end) - it.minimum;
            it.minimum += more;
            it.maximum = it.maximum.map(|most| most + more);
        }
        tables.table(it);
    }
    let mut memories = MemorySection::new();
    for it in &module.memories {
        memories.memory(again.memory_type(*it).map_err(|error| error.to_string())?);
    }
    let mut globals = GlobalSection::new();
    for (it, init) in &module.globals {
        globals.global(again.global_type(*it).map_err(|error| error.to_string())?, init);
    }
    let mut exports = ExportSection::new();
    for it in &module.exports {
        let index = if it.kind == ExternalKind::Func {
            number[&it.index]
        } else {
            it.index
        };
        let kind = again.export_kind(it.kind).map_err(|error| error.to_string())?;
        exports.export(it.name, kind, index);
    }
    for (n, (kind, index)) in across(module, wanted).into_iter().enumerate() {
        let index = if kind == ExportKind::Func {
            number[&index]
        } else {
            index
        };
        exports.export(&short(n), kind, index);
    }
    let mut elements = ElementSection::new();
    let holds = |function: u32| {
        stand_ins
            .get(&function)
            .or_else(|| number.get(&function))
            .copied()
    };
    fill(&mut elements, places.table, &places.runs(holds));
    for (table, from, functions) in module.elements.iter().filter(|it| it.0 != places.table) {
        let functions: Vec<u32> = functions.iter().filter_map(|it| holds(*it)).collect();
        fill(&mut elements, *table, &[(*from, functions)]);
    }

    let mut out = wasm_encoder::Module::new();
    out.section(&types)
        .section(&imports)
        .section(&functions)
        .section(&tables)
        .section(&memories)
        .section(&globals)
        .section(&exports);
    if let Some(start) = module.start {
        out.section(&wasm_encoder::StartSection {
            function_index: number[&start],
        });
    }
    out.section(&elements).section(&code).section(&data_section(data));
    Ok(out.finish())
}

fn rest(
    module: &Module<'_>,
    own: &BTreeSet<u32>,
    places: &Places,
    wanted: &[u32],
    data: &[(u32, &[u8])],
) -> Result<Vec<u8>, String> {
    let mut again = wasm_encoder::reencode::RoundtripReencoder;
    let (types, _) = types(module)?;
    let mut imports = ImportSection::new();
    for (n, (kind, index)) in across(module, wanted).into_iter().enumerate() {
        let at = index as usize;
        let told = |error: wasm_encoder::reencode::Error| error.to_string();
        let what = match kind {
            ExportKind::Memory => EntityType::Memory(again.memory_type(module.memories[at]).map_err(told)?),
            ExportKind::Table => {
                let mut it = again.table_type(module.tables[at]).map_err(told)?;
                if index == places.table {
                    it.minimum = u64::from(places.end);
                    it.maximum = it.maximum.map(|most| most.max(it.minimum));
                }
                EntityType::Table(it)
            }
            ExportKind::Global => EntityType::Global(again.global_type(module.globals[at].0).map_err(told)?),
            _ => EntityType::Function(module.of_type[at]),
        };
        imports.import(FIRST, &short(n), what);
    }
    let mut number: BTreeMap<u32, u32> = wanted.iter().copied().zip(0..).collect();
    let own = in_order(module, own.iter().copied());
    number.extend(own.iter().copied().zip(wanted.len() as u32..));
    let (mut functions, mut code) = (FunctionSection::new(), CodeSection::new());
    let mut rewrite = Rewrite {
        number: &number,
        places,
        of_type: &module.of_type,
    };
    for &it in &own {
        functions.function(module.of_type[it as usize]);
        rewrite.body(&mut code, &module.bodies[it as usize - module.outer])?;
    }
    let mut elements = ElementSection::new();
    let holds = |function: u32| {
        places
            .of
            .contains_key(&function)
            .then(|| number.get(&function).copied())
            .flatten()
    };
    fill(&mut elements, places.table, &places.runs(holds));
    let mut out = wasm_encoder::Module::new();
    out.section(&types)
        .section(&imports)
        .section(&functions)
        .section(&elements)
        .section(&code)
        .section(&data_section(data));
    Ok(out.finish())
}

fn fill(section: &mut ElementSection, table: u32, runs: &[(u32, Vec<u32>)]) {
    for (from, functions) in runs {
        section.active(
            (table != 0).then_some(table),
            &ConstExpr::i32_const(from.cast_signed()),
            Elements::Functions(functions.into()),
        );
    }
}

fn data_section(data: &[(u32, &[u8])]) -> DataSection {
    let mut section = DataSection::new();
    for (address, bytes) in data {
        section.active(
            0,
            &ConstExpr::i32_const(address.cast_signed()),
            bytes.iter().copied(),
        );
    }
    section
}

/// Data of the first half and of the rest: address and bytes.
type Cut<'a> = (Vec<(u32, &'a [u8])>, Vec<(u32, &'a [u8])>);

/// Takes the texts between marks out of the data.
fn cut<'a>(module: &Module<'a>, [begin, end]: [&[u8]; 2]) -> Cut<'a> {
    let (mut kept, mut moved) = (Vec::new(), Vec::new());
    for &(address, bytes) in &module.data {
        let (mut address, mut bytes) = (address, bytes);
        while let Some(from) = find(bytes, begin) {
            let Some(length) = find(&bytes[from..], end).map(|at| at + end.len()) else {
                break;
            };
            let (before, rest) = bytes.split_at(from);
            let (text, after) = rest.split_at(length);
            if !before.is_empty() {
                kept.push((address, before));
            }
            moved.push((address + from as u32, text));
            address += (from + length) as u32;
            bytes = after;
        }
        if !bytes.is_empty() {
            kept.push((address, bytes));
        }
    }
    (kept, moved)
}

fn find(bytes: &[u8], what: &[u8]) -> Option<usize> {
    bytes.windows(what.len()).position(|it| it == what)
}
