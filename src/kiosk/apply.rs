//! The one place where requests change the guest's things.

use bevy::{ecs::system::SystemParam, prelude::*};
use uuid::Uuid;

use super::{
    Phase,
    act::Act,
    bridge::Line,
    i18n::Texts,
    idle::Idle,
    known::{Derived, Known, Standing, Trouble, places_of, standing},
    length,
    looks::Looks,
    session::{Overlay, Screen, SellerDesk, SellerStep, Sending, Session},
    settings::{self, Settings},
    stage::{Flights, Hanger},
    surprise::surprise,
    targets::{Scrolls, Targets},
};
use crate::{
    craft::{Base, BaseKind, Change, Length, Piece, Token, Wearer, fit_on},
    hang::HangError,
    link::{Draft, Kept, PinAnswer, SendError, Snapshot},
};

/// An answer of the desk that concerns the guest or seller in front.
#[derive(Message, Debug, Clone)]
pub enum Answer {
    /// The number is good.
    Given {
        /// The ticket.
        kept: Kept,
        /// The desk has it.
        delivered: bool,
        /// Parts it could not hold.
        short: Vec<String>,
    },
    /// These parts were gone; nothing was sent.
    Short {
        /// The ticket.
        id: Uuid,
        /// Ids of the parts.
        parts: Vec<String>,
    },
    /// The desk does not take it.
    Refused {
        /// The ticket.
        id: Uuid,
    },
    /// It could not be kept on this device; nothing was sent.
    NotKept {
        /// The ticket.
        id: Uuid,
        /// Why.
        error: SendError,
    },
    /// About the PIN.
    Pin(Option<PinAnswer>),
    /// About the pairing.
    Paired(Result<u8, String>),
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Session>()
        .init_resource::<SellerDesk>()
        .init_resource::<Derived>()
        .add_message::<Act>()
        .add_systems(Update, (apply_acts, apply_answers).chain().in_set(Phase::Apply))
        .add_systems(Update, work_out.in_set(Phase::Derive));
}

/// Everything a request can concern.
#[derive(SystemParam)]
struct Guest<'w> {
    session: ResMut<'w, Session>,
    seller: ResMut<'w, SellerDesk>,
    texts: ResMut<'w, Texts>,
    looks: ResMut<'w, Looks>,
    settings: ResMut<'w, Settings>,
    scrolls: ResMut<'w, Scrolls>,
    flights: ResMut<'w, Flights>,
    idle: ResMut<'w, Idle>,
    next: ResMut<'w, NextState<Screen>>,
    exit: MessageWriter<'w, AppExit>,
    screen: Res<'w, State<Screen>>,
    known: Res<'w, Known>,
    derived: Res<'w, Derived>,
    hanger: Res<'w, Hanger>,
    targets: Res<'w, Targets>,
    line: Res<'w, Line>,
}

fn apply_acts(mut acts: MessageReader<Act>, mut guest: Guest) {
    for act in acts.read() {
        guest.apply(act.clone());
    }
}

fn apply_answers(mut answers: MessageReader<Answer>, mut guest: Guest) {
    for answer in answers.read() {
        guest.hear(answer.clone());
    }
}

