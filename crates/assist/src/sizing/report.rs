//! What a search found, as a table: what each thing was and should be, what keeps it from being less, what it weighs and costs.

use super::search::{FoundSizes, Search};
use super::speakers::Leads;
use super::things::{Is, Thing};
use super::{Ask, By, DeviceLine, Held, Limit, RunLine, Sizing};
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
        // Rounded once, for the whole run.
        By::Cost(prices) => {
            let units = prices.wire(&run.wire)? * run.wire.length.value()?.0;
            // A hair that a division leaves does not turn a half.
            Some(Money(100).times(libm::round(units * 1e6) / 1e6))
        }
    }
}

pub(super) fn report(
    sheet: &Sheet,
    search: &Search<'_>,
    ask: &Ask<'_>,
    found: Option<FoundSizes>,
    leads: &Leads,
) -> Sizing {
    let things = search.bench.things;
    let (laid, study) = (search.bench.laid, search.study);
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
        .chain(&leads.held)
        .filter_map(|(id, why)| held(*id, *why))
        .collect();
    for (id, lead) in &leads.sized {
        let Some(before) = sheet.runs.get(id) else {
            continue;
        };
        runs.push(RunLine {
            run: *id,
            before: before.wire.size.value(),
            after: Some(lead.size),
            limit: lead.limit.clone(),
            metal: [metal(before), metal(&lead.to)],
            cost: [price(ask, before), price(ask, &lead.to)],
            changes: before.wire != lead.to.wire || before.laying != lead.to.laying,
        });
    }
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
            let limit = found.limits.get(var).cloned().unwrap_or(Limit::Together);
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
        let of_leads: f64 = leads.sized.values().map(|lead| lead.cost).sum();
        it.objective = (search.cost(&found.picks) + of_leads) * unit;
        it.bound = (found.bound + of_leads - leads.unsure) * unit;
        it.proved = found.proved && leads.proved;
    }
    runs.order_by(|a, b| a.run.cmp(&b.run));
    devices.order_by(|a, b| a.0.cmp(&b.0));
    it.runs = runs;
    it.devices = devices.into_iter().map(|(_, device)| device).collect();
    // What was locked by the sheet itself is told of it, not of the laid copy.
    debug_assert!(it.runs.iter().all(|line| sheet.runs.contains_key(&line.run)));
    it
}
