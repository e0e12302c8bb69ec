//! `chatelaine prep lots`, `bought`, `strike` and `undo`: the lots in parts.ron, written by the desk's own editor, which keeps
//! every other byte of the file, and the way back.

use std::path::Path;

use chatelaine::{
    bench::{PartNow, parts_now, taken_back},
    catalog::{
        Act, Catalog, EditRefusal, LotAmount, LotKey, LotTold, PartCount, PutAway, Seen, TableEditor, There, Workshop,
        read_folder, read_workshop, written_length,
    },
    craft::{Day, Length},
    ledger::Ledger,
    money::parse_price,
    prep::cuts::Tenths,
};
use jiff::Timestamp;
use serde_json::{Value, json};

use super::{Bench, Place, Told, print};

/// More spools than come at once.
const MOST_SPOOLS: i64 = 100;

#[derive(clap::Args)]
pub(super) struct Lots {
    #[command(flatten)]
    bench: Bench,
}

#[derive(clap::Args)]
pub(super) struct Bought {
    #[command(flatten)]
    which: Which,
    /// How much came: pieces, or the length as in 20m.
    #[arg(long)]
    amount: String,
    /// How many of the pieces, or of the millimetres, came broken.
    #[arg(long, default_value_t = 0)]
    broken: u32,
    /// What all of it cost.
    #[arg(long)]
    price: String,
    /// The supplier's test report or declaration: which one, and where it lies.
    #[arg(long)]
    paper: Option<String>,
    /// On how many alike spools a length came.
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=MOST_SPOOLS))]
    spools: u32,
    /// Leave drawer and spools as they are: they are counted by hand.
    #[arg(long)]
    leave_drawer: bool,
    #[command(flatten)]
    at: At,
}

#[derive(clap::Args)]
pub(super) struct Strike {
    #[command(flatten)]
    which: Which,
    #[command(flatten)]
    at: At,
}

#[derive(clap::Args)]
pub(super) struct Undo {
    #[command(flatten)]
    at: At,
}

/// By what a lot is known.
#[derive(clap::Args)]
struct Which {
    /// The part, as parts.ron calls it.
    part: String,
    /// What the supplier calls the lot.
    #[arg(long)]
    lot: String,
    /// The day on which it came, as in 2026-03-02.
    #[arg(long)]
    day: String,
}

/// Whose files are changed, and where their earlier versions are kept.
#[derive(clap::Args)]
pub(super) struct At {
    #[command(flatten)]
    pub(super) bench: Bench,
    #[command(flatten)]
    pub(super) place: Place,
}

impl Which {
    fn day(&self) -> Result<Day, Told> {
        let day = Day::from_iso(&self.day).filter(|day| day.day.is_some());
        day.ok_or_else(|| Told(format!("{:?} is no day; write year, month and day, as in 2026-03-02", self.day)))
    }
}

/// A lot with its part's name and what one of it cost.
fn object(workshop: &Workshop, told: &LotTold) -> Value {
    let (count, length) = match told.amount {
        LotAmount::Pieces(count) => (Some(count), None),
        LotAmount::Length(length) => (None, Some(length.mm())),
    };
    json!({
        "part": told.part, "name": workshop.part(&told.part).map(|part| &part.name), "lot": told.lot, "day": told.day,
        "count": count, "length_mm": length, "broken": told.broken, "price": told.price, "paper": told.paper,
    })
}

fn words(told: &LotTold) -> String {
    let amount = match told.amount {
        LotAmount::Pieces(count) => count.to_string(),
        LotAmount::Length(length) => written_length(length),
    };
    let paper = told.paper.as_deref().unwrap_or("no test report or declaration is noted");
    let broken = if told.broken > 0 { format!(", broken {}", told.broken) } else { String::new() };
    format!("{}  {:<16}{:<16}{amount}{broken} for {}; {paper}", told.day, told.part, told.lot, told.price)
}

fn is_by_length(workshop: &Workshop, part: &str) -> bool {
    workshop.part(part).is_some_and(|part| matches!(part.there, There::Spools { .. }))
}

pub(super) fn listed(options: &Lots) -> Result<(), Told> {
    let (_, workshop) = options.bench.workshop()?;
    let lots = workshop.lots.iter().map(|lot| LotTold::of(lot, is_by_length(&workshop, &lot.part)));
    let lots: Vec<LotTold> = lots.collect();
    let rows: Vec<Value> = lots.iter().map(|told| object(&workshop, told)).collect();
    print(options.bench.json, &json!({ "lots": rows }), || lots.iter().map(words).collect::<Vec<_>>().join("\n"))
}

/// What was typed, read as the part goes: by the piece or by the length.
fn told(options: &Bought, catalog: &Catalog, workshop: &Workshop) -> Result<LotTold, Told> {
    let part = workshop.part(&options.which.part).ok_or_else(|| {
        let known: Vec<&str> = workshop.parts.iter().map(|part| part.id.as_str()).collect();
        Told(format!("no part is called {:?}; parts.ron has {}", options.which.part, known.join(", ")))
    })?;
    let amount = match part.there {
        There::Spools { .. } => LotAmount::Length(Tenths::no_longer(options.amount.parse::<Length>()?)),
        There::Pieces(_) => {
            let count = options.amount.parse().ok().filter(|count| *count > 0);
            let wrong = || Told(format!("{:?} is no number of pieces; write a whole number from 1", options.amount));
            LotAmount::Pieces(count.ok_or_else(wrong)?)
        }
    };
    let currency = catalog.table.prices.currency;
    let mut price = parse_price(&options.price, currency).map_err(|error| Told(error.to_string()))?;
    price.rescale(currency.digits);
    Ok(LotTold {
        part: part.id.clone(),
        lot: options.which.lot.trim().to_owned(),
        day: options.which.day()?,
        amount,
        broken: options.broken,
        price,
        paper: options.paper.as_ref().map(|paper| paper.trim().to_owned()).filter(|paper| !paper.is_empty()),
    })
}

