//! Sparse LDLᵀ of a symmetric matrix whose pattern is known before its numbers: ordering and pattern are made once,
//! numbers are put in and factored again and again without allocating.
//!
//! Ordering: minimum degree on the elimination graph, ties to the lowest index, so that it is deterministic. On a
//! wiring network, which is nearly a tree with a few hubs, it leaves next to no fill. Numbers: row by row after
//! T. A. Davis, "Algorithm 849: a concise sparse Cholesky factorization package", ACM TOMS 31 (2005). *Invariant:* a
//! pivot that is not positive ends the factorisation: for a network that means that it has lost its stable point.

/// A symmetric matrix of fixed pattern with its LDLᵀ factors.
#[derive(Clone, Debug, Default)]
pub struct Factor {
    size: usize,
    /// Place of each unknown in the order of elimination.
    place: Vec<usize>,
    /// Upper triangle of the ordered matrix by columns, the diagonal left out.
    column_start: Vec<usize>,
    row: Vec<usize>,
    value: Vec<f64>,
    diagonal: Vec<f64>,
    /// Factor L by columns; `row_of_l` is filled once, as the pattern never changes.
    l_start: Vec<usize>,
    l_row: Vec<usize>,
    l_value: Vec<f64>,
    pivot: Vec<f64>,
    parent: Vec<usize>,
    /// Pattern of each row of L in the order in which it is worked off.
    pattern_start: Vec<usize>,
    pattern: Vec<usize>,
    filled: Vec<usize>,
    work: Vec<f64>,
}

