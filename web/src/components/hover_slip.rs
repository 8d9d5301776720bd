//! What the pointer or the keyboard is on, in a few numbers: of a run amps, drop, temperature and guard.

use crate::state::Store;
use circuit::voltage_key;
use editor::words::line_name;
use editor::{Open, Thing};
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
        let at = match thing {
            Thing::Run(id) => editor.layout().run(*id).map(|way| way.label_at)?,
            _ => kurbo::Point::new(area.center().x, area.y1),
        };
        let at = editor.camera().to_screen(at);
        let camera = editor.camera();
        Some((
            title,
            lines,
            at.x.clamp(40.0, camera.width - 260.0),
            (at.y + 14.0).clamp(34.0, camera.height - 150.0),
        ))
    });
    let Some((title, lines, x, y)) = seen else {
        return html! {};
    };
    html! {
        <div class="hover" style={format!("left:{x:.0}px;top:{y:.0}px")} data-testid="hover" aria-hidden="true">
            <b>{ title }</b>
            <dl class="numbers">{ for lines.into_iter().map(|(name, value)| html! { <><dt>{ store.words().say(&line_name(name)) }</dt><dd>{ value }</dd></> }) }</dl>
        </div>
    }
}
