//! A search for a fault, drawn on the board: a ring of copying pencil round everything that is suspected, with its place in the list
//! and how likely it is, and the leads of the meter where the next measurement is proposed. Who searches tells it anew whenever more
//! is known.

use crate::breaking::SignAt;
use crate::camera::ScreenPoint;
use crate::editor::Editor;
use crate::effects::Effects;
use crate::selection::Thing;
use crate::sketch::Sketch;
use crate::tools::Tool;
use crate::tracing::meter_at;
use circuit::Probe;
use drawing::{Anchor, Ink, text_area};
use kurbo::{BezPath, Point, Rect, Vec2};
use model::breaks::Break;
use model::conductor::Colour;
use words::{Unit, precise};

/// Height of the letters at a ring, in pixels.
const LETTERS_PX: f64 = 14.0;
/// Least half-width and half-height of a ring, in pixels.
const LEAST_PX: f64 = 15.0;
/// How far a ring stands off what it is round, in pixels.
const OFF_PX: f64 = 7.0;
/// The ring of what is certain is so much heavier than that of what is hardly likely, in pixels.
const HEAVIER_PX: f64 = 3.0;

/// Something suspected, likeliest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspected {
    /// What is broken.
    pub breaks: Vec<Break>,
    /// How likely, 0 to 1.
    pub share: f64,
}

/// What is drawn of a search.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Hunt {
    suspects: Vec<Suspected>,
    next: Option<Probe>,
}

impl Hunt {
    /// Whether nothing is suspected and nothing to be measured.
    pub(crate) fn is_nothing(&self) -> bool {
        self.suspects.is_empty() && self.next.is_none()
    }
}

/// A ring: round what, with which places of the list, how likely in sum.
#[derive(Clone, Debug, PartialEq)]
struct Ring {
    at: SignAt,
    places: Vec<usize>,
    share: f64,
}

impl Editor {
    /// Draws what is suspected, likeliest first, and where to measure next.
    pub fn hunt(&mut self, suspects: Vec<Suspected>, next: Option<Probe>) -> Effects {
        let hunt = Hunt { suspects, next };
        if self.hunt != hunt {
            // A meter whose leads were where it was proposed goes on to where it is proposed now.
            if let (Some(before), Some(next), Tool::Meter(meter)) = (&self.hunt.next, &hunt.next, &self.tool)
                && *meter == meter_at(before)
            {
                let meter = meter_at(next);
                self.ready_tone(meter.mode);
                self.tool = Tool::Meter(meter);
            }
            self.hunt = hunt;
            self.bring_hunt_into_view();
            self.out.noticed = true;
            self.out.repaint = true;
        }
        self.take_effects()
    }

    /// Who sees the whole sheet sees all that is suspected as well, beside the drawer in which it is told. A view that was
    /// chosen closer stays.
    fn bring_hunt_into_view(&mut self) {
        let is_hidden = |at: ScreenPoint| !self.camera.free_area().contains(Point::new(at.x, at.y));
        let window = self.camera.visible();
        let whole = self.seen_bounds().is_some_and(|all| window.union(all) == window);
        let mut spots = self.next_leads();
        spots.extend(self.rings_of_suspects().into_iter().map(|(at, _)| at));
        if whole && !self.is_on_body() && spots.into_iter().any(is_hidden) {
            self.fit();
        }
    }

    /// One ring for each thing, whatever is suspected of it.
    fn rings(&self) -> Vec<Ring> {
        let mut rings: Vec<Ring> = Vec::new();
        for (place, suspected) in self.hunt.suspects.iter().enumerate() {
            for at in suspected.breaks.iter().flat_map(SignAt::of) {
                // Of a run the place is not known: it stands half way. Both sides of a speaker are one.
                let at = match at {
                    SignAt::Along(run, _) => SignAt::Thing(Thing::Run(run)),
                    SignAt::Thing(Thing::Terminal(at)) => SignAt::Thing(Thing::Part(at.part)),
                    at => at,
                };
                match rings.iter_mut().find(|ring| ring.at == at) {
                    Some(ring) if ring.places.last() == Some(&(place + 1)) => {}
                    Some(ring) => {
                        ring.places.push(place + 1);
                        ring.share += suspected.share;
                    }
                    None => rings.push(Ring {
                        at,
                        places: vec![place + 1],
                        share: suspected.share,
                    }),
                }
            }
        }
        rings
    }

