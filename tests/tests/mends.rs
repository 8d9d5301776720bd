//! What the tool offers as a mend must not make another fault: on the worked jobs each mend of each finding is made, and
//! what the checks then say is compared with what they said before.

use checks::{Finding, Grade, analyse};
use lessons::WORKED_JOBS;
use model::conductor::Size;
use model::{Change, Fact, RunId, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet};
use words::{Lengths, Reader, Saying, Sizes, Value, Words};

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

/// The same by the tags of before: a new run that ends where an old one did is a piece of it, which a fuse parted.
fn sense_before(finding: &Finding, sheet: &Sheet, before: &Sheet) -> (String, OrderedSet<String>) {
    let (check, things) = sense(finding, sheet);
    let whole = |tag: String| {
        let piece = sheet
            .run_by_tag(&tag)
            .filter(|(id, _)| !before.runs.contains_key(id));
        let ends = piece.into_iter().flat_map(|(_, run)| run.ends());
        let mut terminals = ends.filter_map(|end| end.terminal());
        let parted = terminals.find_map(|at| {
            let lands = |run: &model::Run| run.ends().iter().any(|end| end.terminal() == Some(at));
            let mut old = before.runs.iter().filter(|(_, run)| lands(run));
            // Of several on one terminal it is the one that ends there no more.
            old.find(|(id, _)| sheet.runs.get(id).is_none_or(|run| !lands(run)))
        });
        parted.map_or(tag, |(_, run)| run.tag.clone())
    };
    (check, things.into_iter().map(whole).collect())
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
                for mend in finding.mends.iter().map(|mend| &mend.edit) {
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
                        let said = sense_before(now, after_sheet, sheet);
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
    let mend = &bare.mends.first().expect("a mend").edit;
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
    let names: Vec<&str> = main.mends.iter().map(|mend| mend.edit.name.as_str()).collect();
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
    let mend = &found.mends.first().expect("a mend").edit;
    assert!(
        mend.name.as_str().contains("Take F2 out") || mend.name.as_str().contains("take F2 out"),
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

/// The sizes that a remedy names, as they are said.
fn sizes_named(saying: &Saying, words: &Words, into: &mut Vec<String>) {
    fn of_value(name: &str, value: &Value, words: &Words, into: &mut Vec<String>) {
        match value {
            Value::Saying(saying) => sizes_named(saying, words, into),
            Value::List(all) => all.iter().for_each(|value| of_value(name, value, words, into)),
            Value::Figure(figure) if name == "size" => into.push(words.figure(*figure)),
            Value::Text(text) if name == "size" => into.push(text.clone()),
            _ => {}
        }
    }
    for (name, value) in saying.values() {
        of_value(name, value, words, into);
    }
}

/// The sizes of the wire that a mend lays anew, by run.
fn sizes_laid(mend: &model::Edit, sheet: &Sheet) -> OrderedMap<RunId, Size> {
    let laid = mend.changes.iter().filter_map(|change| match change {
        Change::Run {
            id, to: Some(run), ..
        } => {
            let was = sheet.runs.get(id).map(|run| (run.wire.size, run.wire.material));
            let is_other = was != Some((run.wire.size, run.wire.material));
            Some((*id, run.wire.size.value().filter(|_| is_other)?))
        }
        _ => None,
    });
    laid.collect()
}

/// A size as it is sold: for a reader of gauge numbers a metric one with the nearest of them beside it.
fn as_sold(size: Size, words: &Words) -> String {
    match size {
        Size::Metric(area) => words.figure(words::as_sold(area.0, words::Unit::SquareMillimetre)),
        Size::Awg(number) if number <= 0 => format!("{}/0 AWG", 1 - number),
        Size::Awg(number) => format!("{number} AWG"),
    }
}

/// What a remedy tells to lay is what its mend lays, of the series that the run is made in, whichever series the reader
/// reads; and with it laid the finding is gone.
#[test]
fn a_mend_lays_the_size_that_the_remedy_names_in_the_series_of_the_run() {
    let readers = [Sizes::SquareMillimetres, Sizes::Awg].map(|sizes| {
        Words::of(Reader {
            lengths: Lengths::Metres,
            sizes,
            ..Reader::default()
        })
    });
    let mut by_check: OrderedMap<(&str, bool), usize> = OrderedMap::new();
    for check in checks::CHECKS {
        for gauge in [false, true] {
            let mut job = testkit::job(check.example);
            let mut sheet = job.sheet(SheetKind::Plan).cloned().expect("a sheet");
            if gauge {
                for run in sheet.runs.values_mut() {
                    if let Fact::Given(size) | Fact::Assumed(size) = &mut run.wire.size {
                        *size = size.as_gauge();
                    }
                }
            }
            job.sheets.insert(SheetKind::Plan, sheet.clone());
            for finding in analyse(&sheet, &job.settings).findings {
                for mend in finding.mends.iter().map(|mend| &mend.edit) {
                    let laid = sizes_laid(mend, &sheet);
                    for (id, size) in &laid {
                        let was = sheet.runs.get(id).and_then(|run| run.wire.size.value());
                        assert!(
                            was.is_none_or(|was| matches!(was, Size::Awg(_)) == matches!(size, Size::Awg(_))),
                            "{}: {} for {was:?}",
                            finding.check,
                            mend.name
                        );
                    }
                    let Some(first) = finding.runs.iter().find_map(|run| laid.get(run)) else {
                        continue;
                    };
                    for words in &readers {
                        let mut named = Vec::new();
                        sizes_named(&finding.remedy, words, &mut named);
                        let lays: Vec<String> = laid.values().map(|size| as_sold(*size, words)).collect();
                        let remedy = words.say(&finding.remedy);
                        assert!(
                            named.iter().all(|size| lays.contains(size)),
                            "{remedy} against {lays:?}"
                        );
                        if !named.is_empty() {
                            *by_check.entry((finding.check, gauge)).or_default() += 1;
                            assert!(
                                named.contains(&as_sold(*first, words)),
                                "{remedy} against {lays:?}"
                            );
                        }
                    }
                    let mut mended = job.clone();
                    mended.apply(checks::mend_for(&job, SheetKind::Plan, mend));
                    let after_sheet = mended.sheet(SheetKind::Plan).expect("the sheet is still there");
                    let own = sense(&finding, &sheet);
                    assert!(
                        !analyse(after_sheet, &mended.settings)
                            .findings
                            .iter()
                            .any(|now| now.check == finding.check && sense(now, after_sheet) == own),
                        "`{}` leaves {}",
                        mend.name,
                        readers[0].say(&finding.what)
                    );
                }
            }
        }
    }
    for check in [
        "clad-feed",
        "fuse-outsizes-wire",
        "overloaded-run",
        "return-too-thin",
        "voltage-drop",
    ] {
        for gauge in [false, true] {
            assert!(
                by_check.contains_key(&(check, gauge)),
                "{check} {gauge}: {by_check:?}"
            );
        }
    }
}
