//! A ticket opened at the desk, for a piece that was threaded by hand: base, and drops by their homes or by pictures.
//!
//! What was chosen so far stands in the address, so that nothing is kept at the desk before the ticket is opened, and a
//! page that renews itself shows the same again.

mod view;

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Form, Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use serde::Deserialize;
use uuid::Uuid;

use view::View;

use super::{
    frame::{Tab, page},
    typed::typed_number,
    words,
};
use crate::{
    catalog::Catalog,
    craft::{DropKind, Home, Length, PIECE_LENGTHS_MM, Piece, Wearer},
    desk::{
        refusal::{Refusal, status_of},
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::{Count, LedgerError},
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
    /// How long, in millimetres; without it, as that base usually is.
    length: String,
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
    /// The number of a ticket whose piece is the beginning, or its id, where a number may be that of several.
    from: String,
}

/// A piece as far as it is chosen.
struct Draft<'a> {
    id: Uuid,
    base: &'a str,
    /// A bangle has none.
    length: Option<Length>,
    wearer: Wearer,
    /// Every home as it was typed or touched, with the drop that lives there.
    homes: Vec<(String, Option<&'a DropKind>)>,
}

impl Chosen {
    /// Takes the base, the wearer and the drops of a piece that there is already; what the catalogue does not have any more
    /// is left out.
    fn begin_with(&mut self, piece: &Piece, catalog: &Catalog) {
        self.base.clone_from(&piece.base);
        self.length = piece.length.map(|length| length.mm().to_string()).unwrap_or_default();
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
        // What another base is not made in becomes the usual length of that.
        let asked = self.length.trim().parse().ok().filter(|mm| PIECE_LENGTHS_MM.contains(mm)).map(Length::from_mm);
        Draft {
            id: self.id.unwrap_or_else(Uuid::now_v7),
            base: base.map_or("", |base| base.id.as_str()),
            length: base.and_then(|base| base.length_like(asked)),
            wearer: said.unwrap_or(Wearer::Unknown),
            homes,
        }
    }
}

impl Draft<'_> {
    fn piece(&self) -> Piece {
        Piece {
            base: self.base.to_owned(),
            length: self.length,
            wearer: self.wearer,
            neck: None,
            drops: self.drops().map(|(_, kind)| kind.id.clone()).collect(),
            looks: vec![],
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
    fn unknown_words(&self, texts: &Texts) -> Option<String> {
        let unknown = self.homes.iter().filter(|(_, kind)| kind.is_none());
        let names: Vec<String> = unknown.map(|(text, _)| say!(texts, "sale-quoted", home = text.as_str())).collect();
        match &names[..] {
            [] => None,
            [one] => Some(say!(texts, "sale-no-drop", homes = one.as_str())),
            all => Some(say!(texts, "sale-no-drops", homes = all.join(", "))),
        }
    }
}

async fn choose(
    State(desk): State<Arc<DeskState>>,
    Seller { texts, .. }: Seller,
    Query(mut chosen): Query<Chosen>,
) -> Result<Response, Refusal> {
    if chosen.from.trim().is_empty() {
        return shown(&desk, texts, &chosen, None).await;
    }
    let found = match (chosen.from.parse::<Uuid>(), typed_number(&chosen.from)) {
        (Ok(id), _) => Ok(desk.ledger.look(move |ledger| ledger.ticket(id)).await?.piece),
        (_, Ok(number)) => desk
            .ledger
            .look(move |ledger| ledger.tickets_numbered(number))
            .await?
            .into_iter()
            .find_map(|one| one.ticket.ok())
            .map(|ticket| ticket.piece)
            .ok_or_else(|| say!(texts, "queue-none-arrived", number = number.to_string())),
        (_, Err(error)) => Err(words::no_number(texts, &error)),
    };
    match found {
        Ok(piece) => {
            chosen.begin_with(&piece, &desk.catalog.loaded().catalog);
            shown(&desk, texts, &chosen, None).await
        }
        Err(words) => {
            Ok((StatusCode::BAD_REQUEST, shown(&desk, texts, &chosen, Some((&words, false))).await?).into_response())
        }
    }
}

/// The form, with what went wrong on top, and whether that is a question of the count.
async fn shown(
    desk: &DeskState,
    texts: &'static Texts,
    chosen: &Chosen,
    trouble: Option<(&str, bool)>,
) -> Result<Response, Refusal> {
    let id = chosen.id;
    let (counts, is_opened) =
        desk.ledger.look(move |ledger| Ok((ledger.counts()?, id.is_some_and(|id| ledger.ticket(id).is_ok())))).await?;
    let loaded = desk.catalog.loaded();
    let mut draft = chosen.draft(&loaded.catalog, &counts);
    if is_opened {
        draft.id = Uuid::now_v7();
    }
    let sum = loaded.catalog.quote(&draft.piece());
    let view = View { texts, loaded: &loaded, counts: &counts, draft: &draft, sum };
    Ok(page(desk, texts, Tab::Tickets, &say!(texts, "sale-title"), &view.content(trouble)).into_response())
}

async fn open(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Form(chosen): Form<Chosen>,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let draft = chosen.draft(&loaded.catalog, &BTreeMap::new());
    if let Some(words) = draft.unknown_words(texts) {
        return Ok(
            (StatusCode::BAD_REQUEST, shown(&desk, texts, &chosen, Some((&words, false))).await?).into_response()
        );
    }
    let (id, piece, found) = (draft.id, draft.piece(), chosen.found == 1);
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
                    let name = words::part_name(texts, &loaded.catalog, id);
                    (say!(texts, "sale-does-it-lie", name = name), true)
                }
                other => (words::trouble(texts, other, &loaded.catalog), false),
            };
            let page = shown(&desk, texts, &chosen, Some((&words, is_count))).await?;
            Ok((StatusCode::CONFLICT, page).into_response())
        }
        Err(refusal) => Err(refusal),
    }
}
