//! A piece becomes the guest's: whether it may be sold, and its parts leaving the stock. And back again.

use rusqlite::Connection;

use super::{
    LedgerError, Ticket,
    bill::Given,
    edit::{go, open},
    facts,
    stock::{hold, one_more, take},
};
use crate::{
    craft::{DropKind, Home},
    money::Reduction,
    ticket::State,
};

/// Refuses a piece that can't be sold as it is, or not yet: a part is not ticked off, the guest was not told, the sum is in
/// doubt, something may not be sold, or is not for this wearer and nobody confirmed it by name.
pub(super) fn may_be_sold(ticket: &Ticket) -> Result<(), LedgerError> {
    open(ticket)?;
    match ticket.unticked() {
        0 => {}
        n => return Err(LedgerError::NotTicked(n)),
    }
    if !ticket.verdict.cautions.is_empty() && !ticket.told {
        return Err(LedgerError::NotTold);
    }
    ticket.sum_stands()?;
    match (ticket.forbidden(), ticket.unconfirmed()) {
        (forbidden, _) if !forbidden.is_empty() => Err(LedgerError::Forbidden(forbidden)),
        (_, open) if !open.is_empty() => Err(LedgerError::NotSuitable(open)),
        _ => Ok(()),
    }
}

/// Takes the parts of a piece out of the stock: it is paid.
pub(super) fn sell(db: &Connection, ticket: &mut Ticket) -> Result<(), LedgerError> {
    may_be_sold(ticket)?;
    // A hold may have ended since the part was ticked off.
    let not_held: Vec<String> = ticket.not_held().into_iter().map(str::to_owned).collect();
    for part in not_held {
        if !hold(db, &part)? {
            return Err(LedgerError::NoneLeft(part));
        }
    }
    ticket.base_held = !ticket.cut_to_length;
    ticket.lines.iter_mut().filter(|line| !line.removed).for_each(|line| line.held = true);
    for part in ticket.held_parts() {
        take(db, &part)?;
    }
    ticket.base_held = false;
    ticket.lines.iter_mut().for_each(|line| line.held = false);
    go(ticket, State::RungUp)
}

/// Takes a whole piece back; its parts lie in their homes again where they go `home`. A chain that was cut to length is none of
/// those that lie ready, and nothing of it goes back onto its spool.
pub(super) fn take_back(db: &Connection, ticket: &mut Ticket, home: bool) -> Result<(), LedgerError> {
    go(ticket, State::TakenBack)?;
    if home {
        if !ticket.cut_to_length {
            one_more(db, &ticket.piece.base)?;
        }
        for (_, line) in ticket.live_lines() {
            one_more(db, &line.id)?;
        }
    }
    Ok(())
}

/// Takes line `at` of a piece that was sold back; the sum follows. Gives what it was and where it lives.
pub(super) fn take_line_back(
    db: &Connection,
    ticket: &mut Ticket,
    at: usize,
    home: bool,
) -> Result<(String, Home), LedgerError> {
    if !ticket.state.is_sold() {
        return Err(LedgerError::NotSold(ticket.state));
    }
    // A wish for a round sum was for the whole piece; of what is left, what was taken off stays off.
    if let Some(Given { reduction: Reduction::ToSum(_), reason }) = ticket.given.clone() {
        ticket.given = Some(Given { reduction: Reduction::Amount(ticket.given_off()?), reason });
    }
    let line = ticket.lines.get_mut(at).filter(|line| !line.removed).ok_or(LedgerError::NoLine)?;
    line.removed = true;
    let (id, lives) = (line.id.clone(), line.home);
    let mut mixes = Vec::new();
    for (_, line) in ticket.live_lines() {
        if facts::part::<DropKind>(db, &line.id)?.is_some_and(|kind| kind.is_assortment()) {
            mixes.push(line.id.clone());
        }
    }
    ticket.hang_lines(|id| mixes.iter().any(|mix| mix == id));
    ticket.sum_up()?;
    if home {
        one_more(db, &id)?;
    }
    Ok((id, lives))
}
