//! The texts of a part: what stands beside its studs, and its block of tag, label and numbers.

use super::{LABEL_SIZE, NAME_SIZE, NUMBER_SIZE, TAG_SIZE, Weight};
use crate::letters::{fit, text_width};
use crate::numbers;
use model::Part;
use model::kinds::PartKind;
use words::say;

/// What a part says of itself without a study, in its line of numbers; empty where the kind has none.
pub(crate) fn own_numbers(kind: &PartKind, words: &words::Words) -> String {
    use numbers::quantity as q;
    fn fact<Q: model::quantity::Quantity>(words: &words::Words, value: &model::Fact<Q>) -> String {
        value.marked("?", |value| q(words, *value))
    }
    match kind {
        PartKind::Battery(it) => fact(words, &it.capacity),
        PartKind::Alternator(it) => fact(words, &it.current),
        PartKind::Vehicle(it) => words.say(&say!("drawn-main-fuse", amps = fact(words, &it.main_fuse))),
        PartKind::Converter(it) => format!("{} {}", fact(words, &it.voltage), fact(words, &it.current)),
        PartKind::Fuse(it) => fact(words, &it.rating),
        PartKind::Breaker(it) => fact(words, &it.rating),
        PartKind::Relay(it) => fact(words, &it.rating),
        PartKind::Switch(it) => fact(words, &it.rating),
        PartKind::Isolator(it) => fact(words, &it.rating),
        PartKind::Capacitor(it) => fact(words, &it.capacitance),
        PartKind::Load(it) => match it.law {
            model::kinds::supply::LoadLaw::Current => fact(words, &it.current),
            model::kinds::supply::LoadLaw::Power => fact(words, &it.power),
            model::kinds::supply::LoadLaw::Resistance => fact(words, &it.resistance),
        },
        PartKind::Speaker(it) if it.coils > 1 => {
            format!(
                "{} × {} {}",
                it.coils,
                fact(words, &it.impedance),
                fact(words, &it.power)
            )
        }
        PartKind::Speaker(it) => format!("{} {}", fact(words, &it.impedance), fact(words, &it.power)),
        PartKind::Crossover(it) => fact(words, &it.frequency),
        PartKind::InlineCapacitor(it) => match it.capacitance.value() {
            Some(farads) => format!("{} µF", numbers::figures(words, farads.0 * 1e6)),
            None => "?".to_owned(),
        },
        PartKind::Ground(_)
        | PartKind::HeadUnit(_)
        | PartKind::Amplifier(_)
        | PartKind::Processor(_)
        | PartKind::LineConverter(_)
        | PartKind::Block(_)
        | PartKind::Bus(_)
        | PartKind::Splice(_)
        | PartKind::Plug(_)
        | PartKind::Adapter(_) => String::new(),
    }
}

/// The widest that a study's numbers may make the line, as a text; empty where the kind shows none.
fn sample_numbers(kind: &PartKind, words: &words::Words) -> String {
    let sample = match kind {
        PartKind::Bus(_) | PartKind::Splice(_) | PartKind::Plug(_) | PartKind::Adapter(_) => "",
        PartKind::Crossover(_) | PartKind::InlineCapacitor(_) | PartKind::LineConverter(_) => "",
        PartKind::Battery(_) => {
            let takes = words.say(&say!("drawn-takes", amps = "88.8 A"));
            let gives = words.say(&say!("drawn-gives", amps = "88.8 A"));
            let longer = if takes.len() > gives.len() { takes } else { gives };
            return format!(" · 88.8 V · {longer}");
        }
        PartKind::Amplifier(_) | PartKind::HeadUnit(_) => "88.8 V · 88.8 A",
        PartKind::Alternator(_) | PartKind::Converter(_) => " · 88.8 V · 88.8 A",
        PartKind::Speaker(_) => {
            return format!(" · {}", words.say(&say!("drawn-gets", power = "888 W")));
        }
        _ => " · 88.8 mA",
    };
    sample.to_owned()
}

/// What stands beside a stud: its name, and for a plug what the cavity is for.
pub(super) fn stud_text(kind: &PartKind, terminal: &str) -> String {
    let cavities = match kind {
        PartKind::Plug(plug) => &plug.cavities,
        PartKind::Adapter(adapter) => &adapter.cavities,
        // A hyphen at the end of a name is a pole, and is drawn as a minus sign.
        _ => {
            return match terminal.strip_suffix('-') {
                Some(name) => format!("{name}−"),
                None => terminal.to_owned(),
            };
        }
    };
    let function = terminal.strip_suffix('a').and_then(|position| {
        cavities
            .0
            .iter()
            .find(|cavity| cavity.position == position)
            .map(|cavity| cavity.function.as_str())
    });
    match function {
        Some(function) if !function.is_empty() => {
            fit(&format!("{terminal} {function}"), 90.0, NAME_SIZE, false)
        }
        _ => terminal.to_owned(),
    }
}

/// Tag, label and numbers, broken into lines that fit the room.
pub(super) fn lines(part: &Part, words: &words::Words, room: f64) -> Vec<Line> {
    let tag = fit(&part.tag, 120.0, TAG_SIZE, true);
    let tag_width = text_width(&tag, TAG_SIZE, true);
    let named = !part.label.is_empty()
        || !matches!(
            part.is,
            PartKind::Splice(_) | PartKind::Ground(_) | PartKind::Bus(_)
        );
    let label = if named {
        words.say(&part.said())
    } else {
        String::new()
    };
    let one = tag_width + 5.0 + text_width(&label, LABEL_SIZE, false);
    let mut lines = Vec::new();
    if label.is_empty() || one <= room.max(110.0) {
        let mut pieces = vec![(tag, TAG_SIZE, Weight::Tag)];
        if !label.is_empty() {
            pieces.push((label, LABEL_SIZE, Weight::Label));
        }
        lines.push(Line {
            pieces,
            height: 13.0,
            numbers: false,
            kept: 0.0,
        });
    } else {
        lines.push(Line {
            pieces: vec![(tag, TAG_SIZE, Weight::Tag)],
            height: 13.0,
            numbers: false,
            kept: 0.0,
        });
        lines.push(Line {
            pieces: vec![(
                fit(&label, room.max(120.0), LABEL_SIZE, false),
                LABEL_SIZE,
                Weight::Label,
            )],
            height: 11.0,
            numbers: false,
            kept: 0.0,
        });
    }
    let own = own_numbers(&part.is, words);
    let sample = sample_numbers(&part.is, words);
    if !own.is_empty() || !sample.is_empty() {
        lines.push(Line {
            pieces: Vec::new(),
            height: 11.0,
            numbers: true,
            kept: text_width(&own, NUMBER_SIZE, false) + text_width(&sample, NUMBER_SIZE, false),
        });
    }
    lines
}

/// A line of the block of text.
pub(super) struct Line {
    pub(super) pieces: Vec<(String, f64, Weight)>,
    pub(super) height: f64,
    pub(super) numbers: bool,
    pub(super) kept: f64,
}

impl Line {
    pub(super) fn width(&self) -> f64 {
        let pieces: f64 = self
            .pieces
            .iter()
            .map(|(text, size, weight)| text_width(text, *size, *weight == Weight::Tag))
            .sum();
        (pieces + 5.0 * self.pieces.len().saturating_sub(1) as f64).max(self.kept)
    }
}
