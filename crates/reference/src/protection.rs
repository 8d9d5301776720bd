//! The limits that checks hold things against, in two profiles: the trade's common practice, and published rules for
//! small craft. The second is stricter in some limits and looser in others.
//!
//! Shares are written as such: 0.03 is 3 %. Every key is in both profiles, so a check asks by key alone. The user may
//! set any limit otherwise; that is kept in the job. Local law and the vehicle's maker come first.

use crate::Source;
use model::job::Profile;

/// A limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Its name in files, in kebab-case.
    pub key: &'static str,
    /// What is limited, in words.
    pub title: &'static str,
    /// The figure.
    pub value: f64,
    /// Its unit; empty for a share, a factor or a count.
    pub unit: &'static str,
    /// Where it comes from.
    pub source: Source,
    /// A remark: the figure as published, exceptions, the range considered.
    pub note: &'static str,
}

/// All limits of a profile, in the order of the checks.
#[must_use]
pub fn limits(profile: Profile) -> &'static [Limit] {
    match profile {
        Profile::CommonPractice => &COMMON_PRACTICE,
        Profile::SmallCraft => &SMALL_CRAFT,
    }
}

/// A limit of a profile by its key.
#[must_use]
pub fn limit(profile: Profile, key: &str) -> Option<&'static Limit> {
    limits(profile).iter().find(|limit| limit.key == key)
}

/// A limit in both profiles.
struct Rule {
    key: &'static str,
    title: &'static str,
    unit: &'static str,
    common_practice: Figure,
    /// Where the rules for small craft have a figure of their own.
    small_craft: Option<Figure>,
}

struct Figure {
    value: f64,
    source: Source,
    note: &'static str,
}

const fn of_profile(profile: Profile) -> [Limit; RULES.len()] {
    let mut out = [Limit {
        key: "",
        title: "",
        value: 0.0,
        unit: "",
        source: Source::practice(""),
        note: "",
    }; RULES.len()];
    let mut at = 0;
    while at < RULES.len() {
        let rule = &RULES[at];
        let figure = match (profile, &rule.small_craft) {
            (Profile::SmallCraft, Some(own)) => own,
            _ => &rule.common_practice,
        };
        out[at] = Limit {
            key: rule.key,
            title: rule.title,
            value: figure.value,
            unit: rule.unit,
            source: figure.source,
            note: figure.note,
        };
        at += 1;
    }
    out
}

static COMMON_PRACTICE: [Limit; RULES.len()] = of_profile(Profile::CommonPractice);
static SMALL_CRAFT: [Limit; RULES.len()] = of_profile(Profile::SmallCraft);

