//! Why nothing was changed. Where somebody else changed the same by hand, both are shown, and neither is lost.

use std::{io, sync::Arc};

use axum::{
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
};
use maud::{Markup, html};

use super::form::{TableForm, marks};
use crate::{
    catalog::{Act, EditRefusal, Place},
    desk::{
        editing,
        pages::{
            frame::{Tab, page},
            mistakes, words,
        },
        state::DeskState,
    },
    lang::{Texts, say},
    ron_tree::{Detail, Part, detail},
};

/// Fields that say nothing to a reader.
const UNSAID: [&str; 5] = ["form", "go", "was_part", "was_lot", "was_day"];

/// Does one act to the table's files and leads on to `back`; where it is refused, the page that says why.
pub(in crate::desk::pages) async fn done_or_refused(
    desk: &Arc<DeskState>,
    form: &TableForm,
    act: Act,
    did: String,
    (action, back): (&str, &str),
) -> Response {
    match editing::change(desk, vec![act], form.seen(), did).await {
        Ok(_) => Redirect::to(back).into_response(),
        Err(error) => refused(desk, form, &error, (action, back)).await,
    }
}

/// The page that says why, with a way to enter the same all the same where that is possible. `action` is where the form was
/// sent, `back` where its page is.
pub(in crate::desk::pages) async fn refused(
    desk: &Arc<DeskState>,
    form: &TableForm,
    error: &EditRefusal,
    (action, back): (&str, &str),
) -> Response {
    let texts = form.seller.texts;
    let main = html! {
        h1 { (say!(texts, "table-not-changed")) }
        @match error {
            EditRefusal::Mistakes(all) => {
                div.trouble role="alert" data-stands {
                    p { (words::sentence(&say!(texts, "table-not-whole"))) }
                    (mistakes::list(texts, all))
                }
            }
            EditRefusal::Disk(error) => { p.trouble role="alert" data-stands { (mistakes::detail(texts, &disk(error))) } }
            _ => { p.trouble role="alert" data-stands { (words::sentence(&why(texts, error))) } }
        }
        @match error {
            EditRefusal::Changed { place, now } => { (both(desk, form, place, now, action).await) }
            EditRefusal::WrittenSince { now, would_be, .. } => {
                section.card { h2 { (say!(texts, "table-now-by-hand")) } pre.written { (now) } }
                section.card { h2 { (say!(texts, "table-would-be")) } pre.written { (would_be) } }
            }
            _ => {}
        }
        p { a.button.quiet href=(back) { (say!(texts, "go-back")) } }
    };
    let status = match error {
        EditRefusal::Disk(_) => StatusCode::INSUFFICIENT_STORAGE,
        EditRefusal::Mistakes(_) | EditRefusal::NoGrid { .. } => StatusCode::BAD_REQUEST,
        EditRefusal::NoHome(_)
        | EditRefusal::NoTray(_)
        | EditRefusal::NoBase(_)
        | EditRefusal::NoLot(_)
        | EditRefusal::NoPart(_) => StatusCode::NOT_FOUND,
        _ => StatusCode::CONFLICT,
    };
    if status.is_server_error() {
        tracing::error!("{error}");
    }
    let tab = if back.starts_with("/bench") { Tab::Bench } else { Tab::Trays };
    (status, page(desk, texts, tab, &say!(texts, "table-not-changed"), &main)).into_response()
}

/// What stands in the file now beside what was typed, with both ways on.
async fn both(desk: &Arc<DeskState>, form: &TableForm, place: &Place, now: &str, action: &str) -> Markup {
    let texts = form.seller.texts;
    let files = editing::files(desk).await.ok();
    let places: Vec<Place> = form.seen().into_iter().map(|(place, _)| place).collect();
    let again = form.again();
    let typed: Vec<_> =
        again.iter().filter(|(name, text)| !text.is_empty() && !UNSAID.contains(&name.as_str())).collect();
    html! {
        section.card {
            h2 { (say!(texts, "table-now-by-hand")) }
            pre.written { @if now.is_empty() { (say!(texts, "table-nothing-there")) } @else { (now) } }
        }
        section.card {
            h2 { (say!(texts, "table-yours")) }
            ul { @for (_, text) in &typed { li { (text) } } }
            @if form.photo.is_some() { p.faint { (say!(texts, "table-photo-again")) } }
            form method="post" action=(action) {
                (marks(files.as_ref(), &places))
                @for (name, text) in &again { input type="hidden" name=(name) value=(text); }
                button.main { (say!(texts, "table-enter-mine", place = place.to_string())) }
            }
        }
    }
}

/// The disk refuses, and the system says why.
pub(super) fn disk(error: &io::Error) -> Detail {
    detail!("wrong-disk", "the table's files can't be written ({why})", why = Part::foreign(error))
}

/// Why, as the beginning of a sentence.
pub(in crate::desk::pages) fn why(texts: &Texts, error: &EditRefusal) -> String {
    match error {
        EditRefusal::Mistakes(mistakes) => {
            let all: Vec<String> = mistakes.0.iter().take(3).map(|mistake| texts.mistake(mistake)).collect();
            say!(texts, "table-mistakes", what = all.join(" · "))
        }
        EditRefusal::Changed { place, .. } => say!(texts, "table-changed-meanwhile", place = place.to_string()),
        EditRefusal::NoHome(home) => say!(texts, "table-no-home", home = home.to_string()),
        EditRefusal::Empty(home) => say!(texts, "table-empty-home", home = home.to_string()),
        EditRefusal::Taken(home) => say!(texts, "table-taken-home", home = home.to_string()),
        EditRefusal::NoTray(letter) => say!(texts, "table-no-tray", letter = letter.to_string()),
        EditRefusal::TrayThere(letter) => say!(texts, "table-tray-there", letter = letter.to_string()),
        EditRefusal::NoGrid { most } => say!(texts, "table-no-grid", most = *most),
        EditRefusal::NoBase(id) => say!(texts, "table-no-base", name = id.as_str()),
        EditRefusal::LotThere(lot) => say!(texts, "lot-there", lot = lot.as_str()),
        EditRefusal::NoLot(lot) => say!(texts, "lot-none", lot = lot.as_str()),
        EditRefusal::PartThere(part) => say!(texts, "part-there", part = part.as_str()),
        EditRefusal::NoPart(part) => say!(texts, "part-none", part = part.as_str()),
        EditRefusal::PartUsed { part, recipes, lots } => {
            say!(texts, "part-used", part = part.as_str(), recipes = *recipes, lots = *lots)
        }
        EditRefusal::UsedSince(part) => say!(texts, "part-used-since", part = part.as_str()),
        EditRefusal::NoWorkshop => say!(texts, "lot-no-workshop"),
        EditRefusal::NotBare => say!(texts, "table-not-bare"),
        EditRefusal::NoDemo => say!(texts, "table-no-demo"),
        EditRefusal::NothingToUndo => say!(texts, "table-nothing-to-undo"),
        EditRefusal::WrittenSince { file, .. } => say!(texts, "table-written-since", file = file.as_str()),
        EditRefusal::NoPlace(place) => say!(texts, "table-no-place", place = place.as_str()),
        EditRefusal::Disk(error) => texts.detail_words(&disk(error)),
    }
}
