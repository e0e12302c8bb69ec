//! The guest's session without an engine: what requests and news do, and what is promised whatever comes.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/random.rs"]
mod random;
#[path = "guest/random.rs"]
mod random_guest;
#[path = "guest/threading.rs"]
mod threading;
#[path = "guest/wishes.rs"]
mod wishes;

use std::{collections::BTreeMap, path::Path, sync::Arc};

use chatelaine::{
    catalog::read_folder,
    craft::{BaseKind, Length, Piece, Wearer},
    guest::{
        Effect, Guest, NotSent, Overlay, Request, Screen, SellerNote, SellerStep, Sending, Session, Settings, Standing,
        Told, WhyNot,
    },
    link::{Draft, Kept, News, PairError, PinAnswer, SendError, Snapshot, WaitingNews},
    ticket::TicketNumber,
};
use rust_decimal::Decimal;

/// The test table with everything in stock.
pub fn test_table() -> Snapshot {
    let loaded = read_folder(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/table")).expect("the catalogue");
    let mut available: BTreeMap<String, u32> = BTreeMap::new();
    available.extend(loaded.catalog.drops.iter().map(|kind| (kind.id.clone(), kind.stock)));
    available.extend(loaded.catalog.bases.iter().map(|base| (base.id.clone(), base.stock)));
    let (catalog, revision) = (Arc::clone(&loaded.catalog), loaded.revision.clone());
    Snapshot { catalog, available, revision, waiting: WaitingNews::default() }
}

/// A tablet at Welcome with this table.
pub fn at_welcome(snapshot: &Snapshot) -> Guest {
    let mut guest = Guest::new(Settings::default(), 7);
    assert_eq!(guest.hear(News::Snapshot(Arc::new(snapshot.clone()))), []);
    guest.set_paired(true);
    guest
}

fn ask(guest: &mut Guest, requests: impl IntoIterator<Item = Request>) {
    for request in requests {
        let _ = guest.apply(request);
    }
}

fn hang(kind: &str) -> Request {
    Request::Hang { kind: kind.into(), at: None }
}

fn on_stage(base: &str, drops: &[&str]) -> Guest {
    let mut guest = at_welcome(&test_table());
    ask(&mut guest, [Request::Begin, Request::ChooseBase(base.into()), Request::ToStage]);
    ask(&mut guest, drops.iter().map(|kind| hang(kind)));
    assert_eq!((guest.screen(), hung(&guest).len()), (Screen::Stage, drops.len()));
    guest
}

fn hung(guest: &Guest) -> Vec<String> {
    guest.session().history.now().drops.iter().map(|drop| drop.kind.clone()).collect()
}

fn total(guest: &Guest) -> Option<Decimal> {
    guest.derived().quote.as_ref().map(|quote| quote.total)
}

fn told(guest: &Guest) -> &Told {
    match &guest.session().overlay {
        Some(Overlay::Told(told)) => told,
        other => panic!("nothing is told: {other:?}"),
    }
}

/// Hangs drops of one kind until no more find room; how many that are.
fn fill(guest: &mut Guest) -> usize {
    let plenty: Vec<String> =
        guest.known().catalog().expect("a catalogue").drops.iter().map(|d| d.id.clone()).collect();
    for kind in plenty.iter().cycle().take(400) {
        let before = hung(guest).len();
        ask(guest, [hang(kind)]);
        if hung(guest).len() == before && matches!(&guest.session().overlay, Some(Overlay::Told(Told::NoRoom { .. }))) {
            return before;
        }
    }
    panic!("there is always room");
}

/// What is sent, from the stage on.
fn sent(guest: &mut Guest) -> Draft {
    ask(guest, [Request::For(Wearer::From13), Request::Review]);
    let effects = guest.apply(Request::Send);
    match &effects[..] {
        [Effect::Send(draft)] => Draft::clone(draft),
        other => panic!("nothing is sent: {other:?}"),
    }
}

fn kept(draft: &Draft) -> Kept {
    Kept { id: draft.id, number: TicketNumber::new(3, 17).expect("a number") }
}

#[test]
fn another_base_is_one_step_and_undo_gives_back_a_piece_that_can_be_made() {
    let mut guest = on_stage("chain-brass", &[]);
    fill(&mut guest);
    ask(&mut guest, [Request::Close]);
    let (before, sum) = (guest.session().history.now().piece(), total(&guest));
    ask(&mut guest, [Request::Back, Request::ChooseBase("bangle-child".into())]);
    let Told::LeftOff { drops } = *told(&guest) else { panic!("nothing was left off") };
    assert!(drops > 0 && guest.derived().trouble.is_none() && total(&guest).is_some());
    let after = guest.session().history.now().piece();
    ask(&mut guest, [Request::Close, Request::Undo]);
    assert_eq!((guest.session().history.now().piece(), total(&guest)), (before, sum));
    assert!(guest.derived().trouble.is_none());
    ask(&mut guest, [Request::Redo]);
    assert_eq!(guest.session().history.now().piece(), after);
}

#[test]
fn undo_on_an_empty_stage_stays_there() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    for _ in 0..5 {
        ask(&mut guest, [Request::Undo]);
        assert_eq!(guest.screen(), Screen::Stage);
        assert!(guest.session().history.now().base.is_some() && total(&guest).is_some());
    }
    assert!(!guest.session().history.can_undo());
}

