//! Every text that a reader sees, in each language, with numbers in the reader's units.
//!
//! A text is a *message* in the Fluent format (`texts/en/*.ftl`, `texts/de/*.ftl`, one file for each theme, the same names
//! in both). Code never writes a sentence: it makes a [`Saying`], the key of a message and the values that go into it, by
//! [`say!`]; whoever shows it has a [`Words`], made of the reader's language and units, and turns it into a sentence with
//! [`Words::say`]. So an analysis holds no language, and the same finding reads in every one of them.
//!
//! ```
//! use words::{Reader, Unit, Words, figure, say};
//! let reach = say!("sample-reach", fuse = "F1", far = figure(1.7, Unit::Metre), runs = vec!["W1", "W2"]);
//! let words = Words::english();
//! assert_eq!(words.say(&reach), "F1 sits 1.7 m of wire away. Nothing guards W1 and W2.");
//! let feet = Words::of(Reader { lengths: words::Lengths::Feet, ..Reader::default() });
//! assert_eq!(feet.say(&reach), "F1 sits 5.58 ft of wire away. Nothing guards W1 and W2.");
//! ```
//!
//! What a message may hold: text, `{ $value }`, a choice `{ $count -> [one] … *[other] … }` by number or by word, and
//! other messages by `{ key }`. *Invariants:* a message exists in every language with the same values (tested over all
//! files and all uses in the workspace); a message that is missing all the same shows its English text, or its key;
//! nothing here panics on any text.

mod figure;
pub mod later;
mod message;
mod reader;
mod saying;

pub use figure::{Figure, Unit, as_sold, drawn, figure, gauge, precise, told};

pub use reader::{Language, Lengths, Reader, Sizes};
pub use saying::{Saying, Value};

use fluent_syntax::ast::Pattern;
use later::arrived;
use message::Messages;
use std::sync::OnceLock;

macro_rules! texts {
    (first: $($first:literal)+; later: $($later:literal)+) => {
        /// The themes: one file of messages each, the same names in every language.
        pub const THEMES: &[&str] = &[$($first,)+ $($later),+];
        /// Those among them that a first picture is said in.
        pub const FIRST_THEMES: &[&str] = &[$($first),+];
        const ENGLISH: &[&str] = &[$(include_str!(concat!("../texts/en/", $first, ".ftl"))),+];
        const ENGLISH_LATER: &[&str] = &[$(later!(concat!("../texts/en/", $later, ".ftl"))),+];
        #[cfg(feature = "german")]
        const GERMAN: &[&str] = &[
            $(include_str!(concat!("../texts/de/", $first, ".ftl")),)+
            $(include_str!(concat!("../texts/de/", $later, ".ftl"))),+
        ];
    };
}

texts! {
    // What the board and what lies around it says, as long as nothing is found.
    first:
    "body"
    "checks"
    "common"
    "drawing"
    "editor"
    "model-titles"
    "web"
    "web-reader";
    // What findings say, and what only a panel, a paper, a lesson or the command line says. It is read when one of it is first
    // asked for; the page has it fetched after its first picture.
    later:
    "break"
    "checks-conductors"
    "checks-data"
    "checks-energy"
    "checks-facts"
    "checks-ground"
    "checks-limits"
    "checks-mends"
    "checks-protection"
    "checks-signal"
    "checks-speakers"
    "checks-workmanship"
    "circuit"
    "cli"
    "editor-said"
    "exercise"
    "file"
    "finding"
    "handover"
    "lessons"
    "mending"
    "model-about"
    "model-edits"
    "paper"
    "paper-steps"
    "proving"
    "sharing"
    "sizing"
    "starting"
    "text"
    "web-panels"
    "web-viewer"
}

/// The English message of a key.
fn english(key: &str) -> Option<&'static Pattern<String>> {
    static FIRST: OnceLock<Messages> = OnceLock::new();
    let first = FIRST.get_or_init(|| Messages::read(ENGLISH.iter().copied()));
    first.get(key).or_else(|| english_later().get(key))
}

/// The messages that follow. On the page this function follows with them.
#[inline(never)]
fn english_later() -> &'static Messages {
    static LATER: OnceLock<Messages> = OnceLock::new();
    LATER.get_or_init(|| Messages::read(ENGLISH_LATER.iter().map(|text| arrived(text))))
}

#[cfg(feature = "german")]
fn german() -> &'static Messages {
    static MESSAGES: OnceLock<Messages> = OnceLock::new();
    MESSAGES.get_or_init(|| Messages::read(GERMAN.iter().copied()))
}

/// How one reader reads: turns sayings into sentences. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Words {
    reader: Reader,
    /// Messages of the language where they are not part of the program.
    fetched: Option<std::sync::Arc<Messages>>,
    /// Whether these are only those of a first picture.
    begun: bool,
}

impl Default for Words {
    fn default() -> Self {
        Self::english()
    }
}

