//! What a guest does to the piece.

use tracing::warn;

use super::{
    apply::Guest,
    effect::Effect,
    length,
    places::{Trouble, places_of},
    request::Request,
    session::{Overlay, Screen},
    standing::{Standing, standing},
    surprise::surprise,
    told::{Told, WhyNot},
};
use crate::{
    craft::{Base, BaseKind, Change, History, HungDrop, LookNumber, Piece, Token, Wearer, fit_on},
    hang::HangError,
    link::Snapshot,
};

impl Guest {
    pub(super) fn work_on_the_piece(&mut self, request: Request) {
        match request {
            Request::ChooseBase(id) => self.choose_base(&id),
            Request::Longer(steps) => self.longer(steps),
            Request::Hang { kind, at } => self.hang(kind, at),
            Request::WhyNot(kind) => self.say_why_not(&kind),
            Request::Select(token) => {
                let hangs = self.session.history.now().place_of(token).is_some();
                self.session.selected = (hangs && self.session.selected != Some(token)).then_some(token);
            }
            Request::Shift { token, by } => {
                if let Some(place) = self.session.history.now().place_of(token) {
                    self.change(Change::Slide { token, to: place.saturating_add_signed(by as isize) });
                }
            }
            Request::Slide { token, to } => self.change(Change::Slide { token, to }),
            Request::PullOff(token) => self.pull_off(token),
            Request::Undo => self.alter(History::undo),
            Request::Redo => self.alter(History::redo),
            Request::Surprise => self.surprise(),
            Request::For(wearer) => {
                self.session.overlay = None;
                self.change(Change::Wearer(wearer));
            }
            Request::Neck(neck) => {
                self.session.overlay = None;
                self.change(Change::Neck(neck));
            }
            _ => {}
        }
    }

    /// Makes a change; what was said of the piece before does not hold any more.
    pub(super) fn change(&mut self, change: Change) {
        self.change_together(vec![change]);
    }

    /// Makes several changes in one step, which undo takes back as one.
    pub(super) fn change_together(&mut self, changes: Vec<Change>) {
        self.alter(|history| history.apply_together(changes));
    }

    /// Lets `alter` work on the design; if it became different, what was said of the piece before does not hold any more.
    fn alter(&mut self, alter: impl FnOnce(&mut History) -> bool) {
        let before = self.session.history.now().wearer;
        if !alter(&mut self.session.history) {
            return;
        }
        self.session.read = None;
        let design = self.session.history.now();
        if self.session.selected.is_some_and(|token| design.place_of(token).is_none()) {
            self.session.selected = None;
        }
        // Who it is for is answered once: the trays show what suits the same child.
        if design.wearer != before {
            self.session.filters.suits = design.wearer.is_child().then_some(design.wearer);
        }
    }

