//! What the customer gets: what was dangerous, what was done, how the system is isolated, what was declined. In plain words.

use super::Told;
use super::page::Page;
use super::picture::{Marked, small};
use crate::articles::joined;
use crate::becomes::{WhatBecomes, what_becomes};
use crate::quote::{money_or_unknown, quote, refusals};
use crate::steps::at_battery;
use crate::work::Becomes;
use checks::{Analysis, Finding, Grade};
use model::picture::PictureOf;
use model::thread::Decision;
use model::{PartId, PartKind, Sheet, SheetKind};
use ordered::OrderedMap;
use words::{Saying, Unit, drawn, say};

/// Findings of one check, numbered as on the drawing.
struct Danger<'a> {
    number: usize,
    check: &'static str,
    findings: Vec<&'a Finding>,
}

/// Findings of grade Stop by what they are about, numbered from 1.
fn dangers(analysis: &Analysis) -> Vec<Danger<'_>> {
    let mut by_check: OrderedMap<&'static str, Vec<&Finding>> = OrderedMap::new();
    for finding in analysis
        .findings
        .iter()
        .filter(|finding| finding.grade == Grade::Stop)
    {
        by_check.entry(finding.check).or_default().push(finding);
    }
    by_check
        .into_iter()
        .enumerate()
        .map(|(at, (check, findings))| Danger {
            number: at + 1,
            check,
            findings,
        })
        .collect()
}

/// Marks of the dangers: one for each thing, with the numbers of all that is wrong with it. A run is marked rather than a part,
/// where a finding is about both: the same fuse is named by several.
fn marks(found: &[Danger<'_>]) -> Vec<Marked> {
    let mut marks: Vec<Marked> = Vec::new();
    for danger in found {
        for finding in &danger.findings {
            let (parts, runs) = if finding.runs.is_empty() {
                (finding.parts.iter().take(1).copied().collect(), Vec::new())
            } else {
                (Vec::new(), finding.runs.iter().take(1).copied().collect())
            };
            match marks
                .iter_mut()
                .find(|mark| mark.parts == parts && mark.runs == runs)
            {
                Some(mark) if mark.numbers.last() == Some(&danger.number) => {}
                Some(mark) => mark.numbers.push(danger.number),
                None => marks.push(Marked {
                    parts,
                    runs,
                    numbers: vec![danger.number],
                }),
            }
        }
    }
    marks
}

/// A thing by its tag and name: `F1 (Main fuse)`.
fn called(sheet: &Sheet, id: PartId) -> Saying {
    match sheet.parts.get(&id) {
        Some(part) => say!("handover-called", tag = &part.tag, name = part.said()),
        None => say!("list-nothing"),
    }
}

pub(super) fn write(page: &mut Page<'_>, told: &Told<'_>) {
    page.title(&told.title());
    page.facts(&told.title_block());
    page.paragraph(&say!("handover-for-customer"));
    page.care(&checks::care());
    let becomes = what_becomes(told.work);
    complaints(page, told);
    let found = told.before.as_ref().map(|(_, _, analysis)| dangers(analysis));
    if let (Some(found), Some((_, sheet, analysis))) = (&found, &told.before) {
        dangerous(page, found, told);
        page.section(&say!("handover-before"), "keep", |page| {
            let marked = marks(found);
            page.drawing(
                &small(sheet, analysis, &marked, told.words),
                &say!("handover-before-shows"),
            );
        });
    }
    // Without a sheet before it, it is no "after".
    let heading = match told.before {
        Some(_) => say!("handover-after"),
        None => say!("handover-as-it-is"),
    };
    page.section(&heading, "keep", |page| {
        let svg = small(&told.after, &told.after_analysis, &[], told.words);
        page.drawing(&svg, &say!("handover-after-shows", sheet = told.work.kind.said()));
    });
    done(page, told, &becomes);
    left(page, told);
    isolate(page, told);
    declined(page, told);
    money(page, told);
    intake(page, told);
    pictures(page, told);
    page.signatures(&[
        say!("handover-sign-date"),
        say!("handover-sign-customer"),
        say!("handover-sign-shop"),
    ]);
}

/// What the customer came with, and what came of it. Only where notes are shown: the words are his.
fn complaints(page: &mut Page<'_>, told: &Told<'_>) {
    if told.job.thread.complaints.is_empty() {
        return;
    }
    let proven = |tag: &String| {
        let mut readings = told.job.sheets.values().flat_map(|sheet| &sheet.readings);
        readings.any(|reading| reading.proves.0.contains(tag))
    };
    let items: Vec<Saying> = told
        .job
        .thread
        .complaints
        .iter()
        .map(|complaint| {
            let answers: Vec<Saying> = told
                .job
                .thread
                .offers
                .iter()
                .filter(|offer| offer.done && offer.answers.0.contains(&complaint.tag))
                .map(|offer| offer.words.as_str().into())
                .collect();
            let state = if proven(&complaint.tag) {
                say!("handover-proven")
            } else if complaint.closed {
                say!("handover-settled")
            } else {
                say!("handover-still-open")
            };
            if answers.is_empty() {
                say!("handover-complaint", words = &complaint.words, state = state)
            } else {
                say!(
                    "handover-complaint-done",
                    words = &complaint.words,
                    done = joined(answers, "paper-semicolon"),
                    state = state
                )
            }
        })
        .collect();
    page.section(&say!("handover-came-with"), "", |page| page.items(false, &items));
}

/// What was dangerous, why, and whether it still is.
fn dangerous(page: &mut Page<'_>, found: &[Danger<'_>], told: &Told<'_>) {
    page.section(&say!("handover-dangerous"), "", |page| {
        if found.is_empty() {
            return page.paragraph(&say!("handover-no-danger"));
        }
        page.paragraph(&say!("handover-dangerous-about"));
        for danger in found {
            page.together(|page| one_danger(page, danger, told));
        }
    });
}

