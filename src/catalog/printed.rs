//! `printed.json` beside the table's files: what stands on the price marks that were printed last, so that only others are
//! printed anew. Without it, or where it does not read, everything is another mark than before.

use std::{
    collections::{BTreeMap, BTreeSet},
    io,
    path::Path,
};

use serde::{Deserialize, Serialize};

use crate::disk::durable;

/// The file's name.
pub(super) const PRINTED: &str = "printed.json";

/// What stands on the marks that were printed last, by a drop's home or a base's id.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Printed {
    marks: BTreeMap<String, String>,
}

impl Printed {
    /// What was printed for the table in `root`; nothing where that is not known.
    pub fn read(root: &Path) -> Self {
        durable::read_json(&root.join(PRINTED)).unwrap_or_default()
    }

    /// Which of the marks of `now` say something else than the last ones, or were never printed.
    pub fn changed(&self, now: &BTreeMap<String, String>) -> BTreeSet<String> {
        let is_new = |(key, words): &(&String, &String)| self.marks.get(*key) != Some(*words);
        now.iter().filter(is_new).map(|(key, _)| key.clone()).collect()
    }

    /// Whether anything was ever printed.
    pub fn is_empty(&self) -> bool {
        self.marks.is_empty()
    }

    /// Takes in that the marks with these keys were printed as `now` has them. What is not on the table any more is forgotten.
    pub fn note(&mut self, keys: &BTreeSet<String>, now: &BTreeMap<String, String>) {
        self.marks.retain(|key, _| now.contains_key(key));
        let printed = now.iter().filter(|(key, _)| keys.contains(*key));
        self.marks.extend(printed.map(|(key, words)| (key.clone(), words.clone())));
    }

    /// Keeps it beside the table in `root`, whole or not at all.
    ///
    /// # Errors
    /// The disk refuses; then what was kept before stays.
    pub fn keep(&self, root: &Path) -> io::Result<()> {
        durable::write_json(&root.join(PRINTED), self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marks(all: &[(&str, &str)]) -> BTreeMap<String, String> {
        all.iter().map(|(key, words)| ((*key).to_owned(), (*words).to_owned())).collect()
    }

    fn keys(all: &[&str]) -> BTreeSet<String> {
        all.iter().map(|key| (*key).to_owned()).collect()
    }

    #[test]
    fn only_marks_that_say_something_else_are_printed_anew() {
        let folder = tempfile::tempdir().unwrap();
        let now = marks(&[("A1", "Key 4.50"), ("A2", "Locket 12")]);
        let mut printed = Printed::read(folder.path());
        assert!(printed.is_empty());
        assert_eq!(printed.changed(&now), keys(&["A1", "A2"]));
        printed.note(&keys(&["A1"]), &now);
        printed.keep(folder.path()).unwrap();
        let mut printed = Printed::read(folder.path());
        assert_eq!(printed.changed(&now), keys(&["A2"]), "the other one was not printed");
        printed.note(&keys(&["A2"]), &now);
        let later = marks(&[("A1", "Key 5"), ("A3", "Locket 12")]);
        assert_eq!(printed.changed(&later), keys(&["A1", "A3"]), "what was moved needs the mark of its new home");
        printed.note(&keys(&["A3"]), &later);
        assert_eq!(printed.changed(&now), keys(&["A2"]), "A1 as it was is still printed, what was taken away is not");
    }

    #[test]
    fn a_broken_file_is_nothing_that_was_printed() {
        let folder = tempfile::tempdir().unwrap();
        let now = marks(&[("A1", "Key")]);
        for text in ["", "{", "[]", "{\"marks\": 3}", "{\"marks\": {\"A1\": 4}}"] {
            std::fs::write(folder.path().join(PRINTED), text).unwrap();
            assert_eq!(Printed::read(folder.path()).changed(&now), keys(&["A1"]), "{text}");
        }
        std::fs::remove_file(folder.path().join(PRINTED)).unwrap();
        std::fs::create_dir(folder.path().join(PRINTED)).unwrap();
        let mut printed = Printed::read(folder.path());
        printed.note(&keys(&["A1"]), &now);
        assert!(printed.keep(folder.path()).is_err(), "a folder of its name is told, and stays");
    }
}
