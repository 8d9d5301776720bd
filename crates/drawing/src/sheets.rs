//! A drawing on paper: how large its letters come out, and how it is parted over several sheets where on one of them they
//! could not be read.

use crate::display::{DisplayList, Shape};
use kurbo::{Point, Rect, Size};

/// Height of the smallest letters in print, in millimetres: 6 pt. Smaller ones are not read by everybody at arm's length
/// (common practice; ISO 3098-1 takes 1.8 mm as its least for capitals alone, which is 2.5 mm of letter).
pub const LEAST_PRINTED: f64 = 2.12;
/// What two sheets that lie side by side both show, in millimetres at least.
const SHARED: f64 = 8.0;
/// Smallest letters that are drawn, in pixels: with a zoom of this many pixels for a board unit nothing smaller is.
const LEAST_DRAWN: f64 = crate::draw::pen::LEAST_LETTERS_PX;

/// A sheet of a drawing that is parted.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The part of the drawing.
    pub area: Rect,
    /// Its row, from 1 on.
    pub row: usize,
    /// Its column, from 1 on.
    pub column: usize,
    /// What of the drawing touches it.
    pub list: DisplayList,
}

/// Millimetres for a board unit with which an area fills a page.
#[must_use]
pub fn scale_on(area: Rect, page: Size) -> f64 {
    (page.width / area.width().max(1.0)).min(page.height / area.height().max(1.0))
}

/// The zoom for [`crate::Look`] at which nothing is drawn that in print, at this scale, would be too small to be read: detail
/// drops away in its order, and tags are written larger.
#[must_use]
pub fn zoom_in_print(scale: f64) -> f64 {
    // Below the least of these, numbers in marks would drop away too.
    (LEAST_DRAWN / LEAST_PRINTED * scale).clamp(0.17, 1.0)
}

/// The sheets of a drawing with all its detail, row by row, on pages of this size in millimetres; none where one page shows
/// all of it in letters that can be read. Sheets on which nothing would stand are left out.
#[must_use]
pub fn sheets(list: &DisplayList, area: Rect, page: Size) -> Vec<Sheet> {
    let least = list.items.iter().filter_map(|item| match &item.shape {
        Shape::Text { size, .. } => Some(*size),
        Shape::Path { .. } => None,
    });
    let Some(least) = least.reduce(f64::min).filter(|least| *least > 0.0) else {
        return Vec::new();
    };
    let scale = LEAST_PRINTED / least;
    if scale_on(area, page) >= 0.999 * scale {
        return Vec::new();
    }
    let (wide, high) = (page.width / scale, page.height / scale);
    let (columns, rows) = (
        starts(area.x0, area.x1, wide, SHARED / scale),
        starts(area.y0, area.y1, high, SHARED / scale),
    );
    let mut sheets = Vec::new();
    for (row, y) in rows.iter().enumerate() {
        for (column, x) in columns.iter().enumerate() {
            let area = Rect::from_origin_size(Point::new(*x, *y), Size::new(wide, high));
            let items = list.items.iter().filter(|item| item.bounds.overlaps(area));
            let list = DisplayList {
                items: items.cloned().collect(),
            };
            if !list.items.is_empty() {
                sheets.push(Sheet {
                    area,
                    row: row + 1,
                    column: column + 1,
                    list,
                });
            }
        }
    }
    sheets
}

/// Where pieces of this length begin that cover a stretch and share at least so much.
fn starts(from: f64, to: f64, piece: f64, shared: f64) -> Vec<f64> {
    let length = to - from;
    if length <= piece {
        // In the middle of its sheet.
        return vec![from - (piece - length) / 2.0];
    }
    let count = ((length - shared) / (piece - shared).max(1.0))
        .ceil()
        .clamp(2.0, 40.0);
    let step = (length - piece) / (count - 1.0);
    (0..count as u32)
        .map(|number| from + f64::from(number) * step)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_cover_all_of_it_and_share_what_they_should() {
        for length in [10.0, 99.0, 101.0, 250.0, 1234.5] {
            let all = starts(5.0, 5.0 + length, 100.0, 12.0);
            assert!(
                all.first().is_some_and(|it| *it <= 5.0)
                    && all.last().is_some_and(|it| it + 100.0 > 4.99 + length)
            );
            for pair in all.windows(2) {
                assert!(pair[1] - pair[0] <= 88.0 + 1e-9, "{length}: {all:?}");
            }
        }
        assert_eq!(starts(0.0, 100.0, 100.0, 12.0).len(), 1);
        assert_eq!(starts(0.0, 188.0, 100.0, 12.0).len(), 2);
    }
}