/// What cuts and sales have left of a part, where that is not what the file says.
pub(super) fn used_since(ledger: &Path, workshop: &Workshop, part: &str) -> Result<Option<PartCount>, Told> {
    if !ledger.exists() {
        return Ok(None);
    }
    let pages = parts_now(&Ledger::beside_the_desk(ledger)?)?;
    let now = PartNow::of(workshop, part, &pages);
    Ok(now.filter(|now| now.now != now.file).map(|now| now.now))
}

/// Does one act to the files of the table, with what was done in words.
pub(super) fn change(bench: &Bench, ledger: &Path, act: Act, words: &str) -> Result<bool, Told> {
    let loaded = read_folder(&bench.catalog)?;
    let at = Timestamp::now().to_string();
    Ok(editor(bench, ledger)?.change(&[act], &Seen::new(), &loaded.pictures, (&at, words))?)
}

fn editor(bench: &Bench, ledger: &Path) -> Result<TableEditor, Told> {
    let versions = ledger.with_file_name("versions");
    let told = |error| Told(format!("earlier versions can't be kept in {}: {error}", versions.display()));
    TableEditor::open_beside(bench.catalog.clone(), versions.clone()).map_err(told)
}

pub(super) fn bought(options: Bought) -> Result<(), Told> {
    let (catalog, workshop) = options.at.bench.workshop()?;
    let told = told(&options, &catalog, &workshop)?;
    let (bench, ledger, spools) = (options.at.bench, options.at.place.ledger()?, options.spools);
    let put_away = if options.leave_drawer {
        None
    } else {
        Some(told.put_away(spools, used_since(&ledger, &workshop, &told.part)?))
    };
    let said = put_away.clone();
    let act = Act::WriteLot { told: told.clone(), put_away };
    let is_new = change(&bench, &ledger, act, &format!("lot {} written down", told.lot))?;
    let answer = json!({ "written": is_new, "lot": object(&workshop, &told), "there": there(&bench, &told.part)? });
    print(bench.json, &answer, || {
        let mut words = if is_new { words(&told) } else { format!("{}\nThat was written down before.", words(&told)) };
        match said.filter(|_| is_new) {
            Some(PutAway::Pieces { more, .. }) => words += &format!("\n{more} more are in the drawer."),
            Some(PutAway::Spools { more, .. }) => words += &format!("\n{} more lie among the spools.", more.len()),
            None => {}
        }
        words
    })
}

/// What lies there of a part by the file as it is now: pieces, or the spools' lengths.
fn there(bench: &Bench, part: &str) -> Result<Value, Told> {
    let catalog = read_folder(&bench.catalog)?.catalog;
    let workshop = read_workshop(&bench.catalog, &catalog)?;
    Ok(match workshop.as_ref().and_then(|workshop| workshop.part(part)).map(|part| &part.there) {
        Some(There::Pieces(count)) => json!({ "count": count }),
        Some(There::Spools { lengths, .. }) => {
            json!({ "spools_mm": lengths.iter().map(|one| one.mm()).collect::<Vec<f64>>() })
        }
        None => Value::Null,
    })
}

pub(super) fn strike(options: Strike) -> Result<(), Told> {
    let key = LotKey {
        part: options.which.part.clone(),
        lot: options.which.lot.trim().to_owned(),
        day: options.which.day()?.to_string(),
    };
    let (bench, ledger) = (options.at.bench, options.at.place.ledger()?);
    let lot = key.lot.clone();
    change(&bench, &ledger, Act::StrikeLot { key }, &format!("lot {lot} struck out"))?;
    print(bench.json, &json!({ "struck": lot }), || {
        format!("Lot {lot} is struck out; drawer and spools stay as they are. chatelaine prep undo takes that back.")
    })
}

pub(super) fn undo(options: Undo) -> Result<(), Told> {
    let (bench, ledger) = (options.at.bench, options.at.place.ledger()?);
    // Where nobody has changed anything there is nothing to make a folder for.
    if !ledger.with_file_name("versions").is_dir() {
        return Err(Told("there is nothing to undo".to_owned()));
    }
    let editor = editor(&bench, &ledger)?;
    stays_used(&bench, &ledger, &editor)?;
    let undone = editor.undo(&Timestamp::now().to_string())?;
    print(bench.json, &json!({ "undone": undone.words, "at": undone.at }), || {
        format!("Undone: {} ({})", undone.words, undone.at)
    })
}

/// Refuses where taking the last change back would let something lie there again that was cut or sold since: what has to be
/// kept of that is the desk's to keep.
fn stays_used(bench: &Bench, ledger: &Path, editor: &TableEditor) -> Result<(), Told> {
    if !ledger.exists() {
        return Ok(());
    }
    let (catalog, after) = bench.read()?;
    let (Some(before), Some(after)) = (editor.workshop_undone(&catalog)?, after) else { return Ok(()) };
    let pages = parts_now(&Ledger::beside_the_desk(ledger)?)?;
    match taken_back(&before, &after, &pages) {
        Ok(keep) if keep.is_empty() => Ok(()),
        Ok(_) => {
            Err(Told("something was cut or sold since that change; undo it at the desk, which keeps that".to_owned()))
        }
        Err(used) => Err(Told(EditRefusal::UsedSince(used.part).to_string())),
    }
}
