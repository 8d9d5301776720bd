//! `signal-scattered`: signal leads of one amplifier that take different ways.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::lie::Lie;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use body::{Point, Walk};
use circuit::Purpose;
use model::conductor::FittedBy;
use model::{Edit, PartId, Role, Run, RunId};
use ordered::Sort as _;
use words::{Unit, say, told};

pub(crate) static CHECK: Check = Check {
    name: "signal-scattered",
    grade: Grade::Tidy,
    group: CheckGroup::SignalAndControl,
    example: "\
body estate
head H1 line-outputs=2 power=20W place=footwell-left
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing place=side-left #~ signal-scattered
speaker LS1 4ohm power=80W full front-left place=side-left
speaker LS2 4ohm power=80W full front-right place=side-left
run W1 H1.front-l A1.in1 0.5mm2 BK ends=plug/plug route=carpet-front-left/tunnel-rear-left/seat-load-left/floor-way-left support-spacing=0.4m #~ signal-scattered
run W2 H1.front-r A1.in2 0.5mm2 BK ends=plug/plug route=carpet-front-left/carpet-front-right/sill-front-right/sill-rear-right/arch-way-right/floor-way-right/floor-way-left support-spacing=0.4m #~ signal-scattered
run W3 A1.out1+ LS1.+ 2.5mm2 WH
run W4 A1.out1- LS1.- 2.5mm2 WHBK
run W5 A1.out2+ LS2.+ 2.5mm2 GY
run W6 A1.out2- LS2.- 2.5mm2 GYBK",
    instead: "\
body estate
head H1 line-outputs=2 power=20W place=footwell-left
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing place=side-left
speaker LS1 4ohm power=80W full front-left place=side-left
speaker LS2 4ohm power=80W full front-right place=side-left
run W1 H1.front-l A1.in1 0.5mm2 BK ends=plug/plug route=carpet-front-left/tunnel-rear-left/seat-load-left/floor-way-left support-spacing=0.4m
run W2 H1.front-r A1.in2 0.5mm2 BK ends=plug/plug route=carpet-front-left/tunnel-rear-left/seat-load-left/floor-way-left support-spacing=0.4m
run W3 A1.out1+ LS1.+ 2.5mm2 WH
run W4 A1.out1- LS1.- 2.5mm2 WHBK
run W5 A1.out2+ LS2.+ 2.5mm2 GY
run W6 A1.out2- LS2.- 2.5mm2 GYBK",
    limits: &["signal-scatter"],
    since: "0.1.0",
    run,
};

/// A signal lead and its way.
#[derive(Clone, Copy)]
struct Lead<'a> {
    id: RunId,
    run: &'a Run,
    walk: &'a Walk,
}

impl Lead<'_> {
    /// Its ends, in no order.
    fn ends(&self) -> [usize; 2] {
        let (a, b) = (self.walk.start, self.walk.end());
        [a.min(b), a.max(b)]
    }
    fn passages(&self) -> Vec<usize> {
        let mut all: Vec<usize> = self.walk.passages().collect();
        all.order();
        all
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let (Some(lie), Some(limit)) = (&ctx.lie, ctx.limit("signal-scatter")) else {
        return;
    };
    for id in ctx.sheet.parts.keys() {
        let mut leads = leads(ctx, lie, *id);
        while let Some(first) = leads.first().copied() {
            let (same, others): (Vec<_>, Vec<_>) =
                leads.into_iter().partition(|lead| lead.ends() == first.ends());
            leads = others;
            judge(ctx, out, lie, *id, &same, limit);
        }
    }
}

/// Signal leads to the inputs of a part, of those that have a way.
fn leads<'a>(ctx: &'a Ctx<'_>, lie: &'a Lie, part: PartId) -> Vec<Lead<'a>> {
    let lands = |run: &Run| {
        run.ends()
            .into_iter()
            .filter_map(|end| end.terminal())
            .any(|at| at.part == part && matches!(ctx.role(at), Some(Role::LineIn(_) | Role::LevelIn { .. })))
    };
    let all = ctx.sheet.runs.iter().enumerate();
    all.filter(|(_, (id, run))| {
        run.fitted_by != FittedBy::Maker && ctx.purpose(**id) == Purpose::Signal && lands(run)
    })
    .filter_map(|(at, (id, run))| {
        let walk = lie.walk(at).filter(|walk| !walk.steps.is_empty())?;
        Some(Lead { id: *id, run, walk })
    })
    .collect()
}

