//! The layout as the editor uses it: hits, fences, updates while a part is dragged, odd sheets.

use drawing::{Hit, Layout, Owner, RunWay, to_point};
use kurbo::{Point, Rect, Vec2};
use model::{BoardPoint, End, PartId, Sheet, TerminalRef, Turn};
use ordered::OrderedSet;

fn small() -> Sheet {
    testkit::text::sheet(
        "battery B1 @0,0\n\
         fuse F1 @300,0\n\
         load L1 @600,80\n\
         ground E1 @640,300\n\
         run W1 B1.+ F1.in 16mm2 0.3m RD\n\
         run W2 F1.out L1.+ 16mm2 4m RD\n\
         run W3 L1.- E1.stud 16mm2 0.4m BK\n\
         run W4 B1.- loose@-200,200 16mm2 0.4m BK\n",
    )
}

fn part(sheet: &Sheet, tag: &str) -> PartId {
    sheet.part_by_tag(tag).map(|(id, _)| id).unwrap_or_default()
}

#[test]
fn a_hit_finds_stud_part_run_and_loose_end() {
    let sheet = small();
    let layout = Layout::of(&sheet);
    let stud = TerminalRef::new(part(&sheet, "F1"), "in");
    let at = layout.stud(&stud).unwrap_or_default();
    assert_eq!(layout.hit(at + Vec2::new(2.0, -2.0), 4.0), Some(Hit::Stud(stud)));
    assert_eq!(
        layout.hit(Point::new(300.0, 0.0), 4.0),
        Some(Hit::Part(part(&sheet, "F1")))
    );
    let (run, _) = sheet.run_by_tag("W2").unwrap_or_else(|| panic!("no W2"));
    let way = layout.run(run).unwrap_or_else(|| panic!("W2 is not laid"));
    let piece = way.pieces().nth(1).unwrap_or_default();
    let middle = piece.0.midpoint(piece.1);
    match layout.hit(middle + Vec2::new(3.0, 3.0), 4.0) {
        Some(Hit::Run(id, 1, near)) => {
            assert_eq!(id, run);
            assert!(near.distance(middle) < 5.0);
        }
        other => panic!("{other:?}"),
    }
    assert!(matches!(
        layout.hit(Point::new(-203.0, 202.0), 4.0),
        Some(Hit::LooseEnd(_, 1))
    ));
    assert_eq!(layout.hit(Point::new(1000.0, 1000.0), 10.0), None);
}

#[test]
fn a_hand_bend_is_hit_and_stays_where_it_was_put() {
    let mut sheet = small();
    let (run, _) = sheet.run_by_tag("W2").unwrap_or_else(|| panic!("no W2"));
    let bends = vec![BoardPoint { x: 430, y: -120 }, BoardPoint { x: 480, y: -120 }];
    if let Some(run) = sheet.runs.get_mut(&run) {
        run.bends = bends.clone();
    }
    let mut layout = Layout::of(&sheet);
    let passes = |way: Option<&RunWay>| {
        let points = way.map(|way| way.points.clone()).unwrap_or_default();
        bends.iter().all(|bend| points.contains(&to_point(*bend)))
    };
    assert!(passes(layout.run(run)));
    assert!(matches!(layout.hit(Point::new(431.0, -121.0), 4.0), Some(Hit::Bend(id, 0)) if id == run));
    // Moving a part of it bends only the legs at its ends.
    let moved = part(&sheet, "L1");
    if let Some(part) = sheet.parts.get_mut(&moved) {
        part.at = Some(BoardPoint { x: 700, y: 200 });
    }
    layout.update(&sheet, &OrderedSet::from([moved]));
    assert!(passes(layout.run(run)));
}

#[test]
fn a_piece_put_by_hand_is_as_long_as_its_ends_need() {
    let mut sheet = small();
    let (run, w2) = sheet.run_by_tag("W2").unwrap_or_else(|| panic!("no W2"));
    let (Some(from), Some(to)) = (w2.from.terminal().cloned(), w2.to.terminal().cloned()) else {
        panic!("W2 has two ends");
    };
    let studs = |layout: &Layout| {
        let at = |terminal| layout.stud(terminal).unwrap_or_default();
        (at(&from), at(&to))
    };
    let (a, b) = studs(&Layout::of(&sheet));
    let line = kurbo::Point::new((a.x + b.x) / 2.0, a.y).round();
    let bend = |y: f64| BoardPoint {
        x: line.x as i32,
        y: y as i32,
    };
    if let Some(run) = sheet.runs.get_mut(&run) {
        run.bends = vec![bend(a.y - 200.0), bend(b.y + 200.0)];
    }
    let layout = Layout::of(&sheet);
    let points = layout.run(run).map(|way| way.points.clone()).unwrap_or_default();
    for way in points.windows(3) {
        let [p, q, r] = way else { continue };
        assert!((*q - *p).dot(*r - *q) >= 0.0, "goes back on itself: {points:?}");
    }
    assert!(
        points.iter().all(|p| p.y >= a.y.min(b.y) && p.y <= a.y.max(b.y)),
        "{points:?}"
    );
}

