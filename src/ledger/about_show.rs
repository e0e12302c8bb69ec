//! What a show is: where the table stands, what kind of event it is, what the place asks for. It is told at the desk, also
//! while the show runs; each change is an entry, and a closed show stays as it was.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Row, params};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{
    Ledger, LedgerError,
    rows::{note, time},
};
use crate::{
    money::{Currency, MAX_AMOUNT, TaxRule},
    quoting::quoted,
};

/// The longest name of a place or a host, in characters.
pub(crate) const LONGEST_SHOW_NAME: usize = 60;

/// What kind of event a show is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum ShowKind {
    /// A craft fair or market.
    Fair,
    /// The maker's own doors are open.
    OpenHouse,
    /// A party in a host's home.
    HomeParty,
    /// A party for children.
    ChildrensParty,
    /// Nothing counts.
    Practice,
}

impl ShowKind {
    /// What a show can be that counts.
    pub const REAL: [Self; 4] = [Self::Fair, Self::OpenHouse, Self::HomeParty, Self::ChildrensParty];

    /// The name in forms and files.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Fair => "fair",
            Self::OpenHouse => "open_house",
            Self::HomeParty => "home_party",
            Self::ChildrensParty => "childrens_party",
            Self::Practice => "practice",
        }
    }

    /// The kind called `code`, of a show that counts.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::REAL.into_iter().find(|kind| kind.code() == code)
    }

    /// Plain words for the desk.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fair => "fair",
            Self::OpenHouse => "open house",
            Self::HomeParty => "home party",
            Self::ChildrensParty => "children’s party",
            Self::Practice => "practice",
        }
    }
}

/// What a show is. Of a show that nobody told about, nothing is known.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct AboutShow {
    /// Where the table stands.
    pub place: Option<String>,
    /// What kind of event it is.
    pub kind: Option<ShowKind>,
    /// The tax of the place, where it is another than the table's own.
    pub tax: Option<TaxRule>,
    /// What the stall costs.
    pub fee: Option<Decimal>,
    /// How the seller calls the host; a label, not a person's data.
    pub host: Option<String>,
    /// What lay in the cash box before the first sale.
    pub float: Option<Decimal>,
}

/// Why something can't be said of a show.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum AboutError {
    /// A name of a place is too long, or has signs that nobody sees.
    #[error("{} is no name of a place; write up to {LONGEST_SHOW_NAME} plain characters", quoted(.0))]
    Place(String),
    /// The same of a host.
    #[error("{} is no name of a host; write up to {LONGEST_SHOW_NAME} plain characters", quoted(.0))]
    Host(String),
    /// A fee is none that a show has.
    #[error("{found} is no stall fee; write an amount from 0 to {MAX_AMOUNT} with at most {digits} decimals")]
    Fee {
        /// What was written.
        found: Decimal,
        /// Decimals of the currency.
        digits: u32,
    },
    /// The same of a float.
    #[error("{found} is no float; write an amount from 0 to {MAX_AMOUNT} with at most {digits} decimals")]
    Float {
        /// What was written.
        found: Decimal,
        /// Decimals of the currency.
        digits: u32,
    },
    /// A tax is none.
    #[error("{0} is no tax; write a percentage from 0 to 100 with at most 4 decimals")]
    Tax(Decimal),
}

/// Whether something at a show can be called so.
fn is_name(name: &str) -> bool {
    let length = name.chars().count();
    (1..=LONGEST_SHOW_NAME).contains(&length) && name.trim() == name && !name.chars().any(char::is_control)
}

