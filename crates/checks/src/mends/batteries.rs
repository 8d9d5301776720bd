//! A larger battery in the place of one. Whether one is bought is for somebody to choose who sees where it stands.

use crate::context::Ctx;
use crate::mends::set_part;
use crate::wording::A;
use model::quantity::{AmpHours, Amps};
use model::{Edit, Fact, PartId, PartKind};
use words::{Unit, figure, say};

/// Largest cold-cranking current of a battery for vehicles, about, in amperes (from memory).
const MOST_CRANKING: f64 = 1200.0;

/// Largest charge of such a battery, about, in ampere-hours (from memory).
const MOST_CAPACITY: f64 = 240.0;

/// A battery of so many times the charge and, for its strength, at least so many times the cold-cranking current, in steps of 5 Ah and
/// 10 A; nothing where none is sold.
pub(crate) fn larger(ctx: &Ctx<'_>, battery: PartId, times: f64, stronger: f64) -> Option<Edit> {
    let mut part = ctx.part(battery)?.clone();
    let PartKind::Battery(it) = &mut part.is else {
        return None;
    };
    let step = |value: f64, step: f64| (value / step - 1e-9).ceil() * step;
    let cranks = it.cranking.value()?.0;
    let capacity = step(it.capacity.value()?.0 * times, 5.0);
    // A larger one cranks more as a rule, up to what is sold.
    let cranking = step(cranks * stronger, 10.0).max(step(cranks * times, 10.0).min(MOST_CRANKING));
    it.capacity = Fact::Given(AmpHours(capacity));
    it.cranking = Fact::Given(Amps(cranking));
    // What was measured on the old one says nothing of the new one.
    it.resistance = Fact::Unknown;
    let name = say!(
        "mend-battery",
        battery = &part.tag,
        capacity = figure(capacity, Unit::Plain("Ah")),
        cranking = figure(cranking, A)
    );
    (times > 1.0 && cranking <= MOST_CRANKING.max(cranks) && capacity <= MOST_CAPACITY)
        .then(|| Edit::new(name, vec![set_part(battery, part)]))
}
