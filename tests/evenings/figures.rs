//! What was promised in figures, on whatever machine: the times are printed, and read where nobody else is at work.

use std::{
    cell::RefCell,
    time::{Duration, Instant},
};

use chatelaine::prep::{
    Outcome, Prior, Sureness, Worth,
    cuts::{CutJob, Stock, Tenths, Wanted, better_plan},
    forecast, how_many,
};

/// So long a search may take here, where other tests run beside it and nothing is made fast: the page gives it two seconds.
const PATIENCE: Duration = Duration::from_secs(60);

/// Sixty chains of the trade's six lengths from ten spools: three whole ones, two begun, five remnants. Every rest shorter than
/// `keep_from` is lost; all of them are where there is none.
fn sixty_chains(keep_from: Option<Tenths>) -> CutJob {
    let wanted: Vec<Wanted> = [("14in", 8), ("16in", 12), ("18in", 12), ("20in", 10), ("24in", 12), ("30in", 6)]
        .map(|(length, count)| Wanted { length: Tenths::no_shorter(length.parse().expect("a length")), count })
        .to_vec();
    let spools =
        [("10m", 3), ("7.35m", 1), ("4.1m", 1), ("1270mm", 1), ("985mm", 1), ("730mm", 1), ("655mm", 1), ("512mm", 1)];
    let stock = spools.map(|(length, count)| Stock {
        length: Tenths::no_longer(length.parse().expect("a length")),
        count,
        opening: Tenths(0),
    });
    CutJob::new(stock.to_vec(), &wanted, Tenths(30), keep_from).expect("a job")
}

#[test]
fn sixty_chains_come_within_one_percent_of_the_bound() {
    for (name, keep_from) in [("rests above 14 in are kept", Some(Tenths(3_556))), ("all rests are lost", None)] {
        let (job, began) = (sixty_chains(keep_from), Instant::now());
        let within = RefCell::new(None);
        let plan = better_plan(&job, &mut |progress| {
            if progress.at_least > 0.0 && (progress.cost - progress.at_least) / progress.at_least < 0.01 {
                within.borrow_mut().get_or_insert(began.elapsed());
            }
            began.elapsed() < PATIENCE
        });
        let plan = plan.expect("a plan");
        let all = began.elapsed();
        println!(
            "{name}: {:.3} % above the bound after {all:?}, within 1 % by {:?}",
            plan.gap * 100.0,
            within.borrow()
        );
        assert!(plan.plan.missing.iter().all(|n| *n == 0), "{name}");
        assert!(plan.gap < 0.01, "{name}: {:.3} %", plan.gap * 100.0);
    }
}

#[test]
fn how_many_of_two_hundred_drops_is_told_at_once() {
    let shows = |drop: u32| -> Vec<Outcome> {
        let of = |show: u32| Outcome {
            sold: (drop * 7 + show * 5) % (4 + drop % 29),
            sold_out: (drop + show).is_multiple_of(5),
            size: 1.0,
        };
        (0..20).map(of).collect()
    };
    let worth = Worth { price: 8.into(), cost: 2.into(), leftover: 1.into() };
    let began = Instant::now();
    for drop in 0..200 {
        let next = forecast(Prior::about(8.0, Sureness::Hardly), &shows(drop), 1.0).expect("a forecast");
        let number = how_many(&next, &worth, 3);
        assert!(number.take >= number.usually_from.min(1), "{number:?}");
    }
    println!("how many of 200 drops after 20 shows: {:?}", began.elapsed());
    assert!(began.elapsed() < Duration::from_secs(5), "{:?}", began.elapsed());
}
