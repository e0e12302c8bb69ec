//! What is done with one compartment.

use std::{collections::BTreeSet, sync::Arc};

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::post,
};
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{
    compartment::{MATERIALS, compartment_page},
    form::TableForm,
    ids::TakenIds,
    overview::first_empty,
    refused::refused,
};
use crate::{
    catalog::{Act, EditRefusal, Fields, Loaded},
    craft::{DropKind, Guess, Home, Sort},
    desk::{
        editing,
        money_words::amount_words,
        pages::{
            typed::{count, typed_measure, typed_price},
            words,
        },
        photo_work, photos,
        refusal::Refusal,
        state::DeskState,
    },
    lang::{Texts, say},
    ron_tree::in_quotes,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/at/{home}", post(lay))
        .route("/table/at/{home}/move", post(go_elsewhere))
        .route("/table/at/{home}/copy", post(copy))
        .route("/table/at/{home}/retire", post(retire))
        .route("/table/at/{home}/restock", post(restock))
}

/// What was typed of a drop, read, or what is wrong with it in words.
struct Told {
    price: Option<Decimal>,
    fields: Fields,
}

fn told(texts: &Texts, form: &TableForm, loaded: &Loaded, before: Option<&DropKind>) -> Result<Told, String> {
    let currency = loaded.catalog.table.prices.currency;
    // A price at a touch counts before one that stands in the field.
    let typed = form.told("price").or_else(|| form.told("typed"));
    let price =
        typed.map(|typed| typed_price(currency, typed).map_err(|error| words::sentence(&amount_words(texts, &error))));
    let price = price.transpose()?;
    let mut fields = Fields::new();
    if let Some(sort) = Sort::ALL.iter().find(|sort| sort.name() == form.text("sort"))
        && before.is_none_or(|kind| kind.sort != *sort || kind.guessed.contains(&Guess::Sort))
    {
        fields = fields.written("sort", sort.name());
    }
    if let Some(name) = form.told("name")
        && before.is_none_or(|kind| kind.name != name)
    {
        fields = fields.text("name", name);
    }
    if form.told("mix-asked").is_some() {
        fields = match (form.told("mix").is_some(), before.is_some_and(DropKind::is_assortment)) {
            (true, false) => fields.written("assortment", "[]"),
            (false, true) => fields.without("assortment"),
            _ => fields,
        };
    }
    for (name, unit) in [("weight", "g"), ("width", "mm"), ("height", "mm")] {
        if let Some(typed) = form.told(name) {
            let number = typed_measure(typed).ok_or_else(|| say!(texts, "table-no-measure", found = typed))?;
            if before.is_none_or(|kind| measure(kind, name) != Some(number)) {
                fields = fields.written(name, in_quotes(&format!("{number}{unit}")));
            }
        }
    }
    let materials: Vec<&str> =
        MATERIALS.iter().map(|one| one.name()).filter(|one| form.all("material").any(|told| told == *one)).collect();
    let others =
        before.map(|kind| kind.facts.materials.iter().filter(|one| !MATERIALS.contains(one)).map(|one| one.name()));
    let materials: Vec<&str> = materials.into_iter().chain(others.into_iter().flatten()).collect();
    let known: BTreeSet<&str> =
        before.iter().flat_map(|kind| kind.facts.materials.iter().map(|one| one.name())).collect();
    if form.all("material").next().is_some() && known != materials.iter().copied().collect() {
        fields = fields.written("materials", format!("[{}]", materials.join(", ")));
    }
    Ok(Told { price, fields })
}

/// A measure as the page shows it.
fn measure(kind: &DropKind, name: &str) -> Option<Decimal> {
    let value = match name {
        "weight" => kind.weight.g(),
        "width" => kind.width.mm(),
        _ => kind.height.mm(),
    };
    Decimal::try_from(value).ok().map(|value| value.round_dp(2).normalize())
}

