//! The editor: a job, one of its sheets on the table, and the tool in hand.

use crate::actions::Action;
use crate::camera::Camera;
use crate::effects::{Effects, Open};
use crate::fingers::Fingers;
use crate::input::{Button, Input, Key, PointerKind};
use crate::options::Options;
use crate::selection::{Selection, Thing};
use crate::tools::Tool;
use checks::Analysis;
use drawing::{Layout, Mark, Overlay, Under};
use model::edits::Clip;
use model::history::{Entry, History};
use model::{Job, PartId, RunId, Sheet, SheetKind};
use ordered::OrderedSet;
use std::sync::Arc;
use words::Words;

/// A job on the table.
#[derive(Clone, Debug)]
pub struct Editor {
    pub(crate) job: Job,
    pub(crate) on: SheetKind,
    pub(crate) history: History,
    pub(crate) layout: Layout,
    pub(crate) analysis: Arc<Analysis>,
    pub(crate) marks: Vec<Mark>,
    /// How the sheet was fitted before its marks were known; who still sees it so sees them as well once they are.
    pub(crate) fitted_unmarked: Option<crate::Camera>,
    /// The view that shows the whole sheet, as it was last made.
    fitted: Option<crate::Camera>,
    pub(crate) stale: bool,
    /// Whether there has been an analysis at all.
    pub(crate) studied: bool,
    /// Whether the job is only looked at: see [`Editor::looking`].
    pub(crate) looks_only: bool,
    /// Whether what was found, and the numbers that tell it, stay hidden: an exercise.
    pub(crate) conceals: bool,
    /// What is broken, and the moment after it that is shown instead of how the sheet works.
    pub(crate) broken: crate::breaking::Broken,
    /// A meter that reads a test tone on the sheet, once it was asked for.
    pub(crate) tone: Option<Arc<circuit::Meter>>,
    /// A search for a fault, as it is drawn.
    pub(crate) hunt: crate::hunting::Hunt,
    pub(crate) journal: Vec<Entry>,
    pub(crate) camera: Camera,
    pub(crate) selection: Selection,
    /// The bend that keys act upon, valid while its run alone is picked.
    pub(crate) bend: Option<(RunId, usize)>,
    pub(crate) focus: Option<Thing>,
    pub(crate) hovered: Option<Thing>,
    pub(crate) tool: Tool,
    pub(crate) overlay: Overlay,
    /// The sheet laid under the one on the table.
    pub(crate) under: Option<Arc<Under>>,
    /// A thing of that sheet alone that was asked for.
    pub(crate) beneath: Option<Thing>,
    /// The body plan, while it is on the table in place of the board.
    pub(crate) on_body: Option<Box<crate::on_body::OnBody>>,
    pub(crate) feeds: Option<Thing>,
    pub(crate) finding: Option<usize>,
    pub(crate) options: Options,
    pub(crate) clip: Clip,
    /// What was last given to the system's clipboard: when that comes back, it is the clip in hand that is meant.
    pub(crate) clip_given: String,
    pub(crate) fingers: Fingers,
    /// Whether the last input was a key: only then the keyboard's place is shown.
    pub(crate) by_keys: bool,
    /// What pointed last: handles stand further apart for fingers.
    pub(crate) pointing: PointerKind,
    /// Parts that the gesture in hand touched so far.
    pub(crate) gesture_parts: OrderedSet<PartId>,
    /// Runs that it changed itself.
    pub(crate) gesture_runs: OrderedSet<RunId>,
    /// Counts what changed in the picture besides the gesture in hand: see [`crate::Seen`].
    pub(crate) still: u64,
    pub(crate) out: Effects,
    /// Who reads.
    pub(crate) words: Words,
    empty: Sheet,
}

