//! What lies where, to tick off while the table is laid; and what everything costs.

use super::table::{LabelTable, Labelled};
use crate::{
    lang::say,
    paper::document::{Document, Row, Sort},
};

/// What is seen to before anything is laid out.
const FIRST: [&str; 5] = [
    "labels-first-desk",
    "labels-first-tablets",
    "labels-first-float",
    "labels-first-cautions",
    "labels-first-put-back",
];

/// The sheet to set up by.
pub(super) fn set_up(table: &LabelTable) -> Document {
    let texts = table.texts;
    let tick = |one: &Labelled| {
        let home = one.home.map(|home| home.to_string()).unwrap_or_default();
        let words = say!(texts, "labels-lay", n = one.count, name = one.name.as_str(), price = one.price.as_str());
        Row::Tick(home, words)
    };
    let title = say!(texts, "labels-set-up");
    let mut rows = vec![Row::Name(table.name.clone()), Row::Middle(title.clone())];
    rows.extend(FIRST.iter().map(|key| Row::Tick(String::new(), texts.get(key))));
    if !table.bases.is_empty() {
        rows.push(Row::Heading(say!(texts, "labels-bases")));
        rows.extend(table.bases.iter().map(tick));
    }
    for tray in &table.trays {
        rows.push(Row::Heading(heading(table, tray.letter)));
        rows.extend(table.drops.iter().filter(|one| one.is_in(tray.letter)).map(tick));
    }
    document(table, title, rows)
}

/// The price list.
pub(super) fn prices(table: &LabelTable) -> Document {
    let texts = table.texts;
    let title = say!(texts, "labels-prices");
    let mut rows = vec![Row::Name(table.name.clone()), Row::Middle(title.clone())];
    rows.extend(table.tax.clone().map(Row::Middle));
    if !table.bases.is_empty() {
        rows.push(Row::Heading(say!(texts, "labels-bases")));
        rows.extend(table.bases.iter().map(|base| Row::Amount(base.noted(), base.price.clone())));
    }
    for tray in &table.trays {
        rows.push(Row::Heading(heading(table, tray.letter)));
        let here = table.drops.iter().filter(|one| one.is_in(tray.letter));
        rows.extend(here.map(|one| Row::Amount(format!("{}\u{a0} {}", one.key, one.noted()), one.price.clone())));
    }
    document(table, title, rows)
}

fn heading(table: &LabelTable, letter: char) -> String {
    let tray = say!(table.texts, "tray", letter = letter.to_string());
    format!("{tray}: {}", table.tray_name(letter))
}

fn document(table: &LabelTable, title: String, rows: Vec<Row>) -> Document {
    Document { sort: Sort::List, language: table.texts.lang.code(), title, rows, picture: None }
}
