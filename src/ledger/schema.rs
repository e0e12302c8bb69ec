//! The tables, and how an older file is brought up to date.

use rusqlite::Connection;

use super::LedgerError;

/// One step per layout; a file at layout n has had the first n steps. Steps are never changed, only added.
const STEPS: &[&str] = &[
    "
    CREATE TABLE events (
        seq    INTEGER PRIMARY KEY AUTOINCREMENT,
        at     TEXT NOT NULL,
        ticket TEXT,
        kind   TEXT NOT NULL,
        body   TEXT NOT NULL
    ) STRICT;
    CREATE INDEX events_of_ticket ON events (ticket) WHERE ticket IS NOT NULL;
    CREATE TABLE shows (
        id     INTEGER PRIMARY KEY,
        opened TEXT NOT NULL,
        closed TEXT
    ) STRICT;
    CREATE TABLE tickets (
        id         TEXT PRIMARY KEY,
        show       INTEGER NOT NULL REFERENCES shows (id),
        number     TEXT NOT NULL,
        arrival    INTEGER NOT NULL,
        state      TEXT NOT NULL,
        hold_until TEXT,
        sent       TEXT NOT NULL,
        ticket     TEXT NOT NULL,
        UNIQUE (show, number)
    ) STRICT;
    CREATE INDEX tickets_by_arrival ON tickets (arrival);
    CREATE TABLE stock (
        id      TEXT PRIMARY KEY,
        on_hand INTEGER NOT NULL CHECK (on_hand >= 0),
        held    INTEGER NOT NULL CHECK (held >= 0 AND held <= on_hand),
        counted INTEGER NOT NULL
    ) STRICT;
    CREATE TABLE kiosks (
        digit    INTEGER PRIMARY KEY CHECK (digit BETWEEN 0 AND 9),
        key_hash TEXT NOT NULL UNIQUE,
        paired   TEXT NOT NULL
    ) STRICT;
    CREATE TABLE sessions (
        token_hash TEXT PRIMARY KEY,
        began      TEXT NOT NULL,
        used       TEXT NOT NULL
    ) STRICT;
    CREATE TABLE settings (
        name  TEXT PRIMARY KEY,
        value TEXT NOT NULL
    ) STRICT;
",
    "
    CREATE TABLE facts (
        id   TEXT PRIMARY KEY,
        part TEXT NOT NULL
    ) STRICT;
",
    // Where a ticket was settled: the show that was running when it was rung up or let go.
    "
    ALTER TABLE tickets ADD COLUMN settled INTEGER REFERENCES shows (id);
    CREATE INDEX events_of_the_desk ON events (kind, body) WHERE ticket IS NULL;
    UPDATE tickets SET settled = coalesce((
        SELECT CAST(opened.body AS INTEGER) FROM events AS opened
        WHERE opened.ticket IS NULL AND opened.kind = 'show_opened' AND opened.seq < (
            SELECT max(settling.seq) FROM events AS settling
            WHERE settling.ticket = tickets.id AND settling.kind IN ('rung_up', 'let_go'))
        ORDER BY opened.seq DESC LIMIT 1
    ), show) WHERE state IN ('rung_up', 'handed_over', 'let_go');
    DROP INDEX tickets_by_arrival;
    CREATE INDEX tickets_by_state ON tickets (state, arrival);
    CREATE INDEX tickets_by_settled ON tickets (settled, arrival) WHERE settled IS NOT NULL;
    CREATE TABLE sums (
        show INTEGER PRIMARY KEY REFERENCES shows (id),
        body TEXT NOT NULL
    ) STRICT;
",
    "
    CREATE TABLE price_lists (
        seq  INTEGER PRIMARY KEY AUTOINCREMENT,
        list TEXT NOT NULL UNIQUE
    ) STRICT;
",
    // Who did it; what is paid together; what a show is; who works at the desk.
    "
    ALTER TABLE events ADD COLUMN by TEXT;
    CREATE TABLE bills (
        id      TEXT PRIMARY KEY,
        show    INTEGER NOT NULL REFERENCES shows (id),
        number  TEXT NOT NULL,
        arrival INTEGER NOT NULL,
        state   TEXT NOT NULL,
        total   TEXT NOT NULL,
        paid_ms INTEGER,
        bill    TEXT NOT NULL
    ) STRICT;
    CREATE INDEX bills_by_number ON bills (show, number);
    CREATE INDEX bills_by_state ON bills (state, arrival);
    CREATE INDEX bills_by_payment ON bills (paid_ms) WHERE paid_ms IS NOT NULL;
    ALTER TABLE shows ADD COLUMN about TEXT NOT NULL DEFAULT '{}';
    CREATE TABLE staff (
        name  TEXT PRIMARY KEY,
        role  TEXT NOT NULL,
        pin   TEXT NOT NULL,
        since TEXT NOT NULL
    ) STRICT;
    ALTER TABLE sessions ADD COLUMN who TEXT;
",
    // How each count moved, with the entry by which; what was counted by hand; what moved on each day; what the bench keeps.
    "
    CREATE TABLE stock_moves (
        move    INTEGER PRIMARY KEY AUTOINCREMENT,
        part    TEXT NOT NULL,
        on_hand INTEGER NOT NULL,
        held    INTEGER NOT NULL,
        seq     INTEGER
    ) STRICT;
    CREATE INDEX stock_moves_of_part ON stock_moves (part, move);
    CREATE INDEX stock_moves_unnoted ON stock_moves (move) WHERE seq IS NULL;
    INSERT INTO stock_moves (part, on_hand, held, seq)
        SELECT id, on_hand, held, (SELECT coalesce(max(seq), 0) FROM events) FROM stock;
    CREATE TRIGGER stock_begins AFTER INSERT ON stock BEGIN
        INSERT INTO stock_moves (part, on_hand, held) VALUES (NEW.id, NEW.on_hand, NEW.held);
    END;
    CREATE TRIGGER stock_changes AFTER UPDATE ON stock
    WHEN OLD.on_hand <> NEW.on_hand OR OLD.held <> NEW.held BEGIN
        INSERT INTO stock_moves (part, on_hand, held) VALUES (NEW.id, NEW.on_hand, NEW.held);
    END;
    CREATE TABLE last_counts (
        part    TEXT PRIMARY KEY,
        at      TEXT NOT NULL,
        counted INTEGER NOT NULL,
        missing INTEGER NOT NULL
    ) STRICT;
    CREATE INDEX events_of_counting ON events (seq)
        WHERE kind IN ('parts_counted', 'count_explained', 'stock_changed', 'stray_home');
    CREATE TABLE moved (
        show INTEGER NOT NULL REFERENCES shows (id),
        day  TEXT NOT NULL,
        body TEXT NOT NULL,
        PRIMARY KEY (show, day)
    ) STRICT;
    CREATE TABLE workbook (
        kind TEXT NOT NULL,
        id   TEXT NOT NULL,
        seq  INTEGER NOT NULL,
        body TEXT NOT NULL,
        PRIMARY KEY (kind, id)
    ) STRICT;
",
];

