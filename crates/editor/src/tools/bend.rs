//! Bends put by hand: a straight piece of a run drawn aside, a bend moved, a bend taken out, by pointer and by keys.
//! What is kept are the two corners of the piece that was drawn aside, not those by which the run reaches it: so the
//! piece stays where it was put when parts move, and the run goes to it from wherever its terminals are then.

use super::pick::board_point;
use crate::editor::Editor;
use crate::input::{Key, PointerKind};
use crate::selection::{Selection, Thing};
use crate::walk::direction;
use drawing::{Hit, to_point};
use kurbo::{Point, Vec2};
use model::edits::change_run;
use model::{BoardPoint, End, RunId};
use ordered::OrderedSet;
use words::{Saying, say};

impl Editor {
    /// The bend that keys act upon: a place in the bends of the run that alone is picked.
    #[must_use]
    pub fn bend_in_hand(&self) -> Option<(RunId, usize)> {
        let (run, place) = self.bend?;
        let has = self.sheet().runs.get(&run)?.bends.len() > place;
        (has && self.selection.single() == Some(Thing::Run(run))).then_some((run, place))
    }

    /// The bend put by hand under a board point.
    pub(crate) fn bend_at(&self, at: Point, kind: PointerKind) -> Option<(RunId, usize)> {
        match self.hit_at(at, kind)? {
            Hit::Bend(run, place) => Some((run, place)),
            _ => None,
        }
    }

    /// Draws a piece of a run aside, from its way when the gesture began.
    pub(crate) fn bend(&mut self, run: RunId, way: &[Point], piece: usize, by: Vec2) {
        let loose = self
            .sheet()
            .runs
            .get(&run)
            .is_some_and(|run| matches!(run.from, End::Loose(_)));
        match bent(way, piece, by, self.options.grid_units, loose) {
            Some(bends) => self.put_bends_in_gesture(run, bends),
            None => {
                self.roll_back_gesture();
                self.relay(&OrderedSet::new());
            }
        }
    }

    /// Moves a bend, from the bends when the gesture began.
    pub(crate) fn corner(&mut self, run: RunId, before: &[BoardPoint], place: usize, by: Vec2) {
        let Some(was) = before.get(place).copied().map(to_point) else {
            return;
        };
        let to = super::pull::snapped(was + by, self.options.grid_units);
        self.put_bends_in_gesture(run, cornered(before, place, to));
    }

    fn put_bends_in_gesture(&mut self, run: RunId, bends: Vec<BoardPoint>) {
        self.roll_back_gesture();
        if let Ok(edit) = change_run(&self.job, self.on, run, "", |run| run.bends = bends) {
            self.extend_gesture(edit, &OrderedSet::new());
        }
    }

    fn put_bends(&mut self, run: RunId, name: Saying, bends: Vec<BoardPoint>) {
        if let Ok(edit) = change_run(&self.job, self.on, run, name, |run| run.bends = bends) {
            self.apply(edit);
        }
    }

    /// Takes the next bend of the picked run in hand, for the keys.
    pub(crate) fn next_bend(&mut self) {
        let Some(Thing::Run(run)) = self.selection.single() else {
            self.tell(say!("bend-pick-first"));
            return;
        };
        let count = self.sheet().runs.get(&run).map_or(0, |run| run.bends.len());
        if count == 0 {
            self.tell(say!("bend-none"));
            return;
        }
        let next = self.bend_in_hand().map_or(0, |(_, place)| place + 1) % count;
        self.bend = Some((run, next));
        self.tell(say!("bend-in-hand", number = next + 1, count = count));
        if let Some(at) = self.sheet().runs.get(&run).and_then(|run| run.bends.get(next)) {
            let area = kurbo::Rect::from_center_size(to_point(*at), (80.0, 80.0));
            self.camera.reveal(area);
        }
    }

