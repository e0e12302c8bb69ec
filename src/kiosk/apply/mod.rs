//! The one place where requests change the guest's things.

mod derive;
mod piece;
mod seller;
mod send;

use bevy::{ecs::system::SystemParam, prelude::*};

use super::{
    Phase,
    act::Act,
    bridge::Line,
    i18n::Texts,
    idle::Idle,
    known::{Derived, Known},
    looks::Looks,
    session::{Overlay, Screen, SellerDesk, SellerStep, Sending, Session},
    settings::{self, Settings},
    stage::{Flights, Hanger},
    targets::{Scrolls, Targets},
};
use crate::{craft::Change, link::Snapshot};
pub use send::{Answer, has_been_read, needs_grown_up};

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Session>()
        .init_resource::<SellerDesk>()
        .init_resource::<Derived>()
        .add_message::<Act>()
        .add_systems(Update, (apply_acts, send::apply_answers).chain().in_set(Phase::Apply))
        .add_systems(Update, derive::work_out.in_set(Phase::Derive));
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
            Act::Neck(neck) => {
                self.session.overlay = None;
                self.change(Change::Neck(neck));
            }
            Act::ReadOn => self.read_on(),
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
}
