//! The pictures of a catalogue, decoded once to see that they are whole.

use std::{
    collections::{BTreeMap, HashMap},
    fs,
    io::{self, Cursor},
    path::{Path, PathBuf},
    sync::{LazyLock, Mutex, PoisonError},
};

use image::{ImageReader, Limits};

use super::{not_read, outline::Outline};
use crate::{
    disk::{
        digest::sha256_hex,
        plain_file::{MEGABYTE, NotRead, read_plain},
    },
    ron_tree::{Detail, Part, detail},
};

/// A picture's file with what is known of it. It stays on the disk and is read as it is asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// Where the file lies, PNG or JPEG.
    pub file: PathBuf,
    /// SHA-256 of the file, in hexadecimal.
    pub sha256: String,
    /// Width in pixels.
    pub width_px: u32,
    /// Height in pixels.
    pub height_px: u32,
}

impl Picture {
    /// The file as it was when the catalogue was read.
    ///
    /// # Errors
    /// It can't be read, or another file lies in its place by now.
    pub fn read(&self) -> io::Result<Vec<u8>> {
        let bytes = read_plain(&self.file, MAX_FILE_BYTES)
            .map_err(|error| io::Error::other(format!("{} {error}", self.file.display())))?;
        if sha256_hex(&bytes) != self.sha256 {
            return Err(io::Error::other(format!("{} is another picture by now", self.file.display())));
        }
        Ok(bytes)
    }

    /// What it shows, without what is transparent. Decoded anew: few drops are judged by their picture.
    pub fn outline(&self) -> Option<Outline> {
        image::load_from_memory(&self.read().ok()?).ok().map(Outline::of)
    }
}

/// The file that may lie beside a picture and give its relief: a normal map, x to the right, y up, z to the viewer.
pub fn relief_name(picture: &str) -> String {
    let stem = picture.rsplit_once('.').map_or(picture, |(stem, _)| stem);
    format!("{stem}.normal.png")
}

/// What lies in `pictures/`: pictures, and files that are none with the reason why.
pub(super) type Pictures = BTreeMap<String, Result<Picture, NoPicture>>;

/// Why a file is no picture.
#[derive(Debug)]
pub(super) enum NoPicture {
    /// It can't be read.
    NotRead(NotRead),
    /// It does not decode: what the decoder says.
    NotWhole(String),
}

/// What a mistake says of the file called `name`.
pub(super) fn found(name: &str, no_picture: &NoPicture) -> Detail {
    let file = format!("pictures/{name}");
    match no_picture {
        NoPicture::NotRead(error) => not_read::found(file, error),
        NoPicture::NotWhole(why) => {
            let why = Part::foreign(why);
            detail!("wrong-picture", "{file} is not a whole picture ({why})", file = file, why = why)
        }
    }
}

/// Larger pictures than any tablet shows; also what keeps a hostile file from filling the memory.
const MAX_SIDE_PX: u32 = 4096;
const MAX_FILE_BYTES: u64 = 16 * MEGABYTE;

/// Reads every PNG and JPEG of `folder`; a folder that is not there is empty.
pub(super) fn read_all(folder: &Path) -> Pictures {
    let read = |name: String| {
        let picture = read(&folder.join(&name));
        (name, picture)
    };
    names_in(folder).into_iter().map(read).collect()
}

/// The names of the pictures of `folder`.
pub(super) fn names_in(folder: &Path) -> Vec<String> {
    let Ok(entries) = fs::read_dir(folder) else { return vec![] };
    let name = |entry: fs::DirEntry| {
        let name = entry.file_name().into_string().ok()?;
        let lower = name.to_ascii_lowercase();
        let kept = [".png", ".jpg", ".jpeg"].iter().any(|end| lower.ends_with(end)) && !name.starts_with('.');
        kept.then_some(name)
    };
    entries.flatten().filter_map(name).collect()
}

/// Width and height of pictures that were found whole, by their hashes: with every edit of the catalogue all of them are read
/// again, and decoding is most of it.
static WHOLE: LazyLock<Mutex<HashMap<String, (u32, u32)>>> = LazyLock::new(Mutex::default);
/// More pictures than the largest table has; then all are forgotten.
const MOST_REMEMBERED: usize = 20_000;

/// A picture's file, if it is one.
pub(super) fn read(path: &Path) -> Result<Picture, NoPicture> {
    let bytes = read_plain(path, MAX_FILE_BYTES).map_err(NoPicture::NotRead)?;
    let sha256 = sha256_hex(&bytes);
    let known = WHOLE.lock().unwrap_or_else(PoisonError::into_inner).get(&sha256).copied();
    let (width_px, height_px) = match known {
        Some(size) => size,
        None => {
            let size = decoded_size(&bytes)?;
            let mut whole = WHOLE.lock().unwrap_or_else(PoisonError::into_inner);
            if whole.len() >= MOST_REMEMBERED {
                whole.clear();
            }
            whole.insert(sha256.clone(), size);
            size
        }
    };
    Ok(Picture { sha256, file: path.to_owned(), width_px, height_px })
}

/// The size of a picture that decodes as a whole.
fn decoded_size(bytes: &[u8]) -> Result<(u32, u32), NoPicture> {
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|error| NoPicture::NotRead(NotRead::Disk(error)))?;
    let mut limits = Limits::default();
    limits.max_image_width = Some(MAX_SIDE_PX);
    limits.max_image_height = Some(MAX_SIDE_PX);
    reader.limits(limits);
    let picture = reader.decode().map_err(|error| NoPicture::NotWhole(error.to_string()))?;
    Ok((picture.width(), picture.height()))
}
