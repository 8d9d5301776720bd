//! The desk: the editor with the canvas it is painted on. It lives in a cell beside the app's state, because a copy of it
//! for every move of the pointer would cost a frame on a large job; the state only counts its revisions.

use crate::browser;
use crate::canvas::paint::{Painter, Surface};
use drawing::Palette;
use editor::{Action, Editor, Effects, Input, ScreenPoint};
use gloo_timers::callback::Timeout;
use model::Job;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use words::Words;
use yew::Callback;

/// Parts on a sheet up to which the analysis is made within the edit; beyond, the picture comes first.
const AT_ONCE: usize = 400;
/// How long an analysis is put off, in milliseconds: as long as the last one took, so that one step of work after another
/// does not wait for what nobody looks at, but no shorter and no longer than this.
const PUT_OFF_MS: (f64, f64) = (30.0, 600.0);

/// Whether the analysis is made within the edit: of a small sheet, once all of the program is there.
fn is_made_at_once(editor: &Editor) -> bool {
    editor.sheet().parts.len() <= AT_ONCE && browser::all_is_there()
}

/// Whether the whole sheet is shown once the surface has another size.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fit {
    Anew,
    /// Where it was shown, and nobody has moved the view since.
    AsBefore,
    /// The same where the surface itself has another size: it may only have to be painted anew.
    WithSize,
    /// The view stays as it is.
    No,
}

/// The editor and its canvas.
pub(crate) struct Desk {
    editor: RefCell<Editor>,
    surface: RefCell<Option<Surface>>,
    painter: RefCell<Painter>,
    palette: RefCell<Palette>,
    /// Whether a frame is asked for already: one is enough.
    frame_pending: Cell<bool>,
    frame: RefCell<Option<Closure<dyn FnMut()>>>,
    /// Called with what came of an input, when it concerns more than the canvas.
    listener: RefCell<Callback<Effects>>,
    /// Called after an edit, at once: what is to be kept leaves before anything else happens.
    on_edit: RefCell<Callback<()>>,
    /// Called when the paper moved under the window.
    on_camera: RefCell<Callback<()>>,
    painted_camera: Cell<Option<editor::Camera>>,
    /// The analysis that was put off; a newer edit puts it off again.
    late: RefCell<Option<Timeout>>,
    /// Milliseconds that the last analysis took.
    last_analysis_ms: Cell<f64>,
    own: Weak<Self>,
    is_painted: Cell<bool>,
    /// Milliseconds that the last frame took, for the bench.
    pub(crate) last_paint_ms: Cell<f64>,
}

