//! The link's fragment: version, length, checksum and code, in letters that an address may hold.

use crate::coder::{decode, encode};
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use model::Job;
use model::text::TextErrors;
use std::fmt;
use words::{Saying, say};

/// Longest link that is made or read, in characters. Letters and messengers cut longer ones.
pub const LONGEST_LINK: usize = 8000;
/// Longest text that a link may unpack to, in bytes: ten times what fills the longest link with ordinary jobs.
const LONGEST_TEXT: usize = 200_000;
/// What stands before the packed job, behind the `#`.
pub const KEY: &str = "job=";
/// What stands before a packed lesson. A lesson that comes with the program is asked for by its key, as `#lesson=ring-feed`;
/// this is another word, so that no packed lesson can be taken for a key.
pub const LESSON_KEY: &str = "own-lesson=";
/// The version written.
const VERSION: u8 = 1;

/// A job or lesson does not fit into a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLong {
    /// Characters that the link would have, or 0 where it is far beyond.
    pub characters: usize,
    /// What was to be carried.
    pub carries: Carries,
}

impl TooLong {
    /// What it says to the reader.
    #[must_use]
    pub fn said(&self) -> Saying {
        let what = match self.carries {
            Carries::Job => "job",
            Carries::Lesson => "lesson",
        };
        if self.characters == 0 {
            say!("link-far-too-long", what = what)
        } else {
            say!(
                "link-too-long",
                what = what,
                characters = self.characters,
                most = LONGEST_LINK
            )
        }
    }
}

impl fmt::Display for TooLong {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}

impl std::error::Error for TooLong {}

/// Why a link does not open.
#[derive(Clone, Debug, PartialEq)]
pub enum LinkError {
    /// There is no packed job in it.
    NoJob,
    /// There is no packed lesson in it.
    NoLesson,
    /// It carries a lesson where a drawing was looked for.
    IsLesson,
    /// It carries a drawing where a lesson was looked for.
    IsJob,
    /// It is longer than any link that is made.
    TooLong,
    /// It was cut short or changed on its way.
    Damaged,
    /// It was made by a newer version of the program, of this link version.
    Newer(u8),
    /// It is whole, but its text is not a job that this version understands.
    NotUnderstood(Saying),
}

impl LinkError {
    /// Of a text that does not read: the first thing that is wrong with it.
    #[must_use]
    pub fn not_understood(errors: &TextErrors) -> Self {
        Self::NotUnderstood(errors.first())
    }
    /// What it says to the reader.
    #[must_use]
    pub fn said(&self) -> Saying {
        match self {
            Self::NoJob => say!("link-no-job", key = KEY),
            Self::NoLesson => say!("link-no-lesson", key = LESSON_KEY),
            Self::IsLesson => say!("link-is-lesson"),
            Self::IsJob => say!("link-is-job"),
            Self::TooLong => say!("link-longer"),
            Self::Damaged => say!("link-damaged"),
            Self::Newer(version) => say!(
                "link-newer",
                version = version.to_string(),
                reads = VERSION.to_string()
            ),
            Self::NotUnderstood(why) => say!("link-not-understood", why = why),
        }
    }
}

impl fmt::Display for LinkError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}

impl std::error::Error for LinkError {}

/// What a link carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carries {
    /// A drawing, under [`KEY`].
    Job,
    /// A lesson, under [`LESSON_KEY`].
    Lesson,
}

impl Carries {
    /// What stands before it, behind the `#`.
    fn key(self) -> &'static str {
        match self {
            Self::Job => KEY,
            Self::Lesson => LESSON_KEY,
        }
    }
}

/// What a link, or what stands behind its `#`, says that it carries; nothing where it says neither.
#[must_use]
pub fn carries(link: &str) -> Option<Carries> {
    let fragment = fragment_of(link.trim());
    match fragment {
        _ if fragment.starts_with(KEY) => Some(Carries::Job),
        _ if fragment.starts_with(LESSON_KEY) => Some(Carries::Lesson),
        _ => None,
    }
}

/// The part of a link behind the `#`, without the `#`: the whole job in text form, packed. Fields of a newer version's file
/// that this version does not know are not carried.
///
/// # Errors
/// [`TooLong`] where the link would be cut on its way.
pub fn fragment(job: &Job) -> Result<String, TooLong> {
    packed(Carries::Job, &model::text::print(job))
}

