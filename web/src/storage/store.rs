//! The store: reading jobs, writing them whole or edit by edit, and what each write rests on.

use super::database::{self, Answer, Database, HANDLES, JOBS, JOURNAL, LAST, ORIGINALS, PAGE, TEXTS, keys};
use super::error::StoreError;
use super::js;
use super::record::{JobInfo, JobKey, Line, Original, Snapshot};
use super::restore;
use model::file::Problem;
use model::history::{self, Entry};
use model::{Change, Edit, Job};
use ordered::OrderedMap;
use ordered::Sort as _;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use words::say;

/// Name of the database.
const NAME: &str = "loomwright";
/// Name under which the page notes which job was open last.
const LAST_OPEN: &str = "last-open";
/// Lines of the journal after which a full text is written instead: opening stays quick.
const MOST_LINES: u32 = 200;
/// Bytes of the journal after which a full text is written instead.
const MOST_BYTES: usize = 1024 * 1024;
/// How many revisions back the empty marks are kept that make a stale tab notice.
const MARKS_KEPT: u64 = 2_000;

/// The browser's storage, open. Clones are the same one.
#[derive(Clone)]
pub(crate) struct Store(Rc<Inner>);

struct Inner {
    database: Database,
    /// How far each job that was loaded or created here is written.
    progress: RefCell<OrderedMap<JobKey, Progress>>,
    /// How many of the next writes fail as on a full disk.
    #[cfg(test)]
    full: std::cell::Cell<u32>,
}

/// How far a job is written.
#[derive(Clone, Copy, Default)]
struct Progress {
    /// The last line of its journal.
    revision: u64,
    /// Up to which line the full text goes.
    snapshot: u64,
    /// Lines since the full text.
    lines: u32,
    /// Their bytes.
    bytes: usize,
    /// A line may be missing, so that a further one could not be played back: the next write is a full text.
    gap: bool,
    /// Another tab wrote this job: nothing more is written here before it is loaded again.
    lost: bool,
}

/// A job as it was read back.
#[derive(Clone, Debug)]
pub(crate) struct Loaded {
    /// The job, as far as it could be read.
    pub(crate) job: Job,
    /// What was not as it should be, for the reader. Empty for a sound record.
    pub(crate) problems: Vec<Problem>,
    /// Counts everything that was ever written of this job.
    pub(crate) revision: u64,
    /// Whether something had to be left out. What was stored is then kept: see [`Store::originals`].
    pub(crate) damaged: bool,
}

impl PartialEq for Store {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Store {
    /// Opens the storage of this browser.
    ///
    /// # Errors
    /// When the browser lets the page keep nothing. The app then goes on without a store.
    pub(crate) async fn open() -> Result<Self, StoreError> {
        Self::open_named(NAME).await
    }

    /// Opens a storage of another name, for tests.
    pub(crate) async fn open_named(name: &str) -> Result<Self, StoreError> {
        Ok(Self(Rc::new(Inner {
            database: Database::open(name).await?,
            progress: RefCell::default(),
            #[cfg(test)]
            full: std::cell::Cell::new(0),
        })))
    }

    /// Asks the browser to keep the jobs even when its disk gets full. Whether it will.
    pub(crate) async fn ask_to_persist() -> bool {
        let Some(window) = web_sys::window() else {
            return false;
        };
        let storage = js::get(&window.navigator(), "storage");
        match js::call(&storage, "persist", &[]).and_then(JsCast::dyn_into::<js_sys::Promise>) {
            Ok(promise) => JsFuture::from(promise).await.is_ok_and(|kept| kept.is_truthy()),
            Err(_) => false,
        }
    }

    /// The stored jobs, the one changed last first.
    pub(crate) async fn list(&self) -> Result<Vec<JobInfo>, StoreError> {
        let reading = self.0.database.reading(&[JOBS])?;
        let all = reading.get_all(JOBS, &JsValue::UNDEFINED)?.await?;
        let mut jobs: Vec<JobInfo> = array(all)
            .iter()
            .filter_map(|value| JobInfo::from_js(&value))
            .collect();
        jobs.order_by(|a, b| {
            b.changed_at
                .total_cmp(&a.changed_at)
                .then_with(|| a.key.cmp(&b.key))
        });
        Ok(jobs)
    }

