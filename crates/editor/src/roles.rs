//! Which terminals belong together: what glows while a run is pulled, and which parts are offered when a run is dropped
//! on empty paper. All of it is a suggestion; nothing is forbidden.

use model::Role;

/// What a lead does, told from a terminal's role.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Lead {
    Live,
    Return,
    Passes,
    TurnOn,
    LineIn,
    LineOut,
    SpeakerSource(bool),
    SpeakerTaker(bool),
    SpeakerPasses,
    Control,
}

fn lead(role: Role) -> Lead {
    match role {
        Role::SupplyPlus => Lead::Live,
        Role::SupplyMinus | Role::Body => Lead::Return,
        Role::Through => Lead::Passes,
        Role::TurnOnIn | Role::TurnOnOut => Lead::TurnOn,
        Role::LineIn(_) => Lead::LineIn,
        Role::LineOut(_) => Lead::LineOut,
        Role::SpeakerOut { positive, .. } => Lead::SpeakerSource(positive),
        Role::LevelIn { positive, .. } | Role::Coil { positive, .. } => Lead::SpeakerTaker(positive),
        Role::SpeakerThrough => Lead::SpeakerPasses,
        Role::Control => Lead::Control,
    }
}

/// Whether a run between two such terminals makes sense.
#[must_use]
pub fn fits(from: Role, to: Role) -> bool {
    use Lead::{
        Control, LineIn, LineOut, Live, Passes, Return, SpeakerPasses, SpeakerSource, SpeakerTaker, TurnOn,
    };
    let one_way = |a: Lead, b: Lead| match (a, b) {
        (LineOut, LineIn) => true,
        (LineIn | LineOut, _) | (_, LineIn | LineOut) => false,
        // Harness plugs and splices pass anything.
        (Passes, _) => true,
        (Live, Live) | (Return, Return) | (TurnOn, TurnOn) => true,
        (Live | Return | TurnOn, Control) | (Live, TurnOn) => true,
        // Coils in series join plus to minus, leads join like to like.
        (SpeakerSource(a), SpeakerTaker(b)) => a == b,
        (SpeakerTaker(_), SpeakerTaker(_)) | (SpeakerSource(_) | SpeakerTaker(_), SpeakerPasses) => true,
        (SpeakerPasses, SpeakerPasses) => true,
        _ => false,
    };
    one_way(lead(from), lead(to)) || one_way(lead(to), lead(from))
}

/// Kinds to offer where a run from such a terminal is dropped on empty paper, likeliest first.
#[must_use]
pub fn offers(from: Role) -> &'static [&'static str] {
    match from {
        Role::SupplyPlus | Role::Through => &[
            "fuse",
            "block",
            "load",
            "switch",
            "relay",
            "bus",
            "splice",
            "amplifier",
        ],
        Role::SupplyMinus | Role::Body => &["ground", "bus", "splice", "battery"],
        Role::TurnOnIn | Role::TurnOnOut => &["splice", "amplifier", "head", "processor", "relay", "switch"],
        Role::LineIn(_) => &["head", "processor", "line-converter"],
        Role::LineOut(_) => &["amplifier", "processor"],
        Role::SpeakerOut { .. } => &[
            "speaker",
            "crossover",
            "inline-capacitor",
            "plug",
            "line-converter",
        ],
        Role::LevelIn { .. } => &["head", "plug", "splice"],
        Role::Coil { .. } | Role::SpeakerThrough => &[
            "amplifier",
            "speaker",
            "crossover",
            "inline-capacitor",
            "plug",
            "head",
        ],
        Role::Control => &["switch", "ground", "splice"],
    }
}

/// Roles that the far end takes best, in order: used to choose the terminal of a part that was dropped onto.
#[must_use]
pub fn liking(from: Role, to: Role) -> u8 {
    if !fits(from, to) {
        return 0;
    }
    match (lead(from), lead(to)) {
        (a, b) if a == b => 3,
        (Lead::SpeakerSource(a), Lead::SpeakerTaker(b)) | (Lead::SpeakerTaker(b), Lead::SpeakerSource(a))
            if a == b =>
        {
            3
        }
        (Lead::LineOut, Lead::LineIn) | (Lead::LineIn, Lead::LineOut) => 3,
        (Lead::Live, Lead::Passes) | (Lead::Passes, Lead::Live) => 2,
        _ => 1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fitting_does_not_depend_on_the_direction() {
        let roles = [
            Role::SupplyPlus,
            Role::SupplyMinus,
            Role::Through,
            Role::Body,
            Role::TurnOnIn,
            Role::LineIn(1),
            Role::LineOut(1),
            Role::LevelIn {
                channel: 1,
                positive: true,
            },
            Role::SpeakerOut {
                channel: 1,
                positive: true,
            },
            Role::Coil {
                coil: 1,
                positive: true,
            },
            Role::SpeakerThrough,
            Role::Control,
        ];
        for a in roles {
            for b in roles {
                assert_eq!(fits(a, b), fits(b, a), "{a:?} {b:?}");
            }
            // Something is always offered, and every offer is a kind.
            assert!(!offers(a).is_empty());
            for word in offers(a) {
                let kind = model::PartKind::from_word(word);
                let takes = kind.as_ref().map(model::terminals::terminals).unwrap_or_default();
                assert!(takes.iter().any(|t| fits(a, t.role)), "{a:?} offers {word}");
            }
        }
        assert!(!fits(Role::SupplyPlus, Role::SupplyMinus));
        assert!(!fits(
            Role::LineOut(1),
            Role::SpeakerOut {
                channel: 1,
                positive: true
            }
        ));
    }
}
