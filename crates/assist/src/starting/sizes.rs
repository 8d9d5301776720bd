//! First sizes of feeds and returns and ratings of their fuses, by the rules that the checks hold; then what the checks still
//! find is mended by their own mends.
//!
//! Each limb of the supply has one size for its runs and one device before it. The device carries its lasting current at the
//! share that the profile allows and does not open in bursts; every run bears the rating of its device where it lies. A limb
//! that loses too much voltage gets the next size, that one first which then loses least.

use super::planner::Limb;
use crate::mending::mend_all;
use checks::{Analysis, analyse};
use circuit::RunFlow;
use model::conductor::{Material, Size};
use model::kinds::PartKind;
use model::quantity::{Amps, Celsius};
use model::{Fact, PartId, RunId, Settings, Sheet, SheetKind};
use reference::ampacity::{AmpacityQuery, allowable_current};
use reference::fuses::{family, fuse_resistance, must_open_at, rating_not_above, rating_not_below};

/// Metric sizes that shops keep by the reel, in mm² (common practice); others of the series are made, and seldom bought.
const KEPT: [f64; 13] = [
    0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0,
];
/// The thickest gauge that is laid: 2/0.
const THICKEST: i8 = -1;

/// The sizes of the series of one, as far as shops keep them.
fn series(size: Size) -> impl Iterator<Item = Size> {
    size.series().filter(|it| match it {
        Size::Metric(area) => KEPT.contains(&area.0),
        Size::Awg(number) => *number >= THICKEST,
    })
}

/// How often sizes are put in and judged again.
const ROUNDS: usize = 24;
/// Alternators that are made, in A.
pub(super) const ALTERNATORS: [f64; 6] = [120.0, 150.0, 180.0, 220.0, 250.0, 300.0];

/// Puts sizes and ratings in until the checks have nothing to say, or nothing helps. Gives the sheet, what the checks say of
/// it, and the current of the alternator where that was assumed.
pub(super) fn settle(
    mut sheet: Sheet,
    settings: &Settings,
    on: SheetKind,
    limbs: &[Limb],
    alternator: Option<PartId>,
    told: bool,
) -> (Sheet, Analysis, Option<Amps>) {
    let mut analysis = analyse(&sheet, settings);
    let mut more = vec![More::default(); limbs.len()];
    for _ in 0..ROUNDS {
        let before = sheet.clone();
        rate(&mut sheet, settings, limbs, &analysis, &more);
        if !told {
            strengthen(&mut sheet, alternator, &analysis);
        }
        if sheet == before {
            if !thicken(&sheet, limbs, &analysis, &mut more) && !lay_thickest(limbs, &analysis, &mut more) {
                break;
            }
            rate(&mut sheet, settings, limbs, &analysis, &more);
            if sheet == before {
                break;
            }
        }
        analysis = analyse(&sheet, settings);
    }
    mend(&mut sheet, settings, on, &mut analysis);
    let current = alternator
        .filter(|_| !told)
        .and_then(|id| match &sheet.parts.get(&id)?.is {
            PartKind::Alternator(it) => it.current.value(),
            _ => None,
        });
    (sheet, analysis, current)
}

/// By how many steps a limb got more than its current asks for, since too much was lost along it.
#[derive(Clone, Copy, Default)]
struct More {
    size: usize,
    rating: usize,
}

