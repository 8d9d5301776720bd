//! Symbols of the supply side.

use super::Symbol;
use model::kinds::supply::{Block, DeviceState, Isolator, IsolatorKind, LoadLaw};
use model::written::{Cavities, Loops};

/// Height of the n-th of `count` rows at a pitch of 20, centred.
fn row(n: usize, count: usize) -> f64 {
    20.0 * n as f64 - 10.0 * (count.max(1) - 1) as f64
}

pub(crate) fn battery() -> Symbol {
    Symbol::sized(30.0, 14.0)
        .with_pin("-", -20.0, 0.0)
        .with_pin("+", 30.0, 0.0)
        .line(&[(-20.0, 0.0), (-9.0, 0.0)])
        .thick(&[(-9.0, -6.0), (-9.0, 6.0)])
        .line(&[(-3.0, -12.0), (-3.0, 12.0)])
        .thick(&[(3.0, -6.0), (3.0, 6.0)])
        .line(&[(9.0, -12.0), (9.0, 12.0)])
        .line(&[(9.0, 0.0), (30.0, 0.0)])
        .line(&[(15.0, -9.0), (21.0, -9.0)])
        .line(&[(18.0, -12.0), (18.0, -6.0)])
}

pub(crate) fn alternator() -> Symbol {
    // Rotating generator with its rectifier: G in a circle, the sign for direct current below the letter.
    Symbol::sized(30.0, 17.0)
        .with_pin("case", -20.0, 0.0)
        .with_pin("B+", 30.0, 0.0)
        .line(&[(-20.0, 0.0), (-15.0, 0.0)])
        .circle(0.0, 0.0, 15.0)
        .word("G", 0.0, 3.5, 13.0)
        .line(&[(-5.0, 7.0), (5.0, 7.0)])
        .line(&[(-5.0, 10.0), (-2.5, 10.0)])
        .line(&[(-1.2, 10.0), (1.2, 10.0)])
        .line(&[(2.5, 10.0), (5.0, 10.0)])
        .line(&[(15.0, 0.0), (30.0, 0.0)])
}

pub(crate) fn vehicle() -> Symbol {
    // The panel: a bar with fuses to both feeds, and the strap to the body.
    Symbol::sized(26.0, 30.0)
        .thick(&[(-14.0, -26.0), (-14.0, 4.0)])
        .line(&[(-14.0, -20.0), (20.0, -20.0)])
        .rect(-5.0, -24.0, 13.0, -16.0)
        .line(&[(-14.0, -4.0), (20.0, -4.0)])
        .rect(-5.0, -8.0, 13.0, 0.0)
        .line(&[(3.0, 8.0), (3.0, 16.0)])
        .line(&[(-9.0, 16.0), (15.0, 16.0)])
        .line(&[(-7.0, 16.0), (-11.0, 23.0)])
        .line(&[(3.0, 16.0), (-1.0, 23.0)])
        .line(&[(13.0, 16.0), (9.0, 23.0)])
}

pub(crate) fn converter() -> Symbol {
    let direct = |symbol: Symbol, x: f64, y: f64| {
        symbol
            .line(&[(x - 5.0, y), (x + 5.0, y)])
            .line(&[(x - 5.0, y + 3.5), (x - 2.0, y + 3.5)])
            .line(&[(x + 2.0, y + 3.5), (x + 5.0, y + 3.5)])
    };
    let symbol = Symbol::sized(30.0, 20.0)
        .with_pin("in", -30.0, 0.0)
        .with_pin("out", 30.0, 0.0)
        .with_pin("-", 0.0, 20.0)
        .line(&[(-30.0, 0.0), (-18.0, 0.0)])
        .line(&[(18.0, 0.0), (30.0, 0.0)])
        .line(&[(0.0, 18.0), (0.0, 20.0)])
        .rect(-18.0, -18.0, 18.0, 18.0)
        .line(&[(-18.0, 18.0), (18.0, -18.0)]);
    let symbol = direct(symbol, -9.0, -10.0);
    direct(symbol, 9.0, 8.0)
}

fn through(symbol: Symbol, from: f64, to: f64) -> Symbol {
    symbol
        .with_pin("in", -30.0, 0.0)
        .with_pin("out", 30.0, 0.0)
        .line(&[(-30.0, 0.0), (from, 0.0)])
        .line(&[(to, 0.0), (30.0, 0.0)])
}

