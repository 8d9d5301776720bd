//! What channels drive and what reaches speakers, held against published combinations and worked examples.

use circuit::speakers::{Speakers, study_speakers};
use circuit::{ChannelLoad, Driver};
use model::Settings;
use model::quantity::Ohms;
use std::fmt::Write;
use words::Words;

fn study(text: &str) -> Speakers {
    study_speakers(&testkit::sheet(text), &Settings::default())
}

/// A sheet with one amplifier A1 of these sections.
fn with(sections: &str, rest: &str) -> (model::Sheet, Speakers) {
    let sheet = testkit::sheet(&format!("amplifier A1 sections=\"{sections}\"\n{rest}"));
    let study = study_speakers(&sheet, &Settings::default());
    (sheet, study)
}

const ONE: &str = "1x 300W@4ohm 480W@2ohm 600W@1ohm min 1ohm";
const TWO: &str = "2x 100W@4ohm 200W@2ohm min 2ohm bridged 400W@4ohm min 4ohm";

fn first(study: &Speakers) -> &ChannelLoad {
    study.channels.first().expect("there is a channel")
}

fn driver<'a>(sheet: &model::Sheet, study: &'a Speakers, tag: &str) -> &'a Driver {
    let (id, _) = sheet.part_by_tag(tag).expect("the speaker is there");
    &study.drivers[&id]
}

/// What is remarked about a channel.
fn remarks(channel: &ChannelLoad) -> String {
    let all: Vec<String> = channel
        .remarks
        .iter()
        .map(|it| Words::english().say(it))
        .collect();
    all.join("; ")
}

fn gap(rest: &str, tag: &str) -> (String, Option<String>) {
    let (sheet, study) = with(ONE, rest);
    let driver = driver(&sheet, &study, tag);
    assert!(!driver.plays, "{tag} plays");
    let gap = driver.gap.clone().expect("a silent speaker has a gap");
    let mark = gap
        .part
        .map(|id| sheet.parts[&id].tag.clone())
        .or_else(|| gap.run.map(|id| sheet.runs[&id].tag.clone()));
    (Words::english().say(&gap.what), mark)
}

fn close(found: Option<Ohms>, wanted: f64, relative: f64) {
    let found = found.map(|it| it.0).unwrap_or(f64::NAN);
    assert!(
        (found - wanted).abs() <= relative * wanted.abs(),
        "found {found}, wanted {wanted}"
    );
}

/// Builds a load from speakers with numbered runs.
#[derive(Default)]
struct Rig {
    text: String,
    runs: u32,
}

impl Rig {
    fn speakers(mut self, count: u32, properties: &str) -> Self {
        for n in 1..=count {
            let _ = writeln!(self.text, "speaker LS{n} {properties}");
        }
        self
    }
    fn run(&mut self, from: &str, to: &str) {
        self.runs += 1;
        let _ = writeln!(self.text, "run W{} {from} {to} 2.5mm2 1m", self.runs);
    }
    /// Chains of coil ends in parallel on channel 1: each chain lists coils as `LS1.a`, `LS1.` for a single one.
    fn chains(mut self, chains: &[&[&str]]) -> Self {
        for chain in chains {
            let mut from = "A1.out1+".to_owned();
            for coil in *chain {
                self.run(&from, &format!("{coil}+"));
                from = format!("{coil}-");
            }
            self.run(&from, "A1.out1-");
        }
        self
    }
    fn nominal(&self) -> Option<Ohms> {
        first(&with(ONE, &self.text).1).nominal
    }
}

