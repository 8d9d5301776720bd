//! What each action does. What only the page can do (files, windows, storage) is passed on.

use crate::actions::Action;
use crate::editor::Editor;
use crate::effects::{Effects, Open};
use crate::input::PointerKind;
use crate::selection::{Selection, Thing};
use crate::tools::meter::Mode;
use crate::tools::place::turned;
use crate::tools::{Meter, Pull, Tool};
use drawing::{Overlay, arrange};
use kurbo::Rect;
use model::edits;
use model::{Change, Edit, PartKind, SheetKind};
use ordered::OrderedSet;
use words::say;

/// Width that the explanation of a finding takes on the screen, in pixels.
const EXPLANATION_PX: f64 = 410.0;

impl Editor {
    /// Does an action, as from a menu or the Ask box.
    pub fn perform(&mut self, action: Action) -> Effects {
        self.act(action);
        self.take_effects()
    }

    pub(crate) fn act(&mut self, action: Action) {
        self.out.noticed = true;
        self.out.repaint = true;
        // What is thrown is no part of the job: it can be undone where the job cannot.
        if let (Tool::Break(_), Action::Undo | Action::Redo) = (&self.tool, action) {
            self.abandon_break();
            self.step_breaks(action == Action::Undo);
            return;
        }
        if !self.offers(action) {
            if self.conceals && action.tells() {
                self.out.say = Some(self.words.text("exercise-not-told"));
            } else {
                self.refuses();
            }
            return;
        }
        if !self.studied && action.looks_through() {
            // What a job begins with is no news, whoever has it worked out first.
            self.analyse();
        }
        match action {
            Action::Pick => self.take(Tool::default()),
            Action::Hand => self.take(Tool::Hand),
            Action::Meter => self.take_meter(None),
            Action::MeterVolts => self.take_meter(Some(Mode::Volts)),
            Action::MeterAmps => self.take_meter(Some(Mode::Amps)),
            Action::MeterTone => self.take_meter(Some(Mode::Tone)),
            Action::MeterOhms => self.take_meter(Some(Mode::Ohms)),
            Action::KeepReading => self.keep_reading(),
            Action::PullRun => match self.focus.clone() {
                Some(Thing::Terminal(from)) => {
                    self.interrupt();
                    self.pull_by_keys(from);
                }
                _ => self.take(Tool::Pull(Pull::Waiting)),
            },
            Action::WhatFeeds => self.ask_feeds(),
            Action::Details => {
                let thing = self.selection.single().or_else(|| self.focus.clone());
                if let Some(place) = self.finding.filter(|_| thing.is_none()) {
                    self.out.open = Some(Open::Finding(place));
                } else if let Some(thing) = thing {
                    self.out.open = Some(Open::Details(thing));
                }
            }
            Action::Rename => {
                if let Some(thing) = self.selection.single() {
                    self.out.open = Some(Open::Rename(thing));
                }
            }
            Action::Turn => self.turn_picked(false),
            Action::TurnBack => self.turn_picked(true),
            Action::Delete => self.delete_picked(),
            Action::Undo => self.undo(),
            Action::Redo => self.redo(),
            Action::Copy => {
                self.copy_picked();
            }
            Action::Cut => {
                if self.copy_picked() {
                    self.delete_picked();
                }
            }
            Action::Paste => self.paste_clip(),
            Action::Duplicate => {
                let parts = self.selection.parts.clone();
                let picked = parts.iter().filter_map(|id| self.sheet().parts.get(id));
                let (dx, dy) = self.room_for_copies(picked);
                let what = edits::things(self.sheet(), &parts, &OrderedSet::new());
                let made = edits::duplicate(&self.job, self.on, &parts, dx, dy).map(|mut pasted| {
                    pasted.edit = pasted.edit.rename(say!("edit-duplicate", what = what));
                    pasted
                });
                self.pasted(made);
            }
            Action::PickAll => {
                let sheet = self.sheet();
                self.selection = Selection {
                    parts: sheet.parts.keys().copied().collect(),
                    runs: sheet.runs.keys().copied().collect(),
                };
            }
            Action::Splice => self.splice_picked(),
            Action::MoveEnd => self.move_end_by_keys(),
            Action::NextBend => self.next_bend(),
            Action::Straighten => self.straighten_picked(),
            Action::TidySheet => self.tidy(),
            Action::NextFinding => self.step_finding(false),
            Action::PreviousFinding => self.step_finding(true),
            Action::MendFinding => self.mend_first(),
            Action::NextPart => self.step_part(false),
            Action::PreviousPart => self.step_part(true),
            Action::OverlayCurrent => self.lay(Overlay::Current),
            Action::OverlayVoltage => self.lay(Overlay::Voltage),
            Action::OverlayHeat => self.lay(Overlay::Heat),
            Action::OverlayProtection => self.lay(Overlay::Protection),
            Action::OverlaySignal => self.lay(Overlay::Signal),
            Action::OverlaySpeakers => self.lay(Overlay::Speakers),
            Action::OverlayNone => self.lay(Overlay::None),
            Action::ZoomIn => self.zoom(1.25),
            Action::ZoomOut => self.zoom(0.8),
            Action::Fit => self.fit(),
            Action::FitPicked => self.fit_picked(),
            Action::BodyPlan => self.turn_body(),
            Action::RouteAll => self.route_everything(),
            Action::SheetBefore => self.step_sheet(true),
            Action::SheetAfter => self.step_sheet(false),
            Action::LayUnder => self.step_under(),
            Action::OpenShelf
            | Action::Ask
            | Action::OpenFile
            | Action::SaveFile
            | Action::NewJob
            | Action::StartSystem
            | Action::Jobs
            | Action::Lessons
            | Action::MakeLesson
            | Action::ExportSvg
            | Action::ExportPng
            | Action::Print
            | Action::Share
            | Action::Limits
            | Action::MendAll
            | Action::Readings
            | Action::FindFault
            | Action::Prove
            | Action::BreakIt
            | Action::Record
            | Action::Thread
            | Action::Papers
            | Action::SizeIt
            | Action::Outline
            | Action::Paper
            | Action::English
            | Action::German
            | Action::Metres
            | Action::Feet
            | Action::SquareMillimetres
            | Action::Gauge
            | Action::Keys => self.out.outside = Some(action),
        }
    }

