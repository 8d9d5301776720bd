//! The rule that several checks of workmanship share: where a run comes through something that endangers it, a guard of a
//! kind that helps keeps it. Which spots and which guards is told by each check.

use crate::checks::damaged_run::is_live;
use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::lie::{Lie, Spot, guard_at, which};
use crate::mends::rerouting::reroute;
use crate::mends::set_run;
use crate::registry::Check;
use crate::wording::fact;
use model::conductor::FittedBy;
use model::laying::Guard;
use model::{Edit, Run, RunId};
use words::{Saying, say};

/// What a check says of a run and where.
pub(crate) type Says = fn(run: &str, spots: Vec<Saying>, live: bool) -> Saying;

/// A check that asks for a guard.
pub(crate) struct Rule {
    pub(crate) check: &'static Check,
    /// Whether a run has to be guarded here.
    pub(crate) asks: fn(&Lie, &Spot<'_>) -> bool,
    /// The property on which that rests, where it is only what the form of body usually has.
    pub(crate) guess: fn(&Spot<'_>) -> Option<&'static str>,
    /// Whether this guard helps here.
    pub(crate) helps: fn(&Spot<'_>, Guard) -> bool,
    /// What a mend puts there; nothing where a better way is the only help.
    pub(crate) fits: fn(&Spot<'_>) -> Option<Guard>,
    pub(crate) what: Says,
    pub(crate) remedy: Says,
    /// Whether another way is offered too.
    pub(crate) other_way: bool,
}

/// Stop for what a source can make live, Fix for the rest.
pub(crate) fn grade_of(ctx: &Ctx<'_>, id: RunId, run: &Run) -> Grade {
    if is_live(ctx, id, run) {
        Grade::Stop
    } else {
        Grade::Fix
    }
}

/// Where a run comes through what a rule asks about, by what is known of its guard there.
#[derive(Default)]
struct Found<'p> {
    bad: Vec<Spot<'p>>,
    unknown: Vec<Spot<'p>>,
    /// On the shortest way that was put in where the route does not tell.
    untold: Vec<Spot<'p>>,
}

/// Judges every run that has a way.
pub(crate) fn judge(ctx: &Ctx<'_>, out: &mut Findings, rule: &Rule) {
    let Some(lie) = &ctx.lie else { return };
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        let Some(walk) = lie.walk(at) else { continue };
        let spots = lie.spots(walk);
        let found = look(lie, rule, run, &spots);
        let tag = run.tag.as_str();
        let said = |spots: &[Spot<'_>]| spots.iter().map(|spot| lie.said(spot)).collect::<Vec<_>>();
        let grade = grade_of(ctx, *id, run);
        if !found.bad.is_empty() {
            let live = grade == Grade::Stop;
            let finding = rule.check.finding(
                (rule.what)(tag, said(&found.bad), live),
                (rule.remedy)(tag, said(&found.bad), live),
            );
            let mut finding = finding.grade(grade).runs([*id]).spots(&found.bad);
            for spot in &found.bad {
                if let Some(property) = (rule.guess)(spot) {
                    rests_on(&mut finding, lie, spot, property);
                }
            }
            let way = rule.other_way.then(|| reroute(ctx, &[*id], &|_| true)).flatten();
            out.add(finding.mend(way).mend(fit(rule, *id, run, &found.bad)));
        }
        let asked = [found.unknown.as_slice(), found.untold.as_slice()].concat();
        let (what, find) = if found.unknown.is_empty() {
            (
                say!("way-untold", run = tag, spots = said(&asked)),
                say!("way-untold-find", run = tag),
            )
        } else {
            (
                say!("way-guard-unknown", run = tag, spots = said(&asked)),
                say!("way-guard-find", run = tag),
            )
        };
        if !asked.is_empty() {
            let finding = rule.check.undecided(what, find).grade(grade);
            out.add(finding.runs([*id]).spots(&asked));
        }
    }
}

fn look<'p>(lie: &Lie, rule: &Rule, run: &Run, spots: &[Spot<'p>]) -> Found<'p> {
    let mut found = Found::default();
    for number in which(spots, |spot| (rule.asks)(lie, spot)) {
        let Some(spot) = spots.get(number) else { continue };
        match guard_at(run, spots, number) {
            Some(guard) if (rule.helps)(spot, guard) => {}
            // What the maker laid is guarded as he meant it, unless somebody found that nothing is left of that.
            Some(Guard::Nothing) => found.bad.push(*spot),
            _ if run.fitted_by == FittedBy::Maker => {}
            Some(_) => found.bad.push(*spot),
            None if spot.told => found.unknown.push(*spot),
            None => found.untold.push(*spot),
        }
    }
    found
}

/// Adds what a finding rests on: a property of a passage or place that its form usually has.
pub(crate) fn rests_on(finding: &mut Finding, lie: &Lie, spot: &Spot<'_>, property: &str) {
    let said = say!("assumed-of", of = lie.said(spot), property = fact(property));
    finding.assumed.insert(said);
}

/// The run with a guard that helps at each of these spots.
fn fit(rule: &Rule, id: RunId, run: &Run, spots: &[Spot<'_>]) -> Option<Edit> {
    let mut run = run.clone();
    let mut kinds: Vec<Saying> = Vec::new();
    for spot in spots {
        let guard = (rule.fits)(spot)?;
        run.laying.guards.0.insert(spot.name.to_owned(), guard);
        if !kinds.contains(&guard.said()) {
            kinds.push(guard.said());
        }
    }
    let name = say!("mend-guard", run = &run.tag, guards = kinds);
    Some(Edit::new(name, vec![set_run(id, run)]))
}
