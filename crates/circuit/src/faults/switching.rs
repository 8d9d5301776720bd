//! What switches while breaks run through time: relays and isolators, equipment that drops out and comes back, alternators that lose
//! their battery.

use super::base::Base;
use super::circuit::{Circuit, GIVES_UP, What};
use super::run::Run;
use super::scenario::Happening;
use crate::network::Draw;
use crate::solve::throwing::{MOST_TOGGLES, wants};
use crate::solve::{LEAST_SUPPLY, SourceModel, join};
use model::PartKind;

/// Rise above the cut-off at which equipment comes on again, in volts (from memory: half a volt to a volt).
const BACK_ON: f64 = 0.5;
/// Share of its pull-in voltage below which a relay falls off (from memory: 10 to 50 % of the rated voltage).
const FALLS_OFF: f64 = 0.5;

/// Equipment that may give up.
pub(super) struct Consumer {
    pub(super) part: usize,
    /// Its supply branch.
    pub(super) supply: usize,
    pub(super) cut_off: f64,
    /// The branch of its turn-on input, where a lead told it to be on.
    pub(super) told: Option<usize>,
    pub(super) on: bool,
    pub(super) toggles: u8,
}

impl Run<'_> {
    /// Throws what its voltage throws. True when something moved.
    pub(super) fn switch(&mut self) -> bool {
        let mut moved = false;
        let volts = |run: &Self, node: usize| run.system.voltages().get(node).copied().unwrap_or(0.0);
        for at in 0..self.circuit.items.len() {
            let item = &self.circuit.items[at];
            let What::Thrown { closes, .. } = item.what else {
                continue;
            };
            if item.stuck || self.toggles[at] >= MOST_TOGGLES {
                continue;
            }
            let closed = self.closed[at];
            let coil = |at: usize| self.elements.get(at).map_or(0.0, |it| self.system.across(it));
            let sensed = |minus: usize| volts(self, item.nodes[0]) - volts(self, minus);
            let Some(wants) = wants(closes, closed, FALLS_OFF, coil, sensed) else {
                continue;
            };
            if wants != closed {
                self.toggles[at] += 1;
                self.closed[at] = wants;
                moved = true;
                let part = self
                    .base
                    .net
                    .branches
                    .get(at)
                    .map(|branch| self.part_id(branch.part));
                if let Some(part) = part {
                    self.happens(if wants {
                        Happening::Pulls(part)
                    } else {
                        Happening::Lets(part)
                    });
                }
            }
        }
        for at in 0..self.consumers.len() {
            let it = &self.consumers[at];
            let supply = self.system.across(&self.elements[it.supply]);
            let told = it
                .told
                .is_none_or(|told| self.system.across(&self.elements[told]) >= GIVES_UP);
            let least = if it.on { it.cut_off } else { it.cut_off + BACK_ON };
            let on = told && supply >= least;
            if on == it.on || (on && it.toggles >= MOST_TOGGLES) {
                continue;
            }
            let part = it.part;
            let it = &mut self.consumers[at];
            it.on = on;
            it.toggles = it.toggles.saturating_add(1);
            self.part_off[part] = !on;
            moved = true;
            let id = self.part_id(part);
            self.happens(if on { Happening::On(id) } else { Happening::Off(id) });
        }
        moved
    }

    /// An alternator that something has left without a battery.
    pub(super) fn look_for_unloaded(&mut self) {
        for source in unloaded(self.base, self.circuit, &self.closed) {
            if !self.unloaded[source] {
                self.unloaded[source] = true;
                let part = self.base.net.sources.get(source).map_or(0, |it| it.part);
                let id = self.part_id(part);
                self.happens(Happening::Unloaded(id));
            }
        }
    }
}

/// Alternators that turn and have no battery on both their poles, as a circuit is at first.
pub(super) fn unloaded_at_first(base: &Base, circuit: &Circuit) -> Vec<usize> {
    let closed: Vec<bool> = circuit.items.iter().map(|item| item.may_conduct()).collect();
    unloaded(base, circuit, &closed)
}

/// The same, with what is closed now.
fn unloaded(base: &Base, circuit: &Circuit, closed: &[bool]) -> Vec<usize> {
    let sources = &base.net.sources;
    let kind = |source: usize| base.models.get(source).copied().unwrap_or(SourceModel::Off);
    let turns = |source: usize| {
        let alternator = sources.get(source).and_then(|it| base.kind_of(it.part));
        matches!(alternator, Some(PartKind::Alternator(_))) && !matches!(kind(source), SourceModel::Off)
    };
    if !(0..sources.len()).any(turns) {
        return Vec::new();
    }
    let mut group: Vec<usize> = (0..circuit.nodes).collect();
    for (item, closed) in circuit.items.iter().zip(closed) {
        let wire = !matches!(
            item.what,
            What::Source { .. } | What::Load { .. } | What::Capacitor { .. }
        );
        if wire && *closed {
            join(&mut group, item.nodes[0], item.nodes[1]);
        }
    }
    crate::solve::shorten(&mut group);
    let poles = |source: usize| {
        sources
            .get(source)
            .map(|it| [group.get(it.plus), group.get(it.minus)])
    };
    (0..sources.len())
        .filter(|&source| turns(source))
        .filter(|&source| {
            let on_it =
                |other| matches!(kind(other), SourceModel::Battery(_)) && poles(other) == poles(source);
            !(0..sources.len()).any(on_it)
        })
        .collect()
}

/// A part that draws, as it may give up.
pub(super) fn consumer(
    base: &Base,
    circuit: &Circuit,
    part: usize,
    supply: usize,
    across: &[f64],
) -> Consumer {
    let cut_off = match base.kind_of(part) {
        Some(PartKind::Amplifier(it)) => it.cut_off.value().map_or(GIVES_UP, |v| v.0),
        Some(PartKind::Load(it)) => it.cut_off.value().map_or(LEAST_SUPPLY, |v| v.0),
        Some(PartKind::Vehicle(_)) => LEAST_SUPPLY,
        _ => GIVES_UP,
    };
    let told = circuit.items.iter().position(
        |item| matches!(item.what, What::Load { part: other, draw: Draw::TurnOn, .. } if other == part),
    );
    Consumer {
        part,
        supply,
        // What was below it all along does not give up now.
        cut_off: cut_off.min(across.get(supply).copied().unwrap_or(0.0).max(LEAST_SUPPLY)),
        told: told.filter(|at| across.get(*at).is_some_and(|v| *v >= GIVES_UP)),
        on: true,
        toggles: 0,
    }
}
