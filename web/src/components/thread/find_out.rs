//! What is still to be found out: what every finding that lacks a fact asks for, most pressing first.

use super::Told;
use crate::components::mark::mark;
use crate::state::Store;
use checks::Grade;
use yew::prelude::*;

pub(super) fn count(store: &Store) -> usize {
    store.desk.see(|editor| {
        let all = &editor.analysis().findings;
        all.iter().filter(|finding| finding.undecided).count()
    })
}

pub(super) fn find_out(store: &Store, _: &Told) -> Html {
    let words = store.words();
    let open: Vec<(usize, Grade, String, String)> = store.desk.see(|editor| {
        let all = editor.analysis().findings.iter().enumerate();
        all.filter(|(_, finding)| finding.undecided)
            .map(|(place, finding)| {
                let say = |it| editor.words().say(it);
                (place, finding.grade, say(&finding.remedy), say(&finding.what))
            })
            .collect()
    });
    let count = open.len();
    html! {
        <>
            <p class="thread__about">{ words.text(if count == 0 { "thread-find-out-none" } else { "thread-find-out-about" }) }</p>
            <ol>{ for open.into_iter().map(|(place, grade, remedy, what)| {
                let desk = store.desk.clone();
                let onclick = Callback::from(move |_: MouseEvent| { desk.change(|editor| editor.go_to_finding(place)); });
                html! { <li><button type="button" class="slip__finding" {onclick} data-testid="find-out-line">{ mark(grade) }<span><b>{ remedy }</b><br />{ what }</span></button></li> }
            }) }</ol>
        </>
    }
}
