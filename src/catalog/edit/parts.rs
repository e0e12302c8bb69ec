//! Parts in the workshop's file: one is written down, counted, added to or struck out.

use rust_decimal::Decimal;

use super::{
    entry::Fields,
    files::{PARTS, TableFiles},
    lots::{LotAmount, PutAway, text_of, written_length},
    refusal::EditRefusal,
};
use crate::{
    catalog::workshop::PartCount,
    prep::cuts::Tenths,
    ron_tree::{Document, EditError, Node, Step, Value},
};

/// A part as its maker tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartTold {
    /// The id by which recipes and lots know it.
    pub id: String,
    /// Its name for people.
    pub name: String,
    /// What a supplier sells at once, and for how much; nothing where that is not known yet.
    pub offer: Option<(LotAmount, Decimal)>,
    /// What lies there.
    pub there: PartCount,
    /// What each cut takes, where it is cut.
    pub kerf: Option<Tenths>,
    /// From which length on a remnant is kept, where it is cut.
    pub keep_from: Option<Tenths>,
}

/// Spools as a file has them.
fn written_spools(lengths: &[Tenths]) -> String {
    let all: Vec<String> = lengths.iter().map(|one| format!("\"{}\"", written_length(*one))).collect();
    format!("[{}]", all.join(", "))
}

/// The field that says what lies there, and its value.
fn field(there: &PartCount) -> (&'static str, String) {
    match there {
        PartCount::Pieces(count) => ("drawer", count.to_string()),
        PartCount::Spools(lengths) => ("spools", written_spools(lengths)),
    }
}

impl PartTold {
    fn entry(&self) -> String {
        let offer = self.offer.map(|(amount, price)| {
            let one = match amount {
                LotAmount::Pieces(count) => Fields::new().written("count", count.to_string()),
                LotAmount::Length(length) => Fields::new().text("length", &written_length(length)),
            };
            one.text("price", &price.to_string()).entry("")
        });
        let (there, amount) = field(&self.there);
        let mut fields = Fields::new()
            .text("id", &self.id)
            .text("name", &self.name)
            .written("lots", format!("[{}]", offer.unwrap_or_default()))
            .written(there, amount);
        for (name, length) in [("kerf", self.kerf), ("keep_from", self.keep_from)] {
            if let Some(length) = length {
                fields = fields.text(name, &written_length(length));
            }
        }
        fields.entry("")
    }
}

const ALL: Step<'static> = Step::Field("parts");

/// Whether a struct's field `part` names this part.
fn is_of(node: &Node, part: &str) -> bool {
    text_of(node, "part") == Some(part)
}

impl TableFiles {
    /// At which place of the file's list a part stands.
    fn part(&self, id: &str) -> Option<usize> {
        self.workshop_list("parts").iter().position(|item| text_of(item, "id") == Some(id))
    }

    /// A part as it is written now.
    pub(super) fn part_written(&self, id: &str) -> Option<&str> {
        self.files.get(PARTS)?.written(&[ALL, Step::Item(self.part(id)?)])
    }

    /// The way to a part that is there.
    fn part_path(&mut self, id: &str) -> Result<[Step<'static>; 2], EditRefusal> {
        self.workshop_file()?;
        let at = self.part(id).ok_or_else(|| EditRefusal::NoPart(id.to_owned()))?;
        Ok([ALL, Step::Item(at)])
    }

    /// Begins the workshop's file, with nothing in it. What is not asked has the values of many makers, and says so.
    pub(super) fn begin_workshop(&mut self, hour: Decimal, price_step: Decimal) -> Result<(), EditRefusal> {
        if !matches!(self.workshop_file(), Err(EditRefusal::NoWorkshop)) {
            return self.workshop_file().map(|_| ());
        }
        let text = format!(
            "// What drops and bases are made of, what lies in the drawers, and what was bought. Guests never see it.\n(\n    \
             hour: \"{hour}\", // what an hour of work counts\n    \
             factor: 2.0, // a guess: so many times its cost a thing should be sold for\n    \
             price_step: \"{price_step}\", // prices that read well on a small mark\n    \
             leftover: \"75\", // a guess: percent of the cost that is left of one that was not sold\n    \
             parts: [],\n    recipes: [],\n    bought: [],\n)\n"
        );
        let file = Document::read(PARTS, text).map_err(EditRefusal::Mistakes)?;
        self.files.insert(PARTS.to_owned(), file);
        Ok(())
    }

