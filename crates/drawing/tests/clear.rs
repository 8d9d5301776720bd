//! What is written can be read: marks, tags, labels and readings keep clear of one another, on the worked jobs as they are
//! seen on a laptop and on a tablet.

use drawing::{DisplayList, Layout, Look, Mark, MarkShape, Overlay, Owner, Shape, draw, mark_spot};
use kurbo::{Point, Rect};
use model::{PartKind, Sheet};

/// Each worked job's last sheet, laid out, with its study.
fn worked() -> Vec<(&'static str, Sheet, Layout, circuit::Study)> {
    lessons::WORKED_JOBS
        .iter()
        .map(|worked| {
            let job = worked.job();
            let sheet = job
                .sheets
                .values()
                .next_back()
                .expect("a worked job has a sheet")
                .clone();
            let study = circuit::study(&sheet, &job.settings);
            let layout = Layout::of(&sheet);
            (worked.key, sheet, layout, study)
        })
        .collect()
}

/// Zooms at which the whole of a sheet fits windows of these sizes in pixels, and one closer.
fn zooms(layout: &Layout) -> Vec<f64> {
    let size = layout
        .bounds()
        .expect("a sheet with parts")
        .inflate(40.0, 40.0)
        .size();
    let fit = |width: f64, height: f64| (width / size.width).min(height / size.height).min(1.0);
    vec![
        fit(780.0, 960.0),
        fit(980.0, 640.0),
        fit(1500.0, 900.0),
        0.75,
        1.0,
    ]
}

fn view(layout: &Layout) -> Rect {
    layout.bounds().expect("a sheet with parts").inflate(200.0, 200.0)
}

/// What is written: whose it is, the words, the box of the letters.
fn texts(list: &DisplayList) -> Vec<(Owner, String, Rect)> {
    let of = |item: &drawing::Item| {
        let (text, area) = item.written()?;
        Some((item.owner, text.to_owned(), area))
    };
    list.items.iter().filter_map(of).collect()
}

fn overlap(a: Rect, b: Rect) -> f64 {
    let both = a.intersect(b);
    both.width().max(0.0) * both.height().max(0.0)
}

/// Every sheet of every worked job and of every lesson.
fn all_sheets() -> Vec<(String, Sheet, circuit::Study)> {
    let worked = lessons::WORKED_JOBS
        .iter()
        .map(|worked| (worked.key.to_owned(), worked.job()));
    let mut all = Vec::new();
    let mut add = |key: String, sheet: Sheet, settings: &model::Settings| {
        let study = circuit::study(&sheet, settings);
        all.push((key, sheet, study));
    };
    for (key, job) in worked {
        for (kind, sheet) in &job.sheets {
            add(format!("{key} {}", kind.word()), sheet.clone(), &job.settings);
        }
    }
    for built_in in lessons::LESSONS {
        let lesson = built_in.lesson();
        for version in lessons::Version::BOTH {
            let settings = lesson.version(version).settings;
            add(
                format!("{}/{}", built_in.key, version.word()),
                lesson.sheet(version),
                &settings,
            );
        }
    }
    all
}

/// A finding at every part, one more at every second, and one at every third run: worse than any real job.
fn crowded(sheet: &Sheet) -> Vec<Mark> {
    let parts: Vec<_> = sheet.parts.keys().copied().collect();
    let at_parts = parts
        .iter()
        .chain(parts.iter().step_by(2))
        .map(|id| (vec![*id], vec![]));
    let at_runs = sheet.runs.keys().step_by(3).map(|id| (vec![], vec![*id]));
    at_parts
        .chain(at_runs)
        .enumerate()
        .map(|(place, (parts, runs))| Mark {
            finding: place as u32,
            shape: [MarkShape::Octagon, MarkShape::Triangle, MarkShape::Dot][place % 3],
            parts,
            runs,
            spots: Vec::new(),
            label: (place + 1).to_string(),
        })
        .collect()
}

