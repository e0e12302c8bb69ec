//! Keeping a change: checked as a whole, every file old or new, and the way back.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs, io,
    path::{Path, PathBuf},
    sync::{Mutex, MutexGuard, PoisonError},
};

use super::{
    act::Act,
    files::{PARTS, TableFiles},
    left_over,
    refusal::{EditRefusal, Place},
    versions::{Changed, VersionListed, Versions, still_as_left, write},
};
use crate::{
    catalog::{Catalog, Workshop, folder::check_changed, pictures::Picture, read_parts::workshop_in},
    disk::durable,
    ron_tree::Document,
};

/// The places that a page showed, each with what told how it was then.
pub type Seen = Vec<(Place, String)>;

/// What begins a file that some editors write; it is left where it was.
const BYTE_ORDER_MARK: &str = "\u{feff}";

/// The editor of one catalogue's folder.
#[derive(Debug)]
pub struct TableEditor {
    root: PathBuf,
    /// One change at a time.
    kept: Mutex<Kept>,
    /// Whether pictures go that nobody names any more.
    tidies: bool,
}

/// What is kept of changes.
#[derive(Debug)]
struct Kept {
    versions: Versions,
    /// Pictures that came since the start and that no change has named yet.
    fresh: BTreeSet<String>,
}

impl TableEditor {
    /// The editor of the catalogue in `root`, which keeps its changes in `versions`. One that was cut short, as by a power
    /// cut, is finished.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn open(root: PathBuf, versions: PathBuf) -> io::Result<Self> {
        Self::opened(root, versions, true)
    }

    /// The same beside a desk that may be running: no picture is ever taken away, since one that has just come to the desk is
    /// named by nobody yet.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn open_beside(root: PathBuf, versions: PathBuf) -> io::Result<Self> {
        Self::opened(root, versions, false)
    }

    fn opened(root: PathBuf, versions: PathBuf, tidies: bool) -> io::Result<Self> {
        let versions = Versions::open(versions)?;
        let alone = versions.alone()?;
        if let Some(number) = versions.cut_short() {
            write(&root, &versions.files(number)?)?;
            versions.end(number)?;
        }
        let editor = Self { root, kept: Mutex::new(Kept { versions, fresh: BTreeSet::new() }), tidies };
        editor.tidy(&editor.kept());
        drop(alone);
        Ok(editor)
    }

    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Takes pictures away that nobody names any more. Where that does not work now, it does after another change.
    fn tidy(&self, kept: &Kept) {
        if self.tidies {
            let _ = left_over::take_away(&self.root, &kept.versions, &kept.fresh);
        }
    }

    /// The folder whose files it writes.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The files as they are now.
    ///
    /// # Errors
    /// One does not read.
    pub fn files(&self) -> Result<TableFiles, EditRefusal> {
        TableFiles::read(&self.root)
    }

    /// Does `acts`, one after the other, all or none of them, if what the page had `seen` is still so and the table is whole
    /// afterwards. `pictures` are those that the catalogue is known to have; others are looked for in its folder. `at` and
    /// `words` say when and what, for the list of changes. Whether anything is another than before.
    ///
    /// # Errors
    /// Why nothing was changed.
    pub fn change(
        &self,
        acts: &[Act],
        seen: &Seen,
        pictures: &BTreeMap<String, Picture>,
        (at, words): (&str, &str),
    ) -> Result<bool, EditRefusal> {
        let mut kept = self.kept();
        let _alone = kept.versions.alone()?;
        let before = self.files()?;
        let mut after = before.clone();
        let applied = acts.iter().try_for_each(|act| after.apply(act));
        let changed = self.changed(&before, &after)?;
        // What is so already was sent twice.
        if applied.is_ok() && changed.is_empty() {
            return Ok(false);
        }
        if let Some((place, _)) = seen.iter().find(|(place, mark)| before.mark(place) != *mark) {
            return Err(EditRefusal::Changed { place: place.clone(), now: before.written(place) });
        }
        applied?;
        let texts: BTreeMap<String, String> =
            after.files.iter().map(|(name, file)| (name.clone(), file.text().to_owned())).collect();
        let catalog = check_changed(&self.root, &texts, pictures).map_err(EditRefusal::Mistakes)?;
        // A workshop that was wrong before is no reason to keep the table from being changed.
        if let Some(text) = changed.iter().find(|one| one.file == PARTS).and_then(|_| texts.get(PARTS)) {
            workshop_in(text, &catalog).map_err(EditRefusal::Mistakes)?;
        }
        self.keep(&mut kept, &changed, (at, words), None)?;
        Ok(true)
    }

    /// Takes the last change back that was not taken back yet.
    ///
    /// # Errors
    /// There is none, somebody wrote in its files since, or the disk refuses.
    pub fn undo(&self, at: &str) -> Result<VersionListed, EditRefusal> {
        let mut kept = self.kept();
        let _alone = kept.versions.alone()?;
        let list = kept.versions.list();
        let last = list.into_iter().find(|one| !one.is_undone && one.takes_back.is_none());
        let last = last.ok_or(EditRefusal::NothingToUndo)?;
        let files = kept.versions.files(last.number)?;
        still_as_left(&self.root, &files)?;
        let back: Vec<Changed> =
            files.into_iter().map(|one| Changed { file: one.file, before: one.after, after: one.before }).collect();
        self.keep(&mut kept, &back, (at, &last.words), Some(last.number))?;
        Ok(last)
    }

    /// The workshop as it would be once the last change is taken back; none where that changes nothing of it that can be read.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn workshop_undone(&self, catalog: &Catalog) -> Result<Option<Workshop>, EditRefusal> {
        let kept = self.kept();
        let last = kept.versions.list().into_iter().find(|one| !one.is_undone && one.takes_back.is_none());
        let Some(last) = last else { return Ok(None) };
        let files = kept.versions.files(last.number)?;
        let before = files.into_iter().find(|one| one.file == PARTS).and_then(|one| one.before);
        Ok(before.and_then(|text| workshop_in(text.trim_start_matches(BYTE_ORDER_MARK), catalog).ok().flatten()))
    }

    /// The last changes, the newest first.
    pub fn list(&self) -> Vec<VersionListed> {
        self.kept().versions.list()
    }

    /// Puts a picture into the folder under a name that has no other one; nothing is overwritten. It stays at least until a
    /// change names it, or the program starts anew.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn keep_picture(&self, name: &str, bytes: &[u8]) -> io::Result<()> {
        let mut kept = self.kept();
        kept.fresh.insert(name.to_owned());
        let folder = self.root.join("pictures");
        fs::create_dir_all(&folder)?;
        let path = folder.join(name);
        // Its name has its hash in it: what is there is the same picture.
        if path.exists() { Ok(()) } else { durable::write(&path, bytes) }
    }

    /// What is different, as whole files, with the mark before them that some editors write.
    fn changed(&self, before: &TableFiles, after: &TableFiles) -> io::Result<Vec<Changed>> {
        let mut changed = Vec::new();
        for (name, file) in &after.files {
            let old = before.files.get(name);
            if old.map(Document::text) == Some(file.text()) {
                continue;
            }
            let now = match old {
                Some(_) => Some(fs::read_to_string(self.root.join(name))?),
                None => None,
            };
            let mark = now.as_ref().is_some_and(|now| now.starts_with(BYTE_ORDER_MARK));
            let text = format!("{}{}", if mark { BYTE_ORDER_MARK } else { "" }, file.text());
            changed.push(Changed { file: name.clone(), before: now, after: Some(text) });
        }
        Ok(changed)
    }

    fn keep(
        &self,
        kept: &mut Kept,
        changed: &[Changed],
        (at, words): (&str, &str),
        takes_back: Option<u64>,
    ) -> Result<(), EditRefusal> {
        let number = kept.versions.begin(at, words, takes_back, changed)?;
        let written = write(&self.root, changed);
        if let Ok(None) = written {
            let texts = || changed.iter().filter_map(|one| one.after.as_deref());
            kept.fresh.retain(|name| !texts().any(|text| text.contains(name.as_str())));
            kept.versions.end(number)?;
            self.tidy(kept);
            return Ok(());
        }
        // What was written already is taken back, so that nothing is half done.
        let back: Vec<Changed> = changed
            .iter()
            .map(|one| Changed { file: one.file.clone(), before: one.after.clone(), after: one.before.clone() })
            .collect();
        let _ = write(&self.root, &back);
        kept.versions.forget(number);
        let file = written?.unwrap_or_default();
        let now = fs::read_to_string(self.root.join(&file))?;
        let would_be = changed.iter().find(|one| one.file == file).and_then(|one| one.after.clone());
        Err(EditRefusal::WrittenSince { file, now, would_be: would_be.unwrap_or_default() })
    }
}
