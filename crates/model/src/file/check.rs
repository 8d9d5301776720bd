//! What must hold for every job that comes in through the file's door, beyond being of the right types.

use super::Problem;
use crate::body::{Body, check_name};
use crate::job::{End, Job, Part, Run, Settings, Sheet, VehicleInfo};
use crate::limits::{
    self, LONGEST_LABEL, LONGEST_NOTE, check_length, check_limit, check_line_tag, check_point, check_route,
    check_tag,
};
use crate::picture::{Picture, PictureForm};
use crate::property::PropertySet;
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates};
use crate::tuning::Tuning;
use ordered::OrderedSet;
use words::{Saying, say};

/// The first thing wrong with an item: where in it, and what.
pub(super) type Wrong = (Vec<String>, Saying);

/// Something that can be held against the limits.
pub(super) trait Checked {
    /// The first thing wrong, if any.
    fn wrong(&self) -> Option<Wrong>;
}

fn at<const N: usize>(place: [&str; N], held: Result<(), Saying>) -> Result<(), Wrong> {
    held.map_err(|why| {
        let place = place.iter().map(|&step| step.to_owned()).collect();
        (place, why)
    })
}

fn properties(place: &[&str], it: &impl PropertySet) -> Result<(), Wrong> {
    it.check().map_err(|(name, why)| {
        let place = place.iter().copied().chain([name]).map(str::to_owned).collect();
        (place, why.said)
    })
}

impl Checked for Part {
    fn wrong(&self) -> Option<Wrong> {
        let all = || {
            at(["tag"], check_tag(&self.tag))?;
            at(["label"], check_length(&self.label, LONGEST_LABEL))?;
            at(["note"], check_length(&self.note, LONGEST_NOTE))?;
            at(
                ["place"],
                self.place
                    .as_ref()
                    .map_or(Ok(()), |p| check_length(p, LONGEST_LABEL)),
            )?;
            at(["at"], self.at.map_or(Ok(()), check_point))?;
            properties(&["mounting"], &self.mounting)?;
            properties(&["handling"], &self.handling)?;
            self.is
                .check()
                .map_err(|(name, why)| (["is", self.is.word(), name].map(str::to_owned).to_vec(), why.said))
        };
        all().err()
    }
}

impl Checked for Run {
    fn wrong(&self) -> Option<Wrong> {
        let end = |name: &str, end: &End| match end {
            End::On(terminal) => at(
                [name],
                check_length(terminal.terminal.as_str(), limits::LONGEST_TERMINAL),
            ),
            End::Loose(point) => at([name], check_point(*point)),
        };
        let all = || {
            at(["tag"], check_tag(&self.tag))?;
            at(["label"], check_length(&self.label, LONGEST_LABEL))?;
            at(["note"], check_length(&self.note, LONGEST_NOTE))?;
            end("from", &self.from)?;
            end("to", &self.to)?;
            at(["route"], check_route(&self.route))?;
            let (bends, most) = (self.bends.len(), limits::MOST_BENDS);
            if bends > most {
                let why = say!("file-too-many", of = "bends", count = bends, most = most);
                at(["bends"], Err(why))?;
            }
            at(
                ["bends"],
                self.bends.iter().try_for_each(|point| check_point(*point)),
            )?;
            properties(&["laying"], &self.laying)?;
            properties(&["handling"], &self.handling)?;
            properties(&["wire"], &self.wire)?;
            properties(&["from_ending"], &self.from_ending)?;
            properties(&["to_ending"], &self.to_ending)
        };
        all().err()
    }
}

macro_rules! checked_by_properties {
    ($($name:ident),+) => {$(
        impl Checked for $name {
            fn wrong(&self) -> Option<Wrong> {
                properties(&[], self).err()
            }
        }
    )+};
}
checked_by_properties!(VehicleInfo, Reading, Tuning, Rates);

macro_rules! checked_with_tag {
    ($($name:ident),+) => {$(
        impl Checked for $name {
            fn wrong(&self) -> Option<Wrong> {
                let tag = at(["tag"], check_line_tag(&self.tag));
                tag.and_then(|()| properties(&[], self)).err()
            }
        }
    )+};
}
checked_with_tag!(Complaint, IntakeNote, Offer);

impl Checked for Picture {
    fn wrong(&self) -> Option<Wrong> {
        let all = || {
            properties(&["facts"], &self.facts)?;
            let size = self.bytes.len();
            let held = if size > limits::LARGEST_PICTURE {
                Err(say!(
                    "error-picture-large",
                    bytes = size,
                    most = limits::LARGEST_PICTURE
                ))
            } else if PictureForm::of(&self.bytes) != Some(self.facts.form) {
                Err(say!("file-picture-form", form = self.facts.form.title()))
            } else {
                Ok(())
            };
            at(["bytes"], held)
        };
        all().err()
    }
}

