//! The link's fragment: version, length, checksum and code, in letters that an address may hold.

use crate::coder::{decode, encode};
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use model::Job;
use std::fmt;

/// Longest link that is made or read, in characters. Letters and messengers cut longer ones.
pub const LONGEST_LINK: usize = 8000;
/// Longest text that a link may unpack to, in bytes: ten times what fills the longest link with ordinary jobs.
const LONGEST_TEXT: usize = 200_000;
/// What stands before the packed job, behind the `#`.
pub const KEY: &str = "job=";
/// The version written.
const VERSION: u8 = 1;

/// A job does not fit into a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLong {
    /// Characters that the link would have, or 0 where the job is far beyond.
    pub characters: usize,
}

impl fmt::Display for TooLong {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.characters == 0 {
            write!(out, "this job is far too large for a link")?;
        } else {
            write!(
                out,
                "as a link this job would have {} characters; mail programs cut what is over {LONGEST_LINK}",
                self.characters
            )?;
        }
        write!(out, ". Send it as a page file instead")
    }
}

impl std::error::Error for TooLong {}

/// Why a link does not open.
#[derive(Clone, Debug, PartialEq)]
pub enum LinkError {
    /// There is no packed job in it.
    NoJob,
    /// It is longer than any link that is made.
    TooLong,
    /// It was cut short or changed on its way.
    Damaged,
    /// It was made by a newer version of the program, of this link version.
    Newer(u8),
    /// It is whole, but its text is not a job that this version understands.
    NotUnderstood(String),
}

impl fmt::Display for LinkError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoJob => write!(
                out,
                "There is no drawing in this link: behind its # should stand {KEY} and a long row of letters and digits. Ask for the whole link."
            ),
            Self::TooLong => write!(
                out,
                "This link is longer than any that is made here, so it was not opened. Ask whoever sent it for the page file."
            ),
            Self::Damaged => write!(
                out,
                "This link was cut short or changed on its way, so it was not opened. Ask for it again, best as a page file or a code to scan."
            ),
            Self::Newer(version) => write!(
                out,
                "This link was made by a newer version of the program (link version {version}, this one reads up to {VERSION}). Reload the page to get the newest version."
            ),
            Self::NotUnderstood(why) => write!(
                out,
                "This link holds something that this version does not understand: {why}. Reload the page to get the newest version."
            ),
        }
    }
}

impl std::error::Error for LinkError {}

/// The part of a link behind the `#`, without the `#`: the whole job in text form, packed. Fields of a newer version's file
/// that this version does not know are not carried.
///
/// # Errors
/// [`TooLong`] where the link would be cut on its way.
pub fn fragment(job: &Job) -> Result<String, TooLong> {
    let text = model::text::print(job);
    if text.len() > LONGEST_TEXT {
        return Err(TooLong { characters: 0 });
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
    let fragment = format!("{KEY}{}", URL_SAFE_NO_PAD.encode(bytes));
    if fragment.len() > LONGEST_LINK {
        return Err(TooLong {
            characters: fragment.len(),
        });
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
    let link = link.trim();
    // The address before the # is the sender's matter and not measured.
    let fragment = link.split_once('#').map_or(link, |(_, fragment)| fragment);
    if fragment.len() > LONGEST_LINK {
        return Err(LinkError::TooLong);
    }
    let packed = fragment.strip_prefix(KEY).unwrap_or(fragment);
    if packed.is_empty() || (packed.len() == fragment.len() && link.contains("://") && !link.contains('#')) {
        return Err(LinkError::NoJob);
    }
    let bytes = URL_SAFE_NO_PAD.decode(packed).map_err(|_| LinkError::Damaged)?;
    let (version, rest) = bytes.split_first().ok_or(LinkError::NoJob)?;
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
    let text = String::from_utf8(text).map_err(|_| LinkError::Damaged)?;
    model::text::parse(&text).map_err(|errors| {
        let first = errors.to_string();
        LinkError::NotUnderstood(first.lines().next().unwrap_or_default().to_owned())
    })
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
