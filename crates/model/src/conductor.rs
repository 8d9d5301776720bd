//! What a run is made of: material, cross-section, insulation, colour, and how its ends are finished.

use crate::choice;
use crate::property::{PropertyError, PropertyType, Shape};
use crate::quantity::SquareMm;
use words::say;

choice! {
    /// What the conductor is made of.
    pub enum Material {
        Copper = "copper", "copper";
        TinnedCopper = "tinned", "tinned copper";
        CladAluminium10 = "clad10", "copper-clad aluminium, 10 % copper";
        CladAluminium15 = "clad15", "copper-clad aluminium, 15 % copper";
        Aluminium = "aluminium", "aluminium";
    }
}

impl Material {
    /// True for both classes of copper-clad aluminium.
    #[must_use]
    pub fn is_clad(self) -> bool {
        matches!(self, Self::CladAluminium10 | Self::CladAluminium15)
    }
}

/// AWG numbers that the tool knows, thinnest first, as written; `1/0` is number 0, `4/0` is number -3.
pub const AWG_SERIES: &[(&str, i8)] = &[
    ("24", 24),
    ("22", 22),
    ("20", 20),
    ("18", 18),
    ("16", 16),
    ("14", 14),
    ("12", 12),
    ("10", 10),
    ("8", 8),
    ("6", 6),
    ("4", 4),
    ("3", 3),
    ("2", 2),
    ("1", 1),
    ("1/0", 0),
    ("2/0", -1),
    ("3/0", -2),
    ("4/0", -3),
];

/// Metric sizes that can be bought, in mm² (ISO 6722-1 and ISO 19642-3 series).
pub const METRIC_SERIES: &[f64] = &[
    0.22, 0.35, 0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 30.0,
    35.0, 40.0, 50.0, 60.0, 70.0, 95.0, 120.0,
];

/// Nominal size of a conductor, as its jacket or the user states it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// A metric cross-section.
    Metric(SquareMm),
    /// An American wire gauge number; 0 is 1/0, -3 is 4/0.
    Awg(i8),
}

/// Cross-sections of AWG 4/0 (number -3) to 24 in mm², as [`awg_area`] gives them: areas are asked for all the time, and
/// powers are slow.
const AWG_AREAS: [f64; 28] = [
    107.21930257703055,
    85.02877257427764,
    67.43088223591077,
    53.47512073211765,
    42.40769870561866,
    33.63083401934961,
    26.670463886482732,
    21.15063942544283,
    16.773219618869266,
    13.301767890969138,
    10.548781512773461,
    8.365564060081022,
    6.6341939074743035,
    5.261154954510373,
    4.172285561955634,
    3.3087728761114765,
    2.623976183585927,
    2.080907717098377,
    1.6502348436569876,
    1.3086957277552627,
    1.0378428951660588,
    0.8230468337313146,
    0.6527058128646284,
    0.5176192419280384,
    0.410490720832183,
    0.3255339412454668,
    0.2581601520442912,
    0.20473030814712212,
];

/// ASTM B258: diameter 0.127 mm · 92^((36-n)/39).
fn awg_area(number: i8) -> f64 {
    let diameter = 0.127 * libm::pow(92.0, (36.0 - f64::from(number)) / 39.0);
    core::f64::consts::FRAC_PI_4 * diameter * diameter
}

impl Size {
    /// Nominal cross-section. AWG by the geometric definition of ASTM B258: diameter 0.127 mm · 92^((36-n)/39).
    #[must_use]
    pub fn area(self) -> SquareMm {
        match self {
            Self::Metric(area) => area,
            Self::Awg(number) => SquareMm(
                usize::try_from(i16::from(number) + 3)
                    .ok()
                    .and_then(|at| AWG_AREAS.get(at).copied())
                    .unwrap_or_else(|| awg_area(number)),
            ),
        }
    }
    /// The sizes of the series that this one is made in, thinnest first: wire is bought in one series or the other.
    pub fn series(self) -> impl Iterator<Item = Self> {
        let (metric, gauge) = match self {
            Self::Metric(_) => (METRIC_SERIES, Default::default()),
            Self::Awg(_) => (Default::default(), AWG_SERIES),
        };
        let metric = metric.iter().map(|area| Self::Metric(SquareMm(*area)));
        metric.chain(gauge.iter().map(|(_, number)| Self::Awg(*number)))
    }
    /// The gauge number that one takes in place of a size in square millimetres: the thinnest of the series that is no
    /// thinner by more than a tenth (common practice: the next thicker one, but 22 AWG for 0.35 mm²). A gauge number, and
    /// a size thicker than all of them, stays as it is.
    #[must_use]
    pub fn as_gauge(self) -> Self {
        let Self::Metric(area) = self else { return self };
        AWG_SERIES
            .iter()
            .map(|(_, number)| Self::Awg(*number))
            .find(|gauge| gauge.area().0 >= 0.9 * area.0)
            .unwrap_or(self)
    }
}

