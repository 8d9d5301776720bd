//! A text as phrases: words with what they mean, numbers with their units.

use super::lex::{Piece, Token, cut};
use super::lexicon::{MOST_WORDS, Meaning, all_words, compound, meaning};
use model::text::closest;
use std::ops::Range;
use words::{Saying, say};

/// Words that were not understood.
#[derive(Clone, Debug, PartialEq)]
pub struct NotUnderstood {
    /// Where they stand in the text, in bytes.
    pub at: Range<usize>,
    /// The words.
    pub text: String,
    /// What is wrong with them, and what would do.
    pub why: Saying,
}

/// What an element of a phrase is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Is {
    Number(f64),
    Watts(f64),
    Ohms(f64),
    Amps(f64),
    AmpHours(f64),
    /// So many of what follows: the number before `×`.
    Times(f64),
    Means(Meaning),
}

/// An element of a phrase.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Element {
    pub(super) is: Is,
    pub(super) at: Range<usize>,
    pub(super) used: bool,
}

/// Makes phrases of a text, and notes what of it means nothing.
pub(super) struct Phrases<'t> {
    pub(super) text: &'t str,
    pub(super) not: Vec<NotUnderstood>,
}

impl Phrases<'_> {
    pub(super) fn not(&mut self, at: &Range<usize>, why: Saying) {
        let text = self.text.get(at.clone()).unwrap_or_default().to_owned();
        self.not.push(NotUnderstood {
            at: at.clone(),
            text,
            why,
        });
    }

    /// The phrases of the text, their numbers joined with their units.
    pub(super) fn phrases(&mut self) -> Vec<Vec<Element>> {
        let tokens = cut(self.text);
        let mut phrases = vec![Vec::new()];
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            at += 1;
            let mut put = |is: Is, at: Range<usize>| {
                if let Some(phrase) = phrases.last_mut() {
                    phrase.push(Element { is, at, used: false });
                }
            };
            match &token.is {
                Piece::Number(number) => {
                    let next = tokens.get(at).map(|it| &it.is);
                    let unit = match next {
                        Some(Piece::Word(word)) => unit(word),
                        _ => None,
                    };
                    match (next, unit) {
                        // `2-way` are components.
                        (Some(Piece::Word(word)), _)
                            if (*number == 2.0 || *number == 3.0)
                                && matches!(word.as_str(), "way" | "ways" | "wege" | "weg") =>
                        {
                            let end = tokens.get(at).map_or(token.at.end, |it| it.at.end);
                            at += 1;
                            let ways = if *number == 2.0 {
                                Meaning::Components
                            } else {
                                Meaning::ThreeWay
                            };
                            put(Is::Means(ways), token.at.start..end);
                        }
                        (Some(Piece::Times), _) => {
                            let end = tokens.get(at).map_or(token.at.end, |it| it.at.end);
                            at += 1;
                            put(Is::Times(*number), token.at.start..end);
                        }
                        (_, Some(unit)) => {
                            let end = tokens.get(at).map_or(token.at.end, |it| it.at.end);
                            at += 1;
                            let whole = token.at.start..end;
                            match unit {
                                Meaning::Watt => put(Is::Watts(*number), whole),
                                Meaning::Ohm => put(Is::Ohms(*number), whole),
                                Meaning::Ampere => put(Is::Amps(*number), whole),
                                Meaning::AmpereHour => put(Is::AmpHours(*number), whole),
                                // The size of a speaker decides nothing here.
                                Meaning::Inch => {}
                                _ => self.not(&whole, say!("start-no-volts")),
                            }
                        }
                        _ => put(Is::Number(*number), token.at.clone()),
                    }
                }
                Piece::Word(_) => at = self.words(&tokens, at - 1, &mut phrases),
                Piece::End => phrases.push(Vec::new()),
                // `4 × 75 W + 1 × 300 W` is one thing.
                Piece::Plus => {
                    let goes_on = matches!(
                        tokens.get(at..at + 2),
                        Some([
                            Token {
                                is: Piece::Number(_),
                                ..
                            },
                            Token { is: Piece::Times, .. }
                        ])
                    );
                    if !goes_on {
                        phrases.push(Vec::new());
                    }
                }
                Piece::Times | Piece::Sign(_) => self.not(&token.at, say!("start-no-sign")),
            }
        }
        phrases.retain(|phrase| phrase.iter().any(|it| it.is != Is::Means(Meaning::And)));
        phrases
    }

    /// The entry that begins with the word at a place of the tokens, the longest there is. Gives the place behind it.
    fn words(&mut self, tokens: &[Token], start: usize, phrases: &mut Vec<Vec<Element>>) -> usize {
        let mut together = String::new();
        let mut found: Option<(Meaning, usize)> = None;
        for end in start..(start + MOST_WORDS).min(tokens.len()) {
            let Some(Piece::Word(word)) = tokens.get(end).map(|it| &it.is) else {
                break;
            };
            if !together.is_empty() {
                together.push(' ');
            }
            together.push_str(word);
            if let Some(it) = meaning(&together) {
                found = Some((it, end + 1));
            }
        }
        let Some(first) = tokens.get(start) else {
            return start + 1;
        };
        let Piece::Word(word) = &first.is else {
            return start + 1;
        };
        let (meanings, end) = match found {
            // The unit of a number was taken with it; what is left is the article.
            Some((Meaning::Ampere, end)) if word == "a" => (vec![Meaning::Filler], end),
            Some((it, end)) => (vec![it], end),
            None => match compound(word) {
                Some(all) => (all, start + 1),
                None => {
                    let why = match closest(word, all_words()) {
                        Some(meant) => say!("start-unknown-meant", word = word.as_str(), meant = meant),
                        None => say!("start-unknown", word = word.as_str()),
                    };
                    self.not(&first.at, why);
                    return start + 1;
                }
            },
        };
        let last = tokens
            .get(end.saturating_sub(1))
            .map_or(first.at.end, |it| it.at.end);
        for it in meanings {
            match it {
                Meaning::Filler => {}
                Meaning::HookUp => self.not(&(first.at.start..last), say!("start-hook-up-chosen")),
                // Marks what it begins: that goes with what stands before it.
                Meaning::And => phrases.push(vec![Element {
                    is: Is::Means(Meaning::And),
                    at: first.at.start..last,
                    used: true,
                }]),
                it => {
                    if let Some(phrase) = phrases.last_mut() {
                        phrase.push(Element {
                            is: Is::Means(it),
                            at: first.at.start..last,
                            used: false,
                        });
                    }
                }
            }
        }
        end
    }
}

