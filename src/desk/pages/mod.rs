//! The seller's pages. Each file has one page with its routes.
//!
//! | file | look here for |
//! | --- | --- |
//! | `frame`, `words`, `inset`, `on`, `confirm` | what all pages share: head and navigation, how they say things, who does something to what, asking before what can't be taken back |
//! | `sign_in`, `sessions`, `change_pin` | choosing the PIN and signing in; who is signed in; another PIN |
//! | `staff`, `ask_seller` | helpers and their PINs; the seller's PIN for one act, on a helper's phone |
//! | `queue`, `new_sale` | all tickets, and finding one by its number; a ticket opened for a piece threaded by hand |
//! | `ticket` | one ticket, from the tick to the money |
//! | `bill`, `sales` | what is paid together, and put right; finding a sale again |
//! | `lengths` | the lengths a base is made in, as forms offer them |
//! | `paying`, `reduction`, `typed` | what every till shows and reads: ways to pay, cash given; what is taken off by hand; amounts as they are typed |
//! | `table` | the seller's own table: what lies where, what it costs, what is guessed |
//! | `waiting`, `board` | guests who wait for a seat; the board for any screen |
//! | `put_back` | where a stray drop belongs |
//! | `trays`, `counting` | counts, and the catalogue's mistakes; counting all trays on one page |
//! | `mistakes` | what is wrong in the maker's files, wherever a page tells it |
//! | `cautions_card`, `caution_signs` | the cautions of the whole table, to print; the sign of each caution |
//! | `bench` | before and after a show: how many to make, cuts, what a show came to for the maker |
//! | `show` | what a show is and came to; ending it; practice |
//! | `paper` | receipts and slips, and what became of printing them |
//! | `kiosks` | paired tablets, pairing another, and what lies on them; a phone as another till |
//! | `nowhere` | an address that leads nowhere |

mod ask_seller;
mod bench;
mod bill;
mod board;
mod caution_signs;
mod cautions_card;
mod change_pin;
mod confirm;
mod counting;
mod frame;
mod inset;
mod kiosks;
mod lengths;
mod mistakes;
mod new_sale;
mod nowhere;
mod on;
mod paper;
mod paying;
mod put_back;
mod queue;
mod reduction;
mod sales;
mod sessions;
mod show;
mod sign_in;
mod staff;
mod table;
mod ticket;
mod trays;
mod typed;
mod waiting;
mod words;

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};

use super::{seller::Seller, state::DeskState};
pub(super) use ask_seller::ask_seller;
pub(super) use frame::plain_page;
pub(super) use nowhere::{mistyped, nowhere};
pub(super) use words::sentence;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/", get(async || Redirect::to("/tickets")))
        .route("/pictures/{name}", get(picture))
        .merge(sign_in::routes())
        .merge(change_pin::routes())
        .merge(staff::routes())
        .merge(sessions::routes())
        .merge(queue::routes())
        .merge(new_sale::routes())
        .merge(ticket::routes())
        .merge(bill::routes())
        .merge(sales::routes())
        .merge(paper::routes())
        .merge(trays::routes())
        .merge(counting::routes())
        .merge(table::routes())
        .merge(put_back::routes())
        .merge(waiting::routes())
        .merge(board::routes())
        .merge(cautions_card::routes())
        .merge(show::routes())
        .merge(bench::routes())
        .merge(kiosks::routes())
}

async fn picture(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Response {
    match desk.catalog.loaded().pictures.get(&name) {
        Some(picture) => desk.gallery.drop_picture(&name, picture, &headers).await,
        None => StatusCode::NOT_FOUND.into_response(),
    }
}
