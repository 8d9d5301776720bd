//! The drawing: geometry of the board, symbols, ways of the runs, arrangement, and the display list that every painter
//! replays. It knows the sheet and the engine's numbers; of findings it knows only the marks it is given.

mod display;
pub use display::*;
