//! The places and passages that a form of body has: engine bay, cabin and roof, which all of them share. What differs
//! behind the front seats is in [`crate::rear`].
//!
//! Positions and facts are what is usual for the form, from memory of such cars and common practice: each is assumed until
//! the job tells it otherwise. Everything is built for the driver's side and the other; a right-hand drive mirrors what
//! has to be: steering, pedals, glovebox, airbags of the dashboard, the maker's grommet, battery and tank filler.

use crate::facts::Facts;
use crate::forms::{Size, Stations};
use crate::places::{Passage, Place, Point, between, length_of};
use model::Fact;
use model::body::{BatteryPlace, Behind, BodyForm, DriveSide, PassageKind, Reach};
use model::conductor::Surroundings;

/// One side of the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Hand {
    /// On the left, looking forwards.
    Left,
    /// On the right.
    Right,
}

impl Hand {
    pub(crate) const BOTH: [Self; 2] = [Self::Left, Self::Right];
    pub(crate) fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }
    pub(crate) fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// Collects places and passages.
pub(crate) struct Builder {
    pub(crate) form: BodyForm,
    pub(crate) size: Size,
    pub(crate) at: Stations,
    /// The driver's side.
    pub(crate) driver: Hand,
    places: Vec<Place>,
    passages: Vec<Passage>,
}

/// In the cabin, behind this.
pub(crate) fn cabin(reach: Reach) -> Facts {
    Facts::new(Surroundings::Cabin, reach)
}

impl Builder {
    pub(crate) fn build(
        form: BodyForm,
        size: Size,
        drive: DriveSide,
        battery: BatteryPlace,
    ) -> (Vec<Place>, Vec<Passage>) {
        let mut builder = Self {
            form,
            size,
            at: Stations::of(form, &size),
            driver: match drive {
                DriveSide::Left => Hand::Left,
                DriveSide::Right => Hand::Right,
            },
            places: Vec::new(),
            passages: Vec::new(),
        };
        builder.engine_bay();
        builder.front();
        builder.doors();
        builder.roof();
        builder.behind_the_seats();
        builder.battery(battery);
        (builder.places, builder.passages)
    }

    /// A place in the middle, or at this share of the width from the left.
    pub(crate) fn place(&mut self, name: impl Into<String>, x: f64, across: f64, z: f64, facts: Facts) {
        self.places.push(Place {
            name: name.into(),
            label: String::new(),
            of_the_form: true,
            at: Point {
                x,
                y: across * self.size.width,
                z,
            },
            facts,
        });
    }
    /// A place on one side, at this share of the width from that side.
    pub(crate) fn on(&mut self, hand: Hand, name: &str, x: f64, inwards: f64, z: f64, facts: Facts) {
        let across = match hand {
            Hand::Left => inwards,
            Hand::Right => 1.0 - inwards,
        };
        self.place(format!("{name}-{}", hand.word()), x, across, z, facts);
    }
    /// The same on both sides.
    pub(crate) fn both(&mut self, name: &str, x: f64, inwards: f64, z: f64, facts: Facts) {
        for hand in Hand::BOTH {
            self.on(hand, name, x, inwards, z, facts);
        }
    }
    /// Changes what is known of a place.
    pub(crate) fn change(&mut self, name: &str, how: impl FnOnce(Facts) -> Facts) {
        if let Some(place) = self.places.iter_mut().find(|place| place.name == name) {
            place.facts = how(place.facts);
        }
    }
    /// A passage between two places of these names; none where one of them is not there.
    pub(crate) fn way(&mut self, name: impl Into<String>, from: &str, to: &str, kind: PassageKind) {
        let find = |name: &str| self.places.iter().position(|place| place.name == name);
        let (Some(a), Some(b)) = (find(from), find(to)) else {
            return;
        };
        let (ends, kind) = ([a, b], Fact::Assumed(kind));
        self.passages.push(Passage {
            name: name.into(),
            label: String::new(),
            of_the_form: true,
            ends,
            kind,
            length: Fact::Assumed(length_of(&self.places, ends, kind)),
            facts: between(&self.places, ends, kind.or(PassageKind::Open)),
        });
    }
    /// The same on both sides; names that end in `-` get the side behind it.
    pub(crate) fn ways(&mut self, name: &str, from: &str, to: &str, kind: PassageKind) {
        for hand in Hand::BOTH {
            let sided = |name: &str| {
                if name.ends_with('-') {
                    format!("{name}{}", hand.word())
                } else {
                    name.to_owned()
                }
            };
            self.way(sided(name), &sided(from), &sided(to), kind);
        }
    }
    /// Changes what is known of a passage.
    pub(crate) fn change_way(&mut self, name: &str, how: impl FnOnce(Facts) -> Facts) {
        if let Some(passage) = self.passages.iter_mut().find(|passage| passage.name == name) {
            passage.facts = how(passage.facts);
        }
    }

