//! Random trees, small enough to try all there is on them: a battery, a fuse, a trunk, loads of constant power and current on a
//! bus or one after the other, grounds each to the battery. All of it is invented.

use model::conductor::Size;
use model::fact::Fact::Given;
use model::kinds::supply::{Battery, Bus, Fuse, FuseForm, Load, LoadLaw};
use model::quantity::{Amps, Metres, SquareMm, Watts};
use model::{End, Part, PartId, PartKind, Run, RunId, Sheet, TerminalRef};
use testkit::random::Dice;

/// A tree.
pub(crate) struct Tree {
    pub(crate) sheet: Sheet,
    /// The runs that are sized; the others are locked.
    pub(crate) free: Vec<RunId>,
    pub(crate) fuse: PartId,
    /// Runs that no device guards and that carry the current behind the fuse.
    pub(crate) in_line: Vec<RunId>,
    /// Sizes and ratings to be tried.
    pub(crate) sizes: Vec<f64>,
    pub(crate) ratings: Vec<f64>,
}

fn add(sheet: &mut Sheet, kind: impl Into<PartKind>) -> PartId {
    let id = PartId(sheet.parts.last_key_value().map_or(1, |(id, _)| id.0 + 1));
    let kind = kind.into();
    let tag = format!("{}{}", kind.letter(), id.0);
    sheet.parts.insert(id, Part::new(tag, kind));
    id
}

fn run(sheet: &mut Sheet, from: (PartId, &str), to: (PartId, &str), length: f64) -> RunId {
    let id = RunId(sheet.runs.last_key_value().map_or(1, |(id, _)| id.0 + 1));
    let on = |(part, terminal): (PartId, &str)| End::On(TerminalRef::new(part, terminal));
    let mut run = Run::new(format!("W{}", id.0), on(from), on(to));
    run.wire.size = Given(Size::Metric(SquareMm(50.0)));
    run.wire.length = Given(Metres((length * 100.0).round() / 100.0));
    sheet.runs.insert(id, run);
    id
}

/// A tree of so many loads. `free_grounds` of their returns are sized as well, the others locked at 50 mm².
pub(crate) fn tree(seed: u64, loads: usize, free_grounds: usize) -> Tree {
    let mut dice = Dice::new(seed);
    let mut sheet = Sheet::default();
    let battery = add(
        &mut sheet,
        Battery {
            cranking: Given(Amps(dice.between(600.0, 900.0).round())),
            ..Battery::default()
        },
    );
    let fuse = add(
        &mut sheet,
        Fuse {
            form: FuseForm::Maxi,
            rating: Given(Amps(60.0)),
            ..Fuse::default()
        },
    );
    let bus = add(
        &mut sheet,
        Bus {
            places: 6,
            ..Bus::default()
        },
    );
    let stub = run(&mut sheet, (battery, "+"), (fuse, "in"), 0.3);
    let trunk = run(&mut sheet, (fuse, "out"), (bus, "1"), dice.between(0.5, 4.0));
    let mut free = vec![trunk];
    let mut in_line = vec![stub];
    let mut grounds = Vec::new();
    let mut from = (bus, 2);
    for number in 0..loads {
        let amps = dice.between(3.0, 14.0);
        let load = add(
            &mut sheet,
            Load {
                law: dice.one(&[LoadLaw::Power, LoadLaw::Power, LoadLaw::Current]),
                power: Given(Watts((amps * 12.5).round())),
                current: Given(Amps((amps * 10.0).round() / 10.0)),
                ..Load::default()
            },
        );
        // Now and then on the terminal of the load before, so that two share a feed beyond the bus.
        let place = from.1.to_string();
        free.push(run(
            &mut sheet,
            (from.0, &place),
            (load, "+"),
            dice.between(0.5, 4.0),
        ));
        from = (bus, from.1 + 1);
        let ground = run(&mut sheet, (load, "-"), (battery, "-"), dice.between(0.3, 3.0));
        in_line.push(ground);
        if number < free_grounds {
            free.push(ground);
        } else {
            grounds.push(ground);
        }
    }
    for id in grounds.iter().chain([&stub]) {
        if let Some(run) = sheet.runs.get_mut(id) {
            run.laying.size_locked = true;
        }
    }
    Tree {
        sheet,
        free,
        fuse,
        in_line,
        // Around what such loads need; the least metal of all sizes lies within.
        sizes: vec![1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0],
        ratings: vec![20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0],
    }
}
