//! Sizes bring no finding of grade Stop or Fix that is not there now, whatever is wrong with a sheet and whatever is locked on it. The
//! checks judge before and after; what they say is counted here by check, by other means than the crate's own.

use assist::sizing::{Ask, Held, Limit, Series, size};
use checks::{Finding, Grade, analyse};
use model::{PartKind, Settings, Sheet, SheetKind};
use ordered::OrderedMap;
use testkit::faults::spoil;
use testkit::random::{Dice, random_system};

fn grave(sheet: &Sheet, settings: &Settings) -> Vec<Finding> {
    let mut all = analyse(sheet, settings).findings;
    all.retain(|finding| finding.grade != Grade::Tidy);
    all
}

/// How many there are of each check and grade.
fn by_check(findings: &[Finding]) -> OrderedMap<(&'static str, Grade), usize> {
    let mut all = OrderedMap::new();
    for it in findings {
        *all.entry((it.check, it.grade)).or_default() += 1;
    }
    all
}

fn told(findings: &[Finding]) -> String {
    let words = words::Words::english();
    let line = |it: &Finding| format!("  {} {}: {}\n", it.grade.title(), it.check, words.say(&it.what));
    findings.iter().map(line).collect()
}

/// How many findings are gone, and how much stays as it is for those that would come.
fn brings_nothing(sheet: &Sheet, settings: &Settings, ask: &Ask<'_>, what: &str) -> (usize, usize) {
    let sizing = size(sheet, settings, ask);
    let then = sizing.taken(sheet);
    let (before, after) = (grave(sheet, settings), grave(&then, settings));
    let lists = || format!("{what}:\n{}became\n{}", told(&before), told(&after));
    assert!(after.len() <= before.len(), "{}", lists());
    let (was, is) = (by_check(&before), by_check(&after));
    for ((check, grade), number) in &is {
        // A Stop may have become a Fix.
        let of = |grade: Grade| was.get(&(*check, grade)).copied().unwrap_or_default();
        let more = if *grade == Grade::Fix { of(Grade::Stop) } else { 0 };
        assert!(*number <= of(*grade) + more, "{check} rose. {}", lists());
    }
    let stays = |limit: &Limit| usize::from(matches!(limit, Limit::Held(Held::Brings(_))));
    let runs = sizing.runs.iter().map(|line| stays(&line.limit));
    let devices = sizing.devices.iter().map(|line| stays(&line.limit));
    let stays = runs.chain(devices).sum();
    // What is told of the metal is what is then there.
    let changed = sizing
        .edit(sheet, SheetKind::Plan)
        .map_or(0, |edit| edit.changes.len());
    assert_eq!(changed == 0, sizing.changes() == 0, "{what}");
    assert!(
        sizing.bound <= sizing.objective + 1e-9,
        "{what}: {} above {}",
        sizing.bound,
        sizing.objective
    );
    (before.len() - after.len(), stays)
}

#[test]
fn sizes_bring_nothing_to_systems_of_all_kinds() {
    let settings = Settings::default();
    let (mut gone, mut stays) = (0, 0);
    for seed in 0..14 {
        let mut dice = Dice::new(seed);
        let mut sheet = random_system(seed, 14 + 3 * (seed as usize % 8));
        if seed % 2 == 1 {
            spoil(&mut sheet, &mut dice, 6);
        }
        let ask = Ask {
            series: dice.one(&[None, Some(Series::Metric), Some(Series::Gauge)]),
            as_set: dice.chance(0.3),
            ..Ask::default()
        };
        let (less, kept) = brings_nothing(&sheet, &settings, &ask, &format!("seed {seed}"));
        (gone, stays) = (gone + less, stays + kept);
    }
    // Large meshes, where thin wire between two batteries keeps fuses from opening.
    for seed in [4, 53] {
        let sheet = random_system(seed, 60);
        let (less, kept) = brings_nothing(&sheet, &settings, &Ask::default(), &format!("mesh {seed}"));
        (gone, stays) = (gone + less, stays + kept);
    }
    assert!(gone >= 20, "only {gone} findings went");
    assert!(stays >= 5, "only {stays} things had to stay as they are");
}

#[test]
fn sizes_bring_nothing_whatever_is_locked() {
    let settings = Settings::default();
    for seed in 0..10 {
        let mut dice = Dice::new(seed);
        let mut sheet = random_system(seed, 24);
        for run in sheet.runs.values_mut() {
            run.laying.size_locked = dice.chance(0.4);
        }
        for part in sheet.parts.values_mut() {
            match &mut part.is {
                PartKind::Fuse(it) => it.rating_locked = dice.chance(0.4),
                PartKind::Breaker(it) => it.rating_locked = dice.chance(0.4),
                PartKind::Block(it) => it.rating_locked = dice.chance(0.4),
                _ => {}
            }
        }
        brings_nothing(&sheet, &settings, &Ask::default(), &format!("seed {seed}"));
    }
}

#[test]
fn sizes_bring_nothing_to_systems_that_are_in_order() {
    for (name, text) in testkit::sound_systems::sound_systems() {
        let job = testkit::job(&text);
        for sheet in job.sheets.values() {
            brings_nothing(sheet, &job.settings, &Ask::default(), &name);
        }
    }
}
