//! What may be sent, and what becomes of it.

use tracing::warn;
use uuid::Uuid;

use super::{
    apply::Guest,
    effect::Effect,
    session::{Overlay, Screen, Sending},
    told::{NotSent, Told, counted},
};
use crate::{
    craft::{Change, Wearer},
    link::{Draft, News},
};

impl Guest {
    /// Whether a grown-up has to say that they have read the cautions.
    pub fn needs_grown_up(&self) -> bool {
        let child = self.derived.piece.as_ref().is_some_and(|piece| piece.wearer.is_child());
        child && !self.derived.verdict.cautions.is_empty()
    }

    /// Whether a grown-up has read the cautions as they are now, or none has to.
    pub fn has_been_read(&self) -> bool {
        !self.needs_grown_up() || self.session.read.as_ref() == Some(&self.derived.verdict)
    }

    pub(super) fn review(&mut self) {
        let has_base = self.session.history.now().base.is_some();
        if !has_base || self.derived.quote.is_none() || self.derived.trouble.is_some() {
            return;
        }
        self.go(Screen::Review);
        if self.session.history.now().wearer == Wearer::Unknown {
            self.session.overlay = Some(Overlay::Wearer);
        }
    }

    pub(super) fn send(&mut self) {
        // Only from where all of it is seen.
        if self.screen != Screen::Review || !self.has_been_read() {
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
        let stands = self.derived.trouble.is_none() && self.derived.quote.as_ref() == Some(&quote);
        if !stands || self.derived.verdict != verdict {
            return;
        }
        let grown_up_confirmed = self.needs_grown_up();
        let draft = Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed };
        self.session.sending = Sending::Asked(draft.id);
        self.effects.push(Effect::Send(Box::new(draft)));
    }

    /// What the line tells of a ticket; of another guest's it tells nothing to this one.
    pub(super) fn hear_of_the_ticket(&mut self, news: News) {
        let asked = |id: Uuid| self.session.sending == Sending::Asked(id);
        match news {
            News::Delivered { kept, short } => self.given(Sending::Given { kept, delivered: true, short }),
            News::Waiting(kept) => self.given(Sending::Given { kept, delivered: false, short: vec![] }),
            News::Short { kept, parts } if asked(kept.id) => self.short(&parts),
            News::Refused { kept, reason } => {
                warn!("the desk refuses {}: {reason}", kept.number);
                if asked(kept.id) {
                    self.not_sent(NotSent::Refused);
                } else if matches!(&self.session.sending, Sending::Given { kept: mine, .. } if mine.id == kept.id) {
                    // The number is shown already: who has it has to hear that the desk does not take it.
                    self.tell(Told::RefusedAfterAll);
                }
            }
            News::NotKept { id, error } => {
                warn!("the piece could not be sent: {error}");
                if asked(id) {
                    self.not_sent(NotSent::NotKept(error));
                }
            }
            _ => {}
        }
    }

    fn given(&mut self, now: Sending) {
        let Sending::Given { kept, .. } = &now else { return };
        match &self.session.sending {
            Sending::Asked(id) if *id == kept.id => {
                self.session.sending = now;
                self.go(Screen::Sent);
            }
            // A number that has been shown stays.
            Sending::Given { kept: mine, .. } if mine == kept => self.session.sending = now,
            _ => {}
        }
    }

    /// The piece stays as it is, and can be sent again.
    fn not_sent(&mut self, why: NotSent) {
        self.session.sending = Sending::No;
        self.tell(Told::NotSent(why));
    }

    /// Somebody else was first: the piece stays, without what is gone.
    fn short(&mut self, parts: &[String]) {
        self.session.sending = Sending::No;
        let design = self.session.history.now();
        let base_gone = design.base.as_ref().is_some_and(|base| parts.contains(base));
        let mut left = design.drops.clone();
        let mut gone = Vec::new();
        for part in parts {
            if let Some(last) = left.iter().rposition(|hung| hung.kind == *part) {
                gone.push(Change::PullOff(left.remove(last).token));
            }
        }
        self.change_together(gone);
        self.go(if base_gone { Screen::Base } else { Screen::Stage });
        self.tell(Told::Short { parts: counted(parts) });
    }
}
