//! What four runs through time say together: what is certain, what is possible, and when.

use super::base::Base;
use super::scenario::{Happening, Moment, Scenario};
use crate::study::DeviceRef;
use model::RunId;
use model::quantity::{Amps, Celsius, Seconds};
use ordered::{OrderedMap, Sort as _};
use serde::Serialize;

/// Whether something happens, whatever the edge of the operating times and the strength of the sources.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Certainty {
    /// In no case.
    #[default]
    No,
    /// In some.
    Possible,
    /// In all.
    Certain,
}

impl Certainty {
    pub(super) fn of(times: usize, all: usize) -> Self {
        match times {
            0 => Self::No,
            many if many == all => Self::Certain,
            _ => Self::Possible,
        }
    }
}

/// From the least to the most.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Within<Q> {
    /// The least.
    pub least: Q,
    /// The most.
    pub most: Q,
}

impl Within<Seconds> {
    fn over(all: impl Iterator<Item = f64>) -> Option<Self> {
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for it in all {
            (least, most) = (least.min(it), most.max(it));
        }
        (least <= most).then_some(Self {
            least: Seconds(least),
            most: Seconds(most),
        })
    }
}

/// Something that happens, over all cases.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Event {
    /// What.
    pub happening: Happening,
    /// Whether it does in every case.
    pub certainty: Certainty,
    /// When it first does, in the cases in which it does.
    pub time: Within<Seconds>,
    /// How often it does at most: a breaker that closes by itself does so again and again.
    pub times: usize,
}

/// What becomes of a short.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// There is no short, or nothing flows through it.
    NothingToClear,
    /// It ends before any wire is damaged, in every case.
    Clears {
        /// When.
        time: Within<Seconds>,
        /// How many times as long the wires would have lasted, in the worst case; infinite where they would have for ever.
        margin: f64,
    },
    /// A wire is damaged first.
    WireFirst {
        /// In every case, or in some.
        certainty: Certainty,
        /// Which one, first of all.
        run: RunId,
        /// When.
        time: Within<Seconds>,
    },
    /// It never ends, and no wire is damaged by it.
    NeverClears {
        /// In every case, or in some.
        certainty: Certainty,
        /// What goes on flowing, at most.
        current: Amps,
    },
    /// The reckoning could not be brought to its end.
    NotKnown,
}

/// What becomes of a run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RunCourse {
    /// Hottest it becomes, at most.
    pub hottest: Celsius,
    /// Temperature around it.
    pub ambient: Celsius,
    /// What its insulation bears for a short time.
    pub limit: Celsius,
    /// Whether it is damaged.
    pub damaged: Certainty,
}

/// I²t that a device lets through, in A²s.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LetThrough {
    /// The device.
    pub device: DeviceRef,
    /// From the least to the most, in A²s.
    pub squared: Within<f64>,
}

/// The time course of breaks.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Course {
    /// What happens, in the order of the soonest.
    pub events: Vec<Event>,
    /// What becomes of the short.
    pub outcome: Outcome,
    /// Current through the short at first, from the least to the most.
    pub fault: Option<Within<Amps>>,
    /// Heat made by it in all, at most, in joules.
    pub heat: f64,
    /// What becomes of each run of the sheet.
    pub runs: OrderedMap<RunId, RunCourse>,
    /// What each device that opens lets through.
    pub let_through: Vec<LetThrough>,
    /// The four cases: sources strongest and devices slowest, strongest and fastest, weakest and slowest, weakest and fastest.
    pub scenarios: Vec<Scenario>,
}

