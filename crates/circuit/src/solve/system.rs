//! Nodal analysis of a fixed set of elements: linear ones, sources with a bend in their characteristic, and loads of
//! constant power, all settled together by Newton from above.
//!
//! Unknowns are the node voltages. With conductances `G`, injected currents `I` and loads that take the power `P` at
//! the voltage `v` across them, the equation is `G·V + Σ P/v = I`. Its Jacobian `G − Σ P/v²` is symmetric. Newton starts
//! at the voltages with next to no load. As `P/v` is convex and a wiring network answers any current by a
//! fall of voltage, each round lands above the upper root, nearer than before: it converges to the upper root, the one
//! at which equipment really runs, or, where there is none, ends in a matrix that is not positive definite or in a
//! voltage at or below nothing. So failure to converge *is* the answer "this power cannot be delivered", as long as no source
//! would hold on harder lower down; where one would, see [`System::come_down`]. A later
//! solution of the same network starts at the one before and falls back to the cold start; at the lower root the matrix is not
//! positive definite, so that one is never taken.
//!
//! The cold start puts in place of each load a resistance so large that the load hardly shows, so small that the leakage of a diode
//! that blocks does not feed it: which loads have a supply is read off there, with every source and diode on the piece on which it really is.
//! It has one answer, wherever it is looked for from: first from that of the cold start before, where there was one.
//!
//! Sources bend: each round takes the straight piece on which the voltage of the round before lies. The
//! characteristics are continuous and monotone; a step that jumps over a bend is cut short where it would begin to lead
//! away again, so that no round goes to and fro.
//!
//! Most of a network is wire: elements whose law stays while loads, contacts and sources change theirs. What only such *steady*
//! elements touch is eliminated once; rounds see the smaller network that is left between the nodes of the others. The nodes
//! left out carry no current of their own, so that their voltages lie between those of their neighbours and move no further than these do.

mod closure;
mod equations;
mod rounds;
mod tied;

pub use closure::Closure;

use super::factor::{Factor, HalfForm, Slot};
use super::law::{Element, Law};

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
    /// Elements whose law is a resistance or open, and stays so until [`System::steady_changed`].
    steady: Vec<usize>,
    /// All other elements.
    moving: Vec<usize>,
    /// Nodes of elements that are not steady, and those that are wanted as references, rising.
    touched: Vec<usize>,
    /// Whether the steady elements are laid as they are now.
    laid: bool,
    /// Piece of each node: what steady elements tie together. Pieces are numbered by their lowest nodes, rising.
    piece: Vec<usize>,
    /// Lowest node of each piece.
    lowest: Vec<usize>,
    /// The network of the steady elements as seen from the others: matrix, diagonal.
    steady_part: [Vec<f64>; 2],
    /// The share at which the last answer was found.
    share: f64,
    /// Component of each piece over all conducting elements, as the lowest of its pieces, which represents it.
    component: Vec<usize>,
    /// Whether a component holds a source, by representative.
    driven: Vec<bool>,
    /// Reference node of each component, by representative.
    reference: Vec<usize>,
    /// The node that is tied down in the equations of each component, by representative: its reference, or where nothing can drive it
    /// any node that is not left out. None where the tie is laid with the steady elements.
    tied_down: Vec<Option<usize>>,
    /// Where the nodes of each element that is not steady stand among those that are not left out.
    ends: Vec<[u32; 2]>,
    /// Of the nodes that are not left out: the right side, which becomes the step, and the voltages.
    right: Vec<f64>,
    level: Vec<f64>,
    /// Of the same nodes: where a descent stands from the voltages with next to no load.
    above: Vec<f64>,
    /// How loads are taken in the rounds at hand.
    taken: Taken,
    /// Currents of loads while they are held, by element.
    held: Vec<f64>,
    /// Where the ties of references stand.
    ties: Vec<usize>,
    /// Voltages of all nodes at the last answer; where it is not spread, only of those that elements that are not steady touch and those
    /// that are watched.
    voltage: Vec<f64>,
    spread: bool,
    current: Vec<f64>,
    supplied: Vec<bool>,
    warm: bool,
    /// The right side of what is straight whatever the voltages, put together once for all rounds; its matrix stands in the factor.
    straight: Vec<f64>,
    /// Elements whose straight piece is another one at other voltages.
    bent: Vec<usize>,
    /// Loads that are supplied.
    asking: Vec<usize>,
    /// Loads that are followed with the matrix of a round: the voltage it was made at, and the power.
    bent_loads: Vec<(usize, f64, f64)>,
    /// Of the nodes that are not left out: where following began.
    begun: Vec<f64>,
    /// Of the same nodes: the voltages with next to no load as last found, if they were.
    trial: Vec<f64>,
    tried: bool,
}

