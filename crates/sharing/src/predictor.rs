//! Predicts the next bit of a text from all bits before it: several views of what came before give each a probability,
//! which a small mixer weighs by how well each did lately. Whole numbers only, so that every machine predicts the same.

use crate::line::{LineView, hash};

/// Views of the past.
const VIEWS: usize = 13;
/// What the mixer weighs: two figures a view, the match, and one that is constant.
const INPUTS: usize = 2 * VIEWS + 2;
/// Entries of the table of probabilities, as a power of two.
const TABLE_BITS: u32 = 20;
/// Bytes that must agree before a longer match is looked for.
const LEAST_MATCH: usize = 6;
/// Sets of weights: by place in the line and kind of byte; by length of the match; by the bits of the byte so far.
const SETS: [usize; 3] = [96, 48, 256];
/// What every weight starts at, in 65536ths.
const FIRST_WEIGHT: i32 = (1 << 16) / 9;
/// How fast weights follow their misses.
const RATE: i32 = 32;
/// Times seen after which a probability follows no slower.
const SLOWEST: u32 = 30;
/// The key of a match has this many bits.
const MATCH_BITS: u32 = 16;

/// ln(p / (1 - p)) and back, p in 4096ths, the logarithm in 256ths.
struct Curves {
    stretched: Vec<i16>,
}

/// p = 1 / (1 + e^-x), x in 256ths, in 4096ths.
fn squash(x: i32) -> i32 {
    /// The curve at x/128 = -16, -15, ... 16.
    const AT: [i32; 33] = [
        1, 2, 3, 6, 10, 16, 27, 45, 73, 120, 194, 310, 488, 747, 1101, 1546, 2047, 2549, 2994, 3348, 3607,
        3785, 3901, 3975, 4022, 4050, 4068, 4079, 4085, 4089, 4092, 4093, 4094,
    ];
    let x = x.clamp(-2047, 2047);
    let part = x & 127;
    let at = ((x >> 7) + 16) as usize;
    (AT[at] * (128 - part) + AT[at + 1] * part + 64) >> 7
}

impl Curves {
    fn new() -> Self {
        let mut stretched = vec![2047; 4096];
        let mut from = 0;
        for x in -2047..=2047 {
            let to = squash(x);
            for p in from..=to {
                stretched[p as usize] = x as i16;
            }
            from = from.max(to + 1);
        }
        Self { stretched }
    }

    fn stretch(&self, p: u32) -> i32 {
        i32::from(self.stretched[p as usize & 4095])
    }
}

/// What is predicted, and everything learnt so far.
pub(crate) struct Predictor {
    curves: Curves,
    line: LineView,
    /// Probability (22 bits) and times seen (10 bits), by view and bits so far.
    table: Vec<u32>,
    /// The views of the present byte, and the table entries of the present bit.
    views: [u32; VIEWS],
    entries: [usize; VIEWS],
    inputs: [i32; INPUTS],
    weights: [Vec<i32>; 3],
    sets: [usize; 3],
    /// What each set of weights says, and the verdict, in 4096ths.
    said: [i32; 3],
    verdict: i32,
    /// The bits of the byte so far, behind a one.
    bits: u32,
    text: Vec<u8>,
    /// Where the text was when the last bytes were the same, and by how many they agreed.
    matched: usize,
    agreed: usize,
    matches: Vec<u32>,
    /// Probability that a match of a length holds, and the entry of the present bit.
    trust: Vec<u32>,
    trusted: Option<(usize, u32)>,
}

impl Predictor {
    pub(crate) fn new() -> Self {
        let mut new = Self {
            curves: Curves::new(),
            line: LineView::new(),
            table: vec![1 << 31; 1 << TABLE_BITS],
            views: [0; VIEWS],
            entries: [0; VIEWS],
            inputs: [0; INPUTS],
            weights: SETS.map(|sets| vec![FIRST_WEIGHT; sets * INPUTS]),
            sets: [0; 3],
            said: [2048; 3],
            verdict: 2048,
            bits: 1,
            text: Vec::new(),
            matched: 0,
            agreed: 0,
            matches: vec![0; 1 << MATCH_BITS],
            trust: vec![3 << 30; 64],
            trusted: None,
        };
        new.look();
        new.predict();
        new
    }

    /// The probability of a one, in 4096ths, never 0 nor 4096.
    pub(crate) fn one(&self) -> u32 {
        self.verdict as u32
    }

    /// Learns what the bit was.
    pub(crate) fn learn(&mut self, bit: u32) {
        let target = (bit as i32) << 12;
        for (which, weights) in self.weights.iter_mut().enumerate() {
            let miss = (target - self.said[which]) * RATE;
            let from = self.sets[which] * INPUTS;
            for (weight, input) in weights[from..from + INPUTS].iter_mut().zip(&self.inputs) {
                *weight += (input * miss + 0x8000) >> 16;
            }
        }
        for entry in self.entries {
            let entry = &mut self.table[entry];
            let (p, times) = (i64::from(*entry >> 10), i64::from(*entry & 1023));
            let to = if bit == 1 { (1 << 22) - 1 } else { 0 };
            let p = p + (to - p) * 2 / (2 * times + 3);
            *entry = (p as u32) << 10 | (times as u32 + 1).min(SLOWEST);
        }
        if let Some((entry, expected)) = self.trusted {
            let trust = &mut self.trust[entry];
            if bit == expected {
                *trust += (u32::MAX - *trust) >> 6;
            } else {
                *trust -= *trust >> 6;
                self.agreed = 0;
            }
        }
        self.bits = self.bits << 1 | bit;
        if self.bits >= 256 {
            let byte = (self.bits & 255) as u8;
            self.text.push(byte);
            self.line.push(byte);
            self.bits = 1;
            self.follow();
            self.look();
        }
        self.predict();
    }

