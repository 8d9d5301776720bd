//! `lesson`: lists the built-in lessons, tells one, or says what is wrong with one that an instructor writes.

use crate::Report;
use crate::args::LessonCall;
use crate::input;
use crate::table::{print, table, wrap};
use lessons::{Break, LESSONS, Lesson, Told, Version};
use std::fmt::Write;
use words::Words;

pub(crate) fn run(call: &LessonCall) -> Result<Report, String> {
    let Some(name) = &call.lesson else {
        let mut all = table(&["Lesson", "Title"]);
        for lesson in LESSONS {
            all.add_row([lesson.key, lesson.title()]);
        }
        return Ok(Report::clean(print(&all)));
    };
    let lesson = input::lesson(name)?;
    if call.text {
        return Ok(Report::clean(lessons::write(&lesson)));
    }
    let told = Told::of(&lesson);
    if call.problems {
        let lacks = lesson.lacks(&told.bad.analysis);
        let mut problems: Vec<String> = lacks
            .iter()
            .map(|lack| Words::english().say(&lack.saying()))
            .collect();
        problems.extend(told.problems());
        return match problems.as_slice() {
            [] => Ok(Report::clean(format!(
                "{name}: nothing is wrong with the lesson.\n"
            ))),
            _ => Err(problems.join("\n")),
        };
    }
    Ok(Report::clean(wrap(&tell(&lesson, &told, call.answers))))
}

/// The lesson as a teacher reads it out.
fn tell(lesson: &Lesson, told: &Told<'_>, answers: bool) -> String {
    let say = |text: &str, broken: Option<&Break>| told.tell(text, broken);
    let mut out = format!("{}\n", lesson.title);
    for paragraph in &lesson.story {
        let _ = writeln!(out, "\n{}", say(paragraph, None));
    }
    out.push_str("\nLook at\n");
    for look in &lesson.looks {
        let _ = writeln!(
            out,
            "- {} ({}): {}",
            look.things.join(", "),
            look.overlay.title(),
            say(&look.says, None)
        );
    }
    out.push_str("\nBreak\n");
    for broken in &lesson.breaks {
        let _ = writeln!(out, "- {}: {}", broken.title(), say(&broken.says, Some(broken)));
    }
    out.push_str("\nQuestions\n");
    for (at, question) in lesson.questions.iter().enumerate() {
        let _ = writeln!(out, "{}. {}", at + 1, say(&question.asks, None));
        for (answer, letter) in question.answers.iter().zip('a'..='z') {
            let mark = if answers && answer.right { "  <-" } else { "" };
            let _ = writeln!(out, "   {letter}) {}{mark}", say(&answer.says, None));
        }
        if answers {
            let _ = writeln!(out, "   {}", say(&question.why, None));
        }
    }
    if answers {
        out.push_str("\nExplanation\n");
        for paragraph in lesson.why(&Words::english()) {
            let _ = writeln!(out, "{}", say(&paragraph, None));
        }
        let _ = writeln!(
            out,
            "Source: {}.",
            lesson.all_sources(&Words::english()).join("; ")
        );
        out.push_str("\nFaults to be found in the bad version\n");
        let bad = told.shown(Version::Bad);
        for fault in lessons::faults(lesson, &bad.analysis)
            .iter()
            .filter(|fault| fault.wanted)
        {
            let _ = writeln!(
                out,
                "- {}: {}",
                lessons::title(&fault.reason),
                say(&fault.what(&Words::english()), None)
            );
            if !fault.added().is_empty() {
                let _ = writeln!(out, "  {}", say(fault.added(), None));
            }
        }
    }
    let _ = writeln!(
        out,
        "\nBreaks are tried on the drawing, never on a vehicle. {}",
        Words::english().say(&checks::care())
    );
    let _ = writeln!(out, "\nIts two versions: @{0}/bad and @{0}/good.", lesson.key);
    out
}
