//! What the seller does with a ticket. Every change is one entry in one transaction.

use jiff::Timestamp;
use rusqlite::Connection;
use serde::Serialize;
use uuid::Uuid;

use super::{
    Ledger, LedgerError, Part, Ticket, TicketLine, bill, cut_to_length, holds,
    rows::{current_show, find, note, save},
    stock::{free, hold, hold_there},
    sums,
};
use crate::{
    catalog::{Catalog, PieceError},
    caution::CautionCode,
    craft::{Base, DropKind, Length, Wearer, fit_on},
    ticket::State,
};

impl Ledger {
    /// Calls the number. A piece that is checked already stays so: it only waits for its money.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is not open any more, or the disk refuses. Nothing is changed
    /// then; so it is with every change below.
    pub fn call(&mut self, id: Uuid, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "called", &(), |_, ticket| match ticket.state {
            State::Checked => Ok(()),
            _ => go(ticket, State::Called),
        })
    }

    /// Ticks a part off against the piece, or takes the tick back. A part whose hold has ended is held again; where the
    /// count says that none is left, [`LedgerError::NoneLeft`] asks whether it was `found` all the same.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, it has no such part, or the count says that none is
    /// left ([`LedgerError::NoneLeft`]).
    pub fn tick(
        &mut self,
        id: Uuid,
        part: Part,
        on: bool,
        was_found: bool,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, if on { "ticked" } else { "unticked" }, &(part, was_found), |db, ticket| {
            open(ticket)?;
            let (part_id, held) = match part {
                Part::Base => (ticket.piece.base.clone(), ticket.base_held || ticket.cut_to_length),
                Part::Line(at) => {
                    let line = live(ticket, at)?;
                    (line.id.clone(), line.held)
                }
            };
            if on && !held {
                hold_there(db, &part_id, was_found)?;
            }
            match part {
                Part::Base => {
                    ticket.base_ticked = on;
                    ticket.base_held |= on && !ticket.cut_to_length;
                }
                Part::Line(at) => {
                    let line = live(ticket, at)?;
                    line.ticked = on;
                    line.held |= on;
                }
            }
            follow_ticks(ticket);
            Ok(())
        })
    }

    /// Puts another drop where a missing one should hang; the sum follows.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, it has no such line, the drop is unknown, does not
    /// fit, or is not left.
    pub fn swap(
        &mut self,
        id: Uuid,
        at: usize,
        to: &str,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "swapped", &(at, to), |db, ticket| {
            open(ticket)?;
            let kind = catalog.drop_kind(to).ok_or_else(|| PieceError::NoDrop { id: to.to_owned(), like: None })?;
            if let Some(base) = catalog.base(&ticket.piece.base) {
                fits(base, kind)?;
            }
            if !hold(db, to)? {
                return Err(LedgerError::NoneLeft(to.to_owned()));
            }
            let line = live(ticket, at)?;
            if line.held {
                free(db, &line.id)?;
            }
            let before = line.instead_of.take().unwrap_or_else(|| line.id.clone());
            *line = TicketLine {
                id: kind.id.clone(),
                home: kind.home,
                price: kind.price,
                ticked: false,
                held: true,
                removed: false,
                instead_of: Some(before),
                look: None,
            };
            ticket.take_a_look(at);
            follow_ticks(ticket);
            ticket.derive(catalog, db)
        })
    }

    /// Takes a drop off the piece; the sum follows.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, or it has no such line.
    pub fn remove(&mut self, id: Uuid, at: usize, catalog: &Catalog, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "removed", &at, |db, ticket| {
            open(ticket)?;
            let line = live(ticket, at)?;
            if line.held {
                free(db, &line.id)?;
            }
            line.held = false;
            line.removed = true;
            follow_ticks(ticket);
            ticket.derive(catalog, db)
        })
    }

    /// Makes the necklace another length, which costs nothing.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, the base is not made in that length, or it would be one that
    /// lies ready and none is left.
    pub fn set_length(
        &mut self,
        id: Uuid,
        length: Length,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "length", &length, |db, ticket| {
            open(ticket)?;
            let piece = crate::craft::Piece { length: Some(length), drops: vec![], ..ticket.piece.clone() };
            catalog.parts(&piece)?;
            ticket.piece.length = Some(length);
            cut_to_length::follow(db, ticket, catalog)?;
            ticket.derive(catalog, db)
        })
    }

    /// It is for somebody else than was said on the tablet; the cautions follow.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, or it is closed.
    pub fn set_wearer(
        &mut self,
        id: Uuid,
        wearer: Wearer,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "wearer", &wearer, |db, ticket| {
            open(ticket)?;
            ticket.piece.wearer = wearer;
            ticket.judge(catalog, db)?;
            Ok(())
        })
    }

    /// The seller ticks that the guest was told of the cautions, or takes the tick back.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, or it is closed.
    pub fn set_told(&mut self, id: Uuid, told: bool, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "told", &told, |_, ticket| {
            open(ticket)?;
            ticket.told = told;
            Ok(())
        })
    }

    /// The seller confirms by its name a hazard that speaks against the piece, since it is sold for a grown-up, or takes
    /// that back. What may not be sold to anybody can't be confirmed.
    ///
    /// # Errors
    /// The ticket is closed, or no such hazard speaks against the piece.
    pub fn confirm_hazard(
        &mut self,
        id: Uuid,
        code: CautionCode,
        on: bool,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "sold_for_grown_up", &(code, on), |_, ticket| {
            open(ticket)?;
            if !ticket.verdict.cautions.iter().any(|one| one.code == code && one.grave && !one.forbidden) {
                return Err(LedgerError::NoHazard);
            }
            if on {
                ticket.confirmed.insert(code);
            } else {
                ticket.confirmed.remove(&code);
            }
            Ok(())
        })
    }

    /// The piece is in the guest's hands.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, or it is not rung up.
    pub fn hand_over(&mut self, id: Uuid, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "handed_over", &(), |_, ticket| go(ticket, State::HandedOver))
    }

    /// The ticket comes to nothing; its parts are free again.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, or it is rung up.
    pub fn let_go(&mut self, id: Uuid, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "let_go", &(), release)
    }

    pub(super) fn change_ticket(
        &mut self,
        id: Uuid,
        now: Timestamp,
        kind: &str,
        body: &impl Serialize,
        change: impl FnOnce(&Connection, &mut Ticket) -> Result<(), LedgerError>,
    ) -> Result<Ticket, LedgerError> {
        let tx = self.begin()?;
        let mut ticket = find(&tx, id)?.ok_or(LedgerError::NoTicket(id))?;
        let was_open = ticket.state.is_open();
        change(&tx, &mut ticket)?;
        if was_open && !ticket.state.is_open() {
            let show = current_show(&tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?;
            sums::settle(&tx, &mut ticket, show.id)?;
        }
        // The seller is at work on it; what is not ticked off yet stays held meanwhile.
        ticket.hold_until = holds::until(&tx, now)?;
        note(&tx, now, Some(id), kind, body)?;
        save(&tx, &ticket)?;
        if was_open && !ticket.state.is_open() {
            bill::follow(&tx, &ticket)?;
        }
        tx.commit()?;
        Ok(ticket)
    }
}

