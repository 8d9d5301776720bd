//! Sparse LDLᵀ of a symmetric matrix whose pattern is known before its numbers: ordering and pattern are made once,
//! numbers are put in and factored again and again without allocating.
//!
//! Ordering: minimum degree on the elimination graph, ties to the lowest index, so that it is deterministic. On a
//! wiring network, which is nearly a tree with a few hubs, it leaves next to no fill. Numbers: column by column; where each
//! product goes is found once, with the pattern, so that no entry is looked for while numbers are worked. *Invariant:* a
//! pivot that is not positive ends the factorisation: for a network that means that it has lost its stable point.
//!
//! Where only a few numbers change from one factorisation to the next, as loads and contacts do among the wires of a vehicle, the
//! unknowns that those numbers belong to are put last. The others are eliminated once, by [`Factor::reduce`], which leaves the
//! network as it is seen from the last ones; each further factorisation is one of that smaller network.

mod order;

use crate::narrow::narrow;
use order::{minimum_degree, subtree_by_subtree};

/// A symmetric matrix of fixed pattern with its LDLᵀ factors.
#[derive(Clone, Debug)]
pub struct Factor {
    size: usize,
    /// How many unknowns stand before those whose numbers change.
    early: usize,
    /// The unknowns in the order of elimination.
    order: Vec<usize>,
    /// Place of each unknown in the order of elimination.
    place: Vec<usize>,
    /// Matrix below its diagonal, on the pattern of L, by columns; and its diagonal.
    value: Vec<f64>,
    diagonal: Vec<f64>,
    /// What [`Factor::reduce`] has taken from the diagonal.
    taken: Vec<f64>,
    /// Factor L by columns, rows rising: where each column begins, and one more for where the last ends; row and number of each entry.
    l_start: Vec<usize>,
    l_row: Vec<u32>,
    l_value: Vec<f64>,
    /// The diagonal D.
    pivot: Vec<f64>,
    /// The rows of the columns of the late unknowns once more, by their places among these.
    late_row: Vec<u32>,
    /// How many entries each of these columns has.
    late_count: Vec<u32>,
    /// Diagonal before anything was taken from it, against which a pivot is held.
    measure: Vec<f64>,
    /// By entry of L: where its products with the entries after it in its column go.
    way: Vec<Way>,
    /// Where products go that do not go side by side.
    scattered: Vec<u32>,
    work: Vec<f64>,
    late_work: Vec<f64>,
    /// Places of unknowns that are not late and wanted after each solution, with those that their answers follow from; rising.
    watched: Vec<u32>,
}

/// Where the products of an entry with those after it in its column go, counted from the end of the column: side by side from one
/// place on as a rule; otherwise each to a place of its own, found in a list from one place on.
#[derive(Clone, Copy, Debug)]
enum Way {
    /// From this place on.
    Beside(u32),
    /// As listed from this place on.
    Scattered(u32),
}

/// One side of a form: (place, number), places rising.
#[derive(Clone, Debug)]
pub(crate) struct HalfForm(Vec<(usize, f64)>);

/// Where the conductance between two unknowns goes: given once, then used without searching.
#[derive(Clone, Copy, Debug)]
pub struct Slot {
    a: u32,
    b: u32,
    between: u32,
}

impl Default for Factor {
    /// Of no unknowns.
    fn default() -> Self {
        Self::new(0, &[])
    }
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

    /// Number of unknowns.
    #[must_use]
    pub fn size(&self) -> usize {
        self.size
    }