#[test]
fn every_load_combination_of_the_table_comes_out() {
    // ref: audio.csv topic `load combination`; series/parallel arithmetic; derived
    let s = |count, properties| Rig::default().speakers(count, properties);
    let single = "4ohm";
    let dual4 = "4ohm coils=2";
    let dual2 = "2ohm coils=2";
    let cases: Vec<(&str, Rig, f64)> = vec![
        (
            "two 4 ohm in series",
            s(2, single).chains(&[&["LS1.", "LS2."]]),
            8.0,
        ),
        (
            "two 4 ohm in parallel",
            s(2, single).chains(&[&["LS1."], &["LS2."]]),
            2.0,
        ),
        (
            "four 4 ohm series-parallel",
            s(4, single).chains(&[&["LS1.", "LS2."], &["LS3.", "LS4."]]),
            4.0,
        ),
        (
            "three 4 ohm in parallel",
            s(3, single).chains(&[&["LS1."], &["LS2."], &["LS3."]]),
            4.0 / 3.0,
        ),
        (
            "one dual 4 ohm, parallel",
            s(1, dual4).chains(&[&["LS1.a"], &["LS1.b"]]),
            2.0,
        ),
        (
            "one dual 4 ohm, series",
            s(1, dual4).chains(&[&["LS1.a", "LS1.b"]]),
            8.0,
        ),
        (
            "two dual 4 ohm, all parallel",
            s(2, dual4).chains(&[&["LS1.a"], &["LS1.b"], &["LS2.a"], &["LS2.b"]]),
            1.0,
        ),
        (
            "two dual 4 ohm, coils series, drivers parallel",
            s(2, dual4).chains(&[&["LS1.a", "LS1.b"], &["LS2.a", "LS2.b"]]),
            4.0,
        ),
        (
            "two dual 2 ohm, coils series, drivers parallel",
            s(2, dual2).chains(&[&["LS1.a", "LS1.b"], &["LS2.a", "LS2.b"]]),
            2.0,
        ),
        (
            "two dual 2 ohm, all parallel",
            s(2, dual2).chains(&[&["LS1.a"], &["LS1.b"], &["LS2.a"], &["LS2.b"]]),
            0.5,
        ),
        (
            "three dual 4 ohm, all parallel",
            s(3, dual4).chains(&[
                &["LS1.a"],
                &["LS1.b"],
                &["LS2.a"],
                &["LS2.b"],
                &["LS3.a"],
                &["LS3.b"],
            ]),
            2.0 / 3.0,
        ),
        (
            "four dual 4 ohm, coils series, drivers parallel",
            s(4, dual4).chains(&[
                &["LS1.a", "LS1.b"],
                &["LS2.a", "LS2.b"],
                &["LS3.a", "LS3.b"],
                &["LS4.a", "LS4.b"],
            ]),
            2.0,
        ),
        (
            "four dual 2 ohm, coils series, two series-pairs in parallel",
            s(4, dual2).chains(&[
                &["LS1.a", "LS1.b", "LS2.a", "LS2.b"],
                &["LS3.a", "LS3.b", "LS4.a", "LS4.b"],
            ]),
            4.0,
        ),
        // ref: worked_examples.csv WE32; arithmetic; derived
        (
            "all series",
            s(2, dual4).chains(&[&["LS1.a", "LS1.b", "LS2.a", "LS2.b"]]),
            16.0,
        ),
    ];
    for (name, rig, wanted) in cases {
        let found = rig.nominal().map_or(f64::NAN, |it| it.0);
        assert!(
            (found - wanted).abs() <= 1e-6 * wanted,
            "{name}: found {found}, wanted {wanted}"
        );
    }
    // 4 ohm parallel 8 ohm.
    let mut rig = Rig::default();
    rig.text.push_str("speaker LS1 4ohm\nspeaker LS2 8ohm\n");
    close(rig.chains(&[&["LS1."], &["LS2."]]).nominal(), 8.0 / 3.0, 1e-6);
    // Two dual 2 ohm, coils parallel, drivers in series.
    let mut rig = Rig::default().speakers(2, dual2);
    for (from, to) in [
        ("A1.out1+", "LS1.a+"),
        ("LS1.a+", "LS1.b+"),
        ("LS1.a-", "LS1.b-"),
        ("LS1.a-", "LS2.a+"),
        ("LS2.a+", "LS2.b+"),
        ("LS2.a-", "LS2.b-"),
        ("LS2.a-", "A1.out1-"),
    ] {
        rig.run(from, to);
    }
    close(rig.nominal(), 2.0, 1e-6);
}

#[test]
fn a_bridged_pair_is_one_output_and_each_channel_sees_half() {
    // ref: worked_examples.csv WE35; P = (2V)²/R; arithmetic; derived
    let (sheet, study) = with(
        TWO,
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out2- LS1.- 2.5mm2 1m",
    );
    let [pair] = study.channels.as_slice() else {
        panic!("one output: {:?}", study.channels)
    };
    assert_eq!((pair.channel, pair.bridged_with), (1, Some(2)));
    close(pair.nominal, 4.0, 1e-6);
    assert_eq!(pair.minimum, Some(Ohms(4.0)));
    assert_eq!(pair.power.map(|it| it.0), Some(400.0));
    // Each channel gives half the voltage at the same current: half of the load.
    let current = libm::sqrt(400.0 / 4.0);
    assert!(((40.0 / 2.0) / current - 2.0).abs() < 1e-6);
    let it = driver(&sheet, &study, "LS1");
    assert!(it.plays && it.in_phase == Some(true));
    assert!((it.power.0 - 400.0).abs() < 1e-6);
    assert!(pair.remarks.is_empty() && pair.tied_to.is_empty() && !pair.touches_body);
}

