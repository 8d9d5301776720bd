//! Random systems that make sense as wiring, from a seed: one or more batteries with their trunk feeds, blocks, fuses,
//! amplifiers with speakers, loads and grounds, now and then a ring feed, a second ground, a relay, a second battery
//! behind an isolator. Equal seeds give equal sheets. All of it is invented.

use model::conductor::{Colour, EndingMethod, Jacket, Material, Size, Surroundings};
use model::fact::Fact::{Assumed, Given};
use model::kinds::sound::{Amplifier, AmplifierClass, HeadUnit, InputGround, Speaker, SupplyLaw};
use model::kinds::supply::*;
use model::quantity::*;
use model::written::{Section, Sections, StatedPower};
use model::{End, Part, PartId, PartKind, Run, RunId, Sheet, TerminalRef};

/// Numbers that look random, the same everywhere: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014, from memory).
#[derive(Clone, Debug)]
pub struct Dice(u64);

impl Dice {
    /// Dice for a seed.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }
    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }
    /// A number from 0 up to, not including, 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }
    /// A whole number below `below`, which is above nothing.
    pub fn below(&mut self, below: usize) -> usize {
        (self.bits() % below.max(1) as u64) as usize
    }
    /// A number in a range.
    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }
    /// True this share of the time.
    pub fn chance(&mut self, share: f64) -> bool {
        self.share() < share
    }
    /// One of a list.
    pub fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }
}

/// A sheet in the making.
struct Maker {
    sheet: Sheet,
    dice: Dice,
    /// Places that can feed something more.
    feeds: Vec<Feed>,
    head: Option<PartId>,
}

/// A place that can feed something more.
#[derive(Clone)]
struct Feed {
    at: TerminalRef,
    /// Size of the wire to it, in mm².
    size: f64,
    /// Power that may be drawn from it at the loudest, in watts.
    watts: f64,
}

fn feed(at: TerminalRef, size: f64, watts: f64) -> Feed {
    Feed { at, size, watts }
}

fn at(part: PartId, terminal: &str) -> TerminalRef {
    TerminalRef::new(part, terminal)
}

fn add(sheet: &mut Sheet, kind: impl Into<PartKind>) -> PartId {
    let id = PartId(sheet.parts.last_key_value().map_or(1, |(id, _)| id.0 + 1));
    let kind = kind.into();
    let tag = format!("{}{}", kind.letter(), id.0);
    sheet.parts.insert(id, Part::new(tag, kind));
    id
}

impl Maker {
    fn run(&mut self, from: TerminalRef, to: TerminalRef, size: f64, length: f64) -> RunId {
        let id = RunId(self.sheet.runs.last_key_value().map_or(1, |(id, _)| id.0 + 1));
        let mut run = Run::new(format!("W{}", id.0), End::On(from), End::On(to));
        run.wire.size = Given(Size::Metric(SquareMm(size)));
        run.wire.length = Given(Metres((length * 100.0).round() / 100.0));
        run.wire.jacket = Jacket::plain(self.dice.one(&[Colour::Red, Colour::Black, Colour::Blue]));
        if self.dice.chance(0.1) {
            run.wire.material = Given(Material::CladAluminium10);
        }
        run.wire.surroundings = Given(self.dice.one(&[
            Surroundings::Cabin,
            Surroundings::LoadArea,
            Surroundings::EngineBay,
        ]));
        run.from_ending.method = Given(self.dice.one(&[EndingMethod::CrimpedRing, EndingMethod::Ferrule]));
        if self.dice.chance(0.5) {
            run.to_ending.resistance = Given(Ohms(self.dice.between(0.0, 0.0004)));
        }
        self.sheet.runs.insert(id, run);
        id
    }

    fn ground(&mut self, minus: TerminalRef, size: f64) {
        let surface = self
            .dice
            .one(&[GroundSurface::BareMetal, GroundSurface::MakersPoint]);
        let body = Assumed(Ohms(self.dice.between(0.0005, 0.003)));
        let stud = add(
            &mut self.sheet,
            Ground {
                surface: Given(surface),
                body,
                ..Ground::default()
            },
        );
        let length = self.dice.between(0.2, 0.6);
        self.run(minus.clone(), at(stud, "stud"), size, length);
        if self.dice.chance(0.1) {
            let second = add(&mut self.sheet, Ground::default());
            self.run(minus, at(second, "stud"), size, 0.5);
        }
    }

