//! Breaking things on the board: scissors that cut a run where they are put, and a lead with two clips that joins what it bites on – a
//! terminal, a point along a run, the body. While an end is drawn along, what follows from it is worked out at every step. What was
//! thrown is no part of the job; see `crate::breaking`.

use super::Tool;
use crate::breaking::{Clip, Reach, remade};
use crate::camera::ScreenPoint;
use crate::editor::Editor;
use crate::input::{Input, Key, Pointer};
use crate::selection::Thing;
use crate::sketch::Sketch;
use drawing::{Anchor, Ink};
use kurbo::{Point, Vec2};
use model::PartKind;
use model::breaks::{Break, Contact, HALF_WAY};
use model::quantity::{Ohms, Share};
use words::{Saying, say};

/// What is in hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum With {
    /// Scissors: they cut.
    #[default]
    Scissors,
    /// A lead with two clips: it joins.
    Lead,
}

/// The tool in hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Breaking {
    /// What is in hand.
    pub with: With,
    /// What it is doing.
    pub doing: Doing,
}

/// What the tool is doing.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Doing {
    /// Nothing; it would cut or bite here.
    #[default]
    Nothing,
    /// The pointer is over something that it would cut or bite on.
    Over(Contact),
    /// The scissors are pressed down: they cut where they are let go.
    Cutting(Option<Contact>),
    /// A lead is drawn from a point.
    Leading {
        /// From where.
        from: Contact,
        /// Where the other end is.
        now: ScreenPoint,
        /// What it bites on there.
        to: Option<Contact>,
        /// Whether it has left the place where it began.
        moved: bool,
        /// What was thrown before.
        before: Vec<Break>,
    },
    /// A lead hangs from a point and waits for where its other end goes.
    Holding(Contact),
    /// An end of a mark is drawn along.
    Dragging {
        /// Which.
        end: (usize, usize),
        /// Where it was taken.
        start: ScreenPoint,
        /// Where it is now.
        now: ScreenPoint,
        /// What it is on; nothing where it comes off when let go.
        on: Option<Contact>,
        /// Whether it has been moved.
        moved: bool,
        /// What was thrown before.
        before: Vec<Break>,
    },
}

impl Breaking {
    /// The state's address.
    #[must_use]
    pub fn address(&self) -> &'static str {
        match (&self.doing, self.with) {
            (Doing::Nothing | Doing::Over(_), With::Scissors) => "break/scissors",
            (Doing::Nothing | Doing::Over(_), With::Lead) => "break/lead",
            (Doing::Cutting(_), _) => "break/cutting",
            (Doing::Leading { .. }, _) => "break/leading",
            (Doing::Holding(_), _) => "break/holding",
            (Doing::Dragging { .. }, _) => "break/dragging",
        }
    }
    /// What to do with it.
    #[must_use]
    pub fn hint(&self) -> Saying {
        match (&self.doing, self.with) {
            (Doing::Dragging { .. }, _) => say!("hint-break-dragging"),
            (Doing::Leading { .. }, _) => say!("hint-break-leading"),
            (Doing::Holding(_), _) => say!("hint-break-holding"),
            (_, With::Scissors) => say!("hint-break-scissors"),
            (_, With::Lead) => say!("hint-break-lead"),
        }
    }
    /// Whether nothing is under way.
    #[must_use]
    pub fn rests(&self) -> bool {
        matches!(self.doing, Doing::Nothing | Doing::Over(_))
    }
    fn reach(&self) -> Reach {
        match self.with {
            With::Scissors => Reach::Runs,
            With::Lead => Reach::Metal,
        }
    }
}

impl Editor {
    /// Takes scissors or lead in hand.
    pub fn take_break_tool(&mut self, with: With) -> crate::Effects {
        self.take(Tool::Break(Breaking {
            with,
            doing: Doing::Nothing,
        }));
        // The hint stands beside it all the time.
        self.out.say = None;
        self.out.noticed = true;
        self.out.repaint = true;
        self.take_effects()
    }

    pub(crate) fn break_input(&mut self, mut tool: Breaking, input: Input) {
        match input {
            Input::Move(pointer) => self.break_moves(&mut tool, pointer),
            Input::Down(pointer, crate::Button::Primary) => {
                self.out.taken = true;
                self.break_pressed(&mut tool, pointer);
            }
            Input::Up(pointer) => {
                self.out.taken = true;
                self.break_moves(&mut tool, pointer);
                self.break_let_go(&mut tool);
            }
            Input::Left if tool.rests() => tool.doing = Doing::Nothing,
            Input::Key(key, mods) => self.break_key(&mut tool, key, mods.shift),
            _ => return,
        }
        if matches!(self.tool, Tool::Break(_)) {
            self.tool = Tool::Break(tool);
        }
        self.out.repaint = true;
    }

