//! A new table: empty, or like another.

use std::{fs, io, path::Path};

use super::{
    files::{BASES, TABLE, TableFiles},
    refusal::EditRefusal,
};
use crate::{catalog::printed::PRINTED, caution::Region, disk::durable, money::Currency, ron_tree::in_quotes};

/// Whether a catalogue lies in `root`, be it a broken one.
pub fn is_there(root: &Path) -> bool {
    root.join("table.ron").symlink_metadata().is_ok()
}

/// Begins an empty table in `root`, which has none yet. What nobody has told yet is marked as a guess.
///
/// # Errors
/// The disk refuses, or there is one already; then nothing is changed.
pub fn begin_empty(root: &Path, currency: Currency, region: Region) -> io::Result<()> {
    if is_there(root) {
        return Err(io::ErrorKind::AlreadyExists.into());
    }
    for folder in ["trays", "pictures"] {
        fs::create_dir_all(root.join(folder))?;
    }
    let bases = root.join("bases.ron");
    if !bases.exists() {
        durable::write(
            &bases,
            b"// What drops hang on. A base needs an id and a price; what is not told is guessed with care.\n[\n]\n",
        )?;
    }
    let table = format!(
        "// The table: what it is called, what it charges, whose rules its cautions follow.\n(\n    name: \"My table\",\n    \
         currency: {},\n    tax: None,\n    region: {},\n    // What nobody has told yet; the desk asks for it.\n    \
         guessed: [name, currency, tax, region],\n)\n",
        in_quotes(currency.code),
        region.code()
    );
    // At last: with it the table is there.
    durable::write(&root.join("table.ron"), table.as_bytes())
}

/// Makes a table in which nothing lies yet like the one in `like`.
///
/// # Errors
/// Something lies on it already, the other can't be read, or the disk refuses.
pub fn begin_like(root: &Path, like: &Path) -> Result<(), EditRefusal> {
    let files = TableFiles::read(root)?;
    if !files.is_bare() {
        return Err(EditRefusal::NotBare);
    }
    copy_but_its_files(like, root)?;
    // The table's own file at last: until then it is an empty table with some trays.
    for file in [BASES, TABLE] {
        durable::write(&root.join(file), &fs::read(like.join(file))?)?;
    }
    Ok(())
}

/// Copies a folder with everything in it but the files that are written at last, and what was printed for the other table.
fn copy_but_its_files(from: &Path, to: &Path) -> io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let name = entry.file_name();
        let to = to.join(&name);
        if entry.file_type()?.is_dir() {
            copy_but_its_files(&entry.path(), &to)?;
        } else if ![BASES, TABLE, PRINTED].iter().any(|file| name == *file) && entry.path().is_file() {
            fs::copy(entry.path(), to)?;
        }
    }
    Ok(())
}
