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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_did_not_run_is_held_back_by_the_shortest_path_that_nothing_needs() {
        let functions: [(&str, usize, &[usize]); 7] = [
            ("near::start", 500, &[1, 2, 3]),
            ("near::paint", 2_000, &[6]),
            ("far::size::search", 5_000, &[4]),
            // Too few bytes for a line of their own.
            ("near::tiny", LINE - 1, &[]),
            ("far::size::deep", 3_000, &[]),
            // Called in a way that the linker does not tell.
            ("apart::called", 700, &[]),
            ("near::export", 4_000, &[]),
        ];
        let references = References::of_leads(&functions);
        let ran = [true, true, false, false, false, true, false];
        let ran: BTreeMap<usize, bool> = ran.into_iter().enumerate().collect();
        let written = lines(&references, &BTreeSet::from([0]), &ran);
        assert_eq!(written, ["+apart::called", "far", "near::export"]);

        // By these lines just what ran comes, and what has too few bytes.
        let text = written.join("\n");
        let list = List::of(&text);
        let comes = |function: usize| {
            let (name, bytes, _) = functions[function];
            !list.holds(&paths(name, bytes))
        };
        let reached = references.reached(&BTreeSet::from([0, 5]), &comes);
        assert_eq!(reached.is_reached, [true, true, false, true, false, true, false]);
    }

    #[test]
    fn what_was_not_looked_at_comes_where_it_is_led_to() {
        let references = References::of_leads(&[("near::start", 500, &[1]), ("new::code", 9_000, &[])]);
        let ran = BTreeMap::from([(0, true)]);
        assert_eq!(lines(&references, &BTreeSet::from([0]), &ran), [""; 0]);
    }
}