/// A rating of each device, and a size of each limb that bears it.
fn rate(sheet: &mut Sheet, settings: &Settings, limbs: &[Limb], analysis: &Analysis, more: &[More]) {
    let mut ratings: Vec<Amps> = limbs
        .iter()
        .map(|limb| {
            let needed = needed(sheet, settings, limb, analysis);
            rating_not_below(form(sheet, limb).into(), needed).unwrap_or(needed)
        })
        .collect();
    // A device is no smaller than those behind it.
    for at in (0..limbs.len()).rev() {
        let (Some(rating), Some(above)) = (ratings.get(at).copied(), limbs.get(at).and_then(|it| it.from))
        else {
            continue;
        };
        let Some(form) = limbs.get(above).map(|limb| form(sheet, limb)) else {
            continue;
        };
        if let Some(above) = ratings.get_mut(above).filter(|it| it.0 < rating.0) {
            *above = rating_not_below(form.into(), rating).unwrap_or(rating);
        }
    }
    for (at, limb) in limbs.iter().enumerate() {
        let (Some(rating), Some(more)) = (ratings.get(at).copied(), more.get(at)) else {
            continue;
        };
        let (least, rating) = match size(sheet, limb, rating, analysis) {
            Some(size) => (size, rating),
            None => {
                // Nothing that is laid bears it: as much as the thickest does, and the checks tell the rest.
                let first = limb
                    .runs
                    .first()
                    .and_then(|id| sheet.runs.get(id)?.wire.size.value());
                let Some(thickest) = first.and_then(|it| series(it).last()) else {
                    continue;
                };
                let bears = limb_bears(sheet, limb, thickest, analysis).unwrap_or(rating);
                let rating = rating_not_above(form(sheet, limb).into(), bears).unwrap_or(rating);
                (thickest, rating)
            }
        };
        let sizes: Vec<Size> = series(least).filter(|it| it.area() >= least.area()).collect();
        let size = sizes.get(more.size).or(sizes.last()).copied().unwrap_or(least);
        // A larger fuse loses less; the wire bears it, and the device before it is no smaller.
        let above = limb
            .from
            .and_then(|at| ratings.get(at))
            .map_or(f64::INFINITY, |it| it.0);
        let most = limb_bears(sheet, limb, size, analysis)
            .map_or(rating.0, |it| it.0)
            .min(above);
        let larger = family(form(sheet, limb).into())
            .ratings
            .iter()
            .filter(|it| **it >= rating.0);
        let larger: Vec<f64> = larger
            .take(more.rating + 1)
            .copied()
            .filter(|it| *it <= most)
            .collect();
        let rating = larger.last().map_or(rating, |it| Amps(*it));
        if let Some(it) = ratings.get_mut(at) {
            *it = rating;
        }
        set_rating(sheet, limb, rating);
        for run in &limb.runs {
            if let Some(run) = sheet.runs.get_mut(run) {
                run.wire.size = Fact::Given(size);
            }
        }
    }
}

fn form(sheet: &Sheet, limb: &Limb) -> model::kinds::supply::FuseForm {
    match sheet.parts.get(&limb.device.0).map(|part| &part.is) {
        Some(PartKind::Fuse(it)) => it.form,
        Some(PartKind::Block(it)) => it.form,
        _ => model::kinds::supply::FuseForm::Strip61,
    }
}

/// The rating that the device of a limb needs.
fn needed(sheet: &Sheet, settings: &Settings, limb: &Limb, analysis: &Analysis) -> Amps {
    let share = settings
        .limits
        .get("continuous-load-share")
        .copied()
        .or_else(|| {
            reference::protection::limit(settings.conditions.profile, "continuous-load-share")
                .map(|it| it.value)
        })
        .unwrap_or(0.8)
        .max(0.01);
    let multiple = must_open_at(form(sheet, limb).into());
    let devices = analysis.study.devices.iter().filter(|it| {
        let output = limb.device.1.map(|n| format!("out{n}"));
        let is = it.device.part == limb.device.0
            && it.device.output.as_ref().map(|it| it.as_str()) == output.as_deref();
        is || limb.twins.contains(&it.device.part)
    });
    devices.fold(Amps::ZERO, |most, it| {
        let lasting = it.current.rms.abs() / share;
        // What draws now and then draws all of it then, for minutes: a fuse that only bears it as a burst would not do.
        let is_load = |id: &PartId| matches!(sheet.parts.get(id).map(|it| &it.is), Some(PartKind::Load(_)));
        let only_loads = !it.serves.is_empty() && it.serves.iter().all(is_load);
        let burst = it.current.burst.abs() / if only_loads { 1.0 } else { multiple };
        // Thicker wire lets a little more through: a rating that just fits would not hold.
        most.max(lasting * 1.02).max(burst * 1.03)
    })
}

fn set_rating(sheet: &mut Sheet, limb: &Limb, rating: Amps) {
    for part in std::iter::once(&limb.device.0).chain(&limb.twins) {
        match sheet.parts.get_mut(part).map(|part| &mut part.is) {
            Some(PartKind::Fuse(it)) => it.rating = Fact::Given(rating),
            Some(PartKind::Block(it)) => {
                let at = limb.device.1.and_then(|n| n.checked_sub(1));
                if let Some(slot) = at.and_then(|at| it.fuses.0.get_mut(at)) {
                    *slot = Some(rating);
                }
            }
            _ => {}
        }
    }
}

/// The least size that bears a rating wherever the runs of a limb lie; nothing where none does.
fn size(sheet: &Sheet, limb: &Limb, rating: Amps, analysis: &Analysis) -> Option<Size> {
    let first = limb
        .runs
        .first()
        .and_then(|id| sheet.runs.get(id)?.wire.size.value())?;
    series(first)
        .filter(|size| size.area().0 >= limb.least * 0.97)
        .find(|size| limb_bears(sheet, limb, *size, analysis).is_some_and(|bears| bears >= rating))
}