    /// Shift and an arrow on a picked run: moves the bend in hand, or draws aside the longest piece that lies across.
    pub(crate) fn nudge_run(&mut self, run: RunId, key: Key) {
        let (x, y) = direction(key);
        let by = Vec2::new(f64::from(x), f64::from(y)) * self.options.grid_units;
        let tag = Thing::Run(run).written(self.sheet());
        if let Some((_, place)) = self.bend_in_hand() {
            let Some(bends) = self.sheet().runs.get(&run).map(|run| run.bends.clone()) else {
                return;
            };
            let Some(was) = bends.get(place).copied().map(to_point) else {
                return;
            };
            let made = cornered(&bends, place, board_point(was + by));
            self.put_bends(run, say!("edit-move-bend", run = tag), made);
            self.bend = Some((run, place));
            return;
        }
        let way = corners(&self.way(run));
        let across = |pair: &[Point]| match pair {
            [a, b] => {
                let line = *b - *a;
                (line.cross(by).abs(), line.dot(by).abs() < 1e-6)
            }
            _ => (0.0, false),
        };
        let longest = way
            .windows(2)
            .enumerate()
            .filter(|(_, pair)| across(pair).1)
            .max_by(|(_, a), (_, b)| across(a).0.total_cmp(&across(b).0));
        let Some((piece, _)) = longest else {
            self.tell(say!("bend-no-piece"));
            return;
        };
        let loose = self
            .sheet()
            .runs
            .get(&run)
            .is_some_and(|run| matches!(run.from, End::Loose(_)));
        if let Some(bends) = bent(&way, piece, by, self.options.grid_units, loose) {
            self.put_bends(run, say!("edit-bend", run = tag), bends);
        }
    }

    /// Takes the bend in hand out. False when there is none.
    pub(crate) fn remove_bend(&mut self) -> bool {
        let Some((run, place)) = self.bend_in_hand() else {
            return false;
        };
        let tag = Thing::Run(run).written(self.sheet());
        let mut bends = self
            .sheet()
            .runs
            .get(&run)
            .map(|run| run.bends.clone())
            .unwrap_or_default();
        bends.remove(place);
        self.bend = None;
        self.put_bends(run, say!("edit-remove-bend", run = &tag), bends);
        self.tell(say!("bend-removed", run = tag));
        true
    }

    /// Two clicks in short order: on a bend they take it out, on a thing they open its details.
    pub fn double_click(&mut self) -> crate::Effects {
        if self.looks_only || !self.remove_bend() {
            self.act(crate::Action::Details);
        }
        self.take_effects()
    }

    /// Picks the run of a bend and takes the bend in hand.
    pub(crate) fn take_bend(&mut self, run: RunId, place: usize) {
        self.selection = Selection::of(&Thing::Run(run));
        self.focus = Some(Thing::Run(run));
        self.bend = Some((run, place));
        self.out.noticed = true;
        self.out.repaint = true;
    }
}

/// The corners of a way: what lies in line between two others is left out.
pub(crate) fn corners(way: &[Point]) -> Vec<Point> {
    let mut made: Vec<Point> = Vec::with_capacity(way.len());
    for point in way {
        if let [.., a, b] = made.as_slice()
            && (*b - *a).cross(*point - *b).abs() < 1e-6
        {
            made.pop();
        }
        if made.last() != Some(point) {
            made.push(*point);
        }
    }
    made
}

/// The piece of a way that is nearest to a point.
pub(crate) fn nearest_piece(way: &[Point], at: Point) -> Option<usize> {
    let away = |pair: &[Point]| match pair {
        [a, b] => {
            let line = *b - *a;
            let along = if line.hypot2() > 0.0 {
                ((at - *a).dot(line) / line.hypot2()).clamp(0.0, 1.0)
            } else {
                0.0
            };
            (*a + line * along - at).hypot()
        }
        _ => f64::INFINITY,
    };
    let pieces = way.windows(2).enumerate();
    pieces
        .min_by(|(_, a), (_, b)| away(a).total_cmp(&away(b)))
        .map(|(piece, _)| piece)
}