    /// Battery, vehicle, alternator, main fuse, trunk, and a block at its end.
    fn zone(&mut self, first: bool) {
        let battery = add(
            &mut self.sheet,
            Battery {
                chemistry: self.dice.one(Chemistry::ALL),
                capacity: Given(AmpHours(self.dice.between(60.0, 110.0).round())),
                cranking: Given(Amps(self.dice.between(500.0, 950.0).round())),
                charge: Given(Share(self.dice.between(0.5, 1.0))),
                ..Battery::default()
            },
        );
        if first {
            let vehicle = add(
                &mut self.sheet,
                Vehicle {
                    running_load: Given(Amps(20.0)),
                    ..Vehicle::default()
                },
            );
            self.run(at(battery, "+"), at(vehicle, "+"), 35.0, 0.4);
            self.run(at(vehicle, "-"), at(battery, "-"), 35.0, 0.3);
            let alternator = add(
                &mut self.sheet,
                Alternator {
                    current: Given(Amps(self.dice.between(80.0, 180.0).round())),
                    voltage: Given(Volts(self.dice.between(13.8, 14.6))),
                    ..Alternator::default()
                },
            );
            self.run(at(alternator, "B+"), at(vehicle, "B+"), 25.0, 1.2);
            if self.dice.chance(0.7) {
                self.run(at(alternator, "case"), at(vehicle, "engine"), 25.0, 0.3);
            }
            self.feeds.push(feed(at(vehicle, "30"), 2.5, 60.0));
            self.feeds.push(feed(at(vehicle, "15"), 1.5, 40.0));
        } else {
            self.ground(at(battery, "-"), 35.0);
            if self.dice.chance(0.4)
                && let Some(Feed { at: from, .. }) = self.feeds.first().cloned()
            {
                let isolator = add(
                    &mut self.sheet,
                    Isolator {
                        kind: self.dice.one(IsolatorKind::ALL),
                        ..Isolator::default()
                    },
                );
                let fuse = add(
                    &mut self.sheet,
                    Fuse {
                        rating: Given(Amps(100.0)),
                        ..Fuse::default()
                    },
                );
                self.run(from, at(fuse, "in"), 16.0, 2.0);
                self.run(at(fuse, "out"), at(isolator, "main"), 16.0, 2.0);
                self.run(at(isolator, "aux"), at(battery, "+"), 16.0, 1.0);
            }
        }
        let rating = self.dice.one(&[100.0, 150.0, 200.0]);
        let fuse = add(
            &mut self.sheet,
            Fuse {
                rating: Given(Amps(rating)),
                ..Fuse::default()
            },
        );
        self.run(at(battery, "+"), at(fuse, "in"), 50.0, 0.3);
        let length = self.dice.between(1.0, 5.0);
        self.block(feed(at(fuse, "out"), 50.0, 1500.0), length);
    }

    /// One more fused feed from the battery that came last, for little things.
    fn trunk(&mut self) {
        let battery = self
            .sheet
            .parts
            .iter()
            .rev()
            .find(|(_, p)| matches!(p.is, PartKind::Battery(_)));
        let Some(battery) = battery.map(|(id, _)| *id) else {
            return self.zone(false);
        };
        let fuse = add(
            &mut self.sheet,
            Fuse {
                rating: Given(Amps(40.0)),
                form: FuseForm::Maxi,
                ..Fuse::default()
            },
        );
        self.run(at(battery, "+"), at(fuse, "in"), 10.0, 0.3);
        let length = self.dice.between(1.0, 5.0);
        self.block(feed(at(fuse, "out"), 10.0, 150.0), length);
    }

