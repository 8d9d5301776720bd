//! Routes: the best and the next best against a library's shortest paths on random bodies, and what the trade asks of them.

use body::{Plan, propose, route_all};
use model::body::{Body, BodyForm};
use model::fact::Fact::Given;
use model::{Job, RunId, SheetKind};
use petgraph::graph::{EdgeIndex, NodeIndex, UnGraph};
use proptest::prelude::*;
use words::Words;

/// The plan as a library's graph, its passages weighing what `weigh` says.
fn graph(plan: &Plan, weigh: impl Fn(usize) -> f64) -> (UnGraph<(), f64>, Vec<NodeIndex>) {
    let mut graph = UnGraph::default();
    let nodes: Vec<NodeIndex> = plan.places.iter().map(|_| graph.add_node(())).collect();
    for (at, passage) in plan.passages.iter().enumerate() {
        graph.add_edge(nodes[passage.ends[0]], nodes[passage.ends[1]], weigh(at));
    }
    (graph, nodes)
}

fn least(graph: &UnGraph<(), f64>, from: NodeIndex, to: NodeIndex) -> Option<f64> {
    petgraph::algo::astar(graph, from, |at| at == to, |edge| *edge.weight(), |_| 0.0).map(|(cost, _)| cost)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]
    /// On random bodies, with places and passages of their own, between random places: a route told by its two ends alone
    /// is as long as petgraph's shortest path.
    #[test]
    fn a_route_told_by_its_ends_is_the_shortest(
        told in testkit::any::any_body(),
        form in proptest::sample::select(BodyForm::ALL),
        from in any::<proptest::sample::Index>(),
        to in any::<proptest::sample::Index>(),
    ) {
        let mut body = told;
        body.shape.form = Given(form);
        let plan = Plan::of(&body).expect("it has a form");
        let (from, to) = (from.index(plan.places.len()), to.index(plan.places.len()));
        let mut job = testkit::job("ground G1\nground G2\nrun W1 G1.stud G2.stud");
        let sheet = job.sheets.entry(SheetKind::Plan).or_default();
        let mut run = sheet.runs[&RunId(1)].clone();
        run.route = vec![plan.places[from].name.clone(), plan.places[to].name.clone()];
        let walk = plan.walk(sheet, &run).expect("all places can be reached");
        let (graph, nodes) = graph(&plan, |at| plan.passages[at].metres().0);
        let library = least(&graph, nodes[from], nodes[to]).expect("it is connected");
        let ours: f64 = walk.passages().map(|at| plan.passages[at].metres().0).sum();
        // A direct passage is taken even where a way round is shorter, as only a job's own lengths can make it.
        let direct = plan.passages.iter().any(|it| it.across(from) == Some(to));
        prop_assert!(direct && ours >= library - 1e-9 || (ours - library).abs() < 1e-9, "{ours} {library}");
    }

    /// The route proposed first costs as much as the library's shortest path over the same costs, and the next best of all
    /// as much as the least of those that lack one passage of the best: a way that has all of them is the best itself.
    #[test]
    fn the_two_best_are_the_two_best(
        form in proptest::sample::select(BodyForm::ALL),
        weights in proptest::collection::vec(0.1..20.0_f64, 140),
        from in any::<proptest::sample::Index>(),
        to in any::<proptest::sample::Index>(),
    ) {
        let mut body = Body::default();
        body.shape.form = Given(form);
        // Random costs through lengths that the job tells: harmless passages cost what they are long.
        let plan = Plan::of(&body).expect("it has a form");
        for (passage, weight) in plan.passages.iter().zip(&weights) {
            let own = body.passages.entry(passage.name.clone()).or_default();
            own.length = Given(model::quantity::Metres(*weight));
            for fact in [&mut own.moving, &mut own.crush, &mut own.wet, &mut own.sharp, &mut own.airbag] {
                *fact = Given(false);
            }
            own.heat = Given(model::conductor::Surroundings::Cabin);
            own.kind = Given(model::body::PassageKind::Open);
        }
        for place in &plan.places {
            let own = body.places.entry(place.name.clone()).or_default();
            for fact in [&mut own.moving, &mut own.crush, &mut own.wet, &mut own.sharp, &mut own.airbag] {
                *fact = Given(false);
            }
        }
        let plan = Plan::of(&body).expect("it has a form");
        let (from, to) = (from.index(plan.places.len()), to.index(plan.places.len()));
        prop_assume!(from != to);
        let mut job = testkit::job("ground G1\nground G2\nrun W1 G1.stud G2.stud");
        let sheet = job.sheets.entry(SheetKind::Plan).or_default();
        for (part, place) in sheet.parts.values_mut().zip([from, to]) {
            part.place = Some(plan.places[place].name.clone());
        }
        let proposals = propose(&plan, sheet, RunId(1));
        let (graph, nodes) = graph(&plan, |at| plan.passages[at].metres().0);
        let library = least(&graph, nodes[from], nodes[to]).expect("it is connected");
        prop_assert!((proposals[0].cost - library).abs() < 1e-9, "{} {library}", proposals[0].cost);
        let second = proposals[0]
            .walk
            .passages()
            .filter_map(|barred| {
                let mut without = graph.clone();
                without[EdgeIndex::new(barred)] = f64::INFINITY;
                least(&without, nodes[from], nodes[to]).filter(|cost| cost.is_finite())
            })
            .reduce(f64::min);
        match (proposals.get(1), second) {
            // The second that is shown may be a later one that differs in more.
            (Some(shown), Some(second)) => prop_assert!(shown.cost >= second - 1e-9),
            (None, second) => prop_assert_eq!(second, None),
            (Some(shown), None) => prop_assert!(false, "{:?}", shown.route),
        }
    }
}

