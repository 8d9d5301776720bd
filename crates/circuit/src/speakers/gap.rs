//! Why a speaker is silent: the gap in its loop, named.
//!
//! From each end of a silent coil the way to an output is looked for through everything that conducts. Where there is
//! none, open links (a plug that is apart, a cut run, a blown fuse) may be crossed, as few as possible; the first of them
//! is the gap. Where even that leads nowhere, the end of the wiring is.

use super::index::{By, Index, Link, State};
use super::network::Network;
use crate::study::Gap;
use model::{End, PartId, PartKind, Role, Sheet};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use std::collections::VecDeque;
use words::{Saying, say};

/// Why this speaker, which has no complete loop, has none.
pub(crate) fn find(net: &Network<'_>, speaker: PartId) -> Gap {
    let index = &net.index;
    let Some(Role::Coil { .. }) = index
        .of_part(speaker)
        .next()
        .and_then(|at| index.spots.get(at))
        .map(|it| it.role)
    else {
        return dead_end(index, speaker, &[]);
    };
    // Coils one after the other: the first that has something to say about itself decides; most have one.
    let mut ends: Vec<(usize, usize)> = Vec::new();
    let all: Vec<usize> = index.of_part(speaker).collect();
    for pair in all.chunks(2) {
        if let [plus, minus] = *pair {
            ends.push((plus, minus));
        }
    }
    // A dual coil with one coil wired: speak of the wired one.
    ends.order_by_key(|(plus, minus)| !(is_wired(index, *plus) || is_wired(index, *minus)));
    let Some((plus, minus)) = ends.first().copied() else {
        return dead_end(index, speaker, &[]);
    };
    if !is_wired(index, plus) && !is_wired(index, minus) {
        return Gap {
            what: say!("gap-nothing-on", place = index.tag(speaker)),
            part: Some(speaker),
            run: None,
        };
    }
    let reached = [
        search(index, plus, (plus, minus), false),
        search(index, minus, (plus, minus), false),
    ];
    if let Some(gap) = joined(net, speaker, plus, minus) {
        return gap;
    }
    // An end that reaches no output by what conducts has the gap; with open links crossed it may yet.
    let mut candidates: Vec<(usize, Gap)> = Vec::new();
    for (start, found) in [(plus, &reached[0]), (minus, &reached[1])] {
        if !found.legs.is_empty() {
            continue;
        }
        let open = search(index, start, (plus, minus), true);
        match open.first_open {
            Some(link) if !open.legs.is_empty() => {
                candidates.push((open.crossed, name_link(index, start, &link)))
            }
            _ => candidates.push((usize::MAX, dead_end(index, speaker, &found.ends))),
        }
    }
    // A gap behind which an output lies says more than an end of the wiring.
    if let Some((_, gap)) = candidates.into_iter().min_by_key(|(crossed, _)| *crossed) {
        return gap;
    }
    // Both ends reach legs, but not the two of one output. A leg may be cut off on the way back.
    for (start, end) in [(plus, minus), (minus, plus)] {
        let open = search(index, start, (start, end), true);
        let closed = search(index, start, (start, end), false);
        if open.legs.len() > closed.legs.len()
            && let Some(link) = open.first_open
        {
            return name_link(index, start, &link);
        }
    }
    let legs: OrderedSet<String> = reached
        .iter()
        .flat_map(|found| &found.legs)
        .map(|at| index.written(*at))
        .collect();
    let legs: Vec<String> = legs.into_iter().collect();
    let tag = index.tag(speaker);
    let what = match legs.as_slice() {
        [one] => say!("gap-one-leg", speaker = tag, leg = one),
        _ => say!("gap-no-pair", speaker = tag, legs = legs),
    };
    Gap {
        what,
        part: Some(speaker),
        run: None,
    }
}

fn is_wired(index: &Index<'_>, at: usize) -> bool {
    index.links_at(at).any(|link| matches!(link.by, By::Run(_))) || index.stubs.contains_key(&at)
}

