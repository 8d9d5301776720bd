//! What each part asks of its supply at the three levels.
//!
//! - *Mean*: the average over minutes. An amplifier takes its mean output over its efficiency at that output.
//! - *Burst*: the loudest moment: full output into the actual load over the efficiency at full output.
//! - *RMS*: what heats wires and fuses, over their thermal time of a minute or so. The current of an output stage
//!   follows the size of its output voltage. Of a signal like noise, which stands for music in the standards on normal
//!   operation, that is |v| of a normal distribution, whose RMS is √(π/2) ≈ 1.25 times its mean (see
//!   [`crate::speakers::OutputPower::rms`]). Several parts are taken as loud at the same time: they play the same music.
//!
//! A load that works for a share of the time heats as √share of its current.

use crate::network::values;
use model::job::{Conditions, Duty, VehicleState};
use model::kinds::sound::{Amplifier, AmplifierClass, SupplyLaw};
use model::kinds::supply::{LoadLaw, LoadTime};
use model::quantity::Share;
use model::{PartKind, Sheet};
use ordered::OrderedMap;
use reference::audio;
use serde::Serialize;

use super::Law;
use crate::speakers::OutputPower;
use crate::study::TurnOnFed;

/// The level at which a network is solved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// The average.
    Mean,
    /// The root mean square over the thermal time of wires.
    Rms,
    /// The loudest moment.
    Burst,
}

impl Level {
    /// All levels.
    pub const ALL: [Self; 3] = [Self::Mean, Self::Rms, Self::Burst];
}

/// What a part asks at each level (mean, RMS, burst), and below which voltage it gives up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Demand {
    /// The law of its main supply, when it is on.
    pub supply: [Law; 3],
    /// Current beside it, in amperes, when it is on.
    pub idle: f64,
    /// Current when it is off, in amperes.
    pub off: f64,
    /// Whether the state of the vehicle lets it be on.
    pub may_be_on: bool,
    /// Below this voltage, in volts, it turns itself off.
    pub cut_off: Option<f64>,
    /// Current of its turn-on input.
    pub turn_on: f64,
}

impl Demand {
    const NOTHING: Self = Self {
        supply: [Law::Open; 3],
        idle: 0.0,
        off: 0.0,
        may_be_on: false,
        cut_off: None,
        turn_on: 0.0,
    };
}

/// Supply power for an output power that is this share of full output.
fn supply_power(class: AmplifierClass, stated: Option<Share>, output: f64, share: f64) -> f64 {
    if output <= 0.0 {
        return 0.0;
    }
    let usual = |share: f64| audio::efficiency(class, Share(share)).usual.0;
    // A stated efficiency is that at full power; at less it falls as that of its class.
    let scale = stated.map_or(1.0, |s| s.0 / usual(1.0));
    output / (usual(share) * scale).clamp(0.02, 0.98)
}

/// Supply power at the three levels.
fn music(class: AmplifierClass, stated: Option<Share>, delivered: OutputPower, duty: Duty) -> [f64; 3] {
    let share = audio::duty_share(duty).0;
    let mean = supply_power(class, stated, delivered.mean.0, share);
    let burst = supply_power(class, stated, delivered.burst.0, 1.0).max(mean);
    let over_mean = if delivered.mean.0 > 0.0 {
        delivered.rms.0 / delivered.mean.0
    } else {
        1.0
    };
    [mean, (mean * over_mean).clamp(mean, burst), burst]
}

fn amplifier(it: &Amplifier, delivered: OutputPower, duty: Duty, in_use: bool) -> Demand {
    let power = music(it.class, it.efficiency.value(), delivered, duty);
    let rated = it.rated_voltage.value().map_or(14.4, |v| v.0).max(1.0);
    let supply = power.map(|p| match it.supply {
        _ if p <= 0.0 => Law::Open,
        SupplyLaw::Regulated => Law::Power(p),
        // P ∝ V² is a resistance.
        SupplyLaw::Unregulated => Law::Resistance(rated * rated / p),
    });
    Demand {
        supply,
        idle: it.idle_current.value().map_or(1.2, |i| i.0),
        off: it.standby_current.value().map_or(0.002, |i| i.0),
        may_be_on: in_use,
        cut_off: it.cut_off.value().map(|v| v.0),
        turn_on: if in_use {
            it.turn_on_current.value().map_or(0.01, |i| i.0)
        } else {
            0.0
        },
    }
}

