//! Keeps the job on the table: every edit goes to the browser's database as it is made, jobs are opened from there and
//! from files, and the page hears how that went. Nothing here decides what an edit is.

use crate::desk::Desk;
use crate::files::{self, FileHandle, Saved};
use crate::state::{Act, State};
use crate::storage::{JobInfo, JobKey, Keeping, Original, Store, StoreError};
use crate::tabs::{Claim, Hold, News};
use crate::worked;
use model::Job;
use model::limits::LARGEST_FILE;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use words::{Language, Saying, say};
use yew::functional::UseReducerDispatcher;

/// What the browser keeps.
#[derive(Clone, Default)]
pub(crate) struct Kept {
    /// The jobs, the one changed last first.
    pub(crate) jobs: Vec<JobInfo>,
    /// Which of them is on the table.
    pub(crate) here: Option<JobKey>,
    /// Damaged states as they were found, with the title of their job.
    pub(crate) damaged: Vec<(String, Original)>,
}

/// Keeps the job on the table.
pub(crate) struct Keeper {
    desk: Rc<Desk>,
    tell: UseReducerDispatcher<State>,
    store: RefCell<Option<Store>>,
    key: RefCell<Option<JobKey>>,
    claim: RefCell<Option<Claim>>,
    handle: RefCell<Option<FileHandle>>,
    news: RefCell<Option<News>>,
    /// Writes on their way.
    writing: Cell<u32>,
}

impl PartialEq for Keeper {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Keeper {
    pub(crate) fn new(desk: Rc<Desk>, tell: UseReducerDispatcher<State>) -> Rc<Self> {
        Rc::new(Self {
            desk,
            tell,
            store: RefCell::default(),
            key: RefCell::default(),
            claim: RefCell::default(),
            handle: RefCell::default(),
            news: RefCell::default(),
            writing: Cell::new(0),
        })
    }
    fn say(&self, words: impl Into<String>) {
        self.tell.dispatch(Act::Say(words.into()));
    }
    fn tell(&self, said: &Saying) {
        self.say(self.desk.words().say(said));
    }
    fn kept(&self, keeping: Keeping) {
        self.tell.dispatch(Act::Kept(keeping));
    }
    fn failed(&self, error: &StoreError) {
        self.kept(Keeping::Failed(self.desk.words().say(&error.said())));
    }

    /// Opens the storage and puts on the table what was there last, or what the address asks for. Who comes for the first time
    /// gets the worked job that lies there in their language.
    pub(crate) fn start(self: &Rc<Self>, asked_for: Option<Job>, language: Language) {
        let this = Rc::clone(self);
        spawn_local(async move {
            match Store::open().await {
                Ok(store) => {
                    *this.store.borrow_mut() = Some(store);
                    // Asked for on the side: a browser that says no keeps the jobs all the same, until its disk is full.
                    spawn_local(async {
                        Store::ask_to_persist().await;
                    });
                }
                Err(error) => {
                    if let Some(job) = asked_for {
                        this.desk.open(job);
                    }
                    this.failed(&error);
                    return;
                }
            }
            let listener = Rc::downgrade(&this);
            *this.news.borrow_mut() = Some(News::listen(move |key| {
                if let Some(keeper) = listener.upgrade() {
                    keeper.heard(&key);
                }
            }));
            if let Some(job) = asked_for {
                this.open_new(job);
                return;
            }
            let Some(store) = this.store() else { return };
            match store.last_open().await {
                Ok(Some(key)) => this.open_key_or_new(key).await,
                Ok(None) => {
                    this.translate_what_is_on_the_table(language).await;
                    this.keep_what_is_on_the_table();
                }
                Err(error) => this.failed(&error),
            }
        });
    }
    async fn translate_what_is_on_the_table(&self, language: Language) {
        let Some(job) = worked::first_in_language(language).await else {
            return;
        };
        // Whoever was quicker keeps what was begun.
        if self.desk.see(|editor| editor.history().undo_name().is_none()) {
            self.desk.open(job);
        }
    }
    fn store(&self) -> Option<Store> {
        self.store.borrow().clone()
    }
    async fn open_key_or_new(self: &Rc<Self>, key: JobKey) {
        if let Err(error) = self.load(key).await {
            // What is on the table, the worked example, is then kept as a job of its own.
            self.tell(&error.said());
            self.keep_what_is_on_the_table();
        }
    }

