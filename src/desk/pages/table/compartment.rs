//! One compartment: what lies there or will, told in as few touches as there can be.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::{form::marks, guesses, overview::first_empty};
use crate::{
    catalog::{Catalog, Loaded, Place, TableFiles},
    craft::{DropKind, Guess, Home, Material, Sort},
    desk::{
        editing,
        pages::{
            frame::{Tab, page},
            typed::as_typed,
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
};

/// So many prices are offered at a touch.
const MOST_PRICES: usize = 8;

/// Materials that are offered; others are written in the file.
pub(super) const MATERIALS: [Material; 12] = [
    Material::Brass,
    Material::CopperMetal,
    Material::SilverMetal,
    Material::StainlessSteel,
    Material::ZincAlloy,
    Material::UnknownMetal,
    Material::Glass,
    Material::CrystalGlass,
    Material::Stone,
    Material::Pearl,
    Material::Wood,
    Material::Resin,
];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/at/{home}", get(compartment)).route("/table/one-off", get(one_off))
}

#[derive(Deserialize)]
struct Asked {
    /// The home that was done last, to be told above.
    kept: Option<Home>,
}

async fn compartment(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(home): Path<Home>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let kept = asked.kept;
    compartment_page(&desk, seller.texts, home, kept, None).await
}

/// The page of a compartment, with what was just kept elsewhere or what went wrong here.
pub(super) async fn compartment_page(
    desk: &Arc<DeskState>,
    texts: &'static Texts,
    home: Home,
    kept: Option<Home>,
    trouble: Option<&str>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let catalog = &loaded.catalog;
    let is_there = catalog.trays.iter().any(|tray| tray.compartments().any(|(one, _)| one == home));
    if !is_there {
        let no_home = message!("table-no-home", home = home.to_string());
        return Err(Refusal::Said(StatusCode::NOT_FOUND, no_home));
    }
    let files = editing::files(desk).await.ok();
    let scene = Scene { texts, loaded: &loaded, files: files.as_ref(), home };
    let kind = catalog.drop_at(home);
    let title =
        kind.map_or_else(|| say!(texts, "table-lay", home = home.to_string()), |kind| format!("{home} {}", kind.name));
    let main = html! {
        h1 { span.home { (home) } " " @match kind { Some(kind) => (kind.name), None => (say!(texts, "table-lay-here")) } }
        @if let Some(kept) = kept.and_then(|home| catalog.drop_at(home)) {
            p.done-note role="status" {
                (say!(texts, "table-kept", home = kept.home.to_string(), name = kept.name.as_str(),
                    price = words::money(texts, kept.price, catalog.table.prices.currency)))
            }
        }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        @match kind {
            Some(kind) => { (scene.told(kind)) }
            None => { (scene.form(None)) }
        }
        p.links.row.wraps {
            a href={ "/table#tray-" (home.tray) } { (say!(texts, "table-to-table")) }
            @if let Some(next) = first_empty(catalog, Some(home)).filter(|next| *next != home) {
                a href={ "/table/at/" (next) } { (say!(texts, "table-next-empty", home = next.to_string())) }
            }
        }
    };
    Ok(page(desk, texts, Tab::Trays, &title, &main).into_response())
}

/// A compartment as its page shows it.
struct Scene<'a> {
    texts: &'static Texts,
    loaded: &'a Loaded,
    files: Option<&'a TableFiles>,
    home: Home,
}

