//! What a break did, version by version, held against the analysis: first what the lesson names, then what else went
//! silent, went off or has to open. Nothing is taken from the lesson's word.

use crate::breaks::Break;
use crate::effects::Effect;
use crate::lesson::Version;
use crate::measures::{Number, driven_by_off, measure};
use crate::told::Shown;
use model::PartKind;

/// How something stood before a break and how it stands after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turn {
    /// Before.
    pub was: bool,
    /// After.
    pub is: bool,
}

/// Something that follows from a break, or stays in spite of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Happening {
    /// Speakers play or are silent.
    Sound {
        /// The speakers.
        things: Vec<String>,
        /// Whether they played and play.
        turn: Turn,
        /// What drives them and is off now: why they are silent though their loops may be whole.
        off: Vec<String>,
    },
    /// Equipment is on or off.
    Power(Vec<String>, Turn),
    /// Fuses and breakers have to open, or hold.
    Opens(Vec<String>, Turn),
    /// A check finds something.
    Finding(String, Turn),
    /// A number of the engine; where it has none, nothing.
    Number {
        /// Its name, see [`crate::measures`].
        name: String,
        /// Of what.
        at: String,
        /// Before.
        was: Option<Number>,
        /// After.
        is: Option<Number>,
    },
}

/// What a break did to a version: how that stood before, and how it stands now.
#[must_use]
pub fn aftermath(broken: &Break, version: Version, before: &Shown, after: &Shown) -> Vec<Happening> {
    let mut all = Vec::new();
    for follows in broken.effects.iter().filter(|it| it.version == version) {
        add(&mut all, &follows.effect, before, after);
    }
    // The rest only where it turned.
    for (id, part) in &before.sheet.parts {
        let tag = part.tag.clone();
        let effect = match &part.is {
            PartKind::Speaker(_) => Effect::Plays(tag),
            PartKind::Fuse(_) | PartKind::Breaker(_) => Effect::Opens(tag),
            _ if before.analysis.study.circuits.contains_key(id) => Effect::On(tag),
            _ => continue,
        };
        let holds = |shown: &Shown| effect.holds(shown.judged()).unwrap_or(false);
        if holds(before) != holds(after) {
            add(&mut all, &effect, before, after);
        }
    }
    all
}

fn add(all: &mut Vec<Happening>, effect: &Effect, before: &Shown, after: &Shown) {
    // What is gone neither plays nor is on.
    let turn = |effect: &Effect| {
        let holds = |shown: &Shown| effect.holds(shown.judged()).unwrap_or(false);
        Turn {
            was: holds(before),
            is: holds(after),
        }
    };
    let new = match effect {
        Effect::Silent(at) | Effect::Plays(at) => {
            let turn = turn(&Effect::Plays(at.clone()));
            Happening::Sound {
                things: vec![at.clone()],
                turn,
                off: if turn.is { Vec::new() } else { off(after, at) },
            }
        }
        Effect::Off(at) | Effect::On(at) => Happening::Power(vec![at.clone()], turn(&Effect::On(at.clone()))),
        Effect::Opens(at) => Happening::Opens(vec![at.clone()], turn(effect)),
        Effect::Finds(check) | Effect::Clears(check) => {
            Happening::Finding(check.clone(), turn(&Effect::Finds(check.clone())))
        }
        Effect::Compares { name, at, .. } => Happening::Number {
            name: name.clone(),
            at: at.clone(),
            was: measure(before.judged(), name, at).ok(),
            is: measure(after.judged(), name, at).ok(),
        },
    };
    // What happens to several alike is told once, whatever of several amplifiers drives them.
    for known in &mut *all {
        match (known, &new) {
            (
                Happening::Sound { things, turn, off },
                Happening::Sound {
                    things: more,
                    turn: same,
                    off: others,
                },
            ) if turn == same && off.is_empty() == others.is_empty() => {
                join(things, more);
                join(off, others);
            }
            (Happening::Power(old, turn), Happening::Power(more, same))
            | (Happening::Opens(old, turn), Happening::Opens(more, same))
                if turn == same =>
            {
                join(old, more);
            }
            (known, new) if known == new => {}
            _ => continue,
        }
        return;
    }
    all.push(new);
}

/// Adds what is not there yet.
fn join(all: &mut Vec<String>, more: &[String]) {
    for tag in more {
        if !all.contains(tag) {
            all.push(tag.clone());
        }
    }
}