    /// Opens a stored job.
    pub(crate) fn open_key(self: &Rc<Self>, key: JobKey) {
        let this = Rc::clone(self);
        spawn_local(async move {
            if let Err(error) = this.load(key).await {
                this.tell(&error.said());
            }
        });
    }
    async fn load(self: &Rc<Self>, key: JobKey) -> Result<(), StoreError> {
        let Some(store) = self.store() else {
            return Err(StoreError::Missing);
        };
        let loaded = store.load(&key).await?;
        self.desk.open(loaded.job);
        if loaded.damaged {
            let first = loaded
                .problems
                .first()
                .map(|it| self.desk.words().say(&it.said()))
                .unwrap_or_default();
            let count = loaded.problems.len();
            self.tell(&say!(
                "job-damaged",
                count = count,
                first = first.trim_end_matches('.')
            ));
        }
        if let Some(handle) = store.handle(&key).await.ok().flatten() {
            *self.handle.borrow_mut() = Some(FileHandle::from_js(handle));
        }
        self.take(key).await;
        Ok(())
    }
    /// Claims a job for this tab and notes that it was open last.
    async fn take(self: &Rc<Self>, key: JobKey) {
        *self.claim.borrow_mut() = None;
        *self.key.borrow_mut() = Some(key.clone());
        let listener = Rc::downgrade(self);
        let claim = Claim::make(key.as_str(), move |hold| {
            if let Some(keeper) = listener.upgrade() {
                keeper.held(hold);
            }
        })
        .await;
        self.kept(if claim.hold().may_write() {
            Keeping::Kept
        } else {
            Keeping::Elsewhere
        });
        *self.claim.borrow_mut() = Some(claim);
        if let Some(store) = self.store()
            && let Err(error) = store.set_last_open(&key).await
        {
            self.failed(&error);
        }
    }
    /// The claim on the job changed.
    fn held(self: &Rc<Self>, hold: Hold) {
        match hold {
            Hold::Ours => {
                // Another tab has written meanwhile.
                let this = Rc::clone(self);
                spawn_local(async move { this.reload().await });
            }
            Hold::Elsewhere | Hold::TakenAway => self.kept(Keeping::Elsewhere),
        }
    }
    async fn reload(self: &Rc<Self>) {
        let (store, key) = (self.store(), self.key.borrow().clone());
        if let Some((store, key)) = store.zip(key) {
            match store.load(&key).await {
                Ok(loaded) => {
                    self.desk.open(loaded.job);
                    let ours = self
                        .claim
                        .borrow()
                        .as_ref()
                        .is_some_and(|claim| claim.hold().may_write());
                    self.kept(if ours { Keeping::Kept } else { Keeping::Elsewhere });
                }
                Err(error) => self.failed(&error),
            }
        }
    }
    /// Another tab wrote a job: one that only looks on shows it.
    fn heard(self: &Rc<Self>, key: &str) {
        let same = self.key.borrow().as_ref().is_some_and(|own| own.as_str() == key);
        let ours = self
            .claim
            .borrow()
            .as_ref()
            .is_some_and(|claim| claim.hold().may_write());
        if same && !ours {
            let this = Rc::clone(self);
            spawn_local(async move { this.reload().await });
        }
    }
    /// Takes the job over from the tab that has it.
    pub(crate) fn take_over(self: &Rc<Self>) {
        let this = Rc::clone(self);
        spawn_local(async move {
            // The claim must not be borrowed across the wait: what it reports comes back here.
            let claim = this.claim.borrow_mut().take();
            if let Some(claim) = claim {
                claim.take_over().await;
                *this.claim.borrow_mut() = Some(claim);
                this.reload().await;
            }
        });
    }

    /// Puts a job on the table that is not stored yet, and stores it.
    pub(crate) fn open_new(self: &Rc<Self>, job: Job) {
        *self.handle.borrow_mut() = None;
        self.desk.open(job);
        self.keep_what_is_on_the_table();
    }
    fn keep_what_is_on_the_table(self: &Rc<Self>) {
        let Some(store) = self.store() else { return };
        let job = self.desk.see(|editor| editor.job().clone());
        let (key, written) = store.create(&job);
        let this = Rc::clone(self);
        spawn_local(async move {
            match written.await {
                Ok(()) => this.take(key).await,
                Err(error) => this.failed(&error),
            }
        });
    }

    /// Writes what was just done. The data has left this page when it returns.
    pub(crate) fn keep(self: &Rc<Self>) {
        let entries = self.desk.take_journal();
        let (store, key) = (self.store(), self.key.borrow().clone());
        let Some((store, key)) = store.zip(key) else {
            return;
        };
        if !self
            .claim
            .borrow()
            .as_ref()
            .is_some_and(|claim| claim.hold().may_write())
        {
            return;
        }
        for entry in entries {
            let written = self.desk.see(|editor| store.append(&key, &entry, editor.job()));
            self.writing.set(self.writing.get() + 1);
            let (this, key) = (Rc::clone(self), key.clone());
            spawn_local(async move {
                let done = written.await;
                this.writing.set(this.writing.get().saturating_sub(1));
                match done {
                    Ok(()) => {
                        if let Some(news) = &*this.news.borrow() {
                            news.tell_written(key.as_str());
                        }
                        if this.writing.get() == 0 {
                            this.kept(Keeping::Kept);
                        }
                    }
                    Err(error) => this.failed(&error),
                }
            });
        }
        if self.writing.get() > 0 {
            self.kept(Keeping::Writing);
        }
    }

