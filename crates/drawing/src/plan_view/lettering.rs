//! How large letters on the plan are: large enough for the zoom at which it is looked at.
//!
//! On the board letters belong to the drawing and vanish when they become too small. A body plan is looked at as a whole,
//! on a tablet too, and without names it is a riddle: so its letters keep their size on the screen, and names and boxes are
//! laid out for that size.

use kurbo::Rect;

/// Letters of names, run labels, dimensions and the key, in pixels on screen.
pub(super) const NAME_PX: f64 = 10.0;
/// Letters of the tags of parts, in pixels on screen.
const TAG_PX: f64 = 12.0;
/// Steps in which letters grow while the zoom doubles: between two steps the drawing stays as it is.
const STEPS: f64 = 8.0;
/// Letters grow at most this much, in board units: further out they get smaller on screen, as everything else.
const MOST: f64 = 2.4;
/// And they become this much smaller at most.
const LEAST: f64 = 0.5;

/// Board units for a pixel, in steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lettering(f64);

impl Lettering {
    /// For a zoom in pixels for a board unit; one that is no number counts as 1.
    pub(super) fn at(zoom: f64) -> Self {
        let wanted = if zoom.is_finite() && zoom > 0.0 {
            1.0 / zoom
        } else {
            1.0
        };
        // Up to the next step, less what rounding of a fitted zoom gives and takes.
        let step = libm::ceil(libm::log2(wanted.clamp(LEAST, MOST)) * STEPS - 0.05);
        Self(libm::exp2(step / STEPS))
    }
    /// Whether letters of this size can be read at a zoom, and are no more than a step too large: what stands beside the car
    /// grows with them, and a plan that is shown as a whole must not waver between two sizes.
    pub(super) fn suits(self, zoom: f64) -> bool {
        let needed = Self::at(zoom).0;
        self.0 > 0.99 * needed && self.0 < 1.01 * needed * libm::exp2(1.0 / STEPS)
    }
    /// Size of names, run labels, dimensions and the key, in board units.
    pub(super) fn names(self) -> f64 {
        NAME_PX * self.0
    }
    /// Size of the tags of parts, in board units.
    pub(super) fn tags(self) -> f64 {
        TAG_PX * self.0
    }
}

/// The area that a text needs with some air, and with the tenth by which common faces are wider than those that the painters
/// ask for, where those are not there.
pub(super) fn roomy(text: Rect) -> Rect {
    text.inflate(0.05 * text.width() + 1.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_can_be_read_at_any_zoom_of_a_whole_car() {
        for step in 0..200 {
            let zoom = 0.5 + 0.0075 * f64::from(step);
            let lettering = Lettering::at(zoom);
            for (size, px) in [(lettering.names(), NAME_PX), (lettering.tags(), TAG_PX)] {
                let shown = size * zoom;
                assert!(shown > 0.99 * px && shown < 1.25 * px, "{zoom}: {shown}");
            }
        }
        for odd in [f64::NAN, 0.0, -1.0, f64::INFINITY, 1e-300, 1e300] {
            let names = Lettering::at(odd).names();
            assert!((4.0..=30.0).contains(&names), "{odd}: {names}");
        }
    }
}
