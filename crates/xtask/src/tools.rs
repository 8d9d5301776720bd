//! Sets up what a fresh machine lacks, says what and why, and says plainly what it cannot do.
//!
//! Nothing is installed outside of `target/tools`, except the wasm target of the toolchain (by rustup) and, as root
//! on Debian, the programs that only tests need (by apt-get).

use crate::command::{cargo, command, quiet_output, run, shown};
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use xtask::{accessibility_script, find_program, tool_folder, workspace_root};

const TRUNK: &str = "0.21.14";
/// Optional: makes the page smaller. The same version for everybody, or sizes are not comparable.
const BINARYEN: &str = "132";
/// The rules of accessibility for browser tests. The same for everybody: a newer version may know more rules.
const AXE: &str = "4.14.1";

/// Folder of the tools that we install.
pub(crate) fn folder() -> PathBuf {
    tool_folder()
}

/// What it takes to build the page. Stages that run side by side ask for it: the first one sets up, the others wait.
pub(crate) fn for_page() -> Result<(), String> {
    static READY: OnceLock<Result<(), String>> = OnceLock::new();
    READY
        .get_or_init(|| {
            wasm_target()?;
            cargo_tool(&Tool {
                program: "trunk",
                package: "trunk",
                version: TRUNK,
                why: "it turns web/ into a page",
                locked: true,
                // It copies files and starts other programs.
                optimised: "0",
            })?;
            cargo_tool(&Tool {
                program: "wasm-bindgen",
                package: "wasm-bindgen-cli",
                version: &locked_version("wasm-bindgen")?,
                why: "it writes the JavaScript around the wasm module",
                locked: false,
                optimised: "1",
            })
        })
        .clone()
}

/// What tests need beyond that.
pub(crate) fn for_tests(programs: &[Program]) -> Result<(), String> {
    let missing: Vec<&Program> = programs.iter().filter(|program| !program.is_here()).collect();
    if missing.is_empty() {
        return Ok(());
    }
    let packages: Vec<&str> = missing.iter().map(|program| program.package).collect();
    for program in &missing {
        eprintln!("xtask: `{}` is missing: {}", program.name, program.why);
    }
    let by_hand = format!(
        "install these programs (Debian packages: {}) and run this again",
        packages.join(" ")
    );
    if find_program("apt-get").is_none() || !Path::new("/etc/debian_version").exists() {
        return Err(format!("this is no Debian machine; {by_hand}"));
    }
    if quiet_output(command("id").arg("-u")).as_deref() != Some("0") {
        return Err(format!(
            "only root may install packages; {by_hand}: apt-get install {}",
            packages.join(" ")
        ));
    }
    eprintln!("xtask: apt-get install {}", packages.join(" "));
    run(command("apt-get")
        .arg("update")
        .env("DEBIAN_FRONTEND", "noninteractive"))
    .and_then(|()| {
        run(command("apt-get")
            .args(["install", "--yes", "--no-install-recommends"])
            .args(&packages)
            .env("DEBIAN_FRONTEND", "noninteractive"))
    })
    .map_err(|error| format!("{error}; is there a network? Otherwise {by_hand}"))
}

/// A program of the machine that tests run, or a library of Python's: `python3-NAME`.
pub(crate) struct Program {
    name: &'static str,
    package: &'static str,
    why: &'static str,
}

impl Program {
    fn is_here(&self) -> bool {
        match self.name.strip_prefix("python3-") {
            // The Python on the path need not be the one that Debian's packages belong to: tests look at both.
            Some(library) => ["python3", "/usr/bin/python3"].into_iter().any(|python| {
                quiet_output(command(python).args(["-c", &format!("import {library}")])).is_some()
            }),
            None => find_program(self.name).is_some(),
        }
    }
}

/// The circuit simulator that the solver is compared with.
pub(crate) const NGSPICE: Program = Program {
    name: "ngspice",
    package: "ngspice",
    why: "the solver is compared with this circuit simulator",
};

