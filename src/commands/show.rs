//! `chatelaine show`: what shows came to, from the ledger, also while a desk is running.

use std::{io::Write, path::PathBuf};

use chatelaine::{
    bench::{stock_at_cost, stock_table, worth_of_stock},
    catalog::{read_folder, read_workshop},
    export::DecimalMark,
    ledger::{Ledger, ShowTable, YearTable},
};
use jiff::{civil::Date, tz::TimeZone};

use super::{Told, backup::Place};

#[derive(clap::Args)]
pub(super) struct Options {
    #[command(subcommand)]
    command: Command,
}

#[derive(clap::Subcommand)]
enum Command {
    /// Every show with its place and date.
    List {
        /// One JSON object.
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
    /// One show as a table for a spreadsheet, or all of it as one JSON object.
    Export(Export),
    /// A year for the tax return: tax by quarter and place, kinds of payment, reductions and what was put right.
    Year(Year),
    /// What lay there at cost at the end of a day.
    Stock(Stock),
}

/// How something is written, and where to.
#[derive(clap::Args)]
struct Written {
    /// One JSON object in place of a table.
    #[arg(long)]
    json: bool,
    /// Amounts with a comma (8,50), and semicolons between cells.
    #[arg(long, conflicts_with = "json")]
    comma: bool,
    /// The file to make; it must not exist yet. Without it the table is printed.
    #[arg(long)]
    to: Option<PathBuf>,
}

#[derive(clap::Args)]
struct Year {
    /// Which year.
    #[arg(value_parser = clap::value_parser!(i16).range(1900..=9998))]
    year: i16,
    /// The table: tax, payments or reductions.
    #[arg(long, default_value = "tax", conflicts_with = "json")]
    csv: String,
    #[command(flatten)]
    written: Written,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
struct Stock {
    /// The day, as 2026-12-31.
    #[arg(long)]
    on: String,
    /// The catalogue's folder.
    #[arg(long, default_value = "catalog")]
    catalog: PathBuf,
    #[command(flatten)]
    written: Written,
    #[command(flatten)]
    place: Place,
}

impl Written {
    fn mark(&self) -> DecimalMark {
        if self.comma { DecimalMark::Comma } else { DecimalMark::Point }
    }
}

/// Makes the file that was named, or prints.
fn written_to(file: Option<PathBuf>, bytes: &[u8]) -> Result<(), Told> {
    match file {
        Some(file) => {
            let made = std::fs::File::create_new(&file).and_then(|mut made| made.write_all(bytes));
            made.map_err(|error| Told(format!("{} can't be made: {error}", file.display())))
        }
        // Nobody may read any more, which is no reason to complain.
        None => {
            drop(std::io::stdout().write_all(bytes));
            Ok(())
        }
    }
}

fn year(options: Year) -> Result<(), Told> {
    let year = Ledger::beside_the_desk(&options.place.ledger()?)?.year(options.year)?;
    let bytes = if options.written.json {
        (serde_json::to_string(&year.whole())? + "\n").into_bytes()
    } else {
        let table = YearTable::from_name(&options.csv).ok_or_else(|| {
            let names = YearTable::ALL.map(YearTable::name).join(", ");
            Told(format!("there is no table “{}” of a year; there are {names}", options.csv))
        })?;
        year.table(table, options.written.mark())?
    };
    written_to(options.written.to, &bytes)
}

fn stock(options: Stock) -> Result<(), Told> {
    let day: Date = options.on.parse().map_err(|_| Told(format!("{:?} is no day; write 2026-12-31", options.on)))?;
    let end = day.tomorrow()?.to_zoned_datetime(TimeZone::system())?.timestamp();
    let stock = Ledger::beside_the_desk(&options.place.ledger()?)?.stock_before(end)?;
    let catalog = read_folder(&options.catalog)?.catalog;
    let workshop = read_workshop(&options.catalog, &catalog)?;
    let lines = stock_at_cost(&catalog, workshop.as_ref(), &stock.parts);
    let code = catalog.table.prices.currency.code;
    let bytes = if options.written.json {
        let (worth, unknown) = worth_of_stock(&lines);
        let whole = serde_json::json!({
            "on": options.on, "known_since": stock.known_since, "currency": code, "lines": lines, "worth": worth,
            "without_cost": unknown,
        });
        (serde_json::to_string(&whole)? + "\n").into_bytes()
    } else {
        stock_table(&lines, code, options.written.mark())?
    };
    written_to(options.written.to, &bytes)
}

#[derive(clap::Args)]
struct Export {
    /// The show's number.
    show: i64,
    /// All of it, as one JSON object.
    #[arg(long, conflicts_with_all = ["csv", "comma"], required_unless_present = "csv")]
    json: bool,
    /// A table for a spreadsheet: lines, tickets, money, tax or left.
    #[arg(long, value_name = "TABLE", num_args = 0..=1, default_missing_value = "lines")]
    csv: Option<String>,
    /// Amounts with a comma (8,50), and semicolons between cells.
    #[arg(long)]
    comma: bool,
    /// The file to make; it must not exist yet. Without it the table is printed.
    #[arg(long)]
    to: Option<PathBuf>,
    #[command(flatten)]
    place: Place,
}

pub(super) fn run(options: Options) -> Result<(), Told> {
    match options.command {
        Command::List { json, place } => list(json, place),
        Command::Export(export) => export_one(export),
        Command::Year(options) => year(options),
        Command::Stock(options) => stock(options),
    }
}

fn list(json: bool, place: Place) -> Result<(), Told> {
    let shows = Ledger::beside_the_desk(&place.ledger()?)?.shows(usize::MAX)?;
    if json {
        say!("{}", serde_json::to_string(&serde_json::json!({ "shows": shows }))?);
        return Ok(());
    }
    for show in shows {
        let place = show.about.place.unwrap_or_default();
        let kind = show.about.kind.map(|kind| kind.word()).unwrap_or_default();
        let end = show.closed.map_or_else(|| "running".to_owned(), |closed| format!("closed {closed}"));
        say!("{:>4}  opened {}  {end}  {kind}  {place}", show.id, show.opened);
    }
    Ok(())
}

fn export_one(options: Export) -> Result<(), Told> {
    let report = Ledger::beside_the_desk(&options.place.ledger()?)?.report(options.show)?;
    let report = report.ok_or_else(|| Told(format!("there is no show {} in this ledger", options.show)))?;
    let bytes = match options.csv {
        None => (serde_json::to_string(&report)? + "\n").into_bytes(),
        Some(name) => {
            let table = ShowTable::from_name(&name).ok_or_else(|| {
                let names = ShowTable::ALL.map(ShowTable::name).join(", ");
                Told(format!("there is no table “{name}” of a show; there are {names}"))
            })?;
            report.table(table, if options.comma { DecimalMark::Comma } else { DecimalMark::Point })?
        }
    };
    written_to(options.to, &bytes)
}
