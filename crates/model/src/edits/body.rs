//! Edits of the vehicle's body: its shape, what is told of its places and passages, and the routes that runs take
//! through it.

use super::{EditError, put_run, run_of, set_name};
use crate::body::{Body, OwnPassage, OwnPlace, check_name};
use crate::edit::{Change, Edit};
use crate::fact::Fact;
use crate::id::RunId;
use crate::job::{Job, Run, SheetKind, named};
use crate::limits::{MOST_OWN_PLACES, check_route};
use crate::property::{PropertyError, PropertySet};
use crate::quantity::Metres;
use words::{Saying, say};

/// Of which of the two something is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Told {
    /// Of a place.
    Place,
    /// Of a passage.
    Passage,
}

/// The edit that changes the body in this way.
fn with_body(
    job: &Job,
    name: Saying,
    how: impl FnOnce(&mut Body) -> Result<(), EditError>,
) -> Result<Edit, EditError> {
    let mut settings = job.settings.clone();
    how(&mut settings.body)?;
    Ok(Edit::new(name, vec![Change::Settings(Box::new(settings))]))
}

/// Sets a property of the shape of the body, from its written form.
///
/// # Errors
/// When there is no such property, or the text does not fit.
pub fn set_body_property(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    with_body(job, say!("edit-set-body", name = set_name(name)), |body| {
        Ok(body.shape.set(name, text)?)
    })
}

/// Sets a property of a place or passage, from its written form. Where nothing is told of it yet, this is the first; where
/// nothing is left to tell, it is as the form has it again.
///
/// # Errors
/// When no place can be called so, there is no such property, or the text does not fit.
pub fn set_told_property(
    job: &Job,
    of: Told,
    place: &str,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    check_name(place).map_err(EditError)?;
    let saying = say!("edit-set", name = set_name(name), of = place);
    with_body(job, saying, |body| {
        room_for(body, of, place)?;
        match of {
            Told::Place => {
                let told = body.places.entry(place.to_owned()).or_default();
                told.set(name, text)?;
                if *told == OwnPlace::default() {
                    body.places.remove(place);
                }
            }
            Told::Passage => {
                let told = body.passages.entry(place.to_owned()).or_default();
                told.set(name, text)?;
                if *told == OwnPassage::default() {
                    body.passages.remove(place);
                }
            }
        }
        Ok(())
    })
}

/// Whether something is told of this one already; if not, that one more can be told of.
fn room_for(body: &Body, of: Told, place: &str) -> Result<bool, EditError> {
    let (there, count) = match of {
        Told::Place => (body.places.contains_key(place), body.places.len()),
        Told::Passage => (body.passages.contains_key(place), body.passages.len()),
    };
    if !there && count >= MOST_OWN_PLACES {
        return Err(EditError(say!("error-places", most = MOST_OWN_PLACES)));
    }
    Ok(there)
}

/// The edit that tells all of a place or passage of which nothing is told yet.
fn add_told(
    job: &Job,
    of: Told,
    name: &str,
    checked: Result<(), (&'static str, PropertyError)>,
    how: impl FnOnce(&mut Body),
) -> Result<Edit, EditError> {
    check_name(name).map_err(EditError)?;
    checked.map_err(|(_, why)| why)?;
    with_body(job, say!("edit-add", tag = name), |body| {
        if room_for(body, of, name)? {
            return Err(EditError(say!("error-place-taken", place = name)));
        }
        how(body);
        Ok(())
    })
}

/// Adds a place of the job's own, or tells all of one that the form has.
///
/// # Errors
/// When it cannot be called so, something is told of a place of this name already, or one of its values is out of range.
pub fn add_place(job: &Job, name: &str, place: OwnPlace) -> Result<Edit, EditError> {
    add_told(job, Told::Place, name, place.check(), |body| {
        body.places.insert(name.to_owned(), place);
    })
}

/// Puts a place of which something is told where it is, in metres from the front bumper and from the left side.
///
/// # Errors
/// When nothing is told of a place of this name, or the figures are out of range.
pub fn move_place(job: &Job, name: &str, from_front: f64, from_left: f64) -> Result<Edit, EditError> {
    let label = job.settings.body.places.get(name).map(|it| it.label.as_str());
    let called = label.filter(|label| !label.is_empty()).unwrap_or(name);
    with_body(job, say!("edit-move", what = called), |body| {
        let Some(place) = body.places.get_mut(name) else {
            return Err(EditError(say!("error-place-untold", place = name)));
        };
        place.from_front = Fact::Given(Metres(from_front));
        place.from_left = Fact::Given(Metres(from_left));
        place.check().map_err(|(_, why)| EditError(why.said))
    })
}

/// Adds a passage of the job's own, or tells all of one that the form has.
///
/// # Errors
/// When it cannot be called so, something is told of a passage of this name already, or one of its values is out of range.
pub fn add_passage(job: &Job, name: &str, passage: OwnPassage) -> Result<Edit, EditError> {
    add_told(job, Told::Passage, name, passage.check(), |body| {
        body.passages.insert(name.to_owned(), passage);
    })
}

/// Takes back all that is told of a place or passage: one that the form has is then as usual, one of the job's own is gone.
/// Parts and routes keep its name, so that telling it again brings it back.
///
/// # Errors
/// When nothing is told of it.
pub fn remove_told(job: &Job, of: Told, name: &str) -> Result<Edit, EditError> {
    with_body(job, say!("edit-delete", what = name), |body| {
        let there = match of {
            Told::Place => body.places.remove(name).is_some(),
            Told::Passage => body.passages.remove(name).is_some(),
        };
        if there {
            Ok(())
        } else {
            Err(EditError(say!("error-place-untold", place = name)))
        }
    })
}

/// Gives a run its route: names of the places and passages on its way, in order from its end `from`. An empty list takes
/// the route away.
///
/// # Errors
/// When the run is not there, or the route or one of its names is longer than a file takes.
pub fn set_route(job: &Job, on: SheetKind, id: RunId, route: Vec<String>) -> Result<Edit, EditError> {
    let run = run_of(job, on, id)?;
    let route: Vec<String> = route.into_iter().filter_map(named).collect();
    check_route(&route).map_err(EditError)?;
    let name = say!("edit-route", run = &run.tag);
    let routed = Run { route, ..run.clone() };
    Ok(Edit::new(name, vec![put_run(on, id, routed)]))
}
