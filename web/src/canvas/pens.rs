//! Replays display lists on a canvas. What is drawn is decided elsewhere; here it only has to cost little: strings for the
//! browser are made once, and the context is set only when it is set to something else.

use drawing::{Anchor, DisplayList, FONT_FAMILY, Ink, Palette, Shape, Stroke, text_width};
use js_sys::Reflect;
use kurbo::{BezPath, PathEl, Point, Rect};
use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d;

/// Letters lower than this on screen cannot be read; they are not painted, in CSS pixels.
const LEAST_LETTER_PX: f64 = 4.5;
/// Most fonts that are kept; sizes that follow the zoom would add up.
const MOST_FONTS: usize = 48;

/// How a part of the board lies on a canvas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Lie {
    /// The board point under the canvas's upper left corner.
    pub(crate) origin: Point,
    /// Device pixels for a board unit.
    pub(crate) scale: f64,
    /// Device pixels for a CSS pixel.
    pub(crate) ratio: f64,
}

impl Lie {
    pub(crate) fn set(&self, context: &CanvasRenderingContext2d) {
        let (x, y) = (-self.origin.x * self.scale, -self.origin.y * self.scale);
        let _ = context.set_transform(self.scale, 0.0, 0.0, self.scale, x, y);
    }
}

/// Sets a context; remembers what it is set to, because setting it costs more than comparing.
#[derive(Default)]
pub(crate) struct Pens {
    inks: Vec<(Ink, JsValue)>,
    fonts: Vec<((i64, bool), JsValue)>,
    names: Option<[JsValue; 3]>,
    fill: Option<Ink>,
    stroke: Option<Ink>,
    width: Option<f64>,
    dash: Option<Option<(f64, f64)>>,
    font: Option<(i64, bool)>,
    align: Option<Anchor>,
}

impl Pens {
    /// The context was set to something else.
    pub(crate) fn forget(&mut self) {
        (self.fill, self.stroke, self.width) = (None, None, None);
        (self.dash, self.font, self.align) = (None, None, None);
    }
    /// Sets what never changes.
    pub(crate) fn begin(&mut self, context: &CanvasRenderingContext2d) {
        self.forget();
        context.set_line_join("round");
        context.set_line_cap("butt");
        context.set_text_baseline("alphabetic");
    }

    /// Paints those items of a list whose box is wanted.
    pub(crate) fn replay(
        &mut self,
        context: &CanvasRenderingContext2d,
        list: &DisplayList,
        palette: &Palette,
        lie: &Lie,
        wanted: impl Fn(Rect) -> bool,
    ) {
        for item in list.items.iter().filter(|item| wanted(item.bounds)) {
            match &item.shape {
                Shape::Path { path, fill, stroke } => {
                    trace(context, path);
                    if let Some(fill) = fill {
                        self.set_fill(context, *fill, palette);
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
                    if size * lie.scale < LEAST_LETTER_PX * lie.ratio {
                        continue;
                    }
                    self.set_text(context, *size, *bold, *anchor);
                    // Whatever face a machine has, its letters keep to the room that was reckoned for them.
                    let width = text_width(text, *size, *bold);
                    let (mut x, mut y) = (at.x, at.y);
                    if *upright {
                        // A quarter turn anticlockwise about the point.
                        let scale = lie.scale;
                        let corner = (*at - lie.origin) * scale;
                        let _ = context.set_transform(0.0, -scale, scale, 0.0, corner.x, corner.y);
                        (x, y) = (0.0, 0.0);
                    }
                    if *halo {
                        let paper = Stroke {
                            ink: Ink::Paper,
                            width: size * 0.3,
                            dash: None,
                        };
                        self.set_stroke(context, &paper, palette);
                        let _ = context.stroke_text_with_max_width(text, x, y, width);
                    }
                    self.set_fill(context, *ink, palette);
                    let _ = context.fill_text_with_max_width(text, x, y, width);
                    if *upright {
                        lie.set(context);
                    }
                }
            }
        }
    }

    /// The property of a context by its number: fill, stroke, font.
    fn put(&mut self, context: &CanvasRenderingContext2d, name: usize, value: &JsValue) {
        let names = self
            .names
            .get_or_insert_with(|| ["fillStyle", "strokeStyle", "font"].map(JsValue::from_str));
        if let Some(name) = names.get(name) {
            let _ = Reflect::set(context, name, value);
        }
    }
    fn colour(&mut self, ink: Ink, palette: &Palette) -> JsValue {
        match self.inks.binary_search_by(|(other, _)| other.cmp(&ink)) {
            Ok(place) => self
                .inks
                .get(place)
                .map_or(JsValue::NULL, |(_, colour)| colour.clone()),
            Err(place) => {
                let colour = JsValue::from_str(palette.ink(ink));
                self.inks.insert(place, (ink, colour.clone()));
                colour
            }
        }
    }
    pub(crate) fn set_fill(&mut self, context: &CanvasRenderingContext2d, ink: Ink, palette: &Palette) {
        if self.fill != Some(ink) {
            let colour = self.colour(ink, palette);
            self.put(context, 0, &colour);
            self.fill = Some(ink);
        }
    }
    fn set_stroke(&mut self, context: &CanvasRenderingContext2d, stroke: &Stroke, palette: &Palette) {
        if self.stroke != Some(stroke.ink) {
            let colour = self.colour(stroke.ink, palette);
            self.put(context, 1, &colour);
            self.stroke = Some(stroke.ink);
        }
        if self.width != Some(stroke.width) {
            context.set_line_width(stroke.width);
            self.width = Some(stroke.width);
        }
        if self.dash != Some(stroke.dash) {
            let dash = match stroke.dash {
                Some((dash, gap)) => js_sys::Array::of2(&dash.into(), &gap.into()),
                None => js_sys::Array::new(),
            };
            let _ = context.set_line_dash(&dash);
            self.dash = Some(stroke.dash);
        }
    }
    fn set_text(&mut self, context: &CanvasRenderingContext2d, size: f64, bold: bool, anchor: Anchor) {
        #[expect(clippy::cast_possible_truncation, reason = "a letter size, only compared")]
        let font = ((size * 16.0) as i64, bold);
        if self.font != Some(font) {
            let held = self.fonts.iter().find(|(held, _)| *held == font);
            let value = match held {
                Some((_, value)) => value.clone(),
                None => {
                    let weight = if bold { "bold " } else { "" };
                    let value = JsValue::from_str(&format!("{weight}{size}px {FONT_FAMILY}"));
                    if self.fonts.len() >= MOST_FONTS {
                        self.fonts.clear();
                    }
                    self.fonts.push((font, value.clone()));
                    value
                }
            };
            self.put(context, 2, &value);
            self.font = Some(font);
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
