//! Label sheets as drawings of real size: black on white, cut along full lines, fold along dotted ones.

use super::sheet::{AREA_HIGH, AREA_WIDE, Label, LabelSheet, Placed, label_sheets};
use crate::handover::page::{Page, escaped};
use crate::work::Work;
use circuit::Study;
use drawing::text_width;
use words::{Unit, Words, precise, say};

/// Between the edge of a face and its words, in millimetres.
const INSET: f64 = 1.2;
/// Letter sizes in millimetres: of the mark, of what stands beside it, of what stands below. The last is 6.5 pt: smaller
/// ones are not read in a footwell.
const MARK: f64 = 4.4;
const BESIDE: f64 = 2.7;
const BELOW: f64 = 2.3;
/// Smallest that letters become to fit; longer words are pressed together.
const SMALLEST: f64 = 1.9;
/// The measure printed at the head, in millimetres: a rule held against it shows whether the printer scaled.
const MEASURE: f64 = 50.0;

/// Lines and words of a sheet: lines are stroked, words are filled.
#[derive(Default)]
struct Sketch {
    lines: String,
    words: String,
}

/// How a text stands.
struct Set {
    size: f64,
    bold: bool,
    /// Whether it ends at its place instead of beginning there.
    ends: bool,
}

const fn set(size: f64, bold: bool, ends: bool) -> Set {
    Set { size, bold, ends }
}

impl Sketch {
    /// A text in letters that fit the width.
    fn text(&mut self, (x, y): (f64, f64), wide: f64, how: &Set, text: &str) {
        if text.is_empty() || wide <= 0.0 {
            return;
        }
        let natural = text_width(text, 1.0, how.bold);
        let size = (wide / natural).clamp(SMALLEST, how.size);
        // Told in so many words, so that a printer without these faces keeps to the room as well.
        let length = (natural * size).min(wide);
        let bold = if how.bold { " font-weight=\"bold\"" } else { "" };
        let ends = if how.ends { " text-anchor=\"end\"" } else { "" };
        self.words.push_str(&format!(
            "<text x=\"{x:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\"{bold}{ends} textLength=\"{length:.2}\" \
             lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
            escaped(text)
        ));
    }

    /// One face: the mark, what stands beside it, what stands below.
    fn face(&mut self, label: &Label, x: f64, y: f64, wide: f64) {
        let inner = wide - 2.0 * INSET;
        let (left, right) = (x + INSET, x + wide - INSET);
        let alone = label.beside.len() < 2;
        let how = set(if alone { BESIDE } else { BELOW }, false, true);
        let widths = label.beside.iter().map(|text| text_width(text, how.size, false));
        // The mark is read from afar: what stands beside it gives way.
        let beside = widths.fold(0.0, f64::max).min(inner * 0.45);
        for (text, down) in label
            .beside
            .iter()
            .zip(if alone { [4.9, 0.0] } else { [3.4, 6.1] })
        {
            self.text((right, y + down), beside, &how, text);
        }
        let gap = if beside > 0.0 { INSET } else { 0.0 };
        self.text(
            (left, y + 5.1),
            inner - beside - gap,
            &set(MARK, true, false),
            &label.mark,
        );
        self.text((left, y + 8.9), inner, &set(BELOW, false, false), &label.below);
    }

    fn label(&mut self, placed: &Placed) {
        let Placed { label, x, y } = placed;
        let (wide, high) = label.size();
        self.lines.push_str(&format!(
            "<rect x=\"{x}\" y=\"{y}\" width=\"{wide}\" height=\"{high}\"/>\n"
        ));
        let faces = label.faces();
        for (at, length) in &faces {
            self.face(label, x + at, *y, *length);
        }
        // A flag is folded at both ends of what goes around the wire.
        if let [(_, first), (second, _)] = faces.as_slice() {
            for fold in [x + first, x + second] {
                self.lines.push_str(&format!(
                    "<path d=\"M{fold} {y}v{high}\" stroke-dasharray=\"0.4 0.8\"/>\n"
                ));
            }
        }
    }

    /// What the sheet is, how it is cut, and the measure.
    fn head(&mut self, title: &str, told: &str, words: &Words) {
        let left = AREA_WIDE - MEASURE;
        self.text((0.0, 4.2), left - 4.0, &set(3.6, true, false), title);
        self.text((0.0, 13.0), AREA_WIDE, &set(2.5, false, false), told);
        self.lines.push_str(&format!("<path d=\"M{left} 7.4h{MEASURE}"));
        for centimetre in 0..=5 {
            let high = if centimetre % 5 == 0 { 3.0 } else { 1.6 };
            let at = left + f64::from(centimetre) * 10.0;
            self.lines.push_str(&format!("M{at} 7.4v-{high}"));
        }
        self.lines.push_str("\"/>\n");
        let measure = words.figure(precise(MEASURE, Unit::Plain("mm"), 0));
        self.text((AREA_WIDE - 1.0, 3.6), MEASURE, &set(2.5, false, true), &measure);
    }

    fn svg(self, title: &str) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"labels\" role=\"img\" aria-label=\"{}\" \
             width=\"{AREA_WIDE}mm\" height=\"{AREA_HIGH}mm\" viewBox=\"0 0 {AREA_WIDE} {AREA_HIGH}\">\n\
             <g fill=\"none\" stroke=\"#000\" stroke-width=\"0.15\">\n{}</g>\n\
             <g fill=\"#000\" font-family=\"{}\">\n{}</g>\n</svg>\n",
            escaped(title),
            self.lines,
            drawing::FONT_FAMILY,
            self.words
        )
    }
}

fn pages(sheets: &[LabelSheet], heading: &str, words: &Words) -> Vec<String> {
    let count = sheets.len();
    let page = |(at, sheet): (usize, &LabelSheet)| {
        let title = words.say(&say!(
            "label-title",
            heading = heading,
            number = at + 1,
            count = count
        ));
        let mut sketch = Sketch::default();
        sketch.head(&title, &words.text("label-how"), words);
        sheet.labels.iter().for_each(|placed| sketch.label(placed));
        sketch.svg(&title)
    };
    sheets.iter().enumerate().map(page).collect()
}

/// All label sheets of the work, each a drawing (SVG) of real size that fits A4 and Letter.
#[must_use]
pub fn label_pages(work: &Work<'_>, study: &Study, words: &Words) -> Vec<String> {
    pages(
        &label_sheets(work, study, words),
        &words.say(&work.heading()),
        words,
    )
}

/// The same as one printable document without any resource from outside.
#[must_use]
pub fn label_document(work: &Work<'_>, study: &Study, words: &Words) -> String {
    let mut page = Page::of(words);
    for sheet in label_pages(work, study, words) {
        page.sheet(&sheet);
    }
    page.finish(&crate::List::Labels.title())
}
