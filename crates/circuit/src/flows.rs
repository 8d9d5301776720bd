//! Turns operating points at the three levels into what is told of runs and parts.

use crate::heat::Heating;
use crate::network::{Draw, Kind, Network, NetworkRun, values};
use crate::solve::{LEAST_SUPPLY, Operating, Piece};
use crate::study::{PartFlow, Purpose, RunFlow, ThreeCurrents};
use model::job::Conditions;
use model::quantity::{Amps, Celsius, Ohms, Volts, Watts};
use model::{PartId, PartKind, RunId, Sheet};
use ordered::OrderedMap;
use words::{Unit, precise, say};

/// The operating points of a sheet.
pub(crate) struct Points {
    pub mean: Operating,
    pub rms: Operating,
    pub burst: Operating,
}

impl Points {
    /// Currents of a branch.
    pub(crate) fn through(&self, branch: usize) -> ThreeCurrents {
        let of = |point: &Operating| Amps(point.currents.get(branch).copied().unwrap_or(0.0));
        ThreeCurrents {
            mean: of(&self.mean),
            rms: of(&self.rms),
            burst: of(&self.burst),
        }
    }
}

fn add(a: &mut ThreeCurrents, b: ThreeCurrents, sign: f64) {
    a.mean = a.mean + b.mean * sign;
    a.rms = a.rms + b.rms * sign;
    a.burst = a.burst + b.burst * sign;
}

fn size(of: ThreeCurrents) -> ThreeCurrents {
    ThreeCurrents {
        mean: of.mean.abs(),
        rms: of.rms.abs(),
        burst: of.burst.abs(),
    }
}

/// Voltage between two nodes at a point, when conducting elements tie both to one source.
pub(crate) fn across(point: &Operating, a: usize, b: usize) -> Option<f64> {
    let tied = point.driven.get(a) == Some(&true) && point.driven.get(b) == Some(&true);
    tied.then(|| point.voltages[a] - point.voltages[b])
}

/// What each run carries. `temperatures` are those of the conductors at RMS level.
pub(crate) fn runs(
    net: &Network,
    sheet: &Sheet,
    conditions: &Conditions,
    points: &Points,
    temperatures: &[f64],
    purposes: &[Purpose],
    allowable: &[Option<Amps>],
) -> OrderedMap<RunId, RunFlow> {
    let flow = |((index, run), (id, it)): ((usize, &NetworkRun), (&RunId, &model::Run))| {
        let ambient = values::ambient(&it.wire, conditions).0;
        let temperature = temperatures.get(index).copied().unwrap_or(ambient);
        // The core of a line-level lead carries no supply current, and its shield is told with the signal.
        let current = if run.line {
            ThreeCurrents::default()
        } else {
            points.through(run.branch)
        };
        let wire = values::wire_at_20(&it.wire) * values::warmth(&it.wire, temperature);
        let endings = [values::ending(sheet, it, 0), values::ending(sheet, it, 1)];
        let squared = current.rms.0 * current.rms.0;
        let allowable = allowable.get(index).copied().flatten();
        // What bears its current never gets there.
        let time_to_limit = allowable
            .filter(|most| current.rms.abs() > *most)
            .and_then(|_| Heating::of(&it.wire, conditions).time_to_rating(current.rms.abs()));
        let flow = RunFlow {
            current,
            drop: Volts(current.burst.0.abs() * (wire + endings[0] + endings[1])),
            loss: Watts(squared * wire),
            ending_loss: endings.map(|r| Watts(squared * r)),
            wire_resistance: Ohms(wire),
            ending_resistance: endings.map(Ohms),
            temperature: Celsius(temperature),
            ambient: Celsius(ambient),
            allowable,
            time_to_limit,
            purpose: purposes.get(index).copied().unwrap_or_default(),
            serves: ordered::OrderedSet::new(),
        };
        (*id, flow)
    };
    net.runs.iter().enumerate().zip(&sheet.runs).map(flow).collect()
}

