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
    lang::{Lang, Texts},
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
    pub(super) fn page(&self, desk: &DeskState) -> Response {
        let now = desk.clock.now();
        let main = html! {
            section.card {
                h1.number { (self.number) }
                p.trouble role="alert" { "This ticket can’t be read: its entry in the ledger is damaged." }
                p { "All other tickets are as they were. Look at the guest’s piece and let them send it once more; what this \
                     one holds is free again when the show is closed. A backup from before may have it whole." }
                p.faint { "For whoever looks into the ledger: " (self.why) }
                h2 { "What happened so far" }
                ol {
                    @for event in &self.history {
                        li { span.faint { (words::clock(Texts::of(Lang::En), event.at, now)) } " " (event.kind.replace('_', " ")) }
                    }
                }
                p { a.button.quiet href="/tickets" { "To all tickets" } }
            }
        };
        page(desk, Tab::Tickets, &format!("Ticket {}", self.number), &main).into_response()
    }
}
