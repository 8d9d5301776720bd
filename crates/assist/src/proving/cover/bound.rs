//! What a cover costs at the least.

use super::bits::Bits;
use super::{Left, ROW, Search};
use ordered::Sort as _;

impl Search {
    /// A lower bound of the cost of covering what is left.
    pub(super) fn bound(&self, left: &Left) -> u64 {
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
}
