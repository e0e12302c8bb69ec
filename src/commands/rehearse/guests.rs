//! What guests do at two tablets, and their tickets at the till.

use chatelaine::{
    craft::{Piece, Wearer},
    guest::Request,
    link::{Kept, News},
    money::Tender,
};
use jiff::Timestamp;

use super::{super::Told, Stock, agree, tablet::Tablet, till::Till};

/// So many of the guests' tickets are rung up; whoever comes after these has gone home.
const RUNG_UP: usize = 5;

/// Guests design and send: a queue, two who want the last one of something, a child who pulls all of it off again, a piece
/// for a toddler. Gives what was sent.
#[allow(clippy::too_many_lines, reason = "one guest after the other")]
pub(super) fn send(till: &Till<'_>, stock: &Stock, tablets: &mut [Tablet; 2]) -> Result<Vec<Kept>, Told> {
    let [one, two] = tablets;
    let plenty: Vec<&str> = stock.plenty.iter().map(String::as_str).collect();
    let piece = |base: usize, wearer: Wearer, drops: &[&str]| Piece {
        base: stock.bases[base % stock.bases.len()].clone(),
        length: None,
        wearer,
        neck: None,
        drops: drops.iter().map(|id| (*id).to_owned()).collect(),
        looks: vec![],
    };
    let mut sent: Vec<Kept> = Vec::new();
    let mut deliver = |who: &str, tablet: &mut Tablet, piece: Piece| -> Result<News, Told> {
        let (kept, news) = tablet.send(&piece)?;
        match &news {
            News::Delivered { .. } => {
                say!("{who}: ticket {}", kept.number);
                sent.push(kept);
            }
            News::Short { parts, .. } => say!("{who}: somebody else was first with {}", parts.join(", ")),
            other => return Err(Told(format!("{who}: the ticket went astray: {other:?}"))),
        }
        Ok(news)
    };

    deliver("A guest makes a key necklace", one, piece(0, Wearer::From13, &plenty[0..5]))?;
    deliver("Her friend wants a bracelet's worth", two, piece(1, Wearer::From13, &plenty[3..6]))?;
    deliver("A grandfather chooses for a girl of eight", one, piece(2, Wearer::From6To12, &plenty[6..9]))?;

    a_child_plays(two, &piece(0, Wearer::From3To5, &[]), &plenty)?;
    deliver("The child", two, piece(0, Wearer::From3To5, &plenty[9..10]))?;

    let toddler = piece(0, Wearer::Under3, &plenty[0..2]);
    let verdict = till.story.loaded.catalog.cautions(&toddler)?;
    say!(
        "A piece for a toddler: {}",
        if verdict.suitable { "nothing speaks against it" } else { "not for this child, and the ticket says so" }
    );
    deliver("The toddler's mother", one, toddler)?;

    if let Some(last) = &stock.last {
        let want = piece(1, Wearer::From13, &[last, plenty[10]]);
        let first = deliver("Two guests want the last one; the first", one, want.clone())?;
        let second = deliver("The second", two, want)?;
        agree(
            "that the last one was held once",
            &(matches!(first, News::Delivered { .. }), matches!(second, News::Short { .. })),
            &(true, true),
        )?;
    }
    Ok(sent)
}

/// Rings up the first of `sent`, swapping a missing drop for `spare` on the way.
pub(super) fn are_rung_up(till: &mut Till<'_>, sent: &[Kept], spare: &str) -> Result<(), Told> {
    say!("At the till:");
    for (n, kept) in sent.iter().enumerate().take(RUNG_UP) {
        let kept = *kept;
        if n == 1 {
            // A drop is missing on the real piece: it is swapped, and the sum follows.
            let (to, catalog) = (spare.to_owned(), till.story.loaded.catalog.clone());
            let ticket =
                till.story.on_ledger(move |ledger| ledger.swap(kept.id, 0, &to, &catalog, Timestamp::now()))?;
            say!("  {}: {} instead of a missing drop", ticket.number, ticket.lines[0].id);
        }
        let ticket = till.story.ring_up(kept, if n % 2 == 0 { Tender::Cash } else { Tender::Card })?;
        till.account.rang_up(&ticket);
    }
    for kept in sent.iter().skip(RUNG_UP) {
        let kept = *kept;
        let ticket = till.story.on_ledger(move |ledger| ledger.ticket(kept.id))?;
        till.story.keep(&ticket)?;
    }
    Ok(())
}

/// A child hangs everything and pulls all of it off again, then keeps one.
fn a_child_plays(tablet: &mut Tablet, bare: &Piece, plenty: &[&str]) -> Result<(), Told> {
    tablet.design(bare)?;
    tablet.ask(Request::Back);
    tablet.ask(Request::ClearFilters);
    for id in plenty {
        tablet.ask(Request::Hang { kind: (*id).to_owned(), at: Some(0) });
    }
    let hung = tablet.guest.session().history.now().drops.clone();
    for drop in &hung {
        tablet.ask(Request::PullOff(drop.token));
    }
    let left = tablet.guest.session().history.now().drops.len();
    agree("what still hangs after all was pulled off", &left, &0)?;
    say!("A child hangs {} drops, pulls all of them off and keeps one", hung.len());
    Ok(())
}
