//! `labels`: the label sheets of the work as one printable HTML file of real size.

use super::lists::work;
use crate::Report;
use crate::args::LabelsCall;
use crate::input::{open, unwritten};
use crate::speech::{tell, text, words};
use words::say;

pub(crate) fn run(call: &LabelsCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let work = work(&opened, call.since)?;
    let study = circuit::study(&work.sheet, &opened.settings);
    let sheets = paperwork::label_sheets(&work, &study, words());
    if sheets.is_empty() {
        return Err(text("cli-no-labels"));
    }
    let page = paperwork::label_document(&work, &study, words());
    std::fs::write(&call.output, page).map_err(|error| unwritten(&call.output, &error))?;
    let labels = sheets.iter().map(|sheet| sheet.labels.len()).sum::<usize>();
    let written = say!(
        "cli-labels-written",
        file = &call.output,
        labels = labels,
        sheets = sheets.len()
    );
    Ok(Report::clean(tell(&written) + "\n"))
}
