//! Geometry of one part: outline sized from its content, studs on the outline where runs land, room for its texts.
//!
//! The outline is built on the grid of 10 about the part's point: symbol in the middle, a strip for stud names along
//! each side that has studs, and a block of text (tag, label, numbers) on the one side where the kind has no studs, so
//! that no lead ever crosses a text. Turning a part turns sides and symbol; texts stay upright.
//!
//! Room for numbers is kept by what they may grow to, not by what they are: the layout does not depend on the study.

use crate::letters::{fit, text_width};
use crate::numbers;
use crate::symbols::{Symbol, symbol};
use kurbo::{Affine, Point, Rect, Vec2};
use model::kinds::PartKind;
use model::{BoardPoint, Part, Role, Side, TerminalName, Turn};
use ordered::Sort as _;
use words::say;

/// Grid on which parts, studs and wire ways stand, in board units.
pub const GRID: f64 = 10.0;
/// Least distance between two studs on a side, in board units.
pub const STUD_PITCH: f64 = 20.0;
/// Size of a tag's letters.
pub(crate) const TAG_SIZE: f64 = 12.0;
/// Size of a label's letters.
pub(crate) const LABEL_SIZE: f64 = 10.0;
/// Size of numbers.
pub(crate) const NUMBER_SIZE: f64 = 9.0;
/// Size of stud names.
pub(crate) const NAME_SIZE: f64 = 8.0;

/// A point of the outline where runs land.
#[derive(Clone, Debug, PartialEq)]
pub struct Stud {
    /// The terminal's name.
    pub name: TerminalName,
    /// Where it stands.
    pub at: Point,
    /// The direction in which a run leaves it: a unit vector away from the outline.
    pub out: Vec2,
    /// What it is for.
    pub role: Role,
    /// The side it stands on, turn included.
    pub side: Side,
}

/// How much a text of a part matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Weight {
    Tag,
    Label,
    Name,
}

/// A text of a part that does not depend on numbers.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Words {
    pub(crate) text: String,
    pub(crate) at: Point,
    pub(crate) size: f64,
    pub(crate) anchor: crate::Anchor,
    pub(crate) weight: Weight,
    pub(crate) upright: bool,
}

/// Room for a number.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slot {
    pub(crate) what: SlotFor,
    pub(crate) at: Point,
    pub(crate) anchor: crate::Anchor,
    pub(crate) width: f64,
    pub(crate) upright: bool,
}

/// What a slot is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum SlotFor {
    /// The part's own numbers.
    Part,
    /// What a channel sees.
    Channel(u8),
}

/// Geometry of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartBox {
    /// Its outline.
    pub outline: Rect,
    /// Its studs, in the order of the kind's terminals.
    pub studs: Vec<Stud>,
    pub(crate) symbol_at: Point,
    pub(crate) turn: Turn,
    pub(crate) words: Vec<Words>,
    pub(crate) slots: Vec<Slot>,
}

fn up_to(step: f64, length: f64) -> f64 {
    libm::ceil(length / step) * step
}

/// Where a side comes to lie when the part is turned.
pub(crate) fn turned_side(side: Side, turn: Turn) -> Side {
    let quarter = |side| match side {
        Side::Left => Side::Top,
        Side::Top => Side::Right,
        Side::Right => Side::Bottom,
        Side::Bottom => Side::Left,
    };
    match turn {
        Turn::None => side,
        Turn::Quarter => quarter(side),
        Turn::Half => quarter(quarter(side)),
        Turn::ThreeQuarters => quarter(quarter(quarter(side))),
    }
}

/// Whether the studs of a side run the other way along it after turning.
fn reversed(side: Side, turn: Turn) -> bool {
    match turn {
        Turn::None => false,
        Turn::Half => true,
        Turn::Quarter => matches!(side, Side::Left | Side::Right),
        Turn::ThreeQuarters => matches!(side, Side::Top | Side::Bottom),
    }
}

/// The turn as a map about the origin.
pub(crate) fn turning(turn: Turn) -> Affine {
    // Written out: a rotation by cosines would leave crumbs beside the grid.
    match turn {
        Turn::None => Affine::IDENTITY,
        Turn::Quarter => Affine::new([0.0, 1.0, -1.0, 0.0, 0.0, 0.0]),
        Turn::Half => Affine::new([-1.0, 0.0, 0.0, -1.0, 0.0, 0.0]),
        Turn::ThreeQuarters => Affine::new([0.0, -1.0, 1.0, 0.0, 0.0, 0.0]),
    }
}

