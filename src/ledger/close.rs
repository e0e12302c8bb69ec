//! The end of a show, and the beginning of the next.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::Deserialize;

use super::{
    CloseOut, Closing, Ledger, LedgerError, ShowEnd, about_show, bill,
    edit::release,
    rows::{closed_at, current_show, note, note_by_itself, open_tickets, save, time},
    stock::hold,
    sums,
};
use crate::{money::Currency, ticket::State};

/// A show that is closed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClosedShow {
    /// When it was closed, by the desk's clock.
    pub at: Timestamp,
    /// The currency of its amounts; the table may have another by now.
    pub currency: Currency,
    /// What it came to.
    pub sums: CloseOut,
    /// What else was noted at its end.
    pub end: ShowEnd,
}

impl Ledger {
    /// What the running show came to so far.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn so_far(&self) -> Result<CloseOut, LedgerError> {
        sums::of(&self.db, self.show()?.id)
    }

    /// The close-out of show `show`, once it is closed.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn closed_show(&self, show: i64) -> Result<Option<ClosedShow>, LedgerError> {
        let Some(end) = closed_at(&self.db, show)? else { return Ok(None) };
        let (at, body): (String, String) =
            self.db
                .query_row("SELECT at, body FROM events WHERE seq = ?", [end], |row| Ok((row.get(0)?, row.get(1)?)))?;
        let (currency, sums, end) = match serde_json::from_str(&body)? {
            Entered::WithEnd(currency, sums, end) => (currency, *sums, *end),
            Entered::WithCurrency(currency, sums) => (currency, *sums, ShowEnd::default()),
            Entered::Alone(sums) => match currency_of(&self.db, show)? {
                Some(currency) => (currency, *sums, ShowEnd::default()),
                // A ledger without tickets and prices has no amounts either.
                None => return Ok(None),
            },
        };
        Ok(Some(ClosedShow { at: time(&at), currency, sums, end }))
    }

    /// Closes the running show without counting the cash.
    ///
    /// # Errors
    /// As for [`Ledger::close_counted`].
    pub fn close_show(&mut self, currency: Currency, now: Timestamp) -> Result<CloseOut, LedgerError> {
        self.close_counted(&Closing::uncounted(currency), now)
    }

    /// Lets all open tickets go, of whichever show, closes the running show as `closing` says, and opens the next one, of
    /// which nothing is known yet.
    ///
    /// # Errors
    /// There is no number for another show, or the disk refuses; nothing is entered then.
    pub fn close_counted(&mut self, closing: &Closing, now: Timestamp) -> Result<CloseOut, LedgerError> {
        let tx = self.begin()?;
        let Some(show) = current_show(&tx)? else { return Err(rusqlite::Error::QueryReturnedNoRows.into()) };
        if show.id.checked_add(1).is_none() {
            return Err(LedgerError::LastShow(show.id));
        }
        let mut sum = sums::of(&tx, show.id)?;
        let (mut kept, mut held) = (0, Vec::new());
        for one in open_tickets(&tx)? {
            // What a part of the sum was paid for waits for the rest, in whichever show that comes.
            if let Some(ticket) = one.ticket.as_ref().ok().filter(|ticket| ticket.prepaid) {
                kept += 1;
                held.extend(ticket.held_parts());
                continue;
            }
            note(&tx, now, Some(one.id), "let_go", &"show closed")?;
            sum.let_go_now += 1;
            match one.ticket {
                Ok(mut ticket) => {
                    release(&tx, &mut ticket)?;
                    ticket.settled = Some(show.id);
                    sum.count(&ticket);
                    save(&tx, &ticket)?;
                    bill::follow(&tx, &ticket)?;
                }
                Err(_) => {
                    sum.let_go += 1;
                    sum.late.let_go += u32::from(one.show < show.id);
                    tx.execute(
                        "UPDATE tickets SET state = ?, settled = ?, hold_until = NULL WHERE id = ?",
                        params![State::LetGo.code(), show.id, one.id.to_string()],
                    )?;
                }
            }
        }
        sum.prepaid_kept = kept;
        // Nobody else holds anything any more, what a ticket held that can't be read included.
        tx.execute("UPDATE stock SET held = 0 WHERE held > 0", [])?;
        for part in held {
            hold(&tx, &part)?;
        }
        tx.execute("UPDATE shows SET closed = ? WHERE id = ?", params![now.to_string(), show.id])?;
        sums::keep(&tx, &sum)?;
        let end = ShowEnd::of(&tx, about_show::about(&tx, show.id)?, closing, &sum)?;
        note(&tx, now, None, "show_closed", &(sum.currency.unwrap_or(closing.currency), &sum, &end))?;
        open_show(&tx, now)?;
        tx.commit()?;
        Ok(sum)
    }
}

/// Opens a show, with nothing sold yet.
pub(super) fn open_show(db: &Connection, now: Timestamp) -> Result<(), LedgerError> {
    db.execute("INSERT INTO shows (opened) VALUES (?)", [now.to_string()])?;
    let show = db.last_insert_rowid();
    sums::keep(db, &CloseOut::of_show(show))?;
    note_by_itself(db, now, "show_opened", &show)?;
    Ok(())
}

/// The entry of a closing. The first versions did not note the currency, and later ones nothing but that and the sums.
#[derive(Deserialize)]
#[serde(untagged)]
enum Entered {
    WithEnd(Currency, Box<CloseOut>, Box<ShowEnd>),
    WithCurrency(Currency, Box<CloseOut>),
    Alone(Box<CloseOut>),
}

/// The currency of the tickets of show `show`; where it had none, of the first ticket of all, or of the oldest prices.
pub(super) fn currency_of(db: &Connection, show: i64) -> Result<Option<Currency>, LedgerError> {
    let code: Option<String> = db
        .prepare_cached(
            "SELECT json_extract(sent, '$.quote.currency'), show <> ?, arrival FROM tickets WHERE json_valid(sent)
             UNION ALL SELECT json_extract(list, '$.rules.currency'), 2, seq FROM price_lists WHERE json_valid(list)
             ORDER BY 2, 3 LIMIT 1",
        )?
        .query_row([show], |row| row.get(0))
        .optional()?
        .flatten();
    Ok(code.and_then(|code| Currency::from_code(&code)))
}
