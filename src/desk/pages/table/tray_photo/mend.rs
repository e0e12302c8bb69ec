//! One compartment of a tray's photo: mended by strokes of a finger, or shown by a tile, by the whole of it, or not at all.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};

use super::{
    pieces::{picture, state},
    work::{Work, alone, gone, with_drafts},
};
use crate::{
    craft::Home,
    desk::{
        pages::{
            frame::{Tab, page},
            table::form::TableForm,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
        tray_cutting::{mend, mix},
        tray_drafts::{InPhoto, ShownAs, look_file},
    },
    lang::{Texts, say},
    photo::{MOST_POINTS, MOST_STROKES, Stroke},
};

/// Half the breadth of a stroke, in millimetres: a finger's tip on a compartment as large as a phone is wide.
const STROKE_MM: f64 = 1.2;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/tray/{letter}/photo/{id}/pieces/{home}", get(ask).post(set))
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path((letter, id, home)): Path<(char, String, Home)>,
) -> Result<Response, Refusal> {
    let work = Work::find(&desk, letter, id).await?;
    mend_page(&work, seller.texts, home, None)
}

fn mend_page(work: &Work, texts: &'static Texts, home: Home, trouble: Option<&str>) -> Result<Response, Refusal> {
    let one = work.draft.at(home).ok_or_else(gone)?;
    let here = work.address(&format!("/pieces/{home}"));
    let title = say!(texts, "tray-photo-mend", home = home.to_string());
    let main = html! {
        h1 { span.home { (home) } " " (say!(texts, "tray-photo-mend-head")) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        div.card.mended data-stands {
            (picture(texts, work, one))
            p { (state(texts, work, one)) }
            @if one.shown == ShownAs::Mix {
                div.row.wraps {
                    @for number in 0..one.looks.len() { img.drop src=(work.picture(&look_file(home, number))) alt=""; }
                }
            }
        }
        // By the browser's own way: cutting out may take longer than a form in place may.
        form.card.stack method="post" enctype="multipart/form-data" action=(here) data-strokes-form hidden {
            p { (say!(texts, "tray-photo-strokes")) }
            div.row.wraps role="group" aria-label=(say!(texts, "tray-photo-strokes-do")) {
                button.quiet type="button" data-stroke="keep" aria-pressed="true" { (say!(texts, "tray-photo-keep")) }
                button.quiet type="button" data-stroke="drop" aria-pressed="false" { (say!(texts, "tray-photo-drop")) }
                button.quiet type="button" data-stroke="back" { (say!(texts, "tray-photo-stroke-back")) }
            }
            (canvas(texts, work, one))
            input type="hidden" name="strokes" value=(serde_json::to_string(&one.strokes).unwrap_or_default());
            button.main name="shown" value="cut" { (say!(texts, "tray-photo-cut-again")) }
        }
        form.card.row.wraps.shown-as method="post" action=(here) {
            @for (shown, key) in choices(one) {
                button.quiet name="shown" value=(shown.word()) aria-pressed=(one.shown == shown) { (texts.get(key)) }
            }
        }
        p { a.button.quiet href={ (work.address("/pieces")) "#at-" (home) } { (say!(texts, "go-back")) } }
    };
    let page = page(&work.desk, texts, Tab::Trays, &title, &main);
    let status = if trouble.is_some() { StatusCode::BAD_REQUEST } else { StatusCode::OK };
    Ok((status, page).into_response())
}

/// What it can be shown by.
fn choices(one: &InPhoto) -> Vec<(ShownAs, &'static str)> {
    let cut = one.cut.map(|_| (ShownAs::Cut, "tray-photo-as-cut"));
    cut.into_iter()
        .chain([
            (ShownAs::Tile, "tray-photo-as-tile"),
            (ShownAs::Whole, "tray-photo-as-whole"),
            (ShownAs::Mix, "tray-photo-as-mix"),
            (ShownAs::Nothing, "tray-photo-as-nothing"),
        ])
        .collect()
}

/// The compartment to be stroked, with the strokes so far.
fn canvas(texts: &Texts, work: &Work, one: &InPhoto) -> Markup {
    let (width, height) = one.size_px;
    let broad = 2.0 * STROKE_MM * one.px_per_mm;
    html! {
        svg.strokes viewBox={ "0 0 " (width) " " (height) } role="img" aria-label=(say!(texts, "tray-photo-whole-seen"))
            data-radius-mm=(STROKE_MM) data-px-per-mm=(one.px_per_mm) data-most=(MOST_STROKES) data-most-points=(MOST_POINTS) {
            image href=(work.picture(&ShownAs::Whole.file(one.home))) width=(width) height=(height) {}
            @for stroke in &one.strokes {
                @let points: Vec<String> = stroke.points.iter().map(|p| format!("{:.0},{:.0}", p.x, p.y)).collect();
                polyline class=(if stroke.keep { "keep" } else { "drop" }) points=(points.join(" ")) stroke-width=(format!("{broad:.0}")) {}
            }
        }
    }
}

async fn set(
    State(desk): State<Arc<DeskState>>,
    Path((letter, id, home)): Path<(char, String, Home)>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let mut work = Work::find(&desk, letter, id).await?;
    let one = work.draft.at(home).ok_or_else(gone)?;
    let strokes: Option<Vec<Stroke>> = form.told("strokes").map(|text| serde_json::from_str(text).unwrap_or_default());
    let shown = ShownAs::of_word(form.text("shown")).filter(|shown| *shown != ShownAs::Cut || one.cut.is_some());
    if let Some(strokes) = strokes.filter(|strokes| *strokes != one.strokes) {
        let (grid, asked) = (work.grid().await?, work.id.clone());
        match alone(&desk, texts, move |drafts| mend(drafts, &asked, &grid, home, strokes)).await? {
            Ok(true) => {}
            Ok(false) => {
                work = Work::find(&desk, letter, work.id).await?;
                return mend_page(&work, texts, home, Some(&say!(texts, "tray-photo-nothing-left")));
            }
            Err(words) => return mend_page(&work, texts, home, Some(&words)),
        }
        return Ok(Redirect::to(&work.address(&format!("/pieces/{home}"))).into_response());
    }
    let Some(shown) = shown else {
        return mend_page(&work, texts, home, Some(&say!(texts, "tray-photo-no-strokes")));
    };
    if shown == ShownAs::Mix {
        let (grid, asked) = (work.grid().await?, work.id.clone());
        if let Err(words) = alone(&desk, texts, move |drafts| mix(drafts, &asked, &grid, home)).await? {
            return mend_page(&work, texts, home, Some(&words));
        }
        return Ok(Redirect::to(&work.address(&format!("/pieces/{home}"))).into_response());
    }
    let asked = work.id.clone();
    let changed = with_drafts(&desk, move |drafts| {
        drafts.change(&asked, &[], |draft| {
            if let Some(one) = draft.at_mut(home) {
                one.shown = shown;
            }
        })
    });
    changed.await?.ok_or_else(gone)?;
    Ok(Redirect::to(&format!("{}#at-{home}", work.address("/pieces"))).into_response())
}
