//! Reading a bill with all that its page shows, and the page as a whole.

use std::sync::Arc;

use axum::{Router, http::StatusCode, response::IntoResponse, routing::get};
use jiff::Timestamp;
use maud::{Markup, html};
use rust_decimal::Decimal;

use crate::{
    catalog::{Catalog, Loaded},
    desk::{
        pages::{
            frame::{Tab, page},
            inset::{HERE, inset},
            on::{Answered, On},
            paper, words,
        },
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::{Bill, BillSum, Ticket},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bills/{id}", get(show))
}

/// Everything the page shows.
pub(super) struct View {
    pub(super) texts: &'static Texts,
    pub(super) bill: Bill,
    /// Its tickets, in its order.
    pub(super) tickets: Vec<Ticket>,
    pub(super) sum: BillSum,
    pub(super) loaded: Arc<Loaded>,
    pub(super) now: Timestamp,
    /// The receipt.
    pub(super) paper: Markup,
}

async fn show(on: On) -> Answered {
    with(&on, None).await
}

/// The bill's page, with what went wrong on top.
pub(super) async fn with_trouble(on: &On, status: StatusCode, trouble: &str) -> Answered {
    Ok((status, with(on, Some(trouble)).await?).into_response())
}

async fn with(on: &On, trouble: Option<&str>) -> Answered {
    let (desk, texts, id) = (&on.desk, on.texts(), on.id);
    let (bill, tickets, sum) = desk.ledger.look(move |ledger| ledger.bill(id)).await?;
    let title = say!(texts, "bill-title", number = bill.number.to_string());
    let paper = paper::of_bill(desk, texts, &bill);
    let view = View { texts, paper, bill, tickets, sum, loaded: desk.catalog.loaded(), now: desk.clock.now() };
    Ok(page(desk, texts, Tab::Tickets, &title, &view.content(trouble)).into_response())
}

impl View {
    /// The catalogue as it is now.
    pub(super) fn catalog(&self) -> &Catalog {
        &self.loaded.catalog
    }

    /// An amount in the bill's own currency.
    pub(super) fn money(&self, amount: Decimal) -> String {
        words::money(self.texts, amount, self.bill.rules.currency)
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
        let number = html! { span.number { (self.bill.number) } };
        html! {
            @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
            div.bench {
                div.work {
                    section.card data-key="items" aria-label=(say!(self.texts, "bill-items")) {
                        h1 { (inset(&say!(self.texts, "bill-title", number = HERE), &number)) }
                        (self.pieces())
                        (self.goods())
                    }
                    (self.more())
                }
                div.work {
                    (self.counter())
                    (self.paper)
                    (self.past())
                }
            }
        }
    }
}
