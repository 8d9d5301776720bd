//! Where leads can be put.

use circuit::{Bench, Probe};
use model::{End, PartId, PartKind, Role, Sheet, TerminalRef};
use ordered::OrderedSet;

/// A place to measure, and whether both leads are on one wire or part, so that a small difference is read.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub(crate) probe: Probe,
    pub(crate) near: bool,
}

/// Battery negative, against which the rest is measured: the first battery of the sheet.
pub(crate) fn black(sheet: &Sheet) -> Option<TerminalRef> {
    let is_battery = |part: &model::Part| matches!(part.is, PartKind::Battery(_));
    let (id, _) = sheet.parts.iter().find(|(_, part)| is_battery(part))?;
    Some(TerminalRef::new(*id, "-"))
}

/// All that is worth a thought: volts of every point against battery negative, the drop along every run and across every fuse, the
/// current in every feed, the tone at every output and speaker, ohms along every run, of every speaker circuit, and of every point
/// against battery negative. What lies behind the wall of a speaker's own filter is told by its terminals.
pub(crate) fn candidates(sheet: &Sheet, bench: &Bench) -> Vec<Candidate> {
    let mut all = Vec::new();
    let mut seen: OrderedSet<(u8, usize, usize)> = OrderedSet::new();
    let mut add = |probe: Probe, near: bool| {
        let key = match &probe {
            Probe::Volts(a, b) => bench.point(a).zip(bench.point(b)).map(|(a, b)| (0, a, b)),
            Probe::Tone(a, b) => bench.point(a).zip(bench.point(b)).map(|(a, b)| (1, a, b)),
            Probe::Ohms(a, b) => bench.point(a).zip(bench.point(b)).map(|(a, b)| (2, a, b)),
            Probe::Amps(run) => Some((3, run.0 as usize, usize::MAX)),
        };
        let Some(key) = key.filter(|(_, a, b)| a != b) else {
            return;
        };
        if seen.insert(key) {
            all.push(Candidate { probe, near });
        }
    };
    let Some(black) = black(sheet) else {
        return all;
    };
    let wired: OrderedSet<&TerminalRef> = sheet
        .runs
        .values()
        .flat_map(|run| run.ends())
        .filter_map(End::terminal)
        .collect();
    for (&id, part) in &sheet.parts {
        for terminal in part.terminals() {
            let red = TerminalRef {
                part: id,
                terminal: terminal.name.clone(),
            };
            let supply = matches!(
                terminal.role,
                Role::SupplyPlus
                    | Role::SupplyMinus
                    | Role::Through
                    | Role::Body
                    | Role::TurnOnIn
                    | Role::TurnOnOut
                    | Role::Control
            );
            if supply && wired.contains(&red) {
                add(Probe::Volts(red.clone(), black.clone()), false);
            }
            if supply && wired.contains(&red) {
                add(Probe::Ohms(red, black.clone()), false);
            }
        }
        own(id, part, &mut add);
    }
    for (&id, run) in &sheet.runs {
        let (Some(from), Some(to)) = (run.from.terminal(), run.to.terminal()) else {
            continue;
        };
        let roles = [sheet.role(from), sheet.role(to)];
        if roles.iter().all(|role| role.is_some_and(Role::is_line)) {
            continue;
        }
        let sound = roles.iter().flatten().any(|role| {
            matches!(
                role,
                Role::SpeakerOut { .. } | Role::Coil { .. } | Role::SpeakerThrough
            )
        });
        if !sound {
            add(Probe::Volts(from.clone(), to.clone()), true);
            add(Probe::Amps(id), false);
        }
        add(Probe::Ohms(from.clone(), to.clone()), false);
    }
    all
}

/// Pairs of terminals of one part.
fn own(id: PartId, part: &model::Part, add: &mut impl FnMut(Probe, bool)) {
    let at = |name: &str| TerminalRef::new(id, name);
    match &part.is {
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Switch(_) => {
            add(Probe::Volts(at("in"), at("out")), true);
            add(Probe::Ohms(at("in"), at("out")), false);
        }
        PartKind::Relay(_) => {
            add(Probe::Volts(at("30"), at("87")), true);
            add(Probe::Volts(at("86"), at("85")), false);
            add(Probe::Ohms(at("86"), at("85")), false);
        }
        PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Speaker(_) | PartKind::Crossover(_) => {
            let terminals = part.terminals();
            for plus in &terminals {
                let name = plus.name.as_str();
                let Some(stem) = name
                    .strip_suffix('+')
                    .filter(|stem| !stem.is_empty() || matches!(part.is, PartKind::Speaker(_)))
                else {
                    continue;
                };
                let minus = format!("{stem}-");
                let pair = terminals.iter().any(|terminal| terminal.name.as_str() == minus);
                let sound = matches!(
                    plus.role,
                    Role::SpeakerOut { .. } | Role::Coil { .. } | Role::SpeakerThrough
                );
                if pair && sound {
                    add(Probe::Tone(at(name), at(&minus)), false);
                    add(Probe::Ohms(at(name), at(&minus)), false);
                }
            }
        }
        _ => {}
    }
}
