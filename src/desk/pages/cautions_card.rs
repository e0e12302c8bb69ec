//! The cautions of everything on the table, as a card to print and lay beside the trays, in the language of its guests.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Router,
    extract::{Query, State},
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    caution_signs,
    frame::{Tab, page},
};
use crate::{
    catalog::{Catalog, Tray},
    caution::{CautionCode, Hazard, Verdict},
    craft::{Base, Home, Piece, Wearer},
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Lang, Texts, say},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/trays/cautions", get(card))
}

#[derive(Deserialize)]
struct Asked {
    /// The card's language; the reader's where none is named, or one that there is not.
    #[serde(default)]
    lang: String,
}

/// What the whole card is written from.
struct Card<'a> {
    catalog: &'a Catalog,
    texts: &'static Texts,
}

async fn card(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    seller: Seller,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let (texts, lang) = (seller.texts, Lang::from_code(&asked.lang).unwrap_or(seller.texts.lang));
    let card = Card { catalog: &loaded.catalog, texts: Texts::of(lang) };
    let (table, region) = (card.catalog.table.name.as_str(), card.texts.region(&card.catalog.rules));
    let main = html! {
        p.row.no-print {
            button type="button" data-prints hidden { (say!(texts, "card-print")) }
            @for one in Lang::ALL {
                a.button.quiet href={ "?lang=" (one.code()) } lang=(one.code()) aria-current=[(one == lang).then_some("true")] {
                    (one.own_name())
                }
            }
            a.button.quiet href="/trays" { (say!(texts, "to-trays")) }
        }
        div.caution-card lang=(lang.code()) {
            h1 { (card.texts.with("card-title", &[("table", table.into())])) }
            p { (card.texts.with("card-about", &[("region", region.into())])) }
            @for tray in &card.catalog.trays { (card.of_tray(tray)) }
            (card.of_bases())
            (card.rules())
            p.deferral { strong { (card.t("caution-deferral")) } }
        }
    };
    Ok(page(&desk, texts, Tab::Trays, &say!(texts, "cautions-title"), &main).into_response())
}

