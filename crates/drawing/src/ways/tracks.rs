//! Straight pieces of runs, kept by the line they lie on: what lies over what, and what crosses what.

use model::RunId;
use std::collections::BTreeMap;

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
/// What it costs to touch another run with an end or corner: it looks like a joint.
const TOUCH: f64 = 160.0;
/// What it costs to lie over another run, besides three times the length of it.
const OVER: f64 = 300.0;
/// What it costs to lie over a run that leaves the same stud, besides the length of it.
const OVER_FELLOW: f64 = 20.0;

/// All pieces by their lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Tracks {
    level: BTreeMap<i32, Vec<(i32, i32, RunId)>>,
    upright: BTreeMap<i32, Vec<(i32, i32, RunId)>>,
}

impl Tracks {
    fn lines(&self, axis: Axis) -> &BTreeMap<i32, Vec<(i32, i32, RunId)>> {
        match axis {
            Axis::Level => &self.level,
            Axis::Upright => &self.upright,
        }
    }
    fn lines_mut(&mut self, axis: Axis) -> &mut BTreeMap<i32, Vec<(i32, i32, RunId)>> {
        match axis {
            Axis::Level => &mut self.level,
            Axis::Upright => &mut self.upright,
        }
    }
    pub(crate) fn insert(&mut self, run: RunId, points: &[At]) {
        for piece in pieces(points) {
            self.lines_mut(piece.axis)
                .entry(piece.line)
                .or_default()
                .push((piece.low, piece.high, run));
        }
    }
    pub(crate) fn remove(&mut self, run: RunId, points: &[At]) {
        for piece in pieces(points) {
            let lines = self.lines_mut(piece.axis);
            if let Some(list) = lines.get_mut(&piece.line) {
                list.retain(|(_, _, other)| *other != run);
                if list.is_empty() {
                    lines.remove(&piece.line);
                }
            }
        }
    }
    /// What it costs to lay this piece among the others. `fellows` leave from the same studs.
    pub(crate) fn cost(&self, piece: Piece, fellows: &[RunId]) -> f64 {
        let Piece {
            axis,
            line,
            low,
            high,
        } = piece;
        let mut cost = 0.0;
        for (_, list) in self
            .lines(axis)
            .range(line - SIDE_BY_SIDE + 1..line + SIDE_BY_SIDE)
        {
            for (other_low, other_high, run) in list {
                let shared = high.min(*other_high) - low.max(*other_low);
                if shared > -4 {
                    let shared = f64::from(shared.max(0));
                    cost += if fellows.contains(run) {
                        OVER_FELLOW + shared
                    } else {
                        OVER + 3.0 * shared
                    };
                }
            }
        }
        for (other_line, list) in self.lines(axis.other()).range(low..=high) {
            for (other_low, other_high, run) in list {
                if *other_low > line || *other_high < line || fellows.contains(run) {
                    continue;
                }
                let inside =
                    *other_low < line && line < *other_high && low < *other_line && *other_line < high;
                cost += if inside { CROSSING } else { TOUCH };
            }
        }
        cost
    }
    /// Where this piece is crossed by others, along its axis, in order.
    pub(crate) fn crossings(&self, piece: Piece) -> Vec<(i32, RunId)> {
        let mut found: Vec<(i32, RunId)> = Vec::new();
        if piece.high - piece.low < 2 {
            return found;
        }
        for (other_line, list) in self.lines(piece.axis.other()).range(piece.low + 1..piece.high) {
            for (low, high, run) in list {
                if *low < piece.line && piece.line < *high {
                    found.push((*other_line, *run));
                }
            }
        }
        found
    }
    /// Whether any piece but those of this run comes within an area: low and high x, low and high y.
    pub(crate) fn enters(&self, x: (i32, i32), y: (i32, i32), but: RunId) -> bool {
        let on = |lines: &BTreeMap<i32, Vec<(i32, i32, RunId)>>, line: (i32, i32), along: (i32, i32)| {
            line.0 <= line.1
                && lines.range(line.0..=line.1).any(|(_, list)| {
                    list.iter()
                        .any(|(low, high, run)| *run != but && *low <= along.1 && *high >= along.0)
                })
        };
        on(&self.level, y, x) || on(&self.upright, x, y)
    }
}
