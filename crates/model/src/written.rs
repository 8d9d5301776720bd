//! Properties with a grammar of their own: the channels of an amplifier, the cavities of a plug, the fuses of a
//! block. Each has one written form, the same in the text form, in files and in the field on screen.

use crate::conductor::Jacket;
use crate::kinds::supply::{Curve, Ratings};
#[cfg(feature = "schema")]
use crate::laying::Guards;
use crate::property::{LONGEST_TEXT, PropertyError, PropertyType, Shape, check_number, parse_number};
use crate::quantity::{Amps, Hertz, Ohms, Seconds, Watts};
#[cfg(feature = "schema")]
use crate::thread::{FindingRefs, Money, Tags};
use smol_str::SmolStr;
use std::fmt::Write;
use words::{Saying, say};

/// Power stated at a load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StatedPower {
    /// Power per channel (or per bridged pair), continuous.
    pub power: Watts,
    /// The load it is stated at.
    pub load: Ohms,
}

/// What a pair of channels does bridged.
#[derive(Clone, Debug, PartialEq)]
pub struct Bridged {
    /// Power stated at each load.
    pub power: Vec<StatedPower>,
    /// Least load of the bridged pair.
    pub minimum: Ohms,
}

/// Which part of the band a section passes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Filter {
    /// Everything.
    Full,
    /// Above a frequency.
    HighPass(Hertz),
    /// Below a frequency.
    LowPass(Hertz),
}

/// Channels of an amplifier that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// How many; neighbours pair up for bridging: first with second, third with fourth.
    pub channels: u8,
    /// Power stated at each load, all channels driven.
    pub power: Vec<StatedPower>,
    /// Least load of one channel.
    pub minimum: Ohms,
    /// Bridging of neighbouring channels, where the maker allows it.
    pub bridged: Option<Bridged>,
    /// The filter that is set.
    pub filter: Filter,
}

/// The channels of an amplifier, section by section. At least one section; 1 to 12 channels in all.
#[derive(Clone, Debug, PartialEq)]
pub struct Sections(pub Vec<Section>);

impl Sections {
    /// The default: four channels of 75 W into 4 Ω.
    #[must_use]
    pub fn four_channel() -> Self {
        let stated = |power: f64, load: f64| StatedPower {
            power: Watts(power),
            load: Ohms(load),
        };
        Self(vec![Section {
            channels: 4,
            power: vec![stated(75.0, 4.0), stated(110.0, 2.0)],
            minimum: Ohms(2.0),
            bridged: Some(Bridged {
                power: vec![stated(220.0, 4.0)],
                minimum: Ohms(4.0),
            }),
            filter: Filter::Full,
        }])
    }
    /// Number of channels in all sections together.
    #[must_use]
    pub fn channels(&self) -> u8 {
        self.0
            .iter()
            .fold(0_u8, |sum, section| sum.saturating_add(section.channels))
    }
    /// The section of a channel, which counts from 1, and the channel's place in it, from 0.
    #[must_use]
    pub fn of_channel(&self, channel: u8) -> Option<(&Section, u8)> {
        let mut first = 1_u16;
        for section in &self.0 {
            let next = first + u16::from(section.channels);
            if u16::from(channel) >= first && u16::from(channel) < next {
                return Some((section, u8::try_from(u16::from(channel) - first).ok()?));
            }
            first = next;
        }
        None
    }
}

fn print_power(out: &mut String, all: &[StatedPower]) {
    for stated in all {
        let _ = write!(out, " {}@{}", stated.power.print(), stated.load.print());
    }
}

