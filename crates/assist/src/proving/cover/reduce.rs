//! What can be left out of a problem before anything is tried, and what has to be chosen.

use super::bits::Bits;
use super::{Left, Search};
use ordered::Sort as _;

impl Search {
    /// Of rows that cover the very same, the least effort stays: before anything else, as there are many of them.
    pub(super) fn drop_alike(&self, left: &mut Left) {
        let mut order: Vec<usize> = left.rows.iter().collect();
        order.order_by(|a, b| {
            let same = self.row(*a).0.cmp(&self.row(*b).0);
            same.then(self.cost(*a).cmp(&self.cost(*b))).then(a.cmp(b))
        });
        let mut last: Option<usize> = None;
        for row in order {
            if self.row(row).is_empty() || last.is_some_and(|last| self.row(last) == self.row(row)) {
                left.rows.drop(row);
            } else {
                last = Some(row);
            }
        }
    }

    /// Reduces what is left; the rows that are forced. `None` where a column is left that nothing covers.
    pub(super) fn reduce(&mut self, left: &mut Left) -> Option<Vec<usize>> {
        let mut forced = Vec::new();
        loop {
            let mut moved = false;
            // Columns: forced rows, and those that are covered along with another one.
            let mut by: Vec<(usize, Bits)> = Vec::new();
            for column in left.columns.iter() {
                let mut rows = self.covered_by.get(column)?.clone();
                rows.keep(&left.rows);
                by.push((column, rows));
            }
            self.spend(by.len());
            if by.iter().any(|(_, rows)| rows.is_empty()) {
                return None;
            }
            for (column, rows) in &by {
                if left.columns.has(*column)
                    && rows.count() == 1
                    && let Some(row) = rows.iter().next()
                {
                    left.columns.without(&self.row(row).clone());
                    left.rows.drop(row);
                    forced.push(row);
                    moved = true;
                }
            }
            by.retain(|(column, _)| left.columns.has(*column));
            by.order_by(|a, b| a.1.count().cmp(&b.1.count()).then(a.0.cmp(&b.0)));
            for at in 0..by.len() {
                let Some(((column, rows), after)) = by.get(at..).and_then(<[_]>::split_first) else {
                    continue;
                };
                if !left.columns.has(*column) {
                    continue;
                }
                self.work = self.work.saturating_sub(after.len() as u64 / 8 + 1);
                for (other, of_other) in after {
                    if left.columns.has(*other) && rows.is_within(of_other) {
                        left.columns.drop(*other);
                        moved = true;
                    }
                }
            }
            moved |= self.drop_dominated(left);
            if !moved {
                return Some(forced);
            }
        }
    }

    /// Rows that cover no more of what is left than another one that is no dearer.
    fn drop_dominated(&mut self, left: &mut Left) -> bool {
        let mut rows: Vec<(usize, usize, Bits)> = left
            .rows
            .iter()
            .map(|row| {
                let mut covers = self.row(row).clone();
                covers.keep(&left.columns);
                (covers.count(), row, covers)
            })
            .collect();
        rows.order_by(|a, b| {
            b.0.cmp(&a.0)
                .then(self.cost(a.1).cmp(&self.cost(b.1)))
                .then(a.1.cmp(&b.1))
        });
        // By column, the rows that stay and cover it: what covers a row covers any of its columns.
        let mut stays: Vec<Vec<usize>> = vec![Vec::new(); self.covered_by.len()];
        let mut moved = false;
        for (place, (count, row, covers)) in rows.iter().enumerate() {
            let rarest = covers
                .iter()
                .min_by_key(|column| stays.get(*column).map_or(0, Vec::len));
            let over = rarest.and_then(|column| stays.get(column));
            let over = over.map(Vec::as_slice).unwrap_or_default();
            self.work = self.work.saturating_sub(over.len() as u64 / 8 + 1);
            let is_less = *count == 0
                || over.iter().any(|other| {
                    rows.get(*other).is_some_and(|(_, other, theirs)| {
                        self.cost(*other) <= self.cost(*row) && covers.is_within(theirs)
                    })
                });
            if is_less {
                left.rows.drop(*row);
                moved = true;
                continue;
            }
            for column in covers.iter() {
                if let Some(list) = stays.get_mut(column) {
                    list.push(place);
                }
            }
        }
        moved
    }

    /// What is left, in pieces that share no column.
    pub(super) fn pieces(&self, left: &Left) -> Vec<Left> {
        let mut out: Vec<Left> = Vec::new();
        for row in left.rows.iter() {
            let mut columns = self.row(row).clone();
            columns.keep(&left.columns);
            if columns.is_empty() {
                continue;
            }
            let mut joined = Left {
                rows: Bits::new(self.covers.len()),
                columns,
            };
            joined.rows.put(row);
            out.retain(|piece| {
                let meets = piece.columns.meets(&joined.columns);
                if meets {
                    joined.columns.with(&piece.columns);
                    joined.rows.with(&piece.rows);
                }
                !meets
            });
            out.push(joined);
        }
        out
    }
}
