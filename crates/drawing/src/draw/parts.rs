//! Parts: outline, symbol, studs, texts, and the numbers a study adds.

use super::Cut;
use super::overlay::Overlays;
use super::pen::{Pen, Writing, solid};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::letters::fit;
use crate::look::Look;
use crate::numbers;
use crate::part_box::{NAME_SIZE, NUMBER_SIZE, PartBox, SlotFor, Weight, own_numbers, turning};
use crate::symbols::symbol;
use circuit::Study;
use kurbo::{Affine, BezPath, Circle, Rect, Vec2};
use model::kinds::PartKind;
use model::{Part, PartId, Sheet, Side};

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
            draw_part(pen, id, part, drawn, study, look);
        }
    }
}

fn draw_part(pen: &mut Pen, id: PartId, part: &Part, drawn: &PartBox, study: Option<&Study>, look: &Look) {
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
        pen.shape(
            Detail::Shape,
            outline.inflate(4.0, 4.0).to_rounded_rect(4.0),
            None,
            Some(solid(ink, if picked { 2.2 } else { 1.2 })),
        );
    } else if look.lit.parts.contains(&id) {
        pen.shape(
            Detail::Shape,
            outline.inflate(3.0, 3.0).to_rounded_rect(3.0),
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
    pen.shape(
        Detail::Shape,
        outline.to_rounded_rect(2.0),
        Some(Ink::PartFill),
        Some(stroke),
    );

    if pen.shows(Detail::Studs) {
        draw_symbol(pen, part, drawn, line, text);
        for stud in &drawn.studs {
            pen.shape(
                Detail::Studs,
                Circle::new(stud.at, 3.2),
                Some(Ink::Paper),
                Some(solid(line, 1.2)),
            );
        }
    }
    for words in &drawn.words {
        let (detail, ink, bold) = match words.weight {
            Weight::Tag => (Detail::Labels, text, true),
            Weight::Label => (Detail::Labels, text, false),
            Weight::Name => (Detail::Numbers, faint, false),
        };
        pen.write(
            detail,
            Writing {
                text: words.text.clone(),
                at: words.at,
                size: words.size,
                anchor: words.anchor,
                ink,
                bold,
                halo: false,
                upright: words.upright,
            },
        );
    }
    if pen.shows(Detail::Numbers) {
        draw_numbers(pen, id, part, drawn, study, text);
    }
}

fn draw_symbol(pen: &mut Pen, part: &Part, drawn: &PartBox, line: Ink, text: Ink) {
    let symbol = symbol(&part.is);
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

fn draw_numbers(pen: &mut Pen, id: PartId, part: &Part, drawn: &PartBox, study: Option<&Study>, ink: Ink) {
    for slot in &drawn.slots {
        let (words, size) = match slot.what {
            SlotFor::Part => (part_numbers(id, part, study), NUMBER_SIZE),
            SlotFor::Channel(channel) => (channel_numbers(id, channel, study), NAME_SIZE),
        };
        pen.write(
            Detail::Numbers,
            Writing {
                text: fit(&words, slot.width, size, false),
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
fn part_numbers(id: PartId, part: &Part, study: Option<&Study>) -> String {
    let mut words = own_numbers(&part.is);
    let mut add = |more: String| {
        if !words.is_empty() {
            words.push_str(" · ");
        }
        words.push_str(&more);
    };
    let Some(study) = study else { return words };
    if let PartKind::Speaker(_) = part.is {
        match study.drivers.get(&id) {
            Some(driver) if driver.plays => add(format!("gets {}", numbers::quantity(driver.power))),
            Some(_) => add("silent".to_owned()),
            None => {}
        }
        return words;
    }
    let Some(flow) = study.parts.get(&id) else {
        return words;
    };
    let volts = |flow: &circuit::PartFlow| flow.voltage.map(numbers::quantity);
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
            let amps = numbers::quantity(flow.current.mean.abs());
            add(match part.is {
                PartKind::Battery(_) if flow.current.mean.0 < 0.0 => format!("takes {amps}"),
                PartKind::Battery(_) => format!("gives {amps}"),
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
        | PartKind::Capacitor(_) => add(numbers::quantity(flow.current.mean.abs())),
        PartKind::Bus(_)
        | PartKind::Splice(_)
        | PartKind::Plug(_)
        | PartKind::Adapter(_)
        | PartKind::LineConverter(_)
        | PartKind::Speaker(_)
        | PartKind::Crossover(_)
        | PartKind::InlineCapacitor(_) => {}
    }
    words
}

/// What a channel sees: its nominal load.
fn channel_numbers(id: PartId, channel: u8, study: Option<&Study>) -> String {
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
                .map_or("?".to_owned(), numbers::quantity);
            match load.bridged_with {
                Some(other) => format!("{channel}+{other} {ohms}"),
                None => ohms,
            }
        }
        _ => String::new(),
    }
}

/// Volts at every stud that has any, outside the outline, above the run that lands there, in letters that can be read at
/// any zoom; those for which there is no room are left out.
pub(crate) fn draw_voltages(
    pen: &mut Pen,
    layout: &Layout,
    overlays: &Overlays<'_>,
    zoom: f64,
    cut: &Cut<'_>,
) {
    /// Least height of the letters on screen, in pixels.
    const LEAST_PX: f64 = 9.5;
    if !pen.shows(Detail::Studs) {
        return;
    }
    let size = 7.5_f64.max(LEAST_PX / zoom.max(1e-3));
    let mut taken: Vec<Rect> = Vec::new();
    for id in cut.parts(layout, 60.0) {
        let Some(drawn) = layout.parts.get(&id) else {
            continue;
        };
        pen.owner(Owner::Part(id));
        for stud in &drawn.studs {
            let terminal = model::TerminalRef {
                part: id,
                terminal: stud.name.clone(),
            };
            let Some(volts) = overlays.volts(&terminal) else {
                continue;
            };
            let (shift, anchor) = match stud.side {
                Side::Left => (Vec2::new(-6.0, -4.5), Anchor::End),
                Side::Right => (Vec2::new(6.0, -4.5), Anchor::Start),
                Side::Top => (Vec2::new(6.0, -6.0), Anchor::Start),
                Side::Bottom => (Vec2::new(6.0, 3.5 + size), Anchor::Start),
            };
            let writing = Writing {
                anchor,
                halo: true,
                ..Writing::new(numbers::volts(volts), stud.at + shift, size, Ink::Text)
            };
            let area = writing.area();
            // Labels of runs are drawn from their own zoom on; below it nothing stands in the way.
            let on_label = pen.shows(Detail::Labels)
                && layout.label_index.any_near(area, |_, label| label.overlaps(area));
            if !on_label && !layout.is_on_part(area) && !taken.iter().any(|other| other.overlaps(area)) {
                taken.push(area);
                pen.write(Detail::Studs, writing);
            }
        }
    }
}
