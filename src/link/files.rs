//! Files that are old or new, never torn.

use std::{
    fs::{self, File},
    io::{self, Write},
    path::Path,
};

use serde::{Serialize, de::DeserializeOwned};
use tempfile::NamedTempFile;

/// Writes `bytes` to `path` so that after a crash at any moment the file is whole: the old one or the new one.
pub(super) fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let folder = path.parent().ok_or_else(|| io::Error::other("a file needs a folder"))?;
    let mut file = NamedTempFile::new_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    file.persist(path)?;
    sync_folder(folder)
}

/// Writes `value` as JSON, whole or not at all.
pub(crate) fn write_json(path: &Path, value: &impl Serialize) -> io::Result<()> {
    write(path, &serde_json::to_vec(value)?)
}

/// Reads JSON; a file that is missing or damaged is `None`.
pub(crate) fn read_json<T: DeserializeOwned>(path: &Path) -> Option<T> {
    serde_json::from_slice(&fs::read(path).ok()?).ok()
}

/// Makes the folder if it is missing, and lets nobody but its owner read those files in it that are `ours`. Where nothing
/// else lies there, nobody else can enter the folder either; somebody may have named one that others use, too.
pub(crate) fn make_private(dir: &Path, ours: impl Fn(&str) -> bool) -> io::Result<()> {
    fs::create_dir_all(dir)?;
    let mut is_ours_alone = true;
    for file in fs::read_dir(dir)?.flatten() {
        if !file.file_name().to_str().is_some_and(&ours) {
            is_ours_alone = false;
        } else if file.file_type().is_ok_and(|kind| kind.is_file()) {
            only_owner(&file.path(), 0o600);
        }
    }
    if is_ours_alone {
        only_owner(dir, 0o700);
    }
    Ok(())
}

/// Where the system has no such right, or the folder is somebody else's, that is said and nothing else.
fn only_owner(path: &Path, mode: u32) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        if let Err(error) = fs::set_permissions(path, fs::Permissions::from_mode(mode)) {
            tracing::warn!("others on this machine may be able to read {}: {error}", path.display());
        }
    }
    #[cfg(not(unix))]
    let _ = (path, mode);
}

/// Removes a file for good.
pub(super) fn remove(path: &Path) -> io::Result<()> {
    fs::remove_file(path)?;
    path.parent().map_or(Ok(()), sync_folder)
}

/// Moves a file to another folder of the same disk for good.
pub(super) fn rename(from: &Path, to: &Path) -> io::Result<()> {
    fs::rename(from, to)?;
    for folder in [from.parent(), to.parent()].into_iter().flatten() {
        sync_folder(folder)?;
    }
    Ok(())
}

/// A rename is durable once its folder is.
fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}
