//! The address that a shop's links start with.

use std::fmt;
use words::{Saying, say};

/// Longest address, in characters: a link has to stay readable by phones from a printed code.
const LONGEST: usize = 200;

/// Where the program is served from, as links name it: `https://wiring.example/board/`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Address(String);

/// Why something is no address for links.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AddressError {
    /// It does not start with `https://` or `http://` and the name of a host.
    NoHost,
    /// It has a character that an address cannot have, a space for one.
    Character(char),
    /// It has a `#`, behind which the job is to stand.
    Fragment,
    /// It is too long.
    Long,
}

impl AddressError {
    /// What it says to the reader.
    #[must_use]
    pub fn said(&self) -> Saying {
        match self {
            Self::NoHost => say!("address-no-host"),
            Self::Character(it) => say!("address-character", character = format!("{it:?}")),
            Self::Fragment => say!("address-fragment"),
            Self::Long => say!("address-long", most = LONGEST),
        }
    }
}

impl fmt::Display for AddressError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}

impl std::error::Error for AddressError {}

impl Address {
    /// The address in `text`.
    ///
    /// # Errors
    /// [`AddressError`] where links could not start with it.
    pub fn new(text: &str) -> Result<Self, AddressError> {
        let text = text.trim();
        if text.chars().count() > LONGEST {
            return Err(AddressError::Long);
        }
        let host = text
            .strip_prefix("https://")
            .or_else(|| text.strip_prefix("http://"));
        if host.is_none_or(|host| host.is_empty() || host.starts_with(['/', '?', '#', ':'])) {
            return Err(AddressError::NoHost);
        }
        if text.contains('#') {
            return Err(AddressError::Fragment);
        }
        // Characters of an address by RFC 3986; everything else is written with % there.
        let fits = |c: char| c.is_ascii_alphanumeric() || "-._~:/?[]@!$&'()*+,;=%".contains(c);
        match text.chars().find(|c| !fits(*c)) {
            Some(it) => Err(AddressError::Character(it)),
            None => Ok(Self(text.to_owned())),
        }
    }

    /// The link to a packed job.
    #[must_use]
    pub fn link(&self, fragment: &str) -> String {
        format!("{}#{fragment}", self.0)
    }

    /// The address as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}
