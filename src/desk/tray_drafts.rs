//! Photos of trays that are being worked on: a few at a time, in the desk's own folder, until they are laid on the table or
//! thrown away. What is kept of a photo are its pixels; what the camera noted beside them, as the place, is not.

use std::{
    fs, io,
    path::{Path, PathBuf},
    sync::{Mutex, PoisonError},
};

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::{
    craft::{Home, MOST_LOOKS, Sort},
    disk::{durable, plain_file::read_plain},
    photo::{Looks, Point, Stroke},
};

/// The folder's name in the desk's own.
pub(super) const FOLDER: &str = "tray-photos";
/// So many are kept; the oldest go first.
const MOST: usize = 6;
/// A picture of one has no more bytes than this.
const LONGEST: u64 = 16 << 20;
const STATE: &str = "draft.json";
/// The photo as it is worked with, and as a page shows it.
pub(super) const PHOTO: &str = "photo.jpg";
pub(super) const SHOWN: &str = "shown.jpg";

/// A tray's photo that is being worked on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct TrayDraft {
    /// The letter that the tray has on the table.
    pub tray: char,
    /// When the photo came.
    pub begun: jiff::Timestamp,
    /// Its size in pixels.
    pub width: u32,
    pub height: u32,
    /// The tray's inner corners as shares of the photo, that of the first compartment first, then clockwise.
    pub corners: [Point; 4],
    /// Whether they were found in the photo.
    pub found: bool,
    /// The tray's inner width in millimetres, as it was typed.
    pub inner_width_mm: Option<Decimal>,
    /// The compartments in the photo; none until the corners are set.
    pub compartments: Vec<InPhoto>,
    /// Counts the changes, so that no browser shows an earlier picture.
    pub changes: u32,
}

/// A compartment in the photo.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct InPhoto {
    pub home: Home,
    /// What told how it stood in the table's files when it was cut out.
    pub mark: String,
    /// What is to become its picture.
    pub shown: ShownAs,
    /// Its cut-out, if there is one.
    pub cut: Option<Cut>,
    /// Of a mix, the cut-outs that become its looks.
    #[serde(default)]
    pub looks: Vec<Cut>,
    /// What was stroked to be kept or dropped.
    pub strokes: Vec<Stroke>,
    /// Pixels a millimetre of the whole compartment, and its size.
    pub px_per_mm: f64,
    pub size_px: (u32, u32),
    /// What was told of what lies there.
    pub told: Told,
}

/// Which picture a compartment gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum ShownAs {
    Cut,
    Tile,
    Whole,
    /// A tile of unlike pieces, and as many of them as can be told apart cut out.
    Mix,
    /// None: nothing lies there, or what lies there keeps its picture.
    Nothing,
}

impl ShownAs {
    /// All of them with the words for them in addresses and forms, and the ends of their files.
    pub(super) const ALL: [(Self, &'static str, &'static str); 5] = [
        (Self::Cut, "cut", "png"),
        (Self::Tile, "tile", "jpg"),
        (Self::Whole, "whole", "jpg"),
        (Self::Mix, "mix", "jpg"),
        (Self::Nothing, "nothing", ""),
    ];

    pub(super) fn word(self) -> &'static str {
        Self::ALL.iter().find(|(one, ..)| *one == self).map_or("", |(_, word, _)| word)
    }

    pub(super) fn of_word(word: &str) -> Option<Self> {
        Self::ALL.iter().find(|(_, one, _)| *one == word).map(|(one, ..)| *one)
    }

    /// The name of a compartment's picture of this sort in the draft's folder.
    pub(super) fn file(self, home: Home) -> String {
        let (_, word, end) = Self::ALL.iter().find(|(one, ..)| *one == self).unwrap_or(&Self::ALL[1]);
        format!("{home}-{word}.{end}")
    }
}

/// The name of the picture of a mix's look with this number in the draft's folder.
pub(super) fn look_file(home: Home, number: usize) -> String {
    format!("{home}-look-{number}.png")
}

/// What a cut-out says of its piece.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub(super) struct Cut {
    pub width_mm: f64,
    pub height_mm: f64,
    /// From 0 to 1.
    pub trust: f64,
    pub looks: Looks,
}

/// What the seller tells of one compartment.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub(super) struct Told {
    pub price: Option<Decimal>,
    pub count: Option<u32>,
    pub name: Option<String>,
    pub sort: Option<Sort>,
}

impl TrayDraft {
    /// The compartment at this home.
    pub(super) fn at(&self, home: Home) -> Option<&InPhoto> {
        self.compartments.iter().find(|one| one.home == home)
    }

    pub(super) fn at_mut(&mut self, home: Home) -> Option<&mut InPhoto> {
        self.compartments.iter_mut().find(|one| one.home == home)
    }
}

/// All of them.
pub(super) struct TrayDrafts {
    folder: PathBuf,
    /// One change at a time: two phones may be at the same.
    changing: Mutex<()>,
}

impl TrayDrafts {
    pub(super) fn new(data_dir: &Path) -> Self {
        Self { folder: data_dir.join(FOLDER), changing: Mutex::default() }
    }

    /// The folder of a draft; none for what is no draft's id.
    fn of(&self, id: &str) -> Option<PathBuf> {
        let is_id = id.len() == 32 && id.bytes().all(|b| b.is_ascii_hexdigit() && !b.is_ascii_uppercase());
        is_id.then(|| self.folder.join(id))
    }

    /// The ids there are, the oldest first: they begin with the time.
    fn ids(&self) -> Vec<String> {
        let entries = fs::read_dir(&self.folder).into_iter().flatten().flatten();
        let mut ids: Vec<String> = entries.filter_map(|entry| entry.file_name().into_string().ok()).collect();
        ids.sort();
        ids
    }

