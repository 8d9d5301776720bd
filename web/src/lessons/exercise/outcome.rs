//! How an exercise came out: on the drawing, in points, and fault by fault.

use crate::lessons::over::{Badge, Sign, named, on_board, sign};
use crate::state::Store;
use lessons::{Fault, Outcome, Sitting, Thing, Verdict, title_in};
use words::{Words, say};
use yew::prelude::*;

fn sign_of(came: Verdict) -> Sign {
    match came {
        Verdict::Right => Sign::Found,
        Verdict::Unasked => Sign::Neither,
        Verdict::OtherReason | Verdict::Wrong => Sign::Wrong,
    }
}

/// What stands on the drawing: the marks by number; once handed in, what became of them, and what was missed.
pub(super) fn badges(sitting: &Sitting, words: &Words) -> Vec<Badge> {
    let Some(outcome) = sitting.outcome() else {
        let marks = sitting.marks().iter().zip(1..);
        return marks
            .map(|(it, number): (_, usize)| Badge {
                thing: on_board(it.mark.thing),
                sign: Sign::Mark,
                word: number.to_string(),
            })
            .collect();
    };
    let marks = sitting.marks().iter().map(|it| {
        let came = outcome.verdict(&it.mark);
        Badge {
            thing: on_board(it.mark.thing),
            sign: sign_of(came),
            word: words.text(match came {
                Verdict::Right => "exercise-right",
                Verdict::Unasked => "exercise-sign-unasked",
                Verdict::OtherReason => "exercise-sign-other",
                Verdict::Wrong => "exercise-sign-wrong",
            }),
        }
    });
    let missed = outcome.missed.iter().filter_map(|fault| {
        Some(Badge {
            thing: on_board(*fault.things.first()?),
            sign: Sign::Missed,
            word: words.text("exercise-missed"),
        })
    });
    marks.chain(missed).collect()
}

pub(super) fn outcome_words(outcome: &Outcome, words: &Words) -> String {
    let all = outcome.found.len() + outcome.missed.len();
    words.say(&say!("exercise-outcome", found = outcome.found.len(), all = all))
}

pub(super) fn points(outcome: &Outcome, words: &Words) -> String {
    let (points, of) = outcome.points();
    words.say(&say!(
        "exercise-report-points",
        points = points.to_string(),
        of = of.to_string()
    ))
}

/// Found, missed and wrongly accused, in words.
pub(super) fn outcome_list(outcome: &Outcome, sitting: &Sitting, store: &Store, words: &Words) -> Html {
    let go = |thing: Thing| {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.go_to(&on_board(thing)));
        })
    };
    let fault = |fault: &Fault, which: Sign, came: String| {
        let tags: Vec<String> = fault
            .things
            .iter()
            .map(|thing| store.desk.see(|editor| named(editor, *thing).0))
            .collect();
        let first = fault.things.first().copied();
        html! {
            <li class="came">
                <button type="button" class="came__head" onclick={first.map(go)}>{ sign(which) }<span><b>{ came }</b>{ ": " }{ title_in(&fault.reason, words) }{ format!(" ({})", tags.join(", ")) }</span></button>
                <p>{ fault.what(words) }</p>
                if !fault.added().is_empty() { <p>{ fault.added().to_owned() }</p> }
                if !fault.remedy(words).is_empty() { <p class="paper__faint">{ fault.remedy(words) }</p> }
            </li>
        }
    };
    let others = sitting.marks().iter().filter_map(|it| {
        let came = outcome.verdict(&it.mark);
        if came == Verdict::Right {
            return None;
        }
        let (tag, _) = store.desk.see(|editor| named(editor, it.mark.thing));
        Some(html! {
            <li class="came" data-testid="accused">
                <button type="button" class="came__head" onclick={go(it.mark.thing)}>{ sign(sign_of(came)) }<span><b>{ words.say(&came.saying()) }</b>{ format!(": {tag}, {}", title_in(&it.mark.reason, words)) }</span></button>
            </li>
        })
    });
    html! {
        <>
            <ul data-testid="found">{ for outcome.found.iter().map(|it| fault(it, Sign::Found, words.text("exercise-right"))) }</ul>
            <ul data-testid="missed">{ for outcome.missed.iter().map(|it| fault(it, Sign::Missed, words.text("exercise-missed"))) }</ul>
            <ul>{ for others }</ul>
        </>
    }
}
