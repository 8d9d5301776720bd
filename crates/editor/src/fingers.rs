//! Shifting and enlarging by hand: two fingers, the middle button, or the space bar held. These lie over the tools: the
//! tool in hand is interrupted and stays in hand.

use crate::camera::{Camera, ScreenPoint};
use ordered::OrderedMap;

/// What is going on with the paper itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fingers {
    down: OrderedMap<i32, ScreenPoint>,
    /// Whether the space bar is held.
    pub space: bool,
    state: Handling,
}

#[derive(Clone, Debug, Default, PartialEq)]
enum Handling {
    #[default]
    Nothing,
    /// The paper follows one pointer.
    Shifting { id: i32, last: ScreenPoint },
    /// The paper follows two fingers; computed from where they were when the second came down.
    Pinching {
        ids: [i32; 2],
        start: [ScreenPoint; 2],
        camera: Camera,
    },
    /// Two fingers came, one went: the other does nothing until it goes too.
    Spent,
}

impl Fingers {
    /// Whether the paper is in hand.
    #[must_use]
    pub fn busy(&self) -> bool {
        self.state != Handling::Nothing
    }
    /// Takes the paper in hand by one pointer.
    pub fn shift_by(&mut self, id: i32, at: ScreenPoint) {
        self.state = Handling::Shifting { id, last: at };
    }
    /// A finger came down. True when it is the second: the tool is then to be interrupted.
    pub fn touch_down(&mut self, id: i32, at: ScreenPoint, camera: &Camera) -> bool {
        self.down.insert(id, at);
        let mut fingers = self.down.iter();
        match (fingers.next(), fingers.next(), self.down.len()) {
            (Some(a), Some(b), 2) => {
                self.state = Handling::Pinching {
                    ids: [*a.0, *b.0],
                    start: [*a.1, *b.1],
                    camera: *camera,
                };
                true
            }
            _ => false,
        }
    }
    /// A pointer moved. True when the camera followed.
    pub fn moved(&mut self, id: i32, at: ScreenPoint, camera: &mut Camera) -> bool {
        if let Some(place) = self.down.get_mut(&id) {
            *place = at;
        }
        match &mut self.state {
            Handling::Shifting { id: held, last } if *held == id => {
                camera.pan(at.x - last.x, at.y - last.y);
                *last = at;
                true
            }
            Handling::Pinching {
                ids,
                start,
                camera: before,
            } => {
                let (Some(a), Some(b)) = (self.down.get(&ids[0]), self.down.get(&ids[1])) else {
                    return false;
                };
                let spread = start[0].distance(start[1]).max(8.0);
                let from = start[0].middle(start[1]);
                let to = a.middle(*b);
                let mut made = *before;
                made.zoom_about(from, a.distance(*b) / spread);
                made.pan(to.x - from.x, to.y - from.y);
                (made.width, made.height, made.margins) = (camera.width, camera.height, camera.margins);
                *camera = made;
                true
            }
            _ => false,
        }
    }
    /// A pointer went up or was lost. True when it belonged to the paper and not to a tool.
    pub fn up(&mut self, id: i32) -> bool {
        self.down.remove(&id);
        let was_busy = self.busy();
        self.state = match std::mem::take(&mut self.state) {
            Handling::Shifting { id: held, last } if held != id => Handling::Shifting { id: held, last },
            Handling::Pinching { .. } | Handling::Spent if !self.down.is_empty() => Handling::Spent,
            _ => Handling::Nothing,
        };
        was_busy
    }
    /// Everything is let go.
    pub fn lost(&mut self) {
        self.down.clear();
        self.state = Handling::Nothing;
        self.space = false;
    }
}
