//! What happens after a break, and what becomes of a short, as sayings.

use super::outcome::{Certainty, Event, Outcome, Within};
use super::scenario::Happening;
use crate::study::DeviceRef;
use model::quantity::{Amps, Seconds};
use model::{PartId, RunId, Sheet};
use words::{Saying, Unit, Value, drawn, figure, say};

fn part(sheet: &Sheet, id: PartId) -> String {
    let part = sheet.parts.get(&id);
    part.map_or_else(|| id.to_string(), |part| part.tag.clone())
}

fn run(sheet: &Sheet, id: RunId) -> String {
    let run = sheet.runs.get(&id);
    run.map_or_else(|| id.to_string(), |run| run.tag.clone())
}

fn device(sheet: &Sheet, it: &DeviceRef) -> String {
    match &it.output {
        Some(output) => format!("{}.{output}", part(sheet, it.part)),
        None => part(sheet, it.part),
    }
}

impl Happening {
    /// What it is called, in a list: `F1 opens`.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        match self {
            Self::Opens(it) => say!("event-opens", device = device(sheet, it)),
            Self::Closes(it) => say!("event-closes", device = device(sheet, it)),
            Self::Damaged(id) => say!("event-damaged", run = run(sheet, *id)),
            Self::Melts(id) => say!("event-melts", run = run(sheet, *id)),
            Self::Off(id) => say!("event-off", part = part(sheet, *id)),
            Self::On(id) => say!("event-on", part = part(sheet, *id)),
            Self::Lets(id) => say!("event-lets", part = part(sheet, *id)),
            Self::Pulls(id) => say!("event-pulls", part = part(sheet, *id)),
            Self::Unloaded(id) => say!("event-unloaded", part = part(sheet, *id)),
        }
    }
}

/// A time as on the drawing, `29 ms`; at once where it is none.
#[must_use]
pub fn time_said(time: Seconds) -> Value {
    if time.0 < 1e-5 {
        say!("time-at-once").into()
    } else {
        drawn(time.0, Unit::Plain("s")).into()
    }
}

impl Within<Seconds> {
    /// From the soonest to the latest: `29 ms to 0.48 s`.
    #[must_use]
    pub fn said(&self) -> Saying {
        if self.most.0 <= 1.05 * self.least.0 + 1e-5 {
            say!("time-about", time = time_said(self.least))
        } else {
            say!(
                "time-within",
                least = time_said(self.least),
                most = time_said(self.most)
            )
        }
    }
}

impl Within<Amps> {
    /// From the least to the most: `696 A to 895 A`.
    #[must_use]
    pub fn said(&self) -> Saying {
        let amps = |amps: Amps| figure(amps.0, Unit::Plain("A"));
        if self.most.0 <= 1.02 * self.least.0 + 0.05 {
            say!("current-about", most = amps(self.most))
        } else {
            say!("current-within", least = amps(self.least), most = amps(self.most))
        }
    }
}

impl Certainty {
    /// Its word in a table.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::No => say!("certainty-no"),
            Self::Possible => say!("certainty-possible"),
            Self::Certain => say!("certainty-certain"),
        }
    }
}

impl Event {
    /// What happens, and how often where it does more than once.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        let what = self.happening.said(sheet);
        if self.times > 1 {
            say!("event-times", what = what, times = self.times)
        } else {
            what
        }
    }
}

impl Outcome {
    /// What becomes of the short, as a sentence.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        match self {
            Self::NothingToClear => say!("outcome-nothing"),
            Self::Clears { time, margin } if margin.is_finite() => say!(
                "outcome-clears",
                time = time.said(),
                margin = figure(*margin, Unit::Bare),
            ),
            Self::Clears { time, .. } => say!("outcome-clears-cool", time = time.said()),
            Self::WireFirst {
                certainty: Certainty::Certain,
                run: id,
                time,
            } => say!("outcome-wire", run = run(sheet, *id), time = time.said()),
            Self::WireFirst { run: id, time, .. } => {
                say!("outcome-wire-perhaps", run = run(sheet, *id), time = time.said())
            }
            Self::NeverClears {
                certainty: Certainty::Certain,
                current,
            } => say!("outcome-never", current = figure(current.0, Unit::Plain("A"))),
            Self::NeverClears { current, .. } => {
                say!(
                    "outcome-never-perhaps",
                    current = figure(current.0, Unit::Plain("A"))
                )
            }
            Self::NotKnown => say!("outcome-not-known"),
        }
    }

    /// Whether it is as grave as a finding of grade Stop.
    #[must_use]
    pub fn is_grave(&self) -> bool {
        matches!(
            self,
            Self::WireFirst {
                certainty: Certainty::Certain,
                ..
            } | Self::NeverClears {
                certainty: Certainty::Certain,
                ..
            }
        )
    }
}
