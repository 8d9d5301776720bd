//! `lesson`: lists the built-in lessons, tells one, or says what is wrong with one that an instructor writes.

use crate::Report;
use crate::args::LessonCall;
use crate::input;
use crate::speech::{tell as said, text, words};
use crate::table::{print, table, wrap};
use lessons::{Break, BuiltIn, LESSONS, Lesson, Told, Version};
use std::fmt::Write;
use words::say;

pub(crate) fn run(call: &LessonCall) -> Result<Report, String> {
    let language = words().reader().language;
    let Some(name) = &call.lesson else {
        let mut all = table(&["lesson", "title"]);
        for lesson in LESSONS {
            all.add_row([lesson.key.to_owned(), lesson.lesson_in(language).title]);
        }
        return Ok(Report::clean(print(&all)));
    };
    let lesson = input::lesson(name)?;
    if call.text {
        return Ok(Report::clean(lessons::write(&lesson)));
    }
    let lesson = BuiltIn::of(name).map_or(lesson, |built_in| built_in.lesson_in(language));
    let told = Told::of(&lesson);
    if call.problems {
        let lacks = lesson.lacks(&told.shown(Version::Bad).analysis);
        let mut problems: Vec<String> = lacks.iter().map(|lack| said(&lack.saying())).collect();
        problems.extend(told.problems().iter().map(said));
        return match problems.as_slice() {
            [] => Ok(Report::clean(said(&say!("cli-lesson-right", name = name)) + "\n")),
            _ => Err(problems.join("\n")),
        };
    }
    Ok(Report::clean(wrap(&tell(&lesson, &told, call.answers))))
}

fn heading(out: &mut String, key: &str) {
    let _ = writeln!(out, "\n{}", text(key));
}

/// The lesson as a teacher reads it out.
fn tell(lesson: &Lesson, told: &Told<'_>, answers: bool) -> String {
    let fill = |text: &str, broken: Option<&Break>| told.tell(text, broken, words());
    let mut out = format!("{}\n", lesson.title);
    for paragraph in &lesson.story {
        let _ = writeln!(out, "\n{}", fill(paragraph, None));
    }
    heading(&mut out, "cli-lesson-looks");
    for look in &lesson.looks {
        let _ = writeln!(
            out,
            "- {} ({}): {}",
            look.things.join(", "),
            said(&look.overlay.said()),
            fill(&look.says, None)
        );
    }
    heading(&mut out, "cli-lesson-breaks");
    for broken in &lesson.breaks {
        let _ = writeln!(
            out,
            "- {}: {}",
            said(&broken.said()),
            fill(&broken.says, Some(broken))
        );
    }
    heading(&mut out, "cli-lesson-questions");
    for (at, question) in lesson.questions.iter().enumerate() {
        let _ = writeln!(out, "{}. {}", at + 1, fill(&question.asks, None));
        for (answer, letter) in question.answers.iter().zip('a'..='z') {
            let mark = if answers && answer.right { "  <-" } else { "" };
            let _ = writeln!(out, "   {letter}) {}{mark}", fill(&answer.says, None));
        }
        if answers {
            let _ = writeln!(out, "   {}", fill(&question.why, None));
        }
    }
    if answers {
        heading(&mut out, "cli-lesson-explanation");
        for paragraph in lesson.why(words()) {
            let _ = writeln!(out, "{}", fill(&paragraph, None));
        }
        let sources = lesson.all_sources(words()).join("; ");
        let _ = writeln!(out, "{}", said(&say!("cli-lesson-source", sources = sources)));
        heading(&mut out, "cli-lesson-faults");
        let bad = told.shown(Version::Bad);
        for fault in lessons::faults(lesson, &bad.analysis)
            .iter()
            .filter(|fault| fault.wanted)
        {
            let _ = writeln!(
                out,
                "- {}: {}",
                lessons::title_in(&fault.reason, words()),
                fill(&fault.what(words()), None)
            );
            if !fault.added().is_empty() {
                let _ = writeln!(out, "  {}", fill(fault.added(), None));
            }
        }
    }
    let _ = writeln!(out, "\n{} {}", text("cli-lesson-care"), said(&checks::care()));
    let versions = say!("cli-lesson-versions", key = &lesson.key);
    let _ = writeln!(out, "\n{}", said(&versions));
    out
}
