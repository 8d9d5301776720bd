//! The page as a person meets it.

use super::browsers::{self, Browser};
use super::driver::Driver;
use base64::Engine as _;
use serde_json::{Value, json};
use std::cell::Cell;
use std::path::{Path, PathBuf};
use tempfile::TempDir;
use xtask::static_server::StaticServer;

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
    pub(super) size: (u32, u32),
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
    pub(super) fn driver(&self) -> &Driver {
        self.driver.as_ref().expect("the browser was closed")
    }

    #[track_caller]
    pub(super) fn post(&self, path: &str, body: &Value) -> Value {
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
    pub(super) fn inspect(&self, command: &str, parameters: &Value) -> Value {
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
