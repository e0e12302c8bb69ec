//! Published problems, and what solves them.

use super::*;

fn job(stock: u32, wanted: &[(u32, u32)]) -> CutJob {
    let wanted: Vec<Wanted> = wanted.iter().map(|&(length, count)| Wanted { length: Tenths(length), count }).collect();
    let stock = Stock { length: Tenths(stock), count: 1_000, opening: Tenths(0) };
    CutJob::new(vec![stock], &wanted, Tenths(0), None).unwrap()
}

/// Length of the stock, pieces by length and count, the least number of stocks, and the bound of the linear program.
type Published = (u32, &'static [(u32, u32)], u32, f64);

/// Sources: 1 a paper mill in a general encyclopaedia's article on the cutting stock problem; 2 the data of a modelling
/// system's library after Chvátal, Linear Programming (1983), chapter 13; 3 Winston, Operations Research, on column
/// generation; 4 Fourer, Gay and Kernighan, AMPL, on cutting. The bounds and optima of 1 and 2 were solved with another
/// solver, those of 3 to 7 worked out beside them; 5 to 7 have no published source.
const PUBLISHED: [Published; 7] = [
    (
        5600,
        &[
            (1380, 22),
            (1520, 25),
            (1560, 12),
            (1710, 14),
            (1820, 18),
            (1880, 18),
            (1930, 20),
            (2000, 10),
            (2050, 12),
            (2100, 14),
            (2140, 16),
            (2150, 18),
            (2200, 20),
        ],
        73,
        72.916_666_7,
    ),
    (100, &[(45, 97), (36, 610), (31, 395), (14, 211)], 453, 452.25),
    (17, &[(3, 25), (5, 20), (9, 15)], 19, 18.333_333_3),
    (110, &[(20, 48), (45, 35), (50, 24), (55, 10), (75, 8)], 47, 46.25),
    (218, &[(81, 44), (70, 3), (68, 48)], 35, 35.0),
    (9, &[(2, 20), (3, 10), (4, 20)], 18, 17.5),
    (10, &[(3, 9), (5, 79), (6, 90), (9, 27)], 157, 156.5),
];

#[test]
fn published_problems_come_out_as_published() {
    for (stock, wanted, pieces, bound) in PUBLISHED {
        let job = job(stock, wanted);
        let quick = quick_plan(&job);
        let better = better_plan(&job, &mut |_| true).unwrap();
        assert!(quick.is_complete() && better.plan.is_complete());
        assert_eq!(better.plan.pieces(), pieces, "{stock}: {better:?}");
        assert!(better.proven, "{stock}");
        // Best fit, longest first, takes at most 11/9 of the optimum and a little (Johnson and others, SIAM Journal on
        // Computing 3, 1974; quoted from memory).
        let most = f64::from(pieces) * 11.0 / 9.0 + 4.0;
        assert!(quick.pieces() >= pieces && f64::from(quick.pieces()) <= most, "{quick:?}");
        let (found, _) = super::bound::bound(&job, &quick, &mut |_| true).unwrap();
        let found = found.at_least / f64::from(stock);
        assert!((found - bound).abs() < 1e-6, "{stock}: {found} instead of {bound}");
    }
}
