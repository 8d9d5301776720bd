//! Stretches of wire that a source can drive current into without crossing a working device: one stretch for each
//! cause, so that one missing fuse gives one finding however many runs hang behind it.
//!
//! ```text
//!  B1.+ --W1-- X1 --W2-- A1.+        W1, W2, W3: one stretch, nothing follows: no fuse at all
//!               \--W3-- A2.+
//!  B1.+ --W4 (3 m)-- F1              W4: one stretch, F1 follows, but too far out
//! ```

use crate::context::Ctx;
use crate::wiring::{TieKind, live_pole, takes_feed};
use circuit::{DeviceRef, Protection, ProtectionFrom, Purpose};
use model::kinds::supply::DeviceState;
use model::quantity::Metres;
use model::{PartId, PartKind, RunId};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// What is amiss with a stretch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Lack {
    /// No device stands between the source and something that uses current or hangs loose.
    NoDevice,
    /// A device follows, but further out than the limit.
    TooFar,
    /// A device follows; how far out cannot be told because a length is not known.
    UnknownReach,
    /// It lies between two sources and is open to one of them.
    SecondSource,
}

/// One stretch.
#[derive(Clone, Debug)]
pub(crate) struct Stretch {
    pub(crate) lack: Lack,
    /// The sources that can drive current into it, in the order of their ids.
    pub(crate) sources: OrderedSet<PartId>,
    /// Its runs, the one next to the source first.
    pub(crate) runs: Vec<RunId>,
    /// Devices at its far ends.
    pub(crate) devices: Vec<DeviceRef>,
    /// Devices in it that are bridged and so do nothing.
    pub(crate) bridged: Vec<DeviceRef>,
    /// Devices in it that another wire leads around, so that current comes to both their sides.
    pub(crate) bypassed: Vec<DeviceRef>,
    /// How far out it reaches.
    pub(crate) reach: Option<Metres>,
    /// The limit on that, sheath taken into account; for `TooFar`.
    pub(crate) limit: Option<(f64, &'static str)>,
    /// Loads behind it.
    pub(crate) serves: OrderedSet<PartId>,
}

/// The limits on the distance from the source to the first device.
pub(crate) const REACH: &[&str] = &[
    "fuse-reach",
    "fuse-reach-sheathed",
    "fuse-reach-sheathed-battery",
    "charger-reach",
];

/// Entries of a run that count: batteries and converters, and an alternator only where no battery stands behind it,
/// since what an alternator adds is limited by itself and always comes together with a battery's current.
fn counted<'p>(ctx: &Ctx<'_>, protection: &'p Protection) -> Vec<&'p ProtectionFrom> {
    let is_alternator =
        |from: &&ProtectionFrom| matches!(ctx.kind(from.source), Some(PartKind::Alternator(_)));
    let all = protection.from.iter().filter(|from| !from.self_limiting);
    let batteries: Vec<&ProtectionFrom> = all.clone().filter(|from| !is_alternator(from)).collect();
    if batteries.is_empty() {
        all.collect()
    } else {
        batteries
    }
}

/// Whether an end of the run lies where current is used, or on nothing at all.
fn ends_on_use(ctx: &Ctx<'_>, run: RunId) -> bool {
    ctx.landings(run).into_iter().any(|(part, kind, terminal)| {
        ctx.part(part)
            .and_then(|part| part.role(terminal))
            .is_some_and(|role| takes_feed(kind, terminal, role))
    })
}

/// All stretches of a sheet, in the order of their first runs.
pub(crate) fn stretches(ctx: &Ctx<'_>) -> Vec<Stretch> {
    // Which runs are amiss, and seen from which source.
    let mut amiss: OrderedMap<PartId, OrderedMap<RunId, (&ProtectionFrom, Lack)>> = OrderedMap::new();
    for (run, protection) in &ctx.study.protection {
        if !ctx.touched_run(*run) {
            continue;
        }
        let entries = counted(ctx, protection);
        let between = ctx.purpose(*run) == Purpose::BetweenSources && entries.len() > 1;
        let open = entries.iter().filter(|from| !from.protected);
        // A branch beyond another source's pole is that source's matter: the nearest one counts.
        let nearest = open
            .clone()
            .min_by(|a, b| {
                let far = |from: &ProtectionFrom| from.unprotected_to.map_or(f64::INFINITY, |m| m.0);
                far(a).total_cmp(&far(b)).then(a.source.cmp(&b.source))
            })
            .map(|from| from.source);
        for from in open.filter(|from| between || Some(from.source) == nearest) {
            let lack = if !from.device_follows || ends_on_use(ctx, *run) {
                Some(Lack::NoDevice)
            } else {
                match (from.unprotected_to, reach_limit(ctx, from.source, from.sheathed)) {
                    (_, None) => None,
                    (None, Some(_)) => Some(Lack::UnknownReach),
                    (Some(to), Some((limit, _))) => (to.0 > limit).then_some(Lack::TooFar),
                }
            };
            if let Some(lack) = lack {
                amiss.entry(from.source).or_default().insert(*run, (from, lack));
            }
        }
    }
    // Contacts and bridged devices do not part a stretch.
    let merged = ctx.wiring.islands(|tie| {
        matches!(
            tie.kind,
            TieKind::Contact(_) | TieKind::Device(_, DeviceState::Bridged)
        )
    });
    let mut all: Vec<Stretch> = Vec::new();
    for (source, runs) in &amiss {
        for stretch in of_source(ctx, *source, runs, &merged) {
            // The same wire open to two sources is one stretch, told once.
            let same = |other: &&mut Stretch| {
                let runs = |s: &Stretch| s.runs.iter().copied().collect::<OrderedSet<_>>();
                other.lack == stretch.lack && runs(other) == runs(&stretch)
            };
            match all.iter_mut().find(same) {
                Some(other) => other.sources.extend(&stretch.sources),
                None => all.push(stretch),
            }
        }
    }
    all.order_by(|a, b| (&a.runs, a.lack).cmp(&(&b.runs, b.lack)));
    all
}

/// The limit that holds for a stretch from this source, and its name.
fn reach_limit(ctx: &Ctx<'_>, source: PartId, sheathed: bool) -> Option<(f64, &'static str)> {
    let key = match ctx.kind(source) {
        Some(PartKind::Alternator(_) | PartKind::Converter(_)) => "charger-reach",
        Some(PartKind::Battery(_)) if sheathed => "fuse-reach-sheathed-battery",
        _ if sheathed => "fuse-reach-sheathed",
        _ => "fuse-reach",
    };
    ctx.limit(key).map(|limit| (limit, key))
}

/// The stretches that one source feeds: runs hang together when current passes from one into the other.
fn of_source(
    ctx: &Ctx<'_>,
    source: PartId,
    amiss: &OrderedMap<RunId, (&ProtectionFrom, Lack)>,
    merged: &[usize],
) -> Vec<Stretch> {
    let pole = ctx
        .kind(source)
        .and_then(live_pole)
        .and_then(|name| ctx.wiring.point(source, name));
    let passes = |kind: &TieKind| match kind {
        TieKind::Run(_) | TieKind::Contact(_) | TieKind::Device(_, DeviceState::Bridged) => true,
        TieKind::Device(..) => false,
        TieKind::Own(_) => true,
    };
    let far = ctx.wiring.distances(
        pole,
        |tie| passes(&tie.kind) && !tie.ends.contains(&crate::wiring::BODY),
        |run| ctx.length(run).map_or(0.0, |m| m.0),
    );
    let island = |point: usize| merged.get(point).copied().unwrap_or(point);
    let distance = |point: usize| far.get(&point).copied().unwrap_or(f64::INFINITY);
    // Which islands current comes into through a run that is amiss.
    let mut entered: OrderedMap<usize, Vec<RunId>> = OrderedMap::new();
    let mut ordered: Vec<(RunId, [usize; 2], f64)> = Vec::new();
    for run in amiss.keys() {
        let Some([a, b]) = ctx.wiring.ends(*run) else {
            continue;
        };
        let (near, beyond) = if distance(a) <= distance(b) {
            (a, b)
        } else {
            (b, a)
        };
        entered.entry(island(beyond)).or_default().push(*run);
        ordered.push((*run, [island(near), island(beyond)], distance(near)));
    }
    ordered.order_by(|a, b| a.2.total_cmp(&b.2).then(a.0.cmp(&b.0)));
    // A run belongs with those through which current comes to it.
    let mut group: OrderedMap<RunId, usize> = OrderedMap::new();
    let mut groups: Vec<Vec<RunId>> = Vec::new();
    for (run, [near, beyond], _) in &ordered {
        let mut joined: OrderedSet<usize> = entered
            .get(near)
            .into_iter()
            .chain(entered.get(beyond))
            .flatten()
            .filter_map(|other| group.get(other).copied())
            .collect();
        let number = joined.pop_first().unwrap_or_else(|| {
            groups.push(Vec::new());
            groups.len() - 1
        });
        let mut moved: Vec<RunId> = Vec::new();
        for other in joined {
            moved.extend(groups.get_mut(other).map(std::mem::take).unwrap_or_default());
        }
        moved.push(*run);
        for run in &moved {
            group.insert(*run, number);
        }
        if let Some(list) = groups.get_mut(number) {
            list.extend(moved);
        }
    }
    groups
        .into_iter()
        .filter(|runs| !runs.is_empty())
        .map(|runs| describe(ctx, source, amiss, &far, runs))
        .collect()
}

fn describe(
    ctx: &Ctx<'_>,
    source: PartId,
    amiss: &OrderedMap<RunId, (&ProtectionFrom, Lack)>,
    open_from: &OrderedMap<usize, f64>,
    runs: Vec<RunId>,
) -> Stretch {
    let entries: Vec<(RunId, &ProtectionFrom, Lack)> = runs
        .iter()
        .filter_map(|run| amiss.get(run).map(|(from, lack)| (*run, *from, *lack)))
        .collect();
    let points: OrderedSet<usize> = runs
        .iter()
        .filter_map(|run| ctx.wiring.ends(*run))
        .flatten()
        .collect();
    let (mut devices, mut bridged, mut bypassed) = (OrderedSet::new(), OrderedSet::new(), OrderedSet::new());
    for tie in points.iter().flat_map(|point| ctx.wiring.ties_at(*point)) {
        if let TieKind::Device(device, state) = &tie.kind {
            if *state == DeviceState::Bridged {
                bridged.insert(device.clone());
            } else if tie.ends.iter().all(|end| open_from.contains_key(end)) {
                bypassed.insert(device.clone());
            } else {
                devices.insert(device.clone());
            }
        }
    }
    let is_second = |(run, _, _): &(RunId, &ProtectionFrom, Lack)| open_between(ctx, source, *run);
    let lack = if entries.iter().any(is_second) {
        Lack::SecondSource
    } else if !bridged.is_empty() || !bypassed.is_empty() {
        // A device further out is no excuse for one that was made to do nothing.
        Lack::NoDevice
    } else {
        entries
            .iter()
            .map(|(_, _, lack)| *lack)
            .min()
            .unwrap_or(Lack::NoDevice)
    };
    let reach = entries
        .iter()
        .map(|(_, from, _)| from.unprotected_to)
        .try_fold(Metres(0.0), |far, to| to.map(|to| far.max(to)));
    let sheathed = entries.iter().all(|(_, from, _)| from.sheathed);
    let serves = runs
        .iter()
        .filter_map(|run| ctx.flow(*run))
        .flat_map(|flow| flow.serves.iter().copied())
        .collect();
    Stretch {
        lack,
        sources: OrderedSet::from([source]),
        runs,
        devices: devices.into_iter().collect(),
        bridged: bridged.into_iter().collect(),
        bypassed: bypassed.into_iter().collect(),
        reach,
        limit: reach_limit(ctx, source, sheathed),
        serves,
    }
}

/// Whether the run lies between this source and another with no device at this source's end: either none at all, or
/// one that does the other source's work.
fn open_between(ctx: &Ctx<'_>, source: PartId, run: RunId) -> bool {
    if ctx.purpose(run) != Purpose::BetweenSources {
        return false;
    }
    let Some(protection) = ctx.study.protection.get(&run) else {
        return false;
    };
    let entries = counted(ctx, protection);
    let others = || entries.iter().filter(|from| from.source != source);
    if others().next().is_none() {
        return false;
    }
    if others().any(|from| !from.protected) {
        return true;
    }
    // The device that shuts the other source out: is there yet another one beyond it, on the way to that source?
    let has_second = others().any(|from| {
        from.guards.iter().any(|guard| {
            ctx.wiring
                .ties()
                .iter()
                .filter(|tie| matches!(&tie.kind, TieKind::Device(device, _) if device == guard))
                .flat_map(|tie| tie.ends)
                .flat_map(|point| ctx.wiring.ties_at(point))
                .filter_map(|tie| match tie.kind {
                    TieKind::Run(beyond) if beyond != run => ctx.study.protection.get(&beyond),
                    _ => None,
                })
                .any(|beyond| {
                    beyond.from.iter().any(|entry| {
                        entry.source == from.source && entry.protected && !entry.guards.contains(guard)
                    })
                })
        })
    });
    !has_second
}
