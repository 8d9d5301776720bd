//! What the forms have behind the front seats.

use crate::build::{Builder, Hand, cabin};
use crate::facts::Facts;
use model::body::{Behind, BodyForm, PassageKind, Reach};
use model::conductor::Surroundings;

/// In the load area, behind this.
fn load_area(reach: Reach) -> Facts {
    Facts::new(Surroundings::LoadArea, reach)
}

impl Builder {
    pub(crate) fn behind_the_seats(&mut self) {
        match self.form {
            BodyForm::Hatchback | BodyForm::Estate | BodyForm::Saloon => self.car(),
            BodyForm::Van => self.van(),
            BodyForm::Camper => self.camper(),
            BodyForm::PickUp => self.pick_up(),
        }
    }

    /// The side on which the tank is filled: the passenger's, as usual where one parks at the kerb (from memory; it differs).
    fn filler(&self) -> Hand {
        self.driver.other()
    }

    /// Rear doors of a car, which hang on the middle pillar.
    fn rear_doors(&mut self) {
        let at = self.at;
        let door = cabin(Reach::DoorCard).moving().wet().behind(Behind::Outside);
        let middle = (at.b_pillar + at.load) / 2.0;
        self.both("rear-door", middle, 0.04, 0.7 + at.lift, door);
        self.ways(
            "rear-door-gaiter-",
            "b-pillar-",
            "rear-door-",
            PassageKind::Gaiter,
        );
    }

    /// The rear seat of a car: below its cushion, and its back in two halves that fold.
    fn rear_seat(&mut self) {
        use PassageKind::{Carpet, Hinge};
        let at = self.at;
        let below = cabin(Reach::Seat).behind(Behind::Tank);
        self.both("under-rear-seat", at.rear_seat, 0.25, 0.38 + at.lift, below);
        self.way(
            "rear-seat-way",
            "under-rear-seat-left",
            "under-rear-seat-right",
            Carpet,
        );
        self.ways("rear-seat-side-", "sill-", "under-rear-seat-", Carpet);
        self.ways("tunnel-rear-", "tunnel", "under-rear-seat-", Carpet);
        let back = cabin(Reach::SeatBack).moving().crush();
        self.both("seat-back", at.load, 0.28, 0.75 + at.lift, back);
        self.ways("seat-back-hinge-", "under-rear-seat-", "seat-back-", Hinge);
    }

