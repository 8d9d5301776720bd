//! The shortest proof: the fewest and easiest readings that would expose every single fault of grade Stop, as a list to work through.
//!
//! - **Faults.** Every single one with which the checks would say something of grade Stop (`hazards`).
//! - **Readings.** Wherever leads can be put or a clamp closed: ohms with the supply isolated, volts and amps parked, on, and under a test
//!   tone with the engine off and idling (`readings`).
//! - **Limits.** A sound system is not just as its sheet has it ([`Spread`]); a reading lies within [`Limits`] whatever typical contacts, charge
//!   and loads there are, and exposes a fault if it lies outside of them for certain (`limits`).
//! - **Shortest.** Fewest readings first, least effort second, by an exact search ([`cover`]), which says whether it was brought to its end. Of
//!   equally few, readings that make the whole walk shorter are then taken one for another.
//! - **Shorts** are looked for with the supply isolated and no other way: what would burn once the supply is on is to be found before it is.
//!
//! Faults come from changes of factored networks; those that a chosen reading has to expose are solved anew by the engine, and where that says
//! otherwise the choice is made again. What no reading exposes is told, with what to look at instead ([`Unseen`]).
//!
//! *What a proof is not*: two faults at once may hide one another, a fault that comes and goes is seen only while it is there, and what is
//! drawn wrong is wrong however well it is built: that is for the checks.

mod cover;
mod hazards;
mod limits;
mod order;
mod readings;
mod said;
mod spread;
mod work;

pub use cover::{Cover, ROW, Row, cover};
pub use hazards::{Fault, Harm, Hazard};
pub use limits::{COUNTED, Limits, UNSEEN};
pub use readings::{Doing, without_fuses};
pub use said::{
    figure_of, said_doing, said_expected, said_fault, said_faults, said_harm, said_leads, said_look, said_why,
};
pub use spread::{Spread, varied};
pub use work::Proving;

use crate::finding::State;
use crate::finding::scale::scatter;
use circuit::{DeviceRef, MOST_OHMS, Probe};
use model::job::Duty;
use model::readings::{Measured, Reading};
use model::{PartId, RunId, Settings, Sheet};
use ordered::Sort as _;

/// One reading of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What the vehicle does.
    pub doing: Doing,
    /// The same as a state.
    pub state: State,
    /// Where the leads are put.
    pub probe: Probe,
    /// What is read if all is as drawn; `None` for an open circuit.
    pub expected: Option<f64>,
    /// Between which numbers a sound system lies.
    pub limits: Limits,
    /// What it exposes: the place of a fault in [`Proof::hazards`], and what is read with it; `None` for an open circuit.
    pub exposes: Vec<(usize, Option<f64>)>,
}

/// What to look at instead of measuring.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// What is printed on a fuse or breaker, and that it is one.
    Rating(DeviceRef),
    /// The size of a run.
    Size(RunId),
    /// Both ends of a run, and the wire along its way.
    Run(RunId),
    /// The contacts of a part.
    Part(PartId),
}

/// Faults that no reading exposes.
#[derive(Clone, Debug, PartialEq)]
pub struct Unseen {
    /// What to look at.
    pub look: Look,
    /// Their places in [`Proof::hazards`].
    pub hazards: Vec<usize>,
}

/// A proof.
#[derive(Clone, Debug, PartialEq)]
pub struct Proof {
    /// Every single fault of grade Stop.
    pub hazards: Vec<Hazard>,
    /// The readings, in the order in which they are taken.
    pub steps: Vec<Step>,
    /// What to look at instead.
    pub unseen: Vec<Unseen>,
    /// No list that exposes as much has fewer readings than this.
    pub least: usize,
    /// Minutes for all of it, roughly.
    pub minutes: f64,
    /// How hard the test tone is played.
    pub played: Duty,
    /// Findings of grade Stop that the sheet has by itself: readings say nothing about these.
    pub stops: usize,
}

/// The problem that a proof is the answer to, before the engine has had its say: what each reading that may be taken exposes, and how
/// many faults there are. For whoever wants to solve it by other means.
#[must_use]
pub fn problem(sheet: &Sheet, settings: &Settings) -> Option<(Vec<Row>, usize)> {
    Proving::new(sheet, settings).problem()
}

