//! How somebody reads, as cells: the language, what lengths and what wire sizes are read in. They need no store, so that they
//! can stand on every page.

use crate::reader::{ReadBy, use_reader};
use web_sys::HtmlSelectElement;
use words::{Language, Lengths, Reader, Sizes};
use yew::prelude::*;

/// The three cells in a row.
#[function_component]
pub(crate) fn ReaderCells() -> Html {
    let by = use_reader();
    let words = &by.words;
    let now = words.reader();
    let languages: Vec<(String, bool, Reader)> = Language::ALL
        .iter()
        .map(|language| {
            let reader = Reader {
                language: *language,
                ..now
            };
            (language.own_name().to_owned(), now.language == *language, reader)
        })
        .collect();
    let lengths = [
        (Lengths::Metres, "reader-lengths-metres"),
        (Lengths::Feet, "reader-lengths-feet"),
    ]
    .map(|(lengths, key)| (words.text(key), now.lengths == lengths, Reader { lengths, ..now }));
    let sizes = [
        (Sizes::SquareMillimetres, "reader-sizes-area"),
        (Sizes::Awg, "reader-sizes-gauge"),
    ]
    .map(|(sizes, key)| (words.text(key), now.sizes == sizes, Reader { sizes, ..now }));
    html! {
        <div class="title-block__row title-block__reader" role="group" aria-label={words.text("reader")} data-testid="reader">
            { cell(&by, "language", words.text("reader-language"), languages) }
            { cell(&by, "lengths", words.text("reader-lengths"), lengths.to_vec()) }
            { cell(&by, "sizes", words.text("reader-sizes"), sizes.to_vec()) }
        </div>
    }
}

/// A cell with its choices: what is shown, whether it holds, and how one reads with it.
fn cell(by: &ReadBy, name: &str, title: String, choices: Vec<(String, bool, Reader)>) -> Html {
    let onchange = {
        let (choose, readers) = (by.choose.clone(), choices.clone());
        Callback::from(move |event: Event| {
            let chosen = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| usize::try_from(select.selected_index()).ok())
                .and_then(|place| readers.get(place).map(|(.., reader)| *reader));
            if let Some(reader) = chosen {
                choose.emit(reader);
            }
        })
    };
    html! {
        <label class="cell">
            <span class="cell__name">{ title }</span>
            <select class="cell__select" {onchange} data-testid={format!("reader-{name}")}>
                { for choices.iter().map(|(shown, on, _)| html! { <option selected={*on}>{ shown }</option> }) }
            </select>
        </label>
    }
}
