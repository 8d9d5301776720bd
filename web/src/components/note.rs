//! One margin note: a finding in a line or two, beside the height of what it speaks of.

use super::mark::{grade_class, mark};
use checks::Grade;
use words::{Words, say};
use yew::prelude::*;

/// What a note shows and does.
pub(crate) struct Note {
    /// Its place in the list of findings.
    pub(crate) place: usize,
    pub(crate) grade: Grade,
    /// The words of its grade.
    pub(crate) said: AttrValue,
    pub(crate) what: AttrValue,
    /// Its top edge in pixels.
    pub(crate) top: f64,
    pub(crate) is_current: bool,
    /// One line only.
    pub(crate) short: bool,
    pub(crate) on_open: Callback<usize>,
    pub(crate) on_point: Callback<Option<usize>>,
}

/// The words of a grade on a note.
pub(crate) fn grade_said(words: &Words, grade: Grade, undecided: bool) -> AttrValue {
    let grade = grade.said();
    words
        .say(&if undecided {
            say!("note-undecided", grade = grade)
        } else {
            grade
        })
        .into()
}

/// The note as an item of a list.
pub(crate) fn note(props: &Note) -> Html {
    let place = props.place;
    let onclick = props.on_open.reform(move |_: MouseEvent| place);
    let point = props.on_point.reform(move |_: MouseEvent| Some(place));
    let leave = props.on_point.reform(|_: MouseEvent| None);
    let focused = props.on_point.reform(move |_: FocusEvent| Some(place));
    let blurred = props.on_point.reform(|_: FocusEvent| None);
    let class = classes!(
        "note",
        grade_class(props.grade),
        props.is_current.then_some("note--current"),
        props.short.then_some("note--short")
    );
    html! {
        <li key={place} {class} style={format!("top:{:.0}px", props.top)}>
            <button type="button" data-testid="note" data-finding={place.to_string()} {onclick} onmouseenter={point} onmouseleave={leave}
                onfocus={focused} onblur={blurred}>
                { mark(props.grade) }
                <span class="note__number">{ place + 1 }</span>
                <span class="note__what">
                    <b>{ &props.said }</b>{ " " }{ &props.what }
                </span>
            </button>
        </li>
    }
}
