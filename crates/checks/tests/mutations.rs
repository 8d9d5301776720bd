//! One fault put into a sound system by program gives exactly the findings expected of it, in each of the sound systems
//! of the test kit. The systems themselves are common practice of the trade; what is expected follows from the wiring
//! alone, not from what the checks say.

use checks::{Finding, analyse};
use circuit::Purpose;
use model::conductor::{Condition, EndingMethod, FittedBy, Size};
use model::kinds::supply::{DeviceState, FuseForm, GroundSurface};
use model::quantity::{Amps, Metres, Ohms, SquareMm, Watts};
use model::{End, Fact, Job, PartId, PartKind, Run, RunId, Sheet, SheetKind, TerminalRef};
use ordered::OrderedSet;

/// A sound system with what the engine says of its runs.
struct Sound {
    title: String,
    job: Job,
    sheet: Sheet,
    study: circuit::Study,
}

fn sound() -> Vec<Sound> {
    testkit::sound_systems::sound_systems()
        .into_iter()
        .map(|(title, text)| {
            let job = testkit::job(&text);
            let sheet = job.sheet(SheetKind::Plan).cloned().unwrap_or_default();
            let study = circuit::study(&sheet, &job.settings);
            Sound {
                title,
                job,
                sheet,
                study,
            }
        })
        .collect()
}

/// Every fourth of them, for faults that are put into every single run.
fn few() -> Vec<Sound> {
    sound().into_iter().step_by(4).collect()
}

/// What was found, as `check[?] tag tag …`.
fn told(system: &Sound, sheet: &Sheet) -> Vec<String> {
    analyse(sheet, &system.job.settings)
        .findings
        .iter()
        .map(|finding| tell(sheet, finding))
        .collect()
}

fn tell(sheet: &Sheet, finding: &Finding) -> String {
    let parts = finding.parts.iter().map(|id| sheet.parts[id].tag.clone());
    let runs = finding.runs.iter().map(|id| sheet.runs[id].tag.clone());
    let mark = if finding.undecided { "?" } else { "" };
    let tags: Vec<String> = parts.chain(runs).collect();
    format!("{}{mark} {}", finding.check, tags.join(" "))
}

impl Sound {
    fn purpose(&self, run: RunId) -> Purpose {
        self.study
            .runs
            .get(&run)
            .map(|flow| flow.purpose)
            .unwrap_or_default()
    }
    /// Runs that were added, of these purposes.
    fn added(&self, purposes: &[Purpose]) -> Vec<RunId> {
        self.sheet
            .runs
            .iter()
            .filter(|(id, run)| run.fitted_by != FittedBy::Maker && purposes.contains(&self.purpose(**id)))
            .map(|(id, _)| *id)
            .collect()
    }
    fn parts(&self, wanted: impl Fn(&PartKind) -> bool) -> Vec<PartId> {
        self.sheet
            .parts
            .iter()
            .filter(|(_, part)| wanted(&part.is) && part.fitted_by != FittedBy::Maker)
            .map(|(id, _)| *id)
            .collect()
    }
    fn tag(&self, part: PartId) -> &str {
        &self.sheet.parts[&part].tag
    }
    fn run_tag(&self, run: RunId) -> &str {
        &self.sheet.runs[&run].tag
    }
}

/// Collects what is not as expected, so that one run of a test shows all of it.
#[derive(Default)]
struct Book {
    wrong: Vec<String>,
    tried: usize,
}

impl Book {
    fn expect(&mut self, system: &Sound, fault: &str, sheet: &Sheet, expected: &[String]) {
        self.tried += 1;
        let found = told(system, sheet);
        let (mut a, mut b) = (found.clone(), expected.to_vec());
        a.sort();
        b.sort();
        if a != b {
            self.wrong.push(format!(
                "{}: {fault}\n    expected {expected:?}\n    found    {found:?}",
                system.title
            ));
        }
    }
    fn close(self, least: usize) {
        assert!(
            self.wrong.is_empty(),
            "{} of {} wrong:\n{}",
            self.wrong.len(),
            self.tried,
            self.wrong.join("\n")
        );
        assert!(self.tried >= least, "only {} faults were tried", self.tried);
    }
}

