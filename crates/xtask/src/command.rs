//! Child processes: where they run, what they find on their path, and how their failure reads.

use std::ffi::OsString;
use std::path::Path;
use std::process::{Command, Stdio};

/// A command in the workspace root, with our own tools found before those of the machine.
pub(crate) fn command(program: impl AsRef<Path>) -> Command {
    let mut command = Command::new(program.as_ref());
    command
        .current_dir(xtask::workspace_root())
        .env("PATH", path_with_tools());
    command
}

/// The cargo that runs us, so that the toolchain stays the same.
pub(crate) fn cargo<const N: usize>(arguments: [&str; N]) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"));
    let mut command = command(Path::new(&program));
    command.args(arguments);
    command
}

/// The command as one would type it.
pub(crate) fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program())
        .file_stem()
        .map(|name| name.to_string_lossy().into_owned());
    let mut words = vec![program.unwrap_or_default()];
    words.extend(command.get_args().map(|word| word.to_string_lossy().into_owned()));
    words.join(" ")
}

/// Runs it with its output on the terminal.
pub(crate) fn run(command: &mut Command) -> Result<(), String> {
    let status = command
        .status()
        .map_err(|error| format!("cannot start `{}`: {error}", shown(command)))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("`{}` failed ({status})", shown(command)))
    }
}

/// Runs it and gives back what it wrote to standard output; its messages stay on the terminal.
pub(crate) fn output(command: &mut Command) -> Result<Vec<u8>, String> {
    let output = command
        .stdin(Stdio::null())
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| format!("cannot start `{}`: {error}", shown(command)))?;
    if output.status.success() {
        Ok(output.stdout)
    } else {
        Err(format!("`{}` failed ({})", shown(command), output.status))
    }
}

/// What it prints, on one line and without a word when it fails: for `--version`.
pub(crate) fn quiet_output(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

fn path_with_tools() -> OsString {
    let tools = crate::tools::folder();
    let mut folders = vec![tools.join("bin"), tools.join("node_modules").join(".bin")];
    if let Some(path) = std::env::var_os("PATH") {
        folders.extend(std::env::split_paths(&path));
    }
    // Fails only when a folder's name holds the separator; then the machine's own path is all there is.
    std::env::join_paths(folders).unwrap_or_else(|_| std::env::var_os("PATH").unwrap_or_default())
}
