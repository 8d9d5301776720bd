//! Sizes for all runs and ratings for all fuses: the least metal, or the least cost, with which every check holds.
//!
//! # The problem
//!
//! For every run that may be laid anew a size of the series that can be bought, for every fuse, breaker and fused output that may
//! be changed a rating of its form, so that the metal Σ length · area (or the cost by a price list) is least and, at every
//! operating point that is judged:
//!
//! 1. *Heat*: the steady current (RMS over the thermal time) of a run is no more than it bears where it lies.
//! 2. *Fuse over load*: the steady current of a device is no more than the profile's share of its rating, and bursts do not open it. No
//!    rating is larger than the one that is there, unless the loads need it: a larger fuse resists less and would save metal, but nobody
//!    fits one for that.
//! 3. *Fuse over wire*: what a device guards bears its rating. So does what lies in line with it, before it or behind, there and
//!    back (it carries the current of the very same loads); and what lies in line with none and is guarded by none, as the
//!    return of several, bears the rating of the device nearest to each of its loads. What a fuse lets through for ever flows through all of these (common practice; the
//!    checks themselves ask it of what lies behind the device alone).
//! 4. *Drop*: what is lost from the source to a load and back at burst is within the limit of that load.
//! 5. *Ground rule*: the ground leads of an amplifier conduct at least as well as its feeds.
//! 6. *Terminals* take the size. *Endings* stay cool. An amplifier's *ground lead* resists no more than the profile allows. No supply conductor is thinner than the least that the profile allows.
//! 7. *Leads of speakers*: level lost, and the current of full power, before all else: each loop of one voice coil by itself (`speakers`), what
//!    several coils share together (`loops`). *Leads that turn others on* bear what guards them. Signal leads have no size to choose.
//! 8. Every check of [`checks::CHECKS`] that a size or a rating decides says nothing that it does not also say of the thickest
//!    that can be laid.
//!
//! What is locked, what stays by its fate, and what the vehicle's maker fitted keeps its size or rating and counts in all of this.
//! A new wire is of copper, tinned where the old one was; its insulation, length and way stay.
//!
//! # What is proved
//!
//! Currents depend on sizes, since loads of constant power draw more at a lower voltage. At given currents the problem is one of
//! integers, and on a forest (`shape` tells when it is one) a walk from the leaves to the roots gives its best answer (`program`). Around it:
//!
//! - *An answer that holds*: currents of the last answer give the next one, until the engine and all checks find nothing wrong with
//!   it; what they find is ruled out, and the walk is made again. Where that leads to nothing, and from the first answer on where the
//!   network is meshed, what is wrong is mended by what each size does to each drop, to first order (`slopes`): what gains most for its
//!   cost first, and nothing else is touched. What was raised too far for a check is lowered again; then all is laid as thin as holds, and
//!   one thicker run is exchanged for thinner ones, as long as that costs less.
//! - *A bound*: no current is less than with the thickest wires that are still in question (constant-power loads; for loads that
//!   draw by resistance the drop they may have at the most is taken off what they draw), so the best answer at *those* currents costs no more than
//!   the best one that holds. What would cost more than the answer at hand is no longer in question, which tightens the bound.
//! - Where bound and answer differ, what lies between is looked at one after the other, the cheapest first, each by the engine
//!   and all checks: the first that holds is the best one. It is taken that thicker wire never makes wrong what was right with
//!   thinner; so of what is wrong, everything thinner is left out as well.
//!
//! [`Sizing::proved`] is true when both have met: then no other choice with less metal (or cost) passes. The current that returns
//! through shields of signal leads, a few parts in a thousand of what returns by wire, is taken as it is with the thickest
//! wires.
//!
//! In *meshed networks* (rings, wires side by side, two batteries) what is chosen moves currents about. The answer is a good one, from the
//! slopes. For the bound, runs that carry the same current there whatever their sizes are chosen together (`mesh`); for each choice of all
//! these groups the rest is a forest again. The bound halves what is in question of the groups, again and again, and takes the
//! thickest of each half for what is lost in it and the thinnest for what it costs, until it comes no nearer. That thicker wire never makes
//! wrong what was right with thinner is taken to hold there as well; a ring with loads along it may break that by a little. With few
//! groups answer and bound meet; otherwise the distance is told.
//!
//! What no size suffices for ([`Short`]) is told and asked for no more; what does suffice for it under the conditions that are set, and not
//! at the worst, is held as set. A load that loses too much with the thickest wires and the largest ratings in question may then, at the
//! operating points where that is so, lose as much as it does now, or a tenth more than with those: it drags no others thick.
//!
//! No answer brings a finding of grade Stop or Fix, as set, that is not there now (`no_worse`): rather things stay as they are.
//!
//! What keeps each thing from being less ([`Limit`]) is found by laying it one size less: the limit that is told is broken then.

