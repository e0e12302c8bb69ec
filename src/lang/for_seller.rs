//! What is said to the seller beside a caution, in the seller's language.
//!
//! A ticket keeps these words in English, as they were when it was sent. They are known by them again: what the code and the
//! rules of the program say has its translation, and what a maker's own rules say stays as the maker wrote it.

use rust_decimal::Decimal;

use super::{Lang, Texts, say};
use crate::{
    caution::{Caution, CautionCode},
    craft::Facts,
};

/// How something stands to the test cylinder, as the texts have it.
const SIZES: [&str; 3] = ["fits", "measure", "no"];
/// What comes off, as the texts have it; nothing is said of what is too large for the cylinder beside clasp and bangle.
const OFF: [&str; 4] = ["fits", "measure", "near", "no"];

impl Texts {
    /// The seller's words beside a caution in this language: its English words where there is no translation. `facts` are
    /// those of the part that it is about.
    pub fn for_seller(&self, caution: &Caution, facts: Option<&Facts>) -> String {
        self.told_seller(caution, facts).unwrap_or_else(|| caution.seller.clone())
    }

    pub(super) fn told_seller(&self, caution: &Caution, facts: Option<&Facts>) -> Option<String> {
        let (small, rest) = self.small(&caution.seller);
        let words = self.of_the_rule(caution, rest, facts)?;
        Some(if small.is_empty() { words } else { format!("{small} {words}") })
    }

    /// How a small part was found, and what is said after that.
    fn small<'w>(&self, words: &'w str) -> (String, &'w str) {
        let english = Self::of(Lang::En);
        let as_drop = SIZES.into_iter().flat_map(|ring| SIZES.map(|body| ("seller-small-drop", ring, body)));
        let others = SIZES.into_iter().flat_map(|size| {
            ["seller-small-both", "seller-small-ends", "seller-small-hoop"].map(|key| (key, size, size))
        });
        let found = as_drop.chain(others).find_map(|(key, ring, body)| {
            let places = [("ring", ring.into()), ("body", body.into()), ("size", ring.into())];
            let rest = words.strip_prefix(&english.with(key, &places))?.trim_start();
            Some((self.with(key, &places), rest))
        });
        let Some((said, rest)) = found else { return (String::new(), words) };
        let off = OFF.into_iter().find_map(|size| {
            let rest = rest.strip_prefix(&say!(english, "seller-small-off", size = size))?.trim_start();
            Some((say!(self, "seller-small-off", size = size), rest))
        });
        match off {
            Some((off, rest)) => (format!("{said} {off}"), rest),
            None => (said, rest),
        }
    }

    /// What the rule says, and what a test or a supplier's statement changes in it.
    fn of_the_rule(&self, caution: &Caution, rest: &str, facts: Option<&Facts>) -> Option<String> {
        let code = caution.code.code();
        let english = Self::of(Lang::En);
        let own = ["usual", "within", "proof"].map(|kind| format!("seller-{kind}-{code}"));
        if let Some(key) = own.iter().find(|key| english.get(key) == rest) {
            return Some(self.get(key));
        }
        match caution.form.as_str() {
            "found" | "children" => {
                let figure = self.figure(caution, rest)?;
                Some(match (caution.form.as_str(), caution.forbidden, caution.grave) {
                    ("found", true, _) => say!(self, "seller-found-forbidden", figure = figure),
                    ("found", false, true) => say!(self, "seller-found-grave", figure = figure),
                    _ => say!(self, "seller-found", figure = figure),
                })
            }
            "elsewhere" => Some(say!(self, "seller-elsewhere")),
            "exempt" => {
                let why = self.get(&format!("exempt-{}", facts?.lead_exempt?.name()));
                Some(say!(self, "seller-exempt", why = why))
            }
            "declared" => {
                let declared = facts?.declared.as_ref()?;
                let day = self.day(declared.dated);
                Some(say!(self, "seller-declared", paper = declared.paper.as_str(), day = day))
            }
            _ => None,
        }
    }

    /// The rule's figure: in English with the rule's own words, elsewhere as a number with its unit.
    fn figure(&self, caution: &Caution, rest: &str) -> Option<String> {
        if self.lang == Lang::En {
            let (_, after) = rest.split_once('(')?;
            return Some(after.rsplit_once(')')?.0.to_owned());
        }
        let number = self.lang.number(caution.limit.as_ref().map(Decimal::normalize)?);
        Some(match caution.code {
            CautionCode::Nickel => say!(self, "seller-nickel-rate", number = number),
            _ => say!(self, "seller-ppm", number = number),
        })
    }
}
