//! In which words the program speaks: the reader of this call, and the help and the errors of arguments in that reader's
//! language.

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Arg, Command};
use std::ffi::OsString;
use std::sync::OnceLock;
use words::{Language, Lengths, Reader, Saying, Sizes, Value, Words, say};

/// One reader for the whole run: parsers of arguments, which know nothing but their argument, speak as well.
static WORDS: OnceLock<Words> = OnceLock::new();

/// The words of whoever called.
pub(crate) fn words() -> &'static Words {
    WORDS.get_or_init(Words::english)
}

/// A saying as a sentence. Where long names may break on a page nothing is written: terminals show the sign.
pub(crate) fn tell(saying: &Saying) -> String {
    plain(words().say(saying))
}

/// A text without the signs that only a page needs.
pub(crate) fn plain(text: String) -> String {
    text.replace('\u{ad}', "")
}

/// A message without values.
pub(crate) fn text(key: &str) -> String {
    words().text(key)
}

/// Units of lengths and wire sizes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Units {
    /// Metres and square millimetres.
    #[default]
    Metric,
    /// Feet, inches and gauge numbers.
    Awg,
}

impl Units {
    pub(crate) const WORDS: [&str; 2] = ["metric", "awg"];
    pub(crate) fn from_word(word: &str) -> Option<Self> {
        match word {
            "metric" => Some(Self::Metric),
            "awg" => Some(Self::Awg),
            _ => None,
        }
    }
}

/// Sets who reads. What is not said is told by the environment (`LC_ALL`, `LC_MESSAGES`, `LANG`, the first that is set);
/// a language that there is none of here reads as English. Has to come first: help and errors of arguments speak too.
pub(crate) fn read_by(arguments: &[OsString], environment: impl Fn(&str) -> Option<String>) {
    let said = |name: &str| option(arguments, name);
    let set = |name: &&str| environment(name).filter(|value| !value.is_empty());
    let language = match said("language") {
        Some(tag) => Language::of_tag(&tag),
        None => ["LC_ALL", "LC_MESSAGES", "LANG"]
            .iter()
            .find_map(set)
            .and_then(|tag| Language::of_tag(&tag)),
    };
    let units = said("units").and_then(|word| Units::from_word(&word));
    let reader = Reader {
        language: language.unwrap_or_default(),
        lengths: match units {
            Some(Units::Awg) => Lengths::Feet,
            _ => Lengths::Metres,
        },
        sizes: match units {
            Some(Units::Awg) => Sizes::Awg,
            _ => Sizes::SquareMillimetres,
        },
    };
    let _ = WORDS.set(Words::of(reader));
}

/// The value of a long option, however it is written, before the arguments are read in earnest.
fn option(arguments: &[OsString], name: &str) -> Option<String> {
    let mut all = arguments
        .iter()
        .filter_map(|argument| argument.to_str())
        .take_while(|argument| *argument != "--");
    while let Some(argument) = all.next() {
        let Some(rest) = argument
            .strip_prefix("--")
            .and_then(|rest| rest.strip_prefix(name))
        else {
            continue;
        };
        match rest.strip_prefix('=') {
            Some(value) => return Some(value.to_owned()),
            None if rest.is_empty() => return all.next().map(str::to_owned),
            None => {}
        }
    }
    None
}

/// The arguments with their help in the reader's language.
pub(crate) fn explained(mut command: Command) -> Command {
    // The help flags and the help command are there only after this.
    command.build();
    let paragraphs = [
        text("cli-after-job"),
        text("cli-after-codes"),
        text("cli-after-care"),
    ];
    helped(command)
        .about(text("cli-about"))
        .after_help(paragraphs.join("\n"))
}

