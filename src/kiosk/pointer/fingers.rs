//! Which fingers are down and what each of them means. Time is in seconds.

use bevy::prelude::Resource;
use bevy_egui::egui::{Pos2, Rect, Vec2};

use crate::kiosk::{
    paint::Touch,
    targets::{ScrollId, TargetKind, Targets},
    theme,
};
use crate::{craft::Token, guest::Request};

/// The mouse, as a finger.
pub(crate) const MOUSE: u64 = u64::MAX;
/// A finger that has been silent for so long is gone when another comes down: some screens lose the end of a touch.
const LOST_S: f64 = 20.0;
/// A finger that has rested so long before it moves or leaves has no speed.
const RESTED_S: f64 = 0.1;
/// Screens that send mouse events after a touch send them within this time.
const MOUSE_AFTER_TOUCH_S: f64 = 0.3;

/// What a finger does when it leaves its place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Drag {
    /// Nothing.
    Nothing,
    /// Carries a drop out of its compartment.
    Carry {
        /// Id of the kind.
        kind: String,
    },
    /// Slides a hung drop.
    Slide {
        /// Which.
        token: Token,
    },
    /// Swings the base.
    Swing,
    /// Scrolls.
    Scroll(ScrollId),
    /// Makes the drawn bank card larger or smaller.
    Corner,
}

/// One finger that is down.
#[derive(Debug, Clone)]
pub(crate) struct Finger {
    /// Its number.
    pub id: u64,
    /// Where it came down.
    pub from: Pos2,
    /// Where it is.
    pub now: Pos2,
    /// When it came down.
    pub since: f64,
    /// When it was last heard of.
    pub heard: f64,
    /// What it asks for if it taps, and where that can be touched.
    tap: Option<(Request, Rect)>,
    /// What it does if it drags.
    pub drag: Drag,
    /// It has left its place.
    pub dragging: bool,
    /// It was held long enough to mean something else already.
    spent: bool,
    /// Its speed in pixels a second, for flings.
    speed: Vec2,
}

/// What came of a finger.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Felt {
    /// It tapped.
    Tap(Request),
    /// It scrolled by so many pixels.
    Scrolled(ScrollId, f32),
    /// It moved the corner of the drawn bank card by so many pixels to the right.
    Widened(f32),
    /// It let go of what it dragged, at a place, with a speed.
    Released {
        /// What.
        drag: Drag,
        /// Where it had come down.
        from: Pos2,
        /// Where it let go.
        at: Pos2,
        /// In pixels a second.
        speed: Vec2,
    },
    /// It is gone without letting go: what it dragged goes back.
    Lost {
        /// What.
        drag: Drag,
        /// Where it had come down.
        from: Pos2,
        /// Where it was last.
        at: Pos2,
    },
}

/// All fingers that are down.
#[derive(Resource, Debug, Default)]
pub(crate) struct Fingers {
    down: Vec<Finger>,
    last_touch: f64,
    /// Where the mouse is.
    pub mouse: Option<Pos2>,
}

impl Fingers {
    /// Those that are down.
    pub(crate) fn iter(&self) -> impl Iterator<Item = &Finger> {
        self.down.iter()
    }

    /// Where each of them began and is, for what looks pressed.
    pub(crate) fn touches(&self) -> Vec<Touch> {
        self.down.iter().filter(|f| !f.dragging).map(|f| Touch { from: f.from, now: f.now }).collect()
    }

    /// Whether the mouse counts now.
    pub(crate) fn mouse_counts(&self, now: f64) -> bool {
        self.last_touch == 0.0 || now - self.last_touch > MOUSE_AFTER_TOUCH_S
    }

