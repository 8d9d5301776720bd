//! Breaks: what fails, as data. A break is thrown on purpose to see what follows, or suspected behind what a meter reads.

use crate::quantity::{Ohms, Share};
use crate::{PartId, RunId, TerminalRef};

/// Something that fails.
#[derive(Clone, Debug, PartialEq)]
pub enum Break {
    /// A run is cut.
    Cut {
        /// The run.
        run: RunId,
    },
    /// A fuse, breaker, switch, isolator or plug is open, or one output of a fused block.
    Open {
        /// The part.
        part: PartId,
        /// The output's terminal, where the part holds several devices.
        output: Option<crate::TerminalName>,
    },
    /// A run touches the body.
    Grounded {
        /// The run.
        run: RunId,
        /// Where along it: 0 at its `from` end, 1 at its `to` end.
        at: Share,
        /// Through what resistance; the touch itself, in ohms.
        through: Ohms,
    },
    /// Two terminals touch.
    Joined {
        /// The terminals.
        terminals: [TerminalRef; 2],
        /// Through what resistance.
        through: Ohms,
    },
    /// A run has so much more resistance than it should, at one of its ends or along it.
    Resistive {
        /// The run.
        run: RunId,
        /// How much more.
        more: Ohms,
    },
    /// A ground point, or a part that passes current, has so much more resistance than it should.
    Poor {
        /// The part.
        part: PartId,
        /// How much more.
        more: Ohms,
    },
    /// Plus and minus of a part, or of one of its voice coils, are exchanged.
    Reversed {
        /// The part.
        part: PartId,
        /// The voice coil, from 1, where only one is.
        coil: Option<u8>,
    },
    /// A part is dead: nothing is left of it but the joints of the wires on it.
    Dead {
        /// The part.
        part: PartId,
    },
}