pub(crate) fn fuse(state: DeviceState) -> Symbol {
    match state {
        DeviceState::Intact => through(Symbol::sized(30.0, 8.0), 0.0, 0.0).rect(-16.0, -6.0, 16.0, 6.0),
        // Blown: the link in it is parted.
        DeviceState::Open => through(Symbol::sized(30.0, 8.0), -5.0, 5.0)
            .rect(-16.0, -6.0, 16.0, 6.0)
            .line(&[(-5.0, 0.0), (-2.0, -4.0)])
            .line(&[(5.0, 0.0), (2.0, 4.0)]),
        // Taken out: only the clips are left.
        DeviceState::Missing => through(Symbol::sized(30.0, 8.0), -14.0, 14.0)
            .line(&[(-14.0, -6.0), (-14.0, 6.0)])
            .line(&[(14.0, -6.0), (14.0, 6.0)]),
        DeviceState::Bridged => through(Symbol::sized(30.0, 12.0), 0.0, 0.0)
            .rect(-16.0, -6.0, 16.0, 6.0)
            .thick(&[(-22.0, 0.0), (-22.0, -10.0), (22.0, -10.0), (22.0, 0.0)]),
    }
}

pub(crate) fn breaker(state: DeviceState) -> Symbol {
    let symbol = Symbol::sized(30.0, 12.0);
    let cross = |symbol: Symbol| {
        symbol
            .line(&[(9.0, -4.0), (17.0, 4.0)])
            .line(&[(9.0, 4.0), (17.0, -4.0)])
    };
    match state {
        DeviceState::Intact => cross(through(symbol, -13.0, 13.0)).line(&[(-13.0, 0.0), (13.0, -3.0)]),
        DeviceState::Open => cross(through(symbol, -13.0, 13.0)).line(&[(-13.0, 0.0), (10.0, -11.0)]),
        DeviceState::Missing => through(symbol, -14.0, 14.0)
            .line(&[(-14.0, -6.0), (-14.0, 6.0)])
            .line(&[(14.0, -6.0), (14.0, 6.0)]),
        DeviceState::Bridged => cross(through(symbol, -13.0, 13.0))
            .line(&[(-13.0, 0.0), (13.0, -3.0)])
            .thick(&[(-22.0, 0.0), (-22.0, -10.0), (22.0, -10.0), (22.0, 0.0)]),
    }
}

pub(crate) fn block(block: &Block, words: &words::Words) -> Symbol {
    let inputs = usize::from(block.inputs.clamp(1, 4));
    let outputs = usize::from(block.outputs.clamp(1, 12));
    let reach = 10.0 * inputs.max(outputs) as f64;
    let mut symbol = Symbol::sized(30.0, reach).thick(&[(-14.0, -reach + 3.0), (-14.0, reach - 3.0)]);
    for n in 0..inputs {
        let y = row(n, inputs);
        let name = if n == 0 {
            "in".to_owned()
        } else {
            format!("in{}", n + 1)
        };
        symbol = symbol
            .with_pin(name, -30.0, y)
            .line(&[(-30.0, y), (-14.0, y)])
            .dot(-14.0, y, 3.0);
    }
    for n in 0..outputs {
        let y = row(n, outputs);
        symbol = symbol
            .with_pin(format!("out{}", n + 1), 30.0, y)
            .line(&[(-14.0, y), (30.0, y)])
            .dot(-14.0, y, 3.0);
        if let Some(rating) = block.fuses.0.get(n).copied().flatten() {
            symbol = symbol.rect(-5.0, y - 4.0, 19.0, y + 4.0).word(
                crate::numbers::amps(words, rating.0),
                7.0,
                y - 5.5,
                7.0,
            );
        }
    }
    symbol
}

pub(crate) fn bus(places: u8) -> Symbol {
    let right = usize::from(places.clamp(2, 24)) - 1;
    let reach = 10.0 * right as f64;
    let mut symbol = Symbol::sized(20.0, reach)
        .thick(&[(0.0, -reach + 2.0), (0.0, reach - 2.0)])
        .with_pin("1", -20.0, 0.0)
        .line(&[(-20.0, 0.0), (0.0, 0.0)])
        .dot(0.0, 0.0, 3.0);
    for n in 0..right {
        let y = row(n, right);
        symbol = symbol
            .with_pin((n + 2).to_string(), 20.0, y)
            .line(&[(0.0, y), (20.0, y)])
            .dot(0.0, y, 3.0);
    }
    symbol
}

