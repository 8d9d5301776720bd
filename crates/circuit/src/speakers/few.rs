//! A short list that needs no place of its own in memory.

use std::ops::{Deref, DerefMut};

/// So many items lie in the list itself.
const FEW: usize = 4;

/// A list that as a rule holds a few items: those lie in it. Of a channel with its speaker and leads dozens of such lists are
/// made, and most of the work would be to ask for memory and to give it back.
#[derive(Clone, Debug, Default)]
pub(crate) struct Few<T> {
    few: [T; FEW],
    count: usize,
    /// All items, once they are more.
    more: Vec<T>,
}

impl<T: Copy + Default> Few<T> {
    /// With one item.
    pub(crate) fn of(item: T) -> Self {
        let mut it = Self::default();
        it.push(item);
        it
    }
    /// Puts an item at the end.
    pub(crate) fn push(&mut self, item: T) {
        match self.few.get_mut(self.count) {
            Some(slot) if self.more.is_empty() => {
                *slot = item;
                self.count += 1;
            }
            _ => {
                if self.more.is_empty() {
                    self.more.extend_from_slice(&self.few);
                }
                self.more.push(item);
            }
        }
    }
    /// Puts items at the end.
    pub(crate) fn extend(&mut self, items: &[T]) {
        items.iter().for_each(|item| self.push(*item));
    }
    /// Keeps those for which this is true, in their order.
    pub(crate) fn retain(&mut self, keep: impl Fn(&T) -> bool) {
        let kept: Self = self
            .iter()
            .filter(|item| keep(item))
            .fold(Self::default(), |mut kept, item| {
                kept.push(*item);
                kept
            });
        *self = kept;
    }
}

impl<T> Deref for Few<T> {
    type Target = [T];
    fn deref(&self) -> &[T] {
        if self.more.is_empty() {
            self.few.get(..self.count).unwrap_or_default()
        } else {
            &self.more
        }
    }
}

impl<T> DerefMut for Few<T> {
    fn deref_mut(&mut self) -> &mut [T] {
        if self.more.is_empty() {
            self.few.get_mut(..self.count).unwrap_or_default()
        } else {
            &mut self.more
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Against the standard library's list.
        #[test]
        fn does_as_a_list(items in proptest::collection::vec(0_u8..20, 0..12), least in 0_u8..20) {
            let mut few = Few::default();
            few.extend(&items);
            prop_assert_eq!(&*few, items.as_slice());
            few.reverse();
            few.retain(|item| *item >= least);
            few.push(least);
            let mut list: Vec<u8> = items.into_iter().rev().filter(|item| *item >= least).collect();
            list.push(least);
            prop_assert_eq!(&*few, list.as_slice());
        }
    }
}