/// The unit that a word is.
fn unit(word: &str) -> Option<Meaning> {
    // The article is the unit behind a number.
    let means = if word == "a" {
        Some(Meaning::Ampere)
    } else {
        meaning(word)
    };
    means.filter(|it| {
        matches!(
            it,
            Meaning::Watt
                | Meaning::Ohm
                | Meaning::Ampere
                | Meaning::AmpereHour
                | Meaning::Volt
                | Meaning::Inch
        )
    })
}

pub(super) fn has(phrase: &[Element], means: Meaning) -> bool {
    phrase.iter().any(|it| it.is == Is::Means(means))
}

/// Marks a meaning as used; whether it was there.
pub(super) fn take(phrase: &mut [Element], means: Meaning) -> bool {
    let mut found = false;
    for it in phrase.iter_mut().filter(|it| it.is == Is::Means(means)) {
        it.used = true;
        found = true;
    }
    found
}

/// A whole number of things; nothing for what is none.
pub(super) fn number(is: Is) -> Option<u8> {
    match is {
        Is::Means(Meaning::Number(count)) => Some(count),
        Is::Number(_) | Is::Times(_) => Some(small(count_of(is))),
        _ => None,
    }
}

fn count_of(is: Is) -> f64 {
    match is {
        Is::Number(count) | Is::Times(count) => count,
        _ => 0.0,
    }
}

pub(super) fn small(number: f64) -> u8 {
    // Saturates; what is too large is told by who counts.
    number.round().clamp(0.0, 255.0) as u8
}

/// How many there are of what a phrase names: a number right before its noun and before no unit: `2 mono amps`, `two lights`.
pub(super) fn how_many(phrase: &mut [Element]) -> Option<u8> {
    let mut found = None;
    for at in 0..phrase.len() {
        let noun = matches!(
            phrase.get(at + 1).map(|it| it.is),
            Some(Is::Means(
                Meaning::Amplifier | Meaning::Mono | Meaning::Stereo | Meaning::Load(_)
            ))
        );
        if let Some(it) = phrase.get_mut(at)
            && noun
            && matches!(
                it.is,
                Is::Number(_) | Is::Times(_) | Is::Means(Meaning::Number(_))
            )
        {
            found = number(it.is);
            it.used = true;
        }
    }
    found
}