/// Sets the connection up for durable commits and brings the file's layout up to date.
pub(super) fn prepare(db: &mut Connection) -> Result<(), LedgerError> {
    connect(db)?;
    let known = STEPS.len() as i64;
    let found = layout(db)?;
    if found > known {
        return Err(LedgerError::Newer { found, known });
    }
    for (step, sql) in STEPS.iter().enumerate().skip(found as usize) {
        let tx = db.transaction()?;
        tx.execute_batch(sql)?;
        tx.pragma_update(None, "user_version", step as i64 + 1)?;
        tx.commit()?;
    }
    Ok(())
}

/// Refuses a file of another layout than this program's, without changing anything in it.
pub(super) fn is_of_today(db: &Connection) -> Result<(), LedgerError> {
    let (found, known) = (layout(db)?, STEPS.len() as i64);
    match found {
        _ if found > known => Err(LedgerError::Newer { found, known }),
        _ if found < known => Err(LedgerError::Older { found, known }),
        _ => Ok(()),
    }
}

/// The file's layout; 0 where there is nothing in it.
pub(super) fn layout(db: &Connection) -> Result<i64, LedgerError> {
    Ok(db.pragma_query_value(None, "user_version", |row| row.get(0))?)
}

/// Sets the connection up for durable commits.
pub(super) fn connect(db: &Connection) -> Result<(), LedgerError> {
    // The write-ahead log's reset race loses acknowledged commits before 3.51.3.
    if rusqlite::version_number() < 3_051_003 {
        return Err(LedgerError::OldLibrary(rusqlite::version()));
    }
    be_patient(db)?;
    db.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;
         PRAGMA trusted_schema = OFF; PRAGMA journal_size_limit = 16777216;",
    )?;
    Ok(())
}

/// Lets the connection wait for another, as for a backup, and keep the statements that every page needs.
pub(super) fn be_patient(db: &Connection) -> Result<(), LedgerError> {
    db.busy_timeout(std::time::Duration::from_secs(2))?;
    db.set_prepared_statement_cache_capacity(64);
    Ok(())
}
