//! The SVG painter: a display list as a standalone picture.

use crate::display::{Anchor, DisplayList, Ink, Shape, Stroke};
use crate::letters::FONT_FAMILY;
use crate::palette::Palette;
use kurbo::{BezPath, PathEl, Point, Rect};
use std::fmt::Write;

/// The display list as a standalone SVG document of these bounds, on paper. One board unit is one CSS pixel.
#[must_use]
pub fn svg(list: &DisplayList, palette: &Palette, bounds: Rect) -> String {
    let mut out = String::with_capacity(256 + 160 * list.items.len());
    let (x, y) = (short(bounds.x0), short(bounds.y0));
    let (width, height) = (short(bounds.width().max(1.0)), short(bounds.height().max(1.0)));
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{x} {y} {width} {height}\" width=\"{width}\" height=\"{height}\" font-family=\"{FONT_FAMILY}\" stroke-linejoin=\"round\">"
    );
    let _ = writeln!(
        out,
        "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{}\"/>",
        palette.ink(Ink::Paper)
    );
    for item in &list.items {
        match &item.shape {
            Shape::Path { path, fill, stroke } => {
                let _ = write!(
                    out,
                    "<path d=\"{}\" fill=\"{}\"",
                    path_data(path),
                    fill.map_or("none", |ink| palette.ink(ink))
                );
                if let Some(stroke) = stroke {
                    write_stroke(&mut out, *stroke, palette);
                }
                out.push_str("/>\n");
            }
            Shape::Text {
                text,
                at,
                size,
                anchor,
                ink,
                bold,
                halo,
                upright,
            } => {
                let (x, y) = (short(at.x), short(at.y));
                let _ = write!(out, "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"", short(*size));
                match anchor {
                    Anchor::Start => {}
                    Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
                    Anchor::End => out.push_str(" text-anchor=\"end\""),
                }
                let _ = write!(out, " fill=\"{}\"", palette.ink(*ink));
                if *bold {
                    out.push_str(" font-weight=\"bold\"");
                }
                if *halo {
                    let _ = write!(
                        out,
                        " stroke=\"{}\" stroke-width=\"3\" paint-order=\"stroke\"",
                        palette.ink(Ink::Paper)
                    );
                }
                if *upright {
                    let _ = write!(out, " transform=\"rotate(-90 {x} {y})\"");
                }
                let _ = writeln!(out, ">{}</text>", escaped(text));
            }
        }
    }
    out.push_str("</svg>\n");
    out
}

fn write_stroke(out: &mut String, stroke: Stroke, palette: &Palette) {
    let _ = write!(
        out,
        " stroke=\"{}\" stroke-width=\"{}\"",
        palette.ink(stroke.ink),
        short(stroke.width)
    );
    if let Some((dash, gap)) = stroke.dash {
        let _ = write!(out, " stroke-dasharray=\"{} {}\"", short(dash), short(gap));
    }
}

/// A number to two decimals, without needless zeros.
fn short(number: f64) -> String {
    if !number.is_finite() {
        return "0".to_owned();
    }
    let mut text = format!("{number:.2}");
    text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    if text == "-0" { "0".to_owned() } else { text }
}

fn path_data(path: &BezPath) -> String {
    let mut out = String::new();
    let point = |at: Point| format!("{} {}", short(at.x), short(at.y));
    for element in path.elements() {
        let _ = match *element {
            PathEl::MoveTo(a) => write!(out, "M{}", point(a)),
            PathEl::LineTo(a) => write!(out, "L{}", point(a)),
            PathEl::QuadTo(a, b) => write!(out, "Q{} {}", point(a), point(b)),
            PathEl::CurveTo(a, b, c) => write!(out, "C{} {} {}", point(a), point(b), point(c)),
            PathEl::ClosePath => write!(out, "Z"),
        };
    }
    out
}

/// Text as XML holds it. Characters that XML 1.0 does not allow become the replacement character.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            letter if letter < ' ' || matches!(letter, '\u{fffe}' | '\u{ffff}') => out.push('\u{fffd}'),
            letter => out.push(letter),
        }
    }
    out
}
