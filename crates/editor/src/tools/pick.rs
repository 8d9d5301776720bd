//! Pick and move: click, fence, carry parts, draw a piece of a run aside. Pulling from a terminal hands over to
//! [`super::pull`], taking hold of a run's end to [`super::move_end`]; what bends are made of is in `bend`.

use super::bend::{corners, nearest_piece};
use super::{Pull, Tool};
use crate::camera::ScreenPoint;
use crate::editor::Editor;
use crate::effects::Open;
use crate::input::{Input, Mods, PointerKind};
use crate::selection::{Selection, Thing};
use kurbo::{Point, Rect, Vec2};
use model::edits::move_parts;
use model::{BoardPoint, PartId, RunId};
use ordered::OrderedSet;
use words::say;

/// States of picking.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Pick {
    /// Nothing is pressed.
    #[default]
    Idle,
    /// Pressed on something or nothing, not yet moved past the slop.
    Pressing {
        /// What is under the pointer.
        on: Option<Thing>,
        /// Where it went down.
        at: ScreenPoint,
        /// With what.
        kind: PointerKind,
        /// Keys held.
        mods: Mods,
    },
    /// Parts follow the pointer.
    Carrying {
        /// The board point where the pointer went down.
        start: Point,
        /// The part under the pointer.
        grabbed: PartId,
        /// Where that part's middle was.
        from: BoardPoint,
        /// All that is carried.
        parts: OrderedSet<PartId>,
        /// How far they are now.
        by: (i32, i32),
        /// Where it lines up with others: ends of thin lines.
        guides: Vec<(Point, Point)>,
    },
    /// A fence is drawn around things.
    Fencing {
        /// Its first corner.
        start: Point,
        /// Its corner at the pointer.
        now: Point,
        /// What was picked before, which Shift keeps.
        before: Selection,
    },
    /// A piece of a run follows the pointer.
    Bending {
        /// The run.
        run: RunId,
        /// Its way when the pointer went down, ends included.
        way: Vec<Point>,
        /// Which piece: from this corner to the next.
        piece: usize,
        /// Where the pointer went down.
        start: Point,
    },
    /// A bend of a run follows the pointer.
    Cornering {
        /// The run.
        run: RunId,
        /// Its bends when the pointer went down.
        before: Vec<BoardPoint>,
        /// Which of them.
        place: usize,
        /// Where the pointer went down.
        start: Point,
    },
}

impl Pick {
    /// The state's address.
    #[must_use]
    pub fn address(&self) -> &'static str {
        match self {
            Self::Idle => "pick/idle",
            Self::Pressing { .. } => "pick/pressing",
            Self::Carrying { .. } => "pick/carrying",
            Self::Fencing { .. } => "pick/fencing",
            Self::Bending { .. } => "pick/bending",
            Self::Cornering { .. } => "pick/cornering",
        }
    }
}

