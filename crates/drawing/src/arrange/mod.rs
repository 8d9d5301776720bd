//! Automatic arrangement of a sheet: layered from left to right (sources, protection, distribution, switching and
//! signal, amplifiers, speakers), after the method of Sugiyama, Tagawa and Toda (1981; from memory): layers, then order
//! within layers by medians of neighbours, then coordinates. Terminals are honoured: what counts is where a run lands on
//! a part, not the part's middle, so that runs come out straight where they can.
//!
//! A ground point stands right below the part whose return it takes. Systems that no run joins are stacked below each
//! other. The same sheet always gives the same arrangement.

mod layers;
mod order;
mod place;
mod units;

use crate::part_box::{PartBox, to_point};
use kurbo::{Rect, Vec2};
use model::{BoardPoint, End, PartId, Sheet};
use ordered::OrderedMap;
use ordered::Sort as _;
use units::{System, systems};

/// Places of a system's parts with its upper left corner at the origin, its width and its height.
type Placed = (Vec<(PartId, BoardPoint)>, i32, i32);

/// Room between systems that no run joins, in board units.
const BETWEEN_SYSTEMS: i32 = 120;

/// Places for all parts of a sheet: middles on the grid of 10, no part on another. Places that parts already have are
/// not looked at.
#[must_use]
pub fn arrange(sheet: &Sheet) -> OrderedMap<PartId, BoardPoint> {
    let mut arranged: Vec<Placed> = systems(sheet).into_iter().map(arrange_system).collect();
    // The largest system first; lone parts in rows at the end.
    arranged.order_by_key(|(parts, _, _)| {
        (
            std::cmp::Reverse(parts.len()),
            parts.iter().map(|(id, _)| *id).min(),
        )
    });
    let area: f64 = arranged
        .iter()
        .map(|(_, width, height)| f64::from(*width) * f64::from(*height))
        .sum();
    let widest = arranged.iter().map(|(_, width, _)| *width).max().unwrap_or(0);
    let row_width = widest.max(libm::sqrt(area * ASPECT) as i32);
    let mut places = OrderedMap::new();
    let (mut x, mut y, mut row_height) = (0, 0, 0);
    for (parts, width, height) in arranged {
        if x > 0 && x + width > row_width {
            x = 0;
            y += row_height + BETWEEN_SYSTEMS;
            row_height = 0;
        }
        for (id, at) in parts {
            places.insert(
                id,
                BoardPoint {
                    x: at.x + x,
                    y: at.y + y,
                },
            );
        }
        x += width + BETWEEN_SYSTEMS;
        row_height = row_height.max(height);
    }
    places
}

/// Places for the parts of a sheet that have none: below those that have.
#[must_use]
pub fn arrange_unplaced(sheet: &Sheet) -> OrderedMap<PartId, BoardPoint> {
    if sheet.parts.values().all(|part| part.at.is_none()) {
        return arrange(sheet);
    }
    let mut rest = Sheet {
        parts: sheet
            .parts
            .iter()
            .filter(|(_, part)| part.at.is_none())
            .map(|(id, part)| (*id, part.clone()))
            .collect(),
        ..Sheet::default()
    };
    let stays = |end: &End| {
        end.terminal()
            .is_some_and(|terminal| rest.parts.contains_key(&terminal.part))
    };
    rest.runs = sheet
        .runs
        .iter()
        .filter(|(_, run)| run.ends().into_iter().all(stays))
        .map(|(id, run)| (*id, run.clone()))
        .collect();
    let placed: Option<Rect> = sheet
        .parts
        .values()
        .filter_map(|part| Some(PartBox::of(part, to_point(part.at?)).outline))
        .reduce(|all, one| all.union(one));
    let shift = placed.map_or(Vec2::ZERO, |placed| {
        Vec2::new(
            libm::floor(placed.x0 / 10.0) * 10.0,
            libm::ceil(placed.y1 / 10.0) * 10.0 + f64::from(BETWEEN_SYSTEMS),
        )
    });
    let mut places = arrange(&rest);
    for at in places.values_mut() {
        at.x = at.x.saturating_add(shift.x as i32);
        at.y = at.y.saturating_add(shift.y as i32);
    }
    places
}

/// Width over height of the free part of a window, which the arrangement is to fill.
const ASPECT: f64 = 1.6;

/// The width that a window needs to show something of this width and height.
fn window(width: i32, height: i32) -> f64 {
    f64::from(width).max(ASPECT * f64::from(height))
}

/// Places of a system's parts with the system's upper left corner at the origin, its width and its height.
fn arrange_system(system: System) -> Placed {
    let layers = layers::layers(&system);
    let mut web = order::Web::new(&system, &layers);
    web.sweep();
    let placed = place::place(&system, &web);
    // Many parts in few layers make a tower; with its layers spread over several columns each it is seen larger.
    let Some(spread) = layers::spread(&system, &web, ASPECT) else {
        return placed;
    };
    let mut web = order::Web::new(&system, &spread);
    web.sweep();
    let wider = place::place(&system, &web);
    if window(wider.1, wider.2) < 0.9 * window(placed.1, placed.2) {
        wider
    } else {
        placed
    }
}
