//! Everything that can be done has a name and, mostly, a key. Menus, the Ask box and the keyboard all read this list,
//! so that what one can find one can also press.

use crate::input::{Key, Mods};
use words::Saying;

/// A key with what is held besides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chord {
    /// The key.
    pub key: Key,
    /// Control or Command.
    pub command: bool,
    /// Shift; for signs, which need it on some keyboards and not on others, it is not looked at.
    pub shift: bool,
}

const fn plain(key: char) -> Chord {
    Chord {
        key: Key::Char(key),
        command: false,
        shift: false,
    }
}
const fn shift(key: char) -> Chord {
    Chord {
        key: Key::Char(key),
        command: false,
        shift: true,
    }
}
const fn command(key: char) -> Chord {
    Chord {
        key: Key::Char(key),
        command: true,
        shift: false,
    }
}
const fn command_shift(key: char) -> Chord {
    Chord {
        key: Key::Char(key),
        command: true,
        shift: true,
    }
}
const fn named(key: Key) -> Chord {
    Chord {
        key,
        command: false,
        shift: false,
    }
}

impl Chord {
    /// Whether this key press is meant.
    #[must_use]
    pub fn is(self, key: Key, mods: Mods) -> bool {
        let sign = matches!(key, Key::Char(c) if !c.is_alphabetic());
        self.key == key && self.command == mods.command && !mods.alt && (sign || self.shift == mods.shift)
    }
    /// As it is printed on a key: `Ctrl+Shift+Z`.
    #[must_use]
    pub fn written(self) -> String {
        let mut text = String::new();
        if self.command {
            text.push_str("Ctrl+");
        }
        if self.shift {
            text.push_str("Shift+");
        }
        match self.key {
            Key::Char(c) => text.push(c.to_ascii_uppercase()),
            Key::Enter => text.push_str("Enter"),
            Key::Escape => text.push_str("Esc"),
            Key::Delete => text.push_str("Del"),
            Key::PageUp => text.push_str("Page Up"),
            Key::PageDown => text.push_str("Page Down"),
            Key::Space => text.push_str("Space"),
            other => text.push_str(&format!("{other:?}")),
        }
        text
    }
}

macro_rules! actions {
    ($($variant:ident, $id:literal, $name:literal, [$($chord:expr),*];)+) => {
        /// Something that can be done.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Action {
            $(#[doc = $name] $variant,)+
        }
        impl Action {
            /// All of them, in the order in which Ask lists them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];
            /// A name for tests and links, kebab-case.
            #[must_use]
            pub fn id(self) -> &'static str { match self { $(Self::$variant => $id),+ } }
            /// The words on screen, in English.
            #[must_use]
            pub fn name(self) -> &'static str { match self { $(Self::$variant => $name),+ } }
            /// The keys for it.
            #[must_use]
            pub fn chords(self) -> &'static [Chord] { match self { $(Self::$variant => const { &[$($chord),*] }),+ } }
        }
    };
}

