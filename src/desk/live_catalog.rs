//! The catalogue as it is now: the last good one at the tax of the place where the table stands, and the mistakes of a broken
//! edit beside it. What is shown, charged and sent to tablets is made from this alone.

use std::{
    fs, io,
    path::{Path, PathBuf},
    sync::{Arc, PoisonError, RwLock},
};

use jiff::Timestamp;

use super::error::DeskError;
use crate::{
    catalog::{Catalog, Loaded, Workshop, read_folder, read_workshop},
    disk::digest::sha256_hex,
    ledger::{AboutShow, Ledger, LedgerError},
    money::TaxRule,
    ron_tree::Mistakes,
};

/// What the desk knows of the catalogue folder.
pub(super) struct LiveCatalog {
    folder: PathBuf,
    last_good: PathBuf,
    now: RwLock<Now>,
}

struct Now {
    /// As the folder has it.
    read: Arc<Loaded>,
    /// At the tax of the place.
    shown: Arc<Loaded>,
    about: AboutShow,
    mistakes: Option<Arc<Mistakes>>,
}

/// The catalogue at the tax of a show's place. Another tax makes other sums, so it is another catalogue to a tablet.
fn at_place(read: &Arc<Loaded>, about: &AboutShow) -> Arc<Loaded> {
    let table = read.catalog.table.prices.tax;
    let tax = about.tax_over(table);
    if tax == table {
        return Arc::clone(read);
    }
    let mut shown = Loaded::clone(read);
    let mut catalog = (*shown.catalog).clone();
    catalog.table.prices.tax = tax;
    shown.catalog = Arc::new(catalog);
    shown.revision = sha256_hex(format!("{} {tax:?}", read.revision));
    Arc::new(shown)
}

impl LiveCatalog {
    /// What the folder says of parts and recipes beside `catalog`, as it is now.
    pub(super) fn workshop(&self, catalog: &Catalog) -> Result<Option<Workshop>, Mistakes> {
        read_workshop(&self.folder, catalog)
    }

    /// Reads the folder; where it is broken, the copy kept of the last good one.
    pub(super) fn open(folder: PathBuf, data_dir: &Path) -> Result<Self, DeskError> {
        let last_good = data_dir.join("last-good");
        let (read, mistakes) = match read_folder(&folder) {
            Ok(loaded) => (kept_safe(loaded, &folder, &last_good), None),
            // A fresh copy replaces the old one only when it is whole, so it may stand alone after a power cut.
            Err(mistakes) => match read_folder(&last_good).or_else(|_| read_folder(&fresh_copy(&last_good))) {
                Ok(loaded) => (loaded, Some(Arc::new(mistakes))),
                Err(_) => return Err(DeskError::Catalog(folder, mistakes)),
            },
        };
        let read = Arc::new(read);
        let now = Now { shown: Arc::clone(&read), read, about: AboutShow::default(), mistakes };
        Ok(Self { folder, last_good, now: RwLock::new(now) })
    }

    /// The catalogue to work with.
    pub(super) fn loaded(&self) -> Arc<Loaded> {
        Arc::clone(&self.now.read().unwrap_or_else(PoisonError::into_inner).shown)
    }

    /// The mistakes of the folder as it is now.
    pub(super) fn mistakes(&self) -> Option<Arc<Mistakes>> {
        self.now.read().unwrap_or_else(PoisonError::into_inner).mistakes.clone()
    }

    /// The tax of the table's own file, whatever the place has.
    pub(super) fn own_tax(&self) -> TaxRule {
        self.now.read().unwrap_or_else(PoisonError::into_inner).read.catalog.table.prices.tax
    }

    /// Makes the catalogue that of a show's place; the catalogue if it is another one now.
    pub(super) fn show_is(&self, about: AboutShow) -> Option<Arc<Loaded>> {
        let mut now = self.now.write().unwrap_or_else(PoisonError::into_inner);
        let before = Arc::clone(&now.shown);
        now.shown = at_place(&now.read, &about);
        now.about = about;
        (now.shown.revision != before.revision).then(|| Arc::clone(&now.shown))
    }

    /// Makes the catalogue that of the ledger's running show, and lets the ledger take it over where it is another one now.
    pub(super) fn follow_show(&self, ledger: &mut Ledger, at: Timestamp) -> Result<(), LedgerError> {
        match self.show_is(ledger.about_show(ledger.show()?.id)?) {
            Some(loaded) => ledger.take_catalog(&loaded.catalog, &loaded.revision, at),
            None => Ok(()),
        }
    }

    /// Reads the folder again; the catalogue if it is another one now. A broken folder changes nothing but the mistakes.
    pub(super) fn read_again(&self) -> Option<Arc<Loaded>> {
        let before = Arc::clone(&self.now.read().unwrap_or_else(PoisonError::into_inner).read);
        let read = read_folder(&self.folder);
        let is_other = read.as_ref().is_ok_and(|loaded| loaded.revision != before.revision);
        let read = read.map(|loaded| if is_other { kept_safe(loaded, &self.folder, &self.last_good) } else { loaded });
        let mut now = self.now.write().unwrap_or_else(PoisonError::into_inner);
        match read {
            Ok(loaded) => {
                now.mistakes = None;
                if is_other {
                    now.read = Arc::new(loaded);
                    now.shown = at_place(&now.read, &now.about);
                }
                is_other.then(|| Arc::clone(&now.shown))
            }
            Err(mistakes) => {
                now.mistakes = Some(Arc::new(mistakes));
                None
            }
        }
    }
}

fn fresh_copy(copy: &Path) -> PathBuf {
    copy.with_extension("new")
}

/// A good catalogue whose pictures come from a copy of its folder, so that nobody changes them under the desk; from the
/// folder itself where no copy can be kept.
fn kept_safe(loaded: Loaded, folder: &Path, copy: &Path) -> Loaded {
    if keep_copy(folder, copy, &loaded.revision) { loaded.with_pictures_in(copy) } else { loaded }
}

/// Keeps a copy of a good folder; whether that went well. Without one a broken catalogue keeps the desk from starting,
/// which is said then.
fn keep_copy(folder: &Path, copy: &Path, revision: &str) -> bool {
    let fresh = fresh_copy(copy);
    let copied = (|| -> io::Result<()> {
        remove(&fresh)?;
        copy_files(folder, &fresh, Below::Folders)?;
        // The folder may have been edited meanwhile.
        if !read_folder(&fresh).is_ok_and(|loaded| loaded.revision == revision) {
            return Err(io::Error::other("the folder changed while it was copied"));
        }
        remove(copy)?;
        fs::rename(&fresh, copy)
    })();
    if let Err(error) = &copied {
        tracing::warn!("no copy of the catalogue could be kept: {error}");
        // Half a copy only takes room, which may be what is missing.
        let _ = remove(&fresh);
    }
    copied.is_ok()
}

fn remove(folder: &Path) -> io::Result<()> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// What of a folder is copied beside its files.
#[derive(Clone, Copy, PartialEq)]
enum Below {
    Folders,
    Nothing,
}

/// Copies what a catalogue is read from: files, and folders with files, which may be links to where they lie. A pipe would
/// keep its reader waiting, and nothing that is read is one.
fn copy_files(from: &Path, to: &Path, below: Below) -> io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let to = to.join(entry.file_name());
        // A link to nowhere is read by nobody.
        let Ok(found) = fs::metadata(entry.path()) else { continue };
        if found.is_file() {
            fs::copy(entry.path(), to)?;
        } else if found.is_dir() && below == Below::Folders {
            copy_files(&entry.path(), &to, Below::Nothing)?;
        }
    }
    Ok(())
}
