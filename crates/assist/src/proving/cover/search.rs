//! Branch and bound, from a good cover to the best.

use super::{Found, Left, Search};
use ordered::Sort as _;

impl Search {
    /// A good cover to begin with: always the row that covers most for its cost, then without those that nothing needs.
    pub(super) fn greedy(&mut self, left: &Left) -> Found {
        let mut open = left.columns.clone();
        let mut chosen: Vec<usize> = Vec::new();
        while !open.is_empty() {
            let worth = |row: usize| {
                let mut covers = self.row(row).clone();
                covers.keep(&open);
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
    pub(super) fn search(&mut self, mut left: Left, spent: u64, best: &mut Found) -> bool {
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