impl Guest<'_> {
    fn apply(&mut self, act: Act) {
        // What is sent, or being sent, is the piece as it was.
        if self.session.sending != Sending::No && act.changes_the_piece() {
            return;
        }
        match act {
            Act::Begin => self.begin(),
            Act::PutBack => self.go(Screen::PutBack),
            Act::Back => self.back(),
            Act::Speak(lang) => {
                *self.texts = Texts::new(lang);
                self.session.overlay = None;
            }
            Act::Look(looks) => *self.looks = looks,
            Act::Open(overlay) => self.session.overlay = Some(overlay),
            Act::Close => self.session.overlay = None,
            Act::ChooseBase(id) => self.choose_base(&id),
            Act::Longer(steps) => self.longer(steps),
            Act::ToStage if self.session.history.now().base.is_some() => self.go(Screen::Stage),
            Act::ToStage => {}
            Act::AnotherBase => self.go(Screen::Base),
            Act::ShowTray(tray) => (self.session.tray, self.session.tray_row) = (tray, 0),
            Act::TurnTray(rows) => {
                self.session.tray_row = self.session.tray_row.saturating_add_signed(rows as isize);
            }
            Act::Hang { kind, at } => self.hang(kind, at),
            Act::WhyNot(kind) => self.say_why_not(&kind),
            Act::Select(token) => {
                self.session.selected = if self.session.selected == Some(token) { None } else { Some(token) };
            }
            Act::Shift { token, by } => {
                if let Some(place) = self.session.history.now().place_of(token) {
                    self.change(Change::Slide { token, to: place.saturating_add_signed(by as isize) });
                }
            }
            Act::Slide { token, to } => {
                self.change(Change::Slide { token, to });
            }
            Act::PullOff(token) => self.pull_off(token),
            Act::Undo => self.undo(),
            Act::Redo => {
                self.session.history.redo();
                self.settled();
            }
            Act::StartOver => {
                *self.session = Session::default();
                self.begin();
            }
            Act::Surprise => self.surprise(),
            Act::WholeView => {
                (self.session.whole_view, self.session.true_size) = (!self.session.whole_view, false);
            }
            Act::TrueSize => self.session.true_size = !self.session.true_size,
            Act::For(wearer) => {
                self.session.overlay = None;
                self.change(Change::Wearer(wearer));
            }
            Act::OnlySort(sort) => self.session.filters.sort = sort,
            Act::OnlyFinish(finish) => self.session.filters.finish = finish,
            Act::OnlyColour(colour) => self.session.filters.colour = colour,
            Act::OnlySuiting(wearer) => self.only_suiting(wearer),
            Act::Budget(budget) => self.session.filters.budget = budget,
            Act::ClearFilters => self.session.filters = default(),
            Act::Review => self.review(),
            Act::GrownUp(yes) => self.session.read = yes.then(|| self.derived.verdict.clone()),
            Act::Send => self.send(),
            Act::Done => self.reset(),
            Act::Where(kind) => self.session.whereabouts = Some(kind),
            Act::StillHere => self.idle.touched(),
            Act::AskSeller => {
                let step = if self.line.link.is_paired() { SellerStep::Pin } else { SellerStep::Menu };
                *self.seller = SellerDesk { step, ..default() };
                self.go(Screen::Seller);
            }
            Act::Key(c) => self.key(c),
            Act::EraseKey => {
                self.seller.typed.pop();
            }
            Act::EnterKeys => self.enter_keys(),
            Act::DefaultLanguage(lang) => {
                self.settings.lang = lang;
                *self.texts = Texts::new(lang);
                self.keep_settings();
            }
            Act::LeftHanded(yes) => {
                self.settings.left_handed = yes;
                self.keep_settings();
            }
            Act::DefaultLooks(looks) => {
                (self.settings.looks, *self.looks) = (looks, looks);
                self.keep_settings();
            }
            Act::MatchCard => {
                let px_per_mm = self.settings.px_per_mm.unwrap_or(settings::USUAL_PX_PER_MM);
                *self.seller = SellerDesk { step: SellerStep::Card { px_per_mm }, ..default() };
            }
            Act::SizeCard(steps) => self.size_card(|px_per_mm| px_per_mm * 1.005_f32.powi(steps)),
            Act::WidenCard(by) => self.size_card(|px_per_mm| px_per_mm + by / settings::CARD_WIDTH_MM),
            Act::KeepCard => {
                if let SellerStep::Card { px_per_mm } = self.seller.step {
                    self.settings.px_per_mm = Some(px_per_mm);
                    *self.seller = SellerDesk { step: SellerStep::Menu, ..default() };
                    self.keep_settings();
                }
            }
            Act::StartPairing => *self.seller = SellerDesk { step: SellerStep::Address, ..default() },
            Act::Leave => {
                self.exit.write(AppExit::Success);
            }
        }
    }

    fn go(&mut self, to: Screen) {
        self.session.overlay = None;
        self.session.selected = None;
        // Setting the same state would leave and enter it again.
        if *self.screen.get() != to {
            self.next.set(to);
        }
    }

    fn say(&mut self, title: &str, text: String) {
        let title = self.texts.get(title);
        self.session.overlay = Some(Overlay::Message { title, text });
    }

    fn snapshot(&self) -> Option<std::sync::Arc<Snapshot>> {
        self.known.snapshot.clone()
    }

    /// Makes a change; what was said of the piece before does not hold any more.
    fn change(&mut self, change: Change) -> bool {
        let changed = self.session.history.apply(change);
        if changed {
            self.settled();
        }
        changed
    }

    fn settled(&mut self) {
        self.session.read = None;
        let selected = self.session.selected;
        if selected.is_some_and(|token| self.session.history.now().place_of(token).is_none()) {
            self.session.selected = None;
        }
    }

    fn begin(&mut self) {
        let Some(snapshot) = self.snapshot() else { return };
        let bases = &snapshot.catalog.bases;
        let ready = bases.iter().find(|base| snapshot.available(&base.id) > 0);
        if let (Some(base), None) = (ready, &self.session.history.now().base) {
            self.session.history.apply(Change::Base { id: base.id.clone(), length: base.usual_length() });
        }
        self.go(Screen::Base);
    }

    fn back(&mut self) {
        if self.session.overlay.take().is_some() {
            return;
        }
        let seller_step = self.seller.step.clone();
        match self.screen.get() {
            Screen::Welcome => {}
            Screen::Base if !self.session.history.now().drops.is_empty() => {
                self.session.overlay = Some(Overlay::StartOver);
            }
            Screen::Stage => self.go(Screen::Base),
            Screen::Review if self.session.sending == Sending::No => self.go(Screen::Stage),
            Screen::Review => {}
            Screen::Seller
                if matches!(seller_step, SellerStep::Address | SellerStep::Code { .. } | SellerStep::Card { .. }) =>
            {
                *self.seller = SellerDesk { step: SellerStep::Menu, ..default() };
            }
            Screen::Base | Screen::Sent | Screen::PutBack | Screen::Seller => self.reset(),
        }
    }

    fn choose_base(&mut self, id: &str) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(base) = snapshot.catalog.base(id).filter(|_| snapshot.available(id) > 0) else { return };
        let length = base.length_like(self.session.history.now().length);
        self.change(Change::Base { id: id.to_owned(), length });
        self.leave_what_does_not_fit(&snapshot, base);
    }

    /// On another base some drops may not go on, or find no room.
    fn leave_what_does_not_fit(&mut self, snapshot: &Snapshot, base: &Base) {
        let Some(piece) = self.session.history.now().piece() else { return };
        let goes = |id: &String| snapshot.catalog.drop_kind(id).is_some_and(|kind| fit_on(base, kind.ring).passes);
        let mut kept: Vec<String> = piece.drops.iter().filter(|id| goes(id)).cloned().collect();
        while let Err(Trouble::Hang(HangError::NoRoom { .. })) =
            places_of(&snapshot.catalog, &Piece { drops: kept.clone(), ..piece.clone() })
        {
            kept.pop();
        }
        let left = piece.drops.len() - kept.len();
        if left > 0 {
            self.change(Change::Drops(kept));
            let text = self.texts.with("base-left-off", &[("n", (left as i64).into())]);
            self.say("base-left-off-title", text);
        }
    }

    fn longer(&mut self, steps: i32) {
        let Some(snapshot) = self.snapshot() else { return };
        let design = self.session.history.now();
        let Some(base) = design.base.as_ref().and_then(|id| snapshot.catalog.base(id)) else { return };
        let BaseKind::Necklace(necklace) = &base.kind else { return };
        let now = design.length.unwrap_or(necklace.lengths.usual);
        let fresh = length::stepped(now, steps, &necklace.lengths, snapshot.catalog.table.region);
        self.change(Change::Length(fresh));
    }

    fn hang(&mut self, kind: String, at: Option<usize>) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(piece) = self.session.history.now().piece() else { return };
        let Some(drop_kind) = snapshot.catalog.drop_kind(&kind) else { return };
        let stands = standing(&snapshot, Some(&piece), &self.session.filters, drop_kind);
        if !matches!(stands, Standing::Open | Standing::Aside) {
            return self.say_why_not(&kind);
        }
        let mut more = piece.clone();
        more.drops.push(kind.clone());
        match places_of(&snapshot.catalog, &more) {
            Err(Trouble::Hang(HangError::NoRoom { fits, .. })) => {
                let text = self.texts.with("stage-no-room", &[("n", (fits as i64).into())]);
                return self.say("stage-no-room-title", text);
            }
            Err(trouble) => warn!("{kind} does not hang: {trouble}"),
            Ok(_) => {}
        }
        self.session.selected = None;
        self.change(Change::Hang { kind: kind.clone(), at: at.unwrap_or(usize::MAX) });
        let newest = self.session.history.now().drops.iter().map(|hung| hung.token).max();
        if let Some(token) = newest {
            self.flights.hung(&kind, token, &self.targets);
        }
    }

    /// From the sheet of filters it stays open; from anywhere else the drops are what the guest wants to see.
    fn only_suiting(&mut self, wearer: Option<Wearer>) {
        self.session.filters.suits = wearer;
        if self.session.overlay != Some(Overlay::Filters) {
            self.go(Screen::Stage);
        }
    }

    fn say_why_not(&mut self, id: &str) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(kind) = snapshot.catalog.drop_kind(id) else { return };
        let piece = self.session.history.now().piece();
        let called = |id: &str, own: &str| snapshot.catalog.called(self.texts.lang.code(), id, own).to_owned();
        let name = ("name", called(&kind.id, &kind.name).into());
        let (title, text) = match standing(&snapshot, piece.as_ref(), &self.session.filters, kind) {
            Standing::Open | Standing::Aside => return,
            Standing::SoldOut => ("why-sold-out-title", self.texts.with("why-sold-out", &[name])),
            Standing::TooDear => ("why-too-dear-title", self.texts.with("why-too-dear", &[name])),
            Standing::NotFor => {
                let wearer = self.session.filters.suits.unwrap_or_default();
                let verdict = snapshot.catalog.drop_cautions(kind, wearer);
                let said = verdict.cautions.iter().filter(|caution| caution.grave);
                let why: Vec<String> = said.map(|caution| self.texts.caution(caution, &snapshot.catalog, "")).collect();
                let title = if wearer == Wearer::From13 { "not-to-be-worn" } else { "why-not-for-title" };
                (title, format!("{}\n\n{}", why.join(" "), self.texts.get("caution-deferral")))
            }
            Standing::NoFit => {
                let base = piece.and_then(|piece| snapshot.catalog.base(&piece.base).cloned());
                let Some(fit) = base.map(|base| fit_on(&base, kind.ring)) else { return };
                let mm = |mm: f64| {
                    let tenths = rust_decimal::Decimal::try_from(mm).unwrap_or_default().round_dp(1);
                    self.texts.lang.number(tenths)
                };
                let places = [name, ("opens", mm(fit.opening_mm).into()), ("needs", mm(fit.needs_mm).into())];
                ("why-no-fit-title", self.texts.with("why-no-fit", &places))
            }
        };
        self.say(title, text);
    }

    fn pull_off(&mut self, token: Token) {
        let hung = self.session.history.now().drops.iter().find(|hung| hung.token == token).cloned();
        let Some(hung) = hung else { return };
        if let Some(from) = self.hanger.ring(token) {
            self.flights.taken_off(&hung.kind, from);
        }
        self.change(Change::PullOff(token));
    }

    fn undo(&mut self) {
        self.session.history.undo();
        // Before the base was chosen there is nothing to look at.
        if self.session.history.now().base.is_none() {
            self.session.history.redo();
            if *self.screen.get() == Screen::Stage {
                self.go(Screen::Base);
            }
        }
        self.settled();
    }

    fn surprise(&mut self) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(piece) = self.session.history.now().piece() else { return };
        let drops = match getrandom::u64() {
            Ok(seed) => surprise(&snapshot, &piece, &self.session.filters, seed),
            Err(error) => {
                warn!("no chance to be had: {error}");
                vec![]
            }
        };
        if drops.is_empty() {
            let text = self.texts.get("stage-no-surprise");
            self.say("stage-surprise", text);
        } else {
            self.session.selected = None;
            self.change(Change::Drops(drops));
        }
    }

    fn review(&mut self) {
        if self.derived.quote.is_none() || self.derived.trouble.is_some() {
            return;
        }
        self.go(Screen::Review);
        if self.session.history.now().wearer == Wearer::Unknown {
            self.session.overlay = Some(Overlay::Wearer);
        }
    }

    fn send(&mut self) {
        if self.session.sending != Sending::No || !has_been_read(&self.session, &self.derived) {
            return;
        }
        let (Some(snapshot), Some(piece)) = (self.snapshot(), self.session.history.now().piece()) else { return };
        // Nobody can say whether a piece is safe for somebody unknown.
        if piece.wearer == Wearer::Unknown {
            self.session.overlay = Some(Overlay::Wearer);
            return;
        }
        // Worked out once more from the design itself: the sum on the screen is the sum that is sent.
        let (Ok(quote), Ok(verdict)) = (snapshot.catalog.quote(&piece), snapshot.catalog.cautions(&piece)) else {
            return;
        };
        if self.derived.quote.as_ref() != Some(&quote) || self.derived.verdict != verdict {
            return;
        }
        let draft =
            Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed: needs_grown_up(&self.derived) };
        self.session.sending = Sending::Asked(draft.id);
        self.line.link.send_aside(draft);
    }

    fn reset(&mut self) {
        *self.session = Session::default();
        *self.seller = SellerDesk::default();
        *self.scrolls = Scrolls::default();
        *self.flights = Flights::default();
        if self.texts.lang != self.settings.lang {
            *self.texts = Texts::new(self.settings.lang);
        }
        self.looks.set_if_neq(self.settings.looks);
        self.idle.touched();
        self.go(Screen::Welcome);
    }

    fn key(&mut self, c: char) {
        let most = match self.seller.step {
            SellerStep::Pin | SellerStep::Code { .. } => 12,
            SellerStep::Address => 40,
            SellerStep::Checking | SellerStep::Menu | SellerStep::Pairing | SellerStep::Card { .. } => 0,
        };
        if self.seller.typed.chars().count() < most {
            self.seller.typed.push(c);
            self.seller.note = None;
        }
    }

    fn enter_keys(&mut self) {
        if self.seller.typed.is_empty() {
            return;
        }
        let typed = std::mem::take(&mut self.seller.typed);
        self.seller.note = None;
        match self.seller.step.clone() {
            SellerStep::Pin => {
                self.seller.step = SellerStep::Checking;
                self.line.link.ask_pin(typed);
            }
            SellerStep::Address => self.seller.step = SellerStep::Code { desk: typed },
            SellerStep::Code { desk } => {
                self.seller.step = SellerStep::Pairing;
                self.line.link.pair(desk, typed);
            }
            SellerStep::Checking | SellerStep::Menu | SellerStep::Pairing | SellerStep::Card { .. } => {}
        }
    }

    /// The drawn card never outgrows the window.
    fn size_card(&mut self, sized: impl FnOnce(f32) -> f32) {
        let SellerStep::Card { px_per_mm } = &mut self.seller.step else { return };
        let window = self.targets.window.map_or(f32::INFINITY, |window| window.width());
        let most = (window / settings::CARD_WIDTH_MM).max(settings::USUAL_PX_PER_MM);
        *px_per_mm = sized(*px_per_mm).clamp(2.0, most);
    }

    fn keep_settings(&mut self) {
        if let Err(error) = self.settings.keep() {
            warn!("the settings could not be written: {error}");
            self.seller.note = Some(self.texts.get("seller-not-kept"));
        }
    }

    fn hear(&mut self, answer: Answer) {
        match answer {
            Answer::Given { kept, delivered, short } => match &mut self.session.sending {
                Sending::Asked(id) if *id == kept.id => {
                    self.session.sending = Sending::Given { kept, delivered, short };
                    self.go(Screen::Sent);
                }
                Sending::Given { kept: mine, delivered: there, short: gone } if mine.id == kept.id => {
                    (*there, *gone) = (delivered, short);
                }
                _ => {}
            },
            Answer::Short { id, parts } if self.session.sending == Sending::Asked(id) => self.short(&parts),
            Answer::Refused { id } if self.session.sending == Sending::Asked(id) => self.not_sent("send-refused"),
            Answer::NotKept { id, error } if self.session.sending == Sending::Asked(id) => {
                self.not_sent(match error {
                    SendError::NotPaired => "send-not-paired",
                    SendError::Numbers(_) => "send-no-numbers",
                    SendError::Disk(_) => "send-disk",
                });
            }
            Answer::Short { .. } | Answer::Refused { .. } | Answer::NotKept { .. } => {}
            Answer::Pin(answer) if self.seller.step == SellerStep::Checking => match answer {
                Some(PinAnswer::Right | PinAnswer::NotSet) => self.seller.step = SellerStep::Menu,
                other => {
                    self.seller.step = SellerStep::Pin;
                    self.seller.note = Some(match other {
                        Some(PinAnswer::Wait { seconds }) => {
                            self.texts.with("pin-wait", &[("seconds", i64::from(seconds).into())])
                        }
                        None => self.texts.get("pin-away"),
                        _ => self.texts.get("pin-wrong"),
                    });
                }
            },
            Answer::Pin(_) => {}
            Answer::Paired(outcome) if self.seller.step == SellerStep::Pairing => {
                self.seller.step = SellerStep::Menu;
                self.seller.note = Some(match outcome {
                    Ok(digit) => self.texts.with("pair-done", &[("digit", i64::from(digit).into())]),
                    Err(reason) => reason,
                });
            }
            Answer::Paired(_) => {}
        }
    }

    /// The piece stays as it is, and can be sent again.
    fn not_sent(&mut self, why: &str) {
        self.session.sending = Sending::No;
        let text = self.texts.get(why);
        self.say("send-failed-title", text);
    }

    /// Somebody else was first: the piece stays, without what is gone.
    fn short(&mut self, parts: &[String]) {
        self.session.sending = Sending::No;
        let Some(snapshot) = self.snapshot() else { return };
        let catalog = &snapshot.catalog;
        let name = |id: &String| {
            let own = catalog.drop_kind(id).map(|kind| &kind.name).or(catalog.base(id).map(|base| &base.name));
            catalog.called(self.texts.lang.code(), id, own.unwrap_or(id)).to_owned()
        };
        let names = parts.iter().map(name).collect::<Vec<_>>().join(", ");
        let base_gone = self.session.history.now().base.as_ref().is_some_and(|base| parts.contains(base));
        for part in parts {
            let last = self.session.history.now().drops.iter().rev().find(|hung| hung.kind == *part);
            if let Some(token) = last.map(|hung| hung.token) {
                self.change(Change::PullOff(token));
            }
        }
        self.go(if base_gone { Screen::Base } else { Screen::Stage });
        let text = self.texts.with("send-short", &[("names", names.into())]);
        self.say("send-short-title", text);
    }
}

