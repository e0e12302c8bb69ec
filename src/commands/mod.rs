//! The command line: which role, which options.
//!
//! | file | look here for |
//! | --- | --- |
//! | `kiosk`, `window` | `chatelaine kiosk` and `chatelaine` alone; what happens when the window fails |
//! | `desk` | `chatelaine desk` |
//! | `backup` | `chatelaine backup`, `chatelaine restore` and `chatelaine verify` |
//! | `show` | `chatelaine show`: lists and files of shows |
//! | `labels` | `chatelaine labels`: price marks and other paper for the table |
//! | `prep` | `chatelaine prep`: how many to make, cuts, parts, costs |
//! | `tray` | `chatelaine tray`: a tray by one photo, as files |
//! | `rehearse` | `chatelaine rehearse`: a whole show without a screen |
//! | `answers`, `hang` | the computing commands, one answer each |
//! | `ending` | the orderly end |

/// Prints a line for whoever still reads. Nobody may, which is no reason to stop.
macro_rules! say {
    ($($words:tt)*) => {{
        use std::io::Write;
        let _ = writeln!(std::io::stdout(), $($words)*);
    }};
}

mod answers;
mod backup;
mod desk;
mod ending;
mod hang;
#[cfg(feature = "kiosk")]
mod kiosk;
mod labels;
mod prep;
mod rehearse;
mod show;
mod tray;
mod window;

use std::{
    path::{Path, PathBuf},
    process::ExitCode,
};

use chatelaine::{
    catalog::{begin_empty, is_there},
    caution::Region,
    money::Currency,
};
use clap::{Parser, Subcommand};

#[derive(Parser)]
#[command(
    name = "chatelaine",
    version,
    about = "The make-your-own jewellery table",
    args_conflicts_with_subcommands = true,
    after_help = "Examples:\n  chatelaine                       a kiosk's window and a desk, on the catalogue in catalog/\n  \
                  chatelaine desk                  the seller's desk on the catalogue in catalog/\n  \
                  chatelaine rehearse --out show   a whole show without a screen\n  \
                  chatelaine backup --to FILE      the ledger in one file, also while a desk is running\n  \
                  chatelaine check                 every mistake in the catalogue, with its place"
)]
struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
    #[cfg(feature = "kiosk")]
    #[command(flatten)]
    together: kiosk::Together,
}

#[derive(Subcommand)]
enum Command {
    /// The seller's desk: the ledger, the pages, the interface for kiosks.
    Desk(desk::Options),
    /// A guest's tablet on a desk elsewhere.
    #[cfg(feature = "kiosk")]
    Kiosk(kiosk::Options),
    /// A guest's tablet; this program was built without it.
    #[cfg(not(feature = "kiosk"))]
    Kiosk,
    /// A whole show without a screen: guests, a queue, the last one of something, the close-out.
    Rehearse(rehearse::Options),
    /// Copy the ledger into one file, also while a desk is running, and read the copy back.
    Backup(backup::Backup),
    /// Let a backup take the ledger's place, while no desk is running; what it replaces is kept beside it.
    Restore(backup::Restore),
    /// Read a whole ledger or backup and tell what is wrong with it.
    Verify(backup::Verify),
    /// What shows came to, in lists and files, also while a desk is running.
    Show(show::Options),
    /// Price marks, tags, maps of the trays, a sheet to set up by and a price list, as one PDF file.
    Labels(labels::Options),
    /// Before and after a show: how many to make, cuts, parts to buy, costs, also while a desk is running.
    Prep(prep::Options),
    /// Read the catalogue and tell every mistake with its place.
    Check(answers::Catalogued),
    /// Cut every compartment of a tray out of one photo.
    Tray(tray::Options),
    /// What a piece costs.
    Quote(answers::PieceFile),
    /// How a piece, or a bare chain, hangs.
    Hang(hang::Options),
    /// What to be careful about.
    Caution(answers::Caution),
    /// Whether a body fits the small-parts cylinder.
    Gauge(answers::Body),
    /// Whether a ring goes over a closed end.
    Fit(answers::Fit),
}

/// Something the person at the terminal can mend, in words.
pub(super) struct Told(String);

impl<E: std::fmt::Display> From<E> for Told {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}

/// Runs the program; 2 is bad input, 1 anything else that went wrong.
pub(super) fn run() -> ExitCode {
    let cli = Cli::parse();
    let Some(command) = cli.command else {
        #[cfg(feature = "kiosk")]
        return kiosk::together(cli.together);
        #[cfg(not(feature = "kiosk"))]
        return without_kiosk();
    };
    let outcome = match command {
        #[cfg(feature = "kiosk")]
        Command::Kiosk(options) => return kiosk::run(options),
        #[cfg(not(feature = "kiosk"))]
        Command::Kiosk => return without_kiosk(),
        Command::Desk(options) => return desk::run(options),
        Command::Rehearse(options) => return rehearse::run(&options),
        Command::Backup(options) => backup::backup(options),
        Command::Restore(options) => backup::restore(options),
        Command::Verify(options) => backup::verify(options),
        Command::Show(options) => show::run(options),
        Command::Labels(options) => labels::run(&options),
        Command::Prep(options) => prep::run(options),
        Command::Check(options) => answers::check(&options),
        Command::Tray(options) => tray::run(&options),
        Command::Quote(options) => answers::quote(&options),
        Command::Hang(options) => hang::run(&options),
        Command::Caution(options) => answers::caution(&options),
        Command::Gauge(options) => answers::gauge(&options),
        Command::Fit(options) => answers::fit(&options),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(Told(words)) => {
            eprintln!("{words}");
            ExitCode::from(2)
        }
    }
}

#[cfg(not(feature = "kiosk"))]
fn without_kiosk() -> ExitCode {
    eprintln!("This program was built without the kiosk; build it with the feature `kiosk`, or run `chatelaine desk`.");
    ExitCode::from(2)
}

/// The user's own folder for `part` of the program, or the one asked for.
fn data_dir(asked: Option<PathBuf>, part: &str) -> Result<PathBuf, Told> {
    use etcetera::BaseStrategy;
    if let Some(dir) = asked {
        return Ok(dir);
    }
    let strategy = etcetera::choose_base_strategy()
        .map_err(|error| Told(format!("there is no folder for data ({error}); name one with --data")))?;
    Ok(strategy.data_dir().join("chatelaine").join(part))
}

/// The folder of the table that is asked for; without asking, the one that is here, and else the seller's own in the desk's
/// folder `desk_dir`, begun empty where there is none yet.
fn table_dir(asked: Option<PathBuf>, desk_dir: &Path) -> Result<PathBuf, Told> {
    if let Some(asked) = asked {
        return Ok(asked);
    }
    let here = PathBuf::from(HERE);
    if is_there(&here) {
        return Ok(here);
    }
    let own = desk_dir.join("table");
    if !is_there(&own) {
        let currency = Currency::from_code("USD").ok_or_else(|| Told("there is no currency".into()))?;
        let cannot = |error| Told(format!("no table can be begun in {}: {error}", own.display()));
        begin_empty(&own, currency, Region::US).map_err(cannot)?;
        say!("There is no {HERE}/ here, so your own table lies in {}.", own.display());
    }
    Ok(own)
}

/// Where a catalogue is looked for first.
const HERE: &str = "catalog";

fn log() {
    let filter = tracing_subscriber::EnvFilter::try_from_default_env()
        .unwrap_or_else(|_| tracing_subscriber::EnvFilter::new("warn"));
    tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).init();
}
