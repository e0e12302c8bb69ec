//! What a random guest asks for, and what a random desk answers.

use std::{collections::BTreeMap, sync::Arc};

use chatelaine::{
    craft::{Colour, Finish, Length, Piece, Sort, Wearer},
    guest::{Looks, Overlay, Request, Screen, settings::CARD_WIDTH_MM},
    lang::Lang,
    link::{Kept, LookedUp, News, PairError, PinAnswer, SendError, Snapshot},
    ticket::TicketNumber,
};

use super::random_guest::Run;

impl Run {
    fn some<T: Clone>(&mut self, of: &[T]) -> T {
        of[self.random.of(of.len())].clone()
    }

    fn some_kind(&mut self) -> String {
        let at = self.random.of(self.snapshot.catalog.drops.len() + 1);
        self.snapshot.catalog.drops.get(at).map_or("no-such-drop".into(), |kind| kind.id.clone())
    }

    fn some_token(&mut self) -> u32 {
        let drops = self.guest.session().history.now().drops.clone();
        if drops.is_empty() || self.random.below(10) == 0 {
            return self.random.below(40) as u32;
        }
        self.some(&drops).token
    }

    fn some_overlay(&mut self) -> Overlay {
        self.some(&[
            Overlay::Lines,
            Overlay::Wearer,
            Overlay::Filters,
            Overlay::Cautions,
            Overlay::Neck,
            Overlay::StartOver,
            Overlay::Languages,
            Overlay::Looks,
        ])
    }

    pub fn some_request(&mut self) -> Request {
        let threading = &self.guest.session().threading;
        match self.guest.screen() {
            Screen::Welcome if self.random.below(96) == 0 => return Request::HaveNumber,
            // Somebody types a good number, digit by digit, and ticks what there is.
            Screen::Threading if self.random.below(4) > 0 => {
                let typed = threading.typed.len().min(4);
                return match threading.found {
                    None => Request::Key(['3', '0', '4', '2', '6'][typed]),
                    Some(_) => Request::Collect(self.random.of(12)),
                };
            }
            _ => {}
        }
        // Most of what a guest does is to the piece; the rest leads everywhere.
        match self.random.below(10) {
            0..=4 => self.some_work(),
            5..=7 => self.some_step(),
            8 => self.some_sight(),
            _ => self.some_seller(),
        }
    }

    fn some_work(&mut self) -> Request {
        let by = self.random.below(7) as i32 - 3;
        match self.random.below(16) {
            0..=4 => {
                let at = (self.random.below(2) == 0).then(|| self.random.of(50));
                Request::Hang { kind: self.some_kind(), at }
            }
            5 => Request::PullOff(self.some_token()),
            6 => Request::Shift { token: self.some_token(), by },
            7 => Request::Slide { token: self.some_token(), to: self.random.of(60) },
            8 | 9 => Request::Undo,
            10 => Request::Redo,
            11 => Request::Surprise,
            12 => Request::Longer(by),
            13 => Request::Select(self.some_token()),
            14 => {
                let ids: Vec<String> = self.snapshot.catalog.bases.iter().map(|base| base.id.clone()).collect();
                Request::ChooseBase(self.some(&ids))
            }
            _ => Request::WhyNot(self.some_kind()),
        }
    }

    fn some_step(&mut self) -> Request {
        let wearers = [Wearer::Unknown, Wearer::Under3, Wearer::From3To5, Wearer::From6To12, Wearer::From13];
        match self.random.below(16) {
            0 | 1 => Request::Begin,
            2 | 3 => Request::ToStage,
            _ if self.guest.screen() == Screen::Review && self.random.below(2) == 0 => {
                self.some(&[Request::Send, Request::GrownUp(true), Request::Send, Request::Close])
            }
            4 | 5 => Request::Review,
            6 => Request::GrownUp(self.random.below(3) > 0),
            7 | 8 => Request::Send,
            9 => Request::For(self.some(&wearers)),
            10 => Request::For(Wearer::From13),
            11 => Request::OnlySuiting(self.some(&[None, Some(Wearer::Under3), Some(Wearer::From6To12)])),
            12 => Request::Neck(self.some(&[None, Some(Length::from_mm(250.0)), Some(Length::from_mm(420.0))])),
            13 => Request::Back,
            14 => self.some(&[
                Request::Done,
                Request::StartOver,
                Request::AnotherBase,
                Request::PutBack,
                Request::HaveNumber,
            ]),
            15 => Request::Collect(self.random.of(12)),
            _ => Request::Close,
        }
    }

