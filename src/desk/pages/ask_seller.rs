//! Asking for the seller's PIN on a helper's phone, for one act.

use axum::response::Html;
use maud::html;

use super::{
    frame::plain_page,
    sign_in::{alert, pin_field},
};
use crate::{
    desk::{
        approval::{SELLER_PIN, STOOD_ON},
        refusal::SellerAsked,
    },
    lang::{Texts, say},
};

/// The page: what it is for, what was to be sent, and a field for the PIN. An open page that renews itself lets it stand.
pub(in crate::desk) fn ask_seller(texts: &Texts, asked: &SellerAsked) -> Html<String> {
    plain_page(
        texts,
        &say!(texts, "sellers-pin"),
        &html! {
            section.card.ask data-stands {
                h1 { (say!(texts, "needs-sellers-pin")) }
                p {
                    (say!(texts, "sellers-this-once", what = texts.say(&asked.what), helper = asked.helper.as_str()))
                }
                (alert(texts, asked.trouble.as_ref()))
                form.stack method="post" action=(asked.action) {
                    @for (name, value) in &asked.fields { input type="hidden" name=(name) value=(value); }
                    input type="hidden" name=(STOOD_ON) value=(asked.back);
                    // A phone must not offer to keep the PIN of somebody else.
                    (pin_field(texts, &say!(texts, "sellers-pin"), SELLER_PIN, "one-time-code"))
                    div.row {
                        button.main { (say!(texts, "do-it")) }
                        a.button.quiet href=(asked.back) { (say!(texts, "go-back")) }
                    }
                }
            }
        },
    )
}
