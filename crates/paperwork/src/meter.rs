//! The meter sheet: what a meter will read at every test point in each state if all is as drawn, with room for what it does
//! read; and the readings that were kept, each beside what was to be expected in its own state.

use crate::table::{Cell, Column, Table};
use crate::work::Work;
use circuit::{Meter, OhmsShown, Probe, Study, voltage_key};
use model::job::{Duty, VehicleState};
use model::laying::Moved;
use model::quantity::Volts;
use model::readings::{Measured, Reading};
use model::{PartId, PartKind, Role, RunId, Settings, Sheet, TerminalRef};
use ordered::OrderedMap;
use words::{Saying, Unit, Value, say};

/// What was or is to be measured, and where.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Point {
    /// Volts, red against black.
    Volts(TerminalRef, TerminalRef),
    /// Volts of alternating current under a test tone.
    Tone(TerminalRef, TerminalRef),
    /// Amps in a run, by clamp.
    Amps(RunId),
    /// Ohms between two terminals, supply isolated.
    Ohms(TerminalRef, TerminalRef),
}

/// What a meter will show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expected {
    /// A number, in volts, amps or ohms.
    Number(f64),
    /// Nothing: the circuit is open, or the terminal hangs in the air.
    Nothing,
}

/// Studies of a sheet by state and duty, each made when it is first asked for.
pub struct Studies<'w> {
    sheet: &'w Sheet,
    settings: &'w Settings,
    by_state: OrderedMap<(VehicleState, Duty), Study>,
    /// Meters that read a test tone.
    tones: OrderedMap<(VehicleState, Duty), Option<Meter>>,
}

impl<'w> Studies<'w> {
    /// Of a sheet.
    #[must_use]
    pub fn of(sheet: &'w Sheet, settings: &'w Settings) -> Self {
        Self {
            sheet,
            settings,
            by_state: OrderedMap::new(),
            tones: OrderedMap::new(),
        }
    }
    /// The study in a state at a duty.
    pub fn at(&mut self, state: VehicleState, duty: Duty) -> &Study {
        let (sheet, settings) = (self.sheet, self.settings);
        self.by_state.entry((state, duty)).or_insert_with(|| {
            let mut settings = settings.clone();
            settings.conditions.state = state;
            settings.conditions.duty = duty;
            circuit::study(sheet, &settings)
        })
    }
    /// What a meter will read at a point. `None` where that cannot be told: the point is not on the sheet, or nothing was solved.
    pub fn expected(&mut self, point: &Point, state: VehicleState, duty: Duty) -> Option<Expected> {
        if let Point::Ohms(red, black) = point {
            let metal = body::Metal::of(self.sheet, self.settings);
            return Some(match circuit::ohms_between(self.sheet, &metal, red, black)? {
                OhmsShown::SamePoint => Expected::Number(0.0),
                OhmsShown::Open => Expected::Nothing,
                OhmsShown::Ohms(ohms) => Expected::Number(ohms.0),
            });
        }
        let there = |at: &TerminalRef| self.sheet.role(at).is_some();
        if let Point::Volts(red, black) | Point::Tone(red, black) = point
            && !(there(red) && there(black))
        {
            return None;
        }
        if let Point::Tone(red, black) = point {
            let (sheet, settings) = (self.sheet, self.settings);
            let meter = self.tones.entry((state, duty)).or_insert_with(|| {
                let mut settings = settings.clone();
                (settings.conditions.state, settings.conditions.duty) = (state, duty);
                Meter::new(sheet, &settings, None)
            });
            let probe = Probe::Tone(red.clone(), black.clone());
            let number = meter.as_ref()?.read(&probe)?.number(&probe);
            return Some(number.map_or(Expected::Nothing, Expected::Number));
        }
        let study = self.at(state, duty);
        if study.voltages.is_empty() {
            return None;
        }
        match point {
            Point::Volts(red, black) => {
                let volts = |at: &TerminalRef| study.voltages.get(&voltage_key(at)).copied();
                Some(match (volts(red), volts(black)) {
                    (Some(Volts(red)), Some(Volts(black))) => Expected::Number(red - black),
                    _ => Expected::Nothing,
                })
            }
            Point::Amps(run) => study
                .runs
                .get(run)
                .map(|flow| Expected::Number(flow.current.mean.0.abs())),
            Point::Ohms(..) | Point::Tone(..) => None,
        }
    }
}

