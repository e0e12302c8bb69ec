//! What pages offer and tell of paper: links to it, printing it, and what became of that.

use maud::{Markup, html};
use uuid::Uuid;

use super::facts::paid_in;
use crate::{
    desk::{
        printing::{Fault, Printed, What},
        state::DeskState,
    },
    lang::{Lang, Texts, say},
    ledger::{Bill, Ticket},
};

/// A paper that a page offers.
struct Offer {
    what: What,
    /// The ticket or bill, and the address of its page.
    of: Uuid,
    page: String,
}

impl Offer {
    const fn file(&self) -> &'static str {
        match self.what {
            What::Receipt => "receipt.pdf",
            What::Slip => "slip.pdf",
        }
    }

    fn link(&self, texts: &Texts) -> String {
        match self.what {
            What::Receipt => say!(texts, "paper-link-receipt"),
            What::Slip => say!(texts, "paper-link-slip"),
        }
    }

    fn print_address(&self) -> String {
        match self.what {
            What::Receipt => format!("{}/print-receipt", self.page),
            What::Slip => format!("{}/print-slip", self.page),
        }
    }

    fn print(&self, texts: &Texts) -> String {
        match self.what {
            What::Receipt => say!(texts, "paper-print-receipt"),
            What::Slip => say!(texts, "paper-print-slip"),
        }
    }
}

/// The slip of a ticket, and the receipt once something was paid.
pub(in crate::desk::pages) fn of_ticket(
    desk: &DeskState,
    texts: &Texts,
    ticket: &Ticket,
    bill: Option<&Bill>,
) -> Markup {
    let page = format!("/tickets/{}", ticket.id);
    let mut offers = Vec::new();
    if let Some(bill) = bill.filter(|bill| paid_in(bill).is_some()) {
        offers.push(Offer { what: What::Receipt, of: bill.id, page: page.clone() });
    }
    let along = format!("{page}/card.pdf");
    offers.push(Offer { what: What::Slip, of: ticket.id, page });
    card(desk, texts, &offers, Some(&along))
}

/// The receipt of a bill, once something was paid.
pub(in crate::desk::pages) fn of_bill(desk: &DeskState, texts: &Texts, bill: &Bill) -> Markup {
    if paid_in(bill).is_none() {
        return html! {};
    }
    card(desk, texts, &[Offer { what: What::Receipt, of: bill.id, page: format!("/bills/{}", bill.id) }], None)
}

/// What is offered; `along` is the card that goes along with a piece.
fn card(desk: &DeskState, texts: &Texts, offers: &[Offer], along: Option<&str>) -> Markup {
    let has_printer = desk.catalog.loaded().catalog.table.paper.printer.is_some();
    let all = desk.printing.all();
    let told = |offer: &Offer| all.iter().rev().find(|one| (one.what, one.of) == (offer.what, offer.of)).cloned();
    html! {
        section.card.paper #paper data-key="paper" aria-label=(say!(texts, "paper-heading")) {
            div.row.wraps {
                @for offer in offers {
                    a.button.quiet href={ (offer.page) "/" (offer.file()) } target="_blank" rel="noopener" {
                        (offer.link(texts)) " (PDF)"
                    }
                    @if has_printer {
                        form method="post" action=(offer.print_address()) { button { (offer.print(texts)) } }
                    }
                }
            }
            @if let Some(along) = along {
                p.links { a href=(along) target="_blank" rel="noopener" { (say!(texts, "paper-link-card")) " (PDF)" } }
            }
            @for one in offers.iter().filter_map(told) {
                @match &one.became {
                    None => { p.faint role="status" { (say!(texts, "paper-printing", what = called(texts, &one))) } }
                    Some(Ok(())) => { p.good role="status" { (say!(texts, "paper-printed", what = called(texts, &one))) } }
                    // On top of every page stands the way to try it again.
                    Some(Err(fault)) => { p.trouble { (words(texts, fault)) } }
                }
            }
            @for offer in offers.iter().filter(|offer| offer.what == What::Receipt) { (in_languages(texts, offer, has_printer)) }
        }
    }
}

/// The same paper in the other languages, for the guest; a slip stays with whoever works here.
fn in_languages(texts: &Texts, offer: &Offer, has_printer: bool) -> Markup {
    html! {
        details {
            summary { (say!(texts, "paper-in-language")) }
            @for lang in Lang::ALL.into_iter().filter(|lang| *lang != texts.lang) {
                div.row.wraps lang=(lang.code()) {
                    span { (lang.own_name()) }
                    a.button.quiet href={ (offer.page) "/" (offer.file()) "?language=" (lang.code()) } target="_blank" rel="noopener" {
                        (offer.link(Texts::of(lang))) " (PDF)"
                    }
                    @if has_printer {
                        form method="post" action=(offer.print_address()) {
                            button.quiet name="language" value=(lang.code()) { (offer.print(Texts::of(lang))) }
                        }
                    }
                }
            }
        }
    }
}

fn called(texts: &Texts, one: &Printed) -> String {
    match one.what {
        What::Receipt => say!(texts, "paper-what-receipt", number = one.number.as_str()),
        What::Slip => say!(texts, "paper-what-slip", number = one.number.as_str()),
    }
}

/// What every page says of prints from which something kept the printer.
pub(in crate::desk::pages) fn banners(desk: &DeskState, texts: &Texts) -> Markup {
    let all = desk.printing.all();
    html! {
        @for one in &all {
            @if let Some(Err(fault)) = &one.became {
                div.banner data-key={ "print-" (one.id) } role="alert" {
                    p {
                        strong { (words(texts, fault)) } " "
                        @if *fault != Fault::Unsure { (say!(texts, "paper-not-printed", what = called(texts, one))) }
                        @else { (called(texts, one)) }
                    }
                    div.row.wraps {
                        form method="post" action="/printer/again" {
                            button name="print" value=(one.id) { (say!(texts, "paper-again")) }
                        }
                        form method="post" action="/printer/leave" {
                            button.quiet name="print" value=(one.id) { (say!(texts, "paper-leave")) }
                        }
                    }
                }
            }
        }
    }
}

fn words(texts: &Texts, fault: &Fault) -> String {
    match fault {
        Fault::Silent => say!(texts, "paper-silent"),
        Fault::Jammed => say!(texts, "paper-jammed"),
        Fault::BrokeOff => say!(texts, "paper-broke-off"),
        Fault::Full => say!(texts, "paper-full"),
        Fault::Missing => say!(texts, "paper-missing"),
        Fault::Unsure => say!(texts, "paper-unsure"),
        Fault::Busy => say!(texts, "paper-busy"),
        Fault::Other(why) => say!(texts, "paper-other", why = why.as_str()),
    }
}
