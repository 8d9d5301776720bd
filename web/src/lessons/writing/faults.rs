//! The faults that a class is to find: what the checks found and what the instructor adds, where each may be marked, and his
//! own words on it.

use super::form::Form;
use crate::lessons::fields::Sentence;
use crate::lessons::over::named;
use lessons::{Fault, title_in};
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

impl Form<'_> {
    /// A fault: whether it is asked for, what it is, and the instructor's own words.
    pub(super) fn fault(&self, at: usize, all: &[Fault]) -> Html {
        let Some(fault) = all.get(at) else {
            return html! {};
        };
        let words = self.words;
        // What a field holds stays with its fault when that moves in the list.
        let name_of = |it: &Fault| format!("{} {:?} {}", it.reason, it.things.first(), it.is_by_check());
        let own = name_of(fault);
        let before = all.iter().take(at).filter(|it| name_of(it) == own).count();
        let key = format!("{own} {before}");
        let tags: Vec<String> = fault
            .things
            .iter()
            .map(|thing| self.store.desk.see(|editor| named(editor, *thing).0))
            .collect();
        let ask = {
            let (draft, set, fault) = (self.draft.clone(), self.set.clone(), fault.clone());
            Callback::from(move |event: Event| {
                if let Some(tick) = event.target_dyn_into::<HtmlInputElement>() {
                    let mut next = (*draft).clone();
                    next.ask_for(&fault, tick.checked());
                    set.emit(next);
                }
            })
        };
        let explain = {
            let fault = fault.clone();
            self.put(move |lesson, says| lesson.explain(&fault, &says))
        };
        let name = format!("{} ({})", title_in(&fault.reason, words), tags.join(", "));
        html! {
            <li class="own-fault" key={key.clone()}>
                <label class="own-fault__tick"><input type="checkbox" checked={fault.wanted} onchange={ask} data-testid="asked" />
                    // What is wanted stands first, so that its place is its number.
                    if fault.wanted { <b class="marks__number">{ at + 1 }</b> }<b>{ &name }</b></label>
                if fault.is_by_check() { <p class="paper__faint">{ fault.what(words) }</p> }
                if fault.wanted {
                    { self.places(fault, &key) }
                    <Sentence id={format!("fault-{at}")} label={words.say(&say!("own-fault-words", fault = name.as_str()))} unseen=true
                        hint={words.text("own-fault-hint")} value={fault.says.clone()} testid="fault-words" on_change={explain} long=true rows="1" />
                }
            </li>
        }
    }

    /// Where else a fault may be marked: places are added and taken out once that is asked for.
    fn places(&self, fault: &Fault, key: &str) -> Html {
        let words = self.words;
        let is_open = self.adding_to.as_deref() == Some(key);
        let turn = {
            let (adding_to, key) = (self.adding_to.clone(), key.to_owned());
            Callback::from(move |_: MouseEvent| adding_to.set((!is_open).then(|| key.clone())))
        };
        let button = |text: String, onclick: Callback<MouseEvent>, id: &'static str| {
            html! { <button type="button" class="lesson__button" {onclick} data-testid={id}>{ text }</button> }
        };
        let out = self.draft.added_to_fault(fault).iter().map(|tag| {
            let (fault, thing) = (fault.clone(), tag.clone());
            let onclick = self.act(move |lesson| lesson.take_from_fault(&fault, &thing));
            button(
                words.say(&say!("own-place-out", thing = tag)),
                onclick,
                "place-out",
            )
        });
        let picked = self
            .picked
            .as_ref()
            .filter(|(thing, _)| !fault.things.contains(thing));
        let add = picked.map(|(thing, _)| {
            let (tag, _) = self.store.desk.see(|editor| named(editor, *thing));
            let (fault, thing) = (fault.clone(), *thing);
            let onclick = self.act(move |lesson| lesson.add_to_fault(&fault, thing));
            button(
                words.say(&say!("own-add-thing", thing = tag)),
                onclick,
                "place-add",
            )
        });
        html! {
            <div class="paper__row">
                <button type="button" class="lesson__button" onclick={turn} aria-expanded={is_open.to_string()} data-testid="places">{ words.text("own-places") }</button>
                if is_open {
                    if add.is_none() { <span class="paper__faint">{ words.text("own-places-how") }</span> }
                    { add }
                    { for out }
                }
            </div>
        }
    }
}
