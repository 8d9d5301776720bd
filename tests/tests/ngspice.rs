//! The DC solution against ngspice on the exported deck: random systems and the worked jobs.
//!
//! The deck states elements, not results; see `circuit::deck`. Temperatures are fixed in it and output powers given, so that
//! both solve the same network. Limit by the project: 1 mV or 0.1 %, whichever is larger.

use circuit::solve::Level;
use model::{Settings, Sheet};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Runs decks, many to a process, and gives the node voltages of each.
fn ngspice(decks: &[String]) -> Vec<ordered::OrderedMap<String, f64>> {
    // Each thread of a test run works in a folder of its own.
    let folder: PathBuf = std::env::temp_dir().join(format!(
        "loomwright-ngspice-{}-{:?}",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::create_dir_all(&folder).expect("a temporary folder");
    let mut out = Vec::new();
    for deck in decks {
        out.push(run_one(&folder, deck));
    }
    std::fs::remove_dir_all(&folder).expect("the temporary folder goes");
    out
}

fn run_one(folder: &Path, deck: &str) -> ordered::OrderedMap<String, f64> {
    let path = folder.join("deck.cir");
    std::fs::File::create(&path)
        .and_then(|mut file| file.write_all(deck.as_bytes()))
        .expect("the deck is written");
    let run = Command::new("ngspice").arg("-b").arg(&path).output().expect(
        "ngspice is installed: Debian package `ngspice`; this comparison must not be skipped in silence",
    );
    let text = String::from_utf8_lossy(&run.stdout);
    text.lines()
        .filter_map(|line| {
            let (name, value) = line.split_once('=')?;
            let name = name.trim().strip_prefix("v(")?.strip_suffix(')')?;
            Some((name.to_owned(), value.trim().parse().ok()?))
        })
        .collect()
}

/// Compares every node of every sheet. Gives the number of nodes and the largest difference in volts.
fn compare(sheets: &[(String, Sheet, Settings)], level: Level) -> (usize, f64) {
    let (decks, points): (Vec<String>, Vec<circuit::OperatingPoint>) = sheets
        .iter()
        .map(|(_, sheet, settings)| circuit::deck_and_point(sheet, settings, level))
        .unzip();
    let answers = ngspice(&decks);
    let (mut nodes, mut worst) = (0, 0.0_f64);
    for (((name, ..), ours), answer) in sheets.iter().zip(points).zip(answers) {
        assert!(!ours.nodes.is_empty(), "{name}: nothing was solved");
        for (node, volts) in &ours.nodes {
            let theirs = answer
                .get(node)
                .unwrap_or_else(|| panic!("{name}: ngspice gave no voltage for {node}"));
            let difference = (volts - theirs).abs();
            assert!(
                difference <= (0.001_f64).max(0.001 * theirs.abs()),
                "{name} {level:?} {node}: {volts} V here, {theirs} V by ngspice"
            );
            worst = worst.max(difference);
            nodes += 1;
        }
    }
    (nodes, worst)
}

fn settings(state: &str, duty: &str) -> Settings {
    let mut settings = Settings::default();
    settings.conditions.state = model::job::VehicleState::from_word(state).expect("a state");
    settings.conditions.duty = model::job::Duty::from_word(duty).expect("a duty");
    settings
}

/// Random systems of 10 to 120 parts in all states, at all duties and levels.
#[test]
fn random_systems_agree() {
    let states = ["cruise", "idle", "engine-off", "parked"];
    let duties = ["loud", "music", "tone", "speech", "idle"];
    let sheets: Vec<_> = (0..300_u64)
        .map(|seed| {
            let parts = 10 + usize::try_from(seed % 12).unwrap_or(0) * 10;
            let at = usize::try_from(seed).unwrap_or(0);
            let sheet = testkit::random::random_system(seed, parts);
            (
                format!("seed {seed}"),
                sheet,
                settings(states[at % 4], duties[at % 5]),
            )
        })
        .collect();
    let third = sheets.len() / 3;
    let mut nodes = 0;
    for (level, part) in Level::ALL.into_iter().zip(sheets.chunks(third)) {
        nodes += compare(part, level).0;
    }
    assert!(nodes > 10_000, "only {nodes} nodes were compared");
}

/// Systems whose operating point is hard to begin: loads behind diodes that block, an alternator at its limit that charges a
/// battery which gives under load.
#[test]
fn hard_starts_agree() {
    let states = ["cruise", "idle", "engine-off", "parked"];
    for (seed, parts) in [
        (26, 60),
        (81, 60),
        (93, 60),
        (1532, 60),
        (1882, 60),
        (2581, 60),
        (19, 300),
    ] {
        let sheet = testkit::random::random_system(seed, parts);
        for level in Level::ALL {
            let sheets = states.map(|state| {
                (
                    format!("seed {seed} {state}"),
                    sheet.clone(),
                    settings(state, "music"),
                )
            });
            compare(&sheets, level);
        }
    }
}

/// A few large ones.
#[test]
fn large_systems_agree() {
    for parts in [600, 3000] {
        let sheet = testkit::random::random_system(7, parts);
        compare(
            &[(format!("{parts} parts"), sheet, settings("cruise", "music"))],
            Level::Burst,
        );
    }
}

/// The worked jobs.
#[test]
fn worked_jobs_agree() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/lessons/jobs");
    let mut jobs = 0;
    for entry in std::fs::read_dir(folder).expect("the worked jobs") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|extension| extension != "job") {
            continue;
        }
        let text = std::fs::read_to_string(&path).expect("a job");
        let job = model::text::parse(&text).expect("a job without errors");
        for (kind, sheet) in &job.sheets {
            for level in Level::ALL {
                compare(
                    &[(
                        format!("{} {kind:?}", path.display()),
                        sheet.clone(),
                        job.settings.clone(),
                    )],
                    level,
                );
            }
            jobs += 1;
        }
    }
    assert!(jobs >= 3, "three worked jobs are expected, {jobs} were found");
}

