//! What leads to what in a module, as its linker tells: which functions each function calls or takes hold of, by itself or by
//! way of data.
//!
//! The linker leaves a note of every place where it put the number of a function or of a piece of data. They are right only in
//! the file that it wrote: what binds the module to the page afterwards writes all functions anew. Names last, so that functions
//! are known by them here; two of one name count as one.

use super::linked::{Linked, Stands, Symbol};
use super::module::Module;
use super::names::written;
use super::objects::Objects;
use std::collections::{BTreeMap, BTreeSet};

/// Functions and pieces of data, and what each leads to.
#[derive(Default)]
pub(crate) struct References {
    numbers: BTreeMap<String, usize>,
    /// Of each function: its name, and its bytes.
    pub(crate) functions: Vec<(String, usize)>,
    /// Bytes of the pieces.
    pieces: Vec<usize>,
    /// What each function leads to, and after the functions each piece.
    leads: Vec<BTreeSet<usize>>,
}

impl References {
    /// Reads what a linker wrote; nothing where it was not asked to tell.
    ///
    /// # Errors
    /// When the file is damaged, or not as those were that were read so far.
    pub(crate) fn of_linker(file: &[u8]) -> Result<Option<Self>, String> {
        let Some(linked) = Linked::read(file)? else {
            return Ok(None);
        };
        let (module, objects) = (Module::read(file)?, Objects::of(&linked));
        let mut this = Self::default();
        // Its node, of each function with a body.
        let mut nodes = Vec::new();
        for (at, body) in module.bodies.iter().enumerate() {
            let name = module.names.get(&((module.outer + at) as u32));
            let name = name.map_or_else(|| format!("?{at}"), |name| written(&demangled(name)));
            let node = this.node(name);
            this.functions[node].1 += body.range().len();
            nodes.push(node);
        }
        let function = |index: u32| nodes.get((index as usize).checked_sub(module.outer)?).copied();
        this.pieces = objects.pieces.iter().map(|it| (it.1 - it.0) as usize).collect();
        this.leads = vec![BTreeSet::new(); this.functions.len() + this.pieces.len()];
        let piece = |address: u32| Some(this.functions.len() + objects.piece_at(address)?);

        let mut leads = Vec::new();
        for place in &linked.places {
            let from = match place.stands {
                Stands::InCode(at) => {
                    let body = module.bodies.partition_point(|body| body.range().end <= at);
                    nodes.get(body).copied()
                }
                Stands::InData(at) => module.address_of(file, at).and_then(piece),
                Stands::Elsewhere => None,
            };
            let to = match place.to {
                Symbol::Function(index) => function(index),
                Symbol::Data(begin, _) => piece(begin),
                Symbol::Other => None,
            };
            leads.extend(from.zip(to));
        }
        for (from, to) in leads {
            this.leads[from].insert(to);
        }
        Ok(Some(this))
    }

    fn node(&mut self, name: String) -> usize {
        let next = self.functions.len();
        let node = *self.numbers.entry(name.clone()).or_insert(next);
        if node == next {
            self.functions.push((name, 0));
        }
        node
    }

    /// The functions of these names that there are.
    pub(crate) fn of_names<'a>(&self, names: impl Iterator<Item = &'a str>) -> BTreeSet<usize> {
        names.filter_map(|name| self.numbers.get(name).copied()).collect()
    }

    /// The functions that one of a name leads to, by itself or by way of data; nothing where there is none of that name.
    pub(crate) fn led_to(&self, name: &str) -> Option<BTreeSet<&str>> {
        let from = *self.numbers.get(name)?;
        let (mut led_to, mut seen, mut look) = (BTreeSet::new(), BTreeSet::new(), vec![from]);
        while let Some(at) = look.pop() {
            for &to in &self.leads[at] {
                match self.functions.get(to) {
                    Some((name, _)) => {
                        led_to.insert(name.as_str());
                    }
                    None if seen.insert(to) => look.push(to),
                    None => {}
                }
            }
        }
        Some(led_to)
    }

    /// Which functions some of them lead to, by way of those that are let through; they themselves too where they are.
    pub(crate) fn reached(&self, from: &BTreeSet<usize>, lets: &dyn Fn(usize) -> bool) -> Reached {
        let mut is_reached = vec![false; self.leads.len()];
        let mut held = BTreeSet::new();
        let mut look = Vec::new();
        for &at in from {
            if lets(at) {
                is_reached[at] = true;
                look.push(at);
            } else {
                held.insert(at);
            }
        }
        while let Some(at) = look.pop() {
            for &to in &self.leads[at] {
                if is_reached[to] {
                    continue;
                }
                if to < self.functions.len() && !lets(to) {
                    held.insert(to);
                    continue;
                }
                is_reached[to] = true;
                look.push(to);
            }
        }
        let functions = self.functions.iter().map(|it| it.1);
        let sizes = functions.chain(self.pieces.iter().copied());
        let bytes = sizes.zip(&is_reached).filter(|it| *it.1).map(|it| it.0).sum();
        is_reached.truncate(self.functions.len());
        Reached {
            is_reached,
            held,
            bytes,
        }
    }
}

/// What is led to.
pub(crate) struct Reached {
    /// Whether it is, of each function.
    pub(crate) is_reached: Vec<bool>,
    /// Functions that were led to and not let through.
    pub(crate) held: BTreeSet<usize>,
    /// Bytes of functions and data together.
    pub(crate) bytes: usize,
}

/// The name that what binds the module to the page writes for the one that the compiler wrote.
fn demangled(name: &str) -> String {
    rustc_demangle::demangle(name).to_string()
}

#[cfg(test)]
impl References {
    /// Functions of these names and bytes, and which of them each leads to.
    pub(crate) fn of_leads(functions: &[(&str, usize, &[usize])]) -> Self {
        let mut this = Self::default();
        for (name, bytes, leads) in functions {
            let node = this.node((*name).to_owned());
            this.functions[node].1 = *bytes;
            this.leads.push(leads.iter().copied().collect());
        }
        this
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::split::linked::tests::linked;

    fn references() -> References {
        References::of_linker(&linked())
            .expect("a module")
            .expect("its linker told")
    }

    #[test]
    fn functions_lead_to_functions_and_data_to_data() {
        let references = references();
        let named = |name| references.of_names([name].into_iter());
        let (run, end) = (named("run"), named("end"));
        assert_eq!(references.led_to("run"), Some(BTreeSet::from(["end"])));
        assert_eq!(references.led_to("end"), Some(BTreeSet::new()));
        assert_eq!(references.led_to("elsewhere"), None);
        let size = |of: &BTreeSet<usize>| of.iter().map(|it| references.functions[*it].1).sum::<usize>();
        // With it come three of the four pieces of eight bytes.
        let all = references.reached(&run, &|_| true);
        assert_eq!(all.is_reached, [true, true]);
        assert_eq!(all.held, BTreeSet::new());
        assert_eq!(all.bytes, size(&run) + size(&end) + 3 * 8);
    }

    #[test]
    fn what_is_held_back_is_told_and_nothing_is_reached_by_way_of_it() {
        let references = references();
        let named = |name| references.of_names([name].into_iter());
        let end = named("end");
        let without_end = references.reached(&named("run"), &|it| !end.contains(&it));
        assert_eq!(without_end.is_reached, [true, false]);
        assert_eq!(without_end.held, end);
        let nothing = references.reached(&named("run"), &|_| false);
        assert_eq!((nothing.held, nothing.bytes), (named("run"), 0));
    }
}
