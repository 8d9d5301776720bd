//! `format`: writes a job anew, in the file form or the text form.

use crate::Report;
use crate::args::FormatCall;
use crate::input::job;

pub(crate) fn run(call: &FormatCall) -> Result<Report, String> {
    let job = job(&call.job)?;
    Ok(Report::clean(if call.text {
        model::text::print(&job)
    } else {
        model::file::write(&job)
    }))
}