/// The direction away from a side.
pub(crate) fn outward(side: Side) -> Vec2 {
    match side {
        Side::Left => Vec2::new(-1.0, 0.0),
        Side::Right => Vec2::new(1.0, 0.0),
        Side::Top => Vec2::new(0.0, -1.0),
        Side::Bottom => Vec2::new(0.0, 1.0),
    }
}

/// A board point as a point of the plane. What lies off the board, as a damaged sheet may have it, is taken to its edge,
/// so that no sum of lengths overflows.
#[must_use]
pub fn to_point(at: BoardPoint) -> Point {
    let edge = model::limits::FURTHEST;
    Point::new(
        f64::from(at.x.clamp(-edge, edge)),
        f64::from(at.y.clamp(-edge, edge)),
    )
}

/// What a part says of itself without a study, in its line of numbers; empty where the kind has none.
pub(crate) fn own_numbers(kind: &PartKind, words: &words::Words) -> String {
    use numbers::quantity as q;
    fn fact<Q: model::quantity::Quantity>(words: &words::Words, value: &model::Fact<Q>) -> String {
        value.marked("?", |value| q(words, *value))
    }
    match kind {
        PartKind::Battery(it) => fact(words, &it.capacity),
        PartKind::Alternator(it) => fact(words, &it.current),
        PartKind::Vehicle(it) => words.say(&say!("drawn-main-fuse", amps = fact(words, &it.main_fuse))),
        PartKind::Converter(it) => format!("{} {}", fact(words, &it.voltage), fact(words, &it.current)),
        PartKind::Fuse(it) => fact(words, &it.rating),
        PartKind::Breaker(it) => fact(words, &it.rating),
        PartKind::Relay(it) => fact(words, &it.rating),
        PartKind::Switch(it) => fact(words, &it.rating),
        PartKind::Isolator(it) => fact(words, &it.rating),
        PartKind::Capacitor(it) => fact(words, &it.capacitance),
        PartKind::Load(it) => match it.law {
            model::kinds::supply::LoadLaw::Current => fact(words, &it.current),
            model::kinds::supply::LoadLaw::Power => fact(words, &it.power),
            model::kinds::supply::LoadLaw::Resistance => fact(words, &it.resistance),
        },
        PartKind::Speaker(it) if it.coils > 1 => {
            format!(
                "{} × {} {}",
                it.coils,
                fact(words, &it.impedance),
                fact(words, &it.power)
            )
        }
        PartKind::Speaker(it) => format!("{} {}", fact(words, &it.impedance), fact(words, &it.power)),
        PartKind::Crossover(it) => fact(words, &it.frequency),
        PartKind::InlineCapacitor(it) => match it.capacitance.value() {
            Some(farads) => format!("{} µF", numbers::figures(words, farads.0 * 1e6)),
            None => "?".to_owned(),
        },
        PartKind::Ground(_)
        | PartKind::HeadUnit(_)
        | PartKind::Amplifier(_)
        | PartKind::Processor(_)
        | PartKind::LineConverter(_)
        | PartKind::Block(_)
        | PartKind::Bus(_)
        | PartKind::Splice(_)
        | PartKind::Plug(_)
        | PartKind::Adapter(_) => String::new(),
    }
}

/// The widest that a study's numbers may make the line, as a text; empty where the kind shows none.
fn sample_numbers(kind: &PartKind, words: &words::Words) -> String {
    let sample = match kind {
        PartKind::Bus(_) | PartKind::Splice(_) | PartKind::Plug(_) | PartKind::Adapter(_) => "",
        PartKind::Crossover(_) | PartKind::InlineCapacitor(_) | PartKind::LineConverter(_) => "",
        PartKind::Battery(_) => {
            let takes = words.say(&say!("drawn-takes", amps = "88.8 A"));
            let gives = words.say(&say!("drawn-gives", amps = "88.8 A"));
            let longer = if takes.len() > gives.len() { takes } else { gives };
            return format!(" · 88.8 V · {longer}");
        }
        PartKind::Amplifier(_) | PartKind::HeadUnit(_) => "88.8 V · 88.8 A",
        PartKind::Alternator(_) | PartKind::Converter(_) => " · 88.8 V · 88.8 A",
        PartKind::Speaker(_) => {
            return format!(" · {}", words.say(&say!("drawn-gets", power = "888 W")));
        }
        _ => " · 88.8 mA",
    };
    sample.to_owned()
}

