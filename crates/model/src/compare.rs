//! What became of things between two sheets of a job: Found and Plan, Plan and Built. A thing keeps its id from sheet to
//! sheet, so it is the same thing whatever it is called and wherever it is drawn.

use crate::id::{PartId, RunId};
use crate::job::{Ending, Part, Run, Sheet};
use crate::property::{Property, PropertySet, PropertyType};
use ordered::OrderedMap;
use words::{Saying, say};

/// What became of a thing. Where it stands on the board is not looked at: a drawing may be tidied without the car changing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Became {
    /// It is on both sheets, alike.
    Kept,
    /// It is on both sheets, but differs: what, as `rating: 200A, now 60A`.
    Changed(Vec<Saying>),
    /// It is on the later sheet alone.
    New,
    /// It is on the earlier sheet alone.
    Removed,
}

/// What became of everything between two sheets.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Comparison {
    /// Parts of either sheet.
    pub parts: OrderedMap<PartId, Became>,
    /// Runs of either sheet.
    pub runs: OrderedMap<RunId, Became>,
}

/// How many things became what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Alike on both.
    pub kept: usize,
    /// Changed.
    pub changed: usize,
    /// New.
    pub new: usize,
    /// Removed.
    pub removed: usize,
}

impl Comparison {
    /// Parts and runs counted together.
    #[must_use]
    pub fn tally(&self) -> Tally {
        let mut tally = Tally::default();
        for became in self.parts.values().chain(self.runs.values()) {
            match became {
                Became::Kept => tally.kept += 1,
                Became::Changed(_) => tally.changed += 1,
                Became::New => tally.new += 1,
                Became::Removed => tally.removed += 1,
            }
        }
        tally
    }
}

/// What became of everything between the `earlier` sheet and the `later` one.
#[must_use]
pub fn compare(earlier: &Sheet, later: &Sheet) -> Comparison {
    Comparison {
        parts: became(&earlier.parts, &later.parts, part_changes),
        runs: became(&earlier.runs, &later.runs, |a, b| {
            run_changes(earlier, later, a, b)
        }),
    }
}

fn became<K: Ord + Copy, T>(
    earlier: &OrderedMap<K, T>,
    later: &OrderedMap<K, T>,
    changes: impl Fn(&T, &T) -> Vec<Saying>,
) -> OrderedMap<K, Became> {
    let mut all: OrderedMap<K, Became> = earlier
        .iter()
        .map(|(id, before)| {
            let became = match later.get(id) {
                None => Became::Removed,
                Some(after) => {
                    let changes = changes(before, after);
                    if changes.is_empty() {
                        Became::Kept
                    } else {
                        Became::Changed(changes)
                    }
                }
            };
            (*id, became)
        })
        .collect();
    for id in later.keys().filter(|id| !earlier.contains_key(id)) {
        all.insert(*id, Became::New);
    }
    all
}

/// One change, or nothing where both are alike. Values stand as they are written in every language.
fn change(name: Saying, before: impl Into<Saying>, after: impl Into<Saying>) -> Option<Saying> {
    let (before, after) = (before.into(), after.into());
    let shown = |value: Saying| {
        if value == Saying::from("") {
            say!("list-nothing")
        } else {
            value
        }
    };
    (before != after).then(|| {
        say!(
            "change",
            name = name,
            before = shown(before),
            after = shown(after)
        )
    })
}

fn properties(
    list: &[Property],
    before: &dyn PropertySet,
    after: &dyn PropertySet,
    name: impl Fn(Saying) -> Saying,
) -> Vec<Saying> {
    list.iter()
        .filter_map(|property| {
            change(
                name(property.said()),
                before.get(property.name).unwrap_or_default(),
                after.get(property.name).unwrap_or_default(),
            )
        })
        .collect()
}

fn part_changes(before: &Part, after: &Part) -> Vec<Saying> {
    let mut out: Vec<Saying> = [
        change(say!("change-tag"), before.tag.as_str(), after.tag.as_str()),
        change(say!("change-name"), before.label.as_str(), after.label.as_str()),
        change(
            say!("change-place"),
            before.place.as_deref().unwrap_or_default(),
            after.place.as_deref().unwrap_or_default(),
        ),
        change(
            say!("change-fitted-by"),
            before.fitted_by.print(),
            after.fitted_by.print(),
        ),
    ]
    .into_iter()
    .flatten()
    .collect();
    out.extend(properties(
        crate::mounting::Mounting::list(),
        &before.mounting,
        &after.mounting,
        |name| name,
    ));
    if before.is.word() == after.is.word() {
        out.extend(properties(
            before.is.properties(),
            before.is.set_of(),
            after.is.set_of(),
            |name| name,
        ));
    } else {
        out.extend(change(say!("change-kind"), before.is.said(), after.is.said()));
    }
    out
}

