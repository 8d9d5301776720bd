//! What all of these tests share: jobs to store, a storage of their own, and waiting for a condition with a deadline.

use crate::storage::Store;
use gloo_timers::future::TimeoutFuture;
use model::history::{Entry, History};
use model::{Change, Edit, Job, Part, PartId, PartKind, SheetKind};
use std::cell::Cell;

/// A storage that no other test sees.
pub(crate) async fn store(test: &str) -> (Store, String) {
    thread_local!(static COUNT: Cell<u32> = const { Cell::new(0) });
    let count = COUNT.replace(COUNT.get() + 1);
    let name = format!("test-{test}-{count}-{}", js_sys::Date::now());
    (Store::open_named(&name).await.unwrap(), name)
}

/// A job with this title and one part.
pub(crate) fn job(title: &str) -> Job {
    let mut job = Job {
        title: title.to_owned(),
        ..Job::default()
    };
    job.apply(part(1, "B1"));
    job
}

/// An edit that puts a part.
pub(crate) fn part(id: u32, tag: &str) -> Edit {
    let part = Part::new(tag, PartKind::Battery(model::kinds::supply::Battery::default()));
    Edit::new(
        format!("Place {tag}"),
        vec![Change::Part {
            sheet: SheetKind::Plan,
            id: PartId(id),
            to: Some(Box::new(part)),
        }],
    )
}

/// Does an edit as the app does, and gives the entry for the journal.
pub(crate) fn done(history: &mut History, job: &mut Job, edit: Edit) -> Entry {
    history.apply(job, edit).expect("the edit changes something")
}

/// Tags of the plan's parts.
pub(crate) fn tags(job: &Job) -> Vec<String> {
    job.sheets[&SheetKind::Plan]
        .parts
        .values()
        .map(|part| part.tag.clone())
        .collect()
}

/// Waits until something is so, at most for five seconds.
pub(crate) async fn until(what: &str, is_so: impl Fn() -> bool) {
    for _ in 0..250 {
        if is_so() {
            return;
        }
        TimeoutFuture::new(20).await;
    }
    panic!("still not so after five seconds: {what}");
}
