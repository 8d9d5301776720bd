//! Random networks of buses, fuses, runs, batteries and loads, and what of them can be live, read from the sheet itself: the
//! checks of tracing share no code with the engine.

use model::{PartId, PartKind, RunId, Sheet, TerminalRef};
use ordered::OrderedMap;
use testkit::random::Dice;

/// Live conductors of a sheet as the brute force sees them.
pub(crate) struct Graph {
    /// (node, node, what it is) of every conductor that can be live.
    pub(crate) edges: Vec<(usize, usize, Edge)>,
    pub(crate) nodes: usize,
    node_of: OrderedMap<TerminalRef, usize>,
}

#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) enum Edge {
    Run(RunId),
    Fuse(PartId),
}

impl Graph {
    pub(crate) fn of(sheet: &Sheet) -> Self {
        let mut node_of = OrderedMap::new();
        let mut nodes = 0;
        for (id, part) in &sheet.parts {
            let shared = matches!(part.is, PartKind::Bus(_));
            for (at, terminal) in part.terminals().into_iter().enumerate() {
                if at > 0 && shared {
                    nodes -= 1;
                }
                node_of.insert(
                    TerminalRef {
                        part: *id,
                        terminal: terminal.name,
                    },
                    nodes,
                );
                nodes += 1;
            }
        }
        let mut edges = Vec::new();
        for (id, run) in &sheet.runs {
            let end = |e: &model::End| node_of[e.terminal().expect("no loose ends here")];
            edges.push((end(&run.from), end(&run.to), Edge::Run(*id)));
        }
        for (id, part) in &sheet.parts {
            if matches!(part.is, PartKind::Fuse(_)) {
                let node = |name: &str| node_of[&TerminalRef::new(*id, name)];
                edges.push((node("in"), node("out"), Edge::Fuse(*id)));
            }
        }
        Self {
            edges,
            nodes,
            node_of,
        }
    }

    pub(crate) fn node(&self, part: PartId, terminal: &str) -> usize {
        self.node_of[&TerminalRef::new(part, terminal)]
    }
}

/// A random network as text: buses joined by runs and fuses, sources and loads on buses, everything returned to a bus.
pub(crate) fn random_text(seed: u64, least_buses: usize) -> String {
    use std::fmt::Write;
    let mut dice = Dice::new(seed);
    let buses = least_buses + dice.below(2 * least_buses);
    let mut text = String::from("bus X0 places=24\n");
    let mut place = vec![0; buses + 1];
    let mut runs = 0;
    for bus in 1..=buses {
        let _ = writeln!(text, "bus X{bus} places=24");
    }
    let mut on = |bus: usize| {
        place[bus] += 1;
        format!("X{bus}.{}", place[bus])
    };
    let mut run = |text: &mut String, from: String, to: String, dice: &mut Dice| {
        runs += 1;
        let _ = writeln!(
            text,
            "run W{runs} {from} {to} 16mm2 {:.2}m",
            dice.between(0.1, 3.0)
        );
    };
    let mut fuses = 0;
    let links = buses - 1 + dice.below(buses.div_ceil(2) + 1);
    for link in 0..links {
        // First a tree, then rings.
        let a = if link + 1 < buses {
            link + 2
        } else {
            1 + dice.below(buses)
        };
        let b = if link + 1 < buses {
            1 + dice.below(link + 1)
        } else {
            1 + dice.below(buses)
        };
        if dice.chance(0.5) {
            fuses += 1;
            let _ = writeln!(text, "fuse F{fuses} 60A");
            let (from, to) = (on(a), on(b));
            run(&mut text, from, format!("F{fuses}.in"), &mut dice);
            run(&mut text, format!("F{fuses}.out"), to, &mut dice);
        } else {
            let (from, to) = (on(a), on(b));
            run(&mut text, from, to, &mut dice);
        }
    }
    for battery in 1..=1 + dice.below(2) {
        let _ = writeln!(text, "battery B{battery} agm");
        let bus = on(1 + dice.below(buses));
        if dice.chance(0.6) {
            fuses += 1;
            let _ = writeln!(text, "fuse F{fuses} 100A");
            run(
                &mut text,
                format!("B{battery}.+"),
                format!("F{fuses}.in"),
                &mut dice,
            );
            run(&mut text, format!("F{fuses}.out"), bus, &mut dice);
        } else {
            run(&mut text, format!("B{battery}.+"), bus, &mut dice);
        }
        let back = on(0);
        run(&mut text, format!("B{battery}.-"), back, &mut dice);
    }
    for load in 1..=1 + dice.below(least_buses) {
        let _ = writeln!(text, "load L{load}");
        let (bus, back) = (on(1 + dice.below(buses)), on(0));
        run(&mut text, bus, format!("L{load}.+"), &mut dice);
        run(&mut text, format!("L{load}.-"), back, &mut dice);
    }
    text
}
