//! The order of building: ground and protection first, then what is mounted, what is laid, what can be measured cold, and
//! the battery last. And then the proof.

use crate::articles::{joined, listed, property_said};
use crate::cut::cut;
use crate::meter::Point;
use crate::steps::{Checklist, Phase, Steps, at_battery};
use crate::table::{colour, size_value};
use crate::terms::Terms;
use crate::tuning::target_volts;
use crate::work::{Becomes, Work, endings};
use circuit::{Purpose, Study};
use model::conductor::EndingMethod;
use model::kinds::supply::{GroundSurface, Ratings};
use model::laying::{Guard, Moved};
use model::quantity::Amps;
use model::{Part, PartId, PartKind, Run, RunId};
use ordered::{OrderedSet, Sort as _};
use reference::How;
use words::{Saying, Unit, drawn, precise, say};

/// The checklist.
#[must_use]
pub fn build(work: &Work<'_>, terms: &Terms) -> Checklist {
    let study = circuit::study(&work.sheet, &work.job.settings);
    let mut steps = Steps::of("build", work);
    steps.add(Phase::Isolate, "isolated", say!("step-isolated"), &[]);
    mount(&mut steps, Phase::Ground, |part| {
        matches!(part.is, PartKind::Ground(_))
    });
    let mut runs: Vec<RunId> = work.sheet.runs.keys().copied().collect();
    runs.order_by_key(|id| (rank(work, &study, *id), *id));
    let is_return = |id: &RunId| rank(work, &study, *id) == RETURN;
    let (returns, others): (Vec<RunId>, Vec<RunId>) = runs.into_iter().partition(|id| is_return(id));
    for id in returns {
        run_steps(&mut steps, Phase::Ground, id, terms);
    }
    mount(&mut steps, Phase::Protection, is_protection);
    mount(&mut steps, Phase::Parts, |part| {
        !is_protection(part) && !matches!(part.is, PartKind::Ground(_) | PartKind::Vehicle(_))
    });
    passages(&mut steps);
    for id in others {
        run_steps(&mut steps, Phase::Runs, id, terms);
    }
    cold(&mut steps, &study);
    battery(&mut steps);
    prove(&mut steps, &study);
    steps.finish()
}

fn is_protection(part: &Part) -> bool {
    matches!(
        part.is,
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Block(_)
    )
}

/// Returns come first, then what carries no supply, then feeds; those at the battery last.
const RETURN: u8 = 0;
fn rank(work: &Work<'_>, study: &Study, id: RunId) -> u8 {
    let purpose = study.runs.get(&id).map_or(Purpose::Nothing, |flow| flow.purpose);
    let near = work
        .sheet
        .runs
        .get(&id)
        .is_some_and(|run| at_battery(&work.sheet.parts, run));
    match purpose {
        Purpose::Return if !near => RETURN,
        Purpose::Nothing => 1,
        Purpose::Speaker => 2,
        Purpose::Signal => 3,
        Purpose::TurnOn => 4,
        Purpose::Feed | Purpose::BetweenSources if !near => 5,
        _ => 6,
    }
}

/// Steps for parts that are mounted, moved, put back or changed.
fn mount(steps: &mut Steps<'_, '_>, phase: Phase, wanted: impl Fn(&Part) -> bool) {
    let work = steps.work;
    for (id, part) in work.sheet.parts.iter().filter(|(_, part)| wanted(part)) {
        let becomes = work.part(*id);
        let mounted = work.is_bought(*id) || matches!(becomes, Becomes::Moved | Becomes::Refitted);
        if mounted {
            let what = mount_said(work, *id, part);
            steps.add(phase, &format!("part/{id}"), what, &[&part.tag]);
            // What goes back goes into the holes that it had.
            if becomes != Becomes::Refitted && !matches!(part.is, PartKind::Ground(_)) {
                look_behind(steps, phase, *id, part);
            }
        } else if becomes == Becomes::Changed {
            let changes = work.part_changes(*id);
            if changes.is_empty() {
                continue;
            }
            let was_apart = work.part_before(*id).is_some_and(|before| !is_mated(before));
            let what = if was_apart && is_mated(part) && changes.len() == 1 {
                say!("step-mate", tag = &part.tag, name = part.said())
            } else {
                say!(
                    "step-change",
                    tag = &part.tag,
                    name = part.said(),
                    changes = joined(changes, "paper-semicolon")
                )
            };
            steps.add(phase, &format!("change/{id}"), what, &[&part.tag]);
        }
    }
}

