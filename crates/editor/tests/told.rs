//! What is told of a part in numbers and words, and what is kept of the meter.

mod hand;

use editor::{Action, Key};
use hand::Hand;

/// An amplifier at the end of a feed of this wire, too thin and too long for what it asks.
fn starved(duty: &str, wire: &str) -> String {
    format!(
        r#"
job "Starved"
conditions state=engine-off duty={duty}
sheet plan
battery B1 agm 70Ah @0,0
amplifier A1 sections="1x 500W@2ohm min 2ohm" cut-off=11V @700,0
speaker LS1 2ohm @1000,0
run W1 B1.+ A1.+ {wire} RD
run W2 A1.- B1.- {wire} BK
run W3 A1.out1+ LS1.+ 2.5mm2 1m GY
run W4 A1.out1- LS1.- 2.5mm2 1m GYBK
run W5 B1.+ A1.rem 1mm2 4m BU
"#
    )
}

/// A long thin feed: what is left at the amplifier is below what it works from, and that is what is told of it and of
/// its speaker, not noughts.
#[test]
fn an_amplifier_below_its_cut_off_is_told_as_off() {
    let mut hand = Hand::new(&starved("tone", "2.5mm2 12m"));
    hand.editor.analyse();
    let part = |tag: &str| hand.editor.sheet().part_by_tag(tag).unwrap().0;
    let lines = |tag: &str| hand.editor.part_numbers(part(tag));
    let amplifier = lines("A1");
    let said = &amplifier[0].1;
    assert!(said.starts_with("off: "), "{amplifier:?}");
    assert!(said.contains("V is below its cut-off of 11.0 V"), "{amplifier:?}");
    assert!(
        !amplifier.iter().any(|(name, _)| *name == "note"),
        "told once: {amplifier:?}"
    );
    let speaker = lines("LS1");
    assert!(
        speaker
            .iter()
            .any(|(name, said)| *name == "gets" && said.starts_with("nothing: A1 is off")),
        "{speaker:?}"
    );
}

