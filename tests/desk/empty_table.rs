//! A desk on a table that is only begun.

use chatelaine::{catalog::begin_empty, caution::Region, desk::Desk, money::Currency};

use crate::kit::{Table, config};

impl Table {
    /// A desk on a new table in which nothing lies yet.
    pub fn empty() -> Self {
        let dir = tempfile::tempdir().expect("a temporary folder");
        let usd = Currency::from_code("USD").expect("a currency");
        begin_empty(&dir.path().join("catalog"), usd, Region::US).expect("a new table");
        let desk = Desk::start(config(dir.path())).expect("the desk starts");
        Self { desk, dir }
    }
}
