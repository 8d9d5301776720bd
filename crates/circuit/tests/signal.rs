//! Which output feeds which input, and who turns on what. Rules of the trade: common practice.

use circuit::signal::study_signal;
use circuit::speakers::study_speakers;
use circuit::{ChannelSide, InputFed, Signal, TurnOnFed};
use model::{Settings, Sheet};

fn study(text: &str) -> (Sheet, Signal) {
    let sheet = testkit::sheet(text);
    let settings = Settings::default();
    let speakers = study_speakers(&sheet, &settings);
    let signal = study_signal(&sheet, &settings, &speakers);
    (sheet, signal)
}

fn input<'a>(sheet: &Sheet, signal: &'a Signal, tag: &str, number: u8) -> &'a InputFed {
    let (id, _) = sheet.part_by_tag(tag).expect("the part is there");
    signal
        .inputs
        .iter()
        .find(|it| it.part == id && it.input == number)
        .expect("the input is there")
}

fn turn_on<'a>(sheet: &Sheet, signal: &'a Signal, tag: &str) -> &'a TurnOnFed {
    &signal.turn_on[&sheet.part_by_tag(tag).expect("the part is there").0]
}

fn by(sheet: &Sheet, it: &InputFed) -> Vec<String> {
    it.by
        .iter()
        .map(|(part, terminal)| format!("{}.{terminal}", sheet.parts[part].tag))
        .collect()
}

const PAIR: &str = "amplifier A1 sections=\"2x 60W@4ohm min 2ohm\" input-level=line inputs=2
speaker LS1 4ohm front-left
speaker LS2 4ohm front-right
run S1 A1.out1+ LS1.+ 2.5mm2 1m
run S2 A1.out1- LS1.- 2.5mm2 1m
run S3 A1.out2+ LS2.+ 2.5mm2 1m
run S4 A1.out2- LS2.- 2.5mm2 1m
";

#[test]
fn line_inputs_are_fed_by_their_sides() {
    let (sheet, signal) = study(&format!(
        "head H1\n{PAIR}run W1 H1.front-l A1.in1 0.35mm2 5m\nrun W2 H1.front-r A1.in2 0.35mm2 5m"
    ));
    let left = input(&sheet, &signal, "A1", 1);
    assert_eq!(by(&sheet, left), ["H1.front-l"]);
    assert_eq!(
        (left.side, left.level_fits, left.needed),
        (Some(ChannelSide::Left), Some(true), true)
    );
    assert_eq!(left.drives, [sheet.part_by_tag("LS1").expect("there").0]);
    assert_eq!(left.runs.len(), 1);
    assert_eq!(input(&sheet, &signal, "A1", 2).side, Some(ChannelSide::Right));
}

#[test]
fn missing_doubled_and_crossed_inputs() {
    let (sheet, signal) = study(&format!(
        "head H1\n{PAIR}run W1 H1.front-r A1.in1 0.35mm2 5m\nrun W2 H1.rear-l A1.in1 0.35mm2 5m"
    ));
    let first = input(&sheet, &signal, "A1", 1);
    assert_eq!(by(&sheet, first), ["H1.front-r", "H1.rear-l"]);
    assert_eq!(first.side, None);
    let second = input(&sheet, &signal, "A1", 2);
    assert!(second.by.is_empty() && second.needed && second.level_fits.is_none());
    // Crossed: the side that arrives is not that of the speaker.
    let (sheet, signal) = study(&format!("head H1\n{PAIR}run W1 H1.front-r A1.in1 0.35mm2 5m"));
    assert_eq!(input(&sheet, &signal, "A1", 1).side, Some(ChannelSide::Right));
}

#[test]
fn levels_that_do_not_fit() {
    let (sheet, signal) = study(&format!("head H1\n{PAIR}run W1 H1.fl+ A1.in1 0.35mm2 5m"));
    let it = input(&sheet, &signal, "A1", 1);
    assert_eq!(
        (by(&sheet, it), it.level_fits),
        (vec!["H1.fl+".to_owned()], Some(false))
    );
    let level = PAIR.replace("input-level=line", "input-level=speaker");
    let (sheet, signal) = study(&format!("head H1\n{level}run W1 H1.front-l A1.hi1+ 0.35mm2 5m"));
    assert_eq!(input(&sheet, &signal, "A1", 1).level_fits, Some(false));
    let (sheet, signal) = study(&format!(
        "head H1\n{level}run W1 H1.fl+ A1.hi1+ 0.35mm2 5m\nrun W2 H1.fl- A1.hi1- 0.35mm2 5m"
    ));
    let it = input(&sheet, &signal, "A1", 1);
    assert_eq!(
        (by(&sheet, it), it.level_fits),
        (vec!["H1.fl+".to_owned()], Some(true))
    );
    assert_eq!((it.side, it.runs.len()), (Some(ChannelSide::Left), 2));
    // One leg alone brings nothing.
    let (sheet, signal) = study(&format!("head H1\n{level}run W1 H1.fl+ A1.hi1+ 0.35mm2 5m"));
    assert!(input(&sheet, &signal, "A1", 1).by.is_empty());
}

