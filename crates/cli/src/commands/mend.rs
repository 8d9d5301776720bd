//! `mend`: what would clear each finding and what that would bring; one mend made, or all that need no choice.

use super::check::{counts, place};
use crate::args::MendCall;
use crate::input::{Opened, json, open, unwritten};
use crate::speech::{tell, text};
use crate::table::{print, table, wrap};
use crate::{Done, Report};
use assist::mending::{self, Mended, Preview, mend_all, preview};
use checks::{Finding, Grade, Mend, analyse, mend_for};
use model::{Edit, SheetKind};
use serde_json::{Value, json};
use std::fmt::Write;
use words::say;

pub(crate) fn run(call: &MendCall) -> Result<Report, String> {
    let mut opened = open(&call.job)?;
    // Judged under the conditions of the call, which are not written down.
    let own = std::mem::replace(&mut opened.job.settings, opened.settings.clone());
    let findings = analyse(&opened.sheet(), &opened.settings).findings;
    let (edit, text) = if call.all {
        let mended = mend_all(&opened.job, opened.kind);
        let text = all(call, &opened, &mended)?;
        (Some(mended.edit), text)
    } else if let Some(number) = call.finding {
        let (finding, mend) = chosen(call, &findings, number)?;
        let does = preview(&opened.job, opened.kind, &findings, &mend.edit);
        let text = one(call, finding, mend, &does)?;
        let edit = mend_for(&opened.job, opened.kind, &mend.edit);
        (Some(edit), text)
    } else {
        (None, list(call, &opened, &findings)?)
    };
    finish(call, opened, own, edit, text)
}

/// Writes the job where that is asked for, and says what is left by the exit code.
fn finish(
    call: &MendCall,
    mut opened: Opened,
    own: model::Settings,
    edit: Option<Edit>,
    mut text: String,
) -> Result<Report, String> {
    if let Some(edit) = edit {
        opened.job.apply(edit);
    }
    let left = analyse(&opened.sheet(), &opened.settings).findings;
    opened.job.settings = own;
    if let Some(path) = call.output.as_ref().filter(|_| !call.dry_run) {
        let written = model::file::write(&opened.job);
        std::fs::write(path, written).map_err(|error| unwritten(path, &error))?;
        if !call.job.json {
            let _ = writeln!(text, "{}", tell(&say!("cli-written", file = path)));
        }
    }
    let is_grave = left.iter().any(|finding| finding.grade == Grade::Stop);
    if is_grave && !call.job.json {
        text.push_str(&wrap(&self::text("cli-care")));
    }
    let done = if is_grave { Done::Stop } else { Done::Clean };
    Ok(Report { text, done })
}

/// The mend that a call asks for.
fn chosen<'f>(
    call: &MendCall,
    findings: &'f [Finding],
    number: usize,
) -> Result<(&'f Finding, &'f Mend), String> {
    let finding = number.checked_sub(1).and_then(|at| findings.get(at));
    let finding = finding.ok_or_else(|| {
        tell(&say!(
            "cli-mend-no-finding",
            number = number,
            count = findings.len()
        ))
    })?;
    let mend = call.way.checked_sub(1).and_then(|at| finding.mends.get(at));
    mend.map(|mend| (finding, mend)).ok_or_else(|| {
        tell(&say!(
            "cli-mend-no-way",
            number = number,
            count = finding.mends.len(),
            what = &finding.what
        ))
    })
}

/// What a mend does, line by line.
fn does(mend: &Mend, preview: &Preview) -> String {
    let mut lines: Vec<String> = preview.said().iter().map(tell).collect();
    if let Some(choice) = &mend.choice {
        lines.push(tell(&say!("mending-choice", choice = choice)));
    }
    lines.join("\n")
}