const EVERY: &[Purpose] = &[
    Purpose::Feed,
    Purpose::Return,
    Purpose::BetweenSources,
    Purpose::Speaker,
    Purpose::Signal,
    Purpose::TurnOn,
];
const SUPPLY: &[Purpose] = &[Purpose::Feed, Purpose::Return, Purpose::BetweenSources];

fn with_run(system: &Sound, run: RunId, change: impl FnOnce(&mut Run)) -> Sheet {
    let mut sheet = system.sheet.clone();
    change(sheet.runs.get_mut(&run).expect("a run of the sheet"));
    sheet
}

fn with_part(system: &Sound, part: PartId, change: impl FnOnce(&mut PartKind)) -> Sheet {
    let mut sheet = system.sheet.clone();
    change(&mut sheet.parts.get_mut(&part).expect("a part of the sheet").is);
    sheet
}

#[test]
fn the_systems_are_silent_before_anything_is_done_to_them() {
    for system in sound() {
        assert_eq!(told(&system, &system.sheet), [""; 0], "{}", system.title);
    }
}

#[test]
fn a_chafed_run_is_a_damaged_run() {
    let mut book = Book::default();
    for system in few() {
        for run in system.added(EVERY) {
            let sheet = with_run(&system, run, |run| {
                run.wire.condition = Fact::Given(Condition::Chafed)
            });
            let tag = system.run_tag(run);
            book.expect(
                &system,
                &format!("{tag} chafed"),
                &sheet,
                &[format!("damaged-run {tag}")],
            );
        }
    }
    book.close(100);
}

#[test]
fn a_run_cut_through_is_a_damaged_run_and_nothing_else() {
    let mut book = Book::default();
    for system in few() {
        for run in system.added(EVERY) {
            let sheet = with_run(&system, run, |run| {
                run.wire.condition = Fact::Given(Condition::Cut)
            });
            let tag = system.run_tag(run);
            book.expect(
                &system,
                &format!("{tag} cut"),
                &sheet,
                &[format!("damaged-run {tag}")],
            );
        }
    }
    book.close(100);
}

#[test]
fn an_end_twisted_by_hand_is_a_poor_ending() {
    let mut book = Book::default();
    for system in few() {
        for run in system.added(EVERY) {
            for side in 0..2 {
                let sheet = with_run(&system, run, |run| {
                    let ending = if side == 0 {
                        &mut run.from_ending
                    } else {
                        &mut run.to_ending
                    };
                    ending.method = Fact::Given(EndingMethod::Twisted);
                });
                let tag = system.run_tag(run);
                book.expect(
                    &system,
                    &format!("{tag} twisted"),
                    &sheet,
                    &[format!("poor-ending {tag}")],
                );
            }
        }
    }
    book.close(200);
}

#[test]
fn a_fuse_of_four_times_the_rating_outsizes_its_wire() {
    let mut book = Book::default();
    for system in sound() {
        for device in &system.study.devices {
            let (part, Some(rating)) = (device.device.part, device.rating) else {
                continue;
            };
            if !matches!(
                system.sheet.parts[&part].is,
                PartKind::Fuse(_) | PartKind::Breaker(_)
            ) {
                continue;
            }
            // A larger blade has less resistance and may meet its breaking capacity: bolt-in fuses have room there.
            if matches!(&system.sheet.parts[&part].is, PartKind::Fuse(fuse) if fuse.form != FuseForm::Strip61)
            {
                continue;
            }
            let sheet = with_part(&system, part, |kind| match kind {
                PartKind::Fuse(fuse) => fuse.rating = Fact::Given(rating * 4.0),
                PartKind::Breaker(breaker) => breaker.rating = Fact::Given(rating * 4.0),
                _ => {}
            });
            // Everything behind it that bears less, the weakest first.
            let mut thin: Vec<(f64, RunId)> = device
                .guards
                .iter()
                .filter(|run| {
                    system.study.protection[run]
                        .from
                        .iter()
                        .all(|from| from.protected || from.self_limiting)
                })
                .filter_map(|run| Some((system.study.runs[run].allowable?.0, *run)))
                .filter(|(bears, _)| *bears < rating.0 * 4.0)
                .collect();
            thin.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            let tags: Vec<&str> = thin.iter().map(|(_, run)| system.run_tag(*run)).collect();
            let tag = system.tag(part);
            let expected = if thin.is_empty() {
                Vec::new()
            } else {
                vec![format!("fuse-outsizes-wire {tag} {}", tags.join(" "))]
            };
            book.expect(&system, &format!("{tag} four times as large"), &sheet, &expected);
        }
    }
    book.close(30);
}