#[test]
fn bridging_the_other_way_round_is_reversed() {
    let (sheet, study) = with(
        TWO,
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.- 2.5mm2 1m\nrun W2 A1.out2- LS1.+ 2.5mm2 1m",
    );
    assert_eq!(study.channels.len(), 1);
    assert_eq!(driver(&sheet, &study, "LS1").in_phase, Some(false));
}

#[test]
fn bridging_what_may_not_be_bridged_is_remarked_and_has_no_minimum() {
    let load = "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out2- LS1.- 2.5mm2 1m";
    let (sheet, study) = with("2x 100W@4ohm min 2ohm", load);
    assert_eq!(study.channels.len(), 2);
    for channel in &study.channels {
        assert_eq!(channel.minimum, None);
        assert!(remarks(channel).contains("does not let"), "{channel:?}");
        // Both channels drive it: each sees half.
        close(channel.nominal, 2.0, 1e-6);
    }
    assert!(driver(&sheet, &study, "LS1").plays);
    // The other two legs of a pair that may be bridged.
    let (_, study) = with(
        TWO,
        "speaker LS1 4ohm\nrun W1 A1.out1- LS1.+ 2.5mm2 1m\nrun W2 A1.out2+ LS1.- 2.5mm2 1m",
    );
    assert!(remarks(first(&study)).contains("not the legs to bridge"));
    assert_eq!(first(&study).minimum, None);
    // Second with third of four: neighbours, but not a pair.
    let four = TWO.replace("2x", "4x");
    let (_, study) = with(
        &four,
        "speaker LS1 4ohm\nrun W1 A1.out2+ LS1.+ 2.5mm2 1m\nrun W2 A1.out3- LS1.- 2.5mm2 1m",
    );
    assert_eq!(study.channels.len(), 4);
    assert_eq!(study.channels.iter().filter(|it| it.minimum.is_none()).count(), 2);
}

#[test]
fn mixed_mono_keeps_both_channels_and_takes_the_worse_case() {
    let (sheet, study) = with(
        TWO,
        "speaker LS1 4ohm\nspeaker LS2 4ohm\nspeaker LS3 8ohm sub
         run W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out1- LS1.- 2.5mm2 1m
         run W3 A1.out2+ LS2.+ 2.5mm2 1m\nrun W4 A1.out2- LS2.- 2.5mm2 1m
         run W5 A1.out1+ LS3.+ 2.5mm2 1m\nrun W6 A1.out2- LS3.- 2.5mm2 1m",
    );
    assert_eq!(study.channels.len(), 2);
    // Own 4 Ω, and twice the voltage across 8 Ω: V/4 + 2V/8 = V/2.
    close(first(&study).nominal, 2.0, 1e-6);
    assert!(remarks(first(&study)).contains("bridged load besides"));
    assert!(driver(&sheet, &study, "LS3").plays);
}

#[test]
fn lead_loss_is_that_of_the_worked_example() {
    // ref: worked_examples.csv WE36; ASTM B258 with IACS; derived. 6 m loop of 0.0790451 Ω into 4 Ω: 0.16997 dB.
    let (sheet, study) = with(
        ONE,
        "speaker LS1 4ohm dc-resistance=3.2ohm
         run W1 A1.out1+ LS1.+ 16AWG 3m stated-resistance=0.013174185333ohm/m end-ohms=0ohm/0ohm
         run W2 A1.out1- LS1.- 16AWG 3m stated-resistance=0.013174185333ohm/m end-ohms=0ohm/0ohm",
    );
    let it = driver(&sheet, &study, "LS1");
    assert!(
        (it.lead_loss.0 - 0.169_970_34).abs() < 0.169_970_34 * 1e-4,
        "{:?}",
        it.lead_loss
    );
    // A meter reads the coil and both leads.
    close(first(&study).dc_resistance, 3.2 + 0.079_045_112, 1e-6);
}

