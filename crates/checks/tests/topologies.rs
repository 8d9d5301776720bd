//! Fuse before load, whatever the topology, and one finding for each cause. Each system here has one fault (or names
//! each of several), and the findings are exactly those expected: check and marked tags.
//!
//! Source of what is expected: common practice of the trade; 33 CFR 183.455 for protection at the source.

use checks::{Finding, analyse};
use model::{Sheet, SheetKind};

/// Findings as `check: marked tags`, a question mark behind undecided ones.
fn told(text: &str) -> Vec<String> {
    let job = testkit::job(text);
    let sheet = job.sheet(SheetKind::Plan).cloned().unwrap_or_default();
    analyse(&sheet, &job.settings)
        .findings
        .iter()
        .map(|finding| tell(&sheet, finding))
        .collect()
}

fn tell(sheet: &Sheet, finding: &Finding) -> String {
    let parts = finding.parts.iter().map(|id| sheet.parts[id].tag.clone());
    let runs = finding.runs.iter().map(|id| sheet.runs[id].tag.clone());
    let tags: Vec<String> = parts.chain(runs).collect();
    let mark = if finding.undecided { "?" } else { "" };
    format!("{}{mark}: {}", finding.check, tags.join(" "))
}

/// Two loads and their returns, on the battery.
const LOADS: &str = "
battery B1 agm 70Ah cranking=640A
load L1 power=60W
load L2 power=60W
run R1 L1.- B1.- 16mm2 1m BK
run R2 L2.- B1.- 16mm2 1m BK
";

fn with_loads(rest: &str) -> Vec<String> {
    told(&format!("{LOADS}{rest}"))
}

#[test]
fn one_fuse_near_the_battery_is_right() {
    let found = with_loads(
        "fuse F1 strip61 60A
         bus X1
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out X1.1 16mm2 1m
         run W3 X1.2 L1.+ 16mm2 1m
         run W4 X1.3 L2.+ 16mm2 1m",
    );
    assert_eq!(found, [""; 0]);
}

