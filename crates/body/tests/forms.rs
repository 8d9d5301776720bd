//! The plans of all forms: whole, named, mirrored and scaled as they should be, and lengths worked by hand.

use body::{Place, Plan};
use model::body::{BatteryPlace, Body, BodyForm, DriveSide};
use model::fact::Fact::{Assumed, Given};
use model::quantity::Metres;
use petgraph::graph::{NodeIndex, UnGraph};
use std::collections::BTreeSet;
use words::Words;

fn body(form: BodyForm, drive: DriveSide, battery: BatteryPlace) -> Body {
    let mut body = Body::default();
    body.shape.form = Given(form);
    body.shape.drive = Given(drive);
    body.shape.battery = Given(battery);
    body
}

fn plan(form: BodyForm, drive: DriveSide, battery: BatteryPlace) -> Plan {
    Plan::of(&body(form, drive, battery)).expect("it has a form")
}

fn all() -> impl Iterator<Item = (BodyForm, DriveSide, BatteryPlace)> {
    BodyForm::ALL.iter().flat_map(|form| {
        DriveSide::ALL.iter().flat_map(move |drive| {
            BatteryPlace::ALL
                .iter()
                .map(move |battery| (*form, *drive, *battery))
        })
    })
}

#[test]
fn no_form_no_plan() {
    assert!(Plan::of(&Body::default()).is_none());
}

#[test]
fn every_place_can_be_reached_from_every_other() {
    for (form, drive, battery) in all() {
        let plan = plan(form, drive, battery);
        let mut graph: UnGraph<(), ()> = UnGraph::default();
        let nodes: Vec<NodeIndex> = plan.places.iter().map(|_| graph.add_node(())).collect();
        for passage in &plan.passages {
            graph.add_edge(nodes[passage.ends[0]], nodes[passage.ends[1]], ());
        }
        // By a library that is not ours: petgraph's connected components.
        assert_eq!(
            petgraph::algo::connected_components(&graph),
            1,
            "{form:?} {drive:?} {battery:?}"
        );
    }
}

#[test]
fn names_stand_once_and_every_place_has_its_words() {
    for (form, drive, battery) in all() {
        let plan = plan(form, drive, battery);
        let mut names = BTreeSet::new();
        for name in plan
            .places
            .iter()
            .map(|it| &it.name)
            .chain(plan.passages.iter().map(|it| &it.name))
        {
            assert!(names.insert(name.clone()), "{form:?}: {name} stands twice");
            assert!(model::body::check_name(name).is_ok(), "{name}");
        }
        for place in &plan.places {
            assert!(Words::english().knows(place.said().key()), "{}", place.name);
        }
        assert!(plan.problems.is_empty());
        assert!(
            plan.places.len() > 35,
            "{form:?} has {} places",
            plan.places.len()
        );
    }
}

#[test]
fn every_place_is_inside_the_body() {
    for (form, drive, battery) in all() {
        let plan = plan(form, drive, battery);
        for Place { name, at, .. } in &plan.places {
            assert!((0.0..=plan.size.length).contains(&at.x), "{form:?} {name} {at:?}");
            assert!((0.0..=plan.size.width).contains(&at.y), "{form:?} {name} {at:?}");
            assert!((0.2..=plan.size.height).contains(&at.z), "{form:?} {name} {at:?}");
        }
        for passage in &plan.passages {
            assert!(passage.metres().0 > 0.02, "{form:?} {} is a point", passage.name);
            assert!(
                passage.metres().0 < plan.size.length * 0.75,
                "{form:?} {}",
                passage.name
            );
        }
    }
}

#[test]
fn a_right_hand_drive_is_the_mirrored_left_hand_drive() {
    let swapped = |name: &str| match name {
        _ if name.contains("left") => name.replace("left", "right"),
        _ => name.replace("right", "left"),
    };
    for form in BodyForm::ALL {
        for battery in BatteryPlace::ALL {
            let left = plan(*form, DriveSide::Left, *battery);
            let right = plan(*form, DriveSide::Right, *battery);
            assert_eq!(left.places.len(), right.places.len());
            for place in &left.places {
                let other = right.place(&swapped(&place.name)).expect("it is mirrored");
                assert_eq!(place.facts, other.facts, "{form:?} {}", place.name);
                assert!((place.at.x - other.at.x).abs() < 1e-9 && (place.at.z - other.at.z).abs() < 1e-9);
                assert!(
                    (place.at.y + other.at.y - left.size.width).abs() < 1e-9,
                    "{form:?} {}",
                    place.name
                );
            }
            for passage in &left.passages {
                let other = right.passage(&swapped(&passage.name)).expect("it is mirrored");
                assert_eq!(
                    (passage.facts, passage.kind),
                    (other.facts, other.kind),
                    "{}",
                    passage.name
                );
                assert!(
                    (passage.metres() - other.metres()).0.abs() < 0.011,
                    "{}",
                    passage.name
                );
            }
        }
    }
    // And it is not the same car: who sits on the right has the steering there.
    let right = plan(BodyForm::Estate, DriveSide::Right, BatteryPlace::Front);
    assert!(right.place("steering-column").expect("it is there").at.y > right.size.width / 2.0);
}

