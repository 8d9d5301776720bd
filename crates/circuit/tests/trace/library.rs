//! Against a general graph library, on networks too large and too meshed for brute force. The engine finds what lies on some
//! simple way by cutting the network into blocks; here it is found by flow. A conductor lies on a simple way between two
//! nodes when two ways that share no node lead from it to the one and to the other (Menger's theorem), which is a flow of 2
//! through nodes that carry 1 each.

use crate::networks::{Edge, Graph, random_text};
use circuit::study;
use model::{PartId, PartKind, RunId, Settings};
use ordered::OrderedSet;
use petgraph::algo::{dijkstra, ford_fulkerson, has_path_connecting};
use petgraph::graph::{DiGraph, NodeIndex, UnGraph};

/// Whether edge `at` of the graph lies on a simple way between two nodes.
fn on_a_simple_way(graph: &Graph, at: usize, source: usize, target: usize) -> bool {
    let mut flow = DiGraph::<(), u32>::new();
    // Each node in two halves, with room for one way between them.
    let halves: Vec<(NodeIndex, NodeIndex)> = (0..graph.nodes)
        .map(|_| (flow.add_node(()), flow.add_node(())))
        .collect();
    for &(enter, leave) in &halves {
        flow.add_edge(enter, leave, 1);
    }
    for (other, &(a, b, _)) in graph.edges.iter().enumerate() {
        if other != at {
            flow.add_edge(halves[a].1, halves[b].0, 1);
            flow.add_edge(halves[b].1, halves[a].0, 1);
        }
    }
    let (from, to) = (flow.add_node(()), flow.add_node(()));
    let (a, b, _) = graph.edges[at];
    flow.add_edge(from, halves[a].0, 1);
    flow.add_edge(from, halves[b].0, 1);
    flow.add_edge(halves[source].1, to, 1);
    flow.add_edge(halves[target].1, to, 1);
    a != b && source != target && ford_fulkerson(&flow, from, to).0 == 2
}

/// The graph of the library, without some edges; weighed by length.
fn without(graph: &Graph, sheet: &model::Sheet, left_out: &dyn Fn(usize) -> bool) -> UnGraph<(), f64> {
    let mut out = UnGraph::default();
    for _ in 0..graph.nodes {
        out.add_node(());
    }
    for (at, &(a, b, edge)) in graph.edges.iter().enumerate() {
        if !left_out(at) {
            let length = match edge {
                Edge::Run(run) => sheet.runs[&run].wire.length.value().expect("a length").0,
                Edge::Fuse(_) => 0.0,
            };
            out.add_edge(NodeIndex::new(a), NodeIndex::new(b), length);
        }
    }
    out
}

#[test]
fn feeds_are_what_flows_and_cuts_say() {
    let (mut meshed, mut edges) = (0, 0);
    for seed in 5000..5025 {
        let text = random_text(seed, 8);
        let sheet = testkit::sheet(&text);
        let graph = Graph::of(&sheet);
        edges += graph.edges.len();
        let study = study(&sheet, &Settings::default());
        let of_kind = |is: fn(&PartKind) -> bool| sheet.parts.iter().filter(move |(_, part)| is(&part.is));
        for (load, _) in of_kind(|kind| matches!(kind, PartKind::Load(_))) {
            for (battery, _) in of_kind(|kind| matches!(kind, PartKind::Battery(_))) {
                let (source, target) = (graph.node(*battery, "+"), graph.node(*load, "+"));
                let joined = |graph: &UnGraph<(), f64>| {
                    has_path_connecting(graph, NodeIndex::new(source), NodeIndex::new(target), None)
                };
                let feed = study.circuits[load]
                    .feeds
                    .iter()
                    .find(|feed| feed.source == *battery);
                assert_eq!(
                    feed.is_some(),
                    joined(&without(&graph, &sheet, &|_| false)),
                    "seed {seed}\n{text}"
                );
                let Some(feed) = feed else { continue };
                let on_way: Vec<usize> = (0..graph.edges.len())
                    .filter(|at| on_a_simple_way(&graph, *at, source, target))
                    .collect();
                let runs: OrderedSet<RunId> = on_way
                    .iter()
                    .filter_map(|at| match graph.edges[*at].2 {
                        Edge::Run(run) => Some(run),
                        Edge::Fuse(_) => None,
                    })
                    .collect();
                assert!(feed.on_any_way.iter().eq(&runs), "seed {seed}\n{text}");
                // What must be crossed is what parts the two when it is taken out.
                let cuts: Vec<usize> = on_way
                    .iter()
                    .copied()
                    .filter(|at| !joined(&without(&graph, &sheet, &|other| other == *at)))
                    .collect();
                let fuses: OrderedSet<PartId> = cuts
                    .iter()
                    .filter_map(|at| match graph.edges[*at].2 {
                        Edge::Fuse(fuse) => Some(fuse),
                        Edge::Run(_) => None,
                    })
                    .collect();
                let told: OrderedSet<PartId> = feed.devices.iter().map(|device| device.part).collect();
                assert_eq!(told, fuses, "seed {seed}\n{text}");
                assert_eq!(feed.meshed, cuts.len() < on_way.len(), "seed {seed}\n{text}");
                meshed += usize::from(feed.meshed);
            }
        }
    }
    assert!(
        meshed > 50 && edges > 25 * 20,
        "{meshed} meshed feeds, {edges} conductors"
    );
}

#[test]
fn unprotected_lengths_are_shortest_ways_short_of_a_fuse() {
    let mut told = 0;
    for seed in 6000..6050 {
        let text = random_text(seed, 8);
        let sheet = testkit::sheet(&text);
        let graph = Graph::of(&sheet);
        let study = study(&sheet, &Settings::default());
        let bare = without(&graph, &sheet, &|at| matches!(graph.edges[at].2, Edge::Fuse(_)));
        for (battery, _) in sheet
            .parts
            .iter()
            .filter(|(_, part)| matches!(part.is, PartKind::Battery(_)))
        {
            let pole = NodeIndex::new(graph.node(*battery, "+"));
            let distance = dijkstra(&bare, pole, None, |edge| *edge.weight());
            for &(a, b, edge) in &graph.edges {
                let Edge::Run(run) = edge else { continue };
                let nearest = [a, b]
                    .iter()
                    .filter_map(|node| distance.get(&NodeIndex::new(*node)))
                    .copied()
                    .reduce(f64::min);
                let from = study
                    .protection
                    .get(&run)
                    .and_then(|protection| protection.from.iter().find(|from| from.source == *battery));
                match (nearest, from) {
                    (Some(nearest), Some(from)) => {
                        let length = sheet.runs[&run].wire.length.value().expect("a length").0;
                        let got = from.unprotected_to.expect("all lengths are known").0;
                        assert!(!from.protected, "seed {seed} {run}\n{text}");
                        assert!(
                            (got - nearest - length).abs() < 1e-9,
                            "seed {seed} {run}: {got} against {}\n{text}",
                            nearest + length
                        );
                        told += 1;
                    }
                    (Some(_), None) => panic!("seed {seed}: {run} is not live\n{text}"),
                    (None, Some(from)) => assert!(from.protected, "seed {seed} {run}\n{text}"),
                    (None, None) => {}
                }
            }
        }
    }
    assert!(told > 200, "only {told} unprotected runs");
}
