//! `check`: what is dangerous, wrong or untidy.

use crate::args::CheckCall;
use crate::input::{json, open};
use crate::speech::tell;
use crate::table::{print, table, wrap};
use crate::{Done, Report};
use checks::{Finding, Grade};
use model::Sheet;
use std::fmt::Write;
use words::say;

/// Tags of what a finding marks, foremost first.
pub(super) fn place(sheet: &Sheet, finding: &Finding) -> String {
    let runs = finding
        .runs
        .iter()
        .filter_map(|id| sheet.runs.get(id))
        .map(|run| run.tag.as_str());
    let parts = finding
        .parts
        .iter()
        .filter_map(|id| sheet.parts.get(id))
        .map(|part| part.tag.as_str());
    let all: Vec<&str> = parts.chain(runs).collect();
    match all.len() {
        0..=4 => all.join(" "),
        more => format!("{} +{}", all.get(..3).unwrap_or_default().join(" "), more - 3),
    }
}

/// How many findings there are, by grade.
pub(super) fn counts(findings: &[Finding]) -> String {
    let counts = checks::summary_of(findings);
    tell(&say!(
        "cli-counts",
        stop = counts.stop,
        fix = counts.fix,
        tidy = counts.tidy,
        undecided = counts.undecided,
    ))
}

pub(crate) fn run(call: &CheckCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let sheet = opened.sheet();
    let analysis = checks::analyse(&sheet, &opened.settings);
    let done = if analysis.findings.iter().any(|f| f.grade == Grade::Stop) {
        Done::Stop
    } else {
        Done::Clean
    };
    if call.job.json {
        return Ok(Report {
            text: json(&analysis.findings)?,
            done,
        });
    }
    let mut text = opened.heading() + "\n";
    if analysis.findings.is_empty() {
        text.push_str(&(tell(&say!("cli-no-findings")) + "\n"));
        return Ok(Report { text, done });
    }
    let mut rows = table(&["grade", "check", "where", "what"]);
    for finding in &analysis.findings {
        let mut grade = tell(&finding.grade.said());
        if finding.undecided {
            grade.push('?');
        }
        let mut what = tell(&finding.what);
        if call.remedies {
            let _ = write!(what, "\n→ {}", tell(&finding.remedy));
        }
        if !finding.assumed.is_empty() {
            let assumed: Vec<String> = finding.assumed.iter().map(tell).collect();
            let _ = write!(
                what,
                "\n{}",
                tell(&say!("cli-assumed", properties = assumed.join(", ")))
            );
        }
        rows.add_row([grade, finding.check.to_owned(), place(&sheet, finding), what]);
    }
    text.push_str(&print(&rows));
    let _ = writeln!(text, "\n{}", counts(&analysis.findings));
    if matches!(done, Done::Stop) {
        text.push_str(&wrap(&tell(&say!("cli-care"))));
    }
    Ok(Report { text, done })
}