    fn choose_base(&mut self, id: &str) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(base) = snapshot.catalog.base(id).filter(|_| snapshot.available(id) > 0) else { return };
        let design = self.session.history.now();
        let change = Change::Base { id: id.to_owned(), length: base.length_like(design.length) };
        if design.base.is_none() {
            return self.session.history.start_with(change);
        }
        let mut fresh = design.clone();
        fresh.apply(change.clone());
        let Some(piece) = fresh.piece() else { return };
        let kept = what_goes_on(&snapshot, base, &piece);
        let left_off = piece.drops.len() - kept.drops.len();
        if left_off == 0 {
            return self.change(change);
        }
        let kept = kept.hung().map(|(id, look)| (id.to_owned(), look)).collect();
        self.change_together(vec![change, Change::Hung(kept)]);
        self.tell(Told::LeftOff { drops: left_off });
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
        let stands =
            standing(&snapshot.catalog, |id| snapshot.available(id), Some(&piece), &self.session.filters, drop_kind);
        if !matches!(stands, Standing::Open | Standing::Aside) {
            return self.say_why_not(&kind);
        }
        match places_of(&snapshot.catalog, &piece.with(&kind, usize::MAX)) {
            Err(Trouble::Hang(HangError::NoRoom { fits, .. })) => {
                let base = snapshot.catalog.base(&piece.base);
                let longer = base.is_some_and(|base| can_be_longer(base, &piece));
                return self.tell(Told::NoRoom { fits, longer });
            }
            Err(trouble) => warn!("{kind} does not hang: {trouble}"),
            Ok(_) => {}
        }
        self.session.selected = None;
        self.change(Change::Hang { kind: kind.clone(), at: at.unwrap_or(usize::MAX) });
        let newest = self.session.history.now().drops.iter().max_by_key(|hung| hung.token);
        if let Some(HungDrop { token, look, .. }) = newest.cloned() {
            self.effects.push(Effect::Hung { kind, look, token });
        }
    }

    /// From the sheet of filters it stays open; from anywhere else the drops are what the guest wants to see. Who asks for
    /// what suits somebody has said who it is for.
    pub(super) fn only_suiting(&mut self, wearer: Option<Wearer>) {
        if let Some(wearer) = wearer {
            self.change(Change::Wearer(wearer));
        }
        self.session.filters.suits = wearer;
        let designs = self.session.history.now().base.is_some();
        if designs && self.session.overlay != Some(Overlay::Filters) {
            self.go(Screen::Stage);
        }
    }

    fn say_why_not(&mut self, id: &str) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(kind) = snapshot.catalog.drop_kind(id) else { return };
        let piece = self.session.history.now().piece();
        let why =
            match standing(&snapshot.catalog, |id| snapshot.available(id), piece.as_ref(), &self.session.filters, kind)
            {
                Standing::Open | Standing::Aside => return,
                Standing::SoldOut => WhyNot::SoldOut,
                Standing::TooDear => WhyNot::TooDear,
                Standing::NotFor => {
                    let wearer = self.session.filters.suits.unwrap_or_default();
                    let verdict = snapshot.catalog.drop_cautions(kind, wearer);
                    let hazards = verdict.hazards();
                    let grave = hazards.iter().filter(|hazard| hazard.is_grave());
                    WhyNot::NotFor { wearer, hazards: grave.map(|hazard| hazard.spokesman().clone()).collect() }
                }
                Standing::NoFit => {
                    let base = piece.as_ref().and_then(|piece| snapshot.catalog.base(&piece.base));
                    let Some(fit) = base.map(|base| fit_on(base, kind.ring)) else { return };
                    WhyNot::NoFit { opening_mm: fit.opening_mm, needs_mm: fit.needs_mm }
                }
            };
        self.tell(Told::WhyNot { kind: id.to_owned(), why });
    }

    fn pull_off(&mut self, token: Token) {
        let hung = self.session.history.now().drops.iter().find(|hung| hung.token == token).cloned();
        let Some(hung) = hung else { return };
        self.change(Change::PullOff(token));
        self.effects.push(Effect::TakenOff { kind: hung.kind, look: hung.look, token });
    }

    fn surprise(&mut self) {
        let Some(snapshot) = self.snapshot() else { return };
        let Some(piece) = self.session.history.now().piece() else { return };
        let chance = self.chance.next();
        let drops = surprise(&snapshot, &piece, &self.session.filters, chance);
        if drops.is_empty() {
            self.tell(Told::NoSurprise);
        } else {
            self.session.selected = None;
            self.change(Change::Drops(drops));
            // They are dealt from their compartments, one by one.
            let dealt: Vec<_> = self.session.history.now().drops.clone();
            let hung = |HungDrop { kind, look, token }| Effect::Hung { kind, look, token };
            self.effects.extend(dealt.into_iter().map(hung));
        }
    }
}

/// What of the drops of `piece` goes onto `base`, which it has now: all whose rings fit, and of those as many as find room.
fn what_goes_on(snapshot: &Snapshot, base: &Base, piece: &Piece) -> Piece {
    let goes = |id: &str| snapshot.catalog.drop_kind(id).is_some_and(|kind| fit_on(base, kind.ring).passes);
    let mut kept: Vec<(String, LookNumber)> =
        piece.hung().filter(|(id, _)| goes(id)).map(|(id, look)| (id.to_owned(), look)).collect();
    loop {
        let less = piece.clone().with_drops(kept.clone());
        if !matches!(places_of(&snapshot.catalog, &less), Err(Trouble::Hang(HangError::NoRoom { .. }))) {
            return less;
        }
        kept.pop();
    }
}

/// Whether the base of `piece` is made longer than it now is.
fn can_be_longer(base: &Base, piece: &Piece) -> bool {
    match &base.kind {
        BaseKind::Necklace(necklace) => {
            piece.length.unwrap_or(necklace.lengths.usual).mm() < necklace.lengths.longest.mm()
        }
        BaseKind::Bangle(_) => false,
    }
}
