//! The lists of cuts that are worked on.

use maud::{Markup, html};

use crate::{
    bench::{CUT_LISTS, CutList},
    desk::{refusal::Refusal, state::DeskState},
    lang::{Texts, say},
    ledger::KeptPage,
};

/// The lists that are not put away, the newest last.
pub(super) async fn kept_lists(desk: &DeskState) -> Result<Vec<KeptPage<CutList>>, Refusal> {
    let mut lists = desk.ledger.look(|ledger| ledger.pages::<CutList>(CUT_LISTS)).await?;
    lists.retain(|kept| !kept.page.gone);
    Ok(lists)
}

/// The way to the lists that are worked on.
pub(super) fn links_to(texts: &Texts, lists: &[KeptPage<CutList>]) -> Markup {
    html! {
        @if !lists.is_empty() {
            section.card.no-print aria-label=(say!(texts, "cuts-kept")) {
                h2 { (say!(texts, "cuts-kept")) }
                ul.links {
                    @for kept in lists {
                        @let done = kept.page.lines.iter().filter(|line| line.done).count();
                        li {
                            a href={ "/bench/cuts/" (kept.id) } { (kept.page.name) } " "
                            (say!(texts, "cuts-done", n = done, all = kept.page.lines.len()))
                        }
                    }
                }
            }
        }
    }
}
