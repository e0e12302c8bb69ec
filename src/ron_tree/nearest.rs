//! What somebody may have meant who wrote a word that is not known.

/// No word that somebody may have meant is longer, in bytes; comparing takes as long as both words are.
const LONGEST: usize = 100;

/// The known word nearest to `word`, if one is near enough to be meant.
pub fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<String> {
    if word.len() > LONGEST {
        return None;
    }
    known
        .map(|one| (strsim::jaro_winkler(word, one), one))
        .filter(|(likeness, _)| *likeness > 0.8)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, one)| one.to_owned())
}
