//! Speaker networks against a circuit simulator: |Z| of every output within 0.1 % from 20 Hz to 20 kHz, on the deck that the
//! program writes. Needs ngspice; without it the test fails and says so.

#![allow(
    clippy::disallowed_methods,
    reason = "a test on the workbench: starts a program, and never runs in the page"
)]

use circuit::speakers::{CURVE_POINTS, Speakers, curve_frequency, speaker_deck, study_speakers};
use model::{Settings, Sheet};
use ordered::OrderedMap;
use std::fmt::Write as _;
use std::io::Write as _;
use std::process::{Command, Stdio};

/// Networks in one deck, and decks: 126 networks in 7 processes.
const BATCH: u32 = 18;
const DECKS: u64 = 7;

/// A small generator of pseudorandom numbers (xorshift64*), so that every run tests the same networks.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33
    }
    fn below(&mut self, most: u64) -> u64 {
        self.next() % most.max(1)
    }
    /// Evenly spread on a logarithmic scale.
    fn between(&mut self, least: f64, most: f64) -> f64 {
        let share = self.below(1_000_000) as f64 / 1e6;
        least * (most / least).powf(share)
    }
}

/// A sheet in the making, in the text form.
struct Sketch {
    dice: Dice,
    text: String,
    runs: u32,
    parts: u32,
}

impl Sketch {
    fn run(&mut self, from: &str, to: &str) {
        self.runs += 1;
        let length = self.dice.between(0.1, 8.0);
        let size = ["0.75mm2", "1.5mm2", "2.5mm2", "4mm2", "16AWG", "12AWG"][self.dice.below(6) as usize];
        let _ = writeln!(self.text, "run W{} {from} {to} {size} {length:.3}m", self.runs);
    }
    fn part(&mut self, word: &str, letter: &str, rest: &str) -> String {
        self.parts += 1;
        let tag = format!("{letter}{}", self.parts);
        let _ = writeln!(self.text, "{word} {tag} {rest}");
        tag
    }
    /// Any two-ended network between two terminals.
    fn network(&mut self, from: &str, to: &str, depth: u32) {
        match if depth == 0 { 0 } else { self.dice.below(8) } {
            0..=1 => {
                let rated = [2.0, 4.0, 6.0, 8.0][self.dice.below(4) as usize];
                let dc = rated * self.dice.between(0.55, 0.95);
                let mut rest = format!("{rated}ohm dc-resistance={dc:.3}ohm");
                if self.dice.below(4) > 0 {
                    let _ = write!(rest, " inductance={:.5}mH", self.dice.between(0.02, 3.0));
                }
                if self.dice.below(4) == 0 {
                    // Two coils in series or in parallel, the second perhaps the wrong way round.
                    let tag = self.part("speaker", "LS", &format!("{rest} coils=2"));
                    let (plus, minus) = if self.dice.below(3) == 0 {
                        ("b-", "b+")
                    } else {
                        ("b+", "b-")
                    };
                    if self.dice.below(2) == 0 {
                        self.run(from, &format!("{tag}.a+"));
                        self.run(&format!("{tag}.a-"), &format!("{tag}.{plus}"));
                        self.run(&format!("{tag}.{minus}"), to);
                    } else {
                        self.run(from, &format!("{tag}.a+"));
                        self.run(&format!("{tag}.a+"), &format!("{tag}.{plus}"));
                        self.run(&format!("{tag}.a-"), &format!("{tag}.{minus}"));
                        self.run(&format!("{tag}.a-"), to);
                    }
                } else {
                    let tag = self.part("speaker", "LS", &rest);
                    let (plus, minus) = if self.dice.below(3) == 0 {
                        ("-", "+")
                    } else {
                        ("+", "-")
                    };
                    self.run(from, &format!("{tag}.{plus}"));
                    self.run(&format!("{tag}.{minus}"), to);
                }
            }
            2 => {
                let middle = self.part("splice", "J", "places=3");
                self.network(from, &format!("{middle}.1"), depth - 1);
                self.network(&format!("{middle}.2"), to, depth - 1);
            }
            3..=4 => {
                self.network(from, to, depth - 1);
                self.network(from, to, depth - 1);
            }
            5 => {
                let farads = self.dice.between(4.0, 400.0);
                let tag = self.part("inline-capacitor", "CS", &format!("capacitance={farads:.3}uF"));
                self.run(from, &format!("{tag}.1"));
                self.network(&format!("{tag}.2"), to, depth - 1);
            }
            6 => {
                let order = 1 + self.dice.below(2);
                let frequency = self.dice.between(150.0, 6000.0);
                let rest = format!("frequency={frequency:.1}Hz order={order} load=4ohm");
                let tag = self.part("crossover", "Z", &rest);
                self.run(from, &format!("{tag}.in+"));
                self.run(&format!("{tag}.in-"), to);
                self.network(&format!("{tag}.low+"), &format!("{tag}.low-"), depth - 1);
                self.network(&format!("{tag}.high+"), &format!("{tag}.high-"), depth - 1);
            }
            _ => {
                // A loop-through plug, mated, and an adapter.
                let plug = self.part("plug", "P", "cavities=\"1; 2; 3; 4\" loops=\"1-3 2-4\"");
                self.run(from, &format!("{plug}.1a"));
                self.run(&format!("{plug}.2a"), to);
                self.network(&format!("{plug}.3a"), &format!("{plug}.4a"), depth - 1);
                self.network(&format!("{plug}.1b"), &format!("{plug}.2b"), depth - 1);
            }
        }
    }
    /// An amplifier with something on it: one channel, two, two with a common return, bridged, or mixed mono.
    fn system(&mut self) {
        let floating = if self.dice.below(3) == 0 { "no" } else { "yes" };
        let sections = "2x 100W@4ohm min 2ohm bridged 200W@4ohm min 4ohm";
        let tag = self.part(
            "amplifier",
            "A",
            &format!("sections=\"{sections}\" floating={floating}"),
        );
        let leg = |leg: &str| format!("{tag}.out{leg}");
        match self.dice.below(5) {
            0 => self.network(&leg("1+"), &leg("1-"), 3),
            1 => {
                self.network(&leg("1+"), &leg("1-"), 2);
                self.network(&leg("2+"), &leg("2-"), 2);
            }
            2 => {
                let common = self.part("splice", "J", "places=6");
                self.network(&leg("1+"), &format!("{common}.1"), 2);
                self.network(&leg("2+"), &format!("{common}.2"), 2);
                self.run(&format!("{common}.3"), &leg("1-"));
                self.run(&format!("{common}.4"), &leg("2-"));
            }
            3 => self.network(&leg("1+"), &leg("2-"), 3),
            _ => {
                self.network(&leg("1+"), &leg("1-"), 1);
                self.network(&leg("2+"), &leg("2-"), 1);
                self.network(&leg("1+"), &leg("2-"), 1);
            }
        }
    }
}

