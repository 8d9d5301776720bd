//! Writes the list of what the first picture does without, by what really ran.

use super::names::paths;
use super::plan::{List, reads_texts};
use super::references::References;
use std::collections::{BTreeMap, BTreeSet};

/// What a line of the list costs, in bytes that come without need: for so little none is written.
const LINE: usize = 150;

/// The lines of the list. `ran` tells by number which functions ran until the first picture; one that is not there was not
/// looked at, since it is no longer in the program when that runs.
pub(crate) fn lines(
    references: &References,
    roots: &BTreeSet<usize>,
    ran: &BTreeMap<usize, bool>,
) -> Vec<String> {
    let last = List::last();
    let did_run = |function: usize| ran.get(&function).copied();
    let of: Vec<Vec<String>> = references.functions.iter().map(|it| paths(&it.0, it.1)).collect();
    let is_last: Vec<bool> = of
        .iter()
        .enumerate()
        .map(|(function, paths)| {
            did_run(function) != Some(true)
                && (last.holds(paths) || reads_texts(&references.functions[function].0))
        })
        .collect();
    // What a path names that ran must not be held back.
    let needed: BTreeSet<&str> = of
        .iter()
        .enumerate()
        .filter(|(function, _)| did_run(*function) == Some(true))
        .flat_map(|(_, paths)| paths.iter().map(String::as_str))
        .collect();
    let mut from = roots.clone();
    from.extend(ran.iter().filter(|it| *it.1).map(|it| *it.0));
    let path = |function: usize| of[function].iter().find(|path| !needed.contains(path.as_str()));
    let reached = references.reached(&from, &|function| {
        !is_last[function] && (did_run(function) != Some(false) || path(function).is_none())
    });
    let mut held: BTreeMap<&str, usize> = BTreeMap::new();
    for &function in reached.held.iter().filter(|it| !is_last[**it]) {
        if let Some(path) = path(function) {
            *held.entry(path).or_default() += references.functions[function].1;
        }
    }
    // Lines that keep little out go, those first that keep least.
    let mut lines: BTreeSet<&str> = held.keys().copied().collect();
    let comes = |lines: &BTreeSet<&str>| {
        let lets = |function: usize| {
            !is_last[function] && !of[function].iter().any(|path| lines.contains(path.as_str()))
        };
        references.reached(&from, &lets)
    };
    let mut bytes = comes(&lines).bytes;
    let mut by_size: Vec<&str> = lines.iter().copied().collect();
    by_size.sort_by_key(|line| held[line]);
    for line in by_size {
        lines.remove(line);
        let with = comes(&lines).bytes;
        if with <= bytes + LINE {
            bytes = with;
        } else {
            lines.insert(line);
        }
    }
    let known = {
        let lets = |function: usize| {
            !is_last[function] && !of[function].iter().any(|path| lines.contains(path.as_str()))
        };
        references.reached(roots, &lets).is_reached
    };
    // What runs though nothing known leads to it, or though it is named like what follows last.
    let apart = ran
        .iter()
        .filter(|(function, ran)| **ran && (!known[**function] || last.holds(&of[**function])))
        .map(|(function, _)| format!("+{}", references.functions[*function].0));
    let mut written: Vec<String> = lines.iter().map(|line| (*line).to_owned()).chain(apart).collect();
    written.sort();
    written
}
