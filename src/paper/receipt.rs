//! A receipt: what was sold, what is taken off, the tax, and how it was paid.

use rust_decimal::Decimal;

use super::document::{Document, Row, Sort, base_words, several};
use crate::{
    craft::{Day, Length},
    lang::{Texts, say},
    money::{Currency, TaxRule, Tender},
};

/// The facts of one bill, with names in the receipt's language.
#[derive(Debug, Clone, PartialEq)]
pub struct Receipt {
    /// The table's name.
    pub table: String,
    /// The lines below it.
    pub head: Vec<String>,
    /// Somebody practises: it is no receipt.
    pub practice: bool,
    /// The bill's number.
    pub number: String,
    /// The show in which it was paid.
    pub show: i64,
    /// Where that was.
    pub place: Option<String>,
    /// The day on which it was paid.
    pub day: Day,
    /// The time of that day.
    pub clock: String,
    /// The currency of every amount.
    pub currency: Currency,
    /// The pieces on it, those taken back left out.
    pub pieces: Vec<SoldPiece>,
    /// Goods without a home, each with its price.
    pub goods: Vec<(String, Decimal)>,
    /// What is taken off the goods.
    pub goods_off: Vec<Off>,
    /// The tax by its rate.
    pub taxes: Vec<TaxLine>,
    /// What it comes to, tax and all.
    pub total: Decimal,
    /// Money that moved.
    pub payments: Vec<Paid>,
    /// What is left to pay; below zero, what is to be paid out.
    pub left: Decimal,
    /// What was taken back or put right.
    pub backs: Vec<Back>,
    /// What the guest was told to be careful about.
    pub cautions: Vec<String>,
    /// How a piece is kept.
    pub care: Option<String>,
}

/// A piece that was sold.
#[derive(Debug, Clone, PartialEq)]
pub struct SoldPiece {
    /// The number of its ticket.
    pub number: String,
    /// The base's name.
    pub base: String,
    /// How long it is; a bangle has no length.
    pub length: Option<Length>,
    /// What the base costs.
    pub base_price: Decimal,
    /// The drops, each with its price.
    pub drops: Vec<(String, Decimal)>,
    /// What else hangs on it and has no home.
    pub plain: Vec<(String, Decimal)>,
    /// What is taken off.
    pub off: Vec<Off>,
}

/// What is taken off, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Off {
    /// Why.
    pub why: OffWhy,
    /// How much, at marked prices.
    pub amount: Decimal,
}

/// Why something is taken off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OffWhy {
    /// The table's own discount.
    Table,
    /// It is in the party's package of this name.
    Package(String),
    /// Somebody gave it, with this reason.
    Given(String),
}

/// The tax at one rate.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxLine {
    /// The rate, and whether it is on top or inside.
    pub rule: TaxRule,
    /// What it is on.
    pub net: Decimal,
    /// The tax.
    pub tax: Decimal,
    /// It is the sum of what was rounded for each piece, and other than what all of them together would give.
    pub is_rounded_apart: bool,
}

/// Money that moved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paid {
    /// How.
    pub way: Tender,
    /// How much; below zero it was paid out.
    pub amount: Decimal,
    /// How much of the sum that settles, before it is rounded to coins.
    pub settles: Decimal,
    /// What was given in cash.
    pub given: Option<Decimal>,
    /// It was a part of what was left.
    pub part: bool,
}

/// Something that was put right after it was paid.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Back {
    /// What.
    pub what: TakenBack,
    /// Why.
    pub reason: String,
    /// By how much the sum was less after it.
    pub worth: Decimal,
}

/// What was put right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TakenBack {
    /// The piece with this number.
    Piece(String),
    /// One thing, by its name.
    One(String),
    /// The way to pay that was noted.
    Way,
}

