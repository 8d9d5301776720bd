//! Putting a part into a run: the run is cut in two there.

use super::connect::usual_ending;
use super::sheet::shifted;
use super::{EditError, put_part, put_run, run_of, sheet_of};
use crate::edit::Edit;
use crate::fact::Fact::{Assumed, Computed, Given, Unknown};
use crate::id::{PartId, RunId, TerminalRef};
use crate::job::{BoardPoint, End, Ending, Job, Part, Run, Sheet, SheetKind};
use crate::kinds::PartKind;
use crate::quantity::Metres;
use words::say;

/// What came of putting a part into a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Inserted {
    /// The edit that does it.
    pub edit: Edit,
    /// The new part.
    pub part: PartId,
    /// The piece of the run before it, which keeps the run's id and tag, and the piece behind it.
    pub runs: [RunId; 2],
}

/// The two terminals by which a part of this kind stands in a run; `None` for kinds that cannot.
#[must_use]
pub fn ways_through(kind: &PartKind) -> Option<(&'static str, &'static str)> {
    match kind {
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Switch(_) => Some(("in", "out")),
        PartKind::Block(_) => Some(("in", "out1")),
        PartKind::Bus(_) | PartKind::Splice(_) | PartKind::InlineCapacitor(_) => Some(("1", "2")),
        PartKind::Isolator(_) => Some(("main", "aux")),
        PartKind::Relay(_) => Some(("30", "87")),
        PartKind::Battery(_)
        | PartKind::Alternator(_)
        | PartKind::Vehicle(_)
        | PartKind::Converter(_)
        | PartKind::Plug(_)
        | PartKind::Adapter(_)
        | PartKind::Ground(_)
        | PartKind::HeadUnit(_)
        | PartKind::Processor(_)
        | PartKind::LineConverter(_)
        | PartKind::Amplifier(_)
        | PartKind::Speaker(_)
        | PartKind::Crossover(_)
        | PartKind::Capacitor(_)
        | PartKind::Load(_) => None,
    }
}

/// Where a run is cut, as a share of its way on the board, and how many of its bends come before.
fn cut(sheet: &Sheet, run: &Run, at: BoardPoint) -> (f64, usize) {
    let end = |end: &End| match end {
        End::Loose(point) => Some(*point),
        End::On(on) => sheet.parts.get(&on.part).and_then(|part| part.at),
    };
    let float = |p: BoardPoint| (f64::from(p.x), f64::from(p.y));
    let mut way: Vec<(f64, f64)> = Vec::new();
    let first = end(&run.from);
    way.extend(first.map(float));
    way.extend(run.bends.iter().copied().map(float));
    way.extend(end(&run.to).map(float));
    let at = float(at);
    let (mut total, mut best) = (0.0, (f64::INFINITY, 0.0, 0_usize));
    for (index, pair) in way.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let length = libm::hypot(dx, dy);
        let along = if length > 0.0 {
            (((at.0 - a.0) * dx + (at.1 - a.1) * dy) / (length * length)).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let away = libm::hypot(at.0 - (a.0 + along * dx), at.1 - (a.1 + along * dy));
        if away < best.0 {
            best = (away, total + along * length, index + usize::from(first.is_none()));
        }
        total += length;
    }
    let share = if total > 0.0 { best.1 / total } else { 0.5 };
    (share, best.2.min(run.bends.len()))
}

/// Puts a part of a kind into a run at a point of the board. Both pieces keep the wire, the outer ends stay as they are
/// finished. How far along the wire the cut is (`share`, 0 to 1, counted from the run's start) is taken from the
/// drawing when it is not told; the lengths of the two pieces are assumed from it.
///
/// # Errors
/// When the run is not there, or a part of that kind cannot stand in a run.
pub fn insert_into_run(
    job: &Job,
    on: SheetKind,
    id: RunId,
    kind: PartKind,
    at: BoardPoint,
    share: Option<f64>,
) -> Result<Inserted, EditError> {
    let sheet = sheet_of(job, on)?;
    let run = run_of(job, on, id)?;
    let Some((way_in, way_out)) = ways_through(&kind) else {
        return Err(EditError(say!("error-no-way-through", kind = kind.said())));
    };
    let (part_id, second_id) = (job.free_part_id(), job.free_run_id());
    let mut part = Part::new(sheet.free_tag(kind.letter()), kind);
    part.at = Some(shifted(at, 0, 0));
    let (drawn, bends_before) = cut(sheet, run, at);
    let share = share
        .filter(|share| share.is_finite())
        .unwrap_or(drawn)
        .clamp(0.0, 1.0);
    let inner = |terminal: &str| {
        let on = TerminalRef::new(part_id, terminal);
        let method = part
            .role(&on.terminal)
            .map_or(Unknown, |role| Assumed(usual_ending(&part.is, role)));
        (
            End::On(on),
            Ending {
                method,
                ..Ending::default()
            },
        )
    };
    let length = |share: f64| match run.wire.length {
        Given(Metres(length)) | Assumed(Metres(length)) | Computed(Metres(length)) => {
            Assumed(Metres(rounded(length * share)))
        }
        Unknown => Unknown,
    };
    let (mut first, mut second) = (run.clone(), run.clone());
    (first.to, first.to_ending) = inner(way_in);
    (second.from, second.from_ending) = inner(way_out);
    first.wire.length = length(share);
    second.wire.length = length(1.0 - share);
    second.tag = sheet.free_tag("W");
    first.bends.truncate(bends_before);
    second.bends.drain(..bends_before.min(second.bends.len()));
    // The place of the cut belongs to both pieces.
    let last = run.route.len().saturating_sub(1);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "0 to `last`, which is small"
    )]
    let place = libm::round(share * last as f64) as usize;
    first.route.truncate(place.saturating_add(1));
    second.route.drain(..place.min(last));
    let name = say!("edit-insert", part = &part.tag, run = &run.tag);
    let changes = vec![
        put_part(on, part_id, part),
        put_run(on, id, first),
        put_run(on, second_id, second),
    ];
    Ok(Inserted {
        edit: Edit::new(name, changes),
        part: part_id,
        runs: [id, second_id],
    })
}

/// To the centimetre: an assumed length shows no more than that.
fn rounded(metres: f64) -> f64 {
    libm::round(metres * 100.0) / 100.0
}