async fn lay(State(desk): State<Arc<DeskState>>, Path(home): Path<Home>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let loaded = desk.catalog.loaded();
    let before = loaded.catalog.drop_at(home);
    let here = format!("/table/at/{home}");
    let again = async |words: &str| {
        let page = compartment_page(&desk, texts, home, None, Some(words)).await?;
        Ok((StatusCode::BAD_REQUEST, page).into_response())
    };
    let Told { price, mut fields } = match told(texts, &form, &loaded, before) {
        Ok(told) => told,
        Err(words) => return again(&words).await,
    };
    if before.is_none() && price.is_none() {
        return again(&say!(texts, "table-no-price")).await;
    }
    let stock = match count(texts, &say!(texts, "table-count-here"), form.text("count")) {
        Ok(stock) => stock,
        Err(words) => return again(&words).await,
    };
    if let Some(photo) = form.photo.clone() {
        match photo_work::alone(photo_work::PATIENCE, move || photos::kept(&photo)).await? {
            Ok(picture) => {
                fields = fields.text("picture", &picture.name);
                if let Err(error) = editing::keep_picture(&desk, picture.name, picture.bytes).await {
                    return Ok(refused(&desk, &form, &error, (&here, &here)).await);
                }
            }
            Err(why) => return again(&texts.say(&why)).await,
        }
    }
    let act = match before {
        Some(kind) => {
            let fields = match price.filter(|price| *price != kind.price) {
                Some(price) => fields.text("price", &written(price, &loaded)),
                None => fields,
            };
            Act::Tell { home, fields }
        }
        None => Act::Lay { home, fields: new_entry(&desk, texts, &form, &loaded, (price, stock), fields).await? },
    };
    let name =
        before.map_or_else(|| form.told("name").map_or_else(String::new, str::to_owned), |kind| kind.name.clone());
    let did = if before.is_some() {
        say!(texts, "table-did-tell", home = home.to_string(), name = name)
    } else {
        say!(texts, "table-did-lay", home = home.to_string())
    };
    let is_new = before.is_none();
    match editing::change(&desk, vec![act], form.seen(), did).await {
        Ok(_) if is_new => Ok(next(&desk, home, form.text("go") == "one-off")),
        Ok(_) => Ok(Redirect::to(&format!("/table/at/{home}?kept={home}")).into_response()),
        Err(EditRefusal::Mistakes(mistakes)) => {
            again(&words::sentence(&super::refused::why(texts, &EditRefusal::Mistakes(mistakes)))).await
        }
        Err(error) => Ok(refused(&desk, &form, &error, (&here, &here)).await),
    }
}

/// A price as the file has it, with all of its decimals.
pub(super) fn written(mut price: Decimal, loaded: &Loaded) -> String {
    price.rescale(loaded.catalog.table.prices.currency.digits);
    price.to_string()
}

/// All that is told of a new drop, its id first.
async fn new_entry(
    desk: &DeskState,
    texts: &Texts,
    form: &TableForm,
    loaded: &Loaded,
    (price, stock): (Option<Decimal>, u32),
    told: Fields,
) -> Result<Fields, Refusal> {
    let sort = Sort::ALL.iter().find(|sort| sort.name() == form.text("sort")).copied().unwrap_or(Sort::Charm);
    let suggested = texts.get(&format!("one-{}", sort.name()));
    let name = form.told("name").unwrap_or(&suggested);
    let mut fields = Fields::new().text("id", &TakenIds::read(desk, &loaded.catalog).await?.fresh(name));
    let mut guessed = Vec::new();
    if form.told("name").is_none() {
        fields = fields.text("name", &suggested);
        guessed.push("name");
    }
    fields = fields.and(told);
    if let Some(price) = price {
        fields = fields.text("price", &written(price, loaded));
    }
    if form.told("count").is_some() {
        fields = fields.written("stock", stock.to_string());
    }
    if !guessed.is_empty() {
        fields = fields.written("guessed", format!("[{}]", guessed.join(", ")));
    }
    Ok(fields)
}