impl Receipt {
    /// The receipt in the language of `texts`.
    pub fn document(&self, texts: &Texts) -> Document {
        let mut rows = self.head_rows(texts);
        rows.push(Row::Rule);
        for piece in &self.pieces {
            self.piece_rows(texts, piece, &mut rows);
        }
        if !self.goods.is_empty() {
            rows.push(Row::Heading(say!(texts, "paper-goods")));
            self.lines(texts, &self.goods, &mut rows);
            self.off_rows(texts, &self.goods_off, &mut rows);
        }
        rows.push(Row::Rule);
        self.sum_rows(texts, &mut rows);
        rows.push(Row::Rule);
        self.paid_rows(texts, &mut rows);
        self.back_rows(texts, &mut rows);
        self.last_rows(texts, &mut rows);
        let title = say!(texts, "paper-receipt-title", number = self.number.as_str());
        Document { sort: Sort::Receipt, language: texts.lang.code(), title, rows, picture: None }
    }

    fn money(&self, texts: &Texts, amount: Decimal) -> String {
        texts.lang.money(amount, self.currency)
    }

    fn head_rows(&self, texts: &Texts) -> Vec<Row> {
        let mut rows = vec![Row::Name(self.table.clone())];
        rows.extend(self.head.iter().cloned().map(Row::Middle));
        if self.practice {
            rows.push(Row::Notice(say!(texts, "paper-practice")));
        }
        rows.push(Row::Rule);
        rows.push(Row::Heading(say!(texts, "paper-receipt-title", number = self.number.as_str())));
        let day = format!("{}, {}", texts.day(self.day), self.clock);
        rows.push(Row::Fact(say!(texts, "paper-date"), day));
        let show = match &self.place {
            Some(place) => format!("{}, {place}", self.show),
            None => self.show.to_string(),
        };
        rows.push(Row::Fact(say!(texts, "paper-show"), show));
        rows
    }

    fn piece_rows(&self, texts: &Texts, piece: &SoldPiece, rows: &mut Vec<Row>) {
        rows.push(Row::Heading(say!(texts, "paper-piece", number = piece.number.as_str())));
        let base = base_words(texts, &piece.base, piece.length);
        rows.push(Row::Amount(base, self.money(texts, piece.base_price)));
        self.lines(texts, &piece.drops, rows);
        self.lines(texts, &piece.plain, rows);
        self.off_rows(texts, &piece.off, rows);
    }

    /// A line for each sort of thing at one price, where it first stands.
    fn lines(&self, texts: &Texts, things: &[(String, Decimal)], rows: &mut Vec<Row>) {
        for (at, thing) in things.iter().enumerate().filter(|(at, thing)| !things[..*at].contains(thing)) {
            let n = things[at..].iter().filter(|other| *other == thing).count();
            let (name, price) = thing;
            let amount = self.money(texts, *price * Decimal::from(n));
            rows.push(Row::Amount(several(texts, n, name), amount));
        }
    }

    fn off_rows(&self, texts: &Texts, off: &[Off], rows: &mut Vec<Row>) {
        for one in off {
            let words = match &one.why {
                OffWhy::Table => say!(texts, "lines-discount"),
                OffWhy::Package(name) => say!(texts, "paper-package", name = name.as_str()),
                OffWhy::Given(reason) => say!(texts, "paper-taken-off", reason = reason.as_str()),
            };
            rows.push(Row::Amount(words, self.money(texts, -one.amount)));
        }
    }