impl Scene<'_> {
    fn marks(&self) -> Markup {
        marks(self.files, &[Place::Home(self.home)])
    }

    /// What lies here, and everything that can be done with it.
    fn told(&self, kind: &DropKind) -> Markup {
        let (texts, home) = (self.texts, self.home);
        html! {
            div.part {
                div.head {
                    (words::picture(texts, self.loaded, &kind.id))
                    div { (guesses::note(texts, &kind.guessed)) }
                }
                @if kind.is_assortment() {
                    p { (say!(texts, "table-mix-looks", n = kind.looks().len())) }
                    div.row.wraps { @for look in kind.looks() { (words::picture_file(self.loaded, &look.picture)) } }
                }
            }
            (self.form(Some(kind)))
            section.card.stack aria-label=(say!(texts, "table-elsewhere")) {
                h2 { (say!(texts, "table-elsewhere")) }
                form.row.wraps method="post" action={ "/table/at/" (home) "/restock" } {
                    input type="hidden" name="form" value=(Uuid::now_v7());
                    label for="more" { (say!(texts, "table-restock")) }
                    input #more name="more" inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" required;
                    button { (say!(texts, "table-restock-do")) }
                    a href={ "/parts/" (kind.id) } { (say!(texts, "table-count-anew")) }
                }
                form.row.wraps method="post" action={ "/table/at/" (home) "/move" } {
                    (self.marks())
                    label for="to" { (say!(texts, "table-move")) }
                    input #to name="to" autocapitalize="characters" autocomplete="off" maxlength="4" required;
                    button { (say!(texts, "table-move-do")) }
                }
                div.row.wraps {
                    @if let Some(next) = first_empty(&self.loaded.catalog, Some(home)) {
                        form method="post" action={ "/table/at/" (home) "/copy" } {
                            (self.marks())
                            input type="hidden" name="to" value=(next);
                            button.quiet { (say!(texts, "table-copy", home = next.to_string())) }
                        }
                    }
                    form method="post" action={ "/table/at/" (home) "/retire" } {
                        (self.marks())
                        button.grave { (say!(texts, "table-retire")) }
                    }
                }
            }
        }
    }

    /// What is told of it. A price at a touch is enough.
    fn form(&self, kind: Option<&DropKind>) -> Markup {
        let (texts, home) = (self.texts, self.home);
        let price = kind.map(|kind| as_typed(texts, kind.price)).unwrap_or_default();
        let sort = kind.map_or_else(|| usual_sort(&self.loaded.catalog, home), |kind| kind.sort);
        let told = |guess| kind.filter(|kind| !kind.guessed.contains(&guess));
        // Kept as it stands, a guess stays one; it is told by being chosen.
        let is_guess = kind.is_some() && told(Guess::Sort).is_none();
        html! {
            form.card.stack method="post" enctype="multipart/form-data" action={ "/table/at/" (home) } {
                (self.marks())
                div.row.wraps.beside {
                    div {
                        label for="sort" { (say!(texts, "table-sort")) }
                        select #sort name="sort" {
                            @if is_guess { option value="" selected { "≈ " (texts.get(&format!("one-{}", sort.name()))) } }
                            @for one in Sort::ALL {
                                option value=(one.name()) selected[!is_guess && *one == sort] { (texts.get(&format!("one-{}", one.name()))) }
                            }
                        }
                    }
                    @if kind.is_none() {
                        (short_field("count", &say!(texts, "table-count-here"), "", "numeric"))
                    }
                }
                div {
                    label for="typed" { (say!(texts, "table-price")) }
                    div.row {
                        input.amount #typed name="typed" value=(price) inputmode="decimal" autocomplete="off" maxlength="12";
                        button.main { @if kind.is_some() { (say!(texts, "table-keep")) } @else { (say!(texts, "table-keep-next")) } }
                    }
                }
                (prices(texts, self.loaded))
                details open[kind.is_some()] {
                    summary { (say!(texts, "table-name-and-photo")) }
                    (short_field("name", &say!(texts, "table-drop-name"), told(Guess::Name).map_or("", |kind| &kind.name), "text"))
                    div {
                        label for="photo" { (say!(texts, "table-photo")) }
                        input #photo type="file" name="photo" accept="image/jpeg,image/png,image/webp";
                    }
                }
                div {
                    input type="hidden" name="mix-asked" value="1";
                    label.choose {
                        input type="checkbox" name="mix" value="1" checked[kind.is_some_and(DropKind::is_assortment)];
                        " " (say!(texts, "table-mix"))
                    }
                    p.faint.hint { (say!(texts, "table-mix-hint")) }
                }
                details {
                    summary { (say!(texts, "table-more")) }
                    (self.measures(kind))
                }
            }
        }
    }

    /// What decides the cautions, as far as it is asked for here.
    fn measures(&self, kind: Option<&DropKind>) -> Markup {
        let texts = self.texts;
        let told = |guess, value: &dyn Fn(&DropKind) -> f64| {
            let kind = kind.filter(|kind| !kind.guessed.contains(&guess));
            kind.map(|kind| as_typed(texts, Decimal::try_from(value(kind)).unwrap_or_default().round_dp(2)))
                .unwrap_or_default()
        };
        let known = kind.filter(|kind| !kind.guessed.contains(&Guess::Materials));
        html! {
            (short_field("weight", &say!(texts, "table-weight"), &told(Guess::Weight, &|kind| kind.weight.g()), "decimal"))
            (short_field("width", &say!(texts, "table-width"), &told(Guess::Width, &|kind| kind.width.mm()), "decimal"))
            (short_field("height", &say!(texts, "table-height"), &told(Guess::Height, &|kind| kind.height.mm()), "decimal"))
            fieldset {
                legend { (say!(texts, "table-materials")) }
                div.pair {
                    @for one in MATERIALS {
                        label.choose {
                            input type="checkbox" name="material" value=(one.name())
                                checked[known.is_some_and(|kind| kind.facts.materials.contains(&one))];
                            " " (texts.get(&format!("material-{}", one.name())))
                        }
                    }
                }
                p.faint.hint { (say!(texts, "table-materials-hint")) }
            }
        }
    }
}

