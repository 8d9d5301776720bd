//! An analysis of a sheet that lies in the vehicle's body: places and routes decide lengths, warmth and body metal.

use checks::analyse;
use model::fact::Fact::{Computed, Given};
use model::kinds::PartKind;
use model::{Change, Fact, Job, RunId, Sheet, SheetKind};

const SYSTEM: &str = "body estate\n\
    conditions loud\n\
    battery B1 agm 70Ah place=battery-tray\n\
    fuse F1 strip61 60A place=battery-tray\n\
    load L1 40A place=load-floor\n\
    ground G1 place=load-floor\n\
    run W1 B1.+ F1.in 10mm2 ends=ring\n\
    run W2 F1.out L1.+ 10mm2 ends=ring route=bulkhead-grommet-left/sill-left/sill-rear-left\n\
    run W3 L1.- G1.stud 10mm2 ends=ring\n\
    run W4 B1.- loose@0,0 10mm2\n";

fn sheet(job: &Job) -> &Sheet {
    job.sheet(SheetKind::Plan).expect("it is there")
}

#[test]
fn moving_a_part_changes_what_its_runs_lose() {
    let mut job = testkit::job(&SYSTEM.replace(
        "run W4 B1.- loose@0,0 10mm2",
        "ground G2 place=battery-tray\nrun W4 B1.- G2.stud 10mm2 ends=ring",
    ));
    let drop = |job: &Job| {
        let analysis = analyse(sheet(job), &job.settings);
        (
            analysis.study.runs[&RunId(2)].drop.0,
            analysis.study.runs[&RunId(2)].wire_resistance.0,
        )
    };
    let (behind, ohms_behind) = drop(&job);
    // 5.88 m of 10 mm² copper on the worked way of the estate car, which the route tells in three names: between 1/58 cold
    // and what 40 A warm it to.
    let cold = 5.88 / 58.0 / 10.0;
    assert!(
        ohms_behind > cold && ohms_behind < cold * 1.5,
        "{ohms_behind} {cold}"
    );
    for (tag, place) in [("L1", "under-seat-left"), ("G1", "under-seat-left")] {
        let (id, _) = sheet(&job).part_by_tag(tag).expect("it is there");
        let edit = model::edits::set_part_words(&job, SheetKind::Plan, id, model::edits::Words::Place, place)
            .expect("it fits");
        job.apply(edit);
    }
    let route = ["bulkhead-grommet-left", "sill-left"].map(str::to_owned).to_vec();
    let edit = model::edits::set_route(&job, SheetKind::Plan, RunId(2), route).expect("it fits");
    job.apply(edit);
    let (seat, ohms_seat) = drop(&job);
    assert!(
        ohms_seat < ohms_behind * 0.75 && seat < behind,
        "{ohms_seat} {ohms_behind}"
    );
}

#[test]
fn a_ground_point_far_from_the_strap_has_more_body_metal_before_it() {
    let at = |place: &str| {
        let job = testkit::job(&format!(
            "body saloon\nbattery B1 agm 70Ah place=battery-tray\nload L1 40A\nground G1 place={place}\nground G2 place=battery-tray\n\
             run W1 B1.+ L1.+ 10mm2 1m\nrun W2 L1.- G1.stud 10mm2 1m\nrun W3 B1.- G2.stud 10mm2 0.3m"
        ));
        let analysis = analyse(sheet(&job), &job.settings);
        // The third part of the sheet is the ground point.
        analysis.study.voltages["p3.stud"].0
    };
    let (front, rear) = (at("footwell-left"), at("load-floor"));
    assert!(rear > front, "{front} V in front, {rear} V behind");
}

