//! A piece of the speaker side as its outputs see it: in each view, with its leads and without.

use super::complex::Complex;
use super::element::{View, What};
use super::network::Network;
use super::outputs::Output;
use super::pieces::Piece;
use super::reduced::{Members, Reduced, Solution, Source};
use ordered::Sort as _;

/// A load above this, in ohms, is no load.
pub(super) const LARGEST_LOAD: f64 = 1e7;

/// What is left of a piece in a view.
pub(super) struct Solved {
    pub(super) reduced: Reduced,
    /// What each source at 1 V does in it; nothing where it is not settled.
    pub(super) solution: Option<Solution>,
}

/// One view of a piece, taken at rated impedances.
pub(super) struct Viewed {
    /// The view, without leads.
    pub(super) view: View,
    pub(super) without_leads: Solved,
    pub(super) with_leads: Solved,
    /// By source: its nominal load, in ohms.
    nominal: Vec<Option<f64>>,
}

/// A piece as its outputs see it.
pub(super) struct Seen<'n> {
    pub(super) net: &'n Network<'n>,
    pub(super) piece: &'n Piece,
    /// With their numbers in the network.
    pub(super) outputs: Vec<(usize, &'n Output)>,
    /// One for each output.
    pub(super) sources: Vec<Source>,
    /// The weights with which sources count against one another, where several feed one piece.
    pub(super) open_volts: Vec<f64>,
    pub(super) members: Members<'n>,
    pub(super) views: Vec<Viewed>,
}

impl Solved {
    fn of(members: &Members<'_>, view: View) -> Self {
        let reduced = Reduced::new(members, view);
        let solution = reduced.solve(1.0);
        Self { reduced, solution }
    }
}

impl Viewed {
    /// Voltage of an output at full power into its load in this view: the nominal one, or else the one with these leads.
    pub(super) fn volts(
        &self,
        seen: &Seen<'_>,
        source: usize,
        reduced: &Reduced,
        solution: &Solution,
    ) -> f64 {
        let load = self
            .nominal(source)
            .or_else(|| own_load(reduced, Some(solution), source, &seen.open_volts));
        let output = seen.outputs.get(source);
        output
            .zip(load)
            .map_or(0.0, |((_, output), load)| output.stated.volts(load))
    }

    /// Nominal load of a source, in ohms.
    pub(super) fn nominal(&self, source: usize) -> Option<f64> {
        self.nominal.get(source).copied().flatten()
    }
}

impl<'n> Seen<'n> {
    pub(super) fn of(net: &'n Network<'n>, piece: &'n Piece) -> Self {
        let outputs: Vec<(usize, &Output)> = piece
            .outputs
            .iter()
            .filter_map(|number| net.outputs.get(*number).map(|it| (*number, it)))
            .collect();
        let sources: Vec<Source> = outputs
            .iter()
            .map(|(_, it)| Source {
                plus: it.plus,
                minus: it.minus,
            })
            .collect();
        let open_volts: Vec<f64> = outputs
            .iter()
            .map(|(_, it)| it.stated.open_volts().max(1e-3))
            .collect();
        let members = Members::new(&net.elements, &piece.elements, &sources);
        let filters = piece
            .elements
            .iter()
            .filter_map(|number| net.elements.get(*number))
            .filter(|element| matches!(element.what, What::Inductor(_) | What::Capacitor(_)));
        let corners: Vec<f64> = filters.map(|element| element.corner).collect();
        let mut looks = vec![(View::Low { leads: false }, View::Low { leads: true })];
        // Without a filter in it the low end of the band is like the high one.
        if !corners.is_empty() {
            looks.push((View::High { leads: false }, View::High { leads: true }));
        }
        looks.extend(between(corners).into_iter().map(|at| {
            let [plain, leads] = [false, true].map(|leads| View::Between { leads, at });
            (plain, leads)
        }));
        let views = looks.into_iter().map(|(view, leads)| {
            let without_leads = Solved::of(&members, view);
            let Solved { reduced, solution } = &without_leads;
            let nominal = (0..sources.len())
                .map(|at| own_load(reduced, solution.as_ref(), at, &open_volts))
                .collect();
            Viewed {
                view,
                nominal,
                without_leads,
                with_leads: Solved::of(&members, leads),
            }
        });
        let views = views.collect();
        Self {
            net,
            piece,
            outputs,
            sources,
            open_volts,
            members,
            views,
        }
    }

    /// What is left of the piece in all views, without leads and with them.
    pub(super) fn all(&self) -> impl Iterator<Item = &Solved> {
        let views = self.views.iter();
        views.flat_map(|viewed| [&viewed.without_leads, &viewed.with_leads])
    }
}

/// Sum of sizes of what all sources do to one quantity: the worse case of unknown phases.
fn worst<'a>(all: impl Iterator<Item = &'a Complex>, volts: &[f64]) -> f64 {
    all.zip(volts).map(|(value, volts)| value.size() * volts).sum()
}

/// Own voltage over own current of a source, the worse case. `None` when no current flows or it is not solved.
pub(super) fn own_load(
    reduced: &Reduced,
    solution: Option<&Solution>,
    source: usize,
    volts: &[f64],
) -> Option<f64> {
    if reduced.is_shorted(source) {
        return Some(0.0);
    }
    let amps = worst(
        solution?.source_amps.iter().filter_map(|row| row.get(source)),
        volts,
    );
    let load = volts.get(source)? / amps;
    (load.is_finite() && load < LARGEST_LOAD).then_some(load)
}

/// Most parts of the band between filters that are looked at by themselves: a driver has three or four ways at the most.
const MOST_BETWEEN: usize = 4;

/// How far apart two filters divide, at the least, for something to play between them.
const APART: f64 = 2.0;

/// Angular frequencies between filters: the geometric mean of each two corners that follow one another.
fn between(mut corners: Vec<f64>) -> Vec<f64> {
    corners.retain(|corner| corner.is_finite() && *corner > 0.0);
    corners.order_by(f64::total_cmp);
    let pairs = corners.iter().zip(corners.iter().skip(1));
    pairs
        .filter(|(low, high)| **high > **low * APART)
        .map(|(low, high)| (low * high).sqrt())
        .take(MOST_BETWEEN)
        .collect()
}
