//! `trace`: what feeds a part, through which devices, and how its return gets back.

use crate::Report;
use crate::args::TraceCall;
use crate::input::{json, open};
use crate::speech::{tell, text};
use circuit::{Circuit, DeviceRef, FeedWay, ReturnWay};
use model::{PartId, RunId, Sheet};
use ordered::OrderedMap;
use std::fmt::Write;
use words::{Unit, precise, say};

fn part(sheet: &Sheet, id: PartId) -> String {
    sheet
        .parts
        .get(&id)
        .map_or_else(|| id.to_string(), |part| part.tag.clone())
}

fn runs<'a>(sheet: &Sheet, ids: impl IntoIterator<Item = &'a RunId>) -> String {
    let tags: Vec<&str> = ids
        .into_iter()
        .filter_map(|id| sheet.runs.get(id))
        .map(|run| run.tag.as_str())
        .collect();
    if tags.is_empty() {
        text("list-nothing")
    } else {
        tags.join(" ")
    }
}

fn devices(sheet: &Sheet, all: &[DeviceRef]) -> String {
    let tags: Vec<String> = all
        .iter()
        .map(|device| match &device.output {
            Some(output) => format!("{}.{output}", part(sheet, device.part)),
            None => part(sheet, device.part),
        })
        .collect();
    let mut tags = tags.into_iter();
    let Some(first) = tags.next() else {
        return text("cli-no-device");
    };
    tags.fold(first, |first, second| {
        tell(&say!("cli-then", first = first, second = second))
    })
}

fn feed(sheet: &Sheet, way: &FeedWay, out: &mut String) {
    let (source, over) = (part(sheet, way.source), runs(sheet, &way.runs));
    let length = precise(way.length.0, Unit::Metre, 2);
    let by = devices(sheet, &way.devices);
    let told = say!(
        "cli-fed",
        terminal = &way.terminal,
        source = source,
        runs = over,
        length = length,
        ways = if way.meshed { "several" } else { "one" },
        devices = by,
    );
    let _ = writeln!(out, "  {}", tell(&told));
}

fn back(sheet: &Sheet, way: &ReturnWay, out: &mut String) {
    if !way.complete {
        let none = say!("cli-no-return", source = part(sheet, way.source));
        let _ = writeln!(out, "  {}", tell(&none));
        return;
    }
    let returns = say!(
        "cli-returns",
        source = part(sheet, way.source),
        runs = runs(sheet, &way.runs),
        length = precise(way.lead_length.0, Unit::Metre, 2),
    );
    let _ = write!(out, "  {}", tell(&returns));
    if let Some(resistance) = way.resistance {
        let ohms = precise(resistance.0 * 1000.0, Unit::Plain("mΩ"), 2);
        out.push_str(&tell(&say!("cli-returns-ohms", ohms = ohms)));
    }
    if way.through_body {
        let grounds: Vec<String> = way.ground_points.iter().map(|id| part(sheet, *id)).collect();
        let through = if grounds.is_empty() {
            say!("cli-returns-through-body")
        } else {
            say!("cli-returns-body", grounds = grounds.join(", "))
        };
        out.push_str(&tell(&through));
    }
    if !way.devices.is_empty() {
        let in_it = devices(sheet, &way.devices);
        out.push_str(&tell(&say!("cli-returns-devices", devices = in_it)));
    }
    // An isolated input lets microamperes through, which nobody asks about.
    let shields: Vec<&RunId> = way
        .shields
        .iter()
        .filter(|(_, current)| current.0 > 1e-3)
        .map(|(run, _)| run)
        .collect();
    if !shields.is_empty() {
        let shields = runs(sheet, shields);
        out.push_str(&tell(&say!("cli-returns-shields", runs = shields)));
    }
    out.push('\n');
}

pub(crate) fn run(call: &TraceCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let sheet = opened.sheet();
    let study = circuit::study(&sheet, &opened.settings);
    let wanted = match &call.part {
        Some(tag) => Some(sheet.part_by_tag(tag).map(|(id, _)| id).ok_or_else(|| {
            let tags: Vec<&str> = sheet.parts.values().map(|part| part.tag.as_str()).collect();
            tell(&say!("cli-no-part", tag = tag, tags = tags.join(" ")))
        })?),
        None => None,
    };
    let chosen: OrderedMap<&PartId, &Circuit> = study
        .circuits
        .iter()
        .filter(|(id, _)| wanted.is_none_or(|wanted| wanted == **id))
        .collect();
    if call.job.json {
        let by_id: OrderedMap<String, &Circuit> =
            chosen.into_iter().map(|(id, it)| (id.to_string(), it)).collect();
        return Ok(Report::clean(json(&by_id)?));
    }
    let mut text = String::new();
    if chosen.is_empty() {
        text.push_str(&tell(&match &call.part {
            Some(_) => say!("cli-part-draws-nothing"),
            None => say!("cli-no-part-draws"),
        }));
        text.push('\n');
    }
    for (id, circuit) in chosen {
        let name = sheet
            .parts
            .get(id)
            .map_or_else(String::new, |part| tell(&part.said()));
        let tag = part(&sheet, *id);
        let head = match circuit.drop {
            Some(drop) => say!(
                "cli-loses",
                part = tag,
                name = name,
                drop = precise(drop.0 * 1000.0, Unit::Plain("mV"), 0),
            ),
            None => say!("cli-part-name", part = tag, name = name),
        };
        let _ = writeln!(text, "{}", tell(&head));
        if circuit.feeds.is_empty() {
            let _ = writeln!(text, "  {}", tell(&say!("cli-nothing-feeds")));
        }
        for way in &circuit.feeds {
            feed(&sheet, way, &mut text);
        }
        for way in &circuit.returns {
            back(&sheet, way, &mut text);
        }
    }
    Ok(Report::clean(text))
}
