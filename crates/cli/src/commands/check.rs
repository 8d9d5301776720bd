//! `check`: what is dangerous, wrong or untidy.

use crate::args::CheckCall;
use crate::input::{json, open};
use crate::table::{print, table};
use crate::{Done, Report};
use checks::{Finding, Grade};
use model::Sheet;
use std::fmt::Write;

/// Tags of what a finding marks, foremost first.
fn place(sheet: &Sheet, finding: &Finding) -> String {
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
    let words = words::Words::english();
    let mut text = opened.heading() + "\n";
    if analysis.findings.is_empty() {
        text.push_str("No findings. The checks know the drawing, not the vehicle: have a qualified person look at it.\n");
        return Ok(Report { text, done });
    }
    let mut rows = table(&["Grade", "Check", "Where", "What"]);
    for finding in &analysis.findings {
        let grade = if finding.undecided {
            format!("{}?", finding.grade.title())
        } else {
            finding.grade.title().into()
        };
        let mut what = words.say(&finding.what);
        if call.remedies {
            let _ = write!(what, "\n→ {}", words.say(&finding.remedy));
        }
        if !finding.assumed.is_empty() {
            let assumed: Vec<String> = finding.assumed.iter().map(|it| words.say(it)).collect();
            let _ = write!(what, "\n(assumed: {})", assumed.join(", "));
        }
        rows.add_row([grade, finding.check.to_owned(), place(&sheet, finding), what]);
    }
    text.push_str(&print(&rows));
    let count = |grade: Grade| analysis.findings.iter().filter(|f| f.grade == grade).count();
    let undecided = analysis.findings.iter().filter(|f| f.undecided).count();
    let _ = writeln!(
        text,
        "\n{} Stop, {} Fix, {} Tidy; {undecided} of them undecided (marked ?).",
        count(Grade::Stop),
        count(Grade::Fix),
        count(Grade::Tidy)
    );
    if matches!(done, Done::Stop) {
        text.push_str(
            "Before any work: isolate the battery, keep away from airbag and high-voltage circuits, follow the vehicle\n\
             maker's instructions and the law of the place, and let a qualified person decide.\n",
        );
    }
    Ok(Report { text, done })
}
