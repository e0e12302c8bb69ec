//! The key by which a desk will know this kiosk. The kiosk makes it itself and keeps it before it asks to be paired: where
//! the answer is lost it asks with the same key once more, and the desk sees that it has paired it already.

use std::{fs, io, path::Path};

use serde::{Deserialize, Serialize};

use crate::disk::{digest::hex, durable};

/// Beside the pairing, until that is kept.
const FILE: &str = "asked.json";

#[derive(Serialize, Deserialize)]
struct Asked {
    key: String,
}

/// The key with which the kiosk of folder `dir` asks to be paired.
///
/// # Errors
/// The disk refuses, or the system has no random numbers.
pub fn own_key(dir: &Path) -> io::Result<String> {
    fs::create_dir_all(dir)?;
    let file = dir.join(FILE);
    if let Some(asked) = durable::read_json::<Asked>(&file) {
        return Ok(asked.key);
    }
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes).map_err(io::Error::other)?;
    let asked = Asked { key: hex(&bytes) };
    durable::write_json(&file, &asked)?;
    Ok(asked.key)
}

/// The kiosk knows that it is paired; it asks with another key the next time.
pub(super) fn forget(dir: &Path) -> io::Result<()> {
    match durable::remove(&dir.join(FILE)) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}
