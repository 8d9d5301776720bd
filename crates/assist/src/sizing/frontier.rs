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

    /// Pieces of which one is put in line with what lies beyond. `needed` is what is lost before them at the least.
    pub(super) fn before(&mut self, points: &[Point], pieces: &[Piece], needed: f64) -> Vec<Point> {
        let mut out: Vec<(f64, f64, usize, usize)> = Vec::with_capacity(points.len() * pieces.len());
        for (p, point) in points.iter().enumerate() {
            for (q, piece) in pieces.iter().enumerate() {
                let slack = point.slack - piece.drop;
                if slack >= needed {
                    out.push((point.cost + piece.cost, slack, p, q));
                }
            }
        }
        out.order_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)));
        let mut most = f64::NEG_INFINITY;
        let mut best = Vec::new();
        for (cost, slack, p, q) in out {
            if slack <= most {
                continue;
            }
            most = slack;
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

/// Keeps what nothing beats, by rising cost.
pub(super) fn best_points(mut points: Vec<Point>) -> Vec<Point> {
    points.order_by(|a, b| a.cost.total_cmp(&b.cost).then(b.slack.total_cmp(&a.slack)));
    let mut most = f64::NEG_INFINITY;
    points.retain(|point| {
        let keeps = point.slack > most;
        if keeps {
            most = point.slack;
        }
        keeps
    });
    points
}

/// The same of pieces: by rising cost and falling drop.
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
