//! `parts.ron`.

use std::{
    collections::{BTreeMap, HashMap},
    path::Path,
};

use rust_decimal::Decimal;

use super::{
    listing::read_text,
    model::Catalog,
    read_amounts::{percent, price},
    read_sizes::parsed,
    workshop::{BoughtLot, BoughtPart, There, Workshop},
};
use crate::{
    craft::{Day, Length, Sort},
    money::Currency,
    prep::{Bought, Need, Offer, Recipe, cuts::Tenths},
    quoting::quoted,
    ron_tree::{Fields, Mistakes, Node, Reader, detail, did_you_mean, keep_one, names_of, nearest, what},
};

/// More pieces than are in any lot or drawer.
const MOST_PIECES: u32 = 1_000_000;
/// The longest spool that is bought, in millimetres.
const LONGEST_SPOOL_MM: f64 = 100_000.0;

const WORKSHOP: [&str; 7] = ["hour", "factor", "price_step", "leftover", "parts", "recipes", "bought"];
const PART: [&str; 7] = ["id", "name", "lots", "drawer", "spools", "kerf", "keep_from"];
const RECIPE: [&str; 4] = ["id", "sort", "minutes", "needs"];
const BOUGHT: [&str; 8] = ["part", "lot", "day", "count", "length", "broken", "price", "paper"];

/// The file's name below the catalogue's folder.
pub(super) const FILE: &str = "parts.ron";

/// What `parts.ron` in the catalogue's folder says beside `catalog`; none where there is no such file.
///
/// # Errors
/// Every mistake of the file, in order of place.
pub fn read_workshop(root: &Path, catalog: &Catalog) -> Result<Option<Workshop>, Mistakes> {
    if root.join(FILE).symlink_metadata().is_err() {
        return Ok(None);
    }
    let source = read_text(root, FILE).map_err(|mistake| Mistakes(vec![mistake]))?;
    workshop_in(&source, catalog)
}

/// What the text of such a file says beside `catalog`.
///
/// # Errors
/// Every mistake in it, in order of place.
pub(super) fn workshop_in(source: &str, catalog: &Catalog) -> Result<Option<Workshop>, Mistakes> {
    let (mut reader, node) = Reader::open(FILE, source);
    let workshop = node.and_then(|node| read(&mut reader, &node, catalog));
    if reader.mistakes.is_empty() { Ok(workshop) } else { Err(Mistakes(reader.mistakes)) }
}

/// All of the file; the mistakes are the reader's.
fn read(reader: &mut Reader<'_>, node: &Node, catalog: &Catalog) -> Option<Workshop> {
    let currency = catalog.table.prices.currency;
    let f = reader.fields(node, what("the-workshop", "the workshop"), &WORKSHOP)?;
    let hour = reader.required(&f, "hour").and_then(|node| price(reader, node, currency));
    let step = reader.required(&f, "price_step").and_then(|node| price(reader, node, currency));
    let factor = reader.required(&f, "factor").and_then(|node| factor(reader, node));
    let leftover = reader.required(&f, "leftover").and_then(|node| percent(reader, node));
    let mut parts = Vec::new();
    let mut known: HashMap<String, bool> = HashMap::new();
    for node in items(reader, &f, "parts") {
        let Some((part, at)) = part(reader, node, currency) else { continue };
        let by_length = matches!(part.there, There::Spools { .. });
        if known.insert(part.id.clone(), by_length).is_some() {
            let found = detail!("wrong-part-twice", "the part {id} a second time", id = quoted(&part.id));
            reader.wrong(at, found, detail!("right-part-once", "every part is its own"));
        }
        parts.push(part);
    }
    let mut workshop = Workshop {
        hour: hour?,
        factor: factor?,
        price_step: step?,
        leftover_percent: leftover?,
        parts,
        lots: vec![],
        of_sorts: BTreeMap::new(),
        of_single: BTreeMap::new(),
    };
    for node in items(reader, &f, "recipes") {
        recipe(reader, node, &known, catalog, &mut workshop);
    }
    for node in items(reader, &f, "bought") {
        workshop.lots.extend(lot(reader, node, &known, currency));
    }
    Some(workshop)
}

