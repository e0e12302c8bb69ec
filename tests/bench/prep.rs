//! A plan of cuts with its bound, and how many of 200 drops to make after 20 shows.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::hint::black_box;

use chatelaine::prep::{
    Outcome, Prior, Sureness, Worth,
    cuts::{CutJob, Stock, Tenths, Wanted, better_plan, quick_plan},
    forecast, how_many,
};
use criterion::{Criterion, criterion_group, criterion_main};

/// Sixty chains of the trade's six lengths from ten spools: three whole ones, two begun, five remnants.
fn chains() -> CutJob {
    let wanted: Vec<Wanted> = [("14in", 8), ("16in", 12), ("18in", 12), ("20in", 10), ("24in", 12), ("30in", 6)]
        .map(|(length, count)| Wanted { length: Tenths::no_shorter(length.parse().unwrap()), count })
        .to_vec();
    let spools = [("10m", 3, 500), ("7.35m", 1, 0), ("4.1m", 1, 0), ("1270mm", 1, 0), ("985mm", 1, 0)];
    let remnants = [("730mm", 1, 0), ("655mm", 1, 0), ("512mm", 1, 0)];
    let stock = spools.iter().chain(&remnants).map(|&(length, count, opening)| Stock {
        length: Tenths::no_longer(length.parse().unwrap()),
        count,
        opening: Tenths(opening),
    });
    CutJob::new(stock.collect(), &wanted, Tenths(30), Some(Tenths(3_556))).unwrap()
}

fn cuts(criterion: &mut Criterion) {
    let job = chains();
    let plan = better_plan(&job, &mut |_| true).unwrap();
    println!("60 chains of 6 lengths from 10 spools: {:.3} % above the bound", plan.gap * 100.0);
    assert!(plan.gap < 0.01);
    criterion.bench_function("cuts at once", |b| b.iter(|| black_box(quick_plan(black_box(&job)))));
    let mut slow = criterion.benchmark_group("cuts");
    slow.sample_size(10);
    slow.bench_function("with their bound", |b| b.iter(|| better_plan(black_box(&job), &mut |_| true).unwrap()));
    slow.finish();
}

/// 200 drops over 20 shows; every fifth count is of a drop that sold out.
fn shows() -> Vec<Vec<Outcome>> {
    (0..200_u32)
        .map(|drop| {
            (0..20_u32)
                .map(|show| Outcome {
                    sold: 1 + (drop * 7 + show * 5) % (3 + drop % 29),
                    sold_out: (drop + show) % 5 == 0,
                    size: 0.5 + f64::from(show % 4) * 0.25,
                })
                .collect()
        })
        .collect()
}

fn numbers(criterion: &mut Criterion) {
    let (all, worth) = (shows(), Worth { price: 8.into(), cost: 2.into(), leftover: 1.into() });
    criterion.bench_function("how many of 200 drops after 20 shows", |b| {
        b.iter(|| {
            for drop in &all {
                let next = forecast(Prior::about(8.0, Sureness::Hardly), drop, 1.0).unwrap();
                black_box(how_many(&next, &worth, 3));
            }
        });
    });
}

criterion_group!(benches, cuts, numbers);
criterion_main!(benches);
