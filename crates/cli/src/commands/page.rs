//! `page`: one HTML file with the program and the job in it.

use super::link::told;
use crate::Report;
use crate::args::PageCall;
use crate::input::job;
use sharing::{Showing, shown};
use std::fmt::Write;

pub(crate) fn run(call: &PageCall) -> Result<Report, String> {
    let whole = job(&call.job)?;
    let template = std::fs::read_to_string(&call.app).map_err(|error| {
        format!(
            "{}: cannot be read: {error}\n`cargo xtask bundle` builds the program with its page.html into dist/; --app names another one",
            call.app
        )
    })?;
    let showing = Showing {
        notes: call.notes,
        names: call.names,
    };
    let (job, left) = shown(&whole, showing);
    let page = sharing::page(&template, &job).map_err(|error| format!("{}: {error}", call.app))?;
    std::fs::write(&call.output, &page)
        .map_err(|error| format!("{}: cannot be written: {error}", call.output))?;
    let mut text = String::new();
    let _ = writeln!(text, "{} written, {} bytes.", call.output, page.len());
    text.push_str(&told(left));
    Ok(Report::clean(text))
}
