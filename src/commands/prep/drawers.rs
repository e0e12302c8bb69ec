//! `chatelaine prep drawers`: what lies in the drawers and on the spools; a part is counted, added to, written down, struck out.

use chatelaine::{
    catalog::{Act, BoughtPart, LotAmount, PartCount, PartTold, PutAway, There, Workshop, fresh_id, written_length},
    craft::Length,
    money::parse_price,
    prep::cuts::Tenths,
};
use serde_json::{Value, json};

use super::{
    Told, as_it_is_now,
    lots::{At, change, used_since},
    print,
};

#[derive(clap::Args)]
pub(super) struct Drawers {
    #[command(subcommand)]
    act: Option<OfPart>,
    #[command(flatten)]
    at: At,
}

#[derive(clap::Subcommand)]
enum OfPart {
    /// Write a part down, in parts.ron.
    New(New),
    /// Write what was counted of a part.
    Count(Amount),
    /// Add what came of a part.
    Add(Amount),
    /// Strike out a part that nothing is made of and of which nothing was bought.
    Strike(Strike),
}

#[derive(clap::Args)]
struct New {
    /// What the part is called.
    name: String,
    /// Its id; one made of its name otherwise.
    #[arg(long)]
    id: Option<String>,
    /// How many lie in its drawer.
    #[arg(long, conflicts_with_all = ["spools", "kerf", "keep_from"])]
    drawer: Option<u32>,
    /// A spool or remnant on the bench, as in 10m; once for each.
    #[arg(long = "spool")]
    spools: Vec<String>,
    /// What a supplier sells at once and for how much: pieces or a length, as in 100=4.80 or 10m=24.00.
    #[arg(long)]
    lot: Option<String>,
    /// What each cut takes, as in 4mm.
    #[arg(long)]
    kerf: Option<String>,
    /// From which length on a remnant is kept; a part that has it goes by the length.
    #[arg(long)]
    keep_from: Option<String>,
    #[command(flatten)]
    at: At,
}

#[derive(clap::Args)]
struct Amount {
    /// The part, as parts.ron calls it.
    part: String,
    /// How many pieces, or the length of each spool and remnant, as in 10m 735cm.
    amount: Vec<String>,
    #[command(flatten)]
    at: At,
}

#[derive(clap::Args)]
struct Strike {
    /// The part, as parts.ron calls it.
    part: String,
    #[command(flatten)]
    at: At,
}

pub(super) fn run(options: Drawers) -> Result<(), Told> {
    match options.act {
        None => listed(options.at),
        Some(OfPart::New(options)) => new(options),
        Some(OfPart::Count(options)) => count(options),
        Some(OfPart::Add(options)) => add(options),
        Some(OfPart::Strike(options)) => strike(options),
    }
}

/// The workshop with what lies there now.
fn now(at: &At) -> Result<Workshop, Told> {
    as_it_is_now(at.bench.workshop()?.1, &at.place)
}

fn object(part: &BoughtPart) -> Value {
    let (count, spools) = match &part.there {
        There::Pieces(count) => (Some(count), None),
        There::Spools { lengths, .. } => (None, Some(lengths.iter().map(|one| one.mm()).collect::<Vec<f64>>())),
    };
    json!({ "part": part.id, "name": part.name, "count": count, "spools_mm": spools })
}

fn words(part: &BoughtPart) -> String {
    let there = match &part.there {
        There::Pieces(count) => count.to_string(),
        There::Spools { lengths, .. } => lengths.iter().map(|one| written_length(*one)).collect::<Vec<_>>().join(" "),
    };
    format!("{:<16}{:<32}{there}", part.id, part.name)
}

fn listed(at: At) -> Result<(), Told> {
    let workshop = now(&at)?;
    let rows: Vec<Value> = workshop.parts.iter().map(object).collect();
    print(at.bench.json, &json!({ "parts": rows }), || workshop.parts.iter().map(words).collect::<Vec<_>>().join("\n"))
}

fn length(text: &str) -> Result<Tenths, Told> {
    let length = Tenths::no_longer(text.parse::<Length>()?);
    if length.0 == 0 {
        Err(Told(format!("{text:?} is no length; write one above 0 mm, as in 10m")))
    } else {
        Ok(length)
    }
}

/// What was typed of a part that goes by the piece or by the length.
fn typed(part: &BoughtPart, amount: &[String]) -> Result<PartCount, Told> {
    match part.there {
        There::Spools { .. } => Ok(PartCount::Spools(amount.iter().map(|one| length(one)).collect::<Result<_, _>>()?)),
        There::Pieces(_) => match amount {
            [one] => {
                let wrong = || Told(format!("{one:?} is no number of pieces; write a whole number"));
                Ok(PartCount::Pieces(one.parse().map_err(|_| wrong())?))
            }
            _ => Err(Told(format!("{} goes by the piece; write one number", part.id))),
        },
    }
}

