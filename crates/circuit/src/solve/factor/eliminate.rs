//! From the numbers of a matrix to those of its factors: once for the unknowns that are not late, and anew for the late ones in each round.

use super::Factor;
use super::pattern::Way;

impl Factor {
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
    pub(crate) fn add_to_round(&mut self, slot: super::Slot, conductance: f64) {
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
}
