//! What the meter in hand shows as an ohmmeter, and what it says of it.

use crate::editor::Editor;
use circuit::OhmsShown;
use model::TerminalRef;
use words::{Saying, Unit, drawn, say};

impl Editor {
    /// What an ohmmeter shows, as a number and written, and a remark. `None` when a terminal is not on the sheet.
    pub(crate) fn ohms_between(
        &self,
        red: &TerminalRef,
        black: &TerminalRef,
    ) -> Option<(Option<f64>, Saying, Option<Saying>)> {
        Some(match circuit::ohms_between(self.sheet(), red, black)? {
            OhmsShown::SamePoint => (Some(0.0), "0 Ω".into(), Some(say!("meter-same-point"))),
            OhmsShown::Open => (None, say!("meter-open"), Some(say!("meter-no-way"))),
            OhmsShown::Ohms(ohms) => (
                Some(ohms.0),
                say!("as-it-stands", text = drawn(ohms.0, Unit::Plain("Ω"))),
                None,
            ),
        })
    }
}
