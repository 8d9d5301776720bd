//! Reads the text form of a job. Goes on after an error, line by line, so that all of them are told at once.

mod ends;
mod help;
mod items;
mod lines;
mod properties;
mod whose;

use super::Numberings;
use super::error::{MOST_ERRORS, TextError, TextErrors, closest};
use super::lex::{Token, Word, lex};
use crate::body::{BodyShape, OwnPassage, OwnPlace};
use crate::id::{PartId, RunId};
use crate::job::{Conditions, Job, Run, SheetKind, VehicleInfo};
use crate::kinds::PartKind;
use crate::limits;
use crate::property::PropertySet;
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates};
use crate::tuning::Tuning;
use ordered::{OrderedMap, OrderedSet, Sort as _};
use properties::push;
use std::ops::Range;
use whose::Whose;
use words::{Saying, say};

/// Letters of an unknown word that are repeated in the error.
const LONGEST_TOLD: usize = 40;

/// Words that a line may begin with besides those of the kinds.
const LINE_WORDS: &[&str] = &[
    "job",
    "vehicle-info",
    "conditions",
    "limit",
    "allow",
    "body",
    "place",
    "passage",
    "sheet",
    "run",
    "reading",
    "tuning",
    "complaint",
    "intake",
    "offer",
    "rates",
    "done",
];

/// Reads a job from its text form.
///
/// # Errors
/// Everything that is wrong with it, each with its place.
pub fn parse(text: &str) -> Result<Job, TextErrors> {
    let (job, errors) = parse_lenient(text);
    if errors.is_empty() { Ok(job) } else { Err(errors) }
}

/// Reads what can be read of a text, and tells what cannot. A part with a wrong value keeps its kind's default there; a
/// run whose end is on no part is left out.
#[must_use]
pub fn parse_lenient(text: &str) -> (Job, TextErrors) {
    let mut parser = Parser {
        job: Job::default(),
        errors: Vec::new(),
        sheet: SheetKind::Plan,
        numbers: Numberings::default(),
        tags: OrderedMap::new(),
        run_ids: OrderedMap::new(),
        pending: Vec::new(),
        seen: OrderedSet::new(),
    };
    if text.len() > limits::LARGEST_FILE {
        parser.errors.push(TextError {
            line: 1,
            column: 1,
            width: 1,
            message: say!("text-too-long", most = limits::LARGEST_FILE),
            help: Some(say!("text-too-long-help")),
            source: String::new(),
        });
    } else {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        // After so many errors the rest is left unread, see `MOST_ERRORS`.
        for (at, line) in text.split('\n').enumerate() {
            if parser.errors.len() >= MOST_ERRORS {
                break;
            }
            parser.line(Line {
                number: at + 1,
                text: line.strip_suffix('\r').unwrap_or(line),
            });
        }
        parser.join_runs();
    }
    let mut errors = parser.errors;
    errors.order_by_key(|error| (error.line, error.column));
    (parser.job, TextErrors(errors))
}

/// A line of the text.
#[derive(Clone, Copy)]
pub(super) struct Line<'t> {
    pub(super) number: usize,
    pub(super) text: &'t str,
}

/// What a tag on a sheet stands for.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Tagged {
    Part(PartId),
    Run,
    /// Something whose line could not be read, or found no room: nothing is said about ends on it.
    Unreadable,
}

/// A run whose ends are looked up once all parts are known.
pub(super) struct Pending<'t> {
    pub(super) line: Line<'t>,
    pub(super) sheet: SheetKind,
    pub(super) id: RunId,
    pub(super) run: Run,
    pub(super) ends: [(String, Range<usize>); 2],
}

pub(super) struct Parser<'t> {
    pub(super) job: Job,
    pub(super) errors: Vec<TextError>,
    pub(super) sheet: SheetKind,
    pub(super) numbers: Numberings,
    pub(super) tags: OrderedMap<SheetKind, OrderedMap<String, Tagged>>,
    pub(super) run_ids: OrderedMap<SheetKind, OrderedMap<RunId, String>>,
    pub(super) pending: Vec<Pending<'t>>,
    /// Lines that may stand once, and did.
    pub(super) seen: OrderedSet<&'static str>,
}

/// A word whose place in its line is known.
pub(super) type Placed = (String, Range<usize>);

impl<'t> Parser<'t> {
    pub(super) fn error(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        message: Saying,
        help: impl Into<Option<Saying>>,
    ) {
        if self.errors.len() >= MOST_ERRORS {
            return;
        }
        let count = |to: usize| line.text.get(..to).unwrap_or(line.text).chars().count();
        let column = count(at.start);
        self.errors.push(TextError {
            line: line.number,
            column: column + 1,
            width: count(at.end).saturating_sub(column).max(1),
            message,
            help: help.into(),
            source: line.text.chars().take(column + 400).collect(),
        });
    }