#[test]
fn speaker_level_goes_through_plugs_and_a_converter() {
    let (sheet, signal) = study(&format!(
        "head H1 line-outputs=0\n{PAIR}line-converter LC1 channels=2
         plug P1 cavities=\"1; 2; 3; 4\"\nadapter PA1 cavities=\"1; 2\"
         run W1 H1.fr+ P1.1b 1mm2 1m\nrun W2 H1.fr- P1.2b 1mm2 1m
         run W3 P1.1a PA1.1a 1mm2 1m\nrun W4 P1.2a PA1.2a 1mm2 1m
         run W5 PA1.1b LC1.hi2+ 1mm2 1m\nrun W6 PA1.2b LC1.hi2- 1mm2 1m
         run W7 LC1.line2 A1.in2 0.35mm2 1m"
    ));
    let converter = input(&sheet, &signal, "LC1", 2);
    assert_eq!(
        (by(&sheet, converter), converter.runs.len()),
        (vec!["H1.fr+".to_owned()], 6)
    );
    assert!(converter.needed);
    assert_eq!(converter.drives, [sheet.part_by_tag("LS2").expect("there").0]);
    let amplifier = input(&sheet, &signal, "A1", 2);
    assert_eq!(
        (amplifier.side, amplifier.level_fits),
        (Some(ChannelSide::Right), Some(true))
    );
    // Its first channel is of no use to anybody.
    assert!(!input(&sheet, &signal, "LC1", 1).needed);
}

#[test]
fn a_processor_hands_sides_on() {
    let (sheet, signal) = study(&format!(
        "head H1\nprocessor N1 inputs=4 outputs=6 input-level=line\n{PAIR}
         run W1 H1.front-l N1.in1 0.35mm2 1m\nrun W2 H1.front-r N1.in2 0.35mm2 1m
         run W3 N1.line3 A1.in1 0.35mm2 1m\nrun W4 N1.line6 A1.in2 0.35mm2 1m"
    ));
    assert_eq!(input(&sheet, &signal, "A1", 1).side, Some(ChannelSide::Left));
    assert_eq!(input(&sheet, &signal, "A1", 2).side, Some(ChannelSide::Right));
    // Inputs 3 and 4 may stay free: it mixes what comes in at 1 and 2.
    assert!(!input(&sheet, &signal, "N1", 3).needed && !input(&sheet, &signal, "N1", 4).needed);
    assert!(input(&sheet, &signal, "N1", 2).needed);
}

#[test]
fn a_bridged_pair_is_driven_by_the_input_of_its_first_channel() {
    let (sheet, signal) = study(
        "head H1 line-outputs=3\namplifier A1 sections=\"2x 60W@4ohm min 2ohm bridged 120W@4ohm min 4ohm\" input-level=line inputs=2
         speaker LS1 4ohm sub bass\nrun S1 A1.out1+ LS1.+ 2.5mm2 1m\nrun S2 A1.out2- LS1.- 2.5mm2 1m
         run W1 H1.sub A1.in1 0.35mm2 5m",
    );
    let first = input(&sheet, &signal, "A1", 1);
    assert!(first.needed && first.side == Some(ChannelSide::Bass) && first.drives.len() == 1);
    let second = input(&sheet, &signal, "A1", 2);
    assert!(second.by.is_empty() && !second.needed, "{second:?}");
}

