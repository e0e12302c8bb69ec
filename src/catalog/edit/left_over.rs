//! Pictures that the desk has kept and nobody names any more, as after a tray's photo was undone and that is long ago.
//!
//! Only what is certainly the desk's own goes: a file whose name has the hash of its bytes in it. Whatever the maker has put
//! into the folder stays, and so does everything as long as one text of the folder can't be read.

use std::{
    collections::BTreeSet,
    fs, io,
    path::{Path, PathBuf},
};

use super::versions::Versions;
use crate::{
    catalog::pictures::names_in,
    disk::{
        digest::sha256_hex,
        durable,
        plain_file::{MEGABYTE, NotRead, read_plain},
    },
};

/// The words with which the desk begins a picture's name.
const OWN: [&str; 2] = ["photo", "tray"];
/// So much of the hash is in a name.
const HASH_DIGITS: usize = 16;
/// The longest text that is looked through. Where one is longer, nobody knows what it names.
const LONGEST: u64 = 4 * MEGABYTE;

/// Takes away what neither a file of the table in `root` nor a kept change names. What is `fresh` stays: a change that is
/// going to name it is on its way.
///
/// # Errors
/// A text can't be read, or the disk refuses; what is left then is taken away another time.
pub(super) fn take_away(root: &Path, versions: &Versions, fresh: &BTreeSet<String>) -> io::Result<()> {
    let folder = root.join("pictures");
    let is_own = |name: &String| hash_in(name).is_some() && !fresh.contains(name);
    let mut left: BTreeSet<String> = names_in(&folder).into_iter().filter(is_own).collect();
    let texts = if left.is_empty() { vec![] } else { texts_of(root)? };
    for path in texts {
        leave_named(&mut left, &path)?;
    }
    let texts = if left.is_empty() { vec![] } else { versions.texts()? };
    for path in texts {
        leave_named(&mut left, &path)?;
    }
    for name in left {
        let path = folder.join(&name);
        let is_a_file = fs::symlink_metadata(&path)?.is_file();
        if is_a_file && sha256_hex(fs::read(&path)?).get(..HASH_DIGITS) == hash_in(&name) {
            durable::remove(&path)?;
        }
    }
    Ok(())
}

/// The hash in the name of one of the desk's own pictures, as in `photo-0123456789abcdef.jpg`.
fn hash_in(name: &str) -> Option<&str> {
    let (word, rest) = name.split_once('-')?;
    let (hash, end) = rest.split_once('.')?;
    let is_hash = hash.len() == HASH_DIGITS && hash.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'a'..=b'f'));
    (OWN.contains(&word) && ["png", "jpg"].contains(&end) && is_hash).then_some(hash)
}

/// Leaves those that the text names, in an entry, in a remark, or anywhere else.
fn leave_named(left: &mut BTreeSet<String>, path: &Path) -> io::Result<()> {
    let bytes = match read_plain(path, LONGEST) {
        Ok(bytes) => bytes,
        // It says nothing, or is gone by now.
        Err(NotRead::Missing | NotRead::NoFile(_)) => return Ok(()),
        Err(NotRead::TooLong(_)) => return Err(io::ErrorKind::FileTooLarge.into()),
        Err(NotRead::Disk(error)) => return Err(error),
    };
    let text = String::from_utf8_lossy(&bytes);
    for word in text.split(|c: char| !c.is_ascii_alphanumeric() && !matches!(c, '-' | '.')) {
        left.remove(word.trim_end_matches('.'));
    }
    Ok(())
}

/// Every file of the folder and of the folders in it that may be a text: all but pictures.
fn texts_of(root: &Path) -> io::Result<Vec<PathBuf>> {
    let mut texts = Vec::new();
    for entry in fs::read_dir(root)? {
        let path = entry?.path();
        if !path.is_dir() {
            texts.push(path);
        } else if path.file_name().is_some_and(|name| name != "pictures") {
            for inner in fs::read_dir(&path)? {
                texts.push(inner?.path());
            }
        }
    }
    Ok(texts)
}