    /// Carries the match on, or looks for one.
    fn follow(&mut self) {
        let length = self.text.len();
        if self.agreed > 0 {
            self.agreed += 1;
            self.matched += 1;
        }
        if length < LEAST_MATCH {
            return;
        }
        let key = self.line.bytes(LEAST_MATCH as u32);
        let key = (hash(key as u32, (key >> 32) as u32) >> (32 - MATCH_BITS)) as usize;
        if self.agreed == 0 {
            let at = self.matches[key] as usize;
            let same = self.text[..at]
                .iter()
                .rev()
                .zip(self.text.iter().rev())
                .take(32)
                .take_while(|(a, b)| a == b);
            let same = same.count();
            if at > 0 && same >= LEAST_MATCH {
                self.matched = at;
                self.agreed = same;
            }
        }
        self.matches[key] = length as u32;
    }

    /// The views of the byte to come.
    fn look(&mut self) {
        let line = &self.line;
        let class = class(line.back(1));
        let bytes = |count: u32| {
            let all = line.bytes(count);
            hash(hash(count, all as u32), (all >> 32) as u32)
        };
        let first = hash(line.first, line.place.min(12) as u32);
        let [next, same] = line.expected();
        let views = [
            bytes(1),
            bytes(2),
            bytes(3),
            bytes(4),
            bytes(6),
            hash(line.word, line.before[0]),
            hash(line.word, first),
            hash(hash(line.word, line.before[0]), line.before[1]),
            hash(line.letters, hash(line.before[0], u32::from(line.quoted))),
            hash(line.above(), hash(line.word, line.place as u32)),
            hash(hash(line.kind(), line.terminal), line.tag.min(1)),
            hash(
                hash(line.used(), line.terminal),
                hash(line.kind(), line.tag.min(1)),
            ),
            hash(hash(next, same), hash(line.first, line.place.min(4) as u32)),
        ];
        for (at, view) in views.into_iter().enumerate() {
            self.views[at] = hash(view, at as u32 + 1);
        }
        let kind = if line.quoted { 3 } else { class.min(2) as usize };
        self.sets[0] = (line.first as usize % 3 * 8 + line.place.min(7)) * 4 + kind;
    }

    fn predict(&mut self) {
        for (at, view) in self.views.iter().enumerate() {
            let entry = (hash(*view, self.bits) >> (32 - TABLE_BITS)) as usize;
            self.entries[at] = entry;
            let (p, times) = (self.table[entry] >> 20, self.table[entry] & 1023);
            let (a, b) = if times == 0 {
                (0, 0)
            } else {
                (self.curves.stretch(p), (p as i32 - 2048) * times as i32 / 24)
            };
            self.inputs[2 * at] = a;
            self.inputs[2 * at + 1] = b;
        }
        self.trusted = None;
        self.inputs[2 * VIEWS] = 0;
        let mut expects = 0;
        if self.agreed > 0 {
            let byte = u32::from(self.text[self.matched]) | 256;
            let seen = 31 - self.bits.leading_zeros();
            if byte >> (8 - seen) == self.bits {
                let bit = byte >> (7 - seen) & 1;
                let entry = self.agreed.min(31);
                let sure = self.curves.stretch(self.trust[entry] >> 20);
                self.inputs[2 * VIEWS] = if bit == 1 { sure } else { -sure };
                self.trusted = Some((entry, bit));
                expects = 1 + bit as usize;
            }
        }
        self.inputs[2 * VIEWS + 1] = 256;
        self.sets[1] = self.agreed.min(15) * 3 + expects;
        self.sets[2] = self.bits as usize & 255;
        let mut sum = 0;
        for (which, weights) in self.weights.iter().enumerate() {
            let from = self.sets[which] * INPUTS;
            let dot: i64 = weights[from..from + INPUTS]
                .iter()
                .zip(&self.inputs)
                .map(|(w, i)| i64::from(*w) * i64::from(*i))
                .sum();
            let x = (dot >> 16).clamp(-2047, 2047) as i32;
            self.said[which] = squash(x);
            sum += x;
        }
        self.verdict = squash(sum / 3).clamp(1, 4095);
    }
}

/// Kinds of bytes: letters 1, digits 2, everything else 0.
fn class(byte: u32) -> u32 {
    match byte as u8 {
        b'a'..=b'z' | b'A'..=b'Z' => 1,
        b'0'..=b'9' => 2,
        _ => 0,
    }
}
