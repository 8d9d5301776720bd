//! `lists`: every list of the job: as tables, as comma-separated values, or as JSON.

use crate::Report;
use crate::args::ListsCall;
use crate::input::{Opened, json, listed, open, unread, unwritten};
use crate::speech::{tell, text as text_of, words};
use crate::table::{paper, wrap};
use model::quantity::Share;
use paperwork::{List, PriceList, Table, Terms, Work};
use words::say;

/// The lists that are asked for; all of them without any.
fn wanted(call: &ListsCall) -> Result<Vec<List>, String> {
    if call.lists.is_empty() {
        return Ok(List::ALL.to_vec());
    }
    let find = |word: &String| {
        List::from_word(word).ok_or_else(|| {
            let all: Vec<&str> = List::ALL.iter().map(|list| list.word()).collect();
            tell(&say!("cli-no-list", name = word, names = all.join(", ")))
        })
    };
    call.lists.iter().map(find).collect()
}

/// The work that a call is about.
pub(crate) fn work<'j>(opened: &'j Opened, since: Option<model::SheetKind>) -> Result<Work<'j>, String> {
    Work::of(&opened.job, opened.kind, since).ok_or_else(|| {
        let earlier: Vec<&str> = opened
            .job
            .sheets
            .keys()
            .filter(|kind| **kind < opened.kind)
            .map(|kind| kind.word())
            .collect();
        tell(&say!(
            "cli-no-sheet-since",
            sheet = opened.kind.word(),
            there = listed(&earlier)
        ))
    })
}

fn terms(call: &ListsCall) -> Result<Terms, String> {
    let mut terms = Terms::read_by(words());
    if let Some(percent) = call.waste {
        terms.waste = Share(percent / 100.0);
    }
    if let Some(path) = &call.price_list {
        terms.prices = price_list(path)?;
    }
    Ok(terms)
}

/// A shop's price list, whole: a price that cannot be read would be left out in silence.
pub(crate) fn price_list(path: &str) -> Result<PriceList, String> {
    let text = std::fs::read_to_string(path).map_err(|error| unread(path, &error))?;
    let list = PriceList::read(&text, words());
    if let Some(line) = list.unread.first() {
        return Err(tell(&say!("cli-price-unread", file = path, line = *line)));
    }
    if list.by_article.is_empty() {
        return Err(tell(&say!("cli-no-prices", file = path)));
    }
    Ok(list)
}

pub(crate) fn run(call: &ListsCall) -> Result<Report, String> {
    let wanted = wanted(call)?;
    let mut opened = open(&call.job)?;
    // The call's conditions are those that the lists reckon with.
    opened.job.settings = opened.settings.clone();
    let work = work(&opened, call.since)?;
    let tables = paperwork::lists(&work, &terms(call)?, &wanted);
    if call.job.json {
        let all: Vec<serde_json::Value> = tables.iter().map(paperwork::json).collect();
        return Ok(Report::clean(json(&all)?));
    }
    if call.csv {
        return csv(call, &tables);
    }
    let mut out = tell(&work.heading()) + "\n";
    for table in &tables {
        // Among all lists an empty one says nothing; one that was asked for says that it is empty.
        if table.rows.is_empty() && table.notes.is_empty() && call.lists.is_empty() {
            continue;
        }
        out.push('\n');
        out.push_str(&tell(&table.title()));
        out.push('\n');
        if table.rows.is_empty() {
            out.push_str(&(text_of("cli-list-empty") + "\n"));
        } else {
            out.push_str(&paper(table));
        }
        for note in &table.notes {
            out.push_str(&wrap(&tell(note)));
        }
    }
    Ok(Report::clean(out))
}

fn csv(call: &ListsCall, tables: &[Table]) -> Result<Report, String> {
    match (&call.output, tables) {
        (None, [table]) => Ok(Report::clean(paperwork::csv(table, words()))),
        (None, _) => Err(text_of("cli-csv-one")),
        (Some(folder), tables) => {
            std::fs::create_dir_all(folder).map_err(|error| unwritten(folder, &error))?;
            let mut out = String::new();
            for table in tables {
                let path = format!("{}/{}.csv", folder.trim_end_matches('/'), table.name);
                // The mark in front tells spreadsheets that it is UTF-8.
                let text = format!("\u{feff}{}", paperwork::csv(table, words()));
                std::fs::write(&path, text).map_err(|error| unwritten(&path, &error))?;
                out.push_str(&(tell(&say!("cli-written", file = path)) + "\n"));
            }
            Ok(Report::clean(out))
        }
    }
}