#[test]
fn marks_keep_clear_of_parts_letters_and_one_another_at_any_zoom() {
    for (key, sheet, study) in all_sheets() {
        let layout = Layout::of(&sheet);
        let marks = crowded(&sheet);
        let mut row = vec![0.3, 0.42, 0.52, 0.62, 0.75, 0.9, 1.0, 1.4];
        row.extend(zooms(&layout));
        for zoom in row {
            let look = Look {
                zoom,
                marks: marks.clone(),
                ..Look::default()
            };
            let list = draw(&sheet, &layout, Some(&study), &look, view(&layout));
            let written = texts(&list);
            let side = 2.0 * 9.0 / zoom.clamp(0.25, 1.0);
            let mut spots: Vec<(Point, f64)> = Vec::new();
            for mark in &marks {
                let at =
                    mark_spot(&layout, &look, mark.finding).expect("it speaks of something on the board");
                // One that stands for several is one. A dot is half as wide as the others.
                if !spots.iter().any(|(other, _)| *other == at) {
                    let share = if mark.shape == MarkShape::Dot { 0.42 } else { 0.8 };
                    spots.push((at, share * side));
                }
            }
            // From half size up each finding has a mark of its own.
            if zoom >= 0.5 {
                assert_eq!(spots.len(), marks.len(), "{key} at {zoom:.2}");
            } else {
                assert!(spots.len() > sheet.parts.len() / 2, "{key} at {zoom:.2}");
            }
            for (place, (at, wide)) in spots.iter().enumerate() {
                let area = Rect::from_center_size(*at, (*wide, *wide));
                for (owner, text, letters) in &written {
                    let covers = overlap(area, *letters);
                    assert!(
                        matches!(owner, Owner::Finding(_)) || covers < 0.05 * letters.area(),
                        "{key} at zoom {zoom:.2}: the mark at {at} covers {covers:.0} of `{text}`"
                    );
                }
                for (part, drawn) in layout.parts() {
                    // It may stand on the edge, no more.
                    assert!(
                        overlap(area, drawn.outline.inset(-3.0)) == 0.0,
                        "{key} at zoom {zoom:.2}: the mark at {at} covers {}",
                        sheet.parts[&part].tag
                    );
                }
                for (other, there) in spots.iter().skip(place + 1) {
                    assert!(
                        at.distance(*other) > (wide + there) * 0.45,
                        "{key} at zoom {zoom:.2}: marks at {at} and {other}"
                    );
                }
            }
            // What is written in a mark is not covered by another mark.
            let numbers: Vec<_> = written
                .iter()
                .filter(|(owner, ..)| matches!(owner, Owner::Finding(_)))
                .collect();
            for (place, (owner, text, area)) in numbers.iter().enumerate() {
                for (other, there, box_there) in numbers.iter().skip(place + 1) {
                    assert!(
                        owner == other || overlap(*area, *box_there) < 0.5,
                        "{key} at zoom {zoom:.2}: {text} over {there}"
                    );
                }
            }
        }
    }
}

#[test]
fn a_mark_is_as_wide_as_what_is_written_in_it() {
    let job = lessons::WorkedJob::of("hatchback").expect("a worked job").job();
    let sheet = job.sheets.values().next().expect("a sheet");
    let layout = Layout::of(sheet);
    let mark = Mark {
        finding: 0,
        shape: MarkShape::Octagon,
        parts: vec![],
        runs: sheet.runs.keys().take(1).copied().collect(),
        spots: Vec::new(),
        label: "1·2·7·11".to_owned(),
    };
    let look = Look {
        marks: vec![mark],
        ..Look::default()
    };
    let list = draw(sheet, &layout, None, &look, view(&layout));
    let (mut shape, mut letters) = (None, None);
    for item in list
        .items
        .iter()
        .filter(|item| matches!(item.owner, Owner::Finding(_)))
    {
        if let Shape::Path { path, .. } = &item.shape {
            shape = Some(kurbo::Shape::bounding_box(path));
        }
        letters = item.written().map(|(_, area)| area).or(letters);
    }
    let (shape, letters) = (shape.expect("a shape"), letters.expect("its letters"));
    assert!(
        shape.x0 < letters.x0 && letters.x1 < shape.x1,
        "{letters} in {shape}"
    );
}

