//! Writes a job in its text form: what differs from the defaults, and nothing else.

use super::lex::{quote, quote_if_needed};
use super::{Numberings, law_of, place_bare};
use crate::body::{BodyShape, OwnPassage, OwnPlace};
use crate::conductor::FittedBy;
use crate::handling::Handling;
use crate::job::{
    BoardPoint, Conditions, End, Extra, Job, Part, Run, Sheet, SheetKind, Turn, VehicleInfo, Wire,
};
use crate::kinds::PartKind;
use crate::laying::Laying;
use crate::mounting::Mounting;
use crate::property::{Property, PropertySet, Shape};
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates};
use crate::tuning::Tuning;
use ordered::OrderedSet;
use std::fmt::Write;

/// The text form of a job. See the module for what it cannot show.
#[must_use]
pub fn print(job: &Job) -> String {
    let mut out = String::new();
    let plain = Job::default();
    if !job.title.is_empty() {
        let _ = writeln!(out, "job {}", quote(&job.title));
    }
    let words = changed(
        VehicleInfo::list(),
        |p| plain.vehicle.get(p),
        |p| job.vehicle.get(p),
        &[],
    );
    if !words.is_empty() {
        let _ = writeln!(out, "vehicle-info{words}");
    }
    let words = changed(
        Conditions::list(),
        |p| plain.settings.conditions.get(p),
        |p| job.settings.conditions.get(p),
        &[],
    );
    if !words.is_empty() {
        let _ = writeln!(out, "conditions{words}");
    }
    for (key, number) in &job.settings.limits {
        let _ = writeln!(out, "limit {} {number}", quote_if_needed(key));
    }
    for name in &job.settings.allowed {
        let _ = writeln!(out, "allow {}", quote_if_needed(name));
    }
    let body = &job.settings.body;
    let plain = BodyShape::default();
    let words = changed(BodyShape::list(), |p| plain.get(p), |p| body.shape.get(p), &[]);
    if !words.is_empty() {
        let _ = writeln!(out, "body{words}");
    }
    let plain = OwnPlace::default();
    for (name, place) in &body.places {
        let words = changed(OwnPlace::list(), |p| plain.get(p), |p| place.get(p), &[]);
        let _ = writeln!(out, "place {}{words}", quote_if_needed(name));
    }
    let plain = OwnPassage::default();
    for (name, passage) in &body.passages {
        let words = changed(OwnPassage::list(), |p| plain.get(p), |p| passage.get(p), &[]);
        let _ = writeln!(out, "passage {}{words}", quote_if_needed(name));
    }
    thread(&mut out, &job.thread);
    let mut numbers = Numberings::default();
    for (kind, sheet) in &job.sheets {
        let alone = job.sheets.len() == 1 && *kind == SheetKind::Plan;
        let nothing = sheet.parts.is_empty()
            && sheet.runs.is_empty()
            && sheet.readings.is_empty()
            && sheet.tunings.is_empty();
        if !alone || nothing {
            let _ = writeln!(
                out,
                "{}sheet {}",
                if out.is_empty() { "" } else { "\n" },
                kind.word()
            );
        }
        let mut seen = OrderedSet::new();
        for (id, part) in &sheet.parts {
            let mut line = print_part(part);
            if numbers.implied_part(&part.tag, |id| seen.contains(&id)) != *id {
                let _ = write!(line, " id={id}");
            }
            numbers.parts.note(&part.tag, id.0);
            seen.insert(*id);
            let _ = writeln!(out, "{line}");
        }
        let mut seen = OrderedSet::new();
        for (id, run) in &sheet.runs {
            let mut line = print_run(sheet, run);
            if numbers.implied_run(&run.tag, |id| seen.contains(&id)) != *id {
                let _ = write!(line, " id={id}");
            }
            numbers.runs.note(&run.tag, id.0);
            seen.insert(*id);
            let _ = writeln!(out, "{line}");
        }
        let plain = Reading::default();
        for reading in &sheet.readings {
            let words = changed(
                Reading::list(),
                |p| plain.get(p),
                |p| reading.get(p),
                &["measured", "at"],
            );
            let _ = writeln!(out, "reading{words}");
        }
        for tuning in &sheet.tunings {
            let _ = writeln!(out, "tuning{}", told(tuning, &Tuning::default()));
        }
    }
    out
}

fn thread(out: &mut String, thread: &crate::thread::Thread) {
    for complaint in &thread.complaints {
        let _ = writeln!(out, "complaint{}", told(complaint, &Complaint::default()));
    }
    for note in &thread.intake {
        let _ = writeln!(out, "intake{}", told(note, &IntakeNote::default()));
    }
    for offer in &thread.offers {
        let _ = writeln!(out, "offer{}", told(offer, &Offer::default()));
    }
    let words = told(&thread.rates, &Rates::default());
    if !words.is_empty() {
        let _ = writeln!(out, "rates{words}");
    }
    for step in &thread.done {
        let _ = writeln!(out, "done {}", quote_if_needed(step));
    }
}

