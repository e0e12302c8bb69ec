//! `chatelaine prep recall` and `chatelaine prep count`: what the ledger knows of lots and counts.

use chatelaine::{bench::recall, ledger::Ledger};
use serde_json::json;

use super::{Bench, Place, Told, print};

#[derive(clap::Args)]
pub(super) struct Recall {
    /// The lot, as the supplier calls it and parts.ron has it.
    lot: String,
    #[command(flatten)]
    bench: Bench,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct Count {
    #[command(flatten)]
    bench: Bench,
    #[command(flatten)]
    place: Place,
}

pub(super) fn recalled(options: Recall) -> Result<(), Told> {
    let (catalog, workshop) = options.bench.workshop()?;
    let ledger = Ledger::beside_the_desk(&options.place.ledger()?)?;
    let found = recall(&catalog, &workshop, &ledger, &options.lot)?;
    let found = found.ok_or_else(|| {
        Told(format!("no lot is called {:?} in parts.ron; write it as it stands under bought", options.lot))
    })?;
    print(options.bench.json, &json!({ "recall": found }), || {
        let mut words = format!("Lot {} may be in {} sold pieces.\n", found.lot, found.sold.len());
        for one in &found.sold {
            let by: Vec<&str> = one.by.iter().map(String::as_str).collect();
            words += &format!(
                "{:<8} show {:>3}  {}  {}\n",
                one.ticket.number,
                one.ticket.show,
                one.ticket.at,
                by.join(", ")
            );
        }
        for (id, count) in &found.there {
            words += &format!("On the table still: {count} of {id}\n");
        }
        words + "What is not noted counts as the worst."
    })
}

pub(super) fn counted(options: Count) -> Result<(), Told> {
    let (catalog, _) = options.bench.read()?;
    let ledger = Ledger::beside_the_desk(&options.place.ledger()?)?;
    let (counts, last) = (ledger.counts()?, ledger.last_counts()?);
    let drops = catalog.drops.iter().map(|kind| (&kind.id, Some(kind.home)));
    let all: Vec<_> = drops.chain(catalog.bases.iter().map(|base| (&base.id, None))).collect();
    let rows = all.iter().map(|(id, home)| {
        let (count, last) = (counts.get(*id), last.get(*id));
        json!({
            "id": id, "home": home, "expected": count.map(|count| count.free()), "held": count.map(|count| count.held),
            "counted": last.map(|last| last.counted), "at": last.map(|last| last.at), "missing": last.map(|last| last.missing),
        })
    });
    let rows: Vec<_> = rows.collect();
    print(options.bench.json, &json!({ "parts": rows }), || {
        let mut words =
            format!("{:<6}{:<24}{:>9}{:>6}{:>9}{:>9}\n", "home", "", "expected", "held", "counted", "missing");
        for (id, home) in &all {
            let (count, last) = (counts.get(*id), last.get(*id));
            let home = home.map(|home| home.to_string()).unwrap_or_default();
            let figure = |figure: Option<i64>| figure.map(|n| n.to_string()).unwrap_or_default();
            let (free, held) = (count.map(|count| count.free().into()), count.map(|count| count.held.into()));
            let (counted, missing) = (last.map(|last| last.counted.into()), last.map(|last| last.missing));
            words += &format!(
                "{home:<6}{id:<24}{:>9}{:>6}{:>9}{:>9}\n",
                figure(free),
                figure(held),
                figure(counted),
                figure(missing)
            );
        }
        words.trim_end().to_owned()
    })
}
