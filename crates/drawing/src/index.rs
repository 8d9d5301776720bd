//! Spatial index: a grid of square cells, so that what is drawn and hit costs by what is near, not by what exists.

use crate::cells::Cells;
use kurbo::Rect;
use ordered::Sort as _;

/// Width of a cell in board units: about a part with its surroundings.
const CELL: f64 = 240.0;
/// A thing that covers more cells than this is kept in one list beside the grid, so that a run across the whole board
/// cannot fill the memory.
const MOST_CELLS: i64 = 400;

/// Things by the cells that their boxes touch.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Index<K> {
    cells: Cells<(Rect, K)>,
    large: Vec<(Rect, K)>,
}

impl<K> Default for Index<K> {
    fn default() -> Self {
        Self {
            cells: Cells::default(),
            large: Vec::new(),
        }
    }
}

fn cell(length: f64) -> i32 {
    // The cast saturates, which is what is wanted of a coordinate far off the board.
    libm::floor(length / CELL) as i32
}

/// Low and high column, low and high row.
fn cells(area: Rect) -> ((i32, i32), (i32, i32)) {
    ((cell(area.x0), cell(area.x1)), (cell(area.y0), cell(area.y1)))
}

/// Whether a thing of this box is kept in the grid.
fn fits(((x0, x1), (y0, y1)): ((i32, i32), (i32, i32))) -> bool {
    let count = (i64::from(x1) - i64::from(x0) + 1).saturating_mul(i64::from(y1) - i64::from(y0) + 1);
    count <= MOST_CELLS && count > 0
}

fn touch(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

impl<K: Copy + Ord> Index<K> {
    pub(crate) fn insert(&mut self, area: Rect, key: K) {
        let span = cells(area);
        if !fits(span) {
            self.large.push((area, key));
            return;
        }
        let (columns, rows) = span;
        for x in columns.0..=columns.1 {
            for y in rows.0..=rows.1 {
                self.cells.push(x, y, (area, key));
            }
        }
    }
    /// Takes out what was put in with the same area and key.
    pub(crate) fn remove(&mut self, area: Rect, key: K) {
        let span = cells(area);
        if !fits(span) {
            if let Some(place) = self.large.iter().position(|held| *held == (area, key)) {
                self.large.swap_remove(place);
            }
            return;
        }
        let (columns, rows) = span;
        for x in columns.0..=columns.1 {
            for y in rows.0..=rows.1 {
                self.cells.take(x, y, |held| *held == (area, key));
            }
        }
    }
    /// Calls for whatever has a box that touches the area, perhaps more than once, with the box. Stops and gives true when
    /// the call gives true.
    #[inline]
    pub(crate) fn any_near(&self, area: Rect, mut call: impl FnMut(K, Rect) -> bool) -> bool {
        let (columns, rows) = cells(area);
        self.large
            .iter()
            .any(|(held, key)| touch(*held, area) && call(*key, *held))
            || self.cells.any(columns, rows, |_, _, (held, key)| {
                touch(*held, area) && call(*key, *held)
            })
    }
    /// What has a box that touches the area, each once, in order.
    pub(crate) fn near(&self, area: Rect) -> Vec<K> {
        let mut found = Vec::new();
        self.any_near(area, |key, _| {
            found.push(key);
            false
        });
        found.order();
        found.dedup();
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_put_in_is_found_and_taken_out() {
        let mut index = Index::default();
        let areas = [
            Rect::new(0.0, 0.0, 10.0, 10.0),
            Rect::new(-1e6, -1e6, 1e6, 1e6),
            Rect::new(200.0, 200.0, 700.0, 210.0),
        ];
        for (key, area) in areas.iter().enumerate() {
            index.insert(*area, key);
        }
        assert_eq!(index.near(Rect::new(5.0, 5.0, 6.0, 6.0)), [0, 1]);
        assert_eq!(index.near(Rect::new(600.0, 200.0, 610.0, 220.0)), [1, 2]);
        assert_eq!(index.near(Rect::new(-1e9, -1e9, 1e9, 1e9)), [0, 1, 2]);
        for (key, area) in areas.iter().enumerate() {
            index.remove(*area, key);
        }
        assert_eq!(index, Index::default());
    }
}
