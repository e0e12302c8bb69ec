//! Files of a catalogue's folder: one of them is odd, the others are good.

use std::{
    fs,
    path::Path,
    sync::{Arc, LazyLock, Mutex, PoisonError},
};

use chatelaine::{
    catalog::{Catalog, Loaded, read_folder},
    craft::Piece,
    ron_tree::Mistakes,
};

use super::{are_told_well, is_one_line};

/// The good files, by their names in the folder.
pub const GOOD: [(&str, &[u8]); 7] = [
    ("table.ron", include_bytes!("../good/table.ron")),
    ("bases.ron", include_bytes!("../good/bases.ron")),
    ("trays/a.ron", include_bytes!("../good/trays/a.ron")),
    ("names/de.ron", include_bytes!("../good/names/de.ron")),
    ("pictures/key.png", include_bytes!("../good/pictures/key.png")),
    ("pictures/key.normal.png", include_bytes!("../good/pictures/key.normal.png")),
    ("pictures/leaf.jpg", include_bytes!("../good/pictures/leaf.jpg")),
];

/// The bytes of a good file.
pub fn good(file: &str) -> &'static [u8] {
    GOOD.iter().find(|(name, _)| *name == file).unwrap_or_else(|| panic!("there is no {file}")).1
}

/// Writes the good folder.
pub fn write_good(folder: &Path) {
    for (name, bytes) in GOOD {
        let path = folder.join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, bytes).expect("written");
    }
}

static FOLDER: LazyLock<Mutex<tempfile::TempDir>> = LazyLock::new(|| {
    let dir = tempfile::tempdir().expect("a folder");
    write_good(dir.path());
    Mutex::new(dir)
});

static CATALOG: LazyLock<Arc<Catalog>> = LazyLock::new(|| {
    let dir = tempfile::tempdir().expect("a folder");
    write_good(dir.path());
    read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}")).catalog
});

/// The good catalogue.
pub fn catalog() -> Arc<Catalog> {
    Arc::clone(&CATALOG)
}

/// What the folder is with this file in the place of the good one, or beside the others.
pub fn with_file(file: &str, data: &[u8]) -> Result<Loaded, Mistakes> {
    let folder = FOLDER.lock().unwrap_or_else(PoisonError::into_inner);
    let path = folder.path().join(file);
    fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
    fs::write(&path, data).expect("written");
    let read = read_folder(folder.path());
    assert_eq!(fs::read(&path).expect("the file"), data, "the file was changed by reading it");
    match GOOD.iter().find(|(name, _)| *name == file) {
        Some((_, bytes)) => fs::write(&path, bytes).expect("written"),
        None => fs::remove_file(&path).expect("removed"),
    }
    read
}

/// Reads the folder with one odd file.
pub fn file(name: &str, data: &[u8]) {
    match with_file(name, data) {
        Ok(loaded) => {
            // The tablet gets it as JSON and has to read the same.
            let json = serde_json::to_vec(&*loaded.catalog).expect("a form in JSON");
            let again: Catalog = serde_json::from_slice(&json).expect("the catalogue");
            assert_eq!(again, *loaded.catalog);
            loaded.remarks.iter().for_each(|remark| is_one_line(remark.english()));
            for base in &loaded.catalog.bases {
                let piece = Piece {
                    base: base.id.clone(),
                    length: None,
                    wearer: Default::default(),
                    neck: None,
                    drops: loaded.catalog.drops.iter().map(|kind| kind.id.clone()).collect(),
                    looks: vec![],
                };
                is_made_or_refused_of(&loaded.catalog, &piece);
            }
        }
        Err(mistakes) => are_told_well(&mistakes, |of| (of == name).then(|| data.to_vec())),
    }
}

/// A piece is priced, judged and hung, or refused in words.
pub fn is_made_or_refused(piece: &Piece) {
    is_made_or_refused_of(&catalog(), piece);
}

fn is_made_or_refused_of(catalog: &Catalog, piece: &Piece) {
    match (catalog.quote(piece), catalog.cautions(piece)) {
        (Ok(quote), Ok(_)) => assert!(quote.is_plausible(), "{quote:?}"),
        (Err(error), _) | (_, Err(error)) => is_one_line(&error.to_string()),
    }
    let _ = chatelaine::guest::places_of(catalog, piece);
}

/// Reads the folder with an odd picture, under either kind's name.
pub fn picture(data: &[u8]) {
    for name in ["pictures/key.png", "pictures/leaf.jpg", "pictures/key.normal.png"] {
        file(name, data);
    }
}