fn batch(seed: u64) -> Sheet {
    let mut sketch = Sketch {
        dice: Dice(0x9E37_79B9_7F4A_7C15 ^ (seed + 1).wrapping_mul(0xD1B5_4A32_D192_ED03)),
        text: String::new(),
        runs: 0,
        parts: 0,
    };
    for _ in 0..BATCH {
        sketch.system();
    }
    testkit::sheet(&sketch.text)
}

/// What ngspice prints for a deck: for every source `vK_J` its current at every frequency, as a size.
fn simulate(deck: &str) -> OrderedMap<String, Vec<f64>> {
    let mut child = Command::new("ngspice")
        .arg("-b")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|why| panic!("ngspice is needed for this test (apt-get install ngspice): {why}"));
    let mut stdin = child.stdin.take().expect("a pipe");
    let text = deck.to_owned();
    let writer = std::thread::spawn(move || stdin.write_all(text.as_bytes()));
    let output = child.wait_with_output().expect("ngspice runs");
    writer
        .join()
        .expect("the deck is written")
        .expect("the deck is taken");
    let printed = String::from_utf8_lossy(&output.stdout);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "ngspice failed:\n{errors}\n{deck}");
    let mut found: OrderedMap<String, Vec<f64>> = OrderedMap::new();
    let mut name = String::new();
    for line in printed.lines() {
        if let Some(rest) = line.trim_start().strip_prefix("Index") {
            name = rest
                .split_whitespace()
                .nth(1)
                .unwrap_or_default()
                .trim_end_matches("#branch")
                .to_owned();
            continue;
        }
        let fields: Vec<&str> = line
            .split([' ', '\t', ','])
            .filter(|field| !field.is_empty())
            .collect();
        if let [index, frequency, re, im] = fields.as_slice()
            && index.parse::<u32>().is_ok()
            && frequency.parse::<f64>().is_ok()
            && let (Ok(re), Ok(im)) = (re.parse::<f64>(), im.parse::<f64>())
        {
            found.entry(name.clone()).or_default().push(re.hypot(im));
        }
    }
    assert!(
        !found.is_empty(),
        "ngspice printed no currents:\n{printed}\n{errors}"
    );
    found
}

