//! A chain's rest held against a general-purpose rigid-body library: the same links, jointed there.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/peer.rs"]
mod peer;

use peer::{Peer, scene};

/// The library keeps the exact rest shape as its own, as closely as its joints hold: the more it iterates, the closer.
#[test]
fn a_rigid_body_library_rests_where_the_exact_shape_is() {
    let (chain, drops) = scene(60, 6);
    let off = |iterations| {
        let mut peer = Peer::at_rest(&chain, &drops, iterations);
        (0..600).for_each(|_| peer.frame());
        peer.off_mm()
    };
    let (few, many) = (off(16), off(128));
    println!("off the exact rest: {few:.2} mm with 16 iterations, {many:.2} mm with 128");
    assert!(many < few && many < 0.01 * chain.front_length_mm, "{few} {many}");
}
