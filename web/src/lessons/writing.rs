//! The form of an instructor's own lesson, on paper beside the drawing: title, story, the faults that are to be found, what to
//! look at, a break, questions, the explanation; what it still lacks, and how it is given away. Every change is kept at once.

use super::fields::{Line, Prose, Sentence};
use super::handing::Handing;
use super::kept;
use super::over::{Badge, Sign, drawing, in_lesson, named, on_board, picked, use_drawing};
use super::reasons::ReasonBox;
use super::{Route, View, heading};
use crate::browser;
use crate::reader::use_words;
use crate::state::{Act, Store};
use ::drawing::{Overlay, Palette};
use editor::Open;
use lessons::{
    Answer, Break, BreakKind, Fault, Lesson, Look, Question, Thing, Version, fault_name, faults, reasons,
    title_in,
};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{HtmlElement, HtmlInputElement, HtmlSelectElement};
use words::{Words, say};
use yew::prelude::*;

/// Answers that a new question has room for.
const ANSWERS: usize = 3;

#[derive(Properties, PartialEq)]
pub(super) struct WritingProps {
    /// The lesson as it was opened.
    pub(super) lesson: Rc<Lesson>,
    pub(super) id: String,
    pub(super) palette: Rc<Palette>,
    pub(super) route: Route,
}

/// What every section of the form needs.
struct Form<'f> {
    draft: &'f Rc<Lesson>,
    set: &'f Callback<Lesson>,
    words: &'f Words,
    store: &'f Store,
    /// What is picked on the drawing: the name by which a lesson knows it.
    picked: Option<(Thing, String)>,
}

