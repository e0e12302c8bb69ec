//! What an act changes in the files.

use super::{
    act::Act,
    entry::Fields,
    files::{BASES, Cell, TABLE, TableFiles},
    refusal::EditRefusal,
};
use crate::{
    craft::Home,
    ron_tree::{Document, Step, Value, in_quotes},
};

/// More rows or columns than any tray has.
const MOST_ROWS: usize = 40;

impl TableFiles {
    /// Does `act` to the files in memory.
    ///
    /// # Errors
    /// Why it can't be done; then the files are only good to be thrown away.
    pub(super) fn apply(&mut self, act: &Act) -> Result<(), EditRefusal> {
        match act {
            Act::Lay { home, fields } => {
                let (cell, entry) = (self.cell(*home)?, fields.entry(""));
                // Sent twice, it lies there already.
                if self.file(&cell.file)?.written(&cell.path()) == Some(&entry) {
                    return Ok(());
                }
                let cell = self.empty_cell(*home)?;
                self.put(&cell, &entry)
            }
            Act::Tell { home, fields } => {
                let cell = self.taken_cell(*home)?;
                self.keep_id(*home, &cell)?;
                fields.write_into(self.file(&cell.file)?, &cell.path())
            }
            Act::Copy { from, to, id } => {
                let (from, to) = (self.taken_cell(*from)?, self.empty_cell(*to)?);
                let entry = self.file(&from.file)?.written(&from.path()).unwrap_or_default().to_owned();
                let mut copy = Document::read(&from.file, entry).map_err(EditRefusal::Mistakes)?;
                Fields::new().text("id", id).write_into(&mut copy, &[])?;
                self.put(&to, copy.text())
            }
            Act::Move { from, to } => self.exchange(*from, *to),
            Act::Retire { home } => {
                let cell = self.taken_cell(*home)?;
                let id = self.id_in(*home, &cell);
                self.put(&cell, "Empty")?;
                self.forget_recipe(&id)?;
                self.forget_names(&id)
            }
            Act::NewTray { letter, name, rows, columns } => self.new_tray(*letter, name, *rows, *columns),
            Act::TellTray { letter, fields } => {
                let file = self.tray(*letter).ok_or(EditRefusal::NoTray(*letter))?.0.to_owned();
                fields.write_into(self.file(&file)?, &[])
            }
            Act::AddRow { letter } => self.add_row(*letter),
            Act::NewBase { form, fields } => {
                let file = self.file(BASES)?;
                let Value::List(items) = &file.root().value else { return Err(no_list(BASES)) };
                let count = items.len();
                Ok(file.insert_item(&[], count, &fields.entry(form))?)
            }
            Act::TellBase { id, fields } => {
                let i = self.base(id).ok_or_else(|| EditRefusal::NoBase(id.clone()))?;
                fields.write_into(self.file(BASES)?, &[Step::Item(i)])
            }
            Act::RetireBase { id } => {
                let i = self.base(id).ok_or_else(|| EditRefusal::NoBase(id.clone()))?;
                self.file(BASES)?.remove_item(&[], i)?;
                self.forget_recipe(id)?;
                self.forget_names(id)
            }
            Act::WriteLot { told, put_away } => self.write_lot(told, put_away.as_ref()),
            Act::TellLot { key, fields } => self.tell_lot(key, fields),
            Act::StrikeLot { key } => self.strike_lot(key),
            Act::BeginWorkshop { hour, price_step } => self.begin_workshop(*hour, *price_step),
            Act::NewPart { told } => self.new_part(told),
            Act::CountPart { id, there } => self.count_part(id, there),
            Act::AddToPart { id, more } => self.add_to_part(id, more),
            Act::StrikePart { id } => self.strike_part(id),
            Act::Table { fields } => fields.write_into(self.file(TABLE)?, &[]),
        }
    }

    fn file(&mut self, name: &str) -> Result<&mut Document, EditRefusal> {
        self.files.get_mut(name).ok_or_else(|| no_list(name))
    }

    fn empty_cell(&self, home: Home) -> Result<Cell, EditRefusal> {
        let cell = self.cell(home)?;
        if self.is_empty(&cell) { Ok(cell) } else { Err(EditRefusal::Taken(home)) }
    }

    fn taken_cell(&self, home: Home) -> Result<Cell, EditRefusal> {
        let cell = self.cell(home)?;
        if self.is_empty(&cell) { Err(EditRefusal::Empty(home)) } else { Ok(cell) }
    }

    fn put(&mut self, cell: &Cell, entry: &str) -> Result<(), EditRefusal> {
        Ok(self.file(&cell.file)?.replace(&cell.path(), entry)?)
    }