/// The tag of what drives a speaker and is off.
fn off(shown: &Shown, speaker: &str) -> Vec<String> {
    let found = shown.sheet.part_by_tag(speaker).and_then(|(id, _)| {
        let driver = shown.analysis.study.drivers.get(&id)?;
        let part = driven_by_off(shown.judged(), driver)?;
        Some(shown.sheet.parts.get(&part)?.tag.clone())
    });
    found.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BuiltIn, LESSONS, Told};

    /// Of the built-in lessons it is known that what they tell follows (tests/lessons.rs); here it has to be told in full.
    #[test]
    fn everything_that_a_lesson_tells_of_a_break_is_in_its_aftermath() {
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            let told = Told::of(&lesson);
            for broken in &lesson.breaks {
                for version in Version::BOTH {
                    let after = told.broken(broken, version).unwrap_or_default();
                    let all = aftermath(broken, version, told.shown(version), &after);
                    for follows in broken.effects.iter().filter(|it| it.version == version) {
                        let is_told = all.iter().any(|happening| match (&follows.effect, happening) {
                            (Effect::Silent(at), Happening::Sound { things, turn, .. }) => {
                                things.contains(at) && !turn.is
                            }
                            (Effect::Plays(at), Happening::Sound { things, turn, .. }) => {
                                things.contains(at) && turn.is
                            }
                            (Effect::Off(at), Happening::Power(tags, turn)) => tags.contains(at) && !turn.is,
                            (Effect::On(at), Happening::Power(tags, turn)) => tags.contains(at) && turn.is,
                            (Effect::Opens(at), Happening::Opens(tags, turn)) => tags.contains(at) && turn.is,
                            (Effect::Finds(at), Happening::Finding(check, turn)) => check == at && turn.is,
                            (Effect::Clears(at), Happening::Finding(check, turn)) => check == at && !turn.is,
                            (
                                Effect::Compares {
                                    name,
                                    at,
                                    above,
                                    number,
                                    ..
                                },
                                Happening::Number {
                                    name: n, at: a, is, ..
                                },
                            ) => {
                                name == n
                                    && at == a
                                    && is.is_some_and(
                                        |is| if *above { is.0 > *number } else { is.0 < *number },
                                    )
                            }
                            _ => false,
                        });
                        assert!(
                            is_told,
                            "{}, {version:?}: {}: {all:?}",
                            built_in.key, follows.effect
                        );
                    }
                }
            }
        }
    }

    /// The second amplifier returns through the first one's terminal: with that ground off both are off; with grounds of
    /// their own the second stays on. The lesson's own words for the rest are taken away: what turned is told all the same.
    #[test]
    fn what_the_lesson_does_not_name_is_told_where_it_turned() {
        let lesson = BuiltIn::of("daisy-chained-grounds").expect("built in").lesson();
        let told = Told::of(&lesson);
        let named = &lesson.breaks[0];
        let unnamed = Break {
            effects: Vec::new(),
            ..named.clone()
        };
        let all = |broken: &Break, version| {
            let after = told.broken(broken, version).expect("breaks");
            aftermath(broken, version, told.shown(version), &after)
        };
        let off = |tags: &[&str]| {
            let tags = tags.iter().map(|tag| (*tag).to_owned()).collect();
            Happening::Power(tags, Turn { was: true, is: false })
        };
        let tags = |tags: &[&str]| -> Vec<String> { tags.iter().map(|tag| (*tag).to_owned()).collect() };
        // Their loops are whole: they are silent because what drives them is off.
        let silent = |things: &[&str], amplifiers: &[&str]| Happening::Sound {
            things: tags(things),
            turn: Turn { was: true, is: false },
            off: tags(amplifiers),
        };
        for broken in [named, &unnamed] {
            let bad = [off(&["A1", "A2"]), silent(&["LS1", "LS2", "LS3"], &["A1", "A2"])];
            assert_eq!(all(broken, Version::Bad), bad);
        }
        let first = silent(&["LS1"], &["A1"]);
        let on = Happening::Power(vec!["A2".to_owned()], Turn { was: true, is: true });
        assert_eq!(all(named, Version::Good), [off(&["A1"]), on, first.clone()]);
        assert_eq!(all(&unnamed, Version::Good), [off(&["A1"]), first]);
    }
}