/// Whether a grown-up has to say that they have read the cautions.
pub fn needs_grown_up(derived: &Derived) -> bool {
    let child = derived.piece.as_ref().is_some_and(|piece| piece.wearer.is_child());
    child && !derived.verdict.cautions.is_empty()
}

/// Whether a grown-up has read the cautions as they are now, or none has to.
pub fn has_been_read(session: &Session, derived: &Derived) -> bool {
    !needs_grown_up(derived) || session.read.as_ref() == Some(&derived.verdict)
}

/// Works out sum, cautions, places and standings after a change, and the sample on Welcome.
fn work_out(session: Res<Session>, known: Res<Known>, screen: Res<State<Screen>>, mut derived: ResMut<Derived>) {
    if !(session.is_changed() || known.is_changed() || screen.is_changed()) {
        return;
    }
    let Some(snapshot) = &known.snapshot else { return };
    let own = session.history.now().piece();
    let piece = own.or_else(|| (*screen.get() == Screen::Welcome).then(|| sample(snapshot)).flatten());
    derived.renew(snapshot, piece, &session.filters);
}

/// The piece that sways on Welcome.
fn sample(snapshot: &Snapshot) -> Option<Piece> {
    /// Any number; this one gives the demo table a handsome piece.
    const SEED: u64 = 0x5EED_0007;
    /// Inches.
    const SAMPLE_IN: f64 = 16.0;
    let bases = &snapshot.catalog.bases;
    let base = bases.iter().find(|base| matches!(base.kind, BaseKind::Necklace(_))).or(bases.first())?;
    // A short one: its drops are seen from near.
    let length = match &base.kind {
        BaseKind::Necklace(n) => {
            let near = SAMPLE_IN.clamp(n.lengths.shortest.inches(), n.lengths.longest.inches());
            Some(Length::from_inches(near))
        }
        BaseKind::Bangle(_) => None,
    };
    let bare = Piece { base: base.id.clone(), length, wearer: Wearer::From13, drops: vec![] };
    let drops = surprise(snapshot, &bare, &default(), SEED);
    Some(Piece { drops, ..bare })
}
