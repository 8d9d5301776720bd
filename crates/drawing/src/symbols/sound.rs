//! Symbols of the sound side.

use super::Symbol;

pub(crate) fn amplifier() -> Symbol {
    Symbol::sized(22.0, 24.0).shape(&[(-16.0, -20.0), (20.0, 0.0), (-16.0, 20.0)])
}

pub(crate) fn head_unit() -> Symbol {
    // A receiver: its cabinet with an aerial.
    Symbol::sized(24.0, 26.0)
        .rect(-18.0, -6.0, 18.0, 18.0)
        .circle(9.0, 6.0, 6.0)
        .line(&[(9.0, 6.0), (13.0, 2.0)])
        .line(&[(-12.0, 2.0), (-2.0, 2.0)])
        .line(&[(-12.0, 6.0), (-2.0, 6.0)])
        .line(&[(-12.0, 10.0), (-2.0, 10.0)])
        .line(&[(-10.0, -6.0), (-10.0, -22.0)])
        .line(&[(-16.0, -22.0), (-10.0, -14.0), (-4.0, -22.0)])
}

fn wave(symbol: Symbol, y: f64) -> Symbol {
    symbol
        .curve((-11.0, y), [(-8.0, y - 6.0), (-3.0, y - 6.0)], (0.0, y))
        .curve((0.0, y), [(3.0, y + 6.0), (8.0, y + 6.0)], (11.0, y))
}

pub(crate) fn processor() -> Symbol {
    // A filter: waves in a box, one struck out.
    let symbol = Symbol::sized(24.0, 24.0).rect(-20.0, -20.0, 20.0, 20.0);
    let symbol = wave(wave(wave(symbol, -10.0), 0.0), 10.0);
    symbol.line(&[(-3.0, -5.0), (3.0, -15.0)])
}

pub(crate) fn line_converter() -> Symbol {
    // A transformer: two linked windings.
    Symbol::sized(24.0, 18.0)
        .circle(-6.0, 0.0, 11.0)
        .circle(6.0, 0.0, 11.0)
}

pub(crate) fn speaker(coils: u8) -> Symbol {
    if coils <= 1 {
        return Symbol::sized(20.0, 20.0)
            .with_pin("+", -20.0, -10.0)
            .with_pin("-", -20.0, 10.0)
            .line(&[(-20.0, -10.0), (-9.0, -10.0)])
            .line(&[(-20.0, 10.0), (-9.0, 10.0)])
            .rect(-9.0, -12.0, 1.0, 12.0)
            .shape(&[(1.0, -9.0), (14.0, -20.0), (14.0, 20.0), (1.0, 9.0)]);
    }
    let mut symbol = Symbol::sized(20.0, 40.0)
        .rect(-9.0, -34.0, 1.0, -6.0)
        .rect(-9.0, 6.0, 1.0, 34.0)
        .line(&[(-9.0, -6.0), (-9.0, 6.0)])
        .shape(&[(1.0, -20.0), (15.0, -36.0), (15.0, 36.0), (1.0, 20.0)]);
    for (name, y) in [("a+", -30.0), ("a-", -10.0), ("b+", 10.0), ("b-", 30.0)] {
        symbol = symbol.with_pin(name, -20.0, y).line(&[(-20.0, y), (-9.0, y)]);
    }
    symbol
}

pub(crate) fn crossover() -> Symbol {
    // Two filters: the upper lets treble through, the lower bass.
    Symbol::sized(26.0, 40.0)
        .rect(-18.0, -36.0, 18.0, -2.0)
        .line(&[(-12.0, -8.0), (-2.0, -26.0), (12.0, -26.0)])
        .rect(-18.0, 2.0, 18.0, 36.0)
        .line(&[(-12.0, 12.0), (2.0, 12.0), (12.0, 30.0)])
}

pub(crate) fn inline_capacitor() -> Symbol {
    Symbol::sized(30.0, 14.0)
        .with_pin("1", -30.0, 0.0)
        .with_pin("2", 30.0, 0.0)
        .line(&[(-30.0, 0.0), (-3.0, 0.0)])
        .line(&[(-3.0, -12.0), (-3.0, 12.0)])
        .line(&[(3.0, -12.0), (3.0, 12.0)])
        .line(&[(3.0, 0.0), (30.0, 0.0)])
}
