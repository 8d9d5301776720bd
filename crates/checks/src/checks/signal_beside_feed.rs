//! `signal-beside-feed`: a signal lead that lies beside a feed for long.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::lie::quoted;
use crate::mends::rerouting::reroute;
use crate::registry::{Check, CheckGroup};
use body::Walk;
use circuit::Purpose;
use model::RunId;
use model::conductor::FittedBy;
use ordered::Sort as _;
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "signal-beside-feed",
    grade: Grade::Tidy,
    group: CheckGroup::SignalAndControl,
    example: "\
body estate
battery B1 agm 70Ah cranking=640A place=footwell-left
fuse F1 strip61 30A place=footwell-left
ground E1 bare place=side-left
ground E2 bare place=footwell-left
head H1 line-outputs=2 power=20W place=footwell-left
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" own-fuse=15A input-level=line inputs=2 place=side-left
speaker LS1 4ohm power=80W full front-left place=side-left
speaker LS2 4ohm power=80W full front-right place=side-left
run W1 B1.+ F1.in 10mm2 RD ends=ring/ring
run W2 F1.out A1.+ 10mm2 RD ends=ring/ferrule route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m #~ signal-beside-feed
run W3 A1.- E1.stud 10mm2 BK ends=ferrule/ring
run W4 B1.- E2.stud 10mm2 BK ends=ring/ring
run W5 F1.out H1.30 2.5mm2 YE
run W6 F1.out H1.15 2.5mm2 RD
run W7 H1.31 E2.stud 2.5mm2 BK
run W8 H1.front-l A1.in1 0.5mm2 BK ends=plug/plug route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m #~ signal-beside-feed
run W9 H1.front-r A1.in2 0.5mm2 BK ends=plug/plug route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m #~ signal-beside-feed
run W10 A1.out1+ LS1.+ 2.5mm2 WH
run W11 A1.out1- LS1.- 2.5mm2 WHBK
run W12 A1.out2+ LS2.+ 2.5mm2 GY
run W13 A1.out2- LS2.- 2.5mm2 GYBK
run W14 H1.rem A1.rem 0.5mm2 BU route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m",
    instead: "\
body estate
battery B1 agm 70Ah cranking=640A place=footwell-left
fuse F1 strip61 30A place=footwell-left
ground E1 bare place=side-left
ground E2 bare place=footwell-left
head H1 line-outputs=2 power=20W place=footwell-left
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" own-fuse=15A input-level=line inputs=2 place=side-left
speaker LS1 4ohm power=80W full front-left place=side-left
speaker LS2 4ohm power=80W full front-right place=side-left
run W1 B1.+ F1.in 10mm2 RD ends=ring/ring
run W2 F1.out A1.+ 10mm2 RD ends=ring/ferrule route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m
run W3 A1.- E1.stud 10mm2 BK ends=ferrule/ring
run W4 B1.- E2.stud 10mm2 BK ends=ring/ring
run W5 F1.out H1.30 2.5mm2 YE
run W6 F1.out H1.15 2.5mm2 RD
run W7 H1.31 E2.stud 2.5mm2 BK
run W8 H1.front-l A1.in1 0.5mm2 BK ends=plug/plug route=carpet-front-left/tunnel-rear-left/seat-load-left/floor-way-left support-spacing=0.4m
run W9 H1.front-r A1.in2 0.5mm2 BK ends=plug/plug route=carpet-front-left/tunnel-rear-left/seat-load-left/floor-way-left support-spacing=0.4m
run W10 A1.out1+ LS1.+ 2.5mm2 WH
run W11 A1.out1- LS1.- 2.5mm2 WHBK
run W12 A1.out2+ LS2.+ 2.5mm2 GY
run W13 A1.out2- LS2.- 2.5mm2 GYBK
run W14 H1.rem A1.rem 0.5mm2 BU route=sill-front-left/sill-rear-left/arch-way-left support-spacing=0.4m",
    limits: &["signal-beside-feed-length", "signal-feed-distance"],
    since: "0.1.0",
    run,
};

/// Signal leads that lie beside the same feeds in the same passages.
struct Together {
    passages: Vec<usize>,
    signals: Vec<RunId>,
    metres: f64,
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let (Some(lie), Some(limit)) = (&ctx.lie, ctx.limit("signal-beside-feed-length")) else {
        return;
    };
    let near = ctx.limit("signal-feed-distance").unwrap_or(0.1);
    // By passage: the feeds and returns in it. What lies in one passage is taken as closer than the distance that counts.
    let mut feeds: Vec<Vec<RunId>> = vec![Vec::new(); lie.plan.passages.len()];
    let runs = || ctx.sheet.runs.iter().enumerate();
    for (at, (id, _)) in runs().filter(|(_, (id, _))| ctx.is_supply(**id)) {
        for passage in lie.walk(at).into_iter().flat_map(Walk::passages) {
            if let Some(list) = feeds.get_mut(passage) {
                list.push(*id);
            }
        }
    }
    let in_passage = |at: usize| feeds.get(at).map(Vec::as_slice).unwrap_or_default();
    let beside = |walk: &Walk| -> (Vec<usize>, f64) {
        let shared: Vec<usize> = walk.passages().filter(|at| !in_passage(*at).is_empty()).collect();
        let length = |at: &usize| lie.plan.passages.get(*at).map_or(0.0, |it| it.metres().0);
        let metres = shared.iter().map(length).sum();
        (shared, metres)
    };
    let mut all: Vec<Together> = Vec::new();
    for (at, (id, run)) in runs() {
        let ours = run.fitted_by != FittedBy::Maker && ctx.purpose(*id) == Purpose::Signal;
        let Some(walk) = lie.walk(at).filter(|_| ours) else {
            continue;
        };
        let (mut passages, metres) = beside(walk);
        if metres <= limit {
            continue;
        }
        passages.order();
        match all.iter_mut().find(|it| it.passages == passages) {
            Some(group) => group.signals.push(*id),
            None => all.push(Together {
                passages,
                signals: vec![*id],
                metres,
            }),
        }
    }
    for group in all {
        let mut along: Vec<RunId> = Vec::new();
        for id in group.passages.iter().flat_map(|at| in_passage(*at)) {
            if !along.contains(id) {
                along.push(*id);
            }
        }
        let passages = group.passages.iter().filter_map(|at| lie.plan.passages.get(*at));
        let longest = passages.reduce(|a, b| if b.metres() > a.metres() { b } else { a });
        let Some(longest) = longest else { continue };
        let what = say!(
            "signal-beside-feed-what",
            signals = ctx.run_tags(&group.signals),
            feeds = ctx.run_tags(&along),
            length = told(group.metres, limit, Unit::Metre),
            near = figure(near, Unit::Metre),
            longest = quoted(lie.plan.said_passage(longest))
        );
        let mend = reroute(ctx, &group.signals, &|it| beside(&it.walk).1 <= limit);
        out.add(
            CHECK
                .finding(
                    what,
                    say!("signal-beside-feed-remedy", most = figure(limit, Unit::Metre)),
                )
                .runs(group.signals.iter().copied().chain(along))
                .measure(group.metres, limit, "m", Some("signal-beside-feed-length"))
                .mend(mend),
        );
    }
}