pub(crate) fn splice(places: u8) -> Symbol {
    let right = usize::from(places.clamp(2, 8)) - 1;
    let mut symbol = Symbol::sized(20.0, 10.0 * right as f64)
        .with_pin("1", -20.0, 0.0)
        .line(&[(-20.0, 0.0), (0.0, 0.0)])
        .dot(0.0, 0.0, 3.6);
    for n in 0..right {
        let y = row(n, right);
        symbol = symbol
            .with_pin((n + 2).to_string(), 20.0, y)
            .line(&[(0.0, 0.0), (6.0, y), (20.0, y)]);
    }
    symbol
}

pub(crate) fn plug(cavities: &Cavities, loops: &Loops, mated: bool) -> Symbol {
    let positions: Vec<String> = cavities
        .0
        .iter()
        .take(60)
        .map(|cavity| cavity.position.to_string())
        .collect();
    let count = positions.len();
    let mut symbol = Symbol::sized(30.0, 10.0 * count.max(1) as f64);
    let apart = if mated { 0.0 } else { 8.0 };
    for (n, position) in positions.iter().enumerate() {
        let y = row(n, count);
        symbol = symbol
            .with_pin(format!("{position}a"), -30.0, y)
            .with_pin(format!("{position}b"), 30.0, y)
            .line(&[(-30.0, y), (-8.0 - apart / 2.0, y)])
            // Socket: an open arc. Plug: a filled tongue.
            .curve(
                (3.0 - apart / 2.0, y - 5.0),
                [(-12.0 - apart / 2.0, y - 6.0), (-12.0 - apart / 2.0, y + 6.0)],
                (3.0 - apart / 2.0, y + 5.0),
            )
            .filled(&[
                (-5.0 + apart, y - 2.2),
                (9.0 + apart, y - 2.2),
                (9.0 + apart, y + 2.2),
                (-5.0 + apart, y + 2.2),
            ])
            .line(&[(9.0 + apart, y), (30.0, y)]);
    }
    for (one, other) in crate::symbols::supply::loop_rows(&positions, loops) {
        let (y0, y1) = (row(one, count), row(other, count));
        symbol = symbol
            .dashed(&[(-20.0, y0), (-16.0, y0 + 3.0), (-16.0, y1 - 3.0), (-20.0, y1)])
            .dot(-20.0, y0, 2.0)
            .dot(-20.0, y1, 2.0);
    }
    symbol
}

/// Rows of the cavities that a plug's loops join, upper row first.
fn loop_rows(positions: &[String], loops: &Loops) -> Vec<(usize, usize)> {
    let find = |name: &str| positions.iter().position(|position| position == name);
    loops
        .0
        .iter()
        .filter_map(|(one, other)| Some((find(one.as_str())?, find(other.as_str())?)))
        .map(|(one, other)| (one.min(other), one.max(other)))
        .collect()
}

pub(crate) fn ground() -> Symbol {
    // Connection to the frame.
    Symbol::sized(16.0, 10.0)
        .with_pin("stud", 0.0, -10.0)
        .line(&[(0.0, -10.0), (0.0, 1.0)])
        .line(&[(-13.0, 1.0), (13.0, 1.0)])
        .line(&[(-11.0, 1.0), (-15.0, 9.0)])
        .line(&[(0.0, 1.0), (-4.0, 9.0)])
        .line(&[(11.0, 1.0), (7.0, 9.0)])
}

pub(crate) fn relay() -> Symbol {
    Symbol::sized(30.0, 20.0)
        .with_pin("30", -30.0, -10.0)
        .with_pin("86", -30.0, 10.0)
        .with_pin("87", 30.0, -10.0)
        .with_pin("87a", 30.0, 10.0)
        .with_pin("85", 0.0, 20.0)
        .line(&[(-30.0, -10.0), (-8.0, -10.0)])
        .line(&[(30.0, -10.0), (16.0, -10.0)])
        .line(&[(30.0, 10.0), (16.0, 10.0), (16.0, 1.0)])
        // Not energised: the blade lies on 87a.
        .line(&[(-8.0, -10.0), (17.0, 0.0)])
        .dot(-8.0, -10.0, 1.8)
        .dot(16.0, -10.0, 1.8)
        .rect(-24.0, 4.0, -8.0, 16.0)
        .line(&[(-30.0, 10.0), (-24.0, 10.0)])
        .line(&[(-8.0, 10.0), (0.0, 10.0), (0.0, 20.0)])
        .dashed(&[(-16.0, 4.0), (0.0, 4.0), (0.0, -6.0)])
}

