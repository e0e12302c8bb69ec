//! What several tests need: the table of the tests, the demo's, and a copy of a table to spoil.
#![allow(dead_code, reason = "not every test needs all of it")]

use std::{
    fs, io,
    path::{Path, PathBuf},
};

/// The folder of the table whose amounts, names and counts the tests know: small change in its prices, tax on top. Its
/// pictures are the demo's.
pub fn test_table() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/table")
}

/// The folder of the demo catalogue, for what is said of the demo itself; it may change without another test.
pub fn demo_catalog() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog")
}

/// Copies a folder with everything in it, and what links in it lead to.
pub fn copy(from: &Path, to: &Path) -> io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
