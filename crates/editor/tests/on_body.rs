//! The body plan on the table: parts are carried from place to place, their runs find their way anew, and all of it is undone.

use editor::{Action, Button, Editor, Input, Key, Mods, Pointer, PointerKind, ScreenPoint, Thing};
use kurbo::Point;
use model::{Fact, PartId, SheetKind};

const JOB: &str = r#"
body estate left-hand front-battery
battery B1 agm 70Ah place=battery-tray
fuse F1 strip61 60A place=battery-tray
amplifier A1 place=seat-back-left mounted=seat-back
ground E1 place=wheel-arch-left
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 ~4m RD
run W3 A1.- E1.stud 16mm2 ~0.5m BK
"#;

fn on_plan(text: &str) -> Editor {
    let job = model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"));
    let mut editor = Editor::new(job);
    editor.resize(1600.0, 900.0, editor::Margins::default());
    editor.perform(Action::BodyPlan);
    assert!(editor.is_on_body());
    editor
}

fn part(editor: &Editor, tag: &str) -> PartId {
    editor
        .sheet()
        .part_by_tag(tag)
        .unwrap_or_else(|| panic!("{tag}"))
        .0
}

fn place(editor: &Editor, tag: &str) -> String {
    editor.sheet().parts[&part(editor, tag)]
        .place
        .clone()
        .unwrap_or_default()
}

fn spot(editor: &Editor, place: &str) -> ScreenPoint {
    let view = editor.plan_view().expect("a plan");
    let at = view
        .plan
        .place_index(place)
        .unwrap_or_else(|| panic!("no place {place}"));
    editor.camera().to_screen(view.spots[at])
}

fn pointer(at: ScreenPoint) -> Pointer {
    Pointer {
        id: 1,
        at,
        kind: PointerKind::Mouse,
        mods: Mods::default(),
    }
}

fn carry(editor: &mut Editor, tag: &str, to: ScreenPoint) {
    let area = editor
        .area_of(&Thing::Part(part(editor, tag)))
        .expect("it is on the plan");
    let from = editor.camera().to_screen(area.center());
    editor.handle(Input::Move(pointer(from)));
    editor.handle(Input::Down(pointer(from), Button::Primary));
    editor.handle(Input::Move(pointer(ScreenPoint::new(
        (from.x + to.x) / 2.0,
        (from.y + to.y) / 2.0,
    ))));
    editor.handle(Input::Move(pointer(to)));
    assert!(!editor.tool_picture().items.is_empty(), "what is carried is seen");
    editor.handle(Input::Up(pointer(to)));
}

/// Length of a run as the engine takes it.
fn length(editor: &Editor, tag: &str) -> Fact<f64> {
    let laid = body::lay(editor.sheet(), &editor.job().settings).into_owned();
    match laid.run_by_tag(tag).expect("the run").1.wire.length {
        Fact::Computed(it) => Fact::Computed(it.0),
        Fact::Assumed(it) => Fact::Assumed(it.0),
        Fact::Given(it) => Fact::Given(it.0),
        Fact::Unknown => Fact::Unknown,
    }
}

#[test]
fn an_amplifier_is_carried_off_the_seat_back_and_its_runs_follow() {
    let mut editor = on_plan(JOB);
    let start = model::file::write(editor.job());
    editor.perform(Action::RouteAll);
    let routed = model::file::write(editor.job());
    let before = length(&editor, "W2");
    assert!(matches!(before, Fact::Computed(_)), "{before:?}");
    // The length that was measured stays what was measured.
    assert_eq!(length(&editor, "W1"), Fact::Given(0.3));
    let target = spot(&editor, "side-left");
    carry(&mut editor, "A1", target);
    assert_eq!(place(&editor, "A1"), "side-left");
    let after = length(&editor, "W2");
    assert!(
        matches!((before, after), (Fact::Computed(a), Fact::Computed(b)) if (a - b).abs() > 0.05),
        "{before:?} {after:?}"
    );
    let plan = body::Plan::of(&editor.job().settings.body).expect("a plan");
    let run = editor.sheet().run_by_tag("W2").expect("W2").1;
    assert!(
        plan.walk(editor.sheet(), run).is_ok(),
        "its way leads from end to end"
    );
    // One step each, and back to the same bytes.
    editor.perform(Action::Undo);
    assert_eq!(model::file::write(editor.job()), routed);
    editor.perform(Action::Undo);
    assert_eq!(model::file::write(editor.job()), start);
}

