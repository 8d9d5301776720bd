//! A sheet to be looked at: painted whole, framed from outside, so that several can be framed alike. It listens to nothing.

use super::scene::Side;
use crate::browser;
use crate::canvas::paint::{Painter, Surface};
use drawing::{Cut, Lit, Look, Moving, Overlay, Palette, Which};
use editor::{Camera, Editor, Margins};
use gloo_events::EventListener;
use kurbo::{Point, Rect};
use lessons::{Break, Version, places, sign};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{HtmlCanvasElement, HtmlElement};
use yew::prelude::*;

/// Letters are painted this much larger than on the table: they are read from the last row.
const LETTERS: f64 = 1.5;
/// Most pixels for a board unit.
const MOST_ZOOM: f64 = 2.0;
/// The same where they stand close.
const CLOSE_LETTERS: f64 = 1.2;
/// Zooms for which the drawing has names beside the tags, and from which on those can be read from the last row.
const NAMES: f64 = 0.5;
const NAMES_READ: f64 = 0.65;
/// Zoom from which on the drawing has its symbols and numbers: whatever size the letters have, those are wanted.
const LEAST_DETAIL: f64 = 0.28;
/// Room above for the marks of findings, in pixels.
const MARK_PX: f64 = 44.0;
/// Paper left free around the drawing, in pixels.
const MARGIN_PX: f64 = 16.0;

/// What is to be seen of a side.
#[derive(Clone, Properties)]
pub(super) struct PictureProps {
    pub(super) sides: Rc<[Side; 2]>,
    /// The same without the break, for the place of what is gone.
    pub(super) whole: Rc<[Side; 2]>,
    pub(super) version: Version,
    pub(super) palette: Rc<Palette>,
    pub(super) overlay: Overlay,
    pub(super) lit: Lit,
    pub(super) marks: bool,
    /// What of the board fills the picture.
    pub(super) frame: Rect,
    /// The break that is thrown, and what it is called in one word.
    pub(super) broken: Option<(Break, String)>,
    /// Where the pointer was led to.
    pub(super) spot: Option<Point>,
    /// Whether the pointer is out.
    pub(super) pointing: bool,
    /// What the picture shows, in words.
    pub(super) label: String,
}

impl PartialEq for PictureProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.sides, &other.sides)
            && self.version == other.version
            && self.palette == other.palette
            && self.overlay == other.overlay
            && self.lit == other.lit
            && self.marks == other.marks
            && self.frame == other.frame
            && self.broken == other.broken
            && self.spot == other.spot
            && self.pointing == other.pointing
            && self.label == other.label
    }
}

impl PictureProps {
    fn of<'s>(&self, sides: &'s [Side; 2]) -> &'s Editor {
        let [bad, good] = sides;
        match self.version {
            Version::Bad => &bad.editor,
            Version::Good => &good.editor,
        }
    }

    fn paint(&self, canvas: &HtmlCanvasElement) {
        let Some(surface) = Surface::of(canvas) else {
            return;
        };
        let mut camera = Camera {
            width: surface.width.max(1.0),
            height: surface.height.max(1.0),
            margins: Margins {
                left: MARGIN_PX,
                top: MARK_PX,
                right: MARGIN_PX,
                bottom: MARGIN_PX,
            },
            ..Camera::default()
        };
        camera.fit(self.frame, MOST_ZOOM);
        let editor = self.of(&self.sides);
        let own = editor.look();
        let look = Look {
            overlay: self.overlay,
            lit: self.lit.clone(),
            // What a break turns has the word then.
            marks: if self.marks && self.broken.is_none() {
                own.marks
            } else {
                Vec::new()
            },
            zoom: letters(camera.zoom, self.overlay),
            ..Look::default()
        };
        let visible = camera.visible();
        let cut = Cut {
            visible,
            areas: &[],
            moving: &Moving::default(),
            which: Which::All,
        };
        let mut list = editor.picture_cut(&look, &cut);
        if let Some((broken, word)) = &self.broken {
            let mut at = places(broken, editor.sheet(), editor.layout());
            if at.len() < broken.things.len() {
                // What is dead is gone from the sheet: the sign stands where it was.
                let whole = self.of(&self.whole);
                at = places(broken, whole.sheet(), whole.layout());
            }
            let drawn = sign(broken, word, &at, camera.zoom, (&list, visible));
            list.items.extend(drawn.items);
        }
        Painter::default().paint_list(&surface, &list, &self.palette, visible);
        // For the pointer that was led by keys, and for whoever measures the picture.
        let numbers = [
            ("data-scale", camera.zoom),
            ("data-left", camera.origin.x),
            ("data-top", camera.origin.y),
        ];
        for (name, number) in numbers {
            let _ = canvas.set_attribute(name, &number.to_string());
        }
        if let Some(spot) = self.spot {
            let at = camera.to_screen(spot);
            point_at(at.x, at.y);
        }
    }
}

/// For which zoom the letters are made, so that they are read from the last row.
fn letters(zoom: f64, overlay: Overlay) -> f64 {
    let larger = match overlay {
        // Leads lie side by side, and what is written on one must not stand at another.
        Overlay::Signal => CLOSE_LETTERS,
        _ => LETTERS,
    };
    let made_for = zoom / larger;
    if (NAMES..NAMES_READ).contains(&made_for) {
        // Names and numbers would be small: tags alone are large.
        NAMES - 1e-6
    } else {
        made_for.max(LEAST_DETAIL.min(zoom))
    }
}

/// Puts the rings of the pointer at a place, in pixels from the upper left corner of each picture.
pub(super) fn point_at(x: f64, y: f64) {
    let sheets = browser::document().and_then(|document| document.get_element_by_id("sheets"));
    if let Some(sheets) = sheets.and_then(|sheets| sheets.dyn_into::<HtmlElement>().ok()) {
        let style = sheets.style();
        let _ = style.set_property("--spot-x", &format!("{x:.1}px"));
        let _ = style.set_property("--spot-y", &format!("{y:.1}px"));
    }
}

#[function_component]
pub(super) fn Picture(props: &PictureProps) -> Html {
    let canvas = use_node_ref();
    let size = use_state(|| 0_u32);
    {
        let size = size.clone();
        use_effect_with((), move |()| {
            let mut count = 0_u32;
            let listener = browser::window().map(|window| {
                EventListener::new(&window, "resize", move |_| {
                    count = count.wrapping_add(1);
                    size.set(count);
                })
            });
            move || drop(listener)
        });
    }
    {
        let canvas = canvas.clone();
        use_effect_with((props.clone(), *size), move |(props, _)| {
            if let Some(canvas) = canvas.cast::<HtmlCanvasElement>() {
                props.paint(&canvas);
            }
        });
    }
    html! {
        <div class="picture">
            <canvas ref={canvas} role="img" aria-label={props.label.clone()} data-testid={format!("picture-{}", props.version.word())}></canvas>
            if props.pointing { <div class="spot" aria-hidden="true" data-testid="spot"></div> }
        </div>
    }
}
