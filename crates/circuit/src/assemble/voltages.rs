//! The voltages of terminals, in the order of their keys.

use crate::network::{Network, NetworkTerminal};
use crate::solve::Operating;
use crate::study::voltage_key;
use model::TerminalRef;
use model::quantity::Volts;
use ordered::{OrderedMap, Sort as _};

/// The voltages of all terminals that a conducting way ties to a source.
pub(super) fn voltages(net: &Network, point: &Operating) -> OrderedMap<String, Volts> {
    let voltage = |terminal: &NetworkTerminal| {
        let driven = point.driven.get(terminal.node) == Some(&true);
        let part = *net.parts.get(terminal.part).filter(|_| driven)?;
        let key = voltage_key(&TerminalRef {
            part,
            terminal: terminal.name.clone(),
        });
        Some((key, Volts(point.voltages[terminal.node])))
    };
    // In the order of its keys a map is made far sooner than otherwise.
    in_order_of_keys(net).filter_map(voltage).collect()
}

/// The terminals in the order of their keys, `p1.in`, `p10.in`, `p2.in`: by the digits of their part, then by name.
fn in_order_of_keys(net: &Network) -> impl Iterator<Item = &NetworkTerminal> {
    let mut parts: Vec<(u64, usize)> = net.parts.iter().map(|id| u64::from(id.0)).zip(0..).collect();
    // Filled up with noughts to ten digits, numbers are in the order of their digits; of two alike, as 1 and 10, the shorter is first.
    parts.order_by_key(|(number, _)| {
        let mut filled = *number;
        while filled < 1_000_000_000 && filled != 0 {
            filled *= 10;
        }
        (filled, *number)
    });
    parts.into_iter().flat_map(|(_, part)| {
        let mut own: Vec<&NetworkTerminal> = net.terminals_of(part).iter().collect();
        own.order_by(|a, b| a.name.cmp(&b.name));
        own
    })
}