#[test]
fn a_fence_takes_what_lies_wholly_within() {
    let sheet = small();
    let layout = Layout::of(&sheet);
    let all = layout.bounds().unwrap_or_default().inflate(5.0, 5.0);
    assert_eq!(layout.within(all).len(), sheet.parts.len() + sheet.runs.len());
    let fuse = layout
        .part(part(&sheet, "F1"))
        .map(|part| part.outline)
        .unwrap_or_default();
    assert_eq!(
        layout.within(fuse.inflate(4.0, 4.0)),
        vec![Owner::Part(part(&sheet, "F1"))]
    );
    assert_eq!(layout.within(Rect::new(250.0, -5.0, 260.0, 5.0)), vec![]);
}

#[test]
fn a_drag_moves_only_the_runs_that_touch_the_part() {
    let mut sheet = testkit::random::random_system(7, 40);
    for (id, at) in drawing::arrange(&sheet) {
        if let Some(part) = sheet.parts.get_mut(&id) {
            part.at = Some(at);
        }
    }
    let mut layout = Layout::of(&sheet);
    let before = layout.clone();
    let moved = *sheet.parts.keys().nth(9).unwrap_or_else(|| panic!("no part"));
    let mut lain_on: OrderedSet<model::RunId> = OrderedSet::new();
    for step in 1..12 {
        if let Some(at) = sheet.parts.get_mut(&moved).and_then(|part| part.at.as_mut()) {
            at.x += 10;
            at.y += if step % 2 == 0 { 10 } else { -20 };
        }
        layout.update(&sheet, &OrderedSet::from([moved]));
        let fresh = Layout::of(&sheet);
        for (id, drawn) in layout.parts() {
            assert_eq!(Some(drawn), fresh.part(id));
        }
        for (id, way) in layout.runs() {
            let run = &sheet.runs[&id];
            if run.touches(moved) {
                for (end, at) in [(&run.from, way.points.first()), (&run.to, way.points.last())] {
                    if let End::On(terminal) = end {
                        assert_eq!(at.copied(), layout.stud(terminal));
                    }
                }
            } else if before.run(id).is_some_and(|way| lies_on(way, &layout, moved)) {
                lain_on.insert(id);
            }
            if !run.touches(moved) && !lain_on.contains(&id) {
                assert_eq!(Some(way), before.run(id), "{id} was laid anew");
            }
        }
    }
}

/// Whether a way leads through the outline of a part.
fn lies_on(way: &RunWay, layout: &Layout, part: PartId) -> bool {
    let outline = layout.part(part).map(|part| part.outline).unwrap_or_default();
    way.pieces()
        .any(|(a, b)| Rect::from_points(a, b).overlaps(outline))
}

#[test]
fn a_run_goes_round_a_part_that_was_put_on_it_and_goes_back_when_that_is_gone() {
    let sheet = testkit::text::sheet(
        "battery B1 @0,0\n\
         load L1 @900,0\n\
         run W1 B1.+ L1.+ 16mm2 4m RD\n",
    );
    let mut layout = Layout::of(&sheet);
    let before = layout.clone();
    let (run, _) = sheet.run_by_tag("W1").unwrap_or_else(|| panic!("no W1"));
    let middle = layout
        .run(run)
        .map(|way| way.points[way.points.len() / 2 - 1].midpoint(way.points[way.points.len() / 2]));
    let middle = middle.unwrap_or_default();
    let mut with = sheet.clone();
    let put = PartId(500);
    let fuse = small().part_by_tag("F1").map(|(_, part)| part.clone());
    let mut fuse = fuse.unwrap_or_else(|| panic!("no fuse"));
    fuse.at = Some(BoardPoint {
        x: middle.x as i32,
        y: middle.y as i32,
    });
    with.parts.insert(put, fuse);
    layout.update(&with, &OrderedSet::from([put]));
    assert!(
        before.run(run).is_some_and(|way| lies_on(way, &layout, put)),
        "the fuse was put on it"
    );
    assert!(layout.run(run).is_some_and(|way| !lies_on(way, &layout, put)));
    // Moved aside it is no longer in the way, and where it is taken away again, nothing tells that it was there.
    let mut aside = with.clone();
    if let Some(part) = aside.parts.get_mut(&put) {
        part.at = Some(BoardPoint { x: 450, y: 600 });
    }
    layout.update(&aside, &OrderedSet::from([put]));
    assert_eq!(layout.run(run), before.run(run));
    layout.update(&with, &OrderedSet::from([put]));
    layout.update(&sheet, &OrderedSet::new());
    assert_eq!(layout, before);
}

