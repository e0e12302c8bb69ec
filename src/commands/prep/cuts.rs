//! `chatelaine prep cuts`: which spool is cut into what.

use std::time::{Duration, Instant};

use chatelaine::{
    bench::{CUT_LISTS, CutList, carried_on, chains, parts_now, without_promised},
    catalog::Workshop,
    craft::Length,
    ledger::Ledger,
    prep::cuts::{BetterPlan, CutJob, Tenths, Wanted, better_plan},
};
use serde_json::{Value, json};

use super::{Bench, Place, Told, print, stop::Stop};

#[derive(clap::Args)]
pub(super) struct Options {
    /// The part that is cut, as parts.ron calls it.
    #[arg(long)]
    part: String,
    /// LENGTH=COUNT for each length, as in 18in=12.
    #[arg(required = true)]
    lengths: Vec<String>,
    /// How long to look for better plans at most, in seconds; Ctrl-C stops earlier.
    #[arg(long, default_value_t = 2, value_parser = clap::value_parser!(u64).range(0..=3600))]
    seconds: u64,
    #[command(flatten)]
    bench: Bench,
    #[command(flatten)]
    place: Place,
}

/// The lengths as they were typed, longest first and each once, as the job has them.
fn wanted(typed: &[String]) -> Result<Vec<Wanted>, Told> {
    let wanted = typed.iter().map(|one| {
        let wrong = || Told(format!("{one:?} is no length with a count; write 18in=12"));
        let (length, count) = one.split_once('=').ok_or_else(wrong)?;
        let length: Length = length.parse()?;
        Ok(Wanted { length: Tenths::no_shorter(length), count: count.parse().map_err(|_| wrong())? })
    });
    wanted.collect()
}

/// The workshop with its spools as the cuts so far have left them, without what lists that are worked on are going to cut; and
/// how long each of that is. A maker without a ledger has the spools of the file.
fn spools_now(workshop: Workshop, place: Place, part: &str) -> Result<(Workshop, Vec<Tenths>), Told> {
    let file = place.ledger()?;
    if !file.exists() {
        return Ok((workshop, vec![]));
    }
    let ledger = Ledger::beside_the_desk(&file)?;
    let lists: Vec<CutList> = ledger.pages::<CutList>(CUT_LISTS)?.into_iter().map(|kept| kept.page).collect();
    Ok(without_promised(carried_on(workshop, &parts_now(&ledger)?), &lists, part))
}

pub(super) fn run(options: Options) -> Result<(), Told> {
    let (_, workshop) = options.bench.workshop()?;
    let (workshop, promised) = spools_now(workshop, options.place, &options.part)?;
    let chains = chains(&workshop, &options.part, &wanted(&options.lengths)?)?;
    let (stop, began) = (Stop::listen(), Instant::now());
    let limit = Duration::from_secs(options.seconds);
    let mut told = Duration::ZERO;
    let better = better_plan(&chains.job, &mut |progress| {
        if began.elapsed() > told + Duration::from_secs(1) {
            told = began.elapsed();
            eprintln!(
                "{} s: {:.1} mm so far, at least {:.1} mm; Ctrl-C takes what there is",
                told.as_secs(),
                progress.cost / 10.0,
                progress.at_least / 10.0
            );
        }
        !stop.is_pressed() && began.elapsed() < limit
    })?;
    print(options.bench.json, &object(&chains.job, &better, &promised), || {
        let mut words = words(&chains.name, &chains.job, &better);
        if !promised.is_empty() {
            let all: Vec<String> = promised.iter().map(ToString::to_string).collect();
            words += &format!("\nLeft out, since a list that is worked on cuts it: {}.", all.join(", "));
        }
        words
    })
}

fn object(job: &CutJob, better: &BetterPlan, promised: &[Tenths]) -> Value {
    let plan = &better.plan;
    let cuts = plan.cuts.iter().map(|cut| {
        let lengths = job.wanted().iter().zip(&cut.counts).filter(|(_, n)| **n > 0);
        let lengths: Vec<Value> = lengths.map(|(one, n)| json!({ "length_mm": one.length.mm(), "count": n })).collect();
        json!({
            "spool_mm": job.stock()[cut.stock].length.mm(),
            "times": cut.times,
            "lengths": lengths,
            "left_mm": cut.left.mm(),
            "kept": cut.kept,
        })
    });
    let missing = job.wanted().iter().zip(&plan.missing).filter(|(_, n)| **n > 0);
    let missing: Vec<Value> = missing.map(|(one, n)| json!({ "length_mm": one.length.mm(), "count": n })).collect();
    json!({
        "cuts": cuts.collect::<Vec<Value>>(),
        "missing": missing,
        "promised_mm": promised.iter().map(|one| one.mm()).collect::<Vec<f64>>(),
        "drawn_mm": plan.drawn.mm(),
        "lost_mm": plan.lost.mm(),
        "at_least_mm": better.at_least.mm(),
        "gap_percent": better.gap * 100.0,
        "proven": better.proven,
    })
}

fn words(name: &str, job: &CutJob, better: &BetterPlan) -> String {
    let plan = &better.plan;
    let mut words = format!("{name}, to be ticked off:\n");
    for cut in &plan.cuts {
        let lengths = job.wanted().iter().zip(&cut.counts).filter(|(_, n)| **n > 0);
        let lengths: Vec<String> = lengths.map(|(one, n)| format!("{n} x {}", one.length)).collect();
        let rest = match (cut.left, cut.kept) {
            (Tenths(0), _) => "nothing is left".to_owned(),
            (left, true) => format!("{left} stay on it"),
            (left, false) => format!("{left} are lost"),
        };
        let times = if cut.times > 1 { format!("{} of them, each: ", cut.times) } else { String::new() };
        words += &format!("[ ] from {}: {times}{}; {rest}\n", job.stock()[cut.stock].length, lengths.join(", "));
    }
    for (one, missing) in job.wanted().iter().zip(&plan.missing).filter(|(_, n)| **n > 0) {
        words += &format!("[!] nothing is left for {missing} x {}\n", one.length);
    }
    let how_good = if better.proven {
        "no plan loses less".to_owned()
    } else {
        format!("at most {:.2} % above the best plan there can be", better.gap * 100.0)
    };
    words + &format!("Taken off the spools: {}, of it lost: {}; {how_good}.", plan.drawn, plan.lost)
}
