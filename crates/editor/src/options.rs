//! The numbers that decide how gestures feel, in one table, units in the names.

use crate::input::PointerKind;

/// How gestures feel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// How far a pressed mouse may wander before it drags.
    pub mouse_slop_px: f64,
    /// The same for a finger.
    pub touch_slop_px: f64,
    /// How near a mouse must come to a thing to take it.
    pub mouse_reach_px: f64,
    /// The same for a finger: half of a 44 px target.
    pub touch_reach_px: f64,
    /// Parts stand on a grid of this many board units.
    pub grid_units: f64,
    /// How near a carried part's middle must come to another's to line up with it.
    pub align_units: f64,
    /// How long a finger must rest to be a long press; kept here for whoever has a clock.
    pub long_press_ms: u32,
    /// How much one notch of the wheel enlarges, per pixel of its travel.
    pub wheel_zoom_per_px: f64,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            mouse_slop_px: 4.0,
            touch_slop_px: 10.0,
            mouse_reach_px: 8.0,
            touch_reach_px: 22.0,
            grid_units: 10.0,
            align_units: 7.0,
            long_press_ms: 500,
            wheel_zoom_per_px: 0.0016,
        }
    }
}

impl Options {
    /// How far this pointer may wander before it drags.
    #[must_use]
    pub fn slop_px(&self, kind: PointerKind) -> f64 {
        match kind {
            PointerKind::Touch => self.touch_slop_px,
            PointerKind::Mouse | PointerKind::Pen => self.mouse_slop_px,
        }
    }
    /// How near this pointer must come.
    #[must_use]
    pub fn reach_px(&self, kind: PointerKind) -> f64 {
        match kind {
            PointerKind::Touch => self.touch_reach_px,
            PointerKind::Mouse | PointerKind::Pen => self.mouse_reach_px,
        }
    }
}
