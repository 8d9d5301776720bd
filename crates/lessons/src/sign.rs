//! The sign of a break on the drawing: a ring with a cross at what is cut, turned round or dead, a ring at each of two
//! terminals that touch, and the word beside it. Its size on screen does not change with the zoom.

use crate::breaks::{Break, BreakKind};
use crate::presenting::parts_and_runs;
use drawing::{Anchor, Detail, DisplayList, Ink, Item, Layout, Owner, Shape, Stroke, circle, text_area};
use kurbo::{BezPath, Point, Rect, Shape as _};
use model::{Sheet, TerminalRef};

/// Radius of the ring on screen, in pixels.
const RING_PX: f64 = 13.0;
/// Height of the letters on screen, in pixels.
const LETTERS_PX: f64 = 17.0;

/// Where the sign of a break stands on a sheet; nothing where the sheet has no such thing.
#[must_use]
pub fn places(broken: &Break, sheet: &Sheet, layout: &Layout) -> Vec<Point> {
    let place = |name: &String| {
        let (part, run) = parts_and_runs(sheet, name);
        if let Some(way) = run.and_then(|id| layout.run(id)) {
            // Beside the middle of its longest piece, where its label stands.
            let longest = way
                .pieces()
                .max_by(|(a, b), (c, d)| a.distance(*b).total_cmp(&c.distance(*d)));
            return longest.map(|(a, b)| a.lerp(b, 0.22));
        }
        let id = part?;
        let stud = name
            .split_once('.')
            .filter(|_| broken.kind == BreakKind::Joined)
            .and_then(|(_, terminal)| layout.stud(&TerminalRef::new(id, terminal)));
        stud.or_else(|| layout.part(id).map(|part| part.middle()))
    };
    broken.things.iter().filter_map(place).collect()
}

/// The sign, in board units. `zoom` is pixels for a board unit; its word keeps off what is written on the drawing beneath it, and
/// within what is visible of it, where that can be.
#[must_use]
pub fn sign(
    broken: &Break,
    word: &str,
    places: &[Point],
    zoom: f64,
    (beneath, visible): (&DisplayList, Rect),
) -> DisplayList {
    let pixel = 1.0 / zoom.max(1e-3);
    let mut list = DisplayList::default();
    let mut add = |shape: Shape, bounds: Rect| {
        list.items.push(Item {
            owner: Owner::Tool,
            detail: Detail::Shape,
            bounds,
            shape,
        });
    };
    let stroke = |ink: Ink, px: f64| Stroke {
        ink,
        width: px * pixel,
        dash: None,
    };
    for at in places {
        let ring = circle(*at, RING_PX * pixel);
        let bounds = ring.bounding_box().inflate(4.0 * pixel, 4.0 * pixel);
        let touches = broken.kind == BreakKind::Joined;
        for (fill, stroke) in [
            ((!touches).then_some(Ink::Paper), stroke(Ink::Paper, 7.0)),
            (None, stroke(Ink::Stop, 3.0)),
        ] {
            let (path, stroke) = (ring.clone(), Some(stroke));
            add(Shape::Path { path, fill, stroke }, bounds);
        }
        if !touches {
            let arm = 0.5 * RING_PX * pixel;
            let mut path = BezPath::new();
            for side in [-1.0, 1.0] {
                path.move_to((at.x - arm, at.y - side * arm));
                path.line_to((at.x + arm, at.y + side * arm));
            }
            let (fill, stroke) = (None, Some(stroke(Ink::Stop, 3.0)));
            add(Shape::Path { path, fill, stroke }, bounds);
        }
    }
    if let Some(first) = places.first().filter(|_| !word.is_empty()) {
        let size = LETTERS_PX * pixel;
        let covers = |at: Point| text_area(word, at, size, Anchor::Start, true, false);
        let written: Vec<Rect> = beneath
            .items
            .iter()
            .filter(|item| matches!(item.shape, Shape::Text { .. }))
            .map(|item| item.bounds)
            .collect();
        let rings = places.iter().map(|at| {
            let ring = 2.0 * (RING_PX + 2.0) * pixel;
            Rect::from_center_size(*at, (ring, ring))
        });
        let rings: Vec<Rect> = rings.collect();
        let harm = |at: &Point| {
            let area = covers(*at);
            let seen = area.intersect(visible).area() >= area.area() - 1e-6;
            let lies_on = |others: &[Rect]| others.iter().any(|other| other.overlaps(area));
            4 * u8::from(!seen) + 2 * u8::from(lies_on(&rings)) + u8::from(lies_on(&written))
        };
        let at = spots_of_word(*first, covers(Point::ZERO).width(), pixel)
            .min_by_key(harm)
            .unwrap_or(*first);
        let bounds = covers(at);
        let text = Shape::Text {
            text: word.to_owned(),
            at,
            size,
            anchor: Anchor::Start,
            ink: Ink::Stop,
            bold: true,
            halo: true,
            upright: false,
        };
        add(text, bounds.inflate(0.3 * size, 0.3 * size));
    }
    list
}

