//! Copies of the sheet that leave the page: SVG, PNG, print. All of them replay the same display list as the screen.

use crate::browser::{self, ADDRESS};
use crate::canvas::paint::{Painter, Surface};
use crate::desk::Desk;
use crate::files;
use crate::state::{Act, Store};
use drawing::{Palette, svg};
use editor::Action;
use sharing::{Address, Code, Showing, fragment, shown};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};
use words::say;

/// Pixels for a board unit in a PNG.
const PNG_SCALE: f64 = 2.0;
/// Largest side of a PNG in pixels; what browsers take.
const PNG_MOST: f64 = 12_000.0;

fn name(desk: &Desk, ending: &str) -> String {
    desk.see(|editor| {
        files::file_name(
            &format!(
                "{} {}",
                editor.job().title,
                editor.words().say(&editor.on().said())
            ),
            ending,
        )
    })
}

/// Does an action that hands out a copy; others are not for here.
pub(crate) fn hand_out(action: Action, store: &Store) {
    match action {
        Action::ExportSvg => store.dispatch(Act::Say(export_svg(&store.desk))),
        Action::ExportPng => {
            let (desk, tell) = (store.desk.clone(), store.dispatcher());
            spawn_local(async move { tell.dispatch(Act::Say(export_png(&desk).await)) });
        }
        Action::Print => {
            lay_out_for_print(&store.desk);
            if let Some(window) = browser::window() {
                let _ = window.print();
            }
        }
        _ => {}
    }
}

/// The sheet as an SVG document.
pub(crate) fn as_svg(desk: &Desk, palette: &Palette) -> String {
    let (list, bounds) = desk.see(editor::Editor::whole_sheet);
    svg(&list, palette, bounds)
}

/// Hands the sheet out as an SVG file; gives back words for the user.
fn export_svg(desk: &Desk) -> String {
    let name = name(desk, ".svg");
    match files::export_text(&name, &as_svg(desk, &Palette::light()), "image/svg+xml") {
        Ok(()) => desk.words().say(&say!("downloaded", name = name)),
        Err(trouble) => desk.words().say(&trouble.said()),
    }
}

/// Hands the sheet out as a PNG file; gives back words for the user.
async fn export_png(desk: &Desk) -> String {
    let name = name(desk, ".png");
    let (list, bounds) = desk.see(editor::Editor::whole_sheet);
    let scale = PNG_SCALE.min(PNG_MOST / bounds.width().max(bounds.height()).max(1.0));
    let made = browser::document().and_then(|document| document.create_element("canvas").ok());
    let Some(canvas) = made.and_then(|made| made.dyn_into::<HtmlCanvasElement>().ok()) else {
        return desk.words().text("no-canvas");
    };
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "bounded by PNG_MOST"
    )]
    let pixels = |units: f64| (units * scale).ceil().clamp(1.0, PNG_MOST) as u32;
    canvas.set_width(pixels(bounds.width()));
    canvas.set_height(pixels(bounds.height()));
    let context = canvas
        .get_context("2d")
        .ok()
        .flatten()
        .and_then(|context| context.dyn_into::<CanvasRenderingContext2d>().ok());
    let Some(context) = context else {
        return desk.words().text("no-canvas");
    };
    let surface = Surface {
        context,
        ratio: scale,
        width: bounds.width(),
        height: bounds.height(),
    };
    Painter::default().paint_list(&surface, &list, &Palette::light(), bounds);
    match files::export_png(&name, &canvas).await {
        Ok(()) => desk.words().say(&say!("downloaded", name = name)),
        Err(trouble) => desk.words().say(&trouble.said()),
    }
}

/// Puts the sheet into the page for the printer, in the print palette: ink that survives black and white.
pub(crate) fn lay_out_for_print(desk: &Desk) {
    let Some(document) = browser::document() else {
        return;
    };
    let sheet = document.get_element_by_id("print-sheet").or_else(|| {
        let made = document.create_element("div").ok()?;
        made.set_id("print-sheet");
        document.body()?.append_child(&made).ok()?;
        Some(made)
    });
    if let Some(sheet) = sheet {
        let ((whole, bounds), parts) = desk.see(editor::Editor::printed_sheets);
        let mut pages = svg(&whole, &Palette::print(), bounds);
        let words = desk.words();
        let count = parts.len();
        for (number, part) in parts.iter().enumerate() {
            let said = say!(
                "print-part",
                part = number + 1,
                count = count,
                row = part.row,
                column = part.column
            );
            pages.push_str(&format!(
                "<figure class=\"print-part\">{}<figcaption>{}</figcaption></figure>",
                svg(&part.list, &Palette::print(), part.area),
                words.say(&said)
            ));
        }
        pages.push_str(&link_code(desk).unwrap_or_default());
        sheet.set_inner_html(&pages);
    }
}

/// The code of the link to this job, for a page behind the printed sheet: where the shop has an address and the job fits. Private
/// things stay out, as they do where a link is made without asking for more.
fn link_code(desk: &Desk) -> Option<String> {
    let address = Address::new(&browser::remembered(ADDRESS)?).ok()?;
    let (job, _) = desk.see(|editor| shown(editor.job(), Showing::default()));
    let code = Code::of(&address.link(&fragment(&job).ok()?))?;
    Some(format!(
        "<figure class=\"print-code\">{}<figcaption>{}</figcaption></figure>",
        code.svg(),
        desk.words().text("share-scan")
    ))
}
