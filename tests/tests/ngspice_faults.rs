//! Fault currents against ngspice on a deck with the fault in: random systems, every kind of break, sources at their strongest and
//! weakest. Limit as elsewhere: 1 mV or 0.1 %, whichever is larger.

use circuit::faults::Faults;
use model::Settings;
use model::breaks::Break;
use model::quantity::{Ohms, Share};
use std::process::Command;
use testkit::random::{Dice, random_system};

/// Voltages of the nodes of a deck by ngspice.
fn ngspice(deck: &str) -> ordered::OrderedMap<String, f64> {
    let path = std::env::temp_dir().join(format!(
        "loomwright-fault-{}-{:?}.cir",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::write(&path, deck).expect("the deck is written");
    let run = Command::new("ngspice").arg("-b").arg(&path).output().expect(
        "ngspice is installed: Debian package `ngspice`; this comparison must not be skipped in silence",
    );
    let _ = std::fs::remove_file(&path);
    String::from_utf8_lossy(&run.stdout)
        .lines()
        .filter_map(|line| {
            let (name, value) = line.split_once('=')?;
            let name = name.trim().strip_prefix("v(")?.strip_suffix(')')?;
            Some((name.to_owned(), value.trim().parse().ok()?))
        })
        .collect()
}

#[test]
fn networks_with_a_fault_in_agree() {
    let mut dice = Dice::new(5);
    let mut compared = 0;
    let mut deepest = f64::INFINITY;
    for seed in 0..70_u64 {
        let parts = 10 + 10 * dice.below(7);
        let sheet = random_system(seed, parts);
        let faults = Faults::new(&sheet, &Settings::default());
        let runs: Vec<model::RunId> = sheet.runs.keys().copied().collect();
        let run = runs[dice.below(runs.len())];
        let mut breaks = vec![Break::Grounded {
            run,
            at: Share(dice.share()),
            through: Ohms(dice.one(&[0.0, 0.002, 0.05])),
        }];
        if dice.chance(0.3) {
            breaks.push(Break::Cut {
                run: runs[dice.below(runs.len())],
                at: Share(dice.share()),
            });
        }
        if dice.chance(0.3) {
            breaks.push(Break::Resistive {
                run: runs[dice.below(runs.len())],
                more: Ohms(0.1),
            });
        }
        for strong in [true, false] {
            let (deck, ours) = faults.deck(&breaks, strong).expect("runs break in these ways");
            let theirs = ngspice(&deck);
            for (node, volts) in &ours {
                let other = theirs
                    .get(node)
                    .unwrap_or_else(|| panic!("seed {seed}: ngspice gave no voltage for {node}"));
                // Loads are followed here to a thousandth of their voltage.
                let most = f64::max(0.002, 0.001 * other.abs());
                assert!(
                    (volts - other).abs() <= most,
                    "seed {seed}, {breaks:?}, strong: {strong}, {node}: {volts} V here, {other} V by ngspice"
                );
                compared += 1;
            }
            let source = ours.iter().map(|(_, volts)| *volts).fold(0.0, f64::max);
            deepest = deepest.min(source);
        }
    }
    assert!(compared > 3000, "only {compared} nodes were compared");
    assert!(deepest < 9.0, "no fault pulled the supply down: {deepest} V");
}
