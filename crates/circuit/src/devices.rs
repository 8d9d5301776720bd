//! Overcurrent devices: what each guards, what it serves, and the most that can flow through it.

use crate::faults::{FarShort, Solved};
use crate::flows::Points;
use crate::network::{BODY, Closes, Kind, Network, values};
use crate::protection::{Reach, Stretches};
use crate::solve::{Element, Law, System};
use crate::study::{Device, DeviceRef};
use crate::trace::Blocks;
use model::quantity::{Amps, Share};
use model::{PartId, PartKind, RunId, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// The devices of a network. `guarded` names the runs that each guards, `prospective` is what [`prospective`] found.
#[allow(clippy::too_many_arguments)]
pub(crate) fn devices(
    net: &Network,
    points: &Points,
    stretches: &Stretches,
    reaches: &[Reach],
    back_blocks: &Blocks,
    guarded: Vec<Vec<RunId>>,
    on_ways: &OrderedMap<DeviceRef, OrderedSet<PartId>>,
    prospective: &[Option<f64>],
) -> Vec<Device> {
    let minus: Vec<usize> = net.sources.iter().map(|s| s.minus).collect();
    net.devices
        .iter()
        .zip(guarded)
        .enumerate()
        .map(|(at, (device, guards))| {
            let nodes = net.branches.get(device.branch).map_or([BODY; 2], |b| b.nodes);
            let live = nodes.iter().any(|n| {
                *n != BODY
                    && reaches
                        .iter()
                        .any(|r| r.reached.get(stretches.of_node[*n]) == Some(&true))
            });
            let returns = nodes
                .iter()
                .any(|n| back_blocks.joined(*n, BODY) || minus.iter().any(|m| back_blocks.joined(*n, *m)));
            Device {
                device: device.name.clone(),
                rating: device.rating,
                current: points.through(device.branch),
                guards: guards.into_iter().collect(),
                in_return: returns && !live,
                prospective: prospective.get(at).copied().flatten().map(Amps),
                serves: on_ways.get(&device.name).cloned().unwrap_or_default(),
                works: device.works,
            }
        })
        .collect()
}

/// The largest current into a short to the body right behind each device, from either side: batteries full, at their
/// lowest credible resistance, alternators and converters at their limits, conductors at 20 °C, no load drawing. `system` is one for the branches.
/// `shorts` looks at the same solution for what a short at the far end of each run does. None of it depends on what flows at work.
pub(crate) fn prospective(
    net: &Network,
    sheet: &Sheet,
    mut system: System,
    shorts: impl FnOnce(&Solved<'_>) -> Vec<FarShort>,
) -> (Vec<Option<f64>>, Vec<FarShort>) {
    let kinds: Vec<&PartKind> = sheet.parts.values().map(|p| &p.is).collect();
    let elements: Vec<Element> = net
        .branches
        .iter()
        .map(|b| {
            let law = match (b.kind, kinds.get(b.part)) {
                (Kind::Battery, Some(PartKind::Battery(it))) => {
                    let model = values::battery_model(it);
                    let full = reference::battery::open_circuit_voltage(it.chemistry, Share(1.0)).0;
                    Law::Source {
                        emf: full.max(model.emf),
                        resistance: model.least,
                    }
                }
                (Kind::Alternator, Some(PartKind::Alternator(it))) => {
                    Law::Current(-it.current.value().map_or(120.0, |i| i.0))
                }
                (Kind::ConverterOut, Some(PartKind::Converter(it))) => {
                    Law::Current(-it.current.value().map_or(30.0, |i| i.0))
                }
                // A device that is out is looked at as put back.
                (Kind::Device { .. }, _) => Law::Resistance(b.resistance),
                (Kind::Load(_) | Kind::TurnOnOut, _) => Law::Open,
                _ if !b.carries || matches!(b.closes, Closes::Diode { .. }) => Law::Open,
                _ => Law::Resistance(b.resistance),
            };
            Element { nodes: b.nodes, law }
        })
        .collect();
    if system.solve(&elements, &[BODY], 1.0).is_err() {
        return (vec![None; net.devices.len()], Vec::new());
    }
    let (own, other) = system.transfer();
    let minus: Vec<usize> = net.sources.iter().map(|s| s.minus).collect();
    // To the body; where the sheet ties nothing to it, to the negative pole of a source.
    let to = |b: usize| {
        std::iter::once(BODY)
            .chain(minus.iter().copied())
            .find(|n| system.are_tied(b, *n))
    };
    let shorts = shorts(&Solved {
        net,
        sheet,
        system: &system,
        transfer: (&own, &other),
        to: &to,
    });
    let prospective = net
        .devices
        .iter()
        .map(|device| {
            let branch = net.branches.get(device.branch)?;
            let [a, b] = branch.nodes;
            let into = |a: usize, b: usize| {
                let to = to(b)?;
                if a == b || b == to || !system.is_driven(b) {
                    return None;
                }
                // Resistance from the short to the rest, and what the fault current then makes across the device.
                let (inner, across) = if system.is_reference(to) {
                    (own[b] - own[to], other[device.branch] - own[b])
                } else {
                    let short = [(b, 1.0), (to, -1.0)];
                    (
                        system.form(&short, &short),
                        system.form(&[(a, 1.0), (b, -1.0)], &short),
                    )
                };
                if inner <= 0.0 || inner.is_nan() {
                    return None;
                }
                let v = system.voltages();
                let fault = (v[b] - v[to]) / inner;
                let between = (v[a] - v[b]) - fault * across;
                Some((between / branch.resistance).max(0.0))
            };
            match (into(a, b), into(b, a)) {
                (Some(x), Some(y)) => Some(x.max(y)),
                (x, y) => x.or(y),
            }
        })
        .collect();
    (prospective, shorts)
}
