//! Laws that hold for every network: Kirchhoff, power balance, independence of order, monotony, scaling, and agreement with
//! a plain dense solution.

use circuit::solve::{Element, Law, System};
use circuit::{Outcome, study};
use model::{PartKind, RunId, Settings, Sheet};
use ordered::OrderedMap;
use proptest::prelude::*;
use testkit::random::{Dice, random_system};

/// Gaussian elimination with row pivoting: the textbook way, as a reference.
fn dense(mut matrix: Vec<Vec<f64>>, mut right: Vec<f64>) -> Vec<f64> {
    let size = right.len();
    for column in 0..size {
        let pivot = (column..size)
            .max_by(|a, b| matrix[*a][column].abs().total_cmp(&matrix[*b][column].abs()))
            .expect("a row");
        matrix.swap(column, pivot);
        right.swap(column, pivot);
        for row in column + 1..size {
            let factor = matrix[row][column] / matrix[column][column];
            let above = matrix[column].clone();
            for (entry, above) in matrix[row].iter_mut().zip(&above).skip(column) {
                *entry -= factor * above;
            }
            right[row] -= factor * right[column];
        }
    }
    for row in (0..size).rev() {
        let sum: f64 = (row + 1..size).map(|at| matrix[row][at] * right[at]).sum();
        right[row] = (right[row] - sum) / matrix[row][row];
    }
    right
}

/// A random connected network of resistors, with a source or two.
fn random_network(seed: u64) -> (usize, Vec<Element>) {
    let mut dice = Dice::new(seed);
    let nodes = 2 + dice.below(30);
    let mut elements = Vec::new();
    for node in 1..nodes {
        let other = dice.below(node);
        elements.push(Element {
            nodes: [node, other],
            law: Law::Resistance(libm::pow(10.0, dice.between(-4.0, 2.0))),
        });
    }
    for _ in 0..dice.below(nodes * 2) {
        let (a, b) = (dice.below(nodes), dice.below(nodes));
        let law = match dice.below(6) {
            0 => Law::Source {
                emf: dice.between(-14.0, 14.0),
                resistance: dice.between(0.001, 0.1),
            },
            1 => Law::Current(-dice.between(0.0, 50.0)),
            _ => Law::Resistance(libm::pow(10.0, dice.between(-4.0, 2.0))),
        };
        elements.push(Element { nodes: [a, b], law });
    }
    elements.push(Element {
        nodes: [nodes - 1, 0],
        law: Law::Source {
            emf: 12.6,
            resistance: 0.01,
        },
    });
    (nodes, elements)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, max_global_rejects: 20_000, ..ProptestConfig::default() })]

    /// The sparse factors give what dense elimination gives.
    #[test]
    fn sparse_and_dense_agree(seed in any::<u64>()) {
        let (nodes, elements) = random_network(seed);
        let mut matrix = vec![vec![0.0; nodes]; nodes];
        let mut right = vec![0.0; nodes];
        for element in &elements {
            let [a, b] = element.nodes;
            let (g, i) = match element.law {
                Law::Resistance(ohms) => (1.0 / ohms, 0.0),
                Law::Source { emf, resistance } => (1.0 / resistance, emf / resistance),
                Law::Current(amps) => (0.0, -amps),
                _ => (0.0, 0.0),
            };
            matrix[a][a] += g;
            matrix[b][b] += g;
            matrix[a][b] -= g;
            matrix[b][a] -= g;
            right[a] += i;
            right[b] -= i;
        }
        matrix[0][0] += 1.0;
        let wanted = dense(matrix, right);
        let mut system = System::new(nodes, &elements);
        system.solve(&elements, &[0], 1.0).expect("a linear network has a solution");
        for (got, wanted) in system.voltages().iter().zip(&wanted) {
            prop_assert!((got - wanted).abs() <= 1e-6 * wanted.abs().max(1.0), "{got} {wanted}");
        }
        // Resistance between two nodes by the short form and by a solution.
        let (a, b) = (0, nodes - 1);
        let across = [(a, 1.0), (b, -1.0)];
        let form = system.form(&across, &across);
        prop_assert!(form > 0.0);
    }

    /// Kirchhoff and power, and doubling every resistance halves every current.
    #[test]
    fn balance_and_scaling(seed in any::<u64>()) {
        let (nodes, elements) = random_network(seed);
        let mut system = System::new(nodes, &elements);
        system.solve(&elements, &[0], 1.0).expect("a solution");
        let closure = system.closure(&elements);
        prop_assert!(closure.relative_residual() < 1e-9 && closure.relative_power().abs() < 1e-9, "{closure:?}");
        let twice: Vec<Element> = elements
            .iter()
            .map(|e| Element {
                law: match e.law {
                    Law::Resistance(r) => Law::Resistance(2.0 * r),
                    Law::Source { emf, resistance } => Law::Source { emf, resistance: 2.0 * resistance },
                    Law::Current(i) => Law::Current(0.5 * i),
                    law => law,
                },
                ..*e
            })
            .collect();
        let mut second = System::new(nodes, &twice);
        second.solve(&twice, &[0], 1.0).expect("a solution");
        for (a, b) in system.currents().iter().zip(second.currents()) {
            prop_assert!((a - 2.0 * b).abs() < 1e-6 * closure.largest.max(1.0), "{a} {b}");
        }
    }

    /// One load of any law on a meshed network of wires: one more wire anywhere never lowers its voltage.
    #[test]
    fn one_more_wire_never_raises_the_drop(seed in any::<u64>()) {
        let mut dice = Dice::new(seed);
        let nodes = 3 + dice.below(12);
        let mut elements = vec![Element {
            nodes: [1, 0],
            law: Law::Battery { emf: 12.6, gives: 0.005, takes: 0.2 },
        }];
        for node in 2..nodes {
            elements.push(Element {
                nodes: [node, dice.below(node)],
                law: Law::Resistance(dice.between(0.001, 0.02)),
            });
        }
        let a = 1 + dice.below(nodes - 1);
        let b = (a + 1 + dice.below(nodes - 1)) % nodes;
        let load = match dice.below(3) {
            0 => Law::Power(dice.between(1.0, 400.0)),
            1 => Law::Current(dice.between(0.1, 60.0)),
            _ => Law::Resistance(dice.between(0.3, 10.0)),
        };
        elements.push(Element { nodes: [a, b], law: load });
        let c = dice.below(nodes);
        let d = (c + 1 + dice.below(nodes - 1)) % nodes;
        elements.push(Element { nodes: [c, d], law: Law::Open });
        let load_at = elements.len() - 2;
        let mut system = System::new(nodes, &elements);
        prop_assume!(system.solve(&elements, &[0], 1.0).is_ok());
        prop_assume!(!system.is_idle(load_at) || matches!(load, Law::Resistance(_)));
        let before = system.across(&elements[load_at]);
        let poles = system.across(&elements[0]);
        let far = (system.voltages()[c] - system.voltages()[d]).abs();
        // Only a wire that joins two points of one side: nearly the same voltage.
        prop_assume!(before > 0.0 && far < 0.5 * poles.min(before));
        elements[load_at + 1].law = Law::Resistance(0.002);
        let mut system = System::new(nodes, &elements);
        prop_assert!(system.solve(&elements, &[0], 1.0).is_ok());
        prop_assert!(system.across(&elements[load_at]) >= before - 1e-9, "{before} then {}", system.across(&elements[load_at]));
    }
}

