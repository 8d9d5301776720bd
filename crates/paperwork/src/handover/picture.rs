//! The drawings of a handover: before, after, and what differs, by the painter that draws the page and `loomwright draw`.

use checks::Analysis;
use drawing::{
    KEY_HEIGHT, Layout, Look, Mark, MarkShape, Palette, PlanView, Under, draw_key, draw_plan, take_places,
};
use kurbo::{Point, Rect};
use model::{Job, PartId, RunId, Sheet, SheetKind};
use std::sync::Arc;
use words::Words;

/// Paper left around a drawing, in board units.
const MARGIN: f64 = 16.0;
/// Width of an upright page between its margins, in CSS pixels: that of A4, since Letter is wider.
const UPRIGHT: f64 = 690.0;

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
        zoom: (UPRIGHT / area.width()).clamp(0.2, 1.0),
        marks: marked
            .iter()
            .enumerate()
            .map(|(at, mark)| Mark {
                finding: u32::try_from(at).unwrap_or(u32::MAX),
                shape: MarkShape::Octagon,
                parts: mark.parts.clone(),
                runs: mark.runs.clone(),
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

/// A sheet drawn for a lying page, with everything that is written on it.
pub(crate) fn large(sheet: &Sheet, analysis: &Analysis, words: &Words) -> String {
    let layout = Layout::read_by(sheet, words);
    let area = bounds(&layout, None);
    let list = drawing::draw(sheet, &layout, Some(&analysis.study), &Look::default(), area);
    fluid(&drawing::svg(&list, &Palette::print(), area))
}

/// Pixels for a board unit of the body plan on a printed page, which lies: about 1,200 units on 270 mm, which are 1,020 pixels
/// of CSS.
const PRINTED: f64 = 0.84;

/// The vehicle from above with parts and runs at their places; nothing where the job tells no form of body.
pub(crate) fn from_above(sheet: &Sheet, job: &Job, words: &Words) -> Option<String> {
    let placed = |sheet: &Sheet| sheet.parts.values().any(|part| part.place.is_some());
    let look = Look {
        zoom: PRINTED,
        ..Look::default()
    };
    let view = PlanView::of(&job.settings.body, sheet, None, &look, words).filter(|_| placed(sheet))?;
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
    let (key, keys) = draw_key(&under, Point::new(area.x0 + MARGIN, area.y1));
    area = area.union(keys.inflate(MARGIN / 2.0, 0.0));
    area.y1 = keys.y1.max(area.y0 + KEY_HEIGHT);
    let look = Look {
        under: Some(Arc::new(under)),
        ..Look::default()
    };
    let mut list = drawing::draw(after.1, &layout, Some(&analysis.study), &look, area);
    list.items.extend(key.items);
    fluid(&drawing::svg(&list, &Palette::print(), area))
}
