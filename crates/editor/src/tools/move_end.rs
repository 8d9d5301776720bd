//! Put one end of a run elsewhere: a loose end is taken where it lies, one on a terminal a little way along its run, so
//! that the terminal itself stays free to pull from. Dropped on a terminal it lands there, on a run it is spliced in, on
//! empty paper it lies loose.

use super::Tool;
use super::pull::snapped;
use crate::editor::Editor;
use crate::effects::Open;
use crate::input::{Input, Key, PointerKind};
use crate::selection::{Selection, Thing};
use drawing::Hit;
use kurbo::Point;
use model::edits::{RunSide, insert_into_run, set_end};
use model::{BoardPoint, End, PartKind, RunId, TerminalRef};
use words::{Saying, say};

/// How far beyond a stud's reach the handle of a run's end stands, in pixels.
const BEYOND_PX: f64 = 10.0;

/// One end of a run in hand. The job is not touched until it is dropped.
#[derive(Clone, Debug, PartialEq)]
pub struct MoveEnd {
    /// The run.
    pub run: RunId,
    /// Which of its ends.
    pub side: RunSide,
    /// Where it is now.
    pub now: Point,
    /// The terminal it would land on.
    pub over: Option<TerminalRef>,
    /// Whether the keyboard moves it.
    pub keys: bool,
}

impl MoveEnd {
    /// The state's address.
    #[must_use]
    pub fn address(&self) -> &'static str {
        if self.keys { "end/stepping" } else { "end/moving" }
    }
    /// What to do with it.
    #[must_use]
    pub fn hint(&self) -> Saying {
        if self.keys {
            say!("hint-end-keys")
        } else {
            say!("hint-end")
        }
    }
}

fn other(side: RunSide) -> RunSide {
    match side {
        RunSide::From => RunSide::To,
        RunSide::To => RunSide::From,
    }
}

impl Editor {
    /// One of the ends of a run of the sheet on the table.
    pub(crate) fn end_of(&self, run: RunId, side: RunSide) -> Option<&End> {
        let run = self.sheet().runs.get(&run)?;
        Some(match side {
            RunSide::From => &run.from,
            RunSide::To => &run.to,
        })
    }
    /// Where an end of a run is on the board.
    pub(crate) fn end_point(&self, run: RunId, side: RunSide) -> Option<Point> {
        let way = &self.layout.run(run)?.points;
        match side {
            RunSide::From => way.first().copied(),
            RunSide::To => way.last().copied(),
        }
    }
    /// How far along its run the handle of an end stands, in board units: off its stud's reach, yet never past a third of
    /// the run.
    fn handle_way(&self, run: RunId, side: RunSide) -> Option<f64> {
        if matches!(self.end_of(run, side)?, End::Loose(_)) {
            return Some(0.0);
        }
        let way = &self.layout.run(run)?.points;
        let length: f64 = way
            .iter()
            .zip(way.iter().skip(1))
            .map(|(a, b)| a.distance(*b))
            .sum();
        let wish = (self.options.reach_px(self.pointing) + BEYOND_PX) / self.camera.zoom;
        Some(wish.min(length / 3.0))
    }
    /// Where the handle of an end stands.
    pub(crate) fn end_handle(&self, run: RunId, side: RunSide) -> Option<Point> {
        let mut left = self.handle_way(run, side)?;
        let mut way = self.layout.run(run)?.points.clone();
        if side == RunSide::To {
            way.reverse();
        }
        let mut way = way.into_iter();
        let mut at = way.next()?;
        for next in way {
            let piece = at.distance(next);
            if piece > left {
                return Some(at.lerp(next, left / piece));
            }
            left -= piece;
            at = next;
        }
        Some(at)
    }

    /// The end of a run that a pointer would take hold of here.
    pub(crate) fn end_at(&self, at: Point, kind: PointerKind) -> Option<(RunId, RunSide)> {
        let reach = self.options.reach_px(kind) / self.camera.zoom;
        let near = |run: RunId| {
            [RunSide::From, RunSide::To].into_iter().find_map(|side| {
                let near = self.end_handle(run, side)?.distance(at) <= reach;
                near.then_some((run, side))
            })
        };
        // Where several leave a stud together, the picked one is meant, whose handles are seen.
        let picked = || match self.selection.single() {
            Some(Thing::Run(run)) => near(run),
            _ => None,
        };
        match self.hit_at(at, kind)? {
            Hit::LooseEnd(run, which) => Some((run, if which == 0 { RunSide::From } else { RunSide::To })),
            Hit::Run(run, ..) => picked().or_else(|| near(run)),
            _ => None,
        }
    }

