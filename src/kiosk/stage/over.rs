//! What is drawn over the paper: a second look at the same window, only while there is something to see.

use bevy::{
    camera::{RenderTarget, Viewport, visibility::RenderLayers},
    prelude::*,
};
use bevy_egui::{
    PrimaryEguiContext,
    egui::{Pos2, Rect},
};

use super::{
    super::{layout::Layout, outside::window::WindowSize, tablet::Tablet},
    InHand,
};
use crate::guest::Screen;

/// The layer of what lies over the paper.
pub(super) const OVER: RenderLayers = RenderLayers::layer(1);

/// Looks at what is over the paper.
#[derive(Component)]
pub(in crate::kiosk) struct OverEye;

/// The two eyes of the tablet: one sees the stage and the paper over it, the other what is over the paper. Both draw into the
/// window, or else into `picture`.
pub(in crate::kiosk) fn open_eyes(commands: &mut Commands, picture: Option<&Handle<Image>>) {
    let target = || picture.map_or_else(RenderTarget::default, |picture| RenderTarget::Image(picture.clone().into()));
    commands.spawn((Name::new("eye"), Camera2d, Msaa::Off, target(), PrimaryEguiContext));
    let camera = Camera { order: 1, clear_color: ClearColorConfig::None, is_active: false, ..default() };
    commands.spawn((Name::new("eye over the paper"), OverEye, Camera2d, camera, Msaa::Off, target(), OVER));
}

/// The second eye is open only where there is something to see, and the first one is. Of a sent piece it sees what is
/// within its picture on the ticket.
pub(super) fn open_where_needed(
    mut eyes: Query<(&mut Camera, &mut Transform, Has<OverEye>)>,
    in_hand: Res<InHand>,
    tablet: Res<Tablet>,
    size: WindowSize,
) {
    let first = eyes.iter().any(|(camera, _, over)| !over && camera.is_active);
    let sent = tablet.screen() == Screen::Sent;
    let open = first && (!in_hand.all().is_empty() || sent);
    let whole = Rect::from_min_size(Pos2::ZERO, size.get());
    let part = if sent { Layout::new(size.get(), &tablet).keepsake().intersect(whole) } else { whole };
    let middle = part.center() - whole.center();
    // Never beyond the window, however the sides are rounded.
    let physical = |p: Pos2| UVec2::new((p.x * size.scale()).max(0.0) as u32, (p.y * size.scale()).max(0.0) as u32);
    let (from, to) = (physical(part.min), physical(part.max));
    let viewport = sent.then(|| Viewport {
        physical_position: from,
        physical_size: to.saturating_sub(from).max(UVec2::ONE),
        ..default()
    });
    for (mut camera, mut transform, _) in eyes.iter_mut().filter(|(.., over)| *over) {
        if camera.is_active != open {
            camera.is_active = open;
        }
        let now = camera.viewport.as_ref().map(|seen| (seen.physical_position, seen.physical_size));
        if now != viewport.as_ref().map(|seen| (seen.physical_position, seen.physical_size)) {
            camera.viewport.clone_from(&viewport);
        }
        // Its height is the light's.
        transform.set_if_neq(Transform::from_xyz(middle.x, -middle.y, transform.translation.z));
    }
}
