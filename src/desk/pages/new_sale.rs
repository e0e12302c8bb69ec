//! A ticket opened at the desk, for a piece that was threaded by hand: base, and drops by their homes or by pictures.
//!
//! What was chosen so far stands in the address, so that nothing is kept at the desk before the ticket is opened, and a
//! page that renews itself shows the same again.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Form, Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::{
    frame::{Tab, page},
    words,
};
use crate::{
    catalog::{Catalog, Loaded, PieceError},
    craft::{DropKind, Home, Piece, Wearer},
    desk::{
        refusal::{Refusal, status_of},
        seller::Seller,
        state::DeskState,
    },
    lang::{Lang, Texts, say},
    ledger::{Count, LedgerError},
    money::Quote,
    ticket::TicketNumber,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/new", get(choose).post(open))
}

/// No piece has more drops; more is a slip.
const MOST_DROPS: usize = 200;
/// What is longer is no home.
const LONGEST_HOME: usize = 20;

/// What the form says.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Chosen {
    /// Makes one ticket of a form that is sent twice.
    id: Option<Uuid>,
    base: String,
    /// The homes of the drops, left to right, as typed: `B3 B3 C10`.
    homes: String,
    /// A home that was touched.
    add: String,
    /// The place among the homes of one that is taken away again.
    off: Option<usize>,
    /// Who it is for, as said before, and as touched now.
    wearer: String,
    #[serde(rename = "for")]
    is_for: String,
    /// What the count says is not left lies before the seller.
    found: u8,
    /// The number of a ticket whose piece is the beginning.
    from: String,
}

/// A piece as far as it is chosen.
struct Draft<'a> {
    id: Uuid,
    base: &'a str,
    wearer: Wearer,
    /// Every home as it was typed or touched, with the drop that lives there.
    homes: Vec<(String, Option<&'a DropKind>)>,
}

impl Chosen {
    /// Takes the base, the wearer and the drops of a piece that there is already; what the catalogue does not have any more
    /// is left out.
    fn begin_with(&mut self, piece: &Piece, catalog: &Catalog) {
        self.base.clone_from(&piece.base);
        piece.wearer.code().clone_into(&mut self.wearer);
        let homes = piece.drops.iter().filter_map(|id| catalog.drop_kind(id)).map(|kind| kind.home.to_string());
        self.homes = homes.collect::<Vec<_>>().join(" ");
    }

    /// Reads what was chosen against the catalogue.
    fn draft<'a>(&self, catalog: &'a Catalog, counts: &BTreeMap<String, Count>) -> Draft<'a> {
        let typed = self.homes.split(|c: char| c.is_whitespace() || c == ',' || c == ';');
        let typed = typed.chain([self.add.as_str()]).filter(|text| !text.is_empty()).take(MOST_DROPS);
        let read = |text: &str| {
            let text: String = text.chars().take(LONGEST_HOME).collect::<String>().to_ascii_uppercase();
            let kind = text.parse::<Home>().ok().and_then(|home| catalog.drop_at(home));
            (text, kind)
        };
        let mut homes: Vec<_> = typed.map(read).collect();
        if let Some(at) = self.off.filter(|at| *at < homes.len()) {
            homes.remove(at);
        }
        let in_stock = |id: &str| counts.get(id).is_some_and(|count| count.free() > 0);
        let named = catalog.bases.iter().find(|base| base.id == self.base);
        let base = named.or_else(|| catalog.bases.iter().find(|base| in_stock(&base.id))).or(catalog.bases.first());
        // Not said, a young child is possible.
        let said = Wearer::from_code(&self.is_for).or_else(|| Wearer::from_code(&self.wearer));
        Draft {
            id: self.id.unwrap_or_else(Uuid::now_v7),
            base: base.map_or("", |base| base.id.as_str()),
            wearer: said.unwrap_or(Wearer::Unknown),
            homes,
        }
    }
}

impl Draft<'_> {
    fn piece(&self, catalog: &Catalog) -> Piece {
        Piece {
            base: self.base.to_owned(),
            length: catalog.base(self.base).and_then(|base| base.usual_length()),
            wearer: self.wearer,
            neck: None,
            drops: self.drops().map(|(_, kind)| kind.id.clone()).collect(),
        }
    }

    /// The drops, left to right, with their places among the homes.
    fn drops(&self) -> impl Iterator<Item = (usize, &DropKind)> {
        self.homes.iter().enumerate().filter_map(|(at, (_, kind))| Some((at, (*kind)?)))
    }

    /// The homes as text.
    fn typed(&self) -> String {
        self.homes.iter().map(|(text, _)| text.as_str()).collect::<Vec<_>>().join(" ")
    }

    /// What is said of homes at which no drop lives.
    fn unknown_words(&self) -> Option<String> {
        let unknown = self.homes.iter().filter(|(_, kind)| kind.is_none());
        let names: Vec<String> = unknown.map(|(text, _)| format!("“{text}”")).collect();
        let where_they_are = match &names[..] {
            [] => return None,
            [one] => format!("No drop lives at {one}."),
            all => format!("No drops live at {}.", all.join(", ")),
        };
        Some(format!("{where_they_are} A home is a tray's letter and a compartment's number, as in B3."))
    }
}

