//! Findings of a sheet before and after an edit: which are the same fault, which are gone, which are new.

use checks::Finding;
use model::{Change, PartId, Run, RunId, Sheet, TerminalRef};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// What became of findings.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Matched {
    /// Places of those that are gone, among those of before.
    pub(crate) cleared: Vec<usize>,
    /// Places of those that are new or graver, among those of after.
    pub(crate) brought: Vec<usize>,
}

/// What a finding speaks of, or an edit changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Thing {
    Part(PartId),
    Run(RunId),
}

impl Thing {
    /// What a change changes, of what findings speak of.
    pub(super) fn of(change: &Change) -> Option<Self> {
        match change {
            Change::Part { id, .. } => Some(Self::Part(*id)),
            Change::Run { id, .. } => Some(Self::Run(*id)),
            _ => None,
        }
    }
}

/// Runs that the edit added, by the run of before that they are a piece of: a new run that ends where an old one did, which
/// ends there no more.
fn pieces(was: &Sheet, is: &Sheet) -> OrderedMap<RunId, RunId> {
    fn lands(run: &Run, at: &TerminalRef) -> bool {
        run.ends().into_iter().any(|end| end.terminal() == Some(at))
    }
    let added = is.runs.iter().filter(|(id, _)| !was.runs.contains_key(id));
    let piece_of = |run: &Run| {
        run.ends()
            .into_iter()
            .filter_map(|end| end.terminal())
            .find_map(|at| {
                let left = |id: &RunId| is.runs.get(id).is_none_or(|now| !lands(now, at));
                let mut old = was.runs.iter().filter(|(_, old)| lands(old, at));
                old.find(|(id, _)| left(id)).map(|(id, _)| *id)
            })
    };
    added
        .filter_map(|(id, run)| Some((*id, piece_of(run)?)))
        .collect()
}

fn things(finding: &Finding, pieces: &OrderedMap<RunId, RunId>) -> OrderedSet<Thing> {
    let whole = |id: &RunId| pieces.get(id).copied().unwrap_or(*id);
    let runs = finding.runs.iter().map(|id| Thing::Run(whole(id)));
    let parts = finding.parts.iter().map(|id| Thing::Part(*id));
    runs.chain(parts).collect()
}

/// Holds findings against those of before, each with the sheet that they are of. Findings of one check that speak of the same
/// things are the same fault, unless it is graver now; of several it is the one that has most in common.
pub(crate) fn matched((before, was): (&[Finding], &Sheet), (after, is): (&[Finding], &Sheet)) -> Matched {
    let (pieces, none) = (pieces(was, is), OrderedMap::new());
    let of_before: Vec<OrderedSet<Thing>> = before.iter().map(|it| things(it, &none)).collect();
    let of_after: Vec<OrderedSet<Thing>> = after.iter().map(|it| things(it, &pieces)).collect();
    // By how much two have in common, most first.
    let mut pairs: Vec<((bool, bool, usize), usize, usize)> = Vec::new();
    for (old, (was, of_was)) in before.iter().zip(&of_before).enumerate() {
        for (new, (is, of_is)) in after.iter().zip(&of_after).enumerate() {
            if was.check != is.check || is.grade < was.grade {
                continue;
            }
            let common = of_was.iter().filter(|thing| of_is.contains(thing)).count();
            let alike = of_was == of_is;
            if common > 0 || alike {
                pairs.push(((alike, alike && was.what == is.what, common), old, new));
            }
        }
    }
    pairs.order_by(|a, b| b.0.cmp(&a.0).then((a.1, a.2).cmp(&(b.1, b.2))));
    let mut found = (vec![false; before.len()], vec![false; after.len()]);
    for (_, old, new) in pairs {
        if let (Some(old), Some(new)) = (found.0.get_mut(old), found.1.get_mut(new))
            && !*old
            && !*new
        {
            (*old, *new) = (true, true);
        }
    }
    let alone = |found: &[bool]| {
        (0..)
            .zip(found)
            .filter(|(_, it)| !**it)
            .map(|(at, _)| at)
            .collect()
    };
    Matched {
        cleared: alone(&found.0),
        brought: alone(&found.1),
    }
}
