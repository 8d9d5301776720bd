//! `draw`: the sheet as SVG, by the same display list that the screen paints.

use crate::Report;
use crate::args::DrawCall;
use crate::input::open;
use drawing::{Layout, Look, Palette};
use kurbo::Rect;

/// Paper left around the drawing, in board units.
const MARGIN: f64 = 40.0;

pub(crate) fn run(call: &DrawCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let mut sheet = opened.sheet();
    if call.arrange {
        for (id, at) in drawing::arrange(&sheet) {
            if let Some(part) = sheet.parts.get_mut(&id) {
                part.at = Some(at);
            }
        }
    }
    let analysis = checks::analyse(&sheet, &opened.settings);
    let layout = Layout::of(&sheet);
    // An empty sheet is a small piece of blank paper.
    let bounds = layout
        .bounds()
        .unwrap_or(Rect::new(0.0, 0.0, 400.0, 300.0))
        .inflate(MARGIN, MARGIN);
    let list = drawing::draw(&sheet, &layout, Some(&analysis.study), &Look::default(), bounds);
    let palette = match call.paper.as_str() {
        "dark" => Palette::dark(),
        "print" => Palette::print(),
        _ => Palette::light(),
    };
    let svg = drawing::svg(&list, &palette, bounds);
    match &call.output {
        None => Ok(Report::clean(svg)),
        Some(path) => {
            std::fs::write(path, svg).map_err(|error| format!("{path}: cannot be written: {error}"))?;
            Ok(Report::clean(format!("{path} written\n")))
        }
    }
}