#[test]
fn no_fuse_at_all_is_one_finding_however_many_runs() {
    let found = with_loads(
        "bus X1
         run W2 B1.+ X1.1 16mm2 1m
         run W3 X1.2 L1.+ 16mm2 1m
         run W4 X1.3 L2.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: W2 W3 W4"]);
}

#[test]
fn a_fuse_after_the_first_load_leaves_the_first_unprotected() {
    let found = with_loads(
        "fuse F1 strip61 60A
         run W1 B1.+ L1.+ 16mm2 1m
         run W2 L1.+ F1.in 16mm2 0.3m
         run W3 F1.out L2.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: W1 W2"]);
}

#[test]
fn a_load_within_reach_of_the_battery_still_wants_a_fuse() {
    let found = with_loads(
        "fuse F1 strip61 60A
         run W1 B1.+ L1.+ 16mm2 0.2m
         run W2 B1.+ F1.in 16mm2 0.2m
         run W3 F1.out L2.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: W1"]);
}

#[test]
fn a_ring_with_one_fuse_is_open_by_the_other_arm() {
    let found = with_loads(
        "fuse F1 strip61 60A
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out L1.+ 16mm2 1m
         run W3 L1.+ L2.+ 16mm2 1m
         run W4 L2.+ B1.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: F1 W4 W3 W2"]);
}

#[test]
fn a_ring_with_a_fuse_in_each_arm_is_right() {
    let found = with_loads(
        "fuse F1 strip61 60A
         fuse F2 strip61 60A
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out L1.+ 16mm2 1m
         run W3 L1.+ L2.+ 16mm2 1m
         run W4 L2.+ F2.out 16mm2 1m
         run W5 F2.in B1.+ 16mm2 0.3m",
    );
    assert_eq!(found, [""; 0]);
}

#[test]
fn a_fuse_that_a_second_wire_goes_around_guards_nothing() {
    let found = with_loads(
        "fuse F1 strip61 60A
         bus X1
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out X1.1 16mm2 1m
         run W3 X1.2 L1.+ 16mm2 1m
         run W4 X1.3 L2.+ 16mm2 1m
         run W5 B1.+ X1.4 16mm2 1.2m",
    );
    assert_eq!(found, ["feed-unprotected: F1 W5 W2 W3 W4"]);
}

#[test]
fn a_bridged_fuse_guards_nothing_even_where_others_follow() {
    let found = with_loads(
        "fuse F1 strip61 60A bridged
         block D1 outputs=2 fuses=30A,30A
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out D1.in 16mm2 1m
         run W3 D1.out1 L1.+ 16mm2 1m
         run W4 D1.out2 L2.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: F1 W2"]);
}

#[test]
fn a_fuse_in_the_return_takes_the_bare_feed_with_it() {
    let found = told(
        "battery B1 agm 70Ah cranking=640A
         load L1 power=60W
         fuse F1 strip61 60A
         run W1 B1.+ L1.+ 16mm2 1m
         run W2 L1.- F1.in 16mm2 0.3m
         run W3 F1.out B1.- 16mm2 1m",
    );
    assert_eq!(found, ["fuse-in-return: F1 W1"]);
}

#[test]
fn a_fuse_in_the_return_of_a_guarded_load_stands_alone() {
    let found = told(
        "battery B1 agm 70Ah cranking=640A
         load L1 power=60W
         fuse F1 strip61 60A
         fuse F2 regular 30A
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out L1.+ 16mm2 1m
         run W3 L1.- F2.in 16mm2 0.3m
         run W4 F2.out B1.- 16mm2 1m",
    );
    assert_eq!(found, ["fuse-in-return: F2"]);
}

#[test]
fn two_batteries_want_a_fuse_at_each_end() {
    let link = |ends: &str| {
        told(&format!(
            "battery B1 agm 70Ah cranking=640A
             battery B2 agm 95Ah cranking=640A charge=80%
             isolator T1 manual closed=yes
             run W9 B1.- B2.- 35mm2 4m BK
             {ends}"
        ))
    };
    let both = "fuse F1 strip61 100A
        fuse F2 strip61 100A
        run W1 B1.+ F1.in 25mm2 0.3m
        run W2 F1.out T1.main 25mm2 1m
        run W3 T1.aux F2.in 25mm2 3m
        run W4 F2.out B2.+ 25mm2 0.3m";
    assert_eq!(link(both), [""; 0]);
    let first_only = "fuse F1 strip61 100A
        run W1 B1.+ F1.in 25mm2 0.3m
        run W2 F1.out T1.main 25mm2 1m
        run W3 T1.aux B2.+ 25mm2 3m";
    assert_eq!(link(first_only), ["second-source: W3 W2"]);
    let second_only = "fuse F2 strip61 100A
        run W2 B1.+ T1.main 25mm2 1m
        run W3 T1.aux F2.in 25mm2 3m
        run W4 F2.out B2.+ 25mm2 0.3m";
    assert_eq!(link(second_only), ["second-source: W2 W3"]);
    let none = "run W2 B1.+ T1.main 25mm2 1m
        run W3 T1.aux B2.+ 25mm2 3m";
    assert_eq!(link(none), ["second-source: W2 W3"]);
    let one_end_far = "fuse F1 strip61 100A
        fuse F2 strip61 100A
        run W1 B1.+ F1.in 25mm2 0.3m
        run W2 F1.out T1.main 25mm2 1m
        run W3 T1.aux F2.in 25mm2 1m
        run W4 F2.out B2.+ 25mm2 2m";
    assert_eq!(link(one_end_far), ["fuse-too-far: F2 W4"]);
}

#[test]
fn a_load_off_the_second_battery_is_told_apart_from_the_link() {
    let found = told(
        "battery B1 agm 70Ah cranking=640A
         battery B2 agm 95Ah cranking=640A
         fuse F1 strip61 100A
         fuse F2 strip61 100A
         load L1 power=60W
         run W1 B1.+ F1.in 25mm2 0.3m
         run W2 F1.out F2.in 25mm2 4m
         run W4 F2.out B2.+ 25mm2 0.3m
         run W5 B2.+ L1.+ 16mm2 1m
         run W6 L1.- B2.- 16mm2 1m BK
         run W9 B1.- B2.- 35mm2 4m BK",
    );
    assert_eq!(found, ["feed-unprotected: W5"]);
}

#[test]
fn each_branch_off_the_pole_is_its_own_cause() {
    let found = with_loads(
        "fuse F1 strip61 60A
         run W1 B1.+ F1.in 16mm2 1m
         run W2 F1.out L1.+ 16mm2 1m
         run W3 B1.+ L2.+ 16mm2 1m",
    );
    assert_eq!(found, ["feed-unprotected: W3", "fuse-too-far: F1 W1"]);
}

#[test]
fn a_missing_ground_is_told_once_for_all_that_hang_on_it() {
    let feed = "battery B1 agm 70Ah cranking=640A
        load L1 power=60W
        load L2 power=60W
        fuse F1 strip61 60A
        bus X1
        bus X2
        ground E1
        ground E2
        run W1 B1.+ F1.in 16mm2 0.3m
        run W2 F1.out X1.1 16mm2 1m
        run W3 X1.2 L1.+ 16mm2 1m
        run W4 X1.3 L2.+ 16mm2 1m
        run R1 L1.- X2.1 16mm2 1m BK
        run R2 L2.- X2.2 16mm2 1m BK
        run R4 B1.- E2.stud 16mm2 0.3m BK
        ";
    assert_eq!(told(&format!("{feed}run R3 X2.3 E1.stud 16mm2 0.3m BK")), [""; 0]);
    assert_eq!(told(feed), ["no-return: L1 L2 R1 R2"]);
    assert_eq!(
        told(&format!("{feed}run R3 X2.3 loose@0,0 16mm2 0.3m BK")),
        ["no-return: L1 L2 R1 R2 R3"]
    );
    assert_eq!(
        told(&format!("{feed}run R3 X2.3 E1.stud 16mm2 0.3m BK cut")),
        ["damaged-run: R3"]
    );
    // The battery itself without a ground: its fault, not that of the loads.
    let without_battery = feed.replace("run R4 B1.- E2.stud 16mm2 0.3m BK", "");
    assert_eq!(
        told(&format!("{without_battery}run R3 X2.3 E1.stud 16mm2 0.3m BK")),
        ["no-return: B1"]
    );
}

#[test]
fn what_a_bad_ground_causes_is_not_told_again() {
    let found = told(
        "battery B1 agm 70Ah cranking=640A
         load L1 power=300W
         fuse F1 strip61 60A
         ground E1 painted
         ground E2
         run W1 B1.+ F1.in 16mm2 0.3m
         run W2 F1.out L1.+ 16mm2 1m
         run W3 L1.- E1.stud 16mm2 0.3m BK
         run W4 B1.- E2.stud 16mm2 0.3m BK",
    );
    assert_eq!(found, ["ground-surface: E1"]);
}

#[test]
fn maker_fitted_wiring_is_judged_only_for_what_hangs_on_it() {
    let factory = "vehicle V1 by=maker
        battery B1 agm 70Ah cranking=640A by=maker
        run W1 B1.+ V1.+ 35mm2 0.9m RD by=maker
        run W2 V1.- B1.- 35mm2 0.4m BK by=maker
        plug P1 cavities=\"1 YE permanent\" by=maker
        run W3 V1.30 P1.1a 0.5mm2 1.5m YE by=maker
        ";
    // A factory wire that is thin for its factory fuse, and long before it, is the maker's business.
    let makers_load = "load L1 power=24W by=maker
        run W4 P1.1b L1.+ 0.5mm2 1m YE by=maker
        run W5 L1.- V1.31 0.5mm2 1m BK by=maker";
    assert_eq!(told(&format!("{factory}{makers_load}")), [""; 0]);
    // Something that was added and overloads it is not.
    let added = "load L1 power=200W
        run W4 P1.1b L1.+ 4mm2 0.3m YE
        run W5 L1.- V1.31 4mm2 1m BK";
    let found = told(&format!("{factory}{added}"));
    assert!(found.contains(&"overloaded-run: W3".to_owned()), "{found:?}");
}

/// A load that is off loses nothing on its way, by whatever law it would draw.
#[test]
fn a_load_behind_an_open_switch_has_no_voltage_drop() {
    for law in [
        "resistance resistance=0.5ohm",
        "power power=250W",
        "current current=20A",
    ] {
        for (closed, found) in [("no", 0), ("yes", 1)] {
            let found_here = told(&format!(
                "battery B1 agm 70Ah cranking=640A
                 fuse F1 regular 40A
                 switch S1 closed={closed} rating=40A
                 load L1 {law}
                 run W1 B1.+ F1.in 6mm2 0.3m
                 run W2 F1.out S1.in 6mm2 5m
                 run W3 S1.out L1.+ 6mm2 0.5m
                 run W4 L1.- B1.- 6mm2 5m BK"
            ));
            let drops = found_here
                .iter()
                .filter(|it| it.starts_with("voltage-drop"))
                .count();
            assert_eq!(drops, found, "{law}, {closed}: {found_here:?}");
        }
    }
}
