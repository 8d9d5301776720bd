//! Where the notes of findings stand in the margin: each beside what it speaks of, none over another, and where they
//! would stand too dense, neighbours fold into one.

use ordered::Sort as _;

/// A note, or several folded into a count.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Which of the findings it stands for, in order.
    pub places: Vec<usize>,
    /// Its upper edge, in the unit of the heights that were wished for.
    pub top: f64,
}

/// Where a group has its notes when it is unfolded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfolds {
    /// Below its head.
    Below,
    /// Above it.
    Above,
    /// Over all of the column and what stands below it: half hidden, that could not be read.
    Over,
}

impl Unfolds {
    /// For notes that take a height, of a group whose head reaches from one edge to the other, in a column between `top` and
    /// `bottom`.
    #[must_use]
    pub fn of(needed: f64, head: (f64, f64), top: f64, bottom: f64) -> Self {
        if head.1 + needed <= bottom {
            Self::Below
        } else if head.0 - needed >= top {
            Self::Above
        } else {
            Self::Over
        }
    }
}

/// Places notes by the heights they wish for, in order, none over another, all between top and bottom.
///
/// `grave` findings are the last to be folded away.
pub fn place(
    mut wishes: Vec<(f64, usize)>,
    grave: impl Fn(usize) -> bool,
    height: f64,
    top: f64,
    bottom: f64,
) -> Vec<Placed> {
    wishes.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut placed: Vec<Placed> = wishes
        .iter()
        .map(|(at, place)| Placed {
            places: vec![*place],
            top: at - height / 2.0,
        })
        .collect();
    let room = ((bottom - top) / height).floor().max(1.0);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a handful of lines"
    )]
    let room = room as usize;
    // Too many: the pair of neighbours that stand closest becomes one, until all fit.
    while placed.len() > room {
        let gap = |n: usize| match (placed.get(n), placed.get(n + 1)) {
            // A group grows more slowly the larger it is, so that counts stay even.
            (Some(a), Some(b)) => {
                let hides = a
                    .places
                    .iter()
                    .chain(&b.places)
                    .filter(|place| grave(**place))
                    .count();
                (b.top - a.top) + 6.0 * (a.places.len() + b.places.len()) as f64 + 120.0 * hides as f64
            }
            _ => f64::INFINITY,
        };
        let Some(closest) = (0..placed.len() - 1).min_by(|a, b| gap(*a).total_cmp(&gap(*b))) else {
            break;
        };
        let gone = placed.remove(closest + 1);
        if let Some(kept) = placed.get_mut(closest) {
            kept.places.extend(gone.places);
            kept.places.order();
        }
    }
    let mut least = top;
    for note in &mut placed {
        note.top = note.top.max(least);
        least = note.top + height;
    }
    let mut most = bottom - height;
    for note in placed.iter_mut().rev() {
        note.top = note.top.min(most);
        most = note.top - height;
    }
    placed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notes_keep_their_order_and_never_overlap() {
        let wishes = vec![(300.0, 0), (100.0, 1), (305.0, 2), (-50.0, 3), (900.0, 4)];
        let placed = place(wishes, |_| false, 40.0, 30.0, 500.0);
        assert_eq!(
            placed.iter().map(|note| note.places.clone()).collect::<Vec<_>>(),
            [[3], [1], [0], [2], [4]]
        );
        for pair in placed.windows(2) {
            assert!(pair[1].top - pair[0].top >= 40.0);
        }
        assert!(placed[0].top >= 30.0 && placed[4].top + 40.0 <= 500.0);
    }

    #[test]
    fn dense_notes_fold_and_none_is_lost() {
        let wishes: Vec<(f64, usize)> = (0..40).map(|n| (f64::from(n) * 3.0, n as usize)).collect();
        let placed = place(wishes, |place| place < 3, 40.0, 30.0, 330.0);
        assert!(placed.len() <= 7);
        let mut all: Vec<usize> = placed.iter().flat_map(|note| note.places.clone()).collect();
        all.order();
        assert_eq!(all, (0..40).collect::<Vec<_>>());
    }

    #[test]
    fn a_group_unfolds_within_its_column_or_over_all_of_it() {
        let of = |needed, head_at| Unfolds::of(needed, (head_at, head_at + 27.0), 56.0, 450.0);
        assert_eq!(of(94.0, 60.0), Unfolds::Below);
        assert_eq!(of(94.0, 420.0), Unfolds::Above);
        assert_eq!(of(300.0, 200.0), Unfolds::Over);
        // On a tablet the column ends above the first note.
        assert_eq!(Unfolds::of(94.0, (68.0, 112.0), 56.0, 132.0), Unfolds::Over);
    }
}
