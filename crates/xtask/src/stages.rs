//! The stages of `test` and `quick`: one line each when done, the full output when one fails.

use crate::command::{cargo, shown};
use crate::{generate, kept, native, page, tools};
use std::fs::{self, File};
use std::io::{self, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::OnceLock;
use std::time::Instant;
use xtask::workspace_root;

/// A named part of the tests.
pub(crate) struct Stage {
    pub(crate) name: &'static str,
    pub(crate) what: &'static str,
    run: fn(&mut Log) -> Result<(), String>,
}

/// All of them, the quickest answers first.
pub(crate) const ALL: &[Stage] = &[
    Stage {
        name: "format",
        what: "rustfmt has nothing to change",
        run: format,
    },
    Stage {
        name: "clippy",
        what: "no lint fires, natively and for the page",
        run: clippy,
    },
    Stage {
        name: "tests",
        what: "unit tests and tests across crates",
        run: tests,
    },
    Stage {
        name: "doctests",
        what: "examples in the documentation",
        run: doctests,
    },
    Stage {
        name: "docs",
        what: "the documentation builds without a warning",
        run: docs,
    },
    Stage {
        name: "generated",
        what: "generated files are what would be generated now",
        run: generated,
    },
    Stage {
        name: "fuzz",
        what: "damaged and random input, for a bounded time",
        run: fuzz,
    },
    Stage {
        name: "page",
        what: "the page builds as it is shipped",
        run: page_builds,
    },
    Stage {
        name: "storage",
        what: "what the browser keeps, in a real browser",
        run: storage,
    },
    Stage {
        name: "equality",
        what: "the engine gives the same bytes in the browser and outside of it",
        run: equality,
    },
    Stage {
        name: "browser",
        what: "user tasks in a real browser",
        run: browser,
    },
];

/// Runs the chosen stages, or all.
pub(crate) fn test(chosen: &[String]) -> Result<(), String> {
    let stages: Vec<&Stage> = ALL
        .iter()
        .filter(|stage| chosen.is_empty() || chosen.iter().any(|name| name == stage.name))
        .collect();
    if stages.len() > 1 && stages.iter().any(|stage| NEED_PAGE.contains(&stage.name)) {
        // One core builds and optimises the page for minutes, and its tools too when they are missing: the other stages go
        // on beside it.
        std::thread::spawn(build_page);
    }
    run_all(&stages)
}

/// Stages that need the page as it is shipped.
const NEED_PAGE: &[&str] = &["page", "browser"];

/// What is worth running before every commit.
pub(crate) fn quick() -> Result<(), String> {
    const FAST: Stage = Stage {
        name: "fast-tests",
        what: "tests of the crates, without the long ones",
        run: fast_tests,
    };
    let mut stages: Vec<&Stage> = ALL.iter().take(2).collect();
    stages.push(&FAST);
    run_all(&stages)
}

fn run_all(stages: &[&Stage]) -> Result<(), String> {
    let folder = logs();
    let (mut passed, mut failed) = (0, 0);
    for stage in stages {
        if io::stdout().is_terminal() {
            print!("...  {:<10} {}\r", stage.name, stage.what);
            let _ = io::stdout().flush();
        }
        let begin = Instant::now();
        let mut log = Log::new(folder.join(format!("{}.log", stage.name)))?;
        let outcome = (stage.run)(&mut log);
        let seconds = begin.elapsed().as_secs_f64();
        match outcome {
            Ok(()) => {
                passed += 1;
                println!("ok   {:<10} {seconds:>6.1} s  {}", stage.name, stage.what);
            }
            Err(error) => {
                failed += 1;
                log.show();
                println!("FAIL {:<10} {seconds:>6.1} s  {error}", stage.name);
                println!(
                    "     again: cargo xtask test --stage {}   (output: {})",
                    stage.name,
                    log.path.display()
                );
            }
        }
    }
    println!("{passed} passed, {failed} failed");
    if failed == 0 { Ok(()) } else { Err(String::new()) }
}

/// Output of a stage: kept in a file, shown when the stage fails.
struct Log {
    path: PathBuf,
    file: File,
}

impl Log {
    fn new(path: PathBuf) -> Result<Self, String> {
        fs::create_dir_all(logs()).map_err(|error| format!("cannot make {}: {error}", logs().display()))?;
        let file =
            File::create(&path).map_err(|error| format!("cannot write {}: {error}", path.display()))?;
        Ok(Self { path, file })
    }

    fn run(&mut self, command: &mut Command) -> Result<(), String> {
        let line = shown(command);
        let copies = writeln!(self.file, "$ {line}")
            .and_then(|()| Ok((self.file.try_clone()?, self.file.try_clone()?)));
        let (out, err) = copies.map_err(|error| format!("cannot write {}: {error}", self.path.display()))?;
        let status = command
            .stdin(Stdio::null())
            .stdout(out)
            .stderr(err)
            .status()
            .map_err(|error| format!("cannot start `{line}`: {error}"))?;
        if status.success() {
            Ok(())
        } else {
            Err(format!("`{line}` ended with {status}"))
        }
    }

    fn show(&self) {
        println!("---- {}", self.path.display());
        if let Ok(bytes) = fs::read(&self.path) {
            let _ = io::stdout().write_all(&bytes);
        }
        println!("----");
    }
}

fn format(log: &mut Log) -> Result<(), String> {
    log.run(&mut cargo(["fmt", "--all", "--check"]))
}

fn clippy(log: &mut Log) -> Result<(), String> {
    let deny = ["--", "-D", "warnings"];
    log.run(
        cargo(["clippy", "--workspace", "--all-targets"])
            .args(["--features", ALL_FEATURES])
            .args(deny),
    )?;
    // The page again as what it is: much of it exists only for wasm, its tests altogether.
    tools::wasm_target()?;
    log.run(
        cargo([
            "clippy",
            "--package",
            "loomwright-web",
            "--all-targets",
            "--target",
            "wasm32-unknown-unknown",
        ])
        // A test holds the analyses to compare with within itself; to the lints any file is as good.
        .env(NATIVE_ANALYSES, workspace_root().join("Cargo.toml"))
        .args(deny),
    )
}

/// Test targets that are built only on request: see tests/Cargo.toml.
const ALL_FEATURES: &str = "loomwright-tests/browser,loomwright-tests/fuzz";

fn tests(log: &mut Log) -> Result<(), String> {
    tools::for_tests(&[tools::NGSPICE, tools::PYTHON, tools::SCIPY])?;
    log.run(test_command("tests").args(native::SELECTED))
}

fn fast_tests(log: &mut Log) -> Result<(), String> {
    log.run(
        test_command("fast")
            .args(native::SELECTED)
            .args(["--exclude", "loomwright-tests"]),
    )
}

/// cargo-nextest runs tests side by side across targets; without it the standard runner does the same work more slowly.
/// The profile is one of `.config/nextest.toml`.
fn test_command(profile: &str) -> Command {
    if xtask::find_program("cargo-nextest").is_some() {
        let mut command = cargo(["nextest", "run", "--no-fail-fast"]);
        command.args(["--profile", profile]);
        command
    } else {
        let mut command = cargo(["test", "--no-fail-fast", "--lib", "--bins", "--tests"]);
        command.env("LOOMWRIGHT_TEST_PROFILE", profile);
        command
    }
}

fn doctests(log: &mut Log) -> Result<(), String> {
    log.run(cargo(["test", "--doc", "--quiet"]).args(native::SELECTED))
}

fn docs(log: &mut Log) -> Result<(), String> {
    log.run(cargo(["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

fn generated(log: &mut Log) -> Result<(), String> {
    // Built first with its output kept, since a compiler error belongs into this stage's log.
    log.run(&mut native::build())?;
    let stale = generate::stale()?;
    if stale.is_empty() {
        return Ok(());
    }
    let names: Vec<_> = stale.iter().map(|path| path.display().to_string()).collect();
    Err(format!(
        "out of date: {}; run `cargo xtask generate`",
        names.join(", ")
    ))
}

fn fuzz(log: &mut Log) -> Result<(), String> {
    tests_of_target(log, "fuzz", "loomwright-tests/fuzz")
}

fn page_builds(log: &mut Log) -> Result<(), String> {
    page_for(log)?;
    for file in page::files_below(&xtask::page_folder())? {
        let size = fs::metadata(&file).map_or(0, |data| data.len());
        let _ = writeln!(log.file, "{size:>10}  {}", file.display());
    }
    Ok(())
}

/// The page as it is shipped: built once in a run of this program, not at all when nothing has changed since it was, and a
/// failure is one of each stage that needs it.
fn build_page() -> Result<(), String> {
    static BUILT: OnceLock<Result<(), String>> = OnceLock::new();
    BUILT
        .get_or_init(|| {
            tools::for_page()?;
            let made_of = kept::made_of()?;
            if kept::stands(&made_of) {
                return Ok(());
            }
            let mut log = Log::new(page_log())?;
            log.run(&mut page::build_command()?)?;
            // What changed while it was built may be in it or not.
            if page::finish()? && kept::made_of()? == made_of {
                kept::remember(&made_of)?;
            }
            Ok(())
        })
        .clone()
}

/// Waits for the page; what its building said comes into the log of the stage when it failed.
fn page_for(log: &mut Log) -> Result<(), String> {
    build_page().inspect_err(|_| {
        let _ = log.file.write_all(&fs::read(page_log()).unwrap_or_default());
    })
}

fn page_log() -> PathBuf {
    logs().join("page-build.log")
}

/// Where the output of stages is kept.
fn logs() -> PathBuf {
    workspace_root().join("target").join("xtask")
}

/// Tests of the page's own modules that run inside the browser.
fn storage(log: &mut Log) -> Result<(), String> {
    log.run(&mut test_inside_browser("browser_side")?)
}

/// Where the test inside the browser finds what it compares with, when it is compiled.
const NATIVE_ANALYSES: &str = "LOOMWRIGHT_NATIVE_ANALYSES";

/// The engine natively, and then the same inside the browser.
fn equality(log: &mut Log) -> Result<(), String> {
    log.run(&mut native::build())?;
    let native = native::analyses()?
        .output()
        .map_err(|error| format!("cannot start the native analyses: {error}"))?;
    let _ = log.file.write_all(&native.stderr);
    if !native.status.success() {
        return Err(format!("the native analyses ended with {}", native.status));
    }
    let path = log.path.with_file_name("native_analyses.jsonl");
    // Left alone when it is the same, or the test would be built again.
    if fs::read(&path).ok().as_ref() != Some(&native.stdout) {
        fs::write(&path, &native.stdout)
            .map_err(|error| format!("cannot write {}: {error}", path.display()))?;
    }
    log.run(test_inside_browser("same_bytes")?.env(NATIVE_ANALYSES, &path))
}

/// A test target of the page that runs inside the browser. The runner comes with wasm-bindgen-cli.
fn test_inside_browser(target: &str) -> Result<Command, String> {
    tools::for_page()?;
    tools::for_tests(&tools::BROWSER)?;
    let driver = xtask::find_program("chromedriver").ok_or("chromedriver is not on the path")?;
    let mut command = cargo([
        "test",
        "--package",
        "loomwright-web",
        "--target",
        "wasm32-unknown-unknown",
        "--test",
        target,
    ]);
    command
        .env(
            "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER",
            "wasm-bindgen-test-runner",
        )
        .env("CHROMEDRIVER", driver)
        .env("WASM_BINDGEN_TEST_TIMEOUT", "120");
    Ok(command)
}

fn browser(log: &mut Log) -> Result<(), String> {
    in_browser(log)
}

/// Tests in the browser run against the page as it is now, not as it was built some time ago.
fn in_browser(log: &mut Log) -> Result<(), String> {
    tools::for_tests(&tools::BROWSER)?;
    tools::accessibility_rules()?;
    page_for(log)?;
    tests_of_target(log, "browser", "loomwright-tests/browser")
}

/// Runs one optional test target, two tests at a time and no more: each of them works a browser or fills its time. They run in
/// one process, where a test goes on with the browser that another one is done with.
/// That there is no test is a failure, or a renamed file would pass for ever.
fn tests_of_target(log: &mut Log, target: &str, features: &str) -> Result<(), String> {
    if !Path::new(&workspace_root()).join("tests").join(target).is_dir() {
        return Err(format!("tests/{target} is gone"));
    }
    let at_a_time = std::thread::available_parallelism().map_or(1, |cores| cores.get().min(2));
    let mut command = cargo(["test"]);
    command
        .args(native::SELECTED)
        .args(["--features", features, "--test", target]);
    command.arg("--");
    command.arg(format!("--test-threads={at_a_time}"));
    log.run(&mut command)?;
    let text = fs::read_to_string(&log.path).unwrap_or_default();
    if text.contains("running 0 tests") {
        Err(format!("{target} holds no test"))
    } else {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::{fs, page, workspace_root};

    /// A test that was renamed would lose its place in the order without a word.
    #[test]
    fn tests_that_the_runner_is_told_of_are_there() {
        let root = workspace_root();
        let told = fs::read_to_string(root.join(".config").join("nextest.toml")).expect("it is there");
        let named: Vec<&str> = told
            .lines()
            .filter(|line| !line.starts_with('#'))
            .flat_map(|line| line.split("test(").skip(1))
            .filter_map(|rest| Some(rest.split_once(')')?.0))
            .collect();
        assert!(named.len() > 5, "{named:?}");
        let mut functions = String::new();
        for folder in ["crates", "tests", "web"] {
            for path in page::files_below(&root.join(folder)).expect("the sources are there") {
                if path.extension().is_some_and(|ending| ending == "rs") {
                    let source = fs::read_to_string(&path).expect("a source is text");
                    let lines = source.lines().filter_map(|line| line.trim().strip_prefix("fn "));
                    let names = lines.filter_map(|line| line.split_once('('));
                    names.for_each(|(name, _)| functions.extend([name, "\n"]));
                }
            }
        }
        // As the runner matches them: anywhere in the name.
        let gone: Vec<&&str> = named.iter().filter(|name| !functions.contains(**name)).collect();
        assert!(gone.is_empty(), "no test is called so any more: {gone:?}");
    }
}