    /// Reads a job back. Of a damaged record the readable part, what is wrong with the rest, and the record is kept as
    /// it was found.
    ///
    /// # Errors
    /// Also [`StoreError::Unreadable`], with the stored text; it is left as it is.
    pub(crate) async fn load(&self, key: &JobKey) -> Result<Loaded, StoreError> {
        let reading = self.0.database.reading(&[JOBS, TEXTS, JOURNAL])?;
        let name = key.as_str().into();
        let info = reading.get(JOBS, &name)?;
        let text = reading.get(TEXTS, &name)?;
        let journal = reading.get_all(JOURNAL, &keys(key.as_str(), 0, LAST))?;
        let info = JobInfo::from_js(&info.await?);
        let snapshot = Snapshot::from_js(&text.await?).ok_or(StoreError::Missing)?;
        let journal: Vec<Line> = array(journal.await?)
            .iter()
            .map(|line| Line::from_js(&line))
            .collect();

        let written = journal.iter().map(|line| line.revision).max().unwrap_or_default();
        let revision = written
            .max(snapshot.revision)
            .max(info.map_or(0, |info| info.revision));
        let restored = match restore::restore(&snapshot, &journal) {
            Ok(restored) => restored,
            Err(error) => {
                let unplayed = journal.into_iter().map(|line| line.entry).collect();
                self.keep_original(key, revision, snapshot.text.clone(), unplayed)
                    .await?;
                return Err(StoreError::Unreadable {
                    reason: error.said(),
                    original: snapshot.text,
                });
            }
        };
        let damaged = restored.problems.iter().any(|problem| problem.left_out);
        if damaged {
            self.keep_original(key, revision, snapshot.text, restored.unplayed)
                .await?;
        }
        let progress = Progress {
            revision,
            snapshot: snapshot.revision,
            lines: u32::try_from(restored.played).unwrap_or(u32::MAX),
            bytes: journal.iter().map(|line| line.entry.len()).sum(),
            gap: damaged || snapshot.revision.saturating_add(restored.played) != revision,
            lost: false,
        };
        self.0.progress.borrow_mut().insert(key.clone(), progress);
        Ok(Loaded {
            job: restored.job,
            problems: restored.problems,
            revision,
            damaged,
        })
    }

    /// Keeps a damaged state as it was found; found again, it is still one.
    async fn keep_original(
        &self,
        key: &JobKey,
        revision: u64,
        text: String,
        journal: Vec<String>,
    ) -> Result<(), StoreError> {
        let original = Original {
            text,
            journal: journal.into_iter().filter(|line| !line.is_empty()).collect(),
            found_at: js_sys::Date::now(),
        };
        let keeping = self.0.database.writing(&[ORIGINALS])?;
        keeping.put(ORIGINALS, &at(key, revision), &original.to_js())?;
        keeping.send().await.map(drop)
    }

    /// Damaged states of a job as they were found, the oldest first.
    pub(crate) async fn originals(&self, key: &JobKey) -> Result<Vec<Original>, StoreError> {
        let reading = self.0.database.reading(&[ORIGINALS])?;
        let all = reading.get_all(ORIGINALS, &keys(key.as_str(), 0, LAST))?.await?;
        Ok(array(all).iter().map(|value| Original::from_js(&value)).collect())
    }

    /// Stores a job that is not stored yet, under a key of its own.
    pub(crate) fn create(&self, job: &Job) -> (JobKey, impl Future<Output = Result<(), StoreError>> + use<>) {
        let key = JobKey::fresh();
        self.0
            .progress
            .borrow_mut()
            .insert(key.clone(), Progress::default());
        let written = self.save(&key, job);
        (key, written)
    }

    /// Writes the full text of a job that was loaded or created here.
    pub(crate) fn save(
        &self,
        key: &JobKey,
        job: &Job,
    ) -> impl Future<Output = Result<(), StoreError>> + use<> {
        let begun = self.begin(key, |progress| self.send_text(key, job, progress));
        self.clone().finish(key.clone(), begun)
    }

    /// Writes what was just done to a job that was loaded or created here; `job` is how it stands after that. Now and
    /// then, and after a write that failed, this writes the full text instead.
    pub(crate) fn append(
        &self,
        key: &JobKey,
        entry: &Entry,
        job: &Job,
    ) -> impl Future<Output = Result<(), StoreError>> + use<> {
        let begun = self.begin(key, |progress| {
            let due = progress.gap || progress.lines >= MOST_LINES || progress.bytes >= MOST_BYTES;
            if due {
                self.send_text(key, job, progress)
            } else {
                self.send_line(key, entry.line(), job, progress)
            }
        });
        self.clone().finish(key.clone(), begun)
    }

    /// Whether something of a job is not stored that was given to be written: the next write of it is a full text.
    pub(crate) fn is_behind(&self, key: &JobKey) -> bool {
        self.0
            .progress
            .borrow()
            .get(key)
            .is_none_or(|progress| progress.gap || progress.lost)
    }

