//! Readings on a scale on which a hand meter and typical contacts err by one everywhere.

use circuit::{MOST_OHMS, Probe, Shown};

/// By how much readings of a kind scatter round what is foretold: so much at least, and this share of the size. The drawing knows
/// typical contacts, not these ones; a common hand meter errs by 0.5 % and a digit. Half of what a kept reading may lie beside what was
/// expected (see the meter sheet), taken as one standard deviation; our own judgement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Scatter {
    pub(crate) least: f64,
    pub(crate) share: f64,
}

const VOLTS: Scatter = Scatter {
    least: 0.05,
    share: 0.01,
};
/// Along one wire or across one fuse, where only the small difference is read.
const DROP: Scatter = Scatter {
    least: 0.01,
    share: 0.15,
};
const TONE: Scatter = Scatter {
    least: 0.1,
    share: 0.06,
};
const AMPS: Scatter = Scatter {
    least: 0.05,
    share: 0.08,
};
const OHMS: Scatter = Scatter {
    least: 0.15,
    share: 0.08,
};

/// How readings at a probe scatter. `near` for volts along one wire or across one part.
pub(crate) fn scatter(probe: &Probe, near: bool) -> Scatter {
    match probe {
        Probe::Volts(..) if near => DROP,
        Probe::Volts(..) => VOLTS,
        Probe::Tone(..) => TONE,
        Probe::Amps(_) => AMPS,
        Probe::Ohms(..) => OHMS,
    }
}

/// The number of a reading; an open circuit as the most that a meter shows.
pub(crate) fn number(shown: Shown, probe: &Probe) -> f64 {
    shown.number(probe).unwrap_or(MOST_OHMS)
}

/// A number as a meter shows it; `None` for an open circuit.
pub(crate) fn shown(probe: &Probe, number: f64) -> Option<f64> {
    (!(matches!(probe, Probe::Ohms(..)) && number >= MOST_OHMS)).then_some(number)
}

impl Scatter {
    /// A number on the scale: straight up to where share takes over, logarithmic beyond.
    pub(crate) fn place(self, number: f64) -> f64 {
        let bend = self.least / self.share;
        let size = number.abs();
        let along = if size <= bend {
            size
        } else {
            bend + libm::log(size / bend) * bend
        };
        along / self.least * number.signum()
    }

    /// The number at a place on the scale.
    pub(crate) fn number(self, place: f64) -> f64 {
        let bend = self.least / self.share;
        let along = place.abs() * self.least;
        let size = if along <= bend {
            along
        } else {
            bend * libm::exp(along / bend - 1.0)
        };
        size * place.signum()
    }

    /// The standard deviation at a number, in its unit.
    pub(crate) fn at(self, number: f64) -> f64 {
        (number.abs() * self.share).max(self.least)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_deviation_is_one_on_the_scale_everywhere() {
        for volts in [0.0, 0.3, 4.9, 5.5, 12.6, 14.4, -12.6] {
            let far = VOLTS.place(volts + VOLTS.at(volts)) - VOLTS.place(volts);
            assert!((far - 1.0).abs() < 0.02, "{volts}: {far}");
            assert!((VOLTS.number(VOLTS.place(volts)) - volts).abs() < 1e-9);
        }
        assert!(OHMS.place(MOST_OHMS) > OHMS.place(1000.0) + 50.0);
    }
}
