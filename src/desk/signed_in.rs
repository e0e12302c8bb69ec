//! Somebody who is signed in at the desk, as what they do is entered.

use crate::{
    lang::{Texts, say},
    ledger::{Role, SELLER},
};

/// Follows a helper's name where the seller approved of what they did, as it is entered.
const APPROVED: &str = ", approved by the seller";

/// A request of somebody who is signed in at the desk: the seller, or a helper.
#[derive(Clone)]
pub(super) struct Seller {
    pub token_hash: String,
    /// By which name what they do is entered.
    pub who: Option<String>,
    /// What they may do.
    pub role: Role,
    /// The texts in which they read.
    pub texts: &'static Texts,
}

impl Seller {
    /// Their name; the seller's own where it is the seller.
    pub(super) fn name(&self) -> &str {
        self.who.as_deref().unwrap_or(SELLER)
    }

    /// The same for one act of which the seller approves.
    pub(super) fn approved(&self) -> Self {
        Self { who: Some(format!("{}{APPROVED}", self.name())), ..self.clone() }
    }
}

/// Who did something, as it is entered, in the reader's words.
pub(super) fn who_words(texts: &Texts, entered: &str) -> String {
    match entered.strip_suffix(APPROVED) {
        Some(helper) => say!(texts, "who-approved", helper = helper),
        None if entered == SELLER => say!(texts, "who-seller"),
        None => entered.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::Lang;

    #[test]
    fn an_entry_says_in_every_language_who_made_it() {
        let helper = Seller {
            token_hash: String::new(),
            who: Some("Mia".to_owned()),
            role: Role::Helper,
            texts: Texts::of(Lang::En),
        };
        let approved = helper.approved();
        let [english, german] = [Lang::En, Lang::De].map(Texts::of);
        assert_eq!(who_words(english, helper.name()), "Mia");
        assert_eq!(who_words(english, approved.name()), approved.name());
        assert_eq!(who_words(german, approved.name()), "Mia, mit Zustimmung der Verkäuferin");
        assert_eq!([english, german].map(|texts| who_words(texts, SELLER)), [SELLER, "Verkäuferin"]);
    }
}
