//! Ways of the runs on the board: level and upright pieces, clear of parts, side by side instead of over one another.
//!
//! Runs are laid one after the other, short ones first, each at least cost among those already laid ([`search`]); then
//! those that cross or lie over others are taken up and laid again, as long as that pays. Laid runs are known by their
//! lines ([`tracks`]), 10 units apart, so that a bundle lies side by side without a later spreading step, and a run that
//! is laid anew during a drag finds its place among those that stay.

mod exits;
mod labels;
mod maze;
mod search;
mod space;
mod tracks;

pub(crate) use labels::RUN_LABEL_SIZE;
pub use labels::{RunLabel, size_as_marked};
pub(crate) use space::Effort;
pub(crate) use tracks::{At, Axis, Tracks, pieces};

use crate::layout::Layout;
use crate::part_box::to_point;
use kurbo::{Point, Rect};
use model::conductor::Size;
use model::quantity::Metres;
use model::{BoardPoint, End, Fact, PartId, Run, RunId, Sheet, TerminalName, TerminalRef};
use ordered::{OrderedMap, OrderedSet, Sort as _};
use search::{Found, straighten};
use space::{CLEAR, Outlet, Space};

/// From how many runs on they are taken up only once.
const MANY: usize = 200;
/// From how many runs on less is tried for each.
const VERY_MANY: usize = 1000;

/// Where a run lies.
#[derive(Clone, Debug, PartialEq)]
pub struct RunWay {
    /// Its corners, from `from` to `to`; pieces between them are level or upright.
    pub points: Vec<Point>,
    /// Width of its conductor on the board, insulation included, in board units.
    pub width: f64,
    /// Bends that were put by hand.
    pub hand_bends: Vec<BoardPoint>,
    /// Middle of the longest straight piece.
    pub label_at: Point,
    /// Its label; `None` where there is no room for one.
    pub label: Option<RunLabel>,
    pub(crate) corners: Vec<At>,
    ends: [End; 2],
    /// What its label was made of.
    said: (String, Fact<Size>, Fact<Metres>),
}

impl RunWay {
    fn new(run: &Run, length: Fact<Metres>, corners: Vec<At>) -> Self {
        let points: Vec<Point> = corners
            .iter()
            .map(|at| Point::new(f64::from(at.x), f64::from(at.y)))
            .collect();
        let longest = points
            .windows(2)
            .filter_map(|pair| Some((*pair.first()?, *pair.get(1)?)))
            .fold(None, |best: Option<(Point, Point)>, piece| match best {
                Some(best) if best.0.distance(best.1) >= piece.0.distance(piece.1) => Some(best),
                _ => Some(piece),
            });
        let (a, b) = longest.unwrap_or((Point::ZERO, Point::ZERO));
        Self {
            width: width_of(run),
            hand_bends: run.bends.clone(),
            label_at: a.midpoint(b),
            label: None,
            ends: [run.from.clone(), run.to.clone()],
            said: (run.tag.clone(), run.wire.size, length),
            points,
            corners,
        }
    }
    /// Whether it was laid for a run with these ends, bends, width and label, in which this length is written.
    pub(crate) fn is_of(&self, run: &Run, length: Fact<Metres>) -> bool {
        let [from, to] = &self.ends;
        *from == run.from
            && *to == run.to
            && self.hand_bends == run.bends
            && self.said.0 == run.tag
            && self.said.1 == run.wire.size
            && self.said.2 == length
    }
    /// Whether it ends on this terminal.
    pub(crate) fn lands_on(&self, terminal: &TerminalRef) -> bool {
        self.ends.iter().any(|end| end.terminal() == Some(terminal))
    }
    /// Whether it ends on a terminal of this part.
    pub(crate) fn ends_on(&self, part: PartId) -> bool {
        self.ends
            .iter()
            .filter_map(End::terminal)
            .any(|terminal| terminal.part == part)
    }
    /// Its straight pieces, in order.
    pub fn pieces(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.points
            .windows(2)
            .filter_map(|pair| Some((*pair.first()?, *pair.get(1)?)))
    }
    /// Box of each piece, for the index.
    pub(crate) fn areas(&self) -> impl Iterator<Item = Rect> + '_ {
        self.pieces()
            .map(|(a, b)| Rect::from_points(a, b).inflate(self.width / 2.0, self.width / 2.0))
    }
    /// Boxes under which it is kept in the index: its pieces, and bends put by hand, by which it need not pass.
    pub(crate) fn held_areas(&self) -> impl Iterator<Item = Rect> + '_ {
        let bends = self.hand_bends.iter();
        self.areas()
            .chain(bends.map(|bend| Rect::from_center_size(to_point(*bend), (2.0, 2.0))))
    }
    /// The box around it.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.areas().reduce(|all, one| all.union(one)).unwrap_or_default()
    }
    /// Its loose ends: which end, and where.
    pub fn loose_ends(&self) -> impl Iterator<Item = (u8, Point)> + '_ {
        [(0_u8, self.points.first()), (1, self.points.last())]
            .into_iter()
            .zip(&self.ends)
            .filter(|(_, end)| matches!(end, End::Loose(_)))
            .filter_map(|((which, point), _)| Some((which, *point?)))
    }
}

