//! Systems that lie in the body of a car, of each form, and single faults in how they are fixed and laid. What is expected
//! follows from the route of each run and from what was changed, not from what the checks say. The rules themselves are
//! common practice of the trade and ISO 10133:2012 clause 7, as their pages name them.

use body::{Plan, route_all};
use checks::{Finding, Grade, analyse};
use model::body::{BatteryPlace, BodyForm, DriveSide, OwnPassage, OwnPlace, PassageKind};
use model::fact::Fact::{Given, Unknown};
use model::laying::Guard;
use model::quantity::Metres;
use model::{Job, RunId, Sheet, SheetKind};

/// Where the amplifier stands in each form: beside what may lie behind, since nobody looked yet.
fn amplifier_place(form: BodyForm, drive: DriveSide) -> &'static str {
    match (form, drive) {
        (BodyForm::Van, _) => "partition-left",
        (BodyForm::Camper, _) => "cupboard-left",
        (BodyForm::PickUp, _) => "cab-back-left",
        (_, DriveSide::Left) => "side-left",
        (_, DriveSide::Right) => "side-right",
    }
}

/// A front pair in the doors on an amplifier behind, its way laid by the router, each passage guarded as the trade does.
fn laid(form: BodyForm, drive: DriveSide, battery: BatteryPlace) -> Job {
    let at = amplifier_place(form, drive);
    let head = match drive {
        DriveSide::Left => "dash-left",
        DriveSide::Right => "dash-right",
    };
    let text = format!(
        "body {} {} {}\n\
        conditions loud\n\
        battery B1 agm 70Ah cranking=640A place=battery-tray by=maker\n\
        ground E1 bare place=battery-tray by=maker\n\
        fuse F1 \"Main fuse\" strip61 60A place=battery-tray mounted=bracket\n\
        fuse F2 regular 10A place={head}\n\
        ground E2 bare place={at}\n\
        ground E3 makers-point place={head} by=maker\n\
        head H1 speaker-outputs=0 line-outputs=2 place={head}\n\
        amplifier A1 sections=\"2x 60W@4ohm min 4ohm hp 80Hz\" ab input-level=line inputs=2 own-fuse=25A place={at} \
        mounted=body fixing-holes=4 screws=4 square=yes\n\
        speaker LS1 4ohm power=80W full front-left place=door-left\n\
        speaker LS2 4ohm power=80W full front-right place=door-right\n\
        run W1 B1.+ F1.in 35mm2 RD copper ends=ring/ring\n\
        run W2 F1.out A1.+ 35mm2 RD copper ends=ring/ferrule\n\
        run W3 A1.- E2.stud 35mm2 BK copper ends=ferrule/ring\n\
        run W4 B1.- E1.stud 50mm2 BK ends=ring/ring by=maker\n\
        run W5 F1.out F2.in 16mm2 RD copper ends=ring/spade\n\
        run W6 F2.out H1.30 2.5mm2 YE copper ends=spade/butt\n\
        run W7 F2.out H1.15 2.5mm2 RD copper ends=spade/butt\n\
        run W8 H1.31 E3.stud 2.5mm2 BK copper ends=butt/ring\n\
        run W9 H1.front-l A1.in1 0.35mm2 WH ends=plug/plug\n\
        run W10 H1.front-r A1.in2 0.35mm2 RD ends=plug/plug\n\
        run W11 H1.rem A1.rem 0.75mm2 BUWH copper ends=butt/ferrule\n\
        run W12 A1.out1+ LS1.+ 2.5mm2 WH copper ends=ferrule/spade\n\
        run W13 A1.out1- LS1.- 2.5mm2 WHBK copper ends=ferrule/spade\n\
        run W14 A1.out2+ LS2.+ 2.5mm2 GY copper ends=ferrule/spade\n\
        run W15 A1.out2- LS2.- 2.5mm2 GYBK copper ends=ferrule/spade\n",
        form.word(),
        drive.word(),
        battery.word(),
    );
    let mut job = testkit::job(&text);
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let routed = route_all(&plan, sheet(&job), SheetKind::Plan);
    assert!(routed.without.is_empty(), "{:?}", routed.without);
    job.apply(routed.edit);
    let plan_sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
    for run in plan_sheet.runs.values_mut() {
        for name in &run.route {
            let Some(passage) = plan.passage(name) else {
                continue;
            };
            let guard = match passage.kind.value() {
                Some(PassageKind::Grommet | PassageKind::Hole) => Guard::Grommet,
                Some(PassageKind::Gaiter) => Guard::Gaiter,
                _ => continue,
            };
            run.laying.guards.0.insert(name.clone(), guard);
        }
        run.laying.support_spacing = Given(Metres(0.4));
    }
    job
}

