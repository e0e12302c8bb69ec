//! Entries as they are written.

use super::refusal::EditRefusal;
use crate::ron_tree::{Document, Step, Value, in_quotes, is_id};

/// Fields of an entry with their values as a file has them; one without a value is taken out.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Fields(Vec<(&'static str, Option<String>)>);

impl Fields {
    /// An entry's fields before any is told.
    pub const fn new() -> Self {
        Self(vec![])
    }

    /// A field that is written in quotes: a name, a price, a quantity.
    #[must_use]
    pub fn text(self, name: &'static str, text: &str) -> Self {
        self.written(name, in_quotes(text))
    }

    /// A field with its value as the file has it.
    #[must_use]
    pub fn written(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.0.push((name, Some(value.into())));
        self
    }

    /// A field that is taken out: nobody tells it any more.
    #[must_use]
    pub fn without(mut self, name: &'static str) -> Self {
        self.0.push((name, None));
        self
    }

    /// These, and then the `others`.
    #[must_use]
    pub fn and(mut self, others: Self) -> Self {
        self.0.extend(others.0);
        self
    }

    /// Whether nothing is told.
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The whole entry in one line, perhaps after its name.
    pub(super) fn entry(&self, form: &str) -> String {
        let fields: Vec<String> =
            self.0.iter().filter_map(|(name, value)| Some(format!("{name}: {}", value.as_ref()?))).collect();
        format!("{form}({})", fields.join(", "))
    }

    /// Writes them into the entry at `path`. What is told is no guess any more.
    pub(super) fn write_into(&self, file: &mut Document, path: &[Step<'_>]) -> Result<(), EditRefusal> {
        for (name, value) in &self.0 {
            match value {
                Some(value) => {
                    let place = [path, &[Step::Field(name)]].concat();
                    // What is there already is left as somebody wrote it.
                    if file.written(&place) != Some(value) {
                        file.set_field(path, name, value)?;
                    }
                    is_told(file, path, name)?;
                }
                None => file.remove_field(path, name)?,
            }
        }
        Ok(())
    }
}

/// Takes a field out of those that are marked as guesses.
fn is_told(file: &mut Document, path: &[Step<'_>], name: &str) -> Result<(), EditRefusal> {
    let list = [path, &[Step::Field("guessed")]].concat();
    let Some(Value::List(items)) = file.find(&list).map(|node| &node.value) else { return Ok(()) };
    let is_it = |value: &Value| matches!(value, Value::Word(word) if word == name);
    let Some(i) = items.iter().position(|item| is_it(&item.value)) else { return Ok(()) };
    if items.len() == 1 {
        file.remove_field(path, "guessed")?;
    } else {
        file.remove_item(&list, i)?;
    }
    Ok(())
}

/// An id that nothing has yet, by what a thing is called: small letters, digits and hyphens.
pub fn fresh_id(called: &str, is_taken: impl Fn(&str) -> bool) -> String {
    let mut stem = String::new();
    for c in called.chars().flat_map(char::to_lowercase) {
        match plain_letters(c) {
            Some(letters) => stem.push_str(letters),
            None if c.is_ascii_alphanumeric() => stem.push(c),
            None if !stem.is_empty() && !stem.ends_with('-') => stem.push('-'),
            None => {}
        }
        if stem.len() >= 30 {
            break;
        }
    }
    let stem = stem.trim_end_matches('-');
    let stem = if is_id(stem) { stem } else { "drop" };
    let mut id = stem.to_owned();
    for number in 2.. {
        if !is_taken(&id) {
            break;
        }
        id = format!("{stem}-{number}");
    }
    id
}

/// Letters of the desk's languages without their signs.
const fn plain_letters(c: char) -> Option<&'static str> {
    Some(match c {
        'à' | 'á' | 'â' | 'ã' | 'å' => "a",
        'ä' => "ae",
        'ç' => "c",
        'è' | 'é' | 'ê' | 'ë' => "e",
        'ì' | 'í' | 'î' | 'ï' => "i",
        'ñ' => "n",
        'ò' | 'ó' | 'ô' | 'õ' => "o",
        'ö' | 'œ' => "oe",
        'ù' | 'ú' | 'û' => "u",
        'ü' => "ue",
        'ß' => "ss",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_made_of_names_in_every_language() {
        let taken = ["key", "key-2"];
        for (called, id) in [
            ("Golden charm", "golden-charm"),
            ("Schlüssel, groß", "schluessel-gross"),
            ("L’étoile d’été", "l-etoile-d-ete"),
            ("Key", "key-3"),
            ("心", "drop"),
            ("", "drop"),
            ("  --  ", "drop"),
        ] {
            let found = fresh_id(called, |id| taken.contains(&id));
            assert_eq!(found, id);
            assert!(is_id(&found));
        }
        assert!(is_id(&fresh_id(&"ä".repeat(100), |_| false)));
    }

    #[test]
    fn what_is_told_is_no_guess_any_more() {
        let mut file = Document::read("f", "(a: 1, weight: \"3g\", guessed: [weight, /* oh */ body])").unwrap();
        Fields::new().text("weight", "2g").write_into(&mut file, &[]).unwrap();
        assert_eq!(file.text(), "(a: 1, weight: \"2g\", guessed: [/* oh */ body])");
        Fields::new().written("body", "Empty").without("a").write_into(&mut file, &[]).unwrap();
        assert_eq!(file.text(), "(weight: \"2g\", body: Empty)");
    }
}
