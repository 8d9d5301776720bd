//! The ends of runs, looked up once all parts of a text are known.

use super::super::error::{MOST_ERRORS, closest};
use super::help::{abbreviate, row_of};
use super::{Line, Parser, Pending, Placed, Tagged};
use crate::id::{PartId, TerminalRef};
use crate::job::{End, Sheet, SheetKind};
use crate::limits;
use words::say;

impl<'t> Parser<'t> {
    /// Puts the runs on the sheets, once all parts are known.
    pub(super) fn join_runs(&mut self) {
        // Beyond so many errors it is no job, and looking for likely words in it would take for ever.
        for Pending {
            line,
            sheet,
            id,
            mut run,
            ends: [from, to],
        } in std::mem::take(&mut self.pending)
        {
            if self.errors.len() >= MOST_ERRORS {
                return;
            }
            let (Some(from), Some(to)) = (self.end(line, sheet, from), self.end(line, sheet, to)) else {
                continue;
            };
            run.from = from;
            run.to = to;
            self.job.sheets.entry(sheet).or_default().runs.insert(id, run);
        }
    }

    fn end(&mut self, line: Line<'t>, sheet: SheetKind, (text, at): Placed) -> Option<End> {
        if let Some(point) = text.strip_prefix("loose@") {
            return self.point(line, point, at).map(End::Loose);
        }
        let Some((tag, terminal)) = text.split_once('.') else {
            let known = self.tags.get(&sheet).and_then(|tags| tags.get(&text)).copied();
            let help = match known {
                Some(Tagged::Part(id)) => say!(
                    "text-end-terminals",
                    tag = &text,
                    words = self.terminals_of(sheet, id)
                ),
                _ => say!("text-end-form"),
            };
            self.error(line, at, say!("text-no-end", text = &text), help);
            return None;
        };
        if terminal.len() > limits::LONGEST_TERMINAL {
            let message = say!("text-terminal-long", most = limits::LONGEST_TERMINAL);
            self.error(line, at, message, None);
            return None;
        }
        if let Some(id) = tag.strip_prefix('*') {
            let id: PartId = self.id(line, at, id)?;
            return Some(End::On(TerminalRef::new(id, terminal)));
        }
        let tags = self.tags.entry(sheet).or_default();
        match tags.get(tag).copied() {
            Some(Tagged::Part(id)) => {
                let end = TerminalRef::new(id, terminal);
                let part = self.job.sheets.get(&sheet).and_then(|s| s.parts.get(&id));
                if part.is_some_and(|part| part.role(&end.terminal).is_none()) {
                    let names: Vec<String> = part
                        .map(|part| part.terminals().iter().map(|t| t.name.to_string()).collect())
                        .unwrap_or_default();
                    let word = part.map(|part| part.is.word()).unwrap_or_default();
                    let all = abbreviate(&names);
                    let mut help = say!("text-has", words = &all);
                    if let Some(meant) = closest(
                        terminal,
                        names
                            .iter()
                            .map(String::as_str)
                            .filter(|n| row_of(n) != row_of(terminal)),
                    ) {
                        help = say!("text-meant-has", meant = format!("{tag}.{meant}"), words = all);
                    }
                    let message = say!("text-no-terminal", word = word, tag = tag, terminal = terminal);
                    let from = at.end.saturating_sub(terminal.len()).max(at.start);
                    self.error(line, from..at.end, message, help);
                }
                Some(End::On(end))
            }
            Some(Tagged::Unreadable) => None,
            Some(Tagged::Run) => {
                self.error(line, at, say!("text-is-run", tag = tag), say!("text-is-run-help"));
                None
            }
            None => {
                let parts: Vec<&str> = tags
                    .iter()
                    .filter(|(_, what)| matches!(what, Tagged::Part(_)))
                    .map(|(tag, _)| tag.as_str())
                    .take(2_000)
                    .collect();
                let help = match closest(tag, parts.iter().copied()) {
                    Some(meant) => say!("text-meant", meant = meant),
                    None if parts.is_empty() => say!("text-no-parts"),
                    None => {
                        let shown: Vec<&str> = parts.iter().copied().take(20).collect();
                        let more = if parts.len() > shown.len() { ", …" } else { "" };
                        say!("text-parts-are", words = shown.join(", ") + more)
                    }
                };
                let at = at.start..at.start + tag.len();
                self.error(line, at, say!("text-no-part", tag = tag), help);
                None
            }
        }
    }

    fn terminals_of(&self, sheet: SheetKind, id: PartId) -> String {
        let part = self.job.sheets.get(&sheet).and_then(|s: &Sheet| s.parts.get(&id));
        let names: Vec<String> = part
            .map(|p| p.terminals().iter().map(|t| t.name.to_string()).collect())
            .unwrap_or_default();
        abbreviate(&names)
    }
}
