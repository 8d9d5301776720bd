//! Nodal analysis of a fixed set of elements: linear ones at once, constant-power loads by Newton from above.
//!
//! Unknowns are the node voltages. With conductances `G`, injected currents `I` and loads that take the power `P` at
//! the voltage `v` across them, the equation is `G·V + Σ P/v = I`. Its Jacobian `G − Σ P/v²` is symmetric. Newton starts
//! at the voltages with the power loads left out. As `P/v` is convex and a wiring network answers any current by a
//! fall of voltage, each round lands above the upper root, nearer than before: it converges to the upper root, the one
//! at which equipment really runs, or, where there is none, ends in a matrix that is not positive definite or in a
//! voltage at or below nothing. So failure to converge *is* the answer "this power cannot be delivered".

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
    /// Takes a current whatever the voltage, in amperes; gives it when negative.
    Current(f64),
    /// Takes a power whatever the voltage, in watts, not negative.
    Power(f64),
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
    idle: Vec<bool>,
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

/// Which loads an assembly holds.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asked {
    Nothing,
    Currents,
    All,
}

/// Below this voltage a load that asks for power or current is taken to be without supply.
pub const LEAST_SUPPLY: f64 = 0.5;
/// Most rounds of Newton; at the limit of what a feed can deliver each round only halves the distance.
const MOST_ROUNDS: usize = 60;
/// Currents below this do not count as the measure of a balance: 1 µA is far below what any part on a sheet draws.
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
            idle: vec![false; elements.len()],
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
        self.idle.get(element).copied().unwrap_or(true)
    }

    /// Whether anything conducting ties the node to a source.
    #[must_use]
    pub fn is_driven(&self, node: usize) -> bool {
        self.component.get(node).is_some_and(|&c| self.driven[c])
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

    /// Voltage of an element, first node to second.
    #[must_use]
    pub fn across(&self, element: &Element) -> f64 {
        let at = |n: usize| self.voltage.get(n).copied().unwrap_or(0.0);
        at(element.nodes[0]) - at(element.nodes[1])
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
        self.find_components(elements, first);
        self.idle.fill(false);
        self.assemble(elements, share, Asked::Nothing);
        if !self.factor.factor() {
            return Err(NoAnswer::Singular);
        }
        self.answer();
        let (mut any_current, mut any_power) = (false, false);
        for (at, element) in elements.iter().enumerate() {
            let (asks, any) = match element.law {
                Law::Power(power) => (power > 0.0, &mut any_power),
                Law::Current(amps) if amps >= 0.0 => (amps > 0.0, &mut any_current),
                _ => continue,
            };
            let [a, b] = element.nodes;
            // Without a closed way, without a source, or the wrong way round, it draws nothing.
            if asks && self.are_tied(a, b) && self.across(element) >= LEAST_SUPPLY {
                *any = true;
            } else {
                self.idle[at] = true;
            }
        }
        if any_current {
            self.assemble(elements, share, Asked::Currents);
            if !self.factor.factor() {
                return Err(NoAnswer::Singular);
            }
            self.answer();
            self.all_supplied(elements)?;
        }
        if any_power {
            self.newton(elements, share)?;
        }
        self.find_currents(elements, share);
        Ok(())
    }

    /// No load may be left below nothing: what it asks then cannot be delivered.
    fn all_supplied(&self, elements: &[Element]) -> Result<(), NoAnswer> {
        let starved = |(at, element): (usize, &Element)| {
            let asks = match element.law {
                Law::Power(_) => true,
                Law::Current(amps) => amps >= 0.0,
                _ => false,
            };
            asks && !self.idle[at] && self.across(element) <= 0.0
        };
        if elements.iter().enumerate().any(starved) {
            Err(NoAnswer::Infeasible)
        } else {
            Ok(())
        }
    }

    fn newton(&mut self, elements: &[Element], share: f64) -> Result<(), NoAnswer> {
        for _ in 0..MOST_ROUNDS {
            self.assemble(elements, share, Asked::All);
            if !self.factor.factor() {
                return Err(NoAnswer::Infeasible);
            }
            let mut moved = 0.0_f64;
            self.factor.solve(&mut self.right);
            for (v, new) in self.voltage.iter_mut().zip(&self.right) {
                moved = moved.max((*v - new).abs());
                *v = *new;
            }
            if !moved.is_finite() {
                return Err(NoAnswer::Infeasible);
            }
            self.all_supplied(elements)?;
            // What is left after a round is of the order of the square of its step.
            if moved < 1e-7 {
                return Ok(());
            }
        }
        Err(NoAnswer::Infeasible)
    }

    fn answer(&mut self) {
        self.factor.solve(&mut self.right);
        self.voltage.copy_from_slice(&self.right);
    }

    fn assemble(&mut self, elements: &[Element], share: f64, asked: Asked) {
        self.factor.clear();
        self.right.fill(0.0);
        for (at, element) in elements.iter().enumerate() {
            let [a, b] = element.nodes;
            let Some(slot) = self.slots[at] else { continue };
            match element.law {
                Law::Open => {}
                Law::Resistance(ohms) => self.factor.add_between(slot, 1.0 / ohms),
                Law::Source { emf, resistance } => {
                    self.factor.add_between(slot, 1.0 / resistance);
                    self.right[a] += emf / resistance;
                    self.right[b] -= emf / resistance;
                }
                Law::Current(amps) => {
                    let taken = amps >= 0.0;
                    let counts = if taken {
                        asked != Asked::Nothing && !self.idle[at]
                    } else {
                        true
                    };
                    if counts && self.component[a] == self.component[b] {
                        let amps = if taken { amps * share } else { amps };
                        self.right[a] -= amps;
                        self.right[b] += amps;
                    }
                }
                Law::Power(power) => {
                    if asked == Asked::All && !self.idle[at] {
                        let v = self.voltage[a] - self.voltage[b];
                        let power = power * share;
                        self.factor.add_between(slot, -power / (v * v));
                        self.right[a] -= 2.0 * power / v;
                        self.right[b] += 2.0 * power / v;
                    }
                }
            }
        }
        for (node, &component) in self.component.iter().enumerate() {
            if node == component {
                // No current leaves a component, so whatever ties its reference down carries none.
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
            if matches!(element.law, Law::Resistance(_) | Law::Source { .. }) {
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
            let drives = match element.law {
                Law::Source { emf, .. } => emf != 0.0,
                Law::Current(amps) => amps < 0.0 && component[a] == component[b],
                _ => false,
            };
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
                Law::Open => 0.0,
                Law::Resistance(ohms) => v / ohms,
                Law::Source { emf, resistance } => (v - emf) / resistance,
                Law::Current(amps) if amps < 0.0 && tied => amps,
                Law::Current(amps) if amps >= 0.0 && !self.idle[at] => amps * share,
                Law::Power(power) if !self.idle[at] => power * share / v,
                Law::Current(_) | Law::Power(_) => 0.0,
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
            match element.law {
                Law::Source { emf, resistance } => {
                    book(i * i * resistance);
                    book(emf * i);
                }
                Law::Resistance(ohms) => book(i * i * ohms),
                _ => book(self.across(element) * i),
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