/// What stands beside a stud: its name, and for a plug what the cavity is for.
fn stud_text(kind: &PartKind, terminal: &str) -> String {
    let cavities = match kind {
        PartKind::Plug(plug) => &plug.cavities,
        PartKind::Adapter(adapter) => &adapter.cavities,
        // A hyphen at the end of a name is a pole, and is drawn as a minus sign.
        _ => {
            return match terminal.strip_suffix('-') {
                Some(name) => format!("{name}−"),
                None => terminal.to_owned(),
            };
        }
    };
    let function = terminal.strip_suffix('a').and_then(|position| {
        cavities
            .0
            .iter()
            .find(|cavity| cavity.position == position)
            .map(|cavity| cavity.function.as_str())
    });
    match function {
        Some(function) if !function.is_empty() => {
            fit(&format!("{terminal} {function}"), 90.0, NAME_SIZE, false)
        }
        _ => terminal.to_owned(),
    }
}

/// The studs of one side, in order along it: index into the terminals, text.
#[derive(Default)]
struct Strip {
    studs: Vec<(usize, String)>,
    /// Width of the widest text.
    widest: f64,
    /// Whether its studs have leads to the symbol.
    leads: bool,
}

/// Width kept for what a channel sees.
fn channel_room() -> f64 {
    text_width("1+2 88.8 Ω", NAME_SIZE, false) + 10.0
}

fn channel_of(role: Role) -> Option<(u8, bool)> {
    match role {
        Role::SpeakerOut { channel, positive } => Some((channel, positive)),
        _ => None,
    }
}

impl PartBox {
    /// The geometry of a part whose middle stands at this point.
    #[must_use]
    pub fn of(part: &Part, at: Point) -> Self {
        Self::read_by(part, at, &words::Words::english())
    }
    /// The same for a reader: names and numbers take the room that they need in these words.
    #[must_use]
    pub fn read_by(part: &Part, at: Point, words: &words::Words) -> Self {
        Builder::new(part, words).build(at)
    }
    /// Its size, wherever it stands.
    #[must_use]
    pub fn size_of(part: &Part) -> kurbo::Size {
        Self::of(part, Point::ZERO).outline.size()
    }
    /// Where a terminal stands.
    #[must_use]
    pub fn stud(&self, name: &TerminalName) -> Option<&Stud> {
        self.studs.iter().find(|stud| &stud.name == name)
    }
    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Point {
        self.outline.center()
    }
}

struct Builder<'a> {
    part: &'a Part,
    words: &'a words::Words,
    symbol: Symbol,
    terminals: Vec<model::Terminal>,
    left: Strip,
    right: Strip,
    top: Strip,
    bottom: Strip,
}

impl<'a> Builder<'a> {
    fn new(part: &'a Part, words: &'a words::Words) -> Self {
        let symbol = symbol(&part.is, words);
        let terminals = part.terminals();
        let mut this = Self {
            part,
            words,
            symbol,
            terminals,
            left: Strip::default(),
            right: Strip::default(),
            top: Strip::default(),
            bottom: Strip::default(),
        };
        for side in [Side::Left, Side::Right, Side::Top, Side::Bottom] {
            let mut studs: Vec<(usize, String)> = this
                .terminals
                .iter()
                .enumerate()
                .filter(|(_, terminal)| terminal.side == side)
                .map(|(place, terminal)| (place, stud_text(&part.is, terminal.name.as_str())))
                .collect();
            if reversed(side, part.turn) {
                studs.reverse();
            }
            // A lone terminal needs no name.
            let widest = if this.terminals.len() == 1 {
                0.0
            } else {
                studs
                    .iter()
                    .map(|(_, text)| text_width(text, NAME_SIZE, false))
                    .fold(0.0, f64::max)
            };
            let leads = studs.iter().any(|(place, _)| {
                this.terminals
                    .get(*place)
                    .is_some_and(|terminal| this.symbol.pin(terminal.name.as_str()).is_some())
            });
            let strip = Strip { studs, widest, leads };
            match turned_side(side, part.turn) {
                Side::Left => this.left = strip,
                Side::Right => this.right = strip,
                Side::Top => this.top = strip,
                Side::Bottom => this.bottom = strip,
            }
        }
        this
    }

    fn has_channels(&self, strip: &Strip) -> bool {
        strip.studs.iter().any(|(place, _)| {
            self.terminals
                .get(*place)
                .is_some_and(|terminal| channel_of(terminal.role).is_some())
        })
    }

