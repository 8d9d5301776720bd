//! Signal and turn-on chains: which output feeds which input, and who tells what to turn on.
//!
//! *Left out:* voltages between grounds and currents in shields, which the direct-current solution gives.

mod inputs;
mod turn_on;

use crate::speakers::Speakers;
use crate::speakers::index::{By, Index};
use crate::study::Signal;
use model::{RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};
use std::collections::VecDeque;

/// Signal and turn-on chains of a sheet, without [`Signal::offsets`]. `speakers` is what
/// [`study_speakers`](crate::speakers::study_speakers) found on the same sheet: it says which channels have something to play.
#[must_use]
pub fn study_signal(sheet: &Sheet, _settings: &Settings, speakers: &Speakers) -> Signal {
    study_index(&Index::new(sheet), speakers)
}

/// The same from terminals that are numbered already.
pub(crate) fn study_index(index: &Index<'_>, speakers: &Speakers) -> Signal {
    let inputs = inputs::find(index, speakers);
    let (turn_on, turn_on_outputs) = turn_on::find(index, &inputs);
    Signal {
        inputs,
        turn_on,
        turn_on_outputs,
        offsets: OrderedMap::new(),
    }
}

/// Carries the high-pass filters of head units on to the drivers they keep bass from.
pub fn carry_filters(sheet: &Sheet, signal: &Signal, speakers: &mut Speakers) {
    inputs::carry_filters(sheet, &signal.inputs, speakers);
}

/// Terminals that conduct to a terminal, with the link by which each was first reached.
struct Spread {
    from: OrderedMap<usize, Option<(usize, By)>>,
}

/// Follows everything that conducts from a terminal; what `stop` says is reached but not passed.
fn spread(index: &Index<'_>, start: usize, stop: impl Fn(usize) -> bool) -> Spread {
    spread_from(index, [start], stop)
}

/// The same from several terminals at once: each terminal is reached from the nearest of them.
fn spread_from(
    index: &Index<'_>,
    starts: impl IntoIterator<Item = usize>,
    stop: impl Fn(usize) -> bool,
) -> Spread {
    let mut waiting: VecDeque<usize> = starts.into_iter().collect();
    let mut from: OrderedMap<usize, Option<(usize, By)>> = waiting.iter().map(|at| (*at, None)).collect();
    while let Some(at) = waiting.pop_front() {
        if stop(at) {
            continue;
        }
        for link in index.links_at(at).filter(|link| link.is_closed()) {
            let next = link.other(at);
            from.entry(next).or_insert_with(|| {
                waiting.push_back(next);
                Some((at, link.by))
            });
        }
    }
    Spread { from }
}

impl Spread {
    /// Puts the runs between the start and a terminal that was reached into `runs`.
    fn runs_to(&self, mut at: usize, runs: &mut OrderedSet<RunId>) {
        while let Some(Some((before, by))) = self.from.get(&at) {
            if let By::Run(run) = by {
                runs.insert(*run);
            }
            at = *before;
        }
    }
}
