//! `link`: the whole job, or a lesson, as a link, and its printed code.

use crate::Report;
use crate::args::LinkCall;
use crate::input::{job, json, lesson, unwritten};
use crate::speech::tell;
use lessons::{BuiltIn, lesson_fragment};
use sharing::{Address, Code, LONGEST_CODE, LeftOut, Showing, fragment, shown};
use std::fmt::Write;
use words::say;

/// What came of making a link.
#[derive(serde::Serialize)]
struct Made {
    link: String,
    characters: usize,
    fits_a_code: bool,
    notes_left_out: usize,
    names_left_out: usize,
    prices_left_out: usize,
    pictures_left_out: usize,
    unknown_fields_left_out: usize,
}

pub(crate) fn run(call: &LinkCall) -> Result<Report, String> {
    let address = Address::new(&call.address)
        .map_err(|error| format!("--address {}: {}", call.address, tell(&error.said())))?;
    let showing = Showing {
        notes: call.notes,
        names: call.names,
        prices: call.prices,
        pictures: false,
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
    let packed = packed.map_err(|error| format!("{}: {}", call.job, tell(&error.said())))?;
    let link = address.link(&packed);
    let code = Code::of(&link);
    if let Some(path) = &call.code {
        let code = code.as_ref().ok_or_else(|| {
            tell(&say!(
                "cli-code-too-long",
                job = &call.job,
                characters = link.len(),
                most = LONGEST_CODE,
            ))
        })?;
        std::fs::write(path, code.svg()).map_err(|error| unwritten(path, &error))?;
    }
    let made = Made {
        characters: link.len(),
        fits_a_code: code.is_some(),
        notes_left_out: left.notes,
        names_left_out: left.names,
        prices_left_out: left.prices,
        pictures_left_out: left.pictures,
        unknown_fields_left_out: left.unknown,
        link,
    };
    if call.json {
        return Ok(Report::clean(json(&made)?));
    }
    let fits = if made.fits_a_code {
        say!("cli-fits-code", count = made.characters)
    } else {
        say!("cli-fits-no-code", count = made.characters)
    };
    let mut text = format!("{}\n\n{}\n", made.link, tell(&fits));
    text.push_str(&told(left));
    if let Some(path) = &call.code {
        let _ = writeln!(text, "{}", tell(&say!("cli-written", file = path)));
    }
    Ok(Report::clean(text))
}

/// What stays out, in words.
pub(crate) fn told(left: LeftOut) -> String {
    let all = [
        (left.notes, say!("cli-left-notes", count = left.notes)),
        (left.names, say!("cli-left-names", count = left.names)),
        (left.prices, say!("cli-left-prices", count = left.prices)),
        (left.pictures, say!("cli-left-pictures", count = left.pictures)),
        (left.unknown, say!("cli-left-unknown", count = left.unknown)),
    ];
    let out: Vec<String> = all
        .iter()
        .filter(|(count, _)| *count > 0)
        .map(|(_, saying)| tell(saying))
        .collect();
    if out.is_empty() {
        String::new()
    } else {
        tell(&say!("cli-left-out", things = out.join(", "))) + "\n"
    }
}
