//! Damaged and random input for a bounded time: a target for the job file, one for the text form, one for links, one for
//! lessons.
//!
//! `LOOMWRIGHT_FUZZ_SECONDS` sets the time of each (10 s unless set), `LOOMWRIGHT_FUZZ_SEED` repeats a run. An input that
//! makes a target panic is kept under `tests/cases/TARGET`, and everything kept there is tried first, for ever.

#![allow(clippy::disallowed_methods)]

mod job_file;
mod lesson;
mod links;
mod mutate;
mod text_form;

use mutate::Mutator;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::time::{Duration, Instant, SystemTime};

/// What became of one input that did not panic.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fate {
    /// Read, and all laws held.
    Read,
    /// Refused with an error that names its place or reason.
    Refused,
}

/// Tries the kept cases, then mutations of the seeds until time is up.
///
/// # Panics
/// When `target` does, after keeping the input; and when the run was no test, because every input met the same fate.
#[allow(clippy::print_stdout)]
pub(crate) fn fuzz(name: &str, seeds: Vec<Vec<u8>>, words: &[&str], target: impl Fn(&[u8]) -> Fate) {
    for (file, bytes) in kept(name) {
        let outcome = catch_unwind(AssertUnwindSafe(|| target(&bytes)));
        assert!(outcome.is_ok(), "the kept case {} fails again", file.display());
    }
    for (index, seed) in seeds.iter().enumerate() {
        assert_eq!(
            target(seed),
            Fate::Read,
            "seed {index} of {name} must be readable"
        );
    }

    let seconds = setting("LOOMWRIGHT_FUZZ_SECONDS").unwrap_or(10);
    let seed = setting("LOOMWRIGHT_FUZZ_SEED").unwrap_or_else(|| {
        let now = SystemTime::now()
            .duration_since(SystemTime::UNIX_EPOCH)
            .unwrap_or_default();
        u64::from(now.subsec_nanos()) ^ now.as_secs()
    });
    println!("{name}: seed {seed}, {seconds} s");
    let mut mutator = Mutator::new(seed, seeds, words);
    let (mut read, mut refused) = (0_u64, 0_u64);
    let begin = Instant::now();
    // On a busy machine it goes on until both sides were tried, but not for ever.
    let few = |read: u64, refused: u64| read < LEAST || refused < LEAST || read + refused < 200;
    while begin.elapsed() < Duration::from_secs(seconds)
        || few(read, refused) && begin.elapsed() < Duration::from_secs(6 * seconds)
    {
        let input = mutator.next();
        let before = Instant::now();
        let outcome = catch_unwind(AssertUnwindSafe(|| target(&input)));
        let took = before.elapsed();
        // Unoptimised and on a busy machine the largest inputs take a tenth of this.
        if outcome.is_err() || took > Duration::from_secs(20) {
            let file = keep(name, &input);
            panic!(
                "{name}: an input failed after {took:?} (seed {seed}); it is kept as {}",
                file.display()
            );
        }
        if outcome.is_ok_and(|fate| fate == Fate::Read) {
            read += 1;
            mutator.keep(input);
        } else {
            refused += 1;
        }
    }
    println!("{name}: {read} read, {refused} refused");
    assert!(
        read >= LEAST && refused >= LEAST,
        "{name}: {read} read, {refused} refused: one side was hardly tried"
    );
}

/// So many inputs of each kind are to be tried at the least: such as are read, and such as are refused.
const LEAST: u64 = 20;

fn setting(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("cases").join(name)
}

/// Kept cases, sorted by name.
fn kept(name: &str) -> Vec<(PathBuf, Vec<u8>)> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder(name))
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.path())
        .collect();
    files.sort();
    files
        .into_iter()
        .filter_map(|file| std::fs::read(&file).ok().map(|bytes| (file, bytes)))
        .collect()
}

fn keep(name: &str, input: &[u8]) -> PathBuf {
    // FNV-1a: the name depends on the bytes alone, so that one fault found twice is one file.
    let hash = input.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    });
    let file = folder(name).join(format!("{hash:016x}"));
    if let Err(error) = std::fs::create_dir_all(folder(name)).and_then(|()| std::fs::write(&file, input)) {
        panic!(
            "cannot keep {}: {error}; the input was {:?}",
            file.display(),
            String::from_utf8_lossy(input)
        );
    }
    file
}
