//! The connected pieces of the speaker side: each is solved by itself.

use super::network::{Groups, Network, SUPPLY};
use ordered::OrderedMap;

/// A connected piece: elements and outputs by number.
#[derive(Default)]
pub(super) struct Piece {
    pub(super) elements: Vec<usize>,
    pub(super) outputs: Vec<usize>,
}

/// The pieces of a network that have an output in them. The supply does not connect: with its voltage fixed, what
/// hangs on it on one side does not know of the other.
pub(super) fn pieces(net: &Network<'_>) -> Vec<Piece> {
    let mut groups = Groups::new(net.nodes);
    let mut join = |a: usize, b: usize| {
        if a != SUPPLY && b != SUPPLY {
            groups.join(a, b);
        }
    };
    for element in &net.elements {
        join(element.a, element.b);
    }
    for output in &net.outputs {
        join(output.plus, output.minus);
    }
    let mut all: OrderedMap<usize, Piece> = OrderedMap::new();
    let mut none = Vec::new();
    for (number, output) in net.outputs.iter().enumerate() {
        match [output.plus, output.minus]
            .into_iter()
            .find(|node| *node != SUPPLY)
        {
            Some(node) => all.entry(groups.find(node)).or_default().outputs.push(number),
            None => none.push(Piece {
                elements: Vec::new(),
                outputs: vec![number],
            }),
        }
    }
    for (number, element) in net.elements.iter().enumerate() {
        if let Some(node) = [element.a, element.b].into_iter().find(|node| *node != SUPPLY)
            && let Some(piece) = all.get_mut(&groups.find(node))
        {
            piece.elements.push(number);
        }
    }
    all.into_values().chain(none).collect()
}
