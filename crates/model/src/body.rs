//! The vehicle's body as a job tells it: its shape and size, and what is known of its places and passages beyond what
//! every body of that form has. What follows from it, the plan with all its places, is made by the crate `body`.

use crate::conductor::Surroundings;
use crate::fact::Fact::{self, Unknown};
use crate::job::Extra;
use crate::quantity::Metres;
use crate::{choice, properties};
use ordered::OrderedMap;
use words::{Saying, say};

choice! {
    /// Form of the body.
    pub enum BodyForm {
        Hatchback = "hatchback", "hatchback";
        Saloon = "saloon", "saloon";
        Estate = "estate", "estate car";
        Van = "van", "panel van";
        PickUp = "pick-up", "pick-up";
        Camper = "camper", "camper van";
    }
}

choice! {
    /// On which side the driver sits, looking forwards.
    pub enum DriveSide {
        Left = "left-hand", "left-hand drive";
        Right = "right-hand", "right-hand drive";
    }
}

choice! {
    /// Where the starter battery stands.
    pub enum BatteryPlace {
        Front = "front-battery", "in the engine bay";
        Rear = "rear-battery", "in the load area";
    }
}

choice! {
    /// What kind of way a passage is.
    pub enum PassageKind {
        Open = "open", "open space";
        Grommet = "grommet", "grommet opening in sheet metal";
        Hole = "hole", "bare hole in sheet metal";
        Gaiter = "gaiter", "gaiter over a hinge";
        Hinge = "hinge", "hinge without a gaiter";
        Carpet = "carpet", "under the carpet";
        Sill = "sill", "along a sill";
        Trim = "trim", "behind trim";
        SeatRail = "seat-rail", "under a seat, between its rails";
        Seat = "seat", "into a seat, through its frame";
        Underbody = "underbody", "under the floor, outside";
    }
}

choice! {
    /// What may lie behind a place, where a screw or a drill would reach it.
    pub enum Behind {
        Nothing = "nothing", "nothing that matters";
        Tank = "tank", "fuel tank";
        Lines = "lines", "brake or fuel lines";
        HighVoltage = "high-voltage", "high-voltage cable";
        Airbag = "airbag-behind", "airbag or its gas generator";
        Outside = "outside", "the outside skin";
    }
}

choice! {
    /// What comes off or out so that a hand gets there.
    pub enum Reach {
        Open = "nothing-off", "nothing, it lies open";
        Bonnet = "bonnet", "bonnet, opened";
        DashTrim = "dash-trim", "trim of the dashboard";
        Glovebox = "glovebox", "glovebox";
        KickPanel = "kick-panel", "side trim of the footwell";
        SillTrim = "sill-trim", "sill trim";
        Carpet = "carpet-up", "carpet, lifted";
        Console = "console", "centre console";
        Seat = "seat-out", "seat";
        SeatBack = "seat-back", "rear seat back, folded or out";
        PillarTrim = "pillar-trim", "pillar trim";
        DoorCard = "door-card", "door trim";
        Headlining = "headlining", "headlining";
        SideTrim = "side-trim", "side trim of the load area";
        LoadFloor = "floor-cover", "cover of the load floor";
        LidTrim = "lid-trim", "trim of the lid or tailgate";
        Ramp = "ramp", "vehicle raised";
    }
}

properties! {
    /// Shape and size of the body.
    pub struct BodyShape {
        /// Form of the body; without it there is no plan of the car.
        form as "form": Fact<BodyForm> = Unknown;
        /// Length of the body over all; as usual for the form when not known.
        length as "length": Fact<Metres> = Unknown, 2.0 to 12.0;
        /// Width of the body without mirrors; as usual for the form when not known.
        width as "width": Fact<Metres> = Unknown, 1.2 to 2.6;
        /// Distance between the axles; as usual for the form when not known.
        wheelbase as "wheelbase": Fact<Metres> = Unknown, 1.4 to 7.0;
        /// The driver's side; left-hand drive when not known.
        drive as "drive": Fact<DriveSide> = Unknown;
        /// Where the starter battery stands; in the engine bay when not known.
        battery as "battery": Fact<BatteryPlace> = Unknown;
    }
}

