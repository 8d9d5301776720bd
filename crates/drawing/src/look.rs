//! How a sheet is to be looked at: the overlay in force, what is picked, hovered and lit, the findings' marks, the
//! zoom. Plain values; the drawing is a function of them.

use crate::display::Owner;
use crate::under::Under;
use kurbo::Rect;
use model::{PartId, RunId};
use ordered::OrderedSet;
use std::sync::Arc;
use words::{Saying, say};

/// Tracing paper laid over the drawing. One at a time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Overlay {
    /// Nothing: insulation colours.
    #[default]
    None,
    /// Amps on every run, arrowheads by direction, width by load over limit.
    Current,
    /// Volts at the terminals.
    Voltage,
    /// Temperature of the conductors.
    Heat,
    /// Each conductor in the hue of the device that guards it.
    Protection,
    /// Signal and turn-on leads.
    Signal,
    /// Speaker circuits: what each channel sees, what each speaker gets.
    Speakers,
}

impl Overlay {
    /// All of them, in the order of their keys; the first is none.
    pub const ALL: &'static [Self] = &[
        Self::None,
        Self::Current,
        Self::Voltage,
        Self::Heat,
        Self::Protection,
        Self::Signal,
        Self::Speakers,
    ];
    /// The word on screen.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::None => "No overlay",
            Self::Current => "Current",
            Self::Voltage => "Voltage",
            Self::Heat => "Heat",
            Self::Protection => "Protection",
            Self::Signal => "Signal",
            Self::Speakers => "Speakers",
        }
    }
    /// The same, in the reader's language.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::None => say!("overlay-none"),
            Self::Current => say!("overlay-current"),
            Self::Voltage => say!("overlay-voltage"),
            Self::Heat => say!("overlay-heat"),
            Self::Protection => say!("overlay-protection"),
            Self::Signal => say!("overlay-signal"),
            Self::Speakers => say!("overlay-speakers"),
        }
    }
}

/// What is lit because one asked what feeds it. When it is not empty, everything else steps back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lit {
    /// Parts of the circuit.
    pub parts: OrderedSet<PartId>,
    /// Runs of the circuit.
    pub runs: OrderedSet<RunId>,
}

impl Lit {
    /// True when nothing is lit.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.parts.is_empty() && self.runs.is_empty()
    }
}

/// Shape of a finding's mark: grades differ by shape, never by colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MarkShape {
    /// Stop: a filled octagon.
    Octagon,
    /// Fix: an open triangle.
    Triangle,
    /// Tidy: a small dot.
    Dot,
}

/// A finding's mark on the drawing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// The finding's place in the list.
    pub finding: u32,
    /// Its shape.
    pub shape: MarkShape,
    /// Parts it speaks of; the mark stands at the first, the others get a thin ring.
    pub parts: Vec<PartId>,
    /// Runs it speaks of.
    pub runs: Vec<RunId>,
    /// Places and passages of the body that it speaks of, by their written names: on the body plan the mark stands there.
    pub spots: Vec<String>,
    /// A short text inside or beside it, such as the finding's number.
    pub label: String,
}

/// How a sheet is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// The overlay in force.
    pub overlay: Overlay,
    /// What is picked.
    pub picked: OrderedSet<Owner>,
    /// What the pointer is over.
    pub hovered: Option<Owner>,
    /// What is lit.
    pub lit: Lit,
    /// Marks of findings.
    pub marks: Vec<Mark>,
    /// The sheet laid under.
    pub under: Option<Arc<Under>>,
    /// What lies over the drawing, in small boxes: numbers of an overlay keep clear of it.
    pub covered: Vec<Rect>,
    /// Screen pixels for a board unit.
    pub zoom: f64,
}

impl Default for Look {
    fn default() -> Self {
        Self {
            overlay: Overlay::None,
            picked: OrderedSet::new(),
            hovered: None,
            lit: Lit::default(),
            marks: Vec::new(),
            under: None,
            covered: Vec::new(),
            zoom: 1.0,
        }
    }
}
