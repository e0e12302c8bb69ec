//! `chatelaine rehearse`: a whole show without a screen, through the real catalogue, real HTTP and the real ledger.

use std::{
    collections::BTreeMap,
    fs,
    net::SocketAddr,
    path::{Path, PathBuf},
    process::ExitCode,
    sync::Arc,
    time::Duration,
};

use chatelaine::{
    catalog::Loaded,
    catalog::read_folder,
    craft::{Piece, Wearer},
    desk::{Desk, DeskConfig},
    guest::{Effect, Guest, Request, Sending, Settings},
    ledger::{CloseOut, Count, LedgerError, Part, Ticket},
    link::{Kept, Link, LinkConfig, News, NewsReceiver},
    money::Tender,
    portrait::portrait_png,
    ticket::State,
};
use jiff::Timestamp;
use rust_decimal::Decimal;

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

/// How long the desk has for an answer.
const ANSWER: Duration = Duration::from_secs(10);

/// A guest's tablet without a screen: the session is the real one, and so is the line.
struct Tablet {
    link: Link,
    news: NewsReceiver,
    guest: Guest,
}

impl Tablet {
    fn open(desk: &Desk, dir: PathBuf, chance: u64) -> Result<Self, Told> {
        let (link, news) = Link::open(LinkConfig { dir, pairing: Some(desk.pair_local()?), wake: Arc::new(|| {}) })?;
        let mut tablet = Self { link, news, guest: Guest::new(Settings::default(), chance) };
        tablet.guest.set_paired(true);
        while tablet.guest.known().snapshot.is_none() {
            tablet.hear_one()?;
        }
        Ok(tablet)
    }

    /// Takes in the next piece of news.
    fn hear_one(&mut self) -> Result<News, Told> {
        let news = self.news.recv_timeout(ANSWER)?;
        let effects = self.guest.hear(news.clone());
        self.carry_out(effects);
        Ok(news)
    }

    fn ask(&mut self, request: Request) {
        let effects = self.guest.apply(request);
        self.carry_out(effects);
    }

    /// Flights and windows there are none.
    fn carry_out(&self, effects: Vec<Effect>) {
        for effect in effects {
            if let Effect::Send(draft) = effect {
                self.link.send_aside(*draft);
            }
        }
    }

    /// Designs a piece as a guest does, and has it looked over by a grown-up where that is asked for.
    fn design(&mut self, piece: &Piece) -> Result<(), Told> {
        for request in [Request::Done, Request::Begin, Request::ChooseBase(piece.base.clone()), Request::ToStage] {
            self.ask(request);
        }
        for kind in &piece.drops {
            self.ask(Request::Hang { kind: kind.clone(), at: None });
        }
        // Who says for whom it is only now sees what it would have dimmed, and hears all there is to say.
        self.ask(Request::For(piece.wearer));
        self.ask(Request::Review);
        if self.guest.needs_grown_up() {
            self.ask(Request::GrownUp(true));
        }
        let design = self.guest.session().history.now();
        let hung: Vec<&str> = design.drops.iter().map(|drop| drop.kind.as_str()).collect();
        let wanted: Vec<&str> = piece.drops.iter().map(String::as_str).collect();
        agree("what hangs and what was wanted", &hung, &wanted)
    }

    /// Sends the piece and waits for what became of it.
    fn send(&mut self, piece: &Piece) -> Result<(Kept, News), Told> {
        self.design(piece)?;
        self.ask(Request::Send);
        let Sending::Asked(id) = self.guest.session().sending else {
            return Err(Told(format!("the piece can't be sent: {:?}", self.guest.session().overlay)));
        };
        loop {
            let news = match self.hear_one() {
                Ok(news) => news,
                Err(_) => return Err(Told(format!("nothing was heard of the ticket in {} s", ANSWER.as_secs()))),
            };
            match &news {
                News::Delivered { kept, .. }
                | News::Waiting(kept)
                | News::Short { kept, .. }
                | News::Refused { kept, .. }
                    if kept.id == id =>
                {
                    return Ok((*kept, news));
                }
                News::NotKept { id: of, error } if *of == id => return Err(Told(error.to_string())),
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
        let (first_try, again) = (tender.clone(), tender.clone());
        let (number, open) = self.on_ledger(move |ledger| {
            let now = Timestamp::now();
            let ticket = ledger.call(kept.id, now).or_else(|_| ledger.ticket(kept.id))?;
            ledger.tick(kept.id, Part::Base, true, false, now)?;
            for (at, _) in ticket.live_lines() {
                ledger.tick(kept.id, Part::Line(at), true, false, now)?;
            }
            let told = ledger.set_told(kept.id, true, now)?;
            match ledger.ring_up(kept.id, first_try, now) {
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
                ledger.ring_up(kept.id, again, now)
            })?;
        }
        let ticket = self.on_ledger(move |ledger| ledger.hand_over(kept.id, Timestamp::now()))?;
        let plain = |amount| ticket.quote.currency.plain(amount);
        let charged = ticket.charged.unwrap_or_default();
        say!("  {} rung up, {} {}", ticket.number, plain(charged), tender.words());
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
    let mut one = Tablet::open(&desk, temporary.path().join("tablet-1"), 1)?;
    let mut two = Tablet::open(&desk, temporary.path().join("tablet-2"), 2)?;
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
    let mut deliver = |who: &str, tablet: &mut Tablet, piece: Piece| -> Result<News, Told> {
        let (kept, news) = tablet.send(&piece)?;
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

    deliver("A guest makes a key necklace", &mut one, piece(0, Wearer::From13, &plenty[0..5]))?;
    deliver("Her friend wants a bracelet's worth", &mut two, piece(1, Wearer::From13, &plenty[3..6]))?;
    deliver("A grandfather chooses for a girl of eight", &mut one, piece(2, Wearer::From6To12, &plenty[6..9]))?;

    a_child_plays(&mut two, &piece(0, Wearer::From3To5, &[]), &plenty)?;
    deliver("The child", &mut two, piece(0, Wearer::From3To5, &plenty[9..10]))?;

    let toddler = piece(0, Wearer::Under3, &plenty[0..2]);
    let verdict = catalog.cautions(&toddler)?;
    say!(
        "A piece for a toddler: {}",
        if verdict.suitable { "nothing speaks against it" } else { "not for this child, and the ticket says so" }
    );
    deliver("The toddler's mother", &mut one, toddler)?;

    if let Some(last) = &last {
        let want = piece(1, Wearer::From13, &[last, plenty[10]]);
        let first = deliver("Two guests want the last one; the first", &mut one, want.clone())?;
        let second = deliver("The second", &mut two, want)?;
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
fn a_child_plays(tablet: &mut Tablet, bare: &Piece, plenty: &[&str]) -> Result<(), Told> {
    tablet.design(bare)?;
    tablet.ask(Request::Back);
    tablet.ask(Request::ClearFilters);
    for id in plenty {
        tablet.ask(Request::Hang { kind: (*id).to_owned(), at: Some(0) });
    }
    let hung = tablet.guest.session().history.now().drops.clone();
    for drop in &hung {
        tablet.ask(Request::PullOff(drop.token));
    }
    let left = tablet.guest.session().history.now().drops.len();
    agree("what still hangs after all was pulled off", &left, &0)?;
    say!("A child hangs {} drops, pulls all of them off and keeps one", hung.len());
    Ok(())
}