async fn choose(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Query(mut chosen): Query<Chosen>,
) -> Result<Response, Refusal> {
    if chosen.from.trim().is_empty() {
        return shown(&desk, &chosen, None).await;
    }
    let found = match chosen.from.parse::<TicketNumber>() {
        Ok(number) => desk
            .ledger
            .look(move |ledger| ledger.tickets_numbered(number))
            .await?
            .into_iter()
            .find_map(|one| one.ticket.ok())
            .ok_or_else(|| format!("No ticket {number} has arrived at this desk yet.")),
        Err(error) => Err(words::sentence(&error.to_string())),
    };
    match found {
        Ok(ticket) => {
            chosen.begin_with(&ticket.piece, &desk.catalog.loaded().catalog);
            shown(&desk, &chosen, None).await
        }
        Err(words) => {
            Ok((StatusCode::BAD_REQUEST, shown(&desk, &chosen, Some((&words, false))).await?).into_response())
        }
    }
}

/// The form, with what went wrong on top, and whether that is a question of the count.
async fn shown(desk: &DeskState, chosen: &Chosen, trouble: Option<(&str, bool)>) -> Result<Response, Refusal> {
    let id = chosen.id;
    let (counts, is_opened) =
        desk.ledger.look(move |ledger| Ok((ledger.counts()?, id.is_some_and(|id| ledger.ticket(id).is_ok())))).await?;
    let loaded = desk.catalog.loaded();
    let mut draft = chosen.draft(&loaded.catalog, &counts);
    if is_opened {
        draft.id = Uuid::now_v7();
    }
    let sum = loaded.catalog.quote(&draft.piece(&loaded.catalog));
    let view = View { loaded: &loaded, counts: &counts, draft: &draft, sum };
    Ok(page(desk, Tab::Tickets, "New sale", &view.content(trouble)).into_response())
}

async fn open(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Form(chosen): Form<Chosen>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let draft = chosen.draft(&loaded.catalog, &BTreeMap::new());
    if let Some(words) = draft.unknown_words() {
        return Ok((StatusCode::BAD_REQUEST, shown(&desk, &chosen, Some((&words, false))).await?).into_response());
    }
    let (id, piece, found) = (draft.id, draft.piece(&loaded.catalog), chosen.found == 1);
    let of = Arc::clone(&loaded);
    let opened = desk
        .ledger
        .enter_by(&seller, move |ledger, now| match ledger.open_by_hand(id, &piece, found, &of.catalog, now) {
            // A form that the browser kept from an earlier sale was filled in anew.
            Err(LedgerError::OpenedOtherwise) => ledger.open_by_hand(Uuid::now_v7(), &piece, found, &of.catalog, now),
            opened => opened,
        })
        .await;
    match opened {
        Ok(ticket) => Ok(Redirect::to(&format!("/tickets/{}", ticket.id)).into_response()),
        Err(Refusal::Ledger(error)) if status_of(&error) == StatusCode::CONFLICT => {
            let (words, is_count) = match &error {
                LedgerError::NoneLeft(id) => {
                    let name = words::part_name(Texts::of(Lang::En), &loaded.catalog, id);
                    (format!("The count says that no “{name}” is left. Does it lie before you?"), true)
                }
                other => (words::trouble(Texts::of(Lang::En), other, &loaded.catalog), false),
            };
            let page = shown(&desk, &chosen, Some((&words, is_count))).await?;
            Ok((StatusCode::CONFLICT, page).into_response())
        }
        Err(refusal) => Err(refusal),
    }
}

/// What the page is drawn from.
struct View<'a> {
    loaded: &'a Loaded,
    counts: &'a BTreeMap<String, Count>,
    draft: &'a Draft<'a>,
    sum: Result<Quote, PieceError>,
}

