//! Copying, cutting and pasting. The clip in hand is kept here whole; what goes to the system's clipboard is the same in
//! the text form of a job, so that it can be pasted into another tab, another job or a letter.

use crate::editor::Editor;
use crate::effects::Effects;
use model::BoardPoint;
use model::edits::{self, Clip};
use words::{Saying, say};

/// Most letters of a pasted text that a message repeats.
const REPEATED: usize = 40;

impl Editor {
    pub(crate) fn copy_picked(&mut self) -> bool {
        let clip = edits::copy(self.sheet(), &self.selection.parts);
        if clip.is_empty() {
            self.tell(say!("copy-pick-first"));
            return false;
        }
        let (parts, runs) = (clip.sheet.parts.len(), clip.sheet.runs.len());
        self.tell(say!(
            "copied",
            parts = say!("things-parts", count = parts),
            runs = say!("things-runs", count = runs)
        ));
        self.clip = clip;
        // Until it is handed out, the system's clipboard holds something older.
        self.clip_given.clear();
        true
    }

    /// Copies or cuts what is picked, and gives its text for the system's clipboard. No text: nothing was picked that can
    /// be copied, and the clipboard is to be left alone.
    pub fn copy_out(&mut self, cuts: bool) -> (Effects, Option<String>) {
        let copied = self.copy_picked();
        if copied {
            self.clip_given = self.clip.to_text();
            if cuts && !self.refuses() {
                self.bend = None;
                self.delete_picked();
            }
        }
        let text = copied.then(|| self.clip_given.clone());
        (self.take_effects(), text)
    }

    /// Pastes what the system's clipboard holds. Text that is no part of a job is told and changes nothing, nor does it
    /// push out what was copied here.
    pub fn paste_in(&mut self, text: &str) -> Effects {
        if self.refuses() {
            return self.take_effects();
        }
        let text = text.trim();
        let own = text.is_empty() || text == self.clip_given.trim();
        // The clip in hand is ahead of its text: each paste stands beside the one before.
        if own && !self.clip.is_empty() {
            self.paste_clip();
            return self.take_effects();
        }
        if text.is_empty() {
            self.tell(say!("paste-no-text"));
            return self.take_effects();
        }
        match Clip::from_text(text) {
            Ok(clip) if !clip.is_empty() => {
                self.clip = clip;
                self.clip_given = text.to_owned();
                self.paste_clip();
            }
            Ok(_) => self.refuse(text, say!("paste-no-part")),
            Err(errors) => {
                self.refuse(text, errors.first());
            }
        }
        self.take_effects()
    }

    fn refuse(&mut self, text: &str, why: Saying) {
        let line = text.lines().next().unwrap_or_default();
        let mut shown: String = line.chars().take(REPEATED).collect();
        if shown.len() < text.len() {
            shown.push('…');
        }
        let refused = say!("paste-refused", text = shown, why = why);
        self.tell(if self.clip.is_empty() {
            refused
        } else {
            say!("paste-refused-kept", refused = refused)
        });
    }

    pub(crate) fn paste_clip(&mut self) {
        if self.clip.is_empty() {
            self.tell(say!("paste-nothing"));
            return;
        }
        let clip = self.clip.clone();
        let (dx, dy) = self.room_for_copies(clip.parts());
        self.pasted(edits::paste(&self.job, self.on, &clip, dx, dy));
        // The next paste stands beside this one.
        for part in self.clip.sheet.parts.values_mut() {
            if let Some(at) = &mut part.at {
                *at = BoardPoint {
                    x: at.x.saturating_add(dx),
                    y: at.y.saturating_add(dy),
                };
            }
        }
    }
}
