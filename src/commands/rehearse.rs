//! `chatelaine rehearse`: a whole show without a screen, through the real catalogue, real HTTP and the real ledger.

use std::{
    collections::BTreeMap,
    fs,
    net::SocketAddr,
    path::{Path, PathBuf},
    process::ExitCode,
    sync::{Arc, mpsc::RecvTimeoutError},
    time::Duration,
};

use chatelaine::{
    catalog::Loaded,
    catalog::read_folder,
    craft::{Change, History, Piece, Wearer},
    desk::{Desk, DeskConfig},
    ledger::{CloseOut, Count, LedgerError, Part, Ticket},
    link::{Draft, Kept, Link, LinkConfig, News, NewsReceiver, Snapshot},
    portrait::portrait_png,
    ticket::{State, Tender},
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::Told;

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

/// A guest's tablet without a screen.
struct Tablet {
    link: Link,
    news: NewsReceiver,
    snapshot: Arc<Snapshot>,
}

impl Tablet {
    fn open(desk: &Desk, dir: PathBuf) -> Result<Self, Told> {
        let (link, news) = Link::open(LinkConfig { dir, pairing: Some(desk.pair_local()?), wake: Arc::new(|| {}) })?;
        let snapshot = loop {
            match news.recv_timeout(Duration::from_secs(10))? {
                News::Snapshot(snapshot) => break snapshot,
                _ => continue,
            }
        };
        Ok(Self { link, news, snapshot })
    }

    fn draft(&self, piece: Piece) -> Result<Draft, Told> {
        let quote = self.snapshot.catalog.quote(&piece)?;
        let verdict = self.snapshot.catalog.cautions(&piece)?;
        let grown_up_confirmed = piece.wearer.is_child() && !verdict.cautions.is_empty();
        Ok(Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed })
    }

    /// Sends a piece and waits for what became of it.
    fn send(&self, piece: Piece) -> Result<(Kept, News), Told> {
        let kept = self.link.send(self.draft(piece)?)?;
        loop {
            let news = match self.news.recv_timeout(Duration::from_secs(10)) {
                Ok(news) => news,
                Err(RecvTimeoutError::Timeout) => {
                    return Err(Told(format!("nothing was heard of ticket {}", kept.number)));
                }
                Err(error) => return Err(error.into()),
            };
            match &news {
                News::Delivered { kept: of, .. }
                | News::Waiting(of)
                | News::Short { kept: of, .. }
                | News::Refused { kept: of, .. }
                    if of.id == kept.id =>
                {
                    return Ok((kept, news));
                }
                _ => {}
            }
        }
    }
}

struct Story<'a> {
    loaded: &'a Loaded,
    out: &'a Path,
    desk: &'a Desk,
}

impl Story<'_> {
    fn on_ledger<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut chatelaine::ledger::Ledger) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Told> {
        Ok(self.desk.with_ledger(work).ok_or_else(|| Told("the desk closed".into()))??)
    }

    fn keep(&self, ticket: &Ticket) -> Result<(), Told> {
        let name = ticket.number.to_string();
        let png = portrait_png(&self.loaded.catalog, &self.loaded.pictures, &ticket.piece, 720, 900)?;
        fs::write(self.out.join(format!("{name}.png")), png)?;
        fs::write(self.out.join(format!("{name}.json")), serde_json::to_vec_pretty(ticket)?)?;
        Ok(())
    }

    /// Ticks everything off, tells the guest, takes the money. The ordinary tick does not sell a piece that is not for its
    /// wearer: each hazard is confirmed by its name.
    fn ring_up(&self, kept: Kept, tender: Tender) -> Result<Ticket, Told> {
        let (number, open) = self.on_ledger(move |ledger| {
            let now = Timestamp::now();
            let ticket = ledger.call(kept.id, now).or_else(|_| ledger.ticket(kept.id))?;
            ledger.tick(kept.id, Part::Base, true, false, now)?;
            for (at, _) in ticket.live_lines() {
                ledger.tick(kept.id, Part::Line(at), true, false, now)?;
            }
            let told = ledger.set_told(kept.id, true, now)?;
            match ledger.ring_up(kept.id, tender, now) {
                Ok(_) => Ok((told.number, vec![])),
                Err(LedgerError::NotSuitable(open)) => Ok((told.number, open)),
                Err(error) => Err(error),
            }
        })?;
        if !open.is_empty() {
            let names: Vec<String> = open.iter().map(|code| code.words()).collect();
            say!(
                "  {number} is not for its wearer and is not rung up; sold for a grown-up after all: {}",
                names.join(", ")
            );
            self.on_ledger(move |ledger| {
                let now = Timestamp::now();
                for code in open {
                    ledger.confirm_hazard(kept.id, code, true, now)?;
                }
                ledger.ring_up(kept.id, tender, now)
            })?;
        }
        let ticket = self.on_ledger(move |ledger| ledger.hand_over(kept.id, Timestamp::now()))?;
        let plain = |amount| ticket.quote.currency.plain(amount);
        let charged = ticket.charged.unwrap_or_default();
        say!(
            "  {} rung up, {} by {}",
            ticket.number,
            plain(charged),
            if tender == Tender::Cash { "cash" } else { "card" }
        );
        agree(
            "what is charged by card and the sum on the ticket",
            &(tender == Tender::Cash || charged == ticket.quote.total),
            &true,
        )?;
        self.keep(&ticket)?;
        Ok(ticket)
    }
}