/// Holds every curve against the simulator; gives the number of outputs and of points compared, and the worst error.
fn compare(sheet: &Sheet, study: &Speakers, currents: &OrderedMap<String, Vec<f64>>) -> (usize, usize, f64) {
    let (mut outputs, mut points, mut worst) = (0, 0, 0.0_f64);
    for (at, load) in study.channels.iter().enumerate() {
        if load.curve.is_empty() {
            continue;
        }
        assert_eq!(load.curve.len(), usize::from(CURVE_POINTS));
        outputs += 1;
        // Currents of this output, from itself and from every other that shares its network. All have the same power
        // here, so they count alike.
        let prefix = format!("v{}_", at + 1);
        let shares: Vec<&Vec<f64>> = currents
            .iter()
            .filter(|(name, _)| name.starts_with(&prefix))
            .map(|(_, amps)| amps)
            .collect();
        assert!(!shares.is_empty(), "no current of {prefix}");
        for (point, (frequency, ohms)) in load.curve.iter().enumerate() {
            let amps: f64 = shares.iter().map(|amps| amps[point]).sum();
            let error = (ohms.0 * amps - 1.0).abs();
            let tag = &sheet.parts[&load.part].tag;
            assert!(
                error < 1e-3,
                "{tag} channel {} at {} Hz: {} Ω, ngspice {} Ω",
                load.channel,
                frequency.0,
                ohms.0,
                1.0 / amps
            );
            worst = worst.max(error);
            points += 1;
        }
    }
    (outputs, points, worst)
}

#[test]
fn speaker_networks_agree_with_the_simulator() {
    let settings = Settings::default();
    let (mut outputs, mut points, mut bridged, mut shared) = (0, 0, 0, 0);
    for seed in 0..DECKS {
        let sheet = batch(seed);
        let study = study_speakers(&sheet, &settings);
        let currents = simulate(&speaker_deck(&sheet, &settings));
        let (o, p, _) = compare(&sheet, &study, &currents);
        outputs += o;
        points += p;
        bridged += study
            .channels
            .iter()
            .filter(|it| it.bridged_with.is_some() && !it.curve.is_empty())
            .count();
        shared += study
            .channels
            .iter()
            .filter(|it| {
                it.remarks
                    .iter()
                    .any(|it| words::Words::english().say(it).contains("phase"))
            })
            .count();
    }
    assert!(
        outputs >= 100 && points >= 100 * usize::from(CURVE_POINTS),
        "{outputs} outputs, {points} points"
    );
    assert!(bridged >= 10, "{bridged} bridged");
    assert!(shared >= 10, "{shared} shared");
}

#[test]
fn the_worked_jobs_agree_with_the_simulator() {
    let settings = Settings::default();
    for worked in lessons::WORKED_JOBS {
        for sheet in worked.job().sheets.values() {
            let study = study_speakers(sheet, &settings);
            if study.channels.iter().all(|it| it.curve.is_empty()) {
                continue;
            }
            let (outputs, _, _) = compare(sheet, &study, &simulate(&speaker_deck(sheet, &settings)));
            assert!(outputs > 0, "{}", worked.key);
        }
    }
}

#[test]
fn the_curve_runs_from_20_hz_to_20_khz() {
    assert!((curve_frequency(0).0 - 20.0).abs() < 1e-9);
    assert!((curve_frequency(CURVE_POINTS - 1).0 - 20_000.0).abs() < 1e-6);
}
