//! The best ways through a graph of passages: the best by Dijkstra's algorithm, the next best by Yen's (J. Y. Yen, "Finding
//! the k shortest loopless paths in a network", Management Science 17, 1971). A body has some seventy places, so that the
//! plain forms of both, without a heap, are the fastest.
//!
//! Costs are not negative and finite. Of ways that cost the same, the one whose passages come first in the plan is better,
//! so that the answer is always the same.

/// A graph: what joins what.
pub(crate) struct Net<'a> {
    /// By passage: the places at its ends.
    pub(crate) ends: &'a [[usize; 2]],
    /// By place: the passages at it.
    pub(crate) at_place: &'a [Vec<usize>],
}

/// A way: what it costs, and its passages in order.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Way {
    pub(crate) cost: f64,
    pub(crate) passages: Vec<usize>,
}

/// What a way may not use.
#[derive(Clone)]
struct Barred {
    passages: Vec<bool>,
    places: Vec<bool>,
}

impl Net<'_> {
    fn across(&self, passage: usize, from: usize) -> Option<usize> {
        match self.ends.get(passage)? {
            [a, b] if *a == from => Some(*b),
            [a, b] if *b == from => Some(*a),
            _ => None,
        }
    }

    fn unbarred(&self) -> Barred {
        Barred {
            passages: vec![false; self.ends.len()],
            places: vec![false; self.at_place.len()],
        }
    }

    /// The best way; none where there is no way at all. From a place to itself it is the empty way.
    pub(crate) fn best(&self, from: usize, to: usize, costs: &[f64]) -> Option<Way> {
        self.best_but(from, to, costs, &self.unbarred())
    }

    fn best_but(&self, from: usize, to: usize, costs: &[f64], barred: &Barred) -> Option<Way> {
        let count = self.at_place.len();
        if from >= count || to >= count {
            return None;
        }
        let mut far = vec![f64::INFINITY; count];
        let mut by: Vec<Option<usize>> = vec![None; count];
        let mut done = vec![false; count];
        *far.get_mut(from)? = 0.0;
        loop {
            let mut here = None;
            let mut least = f64::INFINITY;
            for (place, so_far) in far.iter().enumerate() {
                if done.get(place) == Some(&false) && *so_far < least {
                    (here, least) = (Some(place), *so_far);
                }
            }
            let here = here?;
            if here == to {
                break;
            }
            *done.get_mut(here)? = true;
            for passage in self.at_place.get(here)? {
                if barred.passages.get(*passage) == Some(&true) {
                    continue;
                }
                let Some(next) = self.across(*passage, here) else {
                    continue;
                };
                if barred.places.get(next) == Some(&true) || done.get(next) == Some(&true) {
                    continue;
                }
                let cost = least + costs.get(*passage).copied().unwrap_or(f64::INFINITY);
                if far.get(next).is_some_and(|known| cost < *known) {
                    *far.get_mut(next)? = cost;
                    *by.get_mut(next)? = Some(*passage);
                }
            }
        }
        let mut passages = Vec::new();
        let mut here = to;
        while here != from {
            let passage = by.get(here).copied().flatten()?;
            passages.push(passage);
            here = self.across(passage, here)?;
        }
        passages.reverse();
        Some(Way {
            cost: far.get(to).copied()?,
            passages,
        })
    }

    /// The places on a way, from its start.
    fn places_on(&self, from: usize, passages: &[usize]) -> Vec<usize> {
        let mut here = from;
        let mut places = vec![from];
        for passage in passages {
            here = self.across(*passage, here).unwrap_or(here);
            places.push(here);
        }
        places
    }

    /// The best ways that pass no place twice, best first, `count` of them or as many as there are.
    pub(crate) fn ways(&self, from: usize, to: usize, costs: &[f64], count: usize) -> Vec<Way> {
        let mut found: Vec<Way> = self.best(from, to, costs).into_iter().collect();
        let mut candidates: Vec<Way> = Vec::new();
        while found.len() < count {
            let Some(last) = found.last().cloned() else { break };
            let places = self.places_on(from, &last.passages);
            for at in 0..last.passages.len() {
                let root = last.passages.get(..at).unwrap_or_default();
                let Some(spur) = places.get(at).copied() else {
                    break;
                };
                let mut barred = self.unbarred();
                // Neither back into the root, nor on as a known way with the same root does.
                for place in places.get(..at).unwrap_or_default() {
                    if let Some(bar) = barred.places.get_mut(*place) {
                        *bar = true;
                    }
                }
                for known in found.iter().filter(|way| way.passages.starts_with(root)) {
                    let next = known.passages.get(at);
                    if let Some(bar) = next.and_then(|next| barred.passages.get_mut(*next)) {
                        *bar = true;
                    }
                }
                let Some(rest) = self.best_but(spur, to, costs, &barred) else {
                    continue;
                };
                let mut passages = root.to_vec();
                passages.extend(rest.passages);
                let cost = passages.iter().filter_map(|passage| costs.get(*passage)).sum();
                let way = Way { cost, passages };
                if !candidates.contains(&way) {
                    candidates.push(way);
                }
            }
            let best = candidates.iter().enumerate().min_by(|(_, a), (_, b)| {
                a.cost
                    .total_cmp(&b.cost)
                    .then_with(|| a.passages.cmp(&b.passages))
            });
            let Some(best) = best.map(|(at, _)| at) else { break };
            found.push(candidates.swap_remove(best));
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Costs of all simple ways, by trying every one.
    fn all_ways(
        net: &Net<'_>,
        costs: &[f64],
        here: usize,
        to: usize,
        been: &mut Vec<usize>,
        cost: f64,
        out: &mut Vec<f64>,
    ) {
        if here == to {
            out.push(cost);
            return;
        }
        been.push(here);
        for passage in &net.at_place[here] {
            let next = net.across(*passage, here).expect("it is at this place");
            if !been.contains(&next) {
                all_ways(net, costs, next, to, been, cost + costs[*passage], out);
            }
        }
        been.pop();
    }

    proptest! {
        #[test]
        fn ways_are_the_least_of_all_there_are(
            count in 2..8_usize,
            joins in proptest::collection::vec((0..8_usize, 0..8_usize, 1..60_u32), 1..16),
        ) {
            let mut ends = Vec::new();
            let mut costs = Vec::new();
            let mut at_place = vec![Vec::new(); count];
            for (a, b, cost) in joins {
                let (a, b) = (a % count, b % count);
                if a != b {
                    at_place[a].push(ends.len());
                    at_place[b].push(ends.len());
                    ends.push([a, b]);
                    costs.push(f64::from(cost));
                }
            }
            let net = Net { ends: &ends, at_place: &at_place };
            let mut all = Vec::new();
            all_ways(&net, &costs, 0, count - 1, &mut Vec::new(), 0.0, &mut all);
            all.sort_by(f64::total_cmp);
            let found: Vec<f64> = net.ways(0, count - 1, &costs, 6).iter().map(|way| way.cost).collect();
            all.truncate(6);
            prop_assert_eq!(found, all);
        }
    }
}
