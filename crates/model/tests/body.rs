//! The body that a job tells of: its lines of text, its place in the file, its limits and its edits.

use model::body::{Behind, BodyForm, DriveSide, OwnPassage, OwnPlace, PassageKind};
use model::conductor::Surroundings;
use model::edits::{
    Told, add_passage, add_place, remove_told, set_body_property, set_route, set_told_property,
};
use model::fact::Fact::{Assumed, Computed, Given, Unknown};
use model::file::{read, read_lenient, write};
use model::quantity::Metres;
use model::text::{parse, print};
use model::{Edit, Fact, Job, PropertyType, RunId, SheetKind};

const TOLD: &str = "\
body estate 4.7m width=~1.82m right-hand
place load-floor behind=tank
place shelf label=\"Shelf by hand\" from-front=3.9m from-left=0.9m height=0.9m load-area wet=no
passage shelf-hole from=shelf to=load-floor hole ~0.4m sharp
";

#[test]
fn lines_of_the_body_read_and_print_back() {
    let job = testkit::job(TOLD);
    let body = &job.settings.body;
    assert_eq!(
        (body.shape.form, body.shape.drive, body.shape.wheelbase),
        (Given(BodyForm::Estate), Given(DriveSide::Right), Unknown)
    );
    assert_eq!(body.places["load-floor"].behind, Given(Behind::Tank));
    let shelf = &body.places["shelf"];
    assert_eq!(
        (shelf.heat, shelf.wet, shelf.from_left),
        (Given(Surroundings::LoadArea), Given(false), Given(Metres(0.9)))
    );
    let hole = &body.passages["shelf-hole"];
    assert_eq!(
        (hole.kind, hole.length, hole.sharp, hole.to.as_str()),
        (
            Given(PassageKind::Hole),
            Assumed(Metres(0.4)),
            Given(true),
            "load-floor"
        )
    );
    assert_eq!(print(&job), TOLD);
    assert_eq!(read(write(&job).as_bytes()).expect("it reads back"), job);
}

#[test]
fn a_job_without_a_body_does_not_mention_one() {
    assert!(!write(&Job::default()).contains("body"));
}

#[test]
fn bad_lines_say_where_and_what() {
    for (line, wanted) in [
        ("body limousine", "`limousine`"),
        ("body estate 40m", "2 m to 12 m"),
        ("body estate\nbody saloon", "second time"),
        ("place", "name of a place is missing"),
        ("place a/b wet", "letters, digits"),
        ("place shelf wet\nplace shelf", "second time"),
        ("passage x cardboard", "cardboard"),
        ("passage x from=a sharpness=yes", "no `sharpness`"),
    ] {
        let errors = parse(line).expect_err(line).to_string();
        assert!(errors.contains(wanted), "{line}: {errors}");
    }
}

#[test]
fn a_wrong_value_costs_itself_alone() {
    let file = br#"{"format": "loomwright-job", "version": 1, "settings": {"body": {"shape": {"form": "estate", "length": 99},
        "places": {"shelf": {"wet": true, "height": -1, "later": 5}, "a b": {}}, "later": 7}}}"#;
    let read = read_lenient(file).expect("the rest is read");
    let body = &read.job.settings.body;
    assert_eq!(
        (body.shape.form, body.shape.length),
        (Given(BodyForm::Estate), Unknown)
    );
    assert_eq!(body.places["shelf"].wet, Given(true));
    assert!(!body.places.contains_key("a b"), "no place can be called so");
    assert_eq!((body.extra.len(), body.places["shelf"].extra.len()), (1, 1));
    let places: Vec<&str> = read.problems.iter().map(|p| p.place.as_str()).collect();
    assert_eq!(
        places,
        [
            "settings.body.shape.length",
            "settings.body.places.a b",
            "settings.body.places.shelf.height"
        ]
    );
}

/// Makes an edit, and holds that its inverse takes it back.
fn make(job: &mut Job, edit: Edit) {
    let before = job.clone();
    let inverse = job.apply(edit);
    let mut back = job.clone();
    back.apply(inverse);
    assert_eq!(back, before);
}

#[test]
fn edits_of_the_body_are_taken_back() {
    let mut job = testkit::job("ground G1\nground G2\nrun W1 G1.stud G2.stud");
    for (name, text) in [("form", "van"), ("length", "5.9m"), ("drive", "right-hand")] {
        let edit = set_body_property(&job, name, text).expect("it fits");
        make(&mut job, edit);
    }
    assert!(set_body_property(&job, "length", "99m").is_err());
    assert_eq!(job.settings.body.shape.form, Given(BodyForm::Van));

    let edit = set_told_property(&job, Told::Place, "load-floor", "wet", "yes").expect("it fits");
    make(&mut job, edit);
    assert_eq!(job.settings.body.places["load-floor"].wet, Given(true));
    // With nothing left to tell, the place is as the form has it.
    let edit = set_told_property(&job, Told::Place, "load-floor", "wet", "?").expect("it fits");
    make(&mut job, edit);
    assert!(job.settings.body.places.is_empty());
    assert!(set_told_property(&job, Told::Place, "load floor", "wet", "yes").is_err());

    let edit = add_place(&job, "shelf", OwnPlace::default()).expect("it is free");
    make(&mut job, edit);
    assert!(add_place(&job, "shelf", OwnPlace::default()).is_err());
    let passage = OwnPassage {
        from: "shelf".to_owned(),
        to: "load-floor".to_owned(),
        ..OwnPassage::default()
    };
    let edit = add_passage(&job, "shelf-hole", passage).expect("it is free");
    make(&mut job, edit);
    let edit = remove_told(&job, Told::Place, "shelf").expect("it is there");
    make(&mut job, edit);
    assert!(remove_told(&job, Told::Place, "shelf").is_err());

    let route = vec!["sill-left".to_owned(), "load-floor".to_owned()];
    let edit = set_route(
        &job,
        SheetKind::Plan,
        RunId(1),
        ["sill-left", "", "load-floor"].map(str::to_owned).to_vec(),
    )
    .expect("it is there");
    assert_eq!(edit.name, "Lay the way of W1");
    make(&mut job, edit);
    assert_eq!(
        job.sheet(SheetKind::Plan).expect("it is there").runs[&RunId(1)].route,
        route
    );
    assert!(set_route(&job, SheetKind::Plan, RunId(1), vec!["sill-left".to_owned(); 101]).is_err());
}

#[test]
fn a_computed_value_is_shown_in_parentheses_and_not_written() {
    let computed: Fact<Metres> = Computed(Metres(4.5));
    assert_eq!(computed.print(), "(4.5m)");
    assert_eq!(
        (computed.value(), computed.is_settled(), computed.is_given()),
        (Some(Metres(4.5)), true, false)
    );
    let error = Fact::<Metres>::parse("(4.5m)", None).expect_err("it is computed");
    assert!(error.to_string().contains("without the parentheses"), "{error}");
}
