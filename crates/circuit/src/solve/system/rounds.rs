//! The rounds of Newton: from the cold start or the answer before, down from above where they cannot begin there, cut short at
//! bends, and with loads followed on the matrix of a round when little moves any more.

use super::{LEAST_SUPPLY, NoAnswer, System, Taken};
use crate::solve::law::{Element, Law};

/// A step this small, in volts, is near the answer: P/v then differs from its straight piece by less than a billionth of an
/// ampere for each kilowatt.
const CLOSE: f64 = 1e-6;

/// After a step this small, in volts, nothing is left.
const SETTLED: f64 = 1e-8;
/// Voltages this near the answer, in volts, are as near as numbers get that are a few volts large and a few factors old.
const ENOUGH: f64 = 1e-12;
/// How often loads are followed at most before another factorisation comes cheaper.
const MOST_FOLLOWING: usize = 5;
/// Most steps of a descent with held currents; see [`System::come_down`].
const MOST_DESCENTS: usize = 40;
/// Most rounds of Newton; at the limit of what a feed can deliver each round only halves the distance.
const MOST_ROUNDS: usize = 60;

/// The largest size of many numbers; infinite, or not a number, where one of them is. Sizes are compared by their bits, which are in the
/// order of the numbers, those that are none last: floating-point maxima would wait for one another three times as long.
#[derive(Clone, Copy, Default)]
struct Largest(u64);

impl Largest {
    fn take(&mut self, number: f64) {
        self.0 = self.0.max(number.abs().to_bits());
    }
    fn size(self) -> f64 {
        f64::from_bits(self.0)
    }
}

impl System {
    /// The network with next to no load, and which loads it supplies.
    pub(super) fn start_cold(&mut self, elements: &[Element], first: &[usize]) -> Result<(), NoAnswer> {
        self.find_components(elements, first);
        // Without loads that bend this has one answer, and it is found from anywhere: soonest from the one before.
        let mut found = false;
        if self.tried {
            self.level.copy_from_slice(&self.trial);
            found = self.newton_with(Taken::OnTrial, elements, 1.0).is_ok();
        }
        self.tried = false;
        if !found {
            self.assemble_cold(elements);
            if !self.factor.factor() {
                return Err(NoAnswer::Singular);
            }
            self.factor.solve_late(&mut self.right);
            self.level.copy_from_slice(&self.right);
            self.newton_with(Taken::OnTrial, elements, 1.0)?;
        }
        self.trial.clone_from(&self.level);
        self.tried = true;
        for &at in &self.moving {
            let [a, b] = elements[at].nodes;
            // Without a closed way, without a source, or the wrong way round, a load draws nothing.
            self.supplied[at] = self.are_tied(a, b) && self.level_across(at) >= LEAST_SUPPLY;
        }
        Ok(())
    }

    /// Where Newton cannot begin at the voltages with next to no load, though there may be an answer: there an alternator at its limit
    /// charges a battery, say; both are soft, so that the fall of P/v outweighs them and the matrix is not definite; lower
    /// down the battery gives and holds. Comes down from above with the currents of all loads held at what they are at the voltages
    /// reached, which are less than those at any answer; so no step passes the uppermost one. Newton takes over as soon as
    /// it can. Once no source is left that would hold on harder lower down there is no answer.
    pub(super) fn come_down(&mut self, elements: &[Element], share: f64) -> Result<(), NoAnswer> {
        for _ in 0..MOST_DESCENTS {
            self.level.copy_from_slice(&self.above);
            if !self.may_stiffen(elements) {
                break;
            }
            for &at in &self.moving {
                let law = elements[at].law;
                self.held[at] = self.current_at(at, law, self.level_across(at), share);
            }
            self.newton_with(Taken::Held, elements, share)?;
            let mut moved = Largest::default();
            for (now, before) in self.level.iter().zip(&self.above) {
                moved.take(now - before);
            }
            self.above.copy_from_slice(&self.level);
            if self.newton(elements, share).is_ok() {
                return Ok(());
            }
            let moved = moved.size();
            if moved.is_nan() || moved < CLOSE {
                break;
            }
        }
        Err(NoAnswer::Infeasible)
    }

