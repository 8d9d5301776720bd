//! What each run is used for, from what it joins.

use crate::network::{BODY, Network};
use crate::protection::{Reach, Stretches};
use crate::study::Purpose;
use crate::trace::{Blocks, View};
use model::Role;
use ordered::Sort as _;

/// Kinds of terminals that a conductor joins, directly or through joints and contacts.
#[derive(Clone, Copy, Default)]
struct Joins {
    speaker_out: bool,
    coil: bool,
    level_in: bool,
    line: bool,
    turn_on: bool,
}

impl Joins {
    fn add(&mut self, role: Role) {
        match role {
            Role::SpeakerOut { .. } => self.speaker_out = true,
            Role::Coil { .. } | Role::SpeakerThrough => self.coil = true,
            Role::LevelIn { .. } => self.level_in = true,
            Role::LineIn(_) | Role::LineOut(_) => self.line = true,
            Role::TurnOnIn | Role::TurnOnOut => self.turn_on = true,
            Role::SupplyPlus | Role::SupplyMinus | Role::Through | Role::Body | Role::Control => {}
        }
    }
}

/// The purpose of every run, in the order of the network's runs.
pub(crate) fn purposes(
    net: &Network,
    stretches: &Stretches,
    reaches: &[Reach],
    live: &View,
    live_blocks: &Blocks,
    back_blocks: &Blocks,
) -> Vec<Purpose> {
    // What hangs together over live conductors, the body left out.
    let mut group = vec![usize::MAX; net.nodes];
    let mut stack = Vec::new();
    for start in 0..net.nodes {
        if group[start] != usize::MAX {
            continue;
        }
        group[start] = start;
        stack.push(start);
        while let Some(node) = stack.pop() {
            for (other, _) in live.near(node) {
                if group[other] == usize::MAX {
                    group[other] = start;
                    stack.push(other);
                }
            }
        }
    }
    let mut joins = vec![Joins::default(); net.nodes];
    for terminal in &net.terminals {
        joins[group[terminal.node]].add(terminal.role);
    }
    let reached: Vec<bool> = stretches
        .of_node
        .iter()
        .enumerate()
        .map(|(node, stretch)| node != BODY && reaches.iter().any(|r| r.reached.get(*stretch) == Some(&true)))
        .collect();
    let mut returns = vec![false; net.nodes];
    let mut minus: Vec<usize> = net.sources.iter().map(|s| s.minus).collect();
    minus.push(BODY);
    minus.order();
    minus.dedup();
    // One negative pole per connected piece is enough.
    let mut roots: Vec<usize> = Vec::new();
    for node in minus {
        if !roots.iter().any(|r| back_blocks.joined(*r, node)) {
            roots.push(node);
        }
    }
    for (node, returns) in returns.iter_mut().enumerate() {
        *returns = roots.iter().any(|r| back_blocks.joined(*r, node));
    }
    let mut poles: Vec<usize> = net.sources.iter().map(|s| s.plus).collect();
    poles.order();
    poles.dedup();
    let mut between = vec![false; net.branches.len()];
    for block in live_blocks.between_any(&poles) {
        for &branch in live_blocks.branches(block) {
            between[branch] = true;
        }
    }
    net.runs
        .iter()
        .map(|run| {
            let roles: Vec<Role> = run
                .terminals
                .iter()
                .flatten()
                .filter_map(|t| net.terminals.get(*t))
                .map(|t| t.role)
                .collect();
            let ends = |want: fn(&Role) -> bool| roles.iter().any(want);
            // A run cut through may be live from one end only.
            let any = |list: &[bool]| run.nodes.iter().any(|n| list[*n]);
            let mut joined = joins[group[run.nodes[0]]];
            let other = joins[group[run.nodes[1]]];
            joined.speaker_out |= other.speaker_out;
            joined.coil |= other.coil;
            joined.level_in |= other.level_in;
            joined.line |= other.line;
            joined.turn_on |= other.turn_on;
            if ends(|r| matches!(r, Role::TurnOnIn | Role::TurnOnOut)) {
                Purpose::TurnOn
            } else if run.line || ends(|r| r.is_line()) {
                Purpose::Signal
            } else if between[run.branch] {
                Purpose::BetweenSources
            } else if any(&reached) {
                Purpose::Feed
            } else if joined.coil {
                Purpose::Speaker
            } else if joined.level_in {
                Purpose::Signal
            } else if joined.speaker_out {
                Purpose::Speaker
            } else if any(&returns) {
                Purpose::Return
            } else if joined.turn_on {
                Purpose::TurnOn
            } else if joined.line {
                Purpose::Signal
            } else {
                Purpose::Nothing
            }
        })
        .collect()
}
