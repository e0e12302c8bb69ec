//! The piece on the screen: where it hangs, how it moves, and the sprites that show it. A view of the design, never the truth.
//!
//! | file | look here for |
//! | --- | --- |
//! | `hanger` | millimetres of the piece and pixels of the window |
//! | `motion`, `flights` | the piece in the hand; drops in the air |
//! | `sprites`, `lit`, `art` | what is drawn; the light it is drawn in; the pictures built into the program |

mod art;
mod flights;
mod hanger;
mod lit;
mod motion;
mod sprites;

use bevy::prelude::*;

pub use art::{Signs, paper_tint};
pub use flights::{Flight, Flights, To};
pub use hanger::Hanger;
pub use motion::{Moving, ranks};

use super::Phase;

pub(super) fn plugin(app: &mut App) {
    app.add_plugins(lit::plugin)
        .init_resource::<Hanger>()
        .init_resource::<Flights>()
        .init_resource::<Moving>()
        .add_systems(PreStartup, art::load)
        .add_systems(
            Update,
            (hanger::fit_the_view, flights::fly_on, motion::move_on, sprites::place_sprites)
                .chain()
                .in_set(Phase::Present),
        );
}
