//! How far a sound system may lie beside what its sheet says of it, and the same sheet somewhere within that.
//!
//! | what | by how much | how that is known |
//! | --- | --- | --- |
//! | wire | a tenth of its resistance: strands, warmth, a length that was laid a little otherwise | our own judgement |
//! | endings and ground contacts | from the least to the most that is usual for their kind ([`reference::contacts`]); a fifth where it is given | common practice |
//! | leads and straps of the vehicle's maker | half to twice, where nobody measured them | our own judgement |
//! | charge of a battery | a tenth of its capacity | our own judgement: what its resting voltage tells it by |
//! | voltage of an alternator | 0.2 V | from memory: what regulators differ by |
//! | inner resistance of a battery | the range that follows from its cranking current | [`reference::battery`] |
//! | what parts draw | a tenth; a fifth while they idle, and of the vehicle's own | our own judgement |
//! | voice coils | a tenth of their DC resistance | from memory |
//!
//! Fuses, switches and body metal have no value of their own on a sheet, or one that follows from its places: what they differ by is within
//! what a reading may lie beside its number in any case (see [`super::limits`]).

use circuit::{cold_per_metre, ending_range};
use model::fact::Fact;
use model::kinds::sound::{Amplifier, AmplifierClass, Speaker};
use model::kinds::supply::{Battery, Ground, LoadLaw, Vehicle};
use model::quantity::{Amps, Ohms, OhmsPerMetre, Share, Volts, Watts};
use model::{PartKind, Settings, Sheet};
use reference::{Typical, audio, battery, contacts};

/// What may lie beside what the sheet says, by group: things of one group often go the same way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Spread {
    /// Resistance of wires.
    Wires,
    /// Resistance of endings, ground contacts, and leads of the vehicle's maker.
    Contacts,
    /// Charge of batteries, voltage of alternators.
    Charge,
    /// Inner resistance of batteries.
    Source,
    /// What parts draw.
    Draw,
    /// Voice coils.
    Coils,
}

impl Spread {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Wires,
        Self::Contacts,
        Self::Charge,
        Self::Source,
        Self::Draw,
        Self::Coils,
    ];
}

const WIRE: f64 = 0.1;
const GIVEN: f64 = 0.2;
const MAKERS: f64 = 2.0;
const CHARGE: f64 = 0.1;
const REGULATOR: f64 = 0.2;
const DRAW: f64 = 0.1;
const IDLE: f64 = 0.2;
const COIL: f64 = 0.1;

/// From the least (−1) over the usual (0) to the most (1), each as many times the last as the way is long.
fn between(range: &Typical<Ohms>, at: f64) -> Ohms {
    let end = if at < 0.0 { range.least } else { range.most };
    if range.usual.0 <= 0.0 || end.0 <= 0.0 {
        return range.usual;
    }
    Ohms(range.usual.0 * libm::pow(end.0 / range.usual.0, at.abs()))
}

/// Some share more or less.
fn beside(number: f64, share: f64, at: f64) -> f64 {
    number * (1.0 + share * at)
}

/// A sheet whose values lie elsewhere within what is stated above: `at` says where for each thing, from −1 over nothing to 1; of
/// resistances 1 is the most, of sources and of what is drawn as well.
#[must_use]
pub fn varied(sheet: &Sheet, settings: &Settings, at: &mut dyn FnMut(Spread) -> f64) -> Sheet {
    let mut out = sheet.clone();
    for (id, run) in &sheet.runs {
        let Some(to) = out.runs.get_mut(id) else { continue };
        if let Some(OhmsPerMetre(ohms)) = cold_per_metre(run) {
            let ohms = beside(ohms, WIRE, at(Spread::Wires));
            to.wire.stated_resistance = Fact::Given(OhmsPerMetre(ohms));
        }
        for which in [0, 1] {
            let ending = if which == 0 {
                &run.from_ending
            } else {
                &run.to_ending
            };
            let range = ending_range(sheet, run, which);
            let at = at(Spread::Contacts);
            let ohms = if ending.resistance.value().is_some() {
                Ohms(beside(range.usual.0, GIVEN, at))
            } else {
                between(&range, at)
            };
            let ending = if which == 0 {
                &mut to.from_ending
            } else {
                &mut to.to_ending
            };
            ending.resistance = Fact::Given(ohms);
        }
    }
    for part in out.parts.values_mut() {
        match &mut part.is {
            PartKind::Battery(it) => of_battery(it, at),
            PartKind::Alternator(it) => {
                let volts = it.voltage.value().map_or(14.2, |it| it.0);
                it.voltage = Fact::Given(Volts(volts + REGULATOR * at(Spread::Charge)));
            }
            PartKind::Vehicle(it) => of_vehicle(it, at),
            PartKind::Ground(it) => of_ground(it, settings, at),
            PartKind::Amplifier(it) => of_amplifier(it, at),
            PartKind::HeadUnit(it) => {
                spread_amps(&mut it.on_current, 1.0, at);
                spread_amps(&mut it.standby_current, 0.003, at);
            }
            PartKind::Processor(it) => spread_amps(&mut it.on_current, 0.6, at),
            PartKind::LineConverter(it) => spread_amps(&mut it.on_current, 0.1, at),
            PartKind::Load(it) => {
                let at = at(Spread::Draw);
                match it.law {
                    LoadLaw::Current => {
                        let amps = it.current.or(Amps(5.0)).0;
                        it.current = Fact::Given(Amps(beside(amps, DRAW, at)));
                    }
                    LoadLaw::Power => {
                        let watts = it.power.or(Watts(60.0)).0;
                        it.power = Fact::Given(Watts(beside(watts, DRAW, at)));
                    }
                    LoadLaw::Resistance => {
                        let ohms = it.resistance.or(Ohms(2.4)).0;
                        it.resistance = Fact::Given(Ohms(beside(ohms, DRAW, -at)));
                    }
                }
            }
            PartKind::Relay(it) => {
                let ohms = it.coil.or(Ohms(85.0)).0;
                it.coil = Fact::Given(Ohms(beside(ohms, COIL, at(Spread::Coils))));
            }
            PartKind::Speaker(it) => of_speaker(it, at),
            _ => {}
        }
    }
    out
}

