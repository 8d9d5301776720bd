//! The painter of the board. It keeps a finished picture of everything that stays where it is, on a canvas of its own. A
//! step of a drag copies back what the last step covered and paints what moves on top; a pan shifts the kept picture and
//! paints only the strips that come into view; what is picked or under the pointer is painted anew where it lies. Zoom,
//! edits and overlays paint all of it.

use super::pens::{Lie, Pens};
use crate::browser;
use drawing::{
    Cut, DisplayList, Ink, Item, Overlay, Owner, Palette, Shape, TitleBlock, Which, areas_of, draw_paper,
};
use editor::{Camera, Editor, Seen};
use kurbo::{Rect, Vec2};
use ordered::OrderedSet;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Distance of the frame from the edge of the window, in CSS pixels.
const FRAME_PX: f64 = 22.0;
/// Width of the band along the edge that holds the frame and its line and does not move with the paper, in CSS pixels.
const BAND_PX: f64 = FRAME_PX + 2.0;
/// With more rectangles than this it is quicker to take the whole picture.
const MOST_AREAS: usize = 300;

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

impl Surface {
    /// A canvas as large as it stands on the page, in device pixels; nothing where it cannot be painted on.
    pub(crate) fn of(canvas: &HtmlCanvasElement) -> Option<Self> {
        let ratio = browser::window()?.device_pixel_ratio().clamp(1.0, 3.0);
        let (width, height) = (
            f64::from(canvas.client_width()),
            f64::from(canvas.client_height()),
        );
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "an element's size in pixels"
        )]
        let device = |css: f64| (css * ratio).round().clamp(1.0, 16_384.0) as u32;
        canvas.set_width(device(width));
        canvas.set_height(device(height));
        let context = canvas.get_context("2d").ok()??;
        Some(Self {
            context: context.dyn_into().ok()?,
            ratio,
            width,
            height,
        })
    }
    fn lie(&self, camera: &Camera) -> Lie {
        Lie {
            origin: camera.origin,
            scale: self.ratio * camera.zoom,
            ratio: self.ratio,
        }
    }
    /// All of it, in device pixels.
    fn whole(&self) -> Rect {
        Rect::new(
            0.0,
            0.0,
            (self.width * self.ratio).ceil(),
            (self.height * self.ratio).ceil(),
        )
    }
}

/// The picture of what stays, and of what it is the picture.
struct Kept {
    canvas: HtmlCanvasElement,
    surface: Surface,
    pens: Pens,
    shown: Option<(Camera, Seen)>,
}

/// What of the kept picture is out of date.
enum Stale {
    Nothing,
    /// These areas of the board.
    Areas(Vec<Rect>),
    /// The paper moved by whole device pixels.
    Shifted(Vec2),
    All,
}

/// Paints, and remembers what it painted.
#[derive(Default)]
pub(crate) struct Painter {
    pens: Pens,
    kept: Option<Kept>,
    /// What the last frame painted over the kept picture, in device pixels.
    covered: Vec<Rect>,
}

impl Painter {
    /// Another job, palette or canvas: nothing kept is of use.
    pub(crate) fn forget(&mut self) {
        *self = Self::default();
    }

