//! `handover`: one printable HTML file for the customer and the next installer.

use super::link::told;
use crate::Report;
use crate::args::HandoverCall;
use crate::input::{job, listed, unwritten};
use crate::speech::{tell, words};
use paperwork::{Asked, handover};
use sharing::Showing;
use words::say;

pub(crate) fn run(call: &HandoverCall) -> Result<Report, String> {
    let job = job(&call.job)?;
    let asked = Asked {
        kind: call.sheet,
        showing: Showing {
            notes: call.notes,
            names: call.names,
            prices: call.prices,
            pictures: call.pictures,
        },
        readers: call.readers,
    };
    let (page, left) = handover(&job, asked, words()).ok_or_else(|| match call.sheet {
        Some(kind) => {
            let there: Vec<&str> = job.sheets.keys().map(|kind| kind.word()).collect();
            tell(&say!(
                "cli-no-sheet",
                job = &call.job,
                sheet = kind.word(),
                there = listed(&there)
            ))
        }
        None => tell(&say!("cli-no-sheet-at-all", job = &call.job)),
    })?;
    std::fs::write(&call.output, &page).map_err(|error| unwritten(&call.output, &error))?;
    let written = say!("cli-written-bytes", file = &call.output, bytes = page.len());
    Ok(Report::clean(format!("{}\n{}", tell(&written), told(left))))
}
