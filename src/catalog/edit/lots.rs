//! Lots that were bought, in the workshop's file: one is written down, told anew or struck out, and what came of it goes
//! into its drawer or onto the bench.

use rust_decimal::{Decimal, prelude::ToPrimitive};

use super::{
    entry::Fields,
    files::{PARTS, TableFiles},
    refusal::EditRefusal,
};
use crate::{
    catalog::workshop::{BoughtLot, LotKey, PartCount},
    craft::Day,
    prep::cuts::Tenths,
    ron_tree::{Document, Node, Step, Value},
};

/// How much of a part came.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LotAmount {
    /// So many pieces.
    Pieces(u32),
    /// So much by the length.
    Length(Tenths),
}

/// A lot as its maker tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotTold {
    /// Id of the part.
    pub part: String,
    /// What the supplier calls the lot.
    pub lot: String,
    /// When it came.
    pub day: Day,
    /// How much came.
    pub amount: LotAmount,
    /// How many of the pieces, or of the millimetres, were broken.
    pub broken: u32,
    /// What all of it cost.
    pub price: Decimal,
    /// Where the supplier's test report or declaration lies, in words.
    pub paper: Option<String>,
}

/// What goes into the drawer, or onto the bench, when a lot comes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PutAway {
    /// More pieces in the drawer.
    Pieces {
        /// What lies there now, where sales have made the file's count an old one.
        now: Option<u32>,
        /// What comes to it.
        more: u32,
    },
    /// More spools on the bench.
    Spools {
        /// What lies there now, where cuts have made the file's list an old one.
        now: Option<Vec<Tenths>>,
        /// What comes to it.
        more: Vec<Tenths>,
    },
}

impl PutAway {
    /// Puts `more` to what lies there `now`, where that is not what the file says.
    pub fn of(more: PartCount, now: Option<PartCount>) -> Self {
        match (more, now) {
            (PartCount::Pieces(more), Some(PartCount::Pieces(now))) => Self::Pieces { now: Some(now), more },
            (PartCount::Pieces(more), _) => Self::Pieces { now: None, more },
            (PartCount::Spools(more), Some(PartCount::Spools(now))) => Self::Spools { now: Some(now), more },
            (PartCount::Spools(more), _) => Self::Spools { now: None, more },
        }
    }
}

impl LotTold {
    /// The same of a lot that stands in the file.
    pub fn of(lot: &BoughtLot, by_length: bool) -> Self {
        let tenths = || (lot.bought.amount * Decimal::TEN).to_u32().unwrap_or(u32::MAX);
        let pieces = || lot.bought.amount.to_u32().unwrap_or(u32::MAX);
        Self {
            part: lot.part.clone(),
            lot: lot.lot.clone(),
            day: lot.day,
            amount: if by_length { LotAmount::Length(Tenths(tenths())) } else { LotAmount::Pieces(pieces()) },
            broken: lot.bought.broken.to_u32().unwrap_or(u32::MAX),
            price: lot.bought.price,
            paper: lot.paper.clone(),
        }
    }

    /// By what it is known.
    pub fn key(&self) -> LotKey {
        LotKey { part: self.part.clone(), lot: self.lot.clone(), day: self.day.to_string() }
    }

    /// What has to be written: all of it, or what is other than `before`, so that the rest stays as somebody wrote it.
    pub fn fields(&self, before: Option<&Self>) -> Fields {
        let mut fields = Fields::new();
        let is_other = |same: &dyn Fn(&Self) -> bool| before.is_none_or(|before| !same(before));
        if before.is_none() {
            fields = fields.text("part", &self.part);
        }
        if is_other(&|before| before.lot == self.lot) {
            fields = fields.text("lot", &self.lot);
        }
        if is_other(&|before| before.day == self.day) {
            fields = fields.text("day", &self.day.to_string());
        }
        if is_other(&|before| before.amount == self.amount) {
            fields = match self.amount {
                LotAmount::Pieces(count) => fields.written("count", count.to_string()),
                LotAmount::Length(length) => fields.text("length", &written_length(length)),
            };
        }
        match (self.broken, before.map_or(0, |before| before.broken)) {
            (0, 0) => {}
            (0, _) => fields = fields.without("broken"),
            (broken, was) if broken != was => fields = fields.written("broken", broken.to_string()),
            _ => {}
        }
        if is_other(&|before| before.price == self.price) {
            fields = fields.text("price", &self.price.to_string());
        }
        match (&self.paper, before.and_then(|before| before.paper.as_ref())) {
            (Some(paper), was) if was != Some(paper) => fields = fields.text("paper", paper),
            (None, Some(_)) => fields = fields.without("paper"),
            _ => {}
        }
        fields
    }

    /// What of it is whole, as it is put away: on `spools` alike ones where it goes by the length, beside what lies there
    /// `now`, where that is not what the file says.
    pub fn put_away(&self, spools: u32, now: Option<PartCount>) -> PutAway {
        let more = match self.amount {
            LotAmount::Pieces(count) => PartCount::Pieces(count.saturating_sub(self.broken)),
            LotAmount::Length(length) => {
                let whole = length.0.saturating_sub(self.broken.saturating_mul(10));
                let each = Tenths(whole / spools.max(1));
                PartCount::Spools(if each.0 > 0 { vec![each; spools.max(1) as usize] } else { vec![] })
            }
        };
        PutAway::of(more, now)
    }
}

