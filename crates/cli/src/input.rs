//! Reading a job: from a file, from standard input, or one that comes with the program.

use crate::args::JobCall;
use crate::speech::{plain, tell, text, words};
use lessons::{BuiltIn, LESSONS, Lesson, Version, WORKED_JOBS, WorkedJob};
use model::text::{TextErrors, closest};
use model::{Job, Settings, Sheet, SheetKind};
use std::io::Read;
use words::say;

/// Most bytes read; the file reader has the same limit, this one keeps a wrong file from filling the memory first.
const MOST_BYTES: u64 = 16 * 1024 * 1024;

/// Reads a job, in the file form or the text form.
pub(crate) fn job(name: &str) -> Result<Job, String> {
    if let Some((of, version)) = name.rsplit_once('/')
        && (of.starts_with('@') || of.ends_with(".lesson"))
    {
        let version = Version::from_word(version)
            .ok_or_else(|| tell(&say!("cli-two-versions", name = name, of = of)))?;
        return Ok(lesson(of.strip_prefix('@').unwrap_or(of))?.taken(version, words()));
    }
    if let Some(key) = name.strip_prefix('@') {
        let language = words().reader().language;
        return WorkedJob::of(key)
            .map(|worked| worked.job_in(language))
            .ok_or_else(|| {
                let keys: Vec<String> = WORKED_JOBS.iter().map(|job| format!("@{}", job.key)).collect();
                tell(&say!("cli-no-worked-job", name = name, names = keys.join(", ")))
            });
    }
    let bytes = bytes(name)?;
    // A job file is a JSON object; nothing in the text form begins with a brace.
    let is_file = bytes
        .iter()
        .find(|b| !b.is_ascii_whitespace() && !b"\xEF\xBB\xBF".contains(b))
        == Some(&b'{');
    if is_file {
        return model::file::read(&bytes).map_err(|error| format!("{name}: {}", tell(&error.said())));
    }
    model::text::parse(&utf8(name, bytes)?).map_err(|errors| wrong_in(name, &errors))
}

/// Reads a lesson: one that comes with the program, or a file.
pub(crate) fn lesson(name: &str) -> Result<Lesson, String> {
    if let Some(lesson) = BuiltIn::of(name) {
        return Ok(lesson.lesson());
    }
    if sharing::carries(name) == Some(sharing::Carries::Lesson) {
        return lessons::open_lesson(name).map_err(|error| tell(&error.said()));
    }
    if !name.ends_with(".lesson") && name != "-" {
        let meant = closest(name, LESSONS.iter().map(|lesson| lesson.key));
        return Err(tell(&match meant {
            Some(meant) => say!("cli-no-lesson-meant", name = name, meant = meant),
            None => say!("cli-no-lesson", name = name),
        }));
    }
    lessons::read(&utf8(name, bytes(name)?)?).map_err(|errors| wrong_in(name, &errors))
}

/// What is wrong with a text, and where.
fn wrong_in(name: &str, errors: &TextErrors) -> String {
    format!("{name}:\n{}", plain(errors.told(words())))
}

/// What could not be read, and why.
pub(crate) fn unread(name: &str, error: &std::io::Error) -> String {
    tell(&say!("cli-cannot-read", name = name, error = error.to_string()))
}

/// What could not be written, and why.
pub(crate) fn unwritten(name: &str, error: &std::io::Error) -> String {
    tell(&say!("cli-cannot-write", name = name, error = error.to_string()))
}

/// Words with commas between, or that there are none.
pub(crate) fn listed(all: &[&str]) -> String {
    if all.is_empty() {
        text("cli-none")
    } else {
        all.join(", ")
    }
}

/// What a file, or standard input, holds.
fn bytes(name: &str) -> Result<Vec<u8>, String> {
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin()
            .lock()
            .take(MOST_BYTES + 1)
            .read_to_end(&mut bytes)
    } else {
        std::fs::File::open(name).and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes))
    };
    read.map_err(|error| unread(name, &error))?;
    Ok(bytes)
}

/// The text of a file, or of standard input.
pub(crate) fn utf8_of(name: &str) -> Result<String, String> {
    utf8(name, bytes(name)?)
}

fn utf8(name: &str, bytes: Vec<u8>) -> Result<String, String> {
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        tell(&say!("cli-not-utf8", name = name, at = at))
    })
}

/// A job, the sheet that was asked for, and the settings with the call's conditions put in.
pub(crate) struct Opened {
    pub(crate) job: Job,
    pub(crate) kind: SheetKind,
    pub(crate) settings: Settings,
}

impl Opened {
    /// What stands above an answer: the job and its sheet.
    pub(crate) fn heading(&self) -> String {
        let title = if self.job.title.is_empty() {
            &text("cli-untitled")
        } else {
            &self.job.title
        };
        format!("{title} · {}", tell(&self.kind.said()))
    }
    /// The sheet; the opening made sure that it is there.
    pub(crate) fn sheet(&self) -> Sheet {
        self.job.sheet(self.kind).cloned().unwrap_or_default()
    }
}

/// Opens what a call names.
pub(crate) fn open(call: &JobCall) -> Result<Opened, String> {
    let job = job(&call.job)?;
    let kind = match call.sheet {
        Some(kind) if job.sheets.contains_key(&kind) => kind,
        Some(kind) => {
            let there: Vec<&str> = job.sheets.keys().map(|kind| kind.word()).collect();
            return Err(tell(&say!(
                "cli-no-sheet",
                job = &call.job,
                sheet = kind.word(),
                there = listed(&there),
            )));
        }
        None => *job
            .sheets
            .keys()
            .next_back()
            .ok_or_else(|| tell(&say!("cli-no-sheet-at-all", job = &call.job)))?,
    };
    let mut settings = job.settings.clone();
    if let Some(state) = call.state {
        settings.conditions.state = state;
    }
    if let Some(duty) = call.duty {
        settings.conditions.duty = duty;
    }
    if let Some(profile) = call.profile {
        settings.conditions.profile = profile;
    }
    Ok(Opened { job, kind, settings })
}

/// A value as JSON for standard output.
pub(crate) fn json(value: &impl serde::Serialize) -> Result<String, String> {
    serde_json::to_string_pretty(value)
        .map(|text| text + "\n")
        .map_err(|error| tell(&say!("cli-cannot-write-json", error = error.to_string())))
}
