//! Which layer each unit stands in: longest way from the sources, then pulled towards what it feeds.

use super::order::Web;
use super::units::System;
use ordered::Sort as _;

/// Layer of each unit, from 0.
pub(crate) fn layers(system: &System) -> Vec<usize> {
    let count = system.units.len();
    let mut after: Vec<Vec<usize>> = vec![Vec::new(); count];
    for link in system.links.iter().filter(|link| link.directed) {
        if let Some(list) = after.get_mut(link.from)
            && !list.contains(&link.to)
        {
            list.push(link.to);
        }
    }
    let order = without_rings(system, &mut after);
    let mut before: Vec<Vec<usize>> = vec![Vec::new(); count];
    for (from, list) in after.iter().enumerate() {
        for to in list {
            if let Some(back) = before.get_mut(*to) {
                back.push(from);
            }
        }
    }
    let mut layer = vec![0_usize; count];
    let at = |layer: &[usize], unit: usize| layer.get(unit).copied().unwrap_or(0);
    for unit in &order {
        let least = before
            .get(*unit)
            .into_iter()
            .flatten()
            .map(|from| at(&layer, *from) + 1)
            .max()
            .unwrap_or(0);
        if let Some(slot) = layer.get_mut(*unit) {
            *slot = least;
        }
    }
    // What feeds more than feeds it moves right, next to what it feeds: a block stands by the amplifiers.
    for unit in order.iter().rev() {
        let (Some(to), Some(from)) = (after.get(*unit), before.get(*unit)) else {
            continue;
        };
        if to.len() > from.len()
            && let Some(next) = to.iter().map(|to| at(&layer, *to)).min()
            && let Some(slot) = layer.get_mut(*unit)
        {
            *slot = (*slot).max(next.saturating_sub(1));
        }
    }
    // What has no direction of its own stands with a neighbour that has one.
    let mut settled: Vec<bool> = (0..count)
        .map(|unit| {
            after.get(unit).is_some_and(|list| !list.is_empty())
                || before.get(unit).is_some_and(|list| !list.is_empty())
        })
        .collect();
    if settled.iter().all(|done| !done) {
        for (slot, unit) in layer.iter_mut().zip(&system.units) {
            *slot = usize::from(unit.rank);
        }
    } else {
        let mut beside: Vec<Vec<usize>> = vec![Vec::new(); count];
        for link in &system.links {
            for (a, b) in [(link.from, link.to), (link.to, link.from)] {
                if let Some(list) = beside.get_mut(a) {
                    list.push(b);
                }
            }
        }
        let mut wave: Vec<usize> = (0..count)
            .filter(|unit| settled.get(*unit) == Some(&true))
            .collect();
        while !wave.is_empty() {
            let mut next = Vec::new();
            for unit in wave {
                for other in beside.get(unit).into_iter().flatten() {
                    if settled.get(*other) == Some(&false) {
                        let own = at(&layer, unit);
                        if let (Some(slot), Some(done)) = (layer.get_mut(*other), settled.get_mut(*other)) {
                            *slot = own;
                            *done = true;
                        }
                        next.push(*other);
                    }
                }
            }
            wave = next;
        }
    }
    // No empty layers.
    let mut used: Vec<usize> = layer.clone();
    used.order();
    used.dedup();
    for slot in &mut layer {
        *slot = used.binary_search(slot).unwrap_or(0);
    }
    layer
}

/// Room that a unit takes of its column besides its height, and a column of the board besides its width, about.
const AROUND_UNIT: i32 = 60;
const AROUND_COLUMN: i32 = 160;
/// Room that a passing run takes of a column, about.
const PASSING: i32 = 14;
/// Most columns for a layer.
const MOST_COLUMNS: usize = 12;

