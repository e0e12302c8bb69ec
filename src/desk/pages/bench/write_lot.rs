//! A lot that was bought is written down in parts.ron, told anew, or struck out.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::tz::TimeZone;
use maud::{Markup, html};
use serde::Deserialize;

use super::{titled, workshop};
use crate::{
    catalog::{Act, BoughtLot, LotAmount, LotKey, LotTold, PartCount, Place, There, Workshop, written_length},
    craft::{Day, Length},
    desk::{
        editing,
        pages::{
            table::{
                form::{TableForm, marks},
                refused::done_or_refused,
            },
            typed::{as_typed, count, price_for_a_file},
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
    money::Currency,
    prep::cuts::Tenths,
    quoting::excerpt,
};

/// The page with all lots.
const LOTS: &str = "/bench/lots";
const WRITE: &str = "/bench/lots/write";
const CHANGE: &str = "/bench/lots/change";
const STRIKE: &str = "/bench/lots/strike";
/// More spools than come at once.
const MOST_SPOOLS: u32 = 100;
/// As long as a name in the maker's files can be.
pub(super) const LONGEST_NAME: usize = 60;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bench/lots/write", get(empty).post(write))
        .route("/bench/lots/change", get(before).post(change))
        .route("/bench/lots/strike", post(strike))
}

/// What stands in the form's fields.
struct Typed {
    part: String,
    lot: String,
    day: String,
    amount: String,
    spools: String,
    broken: String,
    price: String,
    paper: String,
    put_away: bool,
}

impl Typed {
    fn of_form(form: &TableForm) -> Self {
        let text = |name: &str| form.text(name).to_owned();
        Self {
            part: text("part"),
            lot: text("lot"),
            day: text("day"),
            amount: text("amount"),
            spools: text("spools"),
            broken: text("broken"),
            price: text("price"),
            paper: text("paper"),
            put_away: form.text("put_away") == "1",
        }
    }

    fn of_lot(texts: &Texts, lot: &BoughtLot, told: &LotTold) -> Self {
        Self {
            part: lot.part.clone(),
            lot: lot.lot.clone(),
            day: lot.day.to_string(),
            amount: match told.amount {
                LotAmount::Pieces(count) => count.to_string(),
                LotAmount::Length(length) => written_length(length),
            },
            spools: String::new(),
            broken: if told.broken == 0 { String::new() } else { told.broken.to_string() },
            price: as_typed(texts, lot.bought.price),
            paper: lot.paper.clone().unwrap_or_default(),
            put_away: false,
        }
    }

    /// What was typed, read; what is wrong with it in words.
    fn read(&self, texts: &Texts, workshop: &Workshop, currency: Currency) -> Result<LotTold, String> {
        let part = workshop.part(&self.part).ok_or_else(|| say!(texts, "lot-no-part"))?;
        if self.lot.is_empty() || self.lot.chars().count() > LONGEST_NAME {
            return Err(say!(texts, "lot-no-name", most = LONGEST_NAME));
        }
        let day = Day::from_iso(&self.day).filter(|day| day.day.is_some());
        let day = day.ok_or_else(|| say!(texts, "year-no-day", found = excerpt(&self.day)))?;
        let amount = if is_by_length(workshop, &part.id) {
            let length: Option<Length> = self.amount.parse().ok();
            let length = length.map(Tenths::no_longer).filter(|length| length.0 > 0);
            LotAmount::Length(length.ok_or_else(|| say!(texts, "cuts-no-length", found = excerpt(&self.amount)))?)
        } else {
            match count(texts, &part.name, &self.amount)? {
                0 => return Err(say!(texts, "lot-no-amount", part = part.name.as_str())),
                pieces => LotAmount::Pieces(pieces),
            }
        };
        let broken = count(texts, &say!(texts, "lot-broken"), &self.broken)?;
        let whole = match amount {
            LotAmount::Pieces(count) => count,
            LotAmount::Length(length) => length.0 / 10,
        };
        if broken > whole {
            return Err(say!(texts, "lot-too-broken"));
        }
        let price = price_for_a_file(texts, currency, &self.price)?;
        if self.paper.chars().count() > LONGEST_NAME {
            return Err(say!(texts, "lot-no-paper", most = LONGEST_NAME));
        }
        let paper = (!self.paper.is_empty()).then(|| self.paper.clone());
        Ok(LotTold { part: self.part.clone(), lot: self.lot.clone(), day, amount, broken, price, paper })
    }

    /// On how many spools a length came.
    fn spools(&self, texts: &Texts) -> Result<u32, String> {
        let typed = if self.spools.is_empty() { "1" } else { &self.spools };
        let read = typed.parse().ok().filter(|spools| (1..=MOST_SPOOLS).contains(spools));
        read.ok_or_else(|| say!(texts, "lot-no-spools", found = excerpt(typed), most = MOST_SPOOLS))
    }
}

fn is_by_length(workshop: &Workshop, part: &str) -> bool {
    workshop.part(part).is_some_and(|part| matches!(part.there, There::Spools { .. }))
}

/// The fields of a lot. The part of one that is written down stays.
fn fields(texts: &Texts, workshop: &Workshop, currency: Currency, typed: &Typed, is_new: bool) -> Markup {
    let by_length = is_by_length(workshop, &typed.part);
    html! {
        @if is_new {
            div {
                label for="part" { (say!(texts, "lot-part")) }
                select #part name="part" {
                    @for part in &workshop.parts { option value=(part.id) selected[part.id == typed.part] { (part.name) } }
                }
            }
        } @else { input type="hidden" name="part" value=(typed.part); }
        div {
            label for="lot" { (say!(texts, "lot-name")) }
            input #lot name="lot" value=(typed.lot) maxlength=(LONGEST_NAME) autocomplete="off" required;
        }
        div {
            label for="day" { (say!(texts, "lot-day")) }
            input #day name="day" type="date" value=(typed.day) required;
        }
        div {
            label for="amount" {
                @if is_new { (say!(texts, "lot-amount")) }
                @else if by_length { (say!(texts, "lot-length")) }
                @else { (say!(texts, "lot-count")) }
            }
            input #amount name="amount" value=(typed.amount) maxlength="12" autocomplete="off" required;
        }
        @if is_new {
            div {
                label for="spools" { (say!(texts, "lot-spools")) }
                input #spools name="spools" value=(typed.spools) inputmode="numeric" maxlength="3" autocomplete="off";
            }
        }
        div {
            label for="broken" { (say!(texts, "lot-broken")) }
            input #broken name="broken" value=(typed.broken) inputmode="numeric" maxlength="7" autocomplete="off";
        }
        div {
            label for="price" { (say!(texts, "lot-price", currency = currency.code)) }
            input #price name="price" value=(typed.price) inputmode="decimal" maxlength="12" autocomplete="off" required;
        }
        div {
            label for="paper" { (say!(texts, "lot-paper")) }
            input #paper name="paper" value=(typed.paper) maxlength=(LONGEST_NAME) autocomplete="off";
            p.faint.hint { (say!(texts, "lot-paper-hint")) }
        }
    }
}