/// What each part does.
pub(crate) fn parts(net: &Network, sheet: &Sheet, points: &Points) -> OrderedMap<PartId, PartFlow> {
    let mut flows: Vec<PartFlow> = vec![PartFlow::default(); net.parts.len()];
    let mut kinds = sheet.parts.values().map(|p| &p.is);
    let mut has_branch = vec![false; net.parts.len()];
    let mut by_part: Vec<Vec<usize>> = vec![Vec::new(); net.parts.len()];
    for (at, branch) in net.branches.iter().enumerate() {
        if !matches!(branch.kind, Kind::Wire { .. } | Kind::Shield { .. }) {
            by_part[branch.part].push(at);
        }
    }
    for part in 0..net.parts.len() {
        let Some(kind) = kinds.next() else { break };
        let flow = &mut flows[part];
        for &at in &by_part[part] {
            let branch = &net.branches[at];
            let current = points.through(at);
            let [a, b] = branch.nodes;
            let volts = |point: &Operating| across(point, a, b).map(Volts);
            match branch.kind {
                Kind::Load(Draw::TurnOn) | Kind::Tie | Kind::TurnOnOut => continue,
                Kind::Load(draw) => {
                    let converter = matches!(kind, PartKind::Converter(_));
                    if converter {
                        flow.outputs.insert("in".to_owned(), current);
                        continue;
                    }
                    add(&mut flow.current, current, 1.0);
                    if draw == Draw::Base {
                        flow.outputs.insert("base load".to_owned(), current);
                    }
                    flow.voltage = volts(&points.mean);
                    flow.burst_voltage = volts(&points.burst);
                    flow.power = flow.power + Watts(flow.voltage.map_or(0.0, |v| v.0) * current.mean.0);
                }
                Kind::Battery | Kind::Alternator | Kind::ConverterOut => {
                    add(&mut flow.current, current, -1.0);
                    flow.voltage = volts(&points.mean);
                    flow.burst_voltage = volts(&points.burst);
                    flow.power = Watts(-current.mean.0 * flow.voltage.map_or(0.0, |v| v.0));
                }
                Kind::Device { device } => {
                    let output = net.devices.get(device).and_then(|d| d.name.output.as_ref());
                    match (output, kind) {
                        (Some(output), PartKind::Vehicle(_)) => {
                            flow.outputs.insert(output.to_string(), current);
                        }
                        (Some(output), _) => {
                            flow.outputs.insert(output.to_string(), current);
                            add(&mut flow.current, current, 1.0);
                        }
                        (None, _) => {
                            flow.current = current;
                            flow.voltage = volts(&points.mean);
                            flow.burst_voltage = volts(&points.burst);
                        }
                    }
                    flow.power = flow.power + Watts(current.mean.0 * current.mean.0 * branch.resistance);
                }
                Kind::Contact | Kind::Ground => {
                    add(&mut flow.current, current, 1.0);
                    flow.voltage = volts(&points.mean);
                    flow.burst_voltage = volts(&points.burst);
                    flow.power = flow.power + Watts(current.mean.0 * current.mean.0 * branch.resistance);
                }
                Kind::VehiclePath => {
                    let name = net
                        .terminals_of(part)
                        .iter()
                        .find(|t| t.node == a && matches!(t.name.as_str(), "-" | "engine" | "B+" | "31"));
                    if let Some(terminal) = name {
                        flow.outputs.insert(terminal.name.to_string(), current);
                    }
                }
                Kind::Wire { .. } | Kind::Shield { .. } | Kind::Metal => {}
            }
            has_branch[part] = true;
        }
        state(net, kind, part, &by_part[part], points, flow);
    }
    joints(net, points, &has_branch, &mut flows);
    net.parts.iter().copied().zip(flows).collect()
}

/// The supply below which a part turns itself off, where it is known, in volts.
fn cut_off(kind: &PartKind) -> Option<f64> {
    let stated = match kind {
        PartKind::Amplifier(it) => it.cut_off.value(),
        PartKind::Load(it) => it.cut_off.value(),
        _ => None,
    };
    stated.map(|volts| volts.0)
}

/// Whether a part is on, and why not.
fn state(
    net: &Network,
    kind: &PartKind,
    part: usize,
    branches: &[usize],
    points: &Points,
    flow: &mut PartFlow,
) {
    let on = |point: &Operating| point.on.get(part) == Some(&true);
    let find = |want: fn(&Kind) -> bool| branches.iter().copied().find(|b| want(&net.branches[*b].kind));
    match kind {
        PartKind::Amplifier(_)
        | PartKind::HeadUnit(_)
        | PartKind::Processor(_)
        | PartKind::LineConverter(_)
        | PartKind::Load(_) => {
            let supplied = flow.voltage.is_some_and(|v| v.0 >= LEAST_SUPPLY);
            flow.on = Some(supplied && on(&points.mean) && on(&points.burst));
            let volts = |volts: f64| precise(volts, Unit::Plain("V"), 1);
            let below = |v: &f64| match cut_off(kind) {
                Some(least) => say!("part-below-cut-off", gets = volts(*v), least = volts(least)),
                None => say!("part-below-some-cut-off", gets = volts(*v)),
            };
            if let Some(v) = points.mean.dropped.get(&part) {
                flow.remark = Some(below(v));
            } else if let Some(v) = points.burst.dropped.get(&part) {
                (flow.remark, flow.only_loud) = (Some(below(v)), true);
            } else if !supplied && flow.voltage.is_some_and(|v| v.0 <= -LEAST_SUPPLY) {
                flow.remark = Some(say!("part-reversed"));
            } else if !supplied {
                flow.remark = Some(say!("part-no-supply"));
            }
        }
        PartKind::Battery(_) | PartKind::Alternator(_) | PartKind::Converter(_) => {
            let Some(source) = net.sources.iter().position(|s| s.part == part) else {
                return;
            };
            let off = find(|k| matches!(k, Kind::Alternator | Kind::ConverterOut)).is_some()
                && flow.current.mean.0 == 0.0
                && flow.current.burst.0 == 0.0;
            flow.on = Some(!off);
            flow.remark = match (points.mean.pieces[source], points.burst.pieces[source]) {
                (Piece::Limited, _) => Some(say!("part-gives-most")),
                (_, Piece::Limited) => Some(say!("part-gives-most-loud")),
                (Piece::Charging, _) => Some(say!("part-charged")),
                (Piece::Blocked, _) => Some(say!("part-blocked")),
                _ => None,
            };
        }
        PartKind::Relay(_) | PartKind::Switch(_) | PartKind::Isolator(_) => {
            let closed = |at: usize| !matches!(points.mean.elements[at].law, crate::solve::Law::Open);
            flow.on = branches
                .iter()
                .copied()
                .find(|b| net.branches[*b].kind == Kind::Contact)
                .map(closed);
            if branches
                .iter()
                .any(|b| points.mean.restless.contains(b) || points.burst.restless.contains(b))
            {
                flow.remark = Some(say!("part-restless"));
            }
        }
        _ => {}
    }
}

/// Current through joints (buses, blocks, splices, plugs): half of the sum of what their runs carry.
fn joints(net: &Network, points: &Points, has_branch: &[bool], flows: &mut [PartFlow]) {
    for run in &net.runs {
        if run.line {
            continue;
        }
        let current = size(points.through(run.branch));
        for terminal in run.terminals.into_iter().flatten() {
            let part = net.terminals[terminal].part;
            if !has_branch[part] {
                add(&mut flows[part].current, current, 0.5);
            }
        }
    }
}
