//! The page as a person meets it.

use super::browsers::{self, Browser};
use super::driver::Driver;
use super::keys;
use base64::Engine as _;
use serde_json::{Value, json};
use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use tempfile::TempDir;
use xtask::static_server::StaticServer;

/// How long a named condition may take when a test does not say otherwise.
const PATIENCE: Duration = Duration::from_secs(15);
/// Time between two looks at a condition.
const LOOK_AGAIN: Duration = Duration::from_millis(25);
/// Window of a test that does not set one, in CSS pixels: a common laptop.
const WINDOW: (u32, u32) = (1440, 900);

/// A folder that is served to the browser.
pub struct Site {
    /// Nothing once it has ended.
    server: Option<StaticServer>,
    address: String,
}

impl Site {
    /// The page as it is shipped, under a path that is not the root: it must work wherever somebody puts it.
    #[must_use]
    #[track_caller]
    pub fn built_page() -> Self {
        let folder = xtask::page_folder();
        assert!(
            folder.join("index.html").is_file(),
            "the page is not built: `cargo xtask test --stage browser` builds it and runs these tests"
        );
        Self::of_folder(&folder, "tools/loomwright")
    }

    /// Any folder, under any prefix.
    #[must_use]
    #[track_caller]
    pub fn of_folder(folder: &Path, prefix: &str) -> Self {
        match StaticServer::start_under(folder, prefix, 0) {
            Ok(server) => Self {
                address: server.address(),
                server: Some(server),
            },
            Err(error) => panic!("cannot serve {}: {error}", folder.display()),
        }
    }

    /// Address of a path below the folder.
    #[must_use]
    pub fn address(&self, path: &str) -> String {
        format!("{}{}", self.address, path.trim_start_matches('/'))
    }
}

/// Colour scheme that the person has set in the operating system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scheme {
    /// Dark letters on light ground.
    Light,
    /// Light letters on dark ground.
    Dark,
}

/// Where something is on the screen, in CSS pixels from the upper left corner of the window's inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Place {
    /// Its middle, which is where a pointer aims.
    #[must_use]
    pub fn middle(self) -> (f64, f64) {
        (self.x + self.width / 2.0, self.y + self.height / 2.0)
    }
}

/// One browser window on one page of an origin that nothing is stored on. Motion is turned off.
pub struct Page {
    // Dropped in this order: the browser first, then the folder that it writes to.
    driver: Option<Driver>,
    profile: Option<TempDir>,
    /// Whether the browser is as another test may have it.
    is_as_new: Cell<bool>,
    /// Whether the page may leave its service worker here.
    keeps_program: bool,
    site: Site,
    path: String,
    size: (u32, u32),
    scheme: Scheme,
}

impl Page {
    /// Opens a path of the built page (`""`, `"#job=van"`) where nothing is stored yet.
    #[must_use]
    #[track_caller]
    pub fn open(path: &str) -> Self {
        Self::open_on(Site::built_page(), path)
    }

    /// Opens a path of any site where nothing is stored yet.
    #[must_use]
    #[track_caller]
    pub fn open_on(site: Site, path: &str) -> Self {
        Self::first_visit(site, path, false)
    }

    /// The same in a browser that takes the program to keep, for work without a network. Elsewhere it does not: it would fetch
    /// every file a second time on each first visit, which takes as long as to open the page.
    #[must_use]
    #[track_caller]
    pub fn open_kept_on(site: Site, path: &str) -> Self {
        Self::first_visit(site, path, true)
    }

    #[track_caller]
    fn first_visit(site: Site, path: &str, keeps_program: bool) -> Self {
        let browser = match browsers::take() {
            Ok(browser) => browser,
            Err(error) => panic!("no browser: {error}"),
        };
        let page = Self {
            driver: Some(browser.driver),
            profile: Some(browser.profile),
            is_as_new: Cell::new(true),
            keeps_program,
            site,
            path: path.to_owned(),
            size: WINDOW,
            scheme: Scheme::Light,
        };
        page.show();
        page
    }