    fn break_pressed(&mut self, tool: &mut Breaking, pointer: Pointer) {
        self.out.noticed = true;
        if let Doing::Holding(from) = &tool.doing {
            let (from, before) = (from.clone(), self.broken.breaks.clone());
            tool.doing = Doing::Leading {
                from,
                now: pointer.at,
                to: None,
                // It has long left.
                moved: true,
                before,
            };
            self.break_moves(tool, pointer);
            return;
        }
        if let Some(place) = self.takes_away_at(pointer.at) {
            self.remove_break(place);
            return;
        }
        if let Some(Clip { place, end }) = self.clip_at(pointer.at, pointer.kind) {
            tool.doing = Doing::Dragging {
                end: (place, end),
                start: pointer.at,
                now: pointer.at,
                on: None,
                moved: false,
                before: self.broken.breaks.clone(),
            };
            return;
        }
        self.broken.picked = None;
        let on = self.contact_at(pointer.at, pointer.kind, tool.reach(), None);
        tool.doing = match (tool.with, on) {
            (With::Scissors, on) => Doing::Cutting(on),
            (With::Lead, Some(from)) => Doing::Leading {
                from,
                now: pointer.at,
                to: None,
                moved: false,
                before: self.broken.breaks.clone(),
            },
            (With::Lead, None) => {
                self.tell(tool.hint());
                Doing::Nothing
            }
        };
    }

    fn break_moves(&mut self, tool: &mut Breaking, pointer: Pointer) {
        let slop = self.options.slop_px(pointer.kind);
        let reach = tool.reach();
        match &mut tool.doing {
            Doing::Nothing | Doing::Over(_) => {
                // Over a mark it is the mark that would be taken.
                let over = match self.clip_at(pointer.at, pointer.kind) {
                    Some(_) => None,
                    None => self.contact_at(pointer.at, pointer.kind, reach, None),
                };
                tool.doing = over.map_or(Doing::Nothing, Doing::Over);
            }
            Doing::Holding(_) => {}
            Doing::Cutting(on) => {
                let now = self.contact_at(pointer.at, pointer.kind, reach, on.as_ref());
                *on = now;
            }
            Doing::Leading {
                from,
                now,
                to,
                moved,
                before,
                ..
            } => {
                *moved |= now.distance(pointer.at) > slop
                    || self
                        .contact_point(from)
                        .is_some_and(|from| self.camera.to_screen(from).distance(pointer.at) > 3.0 * slop);
                if !*moved {
                    return;
                }
                *now = pointer.at;
                *to = self.contact_at(pointer.at, pointer.kind, Reach::Metal, to.as_ref());
                let mut all = before.clone();
                let made = to
                    .clone()
                    .and_then(|to| Break::touching([from.clone(), to], Ohms(0.0)));
                all.extend(made.filter(|made| !before.contains(made)));
                self.put_breaks(all);
            }
            Doing::Dragging {
                end: (place, end),
                start,
                now,
                on,
                moved,
                before,
                ..
            } => {
                *moved |= start.distance(pointer.at) > slop;
                if !*moved {
                    return;
                }
                *now = pointer.at;
                let Some(was) = before.get(*place) else {
                    return;
                };
                let stays = on.clone().or_else(|| self.end_contact(was, *end));
                let reach = match was {
                    Break::Cut { .. } => Reach::Runs,
                    _ => Reach::Metal,
                };
                let to = self.contact_at(pointer.at, pointer.kind, reach, stays.as_ref());
                let made = to.clone().and_then(|to| remade(was, *end, to));
                *on = to.filter(|_| made.is_some());
                let mut all = before.clone();
                match (made, all.get_mut(*place)) {
                    (Some(made), Some(there)) => *there = made,
                    _ => {
                        all.remove(*place);
                    }
                }
                self.put_breaks(all);
            }
        }
    }

    fn end_contact(&self, broken: &Break, end: usize) -> Option<Contact> {
        match broken {
            Break::Cut { run, at } => Some(Contact::Along(*run, *at)),
            Break::Grounded { run, at, .. } if end == 0 => Some(Contact::Along(*run, *at)),
            Break::Joined { points, .. } => points.get(end).cloned(),
            _ => None,
        }
    }

