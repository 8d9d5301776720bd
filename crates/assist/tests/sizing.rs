//! Sizes of wires and fuses: against all combinations there are, and what has to hold of every answer.

mod force;
mod systems;

use assist::sizing::{Ask, Held, Limit, Sizer, size};
use checks::{Grade, analyse};
use model::conductor::{METRIC_SERIES, Size};
use model::quantity::{Amps, SquareMm};
use model::{Fact, PartKind, RunId, Settings, Sheet};
use systems::{Tree, tree};
use testkit::conditions;

/// Copper in all runs, in mm²·m: what is to be least.
fn metal(sheet: &Sheet) -> f64 {
    let all = sheet.runs.values().map(|run| {
        let area = run.wire.size.value().map_or(0.0, |size| size.area().0);
        area * run.wire.length.value().map_or(0.0, |length| length.0)
    });
    all.sum()
}

/// Checks that a size or a rating can make speak.
const OF_SIZES: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "fuse-undersized",
    "voltage-drop",
    "supply-collapse",
    "return-too-thin",
    "return-too-long",
    "hot-joint",
    "terminal-overfull",
];

/// Whether the checks say nothing of sizes under any of them; the hardest first, since nearly all fail there.
fn holds(sheet: &Sheet, conditions: &[Settings]) -> bool {
    conditions.iter().all(|settings| {
        let findings = analyse(sheet, settings).findings;
        !findings
            .iter()
            .any(|finding| !finding.undecided && OF_SIZES.contains(&finding.check))
    })
}

/// What the checks say of sizes under all of them.
fn says(sheet: &Sheet, settings: &Settings) -> Vec<String> {
    let english = words::Words::english();
    conditions(settings)
        .iter()
        .flat_map(|settings| analyse(sheet, settings).findings)
        .filter(|finding| !finding.undecided && OF_SIZES.contains(&finding.check))
        .map(|finding| format!("{}: {}", finding.check, english.say(&finding.what)))
        .collect()
}

/// A tree with these sizes and this rating.
fn with(tree: &Tree, sizes: &[f64], rating: f64) -> Sheet {
    let mut sheet = tree.sheet.clone();
    for (run, size) in tree.free.iter().zip(sizes) {
        if let Some(run) = sheet.runs.get_mut(run) {
            run.wire.size = Fact::Given(Size::Metric(SquareMm(*size)));
        }
    }
    if let Some(PartKind::Fuse(fuse)) = sheet.parts.get_mut(&tree.fuse).map(|part| &mut part.is) {
        fuse.rating = Fact::Given(Amps(rating));
    }
    sheet
}

/// What is asked beyond the checks, told anew from the drawing alone: a stub before the fuse and the returns of its loads bear
/// its rating, as what lies behind it does.
fn bear_the_fuse(tree: &Tree, sheet: &Sheet, rating: f64) -> bool {
    let study = circuit::study(sheet, &Settings::default());
    tree.in_line.iter().all(|run| {
        let bears = study.runs.get(run).and_then(|flow| flow.allowable);
        bears.is_some_and(|bears| bears.0 >= rating)
    })
}

/// Ratings up to the one that is there, or up to the first of which the checks do not say, with the thickest wires, that it is too
/// small for its loads: nobody fits a larger fuse to save copper.
fn ratings_in_question(tree: &Tree, conditions: &[Settings]) -> Vec<f64> {
    let too_small = |rating: f64| {
        let sheet = with(tree, &vec![16.0; tree.free.len()], rating);
        conditions.iter().any(|settings| {
            let findings = analyse(&sheet, settings).findings;
            findings.iter().any(|finding| finding.check == "fuse-undersized")
        })
    };
    let has = match tree.sheet.parts.get(&tree.fuse).map(|part| &part.is) {
        Some(PartKind::Fuse(fuse)) => fuse.rating.value().map_or(0.0, |amps| amps.0),
        _ => 0.0,
    };
    let mut ratings = tree.ratings.clone();
    ratings.sort_by(f64::total_cmp);
    let needed = ratings.iter().copied().find(|rating| !too_small(*rating));
    ratings.retain(|rating| *rating <= has.max(needed.unwrap_or(f64::INFINITY)));
    ratings
}

