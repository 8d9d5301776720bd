//! The speaker side of a sheet as nodes and elements: everything that hangs on a speaker output, a coil, a crossover or a
//! capacitor, up to where it meets the supply. The supply, for alternating current one point, is node 0.

use super::element::{self, Element, Impedance, What};
use super::index::{By, Index};
use super::outputs::{self, Output};
use model::{PartKind, Role};
use ordered::Sort as _;

/// Sets of nodes that are one.
#[derive(Clone, Debug)]
pub(crate) struct Groups {
    parent: Vec<usize>,
}

impl Groups {
    pub(crate) fn new(count: usize) -> Self {
        Self {
            parent: (0..count).collect(),
        }
    }
    /// The least member of a node's set; a node that is not there is alone.
    pub(crate) fn find(&mut self, mut node: usize) -> usize {
        while let Some(&up) = self.parent.get(node) {
            if up == node {
                break;
            }
            let above = self.parent.get(up).copied().unwrap_or(up);
            if let Some(slot) = self.parent.get_mut(node) {
                *slot = above;
            }
            node = above;
        }
        node
    }
    pub(crate) fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.find(a), self.find(b));
        if let Some(slot) = self.parent.get_mut(a.max(b)) {
            *slot = a.min(b);
        }
    }
}

/// The point where supply and body meet.
pub(crate) const SUPPLY: usize = 0;

/// The network of a sheet's speaker side.
pub(crate) struct Network<'s> {
    pub(crate) index: Index<'s>,
    /// Number of nodes, the supply included.
    pub(crate) nodes: usize,
    /// The node of each terminal; `None` for those that have nothing to do with speakers.
    pub(crate) node_of: Vec<Option<usize>>,
    pub(crate) elements: Vec<Element>,
    pub(crate) outputs: Vec<Output>,
}

impl<'s> Network<'s> {
    pub(crate) fn new(index: Index<'s>) -> Self {
        let mut it = Self {
            nodes: 1,
            node_of: vec![None; index.spots.len()],
            elements: Vec::new(),
            outputs: Vec::new(),
            index,
        };
        it.reach();
        it.add_parts();
        outputs::find(&mut it);
        it
    }

    /// Whether a terminal is one point with the supply: a terminal of the supply, or the grounded leg of an output
    /// that does not float.
    fn is_grounded(&self, at: usize) -> bool {
        self.index.is_supply(at)
            || match (
                self.index.kind(at),
                self.index.spots.get(at).map(|spot| spot.role),
            ) {
                (Some(PartKind::Amplifier(amplifier)), Some(Role::SpeakerOut { channel, positive })) => {
                    outputs::is_ground_leg(amplifier, channel, positive)
                }
                _ => false,
            }
    }

    /// Finds the terminals that belong here, gives them nodes, and turns the runs between them into elements.
    fn reach(&mut self) {
        let mut seen = vec![false; self.index.spots.len()];
        let mut waiting: Vec<usize> = Vec::new();
        for (at, spot) in self.index.spots.iter().enumerate() {
            if matches!(
                spot.role,
                Role::SpeakerOut { .. } | Role::Coil { .. } | Role::SpeakerThrough
            ) {
                waiting.push(at);
            }
        }
        let mut joined = Groups::new(self.index.spots.len());
        let mut runs = Vec::new();
        while let Some(at) = waiting.pop() {
            match seen.get_mut(at) {
                Some(seen) if !*seen => *seen = true,
                _ => continue,
            }
            if self.is_grounded(at) {
                continue;
            }
            for link in self.index.links_at(at).filter(|link| link.is_closed()) {
                match link.by {
                    By::Run(run) => runs.push((run, link.a, link.b)),
                    By::Inside(_) => joined.join(link.a, link.b),
                }
                waiting.push(link.other(at));
            }
        }
        let mut number = vec![None; self.index.spots.len()];
        for at in 0..seen.len() {
            if !seen.get(at).copied().unwrap_or(false) {
                continue;
            }
            let node = if self.is_grounded(at) {
                SUPPLY
            } else {
                let root = joined.find(at);
                let nodes = &mut self.nodes;
                match number.get_mut(root) {
                    Some(slot) => *slot.get_or_insert_with(|| {
                        *nodes += 1;
                        *nodes - 1
                    }),
                    None => SUPPLY,
                }
            };
            if let Some(slot) = self.node_of.get_mut(at) {
                *slot = Some(node);
            }
        }
        runs.order();
        runs.dedup();
        for (id, a, b) in runs {
            if let (Some(a), Some(b), Some(run)) =
                (self.node(a), self.node(b), self.index.sheet.runs.get(&id))
            {
                self.add(a, b, What::Lead(id), Impedance::resistance(element::lead(run)));
            }
        }
    }