fn list(call: &MendCall, opened: &Opened, findings: &[Finding]) -> Result<String, String> {
    let look = |mend: &Mend| preview(&opened.job, opened.kind, findings, &mend.edit);
    if call.job.json {
        let all: Vec<Value> = (1..)
            .zip(findings)
            .map(|(number, finding): (usize, _)| {
                let mends = finding.mends.iter().map(|mend| mend_json(mend, &look(mend)));
                let mut told = json!(finding);
                told["number"] = number.into();
                told["mends"] = mends.collect();
                told
            })
            .collect();
        return json(&all);
    }
    let sheet = opened.sheet();
    let mut text = heading(opened);
    if findings.is_empty() {
        text.push_str(&(tell(&say!("cli-no-findings")) + "\n"));
        return Ok(text);
    }
    let mut rows = table(&["number", "grade", "where", "mend", "does"]);
    for (number, finding) in (1..).zip(findings) {
        let number: usize = number;
        let first = [number.to_string(), grade(finding), place(&sheet, finding)];
        if finding.mends.is_empty() {
            let [number, grade, place] = first;
            rows.add_row([
                number,
                grade,
                place,
                tell(&finding.what),
                self::text("cli-mend-none"),
            ]);
            continue;
        }
        for (at, mend) in finding.mends.iter().enumerate() {
            let [number, grade, place] = if at == 0 {
                first.clone()
            } else {
                [format!("{number} --way {}", at + 1), String::new(), String::new()]
            };
            rows.add_row([
                number,
                grade,
                place,
                tell(&mend.edit.name.said()),
                does(mend, &look(mend)),
            ]);
        }
    }
    text.push_str(&print(&rows));
    let _ = writeln!(text, "\n{}", counts(findings));
    Ok(text)
}

fn one(call: &MendCall, finding: &Finding, mend: &Mend, preview: &Preview) -> Result<String, String> {
    if call.job.json {
        let mut told = mend_json(mend, preview);
        told["finding"] = json!(finding);
        told["before"] = json!(preview.before);
        told["after"] = json!(preview.after);
        return json(&told);
    }
    let counted = tell(&mending::counts(preview.before, preview.after));
    let (said, what) = (tell(&mend.edit.name.said()), tell(&finding.what));
    Ok(wrap(&format!(
        "{said}\n{what}\n{}\n{counted}\n",
        does(mend, preview)
    )))
}

/// What holds of this sheet before anything of it is mended.
fn heading(opened: &Opened) -> String {
    let found = (opened.kind == SheetKind::Found).then(|| wrap(&self::text("mending-found")));
    opened.heading() + "\n" + &found.unwrap_or_default()
}

fn all(call: &MendCall, opened: &Opened, mended: &Mended) -> Result<String, String> {
    if call.job.json {
        let steps = mended.steps.iter().map(|step| {
            let mut told = json!(step.finding);
            told["mend"] = json!(step.said);
            told
        });
        let left = mended.left.iter().map(|left| {
            let mut told = json!(left.finding);
            told["why"] = json!(left.said());
            told
        });
        return json(&json!({
            "before": json!(mended.before),
            "after": json!(mended.after),
            "steps": steps.collect::<Vec<_>>(),
            "left": left.collect::<Vec<_>>(),
        }));
    }
    let mut text = heading(opened);
    if mended.steps.is_empty() {
        let _ = writeln!(text, "{}", self::text("cli-mend-nothing"));
    } else {
        let _ = writeln!(text, "{}", self::text("cli-mend-steps"));
        let mut rows = table(&["number", "mend", "finding"]);
        for (number, step) in (1..).zip(&mended.steps) {
            let number: usize = number;
            rows.add_row([number.to_string(), tell(&step.said), tell(&step.finding.what)]);
        }
        text.push_str(&print(&rows));
    }
    if !mended.left.is_empty() {
        let _ = writeln!(text, "\n{}", self::text("cli-mend-left"));
        let mut rows = table(&["grade", "what", "why"]);
        for left in &mended.left {
            rows.add_row([grade(&left.finding), tell(&left.finding.what), tell(&left.said())]);
        }
        text.push_str(&print(&rows));
    }
    let counted = tell(&mending::counts(mended.before, mended.after));
    let _ = writeln!(text, "\n{counted}");
    Ok(text)
}

fn grade(finding: &Finding) -> String {
    let mark = if finding.undecided { "?" } else { "" };
    tell(&finding.grade.said()) + mark
}

fn mend_json(mend: &Mend, preview: &Preview) -> Value {
    json!({
        "mend": mend.edit.name.said(),
        "choice": mend.choice,
        "clears": preview.clears,
        "brings": preview.brings,
    })
}
