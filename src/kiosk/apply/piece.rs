//! What a guest does to the piece.

use bevy::prelude::*;

use super::{
    super::{
        known::{Standing, Trouble, places_of, standing},
        length,
        session::{Overlay, Screen},
        surprise::surprise,
    },
    Guest,
};
use crate::{
    craft::{Base, BaseKind, Change, Piece, Token, Wearer, fit_on},
    hang::HangError,
    link::Snapshot,
};

impl Guest<'_> {
    pub(super) fn choose_base(&mut self, id: &str) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(base) = snapshot.catalog.base(id).filter(|_| snapshot.available(id) > 0) else { return };
        let length = base.length_like(self.session.history.now().length);
        self.change(Change::Base { id: id.to_owned(), length });
        self.leave_what_does_not_fit(&snapshot, base);
    }

    /// On another base some drops may not go on, or find no room.
    pub(super) fn leave_what_does_not_fit(&mut self, snapshot: &Snapshot, base: &Base) {
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

    pub(super) fn longer(&mut self, steps: i32) {
        let Some(snapshot) = self.snapshot() else { return };
        let design = self.session.history.now();
        let Some(base) = design.base.as_ref().and_then(|id| snapshot.catalog.base(id)) else { return };
        let BaseKind::Necklace(necklace) = &base.kind else { return };
        let now = design.length.unwrap_or(necklace.lengths.usual);
        let fresh = length::stepped(now, steps, &necklace.lengths, snapshot.catalog.table.region);
        self.change(Change::Length(fresh));
    }

    pub(super) fn hang(&mut self, kind: String, at: Option<usize>) {
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
    pub(super) fn only_suiting(&mut self, wearer: Option<Wearer>) {
        self.session.filters.suits = wearer;
        if self.session.overlay != Some(Overlay::Filters) {
            self.go(Screen::Stage);
        }
    }

    pub(super) fn say_why_not(&mut self, id: &str) {
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
                let hazards = verdict.hazards();
                let said = hazards.iter().filter(|hazard| hazard.is_grave());
                let why: Vec<String> =
                    said.map(|hazard| self.texts.caution(hazard.spokesman(), &snapshot.catalog)).collect();
                let name = called(&kind.id, &kind.name);
                let title = if wearer == Wearer::From13 { "not-to-be-worn" } else { "why-not-for-title" };
                (title, format!("{name}\n\n{}\n\n{}", why.join(" "), self.texts.get("caution-deferral")))
            }
            Standing::NoFit => {
                let base = piece.and_then(|piece| snapshot.catalog.base(&piece.base).cloned());
                let Some(fit) = base.map(|base| fit_on(&base, kind.ring)) else { return };
                let mm = |mm: f64| {
                    let fine = rust_decimal::Decimal::try_from(mm).unwrap_or_default().round_dp(2);
                    self.texts.lang.number(fine)
                };
                let places = [name, ("opens", mm(fit.opening_mm).into()), ("needs", mm(fit.needs_mm).into())];
                ("why-no-fit-title", self.texts.with("why-no-fit", &places))
            }
        };
        self.say(title, text);
    }

    pub(super) fn pull_off(&mut self, token: Token) {
        let hung = self.session.history.now().drops.iter().find(|hung| hung.token == token).cloned();
        let Some(hung) = hung else { return };
        if let Some(from) = self.hanger.ring(token) {
            self.flights.taken_off(&hung.kind, from);
        }
        self.change(Change::PullOff(token));
    }

    pub(super) fn undo(&mut self) {
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

    pub(super) fn surprise(&mut self) {
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
}