/// Whether by Ohm's law alone more is lost in the free runs on the way to a load than the profile allows: copper of 1/58 Ω·mm²/m at 20 °C
/// (IEC 60028), with nearly the current that flows through the thickest wires; thinner ones carry no less, and joints and the fuse come on top.
fn loses_too_much(tree: &Tree, thickest: &Sheet, settings: &Settings) -> impl Fn(&[f64]) -> bool {
    let study = circuit::study(thickest, settings);
    let limits = checks::asks(thickest, settings, &study).drops;
    let run = |run: &RunId| {
        let length = thickest.runs[run]
            .wire
            .length
            .value()
            .map_or(0.0, |length| length.0);
        0.99 * study.runs[run].current.burst.abs().0 * length / 58.0
    };
    let volts_per_area: Vec<f64> = tree.free.iter().map(run).collect();
    let ways = limits.iter().map(|(load, limit)| {
        let circuit = &study.circuits[load];
        let there = circuit.feeds.iter().flat_map(|way| &way.runs);
        let back = circuit.returns.iter().flat_map(|way| &way.runs);
        let way = there.chain(back);
        let places = way.filter_map(|id| tree.free.iter().position(|free| free == id));
        (limit.0, places.collect())
    });
    let ways: Vec<(f64, Vec<usize>)> = ways.collect();
    move |sizes| {
        let lost =
            |places: &[usize]| -> f64 { places.iter().map(|at| volts_per_area[*at] / sizes[*at]).sum() };
        ways.iter().any(|(limit, places)| lost(places) > *limit)
    }
}

/// What a copper wire bears by the published table, at 40 °C, alone, with insulation for 105 °C, in A.
fn bears(size: f64) -> f64 {
    let query = reference::ampacity::AmpacityQuery {
        material: model::conductor::Material::Copper,
        area: SquareMm(size),
        insulation: model::quantity::Celsius(105.0),
        ambient: model::quantity::Celsius(40.0),
        bundled: 1,
    };
    reference::ampacity::allowable_current(query).0
}

/// The least metal over all combinations of sizes of the free runs and ratings of the fuse; the engine and the checks judge.
/// Left out from the start is only what cannot do: wire that does not bear its share of the load's power at 14.4 V, and what loses too much by
/// Ohm's law alone.
fn by_brute_force(tree: &Tree) -> Option<f64> {
    let mut settings = conditions(&Settings::default());
    settings.rotate_left(1);
    let thickest = with(tree, &vec![16.0; tree.free.len()], 80.0);
    let study = circuit::study(&thickest, &settings[0]);
    let sizes: Vec<Vec<f64>> = tree
        .free
        .iter()
        .map(|run| {
            let carries = study.runs.get(run).map_or(0.0, |flow| flow.current.rms.abs().0);
            tree.sizes
                .iter()
                .copied()
                .filter(|size| bears(*size) >= 0.9 * carries)
                .collect()
        })
        .collect();
    let loses_too_much = loses_too_much(tree, &thickest, &settings[0]);
    let mut all: Vec<(f64, Vec<f64>, f64)> = Vec::new();
    for rating in &ratings_in_question(tree, &settings) {
        let mut combined: Vec<Vec<f64>> = vec![Vec::new()];
        for own in &sizes {
            let longer = |so_far: &Vec<f64>| -> Vec<Vec<f64>> {
                own.iter()
                    .map(|size| so_far.iter().copied().chain([*size]).collect())
                    .collect()
            };
            combined = combined.iter().flat_map(longer).collect();
        }
        for picked in combined.into_iter().filter(|picked| !loses_too_much(picked)) {
            all.push((metal(&with(tree, &picked, *rating)), picked, *rating));
        }
    }
    // The cheapest first: the first that holds is the best.
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all.into_iter().find_map(|(metal, sizes, rating)| {
        let sheet = with(tree, &sizes, rating);
        (holds(&sheet, &settings) && bear_the_fuse(tree, &sheet, rating)).then_some(metal)
    })
}

