//! The hand on a page: pointer, fingers, wheel and keys, real to the browser.

use super::keys;
use super::page::Page;
use serde_json::{Value, json};

impl Page {
    /// Presses and releases the pointer at a point of the window.
    #[track_caller]
    pub fn click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(0), up(0)]);
    }

    /// Two quick clicks.
    #[track_caller]
    pub fn double_click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(0), up(0), down(0), up(0)]);
    }

    /// The other button, that opens menus.
    #[track_caller]
    pub fn right_click_at(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0), down(2), up(2)]);
    }

    /// A finger that touches and leaves.
    #[track_caller]
    pub fn tap_at(&self, x: f64, y: f64) {
        self.pointer("touch", &[move_to(x, y, 0), down(0), up(0)]);
    }

    /// A finger that rests for so long before it leaves.
    #[track_caller]
    pub fn rest_at(&self, x: f64, y: f64, milliseconds: u32) {
        let pause = json!({ "type": "pause", "duration": milliseconds });
        self.pointer("touch", &[move_to(x, y, 0), down(0), pause, up(0)]);
    }

    /// Two fingers that come down at the first pair of points and leave at the second.
    #[track_caller]
    pub fn two_fingers(&self, from: [(f64, f64); 2], to: [(f64, f64); 2]) {
        let fingers: Vec<Value> = from
            .iter()
            .zip(to)
            .enumerate()
            .map(|(finger, (from, to))| {
                json!({ "type": "pointer", "id": format!("finger {finger}"), "parameters": { "pointerType": "touch" }, "actions": stroke(&[*from, to]) })
            })
            .collect();
        self.post("/actions", &json!({ "actions": fingers }));
    }

    /// Makes the machine one that is handled by fingers.
    #[track_caller]
    pub fn set_touch(&self) {
        self.inspect(
            "Emulation.setTouchEmulationEnabled",
            &json!({ "enabled": true, "maxTouchPoints": 5 }),
        );
        let (width, height) = self.size;
        self.inspect(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true }),
        );
    }

    /// Clicks the middle of the first thing with that `data-testid`, once it is shown.
    #[track_caller]
    pub fn click(&self, test_id: &str) {
        self.click_nth(test_id, 0);
    }

    /// Clicks the n-th of several, from 0.
    #[track_caller]
    pub fn click_nth(&self, test_id: &str, index: usize) {
        let (x, y) = self.place_of(test_id, index).middle();
        self.click_at(x, y);
    }

    /// Moves the pointer without pressing.
    #[track_caller]
    pub fn hover(&self, x: f64, y: f64) {
        self.pointer("mouse", &[move_to(x, y, 0)]);
    }

    /// Presses at the first point, moves through the others in small steps, and releases at the last.
    #[track_caller]
    pub fn drag(&self, points: &[(f64, f64)]) {
        self.pointer("mouse", &stroke(points));
    }

    /// The same with a finger.
    #[track_caller]
    pub fn touch_drag(&self, points: &[(f64, f64)]) {
        self.pointer("touch", &stroke(points));
    }

    /// Presses at the first point and moves through the others, and stays pressed: to look at the screen in mid-gesture.
    /// The driver keeps the button down until [`Page::release`].
    #[track_caller]
    pub fn drag_and_hold(&self, points: &[(f64, f64)]) {
        let mut steps = stroke(points);
        steps.pop();
        self.pointer("mouse", &steps);
    }

    /// Lets go of the pointer where it is.
    #[track_caller]
    pub fn release(&self) {
        self.pointer("mouse", &[up(0)]);
    }

    /// Turns the wheel over a point, in CSS pixels; `dy` above 0 scrolls down.
    #[track_caller]
    pub fn wheel(&self, x: f64, y: f64, dx: i32, dy: i32) {
        let turn = json!({ "type": "scroll", "x": x.round() as i64, "y": y.round() as i64, "deltaX": dx, "deltaY": dy, "duration": 0, "origin": "viewport" });
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "wheel", "id": "wheel", "actions": [turn] }] }),
        );
    }

    #[track_caller]
    fn pointer(&self, kind: &str, steps: &[Value]) {
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "pointer", "id": kind, "parameters": { "pointerType": kind }, "actions": steps }] }),
        );
    }

    /// Presses a key or a chord: `"Escape"`, `"f"`, `"ctrl+z"`, `"shift+left"`, and releases it.
    #[track_caller]
    pub fn press(&self, chord: &str) {
        let keys = keys::chord(chord).unwrap_or_else(|error| panic!("{error}"));
        let downs = keys
            .iter()
            .map(|key| json!({ "type": "keyDown", "value": key.to_string() }));
        let ups = keys
            .iter()
            .rev()
            .map(|key| json!({ "type": "keyUp", "value": key.to_string() }));
        self.keyboard(&downs.chain(ups).collect::<Vec<_>>());
    }

    /// Types a text, key by key.
    #[track_caller]
    pub fn type_text(&self, text: &str) {
        let strokes: Vec<Value> = text
            .chars()
            .flat_map(|key| {
                ["keyDown", "keyUp"].map(|kind| json!({ "type": kind, "value": key.to_string() }))
            })
            .collect();
        self.keyboard(&strokes);
    }

    #[track_caller]
    fn keyboard(&self, strokes: &[Value]) {
        self.post(
            "/actions",
            &json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": strokes }] }),
        );
    }
}

fn move_to(x: f64, y: f64, milliseconds: u32) -> Value {
    json!({ "type": "pointerMove", "duration": milliseconds, "x": x.round() as i64, "y": y.round() as i64, "origin": "viewport" })
}

fn down(button: u8) -> Value {
    json!({ "type": "pointerDown", "button": button })
}

fn up(button: u8) -> Value {
    json!({ "type": "pointerUp", "button": button })
}

/// Steps of a hand are small: what reacts to the way of the pointer must see some of it.
fn stroke(points: &[(f64, f64)]) -> Vec<Value> {
    const STEPS: u32 = 6;
    let mut steps = Vec::new();
    for (index, &(x, y)) in points.iter().enumerate() {
        let Some(&(from_x, from_y)) = index.checked_sub(1).and_then(|before| points.get(before)) else {
            steps.extend([move_to(x, y, 0), down(0)]);
            continue;
        };
        for step in 1..=STEPS {
            let share = f64::from(step) / f64::from(STEPS);
            steps.push(move_to(
                from_x + (x - from_x) * share,
                from_y + (y - from_y) * share,
                8,
            ));
        }
    }
    steps.push(up(0));
    steps
}
