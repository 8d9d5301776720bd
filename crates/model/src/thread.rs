//! The thread of a job: what the customer complained of, what was found at intake, what was offered and decided, and what
//! is done. Everything refers to everything else by tags: complaints are `C1`, offers `Q1`, parts and runs as on the sheet.

use crate::fact::Fact::{self, Unknown};
use crate::job::Extra;
use crate::property::{PropertyError, PropertyType, Shape};
use crate::quantity::Hours;
use crate::{choice, properties};
use ordered::OrderedSet;
use words::say;

/// Whole hundredths of a currency, so that sums of prices are exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(pub i64);

/// Most of a currency that one price may be.
const MOST_MONEY: i64 = 100_000_000;

impl Money {
    /// This many times a price, rounded to the nearest hundredth.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        let most = MOST_MONEY as f64 * 100.0;
        // In range after clamping; a factor that is no number gives nothing.
        Self(libm::round((self.0 as f64 * factor).clamp(-most, most)) as i64)
    }
    /// Both together.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
    /// The number of the currency's whole units.
    #[must_use]
    pub fn number(self) -> f64 {
        self.0 as f64 / 100.0
    }
}

impl PropertyType for Money {
    const SHAPE: Shape = Shape::Text { example: "120.50" };
    fn print(&self) -> String {
        format!("{}.{:02}", self.0 / 100, self.0 % 100)
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let wrong = || PropertyError::new(say!("error-no-money", text = text, most = MOST_MONEY.to_string()));
        let (whole, part) = text.trim().split_once(['.', ',']).unwrap_or((text.trim(), ""));
        let digits = |text: &str| text.chars().all(|c| c.is_ascii_digit());
        if whole.is_empty() || part.len() > 2 || !digits(whole) || !digits(part) {
            return Err(wrong());
        }
        let whole: i64 = whole.parse().map_err(|_| wrong())?;
        let part: i64 = format!("{part:0<2}").parse().map_err(|_| wrong())?;
        let read = Self(whole.saturating_mul(100).saturating_add(part));
        PropertyType::check(&read, None).map(|()| read)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        if (0..=MOST_MONEY * 100).contains(&self.0) {
            return Ok(());
        }
        Err(PropertyError::new(say!(
            "error-no-money",
            text = self.print(),
            most = MOST_MONEY.to_string()
        )))
    }
}

/// Tags of complaints or offers, in order, written with a space between.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tags(pub Vec<String>);

impl PropertyType for Tags {
    const SHAPE: Shape = Shape::Text { example: "C1 C2" };
    fn print(&self) -> String {
        self.0.join(" ")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let read = Self(text.split_whitespace().map(str::to_owned).collect());
        PropertyType::check(&read, None).map(|()| read)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        String::check(&self.print(), None)?;
        self.0
            .iter()
            .try_for_each(|tag| crate::limits::check_tag(tag).map_err(PropertyError::new))
    }
}

/// A finding by what it says of which things: it is found again whenever the sheet is analysed, in whatever words.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct FindingRef {
    /// Name of the check.
    pub check: String,
    /// Tags of the parts and runs that it marks.
    pub things: Vec<String>,
}

/// Findings, written `silent-speaker LS4; load-too-low H1 LS5`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FindingRefs(pub Vec<FindingRef>);

/// Longest list of findings as written, in bytes.
const LONGEST_FINDINGS: usize = 4_000;

impl PropertyType for FindingRefs {
    const SHAPE: Shape = Shape::Text {
        example: "silent-speaker LS4; load-too-low H1",
    };
    fn print(&self) -> String {
        let all: Vec<String> = self
            .0
            .iter()
            .map(|finding| {
                let mut words = vec![finding.check.as_str()];
                words.extend(finding.things.iter().map(String::as_str));
                words.join(" ")
            })
            .collect();
        all.join("; ")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let all = text.split(';').filter_map(|one| {
            let mut words = one.split_whitespace().map(str::to_owned);
            Some(FindingRef {
                check: words.next()?,
                things: words.collect(),
            })
        });
        let read = Self(all.collect());
        PropertyType::check(&read, None).map(|()| read)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        if self.print().len() > LONGEST_FINDINGS {
            return Err(PropertyError::new(say!(
                "error-text-too-long",
                most = LONGEST_FINDINGS
            )));
        }
        for finding in &self.0 {
            let name = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
            if finding.check.is_empty() || !finding.check.chars().all(name) {
                return Err(PropertyError::new(say!(
                    "error-no-finding",
                    text = finding.check.as_str()
                )));
            }
            finding
                .things
                .iter()
                .try_for_each(|tag| crate::limits::check_tag(tag).map_err(PropertyError::new))?;
        }
        Ok(())
    }
}

