//! Threading a piece with the tablet's help: the number in, the piece and its homes out, and a tick for each that was
//! collected.

use super::{
    apply::Guest,
    effect::Effect,
    request::Request,
    session::{Screen, Session, ThreadingNote},
    standing::walking_order,
};
use crate::{
    craft::{Change, Piece},
    link::LookedUp,
    ticket::TicketNumber,
};

/// Digits of a ticket's number.
const DIGITS: usize = 5;

impl Guest {
    /// How many things have to be collected for the piece: its base, and each home.
    pub fn to_collect(&self) -> usize {
        let stops = self.known.catalog().zip(self.derived.piece.as_ref());
        stops.map_or(0, |(catalog, piece)| 1 + walking_order(catalog, piece).len())
    }

    pub(super) fn thread(&mut self, request: Request) {
        match request {
            // Nobody's piece is on the tablet then.
            Request::HaveNumber if self.screen == Screen::Welcome => {
                self.session = Session::default();
                self.go(Screen::Threading);
            }
            Request::Key(c) if c.is_ascii_digit() => self.digit(c),
            Request::EraseKey => {
                self.session.threading.typed.pop();
                self.session.threading.note = None;
            }
            Request::EnterKeys => self.look_up(),
            Request::Collect(what) if self.session.threading.found.is_some() && what < self.to_collect() => {
                let collected = &mut self.session.threading.collected;
                if !collected.remove(&what) {
                    collected.insert(what);
                }
            }
            _ => {}
        }
    }

    fn digit(&mut self, c: char) {
        let threading = &mut self.session.threading;
        if threading.asked.is_some() || threading.found.is_some() || threading.typed.len() >= DIGITS {
            return;
        }
        threading.note = None;
        threading.typed.push(c);
        if threading.typed.len() == DIGITS {
            self.look_up();
        }
    }

    fn look_up(&mut self) {
        let threading = &mut self.session.threading;
        if threading.asked.is_some() || threading.found.is_some() || threading.typed.is_empty() {
            return;
        }
        match threading.typed.parse::<TicketNumber>() {
            Ok(number) => {
                (threading.asked, threading.note) = (Some(number), None);
                self.effects.push(Effect::LookUp(number));
            }
            Err(_) => threading.note = Some(ThreadingNote::NoNumber),
        }
    }

    /// What the line found; of a number that nobody waits for any more it tells nothing.
    pub(super) fn hear_of_the_number(&mut self, number: TicketNumber, found: LookedUp) {
        // Meanwhile the seller may have come in, or somebody went elsewhere.
        if self.screen != Screen::Threading || self.session.threading.asked != Some(number) {
            return;
        }
        self.session.threading.asked = None;
        let note = match found {
            LookedUp::Piece(piece) => {
                self.session.threading.found = Some(number);
                return self.lay_out(piece);
            }
            LookedUp::Unknown => ThreadingNote::Unknown,
            LookedUp::Away => ThreadingNote::Away,
        };
        self.session.threading.typed.clear();
        self.session.threading.note = Some(note);
    }

    /// The piece is looked at, and nobody can change it here.
    fn lay_out(&mut self, piece: Piece) {
        let history = &mut self.session.history;
        history.start_with(Change::Base { id: piece.base.clone(), length: piece.length });
        history.start_with(Change::Wearer(piece.wearer));
        history.start_with(Change::Neck(piece.neck));
        history.start_with(Change::Hung(piece.hung().map(|(id, look)| (id.to_owned(), look)).collect()));
    }
}
