//! Battery master switches: those stay on while parked.
//!
//! Parked, switches count as turned off: who parks turns off what a switch turned on. Not so a battery master switch; it
//! stands in the only live or the only return way of a battery to everything that the battery feeds, the vehicle or two parts at least (one
//! part alone is switched by its own switch), and is left on unless the sheet says that it is off (common practice). A way to another battery through
//! an isolator or a converter is no way to a part.

use super::{Closes, Draw, Kind, Network};
use crate::trace::View;

/// Lets master switches conduct in every state of the vehicle.
pub(super) fn leave_on(net: &mut Network) {
    let is_switch = |at: usize| {
        net.branches
            .get(at)
            .is_some_and(|b| b.kind == Kind::Contact && b.closes == Closes::InUse)
    };
    if !(0..net.branches.len()).any(is_switch) {
        return;
    }
    let neighbours = neighbours(net);
    let mut live = vec![Vec::new(); net.nodes];
    let mut back = vec![Vec::new(); net.nodes];
    for branch in &net.branches {
        if let Kind::Load(Draw::Supply | Draw::Idle | Draw::Base | Draw::Leakage) = branch.kind {
            live[branch.nodes[0]].push(branch.part);
            back[branch.nodes[1]].push(branch.part);
        }
    }
    let mut masters = Vec::new();
    for source in &net.sources {
        if net.branches.get(source.branch).map(|b| b.kind) != Some(Kind::Battery) {
            continue;
        }
        for (pole, parts) in [(source.plus, &live), (source.minus, &back)] {
            masters.extend(master(net, &neighbours, pole, parts, &is_switch));
        }
    }
    for at in masters {
        if let Some(branch) = net.branches.get_mut(at) {
            branch.closes = Closes::Always;
        }
    }
}

/// Branches at each node that a feed or return leads along: other node and branch.
fn neighbours(net: &Network) -> View {
    let mut edges = Vec::with_capacity(net.branches.len());
    for (at, branch) in net.branches.iter().enumerate() {
        let is_isolator = branch.kind == Kind::Contact
            && !matches!(
                branch.closes,
                Closes::InUse | Closes::Relay { .. } | Closes::Never
            );
        if branch.carries && !is_isolator && !matches!(branch.kind, Kind::Shield { .. } | Kind::Tie) {
            edges.push((branch.nodes[0], branch.nodes[1], at));
        }
    }
    View::of_edges(net.nodes, &edges)
}

/// The switch in the only way from a pole to parts, if there is one.
fn master(
    net: &Network,
    neighbours: &View,
    pole: usize,
    parts: &[Vec<usize>],
    is_switch: &impl Fn(usize) -> bool,
) -> Option<usize> {
    let mut seen = vec![false; net.nodes];
    let mut stack = vec![pole];
    let mut switches = Vec::new();
    seen[pole] = true;
    while let Some(node) = stack.pop() {
        if !parts[node].is_empty() {
            return None;
        }
        for (other, at) in neighbours.near(node) {
            if is_switch(at) {
                switches.push((other, at));
            } else if !seen[other] {
                seen[other] = true;
                stack.push(other);
            }
        }
    }
    switches.retain(|(other, _)| !seen[*other]);
    let &[(behind, at)] = switches.as_slice() else {
        return None;
    };
    let is_vehicle = |part: usize| {
        net.branches
            .iter()
            .any(|b| b.part == part && b.kind == Kind::Load(Draw::Base))
    };
    let mut first = None;
    stack.push(behind);
    seen[behind] = true;
    while let Some(node) = stack.pop() {
        for &part in &parts[node] {
            if *first.get_or_insert(part) != part || is_vehicle(part) {
                return Some(at);
            }
        }
        for (other, _) in neighbours.near(node) {
            if !seen[other] {
                seen[other] = true;
                stack.push(other);
            }
        }
    }
    None
}