    fn engine_bay(&mut self) {
        use PassageKind::{Grommet, Open};
        let at = self.at;
        let hot = Facts::new(Surroundings::EngineBay, Reach::Bonnet);
        self.both("engine-bay", at.engine, 0.15, 0.7 + at.lift, hot.wet());
        self.both(
            "bulkhead",
            at.bulkhead,
            0.25,
            0.75 + at.lift,
            hot.behind(Behind::Lines),
        );
        self.way("front-panel", "engine-bay-left", "engine-bay-right", Open);
        self.ways("wing-", "engine-bay-", "bulkhead-", Open);
        self.way("scuttle", "bulkhead-left", "bulkhead-right", Open);
        self.change_way("scuttle", Facts::wet);
        self.both(
            "footwell",
            at.footwell,
            0.2,
            0.3 + at.lift,
            cabin(Reach::KickPanel).behind(Behind::Outside),
        );
        self.ways("bulkhead-grommet-", "bulkhead-", "footwell-", Grommet);
        for hand in Hand::BOTH {
            // From the cabin's side it is reached behind the dashboard.
            let told = |facts: Facts| Facts {
                reach: Fact::Assumed(Reach::DashTrim),
                ..facts
            };
            self.change_way(&format!("bulkhead-grommet-{}", hand.word()), told);
        }
    }

    fn front(&mut self) {
        use PassageKind::{Carpet, Seat, SeatRail, Sill, Trim};
        let (at, driver) = (self.at, self.driver);
        let passenger = driver.other();
        let dash = cabin(Reach::DashTrim);
        self.both("dash", at.dash, 0.22, 0.85 + at.lift, dash);
        self.change(&format!("dash-{}", passenger.word()), |facts| {
            facts.airbag().behind(Behind::Airbag)
        });
        self.place("dash-middle", at.dash, 0.5, 0.8 + at.lift, dash);
        let (column, box_at, pedals) = match driver {
            Hand::Left => (0.28, 0.72, 0.28),
            Hand::Right => (0.72, 0.28, 0.72),
        };
        let moving = dash.airbag().moving().behind(Behind::Airbag);
        self.place("steering-column", at.dash + 0.15, column, 0.8 + at.lift, moving);
        self.place(
            "glovebox",
            at.dash + 0.05,
            box_at,
            0.65 + at.lift,
            cabin(Reach::Glovebox),
        );
        self.place(
            "pedals",
            at.footwell,
            pedals,
            0.35 + at.lift,
            dash.moving().crush(),
        );
        self.ways("dash-way-", "dash-", "dash-middle", Trim);
        self.ways("footwell-up-", "footwell-", "dash-", Trim);
        let beside = format!("dash-{}", driver.word());
        self.way("column-way", &beside, "steering-column", Trim);
        self.way(
            "pedals-way",
            &format!("footwell-{}", driver.word()),
            "pedals",
            PassageKind::Open,
        );
        let beside = format!("dash-{}", passenger.word());
        self.way("glovebox-way", &beside, "glovebox", Trim);
        // The passenger's airbag unfolds upwards: a wire behind the glovebox lies below it.
        self.way("glovebox-middle", "glovebox", "dash-middle", Trim);
        self.way(
            "glovebox-down",
            "glovebox",
            &format!("footwell-{}", passenger.word()),
            Trim,
        );

        let curtain = cabin(Reach::PillarTrim).airbag().behind(Behind::Airbag);
        self.both("a-pillar", at.dash - 0.05, 0.08, 1.1 + at.lift, curtain);
        self.ways("a-pillar-foot-", "dash-", "a-pillar-", Trim);
        let sill = cabin(Reach::SillTrim).behind(Behind::Lines);
        self.both("sill", at.b_pillar, 0.09, 0.3 + at.lift, sill);
        self.ways("sill-front-", "footwell-", "sill-", Sill);
        self.both("b-pillar", at.b_pillar, 0.07, 0.9 + at.lift, curtain);
        self.ways("b-pillar-foot-", "sill-", "b-pillar-", Trim);
        let tunnel = cabin(Reach::Console).behind(Behind::Lines);
        self.place("tunnel", at.seat, 0.5, 0.4 + at.lift, tunnel);
        self.way("tunnel-front", "dash-middle", "tunnel", Trim);
        self.ways("carpet-front-", "footwell-", "tunnel", Carpet);
        let seat = cabin(Reach::Seat).crush().behind(Behind::Lines);
        self.both("under-seat", at.seat, 0.28, 0.35 + at.lift, seat);
        self.ways("seat-rail-", "sill-", "under-seat-", SeatRail);
        self.ways("seat-tunnel-", "tunnel", "under-seat-", SeatRail);
        let back = cabin(Reach::Seat).moving().airbag().behind(Behind::Airbag);
        self.both("front-seat-back", at.seat + 0.35, 0.28, 0.75 + at.lift, back);
        self.ways("front-seat-way-", "under-seat-", "front-seat-back-", Seat);
    }

