//! Arithmetic coding: a text as one long fraction, each bit narrowing the span by its probability.

use crate::predictor::Predictor;

/// The dictionary of version 1: two jobs in the text form, made so that the words of the trade stand in it. It never
/// changes, because links of version 1 are read with it.
const DICTIONARY_1: &str = words::later!("../dictionaries/1.txt");

/// A predictor that has read the dictionary.
fn prepared() -> Predictor {
    let mut predictor = Predictor::new();
    for byte in words::later::arrived(DICTIONARY_1).bytes() {
        for bit in bits(byte) {
            predictor.learn(bit);
        }
    }
    predictor
}

/// The bits of a byte, the highest first.
fn bits(byte: u8) -> impl Iterator<Item = u32> {
    (0..8).rev().map(move |shift| u32::from(byte >> shift & 1))
}

/// Where a span is cut: below it a one lies, above it a zero.
fn cut(low: u32, high: u32, one: u32) -> u32 {
    // 2^32 · 4095 / 4096 stays below 2^64, and the quotient below the span.
    low + (u64::from(high - low) * u64::from(one) / 4096) as u32
}

/// `text` coded.
pub(crate) fn encode(text: &[u8]) -> Vec<u8> {
    let mut predictor = prepared();
    let (mut low, mut high) = (0u32, u32::MAX);
    let mut code = Vec::new();
    for byte in text {
        for bit in bits(*byte) {
            let middle = cut(low, high, predictor.one());
            if bit == 1 {
                high = middle;
            } else {
                low = middle + 1;
            }
            predictor.learn(bit);
            while (low ^ high) >> 24 == 0 {
                code.push((high >> 24) as u8);
                low <<= 8;
                high = high << 8 | 255;
            }
        }
    }
    // The shortest fraction between the two ends; behind the code only zeros are read.
    let last = (low >> 24) + u32::from(low & 0xFF_FFFF != 0);
    if last <= high >> 24 {
        code.push(last as u8);
    } else {
        code.extend(high.to_be_bytes());
    }
    while code.last() == Some(&0) {
        code.pop();
    }
    code
}

/// The text of `length` bytes that `code` stands for. Whatever the code, as many bytes come out; whether they are the
/// right ones the checksum tells.
pub(crate) fn decode(code: &[u8], length: usize) -> Vec<u8> {
    let mut predictor = prepared();
    let mut code = code.iter().copied().chain(std::iter::repeat(0));
    let mut next = move || u32::from(code.next().unwrap_or(0));
    let (mut low, mut high) = (0u32, u32::MAX);
    let mut at = (0..4).fold(0, |at, _| at << 8 | next());
    let mut text = Vec::with_capacity(length);
    for _ in 0..length {
        let mut byte = 0;
        for _ in 0..8 {
            let middle = cut(low, high, predictor.one());
            let bit = u32::from(at <= middle);
            if bit == 1 {
                high = middle;
            } else {
                low = middle + 1;
            }
            byte = byte << 1 | bit as u8;
            predictor.learn(bit);
            while (low ^ high) >> 24 == 0 {
                low <<= 8;
                high = high << 8 | 255;
                at = at << 8 | next();
            }
        }
        text.push(byte);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        /// Whatever the bytes: coded and decoded they are the same again.
        #[test]
        fn any_bytes_come_back(text in proptest::collection::vec(any::<u8>(), 0..600)) {
            prop_assert_eq!(decode(&encode(&text), text.len()), text);
        }
    }

    #[test]
    fn long_runs_of_the_same_byte_come_back() {
        for byte in [0, b'\n', b'"', b'9', b'.', 255] {
            let text = vec![byte; 20_000];
            assert_eq!(decode(&encode(&text), text.len()), text, "{byte}");
        }
    }
}