    /// A finger comes down. Fingers that have been silent for long are lost.
    pub(crate) fn comes_down(&mut self, id: u64, at: Pos2, now: f64, targets: &Targets) -> Vec<Felt> {
        self.touched(id, now);
        let mut felt = Vec::new();
        for lost in self.down.extract_if(.., |finger| finger.id == id || now - finger.heard > LOST_S) {
            felt.extend(lost.gone());
        }
        let (tap, mut drag) = meaning(targets, at);
        // What a finger slides already is not another one's to pull off.
        if matches!(drag, Drag::Slide { .. }) && self.down.iter().any(|finger| finger.drag == drag) {
            drag = Drag::Nothing;
        }
        self.down.push(Finger {
            id,
            from: at,
            now: at,
            since: now,
            heard: now,
            tap,
            drag,
            dragging: false,
            spent: false,
            speed: Vec2::ZERO,
        });
        felt
    }

    /// A finger moves.
    pub(crate) fn moves(&mut self, id: u64, at: Pos2, now: f64) -> Option<Felt> {
        self.touched(id, now);
        let finger = self.down.iter_mut().find(|finger| finger.id == id)?;
        let step = at - finger.now;
        let seconds = (now - finger.heard).clamp(0.004, 0.1) as f32;
        if now - finger.heard > RESTED_S {
            finger.speed = Vec2::ZERO;
        }
        finger.speed = finger.speed * 0.5 + step / seconds * 0.5;
        (finger.now, finger.heard) = (at, now);
        let was = finger.dragging;
        if !was && !finger.spent && finger.drag != Drag::Nothing && finger.from.distance(at) > theme::SLOP_PX {
            finger.dragging = true;
        }
        match finger.drag {
            // What the finger wandered before it scrolled is made up for, or the page would jump behind it.
            Drag::Scroll(id) if finger.dragging => {
                Some(Felt::Scrolled(id, if was { -step.y } else { finger.from.y - at.y }))
            }
            Drag::Corner if finger.dragging => Some(Felt::Widened(if was { step.x } else { at.x - finger.from.x })),
            _ => None,
        }
    }

    /// A finger leaves the screen.
    pub(crate) fn leaves(&mut self, id: u64, at: Pos2, now: f64) -> Vec<Felt> {
        let mut felt: Vec<Felt> = self.moves(id, at, now).into_iter().collect();
        let Some(place) = self.down.iter().position(|finger| finger.id == id) else { return felt };
        let finger = self.down.remove(place);
        if finger.dragging {
            // A finger that rested before it left does not fling.
            let speed = if finger.speed.length() < 40.0 { Vec2::ZERO } else { finger.speed };
            felt.push(Felt::Released { drag: finger.drag, from: finger.from, at, speed });
        } else if let Some((request, rect)) = finger.tap.filter(|_| !finger.spent)
            && rect.expand(theme::SLOP_PX).contains(at)
        {
            felt.push(Felt::Tap(request));
        }
        felt
    }

    /// The system takes a finger away.
    pub(crate) fn cancelled(&mut self, id: u64) -> Vec<Felt> {
        self.down.extract_if(.., |finger| finger.id == id).filter_map(Finger::gone).collect()
    }

    /// The window is no longer in front: all fingers are gone.
    pub(crate) fn all_cancelled(&mut self) -> Vec<Felt> {
        self.down.drain(..).filter_map(Finger::gone).collect()
    }

    /// Whether a finger has rested in `corner` for `seconds`; it means nothing else from then on.
    pub(crate) fn held_in(&mut self, corner: Rect, seconds: f64, now: f64) -> bool {
        let held = self.down.iter_mut().find(|finger| {
            !finger.spent
                && corner.contains(finger.from)
                && corner.contains(finger.now)
                && now - finger.since >= seconds
        });
        if let Some(finger) = held {
            finger.spent = true;
            return true;
        }
        false
    }

    fn touched(&mut self, id: u64, now: f64) {
        if id != MOUSE {
            self.last_touch = now;
        }
    }
}

impl Finger {
    fn gone(self) -> Option<Felt> {
        self.dragging.then_some(Felt::Lost { drag: self.drag, from: self.from, at: self.now })
    }
}

