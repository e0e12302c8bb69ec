//! Paper for the table: price marks, tags, maps and lists as a PDF, and what of the marks is new since the last print. Nothing
//! of the table is changed by it, so helpers who set up may as well.

use std::{collections::BTreeSet, sync::Arc};

use axum::{
    Form, Router,
    extract::{Query, State},
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use rust_decimal::{Decimal, prelude::FromPrimitive};
use serde::Deserialize;

use crate::{
    catalog::{Catalog, Loaded, Printed},
    craft::Length,
    desk::{
        outward::Reach,
        pages::{
            frame::{Tab, page},
            paper::{as_pdf, not_made},
            words,
        },
        refusal::Refusal,
        signed_in::Seller,
        state::DeskState,
    },
    lang::{Lang, Message, Texts, message, say},
    paper::{Grid, GridError, LabelError, LabelOrder, LabelPart, LabelTable, Sheet, labels},
};

/// The page's address.
const HERE: &str = "/table/paper";
/// So many of what is new are named.
const MOST_NAMED: usize = 24;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/paper", get(ask))
        .route("/table/paper/labels.pdf", get(make))
        .route("/table/paper/printed", post(printed))
}

/// What is chosen on the page.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Chosen {
    what: String,
    sheet: String,
    columns: String,
    rows: String,
    above: String,
    beside: String,
    tray: String,
    language: String,
    /// Only what is new.
    changed: String,
    /// The catalogue that the page showed.
    revision: String,
    /// What became of saying that it is printed.
    noted: Option<String>,
    stale: Option<String>,
}

impl Chosen {
    fn texts(&self, seller: &Seller) -> &'static Texts {
        Lang::from_code(&self.language).map_or(seller.texts, Texts::of)
    }

    fn parts(&self) -> Vec<LabelPart> {
        LabelPart::from_name(&self.what).map_or_else(|| LabelPart::ALL.to_vec(), |part| vec![part])
    }

    fn grid(&self) -> Result<Grid, GridError> {
        let usual = Grid::USUAL;
        let count = |typed: &str, usual: u8| match typed.trim() {
            "" => Ok(usual),
            typed => typed.parse().map_err(|_| GridError::Shape(typed.to_owned())),
        };
        let margin = |typed: &str, usual: Length| match typed.trim() {
            "" => Ok(usual),
            typed => {
                let mm = typed.replace(',', ".").parse().ok().filter(|mm: &f64| mm.is_finite());
                mm.map(Length::from_mm).ok_or_else(|| GridError::Margin(typed.to_owned()))
            }
        };
        Ok(Grid {
            columns: count(&self.columns, usual.columns)?,
            rows: count(&self.rows, usual.rows)?,
            above: margin(&self.above, usual.above)?,
            beside: margin(&self.beside, usual.beside)?,
        })
    }

    /// What is to be made of `table`, of whose marks `printed` were printed before.
    fn order(&self, catalog: &Catalog, table: &LabelTable, printed: &Printed) -> Result<LabelOrder, GridError> {
        let letter = self.tray.chars().next();
        Ok(LabelOrder {
            parts: self.parts(),
            sheet: Sheet::from_name(&self.sheet).unwrap_or(Sheet::of(catalog.table.region)),
            grid: self.grid()?,
            tray: letter.filter(|letter| catalog.trays.iter().any(|tray| tray.letter == *letter)),
            only: (!self.changed.is_empty()).then(|| printed.changed(&table.words())),
        })
    }
}

async fn ask(State(desk): State<Arc<DeskState>>, seller: Seller, Query(chosen): Query<Chosen>) -> Response {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let printed = Printed::read(desk.editor.root());
    let title = say!(texts, "labels-page");
    let main = html! {
        h1 { (title) }
        @if chosen.noted.is_some() { p.done-note role="status" { (say!(texts, "labels-noted")) } }
        @if chosen.stale.is_some() { p.trouble role="alert" { (say!(texts, "labels-stale")) } }
        p { (say!(texts, "labels-page-hint")) }
        (news(texts, &loaded.catalog, &printed))
        (form(texts, &loaded, &printed))
        p { a.button.quiet href="/trays" { (say!(texts, "to-trays")) } }
    };
    page(&desk, texts, Tab::Trays, &title, &main).into_response()
}

/// What is new since the last print, in the reader's language.
fn news(texts: &'static Texts, catalog: &Catalog, printed: &Printed) -> Markup {
    if printed.is_empty() {
        return html! { p.faint { (say!(texts, "labels-never")) } };
    }
    // Printed in another language they say the same in this one.
    let changed = Lang::ALL.map(|lang| printed.changed(&LabelTable::of(catalog, Texts::of(lang)).words()));
    let changed = changed.into_iter().min_by_key(BTreeSet::len).unwrap_or_default();
    let name = |key: &String| match catalog.base(key) {
        Some(_) => words::part_name(texts, catalog, key).into_owned(),
        None => key.clone(),
    };
    let mut named: Vec<String> = changed.iter().take(MOST_NAMED).map(name).collect();
    if changed.len() > MOST_NAMED {
        named.push("…".to_owned());
    }
    html! { p { (say!(texts, "labels-changed", n = changed.len(), homes = named.join(", "))) } }
}