actions! {
    Pick, "pick", "Pick and move", [plain('v')];
    PullRun, "pull-run", "Pull a run of wire", [plain('w')];
    OpenShelf, "shelf", "Open the shelf of parts", [plain('a')];
    Meter, "meter", "Take the meter in hand", [plain('m')];
    Hand, "hand", "Shift the paper", [plain('h')];
    Ask, "ask", "Ask: find a part, run, check or action", [plain('/'), command('k')];
    WhatFeeds, "what-feeds", "What feeds this?", [plain('f')];
    Details, "details", "Details of what is picked", [named(Key::Enter)];
    Rename, "rename", "Rename", [named(Key::F2)];
    Turn, "turn", "Turn clockwise", [plain('r')];
    TurnBack, "turn-back", "Turn anticlockwise", [shift('r')];
    Delete, "delete", "Delete", [named(Key::Delete)];
    Undo, "undo", "Undo", [command('z')];
    Redo, "redo", "Redo", [command_shift('z'), command('y')];
    Cut, "cut", "Cut", [command('x')];
    Copy, "copy", "Copy", [command('c')];
    Paste, "paste", "Paste", [command('v')];
    Duplicate, "duplicate", "Duplicate", [command('d')];
    PickAll, "pick-all", "Pick everything on the sheet", [command('a')];
    Splice, "splice", "Splice the run", [plain('j')];
    MoveEnd, "move-end", "Put an end of the run elsewhere", [plain('e')];
    NextBend, "next-bend", "Take the next bend of the run in hand", [plain('k')];
    Straighten, "straighten", "Let the run find its own way again", [shift('k')];
    TidySheet, "tidy-sheet", "Tidy the arrangement of the whole sheet", [shift('t')];
    NextFinding, "next-finding", "Next finding", [plain('n')];
    PreviousFinding, "previous-finding", "Previous finding", [shift('n')];
    MendFinding, "mend", "Mend the finding shown", [Chord { key: Key::Enter, command: false, shift: true }];
    MendAll, "mend-all", "Mend all that needs no choice of yours", [shift('m')];
    NextPart, "next-part", "Next part", [plain(']')];
    PreviousPart, "previous-part", "Previous part", [plain('[')];
    OverlayCurrent, "overlay-current", "Overlay: current", [plain('1')];
    OverlayVoltage, "overlay-voltage", "Overlay: voltage", [plain('2')];
    OverlayHeat, "overlay-heat", "Overlay: heat", [plain('3')];
    OverlayProtection, "overlay-protection", "Overlay: protection", [plain('4')];
    OverlaySignal, "overlay-signal", "Overlay: signal", [plain('5')];
    OverlaySpeakers, "overlay-speakers", "Overlay: speakers", [plain('6')];
    OverlayNone, "overlay-none", "No overlay", [plain('0')];
    ZoomIn, "zoom-in", "Enlarge", [plain('+'), plain('=')];
    ZoomOut, "zoom-out", "Reduce", [plain('-')];
    Fit, "fit", "Show the whole sheet", [named(Key::Home)];
    FitPicked, "fit-picked", "Show what is picked", [plain('z')];
    SheetBefore, "sheet-before", "Turn to the sheet before", [named(Key::PageUp)];
    SheetAfter, "sheet-after", "Turn to the next sheet", [named(Key::PageDown)];
    LayUnder, "lay-under", "Lay another sheet under this one", [shift('u')];
    MeterVolts, "meter-volts", "Meter: volts", [];
    MeterAmps, "meter-amps", "Meter: amps in a run", [];
    MeterTone, "meter-tone", "Meter: volts AC under a test tone", [];
    MeterOhms, "meter-ohms", "Meter: ohms, supply isolated", [];
    KeepReading, "keep-reading", "Keep this reading of the meter", [plain('s')];
    Readings, "readings", "Readings kept", [plain('g')];
    FindFault, "find-fault", "Find the fault: what to measure next", [plain('d')];
    Prove, "prove", "Shortest proof: the readings to take", [plain('u')];
    BreakIt, "break-it", "Break it: what happens when something fails", [plain('x')];
    Record, "record", "Record what is found", [plain('i')];
    Thread, "thread", "Complaints, quote and what becomes of things", [plain('c')];
    Papers, "papers", "Papers: lists to buy, cut, label, measure, checklists", [plain('y')];
    BodyPlan, "body-plan", "Body plan: the vehicle from above", [plain('p')];
    SizeIt, "size-it", "Size all runs and fuses", [plain('q')];
    RouteAll, "route-all", "Lay all runs through the body anew", [];
    OpenFile, "open-file", "Open a job file", [command('o')];
    SaveFile, "save-file", "Save the job as a file", [command('s')];
    NewJob, "new-job", "New empty job", [shift('e')];
    StartSystem, "start-system", "Start a system: a whole plan from one line", [shift('a')];
    Jobs, "jobs", "Jobs kept here", [plain('b')];
    Lessons, "lessons", "Lessons: good and bad, side by side", [plain('t')];
    ExportSvg, "export-svg", "Export the sheet as SVG", [];
    ExportPng, "export-png", "Export the sheet as PNG", [];
    Print, "print", "Print the sheet", [command('p')];
    Share, "share", "Share: a link, a code to scan or a page file", [shift('l')];
    MakeLesson, "make-lesson", "Make a lesson of this", [];
    Limits, "limits", "Conditions and limits of the job", [plain('l')];
    Outline, "outline", "The system as an outline", [plain('o')];
    Paper, "paper", "Light or dark paper", [];
    English, "english", "Language: English", [];
    German, "german", "Language: Deutsch (German)", [];
    Metres, "metres", "Lengths in metres", [];
    Feet, "feet", "Lengths in feet and inches", [];
    SquareMillimetres, "square-millimetres", "Wire sizes in mm²", [];
    Gauge, "gauge", "Wire sizes in AWG", [];
    Keys, "keys", "List of keys", [plain('?')];
}

impl Action {
    /// The action of a key press.
    #[must_use]
    pub fn of_key(key: Key, mods: Mods) -> Option<Self> {
        Self::ALL
            .iter()
            .copied()
            .find(|action| action.chords().iter().any(|chord| chord.is(key, mods)))
    }
    /// The action of a name.
    #[must_use]
    pub fn of_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|action| action.id() == id)
    }
    /// The words on screen.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(format!("action-{}", self.id()))
    }
    /// Its first key as printed, or nothing.
    #[must_use]
    pub fn key(self) -> String {
        self.chords()
            .first()
            .map(|chord| chord.written())
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ordered::OrderedSet;

    #[test]
    fn no_key_does_two_things_and_no_name_stands_twice() {
        let mut ids = OrderedSet::new();
        for action in Action::ALL {
            assert!(ids.insert(action.id()), "{}", action.id());
            assert_eq!(Action::of_id(action.id()), Some(*action));
            for chord in action.chords() {
                let mods = Mods {
                    shift: chord.shift,
                    command: chord.command,
                    alt: false,
                };
                assert_eq!(
                    Action::of_key(chord.key, mods),
                    Some(*action),
                    "{}",
                    chord.written()
                );
            }
        }
    }

    #[test]
    fn every_action_has_its_words() {
        for action in Action::ALL {
            assert_eq!(action.said().to_string(), action.name(), "{}", action.id());
        }
    }

    #[test]
    fn keys_are_written_as_on_the_keyboard() {
        assert_eq!(Action::Undo.key(), "Ctrl+Z");
        assert_eq!(Action::Redo.key(), "Ctrl+Shift+Z");
        assert_eq!(Action::Ask.key(), "/");
        assert_eq!(Action::SheetAfter.key(), "Page Down");
    }
}
