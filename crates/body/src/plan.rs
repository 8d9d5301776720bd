//! The plan of a body: that of its form, with what the job tells otherwise put in, and its names.

use crate::build::Builder;
use crate::facts::{Facts, tell, tell_facts};
use crate::forms::{Size, size_of};
use crate::places::{Passage, Place, Point, between, length_of, nearest};
use model::Fact;
use model::body::{BatteryPlace, Body, BodyForm, DriveSide, OwnPassage, OwnPlace, PassageKind};
use model::conductor::Surroundings;
use ordered::OrderedMap;
use words::{Saying, say};

/// What a name stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Named {
    Place(usize),
    Passage(usize),
}

/// The plan of a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Its form.
    pub form: BodyForm,
    /// Its size.
    pub size: Size,
    /// The driver's side.
    pub drive: DriveSide,
    /// Where the starter battery stands.
    pub battery: BatteryPlace,
    /// Its places: those of the form from front to rear, then the job's own.
    pub places: Vec<Place>,
    /// Its passages, in the same order.
    pub passages: Vec<Passage>,
    /// What the job tells and the body cannot have, in sentences.
    pub problems: Vec<Saying>,
    names: OrderedMap<String, Named>,
    /// By the index of a place: the passages at it, in their order.
    at_place: Vec<Vec<usize>>,
}

impl Plan {
    /// The plan of a body; nothing where its form is not known.
    #[must_use]
    pub fn of(body: &Body) -> Option<Self> {
        let form = body.shape.form.value()?;
        let size = size_of(form, &body.shape);
        let drive = body.shape.drive.or(DriveSide::Left);
        let battery = body.shape.battery.or(BatteryPlace::Front);
        let (places, passages) = Builder::build(form, size, drive, battery);
        let mut plan = Self {
            form,
            size,
            drive,
            battery,
            places,
            passages,
            problems: Vec::new(),
            names: OrderedMap::new(),
            at_place: Vec::new(),
        };
        plan.tell_places(body);
        plan.tell_passages(body);
        plan.index();
        Some(plan)
    }

    /// The place of a name.
    #[must_use]
    pub fn place(&self, name: &str) -> Option<&Place> {
        self.places.get(self.place_index(name)?)
    }
    /// The index of the place of a name.
    #[must_use]
    pub fn place_index(&self, name: &str) -> Option<usize> {
        match self.names.get(name)? {
            Named::Place(at) => Some(*at),
            Named::Passage(_) => None,
        }
    }
    /// The passage of a name.
    #[must_use]
    pub fn passage(&self, name: &str) -> Option<&Passage> {
        match self.names.get(name)? {
            Named::Passage(at) => self.passages.get(*at),
            Named::Place(_) => None,
        }
    }
    pub(crate) fn passages_by_place(&self) -> &[Vec<usize>] {
        &self.at_place
    }
    pub(crate) fn named(&self, name: &str) -> Option<Named> {
        self.names.get(name).copied()
    }
    /// The passages at a place, by their index.
    #[must_use]
    pub fn passages_at(&self, place: usize) -> &[usize] {
        self.at_place.get(place).map(Vec::as_slice).unwrap_or_default()
    }
    /// A passage in the reader's language: what the job calls it, else its kind and what it joins.
    #[must_use]
    pub fn said_passage(&self, passage: &Passage) -> Saying {
        if !passage.label.is_empty() {
            return passage.label.as_str().into();
        }
        let [a, b] = passage.ends.map(|end| {
            let place = self.places.get(end);
            place.map_or_else(|| "?".into(), Place::said)
        });
        let kind = passage.kind.or(PassageKind::Open).said();
        say!("passage-between", kind = kind, a = a, b = b)
    }
    /// Where the starter battery stands, which is also where its strap joins the body.
    #[must_use]
    pub fn battery_at(&self) -> Point {
        self.place("battery-tray")
            .map_or_else(Point::default, |place| place.at)
    }

    fn tell_places(&mut self, body: &Body) {
        for (name, own) in &body.places {
            match self.places.iter_mut().find(|place| place.name == *name) {
                Some(place) => tell_place(place, own),
                None => {
                    let mut place = Place {
                        name: name.clone(),
                        label: String::new(),
                        of_the_form: false,
                        // In the middle of the car, at the height of a seat, unless it is told.
                        at: Point {
                            x: self.size.length / 2.0,
                            y: self.size.width / 2.0,
                            z: 0.5,
                        },
                        facts: Facts::new(Surroundings::Cabin, model::body::Reach::Open),
                    };
                    let place_told = own.heat.value();
                    tell_place(&mut place, own);
                    if place_told.is_none() {
                        // As warm as what it lies next to.
                        let near = nearest(&self.places, place.at);
                        if let Some(near) = near.and_then(|at| self.places.get(at)) {
                            place.facts.heat = Fact::Assumed(near.facts.heat.or(Surroundings::Cabin));
                        }
                    }
                    self.places.push(place);
                }
            }
        }
    }

