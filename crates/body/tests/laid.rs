//! What a sheet says once it is laid in the body.

use body::{lay, settle};
use model::conductor::Surroundings;
use model::fact::Fact::{Assumed, Computed, Given};
use model::quantity::{Celsius, Metres};
use model::{Edit, Fact, Job, PartKind, RunId, Sheet, SheetKind};
use proptest::prelude::*;
use std::borrow::Cow;

const ROUTED: &str = "body estate\n\
    battery B1 place=battery-tray\n\
    fuse F1 60A place=battery-tray\n\
    amplifier A1 place=load-floor\n\
    ground G1 place=load-floor\n\
    ground G2\n\
    run W1 B1.+ F1.in 16mm2\n\
    run W2 F1.out A1.+ 16mm2 route=battery-bulkhead/bulkhead-grommet-left/sill-front-left/sill-rear-left/arch-way-left/floor-way-left\n\
    run W3 A1.- G1.stud 16mm2 0.4m\n\
    run W4 B1.- G2.stud 16mm2 route=bulkhead-left\n\
    run W5 A1.out1+ loose@0,0 2.5mm2 route=floor-way-left/side-left\n\
    run W6 A1.out1- loose@0,0 2.5mm2\n";

fn sheet(job: &Job) -> &Sheet {
    job.sheet(SheetKind::Plan).expect("it is there")
}

#[test]
fn lengths_surroundings_and_bundles_follow_from_the_routes() {
    let job = testkit::job(ROUTED);
    let laid = lay(sheet(&job), &job.settings);
    let wire = |id: u32| &laid.runs[&RunId(id)].wire;
    // At one place: 0.3 m, ends and all.
    assert_eq!(wire(1).length, Computed(Metres(0.3)));
    // Worked by hand in the test of the forms.
    assert_eq!(wire(2).length, Computed(Metres(5.88)));
    // What was measured wins; its surroundings follow all the same.
    assert_eq!(wire(3).length, Given(Metres(0.4)));
    assert_eq!(wire(3).surroundings, Computed(Surroundings::LoadArea));
    assert_eq!(wire(2).surroundings, Computed(Surroundings::EngineBay));
    // W2 and W4 are both supply and share no passage but one: from the battery tray to the bulkhead.
    assert_eq!((wire(2).bundle, wire(4).bundle), (Computed(2), Computed(2)));
    // A speaker lead is laid by its route alone; the one beside it, which has none, stays as it is.
    assert_eq!(wire(5).length, Computed(Metres(1.28)));
    assert_eq!(wire(5).bundle, Assumed(1));
    assert_eq!(wire(6), &sheet(&job).runs[&RunId(6)].wire);
}

#[test]
fn the_warmest_place_is_that_under_the_settings_temperatures() {
    let mut job = testkit::job(
        "body estate\nground G1 place=under-rear-seat-left\nground G2 place=load-floor\nrun W1 G1.stud G2.stud route=seat-load-left",
    );
    let warmest = |job: &Job| lay(sheet(job), &job.settings).runs[&RunId(1)].wire.surroundings;
    job.settings.conditions.load_area = Given(Celsius(60.0));
    assert_eq!(warmest(&job), Computed(Surroundings::LoadArea));
    job.settings.conditions.cabin = Given(Celsius(70.0));
    assert_eq!(warmest(&job), Computed(Surroundings::Cabin));
}

#[test]
fn body_metal_follows_from_where_a_ground_point_is() {
    let job = testkit::job(ROUTED);
    let laid = lay(sheet(&job), &job.settings);
    let metal = |tag: &str| match &laid.part_by_tag(tag).expect("it is there").1.is {
        PartKind::Ground(ground) => ground.body,
        _ => panic!("not a ground point"),
    };
    // From (1.0275, 0.37, 0.75) to (4.13875, 0.925, 0.55): 3.1666 m. Spreading 0.1374 mΩ, and 0.125 mΩ a metre.
    let Computed(ohms) = metal("G1") else {
        panic!("{:?}", metal("G1"))
    };
    assert!(
        (ohms.0 - (0.1374e-3 + 0.125e-3 * 3.1666)).abs() < 1e-7,
        "{ohms:?}"
    );
    assert!(metal("G2").is_assumed(), "nobody says where it is");
}