/// The workshop in which lots are written; a page that says why there is none otherwise.
pub(super) async fn at_the_bench(desk: &Arc<DeskState>) -> Result<Workshop, Refusal> {
    let loaded = desk.catalog.loaded();
    match workshop(desk, &loaded.catalog).await? {
        (Some(workshop), _) => Ok(workshop),
        (None, Some(_)) => Err(Refusal::Said(StatusCode::CONFLICT, message!("lot-file-wrong"))),
        (None, None) => Err(Refusal::Said(StatusCode::NOT_FOUND, message!("lot-no-workshop"))),
    }
}

fn currency(desk: &DeskState) -> Currency {
    desk.catalog.loaded().catalog.table.prices.currency
}

#[derive(Deserialize)]
struct Asked {
    #[serde(default)]
    part: String,
}

async fn empty(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let workshop = at_the_bench(&desk).await?;
    let typed = Typed {
        part: asked.part,
        day: desk.clock.now().to_zoned_datetime(TimeZone::system()).date().to_string(),
        lot: String::new(),
        amount: String::new(),
        spools: String::new(),
        broken: String::new(),
        price: String::new(),
        paper: String::new(),
        put_away: true,
    };
    Ok(write_page(&desk, seller.texts, &workshop, &typed, None))
}

fn write_page(desk: &DeskState, texts: &Texts, workshop: &Workshop, typed: &Typed, trouble: Option<&str>) -> Response {
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack method="post" action=(WRITE) {
            (fields(texts, workshop, currency(desk), typed, true))
            label.choose {
                input type="checkbox" name="put_away" value="1" checked[typed.put_away];
                span { (say!(texts, "lot-put-away")) }
            }
            button.main { (say!(texts, "lot-keep")) }
        }
        p.no-print { a.button.quiet href=(LOTS) { (say!(texts, "go-back")) } }
    };
    titled(desk, texts, WRITE, &say!(texts, "lot-write"), None, &main)
}

