//! What there is and what is wanted, as data: the short form. What is not told is left open here; [`super::start`] decides it and
//! says so.

use model::body::{BatteryPlace, BodyForm, DriveSide};
use model::kinds::sound::AmplifierClass;
use model::kinds::supply::{Chemistry, IsolatorKind};
use model::quantity::{AmpHours, Amps, Ohms, Watts};

/// Most amplifiers of one wish.
pub const MOST_AMPLIFIERS: usize = 4;
/// Most batteries beside the starter battery, side by side.
pub const MOST_SECONDS: u8 = 4;
/// Most extra loads of one wish.
pub const MOST_LOADS: usize = 8;
/// Most speakers of one kind.
pub const MOST_SPEAKERS: u8 = 8;

/// What there is in the vehicle, and what comes into it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wish {
    /// Form of the body; without it nothing gets a place or a route.
    pub body: Option<BodyForm>,
    /// Side of the driver.
    pub drive: Option<DriveSide>,
    /// The starter battery.
    pub battery: BatteryWish,
    /// Where the starter battery stands.
    pub battery_at: Option<BatteryPlace>,
    /// What the alternator gives at cruising speed, cold.
    pub alternator: Option<Amps>,
    /// The head unit.
    pub head: HeadWish,
    /// A signal processor between head unit and amplifiers.
    pub processor: Option<ProcessorWish>,
    /// The amplifiers, in the order in which they were told.
    pub amplifiers: Vec<AmplifierWish>,
    /// The speakers, at most one line for each [`Where`].
    pub speakers: Vec<SpeakersWish>,
    /// A second battery with its isolator.
    pub second: Option<SecondWish>,
    /// Loads that are no sound.
    pub loads: Vec<LoadWish>,
    /// Whether the head unit goes onto the plug of the factory harness; it does when nothing is told.
    pub harness: Option<bool>,
    /// Whether the return is a wire of its own to the battery; the body when nothing is told.
    pub wired_return: Option<bool>,
}

/// What is known of a battery.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BatteryWish {
    /// What it is made of.
    pub chemistry: Option<Chemistry>,
    /// Charge it holds.
    pub capacity: Option<AmpHours>,
    /// Cold-cranking current.
    pub cranking: Option<Amps>,
}

/// A second battery, or several alike side by side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SecondWish {
    /// How many there are.
    pub count: u8,
    /// What is known of it.
    pub battery: BatteryWish,
    /// Where it stands; in the load area when nothing is told.
    pub at: Option<BatteryPlace>,
    /// What parts it from the starter battery.
    pub isolator: Option<IsolatorKind>,
    /// A charger from battery to battery in place of that.
    pub charger: Option<ChargerWish>,
}

impl Default for SecondWish {
    fn default() -> Self {
        Self {
            count: 1,
            battery: BatteryWish::default(),
            at: None,
            isolator: None,
            charger: None,
        }
    }
}

/// A charger from battery to battery.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ChargerWish {
    /// Most current it gives.
    pub current: Option<Amps>,
}

/// The head unit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HeadWish {
    /// The vehicle maker's own: no line outputs and no turn-on output.
    pub factory: bool,
    /// Pairs of line outputs: front, rear, and the bass as third.
    pub line_pairs: Option<u8>,
    /// Its own speaker outputs.
    pub speaker_outputs: Option<u8>,
    /// Power of each of them.
    pub power: Option<Watts>,
}

impl HeadWish {
    /// Whether anything of a head unit was told.
    #[must_use]
    pub fn is_told(&self) -> bool {
        *self != Self::default()
    }
}

/// A signal processor.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ProcessorWish {
    /// Line outputs.
    pub outputs: Option<u8>,
}

/// Power that is stated, and the load it is stated at; 4 Ω when that was not told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PowerAt {
    /// Continuous power of one channel, or of a bridged pair.
    pub power: Watts,
    /// The load.
    pub load: Option<Ohms>,
}

/// Channels of an amplifier that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct ChannelsWish {
    /// How many.
    pub count: u8,
    /// Power stated at each load.
    pub power: Vec<PowerAt>,
    /// Least load of one channel; the least that power is stated at when not told.
    pub minimum: Option<Ohms>,
    /// Power of two channels bridged; empty where that is not told.
    pub bridged: Vec<PowerAt>,
    /// Least load of a bridged pair.
    pub bridged_minimum: Option<Ohms>,
}

