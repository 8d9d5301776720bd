//! Fuses and breakers: families, ratings, operating times, breaking capacity, resistance, colours.
//!
//! Operating times and cold resistances are remembered, not read: default data that a user may replace, never a hard
//! pass or fail. The times are a band between published limits, wide by nature; see [`operating_time`].

use crate::interpolate::log_log;
use crate::{Source, Typical};
use model::kinds::supply::{FuseForm, Thread};
use model::quantity::{Amps, Ohms, Seconds, Volts};

/// How a fuse is built.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FuseFamily {
    /// Small blade, ISO 8820-3 type F.
    Mini,
    /// Regular blade, ISO 8820-3 type C.
    Regular,
    /// Two-bladed micro.
    Micro2,
    /// Three-bladed micro, two fuses in one body.
    Micro3,
    /// Large blade, ISO 8820-3 type E.
    Maxi,
    /// Bolt-in strip with holes 30 mm apart, ISO 8820-5 SF30.
    Strip30,
    /// Bolt-in strip with holes 51 mm apart, ISO 8820-5 SF51.
    Strip51,
    /// Bolt-in strip of about 61 mm, the usual main fuse of audio systems.
    Strip61,
    /// Glass tube.
    Glass,
}

impl FuseFamily {
    /// All families.
    pub const ALL: &'static [Self] = &[
        Self::Mini,
        Self::Regular,
        Self::Micro2,
        Self::Micro3,
        Self::Maxi,
        Self::Strip30,
        Self::Strip51,
        Self::Strip61,
        Self::Glass,
    ];
}

impl From<FuseForm> for FuseFamily {
    fn from(form: FuseForm) -> Self {
        match form {
            FuseForm::Mini => Self::Mini,
            FuseForm::Regular => Self::Regular,
            FuseForm::Maxi => Self::Maxi,
            FuseForm::Strip30 => Self::Strip30,
            FuseForm::Strip51 => Self::Strip51,
            FuseForm::Strip61 => Self::Strip61,
            FuseForm::Glass => Self::Glass,
        }
    }
}

/// Thread of the studs that a bolt-in fuse sits on; `None` for fuses that are plugged in.
///
/// Source: ISO 8820-5, M5 for SF30 and M8 for SF51; M8 for the strip of about 61 mm is common practice. All from memory.
#[must_use]
pub const fn stud(form: FuseForm) -> Option<Thread> {
    match form {
        FuseForm::Strip30 => Some(Thread::M5),
        FuseForm::Strip51 | FuseForm::Strip61 => Some(Thread::M8),
        FuseForm::Mini | FuseForm::Regular | FuseForm::Maxi | FuseForm::Glass => None,
    }
}

/// One published gate: at this multiple of the rating the fuse opens no sooner than `least` and no later than `most`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gate {
    /// Current over rated current.
    pub multiple: f64,
    /// Soonest; `None` where nothing is published.
    pub least: Option<Seconds>,
    /// Latest; `None` where it need not open.
    pub most: Option<Seconds>,
}

pub(crate) const fn gate(multiple: f64, least: f64, most: Option<f64>) -> Gate {
    Gate {
        multiple,
        least: Some(Seconds(least)),
        most: match most {
            Some(seconds) => Some(Seconds(seconds)),
            None => None,
        },
    }
}

/// What is published about a family.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FamilyData {
    /// Ratings that can be bought, in A, rising.
    pub ratings: &'static [f64],
    /// Where the ratings come from.
    pub ratings_source: Source,
    /// Voltage it is made for.
    pub rated_voltage: Volts,
    /// Most current it can break; `None` where no figure could be found, so that a check stays undecided.
    pub breaking_capacity: Option<Amps>,
    /// Where the breaking capacity comes from.
    pub breaking_source: Source,
    /// Operating times, by rising multiple.
    pub gates: &'static [Gate],
    /// Where the gates come from.
    pub gates_source: Source,
    /// Typical cold resistance: rating in A and mΩ. Empty where only the rule of thumb holds.
    pub resistance: &'static [(f64, f64)],
}

