//! Finds the way of one run: ways of few bends are tried in order of cost, on lines that are clear of parts; a maze
//! search is left for what they cannot reach.
//!
//! Cost is length, plus [`BEND`] for a bend, plus what [`Tracks::cost`] says of the runs already laid.

use super::exits::Exit;
use super::space::{BEYOND, Outlet, Space};
use super::tracks::{At, Axis, Piece, pieces};
use ordered::Sort as _;

/// What a bend costs, in board units of length.
pub(crate) const BEND: f64 = 24.0;

/// A way with its cost.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Found {
    pub(crate) points: Vec<At>,
    pub(crate) cost: f64,
}

impl Space<'_> {
    /// Cost of a whole way, parts not looked at.
    pub(crate) fn cost(&self, points: &[At]) -> f64 {
        let mut cost = BEND * points.len().saturating_sub(2) as f64;
        for piece in pieces(points) {
            cost += f64::from(piece.high - piece.low) + self.tracks.cost(piece, self.fellows, f64::INFINITY);
        }
        cost
    }
    fn clear(&self, points: &[At]) -> bool {
        pieces(points).all(|piece| self.free(piece))
    }

    /// The best way between two ends that patterns of up to five pieces give; `None` when parts block them all.
    pub(crate) fn find(&self, from: Outlet, to: Outlet) -> Option<Found> {
        let mut best = Best(None);
        let axes = |outlet: &Outlet| match outlet.axis() {
            Some(axis) => vec![axis],
            None => vec![Axis::Level, Axis::Upright],
        };
        for first in axes(&from) {
            for last in axes(&to) {
                if first == last {
                    self.same_axis(first, from, to, &mut best);
                } else {
                    self.cross_axis(first, from, to, &mut best);
                }
            }
        }
        best.0
    }

    /// Whether a way that costs at least what is known, and besides what its piece on `line` meets, may be the best.
    fn may_be_better(&self, best: &Best, known: f64, axis: Axis, line: i32, ends: (i32, i32)) -> bool {
        let Some(room) = best.room(known) else {
            return false;
        };
        let piece = Piece {
            axis,
            line,
            low: ends.0.min(ends.1),
            high: ends.0.max(ends.1),
        };
        self.tracks.cost(piece, self.fellows, room) < room
    }

    fn offer(&self, best: &mut Best, points: Vec<At>) {
        let mut points = points;
        points.dedup();
        straighten(&mut points);
        let length: i32 = pieces(&points).map(|piece| piece.high - piece.low).sum();
        let least = f64::from(length) + BEND * points.len().saturating_sub(2) as f64;
        if best.beats(least) {
            return;
        }
        // The longest piece is likely to cost most: what it rules out needs no look at the others.
        let mut longest_first: Vec<Piece> = pieces(&points).collect();
        longest_first.order_by_key(|piece| piece.low - piece.high);
        let mut cost = least;
        for piece in longest_first {
            let room = best.0.as_ref().map_or(f64::INFINITY, |found| found.cost - cost);
            cost += self.tracks.cost(piece, self.fellows, room);
            if best.beats(cost) {
                return;
            }
        }
        if self.clear(&points) {
            best.0 = Some(Found { points, cost });
        }
    }

    /// Both ends leave along the same axis: straight, with one cross piece, or with two cross pieces.
    fn same_axis(&self, axis: Axis, from: Outlet, to: Outlet, best: &mut Best) {
        let (u0, v0) = (from.at.along(axis), from.at.across(axis));
        let (u1, v1) = (to.at.along(axis), to.at.across(axis));
        let (d, e) = (from.sign(axis), to.sign(axis));
        let at = |u, v| At::on(axis, u, v);
        if v0 == v1 && d * (u1 - u0) >= 0 && e * (u0 - u1) >= 0 {
            self.offer(best, vec![from.at, to.at]);
        }
        let (low, high) = (u0.min(u1) - BEYOND, u0.max(u1) + BEYOND);
        let limits = |sign: i32, start: i32| match sign {
            0 => (low, high),
            sign if sign > 0 => (start, high),
            _ => (low, start),
        };
        let reach = |outlet: &Outlet, sign: i32, start: i32| {
            let (a, b) = limits(sign, start);
            let down = if a < start {
                self.reach(outlet.at, axis, -1, a)
            } else {
                start
            };
            let up = if b > start {
                self.reach(outlet.at, axis, 1, b)
            } else {
                start
            };
            (down, up)
        };
        let (reach0, reach1) = (reach(&from, d, u0), reach(&to, e, u1));
        // One cross piece, at u.
        let (a, b) = (reach0.0.max(reach1.0), reach0.1.min(reach1.1));
        if a <= b {
            let middle = (u0 + u1) / 2;
            let span = (v0.min(v1), v0.max(v1));
            let mut lines = self.clear_lines(axis.other(), span, [u0, u1, middle], (a, b));
            nearest_first(&mut lines, &|u| {
                (
                    (u - u0).abs() + (u - u1).abs(),
                    (u - middle).abs().min((u - u1).abs()),
                )
            });
            lines.truncate(self.effort.lines);
            for u in lines {
                let least = f64::from((u - u0).abs() + (v0 - v1).abs() + (u - u1).abs()) + 2.0 * BEND;
                if best.beats(least) {
                    break;
                }
                self.offer(best, vec![from.at, at(u, v0), at(u, v1), to.at]);
            }
        }
        // Two cross pieces with a long piece at v between them.
        let span = (u0.min(u1), u0.max(u1));
        let range = (v0.min(v1) - BEYOND, v0.max(v1) + BEYOND);
        let mut lines = self.clear_lines(axis, span, [v0, v1, v0], range);
        nearest_first(&mut lines, &|v| {
            (
                (v - v0).abs() + (v - v1).abs(),
                (v - v0).abs().min((v - v1).abs()),
            )
        });
        let mut exit0 = Exit::new(self, axis, from.at, d, reach0, u1, range);
        let mut exit1 = Exit::new(self, axis, to.at, e, reach1, u0, range);
        for v in lines.into_iter().take(self.effort.lines) {
            let least = f64::from((v - v0).abs() + (v - v1).abs() + (u0 - u1).abs()) + 4.0 * BEND;
            let Some(room) = best.room(least) else { break };
            let Some((cost0, among0, a)) = exit0.best(v, room) else {
                continue;
            };
            let Some((_, among1, b)) = exit1.best(v, room - cost0) else {
                continue;
            };
            // What the piece on this line meets is not known yet; most lines fall out here.
            if v != v0 && v != v1 && a != b {
                let length =
                    (a - u0).abs() + (v - v0).abs() + (a - b).abs() + (v - v1).abs() + (b - u1).abs();
                let bends = 2 + i32::from(a != u0) + i32::from(b != u1);
                let known = f64::from(length) + BEND * f64::from(bends) + among0 + among1;
                if !self.may_be_better(best, known, axis, v, (a, b)) {
                    continue;
                }
            }
            self.offer(
                best,
                vec![from.at, at(a, v0), at(a, v), at(b, v), at(b, v1), to.at],
            );
        }
    }

    /// The ends leave along different axes: one corner, or three.
    fn cross_axis(&self, axis: Axis, from: Outlet, to: Outlet, best: &mut Best) {
        let (u0, v0) = (from.at.along(axis), from.at.across(axis));
        let (u1, v1) = (to.at.along(axis), to.at.across(axis));
        let (d, e) = (from.sign(axis), to.sign(axis.other()));
        let at = |u, v| At::on(axis, u, v);
        if d * (u1 - u0) >= 0 && e * (v0 - v1) >= 0 {
            self.offer(best, vec![from.at, at(u1, v0), to.at]);
        }
        let far = |sign: i32, start: i32, low: i32, high: i32| match sign {
            0 => (low, high),
            sign if sign > 0 => (start, high),
            _ => (low, start),
        };
        let (low, high) = far(d, u0, u0.min(u1) - BEYOND, u0.max(u1) + BEYOND);
        let reach0 = (
            if low < u0 {
                self.reach(from.at, axis, -1, low)
            } else {
                u0
            },
            if high > u0 {
                self.reach(from.at, axis, 1, high)
            } else {
                u0
            },
        );
        let (low, high) = far(e, v1, v0.min(v1) - BEYOND, v0.max(v1) + BEYOND);
        let reach1 = (
            if low < v1 {
                self.reach(to.at, axis.other(), -1, low)
            } else {
                v1
            },
            if high > v1 {
                self.reach(to.at, axis.other(), 1, high)
            } else {
                v1
            },
        );
        let mut lines = self.clear_lines(axis, (u0.min(u1), u0.max(u1)), [v0, v1, v1], reach1);
        nearest_first(&mut lines, &|v| ((v - v0).abs() + (v - v1).abs(), (v - v1).abs()));
        let range = (reach1.0.min(v0), reach1.1.max(v0));
        let mut exit = Exit::new(self, axis, from.at, d, reach0, u1, range);
        for v in lines.into_iter().take(self.effort.lines) {
            let least = f64::from((v - v0).abs() + (v - v1).abs() + (u0 - u1).abs()) + 3.0 * BEND;
            let Some(room) = best.room(least) else { break };
            if let Some((_, among, u)) = exit.best(v, room) {
                if v != v0 && v != v1 && u != u1 {
                    let length = (u - u0).abs() + (v - v0).abs() + (u - u1).abs() + (v - v1).abs();
                    let bends = 2 + i32::from(u != u0);
                    let known = f64::from(length) + BEND * f64::from(bends) + among;
                    if !self.may_be_better(best, known, axis, v, (u, u1)) {
                        continue;
                    }
                }
                self.offer(best, vec![from.at, at(u, v0), at(u, v), at(u1, v), to.at]);
            }
        }
    }
}

