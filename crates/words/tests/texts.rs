//! Every message in every language, and every use of one in the workspace: nothing missing, nothing unused, the same values
//! everywhere.

#![allow(
    clippy::disallowed_methods,
    reason = "this test reads the texts and sources from the disk"
)]

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use proc_macro2::{TokenStream, TokenTree};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// Messages whose keys are put together in code: everything that begins so counts as used. Beside each, where.
const FAMILIES: &[&str] = &[
    // For whom a handover is: web/src/components/handover.rs.
    "hand-out-for-",
    // The example in the documentation of this crate.
    "sample-",
    // Facts inside sentences: checks/src/wording.rs.
    "fact-",
    // The pages of checks: checks/src/registry.rs.
    "check-",
    // Limits and their sources: checks/src/limits.rs.
    "limit-",
    "source-",
    // The command line's help, its tables: cli/src/speech.rs, cli/src/table.rs.
    "cli-option-",
    "cli-command-",
    "cli-column-",
    // cli/src/commands/routes.rs.
    "cli-hazard-",
    // web/src/lessons/told.rs: by the name of a number in a lesson.
    "lesson-measure-",
    // model/src/said.rs: names of kinds, groups, sheets, properties and choices, and what properties are.
    // editor/src/actions.rs, words.rs, plain.rs: actions, names of numbers, what kinds of parts are for.
    "action-",
    "numbers-",
    "purpose-",
    // web/src/components/jobs.rs: worked jobs by their keys.
    "worked-",
    "kind-",
    "group-",
    "field-",
    "choice-",
    "about-",
    // body/src/places.rs and facts.rs: places by their names, what endangers a wire.
    "place-",
    "spot-",
    "hazard-",
    // paperwork/src/table.rs, lists.rs, work.rs, order.rs, cut.rs: columns, lists, what becomes of things, groups of the
    // order, endings.
    "paper-column-",
    "paper-list-",
    "paper-becomes-",
    "paper-section-",
    "paper-end-",
    "paper-fitted-",
    // paperwork/src/steps.rs: groups of steps.
    "step-phase-",
    // model/src/edits: the words that every part and run has.
    "edit-word-",
    // web/src/components/start.rs: rows of speakers by where they play.
    "start-speakers-",
];

/// Messages that read the same in both languages, being names, symbols or abbreviations.
const ALIKE: &[&str] = &[
    "cli-part-name",
    "lesson-of-version",
    "source-as-stated",
    "two-sentences",
    "explain-value-in",
    "explain-source-in",
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Names of the values that a message takes.
fn values_of(pattern: &Pattern<String>, into: &mut BTreeSet<String>) {
    fn of_inline(inline: &InlineExpression<String>, into: &mut BTreeSet<String>) {
        match inline {
            InlineExpression::VariableReference { id } => {
                into.insert(id.name.clone());
            }
            InlineExpression::Placeable { expression } => of(expression, into),
            InlineExpression::FunctionReference { id, .. } | InlineExpression::TermReference { id, .. } => {
                panic!("{}: functions and terms are not read here", id.name)
            }
            _ => {}
        }
    }
    fn of(expression: &Expression<String>, into: &mut BTreeSet<String>) {
        match expression {
            Expression::Inline(inline) => of_inline(inline, into),
            Expression::Select { selector, variants } => {
                of_inline(selector, into);
                for variant in variants {
                    values_of(&variant.value, into);
                }
            }
        }
    }
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            of(expression, into);
        }
    }
}

struct Message {
    values: BTreeSet<String>,
    text: String,
    /// Letters of its own, without those of values.
    letters: usize,
}

/// Letters of a pattern that are text.
fn letters_of(pattern: &Pattern<String>) -> usize {
    let of = |element: &PatternElement<String>| match element {
        PatternElement::TextElement { value } => value.matches(char::is_alphabetic).count(),
        PatternElement::Placeable {
            expression: Expression::Select { variants, .. },
        } => variants.iter().map(|variant| letters_of(&variant.value)).sum(),
        PatternElement::Placeable { .. } => 0,
    };
    pattern.elements.iter().map(of).sum()
}

fn messages(language: &str) -> BTreeMap<String, Message> {
    let mut all = BTreeMap::new();
    for theme in words::THEMES {
        let path = root().join(format!("crates/words/texts/{language}/{theme}.ftl"));
        let text =
            std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let resource = fluent_syntax::parser::parse(text.clone())
            .unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", path.display()));
        for entry in resource.body {
            match entry {
                Entry::Message(message) => {
                    let key = message.id.name;
                    let pattern = message
                        .value
                        .unwrap_or_else(|| panic!("{}: {key} has no text", path.display()));
                    let mut values = BTreeSet::new();
                    values_of(&pattern, &mut values);
                    let text = format!("{pattern:?}");
                    let letters = letters_of(&pattern);
                    assert!(
                        all.insert(
                            key.clone(),
                            Message {
                                values,
                                text,
                                letters
                            }
                        )
                        .is_none(),
                        "{}: {key} stands twice",
                        path.display()
                    );
                }
                Entry::Term(term) => panic!("{}: {} is a term", path.display(), term.id.name),
                Entry::Junk { content } => panic!("{}: cannot be read: {content}", path.display()),
                _ => {}
            }
        }
    }
    all
}