/// What a finger at `at` would tap and drag.
fn meaning(targets: &Targets, at: Pos2) -> (Option<(Request, Rect)>, Drag) {
    let target = targets.at(at);
    let drag = match target.map(|target| &target.kind) {
        Some(TargetKind::Compartment { kind }) => Drag::Carry { kind: kind.clone() },
        Some(TargetKind::Hung { token }) => Drag::Slide { token: *token },
        None if targets.corner.is_some_and(|corner| corner.contains(at)) => Drag::Corner,
        found => match targets.scroll_at(at) {
            Some(area) => Drag::Scroll(area.id),
            None if found.is_none() && targets.stage.is_some_and(|stage| stage.contains(at)) => Drag::Swing,
            None => Drag::Nothing,
        },
    };
    let tap = match target {
        Some(target) => Some((target.request.clone(), target.rect)),
        None if targets.sheet.is_some_and(|sheet| sheet.contains(at)) => None,
        None => targets.elsewhere.clone().map(|request| (request, Rect::EVERYTHING)),
    };
    (tap, drag)
}

#[cfg(test)]
mod tests {
    use bevy_egui::egui::pos2;

    use super::*;
    use crate::kiosk::targets::Target;

    fn targets() -> Targets {
        let target = |x: f32, request, kind| Target {
            rect: Rect::from_min_size(pos2(x, 0.0), Vec2::splat(60.0)),
            request,
            label: "x".into(),
            kind,
            chosen: false,
        };
        Targets {
            all: vec![
                target(0.0, Request::Undo, TargetKind::Button),
                target(100.0, Request::Redo, TargetKind::Compartment { kind: "key".into() }),
            ],
            ..Targets::default()
        }
    }

    #[test]
    fn a_slow_tap_is_a_tap_and_sliding_off_is_none() {
        let (targets, mut fingers) = (targets(), Fingers::default());
        fingers.comes_down(1, pos2(30.0, 30.0), 1.0, &targets);
        assert_eq!(fingers.leaves(1, pos2(44.0, 36.0), 60.0), [Felt::Tap(Request::Undo)]);
        fingers.comes_down(1, pos2(30.0, 30.0), 61.0, &targets);
        assert_eq!(fingers.leaves(1, pos2(30.0, 130.0), 61.1), []);
    }

    #[test]
    fn beyond_the_slop_a_compartment_gives_its_drop() {
        let (targets, mut fingers) = (targets(), Fingers::default());
        let drag = Drag::Carry { kind: "key".into() };
        fingers.comes_down(7, pos2(130.0, 30.0), 1.0, &targets);
        fingers.moves(7, pos2(130.0, 90.0), 1.1);
        let felt = fingers.leaves(7, pos2(130.0, 200.0), 1.2);
        assert!(matches!(&felt[..], [Felt::Released { drag: d, .. }] if *d == drag), "{felt:?}");
        fingers.comes_down(7, pos2(130.0, 30.0), 2.0, &targets);
        fingers.moves(7, pos2(130.0, 90.0), 2.1);
        assert_eq!(
            fingers.cancelled(7),
            [Felt::Lost { drag: drag.clone(), from: pos2(130.0, 30.0), at: pos2(130.0, 90.0) }]
        );
        fingers.comes_down(7, pos2(130.0, 30.0), 3.0, &targets);
        fingers.moves(7, pos2(130.0, 90.0), 3.1);
        assert_eq!(
            fingers.comes_down(8, pos2(30.0, 30.0), 23.2, &targets),
            [Felt::Lost { drag, from: pos2(130.0, 30.0), at: pos2(130.0, 90.0) }]
        );
    }

    #[test]
    fn the_mouse_is_deaf_right_after_a_touch() {
        let (targets, mut fingers) = (targets(), Fingers::default());
        assert!(fingers.mouse_counts(10.0));
        fingers.comes_down(1, pos2(0.0, 0.0), 10.0, &targets);
        assert!(!fingers.mouse_counts(10.29) && fingers.mouse_counts(10.31));
    }
}
