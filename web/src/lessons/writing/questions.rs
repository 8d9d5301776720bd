//! Questions for the class, with answers to choose from.

use super::form::Form;
use crate::lessons::fields::Sentence;
use lessons::{Answer, Question};
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

/// Answers that a new question has room for.
const ANSWERS: usize = 3;

impl Form<'_> {
    pub(super) fn questions(&self) -> Html {
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
