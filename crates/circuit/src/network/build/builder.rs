//! A network while it is built: points that may still become one, and branches between them.

use crate::network::{
    Branch, Closes, Consumer, Draw, Kind, LEAST_RESISTANCE, Network, NetworkDevice, NetworkSource, values,
};
use crate::study::DeviceRef;
use model::kinds::supply::DeviceState;
use model::quantity::{Amps, Quantity};
use model::{Fact, PartId, RunId, TerminalName};

/// Collects while ids of points are still provisional: 0 is the body, then the terminals, then points inside parts.
pub(super) struct Builder {
    pub(super) net: Network,
    pub(super) parent: Vec<usize>,
    pub(super) wired: Vec<bool>,
    /// Shield point of each terminal that has one.
    pub(super) shield: Vec<Option<usize>>,
    /// Points of the body at which ground points with a place are, beside that of the strap.
    pub(super) metal: Vec<usize>,
    /// Properties taken for granted; brought into order once.
    pub(super) assumed: Vec<(Option<PartId>, Option<RunId>, &'static str)>,
    /// Whether mated cavities are branches and not one point.
    pub(super) apart: bool,
}

impl Builder {
    pub(super) fn point(&mut self) -> usize {
        self.parent.push(self.parent.len());
        self.parent.len() - 1
    }

    pub(super) fn find(&mut self, mut at: usize) -> usize {
        while self.parent[at] != at {
            self.parent[at] = self.parent[self.parent[at]];
            at = self.parent[at];
        }
        at
    }

    pub(super) fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.find(a), self.find(b));
        self.parent[a.max(b)] = a.min(b);
    }

    pub(super) fn at(&self, part: usize, name: &str) -> Option<usize> {
        self.net.node_by_name(part, name)
    }

    /// The value of a property of a part, with a note where it was taken for granted.
    pub(super) fn take<Q: Quantity>(
        &mut self,
        part: usize,
        name: &'static str,
        fact: &Fact<Q>,
        stand_in: f64,
    ) -> f64 {
        if !fact.is_settled() {
            let id = self.net.parts.get(part).copied();
            self.assumed.push((id, None, name));
        }
        fact.value().map_or(stand_in, Quantity::number)
    }

    pub(super) fn branch(&mut self, branch: Branch) -> usize {
        self.net.branches.push(Branch {
            resistance: branch.resistance.max(LEAST_RESISTANCE),
            ..branch
        });
        self.net.branches.len() - 1
    }

    /// A branch of a part between two points that exist.
    pub(super) fn link(
        &mut self,
        part: usize,
        kind: Kind,
        nodes: [Option<usize>; 2],
        resistance: f64,
        closes: Closes,
    ) -> Option<usize> {
        let [Some(a), Some(b)] = nodes else { return None };
        let carries = !matches!(
            kind,
            Kind::Load(_) | Kind::Battery | Kind::Alternator | Kind::ConverterOut | Kind::TurnOnOut
        );
        Some(self.branch(Branch {
            kind,
            nodes: [a, b],
            part,
            resistance,
            closes,
            carries,
        }))
    }

    pub(super) fn load(
        &mut self,
        part: usize,
        draw: Draw,
        plus: Option<usize>,
        minus: Option<usize>,
    ) -> Option<usize> {
        self.link(
            part,
            Kind::Load(draw),
            [plus, minus],
            LEAST_RESISTANCE,
            Closes::Always,
        )
    }

    pub(super) fn consumer(&mut self, part: usize, terminal: &str, minus: Option<usize>) {
        if let (Some(plus), Some(minus)) = (self.at(part, terminal), minus) {
            self.net.consumers.push(Consumer {
                part,
                terminal: terminal.into(),
                plus,
                minus,
            });
        }
    }

    pub(super) fn source(
        &mut self,
        part: usize,
        kind: Kind,
        plus: Option<usize>,
        minus: Option<usize>,
        resistance: f64,
        closes: Closes,
    ) {
        if let (Some(plus_node), Some(minus_node)) = (plus, minus)
            && let Some(branch) = self.link(part, kind, [plus, minus], resistance, closes)
        {
            self.net.sources.push(NetworkSource {
                part,
                plus: plus_node,
                minus: minus_node,
                branch,
            });
        }
    }

    /// One overcurrent device between two points. A blown or missing one does not conduct, yet it is traced: it is
    /// what guards what stands behind it as soon as somebody puts a new one in.
    #[allow(clippy::too_many_arguments)]
    pub(super) fn device(
        &mut self,
        part: usize,
        output: Option<&str>,
        nodes: [Option<usize>; 2],
        rating: Option<Amps>,
        state: DeviceState,
        resistance: f64,
        mut closes: Closes,
    ) {
        let Some(&id) = self.net.parts.get(part) else {
            return;
        };
        let device = self.net.devices.len();
        let mut resistance = resistance;
        match state {
            DeviceState::Intact => {}
            DeviceState::Open | DeviceState::Missing => closes = Closes::Never,
            DeviceState::Bridged => resistance = values::BRIDGE,
        }
        if let Some(branch) = self.link(part, Kind::Device { device }, nodes, resistance, closes) {
            self.net.devices.push(NetworkDevice {
                name: DeviceRef {
                    part: id,
                    output: output.map(TerminalName::from),
                },
                rating,
                works: state == DeviceState::Intact,
                branch,
            });
        }
    }
}