mod answer;
mod articles;
mod bound;
mod frontier;
mod giving_up;
mod judging;
mod loops;
mod measure;
mod mesh;
mod needs;
mod no_worse;
mod problem;
mod program;
mod report;
mod said;
mod search;
mod shape;
mod shares;
mod slopes;
mod speakers;
mod steps;
mod things;
mod what_if;
mod why;

pub use articles::{Article, articles};
pub use said::{device_tag, size_value};
pub use steps::Sizer;
pub use what_if::WhatIf;

use circuit::DeviceRef;
use model::conductor::Size;
use model::job::{Duty, VehicleState};
use model::quantity::Amps;
use model::thread::Money;
use model::{Change, Edit, Job, PartId, PartKind, RunId, Settings, Sheet, SheetKind, Wire};
use words::say;

/// A series in which wire is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Series {
    /// Square millimetres.
    Metric,
    /// Gauge numbers (AWG).
    Gauge,
}

/// What things cost in a shop.
pub trait Prices {
    /// A metre of this wire, in whole units of the currency, not rounded: what is sold by the foot has no whole hundredths for a metre.
    /// `None` where it is not on the list, and so cannot be bought.
    fn wire(&self, wire: &Wire) -> Option<f64>;
    /// A fuse or breaker of this rating for this part; `None` where it is not on the list: it then counts for nothing.
    fn device(&self, kind: &PartKind, rating: Amps) -> Option<Money>;
}

/// What is to be least.
#[derive(Clone, Copy, Default)]
pub enum By<'a> {
    /// Metal.
    #[default]
    Metal,
    /// Cost by a price list; sizes that are not on it cannot be bought.
    Cost(&'a dyn Prices),
}

/// What is asked for.
#[derive(Clone, Copy, Default)]
pub struct Ask<'a> {
    /// The series to buy from; each run's own where it is not told.
    pub series: Option<Series>,
    /// What is to be least.
    pub by: By<'a>,
    /// Judge at the job's own duty and state alone. Otherwise all hold at the worst as well: test tone with the engine off,
    /// idling and cruising, and a quiet system that leaves the alternator free to charge.
    pub as_set: bool,
}

/// Why a run or a device keeps what it has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// The user locked it.
    Locked,
    /// It stays as it is, by its fate.
    Kept,
    /// The vehicle's maker fitted it.
    Makers,
    /// Its length is not known.
    NoLength,
    /// Its insulation is not known.
    NoInsulation,
    /// The price list has no wire that would do.
    NoPrice,
    /// No size of the series goes into its terminals.
    NoneFits,
    /// A signal lead: there is no size to choose.
    Signal,
    /// A lead of a speaker that no output drives: it carries nothing.
    Undriven,
    /// It stands between two sources: what an empty battery takes follows from no load.
    BetweenSources,
    /// Otherwise this check would find something as set that is not there now.
    Brings(&'static str),
}

