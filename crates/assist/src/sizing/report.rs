//! What a search found, as a table: what each thing was and should be, what keeps it from being less, what it weighs and costs.

use super::measure::Measured;
use super::search::{FoundSizes, Search};
use super::things::{Choice, Is, Thing};
use super::{Ask, By, DeviceLine, Held, Limit, RunLine, Sizing};
use circuit::Study;
use model::quantity::Amps;
use model::thread::Money;
use model::{Run, RunId, Sheet};
use ordered::Sort as _;

/// The metal of a run, in kg; nothing where its size or length is not known.
fn metal(run: &Run) -> f64 {
    let (Some(size), Some(length)) = (run.wire.size.value(), run.wire.length.value()) else {
        return 0.0;
    };
    let material = run.wire.material.or(model::conductor::Material::Copper);
    size.area().0 * 1e-6 * length.0 * reference::materials::data(material).density
}

fn price(ask: &Ask<'_>, run: &Run) -> Option<Money> {
    match ask.by {
        By::Metal => None,
        By::Cost(prices) => Some(prices.wire(&run.wire)?.times(run.wire.length.value()?.0)),
    }
}

pub(super) fn report(
    sheet: &Sheet,
    search: &Search<'_>,
    study: &Study,
    ask: &Ask<'_>,
    found: Option<FoundSizes>,
) -> Sizing {
    let things = search.bench.things;
    let laid = search.bench.laid;
    let held = |id: RunId, why: Held| {
        let run = laid.runs.get(&id)?;
        let size = run.wire.size.value();
        Some(RunLine {
            run: id,
            before: size,
            after: size,
            limit: Limit::Held(why),
            metal: [metal(run); 2],
            cost: [price(ask, run); 2],
            changes: false,
        })
    };
    let mut runs: Vec<RunLine> = things
        .held_runs
        .iter()
        .filter_map(|(id, why)| held(*id, *why))
        .collect();
    let mut devices: Vec<(usize, DeviceLine)> = Vec::new();
    for (place, why) in &things.held_devices {
        let Some(device) = study.devices.get(*place) else {
            continue;
        };
        devices.push((
            *place,
            DeviceLine {
                device: device.device.clone(),
                before: device.rating,
                after: device.rating,
                limit: Limit::Held(*why),
                cost: [None; 2],
                changes: false,
            },
        ));
    }
    let mut it = Sizing {
        short: search.short.clone(),
        meshed: !search.is_forest(),
        ..Sizing::default()
    };
    if let Some(found) = found {
        for (var, thing) in things.vars.iter().enumerate() {
            let Some(choice) = thing.choices.get(found.picks[var]) else {
                continue;
            };
            let limit = limit(search, &found, var);
            match (&thing.thing, &choice.is) {
                (Thing::Run(id, _), Is::Wire { run, size, .. }) => {
                    let Some(before) = laid.runs.get(id) else { continue };
                    runs.push(RunLine {
                        run: *id,
                        before: before.wire.size.value(),
                        after: Some(*size),
                        limit,
                        metal: [metal(before), metal(run)],
                        cost: [price(ask, before), price(ask, run)],
                        changes: before.wire != run.wire || before.laying != run.laying,
                    });
                }
                (Thing::Device(place), Is::Rating { amps, .. }) => {
                    let Some(device) = study.devices.get(*place) else {
                        continue;
                    };
                    let kind = laid.parts.get(&device.device.part).map(|part| &part.is);
                    let price = |rating: Option<Amps>| match ask.by {
                        By::Metal => None,
                        By::Cost(prices) => prices.device(kind?, rating?),
                    };
                    let after = Some(Amps(*amps));
                    devices.push((
                        *place,
                        DeviceLine {
                            device: device.device.clone(),
                            before: device.rating,
                            after,
                            limit,
                            cost: [price(device.rating), price(after)],
                            changes: device.rating != after,
                        },
                    ));
                }
                _ => {}
            }
        }
        let unit = match ask.by {
            // A square millimetre over a metre of copper.
            By::Metal => 1e-6 * reference::materials::COPPER.density,
            By::Cost(_) => 0.01,
        };
        it.objective = search.cost(&found.picks) * unit;
        it.bound = found.bound * unit;
        it.proved = found.proved;
    }
    runs.order_by(|a, b| a.run.cmp(&b.run));
    devices.order_by(|a, b| a.0.cmp(&b.0));
    it.runs = runs;
    it.devices = devices.into_iter().map(|(_, device)| device).collect();
    // What was locked by the sheet itself is told of it, not of the laid copy.
    debug_assert!(it.runs.iter().all(|line| sheet.runs.contains_key(&line.run)));
    it
}

