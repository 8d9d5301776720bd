//! A linear network that is factored once, and what becomes of it when a few of its elements change.
//!
//! With the conductances `A` and one element changed by Δg between the nodes of `u` the inverse is
//! `A⁻¹ − k·w·wᵀ`, with `w = A⁻¹u` and `k = Δg / (1 + Δg·uᵀw)` (J. Sherman and W. J. Morrison, 1950; M. A. Woodbury, 1950; from
//! memory). Changes are taken one after the other, each on what those before it have left, so that each costs one walk
//! through the factor and one pass over the nodes.
//!
//! - **Cuts.** `1 + Δg·uᵀw` is the share of the current between the nodes that goes other ways. Where it is nothing the element
//!   was the only way: no current went through it, so that nothing changes but that the far side hangs in the air. `w` tells
//!   the two sides apart: it is constant on each.
//! - **Pieces.** Each piece of the network is tied down at one node by 1 S that carries nothing. Where a change joins two pieces
//!   one of the ties is taken away, as a change like the others.

use crate::narrow::narrow;
use crate::solve::{Factor, Slot, join, shorten};
use ordered::OrderedMap;

/// Below this share of other ways an element was the only way. Rounding leaves some 1e-11; a milliohm beside a kilohm has 1e-6.
const ONLY_WAY: f64 = 1e-9;
/// No second node: the change is to the reference.
const NOWHERE: u32 = u32::MAX;
/// Most changes that can cut something off.
const MOST_CUTS: usize = 32;

/// What an element is once it is linear: the current from first node to second is conductance · volts + given.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Straight {
    pub(crate) conductance: f64,
    pub(crate) given: f64,
}

impl Straight {
    pub(crate) fn resistance(ohms: f64) -> Self {
        Self {
            conductance: 1.0 / ohms,
            given: 0.0,
        }
    }
    pub(crate) fn at(self, volts: f64) -> f64 {
        self.conductance * volts + self.given
    }
}

/// The order of elimination of a network, made once for all that is asked of it.
#[derive(Clone, Debug)]
pub(crate) struct Pattern {
    factor: Factor,
    slots: Vec<Option<Slot>>,
    /// Place of each node in the order of elimination; vectors are kept in that order.
    place: Vec<u32>,
    ends: Vec<[u32; 2]>,
}

impl Pattern {
    pub(crate) fn new(nodes: usize, ends: &[[usize; 2]]) -> Self {
        let pairs: Vec<(usize, usize)> = ends.iter().map(|e| (e[0], e[1])).collect();
        let factor = Factor::new(nodes, &pairs);
        let place: Vec<u32> = (0..nodes)
            .map(|node| narrow(factor.late_place(node).unwrap_or(0)))
            .collect();
        let at = |node: usize| place.get(node).copied().unwrap_or(0);
        Self {
            slots: pairs.iter().map(|&(a, b)| factor.slot(a, b)).collect(),
            ends: ends.iter().map(|e| e.map(at)).collect(),
            factor,
            place,
        }
    }
}

/// A factored network with its solution.
#[derive(Clone, Debug)]
pub(crate) struct Linear {
    factor: Factor,
    place: Vec<u32>,
    ends: Vec<[u32; 2]>,
    pub(crate) laws: Vec<Straight>,
    volts: Vec<f64>,
    /// The piece of each node, by its lowest place, and where each piece is tied down.
    piece: Vec<usize>,
    tie: Vec<u32>,
}

impl Linear {
    /// Of elements with these laws. `first` names nodes that are to be tied down where their pieces are. `None` where the numbers are out of
    /// all proportion.
    pub(crate) fn new(pattern: &Pattern, laws: Vec<Straight>, first: &[usize]) -> Option<Self> {
        let mut factor = pattern.factor.clone();
        factor.clear();
        let size = pattern.place.len();
        let mut piece: Vec<usize> = (0..size).collect();
        let mut right = vec![0.0; size];
        for ((law, slot), ends) in laws.iter().zip(&pattern.slots).zip(&pattern.ends) {
            let Some(slot) = slot else { continue };
            let [a, b] = ends.map(|end| end as usize);
            if law.conductance > 0.0 {
                factor.add_between(*slot, law.conductance);
                join(&mut piece, a, b);
            }
            right[a] -= law.given;
            right[b] += law.given;
        }
        shorten(&mut piece);
        let mut tie: Vec<u32> = (0..size).map(narrow).collect();
        for &node in first.iter().rev() {
            if let Some(&place) = pattern.place.get(node) {
                tie[piece[place as usize]] = place;
            }
        }
        for (at, &its) in piece.iter().enumerate() {
            if at == its {
                factor.add_to_late(tie[at] as usize, 1.0);
            }
        }
        if !factor.factor() {
            return None;
        }
        factor.solve_late(&mut right);
        Some(Self {
            factor,
            place: pattern.place.clone(),
            ends: pattern.ends.clone(),
            laws,
            volts: right,
            piece,
            tie,
        })
    }

