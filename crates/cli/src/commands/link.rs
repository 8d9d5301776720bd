//! `link`: the whole job, or a lesson, as a link, and its printed code.

use crate::Report;
use crate::args::LinkCall;
use crate::input::{job, json, lesson};
use lessons::BuiltIn;
use sharing::{Address, Code, LONGEST_CODE, LeftOut, Showing, fragment, lesson_fragment, shown};
use std::fmt::Write;

/// What came of making a link.
#[derive(serde::Serialize)]
struct Made {
    link: String,
    characters: usize,
    fits_a_code: bool,
    notes_left_out: usize,
    names_left_out: usize,
    unknown_fields_left_out: usize,
}

pub(crate) fn run(call: &LinkCall) -> Result<Report, String> {
    let address =
        Address::new(&call.address).map_err(|error| format!("--address {}: {error}", call.address))?;
    let showing = Showing {
        notes: call.notes,
        names: call.names,
    };
    let (packed, left) = if call.job.ends_with(".lesson") || BuiltIn::of(&call.job).is_some() {
        let mut lesson = lesson(&call.job)?;
        let (job, left) = shown(&lesson.job, showing);
        lesson.job = job;
        (lesson_fragment(&lesson), left)
    } else {
        let (job, left) = shown(&job(&call.job)?, showing);
        (fragment(&job), left)
    };
    let packed = packed.map_err(|error| format!("{}: {error}", call.job))?;
    let link = address.link(&packed);
    let code = Code::of(&link);
    if let Some(path) = &call.code {
        let code = code.as_ref().ok_or_else(|| {
            format!(
                "{}: as a link this has {} characters and a printed code holds {LONGEST_CODE}; nothing was written",
                call.job,
                link.len()
            )
        })?;
        std::fs::write(path, code.svg()).map_err(|error| format!("{path}: cannot be written: {error}"))?;
    }
    let made = Made {
        characters: link.len(),
        fits_a_code: code.is_some(),
        notes_left_out: left.notes,
        names_left_out: left.names,
        unknown_fields_left_out: left.unknown,
        link,
    };
    if call.json {
        return Ok(Report::clean(json(&made)?));
    }
    let mut text = format!("{}\n\n{} characters", made.link, made.characters);
    let _ = writeln!(
        text,
        "; {}.",
        if made.fits_a_code {
            "fits a printed code"
        } else {
            "too long for a printed code"
        }
    );
    text.push_str(&told(left));
    if let Some(path) = &call.code {
        let _ = writeln!(text, "{path} written.");
    }
    Ok(Report::clean(text))
}

/// What stays out, in words.
pub(crate) fn told(left: LeftOut) -> String {
    let mut out = Vec::new();
    for (count, what, choice) in [
        (left.notes, "notes and remarks", " (--notes shows them)"),
        (left.names, "names", " (--names shows them)"),
        (left.unknown, "fields that this version does not know", ""),
    ] {
        if count > 0 {
            out.push(format!("{count} {what}{choice}"));
        }
    }
    if out.is_empty() {
        String::new()
    } else {
        format!("Left out: {}.\n", out.join(", "))
    }
}
