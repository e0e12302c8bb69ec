//! Files that are old or new, never torn, and that stay what they are after a power cut.

use std::{
    fs::{self, File},
    io::{self, Write},
    path::{Path, PathBuf},
};

use serde::{Serialize, de::DeserializeOwned};
use tempfile::NamedTempFile;

use super::plain_file::{MEGABYTE, NotRead, read_plain};
use crate::quoting::one_line;

/// Writes `bytes` to `path` so that after a crash at any moment the file is whole: the old one or the new one.
///
/// # Errors
/// The disk is full, gone or read-only, or the folder is missing. The old file is then as it was.
pub fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let folder = folder_of(path);
    let mut file = NamedTempFile::new_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    file.persist(path)?;
    sync_folder(folder)
}

/// Writes `value` as JSON, whole or not at all.
///
/// # Errors
/// As for [`write`](fn@write); or the value has no form in JSON.
pub fn write_json(path: &Path, value: &impl Serialize) -> io::Result<()> {
    write(path, &serde_json::to_vec(value)?)
}

/// The longest JSON that is kept, in bytes: the largest catalogue with room to spare.
const LONGEST_JSON: u64 = 64 * MEGABYTE;

/// Reads JSON; a file that is missing or damaged is `None`, and the log says what is wrong with a damaged one.
pub fn read_json<T: DeserializeOwned>(path: &Path) -> Option<T> {
    let bytes = match read_plain(path, LONGEST_JSON) {
        Ok(bytes) => bytes,
        Err(NotRead::Missing) => return None,
        Err(error) => {
            tracing::warn!("{} {error}", one_line(&path.to_string_lossy()));
            return None;
        }
    };
    let read = serde_json::from_slice(&bytes);
    read.inspect_err(|error| {
        let (path, error) = (path.to_string_lossy(), error.to_string());
        tracing::warn!("{} does not read: {}", one_line(&path), one_line(&error));
    })
    .ok()
}

/// Removes a file for good.
///
/// # Errors
/// The file is missing, or the disk refuses.
pub fn remove(path: &Path) -> io::Result<()> {
    fs::remove_file(path)?;
    sync_folder(folder_of(path))
}

/// Moves a file into a folder of the same disk for good. Nothing is overwritten: where there is a file of its name, it
/// gets a number besides. Only the program whose the folder is may move files into it.
///
/// # Errors
/// The file is missing, the folder is on another disk, or the disk refuses.
pub fn move_into(path: &Path, folder: &Path) -> io::Result<()> {
    let stem = path.file_stem().ok_or(io::ErrorKind::InvalidFilename)?;
    let named = |number: Option<u32>| {
        let mut name = stem.to_owned();
        if let Some(number) = number {
            name.push(format!(" ({number})"));
        }
        if let Some(end) = path.extension() {
            name.push(".");
            name.push(end);
        }
        folder.join(name)
    };
    let mut to = named(None);
    for number in 2.. {
        match fs::symlink_metadata(&to) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => break,
            Err(error) => return Err(error),
            Ok(_) => to = named(Some(number)),
        }
    }
    fs::rename(path, &to)?;
    sync_folder(folder_of(path))?;
    sync_folder(folder)
}

/// A file that others write by its path, under a passing name until all of it is there. Unless it is kept, nothing stays.
pub struct NewFile {
    unfinished: NamedTempFile,
    path: PathBuf,
}

impl NewFile {
    /// Begins the file that is to become `path`.
    ///
    /// # Errors
    /// The folder is missing or the disk refuses.
    pub fn begin(path: &Path) -> io::Result<Self> {
        Ok(Self { unfinished: NamedTempFile::new_in(folder_of(path))?, path: path.to_owned() })
    }

    /// Where it lies until it is kept.
    pub fn unfinished(&self) -> &Path {
        self.unfinished.path()
    }

    /// Gives the file its name, for good.
    ///
    /// # Errors
    /// [`io::ErrorKind::AlreadyExists`] where there is a file of that name, which is left as it is; or the disk refuses.
    pub fn keep(self) -> io::Result<()> {
        self.unfinished.as_file().sync_all()?;
        self.unfinished.persist_noclobber(&self.path).map_err(|error| error.error)?;
        sync_folder(folder_of(&self.path))
    }
}

/// The folder that a path lies in; a bare name lies in the current one.
fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// A new name is durable once its folder is. Windows opens no folder as a file and has no such step.
fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_can_not_be_written_leaves_the_old_one() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("numbers.json");
        write_json(&path, &[1, 2]).unwrap();
        // A map with such keys has no form in JSON, which shows only while it is written.
        let formless: std::collections::BTreeMap<(u8, u8), u8> = [((1, 2), 3)].into();
        assert!(write_json(&path, &formless).is_err());
        assert_eq!(read_json::<Vec<u8>>(&path), Some(vec![1, 2]));
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "nothing half written stays");
        assert!(write(&folder.path().join("missing/numbers.json"), b"1").is_err());
    }

    #[test]
    fn a_file_that_is_moved_overwrites_none() {
        let (from, to) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let file = from.path().join("one.json");
        for text in ["first", "second", "third"] {
            fs::write(&file, text).unwrap();
            move_into(&file, to.path()).unwrap();
        }
        let text = |name| fs::read_to_string(to.path().join(name)).unwrap();
        assert_eq!(["one.json", "one (2).json", "one (3).json"].map(text), ["first", "second", "third"]);
        move_into(&to.path().join("one.json"), to.path()).unwrap();
        assert_eq!(["one (2).json", "one (3).json", "one (4).json"].map(text), ["second", "third", "first"]);
        assert!(move_into(&file, to.path()).is_err(), "it is not there any more");
    }

    #[test]
    fn a_new_file_overwrites_none_and_leaves_nothing_unless_it_is_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("copy.sqlite");
        drop(NewFile::begin(&path).unwrap());
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
        let new = NewFile::begin(&path).unwrap();
        fs::write(new.unfinished(), "first").unwrap();
        new.keep().unwrap();
        let second = NewFile::begin(&path).unwrap().keep().unwrap_err();
        assert_eq!(second.kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read(&path).unwrap(), b"first");
    }
}
