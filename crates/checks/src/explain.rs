//! The page of a check: the same text on screen, in `docs/checks` and on the command line.

use crate::finding::Grade;
use crate::registry::{CHECKS, Check, CheckGroup, check_named};
use model::job::Profile;
use ordered::Sort as _;
use std::fmt::Write;

/// The usual cautions, which go with everything of grade Stop.
pub const CARE: &str = "Isolate the battery before any work. Keep away from airbag and high-voltage circuits. Follow \
the vehicle maker's instructions and the law of the place, and let a qualified person decide. The tool knows the \
drawing, not the vehicle.";

/// One limit that a check reads, for the reader.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitLine {
    /// Its name in the settings.
    pub key: &'static str,
    /// Its value in each profile that has one, with unit.
    pub values: Vec<(Profile, String)>,
    /// What it limits.
    pub what: String,
    /// Where it comes from, profile by profile.
    pub sources: Vec<String>,
}

/// Everything there is to read about a check.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// Its name.
    pub name: &'static str,
    /// Its grade.
    pub grade: Grade,
    /// What it is about.
    pub group: CheckGroup,
    /// When it holds, in one line.
    pub holds_when: &'static str,
    /// What it looks for.
    pub looks_for: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// A job that fails it, its marks shown as comments.
    pub example: &'static str,
    /// The same job put right.
    pub instead: &'static str,
    /// Where the rule comes from.
    pub source: &'static str,
    /// The cautions, for checks of grade Stop.
    pub care: Option<&'static str>,
    /// The limits it reads.
    pub limits: Vec<LimitLine>,
    /// First version that has it.
    pub since: &'static str,
}

/// The explanation of a check.
#[must_use]
pub fn explain(check: &Check) -> Explanation {
    Explanation {
        name: check.name,
        grade: check.grade,
        group: check.group,
        holds_when: check.holds_when,
        looks_for: check.looks_for,
        why: check.why,
        example: check.example,
        instead: check.instead,
        source: check.source,
        care: (check.grade == Grade::Stop).then_some(CARE),
        limits: check.limits.iter().map(|key| crate::limits::line(key)).collect(),
        since: check.since,
    }
}

/// The explanation of the check of this name.
#[must_use]
pub fn explanation_of(name: &str) -> Option<Explanation> {
    check_named(name).map(explain)
}

/// The explanations of all checks, group by group, in each by name.
#[must_use]
pub fn explain_all() -> Vec<Explanation> {
    let mut all: Vec<Explanation> = CHECKS.iter().map(|check| explain(check)).collect();
    all.order_by_key(|explanation| (explanation.group, explanation.name));
    all
}

impl Explanation {
    /// The page as Markdown.
    #[must_use]
    pub fn markdown(&self) -> String {
        let mut out = String::new();
        let _ = writeln!(out, "# {}\n", self.name);
        let _ = writeln!(
            out,
            "**{}** · {} · since {}\n",
            self.grade.title(),
            self.group.title(),
            self.since
        );
        let _ = writeln!(out, "Holds when {}.\n", self.holds_when);
        let _ = writeln!(out, "## What it looks for\n\n{}\n", paragraphs(self.looks_for));
        let _ = writeln!(out, "## Why it matters\n\n{}\n", paragraphs(self.why));
        let _ = writeln!(out, "## Example\n\n```text\n{}\n```\n", self.example.trim());
        out.push_str("Lines that end in `#~` are marked by the checks named there.\n\n");
        let _ = writeln!(out, "## Instead\n\n```text\n{}\n```\n", self.instead.trim());
        if let Some(care) = self.care {
            let _ = writeln!(out, "## Care\n\n{care}\n");
        }
        if !self.limits.is_empty() {
            out.push_str("## Limits\n\n| limit | what | value | source |\n|---|---|---|---|\n");
            for limit in &self.limits {
                let values: Vec<String> = limit
                    .values
                    .iter()
                    .map(|(profile, value)| format!("{value} ({})", profile.title()))
                    .collect();
                let _ = writeln!(
                    out,
                    "| `{}` | {} | {} | {} |",
                    limit.key,
                    limit.what,
                    values.join("; "),
                    limit.sources.join("; ")
                );
            }
            out.push('\n');
        }
        let _ = writeln!(out, "## Source\n\n{}", paragraphs(self.source));
        out
    }
}

/// The text with the line breaks of the source file taken out; an empty line stays a break between paragraphs.
fn paragraphs(text: &str) -> String {
    let all: Vec<String> = text
        .trim()
        .split("\n\n")
        .map(|paragraph| paragraph.split_whitespace().collect::<Vec<_>>().join(" "))
        .collect();
    all.join("\n\n")
}
