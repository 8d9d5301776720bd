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
const LEAST_LARGE: f64 = 6.0;
const LEAST_SMALL: f64 = 1.5;

/// Loads that are no sound, with their names.
fn loads(planner: &mut Planner<'_>, in_front: bool) -> Vec<Consumer> {
    let wish = planner.wish;
    let mut consumers = Vec::new();
    for LoadWish { kind, power, current } in wish.loads.iter().filter(|it| it.kind.is_in_front() == in_front)
    {
        let usual = kind.usual();
        let share = match kind {
            LoadKind::Inverter => 0.2,
            LoadKind::Pump => 0.1,
            LoadKind::CoolBox => 0.3,
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
        let spot = if in_front { Spot::Dash } else { Spot::Equipment };
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
            LoadKind::Other => say!("start-load-other"),
        }
    }
}

/// Where returns go.
enum Return {
    /// To a ground point beside each.
    Body,
    /// To a bus with a wire to the battery: the bus, its next place, and the limb of that wire.
    Bus(PartId, u8),
}

/// The feeds and returns of all consumers.
pub(super) fn feeds(planner: &mut Planner<'_>, vehicle: &Vehicle, mut rear: Vec<Consumer>) {
    rear.extend(loads(planner, false));
    let front = loads(planner, true);
    let source = match planner.wish.second {
        Some(second) => link(planner, vehicle, second),
        None => vehicle.battery,
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
                source,
                consumers,
                Spot::Equipment,
                vehicle.battery,
                at == 0,
            );
        }
    } else if source != vehicle.battery {
        let area = 25.0;
        let name = say!("start-label-ground", of = say!("start-label-second"));
        planner.sketch.ground(source, "-", area, name);
    }
    if !front.is_empty() {
        let footwell = Spot::Footwell(planner.drives_left());
        tree(planner, vehicle.battery, front, footwell, vehicle.battery, true);
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

/// The second battery: a link with a fuse at each end, the isolator between.
fn link(planner: &mut Planner<'_>, vehicle: &Vehicle, second: super::wish::SecondWish) -> PartId {
    let spot = match second.at {
        Some(model::body::BatteryPlace::Front) => Spot::Engine,
        _ => Spot::Equipment,
    };
    let first = planner.fuse(
        FuseForm::Strip61,
        say!("start-label-link-fuse", end = say!("start-label-battery")),
        Spot::Battery,
    );
    let isolator = Isolator {
        kind: second.isolator.unwrap_or(IsolatorKind::Sensing),
        closed: false,
        rating: Fact::Assumed(Amps(140.0)),
        ..Isolator::default()
    };
    let isolator = planner.sketch.part(isolator, None, Spot::Battery);
    let far = planner.fuse(
        FuseForm::Strip61,
        say!("start-label-link-fuse", end = say!("start-label-second")),
        spot,
    );
    let is = Battery {
        charge: Fact::Assumed(Share(0.8)),
        ..battery(&second.battery, 60.0)
    };
    let battery = planner.sketch.part(is, Some(say!("start-label-second")), spot);
    let sketch = &mut planner.sketch;
    let runs = vec![
        sketch.run((vehicle.battery, "+"), (first, "in"), 25.0, RED),
        sketch.run((first, "out"), (isolator, "main"), 25.0, RED),
        sketch.run((isolator, "aux"), (far, "in"), 25.0, RED),
        sketch.run((far, "out"), (battery, "+"), 25.0, RED),
    ];
    let tag = sketch.tag_of(isolator);
    sketch.ground(isolator, "-", 1.5, say!("start-label-ground", of = tag.as_str()));
    planner.limbs.push(Limb {
        runs,
        device: (first, None),
        twins: vec![far],
        from: None,
        least: LEAST_MAIN,
    });
    if second.battery.capacity.is_none() {
        let tag = planner.sketch.tag_of(battery);
        planner.assumed.push(say!(
            "start-assumed-battery",
            battery = tag,
            capacity = figure(60.0, Unit::Plain("Ah"))
        ));
    }
    let second = planner.sketch.tag_of(battery);
    planner
        .choices
        .push(say!("start-chose-link", battery = second, isolator = tag));
    battery
}

/// Main fuse, feed, blocks and returns from a source to its consumers; the first tree brings the source's own return.
fn tree(
    planner: &mut Planner<'_>,
    source: PartId,
    consumers: Vec<Consumer>,
    spot: Spot,
    starter: PartId,
    is_first: bool,
) {
    let wired = planner.wish.wired_return == Some(true) && spot == Spot::Equipment;
    let at = planner.sketch.spot(source);
    let main = planner.fuse(
        FuseForm::Strip61,
        if spot == Spot::Equipment {
            say!("start-label-main-fuse")
        } else {
            say!("start-label-front-fuse")
        },
        at,
    );
    let first = planner.sketch.run((source, "+"), (main, "in"), 35.0, RED);
    let trunk = planner.limbs.len();
    planner.limbs.push(Limb {
        runs: vec![first],
        device: (main, None),
        twins: Vec::new(),
        from: None,
        least: LEAST_MAIN,
    });
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
        false => Return::Body,
    };
    if source != starter && is_first {
        let run = lead_back(planner, &mut back, source, "-", 35.0, say!("start-label-second"));
        add_run(planner, trunk, run);
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
        Return::Bus(bus, place) => {
            let to = place.to_string();
            *place = place.saturating_add(1);
            planner.sketch.run((part, terminal), (*bus, &to), area, BLACK)
        }
    }
}
