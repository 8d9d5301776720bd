//! Where a run turns off near an end: the lines that it may take, and the cheapest of them.

use super::space::{STEP, Space};
use super::tracks::{At, Axis, Piece, Profile};

/// Lines on which a run may turn off near an end, with what is known of each.
pub(super) struct Exit<'a> {
    space: &'a Space<'a>,
    axis: Axis,
    u0: i32,
    v0: i32,
    /// Lines that may be asked for.
    range: (i32, i32),
    lines: Vec<Turnoff>,
}

/// A line across an end's own line.
struct Turnoff {
    u: i32,
    /// What it costs to get there along the end's own line: what lies there, and length.
    among: f64,
    stem: f64,
    /// How far it is clear of parts, and what is met on it; looked up when it is first asked for.
    known: Option<((i32, i32), Profile)>,
}

impl<'a> Exit<'a> {
    pub(super) fn new(
        space: &'a Space<'a>,
        axis: Axis,
        end: At,
        sign: i32,
        reach: (i32, i32),
        towards: i32,
        range: (i32, i32),
    ) -> Self {
        let (u0, v0) = (end.along(axis), end.across(axis));
        let sign = match sign {
            0 => (towards - u0).signum(),
            sign => sign,
        };
        let mut lines = Vec::new();
        let mut u = u0;
        while lines.len() < space.effort.near_lines && reach.0 <= u && u <= reach.1 {
            let stem = Piece {
                axis,
                line: v0,
                low: u.min(u0),
                high: u.max(u0),
            };
            let among = if u == u0 {
                0.0
            } else {
                space.tracks.cost(stem, space.fellows, f64::INFINITY)
            };
            lines.push(Turnoff {
                u,
                // Going towards the other end is no loss, but near lines are the tidier ones.
                among,
                stem: f64::from((u - u0).abs()) * 0.5 + among,
                known: None,
            });
            if sign == 0 {
                break;
            }
            // On to the next line of the grid.
            u = if sign > 0 {
                u.div_euclid(STEP) * STEP + STEP
            } else {
                -((-u).div_euclid(STEP) * STEP + STEP)
            };
        }
        Self {
            space,
            axis,
            u0,
            v0,
            range,
            lines,
        }
    }

    /// The cheapest line on which to go across to `v`, if it costs less than `room` beside the lengths: its cost, what of
    /// that is for others that are met, and its place.
    pub(super) fn best(&mut self, v: i32, room: f64) -> Option<(f64, f64, i32)> {
        if v == self.v0 {
            return Some((0.0, 0.0, self.u0));
        }
        let mut best: Option<(f64, f64, i32)> = None;
        for line in &mut self.lines {
            let most = best.map_or(room, |(least, ..)| least.min(room));
            if line.stem >= most {
                continue;
            }
            let (space, axis, v0, range) = (self.space, self.axis.other(), self.v0, self.range);
            let ((low, high), profile) = line.known.get_or_insert_with(|| {
                let start = At::on(self.axis, line.u, v0);
                let low = space.reach(start, axis, -1, range.0.min(v0));
                let high = space.reach(start, axis, 1, range.1.max(v0));
                let piece = Piece {
                    axis,
                    line: line.u,
                    low,
                    high,
                };
                ((low, high), space.tracks.profile(piece, space.fellows))
            });
            if v < *low || v > *high {
                continue;
            }
            let met = profile.cost(v.min(v0), v.max(v0));
            if line.stem + met < most {
                best = Some((line.stem + met, line.among + met, line.u));
            }
        }
        best
    }
}
