//! The drawings of a handover: before, after, and what differs, by the painter that draws the page and `loomwright draw`.

use checks::Analysis;
use drawing::{
    KEY_HEIGHT, Layout, Look, Mark, MarkShape, Palette, PlanView, PrintSheet, Under, draw_key, draw_plan,
    scale_on, sheets, take_places, zoom_in_print,
};
use kurbo::{Point, Rect, Size};
use model::{Job, PartId, RunId, Sheet, SheetKind};
use std::sync::Arc;
use words::Words;

/// Paper left around a drawing, in board units.
const MARGIN: f64 = 16.0;
/// Room for a drawing on an upright page and on one that lies, in millimetres: what both A4 and Letter have between their
/// margins, and as high as the style sheet lets a drawing be.
const UPRIGHT: Size = Size::new(183.0, 100.0);
const LYING: Size = Size::new(253.0, 154.0);

/// What is marked on a drawing: things, and the numbers that stand there.
pub(crate) struct Marked {
    pub(crate) parts: Vec<PartId>,
    pub(crate) runs: Vec<RunId>,
    pub(crate) numbers: Vec<usize>,
}

/// A sheet whose parts all have places, so that both drawings show the same things at the same places.
pub(crate) fn placed(sheet: &Sheet, words: &Words) -> Sheet {
    let mut sheet = sheet.clone();
    for (id, at) in Layout::read_by(&sheet, words).arranged() {
        if let Some(part) = sheet.parts.get_mut(id) {
            part.at = part.at.or(Some(*at));
        }
    }
    sheet
}

/// The sheet before, its things where they stand on the one after.
pub(crate) fn placed_as(sheet: &Sheet, after: &Sheet) -> Sheet {
    let mut sheet = sheet.clone();
    for part in sheet.parts.values_mut() {
        part.at = None;
    }
    take_places(&mut sheet, after);
    sheet
}

fn bounds(layout: &Layout, under: Option<&Under>) -> Rect {
    let all = layout.bounds().into_iter().chain(under.and_then(Under::bounds));
    all.reduce(|all, one| all.union(one))
        .unwrap_or(Rect::new(0.0, 0.0, 400.0, 200.0))
        .inflate(MARGIN, MARGIN)
}

/// Without the fixed size: the document gives it its width.
fn fluid(svg: &str) -> String {
    let Some((head, rest)) = svg.split_once('>') else {
        return svg.to_owned();
    };
    let head: Vec<&str> = head
        .split(' ')
        .filter(|word| !word.starts_with("width=") && !word.starts_with("height="))
        .collect();
    format!("{}>{rest}", head.join(" "))
}

/// A sheet drawn for an upright page: small, so that tags are written larger, with marks.
pub(crate) fn small(sheet: &Sheet, analysis: &Analysis, marked: &[Marked], words: &Words) -> String {
    let layout = Layout::read_by(sheet, words);
    let area = bounds(&layout, None);
    let look = Look {
        zoom: zoom_in_print(scale_on(area, UPRIGHT)),
        marks: marked
            .iter()
            .enumerate()
            .map(|(at, mark)| Mark {
                finding: u32::try_from(at).unwrap_or(u32::MAX),
                shape: MarkShape::Octagon,
                parts: mark.parts.clone(),
                runs: mark.runs.clone(),
                spots: Vec::new(),
                label: mark
                    .numbers
                    .iter()
                    .map(usize::to_string)
                    .collect::<Vec<_>>()
                    .join("·"),
            })
            .collect(),
        ..Look::default()
    };
    let list = drawing::draw(sheet, &layout, Some(&analysis.study), &look, area);
    fluid(&drawing::svg(&list, &Palette::print(), area))
}

/// A sheet drawn for lying pages: all of it on one, with what can be read there; and where that is not everything that is
/// written on it, its parts, each on a page of its own.
pub(crate) fn large(
    sheet: &Sheet,
    analysis: &Analysis,
    words: &Words,
) -> (String, Vec<(PrintSheet, String)>) {
    let layout = Layout::read_by(sheet, words);
    let area = bounds(&layout, None);
    let drawn = |look: &Look| drawing::draw(sheet, &layout, Some(&analysis.study), look, area);
    let list = drawn(&Look::default());
    let parted = sheets(&list, area, LYING);
    let whole = if parted.is_empty() {
        list
    } else {
        drawn(&Look {
            zoom: zoom_in_print(scale_on(area, LYING)),
            ..Look::default()
        })
    };
    let parts = parted.into_iter().map(|part| {
        let svg = drawing::svg(&part.list, &Palette::print(), part.area);
        (part, fluid(&svg))
    });
    (
        fluid(&drawing::svg(&whole, &Palette::print(), area)),
        parts.collect(),
    )
}

/// The vehicle from above with parts and runs at their places; nothing where the job tells no form of body.
pub(crate) fn from_above(sheet: &Sheet, job: &Job, words: &Words) -> Option<String> {
    let placed = |sheet: &Sheet| sheet.parts.values().any(|part| part.place.is_some());
    let on_page = PlanView::on_page(&job.settings.body, sheet, None, &Look::default(), words, LYING);
    let (view, look) = on_page.filter(|_| placed(sheet))?;
    let list = draw_plan(&view, sheet, None, &look);
    Some(fluid(&drawing::svg(&list, &Palette::print(), view.bounds())))
}

/// A sheet over the one before it, with signs for what is new, changed and gone, and their key.
pub(crate) fn difference(
    after: (SheetKind, &Sheet),
    before: (SheetKind, &Sheet),
    analysis: &Analysis,
    words: &Words,
) -> String {
    let layout = Layout::read_by(after.1, words);
    let under = Under::read_by(before.0, before.1.clone(), after.0, after.1, words);
    let mut area = bounds(&layout, Some(&under));
    // The key in letters that can be read at the scale that the drawing alone would have; with the key it is a little less.
    let pixel = 1.2 * drawing::LEAST_PRINTED / (10.0 * scale_on(area, LYING));
    let (key, keys) = draw_key(&under, Point::new(area.x0 + MARGIN, area.y1), pixel);
    area = area.union(keys.inflate(MARGIN / 2.0, 0.0));
    area.y1 = keys.y1.max(area.y0 + KEY_HEIGHT * pixel);
    let look = Look {
        under: Some(Arc::new(under)),
        zoom: zoom_in_print(scale_on(area, LYING)),
        ..Look::default()
    };
    let mut list = drawing::draw(after.1, &layout, Some(&analysis.study), &look, area);
    list.items.extend(key.items);
    fluid(&drawing::svg(&list, &Palette::print(), area))
}
