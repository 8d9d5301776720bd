//! What is tied to what: pieces that steady elements tie together, found once, and components of pieces that all conducting
//! elements tie together as things stand; against which node voltages of a component are told.

use super::System;
use crate::solve::components::{join, shorten};
use crate::solve::law::{Element, Law};

impl System {
    /// Component of a node, by representative.
    fn component_of(&self, node: usize) -> Option<usize> {
        self.component.get(*self.piece.get(node)?).copied()
    }

    /// Whether anything conducting ties the node to a source.
    #[must_use]
    pub fn is_driven(&self, node: usize) -> bool {
        self.component_of(node).is_some_and(|c| self.driven[c])
    }

    /// Which nodes are the reference of their component.
    #[must_use]
    pub fn references(&self) -> Vec<bool> {
        let mut out = vec![false; self.nodes];
        for (piece, &component) in self.component.iter().enumerate() {
            if piece == component {
                out[self.reference[piece]] = true;
            }
        }
        out
    }

    /// Whether conducting elements tie the two nodes together.
    #[must_use]
    pub fn are_tied(&self, a: usize, b: usize) -> bool {
        self.component_of(a)
            .is_some_and(|c| self.component_of(b) == Some(c))
    }

    /// Whether voltages of the node's component are told against it.
    #[must_use]
    pub(crate) fn is_reference(&self, node: usize) -> bool {
        self.component_of(node)
            .is_some_and(|component| self.tied_down[component].unwrap_or(self.reference[component]) == node)
    }

    /// Finds the pieces. False when a steady element is neither a resistance nor open.
    pub(super) fn find_pieces(&mut self, elements: &[Element]) -> bool {
        for (at, piece) in self.piece.iter_mut().enumerate() {
            *piece = at;
        }
        for &at in &self.steady {
            let [a, b] = elements[at].nodes;
            match elements[at].law {
                Law::Open => {}
                Law::Resistance(_) => join(&mut self.piece, a, b),
                _ => return false,
            }
        }
        shorten(&mut self.piece);
        // Each node names the lowest of its piece, which therefore has its number when the others ask for it.
        self.lowest.clear();
        for node in 0..self.nodes {
            let lowest = self.piece[node];
            self.piece[node] = if lowest == node {
                self.lowest.push(node);
                self.lowest.len() - 1
            } else {
                self.piece[lowest]
            };
        }
        let pieces = self.lowest.len();
        // As many as before are the same as before, save where the next answer is started cold; components then stay as they are.
        if self.component.len() != pieces {
            self.component.clear();
            self.component.extend(0..pieces);
            self.reference.clone_from(&self.lowest);
            self.driven = vec![false; pieces];
            self.tied_down = vec![None; pieces];
        }
        true
    }

    /// Finds the components. `first` names nodes that are to be references, in order of preference.
    pub(super) fn find_components(&mut self, elements: &[Element], first: &[usize]) {
        self.driven.fill(false);
        self.tied_down.fill(None);
        self.reference.copy_from_slice(&self.lowest);
        for (piece, component) in self.component.iter_mut().enumerate() {
            *component = piece;
        }
        let piece = &self.piece;
        let component = &mut self.component;
        for &at in &self.moving {
            let element = &elements[at];
            if element.law.ties() {
                let [a, b] = element.nodes;
                join(component, piece[a], piece[b]);
            }
        }
        shorten(component);
        for &node in first.iter().rev() {
            if node < self.nodes {
                self.reference[component[piece[node]]] = node;
            }
        }
        for &node in &self.touched {
            let at = component[piece[node]];
            if self.tied_down[at].is_none() || self.reference[at] == node {
                self.tied_down[at] = Some(node);
            }
        }
        self.ties.clear();
        let tied_down = self.tied_down.iter().copied().flatten();
        self.ties
            .extend(tied_down.filter_map(|node| self.factor.late_place(node)));
        for &at in &self.moving {
            let element = &elements[at];
            let [a, b] = element.nodes.map(|node| component[piece[node]]);
            if element.law.drives() && (element.law.ties() || a == b) {
                self.driven[a] = true;
            }
        }
    }
}
