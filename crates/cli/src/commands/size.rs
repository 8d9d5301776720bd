//! `size`: sizes for all runs and ratings for all fuses, with what keeps each from being less.

use crate::args::SizeCall;
use crate::commands::lists::price_list;
use crate::input::{json, open, unwritten};
use crate::speech::{tell, text};
use crate::table::{print, table, wrap};
use crate::{Done, Report};
use assist::sizing::{Ask, By, DeviceLine, RunLine, Series, Sizing, device_tag, size, size_value};
use model::conductor::Size;
use model::quantity::Amps;
use model::thread::Money;
use model::{PropertyType, Sheet};
use serde_json::{Value, json};
use std::fmt::Write;
use words::{Unit, Value as Told, figure, precise, say};

pub(crate) fn run(call: &SizeCall) -> Result<Report, String> {
    let mut opened = open(&call.job)?;
    let list = call.price_list.as_deref().map(price_list).transpose()?;
    let by = match (&*call.by, &list) {
        ("cost", Some(prices)) => By::Cost(prices),
        ("cost", None) => return Err(text("cli-size-no-prices")),
        _ => By::Metal,
    };
    let ask = Ask {
        series: match call.series.as_deref() {
            Some("awg") => Some(Series::Gauge),
            Some(_) => Some(Series::Metric),
            None => None,
        },
        by,
        as_set: call.as_set,
    };
    let sheet = opened.sheet();
    let sizing = size(&sheet, &opened.settings, &ask);
    if let Some(path) = &call.output {
        if let Some(edit) = sizing.edit(&sheet, opened.kind) {
            opened.job.apply(edit);
        }
        let written = model::file::write(&opened.job);
        std::fs::write(path, written).map_err(|error| unwritten(path, &error))?;
    }
    let done = if sizing.short.is_empty() {
        Done::Clean
    } else {
        Done::Stop
    };
    if call.job.json {
        return Ok(Report {
            text: json(&as_json(&sheet, &sizing))?,
            done,
        });
    }
    let mut out = opened.heading() + "\n";
    if let Some(path) = &call.output {
        let _ = writeln!(out, "{}", tell(&say!("cli-written", file = path)));
    }
    shown(&sheet, &sizing, call.as_set, call.by == "cost", &mut out);
    Ok(Report { text: out, done })
}

fn value(value: Told) -> String {
    tell(&say!("as-it-stands", text = value))
}

fn size_of(size: Option<Size>) -> String {
    size.map_or_else(|| "?".to_owned(), |size| value(size_value(size)))
}

fn rating_of(rating: Option<Amps>) -> String {
    rating.map_or_else(
        || "?".to_owned(),
        |rating| value(figure(rating.0, Unit::Plain("A")).into()),
    )
}

fn shown(sheet: &Sheet, sizing: &Sizing, as_set: bool, by_cost: bool, out: &mut String) {
    if sizing.runs.is_empty() && sizing.devices.is_empty() {
        let _ = writeln!(out, "{}", text("sizing-none"));
    } else {
        let mut rows = table(&["where", "now", "then", "because"]);
        let then = |changes: bool, then: String| if changes { then } else { "=".to_owned() };
        for line in &sizing.runs {
            let tag = sheet
                .runs
                .get(&line.run)
                .map_or_else(String::new, |run| run.tag.clone());
            let after = then(line.changes, size_of(line.after));
            rows.add_row([tag, size_of(line.before), after, tell(&line.limit.said(sheet))]);
        }
        for line in &sizing.devices {
            let after = then(line.changes, rating_of(line.after));
            let tag = device_tag(sheet, &line.device);
            rows.add_row([tag, rating_of(line.before), after, tell(&line.limit.said(sheet))]);
        }
        out.push_str(&print(&rows));
        out.push('\n');
    }
    for short in &sizing.short {
        out.push_str(&wrap(&tell(&short.said(sheet))));
    }
    let [before, after] = sizing.metal().map(|kg| precise(kg, Unit::Plain("kg"), 2));
    let _ = writeln!(
        out,
        "{}",
        tell(&say!("sizing-metal", before = before, after = after))
    );
    if by_cost {
        let cost = match sizing.cost().map(|money| money.map(|it| it.print())) {
            [Some(before), Some(after)] => say!("sizing-cost", before = before, after = after),
            [None, Some(after)] => say!("sizing-cost-then", after = after),
            _ => say!("sizing-cost-unknown"),
        };
        out.push_str(&wrap(&tell(&cost)));
    }
    out.push_str(&wrap(&tell(&sizing.proof())));
    out.push_str(&wrap(&text(if as_set {
        "sizing-judged-set"
    } else {
        "sizing-judged-worst"
    })));
    out.push_str(&wrap(&text("sizing-care")));
}

fn money(cost: [Option<Money>; 2]) -> Value {
    json!(cost.map(|cost| cost.map(Money::number)))
}

fn run_json(sheet: &Sheet, line: &RunLine) -> Value {
    json!({
        "run": sheet.runs.get(&line.run).map(|run| run.tag.as_str()),
        "before": line.before.map(|size| size.print()),
        "after": line.after.map(|size| size.print()),
        "changes": line.changes,
        "because": tell(&line.limit.said(sheet)),
        "metal-kg": line.metal,
        "cost": money(line.cost),
    })
}

fn device_json(sheet: &Sheet, line: &DeviceLine) -> Value {
    json!({
        "device": device_tag(sheet, &line.device),
        "before-A": line.before.map(|amps| amps.0),
        "after-A": line.after.map(|amps| amps.0),
        "changes": line.changes,
        "because": tell(&line.limit.said(sheet)),
        "cost": money(line.cost),
    })
}

fn as_json(sheet: &Sheet, sizing: &Sizing) -> Value {
    let runs: Vec<Value> = sizing.runs.iter().map(|line| run_json(sheet, line)).collect();
    let devices: Vec<Value> = sizing
        .devices
        .iter()
        .map(|line| device_json(sheet, line))
        .collect();
    let short: Vec<String> = sizing
        .short
        .iter()
        .map(|short| tell(&short.said(sheet)))
        .collect();
    json!({
        "runs": runs,
        "devices": devices,
        "short": short,
        "metal-kg": sizing.metal(),
        "cost": money(sizing.cost()),
        "proved": sizing.proved,
        "meshed": sizing.meshed,
        "gap": sizing.gap(),
    })
}