fn rehearse(options: &Options) -> Result<(), Told> {
    let temporary = tempfile::tempdir()?;
    let data = options.data.clone().unwrap_or_else(|| temporary.path().to_owned());
    fs::create_dir_all(&options.out)?;
    let loaded = read_folder(&options.catalog)?;
    let catalog = &loaded.catalog;
    let desk = Desk::start(DeskConfig {
        catalog_dir: options.catalog.clone(),
        data_dir: data.join("desk"),
        listen: SocketAddr::from(([127, 0, 0, 1], 0)),
    })?;
    let story = Story { loaded: &loaded, out: &options.out, desk: &desk };
    let before = story.on_ledger(|ledger| ledger.counts())?;
    say!("{}: the desk answers at {}", catalog.table.name, desk.url());
    let one = Tablet::open(&desk, temporary.path().join("tablet-1"))?;
    let two = Tablet::open(&desk, temporary.path().join("tablet-2"))?;
    let free = |id: &str| before.get(id).map_or(0, |count| count.free());
    let plenty: Vec<&str> =
        catalog.drops.iter().filter(|kind| free(&kind.id) >= 4).map(|kind| kind.id.as_str()).collect();
    let last = catalog.drops.iter().find(|kind| free(&kind.id) == 1).map(|kind| kind.id.clone());
    let bases: Vec<&str> =
        catalog.bases.iter().filter(|base| free(&base.id) >= 6).map(|base| base.id.as_str()).collect();
    if plenty.len() < 12 || bases.is_empty() {
        return Err(Told("a rehearsal needs twelve drops with four or more of each, and a base with six".into()));
    }
    let piece = |base: usize, wearer: Wearer, drops: &[&str]| Piece {
        base: bases[base % bases.len()].to_owned(),
        length: None,
        wearer,
        neck: None,
        drops: drops.iter().map(|id| (*id).to_owned()).collect(),
    };
    let mut sent: Vec<Kept> = Vec::new();
    let mut deliver = |who: &str, tablet: &Tablet, piece: Piece| -> Result<News, Told> {
        let (kept, news) = tablet.send(piece)?;
        match &news {
            News::Delivered { .. } => {
                say!("{who}: ticket {}", kept.number);
                sent.push(kept);
            }
            News::Short { parts, .. } => say!("{who}: somebody else was first with {}", parts.join(", ")),
            other => return Err(Told(format!("{who}: the ticket went astray: {other:?}"))),
        }
        Ok(news)
    };

    deliver("A guest makes a key necklace", &one, piece(0, Wearer::From13, &plenty[0..5]))?;
    deliver("Her friend wants a bracelet's worth", &two, piece(1, Wearer::From13, &plenty[3..6]))?;
    deliver("A grandfather chooses for a girl of eight", &one, piece(2, Wearer::From6To12, &plenty[6..9]))?;

    a_child_plays(bases[0], &plenty)?;
    deliver("The child", &two, piece(0, Wearer::From3To5, &plenty[9..10]))?;

    let toddler = piece(0, Wearer::Under3, &plenty[0..2]);
    let verdict = catalog.cautions(&toddler)?;
    say!(
        "A piece for a toddler: {}",
        if verdict.suitable { "nothing speaks against it" } else { "not for this child, and the ticket says so" }
    );
    deliver("The toddler's mother", &one, toddler)?;

    if let Some(last) = &last {
        let want = piece(1, Wearer::From13, &[last, plenty[10]]);
        let first = deliver("Two guests want the last one; the first", &one, want.clone())?;
        let second = deliver("The second", &two, want)?;
        agree(
            "that the last one was held once",
            &(matches!(first, News::Delivered { .. }), matches!(second, News::Short { .. })),
            &(true, true),
        )?;
    }

    let (sold, taken) = at_the_till(&story, &sent, plenty[11])?;
    close_and_compare(&story, &before, &sent, (sold, taken))?;
    say!("Every sum, count and state agrees. Pictures, tickets and the close-out are in {}", options.out.display());
    Ok(())
}

