//! Reading files that somebody else put there: only plain ones, and never more than was reckoned with. A pipe or a device
//! would keep its reader waiting for good.

use std::{
    fmt,
    fs::{self, File, FileType},
    io::{self, Read},
    path::Path,
};

/// Why a file was not read. The words go behind the file's name.
#[derive(Debug)]
pub enum NotRead {
    /// There is none.
    Missing,
    /// There is something else under its name.
    NoFile(NoFile),
    /// It is longer than it may be, in bytes.
    TooLong(u64),
    /// The disk refuses.
    Disk(io::Error),
}

/// What is no file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoFile {
    /// A folder.
    Folder,
    /// A pipe, which keeps its reader waiting.
    Pipe,
    /// A socket.
    Socket,
    /// A device.
    Device,
    /// A link to nowhere.
    LinkToNowhere,
}

impl fmt::Display for NoFile {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Folder => "a folder",
            Self::Pipe => "a pipe",
            Self::Socket => "a socket",
            Self::Device => "a device",
            Self::LinkToNowhere => "a link to nowhere",
        })
    }
}

impl fmt::Display for NotRead {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing => write!(f, "is missing"),
            Self::NoFile(what) => write!(f, "is {what} and no file"),
            Self::TooLong(most) => write!(f, "is larger than {} MB", most / MEGABYTE),
            Self::Disk(error) => write!(f, "can't be read ({error})"),
        }
    }
}

/// A megabyte as limits are told in.
pub const MEGABYTE: u64 = 1024 * 1024;

/// The bytes of a plain file of at most `most` bytes; a link is followed.
///
/// # Errors
/// It is missing, something else than a file, longer than that, or the disk refuses.
pub fn read_plain(path: &Path, most: u64) -> Result<Vec<u8>, NotRead> {
    let refused = |error: io::Error| match error.kind() {
        // What can be seen and not followed is a link to nowhere.
        io::ErrorKind::NotFound if path.symlink_metadata().is_ok() => NotRead::NoFile(NoFile::LinkToNowhere),
        io::ErrorKind::NotFound => NotRead::Missing,
        _ => NotRead::Disk(error),
    };
    // Looked at before it is opened: opening a pipe waits until somebody writes into it.
    let meta = fs::metadata(path).map_err(refused)?;
    if !meta.is_file() {
        return Err(NotRead::NoFile(name_of(meta.file_type())));
    }
    if meta.len() > most {
        return Err(NotRead::TooLong(most));
    }
    let mut bytes = Vec::with_capacity(usize::try_from(meta.len()).unwrap_or(0));
    // It may grow while it is read.
    File::open(path).and_then(|file| file.take(most + 1).read_to_end(&mut bytes)).map_err(refused)?;
    if bytes.len() as u64 > most { Err(NotRead::TooLong(most)) } else { Ok(bytes) }
}

#[cfg(unix)]
fn name_of(kind: FileType) -> NoFile {
    use std::os::unix::fs::FileTypeExt;
    if kind.is_dir() {
        NoFile::Folder
    } else if kind.is_fifo() {
        NoFile::Pipe
    } else if kind.is_socket() {
        NoFile::Socket
    } else {
        NoFile::Device
    }
}

#[cfg(not(unix))]
fn name_of(kind: FileType) -> NoFile {
    if kind.is_dir() { NoFile::Folder } else { NoFile::Device }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_files_of_a_usual_size_are_read() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.ron");
        let told = |path: &Path, most| read_plain(path, most).unwrap_err().to_string();
        assert_eq!(told(&path, 10), "is missing");
        fs::write(&path, "0123456789").unwrap();
        assert_eq!(read_plain(&path, 10).unwrap(), b"0123456789");
        assert!(matches!(read_plain(&path, 9), Err(NotRead::TooLong(9))));
        assert_eq!(told(folder.path(), 10), "is a folder and no file");
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(folder.path().join("nowhere"), folder.path().join("b.ron")).unwrap();
            assert_eq!(told(&folder.path().join("b.ron"), 10), "is a link to nowhere and no file");
            std::os::unix::fs::symlink(&path, folder.path().join("c.ron")).unwrap();
            assert_eq!(read_plain(&folder.path().join("c.ron"), 10).unwrap(), b"0123456789");
            let _socket = std::os::unix::net::UnixListener::bind(folder.path().join("s")).unwrap();
            assert_eq!(told(&folder.path().join("s"), 10), "is a socket and no file");
            assert_eq!(told(Path::new("/dev/zero"), 10), "is a device and no file");
        }
    }
}
