//! `chatelaine show`: what shows came to, from the ledger, also while a desk is running.

use std::{io::Write, path::PathBuf};

use chatelaine::{
    export::DecimalMark,
    ledger::{Ledger, ShowTable},
};

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
    match options.to {
        Some(file) => {
            let made = std::fs::File::create_new(&file).and_then(|mut made| made.write_all(&bytes));
            made.map_err(|error| Told(format!("{} can't be made: {error}", file.display())))?;
        }
        // Nobody may read any more, which is no reason to complain.
        None => drop(std::io::stdout().write_all(&bytes)),
    }
    Ok(())
}
