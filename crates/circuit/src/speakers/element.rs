//! The elements of a speaker network and what each is in the several views of it.
//!
//! Every element is a series impedance R + jωL + S/jω (S = 1/C), so that chains of them add up to another one.

use model::conductor::{Condition, EndingMethod, Material, Size};
use model::kinds::sound::{Crossover, InlineCapacitor, Speaker};
use model::quantity::{Celsius, Ohms, SquareMm};
use model::{Ending, PartId, Run, RunId};
use reference::audio::{COIL_RESISTANCE, IMPEDANCE_FLOOR};

use super::complex::Complex;

/// Least resistance of a lead, in ohms: a lead of no length still is one, so that currents along it are defined.
const LEAST_LEAD: f64 = 1e-6;

/// What an element is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum What {
    /// A run of wire with its two endings.
    Lead(RunId),
    /// A voice coil, from its positive to its negative end.
    Coil { speaker: PartId, coil: u8 },
    /// An inductor of a crossover.
    Inductor(PartId),
    /// A capacitor of a crossover or in a lead.
    Capacitor(PartId),
    /// A join inside an amplifier whose channels are bridged.
    Tie,
}

/// A series impedance R + jωL + S/jω.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Impedance {
    /// R, in ohms.
    pub(crate) ohms: f64,
    /// L, in henries.
    pub(crate) henries: f64,
    /// S = 1/C, in 1/farads.
    pub(crate) elastance: f64,
}

impl Impedance {
    pub(crate) const fn resistance(ohms: f64) -> Self {
        Self {
            ohms,
            henries: 0.0,
            elastance: 0.0,
        }
    }
    pub(crate) fn plus(self, other: Self) -> Self {
        Self {
            ohms: self.ohms + other.ohms,
            henries: self.henries + other.henries,
            elastance: self.elastance + other.elastance,
        }
    }
    /// Its value at an angular frequency above zero.
    pub(crate) fn at(self, omega: f64) -> Complex {
        Complex::new(self.ohms, omega * self.henries - self.elastance / omega)
    }
}

/// One element between two nodes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Element {
    pub(crate) a: usize,
    pub(crate) b: usize,
    pub(crate) what: What,
    /// What it is over the band.
    pub(crate) band: Impedance,
    /// Rated impedance of a coil.
    pub(crate) rated: f64,
    /// DC resistance of a coil.
    pub(crate) dc: f64,
    /// Angular frequency at which the filter divides that an inductor or a capacitor belongs to.
    pub(crate) corner: f64,
}

/// How a network is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum View {
    /// As it is, leads, inductances and all.
    Band,
    /// Rated impedances, no leads, the true filters.
    Filter,
    /// Rated impedances where the filters pass the low end: inductors conduct, capacitors do not.
    Low { leads: bool },
    /// Rated impedances where the filters pass the high end: capacitors conduct, inductors do not.
    High { leads: bool },
    /// Rated impedances at an angular frequency between the corners of two filters: what divides below it passes the high end, what
    /// divides above it the low end.
    Between { leads: bool, at: f64 },
    /// Direct current, as a meter sees it with the amplifier taken off.
    Meter,
}

/// What an element is taken as in a view.
pub(crate) enum Taken {
    Short,
    Open,
    As(Impedance),
}

impl Element {
    pub(crate) fn in_view(&self, view: View) -> Taken {
        match (self.what, view) {
            (What::Tie, View::Meter) => Taken::Open,
            (What::Tie, _) => Taken::Short,
            (_, View::Band) => Taken::As(self.band),
            (What::Coil { .. }, View::Meter) => Taken::As(Impedance::resistance(self.dc)),
            (What::Coil { .. }, _) => Taken::As(Impedance::resistance(self.rated)),
            (
                What::Lead(_),
                View::Meter
                | View::Low { leads: true }
                | View::High { leads: true }
                | View::Between { leads: true, .. },
            ) => Taken::As(self.band),
            (What::Lead(_), _) => Taken::Short,
            (_, View::Filter) => Taken::As(self.band),
            (What::Inductor(_), View::Low { .. } | View::Meter) => Taken::Short,
            (What::Inductor(_), View::High { .. }) => Taken::Open,
            (What::Inductor(_), View::Between { at, .. }) if self.corner < at => Taken::Open,
            (What::Inductor(_), View::Between { .. }) => Taken::Short,
            (What::Capacitor(_), View::Low { .. } | View::Meter) => Taken::Open,
            (What::Capacitor(_), View::High { .. }) => Taken::Short,
            (What::Capacitor(_), View::Between { at, .. }) if self.corner < at => Taken::Short,
            (What::Capacitor(_), View::Between { .. }) => Taken::Open,
        }
    }
}

