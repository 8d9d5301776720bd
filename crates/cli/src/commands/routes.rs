//! `routes`: which way each run takes through the vehicle's body, how long it is and what endangers it there; for one run,
//! the two best ways that it could take.

use crate::Report;
use crate::args::RoutesCall;
use crate::input::{json, open, unwritten};
use crate::speech::{tell, text, words};
use crate::table::{print, table};
use body::{Hazard, NoWalk, Plan, Proposal, Walk};
use model::{Fact, Run, RunId, Sheet};
use serde_json::{Value, json};
use std::fmt::Write;
use words::{Saying, Unit, precise, say};

pub(crate) fn run(call: &RoutesCall) -> Result<Report, String> {
    let mut opened = open(&call.job)?;
    let plan = Plan::of(&opened.job.settings.body).ok_or_else(no_body)?;
    if call.places {
        return super::places::list(&plan, call.job.json);
    }
    let wanted = match &call.run {
        Some(tag) => Some(opened.sheet().run_by_tag(tag).map(|(id, _)| id).ok_or_else(|| {
            let sheet = opened.sheet();
            let tags: Vec<&str> = sheet.runs.values().map(|run| run.tag.as_str()).collect();
            tell(&say!("cli-no-run", tag = tag, tags = tags.join(" ")))
        })?),
        None => None,
    };
    if call.anew {
        let routed = body::route_all(&plan, &opened.sheet(), opened.kind);
        opened.job.apply(routed.edit);
    }
    let sheet = opened.sheet();
    let laid = body::lay(&sheet, &opened.settings);
    if let Some(path) = &call.output {
        let written = model::file::write(&opened.job);
        std::fs::write(path, written).map_err(|error| unwritten(path, &error))?;
    }
    let chosen = laid
        .runs
        .iter()
        .filter(|(id, _)| wanted.is_none_or(|wanted| wanted == **id));
    if call.job.json {
        let all: Vec<Value> = chosen
            .map(|(id, run)| as_json(&plan, &laid, *id, run, wanted.is_some()))
            .collect();
        return Ok(Report::clean(json(&all)?));
    }
    let mut out = String::new();
    if let Some(path) = &call.output {
        let _ = writeln!(out, "{}", tell(&say!("cli-written", file = path)));
    }
    match wanted.and_then(|id| Some((id, laid.runs.get(&id)?))) {
        Some((id, run)) => one(&plan, &laid, id, run, &mut out),
        None => {
            let mut rows = table(&["run", "length", "meets", "route"]);
            for (_, run) in chosen {
                rows.add_row(row(&plan, &laid, run));
            }
            out.push_str(&print(&rows));
        }
    }
    for problem in &plan.problems {
        let _ = writeln!(out, "{}", tell(&say!("cli-note", note = problem)));
    }
    let _ = writeln!(out, "{}", text("cli-routes-care"));
    Ok(Report::clean(out))
}

/// That the job does not tell the form of the body.
pub(super) fn no_body() -> String {
    let forms: Vec<&str> = model::body::BodyForm::ALL
        .iter()
        .map(|form| form.word())
        .collect();
    tell(&say!("cli-no-body", forms = forms.join(", ")))
}

/// What endangers a run on a way: each hazard with the passages that have it, but not the two ends.
fn hazards(plan: &Plan, walk: &Walk) -> Vec<Hazard> {
    let mut all: Vec<Hazard> = body::hazards_on(plan, walk)
        .into_iter()
        .flat_map(|(_, hazards)| hazards)
        .collect();
    all.sort();
    all.dedup();
    all
}

fn length(run: &Run) -> String {
    run.wire
        .length
        .marked("?", |length| words().figure(precise(length.0, Unit::Metre, 2)))
}

fn row(plan: &Plan, sheet: &Sheet, run: &Run) -> [String; 4] {
    let (meets, route) = match plan.walk(sheet, run) {
        Ok(walk) => (super::places::hazards(&hazards(plan, &walk)), names(plan, &walk)),
        Err(why) => (String::new(), tell(&why_not(plan, &why))),
    };
    [run.tag.clone(), length(run), meets, route]
}