/// Width of a run on the board: 1.5 + 0.8·√(cross-section in mm²) board units, at least 2 and at most 9; an unknown size
/// counts as 1 mm². So 0.75 mm² is drawn 2.2 wide, 2.5 mm² 2.8, 16 mm² 4.7, 50 mm² 7.2.
#[must_use]
pub fn width_of(run: &Run) -> f64 {
    let area = run.wire.size.value().map_or(1.0, |size| size.area().0);
    (1.5 + 0.8 * libm::sqrt(area.max(0.0))).clamp(2.0, 9.0)
}

/// A run that is to be laid.
struct Job<'a> {
    id: RunId,
    run: &'a Run,
    /// The points at its ends, on the studs.
    ends: [At; 2],
    outlets: [Outlet; 2],
    fellows: Vec<RunId>,
    laid: Option<Found>,
}

impl Job<'_> {
    /// The whole way, studs included.
    fn points(&self) -> Vec<At> {
        let [from, to] = self.ends;
        let mut points = vec![from];
        if let Some(found) = &self.laid {
            points.extend(&found.points);
        }
        points.push(to);
        points.dedup();
        // Bends put by hand stay, also those that lie in line.
        if self.run.bends.is_empty() {
            straighten(&mut points);
        }
        points
    }
}

fn whole(point: Point) -> At {
    At {
        x: libm::round(point.x) as i32,
        y: libm::round(point.y) as i32,
    }
}

fn outlet(layout: &Layout, end: &End) -> Option<(At, Outlet)> {
    Some(match end {
        End::Loose(at) => {
            let at = whole(to_point(*at));
            (at, Outlet { at, out: (0, 0) })
        }
        End::On(terminal) => {
            let stud = layout.stud_of(terminal)?;
            let out = (stud.out.x as i32, stud.out.y as i32);
            let at = whole(stud.at);
            let first = At {
                x: at.x + CLEAR * out.0,
                y: at.y + CLEAR * out.1,
            };
            (at, Outlet { at: first, out })
        }
    })
}