    pub(crate) fn take(&mut self, tool: Tool) {
        self.interrupt();
        self.tool = tool;
        self.tell(self.tool.hint());
    }

    /// The meter in hand, leads where they were. Without a mode: in hand, or put away when it is.
    fn take_meter(&mut self, mode: Option<Mode>) {
        let before = match &self.tool {
            Tool::Meter(_) if mode.is_none() => {
                self.take(Tool::default());
                return;
            }
            Tool::Meter(meter) => meter.clone(),
            _ => Meter::default(),
        };
        let mode = mode.unwrap_or(before.mode);
        self.take(Tool::Meter(Meter { mode, ..before }));
        self.ready_tone(mode);
        self.out.open = Some(Open::Nothing);
    }

    /// Says which lead the next touch puts down.
    pub fn black_next(&mut self, black: bool) -> Effects {
        if let Tool::Meter(meter) = &mut self.tool {
            meter.black_next = black;
            self.out.noticed = true;
        }
        self.take_effects()
    }

    fn ask_feeds(&mut self) {
        let thing = self
            .focus
            .clone()
            .or_else(|| self.selection.single())
            .or_else(|| self.hovered.clone());
        if self.feeds.is_some() && self.feeds == thing {
            self.feeds = None;
            return;
        }
        let Some(thing) = thing else {
            self.feeds = None;
            self.tell(say!("feeds-pick-first"));
            return;
        };
        // The ways are told by the legend, which the page keeps beside the drawing.
        let fed = self.fed_by(&thing);
        let nothing = say!("feeds-nothing", thing = thing.written(self.sheet()));
        self.out.say = fed.is_empty().then(|| self.words.say(&nothing));
        self.feeds = Some(thing);
    }

    fn turn_picked(&mut self, back: bool) {
        if matches!(self.tool, Tool::Place(_)) {
            self.turn_in_hand(back);
            return;
        }
        let mut changes = Vec::new();
        for id in &self.selection.parts {
            if let Some(part) = self.sheet().parts.get(id) {
                let mut part = part.clone();
                for _ in 0..if back { 3 } else { 1 } {
                    part.turn = turned(part.turn);
                }
                changes.push(Change::Part {
                    sheet: self.on,
                    id: *id,
                    to: Some(Box::new(part)),
                });
            }
        }
        if !changes.is_empty() {
            let what = edits::things(self.sheet(), &self.selection.parts, &OrderedSet::new());
            let edit = Edit::new(say!("edit-turn", what = what), changes);
            self.tell(edit.name.said());
            self.apply(edit);
        }
    }

    pub(crate) fn delete_picked(&mut self) {
        if self.selection.is_empty() || self.remove_bend() {
            return;
        }
        self.interrupt();
        let edit = edits::remove(&self.job, self.on, &self.selection.parts, &self.selection.runs);
        self.tell(edit.name.said());
        self.apply(edit);
        self.out.open = Some(Open::Nothing);
    }