#[test]
fn an_in_line_capacitor_gives_its_corner() {
    // ref: worked_examples.csv WE38; f = 1/(2πRC); textbook formula; derived
    let (sheet, study) = with(
        ONE,
        "speaker LS1 4ohm tweeter\ninline-capacitor CS1 capacitance=47uF
         run W1 A1.out1+ CS1.1 1.5mm2 1m\nrun W2 CS1.2 LS1.+ 1.5mm2 1m\nrun W3 A1.out1- LS1.- 1.5mm2 1m",
    );
    let it = driver(&sheet, &study, "LS1");
    let corner = it.high_pass.expect("it has a corner").0;
    assert!((corner - 846.568_85).abs() < 846.568_85 * 1e-6, "{corner}");
    assert!(it.plays);
    let channel = first(&study);
    assert_eq!(channel.dc_resistance, None);
    close(channel.nominal, 4.0, 1e-6);
    // At 20 Hz the capacitor alone has 1/(2π·20·47e-6) = 169.3 Ω.
    assert!(channel.curve.first().is_some_and(|(_, ohms)| ohms.0 > 169.0));
    assert!(channel.least.is_some_and(|least| least.0 < 4.2));
}

/// Two crossovers, one behind the other, as a passive set of three ways is drawn.
const THREE_WAYS: &str =
    "crossover Z1 frequency=300Hz order=2 load=4ohm\ncrossover Z2 frequency=3500Hz order=2 load=4ohm
     speaker LS1 4ohm woofer\nspeaker LS2 4ohm mid\nspeaker LS3 4ohm tweeter
     run W1 A1.out1+ Z1.in+ 2.5mm2 1m\nrun W2 A1.out1- Z1.in- 2.5mm2 1m
     run W3 Z1.low+ LS1.+ 2.5mm2 1m\nrun W4 Z1.low- LS1.- 2.5mm2 1m
     run W5 Z1.high+ Z2.in+ 2.5mm2 1m\nrun W6 Z1.high- Z2.in- 2.5mm2 1m
     run W7 Z2.low+ LS2.+ 2.5mm2 1m\nrun W8 Z2.low- LS2.- 2.5mm2 1m
     run W9 Z2.high+ LS3.+ 2.5mm2 1m\nrun W10 Z2.high- LS3.- 2.5mm2 1m";

/// A complex number, for a ladder of impedances worked by hand.
#[derive(Clone, Copy)]
struct C(f64, f64);

impl C {
    fn over(self, other: Self) -> Self {
        let size = other.0 * other.0 + other.1 * other.1;
        Self(
            (self.0 * other.0 + self.1 * other.1) / size,
            (self.1 * other.0 - self.0 * other.1) / size,
        )
    }
    fn plus(self, other: Self) -> Self {
        Self(self.0 + other.0, self.1 + other.1)
    }
    fn times(self, other: Self) -> Self {
        Self(
            self.0 * other.0 - self.1 * other.1,
            self.0 * other.1 + self.1 * other.0,
        )
    }
    fn beside(self, other: Self) -> Self {
        self.times(other).over(self.plus(other))
    }
    fn size(self) -> f64 {
        libm::hypot(self.0, self.1)
    }
}

/// What stands at the midrange of [`THREE_WAYS`] over what stands at the input: L = √2·Z/2πf, C = 1/(√2·2πfZ) for each crossover
/// (second-order Butterworth, textbook formulas), and voltage dividers along the ladder.
fn at_the_midrange(frequency: f64) -> f64 {
    let omega = std::f64::consts::TAU * frequency;
    let parts = |at: f64| {
        let of = std::f64::consts::TAU * at;
        let (henries, farads) = (2.0_f64.sqrt() * 4.0 / of, 1.0 / (2.0_f64.sqrt() * of * 4.0));
        (C(0.0, omega * henries), C(0.0, -1.0 / (omega * farads)))
    };
    let driver = C(4.0, 0.0);
    let ((coil_1, cap_1), (coil_2, cap_2)) = (parts(300.0), parts(3500.0));
    let middle = driver.beside(cap_2);
    let below = coil_2.plus(middle);
    let above = cap_2.plus(driver.beside(coil_2));
    let behind = coil_1.beside(below).beside(above);
    behind.over(cap_1.plus(behind)).times(middle.over(below)).size()
}