impl PropertyType for Size {
    const SHAPE: Shape = Shape::Text {
        example: "16mm2, 4AWG",
    };
    fn print(&self) -> String {
        match self {
            Self::Metric(area) => area.print(),
            Self::Awg(number) => AWG_SERIES
                .iter()
                .find(|(_, n)| n == number)
                .map_or_else(|| format!("{number}AWG"), |(written, _)| format!("{written}AWG")),
        }
    }
    fn parse(text: &str, range: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let text = text.trim();
        let gauge = text
            .len()
            .checked_sub(3)
            .and_then(|at| text.split_at_checked(at))
            .filter(|(_, unit)| unit.eq_ignore_ascii_case("AWG"));
        if let Some((number, _)) = gauge {
            return AWG_SERIES
                .iter()
                .find(|(written, _)| *written == number.trim())
                .map(|(_, n)| Self::Awg(*n))
                .ok_or_else(|| PropertyError::new(say!("error-no-such-gauge", text = text)));
        }
        let size = Self::Metric(SquareMm::parse(text, range)?);
        size.check(range)?;
        Ok(size)
    }
    fn check(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
        match self {
            Self::Metric(area) => area.check(range.or(Some((0.05, 400.0)))),
            Self::Awg(number) if AWG_SERIES.iter().any(|(_, n)| n == number) => Ok(()),
            Self::Awg(number) => Err(PropertyError::new(say!(
                "error-no-gauge",
                number = number.to_string()
            ))),
        }
    }
}

/// Written in files as text, `16mm2` or `4AWG`, because the two series must not be mixed up.
#[cfg(feature = "schema")]
impl serde::Serialize for Size {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.print())
    }
}
#[cfg(feature = "schema")]
impl schemars::JsonSchema for Size {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Size".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({"type": "string", "examples": ["16mm2", "4AWG"]})
    }
}

choice! {
    /// Insulation colour by the letters of IEC 60757. Light green and tan are not in it and are written as the nearest.
    pub enum Colour {
        Black = "BK", "black";
        Brown = "BN", "brown";
        Red = "RD", "red";
        Orange = "OG", "orange";
        Yellow = "YE", "yellow";
        Green = "GN", "green";
        Blue = "BU", "blue";
        Violet = "VT", "violet";
        Grey = "GY", "grey";
        White = "WH", "white";
        Pink = "PK", "pink";
        Gold = "GD", "gold";
        Turquoise = "TQ", "turquoise";
        Silver = "SR", "silver";
    }
}

/// Colour of a jacket: a base and perhaps a tracer. Written base first, `WH` or `WHBK`, so that the drawing knows
/// which is which (IEC 60757 itself orders joined codes by its table, which does not tell); `?` where nobody looked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Jacket {
    /// The colour of most of it; nothing where it is not known.
    pub base: Option<Colour>,
    /// The colour of the stripe.
    pub tracer: Option<Colour>,
}

impl Jacket {
    /// A jacket of one colour.
    #[must_use]
    pub const fn plain(base: Colour) -> Self {
        Self {
            base: Some(base),
            tracer: None,
        }
    }
    /// A jacket whose colour nobody has told.
    pub const UNKNOWN: Self = Self {
        base: None,
        tracer: None,
    };
}

impl PropertyType for Jacket {
    const SHAPE: Shape = Shape::Text { example: "RD, WHBK" };
    fn print(&self) -> String {
        match self.base {
            Some(base) => format!("{}{}", base.word(), self.tracer.map_or("", Colour::word)),
            None => "?".to_owned(),
        }
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let text = text.trim();
        if text == "?" {
            return Ok(Self::UNKNOWN);
        }
        let read = || {
            let base = Colour::from_word(text.get(..2)?)?;
            match text.get(2..)? {
                "" => Some(Self::plain(base)),
                rest => Some(Self {
                    base: Some(base),
                    tracer: Some(Colour::from_word(rest)?),
                }),
            }
        };
        read().ok_or_else(|| PropertyError::new(say!("error-no-colour", text = text)))
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        Ok(())
    }
}