/// Two loads with ground points at two places. By hand, currents forced by loads of constant current, one strap at the
/// battery: what both carry shares the metal between the nearer spot and the strap, and only there.
#[test]
fn ground_points_share_the_body_on_their_way_to_the_strap() {
    let job = testkit::job(
        "body estate\nbattery B1 agm 70Ah place=battery-tray\nground G0 contact=0ohm place=battery-tray\n\
         ground G1 contact=0ohm place=under-seat-left\nground G2 contact=0ohm place=load-floor\n\
         load L1 40A\nload L2 60A\n\
         run W0 B1.- G0.stud 16mm2 0.3m\n\
         run W1 B1.+ L1.+ 16mm2 1m\nrun W2 L1.- G1.stud 16mm2 1m\n\
         run W3 B1.+ L2.+ 16mm2 1m\nrun W4 L2.- G2.stud 16mm2 1m",
    );
    let sheet = sheet(&job);
    let metal = body::Metal::of(sheet, &job.settings);
    let ground = |tag: &str| sheet.part_by_tag(tag).expect("it is there").0;
    let spot = |tag: &str| metal.point_of(ground(tag)).expect("it has a place");
    assert_eq!(metal.points[spot("G0")].toward, None);
    assert_eq!(metal.points[spot("G1")].toward, None, "the strap is where G0 is");
    assert_eq!(
        metal.points[spot("G2")].toward,
        Some(spot("G1")),
        "the nearer one lies on the way"
    );
    let study = analyse(sheet, &job.settings).study;
    let volts = |tag: &str| study.voltages[&format!("{}.stud", ground(tag))].0;
    // Under the seat: (0.8775 + 0.58·2.8, 0.28·1.85, 0.35) = (2.5015, 0.518, 0.35); the tray is at (1.0275, 0.37, 0.75), the
    // floor at (4.13875, 0.925, 0.55). Straight: √(1.474² + 0.148² + 0.4²) = 1.5345 m and √(1.63725² + 0.407² + 0.2²) =
    // 1.6989 m; of 0.15/1200 Ω/m. Spreading 0.1374 mΩ each.
    let (near, far, own) = (1.5345 * 0.125e-3, 1.6989 * 0.125e-3, 0.13741e-3);
    let difference = volts("G2") - volts("G1");
    let by_hand = 60.0 * (far + own) - 40.0 * own;
    assert!((difference - by_hand).abs() < 2e-5, "{difference} {by_hand}");
    // From G1 to the battery's own ground point: both currents share the way and spread at its end, one at its start.
    let down = volts("G1") - volts("G0");
    let by_hand = 100.0 * (near + own) + 40.0 * own;
    assert!((down - by_hand).abs() < 2e-5, "{down} {by_hand}");
}

#[test]
fn no_mend_carries_what_was_computed() {
    // Without its fuse the feed is unprotected, and a mend puts one in.
    let job = testkit::job(
        &SYSTEM
            .replace("fuse F1 strip61 60A place=battery-tray\n", "")
            .replace("run W1 B1.+ F1.in 10mm2 ends=ring\n", "")
            .replace("F1.out", "B1.+"),
    );
    let analysis = analyse(sheet(&job), &job.settings);
    let mut seen = 0;
    for mend in analysis
        .findings
        .iter()
        .flat_map(|finding| finding.mends.iter().map(|mend| &mend.edit))
    {
        for change in &mend.changes {
            match change {
                Change::Run { to: Some(run), .. } => {
                    seen += 1;
                    let wire = &run.wire;
                    assert!(
                        !wire.length.is_computed()
                            && !wire.surroundings.is_computed()
                            && !wire.bundle.is_computed()
                    );
                }
                Change::Part { to: Some(part), .. } => {
                    if let PartKind::Ground(ground) = &part.is {
                        assert!(!ground.body.is_computed());
                    }
                }
                _ => {}
            }
        }
    }
    assert!(seen > 1, "the feed has mends");
    // The fuse that is put in stands at the battery, with the way behind it.
    let mend = analysis
        .findings
        .iter()
        .find(|finding| finding.check == "feed-unprotected")
        .and_then(|finding| finding.mends.first().map(|mend| &mend.edit))
        .expect("it can be mended");
    let mut mended = job.clone();
    mended.apply(checks::mend_for(&job, SheetKind::Plan, mend));
    let laid = body::lay(sheet(&mended), &mended.settings);
    let lengths: Vec<Fact<_>> = laid
        .runs
        .values()
        .filter(|run| ["W2", "W1"].contains(&run.tag.as_str()))
        .map(|run| run.wire.length)
        .collect();
    assert_eq!(
        lengths,
        [
            Computed(model::quantity::Metres(0.3)),
            Computed(model::quantity::Metres(5.88))
        ]
    );
    let left: Vec<&str> = analyse(sheet(&mended), &mended.settings)
        .findings
        .iter()
        .map(|finding| finding.check)
        .filter(|check| ["feed-unprotected", "fuse-too-far"].contains(check))
        .collect();
    assert!(left.is_empty(), "{left:?}");
}

/// A body changes nothing where nothing has a place or route: the same analysis to the last digit.
#[test]
fn a_body_alone_changes_nothing() {
    for seed in 0..40 {
        let mut sheet = testkit::random::random_system(seed, 25);
        for part in sheet.parts.values_mut() {
            part.place = None;
        }
        for run in sheet.runs.values_mut() {
            run.route.clear();
        }
        let mut settings = model::Settings::default();
        let without = format!("{:?}", analyse(&sheet, &settings));
        settings.body.shape.form = Given(model::body::BodyForm::Van);
        assert_eq!(format!("{:?}", analyse(&sheet, &settings)), without, "{seed}");
    }
}

