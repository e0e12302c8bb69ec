//! Paper by its addresses: a PDF to look at, printing, and a print that is tried again.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, Query, State},
    http::{HeaderMap, HeaderValue, StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use serde::Deserialize;
use uuid::Uuid;

use super::facts::{Facts, PaidBill, paid_in, picture};
use crate::{
    catalog::{Loaded, Printer},
    desk::{
        outward::Reach,
        printing::{Job, What},
        refusal::Refusal,
        return_page::ReturnPage,
        seller::Seller,
        state::DeskState,
    },
    lang::{Lang, Texts, message},
    ledger::{Ledger, LedgerError, Ticket},
    paper::{Document, Receipt, Sheet, Slip, pdf, roll},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/tickets/{id}/receipt.pdf", get(receipt_of_ticket))
        .route("/tickets/{id}/slip.pdf", get(slip_of_ticket))
        .route("/tickets/{id}/print-receipt", post(print_receipt_of_ticket))
        .route("/tickets/{id}/print-slip", post(print_slip))
        .route("/bills/{id}/receipt.pdf", get(receipt_of_bill))
        .route("/bills/{id}/print-receipt", post(print_receipt_of_bill))
        .route("/printer/again", post(again))
        .route("/printer/leave", post(leave))
}

#[derive(Deserialize)]
pub(super) struct Wanted {
    /// The guest's language; without it, the seller's own.
    #[serde(default)]
    language: String,
}

impl Wanted {
    pub(super) fn texts(&self, seller: &Seller) -> Result<&'static Texts, Refusal> {
        if self.language.is_empty() {
            return Ok(seller.texts);
        }
        let lang = Lang::from_code(&self.language).ok_or_else(|| Refusal::wrong(message!("refused-language")))?;
        Ok(Texts::of(lang))
    }
}

/// What a receipt is asked by.
#[derive(Clone, Copy)]
enum By {
    Ticket(Uuid),
    Bill(Uuid),
}

/// The bill by itself, or that of a ticket; none where the ticket has none.
fn read_bill(ledger: &Ledger, by: By) -> Result<Option<PaidBill>, LedgerError> {
    let id = match by {
        By::Bill(id) => id,
        By::Ticket(id) => match ledger.ticket(id)?.bill {
            Some(id) => id,
            None => return Ok(None),
        },
    };
    let (bill, tickets, sum) = ledger.bill(id)?;
    let show = paid_in(&bill).map_or(bill.show, |(show, _)| show);
    Ok(Some(PaidBill { about: ledger.about_show(show)?, bill, tickets, sum }))
}

async fn receipt(desk: &DeskState, texts: &'static Texts, by: By) -> Result<(Uuid, Receipt), Refusal> {
    let paid = desk.ledger.look(move |ledger| read_bill(ledger, by)).await?;
    let paid = paid.ok_or_else(|| Refusal::Said(StatusCode::CONFLICT, message!("paper-no-bill")))?;
    let when = paid_in(&paid.bill);
    let when = when.ok_or_else(|| Refusal::Said(StatusCode::CONFLICT, message!("paper-nothing-paid")))?;
    let loaded = desk.catalog.loaded();
    let facts = Facts { texts, catalog: &loaded.catalog, practice: desk.practice.is_on() };
    Ok((paid.bill.id, facts.receipt(&paid, when)))
}

/// The slip of a ticket without its picture, and what that is made of.
async fn slip(
    desk: &DeskState,
    texts: &'static Texts,
    id: Uuid,
    headers: &HeaderMap,
) -> Result<(Slip, Ticket, Arc<Loaded>), Refusal> {
    let (ticket, gift) = desk
        .ledger
        .look(move |ledger| {
            let ticket = ledger.ticket(id)?;
            let bill = ticket.bill.map(|bill| ledger.bill(bill)).transpose()?;
            let gift = bill.is_some_and(|(bill, ..)| bill.tickets.iter().any(|on| on.id == id && on.gift));
            Ok((ticket, gift))
        })
        .await?;
    let loaded = desk.catalog.loaded();
    let facts = Facts { texts, catalog: &loaded.catalog, practice: desk.practice.is_on() };
    let address = Reach::of(desk, headers).likeliest();
    Ok((facts.slip(&ticket, gift, address.as_deref()), ticket, loaded))
}

/// A document as a file that a browser shows.
pub(super) async fn shown(
    desk: &DeskState,
    name: String,
    make: impl FnOnce() -> Document + Send + 'static,
) -> Result<Response, Refusal> {
    let sheet = Sheet::of(desk.catalog.loaded().catalog.table.region);
    let made = tokio::task::spawn_blocking(move || pdf(&make(), sheet)).await;
    let file = match made {
        Ok(Ok(file)) => file,
        Ok(Err(error)) => return Err(not_made(&error.to_string())),
        Err(error) => return Err(not_made(&error.to_string())),
    };
    Ok(as_pdf(&name, file))
}