    /// Depth of a strip, measured from the outline inwards.
    fn depth(&self, strip: &Strip, level: bool) -> f64 {
        if strip.studs.is_empty() {
            return 0.0;
        }
        let channels = if self.has_channels(strip) {
            channel_room()
        } else {
            0.0
        };
        if level {
            up_to(GRID, strip.widest + 9.0 + channels)
        } else if self.names_upright(strip) {
            up_to(GRID, strip.widest + 10.0 + channels)
        } else {
            GRID
        }
    }

    /// Whether the names of a strip above or below must be turned to fit the pitch.
    fn names_upright(&self, strip: &Strip) -> bool {
        let room = if strip.leads { 14.0 } else { STUD_PITCH - 4.0 };
        strip.widest > room && strip.studs.len() > 2 || (strip.leads && strip.widest > 16.0)
    }

    /// Distance between the studs of a strip above or below.
    fn pitch(&self, strip: &Strip) -> f64 {
        if self.names_upright(strip) {
            STUD_PITCH
        } else {
            up_to(STUD_PITCH, strip.widest + 6.0)
        }
    }

    fn build(self, at: Point) -> PartBox {
        let part = self.part;
        let turn = part.turn;
        let half = match turn {
            Turn::None | Turn::Half => self.symbol.half,
            Turn::Quarter | Turn::ThreeQuarters => Vec2::new(self.symbol.half.y, self.symbol.half.x),
        };
        let (half_x, half_y) = (up_to(GRID, half.x), up_to(GRID, half.y));
        let (left, right) = (self.depth(&self.left, true), self.depth(&self.right, true));
        let (top, bottom) = (self.depth(&self.top, false), self.depth(&self.bottom, false));
        let rows = self.left.studs.len().max(self.right.studs.len());
        let body_half_y = half_y.max(GRID * rows as f64);
        let along = |strip: &Strip| self.pitch(strip) * strip.studs.len() as f64;
        let body_half_x = half_x.max(up_to(STUD_PITCH, along(&self.top).max(along(&self.bottom))) / 2.0);
        // Names beside leads above or below stand right of them, and must not stick out.
        let beside_leads = |strip: &Strip| {
            let map = turning(turn);
            let ends = strip.studs.iter().filter_map(|(place, text)| {
                let pin = self.symbol.pin(self.terminals.get(*place)?.name.as_str())?;
                Some((map * pin).x + 6.0 + text_width(text, NAME_SIZE, false))
            });
            if self.names_upright(strip) || self.terminals.len() == 1 {
                0.0
            } else {
                ends.fold(0.0, f64::max)
            }
        };
        let body_half_x = body_half_x.max(up_to(
            GRID,
            beside_leads(&self.top).max(beside_leads(&self.bottom)),
        ));
        let content_width = left + 2.0 * body_half_x + right;

        // The side where the kind has no studs takes the text.
        let block_side = if self.terminals.iter().all(|terminal| terminal.side == Side::Top) {
            turned_side(Side::Bottom, turn)
        } else {
            turned_side(Side::Top, turn)
        };
        let beside = matches!(block_side, Side::Left | Side::Right);
        let room = if beside {
            100.0
        } else {
            (content_width - 12.0).max(84.0)
        };
        let lines = self.lines(room);
        let block_width = lines.iter().map(|line| line.width()).fold(0.0, f64::max) + 12.0;
        let block_height = up_to(GRID, lines.iter().map(|line| line.height).sum::<f64>() + 4.0);

        let (mut before_x, mut before_y) = (0.0, 0.0);
        let (mut width, mut height) = (content_width, top + 2.0 * body_half_y + bottom);
        if beside {
            width += up_to(GRID, block_width);
            height = height.max(block_height);
            if block_side == Side::Left {
                before_x = up_to(GRID, block_width);
            }
        } else {
            width = width.max(block_width);
            height += block_height;
            if block_side == Side::Top {
                before_y = block_height;
            }
        }
        let (full_width, full_height) = (up_to(2.0 * GRID, width), up_to(2.0 * GRID, height));
        let needed_x = if beside { width } else { content_width };
        let slack_x = libm::floor((full_width - needed_x) / 2.0 / GRID) * GRID;
        let needed_y = top + 2.0 * body_half_y + bottom + if beside { 0.0 } else { block_height };
        let spare_y = (full_height - needed_y) / 2.0 / GRID;
        let slack_y = GRID
            * if block_side == Side::Top {
                libm::ceil(spare_y)
            } else {
                libm::floor(spare_y)
            };

        let corner = at - Vec2::new(full_width / 2.0, full_height / 2.0);
        let outline = Rect::from_origin_size(corner, (full_width, full_height));
        let middle = corner
            + Vec2::new(
                before_x + slack_x + left + body_half_x,
                before_y + slack_y + top + body_half_y,
            );
        let mut built = PartBox {
            outline,
            studs: Vec::new(),
            symbol_at: middle,
            turn,
            words: Vec::new(),
            slots: Vec::new(),
        };
        let mut studs: Vec<(usize, Stud)> = Vec::new();
        for side in [Side::Left, Side::Right, Side::Top, Side::Bottom] {
            self.place_side(side, &mut built, &mut studs);
        }
        studs.order_by_key(|(place, _)| *place);
        built.studs = studs.into_iter().map(|(_, stud)| stud).collect();

        // The text block.
        let (x, anchor, mut y) = match block_side {
            Side::Top => (outline.x0 + 6.0, crate::Anchor::Start, outline.y0 + 2.0),
            Side::Bottom => (outline.x0 + 6.0, crate::Anchor::Start, outline.y1 - block_height),
            Side::Left => (
                outline.x0 + 6.0,
                crate::Anchor::Start,
                middle.y - block_height / 2.0,
            ),
            Side::Right => (
                outline.x1 - up_to(GRID, block_width) + 6.0,
                crate::Anchor::Start,
                middle.y - block_height / 2.0,
            ),
        };
        if beside {
            y = y.clamp(
                outline.y0 + 1.0,
                (outline.y1 - block_height).max(outline.y0 + 1.0),
            );
        }
        // A ground point's text stands centred below its symbol.
        let centred = block_side == Side::Bottom && self.terminals.len() == 1;
        let (x, anchor) = if centred {
            (outline.center().x, crate::Anchor::Middle)
        } else {
            (x, anchor)
        };
        for line in lines {
            y += line.height;
            let baseline = y - 2.5;
            let mut from = x;
            if centred {
                from = x - line.width() / 2.0;
            }
            for (text, size, weight) in &line.pieces {
                let bold = *weight == Weight::Tag;
                built.words.push(Words {
                    text: text.clone(),
                    at: Point::new(from, baseline),
                    size: *size,
                    anchor: crate::Anchor::Start,
                    weight: *weight,
                    upright: false,
                });
                from += text_width(text, *size, bold) + 5.0;
            }
            if line.numbers {
                built.slots.push(Slot {
                    what: SlotFor::Part,
                    at: Point::new(x, baseline),
                    anchor,
                    width: (if beside { block_width } else { full_width }) - 12.0,
                    upright: false,
                });
            }
        }
        built
    }