/// What keeps a variable from being one choice less.
fn limit(search: &Search<'_>, found: &FoundSizes, var: usize) -> Limit {
    let pick = found.picks[var];
    let Some(less) = pick.checked_sub(1) else {
        return Limit::Smallest;
    };
    let thing = &search.vars()[var];
    let measured = &found.measured;
    if let Some(check) = found.raised.get(var).copied().flatten() {
        return match check {
            "overloaded-run" => Limit::Heat,
            check => Limit::Check(check),
        };
    }
    if !thing.is_run() {
        return device_limit(search, found, var, less);
    }
    let firsts = search.firsts(var, measured.rms[var]);
    if let Some((_, limit)) = firsts.into_iter().find(|(first, _)| *first > less) {
        return limit;
    }
    let bears = search.amps(var, less);
    for device in &search.shape.bears[var] {
        if search.amps(*device, found.picks[*device]) > bears
            && let Thing::Device(place) = &search.vars()[*device].thing
            && let Some(device) = search.bench.devices.get(*place)
        {
            return Limit::Fuse(device.clone());
        }
    }
    for lead in &search.shape.leads {
        let conducts = |other: usize| {
            let pick = if other == var { less } else { found.picks[other] };
            search.vars()[other].choices[pick].conducts()
        };
        if lead.vars().any(|other| other == var) && !lead.holds(conducts) {
            return Limit::Ground(lead.amplifier);
        }
    }
    drop_limit(search, measured, var, pick, less).unwrap_or(Limit::Together)
}

fn device_limit(search: &Search<'_>, found: &FoundSizes, var: usize, less: usize) -> Limit {
    let measured = &found.measured;
    let thing = &search.vars()[var];
    let amps = thing.choices[less].amps();
    if measured.rms[var] > amps * search.limits.share {
        return Limit::Load;
    }
    let Thing::Device(place) = &thing.thing else {
        return Limit::Together;
    };
    let opens = search
        .bench
        .asks
        .devices
        .get(*place)
        .map_or(1.35, |asked| asked.opens_at);
    if measured.burst[var] > amps * opens {
        return Limit::Burst;
    }
    drop_limit(search, measured, var, less + 1, less).unwrap_or(Limit::Together)
}

/// The load whose drop would pass its limit with the lesser choice.
fn drop_limit(
    search: &Search<'_>,
    measured: &Measured,
    var: usize,
    pick: usize,
    less: usize,
) -> Option<Limit> {
    let choices: &[Choice] = &search.vars()[var].choices;
    let (now, less) = (choices.get(pick)?, choices.get(less)?);
    for point in &measured.points {
        let more = point.burst[var] * (less.ohms(point.rms[var]) - now.ohms(point.rms[var]));
        for leaf in &search.shape.loads[var] {
            let load = search.shape.leaves.get(*leaf).and_then(|(_, part)| *part);
            if let Some(load) = load
                && let (Some(drop), Some(limit)) = (point.drops.get(&load), search.drops.get(&load))
                && drop + more > *limit
            {
                return Some(Limit::Drop(load));
            }
        }
    }
    None
}
