//! A whole folder: read everything, report everything, or give a whole catalogue.

use std::{
    collections::{BTreeMap, HashMap},
    path::Path,
    sync::Arc,
};

use super::{
    listing::{names_files, read_text, rules_files, tray_files},
    model::{Catalog, Table, Tray},
    names::{self, Names},
    pictures::{self, Picture, Pictures, relief_name},
    read_bases, read_table, read_trays, remarks,
};
use crate::{
    caution::{Region, Rules, Sizes},
    craft::{Base, DropKind},
    disk::digest::Sha256,
    money::Currency,
    quoting::quoted,
    ron_tree::{Detail, Mistake, Mistakes, Reader, detail},
};

/// A catalogue with its pictures.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// The catalogue, whole and checked.
    pub catalog: Arc<Catalog>,
    /// The pictures that its drops use and their reliefs, by file name.
    pub pictures: BTreeMap<String, Picture>,
    /// Hash of everything in it.
    pub revision: String,
    /// What the seller should know though nothing is wrong: drops that fit no base, weights that were worked out.
    pub remarks: Vec<Detail>,
    /// The rules of every region: those of the program, and of the folder in their place or beside them.
    pub rules: Vec<Rules>,
}

impl Loaded {
    /// The same with its pictures in the copy of its folder at `copy`.
    #[must_use]
    pub fn with_pictures_in(mut self, copy: &Path) -> Self {
        for (name, picture) in &mut self.pictures {
            picture.file = copy.join("pictures").join(name);
        }
        self
    }
}

/// Takes a rules file in: in place of the rules of its region, or beside the others.
fn take_rules(all: &mut Vec<Rules>, own: &mut HashMap<Region, String>, file: &str, source: &str) -> Vec<Mistake> {
    match Rules::from_ron(file, source) {
        Ok(rules) => {
            if let Some(first) = own.insert(rules.region, file.to_owned()) {
                let region = rules.region.code();
                let found = detail!("wrong-rules-twice", "the rules of {region} a second time", region = region);
                let expected = detail!("right-rules-once", "{first} has them; keep one of them", first = first);
                return vec![Mistake::of_file(file, found, expected)];
            }
            all.retain(|other| other.region != rules.region);
            all.push(rules);
            vec![]
        }
        Err(mistakes) => mistakes,
    }
}

/// A folder while it is read.
struct Reading<'r> {
    root: &'r Path,
    /// Files as they are going to be, in place of those of the folder or beside them.
    changed: &'r BTreeMap<String, String>,
    /// Of every file's name and text.
    hash: Sha256,
    mistakes: Vec<Mistake>,
    /// Whose each id is, in words.
    ids: HashMap<String, Detail>,
    remarks: Vec<Detail>,
}

/// The rules of every region: those of the program, and of the folder in their place or beside them.
struct FoundRules {
    all: Vec<Rules>,
    /// Whether every file of the folder reads.
    are_whole: bool,
}

