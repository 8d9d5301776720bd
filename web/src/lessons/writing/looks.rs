//! What to look at: an overlay, things of the drawing, and what is to be seen there.

use super::form::Form;
use crate::lessons::fields::Sentence;
use ::drawing::Overlay;
use lessons::Look;
use yew::prelude::*;

impl Form<'_> {
    pub(super) fn looks(&self) -> Html {
        let words = self.words;
        let one = |(at, look): (usize, &Look)| {
            let overlay = self.choose(move |lesson, title| {
                let chosen = Overlay::ALL.iter().copied().find(|it| it.title() == title);
                if let (Some(look), Some(overlay)) = (lesson.looks.get_mut(at), chosen) {
                    look.overlay = overlay;
                }
            });
            let options = Overlay::ALL.iter().map(|it| html! { <option value={it.title()} selected={*it == look.overlay}>{ words.say(&it.said()) }</option> });
            let gone = self.act(move |lesson| {
                if at < lesson.looks.len() {
                    lesson.looks.remove(at);
                }
            });
            html! {
                <li class="own-one" key={format!("{at} of {}", self.draft.looks.len())}>
                    <label class="paper__field"><span>{ words.text("own-look-overlay") }</span><select class="paper__input" onchange={overlay}>{ for options }</select></label>
                    { self.things(&look.things, false, move |lesson| lesson.looks.get_mut(at).map(|it| &mut it.things)) }
                    <Sentence label={words.text("own-look-says")} value={look.says.clone()} testid="look-says" long=true on_change={self.put(move |lesson, says| {
                        if let Some(look) = lesson.looks.get_mut(at) { look.says = says; }
                    })} />
                    { self.button("own-take-out", gone, "take-out") }
                </li>
            }
        };
        let add = self.act(|lesson| lesson.looks.push(Look::default()));
        html! { <><ol>{ for self.draft.looks.iter().enumerate().map(one) }</ol>{ self.button("own-add-look", add, "add-look") }</> }
    }
}
