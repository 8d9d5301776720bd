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

mod answer;
mod eliminate;
mod forms;
mod order;
mod pattern;

pub(crate) use forms::HalfForm;

use pattern::Way;

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
}
