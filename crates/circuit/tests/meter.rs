//! The meter: by hand, and few changes of a factored network against a solution from the start.

use approx::assert_relative_eq;
use circuit::{Bench, METER_INPUT, Meter, Probe, Shown, Tones};
use model::breaks::Break;
use model::job::{Duty, VehicleState};
use model::quantity::{Amps, Ohms, Share, Volts};
use model::{PartKind, Settings, Sheet, TerminalRef};

fn at(sheet: &Sheet, written: &str) -> TerminalRef {
    let (tag, name) = written.split_once('.').expect("a tag and a terminal");
    TerminalRef::new(sheet.part_by_tag(tag).expect("a part").0, name)
}

fn in_state(state: VehicleState, duty: Duty) -> Settings {
    let mut settings = Settings::default();
    settings.conditions.state = state;
    settings.conditions.duty = duty;
    settings
}

fn meter(sheet: &Sheet, state: VehicleState) -> Meter {
    Meter::new(sheet, &in_state(state, Duty::Idle), None).expect("a meter")
}

fn volts(shown: Option<Shown>) -> f64 {
    match shown {
        Some(Shown::Volts(Volts(volts))) => volts,
        other => panic!("no volts: {other:?}"),
    }
}

/// A divider of a load of 2 Ω behind leads that were measured: 0.1 Ω each at 12.6 V or so. By hand: with the battery's
/// voltage E at its poles the load has E · 2/2.2.
const DIVIDER: &str = "battery B1 agm 60Ah charge=100% resistance=0.01ohm\nload L1 resistance resistance=2ohm when=always\n\
    run W1 B1.+ L1.+ 2.5mm2 1m stated-resistance=0.1ohm/m end-ohms=0ohm/0ohm\n\
    run W2 L1.- B1.- 2.5mm2 1m stated-resistance=0.1ohm/m end-ohms=0ohm/0ohm\n";

#[test]
fn a_divider_reads_as_by_hand() {
    let sheet = testkit::sheet(DIVIDER);
    let meter = meter(&sheet, VehicleState::EngineOff);
    let [plus, minus, feed, back] = ["B1.+", "B1.-", "L1.+", "L1.-"].map(|point| at(&sheet, point));
    let source = volts(meter.read(&Probe::Volts(plus.clone(), minus.clone())));
    let load = volts(meter.read(&Probe::Volts(feed.clone(), back.clone())));
    // Wires are warmer than 20 °C and have a few hundredths more.
    assert_relative_eq!(load, source * 2.0 / 2.2, max_relative = 0.01);
    // Drop along one lead, and the clamp round it: R · I.
    let drop = volts(meter.read(&Probe::Volts(plus.clone(), feed.clone())));
    let run = sheet.run_by_tag("W1").expect("the run").0;
    let Some(Shown::Amps(Amps(amps))) = meter.read(&Probe::Amps(run)) else {
        panic!("no amps");
    };
    assert_relative_eq!(amps, load / 2.0, max_relative = 1e-6);
    assert_relative_eq!(drop, 0.1 * amps, max_relative = 0.1);
    assert_relative_eq!(load, source - 2.0 * drop, max_relative = 1e-6);
    // Red and black exchanged, and both on one point.
    assert_relative_eq!(volts(meter.read(&Probe::Volts(back, feed.clone()))), -load);
    assert_eq!(volts(meter.read(&Probe::Volts(feed.clone(), feed.clone()))), 0.0);
    // Ohms with the battery off: both leads and the load in series.
    let Some(Shown::Ohms(Ohms(ohms))) = meter.read(&Probe::Ohms(plus, minus)) else {
        panic!("no ohms");
    };
    assert_relative_eq!(ohms, 2.2, max_relative = 1e-9);
}

