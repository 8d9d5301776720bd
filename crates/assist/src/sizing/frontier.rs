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
#[derive(Debug, Default)]
pub(super) struct Made {
    /// The first of them is nothing.
    how: Vec<How>,
    /// Whether it is written down.
    traced: bool,
    sift: Sift,
}

/// Something put in line: what it costs, what is lost in it, and what was chosen.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    pub(super) cost: f64,
    pub(super) drop: f64,
    /// Variables with the place of their choice.
    pub(super) picks: Vec<(usize, usize)>,
}

impl Made {
    /// The same with nothing made yet.
    pub(super) fn cleared(mut self, traced: bool) -> Self {
        self.traced = traced;
        self.how.clear();
        self.how.push(How::Nothing);
        self
    }
    fn add(&mut self, how: How) -> u32 {
        if !self.traced {
            return 0;
        }
        self.how.push(how);
        u32::try_from(self.how.len() - 1).unwrap_or(0)
    }
    /// Puts what a point is made of into a list of choices by variable.
    pub(super) fn read(&self, point: u32, into: &mut [usize]) {
        let mut open = vec![point];
        while let Some(at) = open.pop() {
            match self.how.get(at as usize) {
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
        let all = self.sift.best(points, pieces, keep);
        let mut best = Vec::with_capacity(all.len());
        for (cost, slack, p, q) in all {
            let (Some(point), Some(piece)) = (points.get(p as usize), pieces.get(q as usize)) else {
                continue;
            };
            let mut made = point.made;
            for (var, choice) in &piece.picks {
                made = self.add(How::Picked {
                    var: narrow(*var),
                    choice: narrow(*choice),
                    of: made,
                });
            }
            best.push(Point { cost, slack, made });
        }
        best
    }
}

fn narrow(place: usize) -> u32 {
    u32::try_from(place).unwrap_or(u32::MAX)
}

/// A point with a piece before it: what both cost, what they leave, and the places of both.
type Pair = (f64, f64, u32, u32);

/// The points that a piece may be put before.
fn row(points: &[Point], piece: &Piece, keep: Keep) -> std::ops::Range<usize> {
    let first = points.partition_point(|point| point.slack - piece.drop < keep.needed);
    let enough = points.partition_point(|point| point.cost + piece.cost <= keep.most);
    first..enough.max(first)
}

fn each_pair(points: &[Point], pieces: &[Piece], keep: Keep, mut each: impl FnMut(Pair)) {
    for (q, piece) in pieces.iter().enumerate() {
        let row = row(points, piece, keep);
        let first = row.start;
        for (p, point) in points.get(row).unwrap_or_default().iter().enumerate() {
            let (cost, slack) = (point.cost + piece.cost, point.slack - piece.drop);
            each((cost, slack, narrow(first + p), narrow(q)));
        }
    }
}

/// Finds what nothing beats among all pairs of a point and a piece, most of which are beaten. Slack is cut into equal shelves. What costs no
/// less than the cheapest pair of a higher shelf is beaten, and is left out without a comparison with any other.
#[derive(Debug, Default)]
struct Sift {
    /// By shelf: the cheapest pair on it; in the end what is cheapest on it or higher.
    cheapest: Vec<f64>,
    /// By shelf: the cheapest pair on it.
    pairs: Vec<Pair>,
}

/// Most shelves where the very best is asked for.
const SHELVES: usize = 1024;

impl Sift {
    /// What nothing beats, by rising cost and slack; of each shelf only one where not all are asked for.
    fn best(&mut self, points: &[Point], pieces: &[Piece], keep: Keep) -> Vec<Pair> {
        let (mut low, mut high, mut count) = (f64::INFINITY, f64::NEG_INFINITY, 0);
        for piece in pieces {
            let row = points.get(row(points, piece, keep)).unwrap_or_default();
            if let (Some(first), Some(last)) = (row.first(), row.last()) {
                low = low.min(first.slack - piece.drop);
                high = high.max(last.slack - piece.drop);
                count += row.len();
            }
        }
        let few = keep.points.filter(|most| count > 2 * most);
        let shelves = few.unwrap_or((count / 2).clamp(1, SHELVES)).max(1);
        // Where nothing limits the drop, or all leave the same, there is one shelf.
        let scale = Some(shelves as f64 / (high - low)).filter(|scale| scale.is_finite());
        let scale = scale.unwrap_or(0.0);
        let shelf = |slack: f64| ((slack - low) * scale).min((shelves - 1) as f64) as usize;
        let nothing = (f64::INFINITY, f64::NEG_INFINITY, 0, 0);
        self.cheapest.clear();
        self.cheapest.resize(shelves + 1, f64::INFINITY);
        let mut all: Vec<Pair> = Vec::new();
        if few.is_some() {
            self.pairs.clear();
            self.pairs.resize(shelves, nothing);
            let mut most = nothing;
            each_pair(points, pieces, keep, |pair| {
                let at = shelf(pair.1);
                let least = &mut self.pairs[at];
                let better = pair.0 < least.0 || (pair.0 == least.0 && pair.1 > least.1);
                // The most that is left on the shelf, where a bound is asked for, is taken to be had for the least.
                let slack = if keep.hopeful { least.1.max(pair.1) } else { pair.1 };
                if better {
                    *least = (pair.0, slack, pair.2, pair.3);
                } else if keep.hopeful {
                    least.1 = slack;
                }
                if pair.1 > most.1 || (pair.1 == most.1 && pair.0 < most.0) {
                    most = pair;
                }
            });
            let mut least = f64::INFINITY;
            // There may be no other that suffices than the one that leaves most.
            let last = Some(most).filter(|most| !keep.hopeful && most.1 > f64::NEG_INFINITY);
            for pair in last.into_iter().chain(self.pairs.iter().rev().copied()) {
                if pair.0 < least {
                    least = pair.0;
                    all.push(pair);
                }
            }
            all.reverse();
            return all;
        }
        each_pair(points, pieces, keep, |(cost, slack, ..)| {
            let least = &mut self.cheapest[shelf(slack)];
            *least = least.min(cost);
        });
        for at in (0..shelves).rev() {
            self.cheapest[at] = self.cheapest[at].min(self.cheapest[at + 1]);
        }
        each_pair(points, pieces, keep, |pair| {
            if pair.0 < self.cheapest[shelf(pair.1) + 1] {
                all.push(pair);
            }
        });
        all.order_by(|a, b| {
            let by_slack = || b.1.total_cmp(&a.1);
            let by_place = || (b.3, a.2).cmp(&(a.3, b.2));
            a.0.total_cmp(&b.0).then_with(by_slack).then_with(by_place)
        });
        let mut most = f64::NEG_INFINITY;
        all.retain(|(_, slack, ..)| {
            let keeps = *slack > most;
            most = most.max(*slack);
            keeps
        });
        all
    }
}

/// Which points are kept.
#[derive(Clone, Copy, Debug)]
pub(super) struct Keep {
    /// What is lost before them at the least, in V.
    pub(super) needed: f64,
    /// What they may cost at the most.
    pub(super) most: f64,
    /// No more than about so many, one out of each equal part of what is left: nothing where the very best is asked for.
    pub(super) points: Option<usize>,
    /// Whether each is then taken to leave as much as those that it stands for, as a bound has to.
    pub(super) hopeful: bool,
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
