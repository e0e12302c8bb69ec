//! A guest's tablet without a screen.

use std::{path::PathBuf, sync::Arc, time::Duration};

use chatelaine::{
    craft::Piece,
    desk::Desk,
    guest::{Effect, Guest, Request, Sending, Settings},
    link::{Kept, Link, LinkConfig, News, NewsReceiver},
};

use super::{super::Told, agree};

/// How long the desk has for an answer.
const ANSWER: Duration = Duration::from_secs(10);

/// A guest's tablet without a screen: the session is the real one, and so is the line.
pub(super) struct Tablet {
    link: Link,
    news: NewsReceiver,
    pub(super) guest: Guest,
}

impl Tablet {
    pub(super) fn open(desk: &Desk, dir: PathBuf, chance: u64) -> Result<Self, Told> {
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

    pub(super) fn ask(&mut self, request: Request) {
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
    pub(super) fn design(&mut self, piece: &Piece) -> Result<(), Told> {
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
    pub(super) fn send(&mut self, piece: &Piece) -> Result<(Kept, News), Told> {
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
