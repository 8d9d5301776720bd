//! The edits of a sheet: what each leaves behind, that it leaves nothing broken, and that it is undone to the byte.

use model::conductor::{Colour, EndingMethod, Jacket, Size};
use model::edits::*;
use model::fact::Fact::{Assumed, Given};
use model::file::{check, write};
use model::property::PropertyType;
use model::quantity::{Metres, SquareMm};
use model::{BoardPoint, End, Job, PartId, PartKind, RunId, Sheet, SheetKind, TerminalRef};
use ordered::OrderedSet;
use proptest::prelude::*;
use proptest::sample::Index;

const PLAN: SheetKind = SheetKind::Plan;

const TEXT: &str = "\
battery B1 @0,0
fuse F1 60A @100,0
amplifier A1 @500,0
head H1 @500,-200
speaker LS1 @700,0
ground E1 @500,100
run W1 B1.+ F1.in 16mm2 0.2m
run W2 F1.out A1.+ 16mm2 5m RD ends=ring/ferrule bends=200,50/400,50 route=bulkhead/sill/boot by=earlier
";

fn on(job: &Job, written: &str) -> End {
    let (tag, terminal) = written.split_once('.').expect("TAG.terminal");
    let (id, _) = job.sheets[&PLAN].part_by_tag(tag).expect("a part");
    End::On(TerminalRef::new(id, terminal))
}

fn id(job: &Job, tag: &str) -> PartId {
    job.sheets[&PLAN].part_by_tag(tag).expect("a part").0
}

fn plan(job: &Job) -> &Sheet {
    &job.sheets[&PLAN]
}

#[test]
fn removing_parts_takes_their_runs_along() {
    let mut job = testkit::job(TEXT);
    let before = write(&job);
    let edit = remove_parts(&job, PLAN, &OrderedSet::from([id(&job, "F1")]));
    assert_eq!(edit.name, "Delete F1");
    let back = job.apply(edit);
    assert!(plan(&job).runs.is_empty());
    assert_eq!(plan(&job).parts.len(), 5);
    job.apply(back);
    assert_eq!(write(&job), before);
    assert_eq!(
        remove_runs(&job, PLAN, &OrderedSet::from([RunId(1), RunId(2)])).name,
        "Delete 2 runs"
    );
}

#[test]
fn an_end_that_stays_at_its_part_keeps_the_bends() {
    let mut job = testkit::job(TEXT);
    let bent = plan(&job).runs[&RunId(2)].bends.clone();
    assert_eq!(bent.len(), 2);
    let edit = set_end(&job, PLAN, RunId(2), RunSide::From, on(&job, "F1.in")).expect("a terminal");
    let back = job.apply(edit);
    assert_eq!(plan(&job).runs[&RunId(2)].bends, bent);
    job.apply(back);
    let edit = set_end(&job, PLAN, RunId(2), RunSide::From, on(&job, "B1.+")).expect("a terminal");
    job.apply(edit);
    assert!(plan(&job).runs[&RunId(2)].bends.is_empty());
}

#[test]
fn moving_takes_the_bends_among_the_parts_along() {
    let mut job = testkit::job(TEXT);
    let edit = move_parts(
        &job,
        PLAN,
        &OrderedSet::from([id(&job, "F1"), id(&job, "A1")]),
        10,
        -5,
    );
    job.apply(edit);
    assert_eq!(plan(&job).runs[&RunId(2)].bends[0], BoardPoint { x: 210, y: 45 });
    assert_eq!(
        plan(&job).parts[&id(&job, "A1")].at,
        Some(BoardPoint { x: 510, y: -5 })
    );
    let edit = move_parts(&job, PLAN, &OrderedSet::from([id(&job, "A1")]), i32::MAX, 0);
    job.apply(edit);
    assert_eq!(
        plan(&job).parts[&id(&job, "A1")].at.map(|at| at.x),
        Some(1_000_000)
    );
}

