//! What the seller is asked where a ticket's sum is none of this table's.

use maud::{Markup, html};

use crate::ledger::{SumDoubt, Ticket};

/// The question, with both sums; nothing where there is no doubt.
pub(super) fn question(ticket: &Ticket) -> Markup {
    let Some(doubt) = ticket.sum_doubt else { return html! {} };
    let plain = |amount| ticket.quote.currency.plain(amount);
    let action = format!("/tickets/{}/sum", ticket.id);
    html! {
        div.doubt #sum {
            p.grave {
                @match doubt {
                    SumDoubt::NotOurs => {
                        "The tablet showed the guest " strong { (plain(ticket.quote.total)) }
                        ", which these parts never cost at this table."
                    }
                    SumDoubt::Currency => {
                        "The tablet showed the guest " strong { (plain(ticket.quote.total)) } " in "
                        (ticket.quote.currency.code) ", which this table does not take any more."
                    }
                }
                " What is charged?"
            }
            form method="post" action=(action) {
                @if doubt == SumDoubt::NotOurs {
                    button.wide name="charge" value="seen" { "What the guest saw, " (plain(ticket.quote.total)) }
                }
                button.wide name="charge" value="today" {
                    "Today’s prices"
                    @if let (SumDoubt::NotOurs, Some(today)) = (doubt, ticket.total_by_catalog) { ", " (plain(today)) }
                }
            }
        }
    }
}
