//! The body plan: everything is drawn once and within its bounds, runs follow their ways, and what is written can be read.

use drawing::{DisplayList, Look, Owner, Palette, PlanView, Shape, draw_plan, svg};
use kurbo::{Line, ParamCurveNearest, Point, Rect};
use model::body::BodyForm;
use model::{Job, Sheet, SheetKind};
use proptest::prelude::*;
use words::Words;

const SYSTEM: &str = "battery B1 place=battery-tray\n\
    fuse F1 60A place=battery-tray\n\
    head H1 place=dash-middle\n\
    amplifier A1 place=side-right\n\
    ground G1 place=side-right\n\
    ground G9\n\
    speaker S1 place=door-left\n\
    run W1 B1.+ F1.in 16mm2 0.3m\n\
    run W2 F1.out A1.+ 16mm2\n\
    run W3 A1.- G1.stud 16mm2 BK\n\
    run W4 H1.front-l A1.in1 0.5mm2\n\
    run W5 H1.front-r A1.in2 0.5mm2\n\
    run W6 A1.out1+ S1.+ 2.5mm2 GNWH\n\
    run W7 G9.stud G1.stud\n\
    run W8 B1.- G1.stud 16mm2 way-locked=yes BK\n";

/// The system in a body of this form, all ways laid but that of W8, which is locked without one; and its sheet as it lies.
fn system(form: BodyForm) -> (Job, Sheet) {
    system_in(form.word())
}

/// The same in a body as the text form writes it.
fn system_in(body: &str) -> (Job, Sheet) {
    let mut job = testkit::job(&format!("body {body}\n{SYSTEM}"));
    let plan = body::Plan::of(&job.settings.body).expect("it has a form");
    let routed = body::route_all(
        &plan,
        job.sheet(SheetKind::Plan).expect("it is there"),
        SheetKind::Plan,
    );
    job.apply(routed.edit);
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    let laid = body::lay(sheet, &job.settings).into_owned();
    (job, laid)
}

fn view(form: BodyForm) -> (Sheet, PlanView, DisplayList) {
    let (job, sheet) = system(form);
    let view = PlanView::of(
        &job.settings.body,
        &sheet,
        None,
        &Look::default(),
        &Words::english(),
    )
    .expect("it has a form");
    let list = draw_plan(&view, &sheet, None, &Look::default());
    (sheet, view, list)
}

fn texts(list: &DisplayList) -> Vec<(String, Rect)> {
    let all = list.items.iter().filter_map(drawing::Item::written);
    all.map(|(text, area)| (text.to_owned(), area)).collect()
}

#[test]
fn all_of_it_is_drawn_within_its_bounds_and_as_well_formed_svg() {
    for form in BodyForm::ALL {
        let (sheet, view, list) = view(*form);
        for item in &list.items {
            let inside = view.bounds().inflate(0.5, 0.5);
            assert_eq!(inside.union(item.bounds), inside, "{form:?}: {item:?}");
        }
        for part in sheet.parts.values() {
            let count = texts(&list).iter().filter(|(text, _)| *text == part.tag).count();
            assert_eq!(count, 1, "{form:?}: {}", part.tag);
        }
        for palette in [Palette::light(), Palette::dark(), Palette::print()] {
            let picture = svg(&list, &palette, view.bounds());
            roxmltree::Document::parse(&picture).expect("it is XML");
        }
        assert_eq!(view, self::view(*form).1, "the same every time");
    }
}

/// What the window leaves for the drawing, in pixels: beside notes and title block, at 1440 by 900 and at 1024 by 768.
const DESKTOP: kurbo::Size = kurbo::Size::new(1030.0, 790.0);
const TABLET: kurbo::Size = kurbo::Size::new(700.0, 610.0);

/// A sheet, what is known of it, and how it is looked at.
struct Case<'a> {
    told: String,
    job: &'a Job,
    sheet: &'a Sheet,
    study: &'a circuit::Study,
    words: &'a Words,
    overlay: drawing::Overlay,
    window: kurbo::Size,
}

impl Case<'_> {
    /// The sheet as the whole plan shows it in the window: the view for the zoom at which all of it can be seen, and that zoom.
    fn fitted(&self) -> (PlanView, DisplayList, f64) {
        let mut look = Look {
            overlay: self.overlay,
            ..Look::default()
        };
        let study = Some(self.study);
        for _ in 0..8 {
            let view = PlanView::of(&self.job.settings.body, self.sheet, study, &look, self.words);
            let view = view.expect("it has a form");
            let all = view.bounds();
            let fits = (self.window.width / all.width()).min(self.window.height / all.height());
            look.zoom = fits.min(1.4);
            if view.suits(&look) {
                let list = draw_plan(&view, self.sheet, study, &look);
                return (view, list, look.zoom);
            }
        }
        panic!("{}: the zoom does not settle", self.told);
    }
}

