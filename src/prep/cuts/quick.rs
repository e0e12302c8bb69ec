//! A good plan at once: the longest lengths first, each from the piece in which it leaves least.

use super::{job::CutJob, plan::CutPlan};

/// A plan that is made at once. Remnants and begun spools go before whole ones.
pub fn quick_plan(job: &CutJob) -> CutPlan {
    let mut unopened: Vec<u32> = job.stock.iter().map(|one| one.count).collect();
    let mut pieces: Vec<(usize, Vec<u32>)> = Vec::new();
    for (item, wanted) in job.wanted.iter().enumerate() {
        for _ in 0..wanted.count {
            let place = best_place(job, item, &unopened, &pieces);
            match place {
                Some(Place::Begun(at)) => pieces[at].1[item] += 1,
                Some(Place::New(stock)) => {
                    unopened[stock] -= 1;
                    let mut counts = vec![0; job.wanted.len()];
                    counts[item] = 1;
                    pieces.push((stock, counts));
                }
                None => break,
            }
        }
    }
    CutPlan::of(job, pieces)
}

/// Where a length is cut from.
enum Place {
    /// A piece from which something is cut already.
    Begun(usize),
    /// A further piece of a kind.
    New(usize),
}

/// The piece in which a length leaves least; a whole spool is begun only where nothing else has room.
fn best_place(job: &CutJob, item: usize, unopened: &[u32], pieces: &[(usize, Vec<u32>)]) -> Option<Place> {
    let weight = u64::from(job.weight(item));
    let begun = pieces.iter().enumerate().filter_map(|(at, (stock, counts))| {
        let room = u64::from(job.capacity(*stock)).checked_sub(job.used(counts) + weight)?;
        Some(((0, room), Place::Begun(at)))
    });
    let new = (0..job.stock.len()).filter(|stock| unopened[*stock] > 0).filter_map(|stock| {
        let room = u64::from(job.capacity(stock)).checked_sub(weight)?;
        // A piece that is lost as soon as it is cut is begun like a whole spool.
        let later = if job.keep_from.is_some() { job.stock[stock].opening.0 } else { 1 + job.stock[stock].opening.0 };
        Some(((later, room), Place::New(stock)))
    });
    begun.chain(new).min_by_key(|(key, _)| *key).map(|(_, place)| place)
}
