//! Reads the text form of a job. Goes on after an error, line by line, so that all of them are told at once.

use super::error::{MOST_ERRORS, TextError, TextErrors, closest};
use super::help::{help_for, why_not_bare};
use super::lex::{Token, Word, lex};
use super::whose::{Whose, full};
use super::{Numberings, place_bare};
use crate::body::{BodyShape, OwnPassage, OwnPlace, check_name};
use crate::id::{PartId, RunId};
use crate::job::{Conditions, Job, Run, SheetKind, VehicleInfo};
use crate::kinds::PartKind;
use crate::limits;
use crate::property::{Property, PropertyError, PropertySet, Shape};
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates};
use crate::tuning::Tuning;
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use std::ops::Range;
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
    /// A part whose line could not be read: nothing is said about ends on it.
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

/// Puts a line at the end of a list, unless the list is full: then how long it may be.
fn push<T>(list: &mut Vec<T>, line: T, most: usize) -> Result<(), usize> {
    if list.len() >= most {
        return Err(most);
    }
    list.push(line);
    Ok(())
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
                self.settings_line(line, VehicleInfo::list(), rest, Whose::TitleBlock, set);
                self.job.vehicle = info;
            }
            "conditions" => {
                self.once(line, at, "conditions");
                let mut conditions = std::mem::take(&mut self.job.settings.conditions);
                let set = &mut |name: &str, text: &str| conditions.set(name, text);
                self.settings_line(line, Conditions::list(), rest, Whose::Conditions, set);
                self.job.settings.conditions = conditions;
            }
            "body" => {
                self.once(line, at, "body");
                let mut shape = std::mem::take(&mut self.job.settings.body.shape);
                let set = &mut |name: &str, text: &str| shape.set(name, text);
                self.settings_line(line, BodyShape::list(), rest, Whose::Body, set);
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
                        self.tags
                            .entry(self.sheet)
                            .or_default()
                            .entry(tag.clone())
                            .or_insert(Tagged::Unreadable);
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

    fn title(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        self.once(line, at.clone(), "job");
        match rest {
            [
                Token {
                    word: Word::Bare(title) | Word::Quoted(title),
                    start,
                    end,
                },
            ] => match limits::check_length(title, limits::LONGEST_LABEL) {
                Ok(()) => self.job.title.clone_from(title),
                Err(why) => self.error(line, *start..*end, say!("text-title-long", why = why), None),
            },
            _ => self.error(line, at, say!("text-title"), say!("text-title-help")),
        }
    }

    fn limit(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let [
            Token {
                word: Word::Bare(key) | Word::Quoted(key),
                ..
            },
            Token {
                word: Word::Bare(number),
                start,
                end,
            },
        ] = rest
        else {
            return self.error(line, at, say!("text-limit"), say!("text-limit-help"));
        };
        match number.parse::<f64>().ok().filter(|n| n.is_finite()) {
            Some(value) if self.job.settings.limits.len() < limits::MOST_SETTINGS => {
                if self.job.settings.limits.insert(key.clone(), value).is_some() {
                    self.error(line, at, say!("text-limit-twice", key = key), None);
                }
            }
            Some(_) => self.error(line, at, full("limits", limits::MOST_SETTINGS), None),
            None => {
                let what = say!("text-limit-number", text = number);
                self.error(line, *start..*end, what, say!("text-limit-number-help"));
            }
        }
    }

    fn allow(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        if rest.is_empty() {
            self.error(line, at, say!("text-allow"), None);
        }
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Bare(name) | Word::Quoted(name) => {
                    if self.job.settings.allowed.len() >= limits::MOST_SETTINGS {
                        return self.error(line, here, full("checks", limits::MOST_SETTINGS), None);
                    }
                    self.job.settings.allowed.insert(name.clone());
                }
                Word::Pair { .. } => self.error(line, here, say!("text-allow-name"), None),
            }
        }
    }

    /// A line that tells of one place or passage of the body: its name, then properties. Gives the name when it may be
    /// told of.
    #[expect(
        clippy::too_many_arguments,
        reason = "one reader of both lines, whose types it does not know"
    )]
    fn told_of(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        rest: &[Token],
        whose: Whose,
        known: OrderedSet<String>,
        list: &'static [Property],
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) -> Option<String> {
        let Some((
            Token {
                word: Word::Bare(name) | Word::Quoted(name),
                start,
                end,
            },
            rest,
        )) = rest.split_first()
        else {
            self.error(
                line,
                at,
                say!("text-name-missing", whose = whose.said()),
                say!("text-name-missing-help"),
            );
            return None;
        };
        let here = *start..*end;
        self.settings_line(line, list, rest, whose, set);
        let why = if let Err(why) = check_name(name) {
            why
        } else if known.contains(name) {
            say!("text-name-twice", whose = whose.said(), name = name)
        } else if known.len() >= limits::MOST_OWN_PLACES {
            full("own-places", limits::MOST_OWN_PLACES)
        } else {
            return Some(name.clone());
        };
        self.error(line, here, why, None);
        None
    }

    fn begin_sheet(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let words = || SheetKind::ALL.iter().map(|kind| kind.word());
        let [
            Token {
                word: Word::Bare(word),
                start,
                end,
            },
        ] = rest
        else {
            let all: Vec<&str> = words().collect();
            return self.error(line, at, say!("text-sheet", words = all.join(", ")), None);
        };
        match SheetKind::from_word(word) {
            Some(kind) => {
                self.sheet = kind;
                self.job.sheets.entry(kind).or_default();
            }
            None => {
                let all: Vec<&str> = words().collect();
                let help = closest(word, words()).map_or_else(
                    || say!("text-sheets", words = all.join(", ")),
                    |meant| say!("text-meant", meant = meant),
                );
                self.error(line, *start..*end, say!("text-no-sheet", word = word), help);
            }
        }
    }

    /// A line of properties alone.
    /// A line that is a set of properties.
    fn told<P: PropertySet + Default>(&mut self, line: Line<'t>, rest: &[Token], whose: Whose) -> P {
        let mut told = P::default();
        let list = told.properties();
        let mut rest = rest;
        // A tag stands first, without its name.
        if let (
            true,
            Some((
                Token {
                    word: Word::Bare(tag),
                    start,
                    end,
                },
                more,
            )),
        ) = (list.iter().any(|it| it.name == "tag"), rest.split_first())
        {
            match limits::check_tag(tag) {
                // It fits: a tag is shorter than a text may be.
                Ok(()) => drop(told.set("tag", tag)),
                Err(why) => self.error(line, *start..*end, why, say!("text-tag-first")),
            }
            rest = more;
        }
        let set = &mut |name: &str, text: &str| told.set(name, text);
        self.settings_line(line, list, rest, whose, set);
        told
    }

    /// Says that a list is full.
    fn held(&mut self, line: Line<'t>, at: Range<usize>, held: Result<(), usize>, what: &'static str) {
        if let Err(most) = held {
            self.error(line, at, full(what, most), None);
        }
    }

    /// Steps of checklists that are done.
    fn done(&mut self, line: Line<'t>, rest: &[Token]) {
        for token in rest {
            let here = token.start..token.end;
            let (Word::Bare(step) | Word::Quoted(step)) = &token.word else {
                self.error(line, here, say!("text-step-word"), say!("text-step-word-help"));
                continue;
            };
            if let Err(why) = limits::check_length(step, limits::LONGEST_LABEL) {
                self.error(line, here, say!("text-step-long", why = why), None);
            } else if self.job.thread.done.len() >= limits::MOST_DONE {
                return self.error(line, here, full("steps", limits::MOST_DONE), None);
            } else {
                self.job.thread.done.insert(step.clone());
            }
        }
    }

    fn settings_line(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        rest: &[Token],
        whose: Whose,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) {
        let mut done = OrderedSet::new();
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Pair { key, value, value_at } => {
                    let at = *value_at..token.end;
                    self.pair(line, list, &[], whose, (key, here), (value, at), &mut done, set);
                }
                Word::Bare(text) => {
                    self.bare(line, list, whose, (text, here), &mut done, set);
                }
                Word::Quoted(text) if list.iter().any(|it| it.name == "what") => {
                    let at = here.clone();
                    self.pair(line, list, &[], whose, ("what", at), (text, here), &mut done, set);
                }
                Word::Quoted(_) => self.error(line, here, say!("text-unnamed"), say!("text-unnamed-help")),
            }
        }
    }

    /// `key=value` of a property. True when it was set.
    #[expect(
        clippy::too_many_arguments,
        reason = "one call for all three places where properties are written"
    )]
    pub(super) fn pair(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        others: &[&'static str],
        whose: Whose,
        (key, key_at): (&str, Range<usize>),
        (value, value_at): (&str, Range<usize>),
        done: &mut OrderedSet<&'static str>,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) -> bool {
        let Some(property) = list.iter().find(|property| property.name == key) else {
            let names = || list.iter().map(|p| p.name).chain(others.iter().copied());
            let all: Vec<&str> = names().collect();
            let help = closest(key, names()).map_or_else(
                || say!("text-there-are", words = all.join(", ")),
                |meant| say!("text-meant", meant = meant),
            );
            self.error(
                line,
                key_at,
                say!("text-no-property", whose = whose.said(), key = key),
                help,
            );
            return false;
        };
        if !done.insert(property.name) {
            self.error(
                line,
                key_at,
                say!("text-key-twice", key = key),
                say!("text-leave-one"),
            );
            return false;
        }
        if let Err(why) = set(property.name, value) {
            let help = help_for(property, value);
            self.error(
                line,
                value_at,
                say!("text-value", key = key, why = why.said),
                help,
            );
            return false;
        }
        true
    }

    /// A value without a name. Gives the property that took it.
    pub(super) fn bare(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        whose: Whose,
        (text, at): (&str, Range<usize>),
        done: &mut OrderedSet<&'static str>,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) -> Option<&'static str> {
        if let Some(property) = place_bare(list, done, text) {
            done.insert(property.name);
            let value = if property.shape == Shape::YesNo {
                "yes"
            } else {
                text
            };
            match set(property.name, value) {
                Ok(()) => return Some(property.name),
                Err(why) => {
                    self.error(
                        line,
                        at,
                        say!("text-value", key = property.name, why = why.said),
                        help_for(property, text),
                    );
                    return None;
                }
            }
        }
        let (message, help) = why_not_bare(list, whose, text, done);
        self.error(line, at, message, help);
        None
    }
}