#[test]
fn a_midrange_between_two_crossovers_plays_and_has_its_lower_corner() {
    let (sheet, study) = with(ONE, THREE_WAYS);
    let middle = driver(&sheet, &study, "LS2");
    assert!(middle.plays);
    assert_eq!(middle.in_phase, Some(true));
    let corner = middle.high_pass.expect("it has a corner").0;
    let (mut low, mut high) = (10.0_f64, 1000.0_f64);
    for _ in 0..60 {
        let between = (low * high).sqrt();
        if at_the_midrange(between) >= std::f64::consts::FRAC_1_SQRT_2 {
            high = between;
        } else {
            low = between;
        }
    }
    assert!((corner - low).abs() < low * 2e-3, "{corner} {low}");
    assert!((250.0..350.0).contains(&corner), "{corner}");
    for (tag, plays_from) in [("LS1", None), ("LS3", Some(3500.0))] {
        let it = driver(&sheet, &study, tag);
        assert!(it.plays, "{tag}");
        match (it.high_pass, plays_from) {
            (None, None) => {}
            (Some(it), Some(from)) => assert!((it.0 - from).abs() < from * 0.2, "{tag}: {it:?}"),
            (it, _) => panic!("{tag}: {it:?}"),
        }
    }
    // One driver at a time: 4 Ω everywhere, not 2.
    close(first(&study).nominal, 4.0, 1e-6);
    assert!(middle.power.0 > 0.9 * driver(&sheet, &study, "LS1").power.0);
}

#[test]
fn a_crossover_divides_where_it_says() {
    // ref: worked_examples.csv WE37 and audio.csv `second-order Butterworth`; textbook formulas; derived:
    // -3.01 dB at the stated frequency into the load it is made for, both orders.
    for order in [1, 2] {
        let (sheet, study) = with(
            ONE,
            &format!(
                "crossover Z1 frequency=3500Hz order={order} load=4ohm\nspeaker LS1 4ohm woofer\nspeaker LS2 4ohm tweeter
                 run W1 A1.out1+ Z1.in+ 2.5mm2 1m\nrun W2 A1.out1- Z1.in- 2.5mm2 1m
                 run W3 Z1.low+ LS1.+ 2.5mm2 1m\nrun W4 Z1.low- LS1.- 2.5mm2 1m
                 run W5 Z1.high+ LS2.+ 2.5mm2 1m\nrun W6 Z1.high- LS2.- 2.5mm2 1m"
            ),
        );
        let tweeter = driver(&sheet, &study, "LS2");
        let corner = tweeter.high_pass.expect("it has a corner").0;
        assert!((corner - 3500.0).abs() < 1e-3, "{corner}");
        assert_eq!(driver(&sheet, &study, "LS1").high_pass, None);
        assert_eq!(tweeter.in_phase, Some(true));
        // Woofer at the low end, tweeter at the high end: 4 Ω, not 2.
        close(first(&study).nominal, 4.0, 1e-6);
        assert!(
            first(&study).least.is_some_and(|it| it.0 >= 3.2),
            "{:?}",
            first(&study).least
        );
    }
}

#[test]
fn polarity_and_coils() {
    let (sheet, study) = with(
        ONE,
        "speaker LS1 4ohm\nspeaker LS2 4ohm coils=2
         run W1 A1.out1+ LS1.- 2.5mm2 1m\nrun W2 A1.out1- LS1.+ 2.5mm2 1m
         run W3 A1.out1+ LS2.a+ 2.5mm2 1m\nrun W4 LS2.a- LS2.b- 2.5mm2 1m\nrun W5 LS2.b+ A1.out1- 2.5mm2 1m",
    );
    assert_eq!(driver(&sheet, &study, "LS1").in_phase, Some(false));
    let dual = driver(&sheet, &study, "LS2");
    assert!(dual.coils_oppose);
    assert_eq!(
        dual.coils.iter().map(|coil| coil.polarity).collect::<Vec<_>>(),
        [1, -1]
    );
    assert!((dual.coils[0].power.0 - dual.coils[1].power.0).abs() < 1e-9);
}

#[test]
fn the_powers_of_speakers_add_up_to_the_channel() {
    let rig = Rig::default()
        .speakers(3, "4ohm")
        .chains(&[&["LS1.", "LS2."], &["LS3."]]);
    let (_, study) = with(ONE, &rig.text);
    let sum: f64 = study.drivers.values().map(|it| it.power.0).sum();
    let channel = first(&study);
    // 8 Ω beside 4 Ω: 8/3 Ω. Two thirds of the power go to the 4 Ω branch.
    close(channel.nominal, 8.0 / 3.0, 1e-9);
    let power = channel.power.expect("it has power").0;
    assert!((sum - power).abs() < 1e-9 * power);
    let third = study.drivers.values().last().expect("three").power.0;
    assert!((third - power * 2.0 / 3.0).abs() < 1e-9 * power);
}

