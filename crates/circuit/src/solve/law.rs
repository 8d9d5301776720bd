//! The laws of elements: what flows through a wire, a source, a diode, a load at a voltage. All are monotone, and the bent ones are
//! made of straight pieces.

/// What an element does. Voltages are from its first node to its second, currents flow from the first to the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// Nothing: an open contact, or a load that is off.
    Open,
    /// A resistance, in ohms, above zero.
    Resistance(f64),
    /// A voltage in volts, first node positive, behind a resistance in ohms, above zero.
    Source {
        /// The voltage at no current.
        emf: f64,
        /// The resistance in series.
        resistance: f64,
    },
    /// A battery: a voltage behind one resistance when it gives and a larger one when it is charged.
    Battery {
        /// The voltage at no current.
        emf: f64,
        /// Resistance to discharge, in ohms.
        gives: f64,
        /// Resistance to charging, in ohms.
        takes: f64,
    },
    /// Holds a voltage behind a resistance up to a limit, and takes nothing: alternator, converter.
    Limited {
        /// The voltage at no current.
        emf: f64,
        /// The resistance in series.
        resistance: f64,
        /// Most current, in amperes.
        limit: f64,
    },
    /// Passes current from first node to second only, losing a voltage; backwards it leaks [`LEAKAGE`].
    Diode {
        /// Voltage lost, in volts.
        drop: f64,
        /// The resistance in series.
        resistance: f64,
    },
    /// Takes a current whatever the voltage, in amperes; gives it when negative.
    Current(f64),
    /// Takes a power whatever the voltage, in watts, not negative.
    Power(f64),
}

/// Conductance of a diode that blocks, in siemens: 12 µA at 12 V (from memory).
pub const LEAKAGE: f64 = 1e-6;

/// A source still holds, in volts, at its own voltage: a network that draws nothing ends right there, up to rounding.
pub(super) const HAIR: f64 = 1e-9;

impl Law {
    /// Slope and intercept of a law that is straight or bent, on the piece on which the voltage lies: the current from first
    /// node to second is slope · v + intercept. `None` for loads.
    pub(crate) fn piece(self, v: f64) -> Option<(f64, f64)> {
        match self {
            Self::Open => Some((0.0, 0.0)),
            Self::Resistance(ohms) => Some((1.0 / ohms, 0.0)),
            Self::Source { emf, resistance } => Some((1.0 / resistance, -emf / resistance)),
            Self::Battery { emf, gives, takes } => {
                let r = if v > emf + HAIR { takes } else { gives };
                Some((1.0 / r, -emf / r))
            }
            Self::Limited {
                emf,
                resistance,
                limit,
            } => Some(if v > emf + HAIR {
                (0.0, 0.0)
            } else if v <= emf - resistance * limit {
                (0.0, -limit)
            } else {
                (1.0 / resistance, -emf / resistance)
            }),
            // No hair here: it would hide the leakage, and a diode that nothing flows through would be taken to pass.
            Self::Diode { drop, resistance } => Some(if v > drop {
                (1.0 / resistance + LEAKAGE, -drop / resistance)
            } else {
                (LEAKAGE, 0.0)
            }),
            Self::Current(_) | Self::Power(_) => None,
        }
    }

    /// The piece that a cold start takes: sources hold, batteries give, diodes pass.
    pub(super) fn first_piece(self) -> Option<(f64, f64)> {
        match self {
            Self::Battery { emf, gives, .. } => Some((1.0 / gives, -emf / gives)),
            Self::Limited { emf, resistance, .. } => Some((1.0 / resistance, -emf / resistance)),
            Self::Diode { drop, resistance } => Some((1.0 / resistance + LEAKAGE, -drop / resistance)),
            other => other.piece(0.0),
        }
    }

    /// Whether it ties its nodes together.
    pub(crate) fn ties(self) -> bool {
        !matches!(self, Self::Open | Self::Current(_) | Self::Power(_))
    }

    /// Whether it can drive current of its own.
    pub(super) fn drives(self) -> bool {
        match self {
            Self::Source { emf, .. } | Self::Battery { emf, .. } | Self::Limited { emf, .. } => emf != 0.0,
            Self::Current(amps) => amps < 0.0,
            _ => false,
        }
    }
}

/// An element between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// The nodes it joins.
    pub nodes: [usize; 2],
    /// What it does.
    pub law: Law,
}