    /// Whether a source or diode stands on a piece beyond which, lower down, it holds on harder.
    fn may_stiffen(&self, elements: &[Element]) -> bool {
        self.bent.iter().any(|&at| {
            let v = self.level_across(at);
            match elements[at].law {
                Law::Battery { emf, .. } | Law::Limited { emf, .. } => v > emf,
                Law::Diode { drop, .. } => v < drop,
                _ => false,
            }
        })
    }

    /// Newton with loads taken in another way.
    fn newton_with(&mut self, taken: Taken, elements: &[Element], share: f64) -> Result<(), NoAnswer> {
        self.taken = taken;
        let found = self.newton(elements, share);
        self.taken = Taken::AsAsked;
        found
    }

    /// How far the step in `right` changes that voltage.
    fn step_across(&self, at: usize) -> f64 {
        let [a, b] = self.ends_of(at);
        self.right[a] - self.right[b]
    }

    /// How much of the step in `right` leaves every load at a tenth of its present voltage at least; 1 as a rule. Also
    /// whether a load has come down to nothing already: what it asks then cannot be delivered.
    fn room(&self) -> (f64, bool) {
        let (mut part, mut starved) = (1.0_f64, false);
        for &at in &self.asking {
            let (v, step) = (self.level_across(at), self.step_across(at));
            starved |= v < 0.01 * LEAST_SUPPLY;
            if step < 0.0 {
                part = part.min(-0.9 * v / step);
            }
        }
        (part, starved)
    }

    pub(super) fn newton(&mut self, elements: &[Element], share: f64) -> Result<(), NoAnswer> {
        self.assemble_straight(elements, share);
        for _ in 0..MOST_ROUNDS {
            self.assemble_bent(elements, share);
            if !self.factor.factor_round() {
                return Err(NoAnswer::Infeasible);
            }
            self.factor.solve_late(&mut self.right);
            let mut moved = Largest::default();
            for (v, step) in self.level.iter().zip(&mut self.right) {
                *step -= v;
                moved.take(*step);
            }
            let moved = moved.size();
            if !moved.is_finite() {
                return Err(NoAnswer::Infeasible);
            }
            let (room, starved) = self.room();
            if starved {
                return Err(NoAnswer::Infeasible);
            }
            // Close to the answer steps are rounding, and no search is needed.
            let part = if moved < CLOSE {
                room
            } else {
                self.step_length(elements, share, room)
            };
            for (v, step) in self.level.iter_mut().zip(&self.right) {
                *v += part * step;
            }
            if moved < SETTLED {
                return Ok(());
            }
            // What is left after a full round is of the order of the square of its step, as long as no element left its piece.
            if part >= 1.0
                && self.kept_pieces(elements)
                && (moved < CLOSE || self.follow_loads(elements, share, moved))
            {
                return Ok(());
            }
        }
        Err(NoAnswer::Infeasible)
    }