/// A terminal by what people write: `F1.in`.
#[must_use]
pub fn terminal(sheet: &Sheet, written: &str) -> Option<TerminalRef> {
    let (tag, name) = written.split_once('.')?;
    let (part, _) = sheet.part_by_tag(tag)?;
    let at = TerminalRef::new(part, name);
    sheet.role(&at).map(|_| at)
}

/// The point of a kept reading; `None` when the sheet has it no more.
#[must_use]
pub fn point_of(sheet: &Sheet, reading: &Reading) -> Option<Point> {
    match reading.measured {
        Measured::Amps => sheet.run_by_tag(&reading.at).map(|(run, _)| Point::Amps(run)),
        measured => {
            let (red, black) = (terminal(sheet, &reading.at)?, terminal(sheet, &reading.against)?);
            Some(match measured {
                Measured::Volts => Point::Volts(red, black),
                Measured::VoltsAc => Point::Tone(red, black),
                _ => Point::Ohms(red, black),
            })
        }
    }
}

/// By how much a reading may lie beside what was expected. The drawing knows typical contacts, not these ones, and a
/// common hand meter errs by some 0.5 % and a digit: so a fiftieth of a voltage, but 0.1 V at least; an eighth of a
/// current, resistance or test tone, but 20 mA, 0.3 Ω and 0.2 V at least. Our own judgement; half and double were weighed.
#[must_use]
pub fn tolerance(measured: Measured, expected: f64) -> f64 {
    let size = expected.abs();
    match measured {
        Measured::Volts => (size / 50.0).max(0.1),
        Measured::VoltsAc => (size / 8.0).max(0.2),
        Measured::Amps => (size / 8.0).max(0.02),
        Measured::Ohms => (size / 8.0).max(0.3),
    }
}

/// How a kept reading stands to what was expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Within the tolerance.
    Agrees,
    /// Beyond it.
    Differs,
    /// Nothing to compare it with.
    NotCompared,
}

impl Verdict {
    /// The words of a list.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Agrees => say!("paper-agrees"),
            Self::Differs => say!("paper-differs"),
            Self::NotCompared => say!("paper-not-compared"),
        }
    }
}

/// Holds a reading against what was expected.
#[must_use]
pub fn verdict(reading: &Reading, expected: Option<Expected>) -> Verdict {
    match (expected, reading.number()) {
        (Some(Expected::Number(expected)), Some(read)) => {
            let within = (read - expected).abs() <= tolerance(reading.measured, expected) + 1e-9;
            if within { Verdict::Agrees } else { Verdict::Differs }
        }
        // A meter that shows nothing where nothing was expected.
        (Some(Expected::Nothing), None) => Verdict::Agrees,
        (Some(_), _) => Verdict::Differs,
        (None, _) => Verdict::NotCompared,
    }
}

/// Battery negative, against which the rest is measured: the first battery of the sheet.
fn black(sheet: &Sheet) -> Option<TerminalRef> {
    let first = sheet
        .parts
        .iter()
        .find(|(_, part)| matches!(part.is, PartKind::Battery(_)));
    first.map(|(id, _)| TerminalRef::new(*id, "-"))
}

