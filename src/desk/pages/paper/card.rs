//! The card that goes along with a piece.

use std::{collections::BTreeSet, sync::Arc};

use axum::{
    Router,
    extract::{Path, Query, State},
    response::Response,
    routing::get,
};
use uuid::Uuid;

use super::actions::{Wanted, shown};
use crate::{
    catalog::Catalog,
    craft::{Guess, Material},
    desk::{pages::words, refusal::Refusal, seller::Seller, state::DeskState},
    lang::Texts,
    ledger::Ticket,
    paper::HandOver,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets/{id}/card.pdf", get(card_of_ticket))
}

async fn card_of_ticket(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    let texts = wanted.texts(&seller)?;
    let ticket = desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    let loaded = desk.catalog.loaded();
    let card = of_ticket(texts, &loaded.catalog, &ticket, desk.practice.is_on());
    shown(&desk, format!("card-{}", ticket.number), move || card.document(texts)).await
}

fn of_ticket(texts: &Texts, catalog: &Catalog, ticket: &Ticket, practice: bool) -> HandOver {
    let name = |id: &str| words::piece_name(texts, catalog, id).into_owned();
    let mut seen = BTreeSet::new();
    let drops = ticket.live_lines().map(|(_, line)| line.id.as_str()).filter(|id| seen.insert(*id));
    let of_drop = |id: &str| catalog.drop_kind(id).and_then(|kind| told(texts, &kind.facts.materials, &kind.guessed));
    let hazards = ticket.verdict.hazards();
    let cautions = hazards.iter().map(|hazard| {
        let base = hazard.is_of_the_base().then(|| name(&ticket.piece.base));
        let parts: Vec<String> = base.into_iter().chain(hazard.drops().map(name)).collect();
        (parts.join(", "), texts.caution(hazard.spokesman(), catalog))
    });
    HandOver {
        table: catalog.table.name.clone(),
        head: catalog.table.paper.head.clone(),
        practice,
        number: ticket.number.to_string(),
        base: name(&ticket.piece.base),
        length: ticket.piece.length,
        base_materials: catalog
            .base(&ticket.piece.base)
            .and_then(|base| told(texts, &base.facts.materials, &base.guessed)),
        drops: drops.map(|id| (name(id), of_drop(id))).collect(),
        care: catalog.table.paper.care_in(texts.lang.code()).map(str::to_owned),
        cautions: cautions.collect(),
    }
}

/// The materials in words; none where they are only guessed.
fn told(texts: &Texts, materials: &[Material], guessed: &[Guess]) -> Option<String> {
    let names = || materials.iter().map(|material| texts.get(&format!("material-{}", material.name())));
    (!guessed.contains(&Guess::Materials) && !materials.is_empty()).then(|| names().collect::<Vec<_>>().join(", "))
}
