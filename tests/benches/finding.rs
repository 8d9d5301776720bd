//! Finding the fault: how often the true one is named, how many measurements that takes beside measuring anywhere, and how long the
//! next proposal takes; and how long the shortest proof takes. Prints a report; it never fails on a time.

#![allow(clippy::disallowed_methods, clippy::print_stdout)]

use assist::finding::{Finder, Symptom};
use assist::proving::prove;
use loomwright_tests::chase::{MOST, chase, chase_on};
use model::{PartKind, Settings};
use std::time::Instant;

fn main() {
    let count: u64 = std::env::var("CHASES")
        .ok()
        .and_then(|it| it.parse().ok())
        .unwrap_or(100);
    for parts in [60, 300] {
        let sheet = testkit::random::random_system(7, parts);
        let begun = Instant::now();
        let mut finder = Finder::new(&sheet, &Settings::default()).expect("a finder");
        let made = begun.elapsed();
        let begun = Instant::now();
        let first = finder.propose();
        let proposed = begun.elapsed();
        let amplifier = sheet
            .parts
            .iter()
            .find(|(_, part)| matches!(part.is, PartKind::Amplifier(_)));
        let begun = Instant::now();
        finder.know(&[], &[Symptom::Off(*amplifier.expect("an amplifier").0)]);
        let _ = finder.propose();
        println!(
            "{parts:>4} parts, {} suspicions, {} probes: made in {:.1} ms, first proposal {:.1} ms, after a symptom {:.1} ms",
            finder.suspicions(),
            finder.probes().count(),
            made.as_secs_f64() * 1e3,
            proposed.as_secs_f64() * 1e3,
            begun.elapsed().as_secs_f64() * 1e3
        );
        assert!(first.is_some());
        let slowest = (0..4).filter_map(|seed| chase_on(&sheet, &Settings::default(), seed, false));
        let slowest = slowest
            .max_by(|a, b| a.slowest.total_cmp(&b.slowest))
            .expect("a chase");
        println!(
            "{parts:>4} parts, what is known taken in and the next proposal: {:.1} ms at most ({}, {} measurements)",
            slowest.slowest * 1e3,
            slowest.fault,
            slowest.measured
        );
        let begun = Instant::now();
        let proof = prove(&sheet, &Settings::default()).expect("a proof");
        let took = begun.elapsed();
        let unseen: usize = proof.unseen.iter().map(|it| it.hazards.len()).sum();
        println!(
            "{parts:>4} parts, shortest proof: {:.0} ms; {} readings (no list has fewer than {}), {} of {} faults exposed, {:.0} min",
            took.as_secs_f64() * 1e3,
            proof.steps.len(),
            proof.least,
            proof.hazards.len() - unseen,
            proof.hazards.len(),
            proof.minutes
        );
    }
    // The mark: 95 of 100 named, with at most half of what measuring anywhere takes until it would stop.
    let proposed = chases(count, false);
    let anywhere = chases(count, true);
    println!(
        "{:.1} measurements as proposed beside {:.1} anywhere: {:.2} of it",
        proposed,
        anywhere,
        proposed / anywhere
    );
}

/// Chases of as many seeds; measurements on the average.
fn chases(count: u64, anywhere: bool) -> f64 {
    let (mut named, mut tried, mut measured) = (0, 0, Vec::new());
    for seed in 0..count {
        let Some(it) = chase(seed, 60, anywhere) else {
            continue;
        };
        tried += 1;
        named += u64::from(it.named);
        measured.push(it.measured);
        if !it.named || std::env::var("CHASES").is_ok() {
            println!(
                "  seed {seed}: {} -> {} after {} measurements: {:?}",
                it.fault,
                if it.named { "named" } else { "NOT NAMED" },
                it.measured,
                it.said.iter().take(3).collect::<Vec<_>>()
            );
        }
    }
    measured.sort_unstable();
    let given_up = measured.iter().filter(|count| **count >= MOST).count();
    let average = measured.iter().sum::<usize>() as f64 / measured.len().max(1) as f64;
    println!(
        "{}: {named} of {tried} named, {average:.1} measurements on the average, {} in the middle; {given_up} given up after {MOST}",
        if anywhere { "anywhere" } else { "as proposed" },
        measured.get(measured.len() / 2).copied().unwrap_or(0)
    );
    average
}
