//! `open`: the job that a link or a page file carries, in the file form or the text form; or the lesson, as its text.

use crate::Report;
use crate::args::OpenCall;
use crate::input::unread;
use crate::speech::tell;
use model::Job;
use std::io::Read;
use std::path::Path;
use words::say;

/// Most bytes read from standard input; a link is far shorter.
const MOST_BYTES: u64 = 64 * 1024;

/// Most bytes of a page file that are read: the largest job file, and the program beside it.
const LARGEST_PAGE: u64 = (model::limits::LARGEST_FILE as u64) * 2;

pub(crate) fn run(call: &OpenCall) -> Result<Report, String> {
    if Path::new(&call.link).is_file() {
        let mut page = String::new();
        std::fs::File::open(&call.link)
            .and_then(|file| file.take(LARGEST_PAGE).read_to_string(&mut page))
            .map_err(|error| unread(&call.link, &error))?;
        let job = sharing::carried(&page)
            .ok_or(sharing::PageError::NoJob)
            .and_then(sharing::open_carried)
            .map_err(|error| format!("{}: {}", call.link, tell(&error.said())))?;
        return Ok(written(&job, call.text));
    }
    let link = if call.link == "-" {
        let mut link = String::new();
        std::io::stdin()
            .lock()
            .take(MOST_BYTES)
            .read_to_string(&mut link)
            .map_err(|error| tell(&say!("cli-not-text", name = "-", error = error.to_string())))?;
        link
    } else {
        call.link.clone()
    };
    if sharing::carries(&link) == Some(sharing::Carries::Lesson) {
        let lesson = lessons::open_lesson(&link).map_err(|error| tell(&error.said()))?;
        return Ok(Report::clean(lessons::write(&lesson)));
    }
    let job = sharing::open(&link).map_err(|error| tell(&error.said()))?;
    Ok(written(&job, call.text))
}

fn written(job: &Job, text: bool) -> Report {
    Report::clean(if text {
        model::text::print(job)
    } else {
        model::file::write(job)
    })
}