    /// Begins one with its pictures; its id. The oldest of too many are thrown away.
    pub(super) fn begin(&self, draft: &TrayDraft, pictures: &[(&str, Vec<u8>)]) -> io::Result<String> {
        let id = Uuid::now_v7().simple().to_string();
        let folder = self.folder.join(&id);
        fs::create_dir_all(&folder)?;
        for (name, bytes) in pictures {
            durable::write(&folder.join(name), bytes)?;
        }
        durable::write_json(&folder.join(STATE), draft)?;
        let ids = self.ids();
        for old in &ids[..ids.len().saturating_sub(MOST)] {
            let _ = fs::remove_dir_all(self.folder.join(old));
        }
        Ok(id)
    }

    /// The draft of this id, if it is there yet.
    pub(super) fn read(&self, id: &str) -> Option<TrayDraft> {
        durable::read_json(&self.of(id)?.join(STATE))
    }

    /// The drafts of a tray with their ids, the newest first.
    pub(super) fn of_tray(&self, tray: char) -> Vec<(String, TrayDraft)> {
        let all = self.ids().into_iter().rev().filter_map(|id| Some((id.clone(), self.read(&id)?)));
        all.filter(|(_, draft)| draft.tray == tray).collect()
    }

    /// Changes one, with pictures that come along; how it is then. None where it is gone.
    pub(super) fn change(
        &self,
        id: &str,
        pictures: &[(String, Vec<u8>)],
        change: impl FnOnce(&mut TrayDraft),
    ) -> io::Result<Option<TrayDraft>> {
        let _alone = self.changing.lock().unwrap_or_else(PoisonError::into_inner);
        let Some((folder, mut draft)) = self.of(id).zip(self.read(id)) else { return Ok(None) };
        for (name, bytes) in pictures {
            durable::write(&folder.join(name), bytes)?;
        }
        change(&mut draft);
        draft.changes += 1;
        durable::write_json(&folder.join(STATE), &draft)?;
        Ok(Some(draft))
    }

    /// One of its pictures, if there is one of that name.
    pub(super) fn picture(&self, id: &str, name: &str) -> Option<Vec<u8>> {
        let of_home = |(shown, ..): &(ShownAs, &str, &str)| {
            let home = name.split_once('-').and_then(|(home, _)| home.parse().ok());
            home.is_some_and(|home| *shown != ShownAs::Nothing && shown.file(home) == name)
        };
        let is_look = || {
            let home: Option<Home> = name.split_once('-').and_then(|(home, _)| home.parse().ok());
            home.is_some_and(|home| (0..MOST_LOOKS).any(|number| look_file(home, number) == name))
        };
        let is_picture = [PHOTO, SHOWN].contains(&name) || ShownAs::ALL.iter().any(of_home) || is_look();
        let path = self.of(id).filter(|_| is_picture)?.join(name);
        read_plain(&path, LONGEST).ok()
    }

    /// Throws one away.
    pub(super) fn remove(&self, id: &str) {
        if let Some(folder) = self.of(id)
            && let Err(error) = fs::remove_dir_all(folder)
            && error.kind() != io::ErrorKind::NotFound
        {
            tracing::warn!("a photo that is done with can't be thrown away: {error}");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(tray: char) -> TrayDraft {
        TrayDraft {
            tray,
            begun: jiff::Timestamp::UNIX_EPOCH,
            width: 4,
            height: 3,
            corners: [Point::new(0.0, 0.0), Point::new(1.0, 0.0), Point::new(1.0, 1.0), Point::new(0.0, 1.0)],
            found: true,
            inner_width_mm: None,
            compartments: vec![],
            changes: 0,
        }
    }

    #[test]
    fn few_are_kept_and_nothing_outside_is_read() {
        let dir = tempfile::tempdir().unwrap();
        let drafts = TrayDrafts::new(dir.path());
        fs::write(dir.path().join("ledger.sqlite"), "secret").unwrap();
        let ids: Vec<String> = (0..MOST + 3)
            .map(|n| {
                std::thread::sleep(std::time::Duration::from_millis(2));
                drafts.begin(&draft(if n == 8 { 'B' } else { 'A' }), &[(PHOTO, vec![1])]).unwrap()
            })
            .collect();
        assert_eq!(drafts.ids(), ids[3..], "the newest are kept");
        assert_eq!(drafts.of_tray('B').len(), 1);
        assert!(drafts.read(&ids[0]).is_none() && drafts.picture(&ids[8], PHOTO).is_some());
        for (id, name) in [
            ("..", "ledger.sqlite"),
            (ids[8].as_str(), "../../ledger.sqlite"),
            (ids[8].as_str(), STATE),
            (ids[8].as_str(), "B1-cut.jpg"),
            (ids[8].as_str(), "B1-nothing."),
            ("", PHOTO),
        ] {
            assert!(drafts.picture(id, name).is_none(), "{id} {name}");
        }
        assert!(drafts.change("0", &[], |_| {}).unwrap().is_none());
        let changed = drafts.change(&ids[8], &[("B1-cut.png".into(), vec![2])], |draft| draft.found = false).unwrap();
        assert_eq!(changed.map(|draft| (draft.found, draft.changes)), Some((false, 1)));
        assert_eq!(drafts.picture(&ids[8], "B1-cut.png"), Some(vec![2]));
        drafts.remove(&ids[8]);
        drafts.remove(&ids[8]);
        assert!(drafts.read(&ids[8]).is_none());
    }
}
