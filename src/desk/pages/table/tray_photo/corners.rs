//! The tray's corners in its photo: found by themselves, dragged with a finger, or typed.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use rust_decimal::Decimal;

use super::work::{Work, alone, gone, with_drafts};
use crate::{
    craft::Home,
    desk::{
        pages::{
            frame::{Tab, page},
            table::form::TableForm,
            typed::{as_typed, typed_measure},
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
        tray_cutting::{Grid, cut_all},
        tray_drafts::SHOWN,
    },
    lang::{Texts, say},
    photo::{Homography, Point},
};

/// The photo is drawn so many units wide.
const WIDE: f64 = 1000.0;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/tray/{letter}/photo/{id}", get(ask).post(set))
        .route("/table/tray/{letter}/photo/{id}/throw-away", post(throw_away))
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path((letter, id)): Path<(char, String)>,
) -> Result<Response, Refusal> {
    let work = Work::find(&desk, letter, id).await?;
    corners_page(&work, seller.texts, None).await
}

async fn corners_page(work: &Work, texts: &'static Texts, trouble: Option<&str>) -> Result<Response, Refusal> {
    let grid = work.grid().await?;
    let (draft, here) = (&work.draft, work.address(""));
    let width = draft.inner_width_mm.map(|width| as_typed(texts, width)).unwrap_or_default();
    let title = say!(texts, "tray-photo-corners", letter = work.letter.to_string());
    let main = html! {
        h1 { (title) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        // Multipart goes the browser's own way: cutting out takes longer than a form in place may.
        form.card.stack method="post" enctype="multipart/form-data" action=(here) data-stands {
            p { @if draft.found { (say!(texts, "tray-photo-found")) } @else { (say!(texts, "tray-photo-not-found")) } }
            (picture(texts, work, &grid))
            div.row.wraps {
                button.quiet name="turn" value="1" formnovalidate { (say!(texts, "tray-photo-turn")) }
                span.faint { (say!(texts, "tray-photo-turn-hint", home = format!("{}1", work.letter))) }
            }
            div {
                label for="width" { (say!(texts, "tray-photo-width")) }
                input #width name="width" value=(width) inputmode="decimal" autocomplete="off" maxlength="8" required;
            }
            button.main { (say!(texts, "tray-photo-cut")) }
            details {
                summary { (say!(texts, "tray-photo-by-number")) }
                div.corner-fields {
                    @for (i, corner) in draft.corners.iter().enumerate() {
                        (number(texts, "x", i, corner.x))
                        (number(texts, "y", i, corner.y))
                    }
                }
            }
        }
        form method="post" action=(work.address("/throw-away")) {
            button.quiet { (say!(texts, "tray-photo-throw-away")) }
        }
        p { a.button.quiet href={ "/table/tray/" (work.letter) "/photo" } { (say!(texts, "go-back")) } }
    };
    let page = page(&work.desk, texts, Tab::Trays, &title, &main);
    let status = if trouble.is_some() { StatusCode::BAD_REQUEST } else { StatusCode::OK };
    Ok((status, page).into_response())
}

/// A field for where a corner lies, in percent of the photo.
fn number(texts: &Texts, axis: &str, i: usize, share: f64) -> Markup {
    let name = format!("{axis}{i}");
    let percent = Decimal::try_from(share * 100.0).unwrap_or_default().round_dp(2);
    let label = if axis == "x" {
        say!(texts, "tray-photo-across", n = i + 1)
    } else {
        say!(texts, "tray-photo-down", n = i + 1)
    };
    html! {
        div {
            label for=(name) { (label) }
            input id=(name) name=(name) value=(as_typed(texts, percent)) inputmode="decimal" autocomplete="off" maxlength="8" required;
        }
    }
}

/// The photo with the grid over it, each corner a handle.
fn picture(texts: &Texts, work: &Work, grid: &Grid) -> Markup {
    let high = WIDE * f64::from(work.draft.height) / f64::from(work.draft.width.max(1));
    let corners = work.draft.corners.map(|p| Point::new(p.x * WIDE, p.y * high));
    let unit = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(|(x, y)| Point::new(x, y));
    let map = Homography::from_points(unit, corners);
    let first = map.map(|map| map.at(Point::new(0.5 / f64::from(grid.columns), 0.5 / f64::from(grid.rows))));
    let home = Home { tray: work.letter, compartment: 1 };
    html! {
        svg.tray-corners viewBox={ "0 0 " (WIDE) " " (px(high)) } role="img" aria-label=(say!(texts, "tray-photo-seen"))
            data-rows=(grid.rows) data-columns=(grid.columns) {
            image href=(work.picture(SHOWN)) width=(WIDE) height=(px(high)) preserveAspectRatio="none" {}
            @let lines = map.map(|map| lines(map, grid)).unwrap_or_default();
            path.under d=(lines) {}
            path.over d=(lines) {}
            @if let Some(at) = first { text.first x=(px(at.x)) y=(px(at.y)) { (home) } }
            @for (i, corner) in corners.iter().enumerate() {
                circle.handle data-corner=(i) cx=(px(corner.x)) cy=(px(corner.y)) r="40" {}
                text.corner x=(px(corner.x)) y=(px(corner.y)) { (i + 1) }
            }
        }
    }
}

/// The walls between the compartments as a path.
fn lines(map: Homography, grid: &Grid) -> String {
    let mut path = String::new();
    let mut line = |from: Point, to: Point| {
        let (a, b) = (map.at(from), map.at(to));
        path.push_str(&format!("M{} {}L{} {}", px(a.x), px(a.y), px(b.x), px(b.y)));
    };
    for column in 0..=grid.columns {
        let x = f64::from(column) / f64::from(grid.columns);
        line(Point::new(x, 0.0), Point::new(x, 1.0));
    }
    for row in 0..=grid.rows {
        let y = f64::from(row) / f64::from(grid.rows);
        line(Point::new(0.0, y), Point::new(1.0, y));
    }
    path
}

fn px(n: f64) -> String {
    format!("{n:.1}")
}

/// A share of the photo as it was typed in percent.
fn share(typed: &str) -> Option<f64> {
    let percent: f64 = typed.replace(',', ".").parse().ok()?;
    (0.0..=100.0).contains(&percent).then_some(percent / 100.0)
}

fn corners_of(form: &TableForm) -> Option<[Point; 4]> {
    let mut corners = [Point::new(0.0, 0.0); 4];
    for (i, corner) in corners.iter_mut().enumerate() {
        *corner = Point::new(share(form.text(&format!("x{i}")))?, share(form.text(&format!("y{i}")))?);
    }
    Some(corners)
}

async fn set(
    State(desk): State<Arc<DeskState>>,
    Path((letter, id)): Path<(char, String)>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let mut work = Work::find(&desk, letter, id).await?;
    let Some(mut corners) = corners_of(&form) else {
        return corners_page(&work, texts, Some(&say!(texts, "tray-photo-no-number"))).await;
    };
    let turns = form.told("turn").is_some();
    if turns {
        corners.rotate_left(1);
    }
    let width = typed_measure(form.text("width"));
    let asked = work.id.clone();
    let changed = with_drafts(&desk, move |drafts| {
        drafts.change(&asked, &[], |draft| {
            draft.corners = corners;
            draft.inner_width_mm = width.or(draft.inner_width_mm);
        })
    });
    work.draft = changed.await?.ok_or_else(gone)?;
    if turns {
        return Ok(Redirect::to(&work.address("")).into_response());
    }
    if width.is_none() {
        return corners_page(&work, texts, Some(&say!(texts, "tray-photo-no-width"))).await;
    }
    let (grid, asked) = (work.grid().await?, work.id.clone());
    match alone(&desk, texts, move |drafts| cut_all(drafts, &asked, &grid)).await? {
        Ok(()) => Ok(Redirect::to(&work.address("/pieces")).into_response()),
        Err(words) => corners_page(&work, texts, Some(&words)).await,
    }
}

async fn throw_away(
    State(desk): State<Arc<DeskState>>,
    Path((letter, id)): Path<(char, String)>,
    _form: TableForm,
) -> Result<Response, Refusal> {
    // What is gone already is thrown away.
    with_drafts(&desk, move |drafts| {
        if drafts.read(&id).is_some_and(|draft| draft.tray == letter) {
            drafts.remove(&id);
        }
        Ok(())
    })
    .await?;
    Ok(Redirect::to(&format!("/table/tray/{letter}/photo")).into_response())
}