/// The test points of a sheet: poles of the sources, both sides of fuses, inputs of blocks, feed and return of whatever
/// draws current, the current in each run at a battery's live pole, and at each channel the ohms of the speakers on it and the volts of a
/// test tone.
#[must_use]
pub fn points(sheet: &Sheet, study: &Study) -> Vec<Point> {
    let Some(black) = black(sheet) else {
        return Vec::new();
    };
    let mut volts = Vec::new();
    let mut add = |part: PartId, name: &str| {
        let red = TerminalRef::new(part, name);
        if red != black {
            volts.push(Point::Volts(red, black.clone()));
        }
    };
    for (id, part) in &sheet.parts {
        match &part.is {
            PartKind::Battery(_) | PartKind::Alternator(_) | PartKind::Converter(_) => {
                for terminal in part.terminals() {
                    if terminal.role == Role::SupplyPlus {
                        add(*id, terminal.name.as_str());
                    }
                }
            }
            PartKind::Fuse(_) | PartKind::Breaker(_) => {
                add(*id, "in");
                add(*id, "out");
            }
            PartKind::Block(_) => add(*id, "in"),
            PartKind::Vehicle(_) | PartKind::Ground(_) => {}
            _ if study.circuits.contains_key(id) => {
                for terminal in part.terminals() {
                    let wanted = matches!(
                        terminal.role,
                        Role::SupplyPlus | Role::SupplyMinus | Role::TurnOnIn
                    );
                    if wanted {
                        add(*id, terminal.name.as_str());
                    }
                }
            }
            _ => {}
        }
    }
    let at_battery = |id: &RunId| {
        let run = sheet.runs.get(id)?;
        let on = run.ends().into_iter().any(|end| {
            end.terminal().is_some_and(|at| {
                at.terminal.as_str() == "+"
                    && matches!(
                        sheet.parts.get(&at.part).map(|part| &part.is),
                        Some(PartKind::Battery(_))
                    )
            })
        });
        on.then_some(Point::Amps(*id))
    };
    let amps = sheet.runs.keys().filter_map(at_battery);
    let outputs: Vec<(bool, TerminalRef, TerminalRef)> = study
        .channels
        .iter()
        .filter_map(|load| {
            let leg = |channel: u8, positive: bool| {
                let part = sheet.parts.get(&load.part)?;
                let role = Role::SpeakerOut { channel, positive };
                let terminal = part.terminals().into_iter().find(|it| it.role == role)?;
                Some(TerminalRef {
                    part: load.part,
                    terminal: terminal.name,
                })
            };
            // Bridged as makers do it: positive of the first channel, negative of the second.
            let second = load.bridged_with.unwrap_or(load.channel);
            let has_ohms = load.dc_resistance.is_some();
            Some((has_ohms, leg(load.channel, true)?, leg(second, false)?))
        })
        .collect();
    let ohms = outputs.iter().filter(|it| it.0).cloned();
    let ohms = ohms.map(|(_, red, black)| Point::Ohms(red, black));
    let tones = outputs
        .iter()
        .cloned()
        .map(|(_, red, black)| Point::Tone(red, black));
    volts.into_iter().chain(amps).chain(ohms).chain(tones).collect()
}

/// The states that the sheet has columns for.
const STATES: [VehicleState; 4] = [
    VehicleState::Parked,
    VehicleState::EngineOff,
    VehicleState::Idle,
    VehicleState::Cruise,
];

fn places(work: &Work<'_>, point: &Point) -> (Measured, String, String) {
    match point {
        Point::Volts(red, black) => (
            Measured::Volts,
            work.sheet.written(red),
            work.sheet.written(black),
        ),
        Point::Tone(red, black) => (
            Measured::VoltsAc,
            work.sheet.written(red),
            work.sheet.written(black),
        ),
        Point::Ohms(red, black) => (Measured::Ohms, work.sheet.written(red), work.sheet.written(black)),
        Point::Amps(run) => (Measured::Amps, work.run_tag(*run).to_owned(), String::new()),
    }
}

fn unit(measured: Measured) -> &'static str {
    match measured {
        Measured::Volts => "V",
        Measured::VoltsAc => "V AC",
        Measured::Amps => "A",
        Measured::Ohms => "Ω",
    }
}

fn shown(expected: Option<Expected>) -> Cell {
    match expected {
        Some(Expected::Number(number)) => Cell::Number(number),
        Some(Expected::Nothing) => Cell::Said(say!("paper-shows-nothing")),
        None => Cell::Empty,
    }
}