    /// The rings as they stand on the screen, each with what is written at it.
    #[must_use]
    pub fn rings_of_suspects(&self) -> Vec<(ScreenPoint, String)> {
        let rings = self.rings().into_iter();
        rings
            .filter_map(|ring| {
                let at = self.sign_point(&ring.at)?;
                Some((self.camera.to_screen(at), self.ring_word(&ring)))
            })
            .collect()
    }

    /// Where the leads, or the clamp, of the next measurement go on the screen.
    #[must_use]
    pub fn next_leads(&self) -> Vec<ScreenPoint> {
        let points = match &self.hunt.next {
            None => Vec::new(),
            Some(Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black)) => {
                vec![self.stud(red), self.stud(black)]
            }
            Some(Probe::Amps(run)) => vec![self.layout.run(*run).map(|way| way.label_at)],
        };
        let there = points.into_iter().flatten();
        there.map(|at| self.camera.to_screen(at)).collect()
    }

    fn ring_word(&self, ring: &Ring) -> String {
        let places: Vec<String> = ring.places.iter().take(3).map(usize::to_string).collect();
        let share = self.words.figure(precise(ring.share.min(1.0), Unit::Percent, 0));
        format!("{} · {share}", places.join(", "))
    }

    pub(crate) fn sketch_hunt(&self, sketch: &mut Sketch<'_>) {
        let pixel = sketch.pixel;
        let rings: Vec<(Ring, Point, Vec2)> = self
            .rings()
            .into_iter()
            .filter_map(|ring| {
                let middle = self.sign_point(&ring.at)?;
                let half = self.half_of(&ring, pixel);
                Some((ring, middle, half))
            })
            .collect();
        // The likeliest last, over the others.
        for (ring, middle, half) in rings.iter().rev() {
            sketch.pencil_ring(*middle, *half, 1.6 + HEAVIER_PX * ring.share.clamp(0.0, 1.0));
        }
        for (word, place) in self.words_at(&rings, pixel) {
            sketch.word(&word, place, LETTERS_PX, Anchor::Start, Ink::WashEdge);
        }
        // A meter in hand that measures there shows its own leads.
        let measures = match (&self.tool, &self.hunt.next) {
            (Tool::Meter(meter), Some(next)) => *meter == meter_at(next),
            _ => false,
        };
        if !measures {
            self.sketch_next(sketch);
        }
    }

    /// What is written at the rings, and where it begins; the likeliest finds its place first.
    fn words_at(&self, rings: &[(Ring, Point, Vec2)], pixel: f64) -> Vec<(String, Point)> {
        // Words keep off rings, which are drawn a little wider than what they are round, and off what is proposed next.
        let mut avoid: Vec<Rect> = rings
            .iter()
            .map(|(_, middle, half)| Rect::from_center_size(*middle, (2.4 * half.x, 2.4 * half.y)))
            .collect();
        let around_next = Vec2::new(60.0, 44.0) * pixel;
        avoid.extend(self.next_leads().into_iter().map(|at| {
            let at = self.camera.to_board(at);
            Rect::from_points(at - Vec2::new(around_next.x, 16.0 * pixel), at + around_next)
        }));
        // Nor do they lie on what is written at runs.
        let labels = self.label_areas();
        let next = self.next_words(pixel).into_iter();
        let mut written: Vec<Rect> = next.map(|(.., area)| area).collect();
        let mut words = Vec::new();
        for (ring, middle, half) in rings {
            let word = self.ring_word(ring);
            let size = LETTERS_PX * pixel;
            let place = self.place_of_word(&word, size, (*middle, *half), [&avoid, &labels, &written]);
            written.push(text_area(&word, place, size, Anchor::Start, true, false));
            words.push((word, place));
        }
        words
    }

    /// Half the width and height of a ring.
    fn half_of(&self, ring: &Ring, pixel: f64) -> Vec2 {
        let half = match &ring.at {
            SignAt::Thing(Thing::Part(id)) => self
                .layout
                .part(*id)
                .map_or(Vec2::ZERO, |it| it.outline.size().to_vec2() * 0.5),
            _ => Vec2::ZERO,
        };
        Vec2::new(
            (half.x + OFF_PX * pixel).max(LEAST_PX * pixel),
            (half.y + OFF_PX * pixel).max(LEAST_PX * pixel),
        )
    }

    /// Where the labels of runs are written.
    pub(crate) fn label_areas(&self) -> Vec<Rect> {
        let labels = self.layout.runs().filter_map(|(_, way)| way.label.as_ref());
        labels.map(|label| label.area).collect()
    }

    /// Where the word of a ring begins: beside the ring, in view, off every part, off what is to be avoided, off the labels of
    /// runs and off the words that stand already; as much of that as can be.
    pub(crate) fn place_of_word(
        &self,
        word: &str,
        size: f64,
        (middle, half): (Point, Vec2),
        [avoid, labels, written]: [&[Rect]; 3],
    ) -> Point {
        let covers = |place: Point| text_area(word, place, size, Anchor::Start, true, false);
        let wide = covers(Point::ZERO).width();
        let gap = 0.4 * size;
        let (x, y) = (1.25 * half.x + gap, 1.25 * half.y + gap);
        let sides = [
            Vec2::new(0.95 * half.x + gap, -0.8 * half.y - 2.0 * gap),
            Vec2::new(x, 0.3 * size),
            Vec2::new(-0.5 * wide, -y),
            Vec2::new(-0.5 * wide, y + 0.78 * size),
            Vec2::new(-x - wide, 0.3 * size),
        ];
        // Further and further off, above it or below.
        let places: Vec<Point> = (0..8)
            .flat_map(|step| {
                let off = 1.15 * size * f64::from(step);
                sides.map(|side| middle + side + Vec2::new(0.0, if side.y < 0.0 { -off } else { off }))
            })
            .collect();
        let free = self.camera.free_area();
        let in_view = |area: Rect| {
            let corners = [area.origin(), Point::new(area.x1, area.y1)];
            corners.into_iter().all(|corner| {
                let at = self.camera.to_screen(corner);
                free.contains(Point::new(at.x, at.y))
            })
        };
        let hits = |area: Rect, others: &[Rect]| others.iter().any(|other| area.overlaps(*other));
        let on_part = |area: Rect| self.layout.parts().any(|(_, part)| part.outline.overlaps(area));
        // What is worse counts more; of equal places the nearest is taken.
        let harm = |place: &Point| {
            let area = covers(*place);
            8 * u8::from(hits(area, written))
                + 4 * u8::from(!in_view(area))
                + 2 * u8::from(on_part(area))
                + 2 * u8::from(hits(area, labels))
                + u8::from(hits(area, avoid))
        };
        places.into_iter().min_by_key(harm).unwrap_or(middle)
    }

    /// What is written at the leads or the clamp of the next measurement, where, and how wide it is.
    fn next_words(&self, pixel: f64) -> Vec<(String, Point, Anchor, Rect)> {
        let unit = match &self.hunt.next {
            None => return Vec::new(),
            Some(Probe::Volts(..)) => "V",
            Some(Probe::Tone(..)) => "V~",
            Some(Probe::Ohms(..)) => "Ω",
            Some(Probe::Amps(_)) => "A",
        };
        let leads = self.next_leads();
        let mut words: Vec<(String, Point, Anchor, Rect)> = Vec::new();
        let size = LETTERS_PX * pixel;
        // The red lead is told first, and drawn last.
        for (place, lead) in leads.iter().enumerate().rev() {
            let at = self.camera.to_board(*lead);
            let (word, mut at, anchor) = match (leads.len(), place) {
                (1, _) => (
                    self.words.text("meter-clamp"),
                    at + Vec2::new(0.0, 34.0) * pixel,
                    Anchor::Middle,
                ),
                (_, place) => {
                    let key = if place == 0 { "meter-red" } else { "meter-black" };
                    let below = Vec2::new(16.0, 58.0) * pixel;
                    (
                        format!("{unit} {}", self.words.text(key)),
                        at + below,
                        Anchor::Start,
                    )
                }
            };
            let area = |at| text_area(&word, at, size, anchor, true, false);
            // Terminals side by side: one word below the other.
            if let Some(other) = words.iter().find(|other| other.3.overlaps(area(at))) {
                at.y = other.3.y1 + size;
            }
            let area = area(at);
            words.push((word, at, anchor, area));
        }
        words
    }

    fn sketch_next(&self, sketch: &mut Sketch<'_>) {
        let points: Vec<Point> = self
            .next_leads()
            .into_iter()
            .map(|at| self.camera.to_board(at))
            .collect();
        let mut words = self.next_words(sketch.pixel).into_iter();
        match points.as_slice() {
            [red, black] => {
                sketch.line(&[*red, *black], Ink::WashEdge, 1.5, Some((3.0, 5.0)));
                for (at, colour) in [(*black, Colour::Black), (*red, Colour::Red)] {
                    self.sketch_probe(sketch, at, colour);
                    if let Some((word, place, anchor, _)) = words.next() {
                        sketch.word(&word, place, LETTERS_PX, anchor, Ink::Text);
                    }
                }
            }
            [at] => {
                sketch.ring(*at, 13.0, Ink::Line, 4.0, None);
                sketch.ring(*at, 13.0, Ink::Insulation(Colour::Red), 1.5, None);
                for (word, place, anchor, _) in words {
                    sketch.word(&word, place, LETTERS_PX, anchor, Ink::Text);
                }
            }
            _ => {}
        }
    }
}

