//! Who reads: language and units.

use serde::{Deserialize, Serialize};

/// A language that texts exist in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Language {
    /// English.
    #[default]
    #[serde(rename = "en")]
    English,
    /// German.
    #[serde(rename = "de")]
    German,
}

impl Language {
    /// All of them.
    pub const ALL: &'static [Self] = &[Self::English, Self::German];
    /// Its tag by BCP 47, also the folder of its texts.
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }
    /// Its name in itself, as a list of languages shows it.
    #[must_use]
    pub fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }
    /// The language of a tag such as `de-AT`, where we have it.
    #[must_use]
    pub fn of_tag(tag: &str) -> Option<Self> {
        let main = tag.split(['-', '_']).next().unwrap_or_default();
        Self::ALL
            .iter()
            .copied()
            .find(|language| language.tag().eq_ignore_ascii_case(main))
    }
    /// Whether its messages are part of this program.
    #[must_use]
    pub fn built_in(self) -> bool {
        match self {
            Self::English => true,
            Self::German => cfg!(feature = "german"),
        }
    }
    /// The sign between whole and tenths.
    #[must_use]
    pub fn decimal(self) -> char {
        match self {
            Self::English => '.',
            Self::German => ',',
        }
    }
    /// The plural class of a whole number (CLDR): both languages know one and many.
    pub(crate) fn class(self, count: usize) -> &'static str {
        if count == 1 { "one" } else { "other" }
    }
}

/// What lengths are read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lengths {
    /// Metres and centimetres.
    #[default]
    Metres,
    /// Feet and inches.
    Feet,
}

/// What wire sizes are read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sizes {
    /// Square millimetres (IEC 60228).
    #[default]
    SquareMillimetres,
    /// Gauge numbers (ASTM B258).
    Awg,
}

/// How somebody reads. It belongs to the reader, not to the job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Reader {
    /// The language.
    pub language: Language,
    /// Lengths.
    pub lengths: Lengths,
    /// Sizes of wires.
    pub sizes: Sizes,
}

impl Reader {
    /// How somebody reads whose languages are these tags (BCP 47), the liked ones first: the first language that we have, and
    /// metric units unless the first tag names the United States.
    #[must_use]
    pub fn of_tags<'a>(tags: impl IntoIterator<Item = &'a str>) -> Self {
        let mut tags = tags.into_iter().peekable();
        let american = tags.peek().is_some_and(|first| {
            first
                .split(['-', '_'])
                .skip(1)
                .any(|piece| piece.eq_ignore_ascii_case("US"))
        });
        Self {
            language: tags.find_map(Language::of_tag).unwrap_or_default(),
            lengths: if american { Lengths::Feet } else { Lengths::Metres },
            sizes: if american {
                Sizes::Awg
            } else {
                Sizes::SquareMillimetres
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_browsers_languages_say_how_one_reads() {
        let german = Reader {
            language: Language::German,
            ..Reader::default()
        };
        let american = Reader {
            lengths: Lengths::Feet,
            sizes: Sizes::Awg,
            ..Reader::default()
        };
        assert_eq!(Reader::of_tags([]), Reader::default());
        assert_eq!(Reader::of_tags(["de-AT", "en-US"]), german);
        assert_eq!(Reader::of_tags(["fr-FR", "de", "en-US"]), german);
        assert_eq!(Reader::of_tags(["en-GB", "en"]), Reader::default());
        assert_eq!(Reader::of_tags(["en-Latn-US", "de"]), american);
        assert_eq!(
            Reader::of_tags(["es-US"]),
            american,
            "a language that we do not have, in a country whose units we know"
        );
    }
}