    /// Number of entries below the diagonal of L: what a factorisation costs grows with it.
    #[must_use]
    pub fn entries(&self) -> usize {
        self.l_row.len()
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

    /// Sets all numbers to nothing.
    pub fn clear(&mut self) {
        self.value.fill(0.0);
        self.diagonal.fill(0.0);
        self.taken.fill(0.0);
    }

    /// Adds a conductance between the two unknowns of a slot.
    pub fn add_between(&mut self, slot: Slot, conductance: f64) {
        self.diagonal[slot.a as usize] += conductance;
        self.diagonal[slot.b as usize] += conductance;
        self.value[slot.between as usize] -= conductance;
    }

    /// Begins a round: the numbers of the late unknowns are taken as they were put in, and what [`Factor::add_to_round`] adds
    /// to them is gone with the next round. So what stays the same in all rounds is put in once.
    pub(crate) fn begin_round(&mut self) {
        let from = self.late_entries();
        self.l_value[from..].copy_from_slice(&self.value[from..]);
        let diagonal = &self.diagonal[self.early..];
        self.pivot[self.early..].copy_from_slice(diagonal);
        let before = diagonal.iter().zip(&self.taken[self.early..]);
        for (measure, (diagonal, taken)) in self.measure[self.early..].iter_mut().zip(before) {
            *measure = diagonal + taken;
        }
    }

    /// Adds a conductance between the two late unknowns of a slot for this round.
    pub(crate) fn add_to_round(&mut self, slot: Slot, conductance: f64) {
        for end in [slot.a as usize, slot.b as usize] {
            self.pivot[end] += conductance;
            self.measure[end] += conductance;
        }
        self.l_value[slot.between as usize] -= conductance;
    }

    /// Factors the numbers of this round. False when the matrix is not positive definite; the factors are then of no use.
    pub(crate) fn factor_round(&mut self) -> bool {
        self.eliminate(self.early, self.size)
    }

    /// Adds a conductance from an unknown to the reference.
    pub fn add_to_reference(&mut self, unknown: usize, conductance: f64) {
        if let Some(&place) = self.place.get(unknown) {
            self.diagonal[place] += conductance;
        }
    }

    /// Number of late unknowns.
    pub(crate) fn late(&self) -> usize {
        self.size - self.early
    }

    /// Place of an unknown among the late ones; `None` for one that is not.
    pub(crate) fn late_place(&self, unknown: usize) -> Option<usize> {
        self.place.get(unknown)?.checked_sub(self.early)
    }

    /// Adds a conductance from a late unknown, given by its place, to the reference.
    pub(crate) fn add_to_late(&mut self, place: usize, conductance: f64) {
        self.diagonal[self.early + place] += conductance;
    }

    /// Where the columns of the late unknowns begin in the entries of L.
    fn late_entries(&self) -> usize {
        self.l_start.get(self.early).copied().unwrap_or(0)
    }

    /// Sets the numbers of the late unknowns aside: the matrix without the diagonal, and the diagonal.
    pub(crate) fn keep(&self, value: &mut Vec<f64>, diagonal: &mut Vec<f64>) {
        value.clear();
        value.extend_from_slice(&self.value[self.late_entries()..]);
        diagonal.clear();
        diagonal.extend_from_slice(&self.diagonal[self.early..]);
    }

    /// Puts back the numbers that [`Factor::keep`] set aside.
    pub(crate) fn put_back(&mut self, value: &[f64], diagonal: &[f64]) {
        let from = self.late_entries();
        if value.len() == self.value.len() - from && diagonal.len() == self.size - self.early {
            self.value[from..].copy_from_slice(value);
            self.diagonal[self.early..].copy_from_slice(diagonal);
        }
    }

    /// Eliminates the unknowns that are not late. The numbers of the late ones become those of the network without the others,
    /// and what is put in from here on is added to them. To be called once after [`Factor::clear`]. False when the matrix is not positive definite.
    pub(crate) fn reduce(&mut self) -> bool {
        let from = self.late_entries();
        self.l_value.copy_from_slice(&self.value);
        self.pivot.copy_from_slice(&self.diagonal);
        self.measure.copy_from_slice(&self.diagonal);
        let good = self.eliminate(0, self.early);
        self.value[from..].copy_from_slice(&self.l_value[from..]);
        for at in self.early..self.size {
            self.taken[at] = self.diagonal[at] - self.pivot[at];
            self.diagonal[at] = self.pivot[at];
        }
        good
    }

    /// The power sᵀ A s that the matrix factored last turns over at these voltages, those of the late unknowns in their order. The
    /// factors make it a sum of squares, in which nothing cancels.
    pub(crate) fn power_of(&self, voltages: &[f64]) -> f64 {
        let mut sum = 0.0;
        let mut rows = self.late_row.as_slice();
        let mut values = &self.l_value[self.late_entries()..];
        let pivots = &self.pivot[self.early..];
        for ((&count, pivot), x) in self.late_count.iter().zip(pivots).zip(voltages) {
            let (own, rows_after) = rows.split_at(count as usize);
            let (column, values_after) = values.split_at(count as usize);
            (rows, values) = (rows_after, values_after);
            let pairs = own.iter().zip(column);
            let x = pairs.fold(*x, |x, (&row, l)| x + l * voltages[row as usize]);
            sum += pivot * x * x;
        }
        sum
    }

    /// Factors the numbers that were put in. False when the matrix is not positive definite; the factors are then
    /// of no use. Cost: as many operations as L has entries in its columns squared; nothing is allocated.
    pub fn factor(&mut self) -> bool {
        self.begin_round();
        self.factor_round()
    }

    /// Eliminates the unknowns at these places. False when it meets a pivot that is not positive.
    fn eliminate(&mut self, begin: usize, end: usize) -> bool {
        let mut start = self.l_start[begin];
        let ends = self.l_start[begin..=end].iter().skip(1);
        for (k, &column_end) in (begin..end).zip(ends) {
            let d = self.pivot[k];
            // Not `d <= 0.0`: a number that is not one must end here too. A pivot that has lost all its digits to
            // cancellation counts as lost.
            if !(d > 1e-13 * self.measure[k].abs() && d.is_finite()) {
                return false;
            }
            let inverse = 1.0 / d;
            let rows = &self.l_row[start..column_end];
            let ways = &self.way[start..column_end];
            let (column, after) = self.l_value[start..].split_at_mut(column_end - start);
            start = column_end;
            // Twigs and the two poles of a load are most of a wiring network, and are worked without loops.
            match (column, rows, ways) {
                ([], ..) => {}
                ([y], [row], _) => {
                    let l = *y * inverse;
                    self.pivot[*row as usize] -= l * *y;
                    *y = l;
                }
                ([y, z], [a, b], [Way::Beside(to), _]) => {
                    let (l, m) = (*y * inverse, *z * inverse);
                    self.pivot[*a as usize] -= l * *y;
                    self.pivot[*b as usize] -= m * *z;
                    after[*to as usize] -= l * *z;
                    (*y, *z) = (l, m);
                }
                (column, ..) => {
                    let mut open = column;
                    for (&row, way) in rows.iter().zip(ways) {
                        let Some((y, later)) = open.split_first_mut() else {
                            break;
                        };
                        let l = *y * inverse;
                        self.pivot[row as usize] -= l * *y;
                        *y = l;
                        match *way {
                            Way::Beside(to) => {
                                let targets = &mut after[to as usize..];
                                for (target, z) in targets.iter_mut().zip(&*later) {
                                    *target -= l * z;
                                }
                            }
                            Way::Scattered(from) => {
                                let places = &self.scattered[from as usize..];
                                for (&to, z) in places.iter().zip(&*later) {
                                    after[to as usize] -= l * z;
                                }
                            }
                        }
                        open = later;
                    }
                }
            }
        }
        true
    }

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

    /// The bilinear form uᵀ A⁻¹ v of two short lists of (unknown, number). Only the ways to the root of the elimination tree are
    /// walked, so that it is cheap on wiring networks. With u = v = {a: +1, b: -1} it is the resistance between a and b.
    #[must_use]
    pub fn form(&self, u: &[(usize, f64)], v: &[(usize, f64)]) -> f64 {
        let left = self.half_form(u);
        if u == v {
            return left.0.iter().map(|(k, y)| y * y / self.pivot[*k]).sum();
        }
        self.whole_form(&left, &self.half_form(v))
    }

    /// One of the two sides of [`Factor::form`], for use in several: L⁻¹ u, which is nothing but on the ways to the root.
    pub(crate) fn half_form(&self, u: &[(usize, f64)]) -> HalfForm {
        let mut heads: Vec<usize> = u
            .iter()
            .filter_map(|(unknown, _)| self.place.get(*unknown).copied())
            .collect();
        // Places rising: what a column couples stands on the way from it to the root.
        let mut way: Vec<(usize, f64)> = Vec::with_capacity(32);
        while let Some(&k) = heads.iter().min() {
            way.push((k, 0.0));
            let next = self.l_row[self.l_start[k]..self.l_start[k + 1]].first();
            for head in &mut heads {
                if *head == k {
                    *head = next.map_or(usize::MAX, |&row| row as usize);
                }
            }
            heads.retain(|head| *head < self.size);
        }
        for &(unknown, number) in u {
            let found = self
                .place
                .get(unknown)
                .and_then(|place| way.binary_search_by_key(place, |(k, _)| *k).ok());
            if let Some(at) = found {
                way[at].1 += number;
            }
        }
        let mut rest = way.as_mut_slice();
        while let Some((&mut (k, x), after)) = rest.split_first_mut() {
            let column = self.l_start[k]..self.l_start[k + 1];
            let mut above = after.iter_mut();
            for (&row, l) in self.l_row[column.clone()].iter().zip(&self.l_value[column]) {
                // Both rise.
                if let Some((_, y)) = above.find(|(place, _)| *place == row as usize) {
                    *y -= l * x;
                }
            }
            rest = after;
        }
        HalfForm(way)
    }

    /// The form of two sides.
    pub(crate) fn whole_form(&self, left: &HalfForm, right: &HalfForm) -> f64 {
        let mut sum = 0.0;
        let (mut i, mut j) = (0, 0);
        while let (Some((a, x)), Some((b, y))) = (left.0.get(i), right.0.get(j)) {
            match a.cmp(b) {
                std::cmp::Ordering::Less => i += 1,
                std::cmp::Ordering::Greater => j += 1,
                std::cmp::Ordering::Equal => {
                    sum += x * y / self.pivot[*a];
                    i += 1;
                    j += 1;
                }
            }
        }
        sum
    }

    /// The entries of A⁻¹ on the diagonal, by unknown, and between the unknowns of these slots: all at once, at the cost of a
    /// factorisation. After K. Takahashi, J. Fagan and M. Chin, "Formation of a sparse bus impedance matrix", 1973 (from memory).
    #[must_use]
    pub(crate) fn inverse_on_pattern(&self, slots: &[Option<Slot>]) -> (Vec<f64>, Vec<f64>) {
        let mut diagonal = vec![0.0; self.size];
        let mut between = vec![0.0; self.l_row.len()];
        let mut column_end = self.l_row.len();
        let mut column = Vec::new();
        for (k, &start) in self.l_start.iter().take(self.size).enumerate().rev() {
            let (rows, l) = (&self.l_row[start..column_end], &self.l_value[start..column_end]);
            column.clear();
            column.extend(rows.iter().zip(l).map(|(&row, l)| -l * diagonal[row as usize]));
            let after = &between[column_end..];
            for (first, way) in self.way[start..column_end].iter().enumerate() {
                let mut pair = |second: usize, at: usize| {
                    let z = after[at];
                    column[first] -= z * l[second];
                    column[second] -= z * l[first];
                };
                let seconds = first + 1..rows.len();
                match *way {
                    Way::Beside(to) => seconds
                        .zip(to as usize..)
                        .for_each(|(second, at)| pair(second, at)),
                    Way::Scattered(from) => {
                        let places = self.scattered[from as usize..].iter();
                        seconds
                            .zip(places)
                            .for_each(|(second, &at)| pair(second, at as usize));
                    }
                }
            }
            diagonal[k] = 1.0 / self.pivot[k] - column.iter().zip(l).map(|(z, l)| z * l).sum::<f64>();
            between[start..column_end].copy_from_slice(&column);
            column_end = start;
        }
        (
            self.place.iter().map(|&place| diagonal[place]).collect(),
            slots
                .iter()
                .map(|slot| slot.map_or(0.0, |slot| between[slot.between as usize]))
                .collect(),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_matrix_of_no_unknowns_has_factors() {
        let mut factor = Factor::default();
        assert!(factor.factor());
        assert!(factor.reduce());
        factor.solve(&mut []);
        assert_eq!(factor.power_of(&[]), 0.0);
        assert_eq!(factor.form(&[(0, 1.0)], &[(0, 1.0)]), 0.0);
    }

    /// sᵀ A s of a small network, by hand: 2 S between the late nodes 1 and 2, 3 S from 2 to the reference, and node 0, which is not
    /// late, hangs on both by 4 S: in star that is 2 S more between them.
    #[test]
    fn power_is_that_of_the_network_seen_from_the_late_unknowns() {
        let pairs = [(0, 1), (0, 2), (1, 2)];
        let mut factor = Factor::with_late(3, &pairs, &[false, true, true]);
        assert_eq!(factor.late(), 2);
        factor.clear();
        for ((a, b), siemens) in pairs.into_iter().zip([4.0, 4.0, 2.0]) {
            let slot = factor.slot(a, b).expect("they are coupled");
            factor.add_between(slot, siemens);
        }
        factor.add_to_reference(2, 3.0);
        assert!(factor.reduce() && factor.factor());
        let mut volts = [0.0; 2];
        for (node, v) in [(1, 5.0), (2, 1.0)] {
            volts[factor.late_place(node).expect("it is late")] = v;
        }
        let by_hand = 4.0 * 4.0 * 4.0 + 3.0 * 1.0;
        approx::assert_relative_eq!(factor.power_of(&volts), by_hand, max_relative = 1e-12);
    }
}
