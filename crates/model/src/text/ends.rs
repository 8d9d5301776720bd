//! The ends of runs, looked up once all parts of a text are known.

use super::error::{MOST_ERRORS, closest};
use super::help::{abbreviate, row_of};
use super::parse::{Line, Parser, Pending, Placed, Tagged};
use crate::id::{PartId, TerminalRef};
use crate::job::{End, Sheet, SheetKind};
use crate::limits;

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
                Some(Tagged::Part(id)) => format!(
                    "write {text} and one of its terminals: {}",
                    self.terminals_of(sheet, id)
                ),
                _ => "write TAG.terminal like F1.in, or loose@100,50".to_owned(),
            };
            self.error(line, at, format!("`{text}` is not an end of a run"), help);
            return None;
        };
        if terminal.len() > limits::LONGEST_TERMINAL {
            let message = format!("a terminal's name has at most {} bytes", limits::LONGEST_TERMINAL);
            self.error(line, at, message, "");
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
                    let mut help = format!("it has {}", abbreviate(&names));
                    if let Some(meant) = closest(
                        terminal,
                        names
                            .iter()
                            .map(String::as_str)
                            .filter(|n| row_of(n) != row_of(terminal)),
                    ) {
                        help = format!("did you mean `{tag}.{meant}`? {help}");
                    }
                    let message = format!("the {word} `{tag}` has no terminal `{terminal}`");
                    let from = at.end.saturating_sub(terminal.len()).max(at.start);
                    self.error(line, from..at.end, message, help);
                }
                Some(End::On(end))
            }
            Some(Tagged::Unreadable) => None,
            Some(Tagged::Run) => {
                let help = "runs end on terminals of parts; to branch off a run, put a splice in it";
                self.error(line, at, format!("`{tag}` is a run, not a part"), help);
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
                    Some(meant) => format!("did you mean `{meant}`?"),
                    None if parts.is_empty() => "there are no parts on this sheet".to_owned(),
                    None => {
                        let shown: Vec<&str> = parts.iter().copied().take(20).collect();
                        let more = if parts.len() > shown.len() { ", …" } else { "" };
                        format!("the parts on this sheet are {}{more}", shown.join(", "))
                    }
                };
                let at = at.start..at.start + tag.len();
                self.error(line, at, format!("there is no part `{tag}` on this sheet"), help);
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