const BLADE_GATES: &[Gate] = &[
    gate(1.1, 360_000.0, None),
    gate(1.35, 0.75, Some(1800.0)),
    gate(1.6, 0.25, Some(50.0)),
    gate(2.0, 0.15, Some(5.0)),
    gate(3.5, 0.04, Some(0.5)),
    gate(6.0, 0.02, Some(0.1)),
];
const MAXI_GATES: &[Gate] = &[
    gate(1.1, 360_000.0, None),
    gate(1.35, 60.0, Some(1800.0)),
    gate(2.0, 2.0, Some(60.0)),
    gate(3.5, 0.2, Some(7.0)),
    gate(6.0, 0.04, Some(1.0)),
];
const STRIP_30_GATES: &[Gate] = &[
    gate(1.0, 14_400.0, None),
    gate(1.5, 90.0, Some(3600.0)),
    gate(2.0, 3.0, Some(100.0)),
    gate(3.0, 0.3, Some(3.0)),
    gate(5.0, 0.1, Some(1.0)),
];
const STRIP_51_GATES: &[Gate] = &[
    gate(1.0, 14_400.0, None),
    gate(1.35, 120.0, Some(1800.0)),
    gate(2.0, 1.0, Some(15.0)),
    gate(3.5, 0.3, Some(5.0)),
    gate(6.0, 0.1, Some(1.0)),
];
const GLASS_GATES: &[Gate] = &[
    gate(1.1, 14_400.0, None),
    Gate {
        multiple: 1.35,
        least: None,
        most: Some(Seconds(3600.0)),
    },
    Gate {
        multiple: 2.0,
        least: None,
        most: Some(Seconds(10.0)),
    },
];

const SIZE_TABLE: Source = Source::read("size table of automotive fuses in a public encyclopedia");
const BLADE_BREAKING: Source =
    Source::read("ISO 8820-3:2015 scope: 32 V or 58 V, up to 100 A, 1000 A breaking capacity");
const BLADE_TIMES: Source = Source::memory("ISO 8820-3 operating-time table");
const STRIP_TIMES: Source = Source::memory("ISO 8820-5, typical published gates of the type; low confidence");

const REGULAR_RESISTANCE: &[(f64, f64)] = &[
    (5.0, 17.9),
    (10.0, 7.7),
    (15.0, 4.8),
    (20.0, 3.4),
    (25.0, 2.5),
    (30.0, 1.97),
];
const MAXI_RESISTANCE: &[(f64, f64)] = &[(30.0, 2.1), (40.0, 1.4), (60.0, 0.85), (80.0, 0.6)];
const STRIP_51_RESISTANCE: &[(f64, f64)] = &[(100.0, 0.6), (150.0, 0.4), (200.0, 0.28), (300.0, 0.18)];

const MINI: FamilyData = FamilyData {
    ratings: &[2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0],
    ratings_source: SIZE_TABLE,
    rated_voltage: Volts(32.0),
    breaking_capacity: Some(Amps(1000.0)),
    breaking_source: BLADE_BREAKING,
    gates: BLADE_GATES,
    gates_source: BLADE_TIMES,
    resistance: &[],
};
const REGULAR: FamilyData = FamilyData {
    ratings: &[
        0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0,
    ],
    resistance: REGULAR_RESISTANCE,
    ..MINI
};
const MICRO_2: FamilyData = FamilyData {
    ratings: &[5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0],
    breaking_source: Source::memory("taken as the other blades, ISO 8820-3"),
    gates_source: Source::memory("taken as ISO 8820-3 types C and F"),
    ..MINI
};
const MICRO_3: FamilyData = FamilyData {
    ratings: &[5.0, 7.5, 10.0, 15.0],
    ..MICRO_2
};
const MAXI: FamilyData = FamilyData {
    ratings: &[20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0],
    ratings_source: Source::memory("ISO 8820-3 type E; 20, 30, 40, 50, 60, 70 and 80 A were read"),
    gates: MAXI_GATES,
    resistance: MAXI_RESISTANCE,
    ..MINI
};
const STRIP_30: FamilyData = FamilyData {
    ratings: &[
        20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0,
    ],
    ratings_source: Source::memory("ISO 8820-5 and trade practice"),
    rated_voltage: Volts(32.0),
    breaking_capacity: Some(Amps(2000.0)),
    breaking_source: Source::memory("ISO 8820-5; 2 kA at 32 V is the usual published figure; low confidence"),
    gates: STRIP_30_GATES,
    gates_source: STRIP_TIMES,
    resistance: &[],
};
const STRIP_51: FamilyData = FamilyData {
    ratings: &[
        60.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 275.0, 300.0, 350.0, 400.0, 450.0, 500.0,
    ],
    gates: STRIP_51_GATES,
    resistance: STRIP_51_RESISTANCE,
    ..STRIP_30
};
const STRIP_61: FamilyData = FamilyData {
    ratings: &[
        35.0, 40.0, 50.0, 60.0, 80.0, 100.0, 130.0, 150.0, 175.0, 200.0, 225.0, 250.0, 275.0, 300.0, 325.0,
        350.0, 400.0, 500.0,
    ],
    ratings_source: Source::practice("main fuses of audio systems"),
    breaking_capacity: Some(Amps(6000.0)),
    breaking_source: Source::memory(
        "6 kA at 32 V is the usual published figure of bolt-in fuses of this size; low confidence",
    ),
    gates_source: Source::memory("taken as ISO 8820-5 SF51; low confidence"),
    ..STRIP_51
};
const GLASS: FamilyData = FamilyData {
    ratings: &[1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0],
    ratings_source: Source::memory("SAE J554 and trade practice"),
    rated_voltage: Volts(32.0),
    breaking_capacity: None,
    breaking_source: Source::practice(
        "no one figure holds for glass tubes: read it off the fuse or its data sheet",
    ),
    gates: GLASS_GATES,
    gates_source: Source::memory("SAE J554 / UL 275; low confidence"),
    resistance: &[],
};

