//! What was cut out of a tray's photo: each compartment with its picture and how far it is to be trusted, to be taken as it is.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};

use super::{lay::lay_form, work::Work};
use crate::{
    desk::{
        pages::{
            frame::{Tab, page},
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
        tray_drafts::{InPhoto, ShownAs},
    },
    lang::{Texts, say},
    photo::TRUSTED,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/tray/{letter}/photo/{id}/pieces", get(pieces))
}

async fn pieces(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path((letter, id)): Path<(char, String)>,
) -> Result<Response, Refusal> {
    let (texts, work) = (seller.texts, Work::find(&desk, letter, id).await?);
    if work.draft.compartments.is_empty() {
        return Ok(Redirect::to(&work.address("")).into_response());
    }
    let grid = work.grid().await?;
    let shown = |as_what| work.draft.compartments.iter().filter(|one| one.shown == as_what).count();
    let (cut, tiles) = (shown(ShownAs::Cut), shown(ShownAs::Tile) + shown(ShownAs::Whole) + shown(ShownAs::Mix));
    let to_price = work.to_price().len();
    let title = say!(texts, "tray-photo-pieces", letter = letter.to_string());
    let main = html! {
        h1 { (title) }
        p { (say!(texts, "tray-photo-tally", cut = cut, tiles = tiles)) }
        @if cut + tiles == 0 {
            p.trouble role="status" { (say!(texts, "tray-photo-nothing-seen")) }
        } @else if to_price > 0 {
            p { a.button.main href=(work.address("/prices")) { (say!(texts, "tray-photo-take-all")) } }
        } @else {
            (lay_form(texts, &work))
        }
        div class={ "grid own seen columns-" (grid.columns.clamp(1, 12)) } {
            @for one in &work.draft.compartments { (cell(texts, &work, one)) }
        }
        p.faint { (say!(texts, "tray-photo-mend-hint")) }
        p.row.wraps {
            a.button.quiet href=(work.address("")) { (say!(texts, "tray-photo-corners-again")) }
        }
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}

fn cell(texts: &Texts, work: &Work, one: &InPhoto) -> Markup {
    html! {
        div.cell id={ "at-" (one.home) } {
            a href={ (work.address("/pieces/")) (one.home) } {
                span.home { (one.home) } " "
                (picture(texts, work, one))
                span.name { (state(texts, work, one)) }
            }
        }
    }
}

/// The picture that a compartment is going to have.
pub(super) fn picture(texts: &Texts, work: &Work, one: &InPhoto) -> Markup {
    html! {
        @match (one.shown, work.drop_at(one.home)) {
            (ShownAs::Nothing, Some(kind)) => { (words::picture(texts, &work.loaded, &kind.id)) }
            (ShownAs::Nothing, None) => { span.drop.none { (say!(texts, "table-lay-here")) } }
            (shown, _) => { img.drop src=(work.picture(&shown.file(one.home))) alt=""; }
        }
    }
}

/// How sure its picture is, in words.
pub(super) fn state(texts: &Texts, work: &Work, one: &InPhoto) -> String {
    match one.shown {
        ShownAs::Nothing if work.drop_at(one.home).is_some() => say!(texts, "tray-photo-stays"),
        ShownAs::Nothing => say!(texts, "tray-photo-empty"),
        ShownAs::Tile => say!(texts, "tray-photo-tile"),
        ShownAs::Whole => say!(texts, "tray-photo-whole"),
        ShownAs::Mix => say!(texts, "tray-photo-mix", n = one.looks.len()),
        ShownAs::Cut if one.cut.is_some_and(|cut| cut.trust >= TRUSTED) => say!(texts, "tray-photo-sure"),
        ShownAs::Cut => say!(texts, "tray-photo-unsure"),
    }
}
