//! What the seller is asked where a ticket's sum is none of this table's.

use maud::{Markup, html};

use super::view::View;
use crate::{
    desk::pages::inset::{HERE, inset},
    lang::say,
    ledger::SumDoubt,
};

impl View {
    /// The question, with both sums; nothing where there is no doubt.
    pub(super) fn which_sum(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let Some(doubt) = ticket.sum_doubt else { return html! {} };
        let seen = self.money(ticket.quote.total);
        let asked = match doubt {
            SumDoubt::NotOurs => say!(texts, "which-not-ours", sum = HERE),
            SumDoubt::Currency => {
                say!(texts, "which-currency", sum = HERE, currency = ticket.quote.currency.code)
            }
        };
        let today = match (doubt, ticket.total_by_catalog) {
            (SumDoubt::NotOurs, Some(today)) => say!(texts, "which-today-sum", sum = self.money(today)),
            _ => say!(texts, "which-today"),
        };
        html! {
            div.doubt #sum {
                p.grave { (inset(&asked, &html! { strong { (seen) } })) }
                form method="post" action=(self.action("sum")) {
                    @if doubt == SumDoubt::NotOurs {
                        button.wide name="charge" value="seen" { (say!(texts, "which-seen", sum = seen)) }
                    }
                    button.wide name="charge" value="today" { (today) }
                }
            }
        }
    }
}