#[test]
fn a_fuse_of_half_the_lasting_current_is_undersized() {
    let mut book = Book::default();
    for system in sound() {
        for device in &system.study.devices {
            let part = device.device.part;
            let carried = device.current.rms.abs().0;
            if !matches!(
                system.sheet.parts[&part].is,
                PartKind::Fuse(_) | PartKind::Breaker(_)
            ) || carried < 2.0
            {
                continue;
            }
            let sheet = with_part(&system, part, |kind| match kind {
                PartKind::Fuse(fuse) => fuse.rating = Fact::Given(Amps(carried * 0.5)),
                PartKind::Breaker(breaker) => breaker.rating = Fact::Given(Amps(carried * 0.5)),
                _ => {}
            });
            let tag = system.tag(part);
            book.expect(
                &system,
                &format!("{tag} half the current"),
                &sheet,
                &[format!("fuse-undersized {tag}")],
            );
        }
    }
    book.close(25);
}

#[test]
fn a_blown_fuse_is_told_with_what_is_dead_behind_it() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Fuse(_) | PartKind::Breaker(_))) {
            let sheet = with_part(&system, part, |kind| match kind {
                PartKind::Fuse(fuse) => fuse.state = DeviceState::Open,
                PartKind::Breaker(breaker) => breaker.state = DeviceState::Open,
                _ => {}
            });
            let found = told(&system, &sheet);
            book.tried += 1;
            let tag = system.tag(part);
            let prefix = format!("no-feed {tag}");
            if found.len() != 1 || !found[0].starts_with(&prefix) {
                book.wrong
                    .push(format!("{}: {tag} blown: {found:?}", system.title));
            }
        }
    }
    book.close(30);
}

#[test]
fn a_bridged_or_bypassed_fuse_leaves_its_feed_unprotected() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Fuse(_) | PartKind::Breaker(_))) {
            let bridged = with_part(&system, part, |kind| match kind {
                PartKind::Fuse(fuse) => fuse.state = DeviceState::Bridged,
                PartKind::Breaker(breaker) => breaker.state = DeviceState::Bridged,
                _ => {}
            });
            let mut bypassed = system.sheet.clone();
            let mut run = Run::new(
                "BY",
                End::On(TerminalRef::new(part, "in")),
                End::On(TerminalRef::new(part, "out")),
            );
            run.wire.size = Fact::Given(Size::Metric(SquareMm(16.0)));
            run.wire.length = Fact::Given(Metres(0.2));
            bypassed.runs.insert(RunId(9000), run);
            for (fault, sheet) in [("bridged", bridged), ("bypassed", bypassed)] {
                let found = told(&system, &sheet);
                book.tried += 1;
                let between = system
                    .sheet
                    .runs_of(part)
                    .any(|(run, _)| system.purpose(run) == Purpose::BetweenSources);
                let name = if between {
                    "second-source"
                } else {
                    "feed-unprotected"
                };
                if found.len() != 1 || !found[0].starts_with(name) {
                    book.wrong.push(format!(
                        "{}: {} {fault}: {found:?}",
                        system.title,
                        system.tag(part)
                    ));
                }
            }
        }
    }
    book.close(60);
}

#[test]
fn a_main_fuse_out_of_reach_is_too_far() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Fuse(_) | PartKind::Breaker(_))) {
            // The run between it and a battery's pole.
            let stub = system.sheet.runs_of(part).find(|(_, run)| {
                run.ends().iter().filter_map(|end| end.terminal()).any(|at| {
                    at.terminal.as_str() == "+"
                        && matches!(system.sheet.parts[&at.part].is, PartKind::Battery(_))
                })
            });
            let Some((stub, _)) = stub else { continue };
            let sheet = with_run(&system, stub, |run| run.wire.length = Fact::Given(Metres(0.9)));
            let (tag, stub) = (system.tag(part), system.run_tag(stub));
            book.expect(
                &system,
                &format!("{tag} at 0.9 m"),
                &sheet,
                &[format!("fuse-too-far {tag} {stub}")],
            );
            let unknown = with_run(&system, system.sheet.run_by_tag(stub).expect("it").0, |run| {
                run.wire.length = Fact::Unknown;
            });
            let found = told(&system, &unknown);
            book.tried += 1;
            if !found.contains(&format!("fuse-too-far? {tag} {stub}"))
                || found.iter().any(|f| !f.contains('?'))
            {
                book.wrong
                    .push(format!("{}: length of {stub} unknown: {found:?}", system.title));
            }
        }
    }
    book.close(60);
}