#[function_component]
pub(super) fn Writing(props: &WritingProps) -> Html {
    let words = use_words();
    let store = use_drawing(&props.lesson, &props.palette);
    let draft = {
        let lesson = props.lesson.clone();
        use_state(move || lesson)
    };
    let trouble = use_state(|| None::<String>);
    let adding = use_state(|| None::<Thing>);
    let fresh = use_state(|| None::<usize>);
    let bad = use_memo((), |()| props.lesson.analyse(Version::Bad));
    let choices = use_memo((), |()| reasons(&props.lesson));
    {
        let name = words.text("lesson-writing");
        use_effect_with((), move |()| browser::name_page(&name));
    }
    let set = {
        let (draft, trouble, id, words) = (draft.clone(), trouble.clone(), props.id.clone(), words.clone());
        Callback::from(move |next: Lesson| {
            kept::hold(&id, next.clone());
            let (trouble, id, kept_now, words) = (trouble.clone(), id.clone(), next.clone(), words.clone());
            spawn_local(async move {
                let told = kept::keep(&id, &kept_now)
                    .await
                    .err()
                    .map(|error| words.say(&error.said()));
                trouble.set(told);
            });
            draft.set(Rc::new(next));
        })
    };
    {
        let adding = adding.clone();
        use_effect_with(store.beside.clone(), move |beside| {
            if let Open::Details(thing) = beside {
                adding.set(Some(in_lesson(thing)));
            }
        });
    }
    {
        // A fault that was just added wants its words.
        let fresh = fresh.clone();
        use_effect_with(*fresh, move |at| {
            if let Some(at) = at {
                let id = format!("fault-{at}");
                let found = browser::document().and_then(|document| document.get_element_by_id(&id));
                if let Some(field) = found.and_then(|field| field.dyn_into::<HtmlElement>().ok()) {
                    let _ = field.focus();
                }
                fresh.set(None);
            }
        });
    }
    let leave = {
        let (adding, store) = (adding.clone(), store.clone());
        Callback::from(move |()| {
            adding.set(None);
            store.dispatch(Act::Close);
            browser::focus_board();
        })
    };
    let add = {
        let (draft, set, bad, store) = (draft.clone(), set.clone(), bad.clone(), store.clone());
        let (adding, fresh) = (adding.clone(), fresh.clone());
        Callback::from(move |reason: String| {
            let Some(thing) = *adding else { return };
            let mut next = (**draft).clone();
            let there = faults(&next, &bad)
                .into_iter()
                .find(|it| it.reason == reason && it.things.contains(&thing));
            match there {
                Some(fault) => next.ask_for(&fault, true),
                None => drop(next.add_fault(&reason, &[thing], "")),
            }
            let at = faults(&next, &bad)
                .iter()
                .position(|it| it.reason == reason && it.things.contains(&thing));
            set.emit(next);
            adding.set(None);
            fresh.set(at);
            store.dispatch(Act::Close);
        })
    };
    let form = Form {
        draft: &draft,
        set: &set,
        words: &words,
        store: &store,
        picked: {
            let name = store.desk.see(|editor| {
                let thing = editor.selection().single().or_else(|| editor.focus().cloned());
                thing.map(|it| it.written(editor.sheet()))
            });
            picked(&store).zip(name)
        },
    };
    let all = faults(&draft, &bad);
    let badges = all
        .iter()
        .filter(|fault| fault.wanted)
        .zip(1..)
        .filter_map(|(fault, number): (_, usize)| {
            Some(Badge {
                thing: on_board(*fault.things.first()?),
                sign: Sign::Mark,
                word: number.to_string(),
            })
        })
        .collect();
    let adding_form = adding.map(|thing| {
        let (tag, name) = store.desk.see(|editor| named(editor, thing));
        let shut = {
            let leave = leave.clone();
            Callback::from(move |_: MouseEvent| leave.emit(()))
        };
        let own = {
            let add = add.clone();
            Callback::from(move |typed: String| add.emit(fault_name(&typed)))
        };
        html! {
            <section class="marking" aria-label={words.say(&say!("exercise-marking", thing = tag.as_str()))} data-testid="adding" key={format!("{thing:?}")}>
                <header class="marking__head"><b>{ &tag }</b><span class="paper__faint">{ name }</span>
                    <button type="button" class="lesson__button" onclick={shut}>{ words.text("exercise-leave") }<kbd>{ "Esc" }</kbd></button></header>
                <p>{ words.text("own-fault-why") }</p>
                <ReasonBox reasons={choices.clone()} on_choose={add} on_own={own} on_leave={leave} />
            </section>
        }
    });
    let add_picked = {
        let (adding, thing) = (adding.clone(), form.picked.as_ref().map(|it| it.0));
        Callback::from(move |_: MouseEvent| adding.set(thing))
    };
    let lacks = draft.lacks(&bad);
    let lacking: Vec<String> = lacks.iter().map(|lack| words.say(&lack.saying())).collect();
    let label = store.desk.see(|editor| {
        words.say(&say!(
            "own-drawing",
            parts = editor.sheet().parts.len(),
            runs = editor.sheet().runs.len()
        ))
    });
    let say_it = {
        let store = store.dispatcher();
        Callback::from(move |text: String| store.dispatch(Act::Say(text)))
    };
    html! {
        <main class="over" data-testid="writing">
            { drawing(&store, &words, label, badges) }
            { heading(&words, &draft, &props.route, View::Writing) }
            <section class="paper" aria-label={words.text("lesson-writing")} data-testid="paper">
                if let Some(trouble) = &*trouble { <p class="paper__trouble" role="alert" data-testid="own-trouble">{ trouble }</p> }
                <Sentence label={words.text("own-title")} value={draft.title.clone()} testid="own-title" on_change={form.put(|lesson, title| lesson.title = title)} />
                <Prose label={words.text("own-story")} hint={words.text("own-story-hint")} value={draft.story.clone()} testid="own-story" on_change={form.put_all(|lesson, story| lesson.story = story)} />
                <p class="paper__faint">{ if draft.has_good() { words.text("own-with-good") } else { words.text("own-without-good") } }</p>
                <h2 class="paper__head">{ words.say(&say!("own-faults", count = all.iter().filter(|it| it.wanted).count())) }</h2>
                <p class="paper__how">{ words.text("own-faults-how") }</p>
                if let Some(adding) = adding_form { { adding } } else {
                    <button type="button" class="paper__main" onclick={add_picked} disabled={form.picked.is_none()} data-testid="add-fault">
                        { match &form.picked {
                            Some((_, name)) => words.say(&say!("own-add-fault", thing = name.as_str())),
                            None => words.text("own-add-fault-none"),
                        } }<kbd>{ "Enter" }</kbd>
                    </button>
                }
                <ul class="own-faults" data-testid="own-faults">{ for (0..all.len()).map(|at| form.fault(at, &all)) }</ul>
                { form.fold("own-looks", draft.looks.len(), form.looks()) }
                { form.fold("own-break", draft.breaks.len(), form.breaks()) }
                { form.fold("own-questions", draft.questions.len(), form.questions()) }
                { form.fold("own-explanation", draft.explanation.len(), html! {
                    <>
                        <Prose label={words.text("own-explain")} hint={words.text("own-explain-hint")} value={draft.explanation.clone()} testid="own-explain" on_change={form.put_all(|lesson, all| lesson.explanation = all)} />
                        <Line label={words.text("own-sources")} hint={words.text("own-sources-hint")} value={draft.sources.clone()} testid="own-sources" on_change={form.put_all(|lesson, all| lesson.sources = all)} />
                    </>
                }) }
                <h2 class="paper__head">{ words.text("own-give") }</h2>
                if lacking.is_empty() {
                    <p data-testid="own-whole">{ words.text("own-whole") }</p>
                } else {
                    <p>{ words.text("own-lacks") }</p>
                    <ul class="own-lacks" data-testid="own-lacks">{ for lacking.into_iter().map(|lack| html! { <li>{ lack }</li> }) }</ul>
                }
                <Handing lesson={(*draft).clone()} whole={lacks.is_empty()} store={store.clone()} say={say_it} />
            </section>
        </main>
    }
}

