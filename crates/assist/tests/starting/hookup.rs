//! The hook-up against every way to join coils there is, and against loads worked by hand.

use assist::starting::Where;
use assist::starting::hookup::{
    Drivers, Joined, Output, Unit, Wanted, Way, choose, join, join_by_gain, join_turned_down,
};
use model::quantity::{Ohms, Watts};
use model::written::StatedPower;

fn output(power: &[(f64, f64)], minimum: f64) -> Output {
    Output {
        power: power
            .iter()
            .map(|(power, load)| StatedPower {
                power: Watts(*power),
                load: Ohms(*load),
            })
            .collect(),
        minimum: Ohms(minimum),
    }
}

/// What equal coils become when joined: the load, and the share of the power that each coil gets.
#[derive(Clone)]
struct Network {
    load: f64,
    shares: Vec<f64>,
}

/// Every network of series and parallel joints of so many coils: all ways to split them in two, joined either way. What is
/// joined of three or more is joined of two, one after the other.
fn every_network(coils: usize, impedance: f64) -> Vec<Network> {
    let mut by_count: Vec<Vec<Network>> = vec![
        Vec::new(),
        vec![Network {
            load: impedance,
            shares: vec![1.0],
        }],
    ];
    for count in 2..=coils {
        let mut all = Vec::new();
        for first in 1..=count / 2 {
            for a in &by_count[first] {
                for b in &by_count[count - first] {
                    for series in [true, false] {
                        let (x, y) = (a.load, b.load);
                        // In series the same current flows: power goes by resistance. In parallel the same voltage stands.
                        let of_a = if series { x / (x + y) } else { y / (x + y) };
                        let load = if series { x + y } else { x * y / (x + y) };
                        let shares = a.shares.iter().map(|it| it * of_a);
                        let shares = shares
                            .chain(b.shares.iter().map(|it| it * (1.0 - of_a)))
                            .collect();
                        all.push(Network { load, shares });
                    }
                }
            }
        }
        by_count.push(all);
    }
    by_count.swap_remove(coils)
}

/// Source: Kirchhoff's laws alone, over every series and parallel network of up to eight coils.
#[test]
fn no_network_of_equal_coils_gives_more_than_the_one_that_is_chosen() {
    let outputs = [
        output(&[(300.0, 4.0), (500.0, 2.0)], 2.0),
        output(&[(500.0, 2.0), (800.0, 1.0)], 1.0),
        output(&[(75.0, 4.0), (110.0, 2.0)], 2.0),
        output(&[(220.0, 4.0)], 4.0),
        output(&[(250.0, 4.0), (400.0, 2.0), (380.0, 1.0)], 1.0),
    ];
    let mut compared = 0;
    for coils in 1..=8_u8 {
        for impedance in [1.0, 2.0, 3.0, 4.0, 6.0, 8.0] {
            let networks = every_network(usize::from(coils), impedance);
            for output in &outputs {
                for bears in [None, Some(50.0), Some(120.0), Some(400.0)] {
                    let drivers = Drivers {
                        coils,
                        impedance: Ohms(impedance),
                        bears: bears.map(Watts),
                    };
                    let equal = 1.0 / f64::from(coils);
                    let best = networks
                        .iter()
                        .filter(|it| it.shares.iter().all(|share| (share - equal).abs() < 1e-9))
                        .filter_map(|it| output.into_load(Ohms(it.load)))
                        .filter(|power| bears.is_none_or(|bears| power.0 * equal <= bears * (1.0 + 1e-9)))
                        .map(|power| power.0)
                        .reduce(f64::max);
                    let chosen = join(output, &drivers).map(|it| it.power.0);
                    match (best, chosen) {
                        (Some(best), Some(chosen)) => {
                            assert!(
                                (best - chosen).abs() < 1e-9 * best,
                                "{coils} × {impedance} Ω: {best} {chosen}"
                            );
                            compared += 1;
                        }
                        (best, chosen) => assert_eq!(best, chosen, "{coils} × {impedance} Ω"),
                    }
                }
            }
        }
    }
    assert!(compared > 400, "{compared}");
}

