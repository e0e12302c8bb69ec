//! Asking for the seller's PIN on a helper's phone, for one act.

use axum::response::Html;
use maud::html;

use super::{
    frame::plain_page,
    sign_in::{alert, pin_input},
};
use crate::desk::{approval::SELLER_PIN, refusal::SellerAsked};

/// The page: what it is for, what was to be sent, and a field for the PIN. An open page that renews itself lets it stand.
pub(in crate::desk) fn ask_seller(asked: &SellerAsked) -> Html<String> {
    plain_page(
        "The seller’s PIN",
        &html! {
            section.card.ask data-stands {
                h1 { "This needs the seller’s PIN" }
                p {
                    (asked.what) " is the seller’s to do. With the seller’s PIN it is done this once, and you stay signed in as "
                    strong { (asked.helper) } "."
                }
                (alert(asked.trouble.as_deref()))
                form.stack method="post" action=(asked.action) {
                    @for (name, value) in &asked.fields { input type="hidden" name=(name) value=(value); }
                    // A phone must not offer to keep the PIN of somebody else.
                    label { "The seller’s PIN" (pin_input(SELLER_PIN, "one-time-code")) }
                    div.row {
                        button.main { "Do it" }
                        a.button.quiet href=(asked.back) { "Go back" }
                    }
                }
            }
        },
    )
}