fn form(texts: &'static Texts, loaded: &Loaded, printed: &Printed) -> Markup {
    let (catalog, grid) = (&loaded.catalog, Grid::USUAL);
    let sheet = Sheet::of(catalog.table.region);
    let (width, height) = grid.mark_mm(sheet);
    let option =
        |value: &str, words: &str, is_chosen: bool| html! { option value=(value) selected[is_chosen] { (words) } };
    let number = |id: &str, label: String, value: String, most: u8| {
        html! {
            div {
                label for=(id) { (label) }
                input id=(id) name=(id) type="number" inputmode="numeric" min="0" max=(most) value=(value) required;
            }
        }
    };
    html! {
        form.card.stack method="get" action="/table/paper/labels.pdf" target="_blank" {
            input type="hidden" name="revision" value=(loaded.revision);
            div {
                label for="what" { (say!(texts, "labels-what")) }
                select #what name="what" {
                    (option("", &say!(texts, "labels-all"), true))
                    @for part in LabelPart::ALL { (option(part.name(), &texts.get(&format!("labels-{}", part.name())), false)) }
                }
            }
            div {
                label for="tray" { (say!(texts, "labels-tray")) }
                select #tray name="tray" {
                    (option("", &say!(texts, "labels-every-tray"), true))
                    @for tray in &catalog.trays {
                        (option(&tray.letter.to_string(), &format!("{} {}", tray.letter, words::tray_name(texts, catalog, tray)), false))
                    }
                }
            }
            @if !printed.is_empty() {
                div {
                    label for="changed" { (say!(texts, "labels-how-much")) }
                    select #changed name="changed" {
                        (option("", &say!(texts, "labels-all"), true))
                        (option("1", &say!(texts, "labels-changed-only"), false))
                    }
                }
            }
            div {
                label for="language" { (say!(texts, "labels-language")) }
                select #language name="language" {
                    @for lang in Lang::ALL { option value=(lang.code()) lang=(lang.code()) selected[lang == texts.lang] { (lang.own_name()) } }
                }
            }
            div {
                label for="sheet" { (say!(texts, "labels-sheet")) }
                select #sheet name="sheet" { @for one in Sheet::ALL { (option(one.name(), one.name(), one == sheet)) } }
            }
            div.mark-grid {
                (number("columns", say!(texts, "labels-columns"), grid.columns.to_string(), 10))
                (number("rows", say!(texts, "labels-rows"), grid.rows.to_string(), 28))
                (number("above", say!(texts, "labels-margin-above"), grid.above.mm().to_string(), 60))
                (number("beside", say!(texts, "labels-margin-beside"), grid.beside.mm().to_string(), 60))
            }
            p.faint { (say!(texts, "labels-grid-hint", width = figure(texts, width), height = figure(texts, height))) }
            button.main { (say!(texts, "labels-make")) }
            p.faint { (say!(texts, "labels-done-hint")) }
            button.quiet formaction="/table/paper/printed" formmethod="post" formtarget="_self" { (say!(texts, "labels-done")) }
        }
    }
}

/// Millimetres to half a one, which is as exact as scissors are.
fn figure(texts: &Texts, mm: f64) -> String {
    texts.lang.number(Decimal::from_f64((mm * 2.0).round() / 2.0).unwrap_or_default().normalize())
}

/// Why the grid is none.
fn no_grid(error: &GridError) -> Message {
    let size = |mm: &f64| Decimal::from_f64((mm * 10.0).round() / 10.0).unwrap_or_default();
    match error {
        GridError::Shape(_) => message!("labels-grid-shape"),
        GridError::Margin(_) => message!("labels-grid-margin"),
        GridError::Count { .. } => message!("labels-grid-count"),
        GridError::Small { width, height } => {
            message!("labels-grid-small", width = size(width), height = size(height))
        }
    }
}

async fn make(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Query(chosen): Query<Chosen>,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (chosen.texts(&seller), desk.catalog.loaded());
    let put_back = Reach::of(&desk, &headers).likeliest().map(|address| format!("{address}/put-back"));
    let printed = Printed::read(desk.editor.root());
    let made = tokio::task::spawn_blocking(move || {
        let table = LabelTable::of(&loaded.catalog, texts).with_put_back(put_back);
        let order = chosen.order(&loaded.catalog, &table, &printed)?;
        let table = if order.parts.contains(&LabelPart::Maps) {
            table.with_pictures(|id| {
                let kind = loaded.catalog.drop_kind(id)?;
                loaded.pictures.get(&kind.picture)?.read().ok()
            })
        } else {
            table
        };
        labels(&table, &order)
    });
    match made.await {
        Ok(Ok(Some(made))) => Ok(as_pdf("labels", made.pdf)),
        Ok(Ok(None)) => Err(Refusal::Said(StatusCode::CONFLICT, message!("labels-nothing"))),
        Ok(Err(LabelError::Grid(error))) => Err(Refusal::wrong(no_grid(&error))),
        Ok(Err(LabelError::Paper(error))) => Err(not_made(&error.to_string())),
        Err(error) => Err(not_made(&error.to_string())),
    }
}

/// From now on what was chosen is printed as it is; said twice it is the same.
async fn printed(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Form(chosen): Form<Chosen>,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (chosen.texts(&seller), desk.catalog.loaded());
    // What was printed by an earlier page may say something else than the table does now.
    if chosen.revision != loaded.revision {
        return Ok(Redirect::to(&format!("{HERE}?stale=1")).into_response());
    }
    let table = LabelTable::of(&loaded.catalog, texts);
    let root = desk.editor.root();
    let mut printed = Printed::read(root);
    let order = chosen.order(&loaded.catalog, &table, &printed).map_err(|error| Refusal::wrong(no_grid(&error)))?;
    printed.note(&table.marked(&order), &table.words());
    if let Err(error) = printed.keep(root) {
        let why = error.to_string();
        return Err(Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("labels-not-noted", why = why)));
    }
    Ok(Redirect::to(&format!("{HERE}?noted=1")).into_response())
}