const ESTATE: &str = "body estate\n\
    battery B1 place=battery-tray\n\
    fuse F1 60A place=battery-tray\n\
    head H1 place=dash-middle\n\
    amplifier A1 place=side-right\n\
    ground G1 place=wheel-arch-right\n\
    run W1 B1.+ F1.in 16mm2 0.3m\n\
    run W2 F1.out A1.+ 16mm2\n\
    run W3 A1.- G1.stud 16mm2\n\
    run W4 H1.front-l A1.in1 0.5mm2\n\
    run W5 H1.front-r A1.in2 0.5mm2\n\
    run W6 H1.rem A1.rem 0.75mm2\n";

fn estate() -> (Job, Plan) {
    let job = testkit::job(ESTATE);
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    (job, plan)
}

#[test]
fn feeds_keep_apart_from_signal_leads_which_keep_together() {
    let (mut job, plan) = estate();
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    let routed = route_all(&plan, sheet, SheetKind::Plan);
    assert_eq!(routed.edit.name, "Lay the ways of 5 runs anew");
    assert!(routed.without.is_empty());
    job.apply(routed.edit);
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    let route = |id: u32| sheet.runs[&RunId(id)].route.clone();
    assert_eq!(
        route(4),
        route(5),
        "signal leads of one amplifier travel together"
    );
    let feed = plan.walk(sheet, &sheet.runs[&RunId(2)]).expect("it has a way");
    let signal = plan.walk(sheet, &sheet.runs[&RunId(4)]).expect("it has a way");
    let beside: f64 = signal
        .passages()
        .filter(|at| feed.passages().any(|other| other == *at))
        .map(|at| plan.passages[at].metres().0)
        .sum();
    // The amplifier stands on one side, so that the last piece is shared; the sills are not.
    assert!(
        beside < 1.0,
        "{beside} m beside the feed: {:?} {:?}",
        route(2),
        route(4)
    );
    for walk in [&feed, &signal] {
        for at in walk.passages() {
            let facts = &plan.passages[at].facts;
            assert!(
                !facts.crush.or(false) && !facts.moving.or(false) && !facts.airbag.or(false),
                "{}",
                plan.passages[at].name
            );
        }
    }
    // Laying them anew changes nothing, since each still has the best way there is for it.
    assert_eq!(route_all(&plan, sheet, SheetKind::Plan).changed, []);
}