fn helped(command: Command) -> Command {
    let foreign = words().reader().language != Language::English;
    let name = command.get_name().to_owned();
    let mut command = command
        .mut_args(|argument| with_help(argument, &name, foreign))
        .mut_subcommands(|inner| {
            let about = text(&format!("cli-command-{}", inner.get_name()));
            helped(inner).about(about)
        });
    if foreign {
        // What the library itself writes is English.
        let usage = usage(&mut command);
        command = command
            .override_usage(usage)
            .subcommand_help_heading(text("cli-commands"))
            .help_template(format!(
                "{{about-with-newline}}\n{}: {{usage}}\n\n{{all-args}}{{after-help}}",
                text("cli-usage")
            ));
    }
    command
}

/// The call as the library writes it, its own words in the reader's language.
fn usage(command: &mut Command) -> String {
    let written = command.render_usage().to_string();
    let (options, one) = (text("cli-usage-options"), text("cli-usage-command"));
    written
        .trim_start_matches("Usage:")
        .trim()
        .replace("[OPTIONS]", &format!("[{options}]"))
        .replace("<COMMAND>", &format!("<{one}>"))
        .replace("[COMMAND]", &format!("[{one}]"))
}

fn with_help(argument: Arg, command: &str, foreign: bool) -> Arg {
    let general = format!("cli-option-{}", argument.get_id());
    let own = format!("{general}-{command}");
    let key = if words().knows(&own) { own } else { general };
    if !words().knows(&key) {
        return argument;
    }
    let argument = argument.help(text(&key));
    if !foreign {
        return argument;
    }
    let heading = if argument.is_positional() {
        "cli-arguments"
    } else {
        "cli-options"
    };
    argument
        .help_heading(text(heading))
        .hide_default_value(true)
        .hide_possible_values(true)
}

/// What is wrong with a call, in the reader's language; nothing where the library's own words do, and for help and version,
/// which are answers.
pub(crate) fn error_told(error: &clap::Error) -> Option<String> {
    if !error.use_stderr() || words().reader().language == Language::English {
        return None;
    }
    let one = |kind: ContextKind| -> Option<String> {
        match error.get(kind)? {
            ContextValue::String(text) => Some(text.clone()),
            ContextValue::Strings(all) => Some(all.join(" ")),
            _ => None,
        }
    };
    let argument = one(ContextKind::InvalidArg).unwrap_or_default();
    let what = match error.kind() {
        ErrorKind::UnknownArgument => say!("cli-error-unknown", argument = argument),
        ErrorKind::InvalidSubcommand => {
            let command = one(ContextKind::InvalidSubcommand).unwrap_or_default();
            say!("cli-error-command", command = command)
        }
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => {
            let value = one(ContextKind::InvalidValue).unwrap_or_default();
            let valid = match error.get(ContextKind::ValidValue) {
                Some(ContextValue::Strings(all)) => Some(all.join(", ")),
                _ => None,
            };
            if value.is_empty() {
                say!("cli-error-missing-value", argument = argument)
            } else {
                let why: Value = match (valid, std::error::Error::source(error)) {
                    (_, Some(why)) => why.to_string().into(),
                    (valid, None) => say!("cli-error-takes", words = valid.unwrap_or_default()).into(),
                };
                say!("cli-error-value", value = value, argument = argument, why = why)
            }
        }
        ErrorKind::MissingRequiredArgument => say!("cli-error-missing", arguments = argument),
        ErrorKind::ArgumentConflict => match one(ContextKind::PriorArg) {
            Some(other) if other != argument => {
                say!("cli-error-conflict", argument = argument, other = other)
            }
            _ => say!("cli-error-twice", argument = argument),
        },
        ErrorKind::TooManyValues => {
            let value = one(ContextKind::InvalidValue).unwrap_or_default();
            say!("cli-error-no-value", argument = argument, value = value)
        }
        ErrorKind::InvalidUtf8 => say!("cli-error-utf8"),
        ErrorKind::MissingSubcommand => say!("cli-error-no-command"),
        _ => return None,
    };
    Some(format!(
        "{}\n{}\n",
        tell(&say!("cli-error", what = what)),
        text("cli-error-more")
    ))
}
