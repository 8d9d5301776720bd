//! What is known of a place or passage, and what of it endangers a wire.

use model::Fact;
use model::body::{Behind, Reach};
use model::conductor::Surroundings;
use words::Saying;

/// What is known of a place or passage. What the form has is assumed; what the job tells of it is given or assumed as it
/// tells. Nothing here is unknown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Facts {
    /// Its temperature.
    pub heat: Fact<Surroundings>,
    /// Whether it moves against the body, or bends.
    pub moving: Fact<bool>,
    /// Whether a wire in it can be crushed.
    pub crush: Fact<bool>,
    /// Whether water gets there.
    pub wet: Fact<bool>,
    /// Whether bare metal edges can cut a wire.
    pub sharp: Fact<bool>,
    /// Whether an airbag unfolds there.
    pub airbag: Fact<bool>,
    /// What lies behind it.
    pub behind: Fact<Behind>,
    /// What comes off so that a hand gets there.
    pub reach: Fact<Reach>,
}

impl Facts {
    /// A place of this temperature behind this trim, without anything that endangers a wire.
    pub(crate) fn new(heat: Surroundings, reach: Reach) -> Self {
        let no = Fact::Assumed(false);
        Self {
            heat: Fact::Assumed(heat),
            moving: no,
            crush: no,
            wet: no,
            sharp: no,
            airbag: no,
            behind: Fact::Assumed(Behind::Nothing),
            reach: Fact::Assumed(reach),
        }
    }
    pub(crate) fn moving(self) -> Self {
        Self {
            moving: Fact::Assumed(true),
            ..self
        }
    }
    pub(crate) fn crush(self) -> Self {
        Self {
            crush: Fact::Assumed(true),
            ..self
        }
    }
    pub(crate) fn wet(self) -> Self {
        Self {
            wet: Fact::Assumed(true),
            ..self
        }
    }
    pub(crate) fn sharp(self) -> Self {
        Self {
            sharp: Fact::Assumed(true),
            ..self
        }
    }
    pub(crate) fn airbag(self) -> Self {
        Self {
            airbag: Fact::Assumed(true),
            ..self
        }
    }
    pub(crate) fn behind(self, what: Behind) -> Self {
        Self {
            behind: Fact::Assumed(what),
            ..self
        }
    }
    /// What of it endangers a wire that lies there, gravest first.
    #[must_use]
    pub fn hazards(&self) -> Vec<Hazard> {
        let mut all = Vec::new();
        for (holds, hazard) in [
            (self.airbag, Hazard::Airbag),
            (self.moving, Hazard::Moving),
            (self.crush, Hazard::Crush),
            (self.sharp, Hazard::Sharp),
            (self.wet, Hazard::Wet),
        ] {
            if holds.or(false) {
                all.push(hazard);
            }
        }
        if self.heat.value() == Some(Surroundings::EngineBay) {
            all.push(Hazard::Heat);
        }
        all
    }
}

/// What the job tells, where it tells something.
pub(crate) fn tell<T: Copy>(fact: &mut Fact<T>, told: Fact<T>) {
    if !told.is_unknown() {
        *fact = told;
    }
}

/// All that the job tells of a place or passage, where it tells something: both have the same facts.
macro_rules! tell_facts {
    ($facts:expr, $own:expr) => {
        $crate::facts::tell_facts!(@ $facts, $own, heat moving crush wet sharp airbag behind reach)
    };
    (@ $facts:expr, $own:expr, $($name:ident)+) => {
        $($crate::facts::tell(&mut $facts.$name, $own.$name);)+
    };
}
pub(crate) use tell_facts;

/// What endangers a wire on its way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hazard {
    /// An airbag unfolds there.
    Airbag,
    /// It moves or bends.
    Moving,
    /// Weight or moving parts can crush it.
    Crush,
    /// Bare metal edges can cut it.
    Sharp,
    /// Water gets there.
    Wet,
    /// It is as hot as the engine bay.
    Heat,
}

impl Hazard {
    /// In words: the middle of a sentence.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(format!("hazard-{}", self.word()))
    }
    /// The written word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Airbag => "airbag",
            Self::Moving => "moving",
            Self::Crush => "crush",
            Self::Sharp => "sharp",
            Self::Wet => "wet",
            Self::Heat => "heat",
        }
    }
    /// By how many metres of way a wire may be longer to keep clear of it: our own judgement. Airbags, what moves and what
    /// crushes are worth any way round that a road vehicle offers; a way round an edge that a sleeve covers, or round
    /// water, only a short one. Heat counts by the metre instead, see [`crate::ways`].
    pub(crate) fn detour(self) -> f64 {
        match self {
            Self::Airbag | Self::Moving | Self::Crush => 25.0,
            Self::Sharp => 6.0,
            Self::Wet => 2.0,
            Self::Heat => 0.0,
        }
    }
}
