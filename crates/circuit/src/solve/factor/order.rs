//! In which order unknowns are eliminated.
//!
//! Minimum degree on the elimination graph, ties to the lowest index, so that it is deterministic. Of the orders that leave the same
//! fill, the one in which what is eliminated into the same unknowns stands together: most of what a column adds to others then goes
//! side by side.

/// Most neighbours that an unknown may have to be eliminated before the late ones: three couplings among three neighbours (the star
/// and delta of three-phase practice) are no more than the three that go; four would leave six.
const MOST_EARLY: usize = 3;

/// Eliminates unknowns by least degree, those marked `late` last. On return each list holds the neighbours at the time of
/// elimination; told beside the order is how many stand before the late ones.
pub(super) fn minimum_degree(near: &mut [Vec<u32>], late: &[bool]) -> (Vec<usize>, usize) {
    let size = near.len();
    let is_late = |at: usize| late.get(at) == Some(&true);
    let mut queue = Queue::new(size);
    for (at, list) in near.iter().enumerate().filter(|(at, _)| !is_late(*at)) {
        queue.insert(list.len(), at);
    }
    let mut order = Vec::with_capacity(size);
    let mut merged: Vec<u32> = Vec::new();
    let mut early = None;
    loop {
        let first = queue.first(near);
        if early.is_none() && first.is_none_or(|at| near[at].len() > MOST_EARLY) {
            early = Some(order.len());
            for at in (0..size).filter(|at| is_late(*at)) {
                queue.insert(near[at].len(), at);
            }
            continue;
        }
        let Some(least) = first else { break };
        queue.remove(near[least].len(), least);
        order.push(least);
        let list = std::mem::take(&mut near[least]);
        let me = u32::try_from(least).unwrap_or(u32::MAX);
        for &other in &list {
            let at = other as usize;
            let before = near[at].len();
            if let Ok(found) = near[at].binary_search(&me) {
                near[at].remove(found);
            }
            if list.len() <= 8 {
                for &third in &list {
                    if third != other
                        && let Err(gap) = near[at].binary_search(&third)
                    {
                        near[at].insert(gap, third);
                    }
                }
            } else {
                merge_without(&near[at], &list, other, &mut merged);
                std::mem::swap(&mut near[at], &mut merged);
            }
            if near[at].len() != before && (early.is_some() || !is_late(at)) {
                queue.remove(before, at);
                queue.insert(near[at].len(), at);
            }
        }
        near[least] = list;
    }
    (order, early.unwrap_or(size))
}

/// Unknowns that wait for their elimination, by degree; those of [`MANY`] neighbours and more, which are few, together. Sets of bits:
/// the least unknown of a degree is then found without comparing any.
struct Queue {
    of_degree: [Waiting; MANY + 1],
}

/// From this degree on unknowns are kept together.
const MANY: usize = 12;

#[derive(Default)]
struct Waiting {
    words: Vec<u64>,
    /// No word before this one holds any.
    from: usize,
}

impl Queue {
    fn new(size: usize) -> Self {
        Self {
            of_degree: std::array::from_fn(|_| Waiting {
                words: vec![0; size.div_ceil(64)],
                from: 0,
            }),
        }
    }

    fn insert(&mut self, degree: usize, at: usize) {
        let waiting = &mut self.of_degree[degree.min(MANY)];
        waiting.words[at / 64] |= 1 << (at % 64);
        waiting.from = waiting.from.min(at / 64);
    }

    fn remove(&mut self, degree: usize, at: usize) {
        self.of_degree[degree.min(MANY)].words[at / 64] &= !(1 << (at % 64));
    }

    /// The unknown of least degree, of those the least.
    fn first(&mut self, near: &[Vec<u32>]) -> Option<usize> {
        let (many, few) = self.of_degree.split_last_mut()?;
        if let Some(first) = few.iter_mut().find_map(Waiting::first) {
            return Some(first);
        }
        let mut best = many.first()?;
        for (at, word) in many.words.iter().enumerate().skip(many.from) {
            let mut left = *word;
            while left != 0 {
                let unknown = at * 64 + left.trailing_zeros() as usize;
                if near[unknown].len() < near[best].len() {
                    best = unknown;
                }
                left &= left - 1;
            }
        }
        Some(best)
    }
}

impl Waiting {
    /// The least of them.
    fn first(&mut self) -> Option<usize> {
        while self.words.get(self.from) == Some(&0) {
            self.from += 1;
        }
        let word = self.words.get(self.from)?;
        Some(self.from * 64 + word.trailing_zeros() as usize)
    }
}

/// Puts the unknowns from `begin` on into the order of a walk through the elimination tree that leaves each subtree before the
/// next: each unknown hangs on the first of its neighbours at the time of elimination, held by `near`, to go after it.
pub(super) fn subtree_by_subtree(order: &mut [usize], begin: usize, near: &[Vec<u32>]) {
    let size = order.len();
    let mut place = vec![0; size];
    for (at, &unknown) in order.iter().enumerate() {
        place[unknown] = at;
    }
    // By place, with one more for what hangs on nothing: the first that hangs on it, and the next one on the same.
    let (mut first, mut next) = (vec![size; size + 1], vec![size; size]);
    for at in (begin..size).rev() {
        let on = near[order[at]].iter().map(|&n| place[n as usize]).min();
        let on = on.unwrap_or(size);
        next[at] = first[on];
        first[on] = at;
    }
    let mut walked = Vec::with_capacity(size - begin);
    let mut above = Vec::new();
    let mut at = first[size];
    loop {
        while at < size {
            above.push(at);
            at = first[at];
        }
        let Some(done) = above.pop() else { break };
        walked.push(order[done]);
        at = next[done];
    }
    order[begin..].copy_from_slice(&walked);
}

/// Two sorted lists as one, without `leave_out`.
fn merge_without(a: &[u32], b: &[u32], leave_out: u32, out: &mut Vec<u32>) {
    out.clear();
    let (mut i, mut j) = (0, 0);
    loop {
        let next = match (a.get(i), b.get(j)) {
            (Some(&x), Some(&y)) => {
                i += usize::from(x <= y);
                j += usize::from(y <= x);
                x.min(y)
            }
            (Some(&x), None) => {
                i += 1;
                x
            }
            (None, Some(&y)) => {
                j += 1;
                y
            }
            (None, None) => break,
        };
        if next != leave_out {
            out.push(next);
        }
    }
}