    /// What is known by its home, since it has no id, gets that one for good before it goes elsewhere.
    fn keep_id(&mut self, home: Home, cell: &Cell) -> Result<(), EditRefusal> {
        let path = cell.path();
        let file = self.file(&cell.file)?;
        if file.find(&[path[0], path[1], path[2], Step::Field("id")]).is_none() {
            file.set_field(&path, "id", &in_quotes(&home.to_string().to_lowercase()))?;
        }
        Ok(())
    }

    /// Takes the names that something has in other languages out of their files: nothing has that id any more.
    fn forget_names(&mut self, id: &str) -> Result<(), EditRefusal> {
        for file in self.files.iter_mut().filter(|(name, _)| name.starts_with("names/")).map(|(_, file)| file) {
            let of = |value: &Value| match value {
                Value::Struct { fields, .. } => {
                    fields.iter().any(|one| one.name == "id" && one.node.value == Value::Text(id.to_owned()))
                }
                _ => false,
            };
            let place = match &file.root().value {
                Value::List(items) => items.iter().position(|item| of(&item.value)),
                _ => None,
            };
            if let Some(i) = place {
                file.remove_item(&[], i)?;
            }
        }
        Ok(())
    }

    /// Two compartments change what lies in them, with the comments that stand above.
    fn exchange(&mut self, from: Home, to: Home) -> Result<(), EditRefusal> {
        let a = self.taken_cell(from)?;
        let b = self.cell(to)?;
        if from == to {
            return Ok(());
        }
        self.keep_id(from, &a)?;
        if !self.is_empty(&b) {
            self.keep_id(to, &b)?;
        }
        let of_a = self.with_comments(&a)?;
        let of_b = self.with_comments(&b)?;
        for (cell, entry) in [(&a, of_b), (&b, of_a)] {
            let row = cell.row();
            self.file(&cell.file)?.replace_with_comments(&row, cell.column, &entry)?;
        }
        Ok(())
    }

    fn with_comments(&mut self, cell: &Cell) -> Result<String, EditRefusal> {
        let row = cell.row();
        let text = self.file(&cell.file)?.written_with_comments(&row, cell.column);
        text.map(str::to_owned).ok_or_else(|| no_list(&cell.file))
    }

    fn new_tray(&mut self, letter: char, name: &str, rows: usize, columns: usize) -> Result<(), EditRefusal> {
        if self.tray(letter).is_some() {
            return Err(EditRefusal::TrayThere(letter));
        }
        let sides = 1..=MOST_ROWS;
        if !sides.contains(&rows) || !sides.contains(&columns) || rows * columns > 999 {
            return Err(EditRefusal::NoGrid { most: MOST_ROWS });
        }
        let row = format!("        [\n{}        ],\n", "            Empty,\n".repeat(columns));
        let text = format!(
            "// Each compartment needs no more than a price, as in (price: \"3.00\"); what is not told is guessed with care.\n(\n    \
             letter: {},\n    name: {},\n    rows: [\n{}    ],\n)\n",
            in_quotes(&letter.to_string()),
            in_quotes(name),
            row.repeat(rows)
        );
        let stem = letter.to_lowercase();
        // A file of that name may hold another tray.
        let name = (1..)
            .map(|n| if n == 1 { format!("trays/{stem}.ron") } else { format!("trays/{stem}-{n}.ron") })
            .find(|name| !self.files.contains_key(name))
            .unwrap_or_default();
        let file = Document::read(&name, text).map_err(EditRefusal::Mistakes)?;
        self.files.insert(name, file);
        Ok(())
    }

    fn add_row(&mut self, letter: char) -> Result<(), EditRefusal> {
        let name = self.tray(letter).ok_or(EditRefusal::NoTray(letter))?.0.to_owned();
        let file = self.file(&name)?;
        let Some(Value::List(rows)) = file.find(&[Step::Field("rows")]).map(|node| &node.value) else {
            return Err(no_list(&name));
        };
        let columns = match rows.last().map(|row| &row.value) {
            Some(Value::List(cells)) => cells.len().max(1),
            _ => 1,
        };
        let count = rows.len();
        let row = format!("[{}]", vec!["Empty"; columns].join(", "));
        Ok(file.insert_item(&[Step::Field("rows")], count, &row)?)
    }
}

/// A file that has another form than a table's; the reader tells it with its place.
fn no_list(file: &str) -> EditRefusal {
    EditRefusal::NoPlace(format!("rows: [[…]] ({file})"))
}
