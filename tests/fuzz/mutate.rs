//! Makes bad input out of good: bytes, words, lines and numbers changed, moved, doubled and cut, several times over.

/// Inputs longer than this many bytes only cost time.
const LONGEST: usize = 40_000;
/// Numbers at the edges of what types hold, and things that are no number.
const NUMBERS: &[&str] = &[
    "0",
    "-0",
    "1",
    "-1",
    "1e308",
    "-1e308",
    "1e-320",
    "1e999",
    "NaN",
    "inf",
    "0.1",
    "255",
    "256",
    "65536",
    "4294967295",
    "4294967296",
    "9007199254740993",
    "18446744073709551615",
    "18446744073709551616",
    "1e",
    "--1",
    "1.2.3",
];
/// Characters that end words, hide, or take several bytes.
const ODD: &[&str] = &[
    "\0", "\n", "\r\n", "\t", "\"", "\\", "{", "}", "[", "]", ":", ",", "#", "@", "=", ".", "Ω", "µ", "²",
    "e\u{301}", "\u{202e}", "😀", "\u{feff}",
];

/// A source of inputs, the same for the same seed.
pub(crate) struct Mutator {
    state: u64,
    pool: Vec<Vec<u8>>,
    seeds: usize,
    words: Vec<Vec<u8>>,
}

impl Mutator {
    /// `words` are those of the language; they reach deeper than random bytes.
    pub(crate) fn new(seed: u64, seeds: Vec<Vec<u8>>, words: &[&str]) -> Self {
        assert!(!seeds.is_empty(), "mutation begins with something good");
        let words = words
            .iter()
            .chain(NUMBERS)
            .chain(ODD)
            .map(|word| word.as_bytes().to_vec())
            .collect();
        Self {
            state: seed,
            seeds: seeds.len(),
            pool: seeds,
            words,
        }
    }

    /// Readable inputs become a ground for further changes: so changes pile up.
    pub(crate) fn keep(&mut self, input: Vec<u8>) {
        const POOL: usize = 200;
        if self.pool.len() < self.seeds + POOL {
            self.pool.push(input);
        } else {
            let place = self.seeds + self.below(POOL);
            self.pool[place] = input;
        }
    }

    /// The next input.
    pub(crate) fn next(&mut self) -> Vec<u8> {
        let place = self.below(self.pool.len());
        let mut bytes = self.pool[place].clone();
        for _ in 0..=self.below(4) {
            self.change(&mut bytes);
        }
        bytes.truncate(LONGEST);
        bytes
    }

    fn change(&mut self, bytes: &mut Vec<u8>) {
        let (from, to) = self.piece(bytes);
        match self.below(10) {
            // One byte, one bit.
            0 => {
                if let Some(byte) = bytes.get_mut(from) {
                    *byte ^= 1 << (self.state >> 61);
                }
            }
            // A word in place of a word.
            1 | 2 => {
                let (from, to) = word_around(bytes, from);
                let word = self.word();
                bytes.splice(from..to, word);
            }
            // A word more.
            3 => {
                let word = self.word();
                bytes.splice(from..from, word);
            }
            // A piece less.
            4 => drop(bytes.drain(from..to)),
            // A piece twice.
            5 => {
                let piece = bytes[from..to].to_vec();
                bytes.splice(from..from, piece);
            }
            // The end is missing, as after a full disk.
            6 => bytes.truncate(from),
            // A line less, twice, or elsewhere.
            7 | 8 => {
                let mut lines: Vec<Vec<u8>> =
                    bytes.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
                let line = lines.remove(self.below(lines.len()));
                for _ in 0..self.below(3) {
                    lines.insert(self.below(lines.len() + 1), line.clone());
                }
                *bytes = lines.join(&b'\n');
            }
            // A piece of another input.
            _ => {
                let other = self.below(self.pool.len());
                let other = self.pool[other].clone();
                let (begin, end) = self.piece(&other);
                bytes.splice(from..to, other[begin..end].iter().copied());
            }
        }
    }

    /// A word of the language.
    fn word(&mut self) -> Vec<u8> {
        let place = self.below(self.words.len());
        self.words[place].clone()
    }

    /// Bounds of a piece, mostly short.
    fn piece(&mut self, bytes: &[u8]) -> (usize, usize) {
        let from = self.below(bytes.len() + 1);
        let longest = if self.below(8) == 0 { 400 } else { 12 };
        (from, (from + 1 + self.below(longest)).min(bytes.len()).max(from))
    }

    /// A number from 0 up to, without, `limit`.
    fn below(&mut self, limit: usize) -> usize {
        // SplitMix64 (Steele, Lea and Flood, 2014): small, and good enough to choose places.
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        usize::try_from(z % limit.max(1) as u64).unwrap_or_default()
    }
}

/// Bounds of the word or number that a place is in.
fn word_around(bytes: &[u8], place: usize) -> (usize, usize) {
    let inside =
        |byte: &u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_') || !byte.is_ascii();
    let place = place.min(bytes.len());
    let before = bytes[..place]
        .iter()
        .rev()
        .take_while(|byte| inside(byte))
        .count();
    let after = bytes[place..].iter().take_while(|byte| inside(byte)).count();
    (place - before, place + after)
}
