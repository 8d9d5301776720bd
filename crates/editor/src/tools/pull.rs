//! Pull a run: from a terminal, by drag, by two clicks or by keys. Dropped on a terminal it connects, on a run it is
//! spliced in, on empty paper the parts that make sense there are offered.

use super::Tool;
use crate::editor::Editor;
use crate::effects::Open;
use crate::input::{Input, Key, PointerKind};
use crate::roles;
use crate::selection::{Selection, Thing};
use crate::tools::pick::board_point;
use drawing::Hit;
use kurbo::Point;
use model::edits::{Connected, EditError, connect, insert_into_run};
use model::{BoardPoint, Change, End, Fact, PartKind, RunId, TerminalRef};
use words::{Sizes, say};

/// States of pulling.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Pull {
    /// The tool is in hand, no terminal taken yet.
    #[default]
    Waiting,
    /// A run hangs from a terminal.
    Drawing {
        /// Where it begins.
        from: TerminalRef,
        /// Where its other end is now.
        now: Point,
        /// The terminal it would land on.
        over: Option<TerminalRef>,
        /// Whether the button is held: then letting go drops it.
        held: bool,
        /// Whether the keyboard moves it.
        keys: bool,
    },
}

impl Pull {
    /// The state's address.
    #[must_use]
    pub fn address(&self) -> &'static str {
        match self {
            Self::Waiting => "pull/waiting",
            Self::Drawing { keys: true, .. } => "pull/stepping",
            Self::Drawing { .. } => "pull/drawing",
        }
    }
}

impl Editor {
    pub(crate) fn pull_input(&mut self, pull: Pull, input: Input) {
        match (pull, input) {
            (Pull::Waiting, Input::Down(pointer, _)) => {
                self.out.taken = true;
                let now = self.camera.to_board(pointer.at);
                if let Some(from) = self.landing(now, pointer.kind, None) {
                    self.tool = Tool::Pull(Pull::Drawing {
                        from,
                        now,
                        over: None,
                        held: true,
                        keys: false,
                    });
                    self.out.repaint = true;
                }
            }
            (Pull::Waiting, Input::Move(pointer)) => {
                let over = self.thing_at(self.camera.to_board(pointer.at), pointer.kind);
                self.hover(over);
            }
            (Pull::Drawing { from, held, .. }, Input::Move(pointer)) => {
                let now = self.camera.to_board(pointer.at);
                let over = self.landing(now, pointer.kind, Some(&from));
                self.tool = Tool::Pull(Pull::Drawing {
                    from,
                    now,
                    over,
                    held,
                    keys: false,
                });
                self.out.repaint = true;
            }
            (Pull::Drawing { from, held: true, .. }, Input::Up(pointer)) => {
                let now = self.camera.to_board(pointer.at);
                let near_start = self.stud(&from).is_some_and(|stud| {
                    self.camera.to_screen(stud).distance(pointer.at)
                        <= 2.0 * self.options.slop_px(pointer.kind)
                });
                if near_start {
                    // Pressed and let go on the spot: the run hangs on until the next click.
                    self.tool = Tool::Pull(Pull::Drawing {
                        from,
                        now,
                        over: None,
                        held: false,
                        keys: false,
                    });
                } else {
                    self.drop_run(from, now, pointer.kind);
                }
                self.out.repaint = true;
            }
            (
                Pull::Drawing {
                    from, held: false, ..
                },
                Input::Up(pointer),
            ) => {
                self.drop_run(from, self.camera.to_board(pointer.at), pointer.kind);
            }
            (Pull::Drawing { .. }, Input::Down(..)) => self.out.taken = true,
            (Pull::Drawing { from, over, .. }, Input::Key(Key::Enter, _)) => {
                self.out.taken = true;
                if let Some(over) = over {
                    self.connect_run(from, over);
                }
            }
            (
                Pull::Drawing { from, over, .. },
                Input::Key(key @ (Key::Left | Key::Right | Key::Up | Key::Down), _),
            ) => {
                self.out.taken = true;
                self.step_pull(from, over, key);
            }
            _ => {}
        }
    }

