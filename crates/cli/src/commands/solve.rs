//! `solve`: currents, drops, temperatures, and how well the solution balances.

use crate::Report;
use crate::args::JobCall;
use crate::input::{json, open};
use crate::table::{print, table};
use circuit::Outcome;
use std::fmt::Write;

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
        conditions.state.title(),
        conditions.duty.title()
    );
    match &study.outcome {
        Outcome::NothingToSolve => text.push_str("No source on the sheet feeds anything.\n"),
        Outcome::Failed { why } => {
            return Err(format!("{text}The network could not be solved: {why}"));
        }
        Outcome::Collapsed { deliverable, .. } => {
            let _ = writeln!(
                text,
                "The feed delivers only {:.0} % of what the loads ask.",
                deliverable.0 * 100.0
            );
        }
        Outcome::Solved => {}
    }
    let mut runs = table(&[
        "Run", "Purpose", "Mean A", "RMS A", "Burst A", "May A", "Drop mV", "°C", "Loss W",
    ]);
    for (id, flow) in &study.runs {
        let Some(run) = sheet.runs.get(id) else { continue };
        runs.add_row([
            run.tag.clone(),
            format!("{:?}", flow.purpose),
            format!("{:.2}", flow.current.mean.0),
            format!("{:.2}", flow.current.rms.0),
            format!("{:.2}", flow.current.burst.0),
            flow.allowable
                .map_or_else(|| "?".to_owned(), |allowable| format!("{:.0}", allowable.0)),
            format!("{:.1}", flow.drop.0 * 1000.0),
            format!("{:.0}", flow.temperature.0),
            format!(
                "{:.2}",
                flow.loss.0 + flow.ending_loss.iter().map(|loss| loss.0).sum::<f64>()
            ),
        ]);
    }
    text.push_str(&print(&runs));
    text.push('\n');
    let mut parts = table(&["Part", "Name", "Mean A", "Burst A", "V", "Burst V", "W", "State"]);
    for (id, flow) in &study.parts {
        let Some(part) = sheet.parts.get(id) else { continue };
        let volts = |voltage: Option<model::quantity::Volts>| {
            voltage.map_or_else(String::new, |v| format!("{:.3}", v.0))
        };
        let state = match flow.on {
            Some(true) => "on",
            Some(false) => "off",
            None => "",
        };
        parts.add_row([
            part.tag.clone(),
            part.name().to_owned(),
            format!("{:.2}", flow.current.mean.0),
            format!("{:.2}", flow.current.burst.0),
            volts(flow.voltage),
            volts(flow.burst_voltage),
            format!("{:.1}", flow.power.0),
            flow.remark
                .as_ref()
                .map_or_else(|| state.to_owned(), |remark| format!("{state} {remark}")),
        ]);
    }
    text.push_str(&print(&parts));
    let energy = &study.energy;
    let _ = writeln!(
        text,
        "\nDraw {:.1} A of {:.1} A that the alternator can give; standing current {:.0} mA.",
        energy.draw.0,
        energy.available.0,
        energy.standing.0 * 1000.0
    );
    let _ = writeln!(
        text,
        "Balance: currents to {:.1e} of the largest, power to {:.1e}.",
        study.balance.relative_residual, study.balance.relative_power
    );
    for note in &study.notes {
        let _ = writeln!(text, "Note: {note}");
    }
    Ok(Report::clean(text))
}
