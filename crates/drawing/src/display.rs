//! The display list: what is drawn, in board units, back to front. The canvas and the SVG painter replay the same
//! list, so that what is printed or shared is what was on the screen. Colours are named, not numbered: the palette
//! in force turns them into light, dark or print colours.

use kurbo::{BezPath, Point, Rect};
use model::conductor::Colour;
use model::{PartId, RunId};

/// A named colour. A painter looks it up in its palette.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// The paper itself.
    Paper,
    /// Faint ruling.
    Ruling,
    /// Frame, zone letters, title block lines.
    Frame,
    /// Outlines and symbols.
    Line,
    /// Names and numbers.
    Text,
    /// Text that matters less.
    Faint,
    /// What is picked.
    Picked,
    /// What the pointer is over, and what is lit when one asks what feeds it.
    Lit,
    /// Fill of a part's outline.
    PartFill,
    /// A Stop mark.
    Stop,
    /// A Fix mark.
    Fix,
    /// A Tidy mark.
    Tidy,
    /// The thin outline that lets every insulation colour be seen on every paper.
    Casing,
    /// What steps back while something else is lit.
    Dimmed,
    /// The wash around what is new or changed against the sheet laid under.
    Wash,
    /// The edge of that wash, and the strokes that cross out.
    WashEdge,
    /// Insulation of a colour.
    Insulation(Colour),
    /// A step of the overlay ramp, 0 (low) to 255 (high).
    Ramp(u8),
    /// A hue of its own for the n-th thing, as for what a device guards.
    Hue(u8),
}

/// A line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// Its colour.
    pub ink: Ink,
    /// Its width in board units.
    pub width: f64,
    /// Lengths of dash and gap in board units.
    pub dash: Option<(f64, f64)>,
}

/// Where a text is tied to its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The text begins there.
    Start,
    /// Its middle stands there.
    Middle,
    /// It ends there.
    End,
}

/// What an item belongs to, for hit testing and dirty rectangles.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Owner {
    /// The sheet: ruling, frame, title block.
    Sheet,
    /// A part.
    Part(PartId),
    /// A run.
    Run(RunId),
    /// A part that is on the sheet laid under alone.
    UnderPart(PartId),
    /// A run that is on the sheet laid under alone.
    UnderRun(RunId),
    /// A finding, by its place in the list.
    Finding(u32),
    /// What the tool in hand shows.
    Tool,
}

/// Least zoom at which a detail is drawn; smaller zooms leave it out, so that the shape of the system remains.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Detail {
    /// Always.
    Shape,
    /// Symbols and studs.
    Studs,
    /// Tags and names.
    Labels,
    /// Numbers.
    Numbers,
}

/// One thing to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it belongs to.
    pub owner: Owner,
    /// From which zoom on it is drawn.
    pub detail: Detail,
    /// Everything it covers, stroke included.
    pub bounds: Rect,
    /// What it is.
    pub shape: Shape,
}

impl Item {
    /// What it says, and the box of its letters; nothing when it says nothing.
    #[must_use]
    pub fn written(&self) -> Option<(&str, Rect)> {
        match &self.shape {
            Shape::Text {
                text,
                at,
                size,
                anchor,
                bold,
                upright,
                ..
            } => Some((
                text,
                crate::draw::pen::text_area(text, *at, *size, *anchor, *bold, *upright),
            )),
            Shape::Path { .. } => None,
        }
    }
}

/// What an item is.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A path with an outline, a fill or both.
    Path {
        /// The path.
        path: BezPath,
        /// Its fill.
        fill: Option<Ink>,
        /// Its outline.
        stroke: Option<Stroke>,
    },
    /// A line of text.
    Text {
        /// The text.
        text: String,
        /// Where it stands: the baseline.
        at: Point,
        /// Height of the letters' body in board units.
        size: f64,
        /// How it is tied to the point.
        anchor: Anchor,
        /// Its colour.
        ink: Ink,
        /// Heavy letters.
        bold: bool,
        /// A halo of paper around it, so that it stays readable over lines.
        halo: bool,
        /// Turned a quarter anticlockwise, to be read from the right.
        upright: bool,
    },
}

/// What is drawn, back to front.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DisplayList {
    /// The items.
    pub items: Vec<Item>,
}
