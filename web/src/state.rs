//! The app's state: one reducer. Its actions are what the user does; what they do to the job is the editor's business.

use crate::browser;
use crate::desk::Desk;
use crate::storage::Keeping;
use drawing::Palette;
use editor::{Action, Effects, Open};
use std::rc::Rc;
use words::Words;
use yew::prelude::*;

/// The reducer's handle, shared as a context.
pub(crate) type Store = UseReducerHandle<State>;

/// What is open over the drawing; one thing at a time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Panel {
    /// Nothing.
    #[default]
    None,
    /// The shelf of parts.
    Shelf,
    /// The Ask box.
    Ask,
    /// The jobs kept here.
    Jobs,
    /// Conditions and limits.
    Limits,
    /// What others may see, and how they get it.
    Share,
    /// Readings of the meter that were kept.
    Readings,
    /// Mending all that needs no choice.
    Mending,
    /// Breaking something to see what follows.
    Breaking,
    /// Finding what is broken.
    FindFault,
    /// The same, with the readings that were kept.
    FindKept,
    /// The shortest proof.
    Proof,
    /// Recording what is found.
    Record,
    /// The form of the body, and where each part is in it.
    Body,
    /// Lists, checklists and the handover.
    Papers,
    /// Complaints, condition record, quote, and what becomes of things.
    Thread,
    /// The same, opened on what becomes of things.
    Becomes,
    /// Sizes for all runs and fuses.
    Sizing,
    /// The system as an outline.
    Outline,
    /// A whole plan from one line.
    Start,
    /// The list of keys.
    Keys,
}

/// Which paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Paper {
    /// As the system has it.
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Paper {
    pub(crate) fn remembered() -> Self {
        match browser::remembered("loomwright-paper").as_deref() {
            Some("light") => Self::Light,
            Some("dark") => Self::Dark,
            _ => Self::System,
        }
    }
    pub(crate) fn is_dark(self) -> bool {
        match self {
            Self::System => browser::prefers_dark(),
            Self::Light => false,
            Self::Dark => true,
        }
    }
    pub(crate) fn remember(self) {
        let word = match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
        };
        browser::remember("loomwright-paper", word);
    }
    pub(crate) fn palette(self) -> Palette {
        if self.is_dark() {
            Palette::dark()
        } else {
            Palette::light()
        }
    }
}

/// The state of the app.
#[derive(Clone)]
pub(crate) struct State {
    /// The editor and its canvas.
    pub(crate) desk: Rc<Desk>,
    /// Counts up whenever the editor shows something else; components that read the editor compare it.
    pub(crate) revision: u32,
    /// Counts the edits, for saving.
    pub(crate) edits: u32,
    /// What is open over the drawing.
    pub(crate) panel: Panel,
    /// What is open beside a thing.
    pub(crate) beside: Open,
    /// Which paper.
    pub(crate) paper: Paper,
    /// The last words to the user.
    pub(crate) said: Rc<str>,
    /// Counts what was said, so that the same words twice are read twice.
    pub(crate) said_count: u32,
    /// How the job is kept.
    pub(crate) keeping: Keeping,
    /// An action that an effect of the app is to do next, with a count.
    pub(crate) outside: Option<(Action, u32)>,
    /// The finding whose note is hovered or focused.
    pub(crate) pointed: Option<usize>,
    /// Whether a newer version of the program is ready.
    pub(crate) newer: bool,
    /// Whether the body plan is on the table.
    pub(crate) on_body: bool,
    /// Whether all of the program is there. Until then the table shows the drawing alone.
    pub(crate) is_whole: bool,
}

impl PartialEq for State {
    fn eq(&self, other: &Self) -> bool {
        self.revision == other.revision
            && self.edits == other.edits
            && self.panel == other.panel
            && self.beside == other.beside
            && self.paper == other.paper
            && self.said_count == other.said_count
            && self.keeping == other.keeping
            && self.outside == other.outside
            && self.pointed == other.pointed
            && self.newer == other.newer
            && self.on_body == other.on_body
            && self.is_whole == other.is_whole
    }
}

/// What can happen to the state.
pub(crate) enum Act {
    /// Something came of what the editor did.
    Came(Effects),
    /// Opens a panel, or closes it when it is open.
    Toggle(Panel),
    /// Closes panel and slip.
    Close,
    /// Closes the panel alone.
    ShutPanel,
    /// Says something.
    Say(String),
    /// How the job is kept changed.
    Kept(Keeping),
    /// The system's light changed, or the user chose a paper.
    Paper(Paper),
    /// The pointer is over a note, or left it.
    Point(Option<usize>),
    /// A newer version of the program is ready.
    Newer,
    /// What was lacking of the program has come.
    Whole,
}

