//! The order list: what has to be bought to make a sheet.

use crate::articles::{article, article_key};
use crate::cut::{Cut, cut};
use crate::table::{colour, size_value};
use crate::terms::{Per, Terms};
use crate::work::{Work, endings};
use model::conductor::{EndingMethod, Material};
use model::kinds::supply::{GroundSurface, Thread};
use model::laying::Guard;
use model::property::PropertyType;
use model::quantity::{Amps, Metres};
use model::{End, PartKind, Run, RunId};
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, Unit, drawn, figure, say};

/// Which part of the order list a line stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// Equipment, holders, blocks.
    Parts,
    /// Fuses.
    Fuses,
    /// Cable by the metre.
    Cable,
    /// Ready-made signal leads.
    Leads,
    /// Terminals, ferrules, splices.
    Endings,
    /// Sleeves, grommets, screws, clips, labels.
    Small,
}

impl Section {
    /// The written word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Parts => "parts",
            Self::Fuses => "fuses",
            Self::Cable => "cable",
            Self::Leads => "leads",
            Self::Endings => "endings",
            Self::Small => "small",
        }
    }
    /// The words of a list.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(format!("paper-section-{}", self.word()))
    }
}

/// How much of an article.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quantity {
    /// Pieces.
    Pieces(usize),
    /// Metres, cut lengths alone.
    Metres(Metres),
}

/// A line of the order list.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// Its written name, the same in every language and for every job: by it a price list knows the article.
    pub article: String,
    /// Where it stands.
    pub section: Section,
    /// What it is.
    pub what: Saying,
    /// How much is used.
    pub used: Quantity,
    /// How much is bought: pieces as used; cable with its share of waste, in whole metres or feet, as the shop buys it.
    pub bought: Quantity,
    /// What it is for.
    pub tags: OrderedSet<String>,
}

/// What cannot be ordered while something is not known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacking {
    /// Tag of the part or run.
    pub tag: String,
    /// What is not known, by the name of its property.
    pub property: &'static str,
}

/// The order list.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Its lines: by section, then from thin to thick, then by name.
    pub lines: Vec<OrderLine>,
    /// What is not in it, since something is not known.
    pub lacking: Vec<Lacking>,
}

/// Lines in the making, by section, thickness and article.
#[derive(Default)]
struct Lines {
    by_article: OrderedMap<(Section, u32, String), OrderLine>,
}

impl Lines {
    fn add(&mut self, section: Section, area: f64, article: String, what: Saying, used: Quantity, tag: &str) {
        // Hundredths of a square millimetre tell every size of both series from its neighbours.
        let thickness = (area * 100.0).round().clamp(0.0, 1e9) as u32;
        let line = self
            .by_article
            .entry((section, thickness, article.clone()))
            .or_insert_with(|| OrderLine {
                article,
                section,
                what,
                used: match used {
                    Quantity::Pieces(_) => Quantity::Pieces(0),
                    Quantity::Metres(_) => Quantity::Metres(Metres(0.0)),
                },
                bought: used,
                tags: OrderedSet::new(),
            });
        line.used = match (line.used, used) {
            (Quantity::Pieces(before), Quantity::Pieces(more)) => {
                Quantity::Pieces(before.saturating_add(more))
            }
            (Quantity::Metres(before), Quantity::Metres(more)) => Quantity::Metres(before + more),
            (before, _) => before,
        };
        if !tag.is_empty() {
            line.tags.insert(tag.to_owned());
        }
    }
    fn piece(&mut self, section: Section, area: f64, article: String, what: Saying, tag: &str) {
        self.add(section, area, article, what, Quantity::Pieces(1), tag);
    }
}

/// What has to be bought.
#[must_use]
pub fn order(work: &Work<'_>, terms: &Terms) -> Order {
    let mut lines = Lines::default();
    let mut lacking = Vec::new();
    parts(work, &mut lines, &mut lacking);
    for (id, run) in &work.sheet.runs {
        if work.is_laid(*id) {
            cable(work, run, terms, &mut lines, &mut lacking);
        }
        for end in 0..2 {
            if work.is_finished(*id, end) {
                ending(work, run, end, &mut lines, &mut lacking);
            }
        }
    }
    guards(work, &mut lines);
    let waste = 1.0 + terms.waste.0.max(0.0);
    let mut lines: Vec<OrderLine> = lines.by_article.into_iter().map(|(_, line)| line).collect();
    for line in &mut lines {
        line.bought = match line.used {
            Quantity::Pieces(count) => Quantity::Pieces(count),
            // A sum of hundredths may lie a hair above a whole one.
            Quantity::Metres(metres) => {
                let unit = Per::of(terms.lengths).metres().unwrap_or(1.0);
                Quantity::Metres(Metres((metres.0 * waste / unit - 1e-6).ceil().max(0.0) * unit))
            }
        };
    }
    lacking.dedup();
    Order { lines, lacking }
}

