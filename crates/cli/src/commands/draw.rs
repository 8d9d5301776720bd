//! `draw`: the sheet as SVG, by the same display list that the screen paints.

use crate::Report;
use crate::args::DrawCall;
use crate::input::{Opened, listed, open, unwritten};
use crate::speech::{tell, words};
use drawing::{DisplayList, KEY_HEIGHT, Layout, Look, Palette, PlanView, Under, draw_key, draw_plan};
use kurbo::{Point, Rect};
use model::{Sheet, SheetKind};
use std::sync::Arc;
use words::say;

/// Paper left around the drawing, in board units.
const MARGIN: f64 = 40.0;

pub(crate) fn run(call: &DrawCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    if call.body {
        return body_plan(call, &opened);
    }
    let mut sheet = opened.sheet();
    if call.arrange {
        for (id, at) in drawing::arrange(&sheet) {
            if let Some(part) = sheet.parts.get_mut(&id) {
                part.at = Some(at);
            }
        }
    }
    if call.under.is_some() {
        // What has no place yet gets one here, so that the same things stand at the same places on both sheets.
        for (id, at) in Layout::of(&sheet).arranged() {
            if let Some(part) = sheet.parts.get_mut(id) {
                part.at = part.at.or(Some(*at));
            }
        }
    }
    let under = match call.under {
        Some(kind) => Some(Arc::new(laid_under(&opened, kind, &sheet)?)),
        None => None,
    };
    let analysis = checks::analyse(&sheet, &opened.settings);
    // Lengths that follow from routes are drawn as such.
    let sheet = body::lay(&sheet, &opened.settings);
    let layout = Layout::read_by(&sheet, words());
    let beneath = under.as_ref().and_then(|under| under.bounds());
    // An empty sheet is a small piece of blank paper.
    let mut bounds = layout
        .bounds()
        .into_iter()
        .chain(beneath)
        .reduce(|all, one| all.union(one))
        .unwrap_or(Rect::new(0.0, 0.0, 400.0, 300.0))
        .inflate(MARGIN, MARGIN);
    let key = under.as_ref().map(|under| {
        let (key, area) = draw_key(under, Point::new(bounds.x0 + MARGIN, bounds.y1), 1.0);
        bounds = bounds.union(area.inflate(MARGIN / 2.0, 0.0));
        bounds.y1 = area.y1.max(bounds.y0 + KEY_HEIGHT);
        key
    });
    let look = Look {
        under,
        ..Look::default()
    };
    let mut list = drawing::draw(&sheet, &layout, Some(&analysis.study), &look, bounds);
    list.items.extend(key.into_iter().flat_map(|key| key.items));
    finish(call, &list, bounds)
}

/// The vehicle from above.
fn body_plan(call: &DrawCall, opened: &Opened) -> Result<Report, String> {
    let sheet = opened.sheet();
    let laid = body::lay(&sheet, &opened.settings);
    let look = Look::default();
    let view = PlanView::of(&opened.settings.body, &laid, None, &look, words())
        .ok_or_else(super::routes::no_body)?;
    let list = draw_plan(&view, &laid, None, &look);
    finish(call, &list, view.bounds())
}

/// The display list as SVG, where the call wants it.
fn finish(call: &DrawCall, list: &DisplayList, bounds: Rect) -> Result<Report, String> {
    let palette = match call.paper.as_str() {
        "dark" => Palette::dark(),
        "print" => Palette::print(),
        _ => Palette::light(),
    };
    let svg = drawing::svg(list, &palette, bounds);
    match &call.output {
        None => Ok(Report::clean(svg)),
        Some(path) => {
            std::fs::write(path, svg).map_err(|error| unwritten(path, &error))?;
            Ok(Report::clean(tell(&say!("cli-written", file = path)) + "\n"))
        }
    }
}

fn laid_under(opened: &Opened, kind: SheetKind, above: &Sheet) -> Result<Under, String> {
    if kind == opened.kind {
        return Err(tell(&say!("cli-under-itself", sheet = kind.word())));
    }
    let beneath = opened.job.sheet(kind).ok_or_else(|| {
        let others: Vec<&str> = opened
            .job
            .sheets
            .keys()
            .filter(|other| **other != opened.kind)
            .map(|other| other.word())
            .collect();
        tell(&say!(
            "cli-no-sheet-under",
            sheet = kind.word(),
            above = opened.kind.word(),
            there = listed(&others),
        ))
    })?;
    Ok(Under::read_by(kind, beneath.clone(), opened.kind, above, words()))
}
