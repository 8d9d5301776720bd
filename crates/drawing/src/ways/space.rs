//! What a way is searched among: the parts that it keeps clear of, the lines that are, and how far one can go on them; with
//! where it begins and ends ([`Outlet`]), and how much is tried for it ([`Effort`]).

use super::tracks::{At, Axis, Piece, Tracks};
use crate::index::Index;
use kurbo::Rect;
use model::{PartId, RunId};
use ordered::Sort as _;

/// How far a run goes straight out of a stud before it may turn, and how far it keeps from parts.
pub(crate) const CLEAR: i32 = 10;

/// Step of the lines that are tried.
pub(super) const STEP: i32 = 10;

/// How far beyond its ends a way is searched, in board units.
pub(super) const BEYOND: i32 = 600;

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
    pub(super) fn axis(&self) -> Option<Axis> {
        match self.out {
            (0, 0) => None,
            (0, _) => Some(Axis::Upright),
            _ => Some(Axis::Level),
        }
    }
    /// Sign of the direction along an axis.
    pub(super) fn sign(&self, axis: Axis) -> i32 {
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
    /// Parts so close to one of its studs that the run cannot keep its distance from them, each once: their outlines are kept clear
    /// of, or where even that is impossible for either end, nothing (true).
    pub(crate) close: Vec<(PartId, bool)>,
    pub(crate) effort: Effort,
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
        for (id, inside) in close {
            match self.close.iter_mut().find(|(known, _)| *known == id) {
                Some((_, is_inside)) => *is_inside |= inside,
                None => self.close.push((id, inside)),
            }
        }
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
    pub(super) fn clear_lines(
        &self,
        axis: Axis,
        span: (i32, i32),
        marks: [i32; 3],
        range: (i32, i32),
    ) -> Vec<i32> {
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
    pub(super) fn reach(&self, from: At, axis: Axis, sign: i32, limit: i32) -> i32 {
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
}

/// Lines of the grid from `a` to `b`.
fn lines_between(a: i32, b: i32) -> impl Iterator<Item = i32> {
    let first = a.div_euclid(STEP) * STEP + if a.rem_euclid(STEP) == 0 { 0 } else { STEP };
    let count = if b >= first { (b - first) / STEP + 1 } else { 0 };
    (0..count).map(move |n| first + n * STEP)
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

#[cfg(test)]
mod tests {
    use super::*;

    /// A run from 5 units beside a part to a point within it goes the same way as the run from there to here: whatever is noted first,
    /// the part is in the way of neither end.
    #[test]
    fn a_part_is_as_close_whichever_end_of_a_run_is_noted_first() {
        let part = PartId(1);
        let mut index = Index::default();
        index.insert(Rect::new(0.0, 0.0, 100.0, 60.0), part);
        let tracks = Tracks::default();
        let (beside, within) = (At { x: -5, y: 30 }, At { x: 50, y: 30 });
        let level = Piece {
            axis: Axis::Level,
            line: 30,
            low: -5,
            high: 50,
        };
        let noted = |ends: &[At]| {
            let mut space = Space {
                index: &index,
                tracks: &tracks,
                fellows: &[],
                close: Vec::new(),
                effort: Effort::CARE,
            };
            for end in ends {
                space.note_close(*end);
            }
            let reach = space.reach(beside, Axis::Level, 1, 200);
            (space.free(level), reach, space.close.clone())
        };
        assert_eq!(noted(&[beside]), (false, 0, vec![(part, false)]));
        let free = (true, 200, vec![(part, true)]);
        assert_eq!(noted(&[within, beside]), free);
        assert_eq!(noted(&[beside, within]), free);
    }
}
