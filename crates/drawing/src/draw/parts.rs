//! Parts: outline, symbol, studs, texts, and the numbers a study adds.

use super::Cut;
use super::pen::{Pen, Writing, solid};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::letters::{fit, text_width};
use crate::look::Look;
use crate::numbers;
use crate::part_box::{NAME_SIZE, NUMBER_SIZE, PartBox, SlotFor, Weight, Words, own_numbers, turning};
use crate::shapes::{circle, rounded};
use crate::symbols::symbol;
use circuit::Study;
use kurbo::{Affine, BezPath, Point};
use model::kinds::PartKind;
use model::{Part, PartId, Sheet, Turn};
use words::say;

pub(crate) fn draw_parts(
    pen: &mut Pen,
    sheet: &Sheet,
    layout: &Layout,
    study: Option<&Study>,
    look: &Look,
    cut: &Cut<'_>,
) {
    for id in cut.parts(layout, 8.0) {
        let (Some(part), Some(drawn)) = (sheet.parts.get(&id), layout.parts.get(&id)) else {
            continue;
        };
        if cut.shows(drawn.outline.inflate(8.0, 8.0)) {
            draw_part(pen, (id, part), drawn, study, look, layout.words());
        }
    }
}

fn draw_part(
    pen: &mut Pen,
    (id, part): (PartId, &Part),
    drawn: &PartBox,
    study: Option<&Study>,
    look: &Look,
    words: &words::Words,
) {
    let owner = Owner::Part(id);
    pen.owner(owner);
    let dimmed = !look.lit.is_empty() && !look.lit.parts.contains(&id);
    let (line, text, faint) = if dimmed {
        (Ink::Dimmed, Ink::Faint, Ink::Dimmed)
    } else {
        (Ink::Line, Ink::Text, Ink::Faint)
    };
    let picked = look.picked.contains(&owner);
    let spoken_of = look
        .marks
        .iter()
        .any(|mark| mark.parts.contains(&id) && look.hovered == Some(Owner::Finding(mark.finding)));
    let hovered = look.hovered == Some(owner) || spoken_of;
    let outline = drawn.outline;
    if picked || hovered {
        let ink = if picked { Ink::Picked } else { Ink::Lit };
        pen.path(
            Detail::Shape,
            rounded(outline.inflate(4.0, 4.0), 4.0),
            None,
            Some(solid(ink, if picked { 2.2 } else { 1.2 })),
        );
    } else if look.lit.parts.contains(&id) {
        pen.path(
            Detail::Shape,
            rounded(outline.inflate(3.0, 3.0), 3.0),
            None,
            Some(solid(Ink::Lit, 2.6)),
        );
    }
    // What the vehicle's maker fitted has a thin outline, what an earlier hand fitted a dashed one.
    let mut stroke = solid(line, 1.3);
    match part.fitted_by {
        model::conductor::FittedBy::Maker => stroke.width = 0.8,
        model::conductor::FittedBy::Earlier => stroke.dash = Some((7.0, 3.0)),
        model::conductor::FittedBy::Us => {}
    }
    pen.path(
        Detail::Shape,
        rounded(outline, 2.0),
        Some(Ink::PartFill),
        Some(stroke),
    );

    if pen.shows(Detail::Studs) {
        draw_symbol(pen, part, drawn, words, line, text);
        for stud in &drawn.studs {
            pen.path(
                Detail::Studs,
                circle(stud.at, 3.2),
                Some(Ink::Paper),
                Some(solid(line, 1.2)),
            );
        }
    }
    for words in drawn.words.iter().filter(|words| words.weight == Weight::Name) {
        pen.write(
            Detail::Numbers,
            Writing {
                anchor: words.anchor,
                upright: words.upright,
                ..Writing::new(words.text.clone(), words.at, words.size, faint)
            },
        );
    }
    if pen.shows(Detail::Labels) {
        write_words(pen, drawn, look.zoom, text);
    } else {
        write_small_tag(pen, part, drawn, look.zoom, text);
    }
    if pen.shows(Detail::Numbers) {
        draw_numbers(pen, (id, part), drawn, study, words, text);
    }
}