async fn write(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let typed = Typed::of_form(&form);
    let read = typed.read(texts, &workshop, currency(&desk)).and_then(|told| Ok((told, typed.spools(texts)?)));
    let (told, spools) = match read {
        Ok(read) => read,
        Err(words) => {
            let page = write_page(&desk, texts, &workshop, &typed, Some(&words));
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let put_away = typed.put_away.then(|| told.put_away(spools, used_since(&desk, &workshop, &told.part)));
    let did = say!(texts, "lot-did-write", lot = told.lot.as_str());
    Ok(done_or_refused(&desk, &form, Act::WriteLot { told, put_away }, did, (WRITE, LOTS)).await)
}

/// What lies there of a part, where cuts and sales have made the file's count an old one.
pub(super) fn used_since(desk: &DeskState, workshop: &Workshop, part: &str) -> Option<PartCount> {
    let there = |workshop: &Workshop| workshop.part(part).map(|part| PartCount::of(&part.there));
    let file = desk.catalog.workshop(&desk.catalog.loaded().catalog).ok().flatten();
    let (now, written) = (there(workshop)?, file.as_ref().and_then(there)?);
    (now != written).then_some(now)
}

#[derive(Deserialize)]
struct Which {
    #[serde(default)]
    part: String,
    #[serde(default)]
    lot: String,
    #[serde(default)]
    day: String,
}

fn no_lot(lot: &str) -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("lot-none", lot = excerpt(lot)))
}

async fn before(
    State(desk): State<Arc<DeskState>>,
    Query(which): Query<Which>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let key = LotKey { part: which.part, lot: which.lot, day: which.day };
    let lot = workshop.lots.iter().find(|lot| lot.key() == key).ok_or_else(|| no_lot(&key.lot))?;
    let told = LotTold::of(lot, is_by_length(&workshop, &lot.part));
    Ok(change_page(&desk, texts, &workshop, &key, &Typed::of_lot(texts, lot, &told), None).await)
}

async fn change_page(
    desk: &Arc<DeskState>,
    texts: &Texts,
    workshop: &Workshop,
    key: &LotKey,
    typed: &Typed,
    trouble: Option<&str>,
) -> Response {
    let files = editing::files(desk).await.ok();
    let seen = html! {
        (marks(files.as_ref(), &[Place::Lot(key.clone())]))
        @for (name, text) in [("was_part", &key.part), ("was_lot", &key.lot), ("was_day", &key.day)] {
            input type="hidden" name=(name) value=(text);
        }
    };
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack method="post" action=(CHANGE) {
            (seen)
            (fields(texts, workshop, currency(desk), typed, false))
            p.faint { (say!(texts, "lot-drawers-stay")) }
            button.main { (say!(texts, "lot-keep")) }
        }
        form method="post" action=(STRIKE) { (seen) button.grave { (say!(texts, "lot-strike")) } }
        p.no-print { a.button.quiet href=(LOTS) { (say!(texts, "go-back")) } }
    };
    let part = workshop.part(&key.part).map_or(key.part.as_str(), |part| &part.name);
    titled(desk, texts, CHANGE, &format!("{part}: {}", key.lot), None, &main)
}

fn key_in(form: &TableForm) -> LotKey {
    let text = |name: &str| form.text(name).to_owned();
    LotKey { part: text("was_part"), lot: text("was_lot"), day: text("was_day") }
}

async fn change(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let (key, typed) = (key_in(&form), Typed::of_form(&form));
    let told = match typed.read(texts, &workshop, currency(&desk)) {
        Ok(told) => told,
        Err(words) => {
            let page = change_page(&desk, texts, &workshop, &key, &typed, Some(&words)).await;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    // Sent twice, it stands there already under what it is called now.
    let lot = workshop.lots.iter().find(|lot| lot.key() == key);
    let Some(lot) = lot else {
        let is_done = workshop.lots.iter().any(|lot| LotTold::of(lot, is_by_length(&workshop, &lot.part)) == told);
        return if is_done { Ok(Redirect::to(LOTS).into_response()) } else { Err(no_lot(&key.lot)) };
    };
    let fields = told.fields(Some(&LotTold::of(lot, is_by_length(&workshop, &lot.part))));
    let did = say!(texts, "lot-did-change", lot = told.lot.as_str());
    Ok(done_or_refused(&desk, &form, Act::TellLot { key, fields }, did, (CHANGE, LOTS)).await)
}

async fn strike(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let key = key_in(&form);
    let did = say!(form.seller.texts, "lot-did-strike", lot = key.lot.as_str());
    Ok(done_or_refused(&desk, &form, Act::StrikeLot { key }, did, (STRIKE, LOTS)).await)
}