/// Lays these runs of the sheet, among those already laid, and puts their labels.
pub(crate) fn lay_runs(
    sheet: &Sheet,
    layout: &mut Layout,
    runs: &OrderedSet<RunId>,
    effort: Effort,
) -> OrderedMap<RunId, RunWay> {
    // All runs on the studs of those that are laid.
    let mut on_stud: OrderedMap<(PartId, &TerminalName), Vec<RunId>> = runs
        .iter()
        .filter_map(|id| sheet.runs.get(id))
        .flat_map(Run::ends)
        .filter_map(End::terminal)
        .map(|terminal| ((terminal.part, &terminal.terminal), Vec::new()))
        .collect();
    let mut parts: Vec<PartId> = on_stud.keys().map(|(part, _)| *part).collect();
    parts.dedup();
    for (id, run) in &sheet.runs {
        for terminal in run.ends().into_iter().filter_map(End::terminal) {
            // Most runs are told apart by their parts, which is quicker than by the names of terminals.
            if parts.binary_search(&terminal.part).is_ok()
                && let Some(list) = on_stud.get_mut(&(terminal.part, &terminal.terminal))
            {
                list.push(*id);
            }
        }
    }
    let mut jobs: Vec<Job<'_>> = Vec::new();
    for id in runs {
        let Some(run) = sheet.runs.get(id) else { continue };
        let (Some((from, first)), Some((to, last))) = (outlet(layout, &run.from), outlet(layout, &run.to))
        else {
            continue;
        };
        let mut fellows: Vec<RunId> = Vec::new();
        for end in run.ends() {
            if let Some(list) = end
                .terminal()
                .and_then(|terminal| on_stud.get(&(terminal.part, &terminal.terminal)))
            {
                fellows.extend(list.iter().filter(|other| *other != id));
            }
        }
        jobs.push(Job {
            id: *id,
            run,
            ends: [from, to],
            outlets: [first, last],
            fellows,
            laid: None,
        });
    }
    // Those with bends put by hand stay where they were put; then short before long.
    jobs.order_by_key(|job| {
        let [a, b] = job.ends;
        (
            job.run.bends.is_empty(),
            i64::from(a.x).abs_diff(i64::from(b.x)) + i64::from(a.y).abs_diff(i64::from(b.y)),
            job.id,
        )
    });
    let effort = if jobs.len() > VERY_MANY && effort == Effort::CARE {
        Effort::MANY
    } else {
        effort
    };
    for job in &mut jobs {
        job.laid = Some(if job.run.bends.is_empty() {
            search(layout, job, effort)
        } else {
            by_hand(job)
        });
        layout.tracks.insert(job.id, &job.points());
    }
    let rounds = if jobs.len() > MANY {
        effort.rounds.min(1)
    } else {
        effort.rounds
    };
    for _ in 0..rounds {
        let mut better = false;
        for job in jobs.iter_mut().filter(|job| job.run.bends.is_empty()) {
            let points = job.points();
            layout.tracks.remove(job.id, &points);
            let space = space(layout, job, effort);
            let now = job
                .laid
                .as_ref()
                .map_or(f64::INFINITY, |found| space.cost(&found.points));
            let length: i32 = job
                .laid
                .iter()
                .flat_map(|found| pieces(&found.points))
                .map(|piece| piece.high - piece.low)
                .sum();
            // Only what crosses or lies over others can gain.
            let bends = job
                .laid
                .as_ref()
                .map_or(0, |found| found.points.len().saturating_sub(2));
            if now > f64::from(length) + search::BEND * bends as f64 + 1.0
                && let Some(again) = space.find(job.outlets[0], job.outlets[1])
                && again.cost < now - 1.0
            {
                job.laid = Some(again);
                better = true;
            }
            layout.tracks.insert(job.id, &job.points());
        }
        if !better {
            break;
        }
    }
    let mut ways = OrderedMap::new();
    for job in &jobs {
        let length = layout.length_of(job.id, job.run);
        ways.insert(job.id, RunWay::new(job.run, length, job.points()));
    }
    put_labels(sheet, layout, &mut ways);
    ways
}

