//! A job on the table: what the tests of this target do again and again, and where the things of the sheet are on screen.
//!
//! The page tells its job and its state through the hooks `loomwright_job` and `loomwright_state`; everything is done by
//! the pointer and the keys.

use loomwright_tests::browser::{Page, Site};
use model::{Job, Sheet, SheetKind};
use serde_json::Value;
use std::ops::Deref;
use std::time::Duration;

/// The page with a job on it.
pub(crate) struct Table {
    page: Page,
}

impl Deref for Table {
    type Target = Page;
    fn deref(&self) -> &Page {
        &self.page
    }
}

impl Table {
    /// A first visit: nothing is stored yet.
    pub(crate) fn open() -> Self {
        Self::of(Page::open(""))
    }
    /// The same where the program is kept for work without a network.
    pub(crate) fn open_kept() -> Self {
        Self::of(Page::open_kept_on(Site::built_page(), ""))
    }
    /// The same with a script that runs before anything else. Nothing is waited for, as that would open a panel.
    pub(crate) fn open_prepared(script: &str) -> Self {
        let mut page = Page::open_on(Site::built_page(), "nothing.txt");
        page.run_first(script);
        page.go("");
        Self { page }
    }
    fn of(page: Page) -> Self {
        let table = Self { page };
        table.wait_ready();
        table
    }
    /// A first visit, with a worked job fetched from the list of jobs by the pointer.
    pub(crate) fn open_worked(key: &str) -> Self {
        let table = Self::open();
        table.take_worked(key);
        table
    }
    /// A first visit, and an empty sheet.
    pub(crate) fn empty() -> Self {
        let table = Self::open();
        table.press("shift+E");
        table.wait_until(
            "an empty sheet",
            "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
        );
        table.wait_kept();
        table
    }
    pub(crate) fn page_mut(&mut self) -> &mut Page {
        &mut self.page
    }
    /// Fetches a worked job from the list of jobs.
    pub(crate) fn take_worked(&self, key: &str) {
        let worked = lessons::WorkedJob::of(key).unwrap_or_else(|| panic!("no worked job `{key}`"));
        self.press("b");
        self.click(&format!("worked-{key}"));
        let title = Value::from(worked.job().title);
        self.wait_until(
            &format!("the job {key} on the table"),
            &format!("JSON.parse(loomwright_job()).title === {title}"),
        );
        self.wait_kept();
    }
    /// Waits until the page shows a job and holds it for writing.
    pub(crate) fn wait_ready(&self) {
        // A debug build of the page is large, and several tests may load it at once.
        self.wait_at_most(Duration::from_secs(90), "the page's hooks", || {
            (self.eval("typeof loomwright_state") == "function").then_some(())
        });
        self.wait_until(
            "the job to be this tab's",
            "navigator.locks.query().then(q => q.held.some(lock => lock.name.startsWith('loomwright:')))",
        );
        self.wait_kept();
    }
    /// Waits until the list of jobs says that every change is kept, and closes it again.
    pub(crate) fn wait_kept(&self) {
        self.press("b");
        self.wait_for("every change to be kept", || {
            self.texts("keeping")
                .iter()
                .any(|words| words.contains("Every change is kept") || words.contains("Jede Änderung bleibt"))
                .then_some(())
        });
        self.press("b");
        self.wait_until(
            "the list of jobs to be gone",
            "!document.querySelector('[data-testid=jobs-drawer]')",
        );
    }
    /// What the editor tells of itself.
    pub(crate) fn state(&self) -> Value {
        let text = self.eval("loomwright_state()");
        serde_json::from_str(text.as_str().unwrap_or_default())
            .unwrap_or_else(|error| panic!("the page's state: {error}: {text}"))
    }
    /// The job as a file would hold it.
    pub(crate) fn job_text(&self) -> String {
        self.eval("loomwright_job()")
            .as_str()
            .unwrap_or_default()
            .to_owned()
    }
    /// The job, read by the native reader, strictly.
    pub(crate) fn job(&self) -> Job {
        model::file::read(self.job_text().as_bytes())
            .unwrap_or_else(|error| panic!("the page's job does not read: {error}"))
    }
    /// The sheet on the table.
    pub(crate) fn sheet(&self) -> Sheet {
        let on = self.state()["sheet"].as_str().unwrap_or_default().to_owned();
        let kind = SheetKind::ALL
            .iter()
            .find(|kind| kind.word() == on)
            .unwrap_or_else(|| panic!("no sheet is called `{on}`"));
        self.job().sheets.get(kind).cloned().unwrap_or_default()
    }
    /// What the native engine finds and computes for the sheet on the table.
    pub(crate) fn native(&self) -> checks::Analysis {
        checks::analyse(&self.sheet(), &self.job().settings)
    }
    /// The findings that the page shows, as `check: what it says`.
    pub(crate) fn findings(&self) -> Vec<String> {
        let state = self.wait_for("the analysis of the last edit", || {
            let state = self.state();
            (state["stale"] == false).then_some(state)
        });
        let text = |finding: &Value, name: &str| finding[name].as_str().unwrap_or_default().to_owned();
        state["findings"]
            .as_array()
            .into_iter()
            .flatten()
            .map(|finding| format!("{}: {}", text(finding, "check"), text(finding, "what")))
            .collect()
    }
    /// The page's findings, which must be those of the native engine, in its order.
    pub(crate) fn findings_as_native(&self) -> Vec<String> {
        let native: Vec<String> = self
            .native()
            .findings
            .iter()
            .map(|finding| {
                format!(
                    "{}: {}",
                    finding.check,
                    words::Words::english().say(&finding.what)
                )
            })
            .collect();
        let shown = self.findings();
        assert_eq!(shown, native, "findings in the page and of the native engine");
        shown
    }
    fn at(&self, list: &str, name: &str) -> (f64, f64) {
        let state = self.state();
        let place = &state[list][name];
        match (place[0].as_f64(), place[1].as_f64()) {
            (Some(x), Some(y)) => (x, y),
            _ => panic!("no `{name}` among the {list} of the sheet: {}", state[list]),
        }
    }
    /// Where a part's middle is on the screen.
    pub(crate) fn part(&self, tag: &str) -> (f64, f64) {
        self.at("parts", tag)
    }
    /// Where a terminal, written `A1.out1+`, is on the screen.
    pub(crate) fn terminal(&self, written: &str) -> (f64, f64) {
        self.at("terminals", written)
    }
    /// Where the label of a run is on the screen.
    pub(crate) fn run(&self, tag: &str) -> (f64, f64) {
        self.at("runs", tag)
    }
    /// Pulls a run by the pointer, stud to stud, and gives its tag.
    pub(crate) fn pull(&self, from: &str, to: &str) -> String {
        let before = self.sheet();
        self.drag(&[self.terminal(from), self.terminal(to)]);
        let (after, run) = self.wait_for(&format!("a run from {from} to {to}"), || {
            let after = self.sheet();
            let run = after
                .runs
                .iter()
                .find(|(id, _)| !before.runs.contains_key(id))?
                .1
                .clone();
            Some((after, run))
        });
        assert_eq!(ends(&after, &run), (from.to_owned(), to.to_owned()));
        assert_eq!(after.runs.len(), before.runs.len() + 1);
        run.tag
    }
    /// Drags a part out of the shelf to a point, with the shelf open, and gives its tag.
    pub(crate) fn take_from_shelf(&self, word: &str, to: (f64, f64)) -> String {
        let before = self.sheet();
        let from = self.place(&format!("shelf-{word}")).middle();
        self.drag(&[from, to]);
        self.fresh_part(&before, word)
    }
    /// Waits for the one part that was not there before, and gives its tag.
    pub(crate) fn fresh_part(&self, before: &Sheet, word: &str) -> String {
        let part = self.wait_for(&format!("a new {word} on the sheet"), || {
            let after = self.sheet();
            assert!(
                after.parts.len() <= before.parts.len() + 1,
                "more than one new part"
            );
            Some(
                after
                    .parts
                    .iter()
                    .find(|(id, _)| !before.parts.contains_key(id))?
                    .1
                    .clone(),
            )
        });
        assert_eq!(part.is.word(), word);
        part.tag
    }
    /// Opens the slip of a part by a click on it.
    pub(crate) fn open_part(&self, tag: &str) {
        let (x, y) = self.part(tag);
        self.click_at(x, y);
        self.wait_for(&format!("the slip of {tag}"), || {
            let label = self.attribute("slip", "aria-label")?;
            // In any language.
            label.split_whitespace().any(|word| word == tag).then_some(())
        });
    }
    /// Types a new value into a field of the open slip.
    pub(crate) fn fill(&self, field: &str, value: &str) {
        self.click(field);
        self.press("ctrl+a");
        self.type_text(value);
        self.press("Enter");
    }
    /// Lets the browser's file pickers answer with a file of the page's own storage, since nobody sits before a dialogue of
    /// the system. The file is a real one, written and read through the same interface.
    pub(crate) fn answer_pickers(&self, file: &str) {
        self.eval(&format!(
            "(async () => {{ const root = await navigator.storage.getDirectory(); \
             window.testFile = await root.getFileHandle({}, {{ create: true }}); \
             window.showSaveFilePicker = async () => window.testFile; \
             window.showOpenFilePicker = async () => [window.testFile]; return true }})()",
            Value::from(file)
        ));
    }
    /// What is in the file that the pickers answer with.
    pub(crate) fn picked_file(&self) -> String {
        let text = self.eval("testFile.getFile().then(file => file.text())");
        text.as_str().unwrap_or_default().to_owned()
    }
    /// Writes the file that the pickers answer with.
    pub(crate) fn write_picked_file(&self, text: &str) {
        self.eval(&format!(
            "(async () => {{ const out = await testFile.createWritable(); await out.write({}); await out.close(); return true }})()",
            Value::from(text)
        ));
    }
    /// The last words that the page said.
    pub(crate) fn said(&self) -> String {
        self.texts("said").join(" ")
    }
}

/// Both ends of a run as one writes them.
pub(crate) fn ends(sheet: &Sheet, run: &model::Run) -> (String, String) {
    let written = |end: &model::End| {
        end.terminal()
            .map_or_else(|| "loose".to_owned(), |at| sheet.written(at))
    };
    (written(&run.from), written(&run.to))
}