#[test]
fn who_it_is_for_is_answered_once() {
    let mut guest = on_stage("chain-brass", &[]);
    // In the filters: the piece knows it, Review does not ask again.
    ask(&mut guest, [Request::Open(Overlay::Filters), Request::OnlySuiting(Some(Wearer::From6To12))]);
    assert_eq!(guest.session().overlay, Some(Overlay::Filters), "the sheet stays open");
    assert_eq!(guest.session().history.now().wearer, Wearer::From6To12);
    ask(&mut guest, [Request::Close, Request::Review]);
    assert_eq!((guest.screen(), &guest.session().overlay), (Screen::Review, &None));
    // By the question: the trays follow, also on the way back.
    ask(&mut guest, [Request::For(Wearer::From3To5)]);
    assert_eq!(guest.session().filters.suits, Some(Wearer::From3To5));
    ask(&mut guest, [Request::Undo]);
    assert_eq!(guest.session().filters.suits, Some(Wearer::From6To12));
    ask(&mut guest, [Request::For(Wearer::From13)]);
    assert_eq!(guest.session().filters.suits, None, "nothing is set aside for a grown-up");
    // To see all drops is not to say that it is for somebody else.
    ask(&mut guest, [Request::For(Wearer::From3To5), Request::ClearFilters]);
    assert_eq!(guest.session().history.now().wearer, Wearer::From3To5);
}

#[test]
fn a_surprise_suits_its_wearer() {
    for wearer in Wearer::ANSWERS {
        let mut guest = on_stage("chain-brass", &[]);
        ask(&mut guest, [Request::For(wearer)]);
        for _ in 0..20 {
            ask(&mut guest, [Request::Close, Request::Surprise]);
            let catalog = guest.known().catalog().expect("a catalogue");
            for kind in hung(&guest) {
                assert!(catalog.suits(catalog.drop_kind(&kind).expect("a drop"), wearer), "{kind} for {wearer:?}");
            }
            if hung(&guest).is_empty() {
                assert_eq!(told(&guest), &Told::NoSurprise, "for {wearer:?}");
            }
        }
    }
}

#[test]
fn only_a_base_that_is_made_longer_is_called_too_short() {
    for base in ["bangle-brass", "chain-brass"] {
        let mut guest = on_stage(base, &[]);
        let longest = match &guest.known().catalog().and_then(|c| c.base(base)).expect("a base").kind {
            BaseKind::Necklace(necklace) => Some(necklace.lengths.longest),
            BaseKind::Bangle(_) => None,
        };
        let room = fill(&mut guest);
        assert_eq!(told(&guest), &Told::NoRoom { fits: room, longer: longest.is_some() }, "{base}");
        if let Some(longest) = longest {
            ask(&mut guest, [Request::Close, Request::Longer(100)]);
            assert_eq!(guest.session().history.now().length.map(Length::mm), Some(longest.mm()));
            let room = fill(&mut guest);
            assert_eq!(told(&guest), &Told::NoRoom { fits: room, longer: false }, "{base} as long as it is made");
        }
    }
}

#[test]
fn what_is_gone_is_told_with_its_count_and_taken_off_in_one_step() {
    let mut guest = on_stage("chain-brass", &["key-heart", "vial-stars", "key-heart"]);
    let draft = sent(&mut guest);
    let parts = vec!["key-heart".to_owned(), "key-heart".into()];
    let _ = guest.hear(News::Short { kept: kept(&draft), parts });
    assert_eq!(told(&guest), &Told::Short { parts: vec![("key-heart".into(), 2)] });
    assert_eq!(
        (guest.screen(), hung(&guest), &guest.session().sending),
        (Screen::Stage, vec!["vial-stars".to_owned()], &Sending::No)
    );
    ask(&mut guest, [Request::Close, Request::Undo]);
    assert_eq!(hung(&guest), ["key-heart", "vial-stars", "key-heart"]);
}

