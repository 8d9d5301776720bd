//! Names of keys as one says them, to the code points that WebDriver gives them.
//!
//! Source: W3C WebDriver, keyboard actions, the table of normalised key values.

/// `ctrl+shift+z` -> the code points to hold down in that order. A single character stands for itself.
pub(super) fn chord(text: &str) -> Result<Vec<char>, String> {
    // A plus on its own, or as the last key of a chord, is the key with that sign.
    let (front, last) = match text.strip_suffix('+') {
        Some(front) => (front.strip_suffix('+').unwrap_or(front), "+"),
        None => text.rsplit_once('+').unwrap_or(("", text)),
    };
    front
        .split('+')
        .filter(|name| !name.is_empty())
        .chain([last])
        .map(key)
        .collect()
}

fn key(name: &str) -> Result<char, String> {
    let mut characters = name.chars();
    if let (Some(only), None) = (characters.next(), characters.next()) {
        return Ok(only);
    }
    Ok(match name.to_ascii_lowercase().as_str() {
        "backspace" => '\u{E003}',
        "tab" => '\u{E004}',
        "enter" => '\u{E007}',
        "shift" => '\u{E008}',
        "ctrl" | "control" => '\u{E009}',
        "alt" => '\u{E00A}',
        "escape" => '\u{E00C}',
        "space" => ' ',
        "pageup" => '\u{E00E}',
        "pagedown" => '\u{E00F}',
        "end" => '\u{E010}',
        "home" => '\u{E011}',
        "left" => '\u{E012}',
        "up" => '\u{E013}',
        "right" => '\u{E014}',
        "down" => '\u{E015}',
        "insert" => '\u{E016}',
        "delete" => '\u{E017}',
        "f1" => '\u{E031}',
        "f2" => '\u{E032}',
        "f3" => '\u{E033}',
        "f4" => '\u{E034}',
        "f5" => '\u{E035}',
        "f6" => '\u{E036}',
        "f10" => '\u{E03A}',
        "meta" => '\u{E03D}',
        _ => return Err(format!("no key is called `{name}`")),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chords_are_read_as_one_says_them() {
        assert_eq!(chord("z"), Ok(vec!['z']));
        assert_eq!(chord("ctrl+shift+Z"), Ok(vec!['\u{E009}', '\u{E008}', 'Z']));
        assert_eq!(chord("+"), Ok(vec!['+']));
        assert_eq!(chord("ctrl++"), Ok(vec!['\u{E009}', '+']));
        assert!(chord("ctrl+nothing").is_err());
    }
}
