//! What becomes of a thing from sheet to sheet, and where it goes when it leaves the vehicle.

use crate::fact::Fact::{self, Unknown};
use crate::{choice, properties};

choice! {
    /// What is to become of a thing that an earlier sheet has. A thing that goes for good is not on the later sheet.
    pub enum Fate {
        Keep = "keep", "stays as it is";
        Refit = "refit", "is taken out and refitted";
        Move = "move", "moves to another place";
        Replace = "replace", "is replaced by its like";
    }
}

choice! {
    /// Where a thing goes once it is out of the vehicle.
    pub enum OnceOut {
        Customer = "customer", "is handed to the customer";
        Kept = "kept", "is kept for the return to stock";
        Shop = "shop", "goes to the shop's shelf";
        Scrap = "scrap", "is scrapped";
    }
}

properties! {
    /// What becomes of a thing.
    pub struct Handling {
        /// What is to become of it, where an earlier sheet has it too.
        fate as "fate": Fact<Fate> = Unknown;
        /// Where it goes once it is out of the vehicle.
        once_out as "once-out": Fact<OnceOut> = Unknown;
    }
}