/// Nothing that is written lies on anything written, on a box or on the sign of a place, in any form of body, with the wheel
/// and the battery on either side, as large as a desk's and a tablet's window show it, in both languages; all of it can be
/// read there; and a tenth more width, which common faces take, changes nothing of that.
#[test]
fn no_text_lies_on_another_or_on_a_part() {
    let languages = [words::Language::English, words::Language::German].map(|language| {
        Words::of(words::Reader {
            language,
            ..words::Reader::default()
        })
    });
    let mut cases = Vec::new();
    for form in BodyForm::ALL {
        for (drive, battery) in [("left-hand", "front-battery"), ("right-hand", "rear-battery")] {
            let body = format!("{} {drive} {battery}", form.word());
            let (job, sheet) = system_in(&body);
            cases.push((body, job, sheet));
        }
    }
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        for (kind, sheet) in &job.sheets {
            let laid = body::lay(sheet, &job.settings).into_owned();
            cases.push((format!("{} {}", worked.key, kind.word()), job.clone(), laid));
        }
    }
    for (name, job, sheet) in &cases {
        let study = &circuit::study(sheet, &job.settings);
        for words in &languages {
            for (window, least) in [(DESKTOP, 0.9), (TABLET, 0.8)] {
                for overlay in drawing::Overlay::ALL.iter().copied() {
                    // What overlays say is mostly numbers, alike in both languages.
                    if overlay != drawing::Overlay::None && words.reader().language == words::Language::German
                    {
                        continue;
                    }
                    let case = Case {
                        told: format!("{name} in {window:?}, {}", overlay.title()),
                        job,
                        sheet,
                        study,
                        words,
                        overlay,
                        window,
                    };
                    let named = can_be_told_apart(&case);
                    assert!(named >= least, "{}: {named} of the names", case.told);
                }
            }
        }
    }
}

/// Holds what [`no_text_lies_on_another_or_on_a_part`] says of one picture. Gives the share of places that have their names.
fn can_be_told_apart(case: &Case<'_>) -> f64 {
    let Case {
        told, sheet, words, ..
    } = case;
    let (view, list, zoom) = case.fitted();
    let texts: Vec<(String, Rect)> = texts(&list)
        .into_iter()
        .map(|(text, area)| (text, area.inflate(0.05 * area.width(), 0.0)))
        .collect();
    for (number, (text, area)) in texts.iter().enumerate() {
        for (other, taken) in texts.iter().skip(number + 1) {
            assert!(!area.overlaps(*taken), "{told}: {text} on {other}");
        }
        let is_tag = sheet.part_by_tag(text).is_some();
        for part in view.parts.values() {
            let own = is_tag && part.area.contains(area.center());
            assert!(own || !part.area.overlaps(*area), "{told}: {text} on a part");
        }
        for (spot, place) in view.spots.iter().zip(&view.plan.places) {
            let name = &place.name;
            assert!(is_tag || !area.contains(*spot), "{told}: {text} on {name}");
        }
    }
    for item in &list.items {
        if let Shape::Text { size, text, .. } = &item.shape {
            assert!(size * zoom > 8.5, "{told}: {text} has {} pixels", size * zoom);
        }
    }
    let named = view.plan.places.iter().filter(|place| {
        let name = words.say(&place.said_on_plan());
        texts.iter().any(|(text, _)| *text == name)
    });
    named.count() as f64 / view.plan.places.len() as f64
}

#[test]
fn a_run_passes_every_place_of_its_way() {
    for form in BodyForm::ALL {
        let (sheet, view, _) = view(*form);
        let mut walked = 0;
        for (id, run) in &view.runs {
            let Some(walk) = &run.walk else { continue };
            for place in walk.places() {
                let spot = view.spots[place];
                let off = run
                    .points
                    .windows(2)
                    .map(|pair| Line::new(pair[0], pair[1]).nearest(spot, 1e-3).distance_sq)
                    .fold(f64::INFINITY, f64::min);
                // Runs lie side by side, at most 22 units off the middle, and turn short of the place.
                assert!(
                    off.sqrt() < 40.0,
                    "{form:?}: {} passes {} at {}",
                    sheet.runs[id].tag,
                    view.plan.places[place].name,
                    off.sqrt()
                );
                walked += 1;
            }
        }
        assert!(walked > 20, "{form:?}");
    }
}

