//! Volts at the studs.

use super::Cut;
use super::aside::{Aside, FAR, NEAR, lead};
use super::overlay::Overlays;
use super::pen::{Pen, Writing};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::letters::text_width;
use crate::numbers;
use kurbo::{Point, Rect, Size, Vec2};
use model::{PartId, Side};
use ordered::OrderedSet;

/// Volts at every stud that has any, outside the outline, above the run that lands there, in letters that can be read at
/// any zoom. What finds no room there stands a little off, unless the same number stands elsewhere.
pub(crate) fn draw_voltages(
    pen: &mut Pen,
    layout: &Layout,
    overlays: &Overlays<'_>,
    zoom: f64,
    cut: &Cut<'_>,
    taken: &mut Vec<Rect>,
) {
    /// Least height of the letters on screen, in pixels.
    const LEAST_PX: f64 = 9.5;
    if !pen.shows(Detail::Studs) {
        return;
    }
    let clears_labels = pen.shows(Detail::Labels);
    let on_label = |area: Rect| {
        // Labels of runs are drawn from their own zoom on; below it nothing stands in the way.
        clears_labels && layout.label_index.any_near(area, |_, label| label.overlaps(area))
    };
    let mut told: OrderedSet<String> = OrderedSet::new();
    let mut crowded: Vec<(PartId, Point, String)> = Vec::new();
    let size = 7.5_f64.max(LEAST_PX / zoom.max(1e-3));
    for id in cut.parts(layout, 60.0) {
        let Some(drawn) = layout.parts.get(&id) else {
            continue;
        };
        pen.owner(Owner::Part(id));
        for stud in &drawn.studs {
            let terminal = model::TerminalRef {
                part: id,
                terminal: stud.name.clone(),
            };
            let Some(volts) = overlays.volts(&terminal) else {
                continue;
            };
            let text = numbers::volts(layout.words(), volts);
            // Above or below the run that lands there, or right or left of it; else on it, as its label would be.
            let (above, below) = (-6.0 - 0.22 * size, 6.0 + 0.78 * size);
            let spots = match stud.side {
                Side::Left => [
                    (-6.0, -4.5, Anchor::End),
                    (-6.0, above, Anchor::End),
                    (-6.0, below, Anchor::End),
                    (-9.0, 0.35 * size, Anchor::End),
                ],
                Side::Right => [
                    (6.0, -4.5, Anchor::Start),
                    (6.0, above, Anchor::Start),
                    (6.0, below, Anchor::Start),
                    (9.0, 0.35 * size, Anchor::Start),
                ],
                Side::Top => [
                    (6.0, -6.0, Anchor::Start),
                    (8.0, -6.0, Anchor::Start),
                    (-8.0, -6.0, Anchor::End),
                    (0.0, -9.0 - 0.22 * size, Anchor::Middle),
                ],
                Side::Bottom => [
                    (6.0, 3.5 + size, Anchor::Start),
                    (8.0, 3.5 + size, Anchor::Start),
                    (-8.0, 3.5 + size, Anchor::End),
                    (0.0, 9.0 + 0.78 * size, Anchor::Middle),
                ],
            };
            let mut stands = false;
            for (place, (x, y, anchor)) in spots.into_iter().enumerate() {
                let writing = Writing {
                    anchor,
                    halo: place < 3,
                    ..Writing::new(text.clone(), stud.at + Vec2::new(x, y), size, Ink::Text)
                };
                let area = writing.area();
                let on_run = layout.run_index.any_near(area, |run, way| {
                    // The last of the places lies on the runs of this stud alone.
                    way.overlaps(area)
                        && (place < 3 || !layout.runs.get(&run).is_some_and(|way| way.lands_on(&terminal)))
                });
                if on_label(area)
                    || on_run
                    || layout.is_on_part(area)
                    || taken.iter().any(|other| other.overlaps(area))
                {
                    continue;
                }
                if place == 3 {
                    pen.area(Detail::Studs, area.inflate(1.5, 0.0), Some(Ink::Paper), None);
                }
                taken.push(area);
                pen.write(Detail::Studs, writing);
                stands = true;
                break;
            }
            if stands {
                told.insert(text);
            } else {
                crowded.push((id, stud.at + stud.out * 6.0, text));
            }
        }
    }
    for (id, at, text) in crowded {
        if told.contains(&text) {
            continue;
        }
        let letters = Size::new(text_width(&text, size, false) + 3.0, size + 2.0);
        let aside = Aside {
            layout,
            taken,
            size: letters,
        };
        let on_run = |area: Rect| layout.run_index.any_near(area, |_, way| way.overlaps(area));
        // Rather over a run than far off, and rather far off than not at all.
        let found = [(NEAR, false), (NEAR, true), (FAR, false), (FAR, true)]
            .into_iter()
            .find_map(|(rings, over_runs)| {
                let is_clear = |area| !on_label(area) && (over_runs || !on_run(area));
                aside.find(at, rings, is_clear, |_| Some(at))
            });
        if let Some((spot, end)) = found {
            let area = Rect::from_center_size(spot, letters);
            pen.owner(Owner::Part(id));
            lead(pen, area, end, zoom, taken);
            pen.area(Detail::Studs, area, Some(Ink::Paper), None);
            taken.push(area);
            let writing = Writing {
                anchor: Anchor::Middle,
                ..Writing::new(
                    text.clone(),
                    Point::new(spot.x, spot.y + 0.28 * size),
                    size,
                    Ink::Text,
                )
            };
            pen.write(Detail::Studs, writing);
            told.insert(text);
        }
    }
}
