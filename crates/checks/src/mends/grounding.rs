//! Grounds that a mend makes or moves. Where on the body one goes is for somebody to choose who sees it.

use crate::context::Ctx;
use crate::mends::adding::{Adding, wire};
use crate::mends::{set_part, set_run};
use crate::wires::size_of;
use crate::wiring::BODY;
use model::conductor::{Colour, Size};
use model::kinds::supply::{Ground, GroundSurface};
use model::quantity::{Metres, SquareMm};
use model::{Edit, End, Fact, PartId, PartKind, RunId, TerminalRef};
use words::{Saying, say};

/// What is left to choose about a ground.
pub(crate) fn where_to() -> Saying {
    say!("mend-choice-ground")
}

/// What is left to choose about a way back.
pub(crate) fn back_by() -> Saying {
    say!("mend-choice-back")
}

/// Length of a ground lead that is laid for a ground close by: below the limit with something to spare.
fn close_by(ctx: &Ctx<'_>) -> Fact<Metres> {
    let limit = ctx.limit("ground-lead-length").unwrap_or(0.45);
    Fact::Given(Metres((limit * 0.9 * 20.0).floor() / 20.0))
}

pub(crate) fn bare_metal() -> Ground {
    Ground {
        surface: Fact::Given(GroundSurface::BareMetal),
        ..Ground::default()
    }
}

/// A way back for a part from this terminal, as thick as the thickest wire on that other one: to a new ground point close by
/// where the body leads on to what feeds the part, else to the negative pole of that.
pub(crate) fn way_back(ctx: &Ctx<'_>, part: PartId, terminal: &str, as_on: &str) -> Option<Edit> {
    let feeds = ctx.runs_on(part, as_on);
    let sizes = feeds.iter().map(|run| size_of(ctx, *run));
    let size = sizes.reduce(|a, b| if a.area() >= b.area() { a } else { b });
    let size = size
        .filter(|size| size.area().0 > 0.0)
        .unwrap_or(Size::Metric(SquareMm(2.5)));
    let feed = ctx
        .study
        .circuits
        .get(&part)
        .and_then(|circuit| circuit.feeds.first());
    let island = ctx.whole();
    let pole = feed.and_then(|feed| ctx.negative_pole(feed.source));
    let through_body = pole.is_none_or(|pole| island.get(pole) == island.get(BODY));
    let mut adding = Adding::new(ctx);
    let from = TerminalRef::new(part, terminal);
    let told = ctx.terminal(part, terminal);
    if let (Some(feed), false) = (feed, through_body) {
        let pole = if matches!(ctx.kind(feed.source)?, PartKind::Alternator(_)) {
            "case"
        } else {
            "-"
        };
        let length = Fact::Assumed(Metres(feed.length.0.max(0.1)));
        let to = TerminalRef::new(feed.source, pole);
        let (_, tag) = adding.run(wire(from, to, size, length, Colour::Black));
        let to = ctx.terminal(feed.source, pole);
        let name = say!("mend-add-run", run = tag, from = told, to = to);
        return Some(Edit::new(name, adding.changes));
    }
    let (ground, tag) = adding.part(bare_metal(), part);
    let to = TerminalRef::new(ground, "stud");
    adding.run(wire(from, to, size, close_by(ctx), Colour::Black));
    let name = say!("mend-add-ground", ground = tag, terminal = told);
    Some(Edit::new(name, adding.changes))
}

/// The ground lead of a part, of one run, made short: its ground point moved close by, or a new one where others use it too.
pub(crate) fn ground_closer(ctx: &Ctx<'_>, part: PartId, lead: RunId) -> Option<Edit> {
    let mut run = ctx.run(lead)?.clone();
    let ends = run.ends().map(|end| end.terminal().cloned());
    let own = ends.iter().flatten().find(|at| at.part == part)?;
    let stud = ends
        .iter()
        .flatten()
        .find(|at| matches!(ctx.kind(at.part), Some(PartKind::Ground(_))))?
        .clone();
    let at_end = usize::from(ends.first().and_then(Option::as_ref) == Some(own));
    run.route = Vec::new();
    run.laying.guards = model::laying::Guards::default();
    run.wire.length = close_by(ctx);
    run.bends = Vec::new();
    let mut adding = Adding::new(ctx);
    let name = if ctx.runs_of(stud.part).count() == 1 {
        let mut ground = ctx.part(stud.part)?.clone();
        ground.place = ctx.part(part)?.place.clone();
        let name = say!(
            "mend-ground-closer",
            ground = &ground.tag,
            part = ctx.part_tag(part)
        );
        adding.changes.push(set_part(stud.part, ground));
        name
    } else {
        let (ground, tag) = adding.part(bare_metal(), part);
        let on = End::On(TerminalRef::new(ground, "stud"));
        if at_end == 1 {
            run.to = on;
        } else {
            run.from = on;
        }
        say!("mend-ground-own", ground = tag, run = &run.tag)
    };
    adding.changes.push(set_run(lead, run));
    Some(Edit::new(name, adding.changes))
}