/// One danger: what it is, why, where, and whether it still is there.
fn one_danger(page: &mut Page<'_>, danger: &Danger<'_>, told: &Told<'_>) {
    let title = Saying::new(format!("check-{}-title", danger.check));
    page.heading(&say!("handover-numbered", number = danger.number, title = title));
    if let Some(explained) = checks::explanation_of(danger.check) {
        page.paragraph(&explained.why);
    }
    let mut items: Vec<Saying> = danger
        .findings
        .iter()
        .map(|finding| finding.what.clone())
        .collect();
    let after = &told.after_analysis.findings;
    let still = after.iter().any(|finding| finding.check == danger.check);
    items.push(if still {
        say!("handover-danger-left")
    } else {
        say!("handover-danger-gone")
    });
    page.items(false, &items);
}

/// What was done: the words of the quote, and what became of the parts.
fn done(page: &mut Page<'_>, told: &Told<'_>, becomes: &WhatBecomes) {
    let offers = told.job.thread.offers.iter().filter(|offer| offer.done);
    let items: Vec<Saying> = offers
        .map(|offer| {
            if offer.extra_work {
                say!("handover-done-extra", what = &offer.words, on = &offer.added_on)
            } else {
                offer.words.as_str().into()
            }
        })
        .collect();
    let became: Vec<Saying> = [
        Becomes::Removed,
        Becomes::Replaced,
        Becomes::Moved,
        Becomes::Refitted,
        Becomes::New,
    ]
    .into_iter()
    .filter_map(|kind| became(becomes, kind))
    .collect();
    // A sheet of what was found says nothing of work.
    if items.is_empty() && (became.is_empty() || told.work.kind == SheetKind::Found) {
        return;
    }
    page.section(&say!("handover-done"), "", |page| {
        if !items.is_empty() {
            page.items(false, &items);
        }
        for said in &became {
            page.sentence(said);
        }
    });
}

/// The things that became this, in a sentence: parts by name, runs by how many there are.
fn became(becomes: &WhatBecomes, kind: Becomes) -> Option<Saying> {
    let of_kind = || becomes.lines.iter().filter(|line| line.becomes == kind);
    let parts: Vec<Saying> = of_kind()
        .filter(|line| !line.is_run)
        .map(|line| say!("handover-called", tag = &line.tag, name = &line.what))
        .collect();
    let runs = of_kind().filter(|line| line.is_run).count();
    let what = match (parts.is_empty(), runs) {
        (true, 0) => return None,
        (true, _) => say!("handover-runs", count = runs),
        (false, 0) => joined(parts, "paper-semicolon"),
        (false, _) => say!(
            "handover-parts-and-runs",
            parts = joined(parts, "paper-semicolon"),
            count = runs
        ),
    };
    Some(say!("handover-became", becomes = kind.said(), what = what))
}

/// What is left as it is, in the words of the findings.
fn left(page: &mut Page<'_>, told: &Told<'_>) {
    let items: Vec<Saying> = told
        .after_analysis
        .findings
        .iter()
        .map(|finding| {
            say!(
                "handover-finding",
                grade = finding.grade.said(),
                what = &finding.what
            )
        })
        .collect();
    let heading = match told.work.kind {
        SheetKind::Found => say!("handover-found"),
        SheetKind::Plan | SheetKind::Built => say!("handover-left"),
    };
    page.section(&heading, "", |page| {
        if items.is_empty() {
            page.paragraph(&say!("handover-nothing-left"));
        } else {
            page.items(false, &items);
        }
    });
}

