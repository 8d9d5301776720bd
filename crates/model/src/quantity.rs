//! Typed quantities: a newtype per physical quantity, and the few operations between them that mean something.
//!
//! SI inside (V, A, Ω, m, s, W, °C); cross-section in mm², as the trade writes it. The number inside is public: a
//! quantity has no rule of its own beyond its unit. Values that come from a file are checked (finite, in the range
//! of the property they belong to) at the door, see [`crate::property`]; values that the solver reports are checked
//! by its own balance.

use serde::Serialize;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// What every quantity can do: name its unit, be made from and read as a bare number in that unit.
pub trait Quantity: Copy + PartialOrd {
    /// Unit as written after a number on screen, for example `Ω`.
    const SYMBOL: &'static str;
    /// Unit as written in the text form of a job, in plain ASCII, for example `ohm`.
    const ASCII: &'static str;
    /// What is measured, for example `resistance`.
    const NAME: &'static str;
    /// The quantity from a number in its unit.
    fn of(number: f64) -> Self;
    /// The number in the quantity's unit.
    fn number(self) -> f64;
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $symbol:literal, $ascii:literal, $what:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);
            /// The size without the sign.
            #[must_use]
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }
            /// The larger of two; a number that is not one loses.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
            /// The smaller of two; a number that is not one loses.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }
        impl Quantity for $name {
            const SYMBOL: &'static str = $symbol;
            const ASCII: &'static str = $ascii;
            const NAME: &'static str = $what;
            fn of(number: f64) -> Self {
                Self(number)
            }
            fn number(self) -> f64 {
                self.0
            }
        }
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self::ZERO, Add::add)
            }
        }
        impl std::fmt::Display for $name {
            /// The number, in the precision asked for, and the unit.
            fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                std::fmt::Display::fmt(&self.0, out)?;
                write!(out, " {}", $symbol)
            }
        }
    };
}

quantity!(/// Electric potential or voltage, in volts.
    Volts, "V", "V", "voltage");
quantity!(/// Electric current, in amperes.
    Amps, "A", "A", "current");
quantity!(/// Resistance or size of an impedance, in ohms.
    Ohms, "Ω", "ohm", "resistance");
quantity!(/// Resistance per length of a conductor, in ohms per metre.
    OhmsPerMetre, "Ω/m", "ohm/m", "resistance per length");
quantity!(/// Power, in watts.
    Watts, "W", "W", "power");
quantity!(/// Length, in metres.
    Metres, "m", "m", "length");
quantity!(/// Length, in millimetres, where a strand or a screw is meant.
    Millimetres, "mm", "mm", "length");
quantity!(/// Cross-section of a conductor, in square millimetres.
    SquareMm, "mm²", "mm2", "cross-section");
quantity!(/// Temperature, in degrees Celsius.
    Celsius, "°C", "C", "temperature");
quantity!(/// Temperature difference, in kelvin.
    Kelvin, "K", "K", "temperature rise");
quantity!(/// Capacitance, in farads.
    Farads, "F", "F", "capacitance");
quantity!(/// Inductance, in henries.
    Henries, "H", "H", "inductance");
quantity!(/// Frequency, in hertz.
    Hertz, "Hz", "Hz", "frequency");
quantity!(/// Time, in seconds.
    Seconds, "s", "s", "time");
quantity!(/// Time, in hours, where a parked or discharging vehicle is meant.
    Hours, "h", "h", "time");
quantity!(/// Charge, in ampere-hours.
    AmpHours, "Ah", "Ah", "charge");
quantity!(/// A share of a whole, 1 = all of it. Written in per cent.
    Share, "", "", "share");
quantity!(/// Level difference, in decibels.
    Decibels, "dB", "dB", "level");

macro_rules! product {
    ($a:ident * $b:ident = $c:ident) => {
        impl Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl Mul<$a> for $b {
            type Output = $c;
            fn mul(self, other: $a) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl Div<$a> for $c {
            type Output = $b;
            fn div(self, divisor: $a) -> $b {
                $b(self.0 / divisor.0)
            }
        }
        impl Div<$b> for $c {
            type Output = $a;
            fn div(self, divisor: $b) -> $a {
                $a(self.0 / divisor.0)
            }
        }
    };
}

product!(Amps * Ohms = Volts);
product!(Volts * Amps = Watts);
product!(OhmsPerMetre * Metres = Ohms);
product!(Amps * Hours = AmpHours);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ohms_law_in_all_directions() {
        // ref: worked_examples.csv WE10; OpenStax College Physics 21.1; memory, recomputed
        let current = Volts(12.0) / (Ohms(1.0) + Ohms(6.0) + Ohms(13.0));
        assert!((current.0 - 0.6).abs() < 1e-12);
        let power = Volts(12.0) * current;
        assert!((power.0 - 7.2).abs() < 1e-12);
        assert!((power / current - Volts(12.0)).abs().0 < 1e-12);
    }

    #[test]
    fn prints_with_precision_and_unit() {
        assert_eq!(format!("{:.2}", Ohms(1.234)), "1.23 Ω");
    }
}
