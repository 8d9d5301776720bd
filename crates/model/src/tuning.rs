//! Settings of equipment as they were left: a line for each channel.

use crate::fact::Fact::{self, Unknown};
use crate::properties;
use crate::quantity::{Decibels, Hertz, Metres, Volts};

properties! {
    /// How one channel of an amplifier, processor or head unit is set.
    pub struct Tuning {
        /// Tag of the equipment.
        of as "of": String = String::new();
        /// Its channel, as it is marked there.
        channel as "channel": String = String::new();
        /// Volts at the output with the test tone, to which the gain is set.
        target as "target-volts": Fact<Volts> = Unknown, 0.0 to 1000.0;
        /// Where the gain knob or number stands then.
        gain as "gain": String = String::new();
        /// Below this frequency it passes nothing.
        high_pass as "high-pass": Fact<Hertz> = Unknown, 1.0 to 40000.0;
        /// Above this frequency it passes nothing.
        low_pass as "low-pass": Fact<Hertz> = Unknown, 1.0 to 40000.0;
        /// Steepness of its filters, per octave.
        slope as "slope": Fact<Decibels> = Unknown, 0.0 to 96.0;
        /// Level against the other channels.
        level as "level": Fact<Decibels> = Unknown, -100.0 to 40.0;
        /// Delay, as the length of way that sound travels in it.
        delay as "delay": Fact<Metres> = Unknown, 0.0 to 50.0;
        /// Whether its polarity is turned.
        turned as "turned": bool = false;
        /// Anything else: equaliser, bass lift, mode switches.
        remark as "remark": String = String::new();
    }
}
