//! `explain`: what a check looks for, why it matters, and its source.

use crate::Report;
use crate::args::ExplainCall;
use crate::table::{print, table};

pub(crate) fn run(call: &ExplainCall) -> Result<Report, String> {
    if let Some(folder) = &call.all_into {
        std::fs::create_dir_all(folder).map_err(|error| format!("{folder}: cannot be made: {error}"))?;
        for check in checks::CHECKS {
            let path = format!("{folder}/{}.md", check.name);
            std::fs::write(&path, checks::explain(check).markdown())
                .map_err(|error| format!("{path}: cannot be written: {error}"))?;
        }
        return Ok(Report::clean(format!(
            "{} files written into {folder}\n",
            checks::CHECKS.len()
        )));
    }
    let Some(name) = &call.check else {
        let mut all = table(&["Check", "Grade", "Holds when"]);
        for check in checks::CHECKS {
            all.add_row([check.name, check.grade.title(), check.holds_when]);
        }
        return Ok(Report::clean(print(&all)));
    };
    match checks::CHECKS.iter().find(|check| check.name == name) {
        Some(check) => Ok(Report::clean(checks::explain(check).markdown())),
        None => Err(format!(
            "there is no check `{name}`; `loomwright explain` lists them"
        )),
    }
}
