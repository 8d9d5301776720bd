//! Every single fault of a sheet, with how often such a thing is what is wrong.

use model::breaks::{Break, Contact, HALF_WAY};
use model::conductor::{Condition, EndingMethod};
use model::quantity::{Ohms, Share};
use model::{PartId, PartKind, Role, Sheet, TerminalRef};

/// How much more resistance is suspected in feeds and returns, and in speaker and turn-on leads, in ohms: what shows under load, and what
/// a meter sees without.
const HEAVY: [f64; 3] = [0.05, 0.3, 2.0];
const LIGHT: [f64; 3] = [2.0, 20.0, 2000.0];
/// A touch of bare metal, in ohms.
const TOUCH: Ohms = Ohms(0.005);
/// Size from which a run is a feed or return of amperes, in mm².
const HEAVY_FROM: f64 = 1.5;

/// A fault with its weight against others.
#[derive(Clone, Debug)]
pub(crate) struct Weighed {
    pub(crate) broken: Break,
    pub(crate) weight: f64,
}

/// All of them. Wiring of the vehicle's maker fails less often than what was added.
pub(crate) fn suspects(sheet: &Sheet) -> Vec<Weighed> {
    let mut all = Vec::new();
    let mut add = |broken: Break, weight: f64| all.push(Weighed { broken, weight });
    for (&id, run) in &sheet.runs {
        let roles: Vec<Role> = run
            .ends()
            .iter()
            .filter_map(|end| sheet.role(end.terminal()?))
            .collect();
        let line = roles.len() == 2 && roles.iter().all(|role| role.is_line());
        if run.wire.condition.value() == Some(Condition::Cut) {
            continue;
        }
        let by_maker = run.fitted_by != model::conductor::FittedBy::Us;
        let care = if by_maker { 0.3 } else { 1.0 };
        // Loose and hand-twisted ends come off; crimps and screws seldom.
        let ending = |method: Option<EndingMethod>| match method {
            Some(EndingMethod::Loose | EndingMethod::Twisted) => 3.0,
            Some(EndingMethod::Tap) => 2.0,
            _ => 0.5,
        };
        let ends = ending(run.from_ending.method.value()) + ending(run.to_ending.method.value());
        add(
            Break::Cut {
                run: id,
                at: HALF_WAY,
            },
            care * ends,
        );
        if line {
            continue;
        }
        let thin = run
            .wire
            .size
            .value()
            .is_some_and(|size| size.area().0 < HEAVY_FROM);
        let sound = roles.iter().any(|role| {
            matches!(
                role,
                Role::SpeakerOut { .. } | Role::Coil { .. } | Role::SpeakerThrough
            )
        });
        let decades = if thin || sound { LIGHT } else { HEAVY };
        for more in decades {
            let more = Ohms(more);
            add(Break::Resistive { run: id, more }, 0.4 * care * ends);
        }
        if !roles.contains(&Role::Body) {
            let touch = Break::Grounded {
                run: id,
                at: Share(0.5),
                through: TOUCH,
            };
            add(touch, 0.5 * care);
        }
    }
    for (&id, part) in &sheet.parts {
        of_part(id, part, &mut add);
    }
    all
}

fn of_part(id: PartId, part: &model::Part, add: &mut impl FnMut(Break, f64)) {
    let open = Break::Open {
        part: id,
        output: None,
    };
    let dead = Break::Dead { part: id };
    let poor = |more: f64| Break::Poor {
        part: id,
        more: Ohms(more),
    };
    match &part.is {
        PartKind::Fuse(_) | PartKind::Breaker(_) => {
            add(open, 3.0);
            for more in HEAVY {
                add(poor(more), 0.3);
            }
        }
        PartKind::Block(it) => {
            for (at, fuse) in it.fuses.0.iter().enumerate() {
                if fuse.is_some() {
                    let output = Some(format!("out{}", at + 1).as_str().into());
                    add(Break::Open { part: id, output }, 2.0);
                }
            }
        }
        PartKind::Switch(_) | PartKind::Relay(_) | PartKind::Isolator(_) => {
            add(open, 1.5);
            if matches!(part.is, PartKind::Relay(_)) {
                add(dead, 1.0);
            }
        }
        PartKind::Plug(_) => add(open, 3.0),
        PartKind::Ground(_) => {
            add(open, 1.5);
            for more in [0.1, 1.0, 10.0] {
                add(poor(more), 2.0);
            }
        }
        PartKind::Battery(_) | PartKind::Converter(_) => add(dead, 1.0),
        PartKind::Amplifier(_) => {
            add(dead, 1.5);
            add(Break::Reversed { part: id, coil: None }, 0.2);
        }
        PartKind::HeadUnit(_) | PartKind::Processor(_) | PartKind::LineConverter(_) => add(dead, 1.0),
        PartKind::Load(_) => add(dead, 1.0),
        PartKind::Speaker(it) => {
            add(dead, 1.0);
            let coils: &[(&str, &str)] = if it.coils <= 1 {
                &[("+", "-")]
            } else {
                &[("a+", "a-"), ("b+", "b-")]
            };
            for (plus, minus) in coils {
                let joined = Break::Joined {
                    points: [plus, minus].map(|name| Contact::Terminal(TerminalRef::new(id, name))),
                    through: TOUCH,
                };
                add(joined, 0.4);
            }
            add(Break::Reversed { part: id, coil: None }, 0.5);
            // Which of two coils is the wrong way round only the other speakers tell.
            if it.coils > 1 {
                for coil in [1, 2] {
                    let coil = Some(coil);
                    add(Break::Reversed { part: id, coil }, 0.3);
                }
            }
        }
        PartKind::Crossover(_) | PartKind::InlineCapacitor(_) => add(dead, 0.7),
        PartKind::Alternator(_)
        | PartKind::Vehicle(_)
        | PartKind::Bus(_)
        | PartKind::Splice(_)
        | PartKind::Adapter(_)
        | PartKind::Capacitor(_) => {}
    }
}
