//! Draws the plan of a job in text form to an SVG: `cargo run -p loomwright-drawing --example draw -- job.txt out.svg
//! [light|dark|print] [speakers,marks,0.5]`: overlay, marks, zoom. For looking at pictures while working on the drawing.

#![allow(
    clippy::disallowed_methods,
    reason = "a tool for the bench, not part of the core"
)]

use drawing::{
    DisplayList, Layout, Look, Mark, MarkShape, Overlay, Palette, TitleBlock, TitleCell, draw, draw_paper,
    svg,
};
use kurbo::Rect;
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(input), Some(output)) = (arguments.next(), arguments.next()) else {
        return Err("give a job in text form and a name for the picture".into());
    };
    let palette = match arguments.next().as_deref() {
        Some("dark") => Palette::dark(),
        Some("print") => Palette::print(),
        _ => Palette::light(),
    };
    let look = arguments.next().unwrap_or_default();
    let mut job = model::text::parse(&std::fs::read_to_string(input)?)?;
    if look.contains("arranged") {
        for sheet in job.sheets.values_mut() {
            for (id, at) in drawing::arrange(sheet) {
                if let Some(part) = sheet.parts.get_mut(&id) {
                    part.at = Some(at);
                }
            }
        }
    }
    let sheet = job.sheets.values().next_back().ok_or("the job has no sheet")?;
    let study = circuit::study(sheet, &job.settings);
    let layout = Layout::of(sheet);
    let visible = layout
        .bounds()
        .unwrap_or(Rect::new(0.0, 0.0, 400.0, 300.0))
        .inflate(80.0, 100.0);
    let cell = |name: &str, text: &str, share| TitleCell {
        name: name.to_owned(),
        text: text.to_owned(),
        share,
    };
    let title = TitleBlock {
        cells: vec![
            vec![cell("Vehicle", "An estate car", 1)],
            vec![cell("Job", &job.title, 3), cell("Sheet", "Plan", 1)],
        ],
    };
    let overlay = |word: &str| {
        let titles = Overlay::ALL
            .iter()
            .find(|overlay| overlay.title().to_lowercase() == word);
        titles.copied()
    };
    let mut seen = Look {
        overlay: look.split(',').find_map(overlay).unwrap_or_default(),
        zoom: look.split(',').find_map(|word| word.parse().ok()).unwrap_or(1.0),
        ..Look::default()
    };
    if look.contains("marks") {
        for (number, id) in sheet.parts.keys().enumerate() {
            seen.marks.push(Mark {
                finding: number as u32,
                shape: [MarkShape::Octagon, MarkShape::Triangle, MarkShape::Dot][number % 3],
                parts: if number % 2 == 0 { vec![*id] } else { vec![] },
                runs: sheet.runs.keys().nth(number).copied().into_iter().collect(),
                spots: Vec::new(),
                label: (number + 1).to_string(),
            });
        }
    }
    if let Some(circuit) = study.circuits.values().nth(1)
        && look.contains("lit")
    {
        seen.lit.parts = circuit.all_parts.clone();
        seen.lit.runs = circuit.all_runs.clone();
    }
    let mut list = DisplayList::default();
    list.items.extend(draw_paper(visible, 1.0, &title).items);
    list.items
        .extend(draw(sheet, &layout, Some(&study), &seen, visible).items);
    std::fs::write(output, svg(&list, &palette, visible))?;
    Ok(())
}