#[test]
fn a_locked_way_stays_and_one_that_is_not_laid_is_not_laid_unasked() {
    let mut editor = on_plan(&JOB.replace(
        "~4m RD",
        "~4m RD route=battery-bulkhead/bulkhead-left way-locked=yes",
    ));
    let target = spot(&editor, "side-left");
    carry(&mut editor, "A1", target);
    let sheet = editor.sheet();
    assert_eq!(
        sheet.run_by_tag("W2").expect("W2").1.route,
        ["battery-bulkhead", "bulkhead-left"]
    );
    assert!(sheet.run_by_tag("W3").expect("W3").1.route.is_empty());
}

#[test]
fn far_from_every_place_it_stays_where_it_was_and_escape_backs_out() {
    let mut editor = on_plan(JOB);
    let before = model::file::write(editor.job());
    carry(&mut editor, "A1", ScreenPoint::new(20.0, 20.0));
    assert_eq!(model::file::write(editor.job()), before);
    let area = editor
        .area_of(&Thing::Part(part(&editor, "A1")))
        .expect("on the plan");
    let from = editor.camera().to_screen(area.center());
    let to = spot(&editor, "side-left");
    editor.handle(Input::Down(pointer(from), Button::Primary));
    editor.handle(Input::Move(pointer(to)));
    editor.handle(Input::Key(Key::Escape, Mods::default()));
    editor.handle(Input::Up(pointer(to)));
    assert_eq!(model::file::write(editor.job()), before);
    assert!(editor.is_on_body());
}

#[test]
fn with_keys_a_part_goes_to_the_next_place_and_back() {
    let mut editor = on_plan(JOB);
    let area = editor
        .area_of(&Thing::Part(part(&editor, "A1")))
        .expect("on the plan");
    let at = editor.camera().to_screen(area.center());
    editor.handle(Input::Down(pointer(at), Button::Primary));
    let effects = editor.handle(Input::Up(pointer(at)));
    assert!(effects.open.is_some(), "its slip opens");
    let before = place(&editor, "A1");
    editor.handle(Input::Key(Key::Left, Mods::default()));
    let ahead = place(&editor, "A1");
    assert_ne!(ahead, before);
    let x = |place: &str, editor: &Editor| spot(editor, place).x;
    assert!(x(&ahead, &editor) < x(&before, &editor), "{before} {ahead}");
    editor.perform(Action::Undo);
    assert_eq!(place(&editor, "A1"), before);
}

#[test]
fn a_run_has_two_ways_with_reasons_to_choose_from() {
    let mut editor = on_plan(JOB);
    let run = editor.sheet().run_by_tag("W2").expect("W2").0;
    let ways = editor.ways_of(run);
    assert_eq!(ways.len(), 2, "{ways:?}");
    assert!(ways.iter().all(|way| !way.reasons.is_empty() && !way.is_taken));
    editor
        .lay_along(run, ways[1].route.clone())
        .expect("it is on the sheet");
    let taken =
        |editor: &Editor| -> Vec<bool> { editor.ways_of(run).iter().map(|way| way.is_taken).collect() };
    assert_eq!(taken(&editor), [false, true]);
    // The same way, told by its passages alone.
    let plan = body::Plan::of(&editor.job().settings.body).expect("it has a form");
    let route = &ways[1].route;
    let passages: Vec<String> = route
        .iter()
        .filter(|it| plan.place_index(it).is_none())
        .cloned()
        .collect();
    assert!(!passages.is_empty() && passages.len() < route.len());
    editor.lay_along(run, passages).expect("it is on the sheet");
    assert_eq!(taken(&editor), [false, true]);
}

#[test]
fn without_a_form_the_plan_waits_and_nothing_breaks() {
    let mut editor = on_plan("battery B1 place=nowhere\nload L1");
    assert!(editor.plan_view().is_none());
    for input in [
        Input::Move(pointer(ScreenPoint::new(300.0, 300.0))),
        Input::Down(pointer(ScreenPoint::new(300.0, 300.0)), Button::Primary),
        Input::Move(pointer(ScreenPoint::new(400.0, 300.0))),
        Input::Up(pointer(ScreenPoint::new(400.0, 300.0))),
        Input::Key(Key::Left, Mods::default()),
    ] {
        editor.handle(input);
    }
    editor.perform(Action::Fit);
    editor.perform(Action::RouteAll);
    assert!(editor.picture().items.is_empty());
    let edit = model::edits::set_body_property(editor.job(), "form", "van").expect("a form");
    editor.make(Ok(edit)).expect("it is made");
    assert!(editor.plan_view().is_some());
    // A part at a place that this body does not have is shown, and can be carried to one that it has.
    let target = spot(&editor, "dash-middle");
    carry(&mut editor, "B1", target);
    assert_eq!(place(&editor, "B1"), "dash-middle");
}

