//! A folder that belongs to one program: nobody else reads it, and no second program works in it.

use std::{
    fs::{self, File, TryLockError},
    io,
    path::Path,
};

/// The lock's own file. Its content says nothing; the system's lock on it does, and that ends with the program.
const LOCK_FILE: &str = "in-use";

/// Why a folder is not this program's.
#[derive(Debug)]
pub enum LockError {
    /// Another program works in it.
    InUse,
    /// The disk refuses.
    Disk(io::Error),
}

/// Keeps others from working in a folder for as long as it lives.
#[derive(Debug)]
pub struct FolderLock {
    _file: File,
}

impl FolderLock {
    /// Takes `folder` for this program.
    ///
    /// # Errors
    /// Another program has it, or the disk refuses.
    pub fn take(folder: &Path) -> Result<Self, LockError> {
        let file = File::create(folder.join(LOCK_FILE)).map_err(LockError::Disk)?;
        match file.try_lock() {
            Ok(()) => Ok(Self { _file: file }),
            Err(TryLockError::WouldBlock) => Err(LockError::InUse),
            Err(TryLockError::Error(error)) => Err(LockError::Disk(error)),
        }
    }
}

/// Makes the folder if it is missing, and lets nobody but its owner read those files in it that are `ours`. Where nothing
/// else lies there, nobody else can enter the folder either; somebody may have named one that others use, too.
///
/// # Errors
/// The folder can't be made or read. Where the system has no such right, or the folder is somebody else's, that is said in
/// the log and is no error.
pub fn make_private(dir: &Path, ours: impl Fn(&str) -> bool) -> io::Result<()> {
    fs::create_dir_all(dir)?;
    let is_ours = |name: &str| name == LOCK_FILE || ours(name);
    let mut is_ours_alone = true;
    for file in fs::read_dir(dir)?.flatten() {
        if !file.file_name().to_str().is_some_and(is_ours) {
            is_ours_alone = false;
        } else if file.file_type().is_ok_and(|kind| kind.is_file()) {
            let_only_owner(&file.path(), 0o600);
        }
    }
    if is_ours_alone {
        let_only_owner(dir, 0o700);
    }
    Ok(())
}

#[cfg(unix)]
fn let_only_owner(path: &Path, mode: u32) {
    use std::os::unix::fs::PermissionsExt;
    if let Err(error) = fs::set_permissions(path, fs::Permissions::from_mode(mode)) {
        tracing::warn!("others on this machine may be able to read {}: {error}", path.display());
    }
}

#[cfg(not(unix))]
fn let_only_owner(_path: &Path, _mode: u32) {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_has_one_user_at_a_time() {
        let folder = tempfile::tempdir().unwrap();
        let first = FolderLock::take(folder.path()).unwrap();
        assert!(matches!(FolderLock::take(folder.path()), Err(LockError::InUse)));
        drop(first);
        assert!(FolderLock::take(folder.path()).is_ok());
        assert!(matches!(FolderLock::take(&folder.path().join("missing")), Err(LockError::Disk(_))));
    }
}
