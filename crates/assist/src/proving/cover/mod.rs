//! The cheapest choice of rows that covers every column: weighted set cover, exact.
//!
//! Few rows come before easy ones: a row costs [`ROW`] and its own effort, so that a cover of fewer rows is always the cheaper one, and
//! among covers of equally many the one of least effort. The cover is found by branch and bound:
//!
//! - **Reductions**, until none applies: a column that one row alone covers forces that row; a row that covers no more than a row that is
//!   no dearer goes; a column that is covered by every row that covers another one goes (R. S. Garfinkel and G. L. Nemhauser, 1972;
//!   from memory). What is left falls into pieces that share no column, and each is solved by itself.
//! - **Bound.** Prices of columns such that no row costs less than the prices of all that it covers: their sum is a lower bound by
//!   duality of linear programmes. They are raised column by column, rarest first, once for the number of rows and once for the
//!   effort; the first is rounded up, as no part of a row can be chosen.
//! - **Branching** on the column that fewest rows cover: one of them has to be chosen, and rows that were tried before are left out.
//!
//! The work is limited by counting, not by a clock, so that the answer is the same everywhere; when the limit is reached, the best cover found
//! is given with the bound that was proved.

mod bits;
mod bound;
mod reduce;
mod search;

use bits::Bits;
use ordered::Sort as _;

/// What a row costs beside its effort: more than all efforts together.
pub const ROW: u64 = 1 << 32;
/// Most effort of a row; more counts as this.
const MOST_EFFORT: u32 = 1 << 16;

/// A row: what it covers, by column, rising; and its effort.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// The columns.
    pub columns: Vec<u32>,
    /// Its effort.
    pub effort: u32,
}

/// A cover.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cover {
    /// The rows, rising.
    pub rows: Vec<usize>,
    /// No cover has fewer rows than this.
    pub least: usize,
    /// Whether no cover has fewer rows, or as many with less effort.
    pub proven: bool,
    /// Columns that no row covers.
    pub bare: Vec<usize>,
}

/// What is left of a problem: rows and columns that still count.
#[derive(Clone, Debug)]
struct Left {
    rows: Bits,
    columns: Bits,
}

struct Search {
    /// What each row covers, and which rows cover each column.
    covers: Vec<Bits>,
    covered_by: Vec<Bits>,
    effort: Vec<u64>,
    /// Work that may still be done.
    work: u64,
}

/// A part of a cover with its cost.
type Found = (u64, Vec<usize>);

/// The cheapest cover of so many columns. `work` limits the search; about a million a second.
#[must_use]
pub fn cover(rows: &[Row], columns: usize, work: u64) -> Cover {
    let mut it = Search {
        covers: rows.iter().map(|_| Bits::new(columns)).collect(),
        covered_by: vec![Bits::new(rows.len()); columns],
        effort: rows
            .iter()
            .map(|row| u64::from(row.effort.min(MOST_EFFORT)))
            .collect(),
        work,
    };
    let mut left = Left {
        rows: Bits::new(rows.len()),
        columns: Bits::new(columns),
    };
    for (at, row) in rows.iter().enumerate() {
        left.rows.put(at);
        for column in row.columns.iter().map(|column| *column as usize) {
            if let (Some(covers), Some(by)) = (it.covers.get_mut(at), it.covered_by.get_mut(column)) {
                covers.put(column);
                by.put(at);
            }
        }
    }
    let mut bare = Vec::new();
    for column in 0..columns {
        if it.covered_by.get(column).is_some_and(|by| !by.is_empty()) {
            left.columns.put(column);
        } else {
            bare.push(column);
        }
    }
    it.drop_alike(&mut left);
    let mut out = Cover {
        bare,
        proven: true,
        ..Cover::default()
    };
    out.rows = it.reduce(&mut left).unwrap_or_default();
    out.least = out.rows.len();
    for piece in it.pieces(&left) {
        let bound = it.bound(&piece);
        let mut best = it.greedy(&piece);
        let whole = it.search(piece, 0, &mut best);
        let (cost, chosen) = best;
        let least = if whole { cost / ROW } else { bound / ROW };
        out.least += usize::try_from(least).unwrap_or(usize::MAX);
        out.proven &= whole;
        out.rows.extend(chosen);
    }
    out.rows.order();
    out
}