#[test]
fn the_metal_is_that_of_the_best_of_all_combinations() {
    let mut compared = 0;
    let mut told = Vec::new();
    for seed in 0..5 {
        let tree = tree(seed, 1 + (seed as usize % 2), 1);
        let settings = Settings::default();
        let sizing = size(&tree.sheet, &settings, &Ask::default());
        let Some(best) = by_brute_force(&tree) else {
            assert!(
                !sizing.short.is_empty(),
                "seed {seed}: no combination holds, and nothing is said of it"
            );
            continue;
        };
        assert!(sizing.short.is_empty(), "seed {seed}: {:?}", sizing.short);
        assert!(sizing.proved && !sizing.meshed, "seed {seed}: {sizing:?}");
        let ours = metal(&sizing.taken(&tree.sheet));
        if (ours - best).abs() > 1e-6 {
            told.push(format!("seed {seed}: {ours} mm²·m, the best has {best}"));
        }
        compared += 1;
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
    assert!(compared >= 3, "only {compared} of them can be sized at all");
}

#[test]
fn the_checks_find_nothing_wrong_with_the_answer_at_any_duty_and_state() {
    for (name, text) in testkit::sound_systems::sound_systems() {
        let job = testkit::job(&text);
        let Some((kind, sheet)) = job.sheets.iter().next() else {
            continue;
        };
        let sizing = size(sheet, &job.settings, &Ask::default());
        assert!(sizing.short.is_empty(), "{name}: {:?}", sizing.short);
        assert!(sizing.proved || sizing.meshed, "{name}");
        let mut done = job.clone();
        if let Some(edit) = sizing.edit(sheet, *kind) {
            let back = done.apply(edit);
            let after = done.sheet(*kind).cloned().unwrap_or_default();
            assert_eq!(says(&after, &done.settings), Vec::<String>::new(), "{name}");
            let grave = |sheet: &Sheet| {
                let all = analyse(sheet, &job.settings).findings;
                all.into_iter()
                    .filter(|finding| finding.grade != Grade::Tidy)
                    .count()
            };
            assert_eq!(grave(&after), 0, "{name}");
            // Sized once more nothing changes.
            let again = size(&after, &done.settings, &Ask::default());
            assert!((again.objective - sizing.objective).abs() < 1e-9, "{name}");
            done.apply(back);
            assert_eq!(model::file::write(&done), model::file::write(&job), "{name}");
        }
        assert_eq!(sizing, size(sheet, &job.settings, &Ask::default()), "{name}");
    }
}

#[test]
fn what_is_locked_stays() {
    let mut locked = 0;
    for seed in 0..12 {
        let mut tree = tree(seed, 3, 2);
        let (run, fuse) = (tree.free[0], tree.fuse);
        if let Some(run) = tree.sheet.runs.get_mut(&run) {
            run.laying.size_locked = true;
            run.wire.size = Fact::Given(Size::Metric(SquareMm(35.0)));
        }
        if let Some(PartKind::Fuse(fuse)) = tree.sheet.parts.get_mut(&fuse).map(|part| &mut part.is) {
            (fuse.rating_locked, fuse.rating) = (true, Fact::Given(Amps(80.0)));
        }
        let sizing = size(&tree.sheet, &Settings::default(), &Ask::default());
        let after = sizing.taken(&tree.sheet);
        assert_eq!(after.runs.get(&run), tree.sheet.runs.get(&run), "seed {seed}");
        assert_eq!(after.parts.get(&fuse), tree.sheet.parts.get(&fuse), "seed {seed}");
        let is_held = |limit: &Limit| *limit == Limit::Held(Held::Locked);
        locked += sizing
            .runs
            .iter()
            .filter(|line| line.run == run && is_held(&line.limit))
            .count();
        locked += sizing.devices.iter().filter(|line| is_held(&line.limit)).count();
    }
    assert_eq!(locked, 24);
}

#[test]
fn more_load_never_takes_less_metal() {
    for seed in 0..5 {
        let mut before = 0.0;
        for factor in [0.6, 0.8, 1.0, 1.2] {
            let mut tree = tree(seed, 3, 2);
            for part in tree.sheet.parts.values_mut() {
                if let PartKind::Load(load) = &mut part.is {
                    let watts = load.power.value().map_or(0.0, |power| power.0);
                    load.power = Fact::Given(model::quantity::Watts(watts * factor));
                }
            }
            let sizing = size(&tree.sheet, &Settings::default(), &Ask::default());
            assert!(sizing.proved, "seed {seed}");
            if !sizing.short.is_empty() {
                break;
            }
            let metal = metal(&sizing.taken(&tree.sheet));
            assert!(metal >= before - 1e-9, "seed {seed}: {metal} after {before}");
            before = metal;
        }
    }
}

/// A worked example by hand: 20 A over 4 m there and 4 m back, with 0.6 V to lose (5 % of 12 V), wants 4.9 mm² of copper by
/// A = ρ·L·I/U at 20 °C with ρ = 1/58 Ω·mm²/m (IEC 60028) before any joint or fuse; so 6 mm² is the least of the usual series,
/// and a fuse of 25 A or more, as lasting current is to stay below 80 % of it (NFPA 70 210.20, from memory).
#[test]
fn a_simple_feed_gets_what_one_reckons_by_hand() {
    let sheet = testkit::sheet(
        "battery B1 agm 100Ah cranking=900A\n\
         fuse F1 maxi 60A\n\
         load L1 current current=20A\n\
         run W1 B1.+ F1.in 25mm2 0.2m RD\n\
         run W2 F1.out L1.+ 25mm2 4m RD\n\
         run W3 L1.- B1.- 25mm2 4m BK\n",
    );
    let sizing = size(&sheet, &Settings::default(), &Ask::default());
    let after = sizing.taken(&sheet);
    let area = |tag: &str| {
        let run = after.run_by_tag(tag).map(|(_, run)| run.wire.size.value());
        run.flatten().map_or(0.0, |size| size.area().0)
    };
    assert!(
        area("W2") + area("W3") >= 2.0 * 4.9,
        "{} and {}",
        area("W2"),
        area("W3")
    );
    assert!(
        area("W2") <= 8.0 && area("W3") <= 8.0,
        "{} and {}",
        area("W2"),
        area("W3")
    );
    // 25 A, or the next one where its lesser resistance saves copper.
    let rating = sizing
        .devices
        .first()
        .and_then(|line| line.after)
        .map_or(0.0, |amps| amps.0);
    assert!((25.0..=30.0).contains(&rating), "{rating} A");
    assert!(METRIC_SERIES.contains(&area("W2")));
}

/// Source: the same work done at one go.
#[test]
fn sizes_in_steps_are_those_at_one_go() {
    let settings = Settings::default();
    for seed in [3, 7, 8] {
        let sheet = testkit::random::random_system(seed, 30);
        let mut sizer = Sizer::new(sheet.clone(), settings.clone(), None, None, false);
        let mut steps = 1;
        let found = loop {
            if let Some(found) = sizer.step() {
                break found;
            }
            steps += 1;
        };
        assert_eq!(found, size(&sheet, &settings, &Ask::default()), "seed {seed}");
        assert!(steps > 20, "seed {seed}: {steps} steps");
        assert_eq!(sizer.step(), None, "it is told once");
        // What was begun can be dropped at any step.
        let mut dropped = Sizer::new(sheet, settings.clone(), None, None, false);
        assert!(dropped.step().is_none());
    }
}
