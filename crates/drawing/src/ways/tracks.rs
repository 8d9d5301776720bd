//! Straight pieces of runs, kept by the line they lie on: what lies over what, and what crosses what.

use crate::cells::Cells;
use model::RunId;
use ordered::Sort as _;

/// Direction of a straight piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    /// From left to right: its line is a y.
    Level,
    /// From top to bottom: its line is an x.
    Upright,
}

impl Axis {
    pub(crate) fn other(self) -> Self {
        match self {
            Self::Level => Self::Upright,
            Self::Upright => Self::Level,
        }
    }
}

/// A point of the board in whole units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct At {
    pub(crate) x: i32,
    pub(crate) y: i32,
}

impl At {
    /// The point `along` an axis and `across` it.
    pub(crate) fn on(axis: Axis, along: i32, across: i32) -> Self {
        match axis {
            Axis::Level => Self { x: along, y: across },
            Axis::Upright => Self { x: across, y: along },
        }
    }
    pub(crate) fn along(self, axis: Axis) -> i32 {
        match axis {
            Axis::Level => self.x,
            Axis::Upright => self.y,
        }
    }
    pub(crate) fn across(self, axis: Axis) -> i32 {
        self.along(axis.other())
    }
}

/// A straight piece: on its line from `low` to `high`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Piece {
    pub(crate) axis: Axis,
    pub(crate) line: i32,
    pub(crate) low: i32,
    pub(crate) high: i32,
}

/// The straight pieces of a way.
pub(crate) fn pieces(points: &[At]) -> impl Iterator<Item = Piece> + '_ {
    points.windows(2).filter_map(|pair| {
        let (a, b) = (*pair.first()?, *pair.get(1)?);
        let axis = if a.y == b.y { Axis::Level } else { Axis::Upright };
        (a != b).then(|| Piece {
            axis,
            line: a.across(axis),
            low: a.along(axis).min(b.along(axis)),
            high: a.along(axis).max(b.along(axis)),
        })
    })
}

/// Pieces nearer to each other than this, side by side, lie over one another.
const SIDE_BY_SIDE: i32 = 8;
/// What a crossing costs, in board units of length.
pub(crate) const CROSSING: f64 = 70.0;
/// What it costs besides when the crossing is so close to a corner that there is no room for a hop.
const TIGHT: f64 = 40.0;
/// What it costs to touch another run with an end or corner: it looks like a joint.
const TOUCH: f64 = 160.0;
/// What it costs to lie over another run, besides three times the length of it.
const OVER: f64 = 300.0;
/// What it costs to lie over a run that leaves the same stud, besides the length of it.
const OVER_FELLOW: f64 = 20.0;

/// Size of a cell in which one looks for what crosses a line, along the pieces it holds and across them, in board units.
const CELL: (i32, i32) = (160, 320);
/// Depth of a band in which one looks for what lies beside a line, in board units: hardly more than that reaches.
const BAND: i32 = 16;
/// Length of a stretch of a band.
const STRETCH: i32 = 640;
/// A piece longer than this is kept in a list beside the cells, so that far-flung runs cannot fill the memory.
const LONGEST: i32 = 64_000;

/// A piece as it is kept: its line, from where to where, and whose it is.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Laid {
    line: i32,
    low: i32,
    high: i32,
    run: RunId,
}

/// Pieces of one axis. Each is kept twice: what crosses a line is looked for in other places than what lies beside it.
#[derive(Clone, Debug, Default, PartialEq)]
struct Bundle {
    /// By the square cells that they pass: first the one along the piece, then the one across.
    crossing: Cells<Laid>,
    /// By the stretches of bands that they pass: first the stretch along the piece, then the band.
    beside: Cells<Laid>,
    long: Vec<Laid>,
}

