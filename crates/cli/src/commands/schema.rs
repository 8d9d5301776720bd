//! `schema`: the JSON Schema of the job file, made from the types.

use crate::Report;
use crate::input::json;

pub(crate) fn run() -> Result<Report, String> {
    Ok(Report::clean(json(&model::schema::job_schema())?))
}
