//! Nodal analysis of a fixed set of elements: linear ones, sources with a bend in their characteristic, and loads of
//! constant power, all settled together by Newton from above.
//!
//! Unknowns are the node voltages. With conductances `G`, injected currents `I` and loads that take the power `P` at
//! the voltage `v` across them, the equation is `G·V + Σ P/v = I`. Its Jacobian `G − Σ P/v²` is symmetric. Newton starts
//! at the voltages with all loads left out. As `P/v` is convex and a wiring network answers any current by a
//! fall of voltage, each round lands above the upper root, nearer than before: it converges to the upper root, the one
//! at which equipment really runs, or, where there is none, ends in a matrix that is not positive definite or in a
//! voltage at or below nothing. So failure to converge *is* the answer "this power cannot be delivered". A later
//! solution of the same network starts at the one before and falls back to the cold start; at the lower root the matrix is not
//! positive definite, so that one is never taken.
//!
//! Sources bend: each round takes the straight piece on which the voltage of the round before lies. The
//! characteristics are continuous and monotone; a step that jumps over a bend is cut short where it would begin to lead
//! away again, so that no round goes to and fro.

use super::factor::{Factor, Slot};

/// What an element does. Voltages are from its first node to its second, currents flow from the first to the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// Nothing: an open contact, or a load that is off.
    Open,
    /// A resistance, in ohms, above zero.
    Resistance(f64),
    /// A voltage in volts, first node positive, behind a resistance in ohms, above zero.
    Source {
        /// The voltage at no current.
        emf: f64,
        /// The resistance in series.
        resistance: f64,
    },
    /// A battery: a voltage behind one resistance when it gives and a larger one when it is charged.
    Battery {
        /// The voltage at no current.
        emf: f64,
        /// Resistance to discharge, in ohms.
        gives: f64,
        /// Resistance to charging, in ohms.
        takes: f64,
    },
    /// Holds a voltage behind a resistance up to a limit, and takes nothing: alternator, converter.
    Limited {
        /// The voltage at no current.
        emf: f64,
        /// The resistance in series.
        resistance: f64,
        /// Most current, in amperes.
        limit: f64,
    },
    /// Passes current from first node to second only, losing a voltage; backwards it leaks [`LEAKAGE`].
    Diode {
        /// Voltage lost, in volts.
        drop: f64,
        /// The resistance in series.
        resistance: f64,
    },
    /// Takes a current whatever the voltage, in amperes; gives it when negative.
    Current(f64),
    /// Takes a power whatever the voltage, in watts, not negative.
    Power(f64),
}

/// Conductance of a diode that blocks, in siemens: 12 µA at 12 V (from memory).
pub const LEAKAGE: f64 = 1e-6;

/// A source still holds, in volts, at its own voltage: a network that draws nothing ends right there, up to rounding.
const HAIR: f64 = 1e-9;

/// A step this small, in volts, is near the answer: P/v then differs from its straight piece by less than a billionth of an
/// ampere for each kilowatt.
const CLOSE: f64 = 1e-6;

impl Law {
    /// Slope and intercept of a law that is straight or bent, on the piece on which the voltage lies: the current from first
    /// node to second is slope · v + intercept. `None` for loads.
    fn piece(self, v: f64) -> Option<(f64, f64)> {
        match self {
            Self::Open => Some((0.0, 0.0)),
            Self::Resistance(ohms) => Some((1.0 / ohms, 0.0)),
            Self::Source { emf, resistance } => Some((1.0 / resistance, -emf / resistance)),
            Self::Battery { emf, gives, takes } => {
                let r = if v > emf + HAIR { takes } else { gives };
                Some((1.0 / r, -emf / r))
            }
            Self::Limited {
                emf,
                resistance,
                limit,
            } => Some(if v > emf + HAIR {
                (0.0, 0.0)
            } else if v <= emf - resistance * limit {
                (0.0, -limit)
            } else {
                (1.0 / resistance, -emf / resistance)
            }),
            Self::Diode { drop, resistance } => Some(if v > drop - HAIR {
                (1.0 / resistance + LEAKAGE, -drop / resistance)
            } else {
                (LEAKAGE, 0.0)
            }),
            Self::Current(_) | Self::Power(_) => None,
        }
    }

    /// The piece that a cold start takes: sources hold, batteries give, diodes pass.
    fn first_piece(self) -> Option<(f64, f64)> {
        match self {
            Self::Battery { emf, gives, .. } => Some((1.0 / gives, -emf / gives)),
            Self::Limited { emf, resistance, .. } => Some((1.0 / resistance, -emf / resistance)),
            Self::Diode { drop, resistance } => Some((1.0 / resistance + LEAKAGE, -drop / resistance)),
            other => other.piece(0.0),
        }
    }

