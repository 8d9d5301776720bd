//! A fault is put into a random system and looked for with the readings of a hand meter: a small fixed set of what
//! `cargo xtask bench` reports at length. Limit by the project: named, alone or among those that nothing tells apart from it, in 95 of 100.

use loomwright_tests::chase::chase;

#[test]
fn the_fault_is_named() {
    let (mut tried, mut named, mut measured) = (0, 0, 0);
    let mut missed = Vec::new();
    for seed in 20..28 {
        let Some(it) = chase(seed, 20, false) else {
            continue;
        };
        tried += 1;
        named += usize::from(it.named);
        measured += it.measured;
        assert!(!it.named || it.measured < 100, "{it:?}");
        if !it.named {
            missed.push(it);
        }
    }
    assert!(tried >= 6, "{tried} could be put in");
    assert!(
        named + 1 >= tried,
        "{named} of {tried} are named, not: {missed:?}"
    );
    assert!(measured < tried * 40, "{measured} measurements for {tried}");
}