impl Reading<'_> {
    /// A file's text. It counts for the revision.
    fn text(&mut self, file: &str) -> Option<String> {
        let read = self.changed.get(file).map_or_else(|| read_text(self.root, file), |text| Ok(text.clone()));
        match read {
            Ok(text) => {
                self.hash.update(file);
                self.hash.update((text.len() as u64).to_le_bytes());
                self.hash.update(&text);
                Some(text)
            }
            Err(mistake) => {
                self.mistakes.push(mistake);
                None
            }
        }
    }

    /// The files of a folder, or none and the mistake.
    fn listed(&mut self, files: Result<Vec<String>, Mistake>) -> Vec<String> {
        files.unwrap_or_else(|mistake| {
            self.mistakes.push(mistake);
            vec![]
        })
    }

    fn rules(&mut self) -> FoundRules {
        let mut all = Rules::built_in().to_vec();
        let mut own = HashMap::new();
        let mut broken = Vec::new();
        for file in self.listed(rules_files(self.root)) {
            if let Some(source) = self.text(&file) {
                broken.extend(take_rules(&mut all, &mut own, &file, &source));
            }
        }
        let are_whole = broken.is_empty();
        self.mistakes.append(&mut broken);
        let replaced = own.iter().filter(|(region, _)| Rules::of_region(**region).is_some());
        self.remarks.extend(replaced.map(|(region, file)| remarks::of_own_rules(*region, file)));
        self.remarks.sort();
        FoundRules { all, are_whole }
    }

    fn table(&mut self, rules: &FoundRules) -> Option<Table> {
        // A region whose own file is broken is no mistake of the table's as well.
        let regions: Vec<Region> = rules.all.iter().map(|rules| rules.region).collect();
        let regions = rules.are_whole.then_some(regions.as_slice());
        let source = self.text("table.ron")?;
        let (mut reader, node) = Reader::open("table.ron", &source);
        let table = node.and_then(|node| read_table::read(&mut reader, &node, regions));
        self.mistakes.append(&mut reader.mistakes);
        table
    }

    fn bases(&mut self, currency: Option<Currency>) -> Vec<Base> {
        let mut bases = Vec::new();
        let Some(source) = self.text("bases.ron") else { return bases };
        let (mut reader, node) = Reader::open("bases.ron", &source);
        for (base, at) in node.map(|node| read_bases::read(&mut reader, &node, currency)).unwrap_or_default() {
            unique(&mut reader, &mut self.ids, &base.id, at, || {
                detail!("the-base", "the base {name}", name = quoted(&base.name))
            });
            bases.push(base);
        }
        self.mistakes.append(&mut reader.mistakes);
        bases
    }

    /// Trays by letter and drops by home.
    fn trays(&mut self, currency: Option<Currency>, pictures: &Pictures) -> (Vec<Tray>, Vec<DropKind>) {
        let (mut trays, mut drops) = (Vec::new(), Vec::new());
        let mut letters: HashMap<char, String> = HashMap::new();
        let mut files = self.listed(tray_files(self.root));
        files.extend(self.changed.keys().filter(|file| file.starts_with("trays/")).cloned());
        files.sort();
        files.dedup();
        for file in files {
            let Some(source) = self.text(&file) else { continue };
            let (mut reader, node) = Reader::open(&file, &source);
            if let Some(read) = node.and_then(|node| read_trays::read(&mut reader, &node, currency, pictures)) {
                let letter = read.tray.letter;
                if let Some(other) = letters.insert(letter, file.clone()) {
                    let expected = detail!("right-tray", "{other} is tray {letter}", other = other, letter = letter);
                    let found = detail!("wrong-tray-twice", "a second tray {letter}", letter = letter);
                    reader.wrong(read.letter_at, found, expected);
                }
                for (kind, at) in read.drops {
                    unique(&mut reader, &mut self.ids, &kind.id, at, || {
                        let (name, home) = (quoted(&kind.name), kind.home.to_string());
                        detail!("the-drop", "{name} in {home}", name = name, home = home)
                    });
                    drops.push(kind);
                }
                self.remarks.extend(read.remarks);
                trays.push(read.tray);
            }
            self.mistakes.append(&mut reader.mistakes);
        }
        trays.sort_by_key(|tray| tray.letter);
        drops.sort_by_key(|kind| kind.home);
        (trays, drops)
    }

    fn names(&mut self, trays: &[Tray]) -> Names {
        let mut names = Names::default();
        let letters: Vec<String> = trays.iter().map(|tray| tray.letter.to_string()).collect();
        let ids = self.ids.clone();
        let known: Vec<&str> = ids.keys().chain(&letters).map(String::as_str).collect();
        let known = self.mistakes.is_empty().then_some(known.as_slice());
        for file in self.listed(names_files(self.root)) {
            let Some(language) = names::language_of(&file).map(str::to_owned) else {
                let found = detail!("wrong-language", "no language is called so");
                let right =
                    detail!("right-language", "name it after a language of two small letters, as in names/de.ron");
                self.mistakes.push(Mistake::of_file(&file, found, right));
                continue;
            };
            let Some(source) = self.text(&file) else { continue };
            let (mut reader, node) = Reader::open(&file, &source);
            names.add(language, node.map(|node| names::read(&mut reader, &node, known)).unwrap_or_default());
            self.mistakes.append(&mut reader.mistakes);
        }
        names
    }
}

