//! Plans against all plans there are, and what a bench has beside.

use super::*;
use crate::craft::Length;

fn random(seed: &mut u64) -> u32 {
    // SplitMix64, Steele, Lea and Flood 2014.
    *seed = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *seed;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    (z ^ (z >> 31)) as u32
}

/// Whether a pattern can be cut from a piece.
fn fits(job: &CutJob, stock: usize, counts: &[u32]) -> bool {
    job.used(counts) <= u64::from(job.capacity(stock))
}

/// The least that any plan costs, by trying every way to give each piece to each spool.
fn least_of_all(job: &CutJob) -> u64 {
    let spools: Vec<usize> = job.stock.iter().enumerate().flat_map(|(at, one)| vec![at; one.count as usize]).collect();
    let pieces: Vec<usize> = job.wanted.iter().enumerate().flat_map(|(at, one)| vec![at; one.count as usize]).collect();
    let mut filled = vec![vec![0; job.wanted.len()]; spools.len()];
    fn place(job: &CutJob, spools: &[usize], pieces: &[usize], filled: &mut Vec<Vec<u32>>, missing: u64) -> u64 {
        let Some((&piece, rest)) = pieces.split_first() else {
            let cut: u64 = spools.iter().zip(filled).map(|(stock, counts)| job.cost(*stock, counts)).sum();
            return cut + missing * job.cost_of_missing();
        };
        let mut least = place(job, spools, rest, filled, missing + 1);
        for at in 0..spools.len() {
            filled[at][piece] += 1;
            if fits(job, spools[at], &filled[at]) {
                least = least.min(place(job, spools, rest, filled, missing));
            }
            filled[at][piece] -= 1;
        }
        least
    }
    place(job, &spools, &pieces, &mut filled, 0)
}

#[test]
fn no_plan_of_all_there_are_is_better() {
    let mut seed = 7;
    let mut worse_at_once = 0;
    for case in 0..150 {
        let wanted: Vec<Wanted> = (0..1 + random(&mut seed) % 3)
            .map(|_| Wanted { length: Tenths(20 + random(&mut seed) % 60), count: 1 + random(&mut seed) % 2 })
            .collect();
        let stock: Vec<Stock> = (0..1 + random(&mut seed) % 3)
            .map(|_| Stock {
                length: Tenths(30 + random(&mut seed) % 150),
                count: 1,
                opening: Tenths(random(&mut seed) % 2 * 15),
            })
            .collect();
        let kerf = Tenths(random(&mut seed) % 4);
        let keep_from = (case % 3 > 0).then(|| Tenths(random(&mut seed) % 50));
        let job = CutJob::new(stock, &wanted, kerf, keep_from).unwrap();
        let least = least_of_all(&job);
        let better = better_plan(&job, &mut |_| true).unwrap();
        assert_eq!(better.plan.cost, least, "{case}: {job:?}\n{better:?}");
        assert!(better.proven && better.gap == 0.0, "{case}: {better:?}");
        let quick = quick_plan(&job);
        assert!(quick.cost >= least);
        worse_at_once += usize::from(quick.cost > least);
        assert_adds_up(&job, &quick);
        assert_adds_up(&job, &better.plan);
    }
    assert!(worse_at_once > 0, "the cases are too easy to tell a better plan");
}

/// Every length is there or missing, no spool is cut twice, and nothing is longer than its spool.
fn assert_adds_up(job: &CutJob, plan: &CutPlan) {
    for (item, wanted) in job.wanted.iter().enumerate() {
        let cut: u32 = plan.cuts.iter().map(|cut| cut.times * cut.counts[item]).sum();
        assert_eq!(cut + plan.missing[item], wanted.count);
    }
    let (mut drawn, mut lengths) = (0, 0);
    for (stock, one) in job.stock.iter().enumerate() {
        let of_kind = plan.cuts.iter().filter(|cut| cut.stock == stock);
        assert!(of_kind.map(|cut| cut.times).sum::<u32>() <= one.count);
    }
    for cut in &plan.cuts {
        assert!(fits(job, cut.stock, &cut.counts));
        let of_one: u32 = cut.counts.iter().zip(&job.wanted).map(|(n, one)| n * one.length.0).sum();
        let kept = if cut.kept { cut.left.0 } else { 0 };
        drawn += cut.times * (job.stock[cut.stock].length.0 - kept);
        lengths += cut.times * of_one;
    }
    assert_eq!((plan.drawn.0, plan.lost.0), (drawn, drawn - lengths));
}

#[test]
fn a_cut_takes_its_link_and_a_full_spool_needs_no_last_cut() {
    let chain = |spool: &str, keep| {
        let stock = vec![Stock { length: Tenths::no_longer(spool.parse().unwrap()), count: 1, opening: Tenths(0) }];
        let wanted = [Wanted { length: Tenths::no_shorter("24in".parse().unwrap()), count: 2 }];
        quick_plan(&CutJob::new(stock, &wanted, Tenths(30), keep).unwrap())
    };
    // Two of 609.6 mm and one link of 3 mm between them.
    assert!(chain("1222.2mm", None).is_complete() && !chain("1222.1mm", None).is_complete());
    let kept = chain("2m", Some(Tenths(4_000)));
    assert_eq!((kept.lost, kept.drawn, kept.cuts[0].left), (Tenths(60), Tenths(12_252), Tenths(7_748)));
    assert_eq!(chain("2m", None).lost, Tenths(7_808));
    assert_eq!(Tenths::no_shorter(Length::from_mm(609.61)), Tenths(6_097));
    assert_eq!(Tenths::no_longer(Length::from_mm(609.69)), Tenths(6_096));
}