/// Worked by hand: dual coils of 4 Ω, WE32 of the worked examples (arithmetic): all parallel 1 Ω, coils in series and
/// drivers parallel 4 Ω, all in series 16 Ω.
#[test]
fn loads_of_coils_are_those_worked_by_hand() {
    let loads: Vec<f64> = Joined::all(4).map(|it| it.load(Ohms(4.0)).0).collect();
    assert_eq!(loads, [1.0, 4.0, 16.0]);
    let of = |coils: u8, impedance: f64| -> Vec<f64> {
        Joined::all(coils).map(|it| it.load(Ohms(impedance)).0).collect()
    };
    assert_eq!(of(1, 4.0), [4.0]);
    assert_eq!(of(2, 4.0), [2.0, 8.0]);
    assert_eq!(of(2, 2.0), [1.0, 4.0]);
    assert_eq!(of(6, 2.0), [2.0 / 6.0, 2.0 * 2.0 / 3.0, 3.0, 12.0]);
}

fn unit(amplifier: usize, channel: u8, paired: bool, alone: Output, bridged: Option<Output>) -> Unit {
    Unit {
        amplifier,
        section: 0,
        channel,
        paired,
        alone,
        bridged,
    }
}

fn wanted(at: Where, count: u8, coils: u8, impedance: f64) -> Wanted {
    Wanted {
        at,
        way: Way::Whole,
        count,
        coils,
        impedance: Ohms(impedance),
        bears: None,
        bridged: false,
    }
}

