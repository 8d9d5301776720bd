//! The kinds of parts: [`supply`] side and [`sound`] side, and the one enum that holds any of them.

pub mod sound;
pub mod supply;

use crate::property::{Property, PropertyError, PropertySet};
use sound::*;
use supply::*;

/// Which group of the shelf a kind stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Battery, alternator, the vehicle, converter.
    Sources,
    /// Fuses and breakers.
    Protection,
    /// Blocks, buses, splices, plugs.
    Distribution,
    /// Ground points.
    Grounds,
    /// Relays, switches, isolators.
    Switching,
    /// Head unit, processor, amplifier, converter.
    Signal,
    /// Speakers and what stands before them.
    Speakers,
    /// Everything that draws current otherwise.
    Loads,
}

impl Group {
    /// All groups in the order of the shelf.
    pub const ALL: &'static [Self] = &[
        Self::Sources,
        Self::Protection,
        Self::Distribution,
        Self::Grounds,
        Self::Switching,
        Self::Signal,
        Self::Speakers,
        Self::Loads,
    ];
    /// The words on screen.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Sources => "Sources",
            Self::Protection => "Protection",
            Self::Distribution => "Distribution",
            Self::Grounds => "Grounds",
            Self::Switching => "Switching",
            Self::Signal => "Signal",
            Self::Speakers => "Speakers",
            Self::Loads => "Loads",
        }
    }
}

macro_rules! kinds {
    ($($variant:ident, $word:literal, $title:literal, $letter:literal, $group:ident;)+) => {
        /// What a part is, with the properties of its kind.
        #[derive(Debug, PartialEq)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
        pub enum PartKind {
            $(#[doc = $title] #[cfg_attr(feature = "schema", serde(rename = $word))] $variant($variant),)+
        }
        impl Clone for PartKind {
            // Not derived: that would be put into every function that clones a part, and it is large.
            #[inline(never)]
            fn clone(&self) -> Self { match self { $(Self::$variant(it) => Self::$variant(it.clone())),+ } }
        }
        impl PartKind {
            /// The word of every kind, in the order of the shelf.
            pub const WORDS: &'static [&'static str] = &[$($word),+];
            /// A part of this kind as it comes from the shelf.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                match word { $($word => Some(Self::$variant($variant::default())),)+ _ => None }
            }
            /// The written word of the kind.
            #[must_use]
            pub fn word(&self) -> &'static str { match self { $(Self::$variant(_) => $word),+ } }
            /// The kind's name on screen.
            #[must_use]
            pub fn title(&self) -> &'static str { match self { $(Self::$variant(_) => $title),+ } }
            /// The letter with which its tags begin.
            #[must_use]
            pub fn letter(&self) -> &'static str { match self { $(Self::$variant(_) => $letter),+ } }
            /// Its group on the shelf.
            #[must_use]
            pub fn group(&self) -> Group { match self { $(Self::$variant(_) => Group::$group),+ } }
            /// The properties of its kind and their values.
            #[must_use]
            pub fn set_of(&self) -> &dyn PropertySet { match self { $(Self::$variant(it) => it),+ } }
            /// The same, to be changed.
            pub fn set_of_mut(&mut self) -> &mut dyn PropertySet { match self { $(Self::$variant(it) => it),+ } }
        }
        $(impl From<$variant> for PartKind { fn from(it: $variant) -> Self { Self::$variant(it) } })+
    };
}

impl PartKind {
    /// The properties of its kind.
    #[must_use]
    pub fn properties(&self) -> &'static [Property] {
        self.set_of().properties()
    }
    /// The written form of a property; `None` when the kind has none of that name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<String> {
        self.set_of().get(name)
    }
    /// The names of those properties that are facts that are not known.
    #[must_use]
    pub fn not_known(&self) -> Vec<&'static str> {
        self.set_of().not_known()
    }
    /// Sets a property from its written form.
    ///
    /// # Errors
    /// When the kind has no such property, or the text does not fit it.
    pub fn set(&mut self, name: &str, text: &str) -> Result<(), PropertyError> {
        self.set_of_mut().set(name, text)
    }
    /// Fields of its kind that this version does not know.
    #[must_use]
    pub fn extra(&self) -> &crate::job::Extra {
        self.set_of().extra()
    }
    /// Holds all properties against their ranges.
    ///
    /// # Errors
    /// The first that is out: its name and why.
    pub fn check(&self) -> Result<(), (&'static str, PropertyError)> {
        self.set_of().check()
    }
}

kinds! {
    Battery, "battery", "Battery", "B", Sources;
    Alternator, "alternator", "Alternator", "G", Sources;
    Vehicle, "vehicle", "Vehicle wiring", "V", Sources;
    Converter, "converter", "Battery charger (converter)", "U", Sources;
    Fuse, "fuse", "Fuse", "F", Protection;
    Breaker, "breaker", "Circuit breaker", "Q", Protection;
    Block, "block", "Distribution block", "D", Distribution;
    Bus, "bus", "Bus bar or stud", "X", Distribution;
    Splice, "splice", "Splice", "J", Distribution;
    Plug, "plug", "Harness plug", "P", Distribution;
    Adapter, "adapter", "Harness adapter", "PA", Distribution;
    Ground, "ground", "Ground point", "E", Grounds;
    Relay, "relay", "Relay", "K", Switching;
    Switch, "switch", "Switch", "S", Switching;
    Isolator, "isolator", "Battery isolator", "T", Switching;
    HeadUnit, "head", "Head unit", "H", Signal;
    Processor, "processor", "Signal processor", "N", Signal;
    LineConverter, "line-converter", "Line converter", "LC", Signal;
    Amplifier, "amplifier", "Amplifier", "A", Signal;
    Speaker, "speaker", "Speaker", "LS", Speakers;
    Crossover, "crossover", "Passive crossover", "Z", Speakers;
    InlineCapacitor, "inline-capacitor", "In-line capacitor", "CS", Speakers;
    Capacitor, "capacitor", "Stiffening capacitor", "C", Loads;
    Load, "load", "Load", "L", Loads;
}
