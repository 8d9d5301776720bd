//! What an error of the text form is about, as part of its sentence.

use super::super::{PART_KEYS, RUN_KEYS};
use words::{Saying, say};

/// Whose properties a line gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Whose {
    /// Those of a part of the kind of this word.
    Part(&'static str),
    Run,
    TitleBlock,
    Conditions,
    Body,
    Place,
    Passage,
    Reading,
    Tuning,
    Complaint,
    Intake,
    Offer,
    Rates,
}

impl Whose {
    /// Keys that its line takes besides the properties.
    pub(super) fn keys(self) -> &'static [&'static str] {
        match self {
            Self::Part(_) => PART_KEYS,
            Self::Run => RUN_KEYS,
            _ => &[],
        }
    }
    pub(super) fn said(self) -> Saying {
        let of = match self {
            Self::Part(kind) => return say!("text-whose-part", kind = kind),
            Self::Run => "run",
            Self::TitleBlock => "title-block",
            Self::Conditions => "conditions",
            Self::Body => "body",
            Self::Place => "place",
            Self::Passage => "passage",
            Self::Reading => "reading",
            Self::Tuning => "tuning",
            Self::Complaint => "complaint",
            Self::Intake => "intake",
            Self::Offer => "offer",
            Self::Rates => "rates",
        };
        say!("text-whose", of = of)
    }
}

/// There are more of these than there may be; `what` is one of the words that the message knows.
pub(super) fn full(what: &'static str, most: usize) -> Saying {
    say!("text-full", what = what, most = most)
}