/// An estate car of the usual size is 4.75 m long, 1.85 m wide, 2.8 m between the axles. By hand: the front axle lies
/// 0.45 · (4.75 − 2.8) = 0.8775 m behind the bumper; bulkhead 0.8775 + 0.17 · 2.8 = 1.3535; footwell + 0.24 · 2.8 = 1.5495;
/// sill + 0.66 · 2.8 = 2.7255; rear axle 3.6775; middle of the load area (3.6775 + 4.6) / 2 = 4.13875.
#[test]
fn lengths_of_an_estate_car_worked_by_hand() {
    let plan = plan(BodyForm::Estate, DriveSide::Left, BatteryPlace::Front);
    for (passage, metres) in [
        // (1.0275, 0.37, 0.75) to (1.3535, 0.4625, 0.75): 0.326 + 0.0925 + 0.
        ("battery-bulkhead", 0.42),
        // (1.3535, 0.4625, 0.75) to (1.5495, 0.37, 0.3): 0.196 + 0.0925 + 0.45.
        ("bulkhead-grommet-left", 0.74),
        // (1.5495, 0.37, 0.3) to (2.7255, 0.1665, 0.3): 1.176 + 0.2035.
        ("sill-front-left", 1.38),
        // (2.7255, 0.1665, 0.3) to (3.6775, 0.259, 0.65): 0.952 + 0.0925 + 0.35.
        ("sill-rear-left", 1.39),
        // (3.6775, 0.259, 0.65) to (4.13875, 0.148, 0.75): 0.46125 + 0.111 + 0.1.
        ("arch-way-left", 0.67),
        // (4.13875, 0.148, 0.75) to (4.13875, 0.925, 0.55): 0.777 + 0.2.
        ("floor-way-left", 0.98),
        // (1.5495, 0.37, 0.3) to ((1.7175 + 2.7255) / 2, 0.074, 0.7): 0.672 + 0.296 + 0.4, and 0.15 for the gaiter's loop.
        ("door-gaiter-left", 1.52),
    ] {
        let it = plan.passage(passage).expect(passage);
        assert_eq!(it.length, Assumed(Metres(metres)), "{passage}");
    }
    // From the battery to an amplifier on the load floor: 0.42 + 0.74 + 1.38 + 1.39 + 0.67 + 0.98 = 5.58, and 0.3 for both ends.
    let sheet = testkit::sheet(
        "battery B1 place=battery-tray\nload A1 place=load-floor\n\
         run W1 B1.+ A1.+ route=battery-bulkhead/bulkhead-grommet-left/sill-front-left/sill-rear-left/arch-way-left/floor-way-left",
    );
    let mut run = sheet.runs[&model::RunId(1)].clone();
    let walk = plan.walk(&sheet, &run).expect("it has a way");
    assert_eq!(walk.length(&plan, &run), Metres(5.88));
    // Where its slack is told, that is what counts.
    run.laying.slack = Given(Metres(0.5));
    assert_eq!(walk.length(&plan, &run), Metres(6.08));
}

#[test]
fn lengths_grow_with_the_body() {
    let mut long = body(BodyForm::Van, DriveSide::Left, BatteryPlace::Front);
    long.shape.length = Given(Metres(6.9));
    long.shape.wheelbase = Given(Metres(4.4));
    let long = Plan::of(&long).expect("it has a form");
    let usual = plan(BodyForm::Van, DriveSide::Left, BatteryPlace::Front);
    let far = |plan: &Plan, passage: &str| plan.passage(passage).expect(passage).metres().0;
    // The sill behind the front doors spans the share of the wheelbase from 0.44 to 1: 0.56 · (4.4 − 3.3) = 0.616 m more.
    let more = far(&long, "sill-rear-left") - far(&usual, "sill-rear-left");
    assert!((more - 0.616).abs() < 0.011, "{more}");
    assert_eq!(long.size.width, usual.size.width);
}

#[test]
fn what_the_job_tells_wins_over_the_form() {
    let job = testkit::job(
        "body hatchback\nplace load-floor tank wet=~yes\npassage sill-front-left 2.5m sharp\n\
         place shelf label=Shelf from-front=3.6m from-left=0.5m height=0.9m\n\
         passage shelf-hole from=shelf to=load-floor hole\npassage lost from=shelf to=attic\n\
         place pocket from-front=1.6m from-left=0.9m height=0.6m",
    );
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let floor = plan.place("load-floor").expect("it is there");
    assert_eq!(floor.facts.behind, Given(model::body::Behind::Tank));
    assert_eq!(floor.facts.wet, Assumed(true));
    let sill = plan.passage("sill-front-left").expect("it is there");
    assert_eq!((sill.length, sill.facts.sharp), (Given(Metres(2.5)), Given(true)));
    let shelf = plan.place("shelf").expect("it is there");
    assert_eq!(
        (shelf.at.x, shelf.label.as_str(), shelf.of_the_form),
        (3.6, "Shelf", false)
    );
    let hole = plan.passage("shelf-hole").expect("it is there");
    assert_eq!(hole.facts.sharp, Assumed(true), "a bare hole has bare edges");
    // What ends nowhere is told, and a place without any way is reached from what is nearest.
    let problems: Vec<String> = plan.problems.iter().map(ToString::to_string).collect();
    assert_eq!(problems.len(), 1);
    assert!(
        problems[0].contains("lost") && problems[0].contains("attic"),
        "{problems:?}"
    );
    let way = plan.passage("pocket-way").expect("it is reached");
    let near = &plan.places[way.ends[0]].name;
    assert_eq!(near, "dash-middle");
}
