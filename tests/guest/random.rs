//! A guest who asks for anything in any order, beside a desk that answers anything: what is promised holds after every
//! step. `CHATELAINE_GUEST_LOG=steps` writes the first steps down, to be read.

use chatelaine::{
    craft::{Design, Wearer},
    guest::{Effect, Guest, Request, Screen, SellerStep, Sending, Session, places_of},
    link::{Draft, News, PinAnswer, Snapshot},
    ticket::TicketNumber,
};

use super::{at_welcome, random::Random, test_table};

/// Steps of one run of the test.
const STEPS: usize = 25_000;

#[test]
fn what_is_promised_holds_for_a_guest_who_does_anything() {
    let runs: Vec<_> = (1..=4).map(|seed| std::thread::spawn(move || Run::new(seed).go(STEPS))).collect();
    let seen: Vec<Seen> = runs.into_iter().map(|run| run.join().expect("a run that keeps its promises")).collect();
    // A run that never gets anywhere would promise nothing.
    for one in seen {
        assert!(one.sent > 20 && one.given > 10 && one.undone > 500 && one.hung > 500 && one.reset > 50, "{one:?}");
        assert!(one.looked_up > 20, "{one:?}");
    }
}

/// What came about in a run.
#[derive(Debug, Default)]
struct Seen {
    sent: usize,
    given: usize,
    undone: usize,
    hung: usize,
    reset: usize,
    looked_up: usize,
}

pub struct Run {
    pub random: Random,
    pub guest: Guest,
    pub snapshot: Snapshot,
    /// The designs that undo and redo have to give, told apart from the guest's own record.
    past: Vec<Design>,
    future: Vec<Design>,
    /// The last draft that was sent.
    pub asked: Option<Draft>,
    seen: Seen,
    log: usize,
}

/// As many steps back as are kept.
const KEPT_STEPS: usize = 200;

impl Run {
    fn new(seed: u64) -> Self {
        let snapshot = test_table();
        let log = std::env::var("CHATELAINE_GUEST_LOG").ok().filter(|_| seed == 1).and_then(|n| n.parse().ok());
        Self {
            random: Random(seed),
            guest: at_welcome(&snapshot),
            snapshot,
            past: vec![],
            future: vec![],
            asked: None,
            seen: Seen::default(),
            log: log.unwrap_or(0),
        }
    }

    fn go(mut self, steps: usize) -> Seen {
        for step in 0..steps {
            if self.random.below(6) == 0 {
                let news = self.some_news();
                self.note(step, &format!("hears {}", told_short(&news)));
                self.hear(news);
            } else {
                let request = self.some_request();
                self.note(step, &format!("asks {request:?}"));
                self.ask(request);
            }
            self.holds();
        }
        self.seen
    }

    fn note(&self, step: usize, what: &str) {
        if step < self.log {
            let session = self.guest.session();
            let sum = self.guest.derived().quote.as_ref().map(|quote| quote.total);
            eprintln!(
                "{step:>5} {:?} {:?} {} drops, sum {sum:?}, sheet {:?}, {:?} | {what}",
                self.guest.screen(),
                session.history.now().wearer,
                session.history.now().drops.len(),
                session.overlay,
                session.sending,
            );
        }
    }

    fn design(&self) -> Design {
        self.guest.session().history.now().clone()
    }

    fn ask(&mut self, request: Request) {
        let (before, screen, sending) = (self.design(), self.guest.screen(), self.guest.session().sending.clone());
        let effects = self.guest.apply(request.clone());
        let after = self.design();
        let left = screen != Screen::Welcome && self.guest.screen() == Screen::Welcome;
        if left || request == Request::Done {
            self.forget();
        } else {
            self.follow(&request, &before, &after);
        }
        let history = &self.guest.session().history;
        let can = (history.can_undo(), history.can_redo());
        assert_eq!(can, (!self.past.is_empty(), !self.future.is_empty()), "after {request:?}");
        if sending != Sending::No && request != Request::Done && request != Request::Back {
            assert_eq!(before.piece(), after.piece(), "{request:?} changed what was sent");
        }
        if request == Request::Done {
            self.seen.reset += 1;
            assert!(self.guest.is_fresh());
            assert_eq!(format!("{:?}", self.guest.session()), format!("{:?}", Session::default()));
        }
        for effect in effects {
            self.carry_out(effect);
        }
    }

    /// The record of designs that undo and redo are held against. What undo brings back hangs as it hung; only the
    /// numbers for drops to come go on.
    fn follow(&mut self, request: &Request, before: &Design, after: &Design) {
        let said = |design: &Design| (design.base.clone(), design.length, design.wearer, design.neck);
        let same = |one: &Design, other: &Design| said(one) == said(other) && one.drops == other.drops;
        match request {
            Request::Undo if !same(before, after) || !self.past.is_empty() && self.may_change() => {
                let wanted = self.past.pop().expect("something to take back");
                assert!(same(&wanted, after), "undo gives {after:?} instead of {wanted:?}");
                self.future.push(before.clone());
                self.seen.undone += 1;
            }
            Request::Redo if !same(before, after) || !self.future.is_empty() && self.may_change() => {
                let wanted = self.future.pop().expect("something to make again");
                assert!(same(&wanted, after), "redo gives {after:?} instead of {wanted:?}");
                self.past.push(before.clone());
            }
            // The first base is where a design begins, and a guest who has gone leaves none.
            _ if before.base.is_none() && after.base.is_some() => self.forget(),
            Request::StartOver if self.may_change() => self.forget(),
            Request::HaveNumber if self.guest.screen() == Screen::Threading => self.forget(),
            _ if !same(before, after) => self.changed(before),
            _ => {}
        }
    }

