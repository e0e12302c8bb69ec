//! A ticket arrives: once, whatever happens to its answer.

use std::ops::RangeInclusive;

use jiff::Timestamp;
use rusqlite::{Connection, params};

use super::{
    Ledger, LedgerError, SumDoubt, Ticket, TicketLine, cut_to_length::is_cut, holds, prices::agreeing, rows::listed,
    rows::note_written, stock::hold,
};
use crate::{
    catalog::Catalog,
    craft::{Length, MOST_DROPS, NECKS_MM, PIECE_LENGTHS_MM, Piece},
    money::{Currency, PriceRules, PricedDrop},
    ron_tree::is_id,
    ticket::{NotTaken, Receipt, SentTicket, State, TicketNumber},
};

/// Letters of what is no id that go back; a few more than an excerpt of it shows.
const LONGEST_ODD_ID: usize = 80;

impl Ledger {
    /// Enters `sent` and holds its parts. Its sum has to be one that this table's prices give, today's or earlier ones;
    /// otherwise the seller has to say what is charged, and what can be no sum at all is refused. With `refuse_if_short`, a
    /// part that is gone means that nothing is entered; otherwise the ticket is entered and the part's line says that it
    /// is not held.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then. What is wrong with the ticket itself is no error but a [`Receipt`].
    pub fn receive(
        &mut self,
        sent: &SentTicket,
        refuse_if_short: bool,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Receipt, LedgerError> {
        let tx = self.begin()?;
        if let Some(receipt) = known(&tx, sent)? {
            return Ok(receipt);
        }
        if let Some(why) = nonsense(&tx, sent)? {
            return Ok(Receipt::refused(why));
        }
        let (rules, sum_doubt) = match rules_of(&tx, sent, catalog)? {
            Ok(found) => found,
            Err(why) => return Ok(Receipt::refused(why)),
        };
        let written = serde_json::to_string(sent)?;
        let arrival = note_written(&tx, now, Some(sent.id), "sent", &written)?;
        let mut ticket = arrived(sent, arrival, now, rules);
        ticket.hold_until = holds::until(&tx, now)?;
        ticket.sum_doubt = sum_doubt;
        ticket.cut_to_length = is_cut(&tx, &ticket.piece, catalog)?;
        let short = hold_parts(&tx, &mut ticket)?;
        if refuse_if_short && !short.is_empty() {
            // The change is taken back with its entry and its holds. A part of which several are gone is named as often.
            return Ok(Receipt::Short { parts: short });
        }
        let total_today = catalog.quote(&sent.piece).ok().map(|quote| quote.total);
        ticket.total_by_catalog = total_today.filter(|total| *total != sent.quote.total);
        // The tablet may have judged by an older catalogue; the entry of the delivery keeps what the guest saw.
        ticket.judge(catalog, &tx)?;
        insert(&tx, &written, &ticket)?;
        tx.commit()?;
        Ok(Receipt::Stored { short })
    }

    /// The number after the last one of kiosk `digit` that the ledger has seen in show `show`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn next_sequence(&self, show: i64, digit: u8) -> Result<u16, LedgerError> {
        Ok(last_sequence(&self.db, show, digit)?.map_or(TicketNumber::FIRST, |last| last + 1))
    }
}

/// The last number of the digit in show `show`, by its place in the digit's sequence.
pub(super) fn last_sequence(db: &Connection, show: i64, digit: u8) -> Result<Option<u16>, LedgerError> {
    // Between the digit's first and last number, so that the index finds the last one at once.
    let last: Option<String> = db
        .prepare_cached(
            "SELECT max(number) FROM (
                 SELECT max(number) AS number FROM tickets WHERE show = ?1 AND number BETWEEN ?2 AND ?3
                 UNION ALL SELECT max(number) FROM bills WHERE show = ?1 AND number BETWEEN ?2 AND ?3)",
        )?
        .query_row(params![show, format!("{digit}-"), format!("{digit}-:")], |row| row.get(0))?;
    Ok(last.and_then(|text| text.parse::<TicketNumber>().ok()).map(TicketNumber::sequence))
}

/// What is answered to a ticket that is in the ledger already, or whose id another ticket has.
fn known(db: &Connection, sent: &SentTicket) -> Result<Option<Receipt>, LedgerError> {
    let Some(known) = listed(db, "id = ?", [sent.id.to_string()])?.pop() else { return Ok(None) };
    let before: String = db
        .prepare_cached("SELECT sent FROM tickets WHERE id = ?")?
        .query_row([sent.id.to_string()], |row| row.get(0))?;
    // Compared as tickets: what an earlier version wrote down has other fields.
    if serde_json::from_str::<SentTicket>(&before).is_ok_and(|before| before != *sent) {
        return Ok(Some(Receipt::refused(NotTaken::SameId)));
    }
    let short = known.ticket.map(|ticket| ticket.not_held().into_iter().map(str::to_owned).collect());
    Ok(Some(Receipt::Stored { short: short.unwrap_or_default() }))
}

