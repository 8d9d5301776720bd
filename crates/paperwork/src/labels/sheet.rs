//! Labels of real size and where each lies on its sheet, in millimetres.
//!
//! A *flag* goes around a wire: two faces with the same words and between them a strip as long as the wire is round. It is
//! folded at the wire and stuck to itself, and reads upright from either side. A *flat* one is stuck beside a fuse or a
//! terminal. Labels lie in rows in the order of the list, so that whoever cuts them has those of one run side by side.

use crate::cut::laid;
use crate::fuses::device_text;
use crate::table::size_value;
use crate::work::{Becomes, Work};
use circuit::{Device, Study};
use model::conductor::Size;
use model::property::PropertyType;
use model::{End, Part, PartId, PartKind, TerminalName};
use reference::jackets::outer_diameter;
use words::{Unit, Value, Words, figure, say};

/// What may be printed on, common to A4 (210 × 297 mm) and Letter (216 × 279 mm) with margins that every printer keeps.
pub(crate) const AREA_WIDE: f64 = 190.0;
/// The same upright.
pub(crate) const AREA_HIGH: f64 = 258.0;
/// Above the first row: what the sheet is, and a measure to hold a rule against.
const HEAD: f64 = 16.0;
/// Between two labels.
const GAP: f64 = 2.0;
/// A face of a flag: its words fit, and two flags of a thick wire lie side by side.
const FACE: f64 = 27.0;
const FLAG_HIGH: f64 = 10.0;
const FLAT_WIDE: f64 = 36.0;
const FLAT_HIGH: f64 = 10.0;
/// Added to the way around a wire: paper does not bend like a thread.
const AROUND: f64 = 2.0;

/// What form a label has.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Two faces and between them what goes around the wire, this many millimetres.
    Flag {
        /// Length of the strip between the faces.
        around: f64,
    },
    /// One face.
    Flat,
}

/// A label: a mark to be read from afar and what stands beside and below it.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Its form.
    pub shape: Shape,
    /// Written large: `W12`, `F1`, `D1.out2`.
    pub mark: String,
    /// Beside the mark, one above the other: size and colour; the rating alone.
    pub beside: Vec<String>,
    /// Below it: where this end goes and where the other one is; what a fuse guards.
    pub below: String,
}

impl Label {
    /// Length and height in millimetres.
    #[must_use]
    pub fn size(&self) -> (f64, f64) {
        match self.shape {
            Shape::Flag { around } => (2.0 * FACE + around, FLAG_HIGH),
            Shape::Flat => (FLAT_WIDE, FLAT_HIGH),
        }
    }
    /// Where its faces begin, from its left edge, and how long each is.
    #[must_use]
    pub fn faces(&self) -> Vec<(f64, f64)> {
        match self.shape {
            Shape::Flag { around } => vec![(0.0, FACE), (FACE + around, FACE)],
            Shape::Flat => vec![(0.0, FLAT_WIDE)],
        }
    }
}

/// A label and the upper left corner of it within the printed area.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The label.
    pub label: Label,
    /// From the left, in millimetres.
    pub x: f64,
    /// From above, in millimetres.
    pub y: f64,
}

/// One sheet of labels.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LabelSheet {
    /// Its labels, row by row.
    pub labels: Vec<Placed>,
}

/// The way around a wire, and a little more; the thickest of the table where the size is not known.
fn around(size: Option<Size>) -> f64 {
    let round = outer_diameter(size.map(Size::area)).0 * 1000.0 * core::f64::consts::PI;
    (round + AROUND).ceil()
}

fn end_text(work: &Work<'_>, end: &End, words: &Words) -> String {
    match end.terminal() {
        Some(at) => work.sheet.written(at),
        None => words.say(&say!("paper-loose")),
    }
}

/// A size as the wire has it printed on: a label has no room for the nearest one of another series.
fn size_printed(size: Size) -> Value {
    match size {
        Size::Metric(area) => figure(area.0, Unit::Plain("mm²")).into(),
        Size::Awg(_) => size_value(size),
    }
}

fn flags(work: &Work<'_>, words: &Words) -> Vec<Label> {
    let mut labels = Vec::new();
    for (_, run) in laid(work) {
        let size = run.wire.size.value();
        let mut beside = vec![run.wire.jacket.print()];
        if let Some(size) = size {
            beside.insert(0, words.say(&say!("as-it-stands", text = size_printed(size))));
        }
        let [from, to] = run.ends().map(|end| end_text(work, end, words));
        for (here, there) in [(&from, &to), (&to, &from)] {
            labels.push(Label {
                shape: Shape::Flag { around: around(size) },
                mark: run.tag.clone(),
                beside: beside.clone(),
                below: format!("{here} ← {there}"),
            });
        }
    }
    labels
}

