//! The printable document: HTML that needs nothing from outside, every text of the job escaped, laid out for A4 and
//! Letter, black on white.

use crate::table::{Cell, Table};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use model::picture::Picture;
use words::{Saying, Words};

/// The look of the document. No size of paper is told: it is the reader's own, and everything fits the narrower of A4's width and
/// the shorter of Letter's height.
const STYLE: &str = include_str!("page.css");

/// A document in the making.
pub(crate) struct Page<'w> {
    pub(crate) words: &'w Words,
    body: String,
}

impl<'w> Page<'w> {
    pub(crate) fn of(words: &'w Words) -> Self {
        Self {
            words,
            body: String::new(),
        }
    }
    /// A saying as it stands in the document.
    fn told(&self, said: &Saying) -> String {
        escaped(&self.words.say(said))
    }
    fn element(&mut self, name: &str, class: &str, inner: &str) {
        let class = if class.is_empty() {
            String::new()
        } else {
            format!(" class=\"{class}\"")
        };
        self.body.push_str(&format!("<{name}{class}>{inner}</{name}>\n"));
    }
    /// A part of the document, which begins on a page of its own.
    pub(crate) fn part(&mut self, class: &str, inner: impl FnOnce(&mut Self)) {
        self.body.push_str(&format!("<article class=\"{class}\">\n"));
        inner(self);
        self.body.push_str("</article>\n");
    }
    /// A heading and what follows on a lying page of its own, for what is wide.
    pub(crate) fn wide(&mut self, title: &Saying, inner: impl FnOnce(&mut Self)) {
        self.section(title, "wide", inner);
    }
    /// What belongs together under a heading.
    pub(crate) fn section(&mut self, title: &Saying, class: &str, inner: impl FnOnce(&mut Self)) {
        self.body.push_str(&format!("<section class=\"{class}\">\n"));
        let title = self.told(title);
        self.element("h2", "", &title);
        inner(self);
        self.body.push_str("</section>\n");
    }
    /// What no page break may tear.
    pub(crate) fn together(&mut self, inner: impl FnOnce(&mut Self)) {
        self.body.push_str("<div class=\"keep\">\n");
        inner(self);
        self.body.push_str("</div>\n");
    }
    pub(crate) fn title(&mut self, title: &Saying) {
        let title = self.told(title);
        self.element("h1", "", &title);
    }
    pub(crate) fn heading(&mut self, title: &Saying) {
        let title = self.told(title);
        self.element("h3", "", &title);
    }
    pub(crate) fn paragraph(&mut self, said: &Saying) {
        let text = self.told(said);
        self.element("p", "", &text);
    }
    /// A paragraph whose first word is one of a list, written large here.
    pub(crate) fn sentence(&mut self, said: &Saying) {
        let text = self.told(said);
        self.element("p", "sentence", &text);
    }
    pub(crate) fn note(&mut self, said: &Saying) {
        let text = self.told(said);
        self.element("p", "note", &text);
    }
    pub(crate) fn care(&mut self, said: &Saying) {
        let text = self.told(said);
        self.element("p", "care", &text);
    }
    pub(crate) fn items(&mut self, ordered: bool, items: &[Saying]) {
        let inner: String = items
            .iter()
            .map(|item| format!("<li>{}</li>", self.told(item)))
            .collect();
        self.element(if ordered { "ol" } else { "ul" }, "", &inner);
    }
    /// Names and what they are, side by side. Those with nothing to them are left out.
    pub(crate) fn facts(&mut self, facts: &[(Saying, String)]) {
        let inner: String = facts
            .iter()
            .filter(|(_, value)| !value.is_empty())
            .map(|(name, value)| {
                format!(
                    "<div><dt>{}</dt><dd>{}</dd></div>",
                    self.told(name),
                    escaped(value)
                )
            })
            .collect();
        if !inner.is_empty() {
            self.element("dl", "", &inner);
        }
    }
    /// A list. Columns in which nothing stands are left out.
    pub(crate) fn table(&mut self, table: &Table) {
        if !table.rows.is_empty() {
            let table = table.clone().without(&table.empty_columns());
            // Each heading has the name of its column, for the style sheet to give it room.
            // A column of numbers stands to the right, with its heading and with what stands in place of a number.
            let of_numbers: Vec<bool> = (0..table.columns.len())
                .map(|at| {
                    table
                        .rows
                        .iter()
                        .any(|row| row.get(at).is_some_and(Cell::is_number))
                })
                .collect();
            let headings: String = table
                .headings(self.words)
                .iter()
                .zip(&table.columns)
                .zip(&of_numbers)
                .map(|((heading, column), numbers)| {
                    let name = column.name;
                    let numbers = if *numbers { " number" } else { "" };
                    format!(
                        "<th scope=\"col\" class=\"{name}{numbers}\">{}</th>",
                        escaped(heading)
                    )
                })
                .collect();
            let rows: String = table
                .shown(self.words)
                .iter()
                .map(|shown| {
                    let cells: String = shown
                        .iter()
                        .zip(table.columns.iter().zip(&of_numbers))
                        .map(|(shown, (column, numbers))| {
                            let class = if *numbers && shown.chars().count() < 20 {
                                " class=\"number\""
                            } else if column.is_unbroken() && shown.chars().count() < 20 {
                                " class=\"tag\""
                            } else {
                                ""
                            };
                            format!("<td{class}>{}</td>", escaped(shown))
                        })
                        .collect();
                    format!("<tr>{cells}</tr>\n")
                })
                .collect();
            let inner = format!("<thead><tr>{headings}</tr></thead>\n<tbody>\n{rows}</tbody>");
            self.element("table", table.name, &inner);
        }
        for note in &table.notes {
            self.note(note);
        }
    }
    /// A drawing: SVG that the painter made, with what it shows beneath.
    pub(crate) fn drawing(&mut self, svg: &str, caption: &Saying) {
        let caption = self.told(caption);
        // To a screen reader the drawing is one picture; what is on it stands in the tables.
        let svg = svg.replacen(
            "<svg ",
            &format!("<svg role=\"img\" aria-label=\"{caption}\" "),
            1,
        );
        self.element(
            "figure",
            "drawing",
            &format!("{svg}<figcaption>{caption}</figcaption>"),
        );
    }
    /// A picture within the document.
    pub(crate) fn picture(&mut self, picture: &Picture, caption: &Saying) {
        let caption = self.told(caption);
        let inner = format!(
            "<img src=\"data:{};base64,{}\" alt=\"{caption}\"><figcaption>{caption}</figcaption>",
            picture.facts.form.media_type(),
            STANDARD.encode(picture.bytes.as_slice())
        );
        self.element("figure", "picture", &inner);
    }
    /// A drawing that is a whole sheet by itself.
    pub(crate) fn sheet(&mut self, svg: &str) {
        self.body.push_str(svg);
    }
    /// Lines to write on.
    pub(crate) fn signatures(&mut self, names: &[Saying]) {
        let inner: String = names
            .iter()
            .map(|name| format!("<span>{}</span>", self.told(name)))
            .collect();
        self.element("p", "signatures", &inner);
    }
    /// The whole document.
    pub(crate) fn finish(self, title: &Saying) -> String {
        let title = escaped(&self.words.say(title));
        let language = self.words.reader().language.tag();
        // Nothing from outside is ever loaded, whatever a text of the job may be.
        let policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";
        format!(
            "<!doctype html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <title>{title}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n{}</body>\n</html>\n",
            self.body
        )
    }
}

