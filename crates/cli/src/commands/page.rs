//! `page`: one HTML file with the program and the job in it.

use super::link::told;
use crate::Report;
use crate::args::PageCall;
use crate::input::{job, unread, unwritten};
use crate::speech::tell;
use sharing::{Showing, shown};
use words::say;

pub(crate) fn run(call: &PageCall) -> Result<Report, String> {
    let whole = job(&call.job)?;
    let template = std::fs::read_to_string(&call.app).map_err(|error| {
        format!(
            "{}\n{}",
            unread(&call.app, &error),
            tell(&say!("cli-no-app-hint"))
        )
    })?;
    let showing = Showing {
        notes: call.notes,
        names: call.names,
        prices: call.prices,
        pictures: call.pictures,
    };
    let (job, left) = shown(&whole, showing);
    let page =
        sharing::page(&template, &job).map_err(|error| format!("{}: {}", call.app, tell(&error.said())))?;
    std::fs::write(&call.output, &page).map_err(|error| unwritten(&call.output, &error))?;
    let written = say!("cli-written-bytes", file = &call.output, bytes = page.len());
    Ok(Report::clean(format!("{}\n{}", tell(&written), told(left))))
}
