//! What is known of a sheet before anything flows: its views for tracing, its stretches, purposes and protection.

use crate::network::{Network, values};
use crate::protection::{self, Stretches};
use crate::purpose;
use crate::study::{Protection, Purpose};
use crate::trace::Tracer;
use model::job::Conditions;
use model::quantity::Amps;
use model::{PartKind, RunId, Sheet};
use ordered::OrderedMap;

/// What follows from how things are wired, whatever flows.
pub(crate) struct Wired<'a> {
    pub(crate) tracer: Tracer<'a>,
    pub(crate) stretches: Stretches,
    pub(crate) reaches: Vec<protection::Reach>,
    pub(crate) purposes: Vec<Purpose>,
    /// What each run bears.
    pub(crate) allowable: Vec<Option<Amps>>,
    pub(crate) protection: OrderedMap<RunId, Protection>,
    /// The runs that each device guards.
    pub(crate) guarded: Vec<Vec<RunId>>,
}

impl<'a> Wired<'a> {
    pub(crate) fn new(net: &'a Network, sheet: &Sheet, conditions: &Conditions) -> Self {
        let runs = sheet.runs.values();
        let allowable: Vec<Option<Amps>> = runs.map(|r| values::allowable(&r.wire, conditions)).collect();
        let tracer = Tracer::new(net, sheet);
        let stretches = Stretches::new(net);
        let reaches: Vec<protection::Reach> = net.sources.iter().map(|s| stretches.reach(s.plus)).collect();
        let purposes = purpose::purposes(
            net,
            &stretches,
            &reaches,
            &tracer.live.view,
            &tracer.live.blocks,
            &tracer.back.blocks,
        );
        let limits = sheet_limits(net, sheet);
        let (protection, guarded) =
            protection::protect(net, sheet, &stretches, &reaches, &limits, &allowable);
        Self {
            tracer,
            stretches,
            reaches,
            purposes,
            allowable,
            protection,
            guarded,
        }
    }
}

/// The most each source gives of itself, where it limits itself: converters and alternators.
fn sheet_limits(net: &Network, sheet: &Sheet) -> Vec<Option<f64>> {
    net.sources
        .iter()
        .map(|s| {
            let id = net.parts.get(s.part)?;
            match &sheet.parts.get(id)?.is {
                PartKind::Alternator(it) => it.current.value().map(|i| i.0),
                PartKind::Converter(it) => it.current.value().map(|i| i.0),
                _ => None,
            }
        })
        .collect()
}
