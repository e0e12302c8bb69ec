//! The desk's editor at work: a change of the table's files, and what follows from it at once, so that the next page and every
//! tablet have it.

use std::{
    io,
    path::{Path, PathBuf},
    sync::Arc,
};

use uuid::Uuid;

use super::{state::DeskState, table_cuts::TableCuts};
use crate::{
    bench::{PartNow, SPOOLS, parts_now, taken_back},
    catalog::{Act, EditRefusal, PartCount, Seen, TableFiles, VersionListed, begin_like},
    ledger::{LedgerError, written},
};

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

/// Takes the last change back. What was cut or sold since of what lies in drawers and on spools stays cut and sold; where that
/// would be less than nothing, nothing is taken back.
pub(super) async fn undo(desk: &Arc<DeskState>) -> Result<VersionListed, EditRefusal> {
    work(desk, |desk| {
        let catalog = Arc::clone(&desk.catalog.loaded().catalog);
        let keep = match (desk.editor.workshop_undone(&catalog)?, desk.catalog.workshop(&catalog).ok().flatten()) {
            (Some(before), Some(after)) => {
                let pages = desk.ledger.run_blocking(|ledger, _| parts_now(ledger));
                let pages = pages.unwrap_or_else(|| Ok(vec![])).map_err(io::Error::other)?;
                taken_back(&before, &after, &pages).map_err(|used| EditRefusal::UsedSince(used.part))?
            }
            _ => vec![],
        };
        let undone = desk.editor.undo(&desk.clock.now().to_string())?;
        take_in(desk);
        keep_parts(desk, keep)?;
        Ok(undone)
    })
    .await
}

/// Writes what was counted of a part, whatever cuts and sales have made of the count before; `act` is the change of the file.
pub(super) async fn count_part(
    desk: &Arc<DeskState>,
    act: Act,
    seen: Seen,
    words: String,
    counted: (String, PartCount),
) -> Result<bool, EditRefusal> {
    let changed = change(desk, vec![act], seen, words).await?;
    work(desk, move |desk| {
        let (part, there) = counted;
        let catalog = Arc::clone(&desk.catalog.loaded().catalog);
        let pages = desk.ledger.run_blocking(|ledger, _| parts_now(ledger));
        let pages = pages.unwrap_or_else(|| Ok(vec![])).map_err(io::Error::other)?;
        let workshop = desk.catalog.workshop(&catalog).ok().flatten();
        let now = workshop.and_then(|workshop| PartNow::of(&workshop, &part, &pages));
        // The file says so, and nothing was taken since: there is nothing to keep.
        if let Some(now) = now.filter(|now| now.now != there) {
            keep_parts(desk, vec![(part, PartNow { now: there, ..now })])?;
        }
        Ok(changed)
    })
    .await
}

/// Keeps what there is of parts.
fn keep_parts(desk: &DeskState, keep: Vec<(String, PartNow)>) -> Result<(), EditRefusal> {
    if keep.is_empty() {
        return Ok(());
    }
    let kept = desk.ledger.run_blocking(move |ledger, now| {
        let pages = keep.iter().map(|(part, page)| Ok((SPOOLS, part.as_str(), written(page)?)));
        let pages = pages.collect::<Result<Vec<_>, LedgerError>>()?;
        ledger.keep_pages(Uuid::now_v7(), &pages, now)
    });
    kept.unwrap_or(Ok(())).map_err(io::Error::other)?;
    Ok(())
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
    let cuts = TableCuts::of(desk);
    let noted = desk.ledger.run_blocking(move |ledger, now| {
        cuts.tell(ledger)?;
        match loaded {
            Some(loaded) => ledger.take_catalog(&loaded.catalog, &loaded.revision, now),
            None => Ok(()),
        }
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
