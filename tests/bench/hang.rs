//! How long it takes to work out how a piece hangs.

use std::hint::black_box;

use chatelaine::hang::{Load, NecklaceLoad, necklace};
use criterion::{Criterion, criterion_group, criterion_main};

/// A 24 in necklace on a neck of 360 mm with twelve drops of unlike weight.
fn twelve_drops() -> NecklaceLoad {
    NecklaceLoad {
        front_length_mm: 429.6,
        width_mm: 114.6,
        rise_mm: 0.0,
        chain_g_per_mm: 0.0142,
        loads: (0..12).map(|i| Load { mass_g: 1.0 + f64::from(i * 7 % 5) }).collect(),
        gaps_mm: vec![9.0; 11],
    }
}

fn rest(c: &mut Criterion) {
    let load = twelve_drops();
    c.bench_function("rest, 12 drops", |b| b.iter(|| necklace(black_box(&load))));
}

criterion_group!(benches, rest);
criterion_main!(benches);
