//! What drops hang on.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::{get, post},
};
use maud::{Markup, html};

use super::{
    base_sizes,
    form::{TableForm, marks},
    guesses,
    refused::done_or_refused,
};
use crate::{
    catalog::{Act, Catalog, Fields, Place, fresh_id},
    craft::{Base, BaseKind, Finish, Guess, LinkKind, Material},
    desk::{
        editing,
        money_words::amount_words,
        pages::{
            frame::{Tab, page},
            typed::{as_typed, count, typed_price},
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
};

/// The page's address.
const HERE: &str = "/table/bases";

/// Metals that are offered for a base; others are written in the file.
const METALS: [Material; 6] = [
    Material::UnknownMetal,
    Material::Brass,
    Material::StainlessSteel,
    Material::SilverMetal,
    Material::CopperMetal,
    Material::SteelMetal,
];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/bases", get(bases).post(lay_out))
        .route("/table/bases/{id}", get(base).post(tell))
        .route("/table/bases/{id}/retire", post(retire))
}

async fn bases(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    Ok(bases_page(&desk, seller.texts, None))
}

fn bases_page(desk: &DeskState, texts: &Texts, trouble: Option<&str>) -> Response {
    let loaded = desk.catalog.loaded();
    let catalog = &loaded.catalog;
    let title = say!(texts, "table-step-bases");
    let main = html! {
        h1 { (title) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        @if !catalog.bases.is_empty() {
            ul.links.card {
                @for base in &catalog.bases {
                    li {
                        a href={ "/table/bases/" (base.id) } { (words::part_name(texts, catalog, &base.id)) } " "
                        (words::money(texts, base.price, catalog.table.prices.currency))
                        @if !base.guessed.is_empty() { " " span.faint { "≈ " (say!(texts, "table-guesses", n = base.guessed.len())) } }
                    }
                }
            }
        }
        form.card.stack method="post" action=(HERE) {
            h2 { (say!(texts, "table-new-base")) }
            div {
                label for="form" { (say!(texts, "table-base-form")) }
                select #form name="form" {
                    option value="Necklace" { (say!(texts, "table-necklace")) }
                    option value="Bangle" { (say!(texts, "table-bangle")) }
                }
            }
            (fields(texts, catalog, None))
            button.main { (say!(texts, "table-lay-out")) }
        }
        p { a.button.quiet href="/table" { (say!(texts, "go-back")) } }
    };
    page(desk, texts, Tab::Trays, &title, &main).into_response()
}

/// What is asked of every base.
fn fields(texts: &Texts, catalog: &Catalog, base: Option<&Base>) -> Markup {
    let told = |guess| base.filter(|base| !base.guessed.contains(&guess));
    let finish = told(Guess::Finish).map(|base| base.finish);
    let metal = told(Guess::Materials).and_then(|base| base.facts.materials.first().copied());
    let link = base.map_or(LinkKind::Cable, |base| match &base.kind {
        BaseKind::Necklace(necklace) => necklace.link,
        BaseKind::Bangle(_) => LinkKind::Cable,
    });
    let is_bangle = base.is_some_and(|base| matches!(base.kind, BaseKind::Bangle(_)));
    html! {
        (field("name", &say!(texts, "table-drop-name"), told(Guess::Name).map_or("", |base| &base.name), "text"))
        (field("price", &say!(texts, "table-price-in", currency = catalog.table.prices.currency.code), &base.map(|base| as_typed(texts, base.price)).unwrap_or_default(), "decimal"))
        @if base.is_none() { (field("count", &say!(texts, "table-count-here"), "", "numeric")) }
        @if !is_bangle {
            div {
                label for="link" { (say!(texts, "table-link")) }
                select #link name="link" {
                    @for one in LinkKind::ALL { option value=(one.name()) selected[*one == link] { (texts.get(&format!("link-{}", one.name()))) } }
                }
            }
        }
        div {
            label for="finish" { (say!(texts, "table-finish")) }
            select #finish name="finish" {
                option value="" selected[finish.is_none()] { (say!(texts, "about-not-told")) }
                @for one in Finish::ALL { option value=(one.name()) selected[finish == Some(*one)] { (texts.get(&format!("finish-{}", one.name()))) } }
            }
        }
        div {
            label for="metal" { (say!(texts, "table-metal")) }
            select #metal name="metal" {
                option value="" selected[metal.is_none()] { (say!(texts, "about-not-told")) }
                @for one in METALS { option value=(one.name()) selected[metal == Some(one)] { (texts.get(&format!("material-{}", one.name()))) } }
            }
        }
    }
}

fn field(name: &str, label: &str, value: &str, mode: &str) -> Markup {
    html! {
        div {
            label for=(name) { (label) }
            input #(name) name=(name) value=(value) inputmode=(mode) autocomplete="off" maxlength="60";
        }
    }
}

