//! Resistances and limits of things on a sheet, from the published tables, with a stand-in where a fact is missing.
//!
//! Stand-ins: size 2.5 mm², length 1 m, copper, ring ending from 6 mm² on and push-on ending below; a fuse of unknown
//! rating as one of 30 A. Whoever needs to know is told through [`super::Network::assumed`].

use model::conductor::{Condition, EndingMethod, Material, Size, Surroundings};
use model::job::Conditions;
use model::kinds::sound::InputGround;
use model::kinds::supply::{Battery, Chemistry, FuseForm, GroundSurface, SpliceMethod};
use model::quantity::{Amps, Celsius, Ohms, OhmsPerMetre, SquareMm};
use model::{PartKind, Run, Sheet, Wire};
use reference::ampacity::{AmpacityQuery, allowable_current, rated_rise};
use reference::{Source, Typical, ampacity, battery, conductors, contacts, fuses, materials};

/// Contact of a switch, relay or isolator, closed, in ohms. Common practice: 1 mΩ, of a range from 0.2 to 20 mΩ.
pub(crate) const CONTACT: f64 = 1e-3;
/// A fuse bridged with foil or wire, in ohms. Common practice: 1 mΩ.
pub(crate) const BRIDGE: f64 = 1e-3;
/// Holder of a fuse with its two contacts, in ohms: 0.4 mΩ of a range from 0.2 to 1 mΩ (from memory).
pub(crate) const HOLDER: f64 = 0.4e-3;
/// Electronic turn-on output, in ohms: 0.5 Ω (from memory; it stands for a transistor and its track).
pub(crate) const TURN_ON_OUT: f64 = 0.5;
/// By how much the voltage of an alternator falls per ampere while its regulator holds, in ohms: 2 mΩ (from memory).
pub(crate) const ALTERNATOR_SLOPE: f64 = 2e-3;
/// The same of a converter, in ohms: 5 mΩ (from memory).
pub(crate) const CONVERTER_SLOPE: f64 = 5e-3;
/// Body metal between a ground point and the battery strap, in ohms, where it is not known.
pub(crate) const BODY_METAL: f64 = 1e-3;
/// Voltage above which a head unit takes its switched feed as on: 6 V (from memory).
pub(crate) const IGNITION_THRESHOLD: f64 = 6.0;

/// Length of a wire in metres, as taken.
pub(crate) fn length(wire: &Wire) -> f64 {
    wire.length.value().map_or(1.0, |l| l.0).max(0.0)
}

pub(crate) fn size(wire: &Wire) -> Size {
    wire.size.or(Size::Metric(SquareMm(2.5)))
}

pub(crate) fn material(wire: &Wire) -> Material {
    wire.material.or(Material::Copper)
}

/// Resistance of the wire alone at 20 °C, in ohms.
pub(crate) fn wire_at_20(wire: &Wire) -> f64 {
    let per_metre = match wire.stated_resistance.value() {
        Some(OhmsPerMetre(stated)) => stated,
        None => conductors::nominal_resistance_per_metre(material(wire), size(wire), Celsius(20.0)).0,
    };
    per_metre * length(wire)
}

/// Resistance of one ending of a run, in ohms: 0 the end `from`, 1 the end `to`. At a splice an ending that is not known is
/// finished as the splice was made.
pub(crate) fn ending(sheet: &Sheet, run: &Run, which: usize) -> f64 {
    ending_range(sheet, run, which).usual.0
}

/// The same with the range in which it is met, as the tables have it; one that is given is met as it is given.
pub(crate) fn ending_range(sheet: &Sheet, run: &Run, which: usize) -> Typical<Ohms> {
    let (ending, end) = if which == 0 {
        (&run.from_ending, &run.from)
    } else {
        (&run.to_ending, &run.to)
    };
    let all_the_same = |ohms: f64| Typical {
        least: Ohms(ohms),
        usual: Ohms(ohms),
        most: Ohms(ohms),
        source: Source::practice("as given"),
    };
    if let Some(Ohms(ohms)) = ending.resistance.value() {
        return all_the_same(ohms.max(0.0));
    }
    let area = size(&run.wire).area();
    let stand_in = match splice_at(sheet, end) {
        Some(SpliceMethod::Crimped) => EndingMethod::CrimpedSplice,
        Some(SpliceMethod::Soldered) => EndingMethod::Soldered,
        Some(SpliceMethod::Screwed) => EndingMethod::ScrewedBare,
        Some(SpliceMethod::Tap) => EndingMethod::Tap,
        Some(SpliceMethod::Twisted) => EndingMethod::Twisted,
        None if area.0 >= 6.0 => EndingMethod::CrimpedRing,
        None => EndingMethod::CrimpedSpade,
    };
    // A bare loose end that touches after all is taken as twisted on.
    let method = match ending.method.or(stand_in) {
        EndingMethod::Loose => EndingMethod::Twisted,
        method => method,
    };
    let Some(mut range) = contacts::ending_resistance(method, area) else {
        return all_the_same(0.0);
    };
    if let Some(condition @ (Condition::Corroded | Condition::Wet)) = run.wire.condition.value() {
        let factor = contacts::condition_factor(condition).usual;
        for ohms in [&mut range.least, &mut range.usual, &mut range.most] {
            *ohms = *ohms * factor;
        }
    }
    range
}