impl Search {
    fn cost(&self, row: usize) -> u64 {
        ROW + self.effort.get(row).copied().unwrap_or(0)
    }

    fn row(&self, row: usize) -> &Bits {
        static NONE: Bits = Bits(Vec::new());
        self.covers.get(row).unwrap_or(&NONE)
    }

    /// The rows that still cover a column.
    fn choices(&self, column: usize, left: &Left) -> Vec<usize> {
        let by = self.covered_by.get(column);
        let all = by.map(|by| by.iter().filter(|row| left.rows.has(*row)).collect());
        all.unwrap_or_default()
    }

    fn spend(&mut self, work: usize) {
        self.work = self.work.saturating_sub(work as u64 + 1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use testkit::random::Dice;

    fn row(columns: &[u32], effort: u32) -> Row {
        Row {
            columns: columns.to_vec(),
            effort,
        }
    }

    #[test]
    fn fewest_come_first_and_then_the_easiest() {
        // One row for all, however hard; of two pairs the easier one.
        let rows = [row(&[0, 1], 1), row(&[2, 3], 1), row(&[0, 1, 2, 3], 900)];
        assert_eq!(cover(&rows, 4, 1000).rows, [2]);
        let rows = [row(&[0, 1], 5), row(&[2], 1), row(&[0], 1), row(&[1, 2], 2)];
        let it = cover(&rows, 3, 1000);
        assert_eq!((it.rows, it.least, it.proven), (vec![2, 3], 2, true));
        let it = cover(&[row(&[1], 3)], 3, 1000);
        assert_eq!((it.rows, it.bare), (vec![0], vec![0, 2]));
    }

    /// All covers of small systems, one by one.
    #[test]
    fn nothing_is_cheaper_among_all_covers() {
        let mut dice = Dice::new(5);
        for _ in 0..300 {
            let (columns, count) = (2 + dice.below(7), 2 + dice.below(9));
            let rows: Vec<Row> = (0..count)
                .map(|_| {
                    let all = 0..u32::try_from(columns).expect("few");
                    let columns = all.filter(|_| dice.chance(0.35)).collect();
                    let effort = u32::try_from(dice.below(20)).expect("small");
                    Row { columns, effort }
                })
                .collect();
            let it = cover(&rows, columns, 100_000);
            let cost = |rows_of: &[usize]| -> u64 {
                let own = |at: &usize| ROW + u64::from(rows[*at].effort);
                rows_of.iter().map(own).sum()
            };
            let covers = |chosen: &[usize]| {
                (0..columns).all(|column| {
                    it.bare.contains(&column)
                        || chosen
                            .iter()
                            .any(|at| rows[*at].columns.iter().any(|own| *own as usize == column))
                })
            };
            assert!(it.proven && covers(&it.rows));
            let least = (0..1_u32 << count)
                .map(|set| (0..count).filter(|at| set >> at & 1 == 1).collect::<Vec<usize>>())
                .filter(|chosen| covers(chosen))
                .map(|chosen| cost(&chosen))
                .min();
            assert_eq!(Some(cost(&it.rows)), least, "{rows:?}");
        }
    }

    #[test]
    fn out_of_work_it_says_how_far_it_may_be_from_the_fewest() {
        let mut dice = Dice::new(9);
        let rows: Vec<Row> = (0..70)
            .map(|_| {
                let columns = (0..45).filter(|_| dice.chance(0.09)).collect();
                Row { columns, effort: 1 }
            })
            .collect();
        let hasty = cover(&rows, 45, 300);
        let whole = cover(&rows, 45, 50_000_000);
        assert!(!hasty.proven && hasty.rows.len() >= hasty.least);
        assert!(whole.proven && hasty.least <= whole.least && whole.rows.len() <= hasty.rows.len());
    }
}