/// What is published about a family.
#[must_use]
pub const fn family(family: FuseFamily) -> &'static FamilyData {
    match family {
        FuseFamily::Mini => &MINI,
        FuseFamily::Regular => &REGULAR,
        FuseFamily::Micro2 => &MICRO_2,
        FuseFamily::Micro3 => &MICRO_3,
        FuseFamily::Maxi => &MAXI,
        FuseFamily::Strip30 => &STRIP_30,
        FuseFamily::Strip51 => &STRIP_51,
        FuseFamily::Strip61 => &STRIP_61,
        FuseFamily::Glass => &GLASS,
    }
}

/// Time in which a fuse opens, as a band between its published limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeBand {
    /// No sooner than this; infinite where it must carry the current.
    pub fastest: Seconds,
    /// No later than this; infinite where it need not open.
    pub slowest: Seconds,
}

/// Band of operating times at a multiple of the rated current, straight on doubly logarithmic paper between gates.
///
/// Below the first gate a fuse never opens (both infinite). Between a gate without a latest time and the next one it
/// need not open. Beyond the last gate both edges keep I²t, as the element melts before heat can leave it. Glass tubes
/// have no published soonest times above 1.1; those of blades are taken there.
#[must_use]
pub fn operating_time(family: FuseFamily, multiple: f64) -> TimeBand {
    let gates = self::family(family).gates;
    let soonest = if family == FuseFamily::Glass {
        BLADE_GATES
    } else {
        gates
    };
    band(gates, soonest, multiple)
}

/// A time by which a fuse has opened for certain at a multiple of its rating, found without a curve: that of the gate below. Not
/// below [`operating_time`]'s slowest.
#[must_use]
pub fn opened_by(family: FuseFamily, multiple: f64) -> Seconds {
    latest(self::family(family).gates, multiple)
}

/// The same by gates.
pub(crate) fn latest(gates: &[Gate], multiple: f64) -> Seconds {
    let reached = gates.iter().rev().find(|gate| gate.multiple <= multiple);
    match reached.and_then(|gate| Some((gate.multiple, gate.most?.0))) {
        // Beyond the last gate I²t stays.
        Some((at, time)) if gates.last().is_some_and(|last| last.multiple == at) => {
            Seconds(time * (at / multiple) * (at / multiple))
        }
        Some((_, time)) => Seconds(time),
        None => Seconds(f64::INFINITY),
    }
}

/// The band between gates; soonest times may be those of other gates.
pub(crate) fn band(gates: &[Gate], soonest: &[Gate], multiple: f64) -> TimeBand {
    let never = Seconds(f64::INFINITY);
    let first = gates.first().map_or(f64::INFINITY, |gate| gate.multiple);
    if multiple.is_nan() || multiple < first {
        return TimeBand {
            fastest: never,
            slowest: never,
        };
    }
    let mut least = [(0.0, 0.0); 8];
    let mut most = [(0.0, 0.0); 8];
    let (mut least_count, mut most_count) = (0, 0);
    for (slot, gate) in least.iter_mut().zip(soonest) {
        *slot = (gate.multiple, gate.least.map_or(0.0, |time| time.0));
        least_count += 1;
    }
    for (slot, gate) in most
        .iter_mut()
        .zip(gates.iter().filter(|gate| gate.most.is_some()))
    {
        *slot = (gate.multiple, gate.most.map_or(0.0, |time| time.0));
        most_count += 1;
    }
    let at = |rows: &[(f64, f64)]| Seconds(log_log(rows, multiple, 0.0, -2.0));
    let most = most.get(..most_count).unwrap_or_default();
    let fastest = at(least.get(..least_count).unwrap_or_default());
    let slowest = if most.first().is_some_and(|row| multiple >= row.0) {
        at(most)
    } else {
        never
    };
    TimeBand {
        fastest: fastest.min(slowest),
        slowest,
    }
}

/// Least multiple of its rating at which a family has to open at all.
#[must_use]
pub fn must_open_at(family: FuseFamily) -> f64 {
    self::family(family)
        .gates
        .iter()
        .find(|gate| gate.most.is_some())
        .map_or(f64::INFINITY, |gate| gate.multiple)
}