    /// Starts a run by keys from a terminal.
    pub(crate) fn pull_by_keys(&mut self, from: TerminalRef) {
        let Some(now) = self.stud(&from) else { return };
        self.tell(say!("pull-from", terminal = self.sheet().written(&from)));
        self.tool = Tool::Pull(Pull::Drawing {
            from,
            now,
            over: None,
            held: false,
            keys: true,
        });
        self.out.open = Some(Open::Nothing);
        self.out.repaint = true;
        self.out.noticed = true;
    }

    fn step_pull(&mut self, from: TerminalRef, over: Option<TerminalRef>, key: Key) {
        let here = over.clone().unwrap_or_else(|| from.clone());
        let next = self.terminal_towards(&here, key, |role| {
            // What belongs together comes first: a return goes to a return before it goes through a fuse.
            match roles::liking(self.sheet().role(&from)?, role) {
                0 => None,
                1 => Some(1.0),
                2 => Some(0.7),
                _ => Some(0.35),
            }
        });
        let next = next.filter(|next| *next != from).or(over);
        self.aim_pull(from, next);
    }

    /// A run in hand by keys points to a terminal, where Enter connects it.
    pub(crate) fn aim_pull(&mut self, from: TerminalRef, next: Option<TerminalRef>) {
        let now = next
            .as_ref()
            .and_then(|at| self.stud(at))
            .or_else(|| self.stud(&from))
            .unwrap_or_default();
        if let Some(next) = &next {
            self.tell(say!(
                "towards",
                thing = self.spoken(&Thing::Terminal(next.clone()))
            ));
            self.camera
                .reveal(kurbo::Rect::from_center_size(now, (160.0, 120.0)));
        }
        self.tool = Tool::Pull(Pull::Drawing {
            from,
            now,
            over: next,
            held: false,
            keys: true,
        });
        self.out.repaint = true;
        self.out.noticed = true;
    }

    /// The terminal that a run would land on here: the stud under the pointer, or, over a part, the free one that suits
    /// it best.
    pub(crate) fn landing(
        &self,
        at: Point,
        kind: PointerKind,
        from: Option<&TerminalRef>,
    ) -> Option<TerminalRef> {
        let slop = self.options.reach_px(kind) / self.camera.zoom;
        match self.layout.hit(at, slop)? {
            Hit::Stud(stud) => (Some(&stud) != from).then_some(stud),
            Hit::Part(part) => {
                let start = self.sheet().role(from?)?;
                if from?.part == part {
                    return None;
                }
                let taken: Vec<&TerminalRef> = self
                    .sheet()
                    .runs_of(part)
                    .flat_map(|(_, run)| run.ends())
                    .filter_map(End::terminal)
                    .collect();
                let mut best: Option<(u8, TerminalRef)> = None;
                for stud in &self.layout.part(part)?.studs {
                    let to = TerminalRef {
                        part,
                        terminal: stud.name.clone(),
                    };
                    let liking = roles::liking(start, stud.role);
                    let free = !taken.contains(&&to);
                    let worth = if free { liking * 2 } else { liking };
                    if liking > 0 && best.as_ref().is_none_or(|(most, _)| worth > *most) {
                        best = Some((worth, to));
                    }
                }
                best.map(|(_, to)| to)
            }
            Hit::LooseEnd(..) | Hit::Bend(..) | Hit::Run(..) => None,
        }
    }

    fn drop_run(&mut self, from: TerminalRef, at: Point, kind: PointerKind) {
        if let Some(to) = self.landing(at, kind, Some(&from)) {
            self.connect_run(from, to);
            return;
        }
        self.tool = Tool::default();
        self.out.repaint = true;
        self.out.noticed = true;
        match self
            .layout
            .hit(at, self.options.reach_px(kind) / self.camera.zoom)
        {
            Some(Hit::Run(run, _, on)) if !self.ends_on(run, &from) => self.splice_in(from, run, on),
            // Nothing fits on that part: the run is given up.
            Some(_) => {}
            None => {
                let at = snapped(at, self.options.grid_units);
                self.out.open = Some(Open::Offer { from, at });
            }
        }
    }