#[test]
fn grounds_on_paint_and_on_belt_anchors_are_told_as_that() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Ground(_))) {
            for (surface, check) in [
                (Fact::Given(GroundSurface::Painted), "ground-surface"),
                (Fact::Given(GroundSurface::Hinge), "ground-surface"),
                (Fact::Given(GroundSurface::BeltAnchor), "ground-forbidden"),
                (Fact::Given(GroundSurface::SeatRail), "ground-forbidden"),
                (Fact::Unknown, "ground-forbidden?"),
            ] {
                let sheet = with_part(&system, part, |kind| {
                    if let PartKind::Ground(ground) = kind {
                        ground.surface = surface;
                    }
                });
                let tag = system.tag(part);
                book.expect(
                    &system,
                    &format!("{tag} on {surface:?}"),
                    &sheet,
                    &[format!("{check} {tag}")],
                );
            }
        }
    }
    book.close(100);
}

#[test]
fn a_run_taken_out_leaves_what_hangs_on_it_without() {
    let mut book = Book::default();
    for system in few() {
        for run in system.added(EVERY) {
            // An isolator finds its own negative.
            let on_isolator = system.sheet.runs[&run]
                .ends()
                .iter()
                .filter_map(|end| end.terminal())
                .any(|at| {
                    at.terminal.as_str() == "-"
                        && matches!(system.sheet.parts[&at.part].is, PartKind::Isolator(_))
                });
            if on_isolator {
                continue;
            }
            let mut sheet = system.sheet.clone();
            sheet.runs.remove(&run);
            let found = told(&system, &sheet);
            book.tried += 1;
            let names: OrderedSet<&str> = found
                .iter()
                .map(|f| f.split([' ', '?']).next().unwrap_or_default())
                .collect();
            let fits = match system.purpose(run) {
                // A second battery may go on feeding what is behind a link.
                Purpose::BetweenSources => names.is_empty() || names == OrderedSet::from(["no-feed"]),
                Purpose::Feed => names == OrderedSet::from(["no-feed"]),
                Purpose::Return => names == OrderedSet::from(["no-return"]),
                Purpose::Speaker => {
                    names.len() == 1
                        && names
                            .iter()
                            .all(|n| ["silent-speaker", "uneven-coils"].contains(n))
                }
                Purpose::Signal => names == OrderedSet::from(["no-signal"]),
                Purpose::TurnOn => names.is_empty() || names == OrderedSet::from(["no-turn-on"]),
                Purpose::Nothing => names.is_empty(),
            };
            if !fits || found.len() > 2 {
                book.wrong.push(format!(
                    "{}: {} ({:?}) taken out: {found:?}",
                    system.title,
                    system.run_tag(run),
                    system.purpose(run)
                ));
            }
        }
    }
    book.close(100);
}

#[test]
fn a_size_that_nobody_knows_is_asked_for_and_decides_nothing() {
    let mut book = Book::default();
    for system in few() {
        for run in system.added(SUPPLY) {
            let sheet = with_run(&system, run, |run| run.wire.size = Fact::Unknown);
            let found = told(&system, &sheet);
            book.tried += 1;
            let tag = system.run_tag(run);
            let about = |f: &String| {
                f.split(' ').any(|word| word == tag)
                    && (f.split(' ').next().is_some_and(|c| c.ends_with('?')) || f.starts_with("not-known"))
            };
            if found.is_empty() || found.len() > 2 || !found.iter().all(about) {
                book.wrong
                    .push(format!("{}: size of {tag} unknown: {found:?}", system.title));
            }
        }
    }
    book.close(40);
}