#[test]
fn turn_on_by_a_lead_a_feed_a_switch_a_relay_or_a_signal() {
    let base = "vehicle V1\nbattery B1\nhead H1\nrun V W1 B1.+ V1.+ 25mm2 1m\n".replace("run V W1", "run W1");
    let amplifier = "amplifier A1 sections=\"2x 60W@4ohm min 2ohm\" turn-on=lead inputs=2\n";
    let on = |text: &str| {
        let (sheet, signal) = study(&format!("{base}{amplifier}{text}"));
        turn_on(&sheet, &signal, "A1").clone()
    };
    let it = on("splice J1\nrun W2 H1.rem J1.1 1mm2 1m\nrun W3 J1.2 A1.rem 1mm2 1m");
    assert!(it.by.len() == 1 && it.runs.len() == 2 && !it.always_live && !it.switched_feed && it.needs_lead);
    let it = on("");
    assert!(it.by.is_empty() && !it.always_live && !it.switched_feed && it.needs_lead);
    // Bridged to its own feed behind a fuse.
    let it =
        on("fuse F1\nrun W2 B1.+ F1.in 16mm2 1m\nrun W3 F1.out A1.+ 16mm2 1m\nrun W4 A1.+ A1.rem 1mm2 0.1m");
    assert!(it.by.is_empty() && it.always_live && !it.switched_feed, "{it:?}");
    let it = on("run W2 V1.30 A1.rem 1mm2 1m");
    assert!(it.always_live);
    let it = on("run W2 V1.15 A1.rem 1mm2 1m");
    assert!(it.switched_feed && !it.always_live);
    let it = on("switch S1\nrun W2 V1.30 S1.in 1mm2 1m\nrun W3 S1.out A1.rem 1mm2 1m");
    assert!(it.switched_feed && !it.always_live);
    // A relay that the head unit pulls in.
    let relay = "relay K1\nground E1\nrun W2 H1.rem K1.86 1mm2 1m\nrun W3 K1.85 E1.stud 1mm2 1m
                 run W4 V1.30 K1.30 1mm2 1m\nrun W5 K1.87 A1.rem 1mm2 1m";
    let it = on(relay);
    assert!(it.by.len() == 1 && !it.always_live && !it.switched_feed, "{it:?}");
    let (sheet, signal) = study(&format!("{base}{amplifier}{relay}"));
    let head = sheet.part_by_tag("H1").expect("there").0;
    let output = signal
        .turn_on_outputs
        .iter()
        .find(|it| it.part == head)
        .expect("there");
    // The coil alone hangs on it: 14.4 V over 85 Ω.
    assert!((output.asked.0 - 14.4 / 85.0).abs() < 1e-9 && output.serves.len() == 1);
    // By signal.
    let (sheet, signal) = study(&format!(
        "head H1\n{}run W1 H1.fl+ A1.hi1+ 1mm2 1m\nrun W2 H1.fl- A1.hi1- 1mm2 1m",
        PAIR.replace("input-level=line", "input-level=speaker turn-on=sensing")
    ));
    let it = turn_on(&sheet, &signal, "A1");
    assert!(it.sensed && !it.needs_lead);
}

#[test]
fn a_turn_on_output_is_asked_for_the_sum() {
    let mut text =
        String::from("head H1 turn-on-capacity=0.3A\nsplice J1 places=8\nrun W0 H1.rem J1.1 1mm2 1m\n");
    for n in 1..=4 {
        text += &format!(
            "amplifier A{n} sections=\"2x 60W@4ohm\" turn-on-current=0.1A\nrun W{n} J1.{} A{n}.rem 1mm2 1m\n",
            n + 1
        );
    }
    let (_, signal) = study(&text);
    let [output] = signal.turn_on_outputs.as_slice() else {
        panic!("one output")
    };
    assert!((output.asked.0 - 0.4).abs() < 1e-12);
    assert_eq!(
        (output.serves.len(), output.capacity.map(|it| it.0)),
        (4, Some(0.3))
    );
}

#[test]
fn a_filter_in_the_head_unit_keeps_bass_from_what_follows() {
    let sheet = testkit::sheet(&format!(
        "head H1 high-pass=90Hz line-outputs=3\n{PAIR}run W1 H1.front-l A1.in1 0.35mm2 5m\nrun W2 H1.sub A1.in2 0.35mm2 5m"
    ));
    let settings = Settings::default();
    let mut speakers = study_speakers(&sheet, &settings);
    let signal = study_signal(&sheet, &settings, &speakers);
    circuit::signal::carry_filters(&sheet, &signal, &mut speakers);
    let from = |tag: &str| {
        speakers.drivers[&sheet.part_by_tag(tag).expect("there").0]
            .high_pass
            .map(|it| it.0)
    };
    assert_eq!((from("LS1"), from("LS2")), (Some(90.0), None));
}

#[test]
fn sound_systems_are_fed_and_turned_on() {
    for (title, text) in testkit::sound_systems::sound_systems() {
        let (sheet, signal) = study(&text);
        for it in signal.inputs.iter().filter(|it| it.needed) {
            let tag = &sheet.parts[&it.part].tag;
            assert_eq!(
                (it.by.len(), it.level_fits),
                (1, Some(true)),
                "{title}: {tag} input {}",
                it.input
            );
            assert!(it.side.is_some(), "{title}: {tag} input {}", it.input);
        }
        for (part, fed) in &signal.turn_on {
            let tag = &sheet.parts[part].tag;
            assert!(!fed.always_live, "{title}: {tag}");
            assert!(
                fed.sensed || fed.by.len() == 1 || fed.switched_feed,
                "{title}: {tag} {fed:?}"
            );
        }
        for output in &signal.turn_on_outputs {
            assert!(
                output.capacity.is_some_and(|most| output.asked <= most),
                "{title}: {output:?}"
            );
        }
    }
}