    /// A block or bus at the end of a run from `from`.
    fn block(&mut self, from: Feed, length: f64) {
        let outputs = self.dice.below(6) + 3;
        let (from, size, watts) = (from.at, from.size, from.watts / outputs as f64);
        match self.dice.below(3) {
            0 => {
                let bus = add(
                    &mut self.sheet,
                    Bus {
                        places: outputs as u8 + 1,
                        ..Bus::default()
                    },
                );
                self.run(from, at(bus, "1"), size, length);
                for n in 0..outputs {
                    self.feeds.push(feed(at(bus, &(n + 2).to_string()), size, watts));
                }
            }
            _ => {
                let ratings = (0..outputs)
                    .map(|_| {
                        self.dice
                            .chance(0.9)
                            .then(|| Amps(self.dice.one(&[15.0, 30.0, 40.0, 60.0])))
                    })
                    .collect();
                let block = Block {
                    outputs: outputs as u8,
                    fuses: Ratings(ratings),
                    ..Block::default()
                };
                let block = add(&mut self.sheet, block);
                self.run(from, at(block, "in"), size, length);
                for n in 0..outputs {
                    self.feeds
                        .push(feed(at(block, &format!("out{}", n + 1)), size, watts));
                }
            }
        }
    }

    fn amplifier(&mut self, from: Feed) {
        let (from, size, watts) = (from.at, from.size, from.watts);
        let channels = self.dice.one(&[1_u8, 2, 4]);
        let power = self.dice.between(0.2, 0.5) * watts / f64::from(channels);
        let power = (power * 10.0).round().max(1.0) / 10.0;
        let stated = StatedPower {
            power: Watts(power),
            load: Ohms(4.0),
        };
        let amplifier = add(
            &mut self.sheet,
            Amplifier {
                sections: Sections(vec![Section {
                    channels,
                    power: vec![stated],
                    minimum: Ohms(2.0),
                    bridged: None,
                    filter: model::written::Filter::Full,
                }]),
                class: self.dice.one(AmplifierClass::ALL),
                supply: self
                    .dice
                    .one(&[SupplyLaw::Regulated, SupplyLaw::Regulated, SupplyLaw::Unregulated]),
                idle_current: Given(Amps((watts / 200.0).clamp(0.05, 1.5))),
                cut_off: Given(Volts(9.0)),
                input_ground: self.dice.one(InputGround::ALL),
                ..Amplifier::default()
            },
        );
        let length = self.dice.between(0.3, 3.0);
        self.run(from, at(amplifier, "+"), size, length);
        self.ground(at(amplifier, "-"), size);
        for channel in 1..=channels {
            let speaker = add(&mut self.sheet, Speaker::default());
            let length = self.dice.between(1.0, 5.0);
            self.run(
                at(amplifier, &format!("out{channel}+")),
                at(speaker, "+"),
                1.5,
                length,
            );
            self.run(
                at(amplifier, &format!("out{channel}-")),
                at(speaker, "-"),
                1.5,
                length,
            );
        }
        if let Some(head) = self.head {
            self.run(at(head, "rem"), at(amplifier, "rem"), 0.75, 4.0);
            let output = self.dice.one(&["front-l", "front-r", "rear-l", "rear-r"]);
            self.run(at(head, output), at(amplifier, "in1"), 0.35, 4.0);
        }
    }

    fn load(&mut self, from: Feed) {
        let (from, size, watts) = (from.at, from.size, from.watts);
        let power = self.dice.between(0.1, 0.9) * watts;
        let load = add(
            &mut self.sheet,
            Load {
                law: self.dice.one(LoadLaw::ALL),
                power: Given(Watts(power)),
                current: Given(Amps(power / 13.0)),
                resistance: Given(Ohms(13.0 * 13.0 / power.max(0.1))),
                when: self
                    .dice
                    .one(&[LoadTime::Always, LoadTime::InUse, LoadTime::EngineOn]),
                share: Given(Share(self.dice.between(0.2, 1.0))),
                ..Load::default()
            },
        );
        let length = self.dice.between(0.3, 4.0);
        self.run(from, at(load, "+"), size, length);
        self.ground(at(load, "-"), size);
    }

    fn head_unit(&mut self, from: TerminalRef) {
        let head = add(
            &mut self.sheet,
            HeadUnit {
                speaker_outputs: 0,
                ..HeadUnit::default()
            },
        );
        self.run(from, at(head, "30"), 2.5, 1.5);
        self.ground(at(head, "31"), 2.5);
        self.head = Some(head);
    }

