//! The texts of a language, from its Fluent file.

use std::sync::LazyLock;

use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};

use super::{Lang, Message};

/// A value for a place in a text.
pub type Arg<'a> = (&'static str, FluentValue<'a>);

/// The texts of every language, made when they are first asked for.
static ALL: LazyLock<[Texts; 4]> = LazyLock::new(|| Lang::ALL.map(Texts::new));

/// The texts of one language.
pub struct Texts {
    /// Which language.
    pub lang: Lang,
    bundle: FluentBundle<FluentResource>,
}

impl Texts {
    /// The texts of `lang`. What a file has wrong is left out; a test holds all files to the same keys.
    pub fn new(lang: Lang) -> Self {
        let locale = lang.code().parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![locale]);
        bundle.set_use_isolating(false);
        for source in lang.sources() {
            let resource = FluentResource::try_new((*source).to_owned()).unwrap_or_else(|(good, _)| good);
            bundle.add_resource_overriding(resource);
        }
        Self { lang, bundle }
    }

    /// The same, made once and kept.
    pub fn of(lang: Lang) -> &'static Self {
        let [en, es, fr, de] = &*ALL;
        match lang {
            Lang::En => en,
            Lang::Es => es,
            Lang::Fr => fr,
            Lang::De => de,
        }
    }

    /// The texts of `lang` with accents and two fifths longer, as other languages may be: for trying whether they fit.
    pub fn stretched(lang: Lang) -> Self {
        let mut texts = Self::new(lang);
        texts.bundle.set_transform(Some(|text| stretch(text).into()));
        texts
    }

    /// The text called `key`.
    pub fn get(&self, key: &str) -> String {
        self.with(key, &[])
    }

    /// The text called `key` with values in its places; the key itself if there is none.
    pub fn with(&self, key: &str, args: &[Arg<'_>]) -> String {
        self.find(key, args).unwrap_or_else(|| key.to_owned())
    }

    /// A message in this language.
    pub fn say(&self, message: &Message) -> String {
        self.with(message.key, &message.args(self.lang))
    }

    /// The text called `key`, if there is one.
    pub(super) fn find(&self, key: &str, args: &[Arg<'_>]) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let mut values = FluentArgs::new();
        for (name, value) in args {
            values.set(*name, value.clone());
        }
        Some(self.bundle.format_pattern(pattern, Some(&values), &mut vec![]).into_owned())
    }
}

/// Vowels with accents, and so many of them twice that the whole is two fifths longer.
pub(super) fn stretch(text: &str) -> String {
    let mut owed = 0.0_f32;
    let mut long = String::new();
    for c in text.chars() {
        owed += 0.4;
        let accented = match c {
            'a' => 'á',
            'e' => 'ê',
            'i' => 'ï',
            'o' => 'ö',
            'u' => 'ü',
            'A' => 'Å',
            'E' => 'É',
            'O' => 'Ø',
            other => other,
        };
        long.push(accented);
        while accented != c && owed >= 1.0 {
            long.push(accented.to_lowercase().next().unwrap_or(accented));
            owed -= 1.0;
        }
    }
    // What the last word's vowels did not take up.
    if text.ends_with(char::is_alphabetic) {
        long.extend(std::iter::repeat_n('ë', owed.round() as usize));
    }
    long
}

/// The keys of a language's files, in their order.
pub fn keys(lang: Lang) -> Vec<String> {
    let lines = lang.sources().iter().flat_map(|source| source.lines());
    lines
        .filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()))
        .filter_map(|line| line.split_once(" =").map(|(key, _)| key.to_owned()))
        .collect()
}
