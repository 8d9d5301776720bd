//! Where the numbers of a factor stand: the order of elimination, the pattern of L, and where the products of its entries go. Made once, before
//! there are numbers.

use super::order::{minimum_degree, subtree_by_subtree};
use super::{Factor, Slot};
use crate::narrow::narrow;

/// Where the products of an entry with those after it in its column go, counted from the end of the column: side by side from one
/// place on as a rule; otherwise each to a place of its own, found in a list from one place on.
#[derive(Clone, Copy, Debug)]
pub(super) enum Way {
    /// From this place on.
    Beside(u32),
    /// As listed from this place on.
    Scattered(u32),
}

impl Factor {
    /// Orders a matrix of `size` unknowns in which the given pairs are coupled, and finds the pattern of its factor.
    /// Pairs out of range or of an unknown with itself are left out. Cost: near linear on trees with a few meshes.
    #[must_use]
    pub fn new(size: usize, pairs: &[(usize, usize)]) -> Self {
        Self::with_late(size, pairs, &vec![true; size])
    }

    /// As [`Factor::new`], with unknowns that are marked `late` after those that are not. Of the others, too, those that
    /// could be eliminated only by coupling many of their neighbours stand among the late ones.
    pub(crate) fn with_late(size: usize, pairs: &[(usize, usize)], late: &[bool]) -> Self {
        let mut near: Vec<Vec<u32>> = vec![Vec::new(); size];
        for &(a, b) in pairs {
            if a != b && a < size && b < size {
                near[a].push(narrow(b));
                near[b].push(narrow(a));
            }
        }
        for list in &mut near {
            list.sort_unstable();
            list.dedup();
        }
        let (mut order, early) = minimum_degree(&mut near, late);
        subtree_by_subtree(&mut order, early, &near);
        let mut place = vec![0; size];
        for (at, &unknown) in order.iter().enumerate() {
            place[unknown] = at;
        }
        // What is left in `near` after the elimination is the pattern of each column of L.
        let mut l_start = Vec::with_capacity(size + 1);
        let mut l_row: Vec<u32> = Vec::with_capacity(near.iter().map(Vec::len).sum());
        l_start.push(0);
        for &unknown in &order {
            let from = l_row.len();
            l_row.extend(near[unknown].iter().map(|&n| narrow(place[n as usize])));
            l_row[from..].sort_unstable();
            l_start.push(l_row.len());
        }
        let mut factor = Self {
            size,
            early,
            order,
            value: vec![0.0; l_row.len()],
            diagonal: vec![0.0; size],
            taken: vec![0.0; size],
            l_value: vec![0.0; l_row.len()],
            pivot: vec![1.0; size],
            measure: vec![0.0; size],
            work: vec![0.0; size],
            late_work: Vec::new(),
            watched: Vec::new(),
            way: Vec::with_capacity(l_row.len()),
            scattered: Vec::new(),
            late_row: l_row[l_start[early]..]
                .iter()
                .map(|&row| row - narrow(early))
                .collect(),
            late_count: l_start[early..]
                .windows(2)
                .map(|ends| narrow(ends[1] - ends[0]))
                .collect(),
            place,
            l_start,
            l_row,
        };
        factor.find_ways();
        factor
    }

    /// Finds where products go. Elimination has coupled all that a column couples, so that every product has its entry.
    fn find_ways(&mut self) {
        for k in 0..self.size {
            let end = self.l_start[k + 1];
            for first in self.l_start[k]..end {
                let listed = self.scattered.len();
                let mut at = self.l_start[self.l_row[first] as usize];
                for &high in &self.l_row[first + 1..end] {
                    // Both lists rise.
                    while self.l_row[at] < high {
                        at += 1;
                    }
                    self.scattered.push(narrow(at - end));
                }
                let places = &self.scattered[listed..];
                let from = places.first().copied().unwrap_or(0);
                if places.iter().zip(from..).all(|(place, beside)| *place == beside) {
                    self.scattered.truncate(listed);
                    self.way.push(Way::Beside(from));
                } else {
                    self.way.push(Way::Scattered(narrow(listed)));
                }
            }
        }
    }

    /// Where a conductance between two unknowns goes; `None` when the pair was not given to [`Factor::new`].
    #[must_use]
    pub fn slot(&self, a: usize, b: usize) -> Option<Slot> {
        let (a, b) = (*self.place.get(a)?, *self.place.get(b)?);
        let (low, high) = (a.min(b), a.max(b));
        let column = self
            .l_row
            .get(*self.l_start.get(low)?..*self.l_start.get(low + 1)?)?;
        let found = column.binary_search(&narrow(high)).ok()?;
        Some(Slot {
            a: narrow(a),
            b: narrow(b),
            between: narrow(self.l_start[low] + found),
        })
    }
}
