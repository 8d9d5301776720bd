//! What is built and tested outside of the browser.

use crate::command::{cargo, command};
use std::path::Path;
use std::process::Command;

/// All but the page, which is a program for the browser and tested there. The same even where one target of it is wanted:
/// what is selected decides the features of what is built below it, and a selection of its own would build all of that
/// once more.
pub(crate) const SELECTED: [&str; 3] = ["--workspace", "--exclude", "loomwright-web"];

/// The programs that xtask runs itself.
const COMMAND_LINE: &str = "loomwright";
const ANALYSES: &str = "native_analyses";

/// Builds them as the tests build them.
pub(crate) fn build() -> Command {
    let mut build = cargo(["build", "--quiet"]);
    build
        .args(SELECTED)
        .args(["--bin", COMMAND_LINE, "--example", ANALYSES]);
    build
}

/// The built command line.
pub(crate) fn command_line() -> Result<Command, String> {
    program(Path::new(COMMAND_LINE))
}

/// The built program that analyses the jobs which the browser analyses as well.
pub(crate) fn analyses() -> Result<Command, String> {
    program(&Path::new("examples").join(ANALYSES))
}

fn program(name: &Path) -> Result<Command, String> {
    let ours = std::env::current_exe().map_err(|error| format!("cannot tell where xtask stands: {error}"))?;
    // We stand in a folder of that profile we were built with ourselves, which need not be this one.
    let target = ours
        .ancestors()
        .nth(2)
        .ok_or_else(|| format!("{} is no folder of cargo's", ours.display()))?;
    let file = target
        .join("debug")
        .join(name)
        .with_extension(std::env::consts::EXE_EXTENSION);
    Ok(command(file))
}