    /// Starts the browser anew on its own folder.
    #[track_caller]
    fn start(&mut self) {
        let profile = self
            .profile
            .as_ref()
            .expect("a page has its folder until it is dropped");
        match Driver::start(profile.path()) {
            Ok(driver) => self.driver = Some(driver),
            Err(error) => panic!("no browser: {error}"),
        }
        self.show();
    }

    #[track_caller]
    fn show(&self) {
        self.prepare();
        self.post("/url", &json!({ "url": self.site.address(&self.path) }));
    }

    #[track_caller]
    fn driver(&self) -> &Driver {
        self.driver.as_ref().expect("the browser was closed")
    }

    #[track_caller]
    fn post(&self, path: &str, body: &Value) -> Value {
        match self.driver().post(path, body) {
            Ok(value) => value,
            Err(error) => panic!("the browser refused: {error}"),
        }
    }

    #[track_caller]
    fn get(&self, path: &str) -> Value {
        match self.driver().get(path) {
            Ok(value) => value,
            Err(error) => panic!("the browser refused: {error}"),
        }
    }

    #[track_caller]
    fn inspect(&self, command: &str, parameters: &Value) -> Value {
        match self.driver().inspect(command, parameters) {
            Ok(value) => value,
            Err(error) => panic!("the browser refused {command}: {error}"),
        }
    }

    // ---- window ----

    /// Ends the site's server, as when the network is gone: whatever is asked of it from here on fails.
    pub fn lose_site(&mut self) {
        self.site.server = None;
    }

    /// Goes to another path of the same site.
    #[track_caller]
    pub fn go(&mut self, path: &str) {
        path.clone_into(&mut self.path);
        self.post("/url", &json!({ "url": self.site.address(path) }));
    }

    /// Runs a script in every page from here on, before anything of the page's own.
    #[track_caller]
    pub fn run_first(&self, script: &str) {
        self.inspect(
            "Page.addScriptToEvaluateOnNewDocument",
            &json!({ "source": script }),
        );
    }

    /// What keeps the browser from offering to install the page as an app, in its own words.
    #[must_use]
    #[track_caller]
    pub fn install_errors(&self) -> Value {
        self.inspect("Page.getInstallabilityErrors", &json!({}))["installabilityErrors"].take()
    }

    /// Goes to a file of this machine, as a double click on it does.
    #[track_caller]
    pub fn go_to_file(&self, file: &Path) {
        // All files are of one origin.
        self.is_as_new.set(false);
        self.post("/url", &json!({ "url": format!("file://{}", file.display()) }));
    }

    /// Lets downloads go into a folder, without asking.
    #[track_caller]
    pub fn download_into(&self, folder: &Path) {
        self.is_as_new.set(false);
        let parameters = json!({ "behavior": "allow", "downloadPath": folder });
        self.inspect("Browser.setDownloadBehavior", &parameters);
    }

    /// Waits until a download with this ending is whole, and says where it is.
    #[track_caller]
    pub fn downloaded(&self, folder: &Path, ending: &str) -> PathBuf {
        self.wait_for(&format!("a download *{ending}"), || {
            // The browser takes the name by an empty file and puts the written one in its place when all of it is there.
            std::fs::read_dir(folder)
                .into_iter()
                .flatten()
                .filter_map(|entry| Some(entry.ok()?.path()))
                .find(|path| {
                    path.to_string_lossy().ends_with(ending)
                        && std::fs::metadata(path).is_ok_and(|data| data.len() > 0)
                })
        })
    }

    /// Loads the page again, as F5 does.
    #[track_caller]
    pub fn reload(&self) {
        self.post("/refresh", &json!({}));
    }

    /// Closes the browser in good order and opens it again on the same profile: what was stored must be there.
    #[track_caller]
    pub fn close_and_reopen(&mut self) {
        self.is_as_new.set(false);
        self.driver = None;
        self.start();
    }

    /// Kills the browser as a crash or an empty battery would, and opens it again on the same profile.
    #[track_caller]
    pub fn crash_and_reopen(&mut self) {
        self.is_as_new.set(false);
        if let Err(error) = self.driver().kill_browser() {
            panic!("{error}");
        }
        self.driver = None;
        let profile = self
            .profile
            .as_ref()
            .map(|folder| folder.path().to_owned())
            .unwrap_or_default();
        // The killed browser could not tidy up; its lock would keep the next one from starting.
        for lock in ["SingletonLock", "SingletonSocket", "SingletonCookie"] {
            let _ = std::fs::remove_file(profile.join(lock));
        }
        self.start();
    }