    /// The places of two nodes.
    pub(crate) fn places(&self, nodes: [usize; 2]) -> [u32; 2] {
        nodes.map(|node| self.place.get(node).copied().unwrap_or(0))
    }

    /// The places of an element's nodes.
    pub(crate) fn ends(&self, element: usize) -> [u32; 2] {
        self.ends.get(element).copied().unwrap_or([0; 2])
    }

    /// `A⁻¹u` for 1 A that enters at the first place and leaves at the second.
    pub(crate) fn unit(&self, ends: [u32; 2]) -> Vec<f64> {
        let mut w = vec![0.0; self.place.len()];
        for (end, sign) in ends.into_iter().zip([1.0, -1.0]) {
            if let Some(at) = w.get_mut(end as usize) {
                *at += sign;
            }
        }
        self.factor.solve_late(&mut w);
        w
    }

    /// The resistance between two places.
    pub(crate) fn own_ohms(&self, ends: [u32; 2]) -> f64 {
        between(&self.unit(ends), ends)
    }

    /// The case in which nothing has changed.
    pub(crate) fn as_is(&self) -> Case<'_> {
        Case {
            of: self,
            volts: self.volts.clone(),
            changes: Vec::new(),
            laws: Vec::new(),
            joined: Vec::new(),
            cuts: 0,
            sides: Vec::new(),
            lost: false,
        }
    }
}

/// Numbered as they come: the same ties give the same numbers.
pub(crate) fn numbered(islands: impl Iterator<Item = (usize, u32)>) -> Vec<u32> {
    let mut numbers: OrderedMap<(usize, u32), u32> = OrderedMap::new();
    islands
        .map(|island| {
            let next = narrow(numbers.len());
            *numbers.entry(island).or_insert(next)
        })
        .collect()
}

/// The volts between two places of a vector.
fn between(w: &[f64], ends: [u32; 2]) -> f64 {
    let at = |end: u32| w.get(end as usize).copied().unwrap_or(0.0);
    at(ends[0]) - at(ends[1])
}

/// A change that was taken: the inverse lost k·w·wᵀ.
#[derive(Clone, Debug)]
struct Change {
    w: Vec<f64>,
    k: f64,
}

/// What a network has become by a few changes.
#[derive(Clone, Debug)]
pub(crate) struct Case<'l> {
    of: &'l Linear,
    volts: Vec<f64>,
    changes: Vec<Change>,
    /// Elements whose law has changed, with what it is now.
    laws: Vec<(usize, Straight)>,
    /// Pieces that have been joined: the first has become part of the second.
    joined: Vec<(usize, usize)>,
    cuts: usize,
    /// By place, on which side of each cut it is; empty before the first.
    sides: Vec<u32>,
    /// Whether the changes have gone beyond what can be told in this way.
    lost: bool,
}

