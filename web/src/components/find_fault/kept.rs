//! Readings between the search and the sheet that keeps them.

use assist::finding::{Reading, State};
use circuit::Probe;
use editor::Thing;
use model::laying::Moved;
use model::readings::Measured;
use model::{Fact, Sheet};

/// A reading as the meter sheet keeps it.
pub(super) fn to_kept(sheet: &Sheet, moved: Option<Moved>, reading: &Reading) -> model::readings::Reading {
    let (measured, at, against) = match &reading.probe {
        Probe::Volts(red, black) => (Measured::Volts, sheet.written(red), sheet.written(black)),
        Probe::Tone(red, black) => (Measured::VoltsAc, sheet.written(red), sheet.written(black)),
        Probe::Ohms(red, black) => (Measured::Ohms, sheet.written(red), sheet.written(black)),
        Probe::Amps(run) => (Measured::Amps, Thing::Run(*run).written(sheet), String::new()),
    };
    let kept = model::readings::Reading {
        measured,
        at,
        against,
        state: reading.state.vehicle,
        duty: reading.state.duty,
        moved: moved.map_or(Fact::Unknown, Fact::Given),
        ..model::readings::Reading::default()
    };
    match reading.number {
        Some(number) => kept.with_number(number),
        None => model::readings::Reading {
            remark: editor::meter::OPEN.to_owned(),
            ..kept
        },
    }
}

/// A reading that was kept, as the finder takes it; nothing where its place is not on the sheet any more, and of one that was
/// taken while something else was moved: what fails then and what fails at rest are not one fault to look for.
pub(super) fn from_kept(
    sheet: &Sheet,
    moved: Option<Moved>,
    kept: &model::readings::Reading,
) -> Option<Reading> {
    if kept.moved.value() != moved {
        return None;
    }
    let probe = match kept.measured {
        Measured::Amps => Probe::Amps(sheet.run_by_tag(&kept.at)?.0),
        measured => {
            let (red, black) = (
                paperwork::terminal(sheet, &kept.at)?,
                paperwork::terminal(sheet, &kept.against)?,
            );
            match measured {
                Measured::Volts => Probe::Volts(red, black),
                Measured::VoltsAc => Probe::Tone(red, black),
                _ => Probe::Ohms(red, black),
            }
        }
    };
    // With the fuses out a sheet is another one than is searched.
    if kept.fuses_out {
        return None;
    }
    let number = kept.number();
    // Volts and amps without a number say nothing that could be weighed; an open circuit does.
    (number.is_some() || matches!(probe, Probe::Ohms(..))).then_some(Reading {
        probe,
        state: State {
            vehicle: kept.state,
            duty: kept.duty,
        },
        number,
        tolerance: None,
    })
}