    fn doors(&mut self) {
        let at = self.at;
        let door = cabin(Reach::DoorCard).moving().wet().behind(Behind::Outside);
        let middle = (at.dash + at.b_pillar) / 2.0;
        self.both("door", middle, 0.04, 0.7 + at.lift, door);
        self.ways("door-gaiter-", "footwell-", "door-", PassageKind::Gaiter);
    }

    fn roof(&mut self) {
        use PassageKind::Trim;
        let (at, top) = (self.at, self.size.height - 0.1);
        let roof = cabin(Reach::Headlining).behind(Behind::Outside);
        self.place("roof-front", at.dash + 0.35, 0.5, top - 0.1, roof);
        self.ways("a-pillar-way-", "a-pillar-", "roof-front", Trim);
        for hand in Hand::BOTH {
            self.change_way(&format!("a-pillar-way-{}", hand.word()), Facts::airbag);
        }
        self.place("roof", at.b_pillar, 0.5, top, roof);
        self.way("roof-way-front", "roof-front", "roof", Trim);
        self.ways("b-pillar-way-", "b-pillar-", "roof", Trim);
        for hand in Hand::BOTH {
            self.change_way(&format!("b-pillar-way-{}", hand.word()), Facts::airbag);
        }
    }

    fn battery(&mut self, battery: BatteryPlace) {
        use PassageKind::{Open, Trim};
        let (at, side) = (self.at, self.driver);
        // In front on the driver's side, behind on the other, away from the filler pipe.
        match battery {
            BatteryPlace::Front => {
                let across = if side == Hand::Left { 0.2 } else { 0.8 };
                let facts = Facts::new(Surroundings::EngineBay, Reach::Bonnet).wet();
                self.place("battery-tray", at.engine + 0.15, across, 0.75 + at.lift, facts);
                let [engine, bulkhead] =
                    ["engine-bay", "bulkhead"].map(|name| format!("{name}-{}", side.word()));
                self.way("battery-way", "battery-tray", &engine, Open);
                self.way("battery-bulkhead", "battery-tray", &bulkhead, Open);
            }
            // The bed of a pick-up is outside: its battery stands in the cab, below the rear seat.
            BatteryPlace::Rear if self.form == BodyForm::PickUp => {
                let side = side.other();
                let across = if side == Hand::Left { 0.2 } else { 0.8 };
                let (x, z) = (at.rear_seat + 0.15, 0.45 + at.lift);
                self.place("battery-tray", x, across, z, cabin(Reach::Seat));
                let beside = format!("under-rear-seat-{}", side.word());
                self.way("battery-way", "battery-tray", &beside, Trim);
            }
            BatteryPlace::Rear => {
                let side = side.other();
                let across = if side == Hand::Left { 0.2 } else { 0.8 };
                let facts = Facts::new(Surroundings::LoadArea, Reach::LoadFloor).behind(Behind::Outside);
                let (x, z) = (at.load_middle() + 0.2, 0.45 + at.lift);
                self.place("battery-tray", x, across, z, facts);
                let beside = format!("side-{}", side.word());
                self.way("battery-way", "battery-tray", &beside, Trim);
                self.way("battery-floor", "battery-tray", "load-floor", PassageKind::Carpet);
            }
        }
    }
}