/// The bends of a way (its corners, ends included) whose piece was shifted across itself.
///
/// Of the corners that the drawing would put there by itself none is kept: from a terminal a run goes on straight and
/// turns once to its first bend, and so at its other end. A run whose first end lies loose may begin in any direction,
/// so there the first corner is kept as well. Where the piece touches an end, its corner there stands a little way off,
/// so that the run leaves its terminal straight.
fn bent(way: &[Point], piece: usize, by: Vec2, grid: f64, loose: bool) -> Option<Vec<BoardPoint>> {
    let (a, b) = (*way.get(piece)?, *way.get(piece + 1)?);
    let last = way.len() - 1;
    let level = (a.y - b.y).abs() <= (a.x - b.x).abs();
    let (was, aside) = if level { (a.y, by.y) } else { (a.x, by.x) };
    // Drawn along itself it goes nowhere.
    if aside.abs() < grid / 2.0 {
        return None;
    }
    let line = ((was + aside) / grid).round() * grid;
    let moved = |p: Point| {
        if level {
            Point::new(p.x, line)
        } else {
            Point::new(line, p.y)
        }
    };
    // Of a short piece the stubs must not cross.
    let stub = (2.0 * grid).min((b - a).hypot() / 3.0);
    let inwards = |from: Point, to: Point| from + (to - from).normalize() * stub;
    let kept = |range: std::ops::Range<usize>| way.get(range).unwrap_or_default().iter().copied();
    let first = if loose { 1 } else { 2 };
    let mut bends: Vec<Point> = kept(first..piece.max(first)).collect();
    bends.push(moved(if piece == 0 { inwards(a, b) } else { a }));
    bends.push(moved(if piece + 1 == last { inwards(b, a) } else { b }));
    bends.extend(kept(
        (piece + 2).min(last)..last.saturating_sub(1).max((piece + 2).min(last)),
    ));
    let mut bends: Vec<BoardPoint> = bends.into_iter().map(board_point).collect();
    bends.dedup();
    Some(bends)
}

/// The bends after one of them was put elsewhere: neighbours in line with it stay in line, so that pieces stay level or
/// plumb.
fn cornered(before: &[BoardPoint], place: usize, to: BoardPoint) -> Vec<BoardPoint> {
    let mut bends = before.to_vec();
    let Some(was) = before.get(place).copied() else {
        return bends;
    };
    for next in [place.checked_sub(1), place.checked_add(1)].into_iter().flatten() {
        if let Some(beside) = bends.get_mut(next) {
            if beside.y == was.y && beside.x != was.x {
                beside.y = to.y;
            } else if beside.x == was.x {
                beside.x = to.x;
            }
        }
    }
    if let Some(own) = bends.get_mut(place) {
        *own = to;
    }
    bends
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x: i32, y: i32) -> BoardPoint {
        BoardPoint { x, y }
    }

    #[test]
    fn the_middle_piece_alone_is_kept() {
        let way = [(0.0, 0.0), (50.0, 0.0), (50.0, 80.0), (200.0, 80.0)].map(|(x, y)| Point::new(x, y));
        let made = bent(&way, 1, Vec2::new(33.0, 5.0), 10.0, false);
        assert_eq!(made, Some(vec![at(80, 0), at(80, 80)]));
    }

    #[test]
    fn a_piece_at_an_end_leaves_its_terminal_straight() {
        let way = [Point::new(0.0, 0.0), Point::new(200.0, 0.0)];
        let made = bent(&way, 0, Vec2::new(0.0, 61.0), 10.0, false);
        assert_eq!(made, Some(vec![at(20, 60), at(180, 60)]));
    }

    #[test]
    fn a_bend_takes_the_pieces_beside_it_along() {
        let before = [at(0, 0), at(100, 0), at(100, 50)];
        assert_eq!(
            cornered(&before, 1, at(120, 20)),
            [at(0, 20), at(120, 20), at(120, 50)]
        );
    }

    #[test]
    fn corners_leave_out_what_lies_in_line() {
        let way = [(0.0, 0.0), (10.0, 0.0), (20.0, 0.0), (20.0, 5.0)].map(|(x, y)| Point::new(x, y));
        assert_eq!(corners(&way).len(), 3);
    }
}