/// Shield of a signal run with its two plugs, in ohms.
pub(crate) fn shield(run: &Run) -> f64 {
    let plug = contacts::ending_resistance(EndingMethod::Plugged, SquareMm(16.0)).map_or(5e-3, |r| r.usual.0);
    contacts::SIGNAL_SHIELD_PER_METRE.usual.0 * length(&run.wire) + 2.0 * plug
}

/// How a line jack's shield is tied to the supply negative, in ohms; `None` where it is not. From memory: a joined ground is a
/// track of about 50 mΩ, an isolated one a resistor of about 1 kΩ, a balanced input takes no shield current.
pub(crate) fn input_ground(ground: InputGround) -> Option<f64> {
    match ground {
        InputGround::Joined => Some(0.05),
        InputGround::Isolated => Some(1000.0),
        InputGround::Balanced => None,
    }
}

/// A cold fuse in its holder, in ohms.
pub(crate) fn fuse(form: FuseForm, rating: Option<Amps>) -> f64 {
    fuses::fuse_resistance(form.into(), rating.unwrap_or(Amps(30.0)))
        .usual
        .0
        + HOLDER
}

/// A fuse of the vehicle's panel: regular blades up to 40 A, bolt-in strips above.
pub(crate) fn factory_fuse(rating: Option<Amps>) -> f64 {
    let form = if rating.is_some_and(|r| r.0 > 40.0) {
        FuseForm::Strip30
    } else {
        FuseForm::Regular
    };
    fuse(form, rating)
}

/// A closed breaker, in ohms. From memory: about 0.1 V lost at its rating, from 0.05 to 0.3 V.
pub(crate) fn breaker(rating: Option<Amps>) -> f64 {
    0.1 / rating.map_or(30.0, |r| r.0).max(0.1)
}

pub(crate) fn ground_contact(surface: Option<GroundSurface>) -> f64 {
    contacts::ground_contact(surface.unwrap_or(GroundSurface::BareMetal))
        .usual
        .0
}

/// The maker's own ground at the plug, in ohms.
pub(crate) fn makers_ground() -> f64 {
    contacts::ground_contact(GroundSurface::MakersPoint).usual.0
}

/// Temperature around a run.
pub(crate) fn ambient(wire: &Wire, conditions: &Conditions) -> Celsius {
    wire.surroundings.or(Surroundings::Cabin).temperature(conditions)
}

/// How a wire warms: its temperature as a function of current.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Warming {
    /// Temperature around it, in °C.
    pub(crate) ambient: f64,
    /// Temperature coefficient of its resistance at 20 °C, per kelvin.
    pub(crate) coefficient: f64,
    /// Rise at rated current, in K, over the square of that current in A² and over its resistance factor then.
    pub(crate) slope: f64,
}

/// Above this a conductor is taken as gone: the melting point of copper is 1085 °C, of aluminium 650 °C.
pub(crate) const HOTTEST: f64 = 1000.0;

/// Resistance factor of a wire at a temperature.
pub(crate) fn warmth(wire: &Wire, temperature: f64) -> f64 {
    factor(materials::data(material(wire)).coefficient, temperature)
}

fn factor(coefficient: f64, temperature: f64) -> f64 {
    (1.0 + coefficient * (temperature.clamp(-60.0, 1100.0) - 20.0)).max(0.1)
}

