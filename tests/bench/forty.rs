//! Forty drops on one chain: the fullest piece that frames are measured with.

use chatelaine::guest::Request;

use super::kiosk_support::Hand;

/// As many of each kind as the table has until they are enough; the narrow ones, for they have to fit.
const NARROW: [&str; 5] = ["key-tiny", "bead-jade", "bead-pearl", "bead-garnet", "charm-star"];
/// How many hang.
pub const DROPS: usize = 40;

/// Goes to the stage with the longest chain, hangs the drops, and lets them settle for so many seconds.
pub fn hang_forty(hand: &mut Hand, seconds: f32) {
    hand.tap(&Request::Begin);
    hand.ask(Request::Longer(40));
    hand.tap(&Request::ToStage);
    for kind in NARROW.into_iter().cycle().take(DROPS * 4) {
        if hand.hung().len() == DROPS {
            break;
        }
        hand.app.world_mut().write_message(Request::Hang { kind: kind.into(), at: None });
        hand.frames(2);
    }
    assert_eq!(hand.hung().len(), DROPS, "forty drops hang");
    hand.seconds(seconds);
}