/// No parent in the elimination tree.
const ROOT: usize = usize::MAX;

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
        let mut near: Vec<Vec<u32>> = vec![Vec::new(); size];
        let narrow = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
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
        let original = near.clone();
        let order = minimum_degree(&mut near);
        let mut place = vec![0; size];
        for (at, &unknown) in order.iter().enumerate() {
            place[unknown] = at;
        }
        let mut factor = Self {
            size,
            value: Vec::new(),
            diagonal: vec![0.0; size],
            pivot: vec![1.0; size],
            parent: vec![ROOT; size],
            filled: vec![0; size],
            work: vec![0.0; size],
            ..Self::default()
        };
        // What is left in `near` after the elimination is the pattern of each column of L.
        let mut l_columns: Vec<Vec<usize>> = vec![Vec::new(); size];
        for (at, &unknown) in order.iter().enumerate() {
            let mut column: Vec<usize> = near[unknown].iter().map(|&n| place[n as usize]).collect();
            column.sort_unstable();
            factor.parent[at] = column.first().copied().unwrap_or(ROOT);
            l_columns[at] = column;
        }
        factor.l_start.push(0);
        for column in &l_columns {
            factor.l_row.extend_from_slice(column);
            factor.l_start.push(factor.l_row.len());
        }
        factor.l_value = vec![0.0; factor.l_row.len()];
        // Rows of L: the columns with an entry in the row, lowest first, which is an order that elimination allows.
        let mut rows: Vec<Vec<usize>> = vec![Vec::new(); size];
        for (at, column) in l_columns.iter().enumerate() {
            for &row in column {
                rows[row].push(at);
            }
        }
        factor.pattern_start.push(0);
        for row in &rows {
            factor.pattern.extend_from_slice(row);
            factor.pattern_start.push(factor.pattern.len());
        }
        factor.column_start.push(0);
        for (at, &unknown) in order.iter().enumerate() {
            let mut above: Vec<usize> = original[unknown]
                .iter()
                .map(|&n| place[n as usize])
                .filter(|&p| p < at)
                .collect();
            above.sort_unstable();
            factor.row.extend_from_slice(&above);
            factor.column_start.push(factor.row.len());
        }
        factor.value = vec![0.0; factor.row.len()];
        factor.place = place;
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
            .row
            .get(*self.column_start.get(high)?..*self.column_start.get(high + 1)?)?;
        let found = column.binary_search(&low).ok()?;
        Some(Slot {
            a,
            b,
            between: self.column_start[high] + found,
        })
    }

    /// Sets all numbers to nothing.
    pub fn clear(&mut self) {
        self.value.fill(0.0);
        self.diagonal.fill(0.0);
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

    /// Factors the numbers that were put in. False when the matrix is not positive definite; the factors are then
    /// of no use. Cost: as many operations as L has entries in its columns squared; nothing is allocated.
    pub fn factor(&mut self) -> bool {
        let Self {
            work,
            l_value,
            pivot,
            filled,
            ..
        } = self;
        filled.copy_from_slice(&self.l_start[..self.size]);
        for k in 0..self.size {
            for at in self.column_start[k]..self.column_start[k + 1] {
                work[self.row[at]] += self.value[at];
            }
            let mut d = self.diagonal[k];
            for at in self.pattern_start[k]..self.pattern_start[k + 1] {
                let i = self.pattern[at];
                let y = work[i];
                work[i] = 0.0;
                let end = filled[i];
                for entry in self.l_start[i]..end {
                    work[self.l_row[entry]] -= l_value[entry] * y;
                }
                let l = y / pivot[i];
                d -= l * y;
                l_value[end] = l;
                filled[i] = end + 1;
            }
            // Not `d <= 0.0`: a number that is not one must end here too. A pivot that has lost all its digits to
            // cancellation counts as lost.
            if !(d > 1e-13 * self.diagonal[k].abs() && d.is_finite()) {
                work.fill(0.0);
                return false;
            }
            pivot[k] = d;
        }
        true
    }

    /// Solves for a right side given by unknown, which becomes the answer.
    pub fn solve(&mut self, right: &mut [f64]) {
        if right.len() != self.size {
            return;
        }
        for (unknown, &place) in self.place.iter().enumerate() {
            self.work[place] = right[unknown];
        }
        for k in 0..self.size {
            let x = self.work[k];
            if x != 0.0 {
                for at in self.l_start[k]..self.l_start[k + 1] {
                    self.work[self.l_row[at]] -= self.l_value[at] * x;
                }
            }
        }
        for k in (0..self.size).rev() {
            let mut x = self.work[k] / self.pivot[k];
            for at in self.l_start[k]..self.l_start[k + 1] {
                x -= self.l_value[at] * self.work[self.l_row[at]];
            }
            self.work[k] = x;
        }
        for (unknown, &place) in self.place.iter().enumerate() {
            right[unknown] = self.work[place];
        }
        self.work.fill(0.0);
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

    /// L⁻¹ u as a list of (place, number), places rising.
    fn forward(&self, u: &[(usize, f64)]) -> Vec<(usize, f64)> {
        let mut out: std::collections::BTreeMap<usize, f64> = std::collections::BTreeMap::new();
        for &(unknown, number) in u {
            if let Some(&place) = self.place.get(unknown) {
                *out.entry(place).or_insert(0.0) += number;
            }
        }
        let mut done = Vec::new();
        while let Some((k, x)) = out.pop_first() {
            for at in self.l_start[k]..self.l_start[k + 1] {
                *out.entry(self.l_row[at]).or_insert(0.0) -= self.l_value[at] * x;
            }
            done.push((k, x));
        }
        done
    }
}

/// Eliminates unknowns by least degree. On return each list holds the neighbours at the time of elimination.
fn minimum_degree(near: &mut [Vec<u32>]) -> Vec<usize> {
    let size = near.len();
    let mut queue: std::collections::BTreeSet<(usize, usize)> = near
        .iter()
        .enumerate()
        .map(|(at, list)| (list.len(), at))
        .collect();
    let mut order = Vec::with_capacity(size);
    let mut merged: Vec<u32> = Vec::new();
    while let Some((_, least)) = queue.pop_first() {
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
            if near[at].len() != before {
                queue.remove(&(before, at));
                queue.insert((near[at].len(), at));
            }
        }
        near[least] = list;
    }
    order
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
