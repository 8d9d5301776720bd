//! In which order unknowns are eliminated.
//!
//! Minimum degree on the elimination graph, ties to the lowest index, so that it is deterministic. Of the orders that leave the same
//! fill, the one in which what is eliminated into the same unknowns stands together: most of what a column adds to others then goes
//! side by side.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// Most neighbours that an unknown may have to be eliminated before the late ones: three couplings among three neighbours (the star
/// and delta of three-phase practice) are no more than the three that go; four would leave six.
const MOST_EARLY: usize = 3;

/// Eliminates unknowns by least degree, those marked `late` last. On return each list holds the neighbours at the time of
/// elimination; told beside the order is how many stand before the late ones.
pub(super) fn minimum_degree(near: &mut [Vec<u32>], late: &[bool]) -> (Vec<usize>, usize) {
    let size = near.len();
    let is_late = |at: usize| late.get(at) == Some(&true);
    // Entries whose degree is no longer that of their unknown are passed over.
    let mut queue: BinaryHeap<Reverse<(usize, usize)>> = near
        .iter()
        .enumerate()
        .filter(|(at, _)| !is_late(*at))
        .map(|(at, list)| Reverse((list.len(), at)))
        .collect();
    let mut gone = vec![false; size];
    let mut order = Vec::with_capacity(size);
    let mut merged: Vec<u32> = Vec::new();
    let mut early = None;
    loop {
        while queue
            .peek()
            .is_some_and(|Reverse((degree, at))| gone[*at] || near[*at].len() != *degree)
        {
            queue.pop();
        }
        if early.is_none()
            && queue
                .peek()
                .is_none_or(|Reverse((degree, _))| *degree > MOST_EARLY)
        {
            early = Some(order.len());
            let late = (0..size).filter(|at| is_late(*at));
            queue.extend(late.map(|at| Reverse((near[at].len(), at))));
            continue;
        }
        let Some(Reverse((_, least))) = queue.pop() else {
            break;
        };
        gone[least] = true;
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
                queue.push(Reverse((near[at].len(), at)));
            }
        }
        near[least] = list;
    }
    (order, early.unwrap_or(size))
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
