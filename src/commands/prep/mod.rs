//! `chatelaine prep`: before and after a show.
//!
//! | file | look here for |
//! | --- | --- |
//! | `costs` | costs, prices and what they earn; what a show came to |
//! | `cuts` | which spool is cut into what |
//! | `drawers` | what lies in drawers and on spools; a part counted, added to, written down, struck out |
//! | `ledger` | where a lot may be; what should lie there |
//! | `lots` | lots that were bought, and writing one down |
//! | `workbook` | packing, shows to come, custom orders, what was made and checked |
//! | `stop` | Ctrl-C while something takes long |

mod costs;
mod cuts;
mod drawers;
mod ledger;
mod lots;
mod stop;
mod workbook;

use std::{collections::BTreeMap, path::PathBuf};

use chatelaine::{
    bench::{Number, batch, carried_on, numbers, parts_now, past_shows},
    catalog::{Catalog, Workshop, read_folder, read_workshop},
    ledger::{Ledger, ShowKind},
};
use rust_decimal::Decimal;
use serde_json::json;

use super::{Told, answers::print, backup::Place};

/// More shows than anybody looks back over.
const MOST_SHOWS: usize = 200;

#[derive(clap::Args)]
pub(super) struct Options {
    #[command(subcommand)]
    command: Command,
}

#[derive(clap::Subcommand)]
enum Command {
    /// How many of every base and drop to make for the next show, from the shows so far.
    HowMany(HowMany),
    /// Which spool is cut into what, with what is lost and what no plan can lose less than.
    Cuts(cuts::Options),
    /// What a batch takes from the drawers, what is short, and what to buy.
    Parts(Parts),
    /// What everything costs and earns, and what it should cost.
    Costs(costs::Options),
    /// What a show came to for the maker: what sold by home and by sort, margin, fee, cost and reward.
    After(costs::After),
    /// The lots that were bought, with their papers.
    Lots(lots::Lots),
    /// Write down a lot that was bought, in parts.ron, and what is whole of it in its drawer.
    Bought(lots::Bought),
    /// What lies in the drawers and on the spools; count, add to, write down or strike out a part.
    Drawers(drawers::Drawers),
    /// Strike a lot out that was never bought.
    Strike(lots::Strike),
    /// Take the last change of the table's files back.
    Undo(lots::Undo),
    /// Where a lot may be: in which sold pieces, and on the table still.
    Recall(ledger::Recall),
    /// What should lie in every compartment, and what was counted last.
    Count(ledger::Count),
    /// What is to be packed for a show: what was forgotten most often first.
    Packing(workbook::Look),
    /// Shows to come, with fee, deadline and permit.
    Plans(workbook::Look),
    /// Custom orders: by when they are wanted, and what was agreed.
    Orders(workbook::Look),
    /// What was made of which lots, and what was checked.
    Made(workbook::LookAtMade),
}

#[derive(clap::Args)]
struct Bench {
    /// The catalogue's folder.
    #[arg(long, default_value = "catalog")]
    catalog: PathBuf,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
}

#[derive(clap::Args)]
struct HowMany {
    #[command(flatten)]
    bench: Bench,
    /// What kind of show it is for: fair, open_house, home_party or childrens_party; a usual one otherwise.
    #[arg(long)]
    kind: Option<String>,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
struct Parts {
    /// What to make: ID=COUNT for each; what the next show asks for otherwise.
    make: Vec<String>,
    #[command(flatten)]
    how_many: HowMany,
}

pub(super) fn run(options: Options) -> Result<(), Told> {
    match options.command {
        Command::HowMany(options) => how_many(options),
        Command::Cuts(options) => cuts::run(options),
        Command::Parts(options) => parts(options),
        Command::Costs(options) => costs::run(options),
        Command::After(options) => costs::after(options),
        Command::Lots(options) => lots::listed(&options),
        Command::Bought(options) => lots::bought(options),
        Command::Drawers(options) => drawers::run(options),
        Command::Strike(options) => lots::strike(options),
        Command::Undo(options) => lots::undo(options),
        Command::Recall(options) => ledger::recalled(options),
        Command::Count(options) => ledger::counted(options),
        Command::Packing(options) => workbook::packed(options),
        Command::Plans(options) => workbook::planned(options),
        Command::Orders(options) => workbook::ordered(options),
        Command::Made(options) => workbook::made(options),
    }
}

impl Bench {
    fn read(&self) -> Result<(std::sync::Arc<Catalog>, Option<Workshop>), Told> {
        let catalog = read_folder(&self.catalog)?.catalog;
        let workshop = read_workshop(&self.catalog, &catalog)?;
        Ok((catalog, workshop))
    }

    /// The same where nothing can be said without recipes.
    fn workshop(&self) -> Result<(std::sync::Arc<Catalog>, Workshop), Told> {
        let (catalog, workshop) = self.read()?;
        let file = self.catalog.join("parts.ron");
        let workshop = workshop.ok_or_else(|| {
            Told(format!(
                "{} is missing; write there what drops are made of and what lies in the drawers",
                file.display()
            ))
        })?;
        Ok((catalog, workshop))
    }
}

/// The workshop with its drawers and spools as cuts and sales have left them. A maker without a ledger has those of the file.
fn as_it_is_now(workshop: Workshop, place: &Place) -> Result<Workshop, Told> {
    let file = place.ledger()?;
    if !file.exists() {
        return Ok(workshop);
    }
    Ok(carried_on(workshop, &parts_now(&Ledger::beside_the_desk(&file)?)?))
}

impl HowMany {
    fn kind(&self) -> Result<Option<ShowKind>, Told> {
        let Some(code) = &self.kind else { return Ok(None) };
        let kind = ShowKind::from_code(code).ok_or_else(|| {
            let known = ShowKind::REAL.map(ShowKind::code).join(", ");
            Told(format!("there is no kind of show {code:?}; there are {known}"))
        })?;
        Ok(Some(kind))
    }

