//! What the pointer or the keyboard is on, in a few numbers: of a run amps, drop, temperature and guard.

use crate::state::Store;
use circuit::voltage_key;
use editor::words::line_name;
use editor::{Camera, Open, Thing};
use words::{Unit, drawn, precise};
use yew::prelude::*;

pub(crate) fn hover_slip(store: &Store) -> Html {
    let seen = store.desk.see(|editor| {
        let resting = matches!(editor.tool().address(), "pick/idle" | "pull/waiting");
        let thing = editor.hovered().or(editor.shown_focus()).filter(|_| resting)?;
        // What the slip already tells need not be told twice.
        if matches!(&store.beside, Open::Details(open) | Open::Rename(open) if open.owner() == thing.owner())
        {
            return None;
        }
        let sheet = editor.sheet();
        let (title, lines) = match thing {
            Thing::Run(id) => {
                let run = sheet.runs.get(id)?;
                let words = editor.words();
                let size = run.wire.size.value().map_or_else(
                    || words.text("hover-size"),
                    |size| drawing::size_as_marked(size, words),
                );
                let length = run.wire.length.value().map_or_else(
                    || words.text("hover-length"),
                    |length| words.figure(drawn(length.0, Unit::Metre)),
                );
                (format!("{} {size} {length}", run.tag), editor.run_numbers(*id))
            }
            Thing::Part(id) => {
                let part = sheet.parts.get(id)?;
                (
                    format!("{} {}", part.tag, editor.words().say(&part.said())),
                    editor.part_numbers(*id),
                )
            }
            Thing::Terminal(at) => {
                let volts = editor.analysis().study.voltages.get(&voltage_key(at));
                let lines = volts
                    .map(|volts| {
                        (
                            "voltage",
                            editor.words().figure(precise(volts.0, Unit::Plain("V"), 2)),
                        )
                    })
                    .into_iter()
                    .collect();
                (sheet.written(at), lines)
            }
        };
        let area = editor.area_of(thing)?;
        // A run reaches far: the slip stands at its label.
        let at = match thing {
            Thing::Run(id) => Some(editor.layout().run(*id).map(|way| way.label_at)?),
            _ => None,
        };
        let style = slip_place(editor.camera(), area, at, lines.len())?;
        Some((title, lines, style))
    });
    let Some((title, lines, style)) = seen else {
        return html! {};
    };
    html! {
        <div class="hover" {style} data-testid="hover" aria-hidden="true">
            <b>{ title }</b>
            <dl class="numbers">{ for lines.into_iter().map(|(name, value)| html! { <><dt>{ store.words().say(&line_name(name)) }</dt><dd>{ value }</dd></> }) }</dl>
        </div>
    }
}

/// Most that the slip takes in width: `.hover` in the styles.
const WIDE: f64 = 300.0;
/// Height of the slip's title with its margins, and of a line that may run over.
const HIGH: (f64, f64) = (34.0, 21.0);
/// How far it stands off the thing.
const OFF: f64 = 14.0;

/// Where the slip stands: at the thing, or at a point of a thing that reaches far, to the right and below it, or to the left or
/// above where it would else cover notes, title block or tools. Nowhere for what is itself out of view.
fn slip_place(
    camera: &Camera,
    area: kurbo::Rect,
    point: Option<kurbo::Point>,
    lines: usize,
) -> Option<String> {
    let free = camera.free_area();
    let (low, high) = (
        camera.to_screen(area.origin()),
        camera.to_screen(kurbo::Point::new(area.x1, area.y1)),
    );
    // What is flat, as a straight run is, overlaps nothing.
    let seen = kurbo::Rect::new(low.x, low.y, high.x, high.y).inflate(1.0, 1.0);
    if !seen.overlaps(free) {
        return None;
    }
    // Of a point the slip keeps off what lies close above it, of a thing off all of it.
    let (x, top, foot) = match point.map(|at| camera.to_screen(at)) {
        Some(at) => (at.x, at.y.min(low.y.max(at.y - 2.0 * OFF)), at.y),
        None => (0.5 * (low.x + high.x), low.y, high.y),
    };
    let x = x.clamp(free.x0, free.x1);
    let to_left = x + WIDE > free.x1;
    let height = HIGH.0 + HIGH.1 * lines as f64;
    let is_above = foot + OFF + height > free.y1;
    // Above what reaches beyond the upper edge there is no room: it stays in view all the same.
    let y = if is_above {
        (top - OFF).min(free.y1).max(height)
    } else {
        (foot + OFF).max(HIGH.0)
    };
    let flip = |yes: bool| if yes { "-100%" } else { "0" };
    Some(format!(
        "left:{x:.0}px;top:{y:.0}px;transform:translate({},{})",
        flip(to_left),
        flip(is_above)
    ))
}
