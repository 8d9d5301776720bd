//! The map.

use crate::Sort;
use std::borrow::Borrow;
use std::fmt;
use std::ops::{Bound, Index, RangeBounds};

/// A map in the order of its keys, with the interface of the standard library's map as far as it is used.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OrderedMap<K, V>(Vec<(K, V)>);

impl<K, V> OrderedMap<K, V> {
    /// An empty map.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
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
    pub fn iter(&self) -> Iter<'_, K, V> {
        self.0.iter().map(by_reference)
    }
    /// All, in order, to be changed.
    pub fn iter_mut(&mut self) -> IterMut<'_, K, V> {
        self.0.iter_mut().map(to_be_changed)
    }
    /// The keys, in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, _)| key)
    }
    /// The values, in the order of their keys.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + ExactSizeIterator + Clone {
        self.0.iter().map(|(_, value)| value)
    }
    /// The values, to be changed.
    pub fn values_mut(&mut self) -> impl DoubleEndedIterator<Item = &mut V> + ExactSizeIterator {
        self.0.iter_mut().map(|(_, value)| value)
    }
    /// The keys themselves.
    pub fn into_keys(self) -> impl DoubleEndedIterator<Item = K> + ExactSizeIterator {
        self.0.into_iter().map(|(key, _)| key)
    }
    /// The values themselves.
    pub fn into_values(self) -> impl DoubleEndedIterator<Item = V> + ExactSizeIterator {
        self.0.into_iter().map(|(_, value)| value)
    }
    /// What stands at a place in the order, counted from 0.
    #[must_use]
    pub fn at(&self, place: usize) -> Option<(&K, &V)> {
        self.0.get(place).map(by_reference)
    }
    /// The first.
    #[must_use]
    pub fn first_key_value(&self) -> Option<(&K, &V)> {
        self.0.first().map(by_reference)
    }
    /// The last.
    #[must_use]
    pub fn last_key_value(&self) -> Option<(&K, &V)> {
        self.0.last().map(by_reference)
    }
    /// Takes the first out.
    pub fn pop_first(&mut self) -> Option<(K, V)> {
        (!self.0.is_empty()).then(|| self.0.remove(0))
    }
    /// Takes the last out.
    pub fn pop_last(&mut self) -> Option<(K, V)> {
        self.0.pop()
    }
    /// Keeps those for which this is true.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        self.0.retain_mut(|(key, value)| keep(key, value));
    }
}

fn by_reference<K, V>(item: &(K, V)) -> (&K, &V) {
    (&item.0, &item.1)
}

fn to_be_changed<K, V>(item: &mut (K, V)) -> (&K, &mut V) {
    (&item.0, &mut item.1)
}

/// Iterator over a map.
pub type Iter<'m, K, V> = std::iter::Map<std::slice::Iter<'m, (K, V)>, fn(&'m (K, V)) -> (&'m K, &'m V)>;
/// Iterator over a map whose values can be changed.
pub type IterMut<'m, K, V> =
    std::iter::Map<std::slice::IterMut<'m, (K, V)>, fn(&'m mut (K, V)) -> (&'m K, &'m mut V)>;