impl Editor {
    pub(crate) fn pick_input(&mut self, pick: Pick, input: Input) {
        let next = match (pick, input) {
            (Pick::Idle, Input::Down(pointer, _)) => {
                self.out.taken = true;
                let board = self.camera.to_board(pointer.at);
                let on = self.thing_at(board, pointer.kind);
                Pick::Pressing {
                    on,
                    at: pointer.at,
                    kind: pointer.kind,
                    mods: pointer.mods,
                }
            }
            (Pick::Idle, Input::Move(pointer)) => {
                let over = self.thing_at(self.camera.to_board(pointer.at), pointer.kind);
                self.hover(over);
                Pick::Idle
            }
            (Pick::Pressing { on, at, kind, mods }, Input::Move(pointer)) => {
                if at.distance(pointer.at) <= self.options.slop_px(kind) {
                    Pick::Pressing { on, at, kind, mods }
                } else if self.drag_shifts(pointer.id, at) {
                    self.paper_input(input);
                    Pick::Idle
                } else {
                    self.begin_drag(on, at, kind, mods);
                    // The first step of the drag is this very move.
                    let tool = self.tool.clone();
                    return match tool {
                        Tool::Pick(pick) => self.pick_input(pick, input),
                        Tool::Pull(pull) => self.pull_input(pull, input),
                        Tool::MoveEnd(end) => self.move_end_input(end, input),
                        _ => (),
                    };
                }
            }
            (Pick::Pressing { at, kind, mods, .. }, Input::Up(_))
                if mods == Mods::default()
                    && let Some(finding) = self.mark_under(at, kind) =>
            {
                self.show_finding(finding);
                Pick::Idle
            }
            (Pick::Pressing { on, at, kind, mods }, Input::Up(_)) => {
                let beneath = self
                    .beneath_at(self.camera.to_board(at), kind)
                    .filter(|_| on.is_none() && !mods.shift);
                self.click(on, mods);
                self.light_beneath(beneath);
                if let Some((run, place)) = self.bend_at(self.camera.to_board(at), kind)
                    && self.selection.single() == Some(Thing::Run(run))
                {
                    self.take_bend(run, place);
                }
                Pick::Idle
            }
            (Pick::Pressing { on, .. }, Input::Held) => {
                if let Some(thing) = on {
                    self.pick_only(&thing);
                    self.out.open = Some(Open::Details(thing));
                }
                Pick::Idle
            }
            (
                Pick::Carrying {
                    start,
                    grabbed,
                    from,
                    parts,
                    ..
                },
                Input::Move(pointer),
            ) => {
                let board = self.camera.to_board(pointer.at);
                let (by, guides) = self.carried_by(board - start, grabbed, from, &parts, pointer.mods.alt);
                self.carry(&parts, by);
                Pick::Carrying {
                    start,
                    grabbed,
                    from,
                    parts,
                    by,
                    guides,
                }
            }
            (Pick::Carrying { parts, .. }, Input::Up(pointer)) => {
                // Several keep their places to each other, and who holds Alt wants it just there.
                if let (1, Some(part), false) = (parts.len(), parts.first(), pointer.mods.alt) {
                    self.step_aside(*part);
                }
                self.commit_gesture();
                Pick::Idle
            }
            (Pick::Fencing { start, before, .. }, Input::Move(pointer)) => {
                let now = self.camera.to_board(pointer.at);
                self.fence(Rect::from_points(start, now), &before);
                Pick::Fencing { start, now, before }
            }
            (Pick::Fencing { .. }, Input::Up(_)) => {
                self.out.repaint = true;
                let count = self.selection.len();
                if count > 0 {
                    self.tell(say!("picked", count = count));
                }
                Pick::Idle
            }
            (
                Pick::Bending {
                    run,
                    way,
                    piece,
                    start,
                },
                Input::Move(pointer),
            ) => {
                let by = self.camera.to_board(pointer.at) - start;
                self.bend(run, &way, piece, by);
                Pick::Bending {
                    run,
                    way,
                    piece,
                    start,
                }
            }
            (
                Pick::Cornering {
                    run,
                    before,
                    place,
                    start,
                },
                Input::Move(pointer),
            ) => {
                let by = self.camera.to_board(pointer.at) - start;
                self.corner(run, &before, place, by);
                Pick::Cornering {
                    run,
                    before,
                    place,
                    start,
                }
            }
            (Pick::Bending { .. } | Pick::Cornering { .. }, Input::Up(_)) => {
                self.commit_gesture();
                Pick::Idle
            }
            (pick, _) => pick,
        };
        self.tool = Tool::Pick(next);
    }

    /// The finding whose mark lies under the pointer, by its place in the list.
    fn mark_under(&self, at: ScreenPoint, kind: PointerKind) -> Option<usize> {
        let (board, slop) = (self.camera.to_board(at), self.mark_slop(kind));
        drawing::mark_at(&self.layout, &self.look(), board, slop).map(|finding| finding as usize)
    }

    fn click(&mut self, on: Option<Thing>, mods: Mods) {
        match on {
            Some(thing) if mods.shift || mods.command => {
                self.selection.toggle(&thing);
                self.focus = self.selection.has(&thing).then_some(thing);
                self.out.open = Some(Open::Nothing);
            }
            Some(thing) => {
                self.pick_only(&thing);
                self.out.open = Some(Open::Details(thing));
            }
            None if mods.shift => {}
            None => {
                self.selection = Selection::none();
                self.focus = None;
                self.feeds = None;
                self.out.open = Some(Open::Nothing);
            }
        }
        self.out.noticed = true;
        self.out.repaint = true;
    }

    fn begin_drag(&mut self, on: Option<Thing>, at: ScreenPoint, kind: PointerKind, mods: Mods) {
        let start = self.camera.to_board(at);
        self.out.open = Some(Open::Nothing);
        self.out.noticed = true;
        self.hover(None);
        if let Some((run, side)) = self.end_at(start, kind) {
            self.begin_move_end(run, side, start);
            return;
        }
        if let Some((run, place)) = self.bend_at(start, kind) {
            self.take_bend(run, place);
            let before = self
                .sheet()
                .runs
                .get(&run)
                .map(|run| run.bends.clone())
                .unwrap_or_default();
            let tag = Thing::Run(run).written(self.sheet());
            self.begin_gesture(say!("edit-move-bend", run = tag));
            self.tool = Tool::Pick(Pick::Cornering {
                run,
                before,
                place,
                start,
            });
            return;
        }
        self.tool = match on {
            Some(Thing::Terminal(from)) => Tool::Pull(Pull::Drawing {
                from,
                now: start,
                over: None,
                held: true,
                keys: false,
            }),
            Some(Thing::Part(part)) => {
                if !self.selection.parts.contains(&part) {
                    if !mods.shift {
                        self.selection = Selection::none();
                    }
                    self.selection.parts.insert(part);
                }
                self.focus = Some(Thing::Part(part));
                let parts = self.selection.parts.clone();
                let from = self
                    .sheet()
                    .parts
                    .get(&part)
                    .and_then(|part| part.at)
                    .unwrap_or_default();
                let name = move_parts(&self.job, self.on, &parts, 0, 0).name;
                self.begin_gesture(name);
                Tool::Pick(Pick::Carrying {
                    start,
                    grabbed: part,
                    from,
                    parts,
                    by: (0, 0),
                    guides: Vec::new(),
                })
            }
            Some(Thing::Run(run)) => {
                let way = corners(&self.way(run));
                self.pick_only(&Thing::Run(run));
                match nearest_piece(&way, start) {
                    Some(piece) => {
                        let tag = Thing::Run(run).written(self.sheet());
                        self.begin_gesture(say!("edit-bend", run = tag));
                        Tool::Pick(Pick::Bending {
                            run,
                            way,
                            piece,
                            start,
                        })
                    }
                    None => Tool::default(),
                }
            }
            None => {
                let before = if mods.shift {
                    self.selection.clone()
                } else {
                    Selection::none()
                };
                Tool::Pick(Pick::Fencing {
                    start,
                    now: start,
                    before,
                })
            }
        };
    }