/// Prices, each a button that enters it.
fn prices(texts: &Texts, loaded: &Loaded) -> Markup {
    let currency = loaded.catalog.table.prices.currency;
    html! {
        div.row.wraps.prices role="group" aria-label=(say!(texts, "table-prices-at-a-touch")) {
            @for price in usual_prices(&loaded.catalog) {
                button.quiet name="price" value=(price) { (words::money(texts, price, currency)) }
            }
        }
    }
}

fn short_field(name: &str, label: &str, value: &str, mode: &str) -> Markup {
    html! {
        div {
            label for=(name) { (label) }
            input #(name) name=(name) value=(value) inputmode=(mode) autocomplete="off" maxlength="60";
        }
    }
}

/// The sort of what lies nearest before in the same tray: trays are laid by sort.
fn usual_sort(catalog: &Catalog, home: Home) -> Sort {
    let before = catalog.drops.iter().rev().find(|kind| kind.home.tray == home.tray && kind.home < home);
    before
        .or_else(|| catalog.drops.iter().find(|kind| kind.home.tray == home.tray))
        .map_or(Sort::Charm, |kind| kind.sort)
}

/// The prices that are most used at this table, the lowest first; a few whole ones where there are none yet.
pub(super) fn usual_prices(catalog: &Catalog) -> Vec<Decimal> {
    let mut used: BTreeMap<Decimal, usize> = BTreeMap::new();
    for kind in &catalog.drops {
        *used.entry(kind.price).or_default() += 1;
    }
    let mut all: Vec<(Decimal, usize)> = used.into_iter().collect();
    all.sort_by_key(|(price, count)| (std::cmp::Reverse(*count), *price));
    let currency = catalog.table.prices.currency;
    let unit = if currency.digits == 0 { Decimal::ONE_HUNDRED } else { Decimal::ONE };
    let whole = [2, 3, 4, 5, 6, 8, 10, 12].map(|n| Decimal::from(n) * unit);
    let mut prices: Vec<Decimal> = all.into_iter().map(|(price, _)| price).take(MOST_PRICES).collect();
    for price in whole {
        if prices.len() < MOST_PRICES && !prices.contains(&price) {
            prices.push(price);
        }
    }
    prices.iter_mut().for_each(|price| price.rescale(currency.digits));
    prices.sort();
    prices
}

/// One of a kind, in twenty seconds: a photo, a price, a home.
async fn one_off(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let files = editing::files(&desk).await.ok();
    let title = say!(texts, "table-one-off");
    let next = first_empty(&loaded.catalog, None);
    let main = html! {
        h1 { (title) }
        @match next {
            None => { p { (say!(texts, "table-no-room")) } p { a.button href="/table/trays" { (say!(texts, "table-step-trays")) } } }
            Some(home) => {
                form.card.stack method="post" enctype="multipart/form-data" action={ "/table/at/" (home) } {
                    (marks(files.as_ref(), &[Place::Home(home)]))
                    input type="hidden" name="sort" value=(Sort::Found.name());
                    input type="hidden" name="count" value="1";
                    input type="hidden" name="go" value="one-off";
                    div {
                        label for="photo" { (say!(texts, "table-photo")) }
                        input #photo type="file" name="photo" accept="image/jpeg,image/png,image/webp" required;
                    }
                    div {
                        label for="typed" { (say!(texts, "table-price")) }
                        div.row {
                            input.amount #typed name="typed" inputmode="decimal" autocomplete="off" maxlength="12";
                            button.main { (say!(texts, "table-lay-in", home = home.to_string())) }
                        }
                    }
                    (prices(texts, &loaded))
                    p.faint { (say!(texts, "table-one-off-hint")) }
                }
            }
        }
        p { a.button.quiet href="/table" { (say!(texts, "go-back")) } }
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}