fn spread_amps(fact: &mut Fact<Amps>, usual: f64, at: &mut dyn FnMut(Spread) -> f64) {
    let amps = fact.value().map_or(usual, |it| it.0);
    *fact = Fact::Given(Amps(beside(amps, IDLE, at(Spread::Draw))));
}

fn of_battery(it: &mut Battery, at: &mut dyn FnMut(Spread) -> f64) {
    let charge = it.charge.or(Share(0.9)).0 + CHARGE * at(Spread::Charge);
    it.charge = Fact::Given(Share(charge.clamp(0.0, 1.0)));
    if it.resistance.value().is_none() {
        let range = battery::internal_resistance(it.standard, it.cranking.or(Amps(640.0)));
        it.resistance = Fact::Given(between(&range, at(Spread::Source)));
    }
}

fn of_vehicle(it: &mut Vehicle, at: &mut dyn FnMut(Spread) -> f64) {
    for ohms in [
        &mut it.lead_resistance,
        &mut it.charge_lead,
        &mut it.body_strap,
        &mut it.engine_strap,
    ] {
        let at = at(Spread::Contacts);
        if let Some(value) = ohms.value() {
            let other = if ohms.is_given() {
                beside(value.0, GIVEN, at)
            } else {
                value.0 * libm::pow(MAKERS, at)
            };
            *ohms = Fact::Given(Ohms(other));
        }
    }
    spread_amps(&mut it.running_load, 25.0, at);
    spread_amps(&mut it.standing_load, 0.03, at);
}

fn of_ground(it: &mut Ground, settings: &Settings, at: &mut dyn FnMut(Spread) -> f64) {
    use model::kinds::supply::GroundSurface;
    let own = at(Spread::Contacts);
    it.contact = Fact::Given(match it.contact.value() {
        Some(given) => Ohms(beside(given.0, GIVEN, own)),
        None => {
            let range = contacts::ground_contact(it.surface.or(GroundSurface::BareMetal));
            between(&range, own)
        }
    });
    // In a body that is told, the metal follows from its places.
    let body = it.body.value().filter(|_| !it.body.is_given());
    if let (Some(_), true) = (body, settings.body.shape.form.is_unknown()) {
        it.body = Fact::Given(between(&contacts::BODY_METAL, at(Spread::Contacts)));
    }
}

fn of_amplifier(it: &mut Amplifier, at: &mut dyn FnMut(Spread) -> f64) {
    let class: AmplifierClass = it.class;
    let usual = audio::efficiency(class, Share(1.0)).usual;
    let share = it.efficiency.or(usual).0;
    // More is drawn where less of it is given out.
    it.efficiency = Fact::Given(Share((share / (1.0 + DRAW * at(Spread::Draw))).clamp(0.1, 0.98)));
    spread_amps(&mut it.idle_current, 1.2, at);
    spread_amps(&mut it.standby_current, 0.002, at);
}

fn of_speaker(it: &mut Speaker, at: &mut dyn FnMut(Spread) -> f64) {
    let rated = it.impedance.or(Ohms(4.0)).0;
    let usual = rated * audio::COIL_RESISTANCE.usual;
    let ohms = it.dc_resistance.or(Ohms(usual)).0;
    it.dc_resistance = Fact::Given(Ohms(beside(ohms, COIL, at(Spread::Coils))));
}
