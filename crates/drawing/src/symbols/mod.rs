//! Graphical symbols of the kinds, after IEC 60617 (from memory), drawn about the origin and not turned: a feed comes
//! from the left, a return leaves below. A symbol's *pins* are where leads from the outline's studs reach it; they lie
//! on the grid of 10, so that a lead is one straight line.

mod pieces;
pub(crate) use pieces::FINE;
mod sound;
mod supply;

use kurbo::{BezPath, Point, Vec2};
use model::PartKind;
use words::Words;

/// A symbol.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Symbol {
    /// Half its width and half its height, pins included.
    pub half: Vec2,
    /// Lines, with their widths.
    pub lines: Vec<(BezPath, f64)>,
    /// Dashed lines: mechanical links, loops inside a plug.
    pub dashed: Vec<BezPath>,
    /// Filled shapes.
    pub filled: Vec<BezPath>,
    /// Short texts, standing upright however the symbol is turned: text, middle of its baseline, size.
    pub words: Vec<(String, Point, f64)>,
    /// Where the lead of a terminal reaches it.
    pub pins: Vec<(String, Point)>,
}

impl Symbol {
    /// Where the lead of this terminal reaches the symbol; `None` when its stud has no lead.
    #[must_use]
    pub fn pin(&self, terminal: &str) -> Option<Point> {
        self.pins
            .iter()
            .find(|(name, _)| name == terminal)
            .map(|(_, at)| *at)
    }
}

/// The symbol of a part; what is written in it is written as this reader writes.
#[must_use]
pub fn symbol(kind: &PartKind, words: &Words) -> Symbol {
    match kind {
        PartKind::Battery(_) => supply::battery(),
        PartKind::Alternator(_) => supply::alternator(),
        PartKind::Vehicle(_) => supply::vehicle(),
        PartKind::Converter(_) => supply::converter(),
        PartKind::Fuse(fuse) => supply::fuse(fuse.state),
        PartKind::Breaker(breaker) => supply::breaker(breaker.state),
        PartKind::Block(block) => supply::block(block, words),
        PartKind::Bus(bus) => supply::bus(bus.places),
        PartKind::Splice(splice) => supply::splice(splice.places),
        PartKind::Plug(plug) => supply::plug(&plug.cavities, &plug.loops, plug.mated),
        PartKind::Adapter(adapter) => {
            supply::plug(&adapter.cavities, &model::written::Loops::default(), true)
        }
        PartKind::Ground(_) => supply::ground(),
        PartKind::Relay(_) => supply::relay(),
        PartKind::Switch(switch) => supply::switch(switch.closed),
        PartKind::Isolator(isolator) => supply::isolator(isolator),
        PartKind::Capacitor(_) => supply::capacitor(),
        PartKind::Load(load) => supply::load(load.law),
        PartKind::HeadUnit(_) => sound::head_unit(),
        PartKind::Processor(_) => sound::processor(),
        PartKind::LineConverter(_) => sound::line_converter(),
        PartKind::Amplifier(_) => sound::amplifier(),
        PartKind::Speaker(speaker) => sound::speaker(speaker.coils),
        PartKind::Crossover(_) => sound::crossover(),
        PartKind::InlineCapacitor(_) => sound::inline_capacitor(),
    }
}