#[test]
fn a_long_or_thin_ground_lead_of_an_amplifier_is_told_once() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Amplifier(_))) {
            let at = TerminalRef::new(part, "-");
            let lead = system
                .sheet
                .runs_of(part)
                .find(|(_, run)| run.ends().iter().any(|end| end.terminal() == Some(&at)))
                .map(|(id, _)| id)
                .expect("every amplifier of a sound system has a ground");
            let (amplifier, tag) = (system.tag(part), system.run_tag(lead));
            let long = with_run(&system, lead, |run| run.wire.length = Fact::Given(Metres(1.2)));
            book.expect(
                &system,
                &format!("{tag} 1.2 m"),
                &long,
                &[format!("return-too-long {amplifier} {tag}")],
            );
            let thin = with_run(&system, lead, |run| {
                run.wire.size = Fact::Given(Size::Metric(SquareMm(6.0)))
            });
            book.expect(
                &system,
                &format!("{tag} 6 mm²"),
                &thin,
                &[format!("return-too-thin {tag}")],
            );
        }
    }
    book.close(40);
}

#[test]
fn swapped_wires_at_one_speaker_of_a_pair_reverse_it() {
    let mut book = Book::default();
    for system in sound() {
        let speakers = system.parts(|kind| matches!(kind, PartKind::Speaker(_)));
        for part in &speakers {
            let PartKind::Speaker(speaker) = &system.sheet.parts[part].is else {
                continue;
            };
            let mut sheet = system.sheet.clone();
            for run in sheet.runs.values_mut() {
                for end in [&mut run.from, &mut run.to] {
                    if let End::On(at) = end
                        && at.part == *part
                    {
                        let name = at.terminal.as_str();
                        let turned = if name.ends_with('+') {
                            name.replace('+', "-")
                        } else {
                            name.replace('-', "+")
                        };
                        *at = TerminalRef::new(*part, turned);
                    }
                }
            }
            let tag = system.tag(*part);
            let found = told(&system, &sheet);
            book.tried += 1;
            // A subwoofer on its own has no partner to disagree with.
            let fits = if speaker.coils == 2 || speaker.band == model::kinds::sound::Band::Sub {
                found.is_empty()
            } else {
                found.len() == 1 && found[0].starts_with(&format!("reversed-speaker {tag} "))
            };
            if !fits {
                book.wrong
                    .push(format!("{}: {tag} swapped: {found:?}", system.title));
            }
        }
    }
    book.close(80);
}

#[test]
fn a_weak_or_low_speaker_is_told_as_that() {
    let mut book = Book::default();
    for system in sound() {
        for part in system.parts(|kind| matches!(kind, PartKind::Speaker(_))) {
            let tag = system.tag(part);
            let weak = with_part(&system, part, |kind| {
                if let PartKind::Speaker(speaker) = kind {
                    speaker.power = Fact::Given(Watts(3.0));
                }
            });
            book.expect(
                &system,
                &format!("{tag} bears 3 W"),
                &weak,
                &[format!("speaker-overpowered {tag}")],
            );
            let unknown = with_part(&system, part, |kind| {
                if let PartKind::Speaker(speaker) = kind {
                    speaker.impedance = Fact::Unknown;
                }
            });
            book.expect(
                &system,
                &format!("{tag} of unknown impedance"),
                &unknown,
                &[format!("load-too-low? {tag}")],
            );
            let low = with_part(&system, part, |kind| {
                if let PartKind::Speaker(speaker) = kind {
                    speaker.impedance = Fact::Given(Ohms(0.5));
                }
            });
            let found: Vec<String> = told(&system, &low)
                .into_iter()
                .filter(|f| !f.starts_with("lead-loss"))
                .collect();
            book.tried += 1;
            if found.len() != 1 || !found[0].starts_with("load-too-low ") {
                book.wrong
                    .push(format!("{}: {tag} of 0.5 Ω: {found:?}", system.title));
            }
        }
    }
    book.close(250);
}

#[test]
fn a_radio_plug_that_is_apart_is_one_finding() {
    let mut book = Book::default();
    for system in sound() {
        for (id, part) in &system.sheet.parts {
            if !matches!(part.is, PartKind::Plug(_))
                || !system
                    .sheet
                    .parts
                    .values()
                    .any(|p| matches!(p.is, PartKind::HeadUnit(_)))
            {
                continue;
            }
            let sheet = with_part(&system, *id, |kind| {
                if let PartKind::Plug(plug) = kind {
                    plug.mated = false;
                }
            });
            book.expect(
                &system,
                &format!("{} apart", part.tag),
                &sheet,
                &[format!("no-feed {} H1", part.tag)],
            );
        }
    }
    book.close(20);
}