impl PartialEq for Words {
    /// The same reader: messages of a language never differ.
    fn eq(&self, other: &Self) -> bool {
        let had = |it: &Self| (it.reader, it.fetched.is_some(), it.begun);
        had(self) == had(other)
    }
}

impl Words {
    /// English with metric units.
    #[must_use]
    pub fn english() -> Self {
        Self::of(Reader::default())
    }
    /// The words of a reader. A language that is not part of this program (see [`Language::built_in`]) reads as English
    /// until [`Words::fetched`] brings its messages.
    #[must_use]
    pub fn of(reader: Reader) -> Self {
        Self {
            reader,
            fetched: None,
            begun: false,
        }
    }
    /// The words of a reader whose language was fetched: `texts` are the files of its messages.
    #[must_use]
    pub fn fetched<'a>(reader: Reader, texts: impl IntoIterator<Item = &'a str>) -> Self {
        Self {
            reader,
            fetched: Some(std::sync::Arc::new(Messages::read(texts))),
            begun: false,
        }
    }
    /// The same with the texts of [`FIRST_THEMES`] alone; what others would say reads as English until they have been fetched
    /// too.
    #[must_use]
    pub fn begun<'a>(reader: Reader, texts: impl IntoIterator<Item = &'a str>) -> Self {
        Self {
            begun: true,
            ..Self::fetched(reader, texts)
        }
    }
    /// The same messages for a reader of the same language with other units. A reader of another language gets what
    /// [`Words::of`] gives.
    #[must_use]
    pub fn read_by(&self, reader: Reader) -> Self {
        let same = self.reader.language == reader.language;
        Self {
            reader,
            fetched: self.fetched.clone().filter(|_| same),
            begun: self.begun && same,
        }
    }
    /// Whether the messages of the reader's language are at hand.
    #[must_use]
    pub fn at_hand(&self) -> bool {
        self.fetched.is_some() || self.reader.language.built_in()
    }
    /// Whether nothing is lacking of those that are at hand.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        !self.begun
    }
    /// Whose words these are.
    #[must_use]
    pub fn reader(&self) -> Reader {
        self.reader
    }
    /// The message of a key in the reader's language, or else the English one.
    fn message(&self, key: &str) -> Option<&Pattern<String>> {
        let own = match (&self.fetched, self.reader.language) {
            (Some(fetched), _) => fetched.get(key),
            #[cfg(feature = "german")]
            (None, Language::German) => german().get(key),
            _ => None,
        };
        own.or_else(|| english(key))
    }
    /// The sentence of a saying.
    #[must_use]
    pub fn say(&self, saying: &Saying) -> String {
        let mut out = String::new();
        self.write(saying, &mut out, 0);
        out
    }
    /// The text of a message without values.
    #[must_use]
    pub fn text(&self, key: &str) -> String {
        self.say(&Saying::new(key.to_owned()))
    }
    /// Whether there is a message of this key.
    #[must_use]
    pub fn knows(&self, key: &str) -> bool {
        self.message(key).is_some()
    }
    /// A number with its unit as this reader writes it.
    #[must_use]
    pub fn figure(&self, figure: Figure) -> String {
        figure.written(self.reader)
    }
    /// `W1`, `W1 and W2`, `W1, W2 and W3`; beyond six the rest is counted.
    #[must_use]
    pub fn list(&self, all: &[String]) -> String {
        match all {
            [] => self.text("list-nothing"),
            [one] => one.clone(),
            [before @ .., last] if all.len() <= 6 => {
                format!("{} {} {last}", before.join(", "), self.text("list-and"))
            }
            more => self.say(&say!(
                "list-more",
                shown = more.get(..5).unwrap_or_default().join(", "),
                more = more.len() - 5
            )),
        }
    }
    fn write(&self, saying: &Saying, out: &mut String, depth: usize) {
        // Sayings inside sayings are written by us, a few deep; no text of a file makes them deeper.
        if depth > 8 {
            return;
        }
        match self.message(saying.key()) {
            Some(pattern) => message::fill(self, pattern, saying, out, depth),
            None => out.push_str(saying.key()),
        }
    }
    fn value(&self, value: &Value, depth: usize) -> String {
        match value {
            Value::Text(text) => text.clone(),
            Value::Count(count) => count.to_string(),
            Value::Figure(figure) => self.figure(*figure),
            Value::List(all) => {
                let all: Vec<String> = all.iter().map(|value| self.value(value, depth + 1)).collect();
                self.list(&all)
            }
            Value::Joined(all, between) => {
                let mut out = String::new();
                for (at, saying) in all.iter().enumerate() {
                    out.push_str(if at == 0 { "" } else { between });
                    self.write(saying, &mut out, depth + 1);
                }
                out
            }
            Value::Saying(saying) => {
                let mut out = String::new();
                self.write(saying, &mut out, depth + 1);
                out
            }
        }
    }
}