    /// Load area of a car.
    fn car(&mut self) {
        use PassageKind::{Carpet, Gaiter, Hinge, Hole, Open, Sill, Trim};
        let (at, form, filler) = (self.at, self.form, self.filler());
        self.rear_doors();
        self.rear_seat();
        let floor = load_area(Reach::LoadFloor).behind(Behind::Outside);
        self.place("load-floor", at.load_middle(), 0.5, 0.55, floor);
        // A saloon has sheet metal behind the seat back, with openings whose edges are bare.
        let through = if form == BodyForm::Saloon { Hole } else { Carpet };
        self.ways("seat-load-", "under-rear-seat-", "load-floor", through);
        self.ways("seat-back-load-", "seat-back-", "load-floor", Hinge);
        let arch = load_area(Reach::SideTrim).behind(Behind::Outside);
        self.both("wheel-arch", at.axle, 0.14, 0.65, arch);
        self.ways("sill-rear-", "sill-", "wheel-arch-", Sill);
        self.both("side", at.load_middle(), 0.08, 0.75, arch);
        self.change(&format!("side-{}", filler.word()), |facts| {
            facts.behind(Behind::Tank)
        });
        self.ways("arch-way-", "wheel-arch-", "side-", Trim);
        self.ways("floor-way-", "side-", "load-floor", Carpet);
        let well = load_area(Reach::LoadFloor).wet().behind(Behind::Outside);
        self.place("spare-well", at.load_middle() + 0.1, 0.5, 0.35, well);
        self.way("well-way", "load-floor", "spare-well", Open);
        let tail = load_area(Reach::LidTrim).behind(Behind::Outside);
        self.place("tail-panel", at.tail, 0.5, 0.6, tail);
        self.way("floor-tail", "load-floor", "tail-panel", Carpet);
        self.ways("side-tail-", "side-", "tail-panel", Trim);
        let curtain = cabin(Reach::PillarTrim).airbag().behind(Behind::Airbag);
        self.both("c-pillar", at.axle + 0.1, 0.12, 1.1, curtain);
        self.ways("c-pillar-foot-", "wheel-arch-", "c-pillar-", Trim);
        let top = self.size.height - 0.1;
        let roof = cabin(Reach::Headlining).behind(Behind::Outside);
        let roof_rear = if form == BodyForm::Saloon {
            at.axle + 0.1
        } else {
            at.tail - 0.25
        };
        self.place("roof-rear", roof_rear, 0.5, top - 0.05, roof);
        self.way("roof-way-rear", "roof", "roof-rear", Trim);
        self.ways("c-pillar-way-", "c-pillar-", "roof-rear", Trim);
        for hand in Hand::BOTH {
            self.change_way(&format!("c-pillar-way-{}", hand.word()), Facts::airbag);
        }
        let lid = load_area(Reach::LidTrim).moving().wet().behind(Behind::Outside);
        match form {
            BodyForm::Saloon => {
                let shelf = load_area(Reach::SeatBack).behind(Behind::Nothing);
                self.place("rear-shelf", at.axle + 0.25, 0.5, 0.95, shelf);
                self.ways("shelf-side-", "c-pillar-", "rear-shelf", Trim);
                self.way("shelf-floor", "rear-shelf", "load-floor", Hole);
                // The lid's loom lies along the arm of its hinge.
                self.place("boot-lid", at.tail - 0.3, 0.5, 0.95, lid);
                self.ways("boot-hinge-", "side-", "boot-lid", Hinge);
            }
            BodyForm::Hatchback => {
                let shelf = load_area(Reach::Open).moving();
                self.place("rear-shelf", at.load_middle(), 0.5, 0.95, shelf);
                self.ways("shelf-side-", "c-pillar-", "rear-shelf", Hinge);
                self.place("tailgate", at.tail, 0.5, 1.0, lid);
                self.way("tailgate-gaiter", "roof-rear", "tailgate", Gaiter);
            }
            _ => {
                self.place("tailgate", at.tail, 0.5, 1.0, lid);
                self.way("tailgate-gaiter", "roof-rear", "tailgate", Gaiter);
            }
        }
    }

    /// Walls, floor and rear doors of a van or camper.
    fn box_body(&mut self) {
        use PassageKind::{Carpet, Gaiter, Sill, Trim};
        let (at, top) = (self.at, self.size.height - 0.1);
        let wall = load_area(Reach::SideTrim).behind(Behind::Outside);
        let floor = load_area(Reach::LoadFloor).behind(Behind::Lines);
        self.place("load-floor", at.load_middle(), 0.5, 0.35 + at.lift, floor);
        self.both("side", at.load_middle(), 0.06, 1.0 + at.lift, wall);
        self.both("wheel-arch", at.axle, 0.15, 0.65 + at.lift, wall);
        self.change(&format!("side-{}", self.driver.word()), |facts| {
            facts.behind(Behind::Tank)
        });
        self.ways("arch-way-", "wheel-arch-", "side-", Trim);
        self.ways("floor-way-", "wheel-arch-", "load-floor", Carpet);
        self.ways("sill-rear-", "sill-", "wheel-arch-", Sill);
        let tail = load_area(Reach::LidTrim).behind(Behind::Outside);
        self.both("tail-pillar", at.tail, 0.1, 0.9 + at.lift, tail);
        self.ways("tail-way-", "side-", "tail-pillar-", Trim);
        let door = load_area(Reach::DoorCard).moving().wet().behind(Behind::Outside);
        self.both("rear-door", at.tail + 0.05, 0.28, 0.9 + at.lift, door);
        self.ways("rear-door-gaiter-", "tail-pillar-", "rear-door-", Gaiter);
        let roof = load_area(Reach::Headlining).behind(Behind::Outside);
        self.place("roof-rear", at.load_middle(), 0.5, top, roof);
        self.way("roof-way-rear", "roof", "roof-rear", Trim);
        self.ways("roof-side-", "side-", "roof-rear", Trim);
        // The sliding door is at the kerb.
        let kerb = self.driver.other();
        let sliding = cabin(Reach::DoorCard)
            .moving()
            .crush()
            .wet()
            .behind(Behind::Outside);
        let across = if kerb == Hand::Left { 0.04 } else { 0.96 };
        self.place("sliding-door", at.b_pillar + 0.6, across, 0.9 + at.lift, sliding);
        // Its loom runs in a chain along the sill, since no gaiter reaches so far.
        let sill = format!("sill-{}", kerb.word());
        self.way("sliding-door-chain", &sill, "sliding-door", PassageKind::Hinge);
    }