    fn ends_on(&self, run: RunId, at: &TerminalRef) -> bool {
        self.sheet()
            .runs
            .get(&run)
            .is_some_and(|run| run.ends().iter().any(|end| end.terminal() == Some(at)))
    }

    fn connect_run(&mut self, from: TerminalRef, to: TerminalRef) {
        self.tool = Tool::default();
        self.out.noticed = true;
        self.out.repaint = true;
        match self.connected(End::On(from), End::On(to.clone())) {
            Ok(made) => {
                let run = Thing::Run(made.run);
                self.apply(made.edit);
                self.selection = Selection::of(&run);
                self.focus = Some(Thing::Terminal(to));
                self.out.open = Some(Open::Nothing);
                self.out.say = Some(self.spoken(&run));
            }
            Err(error) => self.tell(error.0),
        }
    }

    /// Connects two ends; what size is assumed for the wire is one of the series that the reader reads.
    fn connected(&self, from: End, to: End) -> Result<Connected, EditError> {
        let mut made = connect(&self.job, self.on, from, to)?;
        if self.words.reader().sizes == Sizes::Awg {
            for change in &mut made.edit.changes {
                if let Change::Run { to: Some(run), .. } = change
                    && let Fact::Assumed(size) = &mut run.wire.size
                {
                    *size = size.as_gauge();
                }
            }
        }
        Ok(made)
    }

    /// Puts a splice into a run and joins the pulled run to it: one step.
    fn splice_in(&mut self, from: TerminalRef, run: RunId, at: Point) {
        let Some(splice) = PartKind::from_word("splice") else {
            return;
        };
        let at = snapped(at, self.options.grid_units);
        match insert_into_run(&self.job, self.on, run, splice, at, None) {
            Ok(inserted) => {
                self.begin_gesture(say!("edit-splice-in"));
                let part = inserted.part;
                self.extend_gesture(inserted.edit, &[part].into());
                let free = TerminalRef::new(part, "3");
                if let Ok(made) = self.connected(End::On(from), End::On(free)) {
                    self.extend_gesture(made.edit, &[part].into());
                }
                self.step_aside(part);
                self.commit_gesture();
                self.pick_only(&Thing::Part(part));
            }
            Err(error) => self.tell(error.0),
        }
    }

    /// Puts a part where a run was dropped on empty paper, and connects the run to it: one step.
    pub fn accept_offer(&mut self, from: &TerminalRef, at: BoardPoint, word: &str) -> crate::Effects {
        if self.refuses() {
            return self.take_effects();
        }
        let Some((kind, start)) = PartKind::from_word(word).zip(self.sheet().role(from)) else {
            return self.take_effects();
        };
        let terminals = model::terminals::terminals(&kind);
        // Of terminals that suit it alike, the first.
        let best = terminals
            .iter()
            .rev()
            .max_by_key(|t| roles::liking(start, t.role));
        let name = say!("edit-pull-to-new", kind = kind.said_within());
        let terminal = best
            .filter(|t| roles::liking(start, t.role) > 0)
            .map(|t| t.name.clone());
        self.begin_gesture(name);
        let (edit, part) = model::edits::add_part(&self.job, self.on, kind, Some(at));
        self.extend_gesture(edit, &[part].into());
        if let Some(terminal) = terminal {
            let to = End::On(TerminalRef { part, terminal });
            if let Ok(made) = self.connected(End::On(from.clone()), to) {
                self.extend_gesture(made.edit, &[part].into());
            }
        }
        self.step_aside(part);
        self.commit_gesture();
        self.pick_only(&Thing::Part(part));
        self.take_effects()
    }
}

/// A point on the grid.
pub(crate) fn snapped(at: Point, grid: f64) -> BoardPoint {
    board_point(Point::new(
        (at.x / grid).round() * grid,
        (at.y / grid).round() * grid,
    ))
}
