//! What was odd about a sheet, told beside its results.

use crate::network::{BODY, Closes, Kind, Network};
use crate::study::{Outcome, Study};
use model::Sheet;
use words::say;

/// What was odd: sources whose poles nothing but wire joins.
pub(super) fn notes(net: &Network, sheet: &Sheet, study: &mut Study) {
    let mut wired = crate::speakers::Groups::new(net.nodes);
    for branch in &net.branches {
        let is_wire = branch.carries && branch.closes == Closes::Always;
        if is_wire && !matches!(branch.kind, Kind::Shield { .. } | Kind::Tie) {
            wired.join(branch.nodes[0], branch.nodes[1]);
        }
    }
    let mut joined = |a: usize, b: usize| wired.find(a) == wired.find(b);
    for source in &net.sources {
        let tag = net
            .parts
            .get(source.part)
            .and_then(|id| sheet.parts.get(id))
            .map_or("", |p| p.tag.as_str());
        if joined(source.plus, source.minus) {
            study.notes.push(say!("note-shorted", source = tag));
        }
        if source.plus == BODY || joined(source.plus, BODY) && !joined(source.minus, BODY) {
            study.notes.push(say!("note-pole-on-body", source = tag));
        }
    }
    if study.outcome == Outcome::NothingToSolve && net.sources.is_empty() && !net.parts.is_empty() {
        study.notes.push(say!("note-no-source"));
    }
}