    /// Opens a path of the site in another tab of the same browser, which is then the one in view.
    #[track_caller]
    pub fn open_tab(&self, path: &str) {
        let fresh = self.post("/window/new", &json!({ "type": "tab" }));
        self.post("/window", &json!({ "handle": fresh["handle"] }));
        self.prepare();
        self.post("/url", &json!({ "url": self.site.address(path) }));
    }

    /// Goes to the n-th tab, from 0 in the order of opening.
    #[track_caller]
    pub fn go_to_tab(&self, index: usize) {
        let handles = self.get("/window/handles");
        let handle = &handles[index];
        assert!(handle.is_string(), "no tab {index}: {handles}");
        self.post("/window", &json!({ "handle": handle }));
    }

    /// Closes the tab in view, without asking it; go to another one next.
    #[track_caller]
    pub fn close_tab(&self) {
        if let Err(error) = self.driver().delete("/window") {
            panic!("the browser refused to close a tab: {error}");
        }
    }

    /// Sets the inside of the window, in CSS pixels.
    #[track_caller]
    pub fn set_size(&mut self, width: u32, height: u32) {
        self.size = (width, height);
        self.emulate();
    }

    /// Sets the colour scheme of the operating system.
    #[track_caller]
    pub fn set_scheme(&mut self, scheme: Scheme) {
        self.scheme = scheme;
        self.emulate();
    }

    /// Makes a fresh tab one of this window.
    #[track_caller]
    fn prepare(&self) {
        self.emulate();
        if !self.keeps_program {
            // To the page it is as when the network is slow: the worker is still on its way.
            self.run_first(
                "if (navigator.serviceWorker) navigator.serviceWorker.register = () => new Promise(() => {})",
            );
        }
    }

