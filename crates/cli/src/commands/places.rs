//! `routes --places`: the places and passages that the body of a job has, by the names that parts and routes write.

use crate::Report;
use crate::input::json;
use crate::speech::{tell, text, words};
use crate::table::{print, table};
use body::{Facts, Hazard, Plan};
use comfy_table::{ColumnConstraint, Table};
use model::body::{Behind, Reach};
use model::conductor::Surroundings;
use serde_json::{Value, json};
use words::{Unit, precise};

/// The hazards of a place or passage as words in a list.
pub(super) fn hazards(all: &[Hazard]) -> String {
    let told: Vec<String> = all
        .iter()
        .map(|hazard| text(&format!("cli-hazard-{}", hazard.word())))
        .collect();
    if told.is_empty() {
        text("cli-none")
    } else {
        told.join(", ")
    }
}

/// What of a place or passage a table tells: what endangers a wire, what lies behind, what comes off.
fn told(facts: &Facts) -> [String; 3] {
    [
        hazards(&facts.hazards()),
        tell(&facts.behind.or(Behind::Nothing).said()),
        tell(&facts.reach.or(Reach::Open).said()),
    ]
}

fn facts_json(facts: &Facts) -> Value {
    json!({
        "heat": facts.heat.or(Surroundings::Cabin).word(),
        "moving": facts.moving.or(false),
        "crush": facts.crush.or(false),
        "wet": facts.wet.or(false),
        "sharp": facts.sharp.or(false),
        "airbag": facts.airbag.or(false),
        "behind": facts.behind.or(Behind::Nothing).word(),
        "reach": facts.reach.or(Reach::Open).word(),
    })
}

/// Names are there to be typed: they are not broken at the end of a column.
fn keep_whole(rows: &mut Table, columns: &[usize]) {
    for column in columns {
        if let Some(column) = rows.column_mut(*column) {
            column.set_constraint(ColumnConstraint::ContentWidth);
        }
    }
}

/// Places first, then passages.
pub(super) fn list(plan: &Plan, as_json: bool) -> Result<Report, String> {
    let name_of = |place: usize| plan.places.get(place).map_or("?", |place| place.name.as_str());
    if as_json {
        let places = plan.places.iter().map(|place| {
            let at = place.at;
            json!({
                "name": place.name,
                "from-front": at.x,
                "from-left": at.y,
                "height": at.z,
                "facts": facts_json(&place.facts),
            })
        });
        let passages = plan.passages.iter().map(|passage| {
            let [from, to] = passage.ends.map(name_of);
            json!({
                "name": passage.name,
                "from": from,
                "to": to,
                "kind": passage.kind.value().map(|kind| kind.word()),
                "length": passage.metres().0,
                "facts": facts_json(&passage.facts),
            })
        });
        let (places, passages): (Vec<Value>, Vec<Value>) = (places.collect(), passages.collect());
        return Ok(Report::clean(json(
            &json!({"places": places, "passages": passages}),
        )?));
    }
    let mut rows = table(&["place", "title", "meets", "behind", "reach"]);
    for place in &plan.places {
        let [meets, behind, reach] = told(&place.facts);
        rows.add_row([place.name.clone(), tell(&place.said()), meets, behind, reach]);
    }
    keep_whole(&mut rows, &[0]);
    let mut out = print(&rows);
    out.push('\n');
    let mut rows = table(&["passage", "ends", "kind", "length", "meets", "reach"]);
    for passage in &plan.passages {
        let [meets, _, reach] = told(&passage.facts);
        let [from, to] = passage.ends.map(name_of);
        let kind = passage.kind.value().map(|kind| tell(&kind.said()));
        rows.add_row([
            passage.name.clone(),
            format!("{from}\n{to}"),
            kind.unwrap_or_default(),
            words().figure(precise(passage.metres().0, Unit::Metre, 2)),
            meets,
            reach,
        ]);
    }
    keep_whole(&mut rows, &[0, 1]);
    out.push_str(&print(&rows));
    out.push_str(&text("cli-routes-care"));
    out.push('\n');
    Ok(Report::clean(out))
}
