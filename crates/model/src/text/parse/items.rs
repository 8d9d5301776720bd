//! Lines of the text form that are a part or a run.

use super::super::lex::{Token, Word};
use super::super::{PART_KEYS, RUN_KEYS, law_of};
use super::help::help_for;
use super::whose::{Whose, full};
use super::{Line, Parser, Pending, Placed, Tagged};
use crate::conductor::FittedBy;
use crate::id::{PartId, RunId};
use crate::job::{BoardPoint, End, Part, Run, Turn, Wire, named};
use crate::kinds::PartKind;
use crate::limits;
use crate::property::PropertySet;
use ordered::OrderedSet;
use std::ops::Range;
use std::str::FromStr;
use words::{Saying, say};

/// What a part and a run are told of alike, and what stood in their line already.
struct Common {
    label: String,
    note: String,
    by: FittedBy,
    seen: OrderedSet<String>,
}

impl Common {
    fn new() -> Self {
        Self {
            label: String::new(),
            note: String::new(),
            by: FittedBy::Us,
            seen: OrderedSet::new(),
        }
    }
}

impl<'t> Parser<'t> {
    pub(super) fn part(&mut self, line: Line<'t>, at: Range<usize>, kind: PartKind, rest: &[Token]) {
        let whose = Whose::Part(kind.word());
        let list = kind.properties();
        let Some((tag, rest)) = self.tag(line, at, rest, kind.letter()) else {
            return;
        };
        let mut part = Part::new(tag.0.clone(), kind);
        let mut done = OrderedSet::new();
        let mut common = Common::new();
        let mut id = None;
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Quoted(text) => {
                    let channels = matches!(part.is, PartKind::Amplifier(_))
                        && text.contains("x ")
                        && text.contains('@');
                    if channels {
                        self.error(line, here, say!("text-channels"), say!("text-channels-help"));
                    } else if self.first(line, &here, "label", &mut common.seen) {
                        self.take(line, "label", (text, here), &mut common);
                    }
                }
                Word::Bare(text) if text.starts_with('@') => {
                    if self.first(line, &here, "@", &mut common.seen) {
                        part.at = self.point(line, text.get(1..).unwrap_or_default(), here);
                    }
                }
                Word::Bare(text) => {
                    let set = &mut |name: &str, text: &str| part.is.set(name, text);
                    let taken = self.bare(line, list, whose, (text, here), &mut done, set);
                    let law = taken.and_then(law_of).filter(|_| !done.contains("law"));
                    if let (PartKind::Load(load), Some(law)) = (&mut part.is, law) {
                        // The word is one of the law's own, see `law_of`.
                        let _ = load.set("law", law);
                        done.insert("law");
                    }
                }
                Word::Pair { key, value, value_at } => {
                    let value_at = *value_at..token.end;
                    if PART_KEYS.contains(&key.as_str()) && !self.first(line, &here, key, &mut common.seen) {
                        continue;
                    }
                    match key.as_str() {
                        "label" | "note" | "by" => self.take(line, key, (value, value_at), &mut common),
                        "place" => {
                            let mut place = String::new();
                            self.text(line, value_at, value, limits::LONGEST_LABEL, &mut place);
                            part.place = named(place);
                        }
                        "turn" => match Turn::from_word(value) {
                            Some(turn) => part.turn = turn,
                            None => {
                                let message = say!("text-no-turn", text = value);
                                self.error(line, value_at, message, say!("text-no-turn-help"));
                            }
                        },
                        "id" => id = self.id::<PartId>(line, value_at, value),
                        _ => {
                            let set = part.set_with(key);
                            self.pair_of(line, set, whose, (key, here), (value, value_at), &mut done);
                        }
                    }
                }
            }
        }
        Common {
            label: part.label,
            note: part.note,
            by: part.fitted_by,
            ..
        } = common;
        self.place_part(line, tag, id, part);
    }

    fn place_part(&mut self, line: Line<'t>, tag: Placed, id: Option<PartId>, part: Part) {
        let sheet = self.job.sheets.entry(self.sheet).or_default();
        let id = id.unwrap_or_else(|| {
            self.numbers
                .implied_part(&tag.0, |id| sheet.parts.contains_key(&id))
        });
        let is_full = sheet.parts.len() >= limits::MOST_PARTS;
        let is_full = is_full.then(|| full("parts", limits::MOST_PARTS));
        let other = sheet.parts.get(&id).map(|it| it.tag.clone());
        if self.claim(line, &tag, Tagged::Part(id), is_full, (id.to_string(), other)) {
            self.numbers.parts.note(&tag.0, id.0);
            let sheet = self.job.sheets.entry(self.sheet).or_default();
            sheet.parts.insert(id, part);
        }
    }

    pub(super) fn run(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let whose = Whose::Run;
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
            return self.error(
                line,
                end..end + 1,
                say!("text-two-ends"),
                say!("text-two-ends-help"),
            );
        };
        let mut run = Run::new(
            tag.0.clone(),
            End::Loose(BoardPoint::default()),
            End::Loose(BoardPoint::default()),
        );
        let mut done = OrderedSet::new();
        let mut common = Common::new();
        let mut id = None;
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Quoted(text) => {
                    if self.first(line, &here, "label", &mut common.seen) {
                        self.take(line, "label", (text, here), &mut common);
                    }
                }
                Word::Bare(text) => {
                    let set = &mut |name: &str, text: &str| run.wire.set(name, text);
                    self.bare(line, Wire::list(), whose, (text, here), &mut done, set);
                }
                Word::Pair { key, value, value_at } => {
                    let value_at = *value_at..token.end;
                    if RUN_KEYS.contains(&key.as_str()) && !self.first(line, &here, key, &mut common.seen) {
                        continue;
                    }
                    match key.as_str() {
                        "label" | "note" | "by" => self.take(line, key, (value, value_at), &mut common),
                        "ends" => self.endings(line, value_at, value, "method", &mut run),
                        "end-ohms" => self.endings(line, value_at, value, "resistance", &mut run),
                        "bends" => run.bends = self.bends(line, value_at, value),
                        "route" => run.route = self.route(line, value_at, value),
                        "id" => id = self.id::<RunId>(line, value_at, value),
                        _ => {
                            let set = run.set_with(key);
                            self.pair_of(line, set, whose, (key, here), (value, value_at), &mut done);
                        }
                    }
                }
            }
        }
        Common {
            label: run.label,
            note: run.note,
            by: run.fitted_by,
            ..
        } = common;
        let sheet = self.sheet;
        let taken = self.run_ids.entry(sheet).or_default();
        let id = id.unwrap_or_else(|| self.numbers.implied_run(&tag.0, |id| taken.contains_key(&id)));
        let is_full = taken.len() >= limits::MOST_RUNS;
        let is_full = is_full.then(|| full("runs", limits::MOST_RUNS));
        let other = taken.get(&id).cloned();
        if self.claim(line, &tag, Tagged::Run, is_full, (id.to_string(), other)) {
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
    }

    /// The tag of a part or run, which must be there.
    fn tag<'k>(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        rest: &'k [Token],
        letter: &str,
    ) -> Option<(Placed, &'k [Token])> {
        let help = say!("text-tag-like", example = format!("{letter}1"));
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
                    self.note_unreadable(tag);
                    None
                }
            },
            Some((token, _)) => {
                self.error(line, token.start..token.end, say!("text-tag-missing"), help);
                None
            }
            None => {
                self.error(line, at, say!("text-tag-missing"), help);
                None
            }
        }
    }

    /// Notes the tag of something that is not taken, so that nothing is said of ends on it. What has this tag already keeps it.
    pub(super) fn note_unreadable(&mut self, tag: &str) {
        let tags = self.tags.entry(self.sheet).or_default();
        tags.entry(tag.to_owned()).or_insert(Tagged::Unreadable);
    }

    /// Takes a tag on the sheet at hand; false, with what stands in the way told: the sheet is full, another thing has the id, or the
    /// tag.
    fn claim(
        &mut self,
        line: Line<'t>,
        tag: &Placed,
        what: Tagged,
        is_full: Option<Saying>,
        (id, other): (String, Option<String>),
    ) -> bool {
        let tags = self.tags.entry(self.sheet).or_default();
        let is_taken = tags.get(&tag.0).is_some_and(|it| *it != Tagged::Unreadable);
        let (message, help) = match (is_full, other) {
            (Some(full), _) => (full, None),
            (None, Some(other)) => {
                let message = say!("text-id-taken", id = id, tag = other);
                (message, Some(say!("text-id-taken-help")))
            }
            (None, None) if is_taken => {
                let message = say!("text-tag-taken", tag = &tag.0);
                (message, Some(say!("text-tag-taken-help")))
            }
            (None, None) => {
                tags.insert(tag.0.clone(), what);
                return true;
            }
        };
        self.note_unreadable(&tag.0);
        self.error(line, tag.1.clone(), message, help);
        false
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
            self.error(
                line,
                at.clone(),
                say!("text-key-twice", key = what),
                say!("text-key-twice-help"),
            );
        }
        first
    }

    /// A label, a note, or who fitted it.
    fn take(&mut self, line: Line<'t>, key: &str, (value, at): (&str, Range<usize>), common: &mut Common) {
        match key {
            "label" => self.text(line, at, value, limits::LONGEST_LABEL, &mut common.label),
            "note" => self.text(line, at, value, limits::LONGEST_NOTE, &mut common.note),
            _ => common.by = self.by(line, at, value),
        }
    }

    /// `key=value` of a property of this set.
    fn pair_of(
        &mut self,
        line: Line<'t>,
        set: &mut dyn PropertySet,
        whose: Whose,
        key: (&str, Range<usize>),
        value: (&str, Range<usize>),
        done: &mut OrderedSet<&'static str>,
    ) {
        let list = set.properties();
        let set = &mut |name: &str, text: &str| set.set(name, text);
        self.pair(line, list, whose, key, value, done, set);
    }

    fn text(&mut self, line: Line<'t>, at: Range<usize>, text: &str, most: usize, into: &mut String) {
        match limits::check_length(text, most) {
            Ok(()) => text.clone_into(into),
            Err(why) => self.error(line, at, say!("text-text-long", why = why), None),
        }
    }

    fn by(&mut self, line: Line<'t>, at: Range<usize>, word: &str) -> FittedBy {
        FittedBy::from_word(word).unwrap_or_else(|| {
            self.error(
                line,
                at,
                say!("text-no-fitter", text = word),
                say!("text-no-fitter-help"),
            );
            FittedBy::Us
        })
    }

    pub(super) fn id<I: FromStr<Err = Saying>>(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        text: &str,
    ) -> Option<I> {
        text.parse()
            .map_err(|why: Saying| self.error(line, at, why, None))
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
            None => Err(say!("text-no-point", text = text)),
        };
        checked
            .map_err(|why| self.error(line, at, why, say!("text-no-point-help")))
            .ok()
    }

    fn bends(&mut self, line: Line<'t>, at: Range<usize>, text: &str) -> Vec<BoardPoint> {
        if text.split('/').count() > limits::MOST_BENDS {
            self.error(line, at, full("bends", limits::MOST_BENDS), None);
            return Vec::new();
        }
        text.split('/')
            .filter_map(|point| self.point(line, point, at.clone()))
            .collect()
    }

    fn route(&mut self, line: Line<'t>, at: Range<usize>, text: &str) -> Vec<String> {
        let places = text.split('/').filter(|place| !place.is_empty());
        // Of a route that is too long, one place more than there may be is enough to tell so.
        let places: Vec<String> = places
            .take(limits::MOST_PLACES + 1)
            .map(|place| place.replace("~1", "/").replace("~0", "~"))
            .collect();
        match limits::check_route(&places) {
            Ok(()) => places,
            Err(why) => {
                self.error(line, at, why, None);
                Vec::new()
            }
        }
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
                let help = known.and_then(|p| help_for(p, text));
                return self.error(line, at, why.said, help);
            }
        }
    }
}
