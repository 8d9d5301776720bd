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
///
/// *Invariant:* `key` and `claim` are those of the job on the table, or nothing; they change together with it, without a
/// wait in between. So an edit never goes to a job that it was not made on. While there is nowhere to write, what is done
/// stays in the editor's journal.
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
    /// Counts the wishes for another job on the table: one that was waited for gives way to a later one.
    wishes: Cell<u32>,
    /// How often the job on the table is being read anew just now: what is done on the old state is not written over it.
    reading: Cell<u32>,
    /// Whether the storage knows that the job on the table was open last.
    noted: Cell<bool>,
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
            wishes: Cell::new(0),
            reading: Cell::new(0),
            noted: Cell::new(false),
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
        let wish = self.wishes.get();
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
            let last = if this.wishes.get() == wish {
                store.last_open().await
            } else {
                Ok(None)
            };
            match last {
                Ok(Some(key)) if this.wishes.get() == wish => match this.load(key).await {
                    Ok(()) => return,
                    // What is on the table, the worked example, is then kept as a job of its own.
                    Err(error) => this.tell(&error.said()),
                },
                Ok(_) => this.translate_what_is_on_the_table(language, wish).await,
                Err(error) => this.failed(&error),
            }
            // Where another job came onto the table meanwhile, it has its place already.
            if this.key.borrow().is_none() {
                this.keep_what_is_on_the_table();
            }
        });
    }
    async fn translate_what_is_on_the_table(&self, language: Language, wish: u32) {
        let Some(job) = worked::first_in_language(language).await else {
            return;
        };
        // Whoever was quicker keeps what was begun.
        if self.wishes.get() == wish && self.desk.see(|editor| editor.history().undo_name().is_none()) {
            self.desk.open(job);
        }
    }
    fn store(&self) -> Option<Store> {
        self.store.borrow().clone()
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
    /// Puts a stored job on the table. All that has to be waited for comes first: what is done meanwhile belongs to the job
    /// that still lies there, and goes to it.
    async fn load(self: &Rc<Self>, key: JobKey) -> Result<(), StoreError> {
        let Some(store) = self.store() else {
            return Err(StoreError::Missing);
        };
        let wish = self.wish();
        if self.is_here(&key) {
            return self.read_again().await;
        }
        let claim = Claim::make(key.as_str(), self.holder(&key)).await;
        let hold = claim.hold();
        let loaded = store.load(&key).await?;
        let handle = store.handle(&key).await.ok().flatten();
        if self.wishes.get() != wish {
            return Ok(());
        }
        let changed = claim.hold() != hold;
        self.desk.open(loaded.job);
        *self.handle.borrow_mut() = handle.map(FileHandle::from_js);
        self.settle(key.clone(), claim);
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
        self.tell_hold();
        self.note_open(&store, &key).await;
        if changed {
            // What was read is from before another tab gave the job up, or took it.
            self.reload().await;
        }
        Ok(())
    }
    /// A wish for another job on the table, by its number.
    fn wish(&self) -> u32 {
        self.wishes.set(self.wishes.get().wrapping_add(1));
        self.wishes.get()
    }
    fn is_here(&self, key: &JobKey) -> bool {
        self.key.borrow().as_ref() == Some(key)
    }
    /// The job on the table is this one from now on. The claim on the one before is given back.
    fn settle(&self, key: JobKey, claim: Claim) {
        *self.key.borrow_mut() = Some(key);
        let before = self.claim.borrow_mut().replace(claim);
        drop(before);
        self.noted.set(false);
    }
    /// Whether what is done on the table may be written.
    fn may_write(&self) -> bool {
        self.reading.get() == 0
            && self
                .claim
                .borrow()
                .as_ref()
                .is_some_and(|claim| claim.hold().may_write())
    }
    fn tell_hold(&self) {
        self.kept(if self.may_write() {
            Keeping::Kept
        } else {
            Keeping::Elsewhere
        });
    }
    /// Notes that the job on the table was open last.
    async fn note_open(&self, store: &Store, key: &JobKey) {
        self.noted.set(true);
        if let Err(error) = store.set_last_open(key).await {
            self.noted.set(false);
            self.failed(&error);
        }
    }
    /// Hears of changes of the claim on a job.
    fn holder(self: &Rc<Self>, key: &JobKey) -> impl Fn(Hold) + 'static {
        let (listener, key) = (Rc::downgrade(self), key.clone());
        move |hold| {
            if let Some(keeper) = listener.upgrade().filter(|keeper| keeper.is_here(&key)) {
                keeper.held(hold);
            }
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
        if let Err(error) = self.read_again().await {
            self.failed(&error);
        }
    }
    /// Reads the job on the table anew.
    async fn read_again(self: &Rc<Self>) -> Result<(), StoreError> {
        let (store, key) = (self.store(), self.key.borrow().clone());
        let Some((store, key)) = store.zip(key) else {
            return Ok(());
        };
        self.reading.set(self.reading.get() + 1);
        let loaded = store.load(&key).await;
        self.reading.set(self.reading.get().saturating_sub(1));
        // Another job may have come onto the table meanwhile.
        match loaded {
            Ok(loaded) if self.is_here(&key) => {
                self.desk.open(loaded.job);
                self.tell_hold();
                Ok(())
            }
            other => {
                // What was done on the job that lies there, and waited for this.
                self.keep();
                other.map(drop)
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
            let key = this.key.borrow().clone();
            let claim = this.claim.borrow_mut().take();
            if let Some((key, claim)) = key.zip(claim) {
                claim.take_over().await;
                // Another job may have come onto the table meanwhile.
                if this.is_here(&key) {
                    *this.claim.borrow_mut() = Some(claim);
                    this.reload().await;
                }
            }
        });
    }

    /// Puts a job on the table that is not stored yet, and stores it.
    pub(crate) fn open_new(self: &Rc<Self>, job: Job) {
        self.wish();
        *self.handle.borrow_mut() = None;
        *self.key.borrow_mut() = None;
        let before = self.claim.borrow_mut().take();
        drop(before);
        self.desk.open(job);
        self.keep_what_is_on_the_table();
    }
    /// Stores the job on the table as one of its own. What is done from now on goes there, also before the browser has told how
    /// that went; where it went wrong, the next edit writes the whole job.
    fn keep_what_is_on_the_table(self: &Rc<Self>) {
        let Some(store) = self.store() else { return };
        let (key, written) = self.desk.see(|editor| store.create(editor.job()));
        // The text holds what was done until now.
        self.desk.take_journal();
        let claim = Claim::of_new(key.as_str(), self.holder(&key));
        self.settle(key.clone(), claim);
        self.follow(store, key, written);
    }

    /// Writes what was just done. The data has left this page when it returns. Where there is nowhere to write yet, it stays
    /// in the journal.
    pub(crate) fn keep(self: &Rc<Self>) {
        let (store, key) = (self.store(), self.key.borrow().clone());
        let Some((store, key)) = store.zip(key).filter(|_| self.may_write()) else {
            return;
        };
        for entry in self.desk.take_journal() {
            let written = self.desk.see(|editor| store.append(&key, &entry, editor.job()));
            self.follow(store.clone(), key.clone(), written);
        }
    }
    /// Waits for a write, and tells how it went.
    fn follow(
        self: &Rc<Self>,
        store: Store,
        key: JobKey,
        written: impl Future<Output = Result<(), StoreError>> + 'static,
    ) {
        self.writing.set(self.writing.get() + 1);
        self.kept(Keeping::Writing);
        let this = Rc::clone(self);
        spawn_local(async move {
            let done = written.await;
            this.writing.set(this.writing.get().saturating_sub(1));
            match done {
                Ok(()) => {
                    if let Some(news) = &*this.news.borrow() {
                        news.tell_written(key.as_str());
                    }
                    if !this.is_here(&key) {
                        return;
                    }
                    // A later line is of no use where an earlier one is missing: that it failed stays told.
                    if this.writing.get() == 0 && !store.is_behind(&key) {
                        this.kept(Keeping::Kept);
                    }
                    if !this.noted.get() && !store.is_behind(&key) {
                        this.note_open(&store, &key).await;
                    }
                }
                Err(error) => this.failed(&error),
            }
        });
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
        let (handle, key) = (self.handle.borrow().clone(), self.key.borrow().clone());
        let this = Rc::clone(self);
        spawn_local(async move {
            let saved = match handle {
                Some(handle) => files::save(&handle, &text).await,
                None => files::save_as(&files::file_name(&title, files::ENDING), &text, &words).await,
            };
            match saved {
                Ok(Saved::To(handle)) => {
                    this.tell(&say!("file-saved", name = handle.name()));
                    // Another job may have come onto the table meanwhile: the file is not that one's.
                    if *this.key.borrow() == key {
                        *this.handle.borrow_mut() = Some(handle.clone());
                        this.desk.mark_saved();
                    }
                    if let Some((store, key)) = this.store().zip(key) {
                        let _ = store.set_handle(&key, handle.as_js()).await;
                    }
                }
                Ok(Saved::Download { name }) => {
                    this.tell(&say!("downloaded", name = name));
                    if *this.key.borrow() == key {
                        this.desk.mark_saved();
                    }
                }
                Ok(Saved::Cancelled) => {}
                Err(trouble) => this.tell(&trouble.said()),
            }
        });
    }
}
