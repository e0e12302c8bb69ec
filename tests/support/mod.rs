//! What several tests need: the repository's catalogue, and a copy of it to spoil.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

/// The folder of the demo catalogue.
pub fn demo_catalog() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog")
}

/// Copies a folder with everything in it.
pub fn copy(from: &Path, to: &Path) -> io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
