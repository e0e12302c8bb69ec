//! A whole folder: read everything, report everything, or give a whole catalogue.

use std::{
    collections::{BTreeMap, HashMap},
    fs, io,
    path::Path,
    sync::Arc,
};

use super::{
    model::{Catalog, Table, Tray},
    names::{self, Names},
    pictures::{self, Picture, Pictures, relief_name},
    read_bases, read_table, read_trays,
};
use crate::{
    caution::{Region, Rules, Sizes},
    craft::{Base, DropKind, fit_on},
    disk::{
        digest::Sha256,
        plain_file::{MEGABYTE, NotRead, read_plain},
    },
    money::Currency,
    ron_tree::{Mistake, Mistakes, Reader},
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
    pub remarks: Vec<String>,
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

/// The longest file that is read, in bytes: a tray full of drops has a fifth of it.
const LONGEST_FILE: u64 = 4 * MEGABYTE;

/// A file of the folder as text, or the mistake that it is none.
pub(super) fn read_text(root: &Path, file: &str) -> Result<String, Mistake> {
    let bytes = read_plain(&root.join(file), LONGEST_FILE).map_err(|error| {
        let right = match error {
            NotRead::Missing => "every catalogue needs it",
            NotRead::NoFile(_) => "put a plain file there, or take it away",
            NotRead::TooLong(_) => "no catalogue needs as much; part it, or look what came into it",
            NotRead::Disk(_) => "make it readable",
        };
        Mistake::of_file(file, format!("the file {error}"), right)
    })?;
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(&bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(text.to_owned()),
        Err(error) => {
            let good = String::from_utf8_lossy(&bytes[..error.valid_up_to()]).into_owned();
            Err(Mistake::at(file, &good, good.len(), "a byte that is no UTF-8 text", "save the file as UTF-8"))
        }
    }
}

/// The files of a folder below the catalogue in order of their names; none where there is no such folder.
///
/// # Errors
/// The folder, or an entry of it, can't be read; then it is not known what the table says.
fn files_of(root: &Path, folder: &str, hint: &str) -> Result<Option<Vec<String>>, Mistake> {
    let path = root.join(folder);
    let unread = |error: io::Error| {
        let found = format!("the folder can't be read ({error})");
        Mistake::of_file(folder, found, format!("make it readable{hint}"))
    };
    let entries = match fs::read_dir(&path) {
        Ok(entries) => entries,
        // A link to nowhere is there, and is no missing folder.
        Err(error) if error.kind() == io::ErrorKind::NotFound && path.symlink_metadata().is_err() => return Ok(None),
        Err(error) => return Err(unread(error)),
    };
    let mut files = Vec::new();
    for entry in entries {
        let name = entry.map_err(unread)?.file_name();
        let words = name.to_string_lossy();
        if !words.ends_with(".ron") || words.starts_with('.') {
            continue;
        }
        let file = format!("{folder}/{words}");
        if name.to_str().is_none() {
            return Err(Mistake::of_file(&file, "a file name that is no UTF-8 text", "give it a plain name"));
        }
        files.push(file);
    }
    files.sort();
    Ok(Some(files))
}

/// The tray files in order of their names. A table that is only begun has none yet; without the folder something is lost.
pub(super) fn tray_files(root: &Path) -> Result<Vec<String>, Mistake> {
    files_of(root, "trays", "")?.ok_or_else(|| {
        Mistake::of_file("trays", "the folder is missing", "put a file for every tray into it, as in trays/a.ron")
    })
}

/// The rules files in order of their names. A table without rules of its own has no such folder.
fn rules_files(root: &Path) -> Result<Vec<String>, Mistake> {
    Ok(files_of(root, "rules", ", or take it away to go by the program's own rules")?.unwrap_or_default())
}

/// The files of names in other languages, in their order. A table whose guests all read the seller's language has none.
pub(super) fn names_files(root: &Path) -> Result<Vec<String>, Mistake> {
    Ok(files_of(root, "names", "")?.unwrap_or_default())
}

/// Takes a rules file in: in place of the rules of its region, or beside the others.
fn take_rules(all: &mut Vec<Rules>, own: &mut HashMap<Region, String>, file: &str, source: &str) -> Vec<Mistake> {
    match Rules::from_ron(file, source) {
        Ok(rules) => {
            if let Some(first) = own.insert(rules.region, file.to_owned()) {
                let found = format!("the rules of {} a second time", rules.region);
                return vec![Mistake::of_file(file, found, format!("{first} has them; keep one of them"))];
            }
            all.retain(|other| other.region != rules.region);
            all.push(rules);
            vec![]
        }
        Err(mistakes) => mistakes,
    }
}

/// Says which drops go onto no base, with the sizes.
fn fits_nowhere(bases: &[Base], drops: &[DropKind]) -> Vec<String> {
    let easiest = |kind: &DropKind| {
        bases.iter().map(|base| fit_on(base, kind.ring)).max_by(|a, b| a.clearance_mm.total_cmp(&b.clearance_mm))
    };
    let alone = |kind: &DropKind| {
        easiest(kind).filter(|fit| !fit.passes).map(|fit| {
            let (id, home) = (&kind.id, kind.home);
            format!("the ring of {id:?} ({home}) goes onto no base: {fit} at the easiest end")
        })
    };
    drops.iter().filter_map(alone).collect()
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
    ids: HashMap<String, String>,
    remarks: Vec<String>,
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
        self.remarks.extend(
            replaced.map(|(region, file)| format!("{file} stands in place of the program's own rules of {region}")),
        );
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
            unique(&mut reader, &mut self.ids, &base.id, at, format!("the base {:?}", base.name));
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
                    let expected = format!("{other} is tray {letter}");
                    reader.wrong(read.letter_at, format!("a second tray {letter}"), expected);
                }
                for (kind, at) in read.drops {
                    unique(&mut reader, &mut self.ids, &kind.id, at, format!("{:?} in {}", kind.name, kind.home));
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
                let right = "name it after a language of two small letters, as in names/de.ron";
                self.mistakes.push(Mistake::of_file(&file, "no language is called so", right));
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
        .flat_map(|kind| [kind.picture.clone(), relief_name(&kind.picture)])
        .filter_map(|name| Some((name.clone(), pictures.get(&name)?.clone().ok()?)))
        .collect();
    for (name, picture) in &used {
        hash.update(name);
        hash.update(&picture.sha256);
    }
    // The rules of the program are no file of the folder, and a later version may have others.
    hash.update(serde_json::to_vec(&mine).unwrap_or_default());
    remarks.extend(fits_nowhere(&bases, &drops));
    let sizes = Sizes::empty(mine.gauge);
    let catalog = Arc::new(Catalog { table, bases, trays, drops, names, rules: mine, sizes });
    Ok(Loaded { catalog, pictures: used, revision: hash.into_hex(), remarks, rules: rules.all })
}

/// Says so where an id was given before.
fn unique(reader: &mut Reader<'_>, ids: &mut HashMap<String, String>, id: &str, at: usize, owner: String) {
    match ids.get(id) {
        Some(first) => {
            reader.wrong(at, format!("the id {id:?} a second time"), format!("{first} has it; every id is its own"));
        }
        None => {
            ids.insert(id.to_owned(), owner);
        }
    }
}
