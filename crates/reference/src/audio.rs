//! Audio: duty of the amplifier, efficiency by class, impedance tolerance, rating conditions.

use crate::interpolate::linear;
use crate::{Source, Typical};
use model::job::Duty;
use model::kinds::sound::AmplifierClass;
use model::quantity::{Amps, Ohms, Share, Volts, Watts};

/// Supply voltage that amplifier power is stated at, at the amplifier's own terminals.
///
/// Source: ANSI/CTA-2006 (from memory).
pub const RATING_VOLTAGE: Volts = Volts(14.4);
/// Load that amplifier power is stated at, unless others are stated too.
///
/// Source: ANSI/CTA-2006 (read in a list of its ratings).
pub const RATING_LOAD: Ohms = Ohms(4.0);
/// Least impedance over the band as a share of the rated impedance of a loudspeaker.
///
/// Source: IEC 60268-5 clause 16.1 (from memory).
pub const IMPEDANCE_FLOOR: Share = Share(0.8);
/// DC resistance of a voice coil over its rated impedance.
pub const COIL_RESISTANCE: Typical<f64> = Typical {
    least: 0.70,
    usual: 0.775,
    most: 0.85,
    source: Source::memory("loudspeaker textbooks"),
};

/// Share of full power that a duty means, on the average.
///
/// Music 1/8: IEC 62368-1 Annex E and IEC 60065 4.2.6, normal operation (1/8 read). Loud music 1/3: FTC preconditioning,
/// 16 CFR 432, earlier text (from memory). Speech 1/20: common practice, pauses of speech.
#[must_use]
pub const fn duty_share(duty: Duty) -> Share {
    match duty {
        Duty::Idle => Share(0.0),
        Duty::Speech => Share(0.05),
        Duty::Music => Share(0.125),
        Duty::Loud => Share(1.0 / 3.0),
        Duty::Tone => Share(1.0),
    }
}

/// Efficiency of an amplifier from its supply terminals to its outputs, at a share of full power.
///
/// Common practice, with its range: class AB 55 to 65 % at full power and 20 to 30 % at 1/8; class D 75 to 90 % and
/// 50 to 75 %. Between, efficiency is linear in the square root of power, that is in output voltage, as in the theory of
/// class B (π/4 · √share); below 1/8 it falls to zero with it. Idle current comes on top of the power this gives.
/// A share outside 0.001 to 1 is taken as the nearer end.
#[must_use]
pub fn efficiency(class: AmplifierClass, share: Share) -> Typical<Share> {
    let level = libm::sqrt(share.0.clamp(0.001, 1.0));
    let eighth = libm::sqrt(0.125);
    let of =
        |at_eighth: f64, full: f64| Share(linear(&[(0.0, 0.0), (eighth, at_eighth), (1.0, full)], level));
    let source = Source::practice("measured amplifiers; wide spread");
    match class {
        AmplifierClass::Ab => Typical {
            least: of(0.20, 0.55),
            usual: of(0.25, 0.60),
            most: of(0.30, 0.65),
            source,
        },
        AmplifierClass::D => Typical {
            least: of(0.50, 0.75),
            usual: of(0.60, 0.80),
            most: of(0.75, 0.90),
            source,
        },
    }
}

/// Supply current of an amplifier: I = P/(η U), without its idle current. `None` unless η and U are above zero.
#[must_use]
pub fn supply_current(output: Watts, efficiency: Share, supply: Volts) -> Option<Amps> {
    (efficiency.0 > 0.0 && supply.0 > 0.0)
        .then(|| Amps(output.0 / (efficiency.0 * supply.0)))
        .filter(|amps| amps.0.is_finite())
}

/// Loss of a speaker lead in decibels of power at the load: 20 log₁₀((Z + R)/Z), above zero. `None` unless Z > 0 and R ≥ 0.
#[must_use]
pub fn lead_loss(load: Ohms, lead: Ohms) -> Option<model::quantity::Decibels> {
    (load.0 > 0.0 && lead.0 >= 0.0)
        .then(|| model::quantity::Decibels(20.0 * libm::log10((load.0 + lead.0) / load.0)))
        .filter(|loss| loss.0.is_finite())
}
