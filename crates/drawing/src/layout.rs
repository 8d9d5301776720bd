//! Geometry of one sheet: where every part, stud and run lies. Everything that is drawn or hit is read from here.
//!
//! *Invariant:* [`Layout::update`] after a change gives parts and runs that a fresh [`Layout::of`] would place alike,
//! but for the ways of runs that the change does not touch: those stay where they are, so that a drag does not make
//! the whole drawing jump. A run that a part has come to lie on is touched; it goes back when the part is gone.

use crate::display::Owner;
use crate::index::Index;
use crate::part_box::{PartBox, Stud, to_point};
use crate::ways::{Effort, RunWay, Tracks, lay_runs};
use kurbo::{Point, Rect};
use model::quantity::Metres;
use model::{BoardPoint, Fact, PartId, Run, RunId, Sheet, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use words::Words;

/// What lies under a point.
#[derive(Clone, Debug, PartialEq)]
pub enum Hit {
    /// A stud.
    Stud(TerminalRef),
    /// A loose end of a run: which end, 0 for `from`, 1 for `to`.
    LooseEnd(RunId, u8),
    /// A bend that was put by hand, by its place in the run's list.
    Bend(RunId, usize),
    /// A part.
    Part(PartId),
    /// A run: which of its straight pieces, and the nearest point on it.
    Run(RunId, usize, Point),
}

impl Hit {
    /// What it belongs to.
    #[must_use]
    pub fn owner(&self) -> Owner {
        match self {
            Self::Stud(terminal) => Owner::Part(terminal.part),
            Self::Part(part) => Owner::Part(*part),
            Self::LooseEnd(run, _) | Self::Bend(run, _) | Self::Run(run, _, _) => Owner::Run(*run),
        }
    }
}

/// Geometry of one sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layout {
    pub(crate) parts: OrderedMap<PartId, PartBox>,
    pub(crate) runs: OrderedMap<RunId, RunWay>,
    pub(crate) part_index: Index<PartId>,
    pub(crate) run_index: Index<RunId>,
    pub(crate) tracks: Tracks,
    pub(crate) labels: OrderedMap<RunId, Rect>,
    pub(crate) label_index: Index<RunId>,
    arranged: OrderedMap<PartId, BoardPoint>,
    /// Runs that were laid in haste, while something was dragged.
    hasty: OrderedSet<RunId>,
    /// Runs that were laid round parts which came to lie on them, and those parts.
    gave_way: OrderedMap<RunId, OrderedSet<PartId>>,
    /// Lengths that follow from ways through the vehicle's body, see [`Layout::tell_lengths`].
    computed: OrderedMap<RunId, Metres>,
    /// Who reads what is written.
    words: Words,
}

/// So many runs are laid with care in every step of a drag; more would take longer than a frame.
const FEW_RUNS: usize = 3;

