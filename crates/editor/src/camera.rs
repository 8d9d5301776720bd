//! Where the paper lies under the window. Screen points and board points are different types, so that one can never
//! be taken for the other.

use kurbo::{Point, Rect, Vec2};

/// A point of the window, in CSS pixels from the upper left corner of the drawing surface.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ScreenPoint {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl ScreenPoint {
    /// The point at these pixels.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
    /// How far another point is, in pixels.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        Vec2::new(self.x - other.x, self.y - other.y).hypot()
    }
    /// Half way to another point.
    #[must_use]
    pub fn middle(self, other: Self) -> Self {
        Self::new((self.x + other.x) / 2.0, (self.y + other.y) / 2.0)
    }
}

/// Strips of the window that belong to the frame, the notes and the title block, in pixels: a fitted drawing keeps
/// clear of them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Margins {
    /// At the left.
    pub left: f64,
    /// Above.
    pub top: f64,
    /// At the right.
    pub right: f64,
    /// Below.
    pub bottom: f64,
}

/// How the board is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// The board point under the window's upper left corner.
    pub origin: Point,
    /// Pixels for a board unit.
    pub zoom: f64,
    /// Width of the window in pixels.
    pub width: f64,
    /// Height of the window in pixels.
    pub height: f64,
    /// What the frame and the notes take.
    pub margins: Margins,
}

/// Least zoom: a sheet of 3,000 parts fits a window.
pub const LEAST_ZOOM: f64 = 0.04;
/// Furthest that the window may go, in board units; a job's own limit lies inside.
const FURTHEST: f64 = 1.2e6;
/// Largest zoom.
pub const MOST_ZOOM: f64 = 6.0;

impl Default for Camera {
    fn default() -> Self {
        Self {
            origin: Point::ZERO,
            zoom: 1.0,
            width: 1280.0,
            height: 800.0,
            margins: Margins::default(),
        }
    }
}

