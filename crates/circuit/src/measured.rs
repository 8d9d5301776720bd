//! What was counted or measured of a wire wins over what its jacket says.
//!
//! - Measured drop over current is the resistance of the whole run, and wins over everything else.
//! - Counted strands are its cross-section; of its material, unless both are known and tell of a worse one.
//! - Where only the resistance is known, the wire counts as the copper that would have it: as much thinner than its jacket says
//!   as it resists more than a cable of that size may. It never counts as thicker, since a meter errs too.
//!
//! Measured at about 20 °C, as a wire is that has not carried current for a while; 10 K more or less make 4 %.

use crate::network::values;
use model::conductor::{Material, Size};
use model::quantity::{Celsius, Metres, OhmsPerMetre, SquareMm};
use model::{Fact, Run, Sheet, Wire};
use reference::conductors::{AWG_STRANDING, nominal_resistance_per_metre, resistance_per_metre};
use reference::materials::data;
use std::borrow::Cow;

/// How far measured and counted may differ from a material's resistivity, as a factor either way, for it to be told as
/// that material: strands wind (2 %), a calliper and a meter err by a few per cent each. Copper and copper-clad aluminium
/// lie 1.5 apart.
const ALIKE: f64 = 1.2;

/// What a wire really is, as far as it was counted or measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The cross-section that its strands add up to.
    pub counted: Option<SquareMm>,
    /// The copper that conducts as it does, by the class of its own size: of 16 mm² that resist as 16 mm² may, 16 mm².
    pub conducts_like: Option<SquareMm>,
    /// The material that explains both, where both are known and one does.
    pub material: Option<Material>,
}

/// What is known of a run's wire beside its jacket; nothing where it was neither counted nor measured.
#[must_use]
pub fn measured(run: &Run) -> Option<Measured> {
    let (laying, wire) = (&run.laying, &run.wire);
    let counted = laying.counted_area();
    let length = Metres(values::length(wire));
    let tested = laying.tested_per_metre(length);
    if counted.is_none() && tested.is_none() {
        return None;
    }
    let size = values::size(wire);
    let conducts_like = tested.map(|tested| {
        let may = nominal_resistance_per_metre(Material::Copper, size, Celsius(20.0));
        SquareMm(size.area().0 * may.0 / tested.0.max(1e-9))
    });
    let material = laying
        .likely_material(length, |material| data(material).resistivity * AWG_STRANDING)
        .filter(|(_, factor)| (1.0 / ALIKE..=ALIKE).contains(factor))
        .map(|(material, _)| material);
    Some(Measured {
        counted,
        conducts_like,
        material,
    })
}

/// Resistance of a run's wire per metre at 20 °C, as measured, else as counted, else as its maker or its jacket says; `None`
/// where nothing of that is known.
#[must_use]
pub fn cold_per_metre(run: &Run) -> Option<OhmsPerMetre> {
    let found = true_wire(run);
    let wire = found.as_ref().unwrap_or(&run.wire);
    wire.stated_resistance.value().or_else(|| {
        let (material, size) = (wire.material.value()?, wire.size.value()?);
        Some(nominal_resistance_per_metre(material, size, Celsius(20.0)))
    })
}

/// The wire as it really is, where that is known.
pub(crate) fn true_wire(run: &Run) -> Option<Wire> {
    let found = measured(run)?;
    let mut wire = run.wire.clone();
    if let Some(material) = found.material
        && data(material).resistivity > data(values::material(&wire)).resistivity * ALIKE
    {
        wire.material = Fact::Given(material);
    }
    let claimed = values::size(&wire).area();
    let length = Metres(values::length(&wire));
    if let Some(counted) = found.counted {
        if wire.stated_resistance.is_unknown() {
            let per_metre = resistance_per_metre(values::material(&wire), counted, Celsius(20.0));
            wire.stated_resistance = Fact::Given(per_metre * AWG_STRANDING);
        }
        wire.size = Fact::Given(Size::Metric(counted));
    } else if let (Some(tested), true) = (
        run.laying.tested_per_metre(length),
        wire.stated_resistance.is_unknown(),
    ) && !wire.size.is_unknown()
    {
        // Against the class of its own material: an honest wire keeps its size.
        let may = nominal_resistance_per_metre(values::material(&wire), values::size(&wire), Celsius(20.0));
        let share = (may.0 / tested.0.max(1e-9)).min(1.0);
        if share < 1.0 {
            wire.size = Fact::Given(Size::Metric(SquareMm(claimed.0 * share)));
        }
    }
    if let Some(tested) = run.laying.tested_per_metre(length) {
        wire.stated_resistance = Fact::Given(tested);
    }
    Some(wire)
}

/// The sheet with each wire as it really is, where that was counted or measured; nearly always the sheet itself.
pub(crate) fn as_measured(sheet: &Sheet) -> Cow<'_, Sheet> {
    let told = |run: &Run| !(run.laying.strands.is_unknown() && run.laying.tested_drop.is_unknown());
    if !sheet.runs.values().any(told) {
        return Cow::Borrowed(sheet);
    }
    let mut sheet = sheet.clone();
    for run in sheet.runs.values_mut() {
        if let Some(wire) = true_wire(run) {
            run.wire = wire;
        }
    }
    Cow::Owned(sheet)
}