    /// Tag, label and numbers, broken into lines that fit the room.
    fn lines(&self, room: f64) -> Vec<Line> {
        let part = self.part;
        let tag = fit(&part.tag, 120.0, TAG_SIZE, true);
        let tag_width = text_width(&tag, TAG_SIZE, true);
        let named = !part.label.is_empty()
            || !matches!(
                part.is,
                PartKind::Splice(_) | PartKind::Ground(_) | PartKind::Bus(_)
            );
        let label = if named {
            self.words.say(&part.said())
        } else {
            String::new()
        };
        let one = tag_width + 5.0 + text_width(&label, LABEL_SIZE, false);
        let mut lines = Vec::new();
        if label.is_empty() || one <= room.max(110.0) {
            let mut pieces = vec![(tag, TAG_SIZE, Weight::Tag)];
            if !label.is_empty() {
                pieces.push((label, LABEL_SIZE, Weight::Label));
            }
            lines.push(Line {
                pieces,
                height: 13.0,
                numbers: false,
                kept: 0.0,
            });
        } else {
            lines.push(Line {
                pieces: vec![(tag, TAG_SIZE, Weight::Tag)],
                height: 13.0,
                numbers: false,
                kept: 0.0,
            });
            lines.push(Line {
                pieces: vec![(
                    fit(&label, room.max(120.0), LABEL_SIZE, false),
                    LABEL_SIZE,
                    Weight::Label,
                )],
                height: 11.0,
                numbers: false,
                kept: 0.0,
            });
        }
        let own = own_numbers(&part.is, self.words);
        let sample = sample_numbers(&part.is, self.words);
        if !own.is_empty() || !sample.is_empty() {
            lines.push(Line {
                pieces: Vec::new(),
                height: 11.0,
                numbers: true,
                kept: text_width(&own, NUMBER_SIZE, false) + text_width(&sample, NUMBER_SIZE, false),
            });
        }
        lines
    }

