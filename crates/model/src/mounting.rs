//! How a part is fixed in the vehicle.

use crate::fact::Fact::{self, Unknown};
use crate::{choice, properties};

choice! {
    /// What a part is fixed to.
    pub enum MountedOn {
        Body = "body", "body metal that does not move";
        Board = "board", "a board or rack fixed to the body";
        Bracket = "bracket", "a bracket fixed to the body";
        Trim = "trim", "a trim panel";
        Seat = "seat", "a seat";
        SeatBack = "seat-back", "a seat back that folds";
        Door = "door", "a door, lid or tailgate";
        Loose = "loose", "nothing: it lies loose";
    }
}

properties! {
    /// How a part is fixed. What nobody has looked at is not known.
    pub struct Mounting {
        /// What it is fixed to.
        mounted as "mounted": Fact<MountedOn> = Unknown;
        /// How many fixing holes it has.
        holes as "fixing-holes": Fact<u8> = Unknown, 0 to 100;
        /// How many of its fixing holes have a proper screw or bolt.
        screws as "screws": Fact<u8> = Unknown, 0 to 100;
        /// Whether it sits flat on its surface, its screws square to it.
        square as "square": Fact<bool> = Unknown;
        /// Whether somebody looked for a tank, brake or fuel line or high-voltage cable behind its screws.
        looked_behind as "looked-behind": Fact<bool> = Unknown;
        /// Whether a loose screw, an offcut or other loose metal was left lying by it.
        loose_metal as "loose-metal": Fact<bool> = Unknown;
    }
}
