//! Touches without end: a tablet keeps nothing of what went by.

use bevy::prelude::{Assets, Entity, Image, Mesh};
use chatelaine::{
    guest::Request,
    kiosk::{Pictures, Tablet},
};

use crate::{
    kiosk_support::{Hand, resident_mb},
    random::Random,
};

/// A minute of touches has so many frames.
const FRAMES: usize = 60 * 50;

/// The sprites of the fullest pieces so far stay, hidden, for the next one: a chain of 300 links with their shadows and 40 drops
/// with their rings and shadows are about 1,000 places, each with a sprite for each of five kinds of square at most.
const MOST_ENTITIES: usize = 1_000 * 5;

/// How much of what could grow there is once a guest has left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Kept {
    textures: usize,
    meshes: usize,
    entities: usize,
}

fn kept(hand: &mut Hand) -> Kept {
    hand.ask(Request::Close);
    hand.ask(Request::StartOver);
    hand.wait_for("the pictures", |world| world.resource::<Pictures>().are_settled());
    hand.seconds(2.0);
    let world = hand.app.world_mut();
    Kept {
        textures: world.resource::<Assets<Image>>().len(),
        meshes: world.resource::<Assets<Mesh>>().len(),
        entities: world.query::<Entity>().iter(world).count(),
    }
}

/// Half a minute in the usual run; `CHATELAINE_TOUCHES=60` goes on for an hour and watches the memory too.
#[test]
fn touches_for_long_leave_nothing_behind() {
    let minutes: usize = std::env::var("CHATELAINE_TOUCHES").ok().and_then(|text| text.parse().ok()).unwrap_or(0);
    let mut hand = Hand::at((1280, 800));
    let mut random = Random(1);
    // Once through everything, so that what is made once has been made.
    hand.play(FRAMES / 4, |below| random.below(below));
    let first = kept(&mut hand);
    hand.play(FRAMES / 4, |below| random.below(below));
    let second = kept(&mut hand);
    // The large pictures that were used last stay, within their budget.
    let pictures = hand.app.world().resource::<Tablet>().known().catalog().map_or(0, |catalog| catalog.drops.len());
    let most = |before: usize| before + 2 * pictures;
    assert!(second.textures <= most(first.textures), "{first:?} {second:?}");
    assert_eq!(second.meshes, first.meshes);
    assert!(first.entities < MOST_ENTITIES && second.entities < MOST_ENTITIES, "{first:?} {second:?}");
    let mut resident = Vec::new();
    for minute in 1..=minutes {
        hand.play(FRAMES, |below| random.below(below));
        let now = kept(&mut hand);
        assert!(now.textures <= most(first.textures), "{first:?} {now:?}");
        assert_eq!(now.meshes, first.meshes, "after {minute} minutes");
        assert!(now.entities < MOST_ENTITIES, "after {minute} minutes: {now:?}");
        resident.push(resident_mb());
        println!("after {minute} minutes: {:.0} MB, {now:?}", resident[minute - 1]);
    }
    if let [.., last] = resident[..]
        && minutes >= 10
    {
        // What was had once is given back in its own time: the second half may not need more than the first one ever did.
        let most = resident[..minutes / 2].iter().copied().fold(0.0, f64::max);
        assert!(last < most + 8.0, "the memory grew from {most:.0} to {last:.0} MB in the second half");
    }
}
