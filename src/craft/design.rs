//! The piece while a guest works on it: every change, and the way back.

use serde::{Deserialize, Serialize};

use super::{Length, LookNumber, Piece, Wearer, free_look};

/// Tells one hung drop from another of the same kind, for as long as the design lives.
pub type Token = u32;

/// One drop on the base.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct HungDrop {
    /// Which of the hung drops this is.
    pub token: Token,
    /// Id of its [`super::DropKind`].
    pub kind: String,
    /// Of an assortment, the number by which it keeps its look, whatever else becomes of the piece.
    #[serde(default)]
    pub look: LookNumber,
}

/// What a guest has chosen so far.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Design {
    /// Id of the base, once chosen.
    pub base: Option<String>,
    /// Whole length of a necklace.
    pub length: Option<Length>,
    /// Who it is for.
    pub wearer: Wearer,
    /// Neck of the wearer, where they said it.
    #[serde(default)]
    pub neck: Option<Length>,
    /// The drops, left to right.
    pub drops: Vec<HungDrop>,
    next_token: Token,
}

/// One change to a design.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// Take another base; the drops stay on it.
    Base {
        /// Id of the base.
        id: String,
        /// The length of a necklace; none for a bangle.
        length: Option<Length>,
    },
    /// Make the necklace this long.
    Length(Length),
    /// Say who it is for.
    Wearer(Wearer),
    /// Say how far round the wearer's neck is, or that it is not known.
    Neck(Option<Length>),
    /// Hang a drop so that it becomes number `at` from the left; past the end means at the end.
    Hang {
        /// Id of the drop in the catalogue.
        kind: String,
        /// Number from the left, counted from 0.
        at: usize,
    },
    /// Pull a drop off.
    PullOff(Token),
    /// Slide a drop so that it becomes number `to` from the left.
    Slide {
        /// The drop that slides.
        token: Token,
        /// Number from the left, counted from 0.
        to: usize,
    },
    /// Replace all drops at once, as "surprise me" does.
    Drops(Vec<String>),
    /// Replace all drops by these with the numbers of their looks, as a piece has them that lies there already.
    Hung(Vec<(String, LookNumber)>),
}

impl Design {
    /// Makes `change`; whether anything became different.
    pub fn apply(&mut self, change: Change) -> bool {
        match change {
            Change::Base { id, length } => {
                let same = self.base.as_ref() == Some(&id) && self.length == length;
                self.base = Some(id);
                self.length = length;
                !same
            }
            Change::Length(length) => self.length.replace(length) != Some(length),
            Change::Wearer(wearer) => std::mem::replace(&mut self.wearer, wearer) != wearer,
            Change::Neck(neck) => std::mem::replace(&mut self.neck, neck) != neck,
            Change::Hang { kind, at } => {
                let hung = self.hung(kind);
                self.drops.insert(at.min(self.drops.len()), hung);
                true
            }
            Change::PullOff(token) => match self.place_of(token) {
                Some(at) => {
                    self.drops.remove(at);
                    true
                }
                None => false,
            },
            Change::Slide { token, to } => match self.place_of(token) {
                Some(from) if from != to.min(self.drops.len() - 1) => {
                    let hung = self.drops.remove(from);
                    self.drops.insert(to.min(self.drops.len()), hung);
                    true
                }
                _ => false,
            },
            Change::Drops(kinds) => {
                self.drops.clear();
                for kind in kinds {
                    let hung = self.hung(kind);
                    self.drops.push(hung);
                }
                true
            }
            Change::Hung(drops) => {
                self.drops.clear();
                for (kind, look) in drops {
                    let hung = HungDrop { look, ..self.hung(kind) };
                    self.drops.push(hung);
                }
                true
            }
        }
    }

    /// How many of one kind hang on it.
    pub fn count_of(&self, kind: &str) -> usize {
        self.drops.iter().filter(|hung| hung.kind == kind).count()
    }

    /// The piece, once there is a base.
    pub fn piece(&self) -> Option<Piece> {
        let (drops, looks) = (vec![], vec![]);
        let base = self.base.clone()?;
        let bare = Piece { base, length: self.length, wearer: self.wearer, neck: self.neck, drops, looks };
        Some(bare.with_drops(self.drops.iter().map(|hung| (hung.kind.clone(), hung.look))))
    }

    /// The number of the look that the next drop of this kind gets.
    pub fn next_look(&self, kind: &str) -> LookNumber {
        free_look(self.drops.iter().filter(|hung| hung.kind == kind).map(|hung| hung.look))
    }

    /// Where a drop hangs, counted from the left.
    pub fn place_of(&self, token: Token) -> Option<usize> {
        self.drops.iter().position(|hung| hung.token == token)
    }

    fn hung(&mut self, kind: String) -> HungDrop {
        let token = self.next_token;
        self.next_token += 1;
        let look = self.next_look(&kind);
        HungDrop { token, kind, look }
    }
}

/// A design with its undo and redo.
#[derive(Debug, Clone, Default)]
pub struct History {
    now: Design,
    past: Vec<Design>,
    future: Vec<Design>,
}

impl History {
    /// More steps back than any guest takes; keeps a playing child from filling the memory.
    const STEPS: usize = 200;

    /// The design as it stands.
    pub fn now(&self) -> &Design {
        &self.now
    }

    /// Makes a change that nobody can take back: before it there is nothing to look at.
    pub fn start_with(&mut self, change: Change) {
        self.now.apply(change);
        self.past.clear();
        self.future.clear();
    }

    /// Makes a change that undo can take back; whether anything became different.
    pub fn apply(&mut self, change: Change) -> bool {
        self.apply_together([change])
    }