/// Equipment, holders and fuses.
fn parts(work: &Work<'_>, lines: &mut Lines, lacking: &mut Vec<Lacking>) {
    for (id, part) in &work.sheet.parts {
        let bought = work.is_bought(*id);
        match &part.is {
            PartKind::Ground(ground)
                if bought && ground.surface.value() == Some(GroundSurface::BareMetal) =>
            {
                let what = say!("paper-ground-screw");
                lines.piece(Section::Small, 0.0, "ground-screw".to_owned(), what, &part.tag);
            }
            PartKind::Vehicle(_) | PartKind::Ground(_) => {}
            PartKind::Fuse(fuse) => {
                if !bought {
                    continue;
                }
                let form = fuse.form;
                // A fuse of another rating goes into the holder that is there.
                let holder =
                    work.part_before(*id)
                        .is_none_or(|before| !matches!(&before.is, PartKind::Fuse(was) if was.form == form))
                        || work.sheet.parts.get(id).is_some_and(|it| {
                            it.handling.fate.value() == Some(model::handling::Fate::Replace)
                        });
                if holder {
                    let what = say!("paper-fuse-holder", form = form.said());
                    lines.piece(
                        Section::Parts,
                        0.0,
                        format!("fuse-holder {}", form.word()),
                        what,
                        &part.tag,
                    );
                }
                match fuse.rating.value() {
                    Some(rating) => fuse_line(lines, form.word(), form.said(), rating, &part.tag),
                    None => lacking.push(Lacking {
                        tag: part.tag.clone(),
                        property: "rating",
                    }),
                }
            }
            PartKind::Block(block) => {
                if bought {
                    piece_of_equipment(lines, part);
                }
                let before = match work.part_before(*id).map(|before| &before.is) {
                    Some(PartKind::Block(before)) if !bought => Some(before),
                    _ => None,
                };
                if !bought && before.is_none() {
                    continue;
                }
                for (output, rating) in block.fuses.0.iter().enumerate() {
                    let there = before.is_some_and(|before| {
                        before.form == block.form && before.fuses.0.get(output) == Some(rating)
                    });
                    if let (Some(rating), false) = (rating, there) {
                        fuse_line(lines, block.form.word(), block.form.said(), *rating, &part.tag);
                    }
                }
            }
            _ if bought => piece_of_equipment(lines, part),
            _ => {}
        }
    }
}

fn piece_of_equipment(lines: &mut Lines, part: &model::Part) {
    lines.piece(Section::Parts, 0.0, article_key(part), article(part), &part.tag);
}

fn fuse_line(lines: &mut Lines, word: &str, form: Saying, rating: Amps, tag: &str) {
    let what = fuse_said(form, rating);
    // The rating takes the place of the thickness, so that they rise.
    let key = fuse_article(word, rating);
    lines.piece(Section::Fuses, rating.0, key, what, tag);
}

/// Whether a run is a signal lead that is bought ready-made: it goes from jack to jack.
fn is_lead(work: &Work<'_>, run: &Run) -> bool {
    run.ends().iter().all(|end| {
        end.terminal()
            .and_then(|at| work.sheet.role(at))
            .is_some_and(model::Role::is_line)
    })
}

/// The written name of a cable.
pub(crate) fn cable_article(wire: &model::Wire, size: model::conductor::Size) -> String {
    format!(
        "cable {} {} {} {}",
        wire.material.value().map_or("?", Material::word),
        size.print(),
        wire.jacket.print(),
        wire.insulation
            .value()
            .map_or_else(|| "?".to_owned(), |it| it.print()),
    )
}

