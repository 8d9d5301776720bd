//! Which functions go into the rest.

/// Paths of modules and functions, one a line.
const PATHS: &str = include_str!("rest.txt");

/// The optimiser keeps one of the functions that came out alike, under the name of any of them, so that the name of a small one
/// says little. Up to so many bytes one stays that lies in a module of the rest; it goes all the same where all who call it do.
const SMALL_OF_REST: usize = 100;
/// The same of one that lies elsewhere and works on a type of the rest.
const SMALL_ON_TYPE: usize = 400;

/// What texts that go into the rest are read through; `words::later` tells why it is one function, and what the marks are.
const READS_TEXTS: &str = "words::later::arrived";
/// What such a text begins and ends with.
pub(crate) const MARKS: [&str; 2] = ["\u{2}later\u{2}", "\u{3}later\u{3}"];

/// Whether this is the function that texts are read through.
pub(crate) fn reads_texts(name: &str) -> bool {
    without_hashes(name) == READS_TEXTS
}

/// Whether a function goes into the rest: `name` as the compiler wrote it, `size` in bytes.
pub(crate) fn moves(name: &str, size: usize) -> bool {
    let name = without_hashes(name);
    if name == READS_TEXTS {
        return true;
    }
    let own = name.trim_start_matches(['<', '&']);
    paths().any(|path| {
        let is_own = || {
            own.strip_prefix(path)
                .is_some_and(|after| !after.starts_with(is_of_word))
        };
        size > SMALL_OF_REST && is_own() || size > SMALL_ON_TYPE && holds(&name, path)
    })
}

fn paths() -> impl Iterator<Item = &'static str> {
    PATHS
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
}

/// Whether a path stands in a name, and not only the end or the beginning of a longer one.
fn holds(name: &str, path: &str) -> bool {
    name.match_indices(path).any(|(at, _)| {
        let before = name[..at].chars().next_back();
        let after = name[at + path.len()..].chars().next();
        !before.is_some_and(|it| is_of_word(it) || it == ':') && !after.is_some_and(is_of_word)
    })
}

fn is_of_word(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || letter == '_'
}

/// The name without the checksums that stand behind the names of crates, as in `circuit[1f0c2a9b8e7d6c5b]::study`.
fn without_hashes(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    let mut left = name;
    while let Some((before, from)) = left.split_once('[') {
        out.push_str(before);
        match from.split_once(']') {
            Some((hash, after)) if hash.len() > 9 && hash.chars().all(|it| it.is_ascii_hexdigit()) => {
                left = after
            }
            _ => {
                out.push('[');
                left = from;
            }
        }
    }
    out.push_str(left);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_marks_are_those_that_texts_have() {
        assert_eq!(MARKS, [words::later::BEGIN, words::later::END]);
    }

    #[test]
    fn what_lies_in_a_module_of_the_rest_goes_there_and_what_works_on_its_types_when_it_is_large() {
        let (own, on_type) = (SMALL_OF_REST + 1, SMALL_ON_TYPE + 1);
        let push = "<alloc[3ca501edff3f0c7c]::vec::Vec<assist[1abc75b48875f833]::sizing::Short>>::push";
        for (name, size, expected) in [
            ("assist[1abc75b48875f833]::sizing::size", own, true),
            ("assist[1abc75b48875f833]::sizing::size", own - 1, false),
            (
                "<assist[1abc75b48875f833]::sizing::Shape>::pairs::{closure#3}",
                own,
                true,
            ),
            (push, on_type - 1, false),
            (push, on_type, true),
            ("circuit[752660fa50bfe871]::meter::bench::fault", own, true),
            ("circuit[752660fa50bfe871]::metering::fault", on_type, false),
            ("other[752660fa50bfe871]::assist::fault", on_type, false),
            ("<[u8; 4usize]>::len", on_type, false),
        ] {
            assert_eq!(moves(name, size), expected, "{name}, {size} bytes");
        }
    }
}