#[test]
fn remnants_go_before_whole_spools_and_what_is_missing_is_told() {
    let stock = vec![
        Stock { length: Tenths(100_000), count: 1, opening: Tenths(500) },
        Stock { length: Tenths(6_200), count: 3, opening: Tenths(0) },
    ];
    let wanted = [Wanted { length: Tenths(6_096), count: 3 }];
    let job = CutJob::new(stock.clone(), &wanted, Tenths(0), Some(Tenths(4_000))).unwrap();
    let plan = better_plan(&job, &mut |_| true).unwrap().plan;
    assert_eq!((plan.cuts.len(), plan.cuts[0].stock, plan.lost), (1, 1, Tenths(312)));
    let many = [Wanted { length: Tenths(6_096), count: 25 }];
    let job = CutJob::new(stock, &many, Tenths(0), Some(Tenths(4_000))).unwrap();
    let plan = better_plan(&job, &mut |_| true).unwrap().plan;
    assert_eq!(plan.missing, [6], "sixteen from the spool, three remnants");
    assert!(!plan.is_complete());
}

#[test]
fn what_is_no_job_is_refused_in_words() {
    let stock = |length, count| vec![Stock { length: Tenths(length), count, opening: Tenths(0) }];
    let wanted = |length, count| [Wanted { length: Tenths(length), count }];
    let told = |stock, wanted: &[Wanted]| CutJob::new(stock, wanted, Tenths(0), None).unwrap_err().to_string();
    assert_eq!(told(stock(1, 1), &[]), "no lengths are wanted; say how many of which length");
    assert!(told(stock(1, 1), &wanted(0, 1)).contains("0 mm is no length to cut"));
    assert!(told(stock(u32::MAX, 1), &wanted(5, 1)).contains("up to 1 km"));
    assert!(told(stock(9, 0), &wanted(5, 1)).contains("0 pieces are not between 1 and 10000"));
    assert!(told(vec![stock(9, 1)[0]; 201], &wanted(5, 1)).contains("201 kinds of spools"));
    let nothing = CutJob::new(vec![], &wanted(5, 3), Tenths(0), None).unwrap();
    let plan = better_plan(&nothing, &mut |_| true).unwrap();
    assert_eq!((plan.plan.missing, plan.proven), (vec![3], true));
}

#[test]
fn whoever_stops_has_the_best_plan_so_far() {
    let stock = vec![Stock { length: Tenths(56_000), count: 100, opening: Tenths(0) }];
    let wanted: Vec<Wanted> = (0..12).map(|n| Wanted { length: Tenths(9_000 + 1_310 * n), count: 7 + n }).collect();
    let job = CutJob::new(stock, &wanted, Tenths(20), None).unwrap();
    let quick = quick_plan(&job);
    let mut costs = Vec::new();
    for looks in [0, 1, 5, 40] {
        let mut left = looks;
        let plan = better_plan(&job, &mut |_| {
            left -= 1;
            left >= 0
        })
        .unwrap();
        assert!(plan.plan.is_complete() && plan.plan.cost <= quick.cost && plan.at_least.0 as u64 <= plan.plan.cost);
        costs.push(plan.plan.cost);
    }
    assert!(costs.is_sorted_by(|a, b| a >= b), "{costs:?}");
}

/// Sixty chains of the trade's six lengths (common practice, no source) from ten spools, as a maker of one summer has them:
/// three whole ones, two begun, five remnants.
#[test]
fn sixty_chains_from_ten_spools_are_within_a_percent() {
    let lengths = ["14in", "16in", "18in", "20in", "24in", "30in"];
    let counts = [8, 12, 12, 10, 12, 6];
    let wanted: Vec<Wanted> = lengths
        .iter()
        .zip(counts)
        .map(|(length, count)| Wanted { length: Tenths::no_shorter(length.parse().unwrap()), count })
        .collect();
    let spool = |length: &str, opening| Stock {
        length: Tenths::no_longer(length.parse().unwrap()),
        count: 1,
        opening: Tenths(opening),
    };
    let stock = vec![
        Stock { count: 3, ..spool("10m", 500) },
        spool("7.35m", 0),
        spool("4.1m", 0),
        spool("1270mm", 0),
        spool("985mm", 0),
        spool("730mm", 0),
        spool("655mm", 0),
        spool("512mm", 0),
    ];
    for keep_from in [Some(Tenths(3_556)), Some(Tenths(1_500))] {
        let job = CutJob::new(stock.clone(), &wanted, Tenths(30), keep_from).unwrap();
        let better = better_plan(&job, &mut |_| true).unwrap();
        assert!(better.plan.is_complete() && better.gap < 0.01, "{keep_from:?}: {better:?}");
        assert!(better.plan.cost < quick_plan(&job).cost);
        assert_adds_up(&job, &better.plan);
    }
}