#[test]
fn a_base_that_is_gone_leads_to_the_bases() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    let draft = sent(&mut guest);
    let _ = guest.hear(News::Short { kept: kept(&draft), parts: vec!["chain-brass".into()] });
    assert_eq!((guest.screen(), hung(&guest)), (Screen::Base, vec!["key-heart".to_owned()]));
}

#[test]
fn a_tablet_that_was_let_go_gives_no_number_and_says_so() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    let _ = guest.hear(News::LetGo(true));
    let _ = guest.hear(News::DeskInReach(false));
    let notices: Vec<_> = guest.known().notices().collect();
    assert_eq!(notices, [chatelaine::guest::Notice::LetGo], "the graver of two");
    let draft = sent(&mut guest);
    let _ = guest.hear(News::NotKept { id: draft.id, error: SendError::LetGo });
    assert_eq!(told(&guest), &Told::NotSent(NotSent::NotKept(SendError::LetGo)));
    assert_eq!((&guest.session().sending, hung(&guest)), (&Sending::No, vec!["key-heart".to_owned()]));
    // Paired again, the same piece goes.
    let _ = guest.hear(News::LetGo(false));
    let draft = sent(&mut guest);
    let _ = guest.hear(News::Waiting(kept(&draft)));
    assert_eq!(guest.screen(), Screen::Sent);
}

#[test]
fn a_refusal_after_the_number_is_told_to_who_has_it_and_to_nobody_else() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    let draft = sent(&mut guest);
    let _ = guest.hear(News::Waiting(kept(&draft)));
    let refused = News::Refused { kept: kept(&draft), reason: "the sum is not today's".into() };
    let _ = guest.hear(refused.clone());
    assert_eq!((told(&guest), guest.screen()), (&Told::RefusedAfterAll, Screen::Sent));
    ask(&mut guest, [Request::Done, Request::Begin]);
    let _ = guest.hear(refused);
    assert_eq!(guest.session().overlay, None, "the next guest hears nothing of it");
}

#[test]
fn what_is_being_sent_does_not_change() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    let draft = sent(&mut guest);
    let changes = [
        hang("vial-stars"),
        Request::Undo,
        Request::For(Wearer::Under3),
        Request::ChooseBase("bangle-brass".into()),
        Request::StartOver,
        Request::Surprise,
        Request::Neck(Some(Length::from_mm(330.0))),
        Request::OnlySuiting(Some(Wearer::Under3)),
        Request::Send,
    ];
    for request in changes {
        assert_eq!(guest.apply(request.clone()), [], "{request:?}");
        assert_eq!(guest.session().history.now().piece().as_ref(), Some(&draft.piece), "{request:?}");
    }
}

#[test]
fn why_a_drop_is_not_hung_is_told_as_it_is() {
    let mut snapshot = test_table();
    snapshot.available.insert("key-petal".into(), 0);
    let mut guest = at_welcome(&snapshot);
    ask(&mut guest, [Request::Begin, Request::ToStage, hang("key-petal")]);
    assert_eq!(told(&guest), &Told::WhyNot { kind: "key-petal".into(), why: WhyNot::SoldOut });
    ask(&mut guest, [Request::Close, Request::Budget(Some(Decimal::ONE)), hang("key-heart")]);
    assert_eq!(told(&guest), &Told::WhyNot { kind: "key-heart".into(), why: WhyNot::TooDear });
    ask(&mut guest, [Request::Close, Request::Budget(None), Request::OnlySuiting(Some(Wearer::Under3))]);
    ask(&mut guest, [hang("key-heart")]);
    let Told::WhyNot { why: WhyNot::NotFor { wearer: Wearer::Under3, hazards }, .. } = told(&guest) else {
        panic!("another reason: {:?}", told(&guest))
    };
    assert!(!hazards.is_empty() && hazards.iter().all(|caution| caution.grave));
    assert_eq!(guest.derived().standing["key-heart"], Standing::NotFor);
    assert_eq!(hung(&guest), [""; 0]);
}

