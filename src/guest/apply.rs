//! The one place where requests and news change the guest's things.

use std::sync::Arc;

use super::{
    chance::Chance,
    derived::{Derived, sample},
    effect::Effect,
    known::Known,
    looks::Looks,
    request::Request,
    session::{Filters, Overlay, Screen, SellerPart, SellerStep, Sending, Session},
    settings::Settings,
    told::Told,
};
use crate::{
    craft::{Change, Piece},
    lang::Lang,
    link::{News, Snapshot},
};

/// Everything of one tablet that is not seen.
#[derive(Debug)]
pub struct Guest {
    pub(super) session: Session,
    pub(super) screen: Screen,
    pub(super) seller: SellerPart,
    pub(super) lang: Lang,
    pub(super) looks: Looks,
    pub(super) left_handed: bool,
    pub(super) settings: Settings,
    pub(super) known: Known,
    pub(super) derived: Derived,
    /// What [`Guest::derived`] was worked out from, so that it is only done when something of it changed.
    derived_from: Option<(Arc<Snapshot>, Shown, Filters)>,
    pub(super) effects: Vec<Effect>,
    pub(super) chance: Chance,
}

/// The piece on the screen.
#[derive(Debug, PartialEq)]
enum Shown {
    Own(Piece),
    Sample,
    Nothing,
}

impl Guest {
    /// A tablet that greets its first guest as `settings` say. The same `chance` gives the same surprises.
    pub fn new(settings: Settings, chance: u64) -> Self {
        Self {
            session: Session::default(),
            screen: Screen::default(),
            seller: SellerPart::default(),
            lang: settings.lang,
            looks: settings.looks,
            left_handed: settings.left_handed,
            settings,
            known: Known::default(),
            derived: Derived::default(),
            derived_from: None,
            effects: Vec::new(),
            chance: Chance(chance),
        }
    }

    /// What this guest has done so far.
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// The screen that is shown.
    pub fn screen(&self) -> Screen {
        self.screen
    }

    /// The seller's part.
    pub fn seller(&self) -> &SellerPart {
        &self.seller
    }

    /// The language spoken now.
    pub fn lang(&self) -> Lang {
        self.lang
    }

    /// How the screens look now.
    pub fn looks(&self) -> Looks {
        self.looks
    }

    /// Whether the trays are on the left now.
    pub fn left_handed(&self) -> bool {
        self.left_handed
    }

    /// What the seller has settled.
    pub fn settings(&self) -> &Settings {
        &self.settings
    }

    /// What is known of the desk.
    pub fn known(&self) -> &Known {
        &self.known
    }

    /// What follows from the design.
    pub fn derived(&self) -> &Derived {
        &self.derived
    }

    /// Whether anything of a guest is left: a piece, a sheet, another language, other looks.
    pub fn is_fresh(&self) -> bool {
        let greeting = self.lang == self.settings.lang
            && self.looks == self.settings.looks
            && self.left_handed == self.settings.left_handed;
        greeting && self.session.overlay.is_none() && self.session.history.now().base.is_none()
    }

    /// Does what is asked; what has to be carried out outside for it.
    #[must_use]
    pub fn apply(&mut self, request: Request) -> Vec<Effect> {
        // What is sent, being sent or threaded is the piece as it was.
        let is_settled = self.session.sending != Sending::No || self.screen == Screen::Threading;
        if !is_settled || !request.changes_the_piece() {
            self.fulfil(request);
            self.work_out();
        }
        std::mem::take(&mut self.effects)
    }

    /// Takes in what the line to the desk tells; what has to be carried out outside for it.
    #[must_use]
    pub fn hear(&mut self, news: News) -> Vec<Effect> {
        self.take_in(news);
        self.work_out();
        std::mem::take(&mut self.effects)
    }

    /// Takes in whether the tablet belongs to a desk.
    pub fn set_paired(&mut self, paired: bool) {
        self.known.paired = paired;
    }

