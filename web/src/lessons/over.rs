//! A drawing that lies over the table, for an exercise or beside the form of a lesson: one can look, pick and measure, and
//! what is marked on it stands as badges, each with a shape and a word of its own.

use crate::canvas::Board;
use crate::components::{meter_face, spoken};
use crate::desk::Desk;
use crate::hooks;
use crate::reader::use_words;
use crate::state::{Act, State, Store};
use drawing::Palette;
use editor::{Action, Editor, Thing};
use kurbo::Point;
use lessons::{Lesson, Version};
use std::rc::Rc;
use words::Words;
use yew::prelude::*;

/// What a badge says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sign {
    /// A mark, not yet judged; or a fault that is asked for.
    Mark,
    /// Found.
    Found,
    /// Missed.
    Missed,
    /// Wrongly accused.
    Wrong,
    /// Neither for nor against.
    Neither,
}

impl Sign {
    fn class(self) -> &'static str {
        match self {
            Self::Mark => "badge--mark",
            Self::Found => "badge--found",
            Self::Missed => "badge--missed",
            Self::Wrong => "badge--wrong",
            Self::Neither => "badge--neither",
        }
    }
}

/// The shape of a sign: they differ without their colours.
pub(super) fn sign(sign: Sign) -> Html {
    let path = match sign {
        Sign::Mark => "M3 15V2l10 4-10 4",
        Sign::Found => "M2 9l4 4L14 3",
        Sign::Missed => "M3 3h10v10H3z",
        Sign::Wrong => "M3 3l10 10M13 3L3 13",
        Sign::Neither => "M3 8h10",
    };
    let dashes = (sign == Sign::Missed).then_some("3 2");
    html! {
        <svg class={classes!("sign", sign.class())} viewBox="0 0 16 16" aria-hidden="true">
            <path d={path} fill="none" stroke="currentColor" stroke-width="2.2" stroke-dasharray={dashes} />
        </svg>
    }
}

/// Something that stands at a part or run.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Badge {
    pub(super) thing: Thing,
    pub(super) sign: Sign,
    pub(super) word: String,
}

/// The drawing's thing for one of the lesson's.
pub(super) fn on_board(thing: lessons::Thing) -> Thing {
    match thing {
        lessons::Thing::Part(id) => Thing::Part(id),
        lessons::Thing::Run(id) => Thing::Run(id),
    }
}

/// The lesson's thing for one of the drawing's: a terminal stands for its part.
pub(super) fn in_lesson(thing: &Thing) -> lessons::Thing {
    match thing {
        Thing::Part(id) => lessons::Thing::Part(*id),
        Thing::Terminal(at) => lessons::Thing::Part(at.part),
        Thing::Run(id) => lessons::Thing::Run(*id),
    }
}

/// What is picked, or else what the keyboard is on.
pub(super) fn picked(store: &Store) -> Option<lessons::Thing> {
    store.desk.see(|editor| {
        let picked = editor.selection().single();
        picked
            .or_else(|| editor.focus().cloned())
            .map(|it| in_lesson(&it))
    })
}

/// Tag and name of a thing: `A1, Amplifier under the seat`.
pub(super) fn named(editor: &Editor, thing: lessons::Thing) -> (String, String) {
    let sheet = editor.sheet();
    let found = match thing {
        lessons::Thing::Part(id) => sheet
            .parts
            .get(&id)
            .map(|part| (part.tag.clone(), editor.words().say(&part.said()))),
        lessons::Thing::Run(id) => sheet.runs.get(&id).map(|run| {
            let end = |end: &model::End| end.terminal().map(|at| sheet.written(at)).unwrap_or_default();
            (run.tag.clone(), format!("{} – {}", end(&run.from), end(&run.to)))
        }),
    };
    found.unwrap_or_default()
}

