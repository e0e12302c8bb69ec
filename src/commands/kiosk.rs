//! `chatelaine kiosk`, and `chatelaine` alone: a kiosk's window, and a desk in the same process.

use std::{
    net::SocketAddr,
    path::PathBuf,
    process::ExitCode,
    sync::{
        Arc, Weak,
        atomic::{AtomicBool, Ordering},
    },
};

use chatelaine::{
    desk::{Desk, DeskConfig},
    kiosk::{self, DeskHere, KioskOptions, WakeCell},
    link::{DESK_PORT, Link, LinkConfig, Pairing, kept_pairing, own_key},
};

use super::{
    Told, data_dir, rehearse,
    window::{Ended, run_guarded, size},
};

#[derive(clap::Args)]
pub(super) struct Window {
    /// Take the whole screen.
    #[arg(long)]
    fullscreen: bool,
    /// Size of the window, as in 1280x800.
    #[arg(long, value_parser = size)]
    window: Option<(u32, u32)>,
    /// Language of a new guest: en, es, fr or de.
    #[arg(long)]
    language: Option<String>,
}

#[derive(clap::Args)]
pub(super) struct Options {
    /// The desk's address, as in http://192.168.4.1:7345; the desk this tablet was paired with otherwise.
    #[arg(long)]
    desk: Option<String>,
    /// The pairing code from the desk's Kiosks page.
    #[arg(long, requires = "desk")]
    code: Option<String>,
    /// The tablet's folder for catalogue, pictures and outbox; your own data folder otherwise.
    #[arg(long)]
    data: Option<PathBuf>,
    #[command(flatten)]
    window: Window,
}

#[derive(clap::Args)]
pub(super) struct Together {
    /// The catalogue's folder; without one, catalog/ where it is here, and else your own table, which begins empty.
    #[arg(long)]
    catalog: Option<PathBuf>,
    /// The folder for everything that is kept; your own data folder otherwise.
    #[arg(long)]
    data: Option<PathBuf>,
    /// Where the desk answers.
    #[arg(long, default_value_t = SocketAddr::from(([0, 0, 0, 0], DESK_PORT)))]
    listen: SocketAddr,
    #[command(flatten)]
    window: Window,
}

/// A window on the tablet's folder.
fn open(
    dir: PathBuf,
    pairing: Option<Pairing>,
    code: Option<(String, String)>,
    window: Window,
    desk: Option<&Desk>,
) -> Result<Ended, Told> {
    let wake = WakeCell::default();
    let bell = wake.clone();
    let settings_file = Some(dir.join("settings.json"));
    let (link, news) = Link::open(LinkConfig { dir, pairing, wake: Arc::new(move || bell.ring()) })?;
    if let Some((desk, code)) = code {
        link.pair(desk, code);
    }
    let desk_here = desk.map(|desk| {
        let come_back = Arc::new(AtomicBool::new(false));
        let (asked, bell) = (Arc::clone(&come_back), wake.clone());
        desk.set_way_back(move || {
            asked.store(true, Ordering::Relaxed);
            bell.ring();
        });
        DeskHere { address: desk.url(), outward: desk.address_outward(), come_back }
    });
    let Window { fullscreen, window, language } = window;
    let options = KioskOptions { link, news, window, fullscreen, language, settings_file, wake, desk_here };
    Ok(run_guarded(move || kiosk::run(options)))
}

pub(super) fn run(options: Options) -> ExitCode {
    let opened = data_dir(options.data, "kiosk").and_then(|dir| {
        let kept = kept_pairing(&dir);
        let pairing = match (&options.desk, kept) {
            // The key stays good where only the desk's address has changed.
            (Some(desk), Some(kept)) if options.code.is_none() => Some(Pairing { desk: desk.clone(), ..kept }),
            (_, kept) => kept,
        };
        open(dir, pairing, options.desk.zip(options.code), options.window, None)
    });
    match opened {
        Ok(Ended::Left) => ExitCode::SUCCESS,
        Ok(Ended::Missing(what)) => {
            eprintln!("{what}");
            ExitCode::from(3)
        }
        Ok(Ended::Failed) => {
            eprintln!("The kiosk's window has failed. Start it again; everything that was sent is kept.");
            ExitCode::FAILURE
        }
        Err(Told(words)) => {
            eprintln!("{words}");
            ExitCode::from(2)
        }
    }
}

/// Desk and kiosk in one process; where there is no window to be had, the rehearsal instead.
pub(super) fn together(options: Together) -> ExitCode {
    match window_beside_a_desk(options.catalog.clone(), options.data, options.listen, options.window) {
        Ok(Ended::Left) => ExitCode::SUCCESS,
        Ok(Ended::Missing(what)) => {
            eprintln!("{what} Going on as a rehearsal.");
            rehearse::run(&rehearse::Options::on(options.catalog.unwrap_or_else(|| super::HERE.into())))
        }
        Ok(Ended::Failed) => ExitCode::FAILURE,
        Err(Told(words)) => {
            eprintln!("{words}");
            ExitCode::from(2)
        }
    }
}

/// Closes the desk and ends the program when the system asks for that; Ctrl-C is the window's.
fn close_at_the_end(desk: Weak<Desk>) {
    let waiting = std::thread::Builder::new().name("ending".into()).spawn(move || {
        super::ending::wait(false);
        if let Some(desk) = desk.upgrade() {
            desk.close();
        }
        std::process::exit(0);
    });
    if let Err(error) = waiting {
        tracing::warn!("the end can't be waited for: {error}");
    }
}

fn window_beside_a_desk(
    catalog: Option<PathBuf>,
    data: Option<PathBuf>,
    listen: SocketAddr,
    window: Window,
) -> Result<Ended, Told> {
    let (desk_dir, kiosk_dir) = match data {
        Some(data) => (data.join("desk"), data.join("kiosk")),
        None => (data_dir(None, "desk")?, data_dir(None, "kiosk")?),
    };
    let catalog_dir = super::table_dir(catalog, &desk_dir)?;
    let desk = Arc::new(Desk::start(DeskConfig { catalog_dir, data_dir: desk_dir, listen })?);
    close_at_the_end(Arc::downgrade(&desk));
    say!("The desk answers at {}; its setup code is {}.", desk.url(), desk.setup_code());
    let kept = kept_pairing(&kiosk_dir);
    let pairing = match kept.clone().filter(|kept| desk.knows(kept)) {
        Some(kept) => Pairing { desk: desk.url(), ..kept },
        None => desk.pair_local_again(own_key(&kiosk_dir)?, kept.as_ref())?,
    };
    let ended = open(kiosk_dir, Some(pairing), None, window, Some(&desk))?;
    // Sellers go on working, whatever becomes of the screens.
    if ended == Ended::Failed {
        eprintln!(
            "The kiosk's window has failed; the desk goes on at {}. `chatelaine kiosk` opens the window again; Ctrl-C ends \
             the desk.",
            desk.url()
        );
        super::ending::wait(true);
    }
    Ok(ended)
}