/// The next compartment in which nothing lies; the table where there is none.
fn next(desk: &DeskState, home: Home, one_off: bool) -> Response {
    let loaded = desk.catalog.loaded();
    let address = match first_empty(&loaded.catalog, Some(home)) {
        Some(next) if !one_off => format!("/table/at/{next}?kept={home}"),
        _ => format!("/table/at/{home}?kept={home}"),
    };
    Redirect::to(&address).into_response()
}

async fn go_elsewhere(
    State(desk): State<Arc<DeskState>>,
    Path(home): Path<Home>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let Ok(to) = form.text("to").to_uppercase().parse::<Home>() else {
        let words = say!(texts, "sales-no-home", found = form.text("to"));
        let page = compartment_page(&desk, texts, home, None, Some(&words)).await?;
        return Ok((StatusCode::BAD_REQUEST, page).into_response());
    };
    let did = say!(texts, "table-did-move", from = home.to_string(), to = to.to_string());
    finish(&desk, &form, Act::Move { from: home, to }, did, (home, "move", to)).await
}

async fn copy(
    State(desk): State<Arc<DeskState>>,
    Path(home): Path<Home>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let to = form.text("to").parse().ok().or_else(|| first_empty(&loaded.catalog, Some(home))).unwrap_or(home);
    let name = loaded.catalog.drop_at(home).map_or("drop", |kind| kind.name.as_str());
    let id = TakenIds::read(&desk, &loaded.catalog).await?.fresh(name);
    let did = say!(form.seller.texts, "table-did-copy", from = home.to_string(), to = to.to_string());
    finish(&desk, &form, Act::Copy { from: home, to, id }, did, (home, "copy", to)).await
}

async fn retire(
    State(desk): State<Arc<DeskState>>,
    Path(home): Path<Home>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let name = loaded.catalog.drop_at(home).map_or("", |kind| kind.name.as_str());
    let did = say!(form.seller.texts, "table-did-retire", home = home.to_string(), name = name);
    finish(&desk, &form, Act::Retire { home }, did, (home, "retire", home)).await
}

/// Does it and leads to where the drop lies then.
async fn finish(
    desk: &Arc<DeskState>,
    form: &TableForm,
    act: Act,
    did: String,
    (home, action, to): (Home, &str, Home),
) -> Result<Response, Refusal> {
    Ok(match editing::change(desk, vec![act], form.seen(), did).await {
        Ok(_) => Redirect::to(&format!("/table/at/{to}")).into_response(),
        Err(error) => {
            let (action, back) = (format!("/table/at/{home}/{action}"), format!("/table/at/{home}"));
            refused(desk, form, &error, (&action, &back)).await
        }
    })
}

/// More of it was put into its compartment; that is the ledger's count, whatever the file's figure is.
async fn restock(
    State(desk): State<Arc<DeskState>>,
    Path(home): Path<Home>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let loaded = desk.catalog.loaded();
    let Some(kind) = loaded.catalog.drop_at(home) else {
        let empty = EditRefusal::Empty(home);
        return Ok(refused(&desk, &form, &empty, ("/table", "/table")).await);
    };
    let more = count(texts, &kind.name, form.text("more")).and_then(|more| match more {
        0 => Err(say!(texts, "typed-no-count", found = form.text("more"), piece = kind.name.as_str())),
        more => Ok(more),
    });
    let more = match more {
        Ok(more) => more,
        Err(words) => {
            let page = compartment_page(&desk, texts, home, None, Some(&words)).await?;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let said: Uuid = form.text("form").parse().unwrap_or_else(|_| Uuid::now_v7());
    let id = kind.id.clone();
    desk.ledger.run_by(&form.seller, move |ledger, now| ledger.restock(&id, more, said, now)).await?;
    Ok(Redirect::to(&format!("/parts/{}", kind.id)).into_response())
}
