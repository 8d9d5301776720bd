//! The program's icon: three runs that leave a loom for three studs. Drawn once, as shapes, and written as SVG and as PNG.

use flate2::write::ZlibEncoder;
use flate2::{Compression, Crc};
use std::fmt::Write as _;
use std::io::{self, Write as _};

/// Side of the box that the shapes are drawn in. What matters lies within the middle four fifths, since telephones cut icons
/// to shapes of their own (W3C Web Application Manifest, the inner circle that maskable icons keep to).
const SIDE: f64 = 100.0;
/// Drafting paper.
const PAPER: [u8; 3] = [0xf6, 0xf3, 0xea];

/// A line of round ends through points, or a disc where there is one point only.
struct Shape {
    points: &'static [(f64, f64)],
    width: f64,
    ink: [u8; 3],
}

const fn shape(points: &'static [(f64, f64)], width: f64, ink: [u8; 3]) -> Shape {
    Shape { points, width, ink }
}

const RED: [u8; 3] = [0xb3, 0x36, 0x2b];
const BLUE: [u8; 3] = [0x2a, 0x5d, 0x8f];
const DARK: [u8; 3] = [0x2b, 0x2b, 0x2b];

const SHAPES: [Shape; 10] = [
    shape(
        &[(20.0, 42.0), (44.0, 42.0), (60.0, 26.0), (72.0, 26.0)],
        6.0,
        RED,
    ),
    shape(&[(20.0, 50.0), (72.0, 50.0)], 6.0, DARK),
    shape(
        &[(20.0, 58.0), (44.0, 58.0), (60.0, 74.0), (72.0, 74.0)],
        6.0,
        BLUE,
    ),
    // The wrap that holds them together.
    shape(&[(30.0, 38.0), (30.0, 62.0)], 7.0, DARK),
    shape(&[(74.0, 26.0)], 15.0, DARK),
    shape(&[(74.0, 50.0)], 15.0, DARK),
    shape(&[(74.0, 74.0)], 15.0, DARK),
    shape(&[(74.0, 26.0)], 7.0, PAPER),
    shape(&[(74.0, 50.0)], 7.0, PAPER),
    shape(&[(74.0, 74.0)], 7.0, PAPER),
];

/// The icon as SVG.
pub(crate) fn svg() -> String {
    let colour = |[r, g, b]: [u8; 3]| format!("#{r:02x}{g:02x}{b:02x}");
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {SIDE} {SIDE}\"><path fill=\"{}\" d=\"M0 0H{SIDE}V{SIDE}H0z\"/><g fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">",
        colour(PAPER)
    );
    for shape in &SHAPES {
        let _ = write!(
            out,
            "<path stroke=\"{}\" stroke-width=\"{}\" d=\"",
            colour(shape.ink),
            shape.width
        );
        for (at, (x, y)) in shape.points.iter().enumerate() {
            let _ = write!(out, "{}{x} {y}", if at == 0 { 'M' } else { 'L' });
        }
        // A line of no length is drawn as its round ends.
        out.push_str(if shape.points.len() == 1 { "h0\"/>" } else { "\"/>" });
    }
    out.push_str("</g></svg>\n");
    out
}

/// The icon as PNG of so many pixels a side.
pub(crate) fn png(side: u32) -> io::Result<Vec<u8>> {
    // A row begins with the filter that it was packed with; none here.
    let mut rows = Vec::with_capacity((side * (side * 3 + 1)) as usize);
    let unit = SIDE / f64::from(side);
    for y in 0..side {
        rows.push(0);
        for x in 0..side {
            let at = ((f64::from(x) + 0.5) * unit, (f64::from(y) + 0.5) * unit);
            let mut pixel = PAPER.map(f64::from);
            for shape in &SHAPES {
                // A pixel that an edge goes through is covered by its share, near enough.
                let inside = (shape.width / 2.0 - distance(shape.points, at)) / unit + 0.5;
                let share = inside.clamp(0.0, 1.0);
                for (value, ink) in pixel.iter_mut().zip(shape.ink) {
                    *value += (f64::from(ink) - *value) * share;
                }
            }
            rows.extend(pixel.map(|value| value.round().clamp(0.0, 255.0) as u8));
        }
    }
    let mut packed = ZlibEncoder::new(Vec::new(), Compression::best());
    packed.write_all(&rows)?;
    // PNG specification (ISO/IEC 15948): signature, header (8 bits a sample, true colour, nothing interlaced), data, end.
    let mut out = b"\x89PNG\r\n\x1a\n".to_vec();
    let mut header = [side.to_be_bytes(), side.to_be_bytes()].concat();
    header.extend([8, 2, 0, 0, 0]);
    for (name, data) in [
        (b"IHDR", header),
        (b"IDAT", packed.finish()?),
        (b"IEND", Vec::new()),
    ] {
        let length = u32::try_from(data.len()).map_err(io::Error::other)?;
        let mut sum = Crc::new();
        sum.update(name);
        sum.update(&data);
        out.extend(length.to_be_bytes());
        out.extend(name);
        out.extend(data);
        out.extend(sum.sum().to_be_bytes());
    }
    Ok(out)
}

/// Distance of a point from a line through points.
fn distance(points: &[(f64, f64)], (x, y): (f64, f64)) -> f64 {
    let to = |(px, py): (f64, f64)| ((x - px) * (x - px) + (y - py) * (y - py)).sqrt();
    let mut least = points.first().map_or(f64::INFINITY, |first| to(*first));
    for pair in points.windows(2) {
        let [(ax, ay), (bx, by)] = [pair[0], pair[1]];
        let (dx, dy) = (bx - ax, by - ay);
        let along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
        let along = along.clamp(0.0, 1.0);
        least = least.min(to((ax + dx * along, ay + dy * along)));
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_png_is_the_picture_of_the_svg_as_other_people_decode_it() {
        let bytes = png(200).expect("packs");
        let mut reader = png::Decoder::new(io::Cursor::new(bytes))
            .read_info()
            .expect("a PNG");
        let mut pixels = vec![0; 200 * 200 * 3];
        let info = reader.next_frame(&mut pixels).expect("pixels");
        assert_eq!(
            (info.width, info.height, info.color_type),
            (200, 200, png::ColorType::Rgb)
        );
        let at = |x: f64, y: f64| {
            let start = ((y * 2.0) as usize * 200 + (x * 2.0) as usize) * 3;
            [pixels[start], pixels[start + 1], pixels[start + 2]]
        };
        for (x, y, ink) in [
            (2.0, 2.0, PAPER),
            (66.0, 26.0, RED),
            (55.0, 50.0, DARK),
            (66.0, 74.0, BLUE),
            (74.0, 50.0, PAPER),
        ] {
            assert_eq!(at(x, y), ink, "{x} {y}");
        }
        assert!(
            svg().contains("M74 50h0") && svg().contains("stroke=\"#b3362b\""),
            "{}",
            svg()
        );
    }
}