#[test]
fn a_fuse_put_into_a_run_cuts_it_there() {
    let mut job = testkit::job(TEXT);
    let fuse = PartKind::from_word("fuse").expect("a kind");
    // The way is 100,0 → 200,50 → 400,50 → 500,0; the middle of its middle piece is the middle of it.
    let inserted =
        insert_into_run(&job, PLAN, RunId(2), fuse, BoardPoint { x: 300, y: 52 }, None).expect("it can");
    assert_eq!(inserted.edit.name, "Put F2 into W2");
    job.apply(inserted.edit);
    let [first, second] = inserted.runs.map(|id| plan(&job).runs[&id].clone());
    assert_eq!(
        (&first.to, &second.from),
        (&on(&job, "F2.in"), &on(&job, "F2.out"))
    );
    assert_eq!(
        (&first.from, &second.to),
        (&on(&job, "F1.out"), &on(&job, "A1.+"))
    );
    assert_eq!(
        (first.wire.length, second.wire.length),
        (Assumed(Metres(2.5)), Assumed(Metres(2.5)))
    );
    assert_eq!((first.bends.len(), second.bends.len()), (1, 1));
    assert_eq!(first.wire.jacket, second.wire.jacket);
    assert_eq!(first.from_ending.method, Given(EndingMethod::CrimpedRing));
    assert_eq!(
        first.to_ending.method,
        Assumed(EndingMethod::CrimpedRing),
        "a bolt-in fuse takes rings"
    );
    assert_eq!(second.to_ending.method, Given(EndingMethod::Ferrule));
    assert_eq!(
        (first.route.join("/"), second.route.join("/")),
        ("bulkhead/sill".to_owned(), "sill/boot".to_owned())
    );
    assert_eq!((first.tag.as_str(), second.tag.as_str()), ("W2", "W3"));
    let share = Some(0.1);
    let splice = PartKind::from_word("splice").expect("a kind");
    let inserted =
        insert_into_run(&job, PLAN, RunId(1), splice, BoardPoint { x: 0, y: 0 }, share).expect("it can");
    job.apply(inserted.edit);
    assert_eq!(plan(&job).runs[&RunId(1)].wire.length, Assumed(Metres(0.02)));
    let ground = PartKind::from_word("ground").expect("a kind");
    assert!(insert_into_run(&job, PLAN, RunId(1), ground, BoardPoint::default(), None).is_err());
}

#[test]
fn a_pulled_run_gets_what_is_usual_there() {
    let mut job = testkit::job(TEXT);
    let mut pull = |from: &str, to: &str| {
        let connected = connect(&job, PLAN, on(&job, from), on(&job, to)).expect("it can");
        job.apply(connected.edit);
        plan(&job).runs[&connected.run].clone()
    };
    let plain = Jacket::plain;
    let area = |area| Assumed(Size::Metric(SquareMm(area)));
    // common practice: black returns, thin turn-on leads, short ground leads
    let run = pull("A1.-", "E1.stud");
    assert_eq!(
        (run.wire.size, run.wire.jacket),
        (area(16.0), plain(Colour::Black))
    );
    assert_eq!(run.wire.length, Assumed(Metres(0.4)));
    assert_eq!(
        (run.from_ending.method, run.to_ending.method),
        (Assumed(EndingMethod::Ferrule), Assumed(EndingMethod::CrimpedRing))
    );
    assert_eq!(run.tag, "W3");
    let run = pull("H1.rem", "A1.rem");
    assert_eq!(
        (run.wire.size, run.wire.jacket.print()),
        (area(0.75), "BUWH".to_owned())
    );
    let run = pull("A1.out1-", "LS1.-");
    assert_eq!(
        (run.wire.size, run.wire.jacket.print()),
        (area(2.5), "GYBK".to_owned())
    );
    let run = pull("H1.front-l", "A1.in1");
    assert_eq!(run.from_ending.method, Assumed(EndingMethod::Plugged));
    let run = pull("H1.31", "E1.stud");
    assert_eq!(
        (run.wire.size, run.wire.jacket),
        (area(2.5), plain(Colour::Black))
    );
    let run = pull("B1.+", "H1.30");
    assert_eq!((run.wire.size, run.wire.jacket), (area(2.5), plain(Colour::Red)));
    assert!(connect(&job, PLAN, on(&job, "B1.+"), on(&job, "B1.+")).is_err());
    let nowhere = End::On(TerminalRef::new(PartId(1), "nowhere"));
    assert!(
        connect(&job, PLAN, on(&job, "B1.+"), nowhere).is_err_and(|e| e.to_string().contains("B1.nowhere"))
    );
}

