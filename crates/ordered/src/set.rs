//! The set.

use crate::OrderedMap;
use std::borrow::Borrow;
use std::fmt;
use std::ops::RangeBounds;

/// A set in its order, with the interface of the standard library's set as far as it is used.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OrderedSet<T>(OrderedMap<T, ()>);

impl<T> OrderedSet<T> {
    /// An empty set.
    #[must_use]
    pub const fn new() -> Self {
        Self(OrderedMap::new())
    }
    /// How many it holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }
    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
    /// Takes all out.
    pub fn clear(&mut self) {
        self.0.clear();
    }
    /// All, in order.
    pub fn iter(&self) -> Iter<'_, T> {
        self.0.iter().map(item)
    }
    /// The first.
    #[must_use]
    pub fn first(&self) -> Option<&T> {
        self.0.first_key_value().map(item)
    }
    /// The last.
    #[must_use]
    pub fn last(&self) -> Option<&T> {
        self.0.last_key_value().map(item)
    }
    /// Takes the first out.
    pub fn pop_first(&mut self) -> Option<T> {
        self.0.pop_first().map(|(item, ())| item)
    }
    /// Takes the last out.
    pub fn pop_last(&mut self) -> Option<T> {
        self.0.pop_last().map(|(item, ())| item)
    }
    /// Keeps those for which this is true.
    pub fn retain(&mut self, mut keep: impl FnMut(&T) -> bool) {
        self.0.retain(|item, ()| keep(item));
    }
}

fn item<'s, T>((item, ()): (&'s T, &'s ())) -> &'s T {
    item
}

/// Iterator over a set.
pub type Iter<'s, T> = std::iter::Map<crate::map::Iter<'s, T, ()>, fn((&'s T, &'s ())) -> &'s T>;

impl<T: Ord> OrderedSet<T> {
    /// Whether it holds this.
    pub fn contains<Q: Ord + ?Sized>(&self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.contains_key(item)
    }
    /// Puts one in; whether it was not there.
    pub fn insert(&mut self, item: T) -> bool {
        self.0.insert(item, ()).is_none()
    }
    /// Takes one out; whether it was there.
    pub fn remove<Q: Ord + ?Sized>(&mut self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.remove(item).is_some()
    }
    /// Those in a range.
    pub fn range(&self, range: impl RangeBounds<T>) -> Iter<'_, T> {
        self.0.range(range).map(item)
    }
    /// Takes over all of another set, which is then empty.
    pub fn append(&mut self, other: &mut Self) {
        self.0.append(&mut other.0);
    }
    /// Whether all of this are in the other.
    #[must_use]
    pub fn is_subset(&self, other: &Self) -> bool {
        self.iter().all(|item| other.contains(item))
    }
    /// Whether all of the other are in this.
    #[must_use]
    pub fn is_superset(&self, other: &Self) -> bool {
        other.is_subset(self)
    }
    /// Whether none of this is in the other.
    #[must_use]
    pub fn is_disjoint(&self, other: &Self) -> bool {
        !self.iter().any(|item| other.contains(item))
    }
    /// Those that are in both, in order.
    pub fn intersection<'s>(&'s self, other: &'s Self) -> impl Iterator<Item = &'s T> {
        self.iter().filter(|item| other.contains(*item))
    }
    /// Those that are in this and not in the other, in order.
    pub fn difference<'s>(&'s self, other: &'s Self) -> impl Iterator<Item = &'s T> {
        self.iter().filter(|item| !other.contains(*item))
    }
    /// Those that are in one and not in the other, in order.
    pub fn symmetric_difference<'s>(&'s self, other: &'s Self) -> impl Iterator<Item = &'s T> {
        self.union(other)
            .filter(|item| !(self.contains(*item) && other.contains(*item)))
    }
    /// Those that are in either, in order.
    pub fn union<'s>(&'s self, other: &'s Self) -> impl Iterator<Item = &'s T> {
        let both: OrderedSet<&'s T> = self.iter().chain(other.iter()).collect();
        both.into_iter()
    }
}

impl<T> Default for OrderedSet<T> {
    fn default() -> Self {
        Self::new()
    }
}

impl<T: fmt::Debug> fmt::Debug for OrderedSet<T> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_set().entries(self.iter()).finish()
    }
}

impl<T: Ord> FromIterator<T> for OrderedSet<T> {
    fn from_iter<I: IntoIterator<Item = T>>(all: I) -> Self {
        Self(all.into_iter().map(|item| (item, ())).collect())
    }
}

impl<T: Ord, const N: usize> From<[T; N]> for OrderedSet<T> {
    fn from(all: [T; N]) -> Self {
        all.into_iter().collect()
    }
}

impl<T: Ord> Extend<T> for OrderedSet<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, all: I) {
        self.0.extend(all.into_iter().map(|item| (item, ())));
    }
}

impl<'t, T: Ord + Copy + 't> Extend<&'t T> for OrderedSet<T> {
    fn extend<I: IntoIterator<Item = &'t T>>(&mut self, all: I) {
        self.extend(all.into_iter().copied());
    }
}

/// Iterator over the items of a set themselves.
pub type IntoIter<T> = std::iter::Map<std::vec::IntoIter<(T, ())>, fn((T, ())) -> T>;

impl<T> IntoIterator for OrderedSet<T> {
    type Item = T;
    type IntoIter = IntoIter<T>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter().map(|(item, ())| item)
    }
}

impl<'s, T> IntoIterator for &'s OrderedSet<T> {
    type Item = &'s T;
    type IntoIter = Iter<'s, T>;
    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl<T: serde::Serialize> serde::Serialize for OrderedSet<T> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

#[cfg(feature = "schema")]
impl<T: schemars::JsonSchema> schemars::JsonSchema for OrderedSet<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        std::collections::BTreeSet::<T>::schema_name()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        std::collections::BTreeSet::<T>::json_schema(generator)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Against the standard library's set.
        #[test]
        fn does_as_the_standard_set(
            a in proptest::collection::vec(0_u8..30, 0..30), b in proptest::collection::vec(0_u8..30, 0..30),
        ) {
            let (x, y): (OrderedSet<u8>, OrderedSet<u8>) = (a.iter().copied().collect(), b.iter().copied().collect());
            let (p, q): (std::collections::BTreeSet<u8>, std::collections::BTreeSet<u8>) =
                (a.into_iter().collect(), b.into_iter().collect());
            prop_assert!(x.iter().eq(p.iter()));
            prop_assert!(x.union(&y).eq(p.union(&q)));
            prop_assert!(x.intersection(&y).eq(p.intersection(&q)));
            prop_assert!(x.difference(&y).eq(p.difference(&q)));
            prop_assert_eq!(x.is_subset(&y), p.is_subset(&q));
            prop_assert_eq!(x.is_disjoint(&y), p.is_disjoint(&q));
        }
    }
}
