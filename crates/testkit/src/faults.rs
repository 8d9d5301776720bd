//! What an earlier hand does wrong, put into a sheet by dice: thin wire, twisted ends, fuses of the wrong rating, swapped
//! speaker leads, loose ends, paint under a ground. Equal dice give equal faults.

use crate::random::Dice;
use model::conductor::{Condition, EndingMethod, FittedBy, Material, Size};
use model::fact::Fact::{Given, Unknown};
use model::kinds::supply::{DeviceState, GroundSurface, SpliceMethod};
use model::quantity::{Amps, Metres, Ohms, SquareMm, Watts};
use model::{BoardPoint, End, PartId, PartKind, Run, RunId, Sheet, TerminalRef};

/// Puts so many faults into a sheet. One may undo another; what is left is what an earlier hand left.
pub fn spoil(sheet: &mut Sheet, dice: &mut Dice, faults: usize) {
    for _ in 0..faults {
        if dice.chance(0.6) {
            let ids: Vec<RunId> = sheet.runs.keys().copied().collect();
            if ids.is_empty() {
                continue;
            }
            let id = dice.one(&ids);
            if dice.chance(0.08) {
                sheet.runs.remove(&id);
            } else if let Some(run) = sheet.runs.get_mut(&id) {
                spoil_run(run, dice);
            }
        } else {
            let ids: Vec<PartId> = sheet.parts.keys().copied().collect();
            if ids.is_empty() {
                continue;
            }
            let id = dice.one(&ids);
            spoil_part(sheet, id, dice);
        }
    }
}

fn spoil_run(run: &mut Run, dice: &mut Dice) {
    match dice.below(12) {
        0 => run.wire.size = Given(Size::Metric(SquareMm(dice.one(&[0.75, 1.5, 2.5, 6.0])))),
        1 => run.wire.length = Given(Metres(dice.one(&[0.6, 1.4, 3.0, 7.0]))),
        2 => {
            run.wire.condition = Given(dice.one(&[
                Condition::Chafed,
                Condition::Melted,
                Condition::Cut,
                Condition::Corroded,
                Condition::Pinched,
            ]));
        }
        3 => run.from_ending.method = Given(dice.one(&[EndingMethod::Twisted, EndingMethod::Tap])),
        4 => run.to_ending.method = Given(dice.one(&[EndingMethod::Twisted, EndingMethod::Loose])),
        5 => run.to_ending.resistance = Given(Ohms(dice.one(&[0.002, 0.01, 0.05]))),
        6 => run.to = End::Loose(BoardPoint { x: 40, y: 40 }),
        7 => run.wire.material = Given(Material::CladAluminium15),
        8 => run.wire.size = Unknown,
        9 => run.fitted_by = FittedBy::Earlier,
        10 => run.wire.bundle = Given(6),
        _ => std::mem::swap(&mut run.from, &mut run.to),
    }
}

fn spoil_part(sheet: &mut Sheet, id: PartId, dice: &mut Dice) {
    let states = [DeviceState::Open, DeviceState::Missing, DeviceState::Bridged];
    let rating = Given(Amps(dice.one(&[5.0, 15.0, 40.0, 100.0, 200.0])));
    let swap = match sheet.parts.get_mut(&id).map(|part| &mut part.is) {
        Some(PartKind::Fuse(fuse)) => {
            if dice.chance(0.5) {
                fuse.rating = rating;
            } else {
                fuse.state = dice.one(&states);
            }
            false
        }
        Some(PartKind::Block(block)) => {
            for slot in &mut block.fuses.0 {
                if dice.chance(0.5) {
                    *slot = dice.one(&[None, Some(Amps(10.0)), Some(Amps(80.0))]);
                }
            }
            false
        }
        Some(PartKind::Ground(ground)) => {
            ground.surface = Given(dice.one(&[
                GroundSurface::Painted,
                GroundSurface::Hinge,
                GroundSurface::BeltAnchor,
            ]));
            false
        }
        Some(PartKind::Splice(splice)) => {
            splice.method = SpliceMethod::Twisted;
            false
        }
        Some(PartKind::Plug(plug)) => {
            plug.mated = false;
            false
        }
        Some(PartKind::Speaker(speaker)) => {
            match dice.below(3) {
                0 => speaker.impedance = Given(Ohms(dice.one(&[1.0, 2.0]))),
                1 => speaker.power = Given(Watts(25.0)),
                _ => {}
            }
            true
        }
        _ => false,
    };
    if swap {
        turn(sheet, id);
    }
}

/// Exchanges the leads of a speaker.
fn turn(sheet: &mut Sheet, speaker: PartId) {
    for run in sheet.runs.values_mut() {
        for end in [&mut run.from, &mut run.to] {
            if let End::On(at) = end
                && at.part == speaker
            {
                let name = at.terminal.as_str();
                let other = match name.strip_suffix('+') {
                    Some(coil) => format!("{coil}-"),
                    None => name.replace('-', "+"),
                };
                *at = TerminalRef::new(speaker, other);
            }
        }
    }
}
