//! Messages of one language, read from Fluent files, and how values go into them.

use crate::Words;
use crate::saying::{Saying, Value};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey};
use ordered::OrderedMap;

/// Messages by key.
#[derive(Debug, Default)]
pub(crate) struct Messages {
    by_key: OrderedMap<String, Pattern<String>>,
}

impl Messages {
    /// Reads files. What cannot be read is left out: a test reads every file strictly, and a message that is missing shows
    /// its English text.
    pub(crate) fn read<'a>(texts: impl IntoIterator<Item = &'a str>) -> Self {
        let mut by_key = OrderedMap::default();
        for text in texts {
            let resource = match fluent_syntax::parser::parse_runtime(text.to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            for entry in resource.body {
                if let Entry::Message(message) = entry
                    && let Some(pattern) = message.value
                {
                    by_key.insert(message.id.name, pattern);
                }
            }
        }
        Self { by_key }
    }
    pub(crate) fn get(&self, key: &str) -> Option<&Pattern<String>> {
        self.by_key.get(key)
    }
}

/// Writes a message with the values of a saying.
pub(crate) fn fill(
    words: &Words,
    pattern: &Pattern<String>,
    saying: &Saying,
    out: &mut String,
    depth: usize,
) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => out.push_str(value),
            PatternElement::Placeable { expression } => place(words, expression, saying, out, depth),
        }
    }
}

fn place(words: &Words, expression: &Expression<String>, saying: &Saying, out: &mut String, depth: usize) {
    match expression {
        Expression::Inline(inline) => inlined(words, inline, saying, out, depth),
        Expression::Select { selector, variants } => {
            let chosen = match selector {
                InlineExpression::VariableReference { id } => saying.value(&id.name),
                _ => None,
            };
            let found = variants
                .iter()
                .find(|variant| fits(words, chosen, &variant.key))
                .or_else(|| variants.iter().find(|variant| variant.default));
            if let Some(variant) = found {
                fill(words, &variant.value, saying, out, depth);
            }
        }
    }
}

/// Whether a variant is meant by a value: `[0]` by number, `[one]` by plural class, `[word]` by the word itself.
fn fits(words: &Words, value: Option<&Value>, key: &VariantKey<String>) -> bool {
    let count = match value {
        Some(Value::Count(count)) => Some(*count),
        Some(Value::List(all)) => Some(all.len()),
        _ => None,
    };
    match (key, value, count) {
        (VariantKey::NumberLiteral { value }, _, Some(count)) => value.parse() == Ok(count),
        (VariantKey::Identifier { name }, _, Some(count)) => words.reader().language.class(count) == name,
        (VariantKey::Identifier { name }, Some(Value::Text(text)), None) => text == name,
        _ => false,
    }
}

fn inlined(
    words: &Words,
    inline: &InlineExpression<String>,
    saying: &Saying,
    out: &mut String,
    depth: usize,
) {
    match inline {
        InlineExpression::StringLiteral { value } => {
            fluent_syntax::unicode::unescape_unicode(out, value).unwrap_or(());
        }
        InlineExpression::NumberLiteral { value } => out.push_str(value),
        InlineExpression::VariableReference { id } => match saying.value(&id.name) {
            Some(value) => out.push_str(&words.value(value, depth)),
            // A value that is not given shows its name, as a reader of the text would expect to see where it is missing.
            None => {
                out.push('$');
                out.push_str(&id.name);
            }
        },
        InlineExpression::MessageReference { id, .. } => {
            let mut other = Saying::new(id.name.clone());
            for (name, value) in saying.values() {
                other = other.with(name, value.clone());
            }
            words.write(&other, out, depth + 1);
        }
        InlineExpression::Placeable { expression } => place(words, expression, saying, out, depth),
        InlineExpression::FunctionReference { .. } | InlineExpression::TermReference { .. } => {}
    }
}
