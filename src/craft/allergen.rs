//! What in a food can make somebody ill.

use serde::{Deserialize, Serialize};

use super::material::words;

words! {
    /// The usual allergens: the nine of the United States (21 U.S.C. 321(qq), by report) and the fourteen of the European
    /// Union (Regulation (EU) 1169/2011, Annex II, from memory). Wheat stands by itself beside gluten, as US labels have it.
    UsualAllergen {
        /// Milk, lactose included.
        Milk = "milk",
        /// Eggs.
        Egg = "egg",
        /// Fish.
        Fish = "fish",
        /// Crustaceans: prawns, crabs, lobsters.
        Crustaceans = "crustaceans",
        /// Tree nuts: almonds, hazelnuts, walnuts, cashews and others.
        TreeNuts = "tree nuts",
        /// Peanuts.
        Peanuts = "peanuts",
        /// Wheat.
        Wheat = "wheat",
        /// Soybeans.
        Soybeans = "soybeans",
        /// Sesame.
        Sesame = "sesame",
        /// Cereals containing gluten.
        Gluten = "gluten",
        /// Celery.
        Celery = "celery",
        /// Mustard.
        Mustard = "mustard",
        /// Sulphur dioxide and sulphites, above 10 mg/kg.
        Sulphites = "sulphites",
        /// Lupin.
        Lupin = "lupin",
        /// Molluscs: mussels, oysters, squid, snails.
        Molluscs = "molluscs",
    }
}

/// An allergen of a food: a usual one, or in the maker's own words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Allergen {
    /// One that every language has a word for.
    Usual(UsualAllergen),
    /// In the maker's own words.
    Own(String),
}

impl Allergen {
    /// The allergen called `words`: a usual one by its name or its English word, else in these words. None where there is
    /// nothing but blanks.
    pub fn from_words(words: &str) -> Option<Self> {
        let words = words.trim();
        let is =
            |one: &&UsualAllergen| one.name().eq_ignore_ascii_case(words) || one.word().eq_ignore_ascii_case(words);
        match UsualAllergen::ALL.iter().find(is) {
            Some(usual) => Some(Self::Usual(*usual)),
            None => (!words.is_empty()).then(|| Self::Own(words.to_owned())),
        }
    }

    /// In plain English, or as the maker wrote it.
    pub fn word(&self) -> &str {
        match self {
            Self::Usual(usual) => usual.word(),
            Self::Own(words) => words,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_allergens_are_known_by_name_and_word() {
        for (words, wanted) in [
            ("milk", Some(Allergen::Usual(UsualAllergen::Milk))),
            ("TreeNuts", Some(Allergen::Usual(UsualAllergen::TreeNuts))),
            (" Tree nuts ", Some(Allergen::Usual(UsualAllergen::TreeNuts))),
            ("carmine", Some(Allergen::Own("carmine".into()))),
            ("  ", None),
        ] {
            let found = Allergen::from_words(words);
            assert_eq!(found, wanted, "{words:?}");
            let Some(found) = found else { continue };
            let text = serde_json::to_string(&found).unwrap();
            assert_eq!(serde_json::from_str::<Allergen>(&text).unwrap(), found, "{text}");
        }
        // Words are read as well.
        assert_eq!(serde_json::from_str::<Allergen>("\"milk\"").unwrap().word(), "milk");
        assert_eq!(UsualAllergen::ALL.len(), 15, "nine and fourteen, eight of them the same");
    }
}
