//! Reads the text form of a job. Goes on after an error, line by line, so that all of them are told at once.

use super::error::{MOST_ERRORS, TextError, TextErrors, closest};
use super::help::{help_for, why_not_bare};
use super::lex::{Token, Word, lex};
use super::{Numberings, PART_KEYS, RUN_KEYS, law_of, place_bare};
use crate::conductor::FittedBy;
use crate::id::{PartId, RunId};
use crate::job::{BoardPoint, Conditions, End, Job, Part, Run, SheetKind, Turn, VehicleInfo, Wire};
use crate::kinds::PartKind;
use crate::limits;
use crate::property::{Property, PropertyError, PropertySet, Shape};
use crate::readings::Reading;
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use std::ops::Range;
use std::str::FromStr;

/// Words that a line may begin with besides those of the kinds.
const LINE_WORDS: &[&str] = &[
    "job",
    "vehicle-info",
    "conditions",
    "limit",
    "allow",
    "sheet",
    "run",
    "reading",
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
            message: format!("the text is longer than {} bytes", limits::LARGEST_FILE),
            help: "split it into several jobs".to_owned(),
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
    sheet: SheetKind,
    numbers: Numberings,
    pub(super) tags: OrderedMap<SheetKind, OrderedMap<String, Tagged>>,
    run_ids: OrderedMap<SheetKind, OrderedMap<RunId, String>>,
    pub(super) pending: Vec<Pending<'t>>,
    /// Lines that may stand once, and did.
    seen: OrderedSet<&'static str>,
}

/// A word whose place in its line is known.
pub(super) type Placed = (String, Range<usize>);

