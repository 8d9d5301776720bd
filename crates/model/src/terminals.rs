//! The terminals of each kind: their names, what they are for, and on which side of the part's outline they stand.

use crate::id::TerminalName;
use crate::kinds::PartKind;
use crate::kinds::sound::{InputLevel, TurnOn};

/// What a terminal is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// The live pole of a source, or where a load takes its feed.
    SupplyPlus,
    /// The negative pole of a source, or where a load gives its return.
    SupplyMinus,
    /// One side of something that a feed passes through: fuse, block, bus, switch, relay contact, splice, plug.
    Through,
    /// Joined to the body of the vehicle.
    Body,
    /// Takes the turn-on lead.
    TurnOnIn,
    /// Gives the turn-on signal.
    TurnOnOut,
    /// Line-level input; channels count from 1.
    LineIn(u8),
    /// Line-level output; channels count from 1.
    LineOut(u8),
    /// One leg of a speaker-level input.
    LevelIn {
        /// Counts from 1.
        channel: u8,
        /// The positive leg.
        positive: bool,
    },
    /// One leg of an amplifier channel.
    SpeakerOut {
        /// Counts from 1.
        channel: u8,
        /// The positive leg.
        positive: bool,
    },
    /// One end of a voice coil.
    Coil {
        /// Counts from 1.
        coil: u8,
        /// The positive end.
        positive: bool,
    },
    /// One side of something that a speaker lead passes through: crossover, in-line capacitor.
    SpeakerThrough,
    /// A relay's coil.
    Control,
}

impl Role {
    /// True for jacks that carry a line-level signal: such a terminal has a core and a shield.
    #[must_use]
    pub fn is_line(self) -> bool {
        matches!(self, Self::LineIn(_) | Self::LineOut(_))
    }
}

/// Sides of a part's outline, before it is turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Where feeds come in.
    Left,
    /// Where outputs leave.
    Right,
    /// Above.
    Top,
    /// Where returns leave.
    Bottom,
}

/// One terminal of a kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Terminal {
    /// Its name on the part.
    pub name: TerminalName,
    /// What it is for.
    pub role: Role,
    /// Where it stands.
    pub side: Side,
}

/// Line outputs of a head unit, in order: name and channel number. Odd channels are left, even ones right; `sub` is 5.
pub const HEAD_LINE_OUTPUTS: &[(&str, u8)] = &[
    ("front-l", 1),
    ("front-r", 2),
    ("rear-l", 3),
    ("rear-r", 4),
    ("sub", 5),
];

/// Speaker outputs of a head unit, in order: name and channel number.
pub const HEAD_SPEAKER_OUTPUTS: &[(&str, u8)] = &[("fl", 1), ("fr", 2), ("rl", 3), ("rr", 4)];

/// The number of a terminal in digits; no kind has more than 24 of a sort.
fn digits(number: u8) -> &'static str {
    const DIGITS: [&str; 25] = [
        "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15", "16", "17",
        "18", "19", "20", "21", "22", "23", "24",
    ];
    DIGITS.get(usize::from(number)).copied().unwrap_or_default()
}

