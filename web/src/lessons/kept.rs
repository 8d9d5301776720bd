//! What the browser keeps of lessons: those that an instructor wrote here, and the results of exercises. Both stay on this
//! device. What cannot be kept is held for as long as the page is open, and said.

use crate::storage::{Store, StoreError};
use lessons::{Lesson, Record, Records, Sitting};
use model::{Job, SheetKind};
use ordered::OrderedMap;
use std::cell::RefCell;
use std::rc::Rc;

/// Names of kept lessons begin so.
const LESSONS: &str = "lesson:";
/// Names of the jobs that own lessons were made of begin so.
const SOURCES: &str = "lesson-job:";
/// Names of kept results begin so.
const RESULTS: &str = "result:";

thread_local! {
    /// Own lessons as they were written last, by id: a form that is left and opened again has them at once.
    static WRITTEN: RefCell<OrderedMap<String, Lesson>> = RefCell::default();
    /// What own lessons were made of, by id.
    static MADE_OF: RefCell<OrderedMap<String, Source>> = RefCell::default();
    /// Sittings that were left without handing in, by the address of their exercise.
    static LEFT: RefCell<OrderedMap<String, Sitting>> = RefCell::default();
}

/// The job of several sheets that an own lesson was made of, and which of them its versions are.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Source {
    pub(super) job: Rc<Job>,
    pub(super) bad: SheetKind,
    pub(super) good: Option<SheetKind>,
}

/// An id that nothing has: time and chance.
fn fresh() -> String {
    let chance = js_sys::Math::random().to_bits();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "milliseconds since 1970"
    )]
    let time = js_sys::Date::now().max(0.0) as u64;
    format!("{time:x}-{:x}", chance >> 20)
}

/// Begins a lesson of one's own; gives its id.
pub(super) fn begin(lesson: Lesson) -> String {
    let id = fresh();
    hold(&id, lesson);
    id
}

/// Holds a lesson as it was written last, for as long as the page is open.
pub(super) fn hold(id: &str, lesson: Lesson) {
    WRITTEN.with(|all| all.borrow_mut().insert(id.to_owned(), lesson));
}

/// Keeps a lesson of one's own.
pub(super) async fn keep(id: &str, lesson: &Lesson) -> Result<(), StoreError> {
    let store = Store::open().await?;
    store
        .keep_text(&format!("{LESSONS}{id}"), &lessons::write(lesson))
        .await
}

/// An own lesson: as it was written last in this page, else as it is kept.
pub(super) async fn own(id: &str) -> Result<Lesson, StoreError> {
    if let Some(lesson) = WRITTEN.with(|all| all.borrow().get(id).cloned()) {
        return Ok(lesson);
    }
    let name = format!("{LESSONS}{id}");
    let all = Store::open().await?.texts(&name).await?;
    let text = all.into_iter().find(|(known, _)| *known == name);
    let (_, text) = text.ok_or(StoreError::Missing)?;
    lessons::read_draft(&text).map_err(|errors| StoreError::Unreadable {
        reason: errors.first(),
        original: text,
    })
}

/// Keeps what a lesson was made of, so that other sheets of it can be taken later.
pub(super) async fn keep_source(id: &str, source: Source) -> Result<(), StoreError> {
    MADE_OF.with(|all| all.borrow_mut().insert(id.to_owned(), source.clone()));
    let text = format!(
        "{} {}\n{}",
        source.bad.word(),
        source.good.map_or("", SheetKind::word),
        model::file::write(&source.job)
    );
    Store::open()
        .await?
        .keep_text(&format!("{SOURCES}{id}"), &text)
        .await
}

/// What a lesson was made of; nothing where that had one sheet, or came as a file.
pub(super) async fn source(id: &str) -> Option<Source> {
    if let Some(source) = MADE_OF.with(|all| all.borrow().get(id).cloned()) {
        return Some(source);
    }
    let name = format!("{SOURCES}{id}");
    let all = Store::open().await.ok()?.texts(&name).await.ok()?;
    let (_, text) = all.into_iter().find(|(known, _)| *known == name)?;
    let (sheets, job) = text.split_once('\n')?;
    let (bad, good) = sheets.split_once(' ')?;
    Some(Source {
        job: Rc::new(model::file::read(job.as_bytes()).ok()?),
        bad: SheetKind::from_word(bad)?,
        good: SheetKind::from_word(good),
    })
}

/// The own lessons that are kept or held, with their ids, the newest first.
pub(super) async fn own_lessons() -> Result<Vec<(String, Lesson)>, StoreError> {
    let kept = match Store::open().await {
        Ok(store) => store.texts(LESSONS).await,
        Err(error) => Err(error),
    };
    let mut all: OrderedMap<String, Lesson> = WRITTEN.with(|all| all.borrow().clone());
    if all.is_empty() {
        kept.as_ref().map_err(Clone::clone)?;
    }
    for (name, text) in kept.unwrap_or_default() {
        let id = name.strip_prefix(LESSONS).unwrap_or(&name).to_owned();
        if all.get(&id).is_none()
            && let Ok(lesson) = lessons::read_draft(&text)
        {
            all.insert(id, lesson);
        }
    }
    let mut all: Vec<(String, Lesson)> = all.into_iter().collect();
    all.reverse();
    Ok(all)
}

/// Takes an own lesson away.
pub(super) async fn remove(id: &str) -> Result<(), StoreError> {
    WRITTEN.with(|all| all.borrow_mut().remove(id));
    MADE_OF.with(|all| all.borrow_mut().remove(id));
    let store = Store::open().await?;
    store.remove_text(&format!("{SOURCES}{id}")).await?;
    store.remove_text(&format!("{LESSONS}{id}")).await
}

/// The sitting that was left at an exercise.
pub(super) fn left(at: &str) -> Option<Sitting> {
    LEFT.with(|all| all.borrow().get(at).cloned())
}

/// Leaves a sitting for as long as the page is open.
pub(super) fn leave(at: &str, sitting: &Sitting) {
    LEFT.with(|all| all.borrow_mut().insert(at.to_owned(), sitting.clone()));
}

/// Keeps a result; gives its name.
pub(super) async fn keep_result(record: &Record) -> Result<(), StoreError> {
    let name = format!("{RESULTS}{}:{}", record.lesson, fresh());
    let text = Records(vec![record.clone()]).json();
    Store::open().await?.keep_text(&name, &text).await
}

/// The results of a lesson with their names, the oldest first. What cannot be read is left out.
pub(super) async fn results(lesson: &str) -> Result<Vec<(String, Record)>, StoreError> {
    let texts = Store::open().await?.texts(&format!("{RESULTS}{lesson}:")).await?;
    let read = texts.into_iter().flat_map(|(name, text)| {
        let records = Records::from_json(&text).unwrap_or_default().0;
        records.into_iter().map(move |record| (name.clone(), record))
    });
    Ok(read.collect())
}

/// Takes results away.
pub(super) async fn remove_results(names: Vec<String>) -> Result<(), StoreError> {
    let store = Store::open().await?;
    for name in names {
        store.remove_text(&name).await?;
    }
    Ok(())
}

/// Now, as a teacher writes it: `2026-03-02 10:15`.
pub(super) fn now() -> String {
    let now = js_sys::Date::new_0();
    format!(
        "{:04}-{:02}-{:02} {:02}:{:02}",
        now.get_full_year(),
        now.get_month() + 1,
        now.get_date(),
        now.get_hours(),
        now.get_minutes()
    )
}