impl View<'_> {
    fn content(&self, trouble: Option<(&str, bool)>) -> Markup {
        let unknown = self.draft.unknown_words();
        let words = trouble.map(|(words, _)| words).or(unknown.as_deref());
        let asks_count = trouble.is_some_and(|(_, is_count)| is_count);
        html! {
            h1 { "New sale" }
            @if let Some(words) = words { p.trouble role="alert" { (words) } }
            form.new-sale method="get" action="/new" data-in-place {
                input type="hidden" name="id" value=(self.draft.id);
                div.bench {
                    section.card.so-far aria-label="The piece" {
                        (self.bases())
                        (self.wearers())
                        (self.so_far())
                        (self.typed())
                        (self.sum(asks_count))
                    }
                    div.work { (self.trays()) }
                }
                @if !asks_count { (self.foot()) }
            }
            form.card.find method="get" action="/new" {
                label for="from" { "Begin with the piece of a ticket, by its number" }
                div.row {
                    input #from name="from" inputmode="numeric" autocomplete="off" placeholder="3-042-6" maxlength="20" required;
                    button.quiet { "Take" }
                }
            }
            form.aside method="post" action="/bills" {
                input type="hidden" name="id" value=(self.draft.id);
                button.quiet { "Only other goods, without a piece" }
            }
        }
    }

    fn bases(&self) -> Markup {
        html! {
            label for="base" { "Base" }
            div.row {
                select #base name="base" data-submits {
                    @for base in &self.loaded.catalog.bases {
                        option value=(base.id) selected[base.id == self.draft.base] {
                            (base.name) " · " (self.plain(base.price)) " · " (self.left(&base.id))
                        }
                    }
                }
                button.no-script { "Take" }
            }
        }
    }

    /// Who it is for, in one touch.
    fn wearers(&self) -> Markup {
        html! {
            input type="hidden" name="wearer" value=(self.draft.wearer.code());
            p.label #for-whom { "Who it is for" }
            div.for-whom role="group" aria-labelledby="for-whom" {
                @for one in Wearer::ANSWERS {
                    button name="for" value=(one.code()) aria-pressed=(one == self.draft.wearer)
                        .chosen[one == self.draft.wearer] { (words::wearer(Texts::of(Lang::En), one).trim_start_matches("for ")) }
                }
            }
        }
    }

    /// The drops so far, each with a way to take it off again.
    fn so_far(&self) -> Markup {
        html! {
            ol.lines.chosen-drops {
                @for (at, kind) in self.draft.drops() {
                    li.line data-key={ (at) "-" (kind.id) } {
                        (words::picture(Texts::of(Lang::En), self.loaded, &kind.id))
                        div.what { strong { (kind.name) } p { (self.plain(kind.price)) } }
                        span.home { (kind.home) }
                        button.quiet name="off" value=(at) aria-label={ "take off " (kind.name) } { "×" }
                    }
                }
            }
            @if self.draft.homes.is_empty() { p.faint { "Touch a drop, or type its home. The base alone can be sold as well." } }
        }
    }

    /// The homes as text, and keys for them: the table's own letters and numbers.
    fn typed(&self) -> Markup {
        html! {
            label for="homes" { "Homes, left to right" }
            div.row {
                input #homes name="homes" value=(self.draft.typed()) autocomplete="off" autocapitalize="characters"
                    spellcheck="false" placeholder="B3 B3 C10" maxlength="1200";
                // The first button is the one that Enter presses.
                button { "Read" }
            }
            div.keypad data-keypad="homes" hidden {
                @for tray in &self.loaded.catalog.trays { button.key type="button" data-key={ "letter-" (tray.letter) } { (tray.letter) } }
                @for digit in (1..=9).chain([0]) { button.key type="button" data-key={ "digit-" (digit) } { (digit) } }
                button.key type="button" data-key="rub-out" aria-label="rub out the last one" { "⌫" }
            }
        }
    }

    fn sum(&self, asks_count: bool) -> Markup {
        html! {
            dl.sums {
                @match &self.sum {
                    Ok(quote) => {
                        @if !quote.discount.is_zero() { dt { "Discount" } dd { "−" (self.plain(quote.discount)) } }
                        @if !quote.tax.is_zero() { dt { "Tax" } dd { (self.plain(quote.tax)) } }
                        dt.total { "Total" } dd.total data-total { (self.plain(quote.total)) }
                    }
                    Err(error) => { dt { "No sum" } dd { (words::sentence(&error.to_string())) } }
                }
            }
            @if asks_count {
                button.main.wide formmethod="post" name="found" value="1" { "It is here: count it, and to the till" }
            } @else {
                button.main.wide formmethod="post" disabled[self.sum.is_err()] { "To the till" }
            }
        }
    }

    /// At the foot of a phone, while the trays fill its screen.
    fn foot(&self) -> Markup {
        html! {
            button.bar formmethod="post" disabled[self.sum.is_err()] {
                span { (say!(Texts::of(Lang::En), "count-drops", n = self.draft.drops().count())) }
                span { "To the till" }
                strong { @if let Ok(quote) = &self.sum { (self.plain(quote.total)) } }
            }
        }
    }

    /// Every tray with its pictures, as they lie.
    fn trays(&self) -> Markup {
        html! {
            @for tray in &self.loaded.catalog.trays {
                section.choices aria-label={ "Tray " (tray.letter) } {
                    h2 { span.letter { (tray.letter) } " " (tray.name) }
                    div.by-picture {
                        @for (home, id) in tray.compartments() {
                            @if let Some(kind) = id.and_then(|id| self.loaded.catalog.drop_kind(id)) {
                                button.pick name="add" value=(home) aria-label={ (kind.name) ", " (home) ", " (self.plain(kind.price)) } {
                                    (words::picture(Texts::of(Lang::En), self.loaded, &kind.id))
                                    span.home { (home) }
                                    span { (self.plain(kind.price)) }
                                    @if self.counts.get(&kind.id).is_none_or(|count| count.free() == 0) { span.faint { "none left" } }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn left(&self, id: &str) -> String {
        self.counts.get(id).map_or_else(|| "not counted".to_owned(), |count| words::free(Texts::of(Lang::En), *count))
    }

    fn plain(&self, amount: rust_decimal::Decimal) -> String {
        self.loaded.catalog.table.prices.currency.plain(amount)
    }
}