/// The items of a list that may be missing.
fn items<'n>(reader: &mut Reader<'_>, f: &Fields<'n>, name: &str) -> &'n [Node] {
    f.get(name).and_then(|node| reader.list(node, name)).unwrap_or_default()
}

/// How many times its cost something is sold for.
fn factor(reader: &mut Reader<'_>, node: &Node) -> Option<Decimal> {
    let number = reader.number(node, 1.0, 100.0)?;
    Decimal::try_from(number).ok().map(|number| number.round_dp(4))
}

/// A length of what is cut, from one tenth of a millimetre on.
fn tenths(reader: &mut Reader<'_>, node: &Node, read: fn(Length) -> Tenths) -> Option<Tenths> {
    let length: Length = parsed(reader, node, what("a-length", "a length with its unit"))?;
    if (0.1..=LONGEST_SPOOL_MM).contains(&length.mm()) {
        Some(read(length))
    } else {
        reader.unlike(node, detail!("a-length-to-cut", "a length from 0.1 mm to 100 m"))
    }
}

fn part(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<(BoughtPart, usize)> {
    let f = reader.fields(node, what("a-part", "a part"), &PART)?;
    let id = reader.id(&f);
    let name = reader.name(&f, "name");
    let by_length = f.get("spools").is_some();
    let mut offers = Vec::new();
    let mut whole = Tenths(0);
    let lots =
        reader.required(&f, "lots").and_then(|node| reader.list(node, what("list-lots", "lots"))).unwrap_or_default();
    for node in lots {
        let names: &[&str] = if by_length { &["length", "price"] } else { &["count", "price"] };
        let Some(one) = reader.fields(node, what("a-lot", "a lot"), names) else { continue };
        let paid = reader.required(&one, "price").and_then(|node| price(reader, node, currency));
        let amount = amount(reader, &one, by_length);
        if let (Some(price), Some(amount)) = (paid, amount) {
            whole = whole.max(amount.1);
            offers.push(Offer { amount: amount.0, price });
        }
    }
    let there = if by_length {
        let lengths = items(reader, &f, "spools");
        let lengths = lengths.iter().filter_map(|node| tenths(reader, node, Tenths::no_longer)).collect();
        let kerf = f.get("kerf").and_then(|node| tenths(reader, node, Tenths::no_shorter)).unwrap_or_default();
        let keep_from = reader.required(&f, "keep_from").and_then(|node| tenths(reader, node, Tenths::no_shorter));
        if let Some(node) = f.get("drawer") {
            reader.wrong(
                node.at,
                detail!("wrong-drawer", "a drawer beside spools"),
                detail!("right-drawer", "give one of the two: drawer for pieces, spools for lengths"),
            );
        }
        There::Spools { lengths, whole, kerf, keep_from: keep_from? }
    } else {
        for name in ["kerf", "keep_from"] {
            if let Some(node) = f.get(name) {
                let found = detail!("wrong-no-spools", "{name} without spools", name = name);
                reader.wrong(node.at, found, detail!("right-spools", "only what is cut from spools has it"));
            }
        }
        let drawer = reader.required(&f, "drawer").and_then(|node| reader.whole(node, 0, MOST_PIECES));
        There::Pieces(drawer?)
    };
    let (id, at) = id?;
    Some((BoughtPart { id, name: name?, offers, there }, at))
}

/// How much of a part: pieces by their count, or millimetres by their length.
fn amount(reader: &mut Reader<'_>, f: &Fields<'_>, by_length: bool) -> Option<(Decimal, Tenths)> {
    if by_length {
        let node = reader.required(f, "length")?;
        let length = tenths(reader, node, Tenths::no_longer)?;
        return Some((Decimal::new(i64::from(length.0), 1), length));
    }
    let node = reader.required(f, "count")?;
    Some((Decimal::from(reader.whole(node, 1, MOST_PIECES)?), Tenths(0)))
}

/// A part that the file knows, and whether it goes by the length.
fn known_part(reader: &mut Reader<'_>, f: &Fields<'_>, known: &HashMap<String, bool>) -> Option<(String, bool)> {
    let node = reader.required(f, "part")?;
    let id = reader.text(node, what("a-part", "a part"))?;
    match known.get(id) {
        Some(by_length) => Some((id.to_owned(), *by_length)),
        None => {
            let like = nearest(id, known.keys().map(String::as_str));
            let hint = like.map_or_else(
                || detail!("right-part", "write it among the parts first"),
                |like| did_you_mean(quoted(&like)),
            );
            reader.wrong(node.at, detail!("wrong-part", "no part is called {here}", here = node.describe()), hint);
            None
        }
    }
}

/// Takes a recipe in: of one drop or base, or of a whole sort.
fn recipe(
    reader: &mut Reader<'_>,
    node: &Node,
    known: &HashMap<String, bool>,
    catalog: &Catalog,
    workshop: &mut Workshop,
) -> Option<()> {
    let f = reader.fields(node, what("a-recipe", "a recipe"), &RECIPE)?;
    let minutes = reader.required(&f, "minutes").and_then(|node| reader.number(node, 0.0, 600.0));
    let mut needs = Vec::new();
    for node in items(reader, &f, "needs") {
        let Some(one) = reader.fields(node, what("a-need", "a need"), &["part", "count", "length"]) else { continue };
        let Some((part, by_length)) = known_part(reader, &one, known) else { continue };
        if let Some(other) = one.get(if by_length { "count" } else { "length" }) {
            let right = if by_length {
                detail!("right-by-length", "it goes by the length")
            } else {
                detail!("right-by-piece", "it goes by the piece")
            };
            let found = detail!("wrong-measure", "{part} measured the wrong way", part = quoted(&part));
            reader.wrong(other.at, found, right);
        }
        if let Some((amount, _)) = amount(reader, &one, by_length) {
            needs.push(Need { part, amount });
        }
    }
    let minutes = Decimal::try_from(minutes?).ok()?.round_dp(3);
    let recipe = Recipe { needs, minutes };
    let twice = match (f.get("id"), f.get("sort")) {
        (Some(node), None) => {
            let id = reader.text(node, what("the-id-of-a-drop-or-a-base", "the id of a drop or a base"))?;
            if catalog.drop_kind(id).is_none() && catalog.base(id).is_none() {
                reader.wrong(
                    node.at,
                    detail!("wrong-recipe-id", "{here} is in no tray and no base", here = node.describe()),
                    detail!("right-recipe-id", "write the id of a drop or a base"),
                );
                return None;
            }
            workshop.of_single.insert(id.to_owned(), recipe).map(|_| node.at)
        }
        (None, Some(node)) => {
            let sort = reader.word(node, what("a-sort", "a sort"), names_of!(Sort))?;
            workshop.of_sorts.insert(sort, recipe).map(|_| node.at)
        }
        _ => {
            reader.wrong(
                f.at(),
                detail!("wrong-recipe", "a recipe of nobody, or of two"),
                detail!("right-recipe", "give id for one drop or base, or sort for all of a sort"),
            );
            None
        }
    };
    if let Some(at) = twice {
        reader.wrong(at, detail!("wrong-recipe-twice", "a second recipe of the same"), keep_one());
    }
    Some(())
}

fn lot(reader: &mut Reader<'_>, node: &Node, known: &HashMap<String, bool>, currency: Currency) -> Option<BoughtLot> {
    let f = reader.fields(node, what("a-lot-that-was-bought", "a lot that was bought"), &BOUGHT)?;
    let part = known_part(reader, &f, known);
    let name = reader.name(&f, "lot");
    let paid = reader.required(&f, "price").and_then(|node| price(reader, node, currency));
    let day = reader.required(&f, "day").and_then(|node| {
        let text = reader.text(node, what("a-day", "a day"))?;
        Day::from_iso(text).or_else(|| reader.unlike(node, detail!("a-day-as-in", "a day, as in \"2026-03-02\"")))
    });
    let paper = match f.get("paper") {
        Some(_) => Some(reader.name(&f, "paper")?),
        None => None,
    };
    let broken = f.get("broken").map_or(Some(0), |node| reader.whole(node, 0, MOST_PIECES));
    let (part, by_length) = part?;
    let (amount, _) = amount(reader, &f, by_length)?;
    let broken = Decimal::from(broken?);
    if broken > amount {
        reader.wrong(
            f.at(),
            detail!("wrong-broken", "more broken than came"),
            detail!("right-broken", "give what of it was broken"),
        );
        return None;
    }
    Some(BoughtLot { part, lot: name?, day: day?, bought: Bought { amount, broken, price: paid? }, paper })
}
