//! Which thing a phrase tells of, and where one thing in it ends and the next begins.

use super::super::lexicon::Meaning;
use super::super::phrase::{Element, Is, number};

/// The thing that a phrase tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Subject {
    Battery,
    Second,
    Alternator,
    Head,
    Processor,
    Amplifier,
    Speakers,
    Load,
}

/// What a phrase tells of; the first of these that it names.
pub(super) fn subject(phrase: &[Element]) -> Option<Subject> {
    let means = |which: fn(Meaning) -> bool| {
        phrase
            .iter()
            .any(|it| !it.used && matches!(it.is, Is::Means(means) if which(means)))
    };
    let of_battery = means(|it| matches!(it, Meaning::Battery | Meaning::Chemistry(_) | Meaning::Cranking))
        || phrase.iter().any(|it| matches!(it.is, Is::AmpHours(_)));
    if means(|it| matches!(it, Meaning::Isolator(_) | Meaning::Charger))
        || of_battery && means(|it| it == Meaning::Second)
    {
        Some(Subject::Second)
    } else if means(|it| it == Meaning::Alternator) {
        Some(Subject::Alternator)
    } else if means(|it| it == Meaning::Processor) {
        Some(Subject::Processor)
    } else if means(|it| matches!(it, Meaning::Load(_))) {
        Some(Subject::Load)
    } else if means(|it| matches!(it, Meaning::Head | Meaning::LineOutputs | Meaning::SpeakerOutputs)) {
        Some(Subject::Head)
    } else if means(|it| matches!(it, Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)) {
        Some(Subject::Amplifier)
    } else if of_battery {
        Some(Subject::Battery)
    } else if means(|it| {
        matches!(
            it,
            Meaning::Plays(_)
                | Meaning::Doors
                | Meaning::Components
                | Meaning::ThreeWay
                | Meaning::Active
                | Meaning::FullRange
                | Meaning::Speakers
        )
    }) {
        Some(Subject::Speakers)
    } else {
        None
    }
}

/// Whether a meaning names a thing, so that a phrase with two of them wants a comma.
pub(super) fn is_thing(means: Meaning) -> bool {
    matches!(
        means,
        Meaning::Battery
            | Meaning::Alternator
            | Meaning::Isolator(_)
            | Meaning::Charger
            | Meaning::Head
            | Meaning::Processor
            | Meaning::Amplifier
            | Meaning::Speakers
            | Meaning::Plays(_)
            | Meaning::Components
            | Meaning::ThreeWay
            | Meaning::FullRange
            | Meaning::Load(_)
    )
}

/// Whether an element says where speakers are and nothing else.
pub(super) fn is_place(is: Is) -> bool {
    matches!(
        is,
        Is::Means(Meaning::Plays(_) | Meaning::Stands(_) | Meaning::Doors | Meaning::Speakers)
    )
}

/// Where in a phrase speakers end and what they hang on begins: `at` before an amplifier, or before `2 × 120 W`.
pub(super) fn driven_by(phrase: &[Element]) -> Option<usize> {
    let is = |at: usize| phrase.get(at).map(|it| it.is);
    let at = (1..phrase.len()).find(|at| {
        let amplifier = matches!(
            is(at + 1),
            Some(Is::Means(Meaning::Amplifier | Meaning::Mono | Meaning::Stereo))
        );
        let power = matches!(is(at + 1), Some(Is::Times(_))) && matches!(is(at + 2), Some(Is::Watts(_)));
        is(*at) == Some(Is::Means(Meaning::At)) && (amplifier || power)
    })?;
    let before = phrase.get(..at)?;
    let speakers = before.iter().any(|it| {
        is_place(it.is)
            || matches!(
                it.is,
                Is::Means(
                    Meaning::Components
                        | Meaning::ThreeWay
                        | Meaning::Active
                        | Meaning::FullRange
                        | Meaning::DualCoil
                )
            )
    });
    let amplifier = before.iter().any(|it| {
        matches!(
            it.is,
            Is::Means(Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)
        )
    });
    (speakers && !amplifier).then_some(at)
}

/// Where in a phrase of an amplifier that was told of speakers are told of that are more than a place: `mono 500 W at 2 ohm one dual
/// coil sub 2 × 4 ohm`. A number right before them is theirs.
pub(super) fn speakers_begin(phrase: &[Element]) -> Option<usize> {
    let is = |it: &Element, tells: fn(Meaning) -> bool| matches!(it.is, Is::Means(means) if tells(means));
    let kind = phrase.iter().position(|it| {
        is(it, |it| {
            matches!(
                it,
                Meaning::DualCoil
                    | Meaning::SingleCoil
                    | Meaning::Components
                    | Meaning::ThreeWay
                    | Meaning::Active
                    | Meaning::FullRange
                    | Meaning::Pair
            )
        })
    })?;
    let mut begins = kind;
    while let Some(before) = begins.checked_sub(1).and_then(|at| phrase.get(at)) {
        let power = begins
            .checked_sub(2)
            .and_then(|at| phrase.get(at))
            .is_some_and(|it| matches!(it.is, Is::Times(_)));
        let counts = number(before.is).is_some() && !power;
        if !(counts || is_place(before.is)) {
            break;
        }
        begins -= 1;
    }
    let told = phrase.get(..begins)?.iter().any(|it| {
        matches!(it.is, Is::Watts(_))
            || is(it, |it| {
                matches!(it, Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)
            })
    });
    told.then_some(begins)
}
