//! Writes a lesson as its text, in one form: what was read and written once reads and writes the same for ever.

use crate::lesson::{Lesson, Version};
use crate::read::overlay_word;
use std::fmt::Write;

/// Most characters in a line of prose.
const WIDTH: usize = 116;

/// A text that stands in one line: line breaks in it become blanks.
fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Adds a text, its lines broken at blanks; the first line begins behind `head`, the others behind `indent` blanks.
fn prose(out: &mut String, head: &str, indent: usize, text: &str) {
    let mut column = head.chars().count();
    out.push_str(head);
    let mut first = true;
    for word in text.split_whitespace() {
        let length = word.chars().count();
        if !first && column + 1 + length > WIDTH {
            out.push('\n');
            out.extend(std::iter::repeat_n(' ', indent));
            column = indent;
        } else if !first {
            out.push(' ');
            column += 1;
        }
        out.push_str(word);
        column += length;
        first = false;
    }
    out.push('\n');
}

fn paragraphs(out: &mut String, word: &str, all: &[String]) {
    if all.is_empty() {
        return;
    }
    let _ = writeln!(out, "{word}");
    for (at, paragraph) in all.iter().enumerate() {
        if at > 0 {
            out.push('\n');
        }
        prose(out, "  ", 2, paragraph);
    }
}

/// A block's head: its word, a name, and tags.
fn put_names(out: &mut String, word: &str, name: &str, things: &[String]) {
    let _ = write!(out, "{word} {name}");
    for thing in things {
        let _ = write!(out, " {thing}");
    }
    out.push('\n');
}

/// A lesson as its text; [`crate::read`] reads it back equal, if its job passes the door of a job file.
#[must_use]
pub fn write(lesson: &Lesson) -> String {
    let mut out = format!("lesson {}\ntitle {}\n", lesson.key, one_line(&lesson.title));
    if !lesson.about.is_empty() {
        let _ = writeln!(out, "about {}", lesson.about.join(" "));
    }
    paragraphs(&mut out, "story", &lesson.story);
    for look in &lesson.looks {
        let _ = writeln!(
            out,
            "look {} {}",
            overlay_word(look.overlay),
            look.things.join(" ")
        );
        prose(&mut out, "  ", 2, &look.says);
    }
    for broken in &lesson.breaks {
        let _ = writeln!(out, "break {} {}", broken.kind.word(), broken.things.join(" "));
        for follows in &broken.effects {
            let word = if follows.still { "still" } else { "then" };
            let _ = writeln!(out, "  {word} {} {}", follows.version.word(), follows.effect);
        }
        if !broken.says.is_empty() {
            prose(&mut out, "  says ", 4, &broken.says);
        }
    }
    for question in &lesson.questions {
        let _ = writeln!(out, "question {}", one_line(&question.asks));
        for answer in &question.answers {
            prose(
                &mut out,
                if answer.right { "  right " } else { "  wrong " },
                4,
                &answer.says,
            );
        }
        if !question.why.is_empty() {
            prose(&mut out, "  why ", 4, &question.why);
        }
    }
    paragraphs(&mut out, "explain", &lesson.explanation);
    for source in &lesson.sources {
        let _ = writeln!(out, "source {}", one_line(source));
    }
    for fault in &lesson.faults {
        put_names(&mut out, "fault", &fault.name, &fault.things);
        if !fault.says.is_empty() {
            prose(&mut out, "  ", 2, &fault.says);
        }
    }
    for unasked in &lesson.unasked {
        put_names(&mut out, "unasked", &unasked.check, &unasked.things);
    }
    system(&mut out, lesson);
    out
}

/// The two versions as one list of lines: what differs stands behind a minus or a plus.
fn system(out: &mut String, lesson: &Lesson) {
    let mut job = lesson.job.clone();
    job.title.clear();
    for version in Version::BOTH {
        job.sheets.entry(version.sheet()).or_default();
    }
    let text = model::text::print(&job);
    let mut parts: [Vec<&str>; 3] = Default::default();
    let mut at = 0;
    for line in text.lines().filter(|line| !line.is_empty()) {
        if let Some(version) = Version::BOTH
            .iter()
            .position(|it| line.strip_prefix("sheet ") == Some(it.sheet().word()))
        {
            at = version + 1;
        } else if line.starts_with("sheet ") {
            // A third sheet, Built, has no place in a lesson.
            break;
        } else if let Some(part) = parts.get_mut(at) {
            part.push(line);
        }
    }
    let [settings, bad, good] = parts;
    out.push_str("system\n");
    let mut put = |sign: &str, line: &str| {
        let _ = writeln!(out, "  {sign} {line}");
    };
    for line in settings {
        put(" ", line);
    }
    for line in &bad {
        match good.iter().find(|other| name(other) == name(line)) {
            Some(other) if without_id(other) == without_id(line) => put(" ", line),
            Some(other) => {
                put("-", line);
                put("+", other);
            }
            None => put("-", line),
        }
    }
    for line in good
        .iter()
        .filter(|line| !bad.iter().any(|other| name(other) == name(line)))
    {
        put("+", line);
    }
}

/// What a line is of: the tag of a part or run; a reading or a setting of equipment is all that it says.
fn name(line: &str) -> (bool, &str) {
    let mut words = line.split(' ');
    match words.next() {
        Some("reading" | "tuning") => (false, line),
        Some("run") => (true, words.next().unwrap_or_default()),
        _ => (false, words.next().unwrap_or_default()),
    }
}

/// The good version takes its ids from the bad one, by tag.
fn without_id(line: &str) -> &str {
    line.rsplit_once(" id=").map_or(line, |(front, _)| front)
}
