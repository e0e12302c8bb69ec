//! `table.ron`.

use super::{
    model::{Table, TableGuess, ThreadedBy},
    paper::Paper,
    read_amounts::{percent, price},
    read_paper,
    read_till::{self, TILL_FIELDS},
};
use crate::{
    caution::Region,
    money::{Currency, Discount, PriceRules, Rounding, TaxRule},
    ron_tree::{Fields, Node, Reader, Value, detail, either, what},
};

const OWN_FIELDS: [&str; 14] = [
    "name",
    "currency",
    "tax",
    "rounding",
    "cash_step",
    "discounts",
    "region",
    "rho",
    "hold_minutes",
    "idle_seconds",
    "idle_warning_seconds",
    "threaded_by",
    "paper",
    "guessed",
];

const ROUNDINGS: [(&str, Rounding); 2] = [("HalfUp", Rounding::HalfUp), ("HalfEven", Rounding::HalfEven)];

/// The shortest warning before a guest's piece is cleared. Source: WCAG 2.2, success criterion 2.2.1.
const SHORTEST_WARNING_SECONDS: u32 = 20;

/// How far neighbours overlap where the file does not say it. Common practice, no source.
const USUAL_RHO: f64 = 0.6;

/// `regions` are those that there are rules for; without them, since rules are broken and the folder is refused, any
/// region will do.
pub(super) fn read(reader: &mut Reader<'_>, node: &Node, regions: Option<&[Region]>) -> Option<Table> {
    let names: Vec<&str> = OWN_FIELDS.into_iter().chain(TILL_FIELDS).collect();
    let f = reader.fields(node, what("the-table", "the table"), &names)?;
    let name = reader.name(&f, "name");
    let currency = reader.required(&f, "currency").and_then(|node| currency(reader, node));
    let tax = reader.required(&f, "tax").and_then(|node| tax(reader, node));
    let rounding = match f.get("rounding") {
        Some(node) => reader.word(node, what("a-rounding", "a rounding"), &ROUNDINGS),
        None => Some(Rounding::HalfUp),
    };
    let region = reader.required(&f, "region").and_then(|node| match regions {
        Some(regions) => {
            let known: Vec<(&str, Region)> = regions.iter().map(|region| (region.code(), *region)).collect();
            reader.word(node, what("a-region-with-rules", "a region with rules"), &known)
        }
        None => Some(Region::US),
    });
    let rho = match f.get("rho") {
        Some(node) => reader.number(node, 0.1, 1.5),
        None => Some(USUAL_RHO),
    };
    let hold_minutes = whole_or(reader, &f, "hold_minutes", (1, 1440), 45);
    let idle_seconds = whole_or(reader, &f, "idle_seconds", (20, 3600), 90);
    let idle_warning_seconds = whole_or(reader, &f, "idle_warning_seconds", (SHORTEST_WARNING_SECONDS, 300), 20);
    let currency = currency?;
    let cash_step = match f.get("cash_step") {
        Some(node) => price(reader, node, currency),
        None => Some(currency.cash_step()),
    };
    let threaded_by = match f.get("threaded_by") {
        Some(node) => reader.word(
            node,
            what("who-threads", "who threads"),
            &[("Guest", ThreadedBy::Guest), ("Seller", ThreadedBy::Seller)],
        ),
        None => Some(ThreadedBy::default()),
    };
    let till = read_till::read(reader, &f, currency);
    let paper = match f.get("paper") {
        Some(node) => read_paper::read(reader, node),
        None => Some(Paper::default()),
    };
    let guessed = match f.get("guessed") {
        Some(node) => guesses(reader, node),
        None => Some(vec![]),
    };
    let mut discounts = Some(Vec::new());
    if let Some(node) = f.get("discounts") {
        for item in reader.list(node, what("list-discounts", "discounts"))? {
            match (discount(reader, item, currency), &mut discounts) {
                (Some(one), Some(all)) => all.push(one),
                _ => discounts = None,
            }
        }
    }
    Some(Table {
        name: name?,
        prices: PriceRules { currency, tax: tax?, rounding: rounding?, cash_step: cash_step?, discounts: discounts? },
        till: till?,
        paper: paper?,
        region: region?,
        rho: rho?,
        hold_minutes: hold_minutes?,
        idle_seconds: idle_seconds?,
        idle_warning_seconds: idle_warning_seconds?,
        threaded_by: threaded_by?,
        guessed: guessed?,
    })
}

/// A whole number, or what is usual where the file does not say it.
fn whole_or(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str, (low, high): (u32, u32), usual: u32) -> Option<u32> {
    f.get(name).map_or(Some(usual), |node| reader.whole(node, low, high))
}

/// What of the table itself nobody has told yet.
fn guesses(reader: &mut Reader<'_>, node: &Node) -> Option<Vec<TableGuess>> {
    let items = reader.list(node, what("list-fields-that-are-guesses", "fields that are guesses"))?;
    let known: Vec<_> = TableGuess::ALL.iter().map(|one| (one.field(), *one)).collect();
    let read: Vec<_> = items
        .iter()
        .map(|item| reader.word(item, what("a-field-that-can-be-a-guess", "a field that can be a guess"), &known))
        .collect();
    read.into_iter().collect()
}

fn currency(reader: &mut Reader<'_>, node: &Node) -> Option<Currency> {
    let code = reader.text(node, what("a-currency-code", "a currency code"))?;
    let found = Currency::from_code(code);
    if found.is_none() {
        let codes = Currency::codes().collect::<Vec<_>>().join(", ");
        reader.unlike::<()>(node, detail!("a-currency-of", "a currency code out of {codes}", codes = codes));
    }
    found
}

fn tax(reader: &mut Reader<'_>, node: &Node) -> Option<TaxRule> {
    match &node.value {
        Value::Word(word) if word == "None" => Some(TaxRule::None),
        Value::Struct { name: Some(name), .. } if name == "Added" || name == "Included" => {
            let f = reader.fields(node, what("a-tax", "a tax"), &["percent"])?;
            let at = reader.required(&f, "percent")?;
            let percent = percent(reader, at)?;
            Some(if name == "Added" { TaxRule::Added { percent } } else { TaxRule::Included { percent } })
        }
        _ => reader.unlike(node, either("None, Added(percent: \"6.25\")", "Included(percent: \"20\")")),
    }
}

fn discount(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<Discount> {
    match &node.value {
        Value::Tuple { name: Some(name), items } if items.len() == 1 && name == "Percent" => {
            Some(Discount::Percent(percent(reader, &items[0])?))
        }
        Value::Tuple { name: Some(name), items } if items.len() == 1 && name == "Amount" => {
            Some(Discount::Amount(price(reader, &items[0], currency)?))
        }
        Value::Struct { name: Some(name), .. } if name == "EveryNth" => {
            let f = reader.fields(node, what("a-discount", "a discount"), &["n"])?;
            let n = reader.required(&f, "n")?;
            Some(Discount::EveryNth { n: reader.whole(n, 2, 100)? })
        }
        _ => reader.unlike(node, either("Percent(\"10\"), Amount(\"5.00\")", "EveryNth(n: 5)")),
    }
}