/// Whether a plug's halves are together; of what is no plug there is nothing to say.
fn is_mated(part: &Part) -> bool {
    match &part.is {
        PartKind::Plug(plug) => plug.mated,
        _ => true,
    }
}

fn mount_said(work: &Work<'_>, id: PartId, part: &Part) -> Saying {
    let place: Saying = match &part.place {
        Some(place) => work.place_said(place),
        None => say!("step-place-open"),
    };
    if let PartKind::Ground(ground) = &part.is {
        return match ground.surface.value() {
            Some(GroundSurface::MakersPoint) => {
                say!(
                    "step-ground-makers",
                    tag = &part.tag,
                    name = part.said(),
                    place = place
                )
            }
            _ => say!("step-ground", tag = &part.tag, name = part.said(), place = place),
        };
    }
    if let PartKind::Splice(_) = part.is {
        let runs: Vec<&str> = work.sheet.runs_of(id).map(|(_, run)| run.tag.as_str()).collect();
        return say!(
            "step-splice",
            tag = &part.tag,
            name = part.said(),
            runs = runs,
            place = place
        );
    }
    if is_protection(part) {
        return say!(
            "step-protection",
            tag = &part.tag,
            name = part.said(),
            place = place
        );
    }
    let put_back = matches!(work.part(id), Becomes::Refitted);
    match property_said(&part.mounting, "mounted") {
        Some(on) => say!(
            "step-mount-on",
            tag = &part.tag,
            name = part.said(),
            place = place,
            on = on
        ),
        None if put_back => say!("step-refit", tag = &part.tag, name = part.said(), place = place),
        None => say!("step-mount", tag = &part.tag, name = part.said(), place = place),
    }
}

/// A screw that goes into something else than metal is the worst that mounting can do.
fn look_behind(steps: &mut Steps<'_, '_>, phase: Phase, id: PartId, part: &Part) {
    let work = steps.work;
    let place = part
        .place
        .as_deref()
        .and_then(|name| work.plan.as_ref()?.place(name));
    let behind = place.and_then(|place| place.facts.behind.value());
    if let Some(behind) = behind.filter(|behind| *behind != model::body::Behind::Nothing) {
        let what = say!(
            "step-behind",
            tag = &part.tag,
            behind = model::said::choice(behind.title())
        );
        steps.add(phase, &format!("behind/{id}"), what, &[&part.tag]);
    }
}

/// Grommets and the like are set before runs are pulled.
fn passages(steps: &mut Steps<'_, '_>) {
    let work = steps.work;
    let mut all: OrderedSet<(&str, Guard)> = OrderedSet::new();
    for (id, run) in &work.sheet.runs {
        if work.is_laid(*id) || work.run(*id) == Becomes::Moved {
            let guards = run.laying.guards.0.iter();
            all.extend(guards.map(|(passage, guard)| (passage.as_str(), *guard)));
        }
    }
    for (passage, guard) in all {
        if matches!(
            guard,
            Guard::Grommet | Guard::Sleeve | Guard::Tube | Guard::Gaiter
        ) {
            let what = say!(
                "step-guard",
                passage = work.passage_said(passage),
                guard = model::said::choice(guard.title())
            );
            steps.add(
                Phase::Passages,
                &format!("guard/{passage}/{}", guard.word()),
                what,
                &[],
            );
        }
    }
}

