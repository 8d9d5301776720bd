//! Pulling a run from one terminal to another: what wire, colour, length and endings are usual there. All of it is
//! assumed, so that it is shown as such wherever it decides something.

use super::{EditError, put_run, sheet_of};
use crate::conductor::{Colour, EndingMethod, Jacket, Size};
use crate::edit::Edit;
use crate::fact::Fact::{self, Assumed, Unknown};
use crate::id::{RunId, TerminalRef};
use crate::job::{End, Job, Part, Run, Sheet, SheetKind, Wire};
use crate::kinds::PartKind;
use crate::kinds::supply::FuseForm;
use crate::limits::check_point;
use crate::quantity::{Metres, SquareMm};
use crate::terminals::Role;
use words::say;

/// A run that was pulled.
#[derive(Clone, Debug, PartialEq)]
pub struct Connected {
    /// The edit that puts it there.
    pub edit: Edit,
    /// The id that it has.
    pub run: RunId,
}

/// Whether an end is on a terminal that is there, or on the board.
pub(super) fn check_end(sheet: &Sheet, end: &End) -> Result<(), EditError> {
    match end {
        End::Loose(point) => check_point(*point).map_err(EditError),
        End::On(at) if sheet.role(at).is_some() => Ok(()),
        End::On(at) => Err(EditError(say!("error-no-terminal", terminal = sheet.written(at)))),
    }
}

/// How an end there is usually finished.
pub(super) fn ending_at(sheet: &Sheet, end: &End) -> Fact<EndingMethod> {
    let End::On(at) = end else {
        return Assumed(EndingMethod::Loose);
    };
    match (sheet.parts.get(&at.part), sheet.role(at)) {
        (Some(part), Some(role)) => Assumed(usual_ending(&part.is, role)),
        _ => Unknown,
    }
}

/// How a wire is usually finished on a terminal (common practice).
#[must_use]
pub fn usual_ending(kind: &PartKind, role: Role) -> EndingMethod {
    if role.is_line() {
        return EndingMethod::Plugged;
    }
    match kind {
        PartKind::Battery(_)
        | PartKind::Alternator(_)
        | PartKind::Vehicle(_)
        | PartKind::Bus(_)
        | PartKind::Ground(_)
        | PartKind::Isolator(_)
        | PartKind::Breaker(_) => EndingMethod::CrimpedRing,
        PartKind::Fuse(fuse) => match fuse.form {
            FuseForm::Strip30 | FuseForm::Strip51 | FuseForm::Strip61 => EndingMethod::CrimpedRing,
            // Their holders come with leads of their own.
            FuseForm::Mini | FuseForm::Regular | FuseForm::Maxi | FuseForm::Glass => {
                EndingMethod::CrimpedSplice
            }
        },
        PartKind::Splice(_) | PartKind::InlineCapacitor(_) => EndingMethod::CrimpedSplice,
        PartKind::Plug(_) | PartKind::Adapter(_) | PartKind::HeadUnit(_) => EndingMethod::Factory,
        PartKind::Relay(_) | PartKind::Switch(_) | PartKind::Speaker(_) => EndingMethod::CrimpedSpade,
        PartKind::Converter(_)
        | PartKind::Block(_)
        | PartKind::Processor(_)
        | PartKind::LineConverter(_)
        | PartKind::Amplifier(_)
        | PartKind::Crossover(_)
        | PartKind::Capacitor(_)
        | PartKind::Load(_) => EndingMethod::Ferrule,
    }
}

/// What a run is for, from what its ends are for.
#[derive(Clone, Copy, PartialEq)]
enum Purpose {
    Signal,
    TurnOn,
    Speaker { positive: bool },
    Return,
    Feed,
    Passing,
}

fn purpose(roles: &[Role]) -> Purpose {
    let any = |what: fn(&Role) -> bool| roles.iter().any(what);
    if any(|role| role.is_line()) {
        return Purpose::Signal;
    }
    if any(|role| matches!(role, Role::TurnOnIn | Role::TurnOnOut)) {
        return Purpose::TurnOn;
    }
    let leg = roles.iter().find_map(|role| match role {
        Role::SpeakerOut { positive, .. } | Role::LevelIn { positive, .. } | Role::Coil { positive, .. } => {
            Some(*positive)
        }
        _ => None,
    });
    if let Some(positive) = leg {
        return Purpose::Speaker { positive };
    }
    if any(|role| matches!(role, Role::SpeakerThrough)) {
        return Purpose::Speaker { positive: true };
    }
    if any(|role| matches!(role, Role::SupplyMinus | Role::Body)) {
        return Purpose::Return;
    }
    if any(|role| matches!(role, Role::Control)) {
        return Purpose::TurnOn;
    }
    if any(|role| matches!(role, Role::SupplyPlus)) {
        return Purpose::Feed;
    }
    Purpose::Passing
}

