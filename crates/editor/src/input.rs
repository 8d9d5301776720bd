//! What reaches the editor from outside: pointers, keys and the wheel as plain values. A browser event is turned into
//! one of these at the very edge, so that every gesture can be replayed in a test.

use crate::camera::ScreenPoint;

/// What points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointerKind {
    /// A mouse or a touch pad.
    Mouse,
    /// A finger.
    Touch,
    /// A pen.
    Pen,
}

/// Which button went down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Button {
    /// The one that picks.
    Primary,
    /// The wheel.
    Middle,
    /// The other one.
    Secondary,
}

/// Keys held besides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Mods {
    /// Shift.
    pub shift: bool,
    /// Control, or Command where that is what people use.
    pub command: bool,
    /// Alt.
    pub alt: bool,
}

/// A pointer at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pointer {
    /// Tells fingers apart.
    pub id: i32,
    /// Where, in the window.
    pub at: ScreenPoint,
    /// What points.
    pub kind: PointerKind,
    /// Keys held.
    pub mods: Mods,
}

/// A key, by what it means and not by where it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Key {
    /// A letter, digit or sign, in lower case.
    Char(char),
    /// Return.
    Enter,
    /// Escape.
    Escape,
    /// Delete or Backspace.
    Delete,
    /// Arrow to the left.
    Left,
    /// Arrow to the right.
    Right,
    /// Arrow up.
    Up,
    /// Arrow down.
    Down,
    /// Home.
    Home,
    /// End.
    End,
    /// Page up.
    PageUp,
    /// Page down.
    PageDown,
    /// F2.
    F2,
    /// The space bar.
    Space,
}

/// One thing that happened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Input {
    /// A button or finger went down.
    Down(Pointer, Button),
    /// A pointer moved.
    Move(Pointer),
    /// A button or finger went up.
    Up(Pointer),
    /// A pressed pointer has stood still for the time that makes a long press. Whoever has a clock sends it.
    Held,
    /// The pointer left the drawing.
    Left,
    /// The pointer was taken away in the middle of a gesture.
    Lost,
    /// The wheel: pixels, and whether it enlarges instead of shifting.
    Wheel {
        /// Where.
        at: ScreenPoint,
        /// To the right.
        dx: f64,
        /// Downwards.
        dy: f64,
        /// Whether it enlarges.
        zooms: bool,
    },
    /// A key went down.
    Key(Key, Mods),
    /// A key went up; only the space bar matters.
    KeyUp(Key),
}

impl Input {
    /// Whether all its numbers are numbers of a size that a window can have.
    #[must_use]
    pub fn is_finite(&self) -> bool {
        let fine = |at: ScreenPoint| at.x.abs() < 1e6 && at.y.abs() < 1e6;
        match self {
            Self::Down(pointer, _) | Self::Move(pointer) | Self::Up(pointer) => fine(pointer.at),
            Self::Wheel { at, dx, dy, .. } => fine(*at) && fine(ScreenPoint::new(*dx, *dy)),
            Self::Held | Self::Left | Self::Lost | Self::Key(..) | Self::KeyUp(_) => true,
        }
    }
}
