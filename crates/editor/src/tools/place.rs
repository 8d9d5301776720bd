//! Put a part from the shelf: it follows the pointer until it is put down. On a run, it is put into the run.

use super::Tool;
use crate::editor::Editor;
use crate::input::{Input, Key};
use crate::selection::Thing;
use crate::tools::pull::snapped;
use checks::suited;
use drawing::{Hit, PartBox};
use kurbo::Point;
use model::edits::{EditError, Inserted, add_part, insert_into_run, ways_through};
use model::{BoardPoint, Change, Part, PartKind, RunId, Turn};
use words::say;

/// A part from the shelf, in hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The kind's word.
    pub word: &'static str,
    /// Where it would stand; `None` until the pointer is over the paper.
    pub at: Option<BoardPoint>,
    /// How it is turned.
    pub turn: Turn,
    /// The run it would be put into.
    pub into: Option<RunId>,
}

impl Place {
    /// The part as it would stand, for drawing it.
    #[must_use]
    pub fn ghost(&self) -> Option<(Part, PartBox)> {
        let mut part = Part::new("", PartKind::from_word(self.word)?);
        part.turn = self.turn;
        let made = PartBox::of(&part, drawing::to_point(self.at?));
        Some((part, made))
    }
}

/// Whether a part of this kind can be put into a run.
fn goes_into_runs(word: &str) -> bool {
    PartKind::from_word(word).is_some_and(|kind| ways_through(&kind).is_some())
}

/// The next turn clockwise.
#[must_use]
pub fn turned(turn: Turn) -> Turn {
    match turn {
        Turn::None => Turn::Quarter,
        Turn::Quarter => Turn::Half,
        Turn::Half => Turn::ThreeQuarters,
        Turn::ThreeQuarters => Turn::None,
    }
}

impl Editor {
    /// Takes a part of this kind from the shelf in hand. From the keyboard it hangs in the middle of the window until it is
    /// moved.
    pub fn take_from_shelf(&mut self, word: &str, by_keys: bool) -> crate::Effects {
        if self.refuses() {
            return self.take_effects();
        }
        self.interrupt();
        if let Some(word) = PartKind::WORDS.iter().find(|known| **known == word) {
            let mut place = Place {
                word,
                at: None,
                turn: Turn::None,
                into: None,
            };
            if by_keys {
                // Who stands on a run means it: the part goes into it.
                let run = match &self.focus {
                    Some(Thing::Run(run)) if goes_into_runs(word) => {
                        self.layout.run(*run).map(|way| (*run, way))
                    }
                    _ => None,
                };
                let spot = run.map_or_else(|| self.free_spot(word), |(_, way)| way.label_at);
                let into = run.map(|(run, _)| run);
                self.hold(&mut place, snapped(spot, self.options.grid_units), into);
            }
            self.tool = Tool::Place(place);
            self.out.repaint = true;
            self.out.noticed = true;
            self.out.taken = true;
        }
        self.take_effects()
    }

    /// Keys carry a part to a point: it stays in view, and which run it would be put into is said, or that it came off the run.
    fn hold(&mut self, place: &mut Place, at: BoardPoint, into: Option<RunId>) {
        place.at = Some(at);
        let before = std::mem::replace(&mut place.into, into);
        let tag = |run: RunId| self.sheet().runs.get(&run).map(|run| run.tag.clone());
        let said = match (into, before) {
            (Some(run), before) if before != into => tag(run).map(|run| say!("place-into", run = run)),
            (None, Some(run)) => tag(run).map(|run| say!("place-beside", run = run)),
            _ => None,
        };
        if let Some(said) = said {
            self.tell(said);
        }
        if let Some((_, made)) = place.ghost() {
            self.camera.reveal(made.outline);
        }
    }

    /// The run within reach of a point that a part of this kind would be put into.
    fn run_for(&self, word: &str, at: Point, reach: f64) -> Option<RunId> {
        match self.layout.hit(at, reach) {
            Some(Hit::Run(run, ..)) if goes_into_runs(word) => Some(run),
            _ => None,
        }
    }

