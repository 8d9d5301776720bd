//! The speaker side: what each channel drives, what reaches each speaker, and where a silent one has its gap.
//!
//! A channel's load is its own voltage over its own current, so leads that two channels share and bridged pairs come
//! out right. Every source is solved for alone and the results are added. Where two channels feed one network, their
//! relative phase is not known: currents are then added as sizes, which is the worse case, and a remark says so.
//!
//! *Left out:* the resistance of inductors, the mechanical resonance of drivers, mutual inductance of two coils on one former.

mod complex;
mod deck;
mod drivers;
mod element;
mod few;
mod gap;
pub(crate) mod index;
mod leads;
mod loads;
mod network;
mod outputs;
mod pieces;
mod power;
mod reduced;
mod seen;
mod ties;

pub use deck::speaker_deck;
pub use leads::{LeadNet, Leads};
pub(crate) use outputs::is_ground_leg;

use crate::study::{Assumption, ChannelLoad, Driver, Signal};
use drivers::Reached;
use index::Index;
use model::job::Duty;
use model::quantity::{Hertz, Ohms, Watts};
use model::written::StatedPower;
use model::{Fact, PartId, PartKind, Settings, Sheet};
pub(crate) use network::Groups;
use network::Network;
use ordered::{OrderedMap, OrderedSet};
use seen::Seen;
use serde::Serialize;

/// Number of frequencies on a curve: 20 a decade from 20 Hz to 20 kHz, both ends included.
pub const CURVE_POINTS: u16 = 61;

/// DC resistance and rated impedance of one voice coil, in ohms.
pub(crate) fn coil(speaker: &model::kinds::sound::Speaker) -> (f64, f64) {
    (element::coil_dc(speaker), element::rated(speaker))
}

/// Frequency of a point of the curves, from 0.
#[must_use]
pub fn curve_frequency(point: u16) -> Hertz {
    Hertz(20.0 * libm::pow(10.0, f64::from(point) / 20.0))
}

/// Power that an output of these stated powers gives into a load; see there for how it lies between and beyond them.
#[must_use]
pub fn stated_power(stated: &[StatedPower], load: Ohms) -> Option<Watts> {
    power::Stated::new(stated, None).watts(load.0).map(Watts)
}

/// What the outputs of a part deliver, all of them together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct OutputPower {
    /// Mean power at the duty: [`reference::audio::duty_share`] of the full power.
    pub mean: Watts,
    /// The power that draws the root mean square of the supply current over the thermal time of wires and fuses.
    pub rms: Watts,
    /// Power in bursts: full power into the actual load, whatever the music; nothing when idle.
    pub burst: Watts,
}

/// The speaker side of a sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speakers {
    /// Every output, in order of part and channel; a bridged pair is one.
    pub channels: Vec<ChannelLoad>,
    /// Every speaker.
    pub drivers: OrderedMap<PartId, Driver>,
    /// What each amplifier and head unit delivers.
    pub output: OrderedMap<PartId, OutputPower>,
    /// Values taken for granted that entered a result.
    pub assumed: OrderedSet<Assumption>,
}

/// Shares of full power at a duty: mean, RMS, burst.
///
/// Mean by [`reference::audio::duty_share`]. The supply current of an output stage follows the size of its output
/// voltage; of a signal like noise that is |v| of a normal distribution, whose RMS is √(π/2) ≈ 1.25 times its mean. Bursts
/// reach full power whenever something plays.
fn shares(duty: Duty) -> (f64, f64, f64) {
    let mean = reference::audio::duty_share(duty).0;
    let rms = (mean * libm::sqrt(core::f64::consts::FRAC_PI_2)).min(1.0);
    match duty {
        Duty::Idle => (0.0, 0.0, 0.0),
        Duty::Tone => (mean, mean, 1.0),
        Duty::Speech | Duty::Music | Duty::Loud => (mean, rms, 1.0),
    }
}

/// What each channel drives and what reaches each speaker.
#[must_use]
pub fn study_speakers(sheet: &Sheet, settings: &Settings) -> Speakers {
    study_network(&Network::new(Index::new(sheet)), settings)
}

/// The whole sound side at once: what [`study_speakers`] and [`study_signal`](crate::signal::study_signal) find, with the
/// terminals of the sheet numbered only once, and filters of head units carried on to the drivers.
#[must_use]
pub fn study_sound(sheet: &Sheet, settings: &Settings) -> (Speakers, Signal) {
    let net = Network::new(Index::new(sheet));
    let mut speakers = study_network(&net, settings);
    let signal = crate::signal::study_index(&net.index, &speakers);
    crate::signal::carry_filters(sheet, &signal, &mut speakers);
    (speakers, signal)
}

fn study_network(net: &Network<'_>, settings: &Settings) -> Speakers {
    let mut study = Speakers::default();
    let mut reach: OrderedMap<PartId, Reached> = OrderedMap::new();
    let mut loads: Vec<Option<ChannelLoad>> = vec![None; net.outputs.len()];
    let frequencies: Vec<Hertz> = (0..CURVE_POINTS).map(curve_frequency).collect();
    let (mean, rms, burst) = shares(settings.conditions.duty);
    for piece in pieces::pieces(net) {
        let seen = Seen::of(net, &piece);
        drivers::find(&seen, &mut reach);
        for (output, load) in loads::loads(&seen, &frequencies, mean) {
            if let Some(slot) = loads.get_mut(output) {
                *slot = Some(load);
            }
        }
    }
    ties::mark(net, &mut loads);
    for load in loads.into_iter().flatten() {
        let full = load.power.unwrap_or_default();
        let sum = study.output.entry(load.part).or_default();
        *sum = OutputPower {
            mean: sum.mean + full * mean,
            rms: sum.rms + full * rms,
            burst: sum.burst + full * burst,
        };
        study.channels.push(load);
    }
    for (id, part) in &net.index.sheet.parts {
        if let PartKind::Speaker(speaker) = &part.is {
            // Taken over where it stands: each one taken out would move those behind it.
            let driver = reach.get_mut(id).map(std::mem::take).unwrap_or_default().driver(
                net,
                *id,
                usize::from(speaker.coils.clamp(1, 2)),
            );
            study.drivers.insert(*id, driver);
        }
    }
    assumptions(net, &mut study);
    study
}

/// Notes which assumed values entered: impedances of speakers that play, powers of head units.
fn assumptions(net: &Network<'_>, study: &mut Speakers) {
    let mut note = |part: PartId, property: &'static str, given: bool| {
        if !given {
            study.assumed.insert(Assumption {
                part: Some(part),
                run: None,
                property,
            });
        }
    };
    for (id, driver) in &study.drivers {
        if let Some(PartKind::Speaker(speaker)) = net.index.sheet.parts.get(id).map(|part| &part.is)
            && driver.plays
        {
            note(*id, "impedance", matches!(speaker.impedance, Fact::Given(_)));
            note(*id, "dc-resistance", speaker.dc_resistance.is_given());
        }
    }
    for load in &study.channels {
        if let Some(PartKind::HeadUnit(head)) = net.index.sheet.parts.get(&load.part).map(|part| &part.is)
            && !load.drivers.is_empty()
        {
            note(load.part, "power", head.power.is_given());
            note(load.part, "rated-load", head.rated_load.is_given());
            note(load.part, "minimum-load", head.minimum_load.is_given());
        }
    }
}
