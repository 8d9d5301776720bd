//! The keyboard on the drawing: arrows walk from part to terminal, along the run to the terminal at its other end, and
//! between neighbours; Enter opens details. Everything a pointer can do can be done from here.

use crate::editor::Editor;
use crate::effects::Open;
use crate::input::{Key, Mods};
use crate::selection::{Selection, Thing};
use crate::tools::{Meter, Pick, Tool};
use drawing::to_point;
use kurbo::{Point, Vec2};
use model::edits::move_parts;
use model::{End, PartId, Role, RunId, TerminalRef};
use ordered::Sort as _;

/// The direction of an arrow key, in whole steps; nothing for other keys.
#[must_use]
pub fn direction(key: Key) -> (i32, i32) {
    match key {
        Key::Left => (-1, 0),
        Key::Right => (1, 0),
        Key::Up => (0, -1),
        Key::Down => (0, 1),
        _ => (0, 0),
    }
}

pub(crate) fn towards(key: Key) -> Option<Vec2> {
    let (x, y) = direction(key);
    (x != 0 || y != 0).then(|| Vec2::new(f64::from(x), f64::from(y)))
}

/// How good a point is as the next one in a direction: smaller is better, `None` when it lies the other way. Distance
/// along counts once, across twice, so that the straight neighbour wins.
pub(crate) fn worth(from: Point, to: Point, along: Vec2) -> Option<f64> {
    let way = to - from;
    let ahead = way.dot(along);
    let aside = way.cross(along).abs();
    (ahead > 1.0 && aside <= 3.0 * ahead + 40.0).then_some(ahead + 2.0 * aside)
}

impl Editor {
    /// Keys that walk or move. True when the key was one.
    pub(crate) fn walk_key(&mut self, key: Key, mods: Mods) -> bool {
        if mods.command || mods.alt || !matches!(self.tool, Tool::Pick(Pick::Idle) | Tool::Meter(_)) {
            return false;
        }
        if let (Tool::Meter(meter), Key::Enter) = (&self.tool, key) {
            self.probe_focus(meter.clone(), mods.shift);
            return true;
        }
        let Some(along) = towards(key) else { return false };
        self.out.taken = true;
        if mods.shift && !self.selection.is_empty() && self.refuses() {
            return true;
        }
        if mods.shift && !self.selection.parts.is_empty() {
            self.nudge(along);
            return true;
        }
        if let Some(Thing::Run(run)) = self.selection.single().filter(|_| mods.shift) {
            self.nudge_run(run, key);
            return true;
        }
        let next = match self.focus.clone() {
            None => self.first_in_view().map(Thing::Part),
            Some(Thing::Part(id)) => self.after_part(id, along),
            Some(Thing::Terminal(at)) => self.after_terminal(&at, along),
            Some(Thing::Run(id)) => self.after_run(id, along),
        };
        if let Some(next) = next {
            self.stand_on(next);
        }
        true
    }

    fn probe_focus(&mut self, mut meter: Meter, black: bool) {
        self.out.taken = true;
        if let Some(thing) = self.focus.clone() {
            self.probe(&mut meter, thing, black);
            self.tool = Tool::Meter(meter);
            self.out.noticed = true;
            self.out.repaint = true;
        }
    }

    /// Puts the keyboard on a thing, picks it and says what it is.
    pub(crate) fn stand_on(&mut self, thing: Thing) {
        if let Some(area) = self.area_of(&thing) {
            // A long run need not be shown whole.
            let area = if matches!(thing, Thing::Run(_)) {
                area.intersect(self.camera.visible())
            } else {
                area
            };
            if area.width() + area.height() > 0.0 {
                self.camera.reveal(area);
            }
        }
        self.out.say = Some(self.spoken(&thing));
        self.out.open = Some(Open::Nothing);
        self.selection = Selection::of(&thing);
        self.bend = None;
        self.focus = Some(thing);
        self.out.noticed = true;
        self.out.repaint = true;
    }

    fn first_in_view(&self) -> Option<PartId> {
        let middle = self.camera.middle();
        let away = |id: &PartId| {
            self.layout
                .part(*id)
                .map_or(f64::INFINITY, |part| part.middle().distance(middle))
        };
        self.sheet()
            .parts
            .keys()
            .copied()
            .min_by(|a, b| away(a).total_cmp(&away(b)))
    }

    fn after_part(&self, id: PartId, along: Vec2) -> Option<Thing> {
        let part = self.layout.part(id)?;
        // The middle stud of that side, else the next part over there.
        let side: Vec<_> = part
            .studs
            .iter()
            .filter(|stud| stud.out.dot(along) > 0.5)
            .collect();
        match side.get(side.len().saturating_sub(1) / 2) {
            Some(stud) => Some(Thing::Terminal(TerminalRef {
                part: id,
                terminal: stud.name.clone(),
            })),
            None => self.part_towards(part.middle(), along, Some(id)).map(Thing::Part),
        }
    }