#[test]
fn a_gap_is_named() {
    let (what, mark) = gap("speaker LS1 4ohm", "LS1");
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("nothing is on LS1", Some("LS1"))
    );
    let (what, mark) = gap("speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m", "LS1");
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("nothing is on LS1.-", Some("LS1"))
    );
    let (what, mark) = gap(
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out1- LS1.- 2.5mm2 1m condition=cut",
        "LS1",
    );
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("run W2 is cut through", Some("W2"))
    );
    let (what, mark) = gap(
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 LS1.- loose@0,0 2.5mm2 1m",
        "LS1",
    );
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("run W2 ends loose", Some("W2"))
    );
    let (what, mark) = gap(
        "speaker LS1 4ohm\nplug P1 cavities=\"1; 2\" mated=no
         run W1 A1.out1+ P1.1a 2.5mm2 1m\nrun W2 P1.1b LS1.+ 2.5mm2 1m
         run W3 A1.out1- P1.2a 2.5mm2 1m\nrun W4 P1.2b LS1.- 2.5mm2 1m",
        "LS1",
    );
    assert!(what.starts_with("plug P1 is apart"), "{what}");
    assert_eq!(mark.as_deref(), Some("P1"));
    let (what, mark) = gap(
        "speaker LS1 4ohm\nfuse F1 regular 5A open\nrun W1 A1.out1+ F1.in 2.5mm2 1m\nrun W2 F1.out LS1.+ 2.5mm2 1m
         run W3 A1.out1- LS1.- 2.5mm2 1m",
        "LS1",
    );
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("F1 is blown or missing", Some("F1"))
    );
    let (what, mark) = gap(
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out1+ LS1.- 2.5mm2 1m",
        "LS1",
    );
    assert!(what.contains("joined"), "{what}");
    assert_eq!(mark.as_deref(), Some("LS1"));
    let (what, _) = gap(
        "head H1\nspeaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 H1.fl- LS1.- 2.5mm2 1m",
        "LS1",
    );
    assert!(what.contains("A1.out1+ and H1.fl-"), "{what}");
    let (what, _) = gap(
        "ground E1\nspeaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 E1.stud LS1.- 2.5mm2 1m",
        "LS1",
    );
    assert!(what.contains("led to E1.stud"), "{what}");
    // A series partner that is open silences both, and the same place is named.
    let (what, mark) = gap(
        "speaker LS1 4ohm\nspeaker LS2 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 LS1.- LS2.+ 2.5mm2 1m",
        "LS1",
    );
    assert_eq!(
        (what.as_str(), mark.as_deref()),
        ("nothing is on LS2.-", Some("LS2"))
    );
}

#[test]
fn a_loop_through_plug_closes_and_opens_the_speaker_behind_it() {
    let text = |mated: &str| {
        format!(
            "amplifier A1 sections=\"{ONE}\"\nspeaker LS1 4ohm
             plug P1 cavities=\"1; 2; 3; 4\" loops=\"1-3 2-4\" mated={mated}
             run W1 A1.out1+ P1.1a 2.5mm2 1m\nrun W2 A1.out1- P1.2a 2.5mm2 1m
             run W3 P1.3a LS1.+ 2.5mm2 1m\nrun W4 P1.4a LS1.- 2.5mm2 1m"
        )
    };
    let closed = study(&text("yes"));
    close(first(&closed).nominal, 4.0, 1e-6);
    assert!(closed.drivers.values().all(|it| it.plays));
    assert_eq!(first(&closed).runs.len(), 4);
    let open = study(&text("no"));
    assert_eq!(first(&open).nominal, None);
    assert!(first(&open).drivers.is_empty() && first(&open).dc_resistance.is_none());
    let gap = open
        .drivers
        .values()
        .next()
        .and_then(|it| it.gap.clone())
        .expect("it is silent");
    let what = Words::english().say(&gap.what);
    assert!(what.contains("loop from") && what.contains("P1"), "{what}");
}