    /// Gives a job that is not open another title. One that is open is renamed by an edit, like any other change.
    pub(crate) async fn rename(&self, key: &JobKey, title: &str) -> Result<(), StoreError> {
        let mut job = self.load(key).await?.job;
        let (title, _) = title.split_at(title.floor_char_boundary(model::limits::LONGEST_LABEL));
        let entry = Entry::Did(Edit::new(
            say!("edit-title"),
            vec![Change::Title(title.to_owned())],
        ));
        history::replay(&mut job, [entry.clone()]);
        self.append(key, &entry, &job).await
    }

    /// Removes a job and everything kept of it. A tab that still has it open notices at its next write.
    pub(crate) async fn remove(&self, key: &JobKey) -> Result<(), StoreError> {
        let name = JsValue::from(key.as_str());
        let reading = self.0.database.reading(&[JOBS])?;
        let info = JobInfo::from_js(&reading.get(JOBS, &name)?.await?);
        let here = self
            .0
            .progress
            .borrow()
            .get(key)
            .map_or(0, |progress| progress.revision);
        let revision = info.map_or(0, |info| info.revision).max(here);
        let removing = self
            .0
            .database
            .writing(&[JOBS, TEXTS, JOURNAL, ORIGINALS, HANDLES])?;
        for store in [JOBS, TEXTS, HANDLES] {
            removing.delete(store, &name)?;
        }
        for store in [JOURNAL, ORIGINALS] {
            removing.delete(store, &keys(key.as_str(), 0, LAST))?;
        }
        let mark = Line::mark(revision.saturating_add(1));
        removing.put(JOURNAL, &at(key, mark.revision), &mark.to_js())?;
        self.send_off(removing).await?;
        self.0.progress.borrow_mut().remove(key);
        Ok(())
    }

    /// The job that was open last, if that was noted; whether it is still there, loading tells.
    pub(crate) async fn last_open(&self) -> Result<Option<JobKey>, StoreError> {
        let reading = self.0.database.reading(&[PAGE])?;
        let value = reading.get(PAGE, &LAST_OPEN.into())?.await?;
        Ok(value.as_string().map(JobKey::from_text))
    }

    /// Notes which job is open.
    pub(crate) async fn set_last_open(&self, key: &JobKey) -> Result<(), StoreError> {
        let writing = self.0.database.writing(&[PAGE])?;
        writing.put(PAGE, &LAST_OPEN.into(), &key.as_str().into())?;
        self.send_off(writing).await.map(drop)
    }

    /// Keeps a text of the page that belongs to no job under a name; names of one kind begin alike.
    pub(crate) async fn keep_text(&self, name: &str, text: &str) -> Result<(), StoreError> {
        let writing = self.0.database.writing(&[PAGE])?;
        let value = js::object(&[("name", &name.into()), ("text", &text.into())]);
        writing.put(PAGE, &name.into(), &value)?;
        self.send_off(writing).await.map(drop)
    }

    /// The texts whose names begin so, by name.
    pub(crate) async fn texts(&self, begin: &str) -> Result<Vec<(String, String)>, StoreError> {
        let reading = self.0.database.reading(&[PAGE])?;
        let all = reading.get_all(PAGE, &database::names(begin))?.await?;
        Ok(array(all)
            .iter()
            .filter_map(|value| {
                Some((
                    js::get(&value, "name").as_string()?,
                    js::get(&value, "text").as_string()?,
                ))
            })
            .collect())
    }

    /// Removes such a text.
    pub(crate) async fn remove_text(&self, name: &str) -> Result<(), StoreError> {
        let removing = self.0.database.writing(&[PAGE])?;
        removing.delete(PAGE, &name.into())?;
        self.send_off(removing).await.map(drop)
    }

    /// Keeps the handle of the file that a job was opened from or saved to, so that `Save` finds it after a reload.
    pub(crate) async fn set_handle(&self, key: &JobKey, handle: &JsValue) -> Result<(), StoreError> {
        let writing = self.0.database.writing(&[HANDLES])?;
        writing.put(HANDLES, &key.as_str().into(), handle)?;
        self.send_off(writing).await.map(drop)
    }

    /// The handle that was kept for a job.
    pub(crate) async fn handle(&self, key: &JobKey) -> Result<Option<JsValue>, StoreError> {
        let reading = self.0.database.reading(&[HANDLES])?;
        let handle = reading.get(HANDLES, &key.as_str().into())?.await?;
        Ok(handle.is_object().then_some(handle))
    }

    /// Lets a write begin on the job's progress, unless it may not be written.
    fn begin(
        &self,
        key: &JobKey,
        write: impl FnOnce(&mut Progress) -> Result<Answer, StoreError>,
    ) -> Result<Answer, StoreError> {
        let mut all = self.0.progress.borrow_mut();
        let progress = all.get_mut(key).ok_or(StoreError::Missing)?;
        if progress.lost {
            return Err(StoreError::ChangedElsewhere);
        }
        write(progress)
    }

