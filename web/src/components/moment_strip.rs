//! The strip under the drawing while something is broken: scissors or lead in hand, what becomes of it, and time to be drawn through
//! with the events on it. It lies on the board, so that a finger moves through time where the wires are seen to warm.

use super::break_it::number_of;
use crate::state::Store;
use circuit::faults::{Course, Faults, Frame, time_said};
use editor::break_it::With;
use editor::{Editor, Tool};
use words::{Unit, drawn, precise, say};
use yew::prelude::*;

pub(crate) fn moment_strip(store: &Store) -> Html {
    let in_hand = store.desk.see(|editor| match editor.tool() {
        Tool::Break(tool) => Some(tool.with),
        _ => None,
    });
    let nothing = store.desk.see(|editor| editor.breaks().is_empty());
    if (in_hand.is_none() && nothing) || store.panel != crate::state::Panel::Breaking {
        return html! {};
    }
    let words = store.words();
    let tool = |with: With, id: &'static str, key: &'static str| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.take_break_tool(with));
        });
        let on = in_hand == Some(with);
        html! { <button type="button" {onclick} aria-pressed={on.to_string()} data-testid={id}>{ words.text(key) }</button> }
    };
    let told = store.desk.see(|editor| match editor.course() {
        Some(Ok(course)) => through_time(store, editor, course),
        Some(Err(why)) => html! { <p class="moment__word">{ words.say(why) }</p> },
        None => html! {},
    });
    html! {
        <section class="moment" aria-label={words.text("breaking-moment")} data-testid="moment-strip">
            <div class="moment__tools" role="group" aria-label={words.text("breaking-tools")}>
                { tool(With::Scissors, "break-scissors", "breaking-tool-scissors") }
                { tool(With::Lead, "break-lead", "breaking-tool-lead") }
            </div>
            { told }
        </section>
    }
}

/// The moment that is looked at, to be drawn through; each event is a stroke on the scale.
fn through_time(store: &Store, editor: &Editor, course: &Course) -> Html {
    let words = editor.words();
    let (case, moment) = editor.moment();
    let (Some(frame), Some(scenario)) = (editor.frame(), course.scenarios.get(case)) else {
        return html! {};
    };
    let at = if frame.time.0 > 0.0 {
        words.say(&say!("breaking-at", time = time_said(frame.time)))
    } else {
        words.text("breaking-at-first")
    };
    let last = scenario.frames.len().saturating_sub(1);
    let oninput = {
        let desk = store.desk.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(value) = number_of::<usize>(&event) {
                desk.change(|editor| editor.look_at_moment(case, value));
            }
        })
    };
    let strokes = scenario.moments.iter().filter_map(|it| {
        let place = scenario
            .frames
            .iter()
            .position(|frame| frame.time.0 >= it.time.0)?;
        let share = place as f64 / last.max(1) as f64;
        let title = words.say(&it.happening.said(editor.sheet()));
        Some(html! { <i style={format!("left:{:.1}%", share * 100.0)} {title}></i> })
    });
    let flows = frame.fault.map(|amps| {
        let said = say!(
            "breaking-flows",
            current = drawn(amps.0, Unit::Plain("A")),
            volts = drawn(frame.source.0, Unit::Plain("V")),
        );
        html! { <span data-testid="breaking-flows">{ words.say(&said) }</span> }
    });
    let hot = editor
        .faults()
        .and_then(|faults| hottest(course, faults, frame))
        .map(|(id, temperature, it)| {
            let run = editor.sheet().runs.get(&id);
            let said = say!(
                "breaking-hottest",
                run = run.map_or_else(String::new, |run| run.tag.clone()),
                temperature = precise(temperature, Unit::Plain("°C"), 0),
                limit = precise(it.limit.0, Unit::Plain("°C"), 0),
            );
            html! { <span data-testid="breaking-hottest">{ words.say(&said) }</span> }
        });
    html! {
        <>
            <p class="moment__word">
                <output data-testid="breaking-at">{ at.clone() }</output>
                { flows.unwrap_or_default() }
                { hot.unwrap_or_default() }
            </p>
            <div class="moment__scale">
                <div class="moment__strokes" aria-hidden="true">{ for strokes }</div>
                <input type="range" class="breaking__slider" min="0" max={last.to_string()} step="1" value={moment.min(last).to_string()} {oninput} aria-label={words.text("breaking-moment")} aria-valuetext={at} data-testid="breaking-moment" />
            </div>
        </>
    }
}

/// The run that is hottest against what it bears.
fn hottest<'c>(
    course: &'c Course,
    faults: &Faults,
    frame: &Frame,
) -> Option<(model::RunId, f64, &'c circuit::faults::RunCourse)> {
    faults
        .runs()
        .zip(&frame.runs)
        .filter_map(|(id, now)| Some((id, now.temperature.0, course.runs.get(&id)?)))
        .max_by(|(_, a, x), (_, b, y)| (a - x.limit.0).total_cmp(&(b - y.limit.0)))
}