fn run_changes(earlier: &Sheet, later: &Sheet, before: &Run, after: &Run) -> Vec<Saying> {
    let end = |sheet: &Sheet, end: &crate::job::End| {
        end.terminal()
            .map_or(say!("run-loose"), |at| sheet.written(at).into())
    };
    // Ends are compared as places, not as words: a part that was renamed is the same part.
    let moved = |a: &crate::job::End, b: &crate::job::End| a.terminal() != b.terminal();
    let mut out: Vec<Saying> = [
        change(say!("change-tag"), before.tag.as_str(), after.tag.as_str()),
        change(say!("change-name"), before.label.as_str(), after.label.as_str()),
        change(
            say!("change-from"),
            end(earlier, &before.from),
            end(later, &after.from),
        )
        .filter(|_| moved(&before.from, &after.from)),
        change(say!("change-to"), end(earlier, &before.to), end(later, &after.to))
            .filter(|_| moved(&before.to, &after.to)),
        change(
            say!("change-fitted-by"),
            before.fitted_by.print(),
            after.fitted_by.print(),
        ),
        change(
            say!("change-route"),
            before.route.join(" "),
            after.route.join(" "),
        ),
    ]
    .into_iter()
    .flatten()
    .collect();
    out.extend(properties(
        crate::job::Wire::list(),
        &before.wire,
        &after.wire,
        |name| name,
    ));
    out.extend(properties(
        crate::laying::Laying::list(),
        &before.laying,
        &after.laying,
        |name| name,
    ));
    out.extend(properties(
        Ending::list(),
        &before.from_ending,
        &after.from_ending,
        |name| say!("change-first-ending", name = name),
    ));
    out.extend(properties(
        Ending::list(),
        &before.to_ending,
        &after.to_ending,
        |name| say!("change-second-ending", name = name),
    ));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheets(text: &str) -> (Sheet, Sheet) {
        let job = crate::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"));
        let sheet = |kind| job.sheets.get(&kind).cloned().unwrap_or_default();
        (sheet(crate::SheetKind::Found), sheet(crate::SheetKind::Plan))
    }

    #[test]
    fn every_thing_became_something() {
        let (found, plan) = sheets(
            "sheet found\nbattery B1 @0,0\nfuse F1 strip61 200A @100,0\nload L1 @200,0\nrun W1 B1.+ F1.in 16mm2 2m RD\nrun W2 F1.out L1.+ 16mm2 1m RD\n\
             sheet plan\nbattery B1 @50,90\nfuse F1 strip61 60A @100,0\nground E1 bare\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W3 B1.- E1.stud 16mm2 0.3m BK\n",
        );
        let compared = compare(&found, &plan);
        let of = |tag: &str| {
            let id = plan
                .part_by_tag(tag)
                .or_else(|| found.part_by_tag(tag))
                .map(|(id, _)| id);
            id.and_then(|id| compared.parts.get(&id)).cloned()
        };
        assert_eq!(of("B1"), Some(Became::Kept), "only drawn elsewhere");
        assert_eq!(
            of("F1"),
            Some(Became::Changed(vec![
                change(say!("field-rating"), "200A", "60A").expect("a change")
            ]))
        );
        assert_eq!(of("L1"), Some(Became::Removed));
        assert_eq!(of("E1"), Some(Became::New));
        let said = change(say!("field-length"), "2m", "0.3m").map(|said| said.to_string());
        assert_eq!(said.as_deref(), Some("length: 2m, now 0.3m"));
        let runs: Vec<Became> = compared.runs.values().cloned().collect();
        assert_eq!(
            runs,
            [
                Became::Changed(vec![
                    change(say!("field-length"), "2m", "0.3m").expect("a change")
                ]),
                Became::Removed,
                Became::New
            ]
        );
        assert_eq!(
            compared.tally(),
            Tally {
                kept: 1,
                changed: 2,
                new: 2,
                removed: 2
            }
        );
    }

    #[test]
    fn a_sheet_against_itself_is_all_kept_and_reversed_new_is_removed() {
        let (found, plan) = sheets("sheet found\nbattery B1\nsheet plan\nbattery B1\nload L1\n");
        assert!(
            compare(&plan, &plan)
                .parts
                .values()
                .all(|became| *became == Became::Kept)
        );
        assert_eq!(
            compare(&found, &plan).tally().new,
            compare(&plan, &found).tally().removed
        );
    }
}