impl Form<'_> {
    /// Does something to the lesson.
    fn act(&self, how: impl Fn(&mut Lesson) + 'static) -> Callback<MouseEvent> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |_: MouseEvent| {
            let mut next = (*draft).clone();
            how(&mut next);
            set.emit(next);
        })
    }
    /// Puts a text into the lesson.
    fn put(&self, how: impl Fn(&mut Lesson, String) + 'static) -> Callback<String> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |text: String| {
            let mut next = (*draft).clone();
            how(&mut next, text);
            set.emit(next);
        })
    }
    /// Puts paragraphs or lines into the lesson.
    fn put_all(&self, how: impl Fn(&mut Lesson, Vec<String>) + 'static) -> Callback<Vec<String>> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |all: Vec<String>| {
            let mut next = (*draft).clone();
            how(&mut next, all);
            set.emit(next);
        })
    }
    /// Puts a choice of a list into the lesson.
    fn choose(&self, how: impl Fn(&mut Lesson, String) + 'static) -> Callback<Event> {
        let put = self.put(how);
        Callback::from(move |event: Event| {
            if let Some(list) = event.target_dyn_into::<HtmlSelectElement>() {
                put.emit(list.value());
            }
        })
    }
    fn button(&self, key: &str, onclick: Callback<MouseEvent>, testid: &'static str) -> Html {
        html! { <button type="button" class="lesson__button" {onclick} data-testid={testid}>{ self.words.text(key) }</button> }
    }
    /// A section that is shut until it is wanted.
    fn fold(&self, key: &'static str, count: usize, inside: Html) -> Html {
        html! {
            <details class="paper__fold" data-testid={key}>
                <summary>{ self.words.text(key) }if count > 0 { { format!(" ({count})") } }</summary>
                { inside }
            </details>
        }
    }

    /// A fault: whether it is asked for, what it is, and the instructor's own words.
    fn fault(&self, at: usize, all: &[Fault]) -> Html {
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
            <li class="own-fault" {key}>
                <label class="own-fault__tick"><input type="checkbox" checked={fault.wanted} onchange={ask} data-testid="asked" />
                    // What is wanted stands first, so that its place is its number.
                    if fault.wanted { <b class="marks__number">{ at + 1 }</b> }<b>{ &name }</b></label>
                if fault.is_by_check() { <p class="paper__faint">{ fault.what(words) }</p> }
                if fault.wanted {
                    <Sentence id={format!("fault-{at}")} label={words.say(&say!("own-fault-words", fault = name.as_str()))} unseen=true
                        hint={words.text("own-fault-hint")} value={fault.says.clone()} testid="fault-words" on_change={explain} long=true rows="1" />
                }
            </li>
        }
    }

    /// Adds what is picked on the drawing to a list of names in the lesson; `terminal` takes the terminal itself.
    fn things(
        &self,
        names: &[String],
        terminal: bool,
        of: impl Fn(&mut Lesson) -> Option<&mut Vec<String>> + Copy + 'static,
    ) -> Html {
        let words = self.words;
        let name = self.picked.as_ref().map(|(_, name)| {
            let tag = name.split_once('.').map_or(name.as_str(), |(tag, _)| tag);
            if terminal { name.clone() } else { tag.to_owned() }
        });
        let add = name.clone().filter(|name| !names.contains(name)).map(|name| {
            let shown = words.say(&say!("own-add-thing", thing = name.as_str()));
            let onclick = self.act(move |lesson| {
                if let Some(all) = of(lesson) {
                    all.push(name.clone());
                }
            });
            html! { <button type="button" class="lesson__button" {onclick} data-testid="add-thing">{ shown }</button> }
        });
        let clear = self.act(move |lesson| {
            if let Some(all) = of(lesson) {
                all.clear();
            }
        });
        html! {
            <div class="paper__row">
                <span>{ if names.is_empty() { words.text("own-pick-things") } else { names.join(", ") } }</span>
                { add }
                if !names.is_empty() { { self.button("own-clear-things", clear, "clear-things") } }
            </div>
        }
    }

    fn looks(&self) -> Html {
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

    fn breaks(&self) -> Html {
        let words = self.words;
        let one = |(at, broken): (usize, &Break)| {
            let kind = self.choose(move |lesson, word| {
                let chosen = BreakKind::ALL.into_iter().find(|it| it.word() == word);
                if let (Some(broken), Some(kind)) = (lesson.breaks.get_mut(at), chosen) {
                    broken.kind = kind;
                    broken.things.clear();
                }
            });
            let options = BreakKind::ALL.into_iter().map(|it| {
                html! { <option value={it.word()} selected={it == broken.kind}>{ words.say(&it.said()) }</option> }
            });
            let most = broken.kind.wants();
            let gone = self.act(move |lesson| {
                if at < lesson.breaks.len() {
                    lesson.breaks.remove(at);
                }
            });
            // Why it cannot break like this, told while it is written.
            let unbroken = lessons::apply(broken, &self.draft.version(Version::Bad))
                .err()
                .filter(|_| broken.things.len() == most);
            html! {
                <li class="own-one" key={format!("{at} of {}", self.draft.breaks.len())}>
                    <label class="paper__field"><span>{ words.text("own-break-kind") }</span><select class="paper__input" onchange={kind}>{ for options }</select></label>
                    { self.things(&broken.things, broken.kind == BreakKind::Joined, move |lesson| {
                        let broken = lesson.breaks.get_mut(at)?;
                        // One too many takes the place of all.
                        if broken.things.len() >= most { broken.things.clear(); }
                        Some(&mut broken.things)
                    }) }
                    if let Some(why) = unbroken { <p class="paper__trouble">{ words.say(&why) }</p> }
                    <Sentence label={words.text("own-break-says")} value={broken.says.clone()} testid="break-says" long=true on_change={self.put(move |lesson, says| {
                        if let Some(broken) = lesson.breaks.get_mut(at) { broken.says = says; }
                    })} />
                    { self.button("own-take-out", gone, "take-out") }
                </li>
            }
        };
        let add = self.act(|lesson| lesson.breaks.push(Break::default()));
        html! { <><ol>{ for self.draft.breaks.iter().enumerate().map(one) }</ol>{ self.button("own-add-break", add, "add-break") }</> }
    }

    fn questions(&self) -> Html {
        let words = self.words;
        let add = self.act(|lesson| {
            let mut answers = vec![Answer::default(); ANSWERS];
            if let Some(first) = answers.first_mut() {
                first.right = true;
            }
            lesson.questions.push(Question {
                answers,
                ..Question::default()
            });
        });
        html! {
            <>
                <ol>{ for self.draft.questions.iter().enumerate().map(|(at, question)| self.question(at, question)) }</ol>
                { self.button("own-add-question", add, "add-question") }
                <p class="paper__faint">{ words.text("own-questions-how") }</p>
            </>
        }
    }

    fn question(&self, at: usize, question: &Question) -> Html {
        let words = self.words;
        let answer = |(n, answer): (usize, &Answer)| {
            let right = {
                let (draft, set) = (self.draft.clone(), self.set.clone());
                Callback::from(move |event: Event| {
                    if let Some(tick) = event.target_dyn_into::<HtmlInputElement>() {
                        let mut next = (*draft).clone();
                        if let Some(answer) = next.questions.get_mut(at).and_then(|it| it.answers.get_mut(n))
                        {
                            answer.right = tick.checked();
                        }
                        set.emit(next);
                    }
                })
            };
            html! {
                <li class="own-answer">
                    <label class="own-answer__right"><input type="checkbox" checked={answer.right} onchange={right} data-testid="answer-right" /><span>{ words.text("own-answer-right") }</span></label>
                    <Sentence label={words.say(&say!("own-answer", number = n + 1))} unseen=true hint={words.say(&say!("own-answer", number = n + 1))} value={answer.says.clone()} testid="answer" on_change={self.put(move |lesson, says| {
                        if let Some(answer) = lesson.questions.get_mut(at).and_then(|it| it.answers.get_mut(n)) { answer.says = says; }
                    })} />
                </li>
            }
        };
        let more = self.act(move |lesson| {
            if let Some(question) = lesson.questions.get_mut(at) {
                question.answers.push(Answer::default());
            }
        });
        let gone = self.act(move |lesson| {
            if at < lesson.questions.len() {
                lesson.questions.remove(at);
            }
        });
        html! {
            <li class="own-one" key={format!("{at} of {}", self.draft.questions.len())}>
                <Sentence label={words.say(&say!("own-question", number = at + 1))} value={question.asks.clone()} testid="question" on_change={self.put(move |lesson, asks| {
                    if let Some(question) = lesson.questions.get_mut(at) { question.asks = asks; }
                })} />
                <ul>{ for question.answers.iter().enumerate().map(answer) }</ul>
                <Sentence label={words.text("own-question-why")} value={question.why.clone()} testid="question-why" on_change={self.put(move |lesson, why| {
                    if let Some(question) = lesson.questions.get_mut(at) { question.why = why; }
                })} />
                <div class="paper__row">{ self.button("own-add-answer", more, "add-answer") }{ self.button("own-take-out", gone, "take-out") }</div>
            </li>
        }
    }
}