impl<K: Ord, V> OrderedMap<K, V> {
    /// Where a key is, or where it would go.
    fn find<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        // Most keys that come in go to the end.
        match self.0.last() {
            Some((last, _)) if last.borrow() < key => Err(self.0.len()),
            _ => self.0.binary_search_by(|(other, _)| other.borrow().cmp(key)),
        }
    }
    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        self.0.get(at).map(|(_, value)| value)
    }
    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        self.0.get_mut(at).map(|(_, value)| value)
    }
    /// The key as the map holds it, and its value.
    pub fn get_key_value<Q: Ord + ?Sized>(&self, key: &Q) -> Option<(&K, &V)>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        self.0.get(at).map(by_reference)
    }
    /// Whether there is such a key.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.find(key).is_ok()
    }
    /// Puts a value in; the one that was there is given back.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.find(&key) {
            Ok(at) => self
                .0
                .get_mut(at)
                .map(|(_, there)| std::mem::replace(there, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }
    /// Takes a key out.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let at = self.find(key).ok()?;
        Some(self.0.remove(at).1)
    }
    /// The place of a key, taken or free.
    pub fn entry(&mut self, key: K) -> Entry<'_, K, V> {
        match self.find(&key) {
            Ok(at) => Entry::Occupied(OccupiedEntry { map: self, at }),
            Err(at) => Entry::Vacant(VacantEntry { map: self, at, key }),
        }
    }
    /// Those whose keys are in a range.
    pub fn range(&self, range: impl RangeBounds<K>) -> Iter<'_, K, V> {
        let from = match range.start_bound() {
            Bound::Unbounded => 0,
            Bound::Included(key) => self.0.partition_point(|(k, _)| k < key),
            Bound::Excluded(key) => self.0.partition_point(|(k, _)| k <= key),
        };
        let to = match range.end_bound() {
            Bound::Unbounded => self.0.len(),
            Bound::Included(key) => self.0.partition_point(|(k, _)| k <= key),
            Bound::Excluded(key) => self.0.partition_point(|(k, _)| k < key),
        };
        self.0.get(from..to).unwrap_or_default().iter().map(by_reference)
    }
    /// Takes over all of another map, which is then empty.
    pub fn append(&mut self, other: &mut Self) {
        self.extend(std::mem::take(other));
    }
    /// Brings a list of keys in any order into order; of one key the last stays.
    fn settle(mut list: Vec<(K, V)>) -> Self {
        let ascending = |list: &[(K, V)]| list.is_sorted_by(|(a, _), (b, _)| a < b);
        if !ascending(&list) {
            list.order_by(|(a, _), (b, _)| a.cmp(b));
            list.dedup_by(|later, earlier| {
                let same = later.0 == earlier.0;
                if same {
                    std::mem::swap(later, earlier);
                }
                same
            });
        }
        Self(list)
    }
}

/// So many are put in one by one; for more, all is sorted anew.
const FEW: usize = 8;

/// The place of a key in a map.
pub enum Entry<'m, K, V> {
    /// It is there.
    Occupied(OccupiedEntry<'m, K, V>),
    /// It is not.
    Vacant(VacantEntry<'m, K, V>),
}

/// The place of a key that is there.
pub struct OccupiedEntry<'m, K, V> {
    map: &'m mut OrderedMap<K, V>,
    at: usize,
}

/// The place of a key that is not there.
pub struct VacantEntry<'m, K, V> {
    map: &'m mut OrderedMap<K, V>,
    at: usize,
    key: K,
}

impl<'m, K, V> OccupiedEntry<'m, K, V> {
    /// Its value.
    #[must_use]
    pub fn get(&self) -> &V {
        &self.map.0[self.at].1
    }
    /// Its value, to be changed.
    pub fn get_mut(&mut self) -> &mut V {
        &mut self.map.0[self.at].1
    }
    /// Its value, to be changed as long as the map is held.
    #[must_use]
    pub fn into_mut(self) -> &'m mut V {
        &mut self.map.0[self.at].1
    }
    /// Puts another value in.
    pub fn insert(&mut self, value: V) -> V {
        std::mem::replace(self.get_mut(), value)
    }
    /// Takes it out.
    pub fn remove(self) -> V {
        self.map.0.remove(self.at).1
    }
}

impl<'m, K, V> VacantEntry<'m, K, V> {
    /// The key.
    pub fn key(&self) -> &K {
        &self.key
    }
    /// Puts a value in.
    pub fn insert(self, value: V) -> &'m mut V {
        self.map.0.insert(self.at, (self.key, value));
        &mut self.map.0[self.at].1
    }
}

impl<'m, K, V> Entry<'m, K, V> {
    /// Its value, which is this one if there was none.
    pub fn or_insert(self, value: V) -> &'m mut V {
        self.or_insert_with(|| value)
    }
    /// Its value, which is made if there was none.
    pub fn or_insert_with(self, make: impl FnOnce() -> V) -> &'m mut V {
        match self {
            Self::Occupied(entry) => entry.into_mut(),
            Self::Vacant(entry) => entry.insert(make()),
        }
    }
    /// Its value, which is the default if there was none.
    pub fn or_default(self) -> &'m mut V
    where
        V: Default,
    {
        self.or_insert_with(V::default)
    }
    /// Changes the value if there is one.
    #[must_use]
    pub fn and_modify(mut self, change: impl FnOnce(&mut V)) -> Self {
        if let Self::Occupied(entry) = &mut self {
            change(entry.get_mut());
        }
        self
    }
}

