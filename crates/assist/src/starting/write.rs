//! A wish written again, in the words it is read by: one phrase for each thing. Read back it is the same wish.

use super::lexicon::{Meaning, word};
use super::wish::*;
use model::quantity::{Ohms, Quantity, Watts};
use words::Language;

/// A thing of a wish and the phrase that tells it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Phrase {
    /// The phrase.
    pub text: String,
}

/// The whole wish in one line.
#[must_use]
pub fn line(wish: &Wish, language: Language) -> String {
    let all: Vec<String> = phrases(wish, language).into_iter().map(|it| it.text).collect();
    all.join(", ")
}

/// The phrases of a wish, in the order in which things are drawn: vehicle, supply, sound, the rest.
#[must_use]
pub fn phrases(wish: &Wish, language: Language) -> Vec<Phrase> {
    let pen = Pen { language };
    let mut all = Vec::new();
    let mut put = |text: String| all.push(Phrase { text });
    if let Some(form) = wish.body {
        put(pen.word(Meaning::Body(form)));
    }
    if let Some(side) = wish.drive {
        put(pen.word(Meaning::Drive(side)));
    }
    if wish.battery != BatteryWish::default() || wish.battery_at.is_some() {
        put(pen.battery(&[Meaning::Battery], &wish.battery, wish.battery_at));
    }
    if let Some(current) = wish.alternator {
        put(format!(
            "{} {}",
            pen.word(Meaning::Alternator),
            pen.number(current.0, "A")
        ));
    }
    if let Some(second) = &wish.second {
        let nouns = [Meaning::Second, Meaning::Battery];
        let mut text = pen.battery(&nouns, &second.battery, second.at);
        if second.count > 1 {
            text = format!("{} × {text}", second.count);
        }
        if let Some(isolator) = second.isolator {
            text = format!("{text} {}", pen.word(Meaning::Isolator(isolator)));
        }
        put(text);
        if let Some(charger) = second.charger {
            let current = charger.current.map(|it| format!(" {}", pen.number(it.0, "A")));
            put(pen.word(Meaning::Charger) + &current.unwrap_or_default());
        }
    }
    if wish.head.is_told() {
        put(pen.head(&wish.head));
    }
    match wish.harness {
        Some(true) => put(pen.word(Meaning::Harness)),
        Some(false) => put(format!(
            "{} {}",
            pen.word(Meaning::Without),
            pen.word(Meaning::Harness)
        )),
        None => {}
    }
    if let Some(processor) = &wish.processor {
        let outputs = processor
            .outputs
            .map(|count| format!(" {count} {}", pen.word(Meaning::Outputs)));
        put(pen.word(Meaning::Processor) + &outputs.unwrap_or_default());
    }
    for amplifier in &wish.amplifiers {
        put(pen.amplifier(amplifier));
    }
    for speakers in &wish.speakers {
        put(pen.speakers(speakers));
    }
    for load in &wish.loads {
        let mut text = pen.word(Meaning::Load(load.kind));
        if let Some(power) = load.power {
            text = format!("{text} {}", pen.number(power.0, "W"));
        }
        if let Some(current) = load.current {
            text = format!("{text} {}", pen.number(current.0, "A"));
        }
        put(text);
    }
    match wish.wired_return {
        Some(true) => put(pen.word(Meaning::WiredReturn)),
        Some(false) => put(pen.word(Meaning::BodyReturn)),
        None => {}
    }
    all
}

struct Pen {
    language: Language,
}

