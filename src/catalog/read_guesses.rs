//! What a file does not tell of a part, or tells as a guess: the same for drops and bases.

use super::read_facts::facts;
use crate::{
    craft::{Day, Facts, Finish, Guess, Material, Plating},
    quoting::excerpt,
    ron_tree::{Fields, Node, Reader, Value, detail, did_you_mean, nearest, one_of, what},
};

/// Fields about the other fields: which are guesses, and when its number was counted.
pub(super) const ABOUT_FIGURES: [&str; 2] = ["guessed", "counted"];

/// What of a part is a guess so far.
pub(super) struct Guesses(Vec<Guess>);

impl Guesses {
    /// Those that the file itself marks, as in `guessed: [weight, body]`; each has to be one of the part's `fields`.
    pub(super) fn of(reader: &mut Reader<'_>, f: &Fields<'_>, fields: &[&str]) -> Option<Self> {
        let Some(node) = f.get("guessed") else { return Some(Self(vec![])) };
        let items = reader.list(node, what("list-fields-that-are-guesses", "fields that are guesses"))?;
        let read: Vec<_> = items.iter().map(|item| guess(reader, item, fields)).collect();
        Some(Self(read.into_iter().collect::<Option<_>>()?))
    }

    /// Takes `usual` for what the file does not tell.
    pub(super) fn at<T>(&mut self, guess: Guess, usual: T) -> T {
        self.0.push(guess);
        usual
    }

    /// Whether a field is a guess.
    pub(super) fn has(&self, guess: Guess) -> bool {
        self.0.contains(&guess)
    }

    /// All of them, the gravest first.
    pub(super) fn all(mut self) -> Vec<Guess> {
        self.0.sort();
        self.0.dedup();
        self.0
    }
}

fn guess(reader: &mut Reader<'_>, node: &Node, fields: &[&str]) -> Option<Guess> {
    let Value::Word(word) = &node.value else {
        return reader.unlike(
            node,
            detail!(
                "a-field-guessed",
                "the name of a field without quotes, as in {example}",
                example = "guessed: [weight, body]"
            ),
        );
    };
    let found = Guess::of_field(word).filter(|guess| fields.contains(&guess.field()));
    if found.is_none() {
        let known = Guess::ALL.iter().map(|guess| guess.field()).filter(|field| fields.contains(field));
        let hint = match nearest(word, known.clone()) {
            Some(like) => did_you_mean(like),
            None => one_of(known),
        };
        let found = detail!("wrong-guess", "{word} is no field that can be a guess", word = excerpt(word));
        reader.wrong(node.at, found, hint);
    }
    found
}

/// A part's facts as told, or the usual ones where the file tells no materials: beside those, whatever it does tell counts.
/// Where the materials are a guess, a metal that nobody tested is among them; where the sort is one, its dangers stay though
/// somebody has told what it is made of.
pub(super) fn known_facts(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    finish: Option<Finish>,
    usual: impl FnOnce() -> Facts,
    guesses: &mut Guesses,
) -> Option<Facts> {
    let usual = match f.get("materials") {
        Some(_) if guesses.has(Guess::Sort) => usual(),
        Some(_) => Facts::default(),
        None => guesses.at(Guess::Materials, usual()),
    };
    let mut facts = facts(reader, f, finish, usual)?;
    if guesses.has(Guess::Materials) && !facts.materials.contains(&Material::UnknownMetal) {
        facts.materials.push(Material::UnknownMetal);
    }
    if guesses.has(Guess::Materials) && f.get("plating").is_none() {
        facts.plating = Plating::Unknown;
    }
    Some(facts)
}

/// How many of a part there are; `usual` where nobody has counted.
pub(super) fn stock(reader: &mut Reader<'_>, f: &Fields<'_>, usual: u32, guesses: &mut Guesses) -> Option<u32> {
    match f.get("stock") {
        Some(node) => reader.whole(node, 0, 100_000),
        None => Some(guesses.at(Guess::Stock, usual)),
    }
}

/// The day on which they were counted, where the file says it.
pub(super) fn counted(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Option<Day>> {
    let Some(node) = f.get("counted") else { return Some(None) };
    let text = reader.text(node, what("a-date", "a date"))?;
    match Day::from_iso(text) {
        Some(day) => Some(Some(day)),
        None => reader.unlike(
            node,
            detail!("a-day-counted", "the day of the count as in \"2026-03-02\", as the calendar has it"),
        ),
    }
}