#[test]
fn the_seller_comes_in_by_the_right_pin_alone() {
    let mut guest = at_welcome(&test_table());
    ask(&mut guest, [Request::AskSeller, Request::Key('1'), Request::Key('2')]);
    assert_eq!((guest.screen(), &guest.seller().step), (Screen::Seller, &SellerStep::Pin));
    assert_eq!(guest.apply(Request::EnterKeys), [Effect::AskPin("12".into())]);
    assert_eq!(guest.seller().typed, "", "nothing of it stays");
    let answers = [
        (Some(PinAnswer::Wrong), SellerNote::PinWrong),
        (Some(PinAnswer::NotSet), SellerNote::PinNotSet),
        (Some(PinAnswer::Wait { seconds: 60 }), SellerNote::PinWait { seconds: 60 }),
        (None, SellerNote::PinAway),
    ];
    for (answer, note) in answers {
        let _ = guest.hear(News::Pin(answer));
        assert_eq!((&guest.seller().step, guest.seller().note.as_ref()), (&SellerStep::Pin, Some(&note)));
        let _ = guest.hear(News::Pin(Some(PinAnswer::Right)));
        assert_eq!(guest.seller().step, SellerStep::Pin, "an answer to no question");
        ask(&mut guest, [Request::Key('1'), Request::EnterKeys]);
    }
    let _ = guest.hear(News::Pin(Some(PinAnswer::Right)));
    assert_eq!((&guest.seller().step, &guest.seller().note), (&SellerStep::Menu, &None));
    ask(&mut guest, [Request::StartPairing]);
    ask(&mut guest, "10.0.0.9:1".chars().map(Request::Key).chain([Request::EnterKeys, Request::Key('5')]));
    let effects = guest.apply(Request::EnterKeys);
    assert_eq!(effects, [Effect::Pair { desk: "10.0.0.9:1".into(), code: "5".into() }]);
    let _ = guest.hear(News::Paired(Err(PairError::WrongCode)));
    assert_eq!(guest.seller().note, Some(SellerNote::NotPaired(PairError::WrongCode)));
}

#[test]
fn nothing_of_a_guest_is_left_after_them() {
    let mut guest = on_stage("chain-brass", &["key-heart"]);
    let wide = chatelaine::guest::Looks { calm: true, ..Default::default() };
    ask(&mut guest, [Request::Speak(chatelaine::lang::Lang::Fr), Request::Look(wide), Request::WholeView]);
    ask(&mut guest, [Request::For(Wearer::From3To5), Request::Open(Overlay::Lines)]);
    assert!(!guest.is_fresh());
    assert_eq!(guest.apply(Request::Done), [Effect::Cleared, Effect::Attended]);
    assert!(guest.is_fresh());
    assert_eq!(format!("{:?}", guest.session()), format!("{:?}", Session::default()));
    assert_eq!(guest.screen(), Screen::Welcome);
}

#[test]
fn a_piece_of_bare_base_has_its_sum() {
    let guest = on_stage("bangle-brass", &[]);
    let catalog = guest.known().catalog().expect("a catalogue");
    let bare = Piece {
        base: "bangle-brass".into(),
        length: None,
        wearer: Wearer::Unknown,
        neck: None,
        drops: vec![],
        looks: vec![],
    };
    assert_eq!(guest.derived().quote, catalog.quote(&bare).ok());
}

/// A table that is only begun has nothing to hang anything on: guests stay at Welcome, whatever they touch.
#[test]
fn at_a_table_that_is_only_begun_guests_stay_at_welcome() {
    let mut snapshot = test_table();
    let catalog = Arc::make_mut(&mut snapshot.catalog);
    catalog.bases.clear();
    catalog.drops.clear();
    catalog.trays.clear();
    snapshot.available.clear();
    let mut guest = at_welcome(&snapshot);
    assert_eq!(guest.derived().piece, None, "nothing sways there");
    for request in [
        Request::Begin,
        Request::Surprise,
        Request::ToStage,
        Request::ChooseBase("chain-brass".into()),
        Request::Begin,
        hang("key-heart"),
        Request::ShowTray(3),
        Request::TurnTray(1),
        Request::Longer(1),
        Request::Budget(Some(Decimal::TEN)),
        Request::Review,
        Request::Send,
    ] {
        ask(&mut guest, [request]);
        assert!(hung(&guest).is_empty() && total(&guest).is_none());
    }
    ask(&mut guest, [Request::Done, Request::PutBack, Request::Where("key-heart".into()), Request::Back]);
    assert_eq!(guest.screen(), Screen::Welcome);
    ask(&mut guest, [Request::Begin]);
    assert_eq!(guest.screen(), Screen::Welcome);
    // The table is laid meanwhile.
    let _ = guest.hear(News::Snapshot(Arc::new(test_table())));
    ask(&mut guest, [Request::Begin]);
    assert_eq!(guest.screen(), Screen::Base);
}