/// The language of the program that adds up lists from the job file alone.
pub(crate) const PYTHON: Program = Program {
    name: "python3",
    package: "python3",
    why: "totals of lists are added up anew by a small program in another language",
};

/// The library of numerical methods that transient heating and sizes are held against.
pub(crate) const SCIPY: Program = Program {
    name: "python3-scipy",
    package: "python3-scipy",
    why: "heating and sizes are worked out anew by its solvers",
};

/// The browser that the page is tried in.
pub(crate) const BROWSER: [Program; 2] = [
    Program {
        name: "chromium",
        package: "chromium",
        why: "the page is tried in a real browser",
    },
    Program {
        name: "chromedriver",
        package: "chromium-driver",
        why: "it moves the pointer and presses keys in that browser",
    },
];

/// What code for the browser is compiled against.
pub(crate) fn wasm_target() -> Result<(), String> {
    static READY: OnceLock<Result<(), String>> = OnceLock::new();
    READY.get_or_init(add_wasm_target).clone()
}

fn add_wasm_target() -> Result<(), String> {
    const TARGET: &str = "wasm32-unknown-unknown";
    let installed = quiet_output(command("rustc").args(["--print", "target-libdir", "--target", TARGET]))
        .is_some_and(|folder| Path::new(&folder).is_dir());
    if installed {
        return Ok(());
    }
    eprintln!("xtask: adding the target {TARGET}: the page is WebAssembly");
    run(command("rustup").args(["target", "add", TARGET])).map_err(|error| {
        format!("{error}; without rustup, install the standard library of {TARGET} for this version of Rust")
    })
}

/// A program that cargo builds for us.
struct Tool<'a> {
    program: &'a str,
    package: &'a str,
    version: &'a str,
    why: &'a str,
    locked: bool,
    /// Level of optimisation: these programs run for a second or two, and a lightly optimised build of them is ready in
    /// half of the time.
    optimised: &'a str,
}

/// Makes sure that exactly this version of a program is on the path, ours first.
fn cargo_tool(tool: &Tool<'_>) -> Result<(), String> {
    let Tool {
        program,
        package,
        version,
        why,
        ..
    } = *tool;
    let found = installed_version(program);
    if found.as_deref() == Some(version) {
        return Ok(());
    }
    let tools = folder();
    match found {
        Some(other) => eprintln!("xtask: {program} {other} is here, {version} is needed: {why}"),
        None => eprintln!("xtask: {program} is missing: {why}"),
    }
    eprintln!(
        "xtask: building {package} {version} into {} (once; a few minutes)",
        tools.display()
    );
    let scratch = tools.join("build");
    let mut install = cargo(["install", "--force", "--root"]);
    install.arg(&tools).arg(format!("{package}@{version}"));
    if tool.locked {
        install.arg("--locked");
    }
    // A scratch folder of its own lets an interrupted build go on, and keeps our settings of the release profile out of it.
    install
        .env("CARGO_TARGET_DIR", &scratch)
        .env("CARGO_PROFILE_RELEASE_LTO", "false")
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", tool.optimised)
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16");
    run(&mut install)
        .map_err(|error| format!("{error}; is there a network? By hand: `{}`", shown(&install)))?;
    // Only disk space; the next build would start from nothing anyway.
    let _ = std::fs::remove_dir_all(scratch);
    match installed_version(program).as_deref() {
        Some(now) if now == version => Ok(()),
        now => Err(format!(
            "{program} {version} was installed, but {} answers",
            now.unwrap_or("nothing")
        )),
    }
}

/// `trunk 0.21.14` -> `0.21.14`.
fn installed_version(program: &str) -> Option<String> {
    let ours = folder().join("bin").join(program);
    let program = if ours.is_file() {
        ours
    } else {
        find_program(program)?
    };
    quiet_output(command(program).arg("--version"))?
        .split_whitespace()
        .nth(1)
        .map(str::to_owned)
}

