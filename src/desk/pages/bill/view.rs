//! Reading a bill with all that its page shows, and the page as a whole.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    response::{IntoResponse, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::{
    catalog::{Catalog, Loaded},
    desk::{
        pages::frame::{Tab, page},
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    ledger::{Bill, BillSum, Ticket},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bills/{id}", get(show))
}

/// Everything the page shows.
pub(super) struct View {
    pub(super) bill: Bill,
    /// Its tickets, in its order.
    pub(super) tickets: Vec<Ticket>,
    pub(super) sum: BillSum,
    pub(super) loaded: Arc<Loaded>,
    pub(super) now: Timestamp,
}

async fn show(State(desk): State<Arc<DeskState>>, _seller: Seller, Path(id): Path<Uuid>) -> Result<Response, Refusal> {
    with_trouble(&desk, id, None).await
}

/// The bill's page, with what went wrong on top.
pub(super) async fn with_trouble(desk: &DeskState, id: Uuid, trouble: Option<&str>) -> Result<Response, Refusal> {
    let (bill, tickets, sum) = desk.ledger.look(move |ledger| ledger.bill(id)).await?;
    let title = format!("Bill {}", bill.number);
    let view = View { bill, tickets, sum, loaded: desk.catalog.loaded(), now: desk.clock.now() };
    Ok(page(desk, Tab::Tickets, &title, &view.content(trouble)).into_response())
}

impl View {
    /// The catalogue as it is now.
    pub(super) fn catalog(&self) -> &Catalog {
        &self.loaded.catalog
    }

    /// An amount in the bill's own currency.
    pub(super) fn money(&self, amount: Decimal) -> String {
        self.bill.rules.currency.plain(amount)
    }

    /// The address of something that is done to the bill.
    pub(super) fn action(&self, verb: &str) -> String {
        format!("/bills/{}/{verb}", self.bill.id)
    }

    /// Whether everything on it is paid, and nothing more than that.
    pub(super) fn is_settled(&self) -> bool {
        self.sum.left.is_zero() && !self.sum.waits
    }

    fn content(&self, trouble: Option<&str>) -> Markup {
        html! {
            @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
            div.bench {
                div.work {
                    section.card data-key="items" aria-label="On the bill" {
                        h1 { "Bill " span.number { (self.bill.number) } }
                        (self.pieces())
                        (self.goods())
                    }
                    (self.more())
                }
                div.work {
                    (self.counter())
                    (self.past())
                }
            }
        }
    }
}