properties! {
    /// What the job tells of one place: of one that the form has, by its name, what is otherwise; of one more, all of it.
    pub struct OwnPlace {
        /// What people call this place.
        label as "label": String = String::new();
        /// Distance from the front bumper, along the car; in the middle when not known.
        from_front as "from-front": Fact<Metres> = Unknown, 0.0 to 12.0;
        /// Distance from the left side of the body, across the car; in the middle when not known.
        from_left as "from-left": Fact<Metres> = Unknown, 0.0 to 2.6;
        /// Height over the road.
        height as "height": Fact<Metres> = Unknown, 0.0 to 4.0;
        /// Which temperature it has.
        heat as "heat": Fact<Surroundings> = Unknown;
        /// Whether it moves against the body: a door, a lid, a seat back.
        moving as "moving": Fact<bool> = Unknown;
        /// Whether weight or moving parts can crush a wire there.
        crush as "crush": Fact<bool> = Unknown;
        /// Whether water gets there.
        wet as "wet": Fact<bool> = Unknown;
        /// Whether bare metal edges can cut a wire there.
        sharp as "sharp": Fact<bool> = Unknown;
        /// Whether an airbag unfolds there.
        airbag as "airbag": Fact<bool> = Unknown;
        /// What lies behind it, where a screw would come out.
        behind as "behind": Fact<Behind> = Unknown;
        /// What comes off so that a hand gets there.
        reach as "reach": Fact<Reach> = Unknown;
    }
}

properties! {
    /// What the job tells of one passage: of one that the form has, by its name, what is otherwise; of one more, all of it.
    pub struct OwnPassage {
        /// What people call this passage.
        label as "label": String = String::new();
        /// Name of the place at one of its ends.
        from as "from": String = String::new();
        /// Name of the place at its other end.
        to as "to": String = String::new();
        /// What kind of way it is.
        kind as "kind": Fact<PassageKind> = Unknown;
        /// Length of wire in it; from where its ends lie when not known.
        length as "length": Fact<Metres> = Unknown, 0.0 to 20.0;
        /// Which temperature its hottest piece has.
        heat as "heat": Fact<Surroundings> = Unknown;
        /// Whether it bends when something opens or is moved.
        moving as "moving": Fact<bool> = Unknown;
        /// Whether a wire in it can be crushed by weight or moving parts.
        crush as "crush": Fact<bool> = Unknown;
        /// Whether water gets into it.
        wet as "wet": Fact<bool> = Unknown;
        /// Whether bare metal edges can cut a wire in it.
        sharp as "sharp": Fact<bool> = Unknown;
        /// Whether an airbag unfolds through it.
        airbag as "airbag": Fact<bool> = Unknown;
        /// What lies beside or behind it, where a screw would come out.
        behind as "behind": Fact<Behind> = Unknown;
        /// What comes off so that a hand gets into it.
        reach as "reach": Fact<Reach> = Unknown;
    }
}

/// The body as the job tells it.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(default)
)]
pub struct Body {
    /// Shape and size.
    pub shape: BodyShape,
    /// What is told of places, by their names.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "OrderedMap::is_empty"))]
    pub places: OrderedMap<String, OwnPlace>,
    /// What is told of passages, by their names.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "OrderedMap::is_empty"))]
    pub passages: OrderedMap<String, OwnPassage>,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

impl Body {
    /// Whether nothing is told of it, so that a file need not mention it.
    #[must_use]
    pub fn is_untold(&self) -> bool {
        // Nearly every job is asked this after every edit: the form alone answers for most that have a body.
        self.shape.form.is_unknown() && *self == Self::default()
    }
}

/// Holds the name of a place or passage against the rule: letters, digits, `-` and `_`, as routes and the text form write
/// them, up to [`crate::limits::LONGEST_PLACE`] bytes.
///
/// # Errors
/// What is wrong with it.
pub fn check_name(name: &str) -> Result<(), Saying> {
    if name.is_empty() {
        return Err(say!("error-place-empty"));
    }
    if name.len() > crate::limits::LONGEST_PLACE {
        return Err(say!(
            "error-place-long",
            most = crate::limits::LONGEST_PLACE,
            bytes = name.len()
        ));
    }
    match name
        .chars()
        .find(|c| !(c.is_alphanumeric() || matches!(c, '-' | '_')))
    {
        Some(bad) => Err(say!("error-place-sign", place = name, bad = bad.to_string())),
        None => Ok(()),
    }
}