pub(crate) fn switch(closed: bool) -> Symbol {
    let end = if closed { (14.0, 0.0) } else { (11.0, -11.0) };
    through(Symbol::sized(30.0, 12.0), -13.0, 13.0)
        .line(&[(-13.0, 0.0), end])
        .dot(-13.0, 0.0, 1.8)
        .dot(13.0, 0.0, 1.8)
}

pub(crate) fn isolator(isolator: &Isolator) -> Symbol {
    let symbol = Symbol::sized(30.0, 20.0)
        .with_pin("main", -30.0, 0.0)
        .with_pin("aux", 30.0, 0.0)
        .with_pin("-", 0.0, 20.0);
    match isolator.kind {
        IsolatorKind::Diode => symbol
            .line(&[(-30.0, 0.0), (30.0, 0.0)])
            .filled(&[(-8.0, -8.0), (8.0, 0.0), (-8.0, 8.0)])
            .line(&[(8.0, -8.0), (8.0, 8.0)])
            .line(&[(0.0, 14.0), (0.0, 20.0)])
            .line(&[(-5.0, 14.0), (5.0, 14.0)]),
        IsolatorKind::Manual => {
            let end = if isolator.closed {
                (14.0, 0.0)
            } else {
                (11.0, -11.0)
            };
            symbol
                .line(&[(-30.0, 0.0), (-13.0, 0.0)])
                .line(&[(13.0, 0.0), (30.0, 0.0)])
                .line(&[(-13.0, 0.0), end])
                .dot(-13.0, 0.0, 1.8)
                .dot(13.0, 0.0, 1.8)
                .line(&[(-4.0, -14.0), (4.0, -14.0)])
                .dashed(&[(0.0, -14.0), (0.0, -5.0)])
                .line(&[(0.0, 14.0), (0.0, 20.0)])
                .line(&[(-5.0, 14.0), (5.0, 14.0)])
        }
        IsolatorKind::Sensing | IsolatorKind::Ignition => symbol
            .line(&[(-30.0, 0.0), (-13.0, 0.0)])
            .line(&[(13.0, 0.0), (30.0, 0.0)])
            .line(&[(-13.0, 0.0), (11.0, -11.0)])
            .dot(-13.0, 0.0, 1.8)
            .dot(13.0, 0.0, 1.8)
            .rect(-9.0, 6.0, 9.0, 15.0)
            .dashed(&[(0.0, 6.0), (0.0, -6.0)])
            .line(&[(0.0, 15.0), (0.0, 20.0)])
            .line(&[(-22.0, 0.0), (-22.0, 10.5), (-9.0, 10.5)]),
    }
}

pub(crate) fn capacitor() -> Symbol {
    Symbol::sized(30.0, 14.0)
        .with_pin("+", -30.0, 0.0)
        .with_pin("-", 20.0, 0.0)
        .line(&[(-30.0, 0.0), (-3.0, 0.0)])
        .line(&[(-3.0, -12.0), (-3.0, 12.0)])
        .line(&[(3.0, -12.0), (3.0, 12.0)])
        .line(&[(3.0, 0.0), (20.0, 0.0)])
        .line(&[(-13.0, -9.0), (-7.0, -9.0)])
        .line(&[(-10.0, -12.0), (-10.0, -6.0)])
}

pub(crate) fn load(law: LoadLaw) -> Symbol {
    let symbol = Symbol::sized(30.0, 10.0)
        .with_pin("+", -30.0, 0.0)
        .with_pin("-", 20.0, 0.0)
        .line(&[(-30.0, 0.0), (-15.0, 0.0)])
        .rect(-15.0, -8.0, 15.0, 8.0)
        .line(&[(15.0, 0.0), (20.0, 0.0)]);
    match law {
        LoadLaw::Current => symbol.word("I", 0.0, 4.0, 11.0),
        LoadLaw::Power => symbol.word("P", 0.0, 4.0, 11.0),
        LoadLaw::Resistance => symbol,
    }
}
