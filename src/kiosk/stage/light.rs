//! The window's light leans with a finger, so that metal lives without being dragged; on Welcome it wanders over the sample
//! now and then.

use bevy::prelude::*;

use crate::{
    guest::Screen,
    kiosk::{idle::Idle, outside::window::WindowSize, pointer::Fingers, power::Awake, tablet::Tablet},
};

/// How fast the light follows a finger, per second.
const RATE: f32 = 3.5;
/// How far it leans for a finger at the window's edge, and in its wandering.
const FAR: f32 = 0.55;
const WANDERS: f32 = 0.9;
/// On Welcome it wanders once in so many seconds, for so long: seldom and short, since a tablet that waits has to sleep.
const EVERY_S: f32 = 30.0;
const LONG_S: f32 = 0.7;
/// Where that is fewer frames than this, each costs the machine much, as without a graphics card: it wanders more seldom.
const FEW_FRAMES: u32 = 20;
const SELDOM_S: f32 = 180.0;
/// Nearer than this it has come to rest.
const STILL: f32 = 0.004;

/// Lets the light lean. How far it does is told to the shader by how high the eyes are, which is nothing else to a picture
/// without perspective: `lit.wgsl` reads it from the view.
#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
pub(super) fn lean(
    mut eyes: Query<&mut Transform, With<Camera>>,
    mut leans: Local<f32>,
    mut wandering: Local<Wandering>,
    fingers: Res<Fingers>,
    idle: Res<Idle>,
    tablet: Res<Tablet>,
    size: WindowSize,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
) {
    let finger = fingers.iter().next().map(|finger| FAR * (2.0 * finger.now.x / size.get().x.max(1.0) - 1.0));
    let wanders = match tablet.screen() {
        Screen::Welcome => wandering.at(idle.quiet_s()),
        _ => 0.0,
    };
    if tablet.looks().calm {
        *leans = 0.0;
    } else if wanders != 0.0 {
        *leans = wanders;
        awake.stir();
    } else {
        let to = finger.unwrap_or(0.0);
        *leans += (to - *leans) * (1.0 - (-RATE * time.delta_secs().min(0.1)).exp());
        if (to - *leans).abs() < STILL {
            *leans = to;
        } else {
            awake.stir();
        }
    }
    for mut eye in &mut eyes {
        if eye.translation.z != *leans {
            eye.translation.z = *leans;
        }
    }
}

/// When the light wandered last on Welcome, by how long nobody had touched anything then.
#[derive(Debug, Default)]
pub(super) struct Wandering {
    began_s: f32,
    /// How many frames it has had since.
    frames: u32,
    /// Whether it had few the last time since somebody touched something.
    slow: bool,
}

impl Wandering {
    /// How far the light has wandered when nobody has touched anything for so long. It begins with the first tick after its
    /// time has come, however seldom the tablet ticks.
    fn at(&mut self, quiet_s: f32) -> f32 {
        if quiet_s < self.began_s {
            *self = Self::default();
        }
        if quiet_s - self.began_s >= if self.slow { SELDOM_S } else { EVERY_S } {
            (self.began_s, self.frames) = (quiet_s, 0);
        }
        let since = quiet_s - self.began_s;
        if self.began_s == 0.0 || since > LONG_S {
            if self.frames > 0 {
                self.slow = self.frames < FEW_FRAMES;
                self.frames = 0;
            }
            0.0
        } else {
            self.frames += 1;
            // Never quite nothing while it wanders, so that the next frame comes.
            WANDERS * (std::f32::consts::TAU * since / LONG_S).sin() + f32::EPSILON
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tablet_that_waits_sleeps_nearly_all_the_time() {
        let mut wandering = Wandering::default();
        let moments: Vec<f32> = (0..60_000).map(|at| wandering.at(at as f32 / 100.0)).collect();
        let awake = moments.iter().filter(|lean| **lean != 0.0).count() as f32 / moments.len() as f32;
        assert!((0.01..0.03).contains(&awake), "{awake}");
        assert!(moments.iter().all(|lean| lean.abs() <= WANDERS * 1.001));
    }

    #[test]
    fn where_each_frame_costs_much_it_wanders_more_seldom() {
        let mut wandering = Wandering::default();
        // Ten frames a second for an hour: what a processor draws that has to do all by itself.
        let moments: Vec<f32> = (0..36_000).map(|at| wandering.at(at as f32 / 10.0)).collect();
        let awake = moments.iter().filter(|lean| **lean != 0.0).count() as f32 / moments.len() as f32;
        assert!((0.002..0.005).contains(&awake), "{awake}");
    }

    #[test]
    fn it_wanders_however_seldom_the_tablet_ticks_and_anew_after_a_touch() {
        let mut wandering = Wandering::default();
        assert_eq!([9.7, 19.8, 29.9].map(|quiet| wandering.at(quiet)), [0.0; 3]);
        assert!(wandering.at(39.9) != 0.0, "the first tick after its time");
        assert!(wandering.at(40.1) > 0.3 && wandering.at(41.0) == 0.0);
        assert_eq!(wandering.at(2.0), 0.0, "touched");
        assert!(wandering.at(31.0) != 0.0);
    }
}