/// A way by its names, as a run writes them.
fn names(plan: &Plan, walk: &Walk) -> String {
    let route = walk.route(plan);
    if route.is_empty() {
        let place = plan.places.get(walk.start);
        place.map_or_else(String::new, |place| {
            tell(&say!("cli-route-within", place = place.said()))
        })
    } else {
        route.join(" / ")
    }
}

fn why_not(plan: &Plan, why: &NoWalk) -> Saying {
    match why {
        NoWalk::NotRouted => say!("cli-route-none"),
        NoWalk::Unknown(names) => say!("cli-route-unknown", names = names.clone()),
        NoWalk::Apart(a, b) => {
            let place = |at: &usize| plan.places.get(*at).map_or_else(|| "?".into(), body::Place::said);
            say!("cli-route-apart", a = place(a), b = place(b))
        }
    }
}

fn one(plan: &Plan, sheet: &Sheet, id: RunId, run: &Run, out: &mut String) {
    let [tag, length, _, route] = row(plan, sheet, run);
    let _ = writeln!(
        out,
        "{}",
        tell(&say!("cli-route-now", run = tag, length = length, route = route))
    );
    let now = body::assess(plan, sheet, id);
    for reason in now.iter().flat_map(|now| &now.reasons) {
        let _ = writeln!(out, "   {}", tell(reason));
    }
    let proposals = body::propose(plan, sheet, id);
    if proposals.is_empty() {
        let _ = writeln!(out, "{}", text("cli-no-proposal"));
    }
    for (number, proposal) in proposals.iter().enumerate() {
        let _ = writeln!(out, "{}. {}", number + 1, names(plan, &proposal.walk));
        for reason in &proposal.reasons {
            let _ = writeln!(out, "   {}", tell(reason));
        }
    }
}

fn as_json(plan: &Plan, sheet: &Sheet, id: RunId, run: &Run, propose: bool) -> Value {
    let known = match run.wire.length {
        Fact::Given(_) => "given",
        Fact::Assumed(_) => "assumed",
        Fact::Computed(_) => "computed",
        Fact::Unknown => "unknown",
    };
    let mut all = json!({
        "run": id.to_string(),
        "tag": run.tag,
        "length": run.wire.length.value().map(|length| length.0),
        "length-is": known,
    });
    match plan.walk(sheet, run) {
        Ok(walk) => {
            all["route"] = walk.route(plan).into();
            all["hazards"] = met(plan, &walk);
        }
        Err(why) => all["no-route"] = tell(&why_not(plan, &why)).into(),
    }
    if propose {
        let proposals = body::propose(plan, sheet, id);
        all["proposals"] = proposals
            .iter()
            .map(|it| proposal_json(plan, sheet, it))
            .collect();
    }
    all
}

/// Passages of a way that endanger a run, and how.
fn met(plan: &Plan, walk: &Walk) -> Value {
    body::hazards_on(plan, walk)
        .into_iter()
        .filter_map(|(passage, hazards)| {
            let hazards: Vec<&str> = hazards.into_iter().map(Hazard::word).collect();
            Some(json!({"passage": plan.passages.get(passage)?.name, "hazards": hazards}))
        })
        .collect()
}

fn proposal_json(plan: &Plan, sheet: &Sheet, it: &Proposal) -> Value {
    let beside = |runs: &ordered::OrderedMap<RunId, model::quantity::Metres>| -> Value {
        runs.iter()
            .filter_map(|(id, far)| Some(json!({"run": sheet.runs.get(id)?.tag, "metres": far.0})))
            .collect()
    };
    let reasons: Vec<String> = it.reasons.iter().map(tell).collect();
    json!({
        "route": it.route,
        "length": it.length.0,
        "cost": it.cost,
        "hazards": met(plan, &it.walk),
        "beside": beside(&it.beside),
        "together": beside(&it.together),
        "reasons": reasons,
    })
}