/// What keeps a run from being thinner, or a device from having a smaller rating.
#[derive(Clone, Debug, PartialEq)]
pub enum Limit {
    /// It keeps what it has.
    Held(Held),
    /// The least of the series that may be laid.
    Smallest,
    /// The steady current.
    Heat,
    /// The rating of this device.
    Fuse(DeviceRef),
    /// The drop to this load and back.
    Drop(PartId),
    /// The ground rule of this amplifier.
    Ground(PartId),
    /// The heat of its endings.
    Ending,
    /// The resistance of an amplifier's ground lead.
    Lead,
    /// What its loads take for long.
    Load,
    /// What its loads take at bursts.
    Burst,
    /// A check of this name.
    Check(&'static str),
    /// The next smaller costs no less.
    Price,
    /// Nothing that is told: together with others it costs least so.
    Together,
}

/// What no size suffices for, with what stands in the way. What it does suffice for as set, and not at the worst, is held as set.
#[derive(Clone, Debug, PartialEq)]
pub enum Short {
    /// A run carries more than the thickest bears that can be laid; whether a terminal keeps thicker ones out.
    Heat {
        /// The run.
        run: RunId,
        /// Whether it is for the terminal.
        by_terminal: bool,
        /// Whether it bears what it carries as set.
        as_set: bool,
    },
    /// A run does not bear the least rating that a device needs for its loads.
    Fuse {
        /// The run.
        run: RunId,
        /// The device.
        device: DeviceRef,
        /// Whether it bears a rating that does for its loads as set.
        as_set: bool,
    },
    /// No rating of a device's form suffices for its loads.
    Rating {
        /// The device.
        device: DeviceRef,
        /// Whether one does as set.
        as_set: bool,
    },
    /// The drop to a load passes its limit with the thickest wires.
    Drop {
        /// The load.
        load: PartId,
        /// What is then lost, in V.
        drop: f64,
        /// What may be lost, in V.
        limit: f64,
        /// Under which conditions that is, where the limit is kept as set.
        at_worst: Option<(VehicleState, Duty)>,
    },
    /// The ground leads of an amplifier cannot be made to conduct as well as its feeds.
    Ground {
        /// The amplifier.
        amplifier: PartId,
    },
    /// A check says the same of the thickest wires, or nothing that can be chosen clears it.
    Check {
        /// Its name.
        name: &'static str,
        /// Runs that it marks.
        runs: Vec<RunId>,
        /// Parts that it marks.
        parts: Vec<PartId>,
        /// Whether that is so at the worst alone, and not as set.
        as_set: bool,
    },
    /// The engine finds no operating point.
    NoAnswer {
        /// Whether that is so at the worst alone, and not as set.
        as_set: bool,
    },
}

/// A run as it is and as it should be.
#[derive(Clone, Debug, PartialEq)]
pub struct RunLine {
    /// The run.
    pub run: RunId,
    /// Its size; `None` where it is not known.
    pub before: Option<Size>,
    /// The size to be laid, or the one that it keeps.
    pub after: Option<Size>,
    /// What keeps it from being thinner.
    pub limit: Limit,
    /// Metal that is in it and that will be, in kg.
    pub metal: [f64; 2],
    /// What its wire costs now and then; `None` without a price list, or where it is not on it.
    pub cost: [Option<Money>; 2],
    /// Whether other wire is laid.
    pub changes: bool,
}

/// A device as it is and as it should be.
#[derive(Clone, Debug, PartialEq)]
pub struct DeviceLine {
    /// The device.
    pub device: DeviceRef,
    /// Its rating; `None` where it is not known.
    pub before: Option<Amps>,
    /// The rating to be put in, or the one that it keeps.
    pub after: Option<Amps>,
    /// What keeps it from being smaller.
    pub limit: Limit,
    /// What it costs now and then.
    pub cost: [Option<Money>; 2],
    /// Whether its rating changes.
    pub changes: bool,
}

/// The sizes of a sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sizing {
    /// Supply runs, leads that turn others on, and leads of speakers and signals, in the order of their ids; the vehicle's own are left out.
    pub runs: Vec<RunLine>,
    /// Devices, in the order of the study.
    pub devices: Vec<DeviceLine>,
    /// What no size suffices for.
    pub short: Vec<Short>,
    /// What is to be least, of all that could be chosen: metal in kg, or cost in whole units of the currency.
    pub objective: f64,
    /// No choice that passes has less than this.
    pub bound: f64,
    /// Whether it is proved that none that passes has less than the answer.
    pub proved: bool,
    /// Whether a mesh keeps currents from following from the loads alone.
    pub meshed: bool,
}