/// The words for a cable.
pub(crate) fn cable_said(wire: &model::Wire, size: model::conductor::Size) -> Saying {
    let (material, insulation) = (wire.material.value(), wire.insulation.value());
    say!(
        "paper-cable",
        size = size_value(size),
        colour = colour(wire.jacket),
        material = material.map_or_else(|| say!("paper-not-known"), |it| model::said::choice(it.title())),
        insulation = insulation.map_or_else(
            || say!("paper-not-known"),
            |it| say!("as-it-stands", text = figure(it.0, Unit::Plain("°C")))
        )
    )
}

/// The words for a fuse.
pub(crate) fn fuse_said(form: Saying, rating: Amps) -> Saying {
    say!(
        "paper-fuse",
        rating = drawn(rating.0, Unit::Plain("A")),
        form = form
    )
}

/// The written name of a fuse of this form.
pub(crate) fn fuse_article(form: &str, rating: Amps) -> String {
    format!("fuse {form} {}", rating.print())
}

fn cable(work: &Work<'_>, run: &Run, terms: &Terms, lines: &mut Lines, lacking: &mut Vec<Lacking>) {
    let mut lack = |property: &'static str| {
        lacking.push(Lacking {
            tag: run.tag.clone(),
            property,
        });
    };
    let Some(Cut { length, .. }) = cut(run, terms) else {
        return lack("length");
    };
    if is_lead(work, run) {
        // Such leads are made in steps of half a metre.
        let long = (length.0 * 2.0 - 1e-6).ceil() / 2.0;
        let what = say!("paper-signal-lead", length = figure(long, Unit::Metre));
        return lines.piece(
            Section::Leads,
            long,
            format!("signal-lead {long}m"),
            what,
            &run.tag,
        );
    }
    let Some(size) = run.wire.size.value() else {
        return lack("size");
    };
    let what = cable_said(&run.wire, size);
    let article = cable_article(&run.wire, size);
    lines.add(
        Section::Cable,
        size.area().0,
        article,
        what,
        Quantity::Metres(length),
        &run.tag,
    );
    if run.wire.sheathed {
        let what = say!("paper-tube", size = size_value(size));
        let key = format!("tube {}", size.print());
        lines.add(
            Section::Small,
            size.area().0,
            key,
            what,
            Quantity::Metres(length),
            &run.tag,
        );
    }
    if let Some(spacing) = run
        .laying
        .support_spacing
        .value()
        .filter(|spacing| spacing.0 > 0.0)
    {
        let clips = (length.0 / spacing.0).ceil().clamp(0.0, 10_000.0) as usize;
        let what = say!("paper-clip", size = size_value(size));
        let key = format!("clip {}", size.print());
        lines.add(
            Section::Small,
            size.area().0,
            key,
            what,
            Quantity::Pieces(clips),
            &run.tag,
        );
    }
    let labels = Quantity::Pieces(2);
    lines.add(
        Section::Small,
        0.0,
        "label".to_owned(),
        say!("paper-label"),
        labels,
        &run.tag,
    );
}

/// The terminal, ferrule or sleeve of one end.
fn ending(work: &Work<'_>, run: &Run, end: usize, lines: &mut Lines, lacking: &mut Vec<Lacking>) {
    if is_lead(work, run) {
        return;
    }
    let method = endings(run)[end.min(1)].method.value();
    let Some(method) = method else {
        return lacking.push(Lacking {
            tag: run.tag.clone(),
            property: "method",
        });
    };
    let Some(size) = run.wire.size.value() else {
        return lacking.push(Lacking {
            tag: run.tag.clone(),
            property: "size",
        });
    };
    let (area, written, told) = (size.area().0, size.print(), size_value(size));
    let mut add = |word: &str, what: Saying| {
        lines.piece(
            Section::Endings,
            area,
            format!("{word} {written}"),
            what,
            &run.tag,
        );
    };
    match method {
        EndingMethod::CrimpedRing => match stud(work, run.ends()[end.min(1)]) {
            Some((stud, is_sure)) => {
                let message = if is_sure { "paper-ring" } else { "paper-ring-usual" };
                let what = Saying::new(message)
                    .with("size", told.clone())
                    .with("stud", stud.word());
                let sure = if is_sure { "" } else { "?" };
                let key = format!("ring {written} {}{sure}", stud.word());
                lines.piece(Section::Endings, area, key, what, &run.tag);
            }
            None => add("ring", say!("paper-ring-any", size = told.clone())),
        },
        EndingMethod::CrimpedSpade => add("spade", say!("paper-spade", size = told.clone())),
        EndingMethod::Ferrule => add("ferrule", say!("paper-ferrule", size = told.clone())),
        EndingMethod::CrimpedSplice => add("butt", say!("paper-butt", size = told.clone())),
        EndingMethod::Plugged => add("plug", say!("paper-plug", size = told.clone())),
        EndingMethod::Tap => add("tap", say!("paper-tap", size = told.clone())),
        EndingMethod::Soldered
        | EndingMethod::ScrewedBare
        | EndingMethod::Twisted
        | EndingMethod::Factory
        | EndingMethod::Loose => {}
    }
    let sleeved = matches!(
        method,
        EndingMethod::CrimpedRing | EndingMethod::CrimpedSplice | EndingMethod::Soldered
    );
    if sleeved {
        let key = format!("shrink-sleeve {written}");
        lines.piece(
            Section::Small,
            area,
            key,
            say!("paper-shrink", size = told),
            &run.tag,
        );
    }
}