#[test]
fn every_folder_holds_the_themes_and_nothing_else() {
    let themes: BTreeSet<String> = words::THEMES.iter().map(|theme| format!("{theme}.ftl")).collect();
    for language in words::Language::ALL {
        let folder = root().join("crates/words/texts").join(language.tag());
        let files: BTreeSet<String> = std::fs::read_dir(&folder)
            .unwrap()
            .map(|file| file.unwrap().file_name().into_string().unwrap())
            .collect();
        assert_eq!(files, themes, "{}", folder.display());
    }
}

#[test]
fn every_language_has_every_message_with_the_same_values() {
    let english = messages("en");
    for language in words::Language::ALL {
        let other = messages(language.tag());
        let missing: Vec<&String> = english.keys().filter(|key| !other.contains_key(*key)).collect();
        let surplus: Vec<&String> = other.keys().filter(|key| !english.contains_key(*key)).collect();
        assert!(
            missing.is_empty() && surplus.is_empty(),
            "{}: missing {missing:?}, surplus {surplus:?}",
            language.tag()
        );
        for (key, message) in &english {
            assert_eq!(message.values, other[key].values, "{}: {key}", language.tag());
        }
    }
}

#[test]
fn nothing_is_left_untranslated() {
    let (english, german) = (messages("en"), messages("de"));
    let same: Vec<&String> = english
        .iter()
        .filter(|(key, message)| {
            // Short words, names and symbols may well be alike.
            message.letters > 11 && message.text == german[*key].text && !ALIKE.contains(&key.as_str())
        })
        .map(|(key, _)| key)
        .collect();
    assert!(same.is_empty(), "{same:?}");
}

/// One use of a message.
#[derive(Debug)]
struct Use {
    at: String,
    key: String,
    values: Vec<String>,
}

fn uses_in(tokens: TokenStream, at: &str, uses: &mut Vec<Use>, literals: &mut BTreeSet<String>) {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    for (index, token) in tokens.iter().enumerate() {
        match token {
            TokenTree::Group(group) => {
                let is_say = index >= 2
                    && matches!(&tokens[index - 1], TokenTree::Punct(mark) if mark.as_char() == '!')
                    && matches!(&tokens[index - 2], TokenTree::Ident(name) if name == "say");
                if is_say {
                    let inner: Vec<TokenTree> = group.stream().into_iter().collect();
                    if let Some(TokenTree::Literal(key)) = inner.first() {
                        let values = inner
                            .windows(3)
                            .filter_map(|three| match three {
                                [
                                    TokenTree::Punct(comma),
                                    TokenTree::Ident(name),
                                    TokenTree::Punct(equals),
                                ] if comma.as_char() == ',' && equals.as_char() == '=' => {
                                    Some(name.to_string())
                                }
                                _ => None,
                            })
                            .collect();
                        uses.push(Use {
                            at: at.to_owned(),
                            key: key.to_string().trim_matches('"').to_owned(),
                            values,
                        });
                    }
                }
                uses_in(group.stream(), at, uses, literals);
            }
            TokenTree::Literal(literal) => {
                literals.insert(literal.to_string().trim_matches('"').to_owned());
            }
            _ => {}
        }
    }
}

fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() && name != "target" && name != "dist" && !name.starts_with('.') {
            sources(&path, into);
        } else if name.ends_with(".rs") {
            into.push(path);
        }
    }
}

#[test]
fn every_use_finds_its_message_and_every_message_is_used() {
    let english = messages("en");
    let mut files = Vec::new();
    for folder in ["crates", "web"] {
        sources(&root().join(folder), &mut files);
    }
    let (mut uses, mut literals) = (Vec::new(), BTreeSet::new());
    for file in &files {
        let at = file.strip_prefix(root()).unwrap_or(file).display().to_string();
        // Uses in this crate are those of its own tests and documentation, and the three of lists.
        let text = std::fs::read_to_string(file).unwrap();
        let tokens: TokenStream = text.parse().unwrap_or_else(|error| panic!("{at}: {error}"));
        uses_in(tokens, &at, &mut uses, &mut literals);
    }
    let mut wrong = Vec::new();
    for use_ in &uses {
        match english.get(&use_.key) {
            None => wrong.push(format!("{}: no message `{}`", use_.at, use_.key)),
            Some(message) => {
                let given: BTreeSet<String> = use_.values.iter().cloned().collect();
                if given != message.values {
                    wrong.push(format!(
                        "{}: `{}` takes {:?} and is given {given:?}",
                        use_.at, use_.key, message.values
                    ));
                }
            }
        }
    }
    // A message that others refer to counts as used by them.
    let referred: String = english.values().map(|message| message.text.as_str()).collect();
    for key in english.keys() {
        let used = literals.contains(key)
            || FAMILIES.iter().any(|family| key.starts_with(family))
            || referred.contains(&format!("name: \"{key}\""));
        if !used {
            wrong.push(format!("`{key}` is used nowhere"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