/// Whether a part draws little, so that thin wire feeds it.
fn is_small(kind: &PartKind) -> bool {
    matches!(
        kind,
        PartKind::HeadUnit(_)
            | PartKind::Processor(_)
            | PartKind::LineConverter(_)
            | PartKind::Relay(_)
            | PartKind::Switch(_)
            | PartKind::Plug(_)
            | PartKind::Adapter(_)
            | PartKind::Load(_)
    )
}

/// Whether what leaves a part is the wire that came in.
fn passes_on(kind: &PartKind) -> bool {
    matches!(
        kind,
        PartKind::Fuse(_)
            | PartKind::Breaker(_)
            | PartKind::Switch(_)
            | PartKind::Splice(_)
            | PartKind::Isolator(_)
            | PartKind::Bus(_)
    )
}

/// The wire that is usual between two ends: its size, colour and length by what the ends are for. Where a feed passes
/// through on both ends, it goes on as the wire that already lands on the fuse, splice or the like.
#[must_use]
pub fn usual_wire(sheet: &Sheet, from: &End, to: &End) -> Wire {
    let terminals: Vec<&TerminalRef> = [from, to].into_iter().filter_map(End::terminal).collect();
    let roles: Vec<Role> = terminals.iter().filter_map(|at| sheet.role(at)).collect();
    let parts: Vec<&Part> = terminals
        .iter()
        .filter_map(|at| sheet.parts.get(&at.part))
        .collect();
    let small = parts.iter().any(|part| is_small(&part.is));
    let heavy = if small { 2.5 } else { 16.0 };
    let plain = Jacket::plain;
    let (area, jacket, length) = match purpose(&roles) {
        Purpose::Signal => (0.35, plain(Colour::Grey), 5.0),
        Purpose::TurnOn => {
            let jacket = Jacket {
                base: Some(Colour::Blue),
                tracer: Some(Colour::White),
            };
            (0.75, jacket, 5.0)
        }
        Purpose::Speaker { positive } => {
            let tracer = (!positive).then_some(Colour::Black);
            (
                2.5,
                Jacket {
                    base: Some(Colour::Grey),
                    tracer,
                },
                3.0,
            )
        }
        Purpose::Return => {
            let to_ground = parts.iter().any(|part| matches!(part.is, PartKind::Ground(_)));
            (heavy, plain(Colour::Black), if to_ground { 0.4 } else { 1.0 })
        }
        Purpose::Feed => {
            // The first protection stands right at the source.
            let source = parts.iter().any(|part| matches!(part.is, PartKind::Battery(_)));
            let device = parts
                .iter()
                .any(|part| matches!(part.is, PartKind::Fuse(_) | PartKind::Breaker(_)));
            (
                heavy,
                plain(Colour::Red),
                if source && device { 0.15 } else { 4.0 },
            )
        }
        Purpose::Passing => {
            let goes_on =
                |at: &&&TerminalRef| sheet.parts.get(&at.part).is_some_and(|part| passes_on(&part.is));
            let other = terminals
                .iter()
                .filter(goes_on)
                .find_map(|at| sheet.runs_of(at.part).next())
                .map(|(_, run)| &run.wire);
            if let Some(other) = other {
                let size = other.size.value().map_or(Unknown, Assumed);
                return Wire {
                    size,
                    jacket: other.jacket,
                    length: Assumed(Metres(1.0)),
                    ..Wire::default()
                };
            }
            (heavy, plain(Colour::Red), 1.0)
        }
    };
    Wire {
        size: Assumed(Size::Metric(SquareMm(area))),
        jacket,
        length: Assumed(Metres(length)),
        ..Wire::default()
    }
}

/// Pulls a run between two ends, with what is usual there.
///
/// # Errors
/// When an end is on nothing, or both are the same.
pub fn connect(job: &Job, on: SheetKind, from: End, to: End) -> Result<Connected, EditError> {
    let sheet = sheet_of(job, on)?;
    check_end(sheet, &from)?;
    check_end(sheet, &to)?;
    if from == to {
        return Err(EditError(say!("error-same-end")));
    }
    let id = job.free_run_id();
    let wire = usual_wire(sheet, &from, &to);
    let (from_method, to_method) = (ending_at(sheet, &from), ending_at(sheet, &to));
    let mut run = Run::new(sheet.free_tag("W"), from, to);
    run.wire = wire;
    run.from_ending.method = from_method;
    run.to_ending.method = to_method;
    let name = say!("edit-pull", run = &run.tag);
    Ok(Connected {
        edit: Edit::new(name, vec![put_run(on, id, run)]),
        run: id,
    })
}
