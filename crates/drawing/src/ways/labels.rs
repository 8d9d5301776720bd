//! Labels of runs: tag, size and length on the longest straight piece that has room.

use super::tracks::{At, Axis, Piece, Tracks, pieces};
use crate::index::Index;
use crate::letters::text_width;
use kurbo::{Point, Rect, Vec2};
use model::conductor::Size;
use model::property::PropertyType;
use model::quantity::Metres;
use model::{Fact, PartId, Run, RunId};
use ordered::Sort as _;
use words::{Lengths, Reader, Sizes, Words};

/// Size of a run's label.
pub(crate) const RUN_LABEL_SIZE: f64 = 8.0;
/// Least length kept for a label, so that an overlay's number fits in its place.
const LEAST_ROOM: f64 = 36.0;

/// The label of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct RunLabel {
    /// What it says; as much of tag, size and length as there is room for.
    pub text: String,
    /// Middle of its baseline.
    pub at: Point,
    /// Whether it is turned a quarter anticlockwise, along an upright piece.
    pub upright: bool,
    /// The box kept for it.
    pub area: Rect,
}

/// A size in the series that it is made in, whichever the reader reads: it is what stands on the wire.
#[must_use]
pub fn size_as_marked(size: Size, words: &Words) -> String {
    match size {
        Size::Metric(area) => {
            let metric = Reader {
                sizes: Sizes::SquareMillimetres,
                ..words.reader()
            };
            crate::numbers::quantity(&words.read_by(metric), area)
        }
        Size::Awg(_) => size.print().replace("AWG", " AWG"),
    }
}

/// Everything a label could say, longest first.
fn wordings(run: &Run, length: Fact<Metres>, words: &Words) -> Vec<String> {
    let unknown_size = if words.reader().sizes == Sizes::Awg {
        "? AWG"
    } else {
        "? mm²"
    };
    let unknown_length = if words.reader().lengths == Lengths::Feet {
        "? ft"
    } else {
        "? m"
    };
    let size = run
        .wire
        .size
        .marked(unknown_size, |size| size_as_marked(*size, words));
    let length = length.marked(unknown_length, |length| crate::numbers::quantity(words, *length));
    vec![
        format!("{}  {size}  {length}", run.tag),
        format!("{}  {size}", run.tag),
        run.tag.clone(),
    ]
}

/// What a label must keep clear of.
pub(crate) struct Around<'a> {
    pub(crate) part_index: &'a Index<PartId>,
    pub(crate) tracks: &'a Tracks,
    pub(crate) label_index: &'a Index<RunId>,
    pub(crate) words: &'a Words,
}

impl Around<'_> {
    fn room(&self, area: Rect, clear: Rect, run: RunId) -> bool {
        let near = area.inflate(5.0, 5.0);
        let on_part = self
            .part_index
            .any_near(near, |_, outline| outline.overlaps(near));
        let on_label = || {
            let near = area.inflate(1.0, 1.0);
            self.label_index.any_near(near, |_, other| other.overlaps(near))
        };
        let whole = |low: f64, high: f64| (libm::ceil(low) as i32, libm::floor(high) as i32);
        !on_part
            && !self
                .tracks
                .enters(whole(clear.x0, clear.x1), whole(clear.y0, clear.y1), run)
            && !on_label()
    }

    /// The best label for a run of this length with this way, if there is room for any.
    pub(crate) fn place(
        &self,
        id: RunId,
        run: &Run,
        length: Fact<Metres>,
        points: &[At],
    ) -> Option<RunLabel> {
        let mut straight: Vec<Piece> = pieces(points).collect();
        straight.order_by_key(|piece| (piece.low - piece.high, piece.axis == Axis::Upright));
        for text in wordings(run, length, self.words) {
            let room = (text_width(&text, RUN_LABEL_SIZE, false) + 6.0).max(LEAST_ROOM);
            for piece in straight.iter().take(6) {
                let (low, high) = (f64::from(piece.low) + 6.0, f64::from(piece.high) - 6.0);
                let spare = (high - low - room) / 2.0;
                if spare < 0.0 {
                    continue;
                }
                let middle = (low + high) / 2.0;
                let steps = (spare / 12.0) as i32;
                for n in 0..=(2 * steps).min(80) {
                    // Middle first, then ever further to both sides.
                    let shift = f64::from((n + 1) / 2) * 12.0 * if n % 2 == 0 { 1.0 } else { -1.0 };
                    let (along, line) = (middle + shift, f64::from(piece.line));
                    let (area, at) = match piece.axis {
                        Axis::Level => (
                            Rect::new(along - room / 2.0, line - 4.5, along + room / 2.0, line + 4.5),
                            Point::new(along, line + 0.35 * RUN_LABEL_SIZE),
                        ),
                        Axis::Upright => (
                            Rect::new(line - 4.5, along - room / 2.0, line + 4.5, along + room / 2.0),
                            Point::new(line + 0.35 * RUN_LABEL_SIZE, along),
                        ),
                    };
                    // Along the run also clear of the hops beside it.
                    let hops = match piece.axis {
                        Axis::Level => Vec2::new(8.0, 0.0),
                        Axis::Upright => Vec2::new(0.0, 8.0),
                    };
                    if self.room(area, area.inflate(hops.x, hops.y), id) {
                        return Some(RunLabel {
                            text,
                            at,
                            upright: piece.axis == Axis::Upright,
                            area,
                        });
                    }
                }
            }
        }
        None
    }
}