fn sheet(job: &Job) -> &Sheet {
    job.sheet(SheetKind::Plan).expect("it is there")
}

fn all() -> Vec<(String, Job)> {
    let mut all = Vec::new();
    for form in BodyForm::ALL {
        for drive in DriveSide::ALL {
            for battery in BatteryPlace::ALL {
                let title = format!("{} {} {}", form.word(), drive.word(), battery.word());
                all.push((title, laid(*form, *drive, *battery)));
            }
        }
    }
    all
}

fn tell(sheet: &Sheet, finding: &Finding) -> String {
    let parts = finding.parts.iter().map(|id| sheet.parts[id].tag.clone());
    let runs = finding.runs.iter().map(|id| sheet.runs[id].tag.clone());
    let tags: Vec<String> = parts.chain(runs).collect();
    let mark = if finding.undecided { "?" } else { "" };
    format!("{}{mark} {}", finding.check, tags.join(" "))
}

/// What was found, as `check[?] tag tag …`, those of a sound system left out that are good practice only.
fn told(job: &Job) -> Vec<String> {
    let findings = analyse(sheet(job), &job.settings).findings;
    findings.iter().map(|finding| tell(sheet(job), finding)).collect()
}

/// What the changed job has beyond what was found before.
fn new(before: &[String], changed: &Job) -> Vec<String> {
    let found = told(changed).into_iter();
    found.filter(|found| !before.contains(found)).collect()
}

fn run_mut(job: &mut Job, id: RunId) -> &mut model::Run {
    let sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
    sheet.runs.get_mut(&id).expect("it is there")
}

