//! The sheet of paper: ruling, frame with zones, title block.

use super::pen::{Pen, Writing, solid};
use crate::display::{Anchor, Detail, DisplayList, Ink, Owner};
use crate::letters::fit;
use kurbo::{BezPath, Point, Rect};

/// One cell of the title block.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TitleCell {
    /// What it holds, in small letters: `Vehicle`.
    pub name: String,
    /// What stands in it.
    pub text: String,
    /// Its share of the width of its row.
    pub share: u8,
}

/// The title block, after ISO 7200: rows of cells, drawn in the lower right corner of the frame.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TitleBlock {
    /// Its rows from top to bottom.
    pub cells: Vec<Vec<TitleCell>>,
}

/// Ruling, and with a frame the frame and title block.
#[must_use]
pub fn draw_paper(visible: Rect, zoom: f64, title: &TitleBlock) -> DisplayList {
    let zoom = if zoom.is_finite() && zoom > 0.0 { zoom } else { 1.0 };
    let mut pen = Pen::new(Detail::Numbers, zoom);
    pen.owner(Owner::Sheet);
    // A ruling line every 50 board units; where those would lie closer than 14 pixels, every 250, and so on.
    let mut step = 50.0;
    while step * zoom < 14.0 && step < 1e7 {
        step *= 5.0;
    }
    let count = ((visible.width() + visible.height()) / step) as u32;
    if count < 2000 {
        let mut path = BezPath::new();
        let mut x = libm::ceil(visible.x0 / step) * step;
        while x <= visible.x1 {
            path.move_to((x, visible.y0));
            path.line_to((x, visible.y1));
            x += step;
        }
        let mut y = libm::ceil(visible.y0 / step) * step;
        while y <= visible.y1 {
            path.move_to((visible.x0, y));
            path.line_to((visible.x1, y));
            y += step;
        }
        pen.line(Detail::Shape, path, Ink::Ruling, 1.0 / zoom);
    }
    draw_frame(&mut pen, visible, 1.0 / zoom, title);
    pen.finish()
}

/// The frame stands on the visible paper: its size is in screen pixels.
fn draw_frame(pen: &mut Pen, visible: Rect, pixel: f64, title: &TitleBlock) {
    let margin = 22.0 * pixel;
    if visible.width() < 12.0 * margin || visible.height() < 8.0 * margin {
        return;
    }
    let inner = visible.inflate(-margin, -margin);
    pen.area(Detail::Shape, inner, None, Some(solid(Ink::Frame, 1.4 * pixel)));
    // Zones after ISO 5457: letters down the sides (I and O left out), numbers along the edges, about 150 px wide.
    let size = 9.0 * pixel;
    let columns = (libm::round(inner.width() / (150.0 * pixel)) as i32).clamp(2, 40);
    let rows = (libm::round(inner.height() / (150.0 * pixel)) as i32).clamp(2, 24);
    let mut ticks = BezPath::new();
    let write = |pen: &mut Pen, text: String, x: f64, y: f64| {
        pen.write(
            Detail::Shape,
            Writing {
                anchor: Anchor::Middle,
                ..Writing::new(text, Point::new(x, y + 0.35 * size), size, Ink::Frame)
            },
        );
    };
    for n in 0..columns {
        let x0 = inner.x0 + inner.width() * f64::from(n) / f64::from(columns);
        let middle = x0 + inner.width() / f64::from(columns) / 2.0;
        for (y, edge) in [
            (visible.y0 + margin / 2.0, inner.y0),
            (visible.y1 - margin / 2.0, inner.y1),
        ] {
            write(pen, (n + 1).to_string(), middle, y);
            if n > 0 {
                let out = if edge == inner.y0 { -8.0 } else { 8.0 } * pixel;
                ticks.move_to((x0, edge));
                ticks.line_to((x0, edge + out));
            }
        }
    }
    let letters: Vec<char> = ('A'..='Z')
        .filter(|letter| !matches!(letter, 'I' | 'O'))
        .collect();
    for n in 0..rows {
        let y0 = inner.y0 + inner.height() * f64::from(n) / f64::from(rows);
        let middle = y0 + inner.height() / f64::from(rows) / 2.0;
        let letter = letters.get(n as usize).copied().unwrap_or(' ').to_string();
        for (x, edge) in [
            (visible.x0 + margin / 2.0, inner.x0),
            (visible.x1 - margin / 2.0, inner.x1),
        ] {
            write(pen, letter.clone(), x, middle);
            if n > 0 {
                let out = if edge == inner.x0 { -8.0 } else { 8.0 } * pixel;
                ticks.move_to((edge, y0));
                ticks.line_to((edge + out, y0));
            }
        }
    }
    pen.line(Detail::Shape, ticks, Ink::Frame, pixel);
    draw_title_block(pen, inner, pixel, title);
}

fn draw_title_block(pen: &mut Pen, inner: Rect, pixel: f64, title: &TitleBlock) {
    for (area, cell) in title_cells(inner, pixel, title) {
        pen.area(
            Detail::Shape,
            area,
            Some(Ink::PartFill),
            Some(solid(Ink::Frame, pixel)),
        );
        let room = area.width() - 10.0 * pixel;
        pen.write(
            Detail::Shape,
            Writing::new(
                fit(&cell.name, room, 8.0 * pixel, false),
                Point::new(area.x0 + 5.0 * pixel, area.y0 + 10.0 * pixel),
                8.0 * pixel,
                Ink::Faint,
            ),
        );
        let size = 12.0 * pixel;
        pen.write(
            Detail::Shape,
            Writing::new(
                fit(&cell.text, room, size, false),
                Point::new(area.x0 + 5.0 * pixel, area.y1 - 6.0 * pixel),
                size,
                Ink::Text,
            ),
        );
    }
}

/// Where the cells of the title block lie in a frame; `pixel` is the size of a screen pixel in board units.
#[must_use]
pub fn title_cells(inner: Rect, pixel: f64, title: &TitleBlock) -> Vec<(Rect, &TitleCell)> {
    let width = (440.0 * pixel).min(inner.width());
    let height = 32.0 * pixel;
    let mut cells = Vec::new();
    for (row, list) in title.cells.iter().enumerate() {
        let y0 = inner.y1 - height * (title.cells.len() - row) as f64;
        let whole: u32 = list.iter().map(|cell| u32::from(cell.share.max(1))).sum();
        let mut x = inner.x1 - width;
        for cell in list {
            let own = width * f64::from(cell.share.max(1)) / f64::from(whole.max(1));
            cells.push((Rect::new(x, y0, x + own, y0 + height), cell));
            x += own;
        }
    }
    cells
}
