//! Order within the layers and heights on the board: sweeps to and fro, in which every unit goes to the median of where
//! its neighbours' studs want it; the order with the fewest crossings is kept.

use super::units::System;
use ordered::Sort as _;

/// Room between two parts above each other.
const BETWEEN_PARTS: i32 = 50;
/// Room between a part and a run that passes it.
const BESIDE_PART: i32 = 30;
/// Room between two runs that pass side by side.
const BETWEEN_RUNS: i32 = 10;
/// Sweeps, to and fro together.
const SWEEPS: usize = 12;

/// A unit, or a run where it passes through a layer.
#[derive(Clone, Debug)]
pub(crate) struct Node {
    /// The unit; `None` for a passing run.
    pub(crate) unit: Option<usize>,
    pub(crate) layer: usize,
    pub(crate) height: i32,
    /// Room it wants below itself.
    below: i32,
    /// Its top on the board.
    pub(crate) y: i32,
}

/// A piece of a link between neighbouring layers, or within one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(crate) from: usize,
    pub(crate) to: usize,
    pub(crate) from_y: i32,
    pub(crate) to_y: i32,
    weight: i32,
}

/// Units and passing runs in their layers.
#[derive(Clone, Debug)]
pub(crate) struct Web {
    pub(crate) nodes: Vec<Node>,
    pub(crate) pieces: Vec<Piece>,
    /// Nodes of each layer from top to bottom.
    pub(crate) layers: Vec<Vec<usize>>,
    /// For each node its pieces: index and whether the node is its `from`.
    touching: Vec<Vec<(usize, bool)>>,
}

impl Web {
    pub(crate) fn new(system: &System, layer: &[usize]) -> Self {
        let mut nodes: Vec<Node> = system
            .units
            .iter()
            .enumerate()
            .map(|(number, unit)| Node {
                unit: Some(number),
                layer: layer.get(number).copied().unwrap_or(0),
                height: unit.height,
                below: 10 * unit.below.min(12),
                y: 0,
            })
            .collect();
        let mut pieces = Vec::new();
        for link in &system.links {
            let at = |unit: usize| layer.get(unit).copied().unwrap_or(0);
            let (mut from, mut to, mut from_y, mut to_y) = (link.from, link.to, link.from_y, link.to_y);
            if at(from) > at(to) {
                std::mem::swap(&mut from, &mut to);
                std::mem::swap(&mut from_y, &mut to_y);
            }
            let mut last = (from, from_y);
            for passed in at(from) + 1..at(to) {
                nodes.push(Node {
                    unit: None,
                    layer: passed,
                    height: 0,
                    below: 0,
                    y: 0,
                });
                let node = nodes.len() - 1;
                pieces.push(Piece {
                    from: last.0,
                    to: node,
                    from_y: last.1,
                    to_y: 0,
                    weight: if last.0 == from { 2 } else { 8 },
                });
                last = (node, 0);
            }
            pieces.push(Piece {
                from: last.0,
                to,
                from_y: last.1,
                to_y,
                weight: if last.0 == from { 1 } else { 2 },
            });
        }
        let deepest = nodes.iter().map(|node| node.layer).max().unwrap_or(0);
        let mut layers: Vec<Vec<usize>> = vec![Vec::new(); deepest + 1];
        let mut touching: Vec<Vec<(usize, bool)>> = vec![Vec::new(); nodes.len()];
        for (place, piece) in pieces.iter().enumerate() {
            if let Some(list) = touching.get_mut(piece.from) {
                list.push((place, true));
            }
            if let Some(list) = touching.get_mut(piece.to) {
                list.push((place, false));
            }
        }
        for (place, node) in nodes.iter().enumerate() {
            if let Some(list) = layers.get_mut(node.layer) {
                list.push(place);
            }
        }
        let mut this = Self {
            nodes,
            pieces,
            layers,
            touching,
        };
        for layer in 0..this.layers.len() {
            this.stack(layer, |_| 0);
        }
        this
    }

    fn y(&self, node: usize) -> i32 {
        self.nodes.get(node).map_or(0, |node| node.y)
    }