/// What a line says beyond its defaults: its tag and its words stand first, without their names.
fn told(line: &dyn PropertySet, plain: &dyn PropertySet) -> String {
    let mut out = String::new();
    let shown = |name: &str| matches!(name, "tag" | "what");
    // Before words in quotation marks, no tag need be told.
    let words = line.get("what").filter(|words| !words.is_empty());
    if let Some(tag) = line.get("tag").filter(|tag| words.is_none() || !tag.is_empty()) {
        // A word that begins the line would be read as the tag, so one that is none has its name.
        if crate::limits::check_tag(&tag).is_ok() && quote_if_needed(&tag) == tag {
            let _ = write!(out, " {tag}");
        } else {
            let _ = write!(out, " tag={}", quote(&tag));
        }
    }
    if let Some(words) = words {
        let _ = write!(out, " {}", quote(&words));
    }
    let default = |name: &str| {
        if shown(name) {
            line.get(name)
        } else {
            plain.get(name)
        }
    };
    out.push_str(&changed(line.properties(), default, |name| line.get(name), &[]));
    out
}

/// One part as its line, without the id.
#[must_use]
pub fn print_part(part: &Part) -> String {
    let mut line = format!("{} {}", part.is.word(), quote_if_needed(&part.tag));
    label(&mut line, &part.label);
    if let Some(default) = PartKind::from_word(part.is.word()) {
        // A value alone would tell the law of a load, see the parser: so the law is always told.
        let law_matters = matches!(&part.is, PartKind::Load(_))
            && part
                .is
                .properties()
                .iter()
                .any(|p| law_of(p.name).is_some() && part.is.get(p.name) != default.get(p.name));
        let always: &[&str] = if law_matters { &["law"] } else { &[] };
        line.push_str(&changed(
            part.is.properties(),
            |p| default.get(p),
            |p| part.is.get(p),
            always,
        ));
    }
    by(&mut line, part.fitted_by);
    if let Some(place) = &part.place {
        let _ = write!(line, " place={}", quote_if_needed(place));
    }
    named(&mut line, &part.mounting, &Mounting::default());
    named(&mut line, &part.handling, &Handling::default());
    note(&mut line, &part.note);
    if let Some(BoardPoint { x, y }) = part.at {
        let _ = write!(line, " @{x},{y}");
    }
    if part.turn != Turn::None {
        let _ = write!(line, " turn={}", part.turn.word());
    }
    line
}

/// One run as its line, without the id. The sheet gives its ends their tags.
#[must_use]
pub fn print_run(sheet: &Sheet, run: &Run) -> String {
    let mut line = format!(
        "run {} {} {}",
        quote_if_needed(&run.tag),
        end(sheet, &run.from),
        end(sheet, &run.to)
    );
    label(&mut line, &run.label);
    let reel = Wire::default();
    line.push_str(&changed(Wire::list(), |p| reel.get(p), |p| run.wire.get(p), &[]));
    for (key, property) in [("ends", "method"), ("end-ohms", "resistance")] {
        let [from, to] =
            [&run.from_ending, &run.to_ending].map(|ending| ending.get(property).unwrap_or_default());
        if from != "?" || to != "?" {
            let _ = write!(line, " {key}={from}/{to}");
        }
    }
    by(&mut line, run.fitted_by);
    if !run.route.is_empty() {
        // The slash divides, so one inside a name is written ~1, and the tilde itself ~0, as in JSON pointers.
        let places: Vec<String> = run
            .route
            .iter()
            .map(|p| p.replace('~', "~0").replace('/', "~1"))
            .collect();
        let _ = write!(line, " route={}", quote_if_needed(&places.join("/")));
    }
    named(&mut line, &run.laying, &Laying::default());
    named(&mut line, &run.handling, &Handling::default());
    if !run.bends.is_empty() {
        let bends: Vec<String> = run.bends.iter().map(|p| format!("{},{}", p.x, p.y)).collect();
        let _ = write!(line, " bends={}", bends.join("/"));
    }
    note(&mut line, &run.note);
    line
}

