//! From sheet and layout to the display list.

mod marks;
mod overlay;
mod paper;
mod parts;
mod pen;
mod runs;

pub use paper::{TitleBlock, TitleCell, draw_paper, title_cells};

use crate::display::{Detail, DisplayList};
use crate::layout::Layout;
use crate::look::{Look, Overlay};
use circuit::Study;
use kurbo::{Point, Rect};
use model::Sheet;
use pen::Pen;
pub use pen::text_area;

/// Which details a zoom shows: numbers from 0.75 up, labels from 0.5, studs and symbols from 0.28, shapes always.
#[must_use]
pub fn detail_at(zoom: f64) -> Detail {
    if zoom >= 0.75 {
        Detail::Numbers
    } else if zoom >= 0.5 {
        Detail::Labels
    } else if zoom >= 0.28 {
        Detail::Studs
    } else {
        Detail::Shape
    }
}

/// Draws what of a sheet lies in the visible area, back to front: runs, then parts, then what is written on runs, then
/// marks.
#[must_use]
pub fn draw(
    sheet: &Sheet,
    layout: &Layout,
    study: Option<&Study>,
    look: &Look,
    visible: Rect,
) -> DisplayList {
    let mut pen = Pen::new(detail_at(look.zoom));
    let overlays = overlay::Overlays::new(sheet, study, look);
    runs::draw_runs(&mut pen, sheet, layout, &overlays, look, visible);
    parts::draw_parts(&mut pen, sheet, layout, study, look, visible);
    if look.overlay == Overlay::Voltage {
        parts::draw_voltages(&mut pen, layout, &overlays, look.zoom, visible);
    }
    marks::draw_marks(&mut pen, layout, look, visible);
    pen.finish()
}

/// The finding whose mark lies under a point, give or take the slop in board units.
#[must_use]
pub fn mark_at(layout: &Layout, look: &Look, at: Point, slop: f64) -> Option<u32> {
    let reach = marks::radius(look.zoom) + slop;
    marks::spots(layout, look)
        .into_iter()
        .rev()
        .find(|(_, spot)| spot.distance(at) <= reach)
        .map(|(mark, _)| mark.finding)
}

/// Where the mark of a finding stands; `None` when it speaks of nothing that is on the board.
#[must_use]
pub fn mark_spot(layout: &Layout, look: &Look, finding: u32) -> Option<Point> {
    marks::spots(layout, look)
        .into_iter()
        .find(|(mark, _)| mark.finding == finding)
        .map(|(_, spot)| spot)
}
