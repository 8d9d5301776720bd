//! The two declarations: of a choice, and of a struct whose fields are properties.

/// Declares a choice: an enum with a written word and words on screen for each of its values.
#[macro_export]
macro_rules! choice {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal, $title:literal;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
        pub enum $name { $($(#[$vdoc])* #[doc = $title] #[cfg_attr(feature = "schema", serde(rename = $word))] $variant,)+ }
        impl $name {
            /// All values, in order.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];
            /// The written word.
            #[must_use]
            pub fn word(self) -> &'static str { match self { $(Self::$variant => $word),+ } }
            /// The words on screen.
            #[must_use]
            pub fn title(self) -> &'static str { match self { $(Self::$variant => $title),+ } }
            /// The same, in the reader's language.
            #[must_use]
            pub fn said(self) -> ::words::Saying { $crate::said::choice(self.title()) }
            /// The value of a written word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> { match word { $($word => Some(Self::$variant),)+ _ => None } }
        }
        impl $crate::property::PropertyType for $name {
            const SHAPE: $crate::property::Shape = $crate::property::Shape::Choice(&[$(($word, $title)),+]);
            fn print(&self) -> String { self.word().to_owned() }
            fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, $crate::property::PropertyError> {
                Self::from_word(text.trim()).ok_or_else(|| {
                    let words: Vec<&str> = Self::ALL.iter().map(|value| value.word()).collect();
                    $crate::property::not_one_of(text, &words)
                })
            }
            fn check(&self, _: Option<(f64, f64)>) -> Result<(), $crate::property::PropertyError> { Ok(()) }
        }
        impl $crate::json::FromJson for $name {
            fn from_json(value: &serde_json::Value) -> Result<Self, $crate::json::Misread> {
                $crate::property::PropertyType::from_json(value)
            }
        }
    };
}

/// Declares a struct whose fields are properties, each with a sentence, a default and, for numbers, a range.
#[macro_export]
macro_rules! properties {
    ($(#[$doc:meta])* pub struct $name:ident {
        $($(#[doc = $fdoc:literal])+ $field:ident as $word:literal: $ty:ty = $default:expr $(, $least:literal to $most:literal)?;)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize), serde(default))]
        pub struct $name {
            $($(#[doc = $fdoc])+ #[cfg_attr(feature = "schema", serde(rename = $word))] pub $field: $ty,)*
            /// Fields that a newer version wrote and this one does not know; kept as they are.
            #[cfg_attr(feature = "schema", serde(flatten))]
            pub extra: $crate::job::Extra,
        }
        impl Default for $name {
            fn default() -> Self { Self { $($field: $default,)* extra: $crate::job::Extra::default() } }
        }
        impl $crate::property::PropertySet for $name {
            fn list() -> &'static [$crate::property::Property] {
                const LIST: &[$crate::property::Property] = &[$($crate::property::Property {
                    name: $word,
                    doc: concat!($($fdoc),+),
                    shape: <$ty as $crate::property::PropertyType>::SHAPE,
                    range: $crate::properties!(@range $($least to $most)?),
                    may_be_assumed: <$ty as $crate::property::PropertyType>::MAY_BE_ASSUMED,
                }),*];
                LIST
            }
            fn properties(&self) -> &'static [$crate::property::Property] { Self::list() }
            fn field(&self, at: usize) -> Option<&dyn $crate::property::Field> {
                let fields: &[&dyn $crate::property::Field] = &[$(&self.$field),*];
                fields.get(at).copied()
            }
            fn field_mut(&mut self, at: usize) -> Option<&mut dyn $crate::property::Field> {
                let fields: Vec<&mut dyn $crate::property::Field> = vec![$(&mut self.$field),*];
                fields.into_iter().nth(at)
            }
            fn extra(&self) -> &$crate::job::Extra { &self.extra }
            fn extra_mut(&mut self) -> &mut $crate::job::Extra { &mut self.extra }
            fn as_set(&self) -> &dyn $crate::property::PropertySet { self }
            fn as_set_mut(&mut self) -> &mut dyn $crate::property::PropertySet { self }
        }
    };
    (@range) => { None };
    (@range $least:literal to $most:literal) => { Some(($least as f64, $most as f64)) };
}
