//! The year for the tax return.

use chatelaine::{
    catalog::Catalog,
    export::DecimalMark,
    ledger::{AboutShow, Corrected, Ledger, ShowKind, TakeBack, YearTable},
    money::{PriceRules, TaxRule, Tender},
    ticket::SentTicket,
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::book::{catalog, check_all, now, sent};

fn d(text: &str) -> Decimal {
    text.parse().expect("a number")
}

fn at(text: &str) -> Timestamp {
    text.parse().expect("a time")
}

/// The test table with one base and one drop, which cost `base` and `drop` under this tax.
fn priced(base: &str, drop: &str, tax: TaxRule) -> Catalog {
    let mut catalog = (*catalog()).clone();
    catalog.bases.iter_mut().find(|one| one.id == "chain-brass").expect("the chain").price = d(base);
    catalog.drops.iter_mut().find(|one| one.id == "key-heart").expect("the key").price = d(drop);
    catalog.table.prices = PriceRules { tax, cash_step: d("0.01"), discounts: vec![], ..catalog.table.prices };
    catalog
}

fn about(place: &str, kind: ShowKind) -> AboutShow {
    AboutShow { place: Some(place.into()), kind: Some(kind), ..AboutShow::default() }
}

struct Year {
    ledger: Ledger,
    sequence: u16,
}

impl Year {
    fn sells(&mut self, catalog: &Catalog, tender: Tender, at: Timestamp) -> Uuid {
        let show = self.ledger.show().expect("a show").id;
        let ticket = SentTicket { show, ..sent(catalog, self.sequence, &["key-heart"]) };
        self.sequence += 1;
        self.ledger.take_catalog(catalog, &format!("as of {at}"), at).expect("taken over");
        self.ledger.receive(&ticket, false, catalog, at).expect("received");
        check_all(&mut self.ledger, ticket.id);
        self.ledger.ring_up(ticket.id, tender, at).expect("rung up");
        ticket.id
    }

    fn begins(&mut self, catalog: &Catalog, about: &AboutShow, at: Timestamp) {
        let show = self.ledger.show().expect("a show").id;
        self.ledger.set_about(show, about, catalog.table.prices.currency, at).expect("told");
    }
}

/// A year of four shows. Sources of the sums: Streamlined Sales and Use Tax Agreement, section 324 (10.99 at 6.25 % is 0.69 of
/// tax); HMRC, VAT guide (120 with 20 % inside is 100 and 20). The first show stands open over the end of March; in July what
/// was sold in March is taken back, and a card turns out to have been cash.
fn four_shows() -> Ledger {
    let (mill, hall) = (
        priced("6.99", "4.00", TaxRule::Added { percent: d("6.25") }),
        priced("100", "20", TaxRule::Included { percent: d("20") }),
    );
    let mut year = Year { ledger: Ledger::in_memory(at("2026-03-01T12:00:00Z")).expect("a ledger"), sequence: 0 };
    year.begins(&mill, &about("=Mill Lane", ShowKind::Fair), at("2026-03-01T12:00:00Z"));
    let first = year.sells(&mill, Tender::Card, at("2026-03-31T12:00:00Z"));
    year.sells(&mill, Tender::Cash, at("2026-04-01T12:00:00Z"));
    let currency = mill.table.prices.currency;
    year.ledger.close_show(currency, at("2026-04-02T12:00:00Z")).expect("closed");
    year.begins(&hall, &about("Harbour Hall", ShowKind::HomeParty), at("2026-04-10T12:00:00Z"));
    let second = year.sells(&hall, Tender::Card, at("2026-04-10T12:00:00Z"));
    year.ledger.close_show(currency, at("2026-04-11T12:00:00Z")).expect("closed");
    year.begins(&hall, &about("Kitchen", ShowKind::Practice), at("2026-05-01T12:00:00Z"));
    year.sells(&hall, Tender::Card, at("2026-05-01T12:00:00Z"));
    year.ledger.close_show(currency, at("2026-05-02T12:00:00Z")).expect("closed");
    year.begins(&mill, &about("Quay", ShowKind::Fair), at("2026-07-05T12:00:00Z"));
    let bill = |ledger: &Ledger, ticket| ledger.ticket(ticket).expect("a ticket").bill.expect("a bill");
    let back = TakeBack { what: Corrected::Ticket(first), parts_home: true, reason: "too long".into() };
    let id = bill(&year.ledger, first);
    year.ledger.take_back(id, &back, Some(&Tender::Cash), at("2026-07-05T12:00:00Z")).expect("taken back");
    let id = bill(&year.ledger, second);
    year.ledger.other_tender(id, 0, &Tender::Cash, "it was cash", at("2026-07-05T12:30:00Z")).expect("put right");
    year.ledger
}

#[test]
fn the_year_tells_tax_by_quarter_and_place_and_what_was_put_right_when_it_was() {
    let ledger = four_shows();
    let year = ledger.year(2026).expect("a year");
    let tax: Vec<_> = year
        .tax()
        .into_iter()
        .map(|line| (line.quarter, line.place.unwrap_or_default(), line.rate, line.net, line.tax, line.gross))
        .collect();
    let rate = |text| Some(d(text));
    assert_eq!(
        tax,
        [
            (1, "=Mill Lane".to_owned(), rate("6.25"), d("10.99"), d("0.69"), d("11.68")),
            (2, "=Mill Lane".to_owned(), rate("6.25"), d("10.99"), d("0.69"), d("11.68")),
            (2, "Harbour Hall".to_owned(), rate("20"), d("100"), d("20"), d("120")),
            (3, "Quay".to_owned(), rate("6.25"), d("-10.99"), d("-0.69"), d("-11.68")),
        ]
    );
    let payments: Vec<_> = year.payments().into_iter().map(|line| (line.quarter, line.way, line.amount)).collect();
    let way = |quarter, way: &str, amount| (quarter, way.to_owned(), d(amount));
    assert_eq!(
        payments,
        [
            way(1, "card", "11.68"),
            way(2, "card", "120"),
            way(2, "cash", "11.68"),
            way(3, "card", "-120"),
            way(3, "cash", "108.32")
        ]
    );
    let put_right: Vec<_> =
        year.reductions().into_iter().map(|line| (line.quarter, line.what.code(), line.amount)).collect();
    assert_eq!(
        put_right,
        [(3, "taken_back", d("11.68")), (3, "tax_taken_back", d("0.69")), (3, "paid_out", d("11.68"))]
    );
    assert!(year.shows.iter().all(|one| !one.by_closing && one.place.as_deref() != Some("Kitchen")));
    // The second account: what the shows themselves came to.
    let shows = [1, 2].map(|show| ledger.closed_show(show).expect("read").expect("closed").sums);
    let totals: Decimal = shows.iter().map(|sums| sums.totals).sum::<Decimal>() + ledger.so_far().expect("sums").totals;
    assert_eq!(year.tax().iter().map(|line| line.gross).sum::<Decimal>(), totals);
    assert!(ledger.year(2025).expect("a year").shows.is_empty() && ledger.year(2027).expect("a year").shows.is_empty());
}

/// Read back with a reader of CSV (RFC 4180). A place that looks like a formula is words.
#[test]
fn the_years_tables_read_back_and_hold_no_formulas() {
    let year = four_shows().year(2026).expect("a year");
    for (mark, separator, net) in [(DecimalMark::Point, b',', "10.99"), (DecimalMark::Comma, b';', "10,99")] {
        let bytes = year.table(YearTable::Tax, mark).expect("a table");
        let text = bytes.strip_prefix("\u{feff}".as_bytes()).expect("a byte order mark");
        let mut reader = csv::ReaderBuilder::new().delimiter(separator).from_reader(text);
        assert_eq!(reader.headers().expect("a head").len(), 7);
        let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>().expect("rows");
        assert_eq!(rows.len(), year.tax().len());
        assert_eq!((&rows[0][0], &rows[0][3], &rows[0][4]), ("2026-Q1", "6.25", net));
        assert!(!rows[0][1].starts_with('=') && rows[0][1].contains("Mill Lane"), "{}", &rows[0][1]);
        for table in [YearTable::Payments, YearTable::Reductions] {
            assert!(!year.table(table, mark).expect("a table").is_empty());
        }
    }
}

/// A ledger of an earlier version kept no days: its shows count on the day on which they were closed, and nothing is lost.
#[test]
fn shows_of_an_earlier_version_count_when_they_were_closed() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let fixture = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/ledger/layout-5.sql");
    let db = rusqlite::Connection::open(&file).expect("a file");
    db.execute_batch(&std::fs::read_to_string(fixture).expect("a fixture")).expect("written");
    drop(db);
    let ledger = Ledger::open(&file, now()).expect("the book");
    let year = ledger.year(2026).expect("a year");
    assert!(!year.shows.is_empty() && year.shows.iter().all(|one| one.by_closing && one.quarter == 2), "{year:?}");
    let closed = ledger.closed_show(1).expect("read").expect("closed").sums;
    let all = closed.totals + ledger.so_far().expect("sums").totals;
    assert_eq!(year.tax().iter().map(|line| line.gross).sum::<Decimal>(), all);
}