    /// Whether it ties its nodes together.
    fn ties(self) -> bool {
        !matches!(self, Self::Open | Self::Current(_) | Self::Power(_))
    }

    /// Whether it can drive current of its own.
    fn drives(self) -> bool {
        match self {
            Self::Source { emf, .. } | Self::Battery { emf, .. } | Self::Limited { emf, .. } => emf != 0.0,
            Self::Current(amps) => amps < 0.0,
            _ => false,
        }
    }
}

/// An element between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// The nodes it joins.
    pub nodes: [usize; 2],
    /// What it does.
    pub law: Law,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAnswer {
    /// The power asked cannot be delivered.
    Infeasible,
    /// The linear network itself could not be factored: numbers out of all proportion.
    Singular,
}

/// The nodal equations of a network whose elements keep their places while their laws change.
#[derive(Clone, Debug, Default)]
pub struct System {
    nodes: usize,
    factor: Factor,
    slots: Vec<Option<Slot>>,
    /// Component of each node over conducting elements, as the index of its representative.
    component: Vec<usize>,
    /// Whether a component holds a source, by representative.
    driven: Vec<bool>,
    /// Reference node of each component, by representative.
    reference: Vec<usize>,
    right: Vec<f64>,
    voltage: Vec<f64>,
    current: Vec<f64>,
    supplied: Vec<bool>,
    warm: bool,
    /// What is straight whatever the voltages, put together once for all rounds: matrix, diagonal, right side.
    straight: [Vec<f64>; 3],
    /// Elements whose straight piece is another one at other voltages.
    bent: Vec<usize>,
    /// Loads that are supplied.
    asking: Vec<usize>,
}

/// How well an answer balances.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Closure {
    /// Largest sum of currents at a node, in amperes.
    pub residual: f64,
    /// Largest current in any element, in amperes.
    pub largest: f64,
    /// Power given by sources, in watts.
    pub given: f64,
    /// Power taken by everything else, in watts.
    pub taken: f64,
}

/// Below this voltage a load that asks for power or current is taken to be without supply.
pub const LEAST_SUPPLY: f64 = 0.5;
/// Most rounds of Newton; at the limit of what a feed can deliver each round only halves the distance.
const MOST_ROUNDS: usize = 60;
/// Currents below this do not count as the measure of a balance: 1 mA is below what any part on a sheet draws that matters.
const LEAST_CURRENT: f64 = 1e-3;

impl System {
    /// Prepares for elements between these nodes; their laws may change later, their nodes may not.
    #[must_use]
    pub fn new(nodes: usize, elements: &[Element]) -> Self {
        let pairs: Vec<(usize, usize)> = elements.iter().map(|e| (e.nodes[0], e.nodes[1])).collect();
        let factor = Factor::new(nodes, &pairs);
        let slots = pairs.iter().map(|&(a, b)| factor.slot(a, b)).collect();
        Self {
            nodes,
            factor,
            slots,
            component: (0..nodes).collect(),
            driven: vec![false; nodes],
            reference: (0..nodes).collect(),
            right: vec![0.0; nodes],
            voltage: vec![0.0; nodes],
            current: vec![0.0; elements.len()],
            supplied: vec![false; elements.len()],
            warm: false,
            straight: Default::default(),
            bent: Vec::new(),
            asking: Vec::new(),
        }
    }

    /// Number of entries in the factor below its diagonal.
    #[must_use]
    pub fn entries(&self) -> usize {
        self.factor.entries()
    }

    /// Voltage of each node against the reference node of its component.
    #[must_use]
    pub fn voltages(&self) -> &[f64] {
        &self.voltage
    }

    /// Current of each element, from its first node to its second.
    #[must_use]
    pub fn currents(&self) -> &[f64] {
        &self.current
    }

    /// Whether a load had no supply and was left out.
    #[must_use]
    pub fn is_idle(&self, element: usize) -> bool {
        !self.supplied.get(element).copied().unwrap_or(false)
    }

    /// Whether anything conducting ties the node to a source.
    #[must_use]
    pub fn is_driven(&self, node: usize) -> bool {
        self.component.get(node).is_some_and(|&c| self.driven[c])
    }

    /// Which nodes are the reference of their component.
    #[must_use]
    pub fn references(&self) -> Vec<bool> {
        let mut out = vec![false; self.nodes];
        for (node, &component) in self.component.iter().enumerate() {
            if node == component {
                out[self.reference[node]] = true;
            }
        }
        out
    }

