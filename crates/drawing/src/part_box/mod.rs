//! Geometry of one part: outline sized from its content, studs on the outline where runs land, room for its texts.
//!
//! The outline is built on the grid of 10 about the part's point: symbol in the middle, a strip for stud names along
//! each side that has studs, and a block of text (tag, label, numbers) on the one side where the kind has no studs, so
//! that no lead ever crosses a text. Turning a part turns sides and symbol; texts stay upright.
//!
//! Room for numbers is kept by what they may grow to, not by what they are: the layout does not depend on the study.

mod build;
mod texts;

pub(crate) use texts::own_numbers;

use build::Builder;
use kurbo::{Affine, Point, Rect, Vec2};
use model::{BoardPoint, Part, Role, Side, TerminalName, Turn};

/// Grid on which parts, studs and wire ways stand, in board units.
pub const GRID: f64 = 10.0;
/// Least distance between two studs on a side, in board units.
pub const STUD_PITCH: f64 = 20.0;
/// Size of a tag's letters.
pub(crate) const TAG_SIZE: f64 = 12.0;
/// Size of a label's letters.
pub(crate) const LABEL_SIZE: f64 = 10.0;
/// Size of numbers.
pub(crate) const NUMBER_SIZE: f64 = 9.0;
/// Size of stud names.
pub(crate) const NAME_SIZE: f64 = 8.0;

/// A point of the outline where runs land.
#[derive(Clone, Debug, PartialEq)]
pub struct Stud {
    /// The terminal's name.
    pub name: TerminalName,
    /// Where it stands.
    pub at: Point,
    /// The direction in which a run leaves it: a unit vector away from the outline.
    pub out: Vec2,
    /// What it is for.
    pub role: Role,
    /// The side it stands on, turn included.
    pub side: Side,
}

/// How much a text of a part matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Weight {
    Tag,
    Label,
    Name,
}

/// A text of a part that does not depend on numbers.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Words {
    pub(crate) text: String,
    pub(crate) at: Point,
    pub(crate) size: f64,
    pub(crate) anchor: crate::Anchor,
    pub(crate) weight: Weight,
    pub(crate) upright: bool,
}

/// Room for a number.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slot {
    pub(crate) what: SlotFor,
    pub(crate) at: Point,
    pub(crate) anchor: crate::Anchor,
    pub(crate) width: f64,
    pub(crate) upright: bool,
}

/// What a slot is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum SlotFor {
    /// The part's own numbers.
    Part,
    /// What a channel sees.
    Channel(u8),
}

/// Geometry of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartBox {
    /// Its outline.
    pub outline: Rect,
    /// Its studs, in the order of the kind's terminals.
    pub studs: Vec<Stud>,
    pub(crate) symbol_at: Point,
    pub(crate) turn: Turn,
    pub(crate) words: Vec<Words>,
    pub(crate) slots: Vec<Slot>,
}

/// Where a side comes to lie when the part is turned.
pub(crate) fn turned_side(side: Side, turn: Turn) -> Side {
    let quarter = |side| match side {
        Side::Left => Side::Top,
        Side::Top => Side::Right,
        Side::Right => Side::Bottom,
        Side::Bottom => Side::Left,
    };
    match turn {
        Turn::None => side,
        Turn::Quarter => quarter(side),
        Turn::Half => quarter(quarter(side)),
        Turn::ThreeQuarters => quarter(quarter(quarter(side))),
    }
}

/// The turn as a map about the origin.
pub(crate) fn turning(turn: Turn) -> Affine {
    // Written out: a rotation by cosines would leave crumbs beside the grid.
    match turn {
        Turn::None => Affine::IDENTITY,
        Turn::Quarter => Affine::new([0.0, 1.0, -1.0, 0.0, 0.0, 0.0]),
        Turn::Half => Affine::new([-1.0, 0.0, 0.0, -1.0, 0.0, 0.0]),
        Turn::ThreeQuarters => Affine::new([0.0, -1.0, 1.0, 0.0, 0.0, 0.0]),
    }
}

/// The direction away from a side.
pub(crate) fn outward(side: Side) -> Vec2 {
    match side {
        Side::Left => Vec2::new(-1.0, 0.0),
        Side::Right => Vec2::new(1.0, 0.0),
        Side::Top => Vec2::new(0.0, -1.0),
        Side::Bottom => Vec2::new(0.0, 1.0),
    }
}

/// A board point as a point of the plane. What lies off the board, as a damaged sheet may have it, is taken to its edge,
/// so that no sum of lengths overflows.
#[must_use]
pub fn to_point(at: BoardPoint) -> Point {
    let edge = model::limits::FURTHEST;
    Point::new(
        f64::from(at.x.clamp(-edge, edge)),
        f64::from(at.y.clamp(-edge, edge)),
    )
}

impl PartBox {
    /// The geometry of a part whose middle stands at this point.
    #[must_use]
    pub fn of(part: &Part, at: Point) -> Self {
        Self::read_by(part, at, &words::Words::english())
    }
    /// The same for a reader: names and numbers take the room that they need in these words.
    #[must_use]
    pub fn read_by(part: &Part, at: Point, words: &words::Words) -> Self {
        Builder::new(part, words).build(at)
    }
    /// Its size, wherever it stands.
    #[must_use]
    pub fn size_of(part: &Part) -> kurbo::Size {
        Self::of(part, Point::ZERO).outline.size()
    }
    /// Where a terminal stands.
    #[must_use]
    pub fn stud(&self, name: &TerminalName) -> Option<&Stud> {
        self.studs.iter().find(|stud| &stud.name == name)
    }
    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Point {
        self.outline.center()
    }
}
