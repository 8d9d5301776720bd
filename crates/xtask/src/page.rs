//! Builds the page, serves it, and weighs it.

use crate::command::{command, run};
use crate::offline;
use crate::page_file;
use crate::policy::{self, Around};
use crate::split;
use crate::tools;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::process::Command;
use xtask::static_server::StaticServer;
use xtask::{find_program, page_folder, workspace_root};

/// Port of `serve` unless one is named; the next free one is taken when another program has it.
const PORT: u16 = 8080;

/// Sets up the tools and builds the page into `dist/`, as it is shipped.
pub(crate) fn build() -> Result<(), String> {
    tools::for_page()?;
    run(&mut build_command()?)?;
    finish().map(drop)
}

/// Builds the page, records in a browser which of its functions are needed when, and writes the list that it is split by.
pub(crate) fn record() -> Result<(), String> {
    tools::for_page()?;
    tools::for_tests(&tools::BROWSER)?;
    run(&mut build_command()?)?;
    // As the page is: what is recorded must be left alone by whoever serves or tests `dist`.
    let folder = workspace_root().join("target").join("record");
    let failed = |error: io::Error| format!("cannot lay the page out in {}: {error}", folder.display());
    if folder.exists() {
        fs::remove_dir_all(&folder).map_err(failed)?;
    }
    for file in files_below(&page_folder())? {
        let copy = folder.join(file.strip_prefix(page_folder()).unwrap_or(&file));
        fs::create_dir_all(copy.parent().unwrap_or(&folder)).map_err(failed)?;
        fs::copy(&file, &copy).map_err(failed)?;
    }
    split::watch(&folder)?;
    // What the page does with the worker that keeps it is recorded too.
    lay_around(&folder)?;
    run(crate::command::cargo([
        "run",
        "--package=loomwright-tests",
        "--features=browser",
        "--example=what_runs_first",
        "--",
    ])
    .arg(&folder))?;
    split::write_list(&folder)
}

/// What is made of the built page once its module is as it will be shipped, and whether the optimiser did all that it was to.
pub(crate) fn finish() -> Result<bool, String> {
    let mut shrunk = true;
    let folder = page_folder();
    // A folder that is finished once more may hold no whole module any longer, and holds its page file as it was made of it.
    if !offline::has_worker(&folder) {
        // Before it is optimised: then every number that leads somewhere is still as the linker wrote it.
        let parted = split::parted(&folder)?;
        if parted.is_some() {
            shrunk &= shrink()?;
        }
        page_file::write(&folder)?;
        if let Some(parted) = parted {
            parted.write()?;
            shrunk &= shrink()?;
            split::name_by_contents(&folder)?;
        }
    }
    lay_around(&folder)?;
    Ok(shrunk)
}

/// Puts around the program what it is kept and guarded by.
fn lay_around(folder: &Path) -> Result<(), String> {
    offline::write_manifest(folder)?;
    let file = folder.join("index.html");
    let index =
        fs::read_to_string(&file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
    let added = policy::element(&policy::scripts(&index)?, Around::Beside) + offline::HEAD;
    let index = policy::into_head(&index, &added)?;
    fs::write(&file, index).map_err(|error| format!("cannot write {}: {error}", file.display()))?;
    offline::write_worker(folder)
}

/// The build itself, without setting up: fetches crates first, since the page's builder is kept off the network.
pub(crate) fn build_command() -> Result<Command, String> {
    run(&mut crate::command::cargo(["fetch", "--quiet"]))?;
    let mut build = command("trunk");
    // Offline: tools that the builder misses are our errors, it must not fetch others of its own.
    // NO_COLOR is cleared because that builder reads only `true` or `false` there, and many machines set it to 1.
    build
        .args([
            "build",
            "--release=true",
            // Of Cargo.toml: like release, but for size.
            "--cargo-profile=page",
            "--offline=true",
            "--skip-version-check",
        ])
        .env_remove("NO_COLOR");
    Ok(build)
}

/// Runs the wasm optimiser over the modules of the page, if it is at hand, and tells whether it failed with none.
fn shrink() -> Result<bool, String> {
    let Some(optimiser) = tools::wasm_opt() else {
        return Ok(true);
    };
    let mut all = true;
    for module in files_below(&page_folder())?
        .into_iter()
        .filter(|file| file.extension().is_some_and(|e| e == "wasm"))
    {
        let smaller = module.with_extension("smaller");
        // The features are those that rustc turns on by itself for this target.
        // The lowest addresses are the far end of the stack, which nothing points to.
        let shrunk = run(command(&optimiser)
            .args(["-Oz", "--strip-debug", "--strip-producers", "--low-memory-unused"])
            .args([
                "--enable-bulk-memory",
                "--enable-nontrapping-float-to-int",
                "--enable-sign-ext",
            ])
            .args([
                "--enable-mutable-globals",
                "--enable-reference-types",
                "--enable-multivalue",
            ])
            .arg(&module)
            .arg("-o")
            .arg(&smaller));
        match shrunk.and_then(|()| fs::rename(&smaller, &module).map_err(|error| error.to_string())) {
            Ok(()) => {}
            // The page works without; only its size is larger, and `bundle` shows that.
            Err(error) => {
                all = false;
                eprintln!("xtask: {} stays as it was: {error}", module.display());
            }
        }
    }
    Ok(all)
}

/// Builds and serves until interrupted.
pub(crate) fn serve(port: Option<u16>, open: bool) -> Result<(), String> {
    build()?;
    let server = match port {
        Some(port) => StaticServer::start(&page_folder(), port).map_err(|error| error.to_string())?,
        None => StaticServer::start(&page_folder(), PORT)
            .or_else(|_| StaticServer::start(&page_folder(), 0))
            .map_err(|error| error.to_string())?,
    };
    println!("Loomwright is at {}  (Ctrl+C ends)", server.address());
    let _ = io::stdout().flush();
    if open {
        open_in_browser(&server.address());
    }
    server.wait();
    Ok(())
}

/// Serves a development build and rebuilds after every change.
pub(crate) fn watch(port: Option<u16>) -> Result<(), String> {
    tools::for_page()?;
    run(&mut crate::command::cargo(["fetch", "--quiet"]))?;
    // An own folder: a development build must not be mistaken for the page that is shipped.
    let scratch = workspace_root().join("target").join("watch");
    fs::create_dir_all(&scratch).map_err(|error| format!("cannot make {}: {error}", scratch.display()))?;
    run(command("trunk")
        .args([
            "serve",
            "--offline=true",
            "--skip-version-check",
            "--address",
            "127.0.0.1",
            "--dist",
        ])
        .arg(scratch)
        .args(["--port", &port.unwrap_or(PORT).to_string()])
        .env_remove("NO_COLOR"))
}

/// Best effort: the address is on the terminal anyway.
fn open_in_browser(address: &str) {
    // Without a display there is nothing to open, and some openers would take over the terminal with a text browser.
    let has_display = ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some());
    let opener = if cfg!(target_os = "macos") {
        find_program("open")
    } else if cfg!(windows) {
        find_program("explorer")
    } else if has_display {
        find_program("xdg-open")
    } else {
        None
    };
    if let Some(opener) = opener {
        let _ = Command::new(opener).arg(address).spawn();
    }
}

