//! The leads of speakers while other wires are tried in their place: what level is lost to each speaker, and what each lead carries.

use super::element::{self, Impedance, What};
use super::index::Index;
use super::network::Network;
use super::pieces::{Piece, pieces};
use super::seen::{Seen, Viewed};
use super::{complex::Complex, drivers};
use model::quantity::{Amps, Decibels};
use model::{PartId, Run, RunId, Sheet};
use ordered::OrderedMap;

/// The speaker side of a sheet, on which other wires are tried.
pub struct LeadNet<'s> {
    net: Network<'s>,
    pieces: Vec<Piece>,
}

/// What a piece of the speaker side does with the leads as they are laid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Leads {
    /// Level that is lost to each speaker of it, at its coil that loses most: what [`crate::Driver::lead_loss`] tells.
    pub lost: OrderedMap<PartId, Decibels>,
    /// Current of each lead at full power of all outputs, at rated impedances: RMS; of several outputs the sum of what each makes.
    pub amps: OrderedMap<RunId, Amps>,
}

impl<'s> LeadNet<'s> {
    /// Of a sheet, laid in the body.
    #[must_use]
    pub fn of(sheet: &'s Sheet) -> Self {
        let net = Network::new(Index::new(sheet));
        let pieces = pieces(&net);
        Self { net, pieces }
    }

    /// The leads of each connected piece that has an output in it.
    #[must_use]
    pub fn pieces(&self) -> Vec<Vec<RunId>> {
        let lead = |element: &usize| match self.net.elements.get(*element).map(|it| it.what) {
            Some(What::Lead(run)) => Some(run),
            _ => None,
        };
        let all = self.pieces.iter();
        all.map(|piece| piece.elements.iter().filter_map(lead).collect())
            .collect()
    }

    /// What a wire resists as a lead, endings and all, in ohms.
    #[must_use]
    pub fn resists(run: &Run) -> f64 {
        element::lead(run)
    }

    /// Gives leads of a piece other resistances, in ohms.
    pub fn lay(&mut self, piece: usize, ohms: &OrderedMap<RunId, f64>) {
        for element in self
            .pieces
            .get(piece)
            .into_iter()
            .flat_map(|piece| &piece.elements)
        {
            if let Some(element) = self.net.elements.get_mut(*element)
                && let What::Lead(run) = element.what
                && let Some(ohms) = ohms.get(&run)
            {
                element.band = Impedance::resistance(*ohms);
            }
        }
    }

    /// What a piece does with its leads as they are laid.
    #[must_use]
    pub fn look(&self, piece: usize) -> Leads {
        let Some(piece) = self.pieces.get(piece) else {
            return Leads::default();
        };
        let seen = Seen::of(&self.net, piece);
        let mut reach = OrderedMap::new();
        drivers::find(&seen, &mut reach);
        let lost = reach.iter().map(|(id, reached)| (*id, Decibels(reached.loss())));
        let mut it = Leads {
            lost: lost.collect(),
            amps: OrderedMap::new(),
        };
        for viewed in &seen.views {
            self.carry(&seen, viewed, &mut it);
        }
        it
    }

    /// Adds what each lead carries in a view, where that is more than in the others.
    fn carry(&self, seen: &Seen<'_>, viewed: &Viewed, into: &mut Leads) {
        let reduced = &viewed.with_leads.reduced;
        let Some(solution) = &viewed.with_leads.solution else {
            return;
        };
        let volts = (0..seen.sources.len()).map(|source| viewed.volts(seen, source, reduced, solution));
        let volts: Vec<f64> = volts.collect();
        for (at, branch) in reduced.branches.iter().enumerate() {
            let of_source =
                |(row, volts): (&Vec<Complex>, &f64)| row.get(at).map_or(0.0, |amps| amps.size()) * volts;
            let amps: f64 = solution.branch_amps.iter().zip(&volts).map(of_source).sum();
            for (element, _) in branch.members.iter() {
                if let Some(What::Lead(run)) = self.net.elements.get(*element).map(|it| it.what) {
                    let most = into.amps.entry(run).or_default();
                    most.0 = most.0.max(amps);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::Settings;

    /// Two coils of 4 Ω in parallel and in series on 200 W: by Ohm's law that is 10 A into 2 Ω, 5 A in each coil, and 5 A into 8 Ω.
    /// What is lost is what the study tells.
    #[test]
    fn leads_carry_what_ohms_law_says() {
        let parallel = "run W1 A1.out1+ LS1.a+ 1mm2 4m WH\nrun W2 A1.out1- LS1.a- 1mm2 4m WHBK\n\
            run W3 LS1.a+ LS1.b+ 1mm2 1m WH\nrun W4 LS1.a- LS1.b- 1mm2 1m WHBK\n";
        let series = "run W1 A1.out1+ LS1.a+ 1mm2 4m WH\nrun W3 LS1.a- LS1.b+ 1mm2 1m WH\n\
            run W2 A1.out1- LS1.b- 1mm2 4m WHBK\n";
        for (wired, load, whole, link) in [(parallel, 2, 10.0, 5.0), (series, 8, 5.0, 5.0)] {
            let sheet = testkit::sheet(&format!(
                "amplifier A1 sections=\"1x 200W@{load}ohm min 2ohm\"\nspeaker LS1 4ohm coils=2 power=400W sub bass\n{wired}"
            ));
            let study = crate::study(&sheet, &Settings::default());
            let leads = LeadNet::of(&sheet);
            let piece = leads
                .pieces()
                .iter()
                .position(|runs| !runs.is_empty())
                .expect("a piece");
            let found = leads.look(piece);
            let amps = |tag: &str| found.amps[&sheet.run_by_tag(tag).expect("a run").0].0;
            // Leads take a little of the voltage.
            assert!((amps("W1") / whole - 1.0).abs() < 0.12, "{}", amps("W1"));
            assert!((amps("W3") / link - 1.0).abs() < 0.12, "{}", amps("W3"));
            for (speaker, lost) in &found.lost {
                assert!((study.drivers[speaker].lead_loss.0 - lost.0).abs() < 1e-12);
            }
        }
    }
}