/// What is to be measured: a row for every test point, a column for every state, and room for what is read.
#[must_use]
pub fn meter_sheet(work: &Work<'_>, studies: &mut Studies<'_>) -> Table {
    let mut table = Table::new(
        "meter",
        &[
            Column::words("unit"),
            Column::words("red"),
            Column::words("black"),
            Column::number("parked", Unit::Bare, 2),
            Column::number("engine-off", Unit::Bare, 2),
            Column::number("idle", Unit::Bare, 2),
            Column::number("cruise", Unit::Bare, 2),
            Column::words("read"),
        ],
    );
    let duty = work.job.settings.conditions.duty;
    let state = work.job.settings.conditions.state;
    for point in points(&work.sheet, studies.at(state, duty)) {
        let (measured, red, black) = places(work, &point);
        let mut row = vec![Cell::text(unit(measured)), Cell::text(red), Cell::text(black)];
        for (at, state) in STATES.into_iter().enumerate() {
            // The supply is isolated: ohms are the same in every state, and stand once.
            row.push(if measured == Measured::Ohms && at > 0 {
                Cell::Empty
            } else {
                shown(studies.expected(&point, state, duty))
            });
        }
        row.push(Cell::Empty);
        table.rows.push(row);
    }
    if !table.rows.is_empty() {
        table.notes.push(say!("paper-meter-duty", duty = duty.said()));
        table.notes.push(say!("paper-meter-ohms"));
        table.notes.push(say!("paper-meter-tone"));
        table.notes.extend(come_and_go(work));
    }
    table
}

/// What has to be read in a state that comes and goes: the ends of each run that was found to lose contact in it.
fn come_and_go<'w>(work: &'w Work<'_>) -> impl Iterator<Item = Saying> + 'w {
    work.sheet.runs.values().filter_map(|run| {
        let moved = run.laying.opens_when.value()?;
        let [from, to] = run.ends().map(|end| match end.terminal() {
            Some(at) => work.sheet.written(at).into(),
            None => Value::from(say!("paper-loose")),
        });
        Some(say!(
            "paper-meter-moved",
            run = &run.tag,
            moved = model::said::choice(moved.title()),
            from = from,
            to = to
        ))
    })
}

