//! The supply of a planned system: a second battery, and the feeds with their fuses and returns.
//!
//! ```text
//! B1 ── F ──────────── D1 ─┬─ amplifier
//!                          ├─ inverter
//!                          └─ D2 ─┬─ small loads, processor
//! B1 ── F ── D3 (front) ── loads at the dashboard
//! ```
//! With a second battery everything behind hangs on that one, and the starter battery is left to the vehicle.

use super::places::Spot;
use super::planner::{Limb, Planner};
use super::sketch::{BLACK, RED};
use super::vehicle::{Vehicle, battery, told};
use super::wish::{LoadKind, LoadWish};
use model::kinds::supply::*;
use model::quantity::{Amps, Share};
use model::{Fact, PartId, RunId};
use words::{Saying, Unit, figure, say};

/// A part that takes supply.
pub(super) struct Consumer {
    pub(super) part: PartId,
    /// Whether it has a fuse in the block of the large ones.
    pub(super) large: bool,
    /// Whether a switch stands before it.
    pub(super) switched: bool,
    /// What its ground point is called.
    pub(super) name: Saying,
}

/// The least cross-sections that are laid, in mm²: from a battery, to an amplifier, to what is small (common practice; what is
/// thinner is soon torn, and its joints lose more than the wire).
const LEAST_MAIN: f64 = 6.0;
/// Between batteries side by side: a short beside one is fed by all others, and each of their fuses carries a part of it only.
const LEAST_BANK: f64 = 16.0;
const LEAST_LARGE: f64 = 6.0;
const LEAST_SMALL: f64 = 1.5;

/// Where loads stand.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stand {
    Dash,
    Rear,
    /// Before the engine.
    Bumper,
}

impl Stand {
    fn has(self, kind: LoadKind) -> bool {
        let own = match kind {
            LoadKind::Winch => Self::Bumper,
            kind if kind.is_in_front() => Self::Dash,
            _ => Self::Rear,
        };
        self == own
    }
    fn spot(self) -> Spot {
        match self {
            Self::Dash => Spot::Dash,
            Self::Rear => Spot::Equipment,
            Self::Bumper => Spot::Engine,
        }
    }
}

/// Loads that are no sound, with their names.
fn loads(planner: &mut Planner<'_>, at: Stand) -> Vec<Consumer> {
    let wish = planner.wish;
    let mut consumers = Vec::new();
    for LoadWish { kind, power, current } in wish.loads.iter().filter(|it| at.has(it.kind)) {
        let usual = kind.usual();
        let share = match kind {
            LoadKind::Inverter => 0.2,
            LoadKind::Pump => 0.1,
            LoadKind::CoolBox => 0.3,
            // A few minutes of an hour, with pauses in which its motor cools.
            LoadKind::Winch => 0.05,
            _ => 1.0,
        };
        let load = Load {
            law: if current.is_some() && power.is_none() {
                LoadLaw::Current
            } else {
                LoadLaw::Power
            },
            current: told(*current, Amps(usual.0 / 12.0)),
            power: told(*power, usual),
            share: Fact::Assumed(Share(share)),
            when: LoadTime::InUse,
            ..Load::default()
        };
        let name = kind.said();
        let spot = at.spot();
        let part = planner.sketch.part(load, Some(name.clone()), spot);
        let draws = current.map_or_else(|| power.unwrap_or(usual).0 / 12.0, |it| it.0);
        if power.is_none() && current.is_none() {
            let tag = planner.sketch.tag_of(part);
            planner.assumed.push(say!(
                "start-assumed-load",
                load = tag,
                name = name.clone(),
                power = figure(usual.0, Unit::Plain("W"))
            ));
        }
        consumers.push(Consumer {
            part,
            // Blade fuses end at 40 A, of which 80 % last.
            large: draws > 24.0,
            switched: *kind == LoadKind::Lights && draws <= 12.0,
            name,
        });
    }
    consumers
}

impl LoadKind {
    /// What it is called.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            LoadKind::Lights => say!("start-load-lights"),
            LoadKind::TwoWayRadio => say!("start-load-two-way-radio"),
            LoadKind::Inverter => say!("start-load-inverter"),
            LoadKind::CoolBox => say!("start-load-cool-box"),
            LoadKind::Pump => say!("start-load-pump"),
            LoadKind::Heater => say!("start-load-heater"),
            LoadKind::Camera => say!("start-load-camera"),
            LoadKind::Socket => say!("start-load-socket"),
            LoadKind::Winch => say!("start-load-winch"),
            LoadKind::Other => say!("start-load-other"),
        }
    }
}

