//! The photo as it comes in.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::html;
use rust_decimal::Decimal;

use super::work::{alone, gone, grid, with_drafts};
use crate::{
    craft::Length,
    desk::{
        pages::{
            frame::{Tab, page},
            table::form::TableForm,
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
        tray_cutting,
    },
    lang::{Texts, say},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/tray/{letter}/photo", get(ask).post(begin))
        .route("/table/tray/{letter}/photo/{id}/picture/{name}", get(picture))
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(letter): Path<char>,
) -> Result<Response, Refusal> {
    ask_page(&desk, seller.texts, letter, None).await
}

/// Asks for a photo, perhaps once more.
async fn ask_page(
    desk: &Arc<DeskState>,
    texts: &'static Texts,
    letter: char,
    trouble: Option<&str>,
) -> Result<Response, Refusal> {
    grid(desk, letter).await?;
    let begun = with_drafts(desk, move |drafts| Ok(drafts.of_tray(letter))).await?;
    let now = desk.clock.now();
    let here = format!("/table/tray/{letter}/photo");
    let title = say!(texts, "tray-photo-title", letter = letter.to_string());
    let main = html! {
        h1 { (title) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack method="post" enctype="multipart/form-data" action=(here) {
            p { (say!(texts, "tray-photo-how")) }
            div {
                label for="taken" { (say!(texts, "tray-photo-take")) }
                input #taken type="file" name="photo" accept="image/jpeg,image/png,image/webp" capture="environment" data-sends;
            }
            div {
                label for="chosen" { (say!(texts, "tray-photo-choose")) }
                input #chosen type="file" name="photo" accept="image/jpeg,image/png,image/webp" data-sends;
            }
            button.main { (say!(texts, "tray-photo-send")) }
            p.faint.hint { (say!(texts, "tray-photo-stays-here")) }
        }
        @if !begun.is_empty() {
            section.card {
                h2 { (say!(texts, "tray-photo-begun")) }
                ul.links {
                    @for (id, draft) in &begun {
                        @let behind = if draft.compartments.is_empty() { "" } else { "/pieces" };
                        li {
                            a href={ (here) "/" (id) (behind) } {
                                (say!(texts, "tray-photo-of", time = words::clock(texts, draft.begun, now)))
                            }
                        }
                    }
                }
            }
        }
        p { a.button.quiet href={ "/table#tray-" (letter) } { (say!(texts, "go-back")) } }
    };
    let page = page(desk, texts, Tab::Trays, &title, &main);
    let status = if trouble.is_some() { StatusCode::BAD_REQUEST } else { StatusCode::OK };
    Ok((status, page).into_response())
}

async fn begin(
    State(desk): State<Arc<DeskState>>,
    Path(letter): Path<char>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let grid = grid(&desk, letter).await?;
    let Some(photo) = form.photo else {
        return ask_page(&desk, texts, letter, Some(&say!(texts, "tray-photo-none"))).await;
    };
    let trays = &desk.catalog.loaded().catalog.trays;
    let width = trays.iter().find(|tray| tray.letter == letter).and_then(|tray| tray.inner_width);
    let (now, width) = (desk.clock.now(), width.and_then(in_mm));
    let begun =
        alone(&desk, texts, move |drafts| tray_cutting::begin(drafts, &photo, (letter, now), width, &grid)).await?;
    match begun {
        Ok(id) => Ok(Redirect::to(&format!("/table/tray/{letter}/photo/{id}")).into_response()),
        Err(words) => ask_page(&desk, texts, letter, Some(&words)).await,
    }
}

/// A length in millimetres as it is typed.
fn in_mm(length: Length) -> Option<Decimal> {
    Decimal::try_from(length.mm()).ok().map(|mm| mm.round_dp(1).normalize())
}

/// A picture of a photo that is being worked on.
async fn picture(
    State(desk): State<Arc<DeskState>>,
    _seller: Owner,
    Path((letter, id, name)): Path<(char, String, String)>,
) -> Result<Response, Refusal> {
    let kind = if name.ends_with(".png") { "image/png" } else { "image/jpeg" };
    let found = with_drafts(&desk, move |drafts| {
        let is_of_it = drafts.read(&id).is_some_and(|draft| draft.tray == letter);
        Ok(drafts.picture(&id, &name).filter(|_| is_of_it))
    });
    let bytes = found.await?.ok_or_else(gone)?;
    Ok(([("content-type", kind)], bytes).into_response())
}