/// Behind a diode that blocks only its leak of 1 µS feeds a point: with the 10 MΩ of the meter it reads 10/11 of what it has
/// open, and the rest is lost in the leak of 1 MΩ. A second battery that is flat makes the diode block.
#[test]
fn the_meter_itself_loads_what_hardly_anything_feeds() {
    let sheet = testkit::sheet(
        "battery B1 agm 60Ah charge=100% resistance=0.01ohm\nisolator T1 diode\nsplice X1\n\
         run W1 B1.+ T1.aux 6mm2 1m\nrun W2 T1.main X1.1 6mm2 1m\n",
    );
    let meter = meter(&sheet, VehicleState::EngineOff);
    let whole = volts(meter.read(&Probe::Volts(at(&sheet, "B1.+"), at(&sheet, "B1.-"))));
    let leaked = volts(meter.read(&Probe::Volts(at(&sheet, "X1.1"), at(&sheet, "B1.-"))));
    assert_relative_eq!(
        leaked,
        whole * METER_INPUT / (METER_INPUT + 1e6),
        max_relative = 1e-3
    );
}

#[test]
fn what_hangs_in_the_air_reads_as_that() {
    let sheet = testkit::sheet(
        "battery B1 agm 60Ah\nsplice X1\nsplice X2\nrun W1 X1.1 X2.1 2.5mm2 1m\nrun W2 B1.+ X1.2 2.5mm2 1m condition=cut\n",
    );
    let meter = meter(&sheet, VehicleState::Parked);
    let probe = Probe::Volts(at(&sheet, "X2.1"), at(&sheet, "B1.-"));
    assert_eq!(meter.read(&probe), Some(Shown::Open));
    assert_eq!(Shown::Open.number(&probe), Some(0.0));
    let probe = Probe::Ohms(at(&sheet, "X2.1"), at(&sheet, "B1.+"));
    assert_eq!(meter.read(&probe), Some(Shown::Open));
    assert_eq!(Shown::Open.number(&probe), None);
}

const SOUND: &str = "battery B1 agm 60Ah\nhead H1 speaker-outputs=0\namplifier A1 sections=\"2x 50W@4ohm min 2ohm\" inputs=2\n\
    speaker LS1 4ohm\nspeaker LS2 4ohm\nfuse F1 maxi 40A\nground E1\nground E2\nvehicle V1\n\
    run W1 B1.+ V1.+ 35mm2 0.3m\nrun W2 V1.- B1.- 35mm2 0.3m\n\
    run W3 V1.30 H1.30 2.5mm2 1m\nrun W4 V1.15 H1.15 1mm2 1m\nrun W5 H1.31 V1.31 2.5mm2 1m\n\
    run W6 B1.+ F1.in 16mm2 0.3m\nrun W7 F1.out A1.+ 16mm2 4m\nrun W8 A1.- E1.stud 16mm2 0.5m\n\
    run W9 H1.rem A1.rem 0.75mm2 4m\nrun W10 H1.front-l A1.in1 0.5mm2 4m\nrun W11 H1.front-r A1.in2 0.5mm2 4m\n\
    run W12 A1.out1+ LS1.+ 2.5mm2 4m\nrun W13 A1.out1- LS1.- 2.5mm2 4m\n\
    run W14 A1.out2+ LS2.+ 2.5mm2 4m\nrun W15 A1.out2- LS2.- 2.5mm2 4m\n";