fn parse_section(text: &str) -> Result<Section, PropertyError> {
    let mut words = text.split_whitespace().peekable();
    let wrong = |why: Saying| PropertyError::new(say!("error-section", text = text.trim(), why = why));
    let count = words.next().unwrap_or_default();
    let channels = count
        .strip_suffix('x')
        .and_then(|digits| digits.parse::<u8>().ok())
        .filter(|n| (1..=12).contains(n))
        .ok_or_else(|| wrong(say!("error-section-channels", count = count)))?;
    let mut section = Section {
        channels,
        power: Vec::new(),
        minimum: Ohms(0.0),
        bridged: None,
        filter: Filter::Full,
    };
    while let Some(word) = words.next() {
        let mut number = |unit: &'static str, least: f64, most: f64| {
            let text = words.next().unwrap_or_default();
            parse_number(text, unit, unit)
                .and_then(|n| crate::property::check_number(n, Some((least, most)), unit).map(|()| n))
                .map_err(|error| wrong(say!("error-section-after", word = word, why = error.said)))
        };
        match word {
            "min" => {
                let least = Ohms(number("ohm", 0.1, 32.0)?);
                match &mut section.bridged {
                    Some(bridged) => bridged.minimum = least,
                    None => section.minimum = least,
                }
            }
            "bridged" if section.bridged.is_none() => {
                section.bridged = Some(Bridged {
                    power: Vec::new(),
                    minimum: Ohms(0.0),
                });
            }
            "hp" => section.filter = Filter::HighPass(Hertz(number("Hz", 5.0, 20000.0)?)),
            "lp" => section.filter = Filter::LowPass(Hertz(number("Hz", 5.0, 20000.0)?)),
            _ => {
                let stated = word
                    .split_once('@')
                    .ok_or_else(|| wrong(say!("error-section-word", word = word)))
                    .and_then(|(power, load)| {
                        Ok(StatedPower {
                            power: Watts::parse(power, Some((0.1, 20000.0)))?,
                            load: Ohms::parse(load, Some((0.1, 32.0)))?,
                        })
                    })?;
                let list = section
                    .bridged
                    .as_mut()
                    .map_or(&mut section.power, |bridged| &mut bridged.power);
                if list.len() >= 8 {
                    return Err(wrong(say!("error-section-powers")));
                }
                list.push(stated);
            }
        }
    }
    // A maker who states power at a load allows that load: the least of them is the minimum unless told.
    let least = |all: &[StatedPower]| all.iter().map(|s| s.load).reduce(Ohms::min);
    let stated = least(&section.power).ok_or_else(|| wrong(say!("error-section-no-power")))?;
    if section.minimum == Ohms::ZERO {
        section.minimum = stated;
    }
    if let Some(bridged) = &mut section.bridged {
        let stated = least(&bridged.power).ok_or_else(|| wrong(say!("error-section-bridged")))?;
        if bridged.minimum == Ohms::ZERO {
            bridged.minimum = stated;
        }
    }
    Ok(section)
}

impl PropertyType for Sections {
    const SHAPE: Shape = Shape::Text {
        example: "4x 75W@4ohm 110W@2ohm min 2ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm",
    };
    fn print(&self) -> String {
        let mut out = String::new();
        for (at, section) in self.0.iter().enumerate() {
            let _ = write!(out, "{}{}x", if at == 0 { "" } else { "; " }, section.channels);
            print_power(&mut out, &section.power);
            let _ = write!(out, " min {}", section.minimum.print());
            if let Some(bridged) = &section.bridged {
                out.push_str(" bridged");
                print_power(&mut out, &bridged.power);
                let _ = write!(out, " min {}", bridged.minimum.print());
            }
            match section.filter {
                Filter::Full => {}
                Filter::HighPass(from) => {
                    let _ = write!(out, " hp {}", from.print());
                }
                Filter::LowPass(to) => {
                    let _ = write!(out, " lp {}", to.print());
                }
            }
        }
        out
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        if text.len() > LONGEST_TEXT {
            return Err(PropertyError::new(say!(
                "error-text-too-long",
                most = LONGEST_TEXT
            )));
        }
        let sections = Self(text.split(';').map(parse_section).collect::<Result<_, _>>()?);
        sections.check(None)?;
        Ok(sections)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        let channels: u32 = self.0.iter().map(|section| u32::from(section.channels)).sum();
        if self.0.is_empty() || !(1..=12).contains(&channels) {
            return Err(PropertyError::new(say!("error-channels")));
        }
        Ok(())
    }
}

impl PropertyType for Ratings {
    const SHAPE: Shape = Shape::Text {
        example: "30A,30A,-,60A",
    };
    fn print(&self) -> String {
        let all: Vec<String> = self
            .0
            .iter()
            .map(|r| r.map_or_else(|| "-".to_owned(), |a| a.print()))
            .collect();
        all.join(",")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        if text.trim().is_empty() {
            return Ok(Self::default());
        }
        let read = |word: &str| match word.trim() {
            "-" => Ok(None),
            word => Amps::parse(word, Some((0.1, 1000.0))).map(Some),
        };
        let ratings = Self(text.split(',').map(read).collect::<Result<_, _>>()?);
        ratings.check(None)?;
        Ok(ratings)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        if self.0.len() > 12 {
            return Err(PropertyError::new(say!("error-outputs")));
        }
        self.0
            .iter()
            .flatten()
            .try_for_each(|rating| rating.check(Some((0.1, 1000.0))))
    }
}

