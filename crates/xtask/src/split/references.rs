//! What leads to what in a module, as its linker tells: which functions each function calls or takes hold of, by itself or by
//! way of data.
//!
//! The linker leaves a note of every place where it put the number of a function or of a piece of data. They are right only in
//! the file that it wrote: what binds the module to the page afterwards writes all functions anew. Names last, so that functions
//! are known by them here; two of one name count as one.

use super::module::Module;
use super::names::written;
use super::objects::Objects;
use std::collections::{BTreeMap, BTreeSet};
use wasmparser::{KnownCustom, Linking, Parser, Payload, RelocationType, SymbolInfo};

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

/// What the linker's numbers mean.
enum Symbol {
    Function(u32),
    /// Where the piece begins.
    Data(u32),
    Other,
}

impl References {
    /// Reads what a linker wrote; nothing where it was not asked to tell.
    ///
    /// # Errors
    /// When the file is damaged, or not as those were that were read so far.
    pub(crate) fn of_linker(file: &[u8]) -> Result<Option<Self>, String> {
        let told = |error: wasmparser::BinaryReaderError| error.to_string();
        let module = Module::read(file)?;
        let Some(objects) = Objects::of_linker(file)? else {
            return Ok(None);
        };
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

        let mut symbols = Vec::new();
        let (mut code, mut data) = (0, 0);
        let mut leads = Vec::new();
        for payload in Parser::new(0).parse_all(file) {
            let section = match payload.map_err(told)? {
                Payload::CodeSectionStart { range, .. } => {
                    code = range.start;
                    continue;
                }
                Payload::DataSection(section) => {
                    data = section.range().start;
                    continue;
                }
                Payload::CustomSection(section) => section,
                _ => continue,
            };
            match section.as_known() {
                KnownCustom::Linking(linking) => {
                    for part in linking.subsections() {
                        let Linking::SymbolTable(table) = part.map_err(told)? else {
                            continue;
                        };
                        for symbol in table {
                            symbols.push(match symbol.map_err(told)? {
                                SymbolInfo::Func { index, .. } => Symbol::Function(index),
                                SymbolInfo::Data { symbol: Some(it), .. } => {
                                    match module.data.get(it.index as usize) {
                                        Some(segment) if it.size > 0 => {
                                            Symbol::Data(segment.0.saturating_add(it.offset))
                                        }
                                        _ => Symbol::Other,
                                    }
                                }
                                _ => Symbol::Other,
                            });
                        }
                    }
                }
                KnownCustom::Reloc(places) => {
                    let is_code = section.name() == "reloc.CODE";
                    for it in places.entries() {
                        let it = it.map_err(told)?;
                        let from = if is_code {
                            let at = code + it.offset as usize;
                            let body = module.bodies.partition_point(|body| body.range().end <= at);
                            nodes.get(body).copied()
                        } else {
                            module.address_of(file, data + it.offset as usize).and_then(piece)
                        };
                        use RelocationType as Type;
                        let to = match (it.ty, symbols.get(it.index as usize)) {
                            // The type of a function has a number of its own kind.
                            (Type::TypeIndexLeb, _) => None,
                            (_, Some(Symbol::Function(index))) => function(*index),
                            (_, Some(Symbol::Data(begin))) => piece(*begin),
                            _ => None,
                        };
                        leads.extend(from.zip(to));
                    }
                }
                _ => {}
            }
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
