//! Readings of a meter that were kept: lines of the meter sheet. A reading is a record of what was measured then and
//! there, so it names its place in words: it stays when the part is stripped out, and follows when one is renamed.

use crate::fact::Fact::{self, Unknown};
use crate::job::{Duty, VehicleState};
use crate::quantity::{Amps, Ohms, Volts};
use crate::{choice, properties};

choice! {
    /// What a meter measures.
    pub enum Measured {
        Volts = "volts", "volts";
        VoltsAc = "volts-ac", "volts AC under a test tone";
        Amps = "amps", "amps";
        Ohms = "ohms", "ohms";
    }
}

properties! {
    /// A reading of the meter that was kept. Of volts, amps and ohms it has the one that was measured; none where the
    /// meter showed no number, as for an open circuit.
    pub struct Reading {
        /// What was measured.
        measured as "measured": Measured = Measured::Volts;
        /// Where the red lead was, `B1.+`; for amps the run that the clamp was around, `W3`.
        at as "at": String = String::new();
        /// Where the black lead was; nothing for amps.
        against as "against": String = String::new();
        /// The volts read, red against black; of alternating current, their effective value.
        volts as "volts": Fact<Volts> = Unknown, -1000.0 to 1000.0;
        /// The amps read.
        amps as "amps": Fact<Amps> = Unknown, 0.0 to 100000.0;
        /// The ohms read, supply isolated.
        ohms as "ohms": Fact<Ohms> = Unknown, 0.0 to 100000000.0;
        /// Whether every fuse was out and every breaker open, for ohms.
        fuses_out as "fuses-out": bool = false;
        /// What the vehicle was doing.
        state as "state": VehicleState = VehicleState::Cruise;
        /// How hard the music worked the amplifiers.
        duty as "duty": Duty = Duty::Loud;
        /// What was moved, or done to the wire, while it was read.
        moved as "with": Fact<crate::laying::Moved> = Unknown;
        /// The complaints that it proves to be mended.
        proves as "proves": crate::thread::Tags = crate::thread::Tags::default();
        /// A remark, or what the meter showed instead of a number.
        remark as "remark": String = String::new();
    }
}

impl Reading {
    /// The number that was read.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match self.measured {
            Measured::Volts | Measured::VoltsAc => self.volts.value().map(|it| it.0),
            Measured::Amps => self.amps.value().map(|it| it.0),
            Measured::Ohms => self.ohms.value().map(|it| it.0),
        }
    }
    /// Puts in the number that was read.
    #[must_use]
    pub fn with_number(mut self, number: f64) -> Self {
        match self.measured {
            Measured::Volts | Measured::VoltsAc => self.volts = Fact::Given(Volts(number)),
            Measured::Amps => self.amps = Fact::Given(Amps(number)),
            Measured::Ohms => self.ohms = Fact::Given(Ohms(number)),
        }
        self
    }
    /// The same with a part or run called otherwise; `None` when it is not about that one.
    #[must_use]
    pub(crate) fn renamed(&self, before: &str, after: &str) -> Option<Self> {
        let again = |place: &str| {
            let rest = place.strip_prefix(before)?;
            (rest.is_empty() || rest.starts_with('.')).then(|| format!("{after}{rest}"))
        };
        let (at, against) = (again(&self.at), again(&self.against));
        (at.is_some() || against.is_some()).then(|| Self {
            at: at.unwrap_or_else(|| self.at.clone()),
            against: against.unwrap_or_else(|| self.against.clone()),
            ..self.clone()
        })
    }
}