/// Least height of the letters of tags and of labels on screen, and of labels where there is little room, in pixels.
const TAG_PX: f64 = 9.5;
const LABEL_PX: f64 = 8.0;
const TIGHT_LABEL_PX: f64 = 6.2;
/// Largest letters of a tag, in board units: larger ones reach out of the line that was kept for it.
const MOST_TAG_SIZE: f64 = 15.0;
/// Largest letters of a label in the line below its tag, in board units.
const MOST_LABEL_SIZE: f64 = 12.0;
/// Height of the letters of a tag at a zoom that shows no labels, in pixels.
const SMALL_TAG_PX: f64 = 11.0;

/// Tag and label, line by line, in letters that can be read at this zoom. A label that then has no room beside its tag takes
/// the line of numbers, where those are not shown; what finds no room there either is cut.
fn write_words(pen: &mut Pen, drawn: &PartBox, zoom: f64, ink: Ink) {
    let outline = drawn.outline;
    let enlarged = |size: f64, least_px: f64| size.max(least_px / zoom.max(1e-3));
    let own_width = |words: &Words| text_width(&words.text, words.size, words.weight == Weight::Tag);
    let block = || drawn.words.iter().filter(|words| words.weight != Weight::Name);
    // Beside the symbol of a turned part there is no more room than was kept.
    let end = match drawn.turn {
        Turn::Quarter | Turn::ThreeQuarters => block()
            .map(|words| words.at.x + own_width(words))
            .fold(outline.x0, f64::max),
        Turn::None | Turn::Half => outline.x1 - 4.0,
    };
    let mut lines: Vec<Vec<&Words>> = Vec::new();
    for words in block() {
        match lines.last_mut() {
            Some(line) if line.first().is_some_and(|first| first.at.y == words.at.y) => line.push(words),
            _ => lines.push(vec![words]),
        }
    }
    let spare = (!pen.shows(Detail::Numbers))
        .then(|| drawn.slots.iter().find(|slot| slot.what == SlotFor::Part))
        .flatten();
    for line in lines {
        let (Some(first), Some(last)) = (line.first(), line.last()) else {
            continue;
        };
        let centred = drawn.studs.len() == 1
            && ((first.at.x + last.at.x + own_width(last)) / 2.0 - outline.center().x).abs() < 1.0;
        let (start, end) = if centred {
            (outline.x0 + 4.0, outline.x1 - 4.0)
        } else {
            (first.at.x, end)
        };
        let mut x = start;
        let mut written: Vec<(String, f64, f64, bool)> = Vec::new();
        for words in &line {
            let room = end - x;
            let bold = words.weight == Weight::Tag;
            let sizes = match words.weight {
                Weight::Tag => [enlarged(words.size, TAG_PX).min(MOST_TAG_SIZE), words.size],
                _ => [
                    enlarged(words.size, LABEL_PX),
                    enlarged(words.size, TIGHT_LABEL_PX),
                ],
            };
            let fits = |size: &&f64| text_width(&words.text, **size, bold) <= room + 0.5;
            let (text, size) = match (sizes.iter().find(fits), words.weight) {
                (Some(size), _) => (words.text.clone(), *size),
                // Room for a tag was kept.
                (None, Weight::Tag) => (words.text.clone(), words.size),
                (None, _) => {
                    let (here, below) =
                        broken(&words.text, room, spare.map_or(0.0, |slot| slot.width), sizes[1]);
                    if let Some(slot) = spare.filter(|_| !below.is_empty()) {
                        // Larger letters would reach into the line above.
                        let fits = |size: &f64| {
                            *size <= MOST_LABEL_SIZE && text_width(&below, *size, false) <= slot.width
                        };
                        // Two halves are of one size.
                        let size = sizes.into_iter().find(|size| here.is_empty() && fits(size));
                        let size = size.unwrap_or(sizes[1]);
                        let writing = Writing {
                            anchor: slot.anchor,
                            ..Writing::new(below, slot.at, size, ink)
                        };
                        pen.write(Detail::Labels, writing);
                    }
                    (here, sizes[1])
                }
            };
            // Fewer letters than this say nothing.
            if text != words.text && (text.is_empty() || text.ends_with('…') && text.chars().count() < 5) {
                continue;
            }
            let width = text_width(&text, size, bold);
            written.push((text, x, size, bold));
            x += width + 5.0;
        }
        let shift = if centred {
            (outline.center().x - (start + x - 5.0) / 2.0).max(0.0)
        } else {
            0.0
        };
        let y = first.at.y;
        for (text, x, size, bold) in written {
            let at = Point::new(x + shift, y);
            pen.write(
                Detail::Labels,
                Writing {
                    bold,
                    ..Writing::new(text, at, size, ink)
                },
            );
        }
    }
}