    pub(crate) fn pasted(&mut self, made: Result<edits::Pasted, edits::EditError>) {
        match made {
            Ok(pasted) => {
                self.interrupt();
                self.begin_gesture(pasted.edit.name.clone());
                self.extend_gesture(pasted.edit, &pasted.parts);
                self.settle(&pasted.parts);
                self.commit_gesture();
                self.selection = Selection {
                    parts: pasted.parts,
                    runs: pasted.runs,
                };
                self.focus = self.selection.parts.first().map(|id| Thing::Part(*id));
                self.out.open = Some(Open::Nothing);
                // There may be room only outside of the window, and from another job it may come to stand far from it.
                let areas = self.selection.parts.iter();
                let areas = areas.filter_map(|id| self.area_of(&Thing::Part(*id)));
                if let Some(area) = areas.reduce(|all: Rect, one| all.union(one)) {
                    self.camera.reveal(area);
                }
            }
            Err(error) => self.tell(error.0),
        }
    }

    fn splice_picked(&mut self) {
        let (Some(Thing::Run(run)), Some(splice)) = (self.selection.single(), PartKind::from_word("splice"))
        else {
            self.tell(say!("splice-pick-first"));
            return;
        };
        let at = self.layout.run(run).map(|way| way.label_at).unwrap_or_default();
        let at = super::tools::pull::snapped(at, self.options.grid_units);
        match edits::insert_into_run(&self.job, self.on, run, splice, at, None) {
            Ok(inserted) => {
                self.tell(inserted.edit.name.said());
                self.apply_placing(inserted.edit, inserted.part);
                self.pick_only(&Thing::Part(inserted.part));
            }
            Err(error) => self.tell(error.0),
        }
    }

    fn straighten_picked(&mut self) {
        let mut changes = Vec::new();
        for id in &self.selection.runs {
            if let Some(run) = self.sheet().runs.get(id).filter(|run| !run.bends.is_empty()) {
                let mut run = run.clone();
                run.bends.clear();
                changes.push(Change::Run {
                    sheet: self.on,
                    id: *id,
                    to: Some(Box::new(run)),
                });
            }
        }
        let name = match (self.selection.single(), changes.len()) {
            (_, 0) => {
                self.tell(say!("straighten-nothing"));
                return;
            }
            (Some(run), _) => say!("edit-straighten", run = run.written(self.sheet())),
            (None, count) => say!("edit-straighten-several", count = count),
        };
        self.apply(Edit::new(name, changes));
    }

    /// Arranges the whole sheet anew: one step, undone like any other. Bends put by hand go, as they belong to the old
    /// places.
    fn tidy(&mut self) {
        self.interrupt();
        let mut changes = Vec::new();
        for (id, at) in arrange(self.sheet()) {
            if let Some(part) = self.sheet().parts.get(&id).filter(|part| part.at != Some(at)) {
                let mut part = part.clone();
                part.at = Some(at);
                changes.push(Change::Part {
                    sheet: self.on,
                    id,
                    to: Some(Box::new(part)),
                });
            }
        }
        for (id, run) in self.sheet().runs.iter().filter(|(_, run)| !run.bends.is_empty()) {
            let mut run = run.clone();
            run.bends.clear();
            changes.push(Change::Run {
                sheet: self.on,
                id: *id,
                to: Some(Box::new(run)),
            });
        }
        if changes.is_empty() {
            self.tell(say!("tidy-already"));
            return;
        }
        self.apply(Edit::new(say!("edit-tidy"), changes));
        self.layout = self.laid_out();
        self.still_changed();
        self.out.open = Some(Open::Nothing);
        self.fit();
    }

    // Findings.

    /// Takes a finding in hand: what it speaks of is brought into view and its explanation opened.
    pub fn go_to_finding(&mut self, place: usize) -> Effects {
        self.show_finding(place);
        self.take_effects()
    }

    /// How far beside a mark it still takes a click, in board units: what lies on it, and a finger a little more; what lies
    /// under it is picked beside it.
    pub(crate) fn mark_slop(&self, kind: PointerKind) -> f64 {
        let pixels = if kind == PointerKind::Touch { 7.0 } else { 0.0 };
        pixels / self.camera.zoom
    }

