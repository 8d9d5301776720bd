//! What follows from the factors without an answer for all unknowns: forms of the inverse, its entries on the pattern, and the power of a step.

use super::pattern::Way;
use super::{Factor, Slot};

/// One side of a form: (place, number), places rising.
#[derive(Clone, Debug)]
pub(crate) struct HalfForm(Vec<(usize, f64)>);

impl Factor {
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
}

#[cfg(test)]
mod tests {
    use super::*;

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