impl PropertyType for Curve {
    const SHAPE: Shape = Shape::Text {
        example: "1.35:600,2:5,6:0.1",
    };
    fn is_left_out(&self) -> bool {
        self.0.is_empty()
    }
    fn print(&self) -> String {
        let all: Vec<String> = self
            .0
            .iter()
            .map(|(multiple, time)| format!("{multiple}:{}", time.0))
            .collect();
        all.join(",")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        if text.trim().is_empty() {
            return Ok(Self::default());
        }
        let read = |pair: &str| {
            let wrong = || PropertyError::new(say!("error-curve-pair", text = pair.trim()));
            let (multiple, time) = pair.split_once(':').ok_or_else(wrong)?;
            let multiple = multiple.trim().trim_end_matches(['x', '×']);
            Ok((parse_number(multiple, "", "")?, Seconds::parse(time, None)?))
        };
        let curve = Self(text.split(',').map(read).collect::<Result<_, _>>()?);
        curve.check(None)?;
        Ok(curve)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        for (multiple, time) in &self.0 {
            check_number(*multiple, Some((0.5, 1000.0)), "")?;
            time.check(Some((1e-5, 1e6)))?;
        }
        let rises = |pair: &[(f64, Seconds)]| matches!(pair, [(small, slow), (large, fast)] if small < large && slow >= fast);
        if self.0.len() > 24 || !self.0.windows(2).all(rises) {
            return Err(PropertyError::new(say!("error-curve-order")));
        }
        Ok(())
    }
}

/// One cavity of a plug.
#[derive(Clone, Debug, PartialEq)]
pub struct Cavity {
    /// Its position, as moulded on the plug; one to four letters or digits.
    pub position: SmolStr,
    /// The colour of the wire in it.
    pub jacket: Option<Jacket>,
    /// What it is for, in a few words.
    pub function: SmolStr,
}

/// The cavities of a plug, 1 to 60, each position once.
#[derive(Clone, Debug, PartialEq)]
pub struct Cavities(pub Vec<Cavity>);

impl Cavities {
    /// Cavities 1 to `count`, of which nothing more is known.
    #[must_use]
    pub fn numbered(count: u8) -> Self {
        Self(
            (1..=count)
                .map(|n| Cavity {
                    position: SmolStr::new(n.to_string()),
                    jacket: None,
                    function: SmolStr::default(),
                })
                .collect(),
        )
    }
}

impl PropertyType for Cavities {
    const SHAPE: Shape = Shape::Text {
        example: "1 YE permanent; 2 RD switched; 3 BK ground",
    };
    fn print(&self) -> String {
        let mut out = String::new();
        for (at, cavity) in self.0.iter().enumerate() {
            let _ = write!(out, "{}{}", if at == 0 { "" } else { "; " }, cavity.position);
            // A function may begin with two capital letters; a dash keeps it from being read as a colour.
            match cavity.jacket {
                Some(jacket) => {
                    let _ = write!(out, " {}", jacket.print());
                }
                None if !cavity.function.is_empty() => out.push_str(" -"),
                None => {}
            }
            if !cavity.function.is_empty() {
                let _ = write!(out, " {}", cavity.function);
            }
        }
        out
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let read = |cavity: &str| {
            let mut words = cavity.split_whitespace().peekable();
            let position = SmolStr::new(words.next().unwrap_or_default());
            let jacket = match words.peek() {
                Some(&"-") => {
                    words.next();
                    None
                }
                Some(word) => Jacket::parse(word, None).ok().inspect(|_| {
                    words.next();
                }),
                None => None,
            };
            let function: Vec<&str> = words.collect();
            Cavity {
                position,
                jacket,
                function: SmolStr::new(function.join(" ")),
            }
        };
        let cavities = Self(text.split(';').map(read).collect());
        cavities.check(None)?;
        Ok(cavities)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        if self.0.is_empty() || self.0.len() > 60 {
            return Err(PropertyError::new(say!("error-cavities")));
        }
        let mut seen = ordered::OrderedSet::new();
        for cavity in &self.0 {
            let position = &cavity.position;
            if position.is_empty()
                || position.len() > 4
                || !position.bytes().all(|b| b.is_ascii_alphanumeric())
            {
                return Err(PropertyError::new(say!(
                    "error-position",
                    position = position.as_str()
                )));
            }
            if !seen.insert(position) {
                return Err(PropertyError::new(say!(
                    "error-position-twice",
                    position = position.as_str()
                )));
            }
            if cavity.function.len() > 60 || cavity.function.contains([';', '\n']) {
                return Err(PropertyError::new(say!(
                    "error-function",
                    position = position.as_str()
                )));
            }
        }
        Ok(())
    }
}

