//! The guest's tablet, in Bevy.
//!
//! The guest's session in [`Tablet`] is the truth, and one system changes it; sprites and paper are a view of it. A frame
//! goes Intake → Attend → Apply → Derive → Present; then the paper is painted, which also notes what can be touched. So a
//! touch is answered by what was on the screen when it came down.
//!
//! | file | look here for |
//! | --- | --- |
//! | `run`, `outside` | the ways to start; the window, egui and the screen reader as we use them |
//! | `tablet`, `bridge` | the guest's session and what it asks to be carried out; news of the desk |
//! | `pointer`, `targets` | fingers, mouse and keys; what they meet |
//! | `stage`, `pictures` | the piece as it hangs and moves; the drops' pictures, from the file to the graphics card |
//! | `screens`, `layout`, `paint` | what is painted; where it lies; what it is painted with |
//! | `theme`, `tone`, `i18n` | sizes and durations; colours; words in the guest's language |
//! | `idle`, `power` | a guest who has left; frames only while something moves |

mod bridge;
pub mod i18n;
mod idle;
mod layout;
mod outside;
mod paint;
mod pictures;
mod pointer;
mod power;
mod run;
mod screens;
pub mod stage;
mod tablet;
pub mod targets;
mod theme;
pub mod tone;

use std::{
    path::PathBuf,
    sync::{Arc, Mutex, PoisonError},
};

use bevy::prelude::*;

use crate::{
    guest::Contrast,
    link::{Link, NewsReceiver},
};
pub use outside::desk_here::DeskHere;
pub use paint::{Icon, Proof, Written};
pub use pictures::Pictures;
pub use run::{draw_all, headless, offscreen, run, shoot};
pub use tablet::Tablet;

/// Shown where nothing is drawn.
const LINEN: bevy_egui::egui::Color32 = tone::Tone::Linen.color(Contrast::Daylight);

/// How the tablet starts.
pub struct KioskOptions {
    /// The line to the desk.
    pub link: Link,
    /// Its news.
    pub news: NewsReceiver,
    /// Size of the window in logical pixels; 1280 × 800 if `None`.
    pub window: Option<(u32, u32)>,
    /// The whole screen, without a frame.
    pub fullscreen: bool,
    /// Language of a new guest, by its code; otherwise as kept in the settings.
    pub language: Option<String>,
    /// Where the settings are kept; nowhere if `None`.
    pub settings_file: Option<PathBuf>,
    /// What the link's wake callback rings.
    pub wake: WakeCell,
    /// The desk in the same process, if there is one.
    pub desk_here: Option<DeskHere>,
}

/// A bell that other threads ring to wake a sleeping screen. It may ring before there is a screen.
#[derive(Clone, Default)]
pub struct WakeCell(Arc<Mutex<Option<Bell>>>);

type Bell = Box<dyn Fn() + Send>;

impl WakeCell {
    /// Wakes the screen, if there is one.
    pub fn ring(&self) {
        if let Some(bell) = &*self.0.lock().unwrap_or_else(PoisonError::into_inner) {
            bell();
        }
    }

    fn hang_up(&self, bell: Bell) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(bell);
    }
}

/// Phases of one frame, in order. All in `Update`.
#[derive(SystemSet, Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Phase {
    /// Fingers, keys, clock and desk become requests and answers.
    Intake,
    /// Who was not touched may have left. After everything that tells of somebody being there.
    Attend,
    /// Requests and answers change the guest's things. The only phase that does.
    Apply,
    /// Sum, cautions and places are worked out after a change.
    Derive,
    /// What is seen follows.
    Present,
}

/// Everything of the tablet but the window and the graphics driver.
pub struct KioskPlugin;

impl Plugin for KioskPlugin {
    fn build(&self, app: &mut App) {
        app.configure_sets(Update, (Phase::Intake, Phase::Attend, Phase::Apply, Phase::Derive, Phase::Present).chain())
            .init_resource::<targets::Targets>()
            .init_resource::<targets::Scrolls>()
            .init_resource::<Proof>()
            .insert_resource(ClearColor(Color::srgb_u8(LINEN.r(), LINEN.g(), LINEN.b())))
            .add_plugins((
                outside::egui::plugin,
                outside::desk_here::plugin,
                outside::reader::plugin,
                bridge::plugin,
                pictures::plugin,
                pointer::plugin,
                idle::plugin,
                tablet::plugin,
                stage::plugin,
                screens::plugin,
                power::plugin,
            ));
    }
}