/// The best way so far.
struct Best(Option<Found>);

impl Best {
    /// Whether the best so far is at least as good as this.
    fn beats(&self, cost: f64) -> bool {
        self.0.as_ref().is_some_and(|found| found.cost <= cost)
    }
    /// How much more than `least` a way may cost and still be better; `None` when none can be.
    fn room(&self, least: f64) -> Option<f64> {
        match &self.0 {
            Some(found) => (found.cost > least).then_some(found.cost - least),
            None => Some(f64::INFINITY),
        }
    }
}

/// Orders lines by how far they are, and where that is equal by where they are. One sort for all who ask: the numbers
/// themselves are sorted, which is as fast as it gets.
fn nearest_first(lines: &mut [i32], far: &dyn Fn(i32) -> (i32, i32)) {
    let mut keyed: Vec<(i32, i32, i32)> = lines
        .iter()
        .map(|line| {
            let (first, second) = far(*line);
            (first, second, *line)
        })
        .collect();
    keyed.sort_unstable();
    for (line, (_, _, sorted)) in lines.iter_mut().zip(keyed) {
        *line = sorted;
    }
}

/// Takes out points that lie on a straight line between their neighbours.
pub(crate) fn straighten(points: &mut Vec<At>) {
    let mut kept: Vec<At> = Vec::with_capacity(points.len());
    for at in points.iter().copied() {
        while let [.., a, b] = kept.as_slice() {
            let level = a.y == b.y && b.y == at.y && (b.x - a.x).signum() == (at.x - b.x).signum();
            let upright = a.x == b.x && b.x == at.x && (b.y - a.y).signum() == (at.y - b.y).signum();
            if level || upright {
                kept.pop();
            } else {
                break;
            }
        }
        kept.push(at);
    }
    *points = kept;
}
