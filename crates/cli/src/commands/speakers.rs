//! `speakers`: what each channel drives, and what reaches each speaker.

use super::solve::number;
use crate::Report;
use crate::args::JobCall;
use crate::input::{json, open};
use crate::speech::{tell, text};
use crate::table::{print, table};
use model::quantity::Ohms;

fn ohms(value: Option<Ohms>) -> String {
    value.map_or_else(|| "–".to_owned(), |ohms| number(ohms.0, 2))
}

pub(crate) fn run(call: &JobCall) -> Result<Report, String> {
    let opened = open(call)?;
    let sheet = opened.sheet();
    let study = circuit::study(&sheet, &opened.settings);
    if call.json {
        return Ok(Report::clean(json(
            &serde_json::json!({"channels": study.channels, "drivers": study.drivers}),
        )?));
    }
    let tag = |id: &model::PartId| {
        sheet
            .parts
            .get(id)
            .map_or_else(|| id.to_string(), |part| part.tag.clone())
    };
    let mut channels = table(&[
        "channel", "drives", "nominal", "least", "least-at", "may-ohms", "dc", "W", "remark",
    ]);
    for load in &study.channels {
        let channel = match load.bridged_with {
            Some(second) => format!("{} {}+{second}", tag(&load.part), load.channel),
            None => format!("{} {}", tag(&load.part), load.channel),
        };
        let drivers: Vec<String> = load.drivers.iter().map(tag).collect();
        channels.add_row([
            channel,
            if drivers.is_empty() {
                text("list-nothing")
            } else {
                drivers.join(" ")
            },
            ohms(load.nominal),
            ohms(load.least),
            load.least_at.map_or_else(String::new, |at| number(at.0, 0)),
            ohms(load.minimum),
            ohms(load.dc_resistance),
            load.power.map_or_else(String::new, |power| number(power.0, 0)),
            load.remarks.iter().map(tell).collect::<Vec<_>>().join("; "),
        ]);
    }
    let mut drivers = table(&[
        "speaker",
        "name",
        "from",
        "W",
        "phase",
        "high-pass",
        "lead-loss",
        "silent",
    ]);
    for (id, driver) in &study.drivers {
        let phase = match driver.in_phase {
            _ if driver.coils_oppose => text("cli-coils-oppose"),
            Some(true) => text("cli-in-phase"),
            Some(false) => text("cli-reversed"),
            None => String::new(),
        };
        drivers.add_row([
            tag(id),
            sheet
                .parts
                .get(id)
                .map_or_else(String::new, |part| tell(&part.said())),
            driver
                .channel
                .map_or_else(String::new, |(part, channel)| format!("{} {channel}", tag(&part))),
            number(driver.power.0, 0),
            phase,
            driver
                .high_pass
                .map_or_else(String::new, |from| number(from.0, 0)),
            number(driver.lead_loss.0.abs(), 2),
            driver
                .gap
                .as_ref()
                .map_or_else(String::new, |gap| tell(&gap.what)),
        ]);
    }
    Ok(Report::clean(print(&channels) + "\n" + &print(&drivers)))
}
