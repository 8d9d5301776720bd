//! From sheet and layout to the display list.

mod overlay;
mod paper;
mod parts;
mod pen;
mod runs;

pub use paper::{TitleBlock, TitleCell, draw_paper, title_cells};

use crate::display::{Detail, DisplayList};
use crate::layout::Layout;
use crate::look::Look;
use circuit::Study;
use kurbo::Rect;
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
    pen.finish()
}
