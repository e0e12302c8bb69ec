//! Where a lot may be: all of it in figures, and the sold pieces by the hundred.

use std::collections::BTreeMap;

use maud::{Markup, html};

use super::in_query;
use crate::{
    bench::Recall,
    catalog::Catalog,
    desk::pages::words,
    lang::{Texts, say},
};

/// So many sold pieces stand on one page.
const AT_ONCE: usize = 100;

/// Where a lot may be, with its sold pieces from place `from` on.
pub(super) fn card(texts: &Texts, catalog: &Catalog, recall: &Recall, from: usize) -> Markup {
    let name = |id: &String| words::part_name(texts, catalog, id).into_owned();
    let names = |ids: &mut dyn Iterator<Item = &String>| ids.map(name).collect::<Vec<_>>().join(", ");
    // The same few sets of parts stand in all of them.
    let mut said = BTreeMap::new();
    let all = recall.sold.len();
    let from = if from < all { from - from % AT_ONCE } else { 0 };
    let shown = &recall.sold[from..all.min(from + AT_ONCE)];
    html! {
        section.card #recall aria-label=(say!(texts, "lots-where", lot = recall.lot.as_str())) {
            h2 { (say!(texts, "lots-where", lot = recall.lot.as_str())) }
            @if recall.used_in.is_empty() { p { (say!(texts, "lots-used-nowhere")) } }
            @else { p { (say!(texts, "lots-used-in", what = names(&mut recall.used_in.iter()))) } }
            @if !recall.there.is_empty() {
                p.grave { (say!(texts, "lots-take-out")) }
                ul { @for (id, count) in &recall.there { li { (count) " × " (name(id)) } } }
            }
            p { strong { (say!(texts, "lots-sold", n = all)) } }
            @if all > 0 {
                (figures(texts, recall))
                @if all > AT_ONCE { p { (say!(texts, "lots-shown", from = from + 1, to = from + shown.len(), all = all)) } }
                ul.differences {
                    @for one in shown {
                        li {
                            a href={ "/tickets/" (one.ticket.id) } { (one.ticket.number) } " · "
                            (say!(texts, "show-name", show = one.ticket.show)) " · " (words::day(texts, one.ticket.at)) " · "
                            (words::state_word(texts, one.ticket.state)) br;
                            span.faint { (said.entry(&one.by).or_insert_with(|| names(&mut one.by.iter()))) }
                        }
                    }
                }
                (further(texts, recall, from))
            }
            p.faint { (say!(texts, "lots-worst")) }
        }
    }
}

/// How many in which show, and where they are.
fn figures(texts: &Texts, recall: &Recall) -> Markup {
    let show = |(show, n): (i64, usize)| format!("{}: {n}", say!(texts, "show-name", show = show));
    let shows: Vec<String> = recall.by_show().into_iter().map(show).collect();
    let states = recall.by_state();
    let states: Vec<String> =
        states.into_iter().map(|(state, n)| format!("{}: {n}", words::state_word(texts, state))).collect();
    html! {
        p { (say!(texts, "lots-by-show", what = shows.join(" · "))) }
        p { (say!(texts, "lots-by-state", what = states.join(" · "))) }
    }
}

/// The ways to the other sold pieces, and to all of them as a file.
fn further(texts: &Texts, recall: &Recall, from: usize) -> Markup {
    let lot = in_query(&recall.lot);
    let all = recall.sold.len();
    html! {
        p.row.wraps.no-print {
            @if from > 0 {
                a.button.quiet href={ "/bench/lots?lot=" (lot) "&from=" (from - AT_ONCE) "#recall" } { (say!(texts, "lots-earlier")) }
            }
            @if from + AT_ONCE < all {
                a.button.quiet href={ "/bench/lots?lot=" (lot) "&from=" (from + AT_ONCE) "#recall" } { (say!(texts, "lots-later")) }
            }
            a href={ "/bench/lots/recall.csv?lot=" (lot) } download { (say!(texts, "lots-all-file")) }
        }
    }
}
