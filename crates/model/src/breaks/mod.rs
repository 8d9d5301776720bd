//! Breaks: what fails, as data. A break is thrown on purpose to see what follows, or suspected behind what a meter reads.
//!
//! Ids stand in the data; people write and read tags: `W3 grounded at 50 % through 5 mΩ`, see [`Break::read`]. What a break does to a
//! sheet is an edit ([`Break::edit`]); the engine throws most of them on its network without one.

mod edit;
mod read;

use crate::property::PropertyType as _;
use crate::quantity::{Ohms, Share};
use crate::{PartId, RunId, Sheet, TerminalName, TerminalRef};
use words::{Saying, Unit, precise, say};

/// Where along a run something is that nothing more is told of.
pub const HALF_WAY: Share = Share(0.5);

/// Something that fails.
#[derive(Clone, Debug, PartialEq)]
pub enum Break {
    /// A run is cut.
    Cut {
        /// The run.
        run: RunId,
        /// Where along it: 0 at its `from` end, 1 at its `to` end. It tells on which side of the cut something else touches.
        at: Share,
    },
    /// One end of a run is off what it was on.
    Off {
        /// The run.
        run: RunId,
        /// Which end: false its `from` end, true its `to` end.
        far: bool,
    },
    /// A fuse, breaker, switch, isolator, relay or plug is open, a ground point undone; or everything is off one terminal, such as an
    /// output of a fused block.
    Open {
        /// The part.
        part: PartId,
        /// The terminal, where only one is meant.
        output: Option<TerminalName>,
    },
    /// A run touches the body.
    Grounded {
        /// The run.
        run: RunId,
        /// Where along it: 0 at its `from` end, 1 at its `to` end.
        at: Share,
        /// Through what resistance; the touch itself, in ohms.
        through: Ohms,
    },
    /// Two points touch. A run that touches the body is [`Break::Grounded`].
    Joined {
        /// The points.
        points: [Contact; 2],
        /// Through what resistance.
        through: Ohms,
    },
    /// A run has so much more resistance than it should, at one of its ends or along it.
    Resistive {
        /// The run.
        run: RunId,
        /// How much more.
        more: Ohms,
    },
    /// A ground point, or a part that passes current, has so much more resistance than it should.
    Poor {
        /// The part.
        part: PartId,
        /// How much more.
        more: Ohms,
    },
    /// Plus and minus of a part, or of one of its voice coils, are exchanged.
    Reversed {
        /// The part.
        part: PartId,
        /// The voice coil, from 1, where only one is.
        coil: Option<u8>,
    },
    /// A part is dead: nothing is left of it but the joints of the wires on it.
    Dead {
        /// The part.
        part: PartId,
    },
}

/// A point that something can touch.
#[derive(Clone, Debug, PartialEq)]
pub enum Contact {
    /// A terminal.
    Terminal(TerminalRef),
    /// A point along a run: 0 at its `from` end, 1 at its `to` end.
    Along(RunId, Share),
    /// The body of the vehicle.
    Body,
}

impl Contact {
    /// What it is called, for people: `B1.+`, `W3 at 40 %`.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        match self {
            Self::Terminal(at) => sheet.written(at).into(),
            Self::Along(run, at) => say!(
                "break-point-along",
                run = sheet.run_tag(*run),
                at = precise(at.0, Unit::Percent, 0)
            ),
            Self::Body => say!("break-point-body"),
        }
    }

    fn written(&self, sheet: &Sheet) -> String {
        match self {
            Self::Terminal(at) => sheet.written(at),
            Self::Along(run, at) => format!("{} at {}", sheet.run_tag(*run), percent(*at)),
            Self::Body => read::BODY.to_owned(),
        }
    }

    /// Whether two are on one thing, wherever along a run.
    fn is_on_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Along(a, _), Self::Along(b, _)) => a == b,
            _ => self == other,
        }
    }
}

/// The letter of a voice coil as terminals have it.
fn coil_letter(coil: u8) -> &'static str {
    if coil == 2 { "b" } else { "a" }
}

/// Where an end of a run is, as people write it, where that names the end: `LS1.+`; else `from` or `to`.
fn end_name(sheet: &Sheet, id: RunId, far: bool) -> String {
    let word = if far { "to" } else { "from" };
    let Some(run) = sheet.runs.get(&id) else {
        return word.to_owned();
    };
    let [own, other] = if far {
        [&run.to, &run.from]
    } else {
        [&run.from, &run.to]
    };
    match own.terminal().filter(|_| own.terminal() != other.terminal()) {
        Some(at) => sheet.written(at),
        None => word.to_owned(),
    }
}

impl Break {
    /// Two points touch: what that is as a break. `None` where they are one point.
    #[must_use]
    pub fn touching(points: [Contact; 2], through: Ohms) -> Option<Self> {
        match points {
            [a, b] if a == b => None,
            [Contact::Along(run, at), Contact::Body] | [Contact::Body, Contact::Along(run, at)] => {
                Some(Self::Grounded { run, at, through })
            }
            points => Some(Self::Joined { points, through }),
        }
    }

    /// The runs and parts that it is on.
    #[must_use]
    pub fn on(&self) -> (Vec<RunId>, Vec<PartId>) {
        match self {
            Self::Cut { run, .. }
            | Self::Off { run, .. }
            | Self::Grounded { run, .. }
            | Self::Resistive { run, .. } => (vec![*run], Vec::new()),
            Self::Joined { points, .. } => {
                let (mut runs, mut parts) = (Vec::new(), Vec::new());
                for point in points {
                    match point {
                        Contact::Terminal(at) => parts.push(at.part),
                        Contact::Along(run, _) => runs.push(*run),
                        Contact::Body => {}
                    }
                }
                (runs, parts)
            }
            Self::Open { part, .. }
            | Self::Poor { part, .. }
            | Self::Reversed { part, .. }
            | Self::Dead { part } => (Vec::new(), vec![*part]),
        }
    }