/// Parked, equipment whose turn-on input hangs on a feed that nobody turns off stays on, without music: it asks what it asks
/// in use, its supply for music left out. Both lists are in the order of the sheet's parts.
pub(crate) fn stay_on(
    sheet: &Sheet,
    turn_on: &OrderedMap<model::PartId, TurnOnFed>,
    in_use: &[Demand],
    parked: &mut [Demand],
) {
    for ((parked, in_use), id) in parked.iter_mut().zip(in_use).zip(sheet.parts.keys()) {
        if turn_on.get(id).is_some_and(|fed| fed.always_live) {
            *parked = Demand {
                supply: [Law::Open; 3],
                ..*in_use
            };
        }
    }
}

/// What every part asks, in the order of the sheet's parts. `delivered` gives the output power of a part that drives
/// speakers. Equipment is taken as turned on whenever the vehicle is in use: wiring is judged for when it works.
pub(crate) fn demands(
    sheet: &Sheet,
    conditions: &Conditions,
    delivered: impl Fn(model::PartId) -> OutputPower,
) -> Vec<Demand> {
    let in_use = conditions.state != VehicleState::Parked;
    let engine = matches!(conditions.state, VehicleState::Idle | VehicleState::Cruise);
    let steady = |on: f64, off: f64| Demand {
        idle: on,
        off,
        may_be_on: in_use,
        ..Demand::NOTHING
    };
    sheet
        .parts
        .iter()
        .map(|(&id, part)| match &part.is {
            PartKind::Amplifier(it) => amplifier(it, delivered(id), conditions.duty, in_use),
            PartKind::HeadUnit(it) => {
                let power = music(AmplifierClass::Ab, None, delivered(id), conditions.duty);
                let supply = power.map(|p| if p > 0.0 { Law::Power(p) } else { Law::Open });
                let (on, off) = (
                    it.on_current.value().map_or(1.0, |i| i.0),
                    it.standby_current.value().map_or(0.003, |i| i.0),
                );
                Demand {
                    supply,
                    ..steady(on, off)
                }
            }
            PartKind::Processor(it) => {
                let turn_on = if in_use { 0.01 } else { 0.0 };
                let (on, off) = (
                    it.on_current.value().map_or(0.6, |i| i.0),
                    it.standby_current.value().map_or(0.002, |i| i.0),
                );
                Demand {
                    turn_on,
                    ..steady(on, off)
                }
            }
            PartKind::LineConverter(it) => steady(it.on_current.value().map_or(0.1, |i| i.0), 0.0),
            PartKind::Capacitor(it) => {
                let leak = it.leakage.value().map_or(0.005, |i| i.0);
                Demand {
                    may_be_on: true,
                    ..steady(leak, leak)
                }
            }
            PartKind::Vehicle(it) => {
                let standing = it.standing_load.value().map_or(0.03, |i| i.0);
                let running = it.running_load.value().map_or(25.0, |i| i.0);
                Demand {
                    may_be_on: true,
                    ..steady(if engine { running } else { standing }, standing)
                }
            }
            PartKind::Load(it) => {
                let on = match it.when {
                    LoadTime::Always => true,
                    LoadTime::EngineOn => engine,
                    LoadTime::InUse => in_use,
                };
                let share = it.share.value().map_or(1.0, |s| s.0).clamp(0.0, 1.0);
                let supply = [share, libm::sqrt(share), 1.0].map(|part| match it.law {
                    _ if part <= 0.0 => Law::Open,
                    LoadLaw::Current => Law::Current(it.current.value().map_or(5.0, |i| i.0).max(0.0) * part),
                    LoadLaw::Power => Law::Power(it.power.value().map_or(60.0, |p| p.0).max(0.0) * part),
                    LoadLaw::Resistance => Law::Resistance(
                        (it.resistance.value().map_or(2.4, |r| r.0) / part).max(values::BRIDGE),
                    ),
                });
                Demand {
                    supply,
                    may_be_on: on,
                    cut_off: it.cut_off.value().map(|v| v.0),
                    ..Demand::NOTHING
                }
            }
            // What it takes follows from what it gives; asked from the start, so that its supply is looked at with that of the others.
            PartKind::Converter(it) => Demand {
                supply: [Law::Power(0.0); 3],
                may_be_on: engine || !it.with_engine,
                ..Demand::NOTHING
            },
            PartKind::Relay(_) => Demand {
                may_be_on: true,
                ..Demand::NOTHING
            },
            _ => Demand::NOTHING,
        })
        .collect()
}
