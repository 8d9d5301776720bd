//! Browsers that tests use one after another: to start one takes a third of the time of a usual test.
//!
//! A page gets a fresh tab. Storage, caches, workers and locks belong to an origin, and each site has a port of its own, so that
//! what one test keeps no other test meets. A test that does something to the browser itself ends it ([`super::Page`] knows which
//! those are), as does one that fails.

use super::driver::Driver;
use std::io::Write as _;
use std::os::unix::process::CommandExt as _;
use std::path::Path;
use std::process::{ChildStdin, Command, Stdio};
use std::sync::{Mutex, OnceLock, PoisonError};
use tempfile::TempDir;

/// A browser with the folder that it writes to; it ends before the folder does.
pub(super) struct Browser {
    pub(super) driver: Driver,
    pub(super) profile: TempDir,
}

/// Those that nobody uses now.
static AT_REST: Mutex<Vec<Browser>> = Mutex::new(Vec::new());

/// A browser with one fresh tab: one that is at rest, else a new one.
pub(super) fn take() -> Result<Browser, String> {
    let rested = AT_REST.lock().unwrap_or_else(PoisonError::into_inner).pop();
    if let Some(browser) = rested {
        return Ok(browser);
    }
    let profile = tempfile::Builder::new()
        .prefix("loomwright-browser-")
        .tempdir()
        .map_err(|error| format!("no folder for a browser profile: {error}"))?;
    let driver = Driver::start(profile.path())?;
    Ok(Browser { driver, profile })
}

/// Puts a browser to rest for the next test; one that does not let go of its tabs ends.
pub(super) fn give_back(browser: Browser) {
    if browser.driver.leave_one_fresh_tab().is_ok() {
        AT_REST
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(browser);
    }
}

/// Reads lines of a driver, its browser and the browser's folder until the tests end, however they end, and then ends what is
/// left. A number alone could be another process by then: the browser is known by its folder.
const REMAINDER: &str = r#"
all=$(cat)
printf '%s\n' "$all" | while read -r driver browser folder; do
  [ -n "$folder" ] && ps -o args= -p "$browser" | grep -qF -- "$folder" || continue
  kill "$browser" "$driver"
  for _ in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do
    ps -p "$browser" > /dev/null || break
    sleep 0.1
  done
  rm -rf -- "$folder"
done
"#;

/// Sees to it that a browser does not outlive the tests: one at rest is dropped by nobody, and a test may be killed.
pub(super) fn end_with_the_tests(driver: u32, browser: u64, folder: &Path) {
    static WATCH: OnceLock<Option<Mutex<ChildStdin>>> = OnceLock::new();
    let watch = WATCH.get_or_init(|| {
        let child = Command::new("sh")
            .args(["-c", REMAINDER])
            // Whoever interrupts the tests does not interrupt what cleans up behind them.
            .process_group(0)
            .stdin(Stdio::piped())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
        child.ok()?.stdin.map(Mutex::new)
    });
    if let Some(watch) = watch {
        let mut watch = watch.lock().unwrap_or_else(PoisonError::into_inner);
        let _ = writeln!(watch, "{driver} {browser} {}", folder.display());
    }
}
