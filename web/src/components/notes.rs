//! The right margin: findings as a reviewer's notes, each beside the height of the thing it speaks of, with a leader line
//! to it while pointed at. Where they stand too dense, neighbours fold into a count.

use super::note::{Note, grade_said, note};
use crate::canvas::notes_width;
use crate::state::{Act, Store};
use checks::Grade;
use editor::margin_notes::{Unfolds, place};
use kurbo::Point;
use words::{Unit, drawn, precise, say};
use yew::prelude::*;

/// Height of a note of two lines, and of one.
const TALL_PX: f64 = 47.0;
const SHORT_PX: f64 = 27.0;
const TOP_PX: f64 = 56.0;
/// Radius of a finding's mark on the drawing, about.
const MARK_PX: f64 = 11.0;
/// The same for a finger.
const FINGER_PX: f64 = 44.0;
/// Height of the title block before it can be measured.
const TITLE_BLOCK_PX: f64 = 300.0;
/// From the lower edge of the window to the sheet's frame.
const FRAME_PX: f64 = 22.0;

/// What stands above the notes: that nothing was checked yet, that the feed falls short, that there are no numbers, or that nothing was found.
pub(crate) fn measured(editor: &editor::Editor) -> Option<String> {
    if !editor.is_studied() {
        return Some(editor.words().text("title-unchecked"));
    }
    let said = match &editor.analysis().study.outcome {
        circuit::Outcome::Collapsed { deliverable, .. } => Some(say!(
            "notes-collapsed",
            share = precise(deliverable.0, Unit::Percent, 0)
        )),
        circuit::Outcome::Failed { why } => Some(say!("notes-failed", why = why)),
        circuit::Outcome::Solved | circuit::Outcome::NothingToSolve => {
            let energy = &editor.analysis().study.energy;
            // Of an empty sheet there is nothing to say.
            let is_clear = !editor.sheet().parts.is_empty() && editor.analysis().findings.is_empty();
            is_clear.then(|| {
                say!(
                    "notes-none",
                    draw = drawn(energy.draw.0, Unit::Plain("A")),
                    available = drawn(energy.available.0, Unit::Plain("A"))
                )
            })
        }
    };
    said.map(|said| editor.words().say(&said))
}

