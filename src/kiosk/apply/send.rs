//! Review, sending, and what becomes of it.

use bevy::prelude::*;
use uuid::Uuid;

use super::{
    super::{
        known::Derived,
        session::{Overlay, Screen, SellerStep, Sending, Session},
        targets::ScrollId,
    },
    Guest,
};
use crate::{
    craft::{Change, Wearer},
    link::{Draft, Kept, PairError, PinAnswer, SendError},
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
    Paired(Result<u8, PairError>),
}

pub(super) fn apply_answers(mut answers: MessageReader<Answer>, mut guest: Guest) {
    for answer in answers.read() {
        guest.hear(answer.clone());
    }
}

impl Guest<'_> {
    pub(super) fn review(&mut self) {
        if self.derived.quote.is_none() || self.derived.trouble.is_some() {
            return;
        }
        self.go(Screen::Review);
        // The lines come first, also when the guest has been here before.
        self.scrolls.0.remove(&ScrollId::Review);
        if self.session.history.now().wearer == Wearer::Unknown {
            self.session.overlay = Some(Overlay::Wearer);
        }
    }

    /// Turns to what has not been seen of the cautions, so that a line stays in view.
    pub(super) fn read_on(&mut self) {
        let area = self.targets.scrolls.iter().find(|area| area.id == ScrollId::Review);
        let Some(page) = area.map(|area| area.rect.height() * 0.8) else { return };
        self.scrolls.0.entry(ScrollId::Review).or_default().by(page);
    }

    pub(super) fn send(&mut self) {
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

    pub(super) fn hear(&mut self, answer: Answer) {
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
            // The number is shown already: who has it has to hear that the desk does not know it.
            Answer::Refused { id } if matches!(&self.session.sending, Sending::Given { kept, .. } if kept.id == id) => {
                let text = self.texts.get("sent-refused");
                self.say("send-failed-title", text);
            }
            Answer::NotKept { id, error } if self.session.sending == Sending::Asked(id) => {
                self.not_sent(match error {
                    SendError::NotPaired => "send-not-paired",
                    SendError::LetGo => "send-let-go",
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
                    Err(error) => {
                        warn!("not paired: {error}");
                        self.why_not_paired(&error)
                    }
                });
            }
            Answer::Paired(_) => {}
        }
    }

    fn why_not_paired(&self, error: &PairError) -> String {
        match error {
            PairError::NotReached { desk, .. } => self.texts.with("pair-not-reached", &[("desk", desk.clone().into())]),
            PairError::NotADesk { desk } => self.texts.with("pair-not-a-desk", &[("desk", desk.clone().into())]),
            PairError::WrongCode => self.texts.get("pair-wrong-code"),
            PairError::NoCode => self.texts.get("pair-no-code"),
            PairError::Wait { seconds } => self.texts.with("pin-wait", &[("seconds", i64::from(*seconds).into())]),
            PairError::NoDigit => self.texts.get("pair-no-digit"),
            PairError::DeskFailed => self.texts.get("pair-desk-failed"),
            PairError::Disk(_) => self.texts.get("pair-disk"),
        }
    }

    /// The piece stays as it is, and can be sent again.
    pub(super) fn not_sent(&mut self, why: &str) {
        self.session.sending = Sending::No;
        let text = self.texts.get(why);
        self.say("send-failed-title", text);
    }

    /// Somebody else was first: the piece stays, without what is gone.
    pub(super) fn short(&mut self, parts: &[String]) {
        self.session.sending = Sending::No;
        let Some(snapshot) = self.snapshot() else { return };
        let catalog = &snapshot.catalog;
        let name = |id: &String| {
            let own = catalog.drop_kind(id).map(|kind| &kind.name).or(catalog.base(id).map(|base| &base.name));
            catalog.called(self.texts.lang.code(), id, own.unwrap_or(id)).to_owned()
        };
        let mut counted: Vec<(&String, usize)> = Vec::new();
        for part in parts {
            match counted.iter_mut().find(|(id, _)| *id == part) {
                Some((_, count)) => *count += 1,
                None => counted.push((part, 1)),
            }
        }
        let told = |(id, count): &(&String, usize)| match count {
            1 => name(id),
            count => format!("{count}\u{a0}×\u{a0}{}", name(id)),
        };
        let names = counted.iter().map(told).collect::<Vec<_>>().join(", ");
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
