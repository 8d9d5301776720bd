//! The network of a sheet as a deck for a circuit simulator of the SPICE family, so that anybody can check the solution.
//!
//! The deck states elements, not results: wires and contacts as resistors at their temperatures, batteries,
//! alternators, converters and diodes by their characteristics, loads by their law. Taken as settled are only which
//! relays and switches are closed and which parts are on. Loads of constant power have a second, collapsed solution near 0 V: `.nodeset`
//! starts near the upper one, and below 6 V such a load goes over into a resistance. Written for ngspice in batch mode.

use crate::assemble::{Prepared, prepare};
use crate::network::{Closes, Draw, Kind};
use crate::solve::{LEAKAGE, Law, Level, SourceModel};
use model::{Settings, Sheet};
use std::fmt::Write;

/// An operating point by node, under the names that the deck uses.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OperatingPoint {
    /// Name of each node in the deck, with its voltage against the reference, in volts. Nodes without supply are absent.
    pub nodes: Vec<(String, f64)>,
    /// Currents of wires from their `from` end to their `to` end, in amperes, by run.
    pub runs: Vec<(model::RunId, f64)>,
    /// Share of what is asked that can be delivered at this level, 1 when all.
    pub deliverable: f64,
}

/// Below this voltage the deck lets a load of constant power go over into a resistance, so that the collapsed solution, at
/// less than half of the source's voltage, is none. Above it nothing changes.
const UPPER: f64 = 6.0;

/// Name of a node in the deck.
fn name(node: usize, references: &[bool]) -> String {
    if references.get(node) == Some(&true) {
        "0".to_owned()
    } else {
        format!("n{node}")
    }
}

/// Which nodes are the reference of their piece of the network.
fn references(it: &Prepared) -> Vec<bool> {
    it.point.references.clone()
}

/// The operating point that [`deck`] states the elements of.
#[must_use]
pub fn operating_point(sheet: &Sheet, settings: &Settings, level: Level) -> OperatingPoint {
    point(&prepare(&body::lay(sheet, settings), settings, level))
}

/// Deck and operating point of the same preparation, for comparisons.
#[must_use]
pub fn deck_and_point(sheet: &Sheet, settings: &Settings, level: Level) -> (String, OperatingPoint) {
    let sheet = body::lay(sheet, settings);
    let it = prepare(&sheet, settings, level);
    (write(&it, &sheet, level), point(&it))
}

fn point(it: &Prepared) -> OperatingPoint {
    let references = references(it);
    let nodes = (0..it.net.nodes)
        .filter(|n| it.point.driven[*n] && !references[*n])
        .map(|n| (name(n, &references), it.point.voltages[n]))
        .collect();
    let runs = it
        .net
        .runs
        .iter()
        .map(|r| {
            (
                r.id,
                if r.line {
                    0.0
                } else {
                    it.point.currents.get(r.branch).copied().unwrap_or(0.0)
                },
            )
        })
        .collect();
    OperatingPoint {
        nodes,
        runs,
        deliverable: it.point.deliverable,
    }
}

/// The deck of a sheet at a level.
#[must_use]
pub fn deck(sheet: &Sheet, settings: &Settings, level: Level) -> String {
    let sheet = body::lay(sheet, settings);
    write(&prepare(&sheet, settings, level), &sheet, level)
}

