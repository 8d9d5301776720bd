//! How parts are fixed, how runs are held and what they are, and the mends of all of it.

use crate::systems::{Book, all, amplifier_place, new, run_mut, sheet, tell, told, ways};
use checks::analyse;
use model::body::OwnPlace;
use model::fact::Fact::{Given, Unknown};
use model::laying::Guard;
use model::quantity::Metres;
use model::{Job, RunId, SheetKind};

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
            ("A1", "loose-metal", "yes", Some("loose-metal A1")),
            ("A1", "loose-metal", "no", None),
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
            for mend in finding.mends.iter().map(|mend| &mend.edit) {
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
    mended.apply(checks::mend_for(&job, SheetKind::Plan, &mend.edit));
    let (_, amplifier) = sheet(&mended).part_by_tag("A1").expect("it is there");
    assert_eq!(amplifier.place.as_deref(), Some("load-floor"));
    assert_eq!(sheet(&mended).runs[&RunId(1)].route, ["floor-way-left"]);
    assert_eq!(told(&mended), [""; 0]);
}