/// A length as a file has it: whole metres as such, all else in millimetres.
pub fn written_length(length: Tenths) -> String {
    match length.0 {
        tenths if tenths > 0 && tenths % 10_000 == 0 => format!("{}m", tenths / 10_000),
        tenths if tenths % 10 == 0 => format!("{}mm", tenths / 10),
        tenths => format!("{}.{}mm", tenths / 10, tenths % 10),
    }
}

/// The text of a field, without blanks around it.
pub(super) fn text_of<'n>(node: &'n Node, name: &str) -> Option<&'n str> {
    let Value::Struct { fields, .. } = &node.value else { return None };
    match &fields.iter().find(|field| field.name == name)?.node.value {
        Value::Text(text) => Some(text.trim()),
        _ => None,
    }
}

/// By what an entry's lot is known.
fn key_of(node: &Node) -> Option<LotKey> {
    let text = |name| text_of(node, name).map(str::to_owned);
    Some(LotKey { part: text("part")?, lot: text("lot")?, day: text("day")? })
}

const BOUGHT: Step<'static> = Step::Field("bought");

impl TableFiles {
    /// The entries of one of the workshop's lists.
    pub(super) fn workshop_list(&self, list: &str) -> &[Node] {
        let node = self.files.get(PARTS).and_then(|file| file.find(&[Step::Field(list)]));
        match node.map(|node| &node.value) {
            Some(Value::List(items)) => items,
            _ => &[],
        }
    }

    /// At which place of the file's list a lot stands.
    pub(super) fn lot(&self, key: &LotKey) -> Option<usize> {
        self.workshop_list("bought").iter().position(|item| key_of(item).as_ref() == Some(key))
    }

    /// A lot as it is written now.
    pub(super) fn lot_written(&self, key: &LotKey) -> Option<&str> {
        self.files.get(PARTS)?.written(&[BOUGHT, Step::Item(self.lot(key)?)])
    }

    /// Writes a lot down, and what came of it to what lies there. The same sent twice is one lot.
    pub(super) fn write_lot(&mut self, told: &LotTold, put_away: Option<&PutAway>) -> Result<(), EditRefusal> {
        self.workshop_file()?;
        let (key, entry) = (told.key(), told.fields(None).entry(""));
        if let Some(written) = self.lot_written(&key) {
            return if written == entry { Ok(()) } else { Err(EditRefusal::LotThere(key.lot)) };
        }
        let count = self.workshop_list("bought").len();
        let file = self.workshop_file()?;
        if file.find(&[BOUGHT]).is_some() {
            file.insert_item(&[BOUGHT], count, &entry)?;
        } else {
            file.set_field(&[], "bought", &format!("[\n        {entry},\n    ]"))?;
        }
        match put_away {
            Some(put_away) => self.put_away(&key.part, put_away),
            None => Ok(()),
        }
    }

    /// Tells something else of a lot; drawer and bench stay as they are.
    pub(super) fn tell_lot(&mut self, key: &LotKey, fields: &Fields) -> Result<(), EditRefusal> {
        self.workshop_file()?;
        let i = self.lot(key).ok_or_else(|| EditRefusal::NoLot(key.lot.clone()))?;
        fields.write_into(self.workshop_file()?, &[BOUGHT, Step::Item(i)])?;
        let all = self.workshop_list("bought");
        let now = all.get(i).and_then(key_of);
        match now {
            Some(now) if all.iter().filter(|item| key_of(item).as_ref() == Some(&now)).count() > 1 => {
                Err(EditRefusal::LotThere(now.lot))
            }
            _ => Ok(()),
        }
    }

    /// Strikes a lot out; drawer and bench stay as they are.
    pub(super) fn strike_lot(&mut self, key: &LotKey) -> Result<(), EditRefusal> {
        self.workshop_file()?;
        let i = self.lot(key).ok_or_else(|| EditRefusal::NoLot(key.lot.clone()))?;
        Ok(self.workshop_file()?.remove_item(&[BOUGHT], i)?)
    }

    /// Takes the recipe of a single drop or base out that is on the table no more: nothing has that id, and the file would be
    /// wrong.
    pub(super) fn forget_recipe(&mut self, id: &str) -> Result<(), EditRefusal> {
        let place = self.workshop_list("recipes").iter().position(|item| text_of(item, "id") == Some(id));
        match place {
            Some(i) => Ok(self.workshop_file()?.remove_item(&[Step::Field("recipes")], i)?),
            None => Ok(()),
        }
    }

    /// The workshop's file to write in.
    pub(super) fn workshop_file(&mut self) -> Result<&mut Document, EditRefusal> {
        if let Some(mistakes) = &self.workshop_broken {
            return Err(EditRefusal::Mistakes(mistakes.clone()));
        }
        self.files.get_mut(PARTS).ok_or(EditRefusal::NoWorkshop)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Length;

    #[test]
    fn lengths_are_written_as_they_are_read() {
        for (tenths, text) in [(200_000, "20m"), (73_500, "7350mm"), (6_096, "609.6mm"), (1, "0.1mm"), (10_000, "1m")] {
            assert_eq!(written_length(Tenths(tenths)), text);
            assert_eq!(Tenths::no_longer(text.parse::<Length>().unwrap()), Tenths(tenths), "{text}");
        }
    }
}