/// What was typed, as the file has it; what is wrong in words. What is as before is left as somebody wrote it.
fn read(texts: &Texts, catalog: &Catalog, form: &TableForm, before: Option<&Base>) -> Result<Fields, String> {
    let currency = catalog.table.prices.currency;
    let mut fields = Fields::new();
    if let Some(name) = form.told("name").filter(|name| before.is_none_or(|base| base.name != *name)) {
        fields = fields.text("name", name);
    }
    let price = form.told("price").map(|typed| typed_price(currency, typed));
    let price = price.transpose().map_err(|error| words::sentence(&amount_words(texts, &error)))?;
    match (price, before) {
        (None, None) => return Err(say!(texts, "table-no-price")),
        (Some(mut price), _) if before.is_none_or(|base| base.price != price) => {
            price.rescale(currency.digits);
            fields = fields.text("price", &price.to_string());
        }
        _ => {}
    }
    if before.is_none() && form.told("count").is_some() {
        let stock = count(texts, &say!(texts, "table-count-here"), form.text("count"))?;
        fields = fields.written("stock", stock.to_string());
    }
    let is_bangle = before.map_or(form.text("form") == "Bangle", |base| matches!(base.kind, BaseKind::Bangle(_)));
    let link = LinkKind::ALL.iter().find(|one| one.name() == form.text("link")).filter(|_| !is_bangle);
    let same_link =
        |link: &LinkKind| matches!(before.map(|base| &base.kind), Some(BaseKind::Necklace(one)) if one.link == *link);
    if let Some(link) = link.filter(|link| !same_link(link)) {
        fields = fields.written("link", link.name());
    }
    let finish = Finish::ALL.iter().find(|one| one.name() == form.text("finish"));
    if let Some(finish) =
        finish.filter(|one| before.is_none_or(|base| base.finish != **one || base.guessed.contains(&Guess::Finish)))
    {
        fields = fields.written("finish", finish.name());
    }
    let metal = METALS.iter().find(|one| one.name() == form.text("metal"));
    let known = |one: &Material| {
        before.is_some_and(|base| base.facts.materials.contains(one) && !base.guessed.contains(&Guess::Materials))
    };
    if let Some(metal) = metal.filter(|one| !known(one)) {
        fields = fields.written("materials", format!("[{}]", metal.name()));
    }
    Ok(fields)
}

async fn lay_out(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let loaded = desk.catalog.loaded();
    let told = match read(texts, &loaded.catalog, &form, None) {
        Ok(told) => told,
        Err(words) => return Ok((StatusCode::BAD_REQUEST, bases_page(&desk, texts, Some(&words))).into_response()),
    };
    let (kind, suggested) = match form.text("form") {
        "Bangle" => ("Bangle", say!(texts, "table-bangle")),
        _ => ("Necklace", say!(texts, "table-necklace")),
    };
    let counts = desk.ledger.look(|ledger| ledger.counts()).await?;
    let is_taken = |id: &str| {
        counts.contains_key(id) || loaded.catalog.base(id).is_some() || loaded.catalog.drop_kind(id).is_some()
    };
    let name = form.told("name").unwrap_or(&suggested);
    let mut fields = Fields::new().text("id", &fresh_id(name, is_taken));
    if form.told("name").is_none() {
        fields = fields.text("name", &suggested).written("guessed", "[name]");
    }
    let act = Act::NewBase { form: kind, fields: fields.and(told) };
    let did = say!(texts, "table-did-base", name = name);
    Ok(done_or_refused(&desk, &form, act, did, (HERE, HERE)).await)
}

async fn base(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(id): Path<String>,
) -> Result<Response, Refusal> {
    base_page(&desk, seller.texts, &id, None).await
}

async fn base_page(desk: &Arc<DeskState>, texts: &Texts, id: &str, trouble: Option<&str>) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let Some(base) = loaded.catalog.base(id) else {
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("table-no-base", name = id)));
    };
    let files = editing::files(desk).await.ok();
    let places = [Place::Base(id.to_owned())];
    let main = html! {
        h1 { (base.name) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        (guesses::note(texts, &base.guessed))
        form.card.stack method="post" action={ "/table/bases/" (id) } {
            (marks(files.as_ref(), &places))
            (fields(texts, &loaded.catalog, Some(base)))
            (base_sizes::fields(texts, base))
            button.main { (say!(texts, "table-keep")) }
        }
        p.faint { (say!(texts, "table-base-hint")) }
        form method="post" action={ "/table/bases/" (id) "/retire" } {
            (marks(files.as_ref(), &places))
            button.grave { (say!(texts, "table-retire")) }
        }
        p { a.button.quiet href=(HERE) { (say!(texts, "go-back")) } }
    };
    Ok(page(desk, texts, Tab::Trays, &base.name, &main).into_response())
}

async fn tell(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<String>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let loaded = desk.catalog.loaded();
    let before = loaded.catalog.base(&id);
    let sizes = before.map_or_else(|| Ok(Fields::new()), |base| base_sizes::read(texts, &form, base));
    let told = match read(texts, &loaded.catalog, &form, before).and_then(|told| Ok(told.and(sizes?))) {
        Ok(told) => told,
        Err(words) => {
            let page = base_page(&desk, texts, &id, Some(&words)).await?;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let did = say!(texts, "table-did-base", name = before.map_or(id.as_str(), |base| base.name.as_str()));
    Ok(done_or_refused(
        &desk,
        &form,
        Act::TellBase { id: id.clone(), fields: told },
        did,
        (&format!("/table/bases/{id}"), HERE),
    )
    .await)
}

async fn retire(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<String>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let name = loaded.catalog.base(&id).map_or(id.as_str(), |base| base.name.as_str());
    let did = say!(form.seller.texts, "table-did-retire-base", name = name);
    Ok(done_or_refused(
        &desk,
        &form,
        Act::RetireBase { id: id.clone() },
        did,
        (&format!("/table/bases/{id}/retire"), HERE),
    )
    .await)
}
