//! Outputs whose legs are tied to the supply or to one another by nothing but wire.

use super::element::What;
use super::network::{Groups, Network, SUPPLY};
use crate::study::ChannelLoad;
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// Marks outputs whose legs are tied to the supply or to other outputs by nothing but wire.
pub(super) fn mark(net: &Network<'_>, loads: &mut [Option<ChannelLoad>]) {
    let mut groups = Groups::new(net.nodes);
    let leads = || {
        net.elements
            .iter()
            .filter(|element| matches!(element.what, What::Lead(_)))
    };
    for lead in leads() {
        if lead.a != SUPPLY && lead.b != SUPPLY {
            groups.join(lead.a, lead.b);
        }
    }
    let mut on_supply = OrderedSet::new();
    for lead in leads() {
        match (lead.a, lead.b) {
            (SUPPLY, SUPPLY) => {}
            (SUPPLY, node) | (node, SUPPLY) => {
                on_supply.insert(groups.find(node));
            }
            _ => {}
        }
    }
    // Legs of one output by the group of nodes they are in; ground legs are part of the supply and count as no leg.
    let mut legs: OrderedMap<usize, OrderedSet<usize>> = OrderedMap::new();
    for (number, output) in net.outputs.iter().enumerate() {
        for node in [output.plus, output.minus] {
            if node != SUPPLY {
                legs.entry(groups.find(node)).or_default().insert(number);
            }
        }
    }
    for (group, numbers) in &legs {
        for number in numbers {
            let Some(Some(load)) = loads.get_mut(*number) else {
                continue;
            };
            load.touches_body |= on_supply.contains(group);
            for other in numbers.iter().filter(|other| *other != number) {
                if let Some(output) = net.outputs.get(*other) {
                    let tie = (output.part, output.channel);
                    if !load.tied_to.contains(&tie) {
                        load.tied_to.push(tie);
                    }
                }
            }
        }
    }
    for load in loads.iter_mut().flatten() {
        load.tied_to.order();
    }
}
