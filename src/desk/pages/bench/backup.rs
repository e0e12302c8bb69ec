//! A copy of the ledger in one touch, read back, to be saved somewhere else.

use std::{fs, path::Path, sync::Arc};

use axum::{
    Router,
    extract::{Path as InPath, State},
    http::{StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::{Timestamp, ToSpan};
use maud::{Markup, html};

use super::bench_page;
use crate::{
    desk::{
        approval::{NoFields, Posted},
        pages::words,
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    disk,
    lang::{Texts, message, say},
    ledger::{BackupError, back_up, restore_at_next_start, restore_not_after_all, restore_waits},
    quoting::excerpt,
};

/// The ledger's file in the desk's folder.
const LEDGER: &str = "ledger.sqlite";
/// The copies' folder below the desk's own.
const FOLDER: &str = "backups";
/// What copies are called: their time in UTC stands between these.
const BEFORE: &str = "ledger-";
const AFTER: &str = ".sqlite";
const SHAPE: &str = "%Y%m%d-%H%M%S";
/// After so many days a copy is old (common practice, no source).
const OLD_DAYS: i64 = 7;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bench/backup", get(copies).post(copy))
        .route("/bench/backup/{name}", get(saved).post(restore))
        .route("/bench/restore", post(not_after_all))
}

/// When a copy of this name was made; none where it is no copy's name.
fn made_at(name: &str) -> Option<Timestamp> {
    let time = name.strip_prefix(BEFORE)?.strip_suffix(AFTER)?;
    Timestamp::strptime(format!("{SHAPE}%z"), format!("{time}+0000")).ok()
}

/// The copies there are, the newest first.
fn found(data_dir: &Path) -> Vec<(String, Timestamp)> {
    let entries = fs::read_dir(data_dir.join(FOLDER)).into_iter().flatten().flatten();
    let names = entries.filter_map(|entry| entry.file_name().into_string().ok());
    let mut copies: Vec<_> = names.filter_map(|name| made_at(&name).map(|at| (name, at))).collect();
    copies.sort_by_key(|(_, at)| std::cmp::Reverse(*at));
    copies
}

/// Says so where the last copy is old, or there is none.
pub(super) fn reminder(desk: &DeskState, texts: &Texts) -> Markup {
    let now = desk.clock.now();
    let last = found(&desk.data_dir).into_iter().map(|(_, at)| at).next();
    let is_old = last.is_none_or(|at| at + (24 * OLD_DAYS).hours() < now);
    html! {
        @if is_old {
            p.banner role="status" {
                @match last {
                    Some(at) => (say!(texts, "backup-old", day = words::day(texts, at))),
                    None => (say!(texts, "backup-none")),
                }
                " " a href="/bench/backup" { (say!(texts, "backup-do")) }
            }
        }
    }
}

async fn copies(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let (copies, now) = (found(&desk.data_dir), desk.clock.now());
    let main = html! {
        @if let Some(from) = restore_waits(&desk.data_dir.join(LEDGER)) {
            section.card.ask role="status" {
                @let name = from.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
                p.grave { (say!(texts, "restore-waits", name = excerpt(&name))) }
                form method="post" action="/bench/restore" { button { (say!(texts, "restore-not")) } }
            }
        }
        p { (say!(texts, "backup-about")) }
        form method="post" action="/bench/backup" { button { (say!(texts, "backup-do")) } }
        @if copies.is_empty() { p { (say!(texts, "backup-none")) } }
        ul.links {
            @for (name, at) in &copies {
                li {
                    (words::clock(texts, *at, now)) " "
                    a href={ "/bench/backup/" (name) } download { (say!(texts, "backup-save")) }
                    details {
                        summary { (say!(texts, "restore-this")) }
                        p.grave { (say!(texts, "restore-about")) }
                        form method="post" action={ "/bench/backup/" (name) } { button.grave { (say!(texts, "restore-do")) } }
                    }
                }
            }
        }
        p.faint { (say!(texts, "backup-restore")) }
    };
    Ok(bench_page(&desk, texts, "/bench/backup", None, &main))
}

async fn copy(State(desk): State<Arc<DeskState>>, Owner(_): Owner) -> Result<Redirect, Refusal> {
    let failed = |error: &dyn std::fmt::Display| {
        tracing::error!("the ledger could not be copied: {error}");
        Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("backup-failed"))
    };
    let folder = desk.data_dir.join(FOLDER);
    disk::make_private(&folder, |_| true).map_err(|error| failed(&error))?;
    let to = folder.join(format!("{BEFORE}{}{AFTER}", desk.clock.now().strftime(SHAPE)));
    let from = desk.data_dir.join(LEDGER);
    match tokio::task::spawn_blocking(move || back_up(&from, &to)).await {
        // A second touch in the same second has its copy already.
        Ok(Ok(_) | Err(BackupError::Exists(_))) => {}
        Ok(Err(error)) => return Err(failed(&error)),
        Err(error) => return Err(failed(&error)),
    }
    disk::make_private(&folder, |_| true).map_err(|error| failed(&error))?;
    Ok(Redirect::to("/bench/backup"))
}

/// The copy called `name` takes the ledger's place when the desk starts next.
async fn restore(
    State(desk): State<Arc<DeskState>>,
    InPath(name): InPath<String>,
    posted: Posted<NoFields>,
) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-restore")).await?;
    let nothing = || Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(&name)));
    let (copy, _) = found(&desk.data_dir).into_iter().find(|(copy, _)| *copy == name).ok_or_else(nothing)?;
    let (from, ledger, now) = (desk.data_dir.join(FOLDER).join(copy), desk.data_dir.join(LEDGER), desk.clock.now());
    let noted = tokio::task::spawn_blocking(move || restore_at_next_start(&from, &ledger, now)).await;
    match noted {
        Ok(Ok(())) => Ok(Redirect::to("/bench/backup")),
        Ok(Err(error)) => {
            tracing::warn!("copy {name} is not restored: {error}");
            Err(Refusal::Said(StatusCode::CONFLICT, message!("restore-failed", name = excerpt(&name))))
        }
        Err(error) => {
            Err(Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-system", why = error.to_string())))
        }
    }
}

async fn not_after_all(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-restore")).await?;
    restore_not_after_all(&desk.data_dir.join(LEDGER)).map_err(|error| {
        Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-system", why = error.to_string()))
    })?;
    Ok(Redirect::to("/bench/backup"))
}

async fn saved(
    State(desk): State<Arc<DeskState>>,
    Owner(_): Owner,
    InPath(name): InPath<String>,
) -> Result<Response, Refusal> {
    let nothing = || Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(&name)));
    // Only a name of a copy that is there leads to a file.
    let (copy, _) = found(&desk.data_dir).into_iter().find(|(copy, _)| *copy == name).ok_or_else(nothing)?;
    let file = desk.data_dir.join(FOLDER).join(&copy);
    let bytes = tokio::task::spawn_blocking(move || fs::read(file)).await.ok().and_then(Result::ok);
    let disposition = format!("attachment; filename=\"{copy}\"");
    let head =
        [(header::CONTENT_TYPE, "application/vnd.sqlite3".to_owned()), (header::CONTENT_DISPOSITION, disposition)];
    Ok((head, bytes.ok_or_else(nothing)?).into_response())
}