#[test]
fn what_has_no_place_stands_below_and_what_has_no_way_is_broken() {
    let (sheet, view, list) = view(BodyForm::Estate);
    let of = |tag: &str| sheet.part_by_tag(tag).expect("it is there").0;
    let (lost, amplifier) = (&view.parts[&of("G9")], &view.parts[&of("A1")]);
    assert_eq!(
        (lost.place, amplifier.place),
        (None, view.plan.place_index("side-right"))
    );
    assert!(lost.area.y0 > view.parts[&of("S1")].area.y1);
    let run = |tag: &str| sheet.run_by_tag(tag).expect("it is there").0;
    assert!(!view.runs.contains_key(&run("W7")), "its part is not in the car");
    assert_eq!(view.runs[&run("W8")].walk, None);
    let dashed = list.items.iter().any(|item| {
        item.owner == Owner::Run(run("W8"))
            && matches!(&item.shape, Shape::Path { stroke: Some(stroke), .. } if stroke.dash.is_some())
    });
    assert!(dashed);
    // A length that follows from the way stands in parentheses.
    let label = &view.runs[&run("W2")].label.as_ref().expect("it has room").text;
    assert!(label.starts_with("W2  (") && label.ends_with(" m)"), "{label}");
}

#[test]
fn parts_runs_and_places_are_hit() {
    let (sheet, view, _) = view(BodyForm::Van);
    let (id, _) = sheet.part_by_tag("A1").expect("it is there");
    assert_eq!(
        view.hit(view.parts[&id].area.center(), 2.0),
        Some(Owner::Part(id))
    );
    let (id, _) = sheet.run_by_tag("W2").expect("it is there");
    let points = &view.runs[&id].points;
    let middle: Point = points[4].midpoint(points[5]);
    assert_eq!(view.hit(middle, 1.0), Some(Owner::Run(id)));
    assert_eq!(view.hit(Point::new(-1e4, 0.0), 10.0), None);
    // The load floor is drawn where it is: 0.5 of 2 m across, and in the middle behind the seats.
    let floor = view.plan.place_index("load-floor").expect("it is there");
    let (x, y) = view.metres_at(view.spots[floor]);
    let at = view.plan.places[floor].at;
    assert!((x - at.x).abs() < 0.2 && (y - at.y).abs() < 0.2, "{x} {y} {at:?}");
    assert_eq!(view.metres_at(Point::new(-500.0, -500.0)), (0.0, 2.0));
    for (place, spot) in view.spots.iter().enumerate() {
        assert_eq!(view.place_near(*spot + kurbo::Vec2::new(3.0, -2.0)), Some(place));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    /// Whatever a job tells of its body, with places and passages of its own anywhere: it is drawn, all of it within its
    /// bounds, and its picture is XML.
    #[test]
    fn any_body_is_drawn(told in testkit::any::any_body(), form in proptest::sample::select(BodyForm::ALL)) {
        let (mut job, _) = system(form);
        job.settings.body = told;
        job.settings.body.shape.form = model::Fact::Given(form);
        let sheet = job.sheet(SheetKind::Plan).expect("it is there");
        let laid = body::lay(sheet, &job.settings);
        let view = PlanView::of(&job.settings.body, &laid, None, &Look::default(), &Words::english()).expect("it has a form");
        let list = draw_plan(&view, &laid, None, &Look::default());
        prop_assert!(view.bounds().is_finite());
        for item in &list.items {
            prop_assert!(item.bounds.is_finite());
        }
        roxmltree::Document::parse(&svg(&list, &Palette::light(), view.bounds())).expect("it is XML");
    }
}

/// The feed from battery to amplifier and a speaker's lead, laid through the body: the overlay of currents paints what carries
/// one by its ramp, what carries none steps back, and says amps where the length stood.
#[test]
fn an_overlay_paints_the_runs_of_the_plan() {
    let text = "body hatchback left-hand front-battery\nbattery B1 agm 70Ah place=battery-tray\nload L1 power=120W place=load-floor\n\
        run W1 B1.+ L1.+ 16mm2 RD route=battery-bulkhead/bulkhead-grommet-left/sill-front-left/sill-rear-left\n\
        run W2 L1.- B1.- 16mm2 1m BK\n";
    let job = model::text::parse_lenient(text).0;
    let sheet = job.sheets.values().next().expect("a sheet").clone();
    let laid = body::lay(&sheet, &job.settings).into_owned();
    let study = circuit::study(&laid, &job.settings);
    let look = Look {
        overlay: drawing::Overlay::Current,
        ..Look::default()
    };
    let view = PlanView::of(
        &job.settings.body,
        &laid,
        Some(&study),
        &look,
        &words::Words::english(),
    )
    .expect("a plan");
    let inks = |list: &DisplayList| -> usize {
        let ramp = |item: &&drawing::Item| matches!(&item.shape, Shape::Path { stroke: Some(stroke), .. } if matches!(stroke.ink, drawing::Ink::Ramp(_)));
        list.items.iter().filter(ramp).count()
    };
    let (plain, shown) = (
        draw_plan(&view, &laid, Some(&study), &Look::default()),
        draw_plan(&view, &laid, Some(&study), &look),
    );
    assert_eq!(inks(&plain), 0);
    assert!(inks(&shown) > 0);
    let said = format!("{shown:?}");
    assert!(said.contains("W1  ") && said.contains(" A\""), "{said}");
}

/// Marks at every part, at every second run and at every third passage, worse than any real job: each keeps clear of whatever
/// is written, of parts and of one another, at desk and tablet, and is found where it stands.
#[test]
fn marks_keep_clear_of_all_that_is_written() {
    let (mut shown, mut all) = (0, 0);
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        let sheet = job.sheets.values().next().expect("a sheet");
        let laid = body::lay(sheet, &job.settings).into_owned();
        for window in [DESKTOP, TABLET] {
            let case = Case {
                told: format!("{} in {window:?}", worked.key),
                job: &job,
                sheet: &laid,
                study: &circuit::study(&laid, &job.settings),
                words: &Words::english(),
                overlay: drawing::Overlay::None,
                window,
            };
            let (view, bare, zoom) = case.fitted();
            let parts = laid.parts.keys().map(|id| (vec![*id], vec![], vec![]));
            let runs = laid.runs.keys().step_by(2).map(|id| (vec![], vec![*id], vec![]));
            let passages = view.plan.passages.iter().step_by(3);
            let passages = passages.map(|it| (vec![], vec![], vec![it.name.clone()]));
            let marks = parts.chain(runs).chain(passages).enumerate();
            let marks: Vec<drawing::Mark> = marks
                .map(|(number, (parts, runs, spots))| drawing::Mark {
                    finding: number as u32,
                    shape: [
                        drawing::MarkShape::Octagon,
                        drawing::MarkShape::Triangle,
                        drawing::MarkShape::Dot,
                    ][number % 3],
                    parts,
                    runs,
                    spots,
                    label: (number + 1).to_string(),
                })
                .collect();
            let look = Look {
                zoom,
                marks,
                ..Look::default()
            };
            let list = draw_plan(&view, &laid, Some(case.study), &look);
            let written = texts(&bare);
            let mut boxes: Vec<(u32, Rect)> = Vec::new();
            for item in &list.items {
                let Owner::Finding(number) = item.owner else {
                    continue;
                };
                let Some((_, label)) = item.written() else {
                    continue;
                };
                for (text, taken) in &written {
                    assert!(!label.overlaps(*taken), "{}: mark {number} on {text}", case.told);
                }
                let at = view.mark_spot(&look, number).expect("it is drawn");
                // A dot is half as large as the others.
                let half = if number % 3 == 2 { 0.45 } else { 0.8 } * 9.0 / zoom.clamp(0.25, 1.0);
                boxes.push((number, Rect::from_center_size(at, (2.0 * half, 2.0 * half))));
                let hit = view.mark_at(&look, at, 0.0);
                assert_eq!(hit, Some(number), "{}", case.told);
            }
            for (place, (number, area)) in boxes.iter().enumerate() {
                for (text, taken) in &written {
                    assert!(!area.overlaps(*taken), "{}: mark {number} on {text}", case.told);
                }
                for part in view.parts.values() {
                    assert!(
                        !area.overlaps(part.area),
                        "{}: mark {number} on a part",
                        case.told
                    );
                }
                for (other, taken) in boxes.iter().skip(place + 1) {
                    let inner = area.inset(-1.0);
                    assert!(
                        !inner.overlaps(*taken),
                        "{}: marks {number} and {other}",
                        case.told
                    );
                }
            }
            shown += boxes.len();
            all += look.marks.len();
        }
    }
    assert!(shown * 10 > all * 9, "{shown} of {all} have room of their own");
}