    /// One more thing on a place that can feed.
    fn grow(&mut self) {
        if self.feeds.is_empty() {
            self.trunk();
        }
        let place = self.dice.below(self.feeds.len());
        let Feed {
            at: from,
            size,
            watts,
        } = self.feeds.swap_remove(place);
        let next = if size > 20.0 {
            self.dice.one(&[16.0, 25.0])
        } else {
            (size * self.dice.between(0.5, 1.0)).max(1.5)
        };
        let next = (next * 10.0).round() / 10.0;
        match self.dice.below(20) {
            0 => self.head_unit(from),
            1..=5 => self.amplifier(feed(from, next.max(4.0), watts)),
            6..=10 => self.load(feed(from, next.min(6.0), watts)),
            11 | 12 => {
                let length = self.dice.between(0.5, 3.0);
                self.block(feed(from, next.max(6.0), watts), length);
            }
            13 => {
                let fuse = add(
                    &mut self.sheet,
                    Fuse {
                        rating: Given(Amps(40.0)),
                        form: FuseForm::Maxi,
                        ..Fuse::default()
                    },
                );
                self.run(from, at(fuse, "in"), next, 0.3);
                self.feeds.push(feed(at(fuse, "out"), next, watts));
            }
            14 => {
                let breaker = add(
                    &mut self.sheet,
                    Breaker {
                        rating: Given(Amps(50.0)),
                        ..Breaker::default()
                    },
                );
                self.run(from, at(breaker, "in"), next, 0.3);
                self.feeds.push(feed(at(breaker, "out"), next, watts));
            }
            15 => {
                let splice = add(
                    &mut self.sheet,
                    Splice {
                        places: 4,
                        method: self.dice.one(SpliceMethod::ALL),
                        ..Splice::default()
                    },
                );
                self.run(from, at(splice, "1"), next, 1.0);
                for n in 2..=4 {
                    self.feeds
                        .push(feed(at(splice, &n.to_string()), next, watts / 3.0));
                }
            }
            16 => {
                let switch = add(
                    &mut self.sheet,
                    Switch {
                        closed: self.dice.chance(0.8),
                        ..Switch::default()
                    },
                );
                self.run(from, at(switch, "in"), next, 0.8);
                self.feeds.push(feed(at(switch, "out"), next, watts));
            }
            17 => {
                let relay = add(&mut self.sheet, Relay::default());
                self.run(from, at(relay, "30"), next, 0.5);
                self.feeds.push(feed(at(relay, "87"), next, watts));
                self.ground(at(relay, "85"), 0.75);
                if let Some(head) = self.head {
                    self.run(at(head, "rem"), at(relay, "86"), 0.75, 3.0);
                } else {
                    self.run(at(relay, "30"), at(relay, "86"), 0.75, 0.1);
                }
            }
            18 => {
                let capacitor = add(&mut self.sheet, Capacitor::default());
                self.run(from, at(capacitor, "+"), next, 0.3);
                self.ground(at(capacitor, "-"), next);
            }
            _ => {
                // A ring: one more way between two places that are fed. In large systems they lie near each other: nobody joins
                // one end of a coach to the other.
                let near = |f: &Feed| self.sheet.parts.len() < 200 || f.at.part == from.part;
                let others: Vec<TerminalRef> = self
                    .feeds
                    .iter()
                    .filter(|f| near(f))
                    .map(|f| f.at.clone())
                    .collect();
                if others.is_empty() {
                    self.load(feed(from, next.min(6.0), watts));
                } else {
                    let to = others[self.dice.below(others.len())].clone();
                    let length = self.dice.between(0.5, 3.0);
                    self.run(from, to, next, length);
                }
            }
        }
    }
}

/// A random system of about this many parts, at least ten. Its loads together stay within what its batteries can feed.
#[must_use]
pub fn random_system(seed: u64, parts: usize) -> Sheet {
    let mut dice = Dice::new(seed);
    let zone = if parts < 1000 {
        dice.one(&[40, 120, 300])
    } else {
        300
    };
    let zones = parts.div_ceil(zone).max(1);
    let mut it = Maker {
        sheet: Sheet::default(),
        dice,
        feeds: Vec::new(),
        head: None,
    };
    it.zone(true);
    let mut made = 1;
    while it.sheet.parts.len() < parts.max(10) {
        if made < zones && it.sheet.parts.len() > made * zone {
            it.zone(false);
            made += 1;
        }
        it.grow();
    }
    it.sheet
}