#[test]
fn what_the_meter_shows_is_kept_as_a_line_and_undone() {
    let mut hand = Hand::new(
        r#"
job "Meter"
conditions state=engine-off
sheet plan
battery B1 @0,0
load L1 law=resistance resistance=2ohm @600,0
run W1 B1.+ L1.+ 4mm2 1m RD
run W2 L1.- B1.- 4mm2 1m BK
"#,
    );
    hand.editor.analyse();
    let before = hand.job();
    hand.key(Key::Char('s'));
    assert_eq!(hand.job(), before, "no meter, no reading");
    hand.editor.perform(Action::Meter);
    hand.key(Key::Char('s'));
    assert_eq!(hand.job(), before, "no lead, no reading");
    hand.click(hand.terminal("L1", "+"));
    let shown = hand
        .editor
        .reading()
        .map(|reading| reading.shown)
        .unwrap_or_default();
    hand.key(Key::Char('s'));
    hand.editor.perform(Action::MeterAmps);
    hand.click(hand.run("W1"));
    hand.key(Key::Char('s'));
    assert_eq!(hand.address(), "meter/amps", "the meter stays in hand");
    let lines: Vec<String> = hand
        .editor
        .sheet()
        .readings
        .iter()
        .map(|reading| editor::meter::line_of(reading, hand.editor.words()))
        .collect();
    assert_eq!(lines[0], format!("{shown} at L1.+ against B1.-"));
    assert!(lines[1].ends_with(" A in W1"), "{lines:?}");
    let kept = &hand.editor.sheet().readings[0];
    assert_eq!(kept.state, model::job::VehicleState::EngineOff);
    // A meter's two places behind the point.
    let volts = kept.number().unwrap();
    assert_eq!(format!("{volts:.2} V"), shown);
    assert!(((volts * 100.0) - (volts * 100.0).round()).abs() < 1e-9);
    hand.editor.perform(Action::Undo);
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

/// One that gives in at bursts alone plays on between them: its numbers stand, and so does the why.
#[test]
fn an_amplifier_that_goes_off_when_it_is_loud_is_told_so() {
    let mut hand = Hand::new(&starved("speech", "4mm2 10m"));
    hand.editor.analyse();
    let (id, _) = hand.editor.sheet().part_by_tag("A1").expect("A1");
    let lines = hand.editor.part_numbers(id);
    let (_, is) = lines
        .iter()
        .find(|(name, _)| *name == "is")
        .expect("whether it is on");
    assert!(is.starts_with("off when it is loud: "), "{lines:?}");
    assert!(is.contains("below its cut-off of 11.0 V"), "{lines:?}");
    assert!(lines.iter().any(|(name, _)| *name == "power"), "{lines:?}");
}

/// The tone that the engine foretells, and a line of the meter sheet that keeps it.
#[test]
fn the_meter_reads_a_test_tone_and_keeps_it() {
    let text = "sheet plan\nbattery B1 agm 60Ah\n\
        head H1 speaker-outputs=0\n\
        amplifier A1 sections=\"2x 50W@4ohm min 2ohm\" inputs=2\n\
        speaker LS1 4ohm\n\
        speaker LS2 4ohm\n\
        fuse F1 maxi 40A\n\
        ground E1\n\
        vehicle V1\n\
        run W1 B1.+ V1.+ 35mm2 0.3m\n\
        run W2 V1.- B1.- 35mm2 0.3m\n\
        run W3 V1.30 H1.30 2.5mm2 1m\n\
        run W4 V1.15 H1.15 1mm2 1m\n\
        run W5 H1.31 V1.31 2.5mm2 1m\n\
        run W6 B1.+ F1.in 16mm2 0.3m\n\
        run W7 F1.out A1.+ 16mm2 4m\n\
        run W8 A1.- E1.stud 16mm2 0.5m\n\
        run W9 H1.rem A1.rem 0.75mm2 4m\n\
        run W10 H1.front-l A1.in1 0.5mm2 4m\n\
        run W11 H1.front-r A1.in2 0.5mm2 4m\n\
        run W12 A1.out1+ LS1.+ 2.5mm2 4m\n\
        run W13 A1.out1- LS1.- 2.5mm2 4m\n\
        run W14 A1.out2+ LS2.+ 2.5mm2 4m\n\
        run W15 A1.out2- LS2.- 2.5mm2 4m";
    let mut hand = Hand::new(text);
    let before = hand.job();
    hand.editor.perform(Action::MeterTone);
    assert_eq!(hand.address(), "meter/tone");
    hand.editor.black_next(true);
    hand.click(hand.terminal("A1", "out1-"));
    hand.click(hand.terminal("A1", "out1+"));
    let [red, black] = ["out1+", "out1-"].map(|name| hand.named("A1", name));
    let probe = circuit::Probe::Tone(red, black);
    let meter = circuit::Meter::new(hand.editor.sheet(), &before.settings, None).expect("a meter");
    let volts = meter
        .read(&probe)
        .and_then(|shown| shown.number(&probe))
        .expect("a number");
    // Loud music, the duty of a new job, is a third of 50 W at 4 ohm: the root of 16.7 W by 4 ohm.
    assert!((volts - (200.0_f64 / 3.0).sqrt()).abs() < 0.1, "{volts}");
    let shown = hand
        .editor
        .reading()
        .map(|reading| reading.shown)
        .unwrap_or_default();
    assert_eq!(shown, format!("{volts:.2} V AC"));
    hand.key(Key::Char('s'));
    let kept = hand.editor.sheet().readings[0].clone();
    assert_eq!(kept.measured, model::readings::Measured::VoltsAc);
    let line = editor::meter::line_of(&kept, hand.editor.words());
    assert_eq!(line, format!("{shown} at A1.out1+ against A1.out1-"));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
    // Several at once are one step.
    let _ = hand.editor.keep_readings(vec![kept.clone(), kept]);
    assert_eq!(hand.editor.sheet().readings.len(), 2);
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}
