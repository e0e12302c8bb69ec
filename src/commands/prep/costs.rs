//! `chatelaine prep costs` and `chatelaine prep after`: what things cost and earn, few prices that the costs suggest, what
//! another price would do, and what a show came to.

use chatelaine::{
    bench::{
        AfterShow, PastShow, PriceChange, PriceList, PriceRow, StallCosts, after_show, past_shows, price_change,
        price_list,
    },
    catalog::Catalog,
    ledger::Ledger,
    money::{Currency, parse_price},
};
use rust_decimal::Decimal;
use serde_json::{Value, json};

use super::{Bench, MOST_SHOWS, Place, Told, print};

#[derive(clap::Args)]
pub(super) struct Options {
    #[command(flatten)]
    bench: Bench,
    /// What the stall costs for one show.
    #[arg(long)]
    stall: Option<String>,
    /// What the way there and back costs.
    #[arg(long)]
    travel: Option<String>,
    /// How many pieces, bases and drops counted one by one, a show is expected to sell; as many as so far otherwise.
    #[arg(long, value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pieces: Option<u32>,
    /// How many different prices there should be at most.
    #[arg(long, default_value_t = 5, value_parser = clap::value_parser!(u8).range(1..=30))]
    points: u8,
    /// What another price would do: ID=PRICE, as in key-heart=9.50.
    #[arg(long)]
    change: Vec<String>,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct After {
    /// The show's number, as chatelaine show list has it.
    show: i64,
    #[command(flatten)]
    bench: Bench,
    #[command(flatten)]
    place: Place,
}

/// The shows so far; a maker without a ledger has none.
fn past(place: Place) -> Result<Vec<PastShow>, Told> {
    let file = place.ledger()?;
    if !file.exists() {
        return Ok(vec![]);
    }
    Ok(past_shows(&Ledger::beside_the_desk(&file)?, MOST_SHOWS)?)
}

/// An amount that may be left out.
fn amount(typed: Option<&String>, currency: Currency) -> Result<Decimal, Told> {
    let read = typed.map(|text| parse_price(text, currency).map_err(|error| Told(error.to_string())));
    Ok(read.transpose()?.unwrap_or_default())
}

/// What every asked price would do.
fn changes(typed: &[String], catalog: &Catalog, list: &PriceList) -> Result<Vec<PriceChange>, Told> {
    let currency = catalog.table.prices.currency;
    let read = typed.iter().map(|one| {
        let (id, price) = one
            .split_once('=')
            .ok_or_else(|| Told(format!("{one:?} is no price of anything; write key-heart=9.50")))?;
        let to = parse_price(price, currency).map_err(|error| Told(error.to_string()))?;
        price_change(catalog, list, id, to)
            .ok_or_else(|| Told(format!("{id:?} is in no tray and no base, or parts.ron does not say what it costs")))
    });
    read.collect()
}

pub(super) fn run(options: Options) -> Result<(), Told> {
    let (catalog, workshop) = options.bench.workshop()?;
    let currency = catalog.table.prices.currency;
    let all = amount(options.stall.as_ref(), currency)? + amount(options.travel.as_ref(), currency)?;
    let past = past(options.place)?;
    let stall = StallCosts { all, pieces: options.pieces };
    let list = price_list(&catalog, Some(&workshop), &past, stall, options.points.into());
    let changes = changes(&options.change, &catalog, &list)?;
    let object = json!({
        "currency": currency.code, "shows": past.len(), "parts": list.rows, "prices": list.prices,
        "points": list.points, "break_even": list.break_even, "changes": changes,
    });
    print(options.bench.json, &object, || words(currency, &list, &changes))
}

fn sum(amount: Option<Decimal>) -> String {
    amount.map_or_else(|| "?".to_owned(), |sum| format!("{:.2}", sum.round_dp(2)))
}

fn words(currency: Currency, list: &PriceList, changes: &[PriceChange]) -> String {
    let stall = list.break_even.map_or(Decimal::ZERO, |one| one.stall);
    let mut words = format!("{:<22}{:>10}{:>10}{:>10}{:>10}{:>10}", "", "price", "cost", "margin", "by cost", "point");
    words += if stall > Decimal::ZERO { "  stall earned by\n" } else { "\n" };
    for row in &list.rows {
        words += &row_words(currency, row, stall);
    }
    words += "A “?” stands where parts.ron has no recipe, or no lot of one of the parts.\n\n";
    words += &format!("{:>10}{:>8}{:>16}{:>10}{:>10}\n", "price", "kinds", "sold at a show", "margin", "least");
    for at in &list.prices {
        let [margin, least] = [at.margin, at.least].map(sum);
        let price = currency.plain(at.price);
        words += &format!("{price:>10}{:>8}{:>16}{margin:>10}{least:>10}\n", at.kinds, at.sold.round_dp(1));
    }
    let points: Vec<String> = list.points.iter().map(|point| currency.plain(*point)).collect();
    words += &format!("Few prices that the costs suggest: {}\n", points.join(", "));
    if let Some(even) = list.break_even.filter(|_| stall > Decimal::ZERO) {
        let pieces = even.pieces.map_or_else(|| "no number of pieces".to_owned(), |n| format!("{n} pieces"));
        words += &format!("The stall of {} is earned by {pieces}.\n", currency.plain(stall));
    }
    for change in changes {
        words += &format!(
            "{} at {} in place of {}: one earns {} in place of {}",
            change.id,
            currency.plain(change.to),
            currency.plain(change.from),
            sum(Some(change.margin_then)),
            sum(Some(change.margin_now)),
        );
        words += &match change.sold_for_the_same {
            _ if change.margin_now <= Decimal::ZERO => "; now each one loses with its share of the stall.\n".to_owned(),
            Some(same) => format!("; {same} sold earn what {} earn now.\n", change.sold),
            None => format!("; no number sold earns what {} earn now.\n", change.sold),
        };
    }
    words.trim_end().to_owned()
}

fn row_words(currency: Currency, row: &PriceRow, stall: Decimal) -> String {
    let one = &row.priced;
    let cost = sum(one.cost.as_ref().filter(|_| one.is_known()).map(|cost| cost.total()));
    let [margin, by_cost, point] = [one.margin, one.price_from_cost, row.point].map(sum);
    let mut words =
        format!("{:<22}{:>10}{cost:>10}{margin:>10}{by_cost:>10}{point:>10}", one.id, currency.plain(one.price));
    if let Some(pieces) = row.stall_earned_by.filter(|_| stall > Decimal::ZERO) {
        words += &format!("{pieces:>17}");
    }
    words.push('\n');
    if let Some(longest) = row.longest {
        words += &format!("{:<22}in its longest length it costs {}\n", "", sum(Some(longest)));
    }
    words
}

pub(super) fn after(options: After) -> Result<(), Told> {
    let (catalog, workshop) = options.bench.read()?;
    let past = past(options.place)?;
    let show = past.iter().find(|past| past.show == options.show).ok_or_else(|| {
        let known: Vec<String> = past.iter().map(|past| past.show.to_string()).collect();
        let known = if known.is_empty() { "none is yet".to_owned() } else { known.join(", ") };
        Told(format!("no closed show has the number {}; closed are: {known}", options.show))
    })?;
    let after = after_show(&catalog, workshop.as_ref(), show);
    let object: Value = json!({ "show": show.show, "currency": show.currency.code, "after": after });
    print(options.bench.json, &object, || after_words(&after))
}

fn after_words(after: &AfterShow) -> String {
    let mut words = format!("{:<22}{:<6}{:>6}{:>6}{:>10}\n", "", "home", "sold", "left", "margin");
    for one in &after.parts {
        let home = one.home.map(|home| home.to_string()).unwrap_or_default();
        let left = one.left.map(|left| left.to_string()).unwrap_or_default();
        words += &format!("{:<22}{home:<6}{:>6}{left:>6}{:>10}\n", one.id, one.sold, sum(one.margin));
    }
    for (what, amount) in [
        ("Sold, without the tax", after.net),
        ("Parts in it", Some(after.costs.parts)),
        ("Stall fee", Some(after.fee)),
        ("Reward of the host", Some(after.reward)),
        ("Left for the work", after.left_for_work),
        ("The hours at their rate", Some(after.costs.labour)),
    ] {
        words += &format!("{what:<34}{:>16}\n", sum(amount));
    }
    if after.costs.without_cost > 0 {
        words += &format!("{} pieces are not in these costs.\n", after.costs.without_cost);
    }
    words + "Costs are those of today’s recipes and lots."
}
