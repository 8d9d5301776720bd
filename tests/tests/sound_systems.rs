//! Small systems in order, in varied styles: no check of grade Stop or Fix fires on any of them, and undecided ones
//! count as fired. The systems are common practice of the trade; a false alarm here is a fault of the checks.

use checks::{Grade, analyse};

#[test]
fn no_sound_system_raises_a_stop_or_a_fix() {
    let systems = testkit::sound_systems::sound_systems();
    assert!(systems.len() >= 30, "only {} systems", systems.len());
    let mut alarms = Vec::new();
    for (title, text) in &systems {
        let job = testkit::job(text);
        for (kind, sheet) in &job.sheets {
            let analysis = analyse(sheet, &job.settings);
            assert_eq!(analysis.study.outcome, circuit::Outcome::Solved, "{title}");
            for finding in analysis
                .findings
                .iter()
                .filter(|finding| finding.grade != Grade::Tidy)
            {
                alarms.push(format!(
                    "{title} ({}): {}: {}",
                    kind.word(),
                    finding.check,
                    words::Words::english().say(&finding.what)
                ));
            }
        }
    }
    assert!(
        alarms.is_empty(),
        "{} false alarms:\n{}",
        alarms.len(),
        alarms.join("\n")
    );
}

#[test]
fn every_sound_system_plays_all_its_speakers() {
    for (title, text) in testkit::sound_systems::sound_systems() {
        let job = testkit::job(&text);
        for sheet in job.sheets.values() {
            let study = circuit::study(sheet, &job.settings);
            for (id, driver) in &study.drivers {
                assert!(driver.plays, "{title}: {id}: {:?}", driver.gap);
            }
        }
    }
}