impl Editor {
    /// Puts a job on the table. Parts that have no place on the board get that of an earlier sheet, or one by arrangement, which
    /// is no step of the history: it happens each time alike.
    #[must_use]
    pub fn new(job: Job) -> Self {
        let mut this = Self::unstudied(job);
        this.analyse();
        this
    }
    /// Puts a job on the table as [`Editor::new`] does, but without an analysis: of a large job one wants to see the
    /// picture first.
    #[must_use]
    pub fn unstudied(mut job: Job) -> Self {
        let kinds: Vec<SheetKind> = job.sheets.keys().copied().collect();
        let mut earlier: Vec<Sheet> = Vec::new();
        for kind in kinds {
            let Some(sheet) = job.sheets.get_mut(&kind) else {
                continue;
            };
            for before in earlier.iter().rev() {
                drawing::take_places(sheet, before);
            }
            // Nothing to arrange where all have a place.
            let places = if sheet.parts.values().any(|part| part.at.is_none()) {
                drawing::arrange_unplaced(sheet)
            } else {
                Default::default()
            };
            for (id, at) in places {
                if let Some(part) = sheet.parts.get_mut(&id) {
                    part.at = part.at.or(Some(at));
                }
            }
            earlier.push(sheet.clone());
        }
        let on = job.sheets.keys().next_back().copied().unwrap_or(SheetKind::Plan);
        let on = if job.sheets.contains_key(&SheetKind::Plan) {
            SheetKind::Plan
        } else {
            on
        };
        let mut this = Self {
            job,
            on,
            history: History::new(),
            layout: Layout::default(),
            analysis: Arc::default(),
            marks: Vec::new(),
            fitted_unmarked: None,
            fitted: None,
            stale: true,
            studied: false,
            looks_only: false,
            conceals: false,
            broken: Default::default(),
            tone: None,
            hunt: Default::default(),
            journal: Vec::new(),
            camera: Camera::default(),
            selection: Selection::none(),
            bend: None,
            focus: None,
            hovered: None,
            tool: Tool::default(),
            overlay: Overlay::None,
            under: None,
            beneath: None,
            on_body: None,
            feeds: None,
            finding: None,
            options: Options::default(),
            clip: Clip::default(),
            clip_given: String::new(),
            fingers: Fingers::default(),
            by_keys: false,
            pointing: PointerKind::Mouse,
            gesture_parts: OrderedSet::new(),
            gesture_runs: OrderedSet::new(),
            still: 0,
            out: Effects::default(),
            words: Words::english(),
            empty: Sheet::default(),
        };
        this.layout = this.laid_out();
        this
    }

    /// Says who reads: everything that the editor says and draws from here on is in these words.
    pub fn read_by(&mut self, words: Words) {
        if self.words == words {
            return;
        }
        self.words = words;
        self.layout = self.laid_out();
        if let Some(under) = self.under.take() {
            let laid = Under::read_by(
                under.kind,
                under.sheet.clone(),
                self.on,
                self.sheet(),
                &self.words,
            );
            self.under = Some(Arc::new(laid));
        }
        self.follow_body();
        self.still_changed();
    }

    // What others may look at.