/// Where returns go.
enum Return {
    /// To a ground point beside each.
    Body,
    /// To a bus with a wire to the battery: the bus, and its next place.
    Bus(PartId, u8),
    /// To the battery itself, which is near.
    Battery(PartId),
}

/// The feeds and returns of all consumers.
pub(super) fn feeds(planner: &mut Planner<'_>, vehicle: &Vehicle, mut rear: Vec<Consumer>) {
    rear.extend(loads(planner, Stand::Rear));
    let front = loads(planner, Stand::Dash);
    let bumper = loads(planner, Stand::Bumper);
    let starter = Source::of(vehicle.battery);
    let mut source = match planner.wish.second {
        Some(second) => link(planner, vehicle, second),
        None => starter.clone(),
    };
    if !rear.is_empty() {
        // In turn, so that each main feed gets its share of the amplifiers.
        let feeds = planner.feeds.max(1);
        let mut trees: Vec<Vec<Consumer>> = (0..feeds).map(|_| Vec::new()).collect();
        let mut next = 0;
        for it in rear {
            let tree = if it.large { next % feeds } else { 0 };
            next += usize::from(it.large);
            if let Some(tree) = trees.get_mut(tree) {
                tree.push(it);
            }
        }
        trees.retain(|tree| !tree.is_empty());
        if trees.len() > 1 {
            planner
                .choices
                .push(say!("start-chose-feeds", feeds = trees.len()));
        }
        for (at, consumers) in trees.into_iter().enumerate() {
            tree(
                planner,
                &mut source,
                consumers,
                Spot::Equipment,
                vehicle.battery,
                at == 0,
            );
        }
    } else if !source.is(vehicle.battery) {
        let name = say!("start-label-ground", of = say!("start-label-second"));
        let (part, terminal) = source.minus.next();
        planner.sketch.ground(part, &terminal, 25.0, name);
    }
    for (consumers, spot) in [
        (front, Spot::Footwell(planner.drives_left())),
        (bumper, Spot::Engine),
    ] {
        if !consumers.is_empty() {
            tree(
                planner,
                &mut starter.clone(),
                consumers,
                spot,
                vehicle.battery,
                true,
            );
        }
    }
}

impl Planner<'_> {
    fn drives_left(&self) -> bool {
        self.wish.drive != Some(model::body::DriveSide::Right)
    }
    fn fuse(&mut self, form: FuseForm, label: Saying, spot: Spot) -> PartId {
        let fuse = Fuse {
            form,
            rating: Fact::Given(Amps(60.0)),
            ..Fuse::default()
        };
        self.sketch.part(fuse, Some(label), spot)
    }
}

/// Where wires are put one after the other: the one pole of a battery, or a bus with its next place.
#[derive(Clone)]
struct Pole {
    part: PartId,
    name: &'static str,
    place: Option<u8>,
}

impl Pole {
    /// Where the next wire goes.
    fn next(&mut self) -> (PartId, String) {
        match &mut self.place {
            Some(place) => {
                let at = place.to_string();
                *place = place.saturating_add(1);
                (self.part, at)
            }
            None => (self.part, self.name.to_owned()),
        }
    }
}

/// What feeds: a battery, or several side by side on two buses.
#[derive(Clone)]
struct Source {
    plus: Pole,
    minus: Pole,
    /// The limb between several batteries and their bus.
    limb: Option<usize>,
}

impl Source {
    fn of(battery: PartId) -> Self {
        let pole = |name| Pole {
            part: battery,
            name,
            place: None,
        };
        Self {
            plus: pole("+"),
            minus: pole("-"),
            limb: None,
        }
    }
    fn is(&self, battery: PartId) -> bool {
        self.plus.part == battery
    }
}

