//! Two pieces of work side by side.

/// Does both pieces of work: at the same time where that is worth the start of a thread and there are threads, which a page has not;
/// else one after the other. What they give is the same either way, as neither knows of the other. What allocates most goes `here`.
pub fn beside<A, B: Send>(
    worth_it: bool,
    here: impl FnOnce() -> A,
    mut there: impl FnMut() -> B + Send,
) -> (A, B) {
    #[cfg(not(target_family = "wasm"))]
    if worth_it {
        let (here, joined) = std::thread::scope(|scope| {
            let thread = std::thread::Builder::new().spawn_scoped(scope, &mut there);
            let here = here();
            (here, thread.ok().map(std::thread::ScopedJoinHandle::join))
        });
        let there = match joined {
            Some(Ok(there)) => there,
            Some(Err(panic)) => std::panic::resume_unwind(panic),
            // No thread was to be had.
            None => there(),
        };
        return (here, there);
    }
    let _ = worth_it;
    (here(), there())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gives_both_whether_side_by_side_or_not() {
        for worth_it in [false, true] {
            let list: Vec<usize> = (0..1000).collect();
            let sum = || list.iter().sum::<usize>();
            assert_eq!(beside(worth_it, || list.len(), sum), (1000, 499_500));
        }
    }
}