/// Currents of the runs on every bus and splice add up to nothing, in whole systems.
#[test]
fn kirchhoff_holds_at_every_joint_of_random_systems() {
    let mut joints = 0;
    for seed in 0..40_u64 {
        let sheet = random_system(seed, 20 + usize::try_from(seed).unwrap_or(0) * 4);
        let study = study(&sheet, &Settings::default());
        assert!(
            !matches!(study.outcome, Outcome::Failed { .. }),
            "seed {seed}: {:?}",
            study.outcome
        );
        assert!(study.balance.relative_residual < 1e-6 && study.balance.relative_power < 1e-6);
        for (id, part) in &sheet.parts {
            if !matches!(part.is, PartKind::Bus(_) | PartKind::Splice(_)) {
                continue;
            }
            joints += 1;
            let (mut sums, mut largest) = ([0.0; 3], 1e-3_f64);
            for (run_id, run) in &sheet.runs {
                let flow = study.runs[run_id].current;
                for (end, sign) in [(&run.from, 1.0), (&run.to, -1.0)] {
                    if end.terminal().is_some_and(|t| t.part == *id) {
                        for (sum, amps) in sums.iter_mut().zip([flow.mean, flow.rms, flow.burst]) {
                            *sum += sign * amps.0;
                            largest = largest.max(amps.0.abs());
                        }
                    }
                }
            }
            for sum in sums {
                assert!(
                    sum.abs() < 1e-6 * largest,
                    "seed {seed} {}: {sum} A left over",
                    part.tag
                );
            }
        }
    }
    assert!(joints > 50, "only {joints} joints were looked at");
}

/// The same sheet with its parts and runs numbered the other way round, and which run became which.
fn renumbered(sheet: &Sheet) -> (Sheet, OrderedMap<RunId, RunId>) {
    let parts: OrderedMap<_, _> = sheet
        .parts
        .keys()
        .zip(sheet.parts.keys().rev())
        .map(|(old, new)| (*old, *new))
        .collect();
    let runs: OrderedMap<RunId, RunId> = sheet
        .runs
        .keys()
        .zip(sheet.runs.keys().rev())
        .map(|(old, new)| (*old, *new))
        .collect();
    let mut other = Sheet::default();
    for (id, part) in &sheet.parts {
        other.parts.insert(parts[id], part.clone());
    }
    for (id, run) in &sheet.runs {
        let mut run = run.clone();
        for end in [&mut run.from, &mut run.to] {
            if let model::End::On(terminal) = end {
                terminal.part = parts[&terminal.part];
            }
        }
        other.runs.insert(runs[id], run);
    }
    (other, runs)
}

#[test]
fn numbering_does_not_matter() {
    for seed in 100..120_u64 {
        let sheet = random_system(seed, 60);
        let (other, runs) = renumbered(&sheet);
        let (a, b) = (
            study(&sheet, &Settings::default()),
            study(&other, &Settings::default()),
        );
        for (id, flow) in &a.runs {
            let twin = &b.runs[&runs[id]];
            let close = |x: f64, y: f64| (x - y).abs() < 1e-5 * x.abs().max(1.0);
            assert!(
                close(flow.current.mean.0, twin.current.mean.0),
                "seed {seed} {id}"
            );
            assert!(
                close(flow.current.burst.0, twin.current.burst.0),
                "seed {seed} {id}"
            );
            assert_eq!(flow.purpose, twin.purpose, "seed {seed} {id}");
            let protected = |s: &circuit::Study, id: &RunId| {
                s.protection.get(id).map(|p| {
                    let mut all: Vec<bool> = p.from.iter().map(|f| f.protected).collect();
                    all.sort_unstable();
                    all
                })
            };
            assert_eq!(protected(&a, id), protected(&b, &runs[id]), "seed {seed} {id}");
        }
    }
}

/// Equal sheets give equal studies, to the last bit.
#[test]
fn a_study_is_deterministic() {
    let sheet = random_system(5, 80);
    assert_eq!(
        study(&sheet, &Settings::default()),
        study(&sheet, &Settings::default())
    );
}
