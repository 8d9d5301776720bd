//! The key of a sheet under which another one is laid, as it stands on copies: how many things became what, and what each
//! sign means.

use super::pen::{Pen, Writing};
use super::sleeves::sample;
use crate::display::{Detail, DisplayList, Ink, Owner};
use crate::letters::text_width;
use crate::under::Under;
use kurbo::{Point, Rect};

/// Height of the key, in its pixels.
pub const KEY_HEIGHT: f64 = 52.0;
const SIZE: f64 = 10.0;
const SAMPLE: (f64, f64) = (24.0, 13.0);

/// The key with its upper left corner at a point, and the box that it fills; `pixel` is how many board units a pixel of it has.
#[must_use]
pub fn draw_key(under: &Under, at: Point, pixel: f64) -> (DisplayList, Rect) {
    let size = SIZE * pixel;
    let mut pen = Pen::new(Detail::Numbers, 1.0);
    pen.owner(Owner::Sheet);
    let words = under.words();
    pen.write(
        Detail::Shape,
        Writing {
            bold: true,
            ..Writing::new(
                words.clone(),
                Point::new(at.x, at.y + (SIZE + 2.0) * pixel),
                (SIZE + 1.0) * pixel,
                Ink::Text,
            )
        },
    );
    let mut x = at.x + 6.0 * pixel;
    for (sign, said) in under.key() {
        let middle = at.y + 36.0 * pixel;
        let half = SAMPLE.1 / 2.0 * pixel;
        let area = Rect::new(x, middle - half, x + SAMPLE.0 * pixel, middle + half);
        sample(&mut pen, sign, area);
        x += (SAMPLE.0 + 10.0) * pixel;
        pen.owner(Owner::Sheet);
        pen.write(
            Detail::Shape,
            Writing::new(said.clone(), Point::new(x, middle + 0.35 * size), size, Ink::Text),
        );
        x += text_width(&said, size, false) + 24.0 * pixel;
    }
    let right = x.max(at.x + text_width(&words, size + pixel, true));
    (
        pen.finish(),
        Rect::new(at.x, at.y, right, at.y + KEY_HEIGHT * pixel),
    )
}