    fn place_side(&self, side: Side, built: &mut PartBox, studs: &mut Vec<(usize, Stud)>) {
        let strip = match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
            Side::Top => &self.top,
            Side::Bottom => &self.bottom,
        };
        let level = matches!(side, Side::Left | Side::Right);
        let upright = !level && self.names_upright(strip);
        let pitch = if level { STUD_PITCH } else { self.pitch(strip) };
        let count = strip.studs.len();
        let outline = built.outline;
        let map = turning(self.part.turn);
        let mut channel_start: Option<(u8, Point)> = None;
        for (n, (place, text)) in strip.studs.iter().enumerate() {
            let Some(terminal) = self.terminals.get(*place) else {
                continue;
            };
            let offset = match self.symbol.pin(terminal.name.as_str()) {
                Some(pin) => {
                    let pin = map * pin;
                    if level { pin.y } else { pin.x }
                }
                None => pitch * n as f64 - pitch / 2.0 * (count - 1) as f64,
            };
            let at = match side {
                Side::Left => Point::new(outline.x0, built.symbol_at.y + offset),
                Side::Right => Point::new(outline.x1, built.symbol_at.y + offset),
                Side::Top => Point::new(built.symbol_at.x + offset, outline.y0),
                Side::Bottom => Point::new(built.symbol_at.x + offset, outline.y1),
            };
            studs.push((
                *place,
                Stud {
                    name: terminal.name.clone(),
                    at,
                    out: outward(side),
                    role: terminal.role,
                    side,
                },
            ));
            if self.terminals.len() > 1 {
                let (dx, dy, anchor) = match (side, strip.leads, upright) {
                    (Side::Left, true, _) => (6.0, -3.0, crate::Anchor::Start),
                    (Side::Left, false, _) => (7.0, 3.0, crate::Anchor::Start),
                    (Side::Right, true, _) => (-6.0, -3.0, crate::Anchor::End),
                    (Side::Right, false, _) => (-7.0, 3.0, crate::Anchor::End),
                    (Side::Top, true, true) => (-3.0, 6.0, crate::Anchor::End),
                    (Side::Top, false, true) => (3.0, 7.0, crate::Anchor::End),
                    (Side::Bottom, true, true) => (-3.0, -6.0, crate::Anchor::Start),
                    (Side::Bottom, false, true) => (3.0, -7.0, crate::Anchor::Start),
                    (Side::Top, true, false) => (4.0, 9.0, crate::Anchor::Start),
                    (Side::Top, false, false) => (0.0, 11.0, crate::Anchor::Middle),
                    (Side::Bottom, true, false) => (4.0, -3.5, crate::Anchor::Start),
                    (Side::Bottom, false, false) => (0.0, -5.0, crate::Anchor::Middle),
                };
                built.words.push(Words {
                    text: text.clone(),
                    at: at + Vec2::new(dx, dy),
                    size: NAME_SIZE,
                    anchor,
                    weight: Weight::Name,
                    upright,
                });
            }
            // What a channel sees stands between the studs of its two legs.
            let Some((channel, _)) = channel_of(terminal.role) else {
                continue;
            };
            match channel_start.take() {
                Some((open, from)) if open == channel => {
                    let inward = strip.widest + 12.0;
                    let between = from.midpoint(at);
                    let (at, anchor) = match side {
                        Side::Left => (between + Vec2::new(inward, 3.0), crate::Anchor::Start),
                        Side::Right => (between + Vec2::new(-inward, 3.0), crate::Anchor::End),
                        Side::Top => (between + Vec2::new(3.0, inward), crate::Anchor::End),
                        Side::Bottom => (between + Vec2::new(3.0, -inward), crate::Anchor::Start),
                    };
                    built.slots.push(Slot {
                        what: SlotFor::Channel(channel),
                        at,
                        anchor,
                        width: channel_room() - 8.0,
                        upright: !level,
                    });
                }
                _ => channel_start = Some((channel, at)),
            }
        }
    }
}

struct Line {
    pieces: Vec<(String, f64, Weight)>,
    height: f64,
    numbers: bool,
    kept: f64,
}

impl Line {
    fn width(&self) -> f64 {
        let pieces: f64 = self
            .pieces
            .iter()
            .map(|(text, size, weight)| text_width(text, *size, *weight == Weight::Tag))
            .sum();
        (pieces + 5.0 * self.pieces.len().saturating_sub(1) as f64).max(self.kept)
    }
}
