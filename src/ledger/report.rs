//! Everything that is told of one show, for files: as tables for spreadsheets, and whole.

use std::collections::BTreeMap;

use jiff::{Timestamp, tz::TimeZone};
use rusqlite::{OptionalExtension, params};
use rust_decimal::Decimal;
use serde::Serialize;

use super::{
    AboutShow, CloseOut, Ledger, LedgerError, PartThen, ShowEnd,
    close::currency_of,
    rows::{listed, time},
    show_end::part_now,
    sums,
};
use crate::{
    export::{Cell, DecimalMark, ExportError, Moment, csv},
    money::{Currency, Reward},
    ticket::State,
};

/// One of the tables of a show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShowTable {
    /// What was sold, by home.
    Lines,
    /// Every ticket that was sold or let go.
    Tickets,
    /// What was taken, by kind of payment, and the cash.
    Money,
    /// The tax by its rate.
    Tax,
    /// What is left of each part.
    Left,
}

impl ShowTable {
    /// Every one of them.
    pub const ALL: [Self; 5] = [Self::Lines, Self::Tickets, Self::Money, Self::Tax, Self::Left];

    /// The name in addresses and at the terminal.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Lines => "lines",
            Self::Tickets => "tickets",
            Self::Money => "money",
            Self::Tax => "tax",
            Self::Left => "left",
        }
    }

    /// The table called `name`.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|table| table.name() == name)
    }

    /// Plain words for the desk.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Lines => "what was sold, by home",
            Self::Tickets => "every ticket",
            Self::Money => "the money",
            Self::Tax => "the tax by rate",
            Self::Left => "what is left",
        }
    }
}

/// A ticket that was sold or let go in a show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReportedTicket {
    /// Its number.
    pub number: String,
    /// The show in which it was sent.
    pub sent_in: i64,
    /// When it arrived.
    pub arrived: Option<Timestamp>,
    /// Where it is in its life.
    pub state: &'static str,
    /// How many drops it has.
    pub drops: usize,
    /// Its tax.
    pub tax: Decimal,
    /// Its sum.
    pub total: Decimal,
}

/// Everything that is told of one show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShowReport {
    /// Its number.
    pub show: i64,
    /// When it was opened.
    pub opened: Timestamp,
    /// When it was closed; the running one is not.
    pub closed: Option<Timestamp>,
    /// The currency of its amounts.
    pub currency: Currency,
    /// What it is.
    pub about: AboutShow,
    /// What it came to.
    pub sums: CloseOut,
    /// What was counted in the cash box.
    pub counted: Option<Decimal>,
    /// What the host earned.
    pub reward: Option<Reward>,
    /// How many of each part are left, by id.
    pub left: BTreeMap<String, u32>,
    /// What the parts are, by id.
    pub parts: BTreeMap<String, PartThen>,
    /// The tickets that were sold or let go in it.
    pub tickets: Vec<ReportedTicket>,
}

