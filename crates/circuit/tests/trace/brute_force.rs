//! Against brute force: all simple ways are walked, on small random networks.

use crate::networks::{Edge, Graph, random_text};
use circuit::{DeviceRef, study};
use model::{PartId, PartKind, RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// Protected, guards, distance of the far end, and whether a fuse follows.
type Expected = (bool, OrderedSet<PartId>, f64, bool);

/// One way: nodes and edges in order.
#[derive(Clone)]
struct Way {
    nodes: Vec<usize>,
    edges: Vec<usize>,
}

/// What brute force does with a graph.
impl Graph {
    /// Every simple way from a node, the empty one included, over edges that `may` be used.
    fn ways(&self, from: usize, may: &dyn Fn(Edge) -> bool) -> Vec<Way> {
        let mut out = Vec::new();
        let mut open = vec![Way {
            nodes: vec![from],
            edges: Vec::new(),
        }];
        while let Some(way) = open.pop() {
            let last = *way.nodes.last().expect("a way has a node");
            for (at, &(a, b, edge)) in self.edges.iter().enumerate() {
                let next = if a == last {
                    b
                } else if b == last {
                    a
                } else {
                    continue;
                };
                if may(edge) && !way.nodes.contains(&next) {
                    let mut longer = way.clone();
                    longer.nodes.push(next);
                    longer.edges.push(at);
                    open.push(longer);
                }
            }
            out.push(way);
            assert!(
                out.len() < 200_000,
                "the random network is too meshed for brute force"
            );
        }
        out
    }

    /// Stretch of each node: what hangs together without fuses.
    fn stretches(&self) -> Vec<usize> {
        let mut stretch: Vec<usize> = (0..self.nodes).collect();
        loop {
            let mut changed = false;
            for &(a, b, edge) in &self.edges {
                if matches!(edge, Edge::Run(_)) && stretch[a] != stretch[b] {
                    let low = stretch[a].min(stretch[b]);
                    (stretch[a], stretch[b], changed) = (low, low, true);
                }
            }
            if !changed {
                return stretch;
            }
        }
    }

    /// Whether a way, told as a sequence of stretches, comes into none of them twice: a fuse that something bypasses leads from
    /// a stretch into the same stretch, and guards nothing.
    fn simple_by_stretch(&self, way: &Way, stretch: &[usize]) -> bool {
        let mut seen = vec![stretch[way.nodes[0]]];
        for (at, node) in way.edges.iter().zip(&way.nodes[1..]) {
            if matches!(self.edges[*at].2, Edge::Fuse(_)) {
                if seen.contains(&stretch[*node]) {
                    return false;
                }
                seen.push(stretch[*node]);
            }
        }
        true
    }

    fn length(&self, sheet: &Sheet, way: &Way) -> f64 {
        way.edges
            .iter()
            .filter_map(|at| match self.edges[*at].2 {
                Edge::Run(run) => sheet.runs[&run].wire.length.value().map(|l| l.0),
                Edge::Fuse(_) => None,
            })
            .sum()
    }
}

fn fuse_ref(part: PartId) -> DeviceRef {
    DeviceRef { part, output: None }
}

#[test]
fn protection_is_what_all_simple_ways_say() {
    let (mut protected, mut unprotected) = (0, 0);
    for seed in 0..300 {
        let text = random_text(seed, 2);
        let sheet = testkit::sheet(&text);
        let graph = Graph::of(&sheet);
        let study = study(&sheet, &Settings::default());
        let stretch = graph.stretches();
        let mut expected: OrderedMap<(RunId, PartId), Expected> = OrderedMap::new();
        for (source, part) in &sheet.parts {
            if !matches!(part.is, PartKind::Battery(_)) {
                continue;
            }
            let pole = graph.node(*source, "+");
            // Runs on a simple way from the pole to a fuse within the pole's own stretch.
            let mut followed = OrderedSet::new();
            let home = graph.ways(pole, &|edge| matches!(edge, Edge::Run(_)));
            for way in &home {
                let last = *way.nodes.last().expect("a node");
                let at_fuse = graph
                    .edges
                    .iter()
                    .any(|&(a, b, e)| matches!(e, Edge::Fuse(_)) && (a == last || b == last));
                if at_fuse {
                    followed.extend(way.edges.iter().filter_map(|at| match graph.edges[*at].2 {
                        Edge::Run(run) => Some(run),
                        Edge::Fuse(_) => None,
                    }));
                }
            }
            for way in graph.ways(pole, &|_| true) {
                let last = *way.nodes.last().expect("a node");
                let fuses: Vec<PartId> = way
                    .edges
                    .iter()
                    .filter_map(|at| match graph.edges[*at].2 {
                        Edge::Fuse(fuse) => Some(fuse),
                        Edge::Run(_) => None,
                    })
                    .collect();
                for &(a, b, edge) in &graph.edges {
                    let Edge::Run(run) = edge else { continue };
                    if a != last && b != last {
                        continue;
                    }
                    let length = sheet.runs[&run].wire.length.value().expect("a length").0;
                    let entry = expected.entry((run, *source)).or_insert((
                        true,
                        OrderedSet::new(),
                        f64::INFINITY,
                        followed.contains(&run),
                    ));
                    match fuses.last() {
                        Some(fuse) if graph.simple_by_stretch(&way, &stretch) => {
                            entry.1.insert(*fuse);
                        }
                        Some(_) => {}
                        None => {
                            entry.0 = false;
                            entry.2 = entry.2.min(graph.length(&sheet, &way) + length);
                        }
                    }
                }
            }
        }
        let mut told = 0;
        for (run, protection) in &study.protection {
            for from in &protection.from {
                told += 1;
                let (is_protected, guards, distance, follows) = expected
                    .get(&(*run, from.source))
                    .unwrap_or_else(|| panic!("seed {seed}: {run} is not live\n{text}"));
                assert_eq!(from.protected, *is_protected, "seed {seed} {run}\n{text}");
                if *is_protected {
                    protected += 1;
                    let wanted: Vec<DeviceRef> = guards.iter().map(|g| fuse_ref(*g)).collect();
                    let mut got = from.guards.clone();
                    got.sort();
                    assert_eq!(got, wanted, "seed {seed} {run}\n{text}");
                } else {
                    unprotected += 1;
                    assert!(from.guards.is_empty());
                    let got = from.unprotected_to.expect("all lengths are known").0;
                    assert!(
                        (got - distance).abs() < 1e-9,
                        "seed {seed} {run}: {got} {distance}\n{text}"
                    );
                    assert_eq!(from.device_follows, *follows, "seed {seed} {run}\n{text}");
                }
            }
        }
        assert_eq!(told, expected.len(), "seed {seed}: a live run is missing\n{text}");
    }
    assert!(protected > 500 && unprotected > 500, "{protected} {unprotected}");
}

#[test]
fn feeds_are_what_all_simple_ways_say() {
    let mut meshed = 0;
    for seed in 1000..1300 {
        let text = random_text(seed, 2);
        let sheet = testkit::sheet(&text);
        let graph = Graph::of(&sheet);
        let study = study(&sheet, &Settings::default());
        for (load, part) in &sheet.parts {
            if !matches!(part.is, PartKind::Load(_)) {
                continue;
            }
            let circuit = &study.circuits[load];
            let mut feeding = 0;
            for (source, part) in &sheet.parts {
                if !matches!(part.is, PartKind::Battery(_)) {
                    continue;
                }
                let target = graph.node(*load, "+");
                let ways: Vec<Way> = graph
                    .ways(graph.node(*source, "+"), &|_| true)
                    .into_iter()
                    .filter(|way| way.nodes.last() == Some(&target))
                    .collect();
                let feed = circuit.feeds.iter().find(|f| f.source == *source);
                if ways.is_empty() {
                    assert!(feed.is_none(), "seed {seed}\n{text}");
                    continue;
                }
                feeding += 1;
                let feed = feed.unwrap_or_else(|| panic!("seed {seed}: a feed is missing\n{text}"));
                let mut any = OrderedSet::new();
                let mut every: Option<OrderedSet<PartId>> = None;
                for way in &ways {
                    let mut fuses = OrderedSet::new();
                    for at in &way.edges {
                        match graph.edges[*at].2 {
                            Edge::Run(run) => {
                                any.insert(run);
                            }
                            Edge::Fuse(fuse) => {
                                fuses.insert(fuse);
                            }
                        }
                    }
                    every = Some(match every {
                        Some(before) => before.intersection(&fuses).copied().collect(),
                        None => fuses,
                    });
                }
                assert_eq!(feed.on_any_way, any, "seed {seed}\n{text}");
                let devices: OrderedSet<PartId> = feed.devices.iter().map(|d| d.part).collect();
                assert_eq!(devices, every.unwrap_or_default(), "seed {seed}\n{text}");
                assert_eq!(feed.meshed, ways.len() > 1, "seed {seed}\n{text}");
                meshed += usize::from(feed.meshed);
                // The way told is one of the simple ways.
                let told: OrderedSet<RunId> = feed.runs.iter().copied().collect();
                assert!(
                    ways.iter().any(|way| {
                        let runs: OrderedSet<RunId> = way
                            .edges
                            .iter()
                            .filter_map(|at| match graph.edges[*at].2 {
                                Edge::Run(run) => Some(run),
                                Edge::Fuse(_) => None,
                            })
                            .collect();
                        runs == told
                    }),
                    "seed {seed}\n{text}"
                );
            }
            assert_eq!(circuit.feeds.len(), feeding, "seed {seed}\n{text}");
        }
    }
    assert!(meshed > 100, "only {meshed} meshed feeds");
}

/// Two batteries, a bypassed fuse, a fuse in the return: told by name, so that nobody has to trust random networks.
#[test]
fn topologies_asked_for_by_name() {
    let of = |text: &str| {
        let sheet = testkit::sheet(text);
        let study = study(&sheet, &Settings::default());
        (sheet, study)
    };
    let run = |sheet: &Sheet, tag: &str| sheet.run_by_tag(tag).expect("a run of this tag").0;

    // A second wire past the fuse leaves everything behind it unprotected.
    let (sheet, bypassed) = of(
        "battery B1 agm\nfuse F1 60A\nbus X1\nload L1\nrun W1 B1.+ F1.in 16mm2 0.2m\nrun W2 F1.out X1.1 16mm2 0.2m\n\
         run W3 B1.+ X1.2 6mm2 2m\nrun W4 X1.3 L1.+ 16mm2 3m\nrun W5 L1.- B1.- 16mm2 3m\n",
    );
    assert!(!bypassed.protection[&run(&sheet, "W4")].from[0].protected);
    let (l1, _) = sheet.part_by_tag("L1").expect("the load");
    assert!(bypassed.circuits[&l1].feeds[0].devices.is_empty());
    assert!(bypassed.circuits[&l1].feeds[0].meshed);

    // A ring feed with one fuse at its head is protected all round.
    let (sheet, ring) = of(
        "battery B1 agm\nfuse F1 60A\nbus X1\nbus X2\nload L1\nrun W1 B1.+ F1.in 16mm2 0.2m\nrun W2 F1.out X1.1 16mm2 0.2m\n\
         run W3 X1.2 X2.1 16mm2 2m\nrun W4 X1.3 X2.2 16mm2 3m\nrun W5 X2.3 L1.+ 16mm2 1m\nrun W6 L1.- B1.- 16mm2 3m\n",
    );
    for tag in ["W2", "W3", "W4", "W5"] {
        assert!(ring.protection[&run(&sheet, tag)].from[0].protected, "{tag}");
    }
    assert!(!ring.protection[&run(&sheet, "W1")].from[0].protected);
    assert!(ring.protection[&run(&sheet, "W1")].from[0].device_follows);

    // Two batteries, one fuse in the middle: each half is open to its own battery.
    let (sheet, two) = of(
        "battery B1 agm\nbattery B2 agm\nfuse F1 60A\nrun W1 B1.+ F1.in 16mm2 0.2m\nrun W2 F1.out B2.+ 16mm2 4m\nrun W3 B1.- B2.- 16mm2 4m\n",
    );
    let w2 = &two.protection[&run(&sheet, "W2")];
    assert_eq!(w2.from.iter().filter(|f| f.protected).count(), 1);
    assert_eq!(
        two.runs[&run(&sheet, "W2")].purpose,
        circuit::Purpose::BetweenSources
    );

    // A fuse in the return guards nothing.
    let (sheet, behind) = of(
        "battery B1 agm\nfuse F1 60A\nload L1\nrun W1 B1.+ L1.+ 16mm2 2m\nrun W2 L1.- F1.in 16mm2 0.2m\nrun W3 F1.out B1.- 16mm2 2m\n",
    );
    assert!(behind.devices[0].in_return);
    assert!(!behind.protection[&run(&sheet, "W1")].from[0].protected);
    assert!(!behind.protection[&run(&sheet, "W1")].from[0].device_follows);
    let (l1, _) = sheet.part_by_tag("L1").expect("the load");
    assert_eq!(behind.circuits[&l1].returns[0].devices.len(), 1);
}