    pub(crate) fn begin_move_end(&mut self, run: RunId, side: RunSide, now: Point) {
        self.pick_only(&Thing::Run(run));
        self.tool = Tool::MoveEnd(MoveEnd {
            run,
            side,
            now,
            over: None,
            keys: false,
        });
        self.out.open = Some(Open::Nothing);
    }

    /// Takes an end of the picked run in hand, for the keys: the one that the keyboard stands on, else its second one;
    /// once more, the other.
    pub(crate) fn move_end_by_keys(&mut self) {
        let found = match (&self.tool, &self.focus) {
            (Tool::MoveEnd(end), _) => Some((end.run, other(end.side))),
            (_, Some(Thing::Terminal(at))) => self.sheet().runs_of(at.part).find_map(|(id, run)| {
                if run.to.terminal() == Some(at) {
                    Some((id, RunSide::To))
                } else if run.from.terminal() == Some(at) {
                    Some((id, RunSide::From))
                } else {
                    None
                }
            }),
            _ => match self.selection.single() {
                Some(Thing::Run(run)) => Some((run, RunSide::To)),
                _ => None,
            },
        };
        let Some((run, side)) = found else {
            self.tell(say!("end-pick-first"));
            return;
        };
        let Some(now) = self.end_point(run, side) else {
            return;
        };
        self.interrupt();
        self.begin_move_end(run, side, now);
        if let Tool::MoveEnd(end) = &mut self.tool {
            end.keys = true;
            end.over = None;
        }
        let at = self.end_of(run, side).and_then(End::terminal);
        let at = at.map_or(say!("loose-end"), |at| self.sheet().written(at).into());
        self.tell(say!(
            "end-in-hand",
            run = Thing::Run(run).written(self.sheet()),
            at = at
        ));
    }

    pub(crate) fn move_end_input(&mut self, mut end: MoveEnd, input: Input) {
        match input {
            Input::Move(pointer) => {
                end.now = self.camera.to_board(pointer.at);
                end.keys = false;
                let far = self.far_terminal(&end);
                end.over = self.landing(end.now, pointer.kind, far.as_ref());
                self.tool = Tool::MoveEnd(end);
                self.out.repaint = true;
            }
            Input::Up(pointer) => {
                end.now = self.camera.to_board(pointer.at);
                let far = self.far_terminal(&end);
                end.over = self.landing(end.now, pointer.kind, far.as_ref());
                self.drop_end(end, pointer.kind);
            }
            Input::Down(..) => self.out.taken = true,
            Input::Key(key @ (Key::Left | Key::Right | Key::Up | Key::Down), _) => {
                self.out.taken = true;
                self.step_end(end, key);
            }
            Input::Key(Key::Enter, _) => {
                self.out.taken = true;
                match end.over.clone() {
                    Some(over) => self.land_end(&end, End::On(over)),
                    None => self.abandon(),
                }
            }
            Input::Key(Key::Delete, _) => {
                self.out.taken = true;
                let at = self.loose_place(&end);
                self.land_end(&end, End::Loose(at));
            }
            _ => {}
        }
    }

    fn far_terminal(&self, end: &MoveEnd) -> Option<TerminalRef> {
        self.end_of(end.run, other(end.side))?.terminal().cloned()
    }

    /// Where an end comes to lie that is let loose by a key: straight off its stud.
    fn loose_place(&self, end: &MoveEnd) -> BoardPoint {
        let stud = self.end_of(end.run, end.side).and_then(End::terminal);
        let stud = stud.and_then(|at| self.layout.stud_of(at));
        let at = stud.map_or(end.now, |stud| {
            stud.at + stud.out * (4.0 * self.options.grid_units)
        });
        snapped(at, self.options.grid_units)
    }

    fn step_end(&mut self, mut end: MoveEnd, key: Key) {
        let far = self.far_terminal(&end);
        let role = far.as_ref().and_then(|at| self.sheet().role(at));
        let here = end
            .over
            .clone()
            .or_else(|| self.end_of(end.run, end.side)?.terminal().cloned())
            .or_else(|| far.clone());
        let next = here.and_then(|here| {
            self.terminal_towards(&here, key, |to| match role {
                None => Some(1.0),
                Some(role) => match crate::roles::liking(role, to) {
                    0 => None,
                    1 => Some(1.0),
                    2 => Some(0.7),
                    _ => Some(0.35),
                },
            })
        });
        if let Some(next) = next.filter(|next| Some(next) != far.as_ref()) {
            self.aim_end(end, next);
            return;
        }
        end.keys = true;
        self.tool = Tool::MoveEnd(end);
        self.out.repaint = true;
        self.out.noticed = true;
    }

