//! `deck`: the network as a deck for a circuit simulator, so that anyone can check the solution.

use crate::Report;
use crate::args::DeckCall;
use crate::input::open;

pub(crate) fn run(call: &DeckCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let sheet = opened.sheet();
    Ok(Report::clean(if call.speakers {
        circuit::speakers::speaker_deck(&sheet, &opened.settings)
    } else {
        circuit::deck(&sheet, &opened.settings, call.level)
    }))
}