impl Ledger {
    /// Everything that is told of show `show`, the running one included; none where there is no such show.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn report(&self, show: i64) -> Result<Option<ShowReport>, LedgerError> {
        let opened: Option<String> = self
            .db
            .prepare_cached("SELECT opened FROM shows WHERE id = ?")?
            .query_row(params![show], |row| row.get(0))
            .optional()?;
        let Some(opened) = opened else { return Ok(None) };
        let closed = self.closed_show(show)?;
        let (closed, currency, sums, end) = match closed {
            Some(closed) => (Some(closed.at), closed.currency, closed.sums, closed.end),
            None => {
                let sums = sums::of(&self.db, show)?;
                let currency = sums.currency.map_or_else(|| currency_of(&self.db, show), |known| Ok(Some(known)))?;
                // A ledger without tickets and prices has no amounts.
                let Some(currency) = currency else { return Ok(None) };
                (None, currency, sums, ShowEnd::default())
            }
        };
        let mut parts = end.parts;
        for id in sums.parts.keys().chain(sums.taken_back.parts.keys()) {
            if !parts.contains_key(id)
                && let Some(part) = part_now(&self.db, id)?
            {
                parts.insert(id.clone(), part);
            }
        }
        let about = if closed.is_some() { end.about } else { self.about_show(show)? };
        Ok(Some(ShowReport {
            show,
            opened: time(&opened),
            closed,
            currency,
            about,
            sums,
            counted: end.counted,
            reward: end.reward,
            left: end.left,
            parts,
            tickets: self.tickets_of(show)?,
        }))
    }

    fn tickets_of(&self, show: i64) -> Result<Vec<ReportedTicket>, LedgerError> {
        let settled = listed(&self.db, "settled = ? ORDER BY arrival", [show])?.into_iter();
        let told = settled.map(|one| {
            let ticket = one.ticket.as_ref().ok();
            ReportedTicket {
                sent_in: one.show,
                arrived: ticket.map(|ticket| ticket.arrived),
                state: one.state.word(),
                drops: ticket.map_or(0, |ticket| ticket.live_lines().count()),
                tax: ticket.map_or(Decimal::ZERO, |ticket| ticket.quote.tax),
                total: match ticket {
                    Some(ticket) if one.state != State::LetGo => ticket.quote.total,
                    _ => Decimal::ZERO,
                },
                number: one.number,
            }
        });
        Ok(told.collect())
    }
}

/// A cell of a table that is being made.
enum Made<'a> {
    Text(&'a str),
    Owned(String),
    Number(Decimal),
    Time(Moment),
}

impl ShowReport {
    /// A table of it for a spreadsheet.
    ///
    /// # Errors
    /// The table can't be written.
    pub fn table(&self, table: ShowTable, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        match table {
            ShowTable::Lines => self.lines(mark),
            ShowTable::Tickets => self.tickets(mark),
            ShowTable::Money => self.money(mark),
            ShowTable::Tax => self.tax(mark),
            ShowTable::Left => self.left(mark),
        }
    }

