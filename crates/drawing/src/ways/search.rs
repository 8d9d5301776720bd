//! Finds the way of one run: ways of few bends are tried in order of cost, on lines that are clear of parts; a maze
//! search is left for what they cannot reach.
//!
//! Cost is length, plus [`BEND`] for a bend, plus what [`Tracks::cost`] says of the runs already laid.

use super::tracks::{At, Axis, Piece, Profile, Tracks, pieces};
use crate::index::Index;
use kurbo::Rect;
use model::{PartId, RunId};
use ordered::Sort as _;

/// What a bend costs, in board units of length.
pub(crate) const BEND: f64 = 24.0;
/// How far a run goes straight out of a stud before it may turn, and how far it keeps from parts.
pub(crate) const CLEAR: i32 = 10;
/// Step of the lines that are tried.
const STEP: i32 = 10;
/// How far beyond its ends a way is searched.
const BEYOND: i32 = 600;
/// How much is tried for the way of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Effort {
    /// Most lines tried beside one another near an end.
    pub(crate) near_lines: usize,
    /// Most lines tried for the long piece of a way, nearest first.
    pub(crate) lines: usize,
    /// Most points of a maze: beyond that the ends are joined straight. Keeps a far-flung run from freezing the page.
    pub(crate) maze: i32,
    /// Most times that crossing runs are taken up and laid again.
    pub(crate) rounds: usize,
}

impl Effort {
    /// For a drawing that stays.
    pub(crate) const CARE: Self = Self {
        near_lines: 24,
        lines: 120,
        maze: 200_000,
        rounds: 3,
    };
    /// For a drawing that stays, of so many runs that their paths cross everywhere anyway.
    pub(crate) const MANY: Self = Self {
        near_lines: 14,
        lines: 40,
        maze: 60_000,
        rounds: 1,
    };
    /// For a step of a drag, of which the next moment shows another.
    pub(crate) const HASTE: Self = Self {
        near_lines: 10,
        lines: 30,
        maze: 30_000,
        rounds: 0,
    };
}

/// An end of a run: where it may turn first, and the direction in which it leaves: (0, 0) for a loose end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Outlet {
    pub(crate) at: At,
    pub(crate) out: (i32, i32),
}

impl Outlet {
    fn axis(&self) -> Option<Axis> {
        match self.out {
            (0, 0) => None,
            (0, _) => Some(Axis::Upright),
            _ => Some(Axis::Level),
        }
    }
    /// Sign of the direction along an axis.
    fn sign(&self, axis: Axis) -> i32 {
        match axis {
            Axis::Level => self.out.0.signum(),
            Axis::Upright => self.out.1.signum(),
        }
    }
}

/// Parts and runs among which a way is searched.
pub(crate) struct Space<'a> {
    pub(crate) index: &'a Index<PartId>,
    pub(crate) tracks: &'a Tracks,
    /// Runs that leave from the same studs as the one that is laid.
    pub(crate) fellows: &'a [RunId],
    /// Parts so close to one of its studs that the run cannot keep its distance from them: their outlines are kept clear
    /// of, or where even that is impossible, nothing (true).
    pub(crate) close: Vec<(PartId, bool)>,
    pub(crate) effort: Effort,
}

/// A way with its cost.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Found {
    pub(crate) points: Vec<At>,
    pub(crate) cost: f64,
}

fn area(axis: Axis, along: (i32, i32), across: (i32, i32)) -> Rect {
    let (x, y) = match axis {
        Axis::Level => (along, across),
        Axis::Upright => (across, along),
    };
    Rect::new(f64::from(x.0), f64::from(y.0), f64::from(x.1), f64::from(y.1))
}

/// Low and high of an outline along an axis, in whole units, widened by a margin.
fn span(outline: Rect, axis: Axis, margin: i32) -> (i32, i32) {
    let (low, high) = match axis {
        Axis::Level => (outline.x0, outline.x1),
        Axis::Upright => (outline.y0, outline.y1),
    };
    (libm::floor(low) as i32 - margin, libm::ceil(high) as i32 + margin)
}