    /// The numbers, and of how many shows they are made. A maker without a ledger has none yet.
    fn numbers(self, catalog: &Catalog, workshop: Option<&Workshop>) -> Result<(Vec<Number>, usize), Told> {
        let kind = self.kind()?;
        let file = self.place.ledger()?;
        let (past, counts) = if file.exists() {
            let ledger = Ledger::beside_the_desk(&file)?;
            (past_shows(&ledger, MOST_SHOWS)?, ledger.counts()?)
        } else {
            (vec![], BTreeMap::new())
        };
        Ok((numbers(catalog, workshop, &past, &counts, kind)?, past.len()))
    }
}

fn how_many(options: HowMany) -> Result<(), Told> {
    let json = options.bench.json;
    let (catalog, workshop) = options.bench.read()?;
    let (numbers, shows) = options.numbers(&catalog, workshop.as_ref())?;
    print(json, &json!({ "shows": shows, "numbers": numbers }), || {
        let mut words = format!("From {shows} shows; in eight of ten as many are wanted as stand under “usual”.\n");
        words +=
            &format!("{:<22}{:<6}{:>6}{:>11}{:>6}{:>6}  sells out\n", "", "home", "there", "usual", "take", "make");
        for one in &numbers {
            let home = one.home.map(|home| home.to_string()).unwrap_or_default();
            let usual = format!("{} to {}", one.number.usually_from, one.number.usually_to);
            let chance = (one.number.chance_sold_out * 100.0).round();
            words += &format!(
                "{:<22}{home:<6}{:>6}{usual:>11}{:>6}{:>6}{chance:>9} %\n",
                one.id, one.on_hand, one.number.take, one.number.make
            );
        }
        words + "Where no show tells, others of its sort or the catalogue’s count are taken for a guess."
    })
}

/// What is to be made, as it was typed.
fn typed_batch(catalog: &Catalog, typed: &[String]) -> Result<BTreeMap<String, u32>, Told> {
    let mut make = BTreeMap::new();
    for one in typed {
        let read = one.split_once('=').and_then(|(id, count)| Some((id, count.parse::<u32>().ok()?)));
        let (id, count) = read.filter(|(_, count)| *count <= 10_000).ok_or_else(|| {
            Told(format!("{one:?} is nothing to make; write the id and how many up to 10000, as in key-heart=12"))
        })?;
        if catalog.drop_kind(id).is_none() && catalog.base(id).is_none() {
            return Err(Told(format!("{id:?} is in no tray and no base; write the id of a drop or a base")));
        }
        *make.entry(id.to_owned()).or_default() += count;
    }
    Ok(make)
}

fn parts(options: Parts) -> Result<(), Told> {
    let json = options.how_many.bench.json;
    let (catalog, workshop) = options.how_many.bench.workshop()?;
    let workshop = as_it_is_now(workshop, &options.how_many.place)?;
    let make = if options.make.is_empty() {
        let (numbers, _) = options.how_many.numbers(&catalog, Some(&workshop))?;
        numbers.into_iter().map(|one| (one.id, one.number.make)).filter(|(_, make)| *make > 0).collect()
    } else {
        typed_batch(&catalog, &options.make)?
    };
    let batch = batch(&catalog, &workshop, &make);
    let currency = catalog.table.prices.currency;
    print(json, &json!({ "make": make, "batch": batch }), || {
        let mut words = format!("{:<16}{:>12}{:>12}{:>12}  buy\n", "", "needed", "there", "short");
        for part in &batch.parts {
            let unit = if part.by_length { " mm" } else { "" };
            let amount = |amount: Decimal| format!("{}{unit}", amount.normalize());
            let buy = match &part.buy {
                Some(buy) if buy.lots.iter().any(|n| *n > 0) => {
                    let lots: Vec<String> = buy.lots.iter().map(u32::to_string).collect();
                    format!(
                        "{} lots: {}{unit} for {}",
                        lots.join("+"),
                        buy.amount.normalize(),
                        currency.plain(buy.price)
                    )
                }
                Some(_) => String::new(),
                None => "no lot is offered".to_owned(),
            };
            let [needed, there, short] = [part.needed, part.there, part.short].map(amount);
            words += &format!("{:<16}{needed:>12}{there:>12}{short:>12}  {buy}\n", part.part);
            if part.short > Decimal::ZERO {
                words += &format!("{:<16}without it these stop: {}\n", "", part.stops.join(", "));
            }
        }
        if !batch.without_recipe.is_empty() {
            words += &format!("Not in this, since parts.ron has no recipe: {}\n", batch.without_recipe.join(", "));
        }
        words + &format!("To buy in all: {}", currency.plain(batch.price))
    })
}
