//! The desk's editor at work: a change of the table's files, and what follows from it at once, so that the next page and every
//! tablet have it.

use std::{
    io,
    path::{Path, PathBuf},
    sync::Arc,
};

use super::state::DeskState;
use crate::catalog::{Act, EditRefusal, Seen, TableFiles, VersionListed, begin_like};

/// The table's files as they are now.
pub(super) async fn files(desk: &Arc<DeskState>) -> Result<TableFiles, EditRefusal> {
    work(desk, |desk| desk.editor.files()).await
}

/// The last changes, the newest first.
pub(super) async fn changes(desk: &Arc<DeskState>) -> Vec<VersionListed> {
    work(desk, |desk| Ok(desk.editor.list())).await.unwrap_or_default()
}

/// Does `acts`, all or none of them, if the page's places are as it has `seen` them. `words` say what was done.
pub(super) async fn change(
    desk: &Arc<DeskState>,
    acts: Vec<Act>,
    seen: Seen,
    words: String,
) -> Result<bool, EditRefusal> {
    work(desk, move |desk| {
        let loaded = desk.catalog.loaded();
        let at = desk.clock.now().to_string();
        let changed = desk.editor.change(&acts, &seen, &loaded.pictures, (&at, &words))?;
        if changed {
            take_in(desk);
        }
        Ok(changed)
    })
    .await
}

/// Takes the last change back.
pub(super) async fn undo(desk: &Arc<DeskState>) -> Result<VersionListed, EditRefusal> {
    work(desk, |desk| {
        let undone = desk.editor.undo(&desk.clock.now().to_string())?;
        take_in(desk);
        Ok(undone)
    })
    .await
}

/// Keeps a picture in the table's folder.
pub(super) async fn keep_picture(desk: &Arc<DeskState>, name: String, bytes: Vec<u8>) -> Result<(), EditRefusal> {
    work(desk, move |desk| Ok(desk.editor.keep_picture(&name, &bytes)?)).await
}

/// Makes an empty table like the demo.
pub(super) async fn like_the_demo(desk: &Arc<DeskState>) -> Result<(), EditRefusal> {
    work(desk, |desk| {
        let demo = demo().ok_or(EditRefusal::NoDemo)?;
        begin_like(desk.editor.root(), &demo)?;
        take_in(desk);
        Ok(())
    })
    .await
}

/// Files are read and written where nobody else waits for it.
async fn work<T: Send + 'static>(
    desk: &Arc<DeskState>,
    work: impl FnOnce(&DeskState) -> Result<T, EditRefusal> + Send + 'static,
) -> Result<T, EditRefusal> {
    let desk = Arc::clone(desk);
    let done = tokio::task::spawn_blocking(move || work(&desk)).await;
    done.unwrap_or_else(|error| Err(io::Error::other(error.to_string()).into()))
}

/// Reads the catalogue's folder again and lets the ledger and every page know of it. A broken folder changes nothing but the
/// mistakes that are told.
pub(super) fn take_in(desk: &DeskState) {
    let loaded = desk.catalog.read_again();
    let noted = desk.ledger.run_blocking(move |ledger, now| match loaded {
        Some(loaded) => ledger.take_catalog(&loaded.catalog, &loaded.revision, now),
        None => Ok(()),
    });
    if let Some(Err(error)) = noted {
        tracing::error!("{error}");
    }
    // A broken edit is news too: the pages show its mistakes.
    desk.beat();
}

/// The folder of the demo table, where it came with the program: beside it, or where a system keeps what programs share.
pub(super) fn demo() -> Option<PathBuf> {
    let program = std::env::current_exe().ok()?;
    let beside = program.parent()?;
    let places = ["catalog", "../share/chatelaine/catalog", "../../catalog", "../../../catalog"];
    places.iter().map(|place| beside.join(place)).find(|folder| is_a_table(folder))
}

fn is_a_table(folder: &Path) -> bool {
    folder.join("table.ron").is_file() && folder.join("trays").is_dir()
}
