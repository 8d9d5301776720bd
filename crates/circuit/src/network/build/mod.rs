//! Builds the network of a sheet: joins terminals that are one point, then adds branches, part by part and run by run.
//! Ids of points are provisional until all is built: 0 is the body, then the terminals, then points inside parts.

mod body_metal;
mod builder;
mod parts;
mod runs;

use super::*;
use body::Metal;
use builder::Builder;
use model::Sheet;
use ordered::Sort as _;

impl Network {
    /// The network of a sheet. Defined for every sheet: what does not resolve becomes a loose end and a note.
    #[must_use]
    pub fn build(sheet: &Sheet) -> Self {
        Self::build_on(sheet, &Metal::default())
    }

    /// The same on a body of which it is known what metal lies between the ground points.
    #[must_use]
    pub fn build_on(sheet: &Sheet, metal: &Metal) -> Self {
        Self::build_with(sheet, metal, false)
    }

    /// The same, in which the cavities of plugs and adapters are branches of their own, so that one can be thought open.
    #[must_use]
    pub(crate) fn build_apart(sheet: &Sheet, metal: &Metal) -> Self {
        Self::build_with(sheet, metal, true)
    }

    fn build_with(sheet: &Sheet, metal: &Metal, apart: bool) -> Self {
        let mut net = Self {
            parts: sheet.parts.keys().copied().collect(),
            ..Self::default()
        };
        for (index, part) in sheet.parts.values().enumerate() {
            net.first_terminal.push(net.terminals.len());
            for terminal in part.terminals() {
                net.terminals.push(NetworkTerminal {
                    part: index,
                    name: terminal.name,
                    role: terminal.role,
                    node: net.terminals.len() + 1,
                });
            }
        }
        net.first_terminal.push(net.terminals.len());
        let terminals = net.terminals.len();
        let mut builder = Builder {
            net,
            parent: (0..=terminals).collect(),
            wired: vec![false; terminals],
            shield: vec![None; terminals],
            metal: Vec::new(),
            assumed: Vec::new(),
            apart,
        };
        builder.metal_points(metal);
        builder.runs(sheet);
        for (index, part) in sheet.parts.values().enumerate() {
            let from = builder.assumed.len();
            builder.part(index, &part.is, metal);
            // In order part by part, so that the whole is.
            if let Some(own) = builder.assumed.get_mut(from..) {
                own.order();
            }
        }
        builder.body_metal(sheet, metal);
        builder.alternator_cases(sheet);
        builder.finish()
    }
}

impl Builder {
    /// Numbers the nodes and turns provisional points into them.
    fn finish(mut self) -> Network {
        let mut node = vec![usize::MAX; self.parent.len()];
        let mut count = 0;
        for point in 0..self.parent.len() {
            let root = self.find(point);
            if root == point {
                node[point] = count;
                count += 1;
            } else {
                // Roots have the lowest index of their group, so they were numbered before.
                node[point] = node[root];
            }
        }
        let mut net = self.net;
        net.nodes = count;
        net.assumed = self.assumed.into_iter().collect();
        for terminal in &mut net.terminals {
            terminal.node = node[terminal.node];
        }
        for run in &mut net.runs {
            run.nodes = run.nodes.map(|n| node[n]);
        }
        for branch in &mut net.branches {
            branch.nodes = branch.nodes.map(|n| node[n]);
            if let Closes::Sensing { minus, .. } = &mut branch.closes {
                *minus = node[*minus];
            }
        }
        for source in &mut net.sources {
            (source.plus, source.minus) = (node[source.plus], node[source.minus]);
        }
        for consumer in &mut net.consumers {
            (consumer.plus, consumer.minus) = (node[consumer.plus], node[consumer.minus]);
        }
        super::master::leave_on(&mut net);
        net
    }
}
