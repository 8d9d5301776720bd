//! Voltages between two places that matter: what is lost between a source and a part, and how far the grounds of equipment drift apart.

use crate::flows::{self, Points};
use crate::network::Network;
use crate::study::{GroundOffset, Study};
use model::quantity::{Amps, Volts};
use model::{PartId, PartKind, Sheet};
use ordered::OrderedMap;

/// Voltage lost between the poles of a source and a part: of the battery with the least resistance to it, as that is where
/// a meter is put; of another source where no battery feeds the part.
pub(super) fn drops(net: &Network, points: &Points, nearest: &OrderedMap<PartId, usize>, study: &mut Study) {
    let point = &points.burst;
    for consumer in &net.consumers {
        let Some(id) = net.parts.get(consumer.part) else {
            continue;
        };
        let Some(source) = nearest.get(id).and_then(|s| net.sources.get(*s)) else {
            continue;
        };
        let Some(circuit) = study.circuits.get_mut(id).filter(|c| c.drop.is_none()) else {
            continue;
        };
        let feed = flows::across(point, source.plus, consumer.plus);
        let back = flows::across(point, consumer.minus, source.minus);
        circuit.feed_drop = feed.map(Volts);
        circuit.return_drop = back.map(Volts);
        circuit.drop = feed.zip(back).map(|(a, b)| Volts(a + b));
    }
}

/// Voltage between the grounds of equipment that signal leads join, and what their shields carry, at burst level.
pub(super) fn offsets(net: &Network, sheet: &Sheet, points: &Points, study: &mut Study) {
    let minus = |terminal: usize| {
        let part = net.terminals.get(terminal)?.part;
        ["-", "31"].iter().find_map(|name| net.node_by_name(part, name))
    };
    for run in &net.runs {
        if !run.line {
            continue;
        }
        let [Some(a), Some(b)] = run.terminals else {
            continue;
        };
        let (Some(x), Some(y)) = (minus(a), minus(b)) else {
            continue;
        };
        let joined = |terminal: usize| {
            let Some(it) = net.terminals.get(terminal) else {
                return false;
            };
            if matches!(it.role, model::Role::LineOut(_)) {
                return true;
            }
            use model::kinds::sound::InputGround::Joined;
            match net
                .parts
                .get(it.part)
                .and_then(|id| sheet.parts.get(id))
                .map(|p| &p.is)
            {
                Some(PartKind::Amplifier(it)) => it.input_ground == Joined,
                Some(PartKind::Processor(it)) => it.input_ground == Joined,
                _ => true,
            }
        };
        let offset = flows::across(&points.burst, x, y).unwrap_or(0.0).abs();
        let current = points
            .burst
            .currents
            .get(run.branch)
            .copied()
            .unwrap_or(0.0)
            .abs();
        study.signal.offsets.insert(
            run.id,
            GroundOffset {
                offset: Volts(offset),
                shield_current: Amps(current),
                joined: joined(a) && joined(b),
            },
        );
    }
}
