//! What is told to be the best, against all combinations there are: in meshes, by cost, and of leads that several voice coils share. The engine and
//! the checks alone judge each.

use super::{bears, says};
use assist::sizing::{Ask, By, Limit, Prices, Sizing, size};
use checks::analyse;
use model::conductor::Size;
use model::quantity::{Amps, SquareMm};
use model::thread::Money;
use model::{Fact, PartKind, RunId, Settings, Sheet, Wire};
use testkit::conditions;
use testkit::random::Dice;

/// An invented shop that keeps few sizes: in mm² with the price of a metre, in hundredths.
struct Shop(&'static [(f64, i64)]);

/// As dear as it is heavy.
const BY_METAL: Shop = Shop(&[
    (4.0, 400),
    (6.0, 600),
    (10.0, 1000),
    (16.0, 1600),
    (25.0, 2500),
    (35.0, 3500),
]);
/// Some are cheap since much of them is sold; one is cheaper than the thinner one.
const ODD: Shop = Shop(&[
    (4.0, 170),
    (6.0, 300),
    (10.0, 290),
    (16.0, 900),
    (25.0, 1000),
    (35.0, 2400),
]);
/// Of leads of speakers.
const LEADS: Shop = Shop(&[
    (0.75, 40),
    (1.0, 55),
    (1.5, 60),
    (2.5, 110),
    (4.0, 130),
    (6.0, 290),
]);

impl Shop {
    fn metre(&self, area: f64) -> Option<i64> {
        let found = self.0.iter().find(|(kept, _)| (kept - area).abs() < 1e-9);
        found.map(|(_, price)| *price)
    }
}

impl Prices for Shop {
    fn wire(&self, wire: &Wire) -> Option<f64> {
        let metre = self.metre(wire.size.value()?.area().0).map(Money);
        Some(metre?.number())
    }
    fn device(&self, _: &PartKind, _: Amps) -> Option<Money> {
        None
    }
}

/// Two wires side by side to a bus, with a load behind.
fn side_by_side(dice: &mut Dice) -> String {
    format!(
        "battery B1 agm 90Ah cranking=800A\nfuse F1 maxi 40A rating-locked=yes\nbus X1 places=6\nbus X2 places=6\n\
         load L1 power={:.0}W\n\
         run W1 B1.+ F1.in 35mm2 0.3m RD copper size-locked=yes\nrun W2 F1.out X1.1 35mm2 0.3m RD copper size-locked=yes\n\
         run W3 X1.2 X2.1 35mm2 {:.1}m RD copper\nrun W4 X1.3 X2.2 35mm2 {:.1}m RD copper\n\
         run W5 X2.3 L1.+ 35mm2 {:.1}m RD copper\nrun W6 L1.- B1.- 35mm2 1.5m BK copper size-locked=yes\n",
        dice.between(200.0, 330.0),
        dice.between(3.0, 5.0),
        dice.between(3.0, 5.0),
        dice.between(1.0, 3.0)
    )
}

/// A ring of three buses with a load on each of two.
fn ring(dice: &mut Dice) -> String {
    format!(
        "battery B1 agm 90Ah cranking=800A\nfuse F1 maxi 30A rating-locked=yes\nbus X1 places=6\nbus X2 places=6\n\
         bus X3 places=6\nload L1 power={:.0}W\nload L2 {:.1}A\n\
         run W1 B1.+ F1.in 35mm2 0.3m RD copper size-locked=yes\nrun W2 F1.out X1.1 35mm2 0.3m RD copper size-locked=yes\n\
         run W3 X1.2 X2.1 35mm2 {:.1}m RD copper\nrun W4 X2.2 X3.1 35mm2 {:.1}m RD copper\n\
         run W5 X3.2 X1.3 35mm2 {:.1}m RD copper\n\
         run W6 X2.3 L1.+ 35mm2 0.5m RD copper size-locked=yes\nrun W7 X3.3 L2.+ 35mm2 0.5m RD copper size-locked=yes\n\
         run W8 L1.- B1.- 35mm2 2m BK copper size-locked=yes\nrun W9 L2.- B1.- 35mm2 2m BK copper size-locked=yes\n",
        dice.between(90.0, 140.0),
        dice.between(6.0, 10.0),
        dice.between(3.0, 6.0),
        dice.between(1.0, 3.0),
        dice.between(4.0, 7.0)
    )
}

/// Two batteries, each with a fuse, that feed one bus.
fn two_batteries(dice: &mut Dice) -> String {
    format!(
        "battery B1 agm 90Ah cranking=800A\nbattery B2 agm 70Ah cranking=700A\nfuse F1 maxi 40A rating-locked=yes\n\
         fuse F2 maxi 40A rating-locked=yes\nbus X1 places=6\nload L1 power={:.0}W\n\
         run W1 B1.+ F1.in 35mm2 0.3m RD copper size-locked=yes\nrun W2 B2.+ F2.in 35mm2 0.3m RD copper size-locked=yes\n\
         run W3 F1.out X1.1 35mm2 {:.1}m RD copper\nrun W4 F2.out X1.2 35mm2 {:.1}m RD copper\n\
         run W5 X1.3 L1.+ 35mm2 {:.1}m RD copper\nrun W6 L1.- B1.- 35mm2 1.5m BK copper size-locked=yes\n\
         run W7 B2.- B1.- 35mm2 1m BK copper size-locked=yes\n",
        dice.between(200.0, 330.0),
        dice.between(2.0, 4.0),
        dice.between(2.0, 4.0),
        dice.between(1.0, 3.0)
    )
}

/// The runs that were sized, in the order of their ids.
fn chosen(sizing: &Sizing) -> Vec<RunId> {
    let all = sizing.runs.iter();
    all.filter(|line| !matches!(line.limit, Limit::Held(_)))
        .map(|line| line.run)
        .collect()
}

fn with(sheet: &Sheet, runs: &[RunId], sizes: &[f64]) -> Sheet {
    let mut sheet = sheet.clone();
    for (run, size) in runs.iter().zip(sizes) {
        if let Some(run) = sheet.runs.get_mut(run) {
            run.wire.size = Fact::Given(Size::Metric(SquareMm(*size)));
        }
    }
    sheet
}

/// What all combinations cost, in hundredths, the cheapest first.
fn combinations(sheet: &Sheet, runs: &[RunId], shop: &Shop) -> Vec<(f64, Vec<f64>)> {
    let mut all: Vec<(f64, Vec<f64>)> = vec![(0.0, Vec::new())];
    for run in runs {
        let length = sheet.runs[run].wire.length.value().map_or(0.0, |length| length.0);
        let longer = |(cost, sizes): &(f64, Vec<f64>)| -> Vec<(f64, Vec<f64>)> {
            let with = |(area, price): &(f64, i64)| {
                let sizes = sizes.iter().copied().chain([*area]).collect();
                (cost + *price as f64 * length, sizes)
            };
            shop.0.iter().map(with).collect()
        };
        all = all.iter().flat_map(longer).collect();
    }
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

/// Whether the checks that are asked for say nothing under any of the conditions; the one that failed last is asked first.
fn holds(sheet: &Sheet, conditions: &mut [Settings], checks: &[&str]) -> bool {
    let wrong = conditions.iter().position(|settings| {
        let findings = analyse(sheet, settings).findings;
        let mut of_sizes = findings.iter().filter(|finding| !finding.undecided);
        of_sizes.any(|finding| checks.contains(&finding.check))
    });
    if let Some(wrong) = wrong {
        conditions[..=wrong].rotate_right(1);
    }
    wrong.is_none()
}

/// Every check that a size decides, as the module of sizing lists them.
const ALL_OF_SIZES: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "fuse-undersized",
    "uneven-parallel",
    "clad-feed",
    "hot-joint",
    "return-through-shield",
    "return-too-thin",
    "return-too-long",
    "terminal-overfull",
    "supply-collapse",
    "voltage-drop",
    "ground-offset",
    "wire-before-fuse",
    "short-never-clears",
];

fn sized_by(sheet: &Sheet, shop: &Shop) -> Sizing {
    let ask = Ask {
        by: By::Cost(shop),
        ..Ask::default()
    };
    size(sheet, &Settings::default(), &ask)
}

#[test]
fn in_a_mesh_what_is_told_to_be_the_best_is_the_best_of_all_combinations() {
    type Make = fn(&mut Dice) -> String;
    let kinds: [(&str, Make); 3] = [
        ("side by side", side_by_side),
        ("ring", ring),
        ("two batteries", two_batteries),
    ];
    let (mut proved, mut all) = (0, 0);
    for (name, make) in kinds {
        for seed in 0..3 {
            let sheet = testkit::sheet(&make(&mut Dice::new(seed)));
            let shop = if seed == 2 { ODD } else { BY_METAL };
            let sizing = sized_by(&sheet, &shop);
            let what = format!("{name}, seed {seed}");
            assert!(sizing.short.is_empty(), "{what}: {:?}", sizing.short);
            assert!(sizing.meshed, "{what}");
            let runs = chosen(&sizing);
            assert!(runs.len() >= 3, "{what}: {runs:?}");
            let mut scenes = conditions(&Settings::default());
            let best = combinations(&sheet, &runs, &shop)
                .into_iter()
                .find(|(_, sizes)| holds(&with(&sheet, &runs, sizes), &mut scenes, ALL_OF_SIZES));
            let (best, sizes) = best.expect("the thickest hold");
            let (ours, bound) = (sizing.objective * 100.0, sizing.bound * 100.0);
            assert!(
                bound <= best + 1e-4,
                "{what}: bound {bound}, the best costs {best}"
            );
            assert!(
                ours >= best - 1e-4,
                "{what}: {ours}, the best costs {best} with {sizes:?}"
            );
            if sizing.proved {
                assert!(
                    (ours - best).abs() < 1e-4,
                    "{what}: {ours}, the best costs {best} with {sizes:?}"
                );
                proved += 1;
            }
            // One that is not proved is near.
            assert!(
                ours <= best * 1.05,
                "{what}: {ours}, the best costs {best} with {sizes:?}"
            );
            all += 1;
        }
    }
    assert!(proved * 3 >= all * 2, "only {proved} of {all} are proved");
}

/// Coils of one speaker side by side and in series, two speakers side by side, and two in series with one beside them.
const SHARED: [&str; 4] = [
    "amplifier A1 sections=\"1x 300W@2ohm min 2ohm\"\nspeaker LS1 4ohm coils=2 power=400W sub bass\n\
     run W1 A1.out1+ LS1.a+ 2.5mm2 5m WH\nrun W2 A1.out1- LS1.a- 2.5mm2 5m WHBK\n\
     run W3 LS1.a+ LS1.b+ 2.5mm2 0.4m WH\nrun W4 LS1.a- LS1.b- 2.5mm2 0.4m WHBK\n",
    "amplifier A1 sections=\"1x 300W@4ohm min 2ohm\"\nspeaker LS1 2ohm coils=2 power=400W sub bass\n\
     run W1 A1.out1+ LS1.a+ 2.5mm2 6m WH\nrun W2 A1.out1- LS1.b- 2.5mm2 6m WHBK\nrun W3 LS1.a- LS1.b+ 2.5mm2 0.4m WH\n",
    "amplifier A1 sections=\"1x 200W@2ohm min 2ohm\"\nspeaker LS1 4ohm power=200W\nspeaker LS2 4ohm power=200W\n\
     run W1 A1.out1+ LS1.+ 2.5mm2 3m WH\nrun W2 A1.out1- LS1.- 2.5mm2 3m WHBK\n\
     run W3 LS1.+ LS2.+ 2.5mm2 2m WH\nrun W4 LS1.- LS2.- 2.5mm2 2m WHBK\n",
    "amplifier A1 sections=\"1x 200W@2ohm min 2ohm\"\nspeaker LS1 2ohm power=200W\nspeaker LS2 2ohm power=200W\nspeaker LS3 4ohm power=200W\n\
     run W1 A1.out1+ LS1.+ 2.5mm2 3m WH\nrun W2 LS1.- LS2.+ 2.5mm2 1m WH\nrun W3 A1.out1- LS2.- 2.5mm2 3m WHBK\n\
     run W4 A1.out1+ LS3.+ 2.5mm2 2m WH\nrun W5 A1.out1- LS3.- 2.5mm2 2m WHBK\n",
];

#[test]
fn leads_of_several_coils_cost_least_of_all_combinations() {
    for text in SHARED {
        let sheet = testkit::sheet(text);
        let sizing = sized_by(&sheet, &LEADS);
        assert!(sizing.short.is_empty(), "{text}{:?}", sizing.short);
        let runs = chosen(&sizing);
        assert_eq!(runs.len(), sheet.runs.len(), "{text}{:?}", sizing.runs);
        // What each carries at full power, by hand: full power into the rated load of the whole, as it divides among coils.
        let all_bear = |sizes: &[f64]| {
            let full = |at: usize| match SHARED.iter().position(|other| *other == text) {
                Some(0) => [12.25, 12.25, 6.13, 6.13][at],
                Some(1) => 8.67,
                Some(2) => [10.0, 10.0, 5.0, 5.0][at],
                _ => 5.0,
            };
            sizes
                .iter()
                .enumerate()
                .all(|(at, size)| bears(*size) >= full(at))
        };
        let mut scenes = vec![Settings::default()];
        let best = combinations(&sheet, &runs, &LEADS)
            .into_iter()
            .find(|(_, sizes)| {
                all_bear(sizes) && holds(&with(&sheet, &runs, sizes), &mut scenes, &["lead-loss"])
            });
        let (best, sizes) = best.expect("the thickest hold");
        let ours = sizing.objective * 100.0;
        assert!(
            (ours - best).abs() < 1e-4,
            "{text}{ours}, the best costs {best} with {sizes:?}"
        );
        assert!(
            sizing.runs.iter().all(|line| line.limit != Limit::Together),
            "{text}{:?}",
            sizing.runs
        );
        let laid = sizing.taken(&sheet);
        assert_eq!(says(&laid, &Settings::default()), Vec::<String>::new(), "{text}");
    }
}
