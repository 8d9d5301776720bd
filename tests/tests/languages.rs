//! Every finding that the checks make of their examples, of the worked jobs, of sound systems with facts taken away and of
//! random systems says something in German of its own: no name of a value is left in it, and nothing falls back to
//! English. The same of the page of every check.

use checks::{CHECKS, Finding, analyse, explain};
use lessons::WORKED_JOBS;
use model::property::PropertySet;
use model::{Settings, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet};
use words::{Language, Reader, Saying, Value, Words};

fn german() -> Words {
    Words::of(Reader {
        language: Language::German,
        ..Reader::default()
    })
}

/// A saying and all sayings within it.
fn all<'s>(saying: &'s Saying, into: &mut Vec<&'s Saying>) {
    fn of_value<'s>(value: &'s Value, into: &mut Vec<&'s Saying>) {
        match value {
            Value::Saying(saying) => all(saying, into),
            Value::List(list) => list.iter().for_each(|value| of_value(value, into)),
            Value::Joined(sayings, _) => sayings.iter().for_each(|saying| all(saying, into)),
            _ => {}
        }
    }
    into.push(saying);
    for (_, value) in saying.values() {
        of_value(value, into);
    }
}

/// What is amiss with a saying in German.
fn amiss(saying: &Saying) -> Option<String> {
    let (german, english) = (german(), Words::english());
    let mut within = Vec::new();
    all(saying, &mut within);
    let unknown: Vec<&str> = within
        .iter()
        .map(|saying| saying.key())
        .filter(|key| !english.knows(key))
        .collect();
    let (said, same) = (german.say(saying), english.say(saying));
    let bad = !unknown.is_empty() || said.contains('$') || said.contains("  ") || said == same;
    bad.then(|| format!("{}: {said} {unknown:?}", saying.key()))
}

fn look(
    sheet: &Sheet,
    settings: &Settings,
    seen: &mut OrderedMap<&'static str, usize>,
    wrong: &mut OrderedSet<String>,
) {
    for finding in analyse(sheet, settings).findings {
        let Finding {
            check,
            what,
            remedy,
            assumed,
            mends,
            ..
        } = &finding;
        *seen.entry(*check).or_default() += 1;
        wrong.extend([what, remedy].into_iter().chain(assumed).filter_map(amiss));
        wrong.extend(mends.iter().filter_map(|mend| amiss(&mend.edit.name.said())));
        let choices = mends.iter().filter_map(|mend| mend.choice.as_ref());
        wrong.extend(choices.filter_map(amiss));
    }
}

#[test]
fn every_finding_says_something_in_german() {
    let (mut seen, mut wrong) = (OrderedMap::new(), OrderedSet::new());
    for check in CHECKS {
        for text in [check.example, check.instead] {
            let job = testkit::job(text);
            let sheet = job.sheet(SheetKind::Plan).cloned().unwrap_or_default();
            look(&sheet, &job.settings, &mut seen, &mut wrong);
            // Each fact taken away by itself: what is then undecided.
            for (id, part) in &sheet.parts {
                for property in part.is.properties().iter().filter(|it| it.may_be_assumed) {
                    let mut without = sheet.clone();
                    let part = without.parts.get_mut(id).expect("a part of the sheet");
                    if part.is.set(property.name, "?").is_ok() {
                        look(&without, &job.settings, &mut seen, &mut wrong);
                    }
                }
            }
            for id in sheet.runs.keys() {
                for property in ["size", "length", "insulation", "condition"] {
                    let mut without = sheet.clone();
                    let run = without.runs.get_mut(id).expect("a run of the sheet");
                    if run.wire.set(property, "?").is_ok() {
                        look(&without, &job.settings, &mut seen, &mut wrong);
                    }
                }
            }
        }
    }
    for worked in WORKED_JOBS {
        let job = worked.job();
        for sheet in job.sheets.values() {
            look(sheet, &job.settings, &mut seen, &mut wrong);
        }
    }
    for seed in 0..40 {
        let sheet = testkit::random::random_system(seed, 30);
        look(&sheet, &Settings::default(), &mut seen, &mut wrong);
    }
    let silent: Vec<&str> = CHECKS
        .iter()
        .map(|check| check.name)
        .filter(|name| !seen.contains_key(name))
        .collect();
    assert!(silent.is_empty(), "never seen to fire: {silent:?}");
    let wrong: Vec<String> = wrong.into_iter().collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_page_of_a_check_is_german() {
    let german = german();
    for check in CHECKS {
        let it = explain(check);
        let mut texts = vec![check.title(), it.holds_when, it.looks_for, it.why, it.source];
        texts.extend(it.care);
        for limit in it.limits {
            texts.push(limit.what);
            texts.extend(
                limit
                    .sources
                    .into_iter()
                    .map(|(_, source)| source)
                    .filter(|it| it.key() != "source-as-stated"),
            );
        }
        for text in &texts {
            assert_eq!(amiss(text), None, "{}", check.name);
        }
        let page = explain(check).markdown(&german);
        for heading in [
            "## Wonach sie sucht",
            "## Warum das wichtig ist",
            "## Beispiel",
            "## Stattdessen",
            "## Quelle",
        ] {
            assert!(page.contains(heading), "{}: {heading}", check.name);
        }
        // The program never says that anything is safe.
        assert!(
            !page.contains(" sicher ") && !page.contains("ungefährlich"),
            "{page}"
        );
    }
}
