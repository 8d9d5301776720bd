//! Lists kept by the square cell of the board that they belong to, in a small table of their own: a look-up costs the same
//! however large the sheet is, and looking over a stretch of cells costs by the stretch.

/// A place in the table: column and row of a cell, and the number of its list from 1; 0 for a free place.
type Slot = (i32, i32, u32);

/// Things by cell. A thing that touches several cells is put into each of them.
#[derive(Clone, Debug)]
pub(crate) struct Cells<T> {
    slots: Vec<Slot>,
    lists: Vec<Vec<T>>,
}

impl<T> Default for Cells<T> {
    fn default() -> Self {
        Self {
            slots: Vec::new(),
            lists: Vec::new(),
        }
    }
}

fn mixed(column: i32, row: i32) -> usize {
    let mixed = (column as u32).wrapping_mul(0x9e37_79b1) ^ (row as u32).wrapping_mul(0x85eb_ca77);
    (mixed ^ (mixed >> 15)) as usize
}

impl<T> Cells<T> {
    /// The place of a cell in the table, or the free place where it would be put. The table is never full.
    fn place(slots: &[Slot], column: i32, row: i32) -> usize {
        let mask = slots.len().wrapping_sub(1);
        let mut place = mixed(column, row) & mask;
        while let Some((x, y, list)) = slots.get(place) {
            if *list == 0 || (*x == column && *y == row) {
                break;
            }
            place = (place + 1) & mask;
        }
        place
    }
    fn number(&self, column: i32, row: i32) -> Option<usize> {
        let (_, _, list) = self.slots.get(Self::place(&self.slots, column, row))?;
        (*list as usize).checked_sub(1)
    }
    /// What is in a cell.
    pub(crate) fn at(&self, column: i32, row: i32) -> &[T] {
        self.number(column, row)
            .and_then(|number| self.lists.get(number))
            .map_or(&[], Vec::as_slice)
    }
    pub(crate) fn push(&mut self, column: i32, row: i32, thing: T) {
        let number = self.number(column, row).unwrap_or_else(|| {
            // At most half full, so that a look-up ends soon.
            if 2 * (self.lists.len() + 1) > self.slots.len() {
                let mut larger: Vec<Slot> = vec![(0, 0, 0); (2 * self.slots.len()).max(64)];
                for (x, y, list) in self.slots.iter().filter(|(_, _, list)| *list > 0) {
                    let place = Self::place(&larger, *x, *y);
                    if let Some(slot) = larger.get_mut(place) {
                        *slot = (*x, *y, *list);
                    }
                }
                self.slots = larger;
            }
            let place = Self::place(&self.slots, column, row);
            self.lists.push(Vec::new());
            if let Some(slot) = self.slots.get_mut(place) {
                *slot = (column, row, self.lists.len() as u32);
            }
            self.lists.len() - 1
        });
        if let Some(list) = self.lists.get_mut(number) {
            list.push(thing);
        }
    }
    /// Takes one thing out of a cell. The cell stays, empty: what was there once is likely to come back.
    pub(crate) fn take(&mut self, column: i32, row: i32, is_it: impl Fn(&T) -> bool) {
        let Some(number) = self.number(column, row) else {
            return;
        };
        if let Some(list) = self.lists.get_mut(number)
            && let Some(place) = list.iter().position(is_it)
        {
            list.swap_remove(place);
        }
    }
    /// Calls for everything in the cells from the low to the high column and row, with its cell, until a call gives true;
    /// tells whether one did.
    #[inline]
    pub(crate) fn any(
        &self,
        columns: (i32, i32),
        rows: (i32, i32),
        mut call: impl FnMut(i32, i32, &T) -> bool,
    ) -> bool {
        let count = |(low, high): (i32, i32)| (i64::from(high) - i64::from(low) + 1).max(0);
        if count(columns).saturating_mul(count(rows)) > self.lists.len() as i64 {
            // Fewer cells exist than are asked for.
            return self.slots.iter().any(|(x, y, list)| {
                *list > 0
                    && (columns.0..=columns.1).contains(x)
                    && (rows.0..=rows.1).contains(y)
                    && self.at(*x, *y).iter().any(|thing| call(*x, *y, thing))
            });
        }
        (columns.0..=columns.1)
            .any(|x| (rows.0..=rows.1).any(|y| self.at(x, y).iter().any(|thing| call(x, y, thing))))
    }
}

/// Equal when the same cells hold the same things, in whatever order they came.
impl<T: PartialEq> PartialEq for Cells<T> {
    fn eq(&self, other: &Self) -> bool {
        let within = |a: &Self, b: &Self| {
            a.slots.iter().filter(|(_, _, list)| *list > 0).all(|(x, y, _)| {
                let (own, there) = (a.at(*x, *y), b.at(*x, *y));
                own.len() == there.len() && own.iter().all(|thing| there.contains(thing))
            })
        };
        within(self, other) && within(other, self)
    }
}

#[cfg(test)]
mod tests {
    use super::Cells;
    use ordered::OrderedMap;

    #[test]
    fn a_table_of_cells_is_a_map_of_lists() {
        let (mut cells, mut map) = (Cells::default(), OrderedMap::<(i32, i32), Vec<u32>>::new());
        let mut dice = 1_u32;
        for thing in 0..3000 {
            dice = dice.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let (x, y) = ((dice >> 8) as i32 % 40 - 20, (dice >> 20) as i32 % 30 - 15);
            cells.push(x, y, thing);
            map.entry((x, y)).or_default().push(thing);
            if thing % 3 == 0
                && let Some(list) = map.get_mut(&(x, y))
                && let Some(first) = list.first().copied()
            {
                list.retain(|other| *other != first);
                cells.take(x, y, |other| *other == first);
            }
        }
        for (x, y) in (-25..25).flat_map(|x| (-25..25).map(move |y| (x, y))) {
            let mut found = cells.at(x, y).to_vec();
            found.sort_unstable();
            assert_eq!(found, map.get(&(x, y)).cloned().unwrap_or_default());
        }
        // A few cells, and more than there are.
        for (columns, rows) in [((-3, 4), (0, 2)), ((-1_000_000, 3), (i32::MIN, i32::MAX))] {
            let mut found = Vec::new();
            cells.any(columns, rows, |_, _, thing| {
                found.push(*thing);
                false
            });
            found.sort_unstable();
            let mut wanted: Vec<u32> = map
                .iter()
                .filter(|((x, y), _)| (columns.0..=columns.1).contains(x) && (rows.0..=rows.1).contains(y))
                .flat_map(|(_, list)| list.clone())
                .collect();
            wanted.sort_unstable();
            assert_eq!(found, wanted);
        }
        cells.push(99, 99, 0);
        assert!(cells.any((99, 99), (99, 99), |_, _, _| true));
        assert!(!Cells::<u32>::default().any((0, 0), (0, 0), |_, _, _| true));
    }
}