/// Whether many wires land on a part that says nothing of itself: its terminals get labels.
fn is_marked(part: &Part) -> bool {
    matches!(
        part.is,
        PartKind::Block(_)
            | PartKind::Bus(_)
            | PartKind::Ground(_)
            | PartKind::Relay(_)
            | PartKind::Isolator(_)
            | PartKind::Switch(_)
    )
}

/// Runs of ours that land on a terminal, and where each goes.
fn landing(work: &Work<'_>, part: PartId, terminal: &TerminalName, words: &Words) -> Vec<String> {
    let mut all = Vec::new();
    for (_, run) in laid(work) {
        let ends = run.ends();
        for (at, end) in ends.iter().enumerate() {
            if end
                .terminal()
                .is_some_and(|on| on.part == part && on.terminal == *terminal)
            {
                all.push(format!("{} → {}", run.tag, end_text(work, ends[1 - at], words)));
            }
        }
    }
    all
}

/// A label for every fuse and breaker that we fit or change, and for every terminal on which one of our runs lands.
fn flats(work: &Work<'_>, study: &Study, words: &Words) -> Vec<Label> {
    let mut labels = Vec::new();
    let rating = |device: &Device| -> Vec<String> {
        let rating = device.rating;
        let rating = rating.map(|amps| words.figure(figure(amps.0, Unit::Plain("A"))));
        rating.into_iter().collect()
    };
    let flat = |mark: String, beside: Vec<String>, below: String| Label {
        shape: Shape::Flat,
        mark,
        beside,
        below,
    };
    for device in study
        .devices
        .iter()
        .filter(|device| device.device.output.is_none())
    {
        let id = device.device.part;
        let ours = !matches!(
            work.part(id),
            Becomes::Kept | Becomes::Refitted | Becomes::Removed
        );
        if let (true, Some(part)) = (ours, work.sheet.parts.get(&id)) {
            labels.push(flat(
                device_text(work, &device.device),
                rating(device),
                part.label.clone(),
            ));
        }
    }
    for (id, part) in work.sheet.parts.iter().filter(|(_, part)| is_marked(part)) {
        for terminal in part.terminals() {
            let mut below = landing(work, *id, &terminal.name, words);
            if below.is_empty() {
                continue;
            }
            if below.len() > 2 {
                let more = below.len() - 2;
                below.truncate(2);
                below.push(words.say(&say!("label-more", count = more)));
            }
            let device = study.devices.iter().find(|device| {
                let output = device.device.output.as_ref();
                device.device.part == *id && output == Some(&terminal.name)
            });
            let mark = format!("{}.{}", part.tag, terminal.name);
            labels.push(flat(
                mark,
                device.map(rating).unwrap_or_default(),
                below.join("; "),
            ));
        }
    }
    labels
}

/// Lays labels in rows, and rows on sheets. A label that is longer than a sheet is wide does not exist: the thickest wire of
/// the table is 62 mm around.
fn pack(labels: Vec<Label>) -> Vec<LabelSheet> {
    let mut sheets: Vec<LabelSheet> = Vec::new();
    let (mut x, mut y, mut row) = (0.0, HEAD, 0.0);
    let mut sheet = LabelSheet::default();
    for label in labels {
        let (wide, high) = label.size();
        if x > 0.0 && x + wide > AREA_WIDE {
            (x, y, row) = (0.0, y + row + GAP, 0.0);
        }
        if y + high > AREA_HIGH {
            sheets.push(std::mem::take(&mut sheet));
            (x, y, row) = (0.0, HEAD, 0.0);
        }
        sheet.labels.push(Placed { label, x, y });
        x += wide + GAP;
        row = f64::max(row, high);
    }
    if !sheet.labels.is_empty() {
        sheets.push(sheet);
    }
    sheets
}

/// All labels of the work on as many sheets as they need: flags for both ends of every run that we lay, then flat ones for
/// fuses and terminals.
#[must_use]
pub fn label_sheets(work: &Work<'_>, study: &Study, words: &Words) -> Vec<LabelSheet> {
    let mut labels = flags(work, words);
    labels.extend(flats(work, study, words));
    pack(labels)
}