    /// An amount with all minor digits, as a number.
    fn amount(&self, amount: Decimal) -> Made<'static> {
        let mut amount = amount;
        amount.rescale(self.currency.digits);
        Made::Number(amount)
    }

    /// Name, id, home and sort of a part.
    fn of_part<'a>(&'a self, id: &'a str) -> [Made<'a>; 4] {
        let part = self.parts.get(id);
        let home = part.and_then(|part| part.home).map(|home| home.to_string()).unwrap_or_default();
        let sort = part.map_or("", |part| part.sort.map_or("base", |sort| sort.word()));
        [Made::Text(part.map_or(id, |part| &part.name)), Made::Text(id), Made::Owned(home), Made::Text(sort)]
    }

    fn lines(&self, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let back = &self.sums.taken_back.parts;
        let mut ids: Vec<&String> = self.sums.parts.keys().chain(back.keys()).collect();
        ids.sort_by_key(|id| (self.parts.get(*id).and_then(|part| part.home), *id));
        ids.dedup();
        let of = |lines: &BTreeMap<String, super::SoldLine>, id: &str| lines.get(id).cloned().unwrap_or_default();
        let parts = ids.into_iter().map(|id| {
            let (sold, returned) = (of(&self.sums.parts, id), of(back, id));
            let figures =
                [Made::Number(sold.count.into()), Made::Number(returned.count.into()), self.amount(sold.marked)];
            self.of_part(id).into_iter().chain(figures).collect::<Vec<_>>()
        });
        let goods = self.sums.goods.iter().map(|(name, line)| {
            let what = [Made::Text(name), Made::Text(""), Made::Text(""), Made::Text("other goods")];
            let figures = [Made::Number(line.count.into()), Made::Number(Decimal::ZERO), self.amount(line.marked)];
            what.into_iter().chain(figures).collect::<Vec<_>>()
        });
        let marked = format!("as marked ({})", self.currency.code);
        written(mark, &["part", "id", "home", "sort", "sold", "taken back", &marked], parts.chain(goods).collect())
    }

    fn tickets(&self, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let rows = self.tickets.iter().map(|one| {
            let arrived = one.arrived.and_then(moment).map_or(Made::Text(""), Made::Time);
            vec![
                Made::Text(&one.number),
                arrived,
                Made::Text(one.state),
                Made::Number(one.sent_in.into()),
                Made::Number(one.drops.into()),
                self.amount(one.tax),
                self.amount(one.total),
            ]
        });
        let (tax, total) = (format!("tax ({})", self.currency.code), format!("total ({})", self.currency.code));
        written(mark, &["number", "arrived", "state", "sent in show", "drops", &tax, &total], rows.collect())
    }

    fn money(&self, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let sums = &self.sums;
        let mut rows: Vec<(&str, &str, Option<Decimal>)> =
            vec![("taken", "cash", Some(sums.cash)), ("taken", "card", Some(sums.card))];
        rows.extend(sums.other_ways.iter().map(|(way, amount)| ("taken", way.as_str(), Some(*amount))));
        rows.extend([
            ("sold", "totals, less what was taken back", Some(sums.totals)),
            ("sold", "tax in it", Some(sums.tax)),
            ("sold", "cash rounding", sums.cash_rounding()),
            ("reductions", "in all", Some(sums.discounts)),
        ]);
        rows.extend(sums.given.iter().map(|(reason, amount)| ("reductions", reason.as_str(), Some(*amount))));
        rows.extend([
            ("taken back", "totals", Some(sums.taken_back.totals)),
            ("taken back", "paid out", Some(sums.paid_out)),
            ("deposits", "paid for what is not sold yet", Some(sums.owing)),
            ("late", "taken for tickets of earlier shows", Some(sums.late.taken)),
            ("cash box", "float", self.about.float),
            ("cash box", "counted", self.counted),
            ("stall fee", "", self.about.fee),
        ]);
        if let Some(Reward::Amount(amount)) = &self.reward {
            rows.push(("reward", "of the host", Some(*amount)));
        }
        let told = rows.into_iter().filter_map(|(what, of, amount)| Some((what, of, amount?)));
        let rows = told.map(|(what, of, amount)| vec![Made::Text(what), Made::Text(of), self.amount(amount)]).collect();
        written(mark, &["what", "of what", &format!("amount ({})", self.currency.code)], rows)
    }

    fn tax(&self, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let rows = self
            .sums
            .tax_by_rate
            .rates()
            .map(|(rate, at)| vec![Made::Owned(format!("{rate} %")), self.amount(at.net), self.amount(at.tax)]);
        let (net, tax) = (format!("net ({})", self.currency.code), format!("tax ({})", self.currency.code));
        written(mark, &["rate", &net, &tax], rows.collect())
    }

    fn left(&self, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let mut ids: Vec<&String> = self.left.keys().collect();
        ids.sort_by_key(|id| (self.parts.get(*id).and_then(|part| part.home), *id));
        let rows = ids.into_iter().map(|id| {
            let left = self.left.get(id).copied().unwrap_or_default();
            self.of_part(id).into_iter().chain([Made::Number(left.into())]).collect::<Vec<_>>()
        });
        written(mark, &["part", "id", "home", "sort", "left"], rows.collect())
    }
}

fn written(mark: DecimalMark, head: &[&str], rows: Vec<Vec<Made<'_>>>) -> Result<Vec<u8>, ExportError> {
    let rows: Vec<Vec<Cell<'_>>> = rows.iter().map(|row| row.iter().map(cell).collect()).collect();
    csv(mark, head, rows)
}

fn cell<'a>(made: &'a Made<'a>) -> Cell<'a> {
    match made {
        Made::Text(text) => Cell::Text(text),
        Made::Owned(text) => Cell::Text(text),
        Made::Number(number) => Cell::Number(*number),
        Made::Time(moment) => Cell::Time(*moment),
    }
}

/// A time in this machine's time zone.
fn moment(at: Timestamp) -> Option<Moment> {
    let at = at.to_zoned_datetime(TimeZone::system()).datetime();
    let number = |n: i8| u16::try_from(n).ok();
    let clock = |n: i8| u8::try_from(n).ok();
    Moment::new(
        [u16::try_from(at.year()).ok()?, number(at.month())?, number(at.day())?],
        [clock(at.hour())?, clock(at.minute())?, clock(at.second())?],
    )
}