/// A tone at full power: V = √(P·Z) = √(50 · 4) = 14.14 V at the output, less what the leads take at the speaker; the channel is
/// silent without its signal, the amplifier without its turn-on lead, and off when a leg touches the body.
#[test]
fn a_test_tone_reads_as_power_and_impedance_say() {
    let sheet = testkit::sheet(SOUND);
    let settings = in_state(VehicleState::Cruise, Duty::Tone);
    let mut bench = Bench::new(&sheet, &settings).expect("a bench");
    let state = bench.ready(VehicleState::Cruise, Duty::Tone).expect("a state");
    let [a, b, c, d] = ["A1.out1+", "A1.out1-", "LS1.+", "LS1.-"].map(|point| at(&sheet, point));
    let output = Probe::Tone(a, b);
    let speaker = Probe::Tone(c, d);
    let read = |broken: &[&str], probe: &Probe| {
        let breaks: Vec<Break> = broken
            .iter()
            .map(|text| Break::read(text, &sheet).expect("a break"))
            .collect();
        let fault = bench.fault(&breaks).expect("a fault");
        let foreseen = bench.foresee(&fault, state).expect("foreseen");
        bench
            .read(state, &foreseen, &bench.place(probe).expect("a place"))
            .and_then(|shown| shown.number(probe))
            .expect("a number")
    };
    // The output itself has 0.02 Ω on the 4 Ω.
    assert_relative_eq!(read(&[], &output), libm::sqrt(200.0), max_relative = 0.01);
    let whole = read(&[], &speaker);
    assert!(
        whole < read(&[], &output) && whole > 0.95 * libm::sqrt(200.0),
        "{whole}"
    );
    // Four ohms more in a lead of four: half is left.
    assert_relative_eq!(
        read(&["W12 resistive 4 ohm"], &speaker),
        whole / 2.0,
        max_relative = 0.02
    );
    for silent in [
        "W10 cut",
        "W9 cut",
        "W8 cut",
        "F1 open",
        "W12 grounded at 50 % through 5 mohm",
    ] {
        assert!(read(&[silent], &speaker) < 0.01, "{silent}");
    }
    // The other channel's lead says nothing here; a cut lead leaves the output its tone and the speaker none.
    assert_relative_eq!(read(&["W11 cut"], &speaker), whole, max_relative = 1e-6);
    assert!(read(&["W13 cut"], &output) > 14.0);
    assert!(read(&["W13 cut"], &speaker) < 0.01);
    // The same by the meter on a sheet that has the fault in it.
    let mut job = model::Job::default();
    job.sheets.insert(model::SheetKind::Plan, sheet.clone());
    let tones = Tones::of(&sheet, &settings);
    let broken = Break::read("W12 cut", &sheet).expect("a break");
    let edit = broken.edit(&job, model::SheetKind::Plan).expect("an edit");
    job.apply(edit);
    let meter = Meter::new(&job.sheets[&model::SheetKind::Plan], &settings, Some(&tones)).expect("a meter");
    assert!(volts(meter.read(&output)) > 14.0);
    assert_eq!(
        meter.read(&speaker).and_then(|shown| shown.number(&speaker)),
        Some(0.0)
    );
}