/// Where ground points are on the body changes volts, not how things are joined: in each sound system, with its ground
/// points all over an estate car, everything is traced, guarded and returned as it was.
#[test]
fn places_of_ground_points_change_no_tracing() {
    let places = [
        "battery-tray",
        "load-floor",
        "footwell-left",
        "wheel-arch-right",
        "load-floor",
    ];
    let mut placed = 0;
    for (title, text) in testkit::sound_systems::sound_systems() {
        let mut job = testkit::job(&text);
        let before = analyse(sheet(&job), &job.settings);
        job.settings.body.shape.form = Given(model::body::BodyForm::Estate);
        let plan = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
        let grounds = plan
            .parts
            .values_mut()
            .filter(|part| matches!(part.is, PartKind::Ground(_)));
        for (ground, place) in grounds.zip(places.iter().cycle()) {
            ground.place = Some((*place).to_owned());
            placed += 1;
        }
        let after = analyse(sheet(&job), &job.settings);
        let told = |analysis: &checks::Analysis| -> Vec<(&'static str, Vec<_>, Vec<_>)> {
            let findings = analysis.findings.iter();
            findings
                .map(|it| (it.check, it.parts.clone(), it.runs.clone()))
                .collect()
        };
        assert_eq!(told(&after), told(&before), "{title}");
        assert_eq!(after.study.protection, before.study.protection, "{title}");
        for (part, circuit) in &before.study.circuits {
            let now = &after.study.circuits[part];
            assert_eq!(now.feeds, circuit.feeds, "{title} {part}");
            for (now, then) in now.returns.iter().zip(&circuit.returns) {
                assert_eq!(
                    (
                        now.complete,
                        now.through_body,
                        &now.ground_points,
                        now.lead_length,
                        &now.runs
                    ),
                    (
                        then.complete,
                        then.through_body,
                        &then.ground_points,
                        then.lead_length,
                        &then.runs
                    ),
                    "{title} {part}"
                );
            }
        }
        for (id, run) in &before.study.runs {
            assert_eq!(after.study.runs[id].purpose, run.purpose, "{title} {id}");
        }
    }
    assert!(placed > 20, "{placed}");
}

/// Random systems in every form of body, their parts and runs at places and on ways as they fall, guarded and fixed anyhow: an
/// answer each time, and every mend can be made, takes nothing that was computed with it, and undone.
#[test]
fn whatever_lies_in_a_body_is_judged() {
    use model::laying::{Guard, Moved};
    use model::mounting::MountedOn;
    let mut mends = 0;
    for seed in 0..12_u64 {
        let mut job = Job::default();
        let form = model::body::BodyForm::ALL[seed as usize % model::body::BodyForm::ALL.len()];
        job.settings.body.shape.form = Given(form);
        let plan = body::Plan::of(&job.settings.body).expect("it has a form");
        let passages: Vec<&str> = plan.passages.iter().map(|it| it.name.as_str()).collect();
        let mut dice = testkit::random::Dice::new(seed);
        let mut sheet = testkit::random::random_system(seed, 18);
        for part in sheet.parts.values_mut() {
            let place = dice.below(plan.places.len());
            part.place = (!dice.chance(0.1)).then(|| plan.places[place].name.clone());
            if dice.chance(0.5) {
                part.mounting.mounted = Given(MountedOn::ALL[dice.below(MountedOn::ALL.len())]);
                part.mounting.holes = Given(4);
                part.mounting.screws = Given(u8::try_from(dice.below(6)).expect("it is small"));
                part.mounting.looked_behind = Given(dice.chance(0.5));
            }
        }
        for run in sheet.runs.values_mut() {
            run.route = (0..dice.below(4))
                .map(|_| passages[dice.below(passages.len())].to_owned())
                .collect();
            for name in run.route.clone() {
                if dice.chance(0.6) {
                    let guard = Guard::ALL[dice.below(Guard::ALL.len())];
                    run.laying.guards.0.insert(name, guard);
                }
            }
            if dice.chance(0.2) {
                run.laying.opens_when = Given(Moved::ALL[dice.below(Moved::ALL.len())]);
                run.laying.strands = Given(30);
                run.laying.strand = Given(model::quantity::Millimetres(0.25));
            }
        }
        job.sheets.insert(SheetKind::Plan, sheet.clone());
        let analysis = analyse(&sheet, &job.settings);
        for mend in analysis
            .findings
            .iter()
            .flat_map(|finding| finding.mends.iter().map(|mend| &mend.edit))
            .step_by(3)
        {
            mends += 1;
            let mut mended = job.clone();
            let undo = mended.apply(checks::mend_for(&job, SheetKind::Plan, mend));
            let after = mended.sheet(SheetKind::Plan).expect("it is there");
            assert!(
                after.runs.values().all(|run| !run.wire.length.is_computed()),
                "{seed}: {}",
                mend.name
            );
            let _ = analyse(after, &mended.settings);
            mended.apply(undo);
            assert_eq!(mended, job, "{seed}: `{}` undone", mend.name);
        }
    }
    assert!(mends > 30, "only {mends}");
}