/// Puts the cases together. `told` is the sheet that was asked about; what a break has added to it is not told of.
pub(super) fn course(base: &Base, told: &Base, is_short: bool, scenarios: Vec<Scenario>) -> Course {
    let all = scenarios.len();
    let runs = base
        .net
        .runs
        .iter()
        .enumerate()
        .filter(|(_, run)| told.sheet.runs.contains_key(&run.id))
        .map(|(at, run)| {
            let damaged = scenarios.iter().filter(|it| {
                it.moments
                    .iter()
                    .any(|moment| moment.happening == Happening::Damaged(run.id))
            });
            let hottest = scenarios.iter().filter_map(|it| it.hottest.get(at));
            let it = RunCourse {
                hottest: hottest.fold(Celsius(f64::NEG_INFINITY), |most, it| most.max(*it)),
                ambient: base.heats.get(at).map_or(Celsius(40.0), |heat| heat.ambient()),
                limit: base.heats.get(at).map_or(Celsius(160.0), |heat| heat.limit),
                damaged: Certainty::of(damaged.count(), all),
            };
            (run.id, it)
        })
        .collect();
    let let_through = base
        .net
        .devices
        .iter()
        .enumerate()
        .filter_map(|(at, device)| {
            let opens = |it: &&Scenario| {
                let opens = Happening::Opens(device.name.clone());
                it.moments.iter().any(|moment| moment.happening == opens)
            };
            let squared = scenarios
                .iter()
                .filter(opens)
                .filter_map(|it| it.let_through.get(at).copied());
            let within = Within::<Seconds>::over(squared)?;
            Some(LetThrough {
                device: device.name.clone(),
                squared: Within {
                    least: within.least.0,
                    most: within.most.0,
                },
            })
        })
        .collect();
    let first = |least: bool| {
        scenarios
            .iter()
            .map(|it| it.fault[0].0)
            .reduce(|a, b| if least { a.min(b) } else { a.max(b) })
    };
    let fault = match (first(true), first(false)) {
        (Some(least), Some(most)) if most > 0.0 => Some(Within {
            least: Amps(least),
            most: Amps(most),
        }),
        _ => None,
    };
    Course {
        events: events(&scenarios),
        outcome: outcome(is_short, &scenarios),
        fault,
        heat: scenarios.iter().map(|it| it.heat).fold(0.0, f64::max),
        runs,
        let_through,
        scenarios,
    }
}

fn events(scenarios: &[Scenario]) -> Vec<Event> {
    let mut seen: OrderedMap<Happening, Vec<(f64, usize)>> = OrderedMap::new();
    for (case, scenario) in scenarios.iter().enumerate() {
        for Moment { time, happening } in &scenario.moments {
            let times = seen.entry(happening.clone()).or_default();
            times.push((time.0, case));
        }
    }
    let mut events: Vec<Event> = seen
        .into_iter()
        .filter_map(|(happening, times)| {
            let firsts = (0..scenarios.len())
                .filter_map(|case| times.iter().find(|(_, its)| *its == case).map(|(time, _)| *time));
            let cases = firsts.clone().count();
            let most = (0..scenarios.len()).map(|case| times.iter().filter(|(_, its)| *its == case).count());
            Some(Event {
                happening,
                certainty: Certainty::of(cases, scenarios.len()),
                time: Within::<Seconds>::over(firsts)?,
                times: most.max().unwrap_or(0),
            })
        })
        .collect();
    events.order_by(|a, b| {
        let by_first = a.time.least.0.total_cmp(&b.time.least.0);
        by_first
            .then(a.time.most.0.total_cmp(&b.time.most.0))
            .then_with(|| a.happening.cmp(&b.happening))
    });
    events
}

fn outcome(is_short: bool, scenarios: &[Scenario]) -> Outcome {
    let all = scenarios.len();
    // Where nothing flows at first, in no case, or between leads of one pole, there is nothing to clear.
    if !is_short || scenarios.iter().all(|it| it.fault[0].0 < 0.1) {
        return Outcome::NothingToClear;
    }
    let damage = |it: &Scenario| {
        it.moments.iter().find_map(|moment| match moment.happening {
            Happening::Damaged(run) => Some((moment.time.0, run)),
            _ => None,
        })
    };
    let damaged: Vec<(f64, RunId)> = scenarios.iter().filter_map(damage).collect();
    if let (Some(first), Some(time)) = (
        damaged
            .iter()
            .copied()
            .reduce(|a, b| if b.0 < a.0 { b } else { a }),
        Within::<Seconds>::over(damaged.iter().map(|it| it.0)),
    ) {
        return Outcome::WireFirst {
            certainty: Certainty::of(damaged.len(), all),
            run: first.1,
            time,
        };
    }
    if scenarios.iter().any(|it| !it.settled && it.cleared.is_none()) {
        return Outcome::NotKnown;
    }
    let cleared = scenarios.iter().filter_map(|it| it.cleared.map(|time| time.0));
    let count = cleared.clone().count();
    match Within::<Seconds>::over(cleared) {
        Some(time) if count == all => Outcome::Clears {
            time,
            margin: scenarios.iter().map(|it| it.margin).fold(f64::INFINITY, f64::min),
        },
        _ => Outcome::NeverClears {
            certainty: Certainty::of(all - count, all),
            current: scenarios
                .iter()
                .filter(|it| it.cleared.is_none())
                .map(|it| it.fault[1])
                .fold(Amps(0.0), Amps::max),
        },
    }
}