    /// How far carried parts go: on the grid, or lined up with a neighbour, or freely with Alt held.
    fn carried_by(
        &self,
        wish: Vec2,
        grabbed: PartId,
        from: BoardPoint,
        parts: &OrderedSet<PartId>,
        freely: bool,
    ) -> ((i32, i32), Vec<(Point, Point)>) {
        if freely {
            return ((whole(wish.x), whole(wish.y)), Vec::new());
        }
        let grid = self.options.grid_units;
        let snap = |from: i32, wish: f64| whole((f64::from(from) + wish) / grid) * whole(grid) - from;
        let mut by = (snap(from.x, wish.x), snap(from.y, wish.y));
        let mut guides = Vec::new();
        // A run that would be nearly straight becomes straight.
        let Some((own, other)) = self.pair_to_align(grabbed, parts, wish) else {
            return (by, guides);
        };
        let reach = self.options.align_units;
        let apart = other - (own + wish);
        if apart.y.abs() <= reach {
            by.1 = whole(other.y - own.y);
            guides.push((Point::new(own.x + f64::from(by.0), other.y), other));
        } else if apart.x.abs() <= reach {
            by.0 = whole(other.x - own.x);
            guides.push((Point::new(other.x, own.y + f64::from(by.1)), other));
        }
        (by, guides)
    }

    /// A stud of the carried part and the stud that a run joins it to, the pair that is nearest to being in line.
    fn pair_to_align(
        &self,
        grabbed: PartId,
        parts: &OrderedSet<PartId>,
        wish: Vec2,
    ) -> Option<(Point, Point)> {
        let (dx, dy) = self.carried_so_far();
        let so_far = Vec2::new(f64::from(dx), f64::from(dy));
        let mut best: Option<(f64, (Point, Point))> = None;
        for (_, run) in self.sheet().runs_of(grabbed) {
            let (Some(a), Some(b)) = (run.from.terminal(), run.to.terminal()) else {
                continue;
            };
            let (own, other) = if a.part == grabbed { (a, b) } else { (b, a) };
            if parts.contains(&other.part) {
                continue;
            }
            let (Some(own), Some(other)) = (self.stud(own), self.stud(other)) else {
                continue;
            };
            // The layout already shows the part where it is carried to; the pair is measured from where it started.
            let own = own - so_far;
            let apart = other - (own + wish);
            let off = apart.x.abs().min(apart.y.abs());
            if best.is_none_or(|(least, _)| off < least) {
                best = Some((off, (own, other)));
            }
        }
        best.map(|(_, pair)| pair)
    }

    fn carried_so_far(&self) -> (i32, i32) {
        match &self.tool {
            Tool::Pick(Pick::Carrying { by, .. }) => *by,
            _ => (0, 0),
        }
    }

    fn carry(&mut self, parts: &OrderedSet<PartId>, by: (i32, i32)) {
        // Started again from the job as it was when the part was taken up: nothing adds up from move to move.
        self.roll_back_gesture();
        let edit = move_parts(&self.job, self.on, parts, by.0, by.1);
        self.extend_gesture(edit, parts);
    }

    fn fence(&mut self, fence: Rect, before: &Selection) {
        let mut inside = self.inside(fence);
        inside.parts.extend(before.parts.iter().copied());
        inside.runs.extend(before.runs.iter().copied());
        self.out.noticed |= inside != self.selection;
        self.selection = inside;
        self.out.repaint = true;
    }
}

/// A number as whole board units; what is not a number is none.
#[expect(clippy::cast_possible_truncation, reason = "clamped to what an i32 holds")]
pub(crate) fn whole(number: f64) -> i32 {
    number.round().clamp(-1e9, 1e9) as i32
}

/// A point as whole board units.
pub(crate) fn board_point(at: Point) -> BoardPoint {
    BoardPoint {
        x: whole(at.x),
        y: whole(at.y),
    }
}
