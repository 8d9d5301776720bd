//! Speed of the engine: an analysis after an edit, the linear solver beside a general sparse library, and the operating
//! point beside a circuit simulator on the same deck. Prints a report; it never fails on a time.

#![allow(clippy::disallowed_methods, clippy::print_stdout)]

use circuit::solve::{Factor, Level, Slot};
use faer::prelude::Solve;
use faer::sparse::linalg::solvers::{Llt, SymbolicLlt};
use faer::sparse::{SparseColMat, Triplet};
use faer::{Mat, Side};
use std::hint::black_box;
use std::time::Instant;
use testkit::random::{Dice, random_system};

/// As the command line has it.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Median of `rounds` runs, in seconds.
fn median(rounds: usize, mut work: impl FnMut()) -> f64 {
    work();
    let mut times: Vec<f64> = (0..rounds)
        .map(|_| {
            let begin = Instant::now();
            work();
            begin.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}

fn analyse() {
    println!("analyse(sheet, settings), median of a run after an edit");
    let settings = model::Settings::default();
    for (parts, rounds) in [(30, 101), (60, 101), (300, 41), (3000, 11)] {
        let sheet = random_system(7, parts);
        let whole = median(rounds, || {
            black_box(checks::analyse(black_box(&sheet), &settings));
        });
        let engine = median(rounds, || {
            black_box(circuit::study(black_box(&sheet), &settings));
        });
        println!(
            "  {:>5} parts {:>5} runs: {:>8.3} ms, {:>8.3} ms of it the engine",
            sheet.parts.len(),
            sheet.runs.len(),
            whole * 1e3,
            engine * 1e3
        );
    }
}

fn breaks() {
    use circuit::faults::Faults;
    use model::breaks::Break;
    use model::quantity::{Ohms, Share};
    println!("\none break through time, in all four cases; making ready before it, once for each edit");
    let settings = model::Settings::default();
    for (parts, most) in [(30, 60), (60, 60), (300, 30), (3000, 5)] {
        let sheet = random_system(7, parts);
        let ready = median(11, || {
            black_box(Faults::new(black_box(&sheet), &settings));
        });
        let faults = Faults::new(&sheet, &settings);
        let mut times: Vec<f64> = sheet
            .runs
            .keys()
            .step_by(1 + sheet.runs.len() / most)
            .map(|&run| {
                let broken = Break::Grounded {
                    run,
                    at: Share(0.5),
                    through: Ohms(0.0),
                };
                median(3, || {
                    black_box(faults.course(std::slice::from_ref(&broken)).is_ok());
                })
            })
            .collect();
        times.sort_by(f64::total_cmp);
        println!(
            "  {parts:>5} parts: {:>8.3} ms median, {:>8.3} ms at most; made ready in {:>8.3} ms",
            times[times.len() / 2] * 1e3,
            times[times.len() - 1] * 1e3,
            ready * 1e3
        );
    }
}

/// Everything mended that needs no choice: of the van, and of systems into which faults were put.
fn mend() {
    use assist::mending::{mend_all, preview};
    use model::SheetKind;
    println!("\nmend_all(job, sheet), median of a run; preview of one mend");
    let van = lessons::WorkedJob::of("van").map(|worked| worked.job());
    let spoiled = [(60, 12, 9), (300, 30, 3)].map(|(parts, faults, rounds)| {
        let mut sheet = random_system(7, parts);
        testkit::faults::spoil(&mut sheet, &mut Dice::new(7), faults);
        let mut job = model::Job::default();
        job.sheets.insert(SheetKind::Plan, sheet);
        (job, rounds)
    });
    for (job, rounds) in van.into_iter().map(|job| (job, 9)).chain(spoiled) {
        let Some((kind, sheet)) = job.sheets.iter().next() else {
            continue;
        };
        let all = median(rounds, || {
            black_box(mend_all(black_box(&job), *kind));
        });
        let mended = mend_all(&job, *kind);
        let findings = checks::analyse(sheet, &job.settings).findings;
        let first = findings.iter().find_map(|finding| finding.mends.first());
        let one = first.map_or(0.0, |mend| {
            median(rounds, || {
                black_box(preview(black_box(&job), *kind, &findings, &mend.edit));
            })
        });
        println!(
            "  {:>5} parts, {:>3} findings to {:>3} by {:>3} mends: {:>8.1} ms, {:>6.2} ms",
            sheet.parts.len(),
            findings.len(),
            mended.left.len(),
            mended.steps.len(),
            all * 1e3,
            one * 1e3
        );
    }
}

/// Sizes for worked jobs and random systems, each with what is proved of it.
fn sizes() {
    use assist::sizing::{Ask, size};
    println!("\nsize(sheet, settings), median of a run");
    let worked = lessons::WORKED_JOBS
        .iter()
        .map(|worked| (worked.key.to_owned(), worked.job()));
    for (name, job) in worked {
        let Some(sheet) = job.sheets.values().next_back() else {
            continue;
        };
        let took = median(3, || {
            black_box(size(black_box(sheet), &job.settings, &Ask::default()));
        });
        let it = size(sheet, &job.settings, &Ask::default());
        println!(
            "  {name:<12} {:>4} runs: {:>8.1} ms; {}",
            it.runs.len(),
            took * 1e3,
            if it.proved {
                "proved".to_owned()
            } else {
                format!("at most {:.0} % above the best", it.gap() * 100.0)
            }
        );
    }
    for (parts, seeds) in [(60, 7..24), (300, 7..12)] {
        let (mut took, mut gaps): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
        for seed in seeds {
            let sheet = random_system(seed, parts);
            let settings = model::Settings::default();
            let ask = Ask::default();
            took.push(median(3, || {
                black_box(size(black_box(&sheet), &settings, &ask));
            }));
            gaps.push(size(&sheet, &settings, &ask).gap());
        }
        took.sort_by(f64::total_cmp);
        gaps.sort_by(f64::total_cmp);
        let (half, last) = (took.len() / 2, took.len() - 1);
        println!(
            "  random, {parts:>4} parts, {} systems: median {:.1} ms, worst {:.1} ms; above the bound: median {:.1} %, worst {:.1} %",
            took.len(),
            took[half] * 1e3,
            took[last] * 1e3,
            gaps[half] * 100.0,
            gaps[last] * 100.0
        );
    }
}

/// A grounded resistive network as systems in vehicles are: a tree with a few meshes.
fn network(nodes: usize) -> Vec<(usize, usize, f64)> {
    let mut dice = Dice::new(11);
    let mut branches: Vec<(usize, usize, f64)> = (1..nodes)
        .map(|n| {
            (
                n,
                dice.below(n.min(12)) + n.saturating_sub(12),
                dice.between(10.0, 1000.0),
            )
        })
        .collect();
    for _ in 0..nodes / 10 {
        let (a, b) = (dice.below(nodes), dice.below(nodes));
        if a != b {
            branches.push((a, b, dice.between(10.0, 1000.0)));
        }
    }
    branches
}

fn linear_solver() {
    println!(
        "\nnumeric refactorization and solve, ours beside a general sparse library (faer, simplicial/supernodal LLT)"
    );
    for nodes in [150, 1000, 6000] {
        let branches = network(nodes);
        let pairs: Vec<(usize, usize)> = branches.iter().map(|(a, b, _)| (*a, *b)).collect();
        let mut factor = Factor::new(nodes, &pairs);
        let slots: Vec<Slot> = pairs.iter().filter_map(|(a, b)| factor.slot(*a, *b)).collect();
        let mut right = vec![0.0; nodes];
        let rounds = 200_000 / nodes;
        let ours = median(rounds, || {
            factor.clear();
            for (slot, (_, _, conductance)) in slots.iter().zip(&branches) {
                factor.add_between(*slot, *conductance);
            }
            factor.add_to_reference(0, 1e4);
            right.fill(0.0);
            right[nodes - 1] = -50.0;
            black_box(factor.factor());
            factor.solve(&mut right);
            black_box(&right);
        });
        let mut triplets = vec![Triplet::new(0, 0, 1e4)];
        for (a, b, conductance) in &branches {
            let (low, high) = (*a.min(b), *a.max(b));
            triplets.push(Triplet::new(low, low, *conductance));
            triplets.push(Triplet::new(high, high, *conductance));
            triplets.push(Triplet::new(high, low, -conductance));
        }
        let matrix =
            SparseColMat::<usize, f64>::try_new_from_triplets(nodes, nodes, &triplets).expect("a matrix");
        let symbolic = SymbolicLlt::try_new(matrix.symbolic(), Side::Lower).expect("a symbolic factor");
        let mut column = Mat::<f64>::zeros(nodes, 1);
        column[(nodes - 1, 0)] = -50.0;
        let mut theirs_right = Mat::<f64>::zeros(nodes, 1);
        let theirs = median(rounds, || {
            let llt =
                Llt::try_new_with_symbolic(symbolic.clone(), matrix.as_ref(), Side::Lower).expect("definite");
            theirs_right = llt.solve(&column);
            black_box(&theirs_right);
        });
        let apart = (0..nodes)
            .map(|n| (theirs_right[(n, 0)] - right[n]).abs())
            .fold(0.0, f64::max);
        println!(
            "  {nodes:>5} nodes {:>5} branches: {:>9.2} µs ours, {:>9.2} µs the library's, ratio {:.2}; answers {apart:.1e} V apart",
            branches.len(),
            ours * 1e6,
            theirs * 1e6,
            theirs / ours
        );
    }
}

fn simulator() {
    println!(
        "\noperating point beside ngspice on the same deck; what it takes to start and to read the deck is taken off"
    );
    let folder = std::env::temp_dir().join(format!("loomwright-bench-{}", std::process::id()));
    if std::fs::create_dir_all(&folder).is_err() {
        println!("  no folder for the decks");
        return;
    }
    // The time of one process that finds the operating point so many times.
    let run = |deck: &str, times: usize| {
        let path = folder.join("system.cir");
        let control = format!(".control\nrepeat {times}\nop\nend\nquit\n.endc\n.end\n");
        let body = deck.trim_end().trim_end_matches(".end");
        std::fs::write(&path, format!("{body}{control}")).expect("a deck can be written");
        median(5, || {
            let output = std::process::Command::new("ngspice")
                .arg("-b")
                .arg(&path)
                .output();
            assert!(output.is_ok(), "ngspice is not installed");
        })
    };
    let start = run("* empty\nv1 a 0 1\nr1 a 0 1\n", 1);
    let settings = model::Settings::default();
    for (parts, more) in [(30, 100), (60, 100), (300, 20), (3000, 1)] {
        let sheet = random_system(7, parts);
        let deck = circuit::deck(&sheet, &settings, Level::Burst);
        let once = run(&deck, 1);
        let from_deck = (once - start).max(0.0);
        #[expect(clippy::cast_precision_loss, reason = "a count below a thousand")]
        let again = ((run(&deck, 1 + more) - once) / more as f64).max(0.0);
        let ours = median(21, || {
            black_box(circuit::operating_point(
                black_box(&sheet),
                &settings,
                Level::Burst,
            ));
        });
        println!(
            "  {:>5} parts: {:>8.3} ms ours, {:>9.2} ms ngspice's, ratio {:.0}; again {:>8.2} ms, ratio {:.1}",
            sheet.parts.len(),
            ours * 1e3,
            from_deck * 1e3,
            from_deck / ours,
            again * 1e3,
            again / ours
        );
    }
    let _ = std::fs::remove_dir_all(&folder);
}

fn main() {
    analyse();
    breaks();
    mend();
    sizes();
    linear_solver();
    simulator();
}