    fn after_terminal(&self, at: &TerminalRef, along: Vec2) -> Option<Thing> {
        let stud = self.layout.stud_of(at)?;
        let out = stud.out.dot(along);
        if out > 0.5 {
            let lands = |end: &End| end.terminal() == Some(at);
            let run = self
                .sheet()
                .runs_of(at.part)
                .find(|(_, run)| lands(&run.from) || lands(&run.to));
            return match run {
                Some((id, _)) => Some(Thing::Run(id)),
                None => self.part_towards(stud.at, along, Some(at.part)).map(Thing::Part),
            };
        }
        if out < -0.5 {
            return Some(Thing::Part(at.part));
        }
        let part = self.layout.part(at.part)?;
        let next = part
            .studs
            .iter()
            .filter(|other| other.side == stud.side)
            .filter_map(|other| Some((worth(stud.at, other.at, along)?, other)))
            .min_by(|a, b| a.0.total_cmp(&b.0));
        match next {
            Some((_, other)) => Some(Thing::Terminal(TerminalRef {
                part: at.part,
                terminal: other.name.clone(),
            })),
            None => self
                .part_towards(part.middle(), along, Some(at.part))
                .map(Thing::Part),
        }
    }

    /// Along a run: to its end that lies that way; when the keyboard came from that end, the other one is meant.
    fn after_run(&self, id: RunId, along: Vec2) -> Option<Thing> {
        let run = self.sheet().runs.get(&id)?;
        let way = self.layout.run(id)?;
        let (first, last) = (*way.points.first()?, *way.points.last()?);
        let forth = (last - first).dot(along);
        let (near, far) = if forth >= 0.0 {
            (&run.to, &run.from)
        } else {
            (&run.from, &run.to)
        };
        near.terminal().or(far.terminal()).cloned().map(Thing::Terminal)
    }

    pub(crate) fn part_towards(&self, from: Point, along: Vec2, not: Option<PartId>) -> Option<PartId> {
        let others = self.layout.parts().filter(|(id, _)| Some(*id) != not);
        let worth = others.filter_map(|(id, part)| Some((worth(from, part.middle(), along)?, id)));
        worth.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, id)| id)
    }

    /// The next terminal in the direction of an arrow, of those whose role will do: `cost` makes a distance count
    /// more or less by role, and is nothing for one that will not do.
    pub(crate) fn terminal_towards(
        &self,
        from: &TerminalRef,
        key: Key,
        cost: impl Fn(Role) -> Option<f64>,
    ) -> Option<TerminalRef> {
        let along = towards(key)?;
        let at = self.stud(from)?;
        let mut best: Option<(f64, TerminalRef)> = None;
        for (part, made) in self.layout.parts() {
            for stud in &made.studs {
                let Some(cost) = cost(stud.role) else { continue };
                let to = TerminalRef {
                    part,
                    terminal: stud.name.clone(),
                };
                if to == *from {
                    continue;
                }
                if let Some(worth) = worth(at, stud.at, along).map(|worth| worth * cost)
                    && best.as_ref().is_none_or(|(least, _)| worth < *least)
                {
                    best = Some((worth, to));
                }
            }
        }
        best.map(|(_, to)| to)
    }

    fn nudge(&mut self, along: Vec2) {
        let step = along * self.options.grid_units;
        let parts = self.selection.parts.clone();
        let edit = move_parts(
            &self.job,
            self.on,
            &parts,
            crate::tools::pick::whole(step.x),
            super::pick::whole(step.y),
        );
        self.tell(edit.name.said());
        self.apply(edit);
        self.out.open = Some(Open::Nothing);
        let first = parts
            .first()
            .and_then(|id| self.sheet().parts.get(id))
            .and_then(|part| part.at);
        if let Some(at) = first {
            let area = kurbo::Rect::from_center_size(to_point(at), (120.0, 80.0));
            self.camera.reveal(area);
        }
    }

    /// The next part in reading order, or the one before.
    pub(crate) fn step_part(&mut self, back: bool) {
        let mut order: Vec<(i64, i64, PartId)> = self
            .layout
            .parts()
            .map(|(id, part)| {
                let at = part.middle();
                (
                    i64::from(crate::tools::pick::whole(at.x / 200.0)),
                    i64::from(super::pick::whole(at.y)),
                    id,
                )
            })
            .collect();
        order.order();
        let here = match &self.focus {
            Some(Thing::Part(id) | Thing::Terminal(TerminalRef { part: id, .. })) => {
                order.iter().position(|(_, _, other)| other == id)
            }
            _ => None,
        };
        let count = order.len();
        let next = match (here, back) {
            (None, false) => 0,
            (None, true) => count.saturating_sub(1),
            (Some(place), false) => (place + 1) % count.max(1),
            (Some(place), true) => (place + count.saturating_sub(1)) % count.max(1),
        };
        if let Some((_, _, id)) = order.get(next) {
            self.stand_on(Thing::Part(*id));
        }
    }
}