impl Bundle {
    fn insert(&mut self, laid: Laid) {
        if laid.high - laid.low > LONGEST {
            self.long.push(laid);
            return;
        }
        for along in laid.low.div_euclid(CELL.0)..=laid.high.div_euclid(CELL.0) {
            self.crossing.push(along, laid.line.div_euclid(CELL.1), laid);
        }
        for along in laid.low.div_euclid(STRETCH)..=laid.high.div_euclid(STRETCH) {
            self.beside.push(along, laid.line.div_euclid(BAND), laid);
        }
    }
    fn remove(&mut self, laid: Laid) {
        if laid.high - laid.low > LONGEST {
            if let Some(place) = self.long.iter().position(|other| *other == laid) {
                self.long.swap_remove(place);
            }
            return;
        }
        for along in laid.low.div_euclid(CELL.0)..=laid.high.div_euclid(CELL.0) {
            self.crossing
                .take(along, laid.line.div_euclid(CELL.1), |other| *other == laid);
        }
        for along in laid.low.div_euclid(STRETCH)..=laid.high.div_euclid(STRETCH) {
            self.beside
                .take(along, laid.line.div_euclid(BAND), |other| *other == laid);
        }
    }
    /// Calls for each piece of this bundle that meets a piece across it: one on `line` from `low` to `high`.
    #[inline]
    fn across(&self, line: i32, low: i32, high: i32, mut call: impl FnMut(&Laid)) {
        let mut met = |laid: &Laid| {
            if low <= laid.line && laid.line <= high && laid.low <= line && line <= laid.high {
                call(laid);
            }
        };
        self.long.iter().for_each(&mut met);
        let row = line.div_euclid(CELL.0);
        let lines = (low.div_euclid(CELL.1), high.div_euclid(CELL.1));
        self.crossing.any((row, row), lines, |_, _, laid| {
            met(laid);
            false
        });
    }
    /// Calls once for each piece of this bundle on one of the lines that lies within or touches a stretch along them.
    #[inline]
    fn along(&self, lines: (i32, i32), low: i32, high: i32, mut call: impl FnMut(&Laid)) {
        let mut met = |laid: &Laid| {
            if lines.0 <= laid.line && laid.line <= lines.1 && laid.low <= high && low <= laid.high {
                call(laid);
            }
        };
        self.long.iter().for_each(&mut met);
        let first = low.div_euclid(STRETCH);
        let bands = (lines.0.div_euclid(BAND), lines.1.div_euclid(BAND));
        self.beside
            .any((first, high.div_euclid(STRETCH)), bands, |along, _, laid| {
                // A piece lies in several stretches; it counts in the first of them that is looked at.
                if along == laid.low.div_euclid(STRETCH).max(first) {
                    met(laid);
                }
                false
            });
    }
}

/// What is met along a piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Profile {
    /// Where others cross it, in order.
    across: Vec<i32>,
    /// Where others lie over it: from, to, and whether they leave from the same stud.
    over: Vec<(i32, i32, bool)>,
}

impl Profile {
    /// About what [`Tracks::cost`] says of the part from `low` to `high`; whether a hop has room is not looked at.
    pub(crate) fn cost(&self, low: i32, high: i32) -> f64 {
        let below = |limit: i32| self.across.partition_point(|at| *at < limit);
        let met = below(high + 1).saturating_sub(below(low));
        let mut cost = CROSSING * met as f64;
        for (other_low, other_high, fellow) in &self.over {
            let shared = high.min(*other_high) - low.max(*other_low);
            if shared > -4 {
                let shared = f64::from(shared.max(0));
                cost += if *fellow {
                    OVER_FELLOW + shared
                } else {
                    OVER + 3.0 * shared
                };
            }
        }
        cost
    }
}

/// All pieces of all runs.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Tracks {
    level: Bundle,
    upright: Bundle,
}