    /// The stored jobs, which is on the table, and the damaged states that were kept as they were found, with the title of
    /// their jobs.
    pub(crate) async fn list(&self) -> Kept {
        let here = self.key.borrow().clone();
        let Some(store) = self.store() else {
            return Kept {
                here,
                ..Kept::default()
            };
        };
        let jobs = store.list().await.unwrap_or_default();
        let mut damaged = Vec::new();
        for job in &jobs {
            let found = store.originals(&job.key).await.unwrap_or_default();
            damaged.extend(found.into_iter().map(|original| (job.title.clone(), original)));
        }
        Kept { jobs, here, damaged }
    }
    /// Saves a damaged state to a file, as it was found.
    pub(crate) fn save_original(&self, title: &str, original: &Original) {
        let name = files::file_name(title, "-damaged.txt");
        match files::export_text(&name, &original.whole(), "text/plain") {
            Ok(()) => self.tell(&say!("downloaded", name = name)),
            Err(trouble) => self.tell(&trouble.said()),
        }
    }
    /// Takes a stored job away for good.
    pub(crate) async fn remove(&self, key: &JobKey) {
        if let Some(store) = self.store()
            && let Err(error) = store.remove(key).await
        {
            self.tell(&error.said());
        }
    }

    /// Opens a job file that the user picks.
    pub(crate) fn open_file(self: &Rc<Self>) {
        let this = Rc::clone(self);
        spawn_local(async move {
            let words = this.desk.see(|editor| editor.words().clone());
            match files::pick(LARGEST_FILE, &words).await {
                Ok(Some(opened)) => this.opened(opened),
                Ok(None) => {}
                Err(trouble) => this.tell(&trouble.said()),
            }
        });
    }
    /// Puts an opened file on the table: a job file, or a job in the text form.
    pub(crate) fn opened(self: &Rc<Self>, opened: files::Opened) {
        if opened.name.ends_with(".lesson") {
            let words = self.desk.words();
            if let Err(why) = crate::lessons::open_file(&opened.name, &opened.bytes, &words) {
                self.say(why);
            }
            return;
        }
        let text = std::str::from_utf8(&opened.bytes).unwrap_or_default();
        let is_text_form = !text.trim_start().starts_with('{') && !text.is_empty();
        let read = if opened.bytes.is_empty() {
            Err(self.desk.words().text("file-empty"))
        } else if is_text_form {
            // One line has room for the first of them, and not for the line it is in.
            model::text::parse(text)
                .map(|job| (job, String::new()))
                .map_err(|errors| {
                    self.desk.words().say(&say!(
                        "file-not-text",
                        first = errors.first(),
                        more = errors.0.len().saturating_sub(1)
                    ))
                })
        } else {
            model::file::read_lenient(&opened.bytes)
                .map_err(|error| self.desk.words().say(&error.said()))
                .map(|read| {
                    let aside = read.problems.iter().find(|problem| problem.left_out);
                    (
                        read.job,
                        aside.map_or(String::new(), |it| self.desk.words().say(&it.said())),
                    )
                })
        };
        match read {
            Ok((job, words)) => {
                self.open_new(job);
                // A file of which something was left out must not be written over unasked.
                *self.handle.borrow_mut() = opened.handle.filter(|_| words.is_empty() && !is_text_form);
                self.tell(&if words.is_empty() {
                    say!("file-opened", name = opened.name)
                } else {
                    say!("file-opened-in-part", name = opened.name, first = words)
                });
            }
            Err(why) => self.tell(&say!("file-not-opened", name = opened.name, why = why)),
        }
    }
    /// Saves the job as a file: to the one it came from, else to one that the user picks.
    pub(crate) fn save_file(self: &Rc<Self>) {
        let (text, title, words) = self.desk.see(|editor| {
            let job = editor.job();
            (model::file::write(job), job.title.clone(), editor.words().clone())
        });
        let handle = self.handle.borrow().clone();
        let this = Rc::clone(self);
        spawn_local(async move {
            let saved = match handle {
                Some(handle) => files::save(&handle, &text).await,
                None => files::save_as(&files::file_name(&title, files::ENDING), &text, &words).await,
            };
            match saved {
                Ok(Saved::To(handle)) => {
                    this.tell(&say!("file-saved", name = handle.name()));
                    let key = this.key.borrow().clone();
                    if let Some((store, key)) = this.store().zip(key) {
                        let _ = store.set_handle(&key, handle.as_js()).await;
                    }
                    *this.handle.borrow_mut() = Some(handle);
                    this.desk.mark_saved();
                }
                Ok(Saved::Download { name }) => {
                    this.tell(&say!("downloaded", name = name));
                    this.desk.mark_saved();
                }
                Ok(Saved::Cancelled) => {}
                Err(trouble) => this.tell(&trouble.said()),
            }
        });
    }
}
