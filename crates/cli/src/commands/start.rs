//! `start`: a whole planned sheet from one line of text, or from a file that tells a thing on each line.

use crate::args::StartCall;
use crate::input::{json, unwritten, utf8_of};
use crate::speech::{tell, text, words};
use crate::table::wrap;
use crate::{Done, Report};
use assist::starting::{self, NotUnderstood, Started, Trouble, Understood};
use checks::Grade;
use model::{Job, SheetKind};
use serde_json::{Value, json};
use std::fmt::Write;
use words::{Saying, Unit, figure, precise, say};

pub(crate) fn run(call: &StartCall) -> Result<Report, String> {
    let wish = match (&call.wish, &call.form) {
        (_, Some(path)) => utf8_of(path)?,
        (Some(wish), None) => wish.clone(),
        (None, None) => String::new(),
    };
    let understood = starting::read(&wish);
    if !understood.not.is_empty() {
        return Err(pointed(&wish, &understood.not));
    }
    let mut job = Job::default();
    let started = starting::start(&understood.wish, &job, SheetKind::Plan, words())
        .map_err(|all| refused(&all, &[]))?;
    if !started.troubles.is_empty() && !call.anyway {
        let offers: Vec<Saying> = starting::offers(&understood.wish, &job, SheetKind::Plan, words())
            .into_iter()
            .map(|it| it.what)
            .collect();
        let mut all = refused(&started.troubles, &offers);
        let _ = write!(all, "{}", text("cli-start-anyway"));
        return Err(all);
    }
    job.apply(started.edit.clone());
    if let Some(sheet) = job.sheets.get_mut(&SheetKind::Plan) {
        for (id, at) in drawing::arrange(sheet) {
            if let Some(part) = sheet.parts.get_mut(&id) {
                part.at = Some(at);
            }
        }
    }
    let written = if call.text {
        model::text::print(&job)
    } else {
        model::file::write(&job)
    };
    let stop = started.analysis.findings.iter().any(|it| it.grade == Grade::Stop);
    let done = if stop { Done::Stop } else { Done::Clean };
    let mut out = String::new();
    if let Some(path) = &call.output {
        std::fs::write(path, &written).map_err(|error| unwritten(path, &error))?;
    }
    if call.json {
        return Ok(Report {
            text: json(&as_json(&understood, &started, &job))?,
            done,
        });
    }
    // Without a file to write to, the text form is what was asked for.
    if call.text && call.output.is_none() {
        return Ok(Report { text: written, done });
    }
    summary(&understood, &started, &mut out);
    if let Some(path) = &call.output {
        let _ = writeln!(out, "{}", tell(&say!("cli-written", file = path)));
    }
    let _ = writeln!(out, "{}", wrap(&text("cli-start-care")).trim_end());
    Ok(Report { text: out, done })
}

/// What was not understood: the line it stands in, the word marked, and what would do.
fn pointed(wish: &str, not: &[NotUnderstood]) -> String {
    let mut out = String::new();
    for it in not {
        let start = wish
            .get(..it.at.start)
            .and_then(|before| before.rfind('\n'))
            .map_or(0, |at| at + 1);
        let line = wish
            .get(start..)
            .and_then(|rest| rest.lines().next())
            .unwrap_or_default();
        let before = wish.get(start..it.at.start).unwrap_or_default().chars().count();
        let long = it.text.chars().count().max(1);
        let _ = writeln!(out, "{line}\n{}{}", " ".repeat(before), "^".repeat(long));
        let _ = writeln!(out, "{}", wrap(&tell(&it.why)).trim_end());
    }
    out.push_str(&text("cli-start-nothing"));
    out
}

fn refused(troubles: &[Trouble], offers: &[Saying]) -> String {
    let mut out = text("cli-start-refused") + "\n";
    for it in troubles {
        let _ = writeln!(out, "{}", wrap(&format!("– {}", tell(&it.what))).trim_end());
        let _ = writeln!(out, "{}", wrap(&format!("  → {}", tell(&it.instead))).trim_end());
    }
    for it in offers {
        let _ = writeln!(out, "{}", wrap(&format!("→ {}", tell(it))).trim_end());
    }
    out
}

fn summary(understood: &Understood, started: &Started, out: &mut String) {
    let sums = started.sums();
    let mut list = |title: &str, all: Vec<String>| {
        if all.is_empty() {
            return;
        }
        let _ = writeln!(out, "{}", text(title));
        for it in all {
            let _ = writeln!(out, "{}", wrap(&format!("– {it}")).trim_end());
        }
        out.push('\n');
    };
    let phrases = starting::phrases(&understood.wish, words().reader().language);
    list(
        "cli-start-understood",
        phrases.into_iter().map(|it| it.text).collect(),
    );
    list("cli-start-chosen", started.choices.iter().map(tell).collect());
    list("cli-start-assumed", started.assumed.iter().map(tell).collect());
    list(
        "cli-start-troubles",
        started.troubles.iter().map(|it| tell(&it.what)).collect(),
    );
    let tidy = started
        .analysis
        .findings
        .iter()
        .filter(|it| it.grade == Grade::Tidy);
    list("cli-start-tidy", tidy.map(|it| tell(&it.what)).collect());
    let line = say!(
        "start-sums",
        parts = sums.parts,
        runs = sums.runs,
        draw = figure(sums.draw.0, Unit::Plain("A")),
        available = figure(sums.available.0, Unit::Plain("A")),
        wire = figure(sums.wire.0, Unit::Metre),
        copper = precise(sums.copper, Unit::Plain("kg"), 1)
    );
    let _ = writeln!(out, "{}", wrap(&tell(&line)).trim_end());
}

fn as_json(understood: &Understood, started: &Started, job: &Job) -> Value {
    let sums = started.sums();
    let told = |all: &[Saying]| -> Value { all.iter().map(tell).collect() };
    let phrases = starting::phrases(&understood.wish, words().reader().language);
    let job: Value = serde_json::from_str(&model::file::write(job)).unwrap_or_default();
    json!({
        "understood": phrases.into_iter().map(|it| it.text).collect::<Vec<_>>(),
        "choices": told(&started.choices),
        "assumed": told(&started.assumed),
        "troubles": started
            .troubles
            .iter()
            .map(|it| json!({"what": tell(&it.what), "instead": tell(&it.instead)}))
            .collect::<Vec<_>>(),
        "findings": started.analysis.findings,
        "parts": sums.parts,
        "runs": sums.runs,
        "draw-A": sums.draw.0,
        "available-A": sums.available.0,
        "wire-m": sums.wire.0,
        "copper-kg": sums.copper,
        "job": job,
    })
}