/// Whether this space stands between a number and its unit, which no line end may part: behind a number, and before a few letters
/// or signs without a digit.
fn stands_before_unit(text: &str, space: usize) -> bool {
    let (before, after) = text.split_at(space);
    let unit = after.get(1..).unwrap_or_default();
    let unit = unit.split([' ', ',', ';', ')']).next().unwrap_or_default();
    let number = before.rsplit([' ', '(', '\u{a0}']).next().unwrap_or_default();
    let is_digit = |sign: char| sign.is_ascii_digit();
    number.ends_with(is_digit)
        && number
            .chars()
            .all(|sign| is_digit(sign) || matches!(sign, '.' | ','))
        && (1..=3).contains(&unit.chars().count())
        && !unit.contains(is_digit)
}

/// Text as HTML holds it, within elements and within quoted attributes.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for (at, sign) in text.char_indices() {
        match sign {
            ' ' if stands_before_unit(text, at) => out.push('\u{a0}'),
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // Signs that turn the direction of what follows have no place in a record.
            '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => out.push('\u{fffd}'),
            sign if sign < ' ' && !matches!(sign, '\n' | '\t') => out.push('\u{fffd}'),
            sign => out.push(sign),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn a_number_stays_with_its_unit_and_nothing_else_is_tied() {
        let tied = |text: &str| escaped(text).replace('\u{a0}', "_");
        assert_eq!(
            tied("cranking 680 A, 2.5 mm² (12 V)"),
            "cranking 680_A, 2.5_mm² (12_V)"
        );
        assert_eq!(tied("15 runs of wire, 3 12 4 "), "15 runs of wire, 3 12 4 ");
        assert_eq!(tied("W1 W2 F1 J1"), "W1 W2 F1 J1");
        assert_eq!(
            tied("W1 A1.+ W8 W9 (ISO 8820-3 typ F)"),
            "W1 A1.+ W8 W9 (ISO 8820-3 typ F)"
        );
    }
}