impl Pen {
    fn word(&self, means: Meaning) -> String {
        word(means, self.language).to_owned()
    }
    /// Two words as one, where the language writes them so.
    fn joined(&self, first: Meaning, second: Meaning) -> String {
        let (first, second) = (word(first, self.language), word(second, self.language));
        match self.language {
            Language::English => format!("{first} {second}"),
            Language::German => format!("{first}{}", second.to_lowercase()),
        }
    }
    fn number(&self, number: f64, unit: &str) -> String {
        let text = format!("{number}");
        let text = if self.language.decimal() == ',' {
            text.replace('.', ",")
        } else {
            text
        };
        format!("{text}\u{a0}{unit}")
    }
    fn battery(&self, nouns: &[Meaning], it: &BatteryWish, at: Option<model::body::BatteryPlace>) -> String {
        let mut text = match nouns {
            [first, second] => self.joined(*first, *second),
            _ => self.word(Meaning::Battery),
        };
        if let Some(chemistry) = it.chemistry {
            text = format!("{text} {}", self.word(Meaning::Chemistry(chemistry)));
        }
        if let Some(capacity) = it.capacity {
            text = format!("{text} {}", self.number(capacity.number(), "Ah"));
        }
        if let Some(cranking) = it.cranking {
            text = format!("{text} {}", self.number(cranking.number(), "A"));
        }
        if let Some(at) = at {
            text = format!("{text} {}", self.word(Meaning::Stands(at)));
        }
        text
    }
    fn head(&self, head: &HeadWish) -> String {
        let mut text = self.word(Meaning::Head);
        if head.factory {
            text = self.joined(Meaning::Factory, Meaning::Head);
        }
        if let Some(pairs) = head.line_pairs {
            let outputs = self.word(Meaning::LineOutputs);
            text = match pairs {
                0 => format!("{text} {} {outputs}", self.word(Meaning::Without)),
                pairs => format!("{text} {pairs} {outputs}"),
            };
        }
        // Several phrases about one head unit are one head unit.
        let more = match (head.speaker_outputs, head.power) {
            (Some(0), _) => Some(format!(
                "{} {}",
                self.word(Meaning::Without),
                self.word(Meaning::SpeakerOutputs)
            )),
            (outputs, Some(power)) => Some(format!(
                "{} × {}",
                outputs.unwrap_or(4),
                self.number(power.0, "W")
            )),
            (Some(count), None) if count != 4 => {
                Some(format!("{count} {}", self.word(Meaning::SpeakerOutputs)))
            }
            _ => None,
        };
        match more {
            Some(more) => format!("{text}, {more}"),
            None => text,
        }
    }
    fn powers(&self, all: &[PowerAt]) -> String {
        let told: Vec<String> = all
            .iter()
            .map(
                |PowerAt {
                     power: Watts(power),
                     load,
                 }| {
                    let power = self.number(*power, "W");
                    match load {
                        Some(Ohms(load)) => {
                            format!("{power} {} {}", self.word(Meaning::At), self.number(*load, "Ω"))
                        }
                        None => power,
                    }
                },
            )
            .collect();
        told.join(" ")
    }
    fn amplifier(&self, it: &AmplifierWish) -> String {
        let mut text = self.word(Meaning::Amplifier);
        let minimum = |text: &mut String, load: Option<Ohms>| {
            if let Some(Ohms(load)) = load {
                *text = format!(
                    "{text} {} {}",
                    self.word(Meaning::Minimum),
                    self.number(load, "Ω")
                );
            }
        };
        for (at, channels) in it.channels.iter().enumerate() {
            let and = if at > 0 { " + " } else { " " };
            text = if channels.power.is_empty() {
                format!("{text}{and}{} {}", channels.count, self.word(Meaning::Channels))
            } else {
                format!("{text}{and}{} × {}", channels.count, self.powers(&channels.power))
            };
            minimum(&mut text, channels.minimum);
            if !channels.bridged.is_empty() {
                text = format!(
                    "{text} {} {}",
                    self.word(Meaning::Bridged),
                    self.powers(&channels.bridged)
                );
                minimum(&mut text, channels.bridged_minimum);
            }
        }
        if let Some(class) = it.class {
            text = format!("{text} {}", self.word(Meaning::Class(class)));
        }
        text
    }
    fn speakers(&self, it: &SpeakersWish) -> String {
        let mut words = Vec::new();
        let dual = it.coils == Some(2);
        if let Some(count) = it.count {
            words.push(count.to_string());
        }
        words.push(match it.at {
            Where::Bass if self.language == Language::English && it.count.is_some_and(|it| it > 1) => {
                "subwoofers".to_owned()
            }
            Where::Bass => self.word(Meaning::Plays(it.at)),
            _ if it.ways > 1 => self.joined(Meaning::Plays(it.at), Meaning::Components),
            _ => self.joined(Meaning::Plays(it.at), Meaning::Speakers),
        });
        if it.ways > 2 {
            words.push(self.word(Meaning::ThreeWay));
        }
        if it.active {
            words.push(self.word(Meaning::Active));
        }
        if it.bridged {
            words.push(self.word(Meaning::Bridged));
        }
        if dual {
            words.push(self.word(Meaning::DualCoil));
        } else if it.coils == Some(1) {
            words.push(self.word(Meaning::SingleCoil));
        }
        if let Some(Ohms(impedance)) = it.impedance {
            words.push(self.number(impedance, "Ω"));
        }
        if let Some(Watts(power)) = it.power {
            words.push(self.number(power, "W"));
        }
        words.join(" ")
    }
}