#[test]
fn renaming_keeps_the_wires_and_refuses_what_is_taken() {
    let mut job = testkit::job(TEXT);
    let f1 = id(&job, "F1");
    assert!(rename_part(&job, PLAN, f1, "W1").is_err_and(|e| e.to_string().contains("W3")));
    assert!(rename_part(&job, PLAN, f1, "F 1").is_err());
    let edit = rename_part(&job, PLAN, f1, "F9").expect("it is free");
    job.apply(edit);
    assert_eq!(plan(&job).runs[&RunId(1)].to, on(&job, "F9.in"));
    let edit = rename_run(&job, PLAN, RunId(1), "feed").expect("it is free");
    job.apply(edit);
    assert_eq!(plan(&job).runs[&RunId(1)].tag, "feed");
}

#[test]
fn properties_are_set_from_text() {
    let mut job = testkit::job(TEXT);
    let f1 = id(&job, "F1");
    let edit = set_property(&job, PLAN, f1, "rating", "~80A").expect("it fits");
    assert_eq!(edit.name, "Set rating of F1");
    job.apply(edit);
    let edit = set_wire_property(&job, PLAN, RunId(1), "colour", "RDBK").expect("it fits");
    job.apply(edit);
    let edit = set_ending_property(&job, PLAN, RunId(1), RunSide::To, "method", "twisted").expect("it fits");
    job.apply(edit);
    assert_eq!(plan(&job).parts[&f1].is.get("rating").as_deref(), Some("~80A"));
    assert_eq!(
        plan(&job).runs[&RunId(1)].to_ending.method,
        Given(EndingMethod::Twisted)
    );
    assert!(set_property(&job, PLAN, f1, "rating", "80V").is_err());
    assert!(set_property(&job, PLAN, PartId(99), "rating", "80A").is_err());
}

#[test]
fn words_and_settings_are_held_to_what_a_file_takes() {
    let mut job = testkit::job(TEXT);
    let f1 = id(&job, "F1");
    let long = "x".repeat(401);
    for which in 0..5 {
        let edit = match which {
            0 => set_part_words(&job, PLAN, f1, Words::Label, "Main fuse"),
            1 => set_part_words(&job, PLAN, f1, Words::Note, &long),
            2 => set_part_words(&job, PLAN, f1, Words::Place, "engine-bay"),
            3 => set_run_words(&job, PLAN, RunId(1), Words::Label, "Feed"),
            _ => set_title("A title"),
        };
        job.apply(edit.expect("it fits"));
    }
    let part = &plan(&job).parts[&f1];
    assert_eq!(
        (part.label.as_str(), part.note.len(), part.place.as_deref()),
        ("Main fuse", 401, Some("engine-bay"))
    );
    assert_eq!(
        (plan(&job).runs[&RunId(1)].label.as_str(), job.title.as_str()),
        ("Feed", "A title")
    );
    let edit = set_condition(&job, "state", "idle").expect("it fits");
    job.apply(edit);
    let edit = set_vehicle_property(&job, "name", "An estate").expect("it fits");
    job.apply(edit);
    assert_eq!(job.vehicle.name, "An estate");
    assert!(set_part_words(&job, PLAN, f1, Words::Label, &long).is_err());
    assert!(set_run_words(&job, PLAN, RunId(1), Words::Place, "sill").is_err());
    assert!(set_title(&long).is_err());
    assert!(set_condition(&job, "state", "flying").is_err_and(|e| e.to_string().contains("cruise")));
    assert!(set_vehicle_property(&job, "colour", "red").is_err());
    assert!(check(&job).is_empty());
}