    /// Writes a part down behind the others. The same sent twice is one part.
    pub(super) fn new_part(&mut self, told: &PartTold) -> Result<(), EditRefusal> {
        self.workshop_file()?;
        let entry = told.entry();
        if let Some(written) = self.part_written(&told.id) {
            return if written == entry { Ok(()) } else { Err(EditRefusal::PartThere(told.id.clone())) };
        }
        let count = self.workshop_list("parts").len();
        let file = self.workshop_file()?;
        if file.find(&[ALL]).is_some() {
            Ok(file.insert_item(&[ALL], count, &entry)?)
        } else {
            Ok(file.set_field(&[], "parts", &format!("[\n        {entry},\n    ]"))?)
        }
    }

    /// Writes what was counted of a part.
    pub(super) fn count_part(&mut self, id: &str, there: &PartCount) -> Result<(), EditRefusal> {
        let path = self.part_path(id)?;
        let (name, value) = field(there);
        let file = self.workshop_file()?;
        // Lengths that are the same are left as somebody wrote them, as inches.
        let same = match (file.find(&[path[0], path[1], Step::Field(name)]).map(|node| &node.value), there) {
            (Some(Value::List(items)), PartCount::Spools(lengths)) => {
                let read = |node: &Node| match &node.value {
                    Value::Text(text) => text.trim().parse().ok().map(Tenths::no_longer),
                    _ => None,
                };
                items.iter().map(read).eq(lengths.iter().copied().map(Some))
            }
            (Some(Value::Number(text)), PartCount::Pieces(count)) => text.parse() == Ok(*count),
            _ => false,
        };
        if same { Ok(()) } else { Ok(file.set_field(&path, name, &value)?) }
    }

    /// Adds to what lies there of a part.
    pub(super) fn add_to_part(&mut self, id: &str, more: &PutAway) -> Result<(), EditRefusal> {
        self.part_path(id)?;
        self.put_away(id, more)
    }

    /// Strikes a part out that nothing is made of and of which nothing was bought.
    pub(super) fn strike_part(&mut self, id: &str) -> Result<(), EditRefusal> {
        let [_, Step::Item(at)] = self.part_path(id)? else { return Err(EditRefusal::NoPart(id.to_owned())) };
        let needs = |recipe: &Node| match &recipe.value {
            Value::Struct { fields, .. } => fields.iter().any(|field| match &field.node.value {
                Value::List(needs) if field.name == "needs" => needs.iter().any(|need| is_of(need, id)),
                _ => false,
            }),
            _ => false,
        };
        let recipes = self.workshop_list("recipes").iter().filter(|recipe| needs(recipe)).count();
        let lots = self.workshop_list("bought").iter().filter(|lot| is_of(lot, id)).count();
        if recipes + lots > 0 {
            return Err(EditRefusal::PartUsed { part: id.to_owned(), recipes, lots });
        }
        Ok(self.workshop_file()?.remove_item(&[ALL], at)?)
    }

    /// Puts what came into the drawer of a part, or onto the bench.
    pub(super) fn put_away(&mut self, part: &str, put_away: &PutAway) -> Result<(), EditRefusal> {
        // A part that the file does not know is told by its reader.
        let Some(at) = self.part(part) else { return Ok(()) };
        let path = [ALL, Step::Item(at)];
        let file = self.workshop_file()?;
        match put_away {
            PutAway::Pieces { now, more } => {
                let there = match file.find(&[path[0], path[1], Step::Field("drawer")]).map(|node| &node.value) {
                    Some(Value::Number(text)) => text.parse::<u32>().ok(),
                    _ => None,
                };
                let there = there.ok_or_else(|| EditRefusal::from(EditError::NoPlace(format!("drawer of {part}"))))?;
                Ok(file.set_field(&path, "drawer", &now.unwrap_or(there).saturating_add(*more).to_string())?)
            }
            PutAway::Spools { now: Some(now), more } => {
                let all: Vec<Tenths> = now.iter().chain(more).copied().collect();
                Ok(file.set_field(&path, "spools", &written_spools(&all))?)
            }
            PutAway::Spools { now: None, more } => {
                let list = [path[0], path[1], Step::Field("spools")];
                for one in more {
                    let count = match file.find(&list).map(|node| &node.value) {
                        Some(Value::List(items)) => items.len(),
                        _ => return Err(EditError::NoPlace(format!("spools of {part}")).into()),
                    };
                    file.insert_item(&list, count, &format!("\"{}\"", written_length(*one)))?;
                }
                Ok(())
            }
        }
    }
}
