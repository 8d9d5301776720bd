//! The mends that an installer counts on, each from a sheet that has the fault: it is proposed, its preview says what it clears and
//! brings, what it says is so, and undone the job is what it was to the byte. What is right is common practice of the trade and said
//! by the checks; how each is looked at here is by what stands on the sheet afterwards.

use assist::mending::preview;
use checks::{Finding, Grade, Mend, analyse, mend_for};
use model::{Job, PartKind, Sheet, SheetKind};

const PLAN: SheetKind = SheetKind::Plan;

fn sheet(job: &Job) -> Sheet {
    job.sheet(PLAN).cloned().unwrap_or_default()
}

fn findings(job: &Job) -> Vec<Finding> {
    analyse(&sheet(job), &job.settings).findings
}

/// The mend of this name on the sheet's finding of this check, made. Everything that has to hold of a mend is held here.
fn made(text: &str, check: &str, name: &str) -> (Mend, Job) {
    let job = testkit::job(text);
    let before = findings(&job);
    let finding = before.iter().find(|it| it.check == check);
    let finding = finding.unwrap_or_else(|| panic!("no {check} on the sheet"));
    let mut mends = finding.mends.iter();
    let mend = mends
        .find(|it| it.edit.name.said().key() == name)
        .unwrap_or_else(|| {
            let offered: Vec<String> = finding.mends.iter().map(|it| it.edit.name.to_string()).collect();
            panic!("{check} offers {offered:?}")
        });
    let told = preview(&job, PLAN, &before, &mend.edit);
    assert!(told.clears.contains(finding), "{}", mend.edit.name);
    assert!(
        told.brings.iter().all(|it| it.grade == Grade::Tidy),
        "{} brings {:?}",
        mend.edit.name,
        told.brings
    );
    let mut mended = job.clone();
    let undo = mended.apply(mend_for(&job, PLAN, &mend.edit));
    assert!(
        findings(&mended).iter().all(|it| it.check != check),
        "{check} is left"
    );
    let mut back = mended.clone();
    back.apply(undo);
    assert_eq!(
        model::file::write(&back),
        model::file::write(&job),
        "{} undone",
        mend.edit.name
    );
    (mend.clone(), mended)
}

fn terminals_of(job: &Job, run: &str) -> [String; 2] {
    let sheet = sheet(job);
    let (_, run) = sheet.run_by_tag(run).expect("the run is there");
    run.ends().map(|end| {
        let at = end.terminal().expect("it ends on a terminal");
        format!("{}.{}", sheet.parts[&at.part].tag, at.terminal)
    })
}

#[test]
fn a_fuse_is_put_within_reach_of_the_source() {
    let bare = "battery B1 agm 70Ah cranking=640A\nload L1 power=200W\nrun W1 B1.+ L1.+ 10mm2 2m RD\nrun W2 L1.- B1.- 10mm2 2m BK";
    let (_, job) = made(bare, "feed-unprotected", "mend-put-fuse");
    let [from, to] = terminals_of(&job, "W1");
    assert_eq!((from.as_str(), to.as_str()), ("B1.+", "F1.in"));
    let (_, run) = sheet(&job)
        .run_by_tag("W1")
        .map(|(id, run)| (id, run.clone()))
        .unwrap();
    assert!(run.wire.length.value().unwrap().0 <= 0.45, "within reach");
    // Where one is there and stands too far off, it moves.
    let far = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nload L1 power=200W\nrun W1 B1.+ F1.in 16mm2 2m RD\nrun W2 F1.out L1.+ 16mm2 1m RD\nrun W3 L1.- B1.- 16mm2 2m BK";
    made(far, "fuse-too-far", "mend-device-closer");
}

#[test]
fn a_size_is_changed() {
    let thin = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nload L1 power=100W\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W2 F1.out L1.+ 2.5mm2 2m RD\nrun W3 L1.- B1.- 2.5mm2 2m BK";
    let (_, job) = made(thin, "fuse-outsizes-wire", "mend-lay-size");
    let (_, run) = sheet(&job)
        .run_by_tag("W2")
        .map(|(id, run)| (id, run.clone()))
        .unwrap();
    assert!(run.wire.size.value().unwrap().area().0 > 2.5);
    // Or the fuse's.
    made(thin, "fuse-outsizes-wire", "mend-fit");
}