#[test]
fn a_locked_run_stays_and_the_others_make_room() {
    let (mut job, plan) = estate();
    let under_the_seat = ["seat-rail-left", "seat-tunnel-left"].map(str::to_owned).to_vec();
    let sheet = job.sheets.entry(SheetKind::Plan).or_default();
    let feed = sheet.runs.get_mut(&RunId(2)).expect("it is there");
    feed.route.clone_from(&under_the_seat);
    feed.laying.way_locked = true;
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    let routed = route_all(&plan, sheet, SheetKind::Plan);
    assert!(!routed.changed.contains(&RunId(2)));
    job.apply(routed.edit);
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    assert_eq!(sheet.runs[&RunId(2)].route, under_the_seat);
    let feed = plan.walk(sheet, &sheet.runs[&RunId(2)]).expect("it has a way");
    let signal = plan.walk(sheet, &sheet.runs[&RunId(4)]).expect("it has a way");
    let tunnel: Vec<_> = feed.passages().collect();
    let shared: f64 = signal
        .passages()
        .filter(|at| tunnel.contains(at))
        .map(|at| plan.passages[at].metres().0)
        .sum();
    assert!(shared < 1.5, "{shared}");
}

#[test]
fn two_routes_are_shown_with_what_speaks_for_them() {
    let (job, plan) = estate();
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    let proposals = propose(&plan, sheet, RunId(2));
    assert_eq!(proposals.len(), 2);
    assert!(proposals[0].cost <= proposals[1].cost);
    assert_ne!(proposals[0].route, proposals[1].route);
    let told: Vec<String> = proposals[0]
        .reasons
        .iter()
        .map(|reason| Words::english().say(reason))
        .collect();
    assert!(told.iter().any(|it| it.contains("of wire")), "{told:?}");
    assert!(told.iter().any(|it| it.contains("No seat, hinge")), "{told:?}");
    assert!(
        told.iter().any(|it| it.contains("heat of the engine bay")),
        "{told:?}"
    );
    // A route that is taken over is the way that was shown.
    let mut run = sheet.runs[&RunId(2)].clone();
    run.route.clone_from(&proposals[0].route);
    assert_eq!(
        plan.walk(sheet, &run).expect("it has a way").length(&plan, &run),
        proposals[0].length
    );
}

#[test]
fn the_way_a_run_takes_is_judged_as_well() {
    let (mut job, plan) = estate();
    let sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
    assert_eq!(body::assess(&plan, sheet, RunId(4)), None, "it has no way yet");
    let mut lay = |id: u32, route: &str| {
        let run = sheet.runs.get_mut(&RunId(id)).expect("it is there");
        run.route = route.split('/').map(str::to_owned).collect();
    };
    // Signal and feed down the same sill: the feed on the left, the signal led over to it, under the seat.
    lay(2, "bulkhead-grommet-left/sill-front-left/sill-rear-left");
    lay(4, "footwell-left/sill-front-left/sill-rear-left");
    lay(
        5,
        "tunnel-front/seat-tunnel-right/seat-rail-right/sill-rear-right",
    );
    let assess = |id: u32| body::assess(&plan, sheet, RunId(id)).expect("it has a way");
    let told = |id: u32| -> String {
        let all = assess(id).reasons;
        all.iter()
            .map(|it| Words::english().say(it))
            .collect::<Vec<_>>()
            .join(" ")
    };
    // The pieces of sill that both lie in, worked by hand beside the forms: 1.38 + 1.39 m; and from the left wheel arch on
    // both go the shortest way to the amplifier.
    assert!(assess(4).beside[&RunId(2)].0 >= 1.38 + 1.39 - 1e-9);
    assert!(told(4).contains("Lies beside feeds or returns"), "{}", told(4));
    assert!(told(5).contains("under a seat, between its rails"), "{}", told(5));
    assert!(told(5).contains("crushed there"), "{}", told(5));
    assert!(assess(5).cost > propose(&plan, sheet, RunId(5))[0].cost + 20.0);
}

#[test]
fn nothing_is_proposed_where_an_end_has_no_place() {
    let job = testkit::job("body van\nground G1 place=side-left\nground G2\nrun W1 G1.stud G2.stud");
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let sheet = job.sheet(SheetKind::Plan).expect("it is there");
    assert!(propose(&plan, sheet, RunId(1)).is_empty());
    assert_eq!(route_all(&plan, sheet, SheetKind::Plan).without, [RunId(1)]);
}