/// What the runs of a limb bear where they lie, in a size.
fn limb_bears(sheet: &Sheet, limb: &Limb, size: Size, analysis: &Analysis) -> Option<Amps> {
    let all = limb.runs.iter().map(|id| bears(sheet, *id, size, analysis));
    all.reduce(|a, b| Some(a?.min(b?))).flatten()
}

/// What a run bears where it lies, in another size.
fn bears(sheet: &Sheet, id: RunId, size: Size, analysis: &Analysis) -> Option<Amps> {
    let (run, flow) = (sheet.runs.get(&id)?, analysis.study.runs.get(&id)?);
    let query = |size: Size, bundled: u32| AmpacityQuery {
        material: Material::Copper,
        area: size.area(),
        insulation: run.wire.insulation.value().unwrap_or(Celsius(105.0)),
        ambient: flow.ambient,
        bundled,
    };
    // What its bundle costs it is in what it bears now.
    let own = allowable_current(query(run.wire.size.value()?, 1));
    let bundled = flow.allowable?.0 / own.0.max(1e-9);
    Some(allowable_current(query(size, 1)) * bundled)
}

/// What is lost too much of along some runs: volts to a load, or the resistance of its return.
struct Loss {
    runs: Vec<RunId>,
    /// How much of it is too much.
    over: f64,
    /// What a run loses of it.
    of: fn(&RunFlow) -> f64,
    /// Whether it is volts.
    is_drop: bool,
}

/// The losses that thicker runs and larger fuses mend, gravest first.
fn losses(analysis: &Analysis) -> impl Iterator<Item = Loss> {
    let volts: fn(&RunFlow) -> f64 = |flow| flow.drop.0.abs();
    let milliohms: fn(&RunFlow) -> f64 =
        |flow| 1e3 * (flow.wire_resistance.0 + flow.ending_resistance.iter().map(|it| it.0).sum::<f64>());
    analysis.findings.iter().filter_map(move |finding| {
        let is_drop = finding.check == "voltage-drop";
        let of = match finding.check {
            "voltage-drop" => volts,
            "return-too-long" => milliohms,
            _ => return None,
        };
        let circuit = finding
            .parts
            .first()
            .and_then(|it| analysis.study.circuits.get(it));
        let runs = match circuit {
            Some(circuit) if is_drop => circuit.all_runs.iter().copied().collect(),
            Some(circuit) if finding.runs.is_empty() => circuit
                .returns
                .iter()
                .flat_map(|way| way.runs.iter().copied())
                .collect(),
            _ => finding.runs.clone(),
        };
        let over = finding.measure.map_or(0.0, |it| it.value - it.limit);
        Some(Loss {
            runs,
            over,
            of,
            is_drop,
        })
    })
}

/// Thickens limbs and enlarges their fuses until what is lost too much of should be saved, each time where that saves most for
/// its metal; a fuse costs none. With loss *u* over area *A*, the next size *A'* saves *u·(1 − A/A')*. Whether anything helps.
fn thicken(sheet: &Sheet, limbs: &[Limb], analysis: &Analysis, more: &mut [More]) -> bool {
    losses(analysis).any(|loss| mend_loss(sheet, limbs, analysis, &loss, more))
}

/// Where nothing does, the main feeds are laid as thick as shops keep them: what is left over is then told as it is at best.
/// Whether any was thinner.
fn lay_thickest(limbs: &[Limb], analysis: &Analysis, more: &mut [More]) -> bool {
    if losses(analysis).next().is_none() {
        return false;
    }
    let mut any = false;
    for (limb, more) in limbs.iter().zip(more) {
        if limb.from.is_none() && more.size < KEPT.len() {
            more.size = KEPT.len();
            any = true;
        }
    }
    any
}

/// A limb while it is thickened.
struct Thick {
    size: Size,
    rating: f64,
    /// What its runs lose, times their area; what its devices carry; metres of wire.
    lost: f64,
    carries: f64,
    metres: f64,
}