    /// Where a node's neighbours want its top: the weighted median; `None` when it has none in the layers looked at.
    fn wanted(&self, node: usize, look: impl Fn(usize) -> bool) -> Option<i32> {
        let own = self.nodes.get(node)?.layer;
        let mut wants: Vec<(i32, i32)> = self
            .touching
            .get(node)?
            .iter()
            .filter_map(|(piece, is_from)| {
                let piece = self.pieces.get(*piece)?;
                let (other, own_y, other_y) = if *is_from {
                    (piece.to, piece.from_y, piece.to_y)
                } else {
                    (piece.from, piece.to_y, piece.from_y)
                };
                let layer = self.nodes.get(other)?.layer;
                (layer == own || look(layer)).then(|| {
                    // Within the layer a neighbour pulls, but less than one across.
                    let weight = if layer == own { 1 } else { 2 * piece.weight };
                    (self.y(other) + other_y - own_y, weight)
                })
            })
            .collect();
        wants.order();
        let whole: i32 = wants.iter().map(|(_, weight)| weight).sum();
        let mut sum = 0;
        for (want, weight) in &wants {
            sum += weight;
            if 2 * sum >= whole {
                return Some(*want);
            }
        }
        None
    }

    fn gap(&self, above: usize, below: usize) -> i32 {
        match (self.nodes.get(above), self.nodes.get(below)) {
            (Some(above), Some(below)) => match (above.unit, below.unit) {
                (Some(_), Some(_)) => BETWEEN_PARTS + above.below,
                (None, None) => BETWEEN_RUNS,
                (Some(_), None) => BESIDE_PART + above.below,
                (None, Some(_)) => BESIDE_PART,
            },
            _ => 0,
        }
    }

    /// Gives the nodes of a layer, in their order, the heights nearest to where they want to be (least squares, by
    /// pooling neighbours that would overlap).
    fn stack(&mut self, layer: usize, want: impl Fn(usize) -> i32) {
        let Some(list) = self.layers.get(layer) else {
            return;
        };
        // With the room above taken off, the heights must only not fall.
        let mut base = 0_i64;
        let mut pools: Vec<(i64, i64, usize)> = Vec::new();
        let mut bases = Vec::with_capacity(list.len());
        for (place, node) in list.iter().enumerate() {
            if let Some(above) = place.checked_sub(1).and_then(|n| list.get(n)) {
                let height = self.nodes.get(*above).map_or(0, |node| node.height);
                base += i64::from(height + self.gap(*above, *node));
            }
            bases.push(base);
            // A part holds its place more than a passing run does.
            let weight = if self.nodes.get(*node).is_some_and(|node| node.unit.is_some()) {
                3
            } else {
                2
            };
            pools.push((weight * (i64::from(want(*node)) - base), weight, 1));
            while let [.., (sum_a, weight_a, _), (sum_b, weight_b, _)] = pools.as_slice() {
                // Mean of the upper pool above that of the lower: they would overlap.
                if i128::from(*sum_a) * i128::from(*weight_b) <= i128::from(*sum_b) * i128::from(*weight_a) {
                    break;
                }
                if let (Some(b), Some(a)) = (pools.pop(), pools.last_mut()) {
                    a.0 += b.0;
                    a.1 += b.1;
                    a.2 += b.2;
                }
            }
        }
        let mut heights = Vec::with_capacity(list.len());
        let mut bases = bases.into_iter();
        for (sum, weight, count) in pools {
            let mean = libm::round(sum as f64 / weight.max(1) as f64 / 10.0) as i64 * 10;
            for _ in 0..count {
                heights.push((mean + bases.next().unwrap_or(0)).clamp(-900_000, 900_000) as i32);
            }
        }
        let list = list.clone();
        for (node, y) in list.into_iter().zip(heights) {
            if let Some(node) = self.nodes.get_mut(node) {
                node.y = y;
            }
        }
    }