    /// An end in hand by keys points to a terminal, where Enter lands it.
    pub(crate) fn aim_end(&mut self, mut end: MoveEnd, next: TerminalRef) {
        if self.far_terminal(&end).as_ref() == Some(&next) {
            self.tell(say!(
                "end-other-there",
                run = Thing::Run(end.run).written(self.sheet()),
                terminal = self.sheet().written(&next)
            ));
        } else {
            self.tell(say!(
                "towards",
                thing = self.spoken(&Thing::Terminal(next.clone()))
            ));
            end.now = self.stud(&next).unwrap_or(end.now);
            self.camera
                .reveal(kurbo::Rect::from_center_size(end.now, (160.0, 120.0)));
            end.over = Some(next);
        }
        end.keys = true;
        self.tool = Tool::MoveEnd(end);
        self.out.repaint = true;
        self.out.noticed = true;
    }

    fn drop_end(&mut self, end: MoveEnd, kind: PointerKind) {
        if let Some(over) = end.over.clone() {
            self.land_end(&end, End::On(over));
            return;
        }
        let far = self.far_terminal(&end);
        let reach = self.options.reach_px(kind) / self.camera.zoom;
        match self.layout.hit(end.now, reach) {
            Some(Hit::Run(run, _, on)) if run != end.run && !self.meets(run, far.as_ref()) => {
                self.splice_end(&end, run, on);
            }
            Some(Hit::Stud(_) | Hit::Part(_)) => {
                self.abandon();
                self.tell(say!("end-nothing-there"));
            }
            _ => {
                let at = snapped(end.now, self.options.grid_units);
                self.land_end(&end, End::Loose(at));
            }
        }
    }

    fn meets(&self, run: RunId, at: Option<&TerminalRef>) -> bool {
        let run = self.sheet().runs.get(&run);
        at.is_some() && run.is_some_and(|run| run.ends().iter().any(|end| end.terminal() == at))
    }

    /// Lands the end: one step, or none when it is where it was.
    fn land_end(&mut self, end: &MoveEnd, to: End) {
        self.tool = Tool::default();
        self.out.noticed = true;
        self.out.repaint = true;
        if self.end_of(end.run, end.side) == Some(&to) {
            self.out.say = Some(String::new());
            return;
        }
        let name = self.end_name(end.run);
        match set_end(&self.job, self.on, end.run, end.side, to) {
            Ok(edit) => {
                self.apply(edit.rename(name));
                let run = Thing::Run(end.run);
                self.selection = Selection::of(&run);
                self.focus = Some(run.clone());
                self.out.say = Some(self.spoken(&run));
            }
            Err(error) => self.tell(error.0),
        }
    }

    fn end_name(&self, run: RunId) -> Saying {
        say!("edit-move-run-end", run = Thing::Run(run).written(self.sheet()))
    }

    /// Puts a splice into another run and lands the end on it: one step.
    fn splice_end(&mut self, end: &MoveEnd, into: RunId, at: Point) {
        self.tool = Tool::default();
        let Some(splice) = PartKind::from_word("splice") else {
            return;
        };
        let at = snapped(at, self.options.grid_units);
        match insert_into_run(&self.job, self.on, into, splice, at, None) {
            Ok(inserted) => {
                self.begin_gesture(self.end_name(end.run));
                let part = inserted.part;
                self.extend_gesture(inserted.edit, &[part].into());
                let free = End::On(TerminalRef::new(part, "3"));
                if let Ok(edit) = set_end(&self.job, self.on, end.run, end.side, free) {
                    self.extend_gesture(edit, &[part].into());
                }
                self.commit_gesture();
                self.pick_only(&Thing::Run(end.run));
            }
            Err(error) => self.tell(error.0),
        }
    }

    /// The board point from which the run in hand comes, and the point where its end is now.
    pub(crate) fn end_line(&self, end: &MoveEnd) -> Option<(Point, Point)> {
        let from = self.end_point(end.run, other(end.side))?;
        let to = end
            .over
            .as_ref()
            .and_then(|over| self.stud(over))
            .unwrap_or(end.now);
        Some((from, to))
    }
    /// What the terminals must suit where an end is to land: the role at the far end, where that is on a terminal.
    pub(crate) fn end_role(&self, end: &MoveEnd) -> Option<model::Role> {
        self.sheet().role(&self.far_terminal(end)?)
    }
}