/// The terminals of a part of this kind, in the order in which they stand along its sides.
#[must_use]
pub fn terminals(kind: &PartKind) -> Vec<Terminal> {
    // Made for every part at every analysis: names are put together without a text in between.
    let mut all = Vec::with_capacity(8);
    let mut add = |name: &[&str], role: Role, side: Side| {
        let mut text = smol_str::SmolStrBuilder::new();
        name.iter().for_each(|piece| text.push_str(piece));
        let name = TerminalName(text.finish());
        all.push(Terminal { name, role, side });
    };
    use Side::{Bottom, Left, Right, Top};
    let leg = |positive: bool| if positive { "+" } else { "-" };
    match kind {
        PartKind::Battery(_) => {
            add(&["+"], Role::SupplyPlus, Right);
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::Alternator(_) => {
            add(&["B+"], Role::SupplyPlus, Right);
            add(&["case"], Role::SupplyMinus, Bottom);
        }
        PartKind::Vehicle(_) => {
            add(&["+"], Role::SupplyPlus, Left);
            add(&["B+"], Role::Through, Left);
            add(&["30"], Role::Through, Right);
            add(&["15"], Role::Through, Right);
            add(&["31"], Role::Body, Right);
            add(&["-"], Role::SupplyMinus, Bottom);
            add(&["engine"], Role::Body, Bottom);
        }
        PartKind::Converter(_) => {
            add(&["in"], Role::SupplyPlus, Left);
            add(&["out"], Role::SupplyPlus, Right);
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Switch(_) => {
            add(&["in"], Role::Through, Left);
            add(&["out"], Role::Through, Right);
        }
        PartKind::Block(block) => {
            for n in 1..=block.inputs.clamp(1, 4) {
                add(&["in", if n == 1 { "" } else { digits(n) }], Role::Through, Left);
            }
            for n in 1..=block.outputs.clamp(1, 12) {
                add(&["out", digits(n)], Role::Through, Right);
            }
        }
        PartKind::Bus(bus) => {
            for n in 1..=bus.places.clamp(2, 24) {
                add(&[digits(n)], Role::Through, if n == 1 { Left } else { Right });
            }
        }
        PartKind::Splice(splice) => {
            for n in 1..=splice.places.clamp(2, 8) {
                add(&[digits(n)], Role::Through, if n == 1 { Left } else { Right });
            }
        }
        PartKind::Plug(plug) => {
            for cavity in plug.cavities.0.iter().take(60) {
                add(&[cavity.position.as_str(), "a"], Role::Through, Left);
            }
            for cavity in plug.cavities.0.iter().take(60) {
                add(&[cavity.position.as_str(), "b"], Role::Through, Right);
            }
        }
        PartKind::Adapter(adapter) => {
            for cavity in adapter.cavities.0.iter().take(60) {
                add(&[cavity.position.as_str(), "a"], Role::Through, Left);
            }
            for cavity in adapter.cavities.0.iter().take(60) {
                add(&[cavity.position.as_str(), "b"], Role::Through, Right);
            }
        }
        PartKind::Ground(_) => add(&["stud"], Role::Body, Top),
        PartKind::Relay(_) => {
            add(&["30"], Role::Through, Left);
            add(&["86"], Role::Control, Left);
            add(&["87"], Role::Through, Right);
            add(&["87a"], Role::Through, Right);
            add(&["85"], Role::Control, Bottom);
        }
        PartKind::Isolator(_) => {
            add(&["main"], Role::Through, Left);
            add(&["aux"], Role::Through, Right);
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::Capacitor(_) => {
            add(&["+"], Role::SupplyPlus, Left);
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::Load(_) => {
            add(&["+"], Role::SupplyPlus, Left);
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::Amplifier(amplifier) => {
            add(&["+"], Role::SupplyPlus, Left);
            if amplifier.turn_on != TurnOn::Sensing {
                add(&["rem"], Role::TurnOnIn, Left);
            }
            let inputs = 1..=amplifier.inputs.clamp(1, 8);
            if amplifier.input_level != InputLevel::Speaker {
                for n in inputs.clone() {
                    add(&["in", digits(n)], Role::LineIn(n), Left);
                }
            }
            if amplifier.input_level != InputLevel::Line {
                for n in inputs {
                    for positive in [true, false] {
                        add(
                            &["hi", digits(n), leg(positive)],
                            Role::LevelIn { channel: n, positive },
                            Left,
                        );
                    }
                }
            }
            for channel in 1..=amplifier.sections.channels().min(12) {
                for positive in [true, false] {
                    add(
                        &["out", digits(channel), leg(positive)],
                        Role::SpeakerOut { channel, positive },
                        Right,
                    );
                }
            }
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::HeadUnit(head) => {
            add(&["30"], Role::SupplyPlus, Left);
            add(&["15"], Role::SupplyPlus, Left);
            add(&["rem"], Role::TurnOnOut, Right);
            let pairs = match head.line_outputs {
                0 => 0,
                1 => 2,
                2 => 4,
                _ => 5,
            };
            for (name, channel) in HEAD_LINE_OUTPUTS.iter().take(pairs) {
                add(&[*name], Role::LineOut(*channel), Right);
            }
            for (name, channel) in HEAD_SPEAKER_OUTPUTS
                .iter()
                .take(usize::from(head.speaker_outputs.min(4)))
            {
                for positive in [true, false] {
                    add(
                        &[*name, leg(positive)],
                        Role::SpeakerOut {
                            channel: *channel,
                            positive,
                        },
                        Right,
                    );
                }
            }
            add(&["31"], Role::SupplyMinus, Bottom);
        }
        PartKind::Processor(processor) => {
            add(&["+"], Role::SupplyPlus, Left);
            if processor.turn_on != TurnOn::Sensing {
                add(&["rem"], Role::TurnOnIn, Left);
            }
            let inputs = 1..=processor.inputs.clamp(1, 8);
            if processor.input_level != InputLevel::Speaker {
                for n in inputs.clone() {
                    add(&["in", digits(n)], Role::LineIn(n), Left);
                }
            }
            if processor.input_level != InputLevel::Line {
                for n in inputs {
                    for positive in [true, false] {
                        add(
                            &["hi", digits(n), leg(positive)],
                            Role::LevelIn { channel: n, positive },
                            Left,
                        );
                    }
                }
            }
            add(&["rem-out"], Role::TurnOnOut, Right);
            for n in 1..=processor.outputs.clamp(1, 12) {
                add(&["line", digits(n)], Role::LineOut(n), Right);
            }
            add(&["-"], Role::SupplyMinus, Bottom);
        }
        PartKind::LineConverter(converter) => {
            if converter.powered {
                add(&["+"], Role::SupplyPlus, Left);
            }
            for n in 1..=converter.channels.clamp(1, 4) {
                for positive in [true, false] {
                    add(
                        &["hi", digits(n), leg(positive)],
                        Role::LevelIn { channel: n, positive },
                        Left,
                    );
                }
            }
            if converter.powered {
                add(&["rem-out"], Role::TurnOnOut, Right);
            }
            for n in 1..=converter.channels.clamp(1, 4) {
                add(&["line", digits(n)], Role::LineOut(n), Right);
            }
            if converter.powered {
                add(&["-"], Role::SupplyMinus, Bottom);
            }
        }
        PartKind::Speaker(speaker) => {
            if speaker.coils <= 1 {
                add(
                    &["+"],
                    Role::Coil {
                        coil: 1,
                        positive: true,
                    },
                    Left,
                );
                add(
                    &["-"],
                    Role::Coil {
                        coil: 1,
                        positive: false,
                    },
                    Left,
                );
            } else {
                for (coil, letter) in [(1, "a"), (2, "b")] {
                    for positive in [true, false] {
                        add(&[letter, leg(positive)], Role::Coil { coil, positive }, Left);
                    }
                }
            }
        }
        PartKind::Crossover(_) => {
            for (name, side) in [
                ("in+", Left),
                ("in-", Left),
                ("high+", Right),
                ("high-", Right),
                ("low+", Right),
                ("low-", Right),
            ] {
                add(&[name], Role::SpeakerThrough, side);
            }
        }
        PartKind::InlineCapacitor(_) => {
            add(&["1"], Role::SpeakerThrough, Left);
            add(&["2"], Role::SpeakerThrough, Right);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_terminals_with_distinct_names() {
        for word in PartKind::WORDS {
            let kind = PartKind::from_word(word);
            let all = kind.as_ref().map(terminals).unwrap_or_default();
            assert!(!all.is_empty(), "{word}");
            let names: ordered::OrderedSet<_> = all.iter().map(|t| &t.name).collect();
            assert_eq!(names.len(), all.len(), "{word}");
        }
    }
}
