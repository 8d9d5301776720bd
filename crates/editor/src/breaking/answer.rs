//! The answer that follows the hand: while an end of a lead or a cut is drawn along a wire, what flows, what opens and what burns stands
//! on a slip beside the pointer.

use crate::editor::Editor;
use circuit::faults::{Certainty, Course, Outcome};
use drawing::{Ink, text_width};
use words::{Saying, say};

/// How wide a line of the slip may be, in pixels at its letters' height.
const WIDE_PX: f64 = 270.0;
const SIZE_PX: f64 = 13.0;
/// How many events are told.
const EVENTS: usize = 3;

/// Lines of words that are no wider than the slip.
fn wrapped(text: &str, bold: bool) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if text_width(&format!("{line} {word}"), SIZE_PX, bold) <= WIDE_PX => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// What flows where something touches, right at first.
#[must_use]
pub fn draws(course: &Course) -> Option<Saying> {
    let current = course.fault.as_ref()?.said();
    Some(match course.outcome {
        Outcome::NothingToClear => say!("breaking-carries", current = current),
        _ => say!("breaking-draws", current = current),
    })
}

impl Editor {
    /// What follows from the break in hand, by its place: a line each with its ink, and whether it is bold.
    pub(crate) fn answer(&self, place: usize) -> Vec<(String, Ink, bool)> {
        let mut lines = Vec::new();
        let mut add = |said: &Saying, ink: Ink, bold: bool| {
            let text = self.words.say(said);
            lines.extend(wrapped(&text, bold).into_iter().map(|line| (line, ink, bold)));
        };
        if let Some(broken) = self.broken.breaks.get(place) {
            add(&broken.said(self.sheet()), Ink::Text, true);
        }
        match &self.broken.course {
            Some(Ok(course)) => self.course_lines(course, &mut add),
            Some(Err(why)) => add(why, Ink::Stop, false),
            None => {}
        }
        lines
    }

    fn course_lines(&self, course: &Course, add: &mut impl FnMut(&Saying, Ink, bool)) {
        if let Some(said) = draws(course) {
            add(&said, Ink::Text, false);
        }
        let grave = course.outcome.is_grave();
        let ink = if grave { Ink::Stop } else { Ink::Text };
        add(&course.outcome.said(self.sheet()), ink, grave);
        for event in course.events.iter().take(EVENTS) {
            let sure = event.certainty == Certainty::Certain;
            let told = say!(
                "breaking-event",
                time = event.time.said(),
                what = event.said(self.sheet())
            );
            let told = if sure {
                told
            } else {
                say!("breaking-event-perhaps", event = told)
            };
            add(&told, Ink::Text, false);
        }
        if course.events.len() > EVENTS {
            let more = course.events.len() - EVENTS;
            add(&say!("breaking-events-more", count = more), Ink::Faint, false);
        }
    }

    /// What becomes of it, in one sentence for the line of messages.
    pub(crate) fn tell_outcome(&mut self) {
        let said = match &self.broken.course {
            Some(Ok(course)) => course.outcome.said(self.sheet()),
            Some(Err(why)) => why.clone(),
            None => return,
        };
        self.tell(said);
    }
}