#[test]
fn who_only_looks_carries_nothing_and_the_board_comes_back_as_it_was() {
    let job = model::text::parse(JOB).unwrap_or_else(|errors| panic!("{errors}"));
    let mut editor = Editor::looking(job);
    editor.resize(1600.0, 900.0, editor::Margins::default());
    editor.fit();
    let before = *editor.camera();
    let text = model::file::write(editor.job());
    editor.perform(Action::BodyPlan);
    let target = spot(&editor, "side-left");
    let area = editor
        .area_of(&Thing::Part(part(&editor, "A1")))
        .expect("on the plan");
    let from = editor.camera().to_screen(area.center());
    editor.handle(Input::Down(pointer(from), Button::Primary));
    editor.handle(Input::Move(pointer(target)));
    editor.handle(Input::Up(pointer(target)));
    editor.perform(Action::RouteAll);
    assert_eq!(model::file::write(editor.job()), text);
    editor.perform(Action::BodyPlan);
    assert!(!editor.is_on_body());
    assert_eq!(editor.camera().zoom, before.zoom);
    let origin: Point = editor.camera().origin;
    assert_eq!(origin, before.origin);
    assert_eq!(editor.on(), SheetKind::Plan);
}

/// Letters keep their size on the screen: zoomed out they are larger on the drawing, zoomed in smaller; and an overlay says
/// what it says where there is room for it.
#[test]
fn what_is_written_follows_zoom_and_overlay() {
    let mut editor = on_plan(JOB);
    let sizes = |editor: &Editor| -> Vec<(String, f64)> {
        let zoom = editor.camera().zoom;
        let all = editor.picture().items;
        let of = |item: &drawing::Item| match &item.shape {
            // Marks have the size that they have on the board.
            drawing::Shape::Text { .. } if matches!(item.owner, drawing::Owner::Finding(_)) => None,
            drawing::Shape::Text { text, size, .. } => Some((text.clone(), size * zoom)),
            drawing::Shape::Path { .. } => None,
        };
        all.iter().filter_map(of).collect()
    };
    for action in [
        Action::ZoomIn,
        Action::ZoomIn,
        Action::Fit,
        Action::ZoomOut,
        Action::ZoomOut,
    ] {
        editor.perform(action);
        for (text, px) in sizes(&editor) {
            assert!(
                (8.0..24.0).contains(&px),
                "{text}: {px} px at {}",
                editor.camera().zoom
            );
        }
    }
    editor.perform(Action::Fit);
    editor.perform(Action::OverlayHeat);
    let said = sizes(&editor);
    assert!(said.iter().any(|(text, _)| text.ends_with("°C")), "{said:?}");
}

const OWN: &str = r#"
body estate left-hand front-battery
place under-shelf label="Shelf" from-front=3.2m from-left=0.9m
battery B1 agm 70Ah place=battery-tray
fuse F1 strip61 60A place=battery-tray
load L1 power=200W place=under-shelf
ground E1 bare place=footwell-left
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=battery-bulkhead/bulkhead-grommet-left guards=bulkhead-grommet-left:nothing
run W3 L1.- E1.stud 16mm2 BK
"#;

/// Where the job says that its own place is.
fn told(editor: &Editor) -> (f64, f64) {
    let own = &editor.job().settings.body.places["under-shelf"];
    let metres = |fact: &Fact<model::quantity::Metres>| fact.value().expect("it is told").0;
    (metres(&own.from_front), metres(&own.from_left))
}

