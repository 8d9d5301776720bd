//! Sorting by the places of items: one sorting routine for all types.

use std::cmp::Ordering;

/// Sorting of lists. All sorts here are stable.
pub trait Sort<T> {
    /// Sorts by a comparison.
    fn order_by(&mut self, compare: impl FnMut(&T, &T) -> Ordering);
    /// Sorts by a key.
    fn order_by_key<K: Ord>(&mut self, mut key: impl FnMut(&T) -> K) {
        self.order_by(|a, b| key(a).cmp(&key(b)));
    }
    /// Sorts in the items' own order.
    fn order(&mut self)
    where
        T: Ord,
    {
        self.order_by(T::cmp);
    }
}

impl<T> Sort<T> for [T] {
    fn order_by(&mut self, mut compare: impl FnMut(&T, &T) -> Ordering) {
        let places = places(self.len(), &mut |a, b| match (self.get(a), self.get(b)) {
            (Some(a), Some(b)) => compare(a, b),
            _ => Ordering::Equal,
        });
        if let Some(places) = places {
            follow(places, &mut |a, b| self.swap(a, b));
        }
    }
}

/// Which item comes at each place when all are in order; `None` when they are already.
#[inline(never)]
fn places(count: usize, compare: &mut dyn FnMut(usize, usize) -> Ordering) -> Option<Vec<usize>> {
    if (1..count).all(|at| compare(at - 1, at) != Ordering::Greater) {
        return None;
    }
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|a, b| compare(*a, *b));
    Some(places)
}

/// Brings the items to their places by exchanges.
#[inline(never)]
fn follow(mut places: Vec<usize>, swap: &mut dyn FnMut(usize, usize)) {
    for start in 0..places.len() {
        let mut at = start;
        // Along the ring of places that this one is on; each is then marked as holding its own.
        while let Some(from) = places.get(at).copied() {
            if let Some(place) = places.get_mut(at) {
                *place = at;
            }
            if from == start || from == at {
                break;
            }
            swap(at, from);
            at = from;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Against the standard library's sort.
        #[test]
        fn sorts_and_is_stable(list in proptest::collection::vec((0_u8..20, any::<u16>()), 0..80)) {
            let mut here = list.clone();
            here.order_by_key(|(key, _)| *key);
            let mut there = list;
            there.sort_by_key(|(key, _)| *key);
            prop_assert_eq!(here, there);
        }
    }
}
