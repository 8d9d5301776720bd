//! Reads the written form of a break: `W3 cut`, `W3 grounded at 50 % through 5 mΩ`, `D1.out2 open`, `B1.+ joined E1.stud`.

use super::{Break, Contact, HALF_WAY};
use crate::property::PropertyType;
use crate::quantity::{Ohms, Quantity, Share};
use crate::{PartId, RunId, Sheet, TerminalName, TerminalRef};
use words::{Saying, say};

/// The words that say what a break does.
const WORDS: &str = "cut, off, open, grounded, joined, resistive, poor, reversed, dead";

/// The word for the body, where something touches it.
pub(super) const BODY: &str = "body";

/// Most resistance that a break may have: above it nothing flows that a meter would show.
const MOST_OHMS: f64 = 1e6;

impl Break {
    /// Reads a break in tags, on a sheet: `W3 cut`, `W3 off LS1.+`, `W3 grounded at 50 % through 5 mΩ`, `F1 open`, `D1.out2 open`,
    /// `B1.+ joined E1.stud`, `W3 at 40 % joined W5`, `A1.+ joined body`, `W3 resistive 0.2 Ω`, `E1 poor 0.5 Ω`, `LS1 reversed`, `LS1.b reversed`, `A1 dead`. Where `at` is left
    /// out half way is meant, where `through` is, nothing lies between.
    ///
    /// # Errors
    /// When the sheet has no such thing or the words say no break; the text says what would do.
    pub fn read(text: &str, sheet: &Sheet) -> Result<Self, Saying> {
        let whole: Vec<&str> = text.split_whitespace().collect();
        if let (one, Some(other)) = split(&whole.join(" "), "joined") {
            return joined(sheet, one, other);
        }
        let mut words = whole.into_iter();
        let thing = words.next().ok_or_else(|| say!("break-nothing-said"))?;
        let word = words.next().unwrap_or_default();
        let rest: Vec<&str> = words.collect();
        let rest = rest.join(" ");
        let nothing_more = |made: Self| match rest.is_empty() {
            true => Ok(made),
            false => Err(say!("break-more-said", text = &rest, word = word)),
        };
        match word {
            "cut" => Ok(Self::Cut {
                run: run(sheet, thing)?,
                at: along(&rest, word)?,
            }),
            "off" => off(sheet, thing, &rest),
            // A run is opened by cutting it.
            "open" => match sheet.run_by_tag(thing) {
                Some((run, _)) => nothing_more(Self::Cut { run, at: HALF_WAY }),
                None => nothing_more(open(sheet, thing)?),
            },
            "grounded" => grounded(sheet, thing, &rest),
            "resistive" => Ok(Self::Resistive {
                run: run(sheet, thing)?,
                more: ohms(Some(&rest), false)?,
            }),
            "poor" => Ok(Self::Poor {
                part: part(sheet, thing)?,
                more: ohms(Some(&rest), false)?,
            }),
            "reversed" => nothing_more(reversed(sheet, thing)?),
            "dead" => nothing_more(Self::Dead {
                part: part(sheet, thing)?,
            }),
            "" => Err(say!("break-no-word", thing = thing, words = WORDS)),
            _ => Err(say!("break-other-word", word = word, words = WORDS)),
        }
    }
}

/// What stands before a word, and what after it.
fn split<'t>(text: &'t str, word: &str) -> (&'t str, Option<&'t str>) {
    let mut from = 0;
    for piece in text.split(' ') {
        if piece == word {
            let before = text.get(..from).unwrap_or_default();
            let after = text.get(from + word.len()..).unwrap_or_default();
            return (before.trim(), Some(after.trim()));
        }
        from += piece.len() + 1;
    }
    (text, None)
}

fn number<Q: Quantity>(text: &str, most: f64) -> Result<Q, Saying> {
    Q::parse(text, Some((0.0, most))).map_err(|error| error.said)
}

/// A resistance; nothing where none is told and none has to be.
fn ohms(text: Option<&str>, may_miss: bool) -> Result<Ohms, Saying> {
    match text {
        None | Some("") if may_miss => Ok(Ohms(0.0)),
        None | Some("") => Err(say!("break-how-many-ohms")),
        Some(text) => number(text, MOST_OHMS),
    }
}

/// Where along a run, `at 40 %`; half way where nothing is told.
fn along(text: &str, word: &str) -> Result<Share, Saying> {
    match split(text, "at") {
        ("", None) => Ok(HALF_WAY),
        ("", Some(at)) => number(at, 1.0),
        (other, _) => Err(say!("break-more-said", text = other, word = word)),
    }
}

