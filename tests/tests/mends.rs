//! What the tool offers as a mend must not make another fault: on the worked jobs each mend of each finding is made, and
//! what the checks then say is compared with what they said before.

use checks::{Finding, Grade, analyse};
use lessons::WORKED_JOBS;
use ordered::OrderedSet;

/// The check of a finding, and the runs it speaks of by their tags, or its parts where it speaks of no run.
fn sense(finding: &Finding, sheet: &model::Sheet) -> (String, OrderedSet<String>) {
    let runs: OrderedSet<String> = finding
        .runs
        .iter()
        .filter_map(|id| Some(sheet.runs.get(id)?.tag.clone()))
        .collect();
    let parts = finding
        .parts
        .iter()
        .filter_map(|id| Some(sheet.parts.get(id)?.tag.clone()));
    let things = if runs.is_empty() { parts.collect() } else { runs };
    (finding.check.to_owned(), things)
}

#[test]
fn no_mend_raises_a_stop_or_fix_of_another_check() {
    let mut made = 0;
    let mut bad = Vec::new();
    for worked in WORKED_JOBS {
        let job = worked.job();
        for (kind, sheet) in &job.sheets {
            let before = analyse(sheet, &job.settings).findings;
            let known: Vec<_> = before.iter().map(|finding| sense(finding, sheet)).collect();
            for finding in &before {
                for mend in &finding.mends {
                    made += 1;
                    let mut mended = job.clone();
                    mended.apply(checks::mend_for(&job, *kind, mend));
                    let after_sheet = mended.sheet(*kind).expect("the sheet is still there");
                    let after = analyse(after_sheet, &mended.settings).findings;
                    let own = sense(finding, sheet);
                    assert!(
                        !after
                            .iter()
                            .any(|now| now.check == finding.check && sense(now, after_sheet) == own),
                        "{}: `{}` leaves what it was offered for: {}",
                        worked.key,
                        mend.name,
                        words::Words::english().say(&finding.what)
                    );
                    for now in after.iter().filter(|now| now.grade != Grade::Tidy) {
                        let said = sense(now, after_sheet);
                        // A fault told of fewer or more things than before is the same fault.
                        let old = known.iter().any(|(check, things)| {
                            *check == said.0 && (said.1.is_empty() || !things.is_disjoint(&said.1))
                        });
                        if !old {
                            bad.push(format!(
                                "{}: `{}` (for {}) raises {}: {}",
                                worked.key,
                                mend.name,
                                finding.check,
                                now.check,
                                words::Words::english().say(&now.what)
                            ));
                        }
                    }
                }
            }
        }
    }
    assert!(made >= 8, "only {made} mends were offered");
    assert!(bad.is_empty(), "{}", bad.join("\n"));
}

/// The van's lights hang on the battery by bare wire that is too thin for them: the mend is a fuse near the battery, large
/// enough for the lights, and wire that bears it.
#[test]
fn the_bare_feed_of_the_van_gets_a_fuse_and_wire_that_bears_it() {
    let job = lessons::WorkedJob::of("van").expect("the van").job();
    let (kind, sheet) = job.sheets.iter().next().expect("a sheet");
    let before = analyse(sheet, &job.settings).findings;
    let bare = before
        .iter()
        .find(|finding| finding.check == "feed-unprotected")
        .expect("a bare feed");
    let mend = bare.mends.first().expect("a mend");
    let mut mended = job.clone();
    mended.apply(checks::mend_for(&job, *kind, mend));
    let sheet = mended.sheet(*kind).expect("the sheet");
    let (_, near) = sheet.run_by_tag("W39").expect("W39");
    // 18 in along the wire: common practice of vehicle audio.
    assert!(
        near.wire.length.value().is_some_and(|length| length.0 <= 0.45),
        "{near:?}"
    );
    let fuse = near
        .to
        .terminal()
        .and_then(|at| sheet.parts.get(&at.part))
        .expect("a part at its end");
    let model::PartKind::Fuse(fuse) = &fuse.is else {
        panic!("no fuse: {fuse:?}")
    };
    // 240 W at 12 V and up to 14.4 V are 17 to 20 A for long; 125 % of that (NFPA 70 210.20, from memory) needs 25 A or more.
    let rating = fuse.rating.value().map_or(0.0, |amps| amps.0);
    assert!((25.0..=40.0).contains(&rating), "{rating} A");
    let after = analyse(sheet, &mended.settings).findings;
    for gone in ["feed-unprotected", "overloaded-run"] {
        assert!(
            !after.iter().any(|finding| finding.check == gone),
            "{gone} is still there"
        );
    }
}

#[test]
fn the_main_fuse_of_the_van_is_mended_by_ratings_and_not_by_wire_that_fits_nowhere() {
    let job = lessons::WorkedJob::of("van").expect("the van").job();
    let sheet = job.sheets.values().next().expect("a sheet");
    let findings = analyse(sheet, &job.settings).findings;
    let main = findings
        .iter()
        .find(|finding| {
            finding.check == "fuse-outsizes-wire" && words::Words::english().say(&finding.what).contains("F1")
        })
        .expect("the main fuse");
    let names: Vec<&str> = main.mends.iter().map(|mend| mend.name.as_str()).collect();
    assert!(
        names.iter().all(|name| !name.starts_with("Lay thicker wire")),
        "{names:?}"
    );
    assert!(!names.is_empty());
}

#[test]
fn a_fuse_in_the_return_is_taken_out_of_it() {
    let job = lessons::WorkedJob::of("van").expect("the van").job();
    let (kind, sheet) = job.sheets.iter().next().expect("a sheet");
    let findings = analyse(sheet, &job.settings).findings;
    let found = findings
        .iter()
        .find(|finding| finding.check == "fuse-in-return")
        .expect("the fuse in the return");
    let mend = found.mends.first().expect("a mend");
    assert!(
        mend.name.contains("Take F2 out") || mend.name.contains("take F2 out"),
        "{}",
        mend.name
    );
    let mut mended = job.clone();
    mended.apply(checks::mend_for(&job, *kind, mend));
    let sheet = mended.sheet(*kind).expect("the sheet");
    assert!(sheet.part_by_tag("F2").is_none());
    // The return is one run now, as long as both were: 0.3 m and 0.15 m.
    let (_, joined) = sheet.run_by_tag("W43").expect("the joined return");
    assert_eq!(
        joined
            .wire
            .length
            .value()
            .map(|length| (length.0 * 100.0).round()),
        Some(45.0)
    );
    let ends: Vec<String> = joined
        .ends()
        .iter()
        .filter_map(|end| Some(sheet.written(end.terminal()?)))
        .collect();
    assert_eq!(ends, ["L2.-", "E4.stud"]);
}