/// A text that does not fit its line, broken between that and a line below: whole on the lower one, else parted between two
/// words, else cut on the wider one.
fn broken(text: &str, room: f64, below: f64, size: f64) -> (String, String) {
    let width = |text: &str| text_width(text, size, false);
    if width(text) <= below {
        return (String::new(), text.to_owned());
    }
    let parted = text
        .rmatch_indices(' ')
        .filter_map(|(at, _)| text.split_at_checked(at))
        .map(|(first, rest)| (first, rest.trim_start()))
        .find(|(first, rest)| width(first) <= room && width(rest) <= below);
    match parted {
        Some((first, rest)) => (first.to_owned(), rest.to_owned()),
        None if below > room => (String::new(), fit(text, below, size, false)),
        None => (fit(text, room, size, false), String::new()),
    }
}

/// The tag alone, in letters of a size that can be read, where they fit.
pub(super) fn write_small_tag(pen: &mut Pen, part: &Part, drawn: &PartBox, zoom: f64, ink: Ink) {
    let size = SMALL_TAG_PX / zoom.max(1e-3);
    let outline = drawn.outline;
    if text_width(&part.tag, size, true) >= outline.width() || size * 1.2 >= outline.height() {
        return;
    }
    // Above the symbol, or below it as a ground point has its words.
    let below = drawn
        .words
        .iter()
        .any(|words| words.weight == Weight::Tag && words.at.y > outline.center().y);
    let baseline = if below {
        outline.y1 - size * 0.3
    } else {
        outline.y0 + size
    };
    let writing = Writing {
        anchor: Anchor::Middle,
        bold: true,
        // Over the symbol, where that is large.
        halo: pen.shows(Detail::Studs),
        ..Writing::new(
            part.tag.clone(),
            Point::new(outline.center().x, baseline),
            size,
            ink,
        )
    };
    pen.write(Detail::Shape, writing);
}

pub(super) fn draw_symbol(
    pen: &mut Pen,
    part: &Part,
    drawn: &PartBox,
    words: &words::Words,
    line: Ink,
    text: Ink,
) {
    let symbol = symbol(&part.is, words);
    let map = Affine::translate(drawn.symbol_at.to_vec2()) * turning(drawn.turn);
    for (path, width) in &symbol.lines {
        pen.line(Detail::Studs, map * path, line, *width);
    }
    for path in &symbol.dashed {
        let mut stroke = solid(line, 1.0);
        stroke.dash = Some((3.0, 2.0));
        pen.path(Detail::Studs, map * path, None, Some(stroke));
    }
    for path in &symbol.filled {
        pen.path(Detail::Studs, map * path, Some(line), None);
    }
    for (word, at, size) in &symbol.words {
        pen.write(
            Detail::Studs,
            Writing {
                anchor: Anchor::Middle,
                ..Writing::new(word.clone(), map * *at, *size, text)
            },
        );
    }
    // Leads from the symbol's pins to the studs.
    for stud in &drawn.studs {
        if let Some(pin) = symbol.pin(stud.name.as_str()) {
            let mut path = BezPath::new();
            path.move_to(map * pin);
            path.line_to(stud.at);
            pen.line(Detail::Studs, path, line, crate::symbols::FINE);
        }
    }
}

