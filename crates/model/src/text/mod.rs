//! The short text form of a job, for tests, explanations of checks, lessons and the command line: readable at a
//! glance, one thing a line.
//!
//! ```text
//! # The feed of an amplifier.
//! job "Small system"
//! conditions cruise loud
//! battery B1 agm 70Ah charge=~0.8 @0,0
//! fuse F1 "Main fuse" strip61 60A
//! run W1 B1.+ F1.in 16mm2 0.3m RD copper ends=ring/ring
//! ```
//!
//! | line | meaning |
//! |---|---|
//! | `job "Title"` | the title |
//! | `vehicle-info name="…" date="…"` | what the title block says |
//! | `conditions state=cruise duty=loud` | the conditions under which it is solved |
//! | `limit KEY NUMBER` | a limit that the user set |
//! | `allow CHECK …` | checks that are not to be run |
//! | `body estate 4.7m width=1.82m` | form and size of the vehicle's body |
//! | `place NAME wet heat=engine-bay` | what is told of a place of the body, or one more place |
//! | `passage NAME from=PLACE to=PLACE sharp` | the same of a way between two places |
//! | `sheet found` | what follows stands on that sheet; before any such line, on the plan |
//! | `fuse F1 "Label" value … key=value …` | a part: word of its kind, tag, then in any order label, values, `by=`, `place=`, `mounted=` and the like, `fate=`, `note=`, `turn=`, `@x,y`, `id=` |
//! | `run W1 F1.out A1.+ value … key=value …` | a run: tag and two ends, then label, values, `ends=ring/ferrule`, `end-ohms=0.001ohm/?`, `bends=10,20/30,40`, `route=a/b`, `guards=b:grommet` and the like, `fate=`, `by=`, `note=`, `id=` |
//! | `reading volts at=B1.+ against=E1.stud 12.6V state=idle` | a reading of the meter that was kept; by `at` and `against` it names what the leads were on, or the run in the clamp |
//! | `tuning of=A1 channel=1 target-volts=17.3V` | how a channel is set |
//! | `complaint C1 "No bass" explained-by="silent-speaker LS1"` | what the customer came with |
//! | `intake "Lid cracked" where=D1` | a line of the condition record |
//! | `offer Q1 "New main fuse" must answers=C1 parts-price=34.50 hours=0.5h` | a line of the quote |
//! | `rates currency=EUR hour-price=78.00` | the shop's terms |
//! | `done strip-out:B1 …` | steps of checklists that are done |
//!
//! A value without its name goes to the first property of the list (the kind's, or the wire's) that is not yet set in
//! that line and takes values of that form; a number without a unit must have its name. The name of a yes-or-no property alone means
//! yes. `~` before a value marks it as assumed, `?` stands for one that nobody knows. Values with spaces are put in
//! double quotes, in which `\"`, `\\`, `\n`, `\r` and `\t` are escapes. `#` starts a comment.
//!
//! An end is `TAG.terminal` or `loose@x,y`. An end on something that the sheet does not have, as a damaged file may
//! carry, is written `*p7.in`, by id and without a check.
//!
//! Ids are not written where they follow by themselves: a tag that an earlier sheet has keeps its id, and everything
//! else is numbered in order. Otherwise `id=p12` stands in the line.
//!
//! *What text cannot show:* pictures, and fields of a newer version's file that this one does not know ([`unshown`] lists
//! them). Without these, a job that passes the file's door reads back equal from its text; printing what was parsed,
//! parsing and printing it again changes nothing.

mod error;
mod lex;
mod parse;
mod print;

pub use error::{TextError, TextErrors, closest};
pub use parse::{parse, parse_lenient};
pub use print::{print, print_part, print_run, unshown};

use crate::conductor::Jacket;
use crate::id::{PartId, RunId};
use crate::kinds::supply::Ratings;
use crate::property::{Property, PropertyType, Shape, parse_number};
use ordered::{OrderedMap, OrderedSet};

