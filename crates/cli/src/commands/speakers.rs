//! `speakers`: what each channel drives, and what reaches each speaker.

use crate::Report;
use crate::args::JobCall;
use crate::input::{json, open};
use crate::table::{print, table};
use model::quantity::Ohms;

fn ohms(value: Option<Ohms>) -> String {
    value.map_or_else(|| "–".to_owned(), |ohms| format!("{:.2}", ohms.0))
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
        "Channel",
        "Drives",
        "Nominal Ω",
        "Least |Z| Ω",
        "at Hz",
        "May Ω",
        "DC Ω",
        "W",
        "Remark",
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
                "nothing".to_owned()
            } else {
                drivers.join(" ")
            },
            ohms(load.nominal),
            ohms(load.least),
            load.least_at
                .map_or_else(String::new, |at| format!("{:.0}", at.0)),
            ohms(load.minimum),
            ohms(load.dc_resistance),
            load.power
                .map_or_else(String::new, |power| format!("{:.0}", power.0)),
            load.remark.clone().unwrap_or_default(),
        ]);
    }
    let mut drivers = table(&[
        "Speaker",
        "Name",
        "From",
        "W",
        "Phase",
        "No bass below Hz",
        "Lead loss dB",
        "Silent because",
    ]);
    for (id, driver) in &study.drivers {
        let phase = match driver.in_phase {
            _ if driver.coils_oppose => "coils oppose",
            Some(true) => "in phase",
            Some(false) => "reversed",
            None => "",
        };
        drivers.add_row([
            tag(id),
            sheet.parts.get(id).map_or("", |part| part.name()).to_owned(),
            driver
                .channel
                .map_or_else(String::new, |(part, channel)| format!("{} {channel}", tag(&part))),
            format!("{:.0}", driver.power.0),
            phase.to_owned(),
            driver
                .high_pass
                .map_or_else(String::new, |from| format!("{:.0}", from.0)),
            format!("{:.2}", driver.lead_loss.0.abs()),
            driver
                .gap
                .as_ref()
                .map_or_else(String::new, |gap| gap.what.clone()),
        ]);
    }
    Ok(Report::clean(print(&channels) + "\n" + &print(&drivers)))
}
