//! `chatelaine rehearse`: two shows without a screen, through the real catalogue, real HTTP and the real ledger.
//!
//! | file | look here for |
//! | --- | --- |
//! | `tablet` | a guest's tablet without a screen |
//! | `story` | the desk, its ledger, and what is kept of the show in a folder |
//! | `guests` | what guests do at the tablets, and their tickets at the till |
//! | `till`, `by_hand` | a seller's acts; pieces threaded by hand, and what is put right afterwards |
//! | `party` | the next show, with a package and a reward; what came late |
//! | `account`, `ending` | the rehearsal's own account; closing a show and comparing the two |

mod account;
mod by_hand;
mod ending;
mod guests;
mod party;
mod story;
mod tablet;
mod till;

use std::{collections::BTreeMap, fs, net::SocketAddr, path::PathBuf, process::ExitCode};

use chatelaine::{
    catalog::{Catalog, read_folder},
    desk::{Desk, DeskConfig},
    ledger::Count,
    link::Kept,
    ticket::State,
};

use self::{account::Account, story::Story, tablet::Tablet, till::Till};
use super::Told;

/// So many bases are needed for both shows, of those with six or more.
const BASES_NEEDED: u32 = 24;

#[derive(clap::Args)]
pub(super) struct Options {
    /// The catalogue's folder.
    #[arg(long, default_value = "catalog")]
    catalog: PathBuf,
    /// A folder for the rehearsal's ledger; a temporary one otherwise. An earlier show in it goes on.
    #[arg(long)]
    data: Option<PathBuf>,
    /// Where pictures, tickets and the close-out go.
    #[arg(long, default_value = "rehearsal")]
    out: PathBuf,
}

impl Options {
    /// A rehearsal on `catalog`, with everything else as usual.
    #[cfg(feature = "kiosk")]
    pub(super) fn on(catalog: PathBuf) -> Self {
        Self { catalog, data: None, out: "rehearsal".into() }
    }
}

pub(super) fn run(options: &Options) -> ExitCode {
    match rehearse(options) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Told(words)) => {
            eprintln!("{words}");
            ExitCode::FAILURE
        }
    }
}

/// Says what does not agree, where it does not.
fn agree<T: PartialEq + std::fmt::Debug>(what: &str, found: &T, wanted: &T) -> Result<(), Told> {
    if found == wanted {
        Ok(())
    } else {
        Err(Told(format!("{what} does not agree: {found:?}, it should be {wanted:?}")))
    }
}

/// What there is enough of for a rehearsal.
struct Stock {
    /// Drops of which there are four or more.
    plenty: Vec<String>,
    /// A drop of which there is one.
    last: Option<String>,
    /// Bases of which there are six or more.
    bases: Vec<String>,
}

impl Stock {
    fn of(catalog: &Catalog, counts: &BTreeMap<String, Count>) -> Result<Self, Told> {
        let free = |id: &str| counts.get(id).map_or(0, |count| count.free());
        let drops = || catalog.drops.iter().map(|kind| kind.id.clone());
        let plenty: Vec<String> = drops().filter(|id| free(id) >= 4).collect();
        let last = drops().find(|id| free(id) == 1);
        let bases: Vec<String> = catalog.bases.iter().map(|base| base.id.clone()).filter(|id| free(id) >= 6).collect();
        if plenty.len() < 12 || bases.iter().map(|id| free(id)).sum::<u32>() < BASES_NEEDED {
            return Err(Told(format!(
                "a rehearsal needs twelve drops with four or more of each, and {BASES_NEEDED} bases, six or more of a kind"
            )));
        }
        Ok(Self { plenty, last, bases })
    }
}

fn rehearse(options: &Options) -> Result<(), Told> {
    let temporary = tempfile::tempdir()?;
    let data = options.data.clone().unwrap_or_else(|| temporary.path().to_owned());
    fs::create_dir_all(&options.out)?;
    let loaded = read_folder(&options.catalog)?;
    let desk = Desk::start(DeskConfig {
        catalog_dir: options.catalog.clone(),
        data_dir: data.join("desk"),
        listen: SocketAddr::from(([127, 0, 0, 1], 0)),
    })?;
    let story = Story { loaded: &loaded, out: &options.out, desk: &desk };
    let (before, show) = story.on_ledger(|ledger| Ok((ledger.counts()?, ledger.show()?.id)))?;
    say!("{}: the desk answers at {}", loaded.catalog.table.name, desk.url());
    let mut tablets = [
        Tablet::open(&desk, temporary.path().join("tablet-1"), 1)?,
        Tablet::open(&desk, temporary.path().join("tablet-2"), 2)?,
    ];
    let stock = Stock::of(&loaded.catalog, &before)?;
    let (bases, drops) = (stock.bases.clone(), stock.plenty.clone());
    let mut till = Till { story: &story, account: Account::default(), show, back_home: BTreeMap::new(), bases, drops };

    let sent = guests::send(&till, &stock, &mut tablets)?;
    guests::are_rung_up(&mut till, &sent, &stock.plenty[11])?;
    let deposit = by_hand::play(&mut till)?;
    let mut held = BTreeMap::new();
    for part in std::iter::once(&deposit.ticket.piece.base).chain(&deposit.ticket.piece.drops) {
        *held.entry(part.clone()).or_default() += 1;
    }
    let between = ending::close(&mut till, "close-out.json", &before, &held)?;
    all_done(&story, &sent)?;

    party::begin(&till)?;
    if let Some(like) = sent.first() {
        party::late(&mut till, *like)?;
    }
    party::fetched(&mut till, &deposit)?;
    party::play(&mut till)?;
    ending::close(&mut till, "close-out-party.json", &between, &BTreeMap::new())?;
    say!("Every sum, count and state agrees. Pictures, tickets and the close-outs are in {}", options.out.display());
    Ok(())
}

/// Each of the guests' tickets was handed over or let go.
fn all_done(story: &Story<'_>, sent: &[Kept]) -> Result<(), Told> {
    for kept in sent {
        let kept = *kept;
        let state = story.on_ledger(move |ledger| ledger.ticket(kept.id))?.state;
        agree(&format!("the state of {}", kept.number), &matches!(state, State::HandedOver | State::LetGo), &true)?;
    }
    Ok(())
}