    /// A point near what has the keys, or near the middle of the window, where a part of this kind covers no other.
    fn free_spot(&self, word: &str) -> Point {
        let middle = match &self.focus {
            Some(thing) => self
                .area_of(thing)
                .map(|area| Point::new(area.x1 + 120.0, area.center().y)),
            None => None,
        }
        .unwrap_or_else(|| self.camera.middle());
        let mut spot = middle;
        for step in 0..40_u32 {
            let made = PartKind::from_word(word).map(|kind| PartBox::of(&Part::new("", kind), spot));
            let covers = |made: PartBox| {
                let area = made.outline.inflate(10.0, 10.0);
                self.layout.parts().any(|(_, other)| other.outline.overlaps(area))
            };
            if !made.is_some_and(covers) {
                break;
            }
            spot = middle + kurbo::Vec2::new(0.0, 60.0 * f64::from(step + 1));
        }
        spot
    }

    pub(crate) fn place_input(&mut self, mut place: Place, input: Input) {
        match input {
            Input::Move(pointer) | Input::Down(pointer, _) => {
                self.out.taken = true;
                let at = self.camera.to_board(pointer.at);
                place.at = Some(snapped(at, self.options.grid_units));
                let reach = self.options.reach_px(pointer.kind) / self.camera.zoom;
                let into = self.run_for(place.word, at, reach);
                let before = std::mem::replace(&mut place.into, into);
                if before.is_some() && before != into {
                    // What the keys said of that run is true no more.
                    self.out.say = Some(String::new());
                }
                self.out.repaint = true;
                self.tool = Tool::Place(place);
            }
            Input::Up(pointer) => {
                self.out.taken = true;
                let again = pointer.mods.shift;
                self.put_down(place, again);
            }
            Input::Left => {
                place.at = None;
                self.out.repaint = true;
                self.tool = Tool::Place(place);
            }
            Input::Key(Key::Enter, mods) => {
                self.out.taken = true;
                self.put_down(place, mods.shift);
            }
            Input::Key(key @ (Key::Left | Key::Right | Key::Up | Key::Down), mods) => {
                self.out.taken = true;
                let step = if mods.shift { 1 } else { 4 } * super::pick::whole(self.options.grid_units);
                let (dx, dy) = crate::walk::direction(key);
                let from = place
                    .at
                    .unwrap_or_else(|| snapped(self.camera.middle(), self.options.grid_units));
                let at = BoardPoint {
                    x: from.x.saturating_add(dx * step),
                    y: from.y.saturating_add(dy * step),
                };
                // Runs lie between the points of the grid too.
                let reach = 0.6 * self.options.grid_units;
                let into = self.run_for(place.word, drawing::to_point(at), reach);
                self.hold(&mut place, at, into);
                self.out.repaint = true;
                self.tool = Tool::Place(place);
            }
            _ => {}
        }
    }

    pub(crate) fn turn_in_hand(&mut self, back: bool) {
        if let Tool::Place(place) = &mut self.tool {
            let times = if back { 3 } else { 1 };
            for _ in 0..times {
                place.turn = turned(place.turn);
            }
            self.out.repaint = true;
        }
    }

    /// A part put into a run; a fuse of a rating that suits it.
    fn inserted(&self, run: RunId, kind: PartKind, at: BoardPoint) -> Result<Inserted, EditError> {
        let kind = match self.analysis.study.runs.get(&run) {
            Some(flow) => suited(kind, &self.job.settings, flow),
            None => kind,
        };
        insert_into_run(&self.job, self.on, run, kind, at, None)
    }

    fn put_down(&mut self, place: Place, again: bool) {
        let (Some(at), Some(kind)) = (place.at, PartKind::from_word(place.word)) else {
            // Let go outside the paper.
            self.tool = Tool::default();
            self.out.noticed = true;
            self.out.repaint = true;
            return;
        };
        self.tool = if again {
            // The next one is put into a run once it is carried to one: that run ends at this one now.
            let into = None;
            Tool::Place(Place {
                into,
                ..place.clone()
            })
        } else {
            Tool::default()
        };
        let (mut edit, part) = match place.into {
            Some(run) => match self.inserted(run, kind, at) {
                Ok(inserted) => (inserted.edit, inserted.part),
                Err(error) => {
                    self.tell(error.0);
                    return;
                }
            },
            None => add_part(&self.job, self.on, kind, Some(at)),
        };
        for change in &mut edit.changes {
            if let Change::Part {
                id, to: Some(made), ..
            } = change
                && *id == part
            {
                made.turn = place.turn;
            }
        }
        self.apply_placing(edit, part);
        self.pick_only(&Thing::Part(part));
        self.tell(say!("placed", part = self.spoken(&Thing::Part(part))));
    }
}
