//! Room on the plan: what is taken already.

use crate::index::Index;
use kurbo::Rect;

/// Boxes that others keep clear of.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Taken {
    index: Index<usize>,
    count: usize,
    bounds: Option<Rect>,
}

impl Taken {
    /// Takes an area.
    pub(super) fn take(&mut self, area: Rect) {
        self.index.insert(area, self.count);
        self.count += 1;
        self.bounds = Some(self.bounds.map_or(area, |all| all.union(area)));
    }
    /// Whether nothing lies in an area.
    pub(super) fn is_free(&self, area: Rect) -> bool {
        !self.index.any_near(area, |_, other| other.overlaps(area))
    }
    /// Takes the area when nothing lies in it.
    pub(super) fn take_if_free(&mut self, area: Rect) -> bool {
        let free = self.is_free(area);
        if free {
            self.take(area);
        }
        free
    }
    /// The box around all that is taken.
    pub(super) fn bounds(&self) -> Option<Rect> {
        self.bounds
    }
}