/// The readings that were kept, each beside what was to be expected in its state.
#[must_use]
pub fn kept_readings(work: &Work<'_>, studies: &mut Studies<'_>) -> Table {
    let mut table = Table::new(
        "readings",
        &[
            Column::words("unit"),
            Column::words("red"),
            Column::words("black"),
            Column::words("state"),
            Column::words("with"),
            Column::number("expected", Unit::Bare, 2),
            Column::number("tolerance", Unit::Bare, 2),
            Column::number("read", Unit::Bare, 2),
            Column::words("verdict"),
            Column::words("proves"),
            Column::words("remark"),
        ],
    );
    for reading in &work.sheet.readings {
        // With the fuses out it is the shortest proof that says what is to be expected.
        let point = point_of(&work.sheet, reading).filter(|_| !reading.fuses_out);
        let expected = point.and_then(|point| studies.expected(&point, reading.state, reading.duty));
        let within = match expected {
            Some(Expected::Number(number)) => Cell::Number(tolerance(reading.measured, number)),
            _ => Cell::Empty,
        };
        table.rows.push(vec![
            Cell::text(unit(reading.measured)),
            Cell::text(&reading.at),
            Cell::text(&reading.against),
            Cell::Said(say!(
                "paper-state-duty",
                state = reading.state.said(),
                duty = reading.duty.said()
            )),
            reading.moved.value().map_or(Cell::Empty, |moved: Moved| {
                Cell::Said(model::said::choice(moved.title()))
            }),
            shown(expected),
            within,
            match reading.number() {
                Some(number) => Cell::Number(number),
                None => Cell::Said(say!("paper-shows-nothing")),
            },
            Cell::Said(verdict(reading, expected).said()),
            Cell::tags(reading.proves.0.iter().map(String::as_str)),
            Cell::text(&reading.remark),
        ]);
    }
    if !table.rows.is_empty() {
        table.notes.push(say!("paper-readings-tolerance"));
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::Fact;

    /// V = √(P·Z): an amplifier of 50 W at 4 Ω has 14.1 V at its output under a full test tone, and 5 V at an eighth of its power (the
    /// figure that IEC 60065 has for music); parked it is off.
    #[test]
    fn a_test_tone_is_foretold_and_held_against_what_was_kept() {
        let job = testkit::job(
            "battery B1 agm 60Ah
head H1 speaker-outputs=0
amplifier A1 sections=\"2x 50W@4ohm min 2ohm\" inputs=2
speaker LS1 4ohm
speaker LS2 4ohm
fuse F1 maxi 40A
ground E1
vehicle V1
run W1 B1.+ V1.+ 35mm2 0.3m
run W2 V1.- B1.- 35mm2 0.3m
run W3 V1.30 H1.30 2.5mm2 1m
run W4 V1.15 H1.15 1mm2 1m
run W5 H1.31 V1.31 2.5mm2 1m
run W6 B1.+ F1.in 16mm2 0.3m
run W7 F1.out A1.+ 16mm2 4m
run W8 A1.- E1.stud 16mm2 0.5m
run W9 H1.rem A1.rem 0.75mm2 4m
run W10 H1.front-l A1.in1 0.5mm2 4m
run W11 H1.front-r A1.in2 0.5mm2 4m
run W12 A1.out1+ LS1.+ 2.5mm2 4m
run W13 A1.out1- LS1.- 2.5mm2 4m
run W14 A1.out2+ LS2.+ 2.5mm2 4m
run W15 A1.out2- LS2.- 2.5mm2 4m
reading volts-ac at=A1.out1+ against=A1.out1- 13.9V state=cruise duty=tone",
        );
        let sheet = job.sheets.values().next().expect("a sheet");
        let reading = &sheet.readings[0];
        assert_eq!(
            (reading.measured, reading.number()),
            (Measured::VoltsAc, Some(13.9))
        );
        // Both forms hold it.
        let text = model::text::print(&job);
        assert_eq!(model::text::parse(&text).expect("reads back"), job, "{text}");
        let file = model::file::write(&job);
        assert_eq!(model::file::read(file.as_bytes()).expect("reads back"), job);
        let point = point_of(sheet, reading).expect("a point");
        let mut studies = Studies::of(sheet, &job.settings);
        let mut volts = |state, duty| match studies.expected(&point, state, duty) {
            Some(Expected::Number(volts)) => volts,
            other => panic!("{other:?}"),
        };
        let full = volts(VehicleState::Cruise, Duty::Tone);
        // Its output has some hundredths of an ohm.
        assert!((full - 200.0_f64.sqrt()).abs() < 0.15, "{full}");
        let eighth = volts(VehicleState::Cruise, Duty::Music);
        assert!((eighth - 5.0).abs() < 0.06, "{eighth}");
        assert!(volts(VehicleState::Parked, Duty::Tone) < 0.01);
        let expected = Some(Expected::Number(full));
        assert_eq!(verdict(reading, expected), Verdict::Agrees);
        let weak = reading.clone().with_number(10.0);
        assert_eq!(verdict(&weak, expected), Verdict::Differs);
        assert!(points(sheet, &circuit::study(sheet, &job.settings)).contains(&point));
    }

    #[test]
    fn a_reading_agrees_up_to_its_tolerance_and_not_beyond() {
        let read = |volts: f64| Reading {
            volts: Fact::Given(Volts(volts)),
            ..Reading::default()
        };
        let expected = Some(Expected::Number(13.8));
        // A fiftieth of 13.8 V is 0.276 V.
        assert_eq!(verdict(&read(14.07), expected), Verdict::Agrees);
        assert_eq!(verdict(&read(14.08), expected), Verdict::Differs);
        assert_eq!(verdict(&read(13.53), expected), Verdict::Agrees);
        assert_eq!(verdict(&read(13.52), expected), Verdict::Differs);
        assert_eq!(verdict(&Reading::default(), expected), Verdict::Differs);
        assert_eq!(
            verdict(&Reading::default(), Some(Expected::Nothing)),
            Verdict::Agrees
        );
        assert_eq!(verdict(&read(1.0), None), Verdict::NotCompared);
    }
}