impl Case<'_> {
    /// Whether the changes have gone beyond what can be told in this way.
    pub(crate) fn is_lost(&self) -> bool {
        self.lost
    }

    /// How many changes were taken.
    pub(crate) fn rank(&self) -> usize {
        self.changes.len()
    }

    fn piece(&self, place: u32) -> usize {
        let mut at = self.of.piece.get(place as usize).copied().unwrap_or(0);
        // Each joins one piece to another for good, so that this ends.
        for (from, to) in &self.joined {
            if *from == at {
                at = *to;
            }
        }
        at
    }

    fn side(&self, place: u32) -> u32 {
        self.sides.get(place as usize).copied().unwrap_or(0)
    }

    /// Whether anything that conducts ties two places together.
    pub(crate) fn are_tied(&self, ends: [u32; 2]) -> bool {
        self.piece(ends[0]) == self.piece(ends[1]) && self.side(ends[0]) == self.side(ends[1])
    }

    /// The volts between two places; `None` where nothing ties them together.
    pub(crate) fn volts(&self, ends: [u32; 2]) -> Option<f64> {
        self.are_tied(ends).then(|| between(&self.volts, ends))
    }

    /// The volts of all places.
    pub(crate) fn all_volts(&self) -> &[f64] {
        &self.volts
    }

    /// A number for each place; those that are tied together have the same one.
    pub(crate) fn island(&self, place: u32) -> (usize, u32) {
        (self.piece(place), self.side(place))
    }

    /// Whether exactly those places are tied together that were before any change.
    pub(crate) fn is_tied_as_before(&self) -> bool {
        self.cuts == 0 && self.joined.is_empty()
    }

    /// [`Case::island`] of all places in turn.
    pub(crate) fn islands_one_by_one(&self) -> impl Iterator<Item = (usize, u32)> + '_ {
        (0..self.volts.len()).map(|place| self.island(narrow(place)))
    }

    /// A number for each place; those that are tied together have the same one, and no others.
    pub(crate) fn islands(&self) -> Vec<u32> {
        let bits = u32::try_from(self.cuts).unwrap_or(u32::MAX);
        let whole = narrow(self.volts.len());
        if bits < whole.leading_zeros() {
            return self
                .islands_one_by_one()
                .map(|(piece, side)| narrow(piece) << bits | side)
                .collect();
        }
        // Too many cuts to be told by their bits.
        numbered(self.islands_one_by_one())
    }

    /// What an element is now.
    pub(crate) fn law(&self, element: usize) -> Straight {
        let changed = self.laws.iter().rev().find(|(at, _)| *at == element);
        changed.map_or_else(
            || self.of.laws.get(element).copied().unwrap_or_default(),
            |(_, law)| *law,
        )
    }

    /// The current of an element, first node to second.
    pub(crate) fn current(&self, element: usize) -> f64 {
        let ends = self.of.ends(element);
        self.volts(ends).map_or(0.0, |volts| self.law(element).at(volts))
    }

    /// What each change took from the inverse: k·w·wᵀ.
    pub(crate) fn changes(&self) -> impl Iterator<Item = (f64, &[f64])> {
        self.changes.iter().map(|change| (change.k, change.w.as_slice()))
    }

    /// Makes something else of an element. `unit` is [`Linear::unit`] of it, where somebody has it already.
    pub(crate) fn put(&mut self, element: usize, law: Straight, unit: Option<&[f64]>) {
        let now = self.law(element);
        let more = Straight {
            conductance: law.conductance - now.conductance,
            given: law.given - now.given,
        };
        self.laws.push((element, law));
        self.change(self.of.ends(element), more, unit);
    }

    /// Adds an element between two places.
    pub(crate) fn add(&mut self, ends: [u32; 2], law: Straight) {
        self.change(ends, law, None);
    }

    fn change(&mut self, ends: [u32; 2], more: Straight, unit: Option<&[f64]>) {
        if ends[0] == ends[1] || (more.conductance == 0.0 && more.given == 0.0) {
            return;
        }
        let pieces = ends.map(|end| self.piece(end));
        if pieces[0] == pieces[1] && self.side(ends[0]) != self.side(ends[1]) {
            // What was cut off is joined on again: sides are no longer what they were.
            self.lost |= more.conductance > 0.0;
            return;
        }
        let bridges = pieces[0] != pieces[1];
        if bridges && more.conductance <= 0.0 {
            return;
        }
        self.take(ends, more, unit);
        if bridges {
            // Both ends are on one side from now on, and what is on which side of either piece stays told apart.
            let turn = self.side(ends[0]) ^ self.side(ends[1]);
            if turn != 0 {
                for place in 0..self.sides.len() {
                    if self.piece(narrow(place)) == pieces[0]
                        && let Some(side) = self.sides.get_mut(place)
                    {
                        *side ^= turn;
                    }
                }
            }
            let free = narrow(pieces[0]);
            self.joined.push((pieces[0], pieces[1]));
            let tie = self.of.tie.get(free as usize).copied().unwrap_or(0);
            let loosen = Straight {
                conductance: -1.0,
                given: 0.0,
            };
            self.take([tie, NOWHERE], loosen, None);
        }
    }

    /// One change of the inverse and the solution.
    fn take(&mut self, ends: [u32; 2], more: Straight, unit: Option<&[f64]>) {
        let mut w = unit.map_or_else(|| self.of.unit(ends), <[f64]>::to_vec);
        for change in &self.changes {
            let by = change.k * between(&change.w, ends);
            if by != 0.0 {
                for (w, other) in w.iter_mut().zip(&change.w) {
                    *w -= by * other;
                }
            }
        }
        let own = between(&w, ends);
        let others = 1.0 + more.conductance * own;
        if others < ONLY_WAY {
            self.cut(ends, &w, own);
            return;
        }
        let by = (more.given + more.conductance * between(&self.volts, ends)) / others;
        if !by.is_finite() {
            self.lost = true;
            return;
        }
        for (volts, w) in self.volts.iter_mut().zip(&w) {
            *volts -= by * w;
        }
        if more.conductance != 0.0 {
            self.changes.push(Change {
                k: more.conductance / others,
                w,
            });
        }
    }

    fn cut(&mut self, ends: [u32; 2], w: &[f64], own: f64) {
        if self.cuts >= MOST_CUTS || ends[1] == NOWHERE {
            self.lost = true;
            return;
        }
        if self.sides.is_empty() {
            self.sides = vec![0; w.len()];
        }
        let piece = self.piece(ends[0]);
        let reference = w.get(ends[1] as usize).copied().unwrap_or(0.0);
        for place in 0..w.len() {
            if self.piece(narrow(place)) == piece
                && let (Some(side), Some(w)) = (self.sides.get_mut(place), w.get(place))
                && (w - reference) / own > 0.5
            {
                *side |= 1 << self.cuts;
            }
        }
        self.cuts += 1;
    }
}