    /// Whether conducting elements tie the two nodes together.
    #[must_use]
    pub fn are_tied(&self, a: usize, b: usize) -> bool {
        self.component
            .get(a)
            .is_some_and(|c| self.component.get(b) == Some(c))
    }

    /// The form uᵀ A⁻¹ v with the matrix factored last; see [`Factor::form`]. For lists whose numbers add up to nothing and whose
    /// nodes are tied together it does not depend on the reference.
    #[must_use]
    pub fn form(&self, u: &[(usize, f64)], v: &[(usize, f64)]) -> f64 {
        self.factor.form(u, v)
    }

    /// With the matrix factored last: the voltage of each node for 1 A that enters there, and of either node of each element
    /// for 1 A that enters at the other; 1 A always leaves at the reference of their component, which is held to
    /// nothing by 1 Ω.
    #[must_use]
    pub(crate) fn transfer(&self) -> (Vec<f64>, Vec<f64>) {
        self.factor.inverse_on_pattern(&self.slots)
    }

    /// Whether voltages of the node's component are told against it.
    #[must_use]
    pub(crate) fn is_reference(&self, node: usize) -> bool {
        self.component
            .get(node)
            .is_some_and(|&component| self.reference[component] == node)
    }

    /// Voltage of an element, first node to second.
    #[must_use]
    pub fn across(&self, element: &Element) -> f64 {
        let at = |n: usize| self.voltage.get(n).copied().unwrap_or(0.0);
        at(element.nodes[0]) - at(element.nodes[1])
    }

    /// Forgets the last answer: the next one starts cold. To be called when an element has come to tie its nodes together or
    /// no longer does.
    pub fn restart(&mut self) {
        self.warm = false;
    }

    /// Solves. `first` names nodes that are to be references, in order of preference. All powers and currents asked
    /// for are multiplied by `share`.
    ///
    /// # Errors
    /// When the power asked cannot be delivered, or the network could not be factored.
    pub fn solve(&mut self, elements: &[Element], first: &[usize], share: f64) -> Result<(), NoAnswer> {
        if elements.len() != self.slots.len() {
            return Err(NoAnswer::Singular);
        }
        let from_last = self.warm && self.newton(elements, share).is_ok();
        if !from_last {
            self.warm = false;
            self.start_cold(elements, first)?;
            self.newton(elements, share)?;
        }
        self.warm = true;
        self.find_currents(elements, share);
        Ok(())
    }

    /// The network without its loads, and which loads it supplies.
    fn start_cold(&mut self, elements: &[Element], first: &[usize]) -> Result<(), NoAnswer> {
        self.find_components(elements, first);
        self.assemble_cold(elements);
        if !self.factor.factor() {
            return Err(NoAnswer::Singular);
        }
        self.factor.solve(&mut self.right);
        self.voltage.copy_from_slice(&self.right);
        for (at, element) in elements.iter().enumerate() {
            let [a, b] = element.nodes;
            // Without a closed way, without a source, or the wrong way round, a load draws nothing.
            self.supplied[at] = self.are_tied(a, b) && self.across(element) >= LEAST_SUPPLY;
        }
        Ok(())
    }

    /// How much of the step in `right` leaves every load at a tenth of its present voltage at least; 1 as a rule. Also
    /// whether a load has come down to nothing already: what it asks then cannot be delivered.
    fn room(&self, elements: &[Element]) -> (f64, bool) {
        let (mut part, mut starved) = (1.0_f64, false);
        for &at in &self.asking {
            let [a, b] = elements[at].nodes;
            let v = self.voltage[a] - self.voltage[b];
            let step = self.right[a] - self.right[b];
            starved |= v < 0.01 * LEAST_SUPPLY;
            if step < 0.0 {
                part = part.min(-0.9 * v / step);
            }
        }
        (part, starved)
    }

    fn newton(&mut self, elements: &[Element], share: f64) -> Result<(), NoAnswer> {
        self.assemble_straight(elements, share);
        for _ in 0..MOST_ROUNDS {
            self.assemble_bent(elements, share);
            if !self.factor.factor() {
                return Err(NoAnswer::Infeasible);
            }
            self.factor.solve(&mut self.right);
            let mut moved = 0.0_f64;
            for (v, step) in self.voltage.iter().zip(&mut self.right) {
                *step -= v;
                moved = if step.is_finite() {
                    moved.max(step.abs())
                } else {
                    f64::INFINITY
                };
            }
            if !moved.is_finite() {
                return Err(NoAnswer::Infeasible);
            }
            let (room, starved) = self.room(elements);
            if starved {
                return Err(NoAnswer::Infeasible);
            }
            // Close to the answer steps are rounding, and no search is needed.
            let part = if moved < CLOSE {
                room
            } else {
                self.step_length(elements, share, room)
            };
            for (v, step) in self.voltage.iter_mut().zip(&self.right) {
                *v += part * step;
            }
            // What is left after a full round is of the order of the square of its step, as long as no element left its piece.
            if moved < 1e-8 || (moved < CLOSE && room >= 1.0 && self.kept_pieces(elements)) {
                return Ok(());
            }
        }
        Err(NoAnswer::Infeasible)
    }

