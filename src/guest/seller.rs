//! The seller's part: PIN, pairing, the bank card, settings that are kept.

use tracing::warn;

use super::{
    apply::Guest,
    effect::Effect,
    request::Request,
    session::{Screen, SellerPart, SellerStep},
    settings,
    told::SellerNote,
};
use crate::link::{PairError, PinAnswer};

/// The longest PIN or code, in keys.
const LONGEST_CODE: usize = 12;
/// The longest address, in keys.
const LONGEST_ADDRESS: usize = 40;

impl Guest {
    pub(super) fn serve_the_seller(&mut self, request: Request) {
        match request {
            Request::AskSeller => {
                self.at_step(if self.known.paired { SellerStep::Pin } else { SellerStep::Menu });
                self.go(Screen::Seller);
            }
            Request::Key(c) => self.key(c),
            Request::EraseKey => {
                self.seller.typed.pop();
            }
            Request::EnterKeys => self.enter_keys(),
            Request::DefaultLanguage(lang) => {
                (self.settings.lang, self.lang) = (lang, lang);
                self.keep_settings();
            }
            Request::LeftHanded(yes) => {
                (self.settings.left_handed, self.left_handed) = (yes, yes);
                self.keep_settings();
            }
            Request::DefaultLooks(looks) => {
                (self.settings.looks, self.looks) = (looks, looks);
                self.keep_settings();
            }
            Request::MatchCard => {
                let px_per_mm = self.settings.px_per_mm.unwrap_or(settings::USUAL_PX_PER_MM);
                self.at_step(SellerStep::Card { px_per_mm });
            }
            Request::SizeCard { steps, most_px } => {
                self.size_card(most_px, |px_per_mm| px_per_mm * 1.005_f32.powi(steps));
            }
            Request::WidenCard { by_px, most_px } => {
                self.size_card(most_px, |px_per_mm| px_per_mm + by_px / settings::CARD_WIDTH_MM);
            }
            Request::KeepCard => {
                if let SellerStep::Card { px_per_mm } = self.seller.step {
                    self.settings.px_per_mm = Some(px_per_mm);
                    self.at_step(SellerStep::Menu);
                    self.keep_settings();
                }
            }
            Request::StartPairing => self.at_step(SellerStep::Address),
            // Behind the PIN, as everything in the menu.
            Request::OpenDesk if self.screen == Screen::Seller && self.seller.step == SellerStep::Menu => {
                self.effects.push(Effect::OpenDesk);
            }
            _ => {}
        }
    }

    fn at_step(&mut self, step: SellerStep) {
        self.seller = SellerPart { step, ..SellerPart::default() };
    }

    fn key(&mut self, c: char) {
        let most = match self.seller.step {
            SellerStep::Pin | SellerStep::Code { .. } => LONGEST_CODE,
            SellerStep::Address => LONGEST_ADDRESS,
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
                self.effects.push(Effect::AskPin(typed));
            }
            SellerStep::Address => self.seller.step = SellerStep::Code { desk: typed },
            SellerStep::Code { desk } => {
                self.seller.step = SellerStep::Pairing;
                self.effects.push(Effect::Pair { desk, code: typed });
            }
            SellerStep::Checking | SellerStep::Menu | SellerStep::Pairing | SellerStep::Card { .. } => {}
        }
    }

    fn size_card(&mut self, most_px: f32, sized: impl FnOnce(f32) -> f32) {
        let SellerStep::Card { px_per_mm } = &mut self.seller.step else { return };
        let least = *settings::PX_PER_MM.start();
        let most = (most_px / settings::CARD_WIDTH_MM).max(least).min(*settings::PX_PER_MM.end());
        *px_per_mm = sized(*px_per_mm).max(least).min(most);
    }

    fn keep_settings(&mut self) {
        if let Err(error) = self.settings.keep() {
            warn!("the settings could not be written: {error}");
            self.seller.note = Some(SellerNote::SettingsNotKept);
        }
    }

    /// The desk's pages could not be opened here.
    pub fn desk_not_opened(&mut self) {
        self.seller.note = Some(SellerNote::DeskNotOpened);
    }

    pub(super) fn hear_of_the_pin(&mut self, answer: Option<PinAnswer>) {
        if self.seller.step != SellerStep::Checking {
            return;
        }
        let note = match answer {
            Some(PinAnswer::Right | PinAnswer::SetupCode) => return self.at_step(SellerStep::Menu),
            Some(PinAnswer::NotSet) => SellerNote::PinNotSet,
            Some(PinAnswer::Wait { seconds }) => SellerNote::PinWait { seconds },
            Some(PinAnswer::Wrong) => SellerNote::PinWrong,
            None => SellerNote::PinAway,
        };
        (self.seller.step, self.seller.note) = (SellerStep::Pin, Some(note));
    }

    pub(super) fn hear_of_the_pairing(&mut self, outcome: Result<u8, PairError>) {
        if self.seller.step != SellerStep::Pairing {
            return;
        }
        self.seller.step = SellerStep::Menu;
        self.seller.note = Some(match outcome {
            Ok(digit) => SellerNote::Paired { digit },
            Err(error) => {
                warn!("not paired: {error}");
                SellerNote::NotPaired(error)
            }
        });
    }
}
