//! Least cost over what is left of the drop: the pairs that nothing beats in both, and what they were made of.

use ordered::Sort as _;

/// One of the best: what all things beyond a place cost together, and how much may be lost before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) cost: f64,
    /// Volts that may be lost on the way to here so that every load beyond still keeps to its limit.
    pub(super) slack: f64,
    /// How it is made: an entry of [`Made`].
    pub(super) made: u32,
}

/// How a point is made.
#[derive(Clone, Copy, Debug)]
enum How {
    Nothing,
    Picked { var: u32, choice: u32, of: u32 },
    Both(u32, u32),
}

/// What points are made of.
#[derive(Debug)]
pub(super) struct Made(Vec<How>);

/// Something put in line: what it costs, what is lost in it, and what was chosen.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    pub(super) cost: f64,
    pub(super) drop: f64,
    /// Variables with the place of their choice.
    pub(super) picks: Vec<(usize, usize)>,
}

impl Made {
    pub(super) fn new() -> Self {
        Self(vec![How::Nothing])
    }
    fn add(&mut self, how: How) -> u32 {
        self.0.push(how);
        u32::try_from(self.0.len() - 1).unwrap_or(0)
    }
    /// Puts what a point is made of into a list of choices by variable.
    pub(super) fn read(&self, point: u32, into: &mut [usize]) {
        let mut open = vec![point];
        while let Some(at) = open.pop() {
            match self.0.get(at as usize) {
                Some(How::Picked { var, choice, of }) => {
                    if let Some(slot) = into.get_mut(*var as usize) {
                        *slot = *choice as usize;
                    }
                    open.push(*of);
                }
                Some(How::Both(a, b)) => open.extend([*a, *b]),
                Some(How::Nothing) | None => {}
            }
        }
    }

    /// Two places side by side: what they cost together, and the less that either leaves.
    pub(super) fn beside(&mut self, a: &[Point], b: &[Point]) -> Vec<Point> {
        // Both are by rising cost and rising slack: for each slack, the cheapest of each that leaves it.
        let mut out = Vec::with_capacity(a.len() + b.len());
        let (mut x, mut y) = (0, 0);
        while let (Some(one), Some(other)) = (a.get(x), b.get(y)) {
            out.push(Point {
                cost: one.cost + other.cost,
                slack: one.slack.min(other.slack),
                made: self.add(How::Both(one.made, other.made)),
            });
            // Only the one that leaves less can be bettered.
            if one.slack < other.slack {
                x += 1;
            } else if other.slack < one.slack {
                y += 1;
            } else {
                (x, y) = (x + 1, y + 1);
            }
        }
        out
    }

    /// Pieces of which one is put in line with what lies beyond.
    pub(super) fn before(&mut self, points: &[Point], pieces: &[Piece], keep: Keep) -> Vec<Point> {
        // Points by rising cost leave more and more, so that those of each piece are in order, and two such rows merge in one go. From
        // the thickest piece on: it leaves most, and much of what follows is beaten at once.
        let mut all: Vec<(f64, f64, usize, usize)> = Vec::new();
        let mut merged = Vec::new();
        for (q, piece) in pieces.iter().enumerate() {
            let first = points.partition_point(|point| point.slack - piece.drop < keep.needed);
            let enough = points.partition_point(|point| point.cost + piece.cost <= keep.most);
            let row = points.get(first..enough).unwrap_or_default();
            let (Some(cheapest), Some(dearest)) = (row.first(), row.last()) else {
                continue;
            };
            if let Some(last) = all.last()
                && last.0 <= cheapest.cost + piece.cost
                && last.1 >= dearest.slack - piece.drop
            {
                continue;
            }
            let mut most = f64::NEG_INFINITY;
            let (mut x, mut y) = (0, 0);
            merged.clear();
            loop {
                let next = match (all.get(x), row.get(y)) {
                    (Some(old), Some(point)) => {
                        let (cost, slack) = (point.cost + piece.cost, point.slack - piece.drop);
                        if cost < old.0 || (cost == old.0 && slack > old.1) {
                            y += 1;
                            (cost, slack, first + y - 1, q)
                        } else {
                            x += 1;
                            *old
                        }
                    }
                    (None, Some(point)) => {
                        y += 1;
                        (
                            point.cost + piece.cost,
                            point.slack - piece.drop,
                            first + y - 1,
                            q,
                        )
                    }
                    (Some(old), None) => {
                        x += 1;
                        *old
                    }
                    (None, None) => break,
                };
                if next.1 > most {
                    most = next.1;
                    merged.push(next);
                }
            }
            std::mem::swap(&mut all, &mut merged);
        }
        if let Some(most) = keep.points {
            thin_out(&mut all, most, keep.hopeful);
        }
        let mut best = Vec::with_capacity(all.len());
        for (cost, slack, p, q) in all {
            let (Some(point), Some(piece)) = (points.get(p), pieces.get(q)) else {
                continue;
            };
            let mut made = point.made;
            for (var, choice) in &piece.picks {
                made = self.add(How::Picked {
                    var: u32::try_from(*var).unwrap_or(u32::MAX),
                    choice: u32::try_from(*choice).unwrap_or(u32::MAX),
                    of: made,
                });
            }
            best.push(Point { cost, slack, made });
        }
        best
    }
}

