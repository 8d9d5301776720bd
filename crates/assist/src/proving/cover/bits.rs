//! Sets of small numbers, by one bit each.

/// A set of numbers below a size that is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Bits(pub(super) Vec<u64>);

impl Bits {
    pub(super) fn new(size: usize) -> Self {
        Self(vec![0; size.div_ceil(64)])
    }
    pub(super) fn put(&mut self, at: usize) {
        if let Some(word) = self.0.get_mut(at / 64) {
            *word |= 1 << (at % 64);
        }
    }
    pub(super) fn drop(&mut self, at: usize) {
        if let Some(word) = self.0.get_mut(at / 64) {
            *word &= !(1 << (at % 64));
        }
    }
    pub(super) fn has(&self, at: usize) -> bool {
        self.0.get(at / 64).is_some_and(|word| word >> (at % 64) & 1 == 1)
    }
    pub(super) fn is_within(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).all(|(a, b)| a & !b == 0)
    }
    pub(super) fn meets(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).any(|(a, b)| a & b != 0)
    }
    pub(super) fn without(&mut self, other: &Self) {
        for (a, b) in self.0.iter_mut().zip(&other.0) {
            *a &= !b;
        }
    }
    pub(super) fn with(&mut self, other: &Self) {
        for (a, b) in self.0.iter_mut().zip(&other.0) {
            *a |= b;
        }
    }
    /// Leaves only what the other has too.
    pub(super) fn keep(&mut self, other: &Self) {
        for (a, b) in self.0.iter_mut().zip(&other.0) {
            *a &= *b;
        }
    }
    pub(super) fn count(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }
    pub(super) fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }
    pub(super) fn iter(&self) -> impl Iterator<Item = usize> + '_ {
        self.0.iter().enumerate().flat_map(|(at, word)| {
            let mut left = *word;
            std::iter::from_fn(move || {
                if left == 0 {
                    return None;
                }
                let bit = left.trailing_zeros() as usize;
                left &= left - 1;
                Some(at * 64 + bit)
            })
        })
    }
}