    fn forget(&mut self) {
        (self.past, self.future) = (vec![], vec![]);
    }

    fn may_change(&self) -> bool {
        self.guest.session().sending == Sending::No && self.guest.screen() != Screen::Threading
    }

    fn changed(&mut self, before: &Design) {
        self.past.push(before.clone());
        if self.past.len() > KEPT_STEPS {
            self.past.remove(0);
        }
        self.future.clear();
    }

    fn hear(&mut self, news: News) {
        let before = self.design();
        if let News::Snapshot(snapshot) = &news {
            self.snapshot = Snapshot::clone(snapshot);
        }
        let was_checking = self.guest.seller().step == SellerStep::Checking;
        let right = matches!(news, News::Pin(Some(PinAnswer::Right | PinAnswer::SetupCode)));
        let shown = self.number();
        let pairing = self.guest.seller().step == SellerStep::Pairing;
        let menu_before = self.guest.seller().step == SellerStep::Menu;
        assert_eq!(self.guest.hear(news), [], "news alone carries nothing out");
        let menu = self.guest.seller().step == SellerStep::Menu;
        assert!(!menu || menu_before || pairing || was_checking && right, "the menu without the PIN");
        assert!(shown.is_none() || self.number() == shown, "the number on the screen became another one");
        let after = self.design();
        if self.guest.screen() == Screen::Threading {
            // A piece that was sent is looked at; there is no way back before it.
            self.forget();
        } else if after != before {
            self.changed(&before);
        }
        if matches!(self.guest.session().sending, Sending::Given { .. }) {
            self.seen.given += 1;
        }
    }

    fn number(&self) -> Option<TicketNumber> {
        match &self.guest.session().sending {
            Sending::Given { kept, .. } => Some(kept.number),
            Sending::No | Sending::Asked(_) => None,
        }
    }

    fn carry_out(&mut self, effect: Effect) {
        match effect {
            Effect::Hung { kind, look, token } => {
                self.seen.hung += 1;
                let design = self.guest.session().history.now();
                assert!(design.drops.iter().any(|drop| drop.token == token && drop.kind == kind && drop.look == look));
                assert!(
                    design.count_of(&kind) <= self.snapshot.available(&kind) as usize,
                    "more {kind} than there are"
                );
            }
            Effect::TakenOff { token, .. } => assert_eq!(self.guest.session().history.now().place_of(token), None),
            Effect::Send(draft) => {
                self.seen.sent += 1;
                let catalog = &self.snapshot.catalog;
                assert_eq!(Some(&draft.piece), self.guest.session().history.now().piece().as_ref());
                assert_eq!(catalog.quote(&draft.piece).as_ref(), Ok(&draft.quote));
                assert_eq!(catalog.cautions(&draft.piece).as_ref(), Ok(&draft.verdict));
                assert_ne!(draft.piece.wearer, Wearer::Unknown, "sent for nobody knows whom");
                let must_read = draft.piece.wearer.is_child() && !draft.verdict.cautions.is_empty();
                assert_eq!(draft.grown_up_confirmed, must_read);
                if must_read {
                    assert_eq!(self.guest.session().read.as_ref(), Some(&draft.verdict), "sent unread");
                }
                assert!(places_of(catalog, &draft.piece).is_ok(), "what is sent hangs");
                self.asked = Some(*draft);
            }
            Effect::AskPin(_) => assert_eq!(self.guest.seller().step, SellerStep::Checking),
            Effect::LookUp(number) => {
                assert_eq!(self.guest.session().threading.asked, Some(number));
                self.seen.looked_up += 1;
            }
            Effect::Pair { .. } => assert_eq!(self.guest.seller().step, SellerStep::Pairing),
            Effect::OpenDesk => assert_eq!(self.guest.seller().step, SellerStep::Menu),
            Effect::ReadOn | Effect::Attended | Effect::Cleared | Effect::Leave => {}
        }
    }

    /// What has to hold whatever was asked.
    fn holds(&self) {
        let (guest, session, derived) = (&self.guest, self.guest.session(), self.guest.derived());
        let own = session.history.now().piece();
        if own.is_some() {
            assert_eq!(derived.piece, own, "what is shown is the guest's piece");
        }
        let sum = derived.piece.as_ref().and_then(|piece| self.snapshot.catalog.quote(piece).ok());
        assert_eq!(derived.quote, sum, "no sum without its piece, no piece without its sum");
        let verdict = derived.piece.as_ref().and_then(|piece| self.snapshot.catalog.cautions(piece).ok());
        assert_eq!(derived.verdict, verdict.unwrap_or_default());
        let read = session.read.as_ref() == Some(&derived.verdict);
        assert_eq!(guest.has_been_read(), read || !guest.needs_grown_up());
        if guest.screen() == Screen::Sent {
            assert!(matches!(session.sending, Sending::Given { .. }), "a number that was not given");
        }
        if guest.screen() == Screen::Threading {
            assert_eq!(session.sending, Sending::No);
            let collected = session.threading.collected.last().copied();
            assert!(collected.is_none_or(|last| last < guest.to_collect()), "more collected than there is");
        }
        if let Some(token) = session.selected {
            assert!(session.history.now().place_of(token).is_some(), "what is chosen hangs");
        }
        if matches!(guest.screen(), Screen::Stage | Screen::Review | Screen::Sent) {
            assert!(session.history.now().base.is_some(), "{:?} without a base", guest.screen());
        }
        assert_eq!(derived.standing.len(), self.snapshot.catalog.drops.len());
    }
}

fn told_short(news: &News) -> String {
    match news {
        News::Snapshot(_) => "other counts".into(),
        other => format!("{other:?}"),
    }
}