const AMPLIFIER: &str = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 80A\nground E2\nhead H1 speaker-outputs=0\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W7 B1.- E2.stud 16mm2 0.3m BK\nrun W8 F1.out H1.30 16mm2 0.3m YE\nrun W9 F1.out H1.15 16mm2 0.3m RD\nrun W10 H1.31 E2.stud 6mm2 0.3m BK\nrun W11 H1.rem A1.rem 0.75mm2 2m BU\n";

#[test]
fn a_ground_is_added_and_moved() {
    let without = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nground E1\nload L1 power=100W\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W2 F1.out L1.+ 16mm2 2m RD\nrun W3 B1.- E1.stud 16mm2 0.3m BK";
    let (mend, job) = made(without, "no-return", "mend-add-ground");
    assert!(mend.choice.is_some(), "where it goes is for who sees the body");
    let grounds = sheet(&job)
        .parts
        .values()
        .filter(|it| matches!(it.is, PartKind::Ground(_)))
        .count();
    assert_eq!(grounds, 2);
    // One that is too far off moves close by, one on a hinge to bare metal.
    let far = format!(
        "{AMPLIFIER}amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead\nground E1\nrun W2 F1.out A1.+ 16mm2 2m RD\nrun W3 A1.- E1.stud 16mm2 1.5m BK"
    );
    let (mend, job) = made(&far, "return-too-long", "mend-ground-closer");
    assert!(mend.choice.is_some());
    let (_, run) = sheet(&job)
        .run_by_tag("W3")
        .map(|(id, run)| (id, run.clone()))
        .unwrap();
    assert!(run.wire.length.value().unwrap().0 <= 0.45);
    let hinge = far
        .replace("ground E1", "ground E1 hinge")
        .replace("1.5m", "0.3m");
    made(&hinge, "ground-surface", "mend-move-ground");
}

#[test]
fn coils_are_rewired_to_series_and_to_parallel() {
    let low = "amplifier A1 sections=\"1x 300W@4ohm min 4ohm\"\nspeaker LS1 4ohm power=350W sub bass\nspeaker LS2 4ohm power=350W sub bass\nrun W1 A1.out1+ LS1.+ 4mm2 1.5m WH\nrun W2 A1.out1- LS1.- 4mm2 1.5m WHBK\nrun W3 LS1.+ LS2.+ 4mm2 0.5m WH\nrun W4 LS1.- LS2.- 4mm2 0.5m WHBK";
    let (_, job) = made(low, "load-too-low", "mend-in-series");
    let study = circuit::study(&sheet(&job), &job.settings);
    assert_eq!(study.channels[0].nominal.unwrap().0, 8.0, "4 Ω and 4 Ω in series");
    // One coil of two that is not driven: both in parallel, where the output bears 2 Ω.
    let uneven = "amplifier A1 sections=\"1x 300W@2ohm min 2ohm\"\nspeaker LS1 4ohm coils=2 power=350W sub bass\nspeaker LS2 4ohm power=350W sub bass\nrun W1 A1.out1+ LS1.a+ 4mm2 1.5m WH\nrun W2 A1.out1- LS1.b- 4mm2 1.5m WHBK\nrun W3 LS1.a- LS1.b+ 4mm2 0.1m WH\nrun W5 LS1.a- LS1.b- 4mm2 0.1m WH";
    let job = testkit::job(uneven);
    let offered: Vec<String> = findings(&job)
        .iter()
        .flat_map(|it| &it.mends)
        .map(|it| it.edit.name.said().key().to_owned())
        .collect();
    assert!(offered.iter().any(|it| it == "mend-in-parallel"), "{offered:?}");
}

