//! Which sheets of the job that a lesson was made of are its bad and its good version.

use super::form::Form;
use crate::lessons::kept::Source;
use lessons::Lesson;
use model::SheetKind;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// The list of the sheets for the bad version; it has the focus again once the drawing was taken anew.
pub(super) const FOR_BAD: &str = "own-sheet-bad";
/// The same for the good version.
pub(super) const FOR_GOOD: &str = "own-sheet-good";

impl Form<'_> {
    /// The choice of sheets; `on_take` gets the lesson with its new versions, which sheets these are, and the list that was used.
    pub(super) fn sheets(&self, source: &Source, on_take: &Callback<(Lesson, Source, &'static str)>) -> Html {
        let words = self.words;
        let list = |id: &'static str,
                    key: &'static str,
                    chosen: Option<SheetKind>,
                    others: Vec<Option<SheetKind>>| {
            let (draft, source, on_take) = (self.draft.clone(), source.clone(), on_take.clone());
            let onchange = Callback::from(move |event: Event| {
                let Some(list) = event.target_dyn_into::<HtmlSelectElement>() else {
                    return;
                };
                let mut source = source.clone();
                match SheetKind::from_word(&list.value()) {
                    Some(kind) if id == FOR_BAD => {
                        // Two versions of one sheet would differ in nothing.
                        if source.good == Some(kind) {
                            source.good = Some(source.bad);
                        }
                        source.bad = kind;
                    }
                    kind => source.good = kind,
                }
                let mut lesson = (*draft).clone();
                lesson.take_sheets(&source.job, source.bad, source.good);
                on_take.emit((lesson, source, id));
            });
            let options = others.into_iter().map(|kind| {
                let name = kind.map_or_else(|| words.text("own-sheet-none"), |kind| words.say(&kind.said()));
                html! { <option value={kind.map_or("", SheetKind::word)} selected={kind == chosen}>{ name }</option> }
            });
            html! {
                <label class="paper__field"><span>{ words.text(key) }</span>
                    <select class="paper__input" {id} {onchange} data-testid={id}>{ for options }</select></label>
            }
        };
        let all = || source.job.sheets.keys().copied().map(Some);
        let others = all().filter(|kind| *kind != Some(source.bad)).chain([None]);
        html! {
            <div class="own-sheets">
                { list(FOR_BAD, "own-sheet-bad", Some(source.bad), all().collect()) }
                { list(FOR_GOOD, "own-sheet-good", source.good, others.collect()) }
            </div>
        }
    }
}
