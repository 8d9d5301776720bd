//! Parts on the plan: a box with the tag beside the place, tied to it; those without a place stand in a row below the car.

use super::lettering::Lettering;
use super::taken::Taken;
use super::{PlanPart, PlanView, body_box};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::draw::pen::{Pen, Writing, solid};
use crate::letters::text_width;
use crate::look::Look;
use crate::shapes::rounded;
use body::Plan;
use kurbo::{BezPath, Point, Rect, Size, Vec2};
use model::{PartId, Sheet};
use ordered::OrderedMap;
use words::{Words, say};

/// Height of a part's box, in letters of its tag.
const HEIGHT: f64 = 1.7;
/// Room between boxes.
const GAP: f64 = 4.0;

fn size(tag: &str, letters: f64) -> Size {
    let width = (text_width(tag, letters, true) + 0.85 * letters).max(2.4 * letters);
    Size::new(width, HEIGHT * letters)
}

/// The boxes of all parts, each as near to its place as there is room.
pub(super) fn place(
    plan: &Plan,
    spots: &[Point],
    words: &Words,
    sheet: &Sheet,
    lettering: Lettering,
    taken: &mut Taken,
) -> OrderedMap<PartId, PlanPart> {
    let letters = lettering.tags();
    let mut parts = OrderedMap::new();
    let mut homeless = Vec::new();
    // By place: the ring that the last box stands in. Those further in are full.
    let mut rings = vec![0; spots.len()];
    for (id, part) in &sheet.parts {
        let place = plan.place_of(sheet, *id);
        let Some((place, spot)) = place.and_then(|place| Some((place, spots.get(place)?))) else {
            homeless.push((*id, size(&part.tag, letters)));
            continue;
        };
        let (area, ring) = near(
            *spot,
            size(&part.tag, letters),
            rings.get(place).copied().unwrap_or(0),
            taken,
        );
        if let Some(last) = rings.get_mut(place) {
            *last = ring;
        }
        taken.take(area);
        let place = Some(place);
        parts.insert(*id, PlanPart { area, place });
    }
    // Rows as long as the car, below what is folded out of its side.
    let car = body_box(plan);
    let (mut x, mut y) = (
        car.x0,
        super::key::area(plan, words, lettering).y1 + 3.0 * lettering.names(),
    );
    for (id, size) in homeless {
        if x > car.x0 && x + size.width > car.x1 {
            x = car.x0;
            y += size.height + GAP;
        }
        let area = Rect::from_origin_size((x, y), size);
        taken.take(area);
        parts.insert(id, PlanPart { area, place: None });
        x += size.width + GAP;
    }
    parts
}

/// Room for a box near a spot, and the ring that it is in: straight above or below first, then beside, further out ring by
/// ring, from the ring `first` on.
fn near(spot: Point, size: Size, first: u32, taken: &Taken) -> (Rect, u32) {
    let at = |x: f64, y: f64| Rect::from_center_size(spot + Vec2::new(x, y), size);
    for ring in first..first.saturating_add(40) {
        let step = f64::from(ring);
        let (up, side) = (
            size.height / 2.0 + 6.0 + step * (size.height + GAP) / 2.0,
            size.width / 2.0 + 10.0 + step * 12.0,
        );
        for (x, y) in [
            (0.0, up),
            (0.0, -up),
            (side, 0.0),
            (-side, 0.0),
            (side, up),
            (-side, up),
            (side, -up),
            (-side, -up),
        ] {
            let area = at(x, y);
            let room = area.inflate(GAP / 2.0, GAP / 2.0);
            if taken.is_free(room) {
                return (area, ring);
            }
        }
    }
    // A place with hundreds of parts: what is left lies on top.
    (at(0.0, size.height / 2.0 + 6.0), first)
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView, sheet: &Sheet, look: &Look) {
    let letters = view.lettering.tags();
    for (id, it) in &view.parts {
        let Some(part) = sheet.parts.get(id) else { continue };
        let owner = Owner::Part(*id);
        pen.owner(owner);
        if let Some(spot) = it.place.and_then(|place| view.spots.get(place)) {
            let mut tie = BezPath::new();
            tie.move_to(*spot);
            tie.line_to(it.area.center());
            pen.line(Detail::Shape, tie, Ink::Line, 1.0);
        }
        let halo = if look.picked.contains(&owner) {
            Some(Ink::Picked)
        } else if look.hovered == Some(owner) || look.lit.parts.contains(id) {
            Some(Ink::Lit)
        } else {
            None
        };
        if let Some(ink) = halo {
            pen.path(
                Detail::Shape,
                rounded(it.area.inflate(3.0, 3.0), 5.0),
                Some(ink),
                None,
            );
        }
        pen.path(
            Detail::Shape,
            rounded(it.area, 3.0),
            Some(Ink::PartFill),
            Some(solid(Ink::Line, 1.3)),
        );
        let at = Point::new(it.area.center().x, it.area.center().y + 0.36 * letters);
        pen.write(
            Detail::Shape,
            Writing {
                anchor: Anchor::Middle,
                bold: true,
                ..Writing::new(part.tag.as_str(), at, letters, Ink::Text)
            },
        );
    }
    pen.owner(Owner::Sheet);
    if let Some(caption) = caption(&view.parts, &view.words, view.lettering) {
        pen.write(Detail::Labels, caption);
    }
}

/// What stands over the parts that have no place.
pub(super) fn caption(
    parts: &OrderedMap<PartId, PlanPart>,
    words: &Words,
    lettering: Lettering,
) -> Option<Writing> {
    let homeless = parts.values().filter(|part| part.place.is_none());
    let first = homeless
        .map(|part| part.area)
        .reduce(|a, b| if b.y0 < a.y0 { b } else { a })?;
    let at = Point::new(first.x0, first.y0 - 8.0);
    let text = words.say(&say!("drawn-no-place"));
    Some(Writing::new(text, at, lettering.names(), Ink::Faint))
}