/// Reads and checks the catalogue in `root`.
///
/// # Errors
/// Every mistake of every file, in order of file and place.
pub fn read_folder(root: &Path) -> Result<Loaded, Mistakes> {
    let mut loaded = read_with(root, &BTreeMap::new(), &pictures::read_all(&root.join("pictures")))?;
    let catalog = Arc::make_mut(&mut loaded.catalog);
    catalog.sizes = Sizes::of_all(&catalog.drops, catalog.rules.gauge).with_bases(&catalog.bases);
    Ok(loaded)
}

/// Whether the catalogue in `root` is whole with files that are `changed`, their names below it with their texts. Pictures
/// that are `known` are not read again.
///
/// # Errors
/// Every mistake that there would be.
pub(super) fn check_changed(
    root: &Path,
    changed: &BTreeMap<String, String>,
    known: &BTreeMap<String, Picture>,
) -> Result<Arc<Catalog>, Mistakes> {
    let mut all: Pictures = known.iter().map(|(name, picture)| (name.clone(), Ok(picture.clone()))).collect();
    for name in pictures::names_in(&root.join("pictures")) {
        if !all.contains_key(&name) && changed.values().any(|text| text.contains(&name)) {
            let read = pictures::read(&root.join("pictures").join(&name));
            all.insert(name, read);
        }
    }
    read_with(root, changed, &all).map(|loaded| loaded.catalog)
}

/// The catalogue with nothing tried in the test cylinder yet.
fn read_with(root: &Path, changed: &BTreeMap<String, String>, pictures: &Pictures) -> Result<Loaded, Mistakes> {
    let hash = Sha256::default();
    let mut reading = Reading { root, changed, hash, mistakes: vec![], ids: HashMap::new(), remarks: vec![] };
    let rules = reading.rules();
    let table = reading.table(&rules);
    let currency = table.as_ref().map(|table| table.prices.currency);
    let bases = reading.bases(currency);
    let (trays, drops) = reading.trays(currency, pictures);
    let names = reading.names(&trays);

    let Reading { mut hash, mistakes, mut remarks, .. } = reading;
    let table = table.filter(|_| mistakes.is_empty());
    let mine = table.as_ref().and_then(|table| rules.all.iter().find(|one| one.region == table.region).cloned());
    let (Some(table), Some(mine)) = (table, mine) else {
        return Err(Mistakes(mistakes));
    };
    let used: BTreeMap<String, Picture> = drops
        .iter()
        .flat_map(DropKind::pictures)
        .flat_map(|name| [name.to_owned(), relief_name(name)])
        .filter_map(|name| Some((name.clone(), pictures.get(&name)?.as_ref().ok()?.clone())))
        .collect();
    for (name, picture) in &used {
        hash.update(name);
        hash.update(&picture.sha256);
    }
    // The rules of the program are no file of the folder, and a later version may have others.
    hash.update(serde_json::to_vec(&mine).unwrap_or_default());
    remarks.extend(remarks::of_rings(&bases, &drops));
    let sizes = Sizes::empty(mine.gauge);
    let catalog = Arc::new(Catalog { table, bases, trays, drops, names, rules: mine, sizes });
    Ok(Loaded { catalog, pictures: used, revision: hash.into_hex(), remarks, rules: rules.all })
}

/// Says so where an id was given before.
fn unique(
    reader: &mut Reader<'_>,
    ids: &mut HashMap<String, Detail>,
    id: &str,
    at: usize,
    owner: impl FnOnce() -> Detail,
) {
    match ids.get(id) {
        Some(first) => {
            let found = detail!("wrong-id-twice", "the id {id} a second time", id = quoted(id));
            let expected = detail!("right-id-once", "{first} has it; every id is its own", first = first.clone());
            reader.wrong(at, found, expected);
        }
        None => {
            ids.insert(id.to_owned(), owner());
        }
    }
}