    fn tell_passages(&mut self, body: &Body) {
        let of_the_form = self.places.iter().filter(|place| place.of_the_form).count();
        let moved: Vec<bool> = self
            .places
            .iter()
            .map(|place| {
                let own = body.places.get(&place.name);
                own.is_some_and(|own| {
                    !(own.from_front.is_unknown() && own.from_left.is_unknown() && own.height.is_unknown())
                })
            })
            .collect();
        for passage in &mut self.passages {
            if passage.ends.iter().any(|end| moved.get(*end) == Some(&true)) {
                passage.length = Fact::Assumed(length_of(&self.places, passage.ends, passage.kind));
            }
        }
        for (name, own) in &body.passages {
            if let Some(passage) = self.passages.iter_mut().find(|passage| passage.name == *name) {
                tell_passage(passage, own);
                continue;
            }
            if self.places.iter().any(|place| place.name == *name) {
                self.problems.push(say!("passage-name-taken", passage = name));
                continue;
            }
            let find = |end: &str| self.places.iter().position(|place| place.name == end);
            let (Some(from), Some(to)) = (find(&own.from), find(&own.to)) else {
                let missing = if find(&own.from).is_none() {
                    &own.from
                } else {
                    &own.to
                };
                let (passage, place) = (name.as_str(), missing.as_str());
                self.problems
                    .push(say!("passage-without-end", passage = passage, place = place));
                continue;
            };
            if from == to {
                self.problems.push(say!("passage-to-itself", passage = name));
                continue;
            }
            let ends = [from, to];
            let mut passage = Passage {
                name: name.clone(),
                label: String::new(),
                of_the_form: false,
                ends,
                kind: own.kind,
                length: Fact::Assumed(length_of(&self.places, ends, own.kind)),
                facts: between(&self.places, ends, own.kind.or(PassageKind::Open)),
            };
            tell_passage(&mut passage, own);
            self.passages.push(passage);
        }
        // A place of the job's own to which it tells no way is reached from what is nearest.
        for at in of_the_form..self.places.len() {
            if self.passages.iter().any(|passage| passage.ends.contains(&at)) {
                continue;
            }
            let before = self.places.get(..of_the_form).unwrap_or_default();
            let (Some(place), Some(near)) = (
                self.places.get(at),
                self.places.get(at).and_then(|place| nearest(before, place.at)),
            ) else {
                continue;
            };
            let mut name = format!("{}-way", place.name);
            while self.passages.iter().any(|passage| passage.name == name)
                || self.places.iter().any(|place| place.name == name)
            {
                name.push('-');
            }
            let (ends, kind) = ([near, at], Fact::Assumed(PassageKind::Open));
            self.passages.push(Passage {
                name,
                label: String::new(),
                of_the_form: false,
                ends,
                kind,
                length: Fact::Assumed(length_of(&self.places, ends, kind)),
                facts: between(&self.places, ends, PassageKind::Open),
            });
        }
    }

    fn index(&mut self) {
        let places = self.places.iter().enumerate();
        let passages = self.passages.iter().enumerate();
        // A place comes before a passage of the same name, which only a job's own could have.
        self.names = passages
            .map(|(at, passage)| (passage.name.clone(), Named::Passage(at)))
            .chain(places.map(|(at, place)| (place.name.clone(), Named::Place(at))))
            .collect();
        self.at_place = vec![Vec::new(); self.places.len()];
        for (at, passage) in self.passages.iter().enumerate() {
            for end in passage.ends {
                if let Some(list) = self.at_place.get_mut(end) {
                    list.push(at);
                }
            }
        }
    }
}

fn tell_place(place: &mut Place, own: &OwnPlace) {
    place.label.clone_from(&own.label);
    for (told, at) in [
        (own.from_front, &mut place.at.x),
        (own.from_left, &mut place.at.y),
        (own.height, &mut place.at.z),
    ] {
        if let Some(metres) = told.value() {
            *at = metres.0;
        }
    }
    tell_facts!(place.facts, own);
}

fn tell_passage(passage: &mut Passage, own: &OwnPassage) {
    passage.label.clone_from(&own.label);
    tell(&mut passage.kind, own.kind);
    tell(&mut passage.length, own.length);
    tell_facts!(passage.facts, own);
}
