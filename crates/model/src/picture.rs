//! Pictures of the vehicle, of parts and of runs, as evidence.

use crate::job::Extra;
use crate::{choice, properties};
use std::sync::Arc;

choice! {
    /// How a picture is packed.
    pub enum PictureForm {
        Jpeg = "jpeg", "JPEG";
        Png = "png", "PNG";
        Webp = "webp", "WebP";
    }
}

choice! {
    /// Among what the tag stands that a picture is of: a part may have the same tag as a complaint.
    pub enum PictureOf {
        Thing = "thing", "Part, run or place";
        Complaint = "complaint", "Complaint";
        Intake = "intake", "Line of the condition record";
    }
}

properties! {
    /// What a picture shows.
    pub struct PictureFacts {
        /// What it shows: the tag of a part or run, of a complaint, or a place of the body. Nothing: the vehicle.
        of as "of": String = String::new();
        /// Among what that tag stands.
        among as "among": PictureOf = PictureOf::Thing;
        /// What is to be seen on it.
        words as "words": String = String::new();
        /// When it was taken, as the user writes it.
        on as "on": String = String::new();
        /// How it is packed.
        form as "form": PictureForm = PictureForm::Jpeg;
    }
}

/// A picture.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
pub struct Picture {
    /// What it shows.
    pub facts: PictureFacts,
    /// Its bytes; base64 in a file.
    #[cfg_attr(
        feature = "schema",
        schemars(with = "String"),
        serde(serialize_with = "crate::schema::as_base64")
    )]
    pub bytes: Arc<Vec<u8>>,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

impl Picture {
    /// Whether it is of what has this tag among these.
    #[must_use]
    pub fn is_of(&self, among: PictureOf, tag: &str) -> bool {
        self.facts.among == among && self.facts.of == tag
    }
}

impl PictureForm {
    /// The form of which these bytes are, by their first ones.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Option<Self> {
        match bytes {
            [0xff, 0xd8, 0xff, ..] => Some(Self::Jpeg),
            [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Some(Self::Png),
            [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Some(Self::Webp),
            _ => None,
        }
    }
    /// Its media type (RFC 2046, RFC 9649).
    #[must_use]
    pub fn media_type(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::Webp => "image/webp",
        }
    }
}