const SPEAKERS: &str = "amplifier A1 sections=\"2x 60W@4ohm min 4ohm\"\nspeaker LS1 4ohm power=80W front-left\nspeaker LS2 4ohm power=80W front-right\nrun W1 A1.out1+ LS1.+ 2.5mm2 3m WH\nrun W2 A1.out1- LS1.- 2.5mm2 3m WHBK\n";

#[test]
fn a_plug_is_turned() {
    let turned = format!(
        "{SPEAKERS}plug P1 cavities=\"1 GY plus; 2 GYBK minus\"\nrun W3 A1.out2+ P1.1a 2.5mm2 3m GY\nrun W4 A1.out2- P1.2a 2.5mm2 3m GYBK\nrun W5 P1.1b LS2.- 2.5mm2 1m GY\nrun W6 P1.2b LS2.+ 2.5mm2 1m GYBK"
    );
    let (_, job) = made(&turned, "reversed-speaker", "mend-turn-plug");
    assert_eq!(terminals_of(&job, "W5"), ["P1.2b", "LS2.-"]);
    assert_eq!(terminals_of(&job, "W6"), ["P1.1b", "LS2.+"]);
}

#[test]
fn polarity_is_swapped() {
    let swapped =
        format!("{SPEAKERS}run W3 A1.out2+ LS2.- 2.5mm2 3m GY\nrun W4 A1.out2- LS2.+ 2.5mm2 3m GYBK");
    let (_, job) = made(&swapped, "reversed-speaker", "mend-swap-wires");
    assert_eq!(terminals_of(&job, "W3"), ["A1.out2+", "LS2.+"]);
}

#[test]
fn a_turn_on_lead_is_added() {
    let text = format!(
        "{AMPLIFIER}amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead\nrun W2 F1.out A1.+ 16mm2 2m RD\nground E1\nrun W3 A1.- E1.stud 16mm2 0.3m BK"
    );
    let text: String = text
        .lines()
        .filter(|line| !line.starts_with("run W11"))
        .map(|line| format!("{line}\n"))
        .collect();
    let (mend, job) = made(&text, "no-turn-on", "mend-add-run");
    assert!(mend.choice.is_none(), "there is one output only");
    let added = sheet(&job).runs.len() - sheet(&testkit::job(&text)).runs.len();
    assert_eq!(added, 1);
}

#[test]
fn a_shared_feed_is_split() {
    let shared = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nblock D1 outputs=2 fuses=30A,- form=maxi\nload L1 power=100W\nload L2 power=100W\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W2 F1.out D1.in 16mm2 1m RD\nrun W3 D1.out1 L1.+ 6mm2 1m RD\nrun W4 D1.out1 L2.+ 6mm2 1m RD\nrun W5 L1.- B1.- 6mm2 2m BK\nrun W6 L2.- B1.- 6mm2 2m BK";
    let (_, job) = made(shared, "terminal-overfull", "mend-split-feed");
    assert_eq!(terminals_of(&job, "W4"), ["D1.out2", "L2.+"]);
    // The one that moved keeps the fuse that guarded it.
    let sheet = sheet(&job);
    let PartKind::Block(block) = &sheet.part_by_tag("D1").unwrap().1.is else {
        panic!("D1 is a block")
    };
    assert_eq!(block.fuses.0[1].unwrap().0, 30.0);
}

#[test]
fn a_loop_through_is_closed() {
    let open = "amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"\nspeaker LS1 4ohm power=80W\nplug P1 cavities=\"1 GN in; 2 GNBK return in; 3 GN on; 4 GNBK return on\" loops=\"1-3 2-4\" mated=no\nrun W1 A1.out1+ P1.1a 2.5mm2 3m GN\nrun W2 A1.out1- P1.2a 2.5mm2 3m GNBK\nrun W3 P1.3a LS1.+ 2.5mm2 1m GN\nrun W4 P1.4a LS1.- 2.5mm2 1m GNBK";
    let (_, job) = made(open, "silent-speaker", "mend-mate");
    let study = circuit::study(&sheet(&job), &job.settings);
    assert!(study.drivers.values().all(|it| it.plays));
}
