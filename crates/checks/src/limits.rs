//! The limits that checks hold things against: what the user set in the job wins over the profile.

use crate::explain::LimitLine;
use model::Settings;
use model::job::Profile;
use reference::protection::Limit;
use reference::{How, Source};
use words::{Saying, Unit, figure, say};

/// A limit by its key: what the user set, else what the profile says; `None` when no profile knows it.
#[must_use]
pub fn limit(settings: &Settings, key: &str) -> Option<f64> {
    settings
        .limits
        .get(key)
        .copied()
        .or_else(|| reference::protection::limit(settings.conditions.profile, key).map(|limit| limit.value))
}

/// A limit as it stands in a job.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitInForce {
    /// Its name in files.
    pub key: &'static str,
    /// What is limited, in words.
    pub title: Saying,
    /// Its unit; empty for a share, a factor or a count.
    pub unit: &'static str,
    /// What the profile says.
    pub published: f64,
    /// What the user set instead.
    pub set: Option<f64>,
    /// Where the profile's figure comes from, and how that is known.
    pub source: Saying,
    /// A remark: exceptions, the range considered.
    pub note: Saying,
}

/// All limits of the profile that a job is judged by, with those that the user set otherwise.
#[must_use]
pub fn limits_in_force(settings: &Settings) -> Vec<LimitInForce> {
    let profile = settings.conditions.profile;
    reference::protection::limits(profile)
        .iter()
        .map(|limit| LimitInForce {
            key: limit.key,
            title: title(limit),
            unit: limit.unit,
            published: limit.value,
            set: settings.limits.get(limit.key).copied(),
            source: source(&limit.source),
            note: note(profile, limit),
        })
        .collect()
}

fn title(limit: &Limit) -> Saying {
    Saying::new(format!("limit-{}", limit.key))
}

fn note(profile: Profile, limit: &Limit) -> Saying {
    let common = reference::protection::limit(Profile::CommonPractice, limit.key);
    let is_own = profile == Profile::SmallCraft && common.is_none_or(|common| common.note != limit.note);
    let own = if is_own { "-small-craft" } else { "" };
    Saying::new(format!("limit-{}-note{own}", limit.key))
}

/// A source with how it is known; what was read needs no word for it.
pub(crate) fn source(source: &Source) -> Saying {
    let document = document(source.document);
    match source.how {
        How::Read => document,
        How::Memory => say!("source-from-memory", document = document),
        How::Derived => say!("source-derived", document = document),
        How::Practice => say!("source-practice", document = document),
    }
}

/// A document. What consists of names and numbers alone reads the same in every language; what has words in it is a
/// message, called after its letters and digits.
fn document(text: &'static str) -> Saying {
    let is_word = |word: &str| word.len() > 3 && word.bytes().any(|letter| letter.is_ascii_lowercase());
    if !text.split(|c: char| !c.is_ascii_alphabetic()).any(is_word) {
        return say!("source-as-stated", document = text);
    }
    let mut key = "source".to_owned();
    let mut between = true;
    for c in text.chars() {
        if c.is_ascii_alphanumeric() {
            if between {
                key.push('-');
            }
            key.push(c.to_ascii_lowercase());
        }
        between = !c.is_ascii_alphanumeric();
    }
    Saying::new(key)
}

/// A limit as the page of a check tells it.
pub(crate) fn line(key: &'static str) -> LimitLine {
    let rows: Vec<(Profile, &Limit)> = Profile::ALL
        .iter()
        .filter_map(|profile| reference::protection::limit(*profile, key).map(|limit| (*profile, limit)))
        .collect();
    LimitLine {
        key,
        values: rows
            .iter()
            .map(|(profile, limit)| (*profile, figure(limit.value, Unit::of(limit.unit))))
            .collect(),
        what: Saying::new(format!("limit-{key}")),
        sources: rows
            .iter()
            .map(|(profile, limit)| (*profile, source(&limit.source)))
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::Words;

    /// The English of every limit stands beside its figure, where whoever changes the figure reads it; the messages say
    /// the same.
    #[test]
    fn every_limit_has_its_messages_and_they_say_what_stands_beside_the_figure() {
        let words = Words::english();
        for profile in Profile::ALL {
            for limit in reference::protection::limits(*profile) {
                assert_eq!(words.say(&title(limit)), limit.title);
                assert_eq!(words.say(&note(*profile, limit)), limit.note);
                assert_eq!(words.say(&source(&limit.source)), limit.source.to_string());
            }
        }
    }
}