/// Rings up the first five of `sent`, swapping a missing drop for `spare` on the way; gives how many were rung up, and for
/// how much.
fn at_the_till(story: &Story<'_>, sent: &[Kept], spare: &str) -> Result<(u32, Decimal), Told> {
    say!("At the till:");
    let mut taken = Decimal::ZERO;
    let mut sold = 0u32;
    for (n, kept) in sent.iter().enumerate().take(5) {
        let kept = *kept;
        if n == 1 {
            // A drop is missing on the real piece: it is swapped, and the sum follows.
            let (to, catalog) = (spare.to_owned(), Arc::clone(&story.loaded.catalog));
            let ticket = story.on_ledger(move |ledger| ledger.swap(kept.id, 0, &to, &catalog, Timestamp::now()))?;
            say!("  {}: {} instead of a missing drop", ticket.number, ticket.lines[0].id);
        }
        let ticket = story.ring_up(kept, if n % 2 == 0 { Tender::Cash } else { Tender::Card })?;
        taken += ticket.charged.unwrap_or_default();
        sold += 1;
    }
    for kept in sent.iter().skip(5) {
        let kept = *kept;
        let ticket = story.on_ledger(move |ledger| ledger.ticket(kept.id))?;
        story.keep(&ticket)?;
    }
    Ok((sold, taken))
}

/// Closes the show and compares what it came to with what was rung up, part by part.
fn close_and_compare(
    story: &Story<'_>,
    before: &BTreeMap<String, Count>,
    sent: &[Kept],
    (sold, taken): (u32, Decimal),
) -> Result<(), Told> {
    let currency = story.loaded.catalog.table.prices.currency;
    let close: CloseOut = story.on_ledger(move |ledger| ledger.close_show(currency, Timestamp::now()))?;
    fs::write(story.out.join("close-out.json"), serde_json::to_vec_pretty(&close)?)?;
    let plain = |amount| currency.plain(amount);
    say!("The show closes: {} rung up, {} let go, {} taken", close.sold, close.let_go, plain(close.cash + close.card));
    agree("the number rung up", &close.sold, &sold)?;
    agree("the money taken", &(close.cash + close.card), &taken)?;
    let after = story.on_ledger(|ledger| ledger.counts())?;
    for (id, count) in before {
        let gone = close.parts.get(id).map_or(0, |line| line.count);
        let now = after.get(id).copied();
        agree(
            &format!("the count of {id}"),
            &now.map(|now| (now.on_hand, now.held)),
            &Some((count.on_hand - gone, 0)),
        )?;
    }
    for kept in sent {
        let kept = *kept;
        let state = story.on_ledger(move |ledger| ledger.ticket(kept.id))?.state;
        agree(&format!("the state of {}", kept.number), &matches!(state, State::HandedOver | State::LetGo), &true)?;
    }
    Ok(())
}

/// A child hangs everything and pulls all of it off again, then keeps one.
fn a_child_plays(base: &str, plenty: &[&str]) -> Result<(), Told> {
    let mut playing = History::default();
    playing.apply(Change::Base { id: base.to_owned(), length: None });
    for id in plenty {
        playing.apply(Change::Hang { kind: (*id).to_owned(), at: 0 });
    }
    let hung = playing.now().drops.len();
    for drop in playing.now().drops.clone() {
        playing.apply(Change::PullOff(drop.token));
    }
    agree("what still hangs after all was pulled off", &playing.now().drops.len(), &0)?;
    say!("A child hangs {hung} drops, pulls all of them off and keeps one");
    Ok(())
}