/// What a job tells of the vehicle's body.
fn body(body: &Body) -> Result<(), Wrong> {
    properties(&["body", "shape"], &body.shape)?;
    for (list, count) in [("places", body.places.len()), ("passages", body.passages.len())] {
        if count > limits::MOST_OWN_PLACES {
            let most = limits::MOST_OWN_PLACES;
            at(
                ["body", list],
                Err(say!("file-too-many", of = "them", count = count, most = most)),
            )?;
        }
    }
    for (name, place) in &body.places {
        at(["body", "places", name], check_name(name))?;
        properties(&["body", "places", name], place)?;
    }
    for (name, passage) in &body.passages {
        at(["body", "passages", name], check_name(name))?;
        properties(&["body", "passages", name], passage)?;
    }
    Ok(())
}

impl Checked for Settings {
    fn wrong(&self) -> Option<Wrong> {
        let all = || {
            properties(&["conditions"], &self.conditions)?;
            body(&self.body)?;
            for (key, number) in &self.limits {
                at(["limits", key], check_length(key, LONGEST_LABEL))?;
                at(["limits", key], check_limit(*number))?;
            }
            if self.limits.len() > limits::MOST_SETTINGS {
                at(
                    ["limits"],
                    Err(say!("text-full", what = "limits", most = limits::MOST_SETTINGS)),
                )?;
            }
            if self.allowed.len() > limits::MOST_SETTINGS {
                at(
                    ["allowed"],
                    Err(say!("text-full", what = "checks", most = limits::MOST_SETTINGS)),
                )?;
            }
            at(
                ["allowed"],
                self.allowed
                    .iter()
                    .try_for_each(|name| check_length(name, LONGEST_LABEL)),
            )
        };
        all().err()
    }
}

/// Ends of runs that are on nothing: kept, but worth knowing.
pub(super) fn ends_on_nothing(place: &str, sheet: &Sheet, problems: &mut Vec<Problem>) {
    for (id, run) in &sheet.runs {
        for (side, end) in [("from", &run.from), ("to", &run.to)] {
            let End::On(on) = end else { continue };
            let message = match sheet.parts.get(&on.part) {
                None => say!("file-end-nowhere", run = &run.tag, part = on.part.to_string()),
                Some(part) if part.role(&on.terminal).is_none() => {
                    say!(
                        "file-end-no-terminal",
                        run = &run.tag,
                        part = &part.tag,
                        terminal = on.terminal.as_str()
                    )
                }
                Some(_) => continue,
            };
            problems.push(Problem {
                place: format!("{place}.runs.{id}.{side}"),
                message,
                left_out: false,
            });
        }
    }
}

/// Holds a job against all rules of the file. Problems with `left_out` would keep its file from being read whole: a
/// tool that makes jobs holds them against this before it hands them on.
#[must_use]
pub fn check(job: &Job) -> Vec<Problem> {
    let mut problems = Vec::new();
    let mut add = |place: String, wrong: Option<Wrong>| {
        if let Some((inner, message)) = wrong {
            let place = std::iter::once(place)
                .chain(inner)
                .filter(|step| !step.is_empty());
            problems.push(Problem {
                place: place.collect::<Vec<_>>().join("."),
                message,
                left_out: true,
            });
        }
    };
    add(
        String::new(),
        at(["title"], check_length(&job.title, LONGEST_LABEL)).err(),
    );
    add("vehicle".to_owned(), job.vehicle.wrong());
    add("settings".to_owned(), job.settings.wrong());
    for (kind, sheet) in &job.sheets {
        let place = format!("sheets.{}", kind.word());
        if sheet.parts.len() > limits::MOST_PARTS || sheet.runs.len() > limits::MOST_RUNS {
            let message = say!(
                "file-sheet-full",
                parts = limits::MOST_PARTS,
                runs = limits::MOST_RUNS
            );
            add(place.clone(), Some((Vec::new(), message)));
        }
        let mut tags = OrderedSet::new();
        let mut tag = |tag: &str| {
            (!tags.insert(tag.to_owned()))
                .then(|| (vec!["tag".to_owned()], say!("file-tag-twice", tag = tag)))
        };
        for (id, part) in &sheet.parts {
            add(
                format!("{place}.parts.{id}"),
                part.wrong().or_else(|| tag(&part.tag)),
            );
        }
        for (id, run) in &sheet.runs {
            add(
                format!("{place}.runs.{id}"),
                run.wrong().or_else(|| tag(&run.tag)),
            );
        }
    }
    for (kind, sheet) in &job.sheets {
        let place = format!("sheets.{}.readings", kind.word());
        if sheet.readings.len() > limits::MOST_READINGS {
            let message = say!("error-readings", most = limits::MOST_READINGS);
            add(place.clone(), Some((Vec::new(), message)));
        }
        for (number, reading) in sheet.readings.iter().enumerate() {
            add(format!("{place}.{number}"), reading.wrong());
        }
    }
    for (kind, sheet) in &job.sheets {
        ends_on_nothing(&format!("sheets.{}", kind.word()), sheet, &mut problems);
    }
    problems
}