    pub(crate) fn show_finding(&mut self, place: usize) {
        let Some(finding) = self.analysis.findings.get(place).cloned() else {
            return;
        };
        self.interrupt();
        self.finding = Some(place);
        self.selection = Selection::none();
        self.focus = None;
        let parts = finding
            .parts
            .iter()
            .filter_map(|id| self.area_of(&Thing::Part(*id)));
        let runs = finding
            .runs
            .iter()
            .filter_map(|id| self.area_of(&Thing::Run(*id)));
        let foremost = parts.chain(runs).next();
        if let Some(area) = foremost {
            // The explanation lies over the right of the free area: what it speaks of is brought beside it.
            let margins = self.camera.margins;
            if self.camera.width > 1000.0 {
                self.camera.margins.right += EXPLANATION_PX;
            } else {
                // In a narrow window it lies over the upper half.
                self.camera.margins.top += self.camera.height / 2.0;
            }
            self.camera.reveal(area);
            self.camera.margins = margins;
        }
        self.out.open = Some(Open::Finding(place));
        self.tell(say!(
            "finding-shown",
            grade = finding.grade.said(),
            what = &finding.what
        ));
        self.out.noticed = true;
        self.out.repaint = true;
    }

    fn step_finding(&mut self, back: bool) {
        let count = self.analysis.findings.len();
        if count == 0 {
            self.tell(say!("findings-none"));
            return;
        }
        let next = match (self.finding, back) {
            (None, false) => 0,
            (None, true) => count - 1,
            (Some(place), false) => (place + 1) % count,
            (Some(place), true) => (place + count - 1) % count,
        };
        self.show_finding(next);
    }

    fn mend_first(&mut self) {
        let mend = self
            .finding
            .and_then(|place| self.analysis.findings.get(place))
            .and_then(|finding| finding.mends.first());
        match mend.cloned() {
            Some(mend) => self.mend_by(mend.edit),
            None => {
                self.tell(say!("mend-none"));
            }
        }
    }

    /// Applies one of the mends of a finding.
    pub fn mend(&mut self, place: usize, mend: usize) -> Effects {
        let mend = self
            .analysis
            .findings
            .get(place)
            .and_then(|finding| finding.mends.get(mend))
            .cloned();
        if let Some(mend) = mend {
            self.interrupt();
            self.mend_by(mend.edit);
        }
        self.take_effects()
    }

    /// Makes many mends at once: one step to undo.
    pub fn mend_all(&mut self, edit: Edit, count: usize) -> Effects {
        if !self.refuses() {
            self.interrupt();
            self.mend_by(edit);
            self.tell(say!("mended-all", count = count));
        }
        self.take_effects()
    }

    fn mend_by(&mut self, edit: Edit) {
        // A check sees one sheet; what its mend adds must have ids that are free in the whole job.
        let edit = checks::mend_for(&self.job, self.on, &edit);
        self.tell(say!("mended", what = edit.name.said()));
        let parts = model::history::Touched::by(&edit)
            .parts
            .into_iter()
            .map(|(_, id)| id)
            .collect();
        self.begin_gesture(edit.name.clone());
        self.extend_gesture(edit, &parts);
        self.settle(&parts);
        self.commit_gesture();
        self.out.open = Some(Open::Nothing);
    }

    // Looking.

    fn lay(&mut self, overlay: Overlay) {
        // The same key again takes the tracing paper away.
        self.overlay = if self.overlay == overlay {
            Overlay::None
        } else {
            overlay
        };
    }

    fn zoom(&mut self, factor: f64) {
        let free = self.camera.free_area().center();
        self.camera
            .zoom_about(crate::ScreenPoint::new(free.x, free.y), factor);
    }

    fn fit_picked(&mut self) {
        let parts = self
            .selection
            .parts
            .iter()
            .filter_map(|id| self.area_of(&Thing::Part(*id)));
        let runs = self
            .selection
            .runs
            .iter()
            .filter_map(|id| self.area_of(&Thing::Run(*id)));
        if let Some(area) = parts.chain(runs).reduce(|all, one| all.union(one)) {
            self.camera.fit(area.inflate(60.0, 60.0), 2.0);
        }
    }

    /// Puts the sheet of a kind on the table.
    pub fn open_sheet(&mut self, on: SheetKind) -> Effects {
        self.turn_to(on);
        self.take_effects()
    }

    fn step_sheet(&mut self, back: bool) {
        let all = SheetKind::ALL;
        let here = all.iter().position(|kind| *kind == self.on).unwrap_or(0);
        let next = if back { here.checked_sub(1) } else { Some(here + 1) };
        if let Some(kind) = next.and_then(|next| all.get(next)) {
            self.turn_to(*kind);
            self.tell(say!("sheet-turned", sheet = kind.said()));
        }
    }
}