    /// The words of who reads.
    #[must_use]
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// The job as it stands.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }
    /// The sheet on the table; an empty one where the job has none of this kind.
    #[must_use]
    pub fn sheet(&self) -> &Sheet {
        self.job.sheets.get(&self.on).unwrap_or(&self.empty)
    }
    /// Which sheet is on the table.
    #[must_use]
    pub fn on(&self) -> SheetKind {
        self.on
    }
    /// Where everything lies.
    #[must_use]
    pub fn layout(&self) -> &Layout {
        &self.layout
    }
    /// What the engine and the checks found, as of the last [`Editor::analyse`].
    #[must_use]
    pub fn analysis(&self) -> &Arc<Analysis> {
        &self.analysis
    }
    /// Whether the job changed since.
    #[must_use]
    pub fn is_stale(&self) -> bool {
        self.stale
    }
    /// Whether the job on the table was looked through at all: until then nothing is known of findings and numbers.
    #[must_use]
    pub fn is_studied(&self) -> bool {
        self.studied
    }
    /// How the board is seen.
    #[must_use]
    pub fn camera(&self) -> &Camera {
        &self.camera
    }
    /// What is picked.
    #[must_use]
    pub fn selection(&self) -> &Selection {
        &self.selection
    }
    /// What the keyboard stands on.
    #[must_use]
    pub fn focus(&self) -> Option<&Thing> {
        self.focus.as_ref()
    }
    /// What the keyboard stands on, while it is in use.
    #[must_use]
    pub fn shown_focus(&self) -> Option<&Thing> {
        self.focus.as_ref().filter(|_| self.by_keys)
    }
    /// What the pointer is over.
    #[must_use]
    pub fn hovered(&self) -> Option<&Thing> {
        self.hovered.as_ref()
    }
    /// The tool in hand.
    #[must_use]
    pub fn tool(&self) -> &Tool {
        &self.tool
    }
    /// The overlay in force.
    #[must_use]
    pub fn overlay(&self) -> Overlay {
        self.overlay
    }
    /// What one asked of what feeds it.
    #[must_use]
    pub fn feeds(&self) -> Option<&Thing> {
        self.feeds.as_ref()
    }
    /// The finding in hand, by its place in the list.
    #[must_use]
    pub fn finding(&self) -> Option<usize> {
        self.finding
    }
    /// What can be undone and done again.
    #[must_use]
    pub fn history(&self) -> &History {
        &self.history
    }
    /// How gestures feel.
    #[must_use]
    pub fn options(&self) -> &Options {
        &self.options
    }
    /// What happened since the last call, for the journal on disk.
    pub fn take_journal(&mut self) -> Vec<Entry> {
        std::mem::take(&mut self.journal)
    }
    /// Notes that the job as it stands is saved as a file.
    pub fn mark_saved(&mut self) {
        self.history.mark_saved();
    }
    /// Tells the size of the window and what frame and notes take of it.
    pub fn resize(&mut self, width: f64, height: f64, margins: crate::Margins) {
        // Whatever a window reports, it has a size.
        let tame = |px: f64| {
            if px.is_finite() {
                px.clamp(1.0, 20_000.0)
            } else {
                1000.0
            }
        };
        self.camera.width = tame(width);
        self.camera.height = tame(height);
        self.camera.margins = margins;
    }
    /// Shows the whole sheet.
    pub fn fit(&mut self) {
        if self.is_on_body() {
            self.fit_body();
        } else if let Some(all) = self.seen_bounds() {
            self.beside_legend(false, |camera| camera.fit(all.inflate(20.0, 20.0), 1.4));
            // Marks keep their size on the screen: how far they reach beyond the sheet is known once its size there is.
            if self.stale {
                self.fitted_unmarked = Some(self.camera);
            } else if let Some(marks) = drawing::marks_bounds(&self.layout, &self.look()) {
                let all = all.inflate(20.0, 20.0).union(marks);
                self.beside_legend(false, |camera| camera.fit(all, 1.4));
            }
        }
        self.fitted = Some(self.camera);
    }
    /// Whether the whole sheet is shown, as nobody has moved the view since it was made to.
    #[must_use]
    pub fn is_fitted(&self) -> bool {
        self.fitted == Some(self.camera)
    }

    // What comes in.

    /// Takes one input.
    pub fn handle(&mut self, input: Input) -> Effects {
        if !input.is_finite() {
            return self.take_effects();
        }
        match input {
            Input::Key(..) => self.by_keys = true,
            Input::Down(pointer, _) => {
                self.by_keys = false;
                self.pointing = pointer.kind;
            }
            _ => {}
        }
        if self.paper_input(input) {
            return self.take_effects();
        }
        match input {
            Input::Key(Key::Escape, _) => self.cancel(),
            Input::Key(key, mods) if self.body_key(key, mods) => self.out.taken = true,
            Input::Lost => {
                self.fingers.lost();
                self.abandon();
            }
            Input::Left => {
                self.hover(None);
                self.tool_input(input);
            }
            Input::Key(key, mods) => {
                self.tool_input(input);
                if !self.out.taken
                    && !self.walk_key(key, mods)
                    && let Some(action) = Action::of_key(key, mods)
                {
                    self.out.taken = true;
                    self.act(action);
                }
            }
            Input::Down(_, Button::Secondary) => {
                self.tool_input(input);
            }
            _ => self.tool_input(input),
        }
        self.take_effects()
    }

