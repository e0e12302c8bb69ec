//! The page of a ticket that can't be read: what is still known of it, and what to do.

use axum::response::{IntoResponse, Response};
use maud::html;

use crate::{
    desk::{
        pages::{
            frame::{Tab, page},
            words,
        },
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::Event,
};

/// What is still known of such a ticket.
pub(super) struct Unreadable {
    /// The number that the guest has.
    pub number: String,
    /// What is wrong with it.
    pub why: String,
    /// What happened to it, as far as that can be read.
    pub history: Vec<Event>,
}

impl Unreadable {
    /// The page that says so, and what to do.
    pub(super) fn page(&self, desk: &DeskState, texts: &Texts) -> Response {
        let now = desk.clock.now();
        let main = html! {
            section.card {
                h1.number { (self.number) }
                p.trouble role="alert" { (say!(texts, "unreadable-why")) }
                p { (say!(texts, "unreadable-what-to-do")) }
                p.faint { (say!(texts, "unreadable-technical", why = self.why.as_str())) }
                h2 { (say!(texts, "history-title")) }
                ol {
                    @for event in &self.history {
                        li { span.faint { (words::clock(texts, event.at, now)) } " " (event.kind.replace('_', " ")) }
                    }
                }
                p { a.button.quiet href="/tickets" { (say!(texts, "queue-all")) } }
            }
        };
        page(desk, texts, Tab::Tickets, &say!(texts, "ticket-title", number = self.number.as_str()), &main)
            .into_response()
    }
}
