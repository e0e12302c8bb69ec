//! Somebody who is signed in at the desk, as what they do is entered.

use crate::{
    lang::{Lang, Texts, say},
    ledger::{Role, SELLER},
};

/// What stands behind the name of a helper where the seller approved of an act.
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
    /// Whether they sit at the machine on which the desk runs.
    pub is_here: bool,
    /// The last entry on the page from which they act, where it says so.
    pub seen: Option<i64>,
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

/// Who did something, as the ledger has it, in the reader's language. Names of people stay as they are.
pub(super) fn name_of(texts: &Texts, by: &str) -> String {
    if let Some(helper) = by.strip_suffix(APPROVED) {
        return say!(texts, "approved-by-the-seller", name = name_of(texts, helper));
    }
    if by == SELLER { say!(texts, "seller-by-name") } else { by.to_owned() }
}

/// Whether `typed` is what the seller is called, in any language of the pages: a phone may have another than its seller.
pub(super) fn is_sellers_name(typed: &str) -> bool {
    let typed = typed.trim().to_lowercase();
    Lang::ALL.into_iter().any(|lang| name_of(Texts::of(lang), SELLER).to_lowercase() == typed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_did_something_is_told_in_the_readers_language() {
        let told = |lang, by| name_of(Texts::of(lang), by);
        let mia = Seller {
            token_hash: String::new(),
            who: Some("Mia".into()),
            role: Role::Helper,
            texts: Texts::of(Lang::De),
            is_here: false,
            seen: None,
        };
        let entered = mia.approved().name().to_owned();
        assert_eq!(entered, "Mia, approved by the seller", "the ledger keeps one language");
        assert_eq!(told(Lang::En, &entered), entered);
        assert_eq!(told(Lang::De, &entered), "Mia, mit Zustimmung der Verkäuferin");
        assert_eq!((told(Lang::En, SELLER), told(Lang::De, SELLER)), (SELLER.into(), "Verkäuferin".into()));
        assert_eq!(told(Lang::Fr, "Jo"), "Jo");
    }

    #[test]
    fn the_seller_is_known_by_the_word_of_every_language() {
        for name in ["Seller", " seller", "Verkäuferin", "VERKÄUFERIN ", "vendedora", "Vendeuse"] {
            assert!(is_sellers_name(name), "{name}");
        }
        for name in ["", "Verkaufer", "Mia", "the seller", "Verkäuferin Mia"] {
            assert!(!is_sellers_name(name), "{name}");
        }
    }
}
