//! What was last said to the user: one line on the sheet, and the same for the screen reader.

use crate::state::{Panel, Store};
use crate::storage::Keeping;
use editor::{Editor, Open};
use yew::prelude::*;

pub(crate) fn spoken(store: &Store) -> Html {
    let words = store.words();
    let hint = words.say(&store.desk.see(|editor| editor.tool().hint()));
    // The meter has its hint on its face.
    let resting = store.desk.see(|editor| {
        editor.tool().address() == "pick/idle" || matches!(editor.tool(), editor::Tool::Meter(_))
    });
    let said = store.said.clone();
    // What a tool says when it is taken in hand is its hint, which then stands below or on the meter's face: once is enough
    // for who reads it, while who hears it hears it here.
    let stands_elsewhere = *said == *hint || store.desk.see(|editor| stands_open(store, editor, &said));
    let trouble = match &store.keeping {
        Keeping::Failed(why) => Some(why.clone()),
        Keeping::Elsewhere => Some(words.text("spoken-elsewhere")),
        _ => None,
    };
    html! {
        <div class="spoken">
            if let Some(trouble) = trouble {
                <p class="spoken__trouble" role="alert" data-testid="storage-trouble">{ trouble }</p>
            }
            // The key makes the same words a new element, which is read again.
            <p class={classes!("spoken__said", stands_elsewhere.then_some("unseen"))} aria-live="polite" data-testid="said"><span key={store.said_count}>{ &*said }</span></p>
            if !resting {
                <p class="spoken__hint" data-testid="hint">{ hint }</p>
            }
        </div>
    }
}

/// Whether these words are to be read on a slip, in a drawer or on a legend that lies open.
fn stands_open(store: &Store, editor: &Editor, said: &str) -> bool {
    let on_slip = matches!(store.beside, Open::Finding(_))
        && editor
            .finding()
            .and_then(|place| editor.analysis().findings.get(place))
            .is_some_and(|finding| said.ends_with(&editor.words().say(&finding.what)));
    let in_drawer = store.panel == Panel::Breaking
        && matches!(editor.course(), Some(Ok(course)) if editor.words().say(&course.outcome.said(editor.sheet())) == said);
    on_slip || in_drawer || editor.laid().is_some_and(|under| under.words() == said)
}
