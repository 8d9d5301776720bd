//! How long it takes until a move of the pointer is seen, as the browser itself counts it.

use super::page::Page;
use serde_json::{Value, json};
use std::time::Duration;

/// Time between two moves: each gets a frame of its own, also where frames take long.
const BETWEEN: Duration = Duration::from_millis(40);

/// What the browser tells of each move: a trace event of this name, with the moments that it went through.
const MOVE: &str = "InputLatency::MouseMove";
/// The moments between which it is counted: the browser's process took the move in; the display has the finished frame with
/// what came of it. What is left then, the copy to the screen, takes half a millisecond in a window without one.
const TAKEN_IN: &str = "COMPONENT_INPUT_EVENT_LATENCY_ORIGINAL";
const RECEIVED: &str = "COMPONENT_DISPLAY_COMPOSITOR_RECEIVED_FRAME";

/// The category of these, and no other, since tracing takes time itself.
const CATEGORY: &str = "input.scrolling";

/// As many streams are looked through for the one that holds the trace.
const STREAMS: u32 = 64;

impl Page {
    /// Presses at the first point and moves to each of the others, then Escape, so that nothing was moved. Gives for each
    /// move that came to be seen the milliseconds from the input, as the browser takes it in, to the finished frame that
    /// shows what came of it, as its display takes it: the wait for the next frame, what the page does, what the browser
    /// draws. Chromium's own tracing counts it.
    #[must_use]
    #[track_caller]
    pub fn latencies_of_drag(&self, points: &[(f64, f64)]) -> Vec<f64> {
        let mouse = |kind: &str, (x, y): (f64, f64), buttons: u32| {
            self.inspect(
                "Input.dispatchMouseEvent",
                &json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1 }),
            );
            std::thread::sleep(BETWEEN);
        };
        let (Some(first), Some(last)) = (points.first(), points.last()) else {
            return Vec::new();
        };
        mouse("mouseMoved", *first, 0);
        mouse("mousePressed", *first, 1);
        self.inspect(
            "Tracing.start",
            &json!({ "transferMode": "ReturnAsStream", "traceConfig": { "includedCategories": [CATEGORY], "excludedCategories": ["*"] } }),
        );
        for point in points.iter().skip(1) {
            mouse("mouseMoved", *point, 1);
        }
        self.inspect("Tracing.end", &json!({}));
        self.press("Escape");
        mouse("mouseReleased", *last, 0);
        let trace = self.wait_for("the trace of the browser", || self.trace());
        latencies(&trace)
    }

    /// The trace that was recorded last. The driver does not hand on the event that tells which stream holds it, but the
    /// browser numbers its streams from 1, and one that was read to its end is closed here.
    fn trace(&self) -> Option<Value> {
        (1..STREAMS).find_map(|stream| {
            let stream = stream.to_string();
            let mut text = String::new();
            loop {
                let asked = json!({ "handle": stream, "size": 8_000_000 });
                let piece = self.driver().inspect("IO.read", &asked).ok()?;
                text.push_str(piece["data"].as_str().unwrap_or_default());
                if piece["eof"] == true {
                    break;
                }
            }
            self.inspect("IO.close", &json!({ "handle": stream }));
            serde_json::from_str(&text).ok()
        })
    }
}

/// Milliseconds of each move that came to be seen. One that changed nothing on the screen ends without a frame.
fn latencies(trace: &Value) -> Vec<f64> {
    let events = trace["traceEvents"].as_array().into_iter().flatten();
    let moves = events.filter(|event| event["name"] == MOVE && event["ph"] == "b");
    moves
        .filter_map(|event| {
            let moments = event["args"]["chrome_latency_info"]["component_info"].as_array()?;
            let at = |moment: &str| {
                let told = moments.iter().find(|told| told["component_type"] == moment)?;
                told["time_us"].as_f64()
            };
            Some((at(RECEIVED)? - at(TAKEN_IN)?) / 1000.0)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_move_is_counted_from_the_input_to_its_frame_and_one_without_a_frame_is_not() {
        let moments = |told: &[(&str, u32)]| -> Vec<Value> {
            let told = told.iter();
            told.map(|(kind, at)| json!({ "component_type": kind, "time_us": at }))
                .collect()
        };
        let event = |name: &str, ph: &str, told: &[(&str, u32)]| json!({ "name": name, "ph": ph, "args": { "chrome_latency_info": { "component_info": moments(told) } } });
        let trace = json!({ "traceEvents": [
            event(MOVE, "b", &[(TAKEN_IN, 1000), (RECEIVED, 13_500)]),
            event(MOVE, "e", &[]),
            event(MOVE, "b", &[(TAKEN_IN, 20_000)]),
            event("InputLatency::MouseDown", "b", &[(TAKEN_IN, 0), (RECEIVED, 1)]),
        ] });
        assert_eq!(latencies(&trace), [12.5]);
    }
}
