//! The worked jobs: two in order, and one that several hands have altered, of which every fault and nothing else must
//! be found. What counts as a fault is common practice of the trade; each check names its own source.

use checks::{Finding, Grade, analyse};
use lessons::WorkedJob;
use model::{Job, Sheet, SheetKind};
use ordered::OrderedSet;

fn worked(key: &str) -> Job {
    WorkedJob::of(key).expect("a worked job of that name").job()
}

/// A finding as `check: tags of what it marks, parts first`.
fn line(sheet: &Sheet, finding: &Finding) -> String {
    let parts = finding
        .parts
        .iter()
        .filter_map(|id| sheet.parts.get(id))
        .map(|part| part.tag.as_str());
    let runs = finding
        .runs
        .iter()
        .filter_map(|id| sheet.runs.get(id))
        .map(|run| run.tag.as_str());
    let tags: Vec<&str> = parts.chain(runs).collect();
    format!("{} {}: {}", finding.grade.title(), finding.check, tags.join(" "))
}

#[test]
fn estate_and_camper_are_in_order() {
    for key in ["estate", "camper"] {
        let job = worked(key);
        for sheet in job.sheets.values() {
            let analysis = analyse(sheet, &job.settings);
            let all: Vec<String> = analysis
                .findings
                .iter()
                .map(|finding| line(sheet, finding))
                .collect();
            assert!(all.is_empty(), "{key}: {all:#?}");
            assert_eq!(analysis.study.outcome, circuit::Outcome::Solved, "{key}");
        }
    }
}

#[test]
fn the_van_has_these_faults_and_no_others() {
    let job = worked("van");
    let sheet = job.sheet(SheetKind::Found).expect("the van was surveyed");
    let analysis = analyse(sheet, &job.settings);
    let found: OrderedSet<String> = analysis
        .findings
        .iter()
        .map(|finding| line(sheet, finding))
        .collect();
    let expected: OrderedSet<String> = [
        // The main feed: fuse out of reach, too large for the cable, and the cable not what its jacket says.
        "Stop fuse-too-far: F1 W11",
        "Stop fuse-outsizes-wire: F1 W42 W12",
        "Fix clad-feed: W12",
        // Grounds.
        "Fix ground-surface: E1",
        "Fix return-too-long: A1 W14",
        "Fix return-too-thin: W16",
        "Stop ground-forbidden: E5",
        // Speakers.
        "Fix load-too-low: A1 LS1",
        "Fix load-too-low: H1 LS5 LS6",
        "Fix reversed-speaker: LS2 W21 W22",
        "Fix silent-speaker: LS4 P2",
        // Signal and turn-on.
        "Fix crossed-signal: A2 W33 W34",
        "Fix always-on: A1 W37",
        "Stop fuse-outsizes-wire: D1 W37",
        // Lights from the battery, without a fuse and on thin wire.
        "Stop feed-unprotected: W39 W40",
        "Stop overloaded-run: W39",
        // The beacon: fuse in the return, feed twisted by hand.
        "Stop fuse-in-return: F2",
        "Stop poor-ending: W42",
        // What was left lying about, and what was put where a wire was already.
        "Stop loose-end: W45",
        "Fix terminal-overfull: D1 W15 W45",
        "Fix terminal-overfull: D1 W37 W46",
    ]
    .into_iter()
    .map(str::to_owned)
    .collect();
    let missed: Vec<&String> = expected.difference(&found).collect();
    let besides: Vec<&String> = found.difference(&expected).collect();
    assert!(
        missed.is_empty() && besides.is_empty(),
        "missed: {missed:#?}\nbesides: {besides:#?}"
    );
    assert_eq!(found.len(), analysis.findings.len(), "two findings read alike");
    let checks: OrderedSet<&str> = analysis.findings.iter().map(|finding| finding.check).collect();
    assert!(checks.len() >= 15, "only {} different checks", checks.len());
    assert!(
        analysis
            .findings
            .iter()
            .any(|finding| finding.grade == Grade::Stop)
    );
}

#[test]
fn every_finding_says_what_and_what_to_do_and_every_stop_has_its_page_with_cautions() {
    let job = worked("van");
    let sheet = job.sheet(SheetKind::Found).expect("the van was surveyed");
    for finding in analyse(sheet, &job.settings).findings {
        assert!(
            words::Words::english().say(&finding.what).len() > 20
                && words::Words::english().say(&finding.remedy).len() > 10,
            "{finding:?}"
        );
        assert!(
            !finding.parts.is_empty() || !finding.runs.is_empty(),
            "{finding:?}"
        );
        let page = checks::explanation_of(finding.check)
            .expect("every check is explained")
            .markdown(&words::Words::english());
        if finding.grade == Grade::Stop
            && checks::check_named(finding.check).is_some_and(|c| c.grade == Grade::Stop)
        {
            assert!(page.contains("Isolate the battery"), "{}", finding.check);
        }
    }
}