/// Why a ticket makes no sense in this ledger, whatever its prices.
fn nonsense(db: &Connection, sent: &SentTicket) -> Result<Option<NotTaken>, LedgerError> {
    if let Some(why) = no_piece(&sent.piece) {
        return Ok(Some(why));
    }
    let quoted = sent.quote.drops.iter().map(|drop| drop.id.as_str());
    if sent.quote.base.id != sent.piece.base || !quoted.eq(sent.piece.drops.iter().map(String::as_str)) {
        return Ok(Some(NotTaken::OtherLines));
    }
    if let Err(error) = sent.quote.check() {
        return Ok(Some(NotTaken::of_sum(&error)));
    }
    let yes = |sql: &str, of: &dyn rusqlite::ToSql| -> rusqlite::Result<bool> {
        db.prepare_cached(sql)?.query_row(params![sent.show, of], |row| row.get(0))
    };
    if !yes("SELECT EXISTS (SELECT 1 FROM shows WHERE id = ?1 AND ?2)", &true)? {
        return Ok(Some(NotTaken::UnknownShow));
    }
    if yes("SELECT EXISTS (SELECT 1 FROM tickets WHERE show = ? AND number = ?)", &sent.number.to_string())? {
        return Ok(Some(NotTaken::SameNumber));
    }
    Ok(None)
}

/// Why a piece is none that any catalogue could make.
fn no_piece(piece: &Piece) -> Option<NotTaken> {
    let mut ids = std::iter::once(&piece.base).chain(&piece.drops);
    if let Some(odd) = ids.find(|id| !is_id(id)) {
        return Some(NotTaken::OddId { found: odd.chars().take(LONGEST_ODD_ID).collect() });
    }
    if piece.drops.len() > MOST_DROPS {
        return Some(NotTaken::ManyDrops { found: piece.drops.len(), most: MOST_DROPS });
    }
    let outside = |length: Option<Length>, range: RangeInclusive<f64>| {
        length.map(Length::mm).filter(|mm| !range.contains(mm)).map(|mm| (mm, *range.start(), *range.end()))
    };
    if let Some((mm, least_mm, most_mm)) = outside(piece.length, PIECE_LENGTHS_MM) {
        return Some(NotTaken::OddLength { mm, least_mm, most_mm });
    }
    let (mm, least_mm, most_mm) = outside(piece.neck, NECKS_MM)?;
    Some(NotTaken::OddNeck { mm, least_mm, most_mm })
}

/// The rules by which the sum came about, and whether the seller has to look at it; or why it is refused.
type RulesOrReason = Result<(PriceRules, Option<SumDoubt>), NotTaken>;

fn rules_of(db: &Connection, sent: &SentTicket, catalog: &Catalog) -> Result<RulesOrReason, LedgerError> {
    let today = &catalog.table.prices;
    Ok(match agreeing(db, catalog, &sent.quote)? {
        Some(rules) if rules.currency == today.currency => Ok((rules, None)),
        Some(rules) => Ok((rules, Some(SumDoubt::Currency))),
        None if sent.quote.currency == today.currency => Ok((today.clone(), Some(SumDoubt::NotOurs))),
        None => {
            let code = |of: Currency| of.code.to_owned();
            Err(NotTaken::OtherCurrency { found: code(sent.quote.currency), taken: code(today.currency) })
        }
    })
}

/// The ticket as it arrives, with nothing held yet.
pub(super) fn arrived(sent: &SentTicket, arrival: i64, now: Timestamp, rules: PriceRules) -> Ticket {
    let line = |drop: &PricedDrop| TicketLine {
        id: drop.id.clone(),
        home: drop.home,
        price: drop.price,
        ticked: false,
        held: false,
        removed: false,
        instead_of: None,
        look: None,
    };
    let mut ticket = Ticket {
        id: sent.id,
        show: sent.show,
        number: sent.number,
        arrival,
        arrived: now,
        state: State::Sent,
        piece: sent.piece.clone(),
        base_ticked: false,
        base_held: false,
        cut_to_length: false,
        lines: sent.quote.drops.iter().map(line).collect(),
        quote: sent.quote.clone(),
        rules,
        verdict: sent.verdict.clone(),
        grown_up_confirmed: sent.grown_up_confirmed,
        told: false,
        confirmed: Default::default(),
        total_by_catalog: None,
        sum_doubt: None,
        plain: vec![],
        package: None,
        given: None,
        bill: None,
        prepaid: false,
        tender: None,
        charged: None,
        settled: None,
        hold_until: now,
    };
    ticket.keep_looks(&sent.piece.look_numbers());
    ticket
}

/// Holds what is there of a new ticket's parts; gives what is not.
fn hold_parts(db: &Connection, ticket: &mut Ticket) -> Result<Vec<String>, LedgerError> {
    let mut short = Vec::new();
    let mut hold_one = |id: &str| -> Result<bool, LedgerError> {
        let held = hold(db, id)?;
        if !held {
            short.push(id.to_owned());
        }
        Ok(held)
    };
    ticket.base_held = !ticket.cut_to_length && hold_one(&ticket.piece.base)?;
    for line in &mut ticket.lines {
        line.held = hold_one(&line.id)?;
    }
    Ok(short)
}

/// Puts a new ticket beside what was sent, as it is written down.
pub(super) fn insert(db: &Connection, sent: &str, ticket: &Ticket) -> Result<(), LedgerError> {
    db.prepare_cached(
        "INSERT INTO tickets (id, show, number, arrival, state, hold_until, sent, ticket)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
    )?
    .execute(params![
        ticket.id.to_string(),
        ticket.show,
        ticket.number.to_string(),
        ticket.arrival,
        ticket.state.code(),
        ticket.hold_until.to_string(),
        sent,
        serde_json::to_string(ticket)?
    ])?;
    Ok(())
}