impl<K, V> Default for OrderedMap<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K: fmt::Debug, V: fmt::Debug> fmt::Debug for OrderedMap<K, V> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_map().entries(self.iter()).finish()
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for OrderedMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(all: I) -> Self {
        Self::settle(all.into_iter().collect())
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for OrderedMap<K, V> {
    fn from(all: [(K, V); N]) -> Self {
        all.into_iter().collect()
    }
}

impl<K: Ord, V> Extend<(K, V)> for OrderedMap<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, all: I) {
        let more: Vec<(K, V)> = all.into_iter().collect();
        if more.len() <= FEW {
            for (key, value) in more {
                self.insert(key, value);
            }
        } else {
            let mut list = std::mem::take(&mut self.0);
            list.extend(more);
            *self = Self::settle(list);
        }
    }
}

impl<K, V> IntoIterator for OrderedMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'m, K, V> IntoIterator for &'m OrderedMap<K, V> {
    type Item = (&'m K, &'m V);
    type IntoIter = Iter<'m, K, V>;
    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl<'m, K, V> IntoIterator for &'m mut OrderedMap<K, V> {
    type Item = (&'m K, &'m mut V);
    type IntoIter = IterMut<'m, K, V>;
    fn into_iter(self) -> Self::IntoIter {
        self.iter_mut()
    }
}

/// Panics where there is no such key, as every index does.
impl<K: Ord + Borrow<Q>, Q: Ord + ?Sized, V> Index<&Q> for OrderedMap<K, V> {
    type Output = V;
    fn index(&self, key: &Q) -> &V {
        self.get(key).expect("the key of an index is in the map")
    }
}

impl<K: serde::Serialize, V: serde::Serialize> serde::Serialize for OrderedMap<K, V> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.iter())
    }
}

#[cfg(feature = "schema")]
impl<K: schemars::JsonSchema, V: schemars::JsonSchema> schemars::JsonSchema for OrderedMap<K, V> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        std::collections::BTreeMap::<K, V>::schema_name()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        std::collections::BTreeMap::<K, V>::json_schema(generator)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Both maps after the same doings, ours and the standard library's.
    fn both(doings: &[(u8, u8, u16)]) -> (OrderedMap<u8, u16>, std::collections::BTreeMap<u8, u16>) {
        let (mut ours, mut theirs) = (OrderedMap::new(), std::collections::BTreeMap::new());
        for (what, key, value) in doings {
            match what % 5 {
                0 | 1 => assert_eq!(ours.insert(*key, *value), theirs.insert(*key, *value)),
                2 => assert_eq!(ours.remove(key), theirs.remove(key)),
                3 => {
                    *ours.entry(*key).or_insert(7) ^= value;
                    *theirs.entry(*key).or_insert(7) ^= value;
                }
                _ => {
                    ours.extend([(*key, *value), (key ^ 5, 1), (*key, 3)]);
                    theirs.extend([(*key, *value), (key ^ 5, 1), (*key, 3)]);
                }
            }
        }
        (ours, theirs)
    }

    proptest! {
        #[test]
        fn does_as_the_standard_map(
            doings in proptest::collection::vec((any::<u8>(), 0_u8..40, any::<u16>()), 0..120),
            from in 0_u8..40, more in 0_u8..20,
        ) {
            let (ours, theirs) = both(&doings);
            prop_assert!(ours.iter().eq(theirs.iter()));
            prop_assert!((0..40).all(|key| ours.get(&key) == theirs.get(&key)));
            prop_assert!(ours.range(from..from + more).eq(theirs.range(from..from + more)));
            prop_assert!(ours.range(..=from).eq(theirs.range(..=from)));
            prop_assert_eq!(ours.first_key_value(), theirs.first_key_value());
            prop_assert_eq!(ours.last_key_value(), theirs.last_key_value());
            for (place, pair) in theirs.iter().enumerate() {
                prop_assert_eq!(ours.at(place), Some(pair));
            }
            prop_assert_eq!(ours.at(theirs.len()), None);
            let pairs: Vec<(u8, u16)> = doings.iter().map(|(_, key, value)| (*key, *value)).collect();
            let ours: OrderedMap<u8, u16> = pairs.iter().copied().collect();
            let theirs: std::collections::BTreeMap<u8, u16> = pairs.into_iter().collect();
            prop_assert!(ours.into_iter().eq(theirs));
        }
    }
}
