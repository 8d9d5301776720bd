//! Maze search (A*) on the grid, for ends that no way of few bends reaches.

use super::search::{BEND, CLEAR, Found, Outlet, Space, straighten};
use super::tracks::{At, Axis, Piece};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap};

const STEP: i32 = 10;
/// Most points looked at before giving up: keeps a walled-in stud from freezing the page.
const MOST: usize = 20_000;
/// How far beyond the ends the maze reaches.
const BEYOND: i32 = 800;

type Place = (i32, i32, bool);

/// A way between two ends round everything, or `None` when there is none.
pub(crate) fn find(space: &Space<'_>, from: Outlet, to: Outlet) -> Option<Found> {
    let origin = from.at;
    let (low, high) = (
        At {
            x: from.at.x.min(to.at.x) - BEYOND,
            y: from.at.y.min(to.at.y) - BEYOND,
        },
        At {
            x: from.at.x.max(to.at.x) + BEYOND,
            y: from.at.y.max(to.at.y) + BEYOND,
        },
    );
    // Steps of the grid hang on the start; the goal is reached by its nearest grid point.
    let goal = (
        libm::round(f64::from(to.at.x - origin.x) / f64::from(STEP)) as i32,
        libm::round(f64::from(to.at.y - origin.y) / f64::from(STEP)) as i32,
    );
    let guess = |x: i32, y: i32| STEP * ((x - goal.0).abs() + (y - goal.1).abs());
    let mut open = BinaryHeap::new();
    let mut came: BTreeMap<Place, (i32, Option<Place>)> = BTreeMap::new();
    for level in [true, false] {
        let fits = match from.out {
            (0, 0) => true,
            (_, 0) => level,
            _ => !level,
        };
        let start = (0, 0, level);
        let cost = if fits { 0 } else { BEND as i32 };
        came.insert(start, (cost, None));
        open.push(Reverse((cost + guess(0, 0), start)));
    }
    let mut looked = 0;
    let mut end = None;
    while let Some(Reverse((_, place))) = open.pop() {
        let (x, y, level) = place;
        if (x, y) == goal {
            end = Some(place);
            break;
        }
        looked += 1;
        if looked > MOST {
            break;
        }
        let cost = came.get(&place).map_or(i32::MAX, |(cost, _)| *cost);
        for (dx, dy) in [(1, 0), (-1, 0), (0, 1), (0, -1)] {
            let turns_level = dx != 0;
            // Never back into the part that it leaves.
            if x == 0 && y == 0 && (dx, dy) == (-from.out.0, -from.out.1) {
                continue;
            }
            let next = (x + dx, y + dy, turns_level);
            let at = |x: i32, y: i32| At {
                x: origin.x + STEP * x,
                y: origin.y + STEP * y,
            };
            let (a, b) = (at(x, y), at(next.0, next.1));
            if b.x < low.x || b.x > high.x || b.y < low.y || b.y > high.y {
                continue;
            }
            let axis = if turns_level { Axis::Level } else { Axis::Upright };
            let piece = Piece {
                axis,
                line: a.across(axis),
                low: a.along(axis).min(b.along(axis)),
                high: a.along(axis).max(b.along(axis)),
            };
            let last = (next.0, next.1) == goal && (to.at.x - b.x).abs().max((to.at.y - b.y).abs()) > 0;
            if !last && !space.free(piece) {
                continue;
            }
            // A taste of the full cost: lying over or crossing a run, without the length.
            let among = (space.tracks.cost(piece, space.fellows) as i32).min(120);
            let next_cost = cost + STEP + among + if turns_level == level { 0 } else { BEND as i32 };
            if came.get(&next).is_none_or(|(known, _)| next_cost < *known) {
                came.insert(next, (next_cost, Some(place)));
                open.push(Reverse((next_cost + guess(next.0, next.1), next)));
            }
        }
    }
    let mut points = vec![to.at];
    let mut place = end;
    while let Some(at) = place {
        points.push(At {
            x: origin.x + STEP * at.0,
            y: origin.y + STEP * at.1,
        });
        place = came.get(&at).and_then(|(_, before)| *before);
    }
    if points.len() < 2 {
        return None;
    }
    points.reverse();
    square(&mut points);
    points.dedup();
    straighten(&mut points);
    let cost = space.cost(&points);
    debug_assert!(CLEAR == STEP);
    Some(Found { points, cost })
}

/// Puts a corner in where two points are on neither a level nor an upright line.
pub(crate) fn square(points: &mut Vec<At>) {
    let mut squared: Vec<At> = Vec::with_capacity(points.len() + 4);
    for at in points.iter().copied() {
        if let Some(last) = squared.last().copied()
            && last.x != at.x
            && last.y != at.y
        {
            // Go on the way one came, so that a bend stays a bend.
            let level = match squared.as_slice() {
                [.., a, b] => a.y == b.y,
                _ => true,
            };
            squared.push(if level {
                At { x: at.x, y: last.y }
            } else {
                At { x: last.x, y: at.y }
            });
        }
        squared.push(at);
    }
    *points = squared;
}
