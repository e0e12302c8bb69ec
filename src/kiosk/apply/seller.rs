//! The seller's part: PIN, pairing, the bank card, settings that are kept.

use bevy::prelude::*;

use super::{
    super::{session::SellerStep, settings},
    Guest,
};

impl Guest<'_> {
    pub(super) fn key(&mut self, c: char) {
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

    pub(super) fn enter_keys(&mut self) {
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
    pub(super) fn size_card(&mut self, sized: impl FnOnce(f32) -> f32) {
        let SellerStep::Card { px_per_mm } = &mut self.seller.step else { return };
        let window = self.targets.window.map_or(f32::INFINITY, |window| window.width());
        let most = (window / settings::CARD_WIDTH_MM).max(settings::USUAL_PX_PER_MM);
        *px_per_mm = sized(*px_per_mm).clamp(2.0, most);
    }

    pub(super) fn keep_settings(&mut self) {
        if let Err(error) = self.settings.keep() {
            warn!("the settings could not be written: {error}");
            self.seller.note = Some(self.texts.get("seller-not-kept"));
        }
    }
}