/// One run: laid anew, laid another way, put back, finished anew at an end, or otherwise changed.
fn run_steps(steps: &mut Steps<'_, '_>, phase: Phase, id: RunId, terms: &Terms) {
    let work = steps.work;
    let Some(run) = work.sheet.runs.get(&id) else {
        return;
    };
    let way = || crate::becomes::run_said(&work.sheet, run);
    let becomes = work.run(id);
    if work.is_laid(id) {
        let size = run.wire.size.value();
        let what = say!(
            "step-lay",
            tag = &run.tag,
            size = size.map_or_else(
                || say!("paper-not-known"),
                |it| say!("as-it-stands", text = size_value(it))
            ),
            colour = colour(run.wire.jacket),
            length = cut(run, terms).map_or_else(
                || say!("paper-not-known"),
                |it| say!("as-it-stands", text = precise(it.length.0, Unit::Metre, 2))
            ),
            way = way(),
            through = through(work, run)
        );
        steps.add(phase, &format!("run/{id}"), what, &[&run.tag]);
    } else if matches!(becomes, Becomes::Moved | Becomes::Refitted) {
        let what = say!(
            "step-relay",
            tag = &run.tag,
            way = way(),
            through = through(work, run)
        );
        steps.add(phase, &format!("run/{id}"), what, &[&run.tag]);
    }
    let mut finished = false;
    for end in 0..2 {
        if work.is_finished(id, end) {
            finished = true;
            end_step(steps, phase, id, run, end);
        }
    }
    let changes = work.run_changes(id);
    if becomes == Becomes::Changed && !finished && !changes.is_empty() {
        let what = say!(
            "step-change",
            tag = &run.tag,
            name = way(),
            changes = joined(changes, "paper-semicolon")
        );
        steps.add(phase, &format!("change/{id}"), what, &[&run.tag]);
    }
}

/// The way a run takes, or that nobody told it.
fn through(work: &Work<'_>, run: &Run) -> Saying {
    match work.way_said(run) {
        Some(way) => say!("step-way", places = way),
        None => say!("step-way-open"),
    }
}

/// One end: how it is finished, and what it has to bear.
fn end_step(steps: &mut Steps<'_, '_>, phase: Phase, id: RunId, run: &Run, end: usize) {
    let work = steps.work;
    let at: Saying = match run.ends()[end.min(1)].terminal() {
        Some(at) => work.sheet.written(at).into(),
        None => say!("paper-loose"),
    };
    let method = endings(run)[end.min(1)].method.value();
    if matches!(method, Some(EndingMethod::Factory | EndingMethod::Loose)) {
        return;
    }
    let crimped = matches!(
        method,
        Some(EndingMethod::CrimpedRing | EndingMethod::CrimpedSpade | EndingMethod::CrimpedSplice)
    );
    let force = run
        .wire
        .size
        .value()
        .filter(|_| crimped)
        .and_then(|size| reference::crimps::pull_out_force(size.area()));
    let method = method.map_or_else(|| say!("paper-not-known"), |it| model::said::choice(it.title()));
    let what = match force {
        Some((newtons, source)) => say!(
            "step-end-pull",
            tag = &run.tag,
            at = at,
            method = method,
            force = precise(newtons, Unit::Plain("N"), 0),
            // Names of standards read alike in every language; how it is known is told apart.
            source = source.document.split(',').next().unwrap_or_default(),
            known = if source.how == How::Memory {
                "memory"
            } else {
                "read"
            }
        ),
        None => say!("step-end", tag = &run.tag, at = at, method = method),
    };
    steps.add(phase, &format!("end/{id}/{end}"), what, &[&run.tag]);
}

/// What a meter tells before the supply is on.
fn cold(steps: &mut Steps<'_, '_>, study: &Study) {
    let work = steps.work;
    steps.add(Phase::Cold, "short", say!("step-short"), &[]);
    for load in &study.channels {
        let Some(ohms) = load.dc_resistance else {
            continue;
        };
        let tag = work.part_tag(load.part);
        let what = say!(
            "step-ohms",
            tag = tag,
            channel = load.marking(),
            ohms = drawn(ohms.0, Unit::Plain("Ω"))
        );
        let name = format!("ohms/{}/{}", load.part, load.channel);
        steps.add(Phase::Cold, &name, what, &[tag]);
    }
    steps.add(Phase::Cold, "look", say!("step-look"), &[]);
}

