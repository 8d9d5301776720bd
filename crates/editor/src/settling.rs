//! Where on the board a part goes that an edit brought without saying so: between what it is joined to, where there is room.
//! And where one goes that was put down where there is none: beside it.

use crate::editor::Editor;
use crate::tools::pick::whole;
use drawing::PartBox;
use kurbo::{Point, Rect, Vec2};
use model::{BoardPoint, Change, Edit, Part, PartId};
use ordered::OrderedSet;

/// Room that is kept around a part, in board units.
const ROOM: f64 = 18.0;
/// How far from the middle of its neighbours a part is looked a place for, in steps of the search.
const RINGS: i32 = 24;
/// Up to so many pairs of parts, copied and there, a place near by is looked for; beyond, copies go below everything.
const MOST_COMPARED: usize = 100_000;

impl Editor {
    /// Within a gesture that brought parts without a place: they get one beside what they are joined to, else the one that the
    /// drawing found for them, so that they can be carried from there.
    pub(crate) fn settle(&mut self, parts: &OrderedSet<PartId>) {
        let unplaced: Vec<PartId> = self
            .sheet()
            .parts
            .iter()
            .filter(|(_, part)| part.at.is_none())
            .map(|(id, _)| *id)
            .collect();
        if unplaced.is_empty() {
            return;
        }
        let mut taken: Vec<Rect> = self
            .layout
            .parts()
            .filter(|(id, _)| !unplaced.contains(id))
            .map(|(_, part)| part.outline.inflate(ROOM, ROOM))
            .collect();
        let mut changes = Vec::new();
        for id in unplaced {
            let Some(arranged) = self.layout.arranged().get(&id).copied() else {
                continue;
            };
            let at = self.spot_beside(id, arranged, &taken).unwrap_or(arranged);
            let by = Vec2::new(f64::from(at.x - arranged.x), f64::from(at.y - arranged.y));
            taken.extend(
                self.layout
                    .part(id)
                    .map(|part| (part.outline + by).inflate(ROOM, ROOM)),
            );
            let Some(mut part) = self.sheet().parts.get(&id).cloned() else {
                continue;
            };
            part.at = Some(at);
            changes.push(Change::Part {
                sheet: self.on,
                id,
                to: Some(Box::new(part)),
            });
        }
        self.extend_gesture(Edit::new("", changes), parts);
    }

    /// Makes an edit that puts a part down, as one step. Where the part would cover another it stands beside it: what lies under
    /// a part, its terminals first of all, can be neither seen nor reached.
    pub(crate) fn apply_placing(&mut self, edit: Edit, part: PartId) {
        let parts = [part].into();
        self.begin_gesture(edit.name.clone());
        self.extend_gesture(edit, &parts);
        self.step_aside(part);
        self.commit_gesture();
    }

    /// Within a gesture: a part that covers another goes to the nearest spot where it covers none.
    pub(crate) fn step_aside(&mut self, id: PartId) {
        let placed = self.sheet().parts.get(&id).cloned();
        let Some((outline, (mut part, at))) = self
            .layout
            .part(id)
            .map(|it| it.outline)
            .zip(placed.and_then(|part| part.at.map(|at| (part, at))))
        else {
            return;
        };
        let others = self.layout.parts().filter(|(other, _)| *other != id);
        let others: Vec<Rect> = others.map(|(_, part)| part.outline).collect();
        if !others.iter().any(|other| other.intersect(outline).area() > 0.0) {
            return;
        }
        let taken: Vec<Rect> = others.iter().map(|other| other.inflate(ROOM, ROOM)).collect();
        let Some(free) = self.nearest_free(outline, at, at, &taken) else {
            return;
        };
        part.at = Some(free);
        let change = Change::Part {
            sheet: self.on,
            id,
            to: Some(Box::new(part)),
        };
        self.extend_gesture(Edit::new("", vec![change]), &[id].into());
    }