    fn break_let_go(&mut self, tool: &mut Breaking) {
        self.out.noticed = true;
        match std::mem::take(&mut tool.doing) {
            Doing::Cutting(on) => {
                if let Some(Contact::Along(run, at)) = on {
                    self.throw_here(Break::Cut { run, at });
                } else {
                    self.tell(tool.hint());
                }
            }
            Doing::Leading {
                from, moved: false, ..
            } => {
                tool.doing = Doing::Holding(from);
                self.tell(tool.hint());
            }
            Doing::Leading { to, before, .. } => {
                if self.broken.breaks == before {
                    match &to {
                        Some(_) => self.tell(say!("breaking-same-point")),
                        None => self.tell(tool.hint()),
                    }
                } else {
                    self.note_breaks(before);
                    self.tell_outcome();
                }
            }
            Doing::Dragging {
                end: (place, _),
                moved,
                on,
                before,
                ..
            } => {
                if !moved {
                    // Pressed and let go: the mark is picked, or no longer.
                    self.broken.picked = Some(place).filter(|_| self.broken.picked != Some(place));
                } else if on.is_some() {
                    self.note_breaks(before);
                    self.tell_outcome();
                } else {
                    let gone = before.get(place).map(|gone| gone.said(self.sheet()));
                    self.note_breaks(before);
                    if let Some(what) = gone {
                        self.tell(say!("breaking-taken-back", what = what));
                    }
                }
            }
            other => tool.doing = other,
        }
    }

    /// Throws a break where the hand is: nothing has to be brought into view.
    fn throw_here(&mut self, broken: Break) {
        let mut all = self.broken.breaks.clone();
        if !all.contains(&broken) {
            all.push(broken);
            self.set_breaks(all);
        }
        self.tell_outcome();
    }

    /// What the keyboard stands on, as a clip would bite on it.
    fn contact_in_focus(&self) -> Option<Contact> {
        match self.focus.clone().or_else(|| self.selection.single())? {
            Thing::Terminal(at) => Some(Contact::Terminal(at)),
            Thing::Run(run) => Some(Contact::Along(run, HALF_WAY)),
            Thing::Part(part) => {
                let kind = self.sheet().parts.get(&part).map(|part| &part.is);
                matches!(kind, Some(PartKind::Ground(_))).then_some(Contact::Body)
            }
        }
    }

    fn break_key(&mut self, tool: &mut Breaking, key: Key, shift: bool) {
        let picked = self.broken.picked;
        match (key, picked, &tool.doing) {
            (Key::Delete, Some(place), _) => {
                self.out.taken = true;
                self.remove_break(place);
            }
            (Key::Left | Key::Right, Some(place), _) => {
                let step = if shift { 0.1 } else { 0.01 };
                let step = if key == Key::Left { -step } else { step };
                if let Some(Break::Grounded { at, .. } | Break::Cut { at, .. }) =
                    self.broken.breaks.get(place)
                {
                    self.out.taken = true;
                    let to = libm::round((at.0 + step).clamp(0.0, 1.0) * 100.0) / 100.0;
                    // Its effects go out with those of the key.
                    let effects = self.slide_break(place, Share(to));
                    self.out.join(effects);
                    self.out.taken = true;
                    self.broken.picked = Some(place);
                    self.tell_outcome();
                }
            }
            (Key::Enter, _, _) => {
                self.out.taken = true;
                match (self.contact_in_focus(), tool.with, &tool.doing) {
                    (Some(to), _, Doing::Holding(from)) => {
                        let from = from.clone();
                        tool.doing = Doing::Nothing;
                        self.join_by_keys(from, to);
                    }
                    (Some(Contact::Along(run, at)), With::Scissors, _) => {
                        self.throw_here(Break::Cut { run, at });
                    }
                    (Some(from), With::Lead, _) => {
                        tool.doing = Doing::Holding(from);
                        self.tell(tool.hint());
                    }
                    _ => self.tell(tool.hint()),
                }
            }
            (Key::Char('b'), _, Doing::Holding(from)) => {
                self.out.taken = true;
                let from = from.clone();
                tool.doing = Doing::Nothing;
                self.join_by_keys(from, Contact::Body);
            }
            _ => {}
        }
        self.out.noticed = true;
    }

    fn join_by_keys(&mut self, from: Contact, to: Contact) {
        match Break::touching([from, to], Ohms(0.0)) {
            Some(made) => self.throw_here(made),
            None => self.tell(say!("breaking-same-point")),
        }
    }

    /// Leaves what is under way as if it had not begun. True when something was.
    pub(crate) fn abandon_break(&mut self) -> bool {
        let Tool::Break(tool) = &mut self.tool else {
            return false;
        };
        match std::mem::take(&mut tool.doing) {
            Doing::Leading { before, .. } | Doing::Dragging { before, .. } => {
                self.put_breaks(before);
                true
            }
            Doing::Holding(_) | Doing::Cutting(_) => true,
            Doing::Nothing | Doing::Over(_) => self.broken.picked.take().is_some(),
        }
    }