#[test]
fn every_channel_is_named_and_no_name_lies_over_a_run_or_a_part() {
    let mut named = 0;
    for (key, sheet, layout, study) in worked() {
        // Which runs belong together: those of one channel.
        let channel_of = |id: &model::RunId| study.channels.iter().position(|load| load.runs.contains(id));
        for zoom in zooms(&layout).into_iter().filter(|zoom| *zoom >= 0.28) {
            let look = Look {
                zoom,
                overlay: Overlay::Speakers,
                ..Look::default()
            };
            let written = texts(&draw(&sheet, &layout, Some(&study), &look, view(&layout)));
            let names: Vec<(model::RunId, &String, Rect)> = written
                .iter()
                .filter_map(|(owner, text, area)| match owner {
                    Owner::Run(id) => Some((*id, text, *area)),
                    _ => None,
                })
                .collect();
            for (number, load) in study
                .channels
                .iter()
                .enumerate()
                .filter(|(_, load)| !load.runs.is_empty())
            {
                assert!(
                    names.iter().any(|(id, ..)| channel_of(id) == Some(number)),
                    "{key} at zoom {zoom:.2}: channel {} of {} has no name",
                    load.channel,
                    sheet.parts[&load.part].tag
                );
                named += 1;
            }
            for (place, (id, text, area)) in names.iter().enumerate() {
                for (other, _, there) in names.iter().skip(place + 1) {
                    assert!(
                        !area.overlaps(*there),
                        "{key} at {zoom:.2}: `{text}` over the name of {other}"
                    );
                }
                for (part, drawn) in layout.parts() {
                    let tag = &sheet.parts[&part].tag;
                    assert!(
                        !area.overlaps(drawn.outline),
                        "{key} at {zoom:.2}: `{text}` over {tag}"
                    );
                }
                for (other, way) in layout
                    .runs()
                    .filter(|(other, _)| channel_of(other) != channel_of(id))
                {
                    let tag = &sheet.runs[&other].tag;
                    for (a, b) in way.pieces() {
                        let piece = Rect::from_points(a, b).inflate(way.width / 2.0, way.width / 2.0);
                        assert!(!area.overlaps(piece), "{key} at {zoom:.2}: `{text}` over {tag}");
                    }
                }
            }
        }
    }
    assert!(named > 20, "{named}");
}

#[test]
fn labels_are_cut_only_where_a_part_has_no_room_for_them() {
    let (mut cut, mut whole) = (0, 0);
    for (key, sheet, layout, _) in worked() {
        for zoom in [0.5, 0.55, 0.6, 0.7, 0.75, 1.0] {
            let look = Look {
                zoom,
                ..Look::default()
            };
            let written = texts(&draw(&sheet, &layout, None, &look, view(&layout)));
            for (id, drawn) in layout.parts() {
                let part = &sheet.parts[&id];
                let own: Vec<_> = written
                    .iter()
                    .filter(|(owner, ..)| *owner == Owner::Part(id))
                    .collect();
                for (_, text, area) in &own {
                    assert!(
                        drawn.outline.inflate(2.0, 2.0).contains_rect(*area),
                        "{key} at {zoom}: `{text}` of {} sticks out",
                        part.tag
                    );
                }
                if part.label.is_empty() {
                    continue;
                }
                // In one piece, or in two that follow one another.
                let all = own
                    .iter()
                    .map(|(_, text, _)| text.as_str())
                    .collect::<Vec<_>>()
                    .join(" ");
                let words: Vec<&str> = part.label.split(' ').collect();
                if words.iter().all(|word| all.contains(word)) {
                    whole += 1;
                    continue;
                }
                cut += 1;
                // These have no line of numbers that a label could take.
                let one_line = matches!(
                    part.is,
                    PartKind::Splice(_)
                        | PartKind::Bus(_)
                        | PartKind::Plug(_)
                        | PartKind::Adapter(_)
                        | PartKind::LineConverter(_)
                );
                let least = drawing::text_width(&part.label, f64::max(10.0, 6.2 / zoom), false);
                assert!(
                    one_line || least > drawn.outline.width() - 14.0 || least > 120.0,
                    "{key} at {zoom}: `{}` of {} is cut, and has room",
                    part.label,
                    part.tag
                );
            }
        }
    }
    assert!(cut * 20 < whole, "{cut} of {} labels are cut", cut + whole);
}