    fn fulfil(&mut self, request: Request) {
        match request {
            Request::Begin => self.begin(),
            Request::PutBack => self.put_back(),
            Request::Back => self.back(),
            Request::Speak(lang) => (self.lang, self.session.overlay) = (lang, None),
            Request::Look(looks) => self.looks = looks,
            Request::TraysLeft(left) => self.left_handed = left,
            Request::Open(overlay) => self.session.overlay = Some(overlay),
            Request::Close => self.session.overlay = None,
            Request::ToStage => self.show_stage(),
            Request::AnotherBase => self.go(Screen::Base),
            Request::ShowTray(tray) => (self.session.tray, self.session.tray_row) = (tray, 0),
            Request::TurnTray(rows) => {
                self.session.tray_row = self.session.tray_row.saturating_add_signed(rows as isize);
            }
            Request::WholeView => {
                (self.session.whole_view, self.session.true_size) = (!self.session.whole_view, false);
            }
            Request::TrueSize => self.session.true_size = !self.session.true_size,
            Request::OnlySort(sort) => self.session.filters.sort = sort,
            Request::OnlyFinish(finish) => self.session.filters.finish = finish,
            Request::OnlyColour(colour) => self.session.filters.colour = colour,
            Request::UpTo(most) => self.session.filters.up_to = most,
            Request::OnlySuiting(wearer) => self.only_suiting(wearer),
            Request::Budget(budget) => self.session.filters.budget = budget,
            Request::ClearFilters => self.session.filters = Filters::default(),
            Request::StartOver => {
                self.session = Session::default();
                self.effects.push(Effect::Cleared);
                self.begin();
            }
            Request::Review => self.review(),
            Request::ReadOn => self.effects.push(Effect::ReadOn),
            Request::GrownUp(yes) => self.session.read = yes.then(|| self.derived.verdict.clone()),
            Request::Send => self.send(),
            Request::Done => self.reset(),
            Request::Where(kind) => self.session.whereabouts = Some(kind),
            Request::StillHere => self.effects.push(Effect::Attended),
            Request::Leave => self.effects.push(Effect::Leave),
            Request::ChooseBase(_)
            | Request::Longer(_)
            | Request::Hang { .. }
            | Request::WhyNot(_)
            | Request::Select(_)
            | Request::Shift { .. }
            | Request::Slide { .. }
            | Request::PullOff(_)
            | Request::Undo
            | Request::Redo
            | Request::Surprise
            | Request::For(_)
            | Request::Neck(_) => self.work_on_the_piece(request),
            Request::HaveNumber | Request::Collect(_) => self.thread(request),
            Request::Key(_) | Request::EraseKey | Request::EnterKeys if self.screen == Screen::Threading => {
                self.thread(request);
            }
            Request::AskSeller
            | Request::Key(_)
            | Request::EraseKey
            | Request::EnterKeys
            | Request::DefaultLanguage(_)
            | Request::LeftHanded(_)
            | Request::DefaultLooks(_)
            | Request::MatchCard
            | Request::SizeCard { .. }
            | Request::WidenCard { .. }
            | Request::KeepCard
            | Request::StartPairing
            | Request::OpenDesk => self.serve_the_seller(request),
        }
    }

    fn take_in(&mut self, news: News) {
        match news {
            News::Snapshot(snapshot) => self.known.snapshot = Some(snapshot),
            // Pictures are shown, not thought about.
            News::Picture { .. } => {}
            News::DeskInReach(now) => self.known.in_reach = Some(now),
            News::LetGo(now) => self.known.let_go = now,
            News::Practice(now) => self.known.practice = now,
            News::DiskNearlyFull(now) => self.known.disk_nearly_full = now,
            News::Pin(answer) => self.hear_of_the_pin(answer),
            News::LookedUp { number, found } => self.hear_of_the_number(number, found),
            News::Paired(outcome) => self.hear_of_the_pairing(outcome),
            News::Delivered { .. }
            | News::Waiting(_)
            | News::Short { .. }
            | News::Refused { .. }
            | News::NotKept { .. } => self.hear_of_the_ticket(news),
        }
    }