fn found<'a>(workshop: &'a Workshop, id: &str) -> Result<&'a BoughtPart, Told> {
    workshop.part(id).ok_or_else(|| {
        let known: Vec<&str> = workshop.parts.iter().map(|part| part.id.as_str()).collect();
        Told(format!("no part is called {id:?}; parts.ron has {}", known.join(", ")))
    })
}

/// Does an act and tells what lies there of the part then.
fn done(at: At, id: &str, act: Act, said: &str) -> Result<(), Told> {
    let ledger = at.place.ledger()?;
    let changed = change(&at.bench, &ledger, act, said)?;
    let workshop = now(&at)?;
    let part = workshop.part(id);
    print(at.bench.json, &json!({ "changed": changed, "part": part.map(object) }), || {
        let part = part.map(words).unwrap_or_default();
        if changed { format!("{said}\n{part}") } else { format!("That is so already.\n{part}") }.trim_end().to_owned()
    })
}

fn new(options: New) -> Result<(), Told> {
    let (catalog, workshop) = options.at.bench.workshop()?;
    let by_length = options.keep_from.is_some();
    if !by_length && (!options.spools.is_empty() || options.kerf.is_some()) {
        return Err(Told(
            "what is cut from spools needs --keep-from: from which length on a remnant is kept".to_owned(),
        ));
    }
    let currency = catalog.table.prices.currency;
    let offer = options.lot.as_ref().map(|lot| {
        let wrong = || Told(format!("{lot:?} is no lot with its price; write 100=4.80 or 10m=24.00"));
        let (amount, price) = lot.split_once('=').ok_or_else(wrong)?;
        let mut price = parse_price(price, currency).map_err(|error| Told(error.to_string()))?;
        price.rescale(currency.digits);
        let amount = if by_length {
            LotAmount::Length(length(amount)?)
        } else {
            LotAmount::Pieces(amount.parse().ok().filter(|count| *count > 0).ok_or_else(wrong)?)
        };
        Ok::<_, Told>((amount, price))
    });
    let name = options.name.trim().to_owned();
    let is_other = |id: &str| workshop.part(id).is_some_and(|part| part.name != name);
    let there = if by_length {
        PartCount::Spools(options.spools.iter().map(|one| length(one)).collect::<Result<_, _>>()?)
    } else {
        PartCount::Pieces(options.drawer.unwrap_or(0))
    };
    let told = PartTold {
        id: options.id.unwrap_or_else(|| fresh_id(&name, is_other)),
        name: name.clone(),
        offer: offer.transpose()?,
        there,
        kerf: options.kerf.as_deref().map(length).transpose()?,
        keep_from: options.keep_from.as_deref().map(length).transpose()?,
    };
    let id = told.id.clone();
    done(options.at, &id, Act::NewPart { told }, &format!("part {name} written down"))
}

fn count(options: Amount) -> Result<(), Told> {
    let (_, workshop) = options.at.bench.workshop()?;
    let part = found(&workshop, &options.part)?;
    let there = typed(part, &options.amount)?;
    let used = used_since(&options.at.place.ledger()?, &workshop, &part.id)?;
    // What was taken since is kept with what the file said then; only the desk can write there.
    if there == PartCount::of(&part.there) && used.is_some_and(|now| now != there) {
        return Err(Told(format!(
            "parts.ron says that of {} already, and cuts or sales have taken some since; count it at the desk",
            part.id
        )));
    }
    let said = format!("{} counted", part.name);
    done(options.at, &options.part, Act::CountPart { id: options.part.clone(), there }, &said)
}

fn add(options: Amount) -> Result<(), Told> {
    let (_, workshop) = options.at.bench.workshop()?;
    let part = found(&workshop, &options.part)?;
    let more = typed(part, &options.amount)?;
    if more == PartCount::Pieces(0) || more == PartCount::Spools(vec![]) {
        return Err(Told(format!("say how much of {} came", part.id)));
    }
    let used = used_since(&options.at.place.ledger()?, &workshop, &part.id)?;
    let said = format!("{} added to", part.name);
    let act = Act::AddToPart { id: options.part.clone(), more: PutAway::of(more, used) };
    done(options.at, &options.part, act, &said)
}

fn strike(options: Strike) -> Result<(), Told> {
    let said = format!("part {} struck out", options.part);
    done(options.at, &options.part, Act::StrikePart { id: options.part.clone() }, &said)
}