impl Warming {
    /// From the allowable current at 30 °C, at which the wire reaches the rating of its insulation.
    pub(crate) fn of(wire: &Wire, conditions: &Conditions) -> Self {
        let insulation = wire.insulation.or(Celsius(105.0));
        let coefficient = materials::data(material(wire)).coefficient;
        let rated = allowable_current(query(wire, Celsius(30.0))).0;
        let rise = rated_rise(insulation).0;
        let factor = 1.0 + coefficient * (30.0 + rise - 20.0);
        let slope = if rated > 0.0 {
            rise / (rated * rated) / factor
        } else {
            0.0
        };
        Self {
            ambient: ambient(wire, conditions).0,
            coefficient,
            slope,
        }
    }

    /// Temperature at a current: T = T_amb + rise·(I/I_rated)²·R(T)/R(T_rated), which is linear in T and solved at
    /// once; bounded by [`HOTTEST`], also where the wire would run away.
    pub(crate) fn temperature(&self, current: f64) -> f64 {
        let k = self.slope * current * current;
        let left = 1.0 - k * self.coefficient;
        if left <= 1e-6 || left.is_nan() {
            return HOTTEST.max(self.ambient);
        }
        let t = (self.ambient + k * (1.0 - 20.0 * self.coefficient)) / left;
        t.clamp(self.ambient, HOTTEST.max(self.ambient))
    }

    /// Resistance factor at a temperature.
    pub(crate) fn factor(&self, temperature: f64) -> f64 {
        factor(self.coefficient, temperature)
    }
}

fn query(wire: &Wire, ambient: Celsius) -> AmpacityQuery {
    AmpacityQuery {
        material: material(wire),
        area: size(wire).area(),
        insulation: wire.insulation.or(Celsius(105.0)),
        ambient,
        bundled: u32::from(wire.bundle.or(1).max(1)),
    }
}

/// Allowable steady current at its place; `None` where size or insulation is not known.
pub(crate) fn allowable(wire: &Wire, conditions: &Conditions) -> Option<Amps> {
    (!wire.size.is_unknown() && !wire.insulation.is_unknown())
        .then(|| ampacity::allowable_current(query(wire, ambient(wire, conditions))))
}

/// A battery as a source: its voltage at no current, and its internal resistance as a range.
#[derive(Clone, Copy, Debug)]
pub(crate) struct BatteryModel {
    pub(crate) emf: f64,
    pub(crate) least: f64,
    pub(crate) usual: f64,
    pub(crate) most: f64,
    /// Resistance that it shows to charging current.
    pub(crate) charging: f64,
}

/// The model of a battery. A stated internal resistance wins over the cranking current and stands for the whole range. Charging
/// acceptance, from memory: at 14.4 V a lead-acid battery takes a quarter of its capacity per hour up to 80 % charge,
/// falling to a hundredth when full; lithium iron phosphate half of it up to 95 %, then a fiftieth.
pub(crate) fn battery_model(it: &Battery) -> BatteryModel {
    let charge = it.charge.or(model::quantity::Share(0.9)).0.clamp(0.0, 1.0);
    let emf = battery::open_circuit_voltage(it.chemistry, model::quantity::Share(charge)).0;
    let range = battery::internal_resistance(it.standard, it.cranking.or(Amps(640.0)));
    let (least, usual, most) = match it.resistance.value() {
        Some(Ohms(stated)) => (stated, stated, stated),
        None => (range.least.0, range.usual.0, range.most.0),
    };
    let full = |from: f64, at_full: f64, below: f64| {
        if charge <= from {
            below
        } else {
            below + (at_full - below) * (charge - from) / (1.0 - from)
        }
    };
    let per_hour = match it.chemistry {
        Chemistry::Flooded | Chemistry::Agm => full(0.8, 0.01, 0.25),
        Chemistry::Lithium => full(0.95, 0.02, 0.5),
    };
    let accepts = (it.capacity.or(model::quantity::AmpHours(70.0)).0 * per_hour).max(1e-3);
    let least_of = |r: f64| r.max(super::LEAST_RESISTANCE);
    BatteryModel {
        emf,
        least: least_of(least),
        usual: least_of(usual),
        most: least_of(most),
        charging: ((14.4 - emf).max(0.1) / accepts).max(least_of(most)),
    }
}

/// How the splice at a run's end was made, when there is one.
fn splice_at(sheet: &Sheet, end: &model::End) -> Option<SpliceMethod> {
    let terminal = end.terminal()?;
    match &sheet.parts.get(&terminal.part)?.is {
        PartKind::Splice(splice) => Some(splice.method),
        _ => None,
    }
}
