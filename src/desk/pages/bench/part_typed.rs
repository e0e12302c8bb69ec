//! What was typed of a part: counts, lists of lengths, a new part.

use maud::{Markup, html};

use super::write_lot::LONGEST_NAME;
use crate::{
    catalog::{BoughtPart, LotAmount, PartCount, PartTold, There, Workshop, fresh_id, written_length},
    craft::Length,
    desk::pages::{table::form::TableForm, typed},
    lang::{Texts, say},
    money::Currency,
    prep::cuts::Tenths,
    quoting::excerpt,
};

/// As many letters as a list of lengths has at most.
pub(super) const LONGEST_LIST: usize = 2_000;

/// A count as it stands in its field.
pub(super) fn as_typed(there: &PartCount) -> String {
    match there {
        PartCount::Pieces(count) => count.to_string(),
        PartCount::Spools(lengths) => lengths.iter().map(|one| written_length(*one)).collect::<Vec<_>>().join("; "),
    }
}

/// A length with its unit, with either decimal mark; what is wrong with it in words.
fn one_length(texts: &Texts, typed: &str) -> Result<Tenths, String> {
    let read = typed.parse().or_else(|_| typed.replace(',', ".").parse::<Length>());
    let length = read.ok().map(Tenths::no_longer).filter(|length| length.0 > 0);
    length.ok_or_else(|| say!(texts, "cuts-no-length", found = excerpt(typed)))
}

/// Lengths one behind the other, with semicolons, blanks behind commas or lines between them.
fn lengths(texts: &Texts, typed: &str) -> Result<Vec<Tenths>, String> {
    let typed = typed.replace(", ", ";").replace(['\n', '\r'], ";");
    let each = typed.split(';').map(str::trim).filter(|one| !one.is_empty());
    each.map(|one| one_length(texts, one)).collect()
}

/// How much of a part was typed; what is wrong with it in words.
pub(super) fn counted(texts: &Texts, part: &BoughtPart, typed: &str) -> Result<PartCount, String> {
    match part.there {
        There::Pieces(_) => typed::count(texts, &part.name, typed).map(PartCount::Pieces),
        There::Spools { .. } => lengths(texts, typed).map(PartCount::Spools),
    }
}

/// What stands in the fields of a new part.
#[derive(Default)]
pub(super) struct TypedPart {
    name: String,
    by_length: bool,
    there: String,
    amount: String,
    price: String,
    kerf: String,
    keep_from: String,
}

impl TypedPart {
    pub(super) fn of_form(form: &TableForm) -> Self {
        let text = |name: &str| form.text(name).to_owned();
        Self {
            name: text("name"),
            by_length: form.text("measure") == "length",
            there: text("there"),
            amount: text("amount"),
            price: text("price"),
            kerf: text("kerf"),
            keep_from: text("keep_from"),
        }
    }

    /// The fields of the form.
    pub(super) fn fields(&self, texts: &Texts, currency: Currency) -> Markup {
        let field = |name: &str, label: String, value: &str, most: usize, is_needed: bool| {
            html! {
                div {
                    label for=(name) { (label) }
                    input id=(name) name=(name) value=(value) maxlength=(most) autocomplete="off" required[is_needed];
                }
            }
        };
        html! {
            (field("name", say!(texts, "part-name"), &self.name, LONGEST_NAME, true))
            div {
                label for="measure" { (say!(texts, "part-measure")) }
                select #measure name="measure" {
                    option value="pieces" selected[!self.by_length] { (say!(texts, "part-by-piece")) }
                    option value="length" selected[self.by_length] { (say!(texts, "part-by-length")) }
                }
            }
            (field("there", say!(texts, "part-there-now"), &self.there, LONGEST_LIST, false))
            (field("amount", say!(texts, "part-offer-amount"), &self.amount, 12, false))
            (field("price", say!(texts, "part-offer-price", currency = currency.code), &self.price, 12, false))
            (field("kerf", say!(texts, "part-kerf"), &self.kerf, 12, false))
            (field("keep_from", say!(texts, "part-keep-from"), &self.keep_from, 12, false))
        }
    }

    /// The part that was typed; what is wrong with it in words.
    pub(super) fn read(&self, texts: &Texts, workshop: &Workshop, currency: Currency) -> Result<PartTold, String> {
        if self.name.is_empty() || self.name.chars().count() > LONGEST_NAME {
            return Err(say!(texts, "part-no-name", most = LONGEST_NAME));
        }
        // Sent twice it is the same part; another of the same name gets an id of its own.
        let is_other = |id: &str| workshop.part(id).is_some_and(|part| part.name != self.name);
        let id = fresh_id(&self.name, is_other);
        let offer = match (self.amount.is_empty(), self.price.is_empty()) {
            (true, true) => None,
            _ => Some((self.offered(texts)?, typed::price_for_a_file(texts, currency, &self.price)?)),
        };
        let unless_empty = |typed: &str| typed::unless_empty(typed, |typed| one_length(texts, typed));
        let (there, kerf, keep_from) = if self.by_length {
            let keep_from = unless_empty(&self.keep_from)?;
            let keep_from = keep_from.ok_or_else(|| say!(texts, "part-no-keep-from"))?;
            (PartCount::Spools(lengths(texts, &self.there)?), unless_empty(&self.kerf)?, Some(keep_from))
        } else {
            (PartCount::Pieces(typed::count(texts, &self.name, &self.there)?), None, None)
        };
        Ok(PartTold { id, name: self.name.clone(), offer, there, kerf, keep_from })
    }

    fn offered(&self, texts: &Texts) -> Result<LotAmount, String> {
        if self.by_length {
            return one_length(texts, &self.amount).map(LotAmount::Length);
        }
        match typed::count(texts, &self.name, &self.amount)? {
            0 => Err(say!(texts, "lot-no-amount", part = self.name.as_str())),
            count => Ok(LotAmount::Pieces(count)),
        }
    }
}