    fn van(&mut self) {
        use PassageKind::Hole;
        let at = self.at;
        self.box_body();
        let wall = cabin(Reach::SideTrim);
        self.both("partition", at.rear_seat, 0.25, 0.8 + at.lift, wall);
        self.ways("partition-foot-", "sill-", "partition-", PassageKind::Trim);
        self.ways("partition-hole-", "partition-", "load-floor", Hole);
    }

    fn camper(&mut self) {
        use PassageKind::{Carpet, Trim};
        let at = self.at;
        self.box_body();
        let cupboard = load_area(Reach::Open);
        let middle = (at.load + at.axle) / 2.0;
        self.both("cupboard", middle, 0.15, 0.8 + at.lift, cupboard);
        self.ways("cupboard-way-", "side-", "cupboard-", Trim);
        self.ways("cupboard-floor-", "cupboard-", "load-floor", Carpet);
        self.ways("seat-box-way-", "under-seat-", "cupboard-", Carpet);
        let bench = cabin(Reach::Seat).behind(Behind::Tank);
        let side = self.driver;
        let across = if side == Hand::Left { 0.25 } else { 0.75 };
        self.place("bench", at.rear_seat, across, 0.45 + at.lift, bench);
        self.way("bench-sill", &format!("sill-{}", side.word()), "bench", Carpet);
        self.way(
            "bench-cupboard",
            "bench",
            &format!("cupboard-{}", side.word()),
            Trim,
        );
        let bed = load_area(Reach::Open);
        self.place("under-bed", at.tail - 0.7, 0.5, 0.6 + at.lift, bed);
        self.ways("bed-way-", "wheel-arch-", "under-bed", Trim);
        self.way("bed-floor", "load-floor", "under-bed", Carpet);
    }

    /// A double cab, and a load bed on a frame, outside.
    fn pick_up(&mut self) {
        use PassageKind::{Grommet, Hole, Open, Trim, Underbody};
        let at = self.at;
        self.rear_doors();
        self.rear_seat();
        let wall = cabin(Reach::SeatBack).behind(Behind::Outside);
        self.both("cab-back", at.load, 0.2, 0.8 + at.lift, wall);
        self.ways("cab-back-way-", "under-rear-seat-", "cab-back-", Trim);
        let curtain = cabin(Reach::PillarTrim).airbag().behind(Behind::Airbag);
        self.both("c-pillar", at.load, 0.1, 1.1 + at.lift, curtain);
        self.ways("c-pillar-foot-", "cab-back-", "c-pillar-", Trim);
        let top = self.size.height - 0.1;
        let roof = cabin(Reach::Headlining).behind(Behind::Outside);
        self.place("roof-rear", at.load, 0.5, top - 0.05, roof);
        self.way("roof-way-rear", "roof", "roof-rear", Trim);
        self.ways("c-pillar-way-", "c-pillar-", "roof-rear", Trim);
        for hand in Hand::BOTH {
            self.change_way(&format!("c-pillar-way-{}", hand.word()), Facts::airbag);
        }
        let frame = load_area(Reach::Ramp).wet().behind(Behind::Lines);
        self.both("frame", at.load, 0.25, 0.5, frame);
        self.ways("cab-grommet-", "under-rear-seat-", "frame-", Grommet);
        let bed = load_area(Reach::Open).wet().behind(Behind::Outside);
        self.both("side", at.load_middle(), 0.08, 0.85 + at.lift, bed);
        self.ways("frame-way-", "frame-", "side-", Underbody);
        self.place(
            "load-floor",
            at.load_middle(),
            0.5,
            0.55 + at.lift,
            bed.behind(Behind::Tank),
        );
        self.ways("bed-hole-", "frame-", "load-floor", Hole);
        self.ways("floor-way-", "side-", "load-floor", Open);
        let gate = load_area(Reach::LidTrim).moving().wet().behind(Behind::Outside);
        self.place("tailgate", at.tail, 0.5, 0.8 + at.lift, gate);
        self.ways("tailgate-hinge-", "side-", "tailgate", PassageKind::Hinge);
    }
}
