//! What came of an input: what the page has to do now.

use crate::actions::Action;
use crate::selection::Thing;
use model::{BoardPoint, TerminalRef};

/// Something to open beside the drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Open {
    /// The slip with the details of a thing.
    Details(Thing),
    /// The field for its tag.
    Rename(Thing),
    /// The parts that make sense where a run was dropped on empty paper.
    Offer {
        /// Where the run began.
        from: TerminalRef,
        /// Where it was dropped.
        at: BoardPoint,
    },
    /// The explanation of a finding, by its place in the list.
    Finding(usize),
    /// Closes whatever is open beside the drawing.
    Nothing,
}

/// What came of an input.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Effects {
    /// The picture is another one.
    pub repaint: bool,
    /// The job changed: it wants to be analysed and saved.
    pub edited: bool,
    /// Selection, focus, tool or overlay changed: panels want to be drawn again.
    pub noticed: bool,
    /// Something to open.
    pub open: Option<Open>,
    /// An action that the page itself must do.
    pub outside: Option<Action>,
    /// Words for the line of messages and the screen reader.
    pub say: Option<String>,
    /// Whether the input meant something; if not, the browser may have it.
    pub taken: bool,
}

impl Effects {
    /// Joins what came of two inputs; of things that can be only one, the later wins.
    pub fn join(&mut self, later: Self) {
        self.repaint |= later.repaint;
        self.edited |= later.edited;
        self.noticed |= later.noticed;
        self.taken |= later.taken;
        self.open = later.open.or(self.open.take());
        self.outside = later.outside.or(self.outside.take());
        self.say = later.say.or(self.say.take());
    }
}
