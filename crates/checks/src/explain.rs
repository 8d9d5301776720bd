//! The page of a check: the same text on screen, in `docs/checks` and on the command line.

use crate::finding::Grade;
use crate::registry::{CHECKS, Check, CheckGroup, check_named};
use model::job::Profile;
use ordered::Sort as _;
use std::fmt::Write;
use words::{Figure, Saying, Words, say};

/// The usual cautions, which go with everything of grade Stop.
#[must_use]
pub fn care() -> Saying {
    say!("care")
}

/// Checks with findings that no edit of the sheet clears, or none that the tool could answer for; their pages say which.
const UNMENDED: &[&str] = &[
    "fuse-breaking-capacity",
    "fuse-order",
    "fuse-undersized",
    "hot-joint",
    "no-feed",
    "not-known",
    "return-through-shield",
    "short-never-clears",
    "signal-beside-feed",
    "standing-drain",
    "supply-collapse",
    "terminal-overfull",
    "turn-on-overloaded",
    "uneven-parallel",
    "wire-before-fuse",
];

/// One limit that a check reads, for the reader.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitLine {
    /// Its name in the settings.
    pub key: &'static str,
    /// Its value in each profile that has one, with unit.
    pub values: Vec<(Profile, Figure)>,
    /// What it limits.
    pub what: Saying,
    /// Where it comes from in each profile.
    pub sources: Vec<(Profile, Saying)>,
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
    /// When it holds: the rest of a sentence.
    pub holds_when: Saying,
    /// What it looks for.
    pub looks_for: Saying,
    /// Why it matters.
    pub why: Saying,
    /// A job that fails it, its marks shown as comments.
    pub example: &'static str,
    /// The same job put right.
    pub instead: &'static str,
    /// Which of its findings the tool proposes no mend for, and why.
    pub unmended: Option<Saying>,
    /// Where the rule comes from.
    pub source: Saying,
    /// The cautions, for checks of grade Stop.
    pub care: Option<Saying>,
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
        holds_when: check.holds_when(),
        looks_for: check.looks_for(),
        why: check.why(),
        example: check.example,
        instead: check.instead,
        unmended: UNMENDED.contains(&check.name).then(|| check.unmended()),
        source: check.source(),
        care: (check.grade == Grade::Stop).then(care),
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
    /// The page as Markdown, in the reader's words.
    #[must_use]
    pub fn markdown(&self, words: &Words) -> String {
        let mut out = String::new();
        let head = say!(
            "explain-head",
            grade = self.grade.said(),
            group = self.group.said(),
            since = self.since,
        );
        let holds = say!("explain-holds", holds = &self.holds_when);
        let _ = writeln!(out, "# {}\n", self.name);
        let _ = writeln!(out, "{}\n", words.say(&head));
        let _ = writeln!(out, "{}\n", words.say(&holds));
        let mut section = |title: &str, text: &str| {
            let _ = writeln!(out, "## {}\n\n{text}\n", words.text(title));
        };
        section("explain-looks", &words.say(&self.looks_for));
        section("explain-why", &words.say(&self.why));
        let example = format!(
            "```text\n{}\n```\n\n{}",
            self.example.trim(),
            words.text("explain-marks")
        );
        section("explain-example", &example);
        section(
            "explain-instead",
            &format!("```text\n{}\n```", self.instead.trim()),
        );
        if let Some(unmended) = &self.unmended {
            section("explain-unmended", &words.say(unmended));
        }
        if let Some(care) = &self.care {
            section("explain-care", &words.say(care));
        }
        if !self.limits.is_empty() {
            section("explain-limits", &self.table(words));
        }
        let _ = writeln!(
            out,
            "## {}\n\n{}",
            words.text("explain-source"),
            words.say(&self.source)
        );
        out
    }
    fn table(&self, words: &Words) -> String {
        let mut out = format!(
            "| {} | {} | {} | {} |\n|---|---|---|---|",
            words.text("explain-limit"),
            words.text("explain-what"),
            words.text("explain-value"),
            words.text("explain-source-column"),
        );
        for limit in &self.limits {
            let values: Vec<String> = limit
                .values
                .iter()
                .map(|(profile, value)| {
                    words.say(&say!(
                        "explain-value-in",
                        value = *value,
                        profile = profile.said()
                    ))
                })
                .collect();
            let sources: Vec<String> = limit
                .sources
                .iter()
                .map(|(profile, source)| {
                    words.say(&say!(
                        "explain-source-in",
                        profile = profile.said(),
                        source = source
                    ))
                })
                .collect();
            let _ = write!(
                out,
                "\n| `{}` | {} | {} | {} |",
                limit.key,
                words.say(&limit.what),
                values.join("; "),
                sources.join("; ")
            );
        }
        out
    }
}
