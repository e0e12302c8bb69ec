//! A name that suggests itself by how large a piece is, its colour and its sort, in the reader's language.

use crate::{
    craft::Sort,
    desk::{
        pages::words::capital,
        tray_drafts::{InPhoto, ShownAs},
    },
    lang::{Lang, Texts, say},
    photo::{Looks, Size},
};

/// What it is now: as told, or else as it looks.
pub(super) fn sort_of(one: &InPhoto) -> Sort {
    one.told.sort.or(one.cut.map(|cut| cut.looks.sort)).unwrap_or(Sort::Charm)
}

/// The name that suggests itself. The looks of a cut-out that is not shown are not to be trusted.
pub(super) fn suggested_name(texts: &Texts, one: &InPhoto) -> String {
    if one.shown == ShownAs::Mix {
        return say!(texts, "named-mix");
    }
    let looks = one.cut.filter(|_| one.shown == ShownAs::Cut).map(|cut| cut.looks);
    name(texts, looks, sort_of(one))
}

/// As "small golden charm"; the sort alone where nothing was seen of it.
fn name(texts: &Texts, looks: Option<Looks>, sort: Sort) -> String {
    let thing = thing(texts, sort);
    let Some(looks) = looks else { return capital(&thing) };
    // Adjectives go by the gender of what they stand with.
    let gender = texts.get(&format!("named-gender-{}", sort.name()));
    let with_gender = |key: String| texts.with(&key, &[("gender", gender.as_str().into())]);
    let colour = with_gender(format!("named-colour-{}", looks.colour.name()));
    let named = match looks.size {
        Size::Middling => say!(texts, "named-name", colour = colour, sort = thing),
        Size::Small | Size::Large => {
            let size = if looks.size == Size::Small { "named-small" } else { "named-large" };
            say!(texts, "named-name-sized", size = with_gender(size.to_owned()), colour = colour, sort = thing)
        }
    };
    capital(&named)
}

/// What a sort is called within a name: small, but for German, where every noun has a capital.
fn thing(texts: &Texts, sort: Sort) -> String {
    let word = texts.get(&format!("one-{}", sort.name()));
    if texts.lang == Lang::De { word } else { word.to_lowercase() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Colour;

    #[test]
    fn names_agree_with_their_gender() {
        let looks = |size, colour, sort| Looks { size, colour, sort, metal: true };
        let small = looks(Size::Small, Colour::Golden, Sort::Charm);
        let bead = looks(Size::Large, Colour::White, Sort::Bead);
        for (lang, charm, pearl, key) in [
            (Lang::En, "Small golden charm", "Large white bead", "Silvery key"),
            (Lang::De, "Kleiner goldener Motivanhänger", "Große weiße Perle", "Silberner Schlüssel"),
            (Lang::Es, "Dije dorado pequeño", "Cuenta blanca grande", "Llave plateada"),
            (Lang::Fr, "Petit motif doré", "Grande perle blanche", "Clé argentée"),
        ] {
            let texts = Texts::of(lang);
            assert_eq!(name(texts, Some(small), Sort::Charm), charm);
            assert_eq!(name(texts, Some(bead), Sort::Bead), pearl);
            assert_eq!(name(texts, Some(looks(Size::Middling, Colour::Silvery, Sort::Key)), Sort::Key), key);
        }
    }

    /// Every sort, size and colour has its words in every language, and no name is longer than the files take.
    #[test]
    fn no_look_is_without_words() {
        for texts in Lang::ALL.map(Texts::of) {
            for sort in Sort::ALL {
                for colour in Colour::ALL {
                    for size in [Size::Small, Size::Middling, Size::Large] {
                        let found =
                            name(texts, Some(Looks { size, colour: *colour, sort: *sort, metal: false }), *sort);
                        assert!(!found.contains("ooks-") && found.chars().count() <= 60, "{found}");
                    }
                }
            }
        }
    }
}