/// The second battery, or several: a link with a fuse at each end, the isolator or charger between.
fn link(planner: &mut Planner<'_>, vehicle: &Vehicle, second: super::wish::SecondWish) -> Source {
    let spot = match second.at {
        Some(model::body::BatteryPlace::Front) => Spot::Engine,
        _ => Spot::Equipment,
    };
    let first = planner.fuse(
        FuseForm::Strip61,
        say!("start-label-link-fuse", end = say!("start-label-battery")),
        Spot::Battery,
    );
    let (between, [into, out]) = parting(planner, &second, spot);
    let far = planner.fuse(
        FuseForm::Strip61,
        say!("start-label-link-fuse", end = say!("start-label-second")),
        spot,
    );
    let is = Battery {
        charge: Fact::Assumed(Share(0.8)),
        ..battery(&second.battery, 60.0)
    };
    let label = || Some(say!("start-label-second"));
    let batteries: Vec<PartId> = (0..second.count.max(1))
        .map(|_| planner.sketch.part(is.clone(), label(), spot))
        .collect();
    let tags: Vec<String> = batteries.iter().map(|it| planner.sketch.tag_of(*it)).collect();
    if second.battery.capacity.is_none() {
        planner.assumed.push(say!(
            "start-assumed-battery",
            battery = tags.join(", "),
            capacity = figure(60.0, Unit::Plain("Ah"))
        ));
    }
    let mut source = match batteries.as_slice() {
        [one] => Source::of(*one),
        several => side_by_side(planner, several, spot),
    };
    let sketch = &mut planner.sketch;
    let mut runs = vec![
        sketch.run((vehicle.battery, "+"), (first, "in"), 25.0, RED),
        sketch.run((first, "out"), (between, into), 25.0, RED),
        sketch.run((between, out), (far, "in"), 25.0, RED),
    ];
    let (part, terminal) = source.plus.next();
    let last = sketch.run((far, "out"), (part, &terminal), 25.0, RED);
    match source.limb {
        // Several batteries feed it from behind, each over its own fuse.
        Some(limb) => add_run(planner, limb, last),
        None => runs.push(last),
    }
    let tag = planner.sketch.tag_of(between);
    if second.charger.is_some() {
        // What it gives comes back to it this way, beside the feed, whatever the return of the rest is.
        let (part, terminal) = source.minus.next();
        let back = planner.sketch.run((between, "-"), (part, &terminal), 25.0, BLACK);
        runs.push(back);
    } else {
        let name = say!("start-label-ground", of = tag.as_str());
        planner.sketch.ground(between, "-", 1.5, name);
    }
    planner.limbs.push(Limb {
        runs,
        device: (first, None),
        twins: vec![far],
        from: None,
        least: LEAST_MAIN,
    });
    planner.choices.push(say!(
        "start-chose-link",
        battery = tags.join(", "),
        isolator = tag
    ));
    source
}