impl Camera {
    /// The board point under a screen point.
    #[must_use]
    pub fn to_board(&self, at: ScreenPoint) -> Point {
        Point::new(self.origin.x + at.x / self.zoom, self.origin.y + at.y / self.zoom)
    }
    /// Where a board point is on the screen.
    #[must_use]
    pub fn to_screen(&self, at: Point) -> ScreenPoint {
        ScreenPoint::new(
            (at.x - self.origin.x) * self.zoom,
            (at.y - self.origin.y) * self.zoom,
        )
    }
    /// The part of the board that the window shows.
    #[must_use]
    pub fn visible(&self) -> Rect {
        let corner = self.to_board(ScreenPoint::new(self.width, self.height));
        Rect::new(self.origin.x, self.origin.y, corner.x, corner.y)
    }
    /// The part of the window that frame and notes leave free, in pixels; never empty.
    #[must_use]
    pub fn free_area(&self) -> Rect {
        let left = self.margins.left.min(self.width * 0.45);
        let top = self.margins.top.min(self.height * 0.4);
        let right = (self.width - self.margins.right).max(left + 40.0);
        let bottom = (self.height - self.margins.bottom).max(top + 40.0);
        Rect::new(left, top, right, bottom)
    }
    /// The board point in the middle of the free area.
    #[must_use]
    pub fn middle(&self) -> Point {
        let free = self.free_area().center();
        self.to_board(ScreenPoint::new(free.x, free.y))
    }
    /// Shifts the paper by pixels.
    pub fn pan(&mut self, dx: f64, dy: f64) {
        if dx.is_finite() && dy.is_finite() {
            let moved = self.origin - Vec2::new(dx, dy) / self.zoom;
            // Beyond the board there is nothing to see.
            self.origin = Point::new(
                moved.x.clamp(-FURTHEST, FURTHEST),
                moved.y.clamp(-FURTHEST, FURTHEST),
            );
        }
    }
    /// Enlarges by a factor about a screen point, which stays where it is.
    pub fn zoom_about(&mut self, at: ScreenPoint, factor: f64) {
        if !factor.is_finite() || factor <= 0.0 {
            return;
        }
        let held = self.to_board(at);
        self.zoom = (self.zoom * factor).clamp(LEAST_ZOOM, MOST_ZOOM);
        self.origin = Point::new(held.x - at.x / self.zoom, held.y - at.y / self.zoom);
    }
    /// Shows all of a part of the board, in the middle of the free area and not larger than `most` pixels a unit.
    pub fn fit(&mut self, what: Rect, most: f64) {
        if !(what.width() + what.height()).is_finite() {
            return;
        }
        let free = self.free_area();
        let zoom = (free.width() / what.width().max(1.0)).min(free.height() / what.height().max(1.0));
        self.zoom = zoom.min(most).clamp(LEAST_ZOOM, MOST_ZOOM);
        self.origin = what.center() - free.center().to_vec2() / self.zoom;
    }
    /// Brings a part of the board into the free area, shifting no more than needed; a zoom too small to read is raised, as
    /// far as all of it stays in view.
    pub fn reveal(&mut self, what: Rect) {
        let free = self.free_area().inset(-24.0);
        if self.zoom < 0.55 {
            let middle = self.to_screen(what.center());
            let fits = (free.width() / what.width().max(1.0)).min(free.height() / what.height().max(1.0));
            let zoom = fits.min(0.9).max(self.zoom);
            self.zoom_about(middle, zoom / self.zoom);
        }
        let low = self.to_screen(what.origin());
        let high = self.to_screen(Point::new(what.x1, what.y1));
        let shift = |low: f64, high: f64, least: f64, most: f64| {
            if high - low > most - least {
                (least + most) / 2.0 - (low + high) / 2.0
            } else if low < least {
                least - low
            } else if high > most {
                most - high
            } else {
                0.0
            }
        };
        self.pan(
            shift(low.x, high.x, free.x0, free.x1),
            shift(low.y, high.y, free.y0, free.y1),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zooming_keeps_the_point_under_the_pointer() {
        let mut camera = Camera::default();
        let at = ScreenPoint::new(300.0, 200.0);
        let before = camera.to_board(at);
        for factor in [1.7, 0.2, 3.0, f64::NAN, 0.0, -1.0, 1e9, 1e-9] {
            camera.zoom_about(at, factor);
            assert!((camera.to_board(at) - before).hypot() < 1e-6, "{factor}");
            assert!((LEAST_ZOOM..=MOST_ZOOM).contains(&camera.zoom));
        }
    }

    #[test]
    fn fitting_shows_all_of_it_in_the_free_area() {
        let mut camera = Camera {
            margins: Margins {
                left: 40.0,
                top: 30.0,
                right: 300.0,
                bottom: 50.0,
            },
            ..Camera::default()
        };
        let what = Rect::new(-500.0, 100.0, 1500.0, 900.0);
        camera.fit(what, 2.0);
        let free = camera.free_area();
        let low = camera.to_screen(what.origin());
        let high = camera.to_screen(Point::new(what.x1, what.y1));
        assert!(low.x >= free.x0 - 1e-6 && high.x <= free.x1 + 1e-6);
        assert!(low.y >= free.y0 - 1e-6 && high.y <= free.y1 + 1e-6);
        camera.fit(Rect::new(0.0, 0.0, f64::NAN, 1.0), 2.0);
        assert!(camera.zoom.is_finite() && camera.origin.x.is_finite());
    }

    #[test]
    fn revealing_moves_no_more_than_needed() {
        let mut camera = Camera::default();
        let before = camera;
        camera.reveal(Rect::new(100.0, 100.0, 200.0, 200.0));
        assert_eq!(camera, before);
        camera.reveal(Rect::new(2000.0, 100.0, 2100.0, 200.0));
        assert!(camera.visible().contains(Point::new(2050.0, 150.0)));
        assert!((camera.origin.y - before.origin.y).abs() < 1e-9);
    }

    #[test]
    fn revealing_a_long_thing_from_afar_keeps_both_its_ends_in_view() {
        for (width, least) in [(100.0, 0.89), (1600.0, 0.2)] {
            let mut camera = Camera {
                zoom: 0.2,
                ..Camera::default()
            };
            let what = Rect::new(3000.0, 100.0, 3000.0 + width, 200.0);
            camera.reveal(what);
            assert_eq!(camera.visible().union(what), camera.visible(), "{width}");
            assert!(camera.zoom >= least, "{width}: {}", camera.zoom);
        }
    }
}