    /// Whether every source and diode has stayed on the piece it was on before the full step in `right` was gone.
    fn kept_pieces(&self, elements: &[Element]) -> bool {
        self.bent.iter().all(|&at| {
            let element = &elements[at];
            let [a, b] = element.nodes;
            let v = self.voltage[a] - self.voltage[b];
            let before = v - (self.right[a] - self.right[b]);
            element.law.piece(v) == element.law.piece(before)
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
        let start = if room < 1.0 {
            self.slope_at_start(elements, share)
        } else {
            0.0
        };
        if (1.0 - room) * start + self.slope_of_bends(elements, share, room) <= 0.0 {
            return room;
        }
        let start = self.slope_at_start(elements, share);
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

    /// The slope along the step before it is gone.
    fn slope_at_start(&self, elements: &[Element], share: f64) -> f64 {
        let mut sum = 0.0;
        for (at, element) in elements.iter().enumerate() {
            let [a, b] = element.nodes;
            let step = self.right[a] - self.right[b];
            if step != 0.0 {
                let current = match element.law {
                    Law::Current(amps) if amps <= 0.0 => self.given(element, amps),
                    law => self.current_at(at, law, self.voltage[a] - self.voltage[b], share),
                };
                sum += step * current;
            }
        }
        sum
    }

    /// What elements add to the slope at a part of the step by not following the straight piece of this round.
    fn slope_of_bends(&self, elements: &[Element], share: f64, part: f64) -> f64 {
        let mut sum = 0.0;
        for &at in &self.bent {
            let element = &elements[at];
            let [a, b] = element.nodes;
            let step = self.right[a] - self.right[b];
            if step == 0.0 {
                continue;
            }
            let v = self.voltage[a] - self.voltage[b];
            let there = v + part * step;
            let beside = match element.law {
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

    /// Current of an element at a voltage, from its first node to its second.
    fn current_at(&self, at: usize, law: Law, v: f64, share: f64) -> f64 {
        match law {
            Law::Current(amps) if amps <= 0.0 => amps,
            Law::Current(amps) if self.supplied[at] => amps * share,
            Law::Power(power) if power > 0.0 && self.supplied[at] => power * share / v,
            Law::Current(_) | Law::Power(_) => 0.0,
            law => law
                .piece(v)
                .map_or(0.0, |(slope, intercept)| slope * v + intercept),
        }
    }

    /// Current of an element that is given, whatever the voltage; nothing of one that would drive it into a gap.
    fn given(&self, element: &Element, amps: f64) -> f64 {
        let [a, b] = element.nodes;
        if self.component[a] == self.component[b] {
            amps
        } else {
            0.0
        }
    }

    /// Puts the equations together without loads, on the first pieces.
    fn assemble_cold(&mut self, elements: &[Element]) {
        self.factor.clear();
        self.right.fill(0.0);
        for (at, element) in elements.iter().enumerate() {
            let (slope, intercept) = match element.law {
                Law::Open => continue,
                Law::Current(amps) if amps <= 0.0 => (0.0, self.given(element, amps)),
                Law::Current(_) | Law::Power(_) => continue,
                law => law.first_piece().unwrap_or((0.0, 0.0)),
            };
            self.put(at, element, slope, intercept);
        }
        self.tie_references();
    }

    /// Puts together what stays the same in all rounds of Newton, and lists what does not.
    fn assemble_straight(&mut self, elements: &[Element], share: f64) {
        self.factor.clear();
        self.right.fill(0.0);
        self.bent.clear();
        self.asking.clear();
        for (at, element) in elements.iter().enumerate() {
            let (slope, intercept) = match element.law {
                Law::Open => continue,
                Law::Resistance(ohms) => (1.0 / ohms, 0.0),
                Law::Current(amps) if amps <= 0.0 => (0.0, self.given(element, amps)),
                Law::Current(_) | Law::Power(_) if !self.supplied[at] => continue,
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
            self.put(at, element, slope, intercept);
        }
        self.tie_references();
        let [value, diagonal, right] = &mut self.straight;
        self.factor.keep(value, diagonal);
        right.clone_from(&self.right);
    }

    /// Puts the equations of a round together, round the present voltages.
    fn assemble_bent(&mut self, elements: &[Element], share: f64) {
        let [value, diagonal, right] = &self.straight;
        self.factor.put_back(value, diagonal);
        self.right.copy_from_slice(right);
        for at in 0..self.bent.len() {
            let at = self.bent[at];
            let element = &elements[at];
            let [a, b] = element.nodes;
            let v = self.voltage[a] - self.voltage[b];
            let (slope, intercept) = match element.law {
                Law::Power(power) => {
                    let power = power * share;
                    (-power / (v * v), 2.0 * power / v)
                }
                law => law.piece(v).unwrap_or((0.0, 0.0)),
            };
            self.put(at, element, slope, intercept);
        }
    }

    fn put(&mut self, at: usize, element: &Element, slope: f64, intercept: f64) {
        let Some(slot) = self.slots[at] else { return };
        let [a, b] = element.nodes;
        if slope != 0.0 {
            self.factor.add_between(slot, slope);
        }
        if intercept != 0.0 {
            self.right[a] -= intercept;
            self.right[b] += intercept;
        }
    }

    /// No current leaves a component, so whatever ties its reference down carries none.
    fn tie_references(&mut self) {
        for (node, &component) in self.component.iter().enumerate() {
            if node == component {
                self.factor.add_to_reference(self.reference[node], 1.0);
            }
        }
    }

    fn find_components(&mut self, elements: &[Element], first: &[usize]) {
        for (at, c) in self.component.iter_mut().enumerate() {
            *c = at;
        }
        self.driven.fill(false);
        let component = &mut self.component;
        for element in elements {
            if element.law.ties() {
                let (a, b) = (
                    find(component, element.nodes[0]),
                    find(component, element.nodes[1]),
                );
                component[a.max(b)] = a.min(b);
            }
        }
        for node in 0..self.nodes {
            find(component, node);
            self.reference[node] = node;
        }
        for node in 0..self.nodes {
            component[node] = find(component, node);
        }
        for &node in first.iter().rev() {
            if node < self.nodes {
                self.reference[component[node]] = node;
            }
        }
        for element in elements {
            let [a, b] = element.nodes;
            let drives = element.law.drives() && (element.law.ties() || component[a] == component[b]);
            if drives {
                self.driven[component[a]] = true;
            }
        }
    }

    fn find_currents(&mut self, elements: &[Element], share: f64) {
        for (at, element) in elements.iter().enumerate() {
            let v = self.across(element);
            let tied = self.are_tied(element.nodes[0], element.nodes[1]);
            self.current[at] = match element.law {
                Law::Current(amps) if amps < 0.0 && !tied => 0.0,
                law => self.current_at(at, law, v, share),
            };
        }
    }

    /// Holds the answer against Kirchhoff's current law and the conservation of power.
    #[must_use]
    pub fn closure(&mut self, elements: &[Element]) -> Closure {
        let mut closure = Closure::default();
        self.right.fill(0.0);
        for (at, element) in elements.iter().enumerate() {
            let i = self.current[at];
            self.right[element.nodes[0]] += i;
            self.right[element.nodes[1]] -= i;
            closure.largest = closure.largest.max(i.abs());
            let mut book = |power: f64| {
                if power >= 0.0 {
                    closure.taken += power;
                } else {
                    closure.given -= power;
                }
            };
            let v = self.across(element);
            let inner = match element.law {
                Law::Source { emf, .. } | Law::Battery { emf, .. } | Law::Limited { emf, .. } => Some(emf),
                _ => None,
            };
            match inner {
                // What a source turns to heat inside is booked apart from what it gives.
                Some(emf) => {
                    book((v - emf) * i);
                    book(emf * i);
                }
                None => book(v * i),
            }
        }
        closure.residual = self.right.iter().fold(0.0_f64, |most, r| {
            if r.is_finite() {
                most.max(r.abs())
            } else {
                f64::INFINITY
            }
        });
        closure
    }
}

impl Closure {
    /// The residual over the largest current, or over 1 mA where everything is smaller.
    #[must_use]
    pub fn relative_residual(&self) -> f64 {
        self.residual / self.largest.max(LEAST_CURRENT)
    }
    /// Power given less power taken, over the power given, or over 1 mW where less is given.
    #[must_use]
    pub fn relative_power(&self) -> f64 {
        (self.given - self.taken) / self.given.max(LEAST_CURRENT)
    }
}

/// Representative of a node, its way there shortened.
fn find(parent: &mut [usize], mut node: usize) -> usize {
    while parent[node] != node {
        parent[node] = parent[parent[node]];
        node = parent[node];
    }
    node
}