/// The bad version of a lesson, to be looked at, without its findings: the learner is to find them, and who writes the lesson
/// has them in the form.
#[hook]
pub(super) fn use_drawing(lesson: &Rc<Lesson>, palette: &Rc<Palette>) -> Store {
    let words = use_words();
    let store = {
        let (lesson, words) = (lesson.clone(), words.clone());
        use_reducer(move || {
            let job = lesson.version(Version::Bad);
            State::new(Desk::exercise(job, words))
        })
    };
    {
        let (desk, tell) = (store.desk.clone(), store.dispatcher());
        use_effect_with((), move |()| {
            hooks::install_over(&desk);
            desk.listen(Callback::from(move |effects| tell.dispatch(Act::Came(effects))));
        });
    }
    {
        let desk = store.desk.clone();
        use_effect_with(words, move |words: &Words| desk.read_by(words));
    }
    {
        let desk = store.desk.clone();
        use_effect_with(palette.clone(), move |palette| {
            desk.set_palette((**palette).clone())
        });
    }
    store
}

/// Tools that help to find a fault without telling it, and those of the paper.
const TOOLS: [(Action, &str); 5] = [
    (Action::Meter, "over-meter"),
    (Action::WhatFeeds, "over-feeds"),
    (Action::ZoomOut, "over-reduce"),
    (Action::ZoomIn, "over-enlarge"),
    (Action::Fit, "over-fit"),
];

/// The drawing with its badges and tools. `label` says what it is.
pub(super) fn drawing(store: &Store, words: &Words, label: String, badges: Vec<Badge>) -> Html {
    let tools = TOOLS.map(|(action, key)| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
        let is_on = store.desk.see(|editor| match action {
            Action::Meter => editor.tool().address().starts_with("meter"),
            Action::WhatFeeds => editor.feeds().is_some(),
            _ => false,
        });
        let pressed = matches!(action, Action::Meter | Action::WhatFeeds).then(|| is_on.to_string());
        html! {
            <button type="button" class={classes!("lesson__button", is_on.then_some("lesson__button--on"))} {onclick} aria-pressed={pressed}
                data-testid={action.id()}>{ words.text(key) }<kbd>{ action.key() }</kbd></button>
        }
    });
    html! {
        <ContextProvider<Store> context={store.clone()}>
            <Board over=true label={label} />
            <Badges store={store.clone()} badges={badges} />
            <div class="over__foot">
                { meter_face(store) }
                { spoken(store) }
                <div class="over__tools" role="group" aria-label={words.text("over-tools")}>{ for tools }</div>
            </div>
        </ContextProvider<Store>>
    }
}

#[derive(Properties, PartialEq)]
struct BadgesProps {
    store: Store,
    badges: Vec<Badge>,
}

/// The badges, each where its thing lies; they follow when the paper is moved.
#[function_component]
fn Badges(props: &BadgesProps) -> Html {
    let moved = use_state(|| 0_u32);
    {
        let (desk, moved) = (props.store.desk.clone(), moved.setter());
        use_effect_with((), move |()| {
            let count = std::cell::Cell::new(0_u32);
            desk.on_camera(Callback::from(move |()| {
                count.set(count.get().wrapping_add(1));
                moved.set(count.get());
            }));
        });
    }
    let desk = &props.store.desk;
    let stands = props.badges.iter().enumerate().filter_map(|(at, badge)| {
        let place = desk.see(|editor| {
            let at = match &badge.thing {
                Thing::Run(id) => editor.layout().run(*id).map(|way| way.label_at),
                thing => editor
                    .area_of(thing)
                    .map(|area| Point::new(area.center().x, area.y0)),
            };
            at.map(|at| editor.camera().to_screen(at))
        })?;
        // Several at one thing stand one above the other.
        let before = props.badges.iter().take(at).filter(|it| it.thing == badge.thing).count();
        let style = format!("left:{:.0}px;top:{:.0}px", place.x, place.y - 27.0 * before as f64);
        Some(html! {
            <span class={classes!("badge", badge.sign.class())} {style} data-testid="badge">{ sign(badge.sign) }{ &badge.word }</span>
        })
    });
    html! { <div class="badges" aria-hidden="true">{ for stands }</div> }
}
