//! What a meter reads between any two points of a sheet, in any state of the vehicle, with or without something broken.
//!
//! - *Volts* of direct current, red lead against black, at the mean level of a duty.
//! - *Volts* of alternating current under a test tone that every speaker's own filters pass, at outputs and speakers, where
//!   the equipment would turn out its share of full power: V = √(P·Z) with the rated impedance.
//! - *Ohms* with the supply isolated: battery and alternator off their leads, nothing turned on. Metal, coils of relays and voice coils
//!   are seen; electronics, capacitors and open contacts are not.
//! - *Amps* by clamp.
//!
//! **The meter itself.** Its input (10 MΩ) loads what it is put on, which tells where only a leak feeds a point; a point that nothing
//! ties to the other reads as hanging in the air. Its leads add their resistance to ohms.
//!
//! **What a sheet does not know of itself** is how it behaves while something is wrong. Equipment that needs a turn-on lead is off
//! without one; a device through which more than twice its rating would flow has opened; an output that drives less than
//! half of the least load that it may, or touches the body, has its amplifier protect itself and be silent (common practice); and what an
//! amplifier draws for its music follows what is left of its load ([`played`]).
//!
//! [`Meter`] solves one sheet in one state, with the engine of [`crate::study()`]. [`Bench`] holds a sheet ready for hundreds of suspicions: each is
//! worked as a few changes of networks that were factored once ([`linear`]), loads, sources and contacts followed round by round
//! ([`settle`]); what must be exact is solved anew by the engine.

mod alter;
mod bench;
mod hearing;
mod in_hand;
mod linear;
mod ohms;
mod played;
mod scene;
mod settle;
mod views;

pub use bench::{Bench, Fault, Foreseen, Isolated, Placed};
pub use in_hand::Meter;
pub use ohms::{OhmsShown, ohms_between};
pub use played::Tones;

use model::quantity::{Amps, Ohms, Volts};
use model::{RunId, TerminalRef};

/// Input resistance of a common digital multimeter, in ohms (common practice).
pub const METER_INPUT: f64 = 10e6;
/// Resistance of a pair of test leads with their tips, in ohms: 0.1 to 0.5 (common practice).
pub const METER_LEADS: f64 = 0.2;
/// The most that such a meter shows as ohms: beyond, it shows an open circuit.
pub const MOST_OHMS: f64 = 10e6;
/// A device opens within seconds at this many times its rating: ISO 8820-3 has blade fuses open within 0.15 to 5 s at 200 % (from
/// memory).
pub(crate) const OPENS: f64 = 2.0;

/// Where the leads are put, and what is measured.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Probe {
    /// Volts, red against black.
    Volts(TerminalRef, TerminalRef),
    /// Volts of a test tone, between two terminals.
    Tone(TerminalRef, TerminalRef),
    /// Ohms between two terminals, supply isolated.
    Ohms(TerminalRef, TerminalRef),
    /// Amps in a run, by clamp.
    Amps(RunId),
}

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shown {
    /// Volts, of direct or alternating current as was asked.
    Volts(Volts),
    /// Ohms, without those of the leads.
    Ohms(Ohms),
    /// Amps, as a size.
    Amps(Amps),
    /// Nothing ties the two points together: of volts about nothing is shown, of ohms an open circuit.
    Open,
}

impl Shown {
    /// The number on the display: nothing for volts of a point that hangs in the air; `None` for ohms of an open circuit.
    #[must_use]
    pub fn number(self, probe: &Probe) -> Option<f64> {
        match self {
            Self::Volts(volts) => Some(volts.0),
            Self::Ohms(ohms) => Some(ohms.0),
            Self::Amps(amps) => Some(amps.0),
            Self::Open if matches!(probe, Probe::Ohms(..)) => None,
            Self::Open => Some(0.0),
        }
    }
}
