//! `meter`: what a meter reads between two points, or at every terminal against battery negative.

use crate::Report;
use crate::args::MeterCall;
use crate::input::{json, open};
use crate::speech::{tell, text as text_of};
use crate::table::{print, table};
use assist::finding::read_point;
use circuit::{METER_LEADS, Meter, Probe, Shown, Tones};
use model::breaks::Break;
use model::{PartKind, Role, Sheet, TerminalRef};
use serde::Serialize;
use words::{Unit, precise, say};

/// One reading.
#[derive(Serialize)]
struct Read {
    red: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    black: Option<String>,
    measured: &'static str,
    unit: &'static str,
    /// Nothing for an open circuit.
    number: Option<f64>,
    /// Whether nothing ties the two points together.
    open: bool,
}

fn read(meter: &Meter, sheet: &Sheet, probe: &Probe) -> Option<Read> {
    let shown = meter.read(probe)?;
    let (red, black, measured, unit) = match probe {
        Probe::Volts(red, black) => (sheet.written(red), Some(black), "volts", "V"),
        Probe::Tone(red, black) => (sheet.written(red), Some(black), "tone", "V"),
        Probe::Ohms(red, black) => (sheet.written(red), Some(black), "ohms", "Ω"),
        Probe::Amps(run) => (
            sheet.runs.get(run).map(|run| run.tag.clone()).unwrap_or_default(),
            None,
            "amps",
            "A",
        ),
    };
    Some(Read {
        red,
        black: black.map(|black| sheet.written(black)),
        measured,
        unit,
        number: shown.number(probe),
        open: shown == Shown::Open,
    })
}

fn number(read: &Read) -> String {
    match read.number {
        Some(number) => crate::commands::solve::number(number, if number.abs() < 1.0 { 3 } else { 2 }),
        None => text_of("fault-open"),
    }
}

/// The probes that a call asks for.
fn probes(sheet: &Sheet, call: &MeterCall) -> Result<Vec<Probe>, String> {
    match (&call.red, &call.black) {
        (Some(red), Some(black)) => {
            let red = read_point(sheet, red).map_err(|said| tell(&said))?;
            let black = read_point(sheet, black).map_err(|said| tell(&said))?;
            Ok(vec![
                Probe::Volts(red.clone(), black.clone()),
                Probe::Tone(red.clone(), black.clone()),
                Probe::Ohms(red, black),
            ])
        }
        (Some(run), None) => match sheet.run_by_tag(run) {
            Some((id, _)) => Ok(vec![Probe::Amps(id)]),
            None => Err(tell(&say!("fault-no-points", text = run))),
        },
        _ => Ok(everywhere(sheet)),
    }
}

/// Every terminal of the supply against battery negative, and the tone at every output and speaker.
fn everywhere(sheet: &Sheet) -> Vec<Probe> {
    let battery = sheet
        .parts
        .iter()
        .find(|(_, part)| matches!(part.is, PartKind::Battery(_)));
    let Some((battery, _)) = battery else {
        return Vec::new();
    };
    let black = TerminalRef::new(*battery, "-");
    let mut all = Vec::new();
    for (&id, part) in &sheet.parts {
        for terminal in part.terminals() {
            let red = TerminalRef {
                part: id,
                terminal: terminal.name.clone(),
            };
            match terminal.role {
                Role::LineIn(_) | Role::LineOut(_) | Role::LevelIn { .. } | Role::SpeakerThrough => {}
                Role::SpeakerOut { positive, .. } | Role::Coil { positive, .. } => {
                    let minus = terminal
                        .name
                        .as_str()
                        .strip_suffix('+')
                        .map(|stem| format!("{stem}-"));
                    if let (true, Some(minus)) = (positive, minus) {
                        all.push(Probe::Tone(red, TerminalRef::new(id, minus)));
                    }
                }
                _ if red != black => all.push(Probe::Volts(red, black.clone())),
                _ => {}
            }
        }
    }
    all
}

pub(crate) fn run(call: &MeterCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let whole = opened.sheet();
    let tones = Tones::of(&whole, &opened.settings);
    let mut job = opened.job.clone();
    for written in &call.broken {
        let sheet = job.sheet(opened.kind).cloned().unwrap_or_default();
        let broken = Break::read(written, &sheet).map_err(|said| tell(&said))?;
        let edit = broken.edit(&job, opened.kind).map_err(|said| tell(&said))?;
        job.apply(edit);
    }
    let sheet = job.sheet(opened.kind).cloned().unwrap_or_default();
    let probes = probes(&sheet, call)?;
    let meter =
        Meter::new(&sheet, &opened.settings, Some(&tones)).ok_or_else(|| tell(&say!("fault-no-supply")))?;
    let reads: Vec<Read> = probes
        .iter()
        .filter_map(|probe| read(&meter, &sheet, probe))
        .collect();
    if call.job.json {
        return Ok(Report::clean(json(&reads)?));
    }
    let conditions = &opened.settings.conditions;
    let mut out = format!(
        "{} · {}, {}\n",
        opened.heading(),
        tell(&conditions.state.said()),
        tell(&conditions.duty.said())
    );
    if call.red.is_some() {
        for (probe, read) in probes.iter().zip(&reads) {
            let at = assist::finding::said_probe(&sheet, probe);
            let open = if read.open && read.number.is_some() {
                format!(" ({})", text_of("fault-open"))
            } else {
                String::new()
            };
            let unit = read.number.map(|_| format!(" {}", read.unit));
            let unit = unit.unwrap_or_default();
            out.push_str(&format!("{}: {}{unit}{open}\n", tell(&at), number(read)));
        }
        if probes.len() > 1 {
            let ohms = precise(METER_LEADS, Unit::Plain("Ω"), 1);
            out.push_str(&(tell(&say!("fault-leads", ohms = ohms)) + "\n"));
        }
        return Ok(Report::clean(out));
    }
    let mut list = table(&["point", "volts", "tone"]);
    for read in &reads {
        let shown = number(read);
        let cells = if read.measured == "tone" {
            [read.red.clone(), String::new(), shown]
        } else {
            [read.red.clone(), shown, String::new()]
        };
        list.add_row(cells);
    }
    out.push_str(&print(&list));
    Ok(Report::clean(out))
}
