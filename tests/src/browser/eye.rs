//! What is seen of a page: pictures, what stands in it, named conditions with a deadline, what it wrote to the console.

use super::page::{Page, Place};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// How long a named condition may take when a test does not say otherwise.
const PATIENCE: Duration = Duration::from_secs(15);
/// Time between two looks at a condition.
const LOOK_AGAIN: Duration = Duration::from_millis(25);

impl Page {
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
}

/// A CSS selector as a quoted string of a script.
fn selector(test_id: &str) -> Value {
    json!(format!("[data-testid={}]", json!(test_id)))
}
