//! Loads, sources, contacts and devices follow what a few changes have made of the volts, round by round, each as one more change of the
//! factored network. What was on stays off once it has gone off, as in the engine.

use super::OPENS;
use super::linear::{Case, Linear, Straight};
use super::scene::{Scene, Standing};
use crate::network::{Closes, Draw, Kind, values};
use crate::solve::{Demand, LEAST_SUPPLY, Law, Level};
use model::PartKind;

/// Most rounds, and most changes of elements that follow, of one case.
const MOST_ROUNDS: usize = 20;
const MOST_FOLLOWING: usize = 40;
/// A load is taken anew where its current is off by this share, and by this much, in amperes.
const WORTH_SHARE: f64 = 0.01;
const WORTH_AMPS: f64 = 0.02;

/// Elements that may follow the volts, with what 1 A through each does.
#[derive(Debug)]
pub(super) struct Ports {
    at: Vec<(usize, Vec<f64>)>,
    /// Parts with a voltage below which they are off, with the branch on which it is seen.
    cut_offs: Vec<(usize, usize, f64)>,
    /// Ignition inputs of head units: part, node, return.
    told: Vec<(usize, [u32; 2])>,
    /// Branches of each device, with its rating and the current through it as nothing is wrong.
    devices: Vec<(usize, usize, f64)>,
}

impl Ports {
    pub(super) fn new(scene: &Scene, standing: &Standing, linear: &Linear) -> Self {
        let net = &standing.net;
        let at = (0..net.branches.len())
            .filter(|at| {
                net.branches.get(*at).is_some_and(|branch| match branch.kind {
                    Kind::Load(draw) => draw != Draw::Coil && draw != Draw::Base,
                    Kind::Battery | Kind::Alternator | Kind::ConverterOut => true,
                    _ => matches!(
                        branch.closes,
                        Closes::Relay { .. }
                            | Closes::Sensing { .. }
                            | Closes::Diode { .. }
                            | Closes::TurnedOn
                    ),
                })
            })
            .map(|at| (at, linear.unit(linear.ends(at))))
            .collect();
        let cut_offs = standing
            .demands
            .iter()
            .enumerate()
            .filter_map(|(part, demand)| {
                Some((part, scene.supply.get(part).copied().flatten()?, demand.cut_off?))
            })
            .collect();
        let mut told: Vec<(usize, [u32; 2])> = scene
            .told
            .iter()
            .map(|&(part, input, minus)| (part, linear.places([input, minus])))
            .collect();
        let wired = |node: usize| net.runs.iter().any(|run| run.nodes.contains(&node));
        for (part, it) in scene.sheet.parts.values().enumerate() {
            if matches!(it.is, PartKind::HeadUnit(_))
                && let (Some(node), Some(minus)) =
                    (net.node_by_name(part, "15"), net.node_by_name(part, "31"))
                && wired(node)
            {
                told.push((part, linear.places([node, minus])));
            }
        }
        let devices = net
            .devices
            .iter()
            .enumerate()
            .filter_map(|(at, device)| {
                let rating = device.rating?.0.max(0.1);
                device.works.then_some((at, device.branch, OPENS * rating))
            })
            .collect();
        Self {
            at,
            cut_offs,
            told,
            devices,
        }
    }

    fn unit(&self, element: usize) -> Option<&[f64]> {
        let at = self.at.binary_search_by_key(&element, |(at, _)| *at).ok()?;
        self.at.get(at).map(|(_, unit)| unit.as_slice())
    }
}

/// What came of settling.
#[derive(Clone, Debug, Default)]
pub(super) struct Settled {
    /// By part, whether it is on.
    pub(super) on: Vec<bool>,
    /// Devices that have opened.
    pub(super) opened: Vec<usize>,
}

