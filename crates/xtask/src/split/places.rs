//! Where functions of later parts stand in the table of functions.

use super::data::Run;
use super::module::Module;
use super::names::written;
use super::objects;
use super::references::References;
use super::{PARTS, Standing};
use std::collections::{BTreeMap, BTreeSet};
use wasmparser::RefType;

/// The table of functions, and what of it each part fills.
pub(crate) struct Places {
    pub(crate) table: u32,
    /// Every place that is filled at the end, with its function.
    filled: BTreeMap<u32, u32>,
    /// Of each function that has one: its place, the first where it has several.
    pub(crate) of: BTreeMap<u32, u32>,
    /// How many places the table has with those that are new.
    pub(crate) end: u32,
    /// Functions of later parts that each part puts stand-ins for into their places: those that it leads to, and no
    /// earlier one does.
    pub(crate) stand_ins: [BTreeSet<u32>; PARTS],
}

impl Places {
    pub(crate) fn of(
        module: &Module<'_>,
        standing: &Standing,
        data: &[Vec<Run>; PARTS],
        references: Option<&References>,
    ) -> Result<Self, String> {
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
            of.entry(function).or_insert(place);
        }
        let mut end = u32::try_from(its.initial).map_err(|error| error.to_string())?;
        let mut stand_ins: [BTreeSet<u32>; PARTS] = Default::default();
        let mut known: BTreeSet<u32> = BTreeSet::new();
        let by_name = by_name(module);
        for part in 0..PARTS {
            let is_later = |function: &u32| standing.part[*function as usize] > part;
            // Of a function that nothing is known of, what looks like the number of a place may be one.
            let (mut led_to, mut unknown) = (BTreeSet::new(), BTreeSet::new());
            for &function in &standing.own[part] {
                let name = module.names.get(&function).map(|name| written(name));
                match name.and_then(|name| references?.led_to(&name)) {
                    Some(names) => {
                        led_to.extend(names.iter().filter_map(|name| by_name.get(*name)).flatten())
                    }
                    None => {
                        unknown.insert(function);
                    }
                }
            }
            let data = if references.is_some() {
                &[][..]
            } else {
                &data[part][..]
            };
            let numbers = numbers(module, &unknown, data)?;
            led_to.extend(numbers.iter().filter_map(|number| filled.get(number).copied()));
            let mut needed: BTreeSet<u32> = led_to
                .into_iter()
                .filter(|function| is_later(function) && of.contains_key(function))
                .collect();
            for function in standing.called(part).into_iter().filter(is_later) {
                of.entry(function).or_insert_with(|| {
                    filled.insert(end, function);
                    end += 1;
                    end - 1
                });
                needed.insert(function);
            }
            needed.retain(|it| known.insert(*it));
            stand_ins[part] = needed;
        }
        Ok(Self {
            table,
            filled,
            of,
            end,
            stand_ins,
        })
    }

    /// The functions that places hold, in runs without gaps: the first place of each, and what it holds.
    pub(crate) fn runs(&self, holds: impl Fn(u32) -> Option<u32>) -> Vec<(u32, Vec<u32>)> {
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

/// The functions of each name.
fn by_name(module: &Module<'_>) -> BTreeMap<String, Vec<u32>> {
    let mut by_name: BTreeMap<String, Vec<u32>> = BTreeMap::new();
    for (function, name) in &module.names {
        by_name.entry(written(name)).or_default().push(*function);
    }
    by_name
}

/// All numbers that are given in functions and in data, and in pieces of data that the functions lead to.
fn numbers(module: &Module<'_>, functions: &BTreeSet<u32>, data: &[Run]) -> Result<BTreeSet<u32>, String> {
    let mut numbers = BTreeSet::new();
    let body = |function: &u32| &module.bodies[*function as usize - module.outer];
    for body in functions.iter().map(body) {
        let operators = body.get_operators_reader().map_err(|error| error.to_string())?;
        for operator in operators {
            numbers.extend(objects::numbers(&operator.map_err(|error| error.to_string())?));
        }
    }
    let mut words = |begin: u32, end: u32| {
        // A word whose last bytes are nought may have lost them: it is looked at in the whole of the data.
        for word in (begin & !3..end).step_by(4) {
            numbers.extend(module.word(word));
        }
    };
    if let Some(objects) = &module.objects {
        let reached = objects.reached(module, functions.iter().map(body))?;
        for ((begin, end), _) in objects.pieces.iter().zip(reached).filter(|it| it.1) {
            words(*begin, *end);
        }
    }
    for (address, bytes) in data {
        words(*address, address.saturating_add(bytes.len() as u32));
    }
    Ok(numbers)
}
