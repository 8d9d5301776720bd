//! How large the forms of body usually are, and where along a body its parts are.

use model::Fact;
use model::body::{BodyForm, BodyShape};
use model::quantity::Metres;

/// Size of a body in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Over all.
    pub length: f64,
    /// Without mirrors.
    pub width: f64,
    /// Between the axles.
    pub wheelbase: f64,
    /// Over the road.
    pub height: f64,
}

/// The size that a form usually has. Middle of what is on the road in Europe (from memory), in steps of 5 cm; a body told
/// in metres replaces it.
#[must_use]
pub fn usual_size(form: BodyForm) -> Size {
    let (length, width, wheelbase, height) = match form {
        BodyForm::Hatchback => (4.25, 1.8, 2.6, 1.45),
        BodyForm::Saloon => (4.75, 1.85, 2.8, 1.45),
        BodyForm::Estate => (4.75, 1.85, 2.8, 1.5),
        BodyForm::Van => (5.4, 2.0, 3.3, 2.2),
        BodyForm::PickUp => (5.3, 1.9, 3.2, 1.8),
        BodyForm::Camper => (6.0, 2.05, 3.65, 2.65),
    };
    Size {
        length,
        width,
        wheelbase,
        height,
    }
}

/// The size of a body: what the job tells, the usual for the rest. A wheelbase that is not told keeps its usual share of
/// the length, and one that leaves no room before or behind it is held to what does.
pub(crate) fn size_of(form: BodyForm, shape: &BodyShape) -> Size {
    let usual = usual_size(form);
    let told = |fact: Fact<Metres>| fact.value().map(|metres| metres.0);
    let length = told(shape.length).unwrap_or(usual.length);
    let wheelbase = told(shape.wheelbase).unwrap_or(usual.wheelbase * length / usual.length);
    Size {
        length,
        width: told(shape.width).unwrap_or(usual.width),
        wheelbase: wheelbase.clamp(0.4 * length, 0.8 * length),
        height: usual.height,
    }
}

/// Where along the body its parts are, in metres from the front bumper, and how high its floor lies over that of a car.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stations {
    /// Middle of the engine bay.
    pub(crate) engine: f64,
    /// The sheet metal between engine bay and cabin.
    pub(crate) bulkhead: f64,
    /// Feet of those in front.
    pub(crate) footwell: f64,
    /// The dashboard.
    pub(crate) dash: f64,
    /// Middle of the front seats.
    pub(crate) seat: f64,
    /// The pillar behind the front doors.
    pub(crate) b_pillar: f64,
    /// Middle of the rear seat; where there is none, the wall or room behind the front seats.
    pub(crate) rear_seat: f64,
    /// Foot of the rear seat's back, where the load area begins.
    pub(crate) load: f64,
    /// Rear axle.
    pub(crate) axle: f64,
    /// Inside of the rear end.
    pub(crate) tail: f64,
    /// How much higher than in a car the floor lies.
    pub(crate) lift: f64,
}

impl Stations {
    pub(crate) fn of(form: BodyForm, size: &Size) -> Self {
        // Shares of what is not wheelbase that lie in front, and shares of the wheelbase from the front axle on: read off
        // side views in owners' books (from memory), rounded.
        let (front, bulkhead, footwell, dash, seat, b_pillar, rear_seat, load, lift) = match form {
            BodyForm::Hatchback => (0.54, 0.17, 0.24, 0.3, 0.58, 0.66, 0.86, 1.0, 0.0),
            BodyForm::Saloon => (0.45, 0.17, 0.24, 0.3, 0.58, 0.66, 0.86, 1.0, 0.0),
            BodyForm::Estate => (0.45, 0.17, 0.24, 0.3, 0.58, 0.66, 0.86, 1.0, 0.0),
            BodyForm::Van => (0.45, 0.05, 0.1, 0.16, 0.36, 0.44, 0.47, 0.48, 0.25),
            BodyForm::PickUp => (0.43, 0.15, 0.2, 0.26, 0.45, 0.52, 0.68, 0.8, 0.25),
            BodyForm::Camper => (0.4, 0.05, 0.1, 0.16, 0.34, 0.42, 0.52, 0.6, 0.25),
        };
        let first = (size.length - size.wheelbase) * front;
        let at = |share: f64| first + size.wheelbase * share;
        Self {
            engine: first,
            bulkhead: at(bulkhead),
            footwell: at(footwell),
            dash: at(dash),
            seat: at(seat),
            b_pillar: at(b_pillar),
            rear_seat: at(rear_seat),
            load: at(load),
            axle: at(1.0),
            tail: size.length - 0.15,
            lift,
        }
    }
    /// Middle of the load area.
    pub(crate) fn load_middle(&self) -> f64 {
        (self.load + self.tail) / 2.0
    }
}
