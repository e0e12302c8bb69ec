//! `names/LANGUAGE.ron`: what drops, bases and trays are called in other languages.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::{
    quoting::quoted,
    ron_tree::{Node, Reader, detail, did_you_mean, keep_one, nearest, what},
};

/// Names by language and id; a tray's by its letter.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Names(BTreeMap<String, BTreeMap<String, String>>);

impl Names {
    /// What `id` is called in the language with this code, where the catalogue says so.
    pub fn find(&self, language: &str, id: &str) -> Option<&str> {
        self.0.get(language)?.get(id).map(String::as_str)
    }

    /// Takes in a language's names.
    pub(super) fn add(&mut self, language: String, names: BTreeMap<String, String>) {
        self.0.insert(language, names);
    }
}

/// The language a file is for: its name is the language's code of two small letters (ISO 639-1), as in `names/de.ron`.
pub(super) fn language_of(file: &str) -> Option<&str> {
    let stem = file.strip_prefix("names/")?.strip_suffix(".ron")?;
    (stem.len() == 2 && stem.bytes().all(|b| b.is_ascii_lowercase())).then_some(stem)
}

/// Every name that could be read. `known` tells whether there is such an id or letter; `None` while that can't be told
/// because other files are broken.
pub(super) fn read(reader: &mut Reader<'_>, node: &Node, known: Option<&[&str]>) -> BTreeMap<String, String> {
    let mut names = BTreeMap::new();
    for item in reader.list(node, what("list-names", "names")).unwrap_or_default() {
        let Some(f) = reader.fields(item, what("a-name", "a name"), &["id", "name"]) else { continue };
        let id_node = reader.required(&f, "id");
        let id = id_node.and_then(|node| Some((reader.text(node, what("an-id", "an id"))?.to_owned(), node.at)));
        let name = reader.name(&f, "name");
        let Some((id, at)) = id else { continue };
        if let Some(known) = known
            && !known.contains(&id.as_str())
        {
            let like = nearest(&id, known.iter().copied());
            let hint = like.map_or_else(
                || detail!("right-named-id", "write a drop's or base's id, or a tray's letter"),
                |like| did_you_mean(quoted(&like)),
            );
            reader.wrong(at, detail!("wrong-named-id", "nothing has the id {id}", id = quoted(&id)), hint);
            continue;
        }
        let Some(name) = name else { continue };
        if names.insert(id.clone(), name).is_some() {
            reader.wrong(at, detail!("wrong-name-twice", "a second name for {id}", id = quoted(&id)), keep_one());
        }
    }
    names
}