impl Sizing {
    /// How far the bound lies below the answer, as a share of it.
    #[must_use]
    pub fn gap(&self) -> f64 {
        if self.proved || self.objective <= 0.0 {
            return 0.0;
        }
        ((self.objective - self.bound) / self.objective).clamp(0.0, 1.0)
    }
    /// Metal in all runs of the table, before and after, in kg.
    #[must_use]
    pub fn metal(&self) -> [f64; 2] {
        [0, 1].map(|at| self.runs.iter().map(|run| run.metal[at]).sum())
    }
    /// Cost of all runs and devices of the table, before and after; `None` where something in it has no price. What stays and has
    /// none, as a ready-made signal lead, counts on neither side.
    #[must_use]
    pub fn cost(&self) -> [Option<Money>; 2] {
        [0, 1].map(|at| {
            let counts = |run: &&RunLine| run.changes || run.cost != [None, None];
            let runs = self.runs.iter().filter(counts).map(|run| run.cost[at]);
            let mut sum = Money(0);
            for cost in runs {
                sum = sum.plus(cost?);
            }
            let devices = self.devices.iter().filter_map(|device| device.cost[at]);
            Some(devices.fold(sum, Money::plus))
        })
    }
    /// How many runs and devices change.
    #[must_use]
    pub fn changes(&self) -> usize {
        let runs = self.runs.iter().filter(|run| run.changes).count();
        runs + self.devices.iter().filter(|device| device.changes).count()
    }

    /// The sheet with these sizes.
    #[must_use]
    pub fn taken(&self, sheet: &Sheet) -> Sheet {
        let on = SheetKind::Plan;
        applied(sheet, self.edit(sheet, on), on)
    }

    /// All that changes, as one edit of this sheet; `None` when nothing does.
    #[must_use]
    pub fn edit(&self, sheet: &Sheet, kind: SheetKind) -> Option<Edit> {
        self.edit_of(sheet, kind, |_| true, |_| true)
    }

    /// The same of some runs and devices.
    #[must_use]
    pub fn edit_of(
        &self,
        sheet: &Sheet,
        kind: SheetKind,
        runs: impl Fn(RunId) -> bool,
        devices: impl Fn(&DeviceRef) -> bool,
    ) -> Option<Edit> {
        let mut changes = Vec::new();
        for line in self.runs.iter().filter(|line| line.changes && runs(line.run)) {
            let Some((Some(size), run)) = sheet.runs.get(&line.run).map(|run| (line.after, run)) else {
                continue;
            };
            changes.push(Change::Run {
                sheet: kind,
                id: line.run,
                to: Some(Box::new(things::lay(run, size))),
            });
        }
        let mut parts: ordered::OrderedMap<PartId, model::Part> = ordered::OrderedMap::new();
        for line in self
            .devices
            .iter()
            .filter(|line| line.changes && devices(&line.device))
        {
            let id = line.device.part;
            let Some(part) = parts.get(&id).or_else(|| sheet.parts.get(&id)) else {
                continue;
            };
            let mut part = part.clone();
            if let Some(Amps(amps)) = line.after {
                things::rate(&mut part, &line.device, amps);
            }
            parts.insert(id, part);
        }
        changes.extend(parts.into_iter().map(|(id, part)| Change::Part {
            sheet: kind,
            id,
            to: Some(Box::new(part)),
        }));
        (!changes.is_empty()).then(|| Edit::new(say!("sizing-edit"), changes))
    }
}

/// A sheet with an edit made that is of this one.
fn applied(sheet: &Sheet, edit: Option<Edit>, on: SheetKind) -> Sheet {
    let mut job = Job::default();
    job.sheets.insert(on, sheet.clone());
    if let Some(edit) = edit {
        job.apply(edit);
    }
    job.sheets.remove(&on).unwrap_or_default()
}

/// Sizes for all runs and ratings for all fuses of a sheet.
#[must_use]
pub fn size(sheet: &Sheet, settings: &Settings, ask: &Ask<'_>) -> Sizing {
    steps::at_once(search::search(sheet, settings, ask))
}