    pub(crate) fn node(&self, at: usize) -> Option<usize> {
        self.node_of.get(at).copied().flatten()
    }

    pub(crate) fn add(&mut self, a: usize, b: usize, what: What, band: Impedance) {
        self.add_filter(a, b, what, band, 0.0);
    }

    /// An inductor or capacitor of a filter that divides at an angular frequency.
    fn add_filter(&mut self, a: usize, b: usize, what: What, band: Impedance, corner: f64) {
        self.elements.push(Element {
            a,
            b,
            what,
            band,
            rated: 0.0,
            dc: 0.0,
            corner,
        });
    }

    fn add_parts(&mut self) {
        let sheet = self.index.sheet;
        for (id, part) in &sheet.parts {
            let node = |name: &str| self.index.find(*id, name).and_then(|at| self.node(at));
            match &part.is {
                PartKind::Speaker(speaker) => {
                    let legs: &[(u8, &str, &str)] = if speaker.coils <= 1 {
                        &[(1, "+", "-")]
                    } else {
                        &[(1, "a+", "a-"), (2, "b+", "b-")]
                    };
                    let ends: Vec<_> = legs
                        .iter()
                        .map(|(coil, plus, minus)| (*coil, node(plus), node(minus)))
                        .collect();
                    for (coil, plus, minus) in ends {
                        if let (Some(a), Some(b)) = (plus, minus) {
                            self.elements.push(Element {
                                a,
                                b,
                                what: What::Coil { speaker: *id, coil },
                                band: element::coil_band(speaker),
                                rated: element::rated(speaker),
                                dc: element::coil_dc(speaker),
                                corner: 0.0,
                            });
                        }
                    }
                }
                PartKind::Crossover(crossover) => {
                    let (Some(plus), Some(minus), Some(low), Some(high)) =
                        (node("in+"), node("in-"), node("low+"), node("high+"))
                    else {
                        continue;
                    };
                    let (henries, farads, corner) = element::crossover(crossover);
                    let coil = Impedance {
                        henries,
                        ..Impedance::default()
                    };
                    let capacitor = Impedance {
                        elastance: 1.0 / farads,
                        ..Impedance::default()
                    };
                    self.add_filter(plus, low, What::Inductor(*id), coil, corner);
                    self.add_filter(plus, high, What::Capacitor(*id), capacitor, corner);
                    if crossover.order > 1 {
                        self.add_filter(low, minus, What::Capacitor(*id), capacitor, corner);
                        self.add_filter(high, minus, What::Inductor(*id), coil, corner);
                    }
                }
                PartKind::InlineCapacitor(capacitor) => {
                    if let (Some(a), Some(b)) = (node("1"), node("2")) {
                        let elastance = element::elastance(capacitor);
                        let capacitor = Impedance {
                            elastance,
                            ..Impedance::default()
                        };
                        // Its corner follows from the coil behind it: 4 Ω as most have.
                        self.add_filter(a, b, What::Capacitor(*id), capacitor, elastance / 4.0);
                    }
                }
                _ => {}
            }
        }
    }
}
