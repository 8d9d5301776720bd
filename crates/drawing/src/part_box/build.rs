//! Builds the geometry of a part: measures its texts and studs, and puts them about the symbol.

use super::texts::{lines, stud_text};
use super::{GRID, NAME_SIZE, STUD_PITCH};
use super::{PartBox, Slot, SlotFor, Stud, Weight, Words};
use super::{outward, turned_side, turning};
use crate::letters::text_width;
use crate::symbols::{Symbol, symbol};
use kurbo::{Point, Rect, Vec2};
use model::{Part, Role, Side, Turn};
use ordered::Sort as _;

fn up_to(step: f64, length: f64) -> f64 {
    libm::ceil(length / step) * step
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

/// What the geometry is built of, measured once.
pub(super) struct Builder<'a> {
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
    pub(super) fn new(part: &'a Part, words: &'a words::Words) -> Self {
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

    pub(super) fn build(self, at: Point) -> PartBox {
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
        let lines = lines(self.part, self.words, room);
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
