//! A drawing on paper: how large its letters come out, and how it is parted over several sheets where on one of them they
//! could not be read.

use crate::display::{DisplayList, Item, Owner, Shape};
#[cfg(test)]
use kurbo::Point;
use kurbo::{Rect, Size};
use ordered::OrderedMap;

/// Height of the smallest letters in print, in millimetres: 6 pt. Smaller ones are not read by everybody at arm's length
/// (common practice; ISO 3098-1 takes 1.8 mm as its least for capitals alone, which is 2.5 mm of letter).
pub const LEAST_PRINTED: f64 = 2.12;
/// What stands clear of the edge of its sheet, in millimetres.
const CLEAR: f64 = 2.0;
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
/// all of it in letters that can be read. Every part and everything that is written stands whole on one of them, as few as were
/// found; what only runs from one to another is told by the drawing as a whole.
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
    let size = Size::new(page.width / scale, page.height / scale);
    let whole = things(list, size, CLEAR / scale);
    let placed = |(row, column, area): (usize, usize, Rect)| Sheet {
        area,
        row: row + 1,
        column: column + 1,
        list: on_sheet(list, area),
    };
    fewest(&whole, size).into_iter().map(placed).collect()
}

/// As few sheets over all these things as were found, with row and column: of as many the ones of which the emptiest holds most.
fn fewest(things: &[Rect], page: Size) -> Vec<(usize, usize, Rect)> {
    let turned = |it: &Rect| Rect::new(it.y0, it.x0, it.y1, it.x1);
    let sideways: Vec<Rect> = things.iter().map(turned).collect();
    let numbered = |shelves: Vec<Vec<Rect>>| {
        let shelves = shelves.into_iter().enumerate();
        let numbered = |(shelf, areas): (usize, Vec<Rect>)| {
            let areas = areas.into_iter().enumerate();
            areas.map(move |(place, area)| (shelf, place, area))
        };
        shelves.flat_map(numbered).collect::<Vec<_>>()
    };
    let mut ways = Vec::new();
    for turn in Turn::ALL {
        ways.push(numbered(shelves(things, page, turn)));
        let columns = numbered(shelves(&sideways, Size::new(page.height, page.width), turn));
        ways.push(
            columns
                .into_iter()
                .map(|(column, row, area)| (row, column, turned(&area)))
                .collect(),
        );
    }
    let holds = |area: &Rect| things.iter().filter(|it| area.contains_rect(**it)).count();
    let emptiest = |way: &[(usize, usize, Rect)]| way.iter().map(|(_, _, area)| holds(area)).min();
    ways.into_iter()
        .min_by_key(|way| (way.len(), std::cmp::Reverse(emptiest(way))))
        .unwrap_or_default()
}

/// What of a drawing is on a sheet: lines as far as they reach, words only where they are whole.
fn on_sheet(list: &DisplayList, area: Rect) -> DisplayList {
    let shown = |item: &&Item| match item.written() {
        Some((_, written)) => area.contains_rect(written),
        None => item.bounds.overlaps(area),
    };
    DisplayList {
        items: list.items.iter().filter(shown).cloned().collect(),
    }
}

/// What has to stand whole on a sheet: parts with all that is written at them, and whatever else is written. What is larger than a
/// sheet is taken in pieces.
fn things(list: &DisplayList, page: Size, clear: f64) -> Vec<Rect> {
    let mut parts: OrderedMap<Owner, Rect> = OrderedMap::new();
    let mut things = Vec::new();
    for item in &list.items {
        let written = item.written().map(|(_, written)| written);
        match item.owner {
            Owner::Part(_) => {
                let bounds = written.map_or(item.bounds, |it| it.union(item.bounds));
                let all = parts.entry(item.owner).or_insert(bounds);
                *all = all.union(bounds);
            }
            _ => things.extend(written),
        }
    }
    things.extend(parts.into_values());
    let (wide, high) = (page.width - 2.0 * clear, page.height - 2.0 * clear);
    let mut pieces = Vec::new();
    for thing in things {
        let (across, down) = (
            (thing.width() / wide).ceil().max(1.0),
            (thing.height() / high).ceil().max(1.0),
        );
        let piece = Size::new(thing.width() / across, thing.height() / down);
        for y in 0..down.min(40.0) as u32 {
            for x in 0..across.min(40.0) as u32 {
                let corner = thing.origin() + (f64::from(x) * piece.width, f64::from(y) * piece.height);
                pieces.push(Rect::from_origin_size(corner, piece).inflate(clear, clear));
            }
        }
    }
    pieces
}

