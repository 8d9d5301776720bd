//! Maze search (A*) on the grid, for ends that no way of few bends reaches.

use super::search::{BEND, Found, straighten};
use super::space::{Outlet, STEP, Space};
use super::tracks::{At, Axis, Piece};

/// How far beyond the ends the maze reaches, in steps.
const BEYOND_STEPS: i32 = 40;
/// Up to so many points other runs are looked at.
const FINE: usize = 20_000;
/// What a step costs that lies over or crosses another run, besides its length.
const AMONG: u32 = 60;

/// Places still to be gone on from, by what a way through them costs at least. Costs only grow, and never by more than the
/// number of lists from one place to the next, so that the lists can be used over and over.
struct Open {
    lists: Vec<Vec<(u32, i32, i32, bool)>>,
    now: u32,
    count: usize,
}

impl Open {
    fn new(from: u32) -> Self {
        let most = 2 * STEP as u32 + BEND as u32 + AMONG;
        Self {
            lists: vec![Vec::new(); most as usize + 1],
            now: from,
            count: 0,
        }
    }
    fn list(&mut self, least: u32) -> Option<&mut Vec<(u32, i32, i32, bool)>> {
        let place = least as usize % self.lists.len().max(1);
        self.lists.get_mut(place)
    }
    fn push(&mut self, least: u32, place: (u32, i32, i32, bool)) {
        self.count += 1;
        if let Some(list) = self.list(least) {
            list.push(place);
        }
    }
    fn pop(&mut self) -> Option<(u32, i32, i32, bool)> {
        while self.count > 0 {
            if let Some(place) = self.list(self.now).and_then(Vec::pop) {
                self.count -= 1;
                return Some(place);
            }
            self.now += 1;
        }
        None
    }
}

/// Points of the grid, two for each place: reached along a level piece or along an upright one.
struct Grid {
    low: (i32, i32),
    width: i32,
    height: i32,
    blocked: Vec<bool>,
}

impl Grid {
    fn place(&self, x: i32, y: i32) -> Option<usize> {
        let (x, y) = (x - self.low.0, y - self.low.1);
        (0..self.width).contains(&x).then_some(())?;
        (0..self.height).contains(&y).then_some(())?;
        usize::try_from(y * self.width + x).ok()
    }
}