/// Keys that a part line takes besides the properties of its kind.
pub(crate) const PART_KEYS: &[&str] = &["label", "by", "place", "note", "turn", "id"];
/// Keys that a run line takes besides the properties of its wire.
pub(crate) const RUN_KEYS: &[&str] = &["label", "ends", "end-ohms", "bends", "route", "by", "note", "id"];

/// Which id a line without `id=` gets. Parser and printer share it, so that one leaves out what the other adds.
#[derive(Clone, Debug, Default)]
pub(crate) struct Numbering {
    by_tag: OrderedMap<String, u32>,
    last: u32,
}

impl Numbering {
    /// The id that follows by itself for this tag, given those already taken on the sheet.
    pub(crate) fn implied(&self, tag: &str, taken: impl Fn(u32) -> bool) -> u32 {
        match self.by_tag.get(tag) {
            Some(id) if !taken(*id) => *id,
            _ => self.last.saturating_add(1),
        }
    }
    /// Notes the id that a tag got.
    pub(crate) fn note(&mut self, tag: &str, id: u32) {
        self.by_tag.insert(tag.to_owned(), id);
        self.last = self.last.max(id);
    }
}

/// Numbers of parts and of runs.
#[derive(Clone, Debug, Default)]
pub(crate) struct Numberings {
    pub(crate) parts: Numbering,
    pub(crate) runs: Numbering,
}

impl Numberings {
    pub(crate) fn implied_part(&self, tag: &str, taken: impl Fn(PartId) -> bool) -> PartId {
        PartId(self.parts.implied(tag, |id| taken(PartId(id))))
    }
    pub(crate) fn implied_run(&self, tag: &str, taken: impl Fn(RunId) -> bool) -> RunId {
        RunId(self.runs.implied(tag, |id| taken(RunId(id))))
    }
}

/// True for a number that does not say what it is a number of.
fn is_bare_number(text: &str) -> bool {
    let text = text.strip_prefix('~').unwrap_or(text);
    text.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))
        && text.parse::<f64>().is_ok()
}

/// Whether a value without its name has the form that this property takes, be it in range or not.
pub(crate) fn fits(property: &Property, text: &str) -> bool {
    let plain = text.strip_prefix('~').unwrap_or(text);
    if plain.len() != text.len() && !property.may_be_assumed {
        return false;
    }
    match property.shape {
        Shape::Number { ascii: "", .. } => plain.ends_with('%'),
        Shape::Number { ascii, symbol, .. } => parse_number(plain, ascii, symbol).is_ok(),
        Shape::Choice(words) => words.iter().any(|(word, _)| *word == plain),
        Shape::Count | Shape::YesNo => false,
        // Only written forms that no other property could take for its own.
        Shape::Text { .. } => match property.name {
            "size" => {
                plain.ends_with("mm2")
                    || plain.ends_with("mm²")
                    || plain.ends_with("AWG")
                    || plain.ends_with("awg")
            }
            "colour" => Jacket::parse(plain, None).is_ok(),
            "fuses" => Ratings::parse(plain, None).is_ok(),
            _ => false,
        },
    }
}

/// The property to which a value without a name goes: the first of the list that is not yet set and takes values of
/// that form. It is not passed on when it is out of range there: a fuse of 6000 A must not become one that breaks 6000 A.
pub(crate) fn place_bare<'p>(
    list: &'p [Property],
    set: &OrderedSet<&'static str>,
    text: &str,
) -> Option<&'p Property> {
    if text == "?" || is_bare_number(text) {
        return None;
    }
    let free = || list.iter().filter(|property| !set.contains(property.name));
    free()
        .find(|property| fits(property, text))
        .or_else(|| free().find(|property| property.shape == Shape::YesNo && property.name == text))
}

/// The law by which a load draws, told by the one value that was given for it: `load L1 5A` draws 5 A, whatever the
/// voltage.
pub(crate) fn law_of(property: &str) -> Option<&'static str> {
    match property {
        "current" => Some("current"),
        "power" => Some("power"),
        "resistance" => Some("resistance"),
        _ => None,
    }
}
