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

use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A symmetric matrix of fixed pattern with its LDLᵀ factors.
#[derive(Clone, Debug, Default)]
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
    /// Factor L by columns, rows rising.
    l_start: Vec<usize>,
    l_row: Vec<usize>,
    l_value: Vec<f64>,
    pivot: Vec<f64>,
    /// Where the product of two entries of a column goes, for all pairs of a column, column by column.
    target: Vec<u32>,
    /// How many of these stand before those of the late unknowns.
    early_targets: usize,
    work: Vec<f64>,
    late_work: Vec<f64>,
}

/// Where the conductance between two unknowns goes: given once, then used without searching.
#[derive(Clone, Copy, Debug)]
pub struct Slot {
    a: usize,
    b: usize,
    between: usize,
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
        let (order, early) = minimum_degree(&mut near, late);
        let mut place = vec![0; size];
        for (at, &unknown) in order.iter().enumerate() {
            place[unknown] = at;
        }
        // What is left in `near` after the elimination is the pattern of each column of L.
        let mut l_start = Vec::with_capacity(size + 1);
        let mut l_row: Vec<usize> = Vec::with_capacity(near.iter().map(Vec::len).sum());
        l_start.push(0);
        for &unknown in &order {
            let from = l_row.len();
            l_row.extend(near[unknown].iter().map(|&n| place[n as usize]));
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
            work: vec![0.0; size],
            late_work: Vec::new(),
            target: Vec::new(),
            early_targets: 0,
            place,
            l_start,
            l_row,
        };
        for k in 0..size {
            if k == early {
                factor.early_targets = factor.target.len();
            }
            let column = factor.l_start[k]..factor.l_start[k + 1];
            for first in column.clone() {
                let low = factor.l_row[first];
                let mut at = factor.l_start[low];
                for second in first + 1..column.end {
                    // Elimination has coupled all that a column couples, so that the entry is there; both lists rise.
                    let high = factor.l_row[second];
                    while factor.l_row[at] < high {
                        at += 1;
                    }
                    factor.target.push(narrow(at));
                }
            }
        }
        factor
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
        let found = column.binary_search(&high).ok()?;
        Some(Slot {
            a,
            b,
            between: self.l_start[low] + found,
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
        self.diagonal[slot.a] += conductance;
        self.diagonal[slot.b] += conductance;
        self.value[slot.between] -= conductance;
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
        let good = self.eliminate(0, self.early);
        self.value[from..].copy_from_slice(&self.l_value[from..]);
        for at in self.early..self.size {
            self.taken[at] = self.diagonal[at] - self.pivot[at];
            self.diagonal[at] = self.pivot[at];
        }
        good
    }

    /// The power xᵀ S y that the conductances of a reduced network, set aside by [`Factor::keep`], turn over between two sets of
    /// voltages, those of the late unknowns in their order; as a sum over conductances, in which nothing large cancels.
    pub(crate) fn power_between(&self, value: &[f64], x: &[f64], y: &[f64]) -> f64 {
        let from = self.late_entries();
        let mut sum = 0.0;
        for a in 0..self.late() {
            for entry in self.l_start[self.early + a]..self.l_start[self.early + a + 1] {
                let b = self.l_row[entry] - self.early;
                sum -= value[entry - from] * (x[a] - x[b]) * (y[a] - y[b]);
            }
        }
        sum
    }

    /// Factors the numbers that were put in. False when the matrix is not positive definite; the factors are then
    /// of no use. Cost: as many operations as L has entries in its columns squared; nothing is allocated.
    pub fn factor(&mut self) -> bool {
        let from = self.late_entries();
        self.l_value[from..].copy_from_slice(&self.value[from..]);
        self.pivot[self.early..].copy_from_slice(&self.diagonal[self.early..]);
        self.eliminate(self.early, self.size)
    }

    /// Eliminates the early unknowns or the late ones. False when it meets a pivot that is not positive.
    fn eliminate(&mut self, begin: usize, end: usize) -> bool {
        let skipped = if begin == 0 { 0 } else { self.early_targets };
        let mut targets = self.target.get(skipped..).unwrap_or_default();
        let mut start = self.l_start[begin];
        for k in begin..end {
            let column_end = self.l_start[k + 1];
            let d = self.pivot[k];
            // Not `d <= 0.0`: a number that is not one must end here too. A pivot that has lost all its digits to
            // cancellation counts as lost.
            if !(d > 1e-13 * (self.diagonal[k] + self.taken[k]).abs() && d.is_finite()) {
                return false;
            }
            if column_end == start + 1 {
                // A twig, as most of a wiring network is.
                let y = self.l_value[start];
                let l = y / d;
                self.l_value[start] = l;
                self.pivot[self.l_row[start]] -= l * y;
                start = column_end;
                continue;
            }
            for first in start..column_end {
                let y = self.l_value[first];
                let l = y / d;
                self.l_value[first] = l;
                self.pivot[self.l_row[first]] -= l * y;
                let (now, rest) = targets.split_at(column_end - first - 1);
                targets = rest;
                for (&to, second) in now.iter().zip(first + 1..column_end) {
                    self.l_value[to as usize] -= l * self.l_value[second];
                }
            }
            start = column_end;
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
        let early = self.early;
        let mut start = self.late_entries();
        for (k, &end) in self.l_start[early..].iter().skip(1).enumerate() {
            let x = right[k];
            if x != 0.0 {
                for (&row, l) in self.l_row[start..end].iter().zip(&self.l_value[start..end]) {
                    right[row - early] -= l * x;
                }
            }
            start = end;
        }
        let mut end = self.l_row.len();
        let starts = self.l_start[early..self.size].iter().enumerate().rev();
        for ((k, &start), pivot) in starts.zip(self.pivot.iter().rev()) {
            let mut x = right[k] / pivot;
            for (&row, l) in self.l_row[start..end].iter().zip(&self.l_value[start..end]) {
                x -= l * right[row - early];
            }
            right[k] = x;
            end = start;
        }
    }

    /// From the answer for the late unknowns, in their order, that for all of them, by unknown; on the right side of those that are not late
    /// nothing stands.
    pub(crate) fn spread(&mut self, late: &[f64], answer: &mut [f64]) {
        if answer.len() != self.size || late.len() != self.late() {
            return;
        }
        let mut end = self.late_entries();
        let work = self.work.as_mut_slice();
        work[self.early..].copy_from_slice(late);
        for (k, &start) in self.l_start[..self.early].iter().enumerate().rev() {
            let mut x = 0.0;
            for (&row, l) in self.l_row[start..end].iter().zip(&self.l_value[start..end]) {
                x -= l * work[row];
            }
            work[k] = x;
            end = start;
        }
        for (&unknown, x) in self.order.iter().zip(work.iter()) {
            answer[unknown] = *x;
        }
    }

    /// The bilinear form uᵀ A⁻¹ v of two short lists of (unknown, number). Only the ways to the root of the elimination tree are
    /// walked, so that it is cheap on wiring networks. With u = v = {a: +1, b: -1} it is the resistance between a and b.
    #[must_use]
    pub fn form(&self, u: &[(usize, f64)], v: &[(usize, f64)]) -> f64 {
        let left = self.forward(u);
        if u == v {
            return left.iter().map(|(k, y)| y * y / self.pivot[*k]).sum();
        }
        let right = self.forward(v);
        let mut sum = 0.0;
        let (mut i, mut j) = (0, 0);
        while let (Some((a, x)), Some((b, y))) = (left.get(i), right.get(j)) {
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
        let mut targets = self.target.as_slice();
        let mut column = Vec::new();
        for (k, &start) in self.l_start.iter().take(self.size).enumerate().rev() {
            let (rows, l) = (&self.l_row[start..column_end], &self.l_value[start..column_end]);
            let pairs = rows.len() * rows.len().saturating_sub(1) / 2;
            let (rest, mut mine) = targets.split_at(targets.len() - pairs);
            targets = rest;
            column.clear();
            column.extend(rows.iter().zip(l).map(|(&row, l)| -l * diagonal[row]));
            for first in 0..rows.len() {
                let (now, later) = mine.split_at(rows.len() - first - 1);
                mine = later;
                for (&at, second) in now.iter().zip(first + 1..) {
                    let z = between[at as usize];
                    column[first] -= z * l[second];
                    column[second] -= z * l[first];
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
                .map(|slot| slot.map_or(0.0, |slot| between[slot.between]))
                .collect(),
        )
    }

    /// L⁻¹ u as a list of (place, number), places rising.
    fn forward(&self, u: &[(usize, f64)]) -> Vec<(usize, f64)> {
        // What is still to be worked off, places falling, so that the next one is the last.
        let mut open: Vec<(usize, f64)> = Vec::new();
        let add = |open: &mut Vec<(usize, f64)>, place: usize, number: f64| {
            let mut at = open.len();
            while at > 0 && open[at - 1].0 < place {
                at -= 1;
            }
            match at.checked_sub(1).and_then(|before| open.get_mut(before)) {
                Some(same) if same.0 == place => same.1 += number,
                _ => open.insert(at, (place, number)),
            }
        };
        for &(unknown, number) in u {
            if let Some(&place) = self.place.get(unknown) {
                add(&mut open, place, number);
            }
        }
        let mut done = Vec::new();
        while let Some((k, x)) = open.pop() {
            for at in self.l_start[k]..self.l_start[k + 1] {
                add(&mut open, self.l_row[at], -(self.l_value[at] * x));
            }
            done.push((k, x));
        }
        done
    }
}

fn narrow(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

/// Most neighbours that an unknown may have to be eliminated before the late ones: three couplings among three neighbours (the star
/// and delta of three-phase practice) are no more than the three that go; four would leave six.
const MOST_EARLY: usize = 3;

/// Eliminates unknowns by least degree, those marked `late` last. On return each list holds the neighbours at the time of
/// elimination; told beside the order is how many stand before the late ones.
fn minimum_degree(near: &mut [Vec<u32>], late: &[bool]) -> (Vec<usize>, usize) {
    let size = near.len();
    let is_late = |at: usize| late.get(at) == Some(&true);
    // Entries whose degree is no longer that of their unknown are passed over.
    let mut queue: BinaryHeap<Reverse<(usize, usize)>> = near
        .iter()
        .enumerate()
        .filter(|(at, _)| !is_late(*at))
        .map(|(at, list)| Reverse((list.len(), at)))
        .collect();
    let mut gone = vec![false; size];
    let mut order = Vec::with_capacity(size);
    let mut merged: Vec<u32> = Vec::new();
    let mut early = None;
    loop {
        while queue
            .peek()
            .is_some_and(|Reverse((degree, at))| gone[*at] || near[*at].len() != *degree)
        {
            queue.pop();
        }
        if early.is_none()
            && queue
                .peek()
                .is_none_or(|Reverse((degree, _))| *degree > MOST_EARLY)
        {
            early = Some(order.len());
            let late = (0..size).filter(|at| is_late(*at));
            queue.extend(late.map(|at| Reverse((near[at].len(), at))));
            continue;
        }
        let Some(Reverse((_, least))) = queue.pop() else {
            break;
        };
        gone[least] = true;
        order.push(least);
        let list = std::mem::take(&mut near[least]);
        let me = u32::try_from(least).unwrap_or(u32::MAX);
        for &other in &list {
            let at = other as usize;
            let before = near[at].len();
            if let Ok(found) = near[at].binary_search(&me) {
                near[at].remove(found);
            }
            if list.len() <= 8 {
                for &third in &list {
                    if third != other
                        && let Err(gap) = near[at].binary_search(&third)
                    {
                        near[at].insert(gap, third);
                    }
                }
            } else {
                merge_without(&near[at], &list, other, &mut merged);
                std::mem::swap(&mut near[at], &mut merged);
            }
            if near[at].len() != before && (early.is_some() || !is_late(at)) {
                queue.push(Reverse((near[at].len(), at)));
            }
        }
        near[least] = list;
    }
    (order, early.unwrap_or(size))
}

/// Two sorted lists as one, without `leave_out`.
fn merge_without(a: &[u32], b: &[u32], leave_out: u32, out: &mut Vec<u32>) {
    out.clear();
    let (mut i, mut j) = (0, 0);
    loop {
        let next = match (a.get(i), b.get(j)) {
            (Some(&x), Some(&y)) => {
                i += usize::from(x <= y);
                j += usize::from(y <= x);
                x.min(y)
            }
            (Some(&x), None) => {
                i += 1;
                x
            }
            (None, Some(&y)) => {
                j += 1;
                y
            }
            (None, None) => break,
        };
        if next != leave_out {
            out.push(next);
        }
    }
}
