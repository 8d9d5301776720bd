//! `cargo xtask COMMAND`: what a developer runs. Exit codes: 0 done, 1 something failed, 2 the request was not understood.

// Developer tools talk to the terminal, the disk, the environment and the clock; those bans are for core crates.
#![allow(clippy::disallowed_methods, clippy::print_stdout)]

mod bench;
mod command;
mod generate;
mod icon;
mod kept;
mod native;
mod offline;
mod page;
mod page_file;
mod policy;
mod split;
mod stages;
mod tools;

use lexopt::prelude::*;
use std::process::ExitCode;

const HELP: &str = "\
Developer commands of Loomwright

cargo xtask serve [--port N] [--no-open]   build the page and serve it on this machine (port 8080 unless taken)
            serve --watch [--port N]       serve a development build and rebuild it after every change
cargo xtask test [--stage NAME]            everything that continuous integration runs, or one stage of it
            test --list                    the names of the stages
cargo xtask quick                          format, clippy, the fast tests: for daily work
cargo xtask generate                       write the generated files: docs/job.schema.json, docs/checks/
cargo xtask bench                          reports on speed and size; they never fail on a time
cargo xtask bundle                         build the page and print its size, raw and gzipped
cargo xtask record                         build the page, record what it needs until its first picture, and write by it
                                           which part of the program comes when: crates/xtask/src/split/later.txt
cargo xtask finish                         what `serve`, `test` and `bundle` do to dist/ after the build; for a page that was
                                           built by `trunk build` alone

What is missing is installed into target/tools or, as root on Debian, by apt-get; each step says what and why.";

/// What was asked for, checked.
enum Request {
    Help,
    Serve { port: Option<u16>, open: bool },
    Watch { port: Option<u16> },
    Test { stages: Vec<String> },
    ListStages,
    Quick,
    Generate,
    Bench,
    Bundle,
    Finish,
    Record,
}

fn main() -> ExitCode {
    let request = match parse() {
        Ok(request) => request,
        Err(error) => {
            eprintln!("{error}\n\n{HELP}");
            return ExitCode::from(2);
        }
    };
    let outcome = match request {
        Request::Help => {
            println!("{HELP}");
            Ok(())
        }
        Request::Serve { port, open } => page::serve(port, open),
        Request::Watch { port } => page::watch(port),
        Request::Test { stages } => stages::test(&stages),
        Request::ListStages => {
            for stage in stages::ALL {
                println!("{:<10} {}", stage.name, stage.what);
            }
            Ok(())
        }
        Request::Quick => stages::quick(),
        Request::Generate => generate::generate(),
        Request::Bench => bench::bench(),
        Request::Finish => page::finish().map(drop),
        Request::Record => page::record(),
        Request::Bundle => page::build().and_then(|()| page::print_sizes()),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            if !message.is_empty() {
                eprintln!("xtask: {message}");
            }
            ExitCode::FAILURE
        }
    }
}

fn parse() -> Result<Request, lexopt::Error> {
    let mut arguments = lexopt::Parser::from_env();
    let (mut command, mut port, mut open, mut watch, mut list) = (None, None, true, false, false);
    let mut chosen = Vec::new();
    while let Some(argument) = arguments.next()? {
        match argument {
            Short('h') | Long("help") => return Ok(Request::Help),
            Value(value) if command.is_none() => command = Some(value.string()?),
            Long("port") if command.as_deref() == Some("serve") => port = Some(arguments.value()?.parse()?),
            Long("no-open") if command.as_deref() == Some("serve") => open = false,
            Long("watch") if command.as_deref() == Some("serve") => watch = true,
            Long("stage") if command.as_deref() == Some("test") => {
                let name = arguments.value()?.string()?;
                if !stages::ALL.iter().any(|stage| stage.name == name) {
                    let names: Vec<_> = stages::ALL.iter().map(|stage| stage.name).collect();
                    return Err(format!("no stage `{name}`; there are {}", names.join(", ")).into());
                }
                chosen.push(name);
            }
            Long("list") if command.as_deref() == Some("test") => list = true,
            other => return Err(other.unexpected()),
        }
    }
    Ok(match command.as_deref() {
        None | Some("help") => Request::Help,
        Some("serve") if watch => Request::Watch { port },
        Some("serve") => Request::Serve { port, open },
        Some("test") if list => Request::ListStages,
        Some("test") => Request::Test { stages: chosen },
        Some("quick") => Request::Quick,
        Some("generate") => Request::Generate,
        Some("bench") => Request::Bench,
        Some("bundle") => Request::Bundle,
        Some("finish") => Request::Finish,
        Some("record") => Request::Record,
        Some(other) => return Err(format!("no command `{other}`").into()),
    })
}
