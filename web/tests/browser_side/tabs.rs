//! Two tabs on one job. The other tab is a frame with a page of its own: removing it ends it as closing a tab does.

use super::help::until;
use crate::tabs::{Claim, Hold, News};
use gloo_timers::future::TimeoutFuture;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::HtmlIFrameElement;

type Heard = Rc<RefCell<Vec<Hold>>>;

async fn claim(job: &str) -> (Claim, Heard) {
    let heard = Heard::default();
    let ear = Rc::clone(&heard);
    (
        Claim::make(job, move |hold| ear.borrow_mut().push(hold)).await,
        heard,
    )
}

/// Another page that holds the lock of a job, taken with these options of the browser.
async fn other_page(job: &str, options: &str) -> HtmlIFrameElement {
    let document = web_sys::window().unwrap().document().unwrap();
    let frame: HtmlIFrameElement = document.create_element("iframe").unwrap().unchecked_into();
    frame.set_srcdoc(&format!(
        "<script>navigator.locks.request('loomwright:{job}', {options}, () => {{ document.title = 'held'; return new Promise(() => {{}}); }});</script>"
    ));
    document.body().unwrap().append_child(&frame).unwrap();
    until("the other page holds the lock", || {
        frame
            .content_document()
            .is_some_and(|page| page.title() == "held")
    })
    .await;
    frame
}

#[wasm_bindgen_test]
async fn the_first_tab_may_write() {
    let (claim, heard) = claim("first").await;
    assert_eq!(claim.hold(), Hold::Ours);
    TimeoutFuture::new(50).await;
    assert!(heard.borrow().is_empty());
}

#[wasm_bindgen_test]
async fn a_job_that_was_just_made_is_this_tabs_before_the_browser_has_answered() {
    let heard = Heard::default();
    let ear = Rc::clone(&heard);
    let new = Claim::of_new("new", move |hold| ear.borrow_mut().push(hold));
    assert_eq!(new.hold(), Hold::Ours);
    TimeoutFuture::new(50).await;
    assert!(heard.borrow().is_empty());
    let (second, _) = claim("new").await;
    assert_eq!(second.hold(), Hold::Elsewhere, "the lock stands behind it");
    drop(new);
    until("it is given back", || second.hold() == Hold::Ours).await;

    // Given back before the browser has answered, it is nobody's.
    drop(Claim::of_new("short", |_| {}));
    TimeoutFuture::new(50).await;
    let (next, _) = claim("short").await;
    assert_eq!(next.hold(), Hold::Ours);
}

#[wasm_bindgen_test]
async fn a_claim_on_a_new_job_that_another_tab_has_all_the_same_says_so() {
    let _other = other_page("taken", "{}").await;
    let heard = Heard::default();
    let ear = Rc::clone(&heard);
    let claim = Claim::of_new("taken", move |hold| ear.borrow_mut().push(hold));
    until("it is known", || claim.hold() == Hold::Elsewhere).await;
    assert_eq!(*heard.borrow(), [Hold::Elsewhere]);
}

#[wasm_bindgen_test]
async fn the_second_tab_reads_until_the_first_is_closed() {
    let other = other_page("closed", "{}").await;
    let (claim, heard) = claim("closed").await;
    assert_eq!(claim.hold(), Hold::Elsewhere);
    TimeoutFuture::new(50).await;
    assert!(heard.borrow().is_empty());
    other.remove();
    until("it is ours", || claim.hold() == Hold::Ours).await;
    assert_eq!(*heard.borrow(), [Hold::Ours]);
}

#[wasm_bindgen_test]
async fn another_page_that_takes_over_is_noticed_and_so_is_its_end() {
    let (claim, heard) = claim("stolen").await;
    assert_eq!(claim.hold(), Hold::Ours);
    let other = other_page("stolen", "{ steal: true }").await;
    until("it is taken away", || claim.hold() == Hold::TakenAway).await;
    other.remove();
    until("it is ours again", || claim.hold() == Hold::Ours).await;
    assert_eq!(*heard.borrow(), [Hold::TakenAway, Hold::Ours]);
}

#[wasm_bindgen_test]
async fn taking_over_goes_both_ways() {
    let (first, first_heard) = claim("both").await;
    let (second, second_heard) = claim("both").await;
    assert_eq!((first.hold(), second.hold()), (Hold::Ours, Hold::Elsewhere));
    second.take_over().await;
    assert_eq!(second.hold(), Hold::Ours);
    until("the first notices", || first.hold() == Hold::TakenAway).await;
    first.take_over().await;
    until("the second notices", || second.hold() == Hold::TakenAway).await;
    assert_eq!(first.hold(), Hold::Ours);
    drop(first);
    until("the second has it when the first goes", || {
        second.hold() == Hold::Ours
    })
    .await;
    assert_eq!(*first_heard.borrow(), [Hold::TakenAway, Hold::Ours]);
    assert_eq!(*second_heard.borrow(), [Hold::Ours, Hold::TakenAway, Hold::Ours]);
}

#[wasm_bindgen_test]
async fn a_claim_that_is_dropped_waits_no_more() {
    let (first, _) = claim("dropped").await;
    let (second, second_heard) = claim("dropped").await;
    drop(second);
    drop(first);
    TimeoutFuture::new(50).await;
    assert!(second_heard.borrow().is_empty());
    let (third, _) = claim("dropped").await;
    assert_eq!(third.hold(), Hold::Ours);
}

#[wasm_bindgen_test]
async fn jobs_do_not_stand_in_each_others_way() {
    let (one, _) = claim("job-1").await;
    let (two, _) = claim("job-2").await;
    assert!(one.hold().may_write() && two.hold().may_write());
}

#[wasm_bindgen_test]
async fn a_reading_tab_hears_what_was_written() {
    let heard = Rc::new(RefCell::new(Vec::new()));
    let ear = Rc::clone(&heard);
    let _reader = News::listen(move |job| ear.borrow_mut().push(job));
    let writer = News::listen(|_| {});
    writer.tell_written("job-3");
    until("it is heard", || !heard.borrow().is_empty()).await;
    assert_eq!(*heard.borrow(), ["job-3"]);
}