/// What an amplifier draws for its music, by hand. An output holds its volts, so that it gives V²/Z into what is left of its load, and what
/// is drawn for it goes with that (the efficiency of an amplifier at one setting of its volume); what it idles at, 1.2 A here, stays. So
/// many of the 12 V · A that music draws with nothing wrong are left, at whatever voltage they are drawn.
#[test]
fn an_amplifier_draws_for_what_is_left_of_its_load() {
    let stereo = SOUND
        .replace("50W@4ohm", "50W@4ohm 100W@2ohm")
        .replace("inputs=2", "inputs=2 class=d idle-current=1.2A");
    let parallel = format!(
        "{stereo}speaker LS3 4ohm\nrun W16 LS1.+ LS3.+ 2.5mm2 0.1m\nrun W17 LS1.- LS3.- 2.5mm2 0.1m\n"
    );
    let bridged = stereo
        .replace("100W@2ohm min 2ohm", "100W@2ohm bridged 200W@4ohm min 2ohm")
        .replace("speaker LS2 4ohm\n", "")
        .replace("A1.out1- LS1.-", "A1.out2- LS1.-")
        .lines()
        .filter(|line| !line.starts_with("run W14") && !line.starts_with("run W15"))
        .fold(String::new(), |all, line| all + line + "\n");
    let coils = stereo
        .replace("speaker LS1 4ohm", "speaker LS1 2ohm coils=2")
        .replace("LS1.+ 2.5mm2 4m", "LS1.a+ 2.5mm2 4m")
        .replace("LS1.- 2.5mm2 4m", "LS1.b- 2.5mm2 4m")
        + "run W16 LS1.a- LS1.b+ 2.5mm2 0.1m\n";
    let passive = stereo
        .replace("A1.out1+ LS1.+ 2.5mm2 4m", "A1.out1+ X1.in+ 2.5mm2 4m")
        .replace("A1.out1- LS1.- 2.5mm2 4m", "A1.out1- X1.in- 2.5mm2 4m")
        + "crossover X1\nspeaker LS4 4ohm\nrun W16 X1.low+ LS1.+ 2.5mm2 1m\nrun W17 X1.low- LS1.- 2.5mm2 1m\n\
           run W18 X1.high+ LS4.+ 2.5mm2 1m\nrun W19 X1.high- LS4.- 2.5mm2 1m\n";
    for (system, sheet, cases) in [
        (
            "stereo",
            &stereo,
            &[
                ("W12 cut", 0.5),
                ("W13 cut", 0.5),
                ("LS1 dead", 0.5),
                // Twice the ohms, half the power of one channel.
                ("W12 resistive 4.1 ohm", 0.75),
                // No signal, no music.
                ("W10 cut", 0.5),
                // It protects itself.
                ("LS1.+ joined LS1.- through 5 mohm", 0.0),
                ("W12 grounded at 50 % through 5 mohm", 0.0),
                // Polarity is heard, not measured.
                ("LS1 reversed", 1.0),
            ][..],
        ),
        // 2 Ω and 4 Ω: two parts of three on the first channel, one on each of three speakers.
        (
            "parallel",
            &parallel,
            &[
                ("W16 cut", 2.0 / 3.0),
                ("W12 cut", 1.0 / 3.0),
                ("W14 cut", 2.0 / 3.0),
            ][..],
        ),
        (
            "bridged",
            &bridged,
            &[("W12 cut", 0.0), ("W13 cut", 0.0), ("W12 resistive 4.1 ohm", 0.5)][..],
        ),
        // 2 Ω and 2 Ω in series, beside 4 Ω. One coil shorted: 2 Ω, which it may drive.
        (
            "coils",
            &coils,
            &[
                ("W16 cut", 0.5),
                ("LS1.a reversed", 1.0),
                ("LS1.a+ joined LS1.a- through 5 mohm", 1.5),
            ][..],
        ),
        (
            "crossover",
            &passive,
            &[
                ("X1 dead", 0.5),
                ("W12 cut", 0.5),
                ("W16 cut", 0.75),
                ("W18 cut", 0.75),
            ][..],
        ),
    ] {
        let sheet = testkit::sheet(sheet);
        let settings = in_state(VehicleState::EngineOff, Duty::Loud);
        let mut bench = Bench::new(&sheet, &settings).expect("a bench");
        let state = bench.ready(VehicleState::EngineOff, Duty::Loud).expect("a state");
        let tones = Tones::of(&sheet, &settings);
        let clamp = Probe::Amps(sheet.run_by_tag("W7").expect("the feed").0);
        let volts_at = Probe::Volts(at(&sheet, "A1.+"), at(&sheet, "A1.-"));
        // Of three ways to tell it, the watts for music.
        let music = |amps: f64, volts: f64| (amps - 1.2) * volts;
        let of = |foreseen: &circuit::Foreseen| {
            let [amps, volts] = [&clamp, &volts_at].map(|probe| {
                let shown = bench.read(state, foreseen, &bench.place(probe).expect("a place"));
                shown.and_then(|shown| shown.number(probe)).expect("a number")
            });
            music(amps, volts)
        };
        let whole = of(bench.normal(state).expect("a state"));
        assert!(whole > 5.0, "{system}: {whole} W");
        for (broken, left) in cases {
            let broken = Break::read(broken, &sheet).expect(broken);
            let fault = bench.fault(std::slice::from_ref(&broken)).expect("a fault");
            let few = of(&bench.foresee(&fault, state).expect("foreseen"));
            let anew = of(&bench.solve(&fault, state).expect("solved"));
            let name = format!("{system}, {}", broken.written(&sheet));
            // Power is followed to 1 % and 20 mA in few changes; leads and outputs have a few per cent of what a speaker has.
            assert!(
                (few - anew).abs() < 0.02 * whole + 0.3,
                "{name}: {few} W and {anew} W"
            );
            assert!(
                (anew / whole - left).abs() < 0.04,
                "{name}: {anew} W of {whole} W"
            );
            if matches!(broken, Break::Dead { .. }) {
                // On paper its terminals are gone as well.
                continue;
            }
            let thrown = broken.thrown(&sheet).expect("thrown");
            let meter = Meter::new(&thrown, &settings, Some(&tones)).expect("a meter");
            let [amps, volts] = [&clamp, &volts_at].map(|probe| {
                let shown = meter.read(probe);
                shown.and_then(|shown| shown.number(probe)).expect("a number")
            });
            assert!(
                (music(amps, volts) - anew).abs() < 0.01 * whole + 0.05,
                "{name}: {} W by the meter, {anew} W",
                music(amps, volts)
            );
        }
    }
}