    fn some_sight(&mut self) -> Request {
        let number = self.random.of(5);
        match self.random.below(13) {
            0 => Request::Open(self.some_overlay()),
            1 => Request::Speak(self.some(&Lang::ALL)),
            2 if number == 3 => Request::TraysLeft(true),
            2 if number == 4 => Request::TraysLeft(false),
            2 => Request::Look(Looks { calm: number > 2, ..Looks::default() }),
            3 => Request::ShowTray(number),
            4 => Request::TurnTray(number as i32 - 2),
            5 => Request::WholeView,
            6 => Request::TrueSize,
            7 => Request::OnlySort(self.some(&[None, Some(Sort::ALL[number % Sort::ALL.len()])])),
            8 => Request::OnlyFinish(self.some(&[None, Some(Finish::ALL[number % Finish::ALL.len()])])),
            9 => Request::OnlyColour(self.some(&[None, Some(Colour::ALL[number % Colour::ALL.len()])])),
            10 if number > 2 => Request::UpTo(self.some(&[None, Some(3.into()), Some(5.into())])),
            10 => Request::Budget(self.some(&[None, Some(20.into()), Some(60.into())])),
            11 => self.some(&[Request::ClearFilters, Request::ReadOn, Request::StillHere]),
            _ => Request::Where(self.some_kind()),
        }
    }

    fn some_seller(&mut self) -> Request {
        let most_px = 1280.0;
        self.some(&[
            Request::AskSeller,
            Request::Key('7'),
            Request::EraseKey,
            Request::EnterKeys,
            Request::EnterKeys,
            Request::LeftHanded(true),
            Request::OpenDesk,
            Request::DefaultLanguage(Lang::Es),
            Request::DefaultLanguage(Lang::En),
            Request::DefaultLooks(Looks::default()),
            Request::MatchCard,
            Request::SizeCard { steps: 10, most_px },
            Request::WidenCard { by_px: -CARD_WIDTH_MM * 40.0, most_px },
            Request::WidenCard { by_px: f32::NAN, most_px: f32::NAN },
            Request::KeepCard,
            Request::StartPairing,
            Request::Leave,
        ])
    }

    /// Counts that have changed, answers to the last ticket or to another one, answers to no question.
    pub fn some_news(&mut self) -> News {
        let number = TicketNumber::new(3, 1 + self.random.below(900) as u16).expect("a number");
        let asked = self.asked.clone();
        let id = match &asked {
            Some(draft) if self.random.below(4) > 0 => draft.id,
            _ => uuid::Uuid::now_v7(),
        };
        let kept = Kept { id, number };
        let mut parts: Vec<String> = asked.map(|draft| draft.piece.drops).unwrap_or_default();
        parts.push(self.some_kind());
        let gone = parts[self.random.of(parts.len())].clone();
        let looked_up = self.guest.session().threading.asked;
        match self.random.below(14) {
            _ if looked_up.is_some() && self.random.below(2) == 0 => {
                let number = looked_up.unwrap_or(number);
                let piece = self.some_piece();
                let found = self.some(&[LookedUp::Piece(piece), LookedUp::Unknown, LookedUp::Away]);
                News::LookedUp { number, found }
            }
            0..=2 => News::Snapshot(Arc::new(self.other_counts())),
            3 => News::DeskInReach(self.random.below(2) == 0),
            4 => News::LetGo(self.random.below(4) == 0),
            5 => News::DiskNearlyFull(self.random.below(4) == 0),
            6 | 7 => News::Delivered { kept, short: vec![] },
            8 => News::Waiting(kept),
            9 => News::Short { kept, parts: vec![gone.clone(), gone] },
            10 => News::Refused { kept, reason: "for a try".into() },
            11 => News::NotKept { id, error: self.some(&[SendError::LetGo, SendError::Disk("full".into())]) },
            12 => News::Pin(self.some(&[None, Some(PinAnswer::Wrong), Some(PinAnswer::Right)])),
            _ => News::Paired(self.some(&[Ok(3), Err(PairError::NoCode)])),
        }
    }

    /// A piece of this table as another tablet may have sent it, or of a table that has changed since.
    fn some_piece(&mut self) -> Piece {
        let ids: Vec<String> = self.snapshot.catalog.bases.iter().map(|base| base.id.clone()).collect();
        let base = if self.random.below(8) == 0 { "no-such-base".into() } else { self.some(&ids) };
        let drops = (0..self.random.below(9)).map(|_| self.some_kind()).collect();
        let length = self.some(&[None, Some(Length::from_mm(450.0))]);
        Piece { base, length, wearer: Wearer::From13, neck: None, drops, looks: vec![] }
    }

    fn other_counts(&mut self) -> Snapshot {
        let mut available: BTreeMap<String, u32> = self.snapshot.available.clone();
        for count in available.values_mut() {
            if self.random.below(8) == 0 {
                *count = self.random.below(9) as u32;
            }
        }
        Snapshot { available, ..self.snapshot.clone() }
    }
}