impl<'t> Parser<'t> {
    pub(super) fn error(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        message: impl Into<String>,
        help: impl Into<String>,
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
            message: message.into(),
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
                let help = format!(
                    "a line begins with {} or the word of a kind",
                    LINE_WORDS.join(", ")
                );
                return self.error(line, at, "this cannot begin a line", help);
            }
        };
        match word {
            "job" => self.title(line, at, rest),
            "vehicle-info" => {
                self.once(line, at, "vehicle-info");
                let mut info = std::mem::take(&mut self.job.vehicle);
                let set = &mut |name: &str, text: &str| info.set(name, text);
                self.settings_line(line, VehicleInfo::list(), rest, "the title block", set);
                self.job.vehicle = info;
            }
            "conditions" => {
                self.once(line, at, "conditions");
                let mut conditions = std::mem::take(&mut self.job.settings.conditions);
                let set = &mut |name: &str, text: &str| conditions.set(name, text);
                self.settings_line(line, Conditions::list(), rest, "the list of conditions", set);
                self.job.settings.conditions = conditions;
            }
            "limit" => self.limit(line, at, rest),
            "allow" => self.allow(line, at, rest),
            "sheet" => self.begin_sheet(line, at, rest),
            "run" => self.run(line, at, rest),
            "reading" => {
                let mut reading = Reading::default();
                let set = &mut |name: &str, text: &str| reading.set(name, text);
                self.settings_line(line, Reading::list(), rest, "a reading", set);
                let readings = &mut self.job.sheets.entry(self.sheet).or_default().readings;
                if readings.len() < limits::MOST_READINGS {
                    readings.push(reading);
                } else {
                    let message = format!("more than {} readings", limits::MOST_READINGS);
                    self.error(line, at, message, "");
                }
            }
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
                        Some(meant) => format!("did you mean `{meant}`?"),
                        None => format!("the kinds are {}", PartKind::WORDS.join(", ")),
                    };
                    self.error(
                        line,
                        at,
                        format!("there is no kind of part or line `{word}`"),
                        help,
                    );
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
                format!("`{word}` stands a second time"),
                "join the two lines",
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
                Err(why) => self.error(line, *start..*end, format!("the title {why}"), ""),
            },
            _ => self.error(
                line,
                at,
                "`job` takes the title, and nothing else",
                "write job \"Title\"",
            ),
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
            return self.error(
                line,
                at,
                "`limit` takes a name and a number",
                "write limit NAME 3.5",
            );
        };
        match number.parse::<f64>().ok().filter(|n| n.is_finite()) {
            Some(value) if self.job.settings.limits.len() < limits::MOST_SETTINGS => {
                if self.job.settings.limits.insert(key.clone(), value).is_some() {
                    self.error(line, at, format!("the limit `{key}` is set a second time"), "");
                }
            }
            Some(_) => self.error(
                line,
                at,
                format!("more than {} limits", limits::MOST_SETTINGS),
                "",
            ),
            None => {
                let help = "a limit is a bare number, in the unit of that limit";
                self.error(line, *start..*end, format!("`{number}` is not a number"), help);
            }
        }
    }

    fn allow(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        if rest.is_empty() {
            self.error(
                line,
                at,
                "`allow` takes the names of checks that are not to be run",
                "",
            );
        }
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Bare(name) | Word::Quoted(name) => {
                    if self.job.settings.allowed.len() >= limits::MOST_SETTINGS {
                        return self.error(
                            line,
                            here,
                            format!("more than {} checks", limits::MOST_SETTINGS),
                            "",
                        );
                    }
                    self.job.settings.allowed.insert(name.clone());
                }
                Word::Pair { .. } => self.error(line, here, "this is not the name of a check", ""),
            }
        }
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
            return self.error(line, at, format!("`sheet` takes one of {}", all.join(", ")), "");
        };
        match SheetKind::from_word(word) {
            Some(kind) => {
                self.sheet = kind;
                self.job.sheets.entry(kind).or_default();
            }
            None => {
                let all: Vec<&str> = words().collect();
                let help = closest(word, words()).map_or_else(
                    || format!("the sheets are {}", all.join(", ")),
                    |meant| format!("did you mean `{meant}`?"),
                );
                self.error(line, *start..*end, format!("there is no sheet `{word}`"), help);
            }
        }
    }

    /// A line of properties alone.
    fn settings_line(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        rest: &[Token],
        whose: &str,
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
                Word::Quoted(_) => self.error(line, here, "a text without a name", "write name=\"text\""),
            }
        }
    }

    /// `key=value` of a property. True when it was set.
    #[expect(
        clippy::too_many_arguments,
        reason = "one call for all three places where properties are written"
    )]
    fn pair(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        others: &[&'static str],
        whose: &str,
        (key, key_at): (&str, Range<usize>),
        (value, value_at): (&str, Range<usize>),
        done: &mut OrderedSet<&'static str>,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) -> bool {
        let Some(property) = list.iter().find(|property| property.name == key) else {
            let names = || list.iter().map(|p| p.name).chain(others.iter().copied());
            let all: Vec<&str> = names().collect();
            let help = closest(key, names()).map_or_else(
                || format!("there are {}", all.join(", ")),
                |meant| format!("did you mean `{meant}`?"),
            );
            self.error(line, key_at, format!("{whose} has no `{key}`"), help);
            return false;
        };
        if !done.insert(property.name) {
            self.error(
                line,
                key_at,
                format!("`{key}` is set a second time in this line"),
                "leave one of them out",
            );
            return false;
        }
        if let Err(why) = set(property.name, value) {
            let help = help_for(property, value);
            self.error(line, value_at, format!("{key}: {why}"), help);
            return false;
        }
        true
    }

    /// A value without a name. Gives the property that took it.
    fn bare(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        whose: &str,
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
                        format!("{}: {why}", property.name),
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

    fn part(&mut self, line: Line<'t>, at: Range<usize>, mut kind: PartKind, rest: &[Token]) {
        let whose = format!("a part of kind {}", kind.word());
        let list = kind.properties();
        let Some((tag, rest)) = self.tag(line, at.clone(), rest, kind.letter()) else {
            return;
        };
        let mut part = Part::new(
            tag.0.clone(),
            PartKind::from_word(kind.word()).unwrap_or_else(|| kind.clone()),
        );
        let mut done = OrderedSet::new();
        let mut common = OrderedSet::new();
        let mut id = None;
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Quoted(text) => {
                    let channels =
                        matches!(kind, PartKind::Amplifier(_)) && text.contains("x ") && text.contains('@');
                    if channels {
                        let help =
                            "write the channels as sections=\"4x 75W@4ohm\"; a text alone is the label";
                        self.error(line, here, "these look like channels, not like a label", help);
                    } else if self.first(line, &here, "label", &mut common) {
                        self.text(line, here, text, limits::LONGEST_LABEL, &mut part.label);
                    }
                }
                Word::Bare(text) if text.starts_with('@') => {
                    if self.first(line, &here, "place on the board", &mut common) {
                        part.at = self.point(line, text.get(1..).unwrap_or_default(), here);
                    }
                }
                Word::Bare(text) => {
                    let set = &mut |name: &str, text: &str| kind.set(name, text);
                    let taken = self.bare(line, list, &whose, (text, here), &mut done, set);
                    let law = taken.and_then(law_of).filter(|_| !done.contains("law"));
                    if let (PartKind::Load(load), Some(law)) = (&mut kind, law) {
                        // The word is one of the law's own, see `law_of`.
                        let _ = load.set("law", law);
                        done.insert("law");
                    }
                }
                Word::Pair { key, value, value_at } => {
                    let value_at = *value_at..token.end;
                    if PART_KEYS.contains(&key.as_str()) && !self.first(line, &here, key, &mut common) {
                        continue;
                    }
                    match key.as_str() {
                        "label" => self.text(line, value_at, value, limits::LONGEST_LABEL, &mut part.label),
                        "note" => self.text(line, value_at, value, limits::LONGEST_NOTE, &mut part.note),
                        "place" => {
                            let mut place = String::new();
                            self.text(line, value_at, value, limits::LONGEST_LABEL, &mut place);
                            part.place = Some(place);
                        }
                        "by" => part.fitted_by = self.by(line, value_at, value),
                        "turn" => match Turn::from_word(value) {
                            Some(turn) => part.turn = turn,
                            None => {
                                let message = format!("`{value}` is not a turn");
                                self.error(line, value_at, message, "it takes 0, 90, 180 or 270, clockwise");
                            }
                        },
                        "id" => id = self.id::<PartId>(line, value_at, value),
                        _ => {
                            let set = &mut |name: &str, text: &str| kind.set(name, text);
                            self.pair(
                                line,
                                list,
                                PART_KEYS,
                                &whose,
                                (key, here),
                                (value, value_at),
                                &mut done,
                                set,
                            );
                        }
                    }
                }
            }
        }
        part.is = kind;
        self.place_part(line, tag, id, part);
    }

    fn place_part(&mut self, line: Line<'t>, tag: Placed, id: Option<PartId>, part: Part) {
        let sheet = self.job.sheets.entry(self.sheet).or_default();
        let id = id.unwrap_or_else(|| {
            self.numbers
                .implied_part(&tag.0, |id| sheet.parts.contains_key(&id))
        });
        let (many, there) = (
            sheet.parts.len() >= limits::MOST_PARTS,
            sheet.parts.get(&id).map(|p| p.tag.clone()),
        );
        if many {
            return self.error(
                line,
                tag.1,
                format!("more than {} parts on one sheet", limits::MOST_PARTS),
                "",
            );
        }
        if let Some(other) = there {
            let help = "leave `id=` out, or take one that is free";
            self.tags
                .entry(self.sheet)
                .or_default()
                .entry(tag.0)
                .or_insert(Tagged::Unreadable);
            return self.error(
                line,
                tag.1,
                format!("the id {id} belongs to `{other}` already"),
                help,
            );
        }
        if !self.claim(line, &tag, Tagged::Part(id)) {
            return;
        }
        self.numbers.parts.note(&tag.0, id.0);
        self.job
            .sheets
            .entry(self.sheet)
            .or_default()
            .parts
            .insert(id, part);
    }

    fn run(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let whose = "a run";
        let Some((tag, rest)) = self.tag(line, at, rest, "W") else {
            return;
        };
        let mut ends = Vec::new();
        let mut rest = rest;
        while let (
            true,
            Some((
                Token {
                    word: Word::Bare(text) | Word::Quoted(text),
                    start,
                    end,
                },
                more,
            )),
        ) = (ends.len() < 2, rest.split_first())
        {
            ends.push((text.clone(), *start..*end));
            rest = more;
        }
        let Ok(ends) = <[Placed; 2]>::try_from(ends) else {
            let end = rest.first().map_or(line.text.len(), |token| token.start);
            let help = "write run W1 B1.+ F1.in; an end that is nowhere is loose@100,50";
            return self.error(line, end..end + 1, "a run has two ends", help);
        };
        let mut run = Run::new(
            tag.0.clone(),
            End::Loose(BoardPoint::default()),
            End::Loose(BoardPoint::default()),
        );
        let mut wire = Wire::default();
        let mut done = OrderedSet::new();
        let mut common = OrderedSet::new();
        let mut id = None;
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Quoted(text) => {
                    if self.first(line, &here, "label", &mut common) {
                        self.text(line, here, text, limits::LONGEST_LABEL, &mut run.label);
                    }
                }
                Word::Bare(text) => {
                    let set = &mut |name: &str, text: &str| wire.set(name, text);
                    self.bare(line, Wire::list(), whose, (text, here), &mut done, set);
                }
                Word::Pair { key, value, value_at } => {
                    let value_at = *value_at..token.end;
                    if RUN_KEYS.contains(&key.as_str()) && !self.first(line, &here, key, &mut common) {
                        continue;
                    }
                    match key.as_str() {
                        "label" => self.text(line, value_at, value, limits::LONGEST_LABEL, &mut run.label),
                        "note" => self.text(line, value_at, value, limits::LONGEST_NOTE, &mut run.note),
                        "by" => run.fitted_by = self.by(line, value_at, value),
                        "ends" => self.endings(line, value_at, value, "method", &mut run),
                        "end-ohms" => self.endings(line, value_at, value, "resistance", &mut run),
                        "bends" => run.bends = self.bends(line, value_at, value),
                        "route" => run.route = self.route(line, value_at, value),
                        "id" => id = self.id::<RunId>(line, value_at, value),
                        _ => {
                            let set = &mut |name: &str, text: &str| wire.set(name, text);
                            let list = Wire::list();
                            self.pair(
                                line,
                                list,
                                RUN_KEYS,
                                whose,
                                (key, here),
                                (value, value_at),
                                &mut done,
                                set,
                            );
                        }
                    }
                }
            }
        }
        run.wire = wire;
        let sheet = self.sheet;
        let taken = self.run_ids.entry(sheet).or_default();
        let id = id.unwrap_or_else(|| self.numbers.implied_run(&tag.0, |id| taken.contains_key(&id)));
        if taken.len() >= limits::MOST_RUNS {
            return self.error(
                line,
                tag.1,
                format!("more than {} runs on one sheet", limits::MOST_RUNS),
                "",
            );
        }
        if let Some(other) = taken.get(&id).cloned() {
            let help = "leave `id=` out, or take one that is free";
            return self.error(
                line,
                tag.1,
                format!("the id {id} belongs to `{other}` already"),
                help,
            );
        }
        if !self.claim(line, &tag, Tagged::Run) {
            return;
        }
        self.run_ids.entry(sheet).or_default().insert(id, tag.0.clone());
        self.numbers.runs.note(&tag.0, id.0);
        self.pending.push(Pending {
            line,
            sheet,
            id,
            run,
            ends,
        });
    }

    /// The tag of a part or run, which must be there.
    fn tag<'k>(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        rest: &'k [Token],
        letter: &str,
    ) -> Option<(Placed, &'k [Token])> {
        let help = format!("write one like {letter}1 after the word");
        match rest.split_first() {
            Some((
                Token {
                    word: Word::Bare(tag),
                    start,
                    end,
                },
                rest,
            )) => match limits::check_tag(tag) {
                Ok(()) => Some(((tag.clone(), *start..*end), rest)),
                Err(why) => {
                    self.error(line, *start..*end, why, help);
                    self.tags
                        .entry(self.sheet)
                        .or_default()
                        .insert(tag.clone(), Tagged::Unreadable);
                    None
                }
            },
            Some((token, _)) => {
                self.error(line, token.start..token.end, "the tag is missing", help);
                None
            }
            None => {
                self.error(line, at, "the tag is missing", help);
                None
            }
        }
    }

    /// Takes a tag on the sheet at hand; false when something else has it.
    fn claim(&mut self, line: Line<'t>, tag: &Placed, what: Tagged) -> bool {
        let tags = self.tags.entry(self.sheet).or_default();
        if tags.get(&tag.0).is_some_and(|there| *there != Tagged::Unreadable) {
            let message = format!("the tag `{}` stands on this sheet already", tag.0);
            self.error(
                line,
                tag.1.clone(),
                message,
                "each part and each run has a tag of its own",
            );
            return false;
        }
        tags.insert(tag.0.clone(), what);
        true
    }

    /// True the first time that something may stand once in a line.
    fn first(
        &mut self,
        line: Line<'t>,
        at: &Range<usize>,
        what: &str,
        seen: &mut OrderedSet<String>,
    ) -> bool {
        let first = seen.insert(what.to_owned());
        if !first {
            let help = "leave one of them out; a text alone is the label";
            self.error(line, at.clone(), format!("a second {what} in this line"), help);
        }
        first
    }

    fn text(&mut self, line: Line<'t>, at: Range<usize>, text: &str, most: usize, into: &mut String) {
        match limits::check_length(text, most) {
            Ok(()) => text.clone_into(into),
            Err(why) => self.error(line, at, format!("the text {why}"), ""),
        }
    }

    fn by(&mut self, line: Line<'t>, at: Range<usize>, word: &str) -> FittedBy {
        FittedBy::from_word(word).unwrap_or_else(|| {
            let help = "it takes maker, earlier or us";
            self.error(line, at, format!("`{word}` is nobody who fits things"), help);
            FittedBy::Us
        })
    }

    pub(super) fn id<I: FromStr<Err = String>>(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        text: &str,
    ) -> Option<I> {
        text.parse()
            .map_err(|why: String| self.error(line, at, why, ""))
            .ok()
    }

    pub(super) fn point(&mut self, line: Line<'t>, text: &str, at: Range<usize>) -> Option<BoardPoint> {
        let read = text.split_once(',').and_then(|(x, y)| {
            Some(BoardPoint {
                x: x.parse().ok()?,
                y: y.parse().ok()?,
            })
        });
        let checked = match read {
            Some(point) => limits::check_point(point).map(|()| point),
            None => Err(format!("`{text}` is not a point of the board")),
        };
        checked
            .map_err(|why| {
                self.error(
                    line,
                    at,
                    why,
                    "write two whole numbers like 200,80: right, then down",
                )
            })
            .ok()
    }

    fn bends(&mut self, line: Line<'t>, at: Range<usize>, text: &str) -> Vec<BoardPoint> {
        if text.split('/').count() > limits::MOST_BENDS {
            self.error(line, at, format!("more than {} bends", limits::MOST_BENDS), "");
            return Vec::new();
        }
        text.split('/')
            .filter_map(|point| self.point(line, point, at.clone()))
            .collect()
    }

    fn route(&mut self, line: Line<'t>, at: Range<usize>, text: &str) -> Vec<String> {
        if text.split('/').count() > limits::MOST_PLACES {
            self.error(line, at, format!("more than {} places", limits::MOST_PLACES), "");
            return Vec::new();
        }
        let places: Vec<String> = text
            .split('/')
            .map(|place| place.replace("~1", "/").replace("~0", "~"))
            .collect();
        if let Some(why) = places
            .iter()
            .find_map(|p| limits::check_length(p, limits::LONGEST_LABEL).err())
        {
            self.error(line, at, format!("a place {why}"), "");
        }
        places
    }

    /// `ring/ferrule`, or one word for both ends.
    fn endings(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        text: &str,
        property: &'static str,
        run: &mut Run,
    ) {
        let (from, to) = text.split_once('/').unwrap_or((text, text));
        for (ending, text) in [(&mut run.from_ending, from), (&mut run.to_ending, to)] {
            if let Err(why) = ending.set(property, text) {
                let known = crate::job::Ending::list().iter().find(|p| p.name == property);
                let help = known.map(|p| help_for(p, text)).unwrap_or_default();
                return self.error(line, at, why.message, help);
            }
        }
    }
}
