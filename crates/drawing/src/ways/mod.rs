//! Ways of the runs on the board.

use crate::layout::Layout;
use crate::part_box::to_point;
use kurbo::{Point, Rect, Vec2};
use model::{BoardPoint, End, Run, RunId, Sheet};
use std::collections::{BTreeMap, BTreeSet};

/// Where a run lies.
#[derive(Clone, Debug, PartialEq)]
pub struct RunWay {
    /// Its corners, from `from` to `to`; pieces between them are level or upright.
    pub points: Vec<Point>,
    /// Width of its conductor on the board, insulation included, in board units.
    pub width: f64,
    /// Bends that were put by hand.
    pub hand_bends: Vec<BoardPoint>,
    /// Middle of the longest straight piece, where its label belongs.
    pub label_at: Point,
    /// Whether that piece is upright, so that the label must be.
    pub label_upright: bool,
    /// Where the way of the run itself says where it begins and ends: to see whether it changed.
    ends: [End; 2],
}

impl RunWay {
    pub(crate) fn new(run: &Run, points: Vec<Point>) -> Self {
        let longest = points
            .windows(2)
            .filter_map(|pair| Some((*pair.first()?, *pair.get(1)?)))
            .fold(None, |best: Option<(Point, Point)>, piece| match best {
                Some(best) if best.0.distance(best.1) >= piece.0.distance(piece.1) => Some(best),
                _ => Some(piece),
            });
        let (a, b) = longest.unwrap_or((Point::ZERO, Point::ZERO));
        Self {
            width: width_of(run),
            hand_bends: run.bends.clone(),
            label_at: a.midpoint(b),
            label_upright: (a.x - b.x).abs() < (a.y - b.y).abs(),
            ends: [run.from.clone(), run.to.clone()],
            points,
        }
    }
    /// Whether it was laid for a run with these ends, bends and width.
    pub(crate) fn is_of(&self, run: &Run) -> bool {
        let [from, to] = &self.ends;
        *from == run.from && *to == run.to && self.hand_bends == run.bends && self.width == width_of(run)
    }
    /// Its straight pieces, in order.
    pub fn pieces(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.points
            .windows(2)
            .filter_map(|pair| Some((*pair.first()?, *pair.get(1)?)))
    }
    /// Box of each piece, for the index.
    pub(crate) fn areas(&self) -> impl Iterator<Item = Rect> + '_ {
        self.pieces()
            .map(|(a, b)| Rect::from_points(a, b).inflate(self.width / 2.0, self.width / 2.0))
    }
    /// The box around it.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.areas().reduce(|all, one| all.union(one)).unwrap_or_default()
    }
    /// Its loose ends: which end, and where.
    pub(crate) fn loose_ends(&self) -> impl Iterator<Item = (u8, Point)> + '_ {
        [(0_u8, self.points.first()), (1, self.points.last())]
            .into_iter()
            .zip(&self.ends)
            .filter(|(_, end)| matches!(end, End::Loose(_)))
            .filter_map(|((which, point), _)| Some((which, *point?)))
    }
}

/// Width of a run on the board: 1.5 + 0.8·√(cross-section in mm²) board units, at least 2 and at most 9; an unknown size
/// counts as 1 mm². So 0.75 mm² is drawn 2.2 wide, 2.5 mm² 2.8, 16 mm² 4.7, 50 mm² 7.2.
#[must_use]
pub fn width_of(run: &Run) -> f64 {
    let area = run.wire.size.value().map_or(1.0, |size| size.area().0);
    (1.5 + 0.8 * libm::sqrt(area.max(0.0))).clamp(2.0, 9.0)
}

/// Lays these runs round the parts of the layout.
pub(crate) fn lay_runs(sheet: &Sheet, layout: &Layout, runs: &BTreeSet<RunId>) -> BTreeMap<RunId, RunWay> {
    let mut ways = BTreeMap::new();
    for id in runs {
        let Some(run) = sheet.runs.get(id) else { continue };
        let end = |end: &End| match end {
            End::Loose(at) => Some((to_point(*at), Vec2::ZERO)),
            End::On(terminal) => layout.stud_of(terminal).map(|stud| (stud.at, stud.out)),
        };
        let (Some(from), Some(to)) = (end(&run.from), end(&run.to)) else {
            continue;
        };
        let a = from.0 + from.1 * 20.0;
        let b = to.0 + to.1 * 20.0;
        let middle = (a.x + b.x) / 2.0;
        let mut points = vec![
            from.0,
            a,
            Point::new(middle, a.y),
            Point::new(middle, b.y),
            b,
            to.0,
        ];
        points.dedup();
        ways.insert(*id, RunWay::new(run, points));
    }
    ways
}