impl Desk {
    /// A desk with a job to work on.
    pub(crate) fn new(job: Job, words: Words) -> Rc<Self> {
        Self::with(Editor::unstudied(job), words)
    }
    /// A desk with a job that is only looked at.
    pub(crate) fn looking(job: Job, words: Words) -> Rc<Self> {
        Self::with(Editor::looking(job), words)
    }
    /// A desk with a job that is only looked at and does not tell what is wrong with it.
    pub(crate) fn exercise(job: Job, words: Words) -> Rc<Self> {
        Self::with(Editor::exercise(job), words)
    }
    fn with(mut editor: Editor, words: Words) -> Rc<Self> {
        editor.read_by(words);
        // What lies around the drawing is laid out by the width of the window from the first moment on.
        if let Some((width, height)) = browser::window_size() {
            let margins = editor.camera().margins;
            editor.resize(width, height, margins);
        }
        let this = Rc::new_cyclic(|own| Self {
            late: RefCell::new(None),
            last_analysis_ms: Cell::new(0.0),
            own: own.clone(),
            is_painted: Cell::new(false),
            editor: RefCell::new(editor),
            surface: RefCell::new(None),
            painter: RefCell::new(Painter::default()),
            palette: RefCell::new(Palette::light()),
            frame_pending: Cell::new(false),
            frame: RefCell::new(None),
            listener: RefCell::new(Callback::noop()),
            on_edit: RefCell::new(Callback::noop()),
            on_camera: RefCell::new(Callback::noop()),
            painted_camera: Cell::new(None),
            last_paint_ms: Cell::new(0.0),
        });
        let weak = Rc::downgrade(&this);
        let frame: Closure<dyn FnMut()> = Closure::new(move || {
            if let Some(desk) = weak.upgrade() {
                desk.frame_pending.set(false);
                desk.paint();
            }
        });
        *this.frame.borrow_mut() = Some(frame);
        if browser::all_is_there() {
            this.editor.borrow_mut().analyse();
        } else {
            let weak = Rc::downgrade(&this);
            browser::once_all_is_there(move || {
                if let Some(desk) = weak.upgrade() {
                    desk.catch_up();
                }
            });
        }
        this
    }
    /// Looks at the editor.
    pub(crate) fn see<T>(&self, look: impl FnOnce(&Editor) -> T) -> T {
        look(&self.editor.borrow())
    }
    /// The reader's words.
    pub(crate) fn words(&self) -> Words {
        self.see(|editor| editor.words().clone())
    }
    /// Tells who reads: picture and panels are made anew when it is somebody else.
    pub(crate) fn read_by(&self, words: &Words) {
        if self.see(|editor| editor.words() != words) {
            self.editor.borrow_mut().read_by(words.clone());
            self.painter.borrow_mut().forget();
            self.tell(Effects {
                repaint: true,
                noticed: true,
                ..Effects::default()
            });
        }
    }
    pub(crate) fn listen(&self, listener: Callback<Effects>) {
        *self.listener.borrow_mut() = listener;
    }
    pub(crate) fn on_edit(&self, keep: Callback<()>) {
        *self.on_edit.borrow_mut() = keep;
    }
    pub(crate) fn on_camera(&self, moved: Callback<()>) {
        *self.on_camera.borrow_mut() = moved;
    }
    /// What was done since the last call.
    pub(crate) fn take_journal(&self) -> Vec<model::history::Entry> {
        self.editor.borrow_mut().take_journal()
    }
    /// Notes that the job was saved as a file.
    pub(crate) fn mark_saved(&self) {
        self.editor.borrow_mut().mark_saved();
    }
    pub(crate) fn set_surface(&self, surface: Option<Surface>) {
        *self.surface.borrow_mut() = surface;
        self.painter.borrow_mut().forget();
    }
    pub(crate) fn set_palette(&self, palette: Palette) {
        *self.palette.borrow_mut() = palette;
        self.painter.borrow_mut().forget();
        self.repaint();
    }
    /// Puts another job on the table.
    pub(crate) fn open(&self, job: Job) {
        let camera = *self.editor.borrow().camera();
        let mut fresh = Editor::unstudied(job);
        fresh.read_by(self.words());
        if is_made_at_once(&fresh) {
            fresh.analyse();
        } else {
            self.put_off();
        }
        fresh.resize(camera.width, camera.height, camera.margins);
        fresh.fit();
        *self.editor.borrow_mut() = fresh;
        self.painter.borrow_mut().forget();
        self.tell(Effects {
            repaint: true,
            noticed: true,
            // What was said was said of the job that lay here before.
            say: Some(String::new()),
            ..Effects::default()
        });
    }
    /// Hands an input to the editor. True when it meant something.
    pub(crate) fn input(&self, input: Input) -> bool {
        // What only passes over the first picture, or ends what was never begun there, must not make the page wait for what answers
        // it: a pointer, a key that is let go, another window.
        let passes = matches!(input, Input::Move(_) | Input::Left | Input::KeyUp(_));
        if passes && !browser::all_is_there() {
            return false;
        }
        self.take_input(input)
    }
    // Apart, so that the first picture does without.
    #[inline(never)]
    fn take_input(&self, input: Input) -> bool {
        self.change(|editor| editor.handle(input))
    }
    /// Does an action.
    pub(crate) fn perform(&self, action: Action) {
        self.change(|editor| editor.perform(action));
    }
    /// Does something to the editor and follows up what came of it.
    pub(crate) fn change(&self, how: impl FnOnce(&mut Editor) -> Effects) -> bool {
        let mut effects = how(&mut self.editor.borrow_mut());
        let taken = effects.taken;
        if effects.edited {
            let keep = self.on_edit.borrow().clone();
            keep.emit(());
            let mut editor = self.editor.borrow_mut();
            if is_made_at_once(&editor) {
                // What the step itself says comes before what follows from it.
                let news = editor.analyse();
                effects.say = match (effects.say.take(), news) {
                    (Some(said), Some(news)) => Some(format!("{said}. {news}")),
                    (said, news) => said.or(news),
                };
            } else {
                self.put_off();
            }
        }
        self.tell(effects);
        taken
    }
    /// Lets the analysis wait until the picture of the edit is on the screen.
    fn put_off(&self) {
        let own = self.own.clone();
        let wait = self.last_analysis_ms.get().clamp(PUT_OFF_MS.0, PUT_OFF_MS.1);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to a fraction of a second"
        )]
        let late = Timeout::new(wait as u32, move || {
            if let Some(desk) = own.upgrade() {
                desk.catch_up();
            }
        });
        *self.late.borrow_mut() = Some(late);
    }
    /// Makes an analysis that was put off. As long as the program is not all there it waits for the rest.
    fn catch_up(&self) {
        if !browser::all_is_there() {
            return;
        }
        if self.see(|editor| editor.history().in_gesture()) {
            // Not under the user's hand.
            self.put_off();
        } else if self.see(Editor::is_stale) {
            let started = js_sys::Date::now();
            let is_first = !self.see(Editor::is_studied);
            // What a job begins with is no news.
            let say = self.editor.borrow_mut().analyse().filter(|_| !is_first);
            self.last_analysis_ms.set(js_sys::Date::now() - started);
            self.tell(Effects {
                repaint: true,
                noticed: true,
                say,
                ..Effects::default()
            });
        }
    }
    fn tell(&self, effects: Effects) {
        if effects.repaint {
            self.repaint();
        }
        let concerns = effects.edited
            || effects.noticed
            || effects.open.is_some()
            || effects.outside.is_some()
            || effects.say.is_some();
        if concerns {
            let listener = self.listener.borrow().clone();
            listener.emit(effects);
        }
    }
    /// Asks for a frame, once.
    pub(crate) fn repaint(&self) {
        if self.frame_pending.get() {
            return;
        }
        let frame = self.frame.borrow();
        let asked = browser::window()
            .zip(frame.as_ref())
            .is_some_and(|(window, frame)| {
                window
                    .request_animation_frame(frame.as_ref().unchecked_ref())
                    .is_ok()
            });
        self.frame_pending.set(asked);
    }
    fn paint(&self) {
        let editor = self.editor.borrow();
        if let Some(surface) = &*self.surface.borrow() {
            let started = js_sys::Date::now();
            self.painter
                .borrow_mut()
                .paint(surface, &editor, &self.palette.borrow());
            self.last_paint_ms.set(js_sys::Date::now() - started);
            if !self.is_painted.replace(true) {
                browser::first_picture_stands();
            }
        }
        let camera = *editor.camera();
        drop(editor);
        if self.painted_camera.replace(Some(camera)) != Some(camera) {
            let moved = self.on_camera.borrow().clone();
            moved.emit(());
        }
    }
    /// Tells the size of the drawing surface in CSS pixels and what lies over its edges.
    pub(crate) fn resize(&self, width: f64, height: f64, margins: editor::Margins, fit: Fit) {
        let mut editor = self.editor.borrow_mut();
        let size = |camera: &editor::Camera| (camera.width, camera.height);
        let before = size(editor.camera());
        let was_fitted = editor.is_fitted();
        editor.resize(width, height, margins);
        let fits = match fit {
            Fit::Anew => true,
            Fit::AsBefore => was_fitted,
            Fit::WithSize => was_fitted && before != size(editor.camera()),
            Fit::No => false,
        };
        if fits {
            editor.fit();
        }
        drop(editor);
        self.tell(Effects {
            repaint: true,
            noticed: true,
            ..Effects::default()
        });
    }
    /// Where a board point is on the screen.
    pub(crate) fn on_screen(&self, at: kurbo::Point) -> ScreenPoint {
        self.see(|editor| editor.camera().to_screen(at))
    }
}
