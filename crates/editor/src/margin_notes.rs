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
    fold(&mut placed, room, grave);
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

/// Where there are more than there is room for, the pair of neighbours that stand closest becomes one, until all fit. The notes
/// follow every shift of the paper: what is known of a pair is kept until one of the two changes.
fn fold(placed: &mut Vec<Placed>, room: usize, grave: impl Fn(usize) -> bool) {
    let graves = |note: &Placed| note.places.iter().filter(|place| grave(**place)).count();
    let mut hidden: Vec<usize> = placed.iter().map(graves).collect();
    let gap = |placed: &[Placed], hidden: &[usize], n: usize| {
        let pair = placed.get(n).zip(placed.get(n + 1));
        let hides = hidden.get(n).zip(hidden.get(n + 1));
        pair.zip(hides).map_or(f64::INFINITY, |((a, b), (of_a, of_b))| {
            // A group grows more slowly the larger it is, so that counts stay even.
            (b.top - a.top) + 6.0 * (a.places.len() + b.places.len()) as f64 + 120.0 * (of_a + of_b) as f64
        })
    };
    let mut gaps: Vec<f64> = (1..placed.len())
        .map(|next| gap(placed, &hidden, next - 1))
        .collect();
    while placed.len() > room {
        let Some((closest, _)) = gaps.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1)) else {
            break;
        };
        let (gone, hides) = (placed.remove(closest + 1), hidden.remove(closest + 1));
        gaps.remove(closest);
        if let Some((kept, hidden)) = placed.get_mut(closest).zip(hidden.get_mut(closest)) {
            kept.places.extend(gone.places);
            *hidden += hides;
        }
        for near in [closest.wrapping_sub(1), closest] {
            if let Some(known) = gaps.get_mut(near) {
                *known = gap(placed, &hidden, near);
            }
        }
    }
    for note in placed {
        note.places.order();
    }
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