/// Closes the open panel on Escape, wherever in it the focus is, unless the thing in focus needed that key for itself.
pub(crate) fn escape_closes(store: &Store) -> Callback<KeyboardEvent> {
    let store = store.dispatcher();
    Callback::from(move |event: KeyboardEvent| {
        if event.key() == "Escape" && !event.default_prevented() {
            event.prevent_default();
            store.dispatch(Act::ShutPanel);
            browser::focus_board();
        }
    })
}

impl State {
    pub(crate) fn new(desk: Rc<Desk>) -> Self {
        Self {
            desk,
            revision: 0,
            edits: 0,
            panel: Panel::None,
            beside: Open::Nothing,
            paper: Paper::remembered(),
            said: Rc::from(""),
            said_count: 0,
            keeping: Keeping::default(),
            outside: None,
            pointed: None,
            newer: false,
            on_body: false,
            is_whole: browser::all_is_there(),
        }
    }
    /// The reader's words, for pieces of the page that are painted with the whole of it. What is painted by itself asks
    /// [`crate::reader::use_words`].
    pub(crate) fn words(&self) -> Words {
        self.desk.words()
    }
    fn say(&mut self, words: &str) {
        self.said = Rc::from(words);
        self.said_count = self.said_count.wrapping_add(1);
    }
    fn toggle(&mut self, panel: Panel) {
        self.panel = if self.panel == panel { Panel::None } else { panel };
    }
    fn came(&mut self, effects: Effects) {
        self.revision = self.revision.wrapping_add(1);
        self.edits = self.edits.wrapping_add(u32::from(effects.edited));
        // What was done may have brought it, and what is opened by it must be there for the next key.
        self.is_whole |= browser::all_is_there();
        let (on_body, drawn) = self
            .desk
            .see(|editor| (editor.is_on_body(), editor.plan_view().is_some()));
        if on_body && !self.on_body && !drawn {
            // The plan waits for what stands there.
            self.panel = Panel::Body;
        } else if !on_body && self.panel == Panel::Body {
            self.panel = Panel::None;
        }
        self.on_body = on_body;
        if let Some(open) = effects.open {
            self.beside = open;
        }
        match effects.say {
            Some(words) => self.say(&words),
            // What was said was of what lay here before.
            None if effects.edited => self.say(""),
            None => {}
        }
        match effects.outside {
            Some(Action::OpenShelf) => self.toggle(Panel::Shelf),
            Some(Action::Ask) => self.toggle(Panel::Ask),
            Some(Action::Jobs) => self.toggle(Panel::Jobs),
            Some(Action::Readings) => self.toggle(Panel::Readings),
            Some(Action::MendAll) => self.toggle(Panel::Mending),
            Some(Action::BreakIt) => self.toggle(Panel::Breaking),
            Some(Action::FindFault) => self.toggle(Panel::FindFault),
            Some(Action::Prove) => self.toggle(Panel::Proof),
            Some(Action::Record) => self.toggle(Panel::Record),
            Some(Action::SizeIt) => self.toggle(Panel::Sizing),
            Some(Action::Papers) => self.toggle(Panel::Papers),
            Some(Action::Thread) => self.toggle(Panel::Thread),
            Some(Action::Share) => self.toggle(Panel::Share),
            Some(Action::Limits) => self.toggle(Panel::Limits),
            Some(Action::Outline) => self.toggle(Panel::Outline),
            Some(Action::StartSystem) => self.toggle(Panel::Start),
            Some(Action::Keys) => self.toggle(Panel::Keys),
            Some(Action::Paper) => {
                self.paper = if self.paper.is_dark() {
                    Paper::Light
                } else {
                    Paper::Dark
                }
            }
            Some(other) => self.outside = Some((other, self.revision)),
            None => {}
        }
    }
}

impl Reducible for State {
    type Action = Act;
    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        let mut next = (*self).clone();
        match act {
            Act::Came(effects) => next.came(effects),
            Act::Toggle(panel) => next.toggle(panel),
            Act::Close => {
                next.panel = Panel::None;
                next.beside = Open::Nothing;
            }
            Act::ShutPanel => next.panel = Panel::None,
            Act::Say(words) => next.say(&words),
            Act::Kept(keeping) => next.keeping = keeping,
            Act::Paper(paper) => next.paper = paper,
            Act::Newer => next.newer = true,
            Act::Whole => next.is_whole = true,
            Act::Point(place) => {
                if next.pointed == place {
                    return self;
                }
                next.pointed = place;
            }
        }
        next.into()
    }
}
