//! A sheet in the making: parts and runs with their tags, labels, places and ends.

use super::places::{Places, Spot};
use model::conductor::{Colour, EndingMethod, FittedBy, Jacket, Material, Size};
use model::edits::usual_ending;
use model::kinds::supply::{Ground, GroundSurface};
use model::mounting::MountedOn;
use model::quantity::{Ohms, SquareMm};
use model::{End, Fact, Part, PartId, PartKind, Run, RunId, Sheet, TerminalRef};
use ordered::OrderedMap;
use words::{Saying, Sizes, Words};

/// The one that draws.
pub(super) struct Sketch<'w> {
    pub(super) sheet: Sheet,
    words: &'w Words,
    pub(super) places: Places,
    spots: OrderedMap<PartId, Spot>,
    next_part: u32,
    next_run: u32,
    /// How many tags of each letter there are.
    tags: OrderedMap<String, u32>,
}

/// A feed.
pub(super) const RED: Jacket = Jacket::plain(Colour::Red);
/// A return.
pub(super) const BLACK: Jacket = Jacket::plain(Colour::Black);

/// Colours of a lead and its return.
pub(super) fn jacket(base: Colour, tracer: Option<Colour>) -> Jacket {
    Jacket {
        base: Some(base),
        tracer,
    }
}

impl<'w> Sketch<'w> {
    /// An empty sheet whose parts and runs get these ids and those after them.
    pub(super) fn new(places: Places, words: &'w Words, part: PartId, run: RunId) -> Self {
        Self {
            sheet: Sheet::default(),
            words,
            places,
            spots: OrderedMap::new(),
            next_part: part.0,
            next_run: run.0,
            tags: OrderedMap::new(),
        }
    }

    fn tag(&mut self, letter: &str) -> String {
        let count = self.tags.entry(letter.to_owned()).or_default();
        *count += 1;
        format!("{letter}{count}")
    }

    /// A part at a spot.
    pub(super) fn part(&mut self, is: impl Into<PartKind>, label: Option<Saying>, spot: Spot) -> PartId {
        let is = is.into();
        let tag = self.tag(is.letter());
        let id = PartId(self.next_part);
        self.next_part = self.next_part.saturating_add(1);
        let mut part = Part::new(tag, is);
        // Labels are words of the job: they are in the language of whoever starts it.
        part.label = label.map(|label| self.words.say(&label)).unwrap_or_default();
        part.place = self.places.name(spot);
        part.mounting.mounted = match &part.is {
            _ if part.place.is_none() => Fact::Unknown,
            PartKind::Amplifier(_)
            | PartKind::Processor(_)
            | PartKind::Block(_)
            | PartKind::Bus(_)
            | PartKind::Load(_)
            | PartKind::Converter(_)
            | PartKind::Crossover(_) => Fact::Given(MountedOn::Board),
            PartKind::Speaker(_) if spot == Spot::Equipment => Fact::Given(MountedOn::Board),
            // Nothing is screwed through trim, whatever lies behind it.
            PartKind::Speaker(_) if matches!(spot, Spot::Behind(_)) => Fact::Given(MountedOn::Trim),
            PartKind::Fuse(_) | PartKind::Isolator(_) | PartKind::Battery(_) | PartKind::Switch(_) => {
                Fact::Given(MountedOn::Bracket)
            }
            _ => Fact::Unknown,
        };
        self.spots.insert(id, spot);
        self.sheet.parts.insert(id, part);
        id
    }

    /// Makes a part the vehicle maker's.
    pub(super) fn makers(&mut self, part: PartId) {
        if let Some(part) = self.sheet.parts.get_mut(&part) {
            part.fitted_by = FittedBy::Maker;
            part.mounting.mounted = Fact::Unknown;
        }
    }

    /// A saying in the language of the labels.
    pub(super) fn say(&self, saying: &Saying) -> String {
        self.words.say(saying)
    }

    pub(super) fn spot(&self, part: PartId) -> Spot {
        self.spots.get(&part).copied().unwrap_or(Spot::Nowhere)
    }