impl ChannelsWish {
    /// So many channels of which no more is known.
    #[must_use]
    pub fn new(count: u8) -> Self {
        Self {
            count,
            power: Vec::new(),
            minimum: None,
            bridged: Vec::new(),
            bridged_minimum: None,
        }
    }
}

/// An amplifier.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AmplifierWish {
    /// Its channels.
    pub channels: Vec<ChannelsWish>,
    /// Class of its output stage.
    pub class: Option<AmplifierClass>,
}

impl AmplifierWish {
    /// Number of all its channels.
    #[must_use]
    pub fn count(&self) -> u8 {
        self.channels
            .iter()
            .fold(0_u8, |sum, it| sum.saturating_add(it.count))
    }
}

/// What speakers play, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Where {
    /// In front, left and right.
    Front,
    /// Behind, left and right.
    Rear,
    /// In the middle in front.
    Centre,
    /// The bass.
    Bass,
}

impl Where {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Front, Self::Rear, Self::Centre, Self::Bass];
    /// Whether it has a left and a right side.
    #[must_use]
    pub fn is_stereo(self) -> bool {
        matches!(self, Self::Front | Self::Rear)
    }
}

/// Speakers that are alike and play the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeakersWish {
    /// Where.
    pub at: Where,
    /// How many, left and right together. A woofer with its tweeter counts once.
    pub count: Option<u8>,
    /// Into how many parts the sound is divided: 1 is a full-range speaker, 2 woofer and tweeter, 3 a midrange besides.
    pub ways: u8,
    /// Each driver has an output of its own rather than a passive crossover; of the bass: its amplifier is built in.
    pub active: bool,
    /// On bridged channels, of the bass and the centre.
    pub bridged: bool,
    /// Rated impedance of one voice coil.
    pub impedance: Option<Ohms>,
    /// Voice coils of each.
    pub coils: Option<u8>,
    /// Power that each bears for long.
    pub power: Option<Watts>,
}

impl SpeakersWish {
    /// Speakers there of which no more is known.
    #[must_use]
    pub fn new(at: Where) -> Self {
        Self {
            at,
            count: None,
            ways: 1,
            active: false,
            bridged: false,
            impedance: None,
            coils: None,
            power: None,
        }
    }
}

/// What an extra load is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoadKind {
    /// Lights.
    Lights,
    /// A two-way radio.
    TwoWayRadio,
    /// An inverter.
    Inverter,
    /// A cool box.
    CoolBox,
    /// A water pump.
    Pump,
    /// A heater.
    Heater,
    /// A dashboard camera.
    Camera,
    /// Sockets to charge from.
    Socket,
    /// A winch.
    Winch,
    /// Something else.
    Other,
}

impl LoadKind {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Lights,
        Self::TwoWayRadio,
        Self::Inverter,
        Self::CoolBox,
        Self::Pump,
        Self::Heater,
        Self::Camera,
        Self::Socket,
        Self::Winch,
        Self::Other,
    ];
    /// What such a thing usually draws (common practice; each differs).
    #[must_use]
    pub fn usual(self) -> Watts {
        Watts(match self {
            Self::Lights => 40.0,
            Self::TwoWayRadio => 80.0,
            Self::Inverter => 500.0,
            Self::CoolBox => 50.0,
            Self::Pump => 60.0,
            Self::Heater => 40.0,
            Self::Camera => 10.0,
            Self::Socket => 60.0,
            // A small one at most of its pull (from memory); large ones draw four times that.
            Self::Winch => 1200.0,
            Self::Other => 60.0,
        })
    }
    /// Whether it stands at the dashboard rather than in the load area.
    #[must_use]
    pub fn is_in_front(self) -> bool {
        matches!(self, Self::TwoWayRadio | Self::Camera | Self::Socket)
    }
}

/// An extra load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadWish {
    /// What it is.
    pub kind: LoadKind,
    /// Power it draws.
    pub power: Option<Watts>,
    /// Current it draws, where that was told instead.
    pub current: Option<Amps>,
}

impl Wish {
    /// Whether nothing was told that could be drawn.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        !self.has_sound() && self.second.is_none() && self.loads.is_empty()
    }
    /// Whether there is sound.
    #[must_use]
    pub fn has_sound(&self) -> bool {
        self.head.is_told()
            || self.processor.is_some()
            || !self.amplifiers.is_empty()
            || !self.speakers.is_empty()
    }
    /// The speakers at a place.
    #[must_use]
    pub fn speakers_at(&self, at: Where) -> Option<&SpeakersWish> {
        self.speakers.iter().find(|it| it.at == at)
    }
}
