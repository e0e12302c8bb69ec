//! A table of 1,000 compartments at its maker's desk: the page of all of them, one compartment's page, and an edit with all that
//! follows from it.

#![allow(
    unreachable_pub,
    dead_code,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{cell::Cell, fmt::Write, fs};

use criterion::{Criterion, criterion_group, criterion_main};

#[path = "../desk/empty_table.rs"]
mod empty_table;
#[path = "../desk/kit.rs"]
mod kit;
#[path = "../desk/seller.rs"]
mod seller;
#[path = "../support/mod.rs"]
mod support;

use kit::Table;

/// Trays of this table, and compartments of each.
const TRAYS: usize = 20;
const OF_EACH: usize = 50;

/// A desk on a table of 1,000 compartments, each told in one line.
fn large() -> Table {
    let table = Table::empty();
    for tray in 0..TRAYS {
        let letter = char::from(b'A' + tray as u8);
        let mut text = format!("(letter: \"{letter}\", name: \"Tray {letter}\", rows: [\n");
        for n in 0..OF_EACH {
            let (open, close) = (if n % 10 == 0 { "[\n" } else { "" }, if n % 10 == 9 { "],\n" } else { "" });
            writeln!(text, "{open}(id: \"d-{tray}-{n}\", name: \"Drop {n}\", price: \"3.00\"), // {n}\n{close}")
                .unwrap();
        }
        text.push_str("])\n");
        fs::write(table.catalog_file(&format!("trays/{}.ron", letter.to_lowercase())), text).unwrap();
    }
    table
}

fn benches(criterion: &mut Criterion) {
    let table = large();
    let seller = table.seller();
    // The first edit takes all of it in.
    assert_eq!(seller.post("/table/at/A1", &[("typed", "5.00")]).status, 303);
    assert!(seller.get("/table").text.contains("1000 of 1000 compartments"));
    let mut group = criterion.benchmark_group("a table of 1,000 compartments");
    group.sample_size(20);
    group.bench_function("its page", |b| b.iter(|| assert_eq!(seller.get("/table").status, 200)));
    group.bench_function("one compartment", |b| b.iter(|| assert_eq!(seller.get("/table/at/J25").status, 200)));
    let price = Cell::new(300);
    group.bench_function("an edit, taken in", |b| {
        b.iter(|| {
            price.set(price.get() + 1);
            let typed = format!("{}.{:02}", price.get() / 100, price.get() % 100);
            assert_eq!(seller.post("/table/at/J25", &[("typed", &typed)]).status, 303);
        });
    });
    group.finish();
}

criterion_group!(all, benches);
criterion_main!(all);
