//! The catalogue as it is now: the last good one, and the mistakes of a broken edit beside it.

use std::{
    fs, io,
    path::{Path, PathBuf},
    sync::{Arc, PoisonError, RwLock},
};

use super::error::DeskError;
use crate::{
    catalog::{Loaded, read_folder},
    ron_tree::Mistakes,
};

/// What the desk knows of the catalogue folder.
pub(super) struct LiveCatalog {
    folder: PathBuf,
    last_good: PathBuf,
    now: RwLock<(Arc<Loaded>, Option<Arc<Mistakes>>)>,
}

impl LiveCatalog {
    /// Reads the folder; where it is broken, the copy kept of the last good one.
    pub(super) fn open(folder: PathBuf, data_dir: &Path) -> Result<Self, DeskError> {
        let last_good = data_dir.join("last-good");
        let now = match read_folder(&folder) {
            Ok(loaded) => (Arc::new(kept_safe(loaded, &folder, &last_good)), None),
            // A fresh copy replaces the old one only when it is whole, so it may stand alone after a power cut.
            Err(mistakes) => match read_folder(&last_good).or_else(|_| read_folder(&fresh_copy(&last_good))) {
                Ok(loaded) => (Arc::new(loaded), Some(Arc::new(mistakes))),
                Err(_) => return Err(DeskError::Catalog(folder, mistakes)),
            },
        };
        Ok(Self { folder, last_good, now: RwLock::new(now) })
    }

    /// The catalogue to work with.
    pub(super) fn loaded(&self) -> Arc<Loaded> {
        Arc::clone(&self.now.read().unwrap_or_else(PoisonError::into_inner).0)
    }

    /// The mistakes of the folder as it is now.
    pub(super) fn mistakes(&self) -> Option<Arc<Mistakes>> {
        self.now.read().unwrap_or_else(PoisonError::into_inner).1.clone()
    }

    /// Reads the folder again; the catalogue if it is another one now. A broken folder changes nothing but the mistakes.
    pub(super) fn read_again(&self) -> Option<Arc<Loaded>> {
        let read = read_folder(&self.folder);
        let is_other = read.as_ref().is_ok_and(|loaded| loaded.revision != self.loaded().revision);
        let read = read.map(|loaded| if is_other { kept_safe(loaded, &self.folder, &self.last_good) } else { loaded });
        let mut now = self.now.write().unwrap_or_else(PoisonError::into_inner);
        match read {
            Ok(loaded) => {
                now.1 = None;
                if is_other {
                    now.0 = Arc::new(loaded);
                }
                is_other.then(|| Arc::clone(&now.0))
            }
            Err(mistakes) => {
                now.1 = Some(Arc::new(mistakes));
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
        copy_folder(folder, &fresh)?;
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

/// Copies what a catalogue is read from. A pipe would keep its reader waiting, and nothing that is read is one.
fn copy_folder(from: &Path, to: &Path) -> io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let to = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &to)?;
        } else if fs::metadata(entry.path()).is_ok_and(|found| found.is_file()) {
            fs::copy(entry.path(), to)?;
        }
    }
    Ok(())
}
