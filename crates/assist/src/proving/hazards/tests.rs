//! What is told at once, against the checks on the sheet with the fault in it.

use super::*;
use crate::finding::suspects::suspects;
use checks::analyse;
use model::Fact;

fn systems() -> Vec<(String, Sheet, Settings)> {
    let some = [
        "four channels, class D",
        "second battery, sensing relay",
        "work lights by a relay",
    ];
    let mut all: Vec<(String, Sheet, Settings)> = testkit::sound_systems::sound_systems()
        .into_iter()
        .filter(|(name, _)| some.contains(&name.as_str()))
        .filter_map(|(name, text)| {
            let mut job = testkit::job(&text);
            let (_, sheet) = job.sheets.pop_first()?;
            Some((name, sheet, job.settings))
        })
        .collect();
    assert_eq!(all.len(), some.len());
    let random = testkit::random::random_system(7, 20);
    all.push(("random".to_owned(), random, Settings::default()));
    all
}

fn all_of(sheet: &Sheet, settings: &Settings) -> Vec<Hazard> {
    let proof = crate::proving::prove(sheet, settings);
    proof.expect("something is fed").hazards
}

fn found(sheet: &Sheet, settings: &Settings, check: &[&str]) -> Vec<(&'static str, Vec<PartId>, Vec<RunId>)> {
    let findings = analyse(sheet, settings).findings.into_iter();
    let counts = findings.filter(|it| it.grade == Grade::Stop && !it.undecided && check.contains(&it.check));
    counts.map(|it| (it.check, it.parts, it.runs)).collect()
}

#[test]
fn the_checks_say_stop_of_every_one_of_them() {
    for (name, sheet, settings) in systems() {
        let hazards = all_of(&sheet, &settings);
        assert!(hazards.len() > 20, "{name}: {}", hazards.len());
        for hazard in hazards {
            let (other, checks): (Sheet, &[&str]) = match &hazard.fault {
                Fault::Broken(broken) => (broken.thrown(&sheet).expect("it can be put in"), &COUNTS),
                Fault::Thinner { run, size, .. } => {
                    let mut other = sheet.clone();
                    let wire = &mut other.runs.get_mut(run).expect("a run").wire;
                    wire.size = Fact::Given(*size);
                    wire.stated_resistance = Fact::Unknown;
                    (other, &["fuse-outsizes-wire", "overloaded-run"])
                }
                Fault::Larger { device, rating } => {
                    let mut other = sheet.clone();
                    let part = other.parts.get_mut(&device.part).expect("a part");
                    let done = match (rating, &mut part.is) {
                        (Some(rating), PartKind::Fuse(fuse)) => {
                            fuse.rating = Fact::Given(*rating);
                            true
                        }
                        (Some(rating), PartKind::Breaker(breaker)) => {
                            breaker.rating = Fact::Given(*rating);
                            true
                        }
                        _ => false,
                    };
                    if !done {
                        continue;
                    }
                    (other, &["fuse-outsizes-wire", "overloaded-run"])
                }
            };
            let before = found(&sheet, &settings, checks);
            let after = found(&other, &settings, checks);
            assert!(
                after.iter().any(|it| !before.contains(it)),
                "{name}: {hazard:?} is not of grade Stop by {checks:?}"
            );
        }
    }
}

#[test]
fn whatever_else_breaks_is_not_of_grade_stop() {
    for (name, sheet, settings) in systems() {
        let hazards = all_of(&sheet, &settings);
        let is_known = |broken: &Break| {
            hazards.iter().any(|hazard| match &hazard.fault {
                Fault::Broken(known) => known.is_same_thing(broken),
                _ => false,
            })
        };
        let before = found(&sheet, &settings, &COUNTS);
        for weighed in suspects(&sheet) {
            let Ok(thrown) = weighed.broken.thrown(&sheet) else {
                continue;
            };
            let after = found(&thrown, &settings, &COUNTS);
            let touch = matches!(weighed.broken, Break::Grounded { .. } | Break::Joined { .. });
            let counts = |runs: &[RunId]| !touch || runs.iter().any(|run| sheet.runs.contains_key(run));
            let grave = after.iter().find(|it| counts(&it.2) && !before.contains(it));
            assert!(
                grave.is_none() || is_known(&weighed.broken),
                "{name}: {} makes {grave:?}",
                weighed.broken.written(&sheet)
            );
        }
    }
}
