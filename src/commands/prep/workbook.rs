//! `chatelaine prep packing`, `plans`, `orders` and `made`: what the maker fills in at the bench, as the desk's pages have it.

use chatelaine::{
    bench::{BenchCheck, MADE, Made, ORDERS, Order, PACKING, PLANNED, PackItem, PlannedShow, by_day, packing},
    ledger::{KeptPage, Ledger},
};
use jiff::{Timestamp, tz::TimeZone};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::{Place, Told, print};

#[derive(clap::Args)]
pub(super) struct Look {
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct LookAtMade {
    /// Only what was made of this drop or base, by id.
    of: Option<String>,
    /// Only what a lot may be in, as the supplier calls it.
    #[arg(long)]
    lot: Option<String>,
    #[command(flatten)]
    look: Look,
}

/// The pages of a kind; a maker without a ledger has none.
fn pages<T: DeserializeOwned>(place: Place, kind: &str) -> Result<Vec<KeptPage<T>>, Told> {
    let file = place.ledger()?;
    if !file.exists() {
        return Ok(vec![]);
    }
    Ok(Ledger::beside_the_desk(&file)?.pages(kind)?)
}

fn today() -> String {
    Timestamp::now().to_zoned_datetime(TimeZone::system()).date().to_string()
}

/// Lines of words, or what is said where there are none.
fn lines(all: Vec<String>, none: &str) -> String {
    if all.is_empty() { none.to_owned() } else { all.join("\n") }
}

pub(super) fn packed(options: Look) -> Result<(), Told> {
    let items = packing(pages::<PackItem>(options.place, PACKING)?);
    let left = items.iter().filter(|kept| !kept.page.packed).count();
    let rows: Vec<Value> = items
        .iter()
        .map(|kept| {
            let PackItem { what, spare, packed, forgotten, .. } = &kept.page;
            json!({ "what": what, "spare": spare, "packed": packed, "forgotten": forgotten })
        })
        .collect();
    print(options.json, &json!({ "left": left, "items": rows }), || {
        let all = items.iter().map(|kept| {
            let spare = if kept.page.spare { " (spare)" } else { "" };
            let forgotten = match kept.page.forgotten {
                0 => String::new(),
                1 => "  forgotten once".to_owned(),
                n => format!("  forgotten {n} times"),
            };
            format!("[{}] {}{spare}{forgotten}", if kept.page.packed { "x" } else { " " }, kept.page.what)
        });
        lines(all.collect(), "Nothing is on the list; the desk's page Packing adds the usual things.")
    })
}

pub(super) fn planned(options: Look) -> Result<(), Told> {
    let mut shows = by_day(pages::<PlannedShow>(options.place, PLANNED)?, |show| show.day);
    shows.retain(|kept| !kept.page.gone);
    let today = today();
    let over = |show: &PlannedShow| show.day.to_string() < today;
    let rows: Vec<Value> = shows
        .iter()
        .map(|kept| {
            let show = &kept.page;
            json!({
                "day": show.day, "place": show.place, "fee": show.fee, "deadline": show.deadline,
                "permit": show.permit, "note": show.note, "over": over(show),
            })
        })
        .collect();
    print(options.json, &json!({ "shows": rows }), || {
        let all = shows.iter().map(|kept| {
            let show = &kept.page;
            let mut words = format!("{}  {}", show.day, show.place);
            words += if over(show) { " (over)" } else { "" };
            words += &show.fee.map(|fee| format!("  fee {fee}")).unwrap_or_default();
            words += &show.deadline.map(|day| format!("  deadline {day}")).unwrap_or_default();
            if !show.permit.is_empty() {
                words += &format!("  permit {}", show.permit);
            }
            if !show.note.is_empty() {
                words += &format!("  {}", show.note);
            }
            words
        });
        lines(all.collect(), "No show is planned.")
    })
}

pub(super) fn ordered(options: Look) -> Result<(), Told> {
    let mut orders = by_day(pages::<Order>(options.place, ORDERS)?, |order| order.due);
    orders.retain(|kept| !kept.page.gone);
    let today = today();
    let late = |order: &Order| !order.done && order.due.to_string() < today;
    let rows: Vec<Value> = orders
        .iter()
        .map(|kept| {
            let order = &kept.page;
            json!({
                "due": order.due, "agreed": order.agreed, "number": order.number, "done": order.done, "late": late(order),
            })
        })
        .collect();
    print(options.json, &json!({ "orders": rows }), || {
        let all = orders.iter().map(|kept| {
            let order = &kept.page;
            let state = match (order.done, late(order)) {
                (true, _) => "x",
                (false, true) => "!",
                (false, false) => " ",
            };
            format!("[{state}] {}  {}  {}", order.due, order.agreed, order.number).trim_end().to_owned()
        });
        lines(all.collect(), "Nothing is ordered.")
    })
}

pub(super) fn made(options: LookAtMade) -> Result<(), Told> {
    let LookAtMade { of, lot, look } = options;
    let mut made = pages::<Made>(look.place, MADE)?;
    made.retain(|kept| of.as_ref().is_none_or(|of| kept.page.of == *of));
    let in_it = |made: &Made, lot: &str| made.lots.values().flatten().any(|one| one.eq_ignore_ascii_case(lot));
    made.retain(|kept| lot.as_ref().is_none_or(|lot| in_it(&kept.page, lot)));
    let not_checked = |made: &Made| -> Vec<&str> {
        let missing = BenchCheck::ALL.into_iter().filter(|check| !made.checks.contains(check));
        missing.map(BenchCheck::code).collect()
    };
    let rows: Vec<Value> = made
        .iter()
        .map(|kept| {
            let Made { of, count, lots, checks, note } = &kept.page;
            json!({
                "at": kept.at, "of": of, "count": count, "lots": lots, "checked": checks,
                "not_checked": not_checked(&kept.page), "note": note,
            })
        })
        .collect();
    print(look.json, &json!({ "made": rows }), || {
        let all = made.iter().map(|kept| {
            let page = &kept.page;
            let lots: Vec<&str> = page.lots.values().flatten().map(String::as_str).collect();
            let missing = not_checked(page);
            let mut words = format!("{}  {} of {}", kept.at.strftime("%Y-%m-%d"), page.count, page.of);
            if !lots.is_empty() {
                words += &format!("  lots {}", lots.join(", "));
            }
            words += &if missing.is_empty() {
                "  all checked".into()
            } else {
                format!("  not checked: {}", missing.join(", "))
            };
            if !page.note.is_empty() {
                words += &format!("  {}", page.note);
            }
            words
        });
        lines(all.collect(), "Nothing of that is noted.")
    })
}
