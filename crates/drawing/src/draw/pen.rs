//! Puts items into a display list, with their boxes.

use crate::display::{Anchor, Detail, DisplayList, Ink, Item, Owner, Shape, Stroke};
use crate::letters::text_width;
use kurbo::{BezPath, Point, Rect, Shape as _};

/// A text to be written.
#[derive(Clone, Debug)]
pub(crate) struct Writing {
    pub(crate) text: String,
    pub(crate) at: Point,
    pub(crate) size: f64,
    pub(crate) anchor: Anchor,
    pub(crate) ink: Ink,
    pub(crate) bold: bool,
    pub(crate) halo: bool,
    pub(crate) upright: bool,
}

impl Writing {
    pub(crate) fn new(text: impl Into<String>, at: Point, size: f64, ink: Ink) -> Self {
        Self {
            text: text.into(),
            at,
            size,
            anchor: Anchor::Start,
            ink,
            bold: false,
            halo: false,
            upright: false,
        }
    }
    /// The box it covers: conservative width, ascent of 0.78 and descent of 0.22 of its size.
    pub(crate) fn area(&self) -> Rect {
        text_area(
            &self.text,
            self.at,
            self.size,
            self.anchor,
            self.bold,
            self.upright,
        )
    }
}

/// The box that a text covers: conservative width, ascent of 0.78 and descent of 0.22 of its size.
#[must_use]
pub fn text_area(text: &str, at: Point, size: f64, anchor: Anchor, bold: bool, upright: bool) -> Rect {
    let width = text_width(text, size, bold);
    let start = match anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -width / 2.0,
        Anchor::End => -width,
    };
    if upright {
        Rect::new(
            at.x - 0.78 * size,
            at.y - start - width,
            at.x + 0.22 * size,
            at.y - start,
        )
    } else {
        Rect::new(
            at.x + start,
            at.y - 0.78 * size,
            at.x + start + width,
            at.y + 0.22 * size,
        )
    }
}

/// Letters lower than this on screen are not written: they would be grey dust, in pixels.
pub(crate) const LEAST_LETTERS_PX: f64 = 6.2;

/// Collects items, leaving out details finer than the zoom shows and letters too small to be read.
pub(crate) struct Pen {
    shown: Detail,
    /// Least size of letters, in board units.
    least: f64,
    owner: Owner,
    list: DisplayList,
}

impl Pen {
    pub(crate) fn new(shown: Detail, zoom: f64) -> Self {
        Self {
            shown,
            // A little less, so that sizes made to be the least are not lost to rounding.
            least: (LEAST_LETTERS_PX - 0.01) / zoom.max(1e-6),
            owner: Owner::Sheet,
            list: DisplayList::default(),
        }
    }
    pub(crate) fn owner(&mut self, owner: Owner) {
        self.owner = owner;
    }
    pub(crate) fn shows(&self, detail: Detail) -> bool {
        detail <= self.shown
    }
    /// Whether letters of this size, in board units, are large enough on screen to be written.
    pub(crate) fn can_be_read(&self, size: f64) -> bool {
        size >= self.least
    }
    pub(crate) fn path(&mut self, detail: Detail, path: BezPath, fill: Option<Ink>, stroke: Option<Stroke>) {
        if !self.shows(detail) || path.elements().is_empty() {
            return;
        }
        let margin = stroke.map_or(0.0, |stroke| stroke.width / 2.0 + 0.5);
        // The box of the control points: cheap, and never too small.
        let bounds = path.control_box().inflate(margin, margin);
        self.list.items.push(Item {
            owner: self.owner,
            detail,
            bounds,
            shape: Shape::Path { path, fill, stroke },
        });
    }
    pub(crate) fn line(&mut self, detail: Detail, path: BezPath, ink: Ink, width: f64) {
        self.path(detail, path, None, Some(solid(ink, width)));
    }
    pub(crate) fn area(&mut self, detail: Detail, area: Rect, fill: Option<Ink>, stroke: Option<Stroke>) {
        // A rectangle is no curve: how close to it the path shall be does not matter.
        self.path(detail, area.to_path(0.1), fill, stroke);
    }
    pub(crate) fn write(&mut self, detail: Detail, writing: Writing) {
        if !self.shows(detail) || writing.text.is_empty() || !self.can_be_read(writing.size) {
            return;
        }
        let margin = if writing.halo { 2.0 } else { 0.0 };
        self.list.items.push(Item {
            owner: self.owner,
            detail,
            bounds: writing.area().inflate(margin, margin),
            shape: Shape::Text {
                text: writing.text,
                at: writing.at,
                size: writing.size,
                anchor: writing.anchor,
                ink: writing.ink,
                bold: writing.bold,
                halo: writing.halo,
                upright: writing.upright,
            },
        });
    }
    pub(crate) fn finish(self) -> DisplayList {
        self.list
    }
}

/// A stroke without dashes.
pub(crate) fn solid(ink: Ink, width: f64) -> Stroke {
    Stroke {
        ink,
        width,
        dash: None,
    }
}
