//! The mark of a grade: Stop a filled octagon, Fix an open triangle, Tidy a small dot; never by colour alone.

use checks::Grade;
use yew::prelude::*;

/// The class that goes with a grade.
pub(crate) fn grade_class(grade: Grade) -> &'static str {
    match grade {
        Grade::Stop => "grade-stop",
        Grade::Fix => "grade-fix",
        Grade::Tidy => "grade-tidy",
    }
}

/// The mark itself.
pub(crate) fn mark(grade: Grade) -> Html {
    let shape = match grade {
        Grade::Stop => html! { <path d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" fill="currentColor" /> },
        Grade::Fix => {
            html! { <path d="M8 2 15 14.5H1z" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linejoin="round" /> }
        }
        Grade::Tidy => html! { <circle cx="8" cy="8" r="3.2" fill="currentColor" /> },
    };
    html! { <svg class={classes!("mark", grade_class(grade))} viewBox="0 0 16 16" aria-hidden="true">{ shape }</svg> }
}