#[test]
fn an_update_after_taking_away_and_putting_back_finds_everything() {
    let whole = small();
    let mut layout = Layout::of(&whole);
    let mut less = whole.clone();
    let fuse = part(&whole, "F1");
    less.parts.remove(&fuse);
    less.runs.retain(|_, run| !run.touches(fuse));
    layout.update(&less, &OrderedSet::new());
    assert_eq!(layout, Layout::of(&less));
    layout.update(&whole, &OrderedSet::new());
    assert_eq!(layout.runs().count(), whole.runs.len());
    assert_eq!(layout.parts().count(), whole.parts.len());
    assert!(matches!(layout.hit(Point::new(300.0, 0.0), 2.0), Some(Hit::Part(id)) if id == fuse));
}

#[test]
fn a_run_to_a_terminal_that_is_not_there_is_left_out() {
    let mut sheet = small();
    if let Some(run) = sheet.runs.values_mut().next() {
        run.from = End::On(TerminalRef::new(PartId(999), "in"));
    }
    let layout = Layout::of(&sheet);
    assert_eq!(layout.runs().count(), sheet.runs.len() - 1);
}

#[test]
fn parts_on_each_other_and_far_off_the_board_are_drawn_all_the_same() {
    let mut sheet = small();
    for part in sheet.parts.values_mut() {
        part.at = Some(BoardPoint { x: 5, y: 7 });
        part.turn = Turn::Quarter;
    }
    assert_eq!(Layout::of(&sheet).runs().count(), sheet.runs.len());
    let places = [
        (i32::MIN, i32::MAX),
        (i32::MAX, i32::MIN),
        (model::limits::FURTHEST, -model::limits::FURTHEST),
        (0, 0),
    ];
    for (part, (x, y)) in sheet.parts.values_mut().zip(places) {
        part.at = Some(BoardPoint { x, y });
    }
    let layout = Layout::of(&sheet);
    let bounds = layout.bounds().unwrap_or_default();
    let list = drawing::draw(&sheet, &layout, None, &drawing::Look::default(), bounds);
    assert!(!list.items.is_empty());
}

/// A random sheet with its parts put where the arrangement wants them.
fn arranged(seed: u64, parts: usize) -> Sheet {
    let mut sheet = testkit::random::random_system(seed, parts);
    for (id, at) in drawing::arrange(&sheet) {
        if let Some(part) = sheet.parts.get_mut(&id) {
            part.at = Some(at);
        }
    }
    sheet
}

#[test]
fn a_drag_that_is_followed_and_settled_ends_like_one_step() {
    for (seed, parts) in [(7, 40), (11, 90)] {
        let mut sheet = arranged(seed, parts);
        let start = Layout::of(&sheet);
        // The part with most runs: they are laid in haste while it is dragged.
        let moved = OrderedSet::from_iter(
            sheet
                .parts
                .keys()
                .copied()
                .max_by_key(|id| sheet.runs_of(*id).count()),
        );
        let touches = |run: &model::Run| moved.iter().any(|part| run.touches(*part));
        let mut dragged = start.clone();
        for step in 1..9 {
            for id in &moved {
                if let Some(at) = sheet.parts.get_mut(id).and_then(|part| part.at.as_mut()) {
                    (at.x, at.y) = (at.x + 30, at.y - 10 * (step % 3));
                }
            }
            dragged.follow(&sheet, &moved, &OrderedSet::new());
            for (id, way) in dragged.runs() {
                let run = &sheet.runs[&id];
                if !touches(run) {
                    assert_eq!(Some(way), start.run(id), "{id} was laid anew");
                    continue;
                }
                for (end, at) in [(&run.from, way.points.first()), (&run.to, way.points.last())] {
                    if let End::On(terminal) = end {
                        assert_eq!(at.copied(), dragged.stud(terminal), "{id} does not follow");
                    }
                }
            }
        }
        let mut at_once = start.clone();
        at_once.update(&sheet, &moved);
        dragged.update(&sheet, &moved);
        assert_eq!(dragged, at_once);
    }
}

#[test]
fn a_gesture_that_brings_parts_is_followed_too() {
    let whole = small();
    let fuse = part(&whole, "F1");
    let mut less = whole.clone();
    less.parts.remove(&fuse);
    less.runs.retain(|_, run| !run.touches(fuse));
    let mut layout = Layout::of(&less);
    layout.follow(&whole, &OrderedSet::from([fuse]), &OrderedSet::new());
    assert_eq!(layout.parts().count(), whole.parts.len());
    assert_eq!(layout.runs().count(), whole.runs.len());
}

#[test]
fn large_systems_fill_a_sheet_that_is_wider_than_high() {
    for (seed, parts) in [(7, 300), (3, 600)] {
        let sheet = arranged(seed, parts);
        let boxes = sheet
            .parts
            .values()
            .filter_map(|part| Some(drawing::PartBox::of(part, to_point(part.at?)).outline));
        let all = boxes.reduce(|all, one| all.union(one)).unwrap_or_default();
        let aspect = all.width() / all.height();
        // Paper is about 1.4 times as wide as high (ISO 216); a tower of one column would have 0.2.
        assert!((0.8..2.5).contains(&aspect), "{parts} parts: {aspect}");
    }
}