/// The part of a link behind the `#`, without the `#`: a text, packed under the key of what it is the text of. For jobs there is
/// [`fragment`]; lessons are packed by the crate that knows them.
///
/// # Errors
/// [`TooLong`] where the link would be cut on its way.
pub fn packed(carries: Carries, text: &str) -> Result<String, TooLong> {
    let too_long = |characters| TooLong { characters, carries };
    if text.len() > LONGEST_TEXT {
        return Err(too_long(0));
    }
    let mut bytes = vec![VERSION];
    let mut length = text.len();
    while length > 127 {
        bytes.push(length as u8 | 128);
        length >>= 7;
    }
    bytes.push(length as u8);
    bytes.extend(crc32fast::hash(text.as_bytes()).to_le_bytes());
    bytes.extend(encode(text.as_bytes()));
    let fragment = format!("{}{}", carries.key(), URL_SAFE_NO_PAD.encode(bytes));
    if fragment.len() > LONGEST_LINK {
        return Err(too_long(fragment.len()));
    }
    Ok(fragment)
}

/// The job in a link: in the whole link, in what stands behind its `#`, or in the packed job alone.
///
/// A link is input from strangers: nothing is unpacked before its length is known to be within bounds, nothing is read
/// before its checksum holds, and the text goes through the same parser as any other.
///
/// # Errors
/// [`LinkError`], in words for whoever clicked on it.
pub fn open(link: &str) -> Result<Job, LinkError> {
    let text = unpacked(link, Carries::Job)?;
    model::text::parse(&text).map_err(|errors| LinkError::not_understood(&errors))
}

/// What stands behind the `#`; all of it where there is none.
fn fragment_of(link: &str) -> &str {
    link.split_once('#').map_or(link, |(_, fragment)| fragment)
}

/// The text in a link that carries what is looked for: in the whole link, in what stands behind its `#`, or in the packed text
/// alone. It is whole, and as yet unread.
///
/// # Errors
/// [`LinkError`], in words for whoever clicked on it.
pub fn unpacked(link: &str, wanted: Carries) -> Result<String, LinkError> {
    let link = link.trim();
    // The address before the # is the sender's matter and not measured.
    let fragment = fragment_of(link);
    let none = match wanted {
        Carries::Job => LinkError::NoJob,
        Carries::Lesson => LinkError::NoLesson,
    };
    match carries(fragment) {
        Some(Carries::Job) if wanted != Carries::Job => return Err(LinkError::IsJob),
        Some(Carries::Lesson) if wanted != Carries::Lesson => return Err(LinkError::IsLesson),
        _ => {}
    }
    if fragment.len() > LONGEST_LINK {
        return Err(LinkError::TooLong);
    }
    let packed = fragment.strip_prefix(wanted.key()).unwrap_or(fragment);
    if packed.is_empty() || (packed.len() == fragment.len() && link.contains("://") && !link.contains('#')) {
        return Err(none);
    }
    let bytes = URL_SAFE_NO_PAD.decode(packed).map_err(|_| LinkError::Damaged)?;
    let Some((version, rest)) = bytes.split_first() else {
        return Err(none);
    };
    match version {
        0 => return Err(LinkError::Damaged),
        1 => {}
        newer => return Err(LinkError::Newer(*newer)),
    }
    let (length, rest) = length_of(rest).ok_or(LinkError::Damaged)?;
    let (checksum, code) = rest.split_first_chunk::<4>().ok_or(LinkError::Damaged)?;
    let text = decode(code, length);
    if crc32fast::hash(&text) != u32::from_le_bytes(*checksum) {
        return Err(LinkError::Damaged);
    }
    String::from_utf8(text).map_err(|_| LinkError::Damaged)
}

/// The length of the text, seven bits a byte, and what comes after it.
fn length_of(bytes: &[u8]) -> Option<(usize, &[u8])> {
    let mut length = 0usize;
    for (at, byte) in bytes.iter().take(3).enumerate() {
        length |= usize::from(byte & 127) << (7 * at);
        if byte & 128 == 0 {
            return (length <= LONGEST_TEXT).then(|| (length, bytes.get(at + 1..).unwrap_or_default()));
        }
    }
    None
}