fn judge(ctx: &Ctx<'_>, out: &mut Findings, lie: &Lie, part: PartId, leads: &[Lead<'_>], limit: f64) {
    // The way that most of them take; of several the first.
    let takes = |way: &[usize]| leads.iter().filter(|lead| lead.passages() == way).count();
    let mut main: Option<(Lead<'_>, usize)> = None;
    for lead in leads {
        let count = takes(&lead.passages());
        if main.is_none_or(|(_, most)| count > most) {
            main = Some((*lead, count));
        }
    }
    let Some((main, _)) = main else { return };
    let mut apart: Vec<(Lead<'_>, f64)> = Vec::new();
    for lead in leads {
        let far = farthest(lie, lead.walk, main.walk);
        if far > limit {
            apart.push((*lead, far));
        }
    }
    let Some(far) = apart.iter().map(|(_, far)| *far).reduce(f64::max) else {
        return;
    };
    let ids: Vec<RunId> = apart.iter().map(|(lead, _)| lead.id).collect();
    let route = main.walk.route(&lie.plan);
    let changes = apart.iter().map(|(lead, _)| {
        let mut run = lead.run.clone();
        run.route.clone_from(&route);
        if lead.walk.start != main.walk.start {
            run.route.reverse();
        }
        run.laying.guards = main.run.laying.guards.clone();
        set_run(lead.id, run)
    });
    let locked = apart.iter().any(|(lead, _)| lead.run.laying.way_locked);
    let name = say!("mend-lay-with", runs = ctx.run_tags(&ids), other = &main.run.tag);
    let mend = (!locked).then(|| Edit::new(name, changes.collect()));
    out.add(
        CHECK
            .finding(
                say!(
                    "signal-scattered-what",
                    runs = ctx.run_tags(&ids),
                    part = ctx.part_tag(part),
                    other = &main.run.tag,
                    far = told(far, limit, Unit::Metre)
                ),
                say!("signal-scattered-remedy", part = ctx.part_tag(part)),
            )
            .parts([part])
            .runs(ids.iter().copied().chain([main.id]))
            .measure(far, limit, "m", Some("signal-scatter"))
            .mend(mend),
    );
}

/// How far a way gets from another, in metres: of the places that it passes the one farthest from the other's line.
fn farthest(lie: &Lie, walk: &Walk, from: &Walk) -> f64 {
    let points = |walk: &Walk| -> Vec<Point> {
        let places = walk.places().filter_map(|at| lie.plan.places.get(at));
        places.map(|place| place.at).collect()
    };
    let line = points(from);
    let off = |point: Point| {
        let pieces = line.windows(2).filter_map(|ends| match ends {
            [a, b] => Some(to_piece(point, *a, *b)),
            _ => None,
        });
        pieces.fold(f64::INFINITY, f64::min)
    };
    points(walk)
        .into_iter()
        .map(off)
        .filter(|far| far.is_finite())
        .fold(0.0, f64::max)
}

/// Distance of a point from the straight piece between two others, in metres.
fn to_piece(point: Point, a: Point, b: Point) -> f64 {
    let (dx, dy, dz) = (b.x - a.x, b.y - a.y, b.z - a.z);
    let squared = dx * dx + dy * dy + dz * dz;
    let along = (point.x - a.x) * dx + (point.y - a.y) * dy + (point.z - a.z) * dz;
    let share = if squared > 0.0 {
        (along / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let foot = Point {
        x: a.x + share * dx,
        y: a.y + share * dy,
        z: a.z + share * dz,
    };
    point.straight(foot).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distance_from_a_piece_of_line() {
        let point = |x: f64, y: f64, z: f64| Point { x, y, z };
        let (a, b) = (point(0.0, 0.0, 0.0), point(2.0, 0.0, 0.0));
        // Beside it, beyond either end (3-4-5), and on it.
        for (from, far) in [
            (point(1.0, 0.0, 0.7), 0.7),
            (point(5.0, 4.0, 0.0), 5.0),
            (point(-3.0, 0.0, 4.0), 5.0),
            (point(0.5, 0.0, 0.0), 0.0),
        ] {
            assert!((to_piece(from, a, b) - far).abs() < 1e-12, "{from:?}");
        }
        // A piece without length is a point.
        assert!((to_piece(point(3.0, 4.0, 0.0), a, a) - 5.0).abs() < 1e-12);
    }
}