/// Other layers for a system that is much higher than wide: layers with many units become several columns, so that the
/// whole comes near to this width over height. Units that stood beside each other in a layer come to stand side by side,
/// and what was left of something stays left of it. `None` when the layers are best as they are.
pub(crate) fn spread(system: &System, web: &Web, aspect: f64) -> Option<Vec<usize>> {
    // Of each layer: its units from top to bottom, their heights together, the widest, and the room of passing runs.
    struct Layer {
        units: Vec<usize>,
        height: i32,
        width: i32,
        passing: i32,
    }
    let height_of = |unit: usize| {
        system
            .units
            .get(unit)
            .map_or(0, |unit| unit.height + AROUND_UNIT + 10 * unit.below.min(12))
    };
    let layers: Vec<Layer> = web
        .layers
        .iter()
        .map(|nodes| {
            let units: Vec<usize> = nodes
                .iter()
                .filter_map(|node| web.nodes.get(*node)?.unit)
                .collect();
            let width = units.iter().filter_map(|unit| system.units.get(*unit));
            Layer {
                height: units.iter().map(|unit| height_of(*unit)).sum(),
                width: width.map(|unit| unit.width).max().unwrap_or(0) + AROUND_COLUMN,
                passing: PASSING * i32::try_from(nodes.len() - units.len()).unwrap_or(0),
                units,
            }
        })
        .collect();
    let columns = |layer: &Layer, cap: f64| {
        let room = (cap - f64::from(layer.passing)).max(1.0);
        (libm::ceil(f64::from(layer.height) / room) as usize)
            .clamp(1, MOST_COLUMNS.min(layer.units.len().max(1)))
    };
    let window = |cap: f64| {
        let (mut width, mut height) = (0.0, 0.0_f64);
        for layer in &layers {
            let count = columns(layer, cap) as f64;
            width += count * f64::from(layer.width);
            height = height.max(f64::from(layer.passing) + f64::from(layer.height) / count);
        }
        width.max(aspect * height)
    };
    let highest = layers
        .iter()
        .map(|layer| layer.height + layer.passing)
        .max()
        .map_or(0.0, f64::from);
    let (mut best, mut cap) = (highest, highest);
    for _ in 0..40 {
        cap *= 0.93;
        if window(cap) < window(best) {
            best = cap;
        }
    }
    if window(best) > 0.85 * window(highest) {
        return None;
    }
    let mut spread = vec![0; system.units.len()];
    let mut first = 0;
    for layer in &layers {
        let mut filled = vec![0; columns(layer, best)];
        for unit in &layer.units {
            // The column that is filled least; of equal ones the leftmost.
            let least = (0..filled.len())
                .min_by_key(|column| filled.get(*column))
                .unwrap_or(0);
            if let (Some(slot), Some(height)) = (spread.get_mut(*unit), filled.get_mut(least)) {
                *slot = first + least;
                *height += height_of(*unit);
            }
        }
        first += filled.len();
    }
    Some(spread)
}

/// Turns links round that close a ring, and gives the units in an order in which every link goes forwards.
fn without_rings(system: &System, after: &mut [Vec<usize>]) -> Vec<usize> {
    #[derive(Clone, Copy, PartialEq)]
    enum State {
        New,
        Open,
        Done,
    }
    let count = system.units.len();
    let mut starts: Vec<usize> = (0..count).collect();
    starts.order_by_key(|unit| (system.units.get(*unit).map_or(0, |unit| unit.rank), *unit));
    let mut state = vec![State::New; count];
    let mut finished = Vec::with_capacity(count);
    let mut back: Vec<(usize, usize)> = Vec::new();
    for start in starts {
        if state.get(start) != Some(&State::New) {
            continue;
        }
        // Depth first with a stack of our own: a chain of thousands of parts must not overflow the call stack.
        let mut stack: Vec<(usize, usize)> = vec![(start, 0)];
        if let Some(slot) = state.get_mut(start) {
            *slot = State::Open;
        }
        while let Some((unit, next)) = stack.pop() {
            match after.get(unit).and_then(|list| list.get(next)).copied() {
                Some(to) => {
                    stack.push((unit, next + 1));
                    match state.get(to) {
                        Some(State::New) => {
                            if let Some(slot) = state.get_mut(to) {
                                *slot = State::Open;
                            }
                            stack.push((to, 0));
                        }
                        Some(State::Open) => back.push((unit, to)),
                        _ => {}
                    }
                }
                None => {
                    if let Some(slot) = state.get_mut(unit) {
                        *slot = State::Done;
                    }
                    finished.push(unit);
                }
            }
        }
    }
    for (from, to) in back {
        if let Some(list) = after.get_mut(from) {
            list.retain(|other| *other != to);
        }
        if from != to
            && let Some(list) = after.get_mut(to)
            && !list.contains(&from)
        {
            list.push(from);
        }
    }
    finished.reverse();
    finished
}
