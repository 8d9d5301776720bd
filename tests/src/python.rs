//! Small programs in another language (`tests/python`) that work the same thing out with libraries that are not ours.

use std::process::{Command, Output};

/// Programs that may be Python: the one on the path need not be the one that Debian's packages belong to.
const PYTHONS: [&str; 2] = ["python3", "/usr/bin/python3"];

/// A Python that has scipy.
///
/// # Panics
/// When there is none: a comparison must not be skipped in silence.
#[must_use]
pub fn with_scipy() -> &'static str {
    PYTHONS
        .into_iter()
        .find(|python| {
            Command::new(python)
                .args(["-c", "import scipy"])
                .output()
                .is_ok_and(|run| run.status.success())
        })
        .expect("a Python with scipy is installed: Debian package `python3-scipy`")
}

/// Runs a program of `tests/python` that needs scipy, with these words, and gives it this to read.
///
/// # Panics
/// When it cannot be run, or says that it failed: then with what it said.
#[must_use]
pub fn run_with_scipy(program: &str, words: &[&str], input: &str) -> String {
    use std::io::Write as _;
    let path = format!("{}/python/{program}", env!("CARGO_MANIFEST_DIR"));
    let mut child = Command::new(with_scipy())
        .arg(path)
        .args(words)
        .stdin(std::process::Stdio::piped())
        .stdout(std::process::Stdio::piped())
        .stderr(std::process::Stdio::piped())
        .spawn()
        .expect("Python runs");
    let mut pipe = child.stdin.take().expect("its input is a pipe");
    let text = input.to_owned();
    // Beside the reading of its output: neither waits for the other with a full pipe.
    let writing = std::thread::spawn(move || pipe.write_all(text.as_bytes()));
    let Output {
        status,
        stdout,
        stderr,
    } = child.wait_with_output().expect("Python ends");
    let errors = String::from_utf8_lossy(&stderr);
    assert!(status.success(), "{program} failed:\n{errors}");
    writing
        .join()
        .expect("the writer ends")
        .expect("the program reads all of its input");
    String::from_utf8_lossy(&stdout).into_owned()
}