impl Card<'_> {
    fn t(&self, key: &str) -> String {
        self.texts.get(key)
    }

    fn called<'a>(&'a self, id: &str, own: &'a str) -> &'a str {
        self.catalog.called(self.texts.lang.code(), id, own)
    }

    fn of_tray(&self, tray: &Tray) -> Markup {
        let letter = tray.letter.to_string();
        let cells = tray.compartments().filter_map(|(home, id)| Some((home, self.catalog.drop_kind(id?)?)));
        let rows = cells.map(|(home, kind)| {
            let verdicts = Wearer::ANSWERS.map(|wearer| self.catalog.drop_cautions(kind, wearer));
            (Some(home), self.called(&kind.id, &kind.name), verdicts)
        });
        let title = self.texts.with("tray", &[("letter", letter.as_str().into())]);
        self.table(&title, self.called(&letter, &tray.name), "card-drop", rows)
    }

    /// A base without drops, at its usual length.
    fn alone(&self, base: &Base, wearer: Wearer) -> Verdict {
        let piece = Piece { base: base.id.clone(), length: None, wearer, neck: None, drops: vec![], looks: vec![] };
        // A base of the catalogue by itself is always a piece of it.
        self.catalog.cautions(&piece).unwrap_or_default()
    }

    fn of_bases(&self) -> Markup {
        let rows = self.catalog.bases.iter().map(|base| {
            let verdicts = Wearer::ANSWERS.map(|wearer| self.alone(base, wearer));
            (None, self.called(&base.id, &base.name), verdicts)
        });
        self.table(&self.t("card-bases"), &self.t("card-ready"), "card-base", rows)
    }

    /// One table; what has no home on a tray, like a base, has no column for it.
    fn table<'a>(
        &self,
        title: &str,
        of: &str,
        what: &str,
        rows: impl Iterator<Item = (Option<Home>, &'a str, [Verdict; 4])>,
    ) -> Markup {
        let rows: Vec<_> = rows.collect();
        let homes = rows.iter().any(|(home, ..)| home.is_some());
        let wearers = Wearer::ANSWERS.map(|wearer| self.t(&format!("wearer-{}", wearer.code())));
        html! {
            section aria-label=(title) {
                h2 { (title) " " span.faint { (of) } }
                table {
                    thead {
                        tr {
                            @if homes { th {} }
                            th { (self.t(what)) }
                            @for wearer in &wearers { th { (wearer) } }
                        }
                    }
                    tbody {
                        @for (home, name, verdicts) in rows {
                            tr {
                                @if homes { td.home { @if let Some(home) = home { (home) } } }
                                th scope="row" { (name) }
                                @for (verdict, wearer) in verdicts.iter().zip(&wearers) {
                                    td data-band=(wearer) { (self.band(verdict)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /// The hazards in a word or two each, graver first; what has the same word is named once.
    fn words(&self, verdict: &Verdict) -> Vec<(CautionCode, String, bool)> {
        let mut words: Vec<(CautionCode, String, bool)> = Vec::new();
        for hazard in verdict.hazards() {
            let word = self.word(&hazard);
            if !words.iter().any(|(_, said, _)| *said == word) {
                words.push((hazard.code(), word, hazard.is_grave()));
            }
        }
        words
    }

    /// A hazard in a word or two, with what it rests on where that is a test or the supplier's word.
    fn word(&self, hazard: &Hazard<'_>) -> String {
        let what = self.t(&format!("code-{}", hazard.code().code()));
        let key = match hazard.spokesman().form.as_str() {
            "found" | "elsewhere" | "children" | "exempt" => "card-found",
            "declared" => "card-declared",
            _ => return what,
        };
        self.texts.with(key, &[("what", what.into())])
    }

    /// One drop for one wearer: whether it suits, and why not or what to mind.
    fn band(&self, verdict: &Verdict) -> Markup {
        let word = self.t(match (verdict.suitable, verdict.cautions.is_empty()) {
            (false, _) => "base-unfit",
            (true, false) => "card-care",
            (true, true) => "card-fine",
        });
        html! {
            (caution_signs::standing(verdict, &word))
            @if !verdict.cautions.is_empty() {
                ul {
                    @for (code, word, grave) in self.words(verdict) {
                        li .grave[grave] { (caution_signs::of(code)) (word) }
                    }
                }
            }
        }
    }

    /// The verdicts on everything by itself, for every wearer.
    fn verdicts(&self) -> impl Iterator<Item = Verdict> + '_ {
        let drops = self.catalog.drops.iter();
        let drops = drops.flat_map(|kind| Wearer::ANSWERS.map(|wearer| self.catalog.drop_cautions(kind, wearer)));
        let bases = self.catalog.bases.iter().flat_map(|base| Wearer::ANSWERS.map(|wearer| self.alone(base, wearer)));
        drops.chain(bases)
    }

    /// What each sign on the card means: every sentence that is said of something on this table, with its rule. The figures
    /// are written in English alone.
    fn rules(&self) -> Markup {
        let english = self.texts.lang == Lang::En;
        let mut said: BTreeMap<CautionCode, Vec<String>> = BTreeMap::new();
        for one in self.verdicts().flat_map(|verdict| verdict.cautions) {
            let words = self.texts.caution(&one, self.catalog);
            let sentences = said.entry(one.code).or_default();
            if !sentences.contains(&words) {
                sentences.push(words);
            }
        }
        let rules = said.iter().filter_map(|(code, sentences)| Some((self.catalog.rules.of(*code)?, sentences)));
        html! {
            section.rules aria-label=(self.t("card-signs")) {
                h2 { (self.t("card-signs")) }
                dl {
                    @for (rule, sentences) in rules {
                        dt { (caution_signs::of(rule.code)) (self.t(&format!("code-{}", rule.code.code()))) }
                        dd {
                            @for sentence in sentences { (sentence) " " }
                            span.faint {
                                (self.texts.cited_rule(rule))
                                @if english { ": " (rule.figure) }
                                "."
                                @for other in &rule.others {
                                    " " (self.texts.cited_other(other))
                                    @if english { ": " (other.figure) }
                                    "."
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
