//! Answers for a right side: of all unknowns, of the late ones alone, and from these those of the others that are wanted.

use super::Factor;
use crate::narrow::narrow;

impl Factor {
    /// Solves for a right side given by unknown, which becomes the answer.
    pub fn solve(&mut self, right: &mut [f64]) {
        if right.len() != self.size {
            return;
        }
        let mut late = std::mem::take(&mut self.late_work);
        late.clear();
        late.extend(self.order[self.early..].iter().map(|&unknown| right[unknown]));
        self.solve_late(&mut late);
        self.spread(&late, right);
        self.late_work = late;
    }

    /// Solves for the late unknowns, given in their order. Nothing may stand on the right side of the others.
    pub(crate) fn solve_late(&self, right: &mut [f64]) {
        if right.len() != self.late() {
            return;
        }
        let mut rows = self.late_row.as_slice();
        let mut values = &self.l_value[self.late_entries()..];
        for (k, &count) in self.late_count.iter().enumerate() {
            let (own, rows_after) = rows.split_at(count as usize);
            let (column, values_after) = values.split_at(count as usize);
            (rows, values) = (rows_after, values_after);
            let x = right[k];
            // Where only loads have changed most of the right side is nothing.
            if x == 0.0 {
                continue;
            }
            match (own, column) {
                ([a, b], [l, m]) => {
                    right[*a as usize] -= l * x;
                    right[*b as usize] -= m * x;
                }
                (own, column) => {
                    for (&row, l) in own.iter().zip(column) {
                        right[row as usize] -= l * x;
                    }
                }
            }
        }
        let mut rows = self.late_row.as_slice();
        let mut values = &self.l_value[self.late_entries()..];
        let counts = self.late_count.iter().enumerate().rev();
        for ((k, &count), pivot) in counts.zip(self.pivot.iter().rev()) {
            let (rows_before, own) = rows.split_at(rows.len() - count as usize);
            let (values_before, column) = values.split_at(values.len() - count as usize);
            (rows, values) = (rows_before, values_before);
            let x = right[k] / pivot;
            right[k] = match (own, column) {
                ([a, b], [l, m]) => x - l * right[*a as usize] - m * right[*b as usize],
                (own, column) => {
                    let pairs = own.iter().zip(column);
                    pairs.fold(x, |x, (&row, l)| x - l * right[row as usize])
                }
            };
        }
    }

    /// Names the unknowns that [`Factor::spread_to_watched`] is to tell of besides the late ones.
    pub(crate) fn watch(&mut self, unknowns: impl Iterator<Item = usize>) {
        let mut wanted = vec![false; self.size];
        for unknown in unknowns {
            if let Some(&place) = self.place.get(unknown) {
                wanted[place] = true;
            }
        }
        // An answer follows from others that are found before it, and stand behind it.
        for k in 0..self.early {
            if wanted[k] {
                for &row in &self.l_row[self.l_start[k]..self.l_start[k + 1]] {
                    wanted[row as usize] = true;
                }
            }
        }
        let early = (0..self.early).filter(|&k| wanted[k]);
        self.watched = early.map(narrow).collect();
    }

    /// From the answer for the late unknowns, in their order, that for all of them, by unknown; on the right side of those that are not late
    /// nothing stands.
    pub(crate) fn spread(&mut self, late: &[f64], answer: &mut [f64]) {
        self.spread_to(late, answer, (0..self.early).rev());
    }

    /// As [`Factor::spread`]; of those that are not late, only what is watched is told.
    pub(crate) fn spread_to_watched(&mut self, late: &[f64], answer: &mut [f64]) {
        let watched = std::mem::take(&mut self.watched);
        self.spread_to(late, answer, watched.iter().rev().map(|&k| k as usize));
        self.watched = watched;
    }

    /// From the answer for the late unknowns that for all late ones and those at these places, which fall.
    fn spread_to(&mut self, late: &[f64], answer: &mut [f64], places: impl Iterator<Item = usize>) {
        if answer.len() != self.size || late.len() != self.late() {
            return;
        }
        let work = self.work.as_mut_slice();
        work[self.early..].copy_from_slice(late);
        for (&unknown, x) in self.order[self.early..].iter().zip(late) {
            answer[unknown] = *x;
        }
        for k in places {
            let column = self.l_start[k]..self.l_start[k + 1];
            let mut x = 0.0;
            for (&row, l) in self.l_row[column.clone()].iter().zip(&self.l_value[column]) {
                x -= l * work[row as usize];
            }
            work[k] = x;
            answer[self.order[k]] = x;
        }
    }
}