properties! {
    /// What the customer came with, in his words.
    pub struct Complaint {
        /// Its tag: C1.
        tag as "tag": String = String::new();
        /// What the customer says.
        words as "what": String = String::new();
        /// When it happens, as far as he knows.
        moved as "happens-with": Fact<crate::laying::Moved> = Unknown;
        /// The findings that explain it.
        explained_by as "explained-by": FindingRefs = FindingRefs::default();
        /// Whether it is closed: mended and proven, or settled otherwise.
        closed as "closed": bool = false;
        /// How it was closed, or a remark.
        remark as "remark": String = String::new();
    }
}

properties! {
    /// A line of the condition record at intake, before any trim comes off.
    pub struct IntakeNote {
        /// Its tag, by which pictures are of it: I1. None where nobody gave it one.
        tag as "tag": String = String::new();
        /// Where: a tag, a place of the body, or in words.
        at as "where": String = String::new();
        /// What was seen there.
        words as "what": String = String::new();
        /// When it was recorded, as the user writes it.
        on as "date": String = String::new();
    }
}

choice! {
    /// How much something that is offered is needed.
    pub enum Need {
        Must = "must", "must";
        Should = "should", "should";
        Could = "could", "could";
    }
}

choice! {
    /// What the customer said to an offer.
    pub enum Decision {
        Open = "open", "not decided";
        Approved = "approved", "approved";
        Declined = "declined", "declined";
    }
}

properties! {
    /// A line of the quote: work that is offered, with what it costs and what the customer decided.
    pub struct Offer {
        /// Its tag: Q1.
        tag as "tag": String = String::new();
        /// What is to be done.
        words as "what": String = String::new();
        /// How much it is needed.
        need as "need": Need = Need::Should;
        /// The findings that it clears.
        clears as "clears": FindingRefs = FindingRefs::default();
        /// The complaints that it answers.
        answers as "answers": Tags = Tags::default();
        /// Price of all its parts.
        parts as "parts-price": Fact<Money> = Unknown;
        /// Hours of work.
        hours as "hours": Fact<Hours> = Unknown, 0.0 to 1000.0;
        /// What the customer decided.
        decision as "decision": Decision = Decision::Open;
        /// When he decided, and how he said so.
        decided_on as "decided-on": String = String::new();
        /// Whether it was found only after strip-out, and added to the quote.
        extra_work as "extra": bool = false;
        /// When it was added, as the user writes it.
        added_on as "added-on": String = String::new();
        /// Whether the work is done.
        done as "done": bool = false;
    }
}

properties! {
    /// The shop's own terms, as they stand in this job.
    pub struct Rates {
        /// Sign of the currency.
        currency as "currency": String = String::new();
        /// Price of an hour of work.
        hour as "hour-price": Fact<Money> = Unknown;
    }
}

impl Offer {
    /// What it costs: parts and work. `None` while a price or the hours are not known.
    #[must_use]
    pub fn price(&self, rates: &Rates) -> Option<Money> {
        let work = match self.hours.value()? {
            Hours(0.0) => Money(0),
            hours => rates.hour.value()?.times(hours.0),
        };
        Some(self.parts.value()?.plus(work))
    }
}

/// The whole thread of a job.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(default)
)]
pub struct Thread {
    /// The complaints, in the order in which they were heard.
    pub complaints: Vec<Complaint>,
    /// The condition record at intake.
    pub intake: Vec<IntakeNote>,
    /// The quote.
    pub offers: Vec<Offer>,
    /// The shop's terms.
    pub rates: Rates,
    /// Steps of checklists that are done, by the names that the lists give them.
    pub done: OrderedSet<String>,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

impl Thread {
    /// The same with a part or run called otherwise; `None` when nothing in it is about that one.
    #[must_use]
    pub(crate) fn renamed(&self, before: &str, after: &str) -> Option<Self> {
        let mut renamed = self.clone();
        let lists = renamed
            .complaints
            .iter_mut()
            .map(|complaint| &mut complaint.explained_by)
            .chain(renamed.offers.iter_mut().map(|offer| &mut offer.clears));
        let mut changed = false;
        let mut rename = |tag: &mut String| {
            if tag == before {
                after.clone_into(tag);
                changed = true;
            }
        };
        for finding in lists.flat_map(|list| &mut list.0) {
            finding.things.iter_mut().for_each(&mut rename);
        }
        renamed.intake.iter_mut().for_each(|note| rename(&mut note.at));
        changed.then_some(renamed)
    }
}
