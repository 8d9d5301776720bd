//! Numbers and lists in the words of findings.

/// A number as people say it: `0.45`, `3.2`, `21`, `1400`. Never more digits than matter.
pub(crate) fn number(value: f64) -> String {
    let decimals = match value.abs() {
        v if v >= 10.0 => 0,
        v if v >= 1.0 => 1,
        v if v >= 0.1 => 2,
        v if v >= 0.01 => 3,
        _ => 4,
    };
    trimmed(value, decimals)
}

fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// A number and what it is held against, with as many decimals as it takes to tell them apart.
pub(crate) fn against(value: f64, limit: f64) -> (String, String) {
    let (short, limit_short) = (number(value), number(limit));
    if short != limit_short || value == limit {
        return (short, limit_short);
    }
    for decimals in 1..=6 {
        let (a, b) = (trimmed(value, decimals), trimmed(limit, decimals));
        if a != b {
            return (a, b);
        }
    }
    (short, limit_short)
}

/// `W1`, `W1 and W2`, `W1, W2 and W3`; beyond six the rest is counted.
pub(crate) fn listed(all: &[String]) -> String {
    match all {
        [] => "nothing".to_owned(),
        [one] => one.clone(),
        [before @ .., last] if all.len() <= 6 => format!("{} and {last}", before.join(", ")),
        more => format!(
            "{} and {} more",
            more.get(..5).unwrap_or_default().join(", "),
            more.len() - 5
        ),
    }
}

/// `is` for one, `are` for several.
pub(crate) fn are(count: usize) -> &'static str {
    if count == 1 { "is" } else { "are" }
}

/// An `s` for a verb of one: `W1 carries`, `W1 and W2 carry` needs more; for `needs`, `lies`, `lets`.
pub(crate) fn s(count: usize) -> &'static str {
    if count == 1 { "s" } else { "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_read_as_people_say_them() {
        assert_eq!(
            [0.45, 3.21, 21.4, 1400.2, 0.5, 3.0, 0.0023, -0.0].map(number),
            ["0.45", "3.2", "21", "1400", "0.5", "3", "0.0023", "0"]
        );
    }

    #[test]
    fn a_number_just_beyond_its_limit_does_not_read_like_the_limit() {
        assert_eq!(against(60.2, 60.0), ("60.2".to_owned(), "60".to_owned()));
        assert_eq!(against(0.4501, 0.45), ("0.4501".to_owned(), "0.45".to_owned()));
        assert_eq!(against(80.0, 60.0), ("80".to_owned(), "60".to_owned()));
    }

    #[test]
    fn lists_end_with_and() {
        let tags = |n: usize| (1..=n).map(|i| format!("W{i}")).collect::<Vec<_>>();
        assert_eq!(listed(&tags(1)), "W1");
        assert_eq!(listed(&tags(3)), "W1, W2 and W3");
        assert_eq!(listed(&tags(8)), "W1, W2, W3, W4, W5 and 3 more");
    }
}
