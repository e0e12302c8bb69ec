//! The photo that a page is about, and the tray as it is now.

use std::{io, sync::Arc};

use axum::http::StatusCode;

use crate::{
    catalog::{Catalog, Loaded, Place, TableFiles},
    craft::{DropKind, Home},
    desk::{
        editing, photo_work, photos,
        refusal::Refusal,
        state::DeskState,
        tray_cutting::{CutRefused, Grid, GridCell},
        tray_drafts::{InPhoto, ShownAs, TrayDraft, TrayDrafts},
    },
    lang::{Texts, message, say},
    photo::TrayRefused,
};

/// A photo that is being worked on.
pub(super) struct Work {
    pub desk: Arc<DeskState>,
    pub letter: char,
    pub id: String,
    pub draft: TrayDraft,
    pub loaded: Arc<Loaded>,
}

impl Work {
    /// The photo of this id, if it is one of that tray.
    pub(super) async fn find(desk: &Arc<DeskState>, letter: char, id: String) -> Result<Self, Refusal> {
        let asked = id.clone();
        let draft = with_drafts(desk, move |drafts| Ok(drafts.read(&asked))).await?;
        let draft = draft.filter(|draft| draft.tray == letter).ok_or_else(gone)?;
        Ok(Self { desk: Arc::clone(desk), letter, id, draft, loaded: desk.catalog.loaded() })
    }

    /// The address of the photo, or of what lies behind it.
    pub(super) fn address(&self, behind: &str) -> String {
        format!("/table/tray/{}/photo/{}{behind}", self.letter, self.id)
    }

    /// The address of one of its pictures.
    pub(super) fn picture(&self, name: &str) -> String {
        self.address(&format!("/picture/{name}?v={}", self.draft.changes))
    }

    /// The catalogue as it is now.
    pub(super) fn catalog(&self) -> &Catalog {
        &self.loaded.catalog
    }

    /// What lies in a compartment now.
    pub(super) fn drop_at(&self, home: Home) -> Option<&DropKind> {
        self.catalog().drop_at(home)
    }

    /// Those compartments that get a picture.
    pub(super) fn shown(&self) -> impl Iterator<Item = &InPhoto> {
        self.draft.compartments.iter().filter(|one| one.shown != ShownAs::Nothing)
    }

    /// Those that are empty now and are to hold something: they need a price.
    pub(super) fn to_price(&self) -> Vec<&InPhoto> {
        self.shown().filter(|one| self.drop_at(one.home).is_none()).collect()
    }

    /// The grid of the tray, with what tells how it stands in the files.
    pub(super) async fn grid(&self) -> Result<Grid, Refusal> {
        grid(&self.desk, self.letter).await
    }
}

/// What is said where a photo is not there any more.
pub(super) fn gone() -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("tray-photo-gone"))
}

/// The grid of a tray as it lies on the table now.
pub(super) async fn grid(desk: &Arc<DeskState>, letter: char) -> Result<Grid, Refusal> {
    let loaded = desk.catalog.loaded();
    let files = editing::files(desk).await.ok();
    let no_tray = || Refusal::Said(StatusCode::NOT_FOUND, message!("table-no-tray", letter = letter.to_string()));
    grid_of(&loaded.catalog, files.as_ref(), letter).ok_or_else(no_tray)
}

fn grid_of(catalog: &Catalog, files: Option<&TableFiles>, letter: char) -> Option<Grid> {
    let tray = catalog.trays.iter().find(|tray| tray.letter == letter)?;
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(0);
    let mut homes = tray.compartments();
    let mut cells = Vec::new();
    for (row, in_row) in (0..).zip(&tray.rows) {
        for (column, (home, id)) in (0..).zip(homes.by_ref().take(in_row.len())) {
            let mark = files.map(|files| files.mark(&Place::Home(home))).unwrap_or_default();
            cells.push(GridCell { home, row, column, mark, taken: id.is_some() });
        }
    }
    let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    Some(Grid { rows: count(tray.rows.len()), columns: count(columns), cells })
}

/// Does something with the drafts where nobody else waits for the disk.
pub(super) async fn with_drafts<T: Send + 'static>(
    desk: &Arc<DeskState>,
    work: impl FnOnce(&TrayDrafts) -> io::Result<T> + Send + 'static,
) -> Result<T, Refusal> {
    let desk = Arc::clone(desk);
    let done = tokio::task::spawn_blocking(move || work(&desk.tray_drafts)).await;
    let done = done.unwrap_or_else(|error| Err(io::Error::other(error.to_string())));
    done.map_err(|error| disk(&error))
}

fn disk(error: &io::Error) -> Refusal {
    tracing::error!("a tray's photo: {error}");
    Refusal::Said(StatusCode::INSUFFICIENT_STORAGE, message!("wrong-disk", why = error.to_string()))
}

/// Works on a photo, alone. The inner result is what the seller can put right, in words.
pub(super) async fn alone<T: Send + 'static>(
    desk: &Arc<DeskState>,
    texts: &Texts,
    work: impl FnOnce(&TrayDrafts) -> Result<T, CutRefused> + Send + 'static,
) -> Result<Result<T, String>, Refusal> {
    let for_work = Arc::clone(desk);
    match photo_work::alone(photo_work::PATIENCE, move || work(&for_work.tray_drafts)).await? {
        Ok(done) => Ok(Ok(done)),
        Err(CutRefused::Gone) => Err(gone()),
        Err(CutRefused::Disk(error)) => Err(disk(&error)),
        Err(CutRefused::Photo(refused)) => Ok(Err(texts.say(&photos::why(&refused)))),
        Err(CutRefused::Tray(refused)) => Ok(Err(match refused {
            TrayRefused::Corners => say!(texts, "tray-photo-no-corners"),
            TrayRefused::Grid => say!(texts, "tray-photo-no-grid"),
            TrayRefused::Width => say!(texts, "tray-photo-no-width"),
        })),
    }
}