/// Version of a crate in Cargo.lock: the module and the program that reads it must be of one version.
fn locked_version(package: &str) -> Result<String, String> {
    let file = workspace_root().join("Cargo.lock");
    let text =
        std::fs::read_to_string(&file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
    version_in_lock_file(&text, package).ok_or_else(|| {
        format!(
            "{package} is not in Cargo.lock; does web/Cargo.toml depend on it? (`cargo update -w` adds it)"
        )
    })
}

fn version_in_lock_file(text: &str, package: &str) -> Option<String> {
    let mut lines = text
        .lines()
        .skip_while(|line| *line != format!("name = \"{package}\""));
    let _name = lines.next()?;
    lines
        .next()?
        .strip_prefix("version = \"")?
        .strip_suffix('"')
        .map(str::to_owned)
}

/// The optimiser of wasm modules, if it is here or can be had. Without it the page is only somewhat larger.
pub(crate) fn wasm_opt() -> Option<PathBuf> {
    let ours = folder().join("node_modules").join(".bin").join("wasm-opt");
    let found = [
        Some(ours.clone()).filter(|it| it.is_file()),
        find_program("wasm-opt"),
    ];
    let right = |program: &PathBuf| is_version(program, BINARYEN);
    if let Some(here) = found.into_iter().flatten().find(right) {
        return Some(here);
    }
    if let Err(error) = from_npm(
        &format!("binaryen@{BINARYEN}"),
        "wasm-opt, which makes the page smaller",
    ) {
        eprintln!("xtask: {error}; going on without it, the page is only somewhat larger");
        return None;
    }
    ours.is_file().then_some(ours)
}

/// Fetches the rules of accessibility that browser tests hold every screen against.
///
/// # Errors
/// Why they could not be had.
pub(crate) fn accessibility_rules() -> Result<(), String> {
    if accessibility_script().is_file() {
        return Ok(());
    }
    from_npm(
        &format!("axe-core@{AXE}"),
        "the rules of accessibility that screens are tested against",
    )
}

/// Fetches a package into the tool folder, and what was fetched before stays.
fn from_npm(package: &str, what_for: &str) -> Result<(), String> {
    let npm = find_program("npm")
        .ok_or_else(|| format!("npm is not here, and {package} comes by it: install Node.js"))?;
    eprintln!(
        "xtask: fetching {package} into {}: {what_for}",
        folder().display()
    );
    let _ = std::fs::create_dir_all(folder());
    let mut install = command(npm);
    install.args([
        "install",
        "--no-save",
        "--no-audit",
        "--no-fund",
        "--no-package-lock",
        "--loglevel=error",
        "--prefix",
    ]);
    install.arg(folder()).args(packages_with(package));
    run(&mut install)
}

/// The package, and those that are in the tool folder already: npm takes out what is not asked for.
fn packages_with(package: &str) -> Vec<String> {
    let known = [("binaryen", BINARYEN), ("axe-core", AXE)];
    let here = |name: &str| folder().join("node_modules").join(name).is_dir();
    let others = known
        .iter()
        .filter(|(name, _)| !package.starts_with(name) && here(name));
    std::iter::once(package.to_owned())
        .chain(others.map(|(name, version)| format!("{name}@{version}")))
        .collect()
}

/// `wasm-opt version 132 (…)`.
fn is_version(program: &Path, version: &str) -> bool {
    quiet_output(command(program).arg("--version"))
        .is_some_and(|line| line.split_whitespace().any(|word| word == version))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_version_is_that_of_the_package_by_its_whole_name() {
        let lock = "[[package]]\nname = \"wasm-bindgen-macro\"\nversion = \"9.9.9\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(
            version_in_lock_file(lock, "wasm-bindgen").as_deref(),
            Some("0.2.130")
        );
        assert_eq!(version_in_lock_file(lock, "wasm"), None);
    }
}