/// Lets a case settle. `demands` is what the parts ask now, `dead` are those of which nothing is left.
pub(super) fn settle(
    scene: &Scene,
    standing: &Standing,
    demands: &[Demand],
    linear: &Linear,
    ports: &Ports,
    case: &mut Case<'_>,
    dead: &[usize],
) -> Settled {
    let mut on = standing.point.on.clone();
    let mut opened = standing.opened.clone();
    let mut dropped: Vec<usize> = Vec::new();
    let begun = case.rank();
    for _ in 0..MOST_ROUNDS {
        if case.is_lost() {
            break;
        }
        // A short first: whatever else it does is over when its device opens.
        let over = ports.devices.iter().filter_map(|&(at, branch, most)| {
            let amps = case.current(branch).abs();
            (amps > most && !opened.contains(&at)).then_some((amps / most, at, branch))
        });
        if let Some((_, device, branch)) = over.max_by(|a, b| a.0.total_cmp(&b.0)) {
            opened.push(device);
            case.put(branch, Straight::default(), None);
            dropped.clear();
            continue;
        }
        let volts = |case: &Case<'_>, ends: [u32; 2]| case.volts(ends).unwrap_or(0.0);
        // A quarter at a time, the furthest below first: what is left may then hold.
        let mut below: Vec<(f64, usize)> = ports
            .cut_offs
            .iter()
            .map(|&(part, branch, least)| (volts(case, linear.ends(branch)) - least, part))
            .filter(|(short, part)| *short < 0.0 && on.get(*part) == Some(&true) && !dropped.contains(part))
            .collect();
        below.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        below.truncate(below.len().div_ceil(4));
        dropped.extend(below.iter().map(|(_, part)| *part));
        for &(part, ends) in &ports.told {
            if volts(case, ends) < values::IGNITION_THRESHOLD && !dropped.contains(&part) {
                dropped.push(part);
            }
        }
        for (part, on) in on.iter_mut().enumerate() {
            *on = standing.point.on.get(part) == Some(&true)
                && !dropped.contains(&part)
                && !dead.contains(&part);
        }
        let mut wanted: Vec<(f64, usize, Straight)> = Vec::new();
        for (at, _) in &ports.at {
            let ends = linear.ends(*at);
            let across = volts(case, ends);
            let now = case.law(*at);
            let wants = law(scene, standing, demands, case, linear, *at, across, &on, now);
            // A contact that closes on what hangs in the air carries nothing yet.
            let off = if (wants.conductance > 0.0) == (now.conductance > 0.0) {
                (wants.at(across) - now.at(across)).abs()
            } else {
                f64::INFINITY
            };
            let dead = standing
                .net
                .branches
                .get(*at)
                .is_some_and(|branch| dead.contains(&branch.part));
            if !dead && off > WORTH_AMPS + WORTH_SHARE * now.at(across).abs() {
                wanted.push((off, *at, wants));
            }
        }
        if wanted.is_empty() && below.is_empty() {
            break;
        }
        wanted.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for (_, at, law) in wanted {
            if case.rank() - begun >= MOST_FOLLOWING {
                break;
            }
            case.put(at, law, ports.unit(at));
        }
    }
    Settled { on, opened }
}

/// What a branch that follows is at these volts.
#[allow(clippy::too_many_arguments)]
fn law(
    scene: &Scene,
    standing: &Standing,
    demands: &[Demand],
    case: &Case<'_>,
    linear: &Linear,
    at: usize,
    across: f64,
    on: &[bool],
    now: Straight,
) -> Straight {
    let Some(branch) = standing.net.branches.get(at) else {
        return now;
    };
    let part_on = on.get(branch.part) == Some(&true);
    let through = |conducts: bool| {
        if conducts {
            Straight::resistance(branch.resistance)
        } else {
            Straight::default()
        }
    };
    let volts = |ends: [u32; 2]| case.volts(ends).unwrap_or(0.0);
    // A load as the resistance that it is at these volts; below what it needs, and while it is on, it stays what it was.
    let at_rest = super::views::at_rest(branch, demands.get(branch.part));
    let load = |law: Law, on: bool| match law {
        Law::Current(amps) if across >= LEAST_SUPPLY && amps > 0.0 => Straight::resistance(across / amps),
        Law::Power(watts) if across >= LEAST_SUPPLY && watts > 0.0 => {
            Straight::resistance(across * across / watts)
        }
        Law::Resistance(ohms) => Straight::resistance(ohms),
        Law::Current(_) | Law::Power(_) if on && across < LEAST_SUPPLY => now,
        _ => at_rest,
    };
    let demand = demands.get(branch.part);
    match (branch.kind, demand) {
        (Kind::Load(Draw::Supply), Some(demand)) => {
            let converter = scene
                .sheet
                .parts
                .values()
                .nth(branch.part)
                .is_some_and(|part| matches!(part.is, PartKind::Converter(_)));
            match demand.supply.get(Level::Mean as usize) {
                _ if converter => now,
                Some(law) if part_on => load(*law, true),
                _ => at_rest,
            }
        }
        (Kind::Load(Draw::TurnOn), Some(demand)) => load(Law::Current(demand.turn_on), true),
        (Kind::Load(_), Some(demand)) => load(
            Law::Current(if part_on { demand.idle } else { demand.off }),
            part_on,
        ),
        (Kind::Battery | Kind::Alternator | Kind::ConverterOut, _) => {
            let law = standing.point.elements.get(at).map_or(Law::Open, |it| it.law);
            views_of(law, across, now)
        }
        (_, _) => match branch.closes {
            Closes::Relay {
                coil,
                pull_in,
                energised,
            } => through((volts(linear.ends(coil)).abs() >= pull_in) == energised),
            Closes::Sensing { minus, closes_at } => {
                let ends = [linear.ends(at)[0], linear.places([minus, minus])[1]];
                // Once closed it holds down to half a volt below.
                let holds = if now.conductance > 0.0 { 0.5 } else { 0.0 };
                through(volts(ends) >= closes_at - holds)
            }
            Closes::Diode { drop } => {
                let law = Law::Diode {
                    drop,
                    resistance: branch.resistance,
                };
                views_of(law, across, now)
            }
            Closes::TurnedOn => through(part_on),
            _ => now,
        },
    }
}

/// A source or diode on the piece on which it comes to work; one at its limit as a voltage behind what limits it there.
fn views_of(law: Law, across: f64, now: Straight) -> Straight {
    match law {
        Law::Open => now,
        law => super::views::straight(law, across, 1.0),
    }
}