/// Written in files as its letters.
#[cfg(feature = "schema")]
impl serde::Serialize for Jacket {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.print())
    }
}
#[cfg(feature = "schema")]
impl schemars::JsonSchema for Jacket {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Jacket".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({"type": "string", "pattern": "^([?]|([A-Z]{2}){1,2})$", "examples": ["RD", "WHBK", "?"]})
    }
}

choice! {
    /// How the end of a run is finished.
    pub enum EndingMethod {
        Factory = "factory", "as the vehicle's or part's maker made it";
        CrimpedRing = "ring", "crimped ring terminal";
        CrimpedSpade = "spade", "crimped push-on terminal";
        Ferrule = "ferrule", "crimped ferrule under a screw";
        CrimpedSplice = "butt", "crimped butt splice";
        Soldered = "soldered", "soldered joint";
        ScrewedBare = "bare-screw", "bare strands under a screw";
        Twisted = "twisted", "twisted together by hand";
        Tap = "tap", "insulation-piercing tap";
        Plugged = "plug", "moulded plug, such as a phono plug";
        Loose = "loose", "nothing: a bare loose end";
    }
}

choice! {
    /// What state a run is in.
    pub enum Condition {
        Sound = "sound", "sound";
        Chafed = "chafed", "chafed";
        Pinched = "pinched", "pinched";
        Melted = "melted", "melted";
        Corroded = "corroded", "corroded";
        Wet = "wet", "wet";
        Cut = "cut", "cut through";
    }
}

choice! {
    /// Surroundings that set the ambient temperature of a run until its route does.
    pub enum Surroundings {
        Cabin = "cabin", "cabin";
        LoadArea = "load-area", "load area";
        EngineBay = "engine-bay", "engine bay";
    }
}

impl Surroundings {
    /// The temperature there under these conditions.
    #[must_use]
    pub fn temperature(self, conditions: &crate::job::Conditions) -> crate::quantity::Celsius {
        use crate::quantity::Celsius;
        match self {
            Self::Cabin => conditions.cabin.or(Celsius(40.0)),
            Self::LoadArea => conditions.load_area.or(Celsius(40.0)),
            Self::EngineBay => conditions.engine_bay.or(Celsius(80.0)),
        }
    }
}

choice! {
    /// Who put a part or run there.
    pub enum FittedBy {
        Maker = "maker", "the vehicle's maker";
        Earlier = "earlier", "an earlier hand";
        Us = "us", "us";
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn listed_areas_of_awg_are_those_of_the_definition() {
        for number in i8::MIN..=i8::MAX {
            assert_eq!(Size::Awg(number).area().0, awg_area(number), "AWG {number}");
        }
    }

    #[test]
    fn each_size_knows_the_series_that_it_is_made_in() {
        let metric: Vec<Size> = Size::Metric(SquareMm(7.3)).series().collect();
        assert_eq!(metric.len(), METRIC_SERIES.len());
        assert!(metric.iter().all(|size| matches!(size, Size::Metric(_))));
        let gauge: Vec<Size> = Size::Awg(7).series().collect();
        assert_eq!(gauge.len(), AWG_SERIES.len());
        assert!(gauge.iter().all(|size| matches!(size, Size::Awg(_))));
        for series in [metric, gauge] {
            assert!(series.is_sorted_by(|thin, thick| thin.area() < thick.area()));
        }
    }

    #[test]
    fn a_gauge_in_place_of_square_millimetres() {
        // Areas of ASTM B258: 22 AWG 0.326, 18 AWG 0.823, 12 AWG 3.31, 4 AWG 21.15 mm².
        for (metric, gauge) in [(0.35, 22), (0.75, 18), (2.5, 12), (16.0, 4)] {
            assert_eq!(
                Size::Metric(SquareMm(metric)).as_gauge(),
                Size::Awg(gauge),
                "{metric}"
            );
        }
        assert_eq!(Size::Awg(8).as_gauge(), Size::Awg(8));
        assert_eq!(
            Size::Metric(SquareMm(300.0)).as_gauge(),
            Size::Metric(SquareMm(300.0))
        );
    }
}
