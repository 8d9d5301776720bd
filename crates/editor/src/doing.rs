//! What tools and actions are made of: changing the job through the history, keeping layout and selection in step with
//! it, finding things under a point, and copies of it all.

use crate::editor::Editor;
use crate::effects::{Effects, Open};
use crate::input::PointerKind;
use crate::selection::{Selection, Thing};
use crate::tools::{Pull, Tool};
use checks::{Finding, Grade};
use drawing::{Hit, Layout, Mark, MarkShape, TitleBlock, TitleCell};
use kurbo::{Point, Rect};
use model::edits::EditError;
use model::history::{Entry, Touched};
use model::{Edit, Name, PartId, RunId, SheetKind, TerminalRef};
use ordered::OrderedSet;
use std::sync::Arc;
use words::{Saying, say};

impl Editor {
    /// Says something in the line of messages and to the screen reader, in the reader's words.
    pub(crate) fn tell(&mut self, said: Saying) {
        self.out.say = Some(self.words.say(&said));
    }

    // Changing the job.

    /// Makes an edit: one step of the history.
    pub(crate) fn apply(&mut self, edit: Edit) {
        if self.refuses() {
            return;
        }
        let touched = Touched::by(&edit);
        self.forget_gesture();
        let entry = self.history.apply(&mut self.job, edit);
        self.entered(entry);
        self.follow(&touched);
    }
    /// Makes an edit that somebody else worded: a mend, a property set on the slip.
    pub fn make(&mut self, edit: Result<Edit, EditError>) -> Result<Effects, EditError> {
        self.interrupt();
        self.apply(edit?);
        Ok(self.take_effects())
    }
    pub(crate) fn begin_gesture(&mut self, name: impl Into<Name>) {
        if self.refuses() {
            return;
        }
        self.forget_gesture();
        let entry = self.history.begin(name);
        self.entered(entry);
    }
    pub(crate) fn extend_gesture(&mut self, edit: Edit, parts: &OrderedSet<PartId>) {
        if self.refuses() {
            return;
        }
        let touched = Touched::by(&edit);
        let here = touched.parts.iter().filter(|(sheet, _)| *sheet == self.on);
        self.gesture_parts
            .extend(parts.iter().copied().chain(here.map(|(_, id)| *id)));
        let here = touched.runs.iter().filter(|(sheet, _)| *sheet == self.on);
        self.gesture_runs.extend(here.map(|(_, id)| *id));
        self.history.extend(&mut self.job, edit);
        match self.job.sheets.get(&self.on) {
            Some(sheet) => self.layout.follow(sheet, &self.gesture_parts, &self.gesture_runs),
            None => self.layout = Layout::default(),
        }
        self.out.repaint = true;
    }
    fn forget_gesture(&mut self) {
        self.gesture_parts.clear();
        self.gesture_runs.clear();
    }
    /// Takes back what the gesture in hand did so far; it goes on from where it began.
    pub(crate) fn roll_back_gesture(&mut self) {
        self.history.replace(&mut self.job, Edit::default());
    }
    pub(crate) fn commit_gesture(&mut self) {
        let entry = self.history.commit();
        if let Some(Entry::Did(edit)) = &entry {
            let touched = Touched::by(edit);
            self.follow(&touched);
        }
        self.entered(entry);
        self.forget_gesture();
        self.out.noticed = true;
        self.out.repaint = true;
    }
    fn entered(&mut self, entry: Option<Entry>) {
        if let Some(entry) = entry {
            self.journal.push(entry);
            self.out.edited = true;
            self.stale = true;
        }
    }
    /// Brings layout, selection and focus up to date after a change of the job.
    fn follow(&mut self, touched: &Touched) {
        let here = |(sheet, id): &(SheetKind, PartId)| (*sheet == self.on).then_some(*id);
        let parts: OrderedSet<PartId> = touched.parts.iter().filter_map(here).collect();
        self.relay(&parts);
        let sheet = self.job.sheets.get(&self.on).cloned().unwrap_or_default();
        self.selection.keep_on(&sheet);
        let gone = |thing: &Option<Thing>| thing.as_ref().is_some_and(|thing| !thing.is_on(&sheet));
        if gone(&self.focus) {
            self.focus = None;
        }
        if gone(&self.hovered) {
            self.hovered = None;
        }
        if gone(&self.feeds) {
            self.feeds = None;
        }
        self.out.noticed = true;
        self.out.repaint = true;
    }
    /// The layout of the sheet at hand, made anew.
    pub(crate) fn laid_out(&self) -> Layout {
        let sheet = self.sheet();
        let mut layout = Layout::read_by(sheet, &self.words);
        let laid = body::lay(sheet, &self.job.settings);
        if let std::borrow::Cow::Owned(laid) = laid {
            layout.tell_lengths(&laid);
            layout.update(sheet, &OrderedSet::new());
        }
        layout
    }
    pub(crate) fn relay(&mut self, parts: &OrderedSet<PartId>) {
        let sheet = self.job.sheets.get(&self.on);
        match sheet {
            Some(sheet) => {
                self.layout.tell_lengths(&body::lay(sheet, &self.job.settings));
                self.layout.update(sheet, parts);
            }
            None => self.layout = Layout::default(),
        }
        self.follow_body();
        self.follow_under();
        self.still_changed();
        self.out.repaint = true;
    }
    pub(crate) fn undo(&mut self) {
        let name = self.history.undo_said();
        let entry = self.history.undo(&mut self.job);
        self.went(entry, name.map(|name| say!("undid", name = name)));
    }
    pub(crate) fn redo(&mut self) {
        let name = self.history.redo_said();
        let entry = self.history.redo(&mut self.job);
        self.went(entry, name.map(|name| say!("did-again", name = name)));
    }
    /// What a step touched is picked, so that one sees what came back.
    fn went(&mut self, entry: Option<Entry>, said: Option<Saying>) {
        let Some(entry) = entry else { return };
        let (Entry::Did(edit) | Entry::Undid(edit) | Entry::Redid(edit)) = &entry;
        let touched = Touched::by(edit);
        let sheets: OrderedSet<SheetKind> = touched
            .parts
            .iter()
            .map(|(on, _)| *on)
            .chain(touched.runs.iter().map(|(on, _)| *on))
            .collect();
        if let Some(other) = sheets
            .first()
            .filter(|_| !sheets.is_empty() && !sheets.contains(&self.on))
        {
            self.turn_to(*other);
        }
        self.selection = Selection {
            parts: touched
                .parts
                .iter()
                .filter(|(on, _)| *on == self.on)
                .map(|(_, id)| *id)
                .collect(),
            runs: touched
                .runs
                .iter()
                .filter(|(on, _)| *on == self.on)
                .map(|(_, id)| *id)
                .collect(),
        };
        self.follow(&touched);
        self.entered(Some(entry));
        self.out.open = Some(Open::Nothing);
        self.out.say = said.map(|said| self.words.say(&said));
    }
    /// Puts another sheet on the table.
    pub(crate) fn turn_to(&mut self, on: SheetKind) {
        if self.on == on {
            return;
        }
        self.interrupt();
        self.on = on;
        self.selection = Selection::none();
        self.focus = None;
        self.hovered = None;
        self.feeds = None;
        self.finding = None;
        self.layout = self.laid_out();
        self.follow_body();
        self.follow_under();
        self.still_changed();
        self.stale = true;
        self.fit();
        self.out.edited = true;
        self.out.noticed = true;
        self.out.repaint = true;
        self.out.open = Some(Open::Nothing);
    }