impl Tracks {
    fn bundle(&self, axis: Axis) -> &Bundle {
        match axis {
            Axis::Level => &self.level,
            Axis::Upright => &self.upright,
        }
    }
    fn bundle_mut(&mut self, axis: Axis) -> &mut Bundle {
        match axis {
            Axis::Level => &mut self.level,
            Axis::Upright => &mut self.upright,
        }
    }
    pub(crate) fn insert(&mut self, run: RunId, points: &[At]) {
        for piece in pieces(points) {
            let Piece {
                axis,
                line,
                low,
                high,
            } = piece;
            self.bundle_mut(axis).insert(Laid { line, low, high, run });
        }
    }
    pub(crate) fn remove(&mut self, run: RunId, points: &[At]) {
        for piece in pieces(points) {
            let Piece {
                axis,
                line,
                low,
                high,
            } = piece;
            self.bundle_mut(axis).remove(Laid { line, low, high, run });
        }
    }
    /// Calls for what lies over a piece: on its line or too close beside it, for some length or end to end.
    #[inline]
    fn beside(&self, piece: Piece, call: impl FnMut(&Laid)) {
        let lines = (piece.line - SIDE_BY_SIDE + 1, piece.line + SIDE_BY_SIDE - 1);
        self.bundle(piece.axis)
            .along(lines, piece.low - 3, piece.high + 3, call);
    }
    /// What it costs to lay this piece among the others. `fellows` leave from the same studs. Counting stops at `most`.
    pub(crate) fn cost(&self, piece: Piece, fellows: &[RunId], most: f64) -> f64 {
        let Piece {
            axis,
            line,
            low,
            high,
        } = piece;
        let mut cost = 0.0;
        self.beside(piece, |laid| {
            let shared = f64::from((high.min(laid.high) - low.max(laid.low)).max(0));
            cost += if fellows.contains(&laid.run) {
                OVER_FELLOW + shared
            } else {
                OVER + 3.0 * shared
            };
        });
        if cost >= most {
            return cost;
        }
        self.bundle(axis.other()).across(line, low, high, |laid| {
            if fellows.contains(&laid.run) {
                return;
            }
            let inside = laid.low < line && line < laid.high && low < laid.line && laid.line < high;
            // Close to a corner there is no room for a hop.
            let tight =
                laid.line - low < 8 || high - laid.line < 8 || line - laid.low < 8 || laid.high - line < 8;
            cost += match (inside, tight) {
                (true, false) => CROSSING,
                (true, true) => CROSSING + TIGHT,
                (false, _) => TOUCH,
            };
        });
        cost
    }
    /// What is met along a piece, to tell the cost of any part of it quickly.
    pub(crate) fn profile(&self, piece: Piece, fellows: &[RunId]) -> Profile {
        let Piece {
            axis,
            line,
            low,
            high,
        } = piece;
        let mut profile = Profile::default();
        self.beside(piece, |laid| {
            profile
                .over
                .push((laid.low, laid.high, fellows.contains(&laid.run)));
        });
        self.bundle(axis.other()).across(line, low, high, |laid| {
            if !fellows.contains(&laid.run) {
                profile.across.push(laid.line);
            }
        });
        profile.across.sort_unstable();
        profile
    }
    /// Where this piece is crossed by others, along its axis, in order.
    pub(crate) fn crossings(&self, piece: Piece) -> Vec<(i32, RunId)> {
        let mut found: Vec<(i32, RunId)> = Vec::new();
        self.bundle(piece.axis.other())
            .across(piece.line, piece.low + 1, piece.high - 1, |laid| {
                if laid.low < piece.line && piece.line < laid.high {
                    found.push((laid.line, laid.run));
                }
            });
        found.order();
        found
    }
    /// Whether any piece but those of this run comes within an area: low and high x, low and high y.
    pub(crate) fn enters(&self, x: (i32, i32), y: (i32, i32), but: RunId) -> bool {
        let mut crossed = false;
        let (thin, long, along) = if x.1 - x.0 > y.1 - y.0 {
            (&self.level, &self.upright, Axis::Level)
        } else {
            (&self.upright, &self.level, Axis::Upright)
        };
        let (lines, span) = match along {
            Axis::Level => (y, x),
            Axis::Upright => (x, y),
        };
        thin.along(lines, span.0, span.1, |laid| crossed |= laid.run != but);
        if crossed {
            return true;
        }
        // The area is thinner than a cell, so that three lines through it meet whatever enters it.
        for line in [lines.0, (lines.0 + lines.1) / 2, lines.1] {
            long.across(line, span.0, span.1, |laid| crossed |= laid.run != but);
        }
        crossed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn level(line: i32, low: i32, high: i32) -> [At; 2] {
        [At { x: low, y: line }, At { x: high, y: line }]
    }
    fn upright(line: i32, low: i32, high: i32) -> [At; 2] {
        [At { x: line, y: low }, At { x: line, y: high }]
    }
    fn cost(tracks: &Tracks, points: &[At], fellows: &[RunId]) -> f64 {
        pieces(points)
            .map(|piece| tracks.cost(piece, fellows, f64::INFINITY))
            .sum()
    }

    #[test]
    fn crossings_touches_and_overlaps_are_told_apart() {
        let mut tracks = Tracks::default();
        tracks.insert(RunId(1), &level(100, -500, 700));
        assert_eq!(cost(&tracks, &upright(50, 0, 200), &[]), CROSSING);
        assert_eq!(cost(&tracks, &upright(50, 0, 100), &[]), TOUCH);
        assert_eq!(cost(&tracks, &upright(50, 0, 90), &[]), 0.0);
        assert_eq!(cost(&tracks, &upright(50, 95, 200), &[]), CROSSING + TIGHT);
        assert_eq!(cost(&tracks, &level(110, 0, 200), &[]), 0.0);
        assert_eq!(cost(&tracks, &level(104, 600, 800), &[]), OVER + 300.0);
        assert_eq!(
            cost(&tracks, &level(100, 600, 800), &[RunId(1)]),
            OVER_FELLOW + 100.0
        );
        assert!(tracks.enters((0, 40), (96, 104), RunId(2)));
        assert!(!tracks.enters((0, 40), (96, 104), RunId(1)));
        assert!(tracks.enters((20, 28), (80, 120), RunId(2)));
        let found = tracks.crossings(Piece {
            axis: Axis::Upright,
            line: 0,
            low: 0,
            high: 300,
        });
        assert_eq!(found, vec![(100, RunId(1))]);
        tracks.remove(RunId(1), &level(100, -500, 700));
        assert_eq!(tracks, Tracks::default());
    }

    #[test]
    fn a_piece_across_the_whole_board_is_kept_beside_the_cells() {
        let mut tracks = Tracks::default();
        tracks.insert(RunId(1), &level(0, -1_000_000, 1_000_000));
        assert_eq!(
            (&tracks.level.crossing, tracks.level.long.len()),
            (&Cells::default(), 1)
        );
        assert_eq!(cost(&tracks, &upright(123_456, -50, 50), &[]), CROSSING);
    }
}