#[test]
fn a_place_of_the_jobs_own_is_carried_by_pointer_finger_and_keys() {
    let mut editor = on_plan(OWN);
    assert_eq!(told(&editor), (3.2, 0.9));
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        let from = spot(&editor, "under-shelf");
        let to = ScreenPoint::new(from.x + 120.0, from.y - 60.0);
        let at = |at: ScreenPoint| Pointer { kind, ..pointer(at) };
        let there = editor
            .plan_view()
            .expect("a plan")
            .metres_at(editor.camera().to_board(to));
        let before = length(&editor, "W2");
        editor.handle(Input::Down(at(from), Button::Primary));
        editor.handle(Input::Move(at(ScreenPoint::new(from.x + 60.0, from.y))));
        editor.handle(Input::Move(at(to)));
        assert!(!editor.tool_picture().items.is_empty(), "where it goes is seen");
        editor.handle(Input::Up(at(to)));
        assert_eq!(told(&editor), there, "{kind:?}");
        assert_ne!(
            length(&editor, "W2"),
            before,
            "what leads there is longer or shorter"
        );
        editor.perform(Action::Undo);
        assert_eq!(told(&editor), (3.2, 0.9), "{kind:?}: one step");
        assert_eq!(length(&editor, "W2"), before);
    }
    // Escape backs out of a gesture in hand.
    let from = spot(&editor, "under-shelf");
    editor.handle(Input::Down(pointer(from), Button::Primary));
    editor.handle(Input::Move(pointer(ScreenPoint::new(from.x + 90.0, from.y))));
    editor.handle(Input::Key(Key::Escape, Mods::default()));
    editor.handle(Input::Up(pointer(ScreenPoint::new(from.x + 90.0, from.y))));
    assert_eq!(told(&editor), (3.2, 0.9));
    // Taken in hand, arrow keys move it: by 5 cm, with Shift by 1 cm. The left side lies below.
    let effects = editor.take_place(Some("under-shelf".to_owned()));
    assert!(effects.say.is_some(), "what can be done with it is said");
    assert_eq!(editor.held_place(), Some("under-shelf"));
    editor.handle(Input::Key(Key::Right, Mods::default()));
    editor.handle(Input::Key(
        Key::Down,
        Mods {
            shift: true,
            ..Mods::default()
        },
    ));
    assert_eq!(told(&editor), (3.25, 0.89));
    for _ in 0..400 {
        editor.handle(Input::Key(Key::Left, Mods::default()));
    }
    assert_eq!(told(&editor).0, 0.0, "no further than the bumper");
    editor.handle(Input::Key(Key::Escape, Mods::default()));
    assert_eq!(editor.held_place(), None);
    // What the form has is where the form has it.
    editor.take_place(Some("battery-tray".to_owned()));
    assert_eq!(editor.held_place(), None);
}

#[test]
fn a_finding_is_marked_where_it_lies_and_its_mark_leads_to_it() {
    let mut editor = on_plan(OWN);
    let findings = editor.analysis().findings.clone();
    let (number, edge) = findings
        .iter()
        .enumerate()
        .find(|(_, finding)| finding.check == "bare-edge" && !finding.undecided)
        .expect("the bare edge");
    assert_eq!(edge.spots, ["bulkhead-grommet-left"]);
    // Marks have the numbers of the list, and every finding that is about something on the plan has its own.
    let view = editor.plan_view().expect("a plan").clone();
    for (number, finding) in findings.iter().enumerate() {
        let there = finding.parts.iter().any(|id| view.parts.contains_key(id))
            || finding.runs.iter().any(|id| view.runs.contains_key(id));
        let spot = view.mark_spot(&editor.look(), number as u32);
        assert_eq!(spot.is_some(), there, "{}", finding.check);
    }
    // It stands by the passage.
    let passage = view
        .plan
        .passages
        .iter()
        .find(|it| it.name == edge.spots[0])
        .expect("it");
    let [a, b] = passage.ends.map(|end| view.spots[end]);
    let at = view.mark_spot(&editor.look(), number as u32).expect("a mark");
    assert!(
        at.distance(a.midpoint(b)) < 100.0,
        "{at:?} is by {:?}",
        a.midpoint(b)
    );
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        let at = Pointer {
            kind,
            ..pointer(editor.camera().to_screen(at))
        };
        editor.handle(Input::Down(at, Button::Primary));
        let effects = editor.handle(Input::Up(at));
        assert_eq!(effects.open, Some(editor::Open::Finding(number)), "{kind:?}");
        editor.handle(Input::Key(Key::Escape, Mods::default()));
        editor.fit();
    }
    // Mended, it is gone.
    let mut editor = on_plan(&OWN.replace(":nothing", ":grommet"));
    assert!(
        !editor
            .analysis()
            .findings
            .iter()
            .any(|it| it.check == "bare-edge" && !it.undecided)
    );
    editor.fit();
}

#[test]
fn a_long_press_opens_details_on_the_plan_too() {
    let mut editor = on_plan(JOB);
    let area = editor
        .area_of(&Thing::Part(part(&editor, "A1")))
        .expect("on the plan");
    let at = Pointer {
        kind: PointerKind::Touch,
        ..pointer(editor.camera().to_screen(area.center()))
    };
    editor.handle(Input::Down(at, Button::Primary));
    let effects = editor.handle(Input::Held);
    let thing = Thing::Part(part(&editor, "A1"));
    assert_eq!(effects.open, Some(editor::Open::Details(thing)));
    editor.handle(Input::Up(at));
}