/// A point that touches another: `B1.+`, `W3 at 40 %`, `body`.
fn contact(sheet: &Sheet, text: &str) -> Result<Contact, Saying> {
    if text == BODY {
        return Ok(Contact::Body);
    }
    let (tag, at) = split(text, "at");
    if at.is_some() || sheet.run_by_tag(tag).is_some() {
        let at = at.map_or(Ok(HALF_WAY), |at| number(at, 1.0))?;
        return Ok(Contact::Along(run(sheet, tag)?, at));
    }
    terminal(sheet, text).map(Contact::Terminal)
}

fn joined(sheet: &Sheet, one: &str, rest: &str) -> Result<Break, Saying> {
    let (other, through) = split(rest, "through");
    if one.is_empty() {
        return Err(say!("break-nothing-said"));
    }
    if other.is_empty() {
        return Err(say!("break-joined-to-what", terminal = one));
    }
    let points = [contact(sheet, one)?, contact(sheet, other)?];
    let through = ohms(through, true)?;
    Break::touching(points, through).ok_or_else(|| say!("break-joined-to-itself", terminal = one))
}

fn grounded(sheet: &Sheet, thing: &str, rest: &str) -> Result<Break, Saying> {
    let run = run(sheet, thing)?;
    let (before, through) = split(rest, "through");
    Ok(Break::Grounded {
        run,
        at: along(before, "grounded")?,
        through: ohms(through, true)?,
    })
}

fn off(sheet: &Sheet, thing: &str, rest: &str) -> Result<Break, Saying> {
    let id = run(sheet, thing)?;
    let Some(run) = sheet.runs.get(&id) else {
        return Err(say!("break-no-run", run = thing));
    };
    let far = match rest {
        "from" => false,
        "to" => true,
        name => {
            let is = |end: &crate::End| end.terminal().is_some_and(|at| sheet.written(at) == name);
            match (is(&run.from), is(&run.to)) {
                (true, false) => false,
                (false, true) => true,
                _ => {
                    let ends = [false, true].map(|far| super::end_name(sheet, id, far));
                    return Err(say!("break-off-what", run = thing, ends = ends.as_slice()));
                }
            }
        }
    };
    Ok(Break::Off { run: id, far })
}

fn open(sheet: &Sheet, thing: &str) -> Result<Break, Saying> {
    if thing.contains('.') {
        let at = terminal(sheet, thing)?;
        return Ok(Break::Open {
            part: at.part,
            output: Some(at.terminal),
        });
    }
    let part = part(sheet, thing).map_err(|_| say!("break-no-thing", thing = thing))?;
    Ok(Break::Open { part, output: None })
}

fn reversed(sheet: &Sheet, thing: &str) -> Result<Break, Saying> {
    let (tag, coil) = thing.split_once('.').unwrap_or((thing, ""));
    let coil = match coil {
        "" => None,
        "a" => Some(1),
        "b" => Some(2),
        other => return Err(say!("break-no-coil", part = tag, coil = other)),
    };
    Ok(Break::Reversed {
        part: part(sheet, tag)?,
        coil,
    })
}

fn run(sheet: &Sheet, tag: &str) -> Result<RunId, Saying> {
    match sheet.run_by_tag(tag) {
        Some((id, _)) => Ok(id),
        None if sheet.part_by_tag(tag).is_some() => Err(say!("break-part-not-run", part = tag)),
        None => Err(say!("break-no-run", run = tag)),
    }
}

fn part(sheet: &Sheet, tag: &str) -> Result<PartId, Saying> {
    match sheet.part_by_tag(tag) {
        Some((id, _)) => Ok(id),
        None if sheet.run_by_tag(tag).is_some() => Err(say!("break-run-not-part", run = tag)),
        None => Err(say!("break-no-part", part = tag)),
    }
}

fn terminal(sheet: &Sheet, name: &str) -> Result<TerminalRef, Saying> {
    let (tag, terminal) = name
        .split_once('.')
        .ok_or_else(|| say!("break-which-terminal", thing = name))?;
    let id = part(sheet, tag)?;
    let at = TerminalRef {
        part: id,
        terminal: TerminalName::from(terminal),
    };
    if sheet.role(&at).is_some() {
        return Ok(at);
    }
    let names: Vec<String> = sheet
        .parts
        .get(&id)
        .map(|part| part.terminals())
        .unwrap_or_default()
        .into_iter()
        .map(|terminal| format!("{tag}.{}", terminal.name))
        .collect();
    Err(say!(
        "break-no-terminal",
        part = tag,
        terminal = terminal,
        names = names
    ))
}
