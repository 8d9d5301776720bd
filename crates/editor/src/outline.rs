//! The system as an outline: sources, what feeds from them, and their loads. It is what a screen reader reads and what
//! "what feeds this?" answers in words.

use crate::editor::Editor;
use crate::selection::Thing;
use drawing::Lit;
use model::{PartId, Role, RunId};
use ordered::OrderedSet;
use words::{Unit, drawn, say};

/// One line of the outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Depth, 0 for a source.
    pub depth: u8,
    /// What it speaks of.
    pub thing: Thing,
    /// The words.
    pub text: String,
}

impl Editor {
    /// Sources, their feeds and their loads; last, what hangs on no source.
    #[must_use]
    pub fn outline(&self) -> Vec<Line> {
        let words = &self.words;
        let study = &self.analysis.study;
        let sheet = self.sheet();
        let mut lines = Vec::new();
        let mut told: OrderedSet<PartId> = OrderedSet::new();
        let sources: OrderedSet<PartId> = study
            .circuits
            .values()
            .flat_map(|circuit| circuit.feeds.iter().map(|feed| feed.source))
            .collect();
        for source in &sources {
            told.insert(*source);
            lines.push(Line {
                depth: 0,
                thing: Thing::Part(*source),
                text: self.spoken(&Thing::Part(*source)),
            });
            for (load, circuit) in &study.circuits {
                let Some(feed) = circuit.feeds.iter().find(|feed| feed.source == *source) else {
                    continue;
                };
                told.insert(*load);
                let through: Vec<String> = feed.parts.iter().map(|part| self.tag(*part)).collect();
                told.extend(feed.parts.iter().copied());
                let way = if through.is_empty() {
                    say!("outline-directly")
                } else {
                    say!("outline-through", parts = through.join(", "))
                };
                let current = study.parts.get(load).map_or(String::new(), |flow| {
                    let amps = drawn(flow.current.mean.0.abs(), Unit::Plain("A"));
                    format!(", {}", words.figure(amps))
                });
                let back = match circuit.returns.iter().find(|back| back.source == *source) {
                    Some(back) if back.complete => String::new(),
                    _ => format!(", {}", words.text("outline-no-way-back")),
                };
                let name = sheet
                    .parts
                    .get(load)
                    .map_or(String::new(), |part| format!(" {}", words.say(&part.said())));
                lines.push(Line {
                    depth: 1,
                    thing: Thing::Part(*load),
                    text: words.say(&say!(
                        "outline-feeds",
                        part = format!("{}{name}", self.tag(*load)),
                        way = way,
                        current = current,
                        back = back
                    )),
                });
                for channel in study.channels.iter().filter(|channel| channel.part == *load) {
                    for driver in &channel.drivers {
                        told.insert(*driver);
                        lines.push(Line {
                            depth: 2,
                            thing: Thing::Part(*driver),
                            text: words.say(&say!(
                                "outline-drives",
                                channel = channel.channel.to_string(),
                                driver = self.spoken(&Thing::Part(*driver))
                            )),
                        });
                    }
                }
            }
        }
        for id in sheet.parts.keys().filter(|id| !told.contains(id)) {
            lines.push(Line {
                depth: 0,
                thing: Thing::Part(*id),
                text: self.spoken(&Thing::Part(*id)),
            });
        }
        lines
    }

    /// The parts whose circuits answer "what feeds this?": a load itself; else all loads whose circuit it belongs to.
    #[must_use]
    pub fn fed_by(&self, thing: &Thing) -> OrderedSet<PartId> {
        let circuits = &self.analysis.study.circuits;
        let part = match thing {
            Thing::Part(id) => Some(*id),
            Thing::Terminal(at) => Some(at.part),
            Thing::Run(_) => None,
        };
        if let Some(id) = part.filter(|id| circuits.contains_key(id)) {
            return [id].into();
        }
        let belongs = |circuit: &circuit::Circuit| match thing {
            Thing::Run(run) => circuit.all_runs.contains(run),
            _ => part.is_some_and(|id| circuit.all_parts.contains(&id)),
        };
        circuits
            .iter()
            .filter(|(_, circuit)| belongs(circuit))
            .map(|(id, _)| *id)
            .collect()
    }

    /// Speaker, signal and turn-on chains that belong to a thing, for lighting it up.
    pub(crate) fn add_chains(&self, thing: &Thing, lit: &mut Lit) {
        let study = &self.analysis.study;
        let (part, run) = match thing {
            Thing::Part(id) => (Some(*id), None),
            Thing::Terminal(at) => (Some(at.part), None),
            Thing::Run(id) => (None, Some(*id)),
        };
        let has = |runs: &OrderedSet<RunId>| run.is_some_and(|run| runs.contains(&run));
        for channel in &study.channels {
            if has(&channel.runs) || part.is_some_and(|id| channel.drivers.contains(&id)) {
                lit.runs.extend(channel.runs.iter().copied());
                lit.parts.extend(channel.drivers.iter().copied());
                lit.parts.insert(channel.part);
            }
        }
        for input in &study.signal.inputs {
            if has(&input.runs) || self.is_input(thing, input.part, input.input) {
                lit.runs.extend(input.runs.iter().copied());
                lit.parts.insert(input.part);
                lit.parts.extend(input.by.iter().map(|(part, _)| *part));
            }
        }
        for (fed, turn_on) in &study.signal.turn_on {
            if has(&turn_on.runs) {
                lit.runs.extend(turn_on.runs.iter().copied());
                lit.parts.insert(*fed);
                lit.parts.extend(turn_on.by.iter().copied());
            }
        }
        if !lit.is_empty() {
            match thing {
                Thing::Run(id) => {
                    lit.runs.insert(*id);
                }
                Thing::Part(id) => {
                    lit.parts.insert(*id);
                }
                Thing::Terminal(at) => {
                    lit.parts.insert(at.part);
                }
            }
        }
    }

    fn is_input(&self, thing: &Thing, part: PartId, input: u8) -> bool {
        match thing {
            Thing::Terminal(at) if at.part == part => match self.sheet().role(at) {
                Some(Role::LineIn(n)) => n == input,
                Some(Role::LevelIn { channel, .. }) => channel == input,
                _ => false,
            },
            _ => false,
        }
    }
}