/// Prints each file of the page with its size in bytes, raw and gzipped, and the sums.
pub(crate) fn print_sizes() -> Result<(), String> {
    let (mut raw_sum, mut gzip_sum) = (0, 0);
    println!("{:>10} {:>10}  file", "raw", "gzip");
    let folder = page_folder();
    for file in files_below(&folder)? {
        let bytes = fs::read(&file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
        let gzip =
            gzipped_size(&bytes).map_err(|error| format!("cannot compress {}: {error}", file.display()))?;
        raw_sum += bytes.len();
        gzip_sum += gzip;
        println!(
            "{:>10} {gzip:>10}  {}",
            bytes.len(),
            file.strip_prefix(&folder).unwrap_or(&file).display()
        );
    }
    println!("{raw_sum:>10} {gzip_sum:>10}  together, in bytes");
    for (what, ends) in STAGES {
        // The worker is fetched once all stands.
        let of_stage = |file: &&PathBuf| {
            let name = file.to_string_lossy();
            !name.ends_with(offline::WORKER_NAME) && ends.iter().any(|end| name.ends_with(end))
        };
        let mut sum = 0;
        for file in files_below(&folder)?.iter().filter(of_stage) {
            let bytes = fs::read(file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
            sum += gzipped_size(&bytes)
                .map_err(|error| format!("cannot compress {}: {error}", file.display()))?;
        }
        println!("{:>10} {sum:>10}  {what}", "");
    }
    println!(
        "{:>10} {MARK:>10}  is the mark for what comes before the first picture",
        ""
    );
    Ok(())
}

/// Bytes that a newcomer should wait for at most, gzipped.
const MARK: usize = 350_000;

/// What a newcomer fetches when, by the ends of the names of files.
const STAGES: [(&str, &[&str]); 3] = [
    ("before the first picture", &["index.html", ".js", split::FIRST]),
    ("then, for the first findings", &[split::MORE]),
    ("then, for all else", &[split::REST]),
];

/// Size in bytes as a server with the usual settings would send it (gzip level 6).
fn gzipped_size(bytes: &[u8]) -> io::Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::new(6));
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

/// All files below a folder, sorted by path.
pub(crate) fn files_below(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let unreadable = |error: io::Error| format!("cannot read {}: {error}", folder.display());
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).map_err(unreadable)? {
        let entry = entry.map_err(unreadable)?;
        let path = entry.path();
        // A link to a folder is left alone: it may lead back here.
        if entry.file_type().map_err(unreadable)?.is_dir() {
            files.extend(files_below(&path)?);
        } else {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    #[test]
    fn the_gzipped_size_is_that_of_a_stream_that_unpacks_to_the_same_bytes() {
        let bytes: Vec<u8> = (0..20_000_u32).map(|n| (n / 7 % 251) as u8).collect();
        let mut packed = flate2::read::GzEncoder::new(bytes.as_slice(), Compression::new(6));
        let mut stream = Vec::new();
        packed.read_to_end(&mut stream).expect("packs");
        assert_eq!(gzipped_size(&bytes).expect("packs"), stream.len());
        let mut back = Vec::new();
        flate2::read::GzDecoder::new(stream.as_slice())
            .read_to_end(&mut back)
            .expect("unpacks");
        assert_eq!(back, bytes);
    }
}