/// A PDF file of this name, to be looked at in the browser.
pub(in crate::desk::pages) fn as_pdf(name: &str, file: Vec<u8>) -> Response {
    let place = HeaderValue::from_str(&format!("inline; filename=\"{name}.pdf\""));
    let place = place.unwrap_or(HeaderValue::from_static("inline"));
    let kind = HeaderValue::from_static("application/pdf");
    ([(header::CONTENT_TYPE, kind), (header::CONTENT_DISPOSITION, place)], file).into_response()
}

/// Why a paper is not made is the log's and the reader's.
pub(in crate::desk::pages) fn not_made(why: &str) -> Refusal {
    tracing::error!("a paper could not be made: {why}");
    Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("paper-not-made", why = why))
}

async fn receipt_of_ticket(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    show_receipt(&desk, wanted.texts(&seller)?, By::Ticket(id)).await
}

async fn receipt_of_bill(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    show_receipt(&desk, wanted.texts(&seller)?, By::Bill(id)).await
}

async fn show_receipt(desk: &DeskState, texts: &'static Texts, by: By) -> Result<Response, Refusal> {
    let (_, receipt) = receipt(desk, texts, by).await?;
    shown(desk, format!("receipt-{}", receipt.number), move || receipt.document(texts)).await
}

async fn slip_of_ticket(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    let texts = wanted.texts(&seller)?;
    let (slip, ticket, loaded) = slip(&desk, texts, id, &headers).await?;
    let make = move || Slip { picture: picture(&loaded, &ticket.piece), ..slip }.document(texts);
    shown(&desk, format!("slip-{}", ticket.number), make).await
}

/// The table's printer.
fn printer(desk: &DeskState) -> Result<Printer, Refusal> {
    let printer = desk.catalog.loaded().catalog.table.paper.printer.clone();
    printer.ok_or_else(|| Refusal::Said(StatusCode::CONFLICT, message!("paper-no-printer")))
}

async fn print_receipt_of_ticket(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(wanted): Form<Wanted>,
) -> Result<Response, Refusal> {
    print_receipt(&desk, wanted.texts(&seller)?, By::Ticket(id)).await?;
    Ok(Redirect::to(&format!("/tickets/{id}#paper")).into_response())
}

async fn print_receipt_of_bill(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(wanted): Form<Wanted>,
) -> Result<Response, Refusal> {
    print_receipt(&desk, wanted.texts(&seller)?, By::Bill(id)).await?;
    Ok(Redirect::to(&format!("/bills/{id}#paper")).into_response())
}

async fn print_receipt(desk: &DeskState, texts: &'static Texts, by: By) -> Result<(), Refusal> {
    let printer = printer(desk)?;
    let (bill, receipt) = receipt(desk, texts, by).await?;
    let columns = desk.catalog.loaded().catalog.table.paper.columns;
    let number = receipt.number.clone();
    let make = move || roll(&receipt.document(texts), columns, false);
    desk.printing.add(Job::new(What::Receipt, bill, number, make), printer);
    Ok(())
}

async fn print_slip(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    headers: HeaderMap,
    Form(wanted): Form<Wanted>,
) -> Result<Response, Refusal> {
    let (texts, printer) = (wanted.texts(&seller)?, printer(&desk)?);
    let (slip, ticket, loaded) = slip(&desk, texts, id, &headers).await?;
    let number = ticket.number.to_string();
    let make = move || {
        let paper = &loaded.catalog.table.paper;
        let picture = paper.slip_picture.then(|| picture(&loaded, &ticket.piece)).flatten();
        roll(&Slip { picture, ..slip }.document(texts), paper.columns, true)
    };
    desk.printing.add(Job::new(What::Slip, id, number, make), printer);
    Ok(Redirect::to(&format!("/tickets/{id}#paper")).into_response())
}

#[derive(Deserialize)]
struct OfPrint {
    print: u64,
}

async fn again(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    led: ReturnPage,
    Form(of): Form<OfPrint>,
) -> Result<Response, Refusal> {
    desk.printing.again(of.print, printer(&desk)?);
    Ok(Redirect::to(led.page()).into_response())
}

async fn leave(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    led: ReturnPage,
    Form(of): Form<OfPrint>,
) -> Response {
    desk.printing.leave(of.print);
    Redirect::to(led.page()).into_response()
}