/// Which points are kept.
#[derive(Clone, Copy, Debug)]
pub(super) struct Keep {
    /// What is lost before them at the least, in V.
    pub(super) needed: f64,
    /// What they may cost at the most.
    pub(super) most: f64,
    /// No more than so many, evenly out of all there are: nothing where the very best is asked for.
    pub(super) points: Option<usize>,
    /// Whether each is then taken to leave as much as those that it stands for, as a bound has to.
    pub(super) hopeful: bool,
}

/// Keeps so many of them, the cheapest and the one that leaves most among them.
fn thin_out(all: &mut Vec<(f64, f64, usize, usize)>, most: usize, hopeful: bool) {
    let every = all.len().div_ceil(most.max(1));
    if every < 2 {
        return;
    }
    let mut kept: Vec<(f64, f64, usize, usize)> = all
        .chunks(every)
        .filter_map(|some| some.first().copied())
        .collect();
    if hopeful {
        for (point, some) in kept.iter_mut().zip(all.chunks(every)) {
            point.1 = some.last().map_or(point.1, |last| last.1);
        }
    } else if let Some(last) = all.last().copied()
        && kept.last().is_some_and(|other| other.1 < last.1)
    {
        // There may be no other that suffices.
        kept.push(last);
    }
    *all = kept;
}

/// What nothing beats of two rows by rising cost and slack.
pub(super) fn best_of(a: &[Point], b: &[Point]) -> Vec<Point> {
    let mut out = Vec::with_capacity(a.len() + b.len());
    let (mut x, mut y, mut most) = (0, 0, f64::NEG_INFINITY);
    loop {
        let next = match (a.get(x), b.get(y)) {
            (Some(one), Some(other)) => {
                let first = one.cost < other.cost || (one.cost == other.cost && one.slack >= other.slack);
                if first { (one, &mut x) } else { (other, &mut y) }
            }
            (Some(one), None) => (one, &mut x),
            (None, Some(other)) => (other, &mut y),
            (None, None) => return out,
        };
        *next.1 += 1;
        if next.0.slack > most {
            most = next.0.slack;
            out.push(*next.0);
        }
    }
}

/// Pieces that nothing beats, by rising cost and falling drop.
pub(super) fn best_pieces(mut pieces: Vec<Piece>) -> Vec<Piece> {
    pieces.order_by(|a, b| a.cost.total_cmp(&b.cost).then(a.drop.total_cmp(&b.drop)));
    let mut least = f64::INFINITY;
    pieces.retain(|piece| {
        let keeps = piece.drop < least;
        if keeps {
            least = piece.drop;
        }
        keeps
    });
    pieces
}
