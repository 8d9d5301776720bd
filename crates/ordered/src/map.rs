//! The map.

use crate::Sort;
use std::borrow::Borrow;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::ops::{Bound, Index, RangeBounds};

/// A map in the order of its keys, with the interface of the standard library's map as far as it is used.
///
/// Keys and values lie in a list each: looking for a key goes through keys alone, which are as a rule much smaller than what they
/// stand for and lie close together.
#[derive(Clone, PartialEq, Eq)]
pub struct OrderedMap<K, V> {
    keys: Vec<K>,
    /// As many as there are keys.
    values: Vec<V>,
}

impl<K, V> OrderedMap<K, V> {
    /// An empty map.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            keys: Vec::new(),
            values: Vec::new(),
        }
    }
    /// How many it holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.keys.len()
    }
    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.keys.is_empty()
    }
    /// Takes all out.
    pub fn clear(&mut self) {
        self.keys.clear();
        self.values.clear();
    }
    /// All, in order.
    pub fn iter(&self) -> Iter<'_, K, V> {
        self.keys.iter().zip(&self.values)
    }
    /// All, in order, to be changed.
    pub fn iter_mut(&mut self) -> IterMut<'_, K, V> {
        self.keys.iter().zip(&mut self.values)
    }
    /// The keys, in order.
    pub fn keys(&self) -> std::slice::Iter<'_, K> {
        self.keys.iter()
    }
    /// The values, in the order of their keys.
    pub fn values(&self) -> std::slice::Iter<'_, V> {
        self.values.iter()
    }
    /// The values, to be changed.
    pub fn values_mut(&mut self) -> std::slice::IterMut<'_, V> {
        self.values.iter_mut()
    }
    /// The keys themselves.
    pub fn into_keys(self) -> std::vec::IntoIter<K> {
        self.keys.into_iter()
    }
    /// The values themselves.
    pub fn into_values(self) -> std::vec::IntoIter<V> {
        self.values.into_iter()
    }
    /// The first.
    #[must_use]
    pub fn first_key_value(&self) -> Option<(&K, &V)> {
        self.keys.first().zip(self.values.first())
    }
    /// The last.
    #[must_use]
    pub fn last_key_value(&self) -> Option<(&K, &V)> {
        self.keys.last().zip(self.values.last())
    }
    /// Takes the first out.
    pub fn pop_first(&mut self) -> Option<(K, V)> {
        (!self.is_empty()).then(|| self.take(0))
    }
    /// Takes the last out.
    pub fn pop_last(&mut self) -> Option<(K, V)> {
        self.keys.pop().zip(self.values.pop())
    }
    /// Keeps those for which this is true.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        let all = self.keys.iter().zip(&mut self.values);
        let kept: Vec<bool> = all.map(|(key, value)| keep(key, value)).collect();
        if kept.contains(&false) {
            let mut of_key = kept.iter();
            self.keys.retain(|_| of_key.next() == Some(&true));
            let mut of_value = kept.iter();
            self.values.retain(|_| of_value.next() == Some(&true));
        }
    }
    /// Takes out what is at this place, which must be taken.
    fn take(&mut self, at: usize) -> (K, V) {
        (self.keys.remove(at), self.values.remove(at))
    }
    /// Puts a key and its value in at the place where the key belongs.
    fn put(&mut self, at: usize, key: K, value: V) {
        self.keys.insert(at, key);
        self.values.insert(at, value);
    }
}

/// Iterator over a map.
pub type Iter<'m, K, V> = std::iter::Zip<std::slice::Iter<'m, K>, std::slice::Iter<'m, V>>;
/// Iterator over a map whose values can be changed.
pub type IterMut<'m, K, V> = std::iter::Zip<std::slice::Iter<'m, K>, std::slice::IterMut<'m, V>>;
/// Iterator over the keys and values of a map themselves.
pub type IntoIter<K, V> = std::iter::Zip<std::vec::IntoIter<K>, std::vec::IntoIter<V>>;

/// Where a key is in a list that rises, or where it would go.
pub(crate) fn find<K: Borrow<Q>, Q: Ord + ?Sized>(keys: &[K], key: &Q) -> Result<usize, usize> {
    // Most keys that come in go to the end.
    match keys.last() {
        Some(last) if last.borrow() < key => Err(keys.len()),
        _ => keys.binary_search_by(|other| other.borrow().cmp(key)),
    }
}

/// The places in a list that rises of those that are in a range.
pub(crate) fn within<K: Ord>(keys: &[K], range: &impl RangeBounds<K>) -> std::ops::Range<usize> {
    let from = match range.start_bound() {
        Bound::Unbounded => 0,
        Bound::Included(key) => keys.partition_point(|k| k < key),
        Bound::Excluded(key) => keys.partition_point(|k| k <= key),
    };
    let to = match range.end_bound() {
        Bound::Unbounded => keys.len(),
        Bound::Included(key) => keys.partition_point(|k| k <= key),
        Bound::Excluded(key) => keys.partition_point(|k| k < key),
    };
    from..to
}

/// Whether a list rises, no two alike.
pub(crate) fn rises<K: Ord>(keys: &[K]) -> bool {
    keys.is_sorted_by(|a, b| a < b)
}