#[test]
fn where_nothing_follows_the_sheet_itself_is_given_back() {
    for text in [
        "body estate\nground G1\nground G2\nrun W1 G1.stud G2.stud",
        "ground G1 place=load-floor\nground G2 place=load-floor\nrun W1 G1.stud G2.stud route=sill-left",
        "body estate\nbattery B1 place=attic\nload L1\nrun W1 B1.+ L1.+ route=sill-middle",
    ] {
        let job = testkit::job(text);
        assert!(
            matches!(lay(sheet(&job), &job.settings), Cow::Borrowed(_)),
            "{text}"
        );
    }
}

#[test]
fn what_was_computed_goes_into_no_edit() {
    let job = testkit::job(ROUTED);
    let laid = lay(sheet(&job), &job.settings);
    let mut run = laid.runs[&RunId(2)].clone();
    run.wire.condition = Given(model::conductor::Condition::Sound);
    let new = model::Run {
        tag: "W9".to_owned(),
        ..run.clone()
    };
    let put = |id: u32, run: model::Run| model::Change::Run {
        sheet: SheetKind::Plan,
        id: RunId(id),
        to: Some(Box::new(run)),
    };
    let mut edit = Edit::new("", vec![put(2, run), put(9, new)]);
    settle(&mut edit, sheet(&job));
    let mut job = job;
    job.apply(edit);
    let length = |id: u32| sheet(&job).runs[&RunId(id)].wire.length;
    assert_eq!(
        (length(2), length(9)),
        (Assumed(Metres(1.0)), Assumed(Metres(5.88)))
    );
}

fn is_computed(run: &model::Run) -> bool {
    run.wire.length.is_computed() || run.wire.surroundings.is_computed() || run.wire.bundle.is_computed()
}

proptest! {
    /// Whatever a job tells of body, places and routes: laying it panics nowhere, changes no given value, is the same a
    /// second time, and laying what was laid changes nothing more.
    #[test]
    fn any_job_is_laid(job in testkit::any::any_job(), form in proptest::sample::select(model::body::BodyForm::ALL)) {
        let mut job = job;
        job.settings.body.shape.form = Given(form);
        let plan = body::Plan::of(&job.settings.body).expect("it has a form");
        let names: Vec<String> = plan.places.iter().map(|it| it.name.clone())
            .chain(plan.passages.iter().map(|it| it.name.clone())).collect();
        // Places and routes that mean something, spread over what there is.
        for sheet in job.sheets.values_mut() {
            for (at, part) in sheet.parts.values_mut().enumerate() {
                part.place = names.get(at * 7 % plan.places.len()).cloned();
            }
            for (at, run) in sheet.runs.values_mut().enumerate() {
                run.route = (0..at % 4).filter_map(|step| names.get((at * 13 + step * 29) % names.len()).cloned()).collect();
            }
        }
        for sheet in job.sheets.values() {
            prop_assert!(!sheet.runs.values().any(is_computed));
            let laid = lay(sheet, &job.settings);
            prop_assert_eq!(&laid, &lay(sheet, &job.settings));
            prop_assert_eq!(&lay(&laid, &job.settings), &laid);
            for (id, run) in &sheet.runs {
                let after = &laid.runs[id];
                if let Fact::Given(_) = run.wire.length {
                    prop_assert_eq!(run.wire.length, after.wire.length);
                }
                if let Computed(length) = after.wire.length {
                    prop_assert!(length.0.is_finite() && length.0 >= 0.0);
                }
            }
        }
    }
}