    fn settle(&mut self, layer: usize, look: impl Fn(usize) -> bool + Copy, sort: bool) {
        let Some(list) = self.layers.get(layer) else {
            return;
        };
        let wants: ordered::OrderedMap<usize, i32> = list
            .iter()
            .map(|node| (*node, self.wanted(*node, look).unwrap_or_else(|| self.y(*node))))
            .collect();
        if sort {
            let mut sorted = list.clone();
            // By where its middle wants to be; the present order decides a tie, so that the result is the same each time.
            let middle = |node: &usize| {
                wants.get(node).copied().unwrap_or(0)
                    + self.nodes.get(*node).map_or(0, |node| node.height / 2)
            };
            sorted.order_by_key(middle);
            if let Some(slot) = self.layers.get_mut(layer) {
                *slot = sorted;
            }
        }
        self.stack(layer, |node| wants.get(&node).copied().unwrap_or(0));
    }

    /// Crossings of pieces between neighbouring layers, by the heights of their ends.
    fn crossings(&self) -> u64 {
        let mut by_layer: Vec<Vec<(i32, i32)>> = vec![Vec::new(); self.layers.len()];
        for piece in &self.pieces {
            let (Some(from), Some(to)) = (self.nodes.get(piece.from), self.nodes.get(piece.to)) else {
                continue;
            };
            if from.layer != to.layer
                && let Some(list) = by_layer.get_mut(from.layer)
            {
                list.push((from.y + piece.from_y, to.y + piece.to_y));
            }
        }
        by_layer.iter_mut().map(|list| inversions(list)).sum()
    }

    fn length(&self) -> i64 {
        self.pieces
            .iter()
            .map(|piece| {
                i64::from((self.y(piece.from) + piece.from_y).abs_diff(self.y(piece.to) + piece.to_y))
            })
            .sum()
    }

    /// Orders the layers and settles the heights.
    pub(crate) fn sweep(&mut self) {
        let deepest = self.layers.len();
        let mut best: Option<(u64, i64, Self)> = None;
        for round in 0..SWEEPS {
            if round % 2 == 0 {
                for layer in 1..deepest {
                    self.settle(layer, |other| other < layer, true);
                }
            } else {
                for layer in (0..deepest.saturating_sub(1)).rev() {
                    self.settle(layer, |other| other > layer, true);
                }
            }
            let now = (self.crossings(), self.length());
            if best
                .as_ref()
                .is_none_or(|(crossings, length, _)| now < (*crossings, *length))
            {
                best = Some((now.0, now.1, self.clone()));
            }
        }
        if let Some((_, _, web)) = best {
            *self = web;
        }
        // The order stands; now the heights, looking to both sides.
        for round in 0..6 {
            for n in 0..deepest {
                let layer = if round % 2 == 0 { n } else { deepest - 1 - n };
                self.settle(layer, |_| true, false);
            }
        }
    }
}

/// Pairs that are in one order at the first end and in the other at the second.
fn inversions(list: &mut [(i32, i32)]) -> u64 {
    list.order();
    let mut ends: Vec<i32> = list.iter().map(|(_, end)| *end).collect();
    let mut sorted = ends.clone();
    sorted.order();
    sorted.dedup();
    // A Fenwick tree over the ranks of the second ends.
    let mut tree = vec![0_u64; sorted.len() + 1];
    let mut count = 0;
    for (seen, end) in ends.drain(..).enumerate() {
        let rank = sorted.binary_search(&end).unwrap_or(0) + 1;
        let mut at = rank;
        let mut not_above = 0;
        while at > 0 {
            not_above += tree.get(at).copied().unwrap_or(0);
            at -= at & at.wrapping_neg();
        }
        count += seen as u64 - not_above;
        at = rank;
        while let Some(slot) = tree.get_mut(at) {
            *slot += 1;
            at += at & at.wrapping_neg();
        }
    }
    count
}

#[cfg(test)]
mod tests {
    use super::inversions;

    #[test]
    fn inversions_are_counted() {
        // Against counting all pairs.
        let list = [(0, 5), (1, 3), (2, 4), (3, 1), (4, 3), (5, 0)];
        let mut pairs = 0;
        for (n, a) in list.iter().enumerate() {
            for b in list.iter().skip(n + 1) {
                if a.1 > b.1 {
                    pairs += 1;
                }
            }
        }
        assert_eq!(inversions(&mut list.to_vec()), pairs);
    }
}