    /// Paints the sheet as the editor shows it.
    pub(crate) fn paint(&mut self, surface: &Surface, editor: &Editor, palette: &Palette) {
        if self.kept.is_none() {
            self.kept = Kept::new(surface);
        }
        let camera = *editor.camera();
        let lie = surface.lie(&camera);
        let seen = editor.seen();
        let mut look = None;
        let mut copy = std::mem::take(&mut self.covered);
        match &mut self.kept {
            Some(kept) => {
                let stale = kept.stale(&camera, &seen, editor);
                if !matches!(stale, Stale::Nothing) {
                    let look = look.get_or_insert_with(|| editor.look());
                    let view = View {
                        editor,
                        look,
                        palette,
                        lie,
                        seen: &seen,
                    };
                    match stale {
                        Stale::Areas(areas) => copy.extend(kept.renew(&view, areas)),
                        Stale::Shifted(by) => {
                            kept.shift(&view, by);
                            copy = vec![surface.whole()];
                        }
                        _ => {
                            kept.renew(&view, Vec::new());
                            copy = vec![surface.whole()];
                        }
                    }
                    kept.shown = Some((camera, seen.clone()));
                }
                if copy.len() > MOST_AREAS {
                    copy = vec![surface.whole()];
                }
                let _ = surface.context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0);
                for area in &copy {
                    copied(&surface.context, &kept.canvas, *area, area.origin().to_vec2());
                }
            }
            None => {
                // No second canvas to be had: everything is painted in place.
                let look = look.get_or_insert_with(|| editor.look());
                let view = View {
                    editor,
                    look,
                    palette,
                    lie,
                    seen: &seen,
                };
                view.still(&mut self.pens, surface, &[]);
            }
        }
        // What moves, and what the tool in hand shows.
        let mut top = DisplayList::default();
        if !seen.moving.is_empty() {
            let cut = Cut {
                visible: camera.visible(),
                areas: &[],
                moving: &seen.moving,
                which: Which::Moving,
            };
            let look = look.get_or_insert_with(|| editor.look());
            top = editor.picture_cut(look, &cut);
            let runs = seen.moving.runs.iter().map(|id| Owner::Run(*id));
            let parts = seen.moving.parts.iter().map(|id| Owner::Part(*id));
            let areas = runs
                .chain(parts)
                .flat_map(|owner| areas_of(editor.layout(), owner));
            self.covered
                .extend(areas.filter_map(|area| pixels(area, &lie, surface)));
        }
        top.items.extend(editor.tool_picture().items);
        let apart = top.items.iter().filter(|item| !is_covered(item));
        self.covered
            .extend(apart.filter_map(|item| pixels(item.bounds, &lie, surface)));
        if top.items.is_empty() {
            return;
        }
        self.pens.begin(&surface.context);
        inside_frame(surface, &lie, || {
            let visible = camera.visible();
            self.pens.replay(&surface.context, &top, palette, &lie, |area| {
                area.overlaps(visible)
            });
        });
    }

    /// Paints one display list on a surface of its own, a part of the board filling it.
    pub(crate) fn paint_list(
        &mut self,
        surface: &Surface,
        list: &DisplayList,
        palette: &Palette,
        area: Rect,
    ) {
        let lie = Lie {
            origin: area.origin(),
            scale: surface.ratio * surface.width / area.width().max(1.0),
            ratio: surface.ratio,
        };
        self.pens.begin(&surface.context);
        blank(&mut self.pens, surface, palette);
        lie.set(&surface.context);
        self.pens.replay(&surface.context, list, palette, &lie, |bounds| {
            bounds.overlaps(area)
        });
    }
}

impl Kept {
    fn new(like: &Surface) -> Option<Self> {
        let made = browser::document()?.create_element("canvas").ok()?;
        let canvas = made.dyn_into::<HtmlCanvasElement>().ok()?;
        let whole = like.whole();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "the size of a canvas that exists"
        )]
        let (width, height) = (whole.width() as u32, whole.height() as u32);
        canvas.set_width(width);
        canvas.set_height(height);
        let context = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        Some(Self {
            canvas,
            surface: Surface {
                context,
                ..like.clone()
            },
            pens: Pens::default(),
            shown: None,
        })
    }

    fn stale(&self, camera: &Camera, seen: &Seen, editor: &Editor) -> Stale {
        let Some((had_camera, had)) = &self.shown else {
            return Stale::All;
        };
        if had_camera.zoom != camera.zoom
            || had.still != seen.still
            || had.overlay != seen.overlay
            || had.feeds != seen.feeds
            || had.under != seen.under
            || had.moving != seen.moving
            || had.on_body != seen.on_body
        {
            return Stale::All;
        }
        let mut changed: OrderedSet<Owner> = had.picked.symmetric_difference(&seen.picked).copied().collect();
        if had.hovered != seen.hovered {
            changed.extend(had.hovered.into_iter().chain(seen.hovered));
        }
        let moved = had_camera.origin - camera.origin;
        if moved == Vec2::ZERO {
            if changed.is_empty() {
                return Stale::Nothing;
            }
            let mut areas = Vec::new();
            for owner in changed {
                let own = areas_of(editor.layout(), owner);
                areas.extend(own);
            }
            // An overlay's numbers find their places by one another; what lies beneath has no box on this sheet.
            if areas.is_empty() || seen.overlay != Overlay::None || areas.len() > MOST_AREAS {
                return Stale::All;
            }
            return Stale::Areas(areas);
        }
        let by = moved * camera.zoom * self.surface.ratio;
        let whole = Vec2::new(by.x.round(), by.y.round());
        let room = self.surface.whole();
        let near = whole.x.abs() < room.width() / 2.0 && whole.y.abs() < room.height() / 2.0;
        if changed.is_empty() && (by - whole).hypot() < 0.02 && near {
            Stale::Shifted(whole)
        } else {
            Stale::All
        }
    }

    /// Paints these areas of the board anew, or all when there are none; gives back which device pixels those are.
    fn renew(&mut self, view: &View<'_>, areas: Vec<Rect>) -> Vec<Rect> {
        let all = areas.is_empty();
        let areas: Vec<Rect> = areas
            .into_iter()
            .filter_map(|area| pixels(area, &view.lie, &self.surface))
            .collect();
        if all || !areas.is_empty() {
            view.still(&mut self.pens, &self.surface, &areas);
        }
        areas
    }

    /// Shifts the picture inside the frame and paints what came into view, and the frame.
    fn shift(&mut self, view: &View<'_>, by: Vec2) {
        let whole = self.surface.whole();
        let band = (BAND_PX * self.surface.ratio).ceil();
        let inner = whole.inset(-band);
        let there = inner + by;
        let stays = there.intersect(inner);
        let context = &self.surface.context;
        let _ = context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0);
        if stays.width() > 0.0 && stays.height() > 0.0 {
            copied(context, &self.canvas, stays - by, stays.origin().to_vec2());
        }
        // Around what stayed: above, below, left, right.
        let areas = [
            Rect::new(whole.x0, whole.y0, whole.x1, stays.y0),
            Rect::new(whole.x0, stays.y1, whole.x1, whole.y1),
            Rect::new(whole.x0, stays.y0, stays.x0, stays.y1),
            Rect::new(stays.x1, stays.y0, whole.x1, stays.y1),
        ];
        view.still(&mut self.pens, &self.surface, &areas);
    }
}