/// A number that may come from anywhere, brought into a range; what is not a number becomes `instead`.
pub(crate) fn sane(number: f64, instead: f64, least: f64, most: f64) -> f64 {
    if number.is_finite() {
        number.clamp(least, most)
    } else {
        instead
    }
}

/// Rated impedance of one coil, 4 Ω where nobody knows.
pub(crate) fn rated(speaker: &Speaker) -> f64 {
    sane(speaker.impedance.or(Ohms(4.0)).0, 4.0, 0.05, 1000.0)
}

/// DC resistance of one coil: given, or the usual share of the rated impedance ([`COIL_RESISTANCE`]).
pub(crate) fn coil_dc(speaker: &Speaker) -> f64 {
    let usual = rated(speaker) * COIL_RESISTANCE.usual;
    speaker
        .dc_resistance
        .value()
        .map_or(usual, |dc| sane(dc.0, usual, 0.05, 1000.0))
}

/// A coil over the band: R + jωL.
///
/// A driver's |Z| never comes down to its DC resistance inside its band: the motion adds to it. IEC 60268-5 clause 16.1
/// lets it dip to 80 % of the rated impedance (from memory), while the usual DC resistance is 70 to 85 % of it. The two
/// lower ends are taken to belong together: R is the DC resistance times 0.8/0.7, up to the rated impedance, and never
/// below the DC resistance itself. So a driver in the usual range keeps to the standard, and one below it, which is rated
/// too high, does not.
///
/// An inductance that nobody stated is left out. It would only raise |Z|, except behind a crossover of second order, where a
/// guessed one makes a deep dip that a crossover made for its drivers does not have.
pub(crate) fn coil_band(speaker: &Speaker) -> Impedance {
    let (rated, dc) = (rated(speaker), coil_dc(speaker));
    let ohms = (dc * (IMPEDANCE_FLOOR.0 / COIL_RESISTANCE.least))
        .min(rated)
        .max(dc);
    let henries = speaker
        .inductance
        .value()
        .map_or(0.0, |it| sane(it.0, 0.0, 0.0, 1.0));
    Impedance {
        ohms,
        henries,
        elastance: 0.0,
    }
}

/// Angular frequency at which a crossover divides.
fn divides_at(it: &Crossover) -> f64 {
    let frequency = it.frequency.or(model::quantity::Hertz(3500.0)).0;
    core::f64::consts::TAU * sane(frequency, 3500.0, 1.0, 1e6)
}

/// Inductor and capacitor of a crossover, and the angular frequency at which it divides: first order L = Z/2πf, C = 1/2πfZ; second order, Butterworth,
/// L = √2·Z/2πf, C = 1/(√2·2πfZ). Textbook formulas.
pub(crate) fn crossover(it: &Crossover) -> (f64, f64, f64) {
    let omega = divides_at(it);
    let load = sane(it.load.or(Ohms(4.0)).0, 4.0, 0.05, 1000.0);
    let (inductance, capacitance) = (load / omega, 1.0 / (omega * load));
    if it.order <= 1 {
        (inductance, capacitance, omega)
    } else {
        let root = core::f64::consts::SQRT_2;
        (inductance * root, capacitance / root, omega)
    }
}

/// 1/C of an in-line capacitor.
pub(crate) fn elastance(it: &InlineCapacitor) -> f64 {
    1.0 / sane(
        it.capacitance.or(model::quantity::Farads(47e-6)).0,
        47e-6,
        1e-12,
        1.0,
    )
}

/// Resistance of a speaker lead at 20 °C with both its endings.
pub(crate) fn lead(run: &Run) -> f64 {
    let wire = &run.wire;
    let size = wire.size.or(Size::Metric(SquareMm(2.5)));
    let per_metre = wire.stated_resistance.value().unwrap_or_else(|| {
        reference::conductors::nominal_resistance_per_metre(
            wire.material.or(Material::Copper),
            size,
            Celsius(20.0),
        )
    });
    let length = sane(wire.length.or(model::quantity::Metres(1.0)).0, 1.0, 0.0, 1e4);
    let metal = sane(per_metre.0, 0.0, 0.0, 1e6) * length;
    let condition = wire.condition.or(Condition::Sound);
    let ending = |it: &Ending| {
        it.resistance.value().map_or_else(
            || {
                let method = match it.method.or(EndingMethod::CrimpedSpade) {
                    EndingMethod::Loose => EndingMethod::ScrewedBare,
                    method => method,
                };
                reference::contacts::ending_resistance(method, size.area())
                    .map_or(0.0, |typical| typical.usual.0)
                    * reference::contacts::condition_factor(condition).usual
            },
            |stated| sane(stated.0, 0.0, 0.0, 1e6),
        )
    };
    (metal + ending(&run.from_ending) + ending(&run.to_ending)).max(LEAST_LEAD)
}
