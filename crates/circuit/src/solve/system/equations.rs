//! Puts the equations together: the steady elements once, what is straight once for all rounds, and the rest in each round.

use super::{System, TRIAL, Taken};
use crate::solve::law::{Element, Law};

impl System {
    /// Conductance of a load on trial: none where no closed way leads through it.
    pub(super) fn on_trial(&self, element: &Element) -> f64 {
        if self.are_tied(element.nodes[0], element.nodes[1]) {
            TRIAL
        } else {
            0.0
        }
    }

    /// Puts the equations together with next to no load, on the first pieces.
    pub(super) fn assemble_cold(&mut self, elements: &[Element]) {
        self.put_back_steady();
        for at in 0..self.moving.len() {
            let at = self.moving[at];
            let element = &elements[at];
            let (slope, intercept) = match element.law {
                Law::Open => continue,
                Law::Current(amps) if amps <= 0.0 => (0.0, self.given(element, amps)),
                Law::Current(_) | Law::Power(_) => (self.on_trial(element), 0.0),
                law => law.first_piece().unwrap_or((0.0, 0.0)),
            };
            self.put(at, slope, intercept);
        }
        self.tie_references();
    }

    /// Puts together what stays the same in all rounds of Newton, and lists what does not.
    pub(super) fn assemble_straight(&mut self, elements: &[Element], share: f64) {
        self.put_back_steady();
        self.bent.clear();
        self.asking.clear();
        for at in 0..self.moving.len() {
            let at = self.moving[at];
            let element = &elements[at];
            let (slope, intercept) = match element.law {
                Law::Open => continue,
                Law::Resistance(ohms) => (1.0 / ohms, 0.0),
                Law::Current(amps) if amps <= 0.0 => (0.0, self.given(element, amps)),
                Law::Current(_) | Law::Power(_) if self.taken == Taken::OnTrial => {
                    (self.on_trial(element), 0.0)
                }
                Law::Current(_) | Law::Power(_) if !self.supplied[at] => continue,
                Law::Power(power) if self.taken == Taken::Held => {
                    if power > 0.0 {
                        self.asking.push(at);
                    }
                    (0.0, self.held[at])
                }
                Law::Current(amps) => {
                    self.asking.push(at);
                    (0.0, amps * share)
                }
                Law::Power(power) => {
                    if power > 0.0 {
                        self.asking.push(at);
                    }
                    if power * share > 0.0 && self.slots[at].is_some() {
                        self.bent.push(at);
                    }
                    continue;
                }
                Law::Source { .. } => element.law.piece(0.0).unwrap_or((0.0, 0.0)),
                Law::Battery { .. } | Law::Limited { .. } | Law::Diode { .. } => {
                    if self.slots[at].is_some() {
                        self.bent.push(at);
                    }
                    continue;
                }
            };
            self.put(at, slope, intercept);
        }
        self.tie_references();
        self.straight.clone_from(&self.right);
    }

    /// Puts the equations of a round together, round the present voltages.
    pub(super) fn assemble_bent(&mut self, elements: &[Element], share: f64) {
        self.factor.begin_round();
        self.right.copy_from_slice(&self.straight);
        for at in 0..self.bent.len() {
            let at = self.bent[at];
            let v = self.level_across(at);
            let (slope, intercept) = match elements[at].law {
                Law::Power(power) => {
                    let power = power * share;
                    (-power / (v * v), 2.0 * power / v)
                }
                law => law.piece(v).unwrap_or((0.0, 0.0)),
            };
            if let (Some(slot), true) = (self.slots[at], slope != 0.0) {
                self.factor.add_to_round(slot, slope);
            }
            self.put_right(at, intercept);
        }
    }

    pub(super) fn put(&mut self, at: usize, slope: f64, intercept: f64) {
        if let (Some(slot), true) = (self.slots[at], slope != 0.0) {
            self.factor.add_between(slot, slope);
        }
        self.put_right(at, intercept);
    }

    /// Puts a current that is given, from first node to second, on the right side.
    fn put_right(&mut self, at: usize, intercept: f64) {
        if intercept != 0.0 && self.slots[at].is_some() {
            let [a, b] = self.ends_of(at);
            self.right[a] -= intercept;
            self.right[b] += intercept;
        }
    }

    /// Starts equations with nothing but the steady elements.
    pub(super) fn put_back_steady(&mut self) {
        let [value, diagonal] = &self.steady_part;
        self.factor.put_back(value, diagonal);
        self.right.fill(0.0);
    }

    /// Lays the steady elements and eliminates what only they touch. False when one of them is neither a resistance nor open, or out of all proportion.
    pub(super) fn lay_steady(&mut self, elements: &[Element]) -> bool {
        self.factor.clear();
        if !self.find_pieces(elements) {
            return false;
        }
        for &at in &self.steady {
            if let (Law::Resistance(ohms), Some(slot)) = (elements[at].law, self.slots[at]) {
                self.factor.add_between(slot, 1.0 / ohms);
            }
        }
        // Pieces that nothing else touches are tied down here and now.
        let mut apart = vec![true; self.lowest.len()];
        for &node in &self.touched {
            apart[self.piece[node]] = false;
        }
        for (&node, apart) in self.lowest.iter().zip(apart) {
            if apart {
                self.factor.add_to_reference(node, 1.0);
            }
        }
        let good = self.factor.reduce();
        let [value, diagonal] = &mut self.steady_part;
        self.factor.keep(value, diagonal);
        good
    }

    /// No current leaves a component, so whatever ties its reference down carries none.
    pub(super) fn tie_references(&mut self) {
        for &place in &self.ties {
            self.factor.add_to_late(place, 1.0);
        }
    }
}