    // Analysis.

    /// Studies the sheet and runs the checks, if anything changed since. Tells what is new for the screen reader.
    pub fn analyse(&mut self) -> Option<String> {
        if !self.stale {
            return None;
        }
        self.stale = false;
        self.studied = true;
        self.still_changed();
        let mut made = checks::analyse(self.sheet(), &self.job.settings);
        if self.conceals {
            made.findings.clear();
        }
        let before = std::mem::replace(&mut self.analysis, Arc::new(made));
        if self.overlay != drawing::Overlay::None {
            self.follow_body();
        }
        self.break_again();
        self.tone = None;
        if let crate::tools::Tool::Meter(meter) = &self.tool {
            self.ready_tone(meter.mode);
        }
        self.marks = self
            .analysis
            .findings
            .iter()
            .enumerate()
            .map(|(place, finding)| mark_of(place, finding))
            .collect();
        if self.fitted_unmarked.take() == Some(self.camera) {
            self.fit();
        }
        // The finding in hand stays in hand while the sheet still has it.
        let held = self.finding.and_then(|place| before.findings.get(place));
        self.finding = held.and_then(|held| self.analysis.findings.iter().position(|now| same(held, now)));
        let fresh: Vec<&Finding> = self
            .analysis
            .findings
            .iter()
            .filter(|now| !before.findings.iter().any(|old| same(old, now)))
            .collect();
        let gone = before
            .findings
            .iter()
            .filter(|old| !self.analysis.findings.iter().any(|now| same(old, now)))
            .count();
        let news: Option<Saying> = match (fresh.as_slice(), gone) {
            ([], 0) => None,
            ([], gone) => Some(say!(
                "findings-cleared",
                gone = gone,
                left = self.analysis.findings.len()
            )),
            ([one], _) => Some(say!("finding-new", grade = one.grade.said(), what = &one.what)),
            ([first, ..], _) => Some(say!(
                "findings-new",
                count = fresh.len(),
                grade = first.grade.said(),
                what = &first.what
            )),
        };
        news.map(|said| self.words.say(&said))
    }