impl Space<'_> {
    /// Notes the parts that stand too close to an end.
    pub(crate) fn note_close(&mut self, end: At) {
        let search =
            area(Axis::Level, (end.x, end.x), (end.y, end.y)).inflate(f64::from(CLEAR), f64::from(CLEAR));
        let mut close = Vec::new();
        self.index.any_near(search, |id, outline| {
            let within = |margin: i32| {
                let (x, y) = (
                    span(outline, Axis::Level, margin),
                    span(outline, Axis::Upright, margin),
                );
                x.0 < end.x && end.x < x.1 && y.0 < end.y && end.y < y.1
            };
            if within(CLEAR) {
                close.push((id, within(0)));
            }
            false
        });
        self.close.extend(close);
    }
    /// What a part of this outline blocks along an axis and across it: lines strictly between are blocked. `None` when it
    /// blocks nothing.
    fn wall(&self, id: PartId, outline: Rect, axis: Axis) -> Option<((i32, i32), (i32, i32))> {
        let margin = match self.close.iter().find(|(close, _)| *close == id) {
            None => CLEAR,
            Some((_, false)) => 0,
            Some((_, true)) => return None,
        };
        Some((span(outline, axis, margin), span(outline, axis.other(), margin)))
    }
    /// Walls in an area, as spans of x and y: places strictly between are blocked.
    pub(crate) fn walls(&self, x: (i32, i32), y: (i32, i32)) -> Vec<((i32, i32), (i32, i32))> {
        let search = area(Axis::Level, x, y).inflate(f64::from(CLEAR), f64::from(CLEAR));
        let mut walls = Vec::new();
        self.index.any_near(search, |id, outline| {
            walls.extend(self.wall(id, outline, Axis::Level));
            false
        });
        walls.order();
        walls.dedup();
        walls
    }
    /// Whether a piece keeps clear of all parts.
    pub(crate) fn free(&self, piece: Piece) -> bool {
        let search = area(piece.axis, (piece.low, piece.high), (piece.line, piece.line))
            .inflate(f64::from(CLEAR), f64::from(CLEAR));
        !self.index.any_near(search, |id, outline| {
            self.wall(id, outline, piece.axis)
                .is_some_and(|((low, high), (before, after))| {
                    low < piece.high && piece.low < high && before < piece.line && piece.line < after
                })
        })
    }
    /// The lines, from `lines.0` to `lines.1`, on which a piece of this axis and span would come too near to a part: low
    /// and high of each stretch, both themselves clear.
    fn blocked_lines(&self, axis: Axis, span: (i32, i32), lines: (i32, i32)) -> Vec<(i32, i32)> {
        let search = area(axis, span, lines).inflate(f64::from(CLEAR), f64::from(CLEAR));
        let mut blocked = Vec::new();
        self.index.any_near(search, |id, outline| {
            if let Some(((low, high), wall)) = self.wall(id, outline, axis)
                && low < span.1
                && span.0 < high
            {
                blocked.push(wall);
            }
            false
        });
        blocked.order();
        blocked.dedup();
        blocked
    }
    /// Lines of the grid on which a piece of this axis and span keeps clear of parts: those near any of the marks, within
    /// the range, and the marks themselves.
    fn clear_lines(&self, axis: Axis, span: (i32, i32), marks: [i32; 3], range: (i32, i32)) -> Vec<i32> {
        let mut windows: Vec<(i32, i32)> = marks
            .iter()
            .map(|mark| ((mark - BEYOND).max(range.0), (mark + BEYOND).min(range.1)))
            .filter(|(low, high)| low <= high)
            .collect();
        windows.order();
        let mut lines = Vec::new();
        let mut from = i32::MIN;
        for (low, high) in windows {
            let low = low.max(from);
            if low > high {
                continue;
            }
            from = high + 1;
            // Stretches that overlap are taken together, so that one walk along both lists is enough.
            let mut walls = self.blocked_lines(axis, span, (low, high)).into_iter().peekable();
            let mut wall = (i32::MIN, i32::MIN);
            let mut candidates: Vec<i32> = lines_between(low, high).collect();
            for mark in marks.iter().filter(|mark| (low..=high).contains(*mark)) {
                if let Err(place) = candidates.binary_search(mark) {
                    candidates.insert(place, *mark);
                }
            }
            for line in candidates {
                while let Some(next) = walls.peek() {
                    if next.0 >= line {
                        break;
                    }
                    wall.1 = wall.1.max(next.1);
                    walls.next();
                }
                if line >= wall.1 {
                    lines.push(line);
                }
            }
        }
        lines
    }
    /// How far one can go from a point along an axis in a direction before a part is too near, up to a limit.
    fn reach(&self, from: At, axis: Axis, sign: i32, limit: i32) -> i32 {
        let line = from.across(axis);
        let start = from.along(axis);
        let span = (start.min(limit), start.max(limit));
        let search = area(axis, span, (line, line)).inflate(f64::from(CLEAR), f64::from(CLEAR));
        let mut reach = limit;
        self.index.any_near(search, |id, outline| {
            if let Some(((low, high), (before, after))) = self.wall(id, outline, axis)
                && before < line
                && line < after
            {
                if sign > 0 && high > start {
                    reach = reach.min(low.max(start));
                } else if sign < 0 && low < start {
                    reach = reach.max(high.min(start));
                }
            }
            false
        });
        reach
    }
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

/// Lines on which a run may turn off near an end, with what is known of each.
struct Exit<'a> {
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
    fn new(
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
    fn best(&mut self, v: i32, room: f64) -> Option<(f64, f64, i32)> {
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

/// Lines of the grid from `a` to `b`.
fn lines_between(a: i32, b: i32) -> impl Iterator<Item = i32> {
    let first = a.div_euclid(STEP) * STEP + if a.rem_euclid(STEP) == 0 { 0 } else { STEP };
    let count = if b >= first { (b - first) / STEP + 1 } else { 0 };
    (0..count).map(move |n| first + n * STEP)
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