    pub(crate) fn sketch_breaking(&self, sketch: &mut Sketch<'_>, tool: &Breaking) {
        let bites = |contact: &Contact| matches!(contact, Contact::Body);
        let over_body = match &tool.doing {
            Doing::Over(on) => bites(on),
            Doing::Leading { from, to, .. } => bites(from) || to.as_ref().is_some_and(bites),
            Doing::Holding(from) => bites(from),
            _ => false,
        };
        let needs_body = tool.with == With::Lead || matches!(tool.doing, Doing::Dragging { .. });
        if needs_body {
            self.sketch_body_clip(sketch, over_body);
        }
        match &tool.doing {
            Doing::Nothing => {}
            Doing::Over(on) | Doing::Cutting(Some(on)) if tool.with == With::Scissors => {
                if let (Contact::Along(run, at), Some(point)) = (on, self.contact_point(on)) {
                    self.sketch_cut(sketch, *run, point, Ink::Picked);
                    self.sketch_scissors(sketch, *run, point);
                    self.sketch_share(sketch, point, *at);
                }
            }
            Doing::Over(on) => self.sketch_bite(sketch, on),
            Doing::Cutting(_) => {}
            Doing::Holding(from) => {
                self.sketch_bite(sketch, from);
                if let Some(at) = self.contact_point(from) {
                    let hangs = at + Vec2::new(50.0, 60.0) * sketch.pixel;
                    sketch.lead(at, hangs);
                    sketch.clip(at, hangs);
                    sketch.clip(hangs, at + Vec2::new(70.0, 200.0) * sketch.pixel);
                }
            }
            Doing::Leading {
                from, now, to, moved, ..
            } => {
                let body = self.camera.to_board(self.body_clip());
                let start = self.contact_point(from).unwrap_or(body);
                let free = self.camera.to_board(*now);
                let thrown = to.is_some() && self.broken.breaks.len() > self.broken_before(tool);
                if thrown {
                    // The mark is drawn already, but for its way to the clip of the body that it was drawn to.
                    let at = to.as_ref().and_then(|to| self.contact_point(to)).unwrap_or(free);
                    self.sketch_answer(sketch, self.broken.breaks.len() - 1, at);
                } else if *moved {
                    sketch.lead(start, free);
                    if *from != Contact::Body {
                        sketch.clip(start, free);
                    }
                    sketch.clip(free, start);
                } else {
                    self.sketch_bite(sketch, from);
                }
            }
            Doing::Dragging {
                end: (place, _),
                now,
                on,
                moved: true,
                ..
            } => {
                let free = self.camera.to_board(*now);
                match on {
                    Some(on) => {
                        let at = self.contact_point(on).unwrap_or(free);
                        self.sketch_answer(sketch, *place, at);
                    }
                    None => {
                        sketch.ring(free, 8.0, Ink::Stop, 2.0, Some(Ink::Paper));
                        let lines = [(self.words.text("breaking-let-go"), Ink::Text, true)];
                        self.sketch_slip(sketch, &lines, free);
                    }
                }
            }
            Doing::Dragging { .. } => {}
        }
    }

    fn broken_before(&self, tool: &Breaking) -> usize {
        match &tool.doing {
            Doing::Leading { before, .. } | Doing::Dragging { before, .. } => before.len(),
            _ => self.broken.breaks.len(),
        }
    }

    /// Where a clip would bite.
    fn sketch_bite(&self, sketch: &mut Sketch<'_>, on: &Contact) {
        if let Some(at) = self.contact_point(on) {
            sketch.ring(at, 9.0, Ink::Paper, 5.0, None);
            sketch.ring(at, 9.0, Ink::Picked, 2.5, None);
            if let Contact::Along(_, share) = on {
                self.sketch_share(sketch, at, *share);
            }
        }
    }

    /// How far along its run a point is.
    fn sketch_share(&self, sketch: &mut Sketch<'_>, at: Point, share: Share) {
        let told = words::precise(share.0, words::Unit::Percent, 0);
        let place = at + Vec2::new(14.0, -14.0) * sketch.pixel;
        let word = self.words.figure(told);
        sketch.word(&word, place, 13.0, Anchor::Start, Ink::Picked);
    }

    fn sketch_answer(&self, sketch: &mut Sketch<'_>, place: usize, at: Point) {
        self.sketch_slip(sketch, &self.answer(place), at);
    }

    fn sketch_slip(&self, sketch: &mut Sketch<'_>, lines: &[(String, Ink, bool)], at: Point) {
        let free = self.camera.free_area();
        let corner = |x: f64, y: f64| self.camera.to_board(ScreenPoint::new(x, y));
        let within = kurbo::Rect::from_points(corner(free.x0, free.y0), corner(free.x1, free.y1));
        sketch.slip(lines, at, within);
    }
}