/// From which corner shelves are filled.
#[derive(Clone, Copy)]
struct Turn {
    from_right: bool,
    from_below: bool,
}

impl Turn {
    const ALL: [Self; 4] = [
        Self::of(false, false),
        Self::of(true, false),
        Self::of(false, true),
        Self::of(true, true),
    ];

    const fn of(from_right: bool, from_below: bool) -> Self {
        Self {
            from_right,
            from_below,
        }
    }
}

/// Sheets over all these things, in rows from the top and from left to right: again and again one as high, and then as far to the
/// side, as the outermost thing that is on none so far.
fn shelves(things: &[Rect], page: Size, turn: Turn) -> Vec<Vec<Rect>> {
    let x = |it: &Rect| if turn.from_right { -it.x1 } else { it.x0 };
    let y = |it: &Rect| if turn.from_below { -it.y1 } else { it.y0 };
    let mut open: Vec<Rect> = things.to_vec();
    let mut rows = Vec::new();
    while let Some(top) = open.iter().map(y).reduce(f64::min) {
        // A hair more than the page, for what fills it to the edge.
        let in_row = |it: &Rect| y(it) + it.height() <= top + page.height * (1.0 + 1e-9);
        let mut row = Vec::new();
        while let Some(edge) = open.iter().filter(|it| in_row(it)).map(x).reduce(f64::min) {
            let in_sheet = |it: &Rect| in_row(it) && x(it) + it.width() <= edge + page.width * (1.0 + 1e-9);
            let (on_it, rest): (Vec<_>, Vec<_>) = open.into_iter().partition(|it| in_sheet(it));
            open = rest;
            let Some(all) = on_it.into_iter().reduce(|all, one| all.union(one)) else {
                break;
            };
            row.push(Rect::from_center_size(all.center(), page));
        }
        if row.is_empty() {
            break;
        }
        row.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        rows.push(row);
    }
    if turn.from_below {
        rows.reverse();
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Things as large as parts are, strewn by a fixed rule.
    fn strewn(count: u32) -> Vec<Rect> {
        let at = |number: u32, step: u32| f64::from(number.wrapping_mul(step) % 997);
        (0..count)
            .map(|number| {
                let size = Size::new(10.0 + at(number, 31) / 20.0, 8.0 + at(number, 57) / 40.0);
                Rect::from_origin_size(Point::new(at(number, 389), at(number, 211) / 2.0), size)
            })
            .collect()
    }

    #[test]
    fn everything_is_whole_on_a_sheet_and_every_sheet_has_something_of_its_own() {
        let page = Size::new(250.0, 150.0);
        for count in [1, 5, 40, 200] {
            let things = strewn(count);
            let mut ways: Vec<Vec<Rect>> = Vec::new();
            for turn in Turn::ALL {
                ways.push(shelves(&things, page, turn).into_iter().flatten().collect());
            }
            let few: Vec<Rect> = fewest(&things, page)
                .into_iter()
                .map(|(_, _, area)| area)
                .collect();
            assert!(ways.iter().all(|it| few.len() <= it.len()));
            ways.push(few);
            for sheets in ways {
                let grown = |it: &Rect| it.inflate(1e-6, 1e-6);
                for thing in &things {
                    assert!(
                        sheets.iter().any(|it| grown(it).contains_rect(*thing)),
                        "{thing:?}"
                    );
                }
                // Even pages over the same ground, as many as its size asks for at least.
                let ground = things
                    .iter()
                    .copied()
                    .reduce(|all, one| all.union(one))
                    .expect("some");
                let even = (ground.width() / page.width).ceil() * (ground.height() / page.height).ceil();
                assert!(
                    (sheets.len() as f64) < 2.0 * even + 1.0,
                    "{count}: {} of {even}",
                    sheets.len()
                );
                assert!(sheets.len() <= things.len());
            }
        }
    }

    #[test]
    fn empty_ground_between_two_corners_has_no_sheet() {
        let page = Size::new(100.0, 100.0);
        let corners = [
            Rect::new(0.0, 0.0, 20.0, 20.0),
            Rect::new(900.0, 900.0, 920.0, 920.0),
        ];
        for turn in Turn::ALL {
            let rows = shelves(&corners, page, turn);
            assert_eq!(rows.iter().map(Vec::len).collect::<Vec<_>>(), [1, 1]);
            // In the middle of its sheet.
            assert_eq!(rows[0][0].center(), corners[0].center());
        }
    }
}
