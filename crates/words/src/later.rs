//! Texts that the page fetches after its first picture.
//!
//! On the page such a text is not there from the start: it comes with the second half of the module, as does what reads it. So
//! that this cannot go wrong, a text that follows stands between two marks ([`later!`](crate::later!)), and whoever reads it
//! lets [`arrived`] take them off: `cargo xtask` moves what it finds between marks, and only when [`arrived`] moves too.

use std::hint::black_box;

/// What a text that follows begins with.
pub const BEGIN: &str = "\u{2}later\u{2}";
/// What it ends with.
pub const END: &str = "\u{3}later\u{3}";

/// The text of a file, as `include_str!` has it, that the page fetches after its first picture. It is read through
/// [`arrived`](crate::later::arrived).
#[macro_export]
macro_rules! later {
    ($file:expr) => {
        concat!("\u{2}later\u{2}", include_str!($file), "\u{3}later\u{3}")
    };
}

/// A text that follows, without its marks. On the page this function is among what is fetched, so that to call it is to have
/// the text.
#[must_use]
#[inline(never)]
pub fn arrived(text: &'static str) -> &'static str {
    // The compiler must not read the text where this is called.
    let text = black_box(text);
    text.strip_prefix(BEGIN)
        .and_then(|text| text.strip_suffix(END))
        .unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_that_follows_reads_as_its_file_does() {
        assert_eq!(
            arrived(later!("../texts/en/common.ftl")),
            include_str!("../texts/en/common.ftl")
        );
        assert_eq!(later!("../texts/en/common.ftl").find(BEGIN), Some(0));
        assert!(later!("../texts/en/common.ftl").ends_with(END));
    }
}
