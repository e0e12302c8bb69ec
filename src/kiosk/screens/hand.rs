//! What fingers hold and what flies: over everything, because it may cross from the trays to the stage.

use bevy_egui::egui::{Color32, Pos2, Rect, Stroke, pos2, vec2};

use super::{
    super::{layout::Layout, paint::Brush, pointer::Drag, targets::TargetKind, tone::Tone},
    Scene,
};
use crate::craft::DropKind;

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let Some(catalog) = s.catalog() else { return };
    if let Some(done) = s.moves.hint {
        hint(b, s, done, layout);
    }
    for flight in &s.flights.all {
        if let Some(kind) = catalog.drop_kind(&flight.kind) {
            held(b, s, kind, flight.at, 1.0);
        }
    }
    for finger in s.fingers.iter().filter(|finger| finger.dragging) {
        match &finger.drag {
            Drag::Carry { kind } => {
                let Some(kind) = catalog.drop_kind(kind) else { continue };
                if layout.stage.contains(finger.now) && s.hanger.takes_hold(finger.now) {
                    place_mark(b, s, finger.now);
                }
                held(b, s, kind, finger.now, 1.06);
            }
            // What still hangs is on the stage; what has been pulled off is in the hand.
            Drag::Slide { token } if s.hanger.pulls_off(finger.from, finger.now) => {
                let hung = s.guest.session().history.now().drops.iter().find(|hung| hung.token == *token);
                let Some(kind) = hung.and_then(|hung| catalog.drop_kind(&hung.kind)) else { continue };
                let grip = s.hanger.rest_ring(*token).map_or(vec2(0.0, 0.0), |ring| ring - finger.from);
                held(b, s, kind, finger.now + grip, 1.06);
            }
            Drag::Slide { .. } => place_mark(b, s, finger.now),
            Drag::Nothing | Drag::Swing | Drag::Scroll(_) | Drag::Corner => {}
        }
    }
}

/// Shows without words how to hang a drop: a pale one goes from its compartment to the base, under a fingertip.
fn hint(b: &Brush, s: &Scene, done: f32, layout: &Layout) {
    let first = b.targets.all.iter().find_map(|target| match &target.kind {
        TargetKind::Compartment { kind } => Some((target.rect.center(), kind)),
        _ => None,
    });
    let Some((from, kind)) = first else { return };
    let to = s.hanger.nearest(layout.stage.center_bottom()).unwrap_or(layout.stage.center());
    let t = ((done - 0.15) / 0.6).clamp(0.0, 1.0);
    let at = from + (to - from) * (t * t * (3.0 - 2.0 * t));
    let seen = (done * 8.0).min((1.0 - done) * 5.0).clamp(0.0, 1.0);
    if let Some(picture) = s.catalog().and_then(|c| c.drop_kind(kind)).and_then(|kind| s.pictures.large(&kind.picture))
    {
        let room = Rect::from_center_size(at + vec2(0.0, b.px(40.0)), vec2(b.px(110.0), b.px(110.0)));
        b.picture(room, picture.texture, picture.size, Color32::WHITE.gamma_multiply(0.75 * seen));
    }
    let ring = b.color(Tone::Plum).gamma_multiply(seen);
    b.painter.circle(at + vec2(0.0, b.px(40.0)), b.px(26.0), ring.gamma_multiply(0.25), Stroke::new(3.0, ring));
}

/// Where the ring would take hold.
fn place_mark(b: &Brush, s: &Scene, finger: Pos2) {
    if let Some(near) = s.hanger.nearest(finger) {
        let radius = b.px(13.0);
        b.painter.circle(near, radius, b.color(Tone::Plum).gamma_multiply(0.18), b.stroke(3.0, Tone::Plum));
    }
}

/// A drop that hangs from `at` by its ring, at the size it has on the stage, but never too small to see under a finger.
fn held(b: &Brush, s: &Scene, kind: &DropKind, at: Pos2, larger: f32) {
    let least = b.px(64.0) / (kind.height.mm() as f32).max(1.0);
    let px = s.hanger.px_per_mm.max(least).max(0.5) * larger;
    let (outside, wire) = (kind.ring.outside.mm() as f32 * px, kind.ring.wire.mm() as f32 * px);
    let size = vec2(kind.width.mm() as f32 * px, kind.height.mm() as f32 * px);
    let ring = pos2(at.x, at.y + outside / 2.0 - wire);
    let body = Rect::from_min_size(pos2(at.x - size.x / 2.0, at.y + kind.ring.hangs_mm() as f32 * px), size);
    b.shadow(body.translate(vec2(b.px(6.0), b.px(12.0))).shrink(2.0), size.x * 0.4, b.px(16.0));
    let tones = kind.finish.map(|finish| finish.tones());
    let color =
        tones.map_or(b.color(Tone::Brass), |tones| Color32::from_rgb(tones.body[0], tones.body[1], tones.body[2]));
    if let Some(picture) = s.pictures.large(&kind.picture) {
        let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        b.painter.image(picture.texture, body, whole, Color32::WHITE);
    }
    b.painter.circle_stroke(ring, (outside - wire) / 2.0, Stroke::new(wire.max(1.5), color));
}