/// Both ends of the coil joined by wire.
fn joined(net: &Network<'_>, speaker: PartId, plus: usize, minus: usize) -> Option<Gap> {
    let index = &net.index;
    let mut from: OrderedMap<usize, Option<By>> = OrderedMap::from([(plus, None)]);
    let mut waiting = VecDeque::from([plus]);
    while let Some(at) = waiting.pop_front() {
        for link in index.links_at(at).filter(|link| link.is_closed()) {
            let next = link.other(at);
            if index.is_supply(next) || from.contains_key(&next) {
                continue;
            }
            from.insert(next, Some(link.by));
            waiting.push_back(next);
        }
    }
    let by = (*from.get(&minus)?)?;
    let tag = index.tag(speaker);
    let (what, run) = match by {
        By::Run(run) => (
            say!("gap-joined-by-run", speaker = tag, run = index.run_tag(run)),
            Some(run),
        ),
        By::Inside(part) => (
            say!("gap-joined-in-part", speaker = tag, part = index.tag(part)),
            None,
        ),
    };
    Some(Gap {
        what,
        part: Some(speaker),
        run,
    })
}

/// What a search from one end of a coil found.
#[derive(Default)]
struct Found {
    /// Legs of outputs, by terminal number, reached with the fewest open links.
    legs: OrderedSet<usize>,
    /// The first open link on the way to them, and how many there are.
    first_open: Option<Link>,
    crossed: usize,
    /// Terminals that were reached, in order.
    ends: Vec<usize>,
}

/// Looks for output legs from a terminal, not through the coil between `coil`'s ends. With `cross`, open links may be crossed,
/// as few as can be (breadth first, closed links before open ones).
fn search(index: &Index<'_>, start: usize, coil: (usize, usize), cross: bool) -> Found {
    let mut found = Found::default();
    let mut seen: OrderedMap<usize, (usize, Option<Link>)> = OrderedMap::from([(start, (0, None))]);
    let mut done = OrderedSet::new();
    let mut waiting = VecDeque::from([start]);
    while let Some(at) = waiting.pop_front() {
        if !done.insert(at) {
            continue;
        }
        let Some((crossed, first)) = seen.get(&at).copied() else {
            continue;
        };
        found.ends.push(at);
        if let Some(Role::SpeakerOut { .. }) = index.spots.get(at).map(|it| it.role) {
            if found.legs.is_empty() {
                (found.crossed, found.first_open) = (crossed, first);
            }
            found.legs.insert(at);
            continue;
        }
        if index.is_supply(at) {
            continue;
        }
        let mut step = |next: usize, link: Option<&Link>| {
            let cost = crossed + usize::from(link.is_some());
            if seen.get(&next).is_none_or(|(known, _)| cost < *known) {
                seen.insert(next, (cost, first.or(link.copied())));
                if link.is_some() {
                    waiting.push_back(next)
                } else {
                    waiting.push_front(next)
                }
            }
        };
        for link in index.links_at(at) {
            if link.is_closed() {
                step(link.other(at), None);
            } else if cross {
                step(link.other(at), Some(link));
            }
        }
        for next in across(index, at) {
            if (at, next) != coil && (next, at) != coil {
                step(next, None);
            }
        }
    }
    found
}

/// Terminals that a signal reaches from here through the part itself: the other end of a coil, the sides of a crossover
/// or capacitor.
fn across(index: &Index<'_>, at: usize) -> Vec<usize> {
    let Some(spot) = index.spots.get(at) else {
        return Vec::new();
    };
    let part = index.of_part(spot.part);
    match spot.role {
        Role::Coil { coil, .. } => part
            .filter(|other| {
                *other != at
                    && index
                        .spots
                        .get(*other)
                        .is_some_and(|it| matches!(it.role, Role::Coil { coil: c, .. } if c == coil))
            })
            .collect(),
        Role::SpeakerThrough => {
            let plus = ["in+", "low+", "high+", "1", "2"];
            if !plus.contains(&spot.name.as_str()) {
                return Vec::new();
            }
            // Forward and back between input and outputs; not from one output to the other.
            let name = spot.name.as_str();
            part.filter(|other| {
                index.spots.get(*other).is_some_and(|it| {
                    let other_name = it.name.as_str();
                    *other != at
                        && match name {
                            "in+" => matches!(other_name, "low+" | "high+"),
                            "low+" | "high+" => other_name == "in+",
                            _ => matches!(other_name, "1" | "2"),
                        }
                })
            })
            .collect()
        }
        _ => Vec::new(),
    }
}