fn mend_loss(sheet: &Sheet, limbs: &[Limb], analysis: &Analysis, loss: &Loss, more: &mut [More]) -> bool {
    let mut thick: Vec<Option<Thick>> = limbs
        .iter()
        .map(|limb| {
            let size = limb
                .runs
                .first()
                .and_then(|id| sheet.runs.get(id)?.wire.size.value())?;
            let on_way: Vec<&RunId> = limb.runs.iter().filter(|id| loss.runs.contains(id)).collect();
            let flows = || on_way.iter().filter_map(|id| analysis.study.runs.get(id));
            let metres = on_way
                .iter()
                .filter_map(|id| sheet.runs.get(id)?.wire.length.value());
            (!on_way.is_empty()).then(|| Thick {
                size,
                rating: rating_of(sheet, limb),
                lost: flows().map(loss.of).sum::<f64>() * size.area().0,
                carries: flows().map(|flow| flow.current.burst.0.abs()).fold(0.0, f64::max),
                metres: metres.map(|it| it.0).sum(),
            })
        })
        .collect();
    let mut ratings: Vec<f64> = limbs.iter().map(|limb| rating_of(sheet, limb)).collect();
    let before = more.to_vec();
    let mut saved = 0.0;
    while saved <= loss.over * 1.03 {
        // By the limb: what is saved, how much that is worth, and the next size, or the next rating.
        let mut best: Option<(usize, f64, f64, Result<Size, f64>)> = None;
        for (at, (limb, it)) in limbs.iter().zip(&thick).enumerate() {
            let Some(it) = it else { continue };
            let mut offer = |gain: f64, worth: f64, what: Result<Size, f64>| {
                if gain > 1e-6 && best.as_ref().is_none_or(|(_, _, most, _)| worth > *most) {
                    best = Some((at, gain, worth, what));
                }
            };
            if let Some(next) = series(it.size).find(|next| next.area() > it.size.area()) {
                let gain = it.lost * (1.0 / it.size.area().0 - 1.0 / next.area().0);
                let metal = (next.area().0 - it.size.area().0) * it.metres.max(0.1);
                offer(gain, gain / metal, Ok(next));
            }
            let kind = form(sheet, limb).into();
            let next = family(kind)
                .ratings
                .iter()
                .copied()
                .find(|next| *next > it.rating);
            let bears = limb_bears(sheet, limb, it.size, analysis).map_or(0.0, |it| it.0);
            let above = limb.from.and_then(|above| ratings.get(above)).copied();
            let most = bears.min(above.unwrap_or(f64::INFINITY));
            if let Some(next) = next.filter(|next| loss.is_drop && *next <= most) {
                let ohms = |rating: f64| fuse_resistance(kind, Amps(rating)).usual.0;
                let devices = 1.0 + limb.twins.len() as f64;
                let gain = it.carries * (ohms(it.rating) - ohms(next)) * devices;
                // As much as a square millimetre over a metre: it costs next to nothing, and still is no end in itself.
                offer(gain, gain, Err(next));
            }
        }
        let Some((at, gain, _, what)) = best else {
            // No size that is laid does it: then metal is not spent on it either.
            more.copy_from_slice(&before);
            return false;
        };
        if let (Some(Some(it)), Some(more)) = (thick.get_mut(at), more.get_mut(at)) {
            match what {
                Ok(size) => {
                    it.size = size;
                    more.size += 1;
                }
                Err(rating) => {
                    it.rating = rating;
                    more.rating += 1;
                    if let Some(it) = ratings.get_mut(at) {
                        *it = rating;
                    }
                }
            }
        }
        saved += gain;
    }
    true
}

fn rating_of(sheet: &Sheet, limb: &Limb) -> f64 {
    let rating = match sheet.parts.get(&limb.device.0).map(|part| &part.is) {
        Some(PartKind::Fuse(it)) => it.rating.value(),
        Some(PartKind::Block(it)) => {
            let at = limb.device.1.and_then(|n| n.checked_sub(1));
            at.and_then(|at| it.fuses.0.get(at).copied().flatten())
        }
        _ => None,
    };
    rating.map_or(0.0, |it| it.0)
}

/// The next larger alternator, where the one that was assumed gives too little.
fn strengthen(sheet: &mut Sheet, alternator: Option<PartId>, analysis: &Analysis) {
    if !analysis.findings.iter().any(|it| it.check == "over-budget") {
        return;
    }
    let part = alternator.and_then(|id| sheet.parts.get_mut(&id));
    if let Some(PartKind::Alternator(it)) = part.map(|part| &mut part.is)
        && let Some(next) = ALTERNATORS
            .iter()
            .find(|next| it.current.value().is_none_or(|now| **next > now.0))
    {
        it.current = Fact::Assumed(Amps(*next));
        it.idle_current = Fact::Assumed(Amps(next / 2.0));
    }
}

/// Makes all mends of what is left that need nobody's choice.
fn mend(sheet: &mut Sheet, settings: &Settings, on: SheetKind, analysis: &mut Analysis) {
    if analysis.findings.is_empty() {
        return;
    }
    let mut job = model::Job {
        settings: settings.clone(),
        ..model::Job::default()
    };
    job.sheets.insert(on, sheet.clone());
    let mended = mend_all(&job, on);
    if mended.edit.changes.is_empty() {
        return;
    }
    job.apply(mended.edit);
    if let Some(mended) = job.sheets.remove(&on) {
        *analysis = analyse(&mended, settings);
        *sheet = mended;
    }
}