/// Lets a ticket go and frees what it holds.
pub(super) fn release(db: &Connection, ticket: &mut Ticket) -> Result<(), LedgerError> {
    go(ticket, State::LetGo)?;
    for part in ticket.held_parts() {
        free(db, &part)?;
    }
    ticket.base_held = false;
    ticket.lines.iter_mut().for_each(|line| line.held = false);
    Ok(())
}

pub(super) fn go(ticket: &mut Ticket, to: State) -> Result<(), LedgerError> {
    if !ticket.state.may_become(to) {
        return Err(LedgerError::State { from: ticket.state, to });
    }
    ticket.state = to;
    Ok(())
}

pub(super) fn open(ticket: &Ticket) -> Result<(), LedgerError> {
    if ticket.state.is_open() { Ok(()) } else { Err(LedgerError::Closed(ticket.state)) }
}

pub(super) fn live(ticket: &mut Ticket, at: usize) -> Result<&mut TicketLine, LedgerError> {
    ticket.lines.get_mut(at).filter(|line| !line.removed).ok_or(LedgerError::NoLine)
}

/// A ticket is checked exactly while all its parts are ticked off.
pub(super) fn follow_ticks(ticket: &mut Ticket) {
    if ticket.unticked() == 0 {
        ticket.state = State::Checked;
    } else if ticket.state == State::Checked {
        ticket.state = State::Called;
    }
}

/// Refuses a drop whose ring does not go onto the base.
pub(super) fn fits(base: &Base, kind: &DropKind) -> Result<(), PieceError> {
    let fit = fit_on(base, kind.ring);
    if fit.passes { Ok(()) } else { Err(PieceError::Fit { id: kind.id.clone(), base: base.id.clone(), fit }) }
}