impl<K: Ord, V> OrderedMap<K, V> {
    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.values.get(find(&self.keys, key).ok()?)
    }
    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        self.values.get_mut(find(&self.keys, key).ok()?)
    }
    /// The key as the map holds it, and its value.
    pub fn get_key_value<Q: Ord + ?Sized>(&self, key: &Q) -> Option<(&K, &V)>
    where
        K: Borrow<Q>,
    {
        let at = find(&self.keys, key).ok()?;
        self.keys.get(at).zip(self.values.get(at))
    }
    /// Whether there is such a key.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        find(&self.keys, key).is_ok()
    }
    /// Puts a value in; the one that was there is given back.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match find(&self.keys, &key) {
            Ok(at) => self
                .values
                .get_mut(at)
                .map(|there| std::mem::replace(there, value)),
            Err(at) => {
                self.put(at, key, value);
                None
            }
        }
    }
    /// Takes a key out.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let at = find(&self.keys, key).ok()?;
        Some(self.take(at).1)
    }
    /// The place of a key, taken or free.
    pub fn entry(&mut self, key: K) -> Entry<'_, K, V> {
        match find(&self.keys, &key) {
            Ok(at) => Entry::Occupied(OccupiedEntry { map: self, at }),
            Err(at) => Entry::Vacant(VacantEntry { map: self, at, key }),
        }
    }
    /// Those whose keys are in a range.
    pub fn range(&self, range: impl RangeBounds<K>) -> Iter<'_, K, V> {
        let places = within(&self.keys, &range);
        let keys = self.keys.get(places.clone()).unwrap_or_default();
        keys.iter().zip(self.values.get(places).unwrap_or_default())
    }
    /// Takes over all of another map, which is then empty.
    pub fn append(&mut self, other: &mut Self) {
        self.extend(std::mem::take(other));
    }
    /// Brings keys in any order into order, their values with them; of one key the last stays.
    fn settle(keys: Vec<K>, values: Vec<V>) -> Self {
        if rises(&keys) {
            return Self { keys, values };
        }
        let mut pairs: Vec<(K, V)> = keys.into_iter().zip(values).collect();
        pairs.order_by(|(a, _), (b, _)| a.cmp(b));
        pairs.dedup_by(|later, earlier| {
            let same = later.0 == earlier.0;
            if same {
                std::mem::swap(later, earlier);
            }
            same
        });
        let (keys, values) = pairs.into_iter().unzip();
        Self { keys, values }
    }
}

impl<K: PartialOrd, V: PartialOrd> PartialOrd for OrderedMap<K, V> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        self.iter().partial_cmp(other.iter())
    }
}

impl<K: Ord, V: Ord> Ord for OrderedMap<K, V> {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.iter().cmp(other.iter())
    }
}

impl<K: Hash, V: Hash> Hash for OrderedMap<K, V> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.keys.hash(state);
        self.values.hash(state);
    }
}

/// So many are put in one by one; for more, all is sorted anew.
pub(crate) const FEW: usize = 8;

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
        &self.map.values[self.at]
    }
    /// Its value, to be changed.
    pub fn get_mut(&mut self) -> &mut V {
        &mut self.map.values[self.at]
    }
    /// Its value, to be changed as long as the map is held.
    #[must_use]
    pub fn into_mut(self) -> &'m mut V {
        &mut self.map.values[self.at]
    }
    /// Puts another value in.
    pub fn insert(&mut self, value: V) -> V {
        std::mem::replace(self.get_mut(), value)
    }
    /// Takes it out.
    pub fn remove(self) -> V {
        self.map.take(self.at).1
    }
}

impl<'m, K, V> VacantEntry<'m, K, V> {
    /// The key.
    pub fn key(&self) -> &K {
        &self.key
    }
    /// Puts a value in.
    pub fn insert(self, value: V) -> &'m mut V {
        self.map.put(self.at, self.key, value);
        &mut self.map.values[self.at]
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
        let (keys, values) = all.into_iter().unzip();
        Self::settle(keys, values)
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for OrderedMap<K, V> {
    fn from(all: [(K, V); N]) -> Self {
        all.into_iter().collect()
    }
}

impl<K: Ord, V> Extend<(K, V)> for OrderedMap<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, all: I) {
        let (keys, values): (Vec<K>, Vec<V>) = all.into_iter().unzip();
        if keys.len() <= FEW {
            for (key, value) in keys.into_iter().zip(values) {
                self.insert(key, value);
            }
        } else {
            let mut all = std::mem::take(self);
            all.keys.extend(keys);
            all.values.extend(values);
            *self = Self::settle(all.keys, all.values);
        }
    }
}

impl<K, V> IntoIterator for OrderedMap<K, V> {
    type Item = (K, V);
    type IntoIter = IntoIter<K, V>;
    fn into_iter(self) -> Self::IntoIter {
        self.keys.into_iter().zip(self.values)
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
            let pairs: Vec<(u8, u16)> = doings.iter().map(|(_, key, value)| (*key, *value)).collect();
            let ours: OrderedMap<u8, u16> = pairs.iter().copied().collect();
            let theirs: std::collections::BTreeMap<u8, u16> = pairs.into_iter().collect();
            prop_assert!(ours.into_iter().eq(theirs));
        }
    }
}