/// Common practice: front on the first pair, the subwoofer over the second pair bridged, the rear left to the head unit.
#[test]
fn four_channels_drive_the_front_and_a_bridged_subwoofer() {
    let alone = output(&[(75.0, 4.0), (110.0, 2.0)], 2.0);
    let bridged = output(&[(220.0, 4.0)], 4.0);
    let units = [
        unit(0, 1, true, alone.clone(), Some(bridged.clone())),
        unit(0, 3, true, alone, Some(bridged)),
    ];
    let head = output(&[(20.0, 4.0)], 4.0);
    let all = [
        wanted(Where::Front, 2, 1, 4.0),
        wanted(Where::Rear, 2, 1, 4.0),
        wanted(Where::Bass, 1, 2, 2.0),
    ];
    let best = choose(&units, Some((&head, 4)), &all).expect("there is a way");
    let told: Vec<_> = best
        .uses
        .iter()
        .map(|it| {
            (
                it.plays,
                it.unit,
                it.channel,
                it.bridged,
                it.driven.load.0,
                it.driven.power.0,
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (Where::Front, Some(0), 1, false, 4.0, 75.0),
            (Where::Front, Some(0), 2, false, 4.0, 75.0),
            (Where::Rear, None, 3, false, 4.0, 20.0),
            (Where::Rear, None, 4, false, 4.0, 20.0),
            (Where::Bass, Some(1), 3, true, 4.0, 220.0),
        ]
    );
    // Without outputs of the head unit front and rear share a pair, in parallel: 2 Ω, which it may drive.
    let best = choose(&units, None, &all).expect("there is a way");
    let front = best.uses.first().expect("the front");
    assert_eq!(
        (front.also, front.driven.load),
        (Some((Where::Rear, false)), Ohms(2.0))
    );
    // Where 2 Ω is too low they are joined in series.
    let weak = output(&[(75.0, 4.0)], 4.0);
    let strong = output(&[(150.0, 8.0), (300.0, 4.0)], 4.0);
    let units = [
        unit(0, 1, true, weak.clone(), None),
        unit(1, 1, false, strong, None),
    ];
    let best = choose(&units, None, &all).expect("there is a way");
    let front = best.uses.first().expect("the front");
    assert_eq!(
        (front.also, front.driven.load),
        (Some((Where::Rear, true)), Ohms(8.0))
    );
}

/// Two amplifiers and one subwoofer of two coils: a coil for each (common practice).
#[test]
fn each_coil_gets_its_amplifier_where_there_are_two() {
    let alone = output(&[(600.0, 1.0), (400.0, 2.0)], 1.0);
    let units = [
        unit(0, 1, false, alone.clone(), None),
        unit(1, 1, false, alone.clone(), None),
    ];
    let best = choose(&units, None, &[wanted(Where::Bass, 1, 2, 2.0)]).expect("there is a way");
    let told: Vec<_> = best
        .uses
        .iter()
        .map(|it| (it.unit, it.coil, it.driven.load.0))
        .collect();
    assert_eq!(told, [(Some(0), Some(0), 2.0), (Some(1), Some(1), 2.0)]);
    // No output may drive 0.5 Ω, in whichever way one coil is joined.
    assert_eq!(choose(&units, None, &[wanted(Where::Bass, 1, 1, 0.5)]), None);
}

/// WE35 of the worked examples: 20 V a channel, 100 W into 4 Ω; bridged into 4 Ω each channel sees 2 Ω. Stated so, a pair
/// gives into twice the load what both give alone.
#[test]
fn a_bridged_pair_gives_what_both_channels_give_into_half_its_load() {
    let alone = output(&[(100.0, 4.0), (200.0, 2.0)], 2.0);
    let ideal = (2.0 * 20.0_f64) * (2.0 * 20.0) / 4.0;
    let each = alone.into_load(Ohms(2.0)).expect("it may drive 2 Ω").0;
    assert_eq!(2.0 * each, ideal);
}

/// Worked by hand (arithmetic): 300 W into 4 Ω stand at √(300 · 4) = 34.6 V; a speaker that bears 200 W gets √(200 · 4) = 28.3 V.
#[test]
fn a_gain_is_set_lower_where_every_way_gives_more_than_the_speaker_bears() {
    let alone = output(&[(300.0, 4.0), (500.0, 2.0)], 2.0);
    let drivers = |bears: f64| Drivers {
        coils: 1,
        impedance: Ohms(4.0),
        bears: Some(Watts(bears)),
    };
    assert_eq!(join(&alone, &drivers(200.0)), None);
    let driven = join_turned_down(&alone, &drivers(200.0)).expect("a way");
    assert_eq!((driven.power, driven.could), (Watts(200.0), Watts(300.0)));
    assert!((driven.volts().0 - 28.284).abs() < 1e-3);
    // Speakers that bear it all are not turned down, and what is far too weak is refused.
    assert_eq!(join_turned_down(&alone, &drivers(300.0)), None);
    assert_eq!(join_turned_down(&alone, &drivers(60.0)), None);
    // Two coils of 2 Ω bear 100 W each: in series 4 Ω and 300 W, which is nearer to what they bear than 1 Ω would be.
    let two = Drivers {
        coils: 2,
        impedance: Ohms(2.0),
        bears: Some(Watts(100.0)),
    };
    let driven = join_turned_down(&alone, &two).expect("a way");
    assert_eq!((driven.load, driven.power), (Ohms(4.0), Watts(200.0)));
    // Parallel 2 Ω would give 500 W and is turned down to 300 W: much more than 150 W into 8 Ω in series. 380 W are no such gain
    // over 300 W.
    let wide = output(&[(150.0, 8.0), (300.0, 4.0), (500.0, 2.0)], 2.0);
    let coils = |impedance: f64, bears: f64| Drivers {
        coils: 2,
        impedance: Ohms(impedance),
        bears: Some(Watts(bears)),
    };
    let driven = join_by_gain(&wide, &coils(4.0, 150.0)).expect("a way");
    assert_eq!((driven.load, driven.power), (Ohms(2.0), Watts(300.0)));
    let flat = output(&[(300.0, 8.0), (500.0, 2.0)], 2.0);
    let driven = join_by_gain(&flat, &coils(4.0, 190.0)).expect("a way");
    assert_eq!((driven.load, driven.power), (Ohms(8.0), Watts(300.0)));
    // Where one output need not be turned down, that one drives it.
    let units = [
        unit(0, 1, false, alone, None),
        unit(0, 2, false, output(&[(180.0, 4.0)], 4.0), None),
    ];
    let mut sub = wanted(Where::Bass, 1, 1, 4.0);
    sub.bears = Some(Watts(200.0));
    let best = choose(&units, None, &[sub]).expect("there is a way");
    assert_eq!(
        best.uses.first().map(|it| (it.channel, it.driven.power)),
        Some((2, Watts(180.0)))
    );
}