    fn sum_rows(&self, texts: &Texts, rows: &mut Vec<Row>) {
        let on_top = |line: &&TaxLine| matches!(line.rule, TaxRule::Added { .. });
        let added: Decimal = self.taxes.iter().filter(on_top).map(|line| line.tax).sum();
        let (on_top, inside): (Vec<&TaxLine>, Vec<&TaxLine>) = self.taxes.iter().partition(on_top);
        let tax = |line: &TaxLine| {
            let net = self.money(texts, line.net);
            let words = match line.rule {
                TaxRule::None => return None,
                TaxRule::Added { percent } => {
                    say!(texts, "paper-tax-on-top", percent = texts.lang.number(percent.normalize()), net = net)
                }
                TaxRule::Included { percent } => {
                    say!(texts, "paper-tax-inside", percent = texts.lang.number(percent.normalize()), net = net)
                }
            };
            Some(Row::Amount(words, self.money(texts, line.tax)))
        };
        let apart = |lines: &[&TaxLine]| {
            lines.iter().any(|line| line.is_rounded_apart).then(|| Row::Small(say!(texts, "paper-tax-apart")))
        };
        if !on_top.is_empty() {
            rows.push(Row::Amount(say!(texts, "lines-subtotal"), self.money(texts, self.total - added)));
            rows.extend(on_top.iter().filter_map(|line| tax(line)));
            rows.extend(apart(&on_top));
        }
        rows.push(Row::Total(say!(texts, "lines-total"), self.money(texts, self.total)));
        rows.extend(inside.iter().filter_map(|line| tax(line)));
        rows.extend(apart(&inside));
    }

    fn paid_rows(&self, texts: &Texts, rows: &mut Vec<Row>) {
        for paid in &self.payments {
            let way = match &paid.way {
                Tender::Cash => say!(texts, "paper-cash"),
                Tender::Card => say!(texts, "paper-card"),
                Tender::Named(name) => name.clone(),
            };
            let out = paid.amount.is_sign_negative() && !paid.amount.is_zero();
            let words = if out {
                say!(texts, "paper-paid-out", way = way)
            } else if paid.part {
                say!(texts, "paper-paid-part", way = way)
            } else {
                say!(texts, "paper-paid", way = way)
            };
            rows.push(Row::Amount(words, self.money(texts, paid.amount)));
            if paid.amount != paid.settles {
                let rounded = self.money(texts, paid.amount - paid.settles);
                rows.push(Row::Fact(say!(texts, "paper-rounded"), rounded));
            }
            if let Some(given) = paid.given {
                rows.push(Row::Fact(say!(texts, "paper-given"), self.money(texts, given)));
                rows.push(Row::Fact(say!(texts, "paper-change"), self.money(texts, given - paid.amount)));
            }
        }
        if self.left > Decimal::ZERO {
            rows.push(Row::Total(say!(texts, "paper-left"), self.money(texts, self.left)));
        } else if self.left < Decimal::ZERO {
            rows.push(Row::Total(say!(texts, "paper-to-pay-out"), self.money(texts, -self.left)));
        }
    }

    fn back_rows(&self, texts: &Texts, rows: &mut Vec<Row>) {
        if self.backs.is_empty() {
            return;
        }
        rows.push(Row::Rule);
        rows.push(Row::Heading(say!(texts, "paper-back")));
        for back in &self.backs {
            let reason = back.reason.as_str();
            let what = match &back.what {
                TakenBack::Way => {
                    rows.push(Row::Text(say!(texts, "paper-back-way", reason = reason)));
                    continue;
                }
                TakenBack::Piece(number) => say!(texts, "paper-piece", number = number.as_str()),
                TakenBack::One(name) => name.clone(),
            };
            let words = say!(texts, "paper-back-one", what = what, reason = reason);
            rows.push(Row::Amount(words, self.money(texts, -back.worth)));
        }
    }

    fn last_rows(&self, texts: &Texts, rows: &mut Vec<Row>) {
        if !self.cautions.is_empty() {
            rows.push(Row::Rule);
            rows.push(Row::Heading(say!(texts, "caution-title")));
            rows.extend(self.cautions.iter().cloned().map(Row::Text));
            rows.push(Row::Small(say!(texts, "caution-deferral")));
        }
        if let Some(care) = &self.care {
            rows.push(Row::Rule);
            rows.push(Row::Heading(say!(texts, "paper-care")));
            rows.push(Row::Text(care.clone()));
        }
        if self.practice {
            rows.push(Row::Rule);
            rows.push(Row::Notice(say!(texts, "paper-practice")));
        }
    }
}