/// How the system is isolated, and which fuse is where.
fn isolate(page: &mut Page<'_>, told: &Told<'_>) {
    let sheet = &told.after;
    let place = |id: &PartId| -> Saying {
        let place = sheet.parts.get(id).and_then(|part| part.place.as_deref());
        place.map_or_else(
            || say!("handover-place-unknown"),
            |name| told.work.place_said(name),
        )
    };
    let mut steps = vec![say!("handover-isolate-off")];
    for (id, part) in &sheet.parts {
        if matches!(part.is, PartKind::Battery(_)) {
            steps.push(say!(
                "handover-isolate-battery",
                battery = called(sheet, *id),
                place = place(id)
            ));
        }
    }
    for (id, part) in &sheet.parts {
        let fuse = match &part.is {
            PartKind::Fuse(fuse) => fuse.rating.value(),
            PartKind::Breaker(breaker) => breaker.rating.value(),
            _ => continue,
        };
        if !sheet.runs_of(*id).any(|(_, run)| at_battery(&sheet.parts, run)) {
            continue;
        }
        steps.push(match fuse {
            Some(rating) => say!(
                "handover-isolate-fuse",
                fuse = called(sheet, *id),
                rating = drawn(rating.0, Unit::Plain("A")),
                place = place(id)
            ),
            None => say!(
                "handover-isolate-fuse-any",
                fuse = called(sheet, *id),
                place = place(id)
            ),
        });
    }
    page.section(&say!("handover-isolate"), "keep", |page| {
        page.items(true, &steps);
        page.paragraph(&say!("handover-fuse-rule"));
    });
}

/// What the customer declined, as a statement to sign.
fn declined(page: &mut Page<'_>, told: &Told<'_>) {
    if let Some(refused) = refusals(&told.job.thread) {
        page.section(&say!("handover-declined"), "keep", |page| {
            page.paragraph(&say!("handover-declined-about"));
            page.items(false, &refused);
            page.signatures(&[say!("handover-sign-date"), say!("handover-sign-customer")]);
        });
    }
}

/// What it cost, where prices are shown.
fn money(page: &mut Page<'_>, told: &Told<'_>) {
    let thread = &told.job.thread;
    if !told.showing.prices || thread.offers.is_empty() {
        return;
    }
    page.section(&say!("handover-money"), "", |page| {
        let mut table = crate::quote::quote_table(thread).without(&["answers", "done"]);
        table.notes.clear();
        page.table(&table);
        let sums = quote(thread);
        let mut facts = Vec::new();
        for (decision, sum) in [
            (Decision::Approved, sums.approved),
            (Decision::Declined, sums.declined),
            (Decision::Open, sums.open),
        ] {
            if thread.offers.iter().any(|offer| offer.decision == decision) {
                facts.push((
                    model::said::choice(decision.title()),
                    told.words.say(&money_or_unknown(sum, &thread.rates)),
                ));
            }
        }
        page.facts(&facts);
    });
}

/// The condition record at intake.
fn intake(page: &mut Page<'_>, told: &Told<'_>) {
    let items: Vec<Saying> = told
        .job
        .thread
        .intake
        .iter()
        .map(|note| {
            let at = if told
                .work
                .plan
                .as_ref()
                .is_some_and(|plan| plan.place(&note.at).is_some())
            {
                told.work.place_said(&note.at)
            } else {
                note.at.as_str().into()
            };
            match (note.at.is_empty(), note.on.is_empty()) {
                (true, true) => note.words.as_str().into(),
                (false, true) => say!("handover-intake-at", words = &note.words, at = at),
                (true, false) => say!("handover-intake-on", words = &note.words, on = &note.on),
                (false, false) => say!("handover-intake", words = &note.words, at = at, on = &note.on),
            }
        })
        .collect();
    if !items.is_empty() {
        page.section(&say!("handover-condition"), "", |page| page.items(false, &items));
    }
}

/// Pictures, where they are shown.
fn pictures(page: &mut Page<'_>, told: &Told<'_>) {
    if told.job.pictures.is_empty() {
        return;
    }
    page.section(&say!("handover-pictures"), "", |page| {
        for picture in told.job.pictures.values() {
            let facts = &picture.facts;
            // What a line of the condition record says tells more than its tag.
            let note = told
                .job
                .thread
                .intake
                .iter()
                .find(|it| !it.tag.is_empty() && picture.is_of(PictureOf::Intake, &it.tag));
            let of = note.map_or(&facts.of, |note| &note.words);
            let caption = match (facts.of.is_empty(), facts.on.is_empty()) {
                (true, true) => facts.words.as_str().into(),
                (false, true) => say!("handover-picture", of = of, words = &facts.words),
                (true, false) => say!("handover-picture-on", words = &facts.words, on = &facts.on),
                (false, false) => say!(
                    "handover-picture-of-on",
                    of = of,
                    words = &facts.words,
                    on = &facts.on
                ),
            };
            page.picture(picture, &caption);
        }
    });
}
