//! Colours for the inks: light paper, dark paper, print. Insulation colours are those of the trade (IEC 60757 names
//! them, it does not fix their shades), toned so that each can be told from its neighbours on the paper it lies on.

use crate::display::Ink;
use model::conductor::Colour;

/// What colour each ink has.
#[derive(Clone, Debug, PartialEq)]
pub struct Palette {
    named: [&'static str; 16],
    insulation: [&'static str; 14],
    ramp: Vec<String>,
    hues: &'static [&'static str],
}

/// Hues for things that must be told apart: Okabe and Ito's set for colour-blind readers without its black (from
/// memory), darkened for light paper, and four more between them. What carries a hue also carries the tag of what it
/// stands for, so that the hue is never alone.
const HUES_ON_LIGHT: &[&str] = &[
    "#0072b2", "#d55e00", "#009e73", "#b0578d", "#9a7d00", "#3a9bd9", "#7a4fbf", "#8c564b", "#4f6d7a",
    "#c9283e",
];
const HUES_ON_DARK: &[&str] = &[
    "#56a8e0", "#f08a4b", "#3fc9a0", "#dd8fc0", "#e0c341", "#9ad4f5", "#b79df0", "#c99a8e", "#a9c0cc",
    "#f2717f",
];
/// Print: greys; the tags and dashes tell them apart.
const HUES_IN_PRINT: &[&str] = &["#000000", "#555555", "#7d7d7d", "#333333", "#999999"];

/// Anchor colours of the ramp from low to high, evenly spaced: one sweep of lightness from cool to warm, readable by
/// colour-blind eyes because lightness alone orders it.
const RAMP_ON_LIGHT: &[(u8, u8, u8)] = &[
    (150, 175, 205),
    (92, 138, 190),
    (88, 96, 168),
    (122, 60, 130),
    (150, 30, 75),
    (110, 0, 20),
];
const RAMP_ON_DARK: &[(u8, u8, u8)] = &[
    (70, 88, 120),
    (78, 120, 170),
    (128, 140, 200),
    (200, 140, 190),
    (240, 160, 120),
    (255, 224, 130),
];
const RAMP_IN_PRINT: &[(u8, u8, u8)] = &[(190, 190, 190), (0, 0, 0)];

fn ramp(anchors: &[(u8, u8, u8)]) -> Vec<String> {
    let pieces = anchors.len().saturating_sub(1).max(1);
    (0..=255_u32)
        .map(|step| {
            let along = f64::from(step) / 255.0 * pieces as f64;
            let piece = (along as usize).min(pieces - 1);
            let share = along - piece as f64;
            let (low, high) = match (anchors.get(piece), anchors.get(piece + 1)) {
                (Some(low), Some(high)) => (*low, *high),
                _ => ((0, 0, 0), (0, 0, 0)),
            };
            let mix = |a: u8, b: u8| libm::round(f64::from(a) + (f64::from(b) - f64::from(a)) * share) as u8;
            format!(
                "#{:02x}{:02x}{:02x}",
                mix(low.0, high.0),
                mix(low.1, high.1),
                mix(low.2, high.2)
            )
        })
        .collect()
}

impl Palette {
    /// Ink on cream paper.
    #[must_use]
    pub fn light() -> Self {
        Self {
            named: [
                "#f7f4ea", // paper
                "#e6e1d0", // ruling
                "#6f6a5c", // frame
                "#2b2a28", // line
                "#1f1e1c", // text
                "#6a665c", // faint
                "#1259a8", // picked
                "#b35c00", // lit
                "#fffdf6", // part fill
                "#a3161c", // stop
                "#8a5a00", // fix
                "#4a6078", // tidy
                "#7b776b", // casing
                "#cfcabb", // dimmed
                "#e7daea", // wash: the violet of a copying pencil
                "#7b4b92", // edge of the wash
            ],
            insulation: [
                "#1d1d1d", "#7a4a21", "#c8202a", "#e8761c", "#f2c714", "#2f8a3b", "#2563b8", "#7a3f9d",
                "#8f9092", "#ffffff", "#ee8fae", "#b38a2c", "#1fa5a3", "#bfc4c8",
            ],
            ramp: ramp(RAMP_ON_LIGHT),
            hues: HUES_ON_LIGHT,
        }
    }
    /// White ink on dark blue-grey paper.
    #[must_use]
    pub fn dark() -> Self {
        Self {
            named: [
                "#1b2026", "#262d35", "#8b949c", "#d9dcd6", "#eceee8", "#9aa3a8", "#7db8f5", "#f5b45a",
                "#222930", "#ff7a72", "#f0c060", "#9db8d2", "#8d959b", "#3a434c", "#43324e", "#c79be0",
            ],
            insulation: [
                "#0b0b0c", "#a06a3a", "#e2474d", "#f08b3a", "#f5d644", "#4fae5a", "#4f8de0", "#a873cf",
                "#9a9da1", "#f7f7f5", "#f4a6c0", "#cda548", "#3cc4c0", "#ced4d9",
            ],
            ramp: ramp(RAMP_ON_DARK),
            hues: HUES_ON_DARK,
        }
    }
    /// Black on white: greys of different depth, so that the drawing survives a printer without colours.
    #[must_use]
    pub fn print() -> Self {
        Self {
            named: [
                "#ffffff", "#e4e4e4", "#000000", "#000000", "#000000", "#444444", "#000000", "#000000",
                "#ffffff", "#000000", "#000000", "#000000", "#000000", "#b5b5b5", "#dedede", "#3a3a3a",
            ],
            insulation: [
                "#000000", "#555555", "#3c3c3c", "#8a8a8a", "#d6d6d6", "#606060", "#4a4a4a", "#6e6e6e",
                "#9c9c9c", "#ffffff", "#c2c2c2", "#a8a8a8", "#949494", "#cccccc",
            ],
            ramp: ramp(RAMP_IN_PRINT),
            hues: HUES_IN_PRINT,
        }
    }
    /// The colour of an ink, as CSS and SVG write it.
    #[must_use]
    pub fn ink(&self, ink: Ink) -> &str {
        let named = |place: usize| self.named.get(place).copied().unwrap_or("#000000");
        match ink {
            Ink::Paper => named(0),
            Ink::Ruling => named(1),
            Ink::Frame => named(2),
            Ink::Line => named(3),
            Ink::Text => named(4),
            Ink::Faint => named(5),
            Ink::Picked => named(6),
            Ink::Lit => named(7),
            Ink::PartFill => named(8),
            Ink::Stop => named(9),
            Ink::Fix => named(10),
            Ink::Tidy => named(11),
            Ink::Casing => named(12),
            Ink::Dimmed => named(13),
            Ink::Wash => named(14),
            Ink::WashEdge => named(15),
            Ink::Insulation(colour) => {
                let place = match colour {
                    Colour::Black => 0,
                    Colour::Brown => 1,
                    Colour::Red => 2,
                    Colour::Orange => 3,
                    Colour::Yellow => 4,
                    Colour::Green => 5,
                    Colour::Blue => 6,
                    Colour::Violet => 7,
                    Colour::Grey => 8,
                    Colour::White => 9,
                    Colour::Pink => 10,
                    Colour::Gold => 11,
                    Colour::Turquoise => 12,
                    Colour::Silver => 13,
                };
                self.insulation.get(place).copied().unwrap_or("#000000")
            }
            Ink::Ramp(step) => self.ramp.get(usize::from(step)).map_or("#000000", String::as_str),
            Ink::Hue(number) => self
                .hues
                .get(usize::from(number) % self.hues.len().max(1))
                .copied()
                .unwrap_or("#000000"),
        }
    }
}
