//! Signal and turn-on chains: which output feeds which input, and who tells what to turn on.
//!
//! *Left out:* voltages between grounds and currents in shields, which the direct-current solution gives.

mod inputs;
mod turn_on;

use crate::speakers::Speakers;
use crate::speakers::index::{By, Index};
use crate::study::Signal;
use model::{RunId, Settings, Sheet};
use ordered::{Entry, OrderedMap, OrderedSet};
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
    let mut from = OrderedMap::from([(start, None)]);
    follow(index, vec![start], stop, |at, by| match from.entry(at) {
        Entry::Occupied(_) => false,
        Entry::Vacant(place) => {
            place.insert(Some(by));
            true
        }
    });
    Spread { from }
}

/// The same from several terminals at once: each terminal is reached from the nearest of them.
fn spread_from(index: &Index<'_>, starts: Vec<usize>, stop: impl Fn(usize) -> bool) -> Spread {
    // Much of the sheet is reached: a map would move half of itself for each terminal that comes in.
    let mut reached: Vec<Option<Option<(usize, By)>>> = vec![None; index.spots.len()];
    for start in &starts {
        if let Some(place) = reached.get_mut(*start) {
            *place = Some(None);
        }
    }
    follow(index, starts, stop, |at, by| match reached.get_mut(at) {
        Some(place) if place.is_none() => {
            *place = Some(Some(by));
            true
        }
        _ => false,
    });
    let from = (0..).zip(reached).filter_map(|(at, by)| Some((at, by?)));
    Spread { from: from.collect() }
}

/// Goes from terminal to terminal, the nearest first. `enter` is told of a terminal and of the way to it, and says whether
/// it is a new one.
fn follow(
    index: &Index<'_>,
    starts: Vec<usize>,
    stop: impl Fn(usize) -> bool,
    mut enter: impl FnMut(usize, (usize, By)) -> bool,
) {
    let mut waiting = VecDeque::from(starts);
    while let Some(at) = waiting.pop_front() {
        if stop(at) {
            continue;
        }
        for link in index.links_at(at).filter(|link| link.is_closed()) {
            let next = link.other(at);
            if enter(next, (at, link.by)) {
                waiting.push_back(next);
            }
        }
    }
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