impl Sketch<'_> {
    /// A ring as a hand draws it: once round and a little further, not quite where it began.
    fn pencil_ring(&mut self, middle: Point, half: Vec2, width_px: f64) {
        // Quarters of an ellipse as curves (the usual constant for a circle), each a little larger than the one before.
        const CURVE: f64 = 0.552_284_75;
        let at = |x: f64, y: f64, grown: f64| middle + Vec2::new(x * half.x * grown, y * half.y * grown);
        let corners = [(-0.8, -0.6), (0.6, -0.8), (0.8, 0.6), (-0.6, 0.8)];
        let mut path = BezPath::new();
        let mut grown = 1.18;
        path.move_to(at(corners[0].0, corners[0].1, grown));
        for turn in 0..5 {
            let (from, to) = (corners[turn % 4], corners[(turn + 1) % 4]);
            let next = grown + 0.025;
            // Along the ring at a corner: a quarter turn from where it points.
            let tangent = |corner: (f64, f64)| (-corner.1, corner.0);
            let ((a, b), (c, d)) = (tangent(from), tangent(to));
            path.curve_to(
                at(from.0 + CURVE * a, from.1 + CURVE * b, grown),
                at(to.0 - CURVE * c, to.1 - CURVE * d, next),
                at(to.0, to.1, next),
            );
            grown = next;
        }
        self.path(path.clone(), None, Ink::Paper, width_px + 3.0, None);
        self.path(path, None, Ink::WashEdge, width_px, None);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::TerminalRef;

    const JOB: &str = "battery B1 @0,0
fuse F1 strip61 60A @300,0
load L1 power=300W @700,0
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 4m RD
run W3 L1.- B1.- 16mm2 2m BK";

    #[test]
    fn what_is_written_at_suspects_lies_on_no_label_of_a_run() {
        // Three lanes side by side, each with its label.
        let lanes = "battery B1 @0,0
load L1 power=30W @600,0
load L2 power=30W @600,160
load L3 power=30W @600,320
run W1 B1.+ L1.+ 2.5mm2 3m RD
run W2 B1.+ L2.+ 2.5mm2 3m RD
run W3 B1.+ L3.+ 2.5mm2 3m RD
run W4 L1.- B1.- 2.5mm2 3m BK
run W5 L2.- B1.- 2.5mm2 3m BK
run W6 L3.- B1.- 2.5mm2 3m BK";
        let mut editor = Editor::new(testkit::job(lanes));
        editor.fit();
        let texts = ["W1 cut", "W2 cut", "W3 cut", "W4 cut", "W5 cut", "W6 cut"];
        let suspects = texts.map(|text| Suspected {
            breaks: vec![Break::read(text, editor.sheet()).expect("a break")],
            share: 0.16,
        });
        let _ = editor.hunt(suspects.to_vec(), None);
        let pixel = 1.0 / editor.camera().zoom;
        let rings: Vec<(Ring, Point, Vec2)> = editor
            .rings()
            .into_iter()
            .filter_map(|ring| {
                let middle = editor.sign_point(&ring.at)?;
                let half = editor.half_of(&ring, pixel);
                Some((ring, middle, half))
            })
            .collect();
        // Leads on neighbouring terminals: their words lie neither on one another nor under those of the suspects.
        let battery = editor.sheet().part_by_tag("B1").expect("a battery").0;
        let [red, black] = ["+", "-"].map(|name| TerminalRef::new(battery, name));
        editor.hunt.next = Some(Probe::Volts(red, black));
        let words = editor.words_at(&rings, pixel);
        assert_eq!(words.len(), texts.len());
        let leads: Vec<Rect> = editor.next_words(pixel).into_iter().map(|it| it.3).collect();
        assert!(!leads[0].overlaps(leads[1]), "{leads:?}");
        let labels: Vec<Rect> = editor
            .layout()
            .runs()
            .filter_map(|(_, way)| way.label.as_ref().map(|label| label.area))
            .collect();
        assert!(labels.len() >= 4, "{labels:?}");
        for (word, place) in words {
            let area = text_area(&word, place, LETTERS_PX * pixel, Anchor::Start, true, false);
            let on = labels.iter().chain(&leads).find(|other| other.overlaps(area));
            assert!(on.is_none(), "{word} at {area:?} lies on a label at {on:?}");
        }
    }

    #[test]
    fn every_suspect_has_a_ring_and_what_is_suspected_of_one_thing_shares_it() {
        let mut editor = Editor::new(testkit::job(JOB));
        let suspect = |editor: &Editor, text: &str, share: f64| Suspected {
            breaks: vec![Break::read(text, editor.sheet()).expect("a break")],
            share,
        };
        let suspects = vec![
            suspect(&editor, "W2 cut", 0.5),
            suspect(&editor, "F1 open", 0.3),
            suspect(&editor, "W2 resistive 0.5 Ω", 0.12),
        ];
        let sheet = editor.sheet().clone();
        let part = |tag: &str| sheet.part_by_tag(tag).expect("a part").0;
        let [red, black] = [
            TerminalRef::new(part("F1"), "out"),
            TerminalRef::new(part("B1"), "-"),
        ];
        let effects = editor.hunt(suspects.clone(), Some(Probe::Volts(red.clone(), black.clone())));
        assert!(effects.repaint);
        let words: Vec<String> = editor.rings_of_suspects().into_iter().map(|it| it.1).collect();
        assert_eq!(words, ["1, 3 · 62 %", "2 · 30 %"]);
        // Round the fuse itself.
        let fuse = editor.layout().part(part("F1")).expect("drawn").middle();
        let ring = editor.rings_of_suspects()[1].0;
        assert!(editor.camera().to_board(ring).distance(fuse) < 1e-6);
        let leads: Vec<Point> = editor
            .next_leads()
            .into_iter()
            .map(|at| editor.camera().to_board(at))
            .collect();
        let studs = [&red, &black].map(|at| editor.layout().stud(at).expect("a stud"));
        assert!(
            leads.iter().zip(&studs).all(|(a, b)| a.distance(*b) < 1e-6),
            "{leads:?}"
        );
        let shown = |editor: &Editor| {
            let items = editor.tool_picture().items.into_iter();
            let texts = items.filter_map(|item| match item.shape {
                drawing::Shape::Text { text, .. } => Some(text),
                drawing::Shape::Path { .. } => None,
            });
            texts.collect::<Vec<_>>()
        };
        assert_eq!(shown(&editor), ["1, 3 · 62 %", "2 · 30 %", "V black", "V red"]);
        // A drawer that is opened over them lets the whole sheet be seen beside it, one that is seen closer stays.
        for (zoom, fits) in [(0.5, true), (3.0, false)] {
            let _ = editor.hunt(Vec::new(), None);
            editor.resize(1280.0, 800.0, crate::Margins::default());
            editor.fit();
            editor.camera.zoom_about(ScreenPoint::new(640.0, 400.0), zoom);
            editor.camera.pan(-250.0, 0.0);
            let left = editor.camera().to_screen(fuse).x + 60.0;
            let margins = crate::Margins {
                left,
                ..crate::Margins::default()
            };
            editor.resize(1280.0, 800.0, margins);
            let before = *editor.camera();
            let _ = editor.hunt(suspects.clone(), None);
            let rings = editor.rings_of_suspects();
            assert_eq!(*editor.camera() != before, fits, "{zoom}");
            assert_eq!(rings.iter().all(|(at, _)| at.x > left), fits, "{zoom}");
        }
        // Told the same again, nothing is painted; told nothing, nothing is left.
        let probe = Some(Probe::Volts(red, black));
        let _ = editor.hunt(suspects.clone(), probe.clone());
        assert!(!editor.hunt(suspects, probe).repaint);
        let _ = editor.hunt(Vec::new(), None);
        assert!(shown(&editor).is_empty());
    }
}