#[test]
fn sound_systems_in_every_body_have_nothing_to_stop_or_fix() {
    let mut wrong = String::new();
    for (title, job) in all() {
        for finding in analyse(sheet(&job), &job.settings).findings {
            if finding.grade != Grade::Tidy {
                wrong.push_str(&format!(
                    "{title}: {} {}\n",
                    tell(sheet(&job), &finding),
                    finding.what
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}

/// Each change alone, in each system: what is new must be exactly what is expected.
#[derive(Default)]
struct Book {
    tried: usize,
    wrong: String,
}

impl Book {
    fn expect(&mut self, title: &str, what: &str, before: &[String], changed: &Job, expected: &[String]) {
        self.tried += 1;
        let mut found = new(before, changed);
        let mut expected = expected.to_vec();
        found.sort();
        expected.sort();
        if found != expected {
            self.wrong.push_str(&format!(
                "{title}, {what}:\n  expected {expected:?}\n  found    {found:?}\n"
            ));
        }
    }
    fn close(self, least: usize) {
        assert!(self.wrong.is_empty(), "{}", self.wrong);
        assert!(self.tried >= least, "only {} were tried", self.tried);
    }
}

/// A passage by name and kind.
type Through = (String, Option<PassageKind>);

/// Of each run that we laid: its id, its tag, and the passages of its way by name and kind.
fn ways(job: &Job) -> Vec<(RunId, String, Vec<Through>)> {
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let runs = sheet(job).runs.iter().filter(|(_, run)| !run.route.is_empty());
    runs.map(|(id, run)| {
        let passages = run.route.iter().filter_map(|name| plan.passage(name));
        let kinds = passages.map(|it| (it.name.clone(), it.kind.value())).collect();
        (*id, run.tag.clone(), kinds)
    })
    .collect()
}

#[test]
fn a_guard_that_is_missing_or_not_known_is_told_where_it_is() {
    use PassageKind::{Gaiter, Grommet, Hole};
    let mut book = Book::default();
    for (title, sound) in all() {
        let before = told(&sound);
        for (id, tag, passages) in ways(&sound) {
            for (name, kind) in passages {
                let (check, through_metal) = match kind {
                    Some(Grommet | Hole) => ("bare-edge", true),
                    Some(Gaiter) => ("moving-joint", false),
                    _ => continue,
                };
                let mut bare = sound.clone();
                run_mut(&mut bare, id)
                    .laying
                    .guards
                    .0
                    .insert(name.clone(), Guard::Nothing);
                book.expect(
                    &title,
                    &format!("{tag} bare in {name}"),
                    &before,
                    &bare,
                    &[format!("{check} {tag}")],
                );
                let mut unknown = sound.clone();
                run_mut(&mut unknown, id).laying.guards.0.remove(&name);
                book.expect(
                    &title,
                    &format!("{tag} in {name}"),
                    &before,
                    &unknown,
                    &[format!("{check}? {tag}")],
                );
                let mut tube = sound.clone();
                run_mut(&mut tube, id)
                    .laying
                    .guards
                    .0
                    .insert(name.clone(), Guard::Tube);
                // The bulkhead's grommets, and a pick-up's below the cab, lead outside; holes within the body do not.
                let opens = name.starts_with("bulkhead-grommet") || name.starts_with("cab-grommet");
                let expected = match (through_metal, opens) {
                    (true, true) => vec![format!("water-way {tag}")],
                    (true, false) => vec![],
                    (false, _) => vec![format!("{check} {tag}")],
                };
                book.expect(
                    &title,
                    &format!("{tag} in a tube in {name}"),
                    &before,
                    &tube,
                    &expected,
                );
            }
        }
    }
    book.close(300);
}

#[test]
fn what_is_told_of_a_passage_touches_every_run_in_it_and_no_other() {
    let mut book = Book::default();
    for (title, sound) in all().into_iter().step_by(3) {
        let before = told(&sound);
        let ways = ways(&sound);
        let mut names: Vec<(String, Option<PassageKind>)> = Vec::new();
        for (_, _, passages) in &ways {
            names.extend(
                passages
                    .iter()
                    .filter(|it| !names.contains(it))
                    .cloned()
                    .collect::<Vec<_>>(),
            );
        }
        for (name, kind) in names {
            let through = ways
                .iter()
                .filter(|(_, _, passages)| passages.iter().any(|it| it.0 == name));
            let tags: Vec<String> = through.map(|(_, tag, _)| tag.clone()).collect();
            let tell = |how: fn(&mut OwnPassage)| {
                let mut changed = sound.clone();
                how(changed.settings.body.passages.entry(name.clone()).or_default());
                changed
            };
            let each = |check: &str| {
                tags.iter()
                    .map(|tag| format!("{check} {tag}"))
                    .collect::<Vec<_>>()
            };
            let airbag = tell(|it| it.airbag = Given(true));
            book.expect(
                &title,
                &format!("airbag in {name}"),
                &before,
                &airbag,
                &each("airbag-way"),
            );
            let guarded = matches!(
                kind,
                Some(PassageKind::Grommet | PassageKind::Hole | PassageKind::Gaiter)
            );
            // A grommet or gaiter bears no weight; where nothing was told, it is asked.
            let crush = tell(|it| it.crush = Given(true));
            let expected = each(if guarded { "crush" } else { "crush?" });
            book.expect(&title, &format!("crush in {name}"), &before, &crush, &expected);
            let sharp = tell(|it| it.sharp = Given(true));
            let expected = if guarded { Vec::new() } else { each("bare-edge?") };
            book.expect(
                &title,
                &format!("sharp edges in {name}"),
                &before,
                &sharp,
                &expected,
            );
            if kind != Some(PassageKind::Gaiter) {
                let moving = tell(|it| it.moving = Given(true));
                // A grommet is no gaiter.
                let expected = each(if guarded { "moving-joint" } else { "moving-joint?" });
                book.expect(&title, &format!("{name} moves"), &before, &moving, &expected);
            }
        }
    }
    book.close(200);
}

#[test]
fn how_a_part_is_fixed_and_where_is_told_of_that_part() {
    let mut book = Book::default();
    let set = |job: &Job, tag: &str, property: &str, value: &str| {
        let mut changed = job.clone();
        let sheet = changed.sheets.get_mut(&SheetKind::Plan).expect("it is there");
        let id = sheet.part_by_tag(tag).expect("it is there").0;
        let part = sheet.parts.get_mut(&id).expect("it is there");
        part.set_with(property).set(property, value).expect("it fits");
        changed
    };
    for (title, sound) in all() {
        let before = told(&sound);
        for (tag, property, value, expected) in [
            ("A1", "mounted", "seat-back", Some("mounted-on-moving A1")),
            ("A1", "mounted", "trim", Some("mounted-on-moving A1")),
            ("A1", "mounted", "board", None),
            ("A1", "mounted", "loose", Some("mounting-loose A1")),
            ("F1", "mounted", "door", Some("mounted-on-moving F1")),
            ("F1", "mounted", "trim", None),
            ("LS1", "mounted", "door", None),
            ("A1", "screws", "3", Some("mounting-loose A1")),
            ("A1", "screws", "2", Some("mounting-loose A1")),
            ("A1", "screws", "?", Some("mounting-loose? A1")),
            ("A1", "square", "no", Some("mounting-loose A1")),
            ("LS2", "screws", "4", Some("mounting-loose? LS2")),
        ] {
            let changed = set(&sound, tag, property, value);
            let expected: Vec<String> = expected.map(str::to_owned).into_iter().collect();
            book.expect(
                &title,
                &format!("{tag} {property}={value}"),
                &before,
                &changed,
                &expected,
            );
        }
        let form = sound.settings.body.shape.form.value().expect("it has one");
        let drive = sound.settings.body.shape.drive.value().expect("it has one");
        let mut tank = sound.clone();
        let told: &mut OwnPlace = tank
            .settings
            .body
            .places
            .entry(amplifier_place(form, drive).to_owned())
            .or_default();
        told.behind = Given(model::body::Behind::Tank);
        let both = ["blind-fixing? A1".to_owned(), "blind-fixing? E2".to_owned()];
        book.expect(&title, "a tank behind the amplifier", &before, &tank, &both);
        let blind = set(&tank, "A1", "looked-behind", "no");
        let one = ["blind-fixing A1".to_owned(), "blind-fixing? E2".to_owned()];
        book.expect(&title, "and nobody looked", &before, &blind, &one);
        let seen = set(
            &set(&tank, "A1", "looked-behind", "yes"),
            "E2",
            "looked-behind",
            "yes",
        );
        book.expect(&title, "and somebody looked", &before, &seen, &[]);
    }
    book.close(300);
}

#[test]
fn how_a_run_is_held_and_what_it_is_is_told_of_that_run() {
    let mut book = Book::default();
    for (title, sound) in all() {
        let before = told(&sound);
        for (id, tag, passages) in ways(&sound) {
            let change = |how: &dyn Fn(&mut model::Run)| {
                let mut changed = sound.clone();
                how(run_mut(&mut changed, id));
                changed
            };
            let hangs = change(&|run| run.laying.support_spacing = Given(Metres(0.9)));
            let laid = body::lay(sheet(&sound), &sound.settings);
            let long = laid.runs[&id].wire.length.value().expect("it has a way").0 > 0.45;
            let expected: Vec<String> = long.then(|| format!("unsupported {tag}")).into_iter().collect();
            book.expect(
                &title,
                &format!("{tag} held every 0.9 m"),
                &before,
                &hangs,
                &expected,
            );
            let asked = change(&|run| run.laying.support_spacing = Unknown);
            let expected: Vec<String> = long.then(|| format!("unsupported? {tag}")).into_iter().collect();
            book.expect(&title, &format!("{tag} held somehow"), &before, &asked, &expected);
            let opens = change(&|run| run.laying.opens_when = Given(model::laying::Moved::Doors));
            book.expect(
                &title,
                &format!("{tag} opens"),
                &before,
                &opens,
                &[format!("intermittent {tag}")],
            );
            let cool = change(&|run| run.wire.insulation = Given(model::quantity::Celsius(60.0)));
            let front = passages.iter().any(|it| it.0.starts_with("bulkhead-grommet"));
            let expected: Vec<String> = front.then(|| format!("hot-place {tag}")).into_iter().collect();
            if front || tag != "W2" && tag != "W5" {
                book.expect(&title, &format!("{tag} bears 60 °C"), &before, &cool, &expected);
            }
            // The maker's own runs are not judged for how they are laid. What is told of signal leads names the others then.
            if ["W9", "W10"].contains(&tag.as_str()) {
                continue;
            }
            let makers = change(&|run| {
                run.fitted_by = model::conductor::FittedBy::Maker;
                run.laying.support_spacing = Unknown;
                run.laying.guards.0 = ordered::OrderedMap::new();
            });
            book.expect(&title, &format!("{tag} is the maker's"), &before, &makers, &[]);
        }
        // 126 strands of 0.25 mm are 6.2 mm², which bears the fuse no more.
        let (id, _) = sheet(&sound).run_by_tag("W5").expect("it is there");
        let mut thin = sound.clone();
        let run = run_mut(&mut thin, id);
        (run.laying.strands, run.laying.strand) = (Given(126), Given(model::quantity::Millimetres(0.25)));
        let found = new(&before, &thin);
        book.tried += 1;
        let expected = ["false-size W5".to_owned(), "fuse-outsizes-wire F1 W5".to_owned()];
        if !found.contains(&expected[0]) || found.iter().any(|it| !expected.contains(it)) {
            book.wrong.push_str(&format!("{title}, thin W5: {found:?}\n"));
        }
        let mut half = sound.clone();
        run_mut(&mut half, id).laying.strands = Given(126);
        book.expect(
            &title,
            "W5 counted",
            &before,
            &half,
            &["false-size? W5".to_owned()],
        );
    }
    book.close(800);
}

#[test]
fn signal_leads_belong_together_and_apart_from_feeds() {
    let mut seen = (0, 0);
    for (title, sound) in all() {
        let id = |tag: &str| sheet(&sound).run_by_tag(tag).expect("it is there").0;
        let [first, second] = [id("W9"), id("W10")];
        let plan = Plan::of(&sound.settings.body).expect("it has a form");
        let offered = body::propose(&plan, sheet(&sound), second);
        // On the second best way, which differs in more than a corner, it is away from its sibling.
        if let Some(other) = offered.get(1) {
            let mut apart = sound.clone();
            run_mut(&mut apart, second).route = other.route.clone();
            let found = told(&apart);
            let scattered = found.iter().any(|it| it.starts_with("signal-scattered A1"));
            let far = other
                .walk
                .places()
                .filter_map(|at| plan.places.get(at))
                .filter(|place| {
                    sheet(&sound).runs[&first]
                        .route
                        .iter()
                        .all(|name| *name != place.name)
                })
                .count();
            assert!(scattered || far == 0, "{title}: {found:?} on {:?}", other.route);
            seen.0 += usize::from(scattered);
        }
        // On the way of the amplifier's feed from where that comes into the cabin.
        let mut beside = sound.clone();
        run_mut(&mut beside, first).route = sheet(&sound).runs[&id("W2")].route.clone();
        let way = body::lay(sheet(&beside), &beside.settings).runs[&id("W2")]
            .wire
            .length;
        let found = told(&beside);
        let marked = found
            .iter()
            .any(|it| it.starts_with("signal-beside-feed") && it.contains("W9"));
        // All of the feed but its ends is shared: beyond a metre that is too much.
        let shared = way.value().expect("it has a way").0 - 0.3;
        assert_eq!(marked, shared > 1.0, "{title}: {shared} m, {found:?}");
        seen.1 += usize::from(marked);
    }
    assert!(seen.0 >= 6 && seen.1 >= 12, "{seen:?}");
}

#[test]
fn every_mend_of_workmanship_clears_its_finding_and_brings_nothing_to_stop_or_fix() {
    let mut wrong = String::new();
    let mut mends = 0;
    for (title, sound) in all().into_iter().step_by(4) {
        let mut broken = sound.clone();
        for (id, _, passages) in ways(&sound) {
            let run = run_mut(&mut broken, id);
            for (name, _) in passages {
                run.laying.guards.0.insert(name, Guard::Nothing);
            }
            run.laying.support_spacing = Given(Metres(1.0));
            run.laying.opens_when = Given(model::laying::Moved::Flexed);
        }
        let before = told(&broken);
        for finding in analyse(sheet(&broken), &broken.settings).findings {
            for mend in &finding.mends {
                mends += 1;
                let mut mended = broken.clone();
                let undo = mended.apply(checks::mend_for(&broken, SheetKind::Plan, mend));
                let after = new(&before, &mended);
                let gone = !told(&mended).contains(&tell(sheet(&broken), &finding));
                if !gone || !after.is_empty() {
                    wrong.push_str(&format!(
                        "{title}: {} by `{}`: {after:?}\n",
                        tell(sheet(&broken), &finding),
                        mend.name
                    ));
                }
                mended.apply(undo);
                assert_eq!(mended, broken, "{title}: `{}` undone", mend.name);
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
    assert!(mends >= 40, "only {mends}");
}

#[test]
fn a_sheet_without_a_body_is_asked_nothing() {
    for (title, mut job) in all() {
        job.settings.body = model::body::Body::default();
        let sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
        for run in sheet.runs.values_mut() {
            run.laying.guards.0 = ordered::OrderedMap::new();
            run.laying.support_spacing = Unknown;
        }
        let found = told(&job);
        let asked = [
            "bare-edge",
            "crush",
            "moving-joint",
            "airbag",
            "blind",
            "mount",
            "unsupported",
            "water",
            "signal-",
        ];
        let asked = found
            .iter()
            .filter(|it| asked.iter().any(|check| it.starts_with(check)));
        assert_eq!(asked.count(), 0, "{title}: {found:?}");
    }
}

#[test]
fn an_amplifier_on_a_seat_back_is_moved_to_the_one_place_that_is_left() {
    let job = testkit::job(
        "body estate\n\
        amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=seat-back-left\n\
        speaker LS1 4ohm power=80W place=side-left\n\
        run W1 A1.out1+ LS1.+ 2.5mm2 WH route=seat-back-load-left/floor-way-left guards=seat-back-load-left:nothing support-spacing=0.4m\n\
        run W2 A1.out1- LS1.- 2.5mm2 WHBK route=seat-back-load-left/floor-way-left guards=seat-back-load-left:nothing support-spacing=0.4m",
    );
    assert_eq!(
        told(&job),
        ["mounted-on-moving A1", "moving-joint W1", "moving-joint W2"]
    );
    let analysis = analyse(sheet(&job), &job.settings);
    let finding = analysis
        .findings
        .iter()
        .find(|it| it.check == "mounted-on-moving")
        .expect("it is there");
    let [mend] = &finding.mends[..] else {
        panic!("one mend")
    };
    let mut mended = job.clone();
    mended.apply(checks::mend_for(&job, SheetKind::Plan, mend));
    let (_, amplifier) = sheet(&mended).part_by_tag("A1").expect("it is there");
    assert_eq!(amplifier.place.as_deref(), Some("load-floor"));
    assert_eq!(sheet(&mended).runs[&RunId(1)].route, ["floor-way-left"]);
    assert_eq!(told(&mended), [""; 0]);
}