/// What the meter reads with a fault in, against ngspice on the deck of the sheet that has it: at every terminal of random systems.
#[test]
fn the_meter_agrees_with_a_fault_in() {
    use circuit::{Meter, Probe, Shown};
    use model::breaks::Break;
    let settings = settings("engine-off", "idle");
    let mut points = 0;
    for seed in 0..60_u64 {
        let sheet = testkit::random::random_system(seed, 20);
        let mut job = model::Job::default();
        job.sheets.insert(model::SheetKind::Plan, sheet);
        let sheet = &job.sheets[&model::SheetKind::Plan];
        let mut dice = testkit::random::Dice::new(seed);
        let mut broken = Vec::new();
        let runs: Vec<_> = sheet.runs.keys().copied().collect();
        let grounds = sheet
            .parts
            .iter()
            .filter(|(_, part)| matches!(part.is, model::PartKind::Ground(_)));
        let more = model::quantity::Ohms(dice.between(0.02, 0.3));
        broken.push(Break::Resistive {
            run: dice.one(&runs),
            more,
        });
        broken.extend(grounds.map(|(&part, _)| Break::Poor { part, more }).take(1));
        for broken in broken {
            let mut job = job.clone();
            let edit = broken.edit(&job, model::SheetKind::Plan).expect("an edit");
            job.apply(edit);
            let sheet = &job.sheets[&model::SheetKind::Plan];
            let Some(meter) = Meter::new(sheet, &settings, None) else {
                continue;
            };
            // The deck takes equipment as on whether it is told to turn on or not.
            let is_off = |(id, part): (&model::PartId, &model::Part)| {
                matches!(part.is, model::PartKind::Amplifier(_)) && !meter.works(*id)
            };
            if sheet.parts.iter().any(is_off) {
                continue;
            }
            let (deck, _) = circuit::deck_and_point(sheet, &settings, Level::Mean);
            let answer = ngspice(std::slice::from_ref(&deck)).remove(0);
            // The deck tells in its head which terminals each node is.
            let mut volts: Vec<(&str, f64)> = Vec::new();
            for line in deck.lines().filter_map(|line| line.strip_prefix("* ")) {
                let mut words = line.split_whitespace();
                let node = words.next().unwrap_or_default();
                let known = if node == "0" {
                    Some(0.0)
                } else {
                    answer.get(node).copied()
                };
                volts.extend(
                    words
                        .zip(std::iter::repeat(known))
                        .filter_map(|(name, volts)| Some((name, volts?))),
                );
            }
            let at = |written: &str| {
                let (tag, name) = written.split_once('.')?;
                Some(model::TerminalRef::new(sheet.part_by_tag(tag)?.0, name))
            };
            let black = sheet
                .parts
                .values()
                .find(|part| matches!(part.is, model::PartKind::Battery(_)))
                .map(|part| format!("{}.-", part.tag))
                .expect("a battery");
            let Some(zero) = volts
                .iter()
                .find(|(name, _)| *name == black)
                .map(|(_, volts)| *volts)
            else {
                continue;
            };
            for (name, theirs) in &volts {
                let (Some(red), Some(black)) = (at(name), at(&black)) else {
                    continue;
                };
                let Some(Shown::Volts(ours)) = meter.read(&Probe::Volts(red, black)) else {
                    continue;
                };
                let theirs = theirs - zero;
                assert!(
                    (ours.0 - theirs).abs() <= 0.002_f64.max(0.001 * theirs.abs()),
                    "seed {seed} {} {name}: {} V here, {theirs} V by ngspice",
                    broken.written(sheet),
                    ours.0
                );
                points += 1;
            }
        }
    }
    assert!(points > 500, "only {points} points were compared");
}
