//! Where what a finger holds would take hold, and how to hang a drop, shown once.

use bevy_egui::egui::{Color32, Pos2, Rect, Stroke, vec2};

use super::{
    super::{layout::Layout, paint::Brush, pointer::Drag, targets::TargetKind, tone::Tone},
    Scene,
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    if let Some(done) = s.moves.hint {
        hint(b, s, done, layout);
    }
    for finger in s.fingers.iter().filter(|finger| finger.dragging) {
        match &finger.drag {
            Drag::Carry { .. } if layout.stage.contains(finger.now) && s.hanger.takes_hold(finger.now) => {
                place_mark(b, s, finger.now);
            }
            // What has been pulled off is in the hand and has no place.
            Drag::Slide { .. } if s.hanger.pulls_off(finger.from, finger.now) => {}
            Drag::Slide { .. } => place_mark(b, s, finger.now),
            Drag::Carry { .. } | Drag::Nothing | Drag::Swing | Drag::Scroll(_) | Drag::Corner => {}
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
    if let Some(picture) = s.catalog().and_then(|c| c.drop_kind(kind)).and_then(|kind| s.pictures.small(&kind.picture))
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