#[test]
fn a_feed_goes_on_as_the_wire_that_is_there() {
    let mut job = testkit::job(
        "fuse F1\nsplice J1\nvehicle V1\nplug P1\nrun W1 F1.in loose@0,0 6AWG OG\nrun W2 V1.+ loose@0,0 35mm2\n",
    );
    let mut pull = |from: &str, to: &str| {
        let connected = connect(&job, PLAN, on(&job, from), on(&job, to)).expect("it can");
        job.apply(connected.edit);
        plan(&job).runs[&connected.run].wire.clone()
    };
    let wire = pull("F1.out", "J1.1");
    assert_eq!(
        (wire.size, wire.jacket),
        (Assumed(Size::Awg(6)), Jacket::plain(Colour::Orange))
    );
    // The vehicle's own battery lead says nothing of what leaves its panel.
    assert_eq!(pull("V1.30", "P1.1a").size, Assumed(Size::Metric(SquareMm(2.5))));
}

#[test]
fn a_clip_travels_as_text() {
    let mut job = testkit::job(TEXT);
    let chosen = OrderedSet::from([id(&job, "F1"), id(&job, "A1")]);
    let clip = copy(plan(&job), &chosen);
    assert_eq!(clip.sheet.runs.len(), 1, "only the run between them");
    let clip = Clip::from_text(&clip.to_text()).expect("what was printed");
    let pasted = paste(&job, PLAN, &clip, 20, 20).expect("there is room");
    job.apply(pasted.edit);
    assert_eq!((pasted.parts.len(), pasted.runs.len()), (2, 1));
    let run = &plan(&job).runs[pasted.runs.first().expect("a run")];
    assert_eq!(
        (run.from.clone(), run.to.clone(), run.tag.as_str()),
        (on(&job, "F2.out"), on(&job, "A2.+"), "W3")
    );
    assert_eq!(run.bends[0], BoardPoint { x: 220, y: 70 });
    let again = duplicate(&job, PLAN, &pasted.parts, 20, 20).expect("there is room");
    assert_eq!(again.edit.name, "Duplicate 2 parts");
    assert!(Clip::from_text("nonsense").is_err());
}

#[test]
fn a_sheet_is_copied_with_its_ids() {
    let mut job = testkit::job(&format!("sheet found\nload X1 id=p77\nsheet plan\n{TEXT}"));
    let before = write(&job);
    let edit = copy_sheet(&job, PLAN, SheetKind::Found);
    let back = job.apply(edit);
    assert_eq!(job.sheets[&SheetKind::Found], job.sheets[&PLAN]);
    job.apply(back);
    assert_eq!(write(&job), before);
}

#[test]
fn ids_at_the_end_of_their_numbers_do_no_harm() {
    let mut job = testkit::job("load L1 id=p4294967295\nload L2 id=p1\n");
    let (edit, id) = add_part(&job, PLAN, PartKind::from_word("load").expect("a kind"), None);
    assert_eq!(id, PartId(2));
    job.apply(edit);
    assert_eq!(plan(&job).parts.len(), 3);
}

