//! A sent piece is threaded with a tablet's help.

use super::*;
use chatelaine::{
    guest::{ThreadingNote, walking_order},
    link::LookedUp,
};

fn keys(guest: &mut Guest, typed: &str) -> Vec<Effect> {
    typed.chars().flat_map(|c| guest.apply(Request::Key(c))).collect()
}

fn piece() -> Piece {
    Piece {
        base: "chain-brass".into(),
        length: Some(Length::from_inches(18.0)),
        wearer: Wearer::From13,
        neck: None,
        drops: ["key-heart", "locket-round", "key-heart"].map(str::to_owned).to_vec(),
        looks: vec![],
    }
}

#[test]
fn a_number_brings_the_piece_and_each_home_is_ticked() {
    let snapshot = test_table();
    let mut guest = at_welcome(&snapshot);
    ask(&mut guest, [Request::HaveNumber]);
    assert_eq!(guest.screen(), Screen::Threading);
    let number: TicketNumber = "30426".parse().expect("a number");
    assert_eq!(keys(&mut guest, "3042"), []);
    assert_eq!(keys(&mut guest, "6"), [Effect::LookUp(number)], "nobody has to press anything after the last digit");
    assert_eq!(keys(&mut guest, "9"), [], "it is being looked up");
    // Another number's answer, which somebody before did not wait for.
    let other: TicketNumber = "10013".parse().unwrap_or_else(|_| TicketNumber::new(1, 1).expect("a number"));
    let _ = guest.hear(News::LookedUp { number: other, found: LookedUp::Piece(piece()) });
    assert_eq!(guest.session().threading.found, None);
    let _ = guest.hear(News::LookedUp { number, found: LookedUp::Piece(piece()) });
    assert_eq!(guest.session().threading.found, Some(number));
    assert_eq!(guest.derived().piece, Some(piece()), "as it hangs");
    let stops = walking_order(&snapshot.catalog, &piece()).len();
    assert_eq!(stops, 2, "a home is walked to once");
    assert_eq!(guest.to_collect(), 3, "the base and two homes");
    ask(&mut guest, [Request::Collect(0), Request::Collect(2), Request::Collect(2), Request::Collect(1)]);
    ask(&mut guest, [Request::Collect(3)]);
    assert_eq!(guest.session().threading.collected.iter().copied().collect::<Vec<_>>(), [0, 1]);
    // Nothing of it can be changed or sent here.
    ask(
        &mut guest,
        [hang("key-heart"), Request::Undo, Request::Review, Request::Send, Request::ToStage, Request::Begin],
    );
    ask(&mut guest, [Request::For(Wearer::Under3), Request::StartOver, Request::Surprise]);
    assert_eq!((guest.screen(), guest.derived().piece.clone()), (Screen::Threading, Some(piece())));
    ask(&mut guest, [Request::Done]);
    assert_eq!((guest.screen(), guest.is_fresh()), (Screen::Welcome, true));
    assert_eq!(format!("{:?}", guest.session()), format!("{:?}", Session::default()), "nothing is left");
}

#[test]
fn a_wrong_number_is_said_and_can_be_typed_anew() {
    let mut guest = at_welcome(&test_table());
    ask(&mut guest, [Request::HaveNumber]);
    assert_eq!(keys(&mut guest, "30425"), [], "the check digit is wrong");
    assert_eq!(guest.session().threading.note, Some(ThreadingNote::NoNumber));
    ask(&mut guest, [Request::EraseKey]);
    assert_eq!(guest.session().threading.note, None);
    let number: TicketNumber = "30426".parse().expect("a number");
    for (found, note) in [(LookedUp::Unknown, ThreadingNote::Unknown), (LookedUp::Away, ThreadingNote::Away)] {
        let typed = if guest.session().threading.typed.is_empty() { "30426" } else { "6" };
        assert_eq!(keys(&mut guest, typed), [Effect::LookUp(number)]);
        let _ = guest.hear(News::LookedUp { number, found });
        assert_eq!((guest.session().threading.note, guest.session().threading.typed.as_str()), (Some(note), ""));
    }
    // Whoever leaves hears nothing more of it.
    assert_eq!(keys(&mut guest, "30426"), [Effect::LookUp(number)]);
    ask(&mut guest, [Request::Back]);
    let _ = guest.hear(News::LookedUp { number, found: LookedUp::Piece(piece()) });
    assert_eq!((guest.screen(), guest.is_fresh()), (Screen::Welcome, true));
}

#[test]
fn a_guest_with_a_piece_is_not_asked_for_a_number() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    ask(&mut guest, [Request::HaveNumber]);
    assert_eq!((guest.screen(), hung(&guest)), (Screen::Stage, vec!["key-heart".to_owned()]));
}
