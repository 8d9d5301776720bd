//! The vehicle as its maker left it, and the head unit behind its plug.

use super::places::Spot;
use super::planner::Planner;
use super::sketch::{BLACK, RED, jacket};
use super::wish::BatteryWish;
use model::conductor::Colour;
use model::kinds::sound::{HeadUnit, Plug};
use model::kinds::supply::*;
use model::property::PropertyType;
use model::quantity::{AmpHours, Amps, Share, Volts, Watts};
use model::written::Cavities;
use model::{Fact, PartId};
use words::{Saying, Unit, figure, say};

/// The parts that others are joined to.
pub(super) struct Vehicle {
    pub(super) battery: PartId,
    pub(super) head: Option<PartId>,
}

pub(super) fn told<T: Copy>(value: Option<T>, usual: T) -> Fact<T> {
    value.map_or(Fact::Assumed(usual), Fact::Given)
}

/// A battery as it was told, and the usual for the rest.
pub(super) fn battery(wish: &BatteryWish, capacity: f64) -> Battery {
    let chemistry = wish.chemistry.unwrap_or(Chemistry::Agm);
    let capacity = told(wish.capacity, AmpHours(capacity));
    // Starter batteries give about nine times their capacity cold, lithium ones with their electronics less (common practice).
    let times = if chemistry == Chemistry::Lithium { 8.0 } else { 9.0 };
    let usual = (capacity.or(AmpHours(70.0)).0 * times / 10.0).round() * 10.0;
    Battery {
        chemistry,
        capacity,
        cranking: told(wish.cranking, Amps(usual.clamp(50.0, 2000.0))),
        charge: Fact::Assumed(Share(0.9)),
        ..Battery::default()
    }
}

/// The vehicle as its maker left it: battery, alternator, straps, charge lead; and the head unit behind its plug.
pub(super) fn vehicle(planner: &mut Planner<'_>) -> Vehicle {
    let wish = planner.wish;
    let sketch = &mut planner.sketch;
    let wiring = sketch.part(model::kinds::supply::Vehicle::default(), None, Spot::Nowhere);
    let main = battery(&wish.battery, 70.0);
    let starter = sketch.part(main, Some(say!("start-label-battery")), Spot::Battery);
    let alternator = Alternator {
        voltage: Fact::Assumed(Volts(14.2)),
        current: told(wish.alternator, Amps(120.0)),
        idle_current: Fact::Assumed(Amps(wish.alternator.unwrap_or(Amps(120.0)).0 / 2.0)),
        ..Alternator::default()
    };
    let alternator = sketch.part(alternator, None, Spot::Engine);
    planner.alternator = Some(alternator);
    for part in [wiring, starter, alternator] {
        sketch.makers(part);
    }
    let in_front = wish.battery_at != Some(model::body::BatteryPlace::Rear);
    let (lead, length) = if in_front { (35.0, 0.5) } else { (70.0, 4.5) };
    let hot = model::conductor::Surroundings::EngineBay;
    let leads = [
        sketch.makers_run((starter, "+"), (wiring, "+"), lead, length, RED),
        sketch.makers_run((wiring, "-"), (starter, "-"), 50.0, 0.4, BLACK),
        sketch.makers_run((alternator, "B+"), (wiring, "B+"), 35.0, 1.2, RED),
        sketch.makers_run((wiring, "engine"), (alternator, "case"), 35.0, 0.3, BLACK),
    ];
    for (at, lead) in leads.into_iter().enumerate() {
        if let Some(run) = sketch.sheet.runs.get_mut(&lead).filter(|_| in_front || at > 1) {
            run.wire.surroundings = Fact::Assumed(hot);
        }
    }
    if wish.battery.capacity.is_none() && wish.battery.cranking.is_none() {
        let tag = sketch.tag_of(starter);
        planner.assumed.push(say!(
            "start-assumed-battery",
            battery = tag,
            capacity = figure(70.0, Unit::Plain("Ah"))
        ));
    }
    let head = wish.has_sound().then(|| head(planner, wiring));
    Vehicle {
        battery: starter,
        head,
    }
}

