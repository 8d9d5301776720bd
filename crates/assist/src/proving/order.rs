//! The order in which readings are taken: states one after the other, and within each so that little is walked and opened.

use super::readings::{Candidate, Doing};
use crate::finding::effort::{Efforts, LOOK};
use circuit::Probe;
use model::{PartId, TerminalRef};
use ordered::{OrderedMap, OrderedSet};

/// Minutes for readings, whatever their order: each itself, every part reached once, every state once.
pub(super) fn minutes(efforts: &Efforts, chosen: &[&Candidate]) -> f64 {
    let parts: OrderedSet<PartId> = chosen.iter().flat_map(|it| it.parts.iter().copied()).collect();
    let first: OrderedMap<Doing, f64> = chosen.iter().map(|it| (it.doing, it.first)).collect();
    let looks: f64 = chosen.iter().map(|_| LOOK).sum();
    let reached: f64 = parts.iter().map(|part| efforts.to_reach(*part)).sum();
    looks + reached + first.values().sum::<f64>()
}

/// The leads of a reading, red and black; of a clamp none.
fn leads(probe: &Probe) -> [Option<&TerminalRef>; 2] {
    match probe {
        Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black) => {
            [Some(red), Some(black)]
        }
        Probe::Amps(_) => [None, None],
    }
}

/// The order: in each state always the reading for which least has to be opened, then the one for which fewest leads move.
pub(super) fn order(efforts: &Efforts, all: &[Candidate], chosen: &[usize]) -> Vec<usize> {
    let mut left: Vec<usize> = chosen.to_vec();
    let mut out: Vec<usize> = Vec::new();
    let mut open: OrderedSet<PartId> = OrderedSet::new();
    while !left.is_empty() {
        let last = out.last().and_then(|at: &usize| all.get(*at));
        let cost = |at: usize| {
            let it = all.get(at)?;
            let reach: f64 = it
                .parts
                .iter()
                .filter(|part| !open.contains(*part))
                .map(|part| efforts.to_reach(*part))
                .sum();
            let moved = last.map_or(2, |last| {
                let (before, now) = (leads(&last.probe), leads(&it.probe));
                before.iter().zip(&now).filter(|(a, b)| a != b).count()
            });
            let away = last.is_some_and(|last| !it.parts.iter().any(|part| last.parts.contains(part)));
            Some((it.doing, reach, away, moved))
        };
        let next = left
            .iter()
            .enumerate()
            .filter_map(|(place, at)| Some((place, *at, cost(*at)?)))
            .min_by(|(_, a, one), (_, b, other)| {
                one.0
                    .cmp(&other.0)
                    .then(one.1.total_cmp(&other.1))
                    .then(one.2.cmp(&other.2))
                    .then(one.3.cmp(&other.3))
                    .then(a.cmp(b))
            });
        let Some((place, at, _)) = next else { break };
        left.remove(place);
        if let Some(it) = all.get(at) {
            open.extend(it.parts.iter().copied());
        }
        out.push(at);
    }
    out
}
