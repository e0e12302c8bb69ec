//! The files of the folder that are texts: which there are, and what stands in them.

use std::{fs, io, path::Path};

use super::not_read;
use crate::{
    disk::plain_file::{MEGABYTE, read_plain},
    ron_tree::{Detail, Mistake, detail, what},
};

/// The longest file that is read, in bytes: a tray full of drops has a fifth of it.
const LONGEST_FILE: u64 = 4 * MEGABYTE;

/// A file of the folder as text, or the mistake that it is none.
pub(super) fn read_text(root: &Path, file: &str) -> Result<String, Mistake> {
    let bytes = read_plain(&root.join(file), LONGEST_FILE).map_err(|error| {
        let found = not_read::found(what("the-file", "the file"), &error);
        Mistake::of_file(file, found, not_read::expected(&error))
    })?;
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(&bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(text.to_owned()),
        Err(error) => {
            let good = String::from_utf8_lossy(&bytes[..error.valid_up_to()]).into_owned();
            let found = detail!("wrong-byte", "a byte that is no UTF-8 text");
            Err(Mistake::at(file, &good, good.len(), found, detail!("right-utf8", "save the file as UTF-8")))
        }
    }
}

/// The files of a folder below the catalogue in order of their names; none where there is no such folder.
///
/// # Errors
/// The folder, or an entry of it, can't be read; then it is not known what the table says.
fn files_of(root: &Path, folder: &str, readable: &Detail) -> Result<Option<Vec<String>>, Mistake> {
    let path = root.join(folder);
    let unread = |error: io::Error| {
        Mistake::of_file(folder, not_read::unread(what("the-folder", "the folder"), &error), readable.clone())
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
            let found = detail!("wrong-file-name", "a file name that is no UTF-8 text");
            return Err(Mistake::of_file(&file, found, detail!("right-file-name", "give it a plain name")));
        }
        files.push(file);
    }
    files.sort();
    Ok(Some(files))
}

/// The tray files in order of their names. A table that is only begun has none yet; without the folder something is lost.
pub(super) fn tray_files(root: &Path) -> Result<Vec<String>, Mistake> {
    files_of(root, "trays", &not_read::readable())?.ok_or_else(|| {
        Mistake::of_file(
            "trays",
            detail!("wrong-missing", "{file} is missing", file = what("the-folder", "the folder")),
            detail!("right-trays", "put a file for every tray into it, as in trays/a.ron"),
        )
    })
}

/// The rules files in order of their names. A table without rules of its own has no such folder.
pub(super) fn rules_files(root: &Path) -> Result<Vec<String>, Mistake> {
    let readable =
        detail!("right-rules-readable", "make it readable, or take it away to go by the program's own rules");
    Ok(files_of(root, "rules", &readable)?.unwrap_or_default())
}

/// The files of names in other languages, in their order. A table whose guests all read the seller's language has none.
pub(super) fn names_files(root: &Path) -> Result<Vec<String>, Mistake> {
    Ok(files_of(root, "names", &not_read::readable())?.unwrap_or_default())
}