    #[track_caller]
    fn emulate(&self) {
        let (width, height) = self.size;
        self.inspect(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false }),
        );
        let scheme = if self.scheme == Scheme::Dark {
            "dark"
        } else {
            "light"
        };
        self.inspect(
            "Emulation.setEmulatedMedia",
            &json!({ "features": [
                { "name": "prefers-color-scheme", "value": scheme },
                { "name": "prefers-reduced-motion", "value": "reduce" },
            ] }),
        );
    }

    /// What the printer would get, as PDF on A4.
    #[must_use]
    #[track_caller]
    pub fn as_pdf(&self) -> Vec<u8> {
        self.as_pdf_on((210.0, 297.0))
    }

    /// The same on paper of this width and height in millimetres. The style sheet turns it, and has its own margins.
    #[must_use]
    #[track_caller]
    pub fn as_pdf_on(&self, (wide, high): (f64, f64)) -> Vec<u8> {
        let asked = json!({
            "paperWidth": wide / 25.4, "paperHeight": high / 25.4, "preferCSSPageSize": true,
        });
        let told = self.inspect("Page.printToPDF", &asked);
        let letters = told["data"].as_str().unwrap_or_default();
        match base64::engine::general_purpose::STANDARD.decode(letters) {
            Ok(bytes) => bytes,
            Err(error) => panic!("the browser printed no PDF: {error}"),
        }
    }

    /// Shows the page as it would be printed; `false` goes back to the screen.
    #[track_caller]
    pub fn set_print(&self, print: bool) {
        self.inspect(
            "Emulation.setEmulatedMedia",
            &json!({ "media": if print { "print" } else { "" } }),
        );
        if !print {
            self.emulate();
        }
    }

    /// Keeps a picture of the window in `target/browser/NAME.png` and says where it is.
    #[track_caller]
    pub fn screenshot(&self, name: &str) -> PathBuf {
        let data = self.get("/screenshot");
        let bytes = base64::engine::general_purpose::STANDARD.decode(data.as_str().unwrap_or_default());
        let folder = xtask::workspace_root().join("target").join("browser");
        let file = folder.join(format!("{name}.png"));
        let bytes = bytes.unwrap_or_else(|error| panic!("no picture: {error}"));
        if let Err(error) = std::fs::create_dir_all(&folder).and_then(|()| std::fs::write(&file, bytes)) {
            panic!("cannot keep {}: {error}", file.display());
        }
        file
    }

    // ---- eye ----

    /// Value of a script's expression; a promise is waited for. The last statement is an expression, not a `return`.
    #[track_caller]
    pub fn eval(&self, expression: &str) -> Value {
        match self.try_eval(expression) {
            Ok(value) => value,
            Err(error) => panic!("`{expression}`: {error}"),
        }
    }

    fn try_eval(&self, expression: &str) -> Result<Value, String> {
        let script = format!("return (async () => ({expression}))();");
        self.driver()
            .post("/execute/sync", &json!({ "script": script, "args": [] }))
    }

    /// How many things with that `data-testid` are on the page, shown or not.
    #[must_use]
    #[track_caller]
    pub fn count(&self, test_id: &str) -> usize {
        let number = self.eval(&format!(
            "document.querySelectorAll({}).length",
            selector(test_id)
        ));
        usize::try_from(number.as_u64().unwrap_or_default()).unwrap_or_default()
    }

    /// Text of each thing with that `data-testid`, as it is shown.
    #[must_use]
    #[track_caller]
    pub fn texts(&self, test_id: &str) -> Vec<String> {
        let list = self.eval(&format!(
            "[...document.querySelectorAll({})].map(e => e.innerText)",
            selector(test_id)
        ));
        list.as_array()
            .into_iter()
            .flatten()
            .map(|text| text.as_str().unwrap_or_default().to_owned())
            .collect()
    }

    /// Text of the first thing with that `data-testid`; waits until there is one.
    #[must_use]
    #[track_caller]
    pub fn text(&self, test_id: &str) -> String {
        self.wait_for(&format!("`{test_id}` to have a text"), || {
            self.texts(test_id).into_iter().next()
        })
    }

    /// An attribute of the first thing with that `data-testid`.
    #[must_use]
    #[track_caller]
    pub fn attribute(&self, test_id: &str, name: &str) -> Option<String> {
        let value = self.eval(&format!(
            "document.querySelector({})?.getAttribute({})",
            selector(test_id),
            json!(name)
        ));
        value.as_str().map(str::to_owned)
    }

    /// Where the first thing with that `data-testid` is; waits until it is shown, and scrolls it into view.
    #[must_use]
    #[track_caller]
    pub fn place(&self, test_id: &str) -> Place {
        self.place_of(test_id, 0)
    }

    /// Like [`Page::place`], for the n-th of several, from 0.
    #[must_use]
    #[track_caller]
    pub fn place_of(&self, test_id: &str, index: usize) -> Place {
        let script = format!(
            "(() => {{ const e = document.querySelectorAll({})[{index}]; if (!e) return null; \
             e.scrollIntoView({{ block: 'nearest', inline: 'nearest' }}); const r = e.getBoundingClientRect(); \
             return r.width > 0 && r.height > 0 ? [r.x, r.y, r.width, r.height] : null; }})()",
            selector(test_id)
        );
        self.wait_for(&format!("`{test_id}` ({index}) to be shown"), || {
            let numbers: Vec<f64> = self
                .try_eval(&script)
                .ok()?
                .as_array()?
                .iter()
                .filter_map(Value::as_f64)
                .collect();
            match numbers[..] {
                [x, y, width, height] => Some(Place { x, y, width, height }),
                _ => None,
            }
        })
    }

    /// Waits until `look` finds something, at most fifteen seconds. `condition` completes "waited for".
    #[track_caller]
    pub fn wait_for<T>(&self, condition: &str, look: impl FnMut() -> Option<T>) -> T {
        self.wait_at_most(PATIENCE, condition, look)
    }

    /// Like [`Page::wait_for`], with another deadline.
    #[track_caller]
    pub fn wait_at_most<T>(
        &self,
        deadline: Duration,
        condition: &str,
        mut look: impl FnMut() -> Option<T>,
    ) -> T {
        let begin = Instant::now();
        loop {
            if let Some(found) = look() {
                return found;
            }
            if begin.elapsed() >= deadline {
                let name: String = condition
                    .chars()
                    .map(|c| if c.is_alphanumeric() { c } else { '-' })
                    .collect();
                let picture = self.screenshot(&format!("failed-{name}"));
                panic!(
                    "waited {:.1} s in vain for {condition}\npicture: {}\nconsole:\n{}",
                    deadline.as_secs_f64(),
                    picture.display(),
                    self.console().join("\n")
                );
            }
            std::thread::sleep(LOOK_AGAIN);
        }
    }

    /// Waits until a script's expression is true.
    #[track_caller]
    pub fn wait_until(&self, condition: &str, expression: &str) {
        self.wait_for(condition, || {
            self.try_eval(expression).ok()?.as_bool()?.then_some(())
        });
    }

    /// What the page wrote to the console since the last call, each with its level in front; a panic is among it.
    #[must_use]
    pub fn console(&self) -> Vec<String> {
        let Ok(entries) = self.driver().post("/se/log", &json!({ "type": "browser" })) else {
            return Vec::new();
        };
        entries
            .as_array()
            .into_iter()
            .flatten()
            .map(|entry| {
                let part = |name: &str| entry[name].as_str().unwrap_or_default().to_owned();
                format!("{}: {}", part("level"), part("message"))
            })
            .collect()
    }

    /// Fails if the page reported an error, a panic or a file that it could not load.
    #[track_caller]
    pub fn assert_no_errors(&self) {
        let errors: Vec<_> = self
            .console()
            .into_iter()
            .filter(|line| line.starts_with("SEVERE"))
            .collect();
        assert!(
            errors.is_empty(),
            "the page reported errors:\n{}",
            errors.join("\n")
        );
    }

    // ---- hand ----

    /// Presses and releases the pointer at a point of the window.
    #[track_caller]
    pub fn click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(0), up(0)]);
    }

    /// Two quick clicks.
    #[track_caller]
    pub fn double_click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(0), up(0), down(0), up(0)]);
    }

    /// The other button, that opens menus.
    #[track_caller]
    pub fn right_click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(2), up(2)]);
    }

    /// A finger that touches and leaves.
    #[track_caller]
    pub fn tap_at(&self, x: f64, y: f64) {
        self.pointer("touch", &[move_to(x, y, 0), down(0), up(0)]);
    }

    /// A finger that rests for so long before it leaves.
    #[track_caller]
    pub fn rest_at(&self, x: f64, y: f64, milliseconds: u32) {
        let pause = json!({ "type": "pause", "duration": milliseconds });
        self.pointer("touch", &[move_to(x, y, 0), down(0), pause, up(0)]);
    }

    /// Two fingers that come down at the first pair of points and leave at the second.
    #[track_caller]
    pub fn two_fingers(&self, from: [(f64, f64); 2], to: [(f64, f64); 2]) {
        let fingers: Vec<Value> = from
            .iter()
            .zip(to)
            .enumerate()
            .map(|(finger, (from, to))| {
                json!({ "type": "pointer", "id": format!("finger {finger}"), "parameters": { "pointerType": "touch" }, "actions": stroke(&[*from, to]) })
            })
            .collect();
        self.post("/actions", &json!({ "actions": fingers }));
    }

    /// Makes the machine one that is handled by fingers.
    #[track_caller]
    pub fn set_touch(&self) {
        self.inspect(
            "Emulation.setTouchEmulationEnabled",
            &json!({ "enabled": true, "maxTouchPoints": 5 }),
        );
        let (width, height) = self.size;
        self.inspect(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true }),
        );
    }

    /// Clicks the middle of the first thing with that `data-testid`, once it is shown.
    #[track_caller]
    pub fn click(&self, test_id: &str) {
        self.click_nth(test_id, 0);
    }

    /// Clicks the n-th of several, from 0.
    #[track_caller]
    pub fn click_nth(&self, test_id: &str, index: usize) {
        let (x, y) = self.place_of(test_id, index).middle();
        self.click_at(x, y);
    }

    /// Moves the pointer without pressing.
    #[track_caller]
    pub fn hover(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0)]);
    }

    /// Presses at the first point, moves through the others in small steps, and releases at the last.
    #[track_caller]
    pub fn drag(&self, points: &[(f64, f64)]) {
        self.pointer("mouse", &stroke(points));
    }

    /// The same with a finger.
    #[track_caller]
    pub fn touch_drag(&self, points: &[(f64, f64)]) {
        self.pointer("touch", &stroke(points));
    }

    /// Presses at the first point and moves through the others, and stays pressed: to look at the screen in mid-gesture.
    /// The driver keeps the button down until [`Page::release`].
    #[track_caller]
    pub fn drag_and_hold(&self, points: &[(f64, f64)]) {
        let mut steps = stroke(points);
        steps.pop();
        self.pointer("mouse", &steps);
    }

    /// Lets go of the pointer where it is.
    #[track_caller]
    pub fn release(&self) {
        self.pointer("mouse", &[up(0)]);
    }

    /// Turns the wheel over a point, in CSS pixels; `dy` above 0 scrolls down.
    #[track_caller]
    pub fn wheel(&self, x: f64, y: f64, dx: i32, dy: i32) {
        let turn = json!({ "type": "scroll", "x": x.round() as i64, "y": y.round() as i64, "deltaX": dx, "deltaY": dy, "duration": 0, "origin": "viewport" });
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "wheel", "id": "wheel", "actions": [turn] }] }),
        );
    }

    #[track_caller]
    fn pointer(&self, kind: &str, steps: &[Value]) {
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "pointer", "id": kind, "parameters": { "pointerType": kind }, "actions": steps }] }),
        );
    }

    /// Presses a key or a chord: `"Escape"`, `"f"`, `"ctrl+z"`, `"shift+left"`, and releases it.
    #[track_caller]
    pub fn press(&self, chord: &str) {
        let keys = keys::chord(chord).unwrap_or_else(|error| panic!("{error}"));
        let downs = keys
            .iter()
            .map(|key| json!({ "type": "keyDown", "value": key.to_string() }));
        let ups = keys
            .iter()
            .rev()
            .map(|key| json!({ "type": "keyUp", "value": key.to_string() }));
        self.keyboard(&downs.chain(ups).collect::<Vec<_>>());
    }

    /// Types a text, key by key.
    #[track_caller]
    pub fn type_text(&self, text: &str) {
        let strokes: Vec<Value> = text
            .chars()
            .flat_map(|key| {
                ["keyDown", "keyUp"].map(|kind| json!({ "type": kind, "value": key.to_string() }))
            })
            .collect();
        self.keyboard(&strokes);
    }

    #[track_caller]
    fn keyboard(&self, strokes: &[Value]) {
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": strokes }] }),
        );
    }
}