    /// Waits for a write, and remembers when it failed.
    async fn finish(self, key: JobKey, begun: Result<Answer, StoreError>) -> Result<(), StoreError> {
        let outcome = match begun {
            Ok(answer) => answer.await.map(drop),
            Err(error) => Err(error),
        };
        if let Err(error) = &outcome
            && let Some(progress) = self.0.progress.borrow_mut().get_mut(&key)
        {
            progress.gap = true;
            progress.lost |= *error == StoreError::ChangedElsewhere;
        }
        outcome
    }

    fn send_line(
        &self,
        key: &JobKey,
        entry: String,
        job: &Job,
        progress: &mut Progress,
    ) -> Result<Answer, StoreError> {
        let bytes = entry.len();
        let line = Line {
            revision: progress.revision.saturating_add(1),
            entry,
        };
        let writing = self.0.database.writing(&[JOBS, JOURNAL])?;
        writing.add(JOURNAL, &at(key, line.revision), &line.to_js())?;
        writing.put(JOBS, &key.as_str().into(), &info(key, job, line.revision).to_js())?;
        progress.revision = line.revision;
        progress.lines = progress.lines.saturating_add(1);
        progress.bytes = progress.bytes.saturating_add(bytes);
        Ok(self.send_off(writing))
    }

    fn send_text(&self, key: &JobKey, job: &Job, progress: &mut Progress) -> Result<Answer, StoreError> {
        let revision = progress.revision.saturating_add(1);
        let snapshot = Snapshot {
            text: model::file::write(job),
            revision,
        };
        let writing = self.0.database.writing(&[JOBS, TEXTS, JOURNAL])?;
        writing.add(JOURNAL, &at(key, revision), &Line::mark(revision).to_js())?;
        // Lines that the text now holds are emptied, not deleted: a stale tab must still run into them.
        for old in progress.snapshot.saturating_add(1)..revision {
            writing.put(JOURNAL, &at(key, old), &Line::mark(old).to_js())?;
        }
        if let Some(before) = revision.checked_sub(MARKS_KEPT) {
            writing.delete(JOURNAL, &keys(key.as_str(), 0, before))?;
        }
        writing.put(TEXTS, &key.as_str().into(), &snapshot.to_js())?;
        writing.put(JOBS, &key.as_str().into(), &info(key, job, revision).to_js())?;
        // Where this write fails, `finish` sets `gap`, and the next one is a full text again. Lines that stay filled
        // then are of no account: a later text holds them.
        *progress = Progress {
            revision,
            snapshot: revision,
            ..Progress::default()
        };
        Ok(self.send_off(writing))
    }

    fn send_off(&self, transaction: database::Transaction) -> Answer {
        #[cfg(test)]
        if let Some(left) = self.0.full.get().checked_sub(1) {
            self.0.full.set(left);
            let taken_back = transaction.abort();
            return Box::pin(async move {
                let _ = taken_back.await;
                let full = web_sys::DomException::new_with_message_and_name("no room", "QuotaExceededError");
                Err(full.map_or(StoreError::Missing, |error| StoreError::of(&error)))
            });
        }
        transaction.send()
    }
}

/// What tests do to a store.
#[cfg(test)]
impl Store {
    /// Makes the next writes fail as on a full disk: all of each is taken back, and the browser's own error comes.
    pub(crate) fn fill_disk_for(&self, writes: u32) {
        self.0.full.set(writes);
    }

    /// Puts a text and journal lines as they would stand after damage.
    pub(crate) async fn damage(
        &self,
        key: &JobKey,
        text: Option<&str>,
        lines: &[(u64, &str)],
    ) -> Result<(), StoreError> {
        let writing = self.0.database.writing(&[TEXTS, JOURNAL])?;
        if let Some(text) = text {
            let snapshot = self
                .0
                .progress
                .borrow()
                .get(key)
                .map_or(0, |progress| progress.snapshot);
            let value = Snapshot {
                text: text.to_owned(),
                revision: snapshot,
            };
            writing.put(TEXTS, &key.as_str().into(), &value.to_js())?;
        }
        for (revision, entry) in lines {
            let line = Line {
                revision: *revision,
                entry: (*entry).to_owned(),
            };
            writing.put(JOURNAL, &at(key, *revision), &line.to_js())?;
        }
        writing.send().await.map(drop)
    }
}

fn at(key: &JobKey, revision: u64) -> JsValue {
    database::key(key.as_str(), revision)
}

fn info(key: &JobKey, job: &Job, revision: u64) -> JobInfo {
    JobInfo {
        key: key.clone(),
        title: job.title.clone(),
        changed_at: js_sys::Date::now(),
        revision,
    }
}

fn array(value: JsValue) -> js_sys::Array {
    value.dyn_into().unwrap_or_default()
}
