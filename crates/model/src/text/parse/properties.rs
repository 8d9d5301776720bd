//! Properties as a line writes them: by name, or bare where the value tells which one is meant.

use super::super::error::closest;
use super::super::lex::{Token, Word};
use super::super::place_bare;
use super::help::{help_for, why_not_bare};
use super::whose::{Whose, full};
use super::{Line, Parser};
use crate::body::check_name;
use crate::limits;
use crate::property::{Property, PropertyError, PropertySet, Shape};
use ordered::OrderedSet;
use std::ops::Range;
use words::say;

impl<'t> Parser<'t> {
    /// A line that tells of one place or passage of the body: its name, then properties. Gives the name when it may be
    /// told of.
    #[expect(
        clippy::too_many_arguments,
        reason = "one reader of both lines, whose types it does not know"
    )]
    pub(super) fn told_of(
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
        self.settings_line(line, list, rest, whose, OrderedSet::new(), set);
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

    /// A line that is a set of properties.
    pub(super) fn told<P: PropertySet + Default>(
        &mut self,
        line: Line<'t>,
        rest: &[Token],
        whose: Whose,
    ) -> P {
        let mut told = P::default();
        let list = told.properties();
        let mut rest = rest;
        let mut done = OrderedSet::new();
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
            done.insert("tag");
            rest = more;
        }
        let set = &mut |name: &str, text: &str| {
            if name == "tag" {
                limits::check_line_tag(text).map_err(PropertyError::new)?;
            }
            told.set(name, text)
        };
        self.settings_line(line, list, rest, whose, done, set);
        told
    }

    /// Says that a list is full.
    pub(super) fn held(
        &mut self,
        line: Line<'t>,
        at: Range<usize>,
        held: Result<(), usize>,
        what: &'static str,
    ) {
        if let Err(most) = held {
            self.error(line, at, full(what, most), None);
        }
    }

    /// A line of properties alone, of which those that are `done` are set already.
    pub(super) fn settings_line(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        rest: &[Token],
        whose: Whose,
        mut done: OrderedSet<&'static str>,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) {
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Pair { key, value, value_at } => {
                    let at = *value_at..token.end;
                    self.pair(line, list, whose, (key, here), (value, at), &mut done, set);
                }
                Word::Bare(text) => {
                    self.bare(line, list, whose, (text, here), &mut done, set);
                }
                Word::Quoted(text) if list.iter().any(|it| it.name == "what") => {
                    let at = here.clone();
                    self.pair(line, list, whose, ("what", at), (text, here), &mut done, set);
                }
                Word::Quoted(_) => self.error(line, here, say!("text-unnamed"), say!("text-unnamed-help")),
            }
        }
    }

    /// `key=value` of a property.
    #[expect(
        clippy::too_many_arguments,
        reason = "one call for all three places where properties are written"
    )]
    pub(super) fn pair(
        &mut self,
        line: Line<'t>,
        list: &'static [Property],
        whose: Whose,
        (key, key_at): (&str, Range<usize>),
        (value, value_at): (&str, Range<usize>),
        done: &mut OrderedSet<&'static str>,
        set: &mut dyn FnMut(&str, &str) -> Result<(), PropertyError>,
    ) {
        let Some(property) = list.iter().find(|property| property.name == key) else {
            let names = || list.iter().map(|p| p.name).chain(whose.keys().iter().copied());
            let all: Vec<&str> = names().collect();
            let help = closest(key, names()).map_or_else(
                || say!("text-there-are", words = all.join(", ")),
                |meant| say!("text-meant", meant = meant),
            );
            let message = say!("text-no-property", whose = whose.said(), key = key);
            return self.error(line, key_at, message, help);
        };
        if !done.insert(property.name) {
            let message = say!("text-key-twice", key = key);
            return self.error(line, key_at, message, say!("text-leave-one"));
        }
        if let Err(why) = set(property.name, value) {
            let message = say!("text-value", key = key, why = why.said);
            self.error(line, value_at, message, help_for(property, value));
        }
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

/// Puts a line at the end of a list, unless the list is full: then how long it may be.
pub(super) fn push<T>(list: &mut Vec<T>, line: T, most: usize) -> Result<(), usize> {
    if list.len() >= most {
        return Err(most);
    }
    list.push(line);
    Ok(())
}
