//! What the predictor knows of the line that is being read: its words so far, the line above, the tags met before.

/// Mixes two numbers into one.
pub(crate) const fn hash(a: u32, b: u32) -> u32 {
    let mixed = (a ^ b.rotate_left(15)).wrapping_mul(0x9E37_79B1);
    (mixed ^ (mixed >> 15)).wrapping_mul(0x85EB_CA6B) ^ (a >> 13)
}

/// Words of a line that are compared with those of the line above.
const WORDS: usize = 16;
/// Entries of the tables of tags; two tags that share one only predict worse.
const TAGS: usize = 1024;

/// Follows the text byte by byte. Every table has a fixed size, so that a hostile text costs no more than its length.
pub(crate) struct LineView {
    /// The last bytes, the newest in the lowest eight bits.
    pub(crate) last: u64,
    /// The word so far.
    pub(crate) word: u32,
    /// Letters since the last byte that is none.
    pub(crate) letters: u32,
    /// The words before it: the nearest first.
    pub(crate) before: [u32; 2],
    /// The first word of the line, and how many words stand before the present one.
    pub(crate) first: u32,
    pub(crate) place: usize,
    /// The present line's words and those of the line above.
    words: [u32; WORDS],
    above: [u32; WORDS],
    /// The tag before the point of an end, or 0; the part of the word since then.
    pub(crate) tag: u32,
    pub(crate) terminal: u32,
    /// By tag: the word of its kind, and the terminal last named.
    kinds: Vec<u32>,
    used: Vec<u32>,
    /// By letters before a number, in definitions and in ends: the number last seen.
    numbers: Vec<u32>,
    /// Letters of the present word before its number, the number so far and its digits.
    prefix: u32,
    number: u32,
    digits: u32,
    /// Whether the present word stands between quotes.
    pub(crate) quoted: bool,
}

impl LineView {
    pub(crate) fn new() -> Self {
        Self {
            last: 0,
            word: 0,
            letters: 0,
            before: [0; 2],
            first: 0,
            place: 0,
            words: [0; WORDS],
            above: [0; WORDS],
            tag: 0,
            terminal: 0,
            kinds: vec![0; TAGS],
            used: vec![0; TAGS],
            numbers: vec![0; TAGS],
            prefix: 0,
            number: 0,
            digits: 0,
            quoted: false,
        }
    }

    /// The `nth` byte from the end, from 1.
    pub(crate) const fn back(&self, nth: u32) -> u32 {
        (self.last >> (8 * (nth - 1))) as u32 & 255
    }

    /// The last `count` bytes as one number.
    pub(crate) const fn bytes(&self, count: u32) -> u64 {
        self.last & ((1 << (8 * count)) - 1)
    }

    /// The word of the line above at the same place.
    pub(crate) fn above(&self) -> u32 {
        self.above.get(self.place).copied().unwrap_or(0)
    }

    /// The kind of the part whose terminal is being named.
    pub(crate) fn kind(&self) -> u32 {
        self.kinds[self.tag as usize % TAGS]
    }

    /// The terminal last named of that part.
    pub(crate) fn used(&self) -> u32 {
        self.used[self.tag as usize % TAGS]
    }

    /// Where the numbers of the present word's letters are kept: tags are counted up where they are given, and named again
    /// in ends.
    fn counter(&self) -> usize {
        let role = if self.first == RUN && self.place > 1 { 2 } else { 1 };
        hash(self.prefix, role) as usize % TAGS
    }

    /// The digits that would come next if the tag were the one after the last of its letters, and if it were the last one.
    pub(crate) fn expected(&self) -> [u32; 2] {
        let last = self.numbers[self.counter()];
        [
            digit(last.wrapping_add(1), self.number, self.digits),
            digit(last, self.number, self.digits),
        ]
    }

    /// One more byte.
    pub(crate) fn push(&mut self, byte: u8) {
        self.last = self.last << 8 | u64::from(byte);
        if byte == b'"' {
            self.quoted = !self.quoted;
        }
        match byte {
            b'\n' => {
                self.close();
                self.above = self.words;
                self.words = [0; WORDS];
                self.before = [0; 2];
                self.first = 0;
                self.place = 0;
                self.quoted = false;
            }
            b' ' => {
                self.close();
                self.before = [self.word, self.before[0]];
                self.place += 1;
            }
            _ => {
                if byte == b'.' && self.tag == 0 && self.prefix != 0 && !self.quoted {
                    self.count();
                    self.tag = self.word | 1;
                    self.terminal = 0;
                } else if self.tag != 0 {
                    self.terminal = hash(self.terminal, u32::from(byte));
                }
                if self.digits == 0 && byte.is_ascii_alphabetic() {
                    self.prefix = hash(self.prefix, u32::from(byte));
                } else if byte.is_ascii_digit() {
                    self.number = self.number.wrapping_mul(10).wrapping_add(u32::from(byte - b'0'));
                    self.digits += 1;
                }
                self.word = hash(self.word, u32::from(byte));
                self.letters = if byte.is_ascii_alphabetic() {
                    hash(self.letters, u32::from(byte))
                } else {
                    0
                };
                return;
            }
        }
        self.word = 0;
        self.letters = 0;
        self.tag = 0;
        self.terminal = 0;
        self.prefix = 0;
        self.number = 0;
        self.digits = 0;
    }

    /// Notes the number of a tag.
    fn count(&mut self) {
        if self.digits > 0 {
            let counter = self.counter();
            self.numbers[counter] = self.number;
        }
    }

    /// The word is whole.
    fn close(&mut self) {
        if self.place == 0 {
            self.first = self.word;
        } else if self.place == 1 && !self.quoted {
            self.count();
            if self.first != RUN {
                self.kinds[(self.word | 1) as usize % TAGS] = self.first;
            }
        }
        if self.tag != 0 {
            self.used[self.tag as usize % TAGS] = self.terminal;
        }
        if let Some(kept) = self.words.get_mut(self.place) {
            *kept = self.word;
        }
    }
}

/// The word that a line of a run begins with.
const RUN: u32 = hash(hash(hash(0, b'r' as u32), b'u' as u32), b'n' as u32);

/// The digit of `whole` after `digits` digits that read `so_far`, as its byte; 0 where it is something else, 1 at its end.
fn digit(whole: u32, so_far: u32, digits: u32) -> u32 {
    let mut length = 1;
    let mut rest = whole;
    while rest >= 10 {
        rest /= 10;
        length += 1;
    }
    if digits > length {
        return 0;
    }
    let left = |of: u32| u64::from(whole) / 10u64.pow(of);
    if left(length - digits) != u64::from(so_far) {
        0
    } else if digits == length {
        1
    } else {
        u32::from(b'0') + (left(length - digits - 1) % 10) as u32
    }
}
