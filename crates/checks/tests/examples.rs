//! Every check's own example fires exactly where it is marked, nothing else fires on it, and the job that is put right
//! is clean of everything of grade Stop or Fix. The registry itself is in order.

use checks::{CHECKS, Finding, Grade, analyse, explain, explanation_of};
use model::{Job, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet};

fn sheet(job: &Job) -> Sheet {
    job.sheet(SheetKind::Plan).cloned().unwrap_or_default()
}

/// For each check, the tags it marks.
type Marks = OrderedMap<String, OrderedSet<String>>;

fn expected(text: &str) -> Marks {
    let mut marks = Marks::new();
    for line in text.lines() {
        let Some((before, names)) = line.split_once("#~") else {
            continue;
        };
        let tag = before.split_whitespace().nth(1).unwrap_or_default();
        for name in names.split_whitespace() {
            marks.entry(name.to_owned()).or_default().insert(tag.to_owned());
        }
    }
    marks
}

fn found(sheet: &Sheet, findings: &[Finding]) -> Marks {
    let mut marks = Marks::new();
    for finding in findings {
        let tags = marks.entry(finding.check.to_owned()).or_default();
        tags.extend(finding.parts.iter().map(|id| sheet.parts[id].tag.clone()));
        tags.extend(finding.runs.iter().map(|id| sheet.runs[id].tag.clone()));
    }
    marks
}

fn told(findings: &[Finding]) -> String {
    findings
        .iter()
        .map(|f| {
            format!(
                "  {} {}{}: {}\n",
                f.grade.title(),
                f.check,
                if f.undecided { "?" } else { "" },
                words::Words::english().say(&f.what)
            )
        })
        .collect()
}

#[test]
fn every_example_fires_exactly_where_it_is_marked() {
    let mut wrong = String::new();
    for check in CHECKS {
        let job = testkit::job(check.example);
        let sheet = sheet(&job);
        let findings = analyse(&sheet, &job.settings).findings;
        let (want, got) = (expected(check.example), found(&sheet, &findings));
        if !want.contains_key(check.name) {
            wrong.push_str(&format!("{}: its example has no mark of its own\n", check.name));
        }
        if want != got {
            wrong.push_str(&format!(
                "{}:\n  marked {want:?}\n  found  {got:?}\n{}",
                check.name,
                told(&findings)
            ));
        }
    }
    assert!(wrong.is_empty(), "\n{wrong}");
}

#[test]
fn every_instead_is_clean_of_stop_and_fix() {
    let mut wrong = String::new();
    for check in CHECKS {
        let job = testkit::job(check.instead);
        let findings: Vec<Finding> = analyse(&sheet(&job), &job.settings)
            .findings
            .into_iter()
            .filter(|finding| finding.grade != Grade::Tidy || finding.check == check.name)
            .collect();
        if !findings.is_empty() {
            wrong.push_str(&format!("{}:\n{}", check.name, told(&findings)));
        }
    }
    assert!(wrong.is_empty(), "\n{wrong}");
}

#[test]
fn every_mend_of_an_example_clears_what_it_was_offered_for() {
    let mut wrong = String::new();
    let mut mends = 0;
    for check in CHECKS {
        let job = testkit::job(check.example);
        let sheet_before = sheet(&job);
        let before = analyse(&sheet_before, &job.settings).findings;
        for finding in &before {
            for mend in finding.mends.iter().map(|mend| &mend.edit) {
                mends += 1;
                let mut mended = job.clone();
                let undo = mended.apply(checks::mend_for(&job, SheetKind::Plan, mend));
                let after = analyse(&sheet(&mended), &mended.settings).findings;
                let gone = !after
                    .iter()
                    .any(|f| f.check == finding.check && f.runs == finding.runs && f.parts == finding.parts);
                let nothing_new = after
                    .iter()
                    .all(|f| f.grade == Grade::Tidy || before.iter().any(|b| b.check == f.check));
                if !gone || !nothing_new || after.len() >= before.len() {
                    wrong.push_str(&format!(
                        "{}: after `{}`\n{}",
                        check.name,
                        mend.name,
                        told(&after)
                    ));
                }
                mended.apply(undo);
                assert_eq!(mended, job, "{}: `{}` undone", check.name, mend.name);
            }
        }
    }
    assert!(wrong.is_empty(), "\n{wrong}");
    assert!(mends >= 8, "only {mends} mends were offered");
}

#[test]
fn a_check_that_is_not_to_be_run_is_silent() {
    for check in CHECKS {
        let mut job = testkit::job(check.example);
        job.settings.allowed.insert(check.name.to_owned());
        let findings = analyse(&sheet(&job), &job.settings).findings;
        assert!(
            findings.iter().all(|finding| finding.check != check.name),
            "{}",
            check.name
        );
    }
}

#[test]
fn names_are_unique_and_kebab_case() {
    let names: OrderedSet<&str> = CHECKS.iter().map(|check| check.name).collect();
    assert_eq!(names.len(), CHECKS.len());
    for name in names {
        assert!(
            name.split('-')
                .all(|word| !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase())),
            "{name}"
        );
    }
}

#[test]
fn every_page_has_all_its_headings_and_names_its_source() {
    for check in CHECKS {
        let page = explain(check).markdown(&words::Words::english());
        for heading in [
            "## What it looks for",
            "## Why it matters",
            "## Example",
            "## Instead",
            "## Source",
        ] {
            assert!(page.contains(heading), "{}: {heading}", check.name);
        }
        assert_eq!(
            page.contains("## Care"),
            check.grade == Grade::Stop,
            "{}",
            check.name
        );
        assert!(
            words::Words::english().knows(check.source().key())
                && words::Words::english().knows(check.why().key()),
            "{}",
            check.name
        );
        assert!(
            !page.contains(" safe ") && !page.contains(" safe."),
            "{}: the tool never says that",
            check.name
        );
        assert_eq!(explanation_of(check.name), Some(explain(check)));
    }
    assert_eq!(explanation_of("no-such-check"), None);
}

#[test]
fn every_limit_that_a_check_names_is_in_both_profiles() {
    use model::job::Profile;
    for check in CHECKS {
        for key in check.limits {
            for profile in Profile::ALL {
                assert!(
                    reference::protection::limit(*profile, key).is_some(),
                    "{}: {key}",
                    check.name
                );
            }
        }
    }
}

#[test]
fn analysis_is_the_same_every_time() {
    for check in CHECKS {
        let job = testkit::job(check.example);
        let sheet = sheet(&job);
        assert_eq!(
            analyse(&sheet, &job.settings),
            analyse(&sheet, &job.settings),
            "{}",
            check.name
        );
    }
}
