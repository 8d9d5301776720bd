//! Splits the page's module in three: what the first picture needs, what the first findings and work on a board need besides,
//! and the rest; the second and the third follow.
//!
//! All work on one memory and one table of functions. A part calls a function of a later one through its place in
//! the table. Until that part is there, a *stand-in* is in that place: it asks the page for the part, which puts its own
//! functions into their places, and calls again. So the program never meets a function that is missing, whatever is
//! asked of it first; which function is in which part decides only when bytes are fetched. A place that nothing in a part
//! leads to has no stand-in.
//!
//! Data move as well where nothing of an earlier part leads to them ([`objects`]), and texts between marks: their bytes are
//! nought until their part is there. Such texts are read through one function, and never stand before it; the crate `words`
//! tells of it.

mod data;
mod files;
mod glue;
mod linked;
mod list;
mod module;
mod names;
mod objects;
mod places;
mod plan;
mod references;
#[cfg(test)]
mod tests;
mod watched;
mod write;

pub(crate) use files::{FIRST, MORE, REST, name_by_contents, parted, watch, without_names, write_list};

use module::Module;
use places::Places;
use references::References;
use std::collections::{BTreeMap, BTreeSet};
use wasmparser::{ExternalKind, Operator};

/// How many parts there are.
pub(crate) const PARTS: usize = 3;
/// Name of the module that [`load`] comes from, as the parts know it.
pub(crate) const PAGE: &str = "page";

/// What fetches a part and puts it in its place.
pub(crate) fn load(part: usize) -> String {
    format!("load{part}")
}

/// Name of a part, as later ones know it.
pub(crate) fn name(part: usize) -> String {
    format!("part{part}")
}

/// Up to so many bytes, a function that a later part calls of an earlier one stands in both: to call across costs more.
const SMALL: usize = 48;

/// What goes where.
pub(crate) struct Plan<'a> {
    /// Which part a function of this name goes into.
    pub(crate) part: &'a dyn Fn(&str) -> usize,
    /// What leads to what, by names, where that is known.
    pub(crate) references: Option<&'a References>,
    /// Whether this is the name of the function that all marked texts are read through.
    pub(crate) reads_texts: &'a dyn Fn(&str) -> bool,
    /// What a text begins and ends with that follows with that function.
    pub(crate) marks: [&'a str; 2],
    /// What the page gives to the module, by the names that the module has for it; what is not here is called the same.
    pub(crate) called: &'a BTreeMap<String, String>,
}

/// Where functions stand.
pub(crate) struct Standing {
    /// Which functions each function calls by name.
    pub(crate) calls: Vec<BTreeSet<u32>>,
    /// The part of each function.
    pub(crate) part: Vec<usize>,
    /// What stands in each part: its own functions, and small ones of earlier parts that these call.
    pub(crate) own: [BTreeSet<u32>; PARTS],
}

impl Standing {
    fn of(module: &Module<'_>, plan: &Plan<'_>) -> Result<Self, String> {
        let calls = calls(module)?;
        let part = parts(module, &calls, plan.part);
        let own = std::array::from_fn(|at| own(module, &calls, &part, at));
        Ok(Self { calls, part, own })
    }

    /// What a part calls and does not have itself.
    pub(crate) fn called(&self, part: usize) -> BTreeSet<u32> {
        let own = &self.own[part];
        let called = own.iter().flat_map(|it| &self.calls[*it as usize]);
        called.copied().filter(|it| !own.contains(it)).collect()
    }
}

/// Splits a module whose functions have names.
///
/// # Errors
/// What is not as it was in the modules that were split so far.
pub(crate) fn split(bytes: &[u8], plan: &Plan<'_>) -> Result<[Vec<u8>; PARTS], String> {
    let module = Module::read(bytes)?;
    if module.names.is_empty() {
        return Err("the module has no names of functions to split it by".to_owned());
    }
    let standing = Standing::of(&module, plan)?;
    let data = data::cut(&module, &standing, plan)?;
    let places = Places::of(&module, &standing, &data, plan.references)?;
    let writer = write::Writer::of(&module, &standing, &places, plan.called)?;
    let mut parts: [Vec<u8>; PARTS] = Default::default();
    for (at, part) in parts.iter_mut().enumerate() {
        *part = writer.part(at, &data[at])?;
    }
    Ok(parts)
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

/// The part of each function: the one that the plan names, or that of the first who calls it, where nothing else can. What
/// the outside knows stays.
fn parts(module: &Module<'_>, calls: &[BTreeSet<u32>], part: &dyn Fn(&str) -> usize) -> Vec<usize> {
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
    let mut parts: Vec<usize> = (0..module.of_type.len() as u32)
        .map(|function| match module.names.get(&function) {
            Some(name) if !outside.contains(&function) => part(name).min(PARTS - 1),
            _ => 0,
        })
        .collect();
    let mut callers = vec![Vec::new(); parts.len()];
    for (caller, called) in calls.iter().enumerate() {
        for &function in called.iter().filter(|it| **it as usize != caller) {
            callers[function as usize].push(caller);
        }
    }
    loop {
        let mut changed = false;
        for function in module.outer..parts.len() {
            let id = function as u32;
            if outside.contains(&id) || in_table.contains(&id) {
                continue;
            }
            let first = callers[function].iter().map(|caller| parts[*caller]).min();
            if let Some(later) = first.filter(|first| *first > parts[function]) {
                parts[function] = later;
                changed = true;
            }
        }
        if !changed {
            return parts;
        }
    }
}

fn own(module: &Module<'_>, calls: &[BTreeSet<u32>], part: &[usize], at: usize) -> BTreeSet<u32> {
    let all = module.outer as u32..part.len() as u32;
    let mut own: BTreeSet<u32> = all.filter(|it| part[*it as usize] == at).collect();
    let mut look: Vec<u32> = own.iter().copied().collect();
    while let Some(function) = look.pop() {
        for &called in &calls[function as usize] {
            let is_small = (called as usize)
                .checked_sub(module.outer)
                .is_some_and(|body| module.bodies[body].range().len() <= SMALL);
            if is_small && part[called as usize] < at && own.insert(called) {
                look.push(called);
            }
        }
    }
    own
}