/// A way between two ends round everything, or `None` when there is none.
pub(crate) fn find(space: &Space<'_>, from: Outlet, to: Outlet) -> Option<Found> {
    let origin = from.at;
    let at = |x: i32, y: i32| At {
        x: origin.x + STEP * x,
        y: origin.y + STEP * y,
    };
    // Steps of the grid hang on the start; the goal is reached by its nearest grid point.
    let goal = (
        libm::round(f64::from(to.at.x - origin.x) / f64::from(STEP)) as i32,
        libm::round(f64::from(to.at.y - origin.y) / f64::from(STEP)) as i32,
    );
    let low = (goal.0.min(0) - BEYOND_STEPS, goal.1.min(0) - BEYOND_STEPS);
    let (width, height) = (
        goal.0.abs() + 2 * BEYOND_STEPS + 1,
        goal.1.abs() + 2 * BEYOND_STEPS + 1,
    );
    if width
        .checked_mul(height)
        .is_none_or(|points| points > space.effort.maze)
    {
        return None;
    }
    let mut grid = Grid {
        low,
        width,
        height,
        blocked: vec![false; usize::try_from(width * height).ok()?],
    };
    let corners = (at(low.0, low.1), at(low.0 + width, low.1 + height));
    for (x, y) in space.walls((corners.0.x, corners.1.x), (corners.0.y, corners.1.y)) {
        // Places strictly between the walls' edges.
        let steps = |low: i32, high: i32, origin: i32| {
            ((low - origin).div_euclid(STEP) + 1)..=((high - origin - 1).div_euclid(STEP))
        };
        for row in steps(y.0, y.1, origin.y) {
            for column in steps(x.0, x.1, origin.x) {
                if let Some(slot) = grid
                    .place(column, row)
                    .and_then(|place| grid.blocked.get_mut(place))
                {
                    *slot = true;
                }
            }
        }
    }
    let count = 2 * grid.blocked.len();
    // In a large maze to look at the other runs at every step would take too long.
    let looks = grid.blocked.len() <= FINE;
    let mut costs = vec![u32::MAX; count];
    // The direction one came from: 0 to 3, and which of the two points of the place; 255 for none.
    let mut came = vec![255_u8; count];
    let guess = |x: i32, y: i32| (STEP * ((x - goal.0).abs() + (y - goal.1).abs())) as u32;
    let mut open = Open::new(guess(0, 0));
    for level in [true, false] {
        let fits = match from.out {
            (0, 0) => true,
            (_, 0) => level,
            _ => !level,
        };
        let cost = if fits { 0 } else { BEND as u32 };
        if let Some(slot) = grid
            .place(0, 0)
            .and_then(|place| costs.get_mut(2 * place + usize::from(level)))
        {
            *slot = cost;
        }
        open.push(cost + guess(0, 0), (cost, 0, 0, level));
    }
    const WAYS: [(i32, i32); 4] = [(1, 0), (-1, 0), (0, 1), (0, -1)];
    let mut end = None;
    while let Some((cost, x, y, level)) = open.pop() {
        if (x, y) == goal {
            end = Some((x, y, level));
            break;
        }
        let here = grid.place(x, y).map(|place| 2 * place + usize::from(level));
        if here
            .and_then(|here| costs.get(here))
            .is_none_or(|known| *known < cost)
        {
            continue;
        }
        for (way, (dx, dy)) in WAYS.into_iter().enumerate() {
            let goes_level = dx != 0;
            // Never back into the part that it leaves, nor through the one where it ends.
            if (x == 0 && y == 0 && (dx, dy) == (-from.out.0, -from.out.1))
                || ((x + dx, y + dy) == goal && (dx, dy) == to.out)
            {
                continue;
            }
            let (next_x, next_y) = (x + dx, y + dy);
            let Some(place) = grid.place(next_x, next_y) else {
                continue;
            };
            if grid.blocked.get(place) == Some(&true) && (next_x, next_y) != goal {
                continue;
            }
            let axis = if goes_level { Axis::Level } else { Axis::Upright };
            let (a, b) = (at(x, y), at(next_x, next_y));
            let piece = Piece {
                axis,
                line: a.across(axis),
                low: a.along(axis).min(b.along(axis)),
                high: a.along(axis).max(b.along(axis)),
            };
            let among = if looks && space.tracks.cost(piece, space.fellows, 1.0) > 0.0 {
                AMONG
            } else {
                0
            };
            let turn = if goes_level == level { 0 } else { BEND as u32 };
            let next_cost = cost + STEP as u32 + among + turn;
            let next = 2 * place + usize::from(goes_level);
            if let (Some(known), Some(back)) = (costs.get_mut(next), came.get_mut(next))
                && next_cost < *known
            {
                *known = next_cost;
                *back = way as u8 * 2 + u8::from(level);
                open.push(
                    next_cost + guess(next_x, next_y),
                    (next_cost, next_x, next_y, goes_level),
                );
            }
        }
    }
    let mut points = vec![to.at];
    let (mut x, mut y, mut level) = end?;
    loop {
        points.push(at(x, y));
        let back = grid
            .place(x, y)
            .and_then(|place| came.get(2 * place + usize::from(level)))
            .copied()
            .unwrap_or(255);
        let Some((dx, dy)) = WAYS.get(usize::from(back / 2)) else {
            break;
        };
        (x, y, level) = (x - dx, y - dy, back % 2 == 1);
    }
    points.reverse();
    square(&mut points);
    points.dedup();
    straighten(&mut points);
    let cost = space.cost(&points);
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
