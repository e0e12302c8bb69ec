//! What is said of the maker's files is worded in every language, with everything in its place.

use chatelaine::{
    lang::{Lang, Texts},
    ron_tree::{Detail, Mistakes, Part},
};

/// Words that stand in English sentences and in none of the others.
const ENGLISH: [&str; 14] = [
    "the", "is", "of", "with", "without", "and", "expected", "quotes", "that", "it", "write", "mistake", "from",
    "nobody",
];

/// What the file itself says, which is the same everywhere.
fn said_by_the_file(detail: &Detail) -> Vec<&str> {
    let mut all = Vec::new();
    for (_, part) in detail.places() {
        match part {
            Part::Words(words) | Part::Foreign(words) => all.push(words.as_str()),
            Part::Detail(inner) => all.extend(said_by_the_file(inner)),
        }
    }
    all
}

/// A detail is told in every language: with what the file says in its place, and without a word of English beside that.
pub fn in_every_language(detail: &Detail) {
    let said = said_by_the_file(detail);
    for lang in Lang::ALL {
        let words = Texts::of(lang).detail_words(detail);
        for one in &said {
            assert!(words.contains(one), "{lang:?}: {one} is missing from {words}");
        }
        if lang == Lang::En {
            let plain = words.replace('\u{a0}', " ").replace('’', "'");
            assert_eq!(plain, detail.english().replace('\u{a0}', " ").replace('’', "'"));
            continue;
        }
        assert!(!words.starts_with(detail.key()), "{lang:?}: {words}");
        let own = said.iter().fold(words.clone(), |rest, one| rest.replacen(one, "…", 1));
        let english = own.split(|c: char| !c.is_alphabetic()).find(|word| ENGLISH.contains(word));
        assert!(english.is_none() && !own.contains(['{', '$']), "{lang:?} {}: {words}", detail.key());
    }
}

/// Every mistake is.
pub fn all_in_every_language(mistakes: &Mistakes) {
    for mistake in &mistakes.0 {
        in_every_language(&mistake.found);
        in_every_language(&mistake.expected);
        for lang in Lang::ALL {
            assert!(Texts::of(lang).mistake(mistake).starts_with(&format!("{}: ", mistake.place())));
        }
    }
}
