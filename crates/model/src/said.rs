//! Names of parts, properties and choices as sayings. The English words stand beside their declarations, where the text
//! form's help and the command line read them; a test holds the messages against them.

use crate::kinds::{Group, PartKind};
use crate::property::Property;
use words::Saying;

/// Longest piece of a key that is made of a text, in letters.
const LONGEST_KEY: usize = 48;

/// The key of a message about a text: its letters and digits in lower case, everything else as `-`.
fn key(family: &str, text: &str) -> String {
    let mut key = family.to_owned();
    let start = key.len();
    for c in text.chars() {
        if c.is_ascii_alphanumeric() {
            key.push(c.to_ascii_lowercase());
        } else if key.len() > start && !key.ends_with('-') {
            key.push('-');
        }
        if key.len() - start >= LONGEST_KEY {
            break;
        }
    }
    key.truncate(key.trim_end_matches('-').len());
    key
}

/// The words on screen of one of the choices of a [`crate::property::Shape::Choice`], by its English title.
#[must_use]
pub fn choice(title: &str) -> Saying {
    Saying::new(key("choice-", title))
}

impl PartKind {
    /// The kind's name on screen.
    #[must_use]
    pub fn said(&self) -> Saying {
        Saying::new(format!("kind-{}", self.word()))
    }
    /// The same within a sentence: English writes it small there.
    #[must_use]
    pub fn said_within(&self) -> Saying {
        Saying::new(format!("kind-within-{}", self.word()))
    }
}

impl Group {
    /// The words on screen.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(key("group-", self.title()))
    }
}

impl Property {
    /// Its name on screen.
    #[must_use]
    pub fn said(&self) -> Saying {
        name_of(self.name)
    }
    /// What it is and what it decides, in a sentence.
    #[must_use]
    pub fn about(&self) -> Saying {
        Saying::new(key("about-", self.doc.trim()))
    }
}

/// The name on screen of a property of this name.
#[must_use]
pub fn name_of(property: &str) -> Saying {
    Saying::new(format!("field-{property}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::body::{BodyShape, OwnPassage, OwnPlace};
    use crate::conductor::{Colour, FittedBy};
    use crate::job::{Conditions, Ending, SheetKind, VehicleInfo, Wire};
    use crate::property::{PropertySet, Shape};

    #[test]
    fn every_name_has_its_message_and_the_english_is_what_is_declared() {
        let mut wrong = Vec::new();
        let mut hold = |said: Saying, declared: &str| {
            if said.to_string() != declared {
                wrong.push(format!("{} = {declared}", said.key()));
            }
        };
        let mut sets = vec![
            Wire::list(),
            Ending::list(),
            Conditions::list(),
            VehicleInfo::list(),
            BodyShape::list(),
            OwnPlace::list(),
            OwnPassage::list(),
            crate::mounting::Mounting::list(),
            crate::handling::Handling::list(),
            crate::laying::Laying::list(),
            crate::tuning::Tuning::list(),
        ];
        // Lines of forms that say by themselves what they are about.
        let lines = [
            crate::thread::Complaint::list(),
            crate::thread::IntakeNote::list(),
            crate::thread::Offer::list(),
            crate::thread::Rates::list(),
        ];
        for word in PartKind::WORDS {
            let kind = PartKind::from_word(word).expect("a word of the list");
            hold(kind.said(), kind.title());
            hold(kind.said_within(), &crate::letters::in_lower(kind.title()));
            sets.push(kind.properties());
        }
        for group in Group::ALL {
            hold(group.said(), group.title());
        }
        for sheet in SheetKind::ALL {
            hold(sheet.said(), sheet.title());
        }
        for by in FittedBy::ALL {
            hold(by.said(), by.title());
        }
        for colour in Colour::ALL {
            hold(choice(colour.title()), colour.title());
        }
        for property in sets.iter().copied().flatten() {
            hold(property.about(), property.doc.trim());
        }
        for guard in crate::laying::Guard::ALL {
            hold(guard.said(), guard.title());
        }
        for property in sets.into_iter().chain(lines).flatten() {
            hold(property.said(), &property.name.replace('-', " "));
            if let Shape::Choice(choices) = property.shape {
                for (_, title) in choices {
                    hold(choice(title), title);
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    }
}