#[test]
fn a_shared_return_couples_two_channels() {
    // Two 4 Ω speakers whose common return has 1 Ω. In phase each sees 4 + 2·1 = 6 Ω, against phase 4 Ω: the worse is told.
    let (_, study) = with(
        "2x 100W@4ohm min 2ohm",
        "speaker LS1 4ohm\nspeaker LS2 4ohm\nsplice J1 places=4
         run W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out2+ LS2.+ 2.5mm2 1m
         run W3 LS1.- J1.1 2.5mm2 1m\nrun W4 LS2.- J1.2 2.5mm2 1m
         run W5 J1.3 A1.out1- 2.5mm2 1m stated-resistance=1ohm/m end-ohms=0ohm/0ohm\nrun W6 A1.out1- A1.out2- 2.5mm2 1m",
    );
    for channel in &study.channels {
        close(channel.nominal, 4.0, 1e-6);
        assert_eq!(channel.tied_to.len(), 1, "{channel:?}");
        let least = channel.least.expect("solved").0;
        // 80/70 of the usual DC resistance of 0.775 · 4 Ω, and 0.01 to 0.06 Ω of leads.
        assert!(least > 3.543 && least < 3.61, "{least}");
        let remark = remarks(channel);
        assert!(remark.contains("phase"), "{remark}");
    }
}

#[test]
fn an_output_on_the_body_or_on_another_is_told() {
    let (_, study) = with(
        "2x 100W@4ohm min 2ohm",
        "ground E1\nspeaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out1- LS1.- 2.5mm2 1m\nrun W3 LS1.- E1.stud 2.5mm2 1m",
    );
    assert!(study.channels[0].touches_body && !study.channels[1].touches_body);
    close(study.channels[0].nominal, 4.0, 1e-6);
    // An amplifier whose negative legs are ground may have its speakers return through the body.
    let sheet = testkit::sheet(
        "amplifier A1 sections=\"2x 100W@4ohm min 2ohm\" floating=no\nground E1\nspeaker LS1 4ohm
         run W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 E1.stud LS1.- 2.5mm2 1m",
    );
    let study = study_speakers(&sheet, &Settings::default());
    assert!(study.drivers.values().all(|it| it.plays));
    assert!(!study.channels[0].touches_body);
    close(study.channels[0].nominal, 4.0, 1e-6);
}

#[test]
fn outputs_straight_across_one_another_are_tied_and_have_no_load() {
    let (_, study) = with(
        "2x 100W@4ohm min 2ohm",
        "speaker LS1 4ohm\nrun W1 A1.out1+ LS1.+ 2.5mm2 1m\nrun W2 A1.out1- LS1.- 2.5mm2 1m
         run W3 A1.out2+ LS1.+ 2.5mm2 1m\nrun W4 A1.out2- LS1.- 2.5mm2 1m",
    );
    for channel in &study.channels {
        assert_eq!(channel.tied_to.len(), 1);
        assert_eq!(channel.nominal, None);
        assert!(channel.least.is_some_and(|it| it.0 < 1.0), "{channel:?}");
    }
    assert!(study.drivers.values().all(|it| it.plays));
}

#[test]
fn sound_systems_play_in_phase_on_loads_that_are_allowed() {
    for (title, text) in testkit::sound_systems::sound_systems() {
        let sheet = testkit::sheet(&text);
        let study = study_speakers(&sheet, &Settings::default());
        for (id, it) in &study.drivers {
            let tag = &sheet.parts[id].tag;
            assert!(
                it.plays && it.in_phase == Some(true) && !it.coils_oppose,
                "{title}: {tag} {it:?}"
            );
            assert!(it.lead_loss.0 < 0.5, "{title}: {tag} loses {:?}", it.lead_loss);
        }
        for load in study.channels.iter().filter(|load| !load.drivers.is_empty()) {
            let tag = &sheet.parts[&load.part].tag;
            let minimum = load.minimum.map_or(f64::INFINITY, |it| it.0);
            assert!(
                load.nominal.is_some_and(|it| it.0 >= minimum - 1e-9),
                "{title}: {tag} {load:?}"
            );
            // ref: audio.csv minimum |Z| over rated impedance 0.8; IEC 60268-5 clause 16.1; memory
            assert!(
                load.least.is_some_and(|it| it.0 >= 0.8 * minimum),
                "{title}: {tag} {load:?}"
            );
            assert!(
                load.remarks.is_empty() && load.tied_to.is_empty() && !load.touches_body,
                "{title}: {tag}"
            );
        }
    }
}
