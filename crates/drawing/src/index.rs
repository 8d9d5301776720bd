//! Spatial index: a grid of square cells, so that what is drawn and hit costs by what is near, not by what exists.

use kurbo::Rect;
use std::collections::{BTreeMap, BTreeSet};

/// Width of a cell in board units: about a part with its surroundings.
const CELL: f64 = 240.0;
/// A thing that covers more cells than this is kept in one list beside the grid, so that a run across the whole board
/// cannot fill the memory.
const MOST_CELLS: i64 = 400;

/// Things by the cells that their boxes touch.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Index<K> {
    cells: BTreeMap<(i32, i32), Vec<K>>,
    large: Vec<K>,
}

impl<K> Default for Index<K> {
    fn default() -> Self {
        Self {
            cells: BTreeMap::new(),
            large: Vec::new(),
        }
    }
}

fn cell(length: f64) -> i32 {
    // The cast saturates, which is what is wanted of a coordinate far off the board.
    libm::floor(length / CELL) as i32
}

fn cells(area: Rect) -> Option<(std::ops::RangeInclusive<i32>, std::ops::RangeInclusive<i32>)> {
    let (x0, x1, y0, y1) = (cell(area.x0), cell(area.x1), cell(area.y0), cell(area.y1));
    let count = (i64::from(x1) - i64::from(x0) + 1).saturating_mul(i64::from(y1) - i64::from(y0) + 1);
    (count <= MOST_CELLS && count > 0).then_some((x0..=x1, y0..=y1))
}

impl<K: Copy + Ord> Index<K> {
    pub(crate) fn insert(&mut self, area: Rect, key: K) {
        match cells(area) {
            Some((columns, rows)) => {
                for x in columns {
                    for y in rows.clone() {
                        self.cells.entry((x, y)).or_default().push(key);
                    }
                }
            }
            None => self.large.push(key),
        }
    }
    /// Takes out what was put in with the same area and key.
    pub(crate) fn remove(&mut self, area: Rect, key: K) {
        match cells(area) {
            Some((columns, rows)) => {
                for x in columns {
                    for y in rows.clone() {
                        if let Some(list) = self.cells.get_mut(&(x, y)) {
                            if let Some(place) = list.iter().position(|k| *k == key) {
                                list.swap_remove(place);
                            }
                            if list.is_empty() {
                                self.cells.remove(&(x, y));
                            }
                        }
                    }
                }
            }
            None => {
                if let Some(place) = self.large.iter().position(|k| *k == key) {
                    self.large.swap_remove(place);
                }
            }
        }
    }
    /// Calls for whatever may touch the area, perhaps more than once. Stops and gives true when the call gives true.
    pub(crate) fn any_near(&self, area: Rect, mut call: impl FnMut(K) -> bool) -> bool {
        if self.large.iter().any(|key| call(*key)) {
            return true;
        }
        match cells(area) {
            Some((columns, rows)) => {
                for x in columns {
                    for (_, list) in self.cells.range((x, *rows.start())..=(x, *rows.end())) {
                        if list.iter().any(|key| call(*key)) {
                            return true;
                        }
                    }
                }
                false
            }
            None => self.cells.values().flatten().any(|key| call(*key)),
        }
    }
    /// What may touch the area, each once, in order. Callers test the true shape.
    pub(crate) fn near(&self, area: Rect) -> BTreeSet<K> {
        let mut found: BTreeSet<K> = self.large.iter().copied().collect();
        match cells(area) {
            Some((columns, rows)) => {
                for x in columns {
                    for (_, list) in self.cells.range((x, *rows.start())..=(x, *rows.end())) {
                        found.extend(list.iter().copied());
                    }
                }
            }
            None => found.extend(self.cells.values().flatten().copied()),
        }
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
        assert_eq!(
            index.near(Rect::new(5.0, 5.0, 6.0, 6.0)),
            BTreeSet::from([0, 1, 2])
        );
        assert_eq!(
            index.near(Rect::new(600.0, 200.0, 610.0, 220.0)),
            BTreeSet::from([1, 2])
        );
        for (key, area) in areas.iter().enumerate() {
            index.remove(*area, key);
        }
        assert_eq!(index, Index::default());
    }
}
