//! A scripted hand for the tests of gestures: it presses, moves, lets go and types.
#![allow(dead_code, reason = "each file of tests uses what it needs")]

use editor::{Button, Editor, Input, Key, Mods, Pointer, PointerKind, ScreenPoint, Thing};
use model::{Job, TerminalRef};

pub(crate) const SYSTEM: &str = r#"
job "Bench"
sheet plan
battery B1 @0,0
fuse F1 strip61 60A @300,0
amplifier A1 @700,0
ground E1 @700,300
run W1 B1.+ F1.in 16mm2 0.2m RD
run W2 F1.out A1.+ 16mm2 4m RD
"#;

/// A scripted hand on an editor.
pub(crate) struct Hand {
    pub(crate) editor: Editor,
    pub(crate) kind: PointerKind,
    pub(crate) mods: Mods,
}

impl Hand {
    pub(crate) fn new(text: &str) -> Self {
        let job = model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"));
        let mut editor = Editor::new(job);
        editor.resize(1600.0, 900.0, editor::Margins::default());
        editor.fit();
        Self {
            editor,
            kind: PointerKind::Mouse,
            mods: Mods::default(),
        }
    }
    pub(crate) fn pointer(&self, id: i32, at: ScreenPoint) -> Pointer {
        Pointer {
            id,
            at,
            kind: self.kind,
            mods: self.mods,
        }
    }
    pub(crate) fn press(&mut self, at: ScreenPoint) {
        let pointer = self.pointer(1, at);
        self.editor.handle(Input::Move(pointer));
        self.editor.handle(Input::Down(pointer, Button::Primary));
    }
    pub(crate) fn drag(&mut self, to: ScreenPoint) -> editor::Effects {
        self.editor.handle(Input::Move(self.pointer(1, to)))
    }
    pub(crate) fn release(&mut self, at: ScreenPoint) -> editor::Effects {
        self.editor.handle(Input::Up(self.pointer(1, at)))
    }
    pub(crate) fn click(&mut self, at: ScreenPoint) -> editor::Effects {
        self.press(at);
        self.release(at)
    }
    pub(crate) fn key(&mut self, key: Key) -> editor::Effects {
        self.editor.handle(Input::Key(key, self.mods))
    }
    pub(crate) fn part(&self, tag: &str) -> ScreenPoint {
        let (id, _) = self.editor.sheet().part_by_tag(tag).unwrap();
        self.at(&Thing::Part(id))
    }
    pub(crate) fn run(&self, tag: &str) -> ScreenPoint {
        let (id, _) = self.editor.sheet().run_by_tag(tag).unwrap();
        self.editor
            .camera()
            .to_screen(self.editor.layout().run(id).unwrap().label_at)
    }
    /// Where an end of a run is taken: a little off its stud, or where it lies loose.
    pub(crate) fn end_of(&self, tag: &str, first: bool) -> ScreenPoint {
        let (id, _) = self.editor.sheet().run_by_tag(tag).unwrap();
        let way = &self.editor.layout().run(id).unwrap().points;
        let (end, next) = if first {
            (way[0], way[1])
        } else {
            (way[way.len() - 1], way[way.len() - 2])
        };
        let (end, next) = (
            self.editor.camera().to_screen(end),
            self.editor.camera().to_screen(next),
        );
        let far = 18.0 / end.distance(next).max(1.0);
        off(end, (next.x - end.x) * far, (next.y - end.y) * far)
    }
    pub(crate) fn terminal(&self, tag: &str, name: &str) -> ScreenPoint {
        self.at(&Thing::Terminal(self.named(tag, name)))
    }
    pub(crate) fn named(&self, tag: &str, name: &str) -> TerminalRef {
        let (id, _) = self.editor.sheet().part_by_tag(tag).unwrap();
        TerminalRef::new(id, name)
    }
    pub(crate) fn at(&self, thing: &Thing) -> ScreenPoint {
        self.editor
            .camera()
            .to_screen(self.editor.area_of(thing).unwrap().center())
    }
    pub(crate) fn address(&self) -> &'static str {
        self.editor.tool().address()
    }
    pub(crate) fn job(&self) -> Job {
        self.editor.job().clone()
    }
    pub(crate) fn text(&self) -> String {
        model::text::print(self.editor.job())
    }
}

/// A point so far off another.
pub(crate) fn off(at: ScreenPoint, dx: f64, dy: f64) -> ScreenPoint {
    ScreenPoint::new(at.x + dx, at.y + dy)
}
