//! What is played: the volts that each channel holds, and what its amplifier draws for what the channel gives.
//!
//! Somebody sets the volume while all is well; from then on an output holds its volts, whatever becomes of its load. What it gives is
//! those volts times the current into what is left of the load, and what the amplifier draws for it follows in proportion, as its
//! efficiency at this volume stays: nothing beside what it idles at where a speaker is off, the signal is missing or the amplifier protects itself; half
//! of it where one of two like speakers in parallel is off.

use super::linear::Case;
use super::scene::Scene;
use super::views::Beside;
use crate::solve::{Demand, Law};
use crate::speakers::{self, OutputPower};
use model::quantity::Watts;
use model::{PartId, PartKind, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// A change of what is given by less than this share of it is rounding.
const LEAST_CHANGE: f64 = 1e-4;

/// The volts of a channel, and its share of the mean power of its part, in watts.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Channel {
    volts: f64,
    watts: f64,
}

/// A channel that is heard as long as nothing is wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Sounding {
    /// Its share of the mean power of its part.
    share: f64,
    /// What it gives under the tone, in watts.
    gives: f64,
}

/// The volts that a test tone has at each channel, open or loaded: an amplifier holds them. A channel without a load on the drawing has
/// none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tones {
    channels: OrderedMap<(PartId, u8), Channel>,
    pub(super) output: OrderedMap<PartId, OutputPower>,
    sounding: OrderedMap<(PartId, u8), Sounding>,
}

impl Tones {
    /// Those of a sheet at the duty of the settings, as if nothing were wrong: V = √(P·Z).
    #[must_use]
    pub fn of(sheet: &Sheet, settings: &Settings) -> Self {
        let scene = Scene::of(sheet, settings);
        let conditions = &settings.conditions;
        let Some(standing) = scene.stand(conditions.state, conditions.duty, None) else {
            return Self::found(sheet, &speakers::study_speakers(sheet, settings));
        };
        let mut tones = standing.tones.clone();
        if let Some(heard) = scene.hear(&standing) {
            let mut case = heard.tone.as_is();
            scene.hush(&mut case, &tones);
            tones.heard(&scene, &case, &heard.signal);
        }
        tones
    }

    /// Without what the outputs give, for which somebody has to solve ([`Tones::heard`]).
    pub(super) fn found(sheet: &Sheet, speakers: &speakers::Speakers) -> Self {
        let mut channels = OrderedMap::new();
        for load in &speakers.channels {
            let Some(nominal) = load.nominal else { continue };
            let Watts(watts) = load.mean_power;
            let volts = libm::sqrt((watts * nominal.0).max(0.0));
            // In one that does not float each of a bridged pair gives half.
            let halves = match sheet.parts.get(&load.part).map(|part| &part.is) {
                Some(PartKind::Amplifier(it)) => !it.floating,
                _ => false,
            };
            match load.bridged_with {
                Some(second) => {
                    let volts = if halves { volts / 2.0 } else { volts };
                    let watts = watts / 2.0;
                    channels.insert((load.part, load.channel), Channel { volts, watts });
                    channels.insert((load.part, second), Channel { volts, watts });
                }
                None => {
                    channels.insert((load.part, load.channel), Channel { volts, watts });
                }
            }
        }
        Self {
            channels,
            output: speakers.output.clone(),
            sounding: OrderedMap::new(),
        }
    }

    /// The volts of the channel of a leg.
    pub(super) fn of_leg(&self, part: PartId, channel: u8) -> f64 {
        self.channels.get(&(part, channel)).map_or(0.0, |it| it.volts)
    }

    /// Keeps what the channels give while nothing is wrong. `signal` says which legs have a signal.
    pub(super) fn heard(&mut self, scene: &Scene, case: &Case<'_>, signal: &[bool]) {
        let mut live: OrderedSet<(PartId, u8)> = OrderedSet::new();
        for (extra, _) in scene.extras.iter().zip(signal).filter(|(_, signal)| **signal) {
            let part = scene.net.parts.get(extra.part());
            if let (Beside::Leg { channel, .. }, Some(part)) = (&extra.is, part) {
                live.insert((*part, *channel));
            }
        }
        let gives = given(scene, case).into_iter();
        self.sounding = gives
            .filter(|(channel, gives)| *gives > 0.0 && live.contains(channel))
            .filter_map(|(channel, gives)| {
                let Watts(mean) = self.output.get(&channel.0)?.mean;
                let share = (self.channels.get(&channel)?.watts / mean).clamp(0.0, 1.0);
                share.is_finite().then_some((channel, Sounding { share, gives }))
            })
            .collect();
    }

    /// What the parts ask under a tone that something may be wrong with. `None` where it is what they ask while nothing is.
    pub(super) fn asked(&self, scene: &Scene, case: &Case<'_>, demands: &[Demand]) -> Option<Vec<Demand>> {
        let given = given(scene, case);
        let mut less: OrderedMap<PartId, f64> = OrderedMap::new();
        for (channel, it) in &self.sounding {
            let more = given.get(channel).copied().unwrap_or(0.0) / it.gives - 1.0;
            if more.abs() > LEAST_CHANGE {
                *less.entry(channel.0).or_insert(0.0) -= it.share * more;
            }
        }
        if less.is_empty() {
            return None;
        }
        let mut all = demands.to_vec();
        for (part, less) in less {
            let at = scene.net.part_index(part);
            if let Some(demand) = at.and_then(|at| all.get_mut(at)) {
                demand.supply = demand.supply.map(|law| scaled(law, (1.0 - less).max(0.0)));
            }
        }
        Some(all)
    }
}

/// What each channel gives under a tone, in watts: the volts inside times the current out, of its legs.
fn given(scene: &Scene, case: &Case<'_>) -> OrderedMap<(PartId, u8), f64> {
    let mut all = OrderedMap::new();
    let from = scene.net.branches.len();
    for (at, extra) in scene.extras.iter().enumerate() {
        let law = case.law(from + at);
        let part = scene.net.parts.get(extra.part());
        if let (Beside::Leg { channel, .. }, Some(part), true) = (&extra.is, part, law.given != 0.0) {
            // The law is that of a load: what goes out is negative, and what it holds by itself is −given/conductance.
            *all.entry((*part, *channel)).or_insert(0.0) +=
                law.given / law.conductance * case.current(from + at);
        }
    }
    all
}

/// The same times a share.
fn scaled(law: Law, share: f64) -> Law {
    match law {
        Law::Power(_) | Law::Current(_) | Law::Resistance(_) if share <= 0.0 => Law::Open,
        Law::Power(watts) => Law::Power(watts * share),
        Law::Current(amps) => Law::Current(amps * share),
        Law::Resistance(ohms) => Law::Resistance(ohms / share),
        law => law,
    }
}