    fn line(&mut self, line: Line<'t>) {
        let mut wrong = Vec::new();
        let tokens = lex(line.text, &mut wrong);
        for error in wrong {
            self.error(line, error.start..error.end, error.message, error.help);
        }
        let Some((first, rest)) = tokens.split_first() else {
            return;
        };
        let at = first.start..first.end;
        let word = match &first.word {
            Word::Bare(word) => word.as_str(),
            Word::Quoted(_) | Word::Pair { .. } => {
                let help = say!("text-line-words", words = LINE_WORDS.join(", "));
                return self.error(line, at, say!("text-begins-nothing"), help);
            }
        };
        match word {
            "job" => self.title(line, at, rest),
            "vehicle-info" => {
                self.once(line, at, "vehicle-info");
                let mut info = std::mem::take(&mut self.job.vehicle);
                let set = &mut |name: &str, text: &str| info.set(name, text);
                self.settings_line(
                    line,
                    VehicleInfo::list(),
                    rest,
                    Whose::TitleBlock,
                    OrderedSet::new(),
                    set,
                );
                self.job.vehicle = info;
            }
            "conditions" => {
                self.once(line, at, "conditions");
                let mut conditions = std::mem::take(&mut self.job.settings.conditions);
                let set = &mut |name: &str, text: &str| conditions.set(name, text);
                self.settings_line(
                    line,
                    Conditions::list(),
                    rest,
                    Whose::Conditions,
                    OrderedSet::new(),
                    set,
                );
                self.job.settings.conditions = conditions;
            }
            "body" => {
                self.once(line, at, "body");
                let mut shape = std::mem::take(&mut self.job.settings.body.shape);
                let set = &mut |name: &str, text: &str| shape.set(name, text);
                self.settings_line(line, BodyShape::list(), rest, Whose::Body, OrderedSet::new(), set);
                self.job.settings.body.shape = shape;
            }
            "place" => {
                let mut place = OwnPlace::default();
                let known = self.job.settings.body.places.keys().cloned().collect();
                let set = &mut |name: &str, text: &str| place.set(name, text);
                if let Some(name) = self.told_of(line, at, rest, Whose::Place, known, OwnPlace::list(), set) {
                    self.job.settings.body.places.insert(name, place);
                }
            }
            "passage" => {
                let mut passage = OwnPassage::default();
                let known = self.job.settings.body.passages.keys().cloned().collect();
                let set = &mut |name: &str, text: &str| passage.set(name, text);
                if let Some(name) =
                    self.told_of(line, at, rest, Whose::Passage, known, OwnPassage::list(), set)
                {
                    self.job.settings.body.passages.insert(name, passage);
                }
            }
            "limit" => self.limit(line, at, rest),
            "allow" => self.allow(line, at, rest),
            "sheet" => self.begin_sheet(line, at, rest),
            "run" => self.run(line, at, rest),
            "reading" => {
                let reading = self.told::<Reading>(line, rest, Whose::Reading);
                let readings = &mut self.job.sheets.entry(self.sheet).or_default().readings;
                let held = push(readings, reading, limits::MOST_READINGS);
                self.held(line, at, held, "readings");
            }
            "tuning" => {
                let tuning = self.told::<Tuning>(line, rest, Whose::Tuning);
                let tunings = &mut self.job.sheets.entry(self.sheet).or_default().tunings;
                let held = push(tunings, tuning, limits::MOST_TUNINGS);
                self.held(line, at, held, "tunings");
            }
            "complaint" => {
                let complaint = self.told::<Complaint>(line, rest, Whose::Complaint);
                let held = push(&mut self.job.thread.complaints, complaint, limits::MOST_LINES);
                self.held(line, at, held, "complaints");
            }
            "intake" => {
                let note = self.told::<IntakeNote>(line, rest, Whose::Intake);
                let held = push(&mut self.job.thread.intake, note, limits::MOST_LINES);
                self.held(line, at, held, "intake");
            }
            "offer" => {
                let offer = self.told::<Offer>(line, rest, Whose::Offer);
                let held = push(&mut self.job.thread.offers, offer, limits::MOST_LINES);
                self.held(line, at, held, "offers");
            }
            "rates" => {
                self.once(line, at, "rates");
                self.job.thread.rates = self.told::<Rates>(line, rest, Whose::Rates);
            }
            "done" => self.done(line, rest),
            word => match PartKind::from_word(word) {
                Some(kind) => self.part(line, at, kind, rest),
                None => {
                    // The tag is known all the same, so that runs to it are not reported as well.
                    if let Some(Token {
                        word: Word::Bare(tag),
                        ..
                    }) = rest.first()
                    {
                        self.note_unreadable(tag);
                    }
                    let known = LINE_WORDS.iter().chain(PartKind::WORDS).copied();
                    let help = match closest(word, known) {
                        Some(meant) => say!("text-meant", meant = meant),
                        None => say!("text-kinds", words = PartKind::WORDS.join(", ")),
                    };
                    // Whatever is opened by mistake may be one word of megabytes.
                    let told: String = word.chars().take(LONGEST_TOLD).collect();
                    let told = if told.len() < word.len() {
                        told + "…"
                    } else {
                        told
                    };
                    self.error(line, at, say!("text-no-such-word", word = told), help);
                }
            },
        }
    }

    /// Complains when a line that may stand once stands again.
    fn once(&mut self, line: Line<'t>, at: Range<usize>, word: &'static str) {
        if !self.seen.insert(word) {
            self.error(
                line,
                at,
                say!("text-line-twice", word = word),
                say!("text-join-lines"),
            );
        }
    }
}
