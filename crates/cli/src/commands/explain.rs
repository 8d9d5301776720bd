//! `explain`: what a check looks for, why it matters, and its source.

use crate::Report;
use crate::args::ExplainCall;
use crate::speech::{tell, words};
use crate::table::{print, table, wrap};
use words::say;

pub(crate) fn run(call: &ExplainCall) -> Result<Report, String> {
    let text = match &call.check {
        _ if call.all => {
            let pages: Vec<String> = checks::explain_all()
                .iter()
                .map(|it| it.markdown(words()).trim_end().to_owned())
                .collect();
            pages.join("\n\n") + "\n"
        }
        Some(name) => {
            let check = checks::check_named(name).ok_or_else(|| {
                let near: Vec<&str> = checks::CHECKS
                    .iter()
                    .map(|check| check.name)
                    .filter(|known| shares_word(known, name))
                    .collect();
                tell(&if near.is_empty() {
                    say!("cli-no-check", name = name)
                } else {
                    say!("cli-no-check-near", name = name, near = near.join(", "))
                })
            })?;
            checks::explain(check).markdown(words())
        }
        None => {
            let mut all = table(&["check", "grade", "holds"]);
            for check in checks::CHECKS {
                all.add_row([
                    check.name.to_owned(),
                    tell(&check.grade.said()),
                    tell(&check.holds_when()),
                ]);
            }
            return Ok(Report::clean(print(&all)));
        }
    };
    Ok(Report::clean(if call.markdown { text } else { wrap(&text) }))
}

/// Whether two names made of words joined by dashes have a word in common.
fn shares_word(known: &str, asked: &str) -> bool {
    known
        .split('-')
        .any(|word| word.len() > 2 && asked.split('-').any(|other| other == word))
}