/// What stands in a file but cannot be shown as text, each by its place. Empty for nearly every job.
#[must_use]
pub fn unshown(job: &Job) -> Vec<String> {
    let mut out = Vec::new();
    let mut add = |place: &str, extra: &Extra| {
        let dot = if place.is_empty() { "" } else { "." };
        out.extend(extra.keys().map(|key| format!("{place}{dot}{key}")));
    };
    add("", &job.extra);
    add("vehicle", &job.vehicle.extra);
    add("settings", &job.settings.extra);
    add("settings.conditions", &job.settings.conditions.extra);
    let body = &job.settings.body;
    add("settings.body", &body.extra);
    add("settings.body.shape", &body.shape.extra);
    for (name, place) in &body.places {
        add(&format!("settings.body.places.{name}"), &place.extra);
    }
    for (name, passage) in &body.passages {
        add(&format!("settings.body.passages.{name}"), &passage.extra);
    }
    add("thread", &job.thread.extra);
    add("thread.rates", &job.thread.rates.extra);
    let lines = |list: &str, number: usize| format!("thread.{list}.{number}");
    for (number, line) in job.thread.complaints.iter().enumerate() {
        add(&lines("complaints", number), &line.extra);
    }
    for (number, line) in job.thread.intake.iter().enumerate() {
        add(&lines("intake", number), &line.extra);
    }
    for (number, line) in job.thread.offers.iter().enumerate() {
        add(&lines("offers", number), &line.extra);
    }
    for (kind, sheet) in &job.sheets {
        let place = format!("sheets.{}", kind.word());
        add(&place, &sheet.extra);
        for (number, reading) in sheet.readings.iter().enumerate() {
            add(&format!("{place}.readings.{number}"), &reading.extra);
        }
        for (number, tuning) in sheet.tunings.iter().enumerate() {
            add(&format!("{place}.tunings.{number}"), &tuning.extra);
        }
        for (id, part) in &sheet.parts {
            add(&format!("{place}.parts.{id}"), &part.extra);
            add(&format!("{place}.parts.{id}.mounting"), &part.mounting.extra);
            add(&format!("{place}.parts.{id}.handling"), &part.handling.extra);
            add(
                &format!("{place}.parts.{id}.is.{}", part.is.word()),
                part.is.extra(),
            );
        }
        for (id, run) in &sheet.runs {
            let place = format!("{place}.runs.{id}");
            add(&place, &run.extra);
            add(&format!("{place}.laying"), &run.laying.extra);
            add(&format!("{place}.handling"), &run.handling.extra);
            add(&format!("{place}.wire"), &run.wire.extra);
            add(&format!("{place}.from_ending"), &run.from_ending.extra);
            add(&format!("{place}.to_ending"), &run.to_ending.extra);
        }
    }
    out.extend(job.pictures.keys().map(|key| format!("pictures.{key}")));
    out
}

/// What a set says beyond its defaults, each with its name.
fn named(line: &mut String, set: &dyn PropertySet, plain: &dyn PropertySet) {
    for property in set.properties() {
        let written = set.get(property.name).unwrap_or_default();
        if Some(&written) != plain.get(property.name).as_ref() {
            let _ = write!(line, " {}={}", property.name, quote_if_needed(&written));
        }
    }
}

fn label(line: &mut String, label: &str) {
    if !label.is_empty() {
        // An amplifier's label that looks like channels would be refused as a text alone.
        let key = if label.contains("x ") && label.contains('@') {
            "label="
        } else {
            ""
        };
        let _ = write!(line, " {key}{}", quote(label));
    }
}

fn by(line: &mut String, by: FittedBy) {
    if by != FittedBy::Us {
        let _ = write!(line, " by={}", by.word());
    }
}

fn note(line: &mut String, note: &str) {
    if !note.is_empty() {
        let _ = write!(line, " note={}", quote(note));
    }
}

fn end(sheet: &Sheet, end: &End) -> String {
    match end {
        End::Loose(BoardPoint { x, y }) => format!("loose@{x},{y}"),
        End::On(at) if sheet.role(at).is_some() => sheet.written(at),
        End::On(at) => quote_if_needed(&format!("*{}.{}", at.part, at.terminal)),
    }
}

/// The properties that differ from the default, each without its name where the parser would put it right and where it
/// is plain to the reader, too: `60A` of a fuse is its rating, but what it can break has its name, and so have the many
/// temperatures of the conditions, and where a place of the body is. Those named in `always` are written in any case.
fn changed(
    list: &'static [Property],
    default: impl Fn(&str) -> Option<String>,
    it: impl Fn(&str) -> Option<String>,
    always: &[&str],
) -> String {
    let mut out = String::new();
    let mut set = OrderedSet::new();
    for property in list {
        let name = property.name;
        let written = it(name).unwrap_or_default();
        let told = always.contains(&name);
        if !told && Some(&written) == default(name).as_ref() {
            continue;
        }
        let yes = property.shape == Shape::YesNo && written == "yes";
        let word = if yes { name } else { &written };
        let unclear = matches!(property.shape, Shape::Number { ascii: "C", .. })
            || matches!(name, "from-front" | "behind");
        let bare = !unclear
            && [&set, &OrderedSet::new()]
                .iter()
                .all(|set| place_bare(list, set, word).is_some_and(|p| p.name == name));
        let text = quote_if_needed(&written);
        if bare && (yes || text == written) {
            let _ = write!(out, " {word}");
        } else {
            let _ = write!(out, " {name}={text}");
        }
        set.insert(name);
    }
    out
}