/// Resistance of a cold fuse, without its holder, with the range it is met in.
///
/// From the typical rows of the family, straight on doubly logarithmic paper and in inverse proportion to the rating
/// beyond them; else 0.07 V over the rating. Expect 1.3 to 1.6 times as much hot, and 0.2 to 1 mΩ more for contacts.
/// A rating is taken within 0.1 and 1000 A.
#[must_use]
pub fn fuse_resistance(family: FuseFamily, rating: Amps) -> Typical<Ohms> {
    let rating = rating.0.clamp(0.1, 1000.0);
    let rows = self::family(family).resistance;
    let usual = if rows.is_empty() {
        0.07 / rating
    } else {
        log_log(rows, rating, -1.0, -1.0) * 1e-3
    };
    Typical {
        least: Ohms(usual.min(0.06 / rating)),
        usual: Ohms(usual),
        most: Ohms(usual.max(0.09 / rating)),
        source: Source::memory("typical component practice, no standard; low confidence"),
    }
}

/// Colour of a fuse body by its rating, where it is standardised: `None` for strips, glass and other ratings.
///
/// Source: Denton, Automobile Mechanical and Electrical Systems, table 3.2 (read) for 3 to 30 A; ISO 8820-3 for 2 and
/// 40 A (from memory); an overview of blade fuses for the large ones (read).
#[must_use]
pub fn body_colour(family: FuseFamily, rating: Amps) -> Option<&'static str> {
    const SMALL: &[(f64, &str)] = &[
        (2.0, "grey"),
        (3.0, "violet"),
        (4.0, "pink"),
        (5.0, "tan"),
        (7.5, "brown"),
        (10.0, "red"),
        (15.0, "blue"),
        (20.0, "yellow"),
        (25.0, "clear"),
        (30.0, "green"),
        (40.0, "orange"),
    ];
    const LARGE: &[(f64, &str)] = &[
        (20.0, "yellow"),
        (30.0, "green"),
        (40.0, "orange"),
        (50.0, "red"),
        (60.0, "blue"),
        (70.0, "tan"),
        (80.0, "clear"),
    ];
    let table = match family {
        FuseFamily::Mini | FuseFamily::Regular | FuseFamily::Micro2 | FuseFamily::Micro3 => SMALL,
        FuseFamily::Maxi => LARGE,
        FuseFamily::Strip30 | FuseFamily::Strip51 | FuseFamily::Strip61 | FuseFamily::Glass => return None,
    };
    table
        .iter()
        .find(|(amps, _)| (amps - rating.0).abs() < 0.01)
        .map(|(_, colour)| *colour)
}

/// Largest rating of a family that is not above a current.
#[must_use]
pub fn rating_not_above(family: FuseFamily, current: Amps) -> Option<Amps> {
    self::family(family)
        .ratings
        .iter()
        .rev()
        .find(|rating| **rating <= current.0)
        .map(|rating| Amps(*rating))
}

/// Smallest rating of a family that is not below a current.
#[must_use]
pub fn rating_not_below(family: FuseFamily, current: Amps) -> Option<Amps> {
    self::family(family)
        .ratings
        .iter()
        .find(|rating| **rating >= current.0)
        .map(|rating| Amps(*rating))
}

/// What breakers must interrupt behind batteries of a total cold-cranking current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InterruptRow {
    /// Most cold-cranking current that the row covers.
    pub cranking_up_to: Amps,
    /// Main breaker.
    pub main: Amps,
    /// Branch breaker.
    pub branch: Amps,
}

/// Where [`INTERRUPT`] comes from.
pub const INTERRUPT_SOURCE: Source =
    Source::memory("ABYC E-11, interrupting capacity of circuit breakers below 50 V, 12 V and 24 V systems");

/// Interrupt capacity of breakers by total cold-cranking current.
pub const INTERRUPT: &[InterruptRow] = &[
    InterruptRow {
        cranking_up_to: Amps(650.0),
        main: Amps(1500.0),
        branch: Amps(750.0),
    },
    InterruptRow {
        cranking_up_to: Amps(1100.0),
        main: Amps(3000.0),
        branch: Amps(1500.0),
    },
    InterruptRow {
        cranking_up_to: Amps(f64::MAX),
        main: Amps(5000.0),
        branch: Amps(2500.0),
    },
];

/// What a breaker must interrupt behind batteries of this total cold-cranking current.
#[must_use]
pub fn required_interrupt(cranking: Amps, main: bool) -> Amps {
    INTERRUPT
        .iter()
        .find(|row| cranking.0 <= row.cranking_up_to.0)
        .map_or(Amps(5000.0), |row| if main { row.main } else { row.branch })
}
