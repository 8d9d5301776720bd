//! The reasons to choose from: a field that filters a short list; arrows walk, Enter chooses.

use crate::browser;
use crate::reader::use_words;
use lessons::Reason;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct ReasonBoxProps {
    pub(super) reasons: Rc<Vec<Reason>>,
    /// The reason that is chosen already.
    #[prop_or_default]
    pub(super) chosen: String,
    /// Called with the name of the reason.
    pub(super) on_choose: Callback<String>,
    /// Called with the words typed where no reason is called so; without it only reasons of the list can be chosen.
    #[prop_or_default]
    pub(super) on_own: Option<Callback<String>>,
    pub(super) on_leave: Callback<()>,
}

/// A reason in the reader's words.
struct Choice {
    name: String,
    title: String,
    group: String,
}

impl Choice {
    /// Whether it meets what was typed: each word of that stands in the title or the group.
    fn meets(&self, typed: &str) -> bool {
        let text = format!("{} {}", self.title, self.group).to_lowercase();
        typed.split_whitespace().all(|word| text.contains(word))
    }
}

#[function_component]
pub(super) fn ReasonBox(props: &ReasonBoxProps) -> Html {
    let words = use_words();
    let typed = use_state(String::new);
    // Where arrows went; nowhere yet.
    let at = use_state(|| None::<usize>);
    let field = use_node_ref();
    {
        let field = field.clone();
        use_effect_with((), move |()| {
            // A finger would have the keys of the screen over half of the drawing.
            if let Some(field) = field
                .cast::<HtmlInputElement>()
                .filter(|_| !browser::matches("(pointer: coarse)"))
            {
                let _ = field.focus();
            }
        });
    }
    let lower = typed.to_lowercase();
    let in_words = |reason: &Reason| Choice {
        name: reason.name.clone(),
        title: reason.title(&words),
        group: words.say(&reason.group),
    };
    let all = props.reasons.iter().map(in_words);
    let all: Vec<Choice> = all.filter(|it| it.meets(&lower)).collect();
    let own = props.on_own.as_ref().filter(|_| !lower.trim().is_empty());
    let count = all.len() + usize::from(own.is_some());
    // Before anything was typed or walked to, Enter may choose nothing but what was chosen before: a stray one would mark the
    // first reason of the list.
    let here = match *at {
        Some(at) => (count > 0).then(|| at.min(count - 1)),
        None if lower.trim().is_empty() => all.iter().position(|it| it.name == props.chosen),
        None => (count > 0).then_some(0),
    };
    let oninput = {
        let (typed, at) = (typed.clone(), at.clone());
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                typed.set(field.value());
                at.set(None);
            }
        })
    };
    // What Enter chooses is made ready now: the list it is chosen from is borrowed.
    let entered = {
        let name = here.and_then(|here| all.get(here)).map(|it| it.name.clone());
        let own = own.cloned().filter(|_| here.is_some());
        let (on_choose, typed) = (props.on_choose.clone(), (*typed).clone());
        move || match (&name, &own) {
            (Some(name), _) => on_choose.emit(name.clone()),
            (None, Some(own)) => own.emit(typed.clone()),
            (None, None) => {}
        }
    };
    let onkeydown = {
        let (at, leave) = (at.clone(), props.on_leave.clone());
        Callback::from(move |event: KeyboardEvent| {
            match event.key().as_str() {
                "ArrowDown" => at.set(
                    Some(here.map_or(0, |here| here + 1)).map(|next| if next >= count { 0 } else { next }),
                ),
                "ArrowUp" => at.set(Some(
                    here.unwrap_or(0)
                        .checked_sub(1)
                        .unwrap_or(count.saturating_sub(1)),
                )),
                "Enter" => entered(),
                "Escape" => leave.emit(()),
                _ => return,
            }
            event.prevent_default();
        })
    };
    let option = |n: usize, text: String, aside: &str, name: Option<String>| {
        let onclick = {
            let (on_choose, on_own, typed) = (props.on_choose.clone(), own.cloned(), (*typed).clone());
            Callback::from(move |_: MouseEvent| match (&name, &on_own) {
                (Some(name), _) => on_choose.emit(name.clone()),
                (None, Some(own)) => own.emit(typed.clone()),
                (None, None) => {}
            })
        };
        html! {
            <li id={format!("reason-{n}")} role="option" aria-selected={(Some(n) == here).to_string()} class={classes!("reasons__one", (Some(n) == here).then_some("reasons__one--on"))}
                {onclick} data-testid="reason"><span>{ text }</span><span class="reasons__group">{ aside.to_owned() }</span></li>
        }
    };
    let options = all.iter().enumerate().map(|(n, reason)| {
        let is_chosen = reason.name == props.chosen;
        let title = if is_chosen {
            format!("✓ {}", reason.title)
        } else {
            reason.title.clone()
        };
        option(n, title, &reason.group, Some(reason.name.clone()))
    });
    let own_option = own.map(|_| {
        option(
            all.len(),
            format!("“{}”", typed.trim()),
            &words.text("own-words"),
            None,
        )
    });
    {
        // What is chosen is in sight.
        use_effect_with(here, move |here| {
            let option =
                here.and_then(|here| browser::document()?.get_element_by_id(&format!("reason-{here}")));
            if let Some(option) = option {
                browser::bring_into_sight(&option);
            }
        });
    }
    html! {
        <div class="reasons">
            <input ref={field} type="text" class="paper__input" role="combobox" aria-expanded="true" aria-controls="reasons" aria-autocomplete="list"
                aria-activedescendant={here.map(|here| format!("reason-{here}"))} aria-label={words.text("exercise-why")} placeholder={words.text("exercise-filter")}
                autocomplete="off" spellcheck="false" value={(*typed).clone()} {oninput} {onkeydown} data-testid="reason-field" />
            <ul id="reasons" class="reasons__list" role="listbox" aria-label={words.text("exercise-reasons")}>
                { for options }
                { for own_option }
                if count == 0 { <li class="reasons__one" role="option" aria-selected="false" aria-disabled="true">{ words.text("exercise-no-reason") }</li> }
            </ul>
        </div>
    }
}
