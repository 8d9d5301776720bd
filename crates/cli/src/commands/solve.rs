//! `solve`: currents, drops, temperatures, and how well the solution balances.

use crate::Report;
use crate::args::JobCall;
use crate::input::{json, open};
use crate::speech::{tell, text as text_of, words};
use crate::table::{print, table};
use circuit::{Outcome, Purpose};
use std::fmt::Write;
use words::{Unit, precise, say};

/// A number of a table, with a fixed count of decimals.
pub(crate) fn number(number: f64, places: u8) -> String {
    words().figure(precise(number, Unit::Bare, places))
}

fn purpose(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Feed => "feed",
        Purpose::Return => "return",
        Purpose::BetweenSources => "between-sources",
        Purpose::Speaker => "speaker",
        Purpose::Signal => "signal",
        Purpose::TurnOn => "turn-on",
        Purpose::Nothing => "nothing",
    }
}

pub(crate) fn run(call: &JobCall) -> Result<Report, String> {
    let opened = open(call)?;
    let sheet = opened.sheet();
    let study = circuit::study(&sheet, &opened.settings);
    if call.json {
        return Ok(Report::clean(json(&study)?));
    }
    let conditions = &opened.settings.conditions;
    let mut text = format!(
        "{} · {}, {}\n",
        opened.heading(),
        tell(&conditions.state.said()),
        tell(&conditions.duty.said())
    );
    match &study.outcome {
        Outcome::NothingToSolve => text.push_str(&(tell(&say!("cli-nothing-solved")) + "\n")),
        Outcome::Failed { why } => {
            return Err(text + &tell(&say!("cli-not-solved", why = why)));
        }
        Outcome::Collapsed { deliverable, .. } => {
            let share = precise(deliverable.0, Unit::Percent, 0);
            let _ = writeln!(text, "{}", tell(&say!("cli-delivers", share = share)));
        }
        Outcome::Solved => {}
    }
    let mut runs = table(&[
        "run", "purpose", "mean", "rms", "burst", "may", "drop", "°C", "loss",
    ]);
    for (id, flow) in &study.runs {
        let Some(run) = sheet.runs.get(id) else { continue };
        runs.add_row([
            run.tag.clone(),
            tell(&say!("cli-purpose", purpose = purpose(flow.purpose))),
            number(flow.current.mean.0, 2),
            number(flow.current.rms.0, 2),
            number(flow.current.burst.0, 2),
            flow.allowable
                .map_or_else(|| "?".to_owned(), |allowable| number(allowable.0, 0)),
            number(flow.drop.0 * 1000.0, 1),
            number(flow.temperature.0, 0),
            number(
                flow.loss.0 + flow.ending_loss.iter().map(|loss| loss.0).sum::<f64>(),
                2,
            ),
        ]);
    }
    text.push_str(&print(&runs));
    text.push('\n');
    let mut parts = table(&["part", "name", "mean", "burst", "V", "burst-volts", "W", "state"]);
    for (id, flow) in &study.parts {
        let Some(part) = sheet.parts.get(id) else { continue };
        let volts =
            |voltage: Option<model::quantity::Volts>| voltage.map_or_else(String::new, |v| number(v.0, 3));
        let state = match flow.on {
            Some(true) => text_of("told-is-on"),
            Some(false) => text_of("told-is-off"),
            None => String::new(),
        };
        parts.add_row([
            part.tag.clone(),
            tell(&part.said()),
            number(flow.current.mean.0, 2),
            number(flow.current.burst.0, 2),
            volts(flow.voltage),
            volts(flow.burst_voltage),
            number(flow.power.0, 1),
            flow.remark.as_ref().map_or_else(
                || state.clone(),
                |remark| {
                    let remark = if flow.only_loud {
                        tell(&say!("cli-when-loud", why = remark))
                    } else {
                        tell(remark)
                    };
                    format!("{state} {remark}")
                },
            ),
        ]);
    }
    text.push_str(&print(&parts));
    let energy = &study.energy;
    let drawn = say!(
        "cli-energy",
        draw = precise(energy.draw.0, Unit::Plain("A"), 1),
        available = precise(energy.available.0, Unit::Plain("A"), 1),
        standing = precise(energy.standing.0 * 1000.0, Unit::Plain("mA"), 0),
    );
    let balance = say!(
        "cli-balance",
        current = format!("{:.1e}", study.balance.relative_residual),
        power = format!("{:.1e}", study.balance.relative_power),
    );
    let _ = writeln!(text, "\n{}\n{}", tell(&drawn), tell(&balance));
    for note in &study.notes {
        let _ = writeln!(text, "{}", tell(&say!("cli-note", note = note)));
    }
    Ok(Report::clean(text))
}