fn write(it: &Prepared, sheet: &Sheet, level: Level) -> String {
    let references = references(it);
    let net = &it.net;
    let mut out = String::new();
    let level_name = match level {
        Level::Mean => "mean",
        Level::Rms => "RMS",
        Level::Burst => "burst",
    };
    let _ = writeln!(
        out,
        "* Loomwright: supply network, {level_name} level, operating point"
    );
    let _ = writeln!(out, "* Nodes:");
    let mut described = vec![Vec::new(); net.nodes];
    if let Some(body) = described.first_mut() {
        body.push("body".to_owned());
    }
    for terminal in &net.terminals {
        let tag = net
            .parts
            .get(terminal.part)
            .and_then(|id| sheet.parts.get(id))
            .map_or("", |p| p.tag.as_str());
        // ASCII only: simulators differ in what else they read, and a line break would end the comment.
        let tag: String = tag
            .chars()
            .map(|c| {
                if c.is_ascii_alphanumeric() || c == '_' {
                    c
                } else {
                    '?'
                }
            })
            .collect();
        let plain: String = terminal
            .name
            .as_str()
            .chars()
            .map(|c| if c.is_ascii_graphic() { c } else { '?' })
            .collect();
        described[terminal.node].push(format!("{tag}.{plain}"));
    }
    for (node, names) in described.iter().enumerate() {
        if it.point.driven[node] && !names.is_empty() {
            let _ = writeln!(out, "* {:6} {}", name(node, &references), names.join(" "));
        }
    }
    let mut source_of = ordered::OrderedMap::new();
    for (at, source) in net.sources.iter().enumerate() {
        source_of.insert(source.branch, at);
    }
    for (at, (branch, element)) in net.branches.iter().zip(&it.point.elements).enumerate() {
        let [a, b] = branch.nodes;
        if a == b || !it.point.driven[a] || !it.point.driven[b] {
            continue;
        }
        let (a, b) = (name(a, &references), name(b, &references));
        let v = format!("V({a},{b})");
        if let Some(model) = source_of.get(&at).and_then(|s| it.models.get(*s)) {
            source(&mut out, at, &a, &b, model, level);
            continue;
        }
        if let Closes::Diode { drop } = branch.closes {
            let _ = writeln!(
                out,
                "B{at} {a} {b} I=max(({v}-{drop:e})/{:e},0)+{LEAKAGE:e}*{v}",
                branch.resistance
            );
            continue;
        }
        if branch.kind == Kind::Load(Draw::Supply)
            && let Some((source, model)) = net.sources.iter().zip(&it.models).find(|(s, _)| {
                s.part == branch.part
                    && net
                        .branches
                        .get(s.branch)
                        .is_some_and(|b| b.kind == Kind::ConverterOut)
            })
        {
            let (p, m) = (name(source.plus, &references), name(source.minus, &references));
            if let SourceModel::Limited {
                voltage,
                slope,
                limit,
                efficiency: Some(efficiency),
            } = model
                && !matches!(element.law, Law::Open)
            {
                let gives = format!("min(max(({voltage}-V({p},{m}))/{slope:e},0),{limit:e})*V({p},{m})");
                let _ = writeln!(
                    out,
                    "B{at} {a} {b} I={gives}/{efficiency}*{v}/(max({v},{UPPER})*max({v},{UPPER}))"
                );
            }
            continue;
        }
        match element.law {
            Law::Open => {}
            Law::Resistance(ohms) => {
                let _ = writeln!(out, "R{at} {a} {b} {ohms:e}");
            }
            Law::Current(amps) => {
                let _ = writeln!(out, "I{at} {a} {b} DC {amps:e}");
            }
            Law::Power(power) => {
                let _ = writeln!(
                    out,
                    "B{at} {a} {b} I={power:e}*{v}/(max({v},{UPPER})*max({v},{UPPER}))"
                );
            }
            // Sources and diodes are written above.
            Law::Source { .. } | Law::Battery { .. } | Law::Limited { .. } | Law::Diode { .. } => {}
        }
    }
    for node in 0..net.nodes {
        if it.point.driven[node] && !references[node] {
            let _ = writeln!(
                out,
                ".nodeset v({})={:.2}",
                name(node, &references),
                it.point.voltages[node]
            );
        }
    }
    out.push_str(".options reltol=1e-7 abstol=1e-10 vntol=1e-9 gmin=1e-15 itl1=1000\n");
    out.push_str(".control\nop\nset numdgt=12\n");
    for node in 0..net.nodes {
        if it.point.driven[node] && !references[node] {
            let _ = writeln!(out, "print v({})", name(node, &references));
        }
    }
    out.push_str(".endc\n.end\n");
    out
}

/// A source by its characteristic.
fn source(out: &mut String, at: usize, a: &str, b: &str, model: &SourceModel, level: Level) {
    let v = format!("V({a},{b})");
    match model {
        SourceModel::Battery(it) => {
            let r = if level == Level::Burst { it.most } else { it.usual };
            let (e, c) = (it.emf, it.charging);
            let _ = writeln!(out, "B{at} {a} {b} I=max({v}-{e},0)/{c:e}+min({v}-{e},0)/{r:e}");
        }
        SourceModel::Limited {
            voltage,
            slope,
            limit,
            ..
        } => {
            let _ = writeln!(
                out,
                "B{at} {a} {b} I=-min(max(({voltage}-{v})/{slope:e},0),{limit:e})"
            );
        }
        SourceModel::Off => {}
    }
}
