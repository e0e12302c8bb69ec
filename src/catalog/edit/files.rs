//! The files of a table as they are now, and where things stand in them.

use std::{collections::BTreeMap, path::Path};

use super::refusal::{EditRefusal, Place};
use crate::{
    catalog::{
        listing::{names_files, read_text, tray_files},
        read_parts,
    },
    craft::Home,
    disk::digest::sha256_hex,
    ron_tree::{Document, Mistakes, Step, Value},
};

/// The table's own file.
pub(super) const TABLE: &str = "table.ron";
/// The file of the bases.
pub(super) const BASES: &str = "bases.ron";

/// The workshop's file, where there is one.
pub(super) const PARTS: &str = read_parts::FILE;

/// The files that the editor writes, by their names below the folder.
#[derive(Debug, Clone, PartialEq)]
pub struct TableFiles {
    pub(super) files: BTreeMap<String, Document>,
    /// What is wrong with the workshop's file, so that it is not among them: the table is worked on without it.
    pub(super) workshop_broken: Option<Mistakes>,
}

/// Where a compartment stands.
pub(super) struct Cell {
    pub file: String,
    pub row: usize,
    pub column: usize,
}

impl Cell {
    /// The way to its row.
    pub(super) const fn row(&self) -> [Step<'static>; 2] {
        [Step::Field("rows"), Step::Item(self.row)]
    }

    /// The way to it.
    pub(super) const fn path(&self) -> [Step<'static>; 3] {
        [Step::Field("rows"), Step::Item(self.row), Step::Item(self.column)]
    }
}

impl TableFiles {
    /// Reads the table's files in the folder `root`.
    ///
    /// # Errors
    /// One does not read; who wrote in it by hand has to mend it first.
    pub fn read(root: &Path) -> Result<Self, EditRefusal> {
        let one = |mistake| EditRefusal::Mistakes(Mistakes(vec![mistake]));
        let trays = tray_files(root).map_err(one)?;
        let other_names = names_files(root).map_err(one)?;
        let names = [TABLE, BASES].into_iter().map(str::to_owned).chain(trays).chain(other_names);
        let read = names.map(|name| {
            let text = read_text(root, &name).map_err(one)?;
            let file = Document::read(&name, text).map_err(EditRefusal::Mistakes)?;
            Ok((name, file))
        });
        let mut files: BTreeMap<String, Document> = read.collect::<Result<_, EditRefusal>>()?;
        let mut workshop_broken = None;
        if root.join(PARTS).symlink_metadata().is_ok() {
            let read = read_text(root, PARTS).map_err(|mistake| Mistakes(vec![mistake]));
            match read.and_then(|text| Document::read(PARTS, text)) {
                Ok(file) => drop(files.insert(PARTS.to_owned(), file)),
                Err(mistakes) => workshop_broken = Some(mistakes),
            }
        }
        Ok(Self { files, workshop_broken })
    }

    /// The text of a file.
    pub fn text(&self, file: &str) -> Option<&str> {
        self.files.get(file).map(Document::text)
    }

    /// Whether nothing lies on the table: no tray is there, and no base.
    pub fn is_bare(&self) -> bool {
        let has_bases =
            self.files.get(BASES).is_some_and(|file| matches!(&file.root().value, Value::List(all) if !all.is_empty()));
        !has_bases && !self.files.keys().any(|file| file.starts_with("trays/"))
    }

    /// The file of the tray with this letter.
    pub(super) fn tray(&self, letter: char) -> Option<(&str, &Document)> {
        let is_it = |file: &Document| {
            let node = file.find(&[Step::Field("letter")]);
            node.is_some_and(|node| node.value == Value::Text(letter.to_string()))
        };
        let trays = self.files.iter().filter(|(name, _)| name.starts_with("trays/"));
        trays.map(|(name, file)| (name.as_str(), file)).find(|(_, file)| is_it(file))
    }

    /// Where a compartment stands.
    pub(super) fn cell(&self, home: Home) -> Result<Cell, EditRefusal> {
        let (name, file) = self.tray(home.tray).ok_or(EditRefusal::NoTray(home.tray))?;
        let rows = match file.find(&[Step::Field("rows")]).map(|node| &node.value) {
            Some(Value::List(rows)) => rows.as_slice(),
            _ => &[],
        };
        let mut left = usize::from(home.compartment) - 1;
        for (row, node) in rows.iter().enumerate() {
            let Value::List(cells) = &node.value else { continue };
            if left < cells.len() {
                return Ok(Cell { file: name.to_owned(), row, column: left });
            }
            left -= cells.len();
        }
        Err(EditRefusal::NoHome(home))
    }

    /// Whether nothing lies in a compartment.
    pub(super) fn is_empty(&self, cell: &Cell) -> bool {
        let node = self.files.get(&cell.file).and_then(|file| file.find(&cell.path()));
        node.is_some_and(|node| matches!(&node.value, Value::Word(word) if word == "Empty"))
    }

    /// Whether something lies in a compartment, as the files say it now.
    pub fn is_taken(&self, home: Home) -> bool {
        self.cell(home).is_ok_and(|cell| !self.is_empty(&cell))
    }

    /// At which place of its file a base stands.
    pub(super) fn base(&self, id: &str) -> Option<usize> {
        let Value::List(items) = &self.files.get(BASES)?.root().value else { return None };
        items.iter().position(|item| match &item.value {
            Value::Struct { fields, .. } => {
                fields.iter().any(|field| field.name == "id" && field.node.value == Value::Text(id.to_owned()))
            }
            _ => false,
        })
    }

    /// The id of what lies in a compartment; without one it is known by its home.
    pub(super) fn id_in(&self, home: Home, cell: &Cell) -> String {
        let [rows, row, column] = cell.path();
        let id = self.files.get(&cell.file).and_then(|file| file.find(&[rows, row, column, Step::Field("id")]));
        match id.map(|node| &node.value) {
            Some(Value::Text(id)) => id.clone(),
            _ => home.to_string().to_lowercase(),
        }
    }

    /// A place as it is written now; empty where there is none.
    pub fn written(&self, place: &Place) -> String {
        let found = match place {
            Place::Home(home) => {
                self.cell(*home).ok().and_then(|cell| self.files.get(&cell.file)?.written(&cell.path()))
            }
            Place::Tray(letter) => self.tray(*letter).map(|(_, file)| file.text()),
            Place::Base(id) => self.base(id).and_then(|i| self.files.get(BASES)?.written(&[Step::Item(i)])),
            Place::Lot(key) => self.lot_written(key),
            Place::Part(id) => self.part_written(id),
            Place::Table => self.text(TABLE),
        };
        found.unwrap_or_default().to_owned()
    }

    /// What tells whether a place is still as a page shows it.
    pub fn mark(&self, place: &Place) -> String {
        let mut mark = sha256_hex(self.written(place));
        mark.truncate(16);
        mark
    }
}
