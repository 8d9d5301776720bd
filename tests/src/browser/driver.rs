//! The browser's driver as a child process, and the few WebDriver requests that we make of it.
//!
//! Source: W3C WebDriver (paths, element key, actions); `goog/cdp/execute` and `se/log` are Chromium's own additions.

use super::browsers::end_with_the_tests;
use serde_json::{Value, json};
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use ureq::Agent;
use xtask::find_program;

/// One browser under one driver. Both end when this is dropped.
pub(super) struct Driver {
    process: Child,
    agent: Agent,
    /// `http://127.0.0.1:port/session/id`
    session: String,
    browser_process: Option<u64>,
}

impl Driver {
    /// Starts driver and browser with that profile folder.
    pub(super) fn start(profile: &Path) -> Result<Self, String> {
        let named = |variable: &str, usual: &[&str]| {
            std::env::var(variable)
                .ok()
                .into_iter()
                .chain(usual.iter().map(|name| (*name).to_owned()))
                .find_map(|name| find_program(&name))
                .ok_or_else(|| {
                    format!(
                        "no {} here: `cargo xtask test --stage browser` sets it up; {variable} may name it",
                        usual[0]
                    )
                })
        };
        let driver = named("CHROMEDRIVER", &["chromedriver"])?;
        let browser = named("CHROMIUM", &["chromium", "chromium-browser", "google-chrome"])?;

        let mut process = Command::new(&driver)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|error| format!("cannot start {}: {error}", driver.display()))?;
        let port = match port_of(&mut process) {
            Ok(port) => port,
            Err(error) => {
                let _ = process.kill();
                let _ = process.wait();
                return Err(error);
            }
        };
        let agent: Agent = Agent::config_builder()
            .timeout_global(Some(Duration::from_secs(60)))
            // Answers with an error status carry the driver's explanation; we want to read it.
            .http_status_as_error(false)
            .build()
            .into();
        // From here on dropping it ends the process, whatever fails.
        let mut this = Self {
            process,
            agent,
            session: format!("http://127.0.0.1:{port}/session"),
            browser_process: None,
        };

        let arguments: Vec<String> = [
            "--headless",
            // Chromium refuses its sandbox to root, which is who runs tests in most containers.
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--disable-quic",
            "--no-first-run",
            "--no-default-browser-check",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-extensions",
            "--force-color-profile=srgb",
            "--hide-scrollbars",
            // English with metric units, unless a test chooses otherwise.
            "--accept-lang=en-GB,en",
            // The page must not need a host; if it asks for one, it gets an error that the console shows.
            "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
        ]
        .map(str::to_owned)
        .into_iter()
        .chain([format!("--user-data-dir={}", profile.display())])
        .collect();
        let wanted = json!({ "capabilities": { "alwaysMatch": {
            "browserName": "chrome",
            // A dialog that asks whether to leave would hold up every request; tests that want one read it themselves.
            "unhandledPromptBehavior": "ignore",
            "goog:chromeOptions": { "binary": browser, "args": arguments },
            "goog:loggingPrefs": { "browser": "ALL" },
        } } });
        let answer = this.send("POST", "", &wanted)?;
        let id = answer["sessionId"]
            .as_str()
            .ok_or_else(|| format!("no session: {answer}"))?;
        this.session = format!("{}/{id}", this.session);
        this.browser_process = answer["capabilities"]["goog:processID"].as_u64();
        if let Some(browser) = this.browser_process {
            end_with_the_tests(this.process.id(), browser, profile);
        }
        Ok(this)
    }

    /// A request that sends a body.
    pub(super) fn post(&self, path: &str, body: &Value) -> Result<Value, String> {
        self.send("POST", path, body)
    }

    /// A request that only reads.
    pub(super) fn get(&self, path: &str) -> Result<Value, String> {
        self.send("GET", path, &Value::Null)
    }

    /// A request that takes something away.
    pub(super) fn delete(&self, path: &str) -> Result<Value, String> {
        self.send("DELETE", path, &Value::Null)
    }

    /// A command of the browser's own inspection protocol.
    pub(super) fn inspect(&self, command: &str, parameters: &Value) -> Result<Value, String> {
        self.post(
            "/goog/cdp/execute",
            &json!({ "cmd": command, "params": parameters }),
        )
    }

    /// Closes all tabs for one that nothing was done to, and forgets what keys and buttons were held and what the console said.
    pub(super) fn leave_one_fresh_tab(&self) -> Result<(), String> {
        self.delete("/actions")?;
        let used = self.get("/window/handles")?;
        let fresh = self.post("/window/new", &json!({ "type": "tab" }))?;
        for handle in used.as_array().into_iter().flatten() {
            self.post("/window", &json!({ "handle": handle }))?;
            self.delete("/window")?;
        }
        self.post("/window", &json!({ "handle": fresh["handle"] }))?;
        self.post("/se/log", &json!({ "type": "browser" })).map(drop)
    }

    /// Ends the browser as a crash would: no farewell to the page, nothing flushed.
    pub(super) fn kill_browser(&self) -> Result<(), String> {
        let id = self
            .browser_process
            .ok_or("the driver does not tell the browser's process")?;
        let status = Command::new("kill")
            .args(["-9", &id.to_string()])
            .status()
            .map_err(|error| error.to_string())?;
        if status.success() {
            Ok(())
        } else {
            Err(format!("cannot kill process {id}: {status}"))
        }
    }

    fn send(&self, method: &str, path: &str, body: &Value) -> Result<Value, String> {
        let address = format!("{}{path}", self.session);
        let failed = |error: ureq::Error| format!("{method} {path}: {error}");
        let mut response = match method {
            "GET" => self.agent.get(&address).call(),
            "DELETE" => self.agent.delete(&address).call(),
            _ => self.agent.post(&address).send_json(body),
        }
        .map_err(failed)?;
        let status = response.status();
        // Screenshots of large windows run to several megabytes.
        let text = response
            .body_mut()
            .with_config()
            .limit(256 << 20)
            .read_to_string()
            .map_err(failed)?;
        let mut answer: Value =
            serde_json::from_str(&text).map_err(|error| format!("{method} {path}: {error}: {text}"))?;
        let value = answer["value"].take();
        if status.is_success() {
            Ok(value)
        } else {
            let message = value["message"]
                .as_str()
                .unwrap_or_default()
                .lines()
                .next()
                .unwrap_or_default();
            Err(format!(
                "{method} {path}: {}: {message}",
                value["error"].as_str().unwrap_or("no reason given")
            ))
        }
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Ends the browser; without it the driver would leave it running.
        let _ = self.send("DELETE", "", &Value::Null);
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// The driver picks a free port and says so in a line like `ChromeDriver was started successfully on port 43210.`
fn port_of(process: &mut Child) -> Result<u16, String> {
    let out = process.stdout.take().ok_or("the driver has no output")?;
    let mut lines = BufReader::new(out).lines();
    let port = lines.by_ref().map_while(Result::ok).find_map(|line| {
        line.split_once("successfully on port ")?
            .1
            .trim_end_matches('.')
            .trim()
            .parse()
            .ok()
    });
    // Whatever it says later is read and dropped, or it would stop when the pipe is full.
    std::thread::spawn(move || lines.map_while(Result::ok).for_each(drop));
    port.ok_or_else(|| "the driver ended without naming its port".to_owned())
}
