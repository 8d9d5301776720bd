//! A set of small numbers that fills in any order and is read in ascending order, without sorting.

/// Numbers as bits. One is kept and used again for many sets in turn: what is taken out leaves it empty.
#[derive(Clone, Debug)]
pub(crate) struct Marks {
    words: Vec<u64>,
    /// The first and the last word that are not empty; the first beyond the last when all are.
    first: usize,
    last: usize,
}

impl Marks {
    /// For numbers below this one; others are left out.
    pub(crate) fn new(count: usize) -> Self {
        Self {
            words: vec![0; count.div_ceil(64)],
            first: usize::MAX,
            last: 0,
        }
    }

    /// Marks the number.
    pub(crate) fn insert(&mut self, number: usize) {
        let at = number / 64;
        if let Some(word) = self.words.get_mut(at) {
            *word |= 1 << (number % 64);
            self.first = self.first.min(at);
            self.last = self.last.max(at);
        }
    }

    /// Marks all of these.
    pub(crate) fn insert_all(&mut self, numbers: &[usize]) {
        numbers.iter().for_each(|number| self.insert(*number));
    }

    /// Takes all marked numbers out into a list, ascending; what the list held is gone.
    pub(crate) fn take_into(&mut self, list: &mut Vec<usize>) {
        list.clear();
        if let Some(words) = self.words.get_mut(self.first..=self.last) {
            for (at, word) in (self.first..).zip(words) {
                let mut left = std::mem::take(word);
                while left != 0 {
                    list.push(at * 64 + left.trailing_zeros() as usize);
                    left &= left - 1;
                }
            }
        }
        (self.first, self.last) = (usize::MAX, 0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Against the standard library's set.
        #[test]
        fn gives_each_number_once_and_ascending(
            sets in proptest::collection::vec(proptest::collection::vec(0_usize..500, 0..60), 1..5),
        ) {
            let mut marks = Marks::new(500);
            let mut list = Vec::new();
            for set in sets {
                set.iter().for_each(|number| marks.insert(*number));
                marks.take_into(&mut list);
                let other: std::collections::BTreeSet<usize> = set.into_iter().collect();
                prop_assert!(list.iter().eq(other.iter()));
            }
        }
    }
}
