//! The words of the step that is on: the story, what to look at, a break, a question, the explanation, where it comes from.

use super::scene::Scene;
use lessons::measures::{Number, as_drawn};
use lessons::{Happening, Step, Told, break_of, title_in};
use words::{Saying, Value, Words, say};
use yew::prelude::*;

/// Letters of a text that are many.
const LONG: usize = 480;

/// What kind of step this is: `Look 1 of 2`.
pub(super) fn kind(scene: &Scene, words: &Words) -> String {
    let lesson = &scene.lesson;
    let numbered = |name: Saying, number: usize, count: usize| match count {
        1 => words.say(&name),
        _ => words.say(&say!(
            "lesson-numbered",
            name = name,
            number = number + 1,
            count = count
        )),
    };
    match scene.at.step(lesson) {
        Step::Story(n) => numbered(say!("lesson-story"), n, lesson.story.len()),
        Step::Look(n) => numbered(say!("lesson-look"), n, lesson.looks.len()),
        Step::Break(n) => numbered(say!("lesson-break"), n, lesson.breaks.len()),
        Step::Question(n) => numbered(say!("lesson-question"), n, lesson.questions.len()),
        Step::Why(n) => numbered(say!("lesson-why"), n, lesson.why(words).len()),
        Step::Sources => words.text("lesson-sources"),
    }
}

/// Whether the words of the step are so many that they need smaller letters.
pub(super) fn is_long(scene: &Scene, words: &Words) -> bool {
    let lesson = &scene.lesson;
    let count = match scene.at.step(lesson) {
        Step::Story(n) => lesson.story.get(n).map_or(0, String::len),
        Step::Why(n) => lesson.why(words).get(n).map_or(0, String::len),
        Step::Question(n) => lesson.questions.get(n).map_or(0, |it| {
            let answers: usize = it.answers.iter().map(|answer| answer.says.len()).sum();
            // Question and reason stand beside the answers.
            2 * answers.max(it.asks.len() + it.why.len())
        }),
        Step::Sources => {
            // Each begins a line.
            let sources = lesson.all_sources(words);
            let sources: usize = sources.iter().map(|source| source.len() + 50).sum();
            sources + words.say(&checks::care()).len()
        }
        _ => 0,
    };
    count > LONG
}

/// The words of the step.
pub(super) fn text(scene: &Scene, words: &Words) -> Html {
    let lesson = &scene.lesson;
    let all = scene.told();
    let tell = |text: &str| all.tell(text, None, words);
    match scene.at.step(lesson) {
        Step::Story(n) => paragraph(lesson.story.get(n).map(|text| tell(text))),
        Step::Look(n) => {
            let look = lesson.looks.get(n);
            let things = look.map(|look| look.things.join(", "));
            html! { <><p class="told__things">{ things }</p>{ paragraph(look.map(|look| tell(&look.says))) }</> }
        }
        Step::Break(n) => break_told(scene, words, &all, n),
        Step::Question(n) => question(scene, words, &all, n),
        Step::Why(n) => paragraph(lesson.why(words).get(n).map(|text| tell(text))),
        Step::Sources => {
            let sources = lesson.all_sources(words);
            html! {
                <>
                    <ul class="told__sources">{ for sources.into_iter().map(|source| html! { <li>{ source }</li> }) }</ul>
                    <p class="told__care"><b>{ words.text("lesson-care") }</b>{ " " }{ words.say(&checks::care()) }</p>
                </>
            }
        }
    }
}

fn paragraph(text: Option<String>) -> Html {
    html! { <p>{ text }</p> }
}

fn break_told(scene: &Scene, words: &Words, all: &Told<'_>, number: usize) -> Html {
    let Some(broken) = break_of(&scene.lesson, Some(number)) else {
        return html! {};
    };
    let is_thrown = scene.at.thrown() == Some(number);
    html! {
        <>
            <p class="told__things">{ words.say(&broken.said()) }</p>
            if is_thrown { <p>{ all.tell(&broken.says, Some(broken), words) }</p> } else { <p>{ words.text("lesson-break-try") }</p> }
        </>
    }
}

fn question(scene: &Scene, words: &Words, all: &Told<'_>, number: usize) -> Html {
    let Some(question) = scene.lesson.questions.get(number) else {
        return html! {};
    };
    let is_shown = scene.at.answer_is_shown();
    let answers = question.answers.iter().filter(|answer| !answer.says.is_empty());
    let answers = answers.map(|answer| {
        let is_right = is_shown && answer.right;
        let class = classes!(is_right.then_some("told__right"), (is_shown && !answer.right).then_some("told__wrong"));
        html! { <li {class}>if is_right { <b>{ words.text("lesson-right") }</b>{ " " } }<span>{ all.tell(&answer.says, None, words) }</span></li> }
    });
    html! {
        <div class="told__question">
            <p>{ all.tell(&question.asks, None, words) }</p>
            <ol type="a" class="told__answers" data-testid="answers">{ for answers }</ol>
            if is_shown && !question.why.is_empty() { <p class="told__because" data-testid="because">{ all.tell(&question.why, None, words) }</p> }
        </div>
    }
}

/// A number of the engine, as the drawing has it.
fn number(value: Option<Number>) -> Value {
    match value {
        Some(number) => as_drawn(number).into(),
        None => say!("lesson-no-number").into(),
    }
}

/// What a break did, as a sentence.
pub(super) fn happening(happening: &Happening, words: &Words) -> Saying {
    match happening {
        Happening::Sound { things, turn, off } => match (turn.was, turn.is) {
            (true, true) => say!("lesson-plays-on", things = things),
            (false, true) => say!("lesson-begins-to-play", things = things),
            (true, false) if off.is_empty() => say!("lesson-falls-silent", things = things),
            (true, false) => say!("lesson-falls-silent-off", things = things, off = off),
            (false, false) if off.is_empty() => say!("lesson-stays-silent", things = things),
            (false, false) => say!("lesson-stays-silent-off", things = things, off = off),
        },
        Happening::Power(tags, turn) => match (turn.was, turn.is) {
            (true, true) => say!("lesson-stays-on", things = tags.clone()),
            (true, false) => say!("lesson-goes-off", things = tags.clone()),
            (false, true) => say!("lesson-comes-on", things = tags.clone()),
            (false, false) => say!("lesson-stays-off", things = tags.clone()),
        },
        Happening::Opens(tags, turn) if turn.is => say!("lesson-opens", things = tags.clone()),
        Happening::Opens(tags, _) => say!("lesson-holds", things = tags.clone()),
        Happening::Finding(check, turn) => match (turn.was, turn.is) {
            (true, true) => say!("lesson-finding-stays", check = title_in(check, words)),
            (false, true) => say!("lesson-finding-comes", check = title_in(check, words)),
            (true, false) => say!("lesson-finding-goes", check = title_in(check, words)),
            (false, false) => say!("lesson-finding-none", check = title_in(check, words)),
        },
        Happening::Number { name, at, was, is } => {
            let key = format!("lesson-measure-{name}");
            let name = if words.knows(&key) {
                words.text(&key)
            } else {
                name.replace('-', " ")
            };
            let (was, is) = (number(*was), number(*is));
            if at.is_empty() {
                say!("lesson-number-turns-alone", name = name, was = was, is = is)
            } else {
                say!(
                    "lesson-number-turns",
                    name = name,
                    at = at.as_str(),
                    was = was,
                    is = is
                )
            }
        }
    }
}
