//! The sheet for copies and for the printer: whole, with frame and title block; and where its letters could not be read on one
//! page, its parts, each on a page of its own.

use crate::editor::Editor;
use drawing::{
    DisplayList, KEY_HEIGHT, LEAST_PRINTED, Look, PrintSheet, draw, draw_key, draw_paper, scale_on, sheets,
    zoom_in_print,
};
use kurbo::{Point, Rect, Size};

/// Room on a page that lies, in millimetres: what both A4 and Letter have between the margins of the style sheet.
const PAGE: Size = Size::new(263.0, 188.0);
/// The same for a part, over which nothing stands but a line below it.
const PART: Size = Size::new(263.0, 178.0);
/// Room for the frame beside and above the drawing, and below it for the title block, in pixels.
const BESIDE: f64 = 70.0;
const BELOW: f64 = 230.0;
/// Least width within the frame, in pixels.
const LEAST_WIDTH: f64 = 520.0;
/// Smallest letters of frame, title block and key, in pixels.
const LEAST_PX: f64 = 8.0;

impl Editor {
    /// The whole sheet for a copy: paper, frame, title block and drawing, with the overlay in force and nothing picked. And
    /// its bounds. With a sheet laid under, its key stands in the lower left corner. Of the body plan, while it is on the table.
    #[must_use]
    pub fn whole_sheet(&self) -> (DisplayList, Rect) {
        self.framed(1.0, 1.0)
    }

    /// The same for the printer, on one page that lies, in letters that can be read; and where not everything can be written so,
    /// the parts of the drawing with all its detail.
    #[must_use]
    pub fn printed_sheets(&self) -> ((DisplayList, Rect), Vec<PrintSheet>) {
        let drawn = self.drawn_bounds();
        let pixel_mm = LEAST_PRINTED / LEAST_PX;
        // What frame and title block leave.
        let room = Size::new(
            PAGE.width - 2.0 * BESIDE * pixel_mm,
            PAGE.height - (BESIDE + BELOW) * pixel_mm,
        );
        let scale = scale_on(drawn, room);
        let (full, area) = (self.drawn(1.0, drawn), drawn.inflate(20.0, 20.0));
        let parts = if self.is_on_body() {
            // Its letters keep their size: it has no parts that say more.
            Vec::new()
        } else {
            sheets(&full, area, PART)
        };
        let zoom = if parts.is_empty() {
            1.0
        } else {
            zoom_in_print(scale)
        };
        (self.framed(zoom, pixel_mm / scale), parts)
    }

    fn drawn_bounds(&self) -> Rect {
        let plan = self.plan_view().map(drawing::PlanView::bounds);
        plan.or_else(|| self.seen_bounds())
            .unwrap_or(Rect::new(0.0, 0.0, 800.0, 500.0))
    }

    /// The drawing alone, within these bounds, at this zoom.
    fn drawn(&self, zoom: f64, bounds: Rect) -> DisplayList {
        let look = Look {
            overlay: self.overlay,
            marks: self.marks.clone(),
            lit: self.lit(),
            under: self.under.clone(),
            zoom,
            ..Look::default()
        };
        if let Some(plan) = self.body_picture(&Look {
            zoom: self.camera.zoom,
            ..look.clone()
        }) {
            return plan;
        }
        draw(
            self.sheet(),
            &self.layout,
            Some(&self.analysis.study),
            &look,
            bounds,
        )
    }

    /// Paper, frame, title block and drawing at a zoom; a pixel of the frame has so many board units.
    fn framed(&self, zoom: f64, pixel: f64) -> (DisplayList, Rect) {
        let drawn = self.drawn_bounds();
        let (beside, below) = (BESIDE * pixel, BELOW * pixel);
        let bounds = Rect::new(
            drawn.x0 - beside,
            drawn.y0 - beside,
            (drawn.x1 + beside).max(drawn.x0 + LEAST_WIDTH * pixel),
            drawn.y1 + below,
        );
        let mut list = draw_paper(bounds, 1.0 / pixel, &self.title_block());
        list.items.extend(self.drawn(zoom, bounds).items);
        if let Some(under) = self.under.as_ref().filter(|_| !self.is_on_body()) {
            let corner = Point::new(bounds.x0 + 36.0 * pixel, bounds.y1 - (36.0 + KEY_HEIGHT) * pixel);
            let (key, _) = draw_key(under, corner, pixel);
            list.items.extend(key.items);
        }
        (list, bounds)
    }
}
