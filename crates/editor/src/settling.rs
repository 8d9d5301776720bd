//! Where on the board a part goes that an edit brought without saying so: between what it is joined to, where there is room.

use crate::editor::Editor;
use crate::tools::pick::whole;
use kurbo::{Point, Rect, Vec2};
use model::{BoardPoint, Change, Edit, PartId};
use ordered::OrderedSet;

/// Room that is kept around a part, in board units.
const ROOM: f64 = 18.0;
/// How far from the middle of its neighbours a part is looked a place for, in steps of the search.
const RINGS: i32 = 24;

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
        let (x, y) = (on_grid(sum.x / count), on_grid(sum.y / count));
        let is_free = |at: BoardPoint| {
            let by = Vec2::new(f64::from(at.x - arranged.x), f64::from(at.y - arranged.y));
            let here = outline + by;
            taken.iter().all(|other| other.intersect(here).area() <= 0.0)
        };
        let step = 2 * grid;
        (0..=RINGS).find_map(|ring| {
            let mut best: Option<(i64, BoardPoint)> = None;
            for across in -ring..=ring {
                for down in -ring..=ring {
                    if across.abs().max(down.abs()) != ring {
                        continue;
                    }
                    let at = BoardPoint {
                        x: x.saturating_add(across * step),
                        y: y.saturating_add(down * step),
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