fn name_link(index: &Index<'_>, start: usize, link: &Link) -> Gap {
    let from = index.written(start);
    match link.by {
        By::Run(run) => Gap {
            what: say!("gap-cut", run = index.run_tag(run)),
            part: None,
            run: Some(run),
        },
        By::Inside(part) => {
            let tag = index.tag(part);
            let what = match link.state {
                State::Apart => say!("gap-apart", plug = tag, from = from),
                State::LoopOpen => say!(
                    "gap-loop-open",
                    plug = tag,
                    from = cavity(index, link.a),
                    to = cavity(index, link.b),
                ),
                State::Blown => say!("gap-blown", device = tag),
                State::Off | State::Closed | State::Cut => say!("gap-open", device = tag),
            };
            Gap {
                what,
                part: Some(part),
                run: None,
            }
        }
    }
}

/// The position of a cavity from its terminal `3a`.
fn cavity(index: &Index<'_>, at: usize) -> String {
    index.spots.get(at).map_or_else(String::new, |spot| {
        let name = spot.name.as_str();
        name.strip_suffix(['a', 'b']).unwrap_or(name).to_owned()
    })
}

/// The end of the wiring, among the terminals that were reached: a run that lies loose, a coil end without a wire, or else the last.
fn dead_end(index: &Index<'_>, speaker: PartId, reached: &[usize]) -> Gap {
    for at in reached {
        if let Some(run) = index.stubs.get(at).and_then(|runs| runs.first()) {
            let tag = index.run_tag(*run);
            return Gap {
                what: loose(index.sheet, *run, &tag),
                part: None,
                run: Some(*run),
            };
        }
    }
    let bare = reached.iter().copied().find(|at| {
        let is_end = index
            .spots
            .get(*at)
            .is_some_and(|spot| matches!(spot.role, Role::Coil { .. } | Role::SpeakerThrough));
        is_end && !is_wired(index, *at)
    });
    if let Some(at) = bare {
        let part = index.spots.get(at).map(|spot| spot.part);
        return Gap {
            what: say!("gap-nothing-on", place = index.written(at)),
            part,
            run: None,
        };
    }
    let supply = reached.iter().copied().find(|at| index.is_supply(*at));
    if let Some(at) = supply {
        return Gap {
            what: say!(
                "gap-led-to-supply",
                speaker = index.tag(speaker),
                terminal = index.written(at),
            ),
            part: Some(speaker),
            run: None,
        };
    }
    match reached.last() {
        Some(last) => {
            let part = index.spots.get(*last).map(|spot| spot.part);
            let what = match part
                .and_then(|id| index.sheet.parts.get(&id))
                .map(|part| &part.is)
            {
                Some(PartKind::Plug(_) | PartKind::Adapter(_)) => {
                    say!("gap-nothing-goes-on", terminal = index.written(*last))
                }
                _ => say!(
                    "gap-lead-ends",
                    speaker = index.tag(speaker),
                    terminal = index.written(*last),
                ),
            };
            Gap {
                what,
                part,
                run: None,
            }
        }
        None => Gap {
            what: say!("gap-nothing-on", place = index.tag(speaker)),
            part: Some(speaker),
            run: None,
        },
    }
}

fn loose(sheet: &Sheet, run: model::RunId, tag: &str) -> Saying {
    let missing = sheet
        .runs
        .get(&run)
        .is_some_and(|it| it.ends().iter().all(|end| matches!(end, End::On(_))));
    if missing {
        say!("gap-run-on-nothing", run = tag)
    } else {
        say!("gap-run-loose", run = tag)
    }
}
