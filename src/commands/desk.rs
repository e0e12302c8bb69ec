//! `chatelaine desk`.

use std::{net::SocketAddr, path::PathBuf, process::ExitCode};

use chatelaine::{
    desk::{Desk, DeskConfig},
    link::DESK_PORT,
};

#[derive(clap::Args)]
pub(super) struct Options {
    /// The catalogue's folder; without one, catalog/ where it is here, and else your own table in the folder for data, which
    /// begins empty.
    #[arg(long)]
    catalog: Option<PathBuf>,
    /// The folder for ledger and copies; your own data folder otherwise.
    #[arg(long)]
    data: Option<PathBuf>,
    /// Where to answer.
    #[arg(long, default_value_t = SocketAddr::from(([0, 0, 0, 0], DESK_PORT)))]
    listen: SocketAddr,
    /// Forget the PIN, if nobody knows it any more, and end every session; another is chosen in a browser then.
    #[arg(long)]
    reset_pin: bool,
}

pub(super) fn run(options: Options) -> ExitCode {
    super::log();
    let data_dir = match super::data_dir(options.data, "desk") {
        Ok(dir) => dir,
        Err(super::Told(words)) => {
            eprintln!("{words}");
            return ExitCode::from(2);
        }
    };
    let catalog_dir = match super::table_dir(options.catalog, &data_dir) {
        Ok(dir) => dir,
        Err(super::Told(words)) => {
            eprintln!("{words}");
            return ExitCode::from(2);
        }
    };
    let config = DeskConfig { catalog_dir, data_dir, listen: options.listen };
    let desk = match Desk::start(config) {
        Ok(desk) => desk,
        Err(error) => {
            eprintln!("{error}");
            return ExitCode::from(2);
        }
    };
    if options.reset_pin
        && let Err(error) = desk.forget_pin()
    {
        eprintln!("{error}");
        return ExitCode::from(2);
    }
    say!("The desk answers at {} (port {} of this machine's address for others).", desk.url(), desk.addr().port());
    say!("Setting the PIN from another machine needs the setup code {}.", desk.setup_code());
    if options.reset_pin {
        say!("The PIN is forgotten and everybody is signed out; choose another one at {}.", desk.url());
    }
    say!("Ctrl-C ends it.");
    super::ending::wait(true);
    desk.stop();
    ExitCode::SUCCESS
}