    /// Works out what follows, if anything it follows from has changed; on Welcome, for the piece that sways there.
    fn work_out(&mut self) {
        let Some(snapshot) = self.known.snapshot.clone() else { return };
        let shown = match self.session.history.now().piece() {
            Some(piece) => Shown::Own(piece),
            None if self.screen == Screen::Welcome => Shown::Sample,
            None => Shown::Nothing,
        };
        let same = self.derived_from.as_ref().is_some_and(|(of, with, filters)| {
            Arc::ptr_eq(of, &snapshot) && *with == shown && *filters == self.session.filters
        });
        if same {
            return;
        }
        // The sample is only put together when it is going to be another one.
        let piece = match &shown {
            Shown::Own(piece) => Some(piece.clone()),
            Shown::Sample => sample(&snapshot),
            Shown::Nothing => None,
        };
        self.derived.renew(&snapshot, piece, &self.session.filters);
        self.derived_from = Some((snapshot, shown, self.session.filters));
    }

    pub(super) fn go(&mut self, to: Screen) {
        self.session.overlay = None;
        self.session.selected = None;
        self.screen = to;
    }

    pub(super) fn tell(&mut self, told: Told) {
        self.session.overlay = Some(Overlay::Told(told));
    }

    pub(super) fn snapshot(&self) -> Option<Arc<Snapshot>> {
        self.known.snapshot.clone()
    }

    fn show_stage(&mut self) {
        if self.session.history.now().base.is_some() {
            self.go(Screen::Stage);
        }
    }

    /// To the map, from wherever a guest is; the piece stays as it is.
    fn put_back(&mut self) {
        let may = match self.screen {
            Screen::Welcome | Screen::Base | Screen::Stage | Screen::Threading => true,
            Screen::Review => self.session.sending == Sending::No,
            Screen::Sent | Screen::PutBack | Screen::Seller => false,
        };
        if !may {
            return;
        }
        self.session.put_back_from = self.screen;
        self.session.whereabouts = None;
        self.go(Screen::PutBack);
    }

    fn begin(&mut self) {
        let Some(snapshot) = self.snapshot() else { return };
        let bases = &snapshot.catalog.bases;
        // A table that is only begun has nothing to hang anything on.
        if bases.is_empty() {
            return;
        }
        let ready = bases.iter().find(|base| snapshot.available(&base.id) > 0);
        if let (Some(base), None) = (ready, &self.session.history.now().base) {
            self.session.history.start_with(Change::Base { id: base.id.clone(), length: base.usual_length() });
        }
        self.go(Screen::Base);
    }

    fn back(&mut self) {
        if self.session.overlay.take().is_some() {
            return;
        }
        match self.screen {
            Screen::Welcome => {}
            Screen::Base if !self.session.history.now().drops.is_empty() => {
                self.session.overlay = Some(Overlay::StartOver);
            }
            Screen::Stage => self.go(Screen::Base),
            Screen::Review if self.session.sending == Sending::No => self.go(Screen::Stage),
            Screen::Review => {}
            Screen::Seller
                if matches!(
                    self.seller.step,
                    SellerStep::Address | SellerStep::Code { .. } | SellerStep::Card { .. }
                ) =>
            {
                self.seller = SellerPart { step: SellerStep::Menu, ..SellerPart::default() };
            }
            Screen::PutBack if self.session.put_back_from != Screen::Welcome => {
                let from = std::mem::take(&mut self.session.put_back_from);
                self.session.whereabouts = None;
                self.go(from);
            }
            Screen::Base | Screen::Sent | Screen::PutBack | Screen::Threading | Screen::Seller => self.reset(),
        }
    }

    fn reset(&mut self) {
        self.session = Session::default();
        self.seller = SellerPart::default();
        (self.lang, self.looks) = (self.settings.lang, self.settings.looks);
        self.left_handed = self.settings.left_handed;
        self.effects.push(Effect::Cleared);
        self.effects.push(Effect::Attended);
        self.go(Screen::Welcome);
    }
}