/// What is painted, and how it lies.
struct View<'a> {
    editor: &'a Editor,
    look: &'a drawing::Look,
    palette: &'a Palette,
    lie: Lie,
    seen: &'a Seen,
}

impl View<'_> {
    /// Paints paper, frame and everything that does not move, within some rectangles of device pixels or all of it.
    fn still(&self, pens: &mut Pens, surface: &Surface, areas: &[Rect]) {
        let context = &surface.context;
        pens.begin(context);
        context.save();
        let _ = context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0);
        if !areas.is_empty() {
            context.begin_path();
            for area in areas {
                context.rect(area.x0, area.y0, area.width(), area.height());
            }
            context.clip();
        }
        blank(pens, surface, self.palette);
        self.lie.set(context);
        let on_board: Vec<Rect> = areas
            .iter()
            .map(|area| area.scale_from_origin(1.0 / self.lie.scale) + self.lie.origin.to_vec2())
            .collect();
        let camera = self.editor.camera();
        let cut = Cut {
            visible: camera.visible(),
            areas: &on_board,
            moving: &self.seen.moving,
            which: if self.seen.moving.is_empty() {
                Which::All
            } else {
                Which::Still
            },
        };
        let paper = draw_paper(camera.visible(), camera.zoom, &TitleBlock::default());
        pens.replay(context, &paper, self.palette, &self.lie, |area| cut.shows(area));
        let picture = self.editor.picture_cut(self.look, &cut);
        inside_frame(surface, &self.lie, || {
            pens.replay(context, &picture, self.palette, &self.lie, |area| cut.shows(area));
        });
        context.restore();
        pens.forget();
    }
}

/// Covers a surface, or what of it is not clipped away, with paper.
fn blank(pens: &mut Pens, surface: &Surface, palette: &Palette) {
    let _ = surface
        .context
        .set_transform(surface.ratio, 0.0, 0.0, surface.ratio, 0.0, 0.0);
    pens.set_fill(&surface.context, Ink::Paper, palette);
    surface.context.fill_rect(0.0, 0.0, surface.width, surface.height);
}

/// What is drawn stays inside the frame, as on any sheet.
fn inside_frame(surface: &Surface, lie: &Lie, paint: impl FnOnce()) {
    let context = &surface.context;
    context.save();
    let _ = context.set_transform(surface.ratio, 0.0, 0.0, surface.ratio, 0.0, 0.0);
    context.begin_path();
    let (width, height) = (surface.width - 2.0 * FRAME_PX, surface.height - 2.0 * FRAME_PX);
    context.rect(FRAME_PX, FRAME_PX, width, height);
    context.clip();
    lie.set(context);
    paint();
    context.restore();
}

/// Copies a rectangle of device pixels to a place; both lie on whole pixels.
fn copied(context: &CanvasRenderingContext2d, from: &HtmlCanvasElement, area: Rect, to: Vec2) {
    let (width, height) = (area.width(), area.height());
    let _ = context.draw_image_with_html_canvas_element_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
        from, area.x0, area.y0, width, height, to.x, to.y, width, height,
    );
}

/// The device pixels that an area of the board covers; `None` when it is out of sight.
fn pixels(area: Rect, lie: &Lie, surface: &Surface) -> Option<Rect> {
    let area = (area - lie.origin.to_vec2()).scale_from_origin(lie.scale);
    // A pixel more at every side for soft edges.
    let seen = area.inflate(1.0, 1.0).expand().intersect(surface.whole());
    (seen.width() > 0.0 && seen.height() > 0.0).then_some(seen)
}

/// Whether an item of what moves lies within the boxes of its part or run: for a whole run's lines, those of its pieces
/// cover much less than the box around all of them.
fn is_covered(item: &Item) -> bool {
    match item.owner {
        Owner::Run(_) => matches!(item.shape, Shape::Path { fill: None, .. }),
        Owner::Part(_) => !matches!(item.shape, Shape::Text { halo: true, .. }),
        _ => false,
    }
}
