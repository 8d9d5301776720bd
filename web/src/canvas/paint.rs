//! The canvas painter. It only replays the display list: what is drawn is decided elsewhere.

use drawing::{Anchor, DisplayList, FONT_FAMILY, Ink, Palette, Shape, Stroke, TitleBlock, draw_paper};
use editor::Editor;
use kurbo::{BezPath, PathEl, Rect};
use web_sys::CanvasRenderingContext2d;

/// Distance of the frame from the edge of the window, in CSS pixels.
const FRAME_PX: f64 = 22.0;

/// A canvas to paint on.
#[derive(Clone)]
pub(crate) struct Surface {
    pub(crate) context: CanvasRenderingContext2d,
    /// Device pixels for a CSS pixel.
    pub(crate) ratio: f64,
    /// Width in CSS pixels.
    pub(crate) width: f64,
    /// Height in CSS pixels.
    pub(crate) height: f64,
}

/// Paints; remembers what the context is set to, because setting it costs more than comparing.
#[derive(Clone, Default)]
pub(crate) struct Painter {
    fill: String,
    stroke: String,
    width: f64,
    dash: Option<(f64, f64)>,
    font: (i64, bool),
    align: Option<Anchor>,
}

impl Painter {
    /// Paints the sheet as the editor shows it.
    pub(crate) fn paint(&mut self, surface: &Surface, editor: &Editor, palette: &Palette) {
        let camera = editor.camera();
        let paper = draw_paper(camera.visible(), camera.zoom, &TitleBlock::default());
        self.begin(surface, palette);
        let scale = surface.ratio * camera.zoom;
        let (x, y) = (-camera.origin.x * scale, -camera.origin.y * scale);
        let _ = surface.context.set_transform(scale, 0.0, 0.0, scale, x, y);
        self.replay(&surface.context, &paper, palette, camera.visible());
        // What is drawn stays inside the frame, as on any sheet.
        surface.context.save();
        surface.context.begin_path();
        let inner = camera.visible().inset(-FRAME_PX / camera.zoom);
        surface
            .context
            .rect(inner.x0, inner.y0, inner.width(), inner.height());
        surface.context.clip();
        self.replay(&surface.context, &editor.picture(), palette, camera.visible());
        surface.context.restore();
    }
    /// Paints one display list on a surface of its own, a part of the board filling it.
    pub(crate) fn paint_list(
        &mut self,
        surface: &Surface,
        list: &DisplayList,
        palette: &Palette,
        area: Rect,
    ) {
        self.begin(surface, palette);
        let scale = surface.ratio * surface.width / area.width().max(1.0);
        let _ = surface
            .context
            .set_transform(scale, 0.0, 0.0, scale, -area.x0 * scale, -area.y0 * scale);
        self.replay(&surface.context, list, palette, area);
    }

    fn begin(&mut self, surface: &Surface, palette: &Palette) {
        let context = &surface.context;
        *self = Self::default();
        let _ = context.set_transform(surface.ratio, 0.0, 0.0, surface.ratio, 0.0, 0.0);
        context.set_fill_style_str(palette.ink(Ink::Paper));
        context.fill_rect(0.0, 0.0, surface.width, surface.height);
        context.set_line_join("round");
        context.set_line_cap("butt");
        let _ = context.set_line_dash(&js_sys::Array::new());
        context.set_text_baseline("alphabetic");
    }

    fn replay(
        &mut self,
        context: &CanvasRenderingContext2d,
        list: &DisplayList,
        palette: &Palette,
        visible: Rect,
    ) {
        for item in &list.items {
            if item.bounds.x1 < visible.x0
                || item.bounds.x0 > visible.x1
                || item.bounds.y1 < visible.y0
                || item.bounds.y0 > visible.y1
            {
                continue;
            }
            match &item.shape {
                Shape::Path { path, fill, stroke } => {
                    trace(context, path);
                    if let Some(fill) = fill {
                        self.set_fill(context, palette.ink(*fill));
                        context.fill();
                    }
                    if let Some(stroke) = stroke {
                        self.set_stroke(context, stroke, palette);
                        context.stroke();
                    }
                }
                Shape::Text {
                    text,
                    at,
                    size,
                    anchor,
                    ink,
                    bold,
                    halo,
                    upright,
                } => {
                    self.set_text(context, *size, *bold, *anchor);
                    let (mut x, mut y) = (at.x, at.y);
                    let before = upright.then(|| self.clone());
                    if *upright {
                        context.save();
                        let _ = context.translate(x, y);
                        let _ = context.rotate(-std::f64::consts::FRAC_PI_2);
                        (x, y) = (0.0, 0.0);
                    }
                    if *halo {
                        self.set_stroke(
                            context,
                            &Stroke {
                                ink: Ink::Paper,
                                width: size * 0.3,
                                dash: None,
                            },
                            palette,
                        );
                        let _ = context.stroke_text(text, x, y);
                    }
                    self.set_fill(context, palette.ink(*ink));
                    let _ = context.fill_text(text, x, y);
                    if let Some(before) = before {
                        // The context forgets what was set between, and so must this.
                        context.restore();
                        *self = before;
                    }
                }
            }
        }
    }

    fn set_fill(&mut self, context: &CanvasRenderingContext2d, colour: &str) {
        if self.fill != colour {
            context.set_fill_style_str(colour);
            colour.clone_into(&mut self.fill);
        }
    }
    fn set_stroke(&mut self, context: &CanvasRenderingContext2d, stroke: &Stroke, palette: &Palette) {
        let colour = palette.ink(stroke.ink);
        if self.stroke != colour {
            context.set_stroke_style_str(colour);
            colour.clone_into(&mut self.stroke);
        }
        if self.width != stroke.width {
            context.set_line_width(stroke.width);
            self.width = stroke.width;
        }
        if self.dash != stroke.dash {
            let dash = match stroke.dash {
                Some((dash, gap)) => js_sys::Array::of2(&dash.into(), &gap.into()),
                None => js_sys::Array::new(),
            };
            let _ = context.set_line_dash(&dash);
            self.dash = stroke.dash;
        }
    }
    fn set_text(&mut self, context: &CanvasRenderingContext2d, size: f64, bold: bool, anchor: Anchor) {
        #[expect(clippy::cast_possible_truncation, reason = "a letter size, only compared")]
        let font = ((size * 16.0) as i64, bold);
        if self.font != font {
            let weight = if bold { "bold " } else { "" };
            context.set_font(&format!("{weight}{size}px {FONT_FAMILY}"));
            self.font = font;
        }
        if self.align != Some(anchor) {
            context.set_text_align(match anchor {
                Anchor::Start => "left",
                Anchor::Middle => "center",
                Anchor::End => "right",
            });
            self.align = Some(anchor);
        }
    }
}

fn trace(context: &CanvasRenderingContext2d, path: &BezPath) {
    context.begin_path();
    for element in path.elements() {
        match element {
            PathEl::MoveTo(p) => context.move_to(p.x, p.y),
            PathEl::LineTo(p) => context.line_to(p.x, p.y),
            PathEl::QuadTo(a, p) => context.quadratic_curve_to(a.x, a.y, p.x, p.y),
            PathEl::CurveTo(a, b, p) => context.bezier_curve_to(a.x, a.y, b.x, b.y, p.x, p.y),
            PathEl::ClosePath => context.close_path(),
        }
    }
}
