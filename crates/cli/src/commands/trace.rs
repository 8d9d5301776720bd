//! `trace`: what feeds a part, through which devices, and how its return gets back.

use crate::Report;
use crate::args::TraceCall;
use crate::input::{json, open};
use circuit::{Circuit, DeviceRef, FeedWay, ReturnWay};
use model::{PartId, RunId, Sheet};
use ordered::OrderedMap;
use std::fmt::Write;

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
        "nothing".to_owned()
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
    if tags.is_empty() {
        "no device that every way crosses".to_owned()
    } else {
        tags.join(", then ")
    }
}

fn feed(sheet: &Sheet, way: &FeedWay, out: &mut String) {
    let _ = writeln!(
        out,
        "  fed at {} from {} over {}: {:.2} m{}; protected by {}",
        way.terminal,
        part(sheet, way.source),
        runs(sheet, &way.runs),
        way.length.0,
        if way.meshed { ", one of several ways" } else { "" },
        devices(sheet, &way.devices)
    );
}

fn back(sheet: &Sheet, way: &ReturnWay, out: &mut String) {
    if !way.complete {
        let _ = writeln!(out, "  no return to {}", part(sheet, way.source));
        return;
    }
    let _ = write!(
        out,
        "  returns to {} over {}: ground lead {:.2} m",
        part(sheet, way.source),
        runs(sheet, &way.runs),
        way.lead_length.0
    );
    if let Some(resistance) = way.resistance {
        let _ = write!(out, ", {:.2} mΩ in all", resistance.0 * 1000.0);
    }
    if way.through_body {
        let grounds: Vec<String> = way.ground_points.iter().map(|id| part(sheet, *id)).collect();
        let _ = write!(out, ", through the body at {}", grounds.join(", "));
    }
    if !way.devices.is_empty() {
        let _ = write!(out, "; in it: {}", devices(sheet, &way.devices));
    }
    // An isolated input lets microamperes through, which nobody asks about.
    let shields: Vec<&RunId> = way
        .shields
        .iter()
        .filter(|(_, current)| current.0 > 1e-3)
        .map(|(run, _)| run)
        .collect();
    if !shields.is_empty() {
        let _ = write!(
            out,
            "; signal shields carry return current: {}",
            runs(sheet, shields)
        );
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
            format!(
                "there is no part {tag} on the sheet; there are {}",
                tags.join(" ")
            )
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
        text.push_str(match &call.part {
            Some(_) => "That part draws no supply current, or nothing feeds it.\n",
            None => "No part on the sheet draws supply current.\n",
        });
    }
    for (id, circuit) in chosen {
        let name = sheet.parts.get(id).map_or("", |part| part.name());
        let _ = write!(text, "{} {name}", part(&sheet, *id));
        if let Some(drop) = circuit.drop {
            let _ = write!(
                text,
                ": loses {:.0} mV at burst, feed and return together",
                drop.0 * 1000.0
            );
        }
        text.push('\n');
        if circuit.feeds.is_empty() {
            text.push_str("  nothing feeds it\n");
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
