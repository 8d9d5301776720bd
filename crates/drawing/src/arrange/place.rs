//! From layers and heights to places on the board: columns wide enough for their units, and between them room for as
//! many upright lines as the runs there need.

use super::order::Web;
use super::units::System;
use model::{BoardPoint, PartId};
use ordered::Sort as _;

/// Least room between columns: a run's label fits on a straight piece.
const LEAST_ROOM: i32 = 110;
/// Height left of a band in which no part stands.
const EMPTY_BAND: i32 = 60;
/// Most room between columns.
const MOST_ROOM: i32 = 600;

/// Places of the parts with the system's upper left corner at the origin, its width and its height.
pub(crate) fn place(system: &System, web: &Web) -> (Vec<(PartId, BoardPoint)>, i32, i32) {
    let columns = web.layers.len();
    let mut width = vec![0_i32; columns];
    for node in &web.nodes {
        if let (Some(unit), Some(slot)) = (
            node.unit.and_then(|unit| system.units.get(unit)),
            width.get_mut(node.layer),
        ) {
            *slot = (*slot).max(unit.width);
        }
    }
    // Upright stretches between the columns.
    let mut stretches: Vec<Vec<(i32, i32)>> = vec![Vec::new(); columns];
    for piece in &web.pieces {
        let (Some(from), Some(to)) = (web.nodes.get(piece.from), web.nodes.get(piece.to)) else {
            continue;
        };
        let (a, b) = (from.y + piece.from_y, to.y + piece.to_y);
        if a == b && from.layer != to.layer {
            continue;
        }
        let column = if from.layer == to.layer {
            from.layer.saturating_sub(1)
        } else {
            from.layer
        };
        if let Some(list) = stretches.get_mut(column) {
            list.push((a.min(b), a.max(b)));
        }
    }
    let mut left = Vec::with_capacity(columns);
    let mut x = 0;
    for (column, list) in stretches.iter().enumerate() {
        left.push(x);
        let lines = most_side_by_side(list);
        x += width.get(column).copied().unwrap_or(0) + (40 + 10 * lines).clamp(LEAST_ROOM, MOST_ROOM);
    }
    let squeeze = Squeeze::of(system, web);
    let mut places = Vec::new();
    let (mut full_width, mut full_height) = (0, 0);
    for node in &web.nodes {
        let Some(unit) = node.unit.and_then(|unit| system.units.get(unit)) else {
            continue;
        };
        let column_left = left.get(node.layer).copied().unwrap_or(0);
        let column_width = width.get(node.layer).copied().unwrap_or(0);
        // Sources stand against the channel on their right, everything else against the one on its left.
        let shift = if node.layer == 0 && columns > 1 {
            column_width - unit.width
        } else {
            0
        };
        let (x, y) = (column_left + shift, squeeze.height(node.y));
        full_width = full_width.max(x + unit.width);
        full_height = full_height.max(y + unit.height);
        for (part, dx, dy) in &unit.parts {
            places.push((
                *part,
                BoardPoint {
                    x: grid(x + dx),
                    y: grid(y + dy),
                },
            ));
        }
    }
    (places, grid(full_width), grid(full_height))
}

/// Takes empty bands out of the height: where no part stands across the whole system, no more room is left than the
/// passing runs there need.
struct Squeeze {
    /// Where a band ends, and by how much everything from there on moves up.
    steps: Vec<(i32, i32)>,
}

impl Squeeze {
    fn of(system: &System, web: &Web) -> Self {
        let mut spans: Vec<(i32, i32)> = Vec::new();
        let mut passing: Vec<i32> = Vec::new();
        for node in &web.nodes {
            match node.unit.and_then(|unit| system.units.get(unit)) {
                Some(unit) => spans.push((node.y, node.y + unit.height)),
                None => passing.push(node.y),
            }
        }
        spans.order();
        passing.order();
        passing.dedup();
        let mut steps = Vec::new();
        // Everything starts at height 0.
        let mut moved = spans.first().map_or(0, |(y, _)| *y);
        let mut reached = moved;
        steps.push((i32::MIN, moved));
        for (top, bottom) in spans {
            let before = passing.partition_point(|y| *y <= reached);
            let runs = passing.partition_point(|y| *y < top).saturating_sub(before);
            let room = EMPTY_BAND + 10 * i32::try_from(runs).unwrap_or(0).min(60);
            if top - reached > room {
                moved += top - reached - room;
                steps.push((top, moved));
            }
            reached = reached.max(bottom);
        }
        Self { steps }
    }

    fn height(&self, y: i32) -> i32 {
        let next = self.steps.partition_point(|(from, _)| *from <= y);
        let moved = next
            .checked_sub(1)
            .and_then(|n| self.steps.get(n))
            .map_or(0, |(_, moved)| *moved);
        y - moved
    }
}

fn grid(length: i32) -> i32 {
    length.div_euclid(10) * 10 + if length.rem_euclid(10) == 0 { 0 } else { 10 }
}

/// How many stretches lie side by side at the busiest height.
fn most_side_by_side(list: &[(i32, i32)]) -> i32 {
    let mut edges: Vec<(i32, i32)> = list
        .iter()
        .flat_map(|(a, b)| [(*a - 10, 1), (*b + 10, -1)])
        .collect();
    edges.order();
    let (mut now, mut most) = (0, 0);
    for (_, step) in edges {
        now += step;
        most = most.max(now);
    }
    most
}
