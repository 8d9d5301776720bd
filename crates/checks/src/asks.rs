//! What the checks ask of sizes of wires and ratings of devices, as plain data: for whoever looks for sizes with which they
//! hold, and must not guess what each check judges. The limits themselves are told by [`crate::limit`].

use crate::checks::damaged_run::is_live;
use crate::checks::fuse_undersized::opens_at;
use crate::checks::return_too_long::{contact, lead};
use crate::checks::terminal_overfull::takes;
use crate::checks::voltage_drop::limit_for;
use crate::context::Ctx;
use crate::mends::ratings::ratings_of;
use circuit::{Purpose, Study};
use model::quantity::{Ohms, SquareMm, Volts};
use model::{PartId, PartKind, RunId, Settings, Sheet};
use ordered::OrderedMap;

/// What is asked of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunAsks {
    /// Whether it is judged for what it is: not where the vehicle's maker fitted it and all that it joins.
    pub touched: bool,
    /// Whether it carries supply current, there or back.
    pub supply: bool,
    /// What it is used for.
    pub purpose: Purpose,
    /// Whether it is judged for what it carries: also where the vehicle's maker fitted it, once something that was added hangs on it.
    pub burdened: bool,
    /// Whether a source can make it live, so that it would end bare and live if it were cut through.
    pub live: bool,
    /// The largest size that the terminals at its ends take, as far as that is stated.
    pub largest: Option<SquareMm>,
}

/// What is asked of an overcurrent device.
#[derive(Clone, Debug, PartialEq)]
pub struct DeviceAsks {
    /// Ratings in which its form is made, rising; empty for what is no fuse, block or breaker.
    pub ratings: &'static [f64],
    /// Multiple of its rating at which it has to open at all.
    pub opens_at: f64,
    /// Whether it is judged for what it carries, and its rating against what it guards.
    pub judged: bool,
    /// Runs that it guards and that are held against its rating.
    pub guards: Vec<RunId>,
}

/// An amplifier whose ground leads have to conduct at least as well as its feeds.
#[derive(Clone, Debug, PartialEq)]
pub struct LeadAsks {
    /// The amplifier.
    pub amplifier: PartId,
    /// Runs on its positive terminal.
    pub feeds: Vec<RunId>,
    /// Runs on its negative terminal.
    pub backs: Vec<RunId>,
    /// Where its return goes through the body by one run alone: that run, and the resistance of the contact at the body's side.
    pub to_body: Option<(RunId, Ohms)>,
}

/// What is asked of a whole sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asks {
    /// By run.
    pub runs: OrderedMap<RunId, RunAsks>,
    /// By device, in the order of the study.
    pub devices: Vec<DeviceAsks>,
    /// Most that may be lost from the source to a part and back.
    pub drops: OrderedMap<PartId, Volts>,
    /// Amplifiers with their leads.
    pub leads: Vec<LeadAsks>,
}

/// What the checks ask of a sheet that [`body::lay`] made and of which the engine's answer is at hand.
#[must_use]
pub fn asks(sheet: &Sheet, settings: &Settings, study: &Study) -> Asks {
    let ctx = Ctx::new(sheet, settings, study);
    let run = |id: RunId| RunAsks {
        touched: ctx.touched_run(id),
        supply: ctx.is_supply(id),
        purpose: ctx.purpose(id),
        burdened: ctx.burdened_run(id),
        live: ctx.run(id).is_some_and(|run| is_live(&ctx, id, run)),
        largest: ctx
            .landings(id)
            .into_iter()
            .filter_map(|(_, kind, terminal)| takes(kind, terminal.as_str())?.1)
            .min_by(|a, b| a.0.total_cmp(&b.0)),
    };
    // A stub within reach of another source is that source's: no rating here makes it any better.
    let of_device = |run: &RunId| {
        study.protection.get(run).is_none_or(|protection| {
            let mut from = protection.from.iter();
            from.all(|from| from.protected || from.self_limiting)
        })
    };
    let devices = study.devices.iter().map(|device| {
        let makers = ctx.is_makers(device.device.part);
        let is_judged = |run: &RunId| ctx.touched_run(*run) || (!makers && ctx.burdened_run(*run));
        let counts = !device.in_return && ctx.counts(device);
        DeviceAsks {
            ratings: ratings_of(&ctx, &device.device),
            opens_at: opens_at(&ctx, device),
            judged: counts && ctx.burdened_device(device),
            guards: device
                .guards
                .iter()
                .copied()
                .filter(|run| counts && is_judged(run) && of_device(run))
                .collect(),
        }
    });
    let drops = study.circuits.keys().filter_map(|load| {
        let (limit, _) = limit_for(&ctx, *load).filter(|_| ctx.touched_part(*load))?;
        Some((*load, Volts(limit)))
    });
    let amplifiers = sheet
        .parts
        .iter()
        .filter(|(id, part)| matches!(part.is, PartKind::Amplifier(_)) && ctx.touched_part(**id));
    let leads = amplifiers.filter_map(|(id, _)| {
        let (feeds, backs) = (ctx.runs_on(*id, "+"), ctx.runs_on(*id, "-"));
        let way = study.circuits.get(id).and_then(|circuit| {
            let mut complete = circuit.returns.iter().filter(|way| way.complete);
            complete.next().filter(|way| way.through_body)
        });
        let to_body = way.and_then(|way| match lead(&ctx, way) {
            (runs, ground) if runs.len() == 1 => Some((*runs.first()?, contact(&ctx, ground))),
            _ => None,
        });
        (!feeds.is_empty() && !backs.is_empty()).then_some(LeadAsks {
            amplifier: *id,
            feeds,
            backs,
            to_body,
        })
    });
    Asks {
        runs: sheet.runs.keys().map(|id| (*id, run(*id))).collect(),
        devices: devices.collect(),
        drops: drops.collect(),
        leads: leads.collect(),
    }
}
