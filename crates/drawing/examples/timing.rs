//! How long arrangement, layout, a drag step and a full draw take on random systems: `cargo run --release -p
//! loomwright-drawing --example timing -- 60 300 3000`. A report, not a test.

#![allow(
    clippy::disallowed_methods,
    reason = "a tool for the bench, not part of the core"
)]

use drawing::{Layout, Look, arrange, draw};
use kurbo::Rect;
use ordered::OrderedSet;
use std::time::Duration;

/// Time this process has run on a processor: other people's work on the machine does not count.
#[derive(Clone, Copy)]
struct Instant(Duration);

impl Instant {
    fn now() -> Self {
        let line = std::fs::read_to_string("/proc/self/schedstat").unwrap_or_default();
        let nanoseconds = line
            .split_whitespace()
            .next()
            .and_then(|word| word.parse().ok())
            .unwrap_or(0);
        Self(Duration::from_nanos(nanoseconds))
    }
    fn elapsed(self) -> Duration {
        Self::now().0.saturating_sub(self.0)
    }
}

fn main() {
    for size in std::env::args()
        .skip(1)
        .filter_map(|size| size.parse::<usize>().ok())
    {
        let mut sheet = testkit::random::random_system(3, size);
        let start = Instant::now();
        let places = arrange(&sheet);
        let arranging = start.elapsed();
        for (id, at) in places {
            if let Some(part) = sheet.parts.get_mut(&id) {
                part.at = Some(at);
            }
        }
        let start = Instant::now();
        let mut layout = Layout::of(&sheet);
        let laying = start.elapsed();
        let bounds = layout.bounds().unwrap_or(Rect::ZERO);
        let start = Instant::now();
        let list = draw(&sheet, &layout, None, &Look::default(), bounds);
        let drawing = start.elapsed();
        let mut slowest = std::time::Duration::ZERO;
        let mut whole = std::time::Duration::ZERO;
        let ids: Vec<_> = sheet.parts.keys().copied().collect();
        let mut steps = 0;
        for id in ids.iter().step_by((ids.len() / 20).max(1)) {
            for _ in 0..5 {
                if let Some(at) = sheet.parts.get_mut(id).and_then(|part| part.at.as_mut()) {
                    at.x += 10;
                    at.y += 10;
                }
                let start = Instant::now();
                layout.update(&sheet, &OrderedSet::from([*id]));
                let step = start.elapsed();
                slowest = slowest.max(step);
                whole += step;
                steps += 1;
            }
        }
        #[allow(clippy::print_stdout, reason = "a report for people")]
        {
            println!(
                "{size} parts, {} runs, {} items, {:.0}×{:.0}: arrange {arranging:?}, lay {laying:?}, draw {drawing:?}, drag step {:?} mean, {slowest:?} worst",
                sheet.runs.len(),
                list.items.len(),
                bounds.width(),
                bounds.height(),
                whole / steps
            );
        }
    }
}