    /// The tag of a part.
    pub(super) fn tag_of(&self, part: PartId) -> String {
        self.sheet
            .parts
            .get(&part)
            .map(|part| part.tag.clone())
            .unwrap_or_default()
    }

    /// A size of the series that the reader's shop keeps.
    pub(super) fn size(&self, area: f64) -> Size {
        let metric = Size::Metric(SquareMm(area));
        match self.words.reader().sizes {
            Sizes::Awg => {
                let gauge = metric.as_gauge();
                // No thinner than was asked for.
                gauge
                    .series()
                    .find(|size| size.area().0 >= area * 0.97)
                    .unwrap_or(gauge)
            }
            Sizes::SquareMillimetres => metric,
        }
    }

    /// A run between two terminals, of copper, its ends finished as usual for what it lands on.
    pub(super) fn run(
        &mut self,
        from: (PartId, &str),
        to: (PartId, &str),
        area: f64,
        jacket: Jacket,
    ) -> RunId {
        let tag = self.tag("W");
        let id = RunId(self.next_run);
        self.next_run = self.next_run.saturating_add(1);
        let end = |(part, terminal): (PartId, &str)| End::On(TerminalRef::new(part, terminal));
        let mut run = Run::new(tag, end(from), end(to));
        let spots = [from, to].map(|(part, _)| self.spot(part));
        let [a, b] = spots.map(|spot| {
            if spot == Spot::Nowhere {
                Spot::Battery
            } else {
                spot
            }
        });
        run.wire.size = Fact::Given(self.size(area));
        run.wire.length = Fact::Assumed(self.places.length(a, b));
        run.wire.surroundings = Fact::Assumed(self.places.surroundings(a, b));
        run.wire.jacket = jacket;
        run.wire.material = Fact::Given(Material::Copper);
        let method = |(part, terminal): (PartId, &str)| -> EndingMethod {
            let name = model::TerminalName::new(terminal);
            let part = self.sheet.parts.get(&part);
            part.and_then(|part| Some(usual_ending(&part.is, part.role(&name)?)))
                .unwrap_or(EndingMethod::CrimpedSplice)
        };
        run.from_ending.method = Fact::Given(method(from));
        run.to_ending.method = Fact::Given(method(to));
        self.sheet.runs.insert(id, run);
        id
    }

    /// A run of the vehicle maker's, of this length.
    pub(super) fn makers_run(
        &mut self,
        from: (PartId, &str),
        to: (PartId, &str),
        area: f64,
        length: f64,
        jacket: Jacket,
    ) -> RunId {
        let id = self.run(from, to, area, jacket);
        if let Some(run) = self.sheet.runs.get_mut(&id) {
            run.fitted_by = FittedBy::Maker;
            run.wire.size = Fact::Assumed(Size::Metric(SquareMm(area)));
            run.wire.length = Fact::Assumed(model::quantity::Metres(length));
            run.wire.surroundings = Fact::Assumed(model::conductor::Surroundings::Cabin);
            run.wire.material = Fact::Assumed(Material::Copper);
            for ending in [&mut run.from_ending, &mut run.to_ending] {
                ending.method = Fact::Given(EndingMethod::Factory);
            }
        }
        id
    }

    /// A ground point beside a part, and the lead to it.
    pub(super) fn ground(&mut self, of: PartId, terminal: &str, area: f64, label: Saying) -> RunId {
        let spot = self.spot(of);
        let surface = if spot == Spot::Dash {
            GroundSurface::MakersPoint
        } else {
            GroundSurface::BareMetal
        };
        let ground = Ground {
            surface: Fact::Given(surface),
            contact: Fact::Unknown,
            body: Fact::Assumed(Ohms(0.001)),
            ..Ground::default()
        };
        let stud = self.part(ground, Some(label), spot);
        self.run((of, terminal), (stud, "stud"), area, Jacket::plain(Colour::Black))
    }
}