/// One of the edits, by number, on things chosen at random.
fn any_edit_of(job: &Job, which: u8, a: Index, b: Index, point: BoardPoint) -> Option<model::Edit> {
    let sheet = job.sheet(PLAN)?;
    let parts: Vec<PartId> = sheet.parts.keys().copied().collect();
    let runs: Vec<RunId> = sheet.runs.keys().copied().collect();
    let ends: Vec<End> = sheet
        .parts
        .iter()
        .flat_map(|(id, part)| {
            part.terminals().into_iter().map(|t| {
                End::On(TerminalRef {
                    part: *id,
                    terminal: t.name,
                })
            })
        })
        .collect();
    let part = || (!parts.is_empty()).then(|| parts[a.index(parts.len())]);
    let run = || (!runs.is_empty()).then(|| runs[a.index(runs.len())]);
    let end = |i: &Index| (!ends.is_empty()).then(|| ends[i.index(ends.len())].clone());
    let kind = PartKind::from_word(PartKind::WORDS.get(b.index(PartKind::WORDS.len()))?)?;
    let some = |keep: usize| {
        parts
            .iter()
            .copied()
            .skip(a.index(parts.len().max(1)))
            .take(keep)
            .collect::<OrderedSet<_>>()
    };
    match which {
        0 => Some(remove_parts(job, PLAN, &some(1))),
        1 => Some(remove_runs(job, PLAN, &OrderedSet::from([run()?]))),
        2 => Some(move_parts(job, PLAN, &some(3), point.x, point.y)),
        3 => insert_into_run(job, PLAN, run()?, kind, point, None)
            .ok()
            .map(|i| i.edit),
        4 => connect(job, PLAN, end(&a)?, end(&b)?).ok().map(|c| c.edit),
        5 => duplicate(job, PLAN, &some(3), point.x, point.y)
            .ok()
            .map(|p| p.edit),
        6 => reverse_run(job, PLAN, run()?).ok(),
        7 => set_end(job, PLAN, run()?, RunSide::To, end(&b)?).ok(),
        8 => rename_part(job, PLAN, part()?, &sheet.free_tag("Z")).ok(),
        9 => Some(copy_sheet(job, PLAN, SheetKind::Built)),
        _ => Some(add_part(job, PLAN, kind, Some(point)).0),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Whatever is done, the job stays one that the file's door lets in, and undo gives the bytes back.
    #[test]
    fn any_edits_keep_the_job_whole(
        job in testkit::any::any_job(),
        edits in proptest::collection::vec((0..11_u8, any::<Index>(), any::<Index>(), testkit::any::any_point()), 0..12),
    ) {
        let (mut job, mut history) = (job, model::History::new());
        let before = write(&job);
        for (which, a, b, point) in edits {
            if let Some(edit) = any_edit_of(&job, which, a, b, point) {
                history.apply(&mut job, edit);
            }
            let broken: Vec<_> = check(&job).into_iter().filter(|p| p.left_out).collect();
            prop_assert_eq!(broken, vec![], "after {:?}", history.undo_name());
        }
        while history.undo(&mut job).is_some() {}
        prop_assert_eq!(write(&job), before);
    }
}

#[test]
fn a_limit_is_set_and_taken_back() {
    use model::edits::set_limit;
    let mut job = Job::default();
    let before = job.clone();
    let undo = job.apply(set_limit(&job, "fuse-reach", Some(0.3)).expect("a limit"));
    assert_eq!(job.settings.limits.get("fuse-reach"), Some(&0.3));
    let again = model::file::read(model::file::write(&job).as_bytes()).expect("reads back");
    assert_eq!(again.settings.limits, job.settings.limits);
    job.apply(set_limit(&job, "fuse-reach", None).expect("a limit"));
    assert!(job.settings.limits.is_empty());
    job.apply(set_limit(&job, "fuse-reach", Some(0.3)).expect("a limit"));
    job.apply(undo);
    assert_eq!(job, before);
    for bad in [f64::NAN, f64::INFINITY, -1.0, 1e9] {
        assert!(set_limit(&job, "fuse-reach", Some(bad)).is_err(), "{bad}");
    }
    assert!(set_limit(&job, &"x".repeat(500), Some(1.0)).is_err());
}

#[test]
fn of_a_full_list_what_is_in_it_can_be_changed() {
    use model::edits::{leave_out, set_limit, tick};
    let mut job = Job::default();
    let most = model::limits::MOST_SETTINGS;
    job.settings.limits = (0..most).map(|at| (format!("l{at}"), 1.0)).collect();
    job.settings.allowed = (0..most).map(|at| format!("c{at}")).collect();
    job.thread.done = (0..model::limits::MOST_DONE).map(|at| format!("s{at}")).collect();
    job.apply(set_limit(&job, "l7", Some(0.3)).expect("it is one of them"));
    assert_eq!(job.settings.limits.get("l7"), Some(&0.3));
    let told = set_limit(&job, "another", Some(0.3)).expect_err("the list is full");
    assert!(told.to_string().contains("1000 limits"), "{told}");
    assert!(leave_out(&job, "c7", true).is_ok());
    let told = leave_out(&job, "another", true).expect_err("the list is full");
    assert!(told.to_string().contains("1000 checks"), "{told}");
    assert!(tick(&job, "s7", "a step".into(), true).is_ok());
    assert!(tick(&job, "another", "a step".into(), true).is_err());
    job.apply(set_limit(&job, "l7", None).expect("it is one of them"));
    assert!(set_limit(&job, "another", Some(0.3)).is_ok());
}

#[test]
fn a_kept_reading_follows_a_rename_and_survives_a_strip_out() {
    use model::readings::{Measured, Reading};
    let mut job = model::text::parse("battery B1\nload L1\nrun W1 B1.+ L1.+ 4mm2 1m RD\n").expect("a job");
    let before = job.clone();
    let volts = Reading {
        at: "L1.+".to_owned(),
        against: "B1.-".to_owned(),
        ..Reading::default()
    }
    .with_number(12.34);
    let amps = Reading {
        measured: Measured::Amps,
        at: "W1".to_owned(),
        ..Reading::default()
    }
    .with_number(4.2);
    let mut back = vec![job.apply(keep_reading(&job, PLAN, volts).expect("kept"))];
    back.push(job.apply(keep_reading(&job, PLAN, amps).expect("kept")));
    let places = |job: &Job| -> Vec<(String, String)> {
        let readings = &job.sheet(PLAN).expect("a sheet").readings;
        readings
            .iter()
            .map(|it| (it.at.clone(), it.against.clone()))
            .collect()
    };
    let (id, _) = job
        .sheet(PLAN)
        .and_then(|sheet| sheet.part_by_tag("L1"))
        .expect("L1");
    back.push(job.apply(rename_part(&job, PLAN, id, "L9").expect("renamed")));
    assert_eq!(places(&job)[0], ("L9.+".to_owned(), "B1.-".to_owned()));
    // Both forms hold it.
    let written = write(&job);
    assert_eq!(model::file::read(written.as_bytes()).expect("reads back"), job);
    let text = model::text::print(&job);
    assert!(
        text.contains("reading volts at=L9.+ against=B1.- 12.34V"),
        "{text}"
    );
    assert_eq!(model::text::parse(&text).expect("reads back"), job);
    back.push(job.apply(remove_parts(&job, PLAN, &OrderedSet::from([id]))));
    assert_eq!(places(&job).len(), 2, "what was measured stays on record");
    back.push(job.apply(remove_reading(&job, PLAN, 0).expect("removed")));
    assert_eq!(places(&job), [("W1".to_owned(), String::new())]);
    assert!(remove_reading(&job, PLAN, 7).is_err());
    for edit in back.into_iter().rev() {
        job.apply(edit);
    }
    assert_eq!(job, before);
    // Without readings a file is as it was before there were any.
    assert!(!write(&job).contains("readings"));
}

#[test]
fn a_damaged_reading_costs_itself_and_no_more() {
    let mut job =
        model::text::parse("battery B1\nreading volts at=B1.+ 12.6V\nreading ohms at=B1.- 0.2ohm\n")
            .expect("a job");
    job.title = "Kept".to_owned();
    let broken = write(&job).replace("12.6", "\"many\"");
    let read = model::file::read_lenient(broken.as_bytes()).expect("the rest reads");
    let sheet = read.job.sheet(PLAN).expect("a sheet");
    assert!(!read.problems.is_empty());
    assert!(
        sheet.readings.iter().any(|reading| reading.number() == Some(0.2)),
        "{:?}",
        sheet.readings
    );
    assert!(sheet.part_by_tag("B1").is_some());
    let odd = write(&job).replace("\"readings\": [", "\"readings\": 7, \"more\": [");
    let read = model::file::read_lenient(odd.as_bytes()).expect("the rest reads");
    assert!(
        read.problems
            .iter()
            .any(|problem| problem.place.ends_with("readings"))
    );
}

#[test]
fn a_check_is_left_out_and_taken_in_again() {
    let mut job = testkit::job("battery B1 agm\n");
    let before = job.clone();
    let edit = model::edits::leave_out(&job, "loose-end", true).expect("an edit");
    assert_eq!(edit.name, "Leave out the check loose-end");
    job.apply(edit);
    assert!(job.settings.allowed.contains("loose-end"));
    job.apply(model::edits::leave_out(&job, "loose-end", false).expect("an edit"));
    assert_eq!(job, before);
    assert!(model::edits::leave_out(&job, &"x".repeat(500), true).is_err());
}