/// Fuses from the loads towards the battery, the battery, and its own fuse last of all.
fn battery(steps: &mut Steps<'_, '_>) {
    let work = steps.work;
    let is_main = |id: PartId| {
        work.sheet
            .runs_of(id)
            .any(|(_, run)| at_battery(&work.sheet.parts, run))
    };
    let mut fuses: Vec<(bool, PartId, &Part)> = work
        .sheet
        .parts
        .iter()
        .filter(|(id, _)| work.is_bought(**id) || work.part(**id) != Becomes::Kept)
        .filter(|(_, part)| matches!(part.is, PartKind::Fuse(_) | PartKind::Block(_)))
        .map(|(id, part)| (is_main(*id), *id, part))
        .collect();
    fuses.order_by_key(|(main, id, _)| (*main, *id));
    let (mains, others): (Vec<_>, Vec<_>) = fuses.into_iter().partition(|(main, ..)| *main);
    for (_, id, part) in others {
        fuse_step(steps, id, part);
    }
    for (id, part) in &work.sheet.parts {
        if matches!(part.is, PartKind::Battery(_)) {
            let what = say!("step-battery", tag = &part.tag, name = part.said());
            steps.add(Phase::Battery, &format!("battery/{id}"), what, &[&part.tag]);
        }
    }
    for (_, id, part) in mains {
        fuse_step(steps, id, part);
    }
}

fn fuse_step(steps: &mut Steps<'_, '_>, id: PartId, part: &Part) {
    let amps = |rating: &Amps| -> Saying { say!("as-it-stands", text = drawn(rating.0, Unit::Plain("A"))) };
    let ratings: Vec<Saying> = match &part.is {
        PartKind::Fuse(fuse) => fuse.rating.as_ref().map(amps).into_iter().collect(),
        PartKind::Block(block) => {
            let Ratings(all) = &block.fuses;
            all.iter().flatten().map(amps).collect()
        }
        _ => Vec::new(),
    };
    if !ratings.is_empty() {
        let what = say!("step-fuse", tag = &part.tag, ratings = listed(ratings));
        steps.add(Phase::Battery, &format!("fuse/{id}"), what, &[&part.tag]);
    }
}

/// Measured, set, moved, and every complaint proven.
fn prove(steps: &mut Steps<'_, '_>, study: &Study) {
    let work = steps.work;
    let points = crate::meter::points(&work.sheet, study);
    let volts = points
        .iter()
        .filter(|point| matches!(point, Point::Volts(..)))
        .count();
    steps.add(Phase::Prove, "meter", say!("step-meter", count = volts), &[]);
    for load in &study.channels {
        let Some(part) = work.sheet.parts.get(&load.part) else {
            continue;
        };
        let channel = load.marking();
        let given = work
            .sheet
            .tunings
            .iter()
            .find(|it| it.of == part.tag && it.channel == channel)
            .and_then(|it| it.target.value());
        let target = given.or_else(|| target_volts(load));
        if let (PartKind::Amplifier(_), Some(volts)) = (&part.is, target) {
            let what = say!(
                "step-gain",
                tag = &part.tag,
                channel = channel,
                volts = precise(volts.0, Unit::Plain("V"), 1)
            );
            let name = format!("gain/{}/{}", load.part, load.channel);
            steps.add(Phase::Prove, &name, what, &[&part.tag]);
        }
    }
    for moved in [Moved::Doors, Moved::Lid, Moved::Seats, Moved::Flexed] {
        let what = say!("step-moved", moved = model::said::choice(moved.title()));
        steps.add(Phase::Prove, &format!("moved/{}", moved.word()), what, &[]);
    }
    for complaint in &work.job.thread.complaints {
        let what = say!("step-prove", tag = &complaint.tag, words = &complaint.words);
        steps.add(
            Phase::Prove,
            &format!("prove/{}", complaint.tag),
            what,
            &[&complaint.tag],
        );
    }
    steps.add(Phase::Prove, "sweep", say!("step-sweep"), &[]);
    steps.add(Phase::Prove, "handover", say!("step-handover"), &[]);
}