impl Drop for Page {
    fn drop(&mut self) {
        let browser = self.driver.take().zip(self.profile.take());
        if let Some((driver, profile)) = browser.filter(|_| self.is_as_new.get() && !std::thread::panicking())
        {
            browsers::give_back(Browser { driver, profile });
        }
    }
}

/// A CSS selector as a quoted string of a script.
fn selector(test_id: &str) -> Value {
    json!(format!("[data-testid={}]", json!(test_id)))
}

fn move_to(x: f64, y: f64, milliseconds: u32) -> Value {
    json!({ "type": "pointerMove", "duration": milliseconds, "x": x.round() as i64, "y": y.round() as i64, "origin": "viewport" })
}

fn down(button: u8) -> Value {
    json!({ "type": "pointerDown", "button": button })
}

fn up(button: u8) -> Value {
    json!({ "type": "pointerUp", "button": button })
}

/// Steps of a hand are small: what reacts to the way of the pointer must see some of it.
fn stroke(points: &[(f64, f64)]) -> Vec<Value> {
    const STEPS: u32 = 6;
    let mut steps = Vec::new();
    for (index, &(x, y)) in points.iter().enumerate() {
        let Some(&(from_x, from_y)) = index.checked_sub(1).and_then(|before| points.get(before)) else {
            steps.extend([move_to(x, y, 0), down(0)]);
            continue;
        };
        for step in 1..=STEPS {
            let share = f64::from(step) / f64::from(STEPS);
            steps.push(move_to(
                from_x + (x - from_x) * share,
                from_y + (y - from_y) * share,
                8,
            ));
        }
    }
    steps.push(up(0));
    steps
}