/// How rounds of Newton take loads that ask for current or power.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Taken {
    /// As they ask.
    #[default]
    AsAsked,
    /// Each as [`TRIAL`], whatever it asks.
    OnTrial,
    /// Each as a current that is given.
    Held,
}

/// Below this voltage a load that asks for power or current is taken to be without supply.
pub const LEAST_SUPPLY: f64 = 0.5;
/// Conductance in siemens that stands for a load while it is found out what has a supply: a thousand times [`super::LEAKAGE`], so
/// that behind a diode that blocks there is a tenth of [`LEAST_SUPPLY`] at most; at 12 V it takes 12 mA.
const TRIAL: f64 = 1e-3;
impl System {
    /// Prepares for elements between these nodes; their laws may change later, their nodes may not.
    #[must_use]
    pub fn new(nodes: usize, elements: &[Element]) -> Self {
        Self::with_steady(nodes, elements, &vec![false; elements.len()], &[])
    }

    /// As [`System::new`]; elements marked `steady` stay resistances or open from one [`System::steady_changed`] to the next.
    /// `first` names the nodes that will be wanted as references: of others, voltages may be told against another node of their component.
    pub(crate) fn with_steady(nodes: usize, elements: &[Element], steady: &[bool], first: &[usize]) -> Self {
        let pairs: Vec<(usize, usize)> = elements.iter().map(|e| (e.nodes[0], e.nodes[1])).collect();
        let (steady, moving): (Vec<usize>, Vec<usize>) =
            (0..elements.len()).partition(|&at| steady.get(at) == Some(&true));
        let mut late = vec![false; nodes];
        let nodes_of_moving = moving.iter().flat_map(|&at| elements[at].nodes);
        for node in nodes_of_moving.chain(first.iter().copied()) {
            if let Some(late) = late.get_mut(node) {
                *late = true;
            }
        }
        let factor = Factor::with_late(nodes, &pairs, &late);
        let mut ends = vec![[0_u32; 2]; elements.len()];
        let narrow = |place: usize| u32::try_from(place).ok();
        for &at in &moving {
            let [a, b] = elements[at]
                .nodes
                .map(|node| factor.late_place(node).and_then(narrow));
            if let (Some(a), Some(b)) = (a, b) {
                ends[at] = [a, b];
            }
        }
        let slots = pairs.iter().map(|&(a, b)| factor.slot(a, b)).collect();
        Self {
            nodes,
            right: vec![0.0; factor.late()],
            level: vec![0.0; factor.late()],
            above: vec![0.0; factor.late()],
            taken: Taken::AsAsked,
            held: vec![0.0; elements.len()],
            factor,
            slots,
            steady,
            moving,
            touched: (0..nodes).filter(|&node| late[node]).collect(),
            laid: false,
            piece: (0..nodes).collect(),
            lowest: (0..nodes).collect(),
            steady_part: Default::default(),
            share: 1.0,
            component: (0..nodes).collect(),
            driven: vec![false; nodes],
            reference: (0..nodes).collect(),
            tied_down: vec![None; nodes],
            ends,
            ties: Vec::new(),
            voltage: vec![0.0; nodes],
            spread: true,
            current: vec![0.0; elements.len()],
            supplied: vec![false; elements.len()],
            warm: false,
            straight: Vec::new(),
            bent: Vec::new(),
            asking: Vec::new(),
            bent_loads: Vec::new(),
            begun: Vec::new(),
            trial: Vec::new(),
            tried: false,
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

    /// Current of each element, from its first node to its second, as last found.
    #[must_use]
    pub fn currents(&self) -> &[f64] {
        &self.current
    }

    /// Whether a load had no supply and was left out.
    #[must_use]
    pub fn is_idle(&self, element: usize) -> bool {
        !self.supplied.get(element).copied().unwrap_or(false)
    }

    /// The form uᵀ A⁻¹ v with the matrix factored last; see [`Factor::form`]. For lists whose numbers add up to nothing and whose
    /// nodes are tied together it does not depend on the reference.
    #[must_use]
    pub fn form(&self, u: &[(usize, f64)], v: &[(usize, f64)]) -> f64 {
        self.factor.form(u, v)
    }

    /// One of the two sides of [`System::form`], for use in several.
    pub(crate) fn half_form(&self, u: &[(usize, f64)]) -> HalfForm {
        self.factor.half_form(u)
    }

    /// The form of two sides.
    pub(crate) fn whole_form(&self, left: &HalfForm, right: &HalfForm) -> f64 {
        self.factor.whole_form(left, right)
    }

    /// With the matrix factored last: the voltages of all nodes for currents that enter at these, nodes of elements that are not steady,
    /// and add up to nothing.
    pub(crate) fn answer_to(&mut self, currents: &[(usize, f64)]) -> Vec<f64> {
        let mut right = vec![0.0; self.nodes];
        for (node, amps) in currents {
            if let Some(right) = right.get_mut(*node) {
                *right += amps;
            }
        }
        self.factor.solve(&mut right);
        right
    }

    /// With the matrix factored last: the voltage of each node for 1 A that enters there, and of either node of each element
    /// for 1 A that enters at the other; 1 A always leaves at the reference of their component, which is held to
    /// nothing by 1 Ω.
    #[must_use]
    pub(crate) fn transfer(&self) -> (Vec<f64>, Vec<f64>) {
        self.factor.inverse_on_pattern(&self.slots)
    }

    /// Voltage of an element, first node to second.
    #[must_use]
    pub fn across(&self, element: &Element) -> f64 {
        let at = |n: usize| self.voltage.get(n).copied().unwrap_or(0.0);
        at(element.nodes[0]) - at(element.nodes[1])
    }

    /// Forgets the last answer: the next one starts cold, at the voltages with next to no load, which are looked for from those of the
    /// cold start before. To be called when an element has come to tie its nodes together or no longer does.
    pub fn restart(&mut self) {
        self.warm = false;
    }

    /// Forgets all that was solved, so that the next answer is to the last bit that of a system which has solved nothing yet.
    pub(crate) fn forget(&mut self) {
        self.restart();
        self.steady_changed();
        self.tried = false;
    }

    /// Tells that laws of steady elements have changed. Where one has come to tie its nodes together or no longer does, the next
    /// answer must be started cold as well.
    pub(crate) fn steady_changed(&mut self) {
        self.laid = false;
    }

    /// Solves. `first` names nodes that are to be references, in order of preference. All powers and currents asked
    /// for are multiplied by `share`.
    ///
    /// # Errors
    /// When the power asked cannot be delivered, or the network could not be factored.
    pub fn solve(&mut self, elements: &[Element], first: &[usize], share: f64) -> Result<(), NoAnswer> {
        self.solve_voltages(elements, first, share)?;
        self.find_currents(elements);
        Ok(())
    }

    /// As [`System::solve`], without the currents, and without voltages that neither belong to an element that is not steady nor are
    /// watched: those come with the currents.
    pub(crate) fn solve_voltages(
        &mut self,
        elements: &[Element],
        first: &[usize],
        share: f64,
    ) -> Result<(), NoAnswer> {
        if elements.len() != self.slots.len() {
            return Err(NoAnswer::Singular);
        }
        if !self.laid {
            self.laid = self.lay_steady(elements);
            if !self.laid {
                return Err(NoAnswer::Singular);
            }
        }
        let mut found = Err(NoAnswer::Infeasible);
        if self.warm {
            found = self.newton(elements, share);
        }
        if found.is_err() {
            found = self.start_cold(elements, first);
            if found.is_ok() {
                self.above.copy_from_slice(&self.level);
                found = self.newton(elements, share);
                if found.is_err() {
                    found = self.come_down(elements, share);
                }
            }
        }
        self.warm = found.is_ok();
        self.share = share;
        self.factor.spread_to_watched(&self.level, &mut self.voltage);
        self.spread = false;
        found
    }

    /// Names nodes whose voltages are wanted after [`System::solve_voltages`], besides those of elements that are not steady.
    pub(crate) fn watch(&mut self, nodes: impl Iterator<Item = usize>) {
        self.factor.watch(nodes);
    }

    /// Finds the voltages of all nodes at the last answer.
    fn spread(&mut self) {
        if !self.spread {
            self.factor.spread(&self.level, &mut self.voltage);
            self.spread = true;
        }
    }

    /// Where the nodes of an element that is not steady stand among those that are not left out.
    fn ends_of(&self, at: usize) -> [usize; 2] {
        self.ends[at].map(|end| end as usize)
    }

    /// Voltage of an element that is not steady, first node to second, in the round at hand.
    fn level_across(&self, at: usize) -> f64 {
        let [a, b] = self.ends_of(at);
        self.level[a] - self.level[b]
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
        if self.are_tied(a, b) { amps } else { 0.0 }
    }

    /// Finds the currents of all elements at the last answer.
    pub(crate) fn find_currents(&mut self, elements: &[Element]) {
        self.spread();
        for (at, element) in elements.iter().enumerate() {
            self.current[at] = self.current_of(at, element);
        }
    }

    /// Sets all currents to nothing.
    pub(crate) fn clear_currents(&mut self) {
        self.spread();
        self.current.fill(0.0);
    }

    /// Current of an element at the last answer, from its first node to its second.
    pub(crate) fn current_of(&self, at: usize, element: &Element) -> f64 {
        let tied = self.are_tied(element.nodes[0], element.nodes[1]);
        match element.law {
            Law::Current(amps) if amps < 0.0 && !tied => 0.0,
            law => self.current_at(at, law, self.across(element), self.share),
        }
    }
}