    /// Whether two are one thing, however large or wherever along a run it is.
    #[must_use]
    pub fn is_same_thing(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Cut { run: a, .. }, Self::Cut { run: b, .. })
            | (Self::Resistive { run: a, .. }, Self::Resistive { run: b, .. })
            | (Self::Grounded { run: a, .. }, Self::Grounded { run: b, .. }) => a == b,
            (Self::Poor { part: a, .. }, Self::Poor { part: b, .. }) => a == b,
            (Self::Joined { points: [a, b], .. }, Self::Joined { points: [c, d], .. }) => {
                a.is_on_same(c) && b.is_on_same(d)
            }
            _ => self == other,
        }
    }

    /// What it is called, for people: `W3 cut`, `W3 grounded at 50 %`.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        let run_of = |run: &RunId| sheet.run_tag(*run);
        let tag_of = |part: &PartId| sheet.part_tag(*part);
        let ohms = |ohms: &Ohms| words::drawn(ohms.0, Unit::Plain("Ω"));
        match self {
            Self::Cut { run, at } if *at == HALF_WAY => say!("break-cut", run = run_of(run)),
            Self::Cut { run, at } => say!(
                "break-cut-at",
                run = run_of(run),
                at = precise(at.0, Unit::Percent, 0)
            ),
            Self::Off { run, far } => say!("break-off", run = run_of(run), end = end_name(sheet, *run, *far)),
            Self::Open { part, output: None } => say!("break-open", part = tag_of(part)),
            Self::Open {
                part,
                output: Some(output),
            } => say!("break-open", part = format!("{}.{output}", tag_of(part))),
            Self::Grounded { run, at, through } if through.0 == 0.0 => {
                say!(
                    "break-grounded",
                    run = run_of(run),
                    at = precise(at.0, Unit::Percent, 0)
                )
            }
            Self::Grounded { run, at, through } => say!(
                "break-grounded-through",
                run = run_of(run),
                at = precise(at.0, Unit::Percent, 0),
                ohms = ohms(through),
            ),
            Self::Joined { points, through } => {
                let [one, other] = points.each_ref().map(|at| at.said(sheet));
                if through.0 == 0.0 {
                    say!("break-joined", one = one, other = other)
                } else {
                    say!(
                        "break-joined-through",
                        one = one,
                        other = other,
                        ohms = ohms(through)
                    )
                }
            }
            Self::Resistive { run, more } => say!("break-more", thing = run_of(run), ohms = ohms(more)),
            Self::Poor { part, more } => say!("break-more", thing = tag_of(part), ohms = ohms(more)),
            Self::Reversed { part, coil } => {
                say!("break-reversed", part = reversed_name(sheet, *part, *coil))
            }
            Self::Dead { part } => say!("break-dead", part = tag_of(part)),
        }
    }

    /// The written form, in tags; [`Break::read`] reads it back.
    #[must_use]
    pub fn written(&self, sheet: &Sheet) -> String {
        let through = |ohms: &Ohms| {
            if ohms.0 == 0.0 {
                String::new()
            } else {
                format!(" through {}", ohms.print())
            }
        };
        match self {
            Self::Cut { run, at } if *at == HALF_WAY => format!("{} cut", sheet.run_tag(*run)),
            Self::Cut { run, at } => format!("{} cut at {}", sheet.run_tag(*run), percent(*at)),
            Self::Off { run, far } => format!("{} off {}", sheet.run_tag(*run), end_name(sheet, *run, *far)),
            Self::Open { part, output } => match output {
                Some(output) => format!("{}.{output} open", sheet.part_tag(*part)),
                None => format!("{} open", sheet.part_tag(*part)),
            },
            Self::Grounded {
                run,
                at,
                through: ohms,
            } => {
                format!(
                    "{} grounded at {}{}",
                    sheet.run_tag(*run),
                    percent(*at),
                    through(ohms)
                )
            }
            Self::Joined {
                points: [one, other],
                through: ohms,
            } => format!(
                "{} joined {}{}",
                one.written(sheet),
                other.written(sheet),
                through(ohms)
            ),
            Self::Resistive { run, more } => format!("{} resistive {}", sheet.run_tag(*run), more.print()),
            Self::Poor { part, more } => format!("{} poor {}", sheet.part_tag(*part), more.print()),
            Self::Reversed { part, coil } => format!("{} reversed", reversed_name(sheet, *part, *coil)),
            Self::Dead { part } => format!("{} dead", sheet.part_tag(*part)),
        }
    }
}

/// `50%`, where that reads back as the same number.
fn percent(share: Share) -> String {
    let hundredths = libm::round(share.0 * 1e6) / 1e4;
    if hundredths / 100.0 == share.0 {
        format!("{hundredths}%")
    } else {
        share.print()
    }
}

/// `LS1`, or `LS1.b` where one coil of it is meant.
fn reversed_name(sheet: &Sheet, part: PartId, coil: Option<u8>) -> String {
    let tag = sheet.part_tag(part);
    match coil {
        Some(coil) => format!("{tag}.{}", coil_letter(coil)),
        None => tag,
    }
}