fn draw_numbers(
    pen: &mut Pen,
    (id, part): (PartId, &Part),
    drawn: &PartBox,
    study: Option<&Study>,
    words: &words::Words,
    ink: Ink,
) {
    for slot in &drawn.slots {
        let (text, size) = match slot.what {
            SlotFor::Part => (part_numbers(id, part, study, words), NUMBER_SIZE),
            SlotFor::Channel(channel) => (channel_numbers(id, channel, study, words), NAME_SIZE),
        };
        pen.write(
            Detail::Numbers,
            Writing {
                text: fit(&text, slot.width, size, false),
                at: slot.at,
                size,
                anchor: slot.anchor,
                ink,
                bold: false,
                halo: false,
                upright: slot.upright,
            },
        );
    }
}

/// The line of numbers of a part: what it is rated for, and what the study says of it.
fn part_numbers(id: PartId, part: &Part, study: Option<&Study>, words: &words::Words) -> String {
    let mut line = own_numbers(&part.is, words);
    let mut add = |more: String| {
        if !line.is_empty() {
            line.push_str(" · ");
        }
        line.push_str(&more);
    };
    let Some(study) = study else { return line };
    if let PartKind::Speaker(_) = part.is {
        match study.drivers.get(&id) {
            Some(driver) if driver.plays => add(words.say(&say!(
                "drawn-gets",
                power = numbers::quantity(words, driver.power)
            ))),
            Some(_) => add(words.text("drawn-silent")),
            None => {}
        }
        return line;
    }
    let Some(flow) = study.parts.get(&id) else {
        return line;
    };
    let volts = |flow: &circuit::PartFlow| flow.voltage.map(|volts| numbers::quantity(words, volts));
    match part.is {
        PartKind::Battery(_)
        | PartKind::Alternator(_)
        | PartKind::Converter(_)
        | PartKind::Amplifier(_)
        | PartKind::HeadUnit(_) => {
            if let Some(volts) = volts(flow) {
                add(volts);
            }
            // A battery says which way: its current is negative while it is charged.
            let amps = numbers::quantity(words, flow.current.mean.abs());
            add(match part.is {
                PartKind::Battery(_) if flow.current.mean.0 < 0.0 => {
                    words.say(&say!("drawn-takes", amps = amps))
                }
                PartKind::Battery(_) => words.say(&say!("drawn-gives", amps = amps)),
                _ => amps,
            });
        }
        PartKind::Fuse(_)
        | PartKind::Breaker(_)
        | PartKind::Relay(_)
        | PartKind::Switch(_)
        | PartKind::Isolator(_)
        | PartKind::Ground(_)
        | PartKind::Block(_)
        | PartKind::Vehicle(_)
        | PartKind::Load(_)
        | PartKind::Processor(_)
        | PartKind::Capacitor(_) => add(numbers::quantity(words, flow.current.mean.abs())),
        PartKind::Bus(_)
        | PartKind::Splice(_)
        | PartKind::Plug(_)
        | PartKind::Adapter(_)
        | PartKind::LineConverter(_)
        | PartKind::Speaker(_)
        | PartKind::Crossover(_)
        | PartKind::InlineCapacitor(_) => {}
    }
    line
}

/// What a channel sees: its nominal load.
fn channel_numbers(id: PartId, channel: u8, study: Option<&Study>, words: &words::Words) -> String {
    let load = study.and_then(|study| {
        study
            .channels
            .iter()
            .find(|load| load.part == id && load.channel == channel)
    });
    match load {
        Some(load) if !load.drivers.is_empty() => {
            let ohms = load
                .nominal
                .or(load.dc_resistance)
                .map_or("?".to_owned(), |ohms| numbers::quantity(words, ohms));
            match load.bridged_with {
                Some(other) => format!("{channel}+{other} {ohms}"),
                None => ohms,
            }
        }
        _ => String::new(),
    }
}
