//! Where things stand in a list that is in the order of their ids, without searching it.

use model::{PartId, RunId};

/// An id that is a number.
pub(crate) trait Numbered: Copy + Ord {
    /// The number.
    fn number(self) -> u32;
}

impl Numbered for PartId {
    fn number(self) -> u32 {
        self.0
    }
}

impl Numbered for RunId {
    fn number(self) -> u32 {
        self.0
    }
}

/// The place of each id in a list of them that rises. Ids are given out one after the other, so that a table of all numbers
/// between the first and the last is hardly longer than the list; where it would be much longer, places are searched for.
pub(crate) struct Places<Id> {
    ids: Vec<Id>,
    first: u32,
    /// By number, counted from the first: the place, or `NONE`. Empty where places are searched for.
    table: Vec<u32>,
}

const NONE: u32 = u32::MAX;

impl<Id: Numbered> Places<Id> {
    /// The places of these ids, which must rise.
    pub(crate) fn new(ids: impl Iterator<Item = Id>) -> Self {
        let ids: Vec<Id> = ids.collect();
        let first = ids.first().map_or(0, |id| id.number());
        let span = ids.last().map_or(0, |id| (id.number() - first) as usize + 1);
        let mut table = Vec::new();
        if span <= 4 * ids.len() + 64 {
            table.resize(span, NONE);
            for (place, id) in (0..).zip(&ids) {
                if let Some(slot) = table.get_mut((id.number() - first) as usize) {
                    *slot = place;
                }
            }
        }
        Self { ids, first, table }
    }
    /// The place of an id.
    pub(crate) fn of(&self, id: Id) -> Option<usize> {
        if self.table.is_empty() {
            return self.ids.binary_search(&id).ok();
        }
        let at = id.number().checked_sub(self.first)? as usize;
        let place = self.table.get(at).copied()?;
        (place != NONE).then_some(place as usize)
    }
    /// The ids.
    pub(crate) fn ids(&self) -> &[Id] {
        &self.ids
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against a search, ids close together and far apart.
    #[test]
    fn gives_each_place() {
        let lists: [&[u32]; 5] = [
            &[],
            &[7],
            &[3, 4, 5, 9, 12, 70, 71],
            &[0, 1, 2, 4_000_000_000, u32::MAX],
            &[100, 101, 102, 103, 180],
        ];
        for ids in lists {
            let ids: Vec<PartId> = ids.iter().copied().map(PartId).collect();
            let places = Places::new(ids.iter().copied());
            assert_eq!(places.ids(), ids);
            for number in (0..200).chain([3_999_999_999, 4_000_000_000, u32::MAX - 1, u32::MAX]) {
                let id = PartId(number);
                assert_eq!(places.of(id), ids.binary_search(&id).ok(), "{number} in {ids:?}");
            }
        }
    }
}