/// Where a word of some width may begin beside a ring: above it to the right at best, then at its other sides, then further off.
fn spots_of_word(ring: Point, wide: f64, pixel: f64) -> impl Iterator<Item = Point> {
    let (right, left) = ((RING_PX + 6.0) * pixel, -(RING_PX + 6.0) * pixel - wide);
    let (above, below) = (-RING_PX * pixel, (RING_PX + 0.75 * LETTERS_PX) * pixel);
    let off = 10.0 * pixel;
    let spots = [
        (right, above, -1.0),
        (right, below, 1.0),
        (left, above, -1.0),
        (left, below, 1.0),
        (-0.5 * wide, above - off, -1.0),
        (-0.5 * wide, below + off, 1.0),
    ];
    (0..6).flat_map(move |step| {
        let further = 1.15 * LETTERS_PX * pixel * f64::from(step);
        spots.map(|(x, y, way)| Point::new(ring.x + x, ring.y + y + way * further))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{LESSONS, Told, Version};

    #[test]
    fn every_break_of_every_lesson_has_its_sign_where_the_thing_lies() {
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            let told = Told::of(&lesson);
            for broken in &lesson.breaks {
                let mut shown = 0;
                for version in Version::BOTH {
                    let whole = told.shown(version);
                    let layout = Layout::of(&whole.sheet);
                    let places = places(broken, &whole.sheet, &layout);
                    if told.broken(broken, version).is_ok() {
                        assert_eq!(
                            places.len(),
                            broken.things.len(),
                            "{}: {}",
                            built_in.key,
                            broken.said()
                        );
                        shown += 1;
                    }
                    let all = layout.bounds().expect("something is drawn");
                    assert!(places.iter().all(|at| all.contains(*at)), "{}", built_in.key);
                }
                assert!(shown > 0, "{}: {}", built_in.key, broken.said());
            }
        }
    }

    #[test]
    fn on_screen_it_is_as_large_at_every_zoom() {
        let broken = Break::default();
        for zoom in [0.2, 1.0, 3.0] {
            let bare = (&DisplayList::default(), Rect::new(-1e4, -1e4, 1e4, 1e4));
            let list = sign(&broken, "open", &[Point::new(100.0, 50.0)], zoom, bare);
            let Shape::Path { path, .. } = &list.items[0].shape else {
                panic!("a ring first");
            };
            assert!((path.bounding_box().width() * zoom - 2.0 * RING_PX).abs() < 1e-6);
            assert!(
                matches!(&list.items.last().expect("a word").shape, Shape::Text { size, .. } if (size * zoom - LETTERS_PX).abs() < 1e-6)
            );
        }
        let nothing = (&DisplayList::default(), Rect::ZERO);
        assert!(sign(&broken, "open", &[], 1.0, nothing).items.is_empty());
    }

    #[test]
    fn in_no_lesson_the_word_lies_on_a_tag_or_a_label() {
        let mut moved = 0;
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            let told = Told::of(&lesson);
            for (broken, version) in lesson
                .breaks
                .iter()
                .flat_map(|broken| Version::BOTH.map(|it| (broken, it)))
            {
                let whole = told.shown(version);
                let layout = Layout::of(&whole.sheet);
                let places = places(broken, &whole.sheet, &layout);
                let visible = layout.bounds().expect("something is drawn").inflate(60.0, 60.0);
                for zoom in [0.5, 1.0] {
                    let look = drawing::Look {
                        zoom,
                        ..drawing::Look::default()
                    };
                    let beneath = drawing::draw(&whole.sheet, &layout, None, &look, visible);
                    let word_of = |list: &DisplayList| {
                        list.items.iter().find_map(|item| match &item.shape {
                            Shape::Text {
                                text,
                                at,
                                size,
                                anchor,
                                ..
                            } => Some(text_area(text, *at, *size, *anchor, true, false)),
                            Shape::Path { .. } => None,
                        })
                    };
                    let shown = |beneath| word_of(&sign(broken, "touch", &places, zoom, (beneath, visible)));
                    let (Some(word), Some(usual)) = (shown(&beneath), shown(&DisplayList::default())) else {
                        continue;
                    };
                    moved += u32::from(word != usual);
                    let on = beneath
                        .items
                        .iter()
                        .find(|item| matches!(item.shape, Shape::Text { .. }) && item.bounds.overlaps(word));
                    assert!(
                        on.is_none(),
                        "{}: {} at {zoom} lies on {on:?}",
                        built_in.key,
                        broken.said()
                    );
                    assert!(
                        visible.union(word) == visible,
                        "{}: {}",
                        built_in.key,
                        broken.said()
                    );
                }
            }
        }
        assert!(
            moved > 0,
            "at the usual place it would lie on something somewhere"
        );
    }
}
