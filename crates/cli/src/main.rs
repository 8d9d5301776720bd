//! `loomwright`: the same engine without a screen. Maps what came of a command to an exit code, here and nowhere else:
//! 0 done and nothing grave, 1 findings of grade Stop or undecided ones of grade Stop, 2 the input or the call was bad.

// The command line is where files, arguments and the terminal are known; the core crates know none of them.
#![allow(clippy::print_stdout, clippy::disallowed_methods)]

mod args;
mod commands;
mod input;
mod speech;
mod table;

use args::{Arguments, Command};
use clap::{CommandFactory, FromArgMatches};
use std::io::Write;
use std::process::ExitCode;

#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// What came of a command that could do its work.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Done {
    /// Nothing grave.
    Clean,
    /// At least one finding of grade Stop, decided or not.
    Stop,
}

/// What a command prints, and what came of it.
pub(crate) struct Report {
    /// For standard output.
    pub(crate) text: String,
    /// What came of it.
    pub(crate) done: Done,
}

impl Report {
    /// A report without anything grave.
    pub(crate) fn clean(text: String) -> Self {
        Self {
            text,
            done: Done::Clean,
        }
    }
}

fn main() -> ExitCode {
    let written: Vec<std::ffi::OsString> = std::env::args_os().collect();
    speech::read_by(&written, |name| std::env::var(name).ok());
    let parsed = speech::explained(Arguments::command())
        .try_get_matches_from(&written)
        .and_then(|matches| Arguments::from_arg_matches(&matches));
    let arguments = match parsed {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version are answers, not errors; clap knows which stream each belongs to.
            match speech::error_told(&error) {
                Some(told) => {
                    let _ = std::io::stderr().write_all(told.as_bytes());
                }
                None => {
                    let _ = error.print();
                }
            }
            return ExitCode::from(u8::try_from(error.exit_code()).unwrap_or(2));
        }
    };
    let report = match &arguments.command {
        Command::Check(call) => commands::check::run(call),
        Command::Solve(call) => commands::solve::run(call),
        Command::Trace(call) => commands::trace::run(call),
        Command::Meter(call) => commands::meter::run(call),
        Command::FindFault(call) => commands::find_fault::run(call),
        Command::Prove(call) => commands::prove::run(call),
        Command::Break(call) => commands::breaking::run(call),
        Command::Speakers(call) => commands::speakers::run(call),
        Command::Draw(call) => commands::draw::run(call),
        Command::Mend(call) => commands::mend::run(call),
        Command::Routes(call) => commands::routes::run(call),
        Command::Deck(call) => commands::deck::run(call),
        Command::Explain(call) => commands::explain::run(call),
        Command::Lesson(call) => commands::lesson::run(call),
        Command::Size(call) => commands::size::run(call),
        Command::Schema => commands::schema::run(),
        Command::Format(call) => commands::format::run(call),
        Command::Link(call) => commands::link::run(call),
        Command::Lists(call) => commands::lists::run(call),
        Command::Labels(call) => commands::labels::run(call),
        Command::Handover(call) => commands::handover::run(call),
        Command::Page(call) => commands::page::run(call),
        Command::Open(call) => commands::open::run(call),
        Command::Start(call) => commands::start::run(call),
    };
    match report {
        Ok(report) => {
            // A closed pipe (`loomwright check x | head`) is not an error.
            let _ = std::io::stdout().write_all(report.text.as_bytes());
            match report.done {
                Done::Clean => ExitCode::SUCCESS,
                Done::Stop => ExitCode::from(1),
            }
        }
        Err(message) => {
            let _ = writeln!(std::io::stderr(), "{message}");
            ExitCode::from(2)
        }
    }
}