impl AboutShow {
    /// Looks whether a show can be so.
    ///
    /// # Errors
    /// The first thing that can't be.
    pub fn check(&self, currency: Currency) -> Result<(), AboutError> {
        let no_name = |name: &Option<String>| name.clone().filter(|name| !is_name(name));
        if let Some(found) = no_name(&self.place) {
            return Err(AboutError::Place(found));
        }
        if let Some(found) = no_name(&self.host) {
            return Err(AboutError::Host(found));
        }
        let digits = currency.digits;
        let no_amount = |amount: Option<Decimal>| {
            amount.filter(|one| !(Decimal::ZERO..=MAX_AMOUNT).contains(one) || one.normalize().scale() > digits)
        };
        if let Some(found) = no_amount(self.fee) {
            return Err(AboutError::Fee { found, digits });
        }
        if let Some(found) = no_amount(self.float) {
            return Err(AboutError::Float { found, digits });
        }
        match self.tax {
            Some(TaxRule::Added { percent } | TaxRule::Included { percent })
                if !(Decimal::ZERO..=Decimal::ONE_HUNDRED).contains(&percent) || percent.normalize().scale() > 4 =>
            {
                Err(AboutError::Tax(percent))
            }
            _ => Ok(()),
        }
    }

    /// Whether somebody is the host, who may earn a reward.
    pub fn has_a_host(&self) -> bool {
        self.host.is_some() || matches!(self.kind, Some(ShowKind::HomeParty | ShowKind::ChildrensParty))
    }

    /// The rule by which this show's sums are made, where the table's own is `table`. Whether the marked prices contain the
    /// tax is said by the price marks on the table, so it stays as it is wherever the table says it; the place has its rate.
    pub fn tax_over(&self, table: TaxRule) -> TaxRule {
        match (table, self.tax) {
            (table, None) => table,
            (TaxRule::Added { .. }, Some(TaxRule::Added { percent } | TaxRule::Included { percent })) => {
                TaxRule::Added { percent }
            }
            (TaxRule::Included { .. }, Some(TaxRule::Added { percent } | TaxRule::Included { percent })) => {
                TaxRule::Included { percent }
            }
            (_, Some(of_place)) => of_place,
        }
    }
}

/// A show on the list of all of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ShowListed {
    /// Its number.
    pub id: i64,
    /// When it was opened.
    pub opened: Timestamp,
    /// When it was closed; the running one is not.
    pub closed: Option<Timestamp>,
    /// What it is.
    pub about: AboutShow,
}

impl ShowListed {
    const COLUMNS: &str = "id, opened, closed, about";

    fn read(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            id: row.get(0)?,
            opened: time(&row.get::<_, String>(1)?),
            closed: row.get::<_, Option<String>>(2)?.map(|text| time(&text)),
            about: from_row(&row.get::<_, String>(3)?),
        })
    }
}

/// What a later version wrote may not read; then nothing is known of the show, which only leaves words out.
fn from_row(text: &str) -> AboutShow {
    serde_json::from_str(text).unwrap_or_default()
}

/// What is known of show `show`.
pub(super) fn about(db: &Connection, show: i64) -> Result<AboutShow, LedgerError> {
    let mut one = db.prepare_cached("SELECT about FROM shows WHERE id = ?")?;
    let text: Option<String> = one.query_row([show], |row| row.get(0)).optional()?;
    Ok(text.map(|text| from_row(&text)).unwrap_or_default())
}

/// Keeps what a running show is.
pub(super) fn keep(db: &Connection, show: i64, about: &AboutShow) -> Result<usize, LedgerError> {
    let mut one = db.prepare_cached("UPDATE shows SET about = ? WHERE id = ? AND closed IS NULL")?;
    Ok(one.execute(params![serde_json::to_string(about)?, show])?)
}