/// The stud that an end lands on, and whether that is known rather than usual.
fn stud(work: &Work<'_>, end: &End) -> Option<(Thread, bool)> {
    let told = match &work.sheet.parts.get(&end.terminal()?.part)?.is {
        PartKind::Fuse(fuse) => return Some((reference::fuses::stud(fuse.form)?, true)),
        PartKind::Battery(it) => it.stud,
        PartKind::Alternator(it) => it.stud,
        PartKind::Breaker(it) => it.stud,
        PartKind::Block(it) => it.stud,
        PartKind::Bus(it) => it.stud,
        PartKind::Ground(it) => it.stud,
        PartKind::Isolator(it) => it.stud,
        PartKind::Amplifier(it) => it.stud,
        _ => return None,
    };
    Some((told.value()?, told.is_given()))
}

/// How much longer a sleeve or tube is cut than the passage that it guards: a hand's breadth at either side. Common practice.
const GUARD_OVER: Metres = Metres(0.1);

/// Grommets and sleeves in the passages that our runs go through, where none is yet.
fn guards(work: &Work<'_>, lines: &mut Lines) {
    let there: OrderedSet<(&str, Guard)> = work
        .before
        .iter()
        .flat_map(|(_, sheet)| sheet.runs.iter())
        .filter(|(id, _)| work.sheet.runs.contains_key(id) && !work.is_laid(**id))
        .flat_map(|(_, run)| run.laying.guards.0.iter())
        .map(|(passage, guard)| (passage.as_str(), *guard))
        .collect();
    let mut grommets: OrderedMap<&str, OrderedSet<RunId>> = OrderedMap::new();
    for (id, run) in work.sheet.runs.iter().filter(|(id, _)| work.is_laid(**id)) {
        for (passage, guard) in &run.laying.guards.0 {
            let name = work.passage_said(passage);
            match guard {
                Guard::Grommet if !there.contains(&(passage.as_str(), *guard)) => {
                    grommets.entry(passage.as_str()).or_default().insert(*id);
                }
                Guard::Sleeve | Guard::Tube if !run.wire.sheathed => {
                    let (word, by_metre, by_piece) = match guard {
                        Guard::Sleeve => ("sleeve", "paper-sleeve", "paper-sleeve-at"),
                        _ => ("tube", "paper-tube", "paper-tube-at"),
                    };
                    // By the metre where the body tells how long the passage is; else a piece that is measured there.
                    match (work.passage_length(passage), run.wire.size.value()) {
                        (Some(long), Some(size)) => {
                            let what = Saying::new(by_metre).with("size", size_value(size));
                            let used = Quantity::Metres(Metres(long.0 + GUARD_OVER.0));
                            let key = format!("{word} {}", size.print());
                            lines.add(Section::Small, size.area().0, key, what, used, &run.tag);
                        }
                        _ => {
                            let what = Saying::new(by_piece).with("passage", name);
                            lines.piece(
                                Section::Small,
                                0.0,
                                format!("{word}-piece {passage}"),
                                what,
                                &run.tag,
                            );
                        }
                    }
                }
                _ => {}
            }
        }
    }
    for (passage, runs) in grommets {
        let what = say!(
            "paper-grommet",
            passage = work.passage_said(passage),
            count = runs.len()
        );
        for (at, id) in runs.iter().enumerate() {
            let used = Quantity::Pieces(usize::from(at == 0));
            let key = format!("grommet {passage}");
            lines.add(Section::Small, 0.0, key, what.clone(), used, work.run_tag(*id));
        }
    }
}