    // Finding things.

    /// What lies under a board point for this kind of pointer.
    #[must_use]
    pub fn thing_at(&self, at: Point, kind: PointerKind) -> Option<Thing> {
        if self.is_on_body() {
            return self.body_thing_at(at, kind);
        }
        Some(match self.hit_at(at, kind)? {
            Hit::Stud(stud) => Thing::Terminal(stud),
            Hit::Part(part) => Thing::Part(part),
            Hit::LooseEnd(run, _) | Hit::Bend(run, _) | Hit::Run(run, ..) => Thing::Run(run),
        })
    }
    /// What a pointer of this kind hits: first close by, since at small zoom the studs lie so near to each other that a part
    /// could no longer be taken between them; then, where nothing is, as far as a target for it has to reach.
    pub(crate) fn hit_at(&self, at: Point, kind: PointerKind) -> Option<Hit> {
        let reach = self.options.reach_px(kind) / self.camera.zoom;
        let close = reach.min(if self.camera.zoom < 0.5 { 14.0 } else { 22.0 });
        self.layout.hit(at, close).or_else(|| self.layout.hit(at, reach))
    }
    pub(crate) fn inside(&self, fence: Rect) -> Selection {
        let mut inside = Selection::none();
        for owner in self.layout.within(fence) {
            match owner {
                drawing::Owner::Part(id) => {
                    inside.parts.insert(id);
                }
                drawing::Owner::Run(id) => {
                    inside.runs.insert(id);
                }
                _ => {}
            }
        }
        inside
    }
    pub(crate) fn stud(&self, at: &TerminalRef) -> Option<Point> {
        self.layout.stud(at)
    }
    pub(crate) fn way(&self, run: RunId) -> Vec<Point> {
        self.layout
            .run(run)
            .map(|way| way.points.clone())
            .unwrap_or_default()
    }
    /// The box around a thing on the board.
    #[must_use]
    pub fn area_of(&self, thing: &Thing) -> Option<Rect> {
        if self.is_on_body() {
            return self.body_area_of(thing);
        }
        match thing {
            Thing::Part(id) => self.layout.part(*id).map(|part| part.outline),
            Thing::Terminal(at) => self
                .stud(at)
                .map(|stud| Rect::from_center_size(stud, (24.0, 24.0))),
            Thing::Run(id) => self.layout.run(*id).map(drawing::RunWay::bounds),
        }
    }
    /// Where a note that speaks of this finding stands: the foremost thing's point on the board.
    #[must_use]
    pub fn place_of(&self, finding: &Finding) -> Option<Point> {
        if self.is_on_body() {
            let parts = finding.parts.iter().map(|id| Thing::Part(*id));
            let runs = finding.runs.iter().map(|id| Thing::Run(*id));
            return parts
                .chain(runs)
                .find_map(|thing| self.body_area_of(&thing))
                .map(|area| area.center());
        }
        let part = finding
            .parts
            .iter()
            .find_map(|id| self.layout.part(*id))
            .map(|part| part.outline.center());
        let run = || {
            finding
                .runs
                .iter()
                .find_map(|id| self.layout.run(*id))
                .map(|way| way.label_at)
        };
        part.or_else(run)
    }
    pub(crate) fn hover(&mut self, over: Option<Thing>) {
        if self.hovered != over {
            self.hovered = over;
            self.out.repaint = true;
            self.out.noticed = true;
        }
    }
    pub(crate) fn pick_only(&mut self, thing: &Thing) {
        self.selection = Selection::of(thing);
        self.bend = None;
        self.beneath = None;
        self.focus = Some(thing.clone());
        self.out.noticed = true;
        self.out.repaint = true;
    }
    /// Picks a thing, puts the keyboard on it and brings it into view. While keys pull a run or put its end elsewhere, a terminal
    /// is where it would land; where a run is about to be pulled, it begins there.
    pub fn go_to(&mut self, thing: &Thing) -> Effects {
        if let Thing::Terminal(to) = thing
            && thing.is_on(self.sheet())
        {
            match self.tool.clone() {
                Tool::Pull(Pull::Drawing { from, keys: true, .. }) if from == *to => {
                    self.tell(say!("pull-begins", terminal = self.sheet().written(to)));
                    return self.take_effects();
                }
                Tool::Pull(Pull::Drawing { from, keys: true, .. }) => {
                    self.aim_pull(from, Some(to.clone()));
                    return self.take_effects();
                }
                Tool::Pull(Pull::Waiting) => {
                    self.show(thing);
                    self.pull_by_keys(to.clone());
                    return self.take_effects();
                }
                Tool::MoveEnd(end) if end.keys => {
                    self.aim_end(end, to.clone());
                    return self.take_effects();
                }
                _ => {}
            }
        }
        self.interrupt();
        if thing.is_on(self.sheet()) {
            self.show(thing);
            self.out.say = Some(self.spoken(thing));
        }
        self.take_effects()
    }
    /// Picks a thing, puts the keyboard on it and brings it into view.
    fn show(&mut self, thing: &Thing) {
        self.pick_only(thing);
        if let Some(area) = self.area_of(thing) {
            self.camera.reveal(area);
        }
    }
}