impl Layout {
    /// Lays out a sheet. Parts without a place of their own are arranged.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Self {
        Self::read_by(sheet, &Words::english())
    }

    /// The same for a reader: texts take the room that they need in these words. Parts stand where they stand for
    /// everybody.
    #[must_use]
    pub fn read_by(sheet: &Sheet, words: &Words) -> Self {
        let mut this = Self {
            words: words.clone(),
            ..Self::default()
        };
        if sheet.parts.values().any(|part| part.at.is_none()) {
            this.arranged = crate::arrange::arrange_unplaced(sheet);
        }
        for (id, part) in &sheet.parts {
            let at = part
                .at
                .or_else(|| this.arranged.get(id).copied())
                .unwrap_or_default();
            this.put_part(*id, PartBox::read_by(part, to_point(at), words));
        }
        let all: OrderedSet<RunId> = sheet.runs.keys().copied().collect();
        this.lay(sheet, &all, Effort::CARE);
        this
    }

    /// Says which lengths follow from ways through the vehicle's body: those that are computed on the sheet as it lies in it
    /// (`body::lay`). They are written in the place of assumed ones from the next [`Layout::update`] on.
    pub fn tell_lengths(&mut self, laid: &Sheet) {
        let computed = |(id, run): (&RunId, &Run)| match run.wire.length {
            Fact::Computed(length) => Some((*id, length)),
            _ => None,
        };
        self.computed = laid.runs.iter().filter_map(computed).collect();
    }

    /// The length of a run as it is written beside it.
    pub(crate) fn length_of(&self, id: RunId, run: &Run) -> Fact<Metres> {
        match self.computed.get(&id) {
            Some(length) if !run.wire.length.is_given() => Fact::Computed(*length),
            _ => run.wire.length,
        }
    }

    /// Brings the layout up to date after these parts moved, turned, changed, came or went, and after runs came, went or
    /// changed. Only runs that touch a changed part, that it came to lie on, or changed themselves, are laid anew, and with
    /// more care those that [`Layout::follow`] laid.
    pub fn update(&mut self, sheet: &Sheet, changed_parts: &OrderedSet<PartId>) {
        let gone: Vec<PartId> = self
            .parts
            .keys()
            .filter(|id| !sheet.parts.contains_key(id))
            .copied()
            .collect();
        for id in &gone {
            self.take_part(*id);
            self.arranged.remove(id);
        }
        let new: Vec<PartId> = sheet
            .parts
            .keys()
            .filter(|id| !self.parts.contains_key(id))
            .copied()
            .collect();
        if new.iter().chain(changed_parts).any(|id| {
            sheet.parts.get(id).is_some_and(|part| part.at.is_none()) && !self.arranged.contains_key(id)
        }) {
            for (id, at) in crate::arrange::arrange_unplaced(sheet) {
                self.arranged.entry(id).or_insert(at);
            }
        }
        let mut touched: OrderedSet<PartId> = gone.iter().copied().collect();
        for id in changed_parts.iter().chain(&new) {
            let Some(part) = sheet.parts.get(id) else {
                continue;
            };
            let at = part
                .at
                .or_else(|| self.arranged.get(id).copied())
                .unwrap_or_default();
            self.take_part(*id);
            let drawn = PartBox::read_by(part, to_point(at), &self.words);
            self.put_part(*id, drawn);
            touched.insert(*id);
        }
        let gone_runs: Vec<RunId> = self
            .runs
            .keys()
            .filter(|id| !sheet.runs.contains_key(id))
            .copied()
            .collect();
        for id in gone_runs {
            self.take_run(id);
        }
        let in_the_way = self.in_the_way(&touched);
        let to_lay: OrderedSet<RunId> = sheet
            .runs
            .iter()
            .filter(|(id, run)| {
                in_the_way.contains(id)
                    || run
                        .ends()
                        .into_iter()
                        .filter_map(model::End::terminal)
                        .any(|terminal| touched.contains(&terminal.part))
                    || self
                        .runs
                        .get(id)
                        .is_none_or(|way| !way.is_of(run, self.length_of(**id, run)))
                    || self.hasty.contains(id)
            })
            .map(|(id, _)| *id)
            .collect();
        self.hasty.clear();
        for id in &to_lay {
            self.take_run(*id);
        }
        self.lay(sheet, &to_lay, Effort::CARE);
    }

    /// Runs that touched parts lie on, and those that gave way to one of these parts before.
    fn in_the_way(&mut self, touched: &OrderedSet<PartId>) -> OrderedSet<RunId> {
        let mut runs = OrderedSet::new();
        self.gave_way.retain(|run, parts| {
            let back = parts.iter().any(|part| touched.contains(part));
            if back {
                runs.insert(*run);
            }
            !back
        });
        for id in touched {
            let Some(part) = self.parts.get(id) else { continue };
            for run in self.run_index.near(part.outline) {
                let lies_on = self.runs.get(&run).is_some_and(|way| {
                    !way.ends_on(*id) && way.areas().any(|area| area.overlaps(part.outline))
                });
                if lies_on {
                    runs.insert(run);
                    self.gave_way.entry(run).or_default().insert(*id);
                }
            }
        }
        runs
    }

    /// Brings the layout up to date within a gesture that moves or changes these parts and runs and nothing else: quicker
    /// than [`Layout::update`], since only they are looked at, and since many runs are laid in haste. When the gesture
    /// is over, [`Layout::update`] is to follow.
    pub fn follow(&mut self, sheet: &Sheet, parts: &OrderedSet<PartId>, runs: &OrderedSet<RunId>) {
        if sheet.parts.len() != self.parts.len() || sheet.runs.len() != self.runs.len() {
            // Something came or went.
            return self.update(sheet, parts);
        }
        for id in parts {
            if let (Some(part), Some(drawn)) = (sheet.parts.get(id), self.parts.get(id)) {
                let at = part.at.map_or(drawn.outline.center(), to_point);
                self.take_part(*id);
                let drawn = PartBox::read_by(part, at, &self.words);
                self.put_part(*id, drawn);
            }
        }
        let to_lay: OrderedSet<RunId> = sheet
            .runs
            .iter()
            .filter(|(id, run)| {
                runs.contains(id)
                    || run
                        .ends()
                        .into_iter()
                        .filter_map(model::End::terminal)
                        .any(|terminal| parts.contains(&terminal.part))
            })
            .map(|(id, _)| *id)
            .collect();
        for id in &to_lay {
            self.take_run(*id);
        }
        if to_lay.len() > FEW_RUNS {
            self.hasty.extend(to_lay.iter().copied());
            self.lay(sheet, &to_lay, Effort::HASTE);
        } else {
            self.lay(sheet, &to_lay, Effort::CARE);
        }
    }

    fn lay(&mut self, sheet: &Sheet, runs: &OrderedSet<RunId>, effort: Effort) {
        let ways = lay_runs(sheet, self, runs, effort);
        for (id, way) in ways {
            for area in way.held_areas() {
                self.run_index.insert(area, id);
            }
            self.runs.insert(id, way);
        }
    }

    fn put_part(&mut self, id: PartId, part: PartBox) {
        self.part_index.insert(part.outline, id);
        self.parts.insert(id, part);
    }

    fn take_part(&mut self, id: PartId) {
        if let Some(part) = self.parts.remove(&id) {
            self.part_index.remove(part.outline, id);
        }
    }

    fn take_run(&mut self, id: RunId) {
        if let Some(way) = self.runs.remove(&id) {
            self.tracks.remove(id, &way.corners);
            if let Some(area) = self.labels.remove(&id) {
                self.label_index.remove(area, id);
            }
            for area in way.held_areas() {
                self.run_index.remove(area, id);
            }
        }
    }

    /// Who reads what is written.
    #[must_use]
    pub fn words(&self) -> &Words {
        &self.words
    }
    /// Geometry of a part.
    #[must_use]
    pub fn part(&self, id: PartId) -> Option<&PartBox> {
        self.parts.get(&id)
    }
    /// All parts.
    pub fn parts(&self) -> impl Iterator<Item = (PartId, &PartBox)> {
        self.parts.iter().map(|(id, part)| (*id, part))
    }
    /// Way of a run.
    #[must_use]
    pub fn run(&self, id: RunId) -> Option<&RunWay> {
        self.runs.get(&id)
    }
    /// All runs.
    pub fn runs(&self) -> impl Iterator<Item = (RunId, &RunWay)> {
        self.runs.iter().map(|(id, way)| (*id, way))
    }
    /// Where a terminal stands.
    #[must_use]
    pub fn stud(&self, terminal: &TerminalRef) -> Option<Point> {
        self.stud_of(terminal).map(|stud| stud.at)
    }
    /// The stud of a terminal.
    #[must_use]
    pub fn stud_of(&self, terminal: &TerminalRef) -> Option<&Stud> {
        self.parts.get(&terminal.part)?.stud(&terminal.terminal)
    }
    /// Where a part stands that has no place of its own: the editor writes it down when the part is first moved.
    #[must_use]
    pub fn arranged(&self) -> &OrderedMap<PartId, BoardPoint> {
        &self.arranged
    }

    /// The box around everything; `None` for an empty sheet.
    #[must_use]
    pub fn bounds(&self) -> Option<Rect> {
        let parts = self.parts.values().map(|part| part.outline);
        let runs = self.runs.values().map(RunWay::bounds);
        parts.chain(runs).reduce(|all, one| all.union(one))
    }

    /// What lies under a point, give or take the slop in board units: studs first, then ends and bends of runs, parts,
    /// and runs.
    #[must_use]
    pub fn hit(&self, at: Point, slop: f64) -> Option<Hit> {
        let area = Rect::from_center_size(at, (2.0 * slop, 2.0 * slop));
        let near_parts = self.part_index.near(area.inflate(8.0, 8.0));
        let mut nearest = Nearest(None);
        for id in &near_parts {
            let Some(part) = self.parts.get(id) else { continue };
            for stud in &part.studs {
                let distance = stud.at.distance(at);
                if distance <= slop.max(5.0) {
                    nearest.take(
                        distance,
                        Hit::Stud(TerminalRef {
                            part: *id,
                            terminal: stud.name.clone(),
                        }),
                    );
                }
            }
        }
        if let Some((_, hit)) = nearest.0 {
            return Some(hit);
        }
        let near_runs = self.run_index.near(area.inflate(8.0, 8.0));
        for id in &near_runs {
            let Some(way) = self.runs.get(id) else { continue };
            for (end, point) in way.loose_ends() {
                let distance = point.distance(at);
                if distance <= slop.max(6.0) {
                    nearest.take(distance, Hit::LooseEnd(*id, end));
                }
            }
            for (place, point) in way.hand_bends.iter().enumerate() {
                let distance = to_point(*point).distance(at);
                if distance <= slop {
                    nearest.take(distance, Hit::Bend(*id, place));
                }
            }
        }
        if let Some((_, hit)) = nearest.0 {
            return Some(hit);
        }
        for id in near_parts.iter().rev() {
            if self.parts.get(id).is_some_and(|part| part.outline.contains(at)) {
                return Some(Hit::Part(*id));
            }
        }
        self.take_runs(&near_runs, at, slop, &mut nearest);
        nearest.0.map(|(_, hit)| hit)
    }

    /// The run that lies nearest to a point, give or take the slop in board units, whatever lies over it.
    #[must_use]
    pub fn run_near(&self, at: Point, slop: f64) -> Option<RunId> {
        let area = Rect::from_center_size(at, (2.0 * slop, 2.0 * slop));
        let mut nearest = Nearest(None);
        self.take_runs(
            &self.run_index.near(area.inflate(8.0, 8.0)),
            at,
            slop,
            &mut nearest,
        );
        match nearest.0 {
            Some((_, Hit::Run(run, ..))) => Some(run),
            _ => None,
        }
    }

    fn take_runs<'r>(
        &self,
        runs: impl IntoIterator<Item = &'r RunId>,
        at: Point,
        slop: f64,
        nearest: &mut Nearest,
    ) {
        for id in runs {
            let Some(way) = self.runs.get(id) else { continue };
            for (segment, line) in way.pieces().enumerate() {
                let (distance, point) = nearest_on(line, at);
                if distance <= slop + way.width / 2.0 {
                    nearest.take(distance, Hit::Run(*id, segment, point));
                }
            }
        }
    }

    /// Whether an area lies over any part's outline.
    pub(crate) fn is_on_part(&self, area: Rect) -> bool {
        self.part_index
            .any_near(area, |_, outline| outline.overlaps(area))
    }

    /// Parts and runs that lie wholly within an area.
    #[must_use]
    pub fn within(&self, area: Rect) -> Vec<Owner> {
        let parts = self.part_index.near(area).into_iter().filter(|id| {
            self.parts
                .get(id)
                .is_some_and(|part| area.union(part.outline) == area)
        });
        let runs = self.run_index.near(area).into_iter().filter(|id| {
            self.runs
                .get(id)
                .is_some_and(|way| area.union(way.bounds()) == area)
        });
        parts.map(Owner::Part).chain(runs.map(Owner::Run)).collect()
    }
}

/// The nearest thing so far.
struct Nearest(Option<(f64, Hit)>);

impl Nearest {
    fn take(&mut self, distance: f64, hit: Hit) {
        if self.0.as_ref().is_none_or(|(least, _)| distance < *least) {
            self.0 = Some((distance, hit));
        }
    }
}

/// Distance from a straight piece, and the nearest point of it.
fn nearest_on(line: (Point, Point), at: Point) -> (f64, Point) {
    let along = line.1 - line.0;
    let length = along.hypot2();
    let share = if length > 0.0 {
        ((at - line.0).dot(along) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let point = line.0 + along * share;
    (point.distance(at), point)
}
