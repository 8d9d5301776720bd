//! Which functions go into which part.
//!
//! The first part holds what its program leads to, from what the page calls on; but what the list `later.txt` names is held back
//! for the second, with whatever only that leads to, and what `rest.txt` names for the third. So what is new comes early: a list
//! that does not know it costs bytes, and does not make a page wait.

use super::PARTS;
use super::module::Module;
use super::names::{paths, written};
use super::references::References;
use std::collections::{BTreeMap, BTreeSet};
use wasmparser::{ExternalKind, Operator};

/// What the first picture does without; `cargo xtask record` writes it.
const LATER: &str = include_str!("later.txt");
/// What follows last.
const LAST: &str = include_str!("rest.txt");

/// What texts that follow are read through, with the second part: what a hand on the board reads is among them. `words::later`
/// tells why it is one function, and what the marks are.
const READS_TEXTS: &str = "words::later::arrived";
/// What such a text begins and ends with.
pub(crate) const MARKS: [&str; 2] = ["\u{2}later\u{2}", "\u{3}later\u{3}"];

/// Whether this is the function that texts are read through.
pub(crate) fn reads_texts(name: &str) -> bool {
    written(name) == READS_TEXTS
}

/// A list of what is held back.
#[derive(Default)]
pub(crate) struct List<'a> {
    paths: BTreeSet<&'a str>,
    /// What runs though nothing known leads to it.
    runs: BTreeSet<&'a str>,
}

impl<'a> List<'a> {
    pub(crate) fn of(text: &'a str) -> Self {
        let mut this = Self::default();
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            match line.strip_prefix('+') {
                Some(name) => this.runs.insert(name),
                None => this.paths.insert(line),
            };
        }
        this.paths.remove("");
        this
    }

    /// The list of what follows last.
    pub(crate) fn last() -> Self {
        Self::of(LAST)
    }

    /// Whether it holds back what has these paths.
    pub(crate) fn holds(&self, paths: &[String]) -> bool {
        paths.iter().any(|path| self.paths.contains(path.as_str()))
    }
}

/// The part of each function.
pub(crate) struct Parts {
    of: BTreeMap<String, usize>,
}

impl Parts {
    /// By what leads to what, and by the lists.
    pub(crate) fn of(references: &References, roots: &BTreeSet<usize>) -> Self {
        let (later, last) = (List::of(LATER), List::last());
        let functions = &references.functions;
        let held: Vec<[bool; 2]> = functions
            .iter()
            .map(|(name, bytes)| {
                if later.runs.contains(name.as_str()) {
                    return [false; 2];
                }
                let paths = paths(name, *bytes);
                let is_last = last.holds(&paths);
                [is_last || later.holds(&paths) || reads_texts(name), is_last]
            })
            .collect();
        let mut from = roots.clone();
        from.extend(references.of_names(later.runs.iter().copied()));
        let mut part = vec![PARTS - 1; functions.len()];
        for at in (0..PARTS - 1).rev() {
            let reached = references.reached(&from, &|function| !held[function][at]);
            for (part, _) in part.iter_mut().zip(reached.is_reached).filter(|it| it.1) {
                *part = at;
            }
        }
        let names = functions.iter().map(|it| it.0.clone());
        Self {
            of: names.zip(part).collect(),
        }
    }

    /// The part that a function goes into. What binds the page to the program is not known here, and comes first.
    pub(crate) fn part(&self, name: &str) -> usize {
        self.of.get(&written(name)).copied().unwrap_or(0)
    }
}

/// Where a module that is bound to the page begins: what the page calls, and what the binding calls.
///
/// # Errors
/// When the module is damaged.
pub(crate) fn roots(module: &Module<'_>, references: &References) -> Result<BTreeSet<usize>, String> {
    let name = |function: u32| module.names.get(&function).map(|name| written(name));
    let exported = module.exports.iter().filter(|it| it.kind == ExternalKind::Func);
    let mut names: BTreeSet<String> = exported
        .map(|it| it.index)
        .chain(module.start)
        .filter_map(name)
        .collect();
    for (at, body) in module.bodies.iter().enumerate() {
        let own = name((module.outer + at) as u32).unwrap_or_default();
        if references.of_names([own.as_str()].into_iter()).is_empty() {
            for operator in body.get_operators_reader().map_err(|error| error.to_string())? {
                if let Operator::Call { function_index } = operator.map_err(|error| error.to_string())? {
                    names.extend(name(function_index));
                }
            }
        }
    }
    Ok(references.of_names(names.iter().map(String::as_str)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_marks_are_those_that_texts_have() {
        assert_eq!(MARKS, [words::later::BEGIN, words::later::END]);
    }

    #[test]
    fn a_list_holds_back_what_lies_below_its_paths_and_what_works_on_their_types() {
        let list = List::of("# remark\na::b\n=a::c\nd::E>::f\n+a::b::runs\n");
        for (name, expected) in [
            ("a::b", true),
            ("a::b::x", true),
            ("a::bb::x", false),
            ("a::c", true),
            ("a::c::{closure#0}", false),
            ("<d::E>::f", true),
            ("<d::E>::g", false),
            ("<alloc::vec::Vec<a::b::X>>::push", true),
            ("<alloc::vec::Vec<x::a::b>>::push", false),
        ] {
            assert_eq!(list.holds(&paths(name, 1_000)), expected, "{name}");
        }
        assert_eq!(list.runs, BTreeSet::from(["a::b::runs"]));
    }
}
