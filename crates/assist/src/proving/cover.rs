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

/// A set of numbers below a size that is known.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Bits(Vec<u64>);

impl Bits {
    fn new(size: usize) -> Self {
        Self(vec![0; size.div_ceil(64)])
    }
    fn put(&mut self, at: usize) {
        if let Some(word) = self.0.get_mut(at / 64) {
            *word |= 1 << (at % 64);
        }
    }
    fn drop(&mut self, at: usize) {
        if let Some(word) = self.0.get_mut(at / 64) {
            *word &= !(1 << (at % 64));
        }
    }
    fn has(&self, at: usize) -> bool {
        self.0.get(at / 64).is_some_and(|word| word >> (at % 64) & 1 == 1)
    }
    fn is_within(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).all(|(a, b)| a & !b == 0)
    }
    fn meets(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).any(|(a, b)| a & b != 0)
    }
    fn without(&mut self, other: &Self) {
        for (a, b) in self.0.iter_mut().zip(&other.0) {
            *a &= !b;
        }
    }
    fn with(&mut self, other: &Self) {
        for (a, b) in self.0.iter_mut().zip(&other.0) {
            *a |= b;
        }
    }
    fn count(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }
    fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }
    fn iter(&self) -> impl Iterator<Item = usize> + '_ {
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

    /// Of rows that cover the very same, the least effort stays: before anything else, as there are many of them.
    fn drop_alike(&self, left: &mut Left) {
        let mut order: Vec<usize> = left.rows.iter().collect();
        order.order_by(|a, b| {
            let same = self.row(*a).0.cmp(&self.row(*b).0);
            same.then(self.cost(*a).cmp(&self.cost(*b))).then(a.cmp(b))
        });
        let mut last: Option<usize> = None;
        for row in order {
            if self.row(row).is_empty() || last.is_some_and(|last| self.row(last) == self.row(row)) {
                left.rows.drop(row);
            } else {
                last = Some(row);
            }
        }
    }

    /// Reduces what is left; the rows that are forced. `None` where a column is left that nothing covers.
    fn reduce(&mut self, left: &mut Left) -> Option<Vec<usize>> {
        let mut forced = Vec::new();
        loop {
            let mut moved = false;
            // Columns: forced rows, and those that are covered along with another one.
            let mut by: Vec<(usize, Bits)> = Vec::new();
            for column in left.columns.iter() {
                let mut rows = self.covered_by.get(column)?.clone();
                for (word, still) in rows.0.iter_mut().zip(&left.rows.0) {
                    *word &= still;
                }
                by.push((column, rows));
            }
            self.spend(by.len());
            if by.iter().any(|(_, rows)| rows.is_empty()) {
                return None;
            }
            for (column, rows) in &by {
                if left.columns.has(*column)
                    && rows.count() == 1
                    && let Some(row) = rows.iter().next()
                {
                    left.columns.without(&self.row(row).clone());
                    left.rows.drop(row);
                    forced.push(row);
                    moved = true;
                }
            }
            by.retain(|(column, _)| left.columns.has(*column));
            by.order_by(|a, b| a.1.count().cmp(&b.1.count()).then(a.0.cmp(&b.0)));
            for at in 0..by.len() {
                let Some(((column, rows), after)) = by.get(at..).and_then(<[_]>::split_first) else {
                    continue;
                };
                if !left.columns.has(*column) {
                    continue;
                }
                self.work = self.work.saturating_sub(after.len() as u64 / 8 + 1);
                for (other, of_other) in after {
                    if left.columns.has(*other) && rows.is_within(of_other) {
                        left.columns.drop(*other);
                        moved = true;
                    }
                }
            }
            moved |= self.drop_dominated(left);
            if !moved {
                return Some(forced);
            }
        }
    }

    /// Rows that cover no more of what is left than another one that is no dearer.
    fn drop_dominated(&mut self, left: &mut Left) -> bool {
        let mut rows: Vec<(usize, usize, Bits)> = left
            .rows
            .iter()
            .map(|row| {
                let mut covers = self.row(row).clone();
                for (word, still) in covers.0.iter_mut().zip(&left.columns.0) {
                    *word &= still;
                }
                (covers.count(), row, covers)
            })
            .collect();
        rows.order_by(|a, b| {
            b.0.cmp(&a.0)
                .then(self.cost(a.1).cmp(&self.cost(b.1)))
                .then(a.1.cmp(&b.1))
        });
        // By column, the rows that stay and cover it: what covers a row covers any of its columns.
        let mut stays: Vec<Vec<usize>> = vec![Vec::new(); self.covered_by.len()];
        let mut moved = false;
        for (place, (count, row, covers)) in rows.iter().enumerate() {
            let rarest = covers
                .iter()
                .min_by_key(|column| stays.get(*column).map_or(0, Vec::len));
            let over = rarest.and_then(|column| stays.get(column));
            let over = over.map(Vec::as_slice).unwrap_or_default();
            self.work = self.work.saturating_sub(over.len() as u64 / 8 + 1);
            let is_less = *count == 0
                || over.iter().any(|other| {
                    rows.get(*other).is_some_and(|(_, other, theirs)| {
                        self.cost(*other) <= self.cost(*row) && covers.is_within(theirs)
                    })
                });
            if is_less {
                left.rows.drop(*row);
                moved = true;
                continue;
            }
            for column in covers.iter() {
                if let Some(list) = stays.get_mut(column) {
                    list.push(place);
                }
            }
        }
        moved
    }

    /// What is left, in pieces that share no column.
    fn pieces(&self, left: &Left) -> Vec<Left> {
        let mut out: Vec<Left> = Vec::new();
        for row in left.rows.iter() {
            let mut columns = self.row(row).clone();
            for (word, still) in columns.0.iter_mut().zip(&left.columns.0) {
                *word &= still;
            }
            if columns.is_empty() {
                continue;
            }
            let mut joined = Left {
                rows: Bits::new(self.covers.len()),
                columns,
            };
            joined.rows.put(row);
            out.retain(|piece| {
                let meets = piece.columns.meets(&joined.columns);
                if meets {
                    joined.columns.with(&piece.columns);
                    joined.rows.with(&piece.rows);
                }
                !meets
            });
            out.push(joined);
        }
        out
    }

    /// A lower bound of the cost of covering what is left.
    fn bound(&self, left: &Left) -> u64 {
        // Whole numbers, so that the bound is the same everywhere: a row is worth so many parts.
        const PARTS: u64 = 1 << 20;
        let mut order: Vec<(usize, usize)> = left
            .columns
            .iter()
            .map(|column| (self.choices(column, left).len(), column))
            .collect();
        order.order();
        let raised = |price: &dyn Fn(usize) -> u64| {
            let mut slack: Vec<u64> = (0..self.covers.len()).map(price).collect();
            let mut sum = 0;
            for (_, column) in &order {
                let choices = self.choices(*column, left);
                let raise = choices
                    .iter()
                    .filter_map(|row| slack.get(*row).copied())
                    .min()
                    .unwrap_or(0);
                for row in choices {
                    if let Some(slack) = slack.get_mut(row) {
                        *slack -= raise;
                    }
                }
                sum += raise;
            }
            sum
        };
        let rows = self.shared(left, PARTS).max(raised(&|_| PARTS)).div_ceil(PARTS);
        let effort = raised(&|row| self.effort.get(row).copied().unwrap_or(0));
        rows * ROW + effort
    }

    /// Prices that share the cost of a row among its columns evenly and are then raised where there is room: as a rule nearer to the
    /// best than raising alone.
    fn shared(&self, left: &Left, parts: u64) -> u64 {
        let size: Vec<u64> = (0..self.covers.len())
            .map(|row| {
                let own = left.rows.has(row).then(|| self.row(row));
                let own = own.into_iter().flat_map(Bits::iter);
                own.filter(|at| left.columns.has(*at)).count() as u64
            })
            .collect();
        let mut slack = vec![parts; self.covers.len()];
        let mut sum = 0;
        let columns: Vec<usize> = left.columns.iter().collect();
        for even in [true, false] {
            for column in &columns {
                let choices = self.choices(*column, left);
                let room = choices.iter().filter_map(|row| {
                    let slack = slack.get(*row)?;
                    Some(if even {
                        parts / size.get(*row)?.max(&1)
                    } else {
                        *slack
                    })
                });
                let raise = room.min().unwrap_or(0);
                for row in choices {
                    if let Some(slack) = slack.get_mut(row) {
                        *slack = slack.saturating_sub(raise);
                    }
                }
                sum += raise;
            }
        }
        sum
    }

    /// A good cover to begin with: always the row that covers most for its cost, then without those that nothing needs.
    fn greedy(&mut self, left: &Left) -> Found {
        let mut open = left.columns.clone();
        let mut chosen: Vec<usize> = Vec::new();
        while !open.is_empty() {
            let worth = |row: usize| {
                let mut covers = self.row(row).clone();
                for (word, still) in covers.0.iter_mut().zip(&open.0) {
                    *word &= still;
                }
                covers.count()
            };
            let best = left.rows.iter().map(|row| (worth(row), row)).max_by(|a, b| {
                a.0.cmp(&b.0)
                    .then(self.cost(b.1).cmp(&self.cost(a.1)))
                    .then(b.1.cmp(&a.1))
            });
            let Some((1.., row)) = best else { break };
            open.without(self.row(row));
            chosen.push(row);
            self.spend(self.covers.len());
        }
        let mut at = 0;
        while at < chosen.len() {
            let mut rest = left.columns.clone();
            for (place, row) in chosen.iter().enumerate() {
                if place != at {
                    rest.without(self.row(*row));
                }
            }
            if rest.is_empty() {
                chosen.remove(at);
            } else {
                at += 1;
            }
        }
        (chosen.iter().map(|row| self.cost(*row)).sum(), chosen)
    }

    /// Looks for a cover of what is left that costs less than `best` does beyond `spent`. False when the work ran out: then better ones may
    /// be left.
    fn search(&mut self, mut left: Left, spent: u64, best: &mut Found) -> bool {
        if self.work == 0 {
            return false;
        }
        let Some(forced) = self.reduce(&mut left) else {
            return true;
        };
        let spent = spent + forced.iter().map(|row| self.cost(*row)).sum::<u64>();
        if left.columns.is_empty() {
            if spent < best.0 {
                *best = (spent, forced);
            }
            return true;
        }
        self.spend(left.columns.count() * 4);
        if spent + self.bound(&left) >= best.0 {
            return true;
        }
        let pieces = self.pieces(&left);
        if pieces.len() > 1 {
            return self.search_pieces(pieces, spent, forced, best);
        }
        let column = left
            .columns
            .iter()
            .min_by_key(|column| self.choices(*column, &left).len());
        let Some(column) = column else { return true };
        let mut choices = self.choices(column, &left);
        choices.order_by(|a, b| {
            let worth = |row: usize| self.row(row).iter().filter(|at| left.columns.has(*at)).count();
            worth(*b)
                .cmp(&worth(*a))
                .then(self.cost(*a).cmp(&self.cost(*b)))
                .then(a.cmp(b))
        });
        let mut whole = true;
        for row in choices {
            let mut inner = left.clone();
            inner.columns.without(self.row(row));
            inner.rows.drop(row);
            let before = spent + self.cost(row);
            let mut found = (best.0, Vec::new());
            whole &= self.search(inner, before, &mut found);
            if found.0 < best.0 {
                found.1.push(row);
                found.1.extend(&forced);
                *best = found;
            }
            // Tried: whatever is cheaper has to do without it.
            left.rows.drop(row);
        }
        whole
    }

    /// The pieces one by one, each with what the others cost at least left out of its share.
    fn search_pieces(&mut self, pieces: Vec<Left>, spent: u64, forced: Vec<usize>, best: &mut Found) -> bool {
        let mut rest: u64 = pieces.iter().map(|piece| self.bound(piece)).sum();
        let (mut sum, mut chosen) = (spent, forced);
        let mut whole = true;
        for piece in pieces {
            rest -= self.bound(&piece);
            let mut own = self.greedy(&piece);
            whole &= self.search(piece, 0, &mut own);
            sum += own.0;
            chosen.extend(own.1);
            if whole && sum + rest >= best.0 {
                return true;
            }
        }
        if sum < best.0 {
            *best = (sum, chosen);
        }
        whole
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