    /// How far copies of parts go from where these stand, so that they cover no part of the sheet: a little to the lower right where
    /// there is room, else straight down or to the right, whichever is nearer.
    pub(crate) fn room_for_copies<'a>(&self, parts: impl Iterator<Item = &'a Part>) -> (i32, i32) {
        let grid = whole(self.options.grid_units).max(1);
        let little = (4 * grid, 4 * grid);
        let outline = |part: &Part| Some(PartBox::of(part, drawing::to_point(part.at?)).outline);
        let copies: Vec<Rect> = parts.filter_map(outline).collect();
        let taken: Vec<Rect> = self.layout.parts().map(|(_, part)| part.outline).collect();
        let is_free = |(dx, dy): (i32, i32)| {
            let by = Vec2::new(f64::from(dx), f64::from(dy));
            copies.iter().all(|copy| {
                let here = (*copy + by).inflate(ROOM, ROOM);
                taken.iter().all(|other| other.intersect(here).area() <= 0.0)
            })
        };
        let Some(own) = copies.iter().copied().reduce(|all, next| all.union(next)) else {
            return little;
        };
        let all = taken.iter().fold(own, |all, next| all.union(*next));
        let on_grid = |units: f64| {
            whole(units / f64::from(grid))
                .saturating_add(1)
                .saturating_mul(grid)
        };
        // Beyond everything there is room.
        let below = on_grid(all.y1 - own.y0 + ROOM);
        if copies.len().saturating_mul(taken.len()) > MOST_COMPARED {
            return (0, below);
        }
        if is_free(little) {
            return little;
        }
        let step = 2 * grid;
        (1..=below / step)
            .flat_map(|n| [(0, n * step), (n * step, 0)])
            .find(|by| is_free(*by))
            .unwrap_or((0, below))
    }

    /// The free spot nearest to the middle of the parts that this one is joined to.
    fn spot_beside(&self, id: PartId, arranged: BoardPoint, taken: &[Rect]) -> Option<BoardPoint> {
        let sheet = self.sheet();
        let neighbours = sheet.runs_of(id).flat_map(|(_, run)| {
            let ends = run.ends().into_iter().filter_map(|end| end.terminal());
            ends.map(|at| at.part).collect::<Vec<_>>()
        });
        let placed: Vec<Point> = neighbours
            .filter(|part| *part != id)
            .filter_map(|part| sheet.parts.get(&part)?.at)
            .map(drawing::to_point)
            .collect();
        let count = placed.len() as f64;
        let sum = placed.iter().fold(Vec2::ZERO, |sum, at| sum + at.to_vec2());
        if placed.is_empty() {
            return None;
        }
        let outline = self.layout.part(id)?.outline;
        let grid = whole(self.options.grid_units).max(1);
        let on_grid = |units: f64| {
            let cells = (units / f64::from(grid)).round();
            whole(cells).saturating_mul(grid)
        };
        let near = BoardPoint {
            x: on_grid(sum.x / count),
            y: on_grid(sum.y / count),
        };
        self.nearest_free(outline, arranged, near, taken)
    }

    /// The spot nearest to a point where a part lies on nothing that is taken; `outline` is the part's, standing at `stands`.
    fn nearest_free(
        &self,
        outline: Rect,
        stands: BoardPoint,
        near: BoardPoint,
        taken: &[Rect],
    ) -> Option<BoardPoint> {
        let is_free = |at: BoardPoint| {
            let by = Vec2::new(f64::from(at.x - stands.x), f64::from(at.y - stands.y));
            let here = outline + by;
            taken.iter().all(|other| other.intersect(here).area() <= 0.0)
        };
        let step = 2 * whole(self.options.grid_units).max(1);
        (0..=RINGS).find_map(|ring| {
            let mut best: Option<(i64, BoardPoint)> = None;
            for across in -ring..=ring {
                for down in -ring..=ring {
                    if across.abs().max(down.abs()) != ring {
                        continue;
                    }
                    let at = BoardPoint {
                        x: near.x.saturating_add(across * step),
                        y: near.y.saturating_add(down * step),
                    };
                    let far = i64::from(across).pow(2) + i64::from(down).pow(2);
                    if best.is_none_or(|(least, _)| far < least) && is_free(at) {
                        best = Some((far, at));
                    }
                }
            }
            best.map(|(_, at)| at)
        })
    }
}