/// Every single fault of the kinds that a network can have.
fn breaks(sheet: &Sheet) -> Vec<Break> {
    let mut all = Vec::new();
    for &run in sheet.runs.keys() {
        all.push(Break::Cut { run, at: Share(0.5) });
        for more in [0.05, 0.5, 5.0] {
            let more = Ohms(more);
            all.push(Break::Resistive { run, more });
        }
        all.push(Break::Grounded {
            run,
            at: Share(0.5),
            through: Ohms(0.005),
        });
    }
    for (&part, it) in &sheet.parts {
        all.push(Break::Dead { part });
        all.push(Break::Open { part, output: None });
        if matches!(it.is, PartKind::Ground(_)) {
            let more = Ohms(1.0);
            all.push(Break::Poor { part, more });
        }
    }
    all
}

/// Few changes of the factored network against the engine, at every terminal, for every single fault: within 0.1 V or 2 %. Where a heavy
/// loss in a main feed lets many loads give up one after the other, who goes first decides what is left, and the two may choose otherwise:
/// those are few.
fn compare(sheet: &Sheet, settings: &Settings) -> (usize, usize) {
    let mut bench = Bench::new(sheet, settings).expect("a bench");
    let Some(state) = bench.ready(VehicleState::EngineOff, Duty::Music) else {
        return (0, 0);
    };
    let is_battery = |it: &model::Part| matches!(it.is, PartKind::Battery(_));
    let Some((battery, _)) = sheet.parts.iter().find(|(_, it)| is_battery(it)) else {
        return (0, 0);
    };
    let black = TerminalRef::new(*battery, "-");
    let points: Vec<(Probe, circuit::Placed)> = sheet
        .parts
        .iter()
        .flat_map(|(&part, it)| {
            let terminals = it.terminals().into_iter();
            terminals.map(move |terminal| TerminalRef::new(part, terminal.name.as_str()))
        })
        .map(|red| Probe::Volts(red, black.clone()))
        .filter_map(|probe| Some((probe.clone(), bench.place(&probe)?)))
        .collect();
    let (mut count, mut other) = (0, 0);
    for broken in breaks(sheet) {
        let Some(fault) = bench.fault(std::slice::from_ref(&broken)) else {
            continue;
        };
        let few = bench.foresee(&fault, state).expect("foreseen");
        let Some(anew) = bench.solve(&fault, state) else {
            continue;
        };
        count += 1;
        let differs = points.iter().any(|(probe, placed)| {
            let [few, anew] = [&few, &anew].map(|foreseen| {
                let shown = bench.read(state, foreseen, placed).expect("a reading");
                shown.number(probe).expect("a number")
            });
            (few - anew).abs() > (anew.abs() / 50.0).max(0.1)
        });
        other += usize::from(differs);
    }
    (count, other)
}

#[test]
fn few_changes_tell_what_a_new_solution_tells() {
    let (mut count, mut other) = (0, 0);
    for seed in 0..4 {
        let sheet = testkit::random::random_system(seed, 40);
        let found = compare(&sheet, &Settings::default());
        count += found.0;
        other += found.1;
    }
    assert!(count > 1000, "{count}");
    assert!(other * 25 < count, "{other} of {count} differ");
    for (name, text) in testkit::sound_systems::sound_systems().iter().step_by(5) {
        let job = testkit::job(text);
        for sheet in job.sheets.values() {
            let (count, other) = compare(sheet, &job.settings);
            assert!(other * 20 <= count, "{name}: {other} of {count} differ");
        }
    }
}
