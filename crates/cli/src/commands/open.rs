//! `open`: the job that a link carries, in the file form or the text form.

use crate::Report;
use crate::args::OpenCall;
use std::io::Read;

/// Most bytes read from standard input; a link is far shorter.
const MOST_BYTES: u64 = 64 * 1024;

pub(crate) fn run(call: &OpenCall) -> Result<Report, String> {
    let link = if call.link == "-" {
        let mut link = String::new();
        std::io::stdin()
            .lock()
            .take(MOST_BYTES)
            .read_to_string(&mut link)
            .map_err(|error| format!("-: cannot be read as text: {error}"))?;
        link
    } else {
        call.link.clone()
    };
    let job = sharing::open(&link).map_err(|error| error.to_string())?;
    Ok(Report::clean(if call.text {
        model::text::print(&job)
    } else {
        model::file::write(&job)
    }))
}
