//! The piece on the screen: where it hangs, how it moves, and the sprites that show it. A view of the design, never the truth.
//!
//! | file | look here for |
//! | --- | --- |
//! | `hanger` | millimetres of the piece and pixels of the window |
//! | `motion`, `flights`, `in_hand` | the piece as it moves; where drops fly; how they hang while they do not hang on the base |
//! | `seen`, `sprites`, `over` | what is drawn of a piece; the sprites that show it; what is drawn over the paper |
//! | `lit`, `light`, `art` | how it is drawn; the light that leans; the pictures built into the program |

mod art;
mod flights;
mod hanger;
mod in_hand;
mod light;
mod lit;
mod motion;
mod over;
mod seen;
mod sprites;

use bevy::prelude::*;

pub use art::{Signs, paper_tint};
pub use flights::{Flight, Flights, Landed, To};
pub use hanger::Hanger;
pub use in_hand::{Held, InHand};
pub use motion::{Moving, ranks};
pub(super) use over::open_eyes;

use super::Phase;

pub(super) fn plugin(app: &mut App) {
    app.add_plugins(lit::plugin)
        .init_resource::<Hanger>()
        .init_resource::<Flights>()
        .init_resource::<Moving>()
        .init_resource::<InHand>()
        .add_systems(PreStartup, art::load)
        .add_systems(
            Update,
            (
                hanger::fit_the_view,
                flights::fly_on,
                motion::move_on,
                in_hand::lead,
                sprites::place_linen,
                sprites::place_sprites,
                over::open_where_needed,
                light::lean,
            )
                .chain()
                .in_set(Phase::Present),
        );
}