fn put_labels(sheet: &Sheet, layout: &mut Layout, ways: &mut OrderedMap<RunId, RunWay>) {
    // Short runs have least choice, so they choose first.
    let mut order: Vec<(i64, RunId)> = ways
        .iter()
        .map(|(id, way)| {
            let longest = pieces(&way.corners).map(|piece| piece.high - piece.low).max();
            (i64::from(longest.unwrap_or(0)), *id)
        })
        .collect();
    order.order();
    for (_, id) in order {
        let (Some(way), Some(run)) = (ways.get_mut(&id), sheet.runs.get(&id)) else {
            continue;
        };
        let around = labels::Around {
            part_index: &layout.part_index,
            tracks: &layout.tracks,
            label_index: &layout.label_index,
            words: layout.words(),
        };
        way.label = around.place(id, run, way.said.2, &way.corners);
        if let Some(label) = &way.label {
            layout.labels.insert(id, label.area);
            layout.label_index.insert(label.area, id);
        }
    }
}

fn space<'a>(layout: &'a Layout, job: &'a Job<'_>, effort: Effort) -> Space<'a> {
    let mut space = Space {
        index: &layout.part_index,
        tracks: &layout.tracks,
        fellows: &job.fellows,
        close: Vec::new(),
        effort,
    };
    for outlet in job.outlets {
        space.note_close(outlet.at);
    }
    space
}

fn search(layout: &Layout, job: &Job<'_>, effort: Effort) -> Found {
    let space = space(layout, job, effort);
    let [from, to] = job.outlets;
    space
        .find(from, to)
        .or_else(|| maze::find(&space, from, to))
        .unwrap_or_else(|| {
            // Walled in: straight there, over whatever is in the way, so that the run is seen at all.
            let mut points = vec![from.at, to.at];
            maze::square(&mut points);
            let cost = space.cost(&points);
            Found { points, cost }
        })
}

/// Whether going on in the direction of an outlet leads away from a point.
fn is_behind(out: (i32, i32), from: At, to: At) -> bool {
    let ahead = |step: i32, from: i32, to: i32| i64::from(step) * (i64::from(to) - i64::from(from));
    ahead(out.0, from.x, to.x) + ahead(out.1, from.y, to.y) < 0
}

/// Takes out where a way goes on and straight back: a piece drawn aside by hand is then as long as the run needs it, also
/// when its parts were moved.
fn without_spurs(points: &mut Vec<At>) {
    let mut made: Vec<At> = Vec::with_capacity(points.len());
    for next in points.drain(..) {
        while let [.., before, last] = made.as_slice() {
            let level = before.y == last.y && last.y == next.y;
            let plumb = before.x == last.x && last.x == next.x;
            let back = (level && (before.x < last.x) == (next.x < last.x))
                || (plumb && (before.y < last.y) == (next.y < last.y));
            if !back {
                break;
            }
            made.pop();
        }
        if made.last() != Some(&next) {
            made.push(next);
        }
    }
    *points = made;
}

/// The way through bends put by hand: at each of them it turns, with a corner more where two are not in line.
fn by_hand(job: &Job<'_>) -> Found {
    let [from, to] = job.outlets;
    let mut points = vec![job.ends[0], from.at];
    for next in job
        .run
        .bends
        .iter()
        .map(|bend| whole(to_point(*bend)))
        .chain([to.at])
    {
        if let [.., before, last] = points.as_slice()
            && last.x != next.x
            && last.y != next.y
        {
            let came_level = before.y == last.y;
            // Out of the stud it goes on straight and into the last one straight, unless it would come from behind; from
            // a bend it leaves across.
            let goes_level = if *last == from.at {
                came_level != is_behind(from.out, *last, next)
            } else if next == to.at && to.out != (0, 0) {
                (to.out.0 == 0) != is_behind(to.out, next, *last)
            } else {
                !came_level
            };
            points.push(if goes_level {
                At { x: next.x, y: last.y }
            } else {
                At { x: last.x, y: next.y }
            });
        }
        if points.last() != Some(&next) {
            points.push(next);
        }
    }
    without_spurs(&mut points);
    Found { points, cost: 0.0 }
}