const RULES: &[Rule] = &[
    Rule {
        key: "fuse-reach",
        title: "unprotected length from a source",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "18 in along the wire; NEC 551.10(E) has the same number (from memory)",
        },
        small_craft: Some(Figure {
            value: 0.178,
            source: Source::read("33 CFR 183.455"),
            note: "7 in; at the source itself where practical",
        }),
    },
    Rule {
        key: "fuse-reach-sheathed",
        title: "the same, in a sheath or enclosure all the way",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "a sheath earns nothing here",
        },
        small_craft: Some(Figure {
            value: 1.016,
            source: Source::read("33 CFR 183.455"),
            note: "40 in",
        }),
    },
    Rule {
        key: "fuse-reach-sheathed-battery",
        title: "the same, sheathed and straight from a battery terminal",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "a sheath earns nothing here",
        },
        small_craft: Some(Figure {
            value: 1.829,
            source: Source::read("ABYC E-11, as summarised; 33 CFR 183.460"),
            note: "72 in; take the stricter where the sheath is in doubt",
        }),
    },
    Rule {
        key: "charger-reach",
        title: "unprotected length from an alternator or charger",
        unit: "m",
        common_practice: Figure {
            value: 1.8,
            source: Source::read("ISO 13297:2020 clause 12.3"),
            note: "unless the source limits its own current",
        },
        small_craft: None,
    },
    Rule {
        key: "fuse-wire-factor",
        title: "device rating over allowable current of what it guards",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::read("ISO 13297:2020 clause 13.1.5"),
            note: "strict form",
        },
        small_craft: Some(Figure {
            value: 1.5,
            source: Source::read("33 CFR 183.455(c)(1)"),
            note: "150 % of the table below 50 V",
        }),
    },
    Rule {
        key: "continuous-load-share",
        title: "lasting current over device rating",
        unit: "",
        common_practice: Figure {
            value: 0.8,
            source: Source::memory("NFPA 70 210.20 and component practice"),
            note: "the inverse of 125 %",
        },
        small_craft: None,
    },
    Rule {
        key: "breaking-share",
        title: "prospective current over breaking capacity",
        unit: "",
        common_practice: Figure {
            value: 2.0,
            source: Source::practice("judgement of this project"),
            note: "capacities are published at 32 V or more; at 12 V an arc goes out sooner; range considered: 1 to 2.5",
        },
        small_craft: Some(Figure {
            value: 1.0,
            source: Source::read("ISO 8820-3:2015 scope"),
            note: "a device is not asked to break more than it is made for",
        }),
    },
    Rule {
        key: "clearing-time-ratio",
        title: "time to wire damage over time of the device",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::memory("IEC 60364-4-43 434.5.2"),
            note: "the device opens before the wire is damaged",
        },
        small_craft: None,
    },
    Rule {
        key: "short-clearing-multiple",
        title: "short-circuit current over rating of the device",
        unit: "",
        common_practice: Figure {
            value: 2.0,
            source: Source::memory("ISO 8820-3: at 200 % every family has to open, within 5 to 100 s"),
            note: "below this a short may go on for long",
        },
        small_craft: None,
    },
    Rule {
        key: "parallel-imbalance",
        title: "excess of one parallel conductor over its equal share",
        unit: "",
        common_practice: Figure {
            value: 0.25,
            source: Source::practice("judgement of this project"),
            note: "range considered: 0.1 to 0.5",
        },
        small_craft: None,
    },
    Rule {
        key: "ampacity-factor",
        title: "steady current over allowable current",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::read("33 CFR 183.425"),
            note: "the table as it stands",
        },
        small_craft: None,
    },
    Rule {
        key: "drop-amplifier",
        title: "drop of an amplifier feed and return together",
        unit: "V",
        common_practice: Figure {
            value: 0.5,
            source: Source::practice("common practice of vehicle audio"),
            note: "about 3.5 % of 14.4 V; some aim for 0.3 V",
        },
        small_craft: Some(Figure {
            value: 1.2,
            source: Source::read("ABYC E-11 11.14.2.6"),
            note: "10 % of 12 V: not a critical circuit",
        }),
    },
    Rule {
        key: "drop-critical",
        title: "drop of a critical circuit, of nominal voltage",
        unit: "",
        common_practice: Figure {
            value: 0.03,
            source: Source::read("ABYC E-11 11.14.2.6"),
            note: "panel feeders, electronics, lights",
        },
        small_craft: None,
    },
    Rule {
        key: "drop-other",
        title: "drop of any other circuit, of nominal voltage",
        unit: "",
        common_practice: Figure {
            value: 0.05,
            source: Source::memory("IEC 60364-5-52 Annex G"),
            note: "other uses",
        },
        small_craft: Some(Figure {
            value: 0.1,
            source: Source::read("ABYC E-11 11.14.2.6"),
            note: "not critical",
        }),
    },
    Rule {
        key: "nominal-voltage",
        title: "voltage that a drop in per cent refers to",
        unit: "V",
        common_practice: Figure {
            value: 12.0,
            source: Source::read("ABYC E-11 11.14.2.6"),
            note: "12 V systems",
        },
        small_craft: None,
    },
    Rule {
        key: "cut-off-margin",
        title: "supply of an amplifier above its cut-off",
        unit: "V",
        common_practice: Figure {
            value: 0.0,
            source: Source::practice("judgement of this project"),
            note: "range considered: 0 to 1 V",
        },
        small_craft: None,
    },
    Rule {
        key: "delivered-share",
        title: "share of the asked power that the network delivers",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::practice("judgement of this project"),
            note: "all of it",
        },
        small_craft: None,
    },
    Rule {
        key: "joint-power",
        title: "power lost in one ending",
        unit: "W",
        common_practice: Figure {
            value: 2.0,
            source: Source::practice("judgement of this project"),
            note: "warm to the touch; range considered: 1 to 5 W",
        },
        small_craft: None,
    },
    Rule {
        key: "joint-power-melt",
        title: "power lost in one ending at which plastic can melt",
        unit: "W",
        common_practice: Figure {
            value: 10.0,
            source: Source::practice("judgement of this project"),
            note: "range considered: 5 to 20 W",
        },
        small_craft: None,
    },
    Rule {
        key: "terminal-conductors",
        title: "conductors under one screw or in one hole",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::practice("common practice of vehicle audio"),
            note: "two only in a twin ferrule",
        },
        small_craft: None,
    },
    Rule {
        key: "stud-conductors",
        title: "ring terminals on one stud",
        unit: "",
        common_practice: Figure {
            value: 4.0,
            source: Source::read("ABYC E-11, as summarised"),
            note: "largest first",
        },
        small_craft: None,
    },
    Rule {
        key: "ground-lead-length",
        title: "length of an amplifier ground lead",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "same size as the feed, to bare body metal",
        },
        small_craft: Some(Figure {
            value: 1.829,
            source: Source::practice("judgement of this project"),
            note: "no body return in a boat: only the lead to a ground bus is meant",
        }),
    },
    Rule {
        key: "ground-lead-resistance",
        title: "resistance of a ground lead with its endings and contact",
        unit: "Ω",
        common_practice: Figure {
            value: 0.005,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 2 to 10 milliohm",
        },
        small_craft: None,
    },
    Rule {
        key: "return-resistance",
        title: "resistance of the whole return to a source",
        unit: "Ω",
        common_practice: Figure {
            value: 0.01,
            source: Source::practice("common practice of vehicle audio"),
            note: "body sheet adds 0.5 to 3 milliohm; range considered: 5 to 20 milliohm",
        },
        small_craft: None,
    },
    Rule {
        key: "return-over-feed",
        title: "conductance of the ground lead over that of the feed, per metre",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::read("NFPA 70 552.10(C)"),
            note: "not smaller than the ungrounded battery lead",
        },
        small_craft: None,
    },
    Rule {
        key: "ground-offset",
        title: "difference between the grounds of equipment joined by signal leads",
        unit: "V",
        common_practice: Figure {
            value: 0.1,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 0.05 to 0.25 V",
        },
        small_craft: None,
    },
    Rule {
        key: "shield-current",
        title: "current through a signal shield",
        unit: "A",
        common_practice: Figure {
            value: 0.1,
            source: Source::practice("common practice of vehicle audio"),
            note: "thin braid; range considered: 0.05 to 0.5 A",
        },
        small_craft: None,
    },
    Rule {
        key: "load-over-minimum",
        title: "nominal load over the stated minimum",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::memory("amplifier makers' statements"),
            note: "nominal impedance only",
        },
        small_craft: None,
    },
    Rule {
        key: "impedance-floor",
        title: "least impedance over the band over the stated minimum",
        unit: "",
        common_practice: Figure {
            value: 0.8,
            source: Source::memory("IEC 60268-5 clause 16.1"),
            note: "the margin of rated impedance itself",
        },
        small_craft: None,
    },
    Rule {
        key: "speaker-power-factor",
        title: "amplifier power into the actual load over speaker rating",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::practice("common practice of vehicle audio"),
            note: "continuous against continuous",
        },
        small_craft: None,
    },
    Rule {
        key: "high-pass-floor",
        title: "least corner frequency of the high-pass of a small driver",
        unit: "Hz",
        common_practice: Figure {
            value: 50.0,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 40 to 100 Hz",
        },
        small_craft: None,
    },
    Rule {
        key: "coil-imbalance",
        title: "excess of one coil of a driver over its equal share of power",
        unit: "",
        common_practice: Figure {
            value: 0.1,
            source: Source::practice("judgement of this project"),
            note: "range considered: 0.05 to 0.25",
        },
        small_craft: None,
    },
    Rule {
        key: "lead-loss",
        title: "loss in a speaker lead",
        unit: "dB",
        common_practice: Figure {
            value: 0.5,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 0.3 to 1 dB",
        },
        small_craft: None,
    },
    Rule {
        key: "turn-on-current",
        title: "current of a turn-on output when none is stated",
        unit: "A",
        common_practice: Figure {
            value: 0.3,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 0.1 to 0.5 A",
        },
        small_craft: None,
    },
    Rule {
        key: "signal-beside-feed-length",
        title: "length of a signal lead beside a feed",
        unit: "m",
        common_practice: Figure {
            value: 1.0,
            source: Source::practice("common practice of vehicle audio"),
            note: "crossing at a right angle does not count",
        },
        small_craft: None,
    },
    Rule {
        key: "signal-feed-distance",
        title: "distance within which a signal lead counts as beside a feed",
        unit: "m",
        common_practice: Figure {
            value: 0.1,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 0.05 to 0.3 m",
        },
        small_craft: None,
    },
    Rule {
        key: "signal-scatter",
        title: "distance between signal leads of one amplifier",
        unit: "m",
        common_practice: Figure {
            value: 0.3,
            source: Source::practice("common practice of vehicle audio"),
            note: "they form a loop that picks up noise",
        },
        small_craft: None,
    },
    Rule {
        key: "support-spacing",
        title: "distance between supports",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "as ISO 10133:2012 clause 7.3 (read)",
        },
        small_craft: Some(Figure {
            value: 0.45,
            source: Source::read("ISO 10133:2012 clause 7"),
            note: "clause 7.3; ABYC E-11 457 mm (from memory)",
        }),
    },
    Rule {
        key: "support-spacing-battery",
        title: "distance between supports of a battery conductor",
        unit: "m",
        common_practice: Figure {
            value: 0.45,
            source: Source::practice("common practice of vehicle audio"),
            note: "as any other",
        },
        small_craft: Some(Figure {
            value: 0.3,
            source: Source::read("ISO 10133:2012 clause 7"),
            note: "clause 7.4; first support within 1 m of the terminal",
        }),
    },
    Rule {
        key: "insulation-margin",
        title: "rating of the insulation above the hottest place on the way",
        unit: "K",
        common_practice: Figure {
            value: 0.0,
            source: Source::practice("judgement of this project"),
            note: "the current that is left follows from the ambient factor",
        },
        small_craft: None,
    },
    Rule {
        key: "least-conductor",
        title: "smallest single conductor of a supply",
        unit: "mm²",
        common_practice: Figure {
            value: 0.5,
            source: Source::practice("common practice of vehicle audio"),
            note: "mechanical strength",
        },
        small_craft: Some(Figure {
            value: 1.0,
            source: Source::read("ISO 10133:2012 clause 7"),
            note: "clause 7.7, single conductors longer than 200 mm",
        }),
    },
    Rule {
        key: "size-share",
        title: "true cross-section or conductance over what the jacket says",
        unit: "",
        common_practice: Figure {
            value: 0.85,
            source: Source::practice("judgement of this project"),
            note: "SAE J1127 and J1128 allow up to 11 % less than the gauge number (from memory); a calliper and a meter err by a few per cent",
        },
        small_craft: None,
    },
    Rule {
        key: "alternator-share",
        title: "average draw over alternator output, hot, at this speed",
        unit: "",
        common_practice: Figure {
            value: 1.0,
            source: Source::practice("common practice of vehicle audio"),
            note: "the battery is not to make up the rest for long",
        },
        small_craft: None,
    },
    Rule {
        key: "start-reserve",
        title: "charge that is left after parking",
        unit: "",
        common_practice: Figure {
            value: 0.5,
            source: Source::practice("common practice of vehicle audio"),
            note: "range considered: 0.4 to 0.7",
        },
        small_craft: None,
    },
];