/// The shortest proof of a sheet as it should be. `None` where nothing on it is fed.
#[must_use]
pub fn prove(sheet: &Sheet, settings: &Settings) -> Option<Proof> {
    let mut proving = Proving::new(sheet, settings);
    loop {
        if let Some(proof) = proving.step() {
            return proof;
        }
    }
}

impl Proof {
    /// Whether no list that exposes as much has fewer readings.
    #[must_use]
    pub fn is_shortest(&self) -> bool {
        self.steps.len() <= self.least
    }

    /// The faults that a reading outside of its limits points to, by their places, the likeliest first: those with which it would be nearest
    /// to what was read.
    #[must_use]
    pub fn points_to(&self, step: &Step, read: Option<f64>) -> Vec<usize> {
        let scatter = scatter(&step.probe, false);
        let place = |number: Option<f64>| scatter.place(number.unwrap_or(MOST_OHMS));
        let mut all: Vec<(f64, usize)> = step
            .exposes
            .iter()
            .map(|(at, with_it)| ((place(*with_it) - place(read)).abs(), *at))
            .collect();
        all.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        all.into_iter().map(|(_, at)| at).collect()
    }
}

impl Step {
    fn measured(&self) -> Measured {
        match self.probe {
            Probe::Volts(..) => Measured::Volts,
            Probe::Tone(..) => Measured::VoltsAc,
            Probe::Ohms(..) => Measured::Ohms,
            Probe::Amps(_) => Measured::Amps,
        }
    }

    /// The unit of what is read.
    #[must_use]
    pub fn unit(&self) -> &'static str {
        match self.measured() {
            Measured::Volts | Measured::VoltsAc => "V",
            Measured::Ohms => "Ω",
            Measured::Amps => "A",
        }
    }

    /// The unit in which a meter shows it, and how many of these are one of [`Step::unit`].
    #[must_use]
    pub fn shown_in(&self) -> (&'static str, f64) {
        match (self.measured(), self.limits.most) {
            (Measured::Volts | Measured::VoltsAc, Some(most)) if most.max(-self.limits.least) < 1.0 => {
                ("mV", 1000.0)
            }
            _ => (self.unit(), 1.0),
        }
    }

    /// Where the leads are, as they stand in a kept reading: red, black.
    fn places(&self, sheet: &Sheet) -> (String, String) {
        match &self.probe {
            Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black) => {
                (sheet.written(red), sheet.written(black))
            }
            Probe::Amps(run) => {
                let tag = sheet.runs.get(run).map(|run| run.tag.clone());
                (tag.unwrap_or_default(), String::new())
            }
        }
    }

    /// A reading of it as it is kept with the job; `None` for an open circuit.
    #[must_use]
    pub fn reading(&self, sheet: &Sheet, read: Option<f64>) -> Reading {
        let (at, against) = self.places(sheet);
        let reading = Reading {
            measured: self.measured(),
            at,
            against,
            state: self.state.vehicle,
            duty: self.state.duty,
            fuses_out: self.doing == Doing::FusesOut,
            ..Reading::default()
        };
        match read {
            Some(number) => reading.with_number(number),
            None => reading,
        }
    }

    /// Where among the kept readings of the sheet the last one of it is, taken with nothing moved. Ohms are the same in every state.
    #[must_use]
    pub fn kept(&self, sheet: &Sheet) -> Option<usize> {
        let own = self.reading(sheet, None);
        let is_it = |kept: &Reading| {
            kept.moved.is_unknown()
                && kept.measured == own.measured
                && kept.at == own.at
                && kept.against == own.against
                && kept.fuses_out == own.fuses_out
                && (own.measured == Measured::Ohms || (kept.state == own.state && kept.duty == own.duty))
        };
        sheet.readings.iter().rposition(is_it)
    }

    /// Whether what was kept of it lies within its limits; `None` where nothing was.
    #[must_use]
    pub fn verdict(&self, sheet: &Sheet) -> Option<bool> {
        let kept = sheet.readings.get(self.kept(sheet)?)?;
        let read = kept.number();
        // Volts and amps without a number say nothing.
        (read.is_some() || self.measured() == Measured::Ohms).then(|| self.limits.hold(read))
    }
}