    /// Makes several changes that undo takes back as one; whether anything became different.
    pub fn apply_together(&mut self, changes: impl IntoIterator<Item = Change>) -> bool {
        let before = self.now.clone();
        let mut changed = false;
        for change in changes {
            changed |= self.now.apply(change);
        }
        if changed {
            self.past.push(before);
            if self.past.len() > Self::STEPS {
                self.past.remove(0);
            }
            self.future.clear();
        }
        changed
    }

    /// Takes the last change back; whether there was one.
    pub fn undo(&mut self) -> bool {
        Self::step(&mut self.past, &mut self.now, &mut self.future)
    }

    /// Makes the last change taken back again; whether there was one.
    pub fn redo(&mut self) -> bool {
        Self::step(&mut self.future, &mut self.now, &mut self.past)
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is something to make again.
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    fn step(from: &mut Vec<Design>, now: &mut Design, to: &mut Vec<Design>) -> bool {
        let Some(mut next) = from.pop() else { return false };
        // Tokens are never given out twice, or a sprite of an undone drop could pass for a new one.
        next.next_token = next.next_token.max(now.next_token);
        to.push(std::mem::replace(now, next));
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hang(kind: &str, at: usize) -> Change {
        Change::Hang { kind: kind.into(), at }
    }

    fn kinds(history: &History) -> Vec<&str> {
        history.now().drops.iter().map(|hung| hung.kind.as_str()).collect()
    }

    #[test]
    fn drops_are_hung_slid_and_pulled_off() {
        let mut h = History::default();
        for (kind, at) in [("key", 0), ("moon", 0), ("star", 99)] {
            assert!(h.apply(hang(kind, at)));
        }
        assert_eq!(kinds(&h), ["moon", "key", "star"]);
        let star = h.now().drops[2].token;
        assert!(h.apply(Change::Slide { token: star, to: 0 }));
        assert_eq!(kinds(&h), ["star", "moon", "key"]);
        assert!(!h.apply(Change::Slide { token: star, to: 0 }), "sliding to where it hangs changes nothing");
        assert!(h.apply(Change::PullOff(star)));
        assert!(!h.apply(Change::PullOff(star)));
        assert_eq!(kinds(&h), ["moon", "key"]);
    }

    #[test]
    fn several_changes_are_one_step_and_the_start_stays() {
        let mut h = History::default();
        h.start_with(Change::Base { id: "chain".into(), length: None });
        assert!(!h.can_undo());
        h.apply(hang("key", 0));
        let other = Change::Base { id: "bangle".into(), length: None };
        assert!(h.apply_together([other.clone(), Change::Drops(vec![])]));
        assert!(h.now().base.as_deref() == Some("bangle") && h.now().drops.is_empty());
        assert!(h.undo());
        assert_eq!((h.now().base.as_deref(), kinds(&h)), (Some("chain"), vec!["key"]));
        assert!(h.undo() && !h.undo());
        assert_eq!(h.now().base.as_deref(), Some("chain"));
    }

    /// Of an assortment, each hung drop looks the same from when it is hung until it is pulled off.
    #[test]
    fn a_look_stays_whatever_becomes_of_the_others() {
        let mut h = History::default();
        h.start_with(Change::Base { id: "chain".into(), length: None });
        for at in [0, 0, 1] {
            h.apply(hang("mix", at));
        }
        let looks = |h: &History| -> Vec<_> {
            let mut all: Vec<_> = h.now().drops.iter().map(|hung| (hung.token, hung.look)).collect();
            all.sort_unstable();
            all
        };
        let three = looks(&h);
        assert_eq!(three, [(0, 0), (1, 1), (2, 2)]);
        h.apply(Change::Slide { token: 0, to: 0 });
        h.apply(hang("key", 0));
        h.apply(Change::Base { id: "bangle".into(), length: None });
        assert!(three.iter().all(|one| looks(&h).contains(one)));
        h.apply(Change::PullOff(0));
        assert_eq!(h.now().piece().unwrap().hung().filter(|(id, _)| *id == "mix").count(), 2);
        assert!([(1, 1), (2, 2)].iter().all(|one| looks(&h).contains(one)));
        assert_eq!(h.now().next_look("mix"), 0, "what was pulled off makes room for the next");
        assert!(h.undo() && three.iter().all(|one| looks(&h).contains(one)));
        assert!(h.undo() && h.undo() && h.undo() && h.redo() && three == looks(&h));
        let piece = h.now().piece().unwrap();
        let mut elsewhere = Design::default();
        elsewhere.apply(Change::Base { id: piece.base.clone(), length: None });
        elsewhere.apply(Change::Wearer(piece.wearer));
        elsewhere.apply(Change::Hung(piece.hung().map(|(id, look)| (id.to_owned(), look)).collect()));
        assert_eq!(elsewhere.piece(), Some(piece));
    }

    #[test]
    fn undo_and_redo_walk_the_same_way_back_and_forth() {
        let mut h = History::default();
        h.apply(hang("key", 0));
        h.apply(hang("moon", 1));
        let first_moon = h.now().drops[1].token;
        assert!(h.undo() && h.redo());
        assert_eq!(kinds(&h), ["key", "moon"]);
        assert!(h.undo());
        h.apply(hang("star", 1));
        assert!(!h.can_redo(), "a new change ends the way forward");
        assert_ne!(h.now().drops[1].token, first_moon, "tokens are never given out twice");
        assert!(h.undo() && h.undo() && !h.undo());
        assert_eq!(h.now().drops, []);
    }
}