    fn tool_input(&mut self, input: Input) {
        if self.is_on_body() {
            return self.body_input(input);
        }
        match self.tool.clone() {
            Tool::Pick(pick) => self.pick_input(pick, input),
            Tool::Pull(pull) => self.pull_input(pull, input),
            Tool::MoveEnd(end) => self.move_end_input(end, input),
            Tool::Place(place) => self.place_input(place, input),
            Tool::Meter(meter) => self.meter_input(meter, input),
            Tool::Break(tool) => self.break_input(tool, input),
            Tool::Hand => {}
        }
    }

    /// Inputs that move the paper, whatever the tool. True when the input was one.
    pub(crate) fn paper_input(&mut self, input: Input) -> bool {
        match input {
            Input::Wheel { at, dx, dy, zooms } => {
                if zooms {
                    let factor = libm::exp((-dy * self.options.wheel_zoom_per_px).clamp(-2.0, 2.0));
                    self.camera.zoom_about(at, factor);
                } else {
                    self.camera.pan(-dx, -dy);
                }
                self.out.taken = true;
                self.out.repaint = true;
                true
            }
            Input::Down(pointer, button) => {
                if pointer.kind == PointerKind::Touch
                    && self.fingers.touch_down(pointer.id, pointer.at, &self.camera)
                {
                    self.abandon();
                    self.out.taken = true;
                    return true;
                }
                let shifts = button == Button::Middle || self.fingers.space || self.tool == Tool::Hand;
                if shifts && !self.fingers.busy() {
                    self.abandon();
                    self.fingers.shift_by(pointer.id, pointer.at);
                    self.out.taken = true;
                }
                self.fingers.busy()
            }
            Input::Move(pointer) => {
                if self.fingers.moved(pointer.id, pointer.at, &mut self.camera) {
                    self.out.repaint = true;
                }
                self.fingers.busy()
            }
            Input::Up(pointer) => self.fingers.up(pointer.id),
            Input::Key(Key::Space, _) => {
                self.fingers.space = true;
                self.out.taken = true;
                true
            }
            Input::KeyUp(Key::Space) => {
                self.fingers.space = false;
                true
            }
            Input::KeyUp(_) => true,
            _ => false,
        }
    }

    /// Escape: backs out of one thing, the innermost first.
    fn cancel(&mut self) {
        self.out.taken = true;
        // What was said is taken back with it.
        self.out.say = Some(String::new());
        if self.drop_carried() {
            self.out.repaint = true;
            return;
        }
        if self.held_place().is_some() {
            self.out.noticed = true;
            return self.let_go_of_place();
        }
        let idle = Tool::default();
        if self.abandon_break() {
            // Back to the tool, or from the mark that was picked.
        } else if self.tool != idle {
            let was_pressing = matches!(&self.tool, Tool::Pick(_));
            self.abandon();
            // From within a gesture, back to the tool; from a tool at rest, back to picking.
            if !was_pressing {
                self.tool = idle;
            }
        } else if self.feeds.take().is_none() {
            self.out.open = Some(Open::Nothing);
            if self.beneath.take().is_none() && self.finding.take().is_none() {
                self.selection = Selection::none();
                self.focus = None;
            }
        }
        self.out.noticed = true;
        self.out.repaint = true;
    }

    /// Drops the gesture in hand: the job is exactly as it was when the gesture began.
    pub(crate) fn abandon(&mut self) {
        self.drop_carried();
        if self.history.in_gesture() {
            let touched = self.gesture_parts.clone();
            self.history.cancel(&mut self.job);
            self.relay(&touched);
        }
        self.abandon_break();
        self.tool = match std::mem::take(&mut self.tool) {
            Tool::Pick(_) => Tool::default(),
            Tool::Pull(_) => Tool::default(),
            Tool::MoveEnd(_) | Tool::Place(_) => Tool::default(),
            other => other,
        };
        self.out.noticed = true;
        self.out.repaint = true;
    }

    /// Another tool or dialogue takes over.
    pub fn interrupt(&mut self) {
        self.abandon();
    }

    pub(crate) fn take_effects(&mut self) -> Effects {
        self.follow_look();
        std::mem::take(&mut self.out)
    }
}
