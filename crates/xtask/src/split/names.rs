//! Names of functions, and the paths in them.

/// The name without what differs from build to build: the checksums behind the names of crates, as in
/// `circuit[1f0c2a9b8e7d6c5b]::study`, and the numbers that keep apart what has the same name.
pub(crate) fn written(name: &str) -> String {
    let name = without_hashes(name);
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|it| it.is_ascii_digit());
    let mut short = name.as_str();
    loop {
        let bracket = short
            .strip_suffix(']')
            .and_then(|text| text.rsplit_once('['))
            .filter(|(_, number)| is_number(number));
        let point = short.rsplit_once('.').filter(|(_, number)| is_number(number));
        match bracket.or(point) {
            Some((before, _)) => short = before,
            None => return short.to_owned(),
        }
    }
}

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

/// The compiler keeps one of the functions that came out alike, under the name of any of them, so that the name of a small one
/// says little. Up to so many bytes a list names none by what it lies below.
const SMALL: usize = 100;
/// The same by a type that it works on.
const SMALL_ON_TYPE: usize = 600;

/// The paths that a list can name a function by: those that it lies below, those of the types that its name tells, and, with `=`
/// before it, its name. Shorter ones come first.
pub(crate) fn paths(name: &str, bytes: usize) -> Vec<String> {
    let mut paths: Vec<&str> = Vec::new();
    if bytes > SMALL {
        let own = name.trim_start_matches(['<', '&']);
        paths.extend(ends(own).into_iter().map(|end| &own[..end]));
    }
    let is_of_path = |letter: char| letter.is_ascii_alphanumeric() || letter == '_' || letter == ':';
    // What begins with `::` continues something else.
    for path in name
        .split(|letter| !is_of_path(letter))
        .filter(|path| !path.starts_with("::") && bytes > SMALL_ON_TYPE)
    {
        let path = path.trim_end_matches(':');
        if path.contains("::") {
            let steps = path.match_indices("::").map(|it| it.0).chain([path.len()]);
            paths.extend(steps.map(|end| &path[..end]));
        }
    }
    paths.sort_unstable_by_key(|path| (path.len(), *path));
    paths.dedup();
    let mut paths: Vec<String> = paths.into_iter().map(str::to_owned).collect();
    if bytes > SMALL {
        paths.push(format!("={name}"));
    }
    paths
}

/// Where the steps of a path end: before every `::` that stands in no bracket, and at its end.
fn ends(own: &str) -> Vec<usize> {
    let (mut ends, mut depth) = (Vec::new(), 0_u32);
    let bytes = own.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        match bytes[at] {
            b'<' | b'(' | b'[' | b'{' => depth += 1,
            b'>' if at > 0 && bytes[at - 1] == b'-' => {}
            b'>' | b')' | b']' | b'}' => depth = depth.saturating_sub(1),
            b':' if depth == 0 && bytes.get(at + 1) == Some(&b':') => {
                ends.push(at);
                at += 1;
            }
            _ => {}
        }
        at += 1;
    }
    ends.push(own.len());
    ends
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_written_name_has_no_number_that_the_next_build_gives_otherwise() {
        for (name, expected) in [
            ("circuit[752660fa50bfe871]::meter::fault", "circuit::meter::fault"),
            (
                "<model::Run as Clone>::clone.3523",
                "<model::Run as Clone>::clone",
            ),
            (
                "<model::Run as PartialEq>::ne[1]",
                "<model::Run as PartialEq>::ne",
            ),
            ("<[u8; 4]>::len.12[3]", "<[u8; 4]>::len"),
            ("<[u8; 4]>", "<[u8; 4]>"),
        ] {
            assert_eq!(written(name), expected);
        }
    }

    #[test]
    fn paths_are_those_of_the_function_and_of_the_types_that_it_works_on() {
        assert_eq!(
            paths("<a::B<c::D> as e::F>::g", 601),
            [
                "a",
                "c",
                "e",
                "a::B",
                "c::D",
                "e::F",
                "a::B<c::D> as e",
                "a::B<c::D> as e::F>",
                "a::B<c::D> as e::F>::g",
                "=<a::B<c::D> as e::F>::g"
            ]
        );
        assert_eq!(paths("<a::B<c::D> as e::F>::g", 100), [""; 0]);
        let on_type = "c::D".to_owned();
        assert!(!paths("<a::B<c::D> as e::F>::g", 600).contains(&on_type));
        assert_eq!(
            paths("x::y::<fn(u8) -> a::B>", 101).last().map(String::as_str),
            Some("=x::y::<fn(u8) -> a::B>")
        );
    }
}