impl Ledger {
    /// What is known of show `show`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn about_show(&self, show: i64) -> Result<AboutShow, LedgerError> {
        about(&self.db, show)
    }

    /// Says what the running show `show` is, whose amounts are in `currency`. What is known already is no news.
    ///
    /// # Errors
    /// The show is closed, or nothing of the kind can be said of a show; or the disk refuses. Nothing is entered then.
    pub fn set_about(
        &mut self,
        show: i64,
        told: &AboutShow,
        currency: Currency,
        now: Timestamp,
    ) -> Result<(), LedgerError> {
        told.check(currency)?;
        let tx = self.begin()?;
        let before = about(&tx, show)?;
        if keep(&tx, show, told)? == 0 {
            return Err(LedgerError::ShowClosed(show));
        }
        if before != *told {
            note(&tx, now, None, "show_told", &(show, told))?;
            tx.commit()?;
        }
        Ok(())
    }

    /// What the last show of this kind before show `show` was: its place, fee and float are the usual ones.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn last_of_kind(&self, kind: ShowKind, show: i64) -> Result<Option<AboutShow>, LedgerError> {
        let mut earlier = self.db.prepare_cached(
            "SELECT about FROM shows WHERE id < ? AND json_valid(about) AND json_extract(about, '$.kind') = ?
             ORDER BY id DESC LIMIT 1",
        )?;
        let kind = serde_json::to_value(kind)?;
        let text: Option<String> =
            earlier.query_row(params![show, kind.as_str().unwrap_or_default()], |row| row.get(0)).optional()?;
        Ok(text.map(|text| from_row(&text)))
    }

    /// At most `limit` shows, the newest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn shows(&self, limit: usize) -> Result<Vec<ShowListed>, LedgerError> {
        let columns = ShowListed::COLUMNS;
        let mut all = self.db.prepare_cached(&format!("SELECT {columns} FROM shows ORDER BY id DESC LIMIT ?"))?;
        let rows = all.query_map([i64::try_from(limit).unwrap_or(i64::MAX)], ShowListed::read)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().expect("a number")
    }

    #[test]
    fn the_rate_of_the_place_is_taken_in_the_manner_of_the_table() {
        let place = |tax| AboutShow { tax, ..AboutShow::default() };
        let (added, included) = (|p| TaxRule::Added { percent: d(p) }, |p| TaxRule::Included { percent: d(p) });
        for (table, of_place, comes_to) in [
            (added("6.25"), None, added("6.25")),
            (added("6.25"), Some(added("8.875")), added("8.875")),
            (included("20"), Some(added("7")), included("7")),
            (included("20"), Some(included("0")), included("0")),
            (added("6.25"), Some(TaxRule::None), TaxRule::None),
            (TaxRule::None, Some(added("5")), added("5")),
            (TaxRule::None, Some(included("5")), included("5")),
            (TaxRule::None, None, TaxRule::None),
        ] {
            assert_eq!(place(of_place).tax_over(table), comes_to, "{table:?} {of_place:?}");
        }
    }

    #[test]
    fn what_can_be_said_of_no_show_is_refused() {
        let currency = Currency::from_code("USD").expect("a currency");
        let good = AboutShow {
            place: Some("Mill Lane, hall 2".into()),
            kind: Some(ShowKind::Fair),
            tax: Some(TaxRule::Added { percent: d("8.875") }),
            fee: Some(d("45.00")),
            host: Some("Host at Mill Lane".into()),
            float: Some(d("0")),
        };
        assert_eq!(good.check(currency), Ok(()));
        let with = |change: &dyn Fn(&mut AboutShow)| {
            let mut other = good.clone();
            change(&mut other);
            other.check(currency).expect_err("no show is so").to_string()
        };
        assert!(with(&|show| show.place = Some(String::new())).contains("no name of a place"));
        assert!(with(&|show| show.host = Some("a\nb".into())).contains("no name of a host"));
        assert!(with(&|show| show.place = Some("x".repeat(61))).contains("60"));
        assert!(with(&|show| show.fee = Some(d("-1"))).contains("stall fee"));
        assert!(with(&|show| show.float = Some(d("0.005"))).contains("2 decimals"));
        assert!(with(&|show| show.fee = Some(d("1000001"))).contains("1000001"));
        assert!(with(&|show| show.tax = Some(TaxRule::Included { percent: d("101") })).contains("100"));
        assert!(with(&|show| show.tax = Some(TaxRule::Added { percent: d("-1") })).contains("percentage"));
    }

    #[test]
    fn every_kind_has_a_name_of_its_own() {
        for kind in ShowKind::REAL {
            assert_eq!(ShowKind::from_code(kind.code()), Some(kind));
        }
        assert_eq!(ShowKind::from_code("practice"), None, "nobody makes a show practice by a form");
    }
}
