//! `break`: what happens when something fails, and in which order.

use crate::args::BreakCall;
use crate::commands::solve::number;
use crate::input::{json, open};
use crate::speech::tell;
use crate::table::{print, table};
use crate::{Done, Report};
use circuit::faults::{Certainty, Faults};
use model::breaks::Break;
use std::fmt::Write;
use words::{Unit, figure, say};

pub(crate) fn run(call: &BreakCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let sheet = opened.sheet();
    let breaks: Vec<Break> = call
        .breaks
        .iter()
        .map(|written| {
            let read = Break::read(written, &sheet);
            read.map_err(|why| tell(&say!("cli-break-wrong", text = written, why = why)))
        })
        .collect::<Result<_, _>>()?;
    let course = Faults::new(&sheet, &opened.settings)
        .course(&breaks)
        .map_err(|why| tell(&why))?;
    let done = if course.outcome.is_grave() {
        Done::Stop
    } else {
        Done::Clean
    };
    if call.job.json {
        return Ok(Report {
            text: json(&course)?,
            done,
        });
    }
    let mut text = format!("{}\n", opened.heading());
    for broken in &breaks {
        let _ = writeln!(text, "{}", tell(&broken.said(&sheet)));
    }
    if let Some(fault) = &course.fault {
        let _ = writeln!(text, "{}", tell(&say!("cli-break-draws", current = fault.said())));
    }
    let _ = writeln!(text, "{}", tell(&course.outcome.said(&sheet)));
    if !course.events.is_empty() {
        let mut events = table(&["when", "happens", "certain"]);
        for event in &course.events {
            events.add_row([
                tell(&event.time.said()),
                tell(&event.said(&sheet)),
                tell(&event.certainty.said()),
            ]);
        }
        let _ = write!(text, "\n{}", print(&events));
    }
    // The runs that warm by it, hottest first.
    let mut warm: Vec<_> = course
        .runs
        .iter()
        .filter_map(|(id, it)| Some((sheet.runs.get(id)?, it)))
        .filter(|(_, it)| it.hottest.0 > it.ambient.0 + 5.0)
        .collect();
    warm.sort_by(|a, b| b.1.hottest.0.total_cmp(&a.1.hottest.0));
    if !warm.is_empty() {
        let mut runs = table(&["run", "hottest", "bears", "damaged"]);
        for (run, it) in warm {
            runs.add_row([
                run.tag.clone(),
                number(it.hottest.0, 0),
                number(it.limit.0, 0),
                if it.damaged == Certainty::No {
                    String::new()
                } else {
                    tell(&it.damaged.said())
                },
            ]);
        }
        let _ = write!(text, "\n{}", print(&runs));
    }
    for it in &course.let_through {
        let device = sheet
            .parts
            .get(&it.device.part)
            .map_or("", |part| part.tag.as_str());
        let tag = match &it.device.output {
            Some(output) => format!("{device}.{output}"),
            None => device.to_owned(),
        };
        let squared = |value: f64| figure(value, Unit::Plain("A²s"));
        let told = say!(
            "cli-break-lets",
            device = tag,
            least = squared(it.squared.least),
            most = squared(it.squared.most),
        );
        let _ = writeln!(text, "{}", tell(&told));
    }
    if course.fault.is_some() {
        let heat = figure(course.heat, Unit::Plain("J"));
        let _ = writeln!(text, "{}", tell(&say!("cli-break-heat", heat = heat)));
    }
    if done == Done::Stop {
        let _ = writeln!(text, "\n{}", tell(&say!("break-caution")));
    }
    Ok(Report { text, done })
}