impl Editor {
    /// The title block as it is drawn on copies of the sheet.
    #[must_use]
    pub fn title_block(&self) -> TitleBlock {
        let job = &self.job;
        let words = &self.words;
        let cell = |name: &str, text: &str, share: u8| TitleCell {
            name: words.text(name),
            text: text.to_owned(),
            share,
        };
        let vehicle = &job.vehicle;
        let conditions = &job.settings.conditions;
        TitleBlock {
            cells: vec![
                vec![cell("title-job", &job.title, 1)],
                vec![cell("title-vehicle", &vehicle.name, 1)],
                vec![
                    cell("title-state", &words.say(&conditions.state.said()), 3),
                    cell("title-music", &words.say(&conditions.duty.said()), 2),
                    cell("title-findings", &words.say(&self.counted()), 4),
                ],
                vec![
                    cell("title-drawn-by", &vehicle.drawn_by, 3),
                    cell("title-date", &vehicle.date, 2),
                    cell("title-revision", &vehicle.revision, 1),
                    cell("title-sheet", &words.say(&self.on.said()), 2),
                ],
            ],
        }
    }
}

/// Whether two findings are the same one, before and after an edit: same check, same things.
fn same(a: &Finding, b: &Finding) -> bool {
    a.check == b.check && a.undecided == b.undecided && a.parts == b.parts && a.runs == b.runs
}

fn mark_of(place: usize, finding: &Finding) -> Mark {
    Mark {
        finding: u32::try_from(place).unwrap_or(u32::MAX),
        shape: match finding.grade {
            Grade::Stop => MarkShape::Octagon,
            Grade::Fix => MarkShape::Triangle,
            Grade::Tidy => MarkShape::Dot,
        },
        parts: finding.parts.clone(),
        runs: finding.runs.clone(),
        spots: finding.spots.clone(),
        label: (place + 1).to_string(),
    }
}
