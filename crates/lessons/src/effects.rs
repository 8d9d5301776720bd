//! What follows from a break, as data that can be held against an analysis.

use crate::measures::{Judged, device, driven_by_off, measure};
use model::kinds::PartKind;
use model::kinds::supply::FuseForm;
use reference::fuses::{FuseFamily, must_open_at};
use std::fmt;
use words::{Saying, say};

/// Something that is so, or not, of an analysis.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// A speaker has no complete loop, or what drives it is off.
    Silent(String),
    /// A speaker plays.
    Plays(String),
    /// A load, amplifier or other equipment is off, or nothing feeds it.
    Off(String),
    /// It is on.
    On(String),
    /// So much flows through a fuse or breaker, for long, that its type has to open.
    Opens(String),
    /// A check finds something.
    Finds(String),
    /// A check finds nothing.
    Clears(String),
    /// A number of the engine lies above or below another.
    Compares {
        /// Its name, see [`crate::measures`].
        name: String,
        /// Of what.
        at: String,
        /// True for above.
        above: bool,
        /// The other number, in the unit that the engine gives.
        number: f64,
        /// That unit.
        unit: String,
    },
}

/// Words of effects that name one thing.
const WORDS: [&str; 7] = ["silent", "plays", "off", "on", "opens", "finds", "clears"];

impl Effect {
    /// Reads an effect: `silent LS1`, `current W3 > 20 A`.
    ///
    /// # Errors
    /// When it is neither; the text says what would do.
    pub fn parse(text: &str) -> Result<Self, Saying> {
        let words: Vec<&str> = text.split_whitespace().collect();
        if let [word, at] = words[..] {
            let at = at.to_owned();
            return match word {
                "silent" => Ok(Self::Silent(at)),
                "plays" => Ok(Self::Plays(at)),
                "off" => Ok(Self::Off(at)),
                "on" => Ok(Self::On(at)),
                "opens" => Ok(Self::Opens(at)),
                "finds" => Ok(Self::Finds(at)),
                "clears" => Ok(Self::Clears(at)),
                _ => Err(say!(
                    "lesson-text-effect-word",
                    word = word,
                    words = WORDS.join(", ")
                )),
            };
        }
        let (name, at, sign, number, unit) = match words[..] {
            [name, at, sign @ (">" | "<"), number, unit] => (name, at, sign, number, unit),
            [name, sign @ (">" | "<"), number, unit] => (name, "", sign, number, unit),
            _ => return Err(say!("lesson-text-effect-form")),
        };
        let number = number.parse::<f64>().ok().filter(|number| number.is_finite());
        Ok(Self::Compares {
            name: name.to_owned(),
            at: at.to_owned(),
            above: sign == ">",
            number: number.ok_or("write a number and its unit, as `20 A`")?,
            unit: unit.to_owned(),
        })
    }

    /// Whether it is so.
    ///
    /// # Errors
    /// When it names what is not there.
    pub fn holds(&self, judged: Judged<'_>) -> Result<bool, Saying> {
        let study = &judged.analysis.study;
        let part = |tag: &str| {
            judged
                .sheet
                .part_by_tag(tag)
                .ok_or_else(|| say!("lesson-no-part", part = tag))
        };
        let plays = |tag: &str| {
            let (id, _) = part(tag)?;
            let driver = study
                .drivers
                .get(&id)
                .ok_or_else(|| say!("lesson-no-speaker", part = tag))?;
            Ok::<bool, Saying>(driver.plays && driven_by_off(judged, driver).is_none())
        };
        let is_on = |tag: &str| {
            let (id, _) = part(tag)?;
            let Some(flow) = study.parts.get(&id) else {
                return Ok::<bool, Saying>(false);
            };
            // What cannot switch itself is on when something flows.
            Ok(flow.on.unwrap_or(flow.current.mean.0.abs() > 1e-6))
        };
        Ok(match self {
            Self::Silent(tag) => !plays(tag)?,
            Self::Plays(tag) => plays(tag)?,
            Self::Off(tag) => !is_on(tag)?,
            Self::On(tag) => is_on(tag)?,
            Self::Opens(at) => {
                let device = device(judged, at).ok_or_else(|| say!("lesson-no-device", device = at))?;
                let rating = device
                    .rating
                    .ok_or_else(|| say!("lesson-no-rating", device = at))?;
                let (_, part) = part(at.split_once('.').map_or(at.as_str(), |(tag, _)| tag))?;
                device.current.rms.0.abs() >= rating.0 * must_open(&part.is)
            }
            Self::Finds(check) => judged.analysis.findings.iter().any(|it| it.check == check),
            Self::Clears(check) => !judged.analysis.findings.iter().any(|it| it.check == check),
            Self::Compares {
                name,
                at,
                above,
                number,
                unit,
            } => {
                let (value, of) = measure(judged, name, at)?;
                if unit != of {
                    return Err(say!("lesson-other-unit", measure = name, of = of, unit = unit));
                }
                if *above { value > *number } else { value < *number }
            }
        })
    }
}

/// Multiple of its rating at which a device of this kind has to open: the published gate of its type. A breaker is taken
/// as a blade fuse (SAE J553 asks the same of it at 135 %, from memory), as are the outputs of the vehicle's panel.
fn must_open(kind: &PartKind) -> f64 {
    let form = match kind {
        PartKind::Fuse(fuse) => fuse.form,
        PartKind::Block(block) => block.form,
        _ => FuseForm::Regular,
    };
    must_open_at(match form {
        FuseForm::Mini => FuseFamily::Mini,
        FuseForm::Regular => FuseFamily::Regular,
        FuseForm::Maxi => FuseFamily::Maxi,
        FuseForm::Strip30 => FuseFamily::Strip30,
        FuseForm::Strip51 => FuseFamily::Strip51,
        FuseForm::Strip61 => FuseFamily::Strip61,
        FuseForm::Glass => FuseFamily::Glass,
    })
}

impl fmt::Display for Effect {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (word, at) = match self {
            Self::Silent(at) => ("silent", at),
            Self::Plays(at) => ("plays", at),
            Self::Off(at) => ("off", at),
            Self::On(at) => ("on", at),
            Self::Opens(at) => ("opens", at),
            Self::Finds(at) => ("finds", at),
            Self::Clears(at) => ("clears", at),
            Self::Compares {
                name,
                at,
                above,
                number,
                unit,
            } => {
                let sign = if *above { ">" } else { "<" };
                let space = if at.is_empty() { "" } else { " " };
                return write!(out, "{name}{space}{at} {sign} {number} {unit}");
            }
        };
        write!(out, "{word} {at}")
    }
}
