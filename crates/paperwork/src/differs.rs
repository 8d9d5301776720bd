//! What differs about a thing between two sheets, as one tells it: values in the reader's words and units, and only what
//! matters to who reads a list. The comparison of the model has all of it, in written forms.

use crate::articles::value_said;
use crate::table::size_value;
use crate::work::{Work, endings};
use model::property::PropertySet;
use model::{Part, PartId, Run, RunId, Sheet};
use words::{Saying, Value, say};

/// Properties that follow from others, or say how something is to be done rather than what it is.
const NOT_TOLD: &[&str] = &[
    "slack",
    "way-locked",
    "size-locked",
    "rating-locked",
    "support-spacing",
    "guards",
    "bundle",
    "surroundings",
    "insulation",
    "fixing-holes",
    "screws",
    "square",
    "looked-behind",
    "loose-metal",
    "strands",
    "strand-diameter",
    "tested-drop",
    "tested-current",
    "contact",
    "body",
];

fn change(name: Saying, before: impl Into<Value>, after: impl Into<Value>) -> Saying {
    Saying::new("change")
        .with("name", name)
        .with("before", before.into())
        .with("after", after.into())
}

/// Changes of a set of properties. What was not known before, and a guess that came true, was found out and is no change.
fn of_set(before: &dyn PropertySet, after: &dyn PropertySet, out: &mut Vec<Saying>) {
    for property in after.properties() {
        if NOT_TOLD.contains(&property.name) {
            continue;
        }
        let bare = |set: &dyn PropertySet| {
            let written = set.get(property.name).filter(|written| written != "?")?;
            let plain = written.trim_start_matches('~');
            let plain = plain
                .strip_prefix('(')
                .and_then(|it| it.strip_suffix(')'))
                .unwrap_or(plain);
            Some(plain.to_owned())
        };
        if let (Some(was), Some(is)) = (bare(before), bare(after))
            && was != is
        {
            out.push(change(
                property.said(),
                shown(value_said(property, &was)),
                shown(value_said(property, &is)),
            ));
        }
    }
}

fn shown(value: Value) -> Value {
    match value {
        Value::Text(text) if text.is_empty() => say!("list-nothing").into(),
        value => value,
    }
}

/// What differs about a part that is on both sheets.
#[must_use]
pub(crate) fn part_differs(work: &Work<'_>, id: PartId) -> Vec<Saying> {
    let (Some(before), Some(after)) = (work.part_before(id), work.sheet.parts.get(&id)) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    renamed(&before.tag, &after.tag, &mut out);
    if before.place != after.place {
        let place = |part: &Part| match &part.place {
            Some(name) => work.place_said(name),
            None => say!("list-nothing"),
        };
        out.push(change(say!("change-place"), place(before), place(after)));
    }
    if before.is.word() == after.is.word() {
        of_set(before.is.set_of(), after.is.set_of(), &mut out);
    } else {
        out.push(change(say!("change-kind"), before.is.said(), after.is.said()));
    }
    of_set(&before.mounting, &after.mounting, &mut out);
    out
}

/// What differs about a run that is on both sheets.
#[must_use]
pub(crate) fn run_differs(work: &Work<'_>, id: RunId) -> Vec<Saying> {
    let (Some(before), Some(after), Some((_, sheet))) =
        (work.run_before(id), work.sheet.runs.get(&id), &work.before)
    else {
        return Vec::new();
    };
    let mut out = Vec::new();
    renamed(&before.tag, &after.tag, &mut out);
    let at = |sheet: &Sheet, run: &Run, end: usize| -> Saying {
        match run.ends()[end.min(1)].terminal() {
            Some(at) => sheet.written(at).into(),
            None => say!("paper-loose"),
        }
    };
    for (end, name) in [say!("change-from"), say!("change-to")].into_iter().enumerate() {
        if before.ends()[end].terminal() != after.ends()[end].terminal() {
            out.push(change(name, at(sheet, before, end), at(&work.sheet, after, end)));
        }
    }
    if let (Some(was), Some(is)) = (before.wire.size.value(), after.wire.size.value())
        && was != is
    {
        out.push(change(
            model::said::name_of("size"),
            size_value(was),
            size_value(is),
        ));
    }
    let mut wire = Vec::new();
    of_set(&before.wire, &after.wire, &mut wire);
    let size = model::said::name_of("size");
    out.extend(wire.into_iter().filter(|it| {
        // Sizes have their own words, see above.
        it.values().first().map(|(_, value)| value) != Some(&Value::from(&size))
    }));
    if before.route != after.route && !after.route.is_empty() {
        out.push(say!("paper-another-way"));
    }
    for end in 0..2 {
        let method = |run: &Run| endings(run)[end].method.value();
        if let (Some(was), Some(is)) = (method(before), method(after))
            && was != is
        {
            let name = say!("paper-ending-at", at = at(&work.sheet, after, end));
            out.push(change(
                name,
                crate::cut::ending_said(was),
                crate::cut::ending_said(is),
            ));
        }
    }
    of_set(&before.laying, &after.laying, &mut out);
    out
}

fn renamed(before: &str, after: &str, out: &mut Vec<Saying>) {
    if before != after {
        out.push(change(say!("change-tag"), before, after));
    }
}
