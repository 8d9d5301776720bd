//! Maps and sets that are lists in the order of their keys, and sorting, with little code for each type.
//!
//! The standard library's B-trees and sorts are fast for a million items and cost some ten kilobytes of the page for
//! every type that they hold; the page has more than a hundred such types and a few thousand items at most. A sorted list
//! finds as fast, walks faster, and puts a key that is larger than all before it in at once, which is how nearly all maps
//! here are filled. *What it costs:* putting a key in somewhere else moves all that come after it. Where many keys come
//! in no order, collect them: that sorts once.

mod map;
mod set;
mod sort;

pub use map::{Entry, Iter, IterMut, OccupiedEntry, OrderedMap, VacantEntry};
pub use set::{IntoIter, Iter as SetIter, OrderedSet};
pub use sort::Sort;