/// What parts the second battery from the starter battery, with its terminals on either side.
fn parting(
    planner: &mut Planner<'_>,
    second: &super::wish::SecondWish,
    spot: Spot,
) -> (PartId, [&'static str; 2]) {
    let Some(charger) = second.charger else {
        let isolator = Isolator {
            kind: second.isolator.unwrap_or(IsolatorKind::Sensing),
            closed: false,
            rating: Fact::Assumed(Amps(140.0)),
            ..Isolator::default()
        };
        return (
            planner.sketch.part(isolator, None, Spot::Battery),
            ["main", "aux"],
        );
    };
    let converter = Converter {
        current: told(charger.current, Amps(30.0)),
        ..Converter::default()
    };
    let part = planner
        .sketch
        .part(converter, Some(say!("start-label-charger")), spot);
    if charger.current.is_none() {
        let tag = planner.sketch.tag_of(part);
        planner.assumed.push(say!(
            "start-assumed-charger",
            charger = tag,
            current = figure(30.0, Unit::Plain("A"))
        ));
    }
    (part, ["in", "out"])
}

/// Several batteries on two buses, each with a fuse of its own: what is wrong in one is not fed by the others.
fn side_by_side(planner: &mut Planner<'_>, batteries: &[PartId], spot: Spot) -> Source {
    // Besides the batteries the link, and the main feeds.
    let places = u8::try_from(batteries.len()).unwrap_or(1) + 4;
    let bus = |planner: &mut Planner<'_>, label: &'static str| Pole {
        part: planner.sketch.part(
            Bus {
                places,
                ..Bus::default()
            },
            Some(Saying::new(label)),
            spot,
        ),
        name: "",
        place: Some(1),
    };
    let mut plus = bus(planner, "start-label-plus-bus");
    let mut minus = bus(planner, "start-label-bus");
    let (mut runs, mut fuses) = (Vec::new(), Vec::new());
    for battery in batteries {
        let tag = planner.sketch.tag_of(*battery);
        let fuse = planner.fuse(FuseForm::Strip61, say!("start-label-fuse-of", of = tag), spot);
        fuses.push(fuse);
        let sketch = &mut planner.sketch;
        runs.push(sketch.run((*battery, "+"), (fuse, "in"), 35.0, RED));
        let (part, place) = plus.next();
        runs.push(sketch.run((fuse, "out"), (part, &place), 35.0, RED));
        let (part, place) = minus.next();
        runs.push(sketch.run((*battery, "-"), (part, &place), 35.0, BLACK));
    }
    let limb = planner.limbs.len();
    let own = fuses.first().copied().unwrap_or(plus.part);
    planner.limbs.push(Limb {
        runs,
        device: (own, None),
        twins: fuses.split_off(1.min(fuses.len())),
        from: None,
        least: LEAST_BANK,
    });
    planner.choices.push(say!(
        "start-chose-bank",
        count = batteries.len(),
        bus = planner.sketch.tag_of(plus.part)
    ));
    Source {
        plus,
        minus,
        limb: Some(limb),
    }
}

/// Main fuse, feed, blocks and returns from a source to its consumers; the first tree brings the source's own return.
fn tree(
    planner: &mut Planner<'_>,
    source: &mut Source,
    consumers: Vec<Consumer>,
    spot: Spot,
    starter: PartId,
    is_first: bool,
) {
    let wired = planner.wish.wired_return == Some(true) && spot == Spot::Equipment;
    let at = planner.sketch.spot(source.plus.part);
    let label = match (spot, consumers.first()) {
        (Spot::Equipment, _) => say!("start-label-main-fuse"),
        (Spot::Engine, Some(it)) => say!("start-label-fuse-of", of = it.name.clone()),
        _ => say!("start-label-front-fuse"),
    };
    let main = planner.fuse(FuseForm::Strip61, label, at);
    let (part, terminal) = source.plus.next();
    let first = planner.sketch.run((part, &terminal), (main, "in"), 35.0, RED);
    let trunk = planner.limbs.len();
    planner.limbs.push(Limb {
        runs: Vec::new(),
        device: (main, None),
        twins: Vec::new(),
        from: source.limb,
        least: LEAST_MAIN,
    });
    // Behind the fuses of several batteries it bears what these do.
    add_run(planner, source.limb.unwrap_or(trunk), first);
    let (large, small): (Vec<Consumer>, Vec<Consumer>) = consumers.into_iter().partition(|it| it.large);
    let mut back = match wired {
        true => {
            let places = large.len() + small.len() + 2;
            let bus = Bus {
                places: u8::try_from(places).unwrap_or(24).clamp(2, 24),
                ..Bus::default()
            };
            let bus = planner.sketch.part(bus, Some(say!("start-label-bus")), spot);
            let run = planner.sketch.run((bus, "1"), (starter, "-"), 35.0, BLACK);
            add_run(planner, trunk, run);
            planner
                .choices
                .push(say!("start-chose-wired", bus = planner.sketch.tag_of(bus)));
            Return::Bus(bus, 2)
        }
        // What a winch takes would be lost half in straps and ground points (common practice).
        false if spot == Spot::Engine => Return::Battery(starter),
        false => Return::Body,
    };
    if !source.is(starter) && is_first {
        let (part, terminal) = source.minus.next();
        let name = say!("start-label-second");
        let run = lead_back(planner, &mut back, part, &terminal, 35.0, name);
        add_run(planner, source.limb.unwrap_or(trunk), run);
    }
    let many_small = small.len() > 1;
    let branches = large.len() + usize::from(!small.is_empty());
    if branches == 1 && large.len() == 1 {
        for it in large {
            branch(planner, (main, "out"), trunk, it, &mut back);
        }
        return;
    }
    if large.is_empty() && many_small {
        let block = small_block(planner, small.len(), spot);
        let feed = planner.sketch.run((main, "out"), (block, "in"), 10.0, RED);
        add_run(planner, trunk, feed);
        return small_branches(planner, block, trunk, small, &mut back);
    }
    if large.is_empty() {
        for it in small {
            let inline = planner.fuse(
                FuseForm::Regular,
                say!("start-label-fuse-of", of = it.name.clone()),
                spot,
            );
            let feed = planner.sketch.run((main, "out"), (inline, "in"), 10.0, RED);
            add_run(planner, trunk, feed);
            inline_branch(planner, inline, trunk, it, &mut back);
        }
        return;
    }
    let block = Block {
        outputs: u8::try_from(branches).unwrap_or(12).clamp(1, 12),
        fuses: Ratings(vec![Some(Amps(60.0)); branches]),
        form: FuseForm::Strip30,
        ..Block::default()
    };
    let block = planner.sketch.part(block, None, spot);
    let feed = planner.sketch.run((main, "out"), (block, "in"), 35.0, RED);
    // The input of a large block is a stud: a ring stays cooler there than a ferrule.
    if let Some(run) = planner.sketch.sheet.runs.get_mut(&feed) {
        run.to_ending.method = Fact::Given(model::conductor::EndingMethod::CrimpedRing);
    }
    add_run(planner, trunk, feed);
    let mut number = 0;
    for it in large {
        number += 1;
        let limb = planner.limbs.len();
        planner.limbs.push(Limb {
            runs: Vec::new(),
            device: (block, Some(number)),
            twins: Vec::new(),
            from: Some(trunk),
            least: LEAST_LARGE,
        });
        branch(planner, (block, &format!("out{number}")), limb, it, &mut back);
    }
    if small.is_empty() {
        return;
    }
    number += 1;
    let limb = planner.limbs.len();
    planner.limbs.push(Limb {
        runs: Vec::new(),
        device: (block, Some(number)),
        twins: Vec::new(),
        from: Some(trunk),
        least: LEAST_SMALL,
    });
    let out = format!("out{number}");
    if many_small {
        let second = small_block(planner, small.len(), spot);
        let feed = planner.sketch.run((block, &out), (second, "in"), 10.0, RED);
        add_run(planner, limb, feed);
        small_branches(planner, second, limb, small, &mut back);
    } else {
        for it in small {
            let inline = planner.fuse(
                FuseForm::Regular,
                say!("start-label-fuse-of", of = it.name.clone()),
                spot,
            );
            let feed = planner.sketch.run((block, &out), (inline, "in"), 4.0, RED);
            add_run(planner, limb, feed);
            inline_branch(planner, inline, limb, it, &mut back);
        }
    }
}

fn add_run(planner: &mut Planner<'_>, limb: usize, run: RunId) {
    if let Some(limb) = planner.limbs.get_mut(limb) {
        limb.runs.push(run);
    }
}

fn small_block(planner: &mut Planner<'_>, outputs: usize, spot: Spot) -> PartId {
    let block = Block {
        outputs: u8::try_from(outputs).unwrap_or(12).clamp(1, 12),
        fuses: Ratings(vec![Some(Amps(10.0)); outputs.min(12)]),
        form: FuseForm::Regular,
        ..Block::default()
    };
    planner
        .sketch
        .part(block, Some(say!("start-label-small-block")), spot)
}

fn small_branches(
    planner: &mut Planner<'_>,
    block: PartId,
    from: usize,
    small: Vec<Consumer>,
    back: &mut Return,
) {
    for (at, it) in small.into_iter().enumerate() {
        let limb = planner.limbs.len();
        planner.limbs.push(Limb {
            runs: Vec::new(),
            device: (block, Some(at + 1)),
            twins: Vec::new(),
            from: Some(from),
            least: LEAST_SMALL,
        });
        branch(planner, (block, &format!("out{}", at + 1)), limb, it, back);
    }
}

fn inline_branch(planner: &mut Planner<'_>, fuse: PartId, from: usize, it: Consumer, back: &mut Return) {
    let limb = planner.limbs.len();
    planner.limbs.push(Limb {
        runs: Vec::new(),
        device: (fuse, None),
        twins: Vec::new(),
        from: Some(from),
        least: LEAST_SMALL,
    });
    branch(planner, (fuse, "out"), limb, it, back);
}

/// A consumer's feed and its return, which is as thick.
fn branch(planner: &mut Planner<'_>, from: (PartId, &str), limb: usize, it: Consumer, back: &mut Return) {
    let area = if it.large { 16.0 } else { 2.5 };
    let mut from = (from.0, from.1.to_owned());
    if it.switched {
        let switch = Switch {
            closed: true,
            rating: Fact::Assumed(Amps(20.0)),
            ..Switch::default()
        };
        let spot = planner.sketch.spot(it.part);
        let switch = planner.sketch.part(
            switch,
            Some(say!("start-label-switch", of = it.name.clone())),
            spot,
        );
        let feed = planner.sketch.run((from.0, &from.1), (switch, "in"), area, RED);
        add_run(planner, limb, feed);
        from = (switch, "out".to_owned());
    }
    let feed = planner.sketch.run((from.0, &from.1), (it.part, "+"), area, RED);
    add_run(planner, limb, feed);
    let run = lead_back(planner, back, it.part, "-", area, it.name);
    add_run(planner, limb, run);
}

fn lead_back(
    planner: &mut Planner<'_>,
    back: &mut Return,
    part: PartId,
    terminal: &str,
    area: f64,
    name: Saying,
) -> RunId {
    match back {
        Return::Body => planner
            .sketch
            .ground(part, terminal, area, say!("start-label-ground", of = name)),
        Return::Battery(battery) => planner.sketch.run((part, terminal), (*battery, "-"), area, BLACK),
        Return::Bus(bus, place) => {
            let to = place.to_string();
            *place = place.saturating_add(1);
            planner.sketch.run((part, terminal), (*bus, &to), area, BLACK)
        }
    }
}
