//! The sheet for copies and for the printer: whole, with frame and title block; and where its letters could not be read on one
//! page, its parts, each on a page of its own.

use crate::editor::Editor;
use drawing::{
    DisplayList, KEY_HEIGHT, LEAST_PRINTED, Look, PlanView, PrintSheet, draw, draw_key, draw_paper,
    draw_plan, scale_on, sheets, zoom_in_print,
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
/// Millimetres that a pixel of the frame has in print.
const PIXEL_MM: f64 = LEAST_PRINTED / LEAST_PX;

impl Editor {
    /// What is on the table, whole, for a copy: paper, frame, title block and drawing, with the overlay in force and nothing
    /// picked; and its bounds. With a sheet laid under, its key stands in the lower left corner.
    #[must_use]
    pub fn whole_sheet(&self) -> (DisplayList, Rect) {
        match self.plan_view() {
            Some(view) => {
                let zoom = self.camera.zoom;
                self.framed(&self.plan(view, zoom), view.bounds(), 1.0, false)
            }
            None => self.framed(&self.board(1.0), self.board_bounds(), 1.0, true),
        }
    }

    /// The same for the printer, on one page that lies, in letters that can be read; and where not everything can be written so,
    /// the parts of the drawing with all its detail.
    #[must_use]
    pub fn printed_sheets(&self) -> ((DisplayList, Rect), Vec<PrintSheet>) {
        // What frame and title block leave.
        let room = Size::new(
            PAGE.width - 2.0 * BESIDE * PIXEL_MM,
            PAGE.height - (BESIDE + BELOW) * PIXEL_MM,
        );
        if self.is_on_body()
            && let Some((view, zoom)) = self.plan_on(room)
        {
            let pixel = PIXEL_MM / scale_on(view.bounds(), room);
            // Numbers in marks are smaller than names: drawn for a smaller zoom they come out as large.
            let drawn = self.plan(&view, 0.72 * zoom);
            let whole = self.framed(&drawn, view.bounds(), pixel, false);
            // Its letters keep their size: parts of it would say no more.
            return (whole, Vec::new());
        }
        let (full, drawn) = (self.board(1.0), self.board_bounds());
        let scale = scale_on(drawn, room);
        let parts = sheets(&full, drawn.inflate(20.0, 20.0), PART);
        let list = if parts.is_empty() {
            full
        } else {
            self.board(zoom_in_print(scale))
        };
        (self.framed(&list, drawn, PIXEL_MM / scale, true), parts)
    }

    fn board_bounds(&self) -> Rect {
        self.seen_bounds().unwrap_or(Rect::new(0.0, 0.0, 800.0, 500.0))
    }

    /// How a copy is looked at: nothing picked.
    fn copied_look(&self, zoom: f64) -> Look {
        Look {
            overlay: self.overlay,
            marks: self.marks.clone(),
            lit: self.lit(),
            under: self.under.clone(),
            zoom,
            ..Look::default()
        }
    }

    fn board(&self, zoom: f64) -> DisplayList {
        let study = Some(&*self.analysis).map(|it| &it.study);
        draw(
            self.sheet(),
            &self.layout,
            study,
            &self.copied_look(zoom),
            self.board_bounds().inflate(400.0, 400.0),
        )
    }

    fn plan(&self, view: &PlanView, zoom: f64) -> DisplayList {
        draw_plan(view, self.sheet(), self.study_on_body(), &self.copied_look(zoom))
    }

    /// The body plan for so much room in millimetres, and its zoom.
    fn plan_on(&self, room: Size) -> Option<(PlanView, f64)> {
        let laid = body::lay(self.sheet(), &self.job.settings);
        let (body, look) = (&self.job.settings.body, self.copied_look(1.0));
        let made = PlanView::on_page(body, &laid, self.study_on_body(), &look, &self.words, room);
        made.map(|(view, look)| (view, look.zoom))
    }

    /// A drawing with paper, frame, title block and key; a pixel of those has so many board units.
    fn framed(&self, drawing: &DisplayList, drawn: Rect, pixel: f64, with_key: bool) -> (DisplayList, Rect) {
        let (beside, below) = (BESIDE * pixel, BELOW * pixel);
        let bounds = Rect::new(
            drawn.x0 - beside,
            drawn.y0 - beside,
            (drawn.x1 + beside).max(drawn.x0 + LEAST_WIDTH * pixel),
            drawn.y1 + below,
        );
        let mut list = draw_paper(bounds, 1.0 / pixel, &self.title_block());
        list.items.extend(drawing.items.iter().cloned());
        if let Some(under) = self.under.as_ref().filter(|_| with_key) {
            let corner = Point::new(bounds.x0 + 36.0 * pixel, bounds.y1 - (36.0 + KEY_HEIGHT) * pixel);
            let (key, _) = draw_key(under, corner, pixel);
            list.items.extend(key.items);
        }
        (list, bounds)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::actions::Action;

    /// 6 pt are 2.12 mm (1 pt is 1/72 in, 1 in is 25.4 mm).
    #[test]
    fn whatever_is_printed_has_letters_that_can_be_read() {
        for worked in lessons::WORKED_JOBS {
            let mut editor = Editor::new(worked.job());
            editor.resize(1440.0, 900.0, crate::Margins::default());
            for plan in [false, true] {
                if plan {
                    editor.perform(Action::BodyPlan);
                }
                let ((whole, area), parts) = editor.printed_sheets();
                let pages = parts.iter().map(|part| (&part.list, part.area, PART));
                let mut tags = 0;
                for (list, area, page) in pages.chain([(&whole, area, PAGE)]) {
                    let scale = scale_on(area, page);
                    for item in &list.items {
                        let drawing::Shape::Text { text, size, .. } = &item.shape else {
                            continue;
                        };
                        let printed = size * scale;
                        assert!(
                            printed > 0.97 * 2.12,
                            "{} {plan}: {text} has {printed} mm",
                            worked.key
                        );
                        tags += usize::from(editor.sheet().part_by_tag(text).is_some());
                    }
                }
                assert!(
                    tags >= editor.sheet().parts.len(),
                    "{}: every part has its tag",
                    worked.key
                );
            }
        }
    }
}
