//! Where things stand: in the body where its form is known, else how far apart they usually are.

use super::wish::Wish;
use model::body::{BatteryPlace, BodyForm, DriveSide};
use model::conductor::Surroundings;
use model::quantity::Metres;

/// Where a thing stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Spot {
    /// Beside the starter battery.
    Battery,
    /// In the engine bay, on the other side.
    Engine,
    /// At the dashboard.
    Dash,
    /// In the footwell, left or right: `true` is left.
    Footwell(bool),
    /// In a front door.
    Door(bool),
    /// Where speakers play behind.
    Behind(bool),
    /// Where amplifiers and what belongs to them stand: the load area, or behind the seats where that lies outside.
    Equipment,
    /// Nowhere in particular: the vehicle's own wiring.
    Nowhere,
}

/// The vehicle as far as places go.
#[derive(Clone, Copy, Debug)]
pub(super) struct Places {
    form: Option<BodyForm>,
    drive: DriveSide,
    battery: BatteryPlace,
}

impl Places {
    pub(super) fn of(wish: &Wish) -> Self {
        Self {
            form: wish.body,
            drive: wish.drive.unwrap_or(DriveSide::Left),
            battery: wish.battery_at.unwrap_or(BatteryPlace::Front),
        }
    }

    /// The name of the place, where the form of the body is known. Equipment stands where a screw meets no tank and no
    /// line, and where its ground point can be beside it.
    pub(super) fn name(&self, spot: Spot) -> Option<String> {
        let form = self.form?;
        let hand = |left: bool| if left { "left" } else { "right" };
        let driver = hand(self.drive == DriveSide::Left);
        let other = hand(self.drive == DriveSide::Right);
        let is_car = matches!(form, BodyForm::Hatchback | BodyForm::Saloon | BodyForm::Estate);
        Some(match spot {
            Spot::Battery => "battery-tray".to_owned(),
            Spot::Engine => format!("engine-bay-{other}"),
            Spot::Dash => "dash-middle".to_owned(),
            Spot::Footwell(left) => format!("footwell-{}", hand(left)),
            Spot::Door(left) => format!("door-{}", hand(left)),
            Spot::Behind(left) if is_car => format!("side-{}", hand(left)),
            Spot::Behind(left) if form == BodyForm::PickUp => format!("cab-back-{}", hand(left)),
            Spot::Behind(left) => format!("tail-pillar-{}", hand(left)),
            Spot::Equipment if is_car => "load-floor".to_owned(),
            Spot::Equipment if form == BodyForm::PickUp => format!("cab-back-{driver}"),
            Spot::Equipment => format!("wheel-arch-{driver}"),
            Spot::Nowhere => return None,
        })
    }

    /// Distance from the front, in metres, as in a car of medium size (common practice).
    fn station(&self, spot: Spot) -> f64 {
        match spot {
            Spot::Battery if self.battery == BatteryPlace::Rear => 4.6,
            Spot::Battery | Spot::Engine | Spot::Nowhere => 0.5,
            Spot::Footwell(_) => 1.5,
            Spot::Dash => 1.8,
            Spot::Door(_) => 2.2,
            Spot::Behind(_) => 3.6,
            Spot::Equipment => 4.8,
        }
    }

    /// Length of a run between two spots, ends and all, before anything is routed.
    pub(super) fn length(&self, from: Spot, to: Spot) -> Metres {
        if from == to {
            return Metres(0.3);
        }
        let along = (self.station(from) - self.station(to)).abs();
        Metres(((along + 0.7) * 10.0).round() / 10.0)
    }

    /// What is around a run between two spots.
    pub(super) fn surroundings(&self, from: Spot, to: Spot) -> Surroundings {
        let hot = |spot: Spot| match spot {
            Spot::Battery => self.battery == BatteryPlace::Front,
            Spot::Engine => true,
            _ => false,
        };
        if hot(from) || hot(to) {
            Surroundings::EngineBay
        } else if from == Spot::Equipment && to == Spot::Equipment {
            Surroundings::LoadArea
        } else {
            Surroundings::Cabin
        }
    }
}