#[function_component]
pub(crate) fn Notes() -> Html {
    let store = use_context::<Store>();
    let opened = use_state(|| None::<usize>);
    // The camera moves without the app's state hearing of it: the notes follow by a count of their own.
    let moved = use_force_update();
    {
        let desk = store.as_ref().map(|store| store.desk.clone());
        use_effect_with((), move |()| {
            if let Some(desk) = desk {
                desk.on_camera(Callback::from(move |()| moved.force_update()));
            }
        });
    }
    let Some(store) = store else { return html! {} };
    let (width, height) = store
        .desk
        .see(|editor| (editor.camera().width, editor.camera().height));
    let column = notes_width(width);
    if column == 0.0 {
        return html! {};
    }
    let analysis = store.desk.see(|editor| editor.analysis().clone());
    let title_block = crate::browser::height_of(".title-block").unwrap_or(TITLE_BLOCK_PX);
    let bottom = (height - title_block - 34.0).max(TOP_PX + 2.0 * SHORT_PX);
    let wishes: Vec<(f64, usize)> = store.desk.see(|editor| {
        let at = |finding: &checks::Finding| {
            editor
                .place_of(finding)
                .map_or(TOP_PX, |at| editor.camera().to_screen(at).y)
        };
        analysis
            .findings
            .iter()
            .enumerate()
            .map(|(place, finding)| (at(finding), place))
            .collect()
    });
    let dense = wishes.len() as f64 * TALL_PX > bottom - TOP_PX;
    let short = if crate::browser::matches("(any-pointer: coarse)") {
        FINGER_PX
    } else {
        SHORT_PX
    };
    let note_height = if dense { short } else { TALL_PX };
    let is_stop = |place: usize| {
        analysis
            .findings
            .get(place)
            .is_some_and(|finding| finding.grade == Grade::Stop)
    };
    let placed = place(wishes, is_stop, note_height, TOP_PX, bottom);
    let current = store.desk.see(editor::Editor::finding);

    let on_open = {
        let (desk, opened) = (store.desk.clone(), opened.clone());
        Callback::from(move |place: usize| {
            opened.set(None);
            desk.change(|editor| editor.go_to_finding(place));
        })
    };
    let on_point = {
        let store = store.clone();
        Callback::from(move |place| store.dispatch(Act::Point(place)))
    };
    let pointed = store.pointed.or(current);
    let leader = pointed.and_then(|place| {
        let finding = analysis.findings.get(place)?;
        let note = placed.iter().find(|note| note.places.contains(&place))?;
        let at = store
            .desk
            .see(|editor| editor.place_of(finding).map(|at| editor.camera().to_screen(at)))?;
        // The line ends at the rim of the mark, whose number stays readable.
        let (from, to) = (
            Point::new(width - column, note.top + note_height / 2.0),
            Point::new(at.x, at.y),
        );
        let short = to + (from - to).normalize() * MARK_PX.min((from - to).hypot());
        Some((from, short, finding.grade))
    });
    let words = store.words();
    let items = placed.iter().map(|group| {
        let single = |place: usize, top: f64| {
            let Some(finding) = analysis.findings.get(place) else { return html! {} };
            note(&Note {
                place,
                grade: finding.grade,
                said: grade_said(&words, finding.grade, finding.undecided),
                what: words.say(&finding.what).into(),
                top,
                is_current: current == Some(place),
                short: dense,
                on_open: on_open.clone(),
                on_point: on_point.clone(),
            })
        };
        match group.places.as_slice() {
            [place] => single(*place, group.top),
            places => {
                let first = places.first().copied().unwrap_or(0);
                let count = |grade: Grade| {
                    places.iter().filter(|place| analysis.findings.get(**place).is_some_and(|f| f.grade == grade)).count()
                };
                let folded: Vec<String> = [Grade::Stop, Grade::Fix, Grade::Tidy]
                    .into_iter()
                    .filter(|grade| count(*grade) > 0)
                    .map(|grade| format!("{} {}", count(grade), words.say(&grade.said())))
                    .collect();
                let toggle = {
                    let opened = opened.clone();
                    Callback::from(move |_: MouseEvent| opened.set(if *opened == Some(first) { None } else { Some(first) }))
                };
                let head = (group.top, group.top + note_height);
                let unfolds = Unfolds::of(places.len() as f64 * TALL_PX, head, TOP_PX, bottom);
                let is_over = unfolds == Unfolds::Over;
                let has_current = current.is_some_and(|current| places.contains(&current));
                // Of itself it does not hide the title block: what is in hand stands on its slip.
                let is_open = *opened == Some(first) || (has_current && !is_over);
                let top = if is_open && is_over { TOP_PX } else { group.top };
                let list = is_over.then(|| format!("height:{:.0}px", height - FRAME_PX - TOP_PX - note_height));
                let class = classes!(
                    "fold",
                    is_open.then_some("fold--open"),
                    (is_open && is_over).then_some("fold--over"),
                    (has_current && !is_open).then_some("fold--current"),
                );
                let above = (unfolds == Unfolds::Above).then_some("fold__notes--above");
                html! {
                    <li {class} style={format!("top:{top:.0}px")} key={format!("fold-{first}")}>
                        <button type="button" onclick={toggle} aria-expanded={is_open.to_string()} data-testid="note-fold">
                            <b>{ places.len() }</b>{ " " }{ words.text("notes-here") }{ " " }{ folded.join(", ") }
                        </button>
                        if is_open {
                            <ol class={classes!("fold__notes", above)} style={list}>{ for places.iter().map(|place| single(*place, 0.0)) }</ol>
                        }
                    </li>
                }
            }
        }
    });
    let measured = store.desk.see(measured);
    html! {
        <>
            <div class="margin" style={format!("width:{:.0}px", column - 22.0)} aria-hidden="true"></div>
            if let Some((from, to, grade)) = leader {
                <svg class={classes!("leader", super::mark::grade_class(grade))} aria-hidden="true">
                    <path d={format!("M{:.1} {:.1}H{:.1}L{:.1} {:.1}", from.x, from.y, (from.x - 18.0).max(to.x), to.x, to.y)} />
                </svg>
            }
            <section class="notes" style={format!("width:{:.0}px", column - 22.0)} aria-label={words.text("title-findings")}>
                if let Some(words) = measured {
                    <p class="notes__words" data-testid="notes-words">{ words }</p>
                }
                <ol class="notes__list" data-testid="notes">{ for items }</ol>
            </section>
        </>
    }
}