/// The head unit: behind the plug of the factory harness, or on feeds of its own.
fn head(planner: &mut Planner<'_>, wiring: PartId) -> PartId {
    let wish = planner.wish;
    let is = planner.head_unit();
    let sketch = &mut planner.sketch;
    let by_maker = wish.head.factory;
    let yellow = jacket(Colour::Yellow, None);
    let brown = jacket(Colour::Brown, None);
    if wish.harness == Some(false) && !by_maker {
        let head = sketch.part(is, None, Spot::Dash);
        // Behind the maker's fuses of both feeds: the own fuse is for the thinner lead to the head unit.
        for (from, to, colour, rating) in [("30", "30", yellow, 10.0), ("15", "15", RED, 5.0)] {
            let fuse = Fuse {
                form: FuseForm::Regular,
                rating: Fact::Given(Amps(rating)),
                ..Fuse::default()
            };
            let fuse = sketch.part(fuse, Some(say!("start-label-head-fuse", feed = from)), Spot::Dash);
            sketch.run((wiring, from), (fuse, "in"), 2.5, colour);
            sketch.run((fuse, "out"), (head, to), 1.5, colour);
        }
        sketch.ground(
            head,
            "31",
            2.5,
            say!("start-label-ground", of = say!("start-label-head")),
        );
        return head;
    }
    let cavities = ["1 YE", "2 RD", "3 BN"]
        .into_iter()
        .zip([
            "start-label-permanent",
            "start-label-switched",
            "start-label-earth",
        ])
        .map(|(pin, key)| format!("{pin} {}", planner.words_of(key)))
        .collect::<Vec<_>>()
        .join("; ");
    let sketch = &mut planner.sketch;
    let plug = Plug {
        cavities: Cavities::parse(&cavities, None).unwrap_or_else(|_| Cavities::numbered(3)),
        ..Plug::default()
    };
    let plug = sketch.part(plug, Some(say!("start-label-plug")), Spot::Dash);
    sketch.makers(plug);
    sketch.makers_run((wiring, "30"), (plug, "1a"), 2.5, 1.8, yellow);
    sketch.makers_run((wiring, "15"), (plug, "2a"), 1.5, 1.8, RED);
    sketch.makers_run((wiring, "31"), (plug, "3a"), 2.5, 1.2, brown);
    let head = sketch.part(is, None, Spot::Dash);
    let all = [
        sketch.run((plug, "1b"), (head, "30"), 2.5, yellow),
        sketch.run((plug, "2b"), (head, "15"), 1.5, RED),
        sketch.run((plug, "3b"), (head, "31"), 2.5, BLACK),
    ];
    if by_maker {
        sketch.makers(head);
        for run in all {
            if let Some(run) = sketch.sheet.runs.get_mut(&run) {
                run.fitted_by = model::conductor::FittedBy::Maker;
            }
        }
    }
    head
}

impl Planner<'_> {
    pub(super) fn words_of(&self, key: &'static str) -> String {
        self.sketch.say(&Saying::new(key))
    }

    fn head_unit(&self) -> HeadUnit {
        let (wish, hookup) = (&self.wish.head, &self.hookup);
        let on_amplifiers = !self.wish.amplifiers.is_empty();
        let outputs = self.head_outputs();
        HeadUnit {
            speaker_outputs: outputs,
            line_outputs: self.line_pairs(),
            power: told(wish.power, Watts(20.0)),
            // With a bass of its own the head unit keeps bass from its small speakers.
            high_pass: if on_amplifiers && hookup.uses.iter().any(|it| it.unit.is_none()) {
                Fact::Assumed(model::quantity::Hertz(80.0))
            } else {
                Fact::Unknown
            },
            ..HeadUnit::default()
        }
    }

    /// The head unit's own speaker outputs.
    pub(super) fn head_outputs(&self) -> u8 {
        let wish = &self.wish.head;
        wish.speaker_outputs
            .unwrap_or(if self.wish.amplifiers.is_empty() || wish.factory {
                4
            } else {
                // Of a head unit of which nothing is told nothing is asked either.
                0
            })
    }

    /// Pairs of line outputs.
    pub(super) fn line_pairs(&self) -> u8 {
        let wish = &self.wish.head;
        if wish.factory {
            return 0;
        }
        let wanted = !self.wish.amplifiers.is_empty() || self.wish.processor.is_some();
        wish.line_pairs.unwrap_or(if wanted { 3 } else { 0 }).min(3)
    }
}