    /// After a full round that left every source and diode on its piece only P/v is not yet what it was taken for. Lets it follow the
    /// voltages with the matrix of the round, which is far cheaper than another factorisation and gains as many digits each time
    /// as the round before has gained over its step. Voltages come down to the answer from above, as in rounds of their own.
    /// False where another round gets there sooner, or where an element leaves its piece; `level` is then a better start for it.
    fn follow_loads(&mut self, elements: &[Element], share: f64, moved: f64) -> bool {
        self.bent_loads.clear();
        for &at in &self.bent {
            if let Law::Power(power) = elements[at].law {
                let v = self.level_across(at);
                self.bent_loads
                    .push((at, v - self.step_across(at), power * share));
            }
        }
        if self.bent_loads.is_empty() {
            return true;
        }
        self.begun.clone_from(&self.level);
        let mut last = moved;
        for round in 1..=MOST_FOLLOWING {
            self.right.fill(0.0);
            for &(at, before, power) in &self.bent_loads {
                let v = self.level_across(at);
                if v < 0.01 * LEAST_SUPPLY {
                    self.level.copy_from_slice(&self.begun);
                    return false;
                }
                // P/v less its straight piece 2 P/v₀ − P v/v₀², written so that it does not cancel.
                let beside = power * (v - before) * (v - before) / (v * before * before);
                let [a, b] = self.ends_of(at);
                self.right[a] -= beside;
                self.right[b] += beside;
            }
            self.factor.solve_late(&mut self.right);
            let mut change = Largest::default();
            for ((v, begun), step) in self.level.iter_mut().zip(&self.begun).zip(&self.right) {
                let now = begun + step;
                change.take(now - *v);
                *v = now;
            }
            let change = change.size();
            // The first change goes with the square of the step, the others with the one before.
            let rate = if round == 1 {
                2.0 * change / last
            } else {
                change / last
            };
            last = change;
            let left = change * rate / (1.0 - rate);
            let most = (round..MOST_FOLLOWING).fold(left, |left, _| left * rate);
            // Written so that a number that is not one fails.
            let gets_there = rate < 0.5 && most < ENOUGH;
            if (left < ENOUGH || !gets_there) && !self.kept_pieces(elements) {
                self.level.copy_from_slice(&self.begun);
                return false;
            }
            if left < ENOUGH || !gets_there {
                return gets_there;
            }
        }
        false
    }

    /// Whether every source and diode has stayed on the piece it was on before the full step in `right` was gone.
    fn kept_pieces(&self, elements: &[Element]) -> bool {
        self.bent.iter().all(|&at| {
            let law = elements[at].law;
            let v = self.level_across(at);
            law.piece(v) == law.piece(v - self.step_across(at))
        })
    }

    /// How much of the step in `right` to go, at most `room`. Voltages of a network make its co-content least (W. Millar, "Some general
    /// theorems for non-linear systems possessing resistance", Philosophical Magazine 42, 1951, from memory); its slope along the step is
    /// the sum of current times step over the elements. Where that is still falling at the full step, all of it is
    /// gone; else the step has jumped over a bend, and the lowest point is looked for by halving.
    ///
    /// On the straight pieces of this round the slope falls to nothing at the full step, as the step was made so. What is left
    /// comes from elements that have left their piece: only those are looked at.
    fn step_length(&self, elements: &[Element], share: f64, room: f64) -> f64 {
        let beside = self.slope_of_bends(elements, share, room);
        if room >= 1.0 && beside <= 0.0 {
            return room;
        }
        // A Newton step meets the slope that it starts from with the matrix it was made with.
        let start = -self.factor.power_of(&self.right);
        if (1.0 - room) * start + beside <= 0.0 {
            return room;
        }
        let (mut falls, mut rises) = (0.0, room);
        for _ in 0..14 {
            let middle = 0.5 * (falls + rises);
            if (1.0 - middle) * start + self.slope_of_bends(elements, share, middle) <= 0.0 {
                falls = middle;
            } else {
                rises = middle;
            }
        }
        // The far side of the bend, so that the next round sees the other piece.
        rises
    }

    /// What elements add to the slope at a part of the step by not following the straight piece of this round.
    fn slope_of_bends(&self, elements: &[Element], share: f64, part: f64) -> f64 {
        let mut sum = 0.0;
        for &at in &self.bent {
            let step = self.step_across(at);
            if step == 0.0 {
                continue;
            }
            let v = self.level_across(at);
            let there = v + part * step;
            let beside = match elements[at].law {
                // P/v' − (2 P/v − P v'/v²), written so that it does not cancel.
                Law::Power(power) => power * share * (there - v) * (there - v) / (there * v * v),
                law => match (law.piece(v), law.piece(there)) {
                    (Some(here), Some(other)) if here != other => {
                        (other.0 - here.0) * there + other.1 - here.1
                    }
                    _ => 0.0,
                },
            };
            sum += step * beside;
        }
        sum
    }
}
