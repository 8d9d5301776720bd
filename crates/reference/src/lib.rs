//! Published tables with their sources, and the few formulas that read them.
//!
//! Start at [`conductors`] and [`ampacity`] for wire, [`fuses`] for protection, [`protection`] for the limits that
//! checks hold things against. Every row says where it comes from and how it is known, see [`Source`].
//! *Invariant:* no function here panics, and none returns NaN for finite input.

pub mod ampacity;
pub mod audio;
pub mod battery;
pub mod body_metal;
pub mod breakers;
pub mod colours;
pub mod conductors;
pub mod contacts;
pub mod crimps;
pub mod fuses;
pub mod insulation;
mod interpolate;
pub mod jackets;
pub mod materials;
pub mod protection;

/// How a value is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// Seen in the document or in a copy of its table.
    Read,
    /// Recalled; the document was not at hand. Never a hard fact.
    Memory,
    /// Computed from values that are given elsewhere here.
    Derived,
    /// Common practice of the trade: no document stands behind it.
    Practice,
}

impl How {
    /// The words on screen.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Memory => "from memory",
            Self::Derived => "derived",
            Self::Practice => "common practice",
        }
    }
}

/// Where a value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Standard, clause or table, edition; or what it was derived from.
    pub document: &'static str,
    /// How it is known.
    pub how: How,
}

impl Source {
    /// A document whose table was seen.
    #[must_use]
    pub const fn read(document: &'static str) -> Self {
        Self {
            document,
            how: How::Read,
        }
    }
    /// A document that is recalled.
    #[must_use]
    pub const fn memory(document: &'static str) -> Self {
        Self {
            document,
            how: How::Memory,
        }
    }
    /// Computed by a stated formula.
    #[must_use]
    pub const fn derived(document: &'static str) -> Self {
        Self {
            document,
            how: How::Derived,
        }
    }
    /// A rule of the trade.
    #[must_use]
    pub const fn practice(document: &'static str) -> Self {
        Self {
            document,
            how: How::Practice,
        }
    }
}

impl std::fmt::Display for Source {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.how {
            How::Read => out.write_str(self.document),
            how => write!(out, "{} ({})", self.document, how.title()),
        }
    }
}

/// A typical value with the range it is met in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typical<T> {
    /// Lowest that is usual.
    pub least: T,
    /// Taken when nothing better is known; shown as assumed.
    pub usual: T,
    /// Highest that is usual.
    pub most: T,
    /// Where it comes from.
    pub source: Source,
}