/// Pairs of cavities that the mating half of a plug joins.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loops(pub Vec<(SmolStr, SmolStr)>);

impl PropertyType for Loops {
    const SHAPE: Shape = Shape::Text { example: "1-3 2-4" };
    fn print(&self) -> String {
        let all: Vec<String> = self.0.iter().map(|(a, b)| format!("{a}-{b}")).collect();
        all.join(" ")
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let read = |word: &str| {
            word.split_once('-')
                .map(|(a, b)| (SmolStr::new(a), SmolStr::new(b)))
                .ok_or_else(|| PropertyError::new(say!("error-pair", word = word)))
        };
        let loops = Self(text.split_whitespace().map(read).collect::<Result<_, _>>()?);
        loops.check(None)?;
        Ok(loops)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        let good =
            |name: &SmolStr| (1..=4).contains(&name.len()) && name.bytes().all(|b| b.is_ascii_alphanumeric());
        if self.0.len() > 30 || !self.0.iter().all(|(a, b)| good(a) && good(b)) {
            return Err(PropertyError::new(say!("error-pairs")));
        }
        Ok(())
    }
}

/// Only the schema, which shows defaults, writes through this.
#[cfg(feature = "schema")]
macro_rules! file_form_is_text {
    ($($name:ident),*) => {$(
        /// In files as its written form.
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(&self.print())
            }
        }
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                let example = match <Self as PropertyType>::SHAPE { Shape::Text { example } => example, _ => "" };
                schemars::json_schema!({"type": "string", "maxLength": 4000, "examples": [example]})
            }
        }
    )*};
}
#[cfg(feature = "schema")]
file_form_is_text!(
    Sections,
    Cavities,
    Loops,
    Ratings,
    Curve,
    Guards,
    FindingRefs,
    Money,
    Tags
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn operating_times_read_back() {
        let curve = |text: &str| Curve::parse(text, None);
        let written = "1.35:600,2:5,6:0.1";
        assert_eq!(curve(written).map(|it| it.print()), Ok(written.to_owned()));
        assert_eq!(curve("1.35x: 600 s, 2x:5s, 6×:100 ms"), curve(written));
        assert_eq!(curve(""), Ok(Curve::default()));
        // Not a pair, no time, a current that falls, a time that rises, numbers out of all bounds.
        for wrong in [
            "2",
            "2:",
            "2:5,1.35:600",
            "2:5,3:6",
            "0.1:5",
            "2:0",
            "2:-1",
            "2:1e9",
        ] {
            assert!(curve(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn written_forms_read_back() {
        let text = "4x 75W@4ohm 110W@2ohm min 2ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm min 2ohm lp 80Hz";
        assert_eq!(
            Sections::parse(text, None).map(|s| s.print()),
            Ok(text.to_owned())
        );
        assert_eq!(
            Sections::parse(text, None).map(|s| s.of_channel(5).map(|(s, at)| (s.channels, at))),
            Ok(Some((1, 0)))
        );
        let text = "1 YE permanent; 2 RDWH switched feed; 3; 4 - OG without colour";
        assert_eq!(
            Cavities::parse(text, None).map(|c| c.print()),
            Ok(text.to_owned())
        );
        assert_eq!(
            Loops::parse("1-3 2-4", None).map(|l| l.print()),
            Ok("1-3 2-4".to_owned())
        );
        assert_eq!(
            Ratings::parse("30A,-,60A", None).map(|r| r.print()),
            Ok("30A,-,60A".to_owned())
        );
    }

    #[test]
    fn errors_say_where() {
        let error = |text| {
            Sections::parse(text, None)
                .err()
                .map(|e| e.to_string())
                .unwrap_or_default()
        };
        assert!(
            error("4x 75W@4ohm min").contains("after `min`"),
            "{}",
            error("4x 75W@4ohm min")
        );
        assert!(error("x").contains("number of channels"));
        assert!(error("2x").contains("no power"));
        assert!(error("2x 10W").contains("10W"));
        assert!(Cavities::parse("1; 1", None).is_err());
    }
}
